#include "emit/csv_kept.h"

#include "base/vec.h"

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

/* Of one mark: for each entry of its lift, in order, how many rows (a byte), and of each row its length (two bytes, the low one
 * first) and its bytes. */
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
    size_t rows_at;   /* where its number of rows stands */
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
    kept->rows_at = kept->lift->used;
    out_char(kept->lift, 0);
}

void kept_row(struct kept *kept, const char *bytes, size_t length)
{
    if (!kept->lift)
        return;
    kept->fits &= (uint8_t)kept->lift->at[kept->rows_at] < UINT8_MAX && length <= UINT16_MAX;
    if (!kept->fits)
        return;
    kept->lift->at[kept->rows_at]++;
    out_char(kept->lift, (char)(length & 0xFF));
    out_char(kept->lift, (char)(length >> 8));
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
        kept->texts.at[kept->alike->marks[i]].bytes = arena_copy(kept->arena, kept->lifts[i].at, kept->lifts[i].used);
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

static inline size_t row_length(const char *at)
{
    return (size_t)(uint8_t)at[0] | (size_t)(uint8_t)at[1] << 8;
}

static char *put(char *to, const char *bytes, size_t length)
{
    memcpy(to, bytes, length);
    return to + length;
}

/* One entry's rows; returns what follows them in the text. */
static const char *entry_write(const char *at, const char *head, size_t head_length, int *seq, struct out *out)
{
    enum { SEQ_ROOM = 12 };
    for (int rows = (uint8_t)*at++; rows; rows--) {
        size_t length = row_length(at);
        char *begun = out_room(out, head_length + SEQ_ROOM + length), *to = put(begun, head, head_length);
        out->used += head_length;
        if (++*seq < 10) {
            *to++ = (char)('0' + *seq);
            out->used++;
        } else {
            out_int(out, *seq);
            to = out->at + out->used;
        }
        put(to, at + 2, length);
        out->used += length;
        at += 2 + length;
    }
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
        for (int j = 0; j < day->lifts.count; j++)
            at[day->lifts.at[j]] = entry_write(at[day->lifts.at[j]], head->at, head->used, &seq, out);
        out_settle(out);
    }
    return !out->failed;
}
