/* A block made ready for planning: its templates folded in, its weeks sorted into training, deload and taper, its days,
 * changes and warm-ups bound to names. */
#include "model/club.h"

#include "base/near.h"

#include <stdlib.h>

static const char *const goal_words[] = { "hypertrophy", "strength", "peak", "general" };
static const char *const week_kind_words[] = { "training", "deload", "taper" };

const char *goal_name(enum goal goal)
{
    return goal_words[goal];
}
const char *week_kind_name(enum week_kind kind)
{
    return week_kind_words[kind];
}

struct lift_list {
    struct numbers numbers;
    VEC(const struct lift *) list;
};

struct block_making {
    struct club *club;
    struct decl *decl;
    struct block *block;
    const struct block *plain; /* with which it shares its people; NULL: it is the first */
    struct chain chain;
    struct parts parts;
    struct scope scope; /* the lets of block and templates */
    struct scope own;   /* the athlete's */
    struct place place;
    struct calendar calendar;
    const struct season *season; /* that runs it; NULL: it stands alone */
    int run;
    struct numbers rotating, labels; /* labels of rotations; of days */
    struct numbers people; /* for whom it is; without an arena until it is asked */
    struct lift_list lifts; /* someone may train here; without an arena until they are asked */
    const struct week_set *frame_weeks; /* whose frame is day_frame */
    const struct frame *day_frame;
    bool is_template;
    int next_id;
    VEC(struct change_list) deloads;
    VEC(struct change_list) tapers;
    VEC(struct change_list) adjusts;
    VEC(struct warm_up) warm_ups;
    VEC(struct day) days;
    VEC(struct rotation) rotations;
    VEC(const struct allow_line *) allows;
    VEC(struct check_line) checks;
};

static struct place place_of_part(const struct block_making *m, const struct part *part)
{
    struct place place = m->place;
    place.file = part->file;
    place.origin = part->origin;
    return place;
}

/* ---- what a block must state ---- */

/* One finding for all that is missing: it is one mistake, a block begun and not finished. */
static void must_state(struct block_making *m)
{
    static const struct {
        enum node_kind kind;
        const char *word, *example;
    } lines[] = { { NODE_FOR, "for", "for all" }, { NODE_STARTS, "starts", "starts 2027-01-04" }, { NODE_LENGTH, "weeks", "weeks 4" } };
    const char *missing = NULL, *example = NULL;
    int level;
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        if (chain_nearest(&m->chain, lines[i].kind, &level) || ((m->season || m->club->run_unknown) && lines[i].kind != NODE_LENGTH))
            continue;
        missing = missing ? arena_format(m->club->arena, "%s, `%s`", missing, lines[i].word) : arena_format(m->club->arena, "`%s`", lines[i].word);
        example = example ? arena_format(m->club->arena, "%s; %s", example, lines[i].example) : lines[i].example;
    }
    if (!missing)
        return;
    struct finding *finding = place_finding(&m->place, KIND_MISSING, m->decl->at, "block %s does not say %s", m->decl->name, missing);
    diag_help(m->club->findings, finding, "add `%s`, with your own", example);
}

static int block_length(struct block_making *m)
{
    int level, weeks = 0;
    const struct node *length = chain_nearest(&m->chain, NODE_LENGTH, &level);
    struct place place = m->place;
    if (!length)
        return m->is_template ? WEEKS_MOST : 0;
    place.origin = m->chain.origins.at[level];
    return whole_of(&place, length->child, "a number of weeks", 1, WEEKS_MOST, &weeks) ? weeks : m->is_template ? WEEKS_MOST : 0;
}

static void block_goal(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    int goal = word_index(part->node->child->text, goal_words, GOAL_COUNT);
    if (goal >= 0) {
        m->block->goal = (enum goal)goal;
        m->block->has_goal = true;
    } else {
        word_unknown(&place, part->node->child->at, "goal", part->node->child->text, goal_words, GOAL_COUNT);
    }
}

