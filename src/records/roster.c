#include "records/roster.h"

#include "base/csv.h"
#include "base/name.h"
#include "base/near.h"
#include "base/vec.h"

#include <stdlib.h>
#include <utf8proc.h>

/* clang-format off */
enum column {
    COLUMN_ATHLETE, COLUMN_TITLE, COLUMN_GROUP, COLUMN_GYM, COLUMN_BODYWEIGHT, COLUMN_LIFT, COLUMN_MAX, COLUMN_UNIT,
    COLUMN_REPS, COLUMN_RPE, COLUMN_DATE, COLUMN_COUNT
};

static const char *const names[COLUMN_COUNT] = { "athlete", "title", "group", "gym",  "bodyweight", "lift",
                                                 "max",     "unit",  "reps",  "rpe",  "date" };
/* clang-format on */
static const char all_names[] = "athlete, title, group, gym, bodyweight, lift, max, unit, reps, rpe, date";

struct misfit {
    struct span at;
    enum column column;
    const char *text, *wanted, *help;
};

struct reader {
    struct arena *arena;
    struct interner *interner;
    struct source *source;
    struct findings *findings;
    bool started;
    bool broken;                /* the first row names no athletes */
    bool has_unknown;           /* a column it does not know: what seems to be missing may stand there */
    bool decimal_comma;         /* cells are split by ';' */
    int place[COLUMN_COUNT];    /* where a column stands in the file; -1: nowhere */
    int width;                  /* columns named in the first row */
    VEC(struct misfit) misfits; /* of the row being read */
    VEC(struct roster_row) rows;
};

static struct span cell_span(const struct reader *reader, const struct csv_cell *cell)
{
    return (struct span){ reader->source->base + (uint32_t)cell->start, reader->source->base + (uint32_t)cell->end };
}

/* The first row */

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_word(const char *text, const char *word)
{
    while (*text && lower(*text) == *word) {
        text++;
        word++;
    }
    return !*text && !*word;
}

static int name_find(const char *text)
{
    for (int i = 0; i < COLUMN_COUNT; i++)
        if (is_word(text, names[i]))
            return i;
    return -1;
}

static int name_nearest(const char *text)
{
    enum { LONGEST = 16 };
    char small[LONGEST + 1] = "";
    for (int i = 0; i < LONGEST && text[i]; i++)
        small[i] = lower(text[i]);
    const char *nearest = word_nearest(small, names, COLUMN_COUNT);
    return nearest ? name_find(nearest) : -1;
}

static void column_unknown(struct reader *reader, const struct csv_cell *cell)
{
    struct finding *finding =
        diag_add(reader->findings, KIND_ROSTER, cell_span(reader, cell), "a roster has no column \"%s\"", cell->text);
    int nearest = name_nearest(cell->text);
    if (nearest >= 0)
        diag_help(reader->findings, finding, "did you mean %s?", names[nearest]);
    else
        diag_help(reader->findings, finding, "the columns are %s; take this one out or rename it", all_names);
}

static void column_doubled(struct reader *reader, const struct csv_row *row, int column, int again)
{
    struct finding *finding = diag_add(reader->findings, KIND_ROSTER, cell_span(reader, &row->cells[again]),
                                       "the column %s stands here a second time", names[column]);
    diag_help(reader->findings, finding, "leave one of the two out");
    diag_related(reader->findings, finding, cell_span(reader, &row->cells[reader->place[column]]),
                 "it stands here first");
}

static struct span row_span(const struct reader *reader, const struct csv_row *row)
{
    return span_join(cell_span(reader, &row->cells[0]), cell_span(reader, &row->cells[row->count - 1]));
}

/* The byte between the first two cells, blanks aside. */
static bool is_split_by_semicolon(const struct reader *reader, const struct csv_row *row)
{
    if (row->count < 2)
        return false;
    size_t at = row->cells[1].start;
    while (at > 0 && (reader->source->text[at - 1] == ' ' || reader->source->text[at - 1] == '\t'))
        at--;
    return at > 0 && reader->source->text[at - 1] == ';';
}

