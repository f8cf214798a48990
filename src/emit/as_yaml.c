/* The plan for other programs, in YAML that readers of 1.1 and 1.2 take alike: keys are bare words of ours, names and
 * texts stand in double quotes, only numbers are plain.
 *
 *   setwright: 1
 *   athletes: name, title, blocks
 *     blocks: name, title, goal, weeks
 *       weeks: week, start, kind (training, deload, taper), days, totals
 *         days: day, title, date, work
 *           work: the columns of the CSV from seq on; and the title of the lift
 *         totals: sets, reps, lifts (name, sets, reps), muscles (name, sets), tonnage, unit, mean_percent,
 *                 by_effort (sets by rpe), minutes; of the whole week, also where days are left out
 *
 * What is open or not given is left out. An athlete or block of which nothing is to be written does not appear. */
#include "emit/cells.h"
#include "emit/formats.h"

#include <yaml.h>

struct writer {
    struct out out;
    struct out cell;
    yaml_emitter_t emitter;
    bool athlete_open;
    size_t skip; /* of the emitter's next bytes, so many have been written or are not ours to write */
    const struct athlete *next; /* announced, not yet written */
    struct format_options options;
};

static int on_bytes(void *context, unsigned char *bytes, size_t length)
{
    struct writer *writer = context;
    size_t skipped = writer->skip < length ? writer->skip : length;
    writer->skip -= skipped;
    out_bytes(&writer->out, (const char *)bytes + skipped, length - skipped);
    return out_settle(&writer->out);
}

/* Events. The emitter owns an event once it is handed over, whether it takes it or not. */

static void event_emit(struct writer *writer, yaml_event_t *event, int made)
{
    if (writer->out.failed && made)
        yaml_event_delete(event);
    else if ((!made || !yaml_emitter_emit(&writer->emitter, event)) && !writer->out.failed)
        arena_exhausted(writer->out.arena);
}

static void scalar_put(struct writer *writer, const char *bytes, size_t length, yaml_scalar_style_t style)
{
    yaml_event_t event;
    const yaml_char_t *value = (const yaml_char_t *)bytes;
    bool plain = style == YAML_PLAIN_SCALAR_STYLE;
    event_emit(writer, &event,
               yaml_scalar_event_initialize(&event, NULL, NULL, value, (int)length, plain, !plain, style));
}

static void key_put(struct writer *writer, const char *key)
{
    scalar_put(writer, key, strlen(key), YAML_PLAIN_SCALAR_STYLE);
}

static void text_put(struct writer *writer, const char *key, const char *text)
{
    if (!text)
        return;
    key_put(writer, key);
    scalar_put(writer, text, strlen(text), YAML_DOUBLE_QUOTED_SCALAR_STYLE);
}

static void dec_put(struct writer *writer, const char *key, struct dec number)
{
    out_clear(&writer->cell);
    out_dec(&writer->cell, number);
    key_put(writer, key);
    scalar_put(writer, writer->cell.at, writer->cell.used, YAML_PLAIN_SCALAR_STYLE);
}

static void int_put(struct writer *writer, const char *key, int number)
{
    dec_put(writer, key, dec_int(number));
}

static void date_put(struct writer *writer, const char *key, struct date date)
{
    char text[11];
    if (!date_is_set(date))
        return;
    date_write(text, date);
    text_put(writer, key, text);
}

static void map_begin(struct writer *writer)
{
    yaml_event_t event;
    event_emit(writer, &event, yaml_mapping_start_event_initialize(&event, NULL, NULL, 1, YAML_BLOCK_MAPPING_STYLE));
}

static void map_end(struct writer *writer)
{
    yaml_event_t event;
    event_emit(writer, &event, yaml_mapping_end_event_initialize(&event));
}

static void list_begin(struct writer *writer, const char *key)
{
    yaml_event_t event;
    key_put(writer, key);
    event_emit(writer, &event, yaml_sequence_start_event_initialize(&event, NULL, NULL, 1, YAML_BLOCK_SEQUENCE_STYLE));
}

static void list_end(struct writer *writer)
{
    yaml_event_t event;
    event_emit(writer, &event, yaml_sequence_end_event_initialize(&event));
}

/* Work */

