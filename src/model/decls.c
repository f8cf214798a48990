/* Gyms, lifts, progressions: what their declarations say, each worked out once. */
#include "model/club.h"

#include "base/near.h"

static const char *const kind_words[] = { "accessory", "variation", "competition" };
static const char *const loads_words[] = { "free", "bar", "dumbbells", "stack", "bodyweight" };
static const char *const rounding_words[] = { "nearest", "down", "up" };

static struct place place_at(struct club *club, const struct file_unit *file)
{
    return (struct place){ .club = club, .file = file };
}

/* ---- lifts ---- */

static const char *const *names_list(struct club *club, const struct node *list, int *count)
{
    int n = 0;
    for (const struct node *name = list->child; name; name = name->next)
        n++;
    const char **out = NEW_MANY(club->arena, const char *, n + 1);
    *count = 0;
    for (const struct node *name = list->child; name; name = name->next)
        out[(*count)++] = name->text;
    return out;
}

/* Lifts in the row from this one on. */
static int likes_of(const struct lift *lift)
{
    int count = 0;
    for (; lift; lift = lift->like)
        count++;
    return count;
}

static void lift_like(struct club *club, struct lift *lift, const struct node *like, const struct file_unit *file)
{
    lift->like_at = like->child->at;
    lift->kind = LIFT_VARIATION;
    struct decl *other = names_use(club, SPACE_LIFT, like->child->text, like->child->at, NULL);
    if (!other)
        return;
    if (other->making) {
        struct finding *finding = diag_add(club->findings, KIND_CYCLE, like->child->at,
                                           "%s is like itself in the end, so no lift here has a max of its own", lift->name);
        diag_help(club->findings, finding, "take one `like` of the circle out");
        diag_related(club->findings, finding, other->at, "%s is declared here", other->name);
        return;
    }
    const struct lift *from = club->nested < NESTED_MOST ? lift_of(club, other) : NULL;
    if (!from || likes_of(from) == NESTED_MOST) {
        struct finding *finding = diag_add(club->findings, KIND_LIMIT, like->child->at, "more than %d lifts are like one another in a row here", NESTED_MOST);
        diag_help(club->findings, finding, "write the lift at the end of the row");
        return;
    }
    lift->like = from;
    lift->loads = from->loads;
    lift->equipment = from->equipment;
    lift->works = from->works, lift->works_count = from->works_count;
    lift->helps = from->helps, lift->helps_count = from->helps_count;
    struct place place = place_at(club, file);
    enum unit unit;
    if (like->child->next && number_of(&place, like->child->next, &want_percent, &lift->like_percent, &unit) &&
        lift->like_percent.e10 <= 0)
        diag_help(club->findings, diag_add(club->findings, KIND_RANGE, like->child->next->at, "nothing of the other lift's max gives no loads"),
                  "write how much of it, as in `like squat at 90%%`");
}

static void lift_line(struct club *club, struct lift *lift, const struct node *node, const struct file_unit *file)
{
    struct place place = place_at(club, file);
    const char *word = node->child ? node->child->text : NULL;
    int index;
    switch (node->kind) {
    case NODE_TITLE: lift->title = text_behind(&place, node->child); break;
    case NODE_CUE: lift->cue = text_behind(&place, node->child); break;
    case NODE_WORKS: lift->works = names_list(club, node, &lift->works_count); break;
    case NODE_HELPS: lift->helps = names_list(club, node, &lift->helps_count); break;
    case NODE_KIND:
        if ((index = word_index(word, kind_words, 3)) >= 0)
            lift->kind = (enum lift_kind)index;
        else
            word_unknown(&place, node->child->at, "kind of lift", word, kind_words, 3);
        break;
    case NODE_LOADS:
        if ((index = word_index(word, loads_words, 5)) >= 0) {
            lift->loads = (enum lift_loads)index;
            lift->equipment = node->child->next ? node->child->next->text : NULL;
            lift->equipment_at = node->child->next ? node->child->next->at : (struct span){ 0 };
        } else {
            word_unknown(&place, node->child->at, "way to load a lift", word, loads_words, 5);
        }
        break;
    default: break;
    }
}

