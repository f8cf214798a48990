/* The training sheet: a page for each athlete and week, made to be read in a gym and written on. */
#include "emit/formats.h"
#include "emit/instead.h"
#include "emit/set_lines.h"
#include "emit/visible.h"

enum { CUE_GAP = 3 };

struct writer {
    struct out out;
    struct sheet sheet;
    struct format_options options;
    int pages;
};

static void words_line(struct lines *lines, int indent, const char *before, const char *text, const char *after)
{
    line_begin(lines, 0, "", indent);
    line_words(lines, 0, before);
    line_words(lines, *before ? 1 : 0, text);
    line_words(lines, *after ? 1 : 0, after);
    line_end(lines);
}

static void notes_lines(struct lines *lines, int indent, const char *const *notes, int count)
{
    for (int i = 0; i < count; i++)
        words_line(lines, indent, "Note:", notes[i], "");
}

static const char *phrase_end(struct out *say)
{
    out_char(say, '\0');
    return say->at;
}

/* Head of a page */

static const char *const kind_lines[] = {
    [WEEK_TRAINING] = NULL,
    [WEEK_DELOAD] = "DELOAD WEEK: lighter on purpose. Leave the gym fresher than you came.",
    [WEEK_TAPER] = "TAPER WEEK: less work on purpose. Save yourself for the day that counts.",
};

static void name_line(struct writer *writer, const struct plan *plan, const struct plan_week *week)
{
    struct out *say = &writer->sheet.say;
    out_clear(say);
    out_text(say, plan->block->title ? plan->block->title : plan->block->name);
    out_text(say, ", week ");
    out_int(say, week->number);
    out_text(say, " of ");
    out_int(say, plan->week_count);
    lines_sides(&writer->sheet.lines, plan->athlete->title ? plan->athlete->title : plan->athlete->name,
                phrase_end(say));
}

static void head_lines(struct writer *writer, const struct plan *plan, const struct plan_week *week, bool first)
{
    struct lines *lines = &writer->sheet.lines;
    struct out *say = &writer->sheet.say;
    name_line(writer, plan, week);
    out_clear(say);
    say_week_dates(say, week->start);
    lines_sides(lines, phrase_end(say), plan->unit == UNIT_KG ? "Bodyweight: ______ kg" : "Bodyweight: ______ lb");
    if (kind_lines[week->kind])
        words_line(lines, 0, "", kind_lines[week->kind], "");
    if (first)
        notes_lines(lines, 0, plan->athlete->notes, plan->athlete->note_count);
    if (first)
        notes_lines(lines, 0, plan->block->notes, plan->block->note_count);
    notes_lines(lines, 0, week->notes, week->note_count);
    words_line(lines, 0, "", "Write down what you did: load x reps @ rpe. Rpe 8: two more reps were in you.", "");
}

/* Entries */

/* The cue stands beside the title where it fits whole; else it gets lines of its own further down. */
static bool cue_beside(struct sheet *sheet, const char *cue)
{
    struct out *say = &sheet->say;
    if (!cue || strchr(cue, '\n'))
        return false;
    out_clear(say);
    out_text(say, "Cue: ");
    visible_add(say, cue, strlen(cue), VISIBLE_ONE_LINE);
    if (sheet->lines.column + CUE_GAP + columns_of(say->at, say->used) > sheet->lines.width)
        return false;
    line_piece(&sheet->lines, CUE_GAP, say->at, say->used);
    return true;
}

/* Whether the cue has been said. */
static bool title_line(struct sheet *sheet, const struct plan_entry *entry, const char *number)
{
    struct lines *lines = &sheet->lines;
    line_begin(lines, 0, number, SHEET_LABEL);
    line_words(lines, 1, lift_words(entry->lift));
    if (entry->entry->title) {
        line_say(lines, 1, "-");
        line_words(lines, 1, entry->entry->title);
    }
    bool said = cue_beside(sheet, entry->lift->cue);
    line_end(lines);
    return said;
}

/* Words of the coach between words of ours: "Instead of Overhead press (left shoulder)". */
static void swap_line(struct sheet *sheet, const struct plan_entry *entry)
{
    struct out *say = &sheet->say;
    if (!entry->instead_of)
        return;
    out_clear(say);
    out_text(say, lift_words(entry->instead_of));
    if (entry->because) {
        out_text(say, " (");
        out_text(say, entry->because);
        out_char(say, ')');
    }
    words_line(&sheet->lines, SHEET_LABEL, "Instead of", phrase_end(say), "");
}

