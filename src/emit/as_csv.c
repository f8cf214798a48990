/* Comma-separated values, RFC 4180: a row for each run of like sets. */
#include "base/csv.h"
#include "emit/cells.h"
#include "emit/csv_kept.h"
#include "emit/formats.h"
#include "emit/visible.h"

struct writer {
    struct out out;
    struct out prefix; /* the cells that are the same all day */
    struct out rest;   /* of a row, after its number within the day */
    struct out cell;   /* a text as it comes */
    struct out shown;  /* the same, before it is quoted */
    struct format_options options;
    const char *line_end;
    struct kept *kept;
};

/* Line breaks of a note stay: RFC 4180 lets a quoted cell hold them. Other control characters are made visible. */
static void text_cell(struct writer *writer, struct out *to, const struct column *column, const struct row *row)
{
    out_clear(&writer->cell);
    column->write(&writer->cell, row);
    if (writer->cell.used == 0)
        return;
    out_clear(&writer->shown);
    visible_add(&writer->shown, writer->cell.at, writer->cell.used, VISIBLE_BREAKS);
    char *room = out_room(to, 2 * writer->shown.used + 4);
    to->used += csv_cell(room, writer->shown.at, writer->shown.used);
}

static void cells_write(struct writer *writer, struct out *to, int first, int past, const struct row *row)
{
    for (int i = first; i < past; i++) {
        if (i > first)
            out_char(to, ',');
        if (columns[i].kind == CELL_TEXT)
            text_cell(writer, to, &columns[i], row);
        else if (columns[i].write)
            columns[i].write(to, row);
    }
}

static void entry_write(struct writer *writer, struct row *row)
{
    for (int g = 0; g < row->entry->group_count; g++) {
        row->group = &row->entry->groups[g];
        for (int r = 0; r < row->group->run_count; r++) {
            row->run = &row->group->runs[r];
            out_bytes(&writer->out, writer->prefix.at, writer->prefix.used);
            out_int(&writer->out, ++row->seq);
            out_clear(&writer->rest);
            out_char(&writer->rest, ',');
            cells_write(writer, &writer->rest, COLUMN_SEQ + 1, COLUMN_COUNT, row);
            out_text(&writer->rest, writer->line_end);
            out_bytes(&writer->out, writer->rest.at, writer->rest.used);
            kept_row(writer->kept, writer->rest.at, writer->rest.used);
            out_settle(&writer->out);
        }
    }
}

static void day_write(struct writer *writer, struct row row)
{
    out_clear(&writer->prefix);
    cells_write(writer, &writer->prefix, 0, COLUMN_SEQ, &row);
    out_char(&writer->prefix, ',');
    kept_day(writer->kept, writer->prefix.at, writer->prefix.used);
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        if (!kept_entry(writer->kept, row.entry->lift, &row.seq, &writer->out))
            entry_write(writer, &row);
    }
}

struct writer *csv_begin(struct arena *arena, struct sink sink, const struct format_options *options)
{
    struct writer *writer = NEW(arena, struct writer);
    *writer = (struct writer){
        .out = out_new(arena, sink),
        .prefix = out_scratch(arena),
        .rest = out_scratch(arena),
        .cell = out_scratch(arena),
        .shown = out_scratch(arena),
        .options = *options,
        .line_end = options->crlf ? "\r\n" : "\n",
        .kept = kept_new(arena),
    };
    for (int i = 0; i < COLUMN_COUNT && !options->resumed; i++) {
        out_text(&writer->out, columns[i].name);
        out_text(&writer->out, i + 1 < COLUMN_COUNT ? "," : writer->line_end);
    }
    return writer;
}

bool csv_athlete(struct writer *writer, const struct athlete *athlete)
{
    (void)athlete;
    return !writer->out.failed;
}

bool csv_plan(struct writer *writer, const struct plan *plan)
{
    struct row row = { .plan = plan };
    kept_begin(writer->kept, plan);
    for (int w = 0; w < plan->week_count && !writer->out.failed; w++) {
        row.week = &plan->weeks[w];
        for (int d = 0; d < row.week->day_count; d++) {
            row.day = &row.week->days[d];
            if (narrow_has_day(&writer->options.narrow, row.week, row.day))
                day_write(writer, row);
        }
    }
    kept_end(writer->kept);
    return !writer->out.failed;
}

bool csv_knows(const struct writer *writer, const struct alike *alike)
{
    return kept_knows(writer->kept, alike);
}

bool csv_again(struct writer *writer, const struct athlete *athlete, const struct alike *alike)
{
    return kept_write(writer->kept, athlete->name, alike, &writer->out);
}

bool csv_pause(struct writer *writer)
{
    return out_flush(&writer->out);
}

bool csv_end(struct writer *writer)
{
    return out_flush(&writer->out);
}
