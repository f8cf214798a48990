#include "emit/csv_kept.h"

#include "base/vec.h"

#include <stdio.h>

/* A day of a block: the same for all who are alike in it. */
struct day_kept {
    const char *head;
    size_t head_length;
    VEC(uint8_t) lifts; /* of each entry: its place in alike->lifts */
};
struct block_kept {
    const struct lift *const *lifts; /* the array of its alikes: which block it is */
    VEC(struct day_kept) days;
    struct block_kept *next;
};

/* Of one mark: for each entry of its lift, in order, how many rows (a byte) and the bytes of all its rows (two bytes, the low one
 * first); then of each row its length (two bytes) and its bytes. */
enum { ENTRY_HEAD = 3, ROW_HEAD = 2, PIECE = 32 /* bytes copied at once */ };
struct text_kept {
    const char *bytes; /* NULL: not kept */
};

struct kept {
    struct arena *arena;
    size_t bytes;
    struct block_kept *blocks;
    VEC(struct text_kept) texts; /* by mark */
    /* while learning */
    const struct alike *alike;
    struct block_kept *block; /* being learnt, or NULL */
    struct out lifts[KEPT_LIFTS_MOST];
    bool learns[KEPT_LIFTS_MOST];
    struct out *lift; /* of the entry at hand; NULL: its rows are known */
    size_t entry_at;  /* where it begins */
    bool fits;
};

struct kept *kept_new(struct arena *arena)
{
    struct kept *kept = NEW(arena, struct kept);
    kept->arena = arena;
    for (int i = 0; i < KEPT_LIFTS_MOST; i++)
        kept->lifts[i] = out_scratch(arena);
    return kept;
}

static struct block_kept *block_find(const struct kept *kept, const struct alike *alike)
{
    struct block_kept *block = kept->blocks;
    while (block && block->lifts != alike->lifts)
        block = block->next;
    return block;
}

static bool is_kept(const struct kept *kept, int mark)
{
    return mark < kept->texts.count && kept->texts.at[mark].bytes;
}

/* ---- learning ---- */

bool kept_begin(struct kept *kept, const struct plan *plan)
{
    const struct alike *alike = plan->alike;
    if (!alike || alike->count > KEPT_LIFTS_MOST || kept->bytes >= KEPT_MOST)
        return false;
    kept->alike = alike;
    kept->fits = true;
    kept->lift = NULL;
    kept->block = block_find(kept, alike) ? NULL : NEW(kept->arena, struct block_kept);
    for (int i = 0; i < alike->count; i++) {
        kept->learns[i] = !is_kept(kept, alike->marks[i]);
        out_clear(&kept->lifts[i]);
    }
    return true;
}

void kept_day(struct kept *kept, const char *head, size_t length)
{
    if (!kept->block)
        return;
    struct day_kept day = { .head = arena_copy(kept->arena, head, length), .head_length = length };
    vec_add(kept->arena, &kept->block->days, day);
}

void kept_entry(struct kept *kept, const struct lift *lift)
{
    int at = 0;
    while (at < kept->alike->count && kept->alike->lifts[at] != lift)
        at++;
    kept->lift = NULL;
    kept->fits &= at < kept->alike->count;
    if (!kept->fits)
        return;
    if (kept->block)
        vec_add(kept->arena, &kept->block->days.at[kept->block->days.count - 1].lifts, (uint8_t)at);
    if (!kept->learns[at])
        return;
    kept->lift = &kept->lifts[at];
    kept->entry_at = kept->lift->used;
    out_bytes(kept->lift, "\0\0", ENTRY_HEAD);
}

static size_t number_at(const char *at)
{
    return (size_t)(uint8_t)at[0] | (size_t)(uint8_t)at[1] << 8;
}

static void number_put(char *at, size_t number)
{
    at[0] = (char)(number & 0xFF);
    at[1] = (char)(number >> 8);
}

