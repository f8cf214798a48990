#include "syntax/parse.h"

#include "pool.h"

#include <string.h>

static struct tree *tree_of(struct arena *arena, const char *text)
{
    struct sources *sources = sources_new(arena);
    struct source *source = sources_add(sources, "x.block", text, strlen(text));
    struct findings *findings = findings_new(arena, sources);
    struct tree *tree = parse_text(arena, interner_new(arena), source, findings);
    assert_int_equal(findings_total(findings), 0);
    return tree;
}

static void each_kind_has_a_name_of_its_own(void **state)
{
    (void)state;
    for (int i = 0; i < NODE_KIND_COUNT; i++) {
        assert_non_null(node_kind_name((enum node_kind)i));
        for (int j = 0; j < i; j++)
            assert_string_not_equal(node_kind_name((enum node_kind)i), node_kind_name((enum node_kind)j));
    }
}

static void children_are_found_by_kind(void **state)
{
    struct tree *tree = tree_of(*state, "gym a { bar 20 kg; collar 1 kg; bar trap 25 kg }\n");
    const struct node *gym = node_child(tree->root, NODE_GYM);
    assert_non_null(gym);
    const struct node *bar = node_child(gym, NODE_BAR);
    assert_null(node_child(bar, NODE_NAME));
    const struct node *trap = node_next(bar, NODE_BAR);
    assert_string_equal(node_child(trap, NODE_NAME)->text, "trap");
    assert_null(node_next(trap, NODE_BAR));
    assert_null(node_child(gym, NODE_ROUND));
}

static void the_dump_shows_kinds_words_numbers_and_flags(void **state)
{
    struct tree *tree = tree_of(*state, "block b {\n  starts 2027-01-04\n  day A {\n    squat top (2 | 1) x 8-12 at rpe 7.50\n  }\n}\n");
    assert_string_equal(tree_dump(*state, tree),
                        "file\n"
                        "  block body\n"
                        "    name b\n"
                        "    starts\n"
                        "      date 2027-01-04\n"
                        "    day body\n"
                        "      name A\n"
                        "      entry\n"
                        "        lifts\n"
                        "          name squat\n"
                        "        group top\n"
                        "          count\n"
                        "            list parens\n"
                        "              number 2\n"
                        "              number 1\n"
                        "          reps\n"
                        "            band\n"
                        "              number 8\n"
                        "              number 12\n"
                        "          at-effort rpe\n"
                        "            number 7.5\n");
}

static void spans_keep_the_spelling_and_remarks_their_place(void **state)
{
    static const char text[] = "lift a # one\nlift b\n# two";
    struct tree *tree = tree_of(*state, text);
    assert_int_equal(tree->comment_count, 2);
    assert_memory_equal(text + (tree->comments[0].at.start - tree->source->base), "# one", 5);
    assert_int_equal(tree->comments[1].at.end - tree->source->base, strlen(text));
    const struct node *second = node_next(node_child(tree->root, NODE_LIFT), NODE_LIFT);
    assert_int_equal(second->at.start - tree->source->base, 13);
    assert_int_equal(second->at.end - tree->source->base, 19);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(each_kind_has_a_name_of_its_own, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(children_are_found_by_kind, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(the_dump_shows_kinds_words_numbers_and_flags, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(spans_keep_the_spelling_and_remarks_their_place, pool_setup, pool_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
