/* The handler's page. The page below has been read as a handler would; its numbers are those of season_plan_test.c and
 * points_test.c. */
#include "club.h"

#include "emit/sheet.h"

#define MAXES "max squat 120 kg on 2027-01-02; max bench from 57.5 kg x 5 rpe 8 on 2027-01-02; max deadlift 145 kg"
#define LAKESIDE "meet \"Lakeside Open\" on 2027-04-17"
#define THREE "; attempts squat 91%, 96%, 101%; attempts bench 91%, 96%, 101%; attempts deadlift 91%, 96%, 101%"

static bool kept(void *context, const char *bytes, size_t length)
{
    (void)context, (void)bytes, (void)length;
    return true;
}

static bool refused(void *context, const char *bytes, size_t length)
{
    (void)context, (void)bytes, (void)length;
    return false;
}

struct written {
    struct told t;
    const char *pages;
    bool fine;
};

/* `count` 2: the same plan once more, as of another athlete. */
static struct written write_meet(const char *before, const char *athlete, const char *season, struct narrow narrow, int count)
{
    char text[4096];
    snprintf(text, sizeof text,
             "%sathlete ines { gym hall; %s }\nblock peak { goal peak; weeks 4; day A on mon { squat 4 x 3 at rpe 7 } }\n"
             "season spring { for ines; run peak; %s }\n",
             before, athlete, season);
    struct written written = { .t = told_club(text) };
    assert_string_equal(findings_text(&written.t), "");
    struct plan *plan = told_plan(&written.t, "peak", "ines"), *plans[] = { plan, plan };
    struct out out = out_scratch(written.t.arena);
    bool begun = false;
    written.fine = sheet_meet(&out, &narrow, plans, count, &begun);
    assert_int_equal(begun, out.used > 0);
    written.pages = out.used ? arena_copy(written.t.arena, out.at, out.used) : "";
    return written;
}

