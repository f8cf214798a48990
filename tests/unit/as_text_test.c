/* The expected pages have been read as an athlete would. */

#include <stdlib.h>

#include "pool.h"
#include "sample_plan.h"

/* clang-format off */
static const char expected[] =
    "\xC3\x9C""nsal \"\xC3\x9C""\", Jr                                           Winter base, week 1 of 2\n"
    "Mon 11 to Sun 17 January 2027                              Bodyweight: ______ kg\n"
    "Write down what you did: load x reps @ rpe. Rpe 8: two more reps were in you.\n"
    "================================================================================\n"
    "Mon 11 January 2027                                           Day A: Squat first\n"
    "Note: Bring the short belt\n"
    "\n"
    "1.  Back squat   Cue: Drive every rep up as fast as you can\n"
    "    Warm-up   20 kg x 5, empty bar              60 kg x 3, 20 a side\n"
    "    Top set   1 set x 1 rep    107.5 kg  discs a side: 25 + 15 + 2.5 + 1.25 kg\n"
    "              rpe 8 (2 left), rest 4 min\n"
    "    Done, kg  1: _____ x ___ @ ___\n"
    "              if the top set was     102.5 kg   105 kg   110 kg 112.5 kg\n"
    "              the back-off is         87.5 kg    90 kg  92.5 kg    95 kg\n"
    "    Back-off  4 sets x 5 reps  92.5 kg  discs a side: 25 + 10 + 1.25 kg\n"
    "              should feel like rpe 6.5 (3-4 left), rest 3 min, tempo 31X0\n"
    "              Note: Same bar path as on the top set, \"every\" rep\n"
    "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___  3: _____ x ___ @ ___\n"
    "              4: _____ x ___ @ ___\n"
    "\n"
    "2.  no\n"
    "    Instead of Overhead press (left shoulder)\n"
    "    Work      1 set x 5 reps   40 kg  should feel very easy\n"
    "              1 set x 5 reps   50 kg  should feel like rpe 7.5 (2-3 left)\n"
    "              capped: held below the planned load\n"
    "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___\n"
    "\n"
    "3.  Dumbbell row\n"
    "    Or pulldown, as you choose; the loads here are for Dumbbell row\n"
    "    Note: =1+1\n"
    "    Note: elbow\n"
    "    in\n"
    "    Note: lighter\\x1b[31m than last week\n"
    "    Work      3 sets x 8-12 reps each side  22.5 kg a hand\n"
    "              rpe 6-7 (3-4 left), rest 2-3 min\n"
    "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___  3: _____ x ___ @ ___\n"
    "\n"
    "4.  Superset, 2 rounds: a set of each in turn, and round again\n"
    "4a. curl\n"
    "    Work      2 sets x 10-15 reps  choose a load for rpe 8 (2 left): ______ kg\n"
    "              optional\n"
    "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___\n"
    "4b. pulldown\n"
    "    Work      2 sets x 10-15 reps\n"
    "              choose a load for rpe 8 (2 left): ______ kg on the pulldown stack\n"
    "              optional\n"
    "    Done, kg  1: _____ x ___ @ ___  2: _____ x ___ @ ___\n"
    "\n"
    "The whole session: rpe ___ for ____ min. Note: _____________________________\n"
    "================================================================================\n"
    "Any day this week                                                     Day 2: 1e3\n"
    "In this gym: annex\n"
    "This day is optional.\n"
    "\n"
    "1.  Pull-up\n"
    "    Top set   1 set x as many reps as you can, at least 5\n"
    "              bodyweight - 30 lb assistance\n"
    "    Done, +lb 1: _____ x ___ @ ___\n"
    "    Work      2 sets x as many reps as you can  bodyweight\n"
    "    Done      1: ___ @ ___  2: ___ @ ___\n"
    "    Back-off  2 sets x 5 reps  15 % below the top set: ______ lb\n"
    "              rest 3 min, tempo 31X0\n"
    "              Note: Same bar path as on the top set, \"every\" rep\n"
    "    Done, +lb 1: _____ x ___ @ ___  2: _____ x ___ @ ___\n"
    "\n"
    "2.  Superset for 12 min: a set of each in turn, over and over. Rounds: ____\n"
    "2a. Plank\n"
    "    Work      2 sets x 30 s    bodyweight, made harder or easier to reach rpe 7\n"
    "              a set every 90 s\n"
    "    Done, +lb 1: _____ x ___ s @ ___  2: _____ x ___ s @ ___\n"
    "2b. Suitcase carry\n"
    "    Work      2 sets x 20 m    50 lb a hand\n"
    "    Done, lb  1: _____ x ___ m @ ___  2: _____ x ___ m @ ___\n"
    "\n"
    "3.  deadlift\n"
    "    Work      2 sets x 2+2+2 reps  choose a load: ______ lb on the trap bar\n"
    "              pause 20 s between the parts\n"
    "    Done, lb  1: _____ x ___ @ ___  2: _____ x ___ @ ___\n"
    "    Work      30 reps in all, in as many sets as it takes  95 lb on the trap bar\n"
    "    Done, lb  _____ x ___ + ___ + ___ + ___ + ___ + ___ + ___ + ___ @ ___\n"
    "    Work      2-5 sets x 3 reps  135 lb on the trap bar\n"
    "              stop once a set reaches rpe 8\n"
    "    Done, lb  1: _____ x ___ @ ___  2: _____ x ___ @ ___  3: _____ x ___ @ ___\n"
    "              4: _____ x ___ @ ___  5: _____ x ___ @ ___\n"
    "\n"
    "The whole session: rpe ___ for ____ min. Note: _____________________________\n"
    "================================================================================\n"
    "Whole week: 7 sets, 31 reps, 2408 kg lifted, mean 77.7 % of max, about 95 min\n"
    "Stop at sharp pain or dizziness. Squat and bench with safeties or spotters.\n"
    "This is a plan, not medical advice: when unsure, ask your coach or doctor.\n"
    "\f\xC3\x9C""nsal \"\xC3\x9C""\", Jr                                           Winter base, week 2 of 2\n"
    "Mon 18 to Sun 24 January 2027                              Bodyweight: ______ kg\n"
    "DELOAD WEEK: lighter on purpose. Leave the gym fresher than you came.\n"
    "Write down what you did: load x reps @ rpe. Rpe 8: two more reps were in you.\n"
    "No training this week.\n"
    "================================================================================\n"
    "Whole week: 0 sets, 0 reps\n"
    "Stop at sharp pain or dizziness. Squat and bench with safeties or spotters.\n"
    "This is a plan, not medical advice: when unsure, ask your coach or doctor.\n";
