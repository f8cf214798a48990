/* Values as written to numbers: src/model/values.c, called as the resolver calls it, on the values of `let` lines. */
#include "club.h"

#include "model/club.h"

struct asked {
    struct told told;
    struct place place;
    const struct node *value; /* of the let */
};

/* The value of `let $v = …` in a scheme. */
static struct asked ask(const char *value)
{
    char text[512];
    snprintf(text, sizeof text, "scheme s { let $v = %s; 3 x 5 }\n", value);
    struct asked a = { .told = told_text(text) };
    assert_string_equal(findings_text(&a.told), "");
    const struct node *scheme = node_child(a.told.loaded.files[0].tree->root, NODE_SCHEME);
    a.value = node_child(scheme, NODE_LET)->child->next;
    a.place = (struct place){ .club = a.told.model->club, .file = &a.told.loaded.files[0] };
    return a;
}

static void kinds_of_series(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        enum series_kind kind;
        int count;
        enum unit unit;
        const char *by;
        int each;
    } cases[] = {
        { "7", SERIES_LIST, 1, UNIT_NONE, "0", 0 },
        { "7 | 7.5 | 8", SERIES_LIST, 3, UNIT_NONE, "0", 0 },
        { "70 | 75%", SERIES_LIST, 2, UNIT_PERCENT, "0", 0 },
        { "from 7 to 8.5", SERIES_RAMP, 2, UNIT_NONE, "0", 0 },
        { "from 50 to 60 kg", SERIES_RAMP, 2, UNIT_KILO, "0", 0 },
        { "75% plus 2.5% each week", SERIES_STEP, 1, UNIT_PERCENT, "2.5", 1 },
        { "3 plus 1 each 2 weeks", SERIES_STEP, 1, UNIT_NONE, "1", 2 },
        { "80% minus 2.5% each week", SERIES_STEP, 1, UNIT_PERCENT, "-2.5", 1 },
        { "wave 72.5 | 80 | 87.5% plus 2% each pass", SERIES_WAVE, 3, UNIT_PERCENT, "2", 0 },
        { "wave 72.5 | 80 | 87.5%", SERIES_WAVE, 3, UNIT_PERCENT, "0", 0 },
        { "45 lb", SERIES_LIST, 1, UNIT_POUND, "0", 0 },
        { "90 s", SERIES_LIST, 1, UNIT_SECONDS, "0", 0 },
        { "2 min", SERIES_LIST, 1, UNIT_MINUTES, "0", 0 },
        { "20 m", SERIES_LIST, 1, UNIT_METRES, "0", 0 },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct asked a = ask(cases[i].text);
        struct value value = value_of(&a.place, a.value, &want_any);
        assert_non_null(value.series);
        assert_int_equal(value.series->kind, cases[i].kind);
        assert_int_equal(value.series->count, cases[i].count);
        assert_int_equal(value.unit, cases[i].unit);
        assert_string_equal(dec_text(a.told.arena, value.series->by), cases[i].by);
        if (cases[i].each)
            assert_int_equal(value.series->each, cases[i].each);
        told_end(&a.told);
    }
}

static void commas_and_bands(void **state)
{
    (void)state;
    struct asked a = ask("70, 75-80% | 75, 85%");
    struct value value = value_of(&a.place, a.value, &want_load);
    assert_int_equal(value.series->count, 2);
    assert_int_equal(value.series->weeks[0].count, 2);
    assert_string_equal(dec_text(a.told.arena, value.series->weeks[0].sets[1].low), "75");
    assert_string_equal(dec_text(a.told.arena, value.series->weeks[0].sets[1].high), "80");
    assert_string_equal(dec_text(a.told.arena, value.series->weeks[1].sets[1].high), "85");
    told_end(&a.told);
}

static void one_number_that_does_not_change(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        bool fine;
    } cases[] = {
        { "90%", true },     { "80 | 90%", false },       { "80, 90%", false },
        { "80-90%", false }, { "from 80 to 90%", false }, { "80% plus 1% each week", false },
        { "90", false },     { "90 kg", false },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct asked a = ask(cases[i].text);
        struct dec number = { 0 };
        enum unit unit;
        assert_int_equal(number_of(&a.place, a.value, &want_percent, &number, &unit), cases[i].fine);
        assert_int_equal(findings_count(a.told.findings, LEVEL_ERROR), cases[i].fine ? 0 : 1);
        if (cases[i].fine)
            assert_string_equal(dec_text(a.told.arena, number), "90");
        told_end(&a.told);
    }
}

