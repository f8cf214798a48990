/* The nearest spelling: optimal string alignment (Damerau 1964, each pair of neighbours swapped once at most). The
 * distances are worked by hand. */
#include "base/near.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void distances(void **state)
{
    (void)state;
    static const struct {
        const char *a, *b;
        int distance;
    } cases[] = {
        { "squat", "squat", 0 }, { "squat", "sqaut", 1 },      { "squat", "squatt", 1 }, { "squat", "squt", 1 },
        { "squat", "squad", 1 }, { "kitten", "sitting", 3 },   { "ca", "abc", 3 }, /* no 2: a swapped pair stays as it is */
        { "", "abc", 3 },        { "ren\xC3\xA9", "rene", 1 },                     /* in characters */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        assert_int_equal(word_distance(cases[i].a, cases[i].b, 9), cases[i].distance);
        assert_int_equal(word_distance(cases[i].b, cases[i].a, 9), cases[i].distance);
        if (cases[i].distance > 1)
            assert_int_equal(word_distance(cases[i].a, cases[i].b, 1), 2); /* stops above `most` */
    }
}

static void the_nearest(void **state)
{
    (void)state;
    static const char *const lifts[] = { "bench", "squat", "front-squat", "row" };
    assert_string_equal(word_nearest("sqaut", lifts, 4), "squat");
    assert_string_equal(word_nearest("front-sqat", lifts, 4), "front-squat");
    assert_string_equal(word_nearest("frnt-sqat", lifts, 4), "front-squat"); /* two off a long word */
    assert_null(word_nearest("sqat-", lifts, 4));                            /* two off a short one: sqat- to squat */
    assert_null(word_nearest("deadlift", lifts, 4));
    assert_null(word_nearest("r", lifts, 4));
    assert_null(word_nearest("squat", lifts, 0));
    char longer[200];
    memset(longer, 'a', sizeof longer - 1);
    longer[sizeof longer - 1] = 0;
    assert_null(word_nearest(longer, lifts, 4));
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(distances), cmocka_unit_test(the_nearest) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
