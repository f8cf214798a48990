/* Deload, taper and adjust: one row a verb, in the order of language.md, section 3. */
#include "plan/work.h"

struct applying {
    struct planning *p;
    struct work_week *week;
    const struct change_list *list;
    enum reason_kind why; /* deload, taper, adjust */
};

static void touch(const struct applying *a, const struct change *change)
{
    if (a->p->touched && change->id >= 0)
        a->p->touched[change->id] = true;
}

static bool list_reaches_day(const struct applying *a, const struct work_day *day)
{
    const struct change_list *list = a->list;
    if (date_is_set(list->from)) {
        struct date date = day_reckoned(a->week, day);
        return date.day >= list->from.day && (!date_is_set(list->to) || date.day <= list->to.day);
    }
    return list->every_week || week_in(&list->weeks, a->week->block_week);
}

static bool change_reaches_day(const struct change *change, const struct work_day *day)
{
    for (int i = 0; i < change->day_count; i++)
        if (change->days[i] == day->day->label)
            return true;
    return !change->day_count;
}

/* A lift's name matches before and after its swap, and as any of `row or pulldown`. */
static bool change_reaches_entry(const struct change *change, const struct work_entry *entry)
{
    for (int i = 0; i < change->lift_count; i++) {
        const struct lift *lift = change->lifts[i];
        if (lift == entry->lift || lift == entry->written)
            return true;
        for (int j = 0; j < entry->entry->lift_count; j++)
            if (entry->entry->lifts[j] == lift)
                return true;
    }
    return !change->lift_count;
}

static const char *const way_words[] = { "up", "down", "to" };
static const char *const verb_words[] = { "sets", "reps", "rpe", "load" };

static const char *amount_text(const struct applying *a, const struct change *change, struct ratio amount)
{
    const char *unit = change->value.unit == UNIT_PERCENT ? " %" : change->value.unit == UNIT_KILO ? " kg"
                     : change->value.unit == UNIT_POUND                                             ? " lb"
                                                                                                    : "";
    return arena_format(a->p->arena, "%s %s %s%s", verb_words[change->verb], way_words[change->way],
                        dec_text(a->p->arena, ratio_nearest(amount, (struct dec){ DEC_ONE / 100 })), unit);
}

static void remember(const struct applying *a, const struct change *change, struct work_group *group, struct ratio amount)
{
    struct reason *reason = reason_add(a->p, a->why, change->at, change->origin, group->changes);
    if (reasons_are_told(a->p))
        reason->name = amount_text(a, change, amount);
    group->changes = reasons_with(a->p, reason);
}

/* up, down, to; with per cents of what is there. */
static struct ratio changed(const struct change *change, struct ratio now, struct ratio amount)
{
    if (change->value.unit == UNIT_PERCENT)
        amount = ratio_div(ratio_mul(now, amount), ratio_int(100));
    return change->way == CHANGE_UP ? ratio_add(now, amount) : change->way == CHANGE_DOWN ? ratio_sub(now, amount) : amount;
}

static struct ratio amount_now(const struct applying *a, const struct change *change)
{
    struct dec grain = { change->verb == CHANGE_SETS || change->verb == CHANGE_REPS ? (change->value.unit == UNIT_PERCENT ? DEC_ONE / 2 : DEC_ONE)
                                                                                    : DEC_ONE / 2 };
    if (change->value.unit == UNIT_KILO || change->value.unit == UNIT_POUND)
        grain.e10 = 0;
    return value_in_week(&change->value, a->week->block_week, 0, grain).low;
}

static int within(int64_t value, int least, int most)
{
    return value < least ? least : value > most ? most : (int)value;
}

static void change_sets(struct applying *a, const struct change *change, struct work_group *group, struct ratio amount)
{
    int *counts[] = { &group->sets_low, &group->sets_high };
    if (group->reps_kind == REPS_TOTAL)
        return;
    for (int i = 0; i < 2; i++)
        *counts[i] = within(dec_ceil(ratio_up(changed(change, ratio_int(*counts[i]), amount), dec_int(1))), 1, SETS_MOST);
    touch(a, change);
    remember(a, change, group, amount);
}

void reps_change_apply(const struct load_change *waiting, struct work_group *group)
{
    for (int i = 0; i < group->spec_count; i++) {
        int *counts[] = { &group->specs[i].reps_low, &group->specs[i].reps_high };
        for (int j = 0; j < 2; j++)
            *counts[j] = within(ratio_nearest(changed(waiting->change, ratio_int(*counts[j]), waiting->amount), dec_int(1)).e10 / DEC_ONE, 1,
                                group->reps_kind == REPS_COUNT ? REPS_MOST : 100000);
    }
}

static void change_reps(struct applying *a, const struct change *change, struct work_group *group, struct ratio amount)
{
    struct load_change waiting = { .change = change, .amount = amount };
    if (group->reps_kind == REPS_AMRAP || group->reps_kind == REPS_CLUSTER)
        return;
    if (group_more(group->group)->progression)
        vec_add(a->p->arena, &group->reps_changes, waiting);
    else
        reps_change_apply(&waiting, group);
    touch(a, change);
    remember(a, change, group, amount);
}

