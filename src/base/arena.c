#include "base/arena.h"

#include <stdalign.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>

enum { FIRST_CHUNK = 64 * 1024, HUGE_PAGE = 2 * 1024 * 1024 };

struct chunk {
    struct chunk *next;
    void *got; /* what to free: one of huge pages stands at the first of them */
    size_t room, used, zeroed; /* from `zeroed` on nothing was handed out yet, and all is 0 */
    alignas(max_align_t) unsigned char bytes[];
};

struct ending {
    void (*drop)(void *of);
    void *of;
    struct ending *before;
};

struct arena {
    struct chunk *first, *current; /* chunks after `current` are empty and wait to be used again */
    jmp_buf *out_of_memory;
    size_t size;
    size_t step; /* of the next chunk, its head included: twice the last, up to a huge page; what needs more gets one to measure */
    struct budget *budget; /* shared with other pools; NULL: no bound */
    struct ending *endings;
    struct arena *inner, *beside; /* the last one made within it; one made before it within the same */
};

static struct chunk *chunk_new(size_t size)
{
    /* A large one comes from the system, which has zeroed it; calloc would zero a small one here and now, all of it. */
    bool large = size > FIRST_CHUNK;
    struct chunk *chunk = large ? calloc(1, size) : malloc(size);
    if (chunk)
        *chunk = (struct chunk){ .got = chunk, .room = size - sizeof *chunk, .zeroed = large ? 0 : size - sizeof *chunk };
    return chunk;
}

/* The system hands out and clears a page of 2 MiB in the time of a few of 4 KiB; where it has none, nothing is lost. */
static struct chunk *chunk_huge(size_t size)
{
    unsigned char *got = calloc(1, size + HUGE_PAGE);
    if (!got)
        return NULL;
    struct chunk *chunk = (void *)(got + (HUGE_PAGE - (uintptr_t)got % HUGE_PAGE));
    madvise(chunk, size / HUGE_PAGE * HUGE_PAGE, MADV_HUGEPAGE);
    *chunk = (struct chunk){ .got = got, .room = size - sizeof *chunk };
    return chunk;
}

struct arena *arena_new(jmp_buf *out_of_memory)
{
    struct arena *arena = malloc(sizeof *arena);
    struct chunk *first = chunk_new(FIRST_CHUNK);
    if (!arena || !first) {
        free(arena);
        free(first);
        return NULL;
    }
    *arena = (struct arena){ .first = first, .current = first, .step = (size_t)2 * FIRST_CHUNK, .out_of_memory = out_of_memory };
    return arena;
}

void arena_exhausted(struct arena *arena)
{
    longjmp(*arena->out_of_memory, ARENA_EMPTY);
}

void arena_share(struct arena *arena, struct budget *budget)
{
    arena->budget = budget;
}

void arena_work(struct arena *arena, uint64_t steps)
{
    struct budget *budget = arena->budget;
    if (!budget)
        return;
    if (steps > budget->work)
        longjmp(*arena->out_of_memory, ARENA_WORK);
    budget->work -= steps;
}

void arena_allow(struct arena *arena, uint64_t steps)
{
    if (arena->budget)
        arena->budget->work += steps;
}

void arena_ends(struct arena *arena, void (*drop)(void *of), void *of)
{
    struct ending *ending = NEW(arena, struct ending);
    *ending = (struct ending){ drop, of, arena->endings };
    arena->endings = ending;
}

static void drop_all(struct arena *arena)
{
    for (const struct ending *ending = arena->endings; ending; ending = ending->before)
        ending->drop(ending->of);
    arena->endings = NULL;
}

struct arena *arena_within(struct arena *owner)
{
    struct arena *inner = arena_new(owner->out_of_memory);
    if (!inner)
        arena_exhausted(owner);
    inner->budget = owner->budget;
    inner->beside = owner->inner;
    owner->inner = inner;
    return inner;
}

