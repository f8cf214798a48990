/* Progressions: language.md, section 6. Without a diary every session counts as made with what was printed; with one they
 * go by what was done. */
#include "club.h"

#define MOVES                                                                                                          \
    "progression steady { when made add 2.5 kg; when missed hold; when missed 2 times drop 10% }\n"                    \
    "progression fill { when reps full add 1 step }\nprogression rise { when made add 1 step }\n"                                                                 \
    "progression push { when easy add 5 kg; when made add 2.5 kg }\n"                                                  \
    "progression slow { when made add 1 kg }\n"                                                                        \
    "progression share { when made add 10% }\n"                                                                        \
    "progression both { when reps full add 5 kg; when made add 1 kg }\n"                                               \
    "progression still { when made hold }\n"                                                                           \
    "progression light { when made drop 5 kg }\n"                                                                      \
    "progression fall { when made drop 50% }\n"                                                                        \
    "progression pounds { when made add 5 lb }\n"

#define MOVE(sentence, lines, comes) CLUB(sentence, MOVES INES, lines, comes)
#define MOVE_FAULT(sentence, lines, found) CLUB_FAULT(sentence, MOVES INES, lines, found)
#define MOVE_DAYS(sentence, lines, comes)                                                                              \
    {                                                                                                                  \
        .says = sentence, .declarations = MOVES INES, .block = lines, .plan = comes, .showing = SHOW_DAYS              \
    }

