#include "club.h"

#include "emit/needs.h"

#define SQUAD \
    "gym annex { title \"The annex\"; bar 20 kg; bar trap 25 kg }\n" \
    "lift pull { title \"Trap pull\"; loads bar trap }\n" \
    "athlete ana { gym hall; max squat 100 kg; max press 20 kg }\n" \
    "athlete bo { gym hall; max squat 150 kg; max press 20 kg }\n" \
    "athlete cy { gym annex; max squat 180 kg; max press 30 kg }\n" \
    "athlete di { gym annex; max squat 120 kg }\n" \
    "athlete ed { gym hall; max squat 90 kg; max press 10 kg }\n"

static const char *needs_of(struct told *t, const char *lines_text, const char *const *athletes)
{
    char text[4096];
    snprintf(text, sizeof text, "%sblock b { for all; starts 2027-01-04; weeks 1; day A on mon { %s } }\n", SQUAD, lines_text);
    *t = told_club(text);
    struct member members[8];
    struct out out = out_scratch(t->arena);
    struct lines lines = lines_new(&out, t->arena);
    int count = 0;
    lines.width = GROUP_COLUMNS;
    for (; athletes[count]; count++) {
        struct plan *plan = told_plan(t, "b", athletes[count]);
        members[count] = (struct member){ plan, &plan->weeks[0], &plan->weeks[0].days[0] };
    }
    needs_lines(&lines, t->arena, members, count);
    out_char(&out, '\0');
    return out.at;
}

#define HEAD "Needed at once when all train a lift together; with a bar goes the rack, bench or platform:\n"

static void bars_dumbbells_and_stacks_of_one_gym(void **state)
{
    (void)state;
    static const char *const three[] = { "ana", "bo", "ed", NULL };
    struct told t;
    assert_string_equal(needs_of(&t, "squat 3 x 5 at 70%; squat 2 x 5 at 60%; press 1 x 1 at rpe 10 then 3 x 8 at rpe 8; pulldown 3 x 10 at 40 kg; curl 3 x 10", three),
                        HEAD "    squat - 3 bars; 2 if two share one, 1 if three do\n" /* once, though entered twice */
                             "    press - dumbbells: 10 kg for 1, 20 kg for 2\n"
                             "    pulldown - 3 take turns on the stack\n");
    told_end(&t);
}

static void each_gym_by_itself(void **state)
{
    (void)state;
    static const char *const all[] = { "ana", "bo", "cy", "di", "ed", NULL };
    struct told t;
    assert_string_equal(needs_of(&t, "squat 3 x 5 at 70%; press 3 x 8 at rpe 8; pull 3 x 5 at 60 kg", all),
                        HEAD "    squat at hall - 3 bars; 2 if two share one, 1 if three do\n"
                             "    press at hall - dumbbells: 7.5 kg for 1, 15 kg for 2\n"
                             "    Trap pull at hall - 3 trap bars; 2 if two share one, 1 if three do\n"
                             "    squat at The annex - 2 bars; 1 if two share one\n"
                             "    press at The annex - dumbbells: 22.5 kg for 1, of their own choice for 1\n"
                             "    Trap pull at The annex - 2 trap bars; 1 if two share one\n");
    told_end(&t);
}

static void alone_nothing_is_shared(void **state)
{
    (void)state;
    static const char *const one[] = { "ana", NULL };
    struct told t;
    assert_string_equal(needs_of(&t, "squat 3 x 5 at 70%", one), "");
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bars_dumbbells_and_stacks_of_one_gym),
        cmocka_unit_test(each_gym_by_itself),
        cmocka_unit_test(alone_nothing_is_shared),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
