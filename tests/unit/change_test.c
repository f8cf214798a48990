/* Deload, taper and adjust: language.md, section 3, Changes. All sums by hand. */
#include "club.h"

#define WEEK "weeks 1; deload week 1 { "
#define AVOIDS "athlete ines { gym hall; max squat 100 kg; max deadlift 100 kg; max front-squat 90 kg; "

static const struct row rows[] = {
    /* a bare deload: sets to 50%; rpe down 2; load down 10% */
    PLAN("a bare deload halves the sets, rounded up", "weeks 2; deload week 2; day A { curl 5 x 5 at 20 kg }",
         "5x5 20 | 3x5 17.5"),
    PLAN("and takes two off the effort", "weeks 2; deload week 2; day A { curl 4 x 5 at rpe 8 }", "4x5 ?@8 | 2x5 ?@6"),
    PLAN("and a tenth off sets given by per cent", "weeks 2; deload week 2; day A { sled 4 x 5 at 80% }",
         "4x5 800 | 2x5 720"),
    PLAN("but not off those given by effort", "weeks 2; deload week 2; day A { squat 4 x 5 at rpe 8 }",
         "4x5 82.5@8 | 2x5 77.5@6"), /* n = 9: 77.78 */
    PLAN("deload each 2 weeks", "weeks 5; deload each 2 weeks; day A { curl 4 x 5 }",
         "4x5 ? | 2x5 ? | 4x5 ? | 2x5 ? | 4x5 ?"),
    PLAN("deload weeks 2 and 4", "weeks 4; deload weeks 2, 4; day A { curl 4 x 5 }", "4x5 ? | 2x5 ? | 4x5 ? | 2x5 ?"),
    PLAN_FAULT("a week the block does not have is a warning", "weeks 2; deload week 3; day A { curl 4 x 5 }",
               "4x5 ? | 4x5 ?", "warning weeks `3`"),
    FAULT("a taper must state its changes", "weeks 2; taper week 2; day A { curl 4 x 5 }",
          "error missing `taper week 2`"),
    PLAN("a two-step taper", "weeks 3; taper weeks 2-3 { sets to 60 | 40% }; day A { curl 5 x 5 }",
         "5x5 ? | 3x5 ? | 2x5 ?"),
    PLAN("a deload over two weeks steps as well",
         "weeks 3; deload weeks 2-3 { sets to 60 | 40% }; day A { curl 5 x 5 }", "5x5 ? | 3x5 ? | 2x5 ?"),
    FAULT("a week is deload or taper, not both",
          "weeks 2; deload week 2; taper week 2 { sets to 1 }; day A { curl 4 x 5 }", "error overlap `week 2`"),

    /* up, down, to */
    PLAN("sets up", WEEK "sets up 2 }; day A { curl 3 x 5 }", "5x5 ?"),
    PLAN("sets down", WEEK "sets down 1 }; day A { curl 3 x 5 }", "2x5 ?"),
    PLAN("sets never fall below one", WEEK "sets down 5 }; day A { curl 3 x 5 }", "1x5 ?"),
    PLAN("sets to", WEEK "sets to 2 }; day A { curl 3 x 5 }", "2x5 ?"),
    PLAN("sets to a per cent round up", WEEK "sets to 40% }; day A { curl 3 x 5 }", "2x5 ?"),
    PLAN("sets up a per cent round up", WEEK "sets up 50% }; day A { curl 3 x 5 }", "5x5 ?"),
    PLAN("sets down a per cent round up", WEEK "sets down 50% }; day A { curl 3 x 5 }", "2x5 ?"),
    PLAN("a band of sets moves at both ends", WEEK "sets down 1 }; day A { curl 3-5 x 5 }", "3x5 ?"),
    PLAN("reps up", WEEK "reps up 3 }; day A { curl 3 x 5 }", "3x8 ?"),
    PLAN("reps down", WEEK "reps down 2 }; day A { curl 3 x 8-12 }", "3x6-10 ?"),
    PLAN("reps to a per cent", WEEK "reps to 50% }; day A { curl 3 x 10 }", "3x5 ?"),
    PLAN("reps leave amrap alone", WEEK "reps up 1 }; day A { curl 1 x amrap at 20 kg then 2 x 5 }",
         "1xamrap 20, 2x6 ?"),
    PLAN("rpe to", WEEK "rpe to 6 }; day A { curl 3 x 5 at rpe 8 }", "3x5 ?@6"),
    PLAN("rpe up ends at ten", WEEK "rpe up 3 }; day A { curl 3 x 5 at rpe 8 }", "3x5 ?@10"),
    PLAN("rpe down ends at nothing", WEEK "rpe down 9 }; day A { curl 3 x 5 at rpe 8 }", "3x5 ?@0"),
    PLAN("rpe moves a band", WEEK "rpe down 1 }; day A { curl 3 x 5 at rpe 7-8 }", "3x5 ?@6-7"),
    PLAN("rpe of sets in rir", WEEK "rpe down 1 }; day A { curl 3 x 5 at rir 2 }", "3x5 ?@7"),
    FAULT("rpe to a per cent means nothing", WEEK "rpe to 50% }; day A { curl 3 x 5 at rpe 8 }", "error unit `50%`"),
    PLAN("load down 10% is a tenth of the planned load, not points",
         WEEK "load down 10% }; day A { sled 3 x 5 at 70% }", "3x5 630"),
    PLAN("load to 80% is 80 % of it", WEEK "load to 80% }; day A { sled 3 x 5 at 70% }", "3x5 560"),
    PLAN("load up", WEEK "load up 5% }; day A { sled 3 x 5 at 70% }", "3x5 735"),
    PLAN("load down by a weight", WEEK "load down 20 kg }; day A { sled 3 x 5 at 70% }", "3x5 680"),
    PLAN("load to a weight", WEEK "load to 500 kg }; day A { sled 3 x 5 at 70% }", "3x5 500"),
    PLAN("load down in pounds", WEEK "load down 100 lb }; day A { sled 3 x 5 at 70% }",
         "3x5 655"), /* 45.359 kg: 654.64 */
    PLAN("a load is rounded once, at the end", WEEK "load down 3% }; day A { squat 3 x 5 at 81.3% }",
         "3x5 80"), /* 78.861; from 82.5 first: 80.025 */
    FAULT("a change without a unit", WEEK "load down 10 }; day A { sled 3 x 5 at 70% }", "error unit `10`"),
    PLAN("a load change below nothing is nothing", WEEK "load down 900 kg }; day A { sled 3 x 5 at 70% }", "3x5 0"),

    PLAN("load to a weight in pounds", WEEK "load to 1100 lb }; day A { sled 3 x 5 at 70% }",
         "3x5 500"), /* 498.95: to the step of 2.5 kg */
    PLAN("a change for a lift reaches an entry that may be done with it", WEEK "sets down 1 for press }; day A { pulldown or press 3 x 5; curl 3 x 5 }",
         "2x5 ?; 3x5 ?"),
    PLAN("and one whose lift was swapped for it", "weeks 1; adjust ines { swap curl with press; sets down 1 for press }; day A { curl 3 x 5 }",
         "2x5 ?"),
    PLAN("and by the name that was written", "weeks 1; adjust ines { swap curl with press; sets down 1 for curl }; day A { curl 3 x 5 }",
         "2x5 ?"),

    /* on which sets a load change acts */
    PLAN("in a taper load acts on sets given by load or per cent",
         "weeks 1; taper week 1 { load down 10% }; day A { squat 1 x 5 at rpe 8 then 1 x 5 at 80 kg }",
         "1x5 82.5@8, 1x5 72.5"),
    PLAN("in adjust load acts on every set whose load is known",
         "weeks 1; adjust ines { load down 10% }; day A { squat 1 x 5 at rpe 8 then 1 x 5 at 80 kg }",
         "1x5 75, 1x5 72.5"), /* 83.333 × 0.9 = 75 */
    PLAN("a drop set follows and is not lowered a second time",
         "weeks 1; deload week 1 { load down 10% }; day A { sled top 1 x 3 at 80% then back-off 3 x 5 drop 10% }",
         "top 1x3 720, back-off 3x5 647.5"), /* 648 */
    PLAN("at same too", "weeks 1; adjust ines { load down 10% }; day A { sled 1 x 3 at 80% then 3 x 5 at same }",
         "1x3 720, 3x5 720"),
    SHOW("of day too",
         "weeks 1; adjust ines { load down 10% }; day A on mon { sled 1 x 3 at 80% }; day B on tue { sled 1 x 3 at 90% "
         "of day A }",
         SHOW_GROUPS, "1x3 720 / 1x3 647.5"),
    PLAN("changes do not touch warm-up groups",
         WEEK "sets to 1; load down 10%; reps up 1 }; day A { sled warm-up 2 x 5 at 50% then 3 x 5 at 80% }",
         "warm-up 2x5 360, 1x6 720"),

    /* for whom, which lifts, which days */
    SHOW("for LIFT", WEEK "sets down 1 for curl }; day A { curl 3 x 5; sled 3 x 5 at 70% }", SHOW_LIFTS,
         "curl 2x5 ?; sled 3x5 700"),
    SHOW("for two lifts",
         WEEK "sets down 1 for curl, sled }; day A { curl 3 x 5; sled 3 x 5 at 70%; press 3 x 5 at 70% }", SHOW_LIFTS,
         "curl 2x5 ?; sled 2x5 700; press 3x5 15"),
    SHOW("on day A", WEEK "sets down 1 on day A }; day A on mon { curl 3 x 5 }; day B on tue { curl 3 x 5 }", SHOW_DAYS,
         "A: curl 2x5 ? / B: curl 3x5 ?"),
    SHOW("for a lift on a day",
         WEEK "sets down 1 for curl on day B }; day A on mon { curl 3 x 5 }; day B on tue { curl 3 x 5; press 3 x 5 }",
         SHOW_DAYS, "A: curl 3x5 ? / B: curl 2x5 ?; press 3x5 ?"),
    PLAN("adjust in weeks", "weeks 4; adjust ines in weeks 2-3 { sets down 1 }; day A { curl 3 x 5 }",
         "3x5 ? | 2x5 ? | 2x5 ? | 3x5 ?"),
    SHOW("adjust from a date",
         "weeks 3; adjust ines from 2027-01-13 { sets down 1 }; day A on mon { curl 3 x 5 }; day B on wed { curl 3 x 5 "
         "}",
         SHOW_GROUPS, "3x5 ? / 3x5 ? | 3x5 ? / 2x5 ? | 2x5 ? / 2x5 ?"),
    SHOW("adjust from a date to a date",
         "weeks 3; adjust ines from 2027-01-06 to 2027-01-11 { sets down 1 }; day A on mon { curl 3 x 5 }; day B on "
         "wed { curl 3 x 5 }",
         SHOW_GROUPS, "3x5 ? / 2x5 ? | 2x5 ? / 3x5 ? | 3x5 ? / 3x5 ?"),
    PLAN("from a date counts undated days on their week's first day",
         "weeks 3; adjust ines from 2027-01-12 { sets down 1 }; day A { curl 3 x 5 }", "3x5 ? | 3x5 ? | 2x5 ?"),
    FAULT("dates that run backwards",
          "weeks 3; adjust ines from 2027-01-12 to 2027-01-11 { sets down 1 }; day A { curl 3 x 5 }",
          "error range `from 2027-01-12 to 2027-01-11`"),
    PLAN("a bar list runs over the weeks concerned",
         "weeks 4; adjust ines in weeks 2-3 { sets to 1 | 2 }; day A { curl 3 x 5 }", "3x5 ? | 1x5 ? | 2x5 ? | 3x5 ?"),
    FAULT("a lift that the block does not have is an error",
          "weeks 1; adjust ines { sets down 1 for bench }; day A { curl 3 x 5 }", "error unknown-name `bench`"),
    FAULT("a day that the block does not have is an error",
          "weeks 1; adjust ines { sets down 1 on day B }; day A { curl 3 x 5 }", "error unknown-name `B`"),
    FAULT("skip day B too", "weeks 1; adjust ines { skip day B }; day A { curl 3 x 5 }", "error unknown-name `B`"),
    FAULT("add to day B too", "weeks 1; adjust ines { add to day B { curl 1 x 1 } }; day A { curl 3 x 5 }",
          "error unknown-name `B`"),
    FAULT("swap of a lift that is not trained",
          "weeks 1; adjust ines { swap bench with curl }; day A { squat 3 x 5 at rpe 7 }",
          "error unknown-name `bench`"),

    /* order */
    PLAN("deload, then adjust, in deload weeks too",
         "weeks 1; deload week 1 { sets to 50% }; adjust ines { sets up 1 }; day A { curl 6 x 5 }", "4x5 ?"),
    PLAN("adjust after the deload, wherever it stands",
         "weeks 1; adjust ines { sets up 1 }; deload week 1 { sets to 50% }; day A { curl 6 x 5 }", "4x5 ?"),
    PLAN("inside one list in written order", WEEK "sets up 2; sets to 50% }; day A { curl 4 x 5 }", "3x5 ?"),
    PLAN("the other way round", WEEK "sets to 50%; sets up 2 }; day A { curl 4 x 5 }", "4x5 ?"),
    SHOW("swaps first", "weeks 1; adjust ines { sets down 1 for press; swap curl with press }; day A { curl 3 x 5 }",
         SHOW_LIFTS, "press 2x5 ?"),
    SHOW("a lift's name matches before and after its swap",
         "weeks 1; adjust ines { swap curl with press; sets down 1 for curl; reps up 1 for press }; day A { curl 3 x 5 "
         "}",
         SHOW_LIFTS, "press 2x6 ?"),

    /* swap, skip, add, cap, note */
    SHOW("swap keeps sets, reps, effort",
         "weeks 1; adjust ines { swap squat with front-squat }; day A { squat 3 x 5 at rpe 8 }", SHOW_LIFTS,
         "front-squat 3x5 67.5@8"), /* 80 × 83.33 % = 66.67 → 67.5 */
    SHOW("and per cent, of the new lift's max",
         "weeks 1; adjust ines { swap squat with bench }; day A { squat 3 x 5 at 75% }", SHOW_LIFTS, "bench 3x5 45"),
    SHOW("loads stated by weight become open",
         "weeks 1; adjust ines { swap squat with bench }; day A { squat 3 x 5 at 80 kg }", SHOW_LIFTS, "bench 3x5 ?"),
    SHOW("and what hangs on them",
         "weeks 1; adjust ines { swap squat with bench }; day A { squat top 1 x 5 at 80 kg then back-off 3 x 5 drop "
         "10% }",
         SHOW_LIFTS, "bench top 1x5 ?, back-off 3x5 <10 % below the top set>"),
    SHOW("a swapped lift by per cent of another keeps it",
         "weeks 1; adjust ines { swap curl with sled }; day A { curl 3 x 5 at 20% of squat }", SHOW_LIFTS,
         "sled 3x5 20"),
    SHOW("skip LIFT", "weeks 1; adjust ines { skip curl }; day A { curl 3 x 5; press 3 x 5 }", SHOW_LIFTS,
         "press 3x5 ?"),
    SHOW("skip two lifts",
         "weeks 1; adjust ines { skip curl, press }; day A { curl 3 x 5; press 3 x 5; sled 1 x 5 at 50% }", SHOW_LIFTS,
         "sled 1x5 500"),
    SHOW("skip day D",
         "weeks 2; adjust ines in weeks 2 { skip day A }; day A on mon { curl 3 x 5 }; day B on tue { press 3 x 5 }",
         SHOW_DAYS, "A: curl 3x5 ? / B: press 3x5 ? | B: press 3x5 ?"),
    SHOW("a deload may leave out a day",
         "weeks 2; deload week 2 { skip day A }; day A on mon { curl 3 x 5 }; day B on tue { press 3 x 5 }", SHOW_DAYS,
         "A: curl 3x5 ? / B: press 3x5 ? | B: press 3x5 ?"),
    SHOW("added entries come last",
         "weeks 1; adjust ines { add to day A { press 2 x 8; sled 1 x 5 at 50% } }; day A { curl 3 x 5 }", SHOW_LIFTS,
         "curl 3x5 ?; press 2x8 ?; sled 1x5 500"),
    SHOW("a superset may be added",
         "weeks 1; adjust ines { add to day A { superset 2 rounds { press 1 x 8; curl 1 x 8 } } }; day A { superset { "
         "curl 3 x 5; sled 3 x 5 at 50% } }",
         SHOW_LIFTS, "curl 3x5 ?; sled 3x5 500; press 2x8 ?; curl 2x8 ?"),
    PLAN("skip week leaves the later weeks their dates and values",
         "weeks 3; adjust ines { skip week 2 }; day A { sled 3 x 5 at 70 | 75 | 80% }", "3x5 700 |  | 3x5 800"),
    SHOW("its dates", "weeks 3; adjust ines { skip week 2 }; day A on mon { curl 3 x 5 }", SHOW_DATES,
         "A 2027-01-04 |  | A 2027-01-18"),
    PLAN("repeat week: her block grows by a week",
         "weeks 3; adjust ines { repeat week 2 }; day A { sled 3 x 5 at 70 | 75 | 80% }",
         "3x5 700 | 3x5 750 | 3x5 750 | 3x5 800"),
    SHOW("the later weeks move back by one", "weeks 2; adjust ines { repeat week 1 }; day A on mon { curl 3 x 5 }",
         SHOW_DATES, "A 2027-01-04 | A 2027-01-11 | A 2027-01-18"),
    PLAN("cap LIFT rpe N", "weeks 1; adjust ines { cap squat rpe 7 }; day A { squat 3 x 5 at rpe 8 }",
         "3x5 80!"), /* n = 8: 80.56, down */
    PLAN("cap rpe N, all lifts", "weeks 1; adjust ines { cap rpe 7 }; day A { squat 3 x 5 at rpe 8 }", "3x5 80!"),
    PLAN("cap rir N", "weeks 1; adjust ines { cap squat rir 3 }; day A { squat 3 x 5 at rpe 8 }", "3x5 80!"),
    PLAN("the lowest of two caps",
         "weeks 1; adjust ines { cap squat rpe 7; cap rpe 6 }; day A { squat 3 x 5 at rpe 8 }",
         "3x5 77.5!"), /* n = 9: 77.78 */
    PLAN("a cap above the effort changes nothing",
         "weeks 1; adjust ines { cap squat rpe 9 }; day A { squat 3 x 5 at rpe 8 }", "3x5 82.5@8"),
    PLAN("a deload may cap", "weeks 2; deload week 2 { cap rpe 6 }; day A { squat 3 x 5 at rpe 8 }",
         "3x5 82.5@8 | 3x5 77.5!"), /* n = 9: 77.78 */
    FAULT("only an adjust adds", "weeks 1; deload week 1 { add to day A { curl 1 x 1 } }; day A { curl 3 x 5 }",
          "error misplaced `add`"),
    FAULT("only an adjust skips weeks", "weeks 1; deload week 1 { skip week 1 }; day A { curl 3 x 5 }",
          "error misplaced `skip`"),
    SHOW("a swap of one list, a change of the next",
         "weeks 1; adjust ines { swap curl with press }; adjust ines { sets down 1 for curl; reps up 1 for press }; "
         "day A { curl 3 x 5 }",
         SHOW_LIFTS, "press 2x6 ?"),
    SHOW("swapped in the deload, changed in the adjust",
         "weeks 1; deload week 1 { swap curl with press }; adjust ines { sets down 1 for curl }; day A { curl 3 x 5 }",
         SHOW_LIFTS, "press 2x5 ?"),
    PLAN("a cap on an open load", "weeks 1; adjust ines { cap rpe 7 }; day A { curl 3 x 5 at rpe 8 }", "3x5 ?@7!"),

    /* lifts an athlete avoids */
    CLUB("avoid … use swaps the lift", AVOIDS "avoid squat use front-squat because \"knee\" }\n",
         "weeks 1; day A { squat 3 x 5 at 80% }", "3x5 72.5"),
    CLUB_FAULT("avoid without a substitute is found", AVOIDS "avoid squat because \"knee\" }\n",
               "weeks 1; day A { squat 3 x 5 at 80% }", "error avoided-lift `squat`"),
    CLUB("an adjust may swap it", AVOIDS "avoid squat because \"knee\" }\n",
         "weeks 1; adjust ines { swap squat with front-squat }; day A { squat 3 x 5 at 80% }", "3x5 72.5"),
    CLUB("or skip it", AVOIDS "avoid squat }\n",
         "weeks 1; adjust ines { skip squat }; day A { squat 3 x 5 at 80%; deadlift 1 x 5 at 80% }", "1x5 80"),
    CLUB("of a choice the one she does not avoid", AVOIDS "avoid squat }\n",
         "weeks 1; day A { squat or deadlift 3 x 5 at 80% }", "3x5 80"),
};

