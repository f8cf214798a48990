/* The coach's Monday page: a page for each calendar week that has training. */
#include "emit/lines.h"
#include "emit/sheet.h"
#include "emit/weeks.h"
#include "emit/wording.h"

enum { PAGE_COLUMNS = 100, NAME_COLUMN = 4, TEXT_COLUMN = 26, STALE_DAYS = 84, MEET_DAYS = 42 };

struct page {
    struct out *out;
    struct arena *arena;
    struct lines lines;
    struct out say;
    const struct narrow *narrow;
    struct plan *const *plans;
    int count;
    struct date monday;
};

static const char *phrase_end(struct out *say)
{
    out_char(say, '\0');
    return say->at;
}

static struct out *phrase(struct page *page)
{
    out_clear(&page->say);
    return &page->say;
}

static const char *athlete_words(const struct athlete *athlete)
{
    return athlete->title ? athlete->title : athlete->name;
}

static const char *block_words(const struct block *block)
{
    return block->title ? block->title : block->name;
}

/* Whether an athlete's plans begin here: plans come in order of athletes. */
static bool is_first_of(const struct page *page, int plan)
{
    for (int i = 0; i < plan; i++)
        if (page->plans[i]->athlete == page->plans[plan]->athlete)
            return false;
    return true;
}

/* ---- lines ---- */

static void headline(struct page *page, const char *text)
{
    line_end(&page->lines);
    line_begin(&page->lines, 0, "", 0);
    line_say(&page->lines, 0, text);
    line_end(&page->lines);
}

/* "    Ines Marchetti        ", then words from a column of their own on; NULL: the line goes on under it. */
static void name_begin(struct page *page, const char *name)
{
    line_begin(&page->lines, 0, "", NAME_COLUMN);
    if (name)
        line_words(&page->lines, 0, name);
    page->lines.indent = TEXT_COLUMN;
    line_stop(&page->lines, TEXT_COLUMN);
}

/* The phrase as one line beside a name. A name longer than its column has a line alone. */
static void name_line(struct page *page, const char *name)
{
    phrase_end(&page->say);
    name_begin(page, name);
    if (page->lines.column >= TEXT_COLUMN) {
        line_end(&page->lines);
        line_stop(&page->lines, TEXT_COLUMN);
    }
    line_words(&page->lines, 0, page->say.at);
    line_end(&page->lines);
}

/* ---- who trains what ---- */

/* A day's title, or without one its lifts. */
static void say_what(struct out *say, const struct plan_day *day)
{
    if (day->day->title) {
        out_text(say, ": ");
        out_text(say, day->day->title);
        return;
    }
    for (int e = 0; e < day->entry_count; e++) {
        out_text(say, e ? ", " : ": ");
        out_text(say, lift_words(day->entries[e].lift));
    }
}

static void say_day(struct out *say, const struct plan *plan, const struct plan_day *day)
{
    if (date_is_set(day->date))
        out_bytes(say, weekday_title(date_weekday(day->date)), 3);
    else
        out_text(say, "any day");
    out_char(say, ' ');
    out_text(say, day->day->label);
    say_what(say, day);
    if (day->gym != plan->athlete->gym && day->gym->name) {
        out_text(say, " (in ");
        out_text(say, day->gym->title ? day->gym->title : day->gym->name);
        out_char(say, ')');
    }
}

static void say_days(struct page *page, const struct plan *plan, const struct plan_week *week)
{
    struct out *say = phrase(page);
    for (int d = 0; d < week->day_count; d++) {
        const struct plan_day *day = &week->days[d];
        if (!weeks_has_day(page->monday, week, day) || !narrow_has_day(page->narrow, week, day))
            continue;
        out_text(say, say->used ? "; " : "");
        say_day(say, plan, day);
    }
    if (!say->used)
        out_text(say, "no training");
}

static void week_lines(struct page *page, const struct plan *plan, const struct plan_week *week, const char *name)
{
    struct out *say = phrase(page);
    out_text(say, block_words(plan->block));
    out_text(say, ", week ");
    out_int(say, week->number);
    out_text(say, " of ");
    out_int(say, plan->week_count);
    if (week->kind != WEEK_TRAINING) {
        out_text(say, ", ");
        out_text(say, week_kind_name(week->kind));
    }
    out_text(say, ", ");
    say_count(say, week->totals.sets, "set", "sets");
    if (week->totals.minutes) {
        out_text(say, ", about ");
        out_int(say, week->totals.minutes);
        out_text(say, " min");
    }
    name_line(page, name);
    say_days(page, plan, week);
    name_line(page, NULL);
}

