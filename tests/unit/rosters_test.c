/* Lifters of rosters, made with all others or one by one: language.md, section 4.2. */
#include "club.h"

#include "model/history.h"

#define WINTER "block winter { for all; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at 70% } }\n"
#define ROSTER \
    "athlete,title,gym,bodyweight,lift,max,unit,reps,rpe,date\n" \
    "mila,Mila Brandt,hall,58.5,squat,102.5,kg,,,2026-12-01\n" \
    "mila,,,,bench,57.5,kg,5,8,2026-12-02\n" \
    "juho,,,,squat,300,lb,,,\n" \
    "\n" \
    "enna,,shed,,squat,90,,,,2026-11-20\n"

static struct told told_roster(const char *text, const char *roster)
{
    struct told t = told_begin();
    const struct paper papers[] = {
        { "hall.block", HALL "gym shed { bar 15 kg; plates 20 x 4 kg }\n" },
        { "club.block", arena_format(t.arena, "roster \"athletes.csv\"\n%s", text) },
        { "athletes.csv", roster },
        { "more.csv", "athlete\nzoe\n" },
        { NULL, NULL }
    };
    told_load(&t, papers, (const char *const[]){ "hall.block", "club.block" }, 2);
    if (!findings_count(t.findings, LEVEL_ERROR))
        told_resolve(&t);
    return t;
}

/* All facts of hers that can come from a roster. */
static const char *facts(struct told *t, const struct athlete *athlete)
{
    const char *text = arena_format(t->arena, "%d %s %s %s %d %d", athlete->order, athlete->name, athlete->title ? athlete->title : "-",
                                    athlete->gym->name ? athlete->gym->name : "-", athlete->has_gym, athlete->unit);
    for (int i = 0; i < athlete->max_count; i++) {
        const struct max_line *line = &athlete->maxes[i];
        text = arena_format(t->arena, "%s, %s %s %d/%d %s x %s rpe %s `%s`", text, line->lift->name,
                            dec_text(t->arena, ratio_nearest(line->load, (struct dec){ 1 })), line->estimated, line->date.day,
                            dec_text(t->arena, (struct dec){ line->set_load.e10 }), dec_text(t->arena, line->set_reps),
                            dec_text(t->arena, line->set_effort), spelt(t, line->at));
    }
    for (int i = 0; i < athlete->bodyweight_count; i++)
        text = arena_format(t->arena, "%s, %s kg", text, dec_text(t->arena, (struct dec){ athlete->bodyweights[i].weight.e10 }));
    return text;
}

static void who_waits_is_like_who_does_not(void **state)
{
    (void)state;
    struct told t = told_roster(WINTER "athlete ola\n", ROSTER);
    struct arena *arena = arena_within(t.arena);
    const char *waiting[3];
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->athlete_count, 1);
    assert_int_equal(t.model->waiting_count, 3);
    const struct people *people = t.model->blocks[0]->people;
    assert_int_equal(people->count, 1);
    assert_int_equal(people_count(t.model, people), 4);
    for (int i = 3; i-- > 0; arena_reset(arena)) /* in any order, and again */
        waiting[i] = facts(&t, model_waiting(t.model, i, arena));
    assert_string_equal(waiting[0], facts(&t, model_waiting(t.model, 0, arena)));
    model_gather(t.model);
    assert_int_equal(t.model->waiting_count, 0);
    assert_int_equal(t.model->athlete_count, 4);
    assert_int_equal(people->count, 4);
    assert_int_equal(people_count(t.model, people), 4);
    assert_string_equal(people->at[0]->name, "ola");
    for (int i = 0; i < 3; i++) {
        assert_ptr_equal(people->at[i + 1], t.model->athletes[i + 1]);
        assert_string_equal(facts(&t, t.model->athletes[i + 1]), waiting[i]);
    }
    assert_string_equal(findings_text(&t), "");
    model_gather(t.model); /* nobody is left */
    assert_int_equal(t.model->athlete_count, 4);
    told_end(&t);
}

