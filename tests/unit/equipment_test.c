/* src/plan/equipment.c: language.md 5.4 and 5.6. Steps of 2.5 kg both ways from nothing, ties towards the lighter; worked by
 * hand. */
#include "plan/work.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

static struct weight hundredths(int64_t amount)
{
    return (struct weight){ amount * (DEC_ONE / 100) };
}

static const struct gym *hall(void)
{
    static struct named_ladder bars[2];
    static struct gym gym = { .name = "hall", .bars = bars, .bar_count = 2 };
    bars[0] = (struct named_ladder){ NULL, ladder_steps(hundredths(2000), hundredths(250)) };
    bars[1] = (struct named_ladder){ "trap", ladder_steps(hundredths(2500), hundredths(250)) };
    gym.dumbbells = ladder_steps(hundredths(500), hundredths(200));
    gym.free = ladder_steps(hundredths(0), hundredths(250));
    return &gym;
}

static const char other[] = "hex";

static void what_a_lift_is_loaded_with(void **state)
{
    const struct gym *gym = hall();
    (void)state;
    struct lift squat = { .loads = LOADS_BAR }, pull = { .loads = LOADS_BAR, .equipment = gym->bars[1].name },
                hex = { .loads = LOADS_BAR, .equipment = other }, curl = { .loads = LOADS_DUMBBELLS }, press = { .loads = LOADS_STACK };
    assert_ptr_equal(ladder_for(gym, &squat), &gym->bars[0].ladder);
    assert_ptr_equal(ladder_for(gym, &pull), &gym->bars[1].ladder);
    assert_ptr_equal(ladder_for(gym, &hex), &gym->bars[0].ladder); /* the main bar stands in */
    assert_ptr_equal(ladder_for(gym, &curl), &gym->dumbbells);
    assert_ptr_equal(ladder_for(gym, &press), &gym->free); /* no stack: free steps */
    assert_true(gym_has_equipment(gym, &squat));
    assert_true(gym_has_equipment(gym, &pull));
    assert_false(gym_has_equipment(gym, &hex));
}

/* A machine of its own first, then the main stack, then free steps; of bars the main one, or the first there is. */
static void what_stands_in(void **state)
{
    (void)state;
    struct gym gym = *hall();
    struct named_ladder stacks[] = { { "tower", ladder_steps(hundredths(700), hundredths(700)) }, { NULL, ladder_steps(hundredths(500), hundredths(500)) } };
    struct lift tower = { .loads = LOADS_STACK, .equipment = stacks[0].name }, crane = { .loads = LOADS_STACK, .equipment = other },
                row = { .loads = LOADS_STACK }, squat = { .loads = LOADS_BAR }, hex = { .loads = LOADS_BAR, .equipment = other };
    gym.stacks = stacks, gym.stack_count = 2;
    assert_ptr_equal(ladder_for(&gym, &tower), &stacks[0].ladder);
    assert_ptr_equal(ladder_for(&gym, &crane), &stacks[1].ladder);
    assert_ptr_equal(ladder_for(&gym, &row), &stacks[1].ladder);
    assert_true(gym_has_equipment(&gym, &tower));
    assert_false(gym_has_equipment(&gym, &crane));
    gym.stack_count = 1;
    assert_ptr_equal(ladder_for(&gym, &crane), &gym.free);
    assert_ptr_equal(ladder_for(&gym, &row), &gym.free);
    gym.bars++, gym.bar_count = 1; /* the trap bar alone */
    assert_ptr_equal(ladder_for(&gym, &squat), &gym.bars[0].ladder);
    assert_ptr_equal(ladder_for(&gym, &hex), &gym.bars[0].ladder);
    gym.name = NULL; /* nobody's gym lacks nothing */
    assert_true(gym_has_equipment(&gym, &hex));
}

static void what_is_added_is_rounded(void **state)
{
    static const struct {
        int total; /* hundredths of a kg, at a bodyweight of 61.8 kg */
        enum rounding rounding;
        int added;
    } rows[] = {
        { 6180, ROUND_NEAREST, 0 },     { 6305, ROUND_NEAREST, 0 },    /* 1.25: a tie, down */
        { 6306, ROUND_NEAREST, 250 },   { 6055, ROUND_NEAREST, -250 }, /* -1.25: a tie, down */
        { 6056, ROUND_NEAREST, 0 },     { 5180, ROUND_NEAREST, -1000 },
        { 6429, ROUND_DOWN, 0 },        { 6179, ROUND_DOWN, -250 },
        { 6181, ROUND_UP, 250 },        { 6179, ROUND_UP, 0 },
    };
    struct lift pull_up = { .loads = LOADS_BODYWEIGHT }, squat = { .loads = LOADS_BAR };
    struct weight body = hundredths(6180);
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct weight load = load_round(hall(), &pull_up, ratio_weight(hundredths(rows[i].total)), body, rows[i].rounding);
        assert_int_equal(load.e10 - body.e10, hundredths(rows[i].added).e10);
    }
    /* Her bodyweight has no part in a bar's load. */
    assert_int_equal(load_round(hall(), &squat, ratio_weight(hundredths(10100)), body, ROUND_NEAREST).e10, hundredths(10000).e10);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(what_a_lift_is_loaded_with), cmocka_unit_test(what_stands_in),
                                        cmocka_unit_test(what_is_added_is_rounded) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