void kept_row(struct kept *kept, const char *bytes, size_t length)
{
    if (!kept->lift)
        return;
    char head[ROW_HEAD], *entry = kept->lift->at + kept->entry_at;
    size_t all = number_at(entry + 1) + length;
    kept->fits &= (uint8_t)*entry < UINT8_MAX && all <= UINT16_MAX;
    if (!kept->fits)
        return;
    ++*entry;
    number_put(entry + 1, all);
    number_put(head, length);
    out_bytes(kept->lift, head, ROW_HEAD);
    out_bytes(kept->lift, bytes, length);
}

void kept_end(struct kept *kept)
{
    if (!kept->fits)
        return;
    if (kept->block) {
        kept->block->lifts = kept->alike->lifts;
        kept->block->next = kept->blocks;
        kept->blocks = kept->block;
    }
    for (int i = 0; i < kept->alike->count; i++) {
        if (!kept->learns[i])
            continue;
        while (kept->texts.count <= kept->alike->marks[i])
            vec_add(kept->arena, &kept->texts, (struct text_kept){ 0 });
        out_room(&kept->lifts[i], PIECE);
        kept->texts.at[kept->alike->marks[i]].bytes = arena_copy(kept->arena, kept->lifts[i].at, kept->lifts[i].used + PIECE);
        kept->bytes += kept->lifts[i].used;
    }
}

/* ---- writing again ---- */

bool kept_knows(const struct kept *kept, const struct alike *alike)
{
    for (int i = 0; i < alike->count; i++)
        if (!is_kept(kept, alike->marks[i]))
            return false;
    return block_find(kept, alike);
}

/* In whole pieces, which is faster than to the byte: what is too much is written over by what follows. */
static inline char *put(char *to, const char *bytes, size_t length)
{
    for (size_t at = 0; at < length; at += PIECE)
        memcpy(to + at, bytes + at, PIECE);
    return to + length;
}

static inline char *put_seq(char *to, int seq)
{
    if (seq < 10) {
        *to = (char)('0' + seq);
        return to + 1;
    }
    if (seq < 100) {
        to[0] = (char)('0' + seq / 10);
        to[1] = (char)('0' + seq % 10);
        return to + 2;
    }
    return to + sprintf(to, "%d", seq);
}

/* One entry's rows; returns what follows them in the text. */
static const char *entry_write(const char *at, const char *head, size_t head_length, int *seq, struct out *out)
{
    enum { SEQ_ROOM = 12 };
    int rows = (uint8_t)*at, number = *seq;
    char *to = out_room(out, number_at(at + 1) + (size_t)rows * (head_length + SEQ_ROOM) + PIECE), *begun = to;
    at += ENTRY_HEAD;
    for (int i = 0; i < rows; i++) {
        size_t length = number_at(at);
        to = put_seq(put(to, head, head_length), ++number);
        to = put(to, at + ROW_HEAD, length);
        at += ROW_HEAD + length;
    }
    out->used += (size_t)(to - begun);
    *seq = number;
    return at;
}

bool kept_write(struct kept *kept, const char *name, const struct alike *alike, struct out *out)
{
    const char *at[KEPT_LIFTS_MOST];
    const struct block_kept *block = block_find(kept, alike);
    struct out *head = &kept->lifts[0];
    for (int i = 0; i < alike->count; i++)
        at[i] = kept->texts.at[alike->marks[i]].bytes;
    for (int i = 0; i < block->days.count; i++) {
        const struct day_kept *day = &block->days.at[i];
        int seq = 0;
        out_clear(head);
        out_text(head, name);
        out_bytes(head, day->head, day->head_length);
        out_room(head, PIECE);
        for (int j = 0; j < day->lifts.count; j++)
            at[day->lifts.at[j]] = entry_write(at[day->lifts.at[j]], head->at, head->used, &seq, out);
        out_settle(out);
    }
    return !out->failed;
}