/* clang-format on */

static const char *text_of(struct arena *arena, struct sample *sample, struct narrow narrow, int times)
{
    struct caught caught = caught_new(arena, 1 << 20);
    struct format_options options = { .narrow = narrow };
    assert_true(write_plan("text", arena, &sample->plan, &options, &caught, times));
    return arena_copy(arena, caught.text, caught.length);
}

static void two_pages_as_read(void **state)
{
    assert_string_equal(text_of(*state, sample_plan(*state), (struct narrow){ 0 }, 1), expected);
}

/* ASCII but for what the coach wrote: a character is a column, those of three bytes here are two (UAX 11, wide). */
static void assert_lines_fit(const char *text)
{
    int columns = 0;
    for (const char *at = text; *at; at++) {
        unsigned char byte = (unsigned char)*at;
        columns += byte >= 0xE0 ? 2 : (byte & 0xC0) != 0x80 && byte >= ' ';
        assert_true(byte >= ' ' || byte == '\n' || byte == '\f');
        if (byte != '\n')
            continue;
        assert_in_range(columns, 0, 80);
        assert_true(at == text || at[-1] != ' ');
        columns = 0;
    }
}

static void nothing_is_wider_than_the_page(void **state)
{
    struct sample *sample = sample_plan(*state);
    char *wide_text = arena_alloc(*state, 601);
    for (int i = 0; i < 200; i++)
        memcpy(wide_text + 3 * i, "\xE7\xA4\xBC", 3);
    sample->ines.title =
        "A name that goes on and on, far beyond what anyone would put on a sheet of paper, and further still";
    sample->block.title = wide_text;
    struct day day = *sample->days[0].day;
    const char *notes[] = { wide_text,
                            "a\x1b[2Jb\fc\xC2\x85"
                            "d",
                            "one\n\n\ntwo\n" };
    day.title = "tab\there";
    day.notes = notes;
    day.note_count = 3;
    sample->days[0].day = &day;
    const char *text = text_of(*state, sample, (struct narrow){ 0 }, 1);
    assert_lines_fit(text);
    assert_non_null(strstr(text, "Day A: tab here\n"));
    assert_non_null(strstr(text, "\nNote: a\\x1b[2Jb\\x0cc\\u0085d\nNote: one\ntwo\n"));
}

