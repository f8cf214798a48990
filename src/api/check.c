#include "api/inner.h"

#include "check/run.h"
#include "check/untouched.h"

/* Whether her plan is known without being made: she is like others, of whom nothing was said. */
static bool is_known(struct setwright *sw, struct checking *checking, const struct pair *first, int count, const struct plan_taker *taker)
{
    sw->is_alike = false;
    if (count > 1)
        return false;
    const struct block *block = model_block_for(sw->model, first->block, first->athlete);
    struct plan_job job = { .model = sw->model, .block = block, .athlete = first->athlete, .shapes = sw->shapes };
    sw->is_alike = block && !checking_asks(checking, block) && alike_find(sw->alikes, &job, &sw->alike);
    bool fine = sw->is_alike && alike_is_fine(sw->alikes, &sw->alike);
    return taker && sw->is_alike ? taker->knows(taker->context, first, &sw->alike, fine) : fine;
}

/* What is planned and asked of one athlete. */
struct check_her {
    struct setwright *sw;
    struct checking *checking;
    const struct pair *first; /* her pairs */
    int count;
    bool *const *touched;
    const struct pair **trained; /* those whose block she trains, by start */
    const struct block **blocks; /* hers, beside them */
    int trained_count;
};

static struct check_her her_of(struct setwright *sw, struct checking *checking, const struct pair *first, int count, bool *const *touched)
{
    arena_reset(sw->hers);
    steadies_forget(sw->steadies);
    struct check_her her = { .sw = sw, .checking = checking, .first = first, .count = count, .touched = touched,
                             .trained = NEW_MANY(sw->hers, const struct pair *, count + 1),
                             .blocks = NEW_MANY(sw->hers, const struct block *, count + 1) };
    const int *order = pairs_by_start(sw, sw->hers, first, count);
    for (int i = 0; i < count; i++) {
        const struct pair *pair = &first[order[i]];
        her.trained[her.trained_count] = pair;
        if ((her.blocks[her.trained_count] = model_block_for(sw->model, pair->block, pair->athlete)))
            her.trained_count++;
    }
    return her;
}

static void was_fine(struct setwright *sw, const struct plan *plan)
{
    if (plan->alike && !plan->said)
        alike_was_fine(sw->alikes, plan->alike);
}

/* Each plan is forgotten before the next is made: memory grows with the longest block. */
static void check_apart(const struct check_her *her)
{
    struct setwright *sw = her->sw;
    bool asks = checking_begin(her->checking, sw->hers, her->first->athlete, NULL, her->blocks, her->trained_count);
    for (int i = 0; i < her->trained_count; i++) {
        plans_forget(sw);
        const struct plan *plan = plan_of(sw, her->trained[i], her->blocks[i], NULL, sw->steadies, her->touched);
        was_fine(sw, plan);
        if (asks)
            checking_plan(her->checking, sw->scratch, plan);
    }
    if (asks)
        checking_end(her->checking, sw->scratch);
}

/* Where results feed back, or somebody wants all of her plans. */
static struct plan **check_together(const struct check_her *her)
{
    struct setwright *sw = her->sw;
    struct record *record;
    plans_forget(sw);
    struct plan **plans = plans_of(sw, her->first, her->count, her->touched, &record);
    bool asks = checking_begin(her->checking, sw->hers, her->first->athlete, record, her->blocks, her->trained_count);
    for (int i = 0; i < her->trained_count; i++) {
        const struct plan *plan = plans[her->trained[i] - her->first];
        was_fine(sw, plan);
        if (asks)
            checking_plan(her->checking, sw->scratch, plan);
    }
    if (asks)
        checking_end(her->checking, sw->scratch);
    return plans;
}

/* Plans all blocks of one athlete and asks the rules; `taker` (NULL: nobody) gets the plans, NULL where she leaves a block out. */
static bool check_athlete(struct setwright *sw, struct checking *checking, const struct pair *first, int count, bool *const *touched,
                          const struct plan_taker *taker)
{
    if (is_known(sw, checking, first, count, taker))
        return !taker || taker->take(taker->context, first, count, NULL);
    struct check_her her = her_of(sw, checking, first, count, touched);
    struct plan **plans = NULL;
    if (taker || first->athlete->diary_count)
        plans = check_together(&her);
    else
        check_apart(&her);
    return !taker || taker->take(taker->context, first, count, plans);
}

