/* Which files a run reads: language.md, sections 1, 2 and 8; src/model/load.h. */
#include "club.h"

#include "model/library.h"

static const char *files_text(struct told *t)
{
    const char *text = "";
    for (int i = 0; i < sources_count(t->sources); i++)
        text = arena_format(t->arena, "%s%s%s", text, i ? " " : "", sources_at(t->sources, i)->name);
    return text;
}

static void paths_are_joined(void **state)
{
    (void)state;
    static const struct {
        const char *from, *path, *joined;
    } cases[] = {
        { "club.block", "gym.block", "gym.block" },
        { "club/main.block", "gym.block", "club/gym.block" },
        { "club/main.block", "./gym.block", "club/gym.block" },
        { "club/main.block", "../gym.block", "gym.block" },
        { "club/main.block", "../../gym.block", "../gym.block" },
        { "x/y.block", "b/../a.block", "x/a.block" },
        { "x/y.block", "b//a.block", "x/b/a.block" },
        { "x/y.block", "/etc/a.block", "/etc/a.block" },
        { "/club/y.block", "../a.block", "/a.block" },
        { "../y.block", "a.block", "../a.block" },
        { "../y.block", "../a.block", "../../a.block" },
    };
    struct told t = told_begin();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_string_equal(load_join(t.arena, cases[i].from, cases[i].path), cases[i].joined);
    told_end(&t);
}

static const struct {
    const char *says;
    struct paper papers[6];
    const char *named[3];
    const char *read, *findings;
} cases[] = {
    { "relative to this file",
      { { "c/a.block", "use \"b.block\"\n" }, { "c/b.block", "lift row\n" } },
      { "c/a.block" },
      "c/a.block c/b.block",
      "" },
    { "loaded once",
      { { "a.block", "use \"b.block\"\nuse \"./b.block\"\n" }, { "b.block", "lift row\n" } },
      { "a.block", "b.block" },
      "a.block b.block",
      "" },
    { "circles are harmless",
      { { "a.block", "use \"b.block\"\n" }, { "b.block", "use \"a.block\"\n" } },
      { "a.block" },
      "a.block b.block",
      "" },
    { "a file that uses itself", { { "a.block", "use \"a.block\"\n" } }, { "a.block" }, "a.block", "" },
    { "a used file that is missing is an error at its use",
      { { "a.block", "use \"b.block\"\n" } },
      { "a.block" },
      "a.block",
      "error file `\"b.block\"`" },
    { "named twice and missing is one finding each",
      { { "a.block", "use \"b.block\"\nuse \"b.block\"\n" } },
      { "a.block" },
      "a.block",
      "error file `\"b.block\"`" },
    { "a named file that is missing", { { "a.block", "" } }, { "c.block" }, "", "error file ``" },
    { "within the working directory",
      { { "c/a.block", "use \"../b.block\"\n" }, { "b.block", "lift row\n" } },
      { "c/a.block" },
      "c/a.block b.block",
      "" },
    { "not above it",
      { { "a.block", "use \"../b.block\"\n" }, { "../b.block", "lift row\n" } },
      { "a.block" },
      "a.block",
      "error use `\"../b.block\"`" },
    { "not elsewhere",
      { { "a.block", "use \"/etc/b.block\"\n" }, { "/etc/b.block", "" } },
      { "a.block" },
      "a.block",
      "error use `\"/etc/b.block\"`" },
    { "or the folder of a file that is named",
      { { "/club/a.block", "use \"b.block\"\n" }, { "/club/b.block", "" } },
      { "/club/a.block" },
      "/club/a.block /club/b.block",
      "" },
    { "and what lies in it",
      { { "../club/a.block", "use \"in/b.block\"\n" }, { "../club/in/b.block", "" } },
      { "../club/a.block" },
      "../club/a.block ../club/in/b.block",
      "" },
    { "not beside it",
      { { "/club/a.block", "use \"../other/b.block\"\n" }, { "/other/b.block", "" } },
      { "/club/a.block" },
      "/club/a.block",
      "error use `\"../other/b.block\"`" },
    { "std/ is the library",
      { { "c/a.block", "use \"std/warm-ups.block\"\n" } },
      { "c/a.block" },
      "c/a.block std/warm-ups.block",
      "" },
    { "the library has no such file",
      { { "a.block", "use \"std/none.block\"\n" } },
      { "a.block" },
      "a.block",
      "error file `\"std/none.block\"`" },
    { "no way out of the library",
      { { "a.block", "use \"std/../b.block\"\n" }, { "b.block", "" } },
      { "a.block" },
      "a.block",
      "error file `\"std/../b.block\"`" },
    { "a roster",
      { { "c/a.block", "roster \"p.csv\"\n" }, { "c/p.csv", "athlete\nines\n" } },
      { "c/a.block" },
      "c/a.block c/p.csv",
      "" },
    { "a roster that is missing",
      { { "a.block", "roster \"p.csv\"\n" } },
      { "a.block" },
      "a.block",
      "error file `\"p.csv\"`" },
    { "a roster outside",
      { { "a.block", "roster \"../p.csv\"\n" }, { "../p.csv", "" } },
      { "a.block" },
      "a.block",
      "error use `\"../p.csv\"`" },
    { "a file may be named by two ways", { { "a.block", "lift row\n" } }, { "a.block", "./a.block" }, "a.block", "" },
    { "language 1", { { "a.block", "language 1\n" } }, { "a.block" }, "a.block", "" },
    { "another language", { { "a.block", "language 2\n" } }, { "a.block" }, "a.block", "error limit `2`" },
    { "units kg or lb", { { "a.block", "units stone\n" } }, { "a.block" }, "a.block", "error unit `stone`" },
    { "units twice the same", { { "a.block", "units lb\nunits lb\n" } }, { "a.block" }, "a.block", "" },
    { "units twice and not the same",
      { { "a.block", "units lb\nunits kg\n" } },
      { "a.block" },
      "a.block",
      "error repeated `units kg`" },
};