static void who_waits_is_told_as_written(void **state)
{
    (void)state;
    struct told t = told_roster(WINTER, ROSTER);
    const struct athlete *mila = model_waiting(t.model, 0, t.arena), *juho = model_waiting(t.model, 1, t.arena);
    assert_string_equal(mila->name, "mila");
    assert_string_equal(mila->title, "Mila Brandt");
    assert_string_equal(mila->gym->name, "hall");
    assert_int_equal(mila->max_count, 2);
    assert_string_equal(mila->maxes[0].lift->name, "squat");
    assert_int_equal(mila->maxes[0].set_load.e10, 1025000000000); /* 102.5 kg */
    assert_true(mila->maxes[1].estimated);
    assert_string_equal(juho->name, "juho");
    assert_null(juho->title);
    assert_false(juho->has_gym);
    assert_int_equal(juho->unit, UNIT_LB);
    assert_int_equal(juho->maxes[0].set_load.e10, 1360777110000); /* 300 lb of 0.45359237 kg, exact since 1959 */
    assert_ptr_equal(juho->gym, model_waiting(t.model, 1, t.arena)->gym);
    told_end(&t);
}

/* Whoever is meant by more than `all` is made at once, and all others with her. */
static void who_has_to_be_made_at_once(void **state)
{
    (void)state;
    static const struct {
        const char *text, *roster;
        int waiting;
        const char *findings;
    } cases[] = {
        { WINTER, ROSTER, 3, "" },
        { WINTER "athlete ola\ngroup some { ola }\nblock spring { for ola, some; starts 2027-02-01; weeks 1; day A { curl 3 x 5 } }\n", ROSTER, 3, "" },
        { WINTER "group some { juho }\n", ROSTER, 0, "" },
        { "block spring { for juho; starts 2027-02-01; weeks 1; day A { curl 3 x 5 } }\n", ROSTER, 0, "" },
        { "block spring { for all, juho; starts 2027-02-01; weeks 1; day A { curl 3 x 5 } }\n", ROSTER, 0, "" },
        { "block spring { for jugo; starts 2027-02-01; weeks 1; day A { curl 3 x 5 } }\n", ROSTER, 0, "error unknown-name `jugo`" },
        { "block winter { for all; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at 70% }; adjust enna { skip day A } }\n", ROSTER, 0, "" },
        { "block winter { for all; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at 70% }; adjust all { skip day A } }\n", ROSTER, 0, "" },
        { WINTER "diary enna { 2027-01-05 A { squat 60 kg x 5 } }\n", ROSTER, 0, "" },
        { "season way { for all; meet \"Weir Cup\" on 2027-02-06; run winter }\nblock winter { weeks 1; day A on mon { squat 3 x 5 at 70% } }\n", ROSTER, 0, "" },
        { WINTER "athlete enna\n", ROSTER, 0, "error duplicate-name `enna`" },
        { WINTER "group enna { juho }\n", ROSTER, 0, "error duplicate-name `enna`" },
        { WINTER "roster \"more.csv\"\n", ROSTER, 0, "" },
        { WINTER, "athlete,lift,max\nmila,sqat,100\n", 0, "error unknown-name `sqat`" },
        { WINTER, "athlete,gym\nmila,barn\n", 0, "error unknown-name `barn`" },
        { WINTER, "athlete\nmila\nall\n", 0, "error duplicate-name `all`" },
        { WINTER, "athlete\nmila\njuho\nmila\n", 0, "" },
        { "units lb\n" WINTER, "athlete,lift,max\nmila,squat,100.125\n", 0, "error roster `100.125`" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t = told_roster(cases[i].text, cases[i].roster);
        assert_string_equal(findings_text(&t), cases[i].findings);
        assert_int_equal(t.model->waiting_count, cases[i].waiting);
        told_end(&t);
    }
}

/* A default gym is everybody's, whoever is the first to need it. */
static void a_default_gym_outlives_whom_it_was_made_for(void **state)
{
    (void)state;
    struct told t = told_roster(WINTER, ROSTER);
    struct arena *arena = arena_within(t.arena);
    const struct gym *gym = model_waiting(t.model, 1, arena)->gym;
    arena_reset(arena);
    model_gather(t.model);
    assert_ptr_equal(t.model->athletes[1]->gym, gym);
    assert_int_equal(gym->unit, UNIT_LB);
    assert_int_equal(gym->bar_count, 1);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(who_waits_is_like_who_does_not),
        cmocka_unit_test(who_waits_is_told_as_written),
        cmocka_unit_test(who_has_to_be_made_at_once),
        cmocka_unit_test(a_default_gym_outlives_whom_it_was_made_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
