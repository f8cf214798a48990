/* The review of one athlete as a page of text. */
#include "emit/as_review.h"
#include "emit/review_page.h"
#include "emit/wording.h"

#include <inttypes.h>

enum { LABEL_COLUMN = 14, TEXT_COLUMN = 20, NAME_END = 30 };

/* ---- phrases and lines ---- */

struct out *review_say(struct review_page *page)
{
    out_clear(&page->say);
    return &page->say;
}

const char *review_said(struct review_page *page)
{
    out_char(&page->say, '\0');
    return page->say.at;
}

void review_row(struct review_page *page)
{
    line_begin(&page->lines, 0, "", REVIEW_NAME);
}

void review_headline(struct review_page *page, const char *text)
{
    line_end(&page->lines);
    line_begin(&page->lines, 0, "", 0);
    line_say(&page->lines, 0, text);
    line_end(&page->lines);
}

void review_right(struct review_page *page, int edge, const char *text)
{
    line_stop(&page->lines, edge - (int)strlen(text));
    line_say(&page->lines, 1, text);
}

void review_heads(struct review_page *page, const char *first, const struct review_head *heads, int count)
{
    review_row(page);
    line_say(&page->lines, 0, first);
    for (int i = 0; i < count; i++)
        review_right(page, heads[i].edge, heads[i].word);
    line_end(&page->lines);
}

void review_name(struct review_page *page, const char *name, int column)
{
    line_words(&page->lines, 0, name);
    if (page->lines.column <= column)
        return;
    line_end(&page->lines);
}

void review_remark(struct review_page *page, const char *text)
{
    review_row(page);
    line_words(&page->lines, 0, text);
    line_end(&page->lines);
}

/* ---- numbers ---- */

struct dec review_mean(struct ratio sum, int64_t count, enum weight_unit unit, struct dec grain)
{
    return ratio_nearest(ratio_in(ratio_div(sum, ratio_int(count)), unit), grain);
}

const char *review_tenth(struct review_page *page, struct ratio number)
{
    return dec_text(page->arena, ratio_nearest(number, (struct dec){ DEC_ONE / 10 }));
}

const char *review_shown(struct review_page *page, const struct lift *lift, struct dec load)
{
    return arena_format(page->arena, "%s%s", lift->loads == LOADS_BODYWEIGHT && load.e10 > 0 ? "+" : "",
                        dec_text(page->arena, load));
}

/* ---- what was left out ---- */

static void say_miss(struct out *say, const struct review_miss *miss)
{
    static const char *const words[] = { [MISS_MISSED] = "missed",
                                         [MISS_SKIPPED] = " skipped",
                                         [MISS_UNNAMED] = ": nothing in the diary",
                                         [MISS_NO_ENTRY] = "nothing in the diary" };
    if (miss->lift)
        out_text(say, lift_words(miss->lift));
    out_text(say, words[miss->how]);
    if (miss->because) {
        out_text(say, ": ");
        out_text(say, miss->because);
    }
    if (!miss->dated)
        out_text(say, ", in the week of that day");
}

static void misses_part(struct review_page *page)
{
    struct review_misses misses = review_misses(page->review);
    review_headline(page, "MISSED AND SKIPPED");
    if (!misses.count)
        review_remark(page, "Nothing was left out.");
    for (int i = 0; i < misses.count; i++) {
        review_row(page);
        line_say(&page->lines, 0, date_text(page->arena, misses.at[i].date));
        line_stop(&page->lines, LABEL_COLUMN);
        line_words(&page->lines, 0, misses.at[i].label ? misses.at[i].label : "-");
        page->lines.indent = TEXT_COLUMN;
        line_stop(&page->lines, TEXT_COLUMN);
        say_miss(review_say(page), &misses.at[i]);
        line_words(&page->lines, 1, review_said(page));
        line_end(&page->lines);
    }
}

/* ---- effort honesty ---- */

