#include "base/dec.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct dec dec_of(const char *text)
{
    struct dec dec = { 0 };
    assert_true(dec_parse(text, strlen(text), &dec));
    return dec;
}

static void assert_dec(struct dec dec, const char *text)
{
    char written[24];
    assert_int_equal(dec_write(written, dec), strlen(text));
    assert_string_equal(written, text);
}

static void written_numbers_are_read_exactly(void **state)
{
    (void)state;
    assert_int_equal(dec_of("2.5").e10, INT64_C(25000000000));
    assert_int_equal(dec_of("0.0000000001").e10, 1);
    assert_int_equal(dec_of("007").e10, 7 * DEC_ONE);
    assert_int_equal(dec_of("899999999.9999999999").e10, INT64_C(8999999999999999999));
    static const char *const wrong[] = { "",
                                         ".",
                                         "5.",
                                         ".5",
                                         "1.2.3",
                                         "-1",
                                         "+1",
                                         "1e3",
                                         "2,5",
                                         " 1",
                                         "1 ",
                                         "0x10",
                                         "nan",
                                         "inf",
                                         "1.00000000000",
                                         "900000000",
                                         "99999999999999999999999999",
                                         "1\xC2\xA0" };
    struct dec dec;
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
        if (dec_parse(wrong[i], strlen(wrong[i]), &dec))
            fail_msg("'%s' was read as a number", wrong[i]);
    assert_true(dec_parse("82.5%", 4, &dec)); /* only as far as it is asked */
    assert_int_equal(dec.e10, INT64_C(825000000000));
}

static void numbers_are_written_without_trailing_zeros(void **state)
{
    static const char *const texts[] = { "0",     "7",    "2.5",          "0.5",
                                         "100",   "1.25", "0.0000000001", "899999999.9999999999",
                                         "10.05", "82.5" };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        struct dec dec = dec_of(texts[i]);
        assert_dec(dec, texts[i]);
        assert_string_equal(dec_text(*state, dec), texts[i]);
    }
    assert_dec(dec_of("2.50"), "2.5");
    assert_dec((struct dec){ -7 * DEC_ONE }, "-7");
    assert_dec((struct dec){ -DEC_ONE / 4 }, "-0.25");
    assert_dec((struct dec){ INT64_MIN }, "-922337203.6854775808");
    assert_dec(dec_halves(15), "7.5");
}

static void whole_numbers_below_and_above(void **state)
{
    (void)state;
    assert_int_equal(dec_floor(dec_of("7.5")), 7);
    assert_int_equal(dec_ceil(dec_of("7.5")), 8);
    assert_int_equal(dec_ceil(dec_of("7")), 7);
    assert_int_equal(dec_floor((struct dec){ -dec_of("7.5").e10 }), -8);
    assert_int_equal(dec_ceil((struct dec){ -dec_of("7.5").e10 }), -7);
    assert_int_equal(dec_floor(dec_int(-7)), -7);
    assert_int_equal(dec_decimals(dec_of("2.50")), 1);
    assert_int_equal(dec_decimals(dec_of("3")), 0);
    assert_int_equal(dec_decimals(dec_of("0.0000000001")), 10);
    assert_true(dec_is_multiple(dec_of("7.5"), dec_of("0.5")));
    assert_false(dec_is_multiple(dec_of("7.25"), dec_of("0.5")));
}

/* 1 lb = 0.45359237 kg exactly (NIST Handbook 44, appendix C; agreement of 1959); 45 lb = 20.41165665 kg by hand. */
static void pounds_are_exact(void **state)
{
    struct arena *arena = *state;
    struct weight weight;
    assert_true(weight_from(dec_of("45"), UNIT_LB, &weight));
    assert_string_equal(weight_text(arena, weight, UNIT_KG), "20.41165665 kg");
    assert_string_equal(weight_text(arena, weight, UNIT_LB), "45 lb");
    assert_true(weight_from(dec_of("2.25"), UNIT_LB, &weight));
    assert_string_equal(weight_text(arena, weight, UNIT_LB), "2.25 lb");
    assert_false(weight_from(dec_of("2.255"), UNIT_LB, &weight));
    assert_false(weight_from(dec_int(900000000), UNIT_KG, &weight));
    assert_true(weight_from(dec_of("102.5"), UNIT_KG, &weight));
    assert_string_equal(weight_text(arena, weight, UNIT_KG), "102.5 kg");
    assert_true(weight_from(dec_of("899999999.99"), UNIT_LB, &weight));
    assert_string_equal(weight_text(arena, weight, UNIT_LB), "899999999.99 lb");
    assert_true(weight_from(dec_of("899999999"), UNIT_KG, &weight)); /* more lb than there is room for */
    assert_string_equal(weight_text(arena, weight, UNIT_LB), "900000000 lb");
}

