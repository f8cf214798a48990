#include "records/filled.h"

#include "records/table.h"

enum { REPS_IN_A_SET_MOST = 1000 };

/* clang-format off */
static const char *const names[FILLED_COLUMNS] = {
    "athlete", "block", "week", "date", "day", "seq", "lift", "role", "sets", "reps_low", "reps_high", "load", "unit",
    "done_load", "done_reps", "done_rpe"
};
/* clang-format on */

struct rows {
    VEC(struct filled_row) list;
};

const char *filled_column_name(enum filled_column column)
{
    return names[column];
}

/* ---- the first row ---- */

/* The column of an unknown name that was meant by it; -1: none. */
static int column_near(const struct table *table, const struct csv_row *row, int column)
{
    for (int i = 0; i < row->count; i++)
        if (row->cells[i].length && table_column(table->form, row->cells[i].text) < 0 &&
            table_nearest(table->form, row->cells[i].text) == column)
            return i;
    return -1;
}

static bool first_row(struct table *table, const struct csv_row *row)
{
    const char *missing = NULL;
    int first = -1, count = 0;
    for (int i = 0; i < FILLED_COLUMNS; i++)
        if (table->place[i] < 0 && i != FILLED_ROLE) {
            missing = missing ? arena_format(table->arena, "%s, %s", missing, names[i]) : names[i];
            first = first < 0 ? i : first;
            count++;
        }
    if (!missing)
        return true;
    int near = count == 1 ? column_near(table, row, first) : -1;
    struct span at = near < 0 ? table_row_span(table, row) : table_span(table, &row->cells[near]);
    struct finding *finding = diag_add(table->findings, table->form->kind, at, "the first row names no column%s %s",
                                       count == 1 ? "" : "s", missing);
    if (near >= 0)
        diag_help(table->findings, finding, "is \"%s\" meant? rename it to %s", row->cells[near].text, names[first]);
    else
        diag_help(table->findings, finding,
                  "`setwright build --format csv` writes a sheet with all its columns; leave the first row as it is");
    return false;
}

/* ---- cells of the plan ---- */

static struct filled_cell cell_read(struct table *table, const struct csv_row *row, int column)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    if (table->place[column] < 0)
        return (struct filled_cell){ 0 };
    int place = table->place[column] < row->count ? table->place[column] : row->count - 1;
    struct span at = table_span(table, &row->cells[place]);
    bool is_name = column == FILLED_ATHLETE || column == FILLED_BLOCK || column == FILLED_DAY || column == FILLED_LIFT;
    if (!cell)
        return (struct filled_cell){ "", { at.end, at.end } };
    return (struct filled_cell){ is_name ? table_name(table, cell) : arena_copy(table->arena, cell->text, cell->length), at };
}

static void whole_read(struct table *table, const struct csv_row *row, int column, int *whole)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    struct dec number, one = { DEC_ONE };
    if (!cell)
        return;
    if (table_number(table, cell->text, cell->length, &number) && number.e10 >= DEC_ONE &&
        number.e10 <= 1000000 * DEC_ONE && dec_is_multiple(number, one))
        *whole = (int)dec_floor(number);
    else
        table_misfit(table, column, cell, "is not a whole number",
                     "leave it as it was printed, or print the sheet anew");
}

static void number_check(struct table *table, const struct csv_row *row, int column)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    struct dec number;
    size_t sign = cell && cell->text[0] == '-';
    if (cell && !table_number(table, cell->text + sign, cell->length - sign, &number))
        table_misfit(table, column, cell, "is not a number",
                     column == FILLED_LOAD ? "leave it as it was printed; what was lifted goes under done_load"
                                           : "leave it as it was printed, or print the sheet anew");
}

static void unit_check(struct table *table, const struct csv_row *row)
{
    const struct csv_cell *cell = table_cell(table, row, FILLED_UNIT);
    if (cell && !text_is_word(cell->text, "kg") && !text_is_word(cell->text, "lb"))
        table_misfit(table, FILLED_UNIT, cell, "is neither kg nor lb",
                     "leave it as it was printed, or print the sheet anew");
}

static void date_check(struct table *table, const struct csv_row *row, struct date *date)
{
    const struct csv_cell *cell = table_cell(table, row, FILLED_DATE);
    if (cell && !date_parse(cell->text, cell->length, date))
        table_misfit(
            table, FILLED_DATE, cell, "is not a date",
            "write year, month and day with dashes, 2027-01-04, and give the column that format in the spreadsheet");
}