static void files_and_what_they_use(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct told t = told_begin();
        int count = cases[i].named[1] ? 2 : 1;
        told_load(&t, cases[i].papers, cases[i].named, count);
        if (strcmp(files_text(&t), cases[i].read) || strcmp(findings_text(&t), cases[i].findings))
            print_message("case: %s\n", cases[i].says);
        assert_string_equal(files_text(&t), cases[i].read);
        assert_string_equal(findings_text(&t), cases[i].findings);
        told_end(&t);
    }
}

static void units_are_of_the_file(void **state)
{
    (void)state;
    struct told t = told_begin();
    const struct paper papers[] = { { "a.block", "use \"b.block\"\nroster \"p.csv\"\n" },
                                    { "b.block", "units lb\nroster \"q.csv\"\n" },
                                    { "p.csv", "athlete\n" },
                                    { "q.csv", "athlete\n" },
                                    { NULL, NULL } };
    told_load(&t, papers, (const char *const[]){ "a.block" }, 1);
    assert_int_equal(t.loaded.file_count, 2);
    assert_int_equal(t.loaded.files[0].unit, UNIT_KG); /* without a line a file means kg */
    assert_int_equal(t.loaded.files[1].unit, UNIT_LB);
    assert_int_equal(t.loaded.roster_count, 2);
    assert_int_equal(t.loaded.rosters[0].unit, UNIT_LB); /* b is read first */
    assert_int_equal(t.loaded.rosters[1].unit, UNIT_KG);
    assert_true(t.loaded.files[0].tree->source->named);
    assert_false(t.loaded.files[1].tree->source->named);
    told_end(&t);
}

static void a_chain_too_deep_is_a_limit(void **state)
{
    (void)state;
    enum { FILES = LOAD_DEPTH_MOST + 2 };
    static struct paper papers[FILES + 1];
    static char paths[FILES][24], texts[FILES][40];
    for (int i = 0; i < FILES; i++) {
        snprintf(paths[i], sizeof paths[i], "f%d.block", i);
        snprintf(texts[i], sizeof texts[i], "use \"f%d.block\"\n", i + 1);
        papers[i] = (struct paper){ paths[i], texts[i] };
    }
    papers[FILES] = (struct paper){ NULL, NULL };
    struct told t = told_begin();
    told_load(&t, papers, (const char *const[]){ "f0.block" }, 1);
    assert_int_equal(findings_total(t.findings), 1);
    assert_int_equal(findings_sorted(t.findings)[0]->kind, KIND_LIMIT);
    told_end(&t);
}

/* The shipped library stands by itself: every file of it is read and resolved without a word. */
static void the_library_is_sound(void **state)
{
    (void)state;
    assert_true(library_count > 0);
    assert_null(library_find("std/none.block"));
    for (size_t i = 0; i < library_count; i++) {
        assert_ptr_equal(library_find(library_files[i].name), &library_files[i]);
        struct told t = told_begin();
        const struct paper papers[] = { { "a.block", arena_format(t.arena, "use \"%s\"\n", library_files[i].name) },
                                        { NULL, NULL } };
        told_load(&t, papers, (const char *const[]){ "a.block" }, 1);
        told_resolve(&t);
        assert_string_equal(findings_text(&t), "");
        assert_true(t.loaded.files[1].tree->source->library);
        told_end(&t);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(paths_are_joined),      cmocka_unit_test(files_and_what_they_use),
        cmocka_unit_test(units_are_of_the_file), cmocka_unit_test(a_chain_too_deep_is_a_limit),
        cmocka_unit_test(the_library_is_sound),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
