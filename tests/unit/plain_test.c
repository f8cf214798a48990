#include "syntax/plain.h"

#include "base/file.h"
#include "pool.h"
#include "same_tree.h"
#include "syntax/reader.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static struct source *source_of(struct arena *arena, const char *text, size_t length)
{
    struct sources *sources = sources_new(arena);
    sources_add(sources, "before.block", "units kg\n", 9); /* so that a place is not the byte in the file */
    return sources_add(sources, "x.block", text, length);
}

static bool agrees(struct arena *arena, const char *text, size_t length)
{
    return same_tree(arena, interner_new(arena), source_of(arena, text, length), findings_new(arena, NULL));
}

static bool has_plain(const struct node *node)
{
    bool has = node->flags & FLAG_PLAIN;
    for (const struct node *child = node->child; child; child = child->next)
        has |= has_plain(child);
    return has;
}

/* Whether some line was read by hand, and so is not the grammar's in both trees. */
static bool is_by_hand(struct arena *arena, const char *text)
{
    return has_plain(parse_text(arena, interner_new(arena), source_of(arena, text, strlen(text)), findings_new(arena, NULL))->root);
}

/* ---- files ---- */

static void files_give_one_tree_either_way(void **state)
{
    static const char *const folders[] = { "tests/cases/syntax", "tests/cases/findings", "tests/corpus", "examples", "stdlib-templates" };
    const char *top = getenv("SETWRIGHT_SRC"), *why;
    for (size_t i = 0; i < sizeof folders / sizeof *folders; i++) {
        int count;
        const char *folder = arena_format(*state, "%s/%s", top ? top : ".", folders[i]);
        const char *const *names = file_list(*state, folder, ".block", &count, &why);
        assert_non_null(names);
        assert_true(count > 1);
        for (int j = 0; j < count; j++) {
            size_t length;
            const char *bytes = file_read(*state, arena_format(*state, "%s/%s", folder, names[j]), 1 << 20, false, &length, &why);
            assert_non_null(bytes);
            if (!agrees(*state, bytes, length))
                fail_msg("%s/%s", folder, names[j]);
        }
    }
}

/* ---- lines ---- */

/* The notes that its stretches leave out are those that the tree says. */
static void stretches_are_of_the_tree(const struct plain *plain, uint32_t from, const struct stretch *last)
{
    struct plain_room room;
    int noted = 0, notes = 0;
    const struct node *entry = plain_read(plain, from, &room);
    for (; last; last = last->before)
        noted += last->noted;
    for (const struct node *group = node_child(entry, NODE_GROUP); group; group = node_next(group, NODE_GROUP)) {
        const struct node *note = group_last_note(group);
        notes += note != NULL;
        assert_true(!note || note->at.end == group->at.end);
    }
    assert_int_equal(noted, notes);
}

static bool is_plain(struct arena *arena, const char *line)
{
    const char *text = arena_format(arena, "day A {\n%s", line);
    struct plain plain = plain_of(source_of(arena, text, strlen(text)), interner_new(arena));
    const struct stretch *last, *again;
    uint32_t from = (uint32_t)(strchr(text, '\n') - text) + 1, end = plain_find(arena, &plain, from, &last);
    if (!end)
        return false;
    stretches_are_of_the_tree(&plain, from, last);
    assert_int_equal(plain_find(arena, &plain, from, &again), end);
    assert_ptr_equal(again, last);
    return true;
}

static const char *in_day(struct arena *arena, const char *line)
{
    return arena_format(arena, "template base { weeks 4; day A {\n%s\n} }\n", line);
}

static void lines_agree(struct arena *arena, const char *const *lines, bool plain)
{
    for (; *lines; lines++) {
        const char *text = in_day(arena, *lines);
        if (is_plain(arena, *lines) != plain)
            fail_msg("%s is %splain", *lines, plain ? "not " : "");
        if (!agrees(arena, text, strlen(text)))
            fail_msg("two trees: %s", *lines);
        if (plain && !is_by_hand(arena, text))
            fail_msg("nobody tried: %s", *lines);
    }
}

