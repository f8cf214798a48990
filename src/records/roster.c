#include "records/roster.h"

#include "base/hidden.h"
#include "base/name.h"
#include "records/learning.h"
#include "records/repeats.h"

/* clang-format off */
enum column {
    COLUMN_ATHLETE, COLUMN_TITLE, COLUMN_GROUP, COLUMN_GYM, COLUMN_BODYWEIGHT, COLUMN_LIFT, COLUMN_MAX, COLUMN_UNIT,
    COLUMN_REPS, COLUMN_RPE, COLUMN_DATE, COLUMN_COUNT
};

static const char *const names[COLUMN_COUNT] = { "athlete", "title", "group", "gym",  "bodyweight", "lift",
                                                 "max",     "unit",  "reps",  "rpe",  "date" };
/* clang-format on */
static const char all_names[] = "athlete, title, group, gym, bodyweight, lift, max, unit, reps, rpe, date";

struct rows {
    struct span last_athlete; /* the cell in the row before; nowhere: none yet */
    int count;
    struct learning *learning; /* NULL: it is read again */
    const struct repeats *known;
    struct repeats *keeps; /* the same while it is read first, or NULL */
    struct span rest;      /* of the line at hand, behind the athlete's name; nowhere: it is no such line */
    char name[NAME_LETTERS_MOST + 1];
    void (*each)(void *context, const struct roster_row *row);
    void *context;
};

static bool first_row(struct table *table, const struct csv_row *row)
{
    if (table->place[COLUMN_ATHLETE] >= 0) {
        table_unknown_say(table, row);
        return true;
    }
    struct finding *finding =
        diag_add(table->findings, KIND_ROSTER, table_row_span(table, row), "the first row names no column athlete");
    diag_help(table->findings, finding, "the first row names the columns, in any order: %s", all_names);
    return false;
}

/* Cells */

static bool same_bytes(const struct table *table, struct span a, struct span b)
{
    return a.end - a.start == b.end - b.start &&
           !memcmp(table_text(table, a.start), table_text(table, b.start), a.end - a.start);
}

static struct roster_cell title_of(const struct table *table, const struct csv_row *row)
{
    const struct csv_cell *cell = table_cell(table, row, COLUMN_TITLE);
    const struct rows *rows = table->owner;
    if (!cell)
        return (struct roster_cell){ 0 };
    struct span at = table_span(table, cell);
    if (rows->learning)
        hidden_say(table->findings, table_text(table, at.start), at.end - at.start, at.start, "cell");
    return (struct roster_cell){ cell->text, at };
}

static void name_misfit(struct table *table, enum column column, const struct csv_cell *cell)
{
    table_misfit(table, column, cell, "is not a name",
                 "a name starts with a letter and goes on with letters, digits, - and _, without blanks: hanna-sorel");
}

/* Most lifters have several rows, and of many lifters no name is kept. */
static struct roster_cell athlete_of(struct table *table, const struct csv_row *row)
{
    const struct csv_cell *cell = table_cell(table, row, COLUMN_ATHLETE);
    const struct rows *rows = table->owner;
    if (!cell)
        return (struct roster_cell){ 0 };
    struct roster_cell name = { cell->text, table_span(table, cell) };
    if (!text_is_ascii(cell->text, cell->length))
        name.text = table_name(table, cell);
    else if (span_is_somewhere(rows->last_athlete) && same_bytes(table, rows->last_athlete, name.at))
        return name;
    if (!name_is_plain(name.text))
        name_misfit(table, COLUMN_ATHLETE, cell);
    return name;
}

static struct roster_cell name_of(struct table *table, const struct csv_row *row, enum column column)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    if (!cell)
        return (struct roster_cell){ 0 };
    struct recent *recent = &table->recent[column];
    for (int i = 0; i < TABLE_RECENT && recent->at[i]; i++)
        if (!strcmp(recent->at[i], cell->text))
            return (struct roster_cell){ recent->at[i], table_span(table, cell) };
    struct roster_cell name = { table_name(table, cell), table_span(table, cell) };
    if (name_is_plain(name.text))
        recent->at[recent->next++ % TABLE_RECENT] = name.text;
    else
        name_misfit(table, column, cell);
    return name;
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

static bool number_of(struct table *table, const struct csv_row *row, enum column column, struct dec *number,
                      struct span *at)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    if (!cell)
        return false;
    *at = table_span(table, cell);
    if (table_number(table, cell->text, cell->length, number))
        return true;
    table_misfit(table, column, cell, "is not a number", number_help(cell, table->decimal_comma));
    return false;
}

