#include "syntax/parse.h"

#include "base/file.h"
#include "syntax/words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static jmp_buf out_of_memory;

struct reading {
    struct arena *arena;
    struct sources *sources;
    struct findings *findings;
    struct tree *tree;
};

static struct reading read_bytes(const char *name, const char *bytes, size_t length)
{
    struct reading reading = { .arena = arena_new(&out_of_memory) };
    assert_non_null(reading.arena);
    reading.sources = sources_new(reading.arena);
    reading.findings = findings_new(reading.arena, reading.sources);
    struct source *source = sources_add(reading.sources, name, bytes, length);
    reading.tree = parse_text(reading.arena, interner_new(reading.arena), source, reading.findings);
    assert_non_null(reading.tree->root);
    return reading;
}

static struct reading read_text(const char *text)
{
    return read_bytes("x.block", text, strlen(text));
}

static char *printed(const struct reading *reading)
{
    char *text = NULL;
    size_t length;
    FILE *out = open_memstream(&text, &length);
    assert_non_null(out);
    findings_print(reading->findings, out, (struct diag_style){ .most = 0 });
    fclose(out);
    return text;
}

static const char *folder(void)
{
    static char path[4096];
    const char *top = getenv("SETWRIGHT_SRC");
    snprintf(path, sizeof path, "%s/tests/cases/syntax", top ? top : ".");
    return path;
}

/* ---- pairs: NAME.block and the findings it gives, NAME.txt ---- */

static void write_golden(const char *path, const char *text)
{
    FILE *out = fopen(path, "w");
    assert_non_null(out);
    fputs(text, out);
    fclose(out);
}

static void each_case_gives_its_findings(void **state)
{
    (void)state;
    struct arena *arena = arena_new(&out_of_memory);
    const char *why;
    int count;
    const char *const *names = file_list(arena, folder(), ".block", &count, &why);
    assert_non_null(names);
    assert_true(count > 15);
    for (int i = 0; i < count; i++) {
        size_t length, wanted_length;
        const char *path = arena_format(arena, "%s/%s", folder(), names[i]);
        const char *wanted_path = arena_format(arena, "%.*stxt", (int)(strlen(path) - 5), path);
        const char *bytes = file_read(arena, path, 1 << 20, false, &length, &why);
        assert_non_null(bytes);
        struct reading reading = read_bytes(names[i], bytes, length);
        char *text = printed(&reading);
        if (getenv("SETWRIGHT_GOLDEN"))
            write_golden(wanted_path, text);
        const char *wanted = file_read(arena, wanted_path, 1 << 20, false, &wanted_length, &why);
        assert_non_null(wanted);
        assert_string_equal(text, wanted);
        free(text);
        arena_free(reading.arena);
    }
    arena_free(arena);
}

/* ---- every kind of node ---- */

static void mark(const struct node *node, bool *seen)
{
    seen[node->kind] = true;
    for (const struct node *child = node->child; child; child = child->next)
        mark(child, seen);
}

static void some_case_builds_each_kind(void **state)
{
    (void)state;
    bool seen[NODE_KIND_COUNT] = { false };
    struct arena *arena = arena_new(&out_of_memory);
    const char *why;
    int count;
    const char *const *names = file_list(arena, folder(), ".block", &count, &why);
    assert_non_null(names);
    for (int i = 0; i < count; i++) {
        size_t length;
        const char *bytes = file_read(arena, arena_format(arena, "%s/%s", folder(), names[i]), 1 << 20, false, &length, &why);
        struct reading reading = read_bytes(names[i], bytes, length);
        mark(reading.tree->root, seen);
        arena_free(reading.arena);
    }
    arena_free(arena);
    for (int kind = 0; kind < NODE_KIND_COUNT; kind++)
        if (!seen[kind])
            fail_msg("no case builds the kind %s", node_kind_name((enum node_kind)kind));
}

/* ---- names and words ---- */

static void any_word_names_a_person(void **state)
{
    (void)state;
    static const char *const forms[] = { "athlete %s\n",          "athlete %s { }\n",        "group %s { ines }\n",
                                         "group g { %s, ines }\n", "group g { ines, %s }\n", "block b { for %s }\n",
                                         "block b { for ines, %s; weeks 2 }\n", "diary %s { }\n",
                                         "block b { adjust %s { skip curl } }\n",
                                         "block b { adjust %s in weeks 2-3 { skip curl } }\n" };
    for (int i = 0; i < word_count(); i++)
        for (size_t form = 0; form < sizeof forms / sizeof *forms; form++) {
            char text[120], whole[130];
            snprintf(whole, sizeof whole, "%s", forms[form]);
            char *at = strstr(whole, "%s");
            snprintf(text, sizeof text, "%.*s%s%s", (int)(at - whole), whole, word_at(i)->text, at + 2);
            struct reading reading = read_text(text);
            if (findings_total(reading.findings))
                fail_msg("refused: %s", text);
            arena_free(reading.arena);
        }
}

