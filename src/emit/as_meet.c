/* The handler's page on the day of a meet: what to warm up with and when, what to ask for, what to write down. */
#include "emit/lines.h"
#include "emit/sheet.h"
#include "emit/visible.h"
#include "emit/wording.h"
#include "plan/season.h"

/* Columns of the page. */
enum {
    AT_LABEL = 4,
    AT_MINUTES = 8,
    AT_CLOCK = 24,
    AT_LOAD = 36,
    AT_ATTEMPT = 15,
    AT_PERCENT = 24,
    AT_BOXES = 32,
    AT_DISCS = 53
};

struct meet_page {
    struct lines lines;
    struct out say;
    const struct meet_day *day;
    const struct narrow *narrow; /* knows when flights start */
    int lift;                    /* which is being written, from 0 */
};

static const char *said(struct meet_page *page)
{
    out_char(&page->say, '\0');
    return page->say.at;
}

static struct out *say_anew(struct meet_page *page)
{
    out_clear(&page->say);
    return &page->say;
}

static void words(struct meet_page *page, int indent, const char *before, const char *text)
{
    line_begin(&page->lines, 0, "", indent);
    line_words(&page->lines, 0, before);
    line_words(&page->lines, *before ? 1 : 0, text);
    line_end(&page->lines);
}

/* A line to write on, laid out as it stands. */
static void form(struct meet_page *page, int indent, const char *text)
{
    line_begin(&page->lines, 0, "", indent);
    line_say(&page->lines, 0, text);
    line_end(&page->lines);
}

static void notes(struct meet_page *page, const char *const *notes, int count)
{
    for (int i = 0; i < count; i++)
        words(page, 0, "Note:", notes[i]);
}

static void piece_at(struct meet_page *page, int column, const char *text)
{
    line_stop(&page->lines, column);
    line_say(&page->lines, 1, text);
}

/* "______ kg" */
static void say_blank(struct out *say, enum weight_unit unit)
{
    out_text(say, "______ ");
    out_text(say, unit_word(unit));
}

/* ---- head ---- */

static void head_lines(struct meet_page *page)
{
    const struct meet_day *day = page->day;
    const struct gym *gym = day->season->gym;
    lines_sides(&page->lines, day->athlete->title ? day->athlete->title : day->athlete->name,
                day->meet->title ? day->meet->title : "Meet");
    struct out *say = say_anew(page);
    say_date(say, day->meet->date, true, true);
    out_char(say, '\0');
    size_t middle = say->used;
    out_text(say, "Weighed in: ");
    say_blank(say, day->unit);
    out_text(say, "  Lot: ____");
    said(page);
    lines_sides(&page->lines, say->at, say->at + middle);
    if (gym)
        words(page, 0, "On the bar and discs of", gym->title ? gym->title : gym->name);
    else
        words(page, 0, "", "Competition bar and collars: 25 kg together (20 + 2 x 2.5).");
    words(page, 0, "", "Heaviest disc inside, collar last. Clock = first attempt less the minutes.");
    notes(page, day->athlete->notes, day->athlete->note_count);
    notes(page, day->season->notes, day->season->note_count);
}

/* ---- one lift ---- */

/* The max in the unit of the day, to the tenth. */
static void say_max(struct out *say, const struct meet_day *day, const struct meet_lift *lift)
{
    out_text(say, lift->running.known ? "running max " : "max ");
    out_dec(say, ratio_nearest(ratio_in(lift->max.load, day->unit), (struct dec){ DEC_ONE / 10 }));
    out_char(say, ' ');
    out_text(say, unit_word(day->unit));
    if (lift->running.known) {
        out_text(say, " as of ");
        say_date(say, lift->running.last, true, true);
        return;
    }
    if (lift->max.line->estimated)
        out_text(say, " from a set");
    if (lift->max.lent_by) {
        out_text(say, " by ");
        out_text(say, lift_words(lift->max.lent_by));
    }
    if (date_is_set(lift->max.line->date)) {
        out_text(say, " of ");
        say_date(say, lift->max.line->date, true, true);
    }
}