static void most_lines_are_plain(void **state)
{
    static const char *const lines[] = {
        "squat 3 x 5 at rpe 7", "squat 3x5", "squat 3 x5", "row or pulldown or pull-up 3-4 x 8-12 at rir 2", "squat 1 x amrap at 75%",
        "squat top 1 x 4 at rpe 7.0 rest 4 min note \"Brace\"\n  # why\n", "squat top 1 x 1 at 92.5%\n\n  then back-off 3 x 6 drop 12.5%",
        "squat warm-up 2 x 5 at 40% then 3 x 5 at same then 1 x 3 at 100 kg", "plank 3 x 30 s", "plank 3 x 20-30 s rest 60-90 s",
        "carry 3 x 20 m at 60kg", "squat 3 x 5 at 220.5 lb cap rpe 8.5 every 90 s", "squat 3 x 5 optional tempo \"31X0\" pause 2 s each side",
        "squat 3 x 5 at 80 % progression steady", "squat 3x8-12 cap rir 1", "squat 3 x 5 cap 95%", "squat 3 x 5 at rpe 8 cap 100-105 kg", "squat 3 - 4 x 5 # a remark", "curl 3 x 10;", "curl 3 x 10}; day B {",
        "curl 3 x 10\f", "curl 3 x 5 kg", "curl 3 x 10 rest 3", "curl\t3\tx\t10\r\n", "curl 3 x 5 at rpe 7 cap rpe 8 note \"a\" note \"b\"", NULL,
    };
    lines_agree(*state, lines, true);
}

static void what_is_not_known_is_left_to_the_grammar(void **state)
{
    static const char *const lines[] = {
        "squat", "squat 3", "squat x 5", "squat 3 x", "squat 3 x 5 at", "squat 3 x 5 at 80", "squat 3 x 5 drop 10", "squat 3 x 5 at rpe",
        "squat 3 x 5 cap 95", "squat 3 x 5 each", "squat 3 x 5 then", "squat 3 x 5 then\n3 x 4", "squat 3 x 5 # why\n then 3 x 4", "squat or 3 x 5",
        "squat (3 | 4) x 5", "squat 3 x (8, 6, 4)", "squat 3 x 5 at rpe 7 | 8", "squat 3 x 5 at 70,75%", "squat 3 x 5 at 70 , 75%",
        "squat 3 x 5 at rpe from 7 to 8", "squat 3 x 5 at 75% plus 2.5% each week", "squat 3 x 5 at 80% of deadlift", "squat 3 x 3+3+3",
        "squat $sets x 5", "$main 3 x 5", "squat 3 x 5 at $load", "squat 3 x 5 progression $how", "squat 3 x 5 progression week", "squat 3 x $reps",
        "squat 3 x 5 in weeks 1-3", "squat 3 x 5 allow top-reps", "squat 2-4 x 5 until rpe 9", "squat total 30 at 60 kg", "squat heavy-single",
        "squat { 3 x 5 }", "squat 3 x 5\n{", "squat 3 x 5 {", "squat 3 x 5 (", "squat 3 x 5 )", "squat 3 x 5 \"text\"", "squat 3 x 5 note text",
        "squat 3 x 5 note \"open", "squat 3 x 5 note \"a \\\" b\"", "squat 3 x 5 note \"caf\xc3\xa9\"", "squat 3 x 5 at bodyweight plus 5 kg",
        "squat 3 x 5 at least 4", "squat 3 xamrap", "squat 3 x 5 at rpe 7 reps", "squat 3 x 5.", "squat 3 x 5.5.5", "squat 3 x 5/6", "squat .5 x 5",
        "squat 1234 x 5", "squat 3 x 5 at 80.1234 kg", "squat 3 X 5", "squat 3 x 5 at 60 kgs", "squat 3 x 5 at 60 step", "squat 8-12-2027 x 3",
        "squat 2027-01-04 x 3", "squat 3 x 5 at 60kg-70kg", "squat 3 x- 5", "squat 3 xx 5", "squat 3 x 5 rest 3 Min", "squat 3 x 5 At rpe 7",
        "squat- 3 x 5", "_squat 3 x 5", "week 3 x 5", "kniebeug\xc3\xa9 3 x 5", "squat\xc2\xa0" "3 x 5", "squat 3 \xc3\x97 5", "squat 3 x 5 @ 60 kg",
        "squat 3 x 5,", "squat 3 x 5 |", "squat 3 x 5 - 6 - 7", "squat 3 x -5", "squat 3 x 5 % %", "squat 3 x 5 tempo 31", NULL,
    };
    lines_agree(*state, lines, false);
}