static void a_load_is_never_cut(void **state)
{
    static struct weight discs[40];
    struct sample *sample = sample_plan(*state);
    for (int i = 0; i < 40; i++)
        discs[i] = (struct weight)KG(1.25);
    struct plan_run run = {
        .sets = 40, .has_load = true, .load = KG(120), .shown = KG(120), .disc_count = 40, .discs = discs
    };
    struct plan_group group = { &bench_group, ROLE_WORK, 40, 40, REPS_COUNT, 5, 5, &run, 1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = &group, .group_count = 1 };
    sample->days[0].entries = &entry;
    sample->days[0].entry_count = 1;
    const char *text = text_of(*state, sample, (struct narrow){ 0 }, 1);
    assert_lines_fit(text);
    assert_non_null(strstr(text, " 40 sets x 5 reps  120 kg\n              discs a side: 1.25 + 1.25 + "));
    assert_non_null(strstr(text, " + 1.25 kg\n"));
    assert_non_null(strstr(text, " 40: _____ x ___ @ ___\n"));
    for (const char *at = text; (at = strstr(at, "1.2")); at++)
        assert_int_equal(at[3], '5');
}

/* A cue that fits stands beside the title; one that does not, or has lines of its own, below. */
static void a_cue_goes_where_it_fits(void **state)
{
    static const struct {
        const char *cue, *line;
    } rows[] = {
        { "Ribs down", "\n1.  Back squat   Cue: Ribs down\n    Warm-up " },
        { "one\ntwo", "\n1.  Back squat\n    Cue: one\n    two\n    Warm-up " },
        { "123456789 123456789 123456789 123456789 123456789 12345678",
          "\n1.  Back squat   Cue: 123456789 123456789 123456789 123456789 123456789 12345678\n    Warm-up " }, /* 80 columns */
        { "123456789 123456789 123456789 123456789 123456789 123456789",
          "\n1.  Back squat\n    Cue: 123456789 123456789 123456789 123456789 123456789 123456789\n    Warm-up " },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct sample *sample = sample_plan(*state);
        struct lift lift = squat;
        lift.cue = rows[i].cue;
        struct plan_entry entry = day_a_entries[0];
        entry.lift = &lift;
        sample->days[0].entries = &entry;
        sample->days[0].entry_count = 1;
        const char *text = text_of(*state, sample, (struct narrow){ 0 }, 1);
        assert_lines_fit(text);
        assert_non_null(strstr(text, rows[i].line));
    }
}

