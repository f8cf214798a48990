/* Lifters of rosters: made with all others; or, where nobody but `all` means them, each when she is planned. */
#include "model/club.h"
#include "model/history.h"

static void roster_max(struct athlete_parts *p, const struct roster_row *row, enum weight_unit unit)
{
    struct max_line line = { .date = row->date, .at = row->max_at };
    struct node name = { .kind = NODE_NAME, .at = row->lift.at, .text = row->lift.text };
    if (!row->lift.text || !row->has_max || !(line.lift = lift_named(p->club, &name, NULL)))
        return;
    if (!weight_from(row->max, unit, &line.set_load) || line.set_load.e10 <= 0) {
        struct finding *finding =
            place_finding(&p->place, KIND_ROSTER, row->max_at,
                          row->max.e10 > 0 ? "a weight in lb has at most two decimals" : "a max is more than nothing");
        diag_help(p->club->findings, finding,
                  row->max.e10 > 0 ? "write two at most, such as 72.25" : "leave the cell empty until there is a max");
        return;
    }
    line.load = ratio_weight(line.set_load);
    line.estimated = row->has_reps;
    line.set_reps = row->reps;
    line.set_effort = row->has_rpe ? row->rpe : dec_int(10);
    if (row->has_reps)
        max_estimate(p, &line);
    vec_add(p->club->arena, &p->maxes, line);
}

static void roster_group(struct club *club, const struct roster_row *row, struct decl *athlete,
                         const struct file_unit *file)
{
    struct decl *decl = names_find(club, SPACE_PERSON, row->group.text);
    if (!decl && (decl = names_declare(club, SPACE_PERSON, row->group.text, row->group.at, NULL, file)))
        decl->is_group = true;
    if (!decl)
        return;
    if (decl->is_group) {
        group_add(club, people_group_of(club, decl), athlete);
        return;
    }
    struct finding *finding =
        diag_add(club->findings, KIND_ROSTER, row->group.at, "%s is an athlete, not a group", decl->name);
    diag_related(club->findings, finding, decl->at, "%s is declared here", decl->name);
    diag_help(club->findings, finding, "give the group a name of its own");
}

static enum weight_unit unit_of(const struct roster_row *row, enum weight_unit file)
{
    return row->has_unit ? row->unit : file;
}

/* `file`: the unit of the file that names the roster. */
static void roster_row_facts(struct athlete_parts *p, const struct roster_row *row, enum weight_unit file)
{
    enum weight_unit unit = unit_of(row, file);
    if (row->title.text && !p->athlete->title)
        p->athlete->title = row->title.text;
    if (row->gym.text && !p->athlete->has_gym) {
        struct decl *gym = names_use(p->club, SPACE_GYM, row->gym.text, row->gym.at, NULL);
        if (gym)
            p->athlete->gym = gym_of(p->club, gym), p->athlete->has_gym = true;
    }
    if (row->has_bodyweight) {
        struct bodyweight_line line = { .date = row->date, .at = row->bodyweight_at };
        if (weight_from(row->bodyweight, unit, &line.weight) && line.weight.e10 > 0)
            vec_add(p->club->arena, &p->bodyweights.list, line);
    }
    roster_max(p, row, unit);
}

static void roster_finish(struct athlete_parts *p)
{
    if (!p->athlete->gym)
        p->athlete->gym = gym_default(p->club, p->athlete->unit);
    athlete_finish(p);
}

/* ---- all of a roster ---- */

struct gathering {
    struct club *club;
    struct arena *scratch;
    const struct roster_row **rows;
    int count;
};

static void row_keep(void *context, const struct roster_row *row)
{
    struct gathering *g = context;
    struct roster_row *kept = NEW(g->scratch, struct roster_row);
    *kept = *row;
    kept->athlete.text = intern(g->club->interner, row->athlete.text, strlen(row->athlete.text));
    if (row->title.text)
        kept->title.text = arena_copy(g->club->arena, row->title.text, strlen(row->title.text));
    g->rows[g->count++] = kept;
}

/* An athlete's rows may stand apart: all of them are gathered at the first one. `next` chains a roster's rows by athlete. */
static void roster_athlete(struct club *club, const struct roster_file *file, const struct gathering *g, int first,
                           const int *next, struct decl *decl)
{
    const struct roster_row *row = g->rows[first];
    struct athlete_parts p = athlete_begin(club, decl, unit_of(row, file->unit));
    for (int i = first; i >= 0; i = next[i])
        roster_row_facts(&p, g->rows[i], file->unit);
    for (int i = first; i >= 0; i = next[i])
        if (g->rows[i]->group.text)
            roster_group(club, g->rows[i], decl, decl->file);
    roster_finish(&p);
}

/* Which row goes on with the same athlete; -1: none. */
static const int *roster_chain(const struct gathering *g, bool *is_first)
{
    struct numbers athletes = { .arena = g->scratch };
    int *last = NEW_MANY(g->scratch, int, g->count + 1), *next = NEW_MANY(g->scratch, int, g->count + 1);
    for (int i = 0; i < g->count; i++) {
        int known = athletes.count, athlete = numbers_give(&athletes, g->rows[i]->athlete.text, 0);
        is_first[i] = athlete == known;
        if (!is_first[i])
            next[last[athlete]] = i;
        next[i] = -1;
        last[athlete] = i;
    }
    return next;
}

