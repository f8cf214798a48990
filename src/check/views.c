#include "check/views.h"

#include "base/vec.h"
#include "check/ask.h"
#include "plan/season.h"

#include <stdlib.h>

struct viewing {
    struct arena *arena;
    const struct plan *plan;
    VEC(struct set_view) sets;
    struct numbers lift_loads;             /* a lift with a load and reps */
    VEC(const struct set_view *) expected; /* the latest with these whose effort is by the curve */
    VEC(const struct lift *) lifts;
    struct numbers lift_numbers;
    VEC(const struct lift_week *) lift_weeks; /* by a lift's place its first, */
    VEC(struct lift_week *) latest;           /* and its latest so far */
    VEC(struct day_view) days;
    VEC(struct week_view) weeks;
};

static bool reps_are_counted(const struct plan_group *group)
{
    return group->reps_kind == REPS_COUNT || group->reps_kind == REPS_CLUSTER;
}

static void set_reps(struct set_view *view)
{
    const struct plan_group *group = view->group;
    view->counted = reps_are_counted(group);
    view->amrap = group->reps_kind == REPS_AMRAP;
    if (view->amrap) {
        view->reps_halves = 2 * group->reps_low;
        view->reps_high = group->reps_low;
    } else if (view->counted || group->reps_kind == REPS_TOTAL) {
        view->reps_halves = group->reps_low + group->reps_high;
        view->reps_high = group->reps_high;
    }
}

static void effort_set(struct viewing *v, struct set_view *view, struct ratio effort)
{
    view->has_effort = true;
    view->effort = ratio_down(effort, (struct dec){ 1 });
    if (effort.den > DEC_ONE || DEC_ONE % (int64_t)effort.den) {
        struct ratio *exact = NEW(v->arena, struct ratio);
        *exact = effort;
        view->effort_exact = exact;
    }
}

/* By 10 less the repetitions that the rounded load leaves, against the lift's own full max. */
static void effort_by_curve(struct viewing *v, struct set_view *view)
{
    const struct plan_run *run = view->run;
    struct curve curve = history_curve(v->plan->model, v->plan->block, v->plan->athlete, view->lift);
    if (run->own_max.num == 0)
        return;
    struct ratio n = curve_reps(&curve, ratio_div(ratio_weight(run->load), run->own_max));
    struct ratio effort = ratio_sub(ratio_add(ratio_int(10), ratio_halves(view->reps_halves)), n);
    /* Beyond what can be done `impossible-set` speaks alone; a single above the max is all she has. */
    if (ratio_cmp(effort, ratio_int(10)) <= 0 || view->reps_high == 1)
        effort_set(v, view, effort);
}

static bool is_like(const struct set_view *set, const struct set_view *other)
{
    return set->run->load.e10 == other->run->load.e10 && set->reps_halves == other->reps_halves &&
           set->reps_high == other->reps_high && ratio_cmp(set->run->own_max, other->run->own_max) == 0;
}

/* Most weeks have sets of the weeks before again: the latest of this lift at this load for these reps is mostly of the same max. */
static void effort_expected(struct viewing *v, struct set_view *view)
{
    uint64_t load_and_reps = (uint64_t)view->run->load.e10 ^ (uint64_t)view->reps_halves << 48;
    int at = numbers_give(&v->lift_loads, view->lift, load_and_reps);
    if (at == v->expected.count)
        vec_add(v->arena, &v->expected, NULL);
    const struct set_view *like = v->expected.at[at];
    if (like && is_like(like, view))
        view->has_effort = like->has_effort, view->effort = like->effort, view->effort_exact = like->effort_exact;
    else
        effort_by_curve(v, view);
    v->expected.at[at] = view;
}

static void set_effort(struct viewing *v, struct set_view *view)
{
    const struct plan_run *run = view->run;
    if (view->amrap)
        effort_set(v, view, ratio_int(10));
    else if (run->has_effort && run->effort_low.e10 == run->effort_high.e10)
        view->has_effort = true, view->effort = run->effort_low;
    else if (run->has_effort)
        effort_set(v, view, ratio_make((wide)run->effort_low.e10 + run->effort_high.e10, (wide)2 * DEC_ONE));
    else if (run->has_expected)
        effort_expected(v, view);
}

static int lift_number(struct viewing *v, const struct lift *lift)
{
    int at = numbers_give(&v->lift_numbers, lift, 0);
    if (at == v->lifts.count) {
        vec_add(v->arena, &v->lifts, lift);
        vec_add(v->arena, &v->lift_weeks, NULL);
        vec_add(v->arena, &v->latest, NULL);
    }
    return at;
}

/* Of the week at hand. */
static struct lift_week *lift_week(struct viewing *v, int lift_at)
{
    struct lift_week *latest = v->latest.at[lift_at];
    if (latest && latest->week == v->weeks.count)
        return latest;
    struct lift_week *week = NEW(v->arena, struct lift_week);
    *week = (struct lift_week){ .week = v->weeks.count, .earlier = latest };
    *(latest ? &latest->later : &v->lift_weeks.at[lift_at]) = week;
    return v->latest.at[lift_at] = week;
}

