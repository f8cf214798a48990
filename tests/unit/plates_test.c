#include "calc/plates.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { MOST_KINDS = 6, MOST_WAYS = 4096, MOST_SIDE = 64 };

static int arena_setup(void **state)
{
    static jmp_buf out_of_memory;
    *state = arena_new(&out_of_memory);
    return *state ? 0 : -1;
}

static int arena_teardown(void **state)
{
    arena_free(*state);
    return 0;
}

/* hundredths of a kilogram or a pound */
static struct weight kg(int64_t hundredths)
{
    return (struct weight){ hundredths * (DEC_ONE / 100) };
}

static struct weight lb(int64_t hundredths)
{
    return (struct weight){ hundredths * (LB_IN_E10 / 100) };
}

static struct ratio exact_kg(int64_t num, int64_t den)
{
    return ratio_make((wide)num * DEC_ONE, den);
}

static struct ladder bar_with(struct arena *arena, struct weight bar, struct weight collar, const struct disc *discs,
                              int count)
{
    struct ladder ladder;
    assert_true(ladder_bar(arena, bar, collar, discs, count, &ladder));
    return ladder;
}

static void assert_side(const struct ladder *ladder, struct weight load, int count, const struct weight *expected)
{
    struct weight side[MOST_SIDE];
    assert_int_equal(ladder_side(ladder, load, side, MOST_SIDE), count);
    for (int i = 0; i < count; i++)
        assert_int_equal(side[i].e10, expected[i].e10);
}

/* The oracle: every way to load one side, tried one by one. */

struct way {
    int64_t sum;
    int discs;
    int pairs[MOST_KINDS]; /* heaviest kind first */
};

static int way_cmp(const void *a, const void *b)
{
    const struct way *left = a, *right = b;
    if (left->sum != right->sum)
        return left->sum < right->sum ? -1 : 1;
    if (left->discs != right->discs)
        return left->discs - right->discs;
    for (int i = 0; i < MOST_KINDS; i++)
        if (left->pairs[i] != right->pairs[i])
            return right->pairs[i] - left->pairs[i];
    return 0;
}

static int heavier_first(const void *a, const void *b)
{
    const struct disc *left = a, *right = b;
    return (right->weight.e10 > left->weight.e10) - (right->weight.e10 < left->weight.e10);
}

static int ways_try_all(const struct disc *kinds, int count, struct way *ways)
{
    struct way way = { 0 };
    int made = 0;
    for (;;) {
        ways[made++] = way;
        int kind = 0;
        while (kind < count && way.pairs[kind] == kinds[kind].count / 2) {
            way.sum -= way.pairs[kind] * kinds[kind].weight.e10;
            way.discs -= way.pairs[kind];
            way.pairs[kind++] = 0;
        }
        if (kind == count)
            return made;
        way.pairs[kind]++;
        way.discs++;
        way.sum += kinds[kind].weight.e10;
    }
}

static void assert_way(const struct ladder *ladder, struct weight load, const struct way *way, const struct disc *kinds)
{
    struct weight expected[MOST_SIDE];
    int made = 0;
    for (int kind = 0; kind < MOST_KINDS; kind++)
        for (int i = 0; i < way->pairs[kind]; i++)
            expected[made++] = kinds[kind].weight;
    assert_side(ladder, load, way->discs, expected);
}

/* The ladder holds each sum once, in order, and nothing else; each by the best of its ways. */
static void assert_as_tried(struct arena *arena, struct disc *kinds, int count, struct weight bar, struct weight collar)
{
    static struct way ways[MOST_WAYS];
    struct ladder ladder = bar_with(arena, bar, collar, kinds, count);
    qsort(kinds, (size_t)count, sizeof *kinds, heavier_first);
    int tried = ways_try_all(kinds, count, ways), distinct = 0;
    qsort(ways, (size_t)tried, sizeof *ways, way_cmp);
    for (int i = 0; i < tried; i++) {
        if (i && ways[i].sum == ways[i - 1].sum)
            continue;
        assert_true(distinct < ladder.count);
        struct weight load = ladder.at[distinct++];
        assert_int_equal(load.e10, bar.e10 + 2 * (collar.e10 + ways[i].sum));
        assert_way(&ladder, load, &ways[i], kinds);
    }
    assert_int_equal(distinct, ladder.count);
}

