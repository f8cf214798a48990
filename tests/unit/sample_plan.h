/* A plan put together by hand for the tests of what comes out: every shape of set, load and note once or more. Facts
 * that are worked out, with what they were checked against:
 *   discs     20 + 2 x (25+15+2.5+1.25) = 107.5; 20 + 2 x (25+10+1.25) = 92.5; 20 + 2 x 20 = 60 (bc)
 *   per cent  107.5/120 = 89.58, 92.5/120 = 77.08 (bc); expected efforts are made up */
#ifndef SAMPLE_PLAN_H
#define SAMPLE_PLAN_H

#include "emit/format.h"

#include <string.h>

#define KG(x) { (int64_t)((x) * 100) * (DEC_ONE / 100) }
#define DEC(x) { (int64_t)((x) * 10) * (DEC_ONE / 10) }
#define LB(x) { (int64_t)(x) * LB_IN_E10 }

#define TEXTS(name, ...) static const char *const name[] = { __VA_ARGS__ }

static const struct lift squat = { .name = "squat", .title = "Back squat", .kind = LIFT_COMPETITION, .loads = LOADS_BAR,
                                   .cue = "Drive every rep up as fast as you can" };
static const struct lift bench = { .name = "bench", .title = "no", .kind = LIFT_COMPETITION, .loads = LOADS_BAR };
static const struct lift press = { .name = "overhead-press", .title = "Overhead press", .loads = LOADS_BAR };
static const struct lift row_lift = { .name = "row", .title = "Dumbbell row", .loads = LOADS_DUMBBELLS };
static const struct lift pulldown = { .name = "pulldown", .loads = LOADS_STACK, .equipment = "pulldown" };
static const struct lift curl = { .name = "curl" };
static const struct lift pull_up = { .name = "pull-up", .title = "Pull-up", .loads = LOADS_BODYWEIGHT };
static const struct lift plank = { .name = "plank", .title = "Plank", .loads = LOADS_BODYWEIGHT };
static const struct lift carry = { .name = "carry", .title = "Suitcase carry", .loads = LOADS_DUMBBELLS };
static const struct lift deadlift = { .name = "deadlift", .loads = LOADS_BAR, .equipment = "trap" };

static const int all_weeks[] = { 1, 2, 3, 4 };
static const struct frame four_weeks = { all_weeks, 4 };
static const struct band fifteen = { DEC(15), DEC(15) };
static const struct series_week fifteen_week = { &fifteen, 1 };
static const struct series fifteen_series = { .kind = SERIES_LIST, .weeks = &fifteen_week, .count = 1 };
static const struct band eight = { DEC(8), DEC(8) };
static const struct series_week eight_week = { &eight, 1 };
static const struct series eight_series = { .kind = SERIES_LIST, .weeks = &eight_week, .count = 1 };

/* Day A: squat */
static const struct weight discs_60[] = { KG(20) };
static const struct weight discs_107[] = { KG(25), KG(15), KG(2.5), KG(1.25) };
static const struct weight discs_92[] = { KG(25), KG(10), KG(1.25) };
static const struct group ramp_group = { .role = ROLE_WARM_UP, .load_kind = LOAD_PERCENT };
static const struct group top_group = { .role = ROLE_TOP, .load_kind = LOAD_EFFORT, .rest = { 240, 240 } };
TEXTS(back_off_notes, "Same bar path as on the top set, \"every\" rep");
static const struct group back_off_group = { .role = ROLE_BACK_OFF, .load_kind = LOAD_DROP, .rest = { 180, 180 },
                                             .load = { .series = &fifteen_series, .frame = &four_weeks, .unit = UNIT_PERCENT },
                                             .tempo = "31X0", .notes = back_off_notes, .note_count = 1 };
static const struct plan_run ramp_20 = { .sets = 1, .has_load = true, .load = KG(20), .shown = KG(20) };
static const struct plan_run ramp_60 = { .sets = 1, .has_load = true, .load = KG(60), .shown = KG(60),
                                         .disc_count = 1, .discs = discs_60 };