/* ---- a line that was found before ---- */

static void a_known_line_is_plain_where_it_ends(void **state)
{
    static const struct {
        const char *line;
        uint32_t length;
    } rows[] = {
        { "squat 3 x 5\n", 11 }, { "squat 3 x 5\nrow 3 x 8\n", 11 }, { "squat 3 x 5\n then 3 x 4\n", 23 }, { "squat 3 x 5\n{", 0 },
        { "squat 3 x 5\n# why\n then 3 x 4", 0 }, { "squat 3 x 5\n# why\n", 11 }, { "squat 3 x 5", 11 }, { "squat 3 x", 0 }, { "squat 3 x 5\n", 11 },
    };
    enum { ROWS = sizeof rows / sizeof *rows };
    const char *text = "day A {\n";
    uint32_t from[ROWS];
    for (int i = 0; i < ROWS; i++) {
        from[i] = (uint32_t)strlen(text);
        text = arena_format(*state, "%s%s%s", text, rows[i].line, i + 1 < ROWS ? "; }\n" : "");
    }
    struct plain plain = plain_of(source_of(*state, text, strlen(text)), interner_new(*state));
    const struct stretch *last;
    for (int i = 0; i < ROWS; i++)
        assert_int_equal(plain_find(*state, &plain, from[i], &last), rows[i].length ? from[i] + rows[i].length : 0);
    assert_int_equal(plain_find(*state, &plain, from[0], &last), from[0] + 11);
    for (int i = 0; i < ROWS; i++)
        assert_true(agrees(*state, in_day(*state, arena_format(*state, "squat 3 x 5\n%s", rows[i].line)),
                           strlen(in_day(*state, arena_format(*state, "squat 3 x 5\n%s", rows[i].line)))));
}

/* Lines of the same last stretch are alike but for notes that end a group. */
static void lines_that_differ_in_such_a_note_are_known(void **state)
{
    static const struct {
        const char *line, *as; /* known as: a letter for each */
        uint32_t length;
    } rows[] = {
        { "squat 3 x 5 note \"a\"\n", "a", 20 },
        { "squat 3 x 5 note \"another, which is longer\"\n", "a", 43 },
        { "squat 3 x 5 note \"\" ; ", "a", 19 },
        { "squat 3 x 5 note \"b\" rest 3 min\n", "b", 31 },
        { "squat 3 x 5 note \"c\" rest 3 min\n", "c", 31 },
        { "squat 3 x 5 note \"c\" note \"d\"\n", "d", 29 },
        { "squat 3 x 5 note \"a\"\n then 2 x 4 note \"d\"\n", "e", 41 },
        { "squat 3 x 5 note \"long\"\n then 2 x 4 note \"longer\"\n", "e", 49 },
        { "squat 3 x 5 note \"long\"\n  then 2 x 4 note \"longer\"\n", "f", 50 },
        { "squat 3 x 5 note \"long\" # why\n then 2 x 4 note \"longer\"\n", "", 0 },
        { "squat 3 x 5 note \"a\"\n{", "", 0 },
        { "squat 3 x 5 note \"a \\\" b\"\n", "", 0 },
        { "squat 3 x 5 note \"a\n", "", 0 },
        { "squat 3 x 5 note \"a\"x\n", "", 0 },
        { "squat 3 x 5 note \"a\" then 2 x 4\n", "g", 31 },
        { "squat 3 x 5 tempo \"31X0\"\n", "h", 24 },
        { "squat 3 x 5 tempo \"20X0\"\n", "i", 24 },
    };
    enum { ROWS = sizeof rows / sizeof *rows };
    const char *text = "day A {\n";
    uint32_t from[ROWS];
    const struct stretch *known[256] = { NULL };
    for (int i = 0; i < ROWS; i++) {
        from[i] = (uint32_t)strlen(text);
        text = arena_format(*state, "%s%s}\n", text, rows[i].line);
    }
    struct plain plain = plain_of(source_of(*state, text, strlen(text)), interner_new(*state));
    for (int i = 0; i < ROWS; i++) {
        const struct stretch *last, **first = &known[(unsigned char)*rows[i].as];
        assert_int_equal(plain_find(*state, &plain, from[i], &last), rows[i].length ? from[i] + rows[i].length : 0);
        if (!rows[i].length)
            continue;
        stretches_are_of_the_tree(&plain, from[i], last);
        for (int j = 'a'; !*first && j <= 'z'; j++)
            assert_true(!known[j] || !known_alike(known[j], last));
        assert_true(!*first || known_alike(*first, last));
        *first = last;
    }
}

