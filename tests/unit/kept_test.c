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

static const char *group_words(struct told *t, const struct entry *entry, int group)
{
    return words_at(t, group_place(entry, &entry->groups[group], entry->groups[group].at));
}

static const char *note_text(struct told *t, const struct entry *entry, int group, int index)
{
    struct group_note note = group_note(entry, &entry->groups[group], index);
    return arena_copy(t->arena, note.text, note.length);
}

static const char *only_note(struct told *t, const struct entry *entry, int group)
{
    assert_int_equal(entry->groups[group].note_count, 1);
    return note_text(t, entry, group, 0);
}

#define NOTED(first, second) \
    "squat top 1 x 4 at 80 kg rest 3 min note \"" first "\"\n   then back-off 3 x 6 at 60 kg cap rpe 8 note \"" second "\" then 2 x 8 at 50 kg"

/* Places behind a note of another length are others. */
static void lines_that_differ_in_notes_share_groups_too(void **state)
{
    (void)state;
    static const char *const notes[][2] = { { "Brace", "Slowly" }, { "", "Every one like the first" }, { "Brace, and stay", "" }, { "Brace, and stay", "" },
                                            { "Brace", "Slowly" } };
    struct told t = club_of("day A { " NOTED("Brace", "Slowly") " }\n day B { curl 2 x 8; " NOTED("", "Every one like the first") " }\n"
                            "day C { " NOTED("Brace, and stay", "") " }; day D { curl 3 x 8; " NOTED("Brace, and stay", "") "\n }\n"
                            "day E { " NOTED("Brace", "Slowly") "; }");
    assert_string_equal(findings_text(&t), "");
    for (int day = 0; day < 5; day++) {
        const struct entry *entry = entry_of(&t, day, day % 2);
        const struct group *groups = entry->groups;
        assert_ptr_equal(groups, entry_of(&t, 0, 0)->groups);
        for (int i = 0; i < 2; i++)
            assert_string_equal(only_note(&t, entry, i), notes[day][i]);
        assert_int_equal(groups[2].note_count, 0);
        assert_string_equal(group_words(&t, entry, 0), arena_format(t.arena, "top 1 x 4 at 80 kg rest 3 min note \"%s\"", notes[day][0]));
        assert_string_equal(group_words(&t, entry, 1), arena_format(t.arena, "back-off 3 x 6 at 60 kg cap rpe 8 note \"%s\"", notes[day][1]));
        assert_string_equal(group_words(&t, entry, 2), "2 x 8 at 50 kg");
        assert_string_equal(words_at(&t, entry->at), "squat");
        assert_string_equal(words_at(&t, group_place(entry, &groups[0], groups[0].load_at)), "at 80 kg");
        assert_string_equal(words_at(&t, group_place(entry, &groups[1], groups[1].load_at)), "at 60 kg");
        assert_string_equal(words_at(&t, group_place(entry, &groups[1], groups[1].sets.at)), "3");
        assert_string_equal(words_at(&t, group_place(entry, &groups[1], group_more(&groups[1])->cap.at)), "8");
        assert_string_equal(words_at(&t, group_place(entry, &groups[2], groups[2].load.at)), "50 kg");
        assert_string_equal(words_at(&t, group_place(entry, &groups[2], groups[2].load_at)), "at 50 kg");
    }
    assert_ptr_equal(entry_of(&t, 2, 0)->own, entry_of(&t, 3, 1)->own); /* the same notes: nothing is new */
    told_end(&t);
}

static void notes_within_a_group_are_words_like_others(void **state)
{
    (void)state;
    struct told t = club_of("day A { squat 3 x 5 note \"a\" rest 3 min; curl 3 x 8 note \"a\" note \"b\" }\n"
                            "day B { squat 3 x 5 note \"c\" rest 3 min; curl 3 x 8 note \"a\" note \"c\" }\n"
                            "day C { squat 3 x 5 note \"a\" rest 3 min; curl 3 x 8 note \"a\" note \"b\" }");
    assert_string_equal(findings_text(&t), "");
    for (int i = 0; i < 2; i++) {
        assert_ptr_not_equal(entry_of(&t, 0, i)->groups, entry_of(&t, 1, i)->groups);
        assert_ptr_equal(entry_of(&t, 0, i)->groups, entry_of(&t, 2, i)->groups);
    }
    assert_string_equal(only_note(&t, entry_of(&t, 1, 0), 0), "c");
    assert_int_equal(entry_of(&t, 2, 1)->groups[0].note_count, 2);
    assert_string_equal(note_text(&t, entry_of(&t, 2, 1), 0, 0), "a");
    assert_string_equal(note_text(&t, entry_of(&t, 2, 1), 0, 1), "b");
    assert_string_equal(group_words(&t, entry_of(&t, 2, 1), 0), "3 x 8 note \"a\" note \"b\"");
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
        cmocka_unit_test(lines_that_differ_in_notes_share_groups_too),
        cmocka_unit_test(notes_within_a_group_are_words_like_others),
        cmocka_unit_test(within_a_day_each_line_has_its_own),
        cmocka_unit_test(what_is_added_to_a_day_is_its_own),
        cmocka_unit_test(a_template_s_lines_are_of_the_block_that_uses_it),
        cmocka_unit_test(a_mistake_is_said_at_each_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
