#include "base/csv.h"
#include "base/vec.h"

#include "pool.h"

#include <csv.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct seen {
    struct arena *arena;
    const char *bytes;
    VEC(char) text; /* cells as [text], rows as LINE: ... */
    int stop_after;
};

static void note(struct seen *seen, const char *text)
{
    for (; *text; text++)
        vec_add(seen->arena, &seen->text, *text);
}

static bool on_row(void *context, const struct csv_row *row)
{
    struct seen *seen = context;
    int line = 1;
    for (size_t i = 0; i < row->cells[0].start; i++)
        line += seen->bytes[i] == '\n';
    note(seen, arena_format(seen->arena, "%d:", line));
    for (int i = 0; i < row->count; i++) {
        const struct csv_cell *cell = &row->cells[i];
        assert_int_equal(strlen(cell->text), cell->length);
        note(seen, arena_format(seen->arena, "[%s|%.*s]", cell->text, (int)(cell->end - cell->start),
                                seen->bytes + cell->start));
    }
    note(seen, "\n");
    return --seen->stop_after != 0;
}

/* Rows as LINE:[cell|its bytes in the file]... */
static const struct {
    const char *bytes, *rows;
} files[] = {
    { "a,b\n1,2\n", "1:[a|a][b|b]\n2:[1|1][2|2]\n" },
    { "a,b\r\n1,2\r\n", "1:[a|a][b|b]\n2:[1|1][2|2]\n" },
    { "a,b\n1,2", "1:[a|a][b|b]\n2:[1|1][2|2]\n" },
    { "a;b\n72,5;x\n", "1:[a|a][b|b]\n2:[72,5|72,5][x|x]\n" },
    { "a,b;c\n1;2,3\n", "1:[a|a][b;c|b;c]\n2:[1;2|1;2][3|3]\n" },
    { "\"a,b,c\";d;e\n1;2;3\n", "1:[a,b,c|\"a,b,c\"][d|d][e|e]\n2:[1|1][2|2][3|3]\n" },
    { "a,\"b \"\"x\"\"\"\n", "1:[a|a][b \"x\"|\"b \"\"x\"\"\"]\n" },
    { " a , \" b \" ,c\n", "1:[a|a][b|\" b \"][c|c]\n" },
    { "a,\"one\ntwo\",c\nd,e,f\n", "1:[a|a][one\ntwo|\"one\ntwo\"][c|c]\n3:[d|d][e|e][f|f]\n" },
    { "\n\r\n  \na,b\n,,\n\n,x\n", "4:[a|a][b|b]\n7:[|][x|x]\n" },
    { "\xEF\xBB\xBF"
      "a,b\n",
      "1:[a|a][b|b]\n" },
    { "k\xC3\xBC,\n", "1:[k\xC3\xBC|k\xC3\xBC][|]\n" },
    { "", "" },
    { "\"\"\n", "" },
};

static void rows_come_with_their_bytes(void **state)
{
    for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
        struct seen seen = { .arena = *state, .bytes = files[i].bytes };
        struct csv_taker taker = { .row = on_row, .context = &seen };
        const char *why = "";
        size_t at = 0;
        assert_true(csv_read(*state, files[i].bytes, strlen(files[i].bytes), &taker, &why, &at));
        note(&seen, ".");
        vec_add(seen.arena, &seen.text, '\0');
        assert_string_equal(seen.text.at, arena_format(*state, "%s.", files[i].rows));
    }
}

/* ---- against libcsv alone, which has no lines cut for it ---- */

static void trimmed(struct seen *seen, const char *text, size_t length)
{
    while (length && (text[length - 1] == ' ' || text[length - 1] == '\t'))
        length--;
    for (; length && (*text == ' ' || *text == '\t'); length--)
        text++;
    note(seen, arena_format(seen->arena, "[%.*s]", (int)length, text));
}

static void lib_cell(void *text, size_t length, void *context)
{
    trimmed(context, text, length);
}

static void lib_row(int ended_by, void *context)
{
    (void)ended_by;
    note(context, "\n");
}

static bool plain_row(void *context, const struct csv_row *row)
{
    for (int i = 0; i < row->count; i++)
        trimmed(context, row->cells[i].text, row->cells[i].length);
    note(context, "\n");
    return true;
}

