/* The rules that read diaries, on views made by hand: six ratings, or sessions in order. Means are worked by hand. How far
 * lifters misjudge: about 1 rep near failure (Hackett and others 2017; Halperin and others 2022); 1.5 points, 6 sets and 2 of 3
 * sessions are our own choice. */
#include "rules_asked.h"

struct diary {
    const char *says, *rule;
    const char *squat, *bench; /* ratings "8/6 8.5/7": rated/worked out; or sessions "xo": missed, made */
    const char *checks;        /* of the top level; NULL: none */
    const char *unasked;       /* the first of seven days of a block that turns the rule off; NULL: none */
    const char *met;           /* "level `words` message / help", a line each */
};

static struct date day(int number)
{
    struct date monday;
    assert_true(date_make(2027, 1, 4, &monday));
    return date_plus(monday, number);
}

static struct ratio effort(const char **text)
{
    struct dec number;
    size_t length = strspn(*text, "0123456789.");
    assert_true(dec_parse(*text, length, &number));
    *text += length;
    return ratio_dec(number);
}

static int ratings_read(struct rating *to, const char *text, const struct lift *lift)
{
    int count = 0;
    for (; text && *text; text += *text == ' ') {
        to[count] = (struct rating){ .lift = lift, .date = day(7 * count), .at = lift->at };
        to[count].rated = to[count].written = effort(&text);
        text++;
        to[count++].worked_out = effort(&text);
    }
    return count;
}

static int sessions_read(struct session_view *to, const char *text, const struct lift *lift)
{
    int count = 0;
    for (; text && *text; text++, count++)
        to[count] =
            (struct session_view){ .lift = lift, .date = day(7 * count), .missed = *text == 'x', .at = lift->at };
    return count;
}

/* Each lift's sessions one after the other, or in turn. */
static int sessions_mix(struct session_view *to, const struct session_view *a, int a_count,
                        const struct session_view *b, int b_count)
{
    int count = 0;
    for (int i = 0; i < a_count || i < b_count; i++) {
        if (i < a_count)
            to[count++] = a[i];
        if (i < b_count)
            to[count++] = b[i];
    }
    return count;
}

static void diary_holds(void **state)
{
    const struct diary *diary = *state;
    char text[2048], block[256] = "";
    if (diary->unasked)
        snprintf(block, sizeof block, "block winter { for ines; starts %s; weeks 1; checks { off %s because \"ill\" }; day A { squat 1 x 5 } }\n",
                 diary->unasked, diary->rule);
    snprintf(text, sizeof text, "%s%s%s", diary->checks ? diary->checks : "", INES, block);
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    const struct lift *squat = t.model->lifts[0], *bench = t.model->lifts[1];
    struct rating ratings[32];
    struct session_view sessions[32], of_squat[16], of_bench[16];
    struct athlete_view view = {
        .model = t.model, .athlete = told_athlete(&t, "ines"), .ratings = ratings, .sessions = sessions
    };
    struct block_view winter;
    if (diary->unasked)
        winter = block_view_make(t.arena, told_plan(&t, "winter", "ines"));
    if (!strcmp(diary->rule, "effort-honesty")) {
        view.rating_count = ratings_read(ratings, diary->squat, squat);
        view.rating_count += ratings_read(ratings + view.rating_count, diary->bench, bench);
    } else {
        int squats = sessions_read(of_squat, diary->squat, squat),
            benches = sessions_read(of_bench, diary->bench, bench);
        view.session_count = sessions_mix(sessions, of_squat, squats, of_bench, benches);
    }
    ask_rule(&t, diary->rule, view, &winter, diary->unasked ? 1 : 0);
    assert_string_equal(met_text(&t, diary->rule, MET_LEVEL | MET_HELP), diary->met);
    told_end(&t);
}

#define RATED(lift, by, way, sets)                                                                                     \
    "warning `" lift "` " lift " is rated " by " points too " way " on average over " sets                             \
    " sets; up to 1.5 is usual / "
