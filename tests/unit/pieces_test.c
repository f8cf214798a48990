/* Where pieces of text end: the scanner alone, without the line discipline. */
#include "pool.h"

#include "syntax/classes.h"
#include "syntax/reader.h"

/* The pieces of a text with a bar behind each; what is left out in silence is not shown. */
static const char *pieces_of(struct arena *arena, const char *text)
{
    struct sources *sources = sources_new(arena);
    struct plain plain = { .words = words_index() };
    struct parse p = { .arena = arena, .names = interner_new(arena), .source = sources_add(sources, "a.block", text, strlen(text)),
                       .findings = findings_new(arena, sources), .plain = &plain };
    const char *pieces = "";
    while (scanner_next(&p)) {
        pieces = arena_format(arena, "%s%.*s|", pieces, (int)(p.to - p.from), text + p.from);
        p.last.kind = 0; /* each piece for itself: no units, no x */
    }
    assert_int_equal(p.from, strlen(text));
    return pieces;
}

static void pieces_end_where_they_should(void **state)
{
    static const struct {
        const char *text, *pieces;
    } cases[] = {
        { "", "" },
        { " \t\f\v", "" },
        { "squat 3 x 5", "squat|3|x|5|" },
        { "back-off a_1- b", "back-off|a_1-|b|" },
        { "$top-2 $ $1", "$top-2|$|$|1|" },
        { "a\nb\r\nc\rd", "a|\n|b|\r\n|c|\r|d|" },
        { "a # b \"c\nd", "a|\n|d|" },
        { "72.5 .5 5. 1.2.3 1.2.3.4", "72.5|.5|5|.|1.2.3|1.2.3.4|" },
        { "70,75.5,80", "70|,|75.5|,|80|" },
        { "1,2027-01-04", "1,2027|-|01|-|04|" }, /* a decimal comma as far as it can be told here */
        { "2027-01-04 2027-1-4 2027-01-045 12027-01-04 2027-x", "2027-01-04|2027-1-4|2027-01-04|5|12027|-|01|-|04|2027|-|x|" },
        { "4/1/2027 8/6 1/2/3/4", "4/1/2027|8|/|6|1|/|2|/|3|/|4|" }, /* 1/2/3 is no date: reported at its / */
        { "(4|3)x{5};%+=", "(|4|||3|)|x|{|5|}|;|%|+|=|" },
        { "\"a b\" c", "\"a b\"|c|" },
        { "\"a \\\" b\" c", "\"a \\\" b\"|c|" },
        { "\"\\\\\" c", "\"\\\\\"|c|" },
        { "\"open\nb", "\"open|\n|b|" },
        { "\"open\\\nb", "\"open\\|\n|b|" },
        { "\"ends\\", "\"ends\\|" },
        { "'single' b", "'single'|b|" },
        { "\xe2\x80\x9c" "curly\xe2\x80\x9d b", "\xe2\x80\x9c" "curly\xe2\x80\x9d|b|" },
        { "\xc3\xa9t\xc3\xa9 b", "\xc3\xa9t\xc3\xa9|b|" },
        { "a\x01\x02 b", "a|\x01\x02|b|" },
        { "a @ b ! c", "a|@|b|!|c|" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_string_equal(pieces_of(*state, cases[i].text), cases[i].pieces);
}

/* Wherever in a text a byte stands, and whatever stands behind it, it ends the text, or is to be looked at, or neither. */
static void texts_are_plain_that_hold_nothing_to_look_at(void **state)
{
    (void)state;
    enum { MOST = 20 };
    for (int byte = 0; byte < 256; byte++)
        for (int length = 1; length <= MOST; length++)
            for (int at = 0; at < length; at++) {
                char text[MOST + 3] = "\"";
                memset(text + 1, 0x7e, (size_t)length);
                text[1 + at] = (char)byte;
                text[1 + length] = '"';
                bool plain = (byte >= ' ' && byte < 0x7f && byte != '\\') || byte == '\t' || byte == '\v' || byte == '\f';
                const char *end = plain ? text + (byte == '"' ? at : length) + 2 : NULL;
                assert_ptr_equal(plain_text_end(text, text + length + 2), end);
            }
}

/* Each piece of a run is read for itself, and its rest not again each time. */
static void a_run_of_megabytes_is_read_at_once(void **state)
{
    enum { NUMBERS = 1 << 20 };
    struct arena *arena = *state;
    char *text = arena_alloc(arena, 2 * NUMBERS + 1);
    for (int i = 0; i < NUMBERS; i++)
        memcpy(text + 2 * i, "7,", 2);
    struct sources *sources = sources_new(arena);
    struct plain plain = { .words = words_index() };
    struct parse p = { .arena = arena, .names = interner_new(arena), .source = sources_add(sources, "a.block", text, 2 * NUMBERS),
                       .findings = findings_new(arena, sources), .plain = &plain };
    int count = 0;
    while (scanner_next(&p))
        count++;
    assert_int_equal(count, 2 * NUMBERS);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(pieces_end_where_they_should, pool_setup, pool_teardown),
        cmocka_unit_test(texts_are_plain_that_hold_nothing_to_look_at),
        cmocka_unit_test_setup_teardown(a_run_of_megabytes_is_read_at_once, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