static void cell_put(struct writer *writer, const struct column *column, const struct row *row)
{
    struct out *cell = &writer->cell;
    out_clear(cell);
    if (column->write)
        column->write(cell, row);
    if (cell->used == 0)
        return;
    bool plain = column->kind == CELL_NUMBER && cell_is_number(cell->at, cell->used);
    key_put(writer, column->name);
    scalar_put(writer, cell->at, cell->used, plain ? YAML_PLAIN_SCALAR_STYLE : YAML_DOUBLE_QUOTED_SCALAR_STYLE);
}

static void work_put(struct writer *writer, const struct row *row)
{
    map_begin(writer);
    for (int i = COLUMN_SEQ; i < COLUMN_COUNT; i++) {
        cell_put(writer, &columns[i], row);
        if (strcmp(columns[i].name, "lift") == 0)
            text_put(writer, "title", row->entry->lift->title);
    }
    map_end(writer);
}

static void entry_put(struct writer *writer, struct row *row)
{
    for (int g = 0; g < row->entry->group_count; g++) {
        row->group = &row->entry->groups[g];
        for (int r = 0; r < row->group->run_count; r++) {
            row->run = &row->group->runs[r];
            row->seq++;
            work_put(writer, row);
        }
    }
}

static void day_put(struct writer *writer, struct row row)
{
    map_begin(writer);
    text_put(writer, "day", row.day->day->label);
    text_put(writer, "title", row.day->day->title);
    date_put(writer, "date", row.day->date);
    list_begin(writer, "work");
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        entry_put(writer, &row);
    }
    list_end(writer);
    map_end(writer);
}

/* Totals */

static void lifts_put(struct writer *writer, const struct plan_totals *totals)
{
    list_begin(writer, "lifts");
    for (int i = 0; i < totals->lift_count; i++) {
        map_begin(writer);
        text_put(writer, "name", totals->lifts[i].lift->name);
        int_put(writer, "sets", totals->lifts[i].sets);
        int_put(writer, "reps", totals->lifts[i].reps);
        map_end(writer);
    }
    list_end(writer);
}

static void muscles_put(struct writer *writer, const struct plan_totals *totals)
{
    list_begin(writer, "muscles");
    for (int i = 0; i < totals->muscle_count; i++) {
        map_begin(writer);
        text_put(writer, "name", totals->muscles[i].muscle);
        dec_put(writer, "sets", dec_halves(totals->muscles[i].half_sets));
        map_end(writer);
    }
    list_end(writer);
}

static void efforts_put(struct writer *writer, const struct plan_totals *totals)
{
    static const char *const bands[] = { "rpe_below_5", "rpe_5_to_7", "rpe_7_to_9", "rpe_9_and_above" };
    key_put(writer, "by_effort");
    map_begin(writer);
    for (int i = 0; i < 4; i++)
        int_put(writer, bands[i], totals->by_effort[i]);
    map_end(writer);
}

static void totals_put(struct writer *writer, const struct plan *plan, const struct plan_totals *totals)
{
    key_put(writer, "totals");
    map_begin(writer);
    int_put(writer, "sets", totals->sets);
    int_put(writer, "reps", totals->reps);
    lifts_put(writer, totals);
    muscles_put(writer, totals);
    dec_put(writer, "tonnage", weight_in(totals->tonnage, plan->unit));
    text_put(writer, "unit", plan->unit == UNIT_KG ? "kg" : "lb");
    if (totals->has_percent)
        dec_put(writer, "mean_percent", totals->mean_percent);
    efforts_put(writer, totals);
    int_put(writer, "minutes", totals->minutes);
    map_end(writer);
}

/* Weeks, blocks, athletes */

static void week_put(struct writer *writer, const struct plan *plan, const struct plan_week *week)
{
    struct row row = { .plan = plan, .week = week };
    map_begin(writer);
    int_put(writer, "week", week->number);
    date_put(writer, "start", week->start);
    text_put(writer, "kind", week_kind_name(week->kind));
    list_begin(writer, "days");
    for (int d = 0; d < week->day_count; d++) {
        row.day = &week->days[d];
        if (narrow_has_day(&writer->options.narrow, week, row.day))
            day_put(writer, row);
    }
    list_end(writer);
    totals_put(writer, plan, &week->totals);
    map_end(writer);
}