static const struct plan_run top_run = { .sets = 1, .has_effort = true, .effort_low = DEC(8), .effort_high = DEC(8),
                                         .has_load = true, .load = KG(107.5), .shown = KG(107.5), .has_percent = true,
                                         .percent = DEC(89.6), .disc_count = 4, .discs = discs_107 };
static const struct plan_run back_off_run = { .sets = 4, .has_load = true, .load = KG(92.5), .shown = KG(92.5),
                                              .has_percent = true, .percent = DEC(77.1), .has_expected = true,
                                              .expected = DEC(6.5), .disc_count = 3, .discs = discs_92 };
static const struct plan_group squat_groups[] = {
    { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 5, 5, &ramp_20, 1 },
    { &ramp_group, ROLE_WARM_UP, 1, 1, REPS_COUNT, 3, 3, &ramp_60, 1 },
    { &top_group, ROLE_TOP, 1, 1, REPS_COUNT, 1, 1, &top_run, 1 },
    { &back_off_group, ROLE_BACK_OFF, 4, 4, REPS_COUNT, 5, 5, &back_off_run, 1 },
};

/* Day A: bench, each set its own load, the last held down by a cap */
static const struct group bench_group = { .load_kind = LOAD_PERCENT };
static const struct plan_run bench_runs[] = {
    { .sets = 1, .has_load = true, .load = KG(40), .shown = KG(40), .disc_count = -1, .has_expected = true,
      .expected_under_one = true },
    { .sets = 1, .has_load = true, .load = KG(50), .shown = KG(50), .disc_count = -1, .has_effort = true,
      .effort_low = DEC(9), .effort_high = DEC(9), .has_expected = true, .expected = DEC(7.5), .capped = true },
};
static const struct plan_group bench_groups[] = { { &bench_group, ROLE_WORK, 2, 2, REPS_COUNT, 5, 5, bench_runs, 2 } };

/* Day A: rows, a band of repetitions and of efforts, another lift to choose */
static const struct group row_group = { .load_kind = LOAD_EFFORT, .rest = { 120, 180 }, .each_side = true };
static const struct plan_run row_run = { .sets = 3, .has_load = true, .load = KG(22.5), .shown = KG(22.5),
                                         .has_effort = true, .effort_low = DEC(6), .effort_high = DEC(7),
                                         .disc_count = -1 };
static const struct plan_group row_groups[] = { { &row_group, ROLE_WORK, 3, 3, REPS_COUNT, 8, 12, &row_run, 1 } };
static const struct lift *const row_choices[] = { &pulldown };

/* Day A: a superset with open loads */
static const struct group open_group = { .load_kind = LOAD_EFFORT, .optional = true };
static const struct plan_run open_run = { .sets = 2, .has_effort = true, .effort_low = DEC(8), .effort_high = DEC(8),
                                          .disc_count = -1 };
static const struct plan_group open_groups[] = { { &open_group, ROLE_WORK, 1, 1, REPS_COUNT, 10, 15, &open_run, 1 } };

TEXTS(row_notes, "=1+1", "elbow\nin");
TEXTS(change_notes, "lighter\x1b[31m than last week");
static const struct entry squat_entry = { .lift_count = 1 };
static const struct entry_more row_more = { .notes = row_notes, .note_count = 2 };
static const struct entry row_entry = { .lift_count = 2, .more = &row_more };
static const struct plan_entry day_a_entries[] = {
    { .entry = &squat_entry, .lift = &squat, .groups = squat_groups, .group_count = 4 },
    { .entry = &squat_entry, .lift = &bench, .instead_of = &press, .because = "left shoulder", .groups = bench_groups,
      .group_count = 1 },
    { .entry = &row_entry, .lift = &row_lift, .choices = row_choices, .choice_count = 1, .groups = row_groups,
      .group_count = 1, .notes = change_notes, .note_count = 1 },
    { .entry = &squat_entry, .lift = &curl, .superset = 1, .rounds = 2, .groups = open_groups, .group_count = 1 },
    { .entry = &squat_entry, .lift = &pulldown, .superset = 1, .rounds = 2, .groups = open_groups, .group_count = 1 },
};