/* In a text a NUL is a mistake, which is said once. */
static void a_nul_ends_no_line(void **state)
{
    static const char inside[] = "template base { weeks 4; day A {\nsquat 3 x 5 \0 at rpe 7\n} }\n";
    static const char remark[] = "template base { weeks 4; day A {\nsquat 3 x 5 # a \0 b\n  then 3 x 4\n} }\n";
    assert_true(agrees(*state, inside, sizeof inside - 1));
    assert_true(agrees(*state, remark, sizeof remark - 1));
    assert_true(is_plain(*state, "squat 3 x 5"));
    assert_true(is_plain(*state, "squat 3 x 5 # the last word"));
}

static void a_line_longer_than_the_room_is_the_grammars(void **state)
{
    char text[8000] = "squat 1 x 1";
    for (int groups = 1; strlen(text) < sizeof text - 40; groups++) {
        assert_int_equal(is_plain(*state, text), 3 + 5 * groups <= PLAIN_NODES); /* ENTRY LIFTS NAME, GROUP COUNT NUMBER REPS NUMBER */
        if (groups == 40)
            break;
        strcat(text, " then 1 x 1");
    }
    assert_true(agrees(*state, in_day(*state, text), strlen(in_day(*state, text))));
    snprintf(text, sizeof text, "squat%0100d 3 x 5", 1);
    assert_false(is_plain(*state, text));
    assert_true(agrees(*state, in_day(*state, text), strlen(in_day(*state, text))));
}

/* Each lift looks at its own words, and not at all that stands behind them. */
static void a_line_of_megabytes_is_read_at_once(void **state)
{
    enum { LIFTS = 100000 };
    static const char head[] = "template base { weeks 4; day A { ", lift[] = "curl 3 x 5; ", tail[] = "} }";
    size_t length = sizeof head + sizeof tail - 2 + LIFTS * (sizeof lift - 1);
    char *text = arena_alloc(*state, length + 1), *to = text;
    to = stpcpy(to, head);
    for (int i = 0; i < LIFTS; i++)
        to = stpcpy(to, lift);
    strcpy(to, tail);
    clock_t begun = clock();
    assert_true(is_by_hand(*state, text));
    assert_true(clock() - begun < 5 * CLOCKS_PER_SEC);
}

/* ---- days ---- */

static bool is_plain_day(struct arena *arena, const char *text)
{
    struct source *source = source_of(arena, text, strlen(text));
    struct plain plain = plain_of(source, interner_new(arena));
    struct parse p = { .arena = arena, .names = plain.names, .source = source, .findings = findings_new(arena, NULL), .plain = &plain };
    places_index(&p);
    return plain_day(&p, 0) != NULL;
}

