/* Stretches of lines that were met before. */
#include "pool.h"

#include "syntax/known.h"

#include <string.h>

static const struct stretch *find(const struct known *known, const struct stretch *before, const char *text)
{
    return known_find(known, before, text, strlen(text));
}

static const struct stretch *give(struct arena *arena, struct known *known, const struct stretch *before, const char *text, uint32_t length)
{
    return known_give(arena, known, before, text, strlen(text), length, length && text[length - 1] == '"');
}

static void a_stretch_is_found_by_its_words(void **state)
{
    static const char line[] = "squat 3 x 5 note \"Brace\" then 2 x 4\n";
    struct known known = { .count = 16 };
    assert_null(find(&known, NULL, line));
    const struct stretch *first = give(*state, &known, NULL, line, 18);
    const struct stretch *second = give(*state, &known, first, line + 24, 11);
    assert_ptr_equal(find(&known, NULL, line), first);
    assert_true(first->noted);
    assert_false(second->noted);
    assert_ptr_equal(second->before, first);
    assert_ptr_equal(give(*state, &known, NULL, line, 18), first);
    assert_ptr_equal(find(&known, NULL, "squat 3 x 5 note \"Another\" then 2 x 4"), first);
    assert_ptr_equal(find(&known, first, " then 2 x 4 "), NULL); /* as far as a line's end it is another */
    assert_ptr_equal(find(&known, first, " then 2 x 4"), second);
    assert_null(find(&known, NULL, " then 2 x 4"));
    assert_null(find(&known, second, " then 2 x 4"));
    assert_null(find(&known, NULL, "squat 3 x 5 note"));
    assert_null(find(&known, NULL, "squat 3 x 6 note \"Brace\""));
    assert_null(find(&known, NULL, ""));
}

static void a_then_on_the_next_line_starts_a_stretch(void **state)
{
    static const char then[] = "\n\n   then 2 x 4 note \"a\"\n";
    struct known known = { .count = 16 };
    const struct stretch *first = give(*state, &known, NULL, "squat 3 x 5 note \"", 18);
    const struct stretch *second = give(*state, &known, first, then, 22);
    assert_ptr_equal(find(&known, first, "\n\n   then 2 x 4 note \"b\""), second);
    assert_null(find(&known, first, "\n   then 2 x 4 note \"b\"")); /* a blank less: its words would stand elsewhere */
    assert_null(find(&known, first, "\n"));
}

/* Whether a note ends a group is seen behind it, so two may begin alike. */
static void of_two_in_one_slot_the_later_is_at_hand(void **state)
{
    struct known known = { .count = 1 };
    const char *line = "squat 3 x 5 note \"a\" rest 3 min";
    const struct stretch *noted = give(*state, &known, NULL, line, 18), *whole = give(*state, &known, NULL, line, 31);
    assert_ptr_not_equal(noted, whole);
    assert_ptr_equal(find(&known, NULL, line), whole);
    assert_null(find(&known, NULL, "squat 3 x 5 note \"b\""));
    assert_int_equal(noted->length, 18); /* whoever has it keeps it */
    assert_ptr_not_equal(give(*state, &known, NULL, line, 18), whole);
    assert_int_equal(find(&known, NULL, line)->length, 18);
    const char *lines = "squat 3 x 5\n then 2 x 4\n";
    const struct stretch *one = give(*state, &known, NULL, lines, 11), *both = give(*state, &known, NULL, lines, 23);
    assert_ptr_not_equal(one, both);
    assert_int_equal(both->length, 23);
    give(*state, &known, noted, " then 2 x 4", 11);
    assert_null(find(&known, NULL, " then 2 x 4")); /* no line starts so */
}

static void lines_are_alike_whose_stretches_are(void **state)
{
    struct known one = { .count = 16 }, other = { .count = 4 };
    static const char *const starts[] = { "squat 3 x 5 note \"", "squat 3 x 6 note \"" };
    char copies[2][32], then[] = " then 2 x 4";
    const struct stretch *a[2], *b[2];
    for (int i = 0; i < 2; i++) {
        strcpy(copies[i], starts[i]);
        a[i] = give(*state, &one, give(*state, &one, NULL, starts[i], 18), " then 2 x 4", 11);
        b[i] = give(*state, &other, give(*state, &other, NULL, copies[i], 18), then, 11);
        assert_true(known_alike(a[i], a[i]));
        assert_true(known_alike(a[i], b[i]));
        assert_int_equal(a[i]->hash, b[i]->hash);
        assert_false(known_alike(a[i], b[i]->before));
        assert_false(known_alike(a[i]->before, b[i]));
        assert_true(known_alike(a[i]->before, b[i]->before));
    }
    assert_false(known_alike(a[0], a[1]));
    assert_false(known_alike(a[0], give(*state, &one, NULL, " then 2 x 4", 11)));
    assert_false(known_alike(give(*state, &one, NULL, "abc", 3), give(*state, &one, NULL, "abc", 2)));
}

static void larger_texts_have_more_slots(void **state)
{
    (void)state;
    assert_int_equal(known_slots(0), 16);
    assert_int_equal(known_slots(16 * 256), 16);
    assert_int_equal(known_slots(16 * 256 + 256), 32);
    assert_int_equal(known_slots(UINT32_MAX), 16384);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_stretch_is_found_by_its_words, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_then_on_the_next_line_starts_a_stretch, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(of_two_in_one_slot_the_later_is_at_hand, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(lines_are_alike_whose_stretches_are, pool_setup, pool_teardown),
        cmocka_unit_test(larger_texts_have_more_slots),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
