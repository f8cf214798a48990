/* Reading the command line: language.md, section 8; src/cmd/options.c. */
#include "command_line.h"

static void every_command_has_its_help(void **state)
{
    (void)state;
    char line[64];
    for (int i = 0; i < command_count; i++) {
        snprintf(line, sizeof line, "%s --help", commands[i].name);
        assert_int_equal(say(line), 0);
        assert_string_equal(said.err, "");
        assert_has(said.out, commands[i].usage);
        assert_has(said.out, commands[i].says);
        for (int j = 0; commands[i].options[j]; j++) {
            assert_has(said.out, commands[i].options[j]->says);
            assert_has(said.out, commands[i].options[j]->name);
        }
        char help[sizeof said.out];
        strcpy(help, said.out);
        snprintf(line, sizeof line, "help %s", commands[i].name);
        assert_int_equal(say(line), 0);
        assert_string_equal(said.out, help);
        snprintf(line, sizeof line, "%s -h", commands[i].name);
        assert_int_equal(say(line), 0);
        assert_string_equal(said.out, help);
    }
}

static void help_of_the_whole(void **state)
{
    (void)state;
    assert_int_equal(say("--help"), 0);
    for (int i = 0; i < command_count; i++)
        assert_has(said.out, commands[i].says);
    assert_has(said.out, "Exit status: 0 fine, 1 ");
    assert_int_equal(say("-h"), 0);
    assert_int_equal(say("help"), 0);
    assert_int_equal(say(""), 2);
    assert_string_equal(said.out, "");
    assert_has(said.err, "Commands:");
}

static void the_version_everywhere(void **state)
{
    (void)state;
    char line[64], version[64];
    assert_int_equal(say("--version"), 0);
    snprintf(version, sizeof version, "setwright %s\n", setwright_version());
    assert_string_equal(said.out, version);
    for (int i = 0; i < command_count; i++) {
        snprintf(line, sizeof line, "%s --version", commands[i].name);
        assert_int_equal(say(line), 0);
        assert_string_equal(said.out, version);
    }
}

/* Every exit but 0 has said why on standard error. */
static void wrong_usage(void **state)
{
    (void)state;
    static const struct {
        const char *line, *says;
    } cases[] = {
        { "chek", "setwright: no command is called chek; did you mean check?\n" },
        { "quite-another", "setwright: no command is called quite-another; `setwright --help` lists them\n" },
        { "check --stric", NULL }, /* getopt takes the beginning of a name */
        { "check --colour",
          "setwright: --colour is no option of `setwright check`; `setwright check --help` lists them\n" },
        { "check -z", NULL },
        { "check", "setwright: which files? `setwright check --help` shows examples\n" },
        { "build", "setwright: which files? `setwright build --help` shows examples\n" },
        { "build --athlete", "setwright: --athlete needs a value; see `setwright build --help`\n" },
        { "build -a", "setwright: -a needs a value; see `setwright build --help`\n" },
        { "build --week x c.block", "setwright: --week takes a week or a range of weeks, such as 3 or 2-4, not x\n" },
        { "build --week 0 c.block", "setwright: --week takes a week or a range of weeks, such as 3 or 2-4, not 0\n" },
        { "build --week 3-2 c.block",
          "setwright: --week takes a week or a range of weeks, such as 3 or 2-4, not 3-2\n" },
        { "build --week 3- c.block", "setwright: --week takes a week or a range of weeks, such as 3 or 2-4, not 3-\n" },
        { "build --week= c.block", "setwright: --week needs a value; see `setwright build --help`\n" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        assert_int_equal(say(cases[i].line), 2);
        assert_string_equal(said.out, "");
        if (cases[i].says)
            assert_string_equal(said.err, cases[i].says);
        else
            assert_true(strlen(said.err) > 0);
    }
}

/* GNU conventions: options after files, the short form, =, --, several short ones. */
static void options_in_all_their_spellings(void **state)
{
    (void)state;
    put("c.block", CLUB_TEXT);
    static const char *const same[] = {
        "build --format csv --athlete ines --week 1 c.block",
        "build c.block --format=csv --athlete=ines --week=1",
        "build -f csv -a ines -w 1 c.block",
        "build -fcsv -aines -w1 -- c.block",
        "build --week 1-1 --form csv --ath ines c.block",
    };
    char first[sizeof said.out];
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        assert_int_equal(say(same[i]), 0);
        if (!i)
            strcpy(first, said.out);
        assert_string_equal(said.out, first);
    }
    assert_has(first, "ines,winter,1,2027-01-04,A,1,squat,work,3,5,5,");
    assert_null(strstr(first, "tomas"));
    assert_int_equal(say("build -a ines -a tomas -f csv c.block"), 0); /* may be repeated */
    assert_has(said.out, "tomas");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_command_has_its_help),
        cmocka_unit_test(help_of_the_whole),
        cmocka_unit_test(the_version_everywhere),
        cmocka_unit_test(wrong_usage),
        cmocka_unit_test_setup(options_in_all_their_spellings, folder_setup),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
