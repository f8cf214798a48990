/* The table of rules against the design (checks.md), copied by hand from there: order, levels by goal (H S P G) and limits. */
#include "check/rule.h"

#include <ctype.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static const struct {
    const char *name, *levels, *limit; /* the limit of goal S; P where S is off */
} design[] = {
    { "moderate-share", "-WA-", ">=80" },
    { "failure-window", "AWWW", "" },
    { "top-first", "WWWW", "" },
    { "top-harder", "WWWW", ">=0.5" },
    { "top-reps", "AWW-", "<=5" },
    { "hard-high-reps", "-WW-", "<=8" },
    { "heavy-practice", "--W-", ">=2" },
    { "effort-creep", "AWWA", "<=1.5" },
    { "impossible-set", "EEEE", "" },
    { "too-light", "-AA-", ">=3" },
    { "weekly-sets", "WWAA", ">=5<=16" },
    { "muscle-sets", "WA-A", ">=4<=22" },
    { "volume-jump", "WWWW", "<=20" },
    { "load-jump", "AWWW", "<=10" },
    { "zone-reps", "-AA-", "" },
    { "specific-load", "-AW-", ">=68" },
    { "unreachable-load", "WWWW", "<=2.5" },
    { "under-bar", "WWWW", "" },
    { "deload-due", "WWAA", "<=6" },
    { "frequency", "AWWA", "" },
    { "back-to-back", "WWWW", ">=2" },
    { "session-minutes", "AAAA", "<=120" },
    { "order-in-day", "AWWA", "" },
    { "taper-shape", "--W-", "" },
    { "meet-week", "-EEE", "" },
    { "calendar-gap", "WWWW", "<=7" },
    { "calendar-overlap", "EEEE", "" },
    { "stale-max", "WWWA", "<=84" },
    { "opener", "-WW-", "<=93" },
    { "avoided-lift", "EEEE", "" },
    { "effort-honesty", "WWWW", "" },
    { "unlikely-result", "WWWW", "" },
    { "unmatched-diary", "WWWW", "" },
    { "missed-often", "WWWW", "" },
    { "unused-name", "WWWW", "" },
    { "unused-let", "WWWW", "" },
    { "unused-allow", "WWWW", "" },
    { "no-spotter-note", "AAAA", "" },
};
enum { DESIGNED = sizeof design / sizeof *design };

static const char *bounds_text(struct arena *arena, struct bounds bounds)
{
    const char *low = bounds.low.e10 < 0 ? "" : arena_format(arena, ">=%s", dec_text(arena, bounds.low));
    return bounds.high.e10 < 0 ? low : arena_format(arena, "%s<=%s", low, dec_text(arena, bounds.high));
}

static jmp_buf out_of_memory;

static void rows_are_those_of_the_design(void **state)
{
    struct arena *arena = arena_new(&out_of_memory);
    (void)state;
    assert_int_equal(rule_count, DESIGNED);
    for (int i = 0; i < DESIGNED; i++) {
        const struct rule *rule = &rules[i];
        char levels[GOAL_COUNT + 1] = "";
        assert_string_equal(rule->name, design[i].name);
        for (int goal = 0; goal < GOAL_COUNT; goal++)
            levels[goal] = rule->level[goal] == LEVEL_OFF ? '-' : "EWA"[rule->level[goal]];
        assert_string_equal(levels, design[i].levels);
        enum goal goal = rule->level[GOAL_STRENGTH] == LEVEL_OFF ? GOAL_PEAK : GOAL_STRENGTH;
        if (rule->unit == LIMIT_NONE)
            assert_string_equal("", design[i].limit);
        else
            assert_string_equal(bounds_text(arena, rule->limit[goal]), design[i].limit);
    }
    arena_free(arena);
}

