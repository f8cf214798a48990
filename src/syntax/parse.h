/* Text to tree: the only door to the scanner and the parser.
 *
 * Always returns a tree, of all that could be read; findings say what could not. A fresh scanner and parser serve each call;
 * both keep all state in it, so calls may nest and run in threads. Errors: kinds syntax, text, number, unit, date, limit,
 * and misplaced (a statement in a body where it has no place). */
#ifndef SYNTAX_PARSE_H
#define SYNTAX_PARSE_H

#include "base/diag.h"
#include "syntax/tree.h"

enum { PARSE_DEPTH_MOST = 32 }; /* { } within { }; deeper is the finding `limit` */

struct tree *parse_text(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings);
/* The same with no line read by hand, for the tests that compare the two: see syntax/plain.h. */
struct tree *parse_text_by_grammar(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings);

#endif
