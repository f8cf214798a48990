#include "records/repeats.h"

#include <string.h>

enum { LOOKS = 16 }; /* rows made to fall on one place would be looked through for hours */

struct repeat {
    uint64_t hash;
    struct span rest;
    struct roster_row row;
};
struct repeats {
    struct arena *arena;
    struct repeat *slots[REPEATS_MOST]; /* NULL: free */
};

struct repeats *repeats_new(struct arena *arena)
{
    struct repeats *repeats = NEW(arena, struct repeats);
    repeats->arena = arena;
    return repeats;
}

static const char *bytes_at(const struct source *source, struct span at)
{
    return source->text + (at.start - source->base);
}

static size_t length_of(struct span at)
{
    return at.end - at.start;
}

/* Where such a row is, or could be; -1: there is no place for it. */
static int slot_of(const struct repeats *repeats, const struct source *source, struct span rest, uint64_t hash)
{
    const char *bytes = bytes_at(source, rest);
    for (int look = 0; look < LOOKS; look++) {
        int at = (int)((hash + (uint64_t)look) % REPEATS_MOST);
        const struct repeat *there = repeats->slots[at];
        if (!there || (there->hash == hash && length_of(there->rest) == length_of(rest) &&
                       !memcmp(bytes_at(source, there->rest), bytes, length_of(rest))))
            return at;
    }
    return -1;
}

static void move(struct span *at, uint32_t by)
{
    if (span_is_somewhere(*at))
        at->start += by, at->end += by;
}

/* Its cells stand as far behind the new place as behind the old. */
static void row_move(struct roster_row *row, uint32_t by)
{
    struct span *const places[] = { &row->group.at,      &row->gym.at,  &row->lift.at,
                                    &row->bodyweight_at, &row->max_at,  &row->reps_at,
                                    &row->rpe_at,        &row->date_at, &row->at };
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        move(places[i], by);
}

bool repeats_find(const struct repeats *repeats, const struct source *source, struct span rest, struct roster_row *row)
{
    int slot = slot_of(repeats, source, rest, bytes_hash(bytes_at(source, rest), length_of(rest)));
    const struct repeat *repeat = slot >= 0 ? repeats->slots[slot] : NULL;
    if (!repeat)
        return false;
    *row = repeat->row;
    row_move(row, rest.start - repeat->rest.start);
    return true;
}

void repeats_keep(struct repeats *repeats, const struct source *source, struct span rest, const struct roster_row *row)
{
    uint64_t hash = bytes_hash(bytes_at(source, rest), length_of(rest));
    int slot = row->title.text ? -1 : slot_of(repeats, source, rest, hash);
    if (slot < 0 || repeats->slots[slot])
        return;
    struct repeat *repeat = NEW(repeats->arena, struct repeat);
    *repeat = (struct repeat){ hash, rest, *row };
    repeat->row.athlete = (struct roster_cell){ 0 };
    repeats->slots[slot] = repeat;
}
