/* Athletes who share a block share its shape: their plans are the ones they get alone, whoever is planned first. */
#include "club.h"

static const char club[] =
    INES "athlete tomas { gym hall; max squat 150 kg; max sled 800 kg }\nathlete piotr { gym hall; max squat 180 kg; max sled 900 kg }\n"
         "athlete hanna { max squat 90 kg; max sled 500 kg; avoid curl use sled }\nathlete dale { gym hall; max squat 200 kg; max sled 700 kg }\n"
         "progression fill { when reps full add 1 step }\n"
         "block winter { for ines, tomas, piotr, hanna, dale; starts 2027-01-04; weeks 4; deload week 4 { sets to 50%; reps down 1; load down 10% }\n"
         "day A on mon { squat top 1 x 1 at rpe from 6 to 8 then back-off 3 x 5 drop 10%; sled 3 x 8-10 at 40 kg progression fill }\n"
         "day B on thu { curl 2 x 10 at 12.5 kg; squat 3 x 5 at 70% }\n"
         "adjust dale in weeks 2-3 { load down 5% } }\n";

static const char *const names[] = { "ines", "tomas", "piotr", "hanna", "dale" };
enum { NAMES = sizeof names / sizeof *names };

static const char *planned(struct told *t, const char *name, struct shapes *shapes, bool *touched)
{
    const struct plan *plan = plan_make(t->arena, &(struct plan_job){ .model = t->model, .block = t->model->blocks[0],
                                                                      .athlete = told_athlete(t, name), .shapes = shapes, .touched = touched });
    return plan_text(t, plan, SHOW_DAYS);
}

static void shared_is_as_alone(void **state)
{
    (void)state;
    struct told t = told_club(club);
    struct shapes *shapes = shapes_new(t.arena);
    assert_string_equal(findings_text(&t), "");
    for (int turn = 0; turn < 2; turn++) /* the second time every shape is there */
        for (int i = NAMES - 1; i >= 0; i--)
            assert_string_equal(planned(&t, names[i], shapes, NULL), planned(&t, names[i], NULL, NULL));
    told_end(&t);
}

static void what_was_touched_is_told_to_each(void **state)
{
    (void)state;
    enum { CHANGES = 4 };
    struct told t = told_club(club);
    struct shapes *shapes = shapes_new(t.arena);
    assert_int_equal(t.model->blocks[0]->change_count, CHANGES);
    for (int i = 0; i < NAMES; i++) {
        bool alone[CHANGES] = { 0 }, shared[CHANGES] = { 0 };
        planned(&t, names[i], NULL, alone);
        planned(&t, names[i], shapes, shared);
        assert_memory_equal(alone, shared, sizeof alone);
        assert_true(alone[0]);
    }
    told_end(&t);
}

/* What is said while a shape is made is said for each athlete, and not for the first alone. */
static void findings_name_all(void **state)
{
    (void)state;
    struct told t = told_club(INES "athlete tomas { gym hall }\nathlete piotr { gym hall }\nblock winter { for ines, tomas, piotr; starts 2027-01-04; weeks 3\n"
                                   "day A on mon { squat 3 x 5 at rpe 9 plus 1 each week } }\n");
    struct shapes *shapes = shapes_new(t.arena);
    for (int i = 0; i < 3; i++)
        planned(&t, names[i], shapes, NULL);
    assert_int_equal(the_finding(&t, KIND_RANGE)->athlete_count, 3);
    told_end(&t);
}

/* Without reasons and totals the loads are the same. */
static void bare_plans_have_the_same_loads(void **state)
{
    (void)state;
    struct told t = told_club(club);
    for (int i = 0; i < NAMES; i++) {
        const struct plan *bare = plan_make(t.arena, &(struct plan_job){ .model = t.model, .block = t.model->blocks[0],
                                                                         .athlete = told_athlete(&t, names[i]), .bare = true });
        assert_string_equal(plan_text(&t, bare, SHOW_DAYS), planned(&t, names[i], NULL, NULL));
        assert_null(bare->weeks[0].days[0].entries[0].groups[0].runs[0].reason);
        assert_int_equal(bare->weeks[0].totals.sets, 0);
    }
    told_end(&t);
}

/* Changes of effort and a running max meet in one derivation, which a bare plan does not have. */
static void bare_plans_follow_a_diary(void **state)
{
    (void)state;
    struct told t = told_club(INES "block winter { for ines; starts 2027-01-04; weeks 2; deload week 2; day A on mon { squat 3 x 5 at rpe 8 } }\n"
                                   "diary ines { 2027-01-04 A { squat 90 kg x 5, 5, 5 rpe 8 } }\n");
    const struct block *blocks[] = { t.model->blocks[0] };
    struct plan_job job = { .model = t.model, .block = blocks[0], .athlete = told_athlete(&t, "ines"), .bare = true };
    job.record = record_new(t.arena, t.model, job.athlete, blocks, 1);
    assert_string_equal(plan_text(&t, plan_make(t.arena, &job), SHOW_GROUPS), plan_text(&t, told_plan(&t, "winter", "ines"), SHOW_GROUPS));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(shared_is_as_alone), cmocka_unit_test(what_was_touched_is_told_to_each),
                                        cmocka_unit_test(findings_name_all), cmocka_unit_test(bare_plans_have_the_same_loads),
                                        cmocka_unit_test(bare_plans_follow_a_diary) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
