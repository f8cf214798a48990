#include "base/excerpt.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What stands in the file, the bytes marked, and what is shown. Marks were set by eye. Widths: U+5375 is wide (Unicode,
 * EastAsianWidth W), U+0301 combines and takes no column. */
static const struct {
    const char *name, *text;
    uint32_t start, end;
    const char *shown;
} cases[] = {
    { "a word", "lift squat\nlift bench\n", 16, 21, "    2 | lift bench\n      |      ^^^^^\n" },
    { "an empty span", "lift squat\n", 5, 5, "    1 | lift squat\n      |      ^\n" },
    { "tabs before it", "\tlift\tsquat", 6, 11, "    1 | \tlift\tsquat\n      | \t    \t^^^^^\n" },
    { "a tab within it", "a\tb", 0, 3, "    1 | a\tb\n      | ^^\t^\n" },
    { "a tab of one column within it", "1234567\tb", 6, 9, "    1 | 1234567\tb\n      |       ^^^\n" },
    { "a tab alone", "a\tb", 1, 2, "    1 | a\tb\n      |  ^\n" },
    { "CRLF", "lift squat\r\nlift bench\r\n", 5, 10, "    1 | lift squat\n      |      ^^^^^\n" },
    { "a line end of CRLF", "lift\r\nx", 4, 6, "    1 | lift\n      |     ^\n" },
    { "two bytes a letter", "lift k\xC3\xBC\xC3\xA7\xC3\xBCk x", 5, 13,
      "    1 | lift k\xC3\xBC\xC3\xA7\xC3\xBCk x\n      |      ^^^^^\n" },
    { "after two-byte letters", "\xC3\xBC\xC3\xBC x", 5, 6, "    1 | \xC3\xBC\xC3\xBC x\n      |    ^\n" },
    { "wide", "\xE5\x8D\xB5\xE5\x8D\xB5 x", 3, 6, "    1 | \xE5\x8D\xB5\xE5\x8D\xB5 x\n      |   ^^\n" },
    { "no width",
      "e\xCC\x81"
      "e x",
      0, 4,
      "    1 | e\xCC\x81"
      "e x\n      | ^^\n" },
    { "no width alone",
      "e\xCC\x81"
      "e x",
      1, 3,
      "    1 | e\xCC\x81"
      "e x\n      |  ^\n" },
    { "several lines", "day A {\n  squat\n}\n", 4, 17, "    1 | day A {\n      |     ^^^\n" },
    { "the end of the file", "lift squat\n", 11, 11, "    2 |\n      | ^\n" },
    { "the end without a line end", "lift", 4, 4, "    1 | lift\n      |     ^\n" },
    { "an empty file", "", 0, 0, "    1 |\n      | ^\n" },
    { "an escape sequence", "a\x1b[2Jb", 1, 2, "    1 | a\\x1b[2Jb\n      |  ^^^^\n" },
    { "after an escape", "\x07z", 1, 2, "    1 | \\x07z\n      |     ^\n" },
    { "no UTF-8", "a\xFF\xC3z", 3, 4, "    1 | a\\xff\\xc3z\n      |          ^\n" },
    { "turned writing", "\xE2\x80\xAEz", 0, 3, "    1 | \\u202ez\n      | ^^^^^^\n" },
    { "a C1 control", "\xC2\x9Bz", 2, 3, "    1 | \\u009bz\n      |       ^\n" },
    { "a lone CR", "a\rb", 2, 3, "    1 | a\\x0db\n      |      ^\n" },
};

static char *shown_of(struct arena *arena, const char *text, size_t length, struct span at, const char *colour)
{
    struct sources *sources = sources_new(arena);
    struct source *source = sources_add(sources, "a.block", text, length);
    char *shown = NULL;
    size_t size;
    FILE *out = open_memstream(&shown, &size);
    if (span_is_somewhere(at) || at.start == 0)
        excerpt_print(sources, (struct span){ source->base + at.start, source->base + at.end }, out, colour);
    fclose(out);
    return shown;
}

static void lines_are_marked(void **state)
{
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char *shown =
            shown_of(*state, cases[i].text, strlen(cases[i].text), (struct span){ cases[i].start, cases[i].end }, "");
        if (strcmp(shown, cases[i].shown) != 0)
            fail_msg("%s:\n%sand not\n%s", cases[i].name, shown, cases[i].shown);
        free(shown);
    }
}

static void a_nul_shows(void **state)
{
    char *shown = shown_of(*state, "a\0b", 3, (struct span){ 2, 3 }, "");
    assert_string_equal(shown, "    1 | a\\x00b\n      |      ^\n");
    free(shown);
}

static void marks_take_the_colour(void **state)
{
    char *shown = shown_of(*state, "lift", 4, (struct span){ 0, 4 }, "\x1b[31m");
    assert_string_equal(shown, "    1 | lift\n\x1b[31m      | ^^^^\x1b[0m\n");
    free(shown);
}

static void nowhere_shows_nothing(void **state)
{
    char *shown = NULL;
    size_t size;
    FILE *out = open_memstream(&shown, &size);
    excerpt_print(sources_new(*state), (struct span){ 0, 0 }, out, "");
    fclose(out);
    assert_string_equal(shown, "");
    free(shown);
}

/* The mark stands under the word, whatever of the line is left away. */
static void a_long_line_shows_a_stretch(void **state)
{
    struct arena *arena = *state;
    for (uint32_t at = 0; at < 2990; at += 37) {
        char *text = arena_alloc(arena, 9000);
        for (int i = 0; i < 2998; i++)
            memcpy(text + 3 * i, "\xE2\x82\xAC", 3);
        memcpy(text + 3 * at, "2squat", 6);
        uint32_t start = 3 * at + 1; /* so that a cut falls within a character */
        char *shown = shown_of(arena, text, strlen(text), (struct span){ start, start + 5 }, "");
        assert_null(strchr(shown, '\\'));
        char *marks = strchr(shown, '\n') + 1;
        int column = (int)(strchr(marks, '^') - marks), seen = 0;
        assert_true(strlen(shown) < 600);
        const char *word = shown;
        for (; seen < column; word++)
            seen += (*(word + 1) & 0xC0) != 0x80;
        assert_memory_equal(word, "squat", 5);
        assert_string_equal(strchr(marks, '^'), "^^^^^\n");
        free(shown);
    }
}

static void text_is_made_safe(void **state)
{
    const char text[] = "k\xC3\xBC\x1b]0;x\x07\ta\nb\xE2\x80\xA8\xFF\xF0\x9F\x92\xAA";
    char *shown = NULL;
    size_t size;
    FILE *out = open_memstream(&shown, &size);
    safe_print(out, text);
    fclose(out);
    assert_string_equal(safe_text(*state, text), shown);
    assert_string_equal(shown, "k\xC3\xBC\\x1b]0;x\\x07\\x09a\\x0ab\\u2028\\xff\xF0\x9F\x92\xAA");
    free(shown);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines_are_marked),
        cmocka_unit_test(a_nul_shows),
        cmocka_unit_test(marks_take_the_colour),
        cmocka_unit_test(nowhere_shows_nothing),
        cmocka_unit_test(a_long_line_shows_a_stretch),
        cmocka_unit_test(text_is_made_safe),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
