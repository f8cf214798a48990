/* Values as written to series. */
#include "model/club.h"

#define BIT(unit) (1u << (unit))
enum {
    UNITS_WEIGHT = BIT(UNIT_KILO) | BIT(UNIT_POUND),
    UNITS_ALL = ~0u >> 1,
};

const struct want want_sets = { "a number of sets", "4 or (5 | 4 | 3)", BIT(UNIT_NONE), true, false };
const struct want want_reps = { "a number of reps", "5, 8-12, 30 s or 20 m",
                                BIT(UNIT_NONE) | BIT(UNIT_SECONDS) | BIT(UNIT_MINUTES) | BIT(UNIT_METRES), true, false };
const struct want want_effort = { "an effort", "rpe 7.5", BIT(UNIT_NONE), false, true };
const struct want want_load = { "a load", "75% or 100 kg", UNITS_WEIGHT | BIT(UNIT_PERCENT), false, false };
const struct want want_weight = { "a weight", "20 kg", UNITS_WEIGHT, false, false };
const struct want want_percent = { "a per cent", "90%", BIT(UNIT_PERCENT), false, false };
const struct want want_time = { "a time", "90 s or 3 min", BIT(UNIT_SECONDS) | BIT(UNIT_MINUTES), false, false };
const struct want want_count = { "a whole number", "3", BIT(UNIT_NONE), true, false };
const struct want want_amount = { "a number or a per cent", "1 or 50%", BIT(UNIT_NONE) | BIT(UNIT_PERCENT), false, false };
const struct want want_load_change = { "a change of load", "10% or 5 kg", UNITS_WEIGHT | BIT(UNIT_PERCENT), false, false };
const struct want want_speed = { "a speed in metres a second", "0.3", BIT(UNIT_NONE), false, false };
const struct want want_any = { "a number", "2.5 kg", UNITS_ALL, false, false };

static const struct {
    const char *word, *title;
} units[] = {
    [UNIT_NONE] = { "", "a plain number" },         [UNIT_PERCENT] = { "%", "a per cent" },
    [UNIT_KILO] = { "kg", "a weight" },             [UNIT_POUND] = { "lb", "a weight" },
    [UNIT_SECONDS] = { "s", "a number of seconds" }, [UNIT_MINUTES] = { "min", "a number of minutes" },
    [UNIT_METRES] = { "m", "a number of metres" },  [UNIT_STEPS] = { "step", "a number of steps" },
};

struct finding *place_finding(const struct place *place, enum kind kind, struct span at, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    struct finding *finding = diag_vadd(place->club->findings, kind, at, format, args);
    va_end(args);
    if (finding->times == 1) {
        diag_setting(place->club->findings, finding, place->setting);
        origin_show(place->club, finding, place->origin);
    }
    return finding;
}

/* ---- numbers ---- */

static enum unit unit_of_word(const char *word)
{
    for (size_t i = 1; i < sizeof units / sizeof *units; i++)
        if ((*units[i].word == *word && !strcmp(units[i].word, word)) || (i == UNIT_STEPS && !strcmp(word, "steps")))
            return (enum unit)i;
    return UNIT_NONE;
}

static bool unit_fits(const struct place *place, const struct want *want, enum unit unit, struct span at)
{
    if (want->units & BIT(unit))
        return true;
    struct finding *finding;
    if (unit == UNIT_NONE && want->units & BIT(UNIT_KILO))
        finding = place_finding(place, KIND_UNIT, at, "%s without a unit: it could be kilograms or a forgotten per cent", want->what);
    else if (unit == UNIT_NONE)
        finding = place_finding(place, KIND_UNIT, at, "%s needs its unit", want->what);
    else
        finding = place_finding(place, KIND_UNIT, at, "%s is wanted here, and this is %s", want->what, units[unit].title);
    diag_help(place->club->findings, finding, "write it as %s", want->example);
    return false;
}

