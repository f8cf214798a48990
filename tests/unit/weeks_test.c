#include "club.h"

#include "emit/weeks.h"

static struct date day(int month, int number)
{
    struct date date = { 0 };
    assert_true(date_make(2027, month, number, &date));
    return date;
}

/* 2027-01-06 is a Wednesday: its first Monday is the 11th (`date`). */
static struct told club(struct plan **plan)
{
    struct told t = told_club("athlete ines { gym hall; bodyweight 60 kg; max squat 100 kg on 2026-10-12; max bench 60 kg; max sled 1000 kg on 2027-01-01 }\n"
                              "block a { for ines; starts 2027-01-06; weeks 2\n"
                              "day A on mon { squat (3 | 5) x 5 at 70 | 75%; curl 2 x 10 at 10 kg }\n"
                              "day B on fri { bench 3 x 5 at 70%; pull-up 2 x 5 at bodyweight minus 10 kg }\n"
                              "day C { sled 1 x 5 at rpe 8 } }\n");
    *plan = told_plan(&t, "a", "ines");
    return t;
}

static void the_calendar_spans_the_plans(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct date first, last;
    assert_true(weeks_span(&plan, 1, &first, &last));
    assert_int_equal(first.day, day(1, 4).day);
    assert_int_equal(last.day, day(1, 18).day);
    assert_false(weeks_span(&plan, 0, &first, &last));
    told_end(&t);
}

static void days_go_by_the_calendar(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct narrow all = { 0 }, late = { .from = day(1, 12) };
    assert_true(weeks_starts(day(1, 4), &plan->weeks[0]));
    assert_false(weeks_starts(day(1, 11), &plan->weeks[0]));
    assert_true(weeks_meet(day(1, 4), &all, &plan->weeks[0]));
    assert_true(weeks_meet(day(1, 11), &all, &plan->weeks[0]));
    assert_false(weeks_meet(day(1, 18), &all, &plan->weeks[0]));
    assert_false(weeks_meet(day(1, 11), &late, &plan->weeks[0])); /* its Monday is the 11th */
    struct plan_week idle = { .number = 1, .start = day(1, 4) };
    assert_true(weeks_meet(day(1, 4), &all, &idle));
    assert_false(weeks_meet(day(1, 4), &late, &idle));
    told_end(&t);
}

static void lifts_of_a_week_and_what_changed(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct week_lifts first = weeks_lifts(t.arena, day(1, 4), &plan, 1, plan->athlete);
    struct week_lifts second = weeks_lifts(t.arena, day(1, 11), &plan, 1, plan->athlete);
    struct week_lifts third = weeks_lifts(t.arena, day(1, 18), &plan, 1, plan->athlete);
    struct week_change change;
    assert_int_equal(first.count, 3); /* bench, pull-up, sled */
    assert_int_equal(second.count, 5);
    assert_string_equal(second.at[0].lift->name, "squat");
    assert_int_equal(second.at[0].work.sets, 3);
    assert_true(second.at[0].work.heaviest.e10 == 70 * DEC_ONE);
    assert_true(first.at[1].work.has_load && first.at[1].work.heaviest.e10 == -10 * DEC_ONE);
    assert_true(weeks_most_sets(&second, &first, &change)); /* squat came new with 3 */
    assert_string_equal(change.lift->name, "squat");
    assert_int_equal(change.now.sets - change.before.sets, 3);
    assert_false(weeks_most_load(&second, &first, &change)); /* it has no load to compare */
    assert_true(weeks_most_sets(&third, &second, &change));  /* bench 3 gone; squat 2 more */
    assert_string_equal(change.lift->name, "bench");
    assert_true(weeks_most_load(&third, &second, &change));
    assert_string_equal(change.lift->name, "squat");
    assert_true(change.now.heaviest.e10 - change.before.heaviest.e10 == 5 * DEC_ONE);
    told_end(&t);
}

/* From 2026-10-12 to 2027-01-04 are 84 days (`date`): not more than 12 weeks. */
static void maxes_grow_stale(void **state)
{
    (void)state;
    static const struct {
        int monday;
        const char *lifts;
    } rows[] = { { 4, "bench" }, { 11, "squat, bench" }, { 18, "squat" } };
    struct plan *plan;
    struct told t = club(&plan);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct stale_list list = { 0 };
        struct narrow all = { 0 };
        const char *text = "";
        weeks_stale(t.arena, day(1, rows[i].monday), &all, plan, 84, &list);
        weeks_stale(t.arena, day(1, rows[i].monday), &all, plan, 84, &list); /* each once */
        for (int j = 0; j < list.count; j++)
            text = arena_format(t.arena, "%s%s%s", text, j ? ", " : "", list.at[j].lift->name);
        assert_string_equal(text, rows[i].lifts);
    }
    told_end(&t);
}

/* Both ends count: 2027-01-18 and 2027-03-01 are 42 days apart (`date`). */
static void meets_come_by_date_each_once(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    const struct meet spring[] = { { .title = "first", .date = day(1, 17) }, { .title = "third", .date = day(3, 1) }, { .title = "late", .date = day(3, 2) } };
    const struct meet other[] = { { .title = "second", .date = day(1, 18) } };
    struct season seasons[] = { { .meets = spring, .meet_count = 3 }, { .meets = other, .meet_count = 1 } };
    struct block blocks[] = { { .season = &seasons[0] }, { .season = &seasons[1] }, { .season = NULL } };
    struct plan one = { .block = &blocks[0] }, two = { .block = &blocks[1] }, none = { .block = &blocks[2] };
    struct plan *plans[] = { &one, &none, &two, &one };
    struct meet_list list = weeks_meets(t.arena, day(1, 18), plans, 4, 42);
    assert_int_equal(list.count, 2);
    assert_string_equal(list.at[0].meet->title, "second");
    assert_string_equal(list.at[1].meet->title, "third");
    assert_ptr_equal(list.at[1].season, &seasons[0]);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_calendar_spans_the_plans),
        cmocka_unit_test(days_go_by_the_calendar),
        cmocka_unit_test(lifts_of_a_week_and_what_changed),
        cmocka_unit_test(maxes_grow_stale),
        cmocka_unit_test(meets_come_by_date_each_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
