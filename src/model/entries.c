/* What stands in a day: entries, their set groups, schemes by name, supersets. */
#include "model/club.h"

#include "base/near.h"

static const char *const role_words[] = { "", "warm-up", "top", "back-off" };

const char *role_name(enum role role)
{
    return role == ROLE_WORK ? "work" : role_words[role];
}

struct making {
    const struct place *place;
    struct group *group;
    struct group_more *more; /* the group's; NULL: nothing of it is said so far */
    const struct node *node;
};

/* What few groups say, to be written to. */
static struct group_more *more(struct making *m)
{
    if (!m->more)
        m->group->more = m->more = NEW(m->place->club->arena, struct group_more);
    return m->more;
}

static struct finding *wrong(const struct making *m, enum kind kind, struct span at, const char *says)
{
    return place_finding(m->place, kind, at, "%s", says);
}

/* ---- clauses: a function each, met through the table below ---- */

static void effort_into(const struct making *m, const struct node *value, const char *scale, struct value *out, bool *is_rir)
{
    *out = value_of(m->place, value, &want_effort);
    *is_rir = out->is_effort ? out->is_rir : scale && !strcmp(scale, "rir");
}

static void clause_at_effort(struct making *m, const struct node *node)
{
    m->group->load_kind = LOAD_EFFORT;
    effort_into(m, node->child, node->text, &m->group->load, &m->group->load_is_rir);
}

static void at_load_of(struct making *m, const struct node *of)
{
    struct group *group = m->group;
    if (of->kind == NODE_OF_LIFT) {
        group->load_kind = LOAD_PERCENT_OF_LIFT;
        more(m)->of_lift = lift_of_node(m->place, of->child);
        if (!more(m)->of_lift)
            group->load.series = NULL;
    } else if (of->kind == NODE_OF_DAY) {
        group->load_kind = LOAD_PERCENT_OF_DAY;
        more(m)->of_day = label_of(m->place, of->child);
        more(m)->of_day_at = of->child->at;
    } else {
        group->load_kind = LOAD_PERCENT_OF_BODYWEIGHT;
    }
    if (group->load.series && group->load.unit != UNIT_PERCENT) {
        struct finding *finding = wrong(m, KIND_UNIT, node_child(m->node, NODE_AT_LOAD)->child->at, "only a per cent can be `of` something");
        diag_help(m->place->club->findings, finding, "write `at 80%% of squat`, `at 90%% of day A` or `at 50%% of bodyweight`");
        group->load.series = NULL;
    }
}

static void clause_at_load(struct making *m, const struct node *node)
{
    const struct node *of = node->child ? node->child->next : NULL;
    m->group->load = value_of(m->place, node->child, &want_load);
    m->group->load_kind = m->group->load.unit == UNIT_PERCENT ? LOAD_PERCENT : LOAD_WEIGHT;
    if (of)
        at_load_of(m, of);
}

static void clause_at_bodyweight(struct making *m, const struct node *node)
{
    const struct node *bodyweight = node->child;
    m->group->load_kind = LOAD_BODYWEIGHT;
    m->group->load_minus = bodyweight->flags & FLAG_MINUS;
    if (bodyweight->child)
        m->group->load = value_of(m->place, bodyweight->child, &want_weight);
}

static void clause_at_same(struct making *m, const struct node *node)
{
    (void)node;
    m->group->load_kind = LOAD_SAME;
}

static void clause_drop(struct making *m, const struct node *node)
{
    m->group->load_kind = LOAD_DROP;
    m->group->load = value_of(m->place, node->child, &want_load);
    const struct series *series = m->group->load.series;
    for (int i = 0; series && m->group->load.unit == UNIT_PERCENT && i < series->count; i++)
        for (int j = 0; j < series->weeks[i].count; j++)
            if (series->weeks[i].sets[j].high.e10 >= 100 * DEC_ONE) {
                diag_help(m->place->club->findings, wrong(m, KIND_RANGE, node->child->at, "this drops the whole load"),
                          "write a drop below 100%%, such as `drop 15%%`");
                m->group->load.series = NULL;
                return;
            }
}

