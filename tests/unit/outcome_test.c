/* What came of a progression's session: language.md, section 6. The next week's load or target tells. */
#include "club.h"

#define MOVES                                                                                                          \
    "progression steady { when made add 2.5 kg; when missed hold; when missed 2 times drop 10% }\n"                    \
    "progression fill { when reps full add 1 step }\n"                                                                 \
    "progression push { when easy add 5 kg; when made add 2.5 kg }\n"

/* A block of three weeks or more with curls on Monday, and what her diary says of them. */
#define DID(sentence, lines, diary, comes) CLUB(sentence, MOVES INES "diary ines {\n" diary "\n}\n", lines, comes)
#define DID_FAULT(sentence, lines, diary, comes, found)                                                                \
    {                                                                                                                  \
        .says = sentence, .declarations = MOVES INES "diary ines {\n" diary "\n}\n", .block = lines, .plan = comes,    \
        .findings = found                                                                                              \
    }

static const struct row rows[] = {
    DID("made: every set reached its reps at the printed load", "weeks 3; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl 20 kg x 5, 5, 5 }", "3x5 20 | 3x5 22.5 | 3x5 25"),
    DID("more than printed is made too", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl 25 kg x 6, 6, 6, 6 }", "3x5 20 | 3x5 22.5"),
    DID("missed: a set short", "weeks 3; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl 20 kg x 5, 5, 4 }", "3x5 20 | 3x5 20 | 3x5 22.5"),
    DID("missed: a set lighter", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl 20, 20, 17.5 kg x 5, 5, 5 }", "3x5 20 | 3x5 20"),
    DID("missed: a set not done", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl 20 kg x 5, 5 }", "3x5 20 | 3x5 20"),
    DID("each entry of a lift has its own part", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady; curl { 3 x 5 at 10 kg progression steady; 3 x 5 at 15 kg progression push } }",
        "2027-01-04 A { curl 20 kg x 5, 5, 5 then 10 kg x 5, 5, 4 then 15 kg x 5, 5, 5 }", "3x5 20; 3x5 10, 3x5 15 | 3x5 22.5; 3x5 10, 3x5 17.5"),
    DID("as planned is made", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { curl as planned }", "3x5 20 | 3x5 22.5"),
    DID("a session missed holds", "weeks 3; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A missed because \"travelling\"", "3x5 20 | 3x5 20 | 3x5 22.5"),
    DID_FAULT("a lift that its session does not name holds, with a warning",
              "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady; bench 3 x 5 at rpe 7 }",
              "2027-01-04 A { bench as planned }", "3x5 20; 3x5 47.5@7 | 3x5 20; 3x5 47.5@7", "warning unmatched-diary `2027-01-04`"),
    DID_FAULT("parts that do not fit hold, with a warning", "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }",
              "2027-01-04 A { curl 20 kg x 5, 5 then 20 kg x 5 }", "3x5 20 | 3x5 20", "warning unmatched-diary `curl`"),
    DID("the other lift of a choice holds", "weeks 2; day A on mon { curl or sled 3 x 5 at 20 kg progression steady }",
        "2027-01-04 A { sled 20 kg x 5, 5, 5 }", "3x5 20 | 3x5 20"),
    DID("easy: the last set rated 2 below the printed rpe", "weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push }",
        "2027-01-04 A { squat 80 kg x 5, 5, 5 rpe 4.5 }", "3x5 80 | 3x5 85"), /* Brzycki: n = 37 - 36 x 0.8 = 8.2, rpe 6.8, printed 7 */
    DID("not quite 2 below is made", "weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push }",
        "2027-01-04 A { squat 80 kg x 5, 5, 5 rpe 5.5 }", "3x5 80 | 3x5 82.5"),
    DID("exactly 2 below is easy", "weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push }",
        "2027-01-04 A { squat 80 kg x 5, 5, 5 rpe 5 }", "3x5 80 | 3x5 85"),
    DID("easy needs made", "weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push }",
        "2027-01-04 A { squat 80 kg x 5, 5, 4 rpe 4 }", "3x5 80 | 3x5 80"),
    DID("as planned can be easy", "weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push }",
        "2027-01-04 A { squat as planned rpe 4 }", "3x5 80 | 3x5 85"),
    DID("reps full: every set at the top of the range", "weeks 3; day A on mon { curl 3 x 8-10 at 20 kg progression fill }",
        "2027-01-04 A { curl 20 kg x 10, 10, 10 }", "3x8-10 20 | 3x8-10 22.5 | 3x9-10 22.5"),
    DID("otherwise the target is one more than the weakest set", "weeks 2; day A on mon { curl 3 x 8-12 at 20 kg progression fill }",
        "2027-01-04 A { curl 20 kg x 12, 11, 10 }", "3x8-12 20 | 3x11-12 20"),
    DID("and stays in the range", "weeks 2; day A on mon { curl 3 x 8-12 at 20 kg progression fill }",
        "2027-01-04 A { curl 20 kg x 7, 6, 4 }", "3x8-12 20 | 3x8-12 20"),
    DID("as planned reached the target, not the top", "weeks 2; day A on mon { curl 3 x 8-12 at 20 kg progression fill }",
        "2027-01-04 A { curl as planned }", "3x8-12 20 | 3x9-12 20"),
};

int main(void)
{
    return rows_run(ARRAY(rows), NULL, 0);
}
