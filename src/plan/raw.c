/* Loads before rounding: a function for each way of asking for one (language.md, section 5). */
#include "plan/loading.h"
#include "plan/steady.h"

struct span own_place(const struct loading *l, struct span at)
{
    return group_place(l->entry->entry, l->group->group, at);
}

struct reason *because(struct loading *l, enum reason_kind kind, struct span at)
{
    /* Only the group's own words came through its scheme or template; a max line did not. */
    const struct group *group = l->group->group;
    struct span own = own_place(l, group->at);
    bool own_words = at.start >= own.start && at.end <= own.end && span_is_somewhere(at);
    struct reason *reason = reason_add(l->p, kind, at, own_words ? group->origin : NULL, l->reason);
    l->reason = reasons_with(l->p, reason);
    return reason;
}

struct finding *load_finding(struct loading *l, enum kind kind, struct span at, const char *says)
{
    return plan_finding(l->p, l->week, l->day, l->entry, l->group->group->origin, kind, at, "%s", says);
}

struct ratio reps_middle(const struct spec *spec)
{
    return ratio_halves(spec->reps_low + spec->reps_high);
}

/* reps + (10 - rpe), both at their middles. */
static struct ratio could_do(const struct spec *spec)
{
    int64_t reps = (int64_t)(spec->reps_low + spec->reps_high + 20) * DEC_ONE, effort = spec->effort_low.e10 + spec->effort_high.e10;
    int64_t tenths = DEC_ONE / 10;
    return (reps - effort) % tenths ? ratio_make(reps - effort, (wide)2 * DEC_ONE) : ratio_make((reps - effort) / tenths, 2 * DEC_ONE / tenths);
}

bool loading_is_counted(const struct loading *l)
{
    return l->group->reps_kind == REPS_COUNT || l->group->reps_kind == REPS_CLUSTER;
}

/* ---- maxes ---- */

struct max_used work_max(const struct planning *p, const struct work_week *week, const struct lift *lift)
{
    return history_max(p->athlete, lift, week->start, p->block);
}

void loading_by_line(struct loading *l)
{
    l->max = work_max(l->p, l->week, l->entry->lift);
    l->has_max = l->max.line != NULL;
    l->running = NULL;
    l->run->by_line = true;
}

/* The reasons so far (changes of sets, reps and effort), again on top of a chain that others share. */
static const struct reason *reasons_upon(struct planning *p, const struct reason *reason, const struct reason *chain)
{
    if (!reason)
        return chain;
    struct reason *again = NEW(p->arena, struct reason);
    *again = *reason;
    again->before = reasons_upon(p, reason->before, chain);
    return again;
}

static void reason_reduced(struct loading *l)
{
    if (l->p->block->max_percent.e10 != 100 * DEC_ONE)
        because(l, REASON_MAX_REDUCED, l->p->block->max_percent_at)->amount = l->p->block->max_percent;
}

static void reason_max(struct loading *l, const struct max_used *max, const struct lift *lift)
{
    if (l->running && max == &l->max) {
        if (!l->p->bare)
            l->reason = reasons_upon(l->p, l->reason, l->running);
        reason_reduced(l);
        return;
    }
    const struct lift *owner = max->lent_by ? max->lent_by : lift;
    struct reason *reason = because(l, max->line->estimated ? REASON_MAX_ESTIMATED : REASON_MAX, max->line->at);
    reason->name = owner->name;
    reason->date = max->line->date;
    reason->load = max->lent;
    for (const struct lift *from = lift; max->lent_by && from != owner; from = from->like) {
        struct reason *borrowed = because(l, REASON_MAX_BORROWED, from->like_at);
        if (reasons_are_told(l->p))
            borrowed->name = arena_format(l->p->arena, "%s like %s", from->name, from->like->name);
        borrowed->amount = from->like_percent;
    }
    reason_reduced(l);
}

struct ratio loading_reduced(const struct loading *l, struct ratio max)
{
    return ratio_percent(max, l->p->block->max_percent);
}

