/* Athletes, groups and rosters: language.md, sections 2 and 4.2. */
#include "club.h"

#include "model/history.h"

static struct told told_roster(const char *text, const char *roster)
{
    struct told t = told_begin();
    const struct paper papers[] = {
        { "hall.block", HALL }, { "club.block", text }, { "athletes.csv", roster }, { NULL, NULL }
    };
    told_load(&t, papers, (const char *const[]){ "hall.block", "club.block" }, 2);
    if (!findings_count(t.findings, LEVEL_ERROR))
        told_resolve(&t);
    return t;
}

static const char *max_in_kg(struct told *t, const struct max_line *line)
{
    return dec_text(t->arena, ratio_nearest(ratio_div(line->load, ratio_int(DEC_ONE)), (struct dec){ DEC_ONE / 1000 }));
}

static const struct athlete *only(struct told *t)
{
    assert_string_equal(findings_text(t), "");
    return told_athlete(t, "ines");
}

static void an_athlete_says(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines {\n title \"Ines Corrado\"\n gym hall\n bodyweight 61.8 kg on 2026-12-01\n "
                              "max squat 120 kg on 2026-11-28\n"
                              " model wathan\n effort bench 8 means 7\n avoid deadlift use squat because \"back\"\n "
                              "note \"left-handed\"\n let $start = 40 kg\n}\n");
    const struct athlete *ines = only(&t);
    assert_string_equal(ines->title, "Ines Corrado");
    assert_string_equal(ines->gym->name, "hall");
    assert_true(ines->has_gym);
    assert_string_equal(number_in(&t, ines->bodyweights[0].weight, UNIT_KG), "61.8");
    assert_string_equal(date_text(t.arena, ines->bodyweights[0].date), "2026-12-01");
    assert_string_equal(max_in_kg(&t, &ines->maxes[0]), "120");
    assert_false(ines->maxes[0].estimated);
    assert_string_equal(curve_name(ines->model), "wathan");
    assert_string_equal(dec_text(t.arena, ines->efforts[0].rated), "8");
    assert_string_equal(dec_text(t.arena, ines->efforts[0].meant), "7");
    assert_string_equal(ines->avoids[0].use->name, "squat");
    assert_string_equal(ines->avoids[0].because, "back");
    assert_string_equal(ines->notes[0], "left-handed");
    assert_int_equal(ines->let_count, 1);
    told_end(&t);
}

static void an_athlete_without_a_gym(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines\n");
    const struct athlete *ines = only(&t);
    assert_false(ines->has_gym);
    assert_null(ines->gym->name);
    assert_int_equal(ines->gym->unit, UNIT_KG);
    /* the default bar, 20 kg, and steps of 2.5 kg */
    assert_string_equal(number_in(&t, ines->gym->bars[0].ladder.first, UNIT_KG), "20");
    assert_string_equal(number_in(&t, ines->gym->bars[0].ladder.step, UNIT_KG), "2.5");
    told_end(&t);
    t = told_club("units lb\nathlete ines { max squat 225 }\n");
    ines = only(&t);
    assert_int_equal(ines->gym->unit, UNIT_LB);
    assert_string_equal(number_in(&t, ines->gym->bars[0].ladder.first, UNIT_LB), "45");
    assert_string_equal(number_in(&t, ines->gym->bars[0].ladder.step, UNIT_LB), "5");
    /* 225 × 0.45359237 (bc) */
    assert_string_equal(max_in_kg(&t, &ines->maxes[0]), "102.058");
    told_end(&t);
}

/* max = load / share(reps + 10 - rpe); shares from Brzycki (37 - n)/36, worked with bc. */
static void a_max_from_a_set(void **state)
{
    (void)state;
    static const struct {
        const char *lines, *kilograms;
    } cases[] = {
        { "max bench from 57.5 kg x 5 rpe 8", "69" }, /* n = 7: 57.5 × 36/30 */
        { "max bench from 57.5 kg x 5 rir 2", "69" },
        { "max bench from 60 kg x 1", "60" },                                     /* no effort: all she had */
        { "max bench from 60 kg x 5", "67.5" },                                   /* n = 5: 60 × 36/32 */
        { "effort bench 8 means 7; max bench from 57.5 kg x 5 rpe 8", "71.379" }, /* n = 8: 57.5 × 36/29 */
        { "max bench from 57.5 kg x 5 rpe 8; effort bench 8 means 7", "71.379" }, /* the order of lines never matters */
        { "effort bench 8 means 9; max bench from 57.5 kg x 5 rpe 10", "64.688" }, /* within 10: n = 5 */
        { "effort bench 8 means 6; max bench from 57.5 kg x 5 rpe 1",
          "86.25" }, /* within 0: rpe 0, n = 15: 57.5 × (1 + 15/30) = 86.25 */
        { "model epley; max bench from 60 kg x 5", "67.742" },           /* f(5)/f(1): (1 + 5/30)/(1 + 1/30) */
        { "curve bench 5 reps at 80%; max bench from 60 kg x 5", "75" }, /* her own point */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[512];
        snprintf(text, sizeof text, "athlete ines { %s }\n", cases[i].lines);
        struct told t = told_club(text);
        assert_string_equal(max_in_kg(&t, &only(&t)->maxes[0]), cases[i].kilograms);
        assert_true(told_athlete(&t, "ines")->maxes[0].estimated);
        told_end(&t);
    }
}

