#include "club.h"

#include "emit/diary_lines.h"

/* 2027-01-04 is a Monday (`date`). */
static struct told club(struct plan **plan)
{
    struct told t = told_club(INES "block a { for ines; starts 2027-01-04; weeks 1\n"
                              "day A on mon { squat { warm-up 1 x 5 at 40 kg; top 1 x 1 at 80 kg; back-off 2 x 5 at 70, 67.5 kg }\n"
                              "pull-up 2 x 8 at bodyweight minus 5 kg; curl { top 1 x 30 s; 1 x 10 at rpe 8 } } }\n");
    *plan = told_plan(&t, "a", "ines");
    return t;
}

static const struct dec *numbers(struct arena *arena, int count, const double *at)
{
    struct dec *list = NEW_MANY(arena, struct dec, count + 1);
    for (int i = 0; i < count; i++)
        list[i] = dec_halves((int64_t)(2 * at[i]));
    return list;
}

#define LIST(...) numbers(arena, sizeof((double[]){ __VA_ARGS__ }) / sizeof(double), (const double[]){ __VA_ARGS__ })
#define DONE(count, loads_, reps_) { .asked = true, .sets = count, .loads = loads_, .reps = reps_ }
#define ASKED { .asked = true }

static const char *session(struct told *t, const struct plan *plan, struct date date, const struct done_sets *done)
{
    struct out out = out_scratch(t->arena);
    diary_session(&out, &plan->weeks[0], &plan->weeks[0].days[0], date, done);
    out_char(&out, 0);
    return out.at;
}

/* Runs of the day: squat warm-up, top, back-off 70, back-off 67.5; pull-up; curl in seconds, curl. */
static void lines_are_as_the_language_has_them(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct arena *arena = t.arena;
    struct done_sets done[] = { ASKED, DONE(1, LIST(80), LIST(1)), DONE(1, LIST(70), LIST(5)), DONE(1, LIST(67.5), LIST(4)),
                                DONE(2, LIST(-5, -2.5), LIST(8, 0)), DONE(1, LIST(10), LIST(30)), DONE(1, LIST(12.5), LIST(10)) };
    assert_string_equal(session(&t, plan, plan->weeks[0].start, done), "  2027-01-04 A {\n"
                                                                      "    squat 80 kg x 1 then 70, 67.5 kg x 5, 4\n"
                                                                      "    pull-up bodyweight minus 5, 2.5 kg x 8, 0\n"
                                                                      "    curl 10 kg x 30 s then 12.5 kg x 10\n"
                                                                      "  }\n");
    told_end(&t);
}

static void what_was_not_done(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct arena *arena = t.arena;
    struct done_sets none[7] = { { 0 } };
    assert_string_equal(session(&t, plan, plan->weeks[0].start, none), "  2027-01-04 A {\n  }\n");
    struct done_sets asked[] = { ASKED, ASKED, ASKED, ASKED, { 0 }, ASKED, DONE(1, LIST(12.5), LIST(10)) };
    assert_string_equal(session(&t, plan, plan->weeks[0].start, asked), "  2027-01-04 A {\n"
                                                                       "    squat skipped\n"
                                                                       "    curl 12.5 kg x 0 s then 12.5 kg x 10\n"
                                                                       "  }\n");
    struct done_sets top[] = { ASKED, DONE(1, LIST(80), LIST(1)), ASKED, ASKED, ASKED, DONE(1, LIST(10), LIST(30)), ASKED };
    assert_string_equal(session(&t, plan, plan->weeks[0].start, top), "  2027-01-04 A {\n"
                                                                     "    squat 80 kg x 1 then 70 kg x 0\n"
                                                                     "    pull-up skipped\n"
                                                                     "    curl 10 kg x 30 s then 10 kg x 0\n"
                                                                     "  }\n");
    told_end(&t);
}

static const char *efforts(struct told *t, const struct plan *plan, struct done_sets first, struct done_sets last)
{
    struct done_sets done[7] = { { 0 }, { 0 }, first, last };
    const char *text = strstr(session(t, plan, plan->weeks[0].start, done), "then");
    return arena_format(t->arena, "%.*s", (int)(strchr(text, '\n') - text), text);
}

/* One effort is of the last set; a list has one for each. */
static void efforts_are_all_or_of_the_last_set(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct arena *arena = t.arena;
    struct done_sets a = DONE(2, LIST(70, 70), LIST(5, 5)), b = DONE(1, LIST(67.5), LIST(5));
    b.efforts = LIST(8), b.effort_count = 1;
    assert_string_equal(efforts(&t, plan, a, b), "then 70, 70, 67.5 kg x 5, 5, 5 rpe 8");
    a.efforts = LIST(7), a.effort_count = 1;
    assert_string_equal(efforts(&t, plan, a, b), "then 70, 70, 67.5 kg x 5, 5, 5 rpe 8");
    a.efforts = LIST(6.5, 7), a.effort_count = 2;
    assert_string_equal(efforts(&t, plan, a, b), "then 70, 70, 67.5 kg x 5, 5, 5 rpe 6.5, 7, 8");
    b.effort_count = 0;
    assert_string_equal(efforts(&t, plan, a, b), "then 70, 70, 67.5 kg x 5, 5, 5");
    b = (struct done_sets)ASKED;
    assert_string_equal(efforts(&t, plan, a, b), "then 70 kg x 5, 5 rpe 6.5, 7");
    told_end(&t);
}

static void a_date_of_another_week_says_its_week(void **state)
{
    (void)state;
    struct plan *plan;
    struct told t = club(&plan);
    struct done_sets none[7] = { { 0 } };
    struct date monday = plan->weeks[0].start;
    assert_string_equal(session(&t, plan, date_plus(monday, 6), none), "  2027-01-10 A {\n  }\n");
    assert_string_equal(session(&t, plan, date_plus(monday, 7), none), "  2027-01-11 A week 1 {\n  }\n");
    assert_string_equal(session(&t, plan, date_plus(monday, -1), none), "  2027-01-03 A week 1 {\n  }\n");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines_are_as_the_language_has_them),
        cmocka_unit_test(what_was_not_done),
        cmocka_unit_test(efforts_are_all_or_of_the_last_set),
        cmocka_unit_test(a_date_of_another_week_says_its_week),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
