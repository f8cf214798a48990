/* Diaries: what was done, as written. Which session of the plan it belongs to, and what it says about the max, comes later. */
#include "model/club.h"

#include <stdlib.h>

struct diarist {
    struct club *club;
    struct place place;
    enum weight_unit unit; /* of the diary's file */
};

static const struct want want_done_load = { "the load that was lifted", "90 kg",
                                            1u << UNIT_NONE | 1u << UNIT_KILO | 1u << UNIT_POUND, false, false },
                         want_done_reps = { "the reps that were done", "5, 5, 4",
                                            1u << UNIT_NONE | 1u << UNIT_SECONDS | 1u << UNIT_MINUTES |
                                                1u << UNIT_METRES,
                                            false, false };

/* ---- lists: a value for each set ---- */

struct done_list {
    const struct band *at;
    int count; /* 0: none was written, or it could not be read */
    enum unit unit;
    bool is_rir;
    struct span span;
};

static void range_say(struct diarist *d, struct span at, const char *says, const char *help)
{
    diag_help(d->club->findings, place_finding(&d->place, KIND_RANGE, at, "%s", says), "%s", help);
}

/* Numbers that stay the same in all weeks, and no bands: what was done is known. */
static bool list_read(struct diarist *d, const struct node *node, const struct want *want, struct done_list *out)
{
    struct value value = value_of(&d->place, node, want);
    *out = (struct done_list){ .unit = value.unit, .span = node->at };
    if (!value.series)
        return false;
    if (value.series->kind != SERIES_LIST || value.series->count != 1) {
        range_say(d, node->at, "a diary says what was done on one day; this changes from week to week",
                  "write a number for each set, with commas between them: 90 kg x 5, 5, 4 rpe 7, 7.5, 9");
        return false;
    }
    out->at = value.series->weeks[0].sets;
    out->count = value.series->weeks[0].count;
    for (int i = 0; i < out->count; i++)
        if (out->at[i].low.e10 != out->at[i].high.e10) {
            range_say(d, node->at, "a diary says what was done, and this is a range", "write the number it came to");
            return false;
        }
    return true;
}

static bool effort_read(struct diarist *d, const struct node *node, struct done_list *out)
{
    if (!list_read(d, node, &want_effort, out))
        return false;
    out->is_rir = node->text && !strcmp(node->text, "rir");
    return true;
}

static struct dec effort_at(const struct done_list *list, int index)
{
    struct dec effort = list->at[index].low;
    return !list->is_rir ? effort : (struct dec){ 10 * DEC_ONE - effort.e10 };
}

/* The value of a set: one for all, or one each; of a rating or a speed one alone is that of the last. */
static int place_in(const struct done_list *list, int set, int sets, bool last_alone)
{
    if (list->count == sets)
        return set;
    return list->count == 1 && (!last_alone || set == sets - 1) ? 0 : -1;
}

static bool length_fits(struct diarist *d, const struct done_list *list, const struct done_list *reps, const char *what)
{
    if (list->count <= 1 || list->count == reps->count)
        return true;
    struct finding *finding = place_finding(&d->place, KIND_LIST_LENGTH, list->span, "%d %s for %d set%s", list->count,
                                            what, reps->count, reps->count == 1 ? "" : "s");
    diag_help(d->club->findings, finding, "list one for each set that was done: 50, 50, 47.5 kg x 4, 4, 4 rpe 7, 7, 8");
    return false;
}

/* ---- a part: loads x reps, effort, speed ---- */

static bool load_set(struct diarist *d, const struct done_list *loads, int index, struct done_set *set)
{
    enum weight_unit unit = loads->unit == UNIT_NONE ? d->unit : loads->unit == UNIT_POUND ? UNIT_LB : UNIT_KG;
    set->bare = loads->unit == UNIT_NONE;
    if (weight_from(loads->at[index].low, unit, &set->load))
        return true;
    diag_help(d->club->findings,
              place_finding(&d->place, KIND_NUMBER, loads->span, "a weight in lb has at most two decimals"),
              "write two at most, such as 72.25");
    return false;
}

