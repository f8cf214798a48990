/* The training sheet: a page for each athlete and week, made to be read in a gym and written on. */
#include "emit/formats.h"
#include "emit/entry_lines.h"
#include "emit/pages_kept.h"

struct writer {
    struct out out;
    struct sheet sheet;
    struct format_options options;
    int pages;
    struct pages_kept *kept;
    size_t kept_to; /* in `out`: what stands before it was shown to `kept`, or is not meant for it */
};

/* What was written since the last piece. */
static struct piece piece_since(struct writer *writer)
{
    struct piece piece = { writer->out.at + writer->kept_to, writer->out.used - writer->kept_to };
    writer->kept_to = writer->out.used;
    return piece;
}

/* Head of a page */

static const char *const kind_lines[] = {
    [WEEK_TRAINING] = NULL,
    [WEEK_DELOAD] = "DELOAD WEEK: lighter on purpose. Leave the gym fresher than you came.",
    [WEEK_TAPER] = "TAPER WEEK: less work on purpose. Save yourself for the day that counts.",
};

static const char *written_name(const struct athlete *athlete)
{
    return athlete->title ? athlete->title : athlete->name;
}

static void name_line(struct writer *writer, const struct plan *plan, const struct plan_week *week)
{
    struct out *say = &writer->sheet.say;
    out_clear(say);
    out_text(say, plan->block->title ? plan->block->title : plan->block->name);
    out_text(say, ", week ");
    out_int(say, week->number);
    out_text(say, " of ");
    out_int(say, plan->week_count);
    page_begin(writer->kept, phrase_end(say));
    lines_sides(&writer->sheet.lines, written_name(plan->athlete), say->at);
}

static void head_lines(struct writer *writer, const struct plan *plan, const struct plan_week *week, bool first)
{
    struct lines *lines = &writer->sheet.lines;
    struct out *say = &writer->sheet.say;
    name_line(writer, plan, week);
    piece_since(writer);
    out_clear(say);
    say_week_dates(say, week->start);
    lines_sides(lines, phrase_end(say), plan->unit == UNIT_KG ? "Bodyweight: ______ kg" : "Bodyweight: ______ lb");
    if (kind_lines[week->kind])
        words_line(lines, 0, "", kind_lines[week->kind], "");
    struct piece piece = piece_since(writer);
    page_head(writer->kept, false, piece.bytes, piece.length);
    if (first)
        notes_lines(lines, 0, plan->athlete->notes, plan->athlete->note_count);
    piece_since(writer);
    if (first)
        notes_lines(lines, 0, plan->block->notes, plan->block->note_count);
    notes_lines(lines, 0, week->notes, week->note_count);
    words_line(lines, 0, "", "Write down what you did: load x reps @ rpe. Rpe 8: two more reps were in you.", "");
}

/* Days */

static void entries_lines(struct writer *writer, struct row row)
{
    struct sheet *sheet = &writer->sheet;
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
        struct piece piece = piece_since(writer);
        page_entry(writer->kept, row.day, e, piece.bytes, piece.length);
    }
}

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
    struct piece head = piece_since(writer);
    page_day(writer->kept, head.bytes, head.length);
    entries_lines(writer, row);
    line_end(&writer->sheet.lines);
    words_line(&writer->sheet.lines, 0, "",
               "The whole session: rpe ___ for ____ min. Note: _____________________________", "");
    struct piece foot = piece_since(writer);
    page_day_foot(writer->kept, foot.bytes, foot.length);
}

/* Of a day that is left out, the entries count in the week's totals all the same. */
static void day_left_out(struct writer *writer, const struct plan_day *day)
{
    page_day(writer->kept, "", 0);
    for (int e = 0; e < day->entry_count; e++)
        page_entry(writer->kept, day, e, "", 0);
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

static void totals_line(struct writer *writer, enum weight_unit unit, const struct plan_totals *totals)
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
        say_whole(say, weight_in(totals->tonnage, unit));
        out_char(say, ' ');
        out_text(say, unit_word(unit));
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
    totals_line(writer, plan->unit, &week->totals);
    piece_since(writer);
    for (size_t i = 0; i < sizeof cautions / sizeof cautions[0]; i++)
        words_line(&writer->sheet.lines, 0, "", cautions[i], "");
    struct piece piece = piece_since(writer);
    page_foot(writer->kept, piece.bytes, piece.length);
}

