#include "records/filled.h"

#include "pool.h"

#include <string.h>

#define HEAD "athlete,block,week,date,day,seq,lift,sets,reps_low,reps_high,load,unit,done_load,done_reps,done_rpe\n"
#define SEMI "athlete;block;week;date;day;seq;lift;sets;reps_low;reps_high;load;unit;done_load;done_reps;done_rpe\n"
#define ROW "ines,winter,1,2027-01-04,A,3,squat,4,5,5,90,kg,"

struct reading {
    struct arena *arena;
    struct findings *findings;
    struct source *source;
    struct filled filled;
};

static struct reading read_text(struct arena *arena, const char *text)
{
    struct reading r = { .arena = arena };
    struct sources *sources = sources_new(arena);
    sources_add(sources, "first.block", "units kg\n", 9); /* so that a place is not the byte in the file */
    r.findings = findings_new(arena, sources);
    r.source = sources_add(sources, "sheet.csv", text, strlen(text));
    r.filled = filled_read(arena, interner_new(arena), r.source, r.findings);
    return r;
}

static const char *list_text(struct arena *arena, struct filled_list list)
{
    const char *text = "";
    for (int i = 0; i < list.count; i++)
        text = arena_format(arena, "%s%s%s%s", text, i ? " " : "", dec_text(arena, list.at[i].number),
                            list.at[i].unit ? (char[]){ list.at[i].unit, 0 } : "");
    return text;
}

/* "load/reps/rpe" of each row that was kept, "-" for one in which nothing is filled. */
static const char *seen(struct reading *r)
{
    const char *text = "";
    for (int i = 0; i < r->filled.count; i++) {
        const struct filled_row *row = &r->filled.rows[i];
        const char *all = arena_format(r->arena, "%s/%s/%s", list_text(r->arena, row->loads), list_text(r->arena, row->reps),
                                       list_text(r->arena, row->efforts));
        text = arena_format(r->arena, "%s%s%s", text, *text ? "  " : "", row->is_filled ? all : "-");
    }
    return text;
}

struct text_row {
    const char *says, *text, *seen;
    const char *at, *message; /* of the one finding; NULL: none */
    const char *help;         /* words it holds */
};