static void first_row(struct reader *reader, const struct csv_row *row)
{
    reader->decimal_comma = is_split_by_semicolon(reader, row);
    for (int i = 0; i < row->count; i++) {
        const struct csv_cell *cell = &row->cells[i];
        if (cell->length == 0)
            continue;
        reader->width = i + 1;
        int column = name_find(cell->text);
        if (column < 0)
            reader->has_unknown = true;
        else if (reader->place[column] >= 0)
            column_doubled(reader, row, column, i);
        else
            reader->place[column] = i;
    }
    if (reader->place[COLUMN_ATHLETE] >= 0) {
        for (int i = 0; i < row->count && reader->has_unknown; i++)
            if (row->cells[i].length && name_find(row->cells[i].text) < 0)
                column_unknown(reader, &row->cells[i]);
        return;
    }
    reader->broken = true;
    struct finding *finding =
        diag_add(reader->findings, KIND_ROSTER, row_span(reader, row), "the first row names no column athlete");
    diag_help(reader->findings, finding, "the first row names the columns, in any order: %s", all_names);
}

/* Cells */

static const struct csv_cell *cell_of(const struct reader *reader, const struct csv_row *row, enum column column)
{
    int place = reader->place[column];
    return place >= 0 && place < row->count && row->cells[place].length > 0 ? &row->cells[place] : NULL;
}

static void misfit_add(struct reader *reader, enum column column, const struct csv_cell *cell, const char *wanted,
                       const char *help)
{
    struct misfit misfit = { cell_span(reader, cell), column, cell->text, wanted, help };
    vec_add(reader->arena, &reader->misfits, misfit);
}

static struct roster_cell text_of(const struct reader *reader, const struct csv_row *row, enum column column)
{
    const struct csv_cell *cell = cell_of(reader, row, column);
    if (!cell)
        return (struct roster_cell){ 0 };
    return (struct roster_cell){ intern(reader->interner, cell->text, cell->length), cell_span(reader, cell) };
}

/* Names are compared in NFC, as in the coach's files. */
static struct roster_cell name_of(struct reader *reader, const struct csv_row *row, enum column column)
{
    struct roster_cell cell = text_of(reader, row, column);
    if (!cell.text)
        return cell;
    utf8proc_uint8_t *composed = utf8proc_NFC((const utf8proc_uint8_t *)cell.text);
    if (composed)
        cell.text = intern(reader->interner, (const char *)composed, strlen((const char *)composed));
    free(composed);
    if (!name_is_plain(cell.text))
        misfit_add(reader, column, cell_of(reader, row, column), "is not a name",
                   "a name starts with a letter and goes on with letters, digits, - and _, without blanks: hanna-sorel");
    return cell;
}

static const char *number_help(const struct csv_cell *cell, bool decimal_comma)
{
    const char *comma = strchr(cell->text, ',');
    if (comma && !decimal_comma)
        return "write a point for the decimals: 72.5";
    if (cell->text[0] >= '0' && cell->text[0] <= '9')
        return "write the number alone, such as 72.5; kg or lb go into the column unit";
    return "write a number, such as 72.5, or leave the cell empty";
}

static bool number_of(struct reader *reader, const struct csv_row *row, enum column column, struct dec *number,
                      struct span *at)
{
    const struct csv_cell *cell = cell_of(reader, row, column);
    if (!cell)
        return false;
    *at = cell_span(reader, cell);
    char *text = arena_copy(reader->arena, cell->text, cell->length);
    char *comma = reader->decimal_comma ? strchr(text, ',') : NULL;
    if (comma)
        *comma = '.';
    if (dec_parse(text, cell->length, number))
        return true;
    misfit_add(reader, column, cell, "is not a number", number_help(cell, reader->decimal_comma));
    return false;
}

/* Numbers that are none a lifter has. */
static void check_ranges(struct reader *reader, const struct csv_row *row, const struct roster_row *made)
{
    struct dec one = { DEC_ONE };
    if (made->has_bodyweight && made->bodyweight.e10 <= 0)
        misfit_add(reader, COLUMN_BODYWEIGHT, cell_of(reader, row, COLUMN_BODYWEIGHT), "is no bodyweight", "write a weight above nothing, or leave the cell empty");
    if (made->has_max && made->max.e10 <= 0)
        misfit_add(reader, COLUMN_MAX, cell_of(reader, row, COLUMN_MAX), "is no max", "write a weight above nothing, or leave the row out until there is one");
    if (made->has_reps && (made->reps.e10 < one.e10 || !dec_is_multiple(made->reps, one)))
        misfit_add(reader, COLUMN_REPS, cell_of(reader, row, COLUMN_REPS), "is no number of reps", "write a whole number, 1 or more");
    if (made->has_rpe && (made->rpe.e10 > 10 * DEC_ONE || !dec_is_multiple(made->rpe, dec_halves(1))))
        misfit_add(reader, COLUMN_RPE, cell_of(reader, row, COLUMN_RPE), "is no effort", "write an rpe from 0 to 10, in halves");
}

