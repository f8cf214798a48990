/* The season at a glance: a line for each item; lifts are columns, and where there are more of them than fit the lines are
 * written again with the others. */
#include "emit/calendar.h"

#include "emit/calendar_items.h"
#include "emit/visible.h"
#include "emit/wording.h"

enum {
    PAGE = 100,
    DATE_WIDTH = 10,
    OUT_WIDTH = 5,
    KIND_WIDTH = 6,
    SETS_WIDTH = 4,
    MEAN_WIDTH = 5,
    LIFT_WIDTH = 2 + SETS_WIDTH + 1 + MEAN_WIDTH, /* with the gap before it */
    GAPS = 8,                                     /* between the columns before the lifts */
    BLOCK_LEAST = 10,
    BLOCK_MOST = 24,
    LIFTS_WANTED = 3 /* side by side, whatever the block is called */
};

struct calendar {
    struct arena *arena;
    const struct athlete *athlete;
    const struct model *model;
    struct items items;
    VEC(const struct lift *) lifts;
    int block_width, week_width, goal_width;
    struct out line, word;
};

/* ---- lifts ---- */

/* Variations count with the competition lift that they are like. NULL: an accessory. */
static const struct lift *lift_head(const struct lift *lift)
{
    if (!lift_is_main(lift))
        return NULL;
    const struct lift *head = lift;
    while (head && head->kind != LIFT_COMPETITION)
        head = head->like;
    return head ? head : lift;
}

/* A lift with its variations in one week; `total 30` has an open number of sets, and counts none. False: not trained. */
static bool lift_week(const struct plan_week *week, const struct lift *head, struct lift_total *sum)
{
    bool trained = false;
    *sum = (struct lift_total){ .lift = head, .percent_reps = ratio_int(0) };
    for (int i = 0; i < week->totals.lift_count; i++) {
        const struct lift_total *one = &week->totals.lifts[i];
        if (lift_head(one->lift) != head)
            continue;
        trained = true;
        sum->sets += one->sets;
        sum->percent_reps = ratio_add(sum->percent_reps, one->percent_reps);
        sum->reps_with_percent += one->reps_with_percent;
    }
    return trained;
}

static void lifts_find(struct calendar *calendar)
{
    struct lift_total sum;
    for (int i = 0; i < calendar->model->lift_count; i++) {
        const struct lift *lift = calendar->model->lifts[i];
        bool trained = false;
        for (int j = 0; lift_head(lift) == lift && !trained && j < calendar->items.list.count; j++)
            trained = calendar->items.list.at[j].week && lift_week(calendar->items.list.at[j].week, lift, &sum);
        if (trained)
            vec_add(calendar->arena, &calendar->lifts, lift);
    }
}

/* ---- a line ---- */

static void spaces_to(struct calendar *calendar, int from, int width)
{
    out_chars(&calendar->line, ' ', width - from);
}

/* The coach's words, cut where the column ends. */
static void put_words(struct calendar *calendar, const char *text, int width)
{
    struct out *word = &calendar->word;
    out_clear(word);
    visible_add(word, text, strlen(text), VISIBLE_ONE_LINE);
    int whole = columns_of(word->at, word->used), used = 0;
    size_t at = 0;
    while (at < word->used) {
        size_t size = character_size(word->at + at, word->used - at);
        int more = columns_of(word->at + at, size);
        if (whole > width && used + more > width - 1)
            break;
        at += size;
        used += more;
    }
    out_bytes(&calendar->line, word->at, at);
    if (at < word->used) {
        out_text(&calendar->line, "…");
        used++;
    }
    spaces_to(calendar, used, width);
}

static void put_right(struct calendar *calendar, const char *text, int width)
{
    spaces_to(calendar, (int)strlen(text), width);
    out_text(&calendar->line, text);
}

static const char *word_end(struct out *word)
{
    out_char(word, '\0');
    return word->at;
}

static void line_close(struct calendar *calendar, struct out *out)
{
    struct out *line = &calendar->line;
    while (line->used && line->at[line->used - 1] == ' ')
        line->used--;
    out_bytes(out, line->at, line->used);
    out_char(out, '\n');
    out_clear(line);
}

