#include "emit/out.h"

#include <stdlib.h>
#include <string.h>

#include <limits.h>

#include "pool.h"
#include "sample_plan.h"

static void assert_holds(const struct out *out, const char *expected)
{
    assert_int_equal(out->used, strlen(expected));
    assert_memory_equal(out->at, expected, out->used);
}

/* Ints as printf writes them. */
static void numbers_are_written(void **state)
{
    static const int numbers[] = { 0, 7, -7, 10, 2027, INT_MAX, INT_MIN };
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        struct out out = out_scratch(*state);
        out_int(&out, numbers[i]);
        assert_holds(&out, arena_format(*state, "%d", numbers[i]));
    }
    struct out out = out_scratch(*state);
    struct weight pounds = LB(45), kilos = KG(102.5);
    out_dec(&out, (struct dec){ -25 * (DEC_ONE / 10) });
    out_char(&out, ' ');
    out_weight(&out, kilos, UNIT_KG);
    out_char(&out, ' ');
    out_weight(&out, pounds, UNIT_LB);
    assert_holds(&out, "-2.5 102.5 45");
}

static void dates_and_runs_of_characters(void **state)
{
    struct out out = out_scratch(*state);
    struct date date = { 0 };
    out_date(&out, date);
    out_chars(&out, '=', 0);
    out_chars(&out, '=', -3);
    assert_holds(&out, "");
    assert_true(date_make(2027, 1, 4, &date));
    out_date(&out, date);
    out_chars(&out, '=', 3);
    assert_holds(&out, "2027-01-04===");
    out_clear(&out);
    out_text(&out, "");
    assert_holds(&out, "");
}

/* Kept until a load is together, then handed over in one. */
static void bytes_go_out_by_the_load(void **state)
{
    struct caught caught = caught_new(*state, 4 * OUT_FULL);
    struct out out = out_new(*state, (struct sink){ .write = catch_bytes, .context = &caught });
    out_chars(&out, 'a', OUT_FULL - 1);
    assert_true(out_settle(&out));
    assert_int_equal(caught.writes, 0);
    out_chars(&out, 'b', OUT_FULL);
    assert_true(out_settle(&out));
    assert_int_equal(caught.writes, 1);
    out_char(&out, 'c');
    assert_true(out_flush(&out));
    assert_true(out_flush(&out)); /* nothing left: nothing is written */
    assert_int_equal(caught.writes, 2);
    assert_int_equal(caught.length, 2 * OUT_FULL);
    assert_int_equal(caught.text[OUT_FULL - 2], 'a');
    assert_int_equal(caught.text[OUT_FULL - 1], 'b');
    assert_int_equal(caught.text[caught.length - 1], 'c');
}

/* A sink that wants more at once gets it. */
static void a_load_may_be_larger(void **state)
{
    struct caught caught = caught_new(*state, 4 * OUT_FULL);
    struct out out = out_new(*state, (struct sink){ .write = catch_bytes, .context = &caught, .load = 2 * OUT_FULL });
    out_chars(&out, 'a', 2 * OUT_FULL - 1);
    assert_true(out_settle(&out));
    assert_int_equal(caught.writes, 0);
    out_char(&out, 'b');
    assert_true(out_settle(&out));
    assert_int_equal(caught.writes, 1);
}

static void after_a_failure_nothing_is_tried_again(void **state)
{
    struct caught caught = caught_new(*state, 3);
    struct out out = out_new(*state, (struct sink){ .write = catch_bytes, .context = &caught });
    out_text(&out, "four");
    assert_false(out_flush(&out));
    out_text(&out, "two");
    assert_false(out_flush(&out));
    assert_false(out_settle(&out));
    assert_int_equal(caught.length, 0);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

/* Four steps a byte. */
static void what_is_written_is_work(void **state)
{
    (void)state;
    static struct budget budget = { 1 << 20, 400 }; /* static: setjmp keeps no others */
    static volatile int jumps;
    jmp_buf here;
    struct arena *volatile arena = arena_new(&here);
    static struct out out;
    out = out_scratch(arena);
    static char text[256];
    static struct caught caught;
    caught = (struct caught){ .text = text, .most = sizeof text - 1 };
    out.sink = (struct sink){ .write = catch_bytes, .context = &caught };
    out_chars(&out, 'x', 100);
    arena_share(arena, &budget);
    if (setjmp(here) == ARENA_WORK)
        jumps = jumps + 1;
    else
        assert_true(out_flush(&out));
    if (!jumps) {
        assert_int_equal(budget.work, 0);
        out_char(&out, 'x');
        out_flush(&out);
    }
    assert_int_equal(jumps, 1);
    arena_free(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(numbers_are_written),
        TEST(dates_and_runs_of_characters),
        TEST(bytes_go_out_by_the_load),
        TEST(a_load_may_be_larger),
        TEST(after_a_failure_nothing_is_tried_again),
        TEST(what_is_written_is_work),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