static void no_word_names_a_lift(void **state)
{
    (void)state;
    for (int i = 0; i < word_count(); i++) {
        const char *word = word_at(i)->text;
        char text[80], message[120];
        snprintf(text, sizeof text, "lift %s { kind accessory }\nlift row\n", word);
        snprintf(message, sizeof message, "`%s` is a word of the language and cannot name a lift", word);
        struct reading reading = read_text(text);
        assert_int_equal(findings_total(reading.findings), 1);
        const struct finding *finding = findings_sorted(reading.findings)[0];
        assert_string_equal(finding->message, message);
        assert_non_null(strstr(finding->help, word));
        arena_free(reading.arena);
    }
}

static void names_are_composed_and_keep_their_case(void **state)
{
    (void)state;
    struct reading reading = read_text("lift ku\xcc\x88hn\nlift k\xc3\xbchn\nlift Row\n");
    assert_int_equal(findings_total(reading.findings), 0);
    const struct node *first = node_child(reading.tree->root, NODE_LIFT);
    const struct node *second = node_next(first, NODE_LIFT);
    assert_ptr_equal(first->child->text, second->child->text);
    assert_string_equal(second->child->text, "k\xc3\xbchn");
    assert_string_equal(node_next(second, NODE_LIFT)->child->text, "Row");
    arena_free(reading.arena);
}

/* ---- how a line may be spelt ---- */

static void glued_and_spaced_sets_give_one_tree(void **state)
{
    (void)state;
    static const char *const same[][2] = {
        { "squat 4x5 at 100kg", "squat 4 x 5 at 100 kg" },
        { "squat 3x8-12 at 70%", "squat 3 \xc3\x97 8 - 12 at 70 %" },
        { "squat (4 | 2)x3 at rpe 8", "squat (4 | 2) x 3 at rpe 8" },
        { "squat 4xamrap at 50kg", "squat 4 x amrap at 50 kg" },
        { "squat 5x30s rest 90s", "squat 5 x 30 s rest 90 s" },
        { "squat $n x5 at $load kg", "squat $n x 5 at $load kg" },
        { "squat 3 x 5 at rpe 7\n  then 2 x 5 at same", "squat 3 x 5 at rpe 7 then 2 x 5 at same" },
        { "squat 3 x 5 at 70 |\n 75 |\n 80%", "squat 3 x 5 at 70 | 75 | 80%" },
        { "squat 3 x (8,\n 6,\n 4) at rpe 8", "squat 3 x (8, 6, 4) at rpe 8" },
        { "squat\n{\n3 x 5 }", "squat { 3 x 5 }" },
        { "squat\t3\xc2\xa0x\xe2\x80\xaf" "5", "squat 3 x 5" },
        { "squat 3 x 5 at 70,75,80%", "squat 3 x 5 at 70, 75, 80%" },
    };
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        char *dumps[2];
        for (int side = 0; side < 2; side++) {
            char text[200];
            snprintf(text, sizeof text, "block b { day A { %s } }", same[i][side]);
            struct reading reading = read_text(text);
            if (findings_total(reading.findings))
                fail_msg("refused: %s", text);
            dumps[side] = strdup(tree_dump(reading.arena, reading.tree));
            arena_free(reading.arena);
        }
        assert_string_equal(dumps[0], dumps[1]);
        free(dumps[0]);
        free(dumps[1]);
    }
}

static void line_ends_of_other_machines_and_a_mark_change_nothing(void **state)
{
    (void)state;
    struct reading plain = read_text("units kg\ngym a {\n  bar 20 kg\n}\n");
    struct reading other = read_text("\xef\xbb\xbfunits kg\r\ngym a {\r\n\tbar 20 kg\r\n}");
    assert_int_equal(findings_total(other.findings), 0);
    assert_string_equal(tree_dump(plain.arena, plain.tree), tree_dump(other.arena, other.tree));
    arena_free(plain.arena);
    arena_free(other.arena);
}

static void texts_have_their_escapes_undone(void **state)
{
    (void)state;
    struct reading reading = read_text("gym a { title \"a \\\"b\\\" \\\\ c\\nd # {\" }\n");
    assert_int_equal(findings_total(reading.findings), 0);
    const struct node *gym = node_child(reading.tree->root, NODE_GYM);
    assert_string_equal(node_child(gym, NODE_TITLE)->child->text, "a \"b\" \\ c\nd # {");
    arena_free(reading.arena);
}

/* ---- many mistakes, long files, deep files ---- */

static void twenty_mistakes_give_twenty_findings(void **state)
{
    (void)state;
    static const char *const lines[] = { "units\n", "lift bar\n", "gym { }\n", "lift row kind\n", "blok b { }\n" };
    char text[600] = "";
    for (int i = 0; i < 20; i++)
        strcat(text, lines[i % 5]);
    struct reading reading = read_text(text);
    assert_int_equal(findings_total(reading.findings), 20);
    arena_free(reading.arena);
}