static void whole_numbers_and_times(void **state)
{
    (void)state;
    struct asked a = ask("3");
    int whole = 0;
    struct seconds_band time = { 0 };
    assert_true(whole_of(&a.place, a.value, "a number of weeks", 1, 3, &whole));
    assert_int_equal(whole, 3);
    assert_false(whole_of(&a.place, a.value, "a number of weeks", 1, 2, &whole));
    assert_string_equal(the_finding(&a.told, KIND_RANGE)->message, "a number of weeks is a whole number from 1 to 2");
    told_end(&a.told);
    a = ask("2-3 min");
    assert_true(seconds_of(&a.place, a.value, &time));
    assert_int_equal(time.low, 120);
    assert_int_equal(time.high, 180);
    told_end(&a.told);
    a = ask("1.5 min");
    assert_true(seconds_of(&a.place, a.value, &time));
    assert_int_equal(time.low, 90);
    told_end(&a.told);
    a = ask("1.5 s");
    assert_false(seconds_of(&a.place, a.value, &time));
    told_end(&a.told);
}

static void weights_take_the_files_unit(void **state)
{
    (void)state;
    struct asked a = ask("20");
    struct weight weight;
    assert_true(weight_of(a.place.club, a.value, UNIT_KG, &weight));
    assert_string_equal(number_in(&a.told, weight, UNIT_KG), "20");
    assert_true(weight_of(a.place.club, a.value, UNIT_LB, &weight));
    assert_int_equal(weight.e10, 20 * LB_IN_E10);
    told_end(&a.told);
    a = ask("20 kg");
    assert_true(weight_of(a.place.club, a.value, UNIT_LB, &weight));
    assert_int_equal(weight.e10, 20 * DEC_ONE);
    told_end(&a.told);
    a = ask("800000000 kg");
    assert_true(weight_of(a.place.club, a.value, UNIT_KG, &weight));
    told_end(&a.told);
}

static void the_unit_is_said_in_words(void **state)
{
    (void)state;
    static const struct {
        const char *value, *message;
    } cases[] = {
        { "30 s", "a load is wanted here, and this is a number of seconds" },
        { "20 m", "a load is wanted here, and this is a number of metres" },
        { "70", "a load without a unit: it could be kilograms or a forgotten per cent" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct asked a = ask(cases[i].value);
        assert_null(value_of(&a.place, a.value, &want_load).series);
        assert_string_equal(the_finding(&a.told, KIND_UNIT)->message, cases[i].message);
        assert_string_equal(the_finding(&a.told, KIND_UNIT)->help, "write it as 75% or 100 kg");
        told_end(&a.told);
    }
}

static const struct series *series_of(const struct asked *a, int low, int high)
{
    struct node numbers[] = { { .kind = NODE_NUMBER, .number = dec_int(low) }, { .kind = NODE_NUMBER, .number = dec_int(high) } };
    struct node band = { .kind = NODE_BAND, .child = numbers }, amount = { .kind = NODE_AMOUNT, .child = low == high ? numbers : &band };
    struct node sets = { .kind = NODE_SETS, .child = &amount }, list = { .kind = NODE_LIST, .child = &sets };
    numbers[0].next = low == high ? NULL : &numbers[1];
    const struct series *series = value_of(&a->place, &amount, &want_any).series;
    assert_ptr_equal(series, value_of(&a->place, &list, &want_any).series);
    amount.text = "kg";
    assert_ptr_equal(series, value_of(&a->place, &amount, &want_load).series);
    return series;
}

/* Of far more than the table has room for at first. */
static void equal_plain_values_are_one_series(void **state)
{
    (void)state;
    enum { MOST = 60 };
    static const struct series *known[MOST][MOST];
    struct asked a = ask("7");
    for (int again = 0; again < 2; again++)
        for (int low = 1; low < MOST; low++)
            for (int high = low; high < MOST; high++) {
                const struct series *series = series_of(&a, low, high);
                if (again)
                    assert_ptr_equal(series, known[low][high]);
                known[low][high] = series;
                assert_int_equal(series->count, 1);
                assert_int_equal(series->weeks[0].count, 1);
                assert_int_equal(series->weeks[0].sets[0].low.e10, low * DEC_ONE);
                assert_int_equal(series->weeks[0].sets[0].high.e10, high * DEC_ONE);
            }
    told_end(&a.told);
}

static void those_of_a_bare_deload_too(void **state)
{
    (void)state;
    struct told t = told_club(INES "block winter { for ines; starts 2027-01-04; weeks 4; deload week 4;\n"
                                   "day A { squat 2 x 10 at 50% } }");
    const struct block *block = t.model->blocks[0];
    const struct change *changes = block->deloads[0].changes;
    const struct group *group = &block->days[0].entries[0].groups[0];
    assert_ptr_equal(changes[0].value.series, group->load.series);
    assert_ptr_equal(changes[1].value.series, group->sets.series);
    assert_ptr_equal(changes[2].value.series, group->reps.series);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(kinds_of_series),
        cmocka_unit_test(commas_and_bands),
        cmocka_unit_test(one_number_that_does_not_change),
        cmocka_unit_test(whole_numbers_and_times),
        cmocka_unit_test(weights_take_the_files_unit),
        cmocka_unit_test(the_unit_is_said_in_words),
        cmocka_unit_test(equal_plain_values_are_one_series),
        cmocka_unit_test(those_of_a_bare_deload_too),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
