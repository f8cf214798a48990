#include "syntax/plain.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define K(kind, name) [NODE_##kind] = name

static const char *const kind_names[NODE_KIND_COUNT] = {
    K(FILE, "file"), K(NAME, "name"), K(VAR, "var"), K(STRING, "string"), K(NUMBER, "number"), K(DATE, "date"),
    K(BAND, "band"), K(AMOUNT, "amount"), K(SETS, "sets"), K(LIST, "list"), K(RAMP, "ramp"), K(STEP, "step"),
    K(WAVE, "wave"), K(EFFORT, "effort"), K(WEIGHT, "weight"), K(BODYWEIGHT, "bodyweight"), K(WEEKS, "weeks"),
    K(PEOPLE, "people"), K(LIFTS, "lifts"), K(DAYS, "days"), K(WEEKDAYS, "weekdays"), K(BECAUSE, "because"), K(ON, "on"),
    K(TITLE, "title"), K(NOTE, "note"), K(LET, "let"), K(ALLOW, "allow"), K(LANGUAGE, "language"), K(UNITS, "units"),
    K(USE, "use"), K(ROSTER, "roster"), K(MODEL, "model"), K(GYM, "gym"), K(BAR, "bar"), K(COLLAR, "collar"),
    K(PLATES, "plates"), K(PLATE, "plate"), K(DUMBBELLS, "dumbbells"), K(STACK, "stack"), K(RANGE, "range"),
    K(ROUND, "round"), K(LIFT, "lift"), K(LIKE, "like"), K(KIND, "kind"), K(LOADS, "loads"), K(WORKS, "works"),
    K(HELPS, "helps"), K(CUE, "cue"), K(INSTEAD, "instead"), K(ATHLETE, "athlete"), K(GYM_REF, "gym-ref"),
    K(BODYWEIGHT_LINE, "bodyweight-line"), K(MAX, "max"), K(CURVE, "curve"), K(EFFORT_LINE, "effort-line"),
    K(AVOID, "avoid"), K(GROUP_OF, "group-of"), K(SCHEME, "scheme"), K(PROGRESSION, "progression"), K(WHEN, "when"),
    K(ADD, "add"), K(HOLD, "hold"), K(DROP_LOAD, "drop-load"), K(BLOCK, "block"), K(TEMPLATE, "template"),
    K(FROM, "from"), K(GOAL, "goal"), K(FOR, "for"), K(STARTS, "starts"), K(LENGTH, "length"), K(DELOAD, "deload"),
    K(TAPER, "taper"), K(EVERY, "every"), K(WARM_UP, "warm-up"), K(MAX_TO, "max-to"), K(MAX_FIXED, "max-fixed"),
    K(REMOVE, "remove"), K(ROTATE, "rotate"), K(WEEKS_GROUP, "weeks-group"), K(ADJUST, "adjust"),
    K(IN_WEEKS, "in-weeks"), K(DATES, "dates"), K(DAY, "day"), K(SUPERSET, "superset"), K(ROUNDS, "rounds"),
    K(MINUTES, "minutes"), K(ENTRY, "entry"), K(USE_SCHEME, "use-scheme"), K(GROUP, "group"), K(COUNT, "count"),
    K(REPS, "reps"), K(TOTAL, "total"), K(AMRAP, "amrap"), K(CLUSTER, "cluster"), K(AT_EFFORT, "at-effort"),
    K(AT_LOAD, "at-load"), K(OF_LIFT, "of-lift"), K(OF_DAY, "of-day"), K(OF_BODYWEIGHT, "of-bodyweight"),
    K(AT_BODYWEIGHT, "at-bodyweight"), K(AT_SAME, "at-same"), K(AT_LEAST, "at-least"), K(DROP, "drop"), K(CAP, "cap"),
    K(UNTIL_EFFORT, "until-effort"), K(UNTIL_SPEED, "until-speed"), K(EVERY_TIME, "every-time"), K(REST, "rest"),
    K(PAUSE, "pause"), K(TEMPO, "tempo"), K(EACH_SIDE, "each-side"), K(OPTIONAL, "optional"), K(PROGRESS, "progress"),
    K(CHANGE, "change"), K(SWAP, "swap"), K(SKIP_LIFT, "skip-lift"), K(SKIP_DAY, "skip-day"), K(SKIP_WEEK, "skip-week"),
    K(REPEAT_WEEK, "repeat-week"), K(CAP_CHANGE, "cap-change"), K(ADD_TO, "add-to"), K(SEASON, "season"),
    K(MEET, "meet"), K(RUN, "run"), K(BREAK, "break"), K(ATTEMPTS, "attempts"), K(DIARY, "diary"),
    K(SESSION, "session"), K(MISSED, "missed"), K(DONE, "done"), K(PART, "part"), K(SPEED, "speed"),
    K(AS_PLANNED, "as-planned"), K(SKIPPED, "skipped"), K(SESSION_EFFORT, "session-effort"), K(CHECKS, "checks"),
    K(LIMIT, "limit"), K(OFF, "off"), K(ERROR, "error"),
};

const char *node_kind_name(enum node_kind kind)
{
    return kind_names[kind];
}

static const struct node *node_of_kind(const struct node *node, enum node_kind kind)
{
    while (node && node->kind != kind)
        node = node->next;
    return node;
}

const struct node *node_child(const struct node *node, enum node_kind kind)
{
    return node_of_kind(node->child, kind);
}

const struct node *node_next(const struct node *node, enum node_kind kind)
{
    return node_of_kind(node->next, kind);
}

static const struct {
    enum node_flag flag;
    const char *name;
} flag_names[] = {
    { FLAG_MINUS, " minus" }, { FLAG_UP, " up" },     { FLAG_DOWN, " down" },     { FLAG_TO, " to" },
    { FLAG_FROM, " from" },   { FLAG_BODY, " body" }, { FLAG_PARENS, " parens" },
};

const struct node *entry_open(const struct tree *tree, const struct node *entry, struct plain_room *room)
{
    return entry->flags & FLAG_PLAIN ? plain_read(tree->plain, entry->at.start - tree->source->base, room) : entry;
}

const struct node *group_last_note(const struct node *group)
{
    const struct node *note = node_child(group, NODE_NOTE);
    return note && !note->next ? note->child : NULL;
}

static void dump_node(FILE *out, const struct tree *tree, const struct node *node, int depth)
{
    char number[32];
    struct plain_room room;
    node = entry_open(tree, node, &room);
    fprintf(out, "%*s%s", 2 * depth, "", kind_names[node->kind]);
    if (node->kind == NODE_NUMBER) {
        number[dec_write(number, node->number)] = '\0';
        fprintf(out, " %s", number);
    } else if (node->kind == NODE_DATE) {
        date_write(number, node->date);
        fprintf(out, " %s", number);
    } else if (node->text) {
        fprintf(out, " %s", node->text);
    }
    for (size_t i = 0; i < sizeof flag_names / sizeof *flag_names; i++)
        if (node->flags & flag_names[i].flag)
            fputs(flag_names[i].name, out);
    fputc('\n', out);
    for (const struct node *child = node->child; child; child = child->next)
        dump_node(out, tree, child, depth + 1);
}

const char *tree_dump(struct arena *arena, const struct tree *tree)
{
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    if (!out)
        return "";
    dump_node(out, tree, tree->root, 0);
    fclose(out);
    const char *copy = arena_copy(arena, text, length);
    free(text);
    return copy;
}