static uint32_t random_below(uint64_t *seed, uint32_t below)
{
    *seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (uint32_t)(*seed >> 33) % below;
}

/* Discs in kg and in lb: the common and fractional sets, and odd ones that break greedy loading. */
static struct weight random_disc(uint64_t *seed)
{
    static const int kilos[] = { 2500, 2000, 1500, 1000, 500, 250, 125, 100, 50, 25, 300, 700, 1100 };
    static const int pounds[] = { 4500, 3500, 2500, 1000, 500, 250, 125 };
    uint32_t pick = random_below(seed, 20);
    return pick < 13 ? kg(kilos[pick]) : lb(pounds[pick - 13]);
}

static int random_inventory(uint64_t *seed, struct disc *kinds)
{
    int count = 0, wanted = (int)random_below(seed, MOST_KINDS + 1);
    while (count < wanted) {
        struct disc disc = { random_disc(seed), (int)random_below(seed, 8) }; /* up to 3 pairs and one over */
        bool known = false;
        for (int i = 0; i < count; i++)
            known |= kinds[i].weight.e10 == disc.weight.e10;
        if (!known)
            kinds[count++] = disc;
    }
    return count;
}

static void test_against_trying_all(void **state)
{
    uint64_t seed = 20270104;
    for (int round = 0; round < 3000; round++) {
        struct disc kinds[MOST_KINDS];
        int count = random_inventory(&seed, kinds);
        arena_reset(*state);
        assert_as_tried(*state, kinds, count, round % 2 ? kg(2000) : lb(4500), round % 3 ? kg(0) : kg(250));
    }
}

/* Many pairs of few kinds: 31 pairs, so that heaps of 1, 2, 4, 8, 16 all count. */
static void test_many_pairs_against_trying_all(void **state)
{
    struct disc kinds[] = { { kg(1000), 63 }, { kg(2500), 20 }, { kg(1500), 11 } };
    assert_as_tried(*state, kinds, 3, kg(2000), kg(0));
    struct disc equal_steps[] = { { kg(100), 40 }, { kg(200), 26 }, { kg(300), 14 } };
    assert_as_tried(*state, equal_steps, 3, kg(2000), kg(0));
}

/* Greedy loading fails here (worked out by a shortest-path search outside the project): 60 lb a side is 35+25 and not
 * 45+10+5; 40 kg a side without 15s is 20+20 and not 25+10+5; 30 a side of one 25 and two 15s is 15+15. */
static void test_where_greedy_fails(void **state)
{
    const struct disc pounds[] = { { lb(4500), 8 }, { lb(3500), 8 }, { lb(2500), 8 },
                                   { lb(1000), 8 }, { lb(500), 8 },  { lb(250), 8 } };
    struct ladder ladder = bar_with(*state, lb(4500), kg(0), pounds, 6);
    assert_side(&ladder, lb(16500), 2, (const struct weight[]){ lb(3500), lb(2500) });

    const struct disc no_15[] = { { kg(2500), 8 }, { kg(2000), 8 }, { kg(1000), 8 },
                                  { kg(500), 8 },  { kg(250), 8 },  { kg(125), 8 } };
    ladder = bar_with(*state, kg(2000), kg(0), no_15, 6);
    assert_side(&ladder, kg(10000), 2, (const struct weight[]){ kg(2000), kg(2000) });

    const struct disc scarce[] = { { kg(2500), 2 }, { kg(1500), 4 } };
    ladder = bar_with(*state, kg(2000), kg(0), scarce, 2);
    assert_side(&ladder, kg(8000), 2, (const struct weight[]){ kg(1500), kg(1500) });
    assert_int_equal(ladder.count, 6); /* 0 15 25 30 40 55 a side */
}

