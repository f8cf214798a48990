/* The house's own limits and exceptions as written, and what is declared but used nowhere: language.md, section 3,
 * Checks. */
#include "club.h"

#define DAYS "day A { squat 3 x 5 at rpe 7 }"

static const char *number(struct told *t, struct dec value)
{
    return dec_text(t->arena, value);
}

static void limits_of_the_house(void **state)
{
    (void)state;
    static const struct {
        const char *line, *rule, *subject, *first, *second, *word;
        int says;
        bool is_effort;
        enum unit unit;
    } cases[] = {
        { "moderate-share at least 75%", "moderate-share", NULL, "75", NULL, NULL, CHECK_AT_LEAST, false,
          UNIT_PERCENT },
        { "weekly-sets squat 8 to 16", "weekly-sets", "squat", "8", "16", NULL, CHECK_TO, false, UNIT_NONE },
        { "muscle-sets quads 8 to 16 sets", "muscle-sets", "quads", "8", "16", "sets", CHECK_TO, false, UNIT_NONE },
        { "top-reps at most 4", "top-reps", NULL, "4", NULL, NULL, CHECK_AT_MOST, false, UNIT_NONE },
        { "too-light at least rpe 4", "too-light", NULL, "4", NULL, NULL, CHECK_AT_LEAST, true, UNIT_NONE },
        { "too-light at least rir 4", "too-light", NULL, "6", NULL, NULL, CHECK_AT_LEAST, true, UNIT_NONE },
        { "load-jump at most rpe 3 and 5%", "load-jump", NULL, "3", "5", NULL, CHECK_AT_MOST, true, UNIT_NONE },
        { "session-minutes at most 90 min", "session-minutes", NULL, "90", NULL, NULL, CHECK_AT_MOST, false,
          UNIT_MINUTES },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[512];
        snprintf(text, sizeof text, INES "checks { %s }\n", cases[i].line);
        struct told t = told_club(text);
        assert_string_equal(findings_text(&t), "");
        assert_int_equal(t.model->check_count, 1);
        const struct check_line *line = t.model->checks;
        assert_string_equal(line->rule, cases[i].rule);
        assert_int_equal(line->says, cases[i].says);
        assert_int_equal(line->subject != NULL, cases[i].subject != NULL);
        if (cases[i].subject)
            assert_string_equal(line->subject, cases[i].subject);
        assert_string_equal(number(&t, line->first.amount), cases[i].first);
        assert_int_equal(line->numbers, cases[i].second ? 2 : 1);
        if (cases[i].second)
            assert_string_equal(number(&t, line->second.amount), cases[i].second);
        assert_int_equal(line->first.is_effort, cases[i].is_effort);
        assert_int_equal(line->first.unit, cases[i].unit);
        if (cases[i].word)
            assert_string_equal(line->first.word, cases[i].word);
        told_end(&t);
    }
}

static void off_and_level(void **state)
{
    (void)state;
    struct told t = told_club(
        INES "checks { off stale-max because \"tests are in spring\"; load-jump level error }\n"
             "block winter { for ines; starts 2027-01-04; weeks 1; checks { top-reps at most 3 }; " DAYS " }\n");
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->check_count, 2);
    assert_int_equal(t.model->checks[0].says, CHECK_OFF);
    assert_string_equal(t.model->checks[0].because, "tests are in spring");
    assert_int_equal(t.model->checks[1].says, CHECK_LEVEL);
    assert_string_equal(t.model->checks[1].level, "error");
    assert_int_equal(t.model->blocks[0]->check_count, 1); /* a block's own */
    assert_string_equal(t.model->blocks[0]->checks[0].rule, "top-reps");
    told_end(&t);
}

static void exceptions_with_a_reason(void **state)
{
    (void)state;
    struct told t = told_club(
        INES "template base { weeks 1; allow top-reps because \"as taught\"; " DAYS " }\n"
             "block winter from base { for ines; starts 2027-01-04; allow load-jump because \"first block back\" }\n");
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->allow_count, 2);
    const struct block *block = t.model->blocks[0];
    assert_int_equal(block->allow_count, 2); /* its template's too: allow adds */
    assert_string_equal(block->allows[0]->rule, "top-reps");
    assert_string_equal(block->allows[1]->because, "first block back");
    told_end(&t);
}

static void a_reason_is_required(void **state)
{
    (void)state;
    static const struct {
        const char *text, *findings;
    } cases[] = {
        { "checks { off stale-max }\n", "error missing `off stale-max`" },
        { INES "block winter { for ines; starts 2027-01-04; weeks 1; allow top-reps; " DAYS " }\n",
          "error missing `allow top-reps`" },
    };
    for (size_t i = 0; i < 2; i++) {
        struct told t = told_club(cases[i].text);
        assert_string_equal(findings_text(&t), cases[i].findings);
        told_end(&t);
    }
}

static const char *unused_text(struct told *t)
{
    const char *text = "";
    for (int i = 0; i < t->model->unused_count; i++)
        text = arena_format(t->arena, "%s%s%s %s", text, i ? ", " : "", t->model->unused[i].what,
                            t->model->unused[i].name);
    return text;
}

static void what_is_used_nowhere(void **state)
{
    (void)state;
    struct told t =
        told_text("lift row\nlift curl\nlift press like curl\ngym hall { bar 20 kg }\nscheme heavy { let $t = 70%; let "
                  "$u = 1; 3 x 5 at $t }\n"
                  "scheme light { 3 x 5 }\nprogression steady { when made hold }\ntemplate base { weeks 1 }\n"
                  "athlete ines { max row 100 kg }\nblock winter { for ines; starts 2027-01-04; weeks 1; let $z = 5; "
                  "day A { row heavy } }\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(unused_text(&t),
                        "let u, let z, lift press, scheme light, gym hall, template base, progression steady");
    told_end(&t);
}

/* A file that is only used is a library of its own: what stands there may wait. */
static void used_files_may_hold_more(void **state)
{
    (void)state;
    struct told t = told_begin();
    const struct paper papers[] = { { "a.block", "use \"b.block\"\nlift here\n" },
                                    { "b.block", "lift there\nscheme s { let $t = 1; 3 x 5 }\n" },
                                    { NULL, NULL } };
    told_load(&t, papers, (const char *const[]){ "a.block" }, 1);
    told_resolve(&t);
    assert_string_equal(unused_text(&t), "lift here");
    told_end(&t);
}

static void a_hundred_lets_in_use(void **state)
{
    (void)state;
    char text[8192] = INES "block winter { for ines; starts 2027-01-04; weeks 1\n";
    size_t used = strlen(text);
    for (int i = 0; i < 100; i++)
        used += (size_t)snprintf(text + used, sizeof text - used, "let $t%d = 3\n", i);
    used += (size_t)snprintf(text + used, sizeof text - used, "day A {\n");
    for (int i = 1; i < 100; i++)
        used += (size_t)snprintf(text + used, sizeof text - used, "curl $t%d x 5\n", i);
    snprintf(text + used, sizeof text - used, "} }\n");
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->unused[0].is_let, true);
    assert_string_equal(t.model->unused[0].name, "t0");
    assert_false(t.model->unused_count > 1 && t.model->unused[1].is_let);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(limits_of_the_house),      cmocka_unit_test(off_and_level),
        cmocka_unit_test(exceptions_with_a_reason), cmocka_unit_test(a_reason_is_required),
        cmocka_unit_test(what_is_used_nowhere),     cmocka_unit_test(used_files_may_hold_more),
        cmocka_unit_test(a_hundred_lets_in_use),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