static bool number_fits(const struct place *place, const struct want *want, enum unit unit, struct dec number, struct span at)
{
    struct finding *finding = NULL;
    struct weight weight;
    if (want->whole && !dec_is_multiple(number, dec_int(1)))
        finding = place_finding(place, KIND_RANGE, at, "%s is a whole number", want->what);
    else if (want->whole && number.e10 < DEC_ONE)
        finding = place_finding(place, KIND_RANGE, at, "%s is 1 or more", want->what);
    else if (want->effort && (number.e10 < 0 || number.e10 > 10 * DEC_ONE))
        finding = place_finding(place, KIND_RANGE, at, "effort goes from 0 to 10");
    else if (want->effort && !dec_is_multiple(number, dec_halves(1)))
        finding = place_finding(place, KIND_RANGE, at, "effort goes in halves");
    if (!finding && unit == UNIT_POUND && !weight_from(number, UNIT_LB, &weight)) {
        finding = place_finding(place, KIND_NUMBER, at, "a weight in lb has at most two decimals");
        diag_help(place->club->findings, finding, "write two at most, such as 72.25 lb");
    } else if (finding)
        diag_help(place->club->findings, finding, "write it as %s", want->example);
    return !finding;
}

struct reading {
    const struct place *place;
    const struct want *want;
    enum unit unit; /* the one written somewhere in the value */
    struct span unit_at;
    bool failed;
};

static bool read_number(struct reading *r, const struct node *node, struct dec *out)
{
    if (node->kind == NODE_NUMBER) {
        *out = node->number;
        return true;
    }
    enum unit unit = UNIT_NONE;
    struct want any = want_any;
    any.what = r->want->what, any.example = r->want->example;
    if (!number_of(r->place, node, &any, out, &unit)) {
        r->failed = true;
        return false;
    }
    if (unit != UNIT_NONE)
        r->unit = unit, r->unit_at = node->at;
    return true;
}

static void read_unit(struct reading *r, const struct node *amount)
{
    if (!amount->text)
        return;
    enum unit unit = unit_of_word(amount->text);
    if (r->unit != UNIT_NONE && unit != r->unit && !r->failed) {
        struct finding *finding = place_finding(r->place, KIND_UNIT, amount->at, "two units in one list, %s and %s",
                                                units[r->unit].word, units[unit].word);
        diag_help(r->place->club->findings, finding, "write the whole list in one unit");
        r->failed = true;
    }
    r->unit = unit, r->unit_at = amount->at;
}

static struct band read_amount(struct reading *r, const struct node *amount)
{
    struct band band = { 0 };
    const struct node *inner = amount->kind == NODE_AMOUNT ? amount->child : amount;
    if (amount->kind == NODE_AMOUNT)
        read_unit(r, amount);
    if (!inner) {
        r->failed = true;
    } else if (inner->kind == NODE_BAND) {
        if (read_number(r, inner->child, &band.low) && read_number(r, inner->child->next, &band.high) &&
            band.low.e10 > band.high.e10) {
            struct finding *finding = place_finding(r->place, KIND_RANGE, inner->at, "this range runs from high to low");
            diag_help(r->place->club->findings, finding, "write the smaller number first: %s-%s",
                      dec_text(r->place->club->arena, band.high), dec_text(r->place->club->arena, band.low));
            r->failed = true;
        }
    } else if (read_number(r, inner, &band.low)) {
        band.high = band.low;
    }
    return band;
}

static void check_band(struct reading *r, struct band band, struct span at)
{
    if (r->failed)
        return;
    bool one = band.low.e10 == band.high.e10;
    r->failed = !number_fits(r->place, r->want, r->unit, band.low, at) || (!one && !number_fits(r->place, r->want, r->unit, band.high, at));
}

static struct series_week read_sets(struct reading *r, const struct node *sets)
{
    VEC(struct band) bands = { 0 };
    struct arena *arena = r->place->club->arena;
    const struct node *amount = sets->kind == NODE_SETS ? sets->child : sets;
    for (; amount; amount = sets->kind == NODE_SETS ? amount->next : NULL) {
        struct band band = read_amount(r, amount);
        vec_add(arena, &bands, band);
    }
    return (struct series_week){ bands.at, bands.count };
}

static void check_sets(struct reading *r, const struct series_week *week, const struct node *sets)
{
    const struct node *amount = sets->kind == NODE_SETS ? sets->child : sets;
    for (int i = 0; i < week->count && amount; i++, amount = amount->next)
        check_band(r, week->sets[i], amount->at);
}

/* ---- series ---- */

static void read_list(struct reading *r, const struct node *list, struct series *series)
{
    VEC(struct series_week) weeks = { 0 };
    for (const struct node *sets = list->child; sets; sets = sets->next) {
        struct series_week week = read_sets(r, sets);
        vec_add(r->place->club->arena, &weeks, week);
    }
    series->weeks = weeks.at;
    series->count = weeks.count;
    int i = 0;
    for (const struct node *sets = list->child; sets; sets = sets->next)
        check_sets(r, &weeks.at[i++], sets);
    if (!weeks.count)
        r->failed = true;
}