static void a_max_of_a_bodyweight_lift_is_the_total(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { max pull-up bodyweight plus 15 kg on 2027-01-01; bodyweight 60 kg on "
                              "2026-12-01; bodyweight 62 kg on 2027-02-01 }\n"
                              "athlete tomas { bodyweight 80 kg; max pull-up bodyweight minus 10 kg; max pull-up "
                              "bodyweight on 2027-01-01 }\n");
    assert_string_equal(max_in_kg(&t, &only(&t)->maxes[0]), "75");
    assert_string_equal(max_in_kg(&t, &told_athlete(&t, "tomas")->maxes[0]), "70");
    assert_string_equal(max_in_kg(&t, &told_athlete(&t, "tomas")->maxes[1]), "80");
    told_end(&t);
}

static void points_of_her_own_curve(void **state)
{
    (void)state;
    /* 8 reps at 77 %: k = (1/0.77 - 1)/7; share(5) = 1/(1 + 4 k) = 0.8542 (python) */
    struct told t = told_club("athlete ines { max squat 100 kg; curve squat 8 reps at 77% }\n");
    struct curve curve = history_curve(t.model, NULL, only(&t), t.model->lifts[0]);
    assert_string_equal(
        dec_text(t.arena, ratio_nearest(curve_share(&curve, ratio_int(5)), (struct dec){ DEC_ONE / 100000 })),
        "0.8542");
    curve = history_curve(t.model, NULL, only(&t), t.model->lifts[1]); /* for that lift alone */
    assert_string_equal(
        dec_text(t.arena, ratio_nearest(curve_share(&curve, ratio_int(5)), (struct dec){ DEC_ONE / 100000 })),
        "0.88889");
    told_end(&t);
}