static bool flight_is_known(const struct meet_page *page)
{
    return page->lift < page->narrow->flight_count;
}

/* The clock so many minutes before the flight's first attempt: "08:20", or room to write it. */
static const char *clock_words(struct meet_page *page, int before)
{
    struct out *say = say_anew(page);
    if (!flight_is_known(page)) {
        out_text(say, "___:___");
        return said(page);
    }
    int minutes = (page->narrow->flights[page->lift] - before + 24 * 60) % (24 * 60);
    for (int part = 0; part < 2; part++) {
        int number = part ? minutes % 60 : minutes / 60;
        if (part)
            out_char(say, ':');
        if (number < 10)
            out_char(say, '0');
        out_int(say, number);
    }
    return said(page);
}

static void flight_line(struct meet_page *page)
{
    line_begin(&page->lines, 0, "", AT_LABEL);
    line_say(&page->lines, 0, "Flight starts");
    line_say(&page->lines, 1, clock_words(page, 0));
    line_say(&page->lines, 2, flight_is_known(page) ? "Lifter no. ____ of ____, so add ____ min to each clock"
                                                    : "Lifter no. ____ of ____  First attempt about ___:___");
    line_end(&page->lines);
}

static void lift_title(struct meet_page *page, const struct meet_lift *lift, int number)
{
    struct out *say = say_anew(page);
    out_int(say, number);
    out_text(say, ".  ");
    out_text(say, lift_words(lift->line->lift));
    out_char(say, '\0');
    size_t middle = say->used;
    if (lift->open == MEET_NO_MAX)
        out_text(say, "no max on file by this day");
    else if (lift->open == MEET_NO_BODYWEIGHT)
        out_text(say, "no bodyweight on file");
    else
        say_max(say, page->day, lift);
    said(page);
    lines_rule(&page->lines, '=');
    lines_sides(&page->lines, say->at, say->at + middle);
    flight_line(page);
    form(page, AT_LABEL, "Rack ______  Safeties ______");
}

static int alike(const struct meet_load *load, int first)
{
    int past = first + 1;
    while (past < load->disc_count && load->discs[past].e10 == load->discs[first].e10)
        past++;
    return past - first;
}

/* "6 x 25 + 20 + 2.5 kg" */
static void discs_pieces(struct meet_page *page, const struct meet_load *load)
{
    page->lines.indent = AT_DISCS;
    line_stop(&page->lines, AT_DISCS);
    if (load->disc_count == 0)
        line_say(&page->lines, 1, "the bar alone");
    for (int i = 0, many; i < load->disc_count; i += many) {
        struct out *say = say_anew(page);
        many = alike(load, i);
        if (many > 1) {
            out_int(say, many);
            out_text(say, " x ");
        }
        out_weight(say, load->discs[i], page->day->unit);
        out_text(say, i + many < load->disc_count ? " +" : page->day->unit == UNIT_KG ? " kg" : " lb");
        line_say(&page->lines, 1, said(page));
    }
}

static void say_shown(struct out *say, const struct meet_lift *lift, const struct meet_load *load,
                      enum weight_unit unit)
{
    if (lift->line->lift->loads == LOADS_BODYWEIGHT && load->shown.e10 >= 0)
        out_char(say, '+');
    say_weight(say, load->shown, unit);
}

static void warm_up_line(struct meet_page *page, const struct meet_lift *lift, const struct meet_warm_up *warm_up)
{
    struct out *say = say_anew(page);
    line_begin(&page->lines, AT_LABEL, "[ ]", AT_MINUTES);
    if (warm_up->minutes < 10)
        out_char(say, ' ');
    out_int(say, warm_up->minutes);
    out_text(say, " min before");
    line_say(&page->lines, 1, said(page));
    piece_at(page, AT_CLOCK, clock_words(page, warm_up->minutes));
    say = say_anew(page);
    say_shown(say, lift, &warm_up->load, page->day->unit);
    out_text(say, " x ");
    out_int(say, warm_up->reps);
    piece_at(page, AT_LOAD, said(page));
    discs_pieces(page, &warm_up->load);
    line_end(&page->lines);
}