static bool reps_set(struct diarist *d, const struct done_list *reps, int index, struct done_set *set)
{
    int64_t most = reps->unit == UNIT_NONE ? REPS_MOST : 86400, scale = reps->unit == UNIT_MINUTES ? 60 : 1;
    struct dec number = reps->at[index].low;
    if (!dec_is_multiple((struct dec){ number.e10 * scale }, dec_int(1)) || number.e10 > most * DEC_ONE) {
        range_say(d, reps->span,
                  arena_format(d->club->arena, "%s are no reps that can be done", dec_text(d->club->arena, number)),
                  "write a whole number for each set, 0 for one that failed: 90 kg x 5, 5, 0");
        return false;
    }
    set->reps = (int)(number.e10 * scale / DEC_ONE);
    set->counted = reps->unit == UNIT_NONE;
    return true;
}

static bool loads_read(struct diarist *d, const struct node *node, const struct lift *lift, struct done_list *loads,
                       bool *minus)
{
    static const struct band nothing = { { 0 }, { 0 } };
    *minus = false;
    if (node->kind != NODE_BODYWEIGHT)
        return list_read(d, node, &want_done_load, loads);
    if (lift->loads != LOADS_BODYWEIGHT) {
        struct finding *finding =
            place_finding(&d->place, KIND_MISPLACED, node->at, "%s does not load bodyweight", lift->name);
        diag_related(d->club->findings, finding, lift->at, "%s is declared here", lift->name);
        diag_help(d->club->findings, finding, "write the weight that was lifted, such as 40 kg");
        return false;
    }
    *loads = (struct done_list){ &nothing, 1, UNIT_KILO, false, node->at };
    *minus = node->flags & FLAG_MINUS;
    return !node->child || list_read(d, node->child, &want_done_load, loads);
}

static bool part_read(struct diarist *d, const struct node *node, const struct lift *lift, struct done_part *out)
{
    const struct node *load_node = node->child, *reps_node = load_node ? load_node->next : NULL;
    const struct node *effort = node_child(node, NODE_EFFORT), *speed = node_child(node, NODE_SPEED);
    struct done_list loads, reps, efforts = { 0 }, speeds = { 0 };
    bool minus;
    if (!reps_node || !loads_read(d, load_node, lift, &loads, &minus) ||
        !list_read(d, reps_node, &want_done_reps, &reps) || (effort && !effort_read(d, effort, &efforts)) ||
        (speed && !list_read(d, speed->child, &want_speed, &speeds)) || !length_fits(d, &loads, &reps, "loads") ||
        !length_fits(d, &efforts, &reps, "efforts") || !length_fits(d, &speeds, &reps, "speeds"))
        return false;
    struct done_set *sets = NEW_MANY(d->club->arena, struct done_set, reps.count);
    for (int i = 0; i < reps.count; i++) {
        struct done_set *set = &sets[i];
        int rated = place_in(&efforts, i, reps.count, true), timed = place_in(&speeds, i, reps.count, true);
        set->at = loads.count > 1 ? span_join(loads.span, reps.span) : reps.span;
        if (!load_set(d, &loads, place_in(&loads, i, reps.count, false), set) || !reps_set(d, &reps, i, set))
            return false;
        if (minus)
            set->load.e10 = -set->load.e10;
        set->has_effort = rated >= 0;
        set->has_speed = timed >= 0;
        if (set->has_effort)
            set->effort = effort_at(&efforts, rated);
        if (set->has_speed)
            set->speed = speeds.at[timed].low;
    }
    *out = (struct done_part){ .sets = sets, .set_count = reps.count, .at = node->at };
    return true;
}

/* ---- a lift ---- */

static void as_planned_read(struct diarist *d, const struct node *node, struct done_lift *out)
{
    const struct node *effort = node_child(node, NODE_EFFORT), *speed = node_child(node, NODE_SPEED);
    struct done_list list;
    enum unit unit;
    out->how = DONE_AS_PLANNED;
    if (effort && effort_read(d, effort, &list)) {
        out->has_effort = list.count == 1;
        if (out->has_effort)
            out->effort = effort_at(&list, 0);
        else
            range_say(d, effort->at, "`as planned` has one effort, that of the last set",
                      "write the last one, or what was done: 90 kg x 5, 5, 5 rpe 7, 7, 8");
    }
    out->has_speed = speed && number_of(&d->place, speed->child, &want_speed, &out->speed, &unit);
}