static bool unit_of(struct reader *reader, const struct csv_row *row, enum weight_unit *unit)
{
    const struct csv_cell *cell = cell_of(reader, row, COLUMN_UNIT);
    if (!cell)
        return false;
    *unit = is_word(cell->text, "lb") ? UNIT_LB : UNIT_KG;
    if (*unit == UNIT_LB || is_word(cell->text, "kg"))
        return true;
    misfit_add(reader, COLUMN_UNIT, cell, "is neither kg nor lb",
               "write kg or lb, or leave the cell empty for the file's own unit");
    return false;
}

static void date_of(struct reader *reader, const struct csv_row *row, struct roster_row *made)
{
    const struct csv_cell *cell = cell_of(reader, row, COLUMN_DATE);
    if (!cell)
        return;
    made->date_at = cell_span(reader, cell);
    if (!date_parse(cell->text, cell->length, &made->date))
        misfit_add(reader, COLUMN_DATE, cell, "is not a date",
                   "write year, month and day with dashes: 2027-01-04 is the fourth of January");
}

/* Rows */

/* As they stand in the row, from the left. */
static void misfits_sort(struct reader *reader)
{
    for (int i = 1; i < reader->misfits.count; i++) {
        struct misfit misfit = reader->misfits.at[i];
        int at = i;
        for (; at > 0 && reader->misfits.at[at - 1].at.start > misfit.at.start; at--)
            reader->misfits.at[at] = reader->misfits.at[at - 1];
        reader->misfits.at[at] = misfit;
    }
}

/* What cannot be read, in one finding where it is more than one cell: then most often the whole row has moved. */
static void misfits_say(struct reader *reader)
{
    misfits_sort(reader);
    const struct misfit *first = &reader->misfits.at[0];
    if (reader->misfits.count == 1) {
        struct finding *finding = diag_add(reader->findings, KIND_ROSTER, first->at, "\"%s\" under %s %s", first->text,
                                           names[first->column], first->wanted);
        diag_help(reader->findings, finding, "%s", first->help);
        return;
    }
    const char *which = names[first->column];
    for (int i = 1; i < reader->misfits.count; i++)
        which = arena_format(reader->arena, i + 1 < reader->misfits.count ? "%s, %s" : "%s and %s", which,
                             names[reader->misfits.at[i].column]);
    struct finding *finding =
        diag_add(reader->findings, KIND_ROSTER, first->at, "%d cells of this row do not fit their columns: %s",
                 reader->misfits.count, which);
    diag_help(reader->findings, finding, "has the row moved to the side? \"%s\" under %s %s", first->text,
              names[first->column], first->wanted);
}

static bool has_too_many(struct reader *reader, const struct csv_row *row)
{
    for (int i = reader->width; i < row->count; i++) {
        if (row->cells[i].length == 0)
            continue;
        struct finding *finding = diag_add(reader->findings, KIND_ROSTER, cell_span(reader, &row->cells[i]),
                                           "\"%s\" stands under no column", row->cells[i].text);
        diag_help(reader->findings, finding, "the first row names %d column%s; has this row moved to the side?",
                  reader->width, reader->width == 1 ? "" : "s");
        return true;
    }
    return false;
}

static void orphan_say(struct reader *reader, struct span at, const char *message, const char *help)
{
    struct finding *finding = diag_add(reader->findings, KIND_ROSTER, at, "%s", message);
    diag_help(reader->findings, finding, "%s", help);
}