/* What stands before the lifts; the lines of the head have words of ours there. */
static void put_front(struct calendar *calendar, const char *block, const char *week, const char *goal, const char *weeks_out, const char *kind)
{
    out_text(&calendar->line, "  ");
    put_words(calendar, block, calendar->block_width);
    out_text(&calendar->line, "  ");
    put_words(calendar, week, calendar->week_width);
    out_text(&calendar->line, "  ");
    put_words(calendar, goal, calendar->goal_width);
    out_char(&calendar->line, ' ');
    put_right(calendar, weeks_out, OUT_WIDTH);
    out_char(&calendar->line, ' ');
    put_words(calendar, kind, KIND_WIDTH);
}

static const char *weeks_out(struct calendar *calendar, const struct item *item)
{
    const struct meet *meet = season_next_meet(item->season, item->date);
    if (!meet)
        return "";
    int weeks = (meet->date.day - item->date.day) / 7;
    return weeks ? arena_format(calendar->arena, "%d", weeks) : "meet";
}

/* The points of a column stand below each other. */
static void say_mean(struct out *say, const struct lift_total *sum)
{
    if (!sum->reps_with_percent) {
        out_text(say, "-  ");
        return;
    }
    struct dec mean = ratio_nearest(ratio_div(sum->percent_reps, ratio_int(sum->reps_with_percent)), (struct dec){ DEC_ONE / 10 });
    out_dec(say, mean);
    out_text(say, mean.e10 % DEC_ONE ? "" : "  ");
}

static void put_lift(struct calendar *calendar, const struct plan_week *week, const struct lift *lift)
{
    struct lift_total sum;
    out_text(&calendar->line, "  ");
    if (!lift_week(week, lift, &sum)) {
        spaces_to(calendar, 0, LIFT_WIDTH - 2);
        return;
    }
    out_clear(&calendar->word);
    if (sum.sets)
        out_int(&calendar->word, sum.sets);
    else
        out_char(&calendar->word, '-');
    put_right(calendar, word_end(&calendar->word), SETS_WIDTH);
    out_clear(&calendar->word);
    say_mean(&calendar->word, &sum);
    put_right(calendar, word_end(&calendar->word), 1 + MEAN_WIDTH);
}

static const char *block_words(const struct plan *plan)
{
    return plan->block->title ? plan->block->title : plan->block->name;
}

static const char *week_words(struct calendar *calendar, const struct plan *plan, int week)
{
    return arena_format(calendar->arena, "%d of %d", week, plan->week_count);
}

static void put_week(struct calendar *calendar, const struct item *item, int first, int past)
{
    const struct plan_week *week = item->week;
    put_front(calendar, block_words(item->plan), week_words(calendar, item->plan, week->number), goal_name(item->plan->block->goal),
              weeks_out(calendar, item), week->kind == WEEK_TRAINING ? "" : week_kind_name(week->kind));
    for (int i = first; i < past; i++)
        put_lift(calendar, week, calendar->lifts.at[i]);
}

static void put_gap(struct calendar *calendar, int days)
{
    out_text(&calendar->line, "  nothing planned for ");
    if (days % 7)
        say_count(&calendar->line, days, "day", "days");
    else
        say_count(&calendar->line, days / 7, "week", "weeks");
}

static void put_meet(struct calendar *calendar, const struct meet *meet)
{
    out_text(&calendar->line, "  MEET on ");
    out_text(&calendar->line, weekday_title(date_weekday(meet->date)));
    out_text(&calendar->line, meet->title ? ": " : "");
    int room = PAGE - (int)calendar->line.used;
    put_words(calendar, meet->title ? meet->title : "", room);
}

static void item_line(struct calendar *calendar, struct out *out, const struct item *item, int first, int past)
{
    out_date(&calendar->line, item->date);
    switch (item->kind) {
    case ITEM_WEEK: put_week(calendar, item, first, past); break;
    case ITEM_BREAK: put_front(calendar, "Break", "", "", weeks_out(calendar, item), ""); break;
    case ITEM_GAP: put_gap(calendar, item->days); break;
    case ITEM_MEET: put_meet(calendar, item->meet); break;
    }
    line_close(calendar, out);
}

