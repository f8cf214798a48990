/* Planned against done, as a table; src/emit/review_page.h. The sums are those of review_work_test.c, worked by hand. */
#include "reviewed.h"

/* clang-format off */
static const char expected[] =
    "\n"
    "PLANNED AND DONE\n"
    "\n"
    "  Winter base, week 1, from Mon 4 January 2027\n"
    "                         sets      reps     mean load     effort\n"
    "                    plan done plan done   plan   done asked rated done\n"
    "  squat                4    4   16   15   75.9     76  5.4   7.3  94% fell short\n"
    "  press                2    2   16   19     15     15    -     - 119%\n"
    "  pull-up              3    3   15   15     +5      -    -     - 100%\n"
    "      done as pulldown\n"
    "  curl                 -    3   30   30     10     10    -     - 100%\n"
    "  sled                 2    2    -    -      -      -    -     - 100%\n"
    "  pulldown             -    -    -    -      -      -    -     -    -\n"
    "      apart: 2 sets, 16 reps, mean load 40\n"
    "  Together 11 of 11 sets, 79 of 77 reps, 2010 of 2970 kg lifted\n"
    "\n"
    "  Winter base, week 2, from Mon 11 January 2027\n"
    "  squat                4    -   16    -   75.9      -    -     -   0%\n"
    "  press                2    -   20    -     15      -    -     -   0%\n"
    "  pull-up              3    3   15   15     +5   +7.5    -     - 100%\n"
    "  curl                 -    -   30   30     10     10    -     - 100%\n"
    "  sled                 2    -    -    -      -      -    -     -   0%\n"
    "  Together 3 of 11 sets, 45 of 81 reps, 1313 of 3090 kg lifted\n"
    "\n"
    "  Winter base, week 3, from Mon 18 January 2027\n"
    "  squat                4    -   16    -   75.9      -    -     -   0%\n"
    "  press                2    -   22    -     15      -    -     -   0%\n"
    "  pull-up              3    -   15    -     +5      -    -     -   0%\n"
    "  curl                 -    -   30    -     10      -    -     -   0%\n"
    "  sled                 2    -    -    -      -      -    -     -   0%\n"
    "  Together 0 of 11 sets, 0 of 83 reps, 0 of 3150 kg lifted\n"
    "\n"
    "  Winter base, week 4, deload, from Mon 25 January 2027\n"
    "  squat                3    -   11    -   76.4      -    -     -   0%\n"
    "  press                1    -   11    -     15      -    -     -   0%\n"
    "  pull-up              2    -   10    -     +5      -    -     -   0%\n"
    "  curl                 -    -   30    -     10      -    -     -   0%\n"
    "  sled                 1    -    -    -      -      -    -     -   0%\n"
    "  Together 0 of 7 sets, 0 of 62 reps, 0 of 2120 kg lifted\n"
    "\n"
    "  Outside all blocks, from Mon 1 February 2027\n"
    "  squat                -    -    -    -      -      -    -     -    -\n"
    "      apart: 2 sets, 10 reps, mean load 60\n"
    "\n"
    "  Warm-ups aside. Mean loads in kg, by reps, of dumbbells a hand; with a sign:\n"
    "  what is added to the body or taken off (what was lifted has the body in it).\n"
    "  Effort: the sets that were rated, and what the sheet asked of them or\n"
    "  expected. Done in per cent of the reps, or of the sets where no reps are\n"
    "  counted. Apart: done, but matched with nothing planned; in no other number\n"
    "  here.\n";
/* clang-format on */

static void a_table(void **state)
{
    (void)state;
    struct looked l =
        look_back("2027-01-04 A { squat 90 kg x 1 rpe 6 then 75 kg x 5, 5, 4 rpe 7, 8, 8; press 15 kg x 10, 9; "
                  "pulldown 40 kg x 8, 8 }\n"
                  "2027-01-07 B { pulldown 40 kg x 5, 5, 5; curl 10 kg x 10, 10, 10; sled 40 kg x 20 m, 20 m }\n"
                  "2027-01-14 B { pull-up bodyweight plus 7.5 kg x 5, 5, 5; curl as planned; sled skipped }\n"
                  "2027-02-06 { squat 60 kg x 5, 5 }",
                  (struct review_scope){ .outside = true, .to = day_of("2027-02-06") });
    assert_string_equal(part_text(&l, review_table), expected);
    look_away(&l);
}

static void nothing_planned_or_done(void **state)
{
    (void)state;
    struct looked l = look_back("2027-02-06 missed", (struct review_scope){ .outside = true });
    assert_string_equal(part_text(&l, review_table), "\nPLANNED AND DONE\n  Nothing was planned, and no set was written down.\n");
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(a_table), cmocka_unit_test(nothing_planned_or_done) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
