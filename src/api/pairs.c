#include "api/inner.h"

#include "base/numbers.h"

#include <stdlib.h>

static void pairs_count_runs(struct setwright *sw, struct pair *pairs, int count)
{
    struct numbers seen = { .arena = sw->arena }; /* an athlete in a block of a name */
    int *runs = NEW_MANY(sw->arena, int, count + 1);
    for (int i = 0; i < count; i++) {
        struct pair *pair = &pairs[i];
        uint64_t whose = pair->athlete ? (uint64_t)pair->athlete->order : 0; /* nobody's: those who wait have theirs in common */
        pair->run = ++runs[numbers_give(&seen, sw->model->blocks[pair->block]->name, whose)];
    }
}

static void common_make(struct setwright *sw)
{
    for (int i = 0; i < sw->model->block_count; i++)
        if (sw->model->waiting_count && sw->model->blocks[i]->people->everyone)
            vec_add(sw->arena, &sw->common, ((struct pair){ .block = i }));
    pairs_count_runs(sw, sw->common.at, sw->common.count);
}

void pairs_make(struct setwright *sw)
{
    const struct model *model = sw->model;
    if (sw->pairs.at)
        return;
    common_make(sw);
    int *rank = NEW_MANY(sw->arena, int, model->athlete_count + 1), named = 0, total = 0;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->people->count; j++, total++)
            if (!rank[model->blocks[i]->people->at[j]->order])
                rank[model->blocks[i]->people->at[j]->order] = ++named;
    /* A counting sort by rank keeps each athlete's blocks in file order. */
    int *start = NEW_MANY(sw->arena, int, named + 2);
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->people->count; j++)
            start[rank[model->blocks[i]->people->at[j]->order] + 1]++;
    for (int i = 1; i <= named; i++)
        start[i + 1] += start[i];
    sw->pairs.at = NEW_MANY(sw->arena, struct pair, total + 1);
    sw->pairs.count = sw->pairs.room = total;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->people->count; j++) {
            const struct athlete *athlete = model->blocks[i]->people->at[j];
            sw->pairs.at[start[rank[athlete->order]]++] = (struct pair){ .athlete = athlete, .block = i };
        }
    pairs_count_runs(sw, sw->pairs.at, sw->pairs.count);
}

void pairs_make_all(struct setwright *sw)
{
    if (sw->model->waiting_count) {
        plans_forget(sw); /* the scratch memory is used for it */
        model_gather(sw->model);
        sw->pairs.at = NULL, sw->common.count = 0;
    }
    pairs_make(sw);
}

/* ---- walking ---- */

int standing_order(const struct setwright *sw, const struct standing *at)
{
    if (at->pair < sw->pairs.count)
        return sw->pairs.at[at->pair].athlete->order;
    return sw->common.count && at->waiting < sw->model->waiting_count ? sw->model->athlete_count + at->waiting : -1;
}

static int pairs_past(const struct setwright *sw, int first)
{
    int past = first;
    while (past < sw->pairs.count && sw->pairs.at[past].athlete == sw->pairs.at[first].athlete)
        past++;
    return past;
}

const struct pair *standing_meet(struct setwright *sw, const struct standing *at, int *count)
{
    if (at->pair < sw->pairs.count) {
        *count = pairs_past(sw, at->pair) - at->pair;
        return &sw->pairs.at[at->pair];
    }
    arena_reset(sw->lifter);
    const struct athlete *athlete = model_waiting(sw->model, at->waiting, sw->lifter);
    for (int i = 0; i < sw->common.count; i++)
        sw->common.at[i].athlete = athlete;
    *count = sw->common.count;
    return sw->common.at;
}

void standing_next(const struct setwright *sw, struct standing *at)
{
    if (at->pair < sw->pairs.count)
        at->pair = pairs_past(sw, at->pair);
    else
        at->waiting++;
    at->index++;
}

/* ---- plans ---- */

