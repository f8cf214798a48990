/* Every number carries its derivation: the chain of reasons and its sentences. */
#include "club.h"

#include "plan/reason.h"

/* The chain from the coach's words to the load, one step a line. */
static const char *chain(struct told *t, const struct reason *reason, enum weight_unit unit)
{
    const char *before = reason->before ? chain(t, reason->before, unit) : "";
    return arena_format(t->arena, "%s%s%s", before, *before ? "\n" : "", reason_sentence(t->arena, reason, unit));
}

#define CUSTOM                                                                                                         \
    "athlete ines { gym hall; bodyweight 60 kg on 2026-12-01; max squat 100 kg on 2026-11-28; max bench from 57.5 kg " \
    "x 5 rpe 8 on 2026-12-02; max sled 1000 kg; "                                                                      \
    "max pull-up 80 kg }\n"                                                                                            \
    "progression steady { when made add 2.5 kg }\n"

static const struct {
    const char *says, *lines;
    int week, entry, group; /* week from 1 */
    const char *chain;
} cases[] = {
    /* n = 5 + 2: (37 - 7)/36 = 83.33 % */
    { "an effort", "day A { squat 3 x 5 at rpe 8 }", 1, 0, 0,
      "max of squat: 100 kg, tested on 2026-11-28\n"
      "asked for: rpe 8, 2 reps left\n"
      "7 repetitions could be done: 83.33 % of the max on the usual curve\n"
      "before rounding: 83.33 kg\n"
      "rounded to a load of hall: 82.5 kg" },
    { "a band of efforts", "day A { squat 3 x 5 at rpe 7-8 }", 1, 0, 0,
      "max of squat: 100 kg, tested on 2026-11-28\n"
      "asked for: rpe 7-8, the middle counts\n"
      "7.5 repetitions could be done: 81.94 % of the max on the usual curve\n"
      "before rounding: 81.94 kg\n"
      "rounded to a load of hall: 82.5 kg" },
    { "an estimated max, a curve by name", "model epley; day A { bench 3 x 5 at rpe 8 }", 1, 0, 0,
      "max of bench: 68.63 kg, worked out from a set on 2026-12-02\n" /* 57.5 × 37/31: on the block's curve */
      "asked for: rpe 8, 2 reps left\n"
      "7 repetitions could be done: 83.78 % of the max on the epley curve\n" /* (1 + 1/30)/(1 + 7/30) */
      "before rounding: 57.5 kg\n"
      "rounded to a load of hall: 57.5 kg" },
    { "a series", "day A { sled 3 x 5 at 70 | 75% }", 2, 0, 0,
      "max of sled: 1000 kg, tested, undated\n"
      "training week 2 of the 2 that this counts\n"
      "75 % of the max\n"
      "before rounding: 750 kg\n"
      "rounded to a load of hall: 750 kg" },
    { "a borrowed max", "day A { front-squat 3 x 5 at 75% }", 1, 0, 0,
      "max of squat: 100 kg, tested on 2026-11-28\n"
      "lent by `like`: front-squat like squat at 80 %\n"
      "75 % of the max\n"
      "before rounding: 60 kg\n"
      "rounded to a load of hall: 60 kg" },
    { "a reduced max", "max to 90%; day A { squat 3 x 5 at 80% }", 1, 0, 0,
      "max of squat: 100 kg, tested on 2026-11-28\n"
      "the block works from 90 % of the max\n"
      "80 % of the max\n"
      "before rounding: 72 kg\n"
      "rounded to a load of hall: 72.5 kg" },
    { "of another lift", "day A { curl 3 x 5 at 20% of squat }", 1, 0, 0,
      "max of squat: 100 kg, tested on 2026-11-28\n"
      "20 % of the max of squat\n"
      "before rounding: 20 kg\n"
      "rounded to a load of hall: 20 kg" },
    { "of bodyweight", "day A { curl 3 x 5 at 50% of bodyweight }", 1, 0, 0,
      "bodyweight: 60 kg on 2026-12-01\n"
      "50 % of bodyweight\n"
      "before rounding: 30 kg\n"
      "rounded to a load of hall: 30 kg" },
    { "a weight and a deload", "deload week 2; day A { curl 4 x 5 at 20 kg }", 2, 0, 0,
      "deload: sets to 50 %\n"
      "written: 20 kg\n"
      "deload: load down 10 %\n"
      "before rounding: 18 kg\n"
      "rounded to a load of hall: 17.5 kg" },
    { "a taper", "taper week 2 { rpe down 1 }; day A { curl 4 x 5 at rpe 8 }", 2, 0, 0, "taper: rpe down 1" },
    { "an adjustment by weight", "adjust ines { load to 30 kg }; day A { curl 4 x 5 at 20 kg }", 1, 0, 0,
      "written: 20 kg\n"
      "adjust: load to 30 kg\n"
      "before rounding: 30 kg\n"
      "rounded to a load of hall: 30 kg" },
    { "a drop", "day A { curl top 1 x 5 at 20 kg then back-off 3 x 8 drop 15% }", 1, 0, 1,
      "written: 20 kg\n"
      "before rounding: 20 kg\n"
      "rounded to a load of hall: 20 kg\n"
      "15 % below the top set\n"
      "before rounding: 17 kg\n"
      "rounded to a load of hall: 17.5 kg" },
    { "a drop by weight", "day A { curl 1 x 5 at 20 kg then 3 x 8 drop 5 kg }", 1, 0, 1,
      "written: 20 kg\n"
      "before rounding: 20 kg\n"
      "rounded to a load of hall: 20 kg\n"
      "5 kg below the sets before\n"
      "before rounding: 15 kg\n"
      "rounded to a load of hall: 15 kg" },
    { "the same", "day A { curl 1 x 5 at 20 kg then 3 x 8 at same }", 1, 0, 1,
      "written: 20 kg\n"
      "before rounding: 20 kg\n"
      "rounded to a load of hall: 20 kg\n"
      "the load of the sets before\n"
      "before rounding: 20 kg\n"
      "rounded to a load of hall: 20 kg" },
    { "a cap", "day A { squat 3 x 5 at 85 kg cap 81 kg }", 1, 0, 0,
      "written: 85 kg\n"
      "before rounding: 85 kg\n"
      "capped by the weight: at most 81 kg\n"
      "rounded to a load of hall: 80 kg" },
    { "a cap by effort", "day A { squat 3 x 5 at 85 kg cap rpe 8 }", 1, 0, 0,
      "written: 85 kg\n"
      "before rounding: 85 kg\n"
      "capped by rpe 8: at most 83.33 kg\n"
      "rounded to a load of hall: 82.5 kg" },
    { "under the bar", "day A { squat 3 x 5 at 10 kg }", 1, 0, 0,
      "written: 10 kg\n"
      "before rounding: 10 kg\n"
      "lighter than the empty bar, so the bar: 20 kg\n"
      "rounded to a load of hall: 20 kg" },
    { "a progression", "day A { curl 3 x 5 at 20 kg progression steady }", 2, 0, 0,
      "written: 20 kg\n"
      "progression steady after 1 session: 22.5 kg\n"
      "before rounding: 22.5 kg\n"
      "rounded to a load of hall: 22.5 kg" },
};

