/* Templates: a block's statements with those of the templates it builds on folded in (language.md, Reuse). */
#include "model/club.h"

static const char *decl_what(const struct decl *decl)
{
    return decl->node->kind == NODE_TEMPLATE ? "template" : "block";
}

static struct decl *template_named(struct club *club, const struct decl *by, const struct node *name)
{
    struct decl *decl = names_use(club, SPACE_BLOCK, name->text, name->at, NULL);
    if (!decl || decl->node->kind == NODE_TEMPLATE)
        return decl;
    struct finding *finding = diag_add(club->findings, KIND_MISPLACED, name->at, "%s is a %s; %s can build on a template only",
                                       decl->name, decl->node->kind == NODE_SEASON ? "season" : "block", by->name);
    diag_related(club->findings, finding, decl->at, "%s is declared here", decl->name);
    diag_help(club->findings, finding, "declare it as `template %s { … }` to build on it", decl->name);
    return NULL;
}

static bool chain_climb(struct club *club, struct decl *decl, int depth, struct chain *out)
{
    const struct node *from = node_child(decl->node, NODE_FROM);
    if (decl->making) {
        struct finding *finding = diag_add(club->findings, KIND_CYCLE, from ? from->child->at : decl->at,
                                           "%s builds on itself in the end", decl->name);
        diag_help(club->findings, finding, "take one `from` of the circle out");
        return false;
    }
    if (from) {
        struct decl *base = template_named(club, decl, from->child);
        if (!base)
            return false;
        if (depth == NESTED_MOST) {
            struct finding *finding = diag_add(club->findings, KIND_LIMIT, from->child->at, "more than %d templates build on one another here", NESTED_MOST);
            diag_help(club->findings, finding, "build on a template further down");
            return false;
        }
        decl->making = true;
        bool ok = chain_climb(club, base, depth + 1, out);
        decl->making = false;
        if (!ok)
            return false;
    }
    vec_add(club->arena, &out->decls, decl);
    return true;
}

/* Where the template of a level is named, within where those that build on it are. */
static const struct origin *origin_of(struct club *club, const struct decl *by, const struct origin *up)
{
    struct origin *origin = NEW(club->arena, struct origin);
    origin->at = node_child(by->node, NODE_FROM)->child->at;
    origin->says = arena_format(club->arena, "used by %s %s here", decl_what(by), by->name);
    origin->up = up;
    return origin;
}

bool chain_of(struct club *club, struct decl *decl, struct chain *out)
{
    *out = (struct chain){ 0 };
    if (!chain_climb(club, decl, 0, out))
        return false;
    for (int level = 0; level < out->decls.count; level++) {
        vec_add(club->arena, &out->origins, NULL);
        const struct node *body = out->decls.at[level]->node;
        for (const struct node *let = node_child(body, NODE_LET); let; let = node_next(let, NODE_LET))
            vec_add(club->arena, &out->lets, let);
    }
    for (int level = out->decls.count - 2; level >= 0; level--)
        out->origins.at[level] = origin_of(club, out->decls.at[level + 1], out->origins.at[level + 1]);
    return true;
}

const struct node *chain_nearest(const struct chain *chain, enum node_kind kind, int *level)
{
    for (int i = chain->decls.count - 1; i >= 0; i--) {
        const struct node *node = node_child(chain->decls.at[i]->node, kind);
        if (node) {
            *level = i;
            return node;
        }
    }
    return NULL;
}

/* ---- folding ---- */

/* The days of a label. */
struct label_days {
    int last;              /* part */
    int level;             /* its */
    struct week_set weeks; /* of all at this level */
};
struct folding {
    const struct place *place;
    const struct chain *chain;
    struct parts *out;
    int level;
    VEC(const struct node *) lets; /* of the weeks groups being walked */
    const struct node *const *lets_now;   /* a copy of them for the parts; NULL: to be made */
    const struct let_index *let_index;
    bool dropped[NODE_KIND_COUNT];        /* what stood further down has gone */
    const struct node *said[NODE_KIND_COUNT]; /* at this level, of what is said once */
    struct numbers labels;
    VEC(struct label_days) days;
    VEC(int) before; /* by part: the one of its label before it; -1: none, or no day */
};

enum fold { FOLD_NONE, FOLD_REPLACES, FOLD_REPLACES_ALL, FOLD_ADDS, FOLD_DAY };
/* What a statement does to those of the same kind further down the chain. */
static enum fold fold_of(enum node_kind kind)
{
    switch (kind) {
    case NODE_TITLE: case NODE_GOAL: case NODE_FOR: case NODE_STARTS: case NODE_LENGTH: case NODE_MAX_TO: case NODE_MAX_FIXED:
    case NODE_MODEL: return FOLD_REPLACES;
    case NODE_NOTE: case NODE_DELOAD: case NODE_TAPER: case NODE_ROTATE: return FOLD_REPLACES_ALL;
    case NODE_ADJUST: case NODE_CHECKS: case NODE_ALLOW: case NODE_WARM_UP: return FOLD_ADDS;
    case NODE_DAY: return FOLD_DAY;
    default: return FOLD_NONE;
    }
}