#define ADD(line) "add `" line "` to the athlete, so that the diary counts what is done"
#define MISSED(lift, times, of)                                                                                        \
    "warning `" lift "` " lift " was missed in " times " of the last " of                                              \
    " sessions / lower it with `load down 5%` in an "                                                                  \
    "`adjust`, add a newer max, or ask what is the matter"

static const struct diary rows[] = {
    { "1.5 points off is usual", "effort-honesty", "8/6.5 8/6.5 8/6.5 8/6.5 8/6.5 8/6.5", .met = "" },
    { "2 points off over six sets are a habit", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6",
      .met = RATED("squat", "2", "high", "6") ADD("effort squat 8 means 6") },
    { "five sets say nothing yet", "effort-honesty", "8/6 8/6 8/6 8/6 8/6", .met = "" },
    { "the mean counts: (5 x 1.5 + 1.8) / 6 is 1.55", "effort-honesty", "8/6.5 8/6.5 8/6.5 8/6.5 8/6.5 8/6.2",
      .met = RATED("squat", "1.6", "high", "6") ADD("effort squat 8 means 6.5") },
    { "one bad day is no habit", "effort-honesty", "8/2 8/8 8/8 8/8 8/8 8/8", .met = "" },
    { "too low is met too", "effort-honesty", "6/8 6/8 6/8 6/8 6/8 6/8 6/8",
      .met = RATED("squat", "2", "low", "7") ADD("effort squat 6 means 8") },
    { "1.5 too low is usual", "effort-honesty", "6/7.5 6/7.5 6/7.5 6/7.5 6/7.5 6/7.5", .met = "" },
    /* Mean rating (3 x 7 + 3 x 8.5) / 6 = 7.75, to the half 8; less 2 is 5.75, to the half 6. */
    { "both ends of the line go to the half", "effort-honesty", "7/5 7/5 7/5 8.5/6.5 8.5/6.5 8.5/6.5",
      .met = RATED("squat", "2", "high", "6") ADD("effort squat 8 means 6") },
    { "never above 10", "effort-honesty", "9/11 9/11 9/11 9/11 9/11 9/11",
      .met = RATED("squat", "2", "low", "6") ADD("effort squat 9 means 10") },
    { "each lift by itself", "effort-honesty", "8/6 8/6 8/6 8/6 8/6", "8/5 8/5 8/5 8/5 8/5 8/5",
      .met = RATED("bench", "3", "high", "6") ADD("effort bench 8 means 5") },
    { "the house is not asked", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6",
      .checks = "checks { off effort-honesty because \"beginners\" }\n", .met = "" },
    /* The sixth rating is of 2027-02-08. */
    { "nor is it in a block that says so, from its first day", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6",
      .unasked = "2027-02-08", .met = "" },
    { "to its last", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6", .unasked = "2027-02-02", .met = "" },
    { "but the day after it is", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6", .unasked = "2027-02-01",
      .met = RATED("squat", "2", "high", "6") ADD("effort squat 8 means 6") },
    { "and the day before", "effort-honesty", "8/6 8/6 8/6 8/6 8/6 8/6", .unasked = "2027-02-09",
      .met = RATED("squat", "2", "high", "6") ADD("effort squat 8 means 6") },

    { "two of the last three", "missed-often", "oxox", .met = MISSED("squat", "2", "3") },
    { "the last two", "missed-often", "ooxx", .met = MISSED("squat", "2", "3") },
    { "three of three", "missed-often", "oxxx", .met = MISSED("squat", "3", "3") },
    { "two weeks ago is over", "missed-often", "xxoo", .met = "" },
    { "two before the last", "missed-often", "xxo", .met = MISSED("squat", "2", "3") },
    { "one of three is a bad day", "missed-often", "xxoox", .met = "" },
    { "both of the only two", "missed-often", "xx", .met = MISSED("squat", "2", "2") },
    { "one of one is not two", "missed-often", "x", .met = "" },
    { "each lift by itself", "missed-often", "xox", "oxo", .met = MISSED("squat", "2", "3") },
    { "no diary", "missed-often", "", .met = "" },
};

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, diary_holds));
    return tests_run(&tests);
}