static void change_effort(struct applying *a, const struct change *change, struct work_group *group, struct ratio amount)
{
    if (group->load_kind != LOAD_EFFORT)
        return;
    for (int i = 0; i < group->spec_count; i++) {
        struct dec *efforts[] = { &group->specs[i].effort_low, &group->specs[i].effort_high };
        for (int j = 0; j < 2; j++) {
            struct dec effort = ratio_nearest(changed(change, ratio_dec(*efforts[j]), amount), (struct dec){ 1 });
            efforts[j]->e10 = effort.e10 < 0 ? 0 : effort.e10 > 10 * DEC_ONE ? 10 * DEC_ONE : effort.e10;
        }
    }
    touch(a, change);
    remember(a, change, group, amount);
}

/* In deload and taper on sets given by load or per cent, in adjust on every set whose load is known; a hanging set follows. */
static void change_load(struct applying *a, const struct change *change, struct work_group *group, struct ratio amount)
{
    switch (group->load_kind) {
    case LOAD_NONE: case LOAD_SAME: case LOAD_DROP: case LOAD_PERCENT_OF_DAY: return;
    case LOAD_EFFORT:
        if (a->why != REASON_ADJUST)
            return;
        break;
    default: break;
    }
    struct load_change waiting = { .change = change, .amount = amount, .percent = change->value.unit == UNIT_PERCENT, .why = a->why };
    if (change->value.unit == UNIT_KILO)
        waiting.amount = ratio_mul(amount, ratio_int(DEC_ONE));
    else if (change->value.unit == UNIT_POUND)
        waiting.amount = ratio_mul(amount, ratio_int(LB_IN_E10));
    vec_add(a->p->arena, &group->load_changes, waiting); /* touched once there is a load to change */
}

static void (*const number_verbs[])(struct applying *, const struct change *, struct work_group *, struct ratio) = {
    [CHANGE_SETS] = change_sets, [CHANGE_REPS] = change_reps, [CHANGE_EFFORT] = change_effort, [CHANGE_LOAD] = change_load,
};

static void change_cap(struct applying *a, const struct change *change, struct work_group *group)
{
    struct ratio_band band = value_in_week(&change->value, a->week->block_week, 0, (struct dec){ DEC_ONE / 2 });
    struct dec cap = ratio_nearest(band.high, (struct dec){ 1 });
    if (change->way == CHANGE_DOWN)
        cap.e10 = 10 * DEC_ONE - cap.e10;
    if (!group->cap_from_change || cap.e10 < group->cap_effort.e10) {
        group->cap_effort = cap;
        group->cap_at = change->at;
        group->cap_from_change = true;
    }
    touch(a, change);
}

static void entry_change(struct applying *a, const struct change *change, struct work_entry *entry)
{
    if (!change_reaches_entry(change, entry))
        return;
    for (int i = 0; i < entry->groups.count; i++) {
        struct work_group *group = &entry->groups.at[i];
        if (group->role == ROLE_WARM_UP)
            continue;
        if (change->verb == CHANGE_CAP)
            change_cap(a, change, group);
        else
            number_verbs[change->verb](a, change, group, amount_now(a, change));
    }
}

/* A swapped entry keeps sets, reps, effort, per cent and rest; loads stated by weight become open. */
static void entry_swap(struct work_entry *entry, const struct lift *lift, const char *because)
{
    entry->lift = lift;
    entry->because = because;
    for (int i = 0; i < entry->groups.count; i++) {
        struct work_group *group = &entry->groups.at[i];
        bool by_weight = group->load_kind == LOAD_WEIGHT || (group->load_kind == LOAD_BODYWEIGHT && lift->loads != LOADS_BODYWEIGHT);
        if (by_weight)
            group->load_kind = LOAD_NONE;
    }
}

static void entry_drop(struct work_day *day, int index)
{
    memmove(&day->entries.at[index], &day->entries.at[index + 1], sizeof *day->entries.at * (size_t)(day->entries.count - index - 1));
    day->entries.count--;
}

static void add_entries(struct applying *a, const struct change *change, struct work_day *day)
{
    if (day->day->label != change->add_day)
        return;
    int supersets = 0;
    for (int i = 0; i < day->entries.count; i++)
        supersets = day->entries.at[i].superset > supersets ? day->entries.at[i].superset : supersets;
    for (int i = 0; i < change->entry_count; i++) {
        const struct entry *entry = &change->entries[i];
        struct work_entry work = { .entry = entry, .superset = entry->superset ? entry->superset + supersets : 0 };
        if (!entry->lift_count)
            continue;
        work.lift = work.written = entry->lifts[0];
        sets_evaluate(a->p, a->week, &work);
        vec_add(a->p->arena, &day->entries, work);
    }
    touch(a, change);
}

