#include "api/inner.h"

#include "check/run.h"
#include "check/untouched.h"

/* Plans all blocks of one athlete and asks the rules; `taker` (NULL: nobody) gets the plans, NULL where she leaves a block out. */
static bool check_athlete(struct setwright *sw, struct checking *checking, const struct pair *first, int count, bool *const *touched,
                          const struct plan_taker *taker)
{
    struct record *record;
    int planned = 0;
    plans_forget(sw);
    struct plan **plans = plans_of(sw, first, count, touched, &record);
    struct plan **trained = NEW_MANY(sw->scratch, struct plan *, count + 1);
    for (int i = 0; i < count; i++)
        if (plans[i])
            trained[planned++] = plans[i];
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

bool check_all(struct setwright *sw, struct checking *checking, const struct plan_taker *taker)
{
    const struct model *model = sw->model;
    bool **touched = NEW_MANY(sw->arena, bool *, model->block_count + 1);
    bool *has_pairs = NEW_MANY(sw->arena, bool, model->athlete_count + 1), fine = true;
    for (int i = 0; i < model->block_count; i++)
        touched[i] = NEW_MANY(sw->arena, bool, model->blocks[i]->change_count + 1);
    pairs_make(sw);
    for (int first = 0, next; fine && first < sw->pairs.count; first = next) {
        for (next = first + 1; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete;)
            next++;
        has_pairs[sw->pairs.at[first].athlete->order] = true;
        if (!taker || taker->wants(taker->context, &sw->pairs.at[first]))
            fine = check_athlete(sw, checking, &sw->pairs.at[first], next - first, touched, taker);
    }
    check_unplanned(sw, checking, has_pairs);
    plans_forget(sw);
    if (!sw->bare)
        untouched_say(model, touched);
    checking_finish(checking);
    return fine;
}

enum setwright_status setwright_check(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    sw->bare = false;
    check_all(sw, checking_new(sw->arena, sw->model), NULL);
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
