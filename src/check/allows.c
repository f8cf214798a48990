#include "check/allows.h"

#include "base/vec.h"

#include <stdlib.h>
#include <string.h>

/* Scopes are bodies within bodies, so those around a place are the last that begins before it, the one around that, and so on. */
struct allowing {
    const struct allow_line *line;
    int around; /* the place in the rule's list of the scope around this one; -1: none */
};
struct allows {
    struct arena *arena;
    const struct model *model;
    VEC(struct rule_allows { struct allowing *at; int count; }) by_rule; /* in the order of `rules` */
    struct numbers blocks;                                               /* whose own lines are known */
    struct numbers own;                                                  /* a rule beside the number of a block */
    VEC(const struct allow_line *) own_lines;
};

/* By rule, then from outside to inside; of one scope in the order written. */
static int by_scope(const void *a, const void *b)
{
    const struct allow_line *one = *(const struct allow_line *const *)a, *other = *(const struct allow_line *const *)b;
    if (one->scope.start != other->scope.start)
        return one->scope.start < other->scope.start ? -1 : 1;
    if (one->scope.end != other->scope.end)
        return one->scope.end > other->scope.end ? -1 : 1;
    return one->id - other->id;
}

static bool is_around(const struct allow_line *line, struct span at)
{
    return at.start >= line->scope.start && at.end <= line->scope.end;
}

/* A second line for one scope permits nothing that the first does not. */
static void allowing_add(struct rule_allows *list, const struct allow_line *line)
{
    int around = list->count - 1;
    while (around >= 0 && !is_around(list->at[around].line, line->scope))
        around = list->at[around].around;
    const struct allow_line *outer = around >= 0 ? list->at[around].line : NULL;
    if (!outer || outer->scope.start != line->scope.start || outer->scope.end != line->scope.end)
        list->at[list->count++] = (struct allowing){ line, around };
}

struct allows *allows_new(struct arena *arena, const struct model *model)
{
    struct allows *allows = NEW(arena, struct allows);
    const struct allow_line **sorted = NEW_MANY(arena, const struct allow_line *, model->allow_count + 1);
    *allows = (struct allows){ .arena = arena, .model = model, .blocks.arena = arena, .own.arena = arena };
    for (int i = 0; i < rule_count; i++)
        vec_add(arena, &allows->by_rule, (struct rule_allows){ 0 });
    for (int i = 0; i < model->allow_count; i++) {
        const struct rule *rule = rule_find(model->allows[i].rule);
        sorted[i] = &model->allows[i];
        if (rule)
            allows->by_rule.at[rule - rules].count++;
    }
    for (int i = 0; i < rule_count; i++) {
        allows->by_rule.at[i].at = NEW_MANY(arena, struct allowing, allows->by_rule.at[i].count + 1);
        allows->by_rule.at[i].count = 0;
    }
    qsort(sorted, (size_t)model->allow_count, sizeof *sorted, by_scope);
    for (int i = 0; i < model->allow_count; i++) {
        const struct rule *rule = rule_find(sorted[i]->rule);
        if (rule)
            allowing_add(&allows->by_rule.at[rule - rules], sorted[i]);
    }
    return allows;
}

/* The first written of those around a place and of `found`. */
static const struct allow_line *first_around(const struct rule_allows *list, struct span at, const struct allow_line *found)
{
    int low = 0, high = list->count; /* those below `low` begin by then, those from `high` on do not */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (list->at[middle].line->scope.start <= at.start)
            low = middle + 1;
        else
            high = middle;
    }
    for (int i = span_is_somewhere(at) ? low - 1 : -1; i >= 0; i = list->at[i].around)
        if (is_around(list->at[i].line, at) && (!found || list->at[i].line->id < found->id))
            found = list->at[i].line;
    return found;
}

static const struct allow_line *own_line(struct allows *allows, const struct rule *rule, const struct block *block)
{
    int known = allows->blocks.count, number = numbers_give(&allows->blocks, block, 0);
    for (int i = 0; number == known && i < block->allow_count; i++) {
        const struct rule *of = rule_find(block->allows[i]->rule);
        if (of && numbers_give(&allows->own, of, (uint64_t)number) == allows->own_lines.count)
            vec_add(allows->arena, &allows->own_lines, block->allows[i]);
    }
    int at = numbers_known(&allows->own, rule, (uint64_t)number);
    return at < 0 ? NULL : allows->own_lines.at[at];
}

const struct allow_line *allows_find(struct allows *allows, const struct rule *rule, const struct block *block, struct span at,
                                     const struct origin *origin)
{
    const struct rule_allows *list = &allows->by_rule.at[rule - rules];
    const struct allow_line *found = list->count ? first_around(list, at, NULL) : NULL;
    for (; origin && list->count; origin = origin->up)
        found = first_around(list, origin->at, found);
    return found || !block || !block->allow_count ? found : own_line(allows, rule, block);
}
