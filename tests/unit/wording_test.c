#include "emit/wording.h"

#include <stdlib.h>
#include <string.h>

#include "pool.h"
#include "sample_plan.h"

static const char *said(struct out *say)
{
    out_char(say, '\0');
    return say->at;
}

static void seconds_are_minutes_where_they_can_be(void **state)
{
    static const struct {
        struct seconds_band band;
        const char *says;
    } rows[] = {
        { { 60, 60 }, "1 min" },     { { 90, 90 }, "90 s" },       { { 120, 180 }, "2-3 min" },
        { { 90, 120 }, "90-120 s" }, { { 3600, 3600 }, "60 min" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct out say = out_scratch(*state);
        say_seconds(&say, rows[i].band);
        assert_string_equal(said(&say), rows[i].says);
    }
}

/* Repetitions left are 10 less the rpe (the scale's own meaning); a half says both neighbours. */
static void effort_says_what_is_left(void **state)
{
    static const struct {
        struct dec low, high;
        enum reps_kind kind;
        const char *says;
    } rows[] = {
        { DEC(8), DEC(8), REPS_COUNT, "rpe 8 (2 left)" },
        { DEC(7.5), DEC(7.5), REPS_COUNT, "rpe 7.5 (2-3 left)" },
        { DEC(10), DEC(10), REPS_COUNT, "rpe 10 (nothing left)" },
        { DEC(9.5), DEC(9.5), REPS_COUNT, "rpe 9.5 (0-1 left)" },
        { DEC(6), DEC(7.5), REPS_CLUSTER, "rpe 6-7.5 (2-4 left)" },
        { DEC(4.5), DEC(4.5), REPS_COUNT, "rpe 4.5" },
        { DEC(8), DEC(8), REPS_SECONDS, "rpe 8" },
        { DEC(8), DEC(8), REPS_METRES, "rpe 8" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct out say = out_scratch(*state);
        struct plan_run run = { .has_effort = true, .effort_low = rows[i].low, .effort_high = rows[i].high };
        struct plan_group group = { .group = &row_group, .role = ROLE_WORK, .reps_kind = rows[i].kind };
        struct row row = { .group = &group, .run = &run };
        say_effort(&say, &row);
        assert_string_equal(said(&say), rows[i].says);
        group.role = ROLE_WARM_UP;
        out_clear(&say);
        say_effort(&say, &row);
        assert_string_equal(said(&say), "");
    }
}

static const char *load_said(struct arena *arena, const struct lift *lift, const struct group *written,
                             const struct plan_run *run)
{
    struct sample *sample = sample_plan(arena);
    struct out say = out_scratch(arena);
    struct plan_entry entry = { .entry = &squat_entry, .lift = lift, .group_count = 1 };
    struct plan_group group = { .group = written, .role = ROLE_BACK_OFF, .runs = run, .run_count = 1 };
    entry.groups = &group;
    struct row row = { &sample->plan, &sample->weeks[0], &sample->days[0], &entry, &group, run, 1 };
    say_load(&say, &row);
    return said(&say);
}

static void loads_cannot_be_misread(void **state)
{
    struct plan_run run = { .has_load = true, .load = KG(82.5), .shown = KG(82.5) };
    assert_string_equal(load_said(*state, &squat, &carry_group, &run), "82.5 kg");
    assert_string_equal(load_said(*state, &row_lift, &carry_group, &run), "82.5 kg a hand");
    assert_string_equal(load_said(*state, &deadlift, &carry_group, &run), "82.5 kg on the trap bar");
    assert_string_equal(load_said(*state, &pulldown, &carry_group, &run), "82.5 kg on the pulldown stack");
    assert_string_equal(load_said(*state, &pull_up, &carry_group, &run), "bodyweight + 82.5 kg");
    run.shown.e10 = 0;
    assert_string_equal(load_said(*state, &pull_up, &amrap_group, &run), "bodyweight");
    run.shown.e10 = -15 * DEC_ONE;
    assert_string_equal(load_said(*state, &pull_up, &carry_group, &run), "bodyweight - 15 kg assistance");
}

static void open_loads_say_how_to_find_one(void **state)
{
    struct plan_run run = { .has_effort = true, .effort_low = DEC(7), .effort_high = DEC(7) };
    assert_string_equal(load_said(*state, &curl, &open_group, &run), "choose a load for rpe 7 (3 left): ______ kg");
    assert_string_equal(load_said(*state, &row_lift, &open_group, &run),
                        "choose a load for rpe 7 (3 left): ______ kg a hand");
    assert_string_equal(load_said(*state, &plank, &open_group, &run),
                        "bodyweight, made harder or easier to reach rpe 7 (3 left)");
    struct plan_run none = { .sets = 3 };
    assert_string_equal(load_said(*state, &curl, &cluster_group, &none), "choose a load: ______ kg");
    assert_string_equal(load_said(*state, &plank, &cluster_group, &none), "bodyweight");
    struct plan_run below = { .open = "15 % below the top set" };
    assert_string_equal(load_said(*state, &squat, &back_off_group, &below), "15 % below the top set: ______ kg");
}

/* Twice two to five sets are four to ten, with blanks for the most. */
static void rounds_multiply_sets(void **state)
{
    struct out say = out_scratch(*state);
    struct plan_run run = { .sets = 8 };
    struct plan_group group = { &open_group, ROLE_WORK, 2, 5, REPS_COUNT, 1, 1, &run, 1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &curl, .rounds = 2, .groups = &group, .group_count = 1 };
    struct row row = { .entry = &entry, .group = &group, .run = &run };
    say_sets(&say, &row);
    assert_string_equal(said(&say), "4-10 sets x 1 rep");
    assert_int_equal(sets_most(&row), 10);
    group.sets_low = group.sets_high = 4;
    assert_int_equal(sets_most(&row), 8);
}

static void a_cluster_that_a_change_has_moved_says_its_sum(void **state)
{
    struct out say = out_scratch(*state);
    struct plan_run run = { .sets = 1 };
    struct plan_group group = { &cluster_group, ROLE_WORK, 1, 1, REPS_CLUSTER, 4, 4, &run, 1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat };
    struct row row = { .entry = &entry, .group = &group, .run = &run };
    say_sets(&say, &row);
    assert_string_equal(said(&say), "1 set x 4 reps in small parts");
}

static void warm_ups_in_few_words(void **state)
{
    struct sample *sample = sample_plan(*state);
    struct plan_run run = ramp_60;
    struct plan_group group = { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &run, 1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = &group, .group_count = 1 };
    struct row row = { .plan = &sample->plan, .week = &sample->weeks[0], .day = &sample->days[0], .entry = &entry, .group = &group, .run = &run };
    const struct {
        const struct lift *lift;
        int sets;
        enum reps_kind kind;
        const char *says;
    } rows[] = {
        { &squat, 1, REPS_COUNT, "60 kg x 5, 20 a side" },
        { &squat, 3, REPS_COUNT, "3 sets of 60 kg x 5, 20 a side" },
        { &deadlift, 1, REPS_COUNT, "60 kg on the trap bar x 5, 20 a side" },
        { &carry, 1, REPS_METRES, "60 kg a hand x 5 m" },
        { &pull_up, 1, REPS_COUNT, "bodyweight + 60 kg x 5" },
        { &pulldown, 1, REPS_SECONDS, "60 kg on the pulldown stack x 5 s" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct out say = out_scratch(*state);
        entry.lift = rows[i].lift;
        run.sets = rows[i].sets;
        group.reps_kind = rows[i].kind;
        assert_true(is_plain_warm_up(&row));
        say_warm_up(&say, &row);
        assert_string_equal(said(&say), rows[i].says);
    }
}

static void a_warm_up_with_more_to_say_is_not_plain(void **state)
{
    struct sample *sample = sample_plan(*state);
    struct plan_run run = ramp_60;
    struct group written = ramp_group;
    struct plan_group group = { &written, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &run, 1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat };
    struct row row = { .plan = &sample->plan, .day = &sample->days[0], .entry = &entry, .group = &group, .run = &run };
    assert_true(is_plain_warm_up(&row));
    written.rest = (struct seconds_band){ 60, 60 };
    assert_false(is_plain_warm_up(&row));
    written = ramp_group, written.optional = true;
    assert_false(is_plain_warm_up(&row));
    written = ramp_group, written.tempo = "31X0";
    assert_false(is_plain_warm_up(&row));
    written = ramp_group, group.reps_kind = REPS_AMRAP;
    assert_false(is_plain_warm_up(&row));
    group.reps_kind = REPS_COUNT, group.sets_high = 2;
    assert_false(is_plain_warm_up(&row));
    group.sets_high = 1, run.has_load = false;
    assert_false(is_plain_warm_up(&row));
    run.has_load = true, group.role = ROLE_WORK;
    assert_false(is_plain_warm_up(&row));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(seconds_are_minutes_where_they_can_be),
        TEST(effort_says_what_is_left),
        TEST(loads_cannot_be_misread),
        TEST(open_loads_say_how_to_find_one),
        TEST(rounds_multiply_sets),
        TEST(a_cluster_that_a_change_has_moved_says_its_sum),
        TEST(warm_ups_in_few_words),
        TEST(a_warm_up_with_more_to_say_is_not_plain),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
