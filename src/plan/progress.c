/* Progressions: a load and a rep target that move after each session (language.md, section 6). Sessions without results count
 * as made with what was printed; once the diary is known, all of them are gone through again from the start. */
#include "plan/outcome.h"

static bool states_equal(const struct state *state, const struct work_entry *entry, const struct work_group *group)
{
    return state->lift == entry->lift && state->progression == group_more(group->group)->progression &&
           state->load_kind == group->load_kind && ratio_cmp(state->written, group->specs[0].amount) == 0;
}

/* The starting load, exact; a per cent is taken once, of the max of the block's first week. */
static bool starting_load(struct planning *p, const struct work_entry *entry, const struct work_group *group,
                          struct state *state)
{
    struct work_week first = { .start = p->block->start };
    struct ratio amount = group->specs[0].amount;
    const struct bodyweight_line *weight = history_bodyweight(p->athlete, p->block->start);
    bool adds = entry->lift->loads == LOADS_BODYWEIGHT && weight && group->load_kind != LOAD_PERCENT;
    if (group->load_kind == LOAD_PERCENT) {
        struct max_used max = work_max(p, &first, entry->lift);
        if (!max.line)
            return false;
        struct reason *reason = reason_add(p, REASON_MAX, max.line->at, NULL, NULL);
        reason->name = entry->lift->name;
        reason->date = max.line->date;
        reason->load = max.load;
        state->load = ratio_div(ratio_mul(ratio_percent(max.load, p->block->max_percent), amount), ratio_int(100));
        state->reason = reasons_with(p, reason);
    } else {
        state->load = group->group->load_minus ? ratio_sub(ratio_int(0), amount) : amount;
        if (adds)
            state->load = ratio_add(state->load, ratio_weight(weight->weight));
    }
    struct reason *start = reason_add(p, group->load_kind == LOAD_PERCENT ? REASON_PERCENT : REASON_WEIGHT,
                                      group_place(entry->entry, group->group, group->group->load_at), NULL, state->reason);
    start->name = "the max";
    start->amount = ratio_nearest(amount, (struct dec){ DEC_ONE / 1000 });
    start->load = state->load;
    state->reason = reasons_with(p, start);
    return true;
}

/* Of states that share a key most are the same: the starting load is all that it may mix up. */
static struct state **state_slot(struct planning *p, const struct work_entry *entry, const struct work_group *group)
{
    struct ratio written = group->specs[0].amount;
    uint64_t load = (uint64_t)written.num * UINT64_C(0x9E3779B97F4A7C15) + (uint64_t)written.den;
    int lift = numbers_give(&p->state_keys, entry->lift, (uint64_t)group->load_kind);
    int at = numbers_give(&p->state_keys, group_more(group->group)->progression, load * 31 + (uint64_t)lift);
    while (p->keyed.count <= at)
        vec_add(p->arena, &p->keyed, NULL);
    return &p->keyed.at[at];
}

static struct state *state_for(struct planning *p, const struct work_entry *entry, const struct work_group *group)
{
    p->state_keys.arena = p->arena;
    struct state **slot = state_slot(p, entry, group);
    for (struct state *state = *slot; state; state = state->same)
        if (states_equal(state, entry, group))
            return state;
    struct state *state = NEW(p->arena, struct state);
    *state = (struct state){ .lift = entry->lift,
                             .progression = group_more(group->group)->progression,
                             .load_kind = group->load_kind,
                             .written = group->specs[0].amount,
                             .stint = -1,
                             .same = *slot,
                             .at = group_place(entry->entry, group->group, group_more(group->group)->progression_at) };
    if (!starting_load(p, entry, group, state))
        return NULL;
    state->start = state->load;
    *slot = state;
    vec_add(p->arena, &p->states, state);
    return state;
}

static bool progresses(const struct work_group *group)
{
    return group_more(group->group)->progression && group->role != ROLE_WARM_UP &&
           (group->load_kind == LOAD_WEIGHT || group->load_kind == LOAD_PERCENT || group->load_kind == LOAD_BODYWEIGHT);
}

/* In a deload week: the load of the last session, and no open-ended sets but those with a number that counts. */
static void group_in_deload(struct work_group *group, const struct state *state)
{
    if (state->trained)
        group->state_load = state->last_load;
    if (group->reps_kind != REPS_AMRAP)
        return;
    group->left_out = !group->specs[0].reps_low;
    group->reps_kind = REPS_COUNT;
    group->specs[0].reps_high = group->specs[0].reps_low;
}

static void set_target(struct work_group *group, int target)
{
    struct spec *spec = &group->specs[0];
    if (group->reps_kind != REPS_COUNT || spec->reps_low == spec->reps_high || target <= spec->reps_low)
        return;
    spec->reps_low = target < spec->reps_high ? target : spec->reps_high;
}

