/* The max over time: a row a week, with marks on one scale a lift. */
#include "emit/review_page.h"
#include "emit/wording.h"

enum { WEEK_COLUMN = 14, MAX_EDGE = 30, ERROR_EDGE = 38, SESSIONS_EDGE = 47, CHART_COLUMN = 50, CHART_MARKS = 28 };

/* The lowest and the highest of all that is marked. */
struct scale {
    int64_t low, high;
};

static struct scale scale_of(const struct review_maxes *maxes)
{
    struct scale scale = { INT64_MAX, 0 };
    for (int i = 0; i < maxes->count; i++) {
        const struct review_max *max = &maxes->at[i];
        if (!max->has_max)
            continue;
        if (max->max.e10 - max->error.e10 < scale.low)
            scale.low = max->max.e10 - max->error.e10;
        if (max->max.e10 + max->error.e10 > scale.high)
            scale.high = max->max.e10 + max->error.e10;
    }
    return scale;
}

/* The nearest mark, halves up; all in the middle where the scale has no length. */
static int mark_at(struct scale scale, int64_t load)
{
    wide length = scale.high - scale.low, from = load - scale.low;
    if (length <= 0)
        return CHART_MARKS / 2;
    return (int)((2 * from * (CHART_MARKS - 1) + length) / (2 * length));
}

static void chart_row(struct review_page *page, struct scale scale, const struct review_max *max)
{
    char marks[CHART_MARKS + 3];
    memset(marks, ' ', sizeof marks);
    marks[0] = marks[CHART_MARKS + 1] = '|';
    marks[CHART_MARKS + 2] = '\0';
    if (max->has_max) {
        for (int at = mark_at(scale, max->max.e10 - max->error.e10);
             at <= mark_at(scale, max->max.e10 + max->error.e10); at++)
            marks[1 + at] = '-';
        marks[1 + mark_at(scale, max->max.e10)] = max->by_line ? 'o' : '*';
    }
    line_stop(&page->lines, CHART_COLUMN);
    line_say(&page->lines, 0, marks);
}

static const char *load_words(struct review_page *page, int64_t e10)
{
    struct dec load = review_mean((struct ratio){ e10, 1 }, 1, page->review->unit, (struct dec){ DEC_ONE / 10 });
    return dec_text(page->arena, load);
}

static void max_row(struct review_page *page, struct scale scale, const struct review_max *max)
{
    review_row(page);
    line_say(&page->lines, 0, date_text(page->arena, max->day));
    line_stop(&page->lines, WEEK_COLUMN);
    line_say(&page->lines, 0,
             !max->week          ? "after"
             : max->week->number ? arena_format(page->arena, "week %d", max->week->number)
                                 : "-");
    review_right(page, MAX_EDGE, max->has_max ? load_words(page, max->max.e10) : "-");
    review_right(page, ERROR_EDGE, max->sessions ? load_words(page, max->error.e10) : "-");
    review_right(page, SESSIONS_EDGE, arena_format(page->arena, "%d", max->sessions));
    chart_row(page, scale, max);
    line_end(&page->lines);
}

static void chart_lift(struct review_page *page, const struct lift *lift, const struct review_maxes *maxes)
{
    struct scale scale = scale_of(maxes);
    struct out *say = review_say(page);
    out_text(say, lift_words(lift));
    out_text(say, lift->loads == LOADS_BODYWEIGHT  ? ", with the body"
                  : lift->loads == LOADS_DUMBBELLS ? ", a hand"
                                                   : "");
    line_end(&page->lines);
    review_row(page);
    line_words(&page->lines, 0, review_said(page));
    line_stop(&page->lines, CHART_COLUMN);
    line_say(&page->lines, 1, load_words(page, scale.low));
    review_right(page, LINE_COLUMNS,
                 arena_format(page->arena, "%s %s", load_words(page, scale.high), unit_word(page->review->unit)));
    line_end(&page->lines);
    for (int i = 0; i < maxes->count; i++)
        max_row(page, scale, &maxes->at[i]);
}

static void chart_head(struct review_page *page)
{
    static const struct review_head heads[] = { { MAX_EDGE, "max" }, { ERROR_EDGE, "+ or -" }, { SESSIONS_EDGE, "sessions" } };
    review_headline(page, "THE MAX OVER TIME");
    review_heads(page, "as of", heads, sizeof heads / sizeof *heads);
}

void review_chart(struct review_page *page)
{
    bool begun = false;
    for (int i = 0; i < page->review->lift_count; i++) {
        struct review_maxes maxes = review_maxes(page->review, page->review->lifts[i]);
        if (maxes.count && !begun)
            chart_head(page);
        begun |= maxes.count > 0;
        if (maxes.count)
            chart_lift(page, page->review->lifts[i], &maxes);
    }
    if (!begun) {
        review_headline(page, "THE MAX OVER TIME");
        review_remark(page, "No session counts yet: a set tells of the max when it has a load, reps and an effort, as "
                            "in `squat 90 kg x 5 rpe 7`.");
        return;
    }
    review_remark(page, "Each row: what the sessions before that day say, and how many they are. * the running max, - "
                        "one standard error "
                        "either way, o a max line before any session counts.");
}
