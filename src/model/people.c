/* Athletes and groups, from declarations and from rosters. */
#include "model/club.h"
#include "model/history.h"

#include "base/near.h"

static const struct node *amount_of(const struct node *weight)
{
    return weight->kind == NODE_WEIGHT ? weight->child : weight;
}

static struct date date_of(const struct node *parent)
{
    const struct node *on = node_child(parent, NODE_ON);
    return on && on->child ? on->child->date : (struct date){ 0 };
}

void athlete_finish(struct athlete_parts *p)
{
    struct athlete *a = p->athlete;
    a->maxes = p->maxes.at, a->max_count = p->maxes.count;
    history_sort(p->club->arena, a);
    a->bodyweights = p->bodyweights.list.at, a->bodyweight_count = p->bodyweights.list.count;
    a->curves = p->curves.at, a->curve_count = p->curves.count;
    a->efforts = p->efforts.at, a->effort_count = p->efforts.count;
    a->avoids = p->avoids.at, a->avoid_count = p->avoids.count;
    a->curve_lifts = p->curve_lifts, a->effort_lifts = p->effort_lifts, a->avoid_lifts = p->avoid_lifts;
    a->lets = p->lets.at, a->let_count = p->lets.count;
}

static bool max_bodyweight(struct athlete_parts *p, const struct node *node, struct date date, struct weight *out)
{
    const struct bodyweight_line *line = history_bodyweight(p->athlete, date);
    struct weight added = { 0 };
    if (!line) {
        struct finding *finding = place_finding(&p->place, KIND_MISSING_BODYWEIGHT, node->at,
                                                "%s has no bodyweight line, so this max cannot be added up", p->athlete->name);
        diag_help(p->club->findings, finding, "add the line `bodyweight 70 kg on 2026-12-01`, with the true number and day, to athlete %s", p->athlete->name);
        return false;
    }
    if (node->child && !weight_of(p->club, node->child, p->athlete->unit, &added))
        return false;
    out->e10 = line->weight.e10 + (node->flags & FLAG_MINUS ? -added.e10 : added.e10);
    return true;
}

/* max = load / share(reps + 10 - rpe), language.md 5.9; without an effort the set is taken as all she had. */
void max_estimate(struct athlete_parts *p, struct max_line *line)
{
    struct curve curve = history_curve(p->club->model, NULL, p->athlete, line->lift);
    line->load = ratio_div(ratio_weight(line->set_load), curve_share(&curve, history_line_reps(line)));
}

static bool max_from_set(struct athlete_parts *p, const struct node *node, struct max_line *line)
{
    const struct node *reps = node_child(node, NODE_NUMBER), *effort = node_child(node, NODE_EFFORT);
    enum unit unit;
    int whole;
    line->set_effort = dec_int(10);
    if (!reps || !whole_of(&p->place, reps, "a number of reps", 1, REPS_MOST, &whole))
        return false;
    line->set_reps = dec_int(whole);
    if (effort && !number_of(&p->place, effort, &want_effort, &line->set_effort, &unit))
        return false;
    if (effort && effort->text && !strcmp(effort->text, "rir"))
        line->set_effort.e10 = 10 * DEC_ONE - line->set_effort.e10;
    line->set_effort = history_effort(p->athlete, line->lift, line->set_effort);
    line->estimated = true;
    return true;
}

static void athlete_max(struct athlete_parts *p, const struct node *node)
{
    struct max_line line = { .date = date_of(node), .at = node->at };
    const struct node *name = node->child, *load = name ? name->next : NULL;
    struct weight weight;
    if (!load || !(line.lift = lift_named(p->club, name, NULL)))
        return;
    if (load->kind == NODE_BODYWEIGHT ? !max_bodyweight(p, load, line.date, &weight)
                                      : !weight_of(p->club, amount_of(load), p->athlete->unit, &weight))
        return;
    if (weight.e10 <= 0) {
        struct finding *finding = place_finding(&p->place, KIND_RANGE, load->at, "a max is more than nothing");
        diag_help(p->club->findings, finding, "leave the line out until there is a max");
        return;
    }
    line.load = ratio_weight(weight);
    line.set_load = weight;
    if (node->flags & FLAG_FROM) {
        if (!max_from_set(p, node, &line))
            return;
        max_estimate(p, &line);
    }
    vec_add(p->club->arena, &p->maxes, line);
}