/* Fewest discs first, then the heaviest: 50 a side is 25+25 and 30+20 alike, so 30+20. */
static void test_heaviest_first_among_equals(void **state)
{
    const struct disc discs[] = { { kg(2000), 2 }, { kg(2500), 4 }, { kg(3000), 2 } };
    struct ladder ladder = bar_with(*state, kg(2000), kg(0), discs, 3);
    assert_side(&ladder, kg(12000), 2, (const struct weight[]){ kg(3000), kg(2000) });
    assert_side(&ladder, kg(11000), 2, (const struct weight[]){ kg(2500), kg(2000) });
}

/* Bar and collars weigh 25 kg together (IPF Technical Rules, equipment); the smallest step is twice the smallest disc:
 * 2.5 kg, 5 lb, 0.5 kg with 0.25 kg discs (rules and common practice). */
static void test_competition_set(void **state)
{
    const struct disc discs[] = { { kg(2500), 10 }, { kg(2000), 2 }, { kg(1500), 2 }, { kg(1000), 2 },
                                  { kg(500), 2 },   { kg(250), 2 },  { kg(125), 2 },  { kg(25), 2 } };
    struct ladder ladder = bar_with(*state, kg(2000), kg(250), discs, 7);
    assert_int_equal(ladder.at[0].e10, kg(2500).e10);
    assert_int_equal(ladder.empty.e10, kg(2500).e10);
    assert_int_equal(ladder_smallest_step(&ladder).e10, kg(250).e10);
    assert_side(&ladder, kg(2500), 0, NULL);
    /* 182.5 - 25 = 157.5, that is 78.75 a side */
    assert_side(&ladder, kg(18250), 5, (const struct weight[]){ kg(2500), kg(2500), kg(2500), kg(250), kg(125) });
    ladder = bar_with(*state, kg(2000), kg(250), discs, 8);
    assert_int_equal(ladder_smallest_step(&ladder).e10, kg(50).e10);

    const struct disc pounds[] = { { lb(4500), 8 }, { lb(2500), 2 }, { lb(1000), 4 }, { lb(500), 2 }, { lb(250), 2 } };
    ladder = bar_with(*state, lb(4500), kg(0), pounds, 5);
    assert_int_equal(ladder_smallest_step(&ladder).e10, lb(500).e10);
}

/* bc: 20+2*45*0.45359237 = 60.82331330; 20+2*(45*0.45359237+10) = 80.82331330 */
static void test_pounds_on_a_kilogram_bar(void **state)
{
    const struct disc discs[] = { { lb(4500), 2 }, { kg(1000), 2 } };
    struct ladder ladder = bar_with(*state, kg(2000), kg(0), discs, 2);
    assert_int_equal(ladder.count, 4);
    assert_int_equal(ladder.at[0].e10, INT64_C(200000000000));
    assert_int_equal(ladder.at[1].e10, INT64_C(400000000000));
    assert_int_equal(ladder.at[2].e10, INT64_C(608233133000));
    assert_int_equal(ladder.at[3].e10, INT64_C(808233133000));
    assert_side(&ladder, ladder.at[3], 2, (const struct weight[]){ lb(4500), kg(1000) });
}

static void test_single_discs_make_no_pair(void **state)
{
    const struct disc odd[] = { { kg(2000), 3 }, { kg(1000), 1 } };
    struct ladder ladder = bar_with(*state, kg(2000), kg(0), odd, 2);
    assert_int_equal(ladder.count, 2);
    assert_int_equal(ladder.at[1].e10, kg(6000).e10);

    const struct disc twice[] = { { kg(2000), 1 }, { kg(1000), 0 }, { kg(2000), 1 } };
    ladder = bar_with(*state, kg(2000), kg(0), twice, 3);
    assert_int_equal(ladder.count, 2);
    assert_side(&ladder, kg(6000), 1, (const struct weight[]){ kg(2000) });
}

static void test_bar_without_discs(void **state)
{
    struct ladder ladder = bar_with(*state, kg(2000), kg(250), NULL, 0);
    assert_int_equal(ladder.count, 1);
    assert_int_equal(ladder_round(&ladder, exact_kg(100, 1), ROUND_NEAREST).e10, kg(2500).e10);
    assert_int_equal(ladder_above(&ladder, kg(2500)).e10, kg(2500).e10);
    assert_int_equal(ladder_smallest_step(&ladder).e10, 0);
    assert_side(&ladder, kg(2500), 0, NULL);
}