static void say_percent(struct out *say, const struct meet_lift *lift, const struct meet_load *load)
{
    struct ratio percent = ratio_div(ratio_mul(ratio_weight(load->load), ratio_int(100)), lift->max.load);
    out_dec(say, ratio_nearest(percent, (struct dec){ DEC_ONE / 10 }));
    out_text(say, " %");
}

static void attempt_line(struct meet_page *page, const struct meet_lift *lift, const char *label,
                         const struct meet_load *load, bool boxes)
{
    line_begin(&page->lines, AT_LABEL, label, AT_ATTEMPT);
    struct out *say = say_anew(page);
    say_shown(say, lift, load, page->day->unit);
    line_say(&page->lines, 1, said(page));
    say = say_anew(page);
    say_percent(say, lift, load);
    piece_at(page, AT_PERCENT, said(page));
    if (boxes)
        piece_at(page, AT_BOXES, "made [ ] missed [ ]");
    discs_pieces(page, load);
    line_end(&page->lines);
}

static void columns_line(struct meet_page *page, const char *label, const struct meet_lift *lift)
{
    line_begin(&page->lines, AT_LABEL, label, AT_LABEL + (int)strlen(label));
    if (lift->attempts[0].disc_count >= 0)
        piece_at(page, AT_DISCS, page->day->collar.e10 ? "discs a side, then collar" : "discs a side");
    line_end(&page->lines);
}

static void lifted_line(struct meet_page *page)
{
    static const char *const labels[] = { "1st ", "  2nd ", "  3rd ", "  Best " };
    struct out *say = say_anew(page);
    for (size_t i = 0; i < sizeof labels / sizeof *labels; i++) {
        out_text(say, labels[i]);
        say_blank(say, page->day->unit);
    }
    line_begin(&page->lines, AT_LABEL, "Lifted", AT_ATTEMPT);
    line_say(&page->lines, 1, said(page));
    line_end(&page->lines);
}

static void lift_lines(struct meet_page *page, const struct meet_lift *lift, int number)
{
    static const char *const labels[ATTEMPT_COUNT] = { "Opener", "Second", "Third" };
    lift_title(page, lift, number);
    if (lift->open == MEET_KNOWN) {
        columns_line(page, "Warm-ups, in this order", lift);
        for (int i = 0; i < lift->warm_up_count; i++)
            warm_up_line(page, lift, &lift->warm_ups[i]);
        columns_line(page, "Attempts, per cent of the max", lift);
        for (int i = 0; i < ATTEMPT_COUNT; i++)
            attempt_line(page, lift, labels[i], &lift->attempts[i], true);
        attempt_line(page, lift, "  cautious", &lift->cautious, false);
        attempt_line(page, lift, "  bold", &lift->bold, false);
    }
    lifted_line(page);
}

/* ---- foot ---- */

static void total_lines(struct meet_page *page)
{
    static const char *const parts[ATTEMPT_COUNT] = { "openers ", ", seconds ", ", thirds " };
    const struct meet_day *day = page->day;
    struct out *say = say_anew(page);
    for (int i = 0; i < ATTEMPT_COUNT; i++) {
        out_text(say, parts[i]);
        say_weight(say, day->totals[i], day->unit);
    }
    out_text(say, " (expected)");
    words(page, 0, "Total:", said(page));
}

static void points_cell(struct meet_page *page, int column, bool known, struct dec points)
{
    struct out *say = say_anew(page);
    if (known)
        out_dec(say, ratio_nearest(ratio_dec(points), (struct dec){ DEC_ONE / 100 }));
    else
        out_char(say, '-');
    piece_at(page, column, said(page));
}