static void group_progress(struct planning *p, const struct work_week *week, struct work_entry *entry,
                           struct work_group *group)
{
    struct state *state = state_for(p, entry, group);
    if (!state)
        return; /* no max: said where the load is worked out */
    group->state = state;
    group->state_load = state->load;
    group->state_sessions = state->sessions;
    group->state_stint = state->stint;
    group->has_state_load = true;
    int target = state->target;
    if (week->kind == WEEK_DELOAD) {
        group_in_deload(group, state);
        target = state->trained ? state->last_target : state->target;
    }
    set_target(group, target);
    group->state_low = group->specs[0].reps_low;
    group->state_high = group->specs[0].reps_high;
}

static void reps_changes_apply(struct work_group *group)
{
    for (int i = 0; i < group->reps_changes.count; i++)
        reps_change_apply(&group->reps_changes.at[i], group);
}

/* ---- moving: the most specific line acts ---- */

static const struct progression_line *line_for(const struct progression *progression, enum progression_when when,
                                               int times)
{
    const struct progression_line *best = NULL;
    for (int i = 0; i < progression->line_count; i++) {
        const struct progression_line *line = &progression->lines[i];
        if (line->when == when && (when != WHEN_MISSED || line->times <= times) && (!best || line->times > best->times))
            best = line;
    }
    return best;
}

static struct ratio one_step(const struct work_day *day, const struct state *state)
{
    const struct ladder *ladder = ladder_for(day->gym, state->lift);
    if (state->lift->loads == LOADS_BODYWEIGHT)
        return ratio_weight(day->gym->free.step);
    struct weight now = ladder_round(ladder, state->load, day->gym->rounding);
    return ratio_weight((struct weight){ ladder_above(ladder, now).e10 - now.e10 });
}

static struct ratio by_weight(const struct work_day *day, const struct state *state, const struct progression_line *line)
{
    (void)day, (void)state;
    return ratio_weight(line->weight);
}

static struct ratio by_percent(const struct work_day *day, const struct state *state, const struct progression_line *line)
{
    (void)day;
    return ratio_percent(state->load, line->amount);
}

static struct ratio by_steps(const struct work_day *day, const struct state *state, const struct progression_line *line)
{
    return ratio_mul(one_step(day, state), ratio_dec(line->amount));
}

/* What a line does to the load. */
static const struct act {
    int sign;
    const char *verb, *one, *many; /* the unit of its amount; NULL: a weight */
    struct ratio (*by)(const struct work_day *day, const struct state *state, const struct progression_line *line);
} acts[] = {
    [ACT_ADD] = { 1, "add", NULL, NULL, by_weight },
    [ACT_ADD_PERCENT] = { 1, "add", "%", "%", by_percent },
    [ACT_ADD_STEPS] = { 1, "add", "step", "steps", by_steps },
    [ACT_HOLD] = { 0, "hold", NULL, NULL, by_weight },
    [ACT_DROP] = { -1, "drop", NULL, NULL, by_weight },
    [ACT_DROP_PERCENT] = { -1, "drop", "%", "%", by_percent },
};

static void act(const struct work_day *day, struct state *state, const struct progression_line *line)
{
    const struct act *act = &acts[line->act];
    state->load = ratio_add(state->load, ratio_mul(act->by(day, state, line), ratio_int(act->sign)));
    if (ratio_cmp(state->load, ratio_int(0)) < 0)
        state->load = ratio_int(0);
}

static const char *act_words(struct planning *p, const struct progression_line *line)
{
    const struct act *act = &acts[line->act];
    if (!act->sign)
        return act->verb;
    if (!act->one)
        return arena_format(p->arena, "%s %s", act->verb, weight_text(p->arena, line->weight, p->plan->unit));
    return arena_format(p->arena, "%s %s %s", act->verb, dec_text(p->arena, line->amount),
                        line->amount.e10 == DEC_ONE ? act->one : act->many);
}

/* Which line acts; NULL: none. The state's count of misses in a row moves with it. */
static const struct progression_line *line_of(struct state *state, const struct outcome *out)
{
    const struct progression *progression = state->progression;
    const struct progression_line *full = line_for(progression, WHEN_REPS_FULL, 0),
                                  *easy = line_for(progression, WHEN_EASY, 0);
    state->missed = out->made ? 0 : state->missed + 1;
    if (full && out->full) {
        state->target = 0;
        return full;
    }
    if (full && out->weakest >= 0)
        state->target = out->weakest + 1;
    if (out->made)
        return out->easy && easy ? easy : line_for(progression, WHEN_MADE, 0);
    const struct progression_line *missed = line_for(progression, WHEN_MISSED, state->missed);
    if (missed && missed->times > 1)
        state->missed = 0;
    return missed;
}

static const char *outcome_word(const struct stint *stint, const struct outcome *out,
                                const struct progression_line *line)
{
    if (!stint->known)
        return "no diary, counts as made";
    return !out->made                             ? "missed"
           : line && line->when == WHEN_REPS_FULL ? "reps full"
           : line && line->when == WHEN_EASY      ? "easy"
                                                  : "made";
}