static void test_side_of_other_loads(void **state)
{
    const struct disc discs[] = { { kg(2000), 4 }, { kg(1000), 2 } };
    struct ladder bar = bar_with(*state, kg(2000), kg(0), discs, 2), steps = ladder_steps(kg(250), kg(250)), stack;
    const struct ladder_range range = { kg(500), kg(12000), kg(500) };
    struct weight side[2] = { { 0 }, { 0 } };

    assert_int_equal(ladder_side(&bar, kg(2100), side, 2), -1);
    assert_int_equal(ladder_side(&bar, kg(1900), side, 2), -1);
    assert_int_equal(ladder_side(&bar, kg(12100), side, 2), -1);
    assert_int_equal(ladder_side(&steps, kg(250), side, 2), -1);
    assert_true(ladder_ranges(*state, &range, 1, &stack));
    assert_int_equal(ladder_side(&stack, kg(500), side, 2), -1);

    assert_int_equal(ladder_side(&bar, kg(12000), side, 1), 3); /* more than there is room for */
    assert_int_equal(side[0].e10, kg(2000).e10);
    assert_int_equal(side[1].e10, 0);
}

/* 2^20 loads are the most; 21 doublings, a thousand kinds of discs, or tonnes beyond a weight's range are refused. */
static void test_limits(void **state)
{
    struct disc doubling[21];
    struct ladder ladder;
    for (int i = 0; i < 21; i++)
        doubling[i] = (struct disc){ kg(INT64_C(1) << i), 2 };
    assert_true(ladder_bar(*state, kg(2000), kg(0), doubling, 20, &ladder));
    assert_int_equal(ladder.count, LADDER_MOST);
    assert_side(&ladder, kg(2000 + 2 * 5), 2, (const struct weight[]){ kg(4), kg(1) });
    arena_reset(*state);
    assert_false(ladder_bar(*state, kg(2000), kg(0), doubling, 21, &ladder));
    arena_reset(*state);

    static struct disc many[1400];
    for (int i = 0; i < 1400; i++)
        many[i] = (struct disc){ { i + 1 }, 2 };
    assert_false(ladder_bar(*state, kg(2000), kg(0), many, 1400, &ladder));
    arena_reset(*state);

    const struct disc countless[] = { { { 1 }, 2000000000 }, { { 1 }, 2000000000 } };
    const struct disc heavy = { kg(INT64_C(50000000000)), 2 }, tonnes = { kg(INT64_C(40000000000)), 2 };
    assert_false(ladder_bar(*state, kg(2000), kg(0), countless, 2, &ladder));
    assert_false(ladder_bar(*state, kg(2000), kg(0), &heavy, 1, &ladder));
    assert_false(ladder_bar(*state, kg(2000), kg(INT64_C(80000000000)), NULL, 0, &ladder));
    assert_true(ladder_bar(*state, kg(2000), kg(0), &tonnes, 1, &ladder));
}

/* Rows: an exact load num/den kg and what each rounding makes of it, in hundredths of a kg. */
struct rounded {
    int num, den, nearest, down, up;
};

static void assert_rounded(const struct ladder *ladder, const struct rounded *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct ratio load = exact_kg(rows[i].num, rows[i].den);
        assert_int_equal(ladder_round(ladder, load, ROUND_NEAREST).e10, kg(rows[i].nearest).e10);
        assert_int_equal(ladder_round(ladder, load, ROUND_DOWN).e10, kg(rows[i].down).e10);
        assert_int_equal(ladder_round(ladder, load, ROUND_UP).e10, kg(rows[i].up).e10);
    }
}