static void a_broken_line_loses_no_other(void **state)
{
    (void)state;
    struct reading reading = read_text("block b {\n  weeks x x\n  day A junk {\n    squat 3 x 5\n    bench 3 x\n    row 3 x 5\n  }\n"
                                       "  day B { curl 3 x 5 }\n}\nlift row\n");
    assert_int_equal(findings_total(reading.findings), 3);
    const struct node *block = node_child(reading.tree->root, NODE_BLOCK);
    const struct node *broken = node_next(node_child(block, NODE_ERROR), NODE_ERROR);
    assert_non_null(broken); /* the header is broken, its body is kept */
    assert_non_null(node_next(node_child(broken, NODE_ENTRY), NODE_ENTRY));
    assert_non_null(node_child(block, NODE_DAY));
    assert_non_null(node_child(reading.tree->root, NODE_LIFT));
    arena_free(reading.arena);
}

static void a_long_file_is_read(void **state)
{
    (void)state;
    enum { LINES = 100000 };
    char *text = malloc(LINES * 8 + 1), *to = text;
    assert_non_null(text);
    for (int i = 0; i < LINES; i++)
        to = stpcpy(to, "lift ab\n");
    struct reading reading = read_bytes("long.block", text, (size_t)(to - text));
    assert_int_equal(findings_total(reading.findings), 0);
    int count = 0;
    for (const struct node *lift = reading.tree->root->child; lift; lift = lift->next)
        count++;
    assert_int_equal(count, LINES);
    free(text);
    arena_free(reading.arena);
}

static void thirty_two_braces_are_not_too_deep(void **state)
{
    (void)state;
    for (int depth = 31; depth <= 33; depth++) {
        char text[1200] = "block b {";
        for (int i = 1; i < depth; i++)
            strcat(text, " weeks 1-2 {");
        for (int i = 0; i < depth; i++)
            strcat(text, " }");
        struct reading reading = read_text(text);
        assert_int_equal(findings_total(reading.findings), depth > PARSE_DEPTH_MOST ? 1 : 0);
        assert_int_equal(findings_has_kind(reading.findings, KIND_LIMIT), depth > PARSE_DEPTH_MOST);
        arena_free(reading.arena);
    }
}

/* ---- soup: any sequence of words is read to its end, and no place is complained of twice ---- */

static uint32_t next_random(uint32_t *seed)
{
    *seed = *seed * 1664525u + 1013904223u;
    return *seed >> 8;
}

static const char *lexeme(uint32_t *seed)
{
    static const char *const others[] = { "squat", "$top",  "\"text\"", "5",    "2.5", "2027-01-04", "{",   "}",  "(",  ")",  ",",
                                          "|",     "-",     "+",        "=",    "%",   "kg",         "s",   "\n", "\n", ";",  "{",
                                          "}",     "\"ope", "70,5",     "\xe9", "#r",  "4x5",        "kgs", "@",  "'",  "\n", "\n" };
    uint32_t pick = next_random(seed) % 3;
    if (pick)
        return others[next_random(seed) % (sizeof others / sizeof *others)];
    return word_at((int)(next_random(seed) % (uint32_t)word_count()))->text;
}

static void soup_is_read_to_its_end(void **state)
{
    (void)state;
    uint32_t seed = 20270104;
    for (int round = 0; round < 4000; round++) {
        char text[1200] = "";
        int words = 1 + (int)(next_random(&seed) % 60);
        for (int i = 0; i < words; i++) {
            strcat(text, lexeme(&seed));
            if (next_random(&seed) % 8)
                strcat(text, " ");
        }
        struct reading reading = read_text(text);
        const struct finding *const *sorted = findings_sorted(reading.findings);
        for (int i = 1; i < findings_total(reading.findings); i++)
            if (sorted[i]->kind == KIND_SYNTAX && sorted[i - 1]->kind == KIND_SYNTAX
                && sorted[i]->at.start == sorted[i - 1]->at.start)
                fail_msg("two findings in one place (%s / %s) in:\n%s", sorted[i - 1]->message, sorted[i]->message, text);
        arena_free(reading.arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_case_gives_its_findings),
        cmocka_unit_test(some_case_builds_each_kind),
        cmocka_unit_test(any_word_names_a_person),
        cmocka_unit_test(no_word_names_a_lift),
        cmocka_unit_test(names_are_composed_and_keep_their_case),
        cmocka_unit_test(glued_and_spaced_sets_give_one_tree),
        cmocka_unit_test(line_ends_of_other_machines_and_a_mark_change_nothing),
        cmocka_unit_test(texts_have_their_escapes_undone),
        cmocka_unit_test(twenty_mistakes_give_twenty_findings),
        cmocka_unit_test(a_broken_line_loses_no_other),
        cmocka_unit_test(a_long_file_is_read),
        cmocka_unit_test(thirty_two_braces_are_not_too_deep),
        cmocka_unit_test(soup_is_read_to_its_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
