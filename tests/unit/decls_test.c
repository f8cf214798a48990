/* Lifts, gyms and progressions: language.md, section 2 and 6. */
#include "club.h"

static const struct lift *lift_in(struct told *t, const char *name)
{
    const struct lift *lift = model_lift(t->model, name);
    assert_non_null(lift);
    return lift;
}

static void a_lift_says(void **state)
{
    (void)state;
    struct told t = told_text("lift squat { title \"Back squat\"; kind competition; loads bar trap; works quads, "
                              "glutes; helps trunk; cue \"Up\"; note \"belt\" }\n");
    const struct lift *squat = lift_in(&t, "squat");
    assert_string_equal(squat->title, "Back squat");
    assert_string_equal(squat->cue, "Up");
    assert_string_equal(squat->notes[0], "belt");
    assert_int_equal(squat->kind, LIFT_COMPETITION);
    assert_true(lift_is_main(squat));
    assert_int_equal(squat->loads, LOADS_BAR);
    assert_string_equal(squat->equipment, "trap");
    assert_int_equal(squat->works_count, 2);
    assert_string_equal(squat->works[1], "glutes");
    assert_string_equal(squat->helps[0], "trunk");
    told_end(&t);
}

static void a_lift_with_nothing_to_say(void **state)
{
    (void)state;
    struct told t = told_text("lift curl\n");
    const struct lift *curl = lift_in(&t, "curl");
    assert_int_equal(curl->kind, LIFT_ACCESSORY);
    assert_false(lift_is_main(curl));
    assert_int_equal(curl->loads, LOADS_FREE);
    assert_null(curl->title);
    assert_null(curl->like);
    told_end(&t);
}

static void like_lends_loading_and_muscles(void **state)
{
    (void)state;
    struct told t =
        told_text("lift low like halt at 50% { works calves }\nlift halt like squat at 90% { title \"Pause\" }\n"
                  "lift squat { kind competition; loads bar trap; works quads; helps trunk }\nlift belt like squat { "
                  "loads free; kind accessory }\n");
    assert_string_equal(findings_text(&t), "");
    const struct lift *halt = lift_in(&t, "halt"), *low = lift_in(&t, "low"), *belt = lift_in(&t, "belt");
    assert_int_equal(halt->kind, LIFT_VARIATION);
    assert_int_equal(halt->loads, LOADS_BAR);
    assert_string_equal(halt->equipment, "trap");
    assert_string_equal(halt->works[0], "quads");
    assert_string_equal(halt->helps[0], "trunk");
    assert_string_equal(dec_text(t.arena, halt->like_percent), "90");
    assert_ptr_equal(halt->like, lift_in(&t, "squat"));
    assert_string_equal(low->works[0], "calves"); /* unless it states its own */
    assert_string_equal(low->helps[0], "trunk");
    assert_ptr_equal(low->like, halt);
    assert_int_equal(belt->loads, LOADS_FREE);
    assert_int_equal(belt->kind, LIFT_ACCESSORY);
    assert_string_equal(dec_text(t.arena, belt->like_percent), "100");
    told_end(&t);
}

#define KG(weight) number_in(&t, weight, UNIT_KG)

