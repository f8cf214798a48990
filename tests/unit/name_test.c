/* Names as language.md, section 1, has them. */
#include "base/name.h"

#include "pool.h"

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

/* Unicode Standard Annex 15, and python3: unicodedata.normalize('NFC', ...). */
static void one_letter_has_one_form(void **state)
{
    static const char *const rows[][2] = {
        { "ines", "ines" },
        { "jose\xCC\x81", "jos\xC3\xA9" },                          /* e and an acute */
        { "\xE1\x84\x92\xE1\x85\xA1\xE1\x86\xAB", "\xED\x95\x9C" }, /* three jamo, one syllable */
        { "a\xCC\xA3\xCC\x87", "\xE1\xBA\xA1\xCC\x87" },            /* marks below before marks above */
        { "\xFFzoe", "\xFFzoe" },
        { "", "" },
    };
    struct interner *interner = interner_new(*state);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_ptr_equal(name_composed(*state, interner, rows[i][0], strlen(rows[i][0])),
                         intern(interner, rows[i][1], strlen(rows[i][1])));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_a_name),
        cmocka_unit_test(a_name_ends_somewhere),
        cmocka_unit_test(one_letter_has_one_form),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