static void a_ratio_is_in_lowest_terms(void **state)
{
    (void)state;
    struct ratio third = ratio_make(-4, -12), minus = ratio_make(6, -9), zero = ratio_make(0, -5);
    assert_true(third.num == 1 && third.den == 3);
    assert_true(minus.num == -2 && minus.den == 3);
    assert_true(zero.num == 0 && zero.den == 1);
    struct ratio dec = ratio_dec(dec_of("2.5")), same = ratio_sub(third, third);
    assert_true(dec.num == 5 && dec.den == 2);
    assert_true(same.num == 0 && same.den == 1);
    assert_int_equal(ratio_cmp(third, minus), 1);
    assert_int_equal(ratio_cmp(minus, ratio_make(-1, 2)), -1);
    assert_int_equal(ratio_cmp(third, ratio_make(2, 6)), 0);
    assert_int_equal(ratio_cmp(zero, ratio_make(0, 1)), 0);
}

static void rounding_has_three_ways(void **state)
{
    (void)state;
    const struct dec half = dec_of("0.5"), one = dec_int(1), step = dec_of("2.5");
    assert_dec(ratio_nearest(ratio_make(29, 4), half), "7.5"); /* 7.25: half away from zero */
    assert_dec(ratio_nearest(ratio_make(-29, 4), half), "-7.5");
    assert_dec(ratio_down(ratio_make(29, 4), half), "7");
    assert_dec(ratio_down(ratio_make(-29, 4), half), "-7.5");
    assert_dec(ratio_up(ratio_make(29, 4), half), "7.5");
    assert_dec(ratio_up(ratio_make(-29, 4), half), "-7");
    assert_dec(ratio_nearest(ratio_make(5, 2), one), "3");
    assert_dec(ratio_nearest(ratio_make(22, 3), one), "7");
    assert_dec(ratio_up(ratio_int(4), one), "4");
    assert_dec(ratio_down(ratio_int(4), one), "4");
    assert_dec(ratio_nearest(ratio_percent(ratio_int(120), dec_of("72.5")), step), "87.5"); /* 87 */
    assert_dec(ratio_nearest(ratio_make((wide)1 << 125, 1), one), "900000000");             /* the end of the range */
    assert_dec(ratio_nearest(ratio_make(-((wide)1 << 125), 1), one), "-900000000");
    struct weight weight = ratio_to_weight(ratio_make(5, 2));
    assert_int_equal(weight.e10, 3);
    assert_int_equal(ratio_to_weight(ratio_make(-5, 2)).e10, -3);
    assert_int_equal(ratio_to_weight(ratio_weight((struct weight){ -1234567 })).e10, -1234567);
    assert_int_equal(ratio_to_weight(ratio_make((wide)1 << 100, 3)).e10, 900000000 * DEC_ONE);
    assert_int_equal(ratio_cmp(ratio_in(ratio_weight((struct weight){ INT64_C(4535923700) }), UNIT_LB), ratio_int(1)), 0); /* agreement of 1959 */
    assert_int_equal(ratio_cmp(ratio_in(ratio_weight((struct weight){ 25 * (DEC_ONE / 10) }), UNIT_KG), ratio_make(5, 2)), 0);
    assert_int_equal(ratio_to_tenth_kg(ratio_make((wide)1025 * DEC_ONE - 1, 10)).e10, 1025 * (DEC_ONE / 10));
    assert_int_equal(ratio_to_tenth_kg(ratio_make((wide)10245 * DEC_ONE, 100)).e10, 1025 * (DEC_ONE / 10)); /* 102.45 kg */
    assert_int_equal(ratio_to_tenth_kg(ratio_make((wide)10245 * DEC_ONE - 1, 100)).e10, 1024 * (DEC_ONE / 10));
    assert_int_equal(ratio_to_tenth_kg(ratio_make((wide)-10245 * DEC_ONE, 100)).e10, -1025 * (DEC_ONE / 10));
}

