/* The review as one flat table, RFC 4180. */
#include "emit/as_review.h"

#include "base/csv.h"
#include "emit/review_page.h"
#include "emit/visible.h"
#include "emit/wording.h"

enum cell {
    KIND,
    ATHLETE,
    DATE,
    BLOCK,
    WEEK,
    DAY,
    LIFT,
    WHAT,
    SETS,
    PLANNED_SETS,
    REPS,
    PLANNED_REPS,
    LOAD,
    PLANNED_LOAD,
    LOAD_IS,
    UNIT,
    TONNAGE,
    PLANNED_TONNAGE,
    RPE,
    ASKED_RPE,
    WORKED_OUT_RPE,
    DIFFERENCE,
    PERCENT,
    ERROR,
    SESSIONS,
    RATED,
    MINUTES,
    SESSION_LOAD,
    MONOTONY,
    STRAIN,
    NEW,
    SAYS,
    CELL_COUNT
};
static const char *const names[CELL_COUNT] = {
    "kind",     "athlete",         "date",    "block",        "week",           "day",          "lift",    "what",
    "sets",     "planned_sets",    "reps",    "planned_reps", "load",           "planned_load", "load_is", "unit",
    "tonnage",  "planned_tonnage", "rpe",     "asked_rpe",    "worked_out_rpe", "difference",   "percent", "error",
    "sessions", "rated",           "minutes", "session_load", "monotony",       "strain",       "new",     "says"
};
static const struct dec hundredth = { DEC_ONE / 100 };

struct table {
    struct out *out;
    struct arena *arena;
    const struct athlete *athlete;
    const struct review *review;
    const char *cells[CELL_COUNT]; /* NULL: empty */
    struct out shown;
};

void review_csv_header(struct out *out)
{
    for (int i = 0; i < CELL_COUNT; i++) {
        out_text(out, i ? "," : "");
        out_text(out, names[i]);
    }
    out_char(out, '\n');
}

static void text_cell(struct table *table, const char *text)
{
    out_clear(&table->shown);
    visible_add(&table->shown, text, strlen(text), VISIBLE_BREAKS);
    char *room = out_room(table->out, 2 * table->shown.used + 4);
    table->out->used += csv_cell(room, table->shown.at, table->shown.used);
}

/* Numbers go as they are: a minus is no formula of theirs. */
static bool is_text(int cell)
{
    return cell <= WHAT || cell == LOAD_IS || cell == SAYS;
}

static void row_begin(struct table *table, const char *kind, const struct review_week *week)
{
    memset(table->cells, 0, sizeof table->cells);
    table->cells[KIND] = kind;
    table->cells[ATHLETE] = table->athlete->name;
    if (!week)
        return;
    table->cells[DATE] = date_text(table->arena, week->start);
    if (week->plan) {
        table->cells[BLOCK] = week->plan->block->name;
        table->cells[WEEK] = arena_format(table->arena, "%d", week->number);
    }
}

static void row_end(struct table *table)
{
    for (int i = 0; i < CELL_COUNT; i++) {
        if (i)
            out_char(table->out, ',');
        if (table->cells[i] && is_text(i))
            text_cell(table, table->cells[i]);
        else if (table->cells[i])
            out_text(table->out, table->cells[i]);
    }
    out_char(table->out, '\n');
    out_settle(table->out);
}

/* ---- cells ---- */

static const char *whole(struct table *table, int64_t number)
{
    return dec_text(table->arena, dec_int(number));
}

static const char *mean(struct table *table, struct ratio sum, int64_t count)
{
    return dec_text(table->arena, ratio_nearest(ratio_div(sum, ratio_int(count)), hundredth));
}

static const char *load_mean(struct table *table, struct ratio sum, int64_t count)
{
    return dec_text(table->arena, review_mean(sum, count, table->review->unit, hundredth));
}

static void set_unit(struct table *table, const struct lift *lift, bool shown)
{
    static const char *const words[] = {
        [LOADS_FREE] = "total", [LOADS_BAR] = "total", [LOADS_STACK] = "total", [LOADS_DUMBBELLS] = "hand"
    };
    table->cells[UNIT] = unit_word(table->review->unit);
    table->cells[LOAD_IS] = lift->loads == LOADS_BODYWEIGHT ? (shown ? "added" : "body") : words[lift->loads];
}

/* ---- the kinds ---- */

static void max_rows(struct table *table, const struct lift *lift)
{
    struct review_maxes maxes = review_maxes(table->review, lift);
    for (int i = 0; i < maxes.count; i++) {
        const struct review_max *max = &maxes.at[i];
        row_begin(table, "max", max->week);
        table->cells[DATE] = date_text(table->arena, max->day);
        table->cells[LIFT] = lift->name;
        table->cells[WHAT] = max->by_line ? "line" : max->has_max ? "running" : "none";
        table->cells[SESSIONS] = whole(table, max->sessions);
        if (max->has_max) {
            set_unit(table, lift, false);
            table->cells[LOAD] = load_mean(table, ratio_weight(max->max), 1);
        }
        if (max->sessions)
            table->cells[ERROR] = load_mean(table, ratio_weight(max->error), 1);
        row_end(table);
    }
}

static void set_done(struct table *table, const struct lift *lift, const struct review_amount *amount)
{
    table->cells[SETS] = whole(table, amount->sets);
    table->cells[REPS] = whole(table, amount->reps);
    if (!amount->loaded)
        return;
    set_unit(table, lift, true);
    table->cells[LOAD] = load_mean(table, amount->shown, amount->loaded);
    table->cells[TONNAGE] = load_mean(table, amount->total, 1);
}

