/* Loads: changed, capped, rounded once to a weight the gym can make, and what that weight means (language.md, section 5). */
#include "plan/loading.h"

/* ---- changes, caps, rounding ---- */

static void apply_changes(struct loading *l)
{
    for (int i = 0; i < l->group->load_changes.count; i++) {
        const struct load_change *waiting = &l->group->load_changes.at[i];
        struct ratio amount = waiting->percent ? ratio_div(ratio_mul(l->raw, waiting->amount), ratio_int(100)) : waiting->amount;
        struct reason *reason = because(l, waiting->why, waiting->change->at);
        if (l->p->touched && waiting->change->id >= 0)
            l->p->touched[waiting->change->id] = true;
        switch (waiting->change->way) {
        case CHANGE_UP: l->raw = ratio_add(l->raw, amount); break;
        case CHANGE_DOWN: l->raw = ratio_sub(l->raw, amount); break;
        case CHANGE_TO: l->raw = amount; break;
        }
        if (reasons_are_told(l->p))
            reason->name = arena_format(l->p->arena, "load %s %s", waiting->change->way == CHANGE_UP ? "up" : waiting->change->way == CHANGE_DOWN ? "down" : "to",
                                    waiting->percent ? arena_format(l->p->arena, "%s %%", dec_text(l->p->arena, ratio_nearest(waiting->amount, (struct dec){ DEC_ONE / 100 })))
                                                     : weight_text(l->p->arena, ratio_to_weight(waiting->amount), l->p->plan->unit));
        reason->load = l->raw;
    }
    if (ratio_cmp(l->raw, ratio_int(0)) < 0)
        l->raw = ratio_int(0);
}

struct lowest {
    bool is_set;
    struct ratio load;
    struct span at;
    const char *name;
};

static void lower(struct lowest *lowest, struct ratio load, struct span at, const char *name)
{
    if (!lowest->is_set || ratio_cmp(load, lowest->load) < 0)
        *lowest = (struct lowest){ true, load, at, name };
}

static void lower_by_effort(struct loading *l, struct lowest *lowest, struct dec effort, struct span at)
{
    if (!l->has_max || !loading_is_counted(l))
        return;
    struct ratio n = curve_could_do(reps_middle(l->spec), effort);
    const char *name = !reasons_are_told(l->p) ? "" : arena_format(l->p->arena, "rpe %s", dec_text(l->p->arena, effort));
    lower(lowest, ratio_mul(l->max.load, curve_share(&l->curve, n)), at, name);
}

static struct lowest lowest_cap(struct loading *l)
{
    struct lowest lowest = { 0 };
    const struct work_group *work = l->group;
    if (work->own_cap_effort.e10 >= 0)
        lower_by_effort(l, &lowest, work->own_cap_effort, own_place(l, group_more(work->group)->cap.at));
    if (work->cap_from_change)
        lower_by_effort(l, &lowest, work->cap_effort, work->cap_at);
    if (work->has_own_cap && group_more(work->group)->cap_kind == CAP_WEIGHT) {
        struct ratio cap = work->own_cap, weight;
        if (l->entry->lift->loads == LOADS_BODYWEIGHT && bodyweight_known(l, &weight, false))
            cap = ratio_add(cap, weight);
        lower(&lowest, cap, own_place(l, group_more(work->group)->cap.at), "the weight");
    }
    if (work->has_own_cap && group_more(work->group)->cap_kind == CAP_PERCENT) {
        if (l->has_max)
            lower(&lowest, ratio_div(ratio_mul(loading_reduced(l, l->max.load), work->own_cap), ratio_int(100)), own_place(l, group_more(work->group)->cap.at), "the per cent");
        else
            missing_max(l, l->entry->lift, own_place(l, group_more(work->group)->cap.at));
    }
    return lowest;
}

/* What a bodyweight lift has of her on top of what it is loaded with. */
static struct weight own_weight(const struct loading *l)
{
    if (l->entry->lift->loads != LOADS_BODYWEIGHT)
        return (struct weight){ 0 };
    const struct bodyweight_line *line = history_bodyweight(l->p->athlete, l->week->start);
    return line ? line->weight : (struct weight){ 0 };
}

static struct weight round_total(struct loading *l, struct ratio load, enum rounding rounding)
{
    return load_round(l->day->gym, l->entry->lift, load, own_weight(l), rounding);
}

