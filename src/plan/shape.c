#include "plan/shape.h"

#include "plan/alike.h"

enum { SHARERS_LEAST = 3 }; /* two are planned as fast without one, and a club of single plans keeps none in memory */

struct shapes *shapes_new(struct arena *arena)
{
    struct shapes *shapes = NEW(arena, struct shapes);
    *shapes = (struct shapes){ .arena = arena, .blocks.arena = arena };
    return shapes;
}

/* Who has a `let` of her own has a block of her own. */
bool shape_is_shared(const struct planning *p)
{
    int adjusts;
    if (!p->shapes || people_count(p->model, p->block->people) < SHARERS_LEAST || p->athlete->avoid_count || p->athlete->let_count)
        return false;
    adjusts_for(p->block, p->athlete, &adjusts);
    return adjusts == 0;
}

struct shape *shape_find(const struct shapes *shapes, const struct block *block)
{
    int at = numbers_known(&shapes->blocks, block, 0);
    return at < 0 ? NULL : shapes->list.at[at];
}

struct shape *shape_keep(struct shapes *shapes, struct shape *shape)
{
    numbers_give(&shapes->blocks, shape->block, 0);
    vec_add(shapes->arena, &shapes->list, shape);
    return shape;
}

/* A progression moves targets, and waiting changes of reps follow it. */
static void own_specs(struct planning *p, struct work_group *group)
{
    if (!group_more(group->group)->progression && !group->reps_changes.count)
        return;
    struct spec *specs = NEW_MANY(p->arena, struct spec, group->spec_count);
    memcpy(specs, group->specs, sizeof *specs * (size_t)group->spec_count);
    group->specs = specs;
}

static bool is_known(const struct planning *p, const struct lift *lift)
{
    for (int i = 0; p->alike && i < p->alike->count; i++)
        if (p->alike->lifts[i] == lift)
            return p->alike->known[i];
    return false;
}

static void own_groups(struct planning *p, struct work_entry *entry)
{
    const struct work_group *groups = entry->groups.at;
    if (is_known(p, entry->lift) || !entry->groups.count) {
        entry->groups.at = NULL, entry->groups.count = entry->groups.room = 0;
        return;
    }
    entry->groups.at = NEW_MANY(p->arena, struct work_group, entry->groups.count);
    memcpy(entry->groups.at, groups, sizeof *groups * (size_t)entry->groups.count);
    for (int i = 0; i < entry->groups.count; i++)
        own_specs(p, &entry->groups.at[i]);
}

void shape_week(struct planning *p, const struct work_week *shape, struct work_week *out)
{
    *out = *shape;
    out->days.at = NEW_MANY(p->arena, struct work_day, shape->days.count + 1);
    for (int i = 0; i < shape->days.count; i++) {
        struct work_day *day = &out->days.at[i];
        *day = shape->days.at[i];
        if (!day->day->gym)
            day->gym = p->athlete->gym;
        day->entries.at = NEW_MANY(p->arena, struct work_entry, day->entries.count + 1);
        for (int j = 0; j < day->entries.count; j++) {
            day->entries.at[j] = shape->days.at[i].entries.at[j];
            own_groups(p, &day->entries.at[j]);
        }
    }
}
