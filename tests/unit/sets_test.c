#include "club.h"

#define FINE "gym fine { stack 1 to 100 step 0.1 kg }\nlift row { loads stack }\nathlete ines { gym fine }\n"

/* The values of a series by week: language.md, section 3 (Series), and what sets and reps may be. Percentages are read
 * off the sled, whose max is 1000 kg. Ramps worked by hand: a + (b - a)(i - 1)/(n - 1), then halves away from zero. */
static const struct row rows[] = {
    PLAN("a plain number holds in every week", "weeks 3; day A { sled 3 x 5 at 70% }", "3x5 700 | 3x5 700 | 3x5 700"),
    PLAN("a bar list: the i-th; the last holds", "weeks 3; day A { sled 3 x 5 at 70 | 75% }",
         "3x5 700 | 3x5 750 | 3x5 750"),
    PLAN_FAULT("more values than weeks is a warning", "weeks 2; day A { sled 3 x 5 at 70 | 75 | 80% }",
               "3x5 700 | 3x5 750", "warning weeks `70 | 75 | 80%`"),
    PLAN_FAULT("more sets than weeks is a warning too", "weeks 2; day A { sled (3 | 4 | 5) x 5 at 70% }",
               "3x5 700 | 4x5 700", "warning weeks `(3 | 4 | 5)`"),
    PLAN("as many values as weeks is none", "weeks 2; day A { sled (3 | 4) x (5 | 4) at 70 | 75% }",
         "3x5 700 | 4x4 750"),
    /* 73 1/3 and 76 2/3 to the half */
    PLAN("a ramp of per cents goes in halves", "weeks 4; day A { sled 3 x 5 at from 70 to 80% }",
         "3x5 700 | 3x5 735 | 3x5 765 | 3x5 800"),
    PLAN("a ramp downwards", "weeks 3; day A { sled 3 x 5 at from 80 to 70% }", "3x5 800 | 3x5 750 | 3x5 700"),
    PLAN("a ramp in one week: the first value", "weeks 1; day A { sled 3 x 5 at from 70 to 80% }", "3x5 700"),
    /* 6 2/3, 7 1/3 */
    PLAN("a ramp of efforts goes in halves", "weeks 4; day A { curl 3 x 5 at rpe from 6 to 8 }",
         "3x5 ?@6 | 3x5 ?@6.5 | 3x5 ?@7.5 | 3x5 ?@8"),
    PLAN("a ramp of reps left", "weeks 3; day A { curl 3 x 5 at rir from 4 to 2 }", "3x5 ?@6 | 3x5 ?@7 | 3x5 ?@8"),
    /* 3.25 and 2.75 to the half: halves away from zero, 3.5 and 3 */
    PLAN("rir quarters go away from zero", "weeks 3; day A { curl 3 x 5 at rir from 3 to 3.5 }",
         "3x5 ?@7 | 3x5 ?@6.5 | 3x5 ?@6.5"),
    PLAN("a ramp of sets goes in ones", "weeks 4; day A { curl (from 3 to 5) x 5 }", "3x5 ? | 4x5 ? | 4x5 ? | 5x5 ?"),
    PLAN("halves of sets away from zero", "weeks 3; day A { curl (from 2 to 5) x 5 }", "2x5 ? | 4x5 ? | 5x5 ?"),
    PLAN("a ramp of reps goes in ones", "weeks 4; day A { curl 3 x (from 10 to 5) }", "3x10 ? | 3x8 ? | 3x7 ? | 3x5 ?"),
    /* 53 1/3 and 56 2/3 kg on a stack in steps of 0.1 kg; rounded to 53 or 53.5 first they would print so */
    CLUB("a ramp of weights is not rounded", FINE, "weeks 4; day A { row 3 x 5 at from 50 to 60 kg }",
         "3x5 50 | 3x5 53.3 | 3x5 56.7 | 3x5 60"),
    PLAN("only ramps round: a list", "weeks 1; day A { sled 3 x 5 at 71.25% }", "3x5 712.5"),
    PLAN("only ramps round: a step", "weeks 3; day A { sled 3 x 5 at 70% plus 1.25% each week }",
         "3x5 700 | 3x5 712.5 | 3x5 725"),
    PLAN("only ramps round: a wave", "weeks 4; day A { sled 3 x 5 at wave 70.25 | 75% plus 1.25% each pass }",
         "3x5 702.5 | 3x5 750 | 3x5 715 | 3x5 762.5"),
    PLAN("first plus step each two weeks", "weeks 5; day A { curl (3 plus 1 each 2 weeks) x 5 }",
         "3x5 ? | 3x5 ? | 4x5 ? | 4x5 ? | 5x5 ?"),
    PLAN("minus each week", "weeks 3; day A { sled 3 x 5 at 80% minus 5% each week }", "3x5 800 | 3x5 750 | 3x5 700"),
    PLAN("a step of weights", "weeks 3; day A { curl 3 x 5 at 20 kg plus 2.5 kg each week }",
         "3x5 20 | 3x5 22.5 | 3x5 25"),
    PLAN("a step of efforts", "weeks 3; day A { curl 3 x 5 at rpe 6 plus 0.5 each week }",
         "3x5 ?@6 | 3x5 ?@6.5 | 3x5 ?@7"),
    PLAN("a wave over and over, each pass higher",
         "weeks 7; day A { sled 3 x 5 at wave 70 | 75 | 80% plus 2% each pass }",
         "3x5 700 | 3x5 750 | 3x5 800 | 3x5 720 | 3x5 770 | 3x5 820 | 3x5 740"),
    PLAN("a wave without growth", "weeks 4; day A { sled 3 x 5 at wave 70 | 75 | 80% }",
         "3x5 700 | 3x5 750 | 3x5 800 | 3x5 700"),
    PLAN("a wave longer than the block is no warning", "weeks 2; day A { sled 3 x 5 at wave 70 | 75 | 80% }",
         "3x5 700 | 3x5 750"),

    /* which weeks a series counts */
    PLAN("it counts the weeks of the weeks group",
         "weeks 4; weeks 1-2 { day A { sled 3 x 5 at 70% } }; weeks 3-4 { day A { sled 3 x 5 at from 60 to 80% } }",
         "3x5 700 | 3x5 700 | 3x5 600 | 3x5 800"),
    PLAN("or of its in weeks", "weeks 4; day A { sled 1 x 5 at 50% then 3 x 5 at from 60 to 80% in weeks 3-4 }",
         "1x5 500 | 1x5 500 | 1x5 500, 3x5 600 | 1x5 500, 3x5 800"),
    PLAN_FAULT("a list in a weeks group of two weeks", "weeks 4; weeks 3-4 { day A { sled 3 x 5 at 60 | 70 | 80% } }",
               " |  | 3x5 600 | 3x5 700", "warning weeks `60 | 70 | 80%`"),
    PLAN("a let counts those of the place where it stands: the block",
         "weeks 4; let $t = from 60 to 80%; weeks 1-2 { day A { sled 3 x 5 at $t } }; weeks 3-4 { day A { sled 3 x 5 "
         "at $t } }",
         "3x5 600 | 3x5 665 | 3x5 735 | 3x5 800"),
    PLAN("a let counts those of the place where it stands: a weeks group",
         "weeks 4; weeks 3-4 { let $t = from 60 to 80%; day A { sled 3 x 5 at $t } }", " |  | 3x5 600 | 3x5 800"),
    PLAN("a let of a day in a weeks group counts the group's",
         "weeks 4; weeks 3-4 { day A { let $t = from 60 to 80%; sled 3 x 5 at $t } }", " |  | 3x5 600 | 3x5 800"),
    PLAN("the block's let under in weeks still counts the block's weeks",
         "weeks 4; let $t = from 60 to 80%; day A { sled 3 x 5 at $t in weeks 3-4 }", " |  | 3x5 735 | 3x5 800"),
    PLAN("a day left out still counts its week",
         "weeks 3; day A { sled 3 x 5 at 70% plus 1% each week }; adjust ines in weeks 2 { skip day A }",
         "3x5 700 |  | 3x5 720"),
    PLAN("taper weeks are training weeks", "weeks 3; taper week 3 { sets to 1 }; day A { sled 3 x 5 at 70 | 72 | 74% }",
         "3x5 700 | 3x5 720 | 1x5 740"),
    PLAN("a deload week takes the value of the training week before it",
         "weeks 4; deload week 3 { note \"easy\" }; day A { sled 3 x 5 at 70 | 72 | 74% }",
         "3x5 700 | 3x5 720 | 3x5 720 | 3x5 740"),
    PLAN("the first, if none is before it",
         "weeks 3; deload week 1 { note \"easy\" }; day A { sled 3 x 5 at 70 | 72% }", "3x5 700 | 3x5 700 | 3x5 720"),
    PLAN_FAULT("a deload week is none to count for a list that is too long",
               "weeks 3; deload week 2 { note \"easy\" }; day A { sled 3 x 5 at 70 | 72 | 74% }",
               "3x5 700 | 3x5 700 | 3x5 720", "warning weeks `70 | 72 | 74%`"),

    PLAN("in weeks within a weeks group: the nearest counts",
         "weeks 4; weeks 2-4 { day A { curl 1 x 5; sled 3 x 5 at from 60 to 80% in weeks 3-4 } }",
         " | 1x5 ? | 1x5 ?; 3x5 600 | 1x5 ?; 3x5 800"),
    PLAN("a deload week of a group takes the group's training week before it",
         "weeks 4; deload week 4 { note \"easy\" }; weeks 2-4 { day A { sled 3 x 5 at from 60 to 80% } }",
         " | 3x5 600 | 3x5 800 | 3x5 800"),
    PLAN("repeated weeks keep their values",
         "weeks 2; adjust ines { repeat week 1 }; day A { sled 3 x 5 at from 60 to 80% }",
         "3x5 600 | 3x5 600 | 3x5 800"),

    /* what is counted */
    PLAN("minutes are counted in seconds", "weeks 2; day A { sled 2 x 3 min; curl 1 x 1-2 min at 20 kg | 22.5 kg }",
         "2x180s ?; 1x60-120s 20 | 2x180s ?; 1x60-120s 22.5"),
    PLAN("a warm-up without its work that week is left out", "weeks 2; day A { squat { warm-up 1 x 5 at 50%; 2 x 5 at 60 kg in weeks 2 } }",
         " | warm-up 1x5 30, 2x5 60"),

    /* commas run over sets */
    PLAN("a comma list runs over sets", "weeks 1; day A { sled 3 x 5 at 70, 75, 80% }", "1x5 700, 1x5 750, 1x5 800"),
    PLAN("commas and bars", "weeks 2; day A { sled 2 x 5 at 70, 75% | 75, 80% }",
         "1x5 700, 1x5 750 | 1x5 750, 1x5 800"),
    PLAN("equal neighbours make one run", "weeks 1; day A { sled 4 x 5 at 70, 70, 75, 75% }", "2x5 700, 2x5 750"),
    PLAN("a comma list of reps", "weeks 1; day A { sled 3 x (5, 4, 3) at 70% }", "1x5 700, 1x4 700, 1x3 700"),
    PLAN("reps and loads by the set", "weeks 1; day A { sled 3 x (5, 4, 3) at 70, 75, 80% }",
         "1x5 700, 1x4 750, 1x3 800"),
    PLAN("efforts by the set", "weeks 1; day A { curl 3 x 5 at rpe 6, 7, 8 }", "1x5 ?@6, 1x5 ?@7, 1x5 ?@8"),
    FAULT("a comma list is as long as the week's sets", "weeks 1; day A { sled 3 x 5 at 70, 75% }",
          "error list-length `70, 75%`"),
    FAULT("one that is too long", "weeks 1; day A { sled 1 x 5 at 70, 75% }", "error list-length `70, 75%`"),
    FAULT("one mistake is one finding in however many weeks", "weeks 4; day A { sled 3 x 5 at 70, 75% }",
          "error list-length `70, 75%`"),
    FAULT("it must fit the sets of each week", "weeks 2; day A { sled (2 | 3) x 5 at 70, 75% }",
          "error list-length `70, 75%`"),
    PLAN("same after a comma list hangs on its last set",
         "weeks 1; day A { sled 3 x 5 at 70, 75, 80% then 2 x 4 at same }", "1x5 700, 1x5 750, 1x5 800, 2x4 800"),
    PLAN("drop after a comma list hangs on its last set",
         "weeks 1; day A { sled 3 x 5 at 70, 75, 80% then back-off 2 x 4 drop 10% }",
         "1x5 700, 1x5 750, 1x5 800, back-off 2x4 720"),

    /* bands: the middle counts */
    /* n = 5 + 10 - 6.5 = 8.5; (37 - 8.5)/36 of 100 kg = 79.1667 */
    PLAN("a band of efforts uses its middle", "weeks 1; day A { squat 3 x 5 at rpe 6-7 }", "3x5 80@6-7"),
    PLAN("a band of reps left", "weeks 1; day A { squat 3 x 5 at rir 3-4 }", "3x5 80@6-7"),
    /* n = 10 + 3 = 13; 1/(1 + 13/30) of 100 kg = 69.767 */
    PLAN("a range of reps uses its middle", "weeks 1; day A { squat 3 x 8-12 at rpe 7 }", "3x8-12 70@7"),
    PLAN("a band of per cents uses its middle", "weeks 1; day A { sled 3 x 5 at 65-70% }", "3x5 675"),
    PLAN("a band of sets counts its middle, rounded up", "weeks 1; day A { curl 2-5 x 5 }", "4x5 ?"),
    PLAN("and whole where it is", "weeks 1; day A { curl 2-4 x 5 }", "3x5 ?"),
    FAULT("a range from high to low", "weeks 1; day A { curl 3 x 12-8 }", "error range `12-8`"),
    FAULT("efforts from high to low", "weeks 1; day A { curl 3 x 8 at rpe 8-7 }", "error range `8-7`"),

    /* reps of all kinds */
    PLAN("seconds with an effort leave the load open", "weeks 1; day A { squat 3 x 30 s at rpe 8 }", "3x30s ?@8"),
    PLAN("metres with an effort leave the load open", "weeks 1; day A { squat 3 x 20 m at rpe 8 }", "3x20m ?@8"),
    PLAN("a carry with a weight", "weeks 1; day A { curl 3 x 20 m at 30 kg }", "3x20m 30"),
    PLAN("a ramp of seconds", "weeks 3; day A { curl 2 x (from 20 to 40 s) }", "2x20s ? | 2x30s ? | 2x40s ?"),
    PLAN("a cluster is counted as its sum", "weeks 1; day A { sled 3 x 2+2+2 at 70% pause 20 s }", "3x6 700"),
    /* n = 6 + 2 = 8; (37 - 8)/36 of 100 kg = 80.56 */
    PLAN("a cluster at an effort takes its sum", "weeks 1; day A { squat 3 x 2+2+2 at rpe 8 }", "3x6 80@8"),
    PLAN("total: in as many sets as it takes", "weeks 1; day A { curl total 30 at 20 kg }", "0x30 20"),
    PLAN("amrap with the reps that count as made", "weeks 1; day A { sled 1 x amrap at 70% at least 5 }",
         "1xamrap5+ 700"),
    PLAN("amrap alone", "weeks 1; day A { sled 1 x amrap at 70% }", "1xamrap 700"),
    FAULT("amrap at an effort is an error", "weeks 1; day A { sled 1 x amrap at rpe 8 }", "error open-load `at rpe 8`"),

    /* numbers that are none */
    FAULT("sets are whole", "weeks 1; day A { curl 2.5 x 5 }", "error range `2.5`"),
    FAULT("reps are whole", "weeks 1; day A { curl 3 x 5.5 }", "error range `5.5`"),
    FAULT("no sets at all", "weeks 1; day A { curl 0 x 5 }", "error range `0`"),
    FAULT("sets that fall below one in a week", "weeks 4; day A { curl (3 minus 1 each week) x 5 }",
          "error range `(3 minus 1 each week)`"),
    FAULT("efforts go in halves", "weeks 1; day A { curl 3 x 5 at rpe 7.3 }", "error range `7.3`"),
    FAULT("efforts end at ten", "weeks 1; day A { curl 3 x 5 at rpe 11 }", "error range `11`"),
    FAULT("efforts that climb past ten", "weeks 3; day A { curl 3 x 5 at rpe 9 plus 1 each week }",
          "error range `9 plus 1 each week`"),
    FAULT("rir that falls below nothing", "weeks 3; day A { curl 3 x 5 at rir 1 minus 1 each week }",
          "error range `1 minus 1 each week`"),
    FAULT("more than 100 sets", "weeks 1; day A { curl 101 x 5 }", "error range `101`"),
    PLAN("100 sets are fine", "weeks 1; day A { curl 100 x 5 }", "100x5 ?"),
    FAULT("more than 1000 reps", "weeks 1; day A { curl 1 x 1001 }", "error range `1001`"),
};

int main(void)
{
    return rows_run(ARRAY(rows), NULL, 0);
}
