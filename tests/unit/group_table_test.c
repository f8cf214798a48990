#include "club.h"

#include "emit/group_table.h"

static const char *table_of(struct told *t, struct group_table **table, const char *const *athletes)
{
    struct member members[8];
    struct out out = out_scratch(t->arena);
    int count = 0;
    for (; athletes[count]; count++) {
        struct plan *plan = told_plan(t, "b", athletes[count]);
        members[count] = (struct member){ plan, &plan->weeks[0], &plan->weeks[0].days[0] };
    }
    *table = group_table_make(t->arena, members, count);
    for (int first = 0, past; first < group_table_columns(*table); first = past) {
        past = group_table_past(*table, first);
        size_t start = out.used;
        group_table_write(&out, *table, first, past);
        int lines = 0;
        for (size_t at = start; at < out.used; at++)
            lines += out.at[at] == '\n';
        assert_int_equal(group_table_height(*table, first, past), lines + 1);
    }
    out_char(&out, '\0');
    return out.at;
}

#define TWO \
    "lift floor-press { title \"Floor press\"; loads bar }\n" \
    "athlete ana { gym hall; max squat 100 kg; max bench 60 kg }\n" \
    "athlete bo { title \"Bo\"; gym hall; max squat 150 kg; max floor-press 80 kg; avoid bench use floor-press because \"left shoulder\" }\n"
static const char *const two[] = { "ana", "bo", NULL };
static const char *const turned[] = { "bo", "ana", NULL };

/* A swapped lift stays in the column of the lift that the coach wrote, whoever comes first; what is added comes where
 * it is trained. 20 + 2 x 25 = 70, 20 + 2 x 42.5 = 105, 20 + 2 x 12.5 = 45, 20 + 2 x 20 = 60. */
static void a_swap_stays_in_its_column(void **state)
{
    (void)state;
    struct told t = told_club(TWO "block b { for ana, bo; starts 2027-01-04; weeks 1\n"
                                  "day A on mon { squat 3 x 5 at 70%; bench 3 x 5 at 75% }\n"
                                  "adjust ana { add to day A { curl 2 x 10; pull-up 2-3 x amrap at least 4 } } }\n");
    struct group_table *table;
    assert_string_equal(table_of(&t, &table, two),
                        "    | squat                      | bench                | curl\n"
                        "=========================================================================\n"
                        "ana | 3 x 5   70 kg  25          | 3 x 5  45 kg  10+2.5 | 2 x 10  ____ kg\n"
                        "-------------------------------------------------------------------------\n"
                        "Bo  | 3 x 5  105 kg  25+10+5+2.5 | Floor press (left    |\n"
                        "    |                            | shoulder)            |\n"
                        "    |                            | 3 x 5  60 kg  10+10  |\n"
                        "    | pull-up\n"
                        "=================================\n"
                        "ana | 2-3 x amrap, 4+  bodyweight\n"
                        "---------------------------------\n"
                        "Bo  |\n");
    const char *other = table_of(&t, &table, turned);
    assert_non_null(strstr(other, "| squat"));
    assert_non_null(strstr(other, "| bench"));
    assert_non_null(strstr(other, "Floor press"));
    assert_int_equal(group_table_columns(table), 4);
    told_end(&t);
}

static void long_texts_break_and_are_harmless(void **state)
{
    (void)state;
    struct told t = told_club("athlete ana { title \"Anastasia-Wilhelmina of the far and distant shore\"; gym hall; max squat 100 kg }\n"
                              "lift long { title \"Donaudampfschifffahrtsgesellschaftskapitaen\" }\n"
                              "lift odd { title \"a\tc\" }\n"
                              "block b { for ana; starts 2027-01-04; weeks 1; day A on mon { long 3 x 5; odd 1 x 5 } }\n");
    struct group_table *table;
    static const char *const one[] = { "ana", NULL };
    const char *text = table_of(&t, &table, one);
    assert_non_null(strstr(text, "\nAnastasia-Wilhelmina | "));
    assert_non_null(strstr(text, "\nof the far and       | "));
    assert_non_null(strstr(text, "| Donaudampfschifffahrts | "));
    for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
        assert_in_range(strcspn(line, "\n"), 1, GROUP_COLUMNS);
    assert_null(strchr(text, '\t'));
    told_end(&t);
}

static void what_is_too_wide_goes_below(void **state)
{
    (void)state;
    struct told t = told_club(TWO "block b { for ana; starts 2027-01-04; weeks 1; day A on mon {\n"
                                  "squat 3 x 5 at 70%; bench 3 x 5 at 75%; press 3 x 8-12 at 20 kg each side; curl 2-3 x 20 m at rpe 6-7; sled 1 x 5 } }\n");
    struct group_table *table;
    static const char *const one[] = { "ana", NULL };
    table_of(&t, &table, one);
    assert_int_equal(group_table_columns(table), 5);
    assert_int_equal(group_table_past(table, 0), 4);
    assert_int_equal(group_table_past(table, 4), 5);
    assert_int_equal(group_table_past(table, 5), 6); /* one at least, so that no loop stands still */
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_swap_stays_in_its_column),
        cmocka_unit_test(long_texts_break_and_are_harmless),
        cmocka_unit_test(what_is_too_wide_goes_below),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
