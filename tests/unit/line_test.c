/* Least squares. Norris: NIST Statistical Reference Datasets, linear regression, certified values to 15 digits;
 * Anscombe 1973 (The American Statistician 27(1):17-21), whose four sets share one line; and an invented
 * load-velocity line whose fit is a fraction (regression_oracles.csv of the reference, worked out exactly). */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#include "calc/line.h"

#define COUNT(array) ((int)(sizeof(array) / sizeof *(array)))

static void assert_near(double found, double expected, double relative)
{
    if (!(fabs(found - expected) <= relative * fabs(expected)))
        fail_msg("%.15g instead of %.15g", found, expected);
}

static void norris_to_its_certified_digits(void **state)
{
    (void)state;
    static const double x[] = { 0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                                0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                                0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5 };
    static const double y[] = { 0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                                0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                                0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2 };
    struct line line;
    assert_int_equal(COUNT(x), 36);
    assert_int_equal(COUNT(y), 36);
    assert_true(line_fit(&line, x, y, COUNT(x)));
    assert_near(line.intercept, -0.262323073774029, 1e-12);
    assert_near(line.slope, 1.00211681802045, 1e-13);
    assert_near(line.residual_sd, 0.884796396144373, 1e-12);
    assert_near(line.r2, 0.999993745883712, 1e-14);
    assert_int_equal(line.count, 36);
}

static void anscombe_s_four_sets_share_a_line(void **state)
{
    (void)state;
    static const double x123[] = { 10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5 };
    static const double x4[] = { 8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8 };
    static const struct {
        const double *x;
        double y[11], r2;
    } sets[] = {
        { x123, { 8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68 }, 0.6665 },
        { x123, { 9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74 }, 0.6662 },
        { x123, { 7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73 }, 0.6663 },
        { x4, { 6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89 }, 0.6667 },
    };
    for (int i = 0; i < COUNT(sets); i++) {
        struct line line;
        assert_true(line_fit(&line, sets[i].x, sets[i].y, 11));
        assert_int_equal(llround(line.intercept * 100), 300);
        assert_int_equal(llround(line.slope * 1000), 500);
        assert_int_equal(llround(line.r2 * 1e4), llround(sets[i].r2 * 1e4));
    }
}

static const double loads[] = { 70, 90, 110, 130, 140 };
static const double speeds[] = { 0.95, 0.78, 0.59, 0.43, 0.33 };

static void which_regression_is_meant_matters(void **state)
{
    (void)state;
    struct line line;
    assert_true(line_fit(&line, loads, speeds, 5));
    assert_near(line.intercept, 2573.0 / 1640, 1e-13);
    assert_near(line.slope, -1447.0 / 164000, 1e-13);
    assert_near(line.r2, 0.9993055768, 1e-10);
    assert_near((0.30 - line.intercept) / line.slope, 143.8147892, 1e-9);
    assert_true(line_fit(&line, speeds, loads, 5));
    assert_near(line.intercept + line.slope * 0.30, 143.7899186, 1e-9);
}

/* Far from 0 the one-pass formula, n Sxy - Sx Sy, keeps no digit: the squares are 1e18, the differences 1. */
static void a_far_origin_costs_little(void **state)
{
    (void)state;
    const double x[] = { 1e9 + 1, 1e9 + 2, 1e9 + 3, 1e9 + 4 }, y[] = { 1e9 + 2, 1e9 + 4, 1e9 + 6, 1e9 + 8 };
    struct line line;
    assert_true(line_fit(&line, x, y, 4));
    assert_near(line.slope, 2, 1e-15);
    assert_near(line.intercept, -1e9, 1e-15);
    assert_true(line.residual_sd < 1e-9);
}

static void no_line_without_three_points_or_two_places(void **state)
{
    (void)state;
    const double x[] = { 1, 1, 1 }, y[] = { 1, 2, 3 };
    struct line line;
    assert_false(line_fit(&line, y, y, 2));
    assert_true(line_fit(&line, y, y, 3));
    assert_false(line_fit(&line, x, y, 3));
    assert_true(line_fit(&line, y, x, 3));
    assert_true(line.slope == 0 && line.r2 == 0 && line.residual_sd == 0);
}

