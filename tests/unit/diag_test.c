#include "base/diag.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct case_ {
    struct sources *sources;
    struct findings *findings;
    struct source *first, *second;
};

static struct case_ case_new(struct arena *arena)
{
    struct case_ c = { .sources = sources_new(arena) };
    c.first = sources_add(c.sources, "gym.block", "lift squat\nlift squat\nlift bench\n", 33);
    c.second = sources_add(c.sources, "winter/base.block", "squat 3 x 5\n", 12);
    c.findings = findings_new(arena, c.sources);
    return c;
}

static struct span at(const struct source *source, uint32_t start, uint32_t end)
{
    return (struct span){ source->base + start, source->base + end };
}

static void assert_prints(struct findings *findings, struct diag_style style, const char *expected)
{
    char *shown = NULL;
    size_t size;
    FILE *out = open_memstream(&shown, &size);
    findings_print(findings, out, style);
    fclose(out);
    assert_string_equal(shown, expected);
    free(shown);
}

static void a_finding_prints_with_all_it_has(void **state)
{
    struct case_ c = case_new(*state);
    struct finding *finding =
        diag_add(c.findings, KIND_DUPLICATE, at(c.first, 16, 21), "lift %s is declared twice", "squat");
    diag_help(c.findings, finding, "keep one of the %d", 2);
    diag_related(c.findings, finding, at(c.first, 5, 10), "first declared here");
    diag_related(c.findings, finding, at(c.second, 0, 5), "used here");
    diag_setting(c.findings, finding,
                 (struct setting){ .block = "winter-base", .week = 3, .day = "A", .lift = "squat", .athlete = "ines" });
    assert_prints(c.findings, (struct diag_style){ 0 },
                  "gym.block:2:6: error: lift squat is declared twice [duplicate-name]\n"
                  "    2 | lift squat\n"
                  "      |      ^^^^^\n"
                  "  in block winter-base, week 3, day A, squat for ines\n"
                  "  help: keep one of the 2\n"
                  "gym.block:1:6: note: first declared here\n"
                  "    1 | lift squat\n"
                  "      |      ^^^^^\n"
                  "winter/base.block:1:1: note: used here\n"
                  "    1 | squat 3 x 5\n"
                  "      | ^^^^^\n");
    assert_prints(c.findings, (struct diag_style){ .brief = true },
                  "gym.block:2:6: error: lift squat is declared twice [duplicate-name]\n");
}