static bool week_set_empty(const struct week_set *set)
{
    for (size_t i = 0; i < sizeof set->bits / sizeof *set->bits; i++)
        if (set->bits[i])
            return false;
    return true;
}

static bool week_sets_meet(const struct week_set *a, const struct week_set *b)
{
    for (size_t i = 0; i < sizeof a->bits / sizeof *a->bits; i++)
        if (a->bits[i] & b->bits[i])
            return true;
    return false;
}

/* A part that is dropped stays in its place without a node until all are folded. */
static void drop_lower(struct folding *f, enum node_kind kind)
{
    for (int i = 0; i < f->out->list.count && !f->dropped[kind]; i++) {
        struct part *part = &f->out->list.at[i];
        if (part->node && part->node->kind == kind && part->level != f->level)
            part->node = NULL;
    }
    f->dropped[kind] = true;
}

static const struct label_days *days_of(const struct folding *f, const char *label)
{
    static const struct label_days none = { .last = -1 };
    int at = numbers_known(&f->labels, label, 0);
    return at < 0 ? &none : &f->days.at[at];
}

/* Takes the weeks out of the days of a label further down the chain; days with no week left go. Returns whether it met any. */
static bool drop_days(struct folding *f, const char *label, const struct week_set *weeks)
{
    bool met = false;
    for (int i = f->level > 0 ? days_of(f, label)->last : -1; i >= 0; i = f->before.at[i]) {
        struct part *part = &f->out->list.at[i];
        if (!part->node || part->level >= f->level)
            continue;
        met = true;
        for (size_t j = 0; j < sizeof weeks->bits / sizeof *weeks->bits; j++)
            part->weeks.bits[j] &= ~weeks->bits[j];
        if (week_set_empty(&part->weeks))
            part->node = NULL;
    }
    return met;
}

static void said_twice(struct folding *f, const struct node *node, const struct node *first)
{
    struct finding *finding = place_finding(f->place, KIND_REPEATED, node->at, "this is said twice in one block");
    diag_related(f->place->club->findings, finding, first->at, "the first time is here");
    diag_help(f->place->club->findings, finding, "keep the line that is right");
}

static bool check_once(struct folding *f, const struct node *node)
{
    if (f->said[node->kind]) {
        said_twice(f, node, f->said[node->kind]);
        return false;
    }
    f->said[node->kind] = node;
    return true;
}

/* The first day of the label at this level that shares a week with this one; NULL: none. */
static const struct part *day_again(const struct folding *f, const struct part *day)
{
    const struct part *first = NULL;
    const struct label_days *days = days_of(f, day->label);
    bool meet = days->level == f->level && week_sets_meet(&days->weeks, &day->weeks);
    for (int i = meet ? days->last : -1; i >= 0; i = f->before.at[i]) {
        const struct part *other = &f->out->list.at[i];
        if (other->node && other->level == f->level && week_sets_meet(&other->weeks, &day->weeks))
            first = other;
    }
    return first;
}

static bool check_day(struct folding *f, const struct part *day)
{
    const struct part *first = day_again(f, day);
    if (!first)
        return true;
    struct finding *finding = place_finding(f->place, KIND_DUPLICATE, day->node->child->at,
                                            "day %s is written twice for the same weeks", day->label);
    diag_related(f->place->club->findings, finding, first->node->child->at, "the first day %s is here", day->label);
    diag_help(f->place->club->findings, finding,
              "give one another label, or train it twice with `day %s on mon, thu`", day->label);
    return false;
}

static void remove_days(struct folding *f, const struct node *node)
{
    struct week_set all;
    memset(&all, 0xff, sizeof all);
    for (const struct node *label = node->child->child; label; label = label->next) {
        const char *name = label_of(f->place, label);
        if (drop_days(f, name, &all))
            continue;
        struct finding *finding = place_finding(f->place, KIND_UNKNOWN_NAME, label->at, "there is no day %s to remove", name);
        diag_help(f->place->club->findings, finding, "`remove day` leaves out a day of the template a block is built from");
    }
}

static void fold_statement(struct folding *f, const struct node *node, const struct week_set *weeks);

/* The title and notes of `weeks 1-3 { … }` are said in those weeks. */
static const char *const *notes_of_group(const struct place *place, const struct node *group, int *count)
{
    const struct node *title = node_child(group, NODE_TITLE);
    const char *const *notes = notes_of(place, group, count), *text = title ? text_behind(place, title->child) : NULL;
    if (!text)
        return notes;
    const char **all = NEW_MANY(place->club->arena, const char *, *count + 1);
    all[0] = text;
    if (*count)
        memcpy(all + 1, notes, sizeof *all * (size_t)*count);
    ++*count;
    return all;
}

