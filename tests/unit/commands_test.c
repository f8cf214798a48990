/* The tables of commands and options, and what each command does: language.md, section 8; src/cmd/. */
#include "command_line.h"

static void rows_are_whole(void **state)
{
    (void)state;
    assert_true(command_count > 0);
    for (int i = 0; i < command_count; i++) {
        const struct command *row = &commands[i];
        assert_true(strlen(row->says) > 10 && row->run && row->options);
        assert_int_not_equal(row->says[strlen(row->says) - 1], '.');
        char start[64];
        snprintf(start, sizeof start, "  setwright %s", row->name);
        assert_int_equal(strncmp(row->examples, start, strlen(start)), 0);
        assert_int_equal(row->examples[strlen(row->examples) - 1], '\n');
        for (int j = 0; j < i; j++)
            assert_string_not_equal(row->name, commands[j].name);
        for (int j = 0; row->options[j]; j++)
            for (int k = 0; k < j; k++) {
                assert_string_not_equal(row->options[j]->name, row->options[k]->name);
                assert_true(!row->options[j]->letter || row->options[j]->letter != row->options[k]->letter);
            }
    }
}

static void check(void **state)
{
    (void)state;
    put("c.block", CLUB_TEXT);
    assert_int_equal(say("check c.block"), 0);
    assert_string_equal(said.out, ""); /* no count where nobody looks */
    put("wrong.block", "lift squat\nlift squat\n");
    assert_int_equal(say("check wrong.block"), 1);
    assert_has(said.err,
               "wrong.block:2:6: error: squat is declared twice; there can be one lift of a name [duplicate-name]\n");
    put("warned.block", "athlete ines\nlift row\nblock winter { for ines; starts 2027-01-04; weeks 1; day A { row 3 x "
                        "5 at 20 | 30 kg } }\n");
    assert_int_equal(say("check warned.block"), 0);
    assert_has(said.err, "warning:");
    assert_int_equal(say("check --strict warned.block"), 1);
    assert_int_equal(say("check none.block"), 3);
    assert_has(said.err, "none.block: no such file");
}

static void build(void **state)
{
    (void)state;
    put("c.block", CLUB_TEXT);
    assert_int_equal(say("build -f csv c.block"), 0);
    assert_string_equal(said.err, "");
    assert_has(said.out, "tomas,winter,2,2027-01-11,A,1,squat,work,3,5,5,7,80.4,112.5,kg,");
    assert_int_equal(say("build c.block"), 0); /* text by default */
    assert_has(said.out, "\f");
    assert_int_equal(say("build -f csv --output plan.csv c.block"), 0);
    assert_string_equal(said.out, "");
    assert_has(got("plan.csv"), "ines,winter,1,");
    assert_int_equal(say("build -f csv -o sheets/ c.block"), 0); /* a folder: a file per athlete and block */
    assert_has(got("sheets/ines-winter.csv"), "ines,winter,1,");
    assert_null(strstr(got("sheets/tomas-winter.csv"), "ines"));
    assert_int_equal(say("build -o sheets c.block"), 0); /* one that is there */
    assert_non_null(got("sheets/ines-winter.txt"));
    assert_int_equal(say("build -f cvs c.block"), 2);
    assert_string_equal(said.err, "setwright: no format is called cvs; did you mean csv?\n");
    assert_int_equal(say("build -o c.block c.block"), 2);
    assert_has(said.err, "c.block is one of the files that were read");
    assert_string_equal(got("c.block"), CLUB_TEXT);
    assert_int_equal(say("build -o none/plan.csv -f csv c.block"), 3);
    assert_int_equal(say("build --athlete nobody-of-ours c.block"), 2);
    assert_has(said.err, "no athlete or group is called nobody-of-ours");
    assert_int_equal(say("build --from yesterday c.block"), 2);
    assert_has(said.err, "yesterday is no date");
}

/* An error in the coach's files means no output. */
static void build_of_files_with_errors(void **state)
{
    (void)state;
    put("wrong.block", CLUB_TEXT "lift squat\n");
    put("plan.csv", "as it was\n");
    assert_int_equal(say("build -f csv -o plan.csv wrong.block"), 1);
    assert_string_equal(got("plan.csv"), "as it was\n");
    assert_int_equal(say("build -f csv wrong.block"), 1);
    assert_string_equal(said.out, "");
    assert_has(said.err, "nothing was built");
}

static void why(void **state)
{
    (void)state;
    put("c.block", CLUB_TEXT);
    assert_int_equal(say("why --athlete ines --week 2 --lift squat c.block"), 0);
    assert_has(said.out, "squat, day A, 2027-01-11: work 3 x 5 at 80 kg");
    assert_int_equal(say("why --athlete ines --week 2 --lift squat --day B c.block"), 2);
    assert_has(said.err, "ines does not train squat in week 2 on day B");
    assert_int_equal(say("why --athlete ines --lift squat c.block"), 2);
    assert_has(said.err, "say one athlete, one week and one lift");
    assert_int_equal(say("why --athlete ines --week 1-2 --lift squat c.block"), 2);
    put("wrong.block", CLUB_TEXT "lift squat\n");
    assert_int_equal(say("why --athlete ines --week 1 --lift squat wrong.block"), 1);
    assert_has(said.err, "declared twice");
}

static void explain(void **state)
{
    (void)state;
    const char *name, *says;
    char line[64];
    assert_int_equal(say("explain"), 0);
    for (int i = 0; (name = setwright_finding_name(i, &says)); i++)
        assert_has(said.out, says);
    for (int i = 0; (name = setwright_finding_name(i, &says)); i++) {
        snprintf(line, sizeof line, "explain %s", name);
        assert_int_equal(say(line), 0);
        assert_int_equal(strncmp(said.out, name, strlen(name)), 0);
    }
    assert_int_equal(say("explain mising-max"), 2);
    assert_has(said.err, "did you mean missing-max?");
    assert_int_equal(say("explain quite-another-thing"), 2);
}

static void templates(void **state)
{
    (void)state;
    const char *name, *text;
    char line[96];
    assert_int_equal(say("templates"), 0);
    for (int i = 0; (name = setwright_library_name(i, &text)); i++)
        assert_has(said.out, name);
    for (int i = 0; (name = setwright_library_name(i, &text)); i++) {
        snprintf(line, sizeof line, "templates %s", name);
        assert_int_equal(say(line), 0);
        assert_string_equal(said.out, text);
        snprintf(line, sizeof line, "templates %.*s", (int)(strlen(name) - strlen("std/.block")),
                 name + strlen("std/"));
        assert_int_equal(say(line), 0); /* by its name alone */
        assert_string_equal(said.out, text);
    }
    assert_int_equal(say("templates strenght"), 2);
    assert_has(said.err, "did you mean strength?");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_are_whole),
        cmocka_unit_test_setup(check, folder_setup),
        cmocka_unit_test_setup(build, folder_setup),
        cmocka_unit_test_setup(build_of_files_with_errors, folder_setup),
        cmocka_unit_test_setup(why, folder_setup),
        cmocka_unit_test(explain),
        cmocka_unit_test(templates),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