static void a_ratio_is_held_against_a_written_number(void **state)
{
    (void)state;
    assert_int_equal(ratio_cmp_dec(ratio_make(19, 2), dec_of("9.5")), 0);
    assert_int_equal(ratio_cmp_dec(ratio_make(1, 3), dec_of("0.3333333333")), 1);
    assert_int_equal(ratio_cmp_dec(ratio_make(1, 3), dec_of("0.3333333334")), -1);
    assert_int_equal(ratio_cmp_dec(ratio_int(-3), dec_int(-3)), 0);
}

static void near_is_half_a_step_away(void **state)
{
    const wide long_one = ((wide)1 << 100) + 1;
    (void)state;
    assert_true(ratio_is_near(ratio_make(21, 2), 10, 1));
    assert_true(ratio_is_near(ratio_make(19, 2), 10, 1));
    assert_false(ratio_is_near(ratio_make(211, 20), 10, 1));
    assert_false(ratio_is_near(ratio_make(189, 20), 10, 1));
    assert_true(ratio_is_near(ratio_int(-3), -3, 0));
    assert_false(ratio_is_near(ratio_make(-10, 3), -3, 0));
    assert_true(ratio_is_near(ratio_make(21 * long_one - 1, 2 * long_one), 10, 1));
    assert_false(ratio_is_near(ratio_make(21 * long_one + 1, 2 * long_one), 10, 1));
    assert_true(ratio_is_near(ratio_make(19 * long_one + 1, 2 * long_one), 10, 1));
    assert_false(ratio_is_near(ratio_make(19 * long_one - 1, 2 * long_one), 10, 1));
}

/* Against bc: it is given what came out and says 0 where it is right. */

struct bc {
    char path[32];
    FILE *in;
};

static bool bc_open(struct bc *bc)
{
    if (system("command -v bc >/dev/null 2>&1") != 0)
        return false;
    strcpy(bc->path, "/tmp/dec_test.XXXXXX");
    int fd = mkstemp(bc->path);
    assert_true(fd >= 0);
    bc->in = fdopen(fd, "w");
    fputs("define g(a,b){auto t;if(a<0)a=-a;while(b!=0){t=a%b;a=b;b=t};return a}\n"
          "define f(n,d){auto q;q=n/d;if(n%d<0)q=q-1;return q}\n",
          bc->in);
    return true;
}

/* Every line that bc prints has to be 0. */
static void bc_all_zero(struct bc *bc, int expected)
{
    char command[96], line[256];
    fputs("quit\n", bc->in);
    fclose(bc->in);
    snprintf(command, sizeof command, "BC_LINE_LENGTH=0 bc -q %s 2>&1", bc->path);
    FILE *out = popen(command, "r");
    int lines = 0;
    while (fgets(line, sizeof line, out)) {
        lines++;
        if (strcmp(line, "0\n") != 0)
            fail_msg("bc, line %d of %s: %s", lines, bc->path, line);
    }
    assert_int_equal(pclose(out), 0);
    assert_int_equal(lines, expected);
    remove(bc->path);
}

static const char *wide_text(char to[48], wide a)
{
    char *at = to + 47;
    unsigned __int128 rest = a < 0 ? 0 - (unsigned __int128)a : (unsigned __int128)a;
    *at = '\0';
    do
        *--at = (char)('0' + (int)(rest % 10));
    while ((rest /= 10) != 0);
    if (a < 0)
        *--at = '-';
    return at;
}

/* Numbers that look random and are the same in every run (Knuth's MMIX constants). */
static uint64_t next_number(uint64_t *seed)
{
    *seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return *seed >> 8;
}

static wide some_wide(uint64_t *seed, int bits)
{
    int kept = (int)(next_number(seed) % (uint64_t)bits) + 1;
    uint64_t number = next_number(seed) << 8;
    return (wide)(number >> (64 - kept)) + 1;
}

static struct ratio some_ratio(uint64_t *seed)
{
    wide num = some_wide(seed, 56), den = some_wide(seed, 56);
    return ratio_make(next_number(seed) & 1 ? num : -num, den);
}