static void choice_line(struct sheet *sheet, const struct plan_entry *entry)
{
    struct out *say = &sheet->say;
    if (entry->choice_count == 0)
        return;
    out_clear(say);
    for (int i = 0; i < entry->choice_count; i++) {
        out_text(say, i == 0 ? "" : ", or ");
        out_text(say, lift_words(entry->choices[i]));
    }
    out_text(say, ", as you choose; the loads here are for ");
    out_text(say, lift_words(entry->lift));
    words_line(&sheet->lines, SHEET_LABEL, "Or", phrase_end(say), "");
}

/* In small print: what her gym has and she does not avoid. */
static void instead_line(struct sheet *sheet, const struct row *row)
{
    struct out *say = &sheet->say;
    const struct lift *lift;
    out_clear(say);
    for (int at = 0; (lift = instead_next(row->plan->athlete, row->day->gym, row->entry, &at));) {
        out_text(say, say->used ? ", or " : "");
        out_text(say, lift_words(lift));
    }
    if (!say->used)
        return;
    out_char(say, ')');
    words_line(&sheet->lines, SHEET_LABEL, "(Instead, at the same effort:", phrase_end(say), "");
}

static void entry_lines(struct sheet *sheet, const struct row *row, const char *number)
{
    const struct plan_entry *entry = row->entry;
    struct lines *lines = &sheet->lines;
    bool cue_said = title_line(sheet, entry, number);
    swap_line(sheet, entry);
    choice_line(sheet, entry);
    instead_line(sheet, row);
    if (entry->lift->cue && !cue_said)
        words_line(lines, SHEET_LABEL, "Cue:", entry->lift->cue, "");
    notes_lines(lines, SHEET_LABEL, entry->lift->notes, entry->lift->note_count);
    notes_lines(lines, SHEET_LABEL, entry->entry->notes, entry->entry->note_count);
    notes_lines(lines, SHEET_LABEL, entry->notes, entry->note_count);
    set_lines(sheet, *row);
}

/* Supersets */

/* "1.", or "2b." within a superset. */
static void number_write(char to[32], int number, int part)
{
    int length = dec_write(to, dec_int(number));
    if (part >= 0)
        to[length++] = (char)('a' + part % 26);
    to[length++] = '.';
    to[length] = '\0';
}

static void say_superset(struct out *say, const struct plan_entry *entry)
{
    out_text(say, "Superset");
    if (entry->superset_minutes > 0) {
        out_text(say, " for ");
        out_int(say, entry->superset_minutes);
        out_text(say, " min: a set of each in turn, over and over. Rounds: ____");
        return;
    }
    if (entry->rounds > 0) {
        out_text(say, ", ");
        say_count(say, entry->rounds, "round", "rounds");
    }
    out_text(say, ": a set of each in turn, and round again");
}

static void superset_line(struct sheet *sheet, const struct plan_entry *first, int number)
{
    char text[32];
    number_write(text, number, -1);
    out_clear(&sheet->say);
    say_superset(&sheet->say, first);
    line_begin(&sheet->lines, 0, text, SHEET_LABEL);
    line_words(&sheet->lines, 1, phrase_end(&sheet->say));
    line_end(&sheet->lines);
}

static void entries_lines(struct sheet *sheet, struct row row)
{
    int number = 0, part = -1;
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        bool inside = row.entry->superset != 0;
        bool goes_on = inside && e > 0 && row.entry[-1].superset == row.entry->superset;
        number += !goes_on;
        part = !inside ? -1 : goes_on ? part + 1 : 0;
        if (!goes_on)
            line_end(&sheet->lines);
        if (inside && !goes_on)
            superset_line(sheet, row.entry, number);
        char text[32];
        number_write(text, number, part);
        entry_lines(sheet, &row, text);
    }
}

/* Days */

static void day_head(struct sheet *sheet, const struct plan *plan, const struct plan_day *day)
{
    struct out *say = &sheet->say;
    out_clear(say);
    if (date_is_set(day->date))
        say_date(say, day->date, true, true);
    else
        out_text(say, "Any day this week");
    out_char(say, '\0');
    size_t middle = say->used;
    out_text(say, "Day ");
    out_text(say, day->day->label);
    if (day->day->title) {
        out_text(say, ": ");
        out_text(say, day->day->title);
    }
    phrase_end(say);
    lines_rule(&sheet->lines, '=');
    lines_sides(&sheet->lines, say->at, say->at + middle);
    if (day->gym != plan->athlete->gym)
        words_line(&sheet->lines, 0, "In this gym:", day->gym->title ? day->gym->title : day->gym->name, "");
    if (day->day->optional)
        words_line(&sheet->lines, 0, "", "This day is optional.", "");
    notes_lines(&sheet->lines, 0, day->day->notes, day->day->note_count);
    notes_lines(&sheet->lines, 0, day->notes, day->note_count);
}