void missing_max(struct loading *l, const struct lift *lift, struct span at)
{
    const struct athlete *athlete = l->p->athlete;
    const char *lent = lift->like ? arena_format(l->p->arena, " nor for %s, which it is like", lift->like->name) : "";
    struct finding *finding = load_finding(l, KIND_MISSING_MAX, at,
                                           arena_format(l->p->arena, "%s has no max for %s%s, so a per cent of it gives no load", athlete->name, lift->name, lent));
    const struct max_line *later = NULL;
    for (int i = 0; i < athlete->max_count; i++)
        if (athlete->maxes[i].lift == lift)
            later = &athlete->maxes[i];
    diag_related(l->p->model->findings, finding, later ? later->at : athlete->at,
                 later ? "this max is dated after the week begins" : "%s is declared here", athlete->name);
    diag_help(l->p->model->findings, finding, "add a line such as `max %s %s on %s` to athlete %s, or give the sets an effort: `at rpe 7`",
              lift->name, lift->loads == LOADS_BODYWEIGHT ? "bodyweight plus 10 kg" : "100 kg", date_text(l->p->arena, l->p->block->start), athlete->name);
}

bool bodyweight_known(struct loading *l, struct ratio *weight, bool wanted)
{
    const struct bodyweight_line *line = history_bodyweight(l->p->athlete, l->week->start);
    if (line) {
        struct reason *reason = because(l, REASON_BODYWEIGHT, line->at);
        reason->date = line->date;
        reason->load = *weight = ratio_weight(line->weight);
        return true;
    }
    if (!wanted)
        return false;
    struct finding *finding = load_finding(l, KIND_MISSING_BODYWEIGHT, own_place(l, l->group->group->load_at),
                                           arena_format(l->p->arena, "%s has no bodyweight line, so this load cannot be worked out", l->p->athlete->name));
    diag_related(l->p->model->findings, finding, l->p->athlete->at, "%s is declared here", l->p->athlete->name);
    diag_help(l->p->model->findings, finding, "add the line `bodyweight 70 kg on %s`, with the true number and day, to athlete %s",
              date_text(l->p->arena, l->p->block->start), l->p->athlete->name);
    return false;
}

/* ---- raw loads: a function each kind; false: the load stays open ---- */

static void series_reason(struct loading *l, const struct value *value)
{
    const struct series *series = value->series;
    if (!series || (series->kind == SERIES_LIST && series->count == 1))
        return;
    struct reason *reason = because(l, REASON_SERIES, own_place(l, value->at));
    reason->index = value_index(value, l->week->block_week);
    reason->count = value->frame ? value->frame->count : 1;
}

static void effort_reasons(struct loading *l, struct ratio n, struct ratio share)
{
    const struct group *group = l->group->group;
    series_reason(l, &group->load);
    struct reason *reason = because(l, REASON_EFFORT, own_place(l, group->load_at));
    reason->amount = l->spec->effort_low;
    reason->other = l->spec->effort_high;
    reason = because(l, REASON_SHARE, (struct span){ 0 });
    reason->name = l->curve.row ? curve_name(l->curve.row) : "athlete's own";
    reason->amount = ratio_nearest(n, (struct dec){ DEC_ONE / 100 });
    reason->load = share;
}

static bool raw_effort(struct loading *l)
{
    if (!l->has_max || !loading_is_counted(l))
        return false;
    struct ratio n = could_do(l->spec), share = curve_share(&l->curve, n);
    reason_max(l, &l->max, l->entry->lift);
    if (reasons_are_told(l->p))
        effort_reasons(l, n, share);
    l->raw = ratio_mul(loading_reduced(l, l->max.load), share);
    return true;
}

static struct ratio hundredth(struct loading *l, struct ratio of)
{
    return ratio_div(ratio_mul(of, l->spec->amount), ratio_int(100));
}

static void percent_reason(struct loading *l, enum reason_kind kind, const char *of)
{
    if (!reasons_are_told(l->p))
        return;
    series_reason(l, &l->group->group->load);
    struct reason *reason = because(l, kind, own_place(l, l->group->group->load_at));
    reason->name = of;
    reason->amount = ratio_nearest(l->spec->amount, (struct dec){ DEC_ONE / 1000 });
}

