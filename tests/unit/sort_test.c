/* base/sort.h against qsort of the C library. */
#include "base/sort.h"

#include "tables.h"

#include <string.h>

enum { NUMBERS_MOST = 200 };

static int looks;

static int by_number(const void *a, const void *b)
{
    int one = *(const int *)a, other = *(const int *)b;
    looks++;
    return (one > other) - (one < other);
}

static void sorts_as_qsort_does(void **state)
{
    (void)state;
    unsigned random = 1;
    for (int count = 0; count < NUMBERS_MOST; count++) {
        int numbers[NUMBERS_MOST] = { 0 }, expected[NUMBERS_MOST];
        for (int i = 0; i < count; i++)
            numbers[i] = (int)((random = random * 1103515245 + 12345) >> 16 & 0xff);
        memcpy(expected, numbers, sizeof expected);
        qsort(expected, (size_t)count, sizeof *expected, by_number);
        sort_unless_sorted(numbers, count, sizeof *numbers, by_number);
        assert_memory_equal(numbers, expected, sizeof expected);
    }
}

static void one_look_is_enough_for_a_sorted_list(void **state)
{
    (void)state;
    int numbers[] = { 1, 2, 2, 3, 5, 8 };
    looks = 0;
    sort_unless_sorted(numbers, 6, sizeof *numbers, by_number);
    assert_int_equal(looks, 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sorts_as_qsort_does),
        cmocka_unit_test(one_look_is_enough_for_a_sorted_list),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