/* A statement that may stand once in a body, written twice. */
static void once_each(struct club *club, const struct node *body, const enum node_kind *kinds, int count)
{
    for (int i = 0; i < count; i++) {
        const struct node *first = node_child(body, kinds[i]);
        for (const struct node *again = first ? node_next(first, kinds[i]) : NULL; again; again = node_next(again, kinds[i])) {
            struct finding *finding = diag_add(club->findings, KIND_REPEATED, again->at, "this is said twice; once is enough");
            diag_related(club->findings, finding, first->at, "the first time is here");
            diag_help(club->findings, finding, "keep the line that is right");
        }
    }
}

/* Names of lifts are bound once all lifts are made, so that two may stand in for each other. */
void lift_instead(struct club *club, struct decl *decl)
{
    struct lift *lift = decl->made;
    VEC(const struct lift *) list = { 0 };
    const struct node *instead = node_child(decl->node, NODE_INSTEAD);
    for (const struct node *name = instead ? instead->child : NULL; name; name = name->next) {
        const struct lift *other = lift_named(club, name, NULL);
        if (other == lift)
            diag_help(club->findings, diag_add(club->findings, KIND_UNTOUCHED, name->at, "%s is no substitute for itself", lift->name), "name another lift, or take it out");
        else if (other)
            vec_add(club->arena, &list, other);
    }
    lift->instead = list.at;
    lift->instead_count = list.count;
}

const struct lift *lift_of(struct club *club, struct decl *decl)
{
    static const enum node_kind once[] = { NODE_TITLE, NODE_CUE, NODE_WORKS, NODE_HELPS, NODE_KIND, NODE_LOADS };
    if (decl->made)
        return decl->made;
    struct lift *lift = NEW(club->arena, struct lift);
    *lift = (struct lift){ .name = decl->name, .at = decl->at, .like_percent = dec_int(100) };
    decl->making = true;
    const struct node *like = node_child(decl->node, NODE_LIKE);
    club->nested++;
    if (like)
        lift_like(club, lift, like, decl->file);
    club->nested--;
    for (const struct node *node = decl->node->child; node; node = node->next)
        lift_line(club, lift, node, decl->file);
    once_each(club, decl->node, once, (int)(sizeof once / sizeof *once));
    struct place place = place_at(club, decl->file);
    lift->notes = notes_of(&place, decl->node, &lift->note_count);
    decl->making = false;
    decl->made = lift;
    return lift;
}

const struct lift *lift_named(struct club *club, const struct node *name, const struct origin *origin)
{
    struct decl *decl = names_use(club, SPACE_LIFT, name->text, name->at, origin);
    return decl ? lift_of(club, decl) : NULL;
}

/* ---- gyms ---- */

static struct weight small_step(enum weight_unit unit)
{
    struct weight step;
    weight_from(unit == UNIT_LB ? dec_int(5) : (struct dec){ 5 * DEC_ONE / 2 }, unit, &step);
    return step;
}

static struct ladder steps_from(struct weight first, enum weight_unit unit)
{
    return ladder_steps(first, small_step(unit));
}

struct gym_parts {
    struct club *club;
    const struct file_unit *file;
    struct gym *gym;
    enum weight_unit unit; /* of its file */
    VEC(struct disc) discs;
    VEC(struct named_ladder) bars; /* ladder.empty holds the bar's weight until the discs are known */
    struct numbers bar_names;
    VEC(struct named_ladder) stacks;
    struct weight collar;
    bool has_plates, has_bar;
};

static enum weight_unit unit_written(const struct node *weight, enum weight_unit otherwise)
{
    const char *unit = weight->child ? weight->child->text : NULL;
    return !unit ? otherwise : !strcmp(unit, "lb") ? UNIT_LB : UNIT_KG;
}

