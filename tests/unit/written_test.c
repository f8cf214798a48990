/* The set group at a place, as its coach wrote it: src/model/written.h. */
#include "club.h"

#include "model/written.h"

static const char text[] = INES "scheme pair { top 1 x 1  at rpe 8\n back-off 2 x 5 at\t70% }\n"
                                "block one { for ines; starts 2027-01-04; weeks 1; day A { squat pair; bench 3 x (5,\n   4, 3) at 60% } }\n"
                                "block two { for ines; starts 2027-02-01; weeks 1; day A { curl 1 x 9 } }\n";

static const char *written_at(struct told *t, const char *words, struct setting setting)
{
    const struct source *source = sources_at(t->sources, 1);
    const char *found = strstr(source->text, words);
    assert_non_null(found);
    uint32_t start = source->base + (uint32_t)(found - source->text);
    return written_group(t->arena, t->model, &setting, (struct span){ start, start + (uint32_t)strlen(words) });
}

static void the_words_of_a_group(void **state)
{
    (void)state;
    struct told t = told_club(text);
    struct setting squat = { .block = "one", .day = "A", .lift = "squat" }, curl = { .block = "two", .day = "A", .lift = "curl" };
    assert_string_equal(findings_text(&t), "");
    assert_string_equal(written_at(&t, "at\t70%", squat), "back-off 2 x 5 at 70%");
    assert_string_equal(written_at(&t, "top 1 x 1", squat), "top 1 x 1 at rpe 8");
    assert_string_equal(written_at(&t, "4, 3", squat), "3 x (5, 4, 3) at 60%");
    assert_string_equal(written_at(&t, "1 x 9", curl), "1 x 9");
    assert_null(written_at(&t, "1 x 9", squat)); /* another block's */
    assert_null(written_at(&t, "bench", squat)); /* an entry's name, no group */
    assert_null(written_at(&t, "1 x 9", (struct setting){ .block = "two" }));
    assert_null(written_group(t.arena, t.model, &curl, (struct span){ 0, 0 }));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(the_words_of_a_group) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
