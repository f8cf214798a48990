/* Progressions: a load and a rep target that move after each session (language.md, section 6). Sessions without results count
 * as made with what was printed. */
#include "plan/work.h"

static bool states_equal(const struct state *state, const struct work_entry *entry, const struct work_group *group)
{
    return state->lift == entry->lift && state->progression == group->group->progression &&
           state->load_kind == group->load_kind && ratio_cmp(state->written, group->specs[0].amount) == 0;
}

/* The starting load, exact; a per cent is taken once, of the max of the block's first week. */
static bool starting_load(struct planning *p, const struct work_entry *entry, const struct work_group *group, struct state *state)
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
        state->reason = reason;
    } else {
        state->load = group->group->load_minus ? ratio_sub(ratio_int(0), amount) : amount;
        if (adds)
            state->load = ratio_add(state->load, ratio_weight(weight->weight));
    }
    struct reason *start = reason_add(p, group->load_kind == LOAD_PERCENT ? REASON_PERCENT : REASON_WEIGHT, group->group->load_at, NULL, state->reason);
    start->name = "the max";
    start->amount = ratio_nearest(amount, (struct dec){ DEC_ONE / 1000 });
    start->load = state->load;
    state->reason = start;
    return true;
}

static struct state *state_for(struct planning *p, const struct work_entry *entry, const struct work_group *group)
{
    for (int i = 0; i < p->states.count; i++)
        if (states_equal(p->states.at[i], entry, group))
            return p->states.at[i];
    struct state *state = NEW(p->arena, struct state);
    *state = (struct state){ .lift = entry->lift, .progression = group->group->progression, .load_kind = group->load_kind,
                             .written = group->specs[0].amount, .at = group->group->progression_at };
    if (!starting_load(p, entry, group, state))
        return NULL;
    vec_add(p->arena, &p->states, state);
    return state;
}

static bool progresses(const struct work_group *group)
{
    return group->group->progression && group->role != ROLE_WARM_UP &&
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

static void group_progress(struct planning *p, const struct work_week *week, struct work_entry *entry, struct work_group *group)
{
    struct state *state = state_for(p, entry, group);
    if (!state)
        return; /* no max: said where the load is worked out */
    group->state = state;
    group->state_load = state->load;
    group->state_sessions = state->sessions;
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

/* ---- moving ---- */

static const struct progression_line *line_for(const struct progression *progression, enum progression_when when)
{
    for (int i = 0; i < progression->line_count; i++)
        if (progression->lines[i].when == when)
            return &progression->lines[i];
    return NULL;
}

static struct ratio one_step(const struct planning *p, const struct work_day *day, const struct state *state)
{
    const struct ladder *ladder = ladder_for(day->gym, state->lift);
    if (state->lift->loads == LOADS_BODYWEIGHT)
        return ratio_weight(day->gym->free.step);
    struct weight now = ladder_round(ladder, state->load, day->gym->rounding);
    (void)p;
    return ratio_weight((struct weight){ ladder_above(ladder, now).e10 - now.e10 });
}

static void act(struct planning *p, const struct work_day *day, struct state *state, const struct progression_line *line)
{
    struct ratio percent = ratio_percent(state->load, line->amount);
    switch (line->act) {
    case ACT_HOLD: break;
    case ACT_ADD: state->load = ratio_add(state->load, ratio_weight(line->weight)); break;
    case ACT_ADD_PERCENT: state->load = ratio_add(state->load, percent); break;
    case ACT_ADD_STEPS: {
        struct ratio steps = ratio_mul(one_step(p, day, state), ratio_dec(line->amount));
        state->load = ratio_add(state->load, steps);
        break;
    }
    case ACT_DROP: state->load = ratio_sub(state->load, ratio_weight(line->weight)); break;
    case ACT_DROP_PERCENT: state->load = ratio_sub(state->load, percent); break;
    }
    if (ratio_cmp(state->load, ratio_int(0)) < 0)
        state->load = ratio_int(0);
}

struct session {
    bool full;   /* every set at the top of its range */
    int weakest; /* reps of the weakest set; 0: none is counted */
    bool met;
};

static struct session session_of(const struct work_day *day, const struct state *state)
{
    struct session session = { .full = true };
    for (int i = 0; i < day->entries.count; i++)
        for (int j = 0; j < day->entries.at[i].groups.count; j++) {
            const struct work_group *group = &day->entries.at[i].groups.at[j];
            if (group->state != state || group->left_out)
                continue;
            session.met = true;
            if (group->reps_kind != REPS_COUNT)
                continue;
            session.full &= group->state_low >= group->state_high;
            if (!session.weakest || group->state_low < session.weakest)
                session.weakest = group->state_low;
        }
    return session;
}

/* All of it done as printed: made, and full when the target was the top of the range. */
static void state_move(struct planning *p, const struct work_day *day, struct state *state)
{
    struct session session = session_of(day, state);
    if (!session.met)
        return;
    const struct progression_line *full = line_for(state->progression, WHEN_REPS_FULL), *made = line_for(state->progression, WHEN_MADE);
    state->last_load = state->load;
    state->last_target = state->target;
    state->trained = true;
    state->sessions++;
    if (full && session.full) {
        act(p, day, state, full);
        state->target = 0;
        return;
    }
    if (full && session.weakest)
        state->target = session.weakest + 1;
    if (made)
        act(p, day, state, made);
}

void progress_week(struct planning *p, struct work_week *week)
{
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
            for (int j = 0; j < p->states.count; j++)
                state_move(p, day, p->states.at[j]);
    }
}
