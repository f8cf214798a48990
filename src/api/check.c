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

/* Plans all blocks of one athlete and asks the rules; `taker` (NULL: nobody) gets the plans, NULL where she leaves a block out. */
static bool check_athlete(struct setwright *sw, struct checking *checking, const struct pair *first, int count, bool *const *touched,
                          const struct plan_taker *taker)
{
    struct record *record;
    int planned = 0;
    if (is_known(sw, checking, first, count, taker))
        return !taker || taker->take(taker->context, first, count, NULL);
    plans_forget(sw);
    struct plan **plans = plans_of(sw, first, count, touched, &record);
    struct plan **trained = NEW_MANY(sw->scratch, struct plan *, count + 1);
    for (int i = 0; i < count; i++)
        if (plans[i])
            trained[planned++] = plans[i];
    if (planned && trained[0]->alike && !trained[0]->said)
        alike_was_fine(sw->alikes, trained[0]->alike);
    checking_athlete(checking, sw->scratch, first->athlete, record, trained, planned);
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
        checking_athlete(checking, sw->scratch, athlete, record, NULL, 0);
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