static bool raw_percent(struct loading *l)
{
    if (!l->has_max) {
        missing_max(l, l->entry->lift, own_place(l, l->group->group->load_at));
        return false;
    }
    reason_max(l, &l->max, l->entry->lift);
    percent_reason(l, REASON_PERCENT, "the max");
    l->raw = hundredth(l, loading_reduced(l, l->max.load));
    return true;
}

static bool raw_percent_of_lift(struct loading *l)
{
    const struct lift *lift = group_more(l->group->group)->of_lift;
    struct max_used max = work_max(l->p, l->week, lift);
    if (!max.line) {
        missing_max(l, lift, own_place(l, l->group->group->load_at));
        return false;
    }
    reason_max(l, &max, lift);
    percent_reason(l, REASON_PERCENT, arena_format(l->p->arena, "the max of %s", lift->name));
    l->run->max = max.load;
    l->raw = hundredth(l, loading_reduced(l, max.load));
    return true;
}

static bool raw_percent_of_bodyweight(struct loading *l)
{
    struct ratio weight;
    if (!bodyweight_known(l, &weight, true))
        return false;
    percent_reason(l, REASON_PERCENT, "bodyweight");
    l->raw = hundredth(l, weight);
    return true;
}

static bool raw_weight(struct loading *l)
{
    struct ratio weight;
    series_reason(l, &l->group->group->load);
    because(l, REASON_WEIGHT, own_place(l, l->group->group->load_at))->load = l->spec->amount;
    l->raw = l->spec->amount;
    /* On a bodyweight lift a plain weight is what is added. */
    if (l->entry->lift->loads == LOADS_BODYWEIGHT && bodyweight_known(l, &weight, false))
        l->raw = ratio_add(l->raw, weight);
    return true;
}

static bool raw_bodyweight(struct loading *l)
{
    const struct group *group = l->group->group;
    struct ratio weight = ratio_int(0);
    if (l->entry->lift->loads != LOADS_BODYWEIGHT) {
        struct finding *finding = load_finding(l, KIND_MISPLACED, own_place(l, group->load_at),
                                               arena_format(l->p->arena, "%s does not load bodyweight", l->entry->lift->name));
        diag_related(l->p->model->findings, finding, l->entry->lift->at, "%s is declared here", l->entry->lift->name);
        diag_help(l->p->model->findings, finding, "say `loads bodyweight` in the lift, or give these sets a weight or an effort");
        return false;
    }
    bodyweight_known(l, &weight, false);
    series_reason(l, &group->load);
    because(l, REASON_WEIGHT, own_place(l, group->load_at))->load = group->load_minus ? ratio_sub(ratio_int(0), l->spec->amount) : l->spec->amount;
    l->raw = group->load_minus ? ratio_sub(weight, l->spec->amount) : ratio_add(weight, l->spec->amount);
    return true;
}

static bool no_set_before(struct loading *l)
{
    struct finding *finding = load_finding(l, KIND_NO_TOP, own_place(l, l->group->group->load_at),
                                           arena_format(l->p->arena, "in week %d no set stands before this one to take its load from", l->week->number));
    diag_help(l->p->model->findings, finding, "let the heavier sets be trained in the same weeks, or say a load");
    return false;
}

static const char *hanging_words(struct loading *l, const struct work_group *from)
{
    const char *on = from->role == ROLE_TOP ? "the top set" : "the sets before";
    if (l->group->load_kind == LOAD_SAME)
        return arena_format(l->p->arena, "as %s", on);
    bool percent = l->group->group->load.unit == UNIT_PERCENT;
    struct ratio amount = percent ? l->spec->amount : ratio_div(l->spec->amount, ratio_int(l->group->group->load.unit == UNIT_POUND ? LB_IN_E10 : DEC_ONE));
    const char *number = dec_text(l->p->arena, ratio_nearest(amount, (struct dec){ DEC_ONE / 100 }));
    return arena_format(l->p->arena, "%s %s below %s", number, percent ? "%" : l->group->group->load.unit == UNIT_POUND ? "lb" : "kg", on);
}

