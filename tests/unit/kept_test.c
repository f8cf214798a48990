/* Plain lines of the same words share what was made of the first; each has its own places. */
#include "club.h"

#define LINE "squat 3 x 5 at 60 kg cap rpe 8 rest 3 min progression steady"
#define STEADY "progression steady { when made add 2.5 kg }\n"

static struct told club_of(const char *days)
{
    char text[4096];
    snprintf(text, sizeof text, INES STEADY "block winter { for ines; starts 2027-01-04; weeks 3; %s }", days);
    return told_club(text);
}

static const char *words_at(struct told *t, struct span at)
{
    const struct source *source = sources_at(t->sources, 1);
    return arena_copy(t->arena, source->text + (at.start - source->base), at.end - at.start);
}

static const struct entry *entry_of(const struct told *t, int day, int entry)
{
    return &t->model->blocks[0]->days[day].entries[entry];
}

static void places_read_as_written(struct told *t, const struct entry *entry)
{
    const struct group *group = &entry->groups[0];
    const struct {
        struct span at;
        const char *words;
    } rows[] = {
        { group->at, "3 x 5 at 60 kg cap rpe 8 rest 3 min progression steady" },
        { group->sets.at, "3" },
        { group->reps.at, "5" },
        { group->load_at, "at 60 kg" },
        { group->load.at, "60 kg" },
        { group_more(group)->cap.at, "8" },
        { group_more(group)->progression_at, "progression steady" },
    };
    assert_string_equal(words_at(t, entry->at), "squat");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_string_equal(words_at(t, group_place(entry, group, rows[i].at)), rows[i].words);
    assert_false(span_is_somewhere(group_place(entry, group, group_more(group)->of_day_at)));
}

static void lines_of_two_days_share_all_but_places(void **state)
{
    (void)state;
    struct told t = club_of("day A {\n " LINE "\n }\n day B { curl 2 x 8; " LINE " }\n day C { squat 3 x 5 at 60 kg }");
    assert_string_equal(findings_text(&t), "");
    const struct entry *first = entry_of(&t, 0, 0), *second = entry_of(&t, 1, 1);
    assert_ptr_equal(first->groups, second->groups);
    assert_ptr_equal(first->lifts, second->lifts);
    assert_int_equal(second->lift_count, 1);
    assert_true(first->at.start < second->at.start);
    places_read_as_written(&t, first);
    places_read_as_written(&t, second);
    assert_ptr_not_equal(entry_of(&t, 2, 0)->groups, first->groups);
    told_end(&t);
}

static void within_a_day_each_line_has_its_own(void **state)
{
    (void)state;
    struct told t = club_of("day A { " LINE "; superset 2 rounds { " LINE " }; " LINE " }; day B { " LINE
                            "; curl 2 x 8; " LINE " }");
    const struct group *groups[5];
    for (int i = 0; i < 5; i++)
        groups[i] = entry_of(&t, i / 3, i < 3 ? i : i == 3 ? 0 : 2)->groups;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < i; j++)
            assert_ptr_not_equal(groups[i], groups[j]);
    assert_ptr_not_equal(groups[3], groups[4]);
    places_read_as_written(&t, entry_of(&t, 1, 0));
    places_read_as_written(&t, entry_of(&t, 1, 2));
    told_end(&t);
}

static void what_is_added_to_a_day_is_its_own(void **state)
{
    (void)state;
    struct told t = club_of("day A { " LINE " }; adjust ines { add to day A { " LINE " } }");
    assert_ptr_not_equal(entry_of(&t, 0, 0)->groups, t.model->blocks[0]->adjusts[0].changes[0].entries[0].groups);
    told_end(&t);
}

static void a_template_s_lines_are_of_the_block_that_uses_it(void **state)
{
    (void)state;
    struct told t = told_club(INES STEADY "template base { weeks 3; day A { " LINE " } }\n"
                                          "block one from base { for ines; starts 2027-01-04; day B { " LINE " } }\n"
                                          "block two from base { for ines; starts 2027-03-01 }\n");
    assert_string_equal(findings_text(&t), "");
    const struct block *one = t.model->blocks[0], *two = t.model->blocks[1];
    assert_ptr_not_equal(one->days[0].entries[0].groups, one->days[1].entries[0].groups);
    assert_ptr_not_equal(one->days[0].entries[0].groups, two->days[0].entries[0].groups);
    assert_ptr_not_equal(one->days[0].entries[0].groups[0].origin, two->days[0].entries[0].groups[0].origin);
    told_end(&t);
}

static void a_mistake_is_said_at_each_line(void **state)
{
    (void)state;
    struct told t = club_of(
        "day A { curl 3 x 5 rest 90 }; day B { curl 3 x 5 rest 90 }; day C { bensh 3 x 5 }; day D { bensh 3 x 5 }");
    int count;
    struct finding *const *all = findings_all(t.findings, &count);
    assert_int_equal(count, 4);
    for (int i = 0; i < count; i++)
        assert_string_equal(words_at(&t, all[i]->at), i < 2 ? "90" : "bensh");
    assert_true(all[0]->at.start < all[1]->at.start && all[2]->at.start < all[3]->at.start);
    told_end(&t);
}

/* ---- what planning says of a line, it says there ---- */

static void findings_and_reasons_lie_in_their_own_line(void **state)
{
    (void)state;
    struct told t = club_of("day A { squat 3 x 5 at 10 kg; bench 3 x 5 at rpe 8 cap 20 kg };\n day B { squat 3 x 5 at "
                            "10 kg; bench 3 x 5 at rpe 8 cap 20 kg }");
    const struct plan *plan = told_plan(&t, "winter", "ines");
    assert_ptr_equal(entry_of(&t, 0, 0)->groups, entry_of(&t, 1, 0)->groups);
    int count, met = 0;
    struct finding *const *all = findings_all(t.findings, &count);
    for (int i = 0; i < count; i++)
        if (all[i]->kind == KIND_UNDER_BAR) {
            assert_string_equal(words_at(&t, all[i]->at), "at 10 kg");
            assert_true(all[i]->at.start > entry_of(&t, met, 0)->at.start &&
                        all[i]->at.start < entry_of(&t, met, 1)->at.start);
            met++;
        }
    assert_int_equal(met, 2);
    for (int day = 0; day < 2; day++) {
        const struct reason *reason = plan->weeks[0].days[day].entries[1].groups[0].runs[0].reason;
        while (reason && reason->kind != REASON_CAP)
            reason = reason->before;
        assert_non_null(reason);
        assert_true(entry_of(&t, day, 1)->groups[0].shared);
        assert_string_equal(words_at(&t, reason->at), "20 kg");
        assert_true(reason->at.start > entry_of(&t, day, 1)->at.start &&
                    reason->at.start < entry_of(&t, day, 1)->at.start + 40);
    }
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(findings_and_reasons_lie_in_their_own_line),
        cmocka_unit_test(lines_of_two_days_share_all_but_places),
        cmocka_unit_test(within_a_day_each_line_has_its_own),
        cmocka_unit_test(what_is_added_to_a_day_is_its_own),
        cmocka_unit_test(a_template_s_lines_are_of_the_block_that_uses_it),
        cmocka_unit_test(a_mistake_is_said_at_each_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