/* nearest ties go down; below the first the first, above the last the last */
static void test_round_on_a_bar(void **state)
{
    const struct disc discs[] = { { kg(2000), 2 }, { kg(500), 2 }, { kg(250), 2 } };
    struct ladder ladder = bar_with(*state, kg(2000), kg(0), discs, 3); /* 20 25 30 35 60 65 70 75 */
    static const struct rounded rows[] = {
        { 30, 1, 3000, 3000, 3000 },
        { 65, 2, 3000, 3000, 3500 },
        { 65001, 2000, 3500, 3000, 3500 },
        { 95, 2, 3500, 3500, 6000 },
        { 100, 3, 3500, 3000, 3500 },
        { 97, 3, 3000, 3000, 3500 },
        { 47500001, 1000000, 6000, 3500, 6000 },
        { 5, 1, 2000, 2000, 2000 },
        { 90, 1, 7500, 7500, 7500 },
        { 20, 1, 2000, 2000, 2000 },
        { 75, 1, 7500, 7500, 7500 },
        { 5999, 100, 6000, 3500, 6000 },
    };
    assert_rounded(&ladder, rows, sizeof rows / sizeof rows[0]);
    assert_int_equal(ladder_above(&ladder, kg(3500)).e10, kg(6000).e10);
    assert_int_equal(ladder_above(&ladder, kg(3600)).e10, kg(6000).e10);
    assert_int_equal(ladder_above(&ladder, kg(100)).e10, kg(2000).e10);
    assert_int_equal(ladder_above(&ladder, kg(7500)).e10, kg(7500).e10);
    assert_int_equal(ladder_above(&ladder, kg(8000)).e10, kg(8000).e10);
    assert_int_equal(ladder_smallest_step(&ladder).e10, kg(500).e10);
}

static void test_round_without_end(void **state)
{
    (void)state;
    struct ladder ladder = ladder_steps(kg(2000), kg(250));
    static const struct rounded rows[] = {
        { 85, 4, 2000, 2000, 2250 },     { 8501, 400, 2250, 2000, 2250 }, { 90, 4, 2250, 2250, 2250 },
        { 0, 1, 2000, 2000, 2000 },      { -7, 1, 2000, 2000, 2000 },     { 1000001, 10000, 10000, 10000, 10250 },
        { 307, 3, 10250, 10000, 10250 },
    };
    assert_rounded(&ladder, rows, sizeof rows / sizeof rows[0]);
    assert_int_equal(ladder_above(&ladder, kg(2000)).e10, kg(2250).e10);
    assert_int_equal(ladder_above(&ladder, kg(2100)).e10, kg(2250).e10);
    assert_int_equal(ladder_above(&ladder, kg(0)).e10, kg(2000).e10);
    assert_int_equal(ladder_smallest_step(&ladder).e10, kg(250).e10);

    /* bodyweight lifts: what is added or taken off counts from below zero as well */
    struct ladder from_below = ladder_steps(kg(-5000), kg(250));
    static const struct rounded below[] = { { -31, 10, -250, -500, -250 }, { -15, 4, -500, -500, -250 } };
    assert_rounded(&from_below, below, sizeof below / sizeof below[0]);
    struct ratio hair_under = ratio_sub(exact_kg(-5, 2), ratio_make(1, 3));
    assert_int_equal(ladder_round(&from_below, hair_under, ROUND_DOWN).e10, kg(-500).e10);
}

/* a load that no weight can hold gives the last one that can */
static void test_round_beyond_the_range(void **state)
{
    (void)state;
    struct ladder ladder = ladder_steps(kg(0), kg(250));
    struct ratio most = exact_kg(900000000, 1), beyond = exact_kg(INT64_C(90000000000), 1);
    assert_int_equal(ladder_round(&ladder, beyond, ROUND_UP).e10, ladder_round(&ladder, most, ROUND_DOWN).e10);
    assert_int_equal(ladder_round(&ladder, beyond, ROUND_NEAREST).e10, kg(INT64_C(90000000000)).e10);
}

