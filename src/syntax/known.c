#include "syntax/known.h"

#include "syntax/classes.h"

#include <string.h>

enum { HASHED_MOST = 512 }; /* of a text that is all one line each lift would hash the rest */

static uint32_t hash_behind(const struct stretch *before, const char *words, size_t length)
{
    return (uint32_t)bytes_hash(words, length) ^ (before ? before->hash * UINT32_C(0x9E3779B1) : 0);
}

/* Where a stretch would be that starts here, as far as can be told before it is read: up to a " or the end of its first line, which
 * begins with its first word, since a `then` may stand on the next. */
static struct stretch **slot_of(const struct known *known, const struct stretch *before, const char *words, size_t left)
{
    const char *from = past(words, BLANK | LINE_END);
    size_t most = left - (size_t)(from - words) < HASHED_MOST ? left - (size_t)(from - words) : HASHED_MOST;
    const char *line_end = memchr(from, '\n', most);
    size_t length = line_end ? (size_t)(line_end - from) : most;
    const char *quote = memchr(from, '"', length);
    return &known->slots[hash_behind(before, from, quote ? (size_t)(quote - from) : length) & (known->count - 1)];
}

static bool starts_with(const struct stretch *stretch, const struct stretch *before, const char *words, size_t left)
{
    return stretch && stretch->before == before && stretch->length <= left && !memcmp(stretch->words, words, stretch->length);
}

struct stretch *known_find(const struct known *known, const struct stretch *before, const char *words, size_t left)
{
    if (!known->slots)
        return NULL;
    struct stretch *stretch = *slot_of(known, before, words, left);
    return starts_with(stretch, before, words, left) ? stretch : NULL;
}

struct stretch *known_give(struct arena *arena, struct known *known, const struct stretch *before, const char *words, size_t left,
                           uint32_t length, bool noted)
{
    if (!known->slots)
        known->slots = NEW_MANY(arena, struct stretch *, known->count);
    struct stretch **slot = slot_of(known, before, words, left);
    if (starts_with(*slot, before, words, left) && (*slot)->length == length)
        return *slot;
    struct stretch *stretch = NEW(arena, struct stretch);
    *stretch = (struct stretch){ .before = before, .words = words, .length = length, .hash = hash_behind(before, words, length), .noted = noted };
    return *slot = stretch;
}

bool known_alike(const struct stretch *a, const struct stretch *b)
{
    for (; a && b && a != b; a = a->before, b = b->before)
        if (a->length != b->length || memcmp(a->words, b->words, a->length) != 0)
            return false;
    return a == b;
}