static void honesty_row(struct review_page *page, const struct honesty *honesty)
{
    const char *apart = review_tenth(page, honesty->apart);
    review_row(page);
    review_name(page, lift_words(honesty->lift), NAME_END);
    review_right(page, 36, arena_format(page->arena, "%d", honesty->sets));
    review_right(page, 45, review_tenth(page, honesty->rated));
    review_right(page, 57, review_tenth(page, honesty->worked_out));
    review_right(page, 70,
                 arena_format(page->arena, "%s%s",
                              ratio_cmp(honesty->apart, ratio_int(0)) > 0 && strcmp(apart, "0") != 0 ? "+" : "",
                              apart));
    line_end(&page->lines);
    if (!honesty->off)
        return;
    line_begin(&page->lines, 0, "", 6);
    line_words(&page->lines, 0, honesty_advice(page->arena, page->review->record->athlete, honesty));
    line_end(&page->lines);
}

static void honesty_part(struct review_page *page)
{
    static const struct review_head heads[] = { { 36, "sets" }, { 45, "rated" }, { 57, "worked out" }, { 70, "difference" } };
    struct review_honesty list = review_honesty(page->review);
    review_headline(page, "EFFORTS, RATED AND WORKED OUT");
    if (!list.count) {
        review_remark(
            page,
            "Nothing to compare: no rated set has a dated max line of the lift's own that is at most 12 weeks old.");
        return;
    }
    review_heads(page, "", heads, sizeof heads / sizeof *heads);
    for (int i = 0; i < list.count; i++)
        honesty_row(page, &list.at[i]);
    review_remark(page, "Means over the rated sets: the rating, after her own `effort` lines, and what the load and "
                        "the reps are beside a max line at most "
                        "12 weeks old. Up to 1.5 points is usual; 6 sets make a habit.");
}

/* ---- session load ---- */

static void load_row(struct review_page *page, const struct review_load *load)
{
    bool whole = load->rated && load->rated == load->sessions;
    review_row(page);
    line_say(&page->lines, 0, date_text(page->arena, load->monday));
    review_right(page, 24, arena_format(page->arena, "%d", load->sessions));
    review_right(page, 34, load->rated ? arena_format(page->arena, "%" PRId64, load->minutes) : "-");
    review_right(page, 50,
                 load->rated
                     ? arena_format(page->arena, "%s%s", whole ? "" : "at least ", dec_text(page->arena, load->load))
                     : "-");
    review_right(page, 61, load->has_monotony ? dec_text(page->arena, load->monotony) : "-");
    review_right(page, 71, load->has_monotony ? dec_text(page->arena, load->strain) : "-");
    line_end(&page->lines);
}

static void unrated_line(struct review_page *page, const struct review_unrated *unrated)
{
    struct out *say = review_say(page);
    if (!unrated->count)
        return;
    out_text(say, "Not counted: ");
    for (int i = 0; i < unrated->count; i++) {
        const struct diary_session *session = unrated->at[i]->diary;
        out_text(say, i ? ", " : "");
        out_date(say, session->date);
        if (session->label) {
            out_char(say, ' ');
            out_text(say, session->label);
        }
        out_text(say, session->has_effort ? " (no minutes)" : session->minutes ? " (no effort)" : "");
    }
    out_text(say, "; write `session rpe 7 for 80 min` into them");
    review_remark(page, review_said(page));
}

static void loads_part(struct review_page *page)
{
    static const struct review_head heads[] = {
        { 24, "sessions" }, { 34, "minutes" }, { 50, "load" }, { 61, "monotony" }, { 71, "strain" }
    };
    struct review_loads loads = review_loads(page->review);
    struct review_unrated unrated = review_unrated(page->review);
    bool rated = false;
    for (int i = 0; i < loads.count; i++)
        rated |= loads.at[i].rated > 0;
    review_headline(page, "SESSION LOAD");
    if (!rated) {
        review_remark(page, "No session is rated as a whole yet; `session rpe 7 for 80 min` in it does that.");
        return;
    }
    review_heads(page, "week from", heads, sizeof heads / sizeof *heads);
    for (int i = 0; i < loads.count; i++)
        load_row(page, &loads.at[i]);
    unrated_line(page, &unrated);
    review_remark(page, "Session rpe x minutes, all her sessions from Monday to Sunday. Monotony: the mean day over "
                        "the standard deviation (n - 1) of the seven "
                        "days, rest days as 0; strain: load x monotony. Monotony above 2.0 is usually called high "
                        "(Foster 1998). A week with a "
                        "session that is not counted is left open.");
}

