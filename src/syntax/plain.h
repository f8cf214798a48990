/* Plain lines: a lift with its sets, such as `squat 3 x 5 at rpe 7`, which are most of what coaches write, read by hand, and
 * with them whole days in which little else stands.
 *
 * The grammar (grammar/setwright.y) is the authority: what is read here gives the very tree that it would give, and
 * whatever is not known here is left to it. So a new clause needs nothing here; one that is to be read
 * differently needs both, and tests/unit/plain_test.c and the parser's fuzzer compare the trees.
 *
 * A plain line is read twice: once with the text around it, which keeps one node, and again when somebody opens it.
 * Most were met before: known.h. */
#ifndef SYNTAX_PLAIN_H
#define SYNTAX_PLAIN_H

#include "syntax/known.h"
#include "syntax/tree.h"
#include "syntax/words.h"

/* What it takes to read lines of a text. */
struct plain {
    const struct source *source;
    struct interner *names;
    struct word_index words;
    struct known known;
};

/* To read a text's lines. */
static inline struct plain plain_of(const struct source *source, struct interner *names)
{
    return (struct plain){ .source = source, .names = names, .words = words_index(), .known.count = known_slots(source->length) };
}

/* Reads the line that starts with the name at `from`, a byte of the source, into `room`; the node is its NODE_ENTRY and ends where the last
 * word does. NULL: it is not plain. */
const struct node *plain_read(const struct plain *plain, uint32_t from, struct plain_room *room);
/* The same without a tree, to know where it ends, 0: it is not plain; and its last stretch. */
uint32_t plain_find(struct arena *arena, struct plain *plain, uint32_t from, const struct stretch **last);
/* A day from its `day` on in which nothing stands but plain lines, titles and notes, for the text's tree; NULL: it is another. */
struct parse;
struct node *plain_day(struct parse *p, uint32_t from);
/* Where, with nothing but line ends behind a plain line's end, another may start; behind a day's, another day. 0: nowhere. */
uint32_t plain_next(const struct plain *plain, uint32_t from);
uint32_t plain_next_day(const struct plain *plain, uint32_t from);

#endif
