/* The expected pages have been read as a coach would. Days and weeks between dates are those of `date -d`: from 2026-10-10 to
 * 2027-01-11 are 93 days, to 2027-02-15 128; from 2027-01-11 to 2027-02-20 are 40. */
#include "caught.h"
#include "club.h"

#include "emit/sheet.h"

static const char club[] =
    "gym city { title \"City hall\"; bar 45 lb }\n"
    "lift box-squat { title \"Box squat\"; loads bar }\n"
    "athlete ines { title \"Ines Corrado\"; gym hall; bodyweight 60 kg on 2026-12-01; max squat 100 kg on 2026-10-10; max bench 60 kg on 2026-12-12; max pull-up 80 kg on 2026-12-12 }\n"
    "athlete piotr { gym hall; bodyweight 90 kg on 2026-12-01; max squat 180 kg on 2026-12-12; max bench 120 kg on 2026-12-12; max pull-up 110 kg }\n"
    "athlete tomas { title \"Tomas-Alexander Vrba the Younger\"; gym city; max squat 200 lb on 2026-12-12 }\n"
    "season spring { for ines, piotr; meet \"Lakeside Open\" on 2027-02-20; run base, break 1 week, peak }\n"
    "block base { title \"Winter base\"; weeks 4; deload week 4\n"
    "day A on mon { title \"Squat first\"; squat (4 | 6 | 5) x 5 at 70 | 72.5 | 75%; bench 5 x 4 at 80%; pull-up 3 x 5 at rpe 7 }\n"
    "day B { bench (3 | 3 | 4) x 3 at 82.5% | 82.5% | 87.5%; curl 3 x 10 at rpe 8 }\n"
    "}\n"
    "block peak { weeks 2; taper week 2 { sets to 50% }\n"
    "day A on tue { squat 3 x 3 at 80%; bench 3 x 3 at 80% } }\n"
    "block alone { for tomas; starts 2027-01-06; weeks 2; day A on mon { gym hall; squat 3 x 5 at 70% }; day B on thu { box-squat 2 x 5 at 95 lb } }\n";

/* clang-format off */
static const char second_week[] =
    "The coach's week                                                       Mon 11 to Sun 17 January 2027\n"
    "====================================================================================================\n"
    "\n"
    "WHO TRAINS WHAT\n"
    "    Ines Corrado          Winter base, week 2 of 4, 20 sets, about 65 min\n"
    "                          Mon A: Squat first; any day B: bench, curl\n"
    "    piotr                 Winter base, week 2 of 4, 20 sets, about 65 min\n"
    "                          Mon A: Squat first; any day B: bench, curl\n"
    "    Tomas-Alexander Vrba the Younger\n"
    "                          alone, week 1 of 2, 5 sets, about 16 min\n"
    "                          Mon A: squat (in hall)\n"
    "                          alone, week 2 of 2, 5 sets, about 16 min\n"
    "                          Thu B: Box squat\n"
    "\n"
    "NO NEWER MAX FOR 12 WEEKS: test, or write down a set with its effort\n"
    "    Ines Corrado          squat: 100 kg on Sat 10 October 2026, 13 weeks ago\n"
    "    piotr                 pull-up: 110 kg with the body, without a date\n"
    "\n"
    "MEETS WITHIN SIX WEEKS\n"
    "    Sat 20 February 2027  Lakeside Open, in 5 weeks: Ines Corrado, piotr\n"
    "\n"
    "CHANGED MOST AGAINST LAST WEEK: sets of a lift, heaviest load of a lift\n"
    "    Ines Corrado          squat 6 sets, up 2; squat to 72.5 kg, up 2.5 kg\n"
    "    piotr                 squat 6 sets, up 2; squat to 130 kg, up 5 kg\n"
    "    Tomas-Alexander Vrba the Younger\n"
    "                          squat 3 sets, up 3\n";
