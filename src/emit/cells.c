#include "emit/cells.h"

static void athlete_cell(struct out *to, const struct row *row)
{
    out_text(to, row->plan->athlete->name);
}

static void block_cell(struct out *to, const struct row *row)
{
    out_text(to, row->plan->block->name);
}

static void week_cell(struct out *to, const struct row *row)
{
    out_int(to, row->week->number);
}

static void date_cell(struct out *to, const struct row *row)
{
    out_date(to, row->day->date);
}

static void day_cell(struct out *to, const struct row *row)
{
    out_text(to, row->day->day->label);
}

static void seq_cell(struct out *to, const struct row *row)
{
    out_int(to, row->seq);
}

static void lift_cell(struct out *to, const struct row *row)
{
    out_text(to, row->entry->lift->name);
}

static void role_cell(struct out *to, const struct row *row)
{
    out_text(to, role_name(row->group->role));
}

static void sets_cell(struct out *to, const struct row *row)
{
    if (row->run->sets > 0)
        out_int(to, row->run->sets);
}

static void reps_write(struct out *to, const struct plan_group *group, int reps)
{
    out_int(to, reps);
    if (group->reps_kind == REPS_SECONDS)
        out_text(to, " s");
    if (group->reps_kind == REPS_METRES)
        out_text(to, " m");
}

static void reps_low_cell(struct out *to, const struct row *row)
{
    if (row->group->reps_low > 0)
        reps_write(to, row->group, row->group->reps_low);
}

static void reps_high_cell(struct out *to, const struct row *row)
{
    if (row->group->reps_kind != REPS_AMRAP)
        reps_write(to, row->group, row->group->reps_high);
}

static void rpe_cell(struct out *to, const struct row *row)
{
    const struct plan_run *run = row->run;
    if (run_shows_expected(run)) {
        if (run->expected_under_one)
            out_text(to, "<1");
        else
            out_dec(to, run->expected);
    } else if (run->has_effort) {
        out_dec(to, run->effort_low);
        if (run->effort_high.e10 != run->effort_low.e10) {
            out_char(to, '-');
            out_dec(to, run->effort_high);
        }
    }
}

static void percent_cell(struct out *to, const struct row *row)
{
    if (row->run->has_percent)
        out_dec(to, row->run->percent);
}

static void load_cell(struct out *to, const struct row *row)
{
    if (row->run->has_load)
        out_weight(to, row->run->shown, row->day->gym->unit);
}

static void unit_cell(struct out *to, const struct row *row)
{
    if (row->run->has_load)
        out_text(to, row->day->gym->unit == UNIT_KG ? "kg" : "lb");
}

static void per_side_cell(struct out *to, const struct row *row)
{
    for (int i = 0; i < row->run->disc_count; i++) {
        if (i > 0)
            out_char(to, '+');
        out_weight(to, row->run->discs[i], row->day->gym->unit);
    }
}

static void rest_cell(struct out *to, const struct row *row)
{
    struct seconds_band rest = row->group->group->rest;
    if (rest.high == 0)
        return;
    out_int(to, rest.low);
    if (rest.high != rest.low) {
        out_char(to, '-');
        out_int(to, rest.high);
    }
}

static void tempo_cell(struct out *to, const struct row *row)
{
    if (row->group->group->tempo)
        out_text(to, row->group->group->tempo);
}

static void note_bytes(struct out *to, size_t begun, const char *note, size_t length)
{
    if (to->used > begun)
        out_text(to, "; ");
    out_bytes(to, note, length);
}

static void note_add(struct out *to, size_t begun, const char *note)
{
    note_bytes(to, begun, note, strlen(note));
}

static void note_cell(struct out *to, const struct row *row)
{
    size_t begun = to->used;
    const struct group *group = row->group->group;
    const struct entry *entry = row->entry->entry;
    if (!row->run->has_load && row->run->open)
        note_add(to, begun, row->run->open);
    for (int i = 0; i < group->note_count; i++) {
        struct group_note note = group_note(entry, group, i);
        note_bytes(to, begun, note.text, note.length);
    }
    for (int i = 0; i < entry_more(entry)->note_count; i++)
        note_add(to, begun, entry_more(entry)->notes[i]);
    for (int i = 0; i < row->entry->note_count; i++)
        note_add(to, begun, row->entry->notes[i]);
}

const struct column columns[COLUMN_COUNT] = {
    { "athlete", CELL_NAME, athlete_cell },
    { "block", CELL_NAME, block_cell },
    { "week", CELL_NUMBER, week_cell },
    { "date", CELL_NAME, date_cell },
    { "day", CELL_NAME, day_cell },
    { "seq", CELL_NUMBER, seq_cell },
    { "lift", CELL_NAME, lift_cell },
    { "role", CELL_NAME, role_cell },
    { "sets", CELL_NUMBER, sets_cell },
    { "reps_low", CELL_NUMBER, reps_low_cell },
    { "reps_high", CELL_NUMBER, reps_high_cell },
    { "rpe", CELL_NUMBER, rpe_cell },
    { "percent", CELL_NUMBER, percent_cell },
    { "load", CELL_NUMBER, load_cell },
    { "unit", CELL_NAME, unit_cell },
    { "per_side", CELL_NAME, per_side_cell },
    { "rest_s", CELL_NUMBER, rest_cell },
    { "tempo", CELL_TEXT, tempo_cell },
    { "note", CELL_TEXT, note_cell },
    { "done_load", CELL_DONE, NULL },
    { "done_reps", CELL_DONE, NULL },
    { "done_rpe", CELL_DONE, NULL },
};

bool cell_is_number(const char *bytes, size_t length)
{
    struct dec number;
    if (length > 0 && bytes[0] == '-')
        return dec_parse(bytes + 1, length - 1, &number);
    return dec_parse(bytes, length, &number);
}