static bool lift_read(struct diarist *d, const struct node *node, struct done_lift *out)
{
    struct done_lift lift = { .at = node->child->at };
    VEC(struct done_part) parts = { 0 };
    d->place.setting.lift = NULL;
    if (!(lift.lift = lift_of_node(&d->place, node->child)))
        return false;
    d->place.setting.lift = lift.lift->name;
    for (const struct node *part = node->child->next; part; part = part->next) {
        struct done_part done;
        if (part->kind == NODE_AS_PLANNED)
            as_planned_read(d, part, &lift);
        else if (part->kind == NODE_SKIPPED)
            lift.how = DONE_SKIPPED, lift.because = part->child ? text_behind(&d->place, part->child->child) : NULL;
        else if (part->kind == NODE_PART && part_read(d, part, lift.lift, &done))
            vec_add(d->club->arena, &parts, done);
    }
    lift.parts = parts.at;
    lift.part_count = parts.count;
    *out = lift;
    return lift.how != DONE_SETS || parts.count;
}

static void lift_twice(struct diarist *d, const struct done_lift *first, const struct done_lift *again)
{
    struct finding *finding =
        place_finding(&d->place, KIND_REPEATED, again->at, "%s stands twice in this session", again->lift->name);
    diag_related(d->club->findings, finding, first->at, "the first time is here");
    diag_help(d->club->findings, finding, "write it once, its set groups in order with `then` between them");
}

/* ---- a session ---- */

static void session_effort(struct diarist *d, const struct node *node, struct diary_session *session)
{
    struct seconds_band seconds;
    enum unit unit;
    const struct node *effort = node_child(node, NODE_EFFORT), *minutes = effort ? effort->next : NULL;
    if (session->has_effort) {
        range_say(d, node->at, "the session has its effort already", "keep one `session` line");
        return;
    }
    if (!effort || !number_of(&d->place, effort, &want_effort, &session->effort, &unit))
        return;
    if (effort->text && !strcmp(effort->text, "rir"))
        session->effort.e10 = 10 * DEC_ONE - session->effort.e10;
    session->has_effort = true;
    if (minutes && seconds_of(&d->place, minutes, &seconds))
        session->minutes = (seconds.high + 30) / 60;
}

static bool lets_in(const struct node *node)
{
    for (const struct node *allow = node_child(node, NODE_ALLOW); allow; allow = node_next(allow, NODE_ALLOW))
        if (!strcmp(allow->child->text, "unlikely-result"))
            return true;
    return false;
}

static int week_read(struct diarist *d, const struct node *weeks)
{
    bool ok = true;
    struct week_set set = weeks_of(&d->place, weeks, WEEKS_MOST, &ok);
    int found = 0, count = 0;
    for (int week = 1; week <= WEEKS_MOST && ok; week++)
        if (week_in(&set, week))
            found = week, count++;
    if (ok && count != 1)
        range_say(d, weeks->at, "a session is trained in one week", "write the one it belongs to: week 2");
    return count == 1 ? found : 0;
}

static void session_lifts(struct diarist *d, const struct node *node, struct diary_session *session)
{
    VEC(struct done_lift) lifts = { 0 };
    for (const struct node *done = node_child(node, NODE_DONE); done; done = node_next(done, NODE_DONE)) {
        struct done_lift lift;
        const struct done_lift *first = NULL;
        if (!lift_read(d, done, &lift))
            continue;
        for (int i = 0; i < lifts.count && !first; i++)
            first = lifts.at[i].lift == lift.lift ? &lifts.at[i] : NULL;
        if (first)
            lift_twice(d, first, &lift);
        else
            vec_add(d->club->arena, &lifts, lift);
    }
    d->place.setting.lift = NULL;
    session->lifts = lifts.at;
    session->lift_count = lifts.count;
}

static struct diary_session session_read(struct diarist *d, const struct node *node)
{
    const struct node *label = node->child->next, *because = node_child(node, NODE_BECAUSE),
                      *weeks = node_child(node, NODE_WEEKS);
    struct diary_session session = { .date = node->child->date,
                                     .at = node->child->at,
                                     .missed = node->kind == NODE_MISSED };
    if (label && (label->kind == NODE_NAME || label->kind == NODE_NUMBER || label->kind == NODE_VAR))
        session.label = d->place.setting.day = label_of(&d->place, label);
    if (weeks)
        session.week = week_read(d, weeks);
    if (because)
        session.because = text_behind(&d->place, because->child);
    if (!session.missed)
        session_lifts(d, node, &session);
    for (const struct node *line = node_child(node, NODE_SESSION_EFFORT); line;
         line = node_next(line, NODE_SESSION_EFFORT))
        session_effort(d, line, &session);
    session.lets_in = lets_in(node);
    session.notes = notes_of(&d->place, node, &session.note_count);
    d->place.setting.day = NULL;
    return session;
}

