#include "emit/visible.h"

#include "pool.h"

#include <stdlib.h>
#include <string.h>

/* What steers a terminal or turns the text is spelt out; letters of any script and joiners stay (Unicode general
 * categories Cc, Cf, Zl, Zp). */
static const struct {
    const char *text, *line, *breaks;
} shown[] = {
    { "Back squat", "Back squat", "Back squat" },
    { "", "", "" },
    { "a\x1b[31mb", "a\\x1b[31mb", "a\\x1b[31mb" },
    { "one\ntwo\tthree\r", "one two three\\x0d", "one\ntwo\tthree\\x0d" },
    { "\x7f\f\a", "\\x7f\\x0c\\x07", "\\x7f\\x0c\\x07" },
    { "\xC3\x9Cnsal \xE7\xA4\xBC", "\xC3\x9Cnsal \xE7\xA4\xBC", "\xC3\x9Cnsal \xE7\xA4\xBC" },
    { "\xC2\x85 \xE2\x80\xAE \xE2\x80\xA8", "\\u0085 \\u202e \\u2028", "\\u0085 \\u202e \\u2028" },
    { "\xE2\x80\x8C", "\xE2\x80\x8C", "\xE2\x80\x8C" },
    { "a\xE2\x80\x8D"
      "b",
      "a\xE2\x80\x8D"
      "b",
      "a\xE2\x80\x8D"
      "b" },
    { "\xF3\xA0\x80\x81", "\\u0e0001", "\\u0e0001" }, /* a tag character */
    { "bad \xFF byte", "bad \\xff byte", "bad \\xff byte" },
};

static void what_does_not_show_is_spelt_out(void **state)
{
    for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
        struct out line = out_scratch(*state), breaks = out_scratch(*state);
        visible_add(&line, shown[i].text, strlen(shown[i].text), VISIBLE_ONE_LINE);
        visible_add(&breaks, shown[i].text, strlen(shown[i].text), VISIBLE_BREAKS);
        out_char(&line, '\0');
        out_char(&breaks, '\0');
        assert_string_equal(line.at, shown[i].line);
        assert_string_equal(breaks.at, shown[i].breaks);
    }
}

/* Wide letters take two columns (UAX 11), combining marks none. */
static void columns_are_counted(void **state)
{
    static const struct {
        const char *text;
        int columns;
    } rows[] = {
        { "", 0 }, { "squat", 5 }, { "\xC3\x9C", 1 }, { "e\xCC\x81", 1 }, { "\xE7\xA4\xBC", 2 }, { "\xFF", 1 }
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_int_equal(columns_of(rows[i].text, strlen(rows[i].text)), rows[i].columns);
    assert_int_equal(character_size("\xE7\xA4\xBC"
                                    "a",
                                    4),
                     3);
    assert_int_equal(character_size("\xFF"
                                    "a",
                                    2),
                     1);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(what_does_not_show_is_spelt_out),
        TEST(columns_are_counted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
