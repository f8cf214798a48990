/* Numbers for things: in order of asking, the same for the same, whatever the table's size. */
#include "base/numbers.h"

#include "pool.h"

enum { MANY = 10000 };

static void in_order_of_asking(void **state)
{
    struct numbers numbers = { .arena = *state };
    static const char things[3];
    assert_int_equal(numbers_known(&numbers, &things[0], 0), -1);
    assert_int_equal(numbers_give(&numbers, &things[2], 0), 0);
    assert_int_equal(numbers_give(&numbers, &things[0], 0), 1);
    assert_int_equal(numbers_give(&numbers, &things[2], 0), 0);
    assert_int_equal(numbers_known(&numbers, &things[0], 0), 1);
    assert_int_equal(numbers_known(&numbers, &things[1], 0), -1);
    assert_int_equal(numbers.count, 2);
}

static void what_stands_beside_counts(void **state)
{
    struct numbers numbers = { .arena = *state };
    static const char thing;
    assert_int_equal(numbers_give(&numbers, &thing, 7), 0);
    assert_int_equal(numbers_give(&numbers, &thing, UINT64_C(7) << 32), 1);
    assert_int_equal(numbers_give(&numbers, NULL, 7), 2);
    assert_int_equal(numbers_give(&numbers, NULL, 0), 3); /* nothing at all is a thing too */
    assert_int_equal(numbers_give(&numbers, &thing, 7), 0);
    assert_int_equal(numbers_known(&numbers, NULL, UINT64_C(7) << 32), -1);
}

static void they_stay_as_the_table_grows(void **state)
{
    struct numbers numbers = { .arena = *state };
    int *things = NEW_MANY(*state, int, MANY);
    for (int i = 0; i < MANY; i++)
        assert_int_equal(numbers_give(&numbers, &things[i], (uint64_t)i % 3), i);
    for (int i = 0; i < MANY; i++)
        assert_int_equal(numbers_known(&numbers, &things[i], (uint64_t)i % 3), i);
    assert_int_equal(numbers.count, MANY);
    assert_true(2 * numbers.count <= numbers.room);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(in_order_of_asking, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(what_stands_beside_counts, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(they_stay_as_the_table_grows, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
