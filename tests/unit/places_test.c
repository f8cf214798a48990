/* Lists of places by thing, in the order of adding. */
#include "base/places.h"

#include "pool.h"

static void in_order_of_adding(void **state)
{
    struct places places = { .arena = *state };
    static const char a, b;
    assert_int_equal(places_of(&places, &a, 0).at.count, 0);
    for (int i = 0; i < 100; i++)
        places_add(&places, i % 3 ? &a : &b, i % 2, i);
    struct place_list list = places_of(&places, &b, 1);
    assert_int_equal(list.at.count, 17); /* the odd multiples of 3 below 100 */
    for (int i = 0; i < list.at.count; i++)
        assert_int_equal(list.at.at[i], 3 + 6 * i);
    assert_int_equal(places_of(&places, &a, 2).at.count, 0);
    assert_int_equal(places_of(&places, NULL, 0).at.count, 0);
}

static void one_place_may_stand_twice(void **state)
{
    struct places places = { .arena = *state };
    places_add(&places, NULL, 7, 4);
    places_add(&places, NULL, 7, 4);
    assert_int_equal(places_of(&places, NULL, 7).at.count, 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(in_order_of_adding, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(one_place_may_stand_twice, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
