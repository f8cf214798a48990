/* The rules of time and calendar that need a meet, attempts or several blocks. Plans come from a text; their views are given
 * the meet and the attempts by hand. Days were counted on a calendar of 2027: 4 January, 1 February and 1 March are Mondays,
 * 30 January is a Saturday. Days of hard training before a meet: common practice; the taper's shares: Pritchard and others 2016
 * (59 % down), Travis and others 2021 (41 to 50 %), with 30, 70 and 15 % as our own choice; openers: observed at 91 % of the
 * third attempt, with 93 % as our own choice. */
#include "rules_asked.h"

struct opening {
    int opener_tenths, projected_tenths; /* kg; 0: no attempts */
};

struct season_asked {
    const char *says, *rule;
    const char *winter; /* lines of block winter, for ines, from 2027-01-04 */
    const char *spring; /* lines of a second block, with its start; NULL: none */
    const char *meet;   /* NULL: none */
    struct opening opening;
    int second_tenths, third_tenths; /* of its attempts, too */
    bool not_last;
    bool break_before; /* spring: its season states one */
    const char *met; /* "level `words pointed at` message", a line each */
};

static struct weight tenths(int kg)
{
    return (struct weight){ kg * (DEC_ONE / 10) };
}

static void season_holds(void **state)
{
    const struct season_asked *asked = *state;
    char text[4096];
    snprintf(text, sizeof text, "%sblock winter { for ines; starts 2027-01-04; %s }\n%s%s%s", INES, asked->winter,
             asked->spring ? "block spring { for ines; " : "", asked->spring ? asked->spring : "",
             asked->spring ? " }\n" : "");
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    struct block_view blocks[2] = { block_view_make(t.arena, told_plan(&t, "winter", "ines")) };
    if (asked->spring)
        blocks[1] = block_view_make(t.arena, told_plan(&t, "spring", "ines"));
    if (asked->meet)
        assert_true(date_parse(asked->meet, strlen(asked->meet), &blocks[0].meet));
    blocks[1].break_before = asked->break_before;
    blocks[0].last_of_season = asked->meet && !asked->not_last;
    struct attempt_view attempt = { .lift = t.model->lifts[0],
                                    .opener = tenths(asked->opening.opener_tenths),
                                    .second = tenths(asked->second_tenths),
                                    .third = tenths(asked->third_tenths),
                                    .projected = ratio_weight(tenths(asked->opening.projected_tenths)),
                                    .at = t.model->lifts[0]->at };
    blocks[0].attempts = &attempt;
    blocks[0].attempt_count = asked->opening.opener_tenths ? 1 : 0;
    ask_rule(&t, asked->rule, (struct athlete_view){ .model = t.model, .athlete = told_athlete(&t, "ines") }, blocks,
             asked->spring ? 2 : 1);
    assert_string_equal(met_text(&t, asked->rule, MET_LEVEL), asked->met);
    told_end(&t);
}

#define TRAINS "day A on mon, thu { squat 3 x 5 at rpe 7 }"
#define IN_A_ROW(weeks, dates) weeks " training weeks in a row without a lighter one, " dates "; the limit is 6"
#define TEN(taper) "goal peak; weeks 4; " taper " day A on mon { squat 10 x 3 at rpe 7 }"
#define BEFORE "the week before the meet week has "
#define MEET "the meet week has "
#define CUT(sets, down) sets " hard sets of the competition lifts, " down " the 10 of the block's hardest week; "
#define LEAST "at least 30 % down is usual"
#define HEAVY(third, fourth)                                                                                           \
    "goal peak; weeks 4; taper week 3 { sets to 50%; load down " third                                                 \
    " }; taper week 4 { sets to 30%; load down " fourth                                                                \
    " }; day A on mon { squat { 10 x 3 at rpe 7; 1 x 1 at 100 kg } }"
#define LIGHTER(load, before, days)                                                                                    \
    "warning `at 100 kg` squat for 1 is " load ", and " before " the time before: more than 15 % lighter, " days       \
    " days before the meet"
#define LAST_WEEK(lines) "goal strength; weeks 4; weeks 4 { " lines " }"

