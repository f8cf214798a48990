/* A week's totals over its working sets (language.md 5.10); minutes as in the trade rule `session-minutes`. */
#include "plan/work.h"

enum { SET_SECONDS = 40, WARM_UP_SECONDS = 60, REST_MAIN = 180, REST_OTHER = 90 };

struct adding {
    struct planning *p;
    struct plan_totals *totals;
    struct date start; /* of the week */
    struct numbers lift_numbers, muscle_numbers; /* their places in these */
    VEC(struct lift_total) lifts;
    VEC(struct muscle_total) muscles;
    struct totals_sum sum;
};

static struct lift_total *lift_found(struct adding *a, const struct lift *lift)
{
    int at = numbers_give(&a->lift_numbers, lift, 0);
    struct lift_total total = { .lift = lift, .percent_reps = ratio_int(0) };
    if (at == a->lifts.count)
        vec_add(a->p->arena, &a->lifts, total);
    return &a->lifts.at[at];
}

static void add_muscles(struct adding *a, const char *const *muscles, int count, int half_sets)
{
    for (int i = 0; i < count; i++) {
        int at = numbers_give(&a->muscle_numbers, muscles[i], 0);
        if (at == a->muscles.count) {
            struct muscle_total total = { muscles[i], 0 };
            vec_add(a->p->arena, &a->muscles, total);
        }
        a->muscles.at[at].half_sets += half_sets;
    }
}

/* The middle of a range of reps counts, halves up; seconds and metres are no reps. */
static int reps_of(const struct plan_group *group)
{
    if (group->reps_kind == REPS_SECONDS || group->reps_kind == REPS_METRES)
        return 0;
    if (group->reps_kind == REPS_AMRAP)
        return group->reps_low;
    return (group->reps_low + group->reps_high + 1) / 2;
}

/* Below 5, 5 to below 7, 7 to below 9, 9 and above: of the target's middle, else of the exact expected effort. -1: none. */
static int effort_band(const struct adding *a, const struct plan_entry *entry, const struct plan_group *group, const struct plan_run *run)
{
    static const int edges[] = { 5, 7, 9 };
    int band = 0;
    if (group->reps_kind == REPS_AMRAP)
        return 3;
    if (!run->has_effort && !run->has_expected)
        return -1;
    struct curve curve = history_curve(a->p->model, a->p->block, a->p->athlete, entry->lift);
    struct ratio reps = ratio_div(ratio_int(group->reps_low + group->reps_high), ratio_int(2));
    for (int i = 0; i < 3; i++) {
        int64_t twice = 2 * (int64_t)edges[i] * DEC_ONE;
        bool above = run->has_effort ? run->effort_low.e10 + run->effort_high.e10 >= twice
                                     : run->own_max.num > 0 && curve_compare(&curve, ratio_div(ratio_weight(run->load), run->own_max), reps, dec_int(edges[i])) >= 0;
        band += above;
    }
    return band;
}

struct run_share run_share_of(const struct plan_entry *entry, const struct plan_group *group, const struct plan_run *run)
{
    int reps = group->reps_kind == REPS_TOTAL ? group->reps_low : run->sets * reps_of(group);
    int sides = (entry->lift->loads == LOADS_DUMBBELLS ? 2 : 1) * (group->group->each_side ? 2 : 1);
    struct run_share share = { .sets = run->sets, .reps = reps, .tonnage = ratio_int(0), .has_percent = run->has_percent && reps };
    if (run->has_load && reps)
        share.tonnage = ratio_mul(ratio_weight(run->load), ratio_int((int64_t)reps * sides));
    if (share.has_percent)
        share.percent = ratio_div(ratio_mul(ratio_weight(run->load), ratio_int((int64_t)100 * reps)), run->max);
    return share;
}

void totals_sum_add(struct totals_sum *sum, const struct run_share *share)
{
    sum->sets += share->sets;
    sum->reps += share->reps;
    sum->tonnage = ratio_add(sum->tonnage, share->tonnage);
    if (!share->has_percent)
        return;
    sum->percent = ratio_add(sum->percent, share->percent);
    sum->reps_with_percent += share->reps;
}