void plans_forget(struct setwright *sw)
{
    arena_reset(sw->scratch);
    sw->planned = NULL;
}

struct start {
    int32_t day;
    int pair; /* of the athlete's, from 0 */
};

static int by_day(const void *a, const void *b)
{
    const struct start *one = a, *other = b;
    return one->day != other->day ? (one->day > other->day) - (one->day < other->day)
                                  : (one->pair > other->pair) - (one->pair < other->pair);
}

const int *pairs_by_start(struct setwright *sw, struct arena *arena, const struct pair *first, int count)
{
    struct start *starts = NEW_MANY(arena, struct start, count + 1);
    int *order = NEW_MANY(arena, int, count + 1);
    for (int i = 0; i < count; i++)
        starts[i] = (struct start){ sw->model->blocks[first[i].block]->start.day, i };
    qsort(starts, (size_t)count, sizeof *starts, by_day);
    for (int i = 0; i < count; i++)
        order[i] = starts[i].pair;
    return order;
}

struct plan *plan_of(struct setwright *sw, const struct pair *pair, const struct block *block, struct record *record,
                     struct steadies *steadies, bool *const *touched)
{
    return plan_make(sw->scratch, &(struct plan_job){ .model = sw->model, .block = block, .athlete = pair->athlete, .record = record,
                                                      .shapes = sw->shapes, .steadies = steadies, .bare = sw->bare, .for_rules = sw->for_rules,
                                                      .alike = sw->is_alike ? &sw->alike : NULL,
                                                      .touched = touched ? touched[pair->block] : NULL });
}

struct plan **plans_of(struct setwright *sw, const struct pair *first, int count, bool *const *touched, struct record **record)
{
    const struct athlete *athlete = first->athlete;
    struct plan **plans = NEW_MANY(sw->scratch, struct plan *, count + 1);
    const struct block **blocks = NEW_MANY(sw->scratch, const struct block *, count + 1), **hers = NEW_MANY(sw->scratch, const struct block *, count + 1);
    const int *order = pairs_by_start(sw, sw->scratch, first, count);
    int trained = 0;
    for (int i = 0; i < count; i++)
        if ((blocks[i] = model_block_for(sw->model, first[i].block, athlete)))
            hers[trained++] = blocks[i];
    struct record *made = record_new(sw->scratch, sw->model, athlete, hers, trained);
    for (int i = 0; i < count; i++) {
        if (blocks[order[i]])
            plans[order[i]] = plan_of(sw, &first[order[i]], blocks[order[i]], made, NULL, touched);
    }
    if (made)
        record_finish(made);
    if (record)
        *record = made;
    return plans;
}

/* The first of the pairs of one athlete, which stand together. */
static const struct pair *first_of(struct setwright *sw, const struct pair *pair)
{
    while (pair > sw->pairs.at && pair[-1].athlete == pair->athlete)
        pair--;
    return pair;
}

struct plan *plan_add(struct setwright *sw, const struct pair *pair)
{
    if (!pair->athlete->diary_count) {
        const struct block *block = model_block_for(sw->model, pair->block, pair->athlete);
        return block ? plan_make(sw->scratch, &(struct plan_job){ .model = sw->model, .block = block, .athlete = pair->athlete,
                                                                  .shapes = sw->shapes, .bare = sw->bare }) : NULL;
    }
    const struct pair *first = first_of(sw, pair), *past = first;
    while (past < sw->pairs.at + sw->pairs.count && past->athlete == pair->athlete)
        past++;
    if (sw->planned != pair->athlete) {
        sw->plans = plans_of(sw, first, (int)(past - first), NULL, NULL);
        sw->planned = pair->athlete;
    }
    return sw->plans[pair - first];
}

struct plan *plan_pair(struct setwright *sw, const struct pair *pair)
{
    if (sw->planned != pair->athlete)
        plans_forget(sw);
    return plan_add(sw, pair);
}
