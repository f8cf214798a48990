#include "emit/csv_kept.h"

#include "base/vec.h"

#include <stdio.h>

/* A day of a block: the same for all who are alike in it. */
struct day_kept {
    const char *rest; /* the cells that are the same all day, from behind the name on */
    size_t length;
    VEC(uint8_t) lifts; /* of each entry: its place in alike->lifts */
};
struct block_kept {
    const struct lift *const *lifts; /* the array of its alikes: which block it is */
    VEC(struct day_kept) days;
    size_t rest_most;
    struct block_kept *next;
};

/* The text of one mark: for each entry of its lift, in order, how many rows (a byte) and the bytes of all its rows (two bytes);
 * then of each row its length (two bytes) and its bytes. */
enum { ENTRY_HEAD = 3, ROW_HEAD = 2, PIECE = 64 /* bytes copied at once: most rows and heads are shorter */ };
enum { SEQ_ROOM = 12 };
struct text_kept {
    const char *at; /* NULL: not kept */
    size_t bytes;   /* of its rows, without head and number */
    int rows;
};

struct kept {
    struct arena *arena;
    size_t bytes;
    struct block_kept *blocks;
    VEC(struct text_kept) texts; /* by mark */
    /* of the plan at hand */
    const struct alike *alike;          /* NULL: nothing is known and nothing learnt */
    const char *known[ALIKE_LIFTS_MOST]; /* what is still to be written of a known lift; NULL: it is not */
    struct out lifts[ALIKE_LIFTS_MOST];  /* what is learnt of the others */
    int rows[ALIKE_LIFTS_MOST];          /* and how many rows */
    struct out head;                    /* of the day */
    struct block_kept *block;           /* being learnt, or NULL */
    struct out *lift;                   /* of the entry at hand; NULL: nothing is learnt of it */
    size_t entry_at;                    /* where it begins */
    bool learns;
};

struct kept *kept_new(struct arena *arena)
{
    struct kept *kept = NEW(arena, struct kept);
    kept->arena = arena;
    kept->head = out_scratch(arena);
    for (int i = 0; i < ALIKE_LIFTS_MOST; i++)
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
    return mark < kept->texts.count && kept->texts.at[mark].at;
}

static inline size_t number_at(const char *at)
{
    uint16_t number;
    memcpy(&number, at, sizeof number);
    return number;
}

static void number_put(char *at, size_t number)
{
    uint16_t low = (uint16_t)number;
    memcpy(at, &low, sizeof low);
}

/* ---- writing again ---- */

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

/* One entry's rows; `at` then stands behind them. There is room. */
static inline char *rows_put(char *to, const char **at, const char *head, size_t head_length, int *seq)
{
    const char *from = *at + ENTRY_HEAD;
    for (int left = (uint8_t)**at; left > 0; left--) {
        size_t length = number_at(from);
        to = put_seq(put(to, head, head_length), ++*seq);
        to = put(to, from + ROW_HEAD, length);
        from += ROW_HEAD + length;
    }
    *at = from;
    return to;
}

static size_t rows_room(size_t bytes, int rows, size_t head_length)
{
    return bytes + (size_t)rows * (head_length + SEQ_ROOM) + PIECE;
}

bool kept_knows(const struct kept *kept, const struct alike *alike)
{
    bool all = block_find(kept, alike);
    for (int i = 0; i < alike->count; i++)
        all &= alike->known[i] = is_kept(kept, alike->marks[i]);
    return all;
}

/* Room for all rows of hers. */
static char *plan_room(const struct kept *kept, const struct alike *alike, size_t head_most, struct out *out)
{
    size_t room = PIECE;
    for (int i = 0; i < alike->count; i++) {
        const struct text_kept *text = &kept->texts.at[alike->marks[i]];
        room += rows_room(text->bytes, text->rows, head_most);
    }
    return out_room(out, room);
}