/* ---- the table ---- */

static int wider(int width, const char *text)
{
    int wanted = columns_of(text, strlen(text));
    return wanted > width ? wanted : width;
}

static void widths_set(struct calendar *calendar)
{
    int block = 5, week = 4, goal = 4; /* the words of the head */
    for (int i = 0; i < calendar->items.list.count; i++) {
        const struct plan *plan = calendar->items.list.at[i].plan;
        if (!plan)
            continue;
        block = wider(block, block_words(plan));
        week = wider(week, week_words(calendar, plan, plan->week_count));
        goal = wider(goal, goal_name(plan->block->goal));
    }
    int lifts = calendar->lifts.count < LIFTS_WANTED ? calendar->lifts.count : LIFTS_WANTED;
    int room = PAGE - DATE_WIDTH - GAPS - OUT_WIDTH - KIND_WIDTH - week - goal - lifts * LIFT_WIDTH;
    int most = room < BLOCK_LEAST ? BLOCK_LEAST : room > BLOCK_MOST ? BLOCK_MOST : room;
    calendar->block_width = block < most ? block : most;
    calendar->week_width = week;
    calendar->goal_width = goal;
}

static void head_lines(struct calendar *calendar, struct out *out, int first, int past)
{
    spaces_to(calendar, 0, DATE_WIDTH);
    put_front(calendar, "", "", "", "weeks", "");
    for (int i = first; i < past; i++) {
        out_char(&calendar->line, ' ');
        put_words(calendar, lift_words(calendar->lifts.at[i]), LIFT_WIDTH - 1);
    }
    line_close(calendar, out);
    put_words(calendar, "Week from", DATE_WIDTH);
    put_front(calendar, "Block", "Week", "Goal", "out", "");
    for (int i = first; i < past; i++)
        out_text(&calendar->line, "  sets     %");
    line_close(calendar, out);
}

static void table_lines(struct calendar *calendar, struct out *out, int first, int past)
{
    head_lines(calendar, out, first, past);
    for (int i = 0; i < calendar->items.list.count; i++)
        item_line(calendar, out, &calendar->items.list.at[i], first, past);
}

static void name_line(struct calendar *calendar, struct out *out)
{
    const struct athlete *athlete = calendar->athlete;
    struct out words = out_scratch(calendar->arena);
    out_text(&words, athlete->title ? athlete->title : athlete->name);
    for (int i = 0; i < calendar->items.seasons.count; i++) {
        const struct season *season = calendar->items.seasons.at[i];
        out_text(&words, i ? ", " : ": ");
        out_text(&words, season->title ? season->title : season->name);
    }
    put_words(calendar, word_end(&words), PAGE);
    line_close(calendar, out);
}

static void calendar_lines(struct calendar *calendar, struct out *out)
{
    int front = DATE_WIDTH + GAPS + OUT_WIDTH + KIND_WIDTH + calendar->block_width + calendar->week_width + calendar->goal_width;
    int fit = (PAGE - front) / LIFT_WIDTH, first = 0;
    out_chars(out, '=', PAGE);
    out_char(out, '\n');
    name_line(calendar, out);
    do {
        int past = first + fit < calendar->lifts.count ? first + fit : calendar->lifts.count;
        if (first)
            out_char(out, '\n');
        table_lines(calendar, out, first, past);
        first = past;
    } while (first < calendar->lifts.count);
    if (calendar->lifts.count)
        out_text(out, "A lift with its variations: working sets, and their mean per cent of the max.\n");
}

bool calendar_write(struct out *out, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans, int count)
{
    struct calendar calendar = { .arena = out->arena, .athlete = athlete, .model = plans[0]->model,
                                 .items = items_find(out->arena, narrow, athlete, plans, count),
                                 .line = out_scratch(out->arena), .word = out_scratch(out->arena) };
    if (!calendar.items.list.count)
        return out_settle(out);
    lifts_find(&calendar);
    widths_set(&calendar);
    calendar_lines(&calendar, out);
    return out_settle(out);
}
