/* `why`: the derivation of each number, with the places it comes from. */
#include "emit/as_why.h"

#include "club.h"

struct kept {
    char text[8192];
    bool refuse;
};

static bool keep(void *context, const char *bytes, size_t length)
{
    struct kept *kept = context;
    size_t used = strlen(kept->text);
    assert_true(used + length < sizeof kept->text);
    memcpy(kept->text + used, bytes, length);
    kept->text[used + length] = 0;
    return !kept->refuse;
}

static int why_of(struct told *t, struct kept *kept, const char *text, int week, const char *day, const char *lift)
{
    *t = told_club(text);
    assert_int_equal(findings_count(t->findings, LEVEL_ERROR), 0);
    memset(kept->text, 0, sizeof kept->text);
    return why_write(t->arena, (struct sink){ .write = keep, .context = kept }, told_plan(t, "one", "ines"), week, day,
                     model_lift(t->model, lift));
}

#define ONE(lines)                                                                                                     \
    "athlete ines { gym hall; max squat 100 kg on 2026-11-28 }\nblock one { for ines; starts 2027-01-04; weeks "       \
    "2\n" lines " }\n"

static void a_whole_derivation(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
    assert_int_equal(why_of(&t, &kept, ONE("day A on mon { squat 3 x 5 at 80% }"), 1, NULL, "squat"), 1);
    /* 80: n = 37 - 28.8 = 8.2, rpe 6.8, printed 7; (80 - 20)/2 = 30 = 25 + 5 */
    assert_string_equal(kept.text, "squat, day A, 2027-01-04: work 3 x 5 at 80 kg  club.block:3:22\n"
                                   "    max of squat: 100 kg, tested on 2026-11-28                club.block:1:26\n"
                                   "    80 % of the max                                           club.block:3:28\n"
                                   "    before rounding: 80 kg\n"
                                   "    rounded to a load of hall: 80 kg                          hall.block:2:5\n"
                                   "    discs a side: 25+5\n"
                                   "    that is 80 % of the full max, expected rpe 7\n"
                                   "\n");
    told_end(&t);
}

static void only_what_was_asked(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
#define DAYS                                                                                                           \
    ONE("day A on mon { squat top 1 x 1 at rpe 8 then back-off 2 x 5 drop 10%; curl 3 x 8-12 }; day B on thu { squat " \
        "1 x 5 at 80%; curl 1 x amrap at 20 kg; curl 2 x 30 s }")
    assert_int_equal(why_of(&t, &kept, DAYS, 1, NULL, "squat"), 3);
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, DAYS, 1, "B", "squat"), 1);
    assert_null(strstr(kept.text, "day A"));
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, DAYS, 3, NULL, "squat"), 0);
    assert_string_equal(kept.text, "");
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, DAYS, 1, NULL, "bench"), 0);
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, DAYS, 1, "A", "curl"), 1);
    assert_non_null(strstr(kept.text, "work 3 x 8-12 at a load of your choice"));
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, DAYS, 1, "B", "curl"), 2);
    assert_non_null(strstr(kept.text, "work 1 x amrap at 20 kg"));
    assert_non_null(strstr(kept.text, "work 2 x 30 s at a load of your choice"));
    told_end(&t);
}

static void light_sets_the_bar_alone_and_open_loads(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
    assert_int_equal(why_of(&t, &kept, ONE("day A { squat 1 x 5 at 20% }"), 1, NULL, "squat"), 1);
    assert_non_null(strstr(kept.text, "squat, day A: work")); /* no date */
    assert_non_null(strstr(kept.text, "discs a side: none, the bar alone\n"));
    assert_non_null(strstr(kept.text, "that is 20 % of the full max, expected rpe <1\n"));
    told_end(&t);
    assert_int_equal(
        why_of(&t, &kept, ONE("day A { curl top 1 x 5 at rpe 8 then back-off 2 x 5 drop 10% }"), 1, NULL, "curl"), 2);
    assert_non_null(strstr(kept.text, "back-off 2 x 5 at 10 % below the top set"));
    told_end(&t);
}

static void a_swapped_lift_is_found_under_both_names(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
#define SWAP ONE("adjust ines { swap squat with front-squat }; day A { squat 1 x 5 at 80% }")
    assert_int_equal(why_of(&t, &kept, SWAP, 1, NULL, "squat"), 1);
    told_end(&t);
    assert_int_equal(why_of(&t, &kept, SWAP, 1, NULL, "front-squat"), 1);
    assert_non_null(strstr(kept.text, "front-squat, day A"));
    assert_non_null(strstr(kept.text, "lent by `like`: front-squat like squat at 80 %"));
    told_end(&t);
}

