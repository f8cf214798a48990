#include "reading_roster.h"

static void assert_number(bool has, struct dec number, const char *expected)
{
    char text[24];
    assert_true(has);
    dec_write(text, number);
    assert_string_equal(text, expected);
}

static void assert_finding(struct reading *r, int index, const char *spelt, const char *message, const char *help)
{
    assert_true(index < findings_total(r->findings));
    const struct finding *finding = findings_sorted(r->findings)[index];
    assert_int_equal(finding->kind, KIND_ROSTER);
    assert_string_equal(finding->message, message);
    assert_spells(r, finding->at, spelt);
    if (help)
        assert_string_equal(finding->help, help);
    else
        assert_non_null(finding->help);
}

static void a_full_row(void **state)
{
    struct reading r =
        read_text(*state, "athlete,title,group,gym,bodyweight,lift,max,unit,reps,rpe,date\n"
                          "ines,\"Corrado, \"\"Ines\"\"\",novices,boathouse,61.8,bench,57.5,kg,5,8,2026-12-02\n");
    assert_int_equal(findings_total(r.findings), 0);
    assert_int_equal(r.roster.row_count, 1);
    const struct roster_row *row = r.rows[0];
    assert_string_equal(row->athlete.text, "ines");
    assert_string_equal(row->title.text, "Corrado, \"Ines\"");
    assert_string_equal(row->group.text, "novices");
    assert_string_equal(row->gym.text, "boathouse");
    assert_string_equal(row->lift.text, "bench");
    assert_number(row->has_bodyweight, row->bodyweight, "61.8");
    assert_number(row->has_max, row->max, "57.5");
    assert_number(row->has_reps, row->reps, "5");
    assert_number(row->has_rpe, row->rpe, "8");
    assert_true(row->has_unit);
    assert_int_equal(row->unit, UNIT_KG);
    char date[11];
    date_write(date, row->date);
    assert_string_equal(date, "2026-12-02");
    assert_ptr_equal(row->lift.text, intern(r.interner, "bench", 5));
    assert_spells(&r, row->lift.at, "bench");
    assert_spells(&r, row->title.at, "\"Corrado, \"\"Ines\"\"\"");
    assert_spells(&r, row->max_at, "57.5");
    assert_spells(&r, row->date_at, "2026-12-02");
}

/* Written as a spreadsheet under a German locale saves it: mark, semicolons, decimal commas, CRLF. */
static void semicolons_and_decimal_commas(void **state)
{
    struct reading r = read_text(*state, "\xEF\xBB\xBF"
                                         "Lift;Athlete;Max;Unit;Bodyweight\r\n"
                                         "squat;ines;132,5;kg;61,8\r\n"
                                         "squat;piotr;225;lb;\r\n"
                                         ";;;;\r\n");
    assert_int_equal(findings_total(r.findings), 0);
    assert_int_equal(r.roster.row_count, 2);
    assert_number(r.rows[0]->has_max, r.rows[0]->max, "132.5");
    assert_number(r.rows[0]->has_bodyweight, r.rows[0]->bodyweight, "61.8");
    assert_spells(&r, r.rows[0]->max_at, "132,5");
    assert_int_equal(r.rows[1]->unit, UNIT_LB);
    assert_false(r.rows[1]->has_bodyweight);
    assert_false(r.rows[0]->has_reps || r.rows[0]->has_rpe || date_is_set(r.rows[0]->date));
}

/* "é" as one letter and as e with an accent (Unicode Standard Annex 15). */
static void names_are_compared_composed(void **state)
{
    struct reading r = read_text(*state, "athlete,title\nren\xC3\xA9,a\nrene\xCC\x81,b\n");
    assert_int_equal(r.roster.row_count, 2);
    assert_string_equal(r.rows[0]->athlete.text, r.rows[1]->athlete.text);
    assert_string_equal(r.rows[1]->athlete.text, "ren\xC3\xA9");
}

static void another_encoding_is_one_finding(void **state)
{
    static const char utf16[] = "\xFF\xFE"
                                "a\0t\0h\0l\0e\0t\0e\0\n\0i\0n\0e\0s\0\n";
    struct reading r = read_bytes(*state, utf16, sizeof utf16);
    assert_int_equal(findings_total(r.findings), 1);
    assert_finding(&r, 0, "\xFF", "this table is saved as UTF-16, and setwright reads UTF-8",
                   "save it again and choose CSV with the encoding UTF-8");
    struct reading unmarked = read_bytes(*state, utf16 + 2, sizeof utf16 - 2);
    assert_int_equal(findings_total(unmarked.findings), 1);
    struct reading latin = read_text(*state, "athlete,title\nines,Ines\nrene,Ren\xE9\n");
    assert_int_equal(findings_total(latin.findings), 1);
    assert_finding(&latin, 0, "\xE9", "this letter is not UTF-8; the table is saved in an older encoding", NULL);
    assert_int_equal(r.roster.row_count + unmarked.roster.row_count + latin.roster.row_count, 0);
}

