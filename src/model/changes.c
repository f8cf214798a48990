/* The changes that deload, taper and adjust share: one list of verbs, made from the tree. */
#include "model/club.h"

static const char *const verb_words[] = { "sets", "reps", "rpe", "load" };

static void lifts_into(const struct place *place, const struct node *lifts, struct change *change)
{
    VEC(const struct lift *) list = { 0 };
    VEC(struct span) words = { 0 };
    for (const struct node *node = lifts ? lifts->child : NULL; node; node = node->next) {
        const struct lift *lift = lift_of_node(place, node);
        if (!lift)
            continue;
        vec_add(place->club->arena, &list, lift);
        vec_add(place->club->arena, &words, node->at);
    }
    change->lifts = list.at;
    change->lift_at = words.at;
    change->lift_count = list.count;
}

static void days_into(const struct place *place, const struct node *days, struct change *change)
{
    VEC(const char *) list = { 0 };
    VEC(struct span) words = { 0 };
    for (const struct node *node = days ? days->child : NULL; node; node = node->next) {
        const char *label = label_of(place, node);
        vec_add(place->club->arena, &list, label);
        vec_add(place->club->arena, &words, node->at);
    }
    change->days = list.at;
    change->day_at = words.at;
    change->day_count = list.count;
}

static const struct want *want_of_verb(enum change_verb verb)
{
    return verb == CHANGE_LOAD ? &want_load_change : &want_amount;
}

static bool change_number(const struct place *place, const struct node *node, struct change *change)
{
    int verb = node->text ? word_index(node->text, verb_words, 4) : -1;
    if (verb < 0)
        return false;
    change->verb = (enum change_verb)verb;
    change->way = node->flags & FLAG_UP ? CHANGE_UP : node->flags & FLAG_DOWN ? CHANGE_DOWN : CHANGE_TO;
    change->value = value_of(place, node->child, want_of_verb(change->verb));
    if (!change->value.series)
        return false;
    /* `sets to 60 | 40%` has one unit; `rpe to 50%` would mean nothing a lifter feels. */
    if (change->verb == CHANGE_EFFORT && change->value.unit == UNIT_PERCENT) {
        struct finding *finding = place_finding(place, KIND_UNIT, node->child->at, "effort changes by points, not per cents");
        diag_help(place->club->findings, finding, "write `rpe down 1` or `rpe to 6`");
        return false;
    }
    lifts_into(place, node_child(node, NODE_LIFTS), change);
    days_into(place, node_child(node, NODE_DAYS), change);
    return true;
}

static bool change_cap(const struct place *place, const struct node *node, struct change *change)
{
    const struct node *effort = node_child(node, NODE_EFFORT);
    change->verb = CHANGE_CAP;
    if (!effort)
        return false;
    change->value = value_of(place, effort->child, &want_effort);
    if (change->value.is_effort ? change->value.is_rir : effort->text && !strcmp(effort->text, "rir"))
        change->way = CHANGE_DOWN; /* marks an effort written as reps left */
    lifts_into(place, node_child(node, NODE_LIFTS), change);
    return change->value.series != NULL;
}

static bool change_swap(const struct place *place, const struct node *node, struct change *change)
{
    const struct lift **old = NEW(place->club->arena, const struct lift *);
    struct span *word = NEW(place->club->arena, struct span);
    change->verb = CHANGE_SWAP;
    *word = node->child->at;
    change->lift_at = word;
    *old = lift_of_node(place, node->child);
    change->swap_with = lift_of_node(place, node->child->next);
    change->lifts = old;
    change->lift_count = 1;
    change->swap_at = node->child->next->at;
    if (*old && *old == change->swap_with) {
        struct finding *finding = place_finding(place, KIND_UNTOUCHED, node->child->next->at, "%s is swapped with itself", (*old)->name);
        diag_help(place->club->findings, finding, "name the lift that takes its place, or take the line out");
        return false;
    }
    return *old && change->swap_with;
}

static bool change_make(const struct place *place, const struct node *node, struct change *change)
{
    bool ok = true;
    *change = (struct change){ .at = node->at, .origin = place->origin };
    switch (node->kind) {
    case NODE_CHANGE: return change_number(place, node, change);
    case NODE_CAP_CHANGE: return change_cap(place, node, change);
    case NODE_SWAP: return change_swap(place, node, change);
    case NODE_SKIP_LIFT:
        change->verb = CHANGE_SKIP_LIFT;
        lifts_into(place, node_child(node, NODE_LIFTS), change);
        return change->lift_count > 0;
    case NODE_SKIP_DAY:
        change->verb = CHANGE_SKIP_DAY;
        days_into(place, node_child(node, NODE_DAYS), change);
        return true;
    case NODE_SKIP_WEEK:
    case NODE_REPEAT_WEEK:
        change->verb = node->kind == NODE_SKIP_WEEK ? CHANGE_SKIP_WEEK : CHANGE_REPEAT_WEEK;
        change->weeks = weeks_of(place, node->child, place->calendar ? place->calendar->weeks : 0, &ok);
        return ok;
    case NODE_ADD_TO:
        change->verb = CHANGE_ADD;
        change->add_day = label_of(place, node->child);
        change->day_at = &node->child->at;
        change->entry_count = entries_make(place, node, &change->entries);
        return true;
    case NODE_NOTE:
        change->verb = CHANGE_NOTE;
        change->note = text_behind(place, node->child);
        return change->note != NULL;
    default: return false;
    }
}

int changes_make(const struct place *place, const struct node *body, const struct change **out, int *next_id)
{
    VEC(struct change) list = { 0 };
    for (const struct node *node = body->child; node; node = node->next) {
        struct change change;
        if (!change_make(place, node, &change))
            continue;
        change.id = (*next_id)++;
        vec_add(place->club->arena, &list, change);
    }
    *out = list.at;
    return list.count;
}

static struct value constant(const struct place *place, struct dec number, enum unit unit, struct span at)
{
    return (struct value){ .series = plain_series(place->club, (struct band){ number, number }), .frame = place->frame, .unit = unit, .at = at };
}

/* A bare deload: `sets to 50%; rpe down 2; load down 10%` (language.md, Changes). */
int changes_bare_deload(const struct place *place, const struct node *deload, const struct change **out)
{
    static const struct {
        enum change_verb verb;
        enum change_way way;
        int amount;
        enum unit unit;
    } rows[] = {
        { CHANGE_SETS, CHANGE_TO, 50, UNIT_PERCENT },
        { CHANGE_EFFORT, CHANGE_DOWN, 2, UNIT_NONE },
        { CHANGE_LOAD, CHANGE_DOWN, 10, UNIT_PERCENT },
    };
    enum { ROWS = sizeof rows / sizeof *rows };
    struct change *changes = NEW_MANY(place->club->arena, struct change, ROWS);
    for (int i = 0; i < ROWS; i++)
        changes[i] = (struct change){ .verb = rows[i].verb, .way = rows[i].way, .at = deload->at, .origin = place->origin,
                                      .value = constant(place, dec_int(rows[i].amount), rows[i].unit, deload->at),
                                      .id = -1 };
    *out = changes;
    return ROWS;
}
