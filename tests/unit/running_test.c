/* The running max: which lines and sessions are folded in, in which order, as of which day (language.md, 5.8 and 5.9). What the
 * filter makes of them is checked against statsmodels in trend_test.c and tests/trend.py; here the expected max is that filter
 * given by hand what the sentence says. Shares on the usual curve: one rep in reserve and one rep, n = 2, 35/36; n = 5, 8/9; n = 8,
 * 29/36; n = 10, 3/4 (Brzycki 1993). */
#include "club.h"

#include "calc/trend.h"
#include "plan/running.h"

static struct date jan(int day)
{
    struct date first;
    assert_true(date_make(2027, 1, 1, &first));
    return date_plus(first, day - 1);
}

/* What is seen, by hand: a tested line, or a set with n. day 0: undated. */
struct seen {
    int day; /* of January 2027; below 1: before it */
    int kilos, part, of; /* the max is kilos x of / part */
    int n;   /* 0: tested */
    bool undated, borrowed;
};

static struct trend_observation observation(const struct seen *seen)
{
    struct ratio max = ratio_div(ratio_mul(ratio_int(seen->kilos * DEC_ONE), ratio_int(seen->of ? seen->of : 1)), ratio_int(seen->part ? seen->part : 1));
    return (struct trend_observation){ .day = jan(seen->day).day, .dated = !seen->undated, .source = seen->n ? TREND_SET : TREND_TESTED,
                                       .max = max, .n = ratio_int(seen->n ? seen->n : 1), .borrowed = seen->borrowed };
}

struct told_running {
    const char *says;
    const char *lines; /* of athlete ines */
    const char *diary;
    const char *lift;
    int day; /* of January 2027 */
    struct seen seen[5];
    int count, sessions;
};

static void running_holds(void **state)
{
    const struct told_running *row = *state;
    char text[4096];
    snprintf(text, sizeof text,
             "athlete ines { gym hall; bodyweight 60 kg on 2026-12-01; %s }\nblock winter { for ines; starts 2027-01-04; weeks 4; day A on mon { squat 3 x 5 at rpe 7 } }\n"
             "diary ines {\n%s\n}\n",
             row->lines, row->diary);
    struct told t = told_club(text);
    struct record *record;
    told_plan_record(&t, "winter", "ines", &record);
    assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 0);
    struct running running = running_max(record, model_lift(t.model, row->lift), jan(row->day), NULL);
    struct trend trend = { 0 };
    for (int i = 0; i < row->count; i++) {
        struct trend_observation seen = observation(&row->seen[i]);
        trend_observe(&trend, &seen);
    }
    assert_int_equal(running.known, row->sessions > 0);
    assert_int_equal(running.sessions, row->sessions);
    if (row->sessions) {
        assert_int_equal(running.max.e10, trend_max(&trend).e10);
        assert_int_equal(running.error.e10, trend_error(&trend, jan(row->day).day).e10);
    }
    told_end(&t);
}

#define LINE "max squat 120 kg on 2026-12-12"
#define TESTED { .day = -19, .kilos = 120 } /* 12 December */