static void read_ramp(struct reading *r, const struct node *ramp, struct series *series)
{
    struct series_week *ends = NEW_MANY(r->place->club->arena, struct series_week, 2);
    ends[0] = read_sets(r, ramp->child);
    ends[1] = read_sets(r, ramp->child->next);
    check_sets(r, &ends[0], ramp->child);
    check_sets(r, &ends[1], ramp->child->next);
    *series = (struct series){ .kind = SERIES_RAMP, .weeks = ends, .count = 2 };
}

static void read_by(struct reading *r, const struct node *by, bool minus, struct series *series)
{
    struct band band = read_amount(r, by);
    struct dec grain = r->want->whole ? dec_int(1) : dec_halves(1);
    if ((r->want->whole || r->want->effort) && !r->failed && !dec_is_multiple(band.low, grain)) {
        struct finding *finding = place_finding(r->place, KIND_RANGE, by->at, r->want->whole ? "%s moves by whole numbers" : "%s moves in halves", r->want->what);
        diag_help(r->place->club->findings, finding, "write a step such as %s", r->want->whole ? "1" : "0.5");
        r->failed = true;
    }
    series->by.e10 = minus ? -band.low.e10 : band.low.e10;
}

static void read_step(struct reading *r, const struct node *step, struct series *series)
{
    struct series_week *first = NEW(r->place->club->arena, struct series_week);
    const struct node *by = step->child->next, *each = by ? by->next : NULL;
    *first = read_sets(r, step->child);
    *series = (struct series){ .kind = SERIES_STEP, .weeks = first, .count = 1, .each = 1 };
    read_by(r, by, step->flags & FLAG_MINUS, series);
    check_sets(r, first, step->child);
    if (each && !whole_of(r->place, each, "a number of weeks", 1, WEEKS_MOST, &series->each))
        r->failed = true;
}

static bool read_series(struct reading *r, const struct node *node, struct series *series)
{
    switch (node->kind) {
    case NODE_LIST: read_list(r, node, series); break;
    case NODE_RAMP: read_ramp(r, node, series); break;
    case NODE_STEP: read_step(r, node, series); break;
    case NODE_WAVE:
        read_list(r, node->child, series);
        series->kind = SERIES_WAVE;
        if (node->child->next)
            read_by(r, node->child->next, node->flags & FLAG_MINUS, series);
        break;
    case NODE_SETS:
    case NODE_AMOUNT:
    case NODE_BAND:
    case NODE_NUMBER: {
        struct series_week *week = NEW(r->place->club->arena, struct series_week);
        *week = read_sets(r, node);
        *series = (struct series){ .weeks = week, .count = 1 };
        check_sets(r, week, node);
        break;
    }
    default: return false;
    }
    return !r->failed;
}

/* ---- one number or one band alone, which is what most values are: equal ones share a series ---- */

/* The amount that a value consists of; NULL: it lists more, or moves. */
static const struct node *only_amount(const struct node *node)
{
    while (node && (node->kind == NODE_LIST || node->kind == NODE_SETS))
        node = node->child && !node->child->next ? node->child : NULL;
    return node && (node->kind == NODE_AMOUNT || node->kind == NODE_NUMBER || node->kind == NODE_BAND) ? node : NULL;
}

static struct plain_series **plain_slot(const struct plain_table *table, struct band band)
{
    uint64_t hash = ((uint64_t)band.low.e10 + 31 * (uint64_t)band.high.e10) * UINT64_C(0x9E3779B97F4A7C15);
    unsigned at = (unsigned)(hash >> 32) & (table->room - 1);
    for (; table->slots[at]; at = (at + 1) & (table->room - 1))
        if (table->slots[at]->band.low.e10 == band.low.e10 && table->slots[at]->band.high.e10 == band.high.e10)
            break;
    return &table->slots[at];
}

static void plain_grow(struct arena *arena, struct plain_table *table)
{
    struct plain_table grown = { .count = table->count, .room = table->room ? 2 * table->room : 64 };
    grown.slots = NEW_MANY(arena, struct plain_series *, grown.room);
    for (unsigned i = 0; i < table->room; i++)
        if (table->slots[i])
            *plain_slot(&grown, table->slots[i]->band) = table->slots[i];
    *table = grown;
}

