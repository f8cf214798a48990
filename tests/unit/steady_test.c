/* src/plan/steady.c: an entry that is known comes to what it would have come to. Each row has entries that differ in one of the things
 * that sets and loads hang on; all blocks are planned by the book, and with what earlier weeks and blocks came to. */
#include "same_plan.h"

struct row_steady {
    const char *says;
    int known; /* entries of all blocks that were not worked out */
    const char *blocks;
};

#define LIFTERS                                                                                                        \
    "gym shed { bar 15 kg; plates 25 x 16, 10 x 4 kg }\n"                                                              \
    "scheme ramp { 1 x 5 at 50 kg }\n"                                                                                 \
    "progression fill { when made add 2.5 kg }\n"                                                                      \
    "athlete ines { gym hall; bodyweight 60 kg; bodyweight 65 kg on 2027-01-12; max squat 100 kg on 2026-12-01; max "  \
    "bench 60 kg; max sled 1000 kg; max pull-up 80 kg\n"                                                               \
    "max deadlift 140 kg on 2026-12-01; max deadlift 150 kg on 2027-01-09\n"                                           \
    "max press 20 kg on 2026-12-01; max press 20 kg on 2027-01-09; max pulldown from 45 kg x 5 rpe 8 on 2026-12-01; "  \
    "max pulldown from 45 kg x 5 rpe 8 on 2027-01-09 }\n"
#define WINTER "block winter { for ines; starts 2027-01-04; weeks 3; "
#define SPRING "\nblock spring { for ines; starts 2027-02-01; weeks 2; "

