/* The shipped library, listed and printed. What a template is for and what its $names mean is told by the comment that
 * opens its file: a title, an empty line, `For …`, and a line `$name  meaning` for each. */
#include "cmd/command.h"

#include "base/diag.h"
#include "base/near.h"
#include "syntax/parse.h"

#include <string.h>

enum { NAMES_MOST = 256, COLUMNS = 80 };

struct listing {
    struct arena *arena;
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
};

/* ---- the comment that opens a file ---- */

static const char *source_text(struct arena *arena, const struct tree *tree, struct span at)
{
    return arena_format(arena, "%.*s", (int)(at.end - at.start), tree->source->text + (at.start - tree->source->base));
}

/* Line i without its mark, NULL after the last. */
static const char *opening_line(struct arena *arena, const struct tree *tree, int i)
{
    const struct node *first = tree->root->child;
    if (i >= (int)tree->comment_count || (first && tree->comments[i].at.start > first->at.start))
        return NULL;
    const char *text = source_text(arena, tree, tree->comments[i].at);
    return text + strspn(text, "# ");
}

/* The first sentence from line i on, without its full stop. */
static const char *opening_sentence(struct arena *arena, const struct tree *tree, int i)
{
    const char *sentence = "", *line;
    for (; (line = opening_line(arena, tree, i)) && *line; i++) {
        const char *stop = strstr(line, ". ");
        size_t length = stop ? (size_t)(stop - line) : strlen(line);
        bool ends = stop || (length && line[length - 1] == '.');
        if (ends && !stop)
            length--;
        sentence = arena_format(arena, "%s%s%.*s", sentence, *sentence ? " " : "", (int)length, line);
        if (ends)
            break;
    }
    return sentence;
}

/* Where the paragraph begins that says for whom; the first line when none does. */
static int for_whom(struct arena *arena, const struct tree *tree)
{
    const char *line;
    for (int i = 0; (line = opening_line(arena, tree, i)); i++)
        if (!strncmp(line, "For ", 4))
            return i;
    return 0;
}

/* Whether `$single, $drop` names this one; a name ends at the comma or the blank. */
static bool names_it(const char *names, size_t length, const char *name)
{
    size_t own = strlen(name);
    for (size_t i = 0; i + own < length; i++)
        if (names[i] == '$' && !strncmp(names + i + 1, name, own) && (i + own + 1 == length || names[i + own + 1] == ','))
            return true;
    return false;
}

/* What a line `$name, $other  meaning` says of a name; empty when none does. */
static const char *meaning(struct arena *arena, const struct tree *tree, const char *name)
{
    const char *line;
    for (int i = 0; (line = opening_line(arena, tree, i)); i++) {
        const char *gap = strstr(line, "  ");
        if (*line == '$' && gap && names_it(line, (size_t)(gap - line), name))
            return gap + strspn(gap, " ");
    }
    return "";
}

/* ---- the list ---- */

static void print_wrapped(const char *text, int indent)
{
    int column = 0;
    while (*text) {
        int length = (int)strcspn(text, " ");
        if (column && column + 1 + length > COLUMNS)
            putchar('\n'), column = 0;
        column += printf("%*s%.*s", column ? 1 : indent, "", length, text);
        text += length + (text[length] == ' ');
    }
    putchar('\n');
}

static void template_head(struct arena *arena, const struct tree *tree, const struct node *node)
{
    const struct node *from = node_child(node, NODE_FROM), *goal = node_child(node, NODE_GOAL), *weeks = node_child(node, NODE_LENGTH);
    printf("  template %s", node->child->text);
    if (from)
        printf(", from %s", from->child->text);
    if (goal)
        printf(", goal %s", goal->child->text);
    if (weeks)
        printf(", %s weeks", source_text(arena, tree, weeks->child->at));
    printf("\n");
}

static void template_list(struct arena *arena, const struct tree *tree, const struct node *node)
{
    template_head(arena, tree, node);
    for (const struct node *let = node_child(node, NODE_LET); let; let = node_next(let, NODE_LET)) {
        const char *value = source_text(arena, tree, let->child->next->at), *means = meaning(arena, tree, let->child->text);
        printf("    $%-11s %s%s", let->child->text, value, *means ? "" : "\n");
        if (*means && strlen(value) < 24)
            printf("%*s%s\n", (int)(26 - strlen(value)), "", means);
        else if (*means)
            printf("\n%43s%s\n", "", means);
    }
    printf("\n");
}

/* Templates are whole blocks; the other files are parts to make one's own from. */
static void list_files(struct listing *l, bool templates)
{
    const char *name, *text;
    for (int i = 0; (name = setwright_library_name(i, &text)); i++) {
        struct source *source = sources_add(l->sources, name, text, strlen(text));
        struct tree *tree = parse_text(l->arena, l->interner, source, l->findings);
        const struct node *node = node_child(tree->root, NODE_TEMPLATE);
        if (!node == templates)
            continue;
        if (!node)
            printf("%-22s %s\n", name, opening_sentence(l->arena, tree, 0));
        else
            printf("%s\n", name), print_wrapped(opening_sentence(l->arena, tree, for_whom(l->arena, tree)), 2);
        for (; node; node = node_next(node, NODE_TEMPLATE))
            template_list(l->arena, tree, node);
    }
}

static void list_all(struct arena *arena)
{
    struct listing l = { .arena = arena, .interner = interner_new(arena), .sources = sources_new(arena) };
    l.findings = findings_new(arena, l.sources);
    printf("Templates: whole blocks. Take one in with `use \"std/strength.block\"` and build on it\n"
           "with `block spring from strength { … }`; `let $name = …` in there sets one of its names.\n"
           "`setwright templates strength` prints it, days and all.\n\n");
    list_files(&l, true);
    printf("Parts: what blocks are made of.\n\n");
    list_files(&l, false);
}

/* ---- one file ---- */

/* "strength", "strength.block" and "std/strength.block" are the same. */
static bool is_named(const char *name, const char *asked)
{
    const char *base = name + strlen("std/");
    size_t stem = strlen(base) - strlen(".block");
    return !strcmp(name, asked) || !strcmp(base, asked) || (strlen(asked) == stem && !strncmp(base, asked, stem));
}

static int print_one(const char *asked)
{
    const char *name, *text, *names[NAMES_MOST];
    char stems[NAMES_MOST][64];
    int count = 0;
    for (int i = 0; (name = setwright_library_name(i, &text)); i++) {
        if (is_named(name, asked)) {
            fputs(text, stdout);
            return 0;
        }
        if (count < NAMES_MOST) {
            snprintf(stems[count], sizeof stems[count], "%.*s", (int)(strlen(name) - strlen("std/.block")), name + strlen("std/"));
            names[count] = stems[count], count++;
        }
    }
    const char *near = word_nearest(asked, names, count);
    diag_say(stderr, near ? "the library has no %s; did you mean %s?" : "the library has no %s; `setwright templates` lists it%s", asked, near ? near : "");
    return EXIT_USAGE;
}

int cmd_templates(struct request *request)
{
    if (!request->word_count)
        list_all(request->arena);
    int status = 0;
    for (int i = 0; i < request->word_count && !status; i++)
        status = print_one(request->words[i]);
    return status;
}