const struct series *plain_series(struct club *club, struct band band)
{
    struct plain_table *table = &club->plain;
    if (2 * table->count >= table->room)
        plain_grow(club->model->arena, table);
    struct plain_series **slot = plain_slot(table, band);
    if (!*slot) {
        struct plain_series *plain = *slot = NEW(club->model->arena, struct plain_series);
        *plain = (struct plain_series){ .band = band, .week = { &plain->band, 1 } };
        plain->series = (struct series){ .weeks = &plain->week, .count = 1 };
        table->count++;
    }
    return &(*slot)->series;
}

static const struct series *read_plain(struct reading *r, const struct node *amount)
{
    struct band band = read_amount(r, amount);
    check_band(r, band, amount->at);
    return r->failed ? NULL : plain_series(r->place->club, band);
}

static const struct series *read_whole(struct reading *r, const struct node *node)
{
    const struct node *amount = only_amount(node);
    if (amount)
        return read_plain(r, amount);
    struct series *series = NEW(r->place->club->arena, struct series);
    return read_series(r, node, series) ? series : NULL;
}

static void check_length(const struct place *place, const struct series *series, struct span at)
{
    if (series->kind != SERIES_LIST || !place->frame || series->count <= 1 || series->count <= place->frame->count)
        return;
    const struct source *source = sources_find(place->club->sources, at.start);
    if (source && source->library) /* a shorter block from a shipped template: not hers to mend */
        return;
    struct finding *finding =
        place_finding(place, KIND_WEEKS, at, "%d weeks are written here, and there %s %d training week%s to take them",
                      series->count, place->frame->count == 1 ? "is" : "are", place->frame->count,
                      place->frame->count == 1 ? "" : "s");
    diag_help(place->club->findings, finding, "take the last ones out: they are never reached");
}

static bool is_shown(const struct finding *finding, struct span at)
{
    for (const struct related *related = finding->related; related; related = related->next)
        if (related->at.start == at.start)
            return true;
    return finding->at.start == at.start;
}

/* What was said about a let's value is said because of its use here. */
static void show_use(const struct place *place, const struct node *var, int before)
{
    int count;
    struct finding *const *all = findings_all(place->club->findings, &count);
    for (int i = before; i < count; i++)
        if (!is_shown(all[i], var->at))
            diag_related(place->club->findings, all[i], var->at, "$%s is used here", var->text);
}

static struct value value_through(const struct place *place, const struct node *var, const char *unit_word, const struct want *want)
{
    struct place found;
    const struct node *node = let_find(place, var, &found);
    if (!node)
        return (struct value){ 0 };
    if (node->kind == NODE_STRING || node->kind == NODE_NAME || node->kind == NODE_AMRAP) {
        struct finding *finding = place_finding(place, KIND_UNIT, var->at, "%s is wanted here, and $%s is %s", want->what, var->text,
                                                node->kind == NODE_STRING ? "a text" : node->kind == NODE_NAME ? "a name" : "amrap");
        diag_related(place->club->findings, finding, node->at, "$%s is set here", var->text);
        diag_help(place->club->findings, finding, "give $%s %s, such as %s", var->text, want->what, want->example);
        return (struct value){ 0 };
    }
    if (node->kind == NODE_EFFORT && !want->effort) {
        struct finding *finding = place_finding(place, KIND_UNIT, var->at, "%s is wanted here, and $%s is an effort", want->what, var->text);
        diag_related(place->club->findings, finding, node->at, "$%s is set here", var->text);
        diag_help(place->club->findings, finding, "write `at rpe $%s` to aim at an effort", var->text);
        return (struct value){ 0 };
    }
    struct want relaxed = *want;
    if (unit_word)
        relaxed.units |= BIT(UNIT_NONE);
    int before;
    findings_all(place->club->findings, &before);
    struct value value = value_of(&found, node, &relaxed);
    show_use(place, var, before);
    if (unit_word && value.series && value.unit == UNIT_NONE)
        value.unit = unit_of_word(unit_word);
    value.at = var->at;
    if (node->kind == NODE_EFFORT) {
        value.is_effort = true;
        value.is_rir = node->text && !strcmp(node->text, "rir");
    }
    if (value.series && !unit_fits(place, want, value.unit, var->at))
        value.series = NULL;
    return value;
}

