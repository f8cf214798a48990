/* The review as a page; src/emit/as_review.h. The pages have been read as a coach would; the numbers are those of the
 * plan's tests, and of tests/review.py. */
#include "reviewed.h"

#include "emit/as_review.h"

static const char *page_of(struct looked *l, const struct review *review)
{
    struct out out = out_scratch(l->t.arena);
    bool begun = false;
    assert_true(review_text(&out, told_athlete(&l->t, "ines"), review, &begun));
    assert_true(begun);
    out_char(&out, '\0');
    return out.at;
}

/* From a headline to the next empty line that ends it; the page's last part to its end. */
static const char *part_of(struct looked *l, const char *page, const char *headline, const char *next)
{
    const char *from = strstr(page, headline), *past = next ? strstr(page, next) : page + strlen(page);
    assert_non_null(from);
    assert_non_null(past);
    return arena_copy(l->t.arena, from, (size_t)(past - from));
}

/* Squat: 75 kg for five is rpe 5 by Brzycki and the single of 90 kg rpe 6.4: (6 x 5 + 6.4) / 7 = 5.2, rated (6 x 8 +
 * 6.5) / 7 = 7.79; pull-ups of 65 kg are n = 7.75, rpe 7.25. Estimates 90 x 36 / 32.5 = 99.69 and 65 x 36 / 29 =
 * 80.69 (bc). A load of 7 x 60 = 420 on one day: see review_load_test.c. */
#define DIARY                                                                                                          \
    "2027-01-04 A { squat 90 kg x 1 then 75 kg x 5, 5, 5 rpe 8, 8, 8; press skipped because \"left elbow\"; session "  \
    "rpe 7 for 60 min }\n"                                                                                             \
    "2027-01-07 B missed because \"travelling\"\n"                                                                     \
    "2027-01-11 A { squat 90 kg x 1 rpe 6.5 then 75 kg x 5, 5, 5 rpe 8, 8, 8; session rpe 7 }\n"                       \
    "2027-01-14 B { pull-up bodyweight plus 5 kg x 5, 5, 5 rpe 7; curl as planned; sled as planned; session rpe 7 "    \
    "for 60 min }\n"

static void a_page(void **state)
{
    (void)state;
    struct looked l = look_back(DIARY, (struct review_scope){ .outside = true });
    const char *page = page_of(&l, l.review);
    assert_string_equal(part_of(&l, page, "Ines", "THE MAX"),
                        "Ines Corrado                                    Review, 2027-01-04 to 2027-01-14\n"
                        "================================================================================\n"
                        "\n");
    assert_string_equal(part_of(&l, page, "MISSED", "\nEFFORTS"), "MISSED AND SKIPPED\n"
                                                                  "  2027-01-04  A     press skipped: left elbow\n"
                                                                  "  2027-01-07  B     missed: travelling\n"
                                                                  "  2027-01-11  A     press: nothing in the diary\n");
    assert_string_equal(part_of(&l, page, "EFFORTS", "  Means over"),
                        "EFFORTS, RATED AND WORKED OUT\n"
                        "                                sets    rated  worked out   difference\n"
                        "  squat                            7      7.8         5.2         +2.6\n"
                        "      add `effort squat 8 means 5` to the athlete, so that the diary counts what\n"
                        "      is done\n"
                        "  pull-up                          1        7         7.3         -0.3\n");
    assert_string_equal(part_of(&l, page, "SESSION LOAD", "  Session rpe"),
                        "SESSION LOAD\n"
                        "  week from     sessions   minutes            load   monotony    strain\n"
                        "  2027-01-04           1        60             420       0.38       159\n"
                        "  2027-01-11           2        60    at least 420          -         -\n"
                        "  Not counted: 2027-01-11 A (no minutes); write `session rpe 7 for 80 min` into\n"
                        "  them\n");
    assert_string_equal(part_of(&l, page, "BESTS", "\n  The heaviest"),
                        "BESTS\n"
                        "\n"
                        "  squat\n"
                        "       1 x         90 kg   2027-01-04\n"
                        "       5 x         75 kg   2027-01-04\n"
                        "      Best estimated max 99.7 kg: 90 kg x 1 rpe 6.5 on 2027-01-11\n"
                        "\n"
                        "  pull-up\n"
                        "       5 x         +5 kg   2027-01-14\n"
                        "      Best estimated max 80.7 kg with the body: +5 kg x 5 rpe 7 on 2027-01-14\n");
    look_away(&l);
}

static void nothing_to_tell(void **state)
{
    (void)state;
    struct looked l = look_back("2027-01-04 A missed", (struct review_scope){ .outside = true });
    const char *page = page_of(&l, l.review);
    assert_string_equal(part_of(&l, page, "EFFORTS", "\nBESTS"),
                        "EFFORTS, RATED AND WORKED OUT\n"
                        "  Nothing to compare: no rated set has a dated max line of the lift's own that\n"
                        "  is at most 12 weeks old.\n"
                        "\n"
                        "SESSION LOAD\n"
                        "  No session is rated as a whole yet; `session rpe 7 for 80 min` in it does\n"
                        "  that.\n");
    page = page_of(&l, NULL);
    assert_non_null(strstr(page, "=\n  There is no diary of hers yet.\n"));
    look_away(&l);
    l = look_back("2027-01-04 A missed", (struct review_scope){ .outside = true, .from = day_of("2027-01-05") });
    assert_non_null(strstr(page_of(&l, l.review), "=\n  Her diary has nothing of what was asked for.\n"));
    look_away(&l);
}

/* What was done before the time looked at stands without the mark. */
static void marks(void **state)
{
    (void)state;
    struct looked l = look_back("2027-01-04 A { squat 90 kg x 1 then 75 kg x 5, 5, 5; press as planned }\n2027-01-11 A "
                                "{ squat 92.5 kg x 1 rpe 8 then 75 kg x 5, 5, 5; "
                                "press as planned }",
                                (struct review_scope){ .outside = true, .from = day_of("2027-01-11") });
    const char *page = page_of(&l, l.review);
    assert_string_equal(part_of(&l, page, "  squat\n       1", "\n  press\n"),
                        "  squat\n"
                        "       1 x       92.5 kg   2027-01-11   new\n"
                        "       5 x         75 kg   2027-01-04\n"
                        "      Best estimated max 97.9 kg: 92.5 kg x 1 rpe 8 on 2027-01-11, new\n");
    look_away(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(a_page), cmocka_unit_test(nothing_to_tell),
                                        cmocka_unit_test(marks) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