#define REPS_HELP "write a whole number for all sets"
static const struct text_row texts[] = {
    { "one value for all sets", HEAD ROW "92.5,5,8\n", "92.5/5/8", NULL, NULL, NULL },
    { "a list split by spaces or ;", HEAD ROW "90 92.5,5; 5;4,7  7.5 8\n", "90 92.5/5 5 4/7 7.5 8", NULL, NULL, NULL },
    { "over lines within a cell", HEAD ROW ",\"5\n5\n4\",\n", "/5 5 4/", NULL, NULL, NULL },
    { "nothing is filled", HEAD ROW ",,\n", "-", NULL, NULL, NULL },
    { "a failed repetition", HEAD ROW ",0,\n", "/0/", NULL, NULL, NULL },
    { "help on a bodyweight lift", HEAD ROW "-15 +10,5,\n", "-15 10/5/", NULL, NULL, NULL },
    { "seconds and metres", HEAD ROW ",45 s 40s 30 m 20,\n", "/45s 40s 30m 20/", NULL, NULL, NULL },
    { "decimal commas where cells are split by ;", SEMI "ines;winter;1;2027-01-04;A;3;squat;4;5;5;92,5;kg;\"92,5; 90\";\"5 4\";\"7,5\"\n",
      "92.5 90/5 4/7.5", NULL, NULL, NULL },
    { "further columns are left alone", "mood,athlete,block,week,date,day,seq,lift,sets,reps_low,reps_high,load,unit,done_load,done_reps,done_rpe\n"
      "fine," ROW ",5,\n", "/5/", NULL, NULL, NULL },
    { "words for repetitions", HEAD ROW ",five,\n", "", "five", "\"five\" under done_reps is no number of repetitions", REPS_HELP },
    { "the word of a list", HEAD ROW ",5 five 4,\n", "", "5 five 4", "\"five\" under done_reps is no number of repetitions", REPS_HELP },
    { "half a repetition", HEAD ROW ",4.5,\n", "", "4.5", "\"4.5\" under done_reps is no number of repetitions", REPS_HELP },
    { "fewer than none", HEAD ROW ",-5,\n", "", "-5", "\"-5\" under done_reps is no number of repetitions", REPS_HELP },
    { "the last that can be", HEAD ROW ",1000,\n", "/1000/", NULL, NULL, NULL },
    { "more than can be", HEAD ROW ",1001,\n", "", "1001", "\"1001\" under done_reps is no number of repetitions", REPS_HELP },
    { "commas in a list", HEAD ROW ",\"5,5,4\",\n", "", "\"5,5,4\"", "\"5,5,4\" under done_reps is no number of repetitions", "split the sets by spaces: 5 5 4" },
    { "an rpe above ten", HEAD ROW ",5,10.5\n", "", "10.5", "\"10.5\" under done_rpe is no effort", "from 0 to 10, in halves" },
    { "the highest rpe", HEAD ROW ",5,10\n", "/5/10", NULL, NULL, NULL },
    { "an rpe in quarters", HEAD ROW ",5,7.25\n", "", "7.25", "\"7.25\" under done_rpe is no effort", "from 0 to 10, in halves" },
    { "a unit behind a load", HEAD ROW "90 kg,5,\n", "", "90 kg", "\"kg\" under done_load is no load", "write the number alone" },
    { "a load alone", HEAD ROW "90,,\n", "", "90", "a load without repetitions", "0 for a failed repetition" },
    { "an effort alone", HEAD ROW ",,8\n", "", "8", "an effort without repetitions", "0 for a failed repetition" },
    { "a row that has moved to the side", HEAD "winter,1,2027-01-04,A,3,squat,4,5,5,90,kg,,5,,\n", "", "2027-01-04",
      "4 cells of this row do not fit their columns: week, date, seq and load", "has the row moved to the side? \"2027-01-04\" under week is not a whole number" },
    { "to the other side", HEAD "," ROW "5,8\n", "", "winter", "6 cells of this row do not fit their columns: week, date, seq, sets, unit and done_load", NULL },
    { "what stands under no column", HEAD ROW ",5,8,x\n", "", "x", "\"x\" stands under no column", "moved to the side" },
    { "a date in another form", HEAD "ines,winter,1,04.01.2027,A,3,squat,4,5,5,90,kg,,5,\n", "", "04.01.2027", "\"04.01.2027\" under date is not a date", "that format in the spreadsheet" },
    { "which nobody needs in a row that is not filled", HEAD "ines,winter,1,04.01.2027,A,3,squat,4,5,5,90,kg,,,\n", "", NULL, NULL, NULL },
    { "a cell of the plan that was emptied", HEAD "ines,winter,1,2027-01-04,,3,squat,4,5,5,90,kg,,5,\n", "", "ines,winter,1,2027-01-04,,3,squat,4,5,5,90,kg,,5,",
      "in this row the cell under day is empty", "leave it as it was printed" },
    { "a total below the table", HEAD "sum,,,,,,,,,,90,,,,\n", "", NULL, NULL, NULL },
    { "one column is missing", "athlete,block,week,date,day,seq,lift,sets,reps_low,reps_high,load,unit,done_load,done_rpe\nines\n", "",
      "athlete,block,week,date,day,seq,lift,sets,reps_low,reps_high,load,unit,done_load,done_rpe", "the first row names no column done_reps", "leave the first row as it is" },
    { "or has another name", "athlete,block,week,date,day,seq,lift,sets,reps_low,reps_high,load,unit,done_load,done_rep,done_rpe\nines\n", "", "done_rep",
      "the first row names no column done_reps", "is \"done_rep\" meant? rename it to done_reps" },
    { "several are missing", "athlete,lift,max\n", "", "athlete,lift,max",
      "the first row names no columns block, week, date, day, seq, sets, reps_low, reps_high, load, unit, done_load, done_reps, done_rpe", NULL },
};

