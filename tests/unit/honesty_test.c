/* Ratings beside what the sets were; src/plan/honesty.h. Brzycki by hand: n = 37 - 36 x load / max, effort = 10 +
 * reps - n, so 80 of 100 kg is n = 8.2 and five reps of it rpe 6.8; 75 kg is n = 10 and five reps rpe 5. */
#include "club.h"

#include "plan/honesty.h"

#define LIFTER                                                                                                         \
    "athlete ines { gym hall; bodyweight 60 kg; max squat 100 kg on 2027-01-04; max bench 60 kg\n effort squat 8 "     \
    "means 7 }\n"                                                                                                      \
    "block winter { for ines; starts 2027-01-04; weeks 20; day A on mon { squat 3 x 5 at 80%; bench 2 x 5 at rpe 7 } " \
    "}\n"                                                                                                              \
    "diary ines {\n"
#define RATING(diary) LIFTER diary "\n}\n"

static const char *ratings_text(struct told *t, const struct record *record)
{
    struct rating_list list = { 0 };
    const char *text = "";
    for (int i = 0; i < record->session_count; i++)
        ratings_add(t->arena, record, &record->sessions[i], &list);
    for (int i = 0; i < list.count; i++) {
        struct dec grain = { DEC_ONE / 100 };
        text =
            arena_format(t->arena, "%s%s%s %s %s/%s/%s", text, *text ? "; " : "", date_text(t->arena, list.at[i].date),
                         list.at[i].lift->name, dec_text(t->arena, ratio_nearest(list.at[i].written, grain)),
                         dec_text(t->arena, ratio_nearest(list.at[i].rated, grain)),
                         dec_text(t->arena, ratio_nearest(list.at[i].worked_out, grain)));
    }
    return text;
}

struct rated {
    const char *says, *diary, *ratings;
};
static const struct rated rows[] = {
    { "written, as her effort line reads it, and worked out",
      "2027-01-04 A { squat 80 kg x 5, 5 rpe 8, 9; bench 45 kg x 5, 5 rpe 7 }",
      "2027-01-04 squat 8/7/6.8; 2027-01-04 squat 9/8/6.8" },
    { "no effort, no failed rep, no rating of nothing", "2027-01-04 A { squat 80 kg x 5, 0 rpe 8; bench skipped }",
      "" },
    { "held to the scale", "2027-01-04 A { squat 120 kg x 5 then 20 kg x 1 rpe 8 }", "2027-01-04 squat 8/7/0" },
    { "above the max is 10", "2027-01-04 A { squat 120 kg x 5 rpe 8 }", "2027-01-04 squat 8/7/10" },
    { "a max 12 weeks old still counts", "2027-03-29 A { squat 75 kg x 5, 5, 5 rpe 8 }", "2027-03-29 squat 8/7/5" },
    { "an older one does not", "2027-03-30 A { squat 75 kg x 5, 5, 5 rpe 8 }", "" },
    { "nor one that comes later", "2027-01-03 { squat 75 kg x 5 rpe 8 }", "" },
};

static void rated_holds(void **state)
{
    const struct rated *rated = *state;
    char text[2048];
    struct record *record;
    snprintf(text, sizeof text, "%s%s\n}\n", LIFTER, rated->diary);
    struct told t = told_club(text);
    assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 0);
    told_plan_record(&t, "winter", "ines", &record);
    assert_string_equal(ratings_text(&t, record), rated->ratings);
    told_end(&t);
}

/* `sets` ratings of 8 against worked-out tenths. */
static struct honesty honesty_made(const struct lift *lift, const struct lift *other, int rated_tenths,
                                   int worked_out_tenths, int sets)
{
    struct rating ratings[16];
    for (int i = 0; i < sets + 1; i++) {
        struct ratio rated = ratio_div(ratio_int(rated_tenths), ratio_int(10));
        ratings[i] = (struct rating){ .lift = i < sets ? lift : other,
                                      .date = { i + 1 },
                                      .written = rated,
                                      .rated = rated,
                                      .worked_out = ratio_div(ratio_int(worked_out_tenths), ratio_int(10)) };
    }
    struct honesty honesty = honesty_of(ratings, sets + 1, lift);
    assert_int_equal(honesty.sets, sets);
    assert_int_equal(honesty.last ? honesty.last->date.day : 0, sets);
    return honesty;
}

static void a_habit_is_six_sets_more_than_a_point_and_a_half_off(void **state)
{
    (void)state;
    struct told t = told_club(RATING("2027-01-04 A missed"));
    const struct lift *squat = t.model->lifts[0], *bench = t.model->lifts[1];
    assert_false(honesty_made(squat, bench, 80, 65, 6).off);
    assert_true(honesty_made(squat, bench, 80, 64, 6).off);
    assert_false(honesty_made(squat, bench, 80, 64, 5).off);
    assert_false(honesty_made(squat, bench, 65, 80, 6).off);
    assert_true(honesty_made(squat, bench, 64, 80, 6).off);
    assert_false(honesty_made(squat, bench, 80, 64, 0).off);
    told_end(&t);
}

static void the_line_to_add_goes_to_halves(void **state)
{
    (void)state;
    struct told t = told_club(RATING("2027-01-04 A missed"));
    const struct lift *squat = t.model->lifts[0], *bench = t.model->lifts[1];
    struct honesty new_line = honesty_made(bench, squat, 77, 58, 6), above = honesty_made(bench, squat, 98, 120, 6),
                   old_line = honesty_made(squat, bench, 80, 60, 6);
    const struct athlete *ines = told_athlete(&t, "ines");
    assert_string_equal(honesty_line(t.arena, &new_line), "effort bench 7.5 means 6");
    assert_string_equal(honesty_line(t.arena, &above), "effort bench 10 means 10");
    assert_string_equal(honesty_advice(t.arena, ines, &new_line),
                        "add `effort bench 7.5 means 6` to the athlete, so that the diary counts what is done");
    assert_string_equal(honesty_advice(t.arena, ines, &old_line),
                        "change her line `effort squat 8 means 7` into `effort squat 8 means 6`, so that the diary "
                        "counts what is done");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(a_habit_is_six_sets_more_than_a_point_and_a_half_off),
        cmocka_unit_test(the_line_to_add_goes_to_halves),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, rated_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
