#include "base/arena.h"
#include "base/vec.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void memory_is_zeroed_and_aligned(void **state)
{
    struct arena *arena = *state;
    for (size_t size = 0; size < 200; size++) {
        unsigned char *at = arena_alloc(arena, size);
        assert_int_equal((uintptr_t)at % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size; i++)
            assert_int_equal(at[i], 0);
        memset(at, 0xAA, size);
    }
}

static void large_pieces_do_not_overlap(void **state)
{
    struct arena *arena = *state;
    unsigned char *pieces[60];
    for (int i = 0; i < 60; i++) {
        pieces[i] = arena_alloc(arena, (size_t)(i * 7919 % 200000 + 1));
        memset(pieces[i], i + 1, (size_t)(i * 7919 % 200000 + 1));
    }
    for (int i = 0; i < 60; i++)
        for (int at = 0; at < i * 7919 % 200000 + 1; at++)
            assert_int_equal(pieces[i][at], i + 1);
}

/* Pools come and go, and the next one gets memory that is full of the last one's. */
static void memory_that_was_used_is_zeroed(void **state)
{
    enum { SIZE = 60000 };
    jmp_buf here;
    (void)state;
    for (int turn = 0; turn < 2; turn++) {
        struct arena *arena = arena_new(&here);
        unsigned char *bytes = arena_alloc(arena, SIZE);
        for (int i = 0; i < SIZE; i++)
            assert_int_equal(bytes[i], 0);
        memset(bytes, 0xdd, SIZE);
        arena_free(arena);
    }
}

static void reset_reuses_and_zeroes_again(void **state)
{
    struct arena *arena = *state;
    void *first = arena_alloc(arena, 100);
    memset(first, 0xFF, 100);
    memset(arena_alloc(arena, 300000), 0xFF, 300000);
    assert_int_equal(arena_size(arena), 300100);
    arena_reset(arena);
    assert_int_equal(arena_size(arena), 0);
    unsigned char *again = arena_alloc(arena, 100);
    assert_ptr_equal(again, first);
    assert_int_equal(again[99], 0);
    unsigned char *large = arena_alloc(arena, 300000);
    for (int i = 0; i < 300000; i++)
        assert_int_equal(large[i], 0);
}

/* From some megabytes on the memory comes in pages of 2 MiB, for one large piece at once; twice over, as a pool after another. */
static void much_memory_is_zeroed_and_kept_apart(void **state)
{
    enum { PIECES = 60, PIECE = 200 * 1024, LARGE = 5 * 1024 * 1024 };
    jmp_buf here;
    (void)state;
    for (int turn = 0; turn < 2; turn++) {
        struct arena *arena = arena_new(&here);
        for (int again = 0; again < 2; again++) {
            unsigned char *pieces[PIECES];
            for (int i = 0; i < PIECES; i++) {
                size_t size = i == 7 || i == 50 ? LARGE : PIECE;
                pieces[i] = arena_alloc(arena, size);
                assert_int_equal((uintptr_t)pieces[i] % _Alignof(max_align_t), 0);
                for (size_t at = 0; at < size; at += 97)
                    assert_int_equal(pieces[i][at], 0);
                assert_int_equal(pieces[i][size - 1], 0);
                memset(pieces[i], i + 1, size);
            }
            for (int i = 0; i < PIECES; i++)
                assert_true(pieces[i][0] == i + 1 && pieces[i][PIECE - 1] == i + 1);
            arena_reset(arena);
        }
        arena_free(arena);
    }
}

static void no_memory_jumps(void **state)
{
    jmp_buf here;
    (void)state;
    struct arena *volatile arena = arena_new(&here);
    volatile int jumped = 0;
    switch (setjmp(here)) {
    case 0:
        arena_alloc(arena, SIZE_MAX - 3);
        break;
    default:
        jumped = 1;
    }
    assert_true(jumped);
    arena_free(arena);
    arena_free(NULL);
}

/* Pools with 1000 bytes between them. */
static void a_bound_is_shared(void **state)
{
    jmp_buf here;
    (void)state;
    static struct budget budget = { 1000, 2000 }; /* static: setjmp keeps no others */
    static volatile int jumps;
    struct arena *volatile one = arena_new(&here), *volatile other = arena_new(&here);
    arena_share(one, &budget);
    arena_share(other, &budget);
    if (setjmp(here) == ARENA_BOUND)
        jumps = jumps + 1;
    switch (jumps) {
    case 0:
        arena_alloc(one, 600);
        arena_alloc(other, 400);
        assert_int_equal(budget.memory, 0);
        arena_alloc(other, 1);
        break;
    case 1:
        arena_reset(one);
        assert_int_equal(budget.memory, 600);
        arena_alloc(other, 600);
        arena_alloc(one, 1);
        break;
    default:
        arena_free(other);
        assert_int_equal(budget.memory, 1000);
        arena_free(one);
        assert_int_equal(budget.memory, 1000);
        return;
    }
    fail_msg("more was handed out than there is");
}