struct value value_of(const struct place *place, const struct node *node, const struct want *want)
{
    const char *unit_word = NULL;
    while (node && (node->kind == NODE_WEIGHT || node->kind == NODE_EFFORT || node->kind == NODE_ROUNDS))
        node = node->child;
    const struct node *var = node ? var_inside(node, &unit_word) : NULL;
    if (var)
        return value_through(place, var, unit_word, want);
    if (!node || node->kind == NODE_ERROR)
        return (struct value){ 0 };
    struct reading r = { .place = place, .want = want };
    const struct series *series = read_whole(&r, node);
    if (!series || !unit_fits(place, want, r.unit, node->at))
        return (struct value){ 0 };
    check_length(place, series, node->at);
    return (struct value){ .series = series, .frame = place->frame, .unit = r.unit, .at = node->at };
}

bool number_of(const struct place *place, const struct node *node, const struct want *want, struct dec *number, enum unit *unit)
{
    struct value value = value_of(place, node, want);
    *unit = value.unit;
    if (!value.series)
        return false;
    const struct series *series = value.series;
    if (series->kind != SERIES_LIST || series->count != 1 || series->weeks[0].count != 1 ||
        series->weeks[0].sets[0].low.e10 != series->weeks[0].sets[0].high.e10) {
        struct finding *finding = place_finding(place, KIND_RANGE, node->at, "%s is one number here, the same in all weeks", want->what);
        diag_help(place->club->findings, finding, "write it as %s", want->example);
        return false;
    }
    *number = series->weeks[0].sets[0].low;
    return true;
}

bool whole_of(const struct place *place, const struct node *node, const char *what, int least, int most, int *number)
{
    struct want want = { what, least > 0 ? "3" : "0", BIT(UNIT_NONE), false, false };
    struct dec dec;
    enum unit unit;
    if (!number_of(place, node, &want, &dec, &unit))
        return false;
    if (!dec_is_multiple(dec, dec_int(1)) || dec.e10 < least * DEC_ONE || dec.e10 > most * DEC_ONE) {
        struct finding *finding = place_finding(place, KIND_RANGE, node->at, "%s is a whole number from %d to %d", what, least, most);
        diag_help(place->club->findings, finding, "write one of these, such as %d", least > 1 ? least : 3 < most ? 3 : most);
        return false;
    }
    *number = (int)(dec.e10 / DEC_ONE);
    return true;
}

bool weight_of(struct club *club, const struct node *weight, enum weight_unit unit, struct weight *out)
{
    struct place place = { .club = club };
    static const struct want wanted = { "a weight", "20 kg", UNITS_WEIGHT | BIT(UNIT_NONE), false, false };
    struct dec number;
    enum unit written;
    if (!number_of(&place, weight, &wanted, &number, &written))
        return false;
    if (written != UNIT_NONE)
        unit = written == UNIT_POUND ? UNIT_LB : UNIT_KG;
    if (weight_from(number, unit, out))
        return true;
    diag_help(club->findings, diag_add(club->findings, KIND_NUMBER, weight->at, "a weight in lb has at most two decimals"),
              "write two at most, such as 72.25");
    return false;
}

bool seconds_of(const struct place *place, const struct node *node, struct seconds_band *out)
{
    struct value value = value_of(place, node, &want_time);
    if (!value.series)
        return false;
    struct band band = value.series->weeks[0].sets[0];
    int64_t factor = value.unit == UNIT_MINUTES ? 60 : 1;
    struct dec low = { band.low.e10 * factor }, high = { band.high.e10 * factor };
    if (value.series->count != 1 || !dec_is_multiple(low, dec_int(1)) || !dec_is_multiple(high, dec_int(1)) ||
        high.e10 > 86400 * DEC_ONE) {
        struct finding *finding = place_finding(place, KIND_RANGE, node->at, "a time is one number of whole seconds, at most a day");
        diag_help(place->club->findings, finding, "write it as 90 s, 3 min or 2-3 min");
        return false;
    }
    *out = (struct seconds_band){ (int)(low.e10 / DEC_ONE), (int)(high.e10 / DEC_ONE) };
    return true;
}

/* ---- texts, lifts, weeks ---- */

