#include "club.h"

#include "emit/blank_diary.h"

/* 2027-01-04 is a Monday (`date`). */
static const char *written(struct told *t, struct narrow narrow)
{
    struct plan *plan = told_plan(t, "a", "ines");
    struct out out = out_scratch(t->arena);
    assert_true(blank_diary(&out, &narrow, plan->athlete, &plan, 1));
    out_char(&out, 0);
    return out.at;
}

static void a_line_a_lift_with_what_was_printed(void **state)
{
    (void)state;
    struct told t = told_club(INES "block a { for ines; starts 2027-01-04; weeks 2\n"
                              "day A on mon { squat { warm-up 1 x 5 at 40 kg; top 1 x 1 at rpe 8; back-off 2 x 5 at 70, 67.5 kg }\n"
                              "pull-up or pulldown 2 x 8 at bodyweight minus 5 kg; curl 2 x 10-12 at rpe 6-7 }\n"
                              "day B { bench 3 x 5 at 40 kg } }\n");
    const char *load = run_text(&t, &told_plan(&t, "a", "ines")->weeks[0].days[0].entries[0].groups[1].runs[0], UNIT_KG);
    const char *wanted = arena_format(t.arena, "\ndiary ines {\n"
                                               "  2027-01-04 A {\n"
                                               "    squat   as planned  # top 1 x 1 at %.*s kg, rpe 8; back-off 1 x 5 at 70 kg; back-off 1 x 5 at 67.5 kg\n"
                                               "    pull-up as planned  # 2 x 8 at -5 kg; or pulldown\n"
                                               "    curl    as planned  # 2 x 10-12 at ____ kg, rpe 6-7\n"
                                               "    # session rpe 7 for 80 min\n"
                                               "  }\n"
                                               "  2027-01-04 B {  # without a date in the plan: write the day it was trained\n"
                                               "    bench as planned  # 3 x 5 at 40 kg\n"
                                               "    # session rpe 7 for 80 min\n"
                                               "  }\n"
                                               "}\n", (int)strcspn(load, "@"), load);
    assert_string_equal(written(&t, (struct narrow){ .first_week = 1, .last_week = 1 }), wanted);
    told_end(&t);
}

/* A drop from a top set of open load has none either, only what it hangs on; a lift that is warmed up and not trained is none. */
static void open_loads_say_what_they_hang_on(void **state)
{
    (void)state;
    struct told t = told_club(INES "block a { for ines; starts 2027-01-04; weeks 1\n"
                              "day A on mon { deadlift { top 1 x 1 at rpe 8; back-off 2 x 5 drop 15% }\n"
                              "bench or press or curl 2 x 5 at 10 kg; squat { warm-up 1 x 5 at 20 kg } } }\n");
    assert_string_equal(written(&t, (struct narrow){ 0 }),
                        "\ndiary ines {\n"
                        "  2027-01-04 A {\n"
                        "    deadlift as planned  # top 1 x 1 at ____ kg, rpe 8; back-off 2 x 5 at ____ kg, 15 % below the top set\n"
                        "    bench    as planned  # 2 x 5 at 20 kg; or press or curl\n"
                        "    # session rpe 7 for 80 min\n"
                        "  }\n"
                        "}\n");
    told_end(&t);
}

static void a_diary_without_a_session_is_none(void **state)
{
    (void)state;
    struct told t = told_club(INES "block a { for ines; starts 2027-01-04; weeks 1; day A on mon { squat 1 x 5 at 40 kg } }\n");
    assert_string_equal(written(&t, (struct narrow){ .first_week = 2 }), "");
    told_end(&t);
}

static void every_line_of_the_head_is_a_remark(void **state)
{
    (void)state;
    struct told t = told_begin();
    struct out out = out_scratch(t.arena);
    blank_diary_head(&out);
    out_char(&out, 0);
    for (const char *line = out.at; *line; line = strchr(line, '\n') + 1)
        assert_int_equal(*line, '#');
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_a_lift_with_what_was_printed),
        cmocka_unit_test(open_loads_say_what_they_hang_on),
        cmocka_unit_test(a_diary_without_a_session_is_none),
        cmocka_unit_test(every_line_of_the_head_is_a_remark),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