static void day_lines(struct writer *writer, struct row row)
{
    day_head(&writer->sheet, row.plan, row.day);
    entries_lines(&writer->sheet, row);
    line_end(&writer->sheet.lines);
    words_line(&writer->sheet.lines, 0, "",
               "The whole session: rpe ___ for ____ min. Note: _____________________________", "");
}

/* Foot of a page */

static void say_whole(struct out *say, struct dec number)
{
    out_dec(say, ratio_nearest(ratio_dec(number), dec_int(1)));
}

/* Pieces that stay together at the end of a line. */
static void total_put(struct writer *writer, const char *after)
{
    struct out *say = &writer->sheet.say;
    out_text(say, after);
    line_piece(&writer->sheet.lines, 1, say->at, say->used);
    out_clear(say);
}

static void totals_line(struct writer *writer, const struct plan *plan, const struct plan_totals *totals)
{
    struct out *say = &writer->sheet.say;
    line_begin(&writer->sheet.lines, 0, "", 0);
    line_say(&writer->sheet.lines, 0, "Whole week:");
    out_clear(say);
    say_count(say, totals->sets, "set", "sets");
    total_put(writer, ",");
    say_count(say, totals->reps, "rep", "reps");
    if (totals->tonnage.e10 > 0) {
        total_put(writer, ",");
        say_whole(say, weight_in(totals->tonnage, plan->unit));
        out_char(say, ' ');
        out_text(say, unit_word(plan->unit));
        out_text(say, " lifted");
    }
    if (totals->has_percent) {
        total_put(writer, ",");
        out_text(say, "mean ");
        out_dec(say, totals->mean_percent);
        out_text(say, " % of max");
    }
    if (totals->minutes > 0) {
        total_put(writer, ",");
        out_text(say, "about ");
        out_int(say, totals->minutes);
        out_text(say, " min");
    }
    total_put(writer, "");
    line_end(&writer->sheet.lines);
}

static const char *const cautions[] = {
    "Stop at sharp pain or dizziness. Squat and bench with safeties or spotters.",
    "This is a plan, not medical advice: when unsure, ask your coach or doctor.",
};

static void foot_lines(struct writer *writer, const struct plan *plan, const struct plan_week *week)
{
    lines_rule(&writer->sheet.lines, '=');
    totals_line(writer, plan, &week->totals);
    for (size_t i = 0; i < sizeof cautions / sizeof cautions[0]; i++)
        words_line(&writer->sheet.lines, 0, "", cautions[i], "");
}

static void page_lines(struct writer *writer, const struct plan *plan, const struct plan_week *week, bool first)
{
    struct row row = { .plan = plan, .week = week };
    if (writer->pages++ > 0)
        out_char(&writer->out, '\f');
    head_lines(writer, plan, week, first);
    if (week->day_count == 0)
        words_line(&writer->sheet.lines, 0, "", "No training this week.", "");
    for (int d = 0; d < week->day_count; d++) {
        row.day = &week->days[d];
        if (narrow_has_day(&writer->options.narrow, week, row.day))
            day_lines(writer, row);
    }
    foot_lines(writer, plan, week);
    out_settle(&writer->out);
}

struct writer *text_begin(struct arena *arena, struct sink sink, const struct format_options *options)
{
    struct writer *writer = NEW(arena, struct writer);
    writer->out = out_new(arena, sink);
    writer->sheet = (struct sheet){
        .lines = lines_new(&writer->out, arena),
        .say = out_scratch(arena),
        .waiting = out_scratch(arena),
    };
    writer->options = *options;
    writer->pages = options->resumed;
    return writer;
}

bool text_athlete(struct writer *writer, const struct athlete *athlete)
{
    (void)athlete;
    return !writer->out.failed;
}

bool text_plan(struct writer *writer, const struct plan *plan)
{
    bool first = true;
    for (int w = 0; w < plan->week_count && !writer->out.failed; w++) {
        if (!narrow_has_week(&writer->options.narrow, &plan->weeks[w]))
            continue;
        page_lines(writer, plan, &plan->weeks[w], first);
        first = false;
    }
    return !writer->out.failed;
}

bool text_pause(struct writer *writer)
{
    return out_flush(&writer->out);
}

bool text_end(struct writer *writer)
{
    return out_flush(&writer->out);
}