/* ---- what was done ---- */

struct done_column {
    enum filled_column column;
    const char *is_none; /* "is no load" */
    const char *help;
    bool (*fits)(const struct filled_number *value);
    bool has_sign, has_unit;
};

static bool load_fits(const struct filled_number *value)
{
    return value->unit == 0;
}

static bool reps_fit(const struct filled_number *value)
{
    struct dec one = { DEC_ONE };
    return dec_is_multiple(value->number, one) && value->number.e10 <= REPS_IN_A_SET_MOST * DEC_ONE;
}

static bool effort_fits(const struct filled_number *value)
{
    return dec_is_multiple(value->number, dec_halves(1)) && value->number.e10 <= 10 * DEC_ONE;
}

static const struct done_column loads = { FILLED_DONE_LOAD,
                                          "is no load",
                                          "write the number alone, in the unit of the row: 92.5, or one a set, split "
                                          "by spaces: 90 90 92.5; an empty cell means as printed",
                                          load_fits,
                                          true,
                                          false };
static const struct done_column reps = { FILLED_DONE_REPS,
                                         "is no number of repetitions",
                                         "write a whole number for all sets, or one a set, split by spaces: 5 5 4; 0 "
                                         "is a failed repetition, an empty cell means not done",
                                         reps_fit,
                                         false,
                                         true };
static const struct done_column efforts = {
    FILLED_DONE_RPE,
    "is no effort",
    "write the rpe of the last set, or one a set, split by spaces: 7 7.5 8; from 0 to 10, in halves",
    effort_fits,
    false,
    false
};

static bool is_gap(char c)
{
    return c == ' ' || c == ';' || c == '\t' || c == '\n' || c == '\r';
}

static void done_misfit(struct table *table, const struct csv_cell *cell, const struct done_column *column,
                        const char *text)
{
    const char *help = column->help;
    if (strchr(text, ',') && !table->decimal_comma)
        help = "write a point for decimals, 92.5, and split the sets by spaces: 5 5 4";
    struct misfit misfit = { table_span(table, cell), (int)column->column, text, column->is_none, help };
    vec_add(table->arena, &table->misfits, misfit);
}

/* "90", "-15", "45s": the unit may also stand by itself behind its number. */
static bool value_read(struct table *table, const struct done_column *column, const char *text, size_t length,
                       struct filled_number *value)
{
    size_t sign = column->has_sign && (text[0] == '-' || text[0] == '+');
    char last = (char)(length ? text[length - 1] : 0);
    *value = (struct filled_number){ .unit = (char)(column->has_unit && (last == 's' || last == 'm') ? last : 0) };
    size_t digits = length - sign - (value->unit != 0);
    if (!digits || !table_number(table, text + sign, digits, &value->number))
        return false;
    if (sign && text[0] == '-')
        value->number.e10 = -value->number.e10;
    return column->fits(value);
}

static struct filled_list done_read(struct table *table, const struct csv_row *row, const struct done_column *column)
{
    const struct csv_cell *cell = table_cell(table, row, column->column);
    VEC(struct filled_number) list = { 0 };
    for (size_t start = 0, end; cell && start < cell->length; start = end) {
        struct filled_number value;
        for (end = start; end < cell->length && !is_gap(cell->text[end]);)
            end++;
        const char *text = cell->text + start;
        if (end == start) {
            end++;
        } else if (column->has_unit && end - start == 1 && (*text == 's' || *text == 'm') && list.count &&
                   !list.at[list.count - 1].unit) {
            list.at[list.count - 1].unit = *text;
        } else if (value_read(table, column, text, end - start, &value)) {
            vec_add(table->arena, &list, value);
        } else {
            done_misfit(table, cell, column, arena_copy(table->arena, text, end - start));
            break;
        }
    }
    return (struct filled_list){ list.at, list.count };
}

/* ---- rows ---- */

/* A row of the plan has these in every case; the first gap is said. */
static bool is_whole(struct table *table, const struct filled_row *made)
{
    static const enum filled_column wanted[] = { FILLED_ATHLETE, FILLED_BLOCK, FILLED_WEEK,
                                                 FILLED_DAY,     FILLED_SEQ,   FILLED_LIFT };
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        if (*made->cells[wanted[i]].text)
            continue;
        if (made->is_filled)
            table_say(table, made->at,
                      arena_format(table->arena, "in this row the cell under %s is empty", names[wanted[i]]),
                      "leave it as it was printed; it says which set of the plan was done");
        return false;
    }
    return true;
}