/* Day B: in another gym, in pounds; every other kind of repetitions */
static const struct group amrap_group = { .load_kind = LOAD_BODYWEIGHT };
#define MORE(...) .more = &(const struct group_more){ __VA_ARGS__ }
static const struct group hold_group = { .load_kind = LOAD_EFFORT, MORE(.every_s = 90) };
static const struct group carry_group = { .load_kind = LOAD_WEIGHT };
static const int two_two_two[] = { 2, 2, 2 };
static const struct group cluster_group = { .load_kind = LOAD_NONE, .pause = { 20, 20 },
                                            MORE(.cluster = two_two_two, .cluster_count = 3) };
static const struct group total_group = { .load_kind = LOAD_WEIGHT };
static const struct group band_group = { .load_kind = LOAD_WEIGHT,
                                         MORE(.until_effort = { .series = &eight_series, .frame = &four_weeks }) };
static const struct plan_run amrap_run = { .sets = 1, .has_load = true, .load = LB(100), .shown = LB(-30),
                                           .disc_count = -1 };
static const struct plan_run body_run = { .sets = 2, .has_load = true, .load = LB(130), .disc_count = -1 };
static const struct plan_run hold_run = { .sets = 2, .has_effort = true, .effort_low = DEC(7), .effort_high = DEC(7),
                                          .disc_count = -1 };
static const struct plan_run carry_run = { .sets = 2, .has_load = true, .load = LB(50), .shown = LB(50),
                                           .disc_count = -1 };
static const struct plan_run cluster_run = { .sets = 2, .disc_count = -1 };
static const struct plan_run total_run = { .has_load = true, .load = LB(95), .shown = LB(95), .disc_count = -1 };
static const struct plan_run below_run = { .sets = 2, .open = "15 % below the top set", .disc_count = -1 };
static const struct plan_run band_run = { .sets = 4, .has_load = true, .load = LB(135), .shown = LB(135),
                                          .disc_count = -1 };
static const struct plan_group pull_up_groups[] = {
    { &amrap_group, ROLE_TOP, 1, 1, REPS_AMRAP, 5, 0, &amrap_run, 1 },
    { &amrap_group, ROLE_WORK, 2, 2, REPS_AMRAP, 0, 0, &body_run, 1 },
    { &back_off_group, ROLE_BACK_OFF, 2, 2, REPS_COUNT, 5, 5, &below_run, 1 },
};
static const struct plan_group plank_groups[] = {
    { &hold_group, ROLE_WORK, 2, 2, REPS_SECONDS, 30, 30, &hold_run, 1 },
};
static const struct plan_group carry_groups[] = {
    { &carry_group, ROLE_WORK, 2, 2, REPS_METRES, 20, 20, &carry_run, 1 },
};
static const struct plan_group deadlift_groups[] = {
    { &cluster_group, ROLE_WORK, 2, 2, REPS_CLUSTER, 6, 6, &cluster_run, 1 },
    { &total_group, ROLE_WORK, 1, 1, REPS_TOTAL, 30, 30, &total_run, 1 },
    { &band_group, ROLE_WORK, 2, 5, REPS_COUNT, 3, 3, &band_run, 1 },
};
static const struct plan_entry day_b_entries[] = {
    { .entry = &squat_entry, .lift = &pull_up, .groups = pull_up_groups, .group_count = 3 },
    { .entry = &squat_entry, .lift = &plank, .superset = 1, .superset_minutes = 12, .groups = plank_groups,
      .group_count = 1 },
    { .entry = &squat_entry, .lift = &carry, .superset = 1, .superset_minutes = 12, .groups = carry_groups,
      .group_count = 1 },
    { .entry = &squat_entry, .lift = &deadlift, .groups = deadlift_groups, .group_count = 3 },
};

TEXTS(day_notes, "Bring the short belt");
static const struct day day_a = { .label = "A", .title = "Squat first", .notes = day_notes, .note_count = 1 };
static const struct day day_b = { .label = "2", .title = "1e3", .optional = true };

static const struct lift_total lift_totals[] = { { .lift = &squat, .sets = 5, .reps = 21 }, { .lift = &bench, .sets = 2, .reps = 10 } };
static const struct muscle_total muscle_totals[] = { { "quads", 10 }, { "trunk", 5 } };

