/* The training record: which session of the plan an entry of the diary belongs to, and what of it (language.md, section 4.1). A
 * record is written short: each session as the week and day it matched, or `-`, then each lift and how it stands to the plan. */
#include "club.h"

static const char *part_short(struct told *t, const struct record_part *part)
{
    const char *text = "";
    for (int i = 0; i < part->set_count; i++)
        text = arena_format(t->arena, "%s%s%sx%d%s", text, *text ? " " : "", part->sets[i].has_load ? number_in(t, part->sets[i].load, UNIT_KG) : "?", part->sets[i].reps,
                            part->sets[i].counted ? "" : "m");
    return arena_format(t->arena, "%s%s", *text ? text : "none", record_part_missed(part) ? " short" : "");
}

static const char *lift_short(struct told *t, const struct record_lift *lift)
{
    static const char *const how[] = { [RECORD_DONE] = "", [RECORD_UNEVEN] = " uneven", [RECORD_SKIPPED] = " skipped", [RECORD_UNNAMED] = " unnamed",
                                       [RECORD_EXTRA] = " extra" };
    const char *text = arena_format(t->arena, "%s%s%s", lift->lift->name, how[lift->how], lift->other_choice ? " instead" : "");
    if (lift->how != RECORD_DONE)
        return text;
    for (int i = 0; i < lift->part_count; i++)
        text = arena_format(t->arena, "%s%s%s", text, i ? " | " : " ", part_short(t, &lift->parts[i]));
    const struct record_set *last = &lift->sets[lift->set_count - 1];
    return last->has_effort ? arena_format(t->arena, "%s @%s", text, dec_text(t->arena, last->effort)) : text;
}

static const char *record_short(struct told *t, const struct record *record)
{
    const char *text = "";
    for (int i = 0; record && i < record->session_count; i++) {
        const struct record_session *session = &record->sessions[i];
        text = arena_format(t->arena, "%s%s", text, i ? " / " : "");
        text = session->day ? arena_format(t->arena, "%s%d%s", text, session->week, session->day->day->label) : arena_format(t->arena, "%s-", text);
        if (session->diary->missed)
            text = arena_format(t->arena, "%s missed", text);
        for (int j = 0; j < session->lift_count; j++)
            text = arena_format(t->arena, "%s%s %s", text, j ? ";" : "", lift_short(t, &session->lifts[j]));
    }
    return text;
}

struct told_record {
    const char *says, *block, *diary, *comes, *findings;
};

static void record_holds(void **state)
{
    const struct told_record *row = *state;
    char text[4096];
    snprintf(text, sizeof text,
             "%sprogression steady { when made add 2.5 kg }\nblock winter { for ines; starts 2027-01-04; weeks 2\n%s\n}\ndiary ines {\n%s\n}\n", INES, row->block,
             row->diary);
    struct told t = told_club(text);
    struct record *record;
    assert_string_equal(findings_text(&t), "");
    told_plan_record(&t, "winter", "ines", &record);
    assert_string_equal(record_short(&t, record), row->comes);
    assert_string_equal(findings_text(&t), row->findings ? row->findings : "");
    told_end(&t);
}

#define RECORD(sentence, lines, diary, comes) { sentence, lines, diary, comes, NULL }
#define ODD(sentence, lines, diary, comes, found) { sentence, lines, diary, comes, found }
#define AB "day A on mon { squat 2 x 5 at 80% }; day B on thu { bench 2 x 5 at 50 kg }"
#define TWICE "day A on mon, thu { squat 2 x 5 at 80% }"

