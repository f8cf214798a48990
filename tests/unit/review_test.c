/* What of a diary is looked at, and what was left out; src/plan/review.h. Dates by the calendar of January 2027,
 * whose 4th is a Monday. */
#include "reviewed.h"

static const char *weeks_text(struct looked *l)
{
    const char *text = "";
    for (int i = 0; i < l->review->week_count; i++) {
        const struct review_week *week = &l->review->weeks[i];
        text = arena_format(l->t.arena, "%s%s%s %d", text, *text ? ", " : "", date_text(l->t.arena, week->start),
                            week->number);
    }
    return text;
}

static const char *sessions_text(struct looked *l)
{
    const char *text = "";
    for (int i = 0; i < l->review->session_count; i++) {
        const struct review_session *session = &l->review->sessions[i];
        text = arena_format(l->t.arena, "%s%s%s in %d", text, *text ? ", " : "",
                            date_text(l->t.arena, session->session->diary->date), session->week->number);
    }
    return text;
}

static const char *misses_text(struct looked *l)
{
    static const char *const how[] = { "missed", "skipped", "unnamed", "no entry" };
    struct review_misses misses = review_misses(l->review);
    const char *text = "";
    for (int i = 0; i < misses.count; i++)
        text = arena_format(l->t.arena, "%s%s%s %s %s%s%s%s%s", text, *text ? "; " : "",
                            date_text(l->t.arena, misses.at[i].date), misses.at[i].label ? misses.at[i].label : "-",
                            misses.at[i].lift ? misses.at[i].lift->name : "", misses.at[i].lift ? " " : "",
                            how[misses.at[i].how], misses.at[i].because ? " " : "",
                            misses.at[i].because ? misses.at[i].because : "");
    return text;
}

struct looking {
    const char *says, *diary;
    int first_week, last_week;
    const char *from, *to;
    bool inside; /* not outside */
    const char *weeks, *sessions, *misses;
};

#define A_DONE " A { squat as planned; press as planned }\n"
#define B_DONE " B { pull-up as planned; curl as planned; sled as planned }\n"
#define THREE "2027-01-04" A_DONE "2027-01-07" B_DONE "2027-01-11" A_DONE

static const struct looking rows[] = {
    { "weeks from the first entry to the last, and nothing that is not due yet", THREE,
      .weeks = "2027-01-04 1, 2027-01-11 2", .sessions = "2027-01-04 in 1, 2027-01-07 in 1, 2027-01-11 in 2",
      .misses = "" },
    { "a planned day without an entry, an optional one aside", "2027-01-04" A_DONE "2027-01-18" A_DONE,
      .weeks = "2027-01-04 1, 2027-01-11 2, 2027-01-18 3", .sessions = "2027-01-04 in 1, 2027-01-18 in 3",
      .misses = "2027-01-07 B no entry; 2027-01-11 A no entry; 2027-01-14 B no entry" },
    { "nothing was asked for before the first entry", "2027-01-07" B_DONE, .weeks = "2027-01-04 1",
      .sessions = "2027-01-07 in 1", .misses = "" },
    { "missed, skipped, and not named",
      "2027-01-04 A { squat skipped because \"knee\" }\n2027-01-07 B missed because \"away\"\n2027-01-09 C missed",
      .weeks = "2027-01-04 1", .sessions = "2027-01-04 in 1, 2027-01-07 in 1, 2027-01-09 in 1",
      .misses = "2027-01-04 A squat skipped knee; 2027-01-04 A press unnamed; 2027-01-07 B missed away; 2027-01-09 C "
                "missed" },
    { "a session moved to another day is that session", "2027-01-04" A_DONE "2027-01-08" B_DONE,
      .weeks = "2027-01-04 1", .sessions = "2027-01-04 in 1, 2027-01-08 in 1", .misses = "" },
    { "one that says its week is of that week",
      "2027-01-04" A_DONE "2027-01-11 B week 1 { pull-up as planned; curl as planned; sled as planned }\n",
      .weeks = "2027-01-04 1, 2027-01-11 2", .sessions = "2027-01-04 in 1, 2027-01-11 in 1",
      .misses = "2027-01-11 A no entry" },
    { "even where that is before the diary's first day", "2027-01-11 A week 1 { squat as planned; press as planned }\n",
      .weeks = "2027-01-04 1, 2027-01-11 2", .sessions = "2027-01-11 in 1", .misses = "2027-01-11 A no entry" },
    { "sessions outside all blocks have weeks from Monday on",
      "2027-02-06 { squat 60 kg x 5 }\n2027-02-10 { squat 60 kg x 5 }\n2027-02-14 { squat 60 kg x 5 }",
      .weeks = "2027-02-01 0, 2027-02-08 0", .sessions = "2027-02-06 in 0, 2027-02-10 in 0, 2027-02-14 in 0",
      .misses = "" },
    { "and are left out where blocks are asked for", THREE "2027-02-06 { squat 60 kg x 5 }", .inside = true,
      .weeks = "2027-01-04 1, 2027-01-11 2, 2027-01-18 3, 2027-01-25 4",
      .sessions = "2027-01-04 in 1, 2027-01-07 in 1, 2027-01-11 in 2",
      .misses = "2027-01-14 B no entry; 2027-01-18 A no entry; 2027-01-21 B no entry; 2027-01-25 A no entry; "
                "2027-01-28 B no entry" },
    { "a session without a label is of its week, on a Saturday day C's", THREE "2027-01-09 { squat 60 kg x 5 }\n2027-01-13 { squat 60 kg x 5 }",
      .weeks = "2027-01-04 1, 2027-01-11 2",
      .sessions = "2027-01-04 in 1, 2027-01-07 in 1, 2027-01-09 in 1, 2027-01-11 in 2, 2027-01-13 in 2", .misses = "2027-01-09 C bench unnamed" },
    { "by week", THREE, .first_week = 2, .last_week = 3, .inside = true, .weeks = "2027-01-11 2",
      .sessions = "2027-01-11 in 2", .misses = "" },
    { "by date", "2027-01-04" A_DONE "2027-01-18" A_DONE "2027-01-21" B_DONE, .from = "2027-01-07", .to = "2027-01-18",
      .weeks = "2027-01-04 1, 2027-01-11 2, 2027-01-18 3", .sessions = "2027-01-18 in 3",
      .misses = "2027-01-07 B no entry; 2027-01-11 A no entry; 2027-01-14 B no entry" },
    { "nothing there", THREE, .from = "2027-01-25", .weeks = "", .sessions = "", .misses = "" },
};

