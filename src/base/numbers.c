#include "base/numbers.h"

struct numbered {
    uintptr_t thing;
    uint64_t beside;
    int past; /* its number plus 1; 0: a free slot */
};

static struct numbered *slot_of(const struct numbers *numbers, uintptr_t thing, uint64_t beside)
{
    uint64_t hash = (thing ^ beside * UINT64_C(0xC2B2AE3D27D4EB4F)) * UINT64_C(0x9E3779B97F4A7C15);
    unsigned at = (unsigned)(hash >> 32) & (unsigned)(numbers->room - 1);
    while (numbers->slots[at].past && (numbers->slots[at].thing != thing || numbers->slots[at].beside != beside))
        at = (at + 1) & (unsigned)(numbers->room - 1);
    return &numbers->slots[at];
}

static void numbers_grow(struct numbers *numbers)
{
    struct numbers grown = { .arena = numbers->arena, .count = numbers->count, .room = numbers->room ? 2 * numbers->room : 16 };
    grown.slots = NEW_MANY(grown.arena, struct numbered, grown.room);
    for (int i = 0; i < numbers->room; i++)
        if (numbers->slots[i].past)
            *slot_of(&grown, numbers->slots[i].thing, numbers->slots[i].beside) = numbers->slots[i];
    *numbers = grown;
}

int numbers_give(struct numbers *numbers, const void *thing, uint64_t beside)
{
    if (2 * numbers->count >= numbers->room)
        numbers_grow(numbers);
    struct numbered *slot = slot_of(numbers, (uintptr_t)thing, beside);
    if (!slot->past)
        *slot = (struct numbered){ (uintptr_t)thing, beside, ++numbers->count };
    return slot->past - 1;
}

int numbers_known(const struct numbers *numbers, const void *thing, uint64_t beside)
{
    return numbers->room ? slot_of(numbers, (uintptr_t)thing, beside)->past - 1 : -1;
}