static void athlete_bodyweight(struct athlete_parts *p, const struct node *node)
{
    struct bodyweight_line line = { .date = date_of(node), .at = node->at };
    if (!node->child || !weight_of(p->club, node->child, p->athlete->unit, &line.weight))
        return;
    if (line.weight.e10 <= 0)
        diag_help(p->club->findings, place_finding(&p->place, KIND_RANGE, node->child->at, "a bodyweight is more than nothing"),
                  "write what the scales said, or leave the line out");
    else
        vec_add(p->club->arena, &p->bodyweights.list, line);
}

struct curve_points {
    VEC(struct curve_point) list;
};

static void curve_point(struct athlete_parts *p, const struct node *point, const struct lift *lift, struct curve_points *points)
{
    struct curve_point at;
    enum unit unit;
    int reps;
    if (!whole_of(&p->place, point->child->next, "a number of reps", 2, REPS_MOST, &reps) ||
        !number_of(&p->place, point->child->next->next, &want_percent, &at.percent, &unit))
        return;
    if (at.percent.e10 <= 0 || at.percent.e10 > 100 * DEC_ONE) {
        struct finding *finding = place_finding(&p->place, KIND_RANGE, point->child->next->next->at,
                                                "a point of a curve lies above 0 and up to 100 per cent");
        diag_help(p->club->findings, finding, "write it as `curve %s 8 reps at 77%%`", lift->name);
        return;
    }
    at.reps = ratio_int(reps);
    vec_add(p->club->arena, &points->list, at);
}

/* The lines of each lift, the lifts in the order in which they are first written. */
static void athlete_curves(struct athlete_parts *p, const struct node *body)
{
    struct arena *arena = p->club->arena;
    struct numbers lifts = { .arena = arena };
    VEC(struct curve_lines { const struct lift *lift; VEC(const struct node *) list; }) lines = { 0 };
    for (const struct node *node = node_child(body, NODE_CURVE); node; node = node_next(node, NODE_CURVE)) {
        const struct lift *lift = lift_named(p->club, node->child, NULL);
        int at = lift ? numbers_give(&lifts, lift, 0) : -1;
        if (lift && at == lines.count)
            vec_add(arena, &lines, (struct curve_lines){ .lift = lift });
        if (lift)
            vec_add(arena, &lines.at[at].list, node);
    }
    for (int i = 0; i < lines.count; i++) {
        struct curve_points points = { 0 };
        for (int j = 0; j < lines.at[i].list.count; j++)
            curve_point(p, lines.at[i].list.at[j], lines.at[i].lift, &points);
        if (!points.list.count)
            continue;
        numbers_give(&p->curve_lifts, lines.at[i].lift, 0);
        vec_add(arena, &p->curves, ((struct own_curve){ lines.at[i].lift, curve_fit(points.list.at, points.list.count), lines.at[i].list.at[0]->at }));
    }
}

static void athlete_effort(struct athlete_parts *p, const struct node *node)
{
    struct effort_line line = { .at = node->at };
    enum unit unit;
    const struct node *rated = node->child->next, *meant = rated ? rated->next : NULL;
    if (!meant || !(line.lift = lift_named(p->club, node->child, NULL)) ||
        !number_of(&p->place, rated, &want_effort, &line.rated, &unit) || !number_of(&p->place, meant, &want_effort, &line.meant, &unit))
        return;
    int first = numbers_give(&p->effort_lifts, line.lift, 0);
    if (first < p->efforts.count) {
        struct finding *finding = place_finding(&p->place, KIND_REPEATED, node->at, "a second effort line for %s", line.lift->name);
        diag_related(p->club->findings, finding, p->efforts.at[first].at, "the first one is here");
        diag_help(p->club->findings, finding, "keep one: all ratings of a lift move by one difference");
        return;
    }
    vec_add(p->club->arena, &p->efforts, line);
}

static void athlete_avoid(struct athlete_parts *p, const struct node *node)
{
    struct avoid_line line = { .at = node->at };
    const struct node *use = node->child->next && node->child->next->kind == NODE_NAME ? node->child->next : NULL;
    const struct node *because = node_child(node, NODE_BECAUSE);
    if (!(line.lift = lift_named(p->club, node->child, NULL)) || (use && !(line.use = lift_named(p->club, use, NULL))))
        return;
    int first = numbers_give(&p->avoid_lifts, line.lift, 0);
    if (first < p->avoids.count) {
        struct finding *finding = place_finding(&p->place, KIND_REPEATED, node->child->at, "%s is avoided twice", line.lift->name);
        diag_related(p->club->findings, finding, p->avoids.at[first].at, "the first line is here");
        diag_help(p->club->findings, finding, "keep the one you mean");
        return;
    }
    line.because = because ? text_behind(&p->place, because->child) : NULL;
    vec_add(p->club->arena, &p->avoids, line);
}