/* `wanted`: the load before rounding, or the cap that lowered it, with its words. */
static void under_bar(struct loading *l, struct ratio wanted, struct span at)
{
    const struct lift *lift = l->entry->lift;
    const struct ladder *ladder = ladder_for(l->day->gym, lift);
    struct weight first = ladder->at ? ladder->at[0] : ladder->first;
    if (lift->loads != LOADS_BAR || ratio_cmp(wanted, ratio_weight(first)) >= 0)
        return;
    l->run->under_bar = true;
    because(l, REASON_UNDER_BAR, (struct span){ 0 })->load = ratio_weight(first);
    if (l->group->role == ROLE_WARM_UP)
        return;
    enum weight_unit unit = l->day->gym->unit;
    struct finding *finding = load_finding(l, KIND_UNDER_BAR, span_is_somewhere(at) ? at : own_place(l, l->group->group->at),
                                           arena_format(l->p->arena, "this comes to %s for %s, less than the empty bar (%s); the bar is planned",
                                                        weight_text(l->p->arena, ratio_to_tenth_kg(wanted), unit),
                                                        l->p->athlete->name, weight_text(l->p->arena, first, unit)));
    diag_help(l->p->model->findings, finding, "plan a lighter lift, a lighter bar or more reps");
}

static void apply_cap(struct loading *l, struct weight *rounded)
{
    struct lowest cap = lowest_cap(l);
    if (!cap.is_set || (ratio_cmp(l->raw, cap.load) <= 0 && ratio_cmp(ratio_weight(*rounded), cap.load) <= 0)) {
        under_bar(l, l->raw, own_place(l, l->group->group->load_at));
        return;
    }
    struct reason *reason = because(l, REASON_CAP, cap.at);
    reason->name = cap.name;
    reason->load = cap.load;
    *rounded = round_total(l, cap.load, ROUND_DOWN);
    l->run->capped = true;
    under_bar(l, cap.load, cap.at);
}

/* ---- what the load means ---- */

static const char *reps_words(struct loading *l)
{
    if (l->spec->reps_low == l->spec->reps_high)
        return arena_format(l->p->arena, "%d", l->spec->reps_low);
    return arena_format(l->p->arena, "%d-%d (taken as %s)", l->spec->reps_low, l->spec->reps_high,
                        dec_text(l->p->arena, ratio_nearest(reps_middle(l->spec), dec_halves(1))));
}

static void impossible(struct loading *l, const char *per_cent)
{
    const struct group *group = l->group->group;
    struct span at = own_place(l, span_is_somewhere(group->load_at) ? group->load_at : group->at);
    bool single = l->spec->reps_low == 1 && l->spec->reps_high == 1;
    struct finding *finding = load_finding(
        l, KIND_IMPOSSIBLE_SET, at,
        single ? arena_format(l->p->arena, "a single at %s is more than the max of %s for %s", per_cent, l->p->athlete->name, l->entry->lift->name)
               : arena_format(l->p->arena, "%s reps at %s of the max are more than %s can do in %s", reps_words(l), per_cent,
                              l->p->athlete->name, l->entry->lift->name));
    /* Of several weeks at one place the gravest holds. What a diary says of a max or a bodyweight is no reason to build nothing. */
    bool by_diary = l->running || (l->p->record && l->entry->lift->loads == LOADS_BODYWEIGHT);
    diag_level(l->p->model->findings, finding, single || by_diary ? LEVEL_WARNING : LEVEL_ERROR);
    diag_help(l->p->model->findings, finding, single ? "that is an attempt at a best; if it is none, take the load down"
                                                     : "take the load or the reps down, or cap it: `cap rpe 9`");
}

static void expect(struct loading *l)
{
    struct plan_run *run = l->run;
    struct ratio load = ratio_weight(run->load);
    if (run->max.num == 0)
        run->max = l->has_max ? l->max.load : ratio_int(0);
    if (run->max.num == 0 || run->load.e10 <= 0)
        return;
    run->has_percent = true;
    run->percent = ratio_nearest(run->max.den == 1 ? (struct ratio){ 100 * load.num, run->max.num } /* lowest terms do not matter */
                                                   : ratio_div(ratio_mul(load, ratio_int(100)), run->max), (struct dec){ DEC_ONE / 10 });
    if (!l->has_max || run->has_effort || !loading_is_counted(l))
        return;
    struct ratio reps = reps_middle(l->spec), max = l->max.load;
    struct ratio share = max.den == 1 ? (struct ratio){ load.num, max.num } : ratio_div(load, max); /* here neither */
    run->has_expected = true;
    run->expected = curve_effort(&l->curve, share, reps);
    /* Rounded to the half, it has to be looked at again only near the ends of the scale, and where curves are held at an end. */
    bool low = run->expected.e10 <= dec_int(1).e10 || l->spec->reps_high > CURVE_REPS_MOST - 10, high = run->expected.e10 >= dec_int(10).e10;
    run->expected_under_one = low && curve_compare(&l->curve, share, reps, dec_int(1)) < 0;
    if (high && l->group->role != ROLE_WARM_UP && curve_compare(&l->curve, share, reps, dec_int(10)) > 0)
        impossible(l, arena_format(l->p->arena, "%s %%", dec_text(l->p->arena, ratio_nearest(ratio_mul(share, ratio_int(100)), (struct dec){ DEC_ONE / 10 }))));
}

