/* Diaries as written: language.md, section 4.1. A session is written short: date and label, then each lift's sets as
 * load x reps, with what was rated behind @ and what was timed behind !. */
#include "club.h"

#include "model/history.h"

struct told_diary {
    const char *says, *lines; /* of diary ines { } */
    const char *comes;        /* NULL: not looked at */
    const char *findings;     /* NULL: none */
};

static const char *set_short(struct told *t, const struct done_set *set)
{
    const char *text = arena_format(t->arena, "%s%sx%d%s", number_in(t, set->load, UNIT_KG), set->bare ? "?" : "", set->reps, set->counted ? "" : "s");
    if (set->has_effort)
        text = arena_format(t->arena, "%s@%s", text, dec_text(t->arena, set->effort));
    return set->has_speed ? arena_format(t->arena, "%s!%s", text, dec_text(t->arena, set->speed)) : text;
}

static const char *lift_short(struct told *t, const struct done_lift *lift)
{
    const char *text = lift->lift->name;
    if (lift->how == DONE_SKIPPED)
        return arena_format(t->arena, "%s skipped%s%s", text, lift->because ? ": " : "", lift->because ? lift->because : "");
    if (lift->how == DONE_AS_PLANNED)
        return arena_format(t->arena, "%s as planned%s%s%s%s", text, lift->has_effort ? "@" : "", lift->has_effort ? dec_text(t->arena, lift->effort) : "",
                            lift->has_speed ? "!" : "", lift->has_speed ? dec_text(t->arena, lift->speed) : "");
    for (int i = 0; i < lift->part_count; i++)
        for (int j = 0; j < lift->parts[i].set_count; j++)
            text = arena_format(t->arena, "%s%s%s", text, i && !j ? " then " : " ", set_short(t, &lift->parts[i].sets[j]));
    return text;
}

static const char *session_short(struct told *t, const struct diary_session *session)
{
    const char *text = arena_format(t->arena, "%s%s%s", date_text(t->arena, session->date), session->label ? " " : "", session->label ? session->label : "");
    if (session->week)
        text = arena_format(t->arena, "%s w%d", text, session->week);
    if (session->missed)
        return arena_format(t->arena, "%s missed%s%s", text, session->because ? ": " : "", session->because ? session->because : "");
    for (int i = 0; i < session->lift_count; i++)
        text = arena_format(t->arena, "%s%s %s", text, i ? ";" : "", lift_short(t, &session->lifts[i]));
    if (session->has_effort)
        text = arena_format(t->arena, "%s; all @%s %d min", text, dec_text(t->arena, session->effort), session->minutes);
    for (int i = 0; i < session->note_count; i++)
        text = arena_format(t->arena, "%s \"%s\"", text, session->notes[i]);
    return arena_format(t->arena, "%s%s", text, session->lets_in ? " let in" : "");
}

static void diary_holds(void **state)
{
    const struct told_diary *row = *state;
    char text[4096];
    snprintf(text, sizeof text, "%sathlete tomas { gym hall }\ngroup both { ines, tomas }\ndiary ines {\n%s\n}\n", INES, row->lines);
    struct told t = told_club(text);
    if (row->comes) {
        const struct athlete *ines = told_athlete(&t, "ines");
        const char *comes = "";
        for (int i = 0; i < ines->diary_count; i++)
            comes = arena_format(t.arena, "%s%s%s", comes, *comes ? " / " : "", session_short(&t, &ines->diary[i]));
        assert_string_equal(comes, row->comes);
    }
    assert_string_equal(findings_text(&t), row->findings ? row->findings : "");
    told_end(&t);
}

#define DIARY(sentence, text, comes) { sentence, text, comes, NULL }
#define FAULTY(sentence, text, found) { sentence, text, NULL, found }