/* An athlete's weeks; several where a block's week starts in the middle of the calendar's. */
static void who_lines(struct page *page, int first)
{
    const struct athlete *athlete = page->plans[first]->athlete;
    const char *name = athlete_words(athlete);
    for (int p = first; p < page->count; p++)
        for (int w = 0; page->plans[p]->athlete == athlete && w < page->plans[p]->week_count; w++) {
            const struct plan_week *week = &page->plans[p]->weeks[w];
            if (!weeks_meet(page->monday, page->narrow, week))
                continue;
            week_lines(page, page->plans[p], week, name);
            name = NULL;
        }
    if (!name)
        return;
    out_text(phrase(page), "nothing this week");
    name_line(page, name);
}

static void who_section(struct page *page)
{
    headline(page, "WHO TRAINS WHAT");
    for (int p = 0; p < page->count; p++)
        if (is_first_of(page, p))
            who_lines(page, p);
}

/* ---- deloads and tapers ---- */

static void due_lines(struct page *page, struct date monday, enum week_kind kind, const char *when)
{
    struct out *say = phrase(page);
    for (int p = 0; p < page->count; p++)
        for (int w = 0; w < page->plans[p]->week_count; w++) {
            const struct plan_week *week = &page->plans[p]->weeks[w];
            if (week->kind != kind || !weeks_starts(monday, week))
                continue;
            out_text(say, say->used ? ", " : "");
            out_text(say, athlete_words(page->plans[p]->athlete));
        }
    if (say->used)
        name_line(page, when);
}

static void due_section(struct page *page)
{
    struct date next = date_plus(page->monday, 7);
    size_t before = page->out->used;
    headline(page, "DELOADS AND TAPERS");
    size_t start = page->out->used;
    due_lines(page, page->monday, WEEK_DELOAD, "Deload this week");
    due_lines(page, page->monday, WEEK_TAPER, "Taper this week");
    if (date_is_set(next)) {
        due_lines(page, next, WEEK_DELOAD, "Deload next week");
        due_lines(page, next, WEEK_TAPER, "Taper next week");
    }
    if (page->out->used == start)
        page->out->used = before;
}

/* ---- stale maxes ---- */

/* A tested max as written; one worked out from a set to a tenth. */
static void say_max(struct out *say, const struct max_line *line, enum weight_unit unit)
{
    if (!line->estimated) {
        say_weight(say, ratio_to_weight(line->load), unit);
        return;
    }
    out_dec(say, ratio_nearest(ratio_in(line->load, unit), (struct dec){ DEC_ONE / 10 }));
    out_char(say, ' ');
    out_text(say, unit_word(unit));
}

static void stale_line(struct page *page, const struct plan *plan, const struct stale_max *stale, const char *name)
{
    struct out *say = phrase(page);
    out_text(say, lift_words(stale->lift));
    out_text(say, ": ");
    say_max(say, stale->line, plan->unit);
    if (stale->lift->loads == LOADS_BODYWEIGHT)
        out_text(say, " with the body");
    if (stale->line->estimated)
        out_text(say, ", worked out from a set");
    if (date_is_set(stale->line->date)) {
        out_text(say, " on ");
        say_date(say, stale->line->date, true, true);
        out_text(say, ", ");
        say_count(say, (page->monday.day - stale->line->date.day) / 7, "week", "weeks");
        out_text(say, " ago");
    } else {
        out_text(say, ", without a date");
    }
    name_line(page, name);
}

static void stale_section(struct page *page)
{
    bool begun = false;
    for (int p = 0; p < page->count; p++) {
        if (!is_first_of(page, p))
            continue;
        const struct athlete *athlete = page->plans[p]->athlete;
        const char *name = athlete_words(athlete);
        struct stale_list stale = { 0 };
        for (int q = p; q < page->count; q++)
            if (page->plans[q]->athlete == athlete)
                weeks_stale(page->arena, page->monday, page->narrow, page->plans[q], STALE_DAYS, &stale);
        for (int i = 0; i < stale.count; i++) {
            if (!begun)
                headline(page, "NO NEWER MAX FOR 12 WEEKS: test, or write down a set with its effort");
            begun = true;
            stale_line(page, page->plans[p], &stale.at[i], name);
            name = NULL;
        }
    }
}

/* ---- meets ---- */