struct sample {
    struct gym boathouse, annex;
    struct athlete ines;
    struct block block;
    struct plan_day days[2];
    struct plan_week weeks[2];
    struct plan plan;
};

static inline struct gym *sample_gym(struct arena *arena, struct gym *gym)
{
    static const struct disc discs[] = { { KG(25), 4 }, { KG(20), 4 }, { KG(15), 2 },  { KG(10), 4 },
                                         { KG(5), 4 },  { KG(2.5), 4 }, { KG(1.25), 2 } };
    struct weight bar = KG(20), none = { 0 }, step = KG(2.5), hand = KG(2.5);
    struct named_ladder *main_bar = NEW(arena, struct named_ladder);
    ladder_bar(arena, bar, none, discs, 7, &main_bar->ladder);
    *gym = (struct gym){ .name = "boathouse", .title = "The boathouse", .unit = UNIT_KG, .bars = main_bar,
                         .bar_count = 1, .dumbbells = ladder_steps(hand, step), .free = ladder_steps(none, step) };
    return gym;
}

/* Two weeks of winter-base for Ines: one of training, and a deload without a day. 2027-01-11 is a Monday (`date`). */
static inline struct sample *sample_plan(struct arena *arena)
{
    struct sample *sample = NEW(arena, struct sample);
    struct date monday = { 0 };
    date_make(2027, 1, 11, &monday);
    sample_gym(arena, &sample->boathouse);
    sample->annex = (struct gym){ .name = "annex", .unit = UNIT_LB };
    sample->ines = (struct athlete){ .name = "ines", .title = "\xC3\x9Cnsal \"\xC3\x9C\", Jr",
                                     .gym = &sample->boathouse };
    sample->block = (struct block){ .name = "winter-base", .title = "Winter base", .goal = GOAL_STRENGTH };
    sample->days[0] = (struct plan_day){ .day = &day_a, .date = monday, .gym = &sample->boathouse,
                                         .entries = day_a_entries, .entry_count = 5 };
    sample->days[1] = (struct plan_day){ .day = &day_b, .gym = &sample->annex, .entries = day_b_entries,
                                         .entry_count = 4 };
    sample->weeks[0] = (struct plan_week){
        .number = 1, .block_week = 1, .start = monday, .days = sample->days, .day_count = 2,
        .totals = { .sets = 7, .reps = 31, .lifts = lift_totals, .lift_count = 2, .muscles = muscle_totals,
                    .muscle_count = 2, .tonnage = KG(2407.5), .has_percent = true, .mean_percent = DEC(77.7),
                    .by_effort = { 1, 4, 2, 0 }, .minutes = 95 },
    };
    sample->weeks[1] = (struct plan_week){ .number = 2, .block_week = 2, .kind = WEEK_DELOAD,
                                           .start = date_plus(monday, 7) };
    sample->plan = (struct plan){ .athlete = &sample->ines, .block = &sample->block, .unit = UNIT_KG,
                                  .weeks = sample->weeks, .week_count = 2 };
    return sample;
}

/* What a writer has written, as one text; `most` bytes are taken, then writing fails. */
struct caught {
    char *text;
    size_t length, most;
    int writes;
};

static inline bool catch_bytes(void *context, const char *bytes, size_t length)
{
    struct caught *caught = context;
    if (caught->length + length > caught->most)
        return false;
    memcpy(caught->text + caught->length, bytes, length);
    caught->length += length;
    caught->text[caught->length] = '\0';
    caught->writes++;
    return true;
}

/* Writes the plan `times` times over, as so many blocks of one athlete. */
static inline bool write_plan(const char *format_name, struct arena *arena, const struct plan *plan,
                              const struct format_options *options, struct caught *caught, int times)
{
    const struct format *format = format_find(format_name);
    struct sink sink = { .write = catch_bytes, .context = caught };
    struct writer *writer = format->begin(arena, sink, options);
    bool fine = format->athlete(writer, plan->athlete);
    for (int i = 0; i < times; i++)
        fine = format->plan(writer, plan) && fine;
    return format->end(writer) && fine;
}

static inline struct caught caught_new(struct arena *arena, size_t most)
{
    return (struct caught){ .text = arena_alloc(arena, most + 1), .most = most };
}

#endif
