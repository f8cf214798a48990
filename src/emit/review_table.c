/* Planned against done, a row for each lift of a week. */
#include "emit/review_page.h"
#include "emit/wording.h"

#include <inttypes.h>

enum {
    SETS_EDGE = 24,
    REPS_EDGE = 34,
    LOAD_EDGE = 46,
    EFFORT_EDGE = 58,
    PERCENT_EDGE = 69,
    REMARK_COLUMN = 70,
    NAME_END = 20,
    APART_COLUMN = 6
};

static void number_right(struct review_page *page, int edge, int64_t number)
{
    review_right(page, edge, number ? arena_format(page->arena, "%" PRId64, number) : "-");
}

static const char *mean_load(struct review_page *page, const struct lift *lift, const struct review_amount *amount)
{
    if (!amount->loaded)
        return "-";
    return review_shown(page, lift,
                        review_mean(amount->shown, amount->loaded, page->review->unit, (struct dec){ DEC_ONE / 10 }));
}

static const char *mean_effort(struct review_page *page, const struct review_work *work, struct ratio sum)
{
    return work->rated ? review_tenth(page, ratio_div(sum, ratio_int(work->rated))) : "-";
}

static void apart_line(struct review_page *page, const struct review_work *work)
{
    struct out *say = review_say(page);
    if (!work->apart.sets)
        return;
    out_text(say, "apart: ");
    say_count(say, work->apart.sets, "set", "sets");
    out_text(say, ", ");
    say_count(say, work->apart.reps, "rep", "reps");
    if (work->apart.loaded) {
        out_text(say, ", mean load ");
        out_text(say, mean_load(page, work->lift, &work->apart));
    }
    line_begin(&page->lines, 0, "", APART_COLUMN);
    line_words(&page->lines, 0, review_said(page));
    line_end(&page->lines);
}

static void as_line(struct review_page *page, const struct review_work *work)
{
    struct out *say = review_say(page);
    if (!work->as)
        return;
    out_text(say, "done as ");
    out_text(say, lift_words(work->as));
    line_begin(&page->lines, 0, "", APART_COLUMN);
    line_words(&page->lines, 0, review_said(page));
    line_end(&page->lines);
}

static void work_row(struct review_page *page, const struct review_work *work)
{
    struct ratio percent;
    bool planned = review_percent(work, &percent);
    review_row(page);
    review_name(page, lift_words(work->lift), NAME_END);
    number_right(page, SETS_EDGE, work->planned.sets);
    number_right(page, SETS_EDGE + 5, work->done.sets);
    number_right(page, REPS_EDGE, work->planned.reps);
    number_right(page, REPS_EDGE + 5, work->done.reps);
    review_right(page, LOAD_EDGE, mean_load(page, work->lift, &work->planned));
    review_right(page, LOAD_EDGE + 7, mean_load(page, work->lift, &work->done));
    review_right(page, EFFORT_EDGE, mean_effort(page, work, work->asked_sum));
    review_right(page, EFFORT_EDGE + 6, mean_effort(page, work, work->rated_sum));
    review_right(page, PERCENT_EDGE,
                 planned ? arena_format(page->arena, "%s%%", dec_text(page->arena, ratio_nearest(percent, dec_int(1))))
                         : "-");
    line_stop(&page->lines, REMARK_COLUMN);
    if (work->fell_short)
        line_say(&page->lines, 1, "fell short");
    line_end(&page->lines);
    as_line(page, work);
    apart_line(page, work);
}

static void week_line(struct review_page *page, const struct review_week *week)
{
    struct out *say = review_say(page);
    if (week->plan) {
        out_text(say, week->plan->block->title ? week->plan->block->title : week->plan->block->name);
        out_text(say, ", week ");
        out_int(say, week->number);
        if (week->week->kind != WEEK_TRAINING) {
            out_text(say, ", ");
            out_text(say, week_kind_name(week->week->kind));
        }
    } else {
        out_text(say, "Outside all blocks");
    }
    out_text(say, ", from ");
    say_date(say, week->start, true, true);
    line_end(&page->lines);
    review_row(page);
    line_words(&page->lines, 0, review_said(page));
    line_end(&page->lines);
}

