#include "emit/group_table.h"

#include "base/vec.h"
#include "emit/brief.h"
#include "emit/visible.h"

enum { NAME_MOST = 20, TITLE_MOST = 22, WORDS_LEAST = 16, DISCS_MOST = 28, GAP = 3 };
enum part { PART_SETS, PART_LOAD, PART_EFFORT, PART_DISCS, PART_COUNT };

/* Sets in parts that stand below each other, or words that run over the whole column. */
struct cell_line {
    const char *parts[PART_COUNT];
    const char *words;
};
struct cell {
    VEC(struct cell_line) lines;
    VEC(const char *) laid; /* as they are printed */
};
struct lift_column {
    const struct plan_entry *entry; /* the first athlete's who has it */
    const struct lift *lift;        /* as written: before a swap */
    struct cell head, *cells;       /* a cell for each row */
    int widths[PART_COUNT], width;
};
struct group_table {
    struct arena *arena;
    struct out say;
    const struct plan **rows;
    struct cell *names;
    int row_count, name_width;
    VEC(struct lift_column) columns;
};

static const char *said(struct group_table *table)
{
    const char *text = arena_copy(table->arena, table->say.at ? table->say.at : "", table->say.used);
    out_clear(&table->say);
    return text;
}

static const char *visible(struct group_table *table, const char *text)
{
    out_clear(&table->say);
    visible_add(&table->say, text, strlen(text), VISIBLE_ONE_LINE);
    return said(table);
}

static int width_of(const char *text)
{
    return text ? columns_of(text, strlen(text)) : 0;
}

static void words_add(struct group_table *table, struct cell *cell, const char *words)
{
    struct cell_line line = { .words = visible(table, words) };
    vec_add(table->arena, &cell->lines, line);
}

/* ---- cells ---- */

/* What is said by one of brief.h's functions; NULL when that is nothing. */
static const char *said_part(struct group_table *table)
{
    return table->say.used ? said(table) : NULL;
}

/* Discs from `*at` on, as many as a line holds. */
static const char *discs_part(struct group_table *table, const struct row *row, int *at)
{
    *at = brief_discs(&table->say, row, *at, DISCS_MOST);
    return said_part(table);
}

static void run_add(struct group_table *table, struct cell *cell, const struct row *row)
{
    struct cell_line line = { .words = NULL };
    int disc = 0;
    brief_sets(&table->say, row);
    line.parts[PART_SETS] = said_part(table);
    brief_load(&table->say, row);
    line.parts[PART_LOAD] = said_part(table);
    brief_effort(&table->say, row);
    line.parts[PART_EFFORT] = said_part(table);
    line.parts[PART_DISCS] = discs_part(table, row, &disc);
    vec_add(table->arena, &cell->lines, line);
    while (line.parts[PART_DISCS] && disc < row->run->disc_count) {
        line = (struct cell_line){ .parts = { [PART_DISCS] = discs_part(table, row, &disc) } };
        vec_add(table->arena, &cell->lines, line);
    }
    if (row->run->open)
        words_add(table, cell, row->run->open);
    if (row->run->capped)
        words_add(table, cell, "capped");
}

static void swap_add(struct group_table *table, struct cell *cell, const struct plan_entry *entry)
{
    out_text(&table->say, lift_words(entry->lift));
    if (entry->because) {
        out_text(&table->say, " (");
        out_text(&table->say, entry->because);
        out_char(&table->say, ')');
    }
    words_add(table, cell, said(table));
}

static void entry_add(struct group_table *table, struct lift_column *column, int at, const struct member *member,
                      const struct plan_entry *entry)
{
    struct cell *cell = &column->cells[at];
    struct row row = { .plan = member->plan, .week = member->week, .day = member->day, .entry = entry };
    if (entry->lift != column->lift)
        swap_add(table, cell, entry);
    for (int g = 0; g < entry->group_count; g++) {
        row.group = &entry->groups[g];
        for (int r = 0; r < row.group->run_count && row.group->role != ROLE_WARM_UP; r++) {
            row.run = &row.group->runs[r];
            run_add(table, cell, &row);
        }
    }
    for (int i = 0; i < entry->note_count; i++)
        words_add(table, cell, entry->notes[i]);
}

