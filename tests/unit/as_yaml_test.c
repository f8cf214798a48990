/* The expected document has been read line by line; that other readers take it as meant was tried with PyYAML 6.0 (1.1)
 * and ruamel.yaml 0.17.21 (1.2): same values from both, every name and title a string. */

#include <stdlib.h>

#include "pool.h"
#include "sample_plan.h"

/* clang-format off */
static const char expected[] =
    "setwright: 1\n"
    "athletes:\n"
    "- name: \"ines\"\n"
    "  title: \"\xC3\x9C""nsal \\\"\xC3\x9C""\\\", Jr\"\n"
    "  blocks:\n"
    "  - name: \"winter-base\"\n"
    "    title: \"Winter base\"\n"
    "    goal: \"strength\"\n"
    "    weeks:\n"
    "    - week: 1\n"
    "      start: \"2027-01-11\"\n"
    "      kind: \"training\"\n"
    "      days:\n"
    "      - day: \"A\"\n"
    "        title: \"Squat first\"\n"
    "        date: \"2027-01-11\"\n"
    "        work:\n"
    "        - seq: 1\n"
    "          lift: \"squat\"\n"
    "          title: \"Back squat\"\n"
    "          role: \"warm-up\"\n"
    "          sets: 1\n"
    "          reps_low: 5\n"
    "          reps_high: 5\n"
    "          load: 20\n"
    "          unit: \"kg\"\n"
    "        - seq: 2\n"
    "          lift: \"squat\"\n"
    "          title: \"Back squat\"\n"
    "          role: \"warm-up\"\n"
    "          sets: 1\n"
    "          reps_low: 3\n"
    "          reps_high: 3\n"
    "          load: 60\n"
    "          unit: \"kg\"\n"
    "          per_side: \"20\"\n"
    "        - seq: 3\n"
    "          lift: \"squat\"\n"
    "          title: \"Back squat\"\n"
    "          role: \"top\"\n"
    "          sets: 1\n"
    "          reps_low: 1\n"
    "          reps_high: 1\n"
    "          rpe: 8\n"
    "          percent: 89.6\n"
    "          load: 107.5\n"
    "          unit: \"kg\"\n"
    "          per_side: \"25+15+2.5+1.25\"\n"
    "          rest_s: 240\n"
    "        - seq: 4\n"
    "          lift: \"squat\"\n"
    "          title: \"Back squat\"\n"
    "          role: \"back-off\"\n"
    "          sets: 4\n"
    "          reps_low: 5\n"
    "          reps_high: 5\n"
    "          rpe: 6.5\n"
    "          percent: 77.1\n"
    "          load: 92.5\n"
    "          unit: \"kg\"\n"
    "          per_side: \"25+10+1.25\"\n"
    "          rest_s: 180\n"
    "          tempo: \"31X0\"\n"
    "          note: \"Same bar path as on the top set, \\\"every\\\" rep\"\n"
    "        - seq: 5\n"
    "          lift: \"bench\"\n"
    "          title: \"no\"\n"
    "          role: \"work\"\n"
    "          sets: 1\n"
    "          reps_low: 5\n"
    "          reps_high: 5\n"
    "          rpe: \"<1\"\n"
    "          load: 40\n"
    "          unit: \"kg\"\n"
    "        - seq: 6\n"
    "          lift: \"bench\"\n"
    "          title: \"no\"\n"
    "          role: \"work\"\n"
    "          sets: 1\n"
    "          reps_low: 5\n"
    "          reps_high: 5\n"
    "          rpe: 7.5\n"
    "          load: 50\n"
    "          unit: \"kg\"\n"
    "        - seq: 7\n"
    "          lift: \"row\"\n"
    "          title: \"Dumbbell row\"\n"
    "          role: \"work\"\n"
    "          sets: 3\n"
    "          reps_low: 8\n"
    "          reps_high: 12\n"
    "          rpe: \"6-7\"\n"
    "          load: 22.5\n"
    "          unit: \"kg\"\n"
    "          rest_s: \"120-180\"\n"
    "          note: \"=1+1; elbow\\nin; lighter\\e[31m than last week\"\n"
    "        - seq: 8\n"
    "          lift: \"curl\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          reps_low: 10\n"
    "          reps_high: 15\n"
    "          rpe: 8\n"
    "        - seq: 9\n"
    "          lift: \"pulldown\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          reps_low: 10\n"
    "          reps_high: 15\n"
    "          rpe: 8\n"
    "      - day: \"2\"\n"
    "        title: \"1e3\"\n"
    "        work:\n"
    "        - seq: 1\n"
    "          lift: \"pull-up\"\n"
    "          title: \"Pull-up\"\n"
    "          role: \"top\"\n"
    "          sets: 1\n"
    "          reps_low: 5\n"
    "          load: -30\n"
    "          unit: \"lb\"\n"
    "        - seq: 2\n"
    "          lift: \"pull-up\"\n"
    "          title: \"Pull-up\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          load: 0\n"
    "          unit: \"lb\"\n"
    "        - seq: 3\n"
    "          lift: \"pull-up\"\n"
    "          title: \"Pull-up\"\n"
    "          role: \"back-off\"\n"
    "          sets: 2\n"
    "          reps_low: 5\n"
    "          reps_high: 5\n"
    "          rest_s: 180\n"
    "          tempo: \"31X0\"\n"
    "          note: \"15 % below the top set; Same bar path as on the top set, \\\"every\\\" rep\"\n"
    "        - seq: 4\n"
    "          lift: \"plank\"\n"
    "          title: \"Plank\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          reps_low: \"30 s\"\n"
    "          reps_high: \"30 s\"\n"
    "          rpe: 7\n"
    "        - seq: 5\n"
    "          lift: \"carry\"\n"
    "          title: \"Suitcase carry\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          reps_low: \"20 m\"\n"
    "          reps_high: \"20 m\"\n"
    "          load: 50\n"
    "          unit: \"lb\"\n"
    "        - seq: 6\n"
    "          lift: \"deadlift\"\n"
    "          role: \"work\"\n"
    "          sets: 2\n"
    "          reps_low: 6\n"
    "          reps_high: 6\n"
    "        - seq: 7\n"
    "          lift: \"deadlift\"\n"
    "          role: \"work\"\n"
    "          reps_low: 30\n"
    "          reps_high: 30\n"
    "          load: 95\n"
    "          unit: \"lb\"\n"
    "        - seq: 8\n"
    "          lift: \"deadlift\"\n"
    "          role: \"work\"\n"
    "          sets: 4\n"
    "          reps_low: 3\n"
    "          reps_high: 3\n"
    "          load: 135\n"
    "          unit: \"lb\"\n"
    "      totals:\n"
    "        sets: 7\n"
    "        reps: 31\n"
    "        lifts:\n"
    "        - name: \"squat\"\n"
    "          sets: 5\n"
    "          reps: 21\n"
    "        - name: \"bench\"\n"
    "          sets: 2\n"
    "          reps: 10\n"
    "        muscles:\n"
    "        - name: \"quads\"\n"
    "          sets: 5\n"
    "        - name: \"trunk\"\n"
    "          sets: 2.5\n"
    "        tonnage: 2407.5\n"
    "        unit: \"kg\"\n"
    "        mean_percent: 77.7\n"
    "        by_effort:\n"
    "          rpe_below_5: 1\n"
    "          rpe_5_to_7: 4\n"
    "          rpe_7_to_9: 2\n"
    "          rpe_9_and_above: 0\n"
    "        minutes: 95\n"
    "    - week: 2\n"
    "      start: \"2027-01-18\"\n"
    "      kind: \"deload\"\n"
    "      days: []\n"
    "      totals:\n"
    "        sets: 0\n"
    "        reps: 0\n"
    "        lifts: []\n"
    "        muscles: []\n"
    "        tonnage: 0\n"
    "        unit: \"kg\"\n"
    "        by_effort:\n"
    "          rpe_below_5: 0\n"
    "          rpe_5_to_7: 0\n"
    "          rpe_7_to_9: 0\n"
    "          rpe_9_and_above: 0\n"
    "        minutes: 0\n";
