/* A syntax error on its way to its message. Private to complain.c and mistakes.c. */
#ifndef SYNTAX_COMPLAIN_H
#define SYNTAX_COMPLAIN_H

#include "syntax/reader.h"

struct complaint {
    struct parse *p;
    struct token here, before, earlier; /* the token that does not fit, the one before it, and the one before that */
    const int *wanted;
    int count;
    enum node_kind body;
    bool first; /* it starts its statement */
};

bool wants(const struct complaint *c, int token); /* the grammar would take it here */
void say(struct parse *p, struct span at, const char *message, const char *help);
const char *quoted(struct parse *p, struct token token); /* `as written` */

/* Each says its piece when it is this mistake, and tells so. */
bool stray_paren(const struct complaint *c);
bool reserved_word(const struct complaint *c);
bool missing_at(const struct complaint *c);
bool done_at(const struct complaint *c);
bool sign_for_word(const struct complaint *c);
bool missing_word(const struct complaint *c);
bool adjust_nobody(const struct complaint *c);
bool session_without_date(const struct complaint *c);
bool two_lifts(const struct complaint *c);
bool weeks_without_days(const struct complaint *c);
bool missing_comma(const struct complaint *c);
bool limit_at(const struct complaint *c);
bool missing_parens(const struct complaint *c);
bool behind_body(const struct complaint *c);
bool wrong_start(const struct complaint *c);
bool unknown_start(const struct complaint *c);

#endif