static void athlete_gym(struct athlete_parts *p, const struct node *node)
{
    struct decl *gym = names_use(p->club, SPACE_GYM, node->child->text, node->child->at, NULL);
    if (gym) {
        p->athlete->gym = gym_of(p->club, gym);
        p->athlete->has_gym = true;
    }
}

static void athlete_line(struct athlete_parts *p, const struct node *node)
{
    switch (node->kind) {
    case NODE_TITLE: p->athlete->title = text_behind(&p->place, node->child); break;
    case NODE_GYM_REF: athlete_gym(p, node); break;
    case NODE_BODYWEIGHT_LINE: athlete_bodyweight(p, node); break;
    case NODE_EFFORT_LINE: athlete_effort(p, node); break;
    case NODE_AVOID: athlete_avoid(p, node); break;
    case NODE_MODEL: p->athlete->model = curve_named_by(&p->place, node->child); break;
    case NODE_LET: vec_add(p->club->arena, &p->lets, node); break;
    default: break;
    }
}

static void repeated_lines(struct athlete_parts *p, const struct node *body)
{
    static const enum node_kind once[] = { NODE_TITLE, NODE_GYM_REF, NODE_MODEL };
    for (size_t i = 0; i < sizeof once / sizeof *once; i++) {
        const struct node *first = node_child(body, once[i]);
        const struct node *again = first ? node_next(first, once[i]) : NULL;
        if (!again)
            continue;
        struct finding *finding = place_finding(&p->place, KIND_REPEATED, again->at, "this is said twice for %s", p->athlete->name);
        diag_related(p->club->findings, finding, first->at, "the first time is here");
        diag_help(p->club->findings, finding, "keep the line that is right");
    }
}

struct athlete_parts athlete_begin(struct club *club, struct decl *decl, enum weight_unit unit)
{
    struct athlete *athlete = NEW(club->arena, struct athlete);
    *athlete = (struct athlete){ .name = decl->name, .at = decl->at, .unit = unit };
    decl->made = athlete;
    return (struct athlete_parts){ .club = club, .athlete = athlete, .effort_lifts.arena = club->arena, .avoid_lifts.arena = club->arena,
                                   .curve_lifts.arena = club->arena,
                                   .place = { .club = club, .file = decl->file, .setting.athlete = decl->name } };
}

static void athlete_from_tree(struct club *club, struct decl *decl)
{
    struct athlete_parts p = athlete_begin(club, decl, decl->file->unit);
    repeated_lines(&p, decl->node);
    lets_check(&p.place, decl->node);
    for (const struct node *node = decl->node->child; node; node = node->next)
        athlete_line(&p, node);
    diaries_bodyweights(club, decl, &p.bodyweights);
    athlete_curves(&p, decl->node);
    athlete_finish(&p); /* maxes are worked out with what stands in her other lines */
    for (const struct node *node = node_child(decl->node, NODE_MAX); node; node = node_next(node, NODE_MAX))
        athlete_max(&p, node);
    p.athlete->notes = notes_of(&p.place, decl->node, &p.athlete->note_count);
    if (!p.athlete->gym)
        p.athlete->gym = gym_default(club, p.athlete->unit);
    athlete_finish(&p);
}

/* ---- groups ---- */

struct people_group *people_group_of(struct club *club, struct decl *decl)
{
    if (!decl->made) {
        struct people_group *group = NEW(club->arena, struct people_group);
        group->name = decl->name;
        decl->made = group;
    }
    return decl->made;
}

void group_add(struct club *club, struct people_group *group, struct decl *member)
{
    group->has.arena = club->arena;
    if (numbers_give(&group->has, member, 0) == group->members.count)
        vec_add(club->arena, &group->members, member);
}

static void group_fill(struct club *club, struct decl *decl);

static void group_take(struct club *club, struct people_group *group, struct decl *member, struct span at)
{
    if (club->nested < NESTED_MOST)
        group_fill(club, member);
    const struct people_group *inner = people_group_of(club, member);
    if (club->nested == NESTED_MOST || inner->depth == NESTED_MOST) {
        struct finding *finding = diag_add(club->findings, KIND_LIMIT, at, "groups stand more than %d deep in one another here", NESTED_MOST);
        diag_help(club->findings, finding, "name the lifters themselves, or a group further in");
        return;
    }
    for (int i = 0; i < inner->members.count; i++)
        group_add(club, group, inner->members.at[i]);
    group->depth = inner->depth < group->depth ? group->depth : inner->depth + 1;
}