/* Her gym has no stacks, and she avoids curls. */
static void substitutes_are_in_small_print(void **state)
{
    static const struct lift *const instead[] = { &pulldown, &plank, &curl, &deadlift, &press };
    static const struct avoid_line avoid = { .lift = &curl };
    struct sample *sample = sample_plan(*state);
    struct lift lift = squat;
    lift.instead = instead;
    lift.instead_count = 5;
    struct plan_entry entry = day_a_entries[0];
    entry.lift = &lift;
    sample->ines.avoids = &avoid;
    sample->ines.avoid_count = 1;
    sample->days[0].entries = &entry;
    sample->days[0].entry_count = 1;
    const char *text = text_of(*state, sample, (struct narrow){ 0 }, 1);
    assert_non_null(strstr(text, "you can\n    (Instead, at the same effort: Plank, or Overhead press)\n    Warm-up "));
    lift.instead_count = 1;
    assert_null(strstr(text_of(*state, sample, (struct narrow){ 0 }, 1), "(Instead"));
}

static void an_entry_has_its_title_beside_the_lift(void **state)
{
    struct sample *sample = sample_plan(*state);
    struct entry titled = squat_entry;
    titled.more = &(struct entry_more){ .title = "Low bar, belt on" };
    struct plan_entry entry = day_a_entries[0];
    entry.entry = &titled;
    sample->days[0].entries = &entry;
    sample->days[0].entry_count = 1;
    assert_non_null(strstr(text_of(*state, sample, (struct narrow){ 0 }, 1), "\n1.  Back squat - Low bar, belt on"));
}

static void pages_part_with_a_form_feed(void **state)
{
    const char *text = text_of(*state, sample_plan(*state), (struct narrow){ 0 }, 2);
    int feeds = 0;
    for (const char *at = text; (at = strchr(at, '\f')); at++)
        feeds += at[-1] == '\n' && at[1] == '\xC3';
    assert_int_equal(feeds, 3);
    assert_int_equal(text[strlen(text) - 1], '\n');
    assert_string_equal(text_of(*state, sample_plan(*state), (struct narrow){ .first_week = 3 }, 1), "");
}

/* Days left out by dates leave the page; the line for the whole week stays. */
static void dates_narrow_the_days(void **state)
{
    struct sample *sample = sample_plan(*state);
    sample->days[0].date = date_plus(sample->days[0].date, 2);
    struct narrow from_wednesday = { .from = sample->days[0].date, .to = date_plus(sample->days[0].date, 1) };
    const char *text = text_of(*state, sample, from_wednesday, 1);
    assert_non_null(strstr(text, "\nWed 13 January 2027 "));
    assert_null(strstr(text, "Any day"));
    assert_null(strchr(text, '\f'));
    assert_non_null(strstr(text, "\nWhole week: 7 sets, 31 reps"));
}

static void weeks_across_months_and_years_say_so(void **state)
{
    static const struct {
        int year, month, day;
        const char *says;
    } rows[] = {
        { 2026, 12, 28, "\nMon 28 December 2026 to Sun 3 January 2027 " }, /* `date` */
        { 2027, 3, 29, "\nMon 29 March to Sun 4 April 2027 " },
        { 9999, 12, 27, "\nMon 27 December 9999 " },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct sample *sample = sample_plan(*state);
        date_make(rows[i].year, rows[i].month, rows[i].day, &sample->weeks[0].start);
        assert_non_null(strstr(text_of(*state, sample, (struct narrow){ 0 }, 1), rows[i].says));
    }
}

static void a_failed_write_is_told(void **state)
{
    struct format_options options = { 0 };
    struct caught none = caught_new(*state, 100);
    assert_false(write_plan("text", *state, &sample_plan(*state)->plan, &options, &none, 1));
    struct caught some = caught_new(*state, 100000);
    assert_false(write_plan("text", *state, &sample_plan(*state)->plan, &options, &some, 100));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(two_pages_as_read),      TEST(nothing_is_wider_than_the_page),
        TEST(a_load_is_never_cut),    TEST(pages_part_with_a_form_feed),
        TEST(dates_narrow_the_days),  TEST(weeks_across_months_and_years_say_so),
        TEST(a_failed_write_is_told), TEST(a_cue_goes_where_it_fits),
        TEST(substitutes_are_in_small_print),
        TEST(an_entry_has_its_title_beside_the_lift),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