static const struct row_steady rows_steady[] = {
    { "the same week after week", 2, WINTER "day A { squat 3 x 5 at 80% } }" },
    { "and block after block", 4, WINTER "day A { squat 3 x 5 at 80% } }" SPRING "day B { squat 3 x 5 at 80% } }" },
    { "written out", 5,
      WINTER "week 1 { day A { squat 3 x 5 at 80%\npress 3 x 8 at rpe 7 } }\nweek 2 { day A { squat 3 x 5 at "
             "80%\npress 3 x 8 at rpe 7 } }\n"
             "week 3 { day A { squat 3 x 5 at 80%\npress 3 x 8 at rpe 7\nsquat 3 x 5 at 80% } } }" },
    { "top set and back-offs", 2,
      WINTER "day A { squat top 1 x 3 at 80% then back-off 3 x 5 drop 10% then 1 x 5 at same } }" },
    { "back-offs from another top set", 4,
      WINTER "day A { squat top 1 x 3 at 80% then back-off 3 x 5 drop 10%; squat top 1 x 3 at 85% then back-off 3 x 5 "
             "drop 10% } }" },
    { "warm-ups of its own", 2, WINTER "day A { squat { warm-up 1 x 5 at 50%; 3 x 5 at 80% } } }" },
    { "discs and open loads", 6,
      WINTER "day A { bench 3 x 5 at 80%; curl 3 x 8 at rpe 7; curl 3 x 8 at rpe 7 then 1 x 8 drop 10% } }" },
    { "rests and notes", 2, WINTER "day A { squat 3 x 5 at 80% rest 3 min note \"Brace\" } }" },
    { "kinds of reps", 6, WINTER "day A { squat 2 x 5 at 70 kg; squat 2 x 5 s at 70 kg; squat 2 x 5 m at 70 kg } }" },
    { "per cents, weights and efforts of one number", 6,
      WINTER "day A { squat 3 x 5 at 70%; squat 3 x 5 at 70 kg; squat 3 x 5 at 70 lb } }" },
    { "efforts and what they leave", 4, WINTER "day A { squat 3 x 5 at rpe 6; squat 3 x 5 at rir 6 } }" },
    { "lift", 4, WINTER "day A { squat 3 x 5 at 80%; front-squat 3 x 5 at 80% } }" },
    { "gym", 4, WINTER "day A { squat 3 x 5 at 71% }; day B { gym shed; squat 3 x 5 at 71% } }" },
    { "a heavier max", 1, WINTER "day A { deadlift 3 x 5 at 80% } }" },
    { "the same max again", 2, WINTER "day A { press 3 x 8 at 70% } }" },
    { "the same max again, for nothing", 2, WINTER "day A { press 3 x 8 at 12.5 kg } }" },
    { "the same set as a max again", 1, WINTER "day A { pulldown 3 x 8 at 70% } }" },
    { "no max", 2, WINTER "day A { curl 3 x 8 at 10 kg } }" },
    { "max to", 3, WINTER "day A { squat 3 x 5 at 80% } }" SPRING "max to 90%; day B { squat 3 x 5 at 80% } }" },
    { "curve", 3, WINTER "day A { squat 3 x 5 at rpe 7 } }" SPRING "model brzycki; day B { squat 3 x 5 at rpe 7 } }" },
    { "series from week to week", 0,
      WINTER "day A { squat 3 x 5 at 70 | 75 | 80%; squat 3 x (5 | 4 | 3) at 70%; squat (3 | 4 | 5) x 5 at 70% } }" },
    { "rising", 0, WINTER "day A { squat 3 x 5 at 70% plus 2.5% each week; squat 3 x 5 at rpe from 6 to 8 } }" },
    { "set by set", 0, WINTER "day A { squat 3 x (5, 4, 3) at 70%; squat 3 x 5 at 70%, 75%, 80% } }" },
    { "weeks of their own", 0, WINTER "day A { squat { 3 x 5 at 70% in weeks 1-2; 3 x 5 at 80% in week 3 } } }" },
    { "cap", 0, WINTER "day A { squat 3 x 5 at 85% cap rpe 6 } }" },
    { "progression", 0, WINTER "day A { squat 3 x 5 at 80 kg progression fill } }" },
    { "bodyweight", 0, WINTER "day A { pull-up 3 x 5 at 20 kg; pull-up 3 x 5 at bodyweight } }" },
    { "of another lift, of bodyweight", 0,
      WINTER "day A { squat 3 x 5 at 50% of deadlift; squat 3 x 5 at 50% of bodyweight } }" },
    { "of a day that is known", 2, WINTER "day A { squat 3 x 5 at 80% }; day B { squat 3 x 5 at 90% of day A } }" },
    { "of a day with warm-ups", 2,
      WINTER "day A { squat { warm-up 1 x 5 at 95 kg; 3 x 5 at 80% } }; day B { squat 3 x 5 at 90% of day A } }" },
    { "rounds", 0, WINTER "day A { superset 3 rounds { squat 1 x 5 at 80%; bench 1 x 5 at 80% } } }" },
    { "superset", 4, WINTER "day A { superset { squat 3 x 5 at 80%; bench 3 x 5 at 80% } } }" },
    { "a choice of lifts", 2, WINTER "day A { squat or front-squat 3 x 5 at 80% } }" },
    { "a deload that changes", 1, WINTER "deload week 2 { load down 10% }; day A { squat 3 x 5 at 80% } }" },
    { "a deload that says", 2, WINTER "deload week 2 { note \"Sleep\" }; day A { squat 3 x 5 at 80% } }" },
    { "a taper that changes", 1, WINTER "taper week 3 { sets to 50% }; day A { squat 3 x 5 at 80% } }" },
    { "an adjust that changes", 0, WINTER "adjust ines in week 2 { cap squat rpe 6 }; day A { squat 3 x 5 at 80% } }" },
    { "an adjust that says", 2, WINTER "adjust ines in week 2 { note \"Slowly\" }; day A { squat 3 x 5 at 80% } }" },
    { "warm-ups of the block", 0, WINTER "warm-up ramp; day A { squat 3 x 5 at 80% } }" },
    { "a lift avoided", 0,
      "athlete nora { avoid squat use bench because \"a knee\"; max bench 50 kg }\n"
      "block winter { for nora; starts 2027-01-04; weeks 3; day A { squat 3 x 5 at 80% } }" },
    { "results", 0,
      "diary ines { 2027-01-04 A { squat 90 kg x 5, 5, 5 rpe 6 } }\n" WINTER
      "day A on mon { squat 3 x 5 at rpe 8 } }" },
    { "what is said of it", 0, WINTER "day A { squat 3 x 5 at 5 kg; squat 5 x 5 at 100%; squat 1 x 1 at 110% } }" },
};

