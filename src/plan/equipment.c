/* What a lift is loaded with in a gym, and rounding to it. */
#include "plan/work.h"

static const struct ladder *named(const struct named_ladder *ladders, int count, const char *name)
{
    for (int i = 0; i < count; i++)
        if (ladders[i].name == name)
            return &ladders[i].ladder;
    return NULL;
}

static const struct ladder *bar_named(const struct gym *gym, const char *name)
{
    if (gym->bar_count <= LADDERS_FEW)
        return named(gym->bars, gym->bar_count, name);
    struct place_list places = places_of(&gym->named, name, 0);
    return places.at.count ? &gym->bars[places.at.at[0]].ladder : NULL;
}

static const struct ladder *stack_named(const struct gym *gym, const char *name)
{
    if (gym->stack_count <= LADDERS_FEW)
        return named(gym->stacks, gym->stack_count, name);
    struct place_list places = places_of(&gym->named, name, 1);
    return places.at.count ? &gym->stacks[places.at.at[0]].ladder : NULL;
}

const struct ladder *ladder_for(const struct gym *gym, const struct lift *lift)
{
    const struct ladder *ladder = NULL;
    switch (lift->loads) {
    case LOADS_BAR:
        ladder = bar_named(gym, lift->equipment);
        return ladder ? ladder : bar_named(gym, NULL) ? bar_named(gym, NULL) : &gym->bars[0].ladder;
    case LOADS_DUMBBELLS: return &gym->dumbbells;
    case LOADS_STACK:
        ladder = stack_named(gym, lift->equipment);
        if (!ladder && gym->stack_count)
            ladder = stack_named(gym, NULL);
        return ladder ? ladder : &gym->free;
    default: return &gym->free;
    }
}

bool gym_has_equipment(const struct gym *gym, const struct lift *lift)
{
    if (!lift->equipment || !gym->name)
        return true;
    if (lift->loads == LOADS_BAR)
        return bar_named(gym, lift->equipment) != NULL;
    return lift->loads != LOADS_STACK || stack_named(gym, lift->equipment) != NULL;
}

/* Weight added to the body, or taken off, in steps to both sides of nothing; ties towards the lighter. */
static struct weight added_round(struct ratio load, struct weight step, enum rounding rounding)
{
    struct ratio steps = ratio_div(load, ratio_weight(step));
    struct dec one = dec_int(1), whole;
    if (rounding == ROUND_DOWN)
        whole = ratio_down(steps, one);
    else if (rounding == ROUND_UP)
        whole = ratio_up(steps, one);
    else
        whole = ratio_up(ratio_sub(steps, ratio_make(1, 2)), one);
    return (struct weight){ dec_floor(whole) * step.e10 };
}

struct weight load_round(const struct gym *gym, const struct lift *lift, struct ratio load, struct weight bodyweight, enum rounding rounding)
{
    if (lift->loads != LOADS_BODYWEIGHT)
        return ladder_round(ladder_for(gym, lift), load, rounding);
    struct weight added = added_round(ratio_sub(load, ratio_weight(bodyweight)), gym->free.step, rounding);
    return (struct weight){ added.e10 + bodyweight.e10 };
}