/* ---- an athlete's diaries ---- */

static struct diarist diarist_of(struct club *club, const struct decl *person, const struct diary_node *diary)
{
    return (struct diarist){ .club = club,
                             .unit = diary->file->unit,
                             .place = { .club = club, .file = diary->file, .setting.athlete = person->name } };
}

void diaries_collect(struct club *club)
{
    for (int i = 0; i < club->loaded.file_count; i++)
        for (const struct node *node = node_child(club->loaded.files[i].tree->root, NODE_DIARY); node;
             node = node_next(node, NODE_DIARY)) {
            struct decl *person = names_use(club, SPACE_PERSON, node->child->text, node->child->at, NULL);
            if (!person)
                continue;
            if (person->is_group) {
                struct finding *finding =
                    diag_add(club->findings, KIND_DIARY, node->child->at,
                             "%s is a group, and each lifter has a diary of their own", person->name);
                diag_related(club->findings, finding, person->at, "the group is here");
                diag_help(club->findings, finding, "write one `diary` for each athlete");
                continue;
            }
            struct diary_node *diary = NEW(club->arena, struct diary_node);
            *diary = (struct diary_node){ node, &club->loaded.files[i], person->diaries };
            person->diaries = diary;
        }
}

static void bodyweight_read(struct diarist *d, const struct node *node, struct bodyweight_lines *out)
{
    const struct node *on = node_child(node, NODE_ON);
    struct bodyweight_line line = { .at = node->at, .from_diary = true };
    if (!on || !on->child) {
        range_say(d, node->at, "a bodyweight in a diary has a day", "write it as `bodyweight 62.1 kg on 2027-01-08`");
        return;
    }
    line.date = on->child->date;
    if (!node->child || !weight_of(d->club, node->child, d->unit, &line.weight))
        return;
    if (line.weight.e10 > 0)
        vec_add(d->club->arena, &out->list, line);
    else
        range_say(d, node->child->at, "a bodyweight is more than nothing",
                  "write what the scales said, or leave the line out");
}

void diaries_bodyweights(struct club *club, const struct decl *person, struct bodyweight_lines *out)
{
    for (const struct diary_node *diary = person->diaries; diary; diary = diary->next) {
        struct diarist d = diarist_of(club, person, diary);
        for (const struct node *node = node_child(diary->node, NODE_BODYWEIGHT_LINE); node;
             node = node_next(node, NODE_BODYWEIGHT_LINE))
            bodyweight_read(&d, node, out);
    }
}

/* By date; of one day by label and week, so that the order of statements and files says nothing. */
static int sessions_order(const void *a, const void *b)
{
    const struct diary_session *one = a, *other = b;
    if (one->date.day != other->date.day)
        return one->date.day < other->date.day ? -1 : 1;
    int labels = strcmp(one->label ? one->label : "", other->label ? other->label : "");
    if (labels || one->week != other->week)
        return labels ? labels : one->week - other->week;
    return (one->at.start > other->at.start) - (one->at.start < other->at.start);
}

static void diary_make(struct club *club, struct decl *person)
{
    VEC(struct diary_session) sessions = { 0 };
    struct athlete *athlete = person->made;
    for (const struct diary_node *diary = person->diaries; diary; diary = diary->next) {
        struct diarist d = diarist_of(club, person, diary);
        for (const struct node *node = diary->node->child; node; node = node->next)
            if (node->kind == NODE_SESSION || node->kind == NODE_MISSED) {
                struct diary_session session = session_read(&d, node);
                vec_add(club->arena, &sessions, session);
            }
    }
    if (sessions.count)
        qsort(sessions.at, (size_t)sessions.count, sizeof *sessions.at, sessions_order);
    if (!person->node) { /* from a roster: made before any diary was known */
        struct bodyweight_lines lines = { 0 };
        for (int i = 0; i < athlete->bodyweight_count; i++)
            vec_add(club->arena, &lines.list, athlete->bodyweights[i]);
        diaries_bodyweights(club, person, &lines);
        athlete->bodyweights = lines.list.at, athlete->bodyweight_count = lines.list.count;
    }
    athlete->diary = sessions.at;
    athlete->diary_count = sessions.count;
}

void diaries_make(struct club *club)
{
    for (int i = 0; i < club->decls[SPACE_PERSON].count; i++) {
        struct decl *person = club->decls[SPACE_PERSON].at[i];
        if (person->diaries && person->made)
            diary_make(club, person);
    }
}