static void gym_bar(struct gym_parts *p, const struct node *node)
{
    const struct node *weight = node->child, *name = weight ? weight->next : NULL;
    struct named_ladder bar = { .name = name ? name->text : NULL };
    if (!weight || !weight_of(p->club, weight, p->unit, &bar.ladder.empty))
        return;
    if (bar.ladder.empty.e10 <= 0) {
        struct finding *finding = diag_add(p->club->findings, KIND_RANGE, weight->at, "a bar weighs more than nothing");
        diag_help(p->club->findings, finding, "write what it weighs: `bar 20 kg`");
        return;
    }
    p->bar_names.arena = p->club->arena;
    if (numbers_give(&p->bar_names, bar.name, 0) < p->bars.count) {
        struct finding *finding = diag_add(p->club->findings, KIND_REPEATED, node->at, "this gym already has %s%s",
                                           bar.name ? "a bar called " : "its main bar", bar.name ? bar.name : "");
        diag_help(p->club->findings, finding, "give each further bar a name of its own, as in `bar trap 25 kg`");
        return;
    }
    if (!bar.name) {
        p->has_bar = true;
        p->gym->unit = unit_written(weight, p->unit);
    }
    vec_add(p->club->arena, &p->bars, bar);
}

/* In `25 x 4, 20 x 4 kg` the unit after the last disc holds for all that have none. */
static enum weight_unit list_unit(const struct node *list, enum weight_unit otherwise)
{
    for (const struct node *item = list->child; item; item = item->next)
        for (const struct node *part = item->child; part; part = part->next) {
            const struct node *amount = part->kind == NODE_WEIGHT ? part->child : part;
            if (amount && amount->kind == NODE_AMOUNT && amount->text)
                otherwise = !strcmp(amount->text, "lb") ? UNIT_LB : UNIT_KG;
        }
    return otherwise;
}

static void gym_plates(struct gym_parts *p, const struct node *node)
{
    struct place place = place_at(p->club, p->file);
    enum weight_unit unit = list_unit(node, p->unit);
    p->has_plates = true;
    for (const struct node *plate = node->child; plate; plate = plate->next) {
        struct disc disc;
        if (!weight_of(p->club, plate->child, unit, &disc.weight) ||
            !whole_of(&place, plate->child->next, "a number of discs", 0, 1000, &disc.count))
            continue;
        if (disc.weight.e10 <= 0) {
            diag_help(p->club->findings, diag_add(p->club->findings, KIND_RANGE, plate->child->at, "a disc weighs more than nothing"),
                      "write what one disc weighs and how many there are: `20 x 4 kg`");
            continue;
        }
        vec_add(p->club->arena, &p->discs, disc);
    }
}

static bool ladder_of_ranges(struct gym_parts *p, const struct node *node, struct ladder *out)
{
    VEC(struct ladder_range) ranges = { 0 };
    enum weight_unit unit = list_unit(node, p->unit);
    for (const struct node *range = node->child; range; range = range->next) {
        if (range->kind != NODE_RANGE)
            continue;
        const struct node *low = range->child, *high = low->next ? low->next : low, *step = high->next;
        struct ladder_range r;
        if (!weight_of(p->club, low, unit, &r.low) || !weight_of(p->club, high, unit, &r.high))
            return false;
        r.step = (struct weight){ DEC_ONE };
        if (step && !weight_of(p->club, step, unit, &r.step))
            return false;
        if (r.step.e10 <= 0 || r.high.e10 < r.low.e10) {
            struct finding *finding = diag_add(p->club->findings, KIND_RANGE, range->at, "this row of weights goes nowhere");
            diag_help(p->club->findings, finding, "write it from light to heavy with a step above nothing: `2.5 to 20 step 2.5 kg`");
            return false;
        }
        vec_add(p->club->arena, &ranges, r);
    }
    if (ranges.count && ladder_ranges(p->club->arena, ranges.at, ranges.count, out))
        return true;
    diag_add(p->club->findings, KIND_LIMIT, node->at, "more than %d weights", LADDER_MOST);
    return false;
}

static void gym_line(struct gym_parts *p, const struct node *node)
{
    struct gym *gym = p->gym;
    struct place place = place_at(p->club, p->file);
    struct named_ladder stack = { 0 };
    int index;
    switch (node->kind) {
    case NODE_TITLE: gym->title = text_behind(&place, node->child); break;
    case NODE_BAR: gym_bar(p, node); break;
    case NODE_COLLAR: weight_of(p->club, node->child, p->unit, &p->collar); break;
    case NODE_PLATES: gym_plates(p, node); break;
    case NODE_DUMBBELLS: gym->has_dumbbells = ladder_of_ranges(p, node, &gym->dumbbells); break;
    case NODE_STACK:
        for (const struct node *name = node->child; name; name = name->next)
            if (name->kind == NODE_NAME)
                stack.name = name->text;
        if (ladder_of_ranges(p, node, &stack.ladder))
            vec_add(p->club->arena, &p->stacks, stack);
        break;
    case NODE_ROUND:
        if ((index = word_index(node->child->text, rounding_words, 3)) >= 0)
            gym->rounding = (enum rounding)index;
        else
            word_unknown(&place, node->child->at, "way to round", node->child->text, rounding_words, 3);
        break;
    default: break;
    }
}