static void fold_group(struct folding *f, const struct node *group, const struct week_set *around)
{
    bool ok;
    struct week_set *weeks = NEW(f->place->club->passing, struct week_set);
    *weeks = weeks_of(f->place, group->child, f->place->calendar->weeks, &ok);
    for (size_t i = 0; i < sizeof weeks->bits / sizeof *weeks->bits; i++)
        weeks->bits[i] &= around->bits[i];
    struct weeks_line line = { .weeks = *weeks, .at = { group->at.start, group->child->at.end } };
    line.notes = notes_of_group(f->place, group, &line.note_count);
    vec_add(f->place->club->arena, &f->out->week_lines, line);
    int lets = f->lets.count;
    for (const struct node *let = node_child(group, NODE_LET); let; let = node_next(let, NODE_LET))
        vec_add(f->place->club->passing, &f->lets, let);
    f->lets_now = NULL;
    for (const struct node *node = group->child->next; node; node = node->next)
        if (node->kind != NODE_TITLE && node->kind != NODE_NOTE)
            fold_statement(f, node, weeks);
    f->lets.count = lets;
    f->lets_now = NULL;
}

static void lets_copy(struct folding *f)
{
    struct arena *arena = f->place->club->passing;
    const struct node **lets = NEW_MANY(arena, const struct node *, f->lets.count + 1);
    if (f->lets.count)
        memcpy(lets, f->lets.at, sizeof *lets * (size_t)f->lets.count);
    f->lets_now = lets;
    f->let_index = lets_index(arena, lets, f->lets.count);
}

static int day_add(struct folding *f, const struct part *day, int at)
{
    int number = numbers_give(&f->labels, day->label, 0);
    if (number == f->days.count)
        vec_add(f->place->club->passing, &f->days, (struct label_days){ .last = -1 });
    struct label_days *days = &f->days.at[number];
    int before = days->last;
    days->last = at;
    if (days->level != f->level)
        days->weeks = (struct week_set){ { 0 } };
    days->level = f->level;
    for (size_t i = 0; i < sizeof days->weeks.bits / sizeof *days->weeks.bits; i++)
        days->weeks.bits[i] |= day->weeks.bits[i];
    return before;
}

static void part_add(struct folding *f, struct part part)
{
    struct arena *arena = f->place->club->passing;
    int before = part.label ? day_add(f, &part, f->out->list.count) : -1;
    vec_add(arena, &f->before, before);
    vec_add(arena, &f->out->list, part);
}

static void fold_statement(struct folding *f, const struct node *node, const struct week_set *weeks)
{
    if (node->kind == NODE_WEEKS_GROUP) {
        fold_group(f, node, weeks);
        return;
    }
    if (node->kind == NODE_REMOVE) {
        remove_days(f, node);
        return;
    }
    enum fold fold = fold_of(node->kind);
    if (!f->lets_now)
        lets_copy(f);
    struct part part = { .node = node, .level = f->level, .file = f->chain->decls.at[f->level]->file,
                         .origin = f->chain->origins.at[f->level], .weeks = *weeks, .group_weeks = weeks,
                         .lets = f->lets_now, .let_count = f->lets.count, .let_index = f->let_index };
    if (fold == FOLD_NONE || (fold == FOLD_REPLACES && !check_once(f, node)))
        return;
    if (fold == FOLD_DAY) {
        part.label = label_of(f->place, node->child);
        if (!check_day(f, &part))
            return;
        drop_days(f, part.label, weeks);
    } else if (fold != FOLD_ADDS) {
        drop_lower(f, node->kind);
    }
    part_add(f, part);
}

static void drop_gone(struct parts *parts)
{
    int kept = 0;
    for (int i = 0; i < parts->list.count; i++)
        if (parts->list.at[i].node)
            parts->list.at[kept++] = parts->list.at[i];
    parts->list.count = kept;
}

void parts_of(const struct place *place, const struct chain *chain, struct parts *out)
{
    struct week_set *all = NEW(place->club->passing, struct week_set);
    for (int week = 1; week <= place->calendar->weeks; week++)
        week_add(all, week);
    struct folding f = { .place = place, .chain = chain, .out = out, .labels.arena = place->club->arena };
    *out = (struct parts){ 0 };
    for (f.level = 0; f.level < chain->decls.count; f.level++) {
        struct place here = *place;
        here.origin = chain->origins.at[f.level];
        here.file = chain->decls.at[f.level]->file;
        f.place = &here;
        memset(f.dropped, 0, sizeof f.dropped);
        memset(f.said, 0, sizeof f.said);
        const struct node *body = chain->decls.at[f.level]->node;
        for (const struct node *node = body->child; node; node = node->next)
            fold_statement(&f, node, all);
        f.place = place;
    }
    drop_gone(out);
}
