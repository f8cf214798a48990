/* The expected pages have been read as a coach would, and each load checked: 20 + 2 x (discs) is the load (awk). */
#include "caught.h"
#include "club.h"

#include "emit/sheet.h"

static const char squad[] =
    "athlete ana { title \"Ana Lind\"; gym hall; max squat 100 kg; max bench 55 kg; max press 18 kg; }\n"
    "athlete bo { title \"Bo Tarn\"; gym hall; max squat 150 kg; max bench 100 kg; max press 30 kg; }\n"
    "athlete cy { title \"Cy Holm\"; gym hall; max squat 180 kg; max bench 120 kg; max press 35 kg; }\n"
    "athlete dora { title \"Dora Weiss\"; gym hall; max squat 95 kg; max bench 52.5 kg; max press 16 kg; }\n"
    "athlete emil { title \"Emil Rask\"; gym hall; max squat 140 kg; max bench 95 kg; max press 28 kg; }\n"
    "athlete finn { title \"Finn Aalto\"; gym hall; max squat 122.5 kg; max bench 80 kg; max press 24 kg; }\n"
    "athlete greta { title \"Greta Obermeier\"; gym hall; max squat 110 kg; max bench 60 kg; max press 20 kg; }\n"
    "athlete hugo { title \"Hugo Leclerc\"; gym hall; max squat 165 kg; max bench 110 kg; max press 32 kg; max floor-press 95 kg; avoid bench use floor-press because \"left shoulder\"; }\n"
    "athlete ida { title \"Ida Brandt\"; gym hall; max squat 87.5 kg; max bench 47.5 kg; max press 15 kg; }\n"
    "athlete jan { title \"Jan Novotny\"; gym hall; max squat 200 kg; max bench 140 kg; max press 38 kg; }\n"
    "athlete kaia { title \"Kaia Sund\"; gym hall; max squat 105 kg; max bench 57.5 kg; max press 18 kg; }\n"
    "athlete lars { title \"Lars-Peter von Hohenfels\"; gym hall; max squat 130 kg; max bench 87.5 kg; max press 26 kg; }\n"
    "lift floor-press { loads bar }\n"
    "block winter {\n"
    "for all; starts 2027-01-04; weeks 2; deload week 2\n"
    "day A on mon { title \"Squat first\"; note \"Share the platform\"\n"
    "squat top 1 x 1 at rpe 7 then back-off 4 x 5 drop 15%\n"
    "bench 5 x 4 at 80%\n"
    "superset 3 rounds { press 1 x 8-12 at rpe 8 each side; pulldown 1 x 10 at 40 kg }\n"
    "sled 2 x 20 m at rpe 7 }\n"
    "day B { squat 3 x 5 at 70% }\n"
    "}\n";

static const char *const everybody[] = { "ana", "bo", "cy", "dora", "emil", "finn", "greta", "hugo", "ida", "jan", "kaia", "lars", NULL };