/* clang-format off */
static const char expected[] =
    "Ines Corrado                                                       Lakeside Open\n"
    "Sat 17 April 2027                               Weighed in: ______ kg  Lot: ____\n"
    "Competition bar and collars: 25 kg together (20 + 2 x 2.5).\n"
    "Heaviest disc inside, collar last. Clock = first attempt less the minutes.\n"
    "Note: Left knee sleeve\n"
    "Note: Bring the soft belt\n"
    "================================================================================\n"
    "1.  squat                                       max 120 kg of Sat 2 January 2027\n"
    "    Flight starts ___:___  Lifter no. ____ of ____  First attempt about ___:___\n"
    "    Rack ______  Safeties ______\n"
    "    Warm-ups, in this order                          discs a side, then collar\n"
    "    [ ] 40 min before   ___:___     25 kg x 8        the bar alone\n"
    "    [ ] 35 min before   ___:___     32.5 kg x 5      2.5 + 1.25 kg\n"
    "    [ ] 30 min before   ___:___     50 kg x 4        10 + 2.5 kg\n"
    "    [ ] 25 min before   ___:___     65 kg x 3        20 kg\n"
    "    [ ] 19 min before   ___:___     80 kg x 2        25 + 2.5 kg\n"
    "    [ ] 13 min before   ___:___     90 kg x 1        25 + 5 + 2.5 kg\n"
    "    [ ]  7 min before   ___:___     100 kg x 1       25 + 10 + 2.5 kg\n"
    "    Attempts, per cent of the max                    discs a side, then collar\n"
    "    Opener     110 kg   91.7 %  made [ ] missed [ ]  25 + 15 + 2.5 kg\n"
    "    Second     115 kg   95.8 %  made [ ] missed [ ]  25 + 20 kg\n"
    "    Third      120 kg   100 %   made [ ] missed [ ]  25 + 20 + 2.5 kg\n"
    "      cautious 117.5 kg 97.9 %                       25 + 20 + 1.25 kg\n"
    "      bold     122.5 kg 102.1 %                      25 + 20 + 2.5 + 1.25 kg\n"
    "    Lifted     1st ______ kg  2nd ______ kg  3rd ______ kg  Best ______ kg\n"
    "================================================================================\n"
    "2.  bench                             max 69 kg from a set of Sat 2 January 2027\n"
    "    Flight starts ___:___  Lifter no. ____ of ____  First attempt about ___:___\n"
    "    Rack ______  Safeties ______\n"
    "    Warm-ups, in this order                          discs a side, then collar\n"
    "    [ ] 40 min before   ___:___     25 kg x 8        the bar alone\n"
    "    [ ] 25 min before   ___:___     37.5 kg x 3      5 + 1.25 kg\n"
    "    [ ] 19 min before   ___:___     45 kg x 2        10 kg\n"
    "    [ ] 13 min before   ___:___     50 kg x 1        10 + 2.5 kg\n"
    "    [ ]  7 min before   ___:___     57.5 kg x 1      15 + 1.25 kg\n"
    "    Attempts, per cent of the max                    discs a side, then collar\n"
    "    Opener     62.5 kg  90.6 %  made [ ] missed [ ]  15 + 2.5 + 1.25 kg\n"
    "    Second     65 kg    94.2 %  made [ ] missed [ ]  20 kg\n"
    "    Third      70 kg    101.4 % made [ ] missed [ ]  20 + 2.5 kg\n"
    "      cautious 67.5 kg  97.8 %                       20 + 1.25 kg\n"
    "      bold     72.5 kg  105.1 %                      20 + 2.5 + 1.25 kg\n"
    "    Lifted     1st ______ kg  2nd ______ kg  3rd ______ kg  Best ______ kg\n"
    "================================================================================\n"
    "3.  deadlift                                                          max 145 kg\n"
    "    Flight starts ___:___  Lifter no. ____ of ____  First attempt about ___:___\n"
    "    Rack ______  Safeties ______\n"
    "    Warm-ups, in this order                          discs a side, then collar\n"
    "    [ ] 40 min before   ___:___     25 kg x 8        the bar alone\n"
    "    [ ] 35 min before   ___:___     40 kg x 5        5 + 2.5 kg\n"
    "    [ ] 30 min before   ___:___     60 kg x 4        15 + 2.5 kg\n"
    "    [ ] 25 min before   ___:___     80 kg x 3        25 + 2.5 kg\n"
    "    [ ] 19 min before   ___:___     95 kg x 2        25 + 10 kg\n"
    "    [ ] 13 min before   ___:___     107.5 kg x 1     25 + 15 + 1.25 kg\n"
    "    [ ]  7 min before   ___:___     122.5 kg x 1     25 + 20 + 2.5 + 1.25 kg\n"
    "    Attempts, per cent of the max                    discs a side, then collar\n"
    "    Opener     132.5 kg 91.4 %  made [ ] missed [ ]  2 x 25 + 2.5 + 1.25 kg\n"
    "    Second     140 kg   96.6 %  made [ ] missed [ ]  2 x 25 + 5 + 2.5 kg\n"
    "    Third      147.5 kg 101.7 % made [ ] missed [ ]  2 x 25 + 10 + 1.25 kg\n"
    "      cautious 142.5 kg 98.3 %                       2 x 25 + 5 + 2.5 + 1.25 kg\n"
    "      bold     150 kg   103.4 %                      2 x 25 + 10 + 2.5 kg\n"
    "    Lifted     1st ______ kg  2nd ______ kg  3rd ______ kg  Best ______ kg\n"
    "================================================================================\n"
    "Total: openers 305 kg, seconds 320 kg, thirds 337.5 kg (expected)\n"
    "Points of 337.5 kg at 60 kg bodyweight (Sat 2 January 2027), classic:\n"
    "            GL        DOTS\n"
    "    women   76.29     374.13\n"
    "    men     55.35     284.86\n"
    "Constants of both formulas from memory: for planning, not for the record.\n"
    "Made: total ______ kg  place ____  points ______\n"
    "Cautious third: after a slow or missed second. Bold third: after a fast one.\n"
    "Name the next attempt within a minute, never below a missed weight. With none\n"
    "named the weight stays after a miss and goes up by 2.5 kg after a good lift.\n";
/* clang-format on */

