#include "base/span.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct position place(struct sources *sources, const struct source *source, uint32_t byte)
{
    return position_of(sources, source->base + byte);
}

static void assert_place(struct position at, uint32_t line, uint32_t column)
{
    assert_int_equal(at.line, line);
    assert_int_equal(at.column, column);
}

static void offsets_find_their_file(void **state)
{
    struct sources *sources = sources_new(*state);
    assert_null(sources_find(sources, 1));
    struct source *gym = sources_add(sources, "gym.block", "gym boathouse", 13);
    struct source *empty = sources_add(sources, "empty.block", "", 0);
    struct source *team = sources_add(sources, "team.block", "athlete ines", 12);
    assert_true(gym->base >= 1);
    assert_int_equal(sources_count(sources), 3);
    assert_ptr_equal(sources_at(sources, 1), empty);
    assert_ptr_equal(sources_find(sources, gym->base), gym);
    assert_ptr_equal(sources_find(sources, gym->base + 13), gym);
    assert_ptr_equal(sources_find(sources, empty->base), empty);
    assert_ptr_equal(sources_find(sources, team->base), team);
    assert_ptr_equal(sources_find(sources, team->base + 12), team);
    assert_null(sources_find(sources, team->base + 13));
    assert_null(sources_find(sources, 0));
    assert_null(position_of(sources, 0).source);
}

static void the_bytes_are_a_copy_without_the_mark(void **state)
{
    struct sources *sources = sources_new(*state);
    char bytes[] = "\xEF\xBB\xBFlift";
    struct source *source = sources_add(sources, "a.block", bytes, 7);
    bytes[3] = 'X';
    assert_string_equal(source->text, "lift");
    assert_int_equal(source->length, 4);
    assert_place(place(sources, source, 0), 1, 1);
    assert_int_equal(place(sources, source, 2).byte, 2);
    struct source *two = sources_add(sources, "b.block", "\xEF\xBB", 2);
    assert_int_equal(two->length, 2);
    assert_null(sources_add(sources, "c.block", bytes, UINT32_MAX - 5)); /* refused before it is read */
    assert_int_equal(sources_count(sources), 2);
}

/* Columns count code points: U+00E9 is 2 bytes, U+5375 3, U+1F4AA 4 (Unicode, UTF-8 table 3-6). */
static void columns_count_characters(void **state)
{
    struct sources *sources = sources_new(*state);
    const char *text = "\xC3\xA9\xE5\x8D\xB5\xF0\x9F\x92\xAAx\n\tb\xFFz";
    struct source *source = sources_add(sources, "a.block", text, strlen(text));
    assert_place(place(sources, source, 2), 1, 2);
    assert_place(place(sources, source, 5), 1, 3);
    assert_place(place(sources, source, 9), 1, 4);
    assert_place(place(sources, source, 10), 1, 5);
    assert_place(place(sources, source, 12), 2, 2);
    assert_place(place(sources, source, 14), 2, 4);
}

static void lines_end_at_lf_or_crlf(void **state)
{
    struct sources *sources = sources_new(*state);
    const char *text = "one\r\n\r\nthree\rstill\nlast\r";
    struct source *source = sources_add(sources, "a.block", text, strlen(text));
    const struct {
        const char *text;
        uint32_t length;
    } lines[] = { { "one", 3 }, { "", 0 }, { "three\rstill", 11 }, { "last\r", 5 } };
    uint32_t length;
    for (uint32_t i = 0; i < 4; i++) {
        const char *line = source_line(source, i + 1, &length);
        assert_int_equal(length, lines[i].length);
        assert_memory_equal(line, lines[i].text, length);
    }
    source_line(source, 5, &length);
    assert_int_equal(length, 0);
    source_line(source, 0, &length);
    assert_int_equal(length, 0);
    assert_place(place(sources, source, 5), 2, 1);
    assert_place(place(sources, source, 7), 3, 1);
}

static void the_end_stands_one_line_past_the_last(void **state)
{
    struct sources *sources = sources_new(*state);
    struct source *source = sources_add(sources, "a.block", "lift squat\n", 11);
    assert_place(place(sources, source, 10), 1, 11);
    assert_place(place(sources, source, 11), 2, 1);
    struct source *open = sources_add(sources, "b.block", "lift", 4);
    assert_place(place(sources, open, 4), 1, 5);
    assert_ptr_equal(place(sources, open, 4).source, open);
}

static void spans_join(void **state)
{
    (void)state;
    struct span span = span_join((struct span){ 3, 5 }, (struct span){ 9, 12 });
    assert_int_equal(span.start, 3);
    assert_int_equal(span.end, 12);
    assert_true(span_is_somewhere(span));
    assert_false(span_is_somewhere((struct span){ 0, 0 }));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(offsets_find_their_file),
        cmocka_unit_test(the_bytes_are_a_copy_without_the_mark),
        cmocka_unit_test(columns_count_characters),
        cmocka_unit_test(lines_end_at_lf_or_crlf),
        cmocka_unit_test(the_end_stands_one_line_past_the_last),
        cmocka_unit_test(spans_join),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
