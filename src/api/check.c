#include "api/inner.h"

#include "check/run.h"
#include "check/untouched.h"

/* Asks all rules of one athlete, who has count pairs from first on. */
static void check_athlete(struct setwright *sw, struct checking *checking, const struct pair *first, int count, bool *const *touched)
{
    struct record *record;
    int planned = 0;
    plans_forget(sw);
    struct plan **plans = plans_of(sw, first, count, touched, &record);
    for (int i = 0; i < count; i++)
        if (plans[i])
            plans[planned++] = plans[i];
    checking_athlete(checking, sw->scratch, first->athlete, record, plans, planned);
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

static void check_all(struct setwright *sw, struct checking *checking, const struct chosen *chosen, const struct setwright_turns *turns)
{
    const struct model *model = sw->model;
    bool **touched = NEW_MANY(sw->arena, bool *, model->block_count + 1);
    bool *has_pairs = NEW_MANY(sw->arena, bool, model->athlete_count + 1);
    for (int i = 0; i < model->block_count; i++)
        touched[i] = NEW_MANY(sw->arena, bool, model->blocks[i]->change_count + 1);
    pairs_make(sw);
    for (int first = 0, next, athlete = 0; first < sw->pairs.count; first = next, athlete++) {
        for (next = first + 1; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete;)
            next++;
        has_pairs[sw->pairs.at[first].athlete->order] = true;
        bool chosen_one = !chosen || is_chosen(chosen, &sw->pairs.at[first]);
        if (chosen_one && (!turns || athlete / turns->athletes % turns->turns == turns->turn))
            check_athlete(sw, checking, &sw->pairs.at[first], next - first, touched);
    }
    check_unplanned(sw, checking, has_pairs);
    plans_forget(sw);
    if (!sw->bare)
        untouched_say(model, touched);
    checking_finish(checking);
}

enum setwright_status setwright_check(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    sw->bare = false;
    check_all(sw, checking_new(sw->arena, sw->model), NULL, NULL);
    return api_status(sw);
}

enum setwright_status setwright_check_errors(struct setwright *sw, const struct setwright_choice *choice)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    struct checking *checking = checking_new_errors(sw->arena, sw->model);
    if (!checking)
        return setwright_check(sw);
    struct setwright_choice share = { .part = choice ? choice->part : 0, .parts = choice ? choice->parts : 0 };
    struct chosen chosen;
    enum setwright_status status = api_choose(sw, &share, &chosen);
    if (status)
        return status;
    sw->bare = true;
    check_all(sw, checking, &chosen, choice ? choice->turns : NULL);
    sw->bare = false;
    return api_status(sw);
}
