#include "plan/backoff.h"

#include <stdlib.h>
#include <string.h>

#include "pool.h"
#include "sample_plan.h"

static struct weight kg(double amount)
{
    return (struct weight){ (int64_t)(amount * 100) * (DEC_ONE / 100) };
}

/* One top set and one drop group in a gym, with what the group asks for. */
struct drill {
    struct gym gym;
    struct plan_day day;
    struct plan_week week;
    struct lift lift;
    struct group written;
    struct plan_run top, run;
    struct plan_group groups[2];
    struct plan_entry entry;
    struct band band[3];
    struct series_week weeks[3];
    struct series series;
};

static struct drill *drill_new(struct arena *arena, double top, double load, enum unit unit, double drop)
{
    struct drill *d = NEW(arena, struct drill);
    sample_gym(arena, &d->gym);
    d->lift = squat;
    d->week.block_week = 1;
    d->day.gym = &d->gym;
    for (int i = 0; i < 3; i++) {
        d->band[i].low = d->band[i].high = (struct dec){ kg(drop).e10 + 5 * i * DEC_ONE };
        d->weeks[i] = (struct series_week){ &d->band[i], 1 };
    }
    d->series = (struct series){ .kind = SERIES_LIST, .weeks = d->weeks, .count = 3 };
    d->written = (struct group){ .role = ROLE_BACK_OFF,
                                 .load_kind = LOAD_DROP,
                                 .load = { .series = &d->series, .frame = &four_weeks, .unit = unit } };
    d->top = (struct plan_run){ .sets = 1, .has_load = true, .load = kg(top), .shown = kg(top) };
    d->run = (struct plan_run){ .sets = 4, .has_load = true, .load = kg(load), .shown = kg(load) };
    d->groups[0] = (struct plan_group){ &top_group, ROLE_TOP, 1, 1, REPS_COUNT, 1, 1, &d->top, 1 };
    d->groups[1] = (struct plan_group){ &d->written, ROLE_BACK_OFF, 4, 4, REPS_COUNT, 5, 5, &d->run, 1 };
    d->entry = (struct plan_entry){ .lift = &d->lift, .groups = d->groups, .group_count = 2 };
    return d;
}

static int drill_rows(struct drill *d, struct backoff rows[BACKOFF_TOPS])
{
    return backoff_rows(&d->week, &d->day, &d->entry, &d->top, &d->groups[1], &d->run, 0, rows);
}

static void assert_rows(struct drill *d, int count, const double tops[], const double loads[])
{
    struct backoff rows[BACKOFF_TOPS];
    assert_int_equal(drill_rows(d, rows), count);
    for (int i = 0; i < count; i++) {
        assert_int_equal(rows[i].top.e10, kg(tops[i]).e10);
        assert_int_equal(rows[i].load.e10, kg(loads[i]).e10);
    }
}

/* bc: 0.85 * 102.5 = 87.125, 105 89.25, 110 93.5, 112.5 95.625; to steps of 2.5 kg, ties down. */
static void per_cent_below_on_a_bar(void **state)
{
    struct drill *d = drill_new(*state, 107.5, 92.5, UNIT_PERCENT, 15);
    assert_rows(d, 4, (double[]){ 102.5, 105, 110, 112.5 }, (double[]){ 87.5, 90, 92.5, 95 });
}

static void a_weight_below(void **state)
{
    struct drill *d = drill_new(*state, 100, 80, UNIT_KILO, 20);
    assert_rows(d, 4, (double[]){ 95, 97.5, 102.5, 105 }, (double[]){ 75, 77.5, 82.5, 85 });
}

/* The third week drops 15 + 2 * 5 = 25 %. bc: 0.75 * 95 = 71.25 (a tie: down), 97.5 73.125, 102.5 76.875, 105 78.75 (tie). */
static void the_drop_of_the_week(void **state)
{
    struct drill *d = drill_new(*state, 100, 75, UNIT_PERCENT, 15);
    d->week.block_week = 3;
    assert_rows(d, 4, (double[]){ 95, 97.5, 102.5, 105 }, (double[]){ 70, 72.5, 77.5, 77.5 });
    d->week.block_week = 4; /* the last holds */
    assert_rows(d, 4, (double[]){ 95, 97.5, 102.5, 105 }, (double[]){ 70, 72.5, 77.5, 77.5 });
}

/* A comma list of drops: the second set of the group drops 10 %. bc: 0.9 * 95 = 85.5, 97.5 87.75, 102.5 92.25, 105 94.5. */
static void the_drop_of_the_set(void **state)
{
    struct drill *d = drill_new(*state, 100, 90, UNIT_PERCENT, 5);
    d->weeks[0].count = 3; /* 5, 10, 15 % */
    struct backoff rows[BACKOFF_TOPS];
    assert_int_equal(backoff_rows(&d->week, &d->day, &d->entry, &d->top, &d->groups[1], &d->run, 1, rows), 4);
    static const double loads[] = { 85, 87.5, 92.5, 95 };
    for (int i = 0; i < 4; i++)
        assert_int_equal(rows[i].load.e10, kg(loads[i]).e10);
}

