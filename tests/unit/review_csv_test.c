/* The review as a table for a spreadsheet; src/emit/as_review.h. Read by another program in tests/review.py. */
#include "reviewed.h"

#include "emit/as_review.h"

#include "caught.h"

static const char *csv_of(struct looked *l, bool header)
{
    struct out out = out_scratch(l->t.arena);
    if (header)
        review_csv_header(&out);
    assert_true(review_csv(&out, told_athlete(&l->t, "ines"), l->review));
    out_char(&out, '\0');
    return out.at;
}

/* clang-format off */
static const char expected[] =
    "kind,athlete,date,block,week,day,lift,what,sets,planned_sets,reps,planned_reps,load,planned_load,load_is,unit,tonnage,planned_tonnage,rpe,asked_rpe,worked_out_rpe,difference,percent,error,sessions,rated,minutes,session_load,monotony,strain,new,says\n"
    "max,ines,2027-01-04,winter,1,,squat,line,,,,,100,,total,kg,,,,,,,,,0,,,,,,,\n"
    "max,ines,2027-01-08,,,,squat,running,,,,,100.2,,total,kg,,,,,,,,1.6,1,,,,,,,\n"
    "max,ines,2027-01-04,winter,1,,pull-up,line,,,,,80,,body,kg,,,,,,,,,0,,,,,,,\n"
    "max,ines,2027-01-08,,,,pull-up,running,,,,,79.7,,body,kg,,,,,,,,1.3,1,,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,squat,short,4,4,15,16,76,75.94,total,kg,1140,1215,7.25,5.38,,,93.75,,,4,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,press,none,0,2,0,16,,15,hand,kg,,480,,,,,0,,,,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,pull-up,done,3,3,15,15,7.5,5,added,kg,1012.5,975,9,7.5,,,100,,,1,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,curl,done,0,0,30,30,10,10,total,kg,300,300,,,,,100,,,,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,sled,done,2,2,0,0,,,,,,,,,,,100,,,,,,,,,\n"
    "work,ines,2027-01-04,winter,1,,pulldown,apart,2,,16,,40,,total,kg,640,,,,,,,,,,,,,,,\n"
    "missed,ines,2027-01-04,winter,1,A,press,skipped,,,,,,,,,,,,,,,,,,,,,,,,\"'=1+1, \"\"ow\"\"\"\n"
    "honesty,ines,2027-01-04,,,,squat,few,,,,,,,,,,,7.25,,5.1,2.15,,,,4,,,,,,\n"
    "honesty,ines,2027-01-07,,,,pull-up,few,,,,,,,,,,,9,,8.38,0.63,,,,1,,,,,,\n"
    "load,ines,2027-01-04,,,,,part,,,,,,,,,,,,,,,,,2,1,60,420,,,,\n"
    "best,ines,2027-01-04,,,,squat,set,,,1,,90,,total,kg,,,,,,,,,,,,,,,1,\n"
    "best,ines,2027-01-04,,,,squat,set,,,5,,75,,total,kg,,,,,,,,,,,,,,,1,\n"
    "best,ines,2027-01-04,,,,squat,estimate,,,1,,101.3,,total,kg,,,,,,,,,,,,,,,1,\n"
    "best,ines,2027-01-04,,,,pulldown,set,,,8,,40,,total,kg,,,,,,,,,,,,,,,1,\n"
    "best,ines,2027-01-07,,,,pull-up,set,,,5,,7.5,,added,kg,,,,,,,,,,,,,,,1,\n"
    "best,ines,2027-01-07,,,,pull-up,estimate,,,5,,78.4,,body,kg,,,,,,,,,,,,,,,1,\n";
/* clang-format on */

static void every_kind_has_its_rows(void **state)
{
    (void)state;
    struct looked l = look_back("2027-01-04 A { squat 90 kg x 1 rpe 6 then 75 kg x 5, 5, 4 rpe 7, 8, 8; press skipped "
                                "because \"=1+1, \\\"ow\\\"\"; pulldown 40 kg x 8, 8; "
                                "session rpe 7 for 60 min }\n"
                                "2027-01-07 B { pull-up bodyweight plus 7.5 kg x 5, 5, 5 rpe 9; curl as planned; sled "
                                "40 kg x 20 m, 20 m; session rpe 7 }",
                                (struct review_scope){ .outside = true });
    assert_string_equal(csv_of(&l, true), expected);
    look_away(&l);
}

static void nothing_has_no_rows(void **state)
{
    (void)state;
    struct looked l =
        look_back("2027-01-04 A missed", (struct review_scope){ .outside = true, .from = day_of("2027-01-05") });
    assert_string_equal(csv_of(&l, false), "");
    look_away(&l);
}

static void a_sink_that_refuses_is_told(void **state)
{
    (void)state;
    char text[16];
    struct caught caught = { text, 0, sizeof text };
    struct looked l = look_back("2027-01-04 A missed", (struct review_scope){ .outside = true });
    struct out out = out_new(l.t.arena, (struct sink){ .write = catch_bytes, .context = &caught });
    assert_true(review_csv(&out, told_athlete(&l.t, "ines"), l.review));
    assert_false(out_flush(&out));
    assert_false(review_csv(&out, told_athlete(&l.t, "ines"), l.review));
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(every_kind_has_its_rows),
                                        cmocka_unit_test(nothing_has_no_rows),
                                        cmocka_unit_test(a_sink_that_refuses_is_told) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
