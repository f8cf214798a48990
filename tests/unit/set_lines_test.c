#include "emit/set_lines.h"

#include <stdlib.h>
#include <string.h>

#include "pool.h"
#include "sample_plan.h"

static const char *lines_of(struct arena *arena, const struct plan_entry *entry)
{
    struct sample *sample = sample_plan(arena);
    struct out out = out_scratch(arena);
    struct sheet sheet = { lines_new(&out, arena), out_scratch(arena), out_scratch(arena) };
    struct row row = { .plan = &sample->plan, .week = &sample->weeks[0], .day = &sample->days[0], .entry = entry };
    set_lines(&sheet, row);
    out_char(&out, '\0');
    return out.at;
}

/* Two back-offs hang on one top: one head, a line each. 0.9 of 107.5 is 96.75, of 102.5, 105, 110, 112.5 is 92.25, 94.5, 99, 101.25 (bc; a tie). */
static void two_back_offs_share_a_table(void **state)
{
    static const struct band ten = { DEC(10), DEC(10) };
    static const struct series_week week = { &ten, 1 };
    static const struct series series = { .kind = SERIES_LIST, .weeks = &week, .count = 1 };
    struct group lighter = { .load_kind = LOAD_DROP, .load = { .series = &series, .frame = &four_weeks, .unit = UNIT_PERCENT } };
    struct plan_run run = { .sets = 1, .has_load = true, .load = KG(97.5), .shown = KG(97.5), .disc_count = -1 };
    struct plan_group groups[] = { squat_groups[2],
                                   { &lighter, ROLE_BACK_OFF, 1, 1, REPS_COUNT, 2, 2, &run, 1 },
                                   squat_groups[3] };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 3 };
    assert_non_null(strstr(lines_of(*state, &entry),
                           "    Done, kg  1: _____ x ___ @ ___\n"
                           "              if the top set was     102.5 kg   105 kg   110 kg 112.5 kg\n"
                           "              the back-off is         92.5 kg    95 kg   100 kg   100 kg\n"
                           "              the next one is         87.5 kg    90 kg  92.5 kg    95 kg\n"
                           "    Back-off  1 set x 2 reps   97.5 kg\n"));
}

static void a_top_given_by_per_cent_has_no_table(void **state)
{
    struct group top = top_group;
    top.load_kind = LOAD_PERCENT;
    struct plan_group groups[] = { squat_groups[2], squat_groups[3] };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 2 };
    assert_non_null(strstr(lines_of(*state, &entry), "if the top set was"));
    groups[0].group = &top;
    assert_null(strstr(lines_of(*state, &entry), "if the top set was"));
}