void arena_free(struct arena *arena)
{
    if (!arena)
        return;
    drop_all(arena);
    if (arena->budget)
        arena->budget->memory += arena->size;
    for (struct arena *inner = arena->inner, *next; inner; inner = next) {
        next = inner->beside;
        arena_free(inner);
    }
    for (struct chunk *chunk = arena->first, *next; chunk; chunk = next) {
        next = chunk->next;
        free(chunk->got);
    }
    free(arena);
}

void arena_reset(struct arena *arena)
{
    size_t size = arena->size;
    drop_all(arena);
    if (arena->budget)
        arena->budget->memory += arena->size;
    for (struct chunk *chunk = arena->first; chunk; chunk = chunk->next)
        chunk->used = 0;
    arena->current = arena->first;
    arena->size = 0;
    arena_work(arena, size);
}

static struct chunk *chunk_for(struct arena *arena, size_t room)
{
    size_t size = sizeof(struct chunk) + room;
    if (size <= arena->step) {
        size = arena->step;
        if (arena->step < HUGE_PAGE)
            arena->step *= 2;
    }
    return size >= HUGE_PAGE ? chunk_huge(size) : chunk_new(size);
}

/* Makes a chunk with `size` bytes free the current one: a waiting one that is large enough, else a new one. */
static void chunk_advance(struct arena *arena, size_t size)
{
    struct chunk *current = arena->current;
    struct chunk **link = &current->next;
    while (*link && (*link)->room < size)
        link = &(*link)->next;
    struct chunk *chunk = *link;
    if (chunk)
        *link = chunk->next;
    else if (!(chunk = chunk_for(arena, size)))
        arena_exhausted(arena);
    chunk->next = current->next;
    current->next = chunk;
    arena->current = chunk;
}

static size_t padded(size_t size)
{
    const size_t grain = alignof(max_align_t);
    return (size + grain - 1) / grain * grain;
}

static void count_size(struct arena *arena, size_t size)
{
    if (arena->budget && size > arena->budget->memory)
        longjmp(*arena->out_of_memory, ARENA_BOUND);
    arena->size += size;
    if (arena->budget)
        arena->budget->memory -= size;
}

/* The next bytes of the chunk at hand, which has them. */
static void *take(struct chunk *chunk, size_t size)
{
    unsigned char *at = chunk->bytes + chunk->used;
    if (chunk->used < chunk->zeroed)
        memset(at, 0, size < chunk->zeroed - chunk->used ? size : chunk->zeroed - chunk->used);
    chunk->used += size;
    if (chunk->zeroed < chunk->used)
        chunk->zeroed = chunk->used;
    return at;
}

void *arena_alloc(struct arena *arena, size_t size)
{
    if (size > SIZE_MAX / 2)
        arena_exhausted(arena);
    count_size(arena, size);
    if (arena->current->room - arena->current->used < padded(size))
        chunk_advance(arena, padded(size));
    return take(arena->current, padded(size));
}

void *arena_grown(struct arena *arena, void *old, size_t size, size_t wanted)
{
    struct chunk *chunk = arena->current;
    bool last = old && (unsigned char *)old + padded(size) == chunk->bytes + chunk->used;
    if (last && wanted < SIZE_MAX / 2 && chunk->room - chunk->used >= padded(wanted) - padded(size)) {
        count_size(arena, wanted - size);
        take(chunk, padded(wanted) - padded(size));
        return old;
    }
    void *grown = arena_alloc(arena, wanted);
    if (old && size)
        memcpy(grown, old, size);
    return grown;
}

char *arena_copy(struct arena *arena, const char *bytes, size_t length)
{
    char *copy = arena_alloc(arena, length + 1);
    if (length)
        memcpy(copy, bytes, length);
    return copy;
}

char *arena_format(struct arena *arena, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *text = arena_vformat(arena, format, args);
    va_end(args);
    return text;
}