static void gym_ladders(struct gym_parts *p, struct span at)
{
    for (int i = 0; i < p->bars.count; i++) {
        struct named_ladder *bar = &p->bars.at[i];
        struct weight empty = bar->ladder.empty;
        if (!p->has_plates) {
            bar->ladder = steps_from((struct weight){ empty.e10 + 2 * p->collar.e10 }, p->gym->unit);
        } else if (!ladder_bar(p->club->arena, empty, p->collar, p->discs.at, p->discs.count, &bar->ladder)) {
            struct finding *finding = diag_add(p->club->findings, KIND_LIMIT, at, "these discs make more than %d different loads", LADDER_MOST);
            diag_help(p->club->findings, finding, "leave out the discs that nobody loads");
            bar->ladder = steps_from(empty, p->gym->unit);
        }
    }
}

static void gym_finish(struct gym_parts *p, struct span at)
{
    struct gym *gym = p->gym;
    if (!p->has_bar) {
        gym->unit = p->unit;
        struct named_ladder bar = { .ladder.empty = { gym->unit == UNIT_LB ? 45 * LB_IN_E10 : 20 * DEC_ONE } };
        vec_add(p->club->arena, &p->bars, bar);
    }
    gym_ladders(p, at);
    gym->bars = p->bars.at, gym->bar_count = p->bars.count;
    gym->stacks = p->stacks.at, gym->stack_count = p->stacks.count;
    gym->named.arena = p->club->arena;
    for (int i = 0; i < gym->bar_count && gym->bar_count > LADDERS_FEW; i++)
        places_add(&gym->named, gym->bars[i].name, 0, i);
    for (int i = 0; i < gym->stack_count && gym->stack_count > LADDERS_FEW; i++)
        places_add(&gym->named, gym->stacks[i].name, 1, i);
    struct weight none = { 0 };
    if (!gym->has_dumbbells)
        gym->dumbbells = steps_from(small_step(gym->unit), gym->unit);
    gym->free = steps_from(none, gym->unit);
}

const struct gym *gym_of(struct club *club, struct decl *decl)
{
    static const enum node_kind once[] = { NODE_TITLE, NODE_COLLAR, NODE_PLATES, NODE_DUMBBELLS, NODE_ROUND };
    if (decl->made)
        return decl->made;
    struct gym *gym = NEW(club->arena, struct gym);
    *gym = (struct gym){ .name = decl->name, .at = decl->at };
    struct gym_parts parts = { .club = club, .file = decl->file, .gym = gym, .unit = decl->file->unit };
    once_each(club, decl->node, once, (int)(sizeof once / sizeof *once));
    for (const struct node *node = decl->node->child; node; node = node->next)
        gym_line(&parts, node);
    gym_finish(&parts, decl->at);
    decl->made = gym;
    return gym;
}

const struct gym *gym_default(struct club *club, enum weight_unit unit)
{
    if (club->gym_default[unit])
        return club->gym_default[unit];
    struct arena *kept = club->arena;
    club->arena = club->model->arena;
    struct gym *gym = NEW(club->arena, struct gym);
    struct gym_parts parts = { .club = club, .gym = gym, .unit = unit };
    gym_finish(&parts, (struct span){ 0 });
    club->arena = kept;
    return club->gym_default[unit] = gym;
}

/* ---- progressions ---- */

static const char *const when_words[] = { "made", "missed", "easy", "reps full" };