bool kept_write(struct kept *kept, const char *name, const struct alike *alike, struct out *out)
{
    const char *at[ALIKE_LIFTS_MOST];
    const struct block_kept *block = block_find(kept, alike);
    size_t name_length = strlen(name);
    for (int i = 0; i < alike->count; i++)
        at[i] = kept->texts.at[alike->marks[i]].at;
    out_clear(&kept->head);
    char *head = out_room(&kept->head, name_length + block->rest_most + (size_t)2 * PIECE);
    char *to = plan_room(kept, alike, name_length + block->rest_most, out), *begun = to;
    memcpy(head, name, name_length);
    for (int i = 0; i < block->days.count; i++) {
        const struct day_kept *day = &block->days.at[i];
        int seq = 0;
        memcpy(head + name_length, day->rest, day->length);
        for (int j = 0; j < day->lifts.count; j++)
            to = rows_put(to, &at[day->lifts.at[j]], head, name_length + day->length, &seq);
    }
    out->used += (size_t)(to - begun);
    return out_settle(out);
}

/* ---- a plan that is being written ---- */

void kept_begin(struct kept *kept, const struct plan *plan)
{
    const struct alike *alike = kept->alike = plan->alike;
    if (!alike)
        return;
    kept->learns = !plan->said && kept->bytes < KEPT_MOST;
    kept->lift = NULL;
    kept->block = kept->learns && !block_find(kept, alike) ? NEW(kept->arena, struct block_kept) : NULL;
    for (int i = 0; i < alike->count; i++) {
        kept->known[i] = alike->known[i] ? kept->texts.at[alike->marks[i]].at : NULL;
        kept->rows[i] = 0;
        out_clear(&kept->lifts[i]);
    }
}

void kept_day(struct kept *kept, const char *head, size_t length)
{
    if (!kept->alike)
        return;
    out_clear(&kept->head);
    out_bytes(&kept->head, head, length);
    out_room(&kept->head, PIECE);
    if (!kept->block)
        return;
    size_t name = (size_t)((const char *)memchr(head, ',', length) - head);
    struct day_kept day = { .rest = arena_copy(kept->arena, head + name, length - name), .length = length - name };
    vec_add(kept->arena, &kept->block->days, day);
    kept->block->rest_most = day.length > kept->block->rest_most ? day.length : kept->block->rest_most;
}

bool kept_entry(struct kept *kept, const struct lift *lift, int *seq, struct out *out)
{
    if (!kept->alike)
        return false;
    int at = alike_place(kept->alike, lift);
    if (kept->block)
        vec_add(kept->arena, &kept->block->days.at[kept->block->days.count - 1].lifts, (uint8_t)at);
    kept->lift = kept->learns && !kept->known[at] ? &kept->lifts[at] : NULL;
    if (kept->known[at]) {
        const char *entry = kept->known[at];
        char *begun = out_room(out, rows_room(number_at(entry + 1), (uint8_t)*entry, kept->head.used));
        out->used += (size_t)(rows_put(begun, &kept->known[at], kept->head.at, kept->head.used, seq) - begun);
        return true;
    }
    if (kept->lift) {
        kept->entry_at = kept->lift->used;
        out_bytes(kept->lift, "\0\0", ENTRY_HEAD);
    }
    return false;
}

void kept_row(struct kept *kept, const char *bytes, size_t length)
{
    if (!kept->lift)
        return;
    char head[ROW_HEAD], *entry = kept->lift->at + kept->entry_at;
    size_t all = number_at(entry + 1) + length;
    kept->learns &= (uint8_t)*entry < UINT8_MAX && all <= UINT16_MAX;
    if (!kept->learns)
        return;
    ++*entry;
    kept->rows[kept->lift - kept->lifts]++;
    number_put(entry + 1, all);
    number_put(head, length);
    out_bytes(kept->lift, head, ROW_HEAD);
    out_bytes(kept->lift, bytes, length);
}

void kept_end(struct kept *kept)
{
    if (!kept->alike || !kept->learns)
        return;
    if (kept->block) {
        kept->block->lifts = kept->alike->lifts;
        kept->block->next = kept->blocks;
        kept->blocks = kept->block;
    }
    for (int i = 0; i < kept->alike->count; i++) {
        if (kept->alike->known[i])
            continue;
        out_room(&kept->lifts[i], PIECE);
        while (kept->texts.count <= kept->alike->marks[i])
            vec_add(kept->arena, &kept->texts, (struct text_kept){ 0 });
        const char *text = arena_copy(kept->arena, kept->lifts[i].at, kept->lifts[i].used + PIECE);
        kept->texts.at[kept->alike->marks[i]] = (struct text_kept){ text, kept->lifts[i].used, kept->rows[i] };
        kept->bytes += kept->lifts[i].used;
    }
}
