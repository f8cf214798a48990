/* What a name is: letters of any script, digits, - and _; it starts with a letter and does not end in -. */
#ifndef BASE_NAME_H
#define BASE_NAME_H

#include "base/arena.h"

#include <stdbool.h>

enum { NAME_LETTERS_MOST = 100 };

bool name_is_plain(const char *text); /* UTF-8; marks may follow a letter; at most NAME_LETTERS_MOST characters */

/* The name in Unicode's form NFC, in which é is one character however it was typed; bytes that are no UTF-8 stay. */
const char *name_composed(struct arena *arena, struct interner *interner, const char *bytes, size_t length);

#endif
