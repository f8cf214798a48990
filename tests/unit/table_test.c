#include "records/table.h"

#include "pool.h"

#include <string.h>

/* Notes what a form sees of each row: the cells of its two columns. */
struct seen {
    char *text;
    bool stop;
};

static bool head(struct table *table, const struct csv_row *row)
{
    table_unknown_say(table, row);
    struct seen *seen = table->owner;
    return !seen->stop;
}

static const char *cell_text(const struct table *table, const struct csv_row *row, int column)
{
    const struct csv_cell *cell = table_cell(table, row, column);
    return cell ? cell->text : "-";
}

static void row(struct table *table, const struct csv_row *row)
{
    struct seen *seen = table->owner;
    struct dec number;
    const struct csv_cell *load = table_cell(table, row, 1);
    table->misfits.count = 0;
    if (table_has_too_many(table, row))
        return;
    for (int column = 1; column >= 0; column--) /* found in another order than they stand */
        if (table_cell(table, row, column) && table_cell(table, row, column)->text[0] == '?')
            table_misfit(table, column, table_cell(table, row, column), "is a riddle", "write what you know");
    table_misfits_say(table);
    bool is_number = load && table_number(table, load->text, load->length, &number);
    seen->text = arena_format(table->arena, "%s%s=%s%s%s ", seen->text, cell_text(table, row, 0), cell_text(table, row, 1),
                              is_number ? ":" : "", is_number ? dec_text(table->arena, number) : "");
}

static const char *const names[] = { "lift", "load" };
static const struct table_form form = { .kind = KIND_ROSTER, .noun = "slate", .names = names, .count = 2,
                                        .all_names = "lift, load", .sample = "lift,load", .head = head, .row = row };

struct reading {
    struct table table;
    struct seen seen;
    bool fine;
};

static void read_bytes(struct reading *r, struct arena *arena, const char *bytes, size_t length)
{
    struct sources *sources = sources_new(arena);
    sources_add(sources, "first.block", "units kg\n", 9); /* so that a place is not the byte in the file */
    r->table = (struct table){ .arena = arena, .interner = interner_new(arena), .findings = findings_new(arena, sources),
                               .source = sources_add(sources, "slate.csv", bytes, length), .form = &form, .owner = &r->seen };
    r->seen.text = arena_format(arena, "%s", "");
    r->fine = table_read(&r->table);
}

static const struct finding *only(const struct reading *r)
{
    assert_int_equal(findings_total(r->table.findings), 1);
    return findings_sorted(r->table.findings)[0];
}

static void assert_spells(const struct reading *r, struct span at, const char *expected)
{
    assert_int_equal(at.end - at.start, strlen(expected));
    assert_memory_equal(r->table.source->text + (at.start - r->table.source->base), expected, strlen(expected));
}

struct text_row {
    const char *says, *text;
    const char *seen;                 /* "lift=load:number " of each row */
    const char *at, *message, *help; /* of the one finding; NULL: none */
};

static const struct text_row texts[] = {
    { "columns stand in any order, in small letters or large", "LOAD,Lift\n90,squat\n,bench\n", "squat=90:90 bench=- ", NULL, NULL, NULL },
    { "a comma is a decimal comma where ; splits the cells", "lift;load\nsquat;92,5\nbench;60.5\n", "squat=92,5:92.5 bench=60.5:60.5 ", NULL, NULL, NULL },
    { "and makes no number elsewhere", "lift,load\nsquat,\"92,5\"\n", "squat=92,5 ", NULL, NULL, NULL },
    { "a mark at the start is no part of the first name", "\xEF\xBB\xBFlift,load\nsquat,90\n", "squat=90:90 ", NULL, NULL, NULL },
    { "a column that stands twice is read where it stands first", "lift,load,lift\nsquat,90,bench\n", "squat=90:90 ", "lift",
      "the column lift stands here a second time", "leave one of the two out" },
    { "the nearest column is offered", "lift,laod\nsquat,90\n", "squat=- ", "laod", "a slate has no column \"laod\"", "did you mean load?" },
    { "or all of them", "lift,weather\nsquat,90\n", "squat=- ", "weather", "a slate has no column \"weather\"",
      "the columns are lift, load; take this one out or rename it" },
    { "a cell under no column", "lift,load\nsquat,90,8\nbench,60\n", "bench=60:60 ", "8", "\"8\" stands under no column",
      "the first row names 2 columns; has this row moved to the side?" },
    { "one cell that does not fit", "lift,load\nsquat,?\n", "squat=? ", "?", "\"?\" under load is a riddle", "write what you know" },
    { "two of them are one finding, at the first", "lift,load\n?a,?b\n", "?a=?b ", "?a", "2 cells of this row do not fit their columns: lift and load",
      "has the row moved to the side? \"?a\" under lift is a riddle" },
    { "an empty file", "", "", "", "this slate is empty", "write a first row that names the columns, such as lift,load" },
    { "a quote that is never closed", "lift,load\n\"squat,90\n", "", "\"", "the quote that opens here is not closed at the end of its cell",
      "put a text that holds a quote in quotes, and write the quote twice" },
    { "a letter of an older encoding", "lift,load\nst\xF6\xDF,90\n", "", "\xF6", "this letter is not UTF-8; the table is saved in an older encoding",
      "save it again and choose CSV with the encoding UTF-8" },
};

static void each_text(void **state)
{
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        const struct text_row *text = &texts[i];
        struct reading r = { 0 };
        read_bytes(&r, *state, text->text, strlen(text->text));
        print_message("%s\n", text->says);
        assert_string_equal(r.seen.text, text->seen);
        if (!text->message) {
            assert_int_equal(findings_total(r.table.findings), 0);
            assert_true(r.fine);
            continue;
        }
        assert_string_equal(only(&r)->message, text->message);
        assert_string_equal(only(&r)->help, text->help);
        assert_spells(&r, only(&r)->at, text->at);
    }
}

static void utf16_is_said_by_name(void **state)
{
    static const char marked[] = "\xFF\xFEl\0i\0f\0t\0", unmarked[] = "l\0i\0f\0t\0";
    for (int i = 0; i < 2; i++) {
        struct reading r = { 0 };
        read_bytes(&r, *state, i ? unmarked : marked, i ? sizeof unmarked : sizeof marked);
        assert_false(r.fine);
        assert_string_equal(only(&r)->message, "this table is saved as UTF-16, and setwright reads UTF-8");
    }
}

static void no_row_is_read_when_the_head_says_no(void **state)
{
    struct reading r = { .seen = { .stop = true } };
    read_bytes(&r, *state, "lift,load\nsquat,90\n", 19);
    assert_string_equal(r.seen.text, "");
    assert_true(r.table.broken);
}

/* "é" as one letter and as e with an accent (Unicode Standard Annex 15). */
static void names_are_composed(void **state)
{
    struct table table = { .arena = *state, .interner = interner_new(*state) };
    const struct csv_cell one = { "ren\xC3\xA9", 5, 0, 5 }, two = { "rene\xCC\x81", 6, 0, 6 };
    assert_ptr_equal(table_name(&table, &one), table_name(&table, &two));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(each_text, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(utf16_is_said_by_name, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(no_row_is_read_when_the_head_says_no, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(names_are_composed, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