static void set_planned(struct table *table, const struct lift *lift, const struct review_amount *amount)
{
    table->cells[PLANNED_SETS] = whole(table, amount->sets);
    table->cells[PLANNED_REPS] = whole(table, amount->reps);
    if (!amount->loaded)
        return;
    set_unit(table, lift, true);
    table->cells[PLANNED_LOAD] = load_mean(table, amount->shown, amount->loaded);
    table->cells[PLANNED_TONNAGE] = load_mean(table, amount->total, 1);
}

static void work_row(struct table *table, const struct review_work *work)
{
    struct ratio percent;
    row_begin(table, "work", work->week);
    table->cells[LIFT] = work->lift->name;
    table->cells[WHAT] = !work->done.sets && !work->done.reps ? "none" : work->fell_short ? "short" : "done";
    set_done(table, work->lift, &work->done);
    set_planned(table, work->lift, &work->planned);
    if (work->rated) {
        table->cells[RATED] = whole(table, work->rated);
        table->cells[RPE] = mean(table, work->rated_sum, work->rated);
        table->cells[ASKED_RPE] = mean(table, work->asked_sum, work->rated);
    }
    if (review_percent(work, &percent))
        table->cells[PERCENT] = mean(table, percent, 1);
    if (work->as)
        table->cells[SAYS] = work->as->name;
    if (work->planned.sets || work->planned.reps || work->done.sets)
        row_end(table);
    if (!work->apart.sets)
        return;
    row_begin(table, "work", work->week);
    table->cells[LIFT] = work->lift->name;
    table->cells[WHAT] = "apart";
    set_done(table, work->lift, &work->apart);
    row_end(table);
}

static void missed_row(struct table *table, const struct review_miss *miss)
{
    static const char *const words[] = {
        [MISS_MISSED] = "missed", [MISS_SKIPPED] = "skipped", [MISS_UNNAMED] = "unnamed", [MISS_NO_ENTRY] = "no-entry"
    };
    row_begin(table, "missed", miss->week);
    table->cells[DATE] = miss->dated ? date_text(table->arena, miss->date) : NULL;
    table->cells[DAY] = miss->label;
    table->cells[LIFT] = miss->lift ? miss->lift->name : NULL;
    table->cells[WHAT] = words[miss->how];
    table->cells[SAYS] = miss->because;
    row_end(table);
}

static void honesty_row(struct table *table, const struct honesty *honesty)
{
    row_begin(table, "honesty", NULL);
    table->cells[DATE] = date_text(table->arena, honesty->last->date);
    table->cells[LIFT] = honesty->lift->name;
    table->cells[WHAT] = honesty->off ? "off" : honesty->sets < HONESTY_SETS ? "few" : "fine";
    table->cells[RATED] = whole(table, honesty->sets);
    table->cells[RPE] = mean(table, honesty->rated, 1);
    table->cells[WORKED_OUT_RPE] = mean(table, honesty->worked_out, 1);
    table->cells[DIFFERENCE] = mean(table, honesty->apart, 1);
    table->cells[SAYS] = honesty->off ? honesty_line(table->arena, honesty) : NULL;
    row_end(table);
}

static void load_row(struct table *table, const struct review_load *load)
{
    row_begin(table, "load", NULL);
    table->cells[DATE] = date_text(table->arena, load->monday);
    table->cells[WHAT] = !load->sessions ? "none" : load->rated == load->sessions ? "whole" : "part";
    table->cells[SESSIONS] = whole(table, load->sessions);
    table->cells[RATED] = whole(table, load->rated);
    if (load->rated) {
        table->cells[MINUTES] = whole(table, load->minutes);
        table->cells[SESSION_LOAD] = dec_text(table->arena, load->load);
    }
    if (load->has_monotony) {
        table->cells[MONOTONY] = dec_text(table->arena, load->monotony);
        table->cells[STRAIN] = dec_text(table->arena, load->strain);
    }
    row_end(table);
}

static void best_rows(struct table *table, const struct lift *lift)
{
    struct review_bests bests = review_bests(table->review, lift);
    for (int i = 0; i < bests.count + (bests.has_estimate ? 1 : 0); i++) {
        const struct review_best *best = i < bests.count ? &bests.at[i] : NULL;
        row_begin(table, "best", NULL);
        set_unit(table, lift, best != NULL);
        table->cells[DATE] = date_text(table->arena, best ? best->date : bests.estimate_date);
        table->cells[LIFT] = lift->name;
        table->cells[WHAT] = best ? "set" : "estimate";
        table->cells[REPS] = whole(table, best ? best->reps : bests.from->reps);
        table->cells[LOAD] = load_mean(table, ratio_weight(best ? best->shown : bests.estimate), 1);
        table->cells[NEW] = whole(table, best ? best->in_period : bests.estimate_in_period);
        row_end(table);
    }
}

bool review_csv(struct out *out, const struct athlete *athlete, const struct review *review)
{
    struct table table = {
        .out = out, .arena = out->arena, .athlete = athlete, .review = review, .shown = out_scratch(out->arena)
    };
    if (!review || !review->session_count)
        return !out->failed;
    for (int i = 0; i < review->lift_count; i++)
        max_rows(&table, review->lifts[i]);
    struct review_works works = review_works(review);
    for (int i = 0; i < works.count; i++)
        work_row(&table, &works.at[i]);
    struct review_misses misses = review_misses(review);
    for (int i = 0; i < misses.count; i++)
        missed_row(&table, &misses.at[i]);
    struct review_honesty honesty = review_honesty(review);
    for (int i = 0; i < honesty.count; i++)
        honesty_row(&table, &honesty.at[i]);
    struct review_loads loads = review_loads(review);
    for (int i = 0; i < loads.count; i++)
        load_row(&table, &loads.at[i]);
    for (int i = 0; i < review->lift_count; i++)
        best_rows(&table, review->lifts[i]);
    return !out->failed;
}
