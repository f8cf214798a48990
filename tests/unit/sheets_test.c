#include "emit/sheet.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void every_sheet_is_found_by_its_name(void **state)
{
    (void)state;
    assert_int_equal(sheet_count(), 4);
    for (int i = 0; i < sheet_count(); i++) {
        const struct sheet *sheet = sheet_at(i);
        assert_ptr_equal(sheet_find(sheet->name), sheet);
        assert_true(strlen(sheet->says) > 10);
    }
    assert_null(sheet_find("groups"));
    assert_null(sheet_find(""));
}

/* The athlete's pages are a format's; the others have a writer, called for what the scope says. */
static void each_has_its_writer_and_scope(void **state)
{
    (void)state;
    assert_null(sheet_find("athlete")->write);
    assert_int_equal(sheet_find("athlete")->scope, SHEET_ATHLETE);
    assert_true(sheet_find("group")->write == sheet_group && sheet_find("group")->scope == SHEET_BLOCK);
    assert_true(sheet_find("coach")->write == sheet_coach && sheet_find("coach")->scope == SHEET_CLUB);
    assert_true(sheet_find("meet")->write == sheet_meet && sheet_find("meet")->scope == SHEET_MEET);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_sheet_is_found_by_its_name),
        cmocka_unit_test(each_has_its_writer_and_scope),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
