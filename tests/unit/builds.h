/* A text whose block spring must become a plan for ines, or be found wrong: rows for the tests of templates, schemes and $names. */
#ifndef TESTS_UNIT_BUILDS_H
#define TESTS_UNIT_BUILDS_H

#include "club.h"

struct build {
    const char *says, *text;
    const char *plan, *findings; /* one of the two; NULL: the other */
};

#define TEXT(sentence, text, comes)                                                                                    \
    {                                                                                                                  \
        sentence, INES text, comes, NULL                                                                               \
    }
#define TEXT_FAULT(sentence, text, found)                                                                              \
    {                                                                                                                  \
        sentence, INES text, NULL, found                                                                               \
    }

#define SCHEME "scheme heavy { let $t = 70%; let $n = 3; $n x 5 at $t }\n"
#define DAY(lines) "block spring { for ines; starts 2027-01-04; weeks 1; " lines " }\n"

static inline const char *plan_of_spring(struct told *t)
{
    return plan_text(t, told_plan(t, "spring", "ines"), SHOW_DAYS);
}

static inline void build_holds(void **state)
{
    const struct build *build = *state;
    struct told t = told_club(build->text);
    if (build->plan) {
        assert_string_equal(findings_text(&t), "");
        assert_string_equal(plan_of_spring(&t), build->plan);
        assert_string_equal(findings_text(&t), "");
    } else {
        assert_string_equal(findings_text(&t), build->findings);
    }
    told_end(&t);
}

#endif
