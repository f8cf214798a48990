#include "plan/review.h"

#include "base/vec.h"

struct working {
    const struct review *review;
    const struct review_week *week;
    int first; /* of the week's rows */
    struct review_works works;
};

static struct review_work *row_of(struct working *w, const struct lift *lift)
{
    for (int i = w->first; i < w->works.count; i++)
        if (w->works.at[i].lift == lift)
            return &w->works.at[i];
    struct review_amount none = { .shown = { 0, 1 }, .total = { 0, 1 } };
    struct review_work work = { .week = w->week,
                                .lift = lift,
                                .planned = none,
                                .done = none,
                                .apart = none,
                                .asked_sum = { 0, 1 },
                                .rated_sum = { 0, 1 } };
    vec_add(w->review->arena, &w->works, work);
    return &w->works.at[w->works.count - 1];
}

static int sides_of(const struct lift *lift, const struct group *group)
{
    return (lift->loads == LOADS_DUMBBELLS ? 2 : 1) * (group && group->each_side ? 2 : 1);
}

static void add_load(struct review_amount *amount, int reps, struct weight shown, struct weight load, int sides)
{
    amount->loaded += reps;
    amount->shown = ratio_add(amount->shown, ratio_mul(ratio_weight(shown), ratio_int(reps)));
    amount->total = ratio_add(amount->total, ratio_mul(ratio_weight(load), ratio_int((int64_t)reps * sides)));
}

/* ---- planned ---- */

static bool counts_reps(const struct plan_group *group)
{
    return group->reps_kind != REPS_SECONDS && group->reps_kind != REPS_METRES;
}

static void plan_entry_add(struct working *w, const struct plan_entry *entry)
{
    struct review_amount *planned = &row_of(w, entry->lift)->planned;
    for (int i = 0; i < entry->group_count; i++) {
        const struct plan_group *group = &entry->groups[i];
        for (int j = 0; j < group->run_count && group->role != ROLE_WARM_UP; j++) {
            const struct plan_run *run = &group->runs[j];
            int each = counts_reps(group) ? record_reps_planned(group) : 0;
            int reps = group->reps_kind == REPS_TOTAL ? group->reps_low : run->sets * each;
            planned->sets += run->sets;
            planned->reps += reps;
            if (run->has_load && reps)
                add_load(planned, reps, run->shown, run->load, sides_of(entry->lift, group->group));
        }
    }
}

/* ---- done ---- */

/* Beside a printed group a set counts what the group counts, whatever the diary left out; `as planned` of a total tells
 * reps, and no number of sets. `group` NULL: nothing was printed. */
static void set_add(struct review_amount *amount, const struct record_set *set, const struct plan_group *group,
                    bool with_load)
{
    bool counted = group ? counts_reps(group) && (set->counted || set->as_planned) : set->counted;
    if (set->reps < 1)
        return;
    amount->sets += !set->as_planned || !group || group->reps_kind != REPS_TOTAL;
    if (!counted)
        return;
    amount->reps += set->reps;
    if (set->has_load && with_load)
        add_load(amount, set->reps, set->shown, set->load, sides_of(set->lift, group ? group->group : NULL));
}

static void rating_add(struct review_work *work, const struct plan_run *run, const struct record_set *set)
{
    bool expected = run->has_expected && !run->expected_under_one && (!run->has_effort || run->capped);
    if (!set->has_effort || set->reps < 1 || (!run->has_effort && !expected))
        return;
    struct ratio asked =
        expected ? ratio_dec(run->expected)
                 : ratio_div(ratio_add(ratio_dec(run->effort_low), ratio_dec(run->effort_high)), ratio_int(2));
    work->rated++;
    work->asked_sum = ratio_add(work->asked_sum, asked);
    work->rated_sum = ratio_add(work->rated_sum, ratio_dec(set->effort));
}

static void part_add(struct working *w, const struct record_lift *lift, const struct record_part *part)
{
    struct review_work *work = row_of(w, part->entry->lift);
    for (int i = 0; i < part->set_count; i++) {
        set_add(&work->done, &part->sets[i], &part->groups[0], !lift->other_choice);
        rating_add(work, record_beside(part, i).run, &part->sets[i]);
    }
    work->fell_short |= record_part_missed(part);
    work->as = lift->other_choice ? lift->lift : work->as;
}

static void lift_add(struct working *w, const struct record_lift *lift)
{
    if (lift->how == RECORD_DONE) {
        for (int i = 0; i < lift->part_count; i++)
            part_add(w, lift, &lift->parts[i]);
        return;
    }
    for (int i = 0; i < lift->set_count; i++)
        set_add(&row_of(w, lift->part_count ? lift->parts[0].entry->lift : lift->lift)->apart, &lift->sets[i],
                lift->part_count ? &lift->parts[0].groups[0] : NULL, !lift->other_choice);
}

static void work_week_add(struct working *w)
{
    const struct plan_week *week = w->week->week;
    for (int i = 0; week && i < week->day_count; i++) {
        const struct record_session *session;
        if (review_day_due(w->review, w->week, &week->days[i], &session))
            for (int j = 0; j < week->days[i].entry_count; j++)
                plan_entry_add(w, &week->days[i].entries[j]);
    }
    for (int i = 0; i < w->review->session_count; i++) {
        const struct review_session *looked = &w->review->sessions[i];
        for (int j = 0; looked->week == w->week && j < looked->session->lift_count; j++)
            lift_add(w, &looked->session->lifts[j]);
    }
}

struct review_works review_works(const struct review *review)
{
    struct working w = { .review = review };
    for (int i = 0; i < review->week_count; i++) {
        w.week = &review->weeks[i];
        w.first = w.works.count;
        work_week_add(&w);
    }
    return w.works;
}

bool review_percent(const struct review_work *work, struct ratio *percent)
{
    int64_t planned = work->planned.reps ? work->planned.reps : work->planned.sets,
        done = work->planned.reps ? work->done.reps : work->done.sets;
    *percent = ratio_int(0);
    if (planned)
        *percent = ratio_div(ratio_int(100 * done), ratio_int(planned));
    return planned > 0;
}