static void columns_are_named_rightly(void **state)
{
    struct reading r = read_text(*state, "athlete,bodywieght,mobile,lift,max,lift\nines,61.8,1,squat,120,bench\n");
    assert_int_equal(findings_total(r.findings), 3);
    assert_finding(&r, 0, "bodywieght", "a roster has no column \"bodywieght\"", "did you mean bodyweight?");
    assert_finding(
        &r, 1, "mobile", "a roster has no column \"mobile\"",
        "the columns are athlete, title, group, gym, bodyweight, lift, max, unit, reps, rpe, date; take this "
        "one out or rename it");
    assert_finding(&r, 2, "lift", "the column lift stands here a second time", "leave one of the two out");
    assert_spells(&r, findings_sorted(r.findings)[2]->related->at, "lift");
    assert_int_equal(r.roster.row_count, 1);
    struct reading letter = read_text(*state, "athlete,nax\n");
    assert_finding(&letter, 0, "nax", "a roster has no column \"nax\"", "did you mean max?");
    struct reading nameless = read_text(*state, "lift,max\nsquat,120\nbench,x\n");
    assert_int_equal(findings_total(nameless.findings), 1);
    assert_finding(&nameless, 0, "lift,max", "the first row names no column athlete", NULL);
    assert_int_equal(nameless.roster.row_count, 0);
}

static void cells_that_do_not_fit(void **state)
{
    static const struct {
        const char *row, *spelt, *message, *help;
    } rows[] = {
        { "ines,,squat,a lot,kg,,,", "a lot", "\"a lot\" under max is not a number",
          "write a number, such as 72.5, or leave the cell empty" },
        { "ines,,squat,\"72,5\",kg,,,", "\"72,5\"", "\"72,5\" under max is not a number",
          "write a point for the decimals: 72.5" },
        { "ines,60 kg,squat,72.5,kg,,,", "60 kg", "\"60 kg\" under bodyweight is not a number",
          "write the number alone, such as 72.5; kg or lb go into the column unit" },
        { "ines,,squat,72.5,st,,,", "st", "\"st\" under unit is neither kg nor lb",
          "write kg or lb, or leave the cell empty for the file's own unit" },
        { "ines,,squat,72.5,kg,,,4.1.2027", "4.1.2027", "\"4.1.2027\" under date is not a date",
          "write year, month and day with dashes: 2027-01-04 is the fourth of January" },
        { "ines,,squat,72.5,kg,,,2027-02-29", "2027-02-29", "\"2027-02-29\" under date is not a date", NULL },
        { ",,squat,72.5,kg,,,", ",,squat,72.5,kg,,,", "this row names no athlete",
          "write the athlete's name under athlete, in every row" },
        { "ines,,,72.5,kg,,,", "72.5", "a max without a lift", "write under lift what the max is of" },
        { "ines,,squat,,kg,5,,", "5", "repetitions without a load", "write under max the load they were done with" },
        { "ines,,squat,,kg,,8,", "8", "an effort without a load", "write under max the load it was rated at" },
        { "ines,,squat,90,kg,,8,", "8", "an effort without repetitions",
          "write under reps how many were done; a tested max needs no effort" },
        { "ines,,squat,90,kg,,,2027-01-04,late", "late", "\"late\" stands under no column",
          "the first row names 8 columns; has this row moved to the side?" },
        { "ines,squat,120,kg,5,8,,", "squat", "4 cells of this row do not fit their columns: bodyweight, lift, max and unit",
          "has the row moved to the side? \"squat\" under bodyweight is not a number" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const char *text = arena_format(
            *state, "athlete,bodyweight,lift,max,unit,reps,rpe,date\n%s\npiotr,,squat,140,,,,\n", rows[i].row);
        struct reading r = read_text(*state, text);
        assert_int_equal(findings_total(r.findings), 1);
        assert_finding(&r, 0, rows[i].spelt, rows[i].message, rows[i].help);
        assert_int_equal(r.roster.row_count, 1);
    }
}

static void short_rows_and_empty_columns_are_fine(void **state)
{
    struct reading r = read_text(*state, "athlete,lift,max,,\nines\npiotr,squat,140,,\n");
    assert_int_equal(findings_total(r.findings), 0);
    assert_int_equal(r.roster.row_count, 2);
    assert_null(r.rows[0]->lift.text);
    assert_false(r.rows[0]->has_max);
}

static void a_table_that_breaks_off(void **state)
{
    struct reading open = read_text(*state, "athlete,title\nines,Ines\npiotr,\"Piotr\n");
    assert_int_equal(findings_total(open.findings), 1);
    assert_spells(&open, findings_sorted(open.findings)[0]->at, "\""); /* the sentence is base/csv's */
    assert_int_equal(open.roster.row_count, 1);
    struct reading empty = read_text(*state, "");
    assert_int_equal(findings_total(empty.findings), 1);
    assert_finding(&empty, 0, "", "this roster is empty", NULL);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_full_row),
        TEST(semicolons_and_decimal_commas),
        TEST(names_are_compared_composed),
        TEST(another_encoding_is_one_finding),
        TEST(columns_are_named_rightly),
        TEST(cells_that_do_not_fit),
        TEST(short_rows_and_empty_columns_are_fine),
        TEST(a_table_that_breaks_off),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
