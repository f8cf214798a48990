#include "emit/out.h"

enum { NUMBER_ROOM = 24 }; /* what dec_write and a whole number may need */
enum { STEPS_A_BYTE = 4 }; /* of work: what is written is as little without bound as what is planned */

struct out out_new(struct arena *arena, struct sink sink)
{
    sink.load = sink.load ? sink.load : OUT_FULL;
    size_t room = sink.load + OUT_FULL / 4;
    return (struct out){ .arena = arena, .sink = sink, .at = arena_alloc(arena, room), .room = room };
}

struct out out_scratch(struct arena *arena)
{
    return (struct out){ .arena = arena, .sink.load = OUT_FULL };
}

char *out_grow(struct out *out, size_t length)
{
    size_t room = out->room ? 2 * out->room : 256;
    while (room - out->used < length)
        room *= 2;
    char *moved = arena_alloc(out->arena, room);
    if (out->used)
        memcpy(moved, out->at, out->used);
    out->at = moved;
    out->room = room;
    return moved + out->used;
}

bool out_flush(struct out *out)
{
    arena_work(out->arena, (uint64_t)STEPS_A_BYTE * out->used);
    if (!out->failed && out->used)
        out->failed = !out->sink.write(out->sink.context, out->at, out->used);
    out->used = 0;
    return !out->failed;
}

bool out_settle(struct out *out)
{
    return out->used < out->sink.load ? !out->failed : out_flush(out);
}

void out_chars(struct out *out, char c, int count)
{
    if (count <= 0)
        return;
    memset(out_room(out, (size_t)count), c, (size_t)count);
    out->used += (size_t)count;
}

void out_int(struct out *out, int64_t number)
{
    char digits[NUMBER_ROOM];
    int at = NUMBER_ROOM;
    uint64_t rest = number < 0 ? 0 - (uint64_t)number : (uint64_t)number;
    do
        digits[--at] = (char)('0' + rest % 10);
    while ((rest /= 10) != 0);
    if (number < 0)
        digits[--at] = '-';
    out_bytes(out, digits + at, (size_t)(NUMBER_ROOM - at));
}

void out_dec(struct out *out, struct dec number)
{
    char *to = out_room(out, NUMBER_ROOM);
    out->used += (size_t)dec_write(to, number);
}

void out_weight(struct out *out, struct weight weight, enum weight_unit unit)
{
    out_dec(out, weight_in(weight, unit));
}

void out_date(struct out *out, struct date date)
{
    if (!date_is_set(date))
        return;
    char *to = out_room(out, 11);
    out->used += (size_t)date_write(to, date);
}