/* A season's athletes lie within those its blocks are for, where a block says so. */
static void season_people(struct block_making *m, const struct place *place, const struct node *node)
{
    const struct people *own = people_list(m->club, node->child, place->origin), *theirs = m->season->people;
    struct numbers people = { .arena = m->club->arena };
    for (int i = 0; i < own->count; i++)
        numbers_give(&people, own->at[i], 0);
    for (int i = 0; i < theirs->count; i++) {
        if (numbers_known(&people, theirs->at[i], 0) >= 0)
            continue;
        struct finding *finding = place_finding(place, KIND_SEASON, node->child->at, "season %s trains %s in this block too, and this line leaves the name out", m->season->name,
                                                theirs->at[i]->name);
        diag_related(m->club->findings, finding, m->season->runs[m->run].at, "season %s runs it here", m->season->name);
        diag_help(m->club->findings, finding, "add %s here, or take the line out: the season says who trains", theirs->at[i]->name);
        return;
    }
}

static void season_start(struct block_making *m, const struct place *place, const struct node *node)
{
    struct date start = m->season->runs[m->run].start;
    if (node->child->date.day == start.day || !date_is_set(start))
        return;
    struct finding *finding = place_finding(place, KIND_SEASON, node->child->at, "season %s starts this block on %s", m->season->name,
                                            date_text(m->club->arena, start));
    diag_related(m->club->findings, finding, m->season->runs[m->run].at, "season %s runs it here", m->season->name);
    diag_help(m->club->findings, finding, "take this line out: %s", m->season->meet_count ? "the season counts its blocks back from the meet"
                                                                                       : "the season counts its blocks on from its own start");
}

static void block_people(struct block_making *m, const struct place *place, const struct node *node)
{
    if (m->season) {
        season_people(m, place, node);
        return;
    }
    int before;
    findings_all(m->club->findings, &before);
    if (m->plain) {
        m->block->people = m->plain->people;
        return;
    }
    m->block->people = people_list(m->club, node->child, place->origin);
    if (people_count(m->club->model, m->block->people) || findings_erred_after(m->club->findings, before))
        return;
    struct finding *finding = place_finding(place, KIND_MISSING, node->child->at, "nobody is among these, so the block is built for nobody");
    diag_level(m->club->findings, finding, LEVEL_WARNING);
    diag_help(m->club->findings, finding, "put athletes into the group, or name some here");
}

static void block_facts(struct block_making *m)
{
    struct block *block = m->block;
    VEC(const char *) notes = { 0 };
    enum unit unit;
    for (int i = 0; i < m->parts.list.count; i++) {
        const struct part *part = &m->parts.list.at[i];
        const struct node *node = part->node;
        struct place place = place_of_part(m, part);
        const char *note;
        switch (node->kind) {
        case NODE_TITLE: block->title = text_behind(&place, node->child); break;
        case NODE_NOTE:
            if ((note = text_behind(&place, node->child)))
                vec_add(m->club->arena, &notes, note);
            break;
        case NODE_GOAL: block_goal(m, part); break;
        case NODE_STARTS:
            if (m->season) {
                season_start(m, &place, node);
                break;
            }
            block->start = node->child->date;
            if (!date_is_set(date_plus(block->start, 7 * (m->calendar.weeks + WEEKS_MOST))))
                diag_help(m->club->findings, place_finding(&place, KIND_RANGE, node->child->at, "this block runs beyond the calendar"),
                          "write a date such as 2027-01-04");
            break;
        case NODE_FOR:
            if (!m->is_template)
                block_people(m, &place, node);
            break;
        case NODE_MAX_FIXED: block->max_fixed = true; break;
        case NODE_MAX_TO:
            if (number_of(&place, node->child, &want_percent, &block->max_percent, &unit))
                block->max_percent_at = node->at;
            if (block->max_percent.e10 <= 0) {
                diag_help(m->club->findings, place_finding(&place, KIND_RANGE, node->child->at, "a max of nothing gives no loads"),
                          "write how much of the max to work with, as in `max to 90%%`");
                block->max_percent = dec_int(100);
            }
            break;
        case NODE_MODEL: block->model = curve_named_by(&place, node->child); break;
        default: break;
        }
    }
    block->notes = notes.at;
    block->note_count = notes.count;
    if (!m->is_template)
        must_state(m);
}