static void days_agree(struct arena *arena, const char *const *days, bool plain, bool fine)
{
    static const char *const around[] = { "template base { weeks 4\n%s\n}\n", "block winter { %s; }", "template base { weeks 4; weeks 1-2 { %s } }", "%s\n" };
    for (; *days; days++) {
        if (is_plain_day(arena, *days) != plain)
            fail_msg("%s is %splain", *days, plain ? "not " : "");
        for (size_t i = 0; i < sizeof around / sizeof *around; i++) {
            char text[2000];
            int length = snprintf(text, sizeof text, around[i], *days);
            if (!agrees(arena, text, (size_t)length))
                fail_msg("two trees: %s", text);
            if (fine && i < 3 && strstr(text, "squat") && !is_by_hand(arena, text))
                fail_msg("nobody tried: %s", text);
        }
    }
}

static void days_of_plain_lines_are_plain(void **state)
{
    static const char *const days[] = {
        "day A { }", "day A on mon { squat 3 x 5 }", "day 1 {\n squat 3 x 5\n row 3 x 8\n}", "day A on mon, thu {\n title \"x\"\n note \"y\"; squat 3 x 5;; row 2 x 8 }",
        "day long-name on sun {\r\n\r\n note \"y\"\r\n squat 3 x 5\r\n  then 2 x 4\r\n}", "day A{squat 3 x 5}", "day A { ;; }", "day 1.5 { title \"a\" }",
        "day A { squat 3 x 5 }; day B { row 3 x 8 }", "day A { squat 3 x 5 }\nday B { row 3 x 8 }", "day A { squat 3 x 5 } # why\n",
        "day A { squat 3 x 5 }\n\n  day B { row 3 x 8 }\n\tday C { }\nday D { squat $x x 5 }\nday E { squat 3 x 5 }", "day A { squat 3 x 5 }\n# why\nday B { row 3 x 8 }",
        "day A { squat 3 x 5 }\nnote \"x\"; day B { row 3 x 8 }", NULL,
    };
    static const char *const followed[] = { "day A { squat 3 x 5 } day B { }", "day A { squat 3 x 5 } }", "day A { squat 3 x 5 } {", "day A { squat 3 x 5 }\n{ }",
                                            "day A { squat 3 x 5 } row", "day A { squat 3 x 5 }\nweek 2 { }", "day A on xyz { bensh 3 x 5 }", NULL };
    days_agree(*state, days, true, true);
    days_agree(*state, followed, true, false); /* what stands behind them, and what names mean, is said elsewhere */
}

static void other_days_are_the_grammars(void **state)
{
    static const char *const days[] = {
        "day", "day A", "day A on", "day A on mon", "day A on { }", "day A on mon, { }", "day A on mon tue { }", "day A on mon\n{ squat 3 x 5 }", "day x { }", "day A, B { }",
        "day A { # why\n squat 3 x 5 }", "day A { squat 3 x 5 # why\n }", "day A { title \"x\" squat 3 x 5 }", "day A { title $t }", "day A { title x }", "day A { note }",
        "day A {", "day A { squat 3 x 5", "day A { squat 3 x 5 row 3 x 8 }", "day A { optional }", "day A { gym hall }", "day A { squat 3 x 5 at 80 }", "day A { { } }",
        "day A { superset { squat 3 x 5 } }", "day A { let $a = 5 }", "day A { allow top-reps }", "day A { squat { 3 x 5 } }", "day $a { }", "day 2027-01-04 { }",
        "day A- { }", "day A { 3 x 5 }", "day A { \"text\" }", "day A on mon and tue { }", "day A { title \"x\"", "day A { title \"caf\xc3\xa9\" }", NULL,
    };
    days_agree(*state, days, false, false);
}

static void a_day_as_deep_as_braces_go(void **state)
{
    for (int depth = PARSE_DEPTH_MOST - 3; depth <= PARSE_DEPTH_MOST + 1; depth++) {
        char text[2000] = "template base { weeks 4\n";
        for (int i = 1; i < depth; i++)
            strcat(text, "weeks 1-2 { ");
        strcat(text, "day A { squat 3 x 5 }");
        for (int i = 0; i < depth; i++)
            strcat(text, " }");
        assert_true(agrees(*state, text, strlen(text)));
    }
}

/* ---- lines by chance ---- */

static uint32_t next_random(uint32_t *seed)
{
    *seed = *seed * 1664525u + 1013904223u;
    return *seed >> 8;
}

