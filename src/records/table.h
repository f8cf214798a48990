/* What all spreadsheets that come in share: the first row names the columns, in any order; cells are split by `,` or, with
 * decimal commas, by `;`. Facts are the business of the form's own reader, as are the findings about them.
 *
 * Owner: everything lives in the arena given. Findings have the form's kind. */
#ifndef RECORDS_TABLE_H
#define RECORDS_TABLE_H

#include "base/csv.h"
#include "base/dec.h"
#include "base/diag.h"
#include "base/vec.h"

enum { TABLE_COLUMNS_MOST = 32, TABLE_RECENT = 4 };

struct table;
struct table_form {
    enum kind kind;
    const char *noun;         /* "roster": a roster has no column "wight" */
    const char *const *names; /* in small letters; a column is its index here */
    int count;
    const char *all_names, *sample; /* of column names, for messages */
    /* After the first row: false when the rows mean nothing without what is missing there, which it has said. */
    bool (*head)(struct table *table, const struct csv_row *row);
    void (*row)(struct table *table, const struct csv_row *row);
    bool (*line)(struct table *table, size_t start, size_t end); /* NULL, or as csv_taker's, after the first row */
};

/* A cell that cannot be what its column holds. */
struct misfit {
    struct span at;
    int column;
    const char *text, *wanted, *help; /* "is not a date", and what to write */
};

struct table {
    struct arena *arena;
    struct interner *interner;
    struct source *source;
    struct findings *findings;
    const struct table_form *form;
    void *owner;                   /* the form's own */
    bool started, broken;          /* broken: `head` said no */
    bool has_unknown;              /* a column it does not know: what seems to be missing may stand there */
    bool decimal_comma;            /* cells are split by ';' */
    int place[TABLE_COLUMNS_MOST]; /* where a column stands in the file; -1: nowhere */
    int width;                     /* columns named in the first row */
    struct recent {
        const char *at[TABLE_RECENT]; /* NULL: none yet */
        int next;
    } recent[TABLE_COLUMNS_MOST]; /* names met: most are met again soon */
    VEC(struct misfit) misfits;    /* of the row being read; `row` empties it */
};

/* Reads the table's source: table->form, arena, interner, source, findings and owner are set. False where it cannot be read as
 * a table (another encoding, an open quote, nothing in it), with the finding. */
bool table_read(struct table *table);
/* After table_read, once more from the first byte of a row on and before that of another, in a text without quotes. */
void table_read_again(struct table *table, size_t from, size_t past);

/* For `head`: a finding for each column that the form does not know, with the nearest name. */
void table_unknown_say(struct table *table, const struct csv_row *row);
/* The column of that name, capitals aside; -1: none. */
int table_column(const struct table_form *form, const char *text);
/* The nearest of the form's names, or -1. */
int table_nearest(const struct table_form *form, const char *text);

/* The bytes from a place of the table on. */
static inline const char *table_text(const struct table *table, uint32_t place)
{
    return table->source->text + (place - table->source->base);
}
static inline char table_delimiter(const struct table *table)
{
    return table->decimal_comma ? ';' : ',';
}
struct span table_span(const struct table *table, const struct csv_cell *cell);
struct span table_row_span(const struct table *table, const struct csv_row *row);
/* NULL: empty, or no such column. */
static inline const struct csv_cell *table_cell(const struct table *table, const struct csv_row *row, int column)
{
    int place = table->place[column];
    return place >= 0 && place < row->count && row->cells[place].length > 0 ? &row->cells[place] : NULL;
}
const char *table_name(struct table *table, const struct csv_cell *cell); /* interned, in NFC as in the coach's files */
/* A number without a sign, in a file with `;` also with a decimal comma. */
bool table_number(const struct table *table, const char *text, size_t length, struct dec *number);
bool text_is_ascii(const char *text, size_t length);
bool text_is_word(const char *text, const char *word); /* capitals aside; the word is in small letters */

void table_misfit(struct table *table, int column, const struct csv_cell *cell, const char *wanted, const char *help);
/* Says the row's misfits, if any, in one finding: where it is more than one, most often the whole row has moved. */
void table_misfits_say(struct table *table);
/* Whether a cell stands under no column, which it then says. */
bool table_has_too_many(struct table *table, const struct csv_row *row);
void table_say(struct table *table, struct span at, const char *message, const char *help);

#endif
