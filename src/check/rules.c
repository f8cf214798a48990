/* The table of the trade's rules, in the order of the design, and the page that `explain` makes of a row.
 *
 * Evidence names a source as far as it is known: author, year, title, journal; `common practice` for a fact of the trade with no single
 * source; `our own choice` for a limit that nobody published. */
#include "check/rule.h"

#include <ctype.h>
#include <string.h>

enum { E = LEVEL_ERROR, W = LEVEL_WARNING, A = LEVEL_ADVICE, O = LEVEL_OFF };

/* Limits, in tenths of their unit. */
#define TENTHS(n)                                                                                                      \
    {                                                                                                                  \
        (int64_t)(n) * (DEC_ONE / 10)                                                                                  \
    }
#define NO_BOUND                                                                                                       \
    {                                                                                                                  \
        -1                                                                                                             \
    }
#define LEAST(n)                                                                                                       \
    {                                                                                                                  \
        TENTHS(n), NO_BOUND                                                                                            \
    }
#define MOST(n)                                                                                                        \
    {                                                                                                                  \
        NO_BOUND, TENTHS(n)                                                                                            \
    }
#define BAND(low, high)                                                                                                \
    {                                                                                                                  \
        TENTHS(low), TENTHS(high)                                                                                      \
    }
#define NO_LIMIT                                                                                                       \
    {                                                                                                                  \
        NO_BOUND, NO_BOUND                                                                                             \
    }
#define ALWAYS(...)                                                                                                    \
    {                                                                                                                  \
        __VA_ARGS__, __VA_ARGS__, __VA_ARGS__, __VA_ARGS__                                                             \
    }
#define ALL(level)                                                                                                     \
    {                                                                                                                  \
        level, level, level, level                                                                                     \
    }

/* The examples are whole files. */
#define INES "use \"std/lifts.block\"\nathlete ines { max squat 120 kg on 2026-12-12; max bench 60 kg on 2026-12-12 }\n"
#define BLOCK(goal, weeks, days)                                                                                       \
    "block winter {\n  goal " goal "; for ines; starts 2027-01-04; weeks " weeks "\n" days "}\n"
#define STRENGTH(weeks, days) INES BLOCK("strength", weeks, days)
#define PEAK_MEET(days, more)                                                                                          \
    INES "block peak {\n  goal peak; weeks 4\n" days                                                                   \
         "}\nseason spring {\n  for ines; meet \"Lakeside Open\" on 2027-04-17; run peak\n" more "}\n"
#define DIARY(lines) STRENGTH("2", "  day A on mon { squat 3 x 5 at rpe 7 }\n") "diary ines {\n" lines "}\n"

#define PRACTICE "common practice"
#define OUR_LIMIT "common practice; the limit is our own choice"
#define TAPER_STUDIES                                                                                                  \
    "Pritchard and others 2016, \"Tapering practices of New Zealand's elite raw powerlifters\", J Strength Cond Res "  \
    "30(7):1796-1804 "                                                                                                 \
    "(volume down by 59 %, load kept); Grgic and Mikulic 2017, \"Tapering practices of Croatian open-class "           \
    "powerlifting champions\", "                                                                                       \
    "J Strength Cond Res 31(9):2371-2378 (50 %); Travis and others 2021, \"Characterizing the tapering practices of "  \
    "United States and "                                                                                               \
    "Canadian raw powerlifters\", J Strength Cond Res 35(12S):S26-S35 (41 to 50 %). The 30, 70 and 15 % are our own "  \
    "choice"