static void meet_line(struct page *page, const struct meet_due *due)
{
    struct out *say = phrase(page);
    int weeks = (due->meet->date.day - page->monday.day) / 7;
    say_date(say, due->meet->date, true, true);
    const char *when = arena_copy(page->arena, say->at, say->used);
    out_clear(say);
    out_text(say, due->meet->title ? due->meet->title : due->season->name);
    out_text(say, weeks ? ", in " : ", this week");
    if (weeks)
        say_count(say, weeks, "week", "weeks");
    out_text(say, ": ");
    bool begun = false;
    for (int p = 0; p < page->count; p++) {
        bool lifts = false;
        for (int q = p; q < page->count && is_first_of(page, p); q++)
            lifts |= page->plans[q]->athlete == page->plans[p]->athlete && page->plans[q]->block->season == due->season;
        if (!lifts)
            continue;
        out_text(say, begun ? ", " : "");
        out_text(say, athlete_words(page->plans[p]->athlete));
        begun = true;
    }
    name_line(page, when);
}

static void meets_section(struct page *page)
{
    struct meet_list due = weeks_meets(page->arena, page->monday, page->plans, page->count, MEET_DAYS);
    if (due.count)
        headline(page, "MEETS WITHIN SIX WEEKS");
    for (int i = 0; i < due.count; i++)
        meet_line(page, &due.at[i]);
}

/* ---- what changed ---- */

static void say_sets_change(struct out *say, const struct week_change *change)
{
    int64_t by = change->now.sets - change->before.sets;
    out_text(say, lift_words(change->lift));
    out_char(say, ' ');
    say_count(say, change->now.sets, "set", "sets");
    out_text(say, by > 0 ? ", up " : ", down ");
    out_int(say, by > 0 ? by : -by);
}

static void say_load_change(struct out *say, const struct week_change *change)
{
    struct weight by = { change->now.heaviest.e10 - change->before.heaviest.e10 };
    bool up = by.e10 > 0;
    by.e10 = up ? by.e10 : -by.e10;
    out_text(say, lift_words(change->lift));
    out_text(say, " to ");
    say_weight(say, change->now.heaviest, change->now.unit);
    out_text(say, up ? ", up " : ", down ");
    say_weight(say, by, change->now.unit);
}

static void say_changes(struct out *say, const struct week_lifts *now, const struct week_lifts *before)
{
    struct week_change sets, load;
    bool other_sets = weeks_most_sets(now, before, &sets), other_load = weeks_most_load(now, before, &load);
    if (other_sets)
        say_sets_change(say, &sets);
    if (other_load) {
        out_text(say, other_sets ? "; " : "");
        say_load_change(say, &load);
    }
    if (!other_sets && !other_load)
        out_text(say, "same sets, same loads");
}

static void changes_section(struct page *page)
{
    headline(page, "CHANGED MOST AGAINST LAST WEEK: sets of a lift, heaviest load of a lift");
    for (int p = 0; p < page->count; p++) {
        const struct athlete *athlete = page->plans[p]->athlete;
        if (!is_first_of(page, p))
            continue;
        struct week_lifts now = weeks_lifts(page->arena, page->monday, page->plans, page->count, athlete);
        struct week_lifts before = weeks_lifts(page->arena, date_plus(page->monday, -7), page->plans, page->count, athlete);
        if (!now.count && !before.count)
            continue;
        if (now.count && before.count)
            say_changes(phrase(page), &now, &before);
        else
            out_text(phrase(page), now.count ? "no training last week" : "no training this week");
        name_line(page, athlete_words(athlete));
    }
}

/* ---- the whole ---- */

static void head_line(struct page *page)
{
    struct out *say = phrase(page);
    say_week_dates(say, page->monday);
    lines_sides(&page->lines, "The coach's week", phrase_end(say));
    lines_rule(&page->lines, '=');
}

static bool has_week(const struct page *page)
{
    for (int p = 0; p < page->count; p++)
        for (int w = 0; w < page->plans[p]->week_count; w++)
            if (weeks_meet(page->monday, page->narrow, &page->plans[p]->weeks[w]))
                return true;
    return false;
}

static void page_write(struct page *page)
{
    head_line(page);
    who_section(page);
    due_section(page);
    stale_section(page);
    meets_section(page);
    changes_section(page);
}

bool sheet_coach(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun)
{
    struct date first, last;
    struct page page = { .out = out, .arena = out->arena, .lines = lines_new(out, out->arena), .say = out_scratch(out->arena),
                         .narrow = narrow, .plans = plans, .count = count };
    page.lines.width = PAGE_COLUMNS;
    if (!weeks_span(plans, count, &first, &last))
        return !out->failed;
    for (page.monday = first; date_is_set(page.monday) && page.monday.day <= last.day && !out->failed;
         page.monday = date_plus(page.monday, 7)) {
        if (!has_week(&page))
            continue;
        if (*begun)
            out_char(out, '\f');
        *begun = true;
        page_write(&page);
        out_settle(out);
    }
    return !out->failed;
}