/* ---- deload and taper weeks ---- */

static struct week_set weeks_written(struct block_making *m, const struct place *place, const struct node *node)
{
    struct week_set set = { 0 };
    const struct node *weeks = node_child(node, NODE_WEEKS), *every = node_child(node, NODE_EVERY);
    bool ok;
    int step = 0;
    if (weeks)
        set = weeks_of(place, weeks, m->is_template && m->calendar.weeks == WEEKS_MOST ? 0 : m->calendar.weeks, &ok);
    else if (every && whole_of(place, every->child, "a number of weeks", 1, WEEKS_MOST, &step))
        for (int week = step; week <= m->calendar.weeks; week += step)
            week_add(&set, week);
    if (every && !weeks && !m->is_template && step > m->calendar.weeks && m->calendar.weeks) {
        struct finding *finding = place_finding(place, KIND_WEEKS, every->child->at, "this block has %d weeks, so none of them is one in %d", m->calendar.weeks, step);
        diag_help(m->club->findings, finding, "write a number up to %d, or make the block longer", m->calendar.weeks);
    }
    return set;
}

static void mark_weeks(struct block_making *m, enum week_kind *kinds)
{
    struct span *by = NEW_MANY(m->club->arena, struct span, m->calendar.weeks + 1);
    for (int i = 0; i < m->parts.list.count; i++) {
        const struct part *part = &m->parts.list.at[i];
        if (part->node->kind != NODE_DELOAD && part->node->kind != NODE_TAPER)
            continue;
        struct place place = place_of_part(m, part);
        enum week_kind kind = part->node->kind == NODE_DELOAD ? WEEK_DELOAD : WEEK_TAPER;
        struct week_set set = weeks_written(m, &place, part->node);
        for (int week = 1; week <= m->calendar.weeks; week++) {
            if (!week_in(&set, week))
                continue;
            if (kinds[week] != WEEK_TRAINING) {
                struct finding *finding = place_finding(&place, KIND_OVERLAP, part->node->child->at, "week %d is a %s week already", week,
                                                        week_kind_name(kinds[week]));
                diag_related(m->club->findings, finding, by[week], "this line says so");
                diag_help(m->club->findings, finding, "let each week stand in one deload or taper line");
                break;
            }
            kinds[week] = kind;
            by[week] = part->node->child->at;
        }
    }
}

static void week_changes(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct node *node = part->node;
    struct change_list list = { .at = node->at, .people = &people_nobody, .origin = part->origin, .weeks = weeks_written(m, &place, node) };
    list.frame = place.frame = frame_of_all(&place, &list.weeks);
    bool has_body = node->flags & FLAG_BODY;
    if (node->kind == NODE_DELOAD && !has_body) {
        list.change_count = changes_bare_deload(&place, node, &list.changes);
    } else if (!has_body) {
        struct finding *finding = place_finding(&place, KIND_MISSING, node->at, "a taper says what it changes");
        diag_help(m->club->findings, finding, "write it as `taper week 6 { sets to 50%% }`");
    } else {
        list.change_count = changes_make(&place, node, &list.changes, &m->next_id);
    }
    if (node->kind == NODE_DELOAD)
        vec_add(m->club->arena, &m->deloads, list);
    else
        vec_add(m->club->arena, &m->tapers, list);
}

/* ---- adjust ---- */

static void adjust_dates(struct block_making *m, const struct node *dates, struct change_list *list)
{
    list->from = dates->child->date;
    if (dates->child->next)
        list->to = dates->child->next->date;
    for (int week = 1; week <= m->calendar.weeks; week++) {
        int first = m->block->start.day + 7 * (week - 1), last = first + 6;
        if (last >= list->from.day && (!date_is_set(list->to) || first <= list->to.day))
            week_add(&list->weeks, week);
    }
    if (date_is_set(list->to) && list->to.day < list->from.day)
        diag_help(m->club->findings, place_finding(&m->place, KIND_RANGE, dates->at, "these dates run backwards"),
                  "write the earlier date first");
}

