/* Bytes on their way out: a buffer that grows, and empties into a sink when it is full enough.
 *
 * Owner: the buffer lives in the arena given. Without a sink it is a scratch text; out_clear forgets what it holds.
 * After a failed write all further bytes are dropped; out_settle and out_flush then return false. */
#ifndef EMIT_OUT_H
#define EMIT_OUT_H

#include "base/date.h"
#include "base/dec.h"
#include "emit/format.h"

#include <string.h>

enum { OUT_FULL = 1 << 16 }; /* the usual load of a sink: bytes handed to it at once, or a little more */

struct out {
    struct arena *arena;
    struct sink sink;
    char *at;
    size_t used, room;
    bool failed;
};

struct out out_new(struct arena *arena, struct sink sink);
struct out out_scratch(struct arena *arena);
char *out_grow(struct out *out, size_t length); /* makes room for more and returns where it goes */
bool out_settle(struct out *out);               /* between rows or pages: hands over what is held if it is a load */
bool out_flush(struct out *out);                /* hands over everything; counts as work */

static inline char *out_room(struct out *out, size_t length)
{
    return out->room - out->used >= length ? out->at + out->used : out_grow(out, length);
}
static inline void out_bytes(struct out *out, const char *bytes, size_t length)
{
    if (length)
        memcpy(out_room(out, length), bytes, length);
    out->used += length;
}
static inline void out_char(struct out *out, char c)
{
    *out_room(out, 1) = c;
    out->used++;
}
static inline void out_text(struct out *out, const char *text)
{
    out_bytes(out, text, strlen(text));
}
static inline void out_clear(struct out *out)
{
    out->used = 0;
}
void out_chars(struct out *out, char c, int count);
void out_int(struct out *out, int64_t number);
void out_dec(struct out *out, struct dec number);
void out_weight(struct out *out, struct weight weight, enum weight_unit unit); /* the number alone */
void out_date(struct out *out, struct date date);                              /* nothing for none */

#endif