/* Without the rows that hold nothing. */
static const char *rows_of(struct seen *seen)
{
    const char *rows = "";
    vec_add(seen->arena, &seen->text, '\0');
    for (char *row = strtok(seen->text.at, "\n"); row; row = strtok(NULL, "\n"))
        if (strspn(row, "[]") < strlen(row))
            rows = arena_format(seen->arena, "%s%s\n", rows, row);
    return rows;
}

static void lines_are_cut_as_libcsv_reads_them(void **state)
{
    enum { TEXTS = 20000, LENGTH = 24 };
    static const char letters[] = { 'a', 'b', '7', ',', ',', ' ', '\t', '\n', '\n', '\r', '"', '"', '-' };
    unsigned chance = 7;
    int read = 0, refused = 0;
    for (int i = 0; i < TEXTS; i++) {
        char text[LENGTH];
        size_t length = 0, at;
        for (; length < LENGTH; length++) {
            chance = chance * 1103515245 + 12345;
            text[length] = letters[(chance >> 16) % (i % 3 ? sizeof letters : 10)]; /* every third without quotes */
        }
        arena_reset(*state);
        struct seen ours = { .arena = *state }, theirs = { .arena = *state };
        struct csv_taker taker = { .row = plain_row, .context = &ours };
        struct csv_parser parser;
        const char *why;
        assert_int_equal(csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI), 0);
        bool fine = csv_parse(&parser, text, length, lib_cell, lib_row, &theirs) == length &&
                    csv_fini(&parser, lib_cell, lib_row, &theirs) == 0;
        csv_free(&parser);
        assert_int_equal(csv_read(*state, text, length, &taker, &why, &at), fine);
        if (fine)
            assert_string_equal(rows_of(&ours), rows_of(&theirs));
        read += fine;
        refused += !fine;
    }
    assert_true(read > TEXTS / 3 && refused > TEXTS / 10);
}

static void reading_stops_when_told(void **state)
{
    struct seen seen = { .arena = *state, .bytes = "a\nb\nc\n\"", .stop_after = 2 };
    struct csv_taker taker = { .row = on_row, .context = &seen };
    const char *why;
    size_t at;
    assert_true(csv_read(*state, seen.bytes, 7, &taker, &why, &at));
    assert_int_equal(seen.text.count, strlen("1:[a|a]\n2:[b|b]\n"));
}

/* Whose line begins with 'x'. */
static bool line_with_x(void *context, size_t start, size_t end)
{
    struct seen *seen = context;
    bool taken = seen->bytes[start] == 'x';
    if (taken)
        note(seen, arena_format(seen->arena, "<%.*s>\n", (int)(end - start), seen->bytes + start));
    return taken;
}

static void lines_without_quotes_may_be_taken_whole(void **state)
{
    struct seen seen = { .arena = *state, .bytes = "a,b\nx,1\r\n\nx,\"2\"\ny,3\nx,\"\nx,4\"\nx" };
    struct csv_taker taker = { .row = on_row, .line = line_with_x, .context = &seen };
    const char *why;
    size_t at;
    assert_true(csv_read(*state, seen.bytes, strlen(seen.bytes), &taker, &why, &at));
    note(&seen, ".");
    vec_add(seen.arena, &seen.text, '\0');
    assert_string_equal(seen.text.at, "1:[a|a][b|b]\n<x,1>\n4:[x|x][2|\"2\"]\n5:[y|y][3|3]\n"
                                      "6:[x|x][\nx,4|\"\nx,4\"]\n<x>\n.");
    seen.text.count = 0;
    csv_read_again(*state, seen.bytes, 4, 9, ',', &taker);
    vec_add(seen.arena, &seen.text, '\0');
    assert_string_equal(seen.text.at, "<x,1>\n");
}