const char *text_behind(const struct place *place, const struct node *node)
{
    struct place found;
    const struct node *text = node ? node_behind(place, node, &found) : NULL;
    if (!text || text->kind == NODE_STRING)
        return text ? text->text : NULL;
    struct finding *finding = place_finding(place, KIND_UNIT, node->at, "a text is wanted here");
    if (text != node)
        diag_related(place->club->findings, finding, text->at, "this is what the name stands for");
    diag_help(place->club->findings, finding, "write it in quotes: \"…\"");
    return NULL;
}

const struct lift *lift_of_node(const struct place *place, const struct node *node)
{
    struct place found;
    const struct node *name = node ? node_behind(place, node, &found) : NULL;
    if (!name)
        return NULL;
    if (name->kind == NODE_NAME)
        {
        struct decl *decl = names_use_in(place, SPACE_LIFT, name);
        return decl ? lift_of(place->club, decl) : NULL;
    }
    struct finding *finding = place_finding(place, KIND_UNIT, node->at, "a lift is wanted here");
    diag_related(place->club->findings, finding, name->at, "this is what the name stands for");
    diag_help(place->club->findings, finding, "set it to a lift's name: `let $%s = squat`", node->text ? node->text : "main");
    return NULL;
}

static bool week_range(const struct place *place, const struct node *node, int *low, int *high)
{
    if (node->kind != NODE_BAND) {
        if (!whole_of(place, node, "a week", 1, WEEKS_MOST, low))
            return false;
        *high = *low;
        return true;
    }
    if (!whole_of(place, node->child, "a week", 1, WEEKS_MOST, low) || !whole_of(place, node->child->next, "a week", 1, WEEKS_MOST, high))
        return false;
    if (*low <= *high)
        return true;
    struct finding *finding = place_finding(place, KIND_RANGE, node->at, "these weeks run backwards");
    diag_help(place->club->findings, finding, "write weeks %d-%d", *high, *low);
    return false;
}

struct week_set weeks_of(const struct place *place, const struct node *weeks, int most, bool *ok)
{
    struct week_set set = { 0 };
    *ok = true;
    for (const struct node *node = weeks->child; node; node = node->next) {
        int low, high;
        if (!week_range(place, node, &low, &high)) {
            *ok = false;
            continue;
        }
        if (most && high > most) {
            struct finding *finding = place_finding(place, KIND_WEEKS, node->at, "this block has %d week%s, so there is no week %d", most,
                                                    most == 1 ? "" : "s", low > most ? low : high);
            diag_help(place->club->findings, finding, "write weeks up to %d, or make the block longer with `weeks %d`", most, high);
        }
        for (int week = low; week <= high; week++)
            week_add(&set, week);
    }
    return set;
}

static const struct frame *frame_from(const struct place *place, const struct week_set *weeks, bool deloads)
{
    const struct calendar *calendar = place->calendar;
    if (!calendar)
        return NULL;
    int *list = NEW_MANY(place->club->arena, int, calendar->weeks + 1), count = 0;
    for (int week = 1; week <= calendar->weeks; week++)
        if (week_in(weeks, week) && (deloads || !calendar->kinds || calendar->kinds[week] != WEEK_DELOAD))
            list[count++] = week;
    struct frame *frame = NEW(place->club->arena, struct frame);
    *frame = (struct frame){ list, count };
    return frame;
}

const struct frame *frame_of(const struct place *place, const struct week_set *weeks)
{
    return frame_from(place, weeks, false);
}

const struct frame *frame_of_all(const struct place *place, const struct week_set *weeks)
{
    return frame_from(place, weeks, true);
}

const char *label_of(const struct place *place, const struct node *label)
{
    if (label->kind != NODE_NUMBER)
        return label->text;
    const char *text = dec_text(place->club->arena, label->number);
    return intern(place->club->interner, text, strlen(text));
}

int children_of(const struct node *body, enum node_kind kind)
{
    int count = 0;
    for (const struct node *node = node_child(body, kind); node; node = node_next(node, kind))
        count++;
    return count;
}

const char *const *notes_of(const struct place *place, const struct node *body, int *count)
{
    VEC(const char *) notes = { .room = children_of(body, NODE_NOTE) };
    notes.at = notes.room ? NEW_MANY(place->club->arena, const char *, notes.room) : NULL;
    for (const struct node *node = node_child(body, NODE_NOTE); node; node = node_next(node, NODE_NOTE)) {
        const char *note = text_behind(place, node->child);
        if (note)
            vec_add(place->club->arena, &notes, note);
    }
    *count = notes.count;
    return notes.at;
}
