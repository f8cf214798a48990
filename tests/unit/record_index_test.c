/* Where things stand in a record: lines of a session, days of a lift, who took a day. */
#include "club.h"

#include "plan/record_index.h"

#define DIARY \
    INES "block winter { for ines; starts 2027-01-04; weeks 2; day A on mon { squat 1 x 5 at 80 kg; bench 1 x 5 at 40 kg } }\n" \
         "diary ines { 2027-01-05 { bench 40 kg x 5; squat skipped }; 2027-01-11 A { squat 80 kg x 5 }; 2027-01-12 A { sled 20 kg x 5 } }\n"

static void lines_and_days(void **state)
{
    (void)state;
    struct told t = told_club(DIARY);
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), t.model->blocks, t.model->block_count);
    const struct lift *squat = model_lift(t.model, "squat"), *bench = model_lift(t.model, "bench"), *press = model_lift(t.model, "press");
    assert_int_equal(record_line_of(&record->sessions[0], bench), 0);
    assert_int_equal(record_line_of(&record->sessions[0], squat), 1);
    assert_int_equal(record_line_of(&record->sessions[1], squat), 0);
    assert_int_equal(record_line_of(&record->sessions[1], bench), -1);
    const struct lift_days *days = record_days_of(record, squat);
    assert_int_equal(days->sessions.count, 2); /* the one that was skipped has the lift too */
    assert_int_equal(days->sessions.at[1], 1);
    assert_int_equal(days->done.count, 1);
    assert_int_equal(days->done.at[0].day, record->sessions[1].diary->date.day);
    assert_null(record_days_of(record, press));
    record_index_line(record, &record->sessions[0], squat, 7); /* the first line of a lift counts */
    assert_int_equal(record_line_of(&record->sessions[0], squat), 1);
    record_index_line(record, &record->sessions[1], bench, 5);
    assert_int_equal(record_line_of(&record->sessions[1], bench), 5);
    told_end(&t);
}

static void a_day_is_taken_once(void **state)
{
    (void)state;
    struct told t = told_club(DIARY);
    struct record *record;
    struct plan *plan = told_plan_record(&t, "winter", "ines", &record);
    const struct lift *bench = model_lift(t.model, "bench");
    assert_null(record_taker_of(record, &plan->weeks[0].days[0])); /* the fifth has no label and is no Monday */
    assert_ptr_equal(record_taker_of(record, &plan->weeks[1].days[0]), &record->sessions[1]);
    assert_true(record->sessions[2].doubled);
    assert_int_equal(record_line_of(&record->sessions[1], bench), 1); /* planned and not named: behind the diary's own lines */
    told_end(&t);
}

/* Of blocks beside each other the first of hers, whenever it starts. */
static void blocks_beside_each_other(void **state)
{
    (void)state;
    struct told t = told_club(INES "block late { for ines; starts 2027-01-11; weeks 1; day A on mon { squat 1 x 5 at 80 kg } }\n"
                                   "block early { for ines; starts 2027-01-04; weeks 4; day B on mon { squat 1 x 5 at 80 kg } }\n"
                                   "diary ines { 2027-01-05 { squat 80 kg x 5 }; 2027-01-12 { squat 80 kg x 5 }; 2027-01-18 { squat 80 kg x 5 }; 2027-02-01 { squat 80 kg x 5 } }\n");
    struct record *record = record_new(t.arena, t.model, told_athlete(&t, "ines"), t.model->blocks, t.model->block_count);
    static const int blocks[] = { 1, 0, 1, -1 }, weeks[] = { 1, 1, 3, 0 };
    for (int i = 0; i < 4; i++) {
        assert_int_equal(record->sessions[i].block, blocks[i]);
        assert_int_equal(record->sessions[i].week, weeks[i]);
    }
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines_and_days),
        cmocka_unit_test(a_day_is_taken_once),
        cmocka_unit_test(blocks_beside_each_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