static void roster_take(struct club *club, const struct roster_file *file)
{
    struct gathering g = { .club = club, .scratch = club->loaded.scratch };
    g.rows = NEW_MANY(g.scratch, const struct roster_row *, file->roster.row_count + 1);
    bool *is_first = NEW_MANY(g.scratch, bool, file->roster.row_count + 1);
    roster_rows(&file->roster, g.scratch, row_keep, &g);
    const int *next = roster_chain(&g, is_first);
    const struct file_unit *by = club->loaded.files;
    for (int i = 0; i < g.count; i++) {
        const struct roster_row *row = g.rows[i];
        if (!is_first[i])
            continue;
        struct decl *decl = names_declare(club, SPACE_PERSON, row->athlete.text, row->athlete.at, NULL, by);
        if (decl)
            roster_athlete(club, file, &g, i, next, decl);
    }
}

void rosters_take(struct club *club)
{
    for (int i = 0; i < club->loaded.roster_count; i++)
        roster_take(club, &club->loaded.rosters[i]);
}

/* ---- those who wait ---- */

/* Whether the files name people whom only the roster can have brought, or ask for more of everyone than blocks do: an adjust looks for
 * each, and a season. */
static bool names_others(const struct club *club, const struct node *node)
{
    for (; node; node = node->next) {
        const struct node *adjusted = node->kind == NODE_ADJUST ? node_child(node, NODE_PEOPLE) : NULL;
        for (const struct node *name = adjusted ? adjusted->child : NULL; name; name = name->next)
            if (name->text == club->all)
                return true;
        if (node->kind == NODE_SEASON)
            return true;
        const struct node *name = node->kind == NODE_PEOPLE || node->kind == NODE_DIARY ? node->child : NULL;
        for (; name && name->kind == NODE_NAME; name = name->next)
            if (name->text != club->all && !names_find(club, SPACE_PERSON, name->text))
                return true;
        if (names_others(club, node->child))
            return true;
    }
    return false;
}

static bool all_known(const struct club *club, enum space space, const struct roster_names *names)
{
    for (int i = 0; i < names->count; i++)
        if (!names_find(club, space, names->at[i].text))
            return false;
    return true;
}

static bool is_taken(const struct club *club, const struct roster *roster)
{
    size_t length;
    for (int i = 0; i < roster->lifter_count; i++) {
        const char *name = roster_lifter_name(roster, i, &length), *known = interned(club->interner, name, length);
        if (known && (known == club->all || names_find(club, SPACE_PERSON, known)))
            return true;
    }
    return false;
}

static void lifts_and_gyms_use(struct club *club, const struct roster *roster)
{
    for (int i = 0; i < roster->lifts.count; i++)
        names_use(club, SPACE_LIFT, roster->lifts.at[i].text, roster->lifts.at[i].at, NULL);
    for (int i = 0; i < roster->gyms.count; i++)
        names_use(club, SPACE_GYM, roster->gyms.at[i].text, roster->gyms.at[i].at, NULL);
}

bool rosters_may_wait(struct club *club)
{
    const struct roster *roster = club->loaded.roster_count == 1 ? &club->loaded.rosters[0].roster : NULL;
    if (!roster || !roster->is_plain || !all_known(club, SPACE_LIFT, &roster->lifts) ||
        !all_known(club, SPACE_GYM, &roster->gyms) || is_taken(club, roster))
        return false;
    for (int i = 0; i < club->loaded.file_count; i++) {
        const struct node *root = club->loaded.files[i].tree->root;
        if (names_others(club, root))
            return false;
    }
    lifts_and_gyms_use(club, roster);
    club->model->waiting_count = roster->lifter_count;
    return true;
}

struct making {
    struct athlete_parts parts;
    struct decl decl;
    enum weight_unit unit; /* of the file */
};

static void row_facts(void *context, const struct roster_row *row)
{
    struct making *m = context;
    struct club *club = m->parts.club;
    if (!m->parts.athlete) {
        m->decl = (struct decl){ .name = arena_copy(club->arena, row->athlete.text, strlen(row->athlete.text)),
                                 .at = row->athlete.at,
                                 .file = club->loaded.files,
                                 .space = SPACE_PERSON };
        m->parts = athlete_begin(club, &m->decl, unit_of(row, m->unit));
    }
    roster_row_facts(&m->parts, row, m->unit);
    if (row->title.text && m->parts.athlete->title == row->title.text)
        m->parts.athlete->title = arena_copy(club->arena, row->title.text, strlen(row->title.text));
}

const struct athlete *model_waiting(const struct model *model, int index, struct arena *arena)
{
    struct club *club = model->club;
    struct arena *kept = club->arena;
    struct making m = { .parts.club = club, .unit = club->loaded.rosters->unit };
    club->arena = arena;
    roster_lifter(&club->loaded.rosters->roster, index, arena, row_facts, &m);
    roster_finish(&m.parts);
    m.parts.athlete->order = model->athlete_count + index;
    club->arena = kept;
    return m.parts.athlete;
}

void model_gather(struct model *model)
{
    if (!model->waiting_count)
        return;
    struct club *club = model->club;
    struct arena *kept = club->arena;
    model->waiting_count = 0;
    club->arena = model->arena;
    rosters_take(club);
    people_number(club);
    if (club->everyone)
        club->everyone->at = model->athletes, club->everyone->count = model->athlete_count;
    club->arena = kept;
}