/* clang-format on */

static void the_document_holds_every_fact(void **state)
{
    struct caught caught = caught_new(*state, 1 << 16);
    struct format_options options = { 0 };
    assert_true(write_plan("yaml", *state, &sample_plan(*state)->plan, &options, &caught, 1));
    assert_string_equal(caught.text, expected);
}

static const char *yaml_of(struct arena *arena, struct sample *sample, struct narrow narrow)
{
    struct caught caught = caught_new(arena, 1 << 16);
    struct format_options options = { .narrow = narrow };
    assert_true(write_plan("yaml", arena, &sample->plan, &options, &caught, 1));
    return arena_copy(arena, caught.text, caught.length);
}

/* What YAML 1.1 takes for a boolean, a number or a date stands in quotes (https://yaml.org/type/). */
static void titles_stay_texts(void **state)
{
    static const char *const titles[] = { "no",    "1e3",        "=1+1", "0x1F",       "~",
                                          "12:30", "2027-01-04", "",     "- a: b # c", ".inf" };
    for (size_t i = 0; i < sizeof titles / sizeof titles[0]; i++) {
        struct sample *sample = sample_plan(*state);
        sample->block.title = titles[i];
        const char *quoted = arena_format(*state, "\n    title: \"%s\"\n", titles[i]);
        assert_non_null(strstr(yaml_of(*state, sample, (struct narrow){ 0 }), quoted));
    }
}

