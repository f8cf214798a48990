/* src/plan/load.c: language.md, section 5 (3, 4, 6): caps, rounding, and what a load means. Shares of the max are the published
 * Brzycki (37 - n)/36 up to n = 10 and Epley 1/(1 + n/30) above, worked out in exact fractions (python, fractions). */
#include "club.h"

#define NO_MAX "athlete ines { gym hall; bodyweight 60 kg }\n"
#define NO_GYM "athlete ines { max squat 101 kg; max press 20 kg }\n"
#define POUNDS                                                                                                         \
    "units lb\ngym rack { bar 45 lb; plates 45 x 8, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }\nlift swing\n"                 \
    "athlete ines { gym rack; max squat 300 lb; max swing 100 lb }\n"

static const struct row rows[] = {
    /* 5.3 caps; impossible sets */
    /* rpe 8 at 3 reps: n = 5, 88.89; rounded down 87.5 */
    PLAN("a load above the cap is lowered, rounding down", "weeks 1; day A { squat 2 x 3 at 90% cap rpe 8 }",
         "2x3 87.5!"),
    PLAN("one at the cap is not", "weeks 1; day A { squat 2 x 3 at 87.5% cap rpe 8 }", "2x3 87.5"),
    PLAN("cap rir 2 is cap rpe 8", "weeks 1; day A { squat 2 x 3 at 90% cap rir 2 }", "2x3 87.5!"),
    PLAN("capped if planned or rounded it exceeds the cap", "weeks 1; day A { squat 2 x 3 at 79% cap 79.5% }",
         "2x3 77.5!"), /* 79 rounds to 80 */
    PLAN("planned above, rounded at it", "weeks 1; day A { squat 2 x 3 at 81% cap 80% }", "2x3 80!"),
    PLAN("a cap by weight", "weeks 1; day A { squat 2 x 3 at 90% cap 81 kg }", "2x3 80!"),
    PLAN("of a lift that loads the body a cap is of what is added", "weeks 1; day A { pull-up 3 x 3 at bodyweight plus 15 kg cap 10 kg }",
         "3x3 10!"),
    PLAN("and is kept with less", "weeks 1; day A { pull-up 3 x 3 at bodyweight plus 5 kg cap 10 kg }", "3x3 5"),
    PLAN("a cap by the week", "weeks 2; day A { squat 2 x 3 at 90% cap 80 | 95% }", "2x3 80! | 2x3 90"),
    PLAN("the rpe shown is what is done", "weeks 1; day A { squat 2 x 3 at rpe 9 cap 80% }", "2x3 80!"),
    PLAN("a cap of an open load lowers the effort", "weeks 1; day A { curl 2 x 3 at rpe 9 cap rpe 8 }", "2x3 ?@8!"),
    PLAN("the lowest cap wins", "weeks 1; day A { squat 2 x 3 at 95% cap 90% }; adjust ines { cap squat rpe 7 }",
         "2x3 85!"), /* n = 6: 86.11 */
    PLAN_FAULT("a cap below the bar: the bar, with a finding", "weeks 1; day A { squat 3 x 5 at 50 kg cap 15 kg }",
               "3x5 20!_", "warning under-bar `15 kg`"),
    PLAN("a cap on a drop", "weeks 1; day A { squat top 1 x 3 at 90% then back-off 2 x 5 drop 10% cap 75 kg }",
         "top 1x3 90, back-off 2x5 75!"),
    CLUB_FAULT("a cap in per cent without a max", NO_MAX, "weeks 1; day A { squat 3 x 5 at 50 kg cap 80% }",
               "error missing-max `80%`"),
    FAULT("above rpe 10 is impossible", "weeks 1; day A { squat 3 x 5 at 90% }",
          "error impossible-set `at 90%`"), /* 88.89 is all of 5 */
    PLAN("what can just be done is fine", "weeks 1; day A { squat 3 x 5 at 87.5% }", "3x5 87.5"),
    PLAN_FAULT("a single above the max is a warning", "weeks 1; day A { squat 1 x 1 at 102.5% }", "1x1 102.5",
               "warning impossible-set `at 102.5%`"),
    PLAN("impossible-set looks after caps", "weeks 1; day A { squat 3 x 5 at 90% cap 85% }", "3x5 85!"),
    FAULT("by weight it is impossible too", "weeks 1; day A { squat 3 x 5 at 100 kg }",
          "error impossible-set `at 100 kg`"),

    /* 5.4 rounding */
    PLAN("to a reachable load, ties down", "weeks 1; day A { squat 1 x 1 at 71.25% then 1 x 1 at 71.5% }",
         "1x1 70, 1x1 72.5"),
    PLAN_FAULT("a load under the empty bar becomes the bar, with a finding", "weeks 1; day A { squat 3 x 5 at 15% }",
               "3x5 20_", "warning under-bar `at 15%`"),
    PLAN("the bar itself is none", "weeks 1; day A { squat 3 x 5 at 20% }", "3x5 20"),
    CLUB_FAULT("collars belong to the empty bar",
               "gym locked { bar 20 kg; collar 2.5 kg; plates 1.25 x 2, 20 x 4 kg }\nathlete ines { gym locked; max "
               "squat 100 kg }\n",
               "weeks 1; day A { squat 1 x 1 at 22% }", "warning under-bar `at 22%`"),
    CLUB("the bar and its collars are none",
         "gym locked { bar 20 kg; collar 2.5 kg; plates 1.25 x 2, 20 x 4 kg }\nathlete ines { gym locked; max squat "
         "100 kg }\n",
         "weeks 1; day A { squat 1 x 1 at 25% }", "1x1 25"),
    PLAN("dumbbells a hand", "weeks 1; day A { press 3 x 5 at 70% }", "3x5 15"), /* 14 */
    PLAN("below the lightest dumbbell the lightest", "weeks 1; day A { press 3 x 5 at 10% }", "3x5 5"),
    CLUB("above the heaviest the heaviest", NO_MAX, "weeks 1; day A { press 3 x 5 at 90 kg }", "3x5 40"),
    PLAN("a stack's steps", "weeks 1; day A { pulldown 3 x 5 at 65% }", "3x5 30"), /* 32.5: ties down */
    CLUB("without plates the step is 2.5 kg", NO_GYM, "weeks 1; day A { squat 1 x 1 at 70% then 1 x 1 at 71% }",
         "1x1 70, 1x1 72.5"), /* 70.7, 71.71 */
    CLUB("dumbbells without a rack", NO_GYM, "weeks 1; day A { press 3 x 5 at 70% }", "3x5 15"),
    CLUB("weights print in the unit of the gym's bar", POUNDS,
         "weeks 1; day A { squat 1 x 5 at 80% then 1 x 5 at 83% }", "1x5 240, 1x5 250"), /* 249 lb: steps of 5 lb */
    CLUB("a free load in a gym in pounds goes in steps of 5 lb", POUNDS, "weeks 1; day A { swing 1 x 5 at 62% }",
         "1x5 60"),
    CLUB("a weight in kilograms in a gym in pounds", POUNDS, "weeks 1; day A { swing 1 x 5 at 20 kg }",
         "1x5 45"), /* 44.09 lb */
    CLUB("round down",
         "gym low { bar 20 kg; plates 1.25 x 2, 20 x 4 kg; round down }\nathlete ines { gym low; max squat 100 kg }\n",
         "weeks 1; day A { squat 1 x 1 at 62% }", "1x1 60"),
    CLUB("round up",
         "gym high { bar 20 kg; plates 1.25 x 2, 20 x 4 kg; round up }\nathlete ines { gym high; max squat 100 kg }\n",
         "weeks 1; day A { squat 1 x 1 at 61% }", "1x1 62.5"),
    CLUB("the gym of the day", INES "gym cellar { bar 20 kg; plates 20 x 4 kg }\n",
         "weeks 1; day A { gym cellar; squat 1 x 1 at 75% }", "1x1 60"),

    /* 5.6 bodyweight lifts: max 80 kg at a bodyweight of 60 kg */
    PLAN("per cents act on the total, and what is added is printed", "weeks 1; day A { pull-up 3 x 5 at 80% }",
         "3x5 5"), /* 64 - 60 = 4 → 5 */
    PLAN("assistance with a minus", "weeks 1; day A { pull-up 3 x 5 at 70% }",
         "3x5 -5"), /* 56 - 60 = -4: nearer to -5 than to -2.5 */
    PLAN("rounded in steps, ties down",
         "weeks 1; day A { pull-up 1 x 5 at bodyweight plus 6.25 kg then 1 x 5 at bodyweight minus 6.25 kg }",
         "1x5 5, 1x5 -7.5"),
    PLAN("bodyweight alone is nothing added", "weeks 1; day A { pull-up 3 x 5 at bodyweight }", "3x5 0"),
    PLAN("bodyweight plus", "weeks 1; day A { pull-up 3 x 5 at bodyweight plus 7.5 kg }", "3x5 7.5"),
    PLAN("bodyweight minus", "weeks 1; day A { pull-up 3 x 5 at bodyweight minus 10 kg }", "3x5 -10"),
    /* n = 7: 83.33 % of 80 is 66.67, 6.67 added */
    PLAN("efforts act on the total", "weeks 1; day A { pull-up 3 x 5 at rpe 8 }", "3x5 7.5@8"),
    /* 10 % below 70 is 63 */
    PLAN("drops act on the total",
         "weeks 1; day A { pull-up top 1 x 3 at bodyweight plus 10 kg then back-off 3 x 5 drop 10% }",
         "top 1x3 10, back-off 3x5 2.5"),
    FAULT("at bodyweight is for lifts that load it", "weeks 1; day A { squat 3 x 5 at bodyweight }",
          "error misplaced `at bodyweight`"),
    PLAN("a plain weight on a bodyweight lift is what is added", "weeks 1; day A { pull-up 3 x 5 at 5 kg }", "3x5 5"),

    CLUB("her bodyweight is that of the week's first day",
         "athlete ines { gym hall; bodyweight 60 kg on 2027-01-01; bodyweight 62.5 kg on 2027-01-11; bodyweight 70 kg "
         "on 2027-01-12; max pull-up 80 kg }\n",
         "weeks 2; day A { pull-up 3 x 5 at 80% }", "3x5 5 | 3x5 2.5"), /* 64 - 60 = 4; 64 - 62.5 = 1.5 */
    CLUB_FAULT("a max in kilograms, and no bodyweight to take off", "athlete ines { gym hall; max pull-up 80 kg }\n",
               "weeks 1; day A { pull-up 3 x 5 at 80% }", "error missing-bodyweight `at 80%`"),
    CLUB_FAULT("an effort too", "athlete ines { gym hall; max pull-up 80 kg }\n",
               "weeks 1; day A { pull-up 3 x 5 at rpe 8 }", "error missing-bodyweight `at rpe 8`"),
    CLUB("at bodyweight needs no number for it", "athlete ines { gym hall }\n",
         "weeks 1; day A { pull-up 3 x 5 at bodyweight plus 5 kg then 1 x 5 at bodyweight }", "3x5 5, 1x5 0"),
    CLUB("without a max an effort stays open", "athlete ines { gym hall; bodyweight 60 kg }\n",
         "weeks 1; day A { pull-up 3 x 5 at rpe 8 }", "3x5 ?@8"),

    /* maxes in a block */
    PLAN("max to 90% works out every load from nine tenths",
         "weeks 1; max to 90%; day A { squat 1 x 5 at 80% then 1 x 5 at rpe 8 }",
         "1x5 72.5, 1x5 75@8"), /* 72; 0.9 × 83.33 = 75 */
    PLAN("caps in per cent are of the reduced max", "weeks 1; max to 90%; day A { squat 1 x 3 at 90% cap 80% }",
         "1x3 70!"), /* 72, down */
    PLAN("max fixed", "weeks 1; max fixed; day A { squat 1 x 5 at 80% }", "1x5 80"),
};