static const char *target_words(struct planning *p, const struct state *state)
{
    return state->target ? arena_format(p->arena, "%d reps are next", state->target) : "nothing moves";
}

static void stint_move(struct planning *p, struct stint *stint)
{
    struct state *state = stint->state;
    struct outcome out = *stint->outcome;
    const struct progression_line *line = NULL;
    state->last_load = state->load;
    state->last_target = state->target;
    state->trained = true;
    stint->at = out.at;
    if (!out.held) {
        state->sessions++;
        line = line_of(state, &out);
        if (line)
            act(stint->work, state, line);
    }
    stint->after = state->load;
    if (p->record)
        stint->says = out.held ? arena_format(p->arena, "held, %s", out.why)
                               : arena_format(p->arena, "%s, so %s", outcome_word(stint, &out, line),
                                              line ? act_words(p, line) : target_words(p, state));
}

/* ---- results that have come in ---- */

/* The stints of one day stand together. */
static bool results_came(struct planning *p, struct date start)
{
    bool came = false;
    for (int i = 0, next; i < p->stints.count; i = next) {
        struct stint *first = &p->stints.at[i];
        const struct plan_day *day = &p->plan->weeks[first->week - 1].days[first->day];
        const struct record_session *session = first->known ? NULL : record_of_day(p->record, day);
        bool comes = session && session->diary->date.day < start.day;
        for (next = i; next < p->stints.count && p->stints.at[next].work == first->work; next++)
            p->stints.at[next].known |= comes;
        if (comes)
            outcomes_done(session, day, first, next - i);
        came |= comes;
    }
    return came;
}

static void replay(struct planning *p)
{
    for (int i = 0; i < p->states.count; i++) {
        struct state *state = p->states.at[i];
        state->load = state->start;
        state->target = state->missed = state->sessions = 0;
        state->trained = false;
    }
    for (int i = 0; i < p->stints.count; i++)
        stint_move(p, &p->stints.at[i]);
}

struct day_stints {
    VEC(struct stint) list;
};

/* One for each progression that the day trains; none touches another. */
static struct day_stints stints_of(struct planning *p, const struct work_week *week, int day)
{
    struct day_stints stints = { 0 };
    const struct work_day *work = &week->days.at[day];
    for (int i = 0; i < work->entries.count; i++)
        for (int j = 0; j < work->entries.at[i].groups.count; j++) {
            const struct work_group *group = &work->entries.at[i].groups.at[j];
            struct state *state = group->state;
            if (!state || group->left_out)
                continue;
            if (!state->now) {
                state->now = NEW(p->arena, struct outcome);
                *state->now = outcome_best;
                vec_add(p->arena, &stints.list, ((struct stint){ .state = state, .week = week->number, .day = day, .work = work,
                                                                 .outcome = state->now }));
            }
            outcome_add_printed(state->now, group);
        }
    return stints;
}

static void day_done(struct planning *p, const struct work_week *week, int day)
{
    struct day_stints stints = stints_of(p, week, day);
    for (int i = 0; i < stints.list.count; i++) {
        struct stint *stint = &stints.list.at[i];
        stint->state->now = NULL;
        stint->before = stint->state->stint;
        stint->state->stint = p->stints.count;
        stint_move(p, stint);
        vec_add(p->arena, &p->stints, *stint);
    }
}

void progress_week(struct planning *p, struct work_week *week)
{
    if (p->record && results_came(p, week->start))
        replay(p);
    for (int i = 0; i < week->days.count; i++) {
        struct work_day *day = &week->days.at[i];
        bool any = false;
        for (int j = 0; j < day->entries.count; j++)
            for (int k = 0; k < day->entries.at[j].groups.count; k++) {
                struct work_group *group = &day->entries.at[j].groups.at[k];
                if (progresses(group)) {
                    group_progress(p, week, &day->entries.at[j], group);
                    any = true;
                }
                reps_changes_apply(group);
            }
        if (any && week->kind != WEEK_DELOAD)
            day_done(p, week, i);
    }
}

/* ---- the derivation ---- */

const struct reason *progress_reasons(struct planning *p, const struct work_group *group)
{
    const struct stint *shown[REASON_MOVES_MOST];
    int count = 0;
    const struct state *state = group->state;
    const struct reason *reason = state->reason;
    for (int i = group->state_stint; i >= 0 && count < REASON_MOVES_MOST && p->record; i = p->stints.at[i].before)
        shown[count++] = &p->stints.at[i];
    while (count--) {
        struct reason *move = reason_add(p, REASON_PROGRESSION_MOVE, shown[count]->at, NULL, reason);
        move->name = shown[count]->says;
        move->date = shown[count]->work->date;
        move->index = shown[count]->week;
        move->load = shown[count]->after;
        reason = reasons_with(p, move);
    }
    return reason;
}