/* dumbbells 2.5 to 20 step 2.5 kg, 24 to 40 step 4 kg; stack pulldown 7 to 91 step 7 kg */
static void test_ranges(void **state)
{
    const struct ladder_range dumbbells[] = { { kg(2400), kg(4000), kg(400) }, { kg(250), kg(2000), kg(250) } };
    static const int expected[] = { 250, 500, 750, 1000, 1250, 1500, 1750, 2000, 2400, 2800, 3200, 3600, 4000 };
    struct ladder ladder;
    assert_true(ladder_ranges(*state, dumbbells, 2, &ladder));
    assert_int_equal(ladder.count, 13);
    for (int i = 0; i < 13; i++)
        assert_int_equal(ladder.at[i].e10, kg(expected[i]).e10);
    assert_int_equal(ladder.first.e10, kg(250).e10);
    assert_int_equal(ladder_smallest_step(&ladder).e10, kg(250).e10);
    static const struct rounded rows[] = { { 22, 1, 2000, 2000, 2400 },
                                           { 2201, 100, 2400, 2000, 2400 },
                                           { 1, 1, 250, 250, 250 },
                                           { 44, 1, 4000, 4000, 4000 } };
    assert_rounded(&ladder, rows, sizeof rows / sizeof rows[0]);

    const struct ladder_range pulldown = { kg(700), kg(9100), kg(700) };
    assert_true(ladder_ranges(*state, &pulldown, 1, &ladder));
    assert_int_equal(ladder.count, 13);
    assert_int_equal(ladder.at[12].e10, kg(9100).e10);
}

/* 5 10 15 20 and 10 12 14: a load in both stands once, and a last one that no step meets is left out */
static void test_ranges_that_overlap(void **state)
{
    const struct ladder_range ranges[] = { { kg(500), kg(2000), kg(500) },
                                           { kg(1000), kg(1500), kg(200) },
                                           { kg(1400), kg(1400), kg(100) } };
    static const int expected[] = { 500, 1000, 1200, 1400, 1500, 2000 };
    struct ladder ladder;
    assert_true(ladder_ranges(*state, ranges, 3, &ladder));
    assert_int_equal(ladder.count, 6);
    for (int i = 0; i < 6; i++)
        assert_int_equal(ladder.at[i].e10, kg(expected[i]).e10);
}

static void test_ranges_too_long(void **state)
{
    struct ladder ladder;
    const struct ladder_range most = { { 1 }, { LADDER_MOST }, { 1 } },
                              one_more = { { 1 }, { LADDER_MOST + 1 }, { 1 } };
    const struct ladder_range half = { { 1 }, { LADDER_MOST / 2 }, { 1 } }, again[] = { half, half, half };
    const struct ladder_range together[] = { most, { { LADDER_MOST + 5 }, { LADDER_MOST + 5 }, { 1 } } };
    const struct ladder_range far = { kg(INT64_C(80000000000)), kg(INT64_C(85000000000)), kg(INT64_C(80000000000)) };
    const struct ladder_range endless = { { 1 }, kg(INT64_C(85000000000)), { 1 } };
    assert_true(ladder_ranges(*state, &most, 1, &ladder));
    assert_int_equal(ladder.count, LADDER_MOST);
    assert_false(ladder_ranges(*state, &one_more, 1, &ladder));
    assert_false(ladder_ranges(*state, together, 2, &ladder));
    assert_true(ladder_ranges(*state, again, 2, &ladder));
    assert_int_equal(ladder.count, LADDER_MOST / 2);
    assert_false(ladder_ranges(*state, again, 3, &ladder)); /* however few they are, they are sorted together */
    assert_false(ladder_ranges(*state, &endless, 1, &ladder));
    assert_true(ladder_ranges(*state, &far, 1, &ladder));
    assert_int_equal(ladder.count, 1);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, arena_setup, arena_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(test_against_trying_all),
        TEST(test_many_pairs_against_trying_all),
        TEST(test_where_greedy_fails),
        TEST(test_heaviest_first_among_equals),
        TEST(test_competition_set),
        TEST(test_pounds_on_a_kilogram_bar),
        TEST(test_single_discs_make_no_pair),
        TEST(test_bar_without_discs),
        TEST(test_side_of_other_loads),
        TEST(test_limits),
        TEST(test_round_on_a_bar),
        TEST(test_round_without_end),
        TEST(test_round_beyond_the_range),
        TEST(test_ranges),
        TEST(test_ranges_that_overlap),
        TEST(test_ranges_too_long),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
