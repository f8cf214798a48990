/* Trees to the model: what a run knows once every name is bound; src/model/resolve.h. */
#include "club.h"

static void the_whole(void **state)
{
    (void)state;
    struct told t = told_club(
        INES "athlete tomas\nmodel wathan\nblock one { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n"
             "template never { weeks 1 }\nblock two { for all; starts 2027-02-01; weeks 1; day A { curl 1 x 1 } }\n");
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->lift_count, 9);
    assert_int_equal(t.model->gym_count, 1);
    assert_int_equal(t.model->athlete_count, 2);
    assert_int_equal(t.model->athletes[1]->order, 1);
    assert_int_equal(t.model->block_count, 2); /* a template is not built itself */
    assert_string_equal(t.model->blocks[1]->name, "two");
    assert_string_equal(curve_name(t.model->curve), "wathan");
    assert_ptr_equal(model_block_for(t.model, 1, NULL), t.model->blocks[1]);
    assert_ptr_equal(model_lift(t.model, "squat"), t.model->lifts[0]);
    assert_null(model_lift(t.model, "skwat"));
    assert_string_equal(model_nearest_lift(t.model, "sqaut"), "squat");
    told_end(&t);
}

/* A mistake in a scheme that nothing uses does not wait for its first use; one that is used is found once. */
static void mistakes_in_schemes(void **state)
{
    (void)state;
    struct told t = told_club(INES "scheme never { 3 x 5 at rpe 11 }\n");
    assert_string_equal(findings_text(&t), "error range `11`");
    told_end(&t);
    t = told_club(INES "scheme often { 3 x 5 at rpe 11 }\nblock one { for ines; starts 2027-01-04; weeks 2; day A { "
                       "curl often; sled often }; day B { curl often } }\n");
    assert_string_equal(findings_text(&t), "error range `11`");
    told_end(&t);
    t = told_club(INES "scheme open { $n x 5 at $t }\n");
    assert_string_equal(findings_text(&t), "");
    told_end(&t);
}

static void the_order_of_files_never_matters(void **state)
{
    (void)state;
    static const struct paper papers[] = {
        { "a.block", "block one { for ines; starts 2027-01-04; weeks 1; day A { row 3 x 5 at 80% } }\n" },
        { "b.block", "athlete ines { max row 100 kg }\n" },
        { "c.block", "lift row\n" },
        { NULL, NULL },
    };
    static const char *const orders[][3] = { { "a.block", "b.block", "c.block" },
                                             { "c.block", "b.block", "a.block" },
                                             { "b.block", "c.block", "a.block" } };
    for (int i = 0; i < 3; i++) {
        struct told t = told_begin();
        told_load(&t, papers, orders[i], 3);
        told_resolve(&t);
        assert_string_equal(plan_text(&t, told_plan(&t, "one", "ines"), SHOW_GROUPS), "3x5 80");
        told_end(&t);
    }
}

static void a_file_without_anything(void **state)
{
    (void)state;
    static const char *const texts[] = { "", "# nothing yet\n", "\xEF\xBB\xBF", "language 1\n", "units kg\r\n" };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        struct told t = told_text(texts[i]);
        assert_string_equal(findings_text(&t), "");
        assert_int_equal(t.model->block_count, 0);
        told_end(&t);
    }
}

static int lift_line(char *to, size_t room, int at, bool last)
{
    return last ? snprintf(to, room, "lift l%d\n", at) : snprintf(to, room, "lift l%d like l%d\n", at, at + 1);
}

static int group_line(char *to, size_t room, int at, bool last)
{
    return last ? snprintf(to, room, "group g%d { ines }\n", at) : snprintf(to, room, "group g%d { g%d }\n", at, at + 1);
}

static int template_line(char *to, size_t room, int at, bool last)
{
    return last ? snprintf(to, room, "template t%d { weeks 1 }\n", at)
                : snprintf(to, room, "template t%d from t%d { }\n", at, at + 1);
}

static const struct nest {
    const char *says;
    int (*line)(char *to, size_t room, int at, bool last);
    const char *block;
} nests[] = {
    { "lifts like lifts", lift_line, "block b { for ines; starts 2027-01-04; weeks 1; day A { l0 1 x 1 } }\n" },
    { "groups in groups", group_line, "block b { for g0; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n" },
    { "templates from templates", template_line, "block b from t0 { for ines; starts 2027-01-04; day A { curl 1 x 1 } }\n" },
};

/* Each names the next: from the first line down, or up. */
static struct told told_nest(const struct nest *nest, int count, bool upwards)
{
    enum { ROOM = 400000 };
    char *text = malloc(ROOM);
    assert_non_null(text);
    int used = snprintf(text, ROOM, "%s%s", INES, nest->block);
    for (int i = 0; i < count; i++) {
        int at = upwards ? count - 1 - i : i;
        used += nest->line(text + used, (size_t)(ROOM - used), at, at == count - 1);
    }
    struct told t = told_club(text);
    free(text);
    return t;
}

static void a_nest_ends_at_64(void **state)
{
    const struct nest *nest = *state;
    for (int upwards = 0; upwards < 2; upwards++) {
        struct told t = told_nest(nest, 64, upwards);
        assert_string_equal(findings_text(&t), "");
        told_end(&t);
        t = told_nest(nest, 65, upwards);
        assert_non_null(strstr(findings_text(&t), "error limit `"));
        assert_string_not_equal(the_finding(&t, KIND_LIMIT)->help, "");
        told_end(&t);
        t = told_nest(nest, 10000, upwards);
        assert_int_equal(the_finding(&t, KIND_LIMIT)->level, LEVEL_ERROR);
        told_end(&t);
    }
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(the_whole),
        cmocka_unit_test(mistakes_in_schemes),
        cmocka_unit_test(the_order_of_files_never_matters),
        cmocka_unit_test(a_file_without_anything),
    };
    struct tests tests = { 0 };
    tests_add(&tests, ARRAY(more));
    tests_add_rows(&tests, EACH(nests, a_nest_ends_at_64));
    return tests_run(&tests);
}