static const struct told_diary rows[] = {
    DIARY("the example of the design",
          "2027-01-04 A { squat 107.5 kg x 1 rpe 8 then 90 kg x 5, 5, 5, 4 rpe 6, 6, 6.5, 8\n"
          "bench 50 kg x 4, 4, 4, 4 rpe 6 speed 0.45\n sled as planned rpe 7\n pull-up bodyweight x 8, 7, 7\n"
          "curl skipped because \"elbow\"\n session rpe 7 for 80 min\n note \"short night\" }\n2027-01-07 B missed because \"travelling\"",
          "2027-01-04 A squat 107.5x1@8 then 90x5@6 90x5@6 90x5@6.5 90x4@8; bench 50x4 50x4 50x4 50x4@6!0.45; sled as planned@7; "
          "pull-up 0x8 0x7 0x7; curl skipped: elbow; all @7 80 min \"short night\" / 2027-01-07 B missed: travelling"),
    DIARY("a comma list of loads goes with the list of reps", "2027-01-04 { bench 50, 50, 47.5 kg x 4, 4, 4 rpe 7 }",
          "2027-01-04 bench 50x4 50x4 47.5x4@7"),
    DIARY("a rating as reps in reserve", "2027-01-04 { bench 50 kg x 4 rir 2 }", "2027-01-04 bench 50x4@8"),
    DIARY("a failed rep is x 0", "2027-01-04 { squat 110 kg x 0 rpe 10 }", "2027-01-04 squat 110x0@10"),
    DIARY("a bare number takes the file's units, and is remembered as bare", "2027-01-04 { squat 90 x 5 }", "2027-01-04 squat 90?x5"),
    DIARY("pounds", "2027-01-04 { squat 100 lb x 5 }", "2027-01-04 squat 45.359237x5"),
    DIARY("what is added to the body, and what is taken off",
          "2027-01-04 { pull-up bodyweight plus 10 kg x 5 then bodyweight minus 15 kg x 8 then 5 kg x 6 }",
          "2027-01-04 pull-up 10x5 then -15x8 then 5x6"),
    DIARY("seconds and metres are no reps", "2027-01-04 { sled 40 kg x 20, 20 m then 30 kg x 1 min }", "2027-01-04 sled 40x20s 40x20s then 30x60s"),
    DIARY("as planned with a speed", "2027-01-04 { squat as planned speed 0.3 }", "2027-01-04 squat as planned!0.3"),
    DIARY("the week it belongs to", "2027-01-11 A week 1 { squat as planned }\n2027-01-12 week 1 missed",
          "2027-01-11 A w1 squat as planned / 2027-01-12 w1 missed"),
    DIARY("by date, whatever the order", "2027-01-11 A { squat as planned }\n2027-01-04 B { squat as planned }\n2027-01-04 A { bench as planned }",
          "2027-01-04 A bench as planned / 2027-01-04 B squat as planned / 2027-01-11 A squat as planned"),
    DIARY("what was left is read as an effort", "2027-01-04 { session rir 2.5 for 1 min }", "2027-01-04; all @7.5 1 min"),
    DIARY("minutes are whole", "2027-01-04 { session rpe 7.5 for 90 s }", "2027-01-04; all @7.5 2 min"),
    DIARY("an allow lets far results in", "2027-01-04 { squat 90 kg x 5; allow unlikely-result because \"she is that strong\" }",
          "2027-01-04 squat 90x5 let in"),
    DIARY("another allow does not", "2027-01-04 { squat 90 kg x 5; allow missed-often because \"flu\" }", "2027-01-04 squat 90x5"),
    FAULTY("a lift nobody declared", "2027-01-04 { sqat 90 kg x 5 }", "error unknown-name `sqat`"),
    FAULTY("efforts by the set are as many as the reps", "2027-01-04 { squat 90 kg x 5, 5, 5 rpe 7, 8 }", "error list-length `rpe 7, 8`"),
    FAULTY("speeds by the set are as many as the reps", "2027-01-04 { squat 90 kg x 5, 5, 5 speed 0.4, 0.3 }", "error list-length `0.4, 0.3`"),
    FAULTY("loads by the set are as many as the reps", "2027-01-04 { squat 90, 85 kg x 5 }", "error list-length `90, 85 kg`"),
    FAULTY("reps in per cent", "2027-01-04 { squat 90 kg x 5% }", "error unit `5%`"),
    FAULTY("a load in seconds", "2027-01-04 { squat 90 s x 5 }", "error unit `90 s`"),
    FAULTY("reps that nobody can do", "2027-01-04 { squat 90 kg x 1001 }", "error range `1001`"),
    FAULTY("a ramp", "2027-01-04 { squat 90 kg x 5 rpe from 7 to 8 }", "error range `rpe from 7 to 8`"),
    FAULTY("a lb weight has two decimals", "2027-01-04 { squat 90.125 lb x 5 }", "error number `90.125 lb`"),
    FAULTY("bodyweight on a bar", "2027-01-04 { squat bodyweight x 5 }", "error misplaced `bodyweight`"),
    FAULTY("a lift twice", "2027-01-04 { squat 90 kg x 5; squat 80 kg x 5 }", "error repeated `squat`"),
    FAULTY("a bodyweight without its day", "bodyweight 62 kg", "error range `bodyweight 62 kg`"),
    FAULTY("a bodyweight of nothing", "bodyweight 0 kg on 2027-01-08", "error range `0 kg`"),
    FAULTY("a session in two weeks", "2027-01-04 A weeks 1-2 { squat as planned }", "error range `weeks 1-2`"),
    FAULTY("two efforts for one session", "2027-01-04 { session rpe 7; session rpe 8 }", "error range `session rpe 8`"),
    FAULTY("a group's diary", "}\ndiary both { 2027-01-04 { squat as planned }", "error diary `both`"),
    FAULTY("nobody's diary", "}\ndiary hanna { 2027-01-04 { squat as planned }", "error unknown-name `hanna`"),
};