static void the_page(void **state)
{
    (void)state;
    struct written written =
        write_meet("", "title \"Ines Corrado\"; bodyweight 60 kg on 2027-01-02; note \"Left knee sleeve\"; " MAXES,
                   "note \"Bring the soft belt\"; " LAKESIDE THREE, (struct narrow){ 0 }, 1);
    assert_string_equal(written.pages, expected);
    told_end(&written.t);
}

static int times(const char *text, const char *words)
{
    int count = 0;
    for (; (text = strstr(text, words)); text += strlen(words))
        count++;
    return count;
}

static void widest_line_fits(const char *text)
{
    int width = 0;
    for (; *text; text++) {
        width = *text == '\n' || *text == '\f' ? 0 : width + 1;
        assert_true(width <= 80);
        assert_false(*text == '\n' && text[-1] == ' ');
    }
}

struct page_row {
    const char *says, *before, *athlete, *season;
    struct narrow narrow;
    int pages;
    const char *words, *not; /* in and not in the pages */
};

static const struct page_row rows[] = {
    { "a page for each meet", "", MAXES, "meet \"Spring Trial\" on 2027-04-03; " LAKESIDE THREE, { 0 }, 2, "Spring Trial", "bodyweight (" },
    { "no page for a meet in another week", "", MAXES, "meet \"Spring Trial\" on 2027-04-03; " LAKESIDE THREE,
      { .first_week = 4, .last_week = 4 }, 1, "Lakeside Open", "Spring Trial" },
    { "a week before has none", "", MAXES, LAKESIDE THREE, { .first_week = 1, .last_week = 3 }, 0, "", "Lakeside" },
    { "a season without attempts", "", MAXES, LAKESIDE, { 0 }, 1, "No attempts are planned", "Total:" },
    { "a lift without a max has room to write", "", "max squat 120 kg", LAKESIDE "; attempts squat 91%, 96%, 101%; attempts bench 91%, 96%, 101%",
      { 0 }, 1, "2.  bench                                             no max on file by this day\n", "Total:" },
    { "one lift is no total", "", "bodyweight 60 kg; max squat 120 kg", LAKESIDE "; attempts squat 91%, 96%, 101%", { 0 }, 1,
      "Points: they are for a total of three lifts.", "GL" },
    { "no bodyweight, no points", "", MAXES, LAKESIDE THREE, { 0 }, 1, "Points: no bodyweight on file to work them out with.", "GL" },
    { "the meet's own gym, in lb", "gym lakeside { title \"Lakeside Hall\"; bar 45 lb; plates 45 x 12, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }\n",
      "max squat 300 lb", LAKESIDE "; gym lakeside; attempts squat 91%, 96%, 101%", { 0 }, 1,
      "    Opener     275 lb   91.7 %  made [ ] missed [ ]  2 x 45 + 25 lb\n", "ompetition bar" },
    { "and its step", "gym lakeside { bar 45 lb; plates 45 x 12, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }\n", "max squat 300 lb",
      LAKESIDE "; gym lakeside; attempts squat 91%, 96%, 101%", { 0 }, 1, "goes up by 5 lb after a good lift", "kg" },
    { "a bar without a list of discs", "gym lakeside { bar 20 kg }\n", "max squat 120 kg",
      LAKESIDE "; gym lakeside; attempts squat 91%, 96%, 101%", { 0 }, 1, "    Opener     110 kg   91.7 %  made [ ] missed [ ]\n", "a side" },
    { "a lent max says by which lift", "lift box-squat like squat at 80% { kind competition }\n", "max squat 150 kg on 2027-01-02",
      LAKESIDE "; attempts box-squat 91%, 96%, 101%", { 0 }, 1, "max 120 kg by squat of Sat 2 January 2027\n", "max 150" },
    { "what is added to the body", "lift chin { kind competition; loads bodyweight }\n", "bodyweight 60 kg; max chin 80 kg",
      LAKESIDE "; attempts chin 90%, 95%, 105%", { 0 }, 1, "    Opener     +12.5 kg 90.6 %", "the bar alone" },
    { "and nothing without a bodyweight", "lift chin { kind competition; loads bodyweight }\n", "max chin 80 kg",
      LAKESIDE "; attempts chin 90%, 95%, 105%", { 0 }, 1, "1.  chin                                                   no bodyweight on file\n", "Opener     +" },
    { "a week before the meet's is another page", "", "max squat 120 kg", LAKESIDE, { .last_week = 3 }, 0, "", "Lakeside" },
    { "and so is a week after it", "", "max squat 120 kg", LAKESIDE, { .first_week = 5 }, 0, "", "Lakeside" },
    { "its own week is its own", "", "max squat 120 kg", LAKESIDE, { .first_week = 4, .last_week = 4 }, 1, "Lakeside Open", "Regatta" },
    { "many discs wrap under each other", "", "max squat 520 kg", LAKESIDE "; attempts squat 91%, 96%, 102.4%", { 0 }, 1,
      "10 x 25 + 2.5 + 1.25 kg\n", "25 + 25" },
    { "words of the coach steer no printer", "", "title \"I\xE2\x80\xA8nes\"; max squat 120 kg", LAKESIDE, { 0 }, 1, "I\\u2028nes", "\xE2" },
};

