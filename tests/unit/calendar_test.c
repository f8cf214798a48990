/* The season at a glance; src/emit/calendar.h. The tables have been read as a coach would; dates against Python's datetime are in
 * tests/season.py. */
#include "club.h"

#include "emit/calendar.h"

/* 1 % of her squat, bench and deadlift are whole kilograms, and the hall loads every 2.5 kg, so that the per cents can be followed. */
#define PEOPLE \
    "athlete ines { title \"Ines \xC3\x9Cnsal\"; gym hall; max squat 100 kg; max bench 100 kg; max deadlift 200 kg }\n" \
    "athlete piotr { gym hall }\n"
#define BLOCKS \
    "block base { title \"Winter base\"; goal strength; weeks 3; deload week 3 { sets to 50%; load down 10% }\n" \
    "  day A on mon { squat 4 x 5 at 70 | 75%; front-squat 2 x 5 at 75%; curl 3 x 10 at rpe 8 }\n" \
    "  day B on thu { deadlift 3 x 5 at 75%; sled 2 x 20 m at 40 kg } }\n" \
    "block peak { goal peak; weeks 2; taper week 2 { sets to 50% }\n" \
    "  day A on tue { squat { 1 x 1 at 90%; 3 x 2 at 80% }; bench 5 x 3 at 85% } }\n"
#define SPRING "season spring { title \"Spring\"; for ines; meet \"Lakeside Open\" on 2027-04-17; meet \"Bridge Cup\" on 2027-03-06\n" \
               "  run base, break 1 week, base, peak }\n"

static const char *calendar_text(struct told *t, const char *athlete, struct narrow narrow, bool peak_only)
{
    const struct athlete *who = told_athlete(t, athlete);
    struct plan **plans = NEW_MANY(t->arena, struct plan *, t->model->block_count + 1);
    struct out out = out_scratch(t->arena);
    int count = 0;
    for (int i = t->model->block_count; i-- > 0;) /* in no order */
        for (int j = 0; j < t->model->blocks[i]->people->count; j++)
            if (t->model->blocks[i]->people->at[j] == who && (!peak_only || t->model->blocks[i]->name[0] == 'p'))
                plans[count++] = plan_make(t->arena, &(struct plan_job){ .model = t->model, .block = t->model->blocks[i], .athlete = who, .record = NULL, .touched = NULL });
    assert_int_not_equal(count, 0);
    assert_true(calendar_write(&out, &narrow, who, plans, count));
    out_char(&out, '\0');
    return out.at;
}

/* clang-format off */
/* Squat with front-squat, which is four fifths of it: (20 x 70 + 10 x 75) / 30 = 71.67; the deload (10 x 67.5 + 5 x 68.75) / 15 = 67.92,
 * 54 kg of 80 being rounded to 55; peak (1 x 90 + 6 x 80) / 7 = 81.43, taper (90 + 4 x 80) / 5 = 82 (bc). */
static const char spring[] =
    "====================================================================================================\n"
    "Ines \xC3\x9C""nsal: Spring\n"
    "                                          weeks        squat       bench       deadlift\n"
    "Week from   Block        Week    Goal       out         sets     %  sets     %  sets     %\n"
    "2027-02-15  Winter base  1 of 3  strength     2            6  71.7                 3  75\n"
    "2027-02-22  Winter base  2 of 3  strength     1            6  75                   3  75\n"
    "2027-03-01  Winter base  3 of 3  strength  meet deload     3  67.9                 2  67.5\n"
    "2027-03-06  MEET on Saturday: Bridge Cup\n"
    "2027-03-08  Break                             5\n"
    "2027-03-15  Winter base  1 of 3  strength     4            6  71.7                 3  75\n"
    "2027-03-22  Winter base  2 of 3  strength     3            6  75                   3  75\n"
    "2027-03-29  Winter base  3 of 3  strength     2 deload     3  67.9                 2  67.5\n"
    "2027-04-05  peak         1 of 2  peak         1            4  81.4     5  85\n"
    "2027-04-12  peak         2 of 2  peak      meet taper      3  82       3  85\n"
    "2027-04-17  MEET on Saturday: Lakeside Open\n"
    "A lift with its variations: working sets, and their mean per cent of the max.\n";
static const char yard[] =
    "====================================================================================================\n"
    "piotr\n"
    "                                                    weeks        squat       bench       deadlift\n"
    "Week from   Block                   Week    Goal      out         sets     %  sets     %  sets     %\n"
    "2027-01-06  odd-days-in-the-boat-\xE2\x80\xA6""  1 of 2  general                  3   -       3   -       4   -\n"
    "2027-01-13  odd-days-in-the-boat-\xE2\x80\xA6""  2 of 2  general                  3   -       3   -       4   -\n"
    "2027-01-20  nothing planned for 12 days\n"
    "2027-02-01  late                    1 of 1  general\n"
    "\n"
    "                                                    weeks        push-press  Log lift    Very deep \xE2\x80\xA6""\n"
    "Week from   Block                   Week    Goal      out         sets     %  sets     %  sets     %\n"
    "2027-01-06  odd-days-in-the-boat-\xE2\x80\xA6""  1 of 2  general                  -   -       5   -       3   -\n"
    "2027-01-13  odd-days-in-the-boat-\xE2\x80\xA6""  2 of 2  general                  -   -       5   -       3   -\n"
    "2027-01-20  nothing planned for 12 days\n"
    "2027-02-01  late                    1 of 1  general\n"
    "A lift with its variations: working sets, and their mean per cent of the max.\n";
