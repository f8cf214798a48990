/* Tests from tables: one for each row, called what the row says. */
#ifndef TESTS_UNIT_TABLES_H
#define TESTS_UNIT_TABLES_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct tests {
    struct CMUnitTest at[256];
    size_t count;
};

static inline void tests_add(struct tests *tests, const struct CMUnitTest *more, size_t count)
{
    if (tests->count + count > sizeof tests->at / sizeof *tests->at) {
        fputs("too many tests for one list\n", stderr);
        exit(1);
    }
    for (size_t i = 0; i < count; i++)
        tests->at[tests->count++] = more[i];
}

#define ARRAY(of) of, sizeof(of) / sizeof *(of)

/* `holds` gets its row as the state. `says`: of the first row. */
static inline void tests_add_rows(struct tests *tests, const void *rows, const char *const *says, size_t size, size_t count,
                                  CMUnitTestFunction holds)
{
    for (size_t i = 0; i < count; i++) {
        const void *row = (const char *)rows + i * size;
        struct CMUnitTest test = { .test_func = holds };
        memcpy(&test.name, (const char *)says + i * size, sizeof test.name);
        memcpy(&test.initial_state, &row, sizeof row);
        tests_add(tests, &test, 1);
    }
}

#define EACH(rows, holds) rows, &(rows)[0].says, sizeof *(rows), sizeof(rows) / sizeof *(rows), holds

static inline int tests_run(const struct tests *tests)
{
    return _cmocka_run_group_tests("tests", tests->at, tests->count, NULL, NULL);
}

#endif