static void group_fill(struct club *club, struct decl *decl)
{
    struct people_group *group = people_group_of(club, decl);
    if (group->depth || !decl->node)
        return;
    group->depth = 1;
    club->nested++;
    decl->making = true;
    const struct node *people = node_child(decl->node, NODE_PEOPLE);
    for (const struct node *name = people ? people->child : NULL; name; name = name->next) {
        struct decl *member = names_use(club, SPACE_PERSON, name->text, name->at, NULL);
        if (!member)
            continue;
        if (!member->is_group) {
            group_add(club, group, member);
        } else if (member->making) {
            struct finding *finding = diag_add(club->findings, KIND_CYCLE, name->at, "group %s contains itself", member->name);
            diag_help(club->findings, finding, "take it out of one of the groups");
        } else {
            group_take(club, group, member, name->at);
        }
    }
    decl->making = false;
    club->nested--;
}

void people_number(struct club *club)
{
    struct model *model = club->model;
    const struct athlete **athletes = NEW_MANY(model->arena, const struct athlete *, club->decls[SPACE_PERSON].count + 1);
    model->athletes = athletes, model->athlete_count = 0;
    for (int i = 0; i < club->decls[SPACE_PERSON].count; i++) {
        const struct decl *decl = club->decls[SPACE_PERSON].at[i];
        struct athlete *athlete = decl->is_group ? NULL : decl->made;
        if (!athlete)
            continue;
        athlete->order = model->athlete_count;
        athletes[model->athlete_count++] = athlete;
    }
}

void people_make_all(struct club *club)
{
    if (!rosters_may_wait(club))
        rosters_take(club);
    diaries_collect(club);
    /* Declared athletes were named first, but a roster may bring groups they stand in. */
    for (int i = 0; i < club->decls[SPACE_PERSON].count; i++) {
        struct decl *decl = club->decls[SPACE_PERSON].at[i];
        if (decl->node && !decl->is_group)
            athlete_from_tree(club, decl);
    }
    for (int i = 0; i < club->decls[SPACE_PERSON].count; i++)
        if (club->decls[SPACE_PERSON].at[i]->is_group)
            group_fill(club, club->decls[SPACE_PERSON].at[i]);
    people_number(club);
}

/* ---- lists of people ---- */

const struct people people_nobody = { 0 };

struct people_set {
    struct club *club;
    VEC(const struct athlete *) list;
    struct numbers has; /* of the list, in its order */
};

static void people_add(struct people_set *set, const struct decl *decl)
{
    const struct athlete *athlete = decl->made;
    if (athlete && numbers_give(&set->has, athlete, 0) == set->list.count)
        vec_add(set->club->arena, &set->list, athlete);
}

/* One list for all who ask: it grows when those who wait are made. */
static const struct people *people_all(struct club *club)
{
    if (!club->everyone) {
        club->everyone = NEW(club->model->arena, struct people);
        *club->everyone = (struct people){ club->model->athletes, club->model->athlete_count, true };
    }
    return club->everyone;
}

const struct people *people_list(struct club *club, const struct node *names, const struct origin *origin)
{
    if (names->child && !names->child->next && names->child->text == club->all)
        return people_all(club);
    struct people_set set = { .club = club, .has.arena = club->arena };
    for (const struct node *name = names->child; name; name = name->next) {
        if (name->text == club->all) {
            for (int i = 0; i < club->decls[SPACE_PERSON].count; i++)
                if (!club->decls[SPACE_PERSON].at[i]->is_group)
                    people_add(&set, club->decls[SPACE_PERSON].at[i]);
            continue;
        }
        struct decl *decl = names_use(club, SPACE_PERSON, name->text, name->at, origin);
        if (!decl)
            continue;
        const struct people_group *group = decl->is_group ? decl->made : NULL;
        for (int i = 0; group && i < group->members.count; i++)
            people_add(&set, group->members.at[i]);
        if (!group)
            people_add(&set, decl);
    }
    struct people *people = NEW(club->arena, struct people);
    *people = (struct people){ set.list.at, set.list.count, false };
    return people;
}

int people_count(const struct model *model, const struct people *people)
{
    return people->count + (people->everyone ? model->waiting_count : 0);
}