/* On the nearest top group before it for a drop, else on the one before. */
static bool raw_hanging(struct loading *l)
{
    bool drop = l->group->load_kind == LOAD_DROP;
    const struct work_group *from = drop && l->entry->top ? l->entry->top : l->entry->before;
    if (!from)
        return no_set_before(l);
    const struct plan_run *last = &from->runs[from->run_count - 1].made;
    l->reason = last->reason;
    if (last->by_line)
        loading_by_line(l);
    if (drop)
        series_reason(l, &l->group->group->load);
    struct reason *reason = because(l, drop ? REASON_DROP : REASON_SAME, own_place(l, l->group->group->load_at));
    reason->name = from->role == ROLE_TOP ? "the top set" : "the sets before";
    if (!last->has_load) {
        l->run->open = hanging_words(l, from);
        return false;
    }
    struct ratio load = ratio_weight(last->load);
    if (drop && l->group->group->load.unit == UNIT_PERCENT) {
        reason->amount = ratio_nearest(l->spec->amount, (struct dec){ DEC_ONE / 1000 });
        l->raw = ratio_sub(load, hundredth(l, load));
    } else if (drop) {
        reason->load = l->spec->amount;
        l->raw = ratio_sub(load, l->spec->amount);
    } else {
        l->raw = load;
    }
    return true;
}

static void heavier_of(const struct plan_run *run, enum role role, const struct plan_run **heaviest)
{
    if (role != ROLE_WARM_UP && run->has_load && (!*heaviest || run->load.e10 > (*heaviest)->load.e10))
        *heaviest = run;
}

static void heaviest_known(struct planning *p, const struct work_entry *entry, const struct plan_run **heaviest)
{
    int count = 0;
    const struct plan_group *groups = entry_is_known(entry) ? steady_groups(p, entry, &count) : NULL;
    for (int i = 0; i < count; i++)
        for (int j = 0; j < groups[i].run_count; j++)
            heavier_of(&groups[i].runs[j], groups[i].role, heaviest);
}

/* The heaviest load of the lift on a day; works that day's entries out first if need be. False: it goes round in a circle. */
static bool heaviest_on(struct loading *l, struct work_day *day, const struct plan_run **heaviest)
{
    for (int i = 0; i < day->entries.count; i++) {
        struct work_entry *entry = &day->entries.at[i];
        if (entry->lift != l->entry->lift || entry == l->entry)
            continue;
        if (entry->stage == STAGE_WORKING)
            return false;
        entry_loads(l->p, l->week, day, entry);
        heaviest_known(l->p, entry, heaviest);
        for (int j = 0; j < entry->groups.count; j++)
            for (int k = 0; k < entry->groups.at[j].run_count; k++)
                heavier_of(&entry->groups.at[j].runs[k].made, entry->groups.at[j].role, heaviest);
    }
    return true;
}

/* As written, before any change took a day or a lift away: that leaves the load open and is no mistake. */
static bool day_has_lift(const struct loading *l, const char *label)
{
    for (int i = 0; i < l->p->block->day_count; i++) {
        const struct day *day = &l->p->block->days[i];
        if (day->label != label || !week_in(&day->weeks, l->week->block_week))
            continue;
        for (int j = 0; j < day->entry_count; j++)
            if (&day->entries[j] != l->entry->entry && day->entries[j].lift_count &&
                (day->entries[j].lifts[0] == l->entry->written || day->entries[j].lifts[0] == l->entry->lift))
                return true;
    }
    return false;
}