/* A bar or stack by name that this gym lacks: the loads are those of its usual one, and someone ought to know. */
static void check_equipment(struct loading *l)
{
    const struct lift *lift = l->entry->lift;
    const struct gym *gym = l->day->gym;
    if (gym_has_equipment(gym, lift))
        return;
    struct finding *finding = plan_finding(l->p, l->week, l->day, l->entry, l->entry->entry->origin, KIND_MISSING, l->entry->entry->at,
                                           "gym %s has no %s called %s; %s is planned with its usual one", gym->name, lift->loads == LOADS_BAR ? "bar" : "stack", lift->equipment, lift->name);
    diag_level(l->p->model->findings, finding, LEVEL_WARNING);
    diag_related(l->p->model->findings, finding, gym->at, "gym %s is declared here", gym->name);
    diag_help(l->p->model->findings, finding, "add it to the gym, or swap the lift for those who train there");
}

static void discs(struct loading *l)
{
    enum { DISCS_MOST = 64 };
    struct weight side[DISCS_MOST];
    l->run->disc_count = -1;
    if (l->entry->lift->loads != LOADS_BAR)
        return;
    int count = ladder_side(ladder_for(l->day->gym, l->entry->lift), l->run->load, side, DISCS_MOST);
    l->run->disc_count = count > DISCS_MOST ? DISCS_MOST : count;
    if (count <= 0)
        return;
    struct weight *kept = NEW_MANY(l->p->arena, struct weight, l->run->disc_count);
    memcpy(kept, side, sizeof *kept * (size_t)l->run->disc_count);
    l->run->discs = kept;
}

static void show(struct loading *l)
{
    l->run->shown.e10 = l->run->load.e10 - own_weight(l).e10;
}

static bool aims_above_cap(const struct loading *l)
{
    const struct work_group *group = l->group;
    int64_t aim = l->run->effort_high.e10;
    return (group->own_cap_effort.e10 >= 0 && aim > group->own_cap_effort.e10) || (group->cap_from_change && aim > group->cap_effort.e10);
}

static void finish_load(struct loading *l)
{
    apply_changes(l);
    because(l, REASON_RAW, (struct span){ 0 })->load = l->raw;
    struct weight rounded = round_total(l, l->raw, l->day->gym->rounding);
    apply_cap(l, &rounded);
    l->run->has_load = true;
    l->run->load = rounded;
    struct reason *reason = because(l, REASON_ROUNDED, l->day->gym->at);
    reason->load = ratio_weight(rounded);
    reason->name = l->day->gym->name;
    /* The effort shown is what is done, once a cap or an adjust has moved the load; no target stands above its cap. */
    if (l->run->capped || l->group->load_changes.count || aims_above_cap(l))
        l->run->has_effort = false;
    show(l);
    check_equipment(l);
    discs(l);
    expect(l);
}

/* An open load keeps its effort as the aim; a cap on effort lowers the aim. */
static void open_load(struct loading *l)
{
    struct dec caps[2] = { l->group->own_cap_effort, l->group->cap_from_change ? l->group->cap_effort : (struct dec){ -1 } };
    for (int i = 0; i < 2; i++)
        if (caps[i].e10 >= 0 && l->run->has_effort) {
            l->run->capped |= l->run->effort_high.e10 > caps[i].e10;
            l->run->effort_low.e10 = l->run->effort_low.e10 > caps[i].e10 ? caps[i].e10 : l->run->effort_low.e10;
            l->run->effort_high.e10 = l->run->effort_high.e10 > caps[i].e10 ? caps[i].e10 : l->run->effort_high.e10;
        }
    l->run->disc_count = -1;
}

/* At an effort the running max counts, where there is one; `max fixed` keeps to the lines. */
static void loading_by_diary(struct loading *l)
{
    if (!l->p->record || l->p->block->max_fixed)
        return;
    struct running running = running_max(l->p->record, l->entry->lift, l->week->start, l->p->block);
    if (!running.known)
        return;
    l->max.load = ratio_weight(running.max);
    l->running = running.reason;
    l->has_max = true;
}

/* Works out what `l` asks for, which starts as it is for all sets of the entry. */
static void run_make(struct loading l)
{
    const struct work_group *group = l.group;
    struct plan_run *run = l.run;
    *run = (struct plan_run){ .max = ratio_int(0), .own_max = ratio_int(0) };
    if (group->load_kind == LOAD_PERCENT && group->role != ROLE_WARM_UP)
        run->by_line = true;
    else
        loading_by_diary(&l);
    l.reason = group->changes;
    run->has_effort = group->load_kind == LOAD_EFFORT;
    run->effort_low = l.spec->effort_low;
    run->effort_high = l.spec->effort_high;
    if (raw_load(&l))
        finish_load(&l);
    else
        open_load(&l);
    run->reason = l.p->bare ? NULL : l.reason;
    run->own_max = l.has_max ? l.max.load : ratio_int(0);
}