static void what_is_wrong_with_people(void **state)
{
    (void)state;
    static const struct {
        const char *text, *findings;
    } cases[] = {
        { "athlete ines { gym hell }", "error unknown-name `hell`" },
        { "athlete ines { max sqaut 100 kg }", "error unknown-name `sqaut`" },
        { "athlete ines { max squat 0 kg }", "error range `0 kg`" },
        { "athlete ines { bodyweight 0 kg }", "error range `0 kg`" },
        { "athlete ines { max pull-up bodyweight plus 10 kg }", "error missing-bodyweight `bodyweight plus 10 kg`" },
        { "athlete ines { curve squat 8 reps at 120% }", "error range `120%`" },
        { "athlete ines { curve squat 1 reps at 90% }", "error range `1`" },
        { "athlete ines { effort squat 8 means 12 }", "error range `12`" },
        { "athlete ines { effort squat 8 means 7; effort squat 9 means 8 }",
          "error repeated `effort squat 9 means 8`" },
        { "athlete ines { gym hall; gym hall }", "error repeated `gym hall`" },
        { "athlete ines { title \"A\"; title \"B\" }", "error repeated `title \"B\"`" },
        { "athlete ines { model eplay }", "error unknown-name `eplay`" },
        { "athlete ines { max squat from 100 kg x 0 rpe 8 }", "error range `0`" },
        { "athlete ines { avoid squat use sqat }", "error unknown-name `sqat`" },
        { "athlete ines\nathlete ines", "error duplicate-name `ines`" },
        { "athlete ines\ngroup ines { ines }", "error duplicate-name `ines`" },
        { "athlete all", "error duplicate-name `all`" },
        { "group novices { ines }", "error unknown-name `ines`" },
        { "group one { two }\ngroup two { one }", "error cycle `one`" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t = told_club(cases[i].text);
        assert_string_equal(findings_text(&t), cases[i].findings);
        told_end(&t);
    }
}

static const char *names_of(struct told *t, const char *who)
{
    const char *text = "";
    const struct people *people = model_people(t->model, who);
    for (int i = 0; people && i < people->count; i++)
        text = arena_format(t->arena, "%s%s%s", text, i ? " " : "", people->at[i]->name);
    return text;
}

static void groups(void **state)
{
    (void)state;
    struct told t = told_club("group novices { tomas, ines, tomas }\ngroup club { novices, piotr }\ngroup max { piotr "
                              "}\nathlete ines\nathlete piotr\nathlete tomas\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(names_of(&t, "novices"), "tomas ines");
    assert_string_equal(names_of(&t, "club"), "tomas ines piotr");
    assert_string_equal(names_of(&t, "max"), "piotr");            /* an athlete or a group may bear any word */
    assert_string_equal(names_of(&t, "all"), "ines piotr tomas"); /* in order of declaration */
    assert_string_equal(names_of(&t, "piotr"), "piotr");
    assert_string_equal(names_of(&t, "nobody"), "");
    assert_string_equal(model_nearest_person(t.model, "novises"), "novices");
    told_end(&t);
}

#define HEAD "athlete,title,group,gym,bodyweight,lift,max,unit,reps,rpe,date\n"

static void a_roster_is_read(void **state)
{
    (void)state;
    struct told t = told_roster("roster \"athletes.csv\"\nathlete ola\n",
                                HEAD "ines,Ines Corrado,novices,hall,61.8,squat,120,kg,,,2026-11-28\n"
                                     "piotr,,novices,,,squat,225,lb,,,\n"
                                     "ines,,,,,bench,57.5,kg,5,8,2026-12-02\n");
    const struct athlete *ines = only(&t);
    assert_string_equal(ines->title, "Ines Corrado");
    assert_string_equal(ines->gym->name, "hall");
    assert_int_equal(ines->max_count, 2);
    assert_string_equal(max_in_kg(&t, &ines->maxes[1]), "69"); /* 57.5 × 36/30 */
    assert_string_equal(date_text(t.arena, ines->maxes[1].date), "2026-12-02");
    assert_string_equal(date_text(t.arena, ines->bodyweights[0].date), "2026-11-28"); /* of its row's date */
    assert_string_equal(max_in_kg(&t, &told_athlete(&t, "piotr")->maxes[0]), "102.058");
    assert_string_equal(names_of(&t, "novices"), "ines piotr");
    assert_int_equal(told_athlete(&t, "piotr")->gym->unit, UNIT_LB);
    told_end(&t);
}

static void a_roster_against_the_files(void **state)
{
    (void)state;
    static const struct {
        const char *text, *rows, *findings;
    } cases[] = {
        { "athlete ines\n", "ines,,,,,squat,120,kg,,,\n", "error duplicate-name `ines`" },
        { "", "ines,,,hell,,,,,,,\n", "error unknown-name `hell`" },
        { "", "ines,,,,,sqat,120,kg,,,\n", "error unknown-name `sqat`" },
        { "", "ines,,,,,squat,0,kg,,,\n", "error roster `0`" },
        { "", "ines,,,,,squat,120.125,lb,,,\n", "error roster `120.125`" },
        { "athlete piotr\n", "ines,,piotr,,,,,,,,\n", "error roster `piotr`" },
        { "group novices { piotr }\nathlete piotr\n", "ines,,novices,,,,,,,,\n", "" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[512], rows[512];
        snprintf(text, sizeof text, "roster \"athletes.csv\"\n%s", cases[i].text);
        snprintf(rows, sizeof rows, HEAD "%s", cases[i].rows);
        struct told t = told_roster(text, rows);
        assert_string_equal(findings_text(&t), cases[i].findings);
        told_end(&t);
    }
}

static void a_group_of_both(void **state)
{
    (void)state;
    struct told t = told_roster("roster \"athletes.csv\"\ngroup novices { piotr }\nathlete piotr\n",
                                HEAD "ines,,novices,,,,,,,,\n");
    assert_string_equal(names_of(&t, "novices"), "ines piotr");
    told_end(&t);
}

static void for_all_is_in_order_of_declaration(void **state)
{
    (void)state;
    struct told t = told_club(
        "block winter { for all; starts 2027-01-04; weeks 1; day A { curl 3 x 5 } }\nathlete tomas\nathlete ines\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(t.model->blocks[0]->people->at[0]->name, "tomas");
    assert_string_equal(t.model->blocks[0]->people->at[1]->name, "ines");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_athlete_says),
        cmocka_unit_test(an_athlete_without_a_gym),
        cmocka_unit_test(a_max_from_a_set),
        cmocka_unit_test(a_max_of_a_bodyweight_lift_is_the_total),
        cmocka_unit_test(points_of_her_own_curve),
        cmocka_unit_test(what_is_wrong_with_people),
        cmocka_unit_test(groups),
        cmocka_unit_test(a_roster_is_read),
        cmocka_unit_test(a_roster_against_the_files),
        cmocka_unit_test(a_group_of_both),
        cmocka_unit_test(for_all_is_in_order_of_declaration),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
