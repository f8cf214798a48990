/* Entries, set groups and their clauses: language.md, section 3. */
#include "club.h"

static const struct row rows[] = {
    FAULT("each clause at most once: rest", "weeks 1; day A { curl 3 x 5 rest 2 min rest 3 min }",
          "error repeated `rest 3 min`"),
    FAULT("at and drop are both the load", "weeks 1; day A { curl 1 x 5 then 3 x 5 at 20 kg drop 10% }",
          "error repeated `drop 10%`"),
    FAULT("two loads", "weeks 1; day A { curl 3 x 5 at 20 kg at rpe 8 }", "error repeated `at rpe 8`"),
    FAULT("two caps", "weeks 1; day A { curl 3 x 5 at 20 kg cap rpe 8 cap 30 kg }", "error repeated `cap 30 kg`"),
    FAULT("two tempos", "weeks 1; day A { curl 3 x 5 tempo \"31X0\" tempo \"11X0\" }",
          "error repeated `tempo \"11X0\"`"),
    FAULT("at least belongs to amrap", "weeks 1; day A { curl 3 x 5 at 20 kg at least 3 }",
          "error misplaced `at least 3`"),
    FAULT("until needs a band of sets", "weeks 1; day A { curl 3 x 5 at rpe 7 until rpe 9 }",
          "error misplaced `until rpe 9`"),
    FAULT("until a speed as well", "weeks 1; day A { curl 3 x 5 until speed 0.3 }",
          "error misplaced `until speed 0.3`"),
    PLAN("until with a band", "weeks 1; day A { curl 2-4 x 5 at rpe 7 until rpe 9 }", "3x5 ?@7"),
    PLAN("until a speed with a band", "weeks 1; day A { curl 2-4 x 5 at 20 kg until speed 0.3 }", "3x5 20"),
    FAULT("a lift without sets", "weeks 1; day A { curl { note \"slowly\" } }", "error missing `curl`"),
    FAULT("a weight without a unit in a cap", "weeks 1; day A { curl 3 x 5 at 20 kg cap 30 }", "error unit `30`"),
    FAULT("a rest without a unit", "weeks 1; day A { curl 3 x 5 rest 90 }", "error unit `90`"),
    FAULT("a rest in metres", "weeks 1; day A { curl 3 x 5 rest 90 m }", "error unit `90 m`"),
    FAULT("a rest of a day and more", "weeks 1; day A { curl 3 x 5 rest 2000 min }", "error range `2000 min`"),
    FAULT("two units in one list", "weeks 1; day A { curl 2 x 5 at 20 kg, 45 lb }", "error unit `45 lb`"),
    FAULT("a per cent where a weight is wanted", "weeks 1; day A { pull-up 3 x 5 at bodyweight plus 5% }",
          "error unit `5%`"),
    FAULT("a weight in lb has at most two decimals", "weeks 1; day A { curl 3 x 5 at 45.125 lb }",
          "error number `45.125 lb`"),
    PLAN("kilograms may have more", "weeks 1; day A { curl 3 x 5 at 22.125 kg }", "3x5 22.5"),
};

static const struct entry *entries_of(struct told *t, const char *lines)
{
    char text[4096];
    snprintf(text, sizeof text, INES "block winter { for ines; starts 2027-01-04; weeks 3; day A { %s } }", lines);
    *t = told_club(text);
    assert_string_equal(findings_text(t), "");
    return t->model->blocks[0]->days[0].entries;
}

static void clauses_as_they_read(void **state)
{
    (void)state;
    struct told t;
    const struct entry *entry = entries_of(&t, "curl 2-5 x 8 at rpe 8 cap 40 kg until speed 0.35 every 60 s rest 2-3 "
                                               "min pause 20 s tempo \"31X0\" each side optional "
                                               "note \"elbows in\" note \"no swing\" in weeks 1-2");
    const struct group *group = &entry->groups[0];
    assert_int_equal(group_more(group)->every_s, 60);
    assert_int_equal(group->rest.low, 120);
    assert_int_equal(group->rest.high, 180);
    assert_int_equal(group->pause.low, 20);
    assert_string_equal(group->tempo, "31X0");
    assert_true(group->each_side && group->optional);
    assert_int_equal(group->note_count, 2);
    assert_string_equal(group->notes[1], "no swing");
    assert_false(group->every_week);
    assert_true(week_in(&group_more(group)->weeks, 2) && !week_in(&group_more(group)->weeks, 3));
    assert_string_equal(dec_text(t.arena, group_more(group)->until_speed), "0.35");
    assert_int_equal(group_more(group)->cap_kind, CAP_WEIGHT);
    assert_int_equal(group->load_kind, LOAD_EFFORT);
    assert_string_equal(spelt(&t, group->load_at), "at rpe 8");
    told_end(&t);
}