static void a_gym_says(void **state)
{
    (void)state;
    struct told t = told_text("gym boathouse {\n title \"The boathouse\"\n bar 20 kg\n bar trap 25 kg\n collar 2.5 "
                              "kg\n plates 25 x 4, 20 x 4, 1.25 x 2 kg\n"
                              " dumbbells 2.5 to 20 step 2.5 kg, 24 to 40 step 4 kg\n stack 5 to 120 step 5 kg\n stack "
                              "pulldown 7 to 91 step 7 kg\n round down\n}\n");
    assert_string_equal(findings_text(&t), "");
    const struct gym *gym = t.model->gyms[0];
    assert_string_equal(gym->title, "The boathouse");
    assert_int_equal(gym->bar_count, 2);
    assert_string_equal(gym->bars[1].name, "trap");
    assert_string_equal(KG(gym->bars[0].ladder.at[0]), "25"); /* 20 + 2 × 2.5 */
    assert_string_equal(KG(gym->bars[1].ladder.at[0]), "30");
    assert_string_equal(KG(gym->bars[0].ladder.at[1]), "27.5"); /* and 2 × 1.25 */
    assert_string_equal(KG(gym->bars[0].ladder.at[2]), "65");   /* 25 and 2 × 20 */
    assert_int_equal(gym->dumbbells.count, 13);                 /* 8 and 24, 28, 32, 36, 40 */
    assert_string_equal(KG(gym->dumbbells.at[8]), "24");
    assert_int_equal(gym->stack_count, 2);
    assert_string_equal(gym->stacks[1].name, "pulldown");
    assert_int_equal(gym->stacks[1].ladder.count, 13); /* 7 to 91 by 7 */
    assert_int_equal(gym->rounding, ROUND_DOWN);
    assert_int_equal(gym->unit, UNIT_KG);
    told_end(&t);
}

static void a_gym_without_words(void **state)
{
    (void)state;
    struct told t = told_text("gym bare { round nearest }\n");
    const struct gym *gym = t.model->gyms[0];
    assert_string_equal(KG(gym->bars[0].ladder.first), "20");
    assert_string_equal(KG(gym->bars[0].ladder.step), "2.5");
    assert_string_equal(KG(gym->dumbbells.first), "2.5");
    assert_string_equal(KG(gym->free.first), "0");
    told_end(&t);
    t = told_text("units lb\ngym bare { round nearest }\ngym metric { bar 20 kg; plates 45 x 2 lb }\n");
    gym = t.model->gyms[0];
    assert_int_equal(gym->unit, UNIT_LB);
    assert_string_equal(number_in(&t, gym->bars[0].ladder.first, UNIT_LB), "45");
    assert_string_equal(number_in(&t, gym->free.step, UNIT_LB), "5");
    gym = t.model->gyms[1];
    assert_int_equal(gym->unit, UNIT_KG); /* its bar's */
    /* 20 kg and two discs of 45 lb: 20 + 2 × 45 × 0.45359237 = 60.8233133 (bc) */
    assert_string_equal(KG(gym->bars[0].ladder.at[1]), "60.8233133");
    told_end(&t);
}