/* clang-format off */
const struct rule rules[] = {
    /* ---- effort and order ---- */
    { .name = "moderate-share", .level = { O, W, A, O }, .unit = LIMIT_PERCENT, .limit = ALWAYS(LEAST(800)), .block = rule_moderate_share,
      .asks = "too few of a block's main sets between rpe 3 and 8",
      .why = "Counted are working sets, not reps, of competition lifts and variations. Strength is built by many good reps at heavy "
             "loads. Sets closer to failure cost more recovery than they give, and the next days pay for them.",
      .advice = "Take a point off the hard sets, or drop further below the top set, on the days that the finding lists.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon { squat 3 x 4 at rpe 9 }\n  day B on thu { squat 4 x 4 at rpe 7 }\n"),
      .mended = STRENGTH("1", "  day A on mon { squat top 1 x 2 at rpe 9 then back-off 3 x 4 at rpe 7 }\n  day B on thu { squat 4 x 4 at rpe 7 }\n"),
      .limit_says = "moderate-share at least 75%" },
    { .name = "failure-window", .level = { A, W, W, W }, .block = rule_failure_window,
      .asks = "sets to failure, or as many reps as possible, outside the two places where they belong",
      .why = "Meant are sets at rpe 9.5 or more and `amrap`, of any lift. They have two places: a hypertrophy block with 56 days or more to "
             "the next meet, or none; and, never as `amrap`, singles and doubles of main lifts in the last 28 days before a meet. "
             "Elsewhere failure costs days of recovery and teaches reps that look like no good rep.",
      .advice = "Leave a rep or two in the tank, or move the hard sets into a hypertrophy block.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu { bench 3 x 8 at rpe 10 }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { bench 3 x 8 at rpe 8 }\n") },
    { .name = "top-first", .level = ALL(W), .block = rule_top_first,
      .asks = "a top set after back-offs or other work of the same lift on that day",
      .why = "The top set is the heaviest of the day and shows where the athlete stands, so it comes first, when she is fresh. All entries "
             "of the lift on a day count as one list.",
      .advice = "Write the `top` line first and hang the back-offs on it with `drop`.",
      .evidence = PRACTICE,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    squat { back-off 3 x 4 at 75%; top 1 x 1 at rpe 8 }\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat { top 1 x 1 at rpe 8; back-off 3 x 4 drop 15% }\n  }\n") },
    { .name = "top-harder", .level = ALL(W), .unit = LIMIT_POINTS, .limit = ALWAYS(LEAST(5)), .block = rule_top_harder,
      .asks = "back-offs that are as hard as their top set",
      .why = "Back-offs are there for clean practice in numbers. When they are as hard as the top set, the day has no top set.",
      .advice = "Drop further, take a rep off, or ask for half a point less.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    squat { top 1 x 3 at rpe 7; back-off 3 x 5 at rpe 7 }\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat { top 1 x 3 at rpe 7; back-off 3 x 5 at rpe 6 }\n  }\n"),
      .limit_says = "top-harder at least 1" },
    { .name = "top-reps", .level = { A, W, W, O }, .unit = LIMIT_REPS, .limit = ALWAYS(MOST(50)), .block = rule_top_reps,
      .asks = "a top set of many reps",
      .why = "A top set shows strength, and a set of many reps shows endurance as well: the more reps, the less it says about the max. "
             "Of a range of reps the high end counts.",
      .advice = "Make it a single, a double or a triple, and do the reps in the back-offs.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    squat { top 1 x 6 at rpe 8; back-off 3 x 6 drop 10% }\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat { top 1 x 3 at rpe 8; back-off 3 x 6 drop 15% }\n  }\n"),
      .limit_says = "top-reps at most 3" },
    { .name = "hard-high-reps", .level = { O, W, W, O }, .unit = LIMIT_EFFORT, .limit = ALWAYS(MOST(80)), .block = rule_hard_high_reps,
      .asks = "main sets of 6 reps or more that are very hard",
      .why = "Late reps of a long hard set lose speed and form. They tire a lifter for days and are little like the one rep that she "
             "trains for.",
      .advice = "Take a point off, or do the same work in more sets of fewer reps.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu { squat 3 x 8 at rpe 9 }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 3 x 8 at rpe 7.5 }\n"),
      .limit_says = "hard-high-reps at most rpe 8.5" },
    { .name = "heavy-practice", .level = { O, O, W, O }, .unit = LIMIT_DAYS, .limit = ALWAYS(LEAST(20)), .keep = heavy_practice_keep, .athlete = rule_heavy_practice,
      .asks = "too few days with a heavy single or double before a meet",
      .why = "Asked of each competition lift in the last block of a season: on how many days of the 28 before the meet is there a set of 1 "
             "or 2 reps at rpe 8 or more? A heavy single is a skill of its own, and the meet should not be the first time for it.",
      .advice = "Put `top 1 x 1 at rpe 8` before the back-offs on two days.",
      .evidence = OUR_LIMIT,
      .fires = PEAK_MEET("  taper week 4 { sets to 50% }\n  day A on mon, thu { squat 4 x 3 at rpe 7 }\n", ""),
      .mended = PEAK_MEET("  taper week 4 { sets to 50%; rpe down 1 }\n  day A on mon { squat top 1 x 1 at rpe 8 then back-off 4 x 3 drop 12% }\n"
                          "  day B on thu { squat 4 x 3 at rpe 6 }\n", ""),
      .limit_says = "heavy-practice at least 3 days" },
    { .name = "effort-creep", .level = { A, W, W, A }, .unit = LIMIT_POINTS, .limit = ALWAYS(MOST(15)), .block = rule_effort_creep,
      .asks = "a lift that gets much harder from one week to the next",
      .why = "Compared is the highest effort that the file states for the lift in a week with that of the last training week that trains "
             "it. A block that climbs in small steps leaves room to climb; one big step uses it up.",
      .advice = "Spread the rise over the weeks, such as `at rpe from 6 to 8`.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("2", "  day A on mon, thu { squat 4 x 4 at rpe 6 | 8 }\n"),
      .mended = STRENGTH("2", "  day A on mon, thu { squat 4 x 4 at rpe 6.5 | 7.5 }\n"),
      .limit_says = "effort-creep at most 2" },
    { .name = "impossible-set", .level = ALL(E), .kind = KIND_IMPOSSIBLE_SET,
      .asks = "more reps than the athlete's max allows at this load",
      .why = "The load and the reps together are above rpe 10 on her repetition curve, caps taken into account. A single above the max is a "
             "warning only: it may be meant as a record.",
      .advice = "Ask for fewer reps or less load; if she has grown stronger, give her a newer max.",
      .evidence = "Brzycki 1993, \"Strength testing: predicting a one-rep max from reps-to-fatigue\", J Phys Educ Recreat Dance 64(1):88-90; "
                  "Epley 1985, \"Poundage chart\"; other published curves by `model`",
      .fires = STRENGTH("1", "  day A on mon, thu { squat 3 x 8 at 90% }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 3 x 3 at 85% }\n") },
    { .name = "too-light", .level = { O, A, A, O }, .unit = LIMIT_EFFORT, .limit = ALWAYS(LEAST(30)), .block = rule_too_light,
      .asks = "main working sets that are very light",
      .why = "Below this a set is a warm-up: it neither practises a heavy lift nor makes anybody stronger.",
      .advice = "Raise the load, or write it as a `warm-up` group.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu { squat 3 x 5 at 60% }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 3 x 5 at 77.5% }\n"),
      .limit_says = "too-light at least rpe 4" },

    /* ---- volume and load ---- */
    { .name = "weekly-sets", .level = { W, W, A, A }, .unit = LIMIT_SETS, .subject = SUBJECT_LIFT, .block = rule_weekly_sets,
      .limit = { BAND(80, 200), BAND(50, 160), BAND(30, 120), BAND(50, 160) },
      .asks = "too few or too many hard sets of a competition lift in a week",
      .why = "Counted are working sets at rpe 5 or more of the lift and of every lift `like` it, in a training week, if the block trains it "
             "at all. Too few keep what there is and build nothing; too many cannot be recovered from. About ten a week is common.",
      .advice = "Add or take off sets, or put a variation of the lift on another day.",
      .evidence = "Androulakis-Korakakis and others 2021, \"The minimum effective training dose required for 1RM strength in powerlifters\", "
                  "Front Sports Act Living 3:713655 (3 to 6 sets as the least); Schoenfeld, Ogborn and Krieger 2017, \"Dose-response relationship "
                  "between weekly resistance training volume and increases in muscle mass\", J Sports Sci 35(11):1073-1082. The bands are our "
                  "own choice; about ten a week is common practice",
      .fires = STRENGTH("1", "  day A on mon, thu { squat 2 x 5 at rpe 7 }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .limit_says = "weekly-sets squat 8 to 16" },
    { .name = "muscle-sets", .level = { W, A, O, A }, .unit = LIMIT_SETS, .subject = SUBJECT_MUSCLE, .block = rule_muscle_sets,
      .limit = { BAND(80, 220), BAND(40, 220), BAND(40, 220), BAND(40, 220) },
      .asks = "too few or too many hard sets of a muscle in a week",
      .why = "Asked of every muscle that the block's lifts name. A working set at rpe 5 or more counts 1 for each muscle that its lift `works`, "
             "and 1/2 for each that it `helps`. A muscle that the block's lifts only help is never told to have too few, unless the house "
             "sets a limit for it.",
      .advice = "Add a set or an accessory that works it, or leave one out.",
      .evidence = "Schoenfeld, Ogborn and Krieger 2017, \"Dose-response relationship between weekly resistance training volume and increases in "
                  "muscle mass\", J Sports Sci 35(11):1073-1082 (10 and more); Baz-Valle and others 2022, \"A systematic review of the effects of "
                  "different resistance training volumes on muscle hypertrophy\", J Hum Kinet 81:199-210 (12 to 20); Iversen and others 2021, \"No "
                  "time to lift?\", Sports Med 51:2079-2095 (at least 4). The bands are our own choice",
      .fires = INES BLOCK("general", "1", "  day A on mon { bench 3 x 5 at rpe 7 }\n"),
      .mended = INES BLOCK("general", "1", "  day A on mon, thu { bench 3 x 5 at rpe 7 }\n"),
      .limit_says = "muscle-sets triceps 6 to 20" },
    { .name = "volume-jump", .level = ALL(W), .unit = LIMIT_PERCENT, .limit = ALWAYS(MOST(200)), .has_second = true, .second = MOST(20),
      .block = rule_volume_jump,
      .asks = "a lift with many more hard sets than the week before",
      .why = "A finding needs both: a rise by more than the share, and by more than the sets. Compared is with the last training week that "
             "trains the lift; with `rotate`, where a lift has more days in one week than in the next, with the fuller of the last two. The same "
             "sets at more effort are no jump. Soreness and sore joints follow the jump, not the amount.",
      .advice = "Add a set or two a week, such as `(from 4 to 6) x 5`.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("2", "  day A on mon, thu { squat (3 | 5) x 4 at rpe 7 }\n"),
      .mended = STRENGTH("2", "  day A on mon, thu { squat (3 | 4) x 4 at rpe 7 }\n"),
      .limit_says = "volume-jump at most 30% and 3 sets" },
    { .name = "load-jump", .level = { A, W, W, W }, .unit = LIMIT_PERCENT, .limit = ALWAYS(MOST(100)), .block = rule_load_jump,
      .asks = "a lift that is much heavier than the week before",
      .why = "Compared is the heaviest load at equal reps and role (top, back-off, work) with the last training week that trains the lift. "
             "The gym's smallest step is never too much.",
      .advice = "Go up in smaller steps, such as `75% plus 2.5% each week`.",
      .evidence = "American College of Sports Medicine 2009, \"Progression models in resistance training for healthy adults\", Med Sci Sports "
                  "Exerc 41(3):687-708 (2 to 10 %)",
      .fires = STRENGTH("2", "  day A on mon, thu { squat 4 x 4 at 70 | 80% }\n"),
      .mended = STRENGTH("2", "  day A on mon, thu { squat 4 x 4 at 75 | 80% }\n"),
      .limit_says = "load-jump at most 15%" },
    { .name = "zone-reps", .level = { O, A, A, O }, .block = rule_zone_reps,
      .asks = "many more or fewer reps on a day than lifters do at that per cent",
      .why = "The table gives the reps of a main lift on one day: 18 to 30 under 70 % of the max, 12 to 24 from 70 to 80, 10 to 20 from 80 to 90, "
             "4 to 10 from 90 on. Too few is a finding only where the zone holds most of the day's reps of the lift. It was drawn "
             "up for weightlifters, so it is advice.",
      .advice = "Take a set off or add one, or move the load into the next zone.",
      .evidence = "A. S. Prilepin's table as it is reprinted everywhere; the Russian original was not seen",
      .fires = STRENGTH("1", "  day A on mon, thu { squat 7 x 4 at 75% }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 5 x 4 at 75% }\n") },
    { .name = "specific-load", .level = { O, A, W, O }, .unit = LIMIT_PERCENT, .limit = { NO_LIMIT, LEAST(680), LEAST(780), NO_LIMIT },
      .block = rule_specific_load,
      .asks = "a competition lift that is trained light on average over the block",
      .why = "The mean per cent of the max over all reps of the lift itself. The nearer the meet, the more the training has to weigh like it.",
      .advice = "Raise the lighter day, or give a lighter variation its reps.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu { squat 4 x 6 at 65% }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 4 x 6 at 72.5% }\n"),
      .limit_says = "specific-load at least 65%" },
    { .name = "unreachable-load", .level = ALL(W), .unit = LIMIT_PERCENT, .limit = ALWAYS(MOST(25)), .block = rule_unreachable_load,
      .asks = "a load that the gym's discs, dumbbells or stack cannot come near",
      .why = "Loads are rounded once, to what can be loaded. When that moves the load far from what was asked, the effort on the sheet is no "
             "longer the one that was meant. Silent where the load is under the bar, where a cap lowers it, for added weight, and within half "
             "a usual step (1.25 kg, 2.5 lb): no gym comes nearer to a light load.",
      .advice = "Ask for a load that can be loaded, take another lift, or check the gym's `plates`: small discs are easily forgotten.",
      .evidence = OUR_LIMIT,
      .fires = "use \"std/lifts.block\"\ngym cellar { bar 20 kg; plates 10 x 4 kg }\n"
               "athlete ines { gym cellar; max bench 60 kg on 2026-12-12 }\n"
               BLOCK("strength", "1", "  day A on mon, thu { bench 4 x 5 at 77.5% }\n"),
      .mended = "use \"std/lifts.block\"\ngym cellar { bar 20 kg; plates 10 x 4, 2.5 x 2, 1.25 x 2 kg }\n"
                "athlete ines { gym cellar; max bench 60 kg on 2026-12-12 }\n"
                BLOCK("strength", "1", "  day A on mon, thu { bench 4 x 5 at 77.5% }\n"),
      .limit_says = "unreachable-load at most 5%" },
    { .name = "under-bar", .level = ALL(W), .kind = KIND_UNDER_BAR,
      .asks = "a load lighter than the empty bar",
      .why = "The load comes out under the bar with its collars, so the sheet says the empty bar, which is harder than what was meant.",
      .advice = "Take a lighter bar (`bar light 10 kg` in the gym) or another lift, or ask for more.",
      .evidence = PRACTICE,
      .fires = "use \"std/lifts.block\"\nathlete tomas { max bench 35 kg on 2026-12-12 }\n"
               "block winter {\n  goal general; for tomas; starts 2027-01-04; weeks 1\n  day A on mon, thu { bench 4 x 8 at 50% }\n}\n",
      .mended = "use \"std/lifts.block\"\nathlete tomas { max bench 35 kg on 2026-12-12 }\n"
                "block winter {\n  goal general; for tomas; starts 2027-01-04; weeks 1\n  day A on mon, thu { bench 4 x 8 at 70% }\n}\n" },

    /* ---- time, recovery, calendar ---- */
    { .name = "deload-due", .level = { W, W, A, A }, .unit = LIMIT_WEEKS, .limit = ALWAYS(MOST(60)), .keep = deload_due_keep, .athlete = rule_deload_due,
      .asks = "many training weeks in a row without a lighter one",
      .why = "Deload weeks, taper weeks, weeks without training and breaks end the count; blocks that follow on by date are counted together. "
             "Tiredness adds up unseen until a week lets it go.",
      .advice = "Add a `deload week N`, or `deload each 4 weeks`; or leave a week free between two blocks.",
      .evidence = "Rogerson and others 2024, \"Deloading practices in strength and physique sports: a cross-sectional survey\", Sports Med Open "
                  "10:26 (every 5.6 weeks, give or take 2.3)",
      .fires = STRENGTH("7", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .mended = STRENGTH("7", "  deload week 7\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .limit_says = "deload-due at most 5 weeks" },
    { .name = "frequency", .level = { A, W, W, A }, .block = rule_frequency,
      .asks = "a competition lift that is trained once in a week, or not at all",
      .why = "Asked of the lifts of the block as the athlete trains it, swaps taken into account; the week of a meet is left alone. A lift "
             "left out for a week gets rusty. Once a week is enough for some, so that is advice.",
      .advice = "Give it a few lighter sets on a second day.",
      .evidence = "American College of Sports Medicine 2026, position stand on resistance training, Med Sci Sports Exerc (twice a week or more)",
      .fires = STRENGTH("1", "  day A on mon { squat 5 x 5 at rpe 7 }\n"),
      .mended = STRENGTH("1", "  day A on mon { squat 3 x 5 at rpe 7 }\n  day B on thu { squat 3 x 4 at rpe 6 }\n") },
    { .name = "back-to-back", .level = ALL(W), .unit = LIMIT_DAYS, .limit = ALWAYS(LEAST(20)), .keep = back_to_back_keep, .athlete = rule_back_to_back,
      .asks = "the same competition lift hard on two days close together",
      .why = "Hard is rpe 7 or more. Days are counted on the calendar, across weeks and blocks, so the last day of a week and the first of "
             "the next are neighbours too; days without a date are left out.",
      .advice = "Put a day between the two, or make one of them light.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon { squat 3 x 5 at rpe 8 }\n  day B on tue { squat 3 x 5 at rpe 7 }\n"),
      .mended = STRENGTH("1", "  day A on mon { squat 3 x 5 at rpe 8 }\n  day B on thu { squat 3 x 5 at rpe 7 }\n"),
      .limit_says = "back-to-back at least 3 days" },
    { .name = "session-minutes", .level = ALL(A), .unit = LIMIT_MINUTES, .limit = ALWAYS(MOST(1200)), .block = rule_session_minutes,
      .asks = "a day that takes very long",
      .why = "Worked out from 40 s a set, the rest as it is written or else 3 min for main lifts and 90 s for others (a superset rests once a "
             "round), and a minute a warm-up set. What comes last in a very long session is done badly or not at all.",
      .advice = "Leave an accessory out, pair two in a `superset`, or use another day.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    squat 8 x 3 at rpe 6 rest 5 min\n    bench 8 x 3 at rpe 6 rest 5 min\n    row 12 x 8 at rpe 7 rest 3 min\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat 8 x 3 at rpe 6 rest 3 min\n    bench 8 x 3 at rpe 6 rest 3 min\n    row 4 x 8 at rpe 7 rest 2 min\n  }\n"),
      .limit_says = "session-minutes at most 90 min" },
    { .name = "order-in-day", .level = { A, W, W, A }, .block = rule_order_in_day,
      .asks = "an accessory before a main lift that works the same muscle",
      .why = "What comes first is done best. Tired by the accessory, the main lift is lighter that day and its effort says little.",
      .advice = "Write the accessory below the main lift.",
      .evidence = PRACTICE,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    leg-extension 3 x 12 at rpe 8\n    squat 4 x 5 at rpe 7\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat 4 x 5 at rpe 7\n    leg-extension 3 x 12 at rpe 8\n  }\n") },
    { .name = "taper-shape", .level = { O, O, W, O }, .block = rule_taper_shape,
      .asks = "a taper that takes off too little, too much, or weight instead of sets",
      .why = "Against the block's week with the most hard sets of the competition lifts, the week before the meet week should be down by 30 to 70 %, "
             "the meet week by 30 % or more. Loads at equal reps should stay within 15 % of the week before, up to 4 days out: a taper takes off sets "
             "and keeps the weight.",
      .advice = "Write `taper weeks 3-4 { sets to 50 | 30% }` and leave the loads up; only the last five days are light.",
      .evidence = TAPER_STUDIES,
      .fires = PEAK_MEET("  taper week 4 { rpe down 2 }\n  day A on mon, thu { squat top 1 x 1 at rpe 8 then back-off 4 x 3 drop 12% }\n", ""),
      .mended = PEAK_MEET("  taper week 3 { sets to 50% }\n  taper week 4 { sets to 25%; rpe down 2 }\n  day A on mon, thu { squat top 1 x 1 at rpe 8 then back-off 4 x 3 drop 12% }\n", "") },
    { .name = "meet-week", .level = { O, E, E, E }, .block = rule_meet_week,
      .asks = "a competition lift that is hard in the last days before a meet",
      .why = "Hard is rpe 8 or more. 1 to 3 days before the meet is an error, 4 or 5 days a warning: the tiredness is still there on the day and "
             "the strength is not yet.",
      .advice = "Keep to a few light singles at rpe 6 or less, and have the last heavy day more than 5 days out.",
      .evidence = "common practice; in line with Travis and others 2021, \"Characterizing the tapering practices of United States and Canadian raw "
                  "powerlifters\", J Strength Cond Res 35(12S):S26-S35. The days are our own choice",
      .fires = PEAK_MEET("  taper weeks 3-4 { sets to 50 | 25% }\n  day A on mon, thu { squat top 1 x 1 at rpe 8 then back-off 4 x 3 drop 12% }\n", ""),
      .mended = PEAK_MEET("  taper week 3 { sets to 50% }\n  taper week 4 { sets to 25%; rpe down 2 }\n"
                          "  day A on mon, thu { squat top 1 x 1 at rpe 8 then back-off 4 x 3 drop 12% }\n", "") },
    { .name = "calendar-gap", .level = ALL(W), .unit = LIMIT_DAYS, .limit = ALWAYS(MOST(70)), .athlete = rule_calendar_gap,
      .asks = "more than a week without training between two blocks",
      .why = "Counted are the days from the end of one block of an athlete to the start of her next. More often than not a date is wrong. In a season "
             "a `break` says that the time off is meant.",
      .advice = "Correct `starts`, or allow it with its reason.",
      .evidence = OUR_LIMIT,
      .fires = STRENGTH("2", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n")
               "block spring {\n  goal strength; for ines; starts 2027-02-01; weeks 2\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n}\n",
      .mended = STRENGTH("2", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n")
                "block spring {\n  goal strength; for ines; starts 2027-01-18; weeks 2\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n}\n",
      .limit_says = "calendar-gap at most 14 days" },
    { .name = "calendar-overlap", .level = ALL(E), .athlete = rule_calendar_overlap,
      .asks = "one athlete in two blocks on the same dates",
      .why = "She would have two sheets for one day. A block covers its weeks whole, from its first day to the last one's seventh.",
      .advice = "Start one later, make the first shorter, or take her out of one of the two.",
      .evidence = PRACTICE,
      .fires = STRENGTH("2", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n")
               "block spring {\n  goal strength; for ines; starts 2027-01-11; weeks 2\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n}\n",
      .mended = STRENGTH("2", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n")
                "block spring {\n  goal strength; for ines; starts 2027-01-18; weeks 2\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n}\n" },
    { .name = "stale-max", .level = { W, W, W, A }, .unit = LIMIT_DAYS, .limit = ALWAYS(MOST(840)), .block = rule_stale_max,
      .asks = "loads worked out from a max that is old or has no date",
      .why = "The age counts on the first day of the week that uses it. Loads from an old max are loads for somebody she was. A max without a date "
             "is advice, once: nobody can see its age.",
      .advice = "Test again, or add a line from a good set: `max squat from 100 kg x 5 rpe 8 on 2026-12-28`.",
      .evidence = OUR_LIMIT,
      .fires = "use \"std/lifts.block\"\nathlete ines { max squat 120 kg on 2026-06-01 }\n"
               BLOCK("strength", "1", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .mended = "use \"std/lifts.block\"\nathlete ines { max squat 120 kg on 2026-06-01; max squat from 100 kg x 5 rpe 8 on 2026-12-12 }\n"
                BLOCK("strength", "1", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .limit_says = "stale-max at most 120 days" },
    { .name = "opener", .level = { O, W, W, O }, .unit = LIMIT_PERCENT, .limit = ALWAYS(MOST(930)), .keep = opener_keep, .athlete = rule_opener,
      .asks = "an opener that is too heavy",
      .why = "Compared is the opener as it is rounded with the max expected for the day, and with the heaviest single trained in the last 42 days. "
             "A missed opener puts the whole meet at risk; a lighter one costs nothing.",
      .advice = "Open with about 91 %, a weight that she has lifted in training.",
      .evidence = "\"Weight selection attempts of elite classic powerlifters\", world championships 2012 to 2019 (openers of about 91 % of the third "
                  "attempt; its authors are not known here). The limit is our own choice",
      .fires = PEAK_MEET("  taper week 4 { sets to 50%; rpe down 2 }\n  day A on mon, thu { squat top 1 x 1 at rpe 9 then back-off 4 x 3 drop 12% }\n",
                         "  attempts squat 96%, 100%, 103%\n"),
      .mended = PEAK_MEET("  taper week 4 { sets to 50%; rpe down 2 }\n  day A on mon, thu { squat top 1 x 1 at rpe 9 then back-off 4 x 3 drop 12% }\n",
                          "  attempts squat 91%, 96%, 100%\n"),
      .limit_says = "opener at most 95%" },

    /* ---- athletes and words ---- */
    { .name = "avoided-lift", .level = ALL(E), .kind = KIND_AVOIDED_LIFT,
      .asks = "a lift that the athlete avoids is planned for her",
      .why = "`avoid` without `use` leaves open what she does instead.",
      .advice = "Name the lift that stands in, or swap it in an `adjust`.",
      .evidence = PRACTICE,
      .fires = "use \"std/lifts.block\"\nathlete ines { avoid overhead-press because \"left shoulder\" }\n"
               BLOCK("general", "1", "  day A on mon, thu { overhead-press 4 x 8 at rpe 7 }\n"),
      .mended = "use \"std/lifts.block\"\nathlete ines { avoid overhead-press use landmine-press because \"left shoulder\" }\n"
                BLOCK("general", "1", "  day A on mon, thu { overhead-press 4 x 8 at rpe 7 }\n") },
    { .name = "effort-honesty", .level = ALL(W), .athlete = rule_effort_honesty,
      .asks = "an athlete who rates her sets much harder or easier than they were",
      .why = "Compared are her ratings in the diary, after her own `effort` lines, with the effort worked out from the load, the reps and a max no "
             "older than 12 weeks. A mean difference of more than 1.5 points over 6 sets or more is a habit and no bad day.",
      .advice = "Add the `effort` line that the finding gives. It corrects her diary and never the planned loads.",
      .evidence = "Hackett and others 2017, \"Accuracy in estimating repetitions to failure during resistance exercise\", J Strength Cond Res "
                  "31(8):2162-2168 (about 1 rep off near failure); Halperin and others 2022, \"Accuracy in predicting repetitions to task failure in "
                  "resistance exercise\", Sports Med 52(2):377-390 (0.95 reps). The 1.5 points and 6 sets are our own choice",
      .fires = DIARY("  2027-01-04 A { squat 90 kg x 5, 5, 5 rpe 8, 8, 8 }\n  2027-01-11 A { squat 90 kg x 5, 5, 5 rpe 8, 8, 8 }\n"),
      .mended = DIARY("  2027-01-04 A { squat 90 kg x 5, 5, 5 rpe 5, 5, 5 }\n  2027-01-11 A { squat 90 kg x 5, 5, 5 rpe 5, 5, 5 }\n") },
    { .name = "unlikely-result", .level = ALL(W), .athlete = rule_unlikely_result,
      .asks = "a set of the diary that is far from what she has shown so far",
      .why = "30 kg typed for 130 kg would drag her max, and with it her next weeks, to where she has never been. A result that says more than 15 % "
             "more or less than her running max, and lies more than 3 standard errors away from it, stays out until a second one within 8 weeks "
             "agrees with it, or until you say that it is right.",
      .advice = "Mend the load or the reps. If they are right, allow it in the session, and it counts.",
      .evidence = "our own choice; lifters' estimates of their reps left are off by about 1 rep near failure, which is some 3 % of the max "
                  "(Hackett and others 2017)",
      .fires = DIARY("  2027-01-04 A { squat 97.5 kg x 5, 5, 5 rpe 7 }\n  2027-01-11 A { squat 47.5 kg x 5, 5, 5 rpe 7 }\n"),
      .mended = DIARY("  2027-01-04 A { squat 97.5 kg x 5, 5, 5 rpe 7 }\n  2027-01-11 A { squat 97.5 kg x 5, 5, 5 rpe 7 }\n") },
    { .name = "unmatched-diary", .level = ALL(W), .kind = KIND_UNMATCHED_DIARY,
      .asks = "an entry of a diary that fits no session of the plan, or only in part",
      .why = "A session belongs to the week of its date, or the week it names, and there to the day of its label. A date outside every block, a "
             "day that the week does not have, more or fewer parts than the plan has set groups, a lift with a progression that is not "
             "named: what was lifted feeds the running max, but no progression hears of it.",
      .advice = "Mend the date, the label or the parts; for training beside the plan, allow it in the session.",
      .evidence = OUR_LIMIT,
      .fires = DIARY("  2027-01-04 B { squat 97.5 kg x 5, 5, 5 rpe 7 }\n"),
      .mended = DIARY("  2027-01-04 A { squat 97.5 kg x 5, 5, 5 rpe 7 }\n") },
    { .name = "missed-often", .level = ALL(W), .athlete = rule_missed_often,
      .asks = "a lift that was missed in two of its last three sessions",
      .why = "Missed is lighter, short or not done. Once is a bad day; twice in three the plan is too heavy, or something is wrong.",
      .advice = "Lower the lift in an `adjust`, give a newer max, or ask what is the matter.",
      .evidence = OUR_LIMIT,
      .fires = DIARY("  2027-01-04 A { squat 97.5 kg x 5, 4, 3 rpe 8, 9, 10 }\n  2027-01-11 A { squat 97.5 kg x 5, 4, 3 rpe 8, 9, 10 }\n"),
      .mended = DIARY("  2027-01-04 A { squat 97.5 kg x 5, 4, 3 rpe 8, 9, 10 }\n  2027-01-11 A { squat 97.5 kg x 5, 5, 5 rpe 7, 7, 7 }\n") },
    { .name = "unused-name", .level = ALL(W),
      .asks = "a lift, scheme, gym, progression or template that nothing uses",
      .why = "Asked of what the files named on the command line declare, never of used files, rosters or std/. Often it is spelt another way where "
             "it was meant.",
      .advice = "Use it, or take it out.",
      .evidence = PRACTICE,
      .limit_says = "off unused-name because \"the lifts are for later\"", /* no `allow` stands beside a lift or a gym */
      .fires = INES "lift sled\n" BLOCK("general", "1", "  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .mended = INES "lift sled\n" BLOCK("general", "1", "  day A on mon, thu { squat 4 x 5 at rpe 7; sled 3 x 20 m at rpe 7 }\n") },
    { .name = "unused-let", .level = ALL(W),
      .asks = "a `let` whose $name stands nowhere",
      .why = "It changes nothing. Often the $name is spelt another way where it was meant.",
      .advice = "Use it, or take it out.",
      .evidence = PRACTICE,
      .fires = INES BLOCK("general", "1", "  let $top = 7\n  day A on mon, thu { squat 4 x 5 at rpe 7 }\n"),
      .mended = INES BLOCK("general", "1", "  let $top = 7\n  day A on mon, thu { squat 4 x 5 at rpe $top }\n") },
    { .name = "unused-allow", .level = ALL(W),
      .asks = "an `allow` that permits nothing",
      .why = "What it allowed is mended, or stands somewhere else. Left in, it would hide the next finding.",
      .advice = "Take it out, or write it where the finding points.",
      .evidence = PRACTICE,
      .fires = STRENGTH("1", "  day A on mon, thu {\n    allow hard-high-reps because \"end of winter\"\n    squat 4 x 6 at rpe 7\n  }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu { squat 4 x 6 at rpe 7 }\n") },
    { .name = "no-spotter-note", .level = ALL(A), .block = rule_no_spotter_note,
      .asks = "a very hard set under a bar with no word about spotters",
      .why = "Meant are singles at rpe 9 or more, sets at rpe 10 and `amrap`, of main lifts that load a bar, with no `note` on the set, the lift or "
             "the day. The sheet prints a caution either way; a note says who stands where.",
      .advice = "Add a `note`: who spots, or where the safety bars go.",
      .evidence = PRACTICE,
      .fires = STRENGTH("1", "  day A on mon, thu { squat { top 1 x 1 at rpe 9; back-off 4 x 4 drop 15% } }\n"),
      .mended = STRENGTH("1", "  day A on mon, thu {\n    squat {\n      note \"Spotters both sides\"\n"
                              "      top 1 x 1 at rpe 9; back-off 4 x 4 drop 15%\n    }\n  }\n") },
};
/* clang-format on */
const int rule_count = sizeof rules / sizeof *rules;

const struct rule *rule_find(const char *name)
{
    for (int i = 0; i < rule_count; i++)
        if (!strcmp(rules[i].name, name))
            return &rules[i];
    return NULL;
}

/* ---- the page ---- */

enum { PAGE_WIDTH = 96 };

/* A paragraph with its lines filled and ended. */
static const char *filled(struct arena *arena, const char *text)
{
    char *out = arena_copy(arena, text, strlen(text));
    size_t line = 0, space = 0;
    for (size_t i = 0; out[i]; i++) {
        if (out[i] == ' ')
            space = i;
        if (i - line >= PAGE_WIDTH && space > line) {
            out[space] = '\n';
            line = space + 1;
        }
    }
    return arena_format(arena, "%s\n", out);
}

/* The lines of an example, set in by four. */
static const char *set_in(struct arena *arena, const char *lines)
{
    const char *out = "";
    for (const char *end; *lines; lines = *end ? end + 1 : end) {
        end = strchrnul(lines, '\n');
        out = arena_format(arena, "%s    %.*s\n", out, (int)(end - lines), lines);
    }
    return out;
}

static const char *sentence(struct arena *arena, const char *text)
{
    return arena_format(arena, "%c%s.", toupper((unsigned char)*text), text + 1);
}

static const char *level_text(int level)
{
    return level == LEVEL_OFF ? "off" : level_name((enum level)level);
}

/* One text for all goals, or one a goal; `of` says it of one goal. */
static const char *by_goal(struct arena *arena, const struct rule *rule,
                           const char *(*of)(struct arena *, const struct rule *, enum goal))
{
    const char *first = of(arena, rule, GOAL_HYPERTROPHY), *list = "";
    bool alike = true;
    for (enum goal goal = GOAL_HYPERTROPHY; goal < GOAL_COUNT; goal++) {
        const char *text = of(arena, rule, goal);
        list = arena_format(arena, "%s%s%s %s", list, *list ? ", " : "", goal_name(goal), text);
        alike &= !strcmp(text, first);
    }
    return alike ? first : list;
}

static const char *level_of(struct arena *arena, const struct rule *rule, enum goal goal)
{
    (void)arena;
    return level_text(rule->level[goal]);
}

static const char *limit_of(struct arena *arena, const struct rule *rule, enum goal goal)
{
    static const struct {
        const char *before, *after;
    } units[] = { [LIMIT_NONE] = { "", "" },      [LIMIT_PERCENT] = { "", " %" },   [LIMIT_SETS] = { "", " sets" },
                  [LIMIT_REPS] = { "", " reps" }, [LIMIT_EFFORT] = { "rpe ", "" },  [LIMIT_POINTS] = { "", " points" },
                  [LIMIT_DAYS] = { "", " days" }, [LIMIT_WEEKS] = { "", " weeks" }, [LIMIT_MINUTES] = { "", " min" } };
    struct bounds limit = rule->limit[goal];
    const char *before = units[rule->unit].before, *after = units[rule->unit].after;
    if (limit.low.e10 < 0 && limit.high.e10 < 0)
        return "none";
    if (limit.low.e10 >= 0 && limit.high.e10 >= 0)
        return arena_format(arena, "%s%s to %s%s", before, dec_text(arena, limit.low), dec_text(arena, limit.high),
                            after);
    bool least = limit.low.e10 >= 0;
    const char *second =
        rule->has_second ? arena_format(arena, " and %s sets", dec_text(arena, rule->second.high)) : "";
    return arena_format(arena, "%s %s%s%s%s", least ? "at least" : "at most", before,
                        dec_text(arena, least ? limit.low : limit.high), after, second);
}

static bool has_level(const struct rule *rule, int level)
{
    for (int i = 0; i < GOAL_COUNT; i++)
        if (rule->level[i] == level)
            return true;
    return false;
}

/* How to change its limit, or else its level, and to allow one finding. A row without a limit may still say what to write. */
static const char *limits_page(struct arena *arena, const struct rule *rule)
{
    bool limited = rule->unit != LIMIT_NONE;
    const char *limit = limited ? arena_format(arena, " Limit: %s.", by_goal(arena, rule, limit_of)) : "";
    const char *other = has_level(rule, LEVEL_WARNING) || has_level(rule, LEVEL_ERROR) ? "advice" : "warning";
    const char *words = rule->limit_says ? rule->limit_says : arena_format(arena, "%s level %s", rule->name, other);
    const char *change = limited ? "Another limit" : rule->limit_says ? "Silent" : "Another level";
    const char *facts = arena_format(arena, "Level: %s.%s %s, in a block or at the top level for all of them:",
                                     by_goal(arena, rule, level_of), limit, change);
    const char *page = arena_format(arena, "%s\n    checks { %s }\n", filled(arena, facts), words);
    if (!limited && rule->limit_says)
        return page;
    return arena_format(
        arena, "%s\nOne finding allowed, in its entry, day or block%s:\n\n    allow %s because \"the reason\"\n", page,
        has_level(rule, LEVEL_ERROR) ? " (an error is never allowed)" : "", rule->name);
}

const char *rule_page(struct arena *arena, const struct rule *rule)
{
    const char *looks = filled(arena, arena_format(arena, "%s %s", sentence(arena, rule->asks), rule->why));
    const char *source = filled(arena, arena_format(arena, "Source: %s.", rule->evidence));
    return arena_format(arena, "%s\n%s\nThis trips it:\n\n%s\n%s\n%s\n%s", looks, source, set_in(arena, rule->fires),
                        filled(arena, rule->advice), set_in(arena, rule->mended), limits_page(arena, rule));
}