static void roles(void **state)
{
    (void)state;
    struct told t;
    const struct entry *entry = entries_of(
        &t, "squat warm-up 1 x 5 at 50% then top 1 x 1 at rpe 8 then back-off 2 x 5 drop 10% then 1 x 10 at 50%");
    static const enum role wanted[] = { ROLE_WARM_UP, ROLE_TOP, ROLE_BACK_OFF, ROLE_WORK };
    static const char *const names[] = { "warm-up", "top", "back-off", "work" };
    assert_int_equal(entry->group_count, 4);
    for (int i = 0; i < 4; i++) {
        assert_int_equal(entry->groups[i].role, wanted[i]);
        assert_string_equal(role_name(entry->groups[i].role), names[i]);
    }
    told_end(&t);
}

static void kinds_of_reps(void **state)
{
    (void)state;
    static const struct {
        const char *lines;
        enum reps_kind kind;
    } cases[] = {
        { "curl 3 x 5", REPS_COUNT },
        { "curl 3 x 8-12", REPS_COUNT },
        { "curl 1 x amrap at 20 kg", REPS_AMRAP },
        { "curl 3 x 30 s", REPS_SECONDS },
        { "curl 3 x 1 min", REPS_SECONDS },
        { "curl 3 x 20 m", REPS_METRES },
        { "curl 3 x 2+2+2", REPS_CLUSTER },
        { "curl total 30", REPS_TOTAL },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t;
        assert_int_equal(entries_of(&t, cases[i].lines)->groups[0].reps_kind, cases[i].kind);
        told_end(&t);
    }
}

static void supersets_and_choices(void **state)
{
    (void)state;
    struct told t;
    const struct entry *entries = entries_of(
        &t, "squat or front-squat 1 x 5 at rpe 7; superset 3 rounds { note \"no rest\"; curl 1 x 8; press 1 x 8 }; "
            "superset for 12 min { curl 1 x 8 }; sled { title \"Push\"; note \"outside\"\n 1 x 20 m }");
    assert_int_equal(t.model->blocks[0]->days[0].entry_count, 5);
    assert_int_equal(entries[0].lift_count, 2);
    assert_string_equal(entries[0].lifts[1]->name, "front-squat");
    assert_int_equal(entries[0].superset, 0);
    assert_int_equal(entries[1].superset, 1);
    assert_int_equal(entries[2].superset, 1);
    assert_string_equal(entry_more(&entries[1])->notes[0], "no rest");
    assert_int_equal(entries[3].superset, 2);
    assert_int_equal(entry_more(&entries[3])->superset_minutes, 12);
    assert_string_equal(entry_more(&entries[4])->title, "Push");
    assert_string_equal(entry_more(&entries[4])->notes[0], "outside");
    told_end(&t);
}

static void a_scheme_shows_where_it_is_used(void **state)
{
    (void)state;
    struct told t = told_club(INES "scheme heavy { 3 x 5 at rpe 11 }\nblock winter { for ines; starts 2027-01-04; "
                                   "weeks 1; day A { sled heavy } }");
    const struct finding *finding = the_finding(&t, KIND_RANGE);
    assert_string_equal(spelt(&t, finding->at), "11");
    assert_non_null(finding->related);
    assert_string_equal(finding->related->says, "scheme heavy is used here");
    assert_string_equal(spelt(&t, finding->related->at), "heavy");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(clauses_as_they_read),
        cmocka_unit_test(roles),
        cmocka_unit_test(kinds_of_reps),
        cmocka_unit_test(supersets_and_choices),
        cmocka_unit_test(a_scheme_shows_where_it_is_used),
    };
    return rows_run(ARRAY(rows), ARRAY(more));
}
