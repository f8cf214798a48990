/* The rules of volume and load, with sets that the files of tests/cases/rules do not reach; numbers worked by hand. Hard sets a
 * week: about what the volume reviews name (Schoenfeld, Ogborn, Krieger 2017, J Sports Sci 35(11); Iversen et al. 2021, Sports
 * Med 51), the exact limits being our own choice. Steps of load: 2-10 % (ACSM 2009, Med Sci Sports Exerc 41(3)). Zones: A. S.
 * Prilepin's table, closed bands, as reprinted. Efforts: Brzycki 1993, n = 37 - 36 x share; effort = reps + 10 - n. */
#include "rules_asked.h"

static const struct asked rows[] = {
    { "a week without the lift has no hard sets of it", "weekly-sets",
      "goal strength; weeks 2; weeks 1 { day A on mon { squat 5 x 5 at rpe 7 } }; "
      "weeks 2 { day A on mon { curl 3 x 12 at rpe 7 } }",
      .met = "`weeks 2` 0 hard sets for squat in week 2; the limits are 5 to 16" },
    { "each lift speaks for itself", "weekly-sets",
      "goal strength; weeks 1; day A on mon { squat 1 x 5 at rpe 7; bench 17 x 3 at rpe 5; deadlift 5 x 5 at rpe 9 }",
      .met = "`winter` 1 hard set for squat in week 1; the limits are 5 to 16\n`winter` 17 hard sets for bench in "
             "week 1; the limits are 5 to 16" },
    { "a competition lift that the block does not train is not asked for", "weekly-sets",
      "goal strength; weeks 1; day A on mon { front-squat 2 x 5 at rpe 7 }", .met = "" },
    { "the limits go with the goal", "weekly-sets",
      "goal hypertrophy; weeks 1; day A on mon { squat 7 x 5 at rpe 7; bench 8 x 5 at rpe 7; deadlift 21 x 5 at rpe 7 "
      "}",
      .met = "`winter` 7 hard sets for squat in week 1; the limits are 8 to 20\n`winter` 21 hard sets for deadlift "
             "in week 1; the limits are 8 to 20" },
    { "and those of a peak are lower", "weekly-sets",
      "goal peak; weeks 1; day A on mon { squat 2 x 3 at rpe 7; bench 3 x 3 at rpe 7; deadlift 13 x 3 at rpe 7 }",
      .met = "`winter` 2 hard sets for squat in week 1; the limits are 3 to 12\n`winter` 13 hard sets for deadlift "
             "in week 1; the limits are 3 to 12" },
    { "the house may have limits of its own for a lift", "weekly-sets",
      "goal strength; weeks 1; checks { weekly-sets squat 8 to 10 }; day A on mon { squat 7 x 3 at rpe 7; bench 7 x 3 "
      "at rpe 7 }",
      .met = "`winter` 7 hard sets for squat in week 1; the limits are 8 to 10" },
    { "of two lines for one lift the last counts", "weekly-sets",
      "goal strength; weeks 1; checks { weekly-sets squat 1 to 10; weekly-sets squat 8 to 10; weekly-sets 1 to 20 }; day A on mon { squat 7 x 3 at rpe 7 }",
      .met = "`winter` 7 hard sets for squat in week 1; the limits are 8 to 10" },
    { "none at all is a limit too", "weekly-sets",
      "goal strength; weeks 1; checks { weekly-sets squat 0 to 0 }; day A on mon { squat 2 x 3 at rpe 7 }",
      .met = "`winter` 2 hard sets for squat in week 1; the limits are 0 to 0" },
    { "sets of unknown effort may be hard, so nothing is too few", "weekly-sets",
      "goal strength; weeks 1; day A on mon { deadlift 2 x 5 at rpe 7 then 3 x 5 }", .met = "" },
    { "but too few with them is too few", "weekly-sets",
      "goal strength; weeks 1; day A on mon { deadlift 2 x 5 at rpe 7 then 2 x 5 }",
      .met = "`winter` 2 hard sets for deadlift in week 1; the limits are 5 to 16" },
    { "a number of reps in open sets may be any number of sets", "weekly-sets",
      "goal strength; weeks 1; day A on mon { squat total 30 at rpe 7 }", .met = "" },
    { "rounds multiply sets, a band of sets counts its middle rounded up", "weekly-sets",
      "goal strength; weeks 1; day A on mon { superset 3 rounds { squat 1 x 5 at rpe 7; bench 1 x 5 at rpe 7 }; squat "
      "1-2 x 5 at rpe 7; bench 1 x 5 at rpe 7 }",
      .met = "`winter` 4 hard sets for bench in week 1; the limits are 5 to 16" },
    { "deload and taper weeks are left out", "weekly-sets",
      "goal strength; weeks 3; deload week 2 { sets to 50% }; taper week 3 { sets to 50% }; day A on mon { squat 5 x 5 "
      "at rpe 7 }",
      .met = "" },

    /* Quads and glutes 4 x 1, trunk 4 x 1/2 + 3 x 1/2, back 3 x 1. */
    { "works counts one, helps a half", "muscle-sets",
      "goal strength; weeks 1; checks { muscle-sets trunk 2 to 3 }; day A on mon { squat 4 x 5 at rpe 7; deadlift 3 x 5 at rpe 7 }",
      .met = "`winter` 3 hard sets for back in week 1; the limits are 4 to 22\n`winter` 3.5 hard sets for trunk in "
             "week 1; the limits are 2 to 3" },
    /* Common practice: nobody trains a muscle on purpose that his lifts only help. */
    { "a muscle that is only helped may have little", "muscle-sets",
      "goal strength; weeks 1; day A on mon { squat 4 x 5 at rpe 7 }", .met = "" },
    { "but not below a limit of the house's own", "muscle-sets",
      "goal strength; weeks 1; checks { muscle-sets trunk 3 to 9 }; day A on mon { squat 4 x 5 at rpe 7 }",
      .met = "`winter` 2 hard sets for trunk in week 1; the limits are 3 to 9" },
    { "the house may have limits of its own for a muscle", "muscle-sets",
      "goal strength; weeks 1; checks { muscle-sets trunk 2 to 3 }; day A on mon { squat 8 x 5 at rpe 7 }",
      .met = "`winter` 4 hard sets for trunk in week 1; the limits are 2 to 3" },
    { "easy sets are no hard sets", "muscle-sets",
      "goal strength; weeks 1; day A on mon { press 3 x 8 at rpe 5 then 9 x 8 at rpe 4.5 }",
      .met = "`winter` 3 hard sets for shoulders in week 1; the limits are 4 to 22" },

    /* 5 hard sets; a light week; 8 hard sets. */
    { "the week before is the last one that trains the lift, easy or not", "volume-jump",
      "goal strength; weeks 3; day A on mon { bench 1 x 3 at rpe 7; squat (5 | 8) x 5 at rpe 7 in weeks 1, 3 }",
      .met =
          "`winter` squat goes from 5 hard sets in week 1 to 8 in week 3, up 3 (60 %); the limit is 20 % and 2 sets" },
    { "from no hard set at all there is no per cent", "volume-jump",
      "goal strength; weeks 2; day A on mon { squat (4 | 5) x 5 at rpe 4 | 7 }",
      .met = "`winter` squat goes from 0 hard sets in week 1 to 5 in week 2, up 5; the limit is 20 % and 2 sets" },
    { "the same sets a little harder are no more work", "volume-jump",
      "goal strength; weeks 2; day A on mon { squat 5 x 5 at rpe 4.5 | 5 }", .met = "" },
    { "days in turn are measured by the fuller week before", "volume-jump",
      "goal strength; weeks 3; rotate A, B on mon, wed, fri\n day A { squat 3 x 5 at rpe 7 }\n day B { bench 3 x 5 at rpe 7 }", .met = "" },
    { "of two weeks as full the later one", "volume-jump",
      "goal strength; weeks 3; rotate A, B on mon, wed\n day A { squat (3 | 3 | 9) x 5 at rpe 7 }\n day B { bench 3 x 5 at rpe 7 }",
      .met = "`winter` squat goes from 3 hard sets in week 2 to 9 in week 3, up 6 (200 %); the limit is 20 % and 2 sets" },
    { "a lift on days of its own is measured by the week before, whatever turns beside it", "volume-jump",
      "goal strength; weeks 3; rotate A, B on mon, wed\n day A { bench 3 x 5 at rpe 7 }\n day B { sled 3 x 5 at rpe 7 }\n"
      "day C on fri { squat (8 | 4 | 8) x 5 at rpe 7 }",
      .met = "`winter` squat goes from 4 hard sets in week 2 to 8 in week 3, up 4 (100 %); the limit is 20 % and 2 sets" },
    { "a house limit of nothing is a limit", "volume-jump",
      "goal strength; weeks 2; checks { volume-jump at most 0% }; day A on mon { squat (5 | 8) x 5 at rpe 7 }",
      .met = "`winter` squat goes from 5 hard sets in week 1 to 8 in week 2, up 3 (60 %); the limit is 0 % and 2 sets" },
    { "sets of unknown effort before are taken as hard", "volume-jump",
      "goal strength; weeks 2; day A on mon { deadlift { 5 x 5 in weeks 1; 5 x 5 at rpe 7 in weeks 2 } }", .met = "" },

    /* With 60 kg of bodyweight: 65 to 75 kg, 10/65 = 15.4 %; 65 to 67.5 is 3.8 %. */
    { "added weight is compared with the bodyweight", "load-jump",
      "weeks 2; day A on mon { pull-up 3 x 5 at bodyweight plus 5 | 15 kg }",
      .met = "`at bodyweight plus 5 | 15 kg` pull-up goes from 65 kg in week 1 to 75 kg in week 2, bodyweight "
             "included, at the same reps, up 15.4 %; the limit is 10 "
             "%" },
    { "so that small steps are small", "load-jump",
      "weeks 2; day A on mon { pull-up 3 x 5 at bodyweight plus 2.5 | 7.5 kg }", .met = "" },
    { "the heaviest set of each week counts", "load-jump",
      "weeks 2; day A on mon { squat 3 x 3 at 70, 75, 85% | 80, 85, 85% }", .met = "" },
    /* 75 to 85 kg: 13.3 %. */
    { "on the week before that trains the lift", "load-jump",
      "weeks 3; day A on mon { bench 1 x 3 at 30 kg; squat 3 x 3 at 75 | 85% in weeks 1, 3 }",
      .met = "`at 75 | 85%` squat goes from 75 kg in week 1 to 85 kg in week 3 at the same reps, up 13.3 %; the limit "
             "is 10 %" },
    { "of loads as heavy the first speaks", "load-jump",
      "weeks 2; day A on mon { squat { 3 x 3 at 75 | 85%; 2 x 3 at 70 | 85% } }",
      .met = "`at 75 | 85%` squat goes from 75 kg in week 1 to 85 kg in week 2 at the same reps, up 13.3 %; the limit "
             "is 10 %" },
    { "from nothing there is no per cent", "load-jump", "weeks 2; day A on mon { sled 3 x 10 at 0 | 10 kg }",
      .met = "" },
    { "each role by itself", "load-jump",
      "weeks 2; day A on mon { squat { back-off 1 x 3 at 70% in weeks 1; 1 x 3 at 85% in weeks 2 } }", .met = "" },
    { "the top of a range has to be the same too", "load-jump",
      "weeks 2; day A on mon { sled { 3 x 8-12 at 500 kg in weeks 1; 3 x 8-10 at 600 kg in weeks 2 } }", .met = "" },
    { "and the bottom", "load-jump",
      "weeks 2; day A on mon { sled { 3 x 8-12 at 500 kg in weeks 1; 3 x 10-12 at 600 kg in weeks 2 } }", .met = "" },
    { "seconds and metres are compared likewise", "load-jump",
      "weeks 2; day A on mon { sled 3 x 20 m at 500 | 600 kg }",
      .met = "`at 500 | 600 kg` sled goes from 500 kg in week 1 to 600 kg in week 2 at the same reps, up 20 %; the "
             "limit is 10 %" },
    { "two steps of a stack are more than its smallest", "load-jump",
      "weeks 2; day A on mon { pulldown 3 x 10 at 25 | 35 kg }",
      .met = "`at 25 | 35 kg` pulldown goes from 25 kg in week 1 to 35 kg in week 2 at the same reps, up 40 %; the "
             "limit is 10 %" },
    { "one is not", "load-jump", "weeks 2; day A on mon { pulldown 3 x 10 at 25 | 30 kg }", .met = "" },

    /* Table: under 70 18-30, 70-79 12-24, 80-89 10-20, 90 and more 4-10. */
    { "the edges of the zones belong to the heavier one", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 4 x 5 at 80% }\nday B on wed { squat 4 x 6 at 70% }\nday C on fri "
      "{ squat 10 x 1 at 90% }",
      .met = "" },
    { "a rep more in each", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 7 x 3 at 80% }\nday B on wed { squat 5 x 5 at 70% }\nday C on fri "
      "{ squat 11 x 1 at 90% }",
      .met = "`squat` in one day squat has 21 reps from 80 to under 90 % of the max (the table has 10 to 20)\n"
             "`squat` in one day squat has 25 reps from 70 to under 80 % of the max (the table has 12 to 24)\n"
             "`squat` in one day squat has 11 reps at 90 % and more of the max (the table has 4 to 10)" },
    { "light work: 30 reps are fine, 31 are not", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 5 x 6 at 50% }\nday B on wed { squat 31 x 1 at 50% }",
      .met = "`squat` in one day squat has 31 reps under 70 % of the max (the table has 18 to 30)" },
    { "the least of each zone is enough", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 3 x 6 at 60% }\nday B on tue { squat 2 x 6 at 70% }\n"
      "day C on wed { squat 2 x 5 at 80% }\nday D on thu { squat 2 x 2 at 90% }",
      .met = "" },
    { "a rep less in each", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 17 x 1 at 60% }\nday B on tue { squat 11 x 1 at 70% }\n"
      "day C on wed { squat 3 x 3 at 80% }\nday D on thu { squat 1 x 3 at 90% }",
      .met = "`squat` in one day squat has 17 reps under 70 % of the max (the table has 18 to 30)\n"
             "`squat` in one day squat has 11 reps from 70 to under 80 % of the max (the table has 12 to 24)\n"
             "`squat` in one day squat has 9 reps from 80 to under 90 % of the max (the table has 10 to 20)\n"
             "`squat` in one day squat has 3 reps at 90 % and more of the max (the table has 4 to 10)" },
    { "two zones of a day are one finding", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 5 x 5 at 75% then 6 x 2 at 90% }",
      .met = "`squat` in one day squat has 25 reps from 70 to under 80 % of the max (the table has 12 to 24) and 12 "
             "reps at 90 % and more of the max (the table has 4 to "
             "10)" },
    { "half of the day's reps is not most of them", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 3 x 3 at 80% then 3 x 3 at 75% }", .met = "" },
    { "a single alone is too few at 90 % too", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 1 x 1 at 90% }",
      .met = "`squat` in one day squat has 1 rep at 90 % and more of the max (the table has 4 to 10)" },
    { "a number of reps counts as itself", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat total 25 at 75% }",
      .met = "`squat` in one day squat has 25 reps from 70 to under 80 % of the max (the table has 12 to 24)" },
    { "all entries of a day are one sum, a range counts its middle", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 3 x 4-5 at 75%; bench 3 x 5 at 75%; squat 2 x 6 at 75% }",
      .met = "`squat` in one day squat has 25.5 reps from 70 to under 80 % of the max (the table has 12 to 24)" },
    { "accessories have no zones", "zone-reps", "goal strength; weeks 1; day A on mon { sled 9 x 9 at 75% }",
      .met = "" },

    /* 1 x 1 at 180 kg and 4 x 5 at 150 kg of 200 kg: 21 reps, 3180 kg, mean 151.4286 kg or 75.7143 % (the usual textbook sum). */
    { "the mean is by reps", "specific-load",
      "goal peak; weeks 1; day A on mon { squat 1 x 1 at 90% then 4 x 5 at 75% }",
      .met = "`winter` the mean load of squat is 75.7 % of the max (by reps); the limit is 78 %" },
    { "deloads are left out", "specific-load",
      "goal strength; weeks 2; deload week 2 { load down 30% }; day A on mon { squat 3 x 5 at 70% }", .met = "" },
    { "each lift speaks for itself", "specific-load",
      "goal strength; weeks 1; day A on mon { squat 3 x 10 at 50%; bench 3 x 5 at 75%; deadlift 3 x 5 at rpe 7 }",
      .met = "`winter` the mean load of squat is 50 % of the max (by reps); the limit is 68 %" },

    { "a load under the bar has its own finding", "unreachable-load", "weeks 1; day A on mon { squat 3 x 5 at 15% }",
      .met = "" },
    { "added weight is left to the lifter", "unreachable-load",
      "weeks 1; day A on mon { pull-up 3 x 5 at bodyweight minus 18.8 kg }", .met = "" },
    { "a deload is not asked", "unreachable-load",
      "weeks 2; deload week 2 { load down 7% }; day A on mon { pulldown 3 x 10 at 50 kg }", .met = "" },
    { "a group speaks once, by its worst set", "unreachable-load",
      "weeks 1; day A on mon { pulldown 3 x 10 at 48, 22, 32 kg }",
      .met = "`at 48, 22, 32 kg` pulldown asks for 22 kg and gets 20 kg in this gym, 9.1 % away; "
             "the limit is 2.5 %" },
    /* 21 kg to 20 kg is 4.8 %, and half a usual step of 2.5 kg is more than this kilogram. */
    { "nobody comes nearer to a light load than half a usual step", "unreachable-load",
      "weeks 1; day A on mon { pulldown 3 x 10 at 21 kg }", .met = "" },

    /* 20, 22.5 kg with the bar and 1.25 a side: 21.25 lies half of 2.5 kg from either. */
    { "half a usual step off is as near as gyms come", "unreachable-load",
      "weeks 1; day A on mon { squat 1 x 5 at 21.25 kg }", .met = "" },
    { "of nothing there is no per cent", "unreachable-load", "weeks 1; day A on mon { pulldown 1 x 5 at 0 kg }",
      .met = "" },
    /* 3 of 13 and 6 of 26 are 23.1 %. */
    { "of loads as far off the first speaks", "unreachable-load",
      "weeks 1; day A on mon { gym attic; pulldown 2 x 10 at 13, 26 kg }\n}\ngym attic { stack 10, 20, 40 kg",
      .met = "`at 13, 26 kg` pulldown asks for 13 kg and gets 10 kg in this gym, 23.1 % away; the limit is 2.5 %" },
    { "each lift of the day is asked", "zone-reps",
      "goal strength; weeks 1; day A on mon { squat 1 x 5 at 75%; bench 1 x 5 at 75% }",
      .met = "`squat` in one day squat has 5 reps from 70 to under 80 % of the max (the table has 12 to 24)\n"
             "`bench` in one day bench has 5 reps from 70 to under 80 % of the max (the table has 12 to 24)" },
};

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, asked_holds));
    return tests_run(&tests);
}