static const char deload_week[] =
    "The coach's week                                                       Mon 25 to Sun 31 January 2027\n"
    "====================================================================================================\n"
    "\n"
    "WHO TRAINS WHAT\n"
    "    Ines Corrado          Winter base, week 4 of 4, deload, 12 sets, about 38 min\n"
    "                          Mon A: Squat first; any day B: bench, curl\n"
    "    piotr                 Winter base, week 4 of 4, deload, 12 sets, about 38 min\n"
    "                          Mon A: Squat first; any day B: bench, curl\n"
    "    Tomas-Alexander Vrba the Younger\n"
    "                          nothing this week\n"
    "\n"
    "DELOADS AND TAPERS\n"
    "    Deload this week      Ines Corrado, piotr\n"
    "\n"
    "NO NEWER MAX FOR 12 WEEKS: test, or write down a set with its effort\n"
    "    Ines Corrado          squat: 100 kg on Sat 10 October 2026, 15 weeks ago\n"
    "    piotr                 pull-up: 110 kg with the body, without a date\n"
    "\n"
    "MEETS WITHIN SIX WEEKS\n"
    "    Sat 20 February 2027  Lakeside Open, in 3 weeks: Ines Corrado, piotr\n"
    "\n"
    "CHANGED MOST AGAINST LAST WEEK: sets of a lift, heaviest load of a lift\n"
    "    Ines Corrado          bench 5 sets, down 4; squat to 67.5 kg, down 7.5 kg\n"
    "    piotr                 bench 5 sets, down 4; squat to 122.5 kg, down 12.5 kg\n"
    "    Tomas-Alexander Vrba the Younger\n"
    "                          no training this week\n";
static const char taper_week[] =
    "The coach's week                                                      Mon 15 to Sun 21 February 2027\n"
    "====================================================================================================\n"
    "\n"
    "WHO TRAINS WHAT\n"
    "    Ines Corrado          peak, week 2 of 2, taper, 4 sets, about 15 min\n"
    "                          Tue A: squat, bench\n"
    "    piotr                 peak, week 2 of 2, taper, 4 sets, about 15 min\n"
    "                          Tue A: squat, bench\n"
    "    Tomas-Alexander Vrba the Younger\n"
    "                          nothing this week\n"
    "\n"
    "DELOADS AND TAPERS\n"
    "    Taper this week       Ines Corrado, piotr\n"
    "\n"
    "NO NEWER MAX FOR 12 WEEKS: test, or write down a set with its effort\n"
    "    Ines Corrado          squat: 100 kg on Sat 10 October 2026, 18 weeks ago\n"
    "\n"
    "MEETS WITHIN SIX WEEKS\n"
    "    Sat 20 February 2027  Lakeside Open, this week: Ines Corrado, piotr\n"
    "\n"
    "CHANGED MOST AGAINST LAST WEEK: sets of a lift, heaviest load of a lift\n"
    "    Ines Corrado          squat 2 sets, down 1\n"
    "    piotr                 squat 2 sets, down 1\n";
/* clang-format on */

static const char *const pairs[][2] = {
    { "base", "ines" }, { "peak", "ines" }, { "base", "piotr" }, { "peak", "piotr" }, { "alone", "tomas" },
};
enum { PAIRS = sizeof pairs / sizeof *pairs };

static const char *sheet_of(struct told *t, struct narrow narrow)
{
    struct plan *plans[PAIRS];
    bool begun = false;
    struct caught caught = { arena_alloc(t->arena, (1 << 16) + 1), 0, 1 << 16 };
    struct out out = out_new(t->arena, (struct sink){ .write = catch_bytes, .context = &caught });
    for (int i = 0; i < PAIRS; i++)
        plans[i] = told_plan(t, pairs[i][0], pairs[i][1]);
    assert_true(sheet_coach(&out, &narrow, plans, PAIRS, &begun));
    assert_true(out_flush(&out));
    assert_int_equal(begun, caught.length > 0);
    return caught.text;
}

static struct narrow between(int month, int first, int last)
{
    struct narrow narrow = { 0 };
    date_make(2027, month, first, &narrow.from);
    date_make(2027, month, last, &narrow.to);
    return narrow;
}

static void pages_as_read(void **state)
{
    static const struct {
        int month, first, last;
        const char *page;
    } rows[] = { { 1, 11, 17, second_week }, { 1, 25, 31, deload_week }, { 2, 15, 21, taper_week }, { 2, 1, 7, "" } };
    (void)state;
    struct told t = told_club(club);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_string_equal(sheet_of(&t, between(rows[i].month, rows[i].first, rows[i].last)), rows[i].page);
    told_end(&t);
}