static void clause_at_least(struct making *m, const struct node *node)
{
    more(m)->at_least = value_of(m->place, node->child, &want_count);
    if (m->group->reps_kind == REPS_AMRAP)
        return;
    struct finding *finding = wrong(m, KIND_MISPLACED, node->at, "`at least` belongs to amrap: the reps that count as made");
    diag_help(m->place->club->findings, finding, "write `1 x amrap at 80%% at least 5`, or take it out");
}

static void clause_cap(struct making *m, const struct node *node)
{
    const struct node *limit = node->child;
    if (limit->kind == NODE_EFFORT) {
        more(m)->cap_kind = CAP_EFFORT;
        effort_into(m, limit->child, limit->text, &more(m)->cap, &more(m)->cap_is_rir);
        return;
    }
    more(m)->cap = value_of(m->place, limit, &want_load);
    more(m)->cap_kind = more(m)->cap.unit == UNIT_PERCENT ? CAP_PERCENT : CAP_WEIGHT;
}

static bool sets_is_band(const struct group *group)
{
    const struct series *series = group->sets.series;
    for (int i = 0; series && i < series->count; i++)
        if (series->weeks[i].sets[0].low.e10 != series->weeks[i].sets[0].high.e10)
            return true;
    return false;
}

static void until_needs_band(struct making *m, const struct node *node)
{
    if (!m->group->sets.series || sets_is_band(m->group) || m->group->reps_kind == REPS_TOTAL)
        return;
    struct finding *finding = wrong(m, KIND_MISPLACED, node->at, "`until` ends a band of sets, and this is a fixed number of them");
    diag_help(m->place->club->findings, finding, "write the sets as a band, such as `2-5 x 5 until rpe 9`");
}

static void clause_until_effort(struct making *m, const struct node *node)
{
    effort_into(m, node->child->kind == NODE_EFFORT ? node->child->child : node->child,
                node->child->kind == NODE_EFFORT ? node->child->text : NULL, &more(m)->until_effort, &more(m)->until_is_rir);
    until_needs_band(m, node);
}

static void clause_until_speed(struct making *m, const struct node *node)
{
    enum unit unit;
    number_of(m->place, node->child, &want_speed, &more(m)->until_speed, &unit);
    until_needs_band(m, node);
}

static void clause_every(struct making *m, const struct node *node)
{
    struct seconds_band time;
    if (seconds_of(m->place, node->child, &time))
        more(m)->every_s = time.low;
}

static void clause_rest(struct making *m, const struct node *node)
{
    seconds_of(m->place, node->child, &m->group->rest);
}

static void clause_pause(struct making *m, const struct node *node)
{
    seconds_of(m->place, node->child, &m->group->pause);
}

static void clause_tempo(struct making *m, const struct node *node)
{
    m->group->tempo = text_behind(m->place, node->child);
}

static void clause_each_side(struct making *m, const struct node *node)
{
    (void)node;
    m->group->each_side = true;
}

static void clause_optional(struct making *m, const struct node *node)
{
    (void)node;
    m->group->optional = true;
}

static void clause_progression(struct making *m, const struct node *node)
{
    struct place found;
    const struct node *name = node_behind(m->place, node->child, &found);
    more(m)->progression_at = node->at;
    if (!name || name->kind != NODE_NAME)
        return;
    struct decl *decl = names_use_in(m->place, SPACE_PROGRESSION, name);
    if (decl)
        more(m)->progression = progression_of(m->place->club, decl);
}

static const struct {
    void (*make)(struct making *m, const struct node *node); /* NULL: it is no clause, or read elsewhere */
    bool is_load; /* says the load: at most one of these */
} clauses[NODE_KIND_COUNT] = {
    [NODE_AT_EFFORT] = { clause_at_effort, true },
    [NODE_AT_LOAD] = { clause_at_load, true },
    [NODE_AT_BODYWEIGHT] = { clause_at_bodyweight, true },
    [NODE_AT_SAME] = { clause_at_same, true },
    [NODE_DROP] = { clause_drop, true },
    [NODE_AT_LEAST] = { clause_at_least, false },
    [NODE_CAP] = { clause_cap, false },
    [NODE_UNTIL_EFFORT] = { clause_until_effort, false },
    [NODE_UNTIL_SPEED] = { clause_until_speed, false },
    [NODE_EVERY_TIME] = { clause_every, false },
    [NODE_REST] = { clause_rest, false },
    [NODE_PAUSE] = { clause_pause, false },
    [NODE_TEMPO] = { clause_tempo, false },
    [NODE_EACH_SIDE] = { clause_each_side, false },
    [NODE_OPTIONAL] = { clause_optional, false },
    [NODE_PROGRESS] = { clause_progression, false },
};