void totals_from_sum(struct plan_totals *totals, const struct totals_sum *sum)
{
    totals->sets = sum->sets, totals->reps = sum->reps;
    totals->tonnage = ratio_to_weight(sum->tonnage);
    totals->has_percent = sum->reps_with_percent > 0;
    if (totals->has_percent)
        totals->mean_percent = ratio_nearest(ratio_div(sum->percent, ratio_int(sum->reps_with_percent)), (struct dec){ DEC_ONE / 10 });
}

static void add_run(struct adding *a, const struct plan_entry *entry, const struct plan_group *group, const struct plan_run *run)
{
    struct run_share share = run_share_of(entry, group, run);
    const struct lift *lift = entry->lift;
    totals_sum_add(&a->sum, &share);
    struct lift_total *total = lift_found(a, lift);
    total->sets += share.sets;
    total->reps += share.reps;
    add_muscles(a, lift->works, lift->works_count, 2 * share.sets);
    add_muscles(a, lift->helps, lift->helps_count, share.sets);
    if (share.has_percent) {
        total->percent_reps = ratio_add(total->percent_reps, share.percent);
        total->reps_with_percent += share.reps;
    }
    int band = effort_band(a, entry, group, run);
    if (band >= 0)
        a->totals->by_effort[band] += share.sets;
}

static int rest_of(const struct plan_entry *entry, const struct plan_group *group)
{
    if (group_more(group->group)->every_s)
        return group_more(group->group)->every_s - SET_SECONDS;
    if (group->group->rest.high)
        return (group->group->rest.low + group->group->rest.high) / 2;
    return lift_is_main(entry->lift) ? REST_MAIN : REST_OTHER;
}

/* A superset rests once a round: only its last entry's rest counts. */
int64_t plan_entry_seconds(const struct plan_day *day, int index)
{
    const struct plan_entry *entry = &day->entries[index];
    bool within = entry->superset && index + 1 < day->entry_count && day->entries[index + 1].superset == entry->superset;
    int64_t seconds = 0;
    if (entry->superset && entry->superset_minutes)
        return within ? 0 : 60 * entry->superset_minutes;
    for (int i = 0; i < entry->group_count; i++) {
        const struct plan_group *group = &entry->groups[i];
        int each = group->role == ROLE_WARM_UP ? WARM_UP_SECONDS : SET_SECONDS + (within ? 0 : rest_of(entry, group));
        for (int j = 0; j < group->run_count; j++)
            seconds += (int64_t)each * group->runs[j].sets;
    }
    return seconds;
}

int64_t plan_day_seconds(const struct plan_day *day)
{
    int64_t seconds = 0;
    for (int i = 0; i < day->entry_count; i++)
        seconds += plan_entry_seconds(day, i);
    return seconds;
}

int plan_minutes(int64_t seconds)
{
    return (int)((seconds + 59) / 60);
}

void totals_week(struct planning *p, struct plan_week *week)
{
    struct adding a = { .p = p, .totals = &week->totals, .start = week->start, .lift_numbers.arena = p->arena, .muscle_numbers.arena = p->arena,
                        .sum = { .tonnage = ratio_int(0), .percent = ratio_int(0) } };
    int64_t seconds = 0;
    for (int i = 0; i < week->day_count; i++) {
        seconds += plan_day_seconds(&week->days[i]);
        for (int j = 0; j < week->days[i].entry_count; j++) {
            const struct plan_entry *entry = &week->days[i].entries[j];
            for (int k = 0; k < entry->group_count; k++)
                for (int r = 0; r < entry->groups[k].run_count && entry->groups[k].role != ROLE_WARM_UP; r++)
                    add_run(&a, entry, &entry->groups[k], &entry->groups[k].runs[r]);
        }
    }
    week->totals.lifts = a.lifts.at, week->totals.lift_count = a.lifts.count;
    week->totals.muscles = a.muscles.at, week->totals.muscle_count = a.muscles.count;
    totals_from_sum(&week->totals, &a.sum);
    week->totals.minutes = plan_minutes(seconds);
}
