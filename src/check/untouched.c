#include "check/untouched.h"

#include "base/numbers.h"

/* It names only weeks that the block does not have, and that has been said. */
static bool reaches_no_week(const struct block *block, const struct change_list *list, const struct change *change)
{
    if (change->verb != CHANGE_SKIP_WEEK && change->verb != CHANGE_REPEAT_WEEK)
        return list->frame && !list->frame->count && !date_is_set(list->from);
    for (int week = 1; week <= block->week_count; week++)
        if (week_in(&change->weeks, week))
            return false;
    return true;
}

static const char *untouched_why(const struct change *change)
{
    if (change->verb == CHANGE_EFFORT)
        return "`rpe` acts on sets given by effort, and none of these is";
    if (change->verb == CHANGE_LOAD)
        return "`load` acts on sets given by a load or a per cent, and none of these is";
    return "no set of these weeks, days and lifts is concerned";
}

static const char *untouched_help(const struct change *change)
{
    if (change->verb == CHANGE_EFFORT)
        return "write `load down 10%` for sets given by a load or a per cent";
    if (change->verb == CHANGE_LOAD)
        return "write `rpe down 2` for sets given by effort";
    return "check the weeks, the lift and for whom it is";
}

/* The changes of each block that found something in any of its runs: seasons may run it more than once, for others and at other
 * times. */
static bool **touched_in_runs(const struct model *model, bool *const *touched)
{
    struct numbers places = { .arena = model->arena };
    int *most = NEW_MANY(model->arena, int, model->block_count + 1); /* changes, by place */
    bool **by_place = NEW_MANY(model->arena, bool *, model->block_count + 1), **in_runs = NEW_MANY(model->arena, bool *, model->block_count + 1);
    for (int i = 0; i < model->block_count; i++) {
        int place = numbers_give(&places, NULL, model->blocks[i]->at.start);
        most[place] = most[place] > model->blocks[i]->change_count ? most[place] : model->blocks[i]->change_count;
    }
    for (int i = 0; i < model->block_count; i++) {
        int place = numbers_known(&places, NULL, model->blocks[i]->at.start);
        if (!by_place[place])
            by_place[place] = NEW_MANY(model->arena, bool, most[place] + 1);
        in_runs[i] = by_place[place];
        for (int j = 0; j < model->blocks[i]->change_count; j++)
            in_runs[i][j] |= touched[i][j];
    }
    return in_runs;
}

static void say_list(const struct model *model, const struct block *block, const struct change_list *lists, int count, const bool *touched)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < lists[i].change_count; j++) {
            const struct change *change = &lists[i].changes[j];
            if (change->id < 0 || touched[change->id] || lists[i].idle || reaches_no_week(block, &lists[i], change))
                continue;
            struct finding *finding = diag_add(model->findings, KIND_UNTOUCHED, change->at, "this changes nothing: %s", untouched_why(change));
            diag_setting(model->findings, finding, (struct setting){ .block = block->name });
            diag_help(model->findings, finding, "%s; or take the line out", untouched_help(change));
            for (const struct origin *origin = change->origin; origin; origin = origin->up)
                diag_related(model->findings, finding, origin->at, "%s", origin->says);
        }
}

void untouched_say(const struct model *model, bool *const *touched)
{
    bool **in_runs = touched_in_runs(model, touched);
    for (int i = 0; i < model->block_count; i++) {
        const struct block *block = model->blocks[i];
        say_list(model, block, block->deloads, block->deload_count, in_runs[i]);
        say_list(model, block, block->tapers, block->taper_count, in_runs[i]);
        say_list(model, block, block->adjusts, block->adjust_count, in_runs[i]);
    }
}