static void a_bare_number_takes_the_files_unit(void **state)
{
    (void)state;
    struct told t =
        told_text("units lb\ngym bare { bar 45; collar 5; plates 45 x 2 }\nathlete ines { max row 100 }\nlift row\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(number_in(&t, t.model->gyms[0]->bars[0].ladder.at[0], UNIT_LB), "55");
    assert_string_equal(number_in(&t, t.model->gyms[0]->bars[0].ladder.at[1], UNIT_LB), "145");
    told_end(&t);
}

static void a_progression_says(void **state)
{
    (void)state;
    struct told t = told_text(
        "progression many { when made add 2.5 kg; when easy add 2%; when missed hold; when missed 2 times drop 10%; "
        "when missed 3 times drop 5 lb; "
        "when reps full add 2 steps }\nlift row\nathlete ines\n"
        "block winter { for ines; starts 2027-01-04; weeks 1; day A { row 3 x 5 at 20 kg progression many } }\n");
    assert_string_equal(findings_text(&t), "");
    const struct progression *many = group_more(&t.model->blocks[0]->days[0].entries[0].groups[0])->progression;
    static const struct progression_line wanted[] = {
        { .when = WHEN_MADE, .times = 1, .act = ACT_ADD },
        { .when = WHEN_EASY, .times = 1, .act = ACT_ADD_PERCENT },
        { .when = WHEN_MISSED, .times = 1, .act = ACT_HOLD },
        { .when = WHEN_MISSED, .times = 2, .act = ACT_DROP_PERCENT },
        { .when = WHEN_MISSED, .times = 3, .act = ACT_DROP },
        { .when = WHEN_REPS_FULL, .times = 1, .act = ACT_ADD_STEPS },
    };
    assert_int_equal(many->line_count, 6);
    for (int i = 0; i < 6; i++) {
        assert_int_equal(many->lines[i].when, wanted[i].when);
        assert_int_equal(many->lines[i].times, wanted[i].times);
        assert_int_equal(many->lines[i].act, wanted[i].act);
    }
    assert_true(many->has_reps_full);
    assert_string_equal(number_in(&t, many->lines[0].weight, UNIT_KG), "2.5");
    assert_string_equal(number_in(&t, many->lines[4].weight, UNIT_LB), "5");
    told_end(&t);
}

static void what_is_wrong_with_declarations(void **state)
{
    (void)state;
    static const struct {
        const char *text, *findings;
    } cases[] = {
        { "lift row { kind competiton }", "error unknown-name `competiton`" },
        { "lift row { loads barbell }", "error unknown-name `barbell`" },
        { "lift row { kind accessory; kind variation }", "error repeated `kind variation`" },
        { "lift row like squatt", "error unknown-name `squatt`" },
        { "lift row like row", "error cycle `row`" },
        { "lift squat\nlift row like squat at 0%", "error range `0%`" },
        { "lift squat\nlift row like squat at 90", "error unit `90`" },
        { "gym g { bar 20 kg; bar 15 kg }", "error repeated `bar 15 kg`" },
        { "gym g { bar trap 20 kg; bar trap 15 kg }", "error repeated `bar trap 15 kg`" },
        { "gym g { round sideways }", "error unknown-name `sideways`" },
        { "gym g { plates 0 x 4 kg }", "error range `0`" },
        { "gym g { plates 25 x 2000 kg }", "error range `2000`" },
        { "gym g { dumbbells 20 to 2.5 step 2.5 kg }", "error range `20 to 2.5 step 2.5 kg`" },
        { "gym g { dumbbells 2.5 to 20 step 0 kg }", "error range `2.5 to 20 step 0 kg`" },
        { "gym g { stack 1 to 900000 step 0.01 kg }", "error limit `stack 1 to 900000 step 0.01 kg`" },
        { "gym g { collar 1 kg; collar 2 kg }", "error repeated `collar 2 kg`" },
        { "gym g { bar trap 25 kg }\nlift row { loads bar trip }", "error unknown-name `trip`" },
        { "gym g { stack tower 5 to 50 step 5 kg }\nlift row { loads stack towr }", "error unknown-name `towr`" },
        { "gym g { bar 20 kg }\nlift row { loads bar cambered }", "error unknown-name `cambered`" },
        { "lift row { loads bar cambered }", "" }, /* no gym to ask */
        { "progression p { when made add 2.5 }", "error unit `2.5`" },
        { "progression p { when made drop 1 step }", NULL },
        { "progression p { when made add 2.5 kg; when made hold }", "error repeated `when made hold`" },
        { "progression p { when missed 0 times hold }", "error range `0`" },
        { "model eplay", "error unknown-name `eplay`" },
        { "model epley\nmodel wathan", "error repeated `model wathan`" },
        { "model epley\nmodel epley", "" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t = told_text(cases[i].text);
        if (cases[i].findings)
            assert_string_equal(findings_text(&t), cases[i].findings);
        else
            assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 1);
        told_end(&t);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_lift_says),
        cmocka_unit_test(a_lift_with_nothing_to_say),
        cmocka_unit_test(like_lends_loading_and_muscles),
        cmocka_unit_test(a_gym_says),
        cmocka_unit_test(a_gym_without_words),
        cmocka_unit_test(a_bare_number_takes_the_files_unit),
        cmocka_unit_test(a_progression_says),
        cmocka_unit_test(what_is_wrong_with_declarations),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