static void progression_amount(struct club *club, const struct file_unit *file, const struct node *act,
                               struct progression_line *line)
{
    struct place place = place_at(club, file);
    bool adds = act->kind == NODE_ADD;
    enum unit unit;
    if (!number_of(&place, act->child, &want_any, &line->amount, &unit))
        return;
    if (unit == UNIT_KILO || unit == UNIT_POUND) {
        line->act = adds ? ACT_ADD : ACT_DROP;
        weight_from(line->amount, unit == UNIT_POUND ? UNIT_LB : UNIT_KG, &line->weight);
    } else if (unit == UNIT_PERCENT) {
        line->act = adds ? ACT_ADD_PERCENT : ACT_DROP_PERCENT;
    } else if (unit == UNIT_STEPS && adds) {
        line->act = ACT_ADD_STEPS;
    } else {
        struct finding *finding = diag_add(club->findings, KIND_UNIT, act->child->at, "%s what? a unit is missing",
                                           adds ? "add" : "drop");
        diag_help(club->findings, finding, adds ? "write `add 2.5 kg`, `add 2%%` or `add 1 step`" : "write `drop 10%%` or `drop 5 kg`");
    }
}

static bool progression_line(struct club *club, const struct file_unit *file, const struct node *when,
                             struct progression_line *line)
{
    int index = when->text ? word_index(when->text, when_words, 4) : -1;
    if (index < 0)
        return false;
    *line = (struct progression_line){ .when = (enum progression_when)index, .times = 1, .act = ACT_HOLD, .at = when->at };
    struct place place = place_at(club, file);
    for (const struct node *node = when->child; node; node = node->next) {
        if (node->kind == NODE_NUMBER)
            whole_of(&place, node, "a number of times", 1, 20, &line->times);
        else if (node->kind == NODE_ADD || node->kind == NODE_DROP_LOAD)
            progression_amount(club, file, node, line);
    }
    return true;
}

const struct progression *progression_of(struct club *club, struct decl *decl)
{
    if (decl->made)
        return decl->made;
    struct progression *progression = NEW(club->arena, struct progression);
    VEC(struct progression_line) lines = { 0 };
    for (const struct node *when = node_child(decl->node, NODE_WHEN); when; when = node_next(when, NODE_WHEN)) {
        struct progression_line line;
        if (!progression_line(club, decl->file, when, &line))
            continue;
        int same = 0;
        while (same < lines.count && (lines.at[same].when != line.when || lines.at[same].times != line.times))
            same++;
        if (same < lines.count) {
            struct finding *finding = diag_add(club->findings, KIND_REPEATED, when->at, "two lines for the same case");
            diag_related(club->findings, finding, lines.at[same].at, "the first one is here");
            diag_help(club->findings, finding, "keep the one you mean");
            continue;
        }
        vec_add(club->arena, &lines, line);
        progression->has_reps_full |= line.when == WHEN_REPS_FULL;
    }
    if (!lines.count && !node_child(decl->node, NODE_ERROR)) {
        struct finding *finding = diag_add(club->findings, KIND_MISSING, decl->at, "progression %s does not say when anything moves", decl->name);
        diag_help(club->findings, finding, "add a line such as `when made add 2.5 kg`");
    }
    progression->name = decl->name;
    progression->at = decl->at;
    progression->lines = lines.at;
    progression->line_count = lines.count;
    decl->made = progression;
    return progression;
}

/* ---- small words ---- */

const struct curve_row *curve_named_by(const struct place *place, const struct node *name)
{
    const struct curve_row *row = curve_find(name->text);
    if (row)
        return row;
    const char **names = NEW_MANY(place->club->arena, const char *, curve_count());
    for (int i = 0; i < curve_count(); i++)
        names[i] = curve_name(curve_at(i));
    word_unknown(place, name->at, "repetition curve", name->text, names, curve_count());
    return NULL;
}

uint8_t weekdays_of(const struct place *place, const struct node *weekdays)
{
    static const char *const names[] = { "mon", "tue", "wed", "thu", "fri", "sat", "sun" };
    uint8_t set = 0;
    for (const struct node *name = weekdays->child; name; name = name->next) {
        enum weekday weekday = weekday_find(name->text);
        if (weekday && set >> weekday & 1)
            diag_help(place->club->findings, place_finding(place, KIND_REPEATED, name->at, "%s stands here twice", name->text), "once is enough: a day is trained once on a date");
        if (weekday)
            set |= (uint8_t)(1 << weekday);
        else
            word_unknown(place, name->at, "weekday", name->text, names, 7);
    }
    return set;
}
