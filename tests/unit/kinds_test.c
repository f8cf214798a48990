#include "base/kinds.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void every_kind_has_a_whole_row(void **state)
{
    (void)state;
    for (int i = KIND_NONE + 1; i < KIND_COUNT; i++) {
        const struct kind_row *row = kind_row((enum kind)i);
        if (!row->name || !row->says || !row->explain)
            fail_msg("kind %d has no row", i);
        assert_true(strlen(row->name) >= 3 && strlen(row->says) >= 10 && strlen(row->says) <= 90);
        assert_null(strchr(row->says, '\n'));
        assert_int_equal(row->explain[strlen(row->explain) - 1], '\n');
        assert_int_equal(kind_find(row->name), i); /* so no name stands twice */
        for (const char *at = row->name; *at; at++)
            assert_non_null(strchr("abcdefghijklmnopqrstuvwxyz-", *at));
    }
}

/* A page holds what goes wrong and the same mended, each set in by four spaces, and fits a screen of 100 columns. */
static void every_page_shows_an_example_and_its_mending(void **state)
{
    (void)state;
    for (int i = KIND_NONE + 1; i < KIND_COUNT; i++) {
        const char *page = kind_row((enum kind)i)->explain;
        int examples = 0;
        for (const char *line = page, *end; *line; line = end + 1) {
            end = strchr(line, '\n');
            assert_true(end - line <= 100);
            examples += strncmp(line, "    ", 4) == 0 && line - page >= 2 && line[-2] == '\n';
        }
        if (examples != 2)
            fail_msg("the page of %s has %d examples", kind_row((enum kind)i)->name, examples);
    }
}

static void unknown_kinds_are_none(void **state)
{
    (void)state;
    assert_int_equal(kind_find(""), KIND_NONE);
    assert_int_equal(kind_find("Syntax"), KIND_NONE);
    assert_int_equal(kind_find("synta"), KIND_NONE);
    assert_non_null(kind_row(KIND_NONE));
    assert_string_equal(kind_row(KIND_COUNT)->name, "");
}

static void four_kinds_only_warn(void **state)
{
    (void)state;
    static const char *const warnings[] = { "weeks", "untouched", "under-bar", "unmatched-diary" };
    int count = 0;
    for (int i = KIND_NONE + 1; i < KIND_COUNT; i++)
        count += kind_row((enum kind)i)->level == LEVEL_WARNING;
    assert_int_equal(count, 4);
    for (int i = 0; i < 4; i++)
        assert_int_equal(kind_row(kind_find(warnings[i]))->level, LEVEL_WARNING);
    assert_int_equal(kind_row(KIND_SYNTAX)->level, LEVEL_ERROR);
    assert_string_equal(level_name(LEVEL_ERROR), "error");
    assert_string_equal(level_name(LEVEL_WARNING), "warning");
    assert_string_equal(level_name(LEVEL_ADVICE), "advice");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_kind_has_a_whole_row),
        cmocka_unit_test(every_page_shows_an_example_and_its_mending),
        cmocka_unit_test(unknown_kinds_are_none),
        cmocka_unit_test(four_kinds_only_warn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
