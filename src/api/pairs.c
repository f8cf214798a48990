#include "api/inner.h"

/* An athlete's pairs stand together. */
static void pairs_count_runs(struct setwright *sw)
{
    for (int i = 0; i < sw->pairs.count; i++) {
        struct pair *pair = &sw->pairs.at[i];
        pair->run = 1;
        for (const struct pair *other = pair; other-- > sw->pairs.at && other->athlete == pair->athlete;)
            if (sw->model->blocks[other->block]->name == sw->model->blocks[pair->block]->name)
                pair->run++;
    }
}

void pairs_make(struct setwright *sw)
{
    const struct model *model = sw->model;
    if (sw->pairs.at)
        return;
    int *rank = NEW_MANY(sw->arena, int, model->athlete_count + 1), named = 0, total = 0;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++, total++)
            if (!rank[model->blocks[i]->athletes[j]->order])
                rank[model->blocks[i]->athletes[j]->order] = ++named;
    /* A counting sort by rank keeps each athlete's blocks in file order. */
    int *start = NEW_MANY(sw->arena, int, named + 2);
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++)
            start[rank[model->blocks[i]->athletes[j]->order] + 1]++;
    for (int i = 1; i <= named; i++)
        start[i + 1] += start[i];
    sw->pairs.at = NEW_MANY(sw->arena, struct pair, total + 1);
    sw->pairs.count = sw->pairs.room = total;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++) {
            const struct athlete *athlete = model->blocks[i]->athletes[j];
            sw->pairs.at[start[rank[athlete->order]]++] = (struct pair){ .athlete = athlete, .block = i };
        }
    pairs_count_runs(sw);
}

struct plan *plan_add(struct setwright *sw, const struct pair *pair, bool *touched)
{
    const struct block *block = model_block_for(sw->model, pair->block, pair->athlete);
    return block ? plan_make(sw->scratch, sw->model, block, pair->athlete, touched) : NULL;
}

struct plan *plan_pair(struct setwright *sw, const struct pair *pair)
{
    arena_reset(sw->scratch);
    return plan_add(sw, pair, NULL);
}