static void looking_holds(void **state)
{
    const struct looking *row = *state;
    struct review_scope scope = { .outside = !row->inside,
                                  .first_week = row->first_week,
                                  .last_week = row->last_week,
                                  .from = day_of(row->from ? row->from : ""),
                                  .to = day_of(row->to ? row->to : "") };
    struct looked l = look_back(row->diary, scope);
    assert_string_equal(weeks_text(&l), row->weeks);
    assert_string_equal(sessions_text(&l), row->sessions);
    assert_string_equal(misses_text(&l), row->misses);
    look_away(&l);
}

static void lifts_are_those_done(void **state)
{
    (void)state;
    struct looked l = look_back("2027-01-04 A { press skipped; curl 10 kg x 5; squat as planned }\n2027-01-07 B { curl "
                                "as planned; pulldown 40 kg x 5 }",
                                (struct review_scope){ .outside = true });
    const char *text = "";
    for (int i = 0; i < l.review->lift_count; i++)
        text = arena_format(l.t.arena, "%s %s", text, l.review->lifts[i]->name);
    assert_string_equal(text, " curl squat pulldown");
    look_away(&l);
}

/* Her rating 8 beside 75 %, n = 10: rpe 5 (Brzycki by hand). */
static void honesty_is_of_what_is_looked_at(void **state)
{
    (void)state;
    const char *diary = "2027-01-04 A { squat 90 kg x 1 then 75 kg x 5, 5, 5 rpe 8, 8, 8; press as planned rpe 7 }\n"
                        "2027-01-11 A { squat 90 kg x 1 then 75 kg x 5, 5, 5 rpe 8, 8, 9; press as planned }";
    struct looked l = look_back(diary, (struct review_scope){ .outside = true });
    struct review_honesty list = review_honesty(l.review);
    assert_int_equal(list.count, 1);
    assert_int_equal(list.at[0].sets, 6);
    assert_string_equal(hundredths(&l, list.at[0].rated), "8.17"); /* 49 / 6 */
    assert_string_equal(hundredths(&l, list.at[0].worked_out), "5");
    assert_true(list.at[0].off);
    look_away(&l);
    l = look_back(diary, (struct review_scope){ .outside = true, .from = day_of("2027-01-05") });
    list = review_honesty(l.review);
    assert_int_equal(list.at[0].sets, 3);
    assert_false(list.at[0].off);
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(lifts_are_those_done),
        cmocka_unit_test(honesty_is_of_what_is_looked_at),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, looking_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