static void ratios_are_those_of_bc(void **state)
{
    (void)state;
    static struct ratio (*const operations[])(struct ratio, struct ratio) = { ratio_add, ratio_sub, ratio_mul,
                                                                              ratio_div };
    static const char *const formulas[] = { "n=a*d+c*b;e=b*d", "n=a*d-c*b;e=b*d", "n=a*c;e=b*d", "n=a*d;e=b*c" };
    struct bc bc;
    if (!bc_open(&bc))
        skip();
    uint64_t seed = 1;
    char texts[6][48];
    for (int i = 0; i < 4000; i++) {
        struct ratio a = some_ratio(&seed), b = some_ratio(&seed), c = operations[i % 4](a, b);
        assert_true(c.den > 0);
        fprintf(bc.in, "a=%s;b=%s;c=%s;d=%s;%s;r=%s;s=%s\n", wide_text(texts[0], a.num), wide_text(texts[1], a.den),
                wide_text(texts[2], b.num), wide_text(texts[3], b.den), formulas[i % 4], wide_text(texts[4], c.num),
                wide_text(texts[5], c.den));
        fputs("(n*s!=r*e)+(g(r,s)!=1)\n", bc.in);
        fprintf(bc.in, "x=a*d-c*b;(%d)-(x>0)+(x<0)\n", ratio_cmp(a, b));
    }
    bc_all_zero(&bc, 8000);
}

/* Chains that outgrow 126 bits: wrong by less than one part in 2^50, and compared exactly all the same. */
static void an_outgrown_ratio_loses_only_its_last_bits(void **state)
{
    (void)state;
    struct bc bc;
    if (!bc_open(&bc))
        skip();
    uint64_t seed = 7;
    char texts[4][48];
    for (int i = 0; i < 200; i++) {
        struct ratio a = ratio_int(100);
        fputs("n=100;e=1\n", bc.in);
        for (int step = 0; step < 8; step++) {
            wide num = ((wide)1 << 40) + some_wide(&seed, 39), den = ((wide)1 << 40) + some_wide(&seed, 39);
            struct ratio b = ratio_make(num, den);
            a = step % 2 ? ratio_mul(a, b) : ratio_add(a, b);
            fprintf(bc.in, step % 2 ? "n=n*%s;e=e*%s\n" : "n=n*%2$s+%1$s*e;e=e*%2$s\n", wide_text(texts[0], num),
                    wide_text(texts[1], den));
        }
        assert_true(a.den > 0 && a.den < (wide)1 << 126 && a.num < (wide)1 << 126);
        fprintf(bc.in, "x=n*%2$s-%1$s*e;if(x<0)x=-x;x*2^50>n*%2$s\n", wide_text(texts[2], a.num),
                wide_text(texts[3], a.den));
    }
    bc_all_zero(&bc, 200);
}

/* Parts of up to 120 bits: sums and differences wrong by less than one part in 2^40 of the larger side. */
static void long_ratios_are_those_of_bc(void **state)
{
    (void)state;
    struct bc bc;
    if (!bc_open(&bc))
        skip();
    uint64_t seed = 11;
    char texts[6][48];
    for (int i = 0; i < 2000; i++) {
        wide parts[4];
        for (int part = 0; part < 4; part++)
            parts[part] = (((wide)1 << 119) + (some_wide(&seed, 60) << 58) + some_wide(&seed, 60)) >> i % 60;
        struct ratio a = ratio_make(parts[0], parts[1]), b = ratio_make(parts[2], parts[3]), c = ratio_sub(a, b);
        b.num = i % 2 ? b.num : -b.num;
        c = i % 2 ? c : ratio_sub(a, b);
        fprintf(bc.in, "a=%s;b=%s;c=%s;d=%s;r=%s;s=%s\n", wide_text(texts[0], a.num), wide_text(texts[1], a.den),
                wide_text(texts[2], b.num), wide_text(texts[3], b.den), wide_text(texts[4], c.num),
                wide_text(texts[5], c.den));
        fputs("n=a*d-c*b;x=n*s-r*b*d;if(x<0)x=-x;x*2^40>a*d*s\n", bc.in);
        fprintf(bc.in, "(%d)-(n>0)+(n<0)\n", ratio_cmp(a, b));
    }
    bc_all_zero(&bc, 4000);
}

static void a_ratio_beyond_all_stays_at_the_end(void **state)
{
    (void)state;
    const wide end = ((wide)1 << 126) - 1;
    struct ratio a = ratio_mul(ratio_make(end, 3), ratio_make(end, 5));
    assert_true(a.den == 1 && a.num == end);
    a = ratio_div(ratio_make(1, end), ratio_make(end, 7));
    assert_true(a.den == 1 && a.num == 0);
}