/* ---- the week's sum ---- */

static void amount_sum(struct review_amount *sum, const struct review_amount *amount)
{
    sum->sets += amount->sets;
    sum->reps += amount->reps;
    sum->total = ratio_add(sum->total, amount->total);
}

static const char *tonnage(struct review_page *page, const struct review_amount *amount)
{
    return dec_text(page->arena, review_mean(amount->total, 1, page->review->unit, dec_int(1)));
}

/* Where the number of sets is open, as in `total 30`, none are counted. */
static void week_sum(struct review_page *page, const struct review_works *works, int first, int past)
{
    struct review_amount planned = { .total = { 0, 1 } }, done = planned;
    struct out *say = review_say(page);
    for (int i = first; i < past; i++) {
        amount_sum(&planned, &works->at[i].planned);
        amount_sum(&done, &works->at[i].done);
        done.sets -= works->at[i].planned.sets ? 0 : works->at[i].done.sets;
    }
    if (!planned.sets && !planned.reps)
        return;
    out_text(say, arena_format(page->arena,
                               "Together %" PRId64 " of %" PRId64 " sets, %" PRId64 " of %" PRId64 " reps, %s of %s %s lifted",
                               done.sets, planned.sets, done.reps, planned.reps, tonnage(page, &done),
                               tonnage(page, &planned), unit_word(page->review->unit)));
    review_remark(page, review_said(page));
}

static void table_head(struct review_page *page)
{
    static const struct review_head over[] = {
        { SETS_EDGE + 5, "sets" }, { REPS_EDGE + 5, "reps" }, { LOAD_EDGE + 7, "mean load" }, { EFFORT_EDGE + 6, "effort" }
    };
    static const struct review_head under[] = {
        { SETS_EDGE, "plan" },       { SETS_EDGE + 5, "done" }, { REPS_EDGE, "plan" },
        { REPS_EDGE + 5, "done" },   { LOAD_EDGE, "plan" },     { LOAD_EDGE + 7, "done" },
        { EFFORT_EDGE, "asked" },    { EFFORT_EDGE + 6, "rated" }, { PERCENT_EDGE, "done" }
    };
    review_heads(page, "", over, sizeof over / sizeof *over);
    review_heads(page, "", under, sizeof under / sizeof *under);
}

static bool any_loads(const struct review_works *works, enum lift_loads loads)
{
    for (int i = 0; i < works->count; i++)
        if (works->at[i].lift->loads == loads)
            return true;
    return false;
}

static void table_foot(struct review_page *page, const struct review_works *works)
{
    bool apart = false;
    for (int i = 0; i < works->count; i++)
        apart |= works->at[i].apart.sets > 0;
    struct out *say = review_say(page);
    out_text(say, "Warm-ups aside. Mean loads in ");
    out_text(say, unit_word(page->review->unit));
    out_text(say, any_loads(works, LOADS_DUMBBELLS) ? ", by reps, of dumbbells a hand" : ", by reps");
    if (any_loads(works, LOADS_BODYWEIGHT))
        out_text(say, "; with a sign: what is added to the body or taken off (what was lifted has the body in it)");
    out_text(
        say,
        ". Effort: the sets that were rated, and what the sheet asked of them or expected. Done in per cent of the "
        "reps, or of the sets where no reps are counted.");
    if (apart)
        out_text(say, " Apart: done, but matched with nothing planned; in no other number here.");
    line_end(&page->lines);
    review_remark(page, review_said(page));
}

void review_table(struct review_page *page)
{
    struct review_works works = review_works(page->review);
    review_headline(page, "PLANNED AND DONE");
    for (int first = 0, past; first < works.count; first = past) {
        const struct review_week *week = works.at[first].week;
        week_line(page, week);
        if (!first)
            table_head(page);
        for (past = first; past < works.count && works.at[past].week == week; past++)
            work_row(page, &works.at[past]);
        week_sum(page, &works, first, past);
    }
    if (works.count)
        table_foot(page, &works);
    else
        review_remark(page, "Nothing was planned, and no set was written down.");
}
