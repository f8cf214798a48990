#include "emit/set_lines.h"

#include "emit/visible.h"
#include "plan/backoff.h"

enum { LOAD_COLUMN = SHEET_INDENT + 17, WARM_UP_COLUMN = SHEET_INDENT + 34, TABLE_COLUMN = SHEET_INDENT + 22, TABLE_WIDTH = 9 };

static const char *const labels[] = {
    [ROLE_WORK] = "Work",
    [ROLE_WARM_UP] = "Warm-up",
    [ROLE_TOP] = "Top set",
    [ROLE_BACK_OFF] = "Back-off",
};

static struct out *phrase(struct sheet *sheet)
{
    out_clear(&sheet->say);
    return &sheet->say;
}

static void phrase_put(struct sheet *sheet, int gap)
{
    if (sheet->say.used)
        line_piece(&sheet->lines, gap, sheet->say.at, sheet->say.used);
}

/* Discs stay together on a line where a line can hold them; else they break after a "+". */
static void discs_put(struct sheet *sheet, const struct row *row)
{
    say_discs(phrase(sheet), row);
    if (sheet->say.used <= LINE_COLUMNS - SHEET_INDENT) {
        phrase_put(sheet, 2);
        return;
    }
    sheet->say.at[sheet->say.used - 3] = '\0'; /* before the unit */
    line_end(&sheet->lines);
    line_words(&sheet->lines, 0, sheet->say.at);
    line_say(&sheet->lines, 1, unit_word(row->day->gym->unit));
}

/* What is said about a group after its loads, with commas in between. */
struct details {
    struct sheet *sheet;
    int count, columns; /* of the phrases in sheet->waiting; as one line */
};

/* Takes over the phrase in sheet->say. */
static void details_add(struct details *details)
{
    struct out *say = &details->sheet->say;
    if (say->used == 0)
        return;
    details->columns += columns_of(say->at, say->used) + (details->count++ ? 2 : 0);
    out_bytes(&details->sheet->waiting, say->at, say->used);
    out_char(&details->sheet->waiting, '\0');
}

static void details_say(struct details *details, const char *text)
{
    out_text(phrase(details->sheet), text);
    details_add(details);
}

static void details_seconds(struct details *details, const char *before, struct seconds_band band, const char *after)
{
    if (band.high == 0)
        return;
    struct out *say = phrase(details->sheet);
    out_text(say, before);
    say_seconds(say, band);
    out_text(say, after);
    details_add(details);
}

static void details_until(struct details *details, const struct row *row)
{
    const struct group *group = row->group->group;
    struct dec rpe;
    if (group_until(row->week, group, &rpe)) {
        say_rpe(phrase(details->sheet), "stop once a set reaches ", rpe, rpe);
        details_add(details);
    }
    if (group_more(group)->until_speed.e10 > 0) {
        struct out *say = phrase(details->sheet);
        out_text(say, "stop once the last rep is slower than ");
        out_dec(say, group_more(group)->until_speed);
        out_text(say, " m/s");
        details_add(details);
    }
}

static void details_tempo(struct details *details, const char *tempo)
{
    if (!tempo)
        return;
    out_text(phrase(details->sheet), "tempo ");
    visible_add(&details->sheet->say, tempo, strlen(tempo), VISIBLE_ONE_LINE);
    details_add(details);
}

static const char *capped_words(const struct plan_run *run)
{
    return run->has_load ? "capped: held below the planned load" : "capped: no harder than this";
}

static const char under_bar[] = "no lighter load on this bar";

/* What a single run has to say; several say it each on its own line. */
static void details_run(struct details *details, const struct row *row)
{
    if (row->group->run_count != 1)
        return;
    if (!load_says_effort(row->run)) {
        say_effort(phrase(details->sheet), row);
        details_add(details);
    }
    if (row->run->capped)
        details_say(details, capped_words(row->run));
    if (row->run->under_bar)
        details_say(details, under_bar);
}

static void details_find(struct details *details, const struct row *row)
{
    const struct group *group = row->group->group;
    details_run(details, row);
    details_until(details, row);
    details_seconds(details, "a set every ", (struct seconds_band){ group_more(group)->every_s, group_more(group)->every_s }, "");
    details_seconds(details, "rest ", group->rest, "");
    details_seconds(details, "pause ", group->pause, row->group->reps_kind == REPS_CLUSTER ? " between the parts" : "");
    details_tempo(details, group->tempo);
    if (group->optional)
        details_say(details, "optional");
}

