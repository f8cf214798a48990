/* From a block to weeks and days for one athlete: language.md, sections 3 (Days, Entries) and 5.7 (Dates). 2027-01-04
 * is a Monday (python, datetime). */
#include "club.h"

#define DAYS(sentence, lines, comes) SHOW(sentence, lines, SHOW_DATES, comes)
#define CURL "{ curl 3 x 5 }"
#define WARM                                                                                                           \
    INES "scheme ramp { warm-up 1 x 5 at 50%; warm-up 1 x 3 at 75% }\n"                                                \
         "scheme light { warm-up 1 x 8 at 25% }\n"

static const struct row rows[] = {
    DAYS("week w starts at starts + 7 (w - 1) days", "weeks 3; day A on mon " CURL,
         "A 2027-01-04 | A 2027-01-11 | A 2027-01-18"),
    DAYS("on thu is the first Thursday on or after that", "weeks 2; day A on thu " CURL, "A 2027-01-07 | A 2027-01-14"),
    DAYS("mon and thu trains it twice a week", "weeks 1; day A on mon, thu " CURL, "A 2027-01-04 / A 2027-01-07"),
    DAYS("in order of date", "weeks 1; day A on fri " CURL "; day B on mon " CURL, "B 2027-01-04 / A 2027-01-08"),
    DAYS("days without on have no date and come last, as written",
         "weeks 1; day C " CURL "; day A on mon " CURL "; day B " CURL, "A 2027-01-04 / C - / B -"),
    DAYS("two days on one date stay as written", "weeks 1; day B on mon " CURL "; day A on mon " CURL,
         "B 2027-01-04 / A 2027-01-04"),
    DAYS("labels may be numbers", "weeks 1; day 1 on mon " CURL "; day 2 on tue " CURL, "1 2027-01-04 / 2 2027-01-05"),
    DAYS("rotate: A B A, B A B", "weeks 2; rotate A, B on mon, wed, fri; day A " CURL "; day B " CURL,
         "A 2027-01-04 / B 2027-01-06 / A 2027-01-08 | B 2027-01-11 / A 2027-01-13 / B 2027-01-15"),
    DAYS("in date order, however the weekdays are written",
         "weeks 1; rotate A, B, C on fri, mon, wed; day A " CURL "; day B " CURL "; day C " CURL,
         "A 2027-01-04 / B 2027-01-06 / C 2027-01-08"),
    DAYS("a skipped day keeps its turn",
         "weeks 2; rotate A, B on mon, wed, fri; adjust ines in weeks 1 { skip day B }; day A " CURL "; day B " CURL,
         "A 2027-01-04 / A 2027-01-08 | B 2027-01-11 / A 2027-01-13 / B 2027-01-15"),
    DAYS("a rotation beside a day of its own",
         "weeks 1; rotate A, B on mon, fri; day A " CURL "; day B " CURL "; day C on wed " CURL,
         "A 2027-01-04 / C 2027-01-06 / B 2027-01-08"),
    DAYS("a rotation in a weeks group counts its weeks",
         "weeks 3; weeks 2-3 { rotate A, B on mon, wed, fri; day A " CURL "; day B " CURL " }",
         " | A 2027-01-11 / B 2027-01-13 / A 2027-01-15 | B 2027-01-18 / A 2027-01-20 / B 2027-01-22"),
    FAULT("a day of a rotation has no weekday of its own",
          "weeks 1; rotate A, B on mon; day A on tue " CURL "; day B " CURL, "error misplaced `tue`"),
    FAULT("a rotation of a day that is not there", "weeks 1; rotate A, C on mon; day A " CURL,
          "error unknown-name `C`"),
    FAULT("a weekday that is none", "weeks 1; day A on mun " CURL, "error unknown-name `mun`"),
    DAYS("a day in a weeks group", "weeks 3; weeks 1-2 { day A on mon " CURL " }; weeks 3 { day A on tue " CURL " }",
         "A 2027-01-04 | A 2027-01-11 | A 2027-01-19"),

    /* entries */
    SHOW("entries in written order", "weeks 1; day A { squat 1 x 1 at rpe 8; curl 3 x 5; bench 2 x 3 at rpe 7 }",
         SHOW_LIFTS, "squat 1x1 95@8; curl 3x5 ?; bench 2x3 52.5@7"), /* n = 6: 86.11 % of 60 = 51.67, nearer to 52.5 */
    PLAN("then and lines of their own are the same", "weeks 1; day A { sled { top 1 x 1 at 80%\n 3 x 5 at 70% } }",
         "top 1x1 800, 3x5 700"),
    PLAN("a group in some weeks only", "weeks 3; day A { sled 1 x 1 at 80% in weeks 1-2 then 3 x 5 at 70% }",
         "1x1 800, 3x5 700 | 1x1 800, 3x5 700 | 3x5 700"),
    SHOW("an entry none of whose groups is trained this week is left out",
         "weeks 2; day A { curl 3 x 5 in weeks 1; sled 3 x 5 at 70% }", SHOW_LIFTS,
         "curl 3x5 ?; sled 3x5 700 | sled 3x5 700"),
    SHOW("one with a warm-up alone too", "weeks 2; day A { squat warm-up 1 x 5 at 50% then 3 x 5 at 80% in weeks 1 }",
         SHOW_LIFTS, "squat warm-up 1x5 40, 3x5 80 | "),
    PLAN("rounds multiply sets", "weeks 1; day A { superset 2 rounds { curl 1 x 8; sled 1 x 5 at 50% } }",
         "2x8 ?; 2x5 500"),
    PLAN("rounds multiply bands and lists as well", "weeks 1; day A { superset 2 rounds { sled 2 x 5 at 50, 60% } }",
         "2x5 500, 2x5 600"),

    /* the block's warm-up */
    CLUB("warm-up SCHEME for LIFT", WARM,
         "weeks 1; warm-up ramp for squat; day A { squat 3 x 5 at 80%; bench 3 x 5 at 80% }",
         "warm-up 1x5 40, warm-up 1x3 60, 3x5 80; 3x5 47.5"), /* 48 */
    CLUB("without for it is for main lifts", WARM,
         "weeks 1; warm-up ramp; day A { squat 3 x 5 at 80%; curl 3 x 5 at 20 kg }",
         "warm-up 1x5 40, warm-up 1x3 60, 3x5 80; 3x5 20"),
    CLUB("several go in the order written, each once", WARM,
         "weeks 1; warm-up light; warm-up ramp for squat, bench, squat; warm-up light for bench; day A { squat 3 x 5 at 80%; bench 3 x 5 at 80% }",
         "warm-up 1x8 20, warm-up 1x5 40, warm-up 1x3 60, 3x5 80; warm-up 1x8 20_, warm-up 1x5 22.5, warm-up 1x3 35, warm-up 1x8 20_, 3x5 47.5"),
    CLUB("a share of the first working load, not of the last", WARM,
         "weeks 1; warm-up light for squat; day A { squat { 1 x 5 at 80 kg; 1 x 5 at 40 kg } }", "warm-up 1x8 20, 1x5 80, 1x5 40"),
    CLUB("an entry's own warm-up stands alone", WARM,
         "weeks 1; warm-up ramp for squat; day A { squat warm-up 1 x 5 at 70% then 3 x 5 at 80% }",
         "warm-up 1x5 55, 3x5 80"), /* 56 */
    CLUB("a lift trained twice in a day is warmed up once", WARM,
         "weeks 1; warm-up light for squat; day A { squat 3 x 5 at 80%; squat 1 x 5 at 60% }",
         "warm-up 1x8 20, 3x5 80; 1x5 60"),
    CLUB("two warm-up lines add", WARM,
         "weeks 1; warm-up light for squat; warm-up ramp for squat, bench; day A { squat 3 x 5 at 80% }",
         "warm-up 1x8 20, warm-up 1x5 40, warm-up 1x3 60, 3x5 80"),
    CLUB("groups of a warm-up scheme without a role are warm-ups", INES "scheme plain { 1 x 5 at 50% }\n",
         "weeks 1; warm-up plain for squat; day A { squat 3 x 5 at 80% }", "warm-up 1x5 40, 3x5 80"),
};