static void row_of_pages_holds(void **state)
{
    const struct page_row *row = *state;
    struct written written = write_meet(row->before, row->athlete, row->season, row->narrow, 1);
    assert_int_equal(times(written.pages, "Name the next attempt within a minute"), row->pages);
    assert_int_equal(times(written.pages, "\f"), row->pages > 1 ? row->pages - 1 : 0);
    if (!strstr(written.pages, row->words) || strstr(written.pages, row->not))
        fail_msg("%s", written.pages);
    widest_line_fits(written.pages);
    assert_true(written.fine);
    told_end(&written.t);
}

static void dates_choose_the_meet(void **state)
{
    (void)state;
    static const struct {
        const char *from, *to;
        int pages;
    } choices[] = { { "2027-04-17", "2027-04-17", 1 }, { "2027-04-18", NULL, 0 }, { NULL, "2027-04-16", 0 }, { "2027-04-01", NULL, 1 } };
    for (size_t i = 0; i < sizeof choices / sizeof *choices; i++) {
        struct narrow narrow = { 0 };
        assert_true(!choices[i].from || date_parse(choices[i].from, 10, &narrow.from));
        assert_true(!choices[i].to || date_parse(choices[i].to, 10, &narrow.to));
        struct written written = write_meet("", MAXES, LAKESIDE THREE, narrow, 1);
        assert_int_equal(times(written.pages, "Lakeside Open"), choices[i].pages);
        told_end(&written.t);
    }
}

static void a_form_feed_stands_between_athletes(void **state)
{
    (void)state;
    struct written one = write_meet("", MAXES, LAKESIDE THREE, (struct narrow){ 0 }, 1);
    struct written two = write_meet("", MAXES, LAKESIDE THREE, (struct narrow){ 0 }, 2);
    assert_string_equal(two.pages, arena_format(two.t.arena, "%s\f%s", one.pages, one.pages));
    told_end(&one.t);
    told_end(&two.t);
}

/* A sink that refuses is known when the bytes are handed over. */
static void a_refused_page_is_told(void **state)
{
    (void)state;
    struct written written = write_meet("", MAXES, LAKESIDE THREE, (struct narrow){ 0 }, 1);
    struct plan *plan = told_plan(&written.t, "peak", "ines");
    struct narrow narrow = { 0 };
    bool (*const sinks[])(void *, const char *, size_t) = { refused, kept };
    for (int i = 0; i < 2; i++) {
        struct out out = out_new(written.t.arena, (struct sink){ .write = sinks[i], .context = NULL });
        bool begun = false, fine = true;
        for (int page = 0; page < 100 && fine; page++)
            fine = sheet_meet(&out, &narrow, (struct plan *[]){ plan }, 1, &begun);
        assert_int_equal(fine, i == 1);
    }
    told_end(&written.t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(the_page),
        cmocka_unit_test(dates_choose_the_meet),
        cmocka_unit_test(a_form_feed_stands_between_athletes),
        cmocka_unit_test(a_refused_page_is_told),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, row_of_pages_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
