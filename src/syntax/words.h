/* The words of the language: the one place that knows them. */
#ifndef SYNTAX_WORDS_H
#define SYNTAX_WORDS_H

#include "base/arena.h"
#include "base/near.h"

#include <stdint.h>

struct word {
    const char *text;
    size_t length;
    int token;           /* of the parser */
    const char *after;   /* what a coach writes after it, for messages: "a number of weeks"; NULL: nothing special */
    const char *example; /* a clause or part of a line that has it; NULL: it starts a statement, see syntax/place.c */
};

/* Where a word stands in the table, by its letters: made once a text. */
enum { WORD_SLOTS = 512 };
struct word_index {
    uint8_t slots[WORD_SLOTS]; /* 0: free */
};
struct word_index words_index(void);

const struct word *word_find(const struct word_index *index, const char *text, size_t length); /* NULL: a plain name */
const struct word *word_of(int token); /* NULL: no word of the language */
int word_count(void);
const struct word *word_at(int index);

#endif