static void clause_twice(struct making *m, const struct node *first, const struct node *again, bool is_load)
{
    struct finding *finding =
        is_load ? wrong(m, KIND_REPEATED, again->at, "the load of these sets is said twice")
                : wrong(m, KIND_REPEATED, again->at, "this is said twice for the same sets");
    diag_related(m->place->club->findings, finding, first->at, "the first time is here");
    diag_help(m->place->club->findings, finding, is_load ? "keep one: either `at …` or `drop …`" : "keep the one you mean");
}

static void clauses_make(struct making *m)
{
    const struct node *load = NULL;
    for (const struct node *node = m->node->child; node; node = node->next) {
        if (!clauses[node->kind].make)
            continue;
        bool is_load = clauses[node->kind].is_load;
        const struct node *first = is_load && load ? load : node_child(m->node, node->kind);
        if (first != node) {
            clause_twice(m, first, node, is_load);
            continue;
        }
        if (is_load) {
            load = node;
            m->group->load_at = node->at;
        }
        clauses[node->kind].make(m, node);
    }
}

/* ---- sets and reps ---- */

static struct finding *more_than(struct making *m, struct span at, int most, const char *what)
{
    return place_finding(m->place, KIND_RANGE, at, "more than %d %s", most, what);
}

/* One that is too long leaves the group without reps: it is not planned. */
static void cluster_make(struct making *m, const struct node *written)
{
    VEC(int) cluster = { 0 };
    int64_t sum = 0;
    for (const struct node *part = written->child; part; part = part->next) {
        int reps = 1;
        whole_of(m->place, part, "a number of reps", 1, REPS_MOST, &reps);
        vec_add(m->place->club->arena, &cluster, reps);
        sum += reps;
    }
    if (sum > REPS_MOST) {
        struct finding *finding = more_than(m, written->at, REPS_MOST, "reps");
        diag_help(m->place->club->findings, finding, "write fewer or shorter parts; together they are one set");
        return;
    }
    m->group->reps_kind = REPS_CLUSTER;
    more(m)->cluster = cluster.at, more(m)->cluster_count = cluster.count;
}

static void reps_make(struct making *m, const struct node *reps)
{
    struct group *group = m->group;
    const struct node *what = reps->child;
    struct place found;
    if (what && what->kind != NODE_AMRAP && what->kind != NODE_CLUSTER) {
        const struct node *behind = node_behind(m->place, what, &found);
        if (!behind || behind->kind == NODE_AMRAP)
            what = behind;
    }
    if (!what) {
        group->reps_kind = REPS_COUNT;
    } else if (what->kind == NODE_AMRAP) {
        group->reps_kind = REPS_AMRAP;
    } else if (what->kind == NODE_CLUSTER) {
        cluster_make(m, what);
    } else {
        group->reps = value_of(m->place, what, &want_reps);
        group->reps_kind = group->reps.unit == UNIT_NONE ? REPS_COUNT : group->reps.unit == UNIT_METRES ? REPS_METRES : REPS_SECONDS;
    }
}

static void most_of(struct making *m, const struct value *value, int most, const char *what)
{
    for (int i = 0; value->series && i < value->series->count; i++)
        for (int j = 0; j < value->series->weeks[i].count; j++)
            if (value->series->weeks[i].sets[j].high.e10 > most * DEC_ONE) {
                struct finding *finding = more_than(m, value->at, most, what);
                diag_help(m->place->club->findings, finding, "write a number from 1 to %d", most);
                return;
            }
}