/* Lifters with a diary and no block: what is odd in it is said all the same. */
static void check_unplanned(struct setwright *sw, struct checking *checking, const bool *has_pairs)
{
    for (int i = 0; i < sw->model->athlete_count; i++) {
        const struct athlete *athlete = sw->model->athletes[i];
        if (!athlete->diary_count || has_pairs[athlete->order])
            continue;
        plans_forget(sw);
        struct record *record = record_new(sw->scratch, sw->model, athlete, NULL, 0);
        record_finish(record);
        arena_reset(sw->hers);
        if (checking_begin(checking, sw->hers, athlete, record, NULL, 0))
            checking_end(checking, sw->scratch);
    }
}

/* One walk over all athletes. */
struct walk_all {
    struct setwright *sw;
    struct checking *checking;
    const struct plan_taker *taker;
    bool **touched, *has_pairs;
    bool looked_ahead;
};

static bool walk_from(struct walk_all *walk, struct standing at, bool ahead);

static bool look_ahead(struct walk_all *walk, struct standing at)
{
    walk->looked_ahead = true;
    walk_from(walk, at, true);
    return api_status(walk->sw) || checking_met(walk->checking) || walk->taker->sure(walk->taker->context);
}

/* `ahead`: only looks whether anything is wrong. */
static bool walk_from(struct walk_all *walk, struct standing at, bool ahead)
{
    struct setwright *sw = walk->sw;
    const struct plan_taker *taker = walk->taker;
    for (int order, count; (order = standing_order(sw, &at)) >= 0; standing_next(sw, &at)) {
        if (order < sw->model->athlete_count) /* who waits has no diary */
            walk->has_pairs[order] = true;
        if (taker && !walk->looked_ahead && taker->ahead(taker->context) && !look_ahead(walk, at))
            return false;
        if (taker && !taker->wants(taker->context, order, at.index))
            continue;
        const struct pair *first = standing_meet(sw, &at, &count);
        if (!check_athlete(sw, walk->checking, first, count, walk->touched, ahead ? NULL : taker))
            return false;
    }
    return true;
}

/* A look after another: what the rules said of the plans is said anew. */
static void rules_forget(struct setwright *sw)
{
    int count;
    struct finding *const *all = findings_all(sw->findings, &count);
    for (int i = 0; i < count; i++)
        all[i]->off |= all[i]->kind == KIND_RULE;
    sw->heard = sw->allowed = NULL;
}

bool check_all(struct setwright *sw, struct checking *checking, const struct plan_taker *taker)
{
    const struct model *model = sw->model;
    struct walk_all walk = { .sw = sw, .checking = checking, .taker = taker, .touched = NEW_MANY(sw->arena, bool *, model->block_count + 1),
                             .has_pairs = NEW_MANY(sw->arena, bool, model->athlete_count + 1) };
    rules_forget(sw);
    for (int i = 0; i < model->block_count; i++)
        walk.touched[i] = NEW_MANY(sw->arena, bool, model->blocks[i]->change_count + 1);
    pairs_make(sw);
    bool fine = walk_from(&walk, (struct standing){ 0 }, false);
    sw->is_alike = false;
    check_unplanned(sw, checking, walk.has_pairs);
    plans_forget(sw);
    if (!sw->bare)
        untouched_say(model, walk.touched);
    checking_finish(checking);
    return fine;
}

enum setwright_status setwright_check(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    sw->bare = false;
    sw->for_rules = true;
    check_all(sw, checking_new(sw->arena, sw->model), NULL);
    sw->for_rules = false;
    return api_status(sw);
}

enum setwright_status setwright_check_errors(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    struct checking *checking = checking_new_errors(sw->arena, sw->model);
    if (!checking)
        return setwright_check(sw);
    sw->bare = true;
    check_all(sw, checking, NULL);
    sw->bare = false;
    return api_status(sw);
}