static void long_texts_and_other_letters_stay_on_one_line(void **state)
{
    struct sample *sample = sample_plan(*state);
    char *title = arena_alloc(*state, 3001);
    for (int i = 0; i < 1000; i++)
        memcpy(title + 3 * i, i % 2 ? "\xE7\xA4\xBC" : " ab", 3);
    sample->block.title = title + 1;
    assert_non_null(strstr(yaml_of(*state, sample, (struct narrow){ 0 }), title + 1));
}

static void what_is_narrowed_away_does_not_appear(void **state)
{
    struct narrow third = { .first_week = 3 };
    assert_string_equal(yaml_of(*state, sample_plan(*state), third), "setwright: 1\nathletes: []\n");
    struct narrow second = { .first_week = 2 };
    const char *text = yaml_of(*state, sample_plan(*state), second);
    assert_null(strstr(text, "week: 1\n"));
    assert_non_null(
        strstr(text, "    - week: 2\n      start: \"2027-01-18\"\n      kind: \"deload\"\n      days: []\n"));
}

static void athletes_follow_each_other(void **state)
{
    struct sample *ines = sample_plan(*state), *piotr = sample_plan(*state);
    struct caught caught = caught_new(*state, 1 << 16);
    const struct format *format = format_find("yaml");
    struct format_options options = { .narrow = { .first_week = 2 } };
    struct writer *writer = format->begin(*state, (struct sink){ .write = catch_bytes, .context = &caught }, &options);
    piotr->ines.name = "piotr";
    piotr->ines.title = NULL;
    assert_true(format->athlete(writer, &ines->ines) && format->plan(writer, &ines->plan));
    assert_true(format->athlete(writer, &piotr->ines) && format->plan(writer, &piotr->plan));
    assert_true(format->end(writer));
    assert_non_null(
        strstr(caught.text, "        minutes: 0\n- name: \"piotr\"\n  blocks:\n  - name: \"winter-base\"\n"));
}

static void a_failed_write_is_told(void **state)
{
    struct format_options options = { 0 };
    struct caught none = caught_new(*state, 100);
    assert_false(write_plan("yaml", *state, &sample_plan(*state)->plan, &options, &none, 1));
    struct caught some = caught_new(*state, 100000);
    assert_false(write_plan("yaml", *state, &sample_plan(*state)->plan, &options, &some, 100));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(the_document_holds_every_fact),
        TEST(titles_stay_texts),
        TEST(long_texts_and_other_letters_stay_on_one_line),
        TEST(what_is_narrowed_away_does_not_appear),
        TEST(athletes_follow_each_other),
        TEST(a_failed_write_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
