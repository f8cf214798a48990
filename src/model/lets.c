/* $names followed to what they stand for. */
#include "model/club.h"

#include "base/near.h"

enum { LET_DEPTH_MOST = 32 };

struct let_index {
    struct numbers names;
    int *last;   /* by name: the last let of it */
    int *before; /* by let: the one of its name before it; -1: none */
};

const struct let_index *lets_index(struct arena *arena, const struct node *const *lets, int count)
{
    enum { FEW = 16 };
    if (count <= FEW)
        return NULL;
    struct let_index *index = NEW(arena, struct let_index);
    *index = (struct let_index){ .names.arena = arena, .last = NEW_MANY(arena, int, count), .before = NEW_MANY(arena, int, count) };
    for (int i = 0; i < count; i++) {
        int known = index->names.count, name = numbers_give(&index->names, lets[i]->child->text, 0);
        index->before[i] = name < known ? index->last[name] : -1;
        index->last[name] = i;
    }
    return index;
}

/* The last let of the name in a scope; -1: none. */
static int let_last(const struct scope *scope, const char *name)
{
    if (scope->index) {
        int at = numbers_known(&scope->index->names, name, 0);
        return at < 0 ? -1 : scope->index->last[at];
    }
    int i = scope->let_count - 1;
    while (i >= 0 && scope->lets[i]->child->text != name)
        i--;
    return i;
}

/* The one of the same name before it; -1: none. */
static int let_before(const struct scope *scope, int let)
{
    if (scope->index)
        return scope->index->before[let];
    int i = let - 1;
    while (i >= 0 && scope->lets[i]->child->text != scope->lets[let]->child->text)
        i--;
    return i;
}

static const struct node *let_in(const struct scope *scope, const char *name)
{
    int let = let_last(scope, name);
    return let < 0 ? NULL : scope->lets[let]->child->next;
}

/* All of the name around here count as used: the ones further out are what the nearest stands in for. */
static void lets_use(const struct place *place, const char *name)
{
    for (int own = 0; own < 2; own++)
        for (const struct scope *scope = own ? place->own : place->scope; scope; scope = scope->up)
            for (int i = let_last(scope, name); i >= 0; i = let_before(scope, i))
                let_use(place->club, scope->lets[i]);
}

static int scope_count(const struct scope *scope)
{
    int count = 0;
    for (; scope; scope = scope->up)
        count += scope->let_count;
    return count;
}

static const char *let_nearest(const struct place *place, const char *name)
{
    VEC(const char *) names = { 0 };
    if (!names_may_compare(place->club, scope_count(place->scope)))
        return NULL;
    for (const struct scope *scope = place->scope; scope; scope = scope->up)
        for (int i = 0; i < scope->let_count; i++)
            vec_add(place->club->arena, &names, scope->lets[i]->child->text);
    return word_nearest(name, names.at, names.count);
}

static struct place place_of_let(const struct place *place, const struct scope *scope)
{
    struct place there = *place;
    there.scope = scope;
    if (scope->frame)
        there.frame = scope->frame;
    there.depth = place->depth + 1;
    return there;
}

static void let_unknown(const struct place *place, const struct node *var)
{
    if (place->lenient)
        return;
    const char *near = let_nearest(place, var->text);
    struct finding *finding = place_finding(place, KIND_UNKNOWN_LET, var->at, "$%s is not set anywhere around here", var->text);
    if (near)
        diag_help(place->club->findings, finding, "did you mean $%s?", near);
    else
        diag_help(place->club->findings, finding, "set it with `let $%s = …` in the block, the day or the entry", var->text);
}

const struct node *let_find(const struct place *place, const struct node *var, struct place *found)
{
    if (place->depth >= LET_DEPTH_MOST) {
        struct finding *finding = place_finding(place, KIND_CYCLE, var->at, "$%s stands for itself in the end", var->text);
        diag_help(place->club->findings, finding, "give one name of the circle a number of its own");
        return NULL;
    }
    const struct node *value = place->own ? let_in(place->own, var->text) : NULL;
    lets_use(place, var->text);
    if (value) {
        /* Her value counts the weeks of the block, where it steps in for the block's own. */
        const struct scope *outer = place->scope;
        while (outer && outer->up)
            outer = outer->up;
        *found = place_of_let(place, outer ? outer : place->own);
        found->own = NULL;
        return value;
    }
    for (const struct scope *scope = place->scope; scope; scope = scope->up)
        if ((value = let_in(scope, var->text))) {
            *found = place_of_let(place, scope);
            return value;
        }
    let_unknown(place, var);
    return NULL;
}

/* A VAR, alone in a LIST, SETS or AMOUNT, or in one of these within another. */
const struct node *var_inside(const struct node *node, const char **unit)
{
    *unit = NULL;
    while (node->kind == NODE_LIST || node->kind == NODE_SETS || node->kind == NODE_AMOUNT) {
        if (node->kind == NODE_AMOUNT && node->text)
            *unit = node->text;
        node = node->child;
        if (!node || node->next)
            return NULL;
    }
    return node->kind == NODE_VAR ? node : NULL;
}

const struct node *node_behind(const struct place *place, const struct node *node, struct place *found)
{
    const char *unit;
    const struct node *var;
    *found = *place;
    while (node && (var = var_inside(node, &unit)) && !unit) {
        struct place here = *found;
        node = let_find(&here, var, found);
    }
    return node;
}

/* A second `let` of one name in one body would win in silence. */
void lets_check(const struct place *place, const struct node *body)
{
    struct numbers names = { .arena = place->club->arena };
    VEC(const struct node *) first = { 0 };
    for (const struct node *let = node_child(body, NODE_LET); let; let = node_next(let, NODE_LET)) {
        int name = numbers_give(&names, let->child->text, 0);
        if (name == first.count) {
            vec_add(place->club->arena, &first, let);
            continue;
        }
        struct finding *finding = place_finding(place, KIND_REPEATED, let->child->at, "$%s is set twice here", let->child->text);
        diag_related(place->club->findings, finding, first.at[name]->child->at, "the first time is here");
        diag_help(place->club->findings, finding, "keep the one you mean");
    }
}