/* clang-format off */
static const char expected[] =
    "winter, week 1 of 2                                                         12 athletes, page 1 of 2\n"
    "Mon 4 January 2027                                                                Day A: Squat first\n"
    "Note: Share the platform\n"
    "Sets x reps, load, @ target rpe, discs a side. Warm-ups are on each athlete's own sheet.\n"
    "====================================================================================================\n"
    "                     | squat                                 | bench\n"
    "=============================================================================================\n"
    "Ana Lind             | 1 x 1   92.5 kg @7  25+10+1.25        | 5 x 4     45 kg  10+2.5\n"
    "                     | 4 x 5   77.5 kg     25+2.5+1.25       |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Bo Tarn              | 1 x 1  137.5 kg @7  25+25+5+2.5+1.25  | 5 x 4     80 kg  25+5\n"
    "                     | 4 x 5  117.5 kg     25+10+10+2.5+1.25 |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Cy Holm              | 1 x 1    165 kg @7  25+25+10+10+2.5   | 5 x 4     95 kg  25+10+2.5\n"
    "                     | 4 x 5    140 kg     25+25+10          |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Dora Weiss           | 1 x 1   87.5 kg @7  25+5+2.5+1.25     | 5 x 4   42.5 kg  10+1.25\n"
    "                     | 4 x 5     75 kg     25+2.5            |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Emil Rask            | 1 x 1  127.5 kg @7  25+25+2.5+1.25    | 5 x 4     75 kg  25+2.5\n"
    "                     | 4 x 5  107.5 kg     25+10+5+2.5+1.25  |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Finn Aalto           | 1 x 1  112.5 kg @7  25+10+10+1.25     | 5 x 4     65 kg  10+10+2.5\n"
    "                     | 4 x 5     95 kg     25+10+2.5         |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Greta Obermeier      | 1 x 1    100 kg @7  25+10+5           | 5 x 4   47.5 kg  10+2.5+1.25\n"
    "                     | 4 x 5     85 kg     25+5+2.5          |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Hugo Leclerc         | 1 x 1    150 kg @7  25+25+10+5        | floor-press (left shoulder)\n"
    "                     | 4 x 5  127.5 kg     25+25+2.5+1.25    | 5 x 4     75 kg  25+2.5\n"
    "---------------------------------------------------------------------------------------------\n"
    "Ida Brandt           | 1 x 1     80 kg @7  25+5              | 5 x 4   37.5 kg  5+2.5+1.25\n"
    "                     | 4 x 5   67.5 kg     10+10+2.5+1.25    |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Jan Novotny          | 1 x 1  182.5 kg @7  25+25+25+5+1.25   | 5 x 4  112.5 kg  25+10+10+1.25\n"
    "                     | 4 x 5    155 kg     25+25+10+5+2.5    |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Kaia Sund            | 1 x 1     95 kg @7  25+10+2.5         | 5 x 4     45 kg  10+2.5\n"
    "                     | 4 x 5     80 kg     25+5              |\n"
    "---------------------------------------------------------------------------------------------\n"
    "Lars-Peter von       | 1 x 1    120 kg @7  25+25             | 5 x 4     70 kg  25\n"
    "Hohenfels            | 4 x 5  102.5 kg     25+10+5+1.25      |\n"
    "====================================================================================================\n"
    "\fwinter, week 1 of 2                                                         12 athletes, page 2 of 2\n"
    "Mon 4 January 2027                                                                Day A: Squat first\n"
    "Note: Share the platform\n"
    "Sets x reps, load, @ target rpe, discs a side. Warm-ups are on each athlete's own sheet.\n"
    "====================================================================================================\n"
    "                     | press                          | pulldown      | sled\n"
    "                     | in a superset                  | in a superset |\n"
    "============================================================================================\n"
    "Ana Lind             | 3 x 8-12 each side  12.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Bo Tarn              | 3 x 8-12 each side  22.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Cy Holm              | 3 x 8-12 each side    25 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Dora Weiss           | 3 x 8-12 each side  12.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Emil Rask            | 3 x 8-12 each side    20 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Finn Aalto           | 3 x 8-12 each side  17.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Greta Obermeier      | 3 x 8-12 each side    15 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Hugo Leclerc         | 3 x 8-12 each side  22.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Ida Brandt           | 3 x 8-12 each side    10 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Jan Novotny          | 3 x 8-12 each side  27.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Kaia Sund            | 3 x 8-12 each side  12.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "--------------------------------------------------------------------------------------------\n"
    "Lars-Peter von       | 3 x 8-12 each side  17.5 kg @8 | 3 x 10  40 kg | 2 x 20 m  ____ kg @7\n"
    "Hohenfels            |                                |               |\n"
    "====================================================================================================\n"
    "Needed at once when all train a lift together; with a bar goes the rack, bench or platform:\n"
    "    squat - 12 bars; 6 if two share one, 4 if three do\n"
    "    bench - 11 bars; 6 if two share one, 4 if three do\n"
    "    press - dumbbells: 10 kg for 1, 12.5 kg for 3, 15 kg for 1, 17.5 kg for 2, 20 kg for 1,\n"
    "    22.5 kg for 2, 25 kg for 1, 27.5 kg for 1\n"
    "    pulldown - 12 take turns on the stack\n"
    "\fwinter, week 1 of 2                                                                      12 athletes\n"
    "Any day from Mon 4 January 2027                                                                Day B\n"
    "Sets x reps, load, @ target rpe, discs a side. Warm-ups are on each athlete's own sheet.\n"
    "====================================================================================================\n"
    "                     | squat\n"
    "=====================================================\n"
    "Ana Lind             | 3 x 5    70 kg  25\n"
    "-----------------------------------------------------\n"
    "Bo Tarn              | 3 x 5   105 kg  25+10+5+2.5\n"
    "-----------------------------------------------------\n"
    "Cy Holm              | 3 x 5   125 kg  25+25+2.5\n"
    "-----------------------------------------------------\n"
    "Dora Weiss           | 3 x 5  67.5 kg  10+10+2.5+1.25\n"
    "-----------------------------------------------------\n"
    "Emil Rask            | 3 x 5  97.5 kg  25+10+2.5+1.25\n"
    "-----------------------------------------------------\n"
    "Finn Aalto           | 3 x 5    85 kg  25+5+2.5\n"
    "-----------------------------------------------------\n"
    "Greta Obermeier      | 3 x 5  77.5 kg  25+2.5+1.25\n"
    "-----------------------------------------------------\n"
    "Hugo Leclerc         | 3 x 5   115 kg  25+10+10+2.5\n"
    "-----------------------------------------------------\n"
    "Ida Brandt           | 3 x 5    60 kg  10+10\n"
    "-----------------------------------------------------\n"
    "Jan Novotny          | 3 x 5   140 kg  25+25+10\n"
    "-----------------------------------------------------\n"
    "Kaia Sund            | 3 x 5  72.5 kg  25+1.25\n"
    "-----------------------------------------------------\n"
    "Lars-Peter von       | 3 x 5    90 kg  25+10\n"
    "Hohenfels            |\n"
    "====================================================================================================\n"
    "Needed at once when all train a lift together; with a bar goes the rack, bench or platform:\n"
    "    squat - 12 bars; 6 if two share one, 4 if three do\n";