static void check_group(struct making *m)
{
    struct group *group = m->group;
    struct findings *findings = m->place->club->findings;
    if (group->reps_kind == REPS_AMRAP && group->load_kind == LOAD_EFFORT) {
        struct finding *finding = wrong(m, KIND_OPEN_LOAD, group->load_at,
                                        "as many reps as possible has no effort to aim at, so it gives no load");
        diag_help(findings, finding, "say a load: `1 x amrap at 80%%`");
    }
    if (group->role == ROLE_WARM_UP && group->load_kind == LOAD_DROP)
        diag_help(findings, wrong(m, KIND_NO_TOP, group->load_at, "a warm-up has no set before it to drop from"),
                  "write it as a per cent of the first working load: `warm-up 1 x 5 at 50%%`");
    if (!group_more(group)->progression)
        return;
    const struct series *series = group->load.series;
    bool fits = (group->load_kind == LOAD_WEIGHT || group->load_kind == LOAD_PERCENT || group->load_kind == LOAD_BODYWEIGHT) &&
                (!series ? group->load_kind == LOAD_BODYWEIGHT
                         : series->kind == SERIES_LIST && series->count == 1 && series->weeks[0].count == 1);
    if (!fits && (series || group->load_kind == LOAD_NONE || group->load_kind == LOAD_SAME)) {
        struct finding *finding = wrong(m, KIND_PROGRESSION, group_more(group)->progression_at,
                                        "a progression starts from one load or one per cent, and here is none");
        diag_help(findings, finding, "write `at 50 kg` or `at 70%%` for these sets; the progression moves it from there");
    }
}

static void group_make(const struct place *outer, const struct node *node, bool warm_up, struct group *group)
{
    struct place place = *outer;
    struct making m = { .place = &place, .group = group, .node = node };
    int role = node->text ? word_index(node->text, role_words, 4) : 0;
    *group = (struct group){ .at = node->at, .origin = outer->origin, .every_week = true };
    group->role = warm_up ? ROLE_WARM_UP : (enum role)(role < 0 ? 0 : role);
    const struct node *in_weeks = node_child(node, NODE_IN_WEEKS);
    if (in_weeks) {
        bool ok;
        more(&m)->weeks = weeks_of(&place, in_weeks->child, place.calendar ? place.calendar->weeks : 0, &ok);
        group->every_week = false;
        place.frame = frame_of(&place, &more(&m)->weeks);
    }
    const struct node *count = node_child(node, NODE_COUNT), *reps = node_child(node, NODE_REPS), *total = node_child(node, NODE_TOTAL);
    if (count)
        group->sets = value_of(&place, count->child, &want_sets);
    if (reps)
        reps_make(&m, reps);
    if (total) {
        group->reps_kind = REPS_TOTAL;
        group->reps = value_of(&place, total->child, &want_count);
    }
    clauses_make(&m);
    group->notes = notes_of(&place, node, &group->note_count);
    most_of(&m, &group->sets, SETS_MOST, "sets");
    most_of(&m, &group->reps, group->reps_kind == REPS_COUNT ? REPS_MOST : 100000, "reps");
    check_group(&m);
}

/* ---- schemes ---- */

static int lets_of(struct club *club, const struct node *first, const struct node *const **out)
{
    VEC(const struct node *) lets = { 0 };
    for (const struct node *let = first; let; let = let->next)
        if (let->kind == NODE_LET)
            vec_add(club->arena, &lets, let);
    *out = lets.at;
    return lets.count;
}

/* `with $tops = 9` where the scheme knows $top alone would change nothing in silence. */
static void check_with(const struct place *place, const struct node *scheme, const struct node *lets)
{
    struct numbers known = { .arena = place->club->arena };
    VEC(const char *) names = { 0 };
    for (const struct node *let = lets ? node_child(scheme, NODE_LET) : NULL; let; let = node_next(let, NODE_LET)) {
        numbers_give(&known, let->child->text, 0);
        vec_add(place->club->arena, &names, let->child->text);
    }
    for (const struct node *let = lets; let; let = let->next) {
        if (let->kind != NODE_LET || numbers_known(&known, let->child->text, 0) >= 0 || !names_may_compare(place->club, names.count))
            continue;
        const char *near = word_nearest(let->child->text, names.at, names.count);
        if (near) {
            struct finding *finding = place_finding(place, KIND_UNKNOWN_LET, let->child->at, "scheme %s has no $%s", scheme->child->text,
                                                    let->child->text);
            diag_help(place->club->findings, finding, "did you mean $%s?", near);
        }
    }
}