static void added_weight_carries_its_sign_in_the_table(void **state)
{
    struct plan_run top = { .sets = 1, .has_load = true, .load = KG(75), .shown = KG(5), .disc_count = -1 };
    struct plan_run drop = { .sets = 1, .has_load = true, .load = KG(62.5), .shown = KG(-7.5), .disc_count = -1 };
    struct plan_group groups[] = { { &top_group, ROLE_TOP, 1, 1, REPS_COUNT, 3, 3, &top, 1 },
                                   { &back_off_group, ROLE_BACK_OFF, 1, 1, REPS_COUNT, 5, 5, &drop, 1 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &pull_up, .groups = groups, .group_count = 2 };
    const char *text = lines_of(*state, &entry);
    assert_non_null(strstr(text, "if the top set was         0 kg  +2.5 kg  +7.5 kg   +10 kg\n"
                                 "              the back-off is          -10 kg  -7.5 kg    -5 kg  -2.5 kg\n"));
    assert_non_null(strstr(text, "bodyweight - 7.5 kg assistance\n"));
}

static void every_word_about_a_group_is_there(void **state)
{
    struct group group = { .load_kind = LOAD_WEIGHT,
                           MORE(.until_speed = DEC(0.4), .every_s = 120),
                           .rest = { 60, 60 },
                           .pause = { 3, 3 },
                           .tempo = "3\x1b",
                           .optional = true };
    struct plan_run run = {
        .sets = 2, .has_load = true, .load = KG(20), .shown = KG(20), .disc_count = 0, .under_bar = true, .capped = true
    };
    struct plan_group groups[] = { { &group, ROLE_WORK, 2, 2, REPS_COUNT, 5, 5, &run, 1 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 1 };
    assert_string_equal(lines_of(*state, &entry),
                        "    Work      2 sets x 5 reps  20 kg  the empty bar\n"
                        "              capped: held below the planned load, no lighter load on this bar,\n"
                        "              stop once the last rep is slower than 0.4 m/s, a set every 2 min,\n"
                        "              rest 1 min, pause 3 s, tempo 3\\x1b, optional\n"
                        "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___\n");
}

/* Two on a line where they fit, whatever groups they come from; one with more to say has a line alone. */
static void warm_ups_stand_two_on_a_line(void **state)
{
    static const struct weight many[] = { KG(25), KG(10), KG(2.5), KG(1.25), KG(0.5) };
    struct group noted = ramp_group;
    TEXTS(notes, "Slow down");
    noted.notes = notes;
    noted.note_count = 1;
    struct plan_run first = ramp_60, second = ramp_60, third = ramp_60;
    second.sets = 2;
    third.discs = many, third.disc_count = 5, third.load = third.shown = (struct weight)KG(98.5); /* 20 + 2 x 39.25 */
    struct plan_group groups[] = {
        { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &first, 1 },
        { &ramp_group, ROLE_WARM_UP, 2, 2, REPS_COUNT, 3, 3, &second, 1 },
        { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 2, 2, &third, 1 },
        { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_SECONDS, 20, 20, &first, 1 },
        { &noted, ROLE_WARM_UP, 1, 1, REPS_COUNT, 1, 1, &first, 1 },
        { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 1, 1, &ramp_20, 1 },
    };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 6 };
    assert_string_equal(lines_of(*state, &entry),
                        "    Warm-up   60 kg x 5, 20 a side              2 sets of 60 kg x 3, 20 a side\n"
                        "              98.5 kg x 2, 25+10+2.5+1.25+0.5 a side  60 kg x 20 s, 20 a side\n"
                        "              1 set x 1 rep    60 kg  discs a side: 20 kg\n"
                        "              Note: Slow down\n"
                        "              20 kg x 1, empty bar\n");
}

/* Runs of one group differ in load alone, and each says by itself what is odd about it. */
static void each_run_says_what_is_odd_about_it(void **state)
{
    struct plan_run runs[] = {
        { .sets = 1, .has_load = true, .load = KG(20), .shown = KG(20), .disc_count = 0, .under_bar = true },
        { .sets = 2, .has_load = true, .load = KG(25), .shown = KG(25), .disc_count = -1, .capped = true },
        { .sets = 1, .disc_count = -1, .capped = true, .has_effort = true, .effort_low = DEC(7), .effort_high = DEC(7) },
    };
    struct group group = { .load_kind = LOAD_WEIGHT };
    struct plan_group groups[] = { { &group, ROLE_WORK, 4, 4, REPS_COUNT, 5, 5, runs, 3 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 1 };
    const char *text = lines_of(*state, &entry);
    assert_non_null(strstr(text, "the empty bar  no lighter load on this bar\n"));
    assert_non_null(strstr(text, "25 kg  capped: held below the planned load\n"));
    assert_non_null(strstr(text, "capped: no harder than this"));
    groups[0].runs = &runs[2], groups[0].run_count = 1;
    assert_non_null(strstr(lines_of(*state, &entry), "capped: no harder than this"));
}

/* Of one leg or arm at a time, warm-ups too; and a number of reps in all. */
static void each_side_is_said(void **state)
{
    struct group side = { .load_kind = LOAD_WEIGHT, .each_side = true };
    struct plan_run run = { .sets = 1, .has_load = true, .load = KG(20), .shown = KG(20), .disc_count = 0 };
    struct plan_group groups[] = { { &side, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &run, 1 },
                                   { &side, ROLE_WARM_UP, 1, 1, REPS_METRES, 20, 20, &run, 1 },
                                   { &side, ROLE_WORK, 1, 1, REPS_TOTAL, 30, 30, &run, 1 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 3 };
    const char *text = lines_of(*state, &entry);
    assert_non_null(strstr(text, "20 kg x 5 each side, empty bar"));
    assert_non_null(strstr(text, "20 kg x 20 m each side, empty bar"));
    assert_non_null(strstr(text, "30 reps each side in all, in as many sets as it takes"));
}

/* A warm-up with anything to say besides load and reps is written as other sets are. */
static void warm_ups_with_more_to_say_stand_alone(void **state)
{
    const struct {
        struct group group;
        const char *says;
    } rows[] = {
        { { .load_kind = LOAD_WEIGHT }, NULL },
        { { .load_kind = LOAD_WEIGHT, .rest = { 60, 60 } }, "rest 1 min" },
        { { .load_kind = LOAD_WEIGHT, .pause = { 3, 3 } }, "pause 3 s" },
        { { .load_kind = LOAD_WEIGHT, MORE(.every_s = 60) }, "a set every 1 min" },
        { { .load_kind = LOAD_WEIGHT, .tempo = "31X0" }, "tempo 31X0" },
        { { .load_kind = LOAD_WEIGHT, .optional = true }, "optional" },
        { { .load_kind = LOAD_WEIGHT, MORE(.until_speed = DEC(0.4)) }, "slower than 0.4 m/s" },
    };
    struct plan_run run = { .sets = 1, .has_load = true, .load = KG(20), .shown = KG(20), .disc_count = 0 };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct plan_group groups[] = { { &rows[i].group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &run, 1 } };
        struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 1 };
        const char *text = lines_of(*state, &entry);
        assert_int_equal(strstr(text, "    Warm-up   20 kg x 5, empty bar\n") != NULL, !rows[i].says);
        assert_int_equal(strstr(text, "    Warm-up   1 set x 5 reps") != NULL, rows[i].says != NULL);
        if (rows[i].says)
            assert_non_null(strstr(text, rows[i].says));
    }
    run.capped = true;
    struct plan_group groups[] = { { &rows[0].group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &run, 1 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 1 };
    assert_non_null(strstr(lines_of(*state, &entry), "capped: held below the planned load"));
}

/* What fits beside the load stands there, to the last column. */
static void details_stand_beside_the_load_where_they_fit(void **state)
{
    struct group group = { .load_kind = LOAD_WEIGHT, .rest = { 60, 60 } };
    struct plan_run run = { .sets = 2, .has_load = true, .load = KG(20), .shown = KG(20), .disc_count = 0 };
    struct plan_group groups[] = { { &group, ROLE_WORK, 2, 2, REPS_COUNT, 5, 5, &run, 1 } };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = groups, .group_count = 1 };
    assert_non_null(strstr(lines_of(*state, &entry), "20 kg  the empty bar  rest 1 min\n    Done"));
    group.tempo = "31X012345";
    assert_non_null(strstr(lines_of(*state, &entry), "20 kg  the empty bar  rest 1 min, tempo 31X012345\n    Done")); /* 80 columns */
    group.tempo = "31X0123456";
    assert_non_null(strstr(lines_of(*state, &entry), "20 kg  the empty bar\n              rest 1 min, tempo 31X0123456\n"));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(two_back_offs_share_a_table),
        TEST(a_top_given_by_per_cent_has_no_table),
        TEST(added_weight_carries_its_sign_in_the_table),
        TEST(every_word_about_a_group_is_there),
        TEST(warm_ups_stand_two_on_a_line),
        TEST(each_run_says_what_is_odd_about_it),
        TEST(each_side_is_said),
        TEST(warm_ups_with_more_to_say_stand_alone),
        TEST(details_stand_beside_the_load_where_they_fit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