static const struct told_running rows[] = {
    { "without a session the lines alone hold", LINE, "2027-01-04 A { bench 50 kg x 5 rpe 7 }", "squat", 11, { { 0 } }, 0, 0 },
    { "a line and a session", LINE, "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a session dated on the day itself does not count", LINE, "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 4, { { 0 } }, 0, 0 },
    { "and counts the day after", LINE, "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 5,
      { TESTED, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a line dated on the day counts", LINE "; max squat 126 kg on 2027-01-11", "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 }, { .day = 11, .kilos = 126 } }, 3, 1 },
    { "the highest estimate of a session is its observation", LINE, "2027-01-04 A { squat 104 kg x 3 rpe 8 then 106 kg x 3, 3 rpe 9, 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 106, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a session each", LINE, "2027-01-04 A { squat 104 kg x 3 rpe 8 }\n2027-01-06 { squat 87 kg x 5 rpe 7 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 }, { .day = 6, .kilos = 87, .of = 36, .part = 29, .n = 8 } }, 3, 2 },
    { "her effort line moves all ratings", LINE "; effort squat 9 means 7", "2027-01-04 A { squat 87 kg x 5 rpe 9 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 87, .of = 36, .part = 29, .n = 8 } }, 2, 1 },
    { "a set without a rating says nothing", LINE, "2027-01-04 A { squat 110 kg x 3, 3 rpe 8 then 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 110, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a failed rep gives no estimate", LINE, "2027-01-04 A { squat 130 kg x 0 rpe 10 then 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "seconds are no reps", LINE, "2027-01-04 A { squat 130 kg x 3 s rpe 8 }", "squat", 11, { { 0 } }, 0, 0 },
    { "on one day the lines come first", LINE "; max squat 126 kg on 2027-01-04", "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 126 }, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 3, 1 },
    { "an undated line starts it with no days passed", "max squat 120 kg", "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { { .kilos = 120, .undated = true }, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "of undated lines the last written", "max squat 100 kg; max squat 120 kg", "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { { .kilos = 120, .undated = true }, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a lift without a line starts from its first observation", "", "2027-01-04 A { squat 104 kg x 3 rpe 8 }\n2027-01-06 { squat 87 kg x 5 rpe 7 }", "squat", 11,
      { { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 }, { .day = 6, .kilos = 87, .of = 36, .part = 29, .n = 8 } }, 2, 2 },
    { "max … from has the variance of its n", "max squat from 96 kg x 3 rpe 8 on 2026-12-12", "2027-01-04 A { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { { .day = -19, .kilos = 96, .of = 9, .part = 8, .n = 5 }, { .day = 4, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "a like lift starts from the borrowed max and is fed by its own sets only", LINE,
      "2027-01-04 A { squat 104 kg x 3 rpe 8; front-squat 80 kg x 3 rpe 8 }", "front-squat", 11,
      { { .day = -19, .kilos = 96, .borrowed = true }, { .day = 4, .kilos = 80, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "until its own line has come", LINE "; max front-squat 90 kg on 2027-01-08", "2027-01-04 A { front-squat 80 kg x 3 rpe 8 }", "front-squat", 11,
      { { .day = 4, .kilos = 80, .of = 9, .part = 8, .n = 5 }, { .day = 8, .kilos = 90 } }, 2, 1 },
    { "on a lift that loads the body the total counts", "max pull-up 80 kg on 2026-12-12", "2027-01-04 A { pull-up bodyweight plus 3 kg x 3 rpe 8 }", "pull-up", 11,
      { { .day = -19, .kilos = 80 }, { .day = 4, .kilos = 63, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "far away it stays out", LINE, "2027-01-04 A { squat 30 kg x 3 rpe 8 }\n2027-01-06 { squat 104 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 6, .kilos = 104, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
    { "until a second one agrees: then both count", LINE, "2027-01-04 A { squat 64 kg x 3 rpe 8 }\n2027-01-06 { squat 64 kg x 3 rpe 8 }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 64, .of = 9, .part = 8, .n = 5 }, { .day = 6, .kilos = 64, .of = 9, .part = 8, .n = 5 } }, 3, 2 },
    { "as of the days between them neither does", LINE, "2027-01-04 A { squat 64 kg x 3 rpe 8 }\n2027-01-06 { squat 64 kg x 3 rpe 8 }", "squat", 6, { { 0 } }, 0, 0 },
    { "or its session lets it in", LINE, "2027-01-04 A { squat 64 kg x 3 rpe 8; allow unlikely-result because \"after the flu\" }", "squat", 11,
      { TESTED, { .day = 4, .kilos = 64, .of = 9, .part = 8, .n = 5 } }, 2, 1 },
};

/* As planned counts by the printed load, from the week on that knows it: week 1 prints 3 x 5 at rpe 7, 120 x 29/36 = 96.7, 97.5 kg. */
static void as_planned_is_what_was_printed(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; " LINE " }\nblock winter { for ines; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at rpe 7 } }\n"
                              "diary ines { 2027-01-04 A { squat as planned rpe 7 } }\n");
    struct record *record;
    struct trend trend = { 0 };
    told_plan_record(&t, "winter", "ines", &record);
    const struct seen seen[] = { TESTED, { .day = 4, .kilos = 195, .part = 2 * 29, .of = 36, .n = 8 } };
    for (int i = 0; i < 2; i++) {
        struct trend_observation observed = observation(&seen[i]);
        trend_observe(&trend, &observed);
    }
    assert_int_equal(running_max(record, model_lift(t.model, "squat"), jan(11), NULL).max.e10, trend_max(&trend).e10);
    assert_int_equal(running_max(record, model_lift(t.model, "squat"), jan(4), NULL).known, false);
    told_end(&t);
}

/* Five singles give her a line, speed = 1.5 - 1.2 share, exactly on it while the max stays 120; then 108 kg at 0.6 m/s says
 * share 0.75, a max of 144. */
static void a_speed_counts_against_her_own_line(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; max squat 120 kg on 2027-01-04 }\n"
                              "diary ines { 2027-01-05 { squat 60 kg x 1, 1, 1 speed 0.9, 0.9, 0.9 then 84 kg x 1 speed 0.66 then 108 kg x 1 speed 0.42 then 96 kg x 1 speed 0.54 }\n"
                              "2027-01-06 { squat 108 kg x 1 speed 0.51 } }\n");
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), NULL, 0);
    struct running one = running_max(record, model_lift(t.model, "squat"), jan(6), NULL), two = running_max(record, model_lift(t.model, "squat"), jan(7), NULL);
    struct trend trend = { 0 };
    /* share at 0.51 is 0.825: 108 / 0.825 = 130.909 */
    const struct trend_observation seen[] = {
        { .day = jan(4).day, .dated = true, .source = TREND_TESTED, .max = ratio_int(120 * DEC_ONE), .n = ratio_int(1) },
        { .day = jan(6).day, .dated = true, .source = TREND_SPEED, .max = ratio_make((wide)108 * DEC_ONE * 1000, 825), .n = ratio_int(1) },
    };
    for (int i = 0; i < 2; i++)
        trend_observe(&trend, &seen[i]);
    assert_false(one.known);
    assert_true(two.known);
    assert_int_equal(two.sessions, 1);
    assert_int_equal(two.max.e10, trend_max(&trend).e10);
    told_end(&t);
}

/* Going back in time gives what was known then; forward again what is known now. */
static void days_in_any_order(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; " LINE " }\ndiary ines { 2027-01-04 { squat 64 kg x 3 rpe 8 }; 2027-01-06 { squat 64 kg x 3 rpe 8 }; "
                              "2027-01-08 { squat 104 kg x 3 rpe 8 } }\n");
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), NULL, 0);
    const struct lift *squat = model_lift(t.model, "squat");
    struct running forward[12], back;
    for (int day = 1; day < 12; day++)
        forward[day] = running_max(record, squat, jan(day), NULL);
    for (int day = 11; day >= 1; day--) {
        back = running_max(record, squat, jan(day), NULL);
        assert_int_equal(back.known, forward[day].known);
        assert_int_equal(back.max.e10, forward[day].max.e10);
        assert_int_equal(back.error.e10, forward[day].error.e10);
    }
    told_end(&t);
}

static void outliers_are_named(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; " LINE " }\ndiary ines { 2027-01-04 { squat 30 kg x 3 rpe 8 }; 2027-01-06 { squat 104 kg x 3 rpe 8 } }\n");
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), NULL, 0);
    const struct outlier *out;
    assert_int_equal(running_outliers(record, model_lift(t.model, "squat"), NULL, &out), 1);
    assert_int_equal(out[0].estimate.e10, 338 * (DEC_ONE / 10)); /* 33.75 */
    assert_int_equal(out[0].max.e10, 120 * DEC_ONE);
    assert_int_equal(out[0].session->diary->date.day, jan(4).day);
    assert_int_equal(running_outliers(record, model_lift(t.model, "bench"), NULL, &out), 0);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(as_planned_is_what_was_printed),
        cmocka_unit_test(a_speed_counts_against_her_own_line),
        cmocka_unit_test(days_in_any_order),
        cmocka_unit_test(outliers_are_named),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, running_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