static void lift_week_add(struct lift_week *week, const struct set_view *set)
{
    week->rotates |= set->day->day->rotates;
    week->done += set->sets;
    if (!set->sets)
        week->totals++;
    else if (!set->has_effort)
        week->open += set->sets;
    else if (at_effort(set, HARD_EFFORT))
        week->hard += set->sets;
}

/* The working sets of an entry's groups: in place, since there are many. */
static void view_entry(struct viewing *v, const struct day_view *day, const struct plan_entry *entry)
{
    int lift_at = -1;
    for (int g = 0; g < entry->group_count; g++) {
        const struct plan_group *group = &entry->groups[g];
        for (int r = 0; r < group->run_count && group->role != ROLE_WARM_UP; r++) {
            struct set_view *view = &v->sets.at[v->sets.count++];
            lift_at = lift_at < 0 ? lift_number(v, entry->lift) : lift_at;
            view->week = day->week, view->day = day->day, view->entry = entry, view->group = group,
            view->run = &group->runs[r];
            view->lift = entry->lift, view->lift_at = lift_at, view->main = lift_is_main(entry->lift);
            view->sets = group->runs[r].sets, view->date = day->date;
            set_reps(view);
            set_effort(v, view);
            if (day->week->kind == WEEK_TRAINING)
                lift_week_add(lift_week(v, lift_at), view);
        }
    }
}

static void view_day(struct viewing *v, const struct plan_week *week, const struct plan_day *day)
{
    struct day_view days = { .week = week, .day = day, .first = v->sets.count, .dated = date_is_set(day->date),
                             .date = date_is_set(day->date) ? day->date : week->start };
    for (int e = 0; e < day->entry_count; e++)
        view_entry(v, &days, &day->entries[e]);
    days.past = v->sets.count;
    vec_add(v->arena, &v->days, days);
}

static const struct attempt_view *view_attempts(struct arena *scratch, const struct plan *plan, int *count)
{
    const struct season *season = plan->block->season;
    const struct meet *meet = season_last_meet(season);
    if (!meet || !plan->block->last_of_season)
        return NULL;
    const struct meet_day *day = season_meet_day(scratch, season, meet, plan->athlete, plan->block, plan->record);
    struct attempt_view *views = NEW_MANY(scratch, struct attempt_view, day->lift_count + 1);
    for (int i = 0; i < day->lift_count; i++) {
        const struct meet_lift *lift = &day->lifts[i];
        bool known = lift->open == MEET_KNOWN;
        views[i] = (struct attempt_view){ .lift = lift->line->lift, .opener = lift->attempts[0].load,
                                          .second = lift->attempts[1].load, .third = lift->attempts[2].load,
                                          .projected = known ? lift->max.load : ratio_int(0), .unit = day->unit,
                                          .at = lift->line->percent_at };
    }
    *count = day->lift_count;
    return views;
}

static int runs_of(const struct plan *plan)
{
    int count = 0;
    for (int w = 0; w < plan->week_count; w++)
        for (int d = 0; d < plan->weeks[w].day_count; d++)
            for (int e = 0; e < plan->weeks[w].days[d].entry_count; e++)
                for (int g = 0; g < plan->weeks[w].days[d].entries[e].group_count; g++)
                    count += plan->weeks[w].days[d].entries[e].groups[g].run_count;
    return count;
}

struct block_view block_view_make(struct arena *scratch, const struct plan *plan)
{
    struct viewing v = { .arena = scratch,
                         .plan = plan,
                         .sets.room = runs_of(plan),
                         .lift_numbers.arena = scratch,
                         .lift_loads.arena = scratch };
    v.sets.at = NEW_MANY(scratch, struct set_view, v.sets.room);
    const struct meet *meet = season_next_meet(plan->block->season, plan->block->start);
    for (int w = 0; w < plan->week_count; w++) {
        const struct plan_week *week = &plan->weeks[w];
        struct week_view view = { .week = week, .first = v.sets.count, .first_day = v.days.count, .training = week->kind == WEEK_TRAINING };
        for (int d = 0; d < week->day_count; d++)
            view_day(&v, week, &week->days[d]);
        view.past = v.sets.count;
        view.past_day = v.days.count;
        vec_add(scratch, &v.weeks, view);
    }
    int attempt_count = 0;
    const struct attempt_view *attempts = view_attempts(scratch, plan, &attempt_count);
    return (struct block_view){ .plan = plan,
                                .block = plan->block,
                                .attempts = attempts,
                                .attempt_count = attempt_count,
                                .sets = v.sets.at,
                                .set_count = v.sets.count,
                                .lifts = v.lifts.at,
                                .lift_count = v.lifts.count,
                                .lift_numbers = v.lift_numbers,
                                .days = v.days.at,
                                .day_count = v.days.count,
                                .weeks = v.weeks.at,
                                .week_count = v.weeks.count,
                                .lift_weeks = v.lift_weeks.at,
                                .first = plan->block->start,
                                .last = date_plus(plan->block->start, 7 * plan->week_count - 1),
                                .meet = meet ? meet->date : (struct date){ 0 },
                                .last_of_season = plan->block->last_of_season,
                                .break_before = plan->block->break_before };
}

struct block_term block_term_of(const struct block_view *view)
{
    return (struct block_term){ view->block, view->first, view->last, view->break_before };
}
