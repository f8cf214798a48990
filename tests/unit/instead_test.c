#include "club.h"

#include "emit/instead.h"

#define CLUB_TEXT \
    "gym machines { stack leg-press 20 to 200 step 10 kg }\n" \
    "lift leg-press { loads stack leg-press }\n" \
    "lift trap-pull { loads bar }\n" \
    "lift split-squat { loads dumbbells }\n" \
    "lift back-squat { loads bar; instead leg-press, trap-pull, split-squat, pull-up, sled, front-squat, press }\n" \
    "athlete ines { gym hall; bodyweight 60 kg; max back-squat 100 kg; avoid pull-up use pulldown because \"elbow\" }\n" \
    "athlete bo { bodyweight 60 kg; max back-squat 100 kg }\n" \
    "athlete cy { gym machines; max back-squat 100 kg }\n" \
    "block winter { for ines, bo, cy; starts 2027-01-04; weeks 1; day A on mon { back-squat or press 3 x 5 at 50% }\n" \
    "adjust bo { swap back-squat with trap-pull } }\n"

static const char *substitutes(struct told *t, const char *athlete)
{
    struct plan *plan = told_plan(t, "winter", athlete);
    const struct plan_day *day = &plan->weeks[0].days[0];
    const char *text = "";
    const struct lift *lift;
    for (int at = 0; (lift = instead_next(plan->athlete, day->gym, &day->entries[0], &at));)
        text = arena_format(t->arena, "%s%s%s", text, *text ? ", " : "", lift->name);
    return text;
}

/* The hall has no leg-press; she avoids pull-ups; press is her choice on the sheet already. */
static void what_the_gym_has_and_she_does_not_avoid(void **state)
{
    (void)state;
    struct told t = told_club(CLUB_TEXT);
    assert_non_null(t.model);
    assert_string_equal(substitutes(&t, "ines"), "trap-pull, split-squat, sled, front-squat");
    told_end(&t);
}

/* A gym that states no dumbbells has none; a stack by name is there; the body and free loads always are. */
static void each_gym_has_its_own(void **state)
{
    (void)state;
    struct told t = told_club(CLUB_TEXT);
    assert_string_equal(substitutes(&t, "cy"), "leg-press, trap-pull, pull-up, sled, front-squat");
    told_end(&t);
}

/* What is trained in its place has substitutes of its own: here none. */
static void a_swapped_lift_brings_its_own(void **state)
{
    (void)state;
    struct told t = told_club(CLUB_TEXT);
    assert_string_equal(substitutes(&t, "bo"), "");
    told_end(&t);
}

static void equipment_is_matched_by_name(void **state)
{
    (void)state;
    const char *trap = "trap", *main_stack = NULL;
    const struct named_ladder bars[] = { { .name = NULL }, { .name = trap } }, stacks[] = { { .name = main_stack } };
    const struct gym full = { .bars = bars, .bar_count = 2, .stacks = stacks, .stack_count = 1, .has_dumbbells = true };
    const struct gym bare = { .bars = bars, .bar_count = 1 };
    const struct {
        struct lift lift;
        bool in_full, in_bare;
    } rows[] = {
        { { .loads = LOADS_BAR }, true, true },
        { { .loads = LOADS_BAR, .equipment = trap }, true, false },
        { { .loads = LOADS_STACK }, true, false },
        { { .loads = LOADS_STACK, .equipment = trap }, false, false },
        { { .loads = LOADS_DUMBBELLS }, true, false },
        { { .loads = LOADS_BODYWEIGHT }, true, true },
        { { .loads = LOADS_FREE }, true, true },
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal(gym_loads(&full, &rows[i].lift), rows[i].in_full);
        assert_int_equal(gym_loads(&bare, &rows[i].lift), rows[i].in_bare);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_the_gym_has_and_she_does_not_avoid),
        cmocka_unit_test(each_gym_has_its_own),
        cmocka_unit_test(a_swapped_lift_brings_its_own),
        cmocka_unit_test(equipment_is_matched_by_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
