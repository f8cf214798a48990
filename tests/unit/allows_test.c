/* Which `allow` permits a finding: the first written of those around its words, whatever their nesting; else the block's. */
#include "club.h"

#include "check/allows.h"

static const char text[] = INES "block winter {\n for ines\n starts 2027-01-04\n weeks 2\n"
                                "day A on mon {\n allow load-jump because \"day\"\n"
                                "  squat { 3 x 5 at rpe 7; allow load-jump because \"squat\"; allow load-jump because \"again\" }\n"
                                "  bench { 3 x 5 at rpe 6; allow top-first because \"bench\" }\n"
                                "}\n"
                                "day B on thu {\n  squat { 3 x 5 at rpe 8; allow load-jump because \"later\" }\n  bench 3 x 5 at rpe 9\n}\n"
                                "allow load-jump because \"block\"\n allow order-in-day because \"order\"\n}\n";

static struct span at_words(const struct told *t, const char *words)
{
    const char *found = strstr(text, words);
    assert_non_null(found);
    uint32_t start = t->model->blocks[0]->at.start + (uint32_t)(found - strstr(text, "winter"));
    return (struct span){ start, start + (uint32_t)strlen(words) };
}

static const char *reason(struct told *t, const char *rule, struct span at, const struct origin *origin)
{
    struct allows *allows = allows_new(t->arena, t->model);
    const struct allow_line *found = allows_find(allows, rule_find(rule), t->model->blocks[0], at, origin);
    return found ? found->because : "";
}

static void the_first_written_around_the_words(void **state)
{
    (void)state;
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(reason(&t, "load-jump", at_words(&t, "at rpe 7"), NULL), "day");
    assert_string_equal(reason(&t, "load-jump", at_words(&t, "at rpe 6"), NULL), "day");
    assert_string_equal(reason(&t, "load-jump", at_words(&t, "at rpe 8"), NULL), "later");
    assert_string_equal(reason(&t, "load-jump", at_words(&t, "at rpe 9"), NULL), "block");
    assert_string_equal(reason(&t, "top-first", at_words(&t, "at rpe 6"), NULL), "bench");
    assert_string_equal(reason(&t, "top-first", at_words(&t, "at rpe 7"), NULL), "");
    assert_string_equal(reason(&t, "order-in-day", at_words(&t, "at rpe 7"), NULL), "order");
    told_end(&t);
}

static void an_origin_counts_as_the_words(void **state)
{
    (void)state;
    struct told t = told_club(text);
    struct origin far = { .at = at_words(&t, "at rpe 7") }, near = { .at = at_words(&t, "at rpe 8"), .up = &far };
    assert_string_equal(reason(&t, "load-jump", at_words(&t, "at rpe 9"), &near), "day");
    assert_string_equal(reason(&t, "load-jump", (struct span){ 0 }, NULL), "block"); /* of a spreadsheet's row: the block's alone */
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_first_written_around_the_words),
        cmocka_unit_test(an_origin_counts_as_the_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