/* Beside the load of the only run where they all fit, else under it. */
static void details_lines(struct sheet *sheet, const struct row *row)
{
    struct details details = { .sheet = sheet };
    out_clear(&sheet->waiting);
    details_find(&details, row);
    int gap = 2;
    if (details.count && (row->group->run_count > 1 || sheet->lines.column + gap + details.columns > sheet->lines.width)) {
        line_end(&sheet->lines);
        line_begin(&sheet->lines, 0, "", SHEET_INDENT);
    }
    const char *at = sheet->waiting.at;
    for (int i = 1; i <= details.count; i++, gap = 1) {
        struct out *say = phrase(sheet);
        out_text(say, at);
        out_text(say, i < details.count ? "," : "");
        phrase_put(sheet, gap);
        at += strlen(at) + 1;
    }
    line_end(&sheet->lines);
}

static void run_words(struct sheet *sheet, const struct row *row)
{
    if (!load_says_effort(row->run)) {
        say_effort(phrase(sheet), row);
        phrase_put(sheet, 2);
    }
    if (row->run->capped)
        line_say(&sheet->lines, 2, capped_words(row->run));
    if (row->run->under_bar)
        line_say(&sheet->lines, 2, under_bar);
}

static void run_line(struct sheet *sheet, const char *label, const struct row *row)
{
    line_begin(&sheet->lines, SHEET_LABEL, label, SHEET_INDENT);
    say_sets(phrase(sheet), row);
    phrase_put(sheet, 0);
    line_stop(&sheet->lines, LOAD_COLUMN);
    say_load(phrase(sheet), row);
    phrase_put(sheet, 2);
    discs_put(sheet, row);
    if (row->group->run_count > 1)
        run_words(sheet, row);
}

/* Room to write */

static const char *done_label(const struct row *row)
{
    static const char *const names[2][2] = { { "Done, kg", "Done, lb" }, { "Done, +kg", "Done, +lb" } };
    if (is_body_alone(row))
        return "Done";
    return names[row->entry->lift->loads == LOADS_BODYWEIGHT][row->day->gym->unit == UNIT_LB];
}

static void total_blanks(struct sheet *sheet, const struct row *row)
{
    enum { SETS_LIKELY = 8 };
    if (!is_body_alone(row))
        line_say(&sheet->lines, 0, "_____ x");
    for (int i = 0; i < SETS_LIKELY; i++)
        line_say(&sheet->lines, 1, i + 1 < SETS_LIKELY ? "___ +" : "___");
    line_say(&sheet->lines, 1, "@ ___");
}

static void done_lines(struct sheet *sheet, const struct row *row)
{
    int sets = sets_most(row);
    line_begin(&sheet->lines, SHEET_LABEL, done_label(row), SHEET_INDENT);
    if (sets == 0)
        total_blanks(sheet, row);
    for (int i = 1; i <= sets; i++) {
        struct out *say = phrase(sheet);
        out_int(say, i);
        out_text(say, is_body_alone(row) ? ": ___" : ": _____ x ___");
        out_text(say, row->group->reps_kind == REPS_SECONDS ? " s" : row->group->reps_kind == REPS_METRES ? " m" : "");
        out_text(say, " @ ___");
        phrase_put(sheet, 2);
    }
    line_end(&sheet->lines);
}

/* The back-off for another top set */

static void table_line(struct sheet *sheet, const char *label, const struct weight *cells, int count,
                       const struct row *row)
{
    enum weight_unit unit = row->day->gym->unit;
    line_begin(&sheet->lines, SHEET_LABEL, "", SHEET_INDENT);
    line_say(&sheet->lines, 0, label);
    for (int i = 0; i < count; i++) {
        struct out *say = phrase(sheet);
        if (row->entry->lift->loads == LOADS_BODYWEIGHT && cells[i].e10 > 0)
            out_char(say, '+');
        out_weight(say, cells[i], unit);
        int width = (int)say->used;
        line_stop(&sheet->lines, TABLE_COLUMN + (i + 1) * TABLE_WIDTH - width - 3);
        out_char(say, ' ');
        out_text(say, unit_word(unit));
        phrase_put(sheet, 1);
    }
    line_end(&sheet->lines);
}

