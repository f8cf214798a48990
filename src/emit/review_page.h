/* The page of a review: what its parts share. For the review's files in emit/ alone. */
#ifndef EMIT_REVIEW_PAGE_H
#define EMIT_REVIEW_PAGE_H

#include "emit/lines.h"
#include "plan/review.h"

enum { REVIEW_NAME = 2 }; /* the column where rows begin */

struct review_page {
    struct out *out;
    struct arena *arena;
    struct lines lines;
    struct out say; /* a phrase in the making */
    const struct review *review;
};

/* ---- phrases and lines: as_review.c ---- */

struct out *review_say(struct review_page *page);        /* a new phrase */
const char *review_said(struct review_page *page);       /* it, ended; good until the next */
void review_headline(struct review_page *page, const char *text); /* an empty line before it */
void review_row(struct review_page *page);               /* begins a line */
void review_right(struct review_page *page, int edge, const char *text); /* ends before column `edge` */
struct review_head {
    int edge;
    const char *word;
};
void review_heads(struct review_page *page, const char *first, const struct review_head *heads, int count); /* over columns */
void review_name(struct review_page *page, const char *name, int column); /* one longer has a line alone */
void review_remark(struct review_page *page, const char *text);  /* a line of its own, wrapped */

/* ---- numbers, in the unit of her gym; halves away from zero ---- */

struct dec review_mean(struct ratio sum, int64_t count, enum weight_unit unit, struct dec grain); /* of 1e-10 kg */
const char *review_tenth(struct review_page *page, struct ratio number); /* "6.5" */
/* "+12.5": with its sign on lifts that load the body. */
const char *review_shown(struct review_page *page, const struct lift *lift, struct dec load);

/* ---- parts ---- */

void review_chart(struct review_page *page); /* the max over time: review_chart.c */
void review_table(struct review_page *page); /* planned and done: review_table.c */

#endif