static bool adjust_reaches(struct block_making *m, const struct people *people)
{
    if (!m->people.arena) {
        m->people.arena = m->club->arena;
        for (int i = 0; i < m->block->people->count; i++)
            numbers_give(&m->people, m->block->people->at[i], 0);
    }
    for (int i = 0; i < people->count; i++)
        if (numbers_known(&m->people, people->at[i], 0) >= 0 || (m->season && season_is_for(m->club, m->decl, people->at[i])))
            return true;
    return false;
}

static void say_not_in_block(const struct place *place, const struct node *people, struct change_list *list)
{
    struct finding *finding = place_finding(place, KIND_UNTOUCHED, people->at, "%s is not among those this block is for", list->people->at[0]->name);
    diag_help(place->club->findings, finding, "add the name to the block's `for` line, or take the adjust out");
    list->idle = true;
}

static void adjust_people(struct block_making *m, const struct place *place, const struct node *people, struct change_list *list)
{
    list->people = people_list(m->club, people, place->origin);
    if (list->people->count && !m->is_template && !adjust_reaches(m, list->people))
        say_not_in_block(place, people, list);
}

static void adjust_people_as(const struct change_list *known, struct change_list *list)
{
    list->people = known->people, list->idle = known->idle;
}

static void adjust_make(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct node *node = part->node, *people = node_child(node, NODE_PEOPLE);
    const struct node *in_weeks = node_child(node, NODE_IN_WEEKS), *dates = node_child(node, NODE_DATES);
    struct change_list list = { .at = node->at, .people = &people_nobody, .origin = part->origin, .every_week = true };
    bool ok;
    if (m->plain)
        adjust_people_as(&m->plain->adjusts[m->adjusts.count], &list);
    else if (people)
        adjust_people(m, &place, people, &list);
    if (in_weeks) {
        list.weeks = weeks_of(&place, in_weeks->child, m->calendar.weeks, &ok);
        list.every_week = false;
    } else if (dates) {
        adjust_dates(m, dates, &list);
    }
    if (!in_weeks && !dates)
        for (int week = 1; week <= m->calendar.weeks; week++)
            week_add(&list.weeks, week);
    list.frame = place.frame = frame_of_all(&place, &list.weeks);
    list.change_count = changes_make(&place, node, &list.changes, &m->next_id);
    vec_add(m->club->arena, &m->adjusts, list);
}

static int by_athlete(const void *a, const void *b)
{
    const struct adjust_use *one = a, *other = b;
    return one->athlete != other->athlete ? (one->athlete->order > other->athlete->order) - (one->athlete->order < other->athlete->order)
                                          : (one->list > other->list) - (one->list < other->list);
}

static void adjusts_index(struct block_making *m)
{
    VEC(struct adjust_use) uses = { 0 };
    for (int i = 0; i < m->adjusts.count; i++)
        for (int j = 0; j < m->adjusts.at[i].people->count; j++)
            vec_add(m->club->arena, &uses, ((struct adjust_use){ m->adjusts.at[i].people->at[j], &m->adjusts.at[i] }));
    if (uses.count)
        qsort(uses.at, (size_t)uses.count, sizeof *uses.at, by_athlete);
    m->block->adjust_uses = uses.at;
    m->block->adjust_use_count = uses.count;
}

const struct adjust_use *adjusts_for(const struct block *block, const struct athlete *athlete, int *count)
{
    const struct adjust_use *uses = block->adjust_uses;
    int low = 0, high = block->adjust_use_count; /* those below `low` come before hers, those from `high` on do not */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (uses[middle].athlete->order < athlete->order)
            low = middle + 1;
        else
            high = middle;
    }
    *count = 0;
    while (low + *count < block->adjust_use_count && uses[low + *count].athlete == athlete)
        ++*count;
    return *count ? uses + low : NULL;
}

/* ---- days ---- */

