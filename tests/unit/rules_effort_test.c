/* The rules of effort and order that need a meet, or sets that the files of tests/cases/rules do not reach. The plan comes from
 * a text, and the view of it is given its meet by hand. Windows and shares: common practice; efforts by Brzycki 1993,
 * n = 37 - 36 x share reps to failure, effort = reps + 10 - n, worked by hand. */
#include "rules_asked.h"

#include "check/ask.h"

#define PLACES                                                                                                         \
    "; its places are hypertrophy blocks until 56 days before a meet, and singles and doubles of main lifts in the "   \
    "last 28 days"
#define NO_PRACTICE(lift, days)                                                                                        \
    "`winter` " lift " has singles or doubles at rpe 8 or more on " days                                               \
    " of the last 28 days before the meet; the limit is 2"
#define SINGLES(weeks) "goal peak; weeks 4; day A on mon { squat { 3 x 5 at 75%; 1 x 1 at rpe 8 in weeks " weeks " } }"

/* 2027-01-04 is 28 days before 2027-02-01 and 56 before 2027-03-01. */
static const struct asked rows[] = {
    { "a single at rpe 9.5 may stand 28 days before the meet", "failure-window",
      "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 9.5 }", "2027-02-01", .met = "" },
    { "and on its very day", "failure-window", "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 9.5 }",
      "2027-01-04", .met = "" },
    { "29 days before it may not", "failure-window", "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 9.5 }",
      "2027-02-02",
      .met = "`1 x 1 at rpe 9.5` squat at rpe 9.5 goes to the edge of failure 29 days before the meet" PLACES },
    { "the day itself counts, not its week", "failure-window",
      "goal peak; weeks 1; day A on thu { squat 1 x 2 at rpe 10 }", "2027-02-04", .met = "" },
    { "a triple is neither a single nor a double", "failure-window",
      "goal peak; weeks 1; day A on mon { squat 1 x 3 at rpe 10 }", "2027-01-05",
      .met = "`1 x 3 at rpe 10` squat at rpe 10 goes to the edge of failure 1 day before the meet" PLACES },
    { "nor is a range up to three", "failure-window", "goal peak; weeks 1; day A on mon { squat 1 x 1-3 at rpe 10 }",
      "2027-01-11",
      .met = "`1 x 1-3 at rpe 10` squat at rpe 10 goes to the edge of failure 7 days before the meet" PLACES },
    { "amrap never has a place before a meet", "failure-window",
      "goal strength; weeks 1; day A on mon { squat 1 x amrap at 90% at least 1 }", "2027-01-18",
      .met = "`1 x amrap at 90% at least 1` squat amrap goes to the edge of failure 14 days before the meet" PLACES },
    { "nor has a single of an accessory", "failure-window",
      "goal peak; weeks 1; day A on mon { sled 1 x 1 at rpe 9.5 }", "2027-01-18",
      .met = "`1 x 1 at rpe 9.5` sled at rpe 9.5 goes to the edge of failure 14 days before the meet" PLACES },
    { "a hypertrophy block 56 days before the meet may go to failure", "failure-window",
      "goal hypertrophy; weeks 1; day A on mon { squat 3 x 8 at rpe 10 }", "2027-03-01", .met = "" },
    { "55 days before it may not", "failure-window",
      "goal hypertrophy; weeks 1; day A on mon { squat 3 x 8 at rpe 10 }", "2027-02-28",
      .met = "`3 x 8 at rpe 10` squat at rpe 10 goes to the edge of failure 55 days before the meet" PLACES },
    { "nor on the day of the meet", "failure-window",
      "goal hypertrophy; weeks 1; day A on mon { squat 3 x 8 at rpe 10 }", "2027-01-04",
      .met = "`3 x 8 at rpe 10` squat at rpe 10 goes to the edge of failure on the day of the meet" PLACES },
    { "a group speaks once, by its hardest set", "failure-window",
      "weeks 1; day A on mon { squat 3 x 1 at rpe 9.5, 10, 8 }", NULL,
      .met = "`3 x 1 at rpe 9.5, 10, 8` squat at rpe 10 goes to the edge of failure" PLACES },
    { "a deload week is not asked", "failure-window",
      "weeks 2; deload week 2 { rpe up 1 }; day A on mon { squat 1 x 1 at rpe 9 }", NULL, .met = "" },

    { "a single above the max may be meant", "failure-window", "weeks 1; day A on mon { squat 1 x 1 at 102.5% }", NULL,
      .met = "`1 x 1 at 102.5%` squat above the max goes to the edge of failure" PLACES },
    { "but what nobody can do is left to impossible-set", "failure-window",
      "weeks 1; day A on mon { squat 3 x 8 at 90% }", NULL, .met = "" },
    { "by hard-high-reps too", "hard-high-reps", "goal strength; weeks 1; day A on mon { squat 3 x 8 at 90% }", NULL,
      .met = "" },
    { "by moderate-share", "moderate-share",
      "goal strength; weeks 1; day A on mon { squat 3 x 8 at 90%; bench 3 x 5 at rpe 7 }", NULL, .met = "" },
    { "and by top-harder", "top-harder", "weeks 1; day A on mon { squat top 1 x 1 at 90% then back-off 3 x 8 at same }",
      NULL, .met = "" },

    { "two heavy days are enough", "heavy-practice", SINGLES("1, 3"), "2027-02-01", .met = "" },
    { "one is not", "heavy-practice", SINGLES("1"), "2027-02-01", .met = NO_PRACTICE("squat", "1") },
    { "the 29th day before the meet is too early", "heavy-practice", SINGLES("1, 3"), "2027-02-02",
      .met = NO_PRACTICE("squat", "1") },
    { "the day of the meet itself counts", "heavy-practice", SINGLES("1, 4"), "2027-01-25", .met = "" },
    { "an earlier block of the season is not asked", "heavy-practice", SINGLES("1"), "2027-02-01", .not_last = true,
      .met = "" },
    { "nor a block without a meet", "heavy-practice", SINGLES("1"), NULL, .met = "" },
    { "a taper's days count", "heavy-practice",
      "goal peak; weeks 4; taper weeks 3-4 { sets to 60 | 40% }; day A on mon { squat { 3 x 5 at 75%; 1 x 1 at rpe 8 "
      "in weeks 3-4 } }",
      "2027-02-01", .met = "" },
    { "triples, rpe 7.5 and lifts like it are no practice; each lift of the meet speaks for itself", "heavy-practice",
      "goal peak; weeks 2; day A on mon, thu { squat 3 x 3 at rpe 8; front-squat 1 x 1 at rpe 8; bench 1 x 1 at rpe "
      "7.5; sled 3 x 5 at rpe 8 }",
      "2027-01-18", .met = NO_PRACTICE("squat", "0") "\n" NO_PRACTICE("bench", "0") },
    { "two sessions of one date are one day", "heavy-practice",
      "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 8 }\nday B on mon { squat 1 x 1 at rpe 8 }", "2027-01-11",
      .met = NO_PRACTICE("squat", "1") },
    { "two of them on a day without a date are one day", "heavy-practice",
      "goal peak; weeks 1; day A { squat 1 x 1 at rpe 8; squat 1 x 2 at rpe 9 }", "2027-01-11",
      .met = NO_PRACTICE("squat", "1") },
    { "days without a date are days of their own", "heavy-practice",
      "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 8 }\nday B { squat 1 x 1 at rpe 8 }", "2027-01-11",
      .met = "" },
    { "two entries of one day are one day", "heavy-practice",
      "goal peak; weeks 1; day A on mon { squat 1 x 1 at rpe 8; bench 2 x 2 at rpe 9; squat 1 x 2 at rpe 9 }\n"
      "day B on thu { bench 1 x 1 at rpe 8 }",
      "2027-01-11", .met = NO_PRACTICE("squat", "1") },

    /* 3 of 10 + 1 of 10 + 6 of 10 moderate; 8 of 10 each would be 24 of 30, so 24 - 10 = 14 sets have to change. */
    { "the worst days come first", "moderate-share",
      "goal strength; weeks 1; day A on mon { squat 3 x 3 at rpe 8 then 7 x 3 at rpe 8.5 }\n"
      "day B on wed { bench 1 x 3 at rpe 8 then 5 x 3 at rpe 9; squat 4 x 1 at rpe 2.5 }\nday C on fri { squat 6 x 3 "
      "at rpe 3 then 4 x 3 at rpe 9 }",
      NULL,
      .met = "`winter` 33.3 % of main sets (10 of 30) are between rpe 3 and 8; the limit is 80 %: week 1 day B bench "
             "and squat, week 1 day A squat would bring it "
             "back" },
    { "where three days are not enough they are only the furthest off", "moderate-share",
      "goal strength; weeks 5; day A on mon { squat 2 x 3 at rpe 9 }", NULL,
      .met = "`winter` 0 % of main sets (0 of 10) are between rpe 3 and 8; the limit is 80 %: the furthest off are "
             "week 1 day A squat, week 2 day A squat, week 3 "
             "day A squat" },
    { "a lift is named once for a day, whatever stands between its sets", "moderate-share",
      "goal strength; weeks 1; day A on mon { squat 1 x 3 at rpe 9; bench 1 x 3 at rpe 9 then 1 x 3 at rpe 8; squat 1 "
      "x 3 at rpe 9.5 }",
      NULL,
      .met = "`winter` 25 % of main sets (1 of 4) are between rpe 3 and 8; the limit is 80 %: week 1 day A squat and "
             "bench "
             "would bring it back" },
    { "the hardest of several top sets is the one to stay below", "top-harder",
      "weeks 1; day A on mon { squat { top 3 x 1 at rpe 7, 8, 7.5; back-off 2 x 3 at rpe 7.5 } }", NULL, .met = "" },
    { "as hard is not below", "top-harder",
      "weeks 1; day A on mon { squat { top 3 x 1 at rpe 7, 8, 7.5; back-off 2 x 3 at rpe 7, 8 } }", NULL,
      .met = "`back-off 2 x 3 at rpe 7, 8` this back-off of squat is rpe 8, no easier than its top set's rpe 8; the "
             "limit is 0.5 below" },
    { "and harder less so", "top-harder",
      "weeks 1; day A on mon { squat { top 1 x 1 at rpe 7; back-off 2 x 3 at rpe 8.5 } }", NULL,
      .met = "`back-off 2 x 3 at rpe 8.5` this back-off of squat is rpe 8.5, 1.5 above its top set's rpe 7; the limit "
             "is 0.5 below" },
    { "a top set of which nobody says how hard it is asks for nothing", "top-harder",
      "weeks 1; day A on mon { deadlift { top 2 x 1; back-off 2 x 3 at rpe 8 } }", NULL, .met = "" },
    { "sets without an effort, accessories and deloads are left out", "moderate-share",
      "goal strength; weeks 2; deload week 2 { sets to 50% }; day A on mon { deadlift 9 x 5; sled 9 x 3 at rpe 9; "
      "squat 4 x 3 at rpe 8 then 1 x 3 at rpe 9 }",
      NULL, .met = "" },

    { "nor do sets without an effort help", "moderate-share",
      "goal strength; weeks 1; day A on mon { deadlift 9 x 5; squat 3 x 3 at rpe 8 then 1 x 3 at rpe 9 }", NULL,
      .met = "`winter` 75 % of main sets (3 of 4) are between rpe 3 and 8; the limit is 80 %: week 1 day A squat would "
             "bring it back" },

    { "the nearest top set before a back-off is its own", "top-harder",
      "weeks 1; day A on mon { squat top 1 x 1 at rpe 9 then top 1 x 3 at rpe 7 then back-off 3 x 5 at rpe 7 }", NULL,
      .met = "`back-off 3 x 5 at rpe 7` this back-off of squat is rpe 7, no easier than its top set's rpe 7; the limit "
             "is 0.5 below" },
    { "of a top group the hardest set counts", "top-harder",
      "weeks 1; day A on mon { squat top 3 x 1 at rpe 6, 7, 8 then back-off 3 x 5 at rpe 7.5 }", NULL, .met = "" },
    { "the top set may stand in an earlier entry", "top-harder",
      "weeks 1; day A on mon { squat top 1 x 1 at rpe 7; bench 3 x 5 at rpe 7; squat back-off 3 x 5 at rpe 8 }", NULL,
      .met = "`back-off 3 x 5 at rpe 8` this back-off of squat is rpe 8, 1 above its top set's rpe 7; the limit is 0.5 "
             "below" },
    { "a top set without an effort says nothing", "top-harder",
      "weeks 1; day A on mon { deadlift top 1 x 1 then back-off 3 x 5 at rpe 8 }", NULL, .met = "" },
    /* 85 %: n = 6.4, a single is rpe 4.6; less 5 %: 80.75, rounded 80 kg, n = 8.2, five reps are rpe 6.8. */
    { "loads are compared by their expected effort", "top-harder",
      "weeks 1; day A on mon { squat top 1 x 1 at 85% then back-off 3 x 5 drop 5% }", NULL,
      .met = "`back-off 3 x 5 drop 5%` this back-off of squat is rpe 6.8, 2.2 above its top set's rpe 4.6; the limit "
             "is 0.5 below" },

    { "a house limit of nothing is a limit", "effort-creep",
      "goal strength; weeks 2; checks { effort-creep at most 0 }; day A on mon { squat 3 x 5 at rpe 7 | 7.5 }", NULL,
      .met = "`at rpe 7 | 7.5` squat goes from rpe 7 in week 1 to rpe 7.5 in week 2, up 0.5; the limit is 0" },
    { "the week before is the last one that trains the lift", "effort-creep",
      "goal strength; weeks 3; day A on mon { bench 3 x 5 at rpe 7; squat 3 x 5 at rpe 5 | 8 in weeks 1, 3 }", NULL,
      .met = "`at rpe 5 | 8` squat goes from rpe 5 in week 1 to rpe 8 in week 3, up 3; the limit is 1.5" },
    { "an expected effort is not stated", "effort-creep",
      "goal strength; weeks 2; day A on mon { squat 3 x 3 at 75 | 90% }", NULL, .met = "" },
    { "of sets as hard the first speaks", "effort-creep",
      "goal strength; weeks 2; day A on mon { squat { 3 x 5 at rpe 5 | 8; 2 x 3 at rpe 4 | 8 } }", NULL,
      .met = "`at rpe 5 | 8` squat goes from rpe 5 in week 1 to rpe 8 in week 2, up 3; the limit is 1.5" },
    { "an accessory creeps too", "effort-creep", "goal strength; weeks 2; day A on mon { curl 3 x 12 at rpe 7 | 9 }",
      NULL, .met = "`at rpe 7 | 9` curl goes from rpe 7 in week 1 to rpe 9 in week 2, up 2; the limit is 1.5" },

    { "a work set may stand between, if it is of another lift", "top-first",
      "weeks 1; day A on mon { squat top 1 x 1 at 90%; bench 3 x 5 at 75%; squat top 1 x 3 at 85% }", NULL, .met = "" },
    { "each top group after a back-off is named", "top-first",
      "weeks 1; day A on mon { squat back-off 3 x 5 at 75% then top 1 x 3 at 80% then top 2 x 1 at 85, 90% }", NULL,
      .met = "`top 1 x 3 at 80%` the top set of squat comes after its back-off sets\n`top 2 x 1 at 85, 90%` the top "
             "set of squat comes after its back-off sets" },

    { "by a limit of 0 a back-off may be as hard as its top set, and no harder", "top-harder",
      "weeks 1; checks { top-harder at least 0 }\nday A on mon { squat top 1 x 3 at rpe 7 then back-off 3 x 5 at rpe 7 "
      "then back-off 2 x 5 at rpe 8 }",
      NULL,
      .met = "`back-off 2 x 5 at rpe 8` this back-off of squat is rpe 8, 1 above its top set's rpe 7; the limit is 0 "
             "below" },
    { "a limit of 0 reps is one", "top-reps",
      "goal strength; weeks 1; checks { top-reps at most 0 }\nday A on mon { squat top 1 x 1 at 90% }", NULL,
      .met = "`top 1 x 1 at 90%` a top set of squat has 1 reps; the limit is 0" },

    { "amrap with a number that counts is a set of high reps", "hard-high-reps",
      "goal strength; weeks 1; day A on mon { squat 1 x amrap at 75% at least 6 }", NULL,
      .met = "`1 x amrap at 75% at least 6` 6 reps of squat at rpe 10; for 6 reps and more the limit is rpe 8" },
    { "a number of reps in open sets is none", "hard-high-reps",
      "goal strength; weeks 1; day A on mon { squat total 30 at rpe 9 }", NULL, .met = "" },
    /* 75 %: n = 10, a single is rpe 1; 72.5 %: n = 10.9, rpe 0.1. */
    { "rpe 1 is said as it is", "too-light",
      "goal strength; weeks 1; day A on mon { squat { 1 x 1 at 75%; 1 x 1 at 72.5% } }", NULL,
      .met = "`1 x 1 at 75%` squat at rpe 1 is too light to train it; the limit is rpe 3\n"
             "`1 x 1 at 72.5%` squat at less than rpe 1 is too light to train it; the limit is rpe 3" },
    { "an accessory may be light", "too-light", "goal strength; weeks 1; day A on mon { sled 3 x 10 at rpe 1 }", NULL,
      .met = "" },
};