/* Statements and files in another order say the same. */
static void order_says_nothing(void **state)
{
    (void)state;
    struct told one = told_club(INES "diary ines { 2027-01-04 A { squat 90 kg x 5 } }\ndiary ines { 2027-01-04 B { bench 50 kg x 5 } }\n");
    struct told other = told_club("diary ines { 2027-01-04 B { bench 50 kg x 5 } }\ndiary ines { 2027-01-04 A { squat 90 kg x 5 } }\n" INES);
    for (int i = 0; i < 2; i++)
        assert_string_equal(session_short(&one, &told_athlete(&one, "ines")->diary[i]), session_short(&other, &told_athlete(&other, "ines")->diary[i]));
    told_end(&one);
    told_end(&other);
}

static void bodyweights_are_known_from_the_day_after(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; bodyweight 60 kg on 2026-12-01 }\ndiary ines { bodyweight 62.1 kg on 2027-01-08 }\n"
                              "athlete tomas { gym hall }\ndiary tomas { bodyweight 80 kg on 2027-01-08 }\n");
    struct date day, after;
    assert_true(date_make(2027, 1, 8, &day));
    after = date_plus(day, 1);
    const struct athlete *ines = told_athlete(&t, "ines"), *tomas = told_athlete(&t, "tomas");
    assert_int_equal(history_bodyweight(ines, day)->weight.e10, 60 * DEC_ONE);
    assert_int_equal(history_bodyweight(ines, after)->weight.e10, 621 * (DEC_ONE / 10));
    assert_null(history_bodyweight(tomas, day)); /* a line of his own would count; a result never does before its day */
    assert_int_equal(history_bodyweight(tomas, after)->weight.e10, 80 * DEC_ONE);
    told_end(&t);
}

/* A max written as bodyweight plus something reads the diary's bodyweights too. */
static void maxes_read_them_too(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; max pull-up bodyweight plus 20 kg on 2027-01-09 }\ndiary ines { bodyweight 62 kg on 2027-01-08 }\n");
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(ratio_to_weight(told_athlete(&t, "ines")->maxes[0].load).e10, 82 * DEC_ONE);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(order_says_nothing),
        cmocka_unit_test(bodyweights_are_known_from_the_day_after),
        cmocka_unit_test(maxes_read_them_too),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, diary_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
