/* Characters that cannot be seen: all of category Cf that Unicode Standard Annex 9 lists as explicit or implicit marks of direction,
 * and those without width; codes, names and categories checked against python3's unicodedata. */
#include "base/hidden.h"

#include "pool.h"

#include <string.h>

static const struct {
    const char *text, *what;
    int32_t code;
    uint32_t start, end;
} found[] = {
    { "a\xD8\x9Cz", "an Arabic letter mark", 0x061C, 1, 3 },
    { "squ\xE2\x80\x8B" "at", "a zero-width space", 0x200B, 3, 6 },
    { "squ\xE2\x80\x8C" "at", "a zero-width non-joiner", 0x200C, 3, 6 },
    { "squ\xE2\x80\x8D" "at", "a zero-width joiner", 0x200D, 3, 6 },
    { "\xE2\x80\x8E", "a left-to-right mark", 0x200E, 0, 3 },
    { "\xE2\x80\x8F", "a right-to-left mark", 0x200F, 0, 3 },
    { "\xE2\x80\xAA", "a left-to-right embedding", 0x202A, 0, 3 },
    { "\xE2\x80\xAB", "a right-to-left embedding", 0x202B, 0, 3 },
    { "\xE2\x80\xAC", "the end of a change of direction", 0x202C, 0, 3 },
    { "\xE2\x80\xAD", "a left-to-right override", 0x202D, 0, 3 },
    { "k\xC3\xBC\xE2\x80\xAE x", "a right-to-left override", 0x202E, 3, 6 },
    { "\xE2\x81\xA0", "a word joiner", 0x2060, 0, 3 },
    { "\xE2\x81\xA6", "a left-to-right isolate", 0x2066, 0, 3 },
    { "\xE2\x81\xA7", "a right-to-left isolate", 0x2067, 0, 3 },
    { "\xE2\x81\xA8", "a first-strong isolate", 0x2068, 0, 3 },
    { "\xE2\x81\xA9", "the end of an isolate", 0x2069, 0, 3 },
    { "a\xEF\xBB\xBF", "a zero-width no-break space", 0xFEFF, 1, 4 },
    { "a\xC2\xAD", "a soft hyphen", 0x00AD, 1, 3 },
    { "a\xE2\x81\xA3" "b", "a format character", 0x2063, 1, 4 },
    { "a\xF3\xA0\x81\xA1", "a format character", 0xE0061, 1, 5 },
    { "\xFF\xE2\x80\x8B", "a zero-width space", 0x200B, 1, 4 },
};

/* An Arabic number sign is of category Cf and seen; Persian with a non-joiner, Malayalam with a joiner, a weightlifter emoji with one; all kinds of plain text. */
static const char *const fine[] = {
    "\xD8\x80", "", "Back squat", "r\xC3\xA4w", "\xD9\x85\xDB\x8C\xE2\x80\x8C\xD8\xAE\xD9\x88\xD8\xA7\xD9\x87\xD9\x85",
    "\xE0\xB4\xA8\xE0\xB5\x8D\xE2\x80\x8D", "\xF0\x9F\x8F\x8B\xEF\xB8\x8F\xE2\x80\x8D\xE2\x99\x80\xEF\xB8\x8F", "\xC2\xA0", "\xE2\x80\x93",
};

static void each_is_found(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof found / sizeof *found; i++) {
        struct hidden hidden;
        assert_true(hidden_find(found[i].text, (uint32_t)strlen(found[i].text), &hidden));
        assert_string_equal(hidden.what, found[i].what);
        assert_int_equal(hidden.code, found[i].code);
        assert_int_equal(hidden.start, found[i].start);
        assert_int_equal(hidden.end, found[i].end);
    }
}

static void what_scripts_need_is_let_be(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof fine / sizeof *fine; i++) {
        struct hidden hidden;
        assert_false(hidden_find(fine[i], (uint32_t)strlen(fine[i]), &hidden));
    }
}

static void it_is_a_warning_with_a_code(void **state)
{
    struct sources *sources = sources_new(*state);
    struct findings *findings = findings_new(*state, sources);
    const char *text = "ab\xE2\x80\xAE" "c";
    hidden_say(findings, "plain", 5, 1, "text");
    assert_int_equal(findings_total(findings), 0);
    hidden_say(findings, text, 6, 11, "text");
    assert_int_equal(findings_count(findings, LEVEL_WARNING), 1);
    const struct finding *finding = findings_sorted(findings)[0];
    assert_string_equal(finding->message, "a right-to-left override (U+202E) stands in this text and cannot be seen");
    assert_int_equal(finding->at.start, 13);
    assert_int_equal(finding->at.end, 16);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_is_found),
        cmocka_unit_test(what_scripts_need_is_let_be),
        cmocka_unit_test_setup_teardown(it_is_a_warning_with_a_code, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
