/* $names: language.md, section 3, Reuse. */
#include "builds.h"

static const struct build builds[] = {
    TEXT("a number of sets and reps", DAY("let $s = 4; let $r = 8-10; day A { curl $s x $r }"), "A: curl 4x8-10 ?"),
    TEXT("a unit after the name", DAY("let $t = 70; day A { sled 3 x 5 at $t% }"), "A: sled 3x5 700"),
    TEXT("an effort",
         "block spring { for ines; starts 2027-01-04; weeks 2; let $top = from 7 to 8; day A { curl 1 x 1 at rpe $top "
         "} }\n",
         "A: curl 1x1 ?@7 | A: curl 1x1 ?@8"),
    TEXT("a weight", DAY("let $w = 22.5 kg; day A { curl 3 x 5 at $w }"), "A: curl 3x5 22.5"),
    TEXT("a lift", DAY("let $main = sled; day A { $main 3 x 5 at 70% }"), "A: sled 3x5 700"),
    TEXT("a name for a name", DAY("let $a = 70%; let $b = $a; day A { sled 3 x 5 at $b }"), "A: sled 3x5 700"),
    TEXT("a text", DAY("let $slow = \"31X0\"; day A { note $slow; curl 3 x 5 tempo $slow note $slow }"),
         "A: curl 3x5 ?"),
    TEXT_FAULT("a number where a text is wanted", DAY("let $slow = 3; day A { curl 3 x 5 tempo $slow }"),
               "error unit `$slow`"),
    TEXT("$names in changes",
         DAY("let $less = 2; let $who = curl; deload week 1 { sets down $less for $who }; day A { curl 3 x 5 }"),
         "A: curl 1x5 ?"),
    TEXT("names within a ramp",
         "block spring { for ines; starts 2027-01-04; weeks 3; let $low = 60; let $high = 80; "
         "day A { sled 3 x 5 at from $low to $high% } }\n",
         "A: sled 3x5 600 | A: sled 3x5 700 | A: sled 3x5 800"),
    TEXT("names within a bar list",
         "block spring { for ines; starts 2027-01-04; weeks 2; let $a = 60; let $b = 80; day A { sled 3 x 5 at $a | "
         "$b% } }\n",
         "A: sled 3x5 600 | A: sled 3x5 800"),
    TEXT("a name with its unit within a comma list", DAY("let $a = 60%; day A { sled 2 x 5 at $a, 80% }"),
         "A: sled 1x5 600, 1x5 800"),
    TEXT("a step by a name",
         "block spring { for ines; starts 2027-01-04; weeks 2; let $more = 2.5; "
         "day A { sled 3 x 5 at 70% plus $more% each week } }\n",
         "A: sled 3x5 700 | A: sled 3x5 725"),
    TEXT("a band of names", DAY("let $a = 8; let $b = 12; day A { curl 3 x $a-$b }"), "A: curl 3x8-12 ?"),
    TEXT_FAULT("a series within a series", DAY("let $a = from 60 to 80%; day A { sled 2 x 5 at $a, 80% }"),
               "error range `$a`"),
    TEXT_FAULT("a name set twice in one place", DAY("let $a = 60%; let $a = 70%; day A { sled 3 x 5 at $a }"),
               "error repeated `$a`"),
    TEXT_FAULT("two units through a name", DAY("let $a = 60 kg; day A { sled 2 x 5 at $a, 80% }"), "error unit `80%`"),
    TEXT_FAULT("a name that stands for itself", DAY("let $a = $b; let $b = $a; day A { sled 3 x 5 at $a }"),
               "error cycle `$a`"),
    TEXT_FAULT("a text where a number is wanted", DAY("let $a = \"heavy\"; day A { sled 3 x 5 at $a }"),
               "error unit `$a`"),
    TEXT_FAULT("a number where a lift is wanted", DAY("let $main = 5; day A { $main 3 x 5 }"), "error unit `$main`"),
    TEXT_FAULT("a plain number where a per cent is wanted", DAY("let $t = 70; day A { sled 3 x 5 at $t }"),
               "error unit `70`"),
    TEXT_FAULT("reps in seconds for a number of sets", DAY("let $s = 30 s; day A { curl $s x 5 }"),
               "error unit `30 s`"),
};

static void her_own_let_is_the_nearest(void **state)
{
    (void)state;
    struct told t =
        told_club("athlete ines { gym hall; max sled 1000 kg; let $t = 80% }\nathlete tomas { gym hall; max sled 1000 "
                  "kg }\n" SCHEME "block spring { for all; starts 2027-01-04; weeks 1; let $t = 60%; day A { sled "
                  "heavy with $t = 75%; sled 1 x 1 at $t } }\n");
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(plan_of_spring(&t), "A: sled 3x5 800; sled 1x1 800");
    assert_string_equal(plan_text(&t, told_plan(&t, "spring", "tomas"), SHOW_DAYS), "A: sled 3x5 750; sled 1x1 600");
    assert_ptr_equal(model_block_for(t.model, 0, told_athlete(&t, "tomas")), t.model->blocks[0]);
    assert_ptr_equal(model_block_for(t.model, 0, told_athlete(&t, "ines")),
                     model_block_for(t.model, 0, told_athlete(&t, "ines")));
    told_end(&t);
}

static void an_unknown_name_shows_the_from_that_led_there(void **state)
{
    (void)state;
    struct told t = told_club(
        INES "template root { weeks 1; day A { sled 3 x 5 at $t } }\ntemplate base from root { title \"B\" }\n"
             "block spring from base { for ines; starts 2027-01-04 }\n");
    const struct finding *finding = the_finding(&t, KIND_UNKNOWN_LET);
    assert_non_null(finding->related);
    assert_string_equal(finding->related->says, "used by template base here");
    assert_string_equal(spelt(&t, finding->related->at), "root");
    assert_non_null(finding->related->next);
    assert_string_equal(finding->related->next->says, "used by block spring here");
    assert_string_equal(spelt(&t, finding->related->next->at), "base");
    told_end(&t);
}

static void a_near_name_is_offered(void **state)
{
    (void)state;
    struct told t =
        told_club(INES SCHEME DAY("let $top = 8; day A { curl 3 x 5 at rpe $tip; sled heavy with $tt = 80% }"));
    assert_string_equal(findings_text(&t), "error unknown-let `$tip`; error unknown-let `$tt`");
    assert_string_equal(findings_sorted(t.findings)[0]->help, "did you mean $top?");
    assert_string_equal(findings_sorted(t.findings)[1]->help, "did you mean $t?");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(her_own_let_is_the_nearest),
        cmocka_unit_test(an_unknown_name_shows_the_from_that_led_there),
        cmocka_unit_test(a_near_name_is_offered),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(builds, build_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