/* 70 kg of body and 20 added: 15 % below 90 is 76.5, 6.5 added. bc: 0.85 * 85 - 70 = 2.25, 87.5 4.375, 92.5 8.625, 95 10.75. */
static void on_bodyweight_lifts_the_total_drops(void **state)
{
    struct drill *d = drill_new(*state, 20, 7.5, UNIT_PERCENT, 15);
    d->lift = pull_up;
    d->top.load = kg(90);
    assert_rows(d, 4, (double[]){ 15, 17.5, 22.5, 25 }, (double[]){ 2.5, 5, 7.5, 10 });
    /* 70 and 5: bc: 0.85 * 70 - 70 = -10.5, 72.5 -8.375, 75 -6.25 (a tie: the lighter), 77.5 -4.125, 80 -2 */
    d->top.load = kg(75);
    d->top.shown = kg(5);
    d->run.shown = kg(-7.5);
    assert_rows(d, 4, (double[]){ 0, 2.5, 7.5, 10 }, (double[]){ -10, -7.5, -5, -2.5 });
    d->gym.rounding = ROUND_DOWN;
    assert_rows(d, 4, (double[]){ 0, 2.5, 7.5, 10 }, (double[]){ -12.5, -10, -5, -2.5 });
    d->gym.rounding = ROUND_UP;
    d->run.shown = kg(-5);
    assert_rows(d, 4, (double[]){ 0, 2.5, 7.5, 10 }, (double[]){ -10, -7.5, -2.5, 0 });
}

/* 5 and 10 lb; bc: 0.85 * 215 = 182.75, 220 187, 230 195.5, 235 199.75; steps of 5 lb. */
static void pounds_move_by_five(void **state)
{
    struct drill *d = drill_new(*state, 0, 0, UNIT_PERCENT, 15);
    struct weight none = { 0 }, step = LB(5);
    d->gym.unit = UNIT_LB;
    d->gym.free = ladder_steps(none, step);
    d->lift = curl;
    d->top.load = d->top.shown = (struct weight)LB(225);
    d->run.load = d->run.shown = (struct weight)LB(190); /* 191.25 */
    struct backoff rows[BACKOFF_TOPS];
    static const int tops[] = { 215, 220, 230, 235 }, loads[] = { 185, 185, 195, 200 };
    assert_int_equal(drill_rows(d, rows), 4);
    for (int i = 0; i < 4; i++) {
        assert_int_equal(rows[i].top.e10, tops[i] * LB_IN_E10);
        assert_int_equal(rows[i].load.e10, loads[i] * LB_IN_E10);
    }
    struct drill *written = drill_new(*state, 0, 0, UNIT_POUND, 20);
    written->gym = d->gym;
    written->lift = curl;
    written->top = d->top;
    written->run.load = written->run.shown = (struct weight)LB(205);
    assert_int_equal(drill_rows(written, rows), 4); /* 20 lb below */
    assert_int_equal(rows[3].load.e10, 215 * LB_IN_E10);
}

static void a_cap_holds_for_heavier_tops_too(void **state)
{
    struct drill *d = drill_new(*state, 107.5, 90, UNIT_PERCENT, 15);
    d->run.capped = true;
    assert_rows(d, 4, (double[]){ 102.5, 105, 110, 112.5 }, (double[]){ 87.5, 90, 90, 90 });
}

static void no_rows_where_they_would_mislead(void **state)
{
    struct backoff rows[BACKOFF_TOPS];
    struct drill *d = drill_new(*state, 107.5, 90, UNIT_PERCENT, 15); /* 92.5 would follow: something else moved it */
    assert_int_equal(drill_rows(d, rows), 0);
    d = drill_new(*state, 107.5, 92.5, UNIT_PERCENT, 15);
    d->top.has_load = false;
    assert_int_equal(drill_rows(d, rows), 0);
    d = drill_new(*state, 22.5, 20, UNIT_PERCENT, 15); /* 17.5 is under the empty bar; 20 kg is not */
    assert_rows(d, 3, (double[]){ 20, 25, 27.5 }, (double[]){ 20, 20, 22.5 });
}

static void a_drop_hangs_on_the_nearest_top_before_it(void **state)
{
    struct drill *d = drill_new(*state, 107.5, 92.5, UNIT_PERCENT, 15);
    assert_int_equal(backoff_top(&d->entry, 1), 0);
    assert_int_equal(backoff_top(&d->entry, 0), -1); /* no drop */
    d->groups[0].role = ROLE_WORK;
    assert_int_equal(backoff_top(&d->entry, 1), -1);
}

/* The effort that ends a band, from 7 up by one in training weeks 1, 2, 4 (3 is a deload and takes the one before). */
static void the_effort_that_ends_a_band(void **state)
{
    (void)state;
    static const int training[] = { 1, 2, 4 };
    static const struct frame frame = { training, 3 };
    static const struct band seven = { DEC(7), DEC(7) };
    static const struct series_week first = { &seven, 1 };
    static const struct series series = { .kind = SERIES_STEP, .weeks = &first, .count = 1, .by = DEC(1), .each = 1 };
    struct group_more more = { .until_effort = { .series = &series, .frame = &frame } };
    struct group group = { .more = &more };
    static const int expected[] = { 7, 7, 8, 8, 9 }; /* by week of the block; before the first: the first */
    for (int week = 0; week < 5; week++) {
        struct plan_week in = { .block_week = week };
        struct dec rpe;
        assert_true(group_until(&in, &group, &rpe));
        assert_int_equal(rpe.e10, expected[week] * DEC_ONE);
    }
    struct plan_week in = { .block_week = 1 };
    struct dec rpe;
    more.until_is_rir = true; /* 7 left is rpe 3 */
    assert_true(group_until(&in, &group, &rpe));
    assert_int_equal(rpe.e10, 3 * DEC_ONE);
    assert_false(group_until(&in, &bench_group, &rpe));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(per_cent_below_on_a_bar),
        TEST(a_weight_below),
        TEST(the_drop_of_the_week),
        TEST(the_drop_of_the_set),
        TEST(on_bodyweight_lifts_the_total_drops),
        TEST(pounds_move_by_five),
        TEST(a_cap_holds_for_heavier_tops_too),
        TEST(no_rows_where_they_would_mislead),
        TEST(a_drop_hangs_on_the_nearest_top_before_it),
        TEST(the_effort_that_ends_a_band),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
