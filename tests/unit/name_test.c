/* Names as language.md, section 1, has them. */
#include "base/name.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <cmocka.h>
#include <stdint.h>
#include <string.h>

static void what_is_a_name(void **state)
{
    static const char *const good[] = { "ines", "pull-up", "a_1", "Čestmír", "øst", "ines2", "b-1", "日本" };
    static const char *const bad[] = { "", "2ines", "-a", "a-", "hanna sorel", "../x", "a.b", "a,b", "=a", "a\tb", "_a", "a\x1b" };
    (void)state;
    for (size_t i = 0; i < sizeof good / sizeof *good; i++)
        assert_true(name_is_plain(good[i]));
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
        assert_false(name_is_plain(bad[i]));
}

static void a_name_ends_somewhere(void **state)
{
    char text[NAME_LETTERS_MOST + 2];
    (void)state;
    memset(text, 'a', sizeof text);
    text[NAME_LETTERS_MOST] = 0;
    assert_true(name_is_plain(text));
    text[NAME_LETTERS_MOST] = 'a';
    text[NAME_LETTERS_MOST + 1] = 0;
    assert_false(name_is_plain(text));
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(what_is_a_name), cmocka_unit_test(a_name_ends_somewhere) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