int groups_of_scheme(const struct place *outer, const struct node *name, const struct node *lets, bool warm_up,
                     const struct group **out)
{
    struct club *club = outer->club;
    struct place found;
    const struct node *known = node_behind(outer, name, &found);
    *out = NULL;
    if (!known || known->kind != NODE_NAME)
        return 0;
    struct decl *decl = names_use_in(outer, SPACE_SCHEME, known);
    if (!decl)
        return 0;
    check_with(outer, decl->node, lets);
    /* From near to far: with, entry, scheme, day, block. */
    struct scope with = { .frame = outer->frame }, entry = { 0 }, scheme = { .frame = outer->frame };
    with.let_count = lets_of(club, lets, &with.lets);
    scheme.let_count = lets_of(club, decl->node->child, &scheme.lets);
    with.index = lets_index(club->arena, with.lets, with.let_count);
    scheme.index = lets_index(club->arena, scheme.lets, scheme.let_count);
    scheme.up = outer->scope;
    with.up = &scheme;
    if (outer->scope && outer->scope->is_entry) {
        entry = *outer->scope;
        scheme.up = entry.up;
        entry.up = &scheme;
        with.up = &entry;
    }
    struct origin *origin = NEW(club->arena, struct origin);
    *origin = (struct origin){ name->at, arena_format(club->arena, "scheme %s is used here", decl->name), outer->origin };
    struct place place = *outer;
    place.scope = &with;
    if (name->at.start != decl->at.start) /* read on its own account, a scheme is used nowhere */
        place.origin = origin;
    place.file = decl->file;
    VEC(struct group) groups = { 0 };
    lets_check(&place, decl->node);
    for (const struct node *node = node_child(decl->node, NODE_GROUP); node; node = node_next(node, NODE_GROUP)) {
        struct group group;
        group_make(&place, node, warm_up, &group);
        vec_add(club->arena, &groups, group);
    }
    *out = groups.at;
    return groups.count;
}

/* ---- entries ---- */

static void entry_lifts(const struct place *place, const struct node *lifts, struct entry *entry)
{
    VEC(const struct lift *) list = { 0 };
    for (const struct node *node = lifts->child; node; node = node->next)
        list.room++;
    list.at = NEW_MANY(place->club->arena, const struct lift *, list.room);
    for (const struct node *node = lifts->child; node; node = node->next) {
        const struct lift *lift = lift_of_node(place, node);
        if (lift)
            vec_add(place->club->arena, &list, lift);
    }
    entry->lifts = list.at;
    entry->lift_count = list.count;
}

/* A drop or `same` needs a set before it; which one it is may differ from week to week. */
static void check_order(const struct place *place, const struct group *groups, int count)
{
    bool working = false;
    for (int i = 0; i < count; i++) {
        const struct group *group = &groups[i];
        bool hangs = group->load_kind == LOAD_DROP || group->load_kind == LOAD_SAME;
        if (hangs && !working && group->role != ROLE_WARM_UP) {
            struct place there = *place;
            there.origin = group->origin;
            struct finding *finding = place_finding(&there, KIND_NO_TOP, group->load_at, "there is no set before this one to %s",
                                                    group->load_kind == LOAD_DROP ? "drop from" : "take the load of");
            diag_help(place->club->findings, finding, "write the heavier sets first, `top 1 x 1 at rpe 8 then back-off 4 x 5 drop 15%%`, or say a load");
        }
        working |= group->role != ROLE_WARM_UP;
    }
}

static void entry_more_set(struct club *club, struct entry *entry, const struct entry_more *more)
{
    if (!more->rounds && !more->superset_minutes && !more->title && !more->note_count)
        return;
    struct entry_more *own = NEW(club->arena, struct entry_more);
    *own = *more;
    entry->more = own;
}

