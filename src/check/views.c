#include "check/views.h"

#include "base/vec.h"
#include "plan/season.h"

#include <stdlib.h>

struct viewing {
    struct arena *arena;
    const struct plan *plan;
    VEC(struct set_view) sets;
    VEC(const struct lift *) lifts;
    struct numbers lift_numbers;
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
    view->reps = ratio_int(0);
    view->counted = reps_are_counted(group);
    view->amrap = group->reps_kind == REPS_AMRAP;
    if (view->amrap) {
        view->reps = ratio_int(group->reps_low);
        view->reps_high = group->reps_low;
    } else if (view->counted || group->reps_kind == REPS_TOTAL) {
        view->reps = ratio_halves(group->reps_low + group->reps_high);
        view->reps_high = group->reps_high;
    }
}

/* The target's middle; else 10 less the repetitions that the rounded load leaves, against the lift's own full max. */
static void set_effort(const struct viewing *v, struct set_view *view)
{
    const struct plan_run *run = view->run;
    if (view->amrap) {
        view->has_effort = true;
        view->effort = ratio_int(10);
    } else if (run->has_effort) {
        view->has_effort = true;
        view->effort = run->effort_low.e10 == run->effort_high.e10 ? ratio_dec(run->effort_low)
                                                                   : ratio_make(run->effort_low.e10 + run->effort_high.e10, (wide)2 * DEC_ONE);
    } else if (run->has_expected) {
        struct curve curve = history_curve(v->plan->model, v->plan->block, v->plan->athlete, view->lift);
        if (run->own_max.num == 0)
            return;
        struct ratio n = curve_reps(&curve, ratio_div(ratio_weight(run->load), run->own_max));
        view->effort = ratio_sub(ratio_add(ratio_int(10), view->reps), n);
        /* Beyond what can be done `impossible-set` speaks alone; a single above the max is all she has. */
        bool beyond = ratio_cmp(view->effort, ratio_int(10)) > 0, single = view->reps_high == 1;
        view->has_effort = !beyond || single;
    }
}

static void set_effort_whole(struct set_view *view)
{
    if (view->has_effort)
        view->effort_whole = (int)(view->effort.den == 1 ? view->effort.num : dec_floor(ratio_down(view->effort, dec_int(1))));
}

static void set_load(struct set_view *view)
{
    const struct plan_run *run = view->run;
    if (run->has_percent) {
        view->has_percent = true;
        view->percent = run->max.den == 1 ? ratio_make((wide)100 * run->load.e10, run->max.num)
                                          : ratio_div(ratio_mul(ratio_weight(run->load), ratio_int(100)), run->max);
    }
    for (const struct reason *reason = run->reason; reason && run->has_load; reason = reason->before)
        if (reason->kind == REASON_RAW) {
            view->has_asked = true;
            view->asked = reason->load;
            return;
        }
}

static void view_run(struct viewing *v, struct set_view view)
{
    set_reps(&view);
    set_effort(v, &view);
    set_effort_whole(&view);
    set_load(&view);
    view.lift_at = numbers_give(&v->lift_numbers, view.lift, 0);
    if (view.lift_at == v->lifts.count)
        vec_add(v->arena, &v->lifts, view.lift);
    vec_add(v->arena, &v->sets, view);
}

static void view_day(struct viewing *v, const struct plan_week *week, const struct plan_day *day)
{
    struct day_view days = { .week = week, .day = day, .first = v->sets.count, .dated = date_is_set(day->date),
                             .date = date_is_set(day->date) ? day->date : week->start };
    for (int e = 0; e < day->entry_count; e++)
        for (int g = 0; g < day->entries[e].group_count; g++)
            for (int r = 0; r < day->entries[e].groups[g].run_count; r++) {
                const struct plan_entry *entry = &day->entries[e];
                const struct plan_group *group = &entry->groups[g];
                if (group->role != ROLE_WARM_UP)
                    view_run(v, (struct set_view){ .week = week, .day = day, .entry = entry, .group = group, .run = &group->runs[r],
                                                   .lift = entry->lift, .main = lift_is_main(entry->lift), .sets = group->runs[r].sets,
                                                   .date = days.date });
            }
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
    struct viewing v = { .arena = scratch, .plan = plan, .sets.room = runs_of(plan), .lift_numbers.arena = scratch };
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
    return (struct block_view){ .plan = plan, .block = plan->block, .attempts = attempts, .attempt_count = attempt_count, .sets = v.sets.at, .set_count = v.sets.count,
                                .lifts = v.lifts.at, .lift_count = v.lifts.count, .lift_numbers = v.lift_numbers, .days = v.days.at,
                                .day_count = v.days.count, .weeks = v.weeks.at, .week_count = v.weeks.count, .first = plan->block->start,
                                .last = date_plus(plan->block->start, 7 * plan->week_count - 1),
                                .meet = meet ? meet->date : (struct date){ 0 }, .last_of_season = plan->block->last_of_season,
                                .break_before = plan->block->break_before };
}

struct block_term block_term_of(const struct block_view *view)
{
    return (struct block_term){ view->block, view->first, view->last, view->break_before };
}