static void each_text(void **state)
{
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        const struct text_row *text = &texts[i];
        struct reading r = read_text(*state, text->text);
        print_message("%s\n", text->says);
        assert_string_equal(seen(&r), text->seen);
        assert_int_equal(findings_total(r.findings), text->message != NULL);
        if (!text->message)
            continue;
        const struct finding *finding = findings_sorted(r.findings)[0];
        assert_int_equal(finding->kind, KIND_SHEET);
        assert_string_equal(finding->message, text->message);
        assert_int_equal(finding->at.end - finding->at.start, strlen(text->at));
        assert_memory_equal(r.source->text + (finding->at.start - r.source->base), text->at, strlen(text->at));
        assert_non_null(strstr(finding->help, text->help ? text->help : ""));
    }
}

static void a_row_with_two_bad_cells_of_what_was_done_has_two_findings(void **state)
{
    struct reading r = read_text(*state, HEAD ROW "heavy,five,8\n");
    assert_int_equal(findings_total(r.findings), 2);
    assert_string_equal(findings_sorted(r.findings)[0]->message, "\"heavy\" under done_load is no load");
    assert_string_equal(findings_sorted(r.findings)[1]->message, "\"five\" under done_reps is no number of repetitions");
}

static void cells_are_kept_as_written(void **state)
{
    struct reading r = read_text(*state, SEMI "ines;winter;01;2027-01-04;A;3;squat;4;5;5;92,50;kg;;5;\n");
    const struct filled_row *row = &r.filled.rows[0];
    assert_int_equal(r.filled.count, 1);
    assert_int_equal(row->week, 1);
    assert_int_equal(row->seq, 3);
    assert_string_equal(date_text(*state, row->date), "2027-01-04");
    assert_string_equal(row->cells[FILLED_LOAD].text, "92,50");
    assert_string_equal(filled_column_name(FILLED_LOAD), "load");
    assert_int_equal(row->cells[FILLED_DONE_LOAD].at.start, row->cells[FILLED_DONE_LOAD].at.end);
    assert_true(filled_same(row, FILLED_LOAD, "92.5"));
    assert_false(filled_same(row, FILLED_LOAD, "92"));
    assert_false(filled_same(row, FILLED_LOAD, "-92.5"));
    assert_false(filled_same(row, FILLED_LOAD, ""));
    assert_true(filled_same(row, FILLED_DONE_LOAD, ""));
    assert_false(filled_same(row, FILLED_DONE_LOAD, "0"));
    assert_true(filled_same(row, FILLED_LIFT, "squat"));
    assert_false(filled_same(row, FILLED_LIFT, "squats"));
    assert_false(filled_same(row, FILLED_LIFT, "squa"));
}

static void blanks_count_for_nothing_where_cells_are_compared(void **state)
{
    struct reading r = read_text(*state, HEAD "ines,winter,1,,A,3,plank,3,45s,45  s,-2.50,kg,,45,\n");
    assert_true(filled_same(&r.filled.rows[0], FILLED_REPS_LOW, "45 s"));
    assert_true(filled_same(&r.filled.rows[0], FILLED_REPS_HIGH, "45 s"));
    assert_false(filled_same(&r.filled.rows[0], FILLED_REPS_LOW, "45 m"));
    assert_true(filled_same(&r.filled.rows[0], FILLED_LOAD, "-2.5"));
    assert_false(date_is_set(r.filled.rows[0].date));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(each_text, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_row_with_two_bad_cells_of_what_was_done_has_two_findings, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(cells_are_kept_as_written, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(blanks_count_for_nothing_where_cells_are_compared, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
