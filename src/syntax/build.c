#include "syntax/reader.h"

#include <string.h>

enum { NODES_AT_ONCE = 256 };

struct list list_of(struct node *node)
{
    struct list list = { .first = node, .last = node };
    while (list.last && list.last->next)
        list.last = list.last->next;
    return list;
}

struct list list_join(struct list a, struct list b)
{
    if (!a.first)
        return b;
    if (!b.first)
        return a;
    a.last->next = b.first;
    a.last = b.last;
    return a;
}

struct list list_add(struct list list, struct node *node)
{
    return list_join(list, list_of(node));
}

static struct node *last_child(const struct node *node)
{
    struct node *last = node->child;
    while (last && last->next)
        last = last->next;
    return last;
}

struct node *node_add(struct node *node, struct node *part)
{
    struct node *last = last_child(node);
    if (last)
        last->next = part;
    else
        node->child = part;
    return node;
}

/* Nodes are taken from the arena many at a time: they are most of what a text becomes. */
static struct node *node_new(struct parse *p)
{
    if (!p->spare_count) {
        p->spare = NEW_MANY(p->arena, struct node, NODES_AT_ONCE);
        p->spare_count = NODES_AT_ONCE;
    }
    p->spare_count--;
    return p->spare++;
}

struct node *node_of(struct parse *p, enum node_kind kind, struct span at, struct node *const parts[], size_t count)
{
    struct node *node = node_new(p), **end = &node->child;
    node->kind = (uint16_t)kind;
    node->at = at;
    for (size_t i = 0; i < count; i++) {
        while (*end)
            end = &(*end)->next;
        *end = parts[i];
    }
    return node;
}

struct node *node_before(struct parse *p, struct node *node, struct span at, struct node *first, struct node *second)
{
    struct node *parts[] = { first, second, node->child };
    node->child = node_of(p, NODE_ERROR, at, parts, 3)->child;
    node->at = at;
    return node;
}

struct node *node_body(struct parse *p, struct node *node, struct list body)
{
    places_check(p, node, body.first);
    if (body.braces)
        node->flags |= FLAG_BODY;
    return node_add(node, body.first);
}

struct node *node_text(struct node *node, const char *text)
{
    node->text = text;
    return node;
}

struct node *node_flag(struct node *node, int flag)
{
    node->flags |= (uint16_t)flag;
    return node;
}

struct node *node_at(struct node *node, struct span at)
{
    node->at = at;
    return node;
}

struct node *node_word(struct parse *p, struct span at)
{
    const char *text = text_of(p, at);
    return node_text(node_of(p, NODE_NAME, at, NULL, 0), strcmp(text, "×") ? text : "x");
}

struct list plates_unit(struct list plates, const char *unit)
{
    struct node *amount = plates.last->child->child;
    if (!amount->text)
        amount->text = unit;
    return plates;
}

static bool is_series(const struct node *value)
{
    return value->kind == NODE_SETS || value->kind == NODE_LIST || value->kind == NODE_RAMP || value->kind == NODE_STEP ||
           value->kind == NODE_WAVE;
}

struct node *node_parens(struct parse *p, struct node *value, struct span at)
{
    if (!is_series(value) || value->kind == NODE_SETS)
        value = node_of(p, NODE_LIST, at, &value, 1);
    return node_flag(node_at(value, at), FLAG_PARENS);
}

/* The number a unit is missing from: the last one of the value, for a list may have its unit there alone. */
static const struct node *bare_amount(const struct node *value)
{
    const struct node *last = value;
    while (last && is_series(last)) {
        const struct node *child = last->child;
        while (child && child->next && last->kind != NODE_STEP && last->kind != NODE_WAVE)
            child = child->next;
        last = child;
    }
    return last && (last->kind == NODE_NUMBER || last->kind == NODE_BAND) ? last : NULL;
}

struct node *unit_wanted(struct parse *p, struct node *value, const char *word)
{
    const struct node *bare = bare_amount(value);
    if (!bare)
        return value;
    const char *number = text_of(p, bare->at);
    bool effort = bare->kind == NODE_NUMBER && bare->number.e10 <= 10 * DEC_ONE
                  && (!strcmp(word, "at") || !strcmp(word, "cap"));
    remark(p, KIND_UNIT, bare->at, arena_format(p->arena, "%s could be kilograms or per cent", number),
           effort ? arena_format(p->arena, "write %s%%, %s kg or rpe %s", number, number, number)
                  : arena_format(p->arena, "write %s%% or %s kg", number, number));
    return value;
}

struct node *change_value(struct parse *p, const char *what, struct node *value)
{
    return strcmp(what, "load") ? value : unit_wanted(p, value, what);
}