static const struct plan_run *first_run(const struct plan *plan)
{
    return &plan->weeks[0].days[0].entries[0].groups[0].runs[0];
}

/* One week of ines for the lines of a block. */
static struct plan *planned(struct told *t, const char *lines)
{
    char text[4096];
    snprintf(text, sizeof text, INES "block winter { for ines; starts 2027-01-04; weeks 1; %s }", lines);
    *t = told_club(text);
    return told_plan(t, "winter", "ines");
}

static void percent_and_expected_rpe(void **state)
{
    (void)state;
    /* n = 37 - 36 p up to ten: 80 % is 8.2, so 5 reps are rpe 6.8, printed 7; of 72.5: n = 30 (1/p - 1) = 11.38, rpe
     * 3.62 → 3.5 */
    static const struct {
        const char *lines, *percent, *expected;
        bool under_one;
    } cases[] = {
        { "day A { squat 1 x 5 at 80% }", "80", "7", false },
        { "day A { squat 1 x 5 at 72.5% }", "72.5", "3.5", false },
        { "day A { squat 1 x 1 at 100% }", "100", "10", false },
        { "day A { squat 1 x 5 at 60% }", "60", "-5", true },                 /* n = 20 */
        { "max to 90%; day A { squat 1 x 5 at 80% }", "72.5", "3.5", false }, /* of the full max */
        { "day A { front-squat 1 x 1 at 100% }", "100", "10", false },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t;
        struct plan *plan = planned(&t, cases[i].lines);
        const struct plan_run *run = first_run(plan);
        assert_true(run->has_percent && run->has_expected);
        assert_string_equal(dec_text(t.arena, run->percent), cases[i].percent);
        assert_string_equal(dec_text(t.arena, run->expected), cases[i].expected);
        assert_int_equal(run->expected_under_one, cases[i].under_one);
        told_end(&t);
    }
}

int main(void)
{
    const struct CMUnitTest more[] = { cmocka_unit_test(percent_and_expected_rpe) };
    return rows_run(ARRAY(rows), more, 1);
}
