#include "emit/lines.h"

#include "pool.h"

#include <stdlib.h>
#include <string.h>

struct page {
    struct out out;
    struct lines lines;
};

static struct page *page_new(struct arena *arena)
{
    struct page *page = NEW(arena, struct page);
    page->out = out_scratch(arena);
    page->lines = lines_new(&page->out, arena);
    return page;
}

static void assert_page(struct page *page, const char *expected)
{
    out_char(&page->out, '\0');
    assert_string_equal(page->out.at, expected);
}

static void pieces_stand_side_by_side(void **state)
{
    struct page *page = page_new(*state);
    line_begin(&page->lines, 2, "Top", 8);
    line_say(&page->lines, 3, "1 x 1"); /* the first stands at the indent, gap or not */
    line_stop(&page->lines, 20);
    line_say(&page->lines, 2, "100 kg");
    line_say(&page->lines, 2, "rpe 8");
    line_end(&page->lines);
    line_begin(&page->lines, 0, "", 4);
    line_say(&page->lines, 1, "a longer piece here");
    line_stop(&page->lines, 10); /* already past it */
    line_say(&page->lines, 2, "b");
    line_end(&page->lines);
    assert_page(page, "  Top   1 x 1       100 kg  rpe 8\n    a longer piece here  b\n");
}

/* 80 columns: a piece that ends in the last one stays, one more goes below. */
static void a_piece_that_does_not_fit_goes_below(void **state)
{
    char piece[72];
    memset(piece, 'x', sizeof piece);
    for (int length = 70; length <= 71; length++) {
        struct page *page = page_new(*state);
        line_begin(&page->lines, 0, "", 4);
        line_say(&page->lines, 0, "90 kg");
        line_piece(&page->lines, 1, piece, (size_t)length);
        line_end(&page->lines);
        assert_page(page,
                    arena_format(*state, length == 70 ? "    90 kg %.*s\n" : "    90 kg\n    %.*s\n", length, piece));
    }
}

static void a_piece_longer_than_a_line_is_broken(void **state)
{
    char piece[100];
    memset(piece, 'x', sizeof piece);
    struct page *page = page_new(*state);
    line_begin(&page->lines, 0, "", 10);
    line_piece(&page->lines, 0, piece, sizeof piece);
    line_end(&page->lines);
    assert_page(page, arena_format(*state, "%10s%.70s\n%10s%.30s\n", "", piece, "", piece));
}

static void words_wrap_and_line_ends_are_kept(void **state)
{
    struct page *page = page_new(*state);
    line_begin(&page->lines, 0, "1.", 3);
    line_words(&page->lines, 1, "\n one  two\tthree\n\nfour \x1b\n");
    line_end(&page->lines);
    line_begin(&page->lines, 0, "", 70);
    line_words(&page->lines, 0, "one two three four");
    line_words(&page->lines, 1, "");
    line_end(&page->lines);
    assert_page(page, "1. one two three\n   four \\x1b\n"
                      "                                                                      one two\n"
                      "                                                                      three four\n");
}

static void sides_stand_apart_or_below_each_other(void **state)
{
    struct page *page = page_new(*state);
    lines_sides(&page->lines, "Ines",
                "\xE7\xA4\xBC"
                "1");
    lines_sides(&page->lines, "alone", "");
    lines_sides(&page->lines, "", "right");
    char left[78];
    memset(left, 'l', 77);
    left[77] = '\0';
    lines_sides(&page->lines, left, "r");
    lines_sides(&page->lines, left, "rr");
    lines_rule(&page->lines, '-');
    assert_page(page, arena_format(*state,
                                   "Ines%73s\xE7\xA4\xBC"
                                   "1\nalone\n%75sright\n%s  r\n%s\nrr\n"
                                   "----------------------------------------"
                                   "----------------------------------------\n",
                                   "", "", left, left));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(pieces_stand_side_by_side),
        TEST(a_piece_that_does_not_fit_goes_below),
        TEST(a_piece_longer_than_a_line_is_broken),
        TEST(words_wrap_and_line_ends_are_kept),
        TEST(sides_stand_apart_or_below_each_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
