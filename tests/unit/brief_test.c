#include "emit/brief.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "sample_plan.h"

static jmp_buf out_of_memory;

/* "sets | load | effort | discs" of every run of a day. */
static const char *day_brief(struct arena *arena, struct sample *sample, int day)
{
    struct out out = out_scratch(arena);
    struct row row = { .plan = &sample->plan, .week = &sample->weeks[0], .day = &sample->days[day] };
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        for (int g = 0; g < row.entry->group_count; g++) {
            row.group = &row.entry->groups[g];
            for (int r = 0; r < row.group->run_count; r++) {
                row.run = &row.group->runs[r];
                brief_sets(&out, &row);
                out_text(&out, " | ");
                brief_load(&out, &row);
                out_text(&out, " | ");
                brief_effort(&out, &row);
                out_text(&out, " | ");
                brief_discs(&out, &row, 0, 80);
                out_char(&out, '\n');
            }
        }
    }
    out_char(&out, '\0');
    return out.at;
}

static void every_shape_in_few_signs(void **state)
{
    (void)state;
    struct arena *arena = arena_new(&out_of_memory);
    struct sample *sample = sample_plan(arena);
    assert_string_equal(day_brief(arena, sample, 0), "1 x 5 | 20 kg |  | empty bar\n"
                                                     "1 x 3 | 60 kg |  | 20\n"
                                                     "1 x 1 | 107.5 kg | @8 | 25+15+2.5+1.25\n"
                                                     "4 x 5 | 92.5 kg |  | 25+10+1.25\n"
                                                     "1 x 5 | 40 kg |  | \n"
                                                     "1 x 5 | 50 kg | @9 | \n"
                                                     "3 x 8-12 each side | 22.5 kg | @6-7 | \n"
                                                     "2 x 10-15 | ____ kg | @8 | \n"
                                                     "2 x 10-15 | ____ kg | @8 | \n");
    assert_string_equal(day_brief(arena, sample, 1), "1 x amrap, 5+ | -30 lb |  | \n"
                                                     "2 x amrap | bodyweight |  | \n"
                                                     "2 x 5 | ____ lb |  | \n"
                                                     "2 x 30 s | bodyweight | @7 | \n"
                                                     "2 x 20 m | 50 lb |  | \n"
                                                     "2 x 6 in parts | ____ lb |  | \n"
                                                     "30 reps in all | 95 lb |  | \n"
                                                     "2-5 x 3 | 135 lb |  | \n");
    arena_free(arena);
}

static void discs_go_on_where_they_stopped(void **state)
{
    (void)state;
    struct arena *arena = arena_new(&out_of_memory);
    struct sample *sample = sample_plan(arena);
    struct out out = out_scratch(arena);
    struct plan_entry entry = { .entry = &squat_entry, .lift = &squat, .groups = squat_groups, .group_count = 4 };
    struct row row = { .plan = &sample->plan, .day = &sample->days[0], .entry = &entry, .group = &squat_groups[2], .run = &top_run };
    int at = 0;
    for (int lines = 0; at < 4; lines++) {
        at = brief_discs(&out, &row, at, 7);
        out_char(&out, '\n');
        assert_true(lines < 4);
    }
    assert_int_equal(brief_discs(&out, &row, 0, 1), 1); /* one at least */
    out_char(&out, '\0');
    assert_string_equal(out.at, "25+15+\n2.5+\n1.25\n25+");
    arena_free(arena);
}

static void added_weight_carries_its_sign(void **state)
{
    (void)state;
    struct arena *arena = arena_new(&out_of_memory);
    struct sample *sample = sample_plan(arena);
    struct out out = out_scratch(arena);
    struct plan_run run = { .sets = 1, .has_load = true, .load = KG(65), .shown = KG(5), .disc_count = -1 };
    struct plan_entry entry = { .entry = &squat_entry, .lift = &pull_up };
    struct row row = { .plan = &sample->plan, .day = &sample->days[0], .entry = &entry, .group = pull_up_groups, .run = &run };
    brief_load(&out, &row);
    out_char(&out, '\0');
    assert_string_equal(out.at, "+5 kg");
    arena_free(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_shape_in_few_signs),
        cmocka_unit_test(discs_go_on_where_they_stopped),
        cmocka_unit_test(added_weight_carries_its_sign),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
