/* Whether a text gives one tree, its plain lines read by hand or by the grammar: kinds, flags, places, names, numbers. */
#ifndef TESTS_UNIT_SAME_TREE_H
#define TESTS_UNIT_SAME_TREE_H

#include "syntax/parse.h"

#include <string.h>

static inline bool same_node(const struct tree *by_hand, const struct node *a, const struct node *b)
{
    struct plain_room room;
    a = entry_open(by_hand, a, &room);
    if (a->kind != b->kind || a->flags != b->flags || a->at.start != b->at.start || a->at.end != b->at.end)
        return false;
    if (a->kind == NODE_NUMBER ? a->number.e10 != b->number.e10 : a->kind == NODE_DATE ? a->date.day != b->date.day : false)
        return false;
    if (a->kind != NODE_NUMBER && a->kind != NODE_DATE && a->text != b->text && (!a->text || !b->text || strcmp(a->text, b->text)))
        return false;
    const struct node *mine = a->child, *other = b->child;
    for (; mine && other; mine = mine->next, other = other->next)
        if (!same_node(by_hand, mine, other))
            return false;
    return !mine && !other;
}

/* `findings` are none yet; what is said of the text is added to them once. */
static inline bool same_tree(struct arena *arena, struct interner *names, struct source *source, struct findings *findings)
{
    struct findings *others = findings_new(arena, NULL);
    const struct tree *by_hand = parse_text(arena, names, source, findings);
    const struct tree *by_grammar = parse_text_by_grammar(arena, names, source, others);
    return findings_total(findings) == findings_total(others) && by_hand->comment_count == by_grammar->comment_count &&
           same_node(by_hand, by_hand->root, by_grammar->root);
}

#endif