static bool label_rotates(const struct block_making *m, const char *label)
{
    return numbers_known(&m->rotating, label, 0) >= 0;
}

static void rotation_make(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct node *days = node_child(part->node, NODE_DAYS), *weekdays = node_child(part->node, NODE_WEEKDAYS);
    struct rotation rotation = { .weeks = part->weeks, .at = part->node->at };
    VEC(const char *) labels = { 0 };
    VEC(struct span) words = { 0 };
    for (const struct node *label = days ? days->child : NULL; label; label = label->next) {
        const char *name = label_of(&place, label);
        vec_add(m->club->arena, &labels, name);
        vec_add(m->club->arena, &words, label->at);
        numbers_give(&m->rotating, name, 0);
    }
    rotation.labels = labels.at;
    rotation.label_at = words.at;
    rotation.label_count = labels.count;
    if (weekdays)
        rotation.weekdays = weekdays_of(&place, weekdays);
    vec_add(m->club->arena, &m->rotations, rotation);
}

static void day_gym(const struct place *place, const struct node *node, struct day *day)
{
    struct decl *gym = names_use_in(place, SPACE_GYM, node->child);
    if (gym)
        day->gym = gym_of(place->club, gym);
}

/* Mostly that of the day before, which stands in the same group of weeks. */
static const struct frame *day_frame(struct block_making *m, const struct place *place, const struct part *part)
{
    if (m->frame_weeks != part->group_weeks) {
        m->frame_weeks = part->group_weeks;
        m->day_frame = frame_of(place, part->group_weeks);
    }
    return m->day_frame;
}

static void day_make_one(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct node *node = part->node, *weekdays = node_child(node, NODE_WEEKDAYS), *title = node_child(node, NODE_TITLE);
    struct day day = { .label = label_of(&place, node->child), .at = node->child->at, .origin = part->origin, .weeks = part->weeks };
    struct scope around = { .lets = part->lets, .let_count = part->let_count, .index = part->let_index, .up = &m->scope };
    struct scope scope = { .up = &around };
    VEC(const struct node *) lets = { 0 };
    for (const struct node *let = node_child(node, NODE_LET); let; let = node_next(let, NODE_LET))
        vec_add(m->club->arena, &lets, let);
    place.frame = scope.frame = around.frame = day_frame(m, &place, part);
    scope.lets = lets.at, scope.let_count = lets.count;
    scope.index = lets_index(m->club->arena, lets.at, lets.count);
    place.scope = &scope;
    place.setting.day = day.label;
    lets_check(&place, node);
    day.weekdays = weekdays ? weekdays_of(&place, weekdays) : 0;
    day.rotates = label_rotates(m, day.label);
    if (day.rotates && day.weekdays) {
        struct finding *finding = place_finding(&place, KIND_MISPLACED, weekdays->at, "day %s stands in a rotation, which gives it its days", day.label);
        diag_help(m->club->findings, finding, "take `on …` out here");
    }
    if (title)
        day.title = text_behind(&place, title->child);
    if (node_child(node, NODE_GYM_REF))
        day_gym(&place, node_child(node, NODE_GYM_REF), &day);
    day.optional = node_child(node, NODE_OPTIONAL) != NULL;
    day.notes = notes_of(&place, node, &day.note_count);
    day.entry_count = entries_make(&place, node, &day.entries);
    numbers_give(&m->labels, day.label, 0);
    vec_add(m->club->arena, &m->days, day);
}

/* ---- warm-ups ---- */

static void warm_up_make(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct node *lifts = node_child(part->node, NODE_LIFTS);
    struct warm_up warm_up = { .at = part->node->at };
    VEC(const struct lift *) list = { 0 };
    warm_up.group_count = groups_of_scheme(&place, part->node->child, NULL, true, &warm_up.groups);
    for (const struct node *node = lifts ? lifts->child : NULL; node; node = node->next) {
        const struct lift *lift = lift_of_node(&place, node);
        if (lift)
            vec_add(m->club->arena, &list, lift);
    }
    warm_up.lifts = list.at;
    warm_up.lift_count = list.count;
    if (lifts && !list.count)
        return;
    for (int i = 0; i < list.count; i++)
        places_add(&m->block->warm_up_places, list.at[i], 0, m->warm_ups.count);
    if (!lifts)
        places_add(&m->block->warm_up_places, NULL, 0, m->warm_ups.count);
    vec_add(m->club->arena, &m->warm_ups, warm_up);
}

