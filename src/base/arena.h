/* A run's memory: a pool that only grows, and one copy of each name.
 *
 * Owner: whoever called arena_new frees all of it with arena_free; nothing is freed singly. When the machine
 * has no memory left, allocation does not return: it jumps to the place given to arena_new, so no caller tests for
 * NULL. A scratch pool can be emptied and used again (arena_reset). */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

struct arena;

/* What setjmp returns at the place a pool jumps to. */
enum { ARENA_EMPTY = 1, ARENA_BOUND, ARENA_WORK }; /* no memory in the machine; a bound of arena_share, of memory or of work */

/* A new pool, or NULL without memory. `out_of_memory` must stay valid as long as the pool. */
struct arena *arena_new(jmp_buf *out_of_memory);
/* What pools may take together. One that asks for more jumps. A reset gives memory back, and counts it as
 * work, so that it may jump too, once all is reset. */
struct budget {
    size_t memory; /* bytes */
    uint64_t work; /* steps: a byte that a reset forgets, or one of arena_work */
};
void arena_share(struct arena *arena, struct budget *budget);
/* Steps of a loop that grows faster than what is written in the files, so that such files end too. */
void arena_work(struct arena *arena, uint64_t steps);
/* The same for a list gone through to find one thing in it, or text read again. Honest files do it in short ones: a hundred are
 * free, each further one counts 512 steps, and files that were made for it end within seconds. */
enum { SEARCH_FREE = 100, SEARCH_STEPS = 512 };
static inline void arena_search(struct arena *arena, int64_t count)
{
    if (count > SEARCH_FREE)
        arena_work(arena, (uint64_t)(count - SEARCH_FREE) * SEARCH_STEPS);
}
/* So many more are allowed: whoever gives much may ask for much. */
void arena_allow(struct arena *arena, uint64_t steps);
/* Calls drop(of) before the pool is emptied or freed, the latest first: so what lives outside the pool (a FILE, an emitter, an
 * unfinished file) ends with it, a jump included. `of` lives in the pool or longer; dropping it again must do no harm. */
void arena_ends(struct arena *arena, void (*drop)(void *of), void *of);
struct arena *arena_within(struct arena *owner); /* one of its own to reset, freed with its owner and never before */
void arena_free(struct arena *arena); /* NULL is fine */
_Noreturn void arena_exhausted(struct arena *arena); /* jumps, for a library beside the pool that found no memory */
void arena_reset(struct arena *arena); /* forgets all that was allocated, keeps the memory for the next use */

void *arena_alloc(struct arena *arena, size_t size); /* zeroed, aligned for any type */
/* `old` of `size` bytes, with room for `wanted`: in its place if it was the last to be handed out, else a copy. NULL: none yet. */
void *arena_grown(struct arena *arena, void *old, size_t size, size_t wanted);
char *arena_copy(struct arena *arena, const char *bytes, size_t length); /* with a NUL added */
char *arena_format(struct arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
char *arena_vformat(struct arena *arena, const char *format, va_list args);
size_t arena_size(const struct arena *arena); /* bytes handed out since arena_new or arena_reset */

#define NEW(arena, type) ((type *)arena_alloc((arena), sizeof(type)))
#define NEW_MANY(arena, type, count) ((type *)arena_alloc((arena), sizeof(type) * (size_t)(count)))

uint64_t bytes_hash(const char *bytes, size_t length);

/* Names: equal text gives the same pointer, so names are compared with ==. The text is NUL-terminated and lives in the pool. */
struct interner;
struct interner *interner_new(struct arena *arena);
const char *intern(struct interner *interner, const char *bytes, size_t length);
const char *interned(const struct interner *interner, const char *bytes, size_t length); /* NULL: nobody has said that name yet */

#endif
