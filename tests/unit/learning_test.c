/* What is learnt of a roster so that one lifter can be read again without the others. */
#include "reading_roster.h"

/* Of whom one can be read without the others. */
static void plain_rosters(void **state)
{
    static const struct {
        const char *text;
        int lifters; /* below 0: it is not plain */
    } cases[] = {
        { "athlete,lift,max\nines,squat,100\nines,bench,60\npiotr,squat,140\n", 2 },
        { "lift;max;athlete\r\nsquat;72,5;ines\r\n ;;\r\nbench;60;  piotr \r\n", 2 },
        { "athlete\n", 0 },
        { "athlete,title\nines,Ines Corrad\xC3\xA9\npiotr\ninesa\nine", 4 },
        { "athlete,lift,max\nines,squat,100\npiotr,squat,140\nines,bench,60\n", -1 },
        { "athlete,title\nines,\"Ines\"\n", -1 },
        { "athlete,group\nines,\npiotr,novices\n", -1 },
        { "athlete\nren\xC3\xA9\n", -1 },
        { "athlete,lift,max,unit\nines,squat,100.25,lb\n", 1 },
        { "athlete,lift,max,unit\nines,squat,100.125,lb\n", -1 },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct reading r = read_text(*state, cases[i].text);
        assert_int_equal(findings_total(r.findings), 0);
        assert_int_equal(r.roster.is_plain ? r.roster.lifter_count : -1, cases[i].lifters);
        int met = 0;
        for (int lifter = 0; lifter < r.roster.lifter_count; lifter++) {
            struct reading again = r;
            again.count = 0;
            roster_lifter(&r.roster, lifter, *state, row_keep, &again);
            assert_true(again.count > 0);
            for (int row = 0; row < again.count; row++, met++) {
                size_t length;
                const char *name = roster_lifter_name(&r.roster, lifter, &length);
                assert_int_equal(length, strlen(again.rows[row]->athlete.text));
                assert_memory_equal(name, again.rows[row]->athlete.text, length);
            }
        }
        assert_int_equal(met, r.roster.is_plain ? r.roster.row_count : 0);
    }
}

static void lifts_and_gyms_are_named_once(void **state)
{
    struct reading r = read_text(*state, "athlete,gym,lift,max\nines,hall,squat,100\nines,,bench,60\npiotr,shed,squat,140\ntomas,hall,bench,9\n");
    assert_int_equal(r.roster.lifts.count, 2);
    assert_string_equal(r.roster.lifts.at[1].text, "bench");
    assert_spells(&r, r.roster.lifts.at[0].at, "squat");
    assert_int_equal(r.roster.gyms.count, 2);
    assert_string_equal(r.roster.gyms.at[1].text, "shed");
}

/* So many that the table of names grows, and more lifts than are told apart. */
static void large_rosters(void **state)
{
    enum { LIFTERS = 5000, LIFTS = 80 };
    char *text = arena_alloc(*state, LIFTERS * 32), *at = text + sprintf(text, "athlete,lift,max\n");
    for (int i = 0; i < LIFTERS; i++)
        at += sprintf(at, "lifter-%d,squat,%d\n", i, 60 + i % 100);
    struct reading many = read_text(*state, text);
    assert_int_equal(many.roster.lifter_count, LIFTERS);
    sprintf(at, "lifter-7,bench,60\n");
    assert_false(read_text(*state, text).roster.is_plain);
    at = text + sprintf(text, "athlete,lift,max\n");
    for (int i = 0; i < LIFTS; i++)
        at += sprintf(at, "ines,lift-%c%c,60\n", 'a' + i / 26, 'a' + i % 26);
    assert_false(read_text(*state, text).roster.is_plain);
}

/* Names made to fall on one of the 1,024 places that the table of names begins with. */
static void names_made_to_collide(void **state)
{
    enum { NAMES = 800, PLACES = 1024 };
    char *text = arena_alloc(*state, NAMES * 24), *at = text + sprintf(text, "athlete\n"), name[16];
    for (int made = 0, i = 0; made < NAMES; i++) {
        sprintf(name, "l%d", i);
        if (bytes_hash(name, strlen(name)) % PLACES == 7)
            at += sprintf(at, "%s\n", name), made++;
    }
    struct reading r = read_text(*state, text);
    assert_int_equal(findings_total(r.findings), 0);
    assert_false(r.roster.is_plain);
    assert_int_equal(r.roster.row_count, NAMES);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(plain_rosters),
        TEST(lifts_and_gyms_are_named_once),
        TEST(large_rosters),
        TEST(names_made_to_collide),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