static const char *piece(uint32_t *seed)
{
    static const char *const pieces[] = {
        "squat", "row", "3", "5", "12.5", "80", "x", "x", "-", "%", "kg", "lb", "s", "min", "m", "at", "at", "rpe", "rir", "same", "rest", "note",
        "tempo", "pause", "every", "each", "side", "optional", "drop", "cap", "top", "back-off", "warm-up", "then", "\n", "or", "amrap", "\"text\"",
        "progression", "steady", "#r\n", ";", ",", "|", ".", "step", "day", "to", "(", "$v", "x5", "3x5", "60kg",
    };
    return pieces[next_random(seed) % (sizeof pieces / sizeof *pieces)];
}

/* A line that is right, of which now and then a piece is changed, put in or left out. */
static void line_by_chance(char *text, uint32_t *seed)
{
    static const char *const starts[] = { "squat 3 x 5", "squat top 1 x 4", "row or press 3-4 x 8-12", "plank 3 x 30 s", "squat 1 x amrap" };
    static const char *const clauses[] = {
        "at rpe 7", "at 75%", "at 60 kg", "at same", "drop 12.5%", "rest 3 min", "rest 60-90 s", "note \"slow\"", "tempo \"31X0\"", "each side",
        "optional", "cap rpe 8", "every 90 s", "pause 2 s", "progression steady", "then 3 x 4", "\n then back-off 3 x 6", "# why\n", "at 80 % of row",
    };
    char line[400];
    strcpy(line, starts[next_random(seed) % (sizeof starts / sizeof *starts)]);
    for (int i = (int)(next_random(seed) % 5); i > 0; i--) {
        strcat(line, " ");
        strcat(line, clauses[next_random(seed) % (sizeof clauses / sizeof *clauses)]);
    }
    for (char *word = strtok(line, " "); word; word = strtok(NULL, " ")) {
        uint32_t what = next_random(seed) % 40;
        if (what != 0)
            strcat(text, what == 1 ? piece(seed) : word);
        if (what == 2)
            strcat(strcat(text, " "), piece(seed));
        if (next_random(seed) % 12)
            strcat(text, " ");
    }
    strcat(text, "\n");
}

static void lines_by_chance_give_one_tree_either_way(void **state)
{
    (void)state;
    static jmp_buf out_of_memory;
    uint32_t seed = 20270104;
    int plain = 0, by_hand = 0, rounds = 6000;
    for (int round = 0; round < rounds; round++) {
        struct arena *arena = arena_new(&out_of_memory);
        char line[800] = "", text[2000];
        line_by_chance(line, &seed);
        static const char *const headers[] = { "day A", "day A on mon", "day 1 on mon, thu", "day A on mon,\n thu", "day Z { title \"z\" }\nday B" };
        snprintf(text, sizeof text, "template base { weeks 4; %s { press 3 x 5\n%s%s%s} }\n", headers[next_random(&seed) % 5], line, next_random(&seed) % 4 ? "" : "curl 2 x 8\n",
                 next_random(&seed) % 2 ? line : ""); /* the second time it is known */
        plain += is_plain(arena, line);
        if (!agrees(arena, text, strlen(text)))
            fail_msg("two trees: %s", text);
        by_hand += is_by_hand(arena, text);
        arena_free(arena);
    }
    assert_in_range(by_hand, rounds / 4, rounds * 3 / 4);
    assert_in_range(plain, rounds / 4, rounds * 3 / 4); /* both ways are met often */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(files_give_one_tree_either_way, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(most_lines_are_plain, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(what_is_not_known_is_left_to_the_grammar, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_known_line_is_plain_where_it_ends, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(lines_that_differ_in_such_a_note_are_known, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_nul_ends_no_line, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_line_longer_than_the_room_is_the_grammars, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_line_of_megabytes_is_read_at_once, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(days_of_plain_lines_are_plain, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(other_days_are_the_grammars, pool_setup, pool_teardown),
        cmocka_unit_test_setup_teardown(a_day_as_deep_as_braces_go, pool_setup, pool_teardown),
        cmocka_unit_test(lines_by_chance_give_one_tree_either_way),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