static const char peak_alone[] =
    "====================================================================================================\n"
    "Ines \xC3\x9C""nsal: Spring\n"
    "                                weeks        squat       bench\n"
    "Week from   Block  Week    Goal   out         sets     %  sets     %\n"
    "2027-03-06  MEET on Saturday: Bridge Cup\n"
    "2027-04-05  peak   1 of 2  peak     1            4  81.4     5  85\n"
    "2027-04-12  peak   2 of 2  peak  meet taper      3  82       3  85\n"
    "2027-04-17  MEET on Saturday: Lakeside Open\n"
    "A lift with its variations: working sets, and their mean per cent of the max.\n";
static const char over_a_break[] =
    "====================================================================================================\n"
    "Ines \xC3\x9C""nsal: Spring\n"
    "                              weeks\n"
    "Week from   Block  Week  Goal   out\n"
    "2027-03-06  MEET on Saturday: Bridge Cup\n"
    "2027-03-08  Break                 5\n";
/* clang-format on */

static void a_season(void **state)
{
    (void)state;
    struct told t = told_club(PEOPLE BLOCKS SPRING);
    assert_string_equal(calendar_text(&t, "ines", (struct narrow){ 0 }, false), spring);
    told_end(&t);
}

/* Long names are cut, more lifts than fit come in a second table, and what is open shows a stroke. */
static void blocks_on_their_own(void **state)
{
    (void)state;
    struct told t = told_club(
        PEOPLE
        "lift push-press { kind competition; loads bar }\n"
        "lift log-lift { title \"Log lift\"; kind competition; loads free }\n"
        "lift box-squat { title \"Very deep \\\"box\\\" squat\"; kind variation; loads bar }\n"
        "block odd-days-in-the-boat-house-yard { for piotr; starts 2027-01-06; weeks 2\n"
        "  day A on wed { squat 3 x 5 at rpe 7; bench 3 x 5 at rpe 7; deadlift 2 x 5 at rpe 7; log-lift 5 x 1 at 80 kg; box-squat 2-4 x 5 at rpe 7\n"
        "    bench total 30 at 40 kg; deadlift 2 x 30 s; push-press total 20 at 40 kg } }\n"
        "block late { for piotr; starts 2027-02-01; weeks 1; day A on mon { curl 2 x 10 at rpe 8 } }\n");
    assert_string_equal(calendar_text(&t, "piotr", (struct narrow){ 0 }, false), yard);
    told_end(&t);
}

static void one_block_has_no_far_breaks(void **state)
{
    (void)state;
    struct told t = told_club(PEOPLE BLOCKS SPRING);
    assert_string_equal(calendar_text(&t, "ines", (struct narrow){ 0 }, true), peak_alone);
    told_end(&t);
}

/* Both ends count: the meet of the first day, the break of the last. A week is in when one of its days is. */
static void dates_narrow(void **state)
{
    (void)state;
    struct told t = told_club(PEOPLE BLOCKS SPRING);
    struct narrow narrow = { 0 };
    date_make(2027, 3, 6, &narrow.from);
    date_make(2027, 3, 8, &narrow.to);
    assert_string_equal(calendar_text(&t, "ines", narrow, false), over_a_break);
    date_make(2028, 1, 1, &narrow.from);
    date_make(2028, 1, 1, &narrow.to);
    assert_string_equal(calendar_text(&t, "ines", narrow, false), "");
    told_end(&t);
}

/* A week she repeats goes into the break; what follows the last meet is left without training. */
static void a_week_repeated(void **state)
{
    (void)state;
    struct told t = told_club(PEOPLE "block base { weeks 2; day A on mon { squat 2 x 5 at 70%; front-squat 1 x 5 at rpe 7 }; adjust ines { repeat week 1 } }\n"
                                     "season spring { for ines; meet \"Lakeside Open\" on 2027-04-17; run base, break 1 week, base }\n");
    const char *text = calendar_text(&t, "ines", (struct narrow){ 0 }, false);
    assert_null(strstr(text, "Break"));
    assert_non_null(strstr(text, "\n2027-03-29  base   3 of 3  general     2 "));
    assert_non_null(strstr(text, "\n2027-04-19  base   3 of 3  general\n")); /* Monday after the meet */
    told_end(&t);
}

/* Words of the coach cannot steer a terminal. */
static void control_characters_show(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { title \"I\\nnes\" }\nblock base { title \"a\\nb\"; for ines; starts 2027-01-04; weeks 1; day A on mon { curl 1 x 1 at rpe 7 } }\n");
    const char *text = calendar_text(&t, "ines", (struct narrow){ 0 }, false);
    assert_non_null(strstr(text, "\nI nes\n"));
    assert_non_null(strstr(text, "2027-01-04  a b "));
    told_end(&t);
}

static bool refuse(void *context, const char *bytes, size_t length)
{
    (void)context, (void)bytes, (void)length;
    return false;
}

static void a_failed_write_is_told(void **state)
{
    (void)state;
    struct told t = told_club(PEOPLE BLOCKS SPRING);
    struct out out = out_new(t.arena, (struct sink){ .write = refuse, .context = NULL });
    struct plan *plan = told_plan(&t, "peak", "ines");
    assert_true(calendar_write(&out, &(struct narrow){ 0 }, plan->athlete, &plan, 1)); /* held back until there is a load */
    assert_false(out_flush(&out));
    assert_false(calendar_write(&out, &(struct narrow){ 0 }, plan->athlete, &plan, 1));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_season), cmocka_unit_test(blocks_on_their_own), cmocka_unit_test(one_block_has_no_far_breaks),
        cmocka_unit_test(dates_narrow), cmocka_unit_test(a_week_repeated), cmocka_unit_test(control_characters_show),
        cmocka_unit_test(a_failed_write_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