/* A block of three weeks or more with curls on Monday, and what her diary says of them. */
#define DID(sentence, lines, diary, comes) CLUB(sentence, MOVES INES "diary ines {\n" diary "\n}\n", lines, comes)
static const struct row rows[] = {
    MOVE("when made add 2.5 kg", "weeks 3; day A { curl 3 x 5 at 20 kg progression steady }",
         "3x5 20 | 3x5 22.5 | 3x5 25"),
    MOVE("when made add 10%", "weeks 3; day A { curl 3 x 5 at 50 kg progression share }",
         "3x5 50 | 3x5 55 | 3x5 60"), /* 60.5 */
    MOVE("when made add pounds", "weeks 3; day A { curl 3 x 5 at 20 kg progression pounds }",
         "3x5 20 | 3x5 22.5 | 3x5 25"), /* 22.27, 24.54 */
    MOVE("when made hold", "weeks 2; day A { curl 3 x 5 at 20 kg progression still }", "3x5 20 | 3x5 20"),
    MOVE("when made drop ends at nothing", "weeks 3; day A { curl 3 x 5 at 7.5 kg progression light }",
         "3x5 7.5 | 3x5 2.5 | 3x5 0"),
    MOVE("when made drop 50%", "weeks 3; day A { curl 3 x 5 at 20 kg progression fall }", "3x5 20 | 3x5 10 | 3x5 5"),
    MOVE("reps full: the target climbs from the low end", "weeks 5; day A { curl 3 x 8-10 at 20 kg progression fill }",
         "3x8-10 20 | 3x9-10 20 | 3x10 20 | 3x8-10 22.5 | 3x9-10 22.5"),
    MOVE("one number of reps is full when it is reached", "weeks 2; day A { curl 3 x 8 at 20 kg progression fill }",
         "3x8 20 | 3x8 22.5"),
    MOVE("1 step is the distance to the next reachable load above",
         "weeks 3; day A { pulldown 3 x 8 at 20 kg progression fill }", "3x8 20 | 3x8 25 | 3x8 30"),
    MOVE("of what is added to the body a step of the free weights",
         "weeks 3; day A { pull-up 3 x 5 at bodyweight plus 5 kg progression rise }", "3x5 5 | 3x5 7.5 | 3x5 10"),
    MOVE("from assistance too", "weeks 3; day A { pull-up 3 x 5 at bodyweight minus 2.5 kg progression rise }",
         "3x5 -2.5 | 3x5 0 | 3x5 2.5"),
    CLUB("at the end of the stack there is none", MOVES "athlete ines { gym hall }\n",
         "weeks 2; day A { pulldown 3 x 8 at 100 kg progression fill }", "3x8 100 | 3x8 100"),
    MOVE("the target moves only with a reps full line", "weeks 3; day A { curl 3 x 8-10 at 20 kg progression steady }",
         "3x8-10 20 | 3x8-10 22.5 | 3x8-10 25"),
    MOVE("the most specific line acts: reps full before made",
         "weeks 4; day A { curl 3 x 8-9 at 20 kg progression both }",
         "3x8-9 20 | 3x9 20 | 3x8-9 25 | 3x9 27.5"), /* 20, 21, 26, 27 */
    MOVE("without a rating there is no easy", "weeks 3; day A { curl 3 x 5 at 20 kg progression push }",
         "3x5 20 | 3x5 22.5 | 3x5 25"),
    MOVE("kept exact: only the sheet rounds", "weeks 5; day A { curl 3 x 5 at 20 kg progression slow }",
         "3x5 20 | 3x5 20 | 3x5 22.5 | 3x5 22.5 | 3x5 25"), /* 20, 21, 22, 23, 24 */
    CLUB("a per cent is taken once, of the max line of the first week",
         MOVES "athlete ines { gym hall; max squat 100 kg; max squat 120 kg on 2027-01-11 }\n",
         "weeks 3; day A { squat 3 x 5 at 70% progression steady }", "3x5 70 | 3x5 72.5 | 3x5 75"),
    /* ---- with results ---- */
    DID("missed 2 times in a row, and counts anew after it acts",
        "weeks 6; day A on mon { curl 3 x 5 at 50 kg progression steady }",
        "2027-01-04 A { curl 50 kg x 4, 4, 4 }\n2027-01-11 A { curl 50 kg x 4, 4, 4 }\n2027-01-18 A { curl 45 kg x 4, 4, 4 }\n"
        "2027-01-25 A { curl 45 kg x 5, 5, 5 }\n2027-02-01 A { curl 47.5 kg x 4, 4, 4 }",
        "3x5 50 | 3x5 50 | 3x5 45 | 3x5 45 | 3x5 47.5 | 3x5 47.5"),
    DID("skipped holds, and neither counts nor breaks 2 times",
        "weeks 4; day A on mon { curl 3 x 5 at 50 kg progression steady }",
        "2027-01-04 A { curl 50 kg x 4, 4, 4 }\n2027-01-11 A { curl skipped because \"elbow\" }\n2027-01-18 A { curl 50 kg x 4, 4, 4 }",
        "3x5 50 | 3x5 50 | 3x5 50 | 3x5 45"),
    DID("done on a week's first day or later it does not count for that week",
        "weeks 3; day A on sun { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-11 A week 1 { curl 20 kg x 4, 4, 4 }", "3x5 20 | 3x5 22.5 | 3x5 22.5"),
    DID("the state is gone through from the start with what was done",
        "weeks 4; day A on mon { curl 3 x 5 at 20 kg progression steady }",
        "2027-01-18 A week 1 { curl 20 kg x 4, 4, 4 }", "3x5 20 | 3x5 22.5 | 3x5 25 | 3x5 25"),
    DID("a deload week leaves the state alone", "weeks 3; deload week 2; day A on mon { curl 4 x 5 at 20 kg progression steady }",
        "2027-01-11 A { curl 17.5 kg x 3, 3 }", "4x5 20 | 2x5 17.5 | 4x5 22.5"),
    DID("done is compared with what was printed, adjust included",
        "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }; adjust ines in week 1 { load to 15 kg }",
        "2027-01-04 A { curl 15 kg x 5, 5, 5 }", "3x5 15 | 3x5 22.5"),
    MOVE_FAULT("an effort is an error", "weeks 1; day A { curl 3 x 5 at rpe 8 progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("a series is an error", "weeks 2; day A { curl 3 x 5 at 20 | 25 kg progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("a ramp is an error", "weeks 2; day A { curl 3 x 5 at from 20 to 25 kg progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("loads by the set are an error", "weeks 2; day A { curl 2 x 5 at 20, 25 kg progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("no load is an error", "weeks 1; day A { curl 3 x 5 progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("a drop is an error", "weeks 1; day A { curl 1 x 5 at 20 kg then 3 x 5 drop 10% progression steady }",
               "error progression `progression steady`"),
    MOVE_FAULT("a progression nobody has declared", "weeks 1; day A { curl 3 x 5 at 20 kg progression stedy }",
               "error unknown-name `stedy`"),
    MOVE_FAULT("a per cent without a max", "weeks 1; day A { curl 3 x 5 at 70% progression steady }",
               "error missing-max `at 70%`"),
    MOVE_DAYS("shared by all days",
              "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }; day B on thu { curl 3 x 8 at 20 kg "
              "progression steady }",
              "A: curl 3x5 20 / B: curl 3x8 22.5 | A: curl 3x5 25 / B: curl 3x8 27.5"),
    MOVE_DAYS("another starting load is another state",
              "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }; day B on thu { curl 3 x 8 at 10 kg "
              "progression steady }",
              "A: curl 3x5 20 / B: curl 3x8 10 | A: curl 3x5 22.5 / B: curl 3x8 12.5"),
    MOVE_DAYS("another progression too",
              "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }; day B on thu { curl 3 x 8 at 20 kg "
              "progression still }",
              "A: curl 3x5 20 / B: curl 3x8 20 | A: curl 3x5 22.5 / B: curl 3x8 20"),
    MOVE_DAYS("another lift too",
              "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady }; day B on thu { sled 3 x 8 at 20 kg "
              "progression steady }",
              "A: curl 3x5 20 / B: sled 3x8 20 | A: curl 3x5 22.5 / B: sled 3x8 22.5"),
    MOVE_DAYS(
        "it moves after each session, once",
        "weeks 2; day A on mon { curl 3 x 5 at 20 kg progression steady; curl 2 x 8 at 20 kg progression steady }",
        "A: curl 3x5 20; curl 2x8 20 | A: curl 3x5 22.5; curl 2x8 22.5"),
    MOVE_DAYS("a day trained twice a week moves it twice",
              "weeks 2; day A on mon, thu { curl 3 x 5 at 20 kg progression steady }",
              "A: curl 3x5 20 / A: curl 3x5 22.5 | A: curl 3x5 25 / A: curl 3x5 27.5"),
    MOVE("a deload week takes the load of the last training session, then the deload, and leaves the state alone",
         "weeks 4; deload week 3; day A { curl 4 x 5 at 20 kg progression steady }",
         "4x5 20 | 4x5 22.5 | 2x5 20 | 4x5 25"), /* 20.25 */
    MOVE("the unrounded load", "weeks 3; deload week 3; day A { curl 4 x 5 at 103 kg progression slow }",
         "4x5 102.5 | 4x5 105 | 2x5 92.5"), /* 104 × 0.9 = 93.6 */
    MOVE_DAYS(
        "all sessions of a deload week",
        "weeks 3; deload week 2 { note \"easy\" }; day A on mon, thu { curl 3 x 5 at 20 kg progression steady }",
        "A: curl 3x5 20 / A: curl 3x5 22.5 | A: curl 3x5 22.5 / A: curl 3x5 22.5 | A: curl 3x5 25 / A: curl 3x5 27.5"),
    MOVE("a deload before any session takes the start",
         "weeks 2; deload week 1 { note \"easy\" }; day A { curl 3 x 5 at 20 kg progression steady }",
         "3x5 20 | 3x5 20"),
    MOVE("a deload keeps the target",
         "weeks 4; deload week 3 { note \"easy\" }; day A { curl 3 x 8-10 at 20 kg progression fill }",
         "3x8-10 20 | 3x9-10 20 | 3x9-10 20 | 3x10 20"),
    MOVE("in a deload week an amrap becomes its at least number",
         "weeks 2; deload week 2 { note \"easy\" }; day A { curl 1 x amrap at 20 kg at least 5 progression steady }",
         "1xamrap5+ 20 | 1x5 20"),
    MOVE("or is left out",
         "weeks 2; deload week 2 { note \"easy\" }; day A { curl 1 x amrap at 20 kg progression steady then 1 x 5 at "
         "10 kg }",
         "1xamrap 20, 1x5 10 | 1x5 10"),
    MOVE("a taper week moves on",
         "weeks 3; taper week 2 { sets to 1 }; day A { curl 3 x 5 at 20 kg progression steady }",
         "3x5 20 | 1x5 22.5 | 3x5 25"),
    MOVE("adjust acts on the sheet, not on the state",
         "weeks 3; adjust ines in weeks 2 { load down 50% }; day A { curl 3 x 5 at 20 kg progression steady }",
         "3x5 20 | 3x5 10 | 3x5 25"), /* 11.25: as near to 10 as to 12.5, ties down */
    MOVE("caps act on the sheet, not on the state",
         "weeks 3; day A { curl 3 x 5 at 20 kg cap 20 | 20 | 100 kg progression steady }", "3x5 20 | 3x5 20! | 3x5 25"),
    MOVE("a skipped day holds",
         "weeks 3; adjust ines in weeks 2 { skip day A }; day A { curl 3 x 5 at 20 kg progression steady }",
         "3x5 20 |  | 3x5 22.5"),
    MOVE("a skipped lift holds",
         "weeks 3; adjust ines in weeks 2 { skip curl }; day A { curl 3 x 5 at 20 kg progression steady; sled 1 x 5 at "
         "50% }",
         "3x5 20; 1x5 500 | 1x5 500 | 3x5 22.5; 1x5 500"),
    MOVE("at bodyweight plus", "weeks 2; day A { pull-up 3 x 5 at bodyweight plus 5 kg progression steady }",
         "3x5 5 | 3x5 7.5"),
    MOVE("at bodyweight alone", "weeks 2; day A { pull-up 3 x 5 at bodyweight progression steady }", "3x5 0 | 3x5 2.5"),
    MOVE("with assistance", "weeks 2; day A { pull-up 3 x 5 at bodyweight minus 10 kg progression steady }",
         "3x5 -10 | 3x5 -7.5"),
    MOVE("with max to, a per cent of the reduced max",
         "weeks 2; max to 90%; day A { squat 3 x 5 at 80% progression steady }", "3x5 72.5 | 3x5 75"), /* 72, 74.5 */
};

int main(void)
{
    return rows_run(ARRAY(rows), NULL, 0);
}