static bool is_same_entry(const struct plan_entry *one, const struct plan_entry *other)
{
    return one->entry == other->entry || (one->entry->at.start == other->entry->at.start && one->entry->at.end == other->entry->at.end &&
                                          span_is_somewhere(one->entry->at));
}

/* The entry's column; a new one comes after the column of the athlete's entry before it. */
static int column_for(struct group_table *table, const struct plan_entry *entry, int after)
{
    for (int i = 0; i < table->columns.count; i++)
        if (is_same_entry(table->columns.at[i].entry, entry))
            return i;
    struct lift_column column = { .entry = entry, .lift = entry->instead_of ? entry->instead_of : entry->lift,
                                  .cells = NEW_MANY(table->arena, struct cell, table->row_count) };
    words_add(table, &column.head, lift_words(column.lift));
    if (entry->superset)
        words_add(table, &column.head, "in a superset");
    vec_add(table->arena, &table->columns, column);
    struct lift_column *at = table->columns.at;
    memmove(&at[after + 2], &at[after + 1], sizeof *at * (size_t)(table->columns.count - after - 2));
    at[after + 1] = column;
    return after + 1;
}

static int row_of(struct group_table *table, const struct member *member)
{
    int row = 0;
    while (row < table->row_count && table->rows[row] != member->plan)
        row++;
    if (row < table->row_count)
        return row;
    table->rows[table->row_count++] = member->plan;
    const struct athlete *athlete = member->plan->athlete;
    words_add(table, &table->names[row], athlete->title ? athlete->title : athlete->name);
    for (int i = 0; i < member->day->note_count; i++)
        words_add(table, &table->names[row], member->day->notes[i]);
    return row;
}

static void member_add(struct group_table *table, const struct member *member)
{
    int row = row_of(table, member), after = -1;
    for (int e = 0; e < member->day->entry_count; e++) {
        after = column_for(table, &member->day->entries[e], after);
        entry_add(table, &table->columns.at[after], row, member, &member->day->entries[e]);
    }
}

/* ---- laying out ---- */

static void pad(struct out *say, const char *text, int width, bool right)
{
    int free = width - width_of(text);
    out_chars(say, ' ', right ? free : 0);
    out_text(say, text ? text : "");
    out_chars(say, ' ', right ? 0 : free);
}

/* How many bytes of the words go on a line: up to the last space that fits, else as many characters as fit. */
static size_t words_fit(const char *words, int width)
{
    size_t length = strlen(words), at = 0, space = 0;
    int used = 0;
    while (at < length) {
        size_t size = character_size(words + at, length - at);
        used += columns_of(words + at, size);
        if (used > width && words[at] != ' ')
            return space ? space : at ? at : size;
        if (words[at] == ' ')
            space = at;
        at += size;
    }
    return length;
}

static void words_lay(struct group_table *table, struct cell *cell, const char *words, int width)
{
    while (*words) {
        size_t fit = words_fit(words, width);
        size_t shown = fit;
        while (shown && words[shown - 1] == ' ')
            shown--;
        const char *line = arena_copy(table->arena, words, shown);
        if (shown)
            vec_add(table->arena, &cell->laid, line);
        words += fit;
        while (*words == ' ')
            words++;
    }
}

static void cell_lay(struct group_table *table, struct cell *cell, const int *widths, int width)
{
    for (int i = 0; i < cell->lines.count; i++) {
        const struct cell_line *line = &cell->lines.at[i];
        if (line->words) {
            words_lay(table, cell, line->words, width);
            continue;
        }
        out_clear(&table->say);
        for (int p = 0; p < PART_COUNT; p++) {
            out_chars(&table->say, ' ', p && widths[p] && table->say.used ? 2 - (p == PART_EFFORT) : 0);
            pad(&table->say, line->parts[p], widths[p], p == PART_LOAD);
        }
        const char *text = said(table);
        vec_add(table->arena, &cell->laid, text);
    }
}

