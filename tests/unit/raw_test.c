/* src/plan/raw.c: language.md, section 5 (1, 2, 5, 6), and the clauses of section 3 that say a load. Shares of the max are the
 * published Brzycki (37 - n)/36 up to n = 10 and Epley 1/(1 + n/30) above, worked out in exact fractions (python,
 * fractions). */
#include "club.h"

#define NO_MAX "athlete ines { gym hall; bodyweight 60 kg }\n"
#define NO_WEIGHT "athlete ines { gym hall; max squat 100 kg }\n"

#define BEST "diary ines { 2027-01-04 A { squat 112 kg x 1 rpe 10 } }\n"

static const struct row rows[] = {
    /* A single at rpe 10 weighs as much as the undated line: the middle of 100 and 112 kg on the logarithm, 105.8 kg. */
    CLUB("at rpe the running max of the week's first day", INES BEST, "weeks 2; day A on mon { squat 1 x 1 at rpe 8 }", "1x1 95@8 | 1x1 100@8"),
    CLUB("max fixed keeps to the lines", INES BEST, "weeks 2; max fixed; day A on mon { squat 1 x 1 at rpe 8 }", "1x1 95@8 | 1x1 95@8"),
    CLUB("max to works from a part of the running max", INES BEST, "weeks 2; max to 90%; day A on mon { squat 1 x 1 at rpe 8 }",
         "1x1 85@8 | 1x1 90@8"), /* 89.9 */
    CLUB("at S% the newest max line", INES BEST, "weeks 2; day A on mon { squat 1 x 1 at 90% }", "1x1 90 | 1x1 90"),
    { .says = "a cap on effort goes by the max that the set uses", .declarations = INES BEST,
      .block = "weeks 2; day A on mon { squat 1 x 1 at 96% cap rpe 8; squat 1 x 1 at 120 kg cap rpe 8 }",
      .plan = "1x1 92.5!; 1x1 92.5! | 1x1 92.5!; 1x1 97.5!", .findings = "warning unmatched-diary `squat`" },
    /* 5.2 effort to load */
    /* n = 3: 94.44; n = 7: 83.33; n = 4: 91.67; n = 1: 100 */
    PLAN("at rpe: worked out from the max",
         "weeks 1; day A { squat 1 x 1 at rpe 8 then 3 x 5 at rpe 8 then 1 x 3 at rpe 9 then 1 x 1 at rpe 10 }",
         "1x1 95@8, 3x5 82.5@8, 1x3 92.5@9, 1x1 100@10"),
    PLAN("rir 2 is rpe 8", "weeks 1; day A { squat 3 x 5 at rir 2 }", "3x5 82.5@8"),
    /* n = 12: 1/1.4 = 71.43 */
    PLAN("above ten repetitions the other curve holds", "weeks 1; day A { squat 3 x 10 at rpe 8 }", "3x10 72.5@8"),
    CLUB("at an effort without a max: open, and the effort is printed", NO_MAX,
         "weeks 1; day A { squat 3 x 5 at rpe 8 }", "3x5 ?@8"),
    CLUB_FAULT("at a per cent without a max is an error", NO_MAX, "weeks 1; day A { squat 3 x 5 at 80% }",
               "error missing-max `at 80%`"),
    CLUB_FAULT("of another lift without a max as well", NO_MAX, "weeks 1; day A { curl 3 x 5 at 20% of squat }",
               "error missing-max `at 20% of squat`"),
    CLUB_FAULT("a max that comes later is none yet", "athlete ines { gym hall; max squat 100 kg on 2027-01-05 }\n",
               "weeks 1; day A { squat 3 x 5 at 80% }", "error missing-max `at 80%`"),
    CLUB("its week is its first day",
         "athlete ines { gym hall; max squat 100 kg on 2027-01-04; max squat 110 kg on 2027-01-11 }\n",
         "weeks 2; day A on sun { squat 3 x 5 at 80% }", "3x5 80 | 3x5 87.5"),

    /* where a load may come from */
    PLAN("at a per cent of the max", "weeks 1; day A { squat 3 x 5 at 80% }", "3x5 80"),
    PLAN("at a per cent of another lift's max", "weeks 1; day A { curl 3 x 5 at 20% of squat }", "3x5 20"),
    PLAN("at a per cent of bodyweight", "weeks 1; day A { curl 3 x 5 at 50% of bodyweight }", "3x5 30"),
    CLUB_FAULT("of a bodyweight that nobody knows", NO_WEIGHT, "weeks 1; day A { curl 3 x 5 at 50% of bodyweight }",
               "error missing-bodyweight `at 50% of bodyweight`"),
    PLAN("at a weight", "weeks 1; day A { squat 3 x 5 at 77.5 kg }", "3x5 77.5"),
    PLAN("at same", "weeks 1; day A { squat 1 x 5 at 80% then 2 x 3 at same }", "1x5 80, 2x3 80"),
    FAULT("a load without a unit could be a forgotten per cent", "weeks 1; day A { squat 3 x 5 at 80 }",
          "error unit `80`"),
    FAULT("a drop without a unit too", "weeks 1; day A { squat top 1 x 5 at 80% then 3 x 5 drop 10 }",
          "error unit `10`"),
    FAULT("only a per cent can be of something", "weeks 1; day A { curl 3 x 5 at 80 kg of squat }",
          "error unit `80 kg`"),
    SHOW("of this lift's heaviest load on that day of the same week",
         "weeks 2; day A on mon { squat 3 x 5 at 70 | 80% then 1 x 3 at 75 | 85% }; day B on thu { squat 3 x 5 at 90% "
         "of day A }",
         SHOW_DAYS,
         /* 0.9 × 75 = 67.5; 0.9 × 85 = 76.5 */
         "A: squat 3x5 70, 1x3 75 / B: squat 3x5 67.5 | A: squat 3x5 80, 1x3 85 / B: squat 3x5 77.5"),
    SHOW("of a day that comes later in the week",
         "weeks 1; day A on mon { squat 3 x 5 at 90% of day B }; day B on thu { squat 3 x 5 at 80% }", SHOW_DAYS,
         "A: squat 3x5 72.5 / B: squat 3x5 80"), /* 72: nearer to 72.5 than to 70 */
    SHOW("of a day trained twice means the heaviest so far that week",
         "weeks 1; day A on mon, fri { squat 3 x 5 at 80% }; day B on thu { squat 3 x 5 at 50% of day A }", SHOW_DAYS,
         "A: squat 3x5 80 / B: squat 3x5 40 / A: squat 3x5 80"),
    FAULT("days that hang on each other",
          "weeks 1; day A on mon { squat 3 x 5 at 90% of day B }; day B on thu { squat 3 x 5 at 90% of day A }",
          "error cycle `at 90% of day A`"),
    FAULT("of a day that the block does not have", "weeks 1; day A on mon { squat 3 x 5 at 90% of day C }",
          "error unknown-name `C`"),
    SHOW("open, if the day's load is open",
         "weeks 1; day A on mon { curl 3 x 5 at rpe 8 }; day B on thu { curl 3 x 5 at 90% of day A }", SHOW_GROUPS,
         "3x5 ?@8 / 3x5 <90 % of day A>"),
    SHOW("warm-ups of that day are no load to go by",
         "weeks 1; day A on mon { squat warm-up 1 x 5 at 50% then 3 x 5 at 60% }; day B on thu { squat 1 x 5 at 100% "
         "of day A }",
         SHOW_GROUPS, "warm-up 1x5 30, 3x5 60 / 1x5 60"),

    /* 5.5 hanging loads */
    PLAN("a drop starts from the rounded load",
         "weeks 1; day A { squat top 1 x 1 at rpe 8 then back-off 4 x 5 drop 15% }",
         "top 1x1 95@8, back-off 4x5 80"), /* 95 × 0.85 = 80.75 → 80; of 94.44: 80.28 */
    PLAN("below the nearest top before it in the entry",
         "weeks 1; day A { squat top 1 x 3 at 90% then 2 x 5 at 70% then back-off 2 x 5 drop 10% }",
         "top 1x3 90, 2x5 70, back-off 2x5 80"), /* 81: 80 is nearer than 82.5 */
    PLAN("of two tops the nearest",
         "weeks 1; day A { squat top 1 x 3 at 90% then top 1 x 3 at 80% then back-off 2 x 5 drop 10% }",
         "top 1x3 90, top 1x3 80, back-off 2x5 72.5"), /* 72 */
    PLAN("or else of the group before it",
         "weeks 1; day A { squat 1 x 3 at 90% then 2 x 5 at 70% then back-off 2 x 5 drop 10% }",
         "1x3 90, 2x5 70, back-off 2x5 62.5"), /* 63 */
    PLAN("a drop in kilograms", "weeks 1; day A { squat top 1 x 3 at 90% then back-off 2 x 5 drop 12.5 kg }",
         "top 1x3 90, back-off 2x5 77.5"),
    PLAN("a drop in pounds", "weeks 1; day A { squat top 1 x 3 at 90% then back-off 2 x 5 drop 10 lb }",
         "top 1x3 90, back-off 2x5 85"), /* 85.46 */
    FAULT("none to drop from is an error", "weeks 1; day A { squat back-off 2 x 5 drop 10% }",
          "error no-top `drop 10%`"),
    FAULT("none to take the load of", "weeks 1; day A { squat 2 x 5 at same }", "error no-top `at same`"),
    FAULT("a top that is not trained in this week",
          "weeks 2; day A { squat top 1 x 1 at 90% in weeks 1 then back-off 2 x 5 drop 10% }",
          "error no-top `drop 10%`"),
    PLAN("a top that is not trained this week: the group before",
         "weeks 2; day A { squat top 1 x 1 at 95% in weeks 1 then 2 x 5 at 70% then back-off 2 x 5 drop 10% }",
         "top 1x1 95, 2x5 70, back-off 2x5 85 | 2x5 70, back-off 2x5 62.5"), /* 85.5; 63 */
    PLAN("if the top is open so is the drop", "weeks 1; day A { curl top 1 x 5 at rpe 8 then back-off 3 x 8 drop 15% }",
         "top 1x5 ?@8, back-off 3x8 <15 % below the top set>"),
    PLAN("in kilograms too", "weeks 1; day A { curl 1 x 5 at rpe 8 then 3 x 8 drop 5 kg }",
         "1x5 ?@8, 3x8 <5 kg below the sets before>"),
    PLAN("and at same", "weeks 1; day A { curl top 1 x 5 at rpe 8 then 3 x 8 at same }",
         "top 1x5 ?@8, 3x8 <as the top set>"),
    PLAN("a drop by the week", "weeks 2; day A { squat top 1 x 3 at 90% then back-off 2 x 5 drop 10 | 20% }",
         "top 1x3 90, back-off 2x5 80 | top 1x3 90, back-off 2x5 72.5"),

    /* warm-ups */
    PLAN("warm-up per cents are of the first working load as rounded",
         "weeks 1; day A { squat warm-up 1 x 5 at 50% then warm-up 1 x 3 at 70% then 3 x 5 at 82% }",
         "warm-up 1x5 40, warm-up 1x3 57.5, 3x5 82.5"), /* 41.25: 40 and 42.5 are as near, ties down; 57.75 → 57.5 */
    PLAN("of equal neighbours the first stays",
         "weeks 1; day A { squat warm-up 1 x 5 at 20% then warm-up 1 x 3 at 40% then 3 x 5 at 40% }",
         "warm-up 1x5 20_, 3x5 40"),
    PLAN("one at or above the working load is left out",
         "weeks 1; day A { squat warm-up 1 x 5 at 50% then warm-up 1 x 1 at 100% then 3 x 5 at 60% }",
         "warm-up 1x5 30, 3x5 60"),
    PLAN("a warm-up below the bar is the bar, and no finding",
         "weeks 1; day A { squat warm-up 1 x 5 at 10% then 3 x 5 at 60% }", "warm-up 1x5 20_, 3x5 60"),
    PLAN("a warm-up by weight", "weeks 1; day A { squat warm-up 1 x 5 at 40 kg then 3 x 5 at 60% }",
         "warm-up 1x5 40, 3x5 60"),
    PLAN("a warm-up of an open load is open", "weeks 1; day A { curl warm-up 1 x 5 at 50% then 3 x 5 at rpe 8 }",
         "warm-up 1x5 <50 % of the first working load>, 3x5 ?@8"),
    PLAN("a warm-up written after the working sets", "weeks 1; day A { squat 3 x 5 at 60% then warm-up 1 x 5 at 50% }",
         "3x5 60, warm-up 1x5 30"),
    FAULT("a warm-up has nothing to drop from", "weeks 1; day A { squat warm-up 1 x 5 drop 10% then 3 x 5 at 60% }",
          "error no-top `drop 10%`"),

};

int main(void)
{
    return rows_run(ARRAY(rows), NULL, 0);
}