/* clang-format on */

/* The sheet of the plans of a block for the athletes named, NULL after the last. */
static const char *sheet_of(struct told *t, const char *block, const char *const *athletes, struct narrow narrow)
{
    struct plan *plans[16];
    int count = 0;
    bool begun = false;
    struct caught caught = { arena_alloc(t->arena, (1 << 16) + 1), 0, 1 << 16 };
    struct out out = out_new(t->arena, (struct sink){ .write = catch_bytes, .context = &caught });
    for (; athletes[count]; count++)
        plans[count] = told_plan(t, block, athletes[count]);
    assert_true(sheet_group(&out, &narrow, plans, count, &begun));
    assert_true(out_flush(&out));
    assert_int_equal(begun, caught.length > 0);
    return caught.text;
}

static void a_squad_of_twelve_as_read(void **state)
{
    (void)state;
    struct told t = told_club(squad);
    assert_string_equal(sheet_of(&t, "winter", everybody, (struct narrow){ .first_week = 1, .last_week = 1 }), expected);
    told_end(&t);
}

static int count_of(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = text; (at = strstr(at, part)); at += strlen(part))
        count++;
    return count;
}

static void dates_and_weeks_narrow(void **state)
{
    (void)state;
    struct told t = told_club(squad);
    struct narrow narrow = { .first_week = 2, .last_week = 2 };
    const char *text = sheet_of(&t, "winter", everybody, narrow);
    assert_int_equal(count_of(text, "winter, week 1 of 2"), 0);
    assert_int_equal(count_of(text, "DELOAD WEEK: lighter on purpose.\n"), 3); /* two pages of day A, one of B */
    date_make(2027, 1, 12, &narrow.from);
    assert_string_equal(sheet_of(&t, "winter", everybody, narrow), "");
    narrow = (struct narrow){ .first_week = 1 };
    date_make(2027, 1, 11, &narrow.from);
    date_make(2027, 1, 11, &narrow.to);
    text = sheet_of(&t, "winter", everybody, narrow); /* day B goes by its week's first day */
    assert_int_equal(count_of(text, "Mon 11 January 2027"), 3);
    assert_int_equal(count_of(text, "\f"), 2);
    told_end(&t);
}