static void allow_make(struct block_making *m, const struct part *part)
{
    const struct allow_line *allow = allow_of(m->club, part->node);
    if (allow)
        vec_add(m->club->arena, &m->allows, allow);
}

static void block_checks(struct block_making *m, const struct part *part)
{
    struct place place = place_of_part(m, part);
    const struct check_line *lines;
    int count = checks_of(&place, part->node, &lines);
    for (int i = 0; i < count; i++)
        vec_add(m->club->arena, &m->checks, lines[i]);
}

/* ---- names that must be the block's own ---- */

static void check_label(struct block_making *m, const struct origin *origin, struct span at, const char *label)
{
    if (numbers_known(&m->labels, label, 0) >= 0)
        return;
    struct place place = m->place;
    place.origin = origin;
    VEC(const char *) labels = { 0 };
    bool compares = names_may_compare(m->club, m->days.count);
    for (int i = 0; compares && i < m->days.count; i++)
        vec_add(m->club->arena, &labels, m->days.at[i].label);
    struct finding *finding = place_finding(&place, KIND_UNKNOWN_NAME, at, "this block has no day %s", label);
    const char *near = word_nearest(label, labels.at, labels.count);
    if (near) {
        diag_help(m->club->findings, finding, "did you mean day %s?", near);
        return;
    }
    const char *list = m->days.count ? m->days.at[0].label : "none yet";
    for (int i = 1; i < m->days.count && i < 8; i++)
        list = arena_format(m->club->arena, "%s, %s", list, m->days.at[i].label);
    diag_help(m->club->findings, finding, "its days are: %s", list);
}

static void lift_add(struct arena *arena, struct lift_list *lifts, const struct lift *lift)
{
    if (numbers_give(&lifts->numbers, lift, 0) == lifts->list.count)
        vec_add(arena, &lifts->list, lift);
}

static void entries_lifts(struct arena *arena, struct lift_list *lifts, const struct entry *entries, int count)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < entries[i].lift_count; j++)
            lift_add(arena, lifts, entries[i].lifts[j]);
}

static void change_lifts(struct arena *arena, struct lift_list *lifts, const struct change_list *lists, int count)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < lists[i].change_count; j++) {
            const struct change *change = &lists[i].changes[j];
            if (change->verb == CHANGE_SWAP)
                lift_add(arena, lifts, change->swap_with);
            entries_lifts(arena, lifts, change->entries, change->entry_count);
        }
}

/* Every lift someone may train in the block: written, swapped in, added, or used for one an athlete avoids. */
static const struct lift_list *block_lifts(struct block_making *m)
{
    struct lift_list *lifts = &m->lifts;
    if (lifts->numbers.arena)
        return lifts;
    lifts->numbers.arena = m->club->arena;
    for (int i = 0; i < m->days.count; i++)
        entries_lifts(m->club->arena, lifts, m->days.at[i].entries, m->days.at[i].entry_count);
    change_lifts(m->club->arena, lifts, m->deloads.at, m->deloads.count);
    change_lifts(m->club->arena, lifts, m->tapers.at, m->tapers.count);
    change_lifts(m->club->arena, lifts, m->adjusts.at, m->adjusts.count);
    for (int i = 0; i < m->block->instead_count; i++)
        lift_add(m->club->arena, lifts, m->block->instead[i]);
    return lifts;
}

static void block_instead(struct block_making *m)
{
    struct lift_list lifts = { .numbers.arena = m->club->arena };
    const struct people *people = m->block->people;
    for (int i = 0; i < people->count && !m->plain; i++)
        for (int j = 0; j < people->at[i]->avoid_count; j++)
            if (people->at[i]->avoids[j].use)
                lift_add(m->club->arena, &lifts, people->at[i]->avoids[j].use);
    m->block->instead = m->plain ? m->plain->instead : lifts.list.at;
    m->block->instead_count = m->plain ? m->plain->instead_count : lifts.list.count;
}