static struct plan *planned(struct told *t, const char *lines)
{
    char text[4096];
    snprintf(text, sizeof text, INES "block winter { for ines; starts 2027-01-06; %s }", lines);
    *t = told_club(text);
    assert_string_equal(findings_text(t), "");
    return told_plan(t, "winter", "ines");
}

static void a_week_may_start_on_any_day(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan = planned(&t, "weeks 2; day A on mon " CURL "; day B on wed " CURL);
    /* 2027-01-06 is a Wednesday */
    assert_string_equal(plan_text(&t, plan, SHOW_DATES), "B 2027-01-06 / A 2027-01-11 | B 2027-01-13 / A 2027-01-18");
    told_end(&t);
    plan = planned(&t, "weeks 1; rotate A, B on mon, wed; day A " CURL "; day B " CURL);
    assert_string_equal(plan_text(&t, plan, SHOW_DATES), "A 2027-01-06 / B 2027-01-11");
    told_end(&t);
}

static void what_a_week_and_a_day_carry(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan = planned(&t, "weeks 2; deload week 2; day A { title \"Easy\"; note \"warm hall\"; optional; row "
                                    "or curl 3 x 5; superset for 12 min { curl 1 x 8 } }\n"
                                    "}\nlift row\ngroup nobody { ines");
    const struct plan_week *week = &plan->weeks[1];
    assert_int_equal(week->number, 2);
    assert_int_equal(week->kind, WEEK_DELOAD);
    assert_string_equal(date_text(t.arena, week->start), "2027-01-13");
    const struct plan_day *day = &plan->weeks[0].days[0];
    assert_string_equal(day->day->title, "Easy");
    assert_string_equal(day->day->notes[0], "warm hall");
    assert_true(day->day->optional);
    assert_string_equal(day->gym->name, "hall");
    assert_string_equal(day->entries[0].lift->name, "row");
    assert_int_equal(day->entries[0].choice_count, 1);
    assert_string_equal(day->entries[0].choices[0]->name, "curl");
    assert_int_equal(day->entries[1].superset, 1);
    assert_int_equal(day->entries[1].superset_minutes, 12);
    assert_int_equal(plan->unit, UNIT_KG);
    told_end(&t);
}