/* ---- bests ---- */

static void say_best_load(struct review_page *page, struct out *say, const struct lift *lift, struct weight shown)
{
    out_text(say, review_shown(page, lift, weight_in(shown, page->review->unit)));
    out_char(say, ' ');
    out_text(say, unit_word(page->review->unit));
}

static void estimate_line(struct review_page *page, const struct lift *lift, const struct review_bests *bests,
                          bool marks)
{
    struct out *say = review_say(page);
    out_text(say, "Best estimated max ");
    out_dec(say, review_mean(ratio_weight(bests->estimate), 1, page->review->unit, (struct dec){ DEC_ONE / 10 }));
    out_char(say, ' ');
    out_text(say, unit_word(page->review->unit));
    out_text(say, lift->loads == LOADS_BODYWEIGHT ? " with the body" : lift->loads == LOADS_DUMBBELLS ? " a hand" : "");
    out_text(say, ": ");
    say_best_load(page, say, lift, bests->from->shown);
    out_text(say, arena_format(page->arena, " x %d rpe %s on ", bests->from->reps,
                               dec_text(page->arena, bests->from->effort)));
    out_date(say, bests->estimate_date);
    if (marks && bests->estimate_in_period)
        out_text(say, ", new");
    line_begin(&page->lines, 0, "", 6);
    line_words(&page->lines, 0, review_said(page));
    line_end(&page->lines);
}

static void best_rows(struct review_page *page, const struct lift *lift, const struct review_bests *bests, bool marks)
{
    line_end(&page->lines);
    review_remark(page, lift_words(lift));
    for (int i = 0; i < bests->count; i++) {
        say_best_load(page, review_say(page), lift, bests->at[i].shown);
        review_row(page);
        review_right(page, 10, arena_format(page->arena, "%d x", bests->at[i].reps));
        review_right(page, 24, arena_copy(page->arena, page->say.at, page->say.used));
        line_say(&page->lines, 3, date_text(page->arena, bests->at[i].date));
        if (marks && bests->at[i].in_period)
            line_say(&page->lines, 3, "new");
        line_end(&page->lines);
    }
    if (bests->has_estimate)
        estimate_line(page, lift, bests, marks);
}

static void bests_part(struct review_page *page)
{
    const struct review *review = page->review;
    bool marks = review->record->sessions[0].diary->date.day < review->first.day;
    review_headline(page, "BESTS");
    for (int i = 0; i < review->lift_count; i++) {
        struct review_bests bests = review_bests(review, review->lifts[i]);
        if (bests.count || bests.has_estimate)
            best_rows(page, review->lifts[i], &bests, marks);
    }
    line_end(&page->lines);
    review_remark(page, arena_format(page->arena,
                                     "The heaviest load for so many reps, in all her diary until then; a row is left "
                                     "out when a longer set was as "
                                     "heavy.%s",
                                     marks ? " new: done in the time looked at." : ""));
}

/* ---- the whole ---- */

static void head_lines(struct review_page *page, const struct athlete *athlete)
{
    const struct review *review = page->review;
    struct out *say = review_say(page);
    if (review && date_is_set(review->first)) {
        out_text(say, "Review, ");
        out_date(say, review->first);
        out_text(say, " to ");
        out_date(say, review->last);
    }
    lines_sides(&page->lines, athlete->title ? athlete->title : athlete->name, review_said(page));
    lines_rule(&page->lines, '=');
}

bool review_text(struct out *out, const struct athlete *athlete, const struct review *review, bool *begun)
{
    struct review_page page = { .out = out,
                                .arena = out->arena,
                                .lines = lines_new(out, out->arena),
                                .say = out_scratch(out->arena),
                                .review = review };
    if (*begun)
        out_char(out, '\f');
    *begun = true;
    head_lines(&page, athlete);
    if (!review || !review->session_count) {
        review_remark(&page,
                      review ? "Her diary has nothing of what was asked for." : "There is no diary of hers yet.");
        return out_settle(out);
    }
    review_chart(&page);
    review_table(&page);
    misses_part(&page);
    honesty_part(&page);
    loads_part(&page);
    bests_part(&page);
    return out_settle(out);
}