/* ---- speeds ---- */

static struct speed_point point(int percent, int hundredths)
{
    return (struct speed_point){ .share = ratio_make(percent, 100), .speed = { hundredths * (DEC_ONE / 100) } };
}

static struct dec speed_of(int thousandths)
{
    return (struct dec){ thousandths * (DEC_ONE / 1000) };
}

/* The made example with 200 kg as the max: 143.8147892 kg is a share of 0.719073946. */
static void the_share_at_a_speed(void **state)
{
    (void)state;
    const struct speed_point points[] = { point(35, 95), point(45, 78), point(55, 59), point(65, 43), point(70, 33) };
    struct line line;
    struct ratio share;
    assert_true(line_of_speeds(points, COUNT(points), &line));
    assert_near(line.slope, -1447.0 / 820, 1e-13);
    assert_true(line_share_at(&line, speed_of(300), &share));
    assert_int_equal(ratio_cmp(share, ratio_make(719074, 1000000)), 0);
}

static void no_share_far_from_any_set(void **state)
{
    (void)state;
    const struct line line = { .slope = -1, .intercept = 1.5 };
    struct ratio share;
    assert_true(line_share_at(&line, speed_of(300), &share));
    assert_int_equal(ratio_cmp(share, ratio_make(6, 5)), 0);
    assert_false(line_share_at(&line, (struct dec){ 300 * (DEC_ONE / 1000) - DEC_ONE / 1000000 }, &share));
    assert_true(line_share_at(&line, speed_of(1300), &share));
    assert_int_equal(ratio_cmp(share, ratio_make(1, 5)), 0);
    assert_false(line_share_at(&line, (struct dec){ 1300 * (DEC_ONE / 1000) + DEC_ONE / 1000000 }, &share));
    assert_false(line_share_at(&line, dec_int(800000000), &share));
    assert_false(line_share_at(&(struct line){ .slope = -1e-300, .intercept = 1 }, dec_int(0), &share));
}

static bool has_line(const struct speed_point points[5], int count)
{
    struct line line;
    return line_of_speeds(points, count, &line);
}

static void a_line_of_speeds_needs_enough_to_go_by(void **state)
{
    (void)state;
    const struct speed_point enough[5] = { point(80, 50), point(70, 60), point(80, 51), point(85, 45), point(70, 61) };
    assert_true(has_line(enough, 5));
    assert_false(has_line(enough, 4));
    const struct speed_point two_shares[5] = { point(70, 60), point(85, 45), point(85, 46), point(70, 61),
                                               point(70, 59) };
    assert_false(has_line(two_shares, 5));
    const struct speed_point close[5] = { point(71, 60), point(75, 55), point(80, 50), point(85, 45), point(85, 46) };
    assert_false(has_line(close, 5));
    const struct speed_point faster[5] = { point(70, 45), point(75, 50), point(80, 55), point(85, 60), point(90, 65) };
    assert_false(has_line(faster, 5));
    const struct speed_point level[5] = { point(70, 50), point(75, 50), point(80, 50), point(85, 50), point(90, 50) };
    assert_false(has_line(level, 5));
}

int main(void)
{
    static const struct CMUnitTest tests[] = {
        cmocka_unit_test(norris_to_its_certified_digits),
        cmocka_unit_test(anscombe_s_four_sets_share_a_line),
        cmocka_unit_test(which_regression_is_meant_matters),
        cmocka_unit_test(a_far_origin_costs_little),
        cmocka_unit_test(no_line_without_three_points_or_two_places),
        cmocka_unit_test(the_share_at_a_speed),
        cmocka_unit_test(no_share_far_from_any_set),
        cmocka_unit_test(a_line_of_speeds_needs_enough_to_go_by),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
