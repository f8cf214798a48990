/* Monotony and strain. The first week is the reference's worked one (section 9); its figures to ten digits, and the
 * other weeks, were worked out with bc -l from the definitions, sd with n - 1. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "calc/strain.h"

struct example {
    int daily[7];             /* hundredths */
    int load, mean, monotony; /* hundredths */
    int strain;
    int64_t monotony_digits, strain_digits; /* 1e-10, cut off; 0: not asked */
};

static const struct example examples[] = {
    /* 267.857142..., 0.945352449986..., 1772.535843724072... */
    { { 42000, 0, 60000, 0, 63000, 22500, 0 }, 187500, 26786, 95, 1773, INT64_C(9453524499), INT64_C(17725358437240) },
    /* 301.428571..., 40.2972239912..., 85027.1426214642... */
    { { 30000, 31000, 29000, 30500, 29500, 30000, 31000 }, 211000, 30143, 4030, 85027, INT64_C(402972239912), 0 },
    /* one session: 68.571428..., 0.377964473009... = 1/sqrt(7), 181.4229470444... */
    { { 0, 0, 0, 0, 0, 0, 48000 }, 48000, 6857, 38, 181, INT64_C(3779644730), INT64_C(1814229470444) },
    /* 278.607142..., 1.134714812500..., 2212.9775630799... */
    { { 41250, 38000, 0, 45525, 0, 61250, 9000 }, 195025, 27861, 113, 2213, INT64_C(11347148125), 0 },
    /* 0.0714285..., 0.377964..., 0.188982... */
    { { 50, 0, 0, 0, 0, 0, 0 }, 50, 7, 38, 0, INT64_C(3779644730), INT64_C(1889822365) },
    /* a tie: sum 21, mean 3, sd 2, monotony 3/2, strain 31.5 */
    { { 0, 100, 200, 400, 400, 500, 500 }, 2100, 300, 150, 32, INT64_C(15000000000), INT64_C(315000000000) },
};

static struct dec hundredths(int64_t count)
{
    return (struct dec){ count * (DEC_ONE / 100) };
}

static struct strain strain_of(const int daily[7])
{
    struct dec loads[7];
    for (int i = 0; i < 7; i++)
        loads[i] = hundredths(daily[i]);
    return strain_of_week(loads);
}

static void assert_digits(struct ratio squared, int64_t digits)
{
    struct ratio low = ratio_make(digits, DEC_ONE), high = ratio_make(digits + 1, DEC_ONE);
    assert_true(ratio_cmp(ratio_mul(low, low), squared) <= 0);
    assert_true(ratio_cmp(squared, ratio_mul(high, high)) < 0);
}

static void weeks_worked_out_elsewhere(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
        const struct example *row = &examples[i];
        struct strain week = strain_of(row->daily);
        assert_true(week.has_monotony);
        assert_int_equal(week.load.e10, hundredths(row->load).e10);
        assert_int_equal(week.mean.e10, hundredths(row->mean).e10);
        assert_int_equal(week.monotony.e10, hundredths(row->monotony).e10);
        assert_int_equal(week.strain.e10, dec_int(row->strain).e10);
        assert_digits(week.monotony_squared, row->monotony_digits);
        struct ratio load = ratio_dec(week.load);
        if (row->strain_digits)
            assert_digits(ratio_mul(ratio_mul(load, load), week.monotony_squared), row->strain_digits);
    }
}

static void alike_days_have_no_monotony(void **state)
{
    (void)state;
    static const int weeks[][7] = { { 0 }, { 33333, 33333, 33333, 33333, 33333, 33333, 33333 } };
    for (int i = 0; i < 2; i++) {
        struct strain week = strain_of(weeks[i]);
        assert_false(week.has_monotony);
        assert_int_equal(week.load.e10, hundredths(7 * weeks[i][0]).e10);
        assert_int_equal(week.mean.e10, hundredths(weeks[i][0]).e10);
        assert_int_equal(week.monotony.e10, 0);
        assert_int_equal(week.strain.e10, 0);
        assert_int_equal(ratio_cmp(week.monotony_squared, ratio_int(0)), 0);
    }
}

/* 1e6 on six days and 1e6 - 1 on one: monotony 2645750.93, strain 1.85e13 (bc). */
static void the_heaviest_week_is_held(void **state)
{
    (void)state;
    static const int million = 100000000;
    const int daily[7] = { million, million - 100, million, million, million, million, million };
    struct strain week = strain_of(daily);
    assert_int_equal(week.load.e10, dec_int(6999999).e10);
    assert_int_equal(week.monotony.e10, dec_int(1000000).e10);
    assert_int_equal(week.strain.e10, dec_int(100000000).e10);
    assert_digits(ratio_div(week.monotony_squared, ratio_int(INT64_C(1000000000000))), INT64_C(26457509331));
}

int main(void)
{
    static const struct CMUnitTest tests[] = {
        cmocka_unit_test(weeks_worked_out_elsewhere),
        cmocka_unit_test(alike_days_have_no_monotony),
        cmocka_unit_test(the_heaviest_week_is_held),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
