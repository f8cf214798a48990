#include "syntax/words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void words_stand_in_order_and_are_found(void **state)
{
    (void)state;
    const struct word_index index = words_index();
    for (int i = 0; i < word_count(); i++) {
        const struct word *word = word_at(i);
        if (i > 0)
            assert_true(strcmp(word_at(i - 1)->text, word->text) < 0);
        assert_ptr_equal(word_find(&index, word->text, strlen(word->text)), word);
        assert_ptr_equal(word_of(word->token), word);
    }
}

static void parts_of_words_and_other_cases_are_plain_names(void **state)
{
    (void)state;
    const struct word_index index = words_index();
    static const char *const names[] = { "", "wee", "weekss", "Squat", "At", "RPE", "mon", "quads", "nearest", "free", "kg", "step" };
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        assert_null(word_find(&index, names[i], strlen(names[i])));
    assert_string_equal(word_find(&index, "weeks 5", 5)->text, "weeks");
    assert_string_equal(word_find(&index, "weeks 5", 4)->text, "week");
}

/* kitten/sitting 3, saturday/sunday 3: the textbook pairs of edit distance; ca/abc 3: the pair that tells optimal string
 * alignment from the unrestricted distance (2). From memory. */
static void distances_are_those_of_the_textbook(void **state)
{
    (void)state;
    static const struct {
        const char *a, *b;
        int distance;
    } rows[] = {
        { "kitten", "sitting", 3 }, { "saturday", "sunday", 3 }, { "ca", "abc", 3 },   { "weks", "weeks", 1 },
        { "form", "from", 1 },      { "", "abc", 3 },            { "top", "top", 0 },  { "laod", "load", 1 },
        { "füße", "fuße", 1 },
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal(word_distance(rows[i].a, rows[i].b, 9), rows[i].distance);
        assert_int_equal(word_distance(rows[i].b, rows[i].a, 9), rows[i].distance);
    }
    assert_int_equal(word_distance("kitten", "sitting", 1), 2);
}

static void the_nearest_word_is_near_enough(void **state)
{
    (void)state;
    static const char *const words[] = { "weeks", "starts", "deload", "top" };
    assert_string_equal(word_nearest("weks", words, 4), "weeks");
    assert_string_equal(word_nearest("delaod", words, 4), "deload");
    assert_string_equal(word_nearest("delod", words, 4), "deload");
    assert_string_equal(word_nearest("strats", words, 4), "starts");
    assert_string_equal(word_nearest("stratss", words, 4), "starts");
    assert_null(word_nearest("wkks", words, 4)); /* two edits are too many in up to five letters */
    assert_null(word_nearest("squat", words, 4));
    assert_null(word_nearest("x", words, 4));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_stand_in_order_and_are_found),
        cmocka_unit_test(parts_of_words_and_other_cases_are_plain_names),
        cmocka_unit_test(distances_are_those_of_the_textbook),
        cmocka_unit_test(the_nearest_word_is_near_enough),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