static void a_template_shows_who_used_it(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
    assert_int_equal(why_of(&t, &kept,
                            "athlete ines { gym hall; max squat 100 kg }\ntemplate base { weeks 1; day A { squat heavy "
                            "} }\nscheme heavy { 3 x 5 at 80% }\n"
                            "block one from base { for ines; starts 2027-01-04 }\n",
                            1, NULL, "squat"),
                     1);
    assert_non_null(strstr(kept.text, "scheme heavy is used here"));
    assert_non_null(strstr(kept.text, "used by block one here"));
    told_end(&t);
}

/* Weights print in the unit of the gym's bar: that of the day, not that of her own gym. */
static void a_day_in_another_gym(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { 0 };
    assert_int_equal(
        why_of(&t, &kept,
               "gym rack { bar 45 lb; plates 45 x 8, 10 x 4 lb }\n"
               "athlete ines { gym rack; max squat 100 kg }\n"
               "block one { for ines; starts 2027-01-04; weeks 1; day A { gym hall; squat 3 x 5 at 80% } }\n",
               1, NULL, "squat"),
        1);
    assert_non_null(strstr(kept.text, "work 3 x 5 at 80 kg"));
    assert_non_null(strstr(kept.text, "rounded to a load of hall: 80 kg"));
    assert_non_null(strstr(kept.text, "discs a side: 25+5\n"));
    told_end(&t);
}

static void a_sink_that_refuses(void **state)
{
    (void)state;
    struct told t;
    struct kept kept = { .refuse = true };
    assert_int_equal(why_of(&t, &kept, ONE("day A { squat 3 x 5 at 80% }"), 1, NULL, "squat"), -1);
    told_end(&t);
}

/* 80 kg, and what the progression did after the first session; squat loads go by 2.5 kg in the hall. */
static const struct moved {
    const char *says, *line, *diary, *move;
} moves[] = {
    { "a weight", "when made add 2.5 kg", "2027-01-04 A { squat as planned }", "2027-01-04: made, so add 2.5 kg; 82.5 kg" },
    { "a per cent", "when made add 5%", "2027-01-04 A { squat as planned }", "2027-01-04: made, so add 5 %; 84 kg" },
    { "a step", "when made add 1 step", "2027-01-04 A { squat as planned }", "2027-01-04: made, so add 1 step; 82.5 kg" },
    { "steps", "when made add 2 steps", "2027-01-04 A { squat as planned }", "2027-01-04: made, so add 2 steps; 85 kg" },
    { "held by its line", "when missed hold", "2027-01-04 A { squat 80 kg x 5, 5 }", "2027-01-04: missed, so hold; 80 kg" },
    { "a weight less", "when missed drop 5 kg", "2027-01-04 A { squat 80 kg x 5, 5 }", "2027-01-04: missed, so drop 5 kg; 75 kg" },
    { "a per cent less", "when missed drop 10%", "2027-01-04 A { squat 80 kg x 5, 5 }", "2027-01-04: missed, so drop 10 %; 72 kg" },
    { "an easy one", "when easy add 5 kg", "2027-01-04 A { squat as planned rpe 4 }", "2027-01-04: easy, so add 5 kg; 85 kg" },
    { "no line for it", "when missed hold", "2027-01-04 A { squat as planned }", "2027-01-04: made, so nothing moves; 80 kg" },
    { "a session missed", "when made add 5 kg", "2027-01-04 A missed", "2027-01-04: held, the session was missed; 80 kg" },
    { "a lift skipped", "when made add 5 kg", "2027-01-04 A { squat skipped }", "2027-01-04: held, skipped; 80 kg" },
    { "no diary of that day", "when made add 5 kg", "2027-01-05 { bench 40 kg x 5 }", "2027-01-04: no diary, counts as made, so add 5 kg; 85 kg" },
};

static void a_move_is_told(void **state)
{
    const struct moved *row = *state;
    struct told t;
    struct kept kept = { 0 };
    char text[1024];
    snprintf(text, sizeof text,
             "progression push { %s }\nathlete ines { gym hall; max squat 100 kg on 2026-11-28 }\n"
             "block one { for ines; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 80 kg progression push } }\n"
             "diary ines {\n%s\n}\n", row->line, row->diary);
    assert_int_equal(why_of(&t, &kept, text, 2, NULL, "squat"), 1);
    if (!strstr(kept.text, row->move))
        fail_msg("%s\nis not in\n%s", row->move, kept.text);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(a_whole_derivation),
        cmocka_unit_test(only_what_was_asked),
        cmocka_unit_test(light_sets_the_bar_alone_and_open_loads),
        cmocka_unit_test(a_swapped_lift_is_found_under_both_names),
        cmocka_unit_test(a_template_shows_who_used_it),
        cmocka_unit_test(a_day_in_another_gym),
        cmocka_unit_test(a_sink_that_refuses),
    };
    struct tests tests = { 0 };
    tests_add(&tests, ARRAY(more));
    tests_add_rows(&tests, EACH(moves, a_move_is_told));
    return tests_run(&tests);
}
