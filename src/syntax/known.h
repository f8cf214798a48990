/* Words of plain lines that were met before: coaches write most of a week again in the next, and most of what differs then is
 * the note behind a group's sets. So a line comes in stretches. Each ends with the " of a note's text, where the note is the last
 * of its group and the only one, or with the last word of the line; what stands in that text is in no stretch.
 *
 *   squat top 1 x 4 at rpe 7 note "|Brace"| then back-off 3 x 6 drop 15% note "|Every one like the first"
 *
 * A stretch is known by all before it, so lines of the same last stretch are alike in all but such notes. */
#ifndef SYNTAX_KNOWN_H
#define SYNTAX_KNOWN_H

#include "base/arena.h"

#include <stdbool.h>

struct stretch {
    const struct stretch *before; /* NULL: it starts the line */
    const char *words;
    uint32_t length;
    uint32_t hash; /* of its words and those of all before */
    bool noted;    /* a note's text stands behind it: */
    const char *note; /* the last one that was met, with the " that ends it; NULL: none yet */
    uint32_t note_length;
};
/* Of two that meet in a slot the later stays at hand; who has a stretch keeps it. */
struct known {
    struct stretch **slots; /* NULL: none yet */
    uint32_t count;         /* a power of two */
};

/* How many slots do for a text: a power of two. */
static inline uint32_t known_slots(uint32_t length)
{
    uint32_t count = 16;
    while (count < 16384 && count < length / 256)
        count *= 2;
    return count;
}

/* The stretch behind `before` that starts the `left` bytes at `words`; NULL: it is not known. */
struct stretch *known_find(const struct known *known, const struct stretch *before, const char *words, size_t left);
/* The same, which is known from now on by its length. */
struct stretch *known_give(struct arena *arena, struct known *known, const struct stretch *before, const char *words, size_t left,
                           uint32_t length, bool noted);
/* Whether lines that end with these are alike, the texts of notes left out: they may be of two files. */
bool known_alike(const struct stretch *a, const struct stretch *b);

#endif
