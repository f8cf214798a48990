/* Plans whose reasons nobody hears (plan_job's bare and for_rules) come to the sets of those whose reasons are told, and say as much of
 * them. Rows differ in one of the things a load hangs on. */
#include "same_plan.h"

struct row_bare {
    const char *says, *block;
};

#define TWO_GYMS "gym shed { bar 15 kg; plates 25 x 16, 10 x 4 kg }\n"
#define LIFTER                                                                                                         \
    "athlete ines { gym hall; bodyweight 60 kg; bodyweight 65 kg on 2027-01-12; max squat 100 kg; max bench 60 kg; max sled 1000 kg; max pull-up 80 kg\n" \
    "max deadlift 140 kg on 2026-12-01; max deadlift 150 kg on 2027-01-09; max deadlift 160 kg on 2027-01-16 }\n"

static const struct row_bare rows_bare[] = {
    { "reps", "day A { squat 2 x 3 at 70%; squat 2 x 5 at 70%; squat 2 x 3-5 at 70%; squat 2 x 3-6 at 70% }" },
    { "amount", "day A { squat 2 x 3 at 70%; squat 2 x 3 at 70.5%; squat 2 x 3 at 75% }" },
    { "effort", "day A { squat 2 x 3 at rpe 7; squat 2 x 3 at rpe 8; squat 2 x 3 at rpe 7-8 }" },
    { "way of asking", "day A { squat 2 x 3 at 70%; squat 2 x 3 at 70 kg; squat 2 x 3 at rpe 7; squat 2 x 3 }" },
    { "kind of reps", "day A { squat 2 x 5 at 70 kg; squat 2 x 5 s at 70 kg; squat 2 x 5 m at 70 kg; squat 2 x 2+3 at 70 kg }" },
    { "lift", "day A { squat 2 x 3 at 70%; front-squat 2 x 3 at 70%; bench 2 x 3 at 70% }" },
    { "gym", "day A { squat 2 x 3 at 71% }; day B { gym shed; squat 2 x 3 at 71% }" },
    { "max of the week", "day A { deadlift 2 x 3 at 70%; deadlift 2 x 3 at rpe 8 }" },
    { "cap", "day A { squat 2 x 3 at 80%; squat 2 x 3 at 80% cap 75%; squat 2 x 3 at 80% cap rpe 6; squat 2 x 3 at 80% cap 60 kg }" },
    { "warm-up", "day A { squat { warm-up 2 x 3 at 70 kg; top 2 x 3 at 80 kg }; bench { warm-up 1 x 3 at 30 kg; 2 x 3 at 30 kg } }" },
    { "per cent of a warm-up", "day A { squat { warm-up 2 x 3 at 50%; 2 x 3 at 80% }; squat { warm-up 2 x 3 at 50%; 2 x 3 at 60% } }" },
    { "set before", "day A { squat top 1 x 3 at 80% then back-off 2 x 3 drop 10%; squat top 1 x 3 at 90% then back-off 2 x 3 drop 10% }" },
    { "other lift", "day A { squat 2 x 3 at 70%; squat 2 x 3 at 70% of deadlift; squat 2 x 3 at 70% of bodyweight }" },
    { "other day", "day A { squat 2 x 3 at 80% }; day B { squat 2 x 3 at 80% of day A; squat 2 x 3 at 80% }" },
    { "bodyweight", "day A { pull-up 2 x 3 at 20 kg; pull-up 2 x 3 at bodyweight plus 20 kg; pull-up 2 x 3 at 80% }" },
    { "deload", "deload week 2 { load down 10% }; day A { squat 2 x 3 at 80%; squat 2 x 3 at rpe 8 }" },
    { "adjust", "day A { squat 2 x 3 at 80%; squat 2 x 3 at rpe 8 }; adjust ines in week 3 { load down 10% }; adjust ines in week 4 { cap squat rpe 6 }" },
    { "two ways of one number", "day A { sled 2 x 3 at 70%; sled 2 x 3 at 0.000000007 kg }" },
    { "many amounts", "day A { sled 2 x 3 at 30 kg plus 2.5 kg each week }" },
    { "many efforts", "day A { sled 2 x 3 at rpe 5 plus 0.02 each week }" },
    { "progression", "day A { squat 2 x 3 at 80 kg progression fill; squat 2 x 3 at 80 kg }" },
    { "what is said of work and not of warm-ups", "day A { squat { warm-up 1 x 1 at 110 kg; 1 x 3 at 80 kg }; squat 1 x 1 at 110 kg }" },
    { "what is said", "day A { squat 2 x 3 at 5 kg; squat 1 x 1 at 110%; sled 3 x 3 at 50 kg cap 40 kg }" },
};

static void bare_holds(void **state)
{
    const struct row_bare *row = *state;
    char text[2048];
    snprintf(text, sizeof text, TWO_GYMS LIFTER "progression fill { when made add 2.5 kg }\n"
             "block winter { for ines; starts 2027-01-04; weeks 200; %s }\n", row->block);
    struct told t = told_club(text);
    if (!t.model)
        fail_msg("%s", findings_text(&t));
    struct plan_job job = { .model = t.model, .block = t.model->blocks[0], .athlete = told_athlete(&t, "ines") };
    int before = times_of(&t);
    const struct plan *told = plan_make(t.arena, &job);
    int said = times_of(&t) - before;
    job.bare = true;
    plans_equal(told, plan_make(t.arena, &job), false);
    assert_int_equal(times_of(&t), before + 2 * said);
    job.bare = false, job.for_rules = true;
    plans_equal(told, plan_make(t.arena, &job), true);
    assert_int_equal(times_of(&t), before + 3 * said);
    told_end(&t);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows_bare, bare_holds));
    return tests_run(&tests);
}