static bool done_is_whole(struct table *table, const struct filled_row *made)
{
    const struct filled_list *without = made->loads.count ? &made->loads : made->efforts.count ? &made->efforts : NULL;
    if (made->reps.count || !without)
        return true;
    bool is_load = without == &made->loads;
    table_say(table, made->cells[is_load ? FILLED_DONE_LOAD : FILLED_DONE_RPE].at,
              is_load ? "a load without repetitions" : "an effort without repetitions",
              "write under done_reps how many were done, 0 for a failed repetition");
    return false;
}

/* Cells under done_… that cannot be read are said one by one, unless the row has moved as a whole. */
static void misfits_say(struct table *table, int of_plan)
{
    int all = table->misfits.count;
    struct misfit *at = table->misfits.at;
    if (of_plan) {
        table_misfits_say(table);
        return;
    }
    for (int i = 0; i < all; i++) {
        table->misfits.at = at + i;
        table->misfits.count = 1;
        table_misfits_say(table);
    }
    table->misfits.at = at;
}

static void other_row(struct table *table, const struct csv_row *row)
{
    struct filled_row made = { .at = table_row_span(table, row), .decimal_comma = table->decimal_comma };
    table->misfits.count = 0;
    for (int i = 0; i < FILLED_COLUMNS; i++)
        made.cells[i] = cell_read(table, row, i);
    whole_read(table, row, FILLED_WEEK, &made.week);
    whole_read(table, row, FILLED_SEQ, &made.seq);
    date_check(table, row, &made.date);
    number_check(table, row, FILLED_SETS);
    number_check(table, row, FILLED_LOAD);
    unit_check(table, row);
    int of_plan = table->misfits.count;
    for (int i = FILLED_DONE_LOAD; i <= FILLED_DONE_RPE; i++)
        made.is_filled |= *made.cells[i].text != 0;
    made.loads = done_read(table, row, &loads);
    made.reps = done_read(table, row, &reps);
    made.efforts = done_read(table, row, &efforts);
    if (table_has_too_many(table, row))
        return;
    if (table->misfits.count && (made.is_filled || of_plan > 1))
        misfits_say(table, of_plan);
    struct rows *rows = table->owner;
    if (!table->misfits.count && is_whole(table, &made) && done_is_whole(table, &made))
        vec_add(table->arena, &rows->list, made);
}

struct filled filled_read(struct arena *arena, struct interner *interner, struct source *source,
                          struct findings *findings)
{
    static const struct table_form form = { .kind = KIND_SHEET,
                                            .noun = "sheet",
                                            .names = names,
                                            .count = FILLED_COLUMNS,
                                            .sample = "athlete,block,week,date",
                                            .head = first_row,
                                            .row = other_row };
    struct rows rows = { 0 };
    struct table table = {
        .arena = arena, .interner = interner, .source = source, .findings = findings, .form = &form, .owner = &rows
    };
    table_read(&table);
    return (struct filled){ rows.list.at, rows.list.count };
}

/* ---- comparing ---- */

static bool value_of(const char *text, bool decimal_comma, struct dec *number)
{
    enum { LONGEST = 40 };
    char copy[LONGEST];
    size_t length = strlen(text), sign = *text == '-';
    if (length >= LONGEST)
        return false;
    memcpy(copy, text, length + 1);
    char *comma = decimal_comma ? strchr(copy, ',') : NULL;
    if (comma)
        *comma = '.';
    if (!dec_parse(copy + sign, length - sign, number))
        return false;
    number->e10 = sign ? -number->e10 : number->e10;
    return true;
}

static const char *past_blanks(const char *text)
{
    while (*text == ' ' || *text == '\t')
        text++;
    return text;
}

bool filled_same(const struct filled_row *row, enum filled_column column, const char *text)
{
    const char *cell = row->cells[column].text;
    struct dec a, b;
    if (value_of(cell, row->decimal_comma, &a) && value_of(text, false, &b))
        return a.e10 == b.e10;
    for (;; cell++, text++) {
        cell = past_blanks(cell);
        text = past_blanks(text);
        if (*cell != *text || !*cell)
            return *cell == *text;
    }
}