static void table_row(struct sheet *sheet, const struct row *row, const struct plan_group *drop,
                      const struct plan_run *run, int sets_before, bool *headed)
{
    struct backoff rows[BACKOFF_TOPS];
    struct weight tops[BACKOFF_TOPS], loads[BACKOFF_TOPS];
    int count = backoff_rows(row->week, row->day, row->entry, &row->group->runs[row->group->run_count - 1], drop, run,
                             sets_before, rows);
    for (int i = 0; i < count; i++) {
        tops[i] = rows[i].top;
        loads[i] = rows[i].load;
    }
    if (count == 0)
        return;
    if (!*headed)
        table_line(sheet, "if the top set was", tops, count, row);
    table_line(sheet, *headed ? "the next one is" : "the back-off is", loads, count, row);
    *headed = true;
}

static void table_lines(struct sheet *sheet, const struct row *row)
{
    int top = (int)(row->group - row->entry->groups);
    bool headed = false;
    if (row->group->role != ROLE_TOP || row->group->group->load_kind != LOAD_EFFORT || row->group->run_count == 0)
        return;
    for (int g = top + 1; g < row->entry->group_count; g++) {
        const struct plan_group *drop = &row->entry->groups[g];
        if (backoff_top(row->entry, g) != top)
            continue;
        int before = 0;
        for (int r = 0; r < drop->run_count; r++) {
            table_row(sheet, row, drop, &drop->runs[r], before, &headed);
            before += drop->runs[r].sets / (row->entry->rounds > 0 ? row->entry->rounds : 1);
        }
    }
}

static void say_notes(struct sheet *sheet, const struct entry *entry, const struct group *group)
{
    for (int i = 0; i < group->note_count; i++) {
        struct group_note note = group_note(entry, group, i);
        line_begin(&sheet->lines, SHEET_LABEL, "", SHEET_INDENT);
        line_say(&sheet->lines, 0, "Note:");
        line_bytes(&sheet->lines, 1, note.text, note.length);
        line_end(&sheet->lines);
    }
}

static void group_lines(struct sheet *sheet, struct row *row, bool again)
{
    for (int r = 0; r < row->group->run_count; r++) {
        row->run = &row->group->runs[r];
        if (r > 0)
            line_end(&sheet->lines);
        run_line(sheet, again || r > 0 ? "" : labels[row->group->role], row);
    }
    if (row->group->run_count == 0)
        return;
    details_lines(sheet, row);
    say_notes(sheet, row->entry->entry, row->group->group);
    if (row->group->role != ROLE_WARM_UP)
        done_lines(sheet, row);
    table_lines(sheet, row);
}

/* Warm-ups that need few words stand two on a line, however many groups they come from. */
static bool is_plain_group(struct row row)
{
    for (int r = 0; r < row.group->run_count; r++) {
        row.run = &row.group->runs[r];
        if (!is_plain_warm_up(&row))
            return false;
    }
    return row.group->run_count > 0;
}

static int warm_up_lines(struct sheet *sheet, struct row row, int first, bool again)
{
    int g = first, pieces = 0;
    line_begin(&sheet->lines, SHEET_LABEL, again ? "" : labels[ROLE_WARM_UP], SHEET_INDENT);
    for (; g < row.entry->group_count; g++) {
        row.group = &row.entry->groups[g];
        if (!is_plain_group(row))
            break;
        for (int r = 0; r < row.group->run_count; r++, pieces++) {
            row.run = &row.group->runs[r];
            say_warm_up(phrase(sheet), &row);
            if (pieces && sheet->lines.column <= WARM_UP_COLUMN - 2 && sheet->say.used <= (size_t)(sheet->lines.width - WARM_UP_COLUMN))
                line_stop(&sheet->lines, WARM_UP_COLUMN);
            phrase_put(sheet, 2);
        }
    }
    line_end(&sheet->lines);
    return g - 1;
}

void set_lines(struct sheet *sheet, struct row row)
{
    enum role last = ROLE_WORK;
    for (int g = 0; g < row.entry->group_count; g++) {
        row.group = &row.entry->groups[g];
        bool again = g > 0 && row.group->role == ROLE_WARM_UP && last == ROLE_WARM_UP;
        last = row.group->role;
        if (is_plain_group(row))
            g = warm_up_lines(sheet, row, g, again);
        else
            group_lines(sheet, &row, again);
    }
}
