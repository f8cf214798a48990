#include "api/inner.h"

#include "check/run.h"
#include "check/untouched.h"

/* The plans of one athlete, who has count pairs from first on; they live until the next athlete. */
static struct plan **athlete_plans(struct setwright *sw, int first, int count, bool *const *touched, int *planned)
{
    arena_reset(sw->scratch);
    struct plan **plans = NEW_MANY(sw->scratch, struct plan *, count + 1);
    *planned = 0;
    for (int i = first; i < first + count; i++) {
        struct plan *plan = plan_add(sw, &sw->pairs.at[i], touched[sw->pairs.at[i].block]);
        if (plan)
            plans[(*planned)++] = plan;
    }
    return plans;
}

enum setwright_status setwright_check(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return api_status(sw);
    const struct model *model = sw->model;
    bool **touched = NEW_MANY(sw->arena, bool *, model->block_count + 1);
    for (int i = 0; i < model->block_count; i++)
        touched[i] = NEW_MANY(sw->arena, bool, model->blocks[i]->change_count + 1);
    struct checking *checking = checking_new(sw->arena, model);
    pairs_make(sw);
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        int planned;
        for (next = first + 1; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete;)
            next++;
        struct plan **plans = athlete_plans(sw, first, next - first, touched, &planned);
        checking_athlete(checking, sw->scratch, sw->pairs.at[first].athlete, plans, planned);
    }
    untouched_say(model, touched);
    checking_finish(checking);
    return api_status(sw);
}
