/* Words around an entry on a sheet; as_text_test reads whole pages. */
#include "emit/entry_lines.h"

#include "pool.h"

#include <stdio.h>

static void numbers_of_entries(void **state)
{
    (void)state;
    static const struct {
        int number, part;
        const char *text;
    } cases[] = { { 1, -1, "1." }, { 12, -1, "12." }, { 2, 0, "2a." }, { 2, 1, "2b." }, { 3, 25, "3z." } };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[32];
        number_write(text, cases[i].number, cases[i].part);
        assert_string_equal(text, cases[i].text);
    }
}

static struct sheet sheet_on(struct out *out, struct arena *arena)
{
    *out = out_scratch(arena);
    return (struct sheet){ .lines = lines_new(out, arena), .say = out_scratch(arena), .waiting = out_scratch(arena) };
}

static void words_of_the_coach(void **state)
{
    static const char *const notes[] = { "mind the step", "a note that is long enough to be broken at the end of a line of eighty columns" };
    struct out out;
    struct sheet sheet = sheet_on(&out, *state);
    words_line(&sheet.lines, 4, "Or", "rows", "");
    words_line(&sheet.lines, 0, "", "alone", "");
    notes_lines(&sheet.lines, 4, notes, 2);
    out_char(&out, '\0');
    assert_string_equal(out.at, "    Or rows\nalone\n    Note: mind the step\n"
                                "    Note: a note that is long enough to be broken at the end of a line of eighty\n    columns\n");
}

static void heads_of_supersets(void **state)
{
    static const struct {
        struct plan_entry entry;
        const char *text;
    } cases[] = {
        { { .superset = 1 }, "2.  Superset: a set of each in turn, and round again\n" },
        { { .superset = 1, .rounds = 3 }, "2.  Superset, 3 rounds: a set of each in turn, and round again\n" },
        { { .superset = 1, .superset_minutes = 8 }, "2.  Superset for 8 min: a set of each in turn, over and over. Rounds: ____\n" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct out out;
        struct sheet sheet = sheet_on(&out, *state);
        superset_line(&sheet, &cases[i].entry, 2);
        out_char(&out, '\0');
        assert_string_equal(out.at, cases[i].text);
    }
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(numbers_of_entries),
        TEST(words_of_the_coach),
        TEST(heads_of_supersets),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