static void chains_from_the_words_to_the_load(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[2048];
        snprintf(text, sizeof text, CUSTOM "block winter { for ines; starts 2027-01-04; weeks 2; %s }\n",
                 cases[i].lines);
        struct told t = told_club(text);
        struct plan *plan = told_plan(&t, "winter", "ines");
        const struct plan_entry *entry = &plan->weeks[cases[i].week - 1].days[0].entries[cases[i].entry];
        assert_string_equal(chain(&t, entry->groups[cases[i].group].runs[0].reason, plan->unit), cases[i].chain);
        assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 0);
        told_end(&t);
    }
}

static void of_a_day_and_warm_ups(void **state)
{
    (void)state;
    struct told t = told_club(CUSTOM "block winter { for ines; starts 2027-01-04; weeks 1; day A on mon { squat "
                                     "warm-up 1 x 5 at 50% then 1 x 5 at 80 kg }; "
                                     "day B on tue { squat 1 x 5 at 90% of day A } }\n");
    struct plan *plan = told_plan(&t, "winter", "ines");
    const char *warm_up = chain(&t, plan->weeks[0].days[0].entries[0].groups[0].runs[0].reason, UNIT_KG);
    assert_non_null(strstr(warm_up, "50 % of the first working load\nbefore rounding: 40 kg"));
    const char *of_day = chain(&t, plan->weeks[0].days[1].entries[0].groups[0].runs[0].reason, UNIT_KG);
    assert_non_null(strstr(of_day, "written: 80 kg\n"));
    assert_non_null(strstr(of_day, "90 % of the heaviest load on day A\nbefore rounding: 72 kg"));
    told_end(&t);
}

static void weights_in_pounds(void **state)
{
    (void)state;
    struct told t = told_begin();
    const struct reason reason = { .kind = REASON_RAW, .load = ratio_int(100 * DEC_ONE) };
    /* 100 / 0.45359237 = 220.46 (bc) */
    assert_string_equal(reason_sentence(t.arena, &reason, UNIT_LB), "before rounding: 220.46 lb");
    const struct reason none = { .kind = REASON_ROUNDED, .load = ratio_int(20 * DEC_ONE) };
    assert_string_equal(reason_sentence(t.arena, &none, UNIT_KG), "rounded to a load of a usual gym: 20 kg");
    told_end(&t);
}

/* Each step that comes from the coach's words points at them. */
static void steps_point_at_words(void **state)
{
    (void)state;
    struct told t =
        told_club(CUSTOM "block winter { for ines; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at rpe 8 } }\n");
    const struct reason *reason = told_plan(&t, "winter", "ines")->weeks[0].days[0].entries[0].groups[0].runs[0].reason;
    const char *max = NULL, *effort = NULL;
    for (; reason; reason = reason->before) {
        if (reason->kind == REASON_MAX)
            max = spelt(&t, reason->at);
        if (reason->kind == REASON_EFFORT)
            effort = spelt(&t, reason->at);
    }
    assert_string_equal(max, "max squat 100 kg on 2026-11-28");
    assert_string_equal(effort, "at rpe 8");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(chains_from_the_words_to_the_load),
        cmocka_unit_test(of_a_day_and_warm_ups),
        cmocka_unit_test(weights_in_pounds),
        cmocka_unit_test(steps_point_at_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