static void quotes_that_do_not_close_are_found(void **state)
{
    static const struct {
        const char *bytes;
        size_t at;
        const char *why;
    } cases[] = {
        { "a,b\n1,\"open\n2,3\n", 6, "the quote that opens here is not closed at the end of its cell" },
        { "a,b\n1, \"open\n2,\"3\"\n", 7, "the quote that opens here is not closed at the end of its cell" },
        { "a,5\" plate\n", 3, "a quote stands inside a cell" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct seen seen = { .arena = *state, .bytes = cases[i].bytes };
        struct csv_taker taker = { .row = on_row, .context = &seen };
        const char *why = "";
        size_t at = 0;
        assert_false(csv_read(*state, cases[i].bytes, strlen(cases[i].bytes), &taker, &why, &at));
        assert_int_equal(at, cases[i].at);
        assert_string_equal(why, cases[i].why);
    }
}

/* RFC 4180, section 2, rules 5 to 7; OWASP, CSV injection, for the characters that begin a formula */
static void cells_are_quoted_and_made_harmless(void **state)
{
    (void)state;
    static const struct {
        const char *text, *cell;
    } cells[] = {
        { "squat", "squat" },
        { "", "" },
        { "a,b", "\"a,b\"" },
        { "say \"up\"", "\"say \"\"up\"\"\"" },
        { "one\ntwo", "\"one\ntwo\"" },
        { "one\rtwo", "\"one\rtwo\"" },
        { "=1+1", "'=1+1" },
        { "+1", "'+1" },
        { "-1", "'-1" },
        { "@SUM(A1)", "'@SUM(A1)" },
        { "\tx", "'\tx" },
        { "\rx", "\"'\rx\"" },
        { "\nx", "\"'\nx\"" },
        { "=A1,\"x\"", "\"'=A1,\"\"x\"\"\"" },
        { "a=b", "a=b" },
        { "25+20+2.5", "25+20+2.5" },
    };
    for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) {
        char to[64];
        size_t length = csv_cell(to, cells[i].text, strlen(cells[i].text));
        assert_true(length <= 2 * strlen(cells[i].text) + 4);
        to[length] = '\0';
        assert_string_equal(to, cells[i].cell);
    }
    char to[8];
    assert_int_equal(csv_cell(to, "\0x", 2), 2); /* a NUL begins no formula */
}

static const char python[] = "python3 -c \"\n"
                             "import csv, sys\n"
                             "for row in csv.reader(open(sys.argv[1], newline='', encoding='utf-8'), strict=True):\n"
                             "    print('|'.join(cell.encode().hex() for cell in row))\n"
                             "\" ";

/* What Python's csv module reads is what was written. */
static void python_reads_the_cells_back(void **state)
{
    if (system("command -v python3 >/dev/null 2>&1") != 0)
        skip();
    struct arena *arena = *state;
    static const char *const texts[] = { "plain", "a,b", "\"",          "\"\"", "x\ny", "k\xC3\xBC\xC3\xA7",
                                         "a;b",   "",    "a\r\nb,\"c\"" };
    const int count = (int)(sizeof texts / sizeof *texts);
    char path[] = "/tmp/csv_test.XXXXXX", cell[64], line[1024], *expected = arena_copy(arena, "", 0);
    FILE *file = fdopen(mkstemp(path), "w");
    for (int i = 0; i < count; i++) {
        fwrite(cell, 1, csv_cell(cell, texts[i], strlen(texts[i])), file);
        fputs(i + 1 < count ? "," : "\n", file);
        for (const char *at = texts[i]; *at; at++)
            expected = arena_format(arena, "%s%02x", expected, (unsigned char)*at);
        expected = arena_format(arena, "%s%s", expected, i + 1 < count ? "|" : "\n");
    }
    fclose(file);
    FILE *out = popen(arena_format(arena, "%s%s", python, path), "r");
    assert_non_null(fgets(line, sizeof line, out));
    assert_string_equal(line, expected);
    assert_null(fgets(line, sizeof line, out));
    assert_int_equal(pclose(out), 0);
    remove(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_come_with_their_bytes),         cmocka_unit_test(lines_are_cut_as_libcsv_reads_them),
        cmocka_unit_test(reading_stops_when_told),
        cmocka_unit_test(lines_without_quotes_may_be_taken_whole),
        cmocka_unit_test(quotes_that_do_not_close_are_found), cmocka_unit_test(cells_are_quoted_and_made_harmless),
        cmocka_unit_test(python_reads_the_cells_back),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
