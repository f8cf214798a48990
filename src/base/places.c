#include "base/places.h"

void places_add(struct places *places, const void *thing, uint64_t beside, int place)
{
    places->things.arena = places->arena;
    int at = numbers_give(&places->things, thing, beside);
    if (at == places->lists.count)
        vec_add(places->arena, &places->lists, (struct place_list){ 0 });
    vec_add(places->arena, &places->lists.at[at].at, place);
}

struct place_list places_of(const struct places *places, const void *thing, uint64_t beside)
{
    static const struct place_list none = { 0 };
    int at = numbers_known(&places->things, thing, beside);
    return at < 0 ? none : places->lists.at[at];
}
