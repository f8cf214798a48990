/* Changes as they are written: language.md, section 3. What they do to sets is tested with plan/change.c. */
#include "club.h"

static const struct block *block_of(struct told *t, const char *lines)
{
    char text[2048];
    snprintf(text, sizeof text,
             INES "block winter { for ines; starts 2027-01-04; weeks 4; %s; day A { squat 3 x 5 at rpe 7; curl 3 x 5 "
                  "}; day B { squat 3 x 5 at rpe 7 } }\n",
             lines);
    *t = told_club(text);
    assert_string_equal(findings_text(t), "");
    return t->model->blocks[0];
}

static void a_bare_deload_is_three_changes(void **state)
{
    (void)state;
    struct told t;
    const struct block *block = block_of(&t, "deload week 2");
    static const struct {
        enum change_verb verb;
        enum change_way way;
        const char *amount;
        enum unit unit;
    } wanted[] = {
        { CHANGE_SETS, CHANGE_TO, "50", UNIT_PERCENT },
        { CHANGE_EFFORT, CHANGE_DOWN, "2", UNIT_NONE },
        { CHANGE_LOAD, CHANGE_DOWN, "10", UNIT_PERCENT },
    };
    assert_int_equal(block->deloads[0].change_count, 3);
    for (int i = 0; i < 3; i++) {
        const struct change *change = &block->deloads[0].changes[i];
        assert_int_equal(change->verb, wanted[i].verb);
        assert_int_equal(change->way, wanted[i].way);
        assert_string_equal(dec_text(t.arena, change->value.series->weeks[0].sets[0].low), wanted[i].amount);
        assert_int_equal(change->value.unit, wanted[i].unit);
        assert_int_equal(change->id, -1);
    }
    told_end(&t);
}

static void every_verb_is_read(void **state)
{
    (void)state;
    struct told t;
    const struct block *block =
        block_of(&t, "adjust ines { sets up 1; reps down 1; rpe to 6; load down 5%; swap squat with front-squat; skip "
                     "curl; skip day B; skip week 2; "
                     "repeat weeks 1, 3; cap squat rpe 8; cap rir 1; add to day A { press 1 x 8 }; note \"slow\" }");
    static const enum change_verb wanted[] = { CHANGE_SETS,        CHANGE_REPS,      CHANGE_EFFORT,   CHANGE_LOAD,
                                               CHANGE_SWAP,        CHANGE_SKIP_LIFT, CHANGE_SKIP_DAY, CHANGE_SKIP_WEEK,
                                               CHANGE_REPEAT_WEEK, CHANGE_CAP,       CHANGE_CAP,      CHANGE_ADD,
                                               CHANGE_NOTE };
    const struct change_list *list = &block->adjusts[0];
    assert_int_equal(list->change_count, 13);
    for (int i = 0; i < 13; i++) {
        assert_int_equal(list->changes[i].verb, wanted[i]);
        assert_int_equal(list->changes[i].id, i);
    }
    assert_int_equal(block->change_count, 13);
    assert_string_equal(list->changes[4].swap_with->name, "front-squat");
    assert_string_equal(spelt(&t, list->changes[4].lift_at[0]), "squat");
    assert_true(week_in(&list->changes[8].weeks, 1) && !week_in(&list->changes[8].weeks, 2) &&
                week_in(&list->changes[8].weeks, 3));
    assert_string_equal(list->changes[11].add_day, "A");
    assert_int_equal(list->changes[11].entry_count, 1);
    assert_string_equal(list->changes[12].note, "slow");
    told_end(&t);
}

static void for_lifts_and_on_days(void **state)
{
    (void)state;
    struct told t;
    const struct change *change =
        block_of(&t, "deload weeks 2-3 { sets to 60 | 40% for squat, curl on day A, B }")->deloads[0].changes;
    assert_int_equal(change->lift_count, 2);
    assert_string_equal(change->lifts[1]->name, "curl");
    assert_int_equal(change->day_count, 2);
    assert_string_equal(change->days[1], "B");
    assert_string_equal(spelt(&t, change->day_at[1]), "B");
    told_end(&t);
}

static void what_is_wrong_with_changes(void **state)
{
    (void)state;
    static const struct row rows[] = {
        FAULT("rpe by per cent", "weeks 1; deload week 1 { rpe down 10% }; day A { curl 1 x 1 }", "error unit `10%`"),
        FAULT("sets by weight", "weeks 1; deload week 1 { sets down 10 kg }; day A { curl 1 x 1 }",
              "error unit `10 kg`"),
        FAULT("a cap past ten", "weeks 1; adjust ines { cap rpe 12 }; day A { curl 1 x 1 }", "error range `12`"),
        FAULT("a lift for a swap", "weeks 1; adjust ines { swap curl with crul }; day A { curl 1 x 1 }",
              "error unknown-name `crul`"),
        PLAN_FAULT("a week to skip that is not there", "weeks 1; adjust ines { skip week 3 }; day A { curl 1 x 1 }",
                   "1x1 ?", "warning weeks `3`"),
        FAULT("in weeks past the end", "weeks 1; adjust ines in weeks 3 { sets up 1 }; day A { curl 1 x 1 }",
              "warning weeks `3`"),
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        void *row = NULL;
        memcpy(&row, &(const struct row *){ &rows[i] }, sizeof row);
        row_holds(&row);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bare_deload_is_three_changes),
        cmocka_unit_test(every_verb_is_read),
        cmocka_unit_test(for_lifts_and_on_days),
        cmocka_unit_test(what_is_wrong_with_changes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