static void points_table(struct meet_page *page)
{
    enum { AT_GL = 12, AT_DOTS = 22 };
    const struct meet_day *day = page->day;
    struct out *say = say_anew(page);
    say_weight(say, day->totals[ATTEMPT_COUNT - 1], day->unit);
    out_text(say, " at ");
    say_weight(say, day->bodyweight->weight, day->unit);
    out_text(say, " bodyweight");
    if (date_is_set(day->bodyweight->date)) {
        out_text(say, " (");
        say_date(say, day->bodyweight->date, true, true);
        out_char(say, ')');
    }
    out_text(say, ", classic:");
    words(page, 0, "Points of", said(page));
    line_begin(&page->lines, 0, "", AT_GL);
    line_say(&page->lines, 1, "GL");
    piece_at(page, AT_DOTS, "DOTS");
    line_end(&page->lines);
    for (int i = 0; i < 2; i++) {
        line_begin(&page->lines, AT_LABEL, day->points[i].who, AT_GL);
        points_cell(page, AT_GL, day->points[i].has_gl, day->points[i].gl);
        points_cell(page, AT_DOTS, day->points[i].has_dots, day->points[i].dots);
        line_end(&page->lines);
    }
    words(page, 0, "", "Constants of both formulas from memory: for planning, not for the record.");
}

static void points_lines(struct meet_page *page)
{
    const struct meet_day *day = page->day;
    if (day->has_points)
        points_table(page);
    else if (!day->bodyweight)
        words(page, 0, "", "Points: no bodyweight on file to work them out with.");
    else
        words(page, 0, "", "Points: they are for a total of three lifts.");
}

static void foot_lines(struct meet_page *page)
{
    const struct meet_day *day = page->day;
    lines_rule(&page->lines, '=');
    if (day->whole)
        total_lines(page);
    if (day->whole)
        points_lines(page);
    struct out *say = say_anew(page);
    out_text(say, "Made: total ");
    say_blank(say, day->unit);
    out_text(say, "  place ____  points ______");
    form(page, 0, said(page));
    words(page, 0, "", "Cautious third: after a slow or missed second. Bold third: after a fast one.");
    say = say_anew(page);
    out_text(say,
             "Name the next attempt within a minute, never below a missed weight. With none named the weight stays "
             "after a miss and goes up by ");
    say_weight(say, day->step, day->unit);
    out_text(say, " after a good lift.");
    words(page, 0, "", said(page));
}

/* ---- pages ---- */

static void page_lines(struct meet_page *page)
{
    const struct meet_day *day = page->day;
    head_lines(page);
    for (page->lift = 0; page->lift < day->lift_count; page->lift++)
        lift_lines(page, &day->lifts[page->lift], page->lift + 1);
    if (!day->lift_count) {
        lines_rule(&page->lines, '=');
        words(page, 0, "", "No attempts are planned: the season has no line such as");
        words(page, AT_LABEL, "", "attempts squat 91%, 96%, 101%");
    }
    foot_lines(page);
}

/* Bounds in weeks count the last block's: a meet in another block is in none of them. */
static bool meet_is_chosen(const struct narrow *narrow, const struct plan *plan, const struct meet *meet)
{
    if ((date_is_set(narrow->from) && meet->date.day < narrow->from.day) ||
        (date_is_set(narrow->to) && meet->date.day > narrow->to.day))
        return false;
    int week = (meet->date.day - plan->block->start.day) / 7 + 1;
    if (!narrow->first_week && !narrow->last_week)
        return true;
    return meet->date.day >= plan->block->start.day && (!narrow->first_week || week >= narrow->first_week) &&
           (!narrow->last_week || week <= narrow->last_week);
}

bool sheet_meet(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun)
{
    for (int i = 0; i < count && !out->failed; i++) {
        const struct season *season = plans[i]->block->season;
        for (int m = 0; season && m < season->meet_count; m++) {
            const struct meet *meet = &season->meets[m];
            if (!meet_is_chosen(narrow, plans[i], meet))
                continue;
            struct meet_page page = { .lines = lines_new(out, out->arena),
                                      .say = out_scratch(out->arena),
                                      .narrow = narrow,
                                      .day = season_meet_day(out->arena, season, meet, plans[i]->athlete,
                                                             plans[i]->block, plans[i]->record) };
            if (*begun)
                out_char(out, '\f');
            *begun = true;
            page_lines(&page);
            out_settle(out);
        }
    }
    return !out->failed;
}
