#include "emit/instead.h"

static bool has_named(const struct named_ladder *ladders, int count, const char *name)
{
    for (int i = 0; i < count; i++)
        if (ladders[i].name == name)
            return true;
    return false;
}

bool gym_loads(const struct gym *gym, const struct lift *lift)
{
    switch (lift->loads) {
    case LOADS_BAR: return has_named(gym->bars, gym->bar_count, lift->equipment);
    case LOADS_STACK: return has_named(gym->stacks, gym->stack_count, lift->equipment);
    case LOADS_DUMBBELLS: return gym->has_dumbbells;
    default: return true;
    }
}

static bool avoids(const struct athlete *athlete, const struct lift *lift)
{
    for (int i = 0; i < athlete->avoid_count; i++)
        if (athlete->avoids[i].lift == lift)
            return true;
    return false;
}

static bool is_offered(const struct plan_entry *entry, const struct lift *lift)
{
    for (int i = 0; i < entry->choice_count; i++)
        if (entry->choices[i] == lift)
            return true;
    return lift == entry->lift || lift == entry->instead_of;
}

const struct lift *instead_next(const struct athlete *athlete, const struct gym *gym, const struct plan_entry *entry, int *at)
{
    while (*at < entry->lift->instead_count) {
        const struct lift *lift = entry->lift->instead[(*at)++];
        if (gym_loads(gym, lift) && !avoids(athlete, lift) && !is_offered(entry, lift))
            return lift;
    }
    return NULL;
}
