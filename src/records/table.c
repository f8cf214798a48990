#include "records/table.h"

#include "base/name.h"
#include "base/near.h"

#include <utf8proc.h>

struct span table_span(const struct table *table, const struct csv_cell *cell)
{
    return (struct span){ table->source->base + (uint32_t)cell->start, table->source->base + (uint32_t)cell->end };
}

struct span table_row_span(const struct table *table, const struct csv_row *row)
{
    return span_join(table_span(table, &row->cells[0]), table_span(table, &row->cells[row->count - 1]));
}

void table_say(struct table *table, struct span at, const char *message, const char *help)
{
    struct finding *finding = diag_add(table->findings, table->form->kind, at, "%s", message);
    diag_help(table->findings, finding, "%s", help);
}

/* The first row */

static char lower(char c)
{
    return (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

bool text_is_word(const char *text, const char *word)
{
    while (*text && lower(*text) == *word) {
        text++;
        word++;
    }
    return !*text && !*word;
}

int table_column(const struct table_form *form, const char *text)
{
    for (int i = 0; i < form->count; i++)
        if (text_is_word(text, form->names[i]))
            return i;
    return -1;
}

int table_nearest(const struct table_form *form, const char *text)
{
    enum { LONGEST = 16 };
    char small[LONGEST + 1] = "";
    for (int i = 0; i < LONGEST && text[i]; i++)
        small[i] = lower(text[i]);
    const char *nearest = word_nearest(small, form->names, form->count);
    return nearest ? table_column(form, nearest) : -1;
}

static void column_unknown(struct table *table, const struct csv_cell *cell)
{
    const struct table_form *form = table->form;
    struct finding *finding = diag_add(table->findings, form->kind, table_span(table, cell),
                                       "a %s has no column \"%s\"", form->noun, cell->text);
    int nearest = table_nearest(form, cell->text);
    if (nearest >= 0)
        diag_help(table->findings, finding, "did you mean %s?", form->names[nearest]);
    else
        diag_help(table->findings, finding, "the columns are %s; take this one out or rename it", form->all_names);
}

void table_unknown_say(struct table *table, const struct csv_row *row)
{
    for (int i = 0; i < row->count && table->has_unknown; i++)
        if (row->cells[i].length && table_column(table->form, row->cells[i].text) < 0)
            column_unknown(table, &row->cells[i]);
}

static void column_doubled(struct table *table, const struct csv_row *row, int column, int again)
{
    struct finding *finding = diag_add(table->findings, table->form->kind, table_span(table, &row->cells[again]),
                                       "the column %s stands here a second time", table->form->names[column]);
    diag_help(table->findings, finding, "leave one of the two out");
    diag_related(table->findings, finding, table_span(table, &row->cells[table->place[column]]),
                 "it stands here first");
}

/* The byte between the first two cells, blanks aside. */
static bool is_split_by_semicolon(const struct table *table, const struct csv_row *row)
{
    if (row->count < 2)
        return false;
    size_t at = row->cells[1].start;
    while (at > 0 && (table->source->text[at - 1] == ' ' || table->source->text[at - 1] == '\t'))
        at--;
    return at > 0 && table->source->text[at - 1] == ';';
}

static void first_row(struct table *table, const struct csv_row *row)
{
    table->decimal_comma = is_split_by_semicolon(table, row);
    for (int i = 0; i < row->count; i++) {
        const struct csv_cell *cell = &row->cells[i];
        if (cell->length == 0)
            continue;
        table->width = i + 1;
        int column = table_column(table->form, cell->text);
        if (column < 0)
            table->has_unknown = true;
        else if (table->place[column] >= 0)
            column_doubled(table, row, column, i);
        else
            table->place[column] = i;
    }
    table->broken = !table->form->head(table, row);
}

/* Cells */

const char *table_name(struct table *table, const struct csv_cell *cell)
{
    return name_composed(table->arena, table->interner, cell->text, cell->length);
}

bool table_number(const struct table *table, const char *text, size_t length, struct dec *number)
{
    const char *comma = table->decimal_comma ? memchr(text, ',', length) : NULL;
    if (!comma)
        return dec_parse(text, length, number);
    char *copy = arena_copy(table->arena, text, length);
    copy[comma - text] = '.';
    return dec_parse(copy, length, number);
}

void table_misfit(struct table *table, int column, const struct csv_cell *cell, const char *wanted, const char *help)
{
    struct misfit misfit = { table_span(table, cell), column, cell->text, wanted, help };
    vec_add(table->arena, &table->misfits, misfit);
}

/* Rows */

/* As they stand in the row, from the left. */
static void misfits_sort(struct table *table)
{
    for (int i = 1; i < table->misfits.count; i++) {
        struct misfit misfit = table->misfits.at[i];
        int at = i;
        for (; at > 0 && table->misfits.at[at - 1].at.start > misfit.at.start; at--)
            table->misfits.at[at] = table->misfits.at[at - 1];
        table->misfits.at[at] = misfit;
    }
}

void table_misfits_say(struct table *table)
{
    const char *const *names = table->form->names;
    if (table->misfits.count == 0)
        return;
    misfits_sort(table);
    const struct misfit *first = &table->misfits.at[0];
    if (table->misfits.count == 1) {
        struct finding *finding = diag_add(table->findings, table->form->kind, first->at, "\"%s\" under %s %s",
                                           first->text, names[first->column], first->wanted);
        diag_help(table->findings, finding, "%s", first->help);
        return;
    }
    const char *which = names[first->column];
    for (int i = 1; i < table->misfits.count; i++)
        which = arena_format(table->arena, i + 1 < table->misfits.count ? "%s, %s" : "%s and %s", which,
                             names[table->misfits.at[i].column]);
    struct finding *finding =
        diag_add(table->findings, table->form->kind, first->at, "%d cells of this row do not fit their columns: %s",
                 table->misfits.count, which);
    diag_help(table->findings, finding, "has the row moved to the side? \"%s\" under %s %s", first->text,
              names[first->column], first->wanted);
}

bool table_has_too_many(struct table *table, const struct csv_row *row)
{
    for (int i = table->width; i < row->count; i++) {
        if (row->cells[i].length == 0)
            continue;
        struct finding *finding = diag_add(table->findings, table->form->kind, table_span(table, &row->cells[i]),
                                           "\"%s\" stands under no column", row->cells[i].text);
        diag_help(table->findings, finding, "the first row names %d column%s; has this row moved to the side?",
                  table->width, table->width == 1 ? "" : "s");
        return true;
    }
    return false;
}

static bool on_row(void *context, const struct csv_row *row)
{
    struct table *table = context;
    if (table->started)
        table->form->row(table, row);
    else
        first_row(table, row);
    table->started = true;
    return !table->broken;
}

static bool on_line(void *context, size_t start, size_t end)
{
    struct table *table = context;
    return table->started && table->form->line && table->form->line(table, start, end);
}

static struct csv_taker taker_of(struct table *table)
{
    return (struct csv_taker){ on_row, on_line, table };
}

void table_read_again(struct table *table, size_t from, size_t past)
{
    struct csv_taker taker = taker_of(table);
    csv_read_again(table->arena, table->source->text, from, past, table_delimiter(table), &taker);
}

/* The file as a whole */

static struct span byte_span(const struct source *source, size_t byte)
{
    uint32_t start = source->base + (uint32_t)(byte < source->length ? byte : source->length);
    return (struct span){ start, start + (byte < source->length) };
}

/* From `at` on: how many bytes are ASCII, looked at eight at a time. */
static size_t ascii_from(const char *text, size_t at, size_t length)
{
    size_t begun = at;
    for (uint64_t eight; at + sizeof eight <= length; at += sizeof eight) {
        memcpy(&eight, text + at, sizeof eight);
        if (eight & UINT64_C(0x8080808080808080))
            break;
    }
    while (at < length && (unsigned char)text[at] < 0x80)
        at++;
    return at - begun;
}

bool text_is_ascii(const char *text, size_t length)
{
    return ascii_from(text, 0, length) == length;
}

/* A table saved in another encoding is said once, by its name. False: it cannot be read. */
static bool is_text(struct table *table)
{
    const struct source *source = table->source;
    const char *text = source->text;
    bool marked = source->length >= 2 && (memcmp(text, "\xFF\xFE", 2) == 0 || memcmp(text, "\xFE\xFF", 2) == 0);
    if (marked || memchr(text, '\0', source->length)) {
        table_say(table, byte_span(source, 0), "this table is saved as UTF-16, and setwright reads UTF-8",
                  "save it again and choose CSV with the encoding UTF-8");
        return false;
    }
    for (size_t at = 0; at < source->length;) {
        at += ascii_from(text, at, source->length);
        if (at == source->length)
            break;
        utf8proc_int32_t code;
        utf8proc_ssize_t size =
            utf8proc_iterate((const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(source->length - at), &code);
        if (size <= 0) {
            table_say(table, byte_span(source, at), "this letter is not UTF-8; the table is saved in an older encoding",
                      "save it again and choose CSV with the encoding UTF-8");
            return false;
        }
        at += (size_t)size;
    }
    return true;
}

bool table_read(struct table *table)
{
    const struct source *source = table->source;
    struct csv_taker taker = taker_of(table);
    const char *why = NULL;
    size_t at = 0;
    for (int i = 0; i < TABLE_COLUMNS_MOST; i++)
        table->place[i] = -1;
    if (!is_text(table))
        return false;
    if (!csv_read(table->arena, source->text, source->length, &taker, &why, &at))
        table_say(table, byte_span(source, at), why,
                  "put a text that holds a quote in quotes, and write the quote twice");
    else if (!table->started)
        table_say(
            table, byte_span(source, 0), arena_format(table->arena, "this %s is empty", table->form->noun),
            arena_format(table->arena, "write a first row that names the columns, such as %s", table->form->sample));
    else
        return true;
    return false;
}