static void check_lift(struct block_making *m, const struct origin *origin, struct span at, const struct lift *lift)
{
    const struct lift_list *lifts = block_lifts(m);
    if (numbers_known(&lifts->numbers, lift, 0) >= 0)
        return;
    struct place place = m->place;
    place.origin = origin;
    VEC(const char *) names = { 0 };
    bool compares = names_may_compare(m->club, lifts->list.count);
    for (int i = 0; compares && i < lifts->list.count; i++)
        vec_add(m->club->arena, &names, lifts->list.at[i]->name);
    const char *near = word_nearest(lift->name, names.at, names.count);
    struct finding *finding = place_finding(&place, KIND_UNKNOWN_NAME, at, "%s is not trained in this block", lift->name);
    if (near)
        diag_help(m->club->findings, finding, "did you mean %s?", near);
    else
        diag_help(m->club->findings, finding, "name a lift of one of its days, or take this line out");
}

/* A lift's own words inside a change, so that the finding points at the name and not at the whole line. */
static void check_changes(struct block_making *m, const struct change_list *lists, int count)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < lists[i].change_count; j++) {
            const struct change *change = &lists[i].changes[j];
            for (int k = 0; k < change->lift_count; k++)
                check_lift(m, change->origin, change->lift_at ? change->lift_at[k] : change->at, change->lifts[k]);
            for (int k = 0; k < change->day_count; k++)
                check_label(m, change->origin, change->day_at ? change->day_at[k] : change->at, change->days[k]);
            if (change->verb == CHANGE_ADD)
                check_label(m, change->origin, change->day_at ? change->day_at[0] : change->at, change->add_day);
        }
}

static void check_of_days(struct block_making *m, const struct entry *entries, int count)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < entries[i].group_count; j++) {
            const struct group *group = &entries[i].groups[j];
            if (group->load_kind == LOAD_PERCENT_OF_DAY && group_more(group)->of_day)
                check_label(m, group->origin, group_more(group)->of_day_at, group_more(group)->of_day);
        }
}

static void check_names(struct block_making *m)
{
    check_changes(m, m->deloads.at, m->deloads.count);
    check_changes(m, m->tapers.at, m->tapers.count);
    check_changes(m, m->adjusts.at, m->adjusts.count);
    for (int i = 0; i < m->rotations.count; i++)
        for (int j = 0; j < m->rotations.at[i].label_count; j++)
            check_label(m, NULL, m->rotations.at[i].label_at[j], m->rotations.at[i].labels[j]);
    for (int i = 0; i < m->days.count; i++)
        check_of_days(m, m->days.at[i].entries, m->days.at[i].entry_count);
}

/* ---- the whole ---- */

static void parts_make(struct block_making *m, enum node_kind kind, void (*make)(struct block_making *, const struct part *))
{
    for (int i = 0; i < m->parts.list.count; i++)
        if (m->parts.list.at[i].node->kind == kind)
            make(m, &m->parts.list.at[i]);
}

static void days_make(struct block_making *m)
{
    for (int i = 0; i < m->parts.list.count; i++)
        m->days.room += m->parts.list.at[i].node->kind == NODE_DAY;
    m->days.at = NEW_MANY(m->club->arena, struct day, m->days.room);
    parts_make(m, NODE_DAY, day_make_one);
}

static void block_keep(struct block_making *m)
{
    struct block *b = m->block;
    b->deloads = m->deloads.at, b->deload_count = m->deloads.count;
    b->tapers = m->tapers.at, b->taper_count = m->tapers.count;
    b->adjusts = m->adjusts.at, b->adjust_count = m->adjusts.count;
    b->warm_ups = m->warm_ups.at, b->warm_up_count = m->warm_ups.count;
    b->days = m->days.at, b->day_count = m->days.count;
    b->rotations = m->rotations.at, b->rotation_count = m->rotations.count;
    b->change_count = m->next_id;
    b->week_lines = m->parts.week_lines.at, b->week_line_count = m->parts.week_lines.count;
    b->allows = m->allows.at, b->allow_count = m->allows.count;
    b->checks = m->checks.at, b->check_count = m->checks.count;
}

