#include "emit/cells.h"

#include <stdlib.h>
#include <string.h>

#include "pool.h"
#include "sample_plan.h"

/* The header of section 7 of the design. */
static void the_columns_are_those_of_the_design(void **state)
{
    struct out out = out_scratch(*state);
    for (int i = 0; i < COLUMN_COUNT; i++) {
        out_text(&out, i > 0 ? "," : "");
        out_text(&out, columns[i].name);
    }
    out_char(&out, '\0');
    assert_string_equal(out.at,
                        "athlete,block,week,date,day,seq,lift,role,sets,reps_low,reps_high,rpe,percent,load,unit,"
                        "per_side,rest_s,tempo,note,done_load,done_reps,done_rpe");
    assert_string_equal(columns[COLUMN_SEQ].name, "seq");
}

static const char *cell(struct arena *arena, const char *name, const struct row *row)
{
    struct out out = out_scratch(arena);
    for (int i = 0; i < COLUMN_COUNT; i++)
        if (strcmp(columns[i].name, name) == 0)
            columns[i].write(&out, row);
    out_char(&out, '\0');
    return out.at;
}

static void a_weight_prints_in_the_unit_of_the_days_bar(void **state)
{
    struct sample *sample = sample_plan(*state);
    struct weight discs[] = { LB(45), LB(2) };
    discs[1].e10 += LB_IN_E10 / 2;
    struct plan_run run = {
        .sets = 1, .has_load = true, .load = LB(140), .shown = LB(140), .disc_count = 2, .discs = discs
    };
    struct row row = {
        &sample->plan, &sample->weeks[0], &sample->days[1], &day_a_entries[0], &squat_groups[2], &run, 1
    };
    assert_string_equal(cell(*state, "load", &row), "140");
    assert_string_equal(cell(*state, "unit", &row), "lb");
    assert_string_equal(cell(*state, "per_side", &row), "45+2.5");
    run.has_load = false;
    assert_string_equal(cell(*state, "load", &row), "");
    assert_string_equal(cell(*state, "unit", &row), "");
}

/* Only what is all digits with one point, and a minus before it, may go plain into YAML. */
static void numbers_are_told_from_texts(void **state)
{
    static const char *const numbers[] = { "0", "7", "102.5", "-2.5", "2027" };
    static const char *const texts[] = { "",      "-",  "<1", "6-7", "30 s", "1e3", "0x1F",
                                         "1_000", ".5", "5.", "+1",  "--1",  " 1" };
    (void)state;
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
        assert_true(cell_is_number(numbers[i], strlen(numbers[i])));
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
        assert_false(cell_is_number(texts[i], strlen(texts[i])));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(the_columns_are_those_of_the_design),
        TEST(a_weight_prints_in_the_unit_of_the_days_bar),
        TEST(numbers_are_told_from_texts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
