/* What a byte may be part of. Private to syntax/. */
#ifndef SYNTAX_CLASSES_H
#define SYNTAX_CLASSES_H

#include <stdbool.h>
#include <stdint.h>

enum {
    BLANK = 1,
    LINE_END = 2,
    DIGIT = 4,
    LETTER = 8,
    WITHIN = 16, /* in a word, but not at its start */
    SIGN = 32,
    CONTROL = 64,
    UNPLAIN = 128 /* in a text in quotes: ends it, or is to be looked at */
};

/* Bytes above 0x7f are letters until foreign.c has looked at them. */
extern const uint8_t byte_classes[256]; /* pieces.c */

static inline bool is_class(const char *at, int class)
{
    return byte_classes[(unsigned char)*at] & class;
}

/* Where bytes of a class end. Behind the text stands a NUL, which ends all but control characters. */
static inline const char *past(const char *at, int class)
{
    while (is_class(at, class))
        at++;
    return at;
}

/* ---- pieces.c ---- */
/* Behind the " that ends the text which starts with the one at `at`; NULL: something in it is to be looked at, or it never ends.
 * `end` is the end of all text. */
const char *plain_text_end(const char *at, const char *end);

#endif
