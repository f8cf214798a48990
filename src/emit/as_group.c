/* The group sheet: a session of one block, the whole squad on one page. Where its lifts are wider than the page they go on
 * below, under the names anew, and on a further page where that is too long. */
#include "base/vec.h"
#include "emit/group_table.h"
#include "emit/needs.h"
#include "emit/sheet.h"
#include "emit/wording.h"

enum { TABLES_MOST = 52 }; /* lines of tables on a page; head and needs come to it */

/* A date, or without one a day's label in a week. */
struct session {
    struct date date, week_start;
    const char *label;
    VEC(struct member) members;
};
struct group_sheet {
    struct out *out;
    struct arena *arena;
    struct lines lines;
    struct out say;
    VEC(struct session) sessions;
    bool *begun;
};

/* ---- sessions ---- */

static bool is_session(const struct session *session, const struct member *member)
{
    if (date_is_set(member->day->date))
        return session->date.day == member->day->date.day;
    return !date_is_set(session->date) && session->week_start.day == member->week->start.day &&
           !strcmp(session->label, member->day->day->label);
}

/* Whether a session comes before another: by week, dates before none, then by date; undated ones as they are met. */
static bool is_before(const struct session *one, const struct session *other)
{
    bool dated = date_is_set(one->date), other_dated = date_is_set(other->date);
    if (dated && other_dated)
        return one->date.day < other->date.day;
    struct date first = dated ? one->date : one->week_start, second = other_dated ? other->date : other->week_start;
    if (dated == other_dated)
        return first.day < second.day;
    return dated ? first.day < second.day + 7 : first.day + 7 <= second.day;
}

static struct session *session_for(struct group_sheet *sheet, const struct member *member)
{
    for (int i = 0; i < sheet->sessions.count; i++)
        if (is_session(&sheet->sessions.at[i], member))
            return &sheet->sessions.at[i];
    struct session session = { .date = member->day->date, .week_start = member->week->start, .label = member->day->day->label };
    int at = sheet->sessions.count;
    vec_add(sheet->arena, &sheet->sessions, session);
    for (; at > 0 && is_before(&session, &sheet->sessions.at[at - 1]); at--)
        sheet->sessions.at[at] = sheet->sessions.at[at - 1];
    sheet->sessions.at[at] = session;
    return &sheet->sessions.at[at];
}

static void plan_sort(struct group_sheet *sheet, const struct narrow *narrow, const struct plan *plan)
{
    for (int w = 0; w < plan->week_count; w++)
        for (int d = 0; d < plan->weeks[w].day_count; d++) {
            struct member member = { plan, &plan->weeks[w], &plan->weeks[w].days[d] };
            if (narrow_has_day(narrow, member.week, member.day))
                vec_add(sheet->arena, &session_for(sheet, &member)->members, member);
        }
}

/* ---- a page ---- */

static const char *phrase_end(struct out *say)
{
    out_char(say, '\0');
    return say->at;
}

/* The words of the first part stay at say->at, those of the second begin where this returns. */
static void sides_put(struct group_sheet *sheet, size_t middle)
{
    phrase_end(&sheet->say);
    lines_sides(&sheet->lines, sheet->say.at, sheet->say.at + middle);
}

static size_t side_end(struct group_sheet *sheet)
{
    out_char(&sheet->say, '\0');
    return sheet->say.used;
}

static void block_line(struct group_sheet *sheet, const struct session *session, int page, int pages)
{
    const struct member *first = &session->members.at[0];
    const struct block *block = first->plan->block;
    struct out *say = &sheet->say;
    out_clear(say);
    out_text(say, block->title ? block->title : block->name);
    out_text(say, ", week ");
    out_int(say, first->week->number);
    out_text(say, " of ");
    out_int(say, first->plan->week_count);
    size_t middle = side_end(sheet);
    say_count(say, session->members.count, "athlete", "athletes");
    if (pages > 1) {
        out_text(say, ", page ");
        out_int(say, page);
        out_text(say, " of ");
        out_int(say, pages);
    }
    sides_put(sheet, middle);
}