static void a_setting_names_what_is_known(void **state)
{
    static const struct {
        struct setting setting;
        const char *shown;
    } cases[] = {
        { { 0 }, "" },
        { { .athlete = "ines" }, "  for ines\n" },
        { { .week = 12 }, "  in week 12\n" },
        { { .block = "peak", .athlete = "ines" }, "  in block peak for ines\n" },
        { { .day = "A", .lift = "row" }, "  in day A, row\n" },
        { { .lift = "r\x1bw" }, "  in r\\x1bw\n" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct case_ c = case_new(*state);
        struct finding *finding = diag_add(c.findings, KIND_FILE, (struct span){ 0, 0 }, "no");
        diag_setting(c.findings, finding, cases[i].setting);
        assert_prints(c.findings, (struct diag_style){ 0 },
                      arena_format(*state, "setwright: error: no [file]\n%s", cases[i].shown));
    }
}

static void one_mistake_gives_one_finding(void **state)
{
    struct case_ c = case_new(*state);
    struct finding *first = diag_add(c.findings, KIND_RANGE, at(c.second, 0, 5), "first");
    diag_help(c.findings, first, "mend it");
    for (int week = 2; week <= 9; week++) {
        struct finding *again = diag_add(c.findings, KIND_RANGE, at(c.second, 0, 5), "week %d", week);
        diag_help(c.findings, again, "another");
        diag_related(c.findings, again, at(c.first, 0, 4), "elsewhere");
        diag_setting(c.findings, again, (struct setting){ .week = week });
        assert_ptr_equal(again, first);
    }
    assert_int_equal(first->times, 9);
    assert_string_equal(first->message, "first");
    assert_string_equal(first->help, "mend it");
    assert_null(first->related);
    assert_int_equal(first->setting.week, 0);
    assert_ptr_not_equal(diag_add(c.findings, KIND_UNIT, at(c.second, 0, 5), "other kind"), first);
    assert_ptr_not_equal(diag_add(c.findings, KIND_RANGE, at(c.second, 0, 6), "other end"), first);
    assert_ptr_not_equal(diag_add(c.findings, KIND_RANGE, at(c.second, 1, 5), "other start"), first);
    assert_int_equal(findings_total(c.findings), 4);
}

static void without_a_place_the_sentence_counts(void **state)
{
    struct case_ c = case_new(*state);
    const struct span nowhere = { 0, 0 };
    struct finding *first = diag_add(c.findings, KIND_FILE, nowhere, "%s: no such file", "a.block");
    assert_ptr_not_equal(diag_add(c.findings, KIND_FILE, nowhere, "%s: no such file", "b.block"), first);
    assert_ptr_equal(diag_add(c.findings, KIND_FILE, nowhere, "%s: no such file", "a.block"), first);
    assert_int_equal(findings_total(c.findings), 2);
}

static void levels_are_counted(void **state)
{
    struct case_ c = case_new(*state);
    diag_add(c.findings, KIND_RANGE, at(c.first, 0, 1), "an error");
    diag_add(c.findings, KIND_WEEKS, at(c.first, 1, 2), "a warning");
    struct finding *raised = diag_add(c.findings, KIND_UNDER_BAR, at(c.first, 2, 3), "advice");
    diag_level(c.findings, raised, LEVEL_ADVICE);
    assert_int_equal(findings_count(c.findings, LEVEL_ERROR), 1);
    assert_int_equal(findings_count(c.findings, LEVEL_WARNING), 1);
    assert_int_equal(findings_count(c.findings, LEVEL_ADVICE), 1);
    assert_true(findings_has_kind(c.findings, KIND_WEEKS));
    assert_false(findings_has_kind(c.findings, KIND_USE));
    raised = diag_add(c.findings, KIND_UNDER_BAR, at(c.first, 2, 3), "again");
    diag_level(c.findings, raised, LEVEL_ERROR);
    assert_int_equal(findings_count(c.findings, LEVEL_ERROR), 2);
    diag_level(c.findings, raised, LEVEL_WARNING); /* never milder for a repeat */
    assert_int_equal(findings_count(c.findings, LEVEL_ERROR), 2);
}

static void findings_sort_by_file_place_and_order(void **state)
{
    struct case_ c = case_new(*state);
    diag_add(c.findings, KIND_RANGE, at(c.second, 0, 5), "fourth");
    diag_add(c.findings, KIND_RANGE, at(c.first, 11, 21), "third");
    diag_add(c.findings, KIND_UNIT, at(c.first, 5, 10), "first");
    diag_add(c.findings, KIND_RANGE, at(c.first, 5, 7), "second");
    static const char *const order[] = { "first", "second", "third", "fourth" };
    const struct finding *const *sorted = findings_sorted(c.findings);
    for (int i = 0; i < 4; i++)
        assert_string_equal(sorted[i]->message, order[i]);
    diag_add(c.findings, KIND_FILE, (struct span){ 0, 0 }, "before all");
    assert_string_equal(findings_sorted(c.findings)[0]->message, "before all");
}

static void no_more_than_asked_print(void **state)
{
    struct case_ c = case_new(*state);
    for (uint32_t i = 0; i < 3; i++)
        diag_add(c.findings, KIND_RANGE, at(c.first, i, i + 1), "number %u", (unsigned)i);
    assert_prints(c.findings, (struct diag_style){ .brief = true, .most = 2 },
                  "gym.block:1:1: error: number 0 [range]\n"
                  "gym.block:1:2: error: number 1 [range]\n"
                  "setwright: 3 findings, of which the first 2 are shown\n");
    assert_prints(c.findings, (struct diag_style){ .brief = true, .most = 3 },
                  "gym.block:1:1: error: number 0 [range]\n"
                  "gym.block:1:2: error: number 1 [range]\n"
                  "gym.block:1:3: error: number 2 [range]\n");
}

static void thousands_are_kept_apart(void **state)
{
    struct sources *sources = sources_new(*state);
    char *text = arena_alloc(*state, 1001);
    memset(text, 'x', 1000);
    struct source *source = sources_add(sources, "long.block", text, 1000);
    struct findings *findings = findings_new(*state, sources);
    for (int round = 0; round < 2; round++)
        for (uint32_t i = 0; i < 1000; i++)
            for (enum kind kind = KIND_SYNTAX; kind <= KIND_REPEATED; kind++)
                diag_add(findings, kind, at(source, i, i + 1), "x");
    assert_int_equal(findings_total(findings), 1000 * KIND_REPEATED);
    for (int i = 0; i < 1000 * KIND_REPEATED; i++)
        assert_int_equal(findings_sorted(findings)[i]->times, 2);
}

/* ECMA-48 (SGR): 1 bold, 31 red, 35 magenta, 0 as before */
static void colour_is_only_on_wish(void **state)
{
    struct case_ c = case_new(*state);
    diag_add(c.findings, KIND_WEEKS, at(c.second, 0, 5), "x");
    assert_prints(c.findings, (struct diag_style){ .colour = true },
                  "\x1b[1mwinter/base.block:1:1:\x1b[0m \x1b[1;35mwarning:\x1b[0m x [weeks]\n"
                  "    1 | squat 3 x 5\n"
                  "\x1b[1;35m      | ^^^^^\x1b[0m\n");
}

static void names_and_words_of_files_are_made_safe(void **state)
{
    struct sources *sources = sources_new(*state);
    struct source *source = sources_add(sources, "a\n\x1b.block", "x", 1);
    struct findings *findings = findings_new(*state, sources);
    struct finding *finding = diag_add(findings, KIND_TEXT, at(source, 0, 1), "no lift '%s'", "\x1b[2J");
    diag_help(findings, finding, "write '%s'", "\x9b");
    assert_prints(findings, (struct diag_style){ 0 },
                  "a\\x0a\\x1b.block:1:1: error: no lift '\\x1b[2J' [text]\n"
                  "    1 | x\n"
                  "      | ^\n"
                  "  help: write '\\x9b'\n");
}

static void what_is_allowed_is_listed_apart(void **state)
{
    struct case_ c = case_new(*state);
    struct finding *late = diag_add(c.findings, KIND_UNDER_BAR, at(c.second, 0, 5), "late");
    struct finding *off = diag_add(c.findings, KIND_UNDER_BAR, at(c.second, 6, 7), "off");
    struct finding *early = diag_add(c.findings, KIND_UNDER_BAR, at(c.first, 5, 10), "early");
    diag_add(c.findings, KIND_UNDER_BAR, at(c.first, 0, 4), "heard");
    late->allowed = early->allowed = off->allowed = "speed work";
    off->off = true;
    int count;
    const struct finding *const *allowed = findings_allowed(c.findings, &count);
    assert_int_equal(count, 2);
    assert_ptr_equal(allowed[0], early);
    assert_ptr_equal(allowed[1], late);
    assert_int_equal(findings_total(c.findings), 1);
    assert_string_equal(findings_sorted(c.findings)[0]->message, "heard");
}

static void the_program_speaks_for_itself(void **state)
{
    (void)state;
    char *shown = NULL;
    size_t size;
    FILE *out = open_memstream(&shown, &size);
    diag_say(out, "%s: %s", "a\x1b.block", "no such file");
    fclose(out);
    assert_string_equal(shown, "setwright: a\\x1b.block: no such file\n");
    free(shown);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_finding_prints_with_all_it_has),
        cmocka_unit_test(a_setting_names_what_is_known),
        cmocka_unit_test(one_mistake_gives_one_finding),
        cmocka_unit_test(without_a_place_the_sentence_counts),
        cmocka_unit_test(levels_are_counted),
        cmocka_unit_test(findings_sort_by_file_place_and_order),
        cmocka_unit_test(no_more_than_asked_print),
        cmocka_unit_test(thousands_are_kept_apart),
        cmocka_unit_test(colour_is_only_on_wish),
        cmocka_unit_test(names_and_words_of_files_are_made_safe),
        cmocka_unit_test(what_is_allowed_is_listed_apart),
        cmocka_unit_test(the_program_speaks_for_itself),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
