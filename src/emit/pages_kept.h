/* Pages of training sheets that were written, kept in pieces for the athletes who are alike (plan/alike.h): what is said of an entry
 * by its lift's mark, what stands around the entries by block and gym. Her name, her own notes and the week's totals are no pieces.
 *
 * Owner: the arena given to pages_kept_new, of which the pieces take PAGES_KEPT_MOST bytes at most; what comes later is not kept. */
#ifndef EMIT_PAGES_KEPT_H
#define EMIT_PAGES_KEPT_H

#include "base/vec.h"
#include "plan/alike.h"

enum { PAGES_KEPT_MOST = 64 << 20 };

struct piece {
    const char *bytes;
    size_t length;
};
struct entry_piece {
    struct piece text;
    const struct run_share *shares; /* what its runs add to the week's totals */
    int share_count;
    int64_t seconds;
};
struct day_pieces {
    struct piece head, foot;
    VEC(uint8_t) lifts; /* of each entry: its place in alike->lifts */
};
struct page_pieces {
    const char *title;          /* beside her name */
    struct piece before, after; /* the head of the page, but for her notes, which stand in between on her first page */
    VEC(struct day_pieces) days;
    struct piece foot; /* below the totals */
};

struct pages_kept;
struct pages_kept *pages_kept_new(struct arena *arena);

/* A plan that is being written, shown as it goes: pages_begin, then for each page page_begin, page_piece with `before` and `after`,
 * for each day page_day, page_entry and page_day_foot, and page_foot; at last pages_end. What is new is learnt. */
void pages_begin(struct pages_kept *kept, const struct plan *plan);
void page_begin(struct pages_kept *kept, const char *title);
void page_head(struct pages_kept *kept, bool after, const char *bytes, size_t length);
void page_day(struct pages_kept *kept, const char *bytes, size_t length);
void page_entry(struct pages_kept *kept, const struct plan_day *day, int index, const char *bytes, size_t length);
void page_day_foot(struct pages_kept *kept, const char *bytes, size_t length);
void page_foot(struct pages_kept *kept, const char *bytes, size_t length);
void pages_end(struct pages_kept *kept);

/* Whether all of her pages are known. Since totals are of whole weeks, alike->known is set for all of her lifts or for none. */
bool pages_known(const struct pages_kept *kept, const struct alike *alike);

/* Her pages, in order, and the next entry of a lift (its place in alike->lifts), in order of the pages. */
struct pages_walk {
    const struct page_pieces *pages;
    int count;
    const struct entry_piece *next[ALIKE_LIFTS_MOST];
};
struct pages_walk pages_walk(const struct pages_kept *kept, const struct alike *alike);

#endif