static struct plan *planned(struct told *t, const char *declarations, const char *lines)
{
    char text[4096];
    snprintf(text, sizeof text, "%sblock winter { for all; starts 2027-01-04; %s }", declarations, lines);
    *t = told_club(text);
    assert_string_equal(findings_text(t), "");
    return told_plan(t, "winter", "ines");
}

static void what_was_done_is_remembered(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan =
        planned(&t, AVOIDS "avoid squat use front-squat because \"knee\" }\n", "weeks 1; day A { squat 3 x 5 at 80% }");
    const struct plan_entry *entry = &plan->weeks[0].days[0].entries[0];
    assert_string_equal(entry->lift->name, "front-squat");
    assert_string_equal(entry->instead_of->name, "squat");
    assert_string_equal(entry->because, "knee");
    told_end(&t);
    plan = planned(&t, AVOIDS "avoid squat because \"knee\" }\n", "weeks 1; day A { squat or deadlift 3 x 5 at 80% }");
    entry = &plan->weeks[0].days[0].entries[0];
    assert_null(entry->instead_of);
    assert_int_equal(entry->choice_count, 1);
    assert_string_equal(entry->choices[0]->name, "squat");
    told_end(&t);
}

static void notes_of_changes(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan = planned(&t, INES,
                                "weeks 3; deload week 2 { note \"easy does it\" }; adjust ines in weeks 3 { note "
                                "\"back from the cold\" }; day A { curl 3 x 5 }");
    assert_int_equal(plan->weeks[0].note_count, 0);
    assert_int_equal(plan->weeks[1].note_count, 1);
    assert_string_equal(plan->weeks[1].notes[0], "easy does it");
    assert_string_equal(plan->weeks[2].notes[0], "back from the cold");
    assert_int_equal(plan->weeks[1].kind, WEEK_DELOAD);
    told_end(&t);
}

static void an_adjust_is_for_the_athletes_it_names(void **state)
{
    (void)state;
    struct told t;
    struct plan *ines = planned(&t, INES "athlete tomas\ngroup late { tomas }\n",
                                "weeks 1; adjust late { sets down 1 }; day A { curl 3 x 5 }");
    assert_string_equal(plan_text(&t, ines, SHOW_GROUPS), "3x5 ?");
    assert_string_equal(plan_text(&t, told_plan(&t, "winter", "tomas"), SHOW_GROUPS), "2x5 ?");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(what_was_done_is_remembered),
        cmocka_unit_test(notes_of_changes),
        cmocka_unit_test(an_adjust_is_for_the_athletes_it_names),
    };
    return rows_run(ARRAY(rows), ARRAY(more));
}