static void comparing_long_ratios_is_exact(void **state)
{
    (void)state;
    const wide large = ((wide)1 << 125) - 1; /* (L-1)/L < L/(L+1): they differ by 1/(L(L+1)) */
    struct ratio a = ratio_make(large - 1, large), b = ratio_make(large, large + 1);
    assert_int_equal(ratio_cmp(a, b), -1);
    assert_int_equal(ratio_cmp(b, a), 1);
    a.num = -a.num;
    b.num = -b.num;
    assert_int_equal(ratio_cmp(a, b), 1);
}

static void roundings_are_those_of_bc(void **state)
{
    (void)state;
    static const char *const grains[] = { "0.5", "1", "2.5", "0.1", "1.25", "5", "0.0000000001" };
    struct bc bc;
    if (!bc_open(&bc))
        skip();
    uint64_t seed = 3;
    char texts[2][48];
    for (int i = 0; i < 2000; i++) {
        wide den = some_wide(&seed, 30), num = (wide)(next_number(&seed) % 4000) * den + some_wide(&seed, 30) % den;
        if (i % 3 == 0) { /* exact halves */
            den = 40;
            num = (wide)(next_number(&seed) % 40000);
        }
        struct ratio a = ratio_make(i % 2 ? num : -num, den);
        struct dec grain = dec_of(grains[i % 7]);
        fprintf(bc.in, "a=%s*10^10;b=%s;g=%lld;h=a;if(h<0)h=-h;r=f(2*h+b*g,2*b*g)*g;if(a<0)r=-r\n",
                wide_text(texts[0], a.num), wide_text(texts[1], a.den), (long long)grain.e10);
        fprintf(bc.in, "(%lld-r!=0)+(%lld-f(a,b*g)*g!=0)+(%lld+f(-a,b*g)*g!=0)\n",
                (long long)ratio_nearest(a, grain).e10, (long long)ratio_down(a, grain).e10,
                (long long)ratio_up(a, grain).e10);
    }
    bc_all_zero(&bc, 2000);
}

static void pounds_are_those_of_bc(void **state)
{
    (void)state;
    struct bc bc;
    if (!bc_open(&bc))
        skip();
    uint64_t seed = 5;
    for (int i = 0; i < 1000; i++) {
        char text[24];
        struct weight weight;
        struct dec pounds = { (int64_t)(next_number(&seed) % 200000) * (DEC_ONE / 100) };
        dec_write(text, pounds);
        assert_true(weight_from(pounds, UNIT_LB, &weight));
        fprintf(bc.in, "scale=12;x=(%s*0.45359237*10^10-%lld!=0);scale=0;x\n", text, (long long)weight.e10);
        assert_int_equal(weight_in(weight, UNIT_LB).e10, pounds.e10);
        weight.e10 = (int64_t)(next_number(&seed) % 5000000) * (DEC_ONE / 10000);
        fprintf(bc.in, "%lld-f(2*%lld+45359237,2*45359237)*10^8\n", (long long)weight_in(weight, UNIT_LB).e10,
                (long long)weight.e10);
        struct weight less = { -weight.e10 };
        assert_int_equal(weight_in(less, UNIT_LB).e10, -weight_in(weight, UNIT_LB).e10);
    }
    bc_all_zero(&bc, 2000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(written_numbers_are_read_exactly),
        cmocka_unit_test(numbers_are_written_without_trailing_zeros),
        cmocka_unit_test(whole_numbers_below_and_above),
        cmocka_unit_test(pounds_are_exact),
        cmocka_unit_test(a_ratio_is_in_lowest_terms),
        cmocka_unit_test(rounding_has_three_ways),
        cmocka_unit_test(a_ratio_is_held_against_a_written_number),
        cmocka_unit_test(near_is_half_a_step_away),
        cmocka_unit_test(ratios_are_those_of_bc),
        cmocka_unit_test(an_outgrown_ratio_loses_only_its_last_bits),
        cmocka_unit_test(long_ratios_are_those_of_bc),
        cmocka_unit_test(a_ratio_beyond_all_stays_at_the_end),
        cmocka_unit_test(comparing_long_ratios_is_exact),
        cmocka_unit_test(roundings_are_those_of_bc),
        cmocka_unit_test(pounds_are_those_of_bc),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