static void column_measure(struct lift_column *column, int rows)
{
    int title = width_of(column->head.lines.at[0].words);
    for (int r = 0; r < rows; r++)
        for (int i = 0; i < column->cells[r].lines.count; i++) {
            const struct cell_line *line = &column->cells[r].lines.at[i];
            if (line->words && column->width < WORDS_LEAST)
                column->width = WORDS_LEAST;
            for (int p = 0; p < PART_COUNT; p++)
                column->widths[p] = width_of(line->parts[p]) > column->widths[p] ? width_of(line->parts[p]) : column->widths[p];
        }
    int all = 0;
    for (int p = 0; p < PART_COUNT; p++)
        all += column->widths[p] + (p && column->widths[p] ? 2 - (p == PART_EFFORT) : 0);
    title = title > TITLE_MOST ? TITLE_MOST : title;
    column->width = column->width > all ? column->width : all;
    column->width = column->width > title ? column->width : title;
}

static void table_lay(struct group_table *table)
{
    for (int r = 0; r < table->row_count; r++) {
        int width = width_of(table->names[r].lines.at[0].words);
        table->name_width = width > table->name_width ? width : table->name_width;
    }
    table->name_width = table->name_width > NAME_MOST ? NAME_MOST : table->name_width;
    for (int r = 0; r < table->row_count; r++)
        cell_lay(table, &table->names[r], NULL, table->name_width);
    for (int c = 0; c < table->columns.count; c++) {
        struct lift_column *column = &table->columns.at[c];
        column_measure(column, table->row_count);
        cell_lay(table, &column->head, column->widths, column->width);
        for (int r = 0; r < table->row_count; r++)
            cell_lay(table, &column->cells[r], column->widths, column->width);
    }
}

struct group_table *group_table_make(struct arena *arena, const struct member *members, int count)
{
    struct group_table *table = NEW(arena, struct group_table);
    table->arena = arena;
    table->say = out_scratch(arena);
    table->rows = NEW_MANY(arena, const struct plan *, count);
    table->names = NEW_MANY(arena, struct cell, count);
    for (int i = 0; i < count; i++)
        row_of(table, &members[i]);
    for (int i = 0; i < count; i++)
        member_add(table, &members[i]);
    table_lay(table);
    return table;
}

/* ---- writing ---- */

int group_table_columns(const struct group_table *table)
{
    return table->columns.count;
}

int group_table_past(const struct group_table *table, int first)
{
    int width = table->name_width, past = first;
    while (past < table->columns.count && width + GAP + table->columns.at[past].width <= GROUP_COLUMNS)
        width += GAP + table->columns.at[past++].width;
    return past > first ? past : first + 1;
}

static const char *laid_at(const struct cell *cell, int line)
{
    return cell && line < cell->laid.count ? cell->laid.at[line] : NULL;
}

/* A line without the spaces at its end. */
static void line_close(struct out *out, size_t start)
{
    while (out->used > start && out->at[out->used - 1] == ' ')
        out->used--;
    out_char(out, '\n');
}

static const struct cell *cell_at(const struct lift_column *column, int row)
{
    return row < 0 ? &column->head : &column->cells[row];
}

static int row_height(const struct group_table *table, int row, int first, int past)
{
    int height = row < 0 ? 0 : table->names[row].laid.count;
    for (int c = first; c < past && c < table->columns.count; c++) {
        int lines = cell_at(&table->columns.at[c], row)->laid.count;
        height = lines > height ? lines : height;
    }
    return height;
}

int group_table_height(const struct group_table *table, int first, int past)
{
    int height = 0;
    for (int r = -1; r < table->row_count; r++)
        height += row_height(table, r, first, past) + 1;
    return height;
}

static void row_write(struct out *out, const struct group_table *table, int row, int first, int past)
{
    const struct cell *name = row < 0 ? NULL : &table->names[row];
    int height = row_height(table, row, first, past);
    for (int i = 0; i < height; i++) {
        size_t start = out->used;
        pad(out, laid_at(name, i), table->name_width, false);
        for (int c = first; c < past && c < table->columns.count; c++) {
            out_text(out, " | ");
            pad(out, laid_at(cell_at(&table->columns.at[c], row), i), table->columns.at[c].width, false);
        }
        line_close(out, start);
    }
}

void group_table_write(struct out *out, const struct group_table *table, int first, int past)
{
    int width = table->name_width;
    for (int c = first; c < past && c < table->columns.count; c++)
        width += GAP + table->columns.at[c].width;
    row_write(out, table, -1, first, past);
    for (int r = 0; r < table->row_count; r++) {
        out_chars(out, r ? '-' : '=', width);
        out_char(out, '\n');
        row_write(out, table, r, first, past);
    }
}