/* Whether what belongs together is there together; the first gap is said. */
static bool is_complete(struct reader *reader, const struct csv_row *row, const struct roster_row *made)
{
    if (made->athlete.text && reader->has_unknown)
        return true;
    if (!made->athlete.text)
        orphan_say(reader, row_span(reader, row), "this row names no athlete",
                   "write the athlete's name under athlete, in every row");
    else if (made->has_max && !made->lift.text)
        orphan_say(reader, made->max_at, "a max without a lift", "write under lift what the max is of");
    else if (made->has_reps && !made->has_max)
        orphan_say(reader, made->reps_at, "repetitions without a load", "write under max the load they were done with");
    else if (made->has_rpe && !made->has_max)
        orphan_say(reader, made->rpe_at, "an effort without a load", "write under max the load it was rated at");
    else if (made->has_rpe && !made->has_reps)
        orphan_say(reader, made->rpe_at, "an effort without repetitions",
                   "write under reps how many were done; a tested max needs no effort");
    else
        return true;
    return false;
}

static void other_row(struct reader *reader, const struct csv_row *row)
{
    reader->misfits.count = 0;
    struct roster_row made = {
        .athlete = name_of(reader, row, COLUMN_ATHLETE),
        .title = text_of(reader, row, COLUMN_TITLE),
        .group = name_of(reader, row, COLUMN_GROUP),
        .gym = name_of(reader, row, COLUMN_GYM),
        .lift = name_of(reader, row, COLUMN_LIFT),
        .at = row_span(reader, row),
    };
    made.has_bodyweight = number_of(reader, row, COLUMN_BODYWEIGHT, &made.bodyweight, &made.bodyweight_at);
    made.has_max = number_of(reader, row, COLUMN_MAX, &made.max, &made.max_at);
    made.has_unit = unit_of(reader, row, &made.unit);
    made.has_reps = number_of(reader, row, COLUMN_REPS, &made.reps, &made.reps_at);
    made.has_rpe = number_of(reader, row, COLUMN_RPE, &made.rpe, &made.rpe_at);
    date_of(reader, row, &made);
    check_ranges(reader, row, &made);
    if (has_too_many(reader, row))
        return;
    if (reader->misfits.count > 0)
        misfits_say(reader);
    else if (is_complete(reader, row, &made))
        vec_add(reader->arena, &reader->rows, made);
}

static bool on_row(void *context, const struct csv_row *row)
{
    struct reader *reader = context;
    if (reader->started)
        other_row(reader, row);
    else
        first_row(reader, row);
    reader->started = true;
    return !reader->broken;
}

/* The file as a whole */

static struct span byte_span(const struct source *source, size_t byte)
{
    uint32_t start = source->base + (uint32_t)(byte < source->length ? byte : source->length);
    return (struct span){ start, start + (byte < source->length) };
}

/* A table saved in another encoding is said once, by its name. False: it cannot be read. */
static bool is_text(struct reader *reader)
{
    const struct source *source = reader->source;
    const char *text = source->text;
    bool marked = source->length >= 2 && (memcmp(text, "\xFF\xFE", 2) == 0 || memcmp(text, "\xFE\xFF", 2) == 0);
    if (marked || memchr(text, '\0', source->length)) {
        orphan_say(reader, byte_span(source, 0), "this table is saved as UTF-16, and setwright reads UTF-8",
                   "save it again and choose CSV with the encoding UTF-8");
        return false;
    }
    for (size_t at = 0; at < source->length;) {
        utf8proc_int32_t code;
        utf8proc_ssize_t size =
            utf8proc_iterate((const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(source->length - at), &code);
        if (size <= 0) {
            orphan_say(reader, byte_span(source, at),
                       "this letter is not UTF-8; the table is saved in an older encoding",
                       "save it again and choose CSV with the encoding UTF-8");
            return false;
        }
        at += (size_t)size;
    }
    return true;
}

struct roster roster_read(struct arena *arena, struct interner *interner, struct source *source,
                          struct findings *findings)
{
    struct reader reader = { .arena = arena, .interner = interner, .source = source, .findings = findings };
    for (int i = 0; i < COLUMN_COUNT; i++)
        reader.place[i] = -1;
    const char *why = NULL;
    size_t at = 0;
    if (!is_text(&reader))
        return (struct roster){ 0 };
    if (!csv_read(arena, source->text, source->length, on_row, &reader, &why, &at))
        orphan_say(&reader, byte_span(source, at), why,
                   "put a text that holds a quote in quotes, and write the quote twice");
    else if (!reader.started)
        orphan_say(&reader, byte_span(source, 0), "this roster is empty",
                   "write a first row that names the columns, such as athlete,lift,max,unit,date");
    return (struct roster){ reader.rows.at, reader.rows.count };
}