static void day_change(struct applying *a, const struct change *change, struct work_day *day)
{
    if (change->verb == CHANGE_ADD) {
        add_entries(a, change, day);
        return;
    }
    if (change->verb > CHANGE_SKIP_LIFT && change->verb != CHANGE_CAP)
        return;
    for (int i = 0; i < day->entries.count; i++) {
        struct work_entry *entry = &day->entries.at[i];
        if (change->verb == CHANGE_SWAP) {
            if (change_reaches_entry(change, entry)) {
                entry_swap(entry, change->swap_with, NULL);
                entry->swapped_by = change;
                touch(a, change);
            }
        } else if (change->verb == CHANGE_SKIP_LIFT) {
            if (change_reaches_entry(change, entry)) {
                touch(a, change);
                entry_drop(day, i--);
            }
        } else {
            entry_change(a, change, entry);
        }
    }
}

static void skip_days(struct applying *a, const struct change *change)
{
    for (int i = 0; i < a->week->days.count; i++) {
        struct work_day *day = &a->week->days.at[i];
        if (!list_reaches_day(a, day) || !change_reaches_day(change, day))
            continue;
        touch(a, change);
        memmove(day, day + 1, sizeof *day * (size_t)(a->week->days.count - i - 1));
        a->week->days.count--;
        i--;
    }
}

static void change_apply(struct applying *a, const struct change *change)
{
    if (change->verb == CHANGE_SKIP_DAY) {
        skip_days(a, change);
        return;
    }
    bool reached = false;
    for (int i = 0; i < a->week->days.count; i++) {
        struct work_day *day = &a->week->days.at[i];
        if (!list_reaches_day(a, day) || !change_reaches_day(change, day))
            continue;
        reached = true;
        day_change(a, change, day);
    }
    if (change->verb == CHANGE_NOTE && reached) {
        vec_add(a->p->arena, &a->week->notes, change->note);
        touch(a, change);
    }
}

static void list_apply(struct planning *p, struct work_week *week, const struct change_list *list, enum reason_kind why)
{
    enum { STEPS = 64 }; /* for each change and entry */
    struct applying a = { .p = p, .week = week, .list = list, .why = why };
    for (int i = 0; i < week->days.count; i++)
        arena_work(p->arena, (uint64_t)list->change_count * (uint64_t)week->days.at[i].entries.count * STEPS);
    for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < list->change_count; i++)
            if ((list->changes[i].verb == CHANGE_SWAP) == (pass == 0))
                change_apply(&a, &list->changes[i]);
}

/* The lists that are in force in a week, in the order in which they are applied. */
struct lists_of_week {
    VEC(struct list_of_week {
        const struct change_list *list;
        enum reason_kind why;
    }) list;
};

static void lists_add(struct planning *p, const struct work_week *week, const struct change_list *lists, int count, enum reason_kind why,
                      struct lists_of_week *out)
{
    for (int i = 0; i < count; i++)
        if (week_in(&lists[i].weeks, week->block_week))
            vec_add(p->arena, &out->list, ((struct list_of_week){ &lists[i], why }));
}

static struct lists_of_week lists_of_week(struct planning *p, const struct work_week *week)
{
    struct lists_of_week lists = { 0 };
    int count;
    if (week->kind == WEEK_DELOAD)
        lists_add(p, week, p->block->deloads, p->block->deload_count, REASON_DELOAD, &lists);
    if (week->kind == WEEK_TAPER)
        lists_add(p, week, p->block->tapers, p->block->taper_count, REASON_TAPER, &lists);
    const struct adjust_use *uses = adjusts_for(p->block, p->athlete, &count);
    for (int i = 0; i < count; i++)
        vec_add(p->arena, &lists.list, ((struct list_of_week){ uses[i].list, REASON_ADJUST }));
    return lists;
}

void changes_week(struct planning *p, struct work_week *week)
{
    struct lists_of_week lists = lists_of_week(p, week);
    for (int i = 0; i < lists.list.count; i++)
        list_apply(p, week, lists.list.at[i].list, lists.list.at[i].why);
}

bool changes_reach_entries(struct planning *p, const struct work_week *week)
{
    struct lists_of_week lists = lists_of_week(p, week);
    for (int i = 0; i < lists.list.count; i++)
        for (int j = 0; j < lists.list.at[i].list->change_count; j++)
            if (lists.list.at[i].list->changes[j].verb != CHANGE_NOTE)
                return true;
    return false;
}

/* ---- lifts an athlete avoids ---- */

static void avoid_entry(struct planning *p, struct work_entry *entry)
{
    const struct avoid_line *avoid = history_avoid(p->athlete, entry->lift);
    if (!avoid)
        return;
    /* Of `row or pulldown` the choice that she does not avoid comes first. */
    for (int i = 0; i < entry->entry->lift_count && entry->lift == entry->written; i++)
        if (!history_avoid(p->athlete, entry->entry->lifts[i])) {
            entry_swap(entry, entry->entry->lifts[i], avoid->because);
            return;
        }
    if (avoid->use)
        entry_swap(entry, avoid->use, avoid->because);
}

void avoids_apply(struct planning *p, struct work_week *week)
{
    if (!p->athlete->avoid_count)
        return;
    for (int i = 0; i < week->days.count; i++)
        for (int j = 0; j < week->days.at[i].entries.count; j++)
            avoid_entry(p, &week->days.at[i].entries.at[j]);
}