static void bands_of_sets_keep_both_ends(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan = planned(&t, "weeks 1; day A { curl 2-5 x 8 at rpe 8 until rpe 9 }");
    const struct plan_group *group = &plan->weeks[0].days[0].entries[0].groups[0];
    assert_int_equal(group->sets_low, 2);
    assert_int_equal(group->sets_high, 5);
    assert_int_equal(group->runs[0].sets, 4);
    told_end(&t);
}

static void discs_a_side(void **state)
{
    (void)state;
    struct told t;
    struct plan *plan = planned(&t, "weeks 1; day A { squat 1 x 1 at 97.5 kg; curl 1 x 5 at 20 kg }");
    const struct plan_run *run = &plan->weeks[0].days[0].entries[0].groups[0].runs[0];
    /* (97.5 - 20) / 2 = 38.75 = 25 + 10 + 2.5 + 1.25: fewest, then heaviest first */
    static const char *const side[] = { "25", "10", "2.5", "1.25" };
    assert_int_equal(run->disc_count, 4);
    for (int i = 0; i < 4; i++)
        assert_string_equal(number_in(&t, run->discs[i], UNIT_KG), side[i]);
    assert_int_equal(plan->weeks[0].days[0].entries[1].groups[0].runs[0].disc_count, -1);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(a_week_may_start_on_any_day),
        cmocka_unit_test(what_a_week_and_a_day_carry),
        cmocka_unit_test(bands_of_sets_keep_both_ends),
        cmocka_unit_test(discs_a_side),
    };
    return rows_run(ARRAY(rows), ARRAY(more));
}