static void work_is_bounded_too(void **state)
{
    jmp_buf here;
    (void)state;
    static struct budget budget = { 1000, 2000 };
    static volatile int jumps;
    struct arena *volatile one = arena_new(&here);
    arena_work(one, UINT64_MAX); /* without a bound */
    arena_search(one, INT32_MAX);
    arena_allow(one, 1);
    arena_share(one, &budget);
    if (setjmp(here) == ARENA_WORK)
        jumps = jumps + 1;
    else
        arena_work(one, 1500);
    if (jumps == 0)
        arena_work(one, 501);
    if (jumps == 1) {
        arena_alloc(one, 400);
        arena_reset(one);
        arena_alloc(one, 101);
        arena_reset(one); /* memory comes back, work does not */
    }
    assert_int_equal(jumps, 2);
    assert_int_equal(budget.work, 100);
    arena_allow(one, 900);
    arena_search(one, 100);
    arena_search(one, 101);
    arena_work(one, 488);
    assert_int_equal(budget.work, 0);
    arena_free(one);
}

struct ended {
    int *order, *counter;
};

static void note_end(void *of)
{
    struct ended *ended = of;
    *ended->order = ++*ended->counter;
}

static void what_lives_outside_ends_with_the_pool(void **state)
{
    int counter = 0, first = 0, last = 0;
    struct arena *arena = *state;
    struct ended *one = NEW(arena, struct ended), *two = NEW(arena, struct ended);
    *one = (struct ended){ &first, &counter };
    *two = (struct ended){ &last, &counter };
    arena_ends(arena, note_end, one);
    arena_ends(arena, note_end, two);
    arena_reset(arena);
    assert_int_equal(last, 1);
    assert_int_equal(first, 2);
    arena_reset(arena);
    assert_int_equal(counter, 2);
}

static void texts_are_copied_and_formatted(void **state)
{
    struct arena *arena = *state;
    assert_string_equal(arena_copy(arena, "squat and more", 5), "squat");
    assert_string_equal(arena_copy(arena, NULL, 0), "");
    assert_memory_equal(arena_copy(arena, "a\0b", 3), "a\0b", 4);
    assert_string_equal(arena_format(arena, "week %d of %s", 3, "winter-base"), "week 3 of winter-base");
    char *text = arena_format(arena, "%0500d", 1);
    assert_int_equal(strlen(text), 500);
}

static void equal_names_are_one_pointer(void **state)
{
    struct interner *names = interner_new(*state);
    char word[] = "squat!";
    const char *squat = intern(names, "squat", 5);
    assert_ptr_equal(intern(names, word, 5), squat);
    assert_ptr_not_equal(intern(names, word, 6), squat);
    assert_ptr_not_equal(intern(names, "Squat", 5), squat);
    assert_ptr_not_equal(intern(names, "a\0b", 3), intern(names, "a\0c", 3));
    assert_string_equal(intern(names, "", 0), "");
    assert_ptr_equal(intern(names, "x", 0), intern(names, "", 0));
}

static void names_keep_their_pointer_when_the_table_grows(void **state)
{
    struct interner *names = interner_new(*state);
    const char **first = NEW_MANY((struct arena *)*state, const char *, 5000);
    char name[16];
    for (int i = 0; i < 5000; i++)
        first[i] = intern(names, name, (size_t)snprintf(name, sizeof name, "lift-%d", i));
    for (int i = 0; i < 5000; i++) {
        assert_ptr_equal(intern(names, name, (size_t)snprintf(name, sizeof name, "lift-%d", i)), first[i]);
        assert_string_equal(first[i], name);
    }
}

static void one_within_another_is_reset_alone(void **state)
{
    struct arena *owner = arena_new(NULL), *inner = arena_within(owner);
    (void)state;
    char *kept = arena_copy(owner, "kept", 4), *first = arena_copy(inner, "dropped", 7);
    arena_reset(inner);
    assert_string_equal(kept, "kept");
    assert_int_equal(arena_size(owner), 5);
    assert_ptr_equal(arena_copy(inner, "again", 5), first);
    assert_non_null(arena_within(owner));
    arena_free(owner); /* the sanitizers tell whether the inner ones went with it */
}

static void a_vec_keeps_what_was_added(void **state)
{
    VEC(int) numbers = { 0 };
    for (int i = 0; i < 1000; i++)
        vec_add((struct arena *)*state, &numbers, i * i);
    assert_int_equal(numbers.count, 1000);
    for (int i = 0; i < 1000; i++)
        assert_int_equal(numbers.at[i], i * i);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(memory_is_zeroed_and_aligned),
        cmocka_unit_test(memory_that_was_used_is_zeroed),
        cmocka_unit_test(large_pieces_do_not_overlap),
        cmocka_unit_test_setup_teardown(reset_reuses_and_zeroes_again, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(much_memory_is_zeroed_and_kept_apart, pool_setup, pool_teardown),
        cmocka_unit_test(no_memory_jumps),
        cmocka_unit_test(a_bound_is_shared),
        cmocka_unit_test(work_is_bounded_too),
        cmocka_unit_test(what_lives_outside_ends_with_the_pool),
        cmocka_unit_test(texts_are_copied_and_formatted),
        cmocka_unit_test(equal_names_are_one_pointer),
        cmocka_unit_test(names_keep_their_pointer_when_the_table_grows),
        cmocka_unit_test(one_within_another_is_reset_alone),
        cmocka_unit_test(a_vec_keeps_what_was_added),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