/* Numbers that are none a lifter has. */
static void check_ranges(struct table *table, const struct csv_row *row, const struct roster_row *made)
{
    struct dec one = { DEC_ONE };
    if (made->has_bodyweight && made->bodyweight.e10 <= 0)
        table_misfit(table, COLUMN_BODYWEIGHT, table_cell(table, row, COLUMN_BODYWEIGHT), "is no bodyweight",
                     "write a weight above nothing, or leave the cell empty");
    if (made->has_max && made->max.e10 <= 0)
        table_misfit(table, COLUMN_MAX, table_cell(table, row, COLUMN_MAX), "is no max",
                     "write a weight above nothing, or leave the row out until there is one");
    if (made->has_reps && (made->reps.e10 < one.e10 || !dec_is_multiple(made->reps, one)))
        table_misfit(table, COLUMN_REPS, table_cell(table, row, COLUMN_REPS), "is no number of reps",
                     "write a whole number, 1 or more");
    if (made->has_rpe && (made->rpe.e10 > 10 * DEC_ONE || !dec_is_multiple(made->rpe, dec_halves(1))))
        table_misfit(table, COLUMN_RPE, table_cell(table, row, COLUMN_RPE), "is no effort",
                     "write an rpe from 0 to 10, in halves");
}

static bool unit_of(struct table *table, const struct csv_row *row, enum weight_unit *unit)
{
    const struct csv_cell *cell = table_cell(table, row, COLUMN_UNIT);
    if (!cell)
        return false;
    *unit = text_is_word(cell->text, "lb") ? UNIT_LB : UNIT_KG;
    if (*unit == UNIT_LB || text_is_word(cell->text, "kg"))
        return true;
    table_misfit(table, COLUMN_UNIT, cell, "is neither kg nor lb",
                 "write kg or lb, or leave the cell empty for the file's own unit");
    return false;
}

static void date_of(struct table *table, const struct csv_row *row, struct roster_row *made)
{
    const struct csv_cell *cell = table_cell(table, row, COLUMN_DATE);
    if (!cell)
        return;
    made->date_at = table_span(table, cell);
    if (!date_parse(cell->text, cell->length, &made->date))
        table_misfit(table, COLUMN_DATE, cell, "is not a date",
                     "write year, month and day with dashes: 2027-01-04 is the fourth of January");
}

/* Rows */

/* Whether what belongs together is there together; the first gap is said. */
static bool is_complete(struct table *table, const struct csv_row *row, const struct roster_row *made)
{
    if (made->athlete.text && table->has_unknown)
        return true;
    if (!made->athlete.text)
        table_say(table, table_row_span(table, row), "this row names no athlete",
                  "write the athlete's name under athlete, in every row");
    else if (made->has_max && !made->lift.text)
        table_say(table, made->max_at, "a max without a lift", "write under lift what the max is of");
    else if (made->has_reps && !made->has_max)
        table_say(table, made->reps_at, "repetitions without a load", "write under max the load they were done with");
    else if (made->has_rpe && !made->has_max)
        table_say(table, made->rpe_at, "an effort without a load", "write under max the load it was rated at");
    else if (made->has_rpe && !made->has_reps)
        table_say(table, made->rpe_at, "an effort without repetitions",
                  "write under reps how many were done; a tested max needs no effort");
    else
        return true;
    return false;
}

static void row_take(struct table *table, const struct roster_row *made)
{
    struct rows *rows = table->owner;
    bool is_next = !span_is_somewhere(rows->last_athlete) || !same_bytes(table, rows->last_athlete, made->athlete.at);
    if (rows->learning)
        learning_row(rows->learning, table, made, is_next);
    else
        rows->each(rows->context, made);
    rows->last_athlete = made->athlete.at;
    rows->count++;
}

/* The athlete in the first cell of a line, if she is named as most are, without anything that reading a name would change. */
static bool first_cell_names(struct table *table, size_t start, size_t end, struct roster_cell *athlete)
{
    struct rows *rows = table->owner;
    size_t length = end - start;
    if (length > NAME_LETTERS_MOST || !text_is_ascii(table->source->text + start, length))
        return false;
    memcpy(rows->name, table->source->text + start, length);
    rows->name[length] = 0;
    *athlete = (struct roster_cell){ rows->name,
                                     { table->source->base + (uint32_t)start, table->source->base + (uint32_t)end } };
    return (span_is_somewhere(rows->last_athlete) && same_bytes(table, rows->last_athlete, athlete->at)) ||
           name_is_plain(rows->name);
}