static bool raw_percent_of_day(struct loading *l)
{
    const struct plan_run *heaviest = NULL;
    const char *label = group_more(l->group->group)->of_day;
    bool fine = true, before = false;
    for (struct work_day *day = l->week->days.at; day < l->day; day++)
        before |= day->day->label == label;
    struct work_day *end = before ? l->day : l->week->days.at + l->week->days.count;
    for (struct work_day *day = l->week->days.at; day < end && fine; day++)
        if (day->day->label == label)
            fine = heaviest_on(l, day, &heaviest);
    if (!fine) {
        struct finding *finding = load_finding(l, KIND_CYCLE, own_place(l, l->group->group->load_at), "these loads hang on each other in a circle");
        diag_help(l->p->model->findings, finding, "give one of the days a load of its own");
        return false;
    }
    if (!heaviest && !day_has_lift(l, label)) {
        struct finding *finding = load_finding(l, KIND_OPEN_LOAD, own_place(l, group_more(l->group->group)->of_day_at),
                                               arena_format(l->p->arena, "day %s trains no %s in week %d besides this", label, l->entry->lift->name, l->week->number));
        diag_help(l->p->model->findings, finding, "name a day that trains it, or say a load");
        return false;
    }
    l->reason = heaviest ? heaviest->reason : NULL;
    if (heaviest && heaviest->by_line)
        loading_by_line(l);
    percent_reason(l, REASON_OF_DAY, label);
    if (!heaviest) {
        l->run->open = arena_format(l->p->arena, "%s %% of day %s", dec_text(l->p->arena, ratio_nearest(l->spec->amount, (struct dec){ DEC_ONE / 100 })), label);
        return false;
    }
    l->raw = hundredth(l, ratio_weight(heaviest->load));
    return true;
}

/* Of the entry's first working load as rounded. */
static bool raw_warm_up(struct loading *l)
{
    if (!l->entry->first) {
        l->group->left_out = true;
        return false;
    }
    const struct plan_run *first = &l->entry->first->runs[0].made;
    if (first->by_line)
        loading_by_line(l);
    percent_reason(l, REASON_WARM_UP, "the first working load");
    if (!first->has_load) {
        l->run->open = arena_format(l->p->arena, "%s %% of the first working load",
                                    dec_text(l->p->arena, ratio_nearest(l->spec->amount, (struct dec){ DEC_ONE / 100 })));
        return false;
    }
    l->raw = hundredth(l, ratio_weight(first->load));
    return true;
}

static bool raw_progression(struct loading *l)
{
    const struct state *state = l->group->state;
    l->reason = progress_reasons(l->p, l->group);
    struct reason *reason = because(l, REASON_PROGRESSION, own_place(l, group_more(l->group->group)->progression_at));
    reason->name = state->progression->name;
    reason->count = l->group->state_sessions;
    reason->load = l->group->state_load;
    l->raw = l->group->state_load;
    return true;
}

static bool raw_open(struct loading *l)
{
    (void)l;
    return false;
}

static bool (*const raw_of[])(struct loading *) = {
    [LOAD_NONE] = raw_open,
    [LOAD_EFFORT] = raw_effort,
    [LOAD_PERCENT] = raw_percent,
    [LOAD_PERCENT_OF_LIFT] = raw_percent_of_lift,
    [LOAD_PERCENT_OF_DAY] = raw_percent_of_day,
    [LOAD_PERCENT_OF_BODYWEIGHT] = raw_percent_of_bodyweight,
    [LOAD_WEIGHT] = raw_weight,
    [LOAD_BODYWEIGHT] = raw_bodyweight,
    [LOAD_SAME] = raw_hanging,
    [LOAD_DROP] = raw_hanging,
};

/* A total is what a bodyweight lift is loaded with; without her bodyweight nobody knows what of it to hang on. */
static bool total_is_known(struct loading *l)
{
    struct ratio weight;
    bool total = l->group->load_kind != LOAD_WEIGHT && l->group->load_kind != LOAD_BODYWEIGHT && l->group->load_kind != LOAD_SAME &&
                 !(l->group->load_kind == LOAD_DROP && l->group->group->load.unit != UNIT_PERCENT);
    return l->entry->lift->loads != LOADS_BODYWEIGHT || !total || bodyweight_known(l, &weight, true);
}

bool raw_load(struct loading *l)
{
    bool warm_up = l->group->role == ROLE_WARM_UP && l->group->load_kind == LOAD_PERCENT;
    bool known = warm_up ? raw_warm_up(l) : l->group->has_state_load ? raw_progression(l) : raw_of[l->group->load_kind](l);
    return known && total_is_known(l);
}
