/* Names: language.md, section 1. They are global, each kind in a space of its own; what is used must be declared. */
#include "club.h"

#include "model/club.h"

static const struct {
    const char *text, *findings;
} cases[] = {
    { "lift row\nscheme row { 3 x 5 }\ngym row { bar 20 kg }\nathlete row\nprogression row { when made hold }\n", "" },
    { "lift row\nlift row\n", "error duplicate-name `row`" },
    { "lift Row\nlift row\n", "" },                                                     /* case counts */
    { "lift ren\xC3\xA9\nlift rene\xCC\x81\n", "error duplicate-name `rene\xCC\x81`" }, /* compared in NFC */
    { "athlete row\ngroup row { row }\n", "error duplicate-name `row`" },
    { "template row { weeks 1 }\nblock row { for all; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n",
      "error duplicate-name `row`" },
    { "lift row like rw\nlift rw like row\n", "error cycle `row`" },
    { "athlete ines { max curll 20 kg }\n", "error unknown-name `curll`" },
    { "athlete ines { max hall 20 kg }\n", "error unknown-name `hall`" },
    { "athlete ines { max tractor-tyre-flip 20 kg }\n", "error unknown-name `tractor-tyre-flip`" },
};

static void names_in_texts(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t = told_club(cases[i].text);
        assert_string_equal(findings_text(&t), cases[i].findings);
        told_end(&t);
    }
}

static void twice_shows_both_places(void **state)
{
    (void)state;
    struct told t = told_begin();
    const struct paper papers[] = { { "a.block", "lift row\n" }, { "b.block", "\n  lift row\n" }, { NULL, NULL } };
    told_load(&t, papers, (const char *const[]){ "a.block", "b.block" }, 2);
    told_resolve(&t);
    const struct finding *finding = the_finding(&t, KIND_DUPLICATE);
    assert_string_equal(finding->message, "row is declared twice; there can be one lift of a name");
    struct position second = position_of(t.sources, finding->at.start),
                    first = position_of(t.sources, finding->related->at.start);
    assert_string_equal(second.source->name, "b.block");
    assert_int_equal(second.line, 2);
    assert_int_equal(second.column, 8);
    assert_string_equal(first.source->name, "a.block");
    told_end(&t);
}

static void the_nearest_is_offered_and_shown(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { max sqaut 20 kg }\n");
    const struct finding *finding = the_finding(&t, KIND_UNKNOWN_NAME);
    assert_string_equal(finding->message, "no lift is called sqaut");
    assert_string_equal(finding->help, "did you mean squat?");
    assert_string_equal(spelt(&t, finding->related->at), "squat");
    told_end(&t);
    t = told_club("athlete ines { max tractor-tyre-flip 20 kg }\n");
    finding = the_finding(&t, KIND_UNKNOWN_NAME);
    assert_string_equal(finding->help,
                        "declare it in one of the files, as `lift tractor-tyre-flip`, or `use` the file that does");
    assert_null(finding->related);
    told_end(&t);
    t = told_club("athlete ines { max hall 20 kg }\n");
    assert_string_equal(the_finding(&t, KIND_UNKNOWN_NAME)->message,
                        "hall is the name of a gym, and a lift is wanted here");
    told_end(&t);
}

static void declarations_stand_in_any_order(void **state)
{
    (void)state;
    struct told t = told_club("block winter { for late; starts 2027-01-04; weeks 1; day A { row gentle } }\ngroup late "
                              "{ ines }\nathlete ines { max row 100 kg }\n"
                              "scheme gentle { 3 x 5 at 60% }\nlift row\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(plan_text(&t, told_plan(&t, "winter", "ines"), SHOW_LIFTS), "row 3x5 60");
    told_end(&t);
}

static void the_table_of_names(void **state)
{
    (void)state;
    struct told t = told_club("lift row\nathlete row\n");
    struct club *club = t.model->club;
    const char *row = intern(t.interner, "row", 3);
    assert_int_equal(names_find(club, SPACE_LIFT, row)->space, SPACE_LIFT);
    assert_int_equal(names_find(club, SPACE_PERSON, row)->space, SPACE_PERSON);
    assert_null(names_find(club, SPACE_GYM, row));
    assert_string_equal(names_nearest(club, SPACE_LIFT, "rowe"), "row");
    assert_null(names_nearest(club, SPACE_GYM, "quite-another"));
    static const char *const words[] = { "one", NULL, "three" };
    assert_int_equal(word_index("three", words, 3), 2);
    assert_int_equal(word_index("four", words, 3), -1);
    told_end(&t);
}

/* More names than the table has slots at first. */
static void a_thousand_lifts(void **state)
{
    (void)state;
    char text[32768];
    size_t used = 0;
    for (int i = 0; i < 1000; i++)
        used += (size_t)snprintf(text + used, sizeof text - used, "lift row-number%d\n", i);
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    for (int i = 0; i < 1000; i++)
        assert_non_null(model_lift(t.model, arena_format(t.arena, "row-number%d", i)));
    assert_null(model_lift(t.model, "row-number1000"));
    assert_string_equal(model_nearest_lift(t.model, "row-numbr77"), "row-number77");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(names_in_texts),
        cmocka_unit_test(twice_shows_both_places),
        cmocka_unit_test(the_nearest_is_offered_and_shown),
        cmocka_unit_test(declarations_stand_in_any_order),
        cmocka_unit_test(the_table_of_names),
        cmocka_unit_test(a_thousand_lifts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