char *arena_vformat(struct arena *arena, const char *format, va_list args)
{
    enum { USUAL = 256 };
    char usual[USUAL];
    va_list again;
    va_copy(again, args);
    int length = vsnprintf(usual, sizeof usual, format, again);
    va_end(again);
    if (length < 0)
        arena_exhausted(arena);
    if (length < USUAL)
        return arena_copy(arena, usual, (size_t)length);
    char *text = arena_alloc(arena, (size_t)length + 1);
    vsnprintf(text, (size_t)length + 1, format, args);
    return text;
}

size_t arena_size(const struct arena *arena)
{
    return arena->size;
}

/* Eight bytes at a time, each mixed in by a product whose two halves are folded: texts are hashed to be found again, and nobody
 * stores or prints what comes out. */
static uint64_t mixed(uint64_t hash, uint64_t with)
{
    __extension__ typedef unsigned __int128 twice;
    twice product = (twice)(hash ^ with) * UINT64_C(0x9E3779B97F4A7C15);
    return (uint64_t)product ^ (uint64_t)(product >> 64);
}

uint64_t bytes_hash(const char *bytes, size_t length)
{
    uint64_t hash = length, eight;
    for (; length >= sizeof eight; bytes += sizeof eight, length -= sizeof eight) {
        memcpy(&eight, bytes, sizeof eight);
        hash = mixed(hash, eight);
    }
    eight = 0;
    for (size_t i = 0; i < length; i++)
        eight = eight << 8 | (unsigned char)bytes[i];
    return mixed(hash, eight);
}

/* Names: an open hash table that is never more than three quarters full. */

struct interned_name {
    const char *text; /* NULL: free */
    uint32_t length, hash; /* no name or text is 4 GiB long: all files together are shorter */
};

struct interner {
    struct arena *arena;
    struct interned_name *slots;
    size_t room, count; /* room is a power of two */
};

struct interner *interner_new(struct arena *arena)
{
    struct interner *interner = NEW(arena, struct interner);
    *interner = (struct interner){ .arena = arena, .room = 256 };
    interner->slots = NEW_MANY(arena, struct interned_name, interner->room);
    return interner;
}

static bool is_same(const struct interned_name *slot, const char *bytes, uint32_t length, uint32_t hash)
{
    return slot->hash == hash && slot->length == length && (length == 0 || memcmp(slot->text, bytes, length) == 0);
}

static struct interned_name *slot_find(const struct interner *interner, const char *bytes, uint32_t length, uint32_t hash)
{
    size_t at = hash & (interner->room - 1);
    while (interner->slots[at].text && !is_same(&interner->slots[at], bytes, length, hash))
        at = (at + 1) & (interner->room - 1);
    return &interner->slots[at];
}

static void interner_grow(struct interner *interner)
{
    struct interned_name *old = interner->slots;
    size_t old_room = interner->room;
    interner->room *= 2;
    interner->slots = NEW_MANY(interner->arena, struct interned_name, interner->room);
    for (size_t i = 0; i < old_room; i++)
        if (old[i].text)
            *slot_find(interner, old[i].text, old[i].length, old[i].hash) = old[i];
}

const char *intern(struct interner *interner, const char *bytes, size_t length)
{
    uint32_t hash = (uint32_t)bytes_hash(bytes, length);
    struct interned_name *slot = slot_find(interner, bytes, (uint32_t)length, hash);
    if (slot->text)
        return slot->text;
    const char *text = arena_copy(interner->arena, bytes, length);
    *slot = (struct interned_name){ text, (uint32_t)length, hash };
    if (++interner->count * 4 > interner->room * 3)
        interner_grow(interner);
    return text;
}

const char *interned(const struct interner *interner, const char *bytes, size_t length)
{
    return slot_find(interner, bytes, (uint32_t)length, (uint32_t)bytes_hash(bytes, length))->text;
}
