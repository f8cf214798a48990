/* What she could lift as of a day: language.md, section 2 and 5.8, over the `max` lines alone. */
#include "club.h"

#include "model/history.h"

static const char *max_on(struct told *t, const char *lift, const char *day)
{
    struct date date;
    assert_true(date_parse(day, strlen(day), &date));
    struct max_used max = history_max(told_athlete(t, "ines"), model_lift(t->model, lift), date, NULL);
    if (!max.line)
        return "none";
    const char *kilograms =
        dec_text(t->arena, ratio_nearest(ratio_div(max.load, ratio_int(DEC_ONE)), (struct dec){ DEC_ONE / 10000 }));
    return max.lent_by ? arena_format(t->arena, "%s of %s", kilograms, max.lent_by->name) : kilograms;
}

static void maxes_as_of_a_day(void **state)
{
    (void)state;
    static const struct {
        const char *lines, *lift, *day, *max;
    } cases[] = {
        { "max squat 100 kg on 2026-01-01; max squat 110 kg on 2026-06-01", "squat", "2026-12-31",
          "110" }, /* the newest counts */
        { "max squat 110 kg on 2026-06-01; max squat 100 kg on 2026-01-01", "squat", "2026-12-31",
          "110" }, /* wherever it stands */
        { "max squat 100 kg on 2026-01-01; max squat 110 kg on 2026-06-01", "squat", "2026-05-31",
          "100" }, /* on or before the day */
        { "max squat 100 kg on 2026-01-01; max squat 110 kg on 2026-06-01", "squat", "2026-06-01", "110" },
        { "max squat 110 kg on 2026-06-01", "squat", "2026-05-31", "none" },
        { "max squat 90 kg; max squat 110 kg on 2026-06-01", "squat", "2026-05-31", "90" }, /* undated: the oldest */
        { "max squat 110 kg on 2026-06-01; max squat 90 kg", "squat", "2026-06-02", "110" },
        { "max squat 90 kg; max squat 95 kg", "squat", "2026-06-02", "95" }, /* of two of one day the later written */
        { "max squat 100 kg", "halt", "2026-01-01", "90 of squat" },
        { "max squat 100 kg", "low", "2026-01-01", "29.7 of squat" }, /* chains multiply exactly: 0.9 × 0.33 */
        { "max squat 100 kg; max halt 70 kg on 2020-01-01", "halt", "2026-01-01",
          "70" }, /* its own line, however old, wins */
        { "max squat 100 kg; max halt 70 kg on 2026-02-01", "halt", "2026-01-31",
          "90 of squat" }, /* until it has come, the borrowed one */
        { "max squat 100 kg; max halt 70 kg on 2026-02-01", "halt", "2026-02-01", "70" },
        { "max squat 100 kg; max halt 70 kg", "low", "2026-02-01", "23.1 of halt" },
        { "max halt 70 kg", "squat", "2026-02-01", "none" }, /* lent one way only */
    };
    for (size_t i = 0; i < 2 * sizeof cases / sizeof *cases; i++) {
        char text[2048], more[1024] = "";
        for (int line = 0; i % 2 && line < 20; line++) /* many lines are sorted */
            snprintf(more + strlen(more), sizeof more - strlen(more), "max %s 50 kg on 2026-05-%02d; ", line % 2 ? "ante" : "zygo", line + 1);
        snprintf(text, sizeof text,
                 "lift ante\nlift squat { kind competition; loads bar }\nlift halt like squat at 90%%\nlift low like halt at "
                 "33%%\nlift zygo\nathlete ines { %s%s }\n",
                 more, cases[i / 2].lines);
        struct told t = told_text(text);
        assert_string_equal(findings_text(&t), "");
        assert_string_equal(max_on(&t, cases[i / 2].lift, cases[i / 2].day), cases[i / 2].max);
        told_end(&t);
    }
}

static void bodyweights_as_of_a_day(void **state)
{
    (void)state;
    struct told t = told_text("athlete ines { bodyweight 60 kg on 2026-02-01; bodyweight 62 kg on 2026-04-01; "
                              "bodyweight 61 kg on 2026-03-01 }\nathlete ola\n");
    static const struct {
        const char *day, *weight;
    } cases[] = {
        { "2026-02-01", "60" }, { "2026-02-28", "60" }, { "2026-03-15", "61" },
        { "2026-12-31", "62" }, { "2026-01-01", "60" }, /* before the first the first: a weight is better than none */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct date date;
        assert_true(date_parse(cases[i].day, 10, &date));
        assert_string_equal(number_in(&t, history_bodyweight(told_athlete(&t, "ines"), date)->weight, UNIT_KG),
                            cases[i].weight);
        assert_null(history_bodyweight(told_athlete(&t, "ola"), date));
    }
    told_end(&t);
}

/* Order: own points, then the athlete's model, the block's, the top level's of any file. */
static void whose_curve_counts(void **state)
{
    (void)state;
    static const struct {
        const char *top, *athlete, *block, *curve;
    } cases[] = {
        { "", "", "", "" },
        { "model wathan", "", "", "wathan" },
        { "model wathan", "", "model mayhew", "mayhew" },
        { "model wathan", "model epley", "model mayhew", "epley" },
        { "model wathan", "model epley; curve squat 8 reps at 77%", "model mayhew", "own" },
        { "", "curve bench 8 reps at 77%", "", "" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[1024];
        snprintf(text, sizeof text,
                 "lift squat\nlift bench\n%s\nathlete ines { %s }\nblock winter { for ines; starts 2027-01-04; weeks "
                 "1; %s; day A { squat 1 x 1 } }\n",
                 cases[i].top, cases[i].athlete, cases[i].block);
        struct told t = told_text(text);
        assert_string_equal(findings_text(&t), "");
        struct curve curve =
            history_curve(t.model, t.model->blocks[0], told_athlete(&t, "ines"), model_lift(t.model, "squat"));
        assert_string_equal(curve.row ? curve_name(curve.row) : "own", cases[i].curve);
        told_end(&t);
    }
}

static void a_borrowed_max_brings_no_curve(void **state)
{
    (void)state;
    struct told t =
        told_text("lift squat\nlift halt like squat\nathlete ines { max squat 100 kg; curve squat 8 reps at 77% }\n");
    struct curve curve = history_curve(t.model, NULL, told_athlete(&t, "ines"), model_lift(t.model, "halt"));
    assert_non_null(curve.row);
    assert_string_equal(curve_name(curve.row), "");
    told_end(&t);
}

static void efforts_move_within_the_scale(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; effort squat 8 means 6.5 }\nathlete tomas { gym hall; effort squat 6 means 9 }\n");
    const struct lift *squat = model_lift(t.model, "squat"), *bench = model_lift(t.model, "bench");
    const struct athlete *ines = told_athlete(&t, "ines"), *tomas = told_athlete(&t, "tomas");
    assert_int_equal(history_effort(ines, squat, dec_int(9)).e10, dec_halves(15).e10);
    assert_int_equal(history_effort(ines, squat, dec_int(1)).e10, 0);
    assert_int_equal(history_effort(tomas, squat, dec_int(9)).e10, dec_int(10).e10);
    assert_int_equal(history_effort(ines, bench, dec_int(9)).e10, dec_int(9).e10);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(maxes_as_of_a_day),
        cmocka_unit_test(bodyweights_as_of_a_day),
        cmocka_unit_test(whose_curve_counts),
        cmocka_unit_test(a_borrowed_max_brings_no_curve),
        cmocka_unit_test(efforts_move_within_the_scale),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