/* ---- groups and entries ---- */

static bool runs_alike(const struct work_run *a, const struct work_run *b)
{
    return a->spec->reps_low == b->spec->reps_low && a->spec->reps_high == b->spec->reps_high &&
           a->made.has_load == b->made.has_load && a->made.load.e10 == b->made.load.e10 && a->made.has_effort == b->made.has_effort &&
           a->made.effort_low.e10 == b->made.effort_low.e10 && a->made.effort_high.e10 == b->made.effort_high.e10 &&
           (a->made.has_load || a->made.open == b->made.open || (a->made.open && b->made.open && !strcmp(a->made.open, b->made.open)));
}

static void group_loads(struct loading *l, struct work_group *group)
{
    int sets = group->reps_kind == REPS_TOTAL ? 0 : (group->sets_low + group->sets_high + 1) / 2;
    int wanted = group->spec_count > 1 && sets > 0 ? sets : 1;
    struct work_run *runs = NEW_MANY(l->p->arena, struct work_run, wanted);
    int count = 0;
    l->group = group;
    for (int set = 0; set < wanted && !group->left_out; set++) {
        struct work_run *run = &runs[count];
        run->spec = &group->specs[set < group->spec_count ? set : group->spec_count - 1];
        run->sets = wanted > 1 ? 1 : sets;
        l->spec = run->spec, l->run = &run->made;
        run_make(*l);
        if (count && runs_alike(&runs[count - 1], run))
            runs[count - 1].sets += run->sets;
        else
            count++;
    }
    group->runs = runs;
    group->run_count = group->left_out ? 0 : count;
}

/* Of equal neighbours the first warm-up stays; one at or above the first working load is left out. */
static void thin_warm_ups(struct work_entry *entry)
{
    const struct plan_run *working = NULL, *before = NULL;
    for (int i = 0; i < entry->groups.count && !working; i++)
        if (entry->groups.at[i].role != ROLE_WARM_UP && entry->groups.at[i].run_count)
            working = &entry->groups.at[i].runs[0].made;
    for (int i = 0; i < entry->groups.count; i++) {
        struct work_group *group = &entry->groups.at[i];
        if (group->role != ROLE_WARM_UP)
            continue;
        int kept = 0;
        for (int j = 0; j < group->run_count; j++) {
            const struct plan_run *run = &group->runs[j].made;
            if (run->has_load && ((working && working->has_load && run->load.e10 >= working->load.e10) ||
                                  (before && before->has_load && before->load.e10 == run->load.e10)))
                continue;
            group->runs[kept] = group->runs[j];
            before = &group->runs[kept++].made;
        }
        group->run_count = kept;
    }
}

/* What later sets of the entry may hang on: warm-ups, worked out last, on the first; back-offs on the nearest before them. */
static void group_done(struct work_entry *entry, const struct work_group *group)
{
    if (group->role == ROLE_WARM_UP || group->left_out || !group->run_count)
        return;
    if (!entry->first)
        entry->first = group;
    entry->before = group;
    if (group->role == ROLE_TOP)
        entry->top = group;
}

void entry_loads(struct planning *p, struct work_week *week, struct work_day *day, struct work_entry *entry)
{
    if (entry->stage != STAGE_NEW || !entry->groups.count)
        return;
    entry->stage = STAGE_WORKING;
    struct loading l = { .p = p, .week = week, .day = day, .entry = entry, .max = work_max(p, week, entry->lift),
                         .curve = history_curve(p->model, p->block, p->athlete, entry->lift) };
    l.has_max = l.max.line != NULL;
    int said = findings_said(p->model->findings);
    for (int warm_up = 0; warm_up < 2; warm_up++)
        for (int i = 0; i < entry->groups.count; i++)
            if ((entry->groups.at[i].role == ROLE_WARM_UP) == (warm_up == 1)) {
                group_loads(&l, &entry->groups.at[i]);
                group_done(entry, &entry->groups.at[i]);
            }
    thin_warm_ups(entry);
    entry->said |= findings_said(p->model->findings) != said;
    entry->stage = STAGE_DONE;
}

void loads_week(struct planning *p, struct work_week *week)
{
    for (int i = 0; i < week->days.count; i++)
        for (int j = 0; j < week->days.at[i].entries.count; j++)
            entry_loads(p, week, &week->days.at[i], &week->days.at[i].entries.at[j]);
}