/* Days with different labels may fall on one date: "Day A: Squat first; day C". */
static void say_days(struct out *say, const struct session *session)
{
    for (int i = 0; i < session->members.count; i++) {
        const struct day *day = session->members.at[i].day->day;
        int before = 0;
        while (strcmp(session->members.at[before].day->day->label, day->label))
            before++;
        if (before < i)
            continue;
        out_text(say, i ? "; day " : "Day ");
        out_text(say, day->label);
        if (day->title) {
            out_text(say, ": ");
            out_text(say, day->title);
        }
    }
}

static void day_line(struct group_sheet *sheet, const struct session *session)
{
    struct out *say = &sheet->say;
    out_clear(say);
    if (date_is_set(session->date)) {
        say_date(say, session->date, true, true);
    } else {
        out_text(say, "Any day from ");
        say_date(say, session->week_start, true, true);
    }
    size_t middle = side_end(sheet);
    say_days(say, session);
    sides_put(sheet, middle);
}

static void text_line(struct group_sheet *sheet, const char *before, const char *text)
{
    line_begin(&sheet->lines, 0, "", 0);
    line_say(&sheet->lines, 0, before);
    line_words(&sheet->lines, *before ? 1 : 0, text);
    line_end(&sheet->lines);
}

static const char *const kind_lines[] = {
    [WEEK_TRAINING] = NULL,
    [WEEK_DELOAD] = "DELOAD WEEK: lighter on purpose.",
    [WEEK_TAPER] = "TAPER WEEK: less work on purpose.",
};

static void head_lines(struct group_sheet *sheet, const struct session *session, int page, int pages)
{
    const struct member *first = &session->members.at[0];
    block_line(sheet, session, page, pages);
    day_line(sheet, session);
    if (kind_lines[first->week->kind])
        text_line(sheet, "", kind_lines[first->week->kind]);
    if (first->day->day->optional)
        text_line(sheet, "", "This day is optional.");
    for (int i = 0; i < first->day->day->note_count; i++)
        text_line(sheet, "Note:", first->day->day->notes[i]);
    text_line(sheet, "", "Sets x reps, load, @ target rpe, discs a side. Warm-ups are on each athlete's own sheet.");
    lines_rule(&sheet->lines, '=');
}

/* Whether the lifts from `first` on still go on a page that has `lines` of tables. */
static bool fits(const struct group_table *table, int first, int past, int lines)
{
    return lines == 0 || lines + group_table_height(table, first, past) <= TABLES_MOST;
}

static int pages_of(const struct group_table *table)
{
    int pages = 1, lines = 0;
    for (int first = 0, past; first < group_table_columns(table); first = past) {
        past = group_table_past(table, first);
        if (!fits(table, first, past, lines)) {
            pages++;
            lines = 0;
        }
        lines += group_table_height(table, first, past);
    }
    return pages;
}

/* Returns the column that the next page begins with. */
static int page_write(struct group_sheet *sheet, const struct group_table *table, int first)
{
    int lines = 0, past = group_table_past(table, first);
    while (first < group_table_columns(table) && fits(table, first, past, lines)) {
        group_table_write(sheet->out, table, first, past);
        lines_rule(&sheet->lines, '=');
        lines += group_table_height(table, first, past);
        first = past;
        past = group_table_past(table, first);
    }
    return first;
}

static void session_pages(struct group_sheet *sheet, const struct session *session)
{
    struct group_table *table = group_table_make(sheet->arena, session->members.at, session->members.count);
    int first = 0, pages = pages_of(table);
    for (int page = 1; page <= pages; page++) {
        if (*sheet->begun)
            out_char(sheet->out, '\f');
        *sheet->begun = true;
        head_lines(sheet, session, page, pages);
        first = page_write(sheet, table, first);
        if (page == pages)
            needs_lines(&sheet->lines, sheet->arena, session->members.at, session->members.count);
        out_settle(sheet->out);
    }
}

bool sheet_group(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun)
{
    struct group_sheet sheet = { .out = out, .arena = out->arena, .lines = lines_new(out, out->arena),
                                 .say = out_scratch(out->arena), .begun = begun };
    sheet.lines.width = GROUP_COLUMNS;
    for (int i = 0; i < count; i++)
        plan_sort(&sheet, narrow, plans[i]);
    for (int i = 0; i < sheet.sessions.count && !out->failed; i++)
        session_pages(&sheet, &sheet.sessions.at[i]);
    return !out->failed;
}
