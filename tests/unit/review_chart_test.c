/* The max over time, drawn; src/emit/review_page.h. Marks by hand on a scale of 28: the place of v is (v - low) x 27 / (high - low), halves
 * up. The maxes are those of review_max_test.c and tests/trend.py. */
#include "reviewed.h"

/* clang-format off */
static const char expected[] =
    "\n"
    "THE MAX OVER TIME\n"
    "  as of                    max  + or - sessions\n"
    "\n"
    "  squat                                           97.8                    102 kg\n"
    "  2027-01-04  week 1       100       -        0   |              o             |\n"
    "  2027-01-11  week 2     100.2     1.8        1   |    -----------*------------|\n"
    "  2027-01-15  after       99.6     1.8        2   |------------*-----------    |\n"
    "\n"
    "  pull-up, with the body                          78.6                   81.8 kg\n"
    "  2027-01-04  week 1        80       -        0   |            o               |\n"
    "  2027-01-11  week 2        80       -        0   |            o               |\n"
    "  2027-01-15  after       80.2     1.6        1   |--------------*-------------|\n"
    "  Each row: what the sessions before that day say, and how many they are. * the\n"
    "  running max, - one standard error either way, o a max line before any session\n"
    "  counts.\n";
/* clang-format on */

static void charts(void **state)
{
    (void)state;
    struct looked l =
        look_back("2027-01-04 A { squat 90 kg x 1 rpe 6 then 75 kg x 5, 5, 5; press 15 kg x 8, 8 }\n"
                  "2027-01-11 A { squat 90 kg x 1 rpe 7 then 75 kg x 5, 5, 5; press as planned }\n"
                  "2027-01-14 B { pull-up bodyweight plus 5 kg x 5, 5, 5 rpe 7; curl as planned; sled as planned }\n",
                  (struct review_scope){ .outside = true });
    assert_string_equal(part_text(&l, review_chart), expected);
    look_away(&l);
}

static void nothing_counts(void **state)
{
    (void)state;
    struct looked l = look_back("2027-01-04 A { squat 90 kg x 1 then 75 kg x 5, 5, 5; press as planned }",
                                (struct review_scope){ .outside = true });
    assert_string_equal(part_text(&l, review_chart),
                        "\nTHE MAX OVER TIME\n"
                        "  No session counts yet: a set tells of the max when it has a load, reps and an\n"
                        "  effort, as in `squat 90 kg x 5 rpe 7`.\n");
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(charts), cmocka_unit_test(nothing_counts) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