/* A line that says behind the name what another said. */
static bool known_line(struct table *table, size_t start, size_t end)
{
    struct rows *rows = table->owner;
    const char *text = table->source->text, *rest = memchr(text + start, table_delimiter(table), end - start);
    struct roster_row made;
    struct roster_cell athlete;
    if (!rest || table->place[COLUMN_ATHLETE] != 0)
        return false;
    rows->rest = (struct span){ table->source->base + (uint32_t)(rest - text), table->source->base + (uint32_t)end };
    if (!first_cell_names(table, start, (size_t)(rest - text), &athlete) ||
        !repeats_find(rows->known, table->source, rows->rest, &made))
        return false;
    made.athlete = athlete;
    made.at.start = athlete.at.start;
    row_take(table, &made);
    rows->rest = (struct span){ 0 };
    return true;
}

static void other_row(struct table *table, const struct csv_row *row)
{
    struct rows *rows = table->owner;
    struct span rest = rows->rest;
    rows->rest = (struct span){ 0 };
    table->misfits.count = 0;
    struct roster_row made = {
        .athlete = athlete_of(table, row),
        .title = title_of(table, row),
        .group = name_of(table, row, COLUMN_GROUP),
        .gym = name_of(table, row, COLUMN_GYM),
        .lift = name_of(table, row, COLUMN_LIFT),
        .at = table_row_span(table, row),
    };
    made.has_bodyweight = number_of(table, row, COLUMN_BODYWEIGHT, &made.bodyweight, &made.bodyweight_at);
    made.has_max = number_of(table, row, COLUMN_MAX, &made.max, &made.max_at);
    made.has_unit = unit_of(table, row, &made.unit);
    made.has_reps = number_of(table, row, COLUMN_REPS, &made.reps, &made.reps_at);
    made.has_rpe = number_of(table, row, COLUMN_RPE, &made.rpe, &made.rpe_at);
    date_of(table, row, &made);
    check_ranges(table, row, &made);
    if (table_has_too_many(table, row))
        return;
    if (table->misfits.count > 0)
        table_misfits_say(table);
    else if (is_complete(table, row, &made)) {
        row_take(table, &made);
        if (rows->keeps && span_is_somewhere(rest))
            repeats_keep(rows->keeps, table->source, rest, &made);
    }
}

/* ---- the whole ---- */

static const struct table_form form = { .kind = KIND_ROSTER,
                                        .noun = "roster",
                                        .names = names,
                                        .count = COLUMN_COUNT,
                                        .all_names = all_names,
                                        .sample = "athlete,lift,max,unit,date",
                                        .head = first_row,
                                        .row = other_row,
                                        .line = known_line };

struct roster roster_read(struct arena *arena, struct arena *scratch, struct interner *interner, struct source *source,
                          struct findings *findings)
{
    struct learning *learning = learning_new(arena, scratch, source);
    struct repeats *repeats = repeats_new(arena);
    struct rows rows = { .learning = learning, .known = repeats, .keeps = repeats };
    struct table *table = NEW(arena, struct table);
    *table = (struct table){
        .arena = scratch, .interner = interner, .source = source, .findings = findings, .form = &form, .owner = &rows
    };
    table_read(table);
    table->owner = NULL, table->arena = NULL;
    table->misfits.at = NULL, table->misfits.room = 0;
    struct roster roster = { .table = table, .repeats = repeats, .row_count = rows.count };
    learning_end(learning, &roster);
    return roster;
}

void roster_rows(const struct roster *roster, struct arena *scratch,
                 void (*each)(void *context, const struct roster_row *row), void *context)
{
    struct rows rows = { .each = each, .known = roster->repeats, .context = context };
    struct table table = { .arena = scratch,
                           .interner = roster->table->interner,
                           .source = roster->table->source,
                           .findings = roster->table->findings,
                           .form = &form,
                           .owner = &rows };
    table_read(&table);
}

const char *roster_lifter_name(const struct roster *roster, int index, size_t *length)
{
    const char *name = roster->table->source->text + roster->places[index];
    *length = name_length(name);
    return name;
}

/* The first byte of a lifter's rows; past the last one, of what is no row any more. */
static size_t rows_begin(const struct roster *roster, int index)
{
    const char *text = roster->table->source->text;
    if (index == roster->lifter_count)
        return roster->table->source->length;
    size_t at = roster->places[index];
    while (at > 0 && text[at - 1] != '\n' && text[at - 1] != '\r')
        at--;
    return at;
}

void roster_lifter(const struct roster *roster, int index, struct arena *scratch,
                   void (*each)(void *context, const struct roster_row *row), void *context)
{
    struct rows rows = { .each = each, .known = roster->repeats, .context = context };
    struct table table = *roster->table;
    table.arena = scratch, table.owner = &rows;
    table_read_again(&table, rows_begin(roster, index), rows_begin(roster, index + 1));
}