static void athlete_close(struct writer *writer)
{
    if (!writer->athlete_open)
        return;
    list_end(writer);
    map_end(writer);
    writer->athlete_open = false;
}

static void athlete_open(struct writer *writer)
{
    if (!writer->next)
        return;
    athlete_close(writer);
    map_begin(writer);
    text_put(writer, "name", writer->next->name);
    text_put(writer, "title", writer->next->title);
    list_begin(writer, "blocks");
    writer->athlete_open = true;
    writer->next = NULL;
}

enum { HEAD_BYTES = sizeof "setwright: 1\nathletes:\n" - 1 }; /* what document_begin comes to */

static void document_begin(struct writer *writer)
{
    yaml_event_t event;
    writer->skip = writer->options.resumed ? HEAD_BYTES : 0;
    event_emit(writer, &event, yaml_stream_start_event_initialize(&event, YAML_UTF8_ENCODING));
    event_emit(writer, &event, yaml_document_start_event_initialize(&event, NULL, NULL, NULL, 1));
    map_begin(writer);
    int_put(writer, "setwright", 1);
    list_begin(writer, "athletes");
}

static void emitter_drop(void *emitter)
{
    yaml_emitter_delete(emitter); /* leaves it zeroed, so that a second time is nothing */
}

struct writer *yaml_begin(struct arena *arena, struct sink sink, const struct format_options *options)
{
    struct writer *writer = NEW(arena, struct writer);
    writer->out = out_new(arena, sink);
    writer->cell = out_scratch(arena);
    writer->options = *options;
    arena_ends(arena, emitter_drop, &writer->emitter);
    if (!yaml_emitter_initialize(&writer->emitter))
        arena_exhausted(arena);
    yaml_emitter_set_output(&writer->emitter, on_bytes, writer);
    yaml_emitter_set_encoding(&writer->emitter, YAML_UTF8_ENCODING);
    yaml_emitter_set_unicode(&writer->emitter, 1);
    yaml_emitter_set_width(&writer->emitter, -1);
    document_begin(writer);
    return writer;
}

bool yaml_athlete(struct writer *writer, const struct athlete *athlete)
{
    writer->next = athlete;
    return !writer->out.failed;
}

bool yaml_plan(struct writer *writer, const struct plan *plan)
{
    const struct narrow *narrow = &writer->options.narrow;
    int first = 0;
    while (first < plan->week_count && !narrow_has_week(narrow, &plan->weeks[first]))
        first++;
    if (first == plan->week_count)
        return !writer->out.failed;
    athlete_open(writer);
    map_begin(writer);
    text_put(writer, "name", plan->block->name);
    text_put(writer, "title", plan->block->title);
    text_put(writer, "goal", goal_name(plan->block->goal));
    list_begin(writer, "weeks");
    for (int w = first; w < plan->week_count && !writer->out.failed; w++)
        if (narrow_has_week(narrow, &plan->weeks[w]))
            week_put(writer, plan, &plan->weeks[w]);
    list_end(writer);
    map_end(writer);
    return !writer->out.failed;
}

static void document_end(struct writer *writer)
{
    yaml_event_t event;
    athlete_close(writer);
    list_end(writer);
    map_end(writer);
    event_emit(writer, &event, yaml_document_end_event_initialize(&event, 1));
    event_emit(writer, &event, yaml_stream_end_event_initialize(&event));
}

/* The emitter ends a line when the next one begins; here it ends now, and not again then. */
bool yaml_pause(struct writer *writer)
{
    bool open = writer->athlete_open;
    athlete_close(writer);
    if (!yaml_emitter_flush(&writer->emitter) || writer->out.failed)
        return false;
    if (open) {
        out_char(&writer->out, '\n');
        writer->skip = 1;
    }
    return out_flush(&writer->out);
}

bool yaml_end(struct writer *writer)
{
    if (writer->options.resumed && !writer->athlete_open)
        writer->skip = SIZE_MAX; /* nobody came: an empty list is no part of the others' */
    document_end(writer);
    yaml_emitter_delete(&writer->emitter);
    return out_flush(&writer->out);
}