static void page_lines(struct writer *writer, const struct plan *plan, const struct plan_week *week, bool first)
{
    struct row row = { .plan = plan, .week = week };
    if (writer->pages++ > 0)
        out_char(&writer->out, '\f');
    head_lines(writer, plan, week, first);
    if (week->day_count == 0)
        words_line(&writer->sheet.lines, 0, "", "No training this week.", "");
    struct piece piece = piece_since(writer);
    page_head(writer->kept, true, piece.bytes, piece.length);
    for (int d = 0; d < week->day_count; d++) {
        row.day = &week->days[d];
        if (narrow_has_day(&writer->options.narrow, week, row.day))
            day_lines(writer, row);
        else
            day_left_out(writer, row.day);
    }
    foot_lines(writer, plan, week);
    out_settle(&writer->out);
}

/* Pages once more, for another name. */

static void piece_put(struct writer *writer, const struct piece *piece)
{
    out_bytes(&writer->out, piece->bytes, piece->length);
}

static void day_again(struct writer *writer, struct pages_walk *walk, const struct day_pieces *day, struct totals_sum *sum, int64_t *seconds)
{
    piece_put(writer, &day->head);
    for (int i = 0; i < day->lifts.count; i++) {
        const struct entry_piece *entry = walk->next[day->lifts.at[i]]++;
        piece_put(writer, &entry->text);
        for (int j = 0; j < entry->share_count; j++)
            totals_sum_add(sum, &entry->shares[j]);
        *seconds += entry->seconds;
    }
    piece_put(writer, &day->foot);
}

static void page_again(struct writer *writer, struct pages_walk *walk, const struct page_pieces *page, const struct athlete *athlete, bool first)
{
    struct totals_sum sum = { .tonnage = ratio_int(0), .percent = ratio_int(0) };
    struct plan_totals totals = { 0 };
    int64_t seconds = 0;
    struct lines *lines = &writer->sheet.lines;
    if (writer->pages++ > 0)
        out_char(&writer->out, '\f');
    lines_sides(lines, written_name(athlete), page->title);
    piece_put(writer, &page->before);
    if (first)
        notes_lines(lines, 0, athlete->notes, athlete->note_count);
    piece_put(writer, &page->after);
    for (int i = 0; i < page->days.count; i++)
        day_again(writer, walk, &page->days.at[i], &sum, &seconds);
    totals.minutes = plan_minutes(seconds);
    totals_from_sum(&totals, &sum);
    lines_rule(lines, '=');
    totals_line(writer, athlete->gym->unit, &totals);
    piece_put(writer, &page->foot);
    out_settle(&writer->out);
}

bool text_knows(const struct writer *writer, const struct alike *alike)
{
    return pages_known(writer->kept, alike);
}

bool text_again(struct writer *writer, const struct athlete *athlete, const struct alike *alike)
{
    struct pages_walk walk = pages_walk(writer->kept, alike);
    for (int i = 0; i < walk.count && !writer->out.failed; i++)
        page_again(writer, &walk, &walk.pages[i], athlete, i == 0);
    return !writer->out.failed;
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
    writer->kept = pages_kept_new(arena);
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
    pages_begin(writer->kept, plan);
    for (int w = 0; w < plan->week_count && !writer->out.failed; w++) {
        if (!narrow_has_week(&writer->options.narrow, &plan->weeks[w]))
            continue;
        page_lines(writer, plan, &plan->weeks[w], first);
        first = false;
    }
    if (!writer->out.failed)
        pages_end(writer->kept);
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