static struct group *entry_make_new(const struct place *outer, const struct node *node, struct entry *entry)
{
    struct club *club = outer->club;
    struct scope scope = { .frame = outer->frame, .up = outer->scope, .is_entry = true };
    struct place place = *outer;
    const struct node *lifts = node_child(node, NODE_LIFTS);
    VEC(struct group) groups = { .room = children_of(node, NODE_GROUP) }; /* more only with schemes */
    groups.at = NEW_MANY(club->arena, struct group, groups.room);
    struct entry_more more = { 0 };
    *entry = (struct entry){ .at = lifts ? lifts->at : node->at, .origin = outer->origin };
    scope.let_count = lets_of(club, node->child, &scope.lets);
    scope.index = lets_index(club->arena, scope.lets, scope.let_count);
    place.scope = &scope;
    lets_check(&place, node);
    if (lifts)
        entry_lifts(&place, lifts, entry);
    if (entry->lift_count)
        place.setting.lift = entry->lifts[0]->name;
    for (const struct node *item = node->child; item; item = item->next) {
        if (item->kind == NODE_GROUP) {
            struct group group;
            group_make(&place, item, false, &group);
            vec_add(club->arena, &groups, group);
        } else if (item->kind == NODE_USE_SCHEME) {
            const struct group *made;
            int count = groups_of_scheme(&place, item->child, item->child->next, false, &made);
            for (int i = 0; i < count; i++)
                vec_add(club->arena, &groups, made[i]);
        } else if (item->kind == NODE_TITLE) {
            more.title = text_behind(&place, item->child);
        }
    }
    entry->groups = groups.at;
    entry->group_count = groups.count;
    more.notes = notes_of(&place, node, &more.note_count);
    entry_more_set(club, entry, &more);
    check_order(&place, groups.at, groups.count);
    if (!groups.count && !node_child(node, NODE_USE_SCHEME) && !node_child(node, NODE_ERROR) && lifts) {
        struct finding *finding = place_finding(&place, KIND_MISSING, entry->at, "there are no sets for this lift");
        diag_help(club->findings, finding, "write them after its name, such as `3 x 5 at rpe 7`");
    }
    return groups.at;
}

static void entry_make(const struct place *place, const struct node *written, struct entry *entry)
{
    struct plain_room room;
    int said = findings_said(place->club->findings);
    if (kept_find(place, written, entry))
        return;
    const struct node *opened = entry_open(place->file->tree, written, &room);
    struct group *groups = entry_make_new(place, opened, entry);
    if (findings_said(place->club->findings) == said)
        kept_add(place, written, opened, entry, groups);
}

struct entry_list {
    VEC(struct entry) list;
    int supersets;
};

static void superset_make(const struct place *place, const struct node *node, struct entry_list *entries)
{
    const struct node *rounds = node_child(node, NODE_ROUNDS), *minutes = node_child(node, NODE_MINUTES);
    struct value *value = rounds ? NEW(place->club->arena, struct value) : NULL;
    struct seconds_band time = { 0 };
    entries->supersets++;
    if (rounds)
        *value = value_of(place, rounds->child, &want_count);
    if (minutes)
        seconds_of(place, minutes->child, &time);
    int first = entries->list.count, count;
    const char *const *notes = notes_of(place, node, &count);
    for (const struct node *item = node_child(node, NODE_ENTRY); item; item = node_next(item, NODE_ENTRY)) {
        struct entry entry;
        entry_make(place, item, &entry);
        struct entry_more more = *entry_more(&entry);
        more.rounds = value && value->series ? value : NULL;
        more.superset_minutes = (time.low + 59) / 60;
        if (entries->list.count == first && !more.note_count)
            more.notes = notes, more.note_count = count;
        entry.superset = entries->supersets;
        entry_more_set(place->club, &entry, &more);
        vec_add(place->club->arena, &entries->list, entry);
    }
}

int entries_make(const struct place *place, const struct node *body, const struct entry **out)
{
    struct club *club = place->club;
    struct entry_list entries = { .list.room = children_of(body, NODE_ENTRY) }; /* more only with supersets */
    club->day = body->kind == NODE_DAY ? ++club->days : 0;
    entries.list.at = NEW_MANY(place->club->arena, struct entry, entries.list.room);
    for (const struct node *node = body->child; node; node = node->next) {
        if (node->kind == NODE_ENTRY) {
            struct entry entry;
            entry_make(place, node, &entry);
            vec_add(place->club->arena, &entries.list, entry);
        } else if (node->kind == NODE_SUPERSET) {
            superset_make(place, node, &entries);
        }
    }
    *out = entries.list.at;
    return entries.list.count;
}
