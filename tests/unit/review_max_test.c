/* The max over time; src/plan/review.h. The running max itself is held against another program by tests/trend.py;
 * here the days it is asked for count, and what stands before any session. */
#include "reviewed.h"

static const char *maxes_text(struct looked *l, const char *lift)
{
    struct review_maxes maxes = review_maxes(l->review, model_lift(l->t.model, lift));
    const char *text = "";
    for (int i = 0; i < maxes.count; i++) {
        const struct review_max *max = &maxes.at[i];
        text = arena_format(l->t.arena, "%s%s%s %s %d", text, *text ? ", " : "", date_text(l->t.arena, max->day),
                            max->by_line   ? kilos(l, max->max)
                            : max->has_max ? "running"
                                           : "none",
                            max->sessions);
        struct running running =
            running_max(l->review->record, model_lift(l->t.model, lift), max->day, l->review->scope.plans[0]->block);
        if (max->has_max && !max->by_line) {
            assert_int_equal(max->max.e10, running.max.e10);
            assert_int_equal(max->error.e10, running.error.e10);
            assert_true(max->error.e10 > 0);
        }
    }
    return text;
}

#define DIARY                                                                                                          \
    "2027-01-04 A { squat 90 kg x 1 rpe 7 then 75 kg x 5, 5, 5; press 15 kg x 8, 8 }\n"                                \
    "2027-01-12 A { squat 90 kg x 1 rpe 7 then 75 kg x 5, 5, 5; press 15 kg x 8, 8 rpe 5 }\n"                          \
    "2027-01-20 { squat 90 kg x 1 rpe 7 }\n"

static void a_row_a_week_and_one_after_the_last_entry(void **state)
{
    (void)state;
    struct looked l = look_back(DIARY, (struct review_scope){ .outside = true });
    assert_string_equal(maxes_text(&l, "squat"),
                        "2027-01-04 100 0, 2027-01-11 running 1, 2027-01-18 running 2, 2027-01-21 running 3");
    assert_string_equal(maxes_text(&l, "press"),
                        "2027-01-04 none 0, 2027-01-11 none 0, 2027-01-18 running 1, 2027-01-21 running 1");
    assert_string_equal(maxes_text(&l, "bench"), ""); /* a line, and no session */
    look_away(&l);
}

/* An earlier entry counts though it is not looked at. */
static void narrowed(void **state)
{
    (void)state;
    struct looked l = look_back(
        DIARY, (struct review_scope){ .outside = true, .from = day_of("2027-01-11"), .to = day_of("2027-01-19") });
    assert_string_equal(maxes_text(&l, "squat"), "2027-01-11 running 1, 2027-01-13 running 2");
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(a_row_a_week_and_one_after_the_last_entry),
                                        cmocka_unit_test(narrowed) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