static void goals_have_limits_of_their_own(void **state)
{
    static const struct {
        const char *name, *by_goal[GOAL_COUNT];
    } own[] = {
        { "weekly-sets", { ">=8<=20", ">=5<=16", ">=3<=12", ">=5<=16" } },
        { "muscle-sets", { ">=8<=22", ">=4<=22", ">=4<=22", ">=4<=22" } },
        { "specific-load", { "", ">=68", ">=78", "" } },
    };
    struct arena *arena = arena_new(&out_of_memory);
    (void)state;
    for (size_t i = 0; i < sizeof own / sizeof *own; i++)
        for (int goal = 0; goal < GOAL_COUNT; goal++)
            assert_string_equal(bounds_text(arena, rule_find(own[i].name)->limit[goal]), own[i].by_goal[goal]);
    assert_string_equal(bounds_text(arena, rule_find("volume-jump")->second), "<=2");
    arena_free(arena);
}

static bool is_published(const char *name)
{
    static const char *const published[] = { "impossible-set", "weekly-sets", "muscle-sets",   "load-jump",
                                             "deload-due",     "taper-shape", "effort-honesty" };
    for (size_t i = 0; i < sizeof published / sizeof *published; i++)
        if (!strcmp(published[i], name))
            return true;
    return false;
}

static bool has_year(const char *text)
{
    for (; *text; text++)
        if ((!strncmp(text, "19", 2) || !strncmp(text, "20", 2)) && isdigit((unsigned char)text[2]) &&
            isdigit((unsigned char)text[3]))
            return true;
    return false;
}

static void rows_are_filled(void **state)
{
    (void)state;
    for (int i = 0; i < rule_count; i++) {
        const struct rule *rule = &rules[i];
        assert_ptr_equal(rule_find(rule->name), rule);
        assert_non_null(rule->asks);
        assert_non_null(rule->why);
        assert_non_null(rule->advice);
        assert_string_not_equal(rule->fires, rule->mended);
        assert_true(strlen(rule->asks) < 100 && !strchr(rule->asks, '\n'));
        assert_true((rule->block != NULL) + (rule->athlete != NULL) + (rule->kind != KIND_NONE) <= 1);
        assert_true(rule->unit == LIMIT_NONE || !strncmp(rule->limit_says, rule->name, strlen(rule->name)));
        if (is_published(rule->name))
            assert_true(has_year(rule->evidence) && strchr(rule->evidence, '"'));
    }
    assert_null(rule_find("no-such-rule"));
    assert_null(rule_find("moderate"));
}

static void pages_say_their_limits(void **state)
{
    struct arena *arena = arena_new(&out_of_memory);
    (void)state;
    assert_non_null(strstr(rule_page(arena, rule_find("volume-jump")),
                           "Level: warning. Limit: at most 20 % and 2 sets. Another limit"));
    assert_non_null(strstr(rule_page(arena, rule_find("back-to-back")), "Limit: at least 2 days."));
    assert_non_null(
        strstr(rule_page(arena, rule_find("hard-high-reps")),
               "Level: hypertrophy off, strength warning, peak warning, general off. Limit: at most rpe 8."));
    assert_non_null(strstr(rule_page(arena, rule_find("too-light")), "Limit: at least rpe 3."));
    assert_non_null(strstr(rule_page(arena, rule_find("top-harder")), "Limit: at least 0.5 points."));
    assert_non_null(strstr(rule_page(arena, rule_find("top-first")), "checks { top-first level advice }"));
    assert_non_null(strstr(rule_page(arena, rule_find("no-spotter-note")), "checks { no-spotter-note level warning }"));
    assert_non_null(strstr(rule_page(arena, rule_find("meet-week")), "(an error is never allowed)"));
    assert_null(strstr(rule_page(arena, rule_find("unused-name")), "\n    allow "));
    arena_free(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_are_those_of_the_design),
        cmocka_unit_test(goals_have_limits_of_their_own),
        cmocka_unit_test(rows_are_filled),
        cmocka_unit_test(pages_say_their_limits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