static const struct season_asked rows[] = {
    { "six weeks and one after six days free are seven in a row", "deload-due", "weeks 4; " TRAINS,
      .spring = "starts 2027-02-07; weeks 3; " TRAINS,
      .met = "advice `spring` " IN_A_ROW("7", "2027-01-04 to 2027-02-27") },
    { "seven days free end the run", "deload-due", "weeks 4; " TRAINS, .spring = "starts 2027-02-08; weeks 3; " TRAINS,
      .met = "" },
    { "and a break that the season states, however short", "deload-due", "weeks 4; " TRAINS,
      .spring = "starts 2027-02-07; weeks 3; " TRAINS, .break_before = true, .met = "" },
    { "a taper ends it too", "deload-due", "goal peak; weeks 8; taper week 5 { sets to 50% }; " TRAINS, .met = "" },
    { "and a week that she skips", "deload-due", "weeks 8; " TRAINS "; adjust ines { skip week 5 }", .met = "" },
    { "each run speaks once, at its own place", "deload-due", "goal strength; weeks 8; deload week 8; " TRAINS,
      .spring = "goal strength; starts 2027-03-01; weeks 7; " TRAINS,
      .met = "warning `winter` " IN_A_ROW("7", "2027-01-04 to 2027-02-21") "\n"
                                                                           "warning `spring` " IN_A_ROW(
                                                                               "7", "2027-03-01 to 2027-04-18") },
    { "the limit is that of the block where the run passes it", "deload-due", "weeks 4; " TRAINS,
      .spring = "starts 2027-02-01; weeks 2; checks { deload-due at most 4 weeks }; " TRAINS,
      .met =
          "advice `spring` 6 training weeks in a row without a lighter one, 2027-01-04 to 2027-02-14; the limit is 4" },

    { "a break that the season states is no gap", "calendar-gap", "weeks 1; " TRAINS,
      .spring = "starts 2027-02-01; weeks 1; " TRAINS, .break_before = true, .met = "" },
    { "without it three weeks are", "calendar-gap", "weeks 1; " TRAINS, .spring = "starts 2027-02-01; weeks 1; " TRAINS,
      .met = "warning `spring` 21 days without training between winter, which ends on 2027-01-10, and spring; the limit "
             "is 7" },

    { "the meet's week may train a lift once", "frequency",
      "goal strength; weeks 2; day A on mon { squat 3 x 5 at rpe 7 }; weeks 1 { day B on thu { squat 3 x 5 at rpe 6 } "
      "}",
      .meet = "2027-01-16", .met = "" },
    { "also when the meet is on its first day", "frequency",
      "goal strength; weeks 2; day A on mon { squat 3 x 5 at rpe 7 }; weeks 1 { day B on thu { squat 3 x 5 at rpe 6 } "
      "}",
      .meet = "2027-01-11", .met = "" },
    { "a week before it may not", "frequency",
      "goal strength; weeks 2; day A on mon { squat 3 x 5 at rpe 7 }; weeks 1 { day B on thu { squat 3 x 5 at rpe 6 } "
      "}",
      .meet = "2027-01-18", .met = "advice `squat` squat is trained on one day of the week" },
    { "each lift that is left out speaks for itself", "frequency",
      "goal strength; weeks 2; weeks 1 { day A on mon, thu { squat 3 x 5 at rpe 7; bench 3 x 5 at rpe 7 } }\n"
      "weeks 2 { day C on mon, thu { sled 3 x 20 m at rpe 7 } }",
      .met = "warning `weeks 2` week 2 does not train squat, which the block does\n"
             "warning `weeks 2` week 2 does not train bench, which the block does" },
    { "a week that she skips forgets no lift", "frequency", "goal strength; weeks 2; " TRAINS "; adjust ines { skip week 2 }",
      .met = "" },
    { "two entries of one day are one day", "frequency",
      "goal strength; weeks 1; day A on mon { squat 3 x 5 at rpe 7; bench 3 x 5; squat 2 x 5 at rpe 6 }; "
      "day B on thu { bench 3 x 5 }",
      .met = "advice `squat` squat is trained on one day of the week" },

    { "Sunday and Monday are neighbours across blocks", "back-to-back",
      "weeks 1; day A on sun { squat 3 x 5 at rpe 7 }",
      .spring = "starts 2027-01-11; weeks 1; day A on mon { squat 3 x 5 at rpe 7 }",
      .met = "warning `squat` squat is at rpe 7 on mon 2027-01-11 and was at rpe 7 the day before; hard days of a lift "
             "want 2 days from one to the next" },
    { "a second day of the same date too, and of two days before the first speaks", "back-to-back",
      "weeks 1; day A on mon { squat 3 x 5 at rpe 8 }\nday B on mon { squat 3 x 5 at rpe 7 }\n"
      "day C on tue { squat 3 x 5 at rpe 7.5 }",
      .met = "warning `squat` squat is at rpe 7 on mon 2027-01-04 and was at rpe 8 the same day; hard days of a lift "
             "want 2 days from one to the next\n"
             "warning `squat` squat is at rpe 7.5 on tue 2027-01-05 and was at rpe 8 the day before; hard days of a "
             "lift want 2 days from one to the next" },
    { "a variation is another lift", "back-to-back",
      "weeks 1; day A on mon { squat 3 x 5 at rpe 8 }; day B on tue { front-squat 3 x 5 at rpe 8 }", .met = "" },
    { "a deload is not asked", "back-to-back",
      "weeks 1; deload week 1 { sets to 50% }; day A on mon, tue { squat 4 x 5 at rpe 8 }", .met = "" },
    { "the hardest set of the day speaks", "back-to-back",
      "weeks 1; day A on mon { squat 2 x 5 at rpe 7, 8 }; day B on tue { squat 2 x 5 at rpe 6, 7.5 }",
      .met =
          "warning `squat` squat is at rpe 7.5 on tue 2027-01-05 and was at rpe 8 the day before; hard days of a lift "
          "want 2 days from one to the next" },

    /* 10 hard sets in weeks 1 and 2. The meet is on Saturday of week 4. */
    { "half the sets, then a third: a taper", "taper-shape",
      TEN("taper week 3 { sets to 50% }; taper week 4 { sets to 30% };"), .meet = "2027-01-30", .met = "" },
    { "30 % down is enough in both weeks", "taper-shape", TEN("taper weeks 3-4 { sets to 7 };"), .meet = "2027-01-30",
      .met = "" },
    { "20 % down is not", "taper-shape", TEN("taper weeks 3-4 { sets to 8 };"), .meet = "2027-01-30",
      .met = "warning `taper weeks 3-4 { sets to 8 }` " BEFORE CUT("8", "20 % down on") LEAST
      "\n"
      "warning `taper weeks 3-4 { sets to 8 }` " MEET CUT("8", "20 % down on") LEAST },
    { "70 % down a week early is just right", "taper-shape",
      TEN("taper week 3 { sets to 3 }; taper week 4 { sets to 1 };"), .meet = "2027-01-30", .met = "" },
    { "80 % is too much, and in the meet week it is not", "taper-shape", TEN("taper weeks 3-4 { sets to 2 };"),
      .meet = "2027-01-30",
      .met = "warning `taper weeks 3-4 { sets to 2 }` " BEFORE CUT(
          "2", "80 % down on") "more than 70 % down is too much so early" },
    { "no taper at all", "taper-shape", TEN(""), .meet = "2027-01-30",
      .met = "warning `winter` " BEFORE CUT("10", "0 % down on") LEAST
      "\nwarning `winter` " MEET CUT("10", "0 % down on") LEAST },
    { "a set at rpe 5 is a hard one", "taper-shape", TEN("taper weeks 3-4 { rpe down 2 };"), .meet = "2027-01-30",
      .met = "warning `taper weeks 3-4 { rpe down 2 }` " BEFORE CUT("10", "0 % down on") LEAST
      "\n"
      "warning `taper weeks 3-4 { rpe down 2 }` " MEET CUT("10", "0 % down on") LEAST },
    { "and one at rpe 4.5 is none", "taper-shape", TEN("taper weeks 3-4 { rpe down 2.5 };"), .meet = "2027-01-30",
      .met = "warning `taper weeks 3-4 { rpe down 2.5 }` " BEFORE CUT(
          "0", "100 % down on") "more than 70 % down is too much so early" },
    { "without a meet nothing is asked", "taper-shape", TEN(""), .met = "" },
    { "nor in a block that ends before the meet", "taper-shape", TEN(""), .meet = "2027-02-06", .met = "" },
    { "nor of a strength block", "taper-shape", "goal strength; weeks 4; " TRAINS, .meet = "2027-01-30", .met = "" },
    { "15 % lighter is still a taper", "taper-shape", HEAVY("15%", "15%"), .meet = "2027-01-30", .met = "" },
    { "17.5 % lighter is not: the week before the meet week, 12 days out", "taper-shape", HEAVY("17.5%", "17.5%"),
      .meet = "2027-01-30", .met = LIGHTER("82.5 kg", "100 kg", "12") },
    { "nor 5 days before the meet", "taper-shape", HEAVY("0%", "17.5%"), .meet = "2027-01-30",
      .met = LIGHTER("82.5 kg", "100 kg", "5") },
    { "of loads as heavy the first speaks", "taper-shape",
      "goal peak; weeks 4; taper week 3 { sets to 50% }; taper week 4 { sets to 30%; load down 17.5% }; "
      "day A on mon { squat { 10 x 3 at rpe 7; 1 x 1 at 100 kg; 1 x 1 at 100% } }",
      .meet = "2027-01-30", .met = LIGHTER("82.5 kg", "100 kg", "5") },
    { "4 days before it a light day is meant", "taper-shape", HEAVY("0%", "17.5%"), .meet = "2027-01-29", .met = "" },

    { "a day before the meet nothing is hard", "meet-week", LAST_WEEK("day A on fri { squat 1 x 1 at rpe 8 }"),
      .meet = "2027-01-30", .met = "error `1 x 1 at rpe 8` squat is at rpe 8 1 day before the meet" },
    { "nor 3 days before it", "meet-week", LAST_WEEK("day A on wed { squat 1 x 1 at rpe 8 }"), .meet = "2027-01-30",
      .met = "error `1 x 1 at rpe 8` squat is at rpe 8 3 days before the meet" },
    { "4 days are a warning", "meet-week", LAST_WEEK("day A on tue { squat 1 x 1 at rpe 8 }"), .meet = "2027-01-30",
      .met = "warning `1 x 1 at rpe 8` squat is at rpe 8 4 days before the meet" },
    { "so are 5", "meet-week", LAST_WEEK("day A on mon { squat 1 x 1 at rpe 8 }"), .meet = "2027-01-30",
      .met = "warning `1 x 1 at rpe 8` squat is at rpe 8 5 days before the meet" },
    { "6 days are fine", "meet-week", LAST_WEEK("day A on mon { squat 1 x 1 at rpe 8 }"), .meet = "2027-01-31",
      .met = "" },
    { "rpe 7.5 is fine", "meet-week", LAST_WEEK("day A on fri { squat 1 x 1 at rpe 7.5 }"), .meet = "2027-01-30",
      .met = "" },
    { "so is a variation", "meet-week", LAST_WEEK("day A on fri { front-squat 1 x 1 at rpe 9 }"), .meet = "2027-01-30",
      .met = "" },
    { "a day without a date may be any day", "meet-week", LAST_WEEK("day A { squat 1 x 1 at rpe 9 }"),
      .meet = "2027-01-30", .met = "" },
    { "a taper week is asked", "meet-week",
      "goal peak; weeks 4; taper week 4 { sets to 50% }; day A on fri { squat 2 x 1 at rpe 9 }", .meet = "2027-01-30",
      .met = "error `2 x 1 at rpe 9` squat is at rpe 9 1 day before the meet" },
    { "a lift speaks once a day, by its hardest set", "meet-week",
      LAST_WEEK("day A on fri { squat top 1 x 1 at rpe 9 then 2 x 3 at rpe 8 }"), .meet = "2027-01-30",
      .met = "error `top 1 x 1 at rpe 9` squat is at rpe 9 1 day before the meet" },
    { "and once where two groups are as hard", "meet-week",
      LAST_WEEK("day A on fri { squat 1 x 1 at rpe 8 then 2 x 3 at rpe 8 }"), .meet = "2027-01-30",
      .met = "error `1 x 1 at rpe 8` squat is at rpe 8 1 day before the meet" },
    { "the meet's own day is not before it", "meet-week", LAST_WEEK("day A on sat { squat 1 x 1 at rpe 9 }"),
      .meet = "2027-01-30", .met = "" },
    { "a hypertrophy block is not asked", "meet-week",
      "goal hypertrophy; weeks 4; day A on fri { squat 3 x 8 at rpe 9 }", .meet = "2027-01-30", .met = "" },

    /* 93 % of 200 kg is 186 kg. */
    { "an opener of 93 % is fine", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .opening = { 1860, 2000 }, .met = "" },
    { "187.5 of 200 kg is 93.75 %", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .opening = { 1875, 2000 },
      .met =
          "warning `squat` the squat opener, 187.5 kg, is 93.8 % of the max expected for the day; the limit is 93 %" },
    { "it may be as heavy as the heaviest single", "opener",
      "goal peak; weeks 4; day A on mon { squat 1 x 1 at 100 kg }", .meet = "2027-01-30", .opening = { 1000, 1200 },
      .met = "" },
    { "but not heavier", "opener", "goal peak; weeks 4; day A on mon { squat 1 x 1 at 100 kg }", .meet = "2027-01-30",
      .opening = { 1025, 1200 },
      .met =
          "warning `squat` the squat opener, 102.5 kg, is more than the heaviest single of the last 42 days, 100 kg" },
    { "a single 42 days before the meet counts", "opener",
      "goal peak; weeks 2; weeks 1 { day A on mon { squat 1 x 1 at 100 kg } }; weeks 2 { day A on mon { squat 1 x 1 at "
      "90 "
      "kg } }",
      .meet = "2027-02-15", .opening = { 1000, 1200 }, .met = "" },
    { "one 43 days before it does not", "opener",
      "goal peak; weeks 2; weeks 1 { day A on mon { squat 1 x 1 at 100 kg } }; weeks 2 { day A on mon { squat 1 x 1 at "
      "90 "
      "kg } }",
      .meet = "2027-02-16", .opening = { 1000, 1200 },
      .met = "warning `squat` the squat opener, 100 kg, is more than the heaviest single of the last 42 days, 90 kg" },
    { "one on the day before it does", "opener",
      "goal peak; weeks 4; day A on mon { squat 1 x 1 at 90 kg in weeks 1 }; day B on fri { squat 1 x 1 at 100 kg in weeks 4 }",
      .meet = "2027-01-30", .opening = { 1000, 1200 }, .met = "" },
    { "so does one in another block", "opener", "goal peak; weeks 4; day A on mon { squat 1 x 1 at 90 kg }",
      .spring = "starts 2027-01-05; weeks 1; day A on tue { squat 1 x 1 at 100 kg }", .meet = "2027-01-30",
      .opening = { 1000, 1200 }, .met = "" },
    { "without singles there is nothing to compare with", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .opening = { 1025, 1200 }, .met = "" },
    { "a third as heavy as the second is fine", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .opening = { 1800, 2000 }, .second_tenths = 1900, .third_tenths = 1900, .met = "" },
    { "a lighter one is not", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .opening = { 1800, 2000 }, .second_tenths = 1900, .third_tenths = 1875,
      .met = "warning `squat` the third squat, 187.5 kg, is less than the second, 190 kg" },
    { "an earlier block of the season is not asked", "opener", "goal peak; weeks 4; " TRAINS, .meet = "2027-01-30",
      .not_last = true, .opening = { 1875, 2000 }, .met = "" },
    { "nor a general one", "opener", "weeks 4; " TRAINS, .meet = "2027-01-30", .opening = { 1875, 2000 }, .met = "" },

    /* Rounds: 4 curls x 40 s + 2 sleds x (40 + 90 s) = 420 s. Every 120 s: 6 x 120 = 720 s. By the clock: 1200 s. Squat: 5
     * warm-up sets x 60 s + 19 x (40 + 150 s) = 3910 s. Together 6250 s; the last sled, 40 + 910 s, makes it 7200 s. */
    { "supersets, every, bands of rest and clocks add up: exactly two hours", "session-minutes",
      "weeks 1; day A on mon { superset 2 rounds { curl 2 x 10; sled 1 x 20 m }; sled 6 x 20 m every 120 s\n"
      "superset for 20 min { curl 3 x 10; sled 3 x 20 m }\nsquat { warm-up 5 x 5 at 50%; 19 x 3 at rpe 6 rest 2-3 min "
      "}\n"
      "sled 1 x 20 m rest 910 s }",
      .met = "" },
    { "and a second more is over", "session-minutes",
      "weeks 1; day A on mon { superset 2 rounds { curl 2 x 10; sled 1 x 20 m }; sled 6 x 20 m every 120 s\n"
      "superset for 20 min { curl 3 x 10; sled 3 x 20 m }\nsquat { warm-up 5 x 5 at 50%; 19 x 3 at rpe 6 rest 2-3 min "
      "}\n"
      "sled 1 x 20 m rest 911 s }",
      .met = "advice `A` day A takes about 121 min with its rests; the limit is 120 min" },

    { "each max speaks for itself, once", "stale-max",
      "goal strength; weeks 2; day A on mon, thu { squat 3 x 5 at 75%; bench 3 x 5 at 75%; squat 2 x 5 at 70% }",
      .met = "advice `max squat 100 kg` the max of squat has no date, so nobody sees when it is out of date\n"
             "advice `max bench 60 kg` the max of bench has no date, so nobody sees when it is out of date" },
};

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, season_holds));
    return tests_run(&tests);
}