static void block_weeks(struct block_making *m)
{
    struct week_set all = { 0 };
    m->calendar.weeks = block_length(m);
    enum week_kind *kinds = NEW_MANY(m->club->arena, enum week_kind, m->calendar.weeks + 1);
    m->place.calendar = &m->calendar;
    parts_of(&m->place, &m->chain, &m->parts);
    mark_weeks(m, kinds);
    m->calendar.kinds = m->block->kinds = kinds;
    m->block->week_count = m->calendar.weeks;
    for (int week = 1; week <= m->calendar.weeks; week++)
        week_add(&all, week);
    m->scope.frame = m->place.frame = frame_of(&m->place, &all);
}

int block_weeks_of(struct club *club, struct decl *decl)
{
    struct block_making m = { .club = club, .decl = decl };
    if (!chain_of(club, decl, &m.chain))
        return 0;
    m.scope = (struct scope){ .lets = m.chain.lets.at, .let_count = m.chain.lets.count,
                              .index = lets_index(club->arena, m.chain.lets.at, m.chain.lets.count) };
    m.place = (struct place){ .club = club, .scope = &m.scope, .file = decl->file, .setting.block = decl->name };
    return block_length(&m);
}

static void season_facts(struct block_making *m)
{
    struct block *block = m->block;
    block->season = m->season;
    block->run = m->run;
    block->start = m->season->runs[m->run].start;
    block->people = m->season->people;
    block->break_before = m->run > 0 && !m->season->runs[m->run - 1].decl;
    block->last_of_season = true;
    for (int i = m->run + 1; i < m->season->run_count; i++)
        block->last_of_season &= !m->season->runs[i].decl;
}

const struct block *block_make(struct club *club, struct decl *decl, const struct athlete *athlete, const struct block *plain,
                               const struct season *season, int run)
{
    struct block *block = NEW(club->arena, struct block);
    struct block_making m = { .club = club, .decl = decl, .block = block, .plain = plain, .rotating.arena = club->arena, .labels.arena = club->arena, .season = season, .run = run, .is_template = decl->node->kind == NODE_TEMPLATE };
    *block = (struct block){ .name = decl->name, .at = decl->at, .goal = GOAL_GENERAL, .max_percent = dec_int(100), .people = &people_nobody, .warm_up_places.arena = club->arena };
    if (!chain_of(club, decl, &m.chain))
        return NULL;
    arena_reset(club->passing);
    m.scope = (struct scope){ .lets = m.chain.lets.at, .let_count = m.chain.lets.count,
                              .index = lets_index(club->arena, m.chain.lets.at, m.chain.lets.count) };
    m.place = (struct place){ .club = club, .scope = &m.scope, .file = decl->file, .setting.block = decl->name,
                              .lenient = m.is_template };
    if (athlete) {
        m.own = (struct scope){ .lets = athlete->lets, .let_count = athlete->let_count,
                                .index = lets_index(club->arena, athlete->lets, athlete->let_count) };
        m.place.own = &m.own;
    }
    if (season)
        season_facts(&m);
    block_weeks(&m);
    lets_check(&m.place, decl->node);
    block_facts(&m);
    parts_make(&m, NODE_ROTATE, rotation_make);
    parts_make(&m, NODE_DELOAD, week_changes);
    parts_make(&m, NODE_TAPER, week_changes);
    days_make(&m);
    parts_make(&m, NODE_WARM_UP, warm_up_make);
    parts_make(&m, NODE_ADJUST, adjust_make);
    parts_make(&m, NODE_ALLOW, allow_make);
    parts_make(&m, NODE_CHECKS, block_checks);
    block_keep(&m);
    adjusts_index(&m);
    block_instead(&m);
    check_names(&m);
    return block;
}