/* A plan with what came before; then its memory is cleared, and whose sets are still there was known. */
static int known_in(struct told *t, struct plan_job job, const struct plan *told)
{
    enum { KNOWN_MOST = 64, PIECE = 64 };
    struct arena *scratch = arena_within(t->arena);
    const struct plan *plan = plan_make(scratch, &job);
    const struct plan_run *runs[KNOWN_MOST];
    int count = 0, known = 0;
    plans_equal(told, plan, job.for_rules);
    for (int w = 0; w < plan->week_count; w++)
        for (int d = 0; d < plan->weeks[w].day_count; d++)
            for (int e = 0; e < plan->weeks[w].days[d].entry_count; e++) {
                assert_true(count < KNOWN_MOST);
                runs[count++] = plan->weeks[w].days[d].entries[e].groups[0].runs;
            }
    size_t size = 2 * arena_size(scratch);
    arena_reset(scratch);
    while (arena_size(scratch) < size)
        memset(arena_alloc(scratch, PIECE), 0, PIECE);
    for (int i = 0; i < count; i++)
        known += runs[i]->sets != 0;
    return known;
}

static void steady_holds(void **state)
{
    const struct row_steady *row = *state;
    struct told papers = told_begin(), t = told_club(arena_format(papers.arena, LIFTERS "%s", row->blocks));
    if (!t.model)
        fail_msg("%s", findings_text(&t));
    for (int bare = 0; bare < 2; bare++) {
        struct steadies *steadies = steadies_new(t.arena);
        int known = 0;
        for (int i = 0; i < t.model->block_count; i++) {
            struct plan_job job = { .model = t.model,
                                    .block = t.model->blocks[i],
                                    .athlete = t.model->blocks[i]->people->at[0],
                                    .bare = bare,
                                    .for_rules = !bare };
            job.record = record_new(t.arena, t.model, job.athlete, &job.block, 1);
            int before = times_of(&t);
            const struct plan *told = plan_make(t.arena, &job);
            int said = times_of(&t) - before;
            job.steadies = steadies;
            job.record = record_new(t.arena, t.model, job.athlete, &job.block, 1);
            known += known_in(&t, job, told);
            assert_int_equal(times_of(&t), before + 2 * said);
        }
        assert_int_equal(known, row->known);
    }
    told_end(&t);
    told_end(&papers);
}

/* Nothing is known of another athlete, nor once all was forgotten. */
static void forgets(void **state)
{
    (void)state;
    struct told t = told_club(LIFTERS WINTER "day A { squat 3 x 5 at 80% } }");
    struct plan_job job = {
        .model = t.model, .block = t.model->blocks[0], .athlete = told_athlete(&t, "ines"), .for_rules = true
    };
    const struct plan *told = plan_make(t.arena, &job);
    job.steadies = steadies_new(t.arena);
    assert_int_equal(known_in(&t, job, told), 2);
    assert_int_equal(known_in(&t, job, told), 3);
    steadies_forget(job.steadies);
    assert_int_equal(known_in(&t, job, told), 2);
    told_end(&t);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows_steady, steady_holds));
    const struct CMUnitTest more[] = { cmocka_unit_test(forgets) };
    tests_add(&tests, more, 1);
    return tests_run(&tests);
}