/* 90 kg for 3 are rpe 8.4 of a max of 100 kg (n = 4.6), and of one of 150 kg (n = 20) they are below 0. */
static void the_same_set_is_lighter_by_a_newer_max(void **state)
{
    (void)state;
    struct told t =
        told_club("athlete ines { gym hall; max squat 100 kg on 2026-12-21; max squat 150 kg on 2027-01-11 }\n"
                  "block winter {\n goal strength\n for ines\n starts 2027-01-04\n weeks 2\n"
                  " day A on mon {\n  squat 3 x 3 at 90 kg in weeks 1\n  squat 4 x 3 at 90 kg in weeks 2\n }\n}\n");
    struct block_view block = block_view_make(t.arena, told_plan(&t, "winter", "ines"));
    ask_rule(&t, "too-light", (struct athlete_view){ .model = t.model, .athlete = told_athlete(&t, "ines") }, &block,
             1);
    assert_string_equal(
        met_text(&t, "too-light", MET_MESSAGE),
        "`4 x 3 at 90 kg in weeks 2` squat at less than rpe 1 is too light to train it; the limit is rpe 3");
    told_end(&t);
}

static struct dec tenth_billionths(int64_t e10)
{
    return (struct dec){ e10 };
}

static void fractions_are_told_from_what_they_round_to(void **state)
{
    (void)state;
    const struct dec down = tenth_billionths(83333333333), next = tenth_billionths(83333333334);
    const struct ratio third = ratio_make(25, 3), more = ratio_make(250000000001, 30000000000),
                       less_one = ratio_make(22, 3);
    const struct set_view set = { .has_effort = true, .effort = down, .effort_exact = &third },
                          written = { .has_effort = true, .effort = down };
    const struct set_view harder = { .has_effort = true, .effort = down, .effort_exact = &more };
    const struct set_view easier = { .has_effort = true,
                                     .effort = tenth_billionths(73333333333),
                                     .effort_exact = &less_one };
    assert_true(effort_above(&set, down));
    assert_false(effort_above(&set, next) || effort_above(&written, down));
    assert_true(effort_below(&set, next) && effort_below(&written, next));
    assert_false(effort_below(&set, down) || effort_below(&written, down));
    assert_false(effort_above(&set, tenth_billionths(-1)) ||
                 effort_below(&(struct set_view){ .effort = dec_int(-2) }, tenth_billionths(-1)));
    assert_true(effort_above(&set, dec_int(0)) &&
                effort_below(&(struct set_view){ .effort = dec_int(-2) }, dec_int(0)));
    assert_true(is_harder(&set, &written) && is_harder(&harder, &set) && is_harder(&set, &easier));
    assert_false(is_harder(&written, &set) || is_harder(&set, &harder) || is_harder(&easier, &set));
    assert_false(is_harder(&set, &set) || is_harder(&written, &written));
    assert_int_equal(harder_by(&set, &easier, dec_int(1)), 0);
    assert_int_equal(harder_by(&harder, &easier, dec_int(1)), 1);
    assert_int_equal(harder_by(&written, &easier, dec_int(1)), -1);
    assert_int_equal(harder_by(&written, &written, dec_int(0)), 0);
    assert_int_equal(harder_by(&(struct set_view){ .effort = dec_halves(15) },
                               &(struct set_view){ .effort = dec_int(7) }, dec_int(1)),
                     -1);
    assert_int_equal(harder_by(&(struct set_view){ .effort = dec_halves(17) },
                               &(struct set_view){ .effort = dec_int(7) }, dec_int(1)),
                     1);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(the_same_set_is_lighter_by_a_newer_max),
        cmocka_unit_test(fractions_are_told_from_what_they_round_to),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, asked_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