static void a_page_for_each_week_with_training(void **state)
{
    (void)state;
    struct told t = told_club(club);
    const char *text = sheet_of(&t, (struct narrow){ 0 });
    int pages = 0;
    for (const char *at = text; (at = strstr(at, "The coach's week")); at++)
        pages += at == text || at[-1] == '\f';
    assert_int_equal(pages, 6); /* four weeks, the break without a page, two weeks */
    assert_null(strstr(text, "Mon 1 to Sun 7 February"));
    assert_non_null(strstr(text, "\n    Ines Corrado          no training last week\n"));
    told_end(&t);
}

/* 60 kg x 5 at rpe 8: 7 repetitions, 36/(37 - 7) of 60 = 72 by Brzycki, 60 x 36/30; 57.5 kg x 6 at rpe 8: 8 repetitions,
 * 57.5 x 36/29 = 71.379... to a tenth (bc). In pounds the same way: 130 lb x 36/29 = 161.379... */
static void a_max_worked_out_is_told_to_a_tenth(void **state)
{
    static const struct {
        const char *lines, *says;
    } rows[] = {
        { "gym hall; max bench from 60 kg x 5 rpe 8 on 2026-09-01", "bench: 72 kg, worked out from a set on Tue 1 September 2026" },
        { "gym hall; max bench from 57.5 kg x 6 rpe 8", "bench: 71.4 kg, worked out from a set, without a date" },
        { "gym lbs; max bench from 130 lb x 6 rpe 8", "bench: 161.4 lb, worked out from a set, without a date" },
        { "gym lbs; max bench 161.38 lb", "bench: 161.38 lb, without a date" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char text[1024];
        snprintf(text, sizeof text, "gym lbs { bar 45 lb }\nathlete ines { %s }\nblock a { for ines; starts 2027-01-04; weeks 1; "
                                    "day A on mon { bench 3 x 5 at 70%% } }\n", rows[i].lines);
        struct told t = told_club(text);
        struct plan *plan = told_plan(&t, "a", "ines");
        struct caught caught = { arena_alloc(t.arena, (1 << 16) + 1), 0, 1 << 16 };
        struct out out = out_new(t.arena, (struct sink){ .write = catch_bytes, .context = &caught });
        bool begun = false;
        assert_true(sheet_coach(&out, &(struct narrow){ 0 }, &plan, 1, &begun) && out_flush(&out));
        assert_non_null(strstr(caught.text, rows[i].says));
        told_end(&t);
    }
}

/* Wednesday to Tuesday: in the calendar's week both of the block's weeks are trained, each with its own days. */
static void narrowed_days_alone_are_named(void **state)
{
    (void)state;
    struct told t = told_club(club);
    const char *text = sheet_of(&t, between(1, 12, 17));
    assert_non_null(strstr(text, "alone, week 2 of 2"));
    assert_null(strstr(text, "alone, week 1 of 2"));
    told_end(&t);
}

static void nothing_is_wider_than_the_page(void **state)
{
    (void)state;
    struct told t = told_club(club);
    for (const char *line = sheet_of(&t, (struct narrow){ 0 }); *line; line += strcspn(line, "\n") + 1)
        assert_in_range(strcspn(line, "\n") - (*line == '\f'), 0, 100);
    told_end(&t);
}

static void a_failed_write_is_told(void **state)
{
    (void)state;
    struct told t = told_club(club);
    bool begun = false;
    struct caught none = { .most = 0 };
    struct out out = out_new(t.arena, (struct sink){ .write = catch_bytes, .context = &none });
    struct plan *plan = told_plan(&t, "alone", "tomas");
    sheet_coach(&out, &(struct narrow){ 0 }, &plan, 1, &begun);
    assert_false(out_flush(&out));
    assert_false(sheet_coach(&out, &(struct narrow){ 0 }, &plan, 1, &begun));
    assert_true(sheet_coach(&out, &(struct narrow){ 0 }, &plan, 0, &begun) == !out.failed);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pages_as_read),
        cmocka_unit_test(a_page_for_each_week_with_training),
        cmocka_unit_test(narrowed_days_alone_are_named),
        cmocka_unit_test(a_max_worked_out_is_told_to_a_tenth),
        cmocka_unit_test(nothing_is_wider_than_the_page),
        cmocka_unit_test(a_failed_write_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
