#include "emit/pages_kept.h"

/* What a block in a gym has on its pages. */
struct block_pages {
    const struct lift *const *lifts; /* the array of its alikes: which block it is */
    const struct gym *gym;
    VEC(struct page_pieces) pages;
    struct block_pages *next;
};

struct mark_pieces {
    const struct block_pages *block; /* NULL: not kept */
    VEC(struct entry_piece) entries;
};

struct pages_kept {
    struct arena *arena;
    size_t bytes;
    struct block_pages *blocks;
    VEC(struct mark_pieces) marks;
    /* of the plan at hand */
    const struct alike *alike;  /* NULL: nothing is learnt */
    struct block_pages *block;  /* being learnt, or known */
    bool new_block, new_mark[ALIKE_LIFTS_MOST];
    struct mark_pieces learnt[ALIKE_LIFTS_MOST];
};

struct pages_kept *pages_kept_new(struct arena *arena)
{
    struct pages_kept *kept = NEW(arena, struct pages_kept);
    kept->arena = arena;
    return kept;
}

static const struct mark_pieces *mark_find(const struct pages_kept *kept, int mark)
{
    return mark < kept->marks.count && kept->marks.at[mark].block ? &kept->marks.at[mark] : NULL;
}

bool pages_known(const struct pages_kept *kept, const struct alike *alike)
{
    bool all = alike->count > 0;
    for (int i = 0; i < alike->count; i++)
        all &= mark_find(kept, alike->marks[i]) != NULL;
    for (int i = 0; i < alike->count; i++)
        alike->known[i] = all;
    return all;
}

struct pages_walk pages_walk(const struct pages_kept *kept, const struct alike *alike)
{
    const struct block_pages *block = kept->marks.at[alike->marks[0]].block;
    struct pages_walk walk = { .pages = block->pages.at, .count = block->pages.count };
    for (int i = 0; i < alike->count; i++)
        walk.next[i] = kept->marks.at[alike->marks[i]].entries.at;
    return walk;
}

/* ---- a plan that is being written ---- */

void pages_begin(struct pages_kept *kept, const struct plan *plan)
{
    const struct alike *alike = plan->alike;
    kept->alike = alike && alike->count && !plan->said && kept->bytes < PAGES_KEPT_MOST ? alike : NULL;
    if (!kept->alike)
        return;
    kept->block = kept->blocks;
    while (kept->block && (kept->block->lifts != alike->lifts || kept->block->gym != plan->athlete->gym))
        kept->block = kept->block->next;
    kept->new_block = !kept->block;
    if (kept->new_block) {
        kept->block = NEW(kept->arena, struct block_pages);
        kept->block->lifts = alike->lifts;
        kept->block->gym = plan->athlete->gym;
    }
    for (int i = 0; i < alike->count; i++) {
        kept->new_mark[i] = !mark_find(kept, alike->marks[i]);
        kept->learnt[i] = (struct mark_pieces){ .block = kept->block };
    }
}

static struct piece piece_of(struct pages_kept *kept, const char *bytes, size_t length)
{
    kept->bytes += length;
    return (struct piece){ arena_copy(kept->arena, bytes, length), length };
}

/* The page being learnt; NULL: none is. */
static struct page_pieces *page_now(struct pages_kept *kept)
{
    return kept->alike && kept->new_block ? &kept->block->pages.at[kept->block->pages.count - 1] : NULL;
}

static struct day_pieces *day_now(struct pages_kept *kept)
{
    struct page_pieces *page = page_now(kept);
    return page ? &page->days.at[page->days.count - 1] : NULL;
}

void page_begin(struct pages_kept *kept, const char *title)
{
    if (!kept->alike || !kept->new_block)
        return;
    struct page_pieces page = { .title = piece_of(kept, title, strlen(title)).bytes };
    vec_add(kept->arena, &kept->block->pages, page);
}

void page_head(struct pages_kept *kept, bool after, const char *bytes, size_t length)
{
    struct page_pieces *page = page_now(kept);
    if (page)
        *(after ? &page->after : &page->before) = piece_of(kept, bytes, length);
}

void page_day(struct pages_kept *kept, const char *bytes, size_t length)
{
    struct page_pieces *page = page_now(kept);
    if (page)
        vec_add(kept->arena, &page->days, ((struct day_pieces){ .head = piece_of(kept, bytes, length) }));
}

static void shares_learn(struct pages_kept *kept, const struct plan_entry *entry, struct entry_piece *piece)
{
    VEC(struct run_share) shares = { 0 };
    for (int i = 0; i < entry->group_count; i++)
        for (int j = 0; j < entry->groups[i].run_count && entry->groups[i].role != ROLE_WARM_UP; j++)
            vec_add(kept->arena, &shares, run_share_of(entry, &entry->groups[i], &entry->groups[i].runs[j]));
    piece->shares = shares.at;
    piece->share_count = shares.count;
}

void page_entry(struct pages_kept *kept, const struct plan_day *planned, int index, const char *bytes, size_t length)
{
    const struct plan_entry *entry = &planned->entries[index];
    struct day_pieces *day = day_now(kept);
    if (!kept->alike)
        return;
    int at = alike_place(kept->alike, entry->lift);
    if (day)
        vec_add(kept->arena, &day->lifts, (uint8_t)at);
    if (!kept->new_mark[at])
        return;
    struct entry_piece piece = { .text = piece_of(kept, bytes, length), .seconds = plan_entry_seconds(planned, index) };
    shares_learn(kept, entry, &piece);
    vec_add(kept->arena, &kept->learnt[at].entries, piece);
}

void page_day_foot(struct pages_kept *kept, const char *bytes, size_t length)
{
    struct day_pieces *day = day_now(kept);
    if (day)
        day->foot = piece_of(kept, bytes, length);
}

void page_foot(struct pages_kept *kept, const char *bytes, size_t length)
{
    struct page_pieces *page = page_now(kept);
    if (page)
        page->foot = piece_of(kept, bytes, length);
}

void pages_end(struct pages_kept *kept)
{
    if (!kept->alike)
        return;
    if (kept->new_block) {
        kept->block->next = kept->blocks;
        kept->blocks = kept->block;
    }
    for (int i = 0; i < kept->alike->count; i++) {
        if (!kept->new_mark[i])
            continue;
        while (kept->marks.count <= kept->alike->marks[i])
            vec_add(kept->arena, &kept->marks, (struct mark_pieces){ 0 });
        kept->marks.at[kept->alike->marks[i]] = kept->learnt[i];
    }
}