/* 100 columns, and what does not fit beside comes below. */
static void nothing_is_wider_than_the_page(void **state)
{
    (void)state;
    struct told t = told_club(squad);
    const char *text = sheet_of(&t, "winter", everybody, (struct narrow){ 0 });
    for (const char *line = text; *line; line += strcspn(line, "\n") + 1) {
        size_t length = strcspn(line, "\n") - (*line == '\f');
        assert_in_range(length, 1, 100);
        assert_true(line[strcspn(line, "\n") - 1] != ' ');
    }
    told_end(&t);
}

static void few_athletes_need_one_page(void **state)
{
    (void)state;
    struct told t = told_club(squad);
    const char *const two[] = { "ana", "hugo", NULL };
    const char *text = sheet_of(&t, "winter", two, (struct narrow){ .last_week = 1 });
    assert_int_equal(count_of(text, "\f"), 1);
    assert_int_equal(count_of(text, ", page "), 0);
    assert_int_equal(count_of(text, "2 athletes\n"), 2);
    assert_non_null(strstr(text, "    squat - 2 bars; 1 if two share one\n"));
    assert_null(strstr(text, "    bench - "));
    told_end(&t);
}

/* Her week repeated: on one date she trains another week's day, and is on the same page. */
static void one_date_is_one_session(void **state)
{
    (void)state;
    struct told t = told_club(INES "athlete bo { gym hall; max squat 150 kg }\n"
                                   "block winter { for ines, bo; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 70 | 80% }\n"
                                   "day B on thu { squat 1 x 5 at 60% }\n adjust ines { repeat week 1 } }\n");
    const char *const two[] = { "bo", "ines", NULL };
    struct narrow narrow = { 0 };
    date_make(2027, 1, 11, &narrow.from);
    date_make(2027, 1, 11, &narrow.to);
    const char *text = sheet_of(&t, "winter", two, narrow);
    assert_int_equal(count_of(text, "athletes\n"), 1);
    assert_non_null(strstr(text, "\nbo   | 3 x 5  120 kg  25+25\n"));
    assert_non_null(strstr(text, "\nines | 3 x 5   70 kg  25\n"));
    told_end(&t);
}

static void a_failed_write_is_told(void **state)
{
    (void)state;
    struct told t = told_club(squad);
    bool begun = false;
    struct caught none = { .most = 0 };
    struct out out = out_new(t.arena, (struct sink){ .write = catch_bytes, .context = &none });
    struct plan *plan = told_plan(&t, "winter", "ana");
    sheet_group(&out, &(struct narrow){ 0 }, &plan, 1, &begun);
    assert_false(out_flush(&out));
    assert_false(sheet_group(&out, &(struct narrow){ 0 }, &plan, 1, &begun));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_squad_of_twelve_as_read),  cmocka_unit_test(dates_and_weeks_narrow),
        cmocka_unit_test(nothing_is_wider_than_the_page), cmocka_unit_test(few_athletes_need_one_page),
        cmocka_unit_test(one_date_is_one_session),    cmocka_unit_test(a_failed_write_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