static const struct told_record rows[] = {
    RECORD("the week of its date, the day of its label", AB, "2027-01-05 A { squat 80 kg x 5, 5 }\n2027-01-16 B { bench 50 kg x 5, 5 }",
           "1A squat 80x5 80x5 / 2B bench 50x5 50x5"),
    RECORD("the week it names", AB, "2027-01-11 B week 1 { bench 50 kg x 5, 5 }", "1B bench 50x5 50x5"),
    RECORD("without a label the day of its date", AB, "2027-01-07 { bench 50 kg x 5, 5 }", "1B bench 50x5 50x5"),
    RECORD("a label trained twice takes the session of its date", TWICE, "2027-01-07 A { squat 80 kg x 5, 5 }\n2027-01-04 A { squat 80 kg x 5, 4 }",
           "1A squat 80x5 80x4 short / 1A squat 80x5 80x5"),
    RECORD("else the first not yet taken", TWICE, "2027-01-05 A { squat 80 kg x 5, 5 }\n2027-01-08 A { squat 80 kg x 5, 4 }",
           "1A squat 80x5 80x5 / 1A squat 80x5 80x4 short"),
    ODD("a second entry for one session", AB, "2027-01-04 A { squat 80 kg x 5, 5 }\n2027-01-05 A { squat 80 kg x 5, 5 }", "1A squat 80x5 80x5 / - squat extra",
        "error diary `2027-01-05`"),
    ODD("a date outside every block", AB, "2027-01-18 A { squat 80 kg x 5, 5 }", "- squat extra", "warning unmatched-diary `2027-01-18`"),
    RECORD("the last day of a block is in it", "day A on sun { squat 1 x 5 at 80% }", "2027-01-17 { squat 80 kg x 5 }", "2A squat 80x5"),
    ODD("the day before it is not", AB, "2027-01-03 A { squat 80 kg x 5, 5 }", "- squat extra", "warning unmatched-diary `2027-01-03`"),
    ODD("a week that the block does not have", AB, "2027-01-11 A week 3 { squat 80 kg x 5, 5 }", "- squat extra", "warning unmatched-diary `2027-01-11`"),
    ODD("a day that the week does not have", AB, "2027-01-11 C { squat 80 kg x 5, 5 }", "- squat extra", "warning unmatched-diary `2027-01-11`"),
    ODD("no label, and nothing planned for the date", AB, "2027-01-12 { squat 80 kg x 5, 5 }", "- squat extra", "warning unmatched-diary `2027-01-12`"),
    RECORD("an undated day by its label", "day A { squat 1 x 5 at 80% }", "2027-01-06 A { squat 80 kg x 5 }", "1A squat 80x5"),
    RECORD("missed", AB, "2027-01-04 A missed because \"travelling\"", "1A missed"),
    RECORD("parts match groups in order, warm-ups aside",
           "day A on mon { squat { warm-up 1 x 5 at 50%; top 1 x 1 at 90%; back-off 2 x 5 at 75% } }", "2027-01-04 A { squat 90 kg x 1 then 75 kg x 5, 5 }",
           "1A squat 90x1 | 75x5 75x5"),
    ODD("parts that are too few", "day A on mon { squat { top 1 x 1 at 90%; back-off 2 x 5 at 75% } }", "2027-01-04 A { squat 90 kg x 1 }", "1A squat uneven",
        "warning unmatched-diary `squat`"),
    RECORD("a comma list is one group, whatever it prints", "day A on mon { squat 3 x (5, 5, 3) at 70, 75, 80% }",
           "2027-01-04 A { squat 70, 75, 80 kg x 5, 5, 3 }", "1A squat 70x5 75x5 80x3"),
    RECORD("and each set stands beside its own", "day A on mon { squat 3 x (5, 5, 3) at 70, 75, 80% }", "2027-01-04 A { squat 70, 75, 80 kg x 5, 4, 3 }",
           "1A squat 70x5 75x4 80x3 short"),
    RECORD("as planned stands for printed loads and target reps", "day A on mon { squat { top 1 x 1 at 90%; back-off 2 x 5 at 75% } }",
           "2027-01-04 A { squat as planned rpe 8 }", "1A squat 90x1 | 75x5 75x5 @8"),
    RECORD("of a range its middle", "day A on mon { curl 2 x 8-12 at 20 kg }", "2027-01-04 A { curl as planned }", "1A curl 20x10 20x10"),
    RECORD("of a progression its target", "day A on mon { curl 2 x 8-12 at 20 kg progression steady }", "2027-01-04 A { curl as planned }", "1A curl 20x8 20x8"),
    RECORD("of the other choice the reps alone", "day A on mon { curl or sled 2 x 5 at 20 kg }", "2027-01-04 A { sled as planned rpe 8 }",
           "1A sled instead ?x5 ?x5 @8"),
    ODD("as planned of what is not planned", AB, "2027-01-04 A { squat as planned; curl as planned }", "1A squat 80x5 80x5; curl extra",
        "warning unmatched-diary `curl`"),
    RECORD("another lift is extra", AB, "2027-01-04 A { squat 80 kg x 5, 5; curl 20 kg x 5 }", "1A squat 80x5 80x5; curl extra"),
    RECORD("a lift not named, without a progression, is silent", "day A on mon { squat 1 x 5 at 80%; bench 1 x 5 at 50 kg }", "2027-01-04 A { squat 80 kg x 5 }",
           "1A squat 80x5; bench unnamed"),
    ODD("with one it is asked for", "day A on mon { squat 1 x 5 at 80%; bench 1 x 5 at 50 kg progression steady }", "2027-01-04 A { squat 80 kg x 5 }",
        "1A squat 80x5; bench unnamed", "warning unmatched-diary `2027-01-04`"),
    RECORD("skipped", AB, "2027-01-04 A { squat skipped because \"knee\" }", "1A squat skipped"),
    RECORD("the other lift of a choice", "day A on mon { curl or sled 1 x 5 at 20 kg }", "2027-01-04 A { sled 30 kg x 5 }", "1A sled instead 30x5"),
    RECORD("of both lifts of a choice the planned one counts, the other is extra", "day A on mon { curl or sled 1 x 5 at 20 kg }",
           "2027-01-04 A { sled 30 kg x 5; curl 20 kg x 5 }", "1A sled extra; curl 20x5"),
    RECORD("the planned one skipped, the other stands for it", "day A on mon { curl or sled 1 x 5 at 20 kg }",
           "2027-01-04 A { curl skipped; sled 30 kg x 5 }", "1A curl skipped; sled instead 30x5"),
    RECORD("the other one skipped is the entry skipped", "day A on mon { curl or sled 1 x 5 at 20 kg }", "2027-01-04 A { sled skipped }",
           "1A sled skipped instead"),
    RECORD("a bare number for seconds or metres is no number of reps", "day A on mon { sled 2 x 20 m at 40 kg }", "2027-01-04 A { sled 40 kg x 20, 15 }",
           "1A sled 40x20m 40x15m short"),
    RECORD("two entries of one lift are one row of parts", "day A on mon { squat 1 x 5 at 80%; curl 1 x 8 at 20 kg; squat 1 x 3 at 70% }",
           "2027-01-04 A { squat 80 kg x 5 then 70 kg x 3; curl 20 kg x 8 }", "1A squat 80x5 | 70x3; curl 20x8"),
    RECORD("lighter than a per cent is short", AB, "2027-01-04 A { squat 77.5 kg x 5, 5 }", "1A squat 77.5x5 77.5x5 short"),
    RECORD("lighter than an effort is hers to choose", "day A on mon { squat 2 x 5 at rpe 8 }", "2027-01-04 A { squat 70 kg x 5, 5 }", "1A squat 70x5 70x5"),
    RECORD("a set not done is short", AB, "2027-01-04 A { squat 80 kg x 5 }", "1A squat 80x5 short"),
    RECORD("the least of a band of sets is enough", "day A on mon { squat 2-4 x 5 at 80% }", "2027-01-04 A { squat 80 kg x 5, 5 }", "1A squat 80x5 80x5"),
    RECORD("rounds multiply", "day A on mon { superset 2 rounds { curl 1 x 10 at 10 kg; sled 1 x 10 at 20 kg } }",
           "2027-01-04 A { curl 10 kg x 10, 10; sled 20 kg x 10 }", "1A curl 10x10 10x10; sled 20x10 short"),
    RECORD("on a lift that loads the body the total counts", "day A on mon { pull-up 1 x 5 at bodyweight plus 10 kg }",
           "2027-01-04 A { pull-up bodyweight plus 10 kg x 5 }", "1A pull-up 70x5"),
    RECORD("with the diary's bodyweight of that day", "day A on mon { pull-up 1 x 5 at bodyweight plus 10 kg }",
           "bodyweight 61 kg on 2027-01-04\n2027-01-04 A { pull-up bodyweight plus 10 kg x 5 }", "1A pull-up 71x5"),
    ODD("a bare load lighter than the bar", AB, "2027-01-04 A { squat 5 x 5, 5 }", "1A squat 5x5 5x5 short", "error diary `5 x 5, 5`"),
    RECORD("with its unit it is taken as written", AB, "2027-01-04 A { squat 5 kg x 5, 5 }", "1A squat 5x5 5x5 short"),
    RECORD("a bare load of the bar itself is fine", "day A on mon { squat 1 x 5 at 20 kg }", "2027-01-04 A { squat 20 x 5 }", "1A squat 20x5"),
};

static void the_last_day_of_a_lift(void **state)
{
    (void)state;
    struct told t = told_club(INES "diary ines { 2027-01-04 { squat 80 kg x 5 }; 2027-01-06 { squat skipped }; 2027-01-08 { squat 80 kg x 5 } }\n");
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), NULL, 0);
    const struct lift *squat = model_lift(t.model, "squat");
    struct date fourth, eighth;
    assert_true(date_make(2027, 1, 4, &fourth));
    assert_true(date_make(2027, 1, 8, &eighth));
    assert_false(date_is_set(record_last_day(record, squat, fourth)));
    assert_int_equal(record_last_day(record, squat, eighth).day, fourth.day);
    assert_int_equal(record_last_day(record, squat, date_plus(eighth, 1)).day, eighth.day);
    assert_false(date_is_set(record_last_day(record, model_lift(t.model, "bench"), date_plus(eighth, 1))));
    assert_false(date_is_set(record_last_day(NULL, squat, eighth)));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(the_last_day_of_a_lift),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, record_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
