/* What a block states, and the places in it: language.md, section 3. */
#include "club.h"

#define CURL "day A { curl 3 x 5 }"

static const struct row rows[] = {
    FAULT("a block states its weeks", CURL, "error missing `winter`"),
    FAULT("weeks are whole", "weeks 2.5; " CURL, "error range `2.5`"),
    FAULT("at least one", "weeks 0; " CURL, "error range `0`"),
    FAULT("and 256 at most", "weeks 257; " CURL, "error range `257`"),
    PLAN("a plain block", "weeks 1; " CURL, "3x5 ?"),
    FAULT("a goal is one of four", "weeks 1; goal strenth; " CURL, "error unknown-name `strenth`"),
    FAULT("a curve that is none", "weeks 1; model epply; " CURL, "error unknown-name `epply`"),
    FAULT("a max of nothing", "weeks 1; max to 0%; " CURL, "error range `0%`"),
    FAULT("max to needs its per cent", "weeks 1; max to 90; " CURL, "error unit `90`"),
    FAULT("a gym nobody has declared", "weeks 1; day A { gym hell; curl 3 x 5 }", "error unknown-name `hell`"),
    FAULT("a group of weeks backwards", "weeks 4; weeks 3-1 { " CURL " }", "error range `3-1`"),
    PLAN_FAULT("a group of weeks past the end is a warning", "weeks 2; weeks 1-3 { " CURL " }", "3x5 ? | 3x5 ?",
               "warning weeks `1-3`"),
    PLAN_FAULT("in weeks past the end too", "weeks 2; day A { curl 3 x 5 in weeks 1-3 }", "3x5 ? | 3x5 ?",
               "warning weeks `1-3`"),
    FAULT("a lift that is not declared", "weeks 1; day A { crul 3 x 5 }", "error unknown-name `crul`"),
    FAULT("for a lift in a warm-up", "weeks 1; warm-up ramp for curl; " CURL, "error unknown-name `ramp`"),
    FAULT("for nobody", "weeks 1; adjust toms { sets down 1 }; " CURL, "error unknown-name `toms`"),
    PLAN("weeks groups nest", "weeks 4; weeks 2-4 { weeks 1-3 { " CURL " } }", " | 3x5 ? | 3x5 ? | "),
    FAULT("a second goal", "weeks 1; goal peak; goal strength; " CURL, "error repeated `goal strength`"),
};

static const struct block *winter(struct told *t)
{
    assert_string_equal(findings_text(t), "");
    assert_int_equal(t->model->block_count, 1);
    return t->model->blocks[0];
}

static void what_a_block_says(void **state)
{
    (void)state;
    struct told t =
        told_club(INES "athlete tomas\ngroup novices { tomas, ines }\n"
                       "block winter { title \"Winter base\"; goal peak; for novices; starts 2027-01-04; weeks 6; "
                       "model epley; max to 92.5%\n"
                       "note \"one\"; note \"two\"; deload each 3 weeks; taper week 5 { sets to 1 }; " CURL " }");
    const struct block *block = winter(&t);
    assert_string_equal(block->title, "Winter base");
    assert_int_equal(block->goal, GOAL_PEAK);
    assert_true(block->has_goal);
    assert_string_equal(goal_name(block->goal), "peak");
    assert_string_equal(date_text(t.arena, block->start), "2027-01-04");
    assert_int_equal(block->week_count, 6);
    assert_string_equal(curve_name(block->model), "epley");
    assert_string_equal(dec_text(t.arena, block->max_percent), "92.5");
    assert_false(block->max_fixed);
    assert_int_equal(block->note_count, 2);
    assert_string_equal(block->notes[1], "two");
    static const enum week_kind kinds[] = { WEEK_TRAINING, WEEK_TRAINING, WEEK_DELOAD,
                                            WEEK_TRAINING, WEEK_TAPER,    WEEK_DELOAD };
    for (int week = 1; week <= 6; week++)
        assert_int_equal(block->kinds[week], kinds[week - 1]);
    assert_string_equal(week_kind_name(WEEK_TAPER), "taper");
    assert_int_equal(block->people->count, 2);
    assert_string_equal(block->people->at[0]->name, "tomas");
    told_end(&t);
}

static void a_block_without_a_goal_is_general(void **state)
{
    (void)state;
    struct told t = told_club(INES "block winter { for ines; starts 2027-01-04; weeks 1; max fixed; " CURL " }");
    const struct block *block = winter(&t);
    assert_int_equal(block->goal, GOAL_GENERAL);
    assert_false(block->has_goal);
    assert_null(block->title);
    assert_true(block->max_fixed);
    told_end(&t);
}

static void a_block_states_for_and_starts(void **state)
{
    (void)state;
    struct told t = told_club(INES "block winter { weeks 1; " CURL " }");
    assert_string_equal(findings_text(&t), "error missing `winter`");
    assert_string_equal(findings_sorted(t.findings)[0]->message, "block winter does not say `for`, `starts`");
    told_end(&t);
}

static void findings_name_their_setting(void **state)
{
    (void)state;
    struct told t =
        told_club(INES "block winter { for ines; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at rpe 11 } }");
    const struct finding *finding = the_finding(&t, KIND_RANGE);
    assert_string_equal(finding->setting.block, "winter");
    assert_string_equal(finding->setting.day, "A");
    assert_string_equal(finding->setting.lift, "squat");
    assert_string_equal(finding->message, "effort goes from 0 to 10");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(what_a_block_says),
        cmocka_unit_test(a_block_without_a_goal_is_general),
        cmocka_unit_test(a_block_states_for_and_starts),
        cmocka_unit_test(findings_name_their_setting),
    };
    return rows_run(ARRAY(rows), ARRAY(more));
}
