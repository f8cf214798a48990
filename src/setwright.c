#include "setwright.h"

#include "base/vec.h"
#include "check/run.h"
#include "emit/as_why.h"
#include "emit/cells.h"
#include "emit/calendar.h"
#include "emit/format.h"
#include "emit/sheet.h"
#include "model/library.h"
#include "model/resolve.h"
#include "model/written.h"
#include "plan/plan.h"
#include "syntax/parse.h"
#include "base/near.h"

#include <stdlib.h>

#ifndef SETWRIGHT_VERSION
#define SETWRIGHT_VERSION "0"
#endif

/* One athlete in one block, in output order. */
struct pair {
    const struct athlete *athlete;
    int block;
    int run; /* how often she has trained a block of this name, this time included */
};

struct setwright {
    jmp_buf out_of_memory;
    struct arena *arena, *scratch, *work; /* the run's; one plan's at a time; one call's */
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct reader reader;
    struct model *model; /* NULL until loaded without errors */
    VEC(struct pair) pairs;
    bool paired;
    const struct finding *const *heard, *const *allowed; /* sorted; NULL: to be looked up anew */
    int heard_count, allowed_count;
    const char *problem;
};

/* Every door into the library starts with this: where memory ends, the call ends. */
#define GUARD(sw) \
    if (setjmp((sw)->out_of_memory)) \
    return SETWRIGHT_LIMIT

static bool begin(struct setwright *sw)
{
    if (setjmp(sw->out_of_memory))
        return false;
    if (!(sw->arena = arena_new(&sw->out_of_memory)) || !(sw->scratch = arena_new(&sw->out_of_memory)) ||
        !(sw->work = arena_new(&sw->out_of_memory)))
        return false;
    sw->interner = interner_new(sw->arena);
    sw->sources = sources_new(sw->arena);
    sw->findings = findings_new(sw->arena, sw->sources);
    return true;
}

struct setwright *setwright_new(struct setwright_reader reader)
{
    struct setwright *sw = calloc(1, sizeof *sw);
    if (!sw)
        return NULL;
    sw->reader = (struct reader){ reader.read, reader.context };
    if (begin(sw))
        return sw;
    setwright_free(sw);
    return NULL;
}

void setwright_free(struct setwright *sw)
{
    if (!sw)
        return;
    arena_free(sw->scratch);
    arena_free(sw->work);
    arena_free(sw->arena);
    free(sw);
}

static enum setwright_status status_of(const struct setwright *sw)
{
    if (findings_has_kind(sw->findings, KIND_LIMIT))
        return SETWRIGHT_LIMIT;
    if (findings_has_kind(sw->findings, KIND_FILE))
        return SETWRIGHT_FILES;
    return findings_count(sw->findings, LEVEL_ERROR) ? SETWRIGHT_FINDINGS : SETWRIGHT_FINE;
}

enum setwright_status setwright_load(struct setwright *sw, const char *const *paths, int count)
{
    GUARD(sw);
    sw->heard = sw->allowed = NULL;
    struct loaded loaded = load_files(sw->arena, sw->interner, sw->sources, sw->findings, sw->reader, paths, count);
    if (status_of(sw) != SETWRIGHT_FINE)
        return status_of(sw);
    sw->model = model_resolve(sw->arena, sw->interner, sw->sources, sw->findings, loaded);
    if (status_of(sw) != SETWRIGHT_FINE)
        sw->model = NULL;
    return status_of(sw);
}

/* ---- pairs: athletes as first named by the blocks, within one the blocks in file order ---- */

/* An athlete's pairs stand together. */
static void pairs_count_runs(struct setwright *sw)
{
    for (int i = 0; i < sw->pairs.count; i++) {
        struct pair *pair = &sw->pairs.at[i];
        pair->run = 1;
        for (const struct pair *other = pair; other-- > sw->pairs.at && other->athlete == pair->athlete;)
            if (sw->model->blocks[other->block]->name == sw->model->blocks[pair->block]->name)
                pair->run++;
    }
}

static void pairs_make(struct setwright *sw)
{
    const struct model *model = sw->model;
    if (sw->paired)
        return;
    sw->paired = true;
    int *rank = NEW_MANY(sw->arena, int, model->athlete_count + 1), named = 0, total = 0;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++, total++)
            if (!rank[model->blocks[i]->athletes[j]->order])
                rank[model->blocks[i]->athletes[j]->order] = ++named;
    /* A counting sort by rank keeps each athlete's blocks in file order. */
    int *start = NEW_MANY(sw->arena, int, named + 2);
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++)
            start[rank[model->blocks[i]->athletes[j]->order] + 1]++;
    for (int i = 1; i <= named; i++)
        start[i + 1] += start[i];
    sw->pairs.at = NEW_MANY(sw->arena, struct pair, total + 1);
    sw->pairs.count = sw->pairs.room = total;
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->athlete_count; j++) {
            const struct athlete *athlete = model->blocks[i]->athletes[j];
            sw->pairs.at[start[rank[athlete->order]]++] = (struct pair){ .athlete = athlete, .block = i };
        }
    pairs_count_runs(sw);
}

static struct plan *plan_pair(struct setwright *sw, const struct pair *pair, bool *touched)
{
    const struct block *block = model_block_for(sw->model, pair->block, pair->athlete);
    arena_reset(sw->scratch);
    return block ? plan_make(sw->scratch, sw->model, block, pair->athlete, touched) : NULL;
}

/* ---- check ---- */

/* It names only weeks that the block does not have, and that has been said. */
static bool reaches_no_week(const struct block *block, const struct change_list *list, const struct change *change)
{
    if (change->verb != CHANGE_SKIP_WEEK && change->verb != CHANGE_REPEAT_WEEK)
        return list->frame && !list->frame->count && !date_is_set(list->from);
    for (int week = 1; week <= block->week_count; week++)
        if (week_in(&change->weeks, week))
            return false;
    return true;
}

static const char *untouched_why(const struct change *change)
{
    if (change->verb == CHANGE_EFFORT)
        return "`rpe` acts on sets given by effort, and none of these is";
    if (change->verb == CHANGE_LOAD)
        return "`load` acts on sets given by a load or a per cent, and none of these is";
    return "no set of these weeks, days and lifts is concerned";
}

static const char *untouched_help(const struct change *change)
{
    if (change->verb == CHANGE_EFFORT)
        return "write `load down 10%` for sets given by a load or a per cent";
    if (change->verb == CHANGE_LOAD)
        return "write `rpe down 2` for sets given by effort";
    return "check the weeks, the lift and for whom it is";
}

/* In any run of the block: seasons may run it more than once, for others and at other times. */
static bool is_touched(const struct setwright *sw, const struct block *block, bool *const *touched, int id)
{
    for (int i = 0; i < sw->model->block_count; i++)
        if (sw->model->blocks[i]->at.start == block->at.start && id < sw->model->blocks[i]->change_count && touched[i][id])
            return true;
    return false;
}

static void say_untouched(struct setwright *sw, const struct block *block, const struct change_list *lists, int count, bool *const *touched)
{
    for (int i = 0; i < count; i++)
        for (int j = 0; j < lists[i].change_count; j++) {
            const struct change *change = &lists[i].changes[j];
            if (change->id < 0 || is_touched(sw, block, touched, change->id) || lists[i].idle || reaches_no_week(block, &lists[i], change))
                continue;
            struct finding *finding = diag_add(sw->findings, KIND_UNTOUCHED, change->at, "this changes nothing: %s", untouched_why(change));
            diag_setting(sw->findings, finding, (struct setting){ .block = block->name });
            diag_help(sw->findings, finding, "%s; or take the line out", untouched_help(change));
            for (const struct origin *origin = change->origin; origin; origin = origin->up)
                diag_related(sw->findings, finding, origin->at, "%s", origin->says);
        }
}

/* The plans of one athlete, who has count pairs from first on; they live until the next athlete. */
static struct plan **athlete_plans(struct setwright *sw, int first, int count, bool *const *touched, int *planned)
{
    arena_reset(sw->scratch);
    struct plan **plans = NEW_MANY(sw->scratch, struct plan *, count + 1);
    *planned = 0;
    for (int i = first; i < first + count; i++) {
        const struct pair *pair = &sw->pairs.at[i];
        const struct block *block = model_block_for(sw->model, pair->block, pair->athlete);
        if (block)
            plans[(*planned)++] = plan_make(sw->scratch, sw->model, block, pair->athlete, touched[pair->block]);
    }
    return plans;
}

enum setwright_status setwright_check(struct setwright *sw)
{
    GUARD(sw);
    if (!sw->model)
        return status_of(sw);
    const struct model *model = sw->model;
    bool **touched = NEW_MANY(sw->arena, bool *, model->block_count + 1);
    for (int i = 0; i < model->block_count; i++)
        touched[i] = NEW_MANY(sw->arena, bool, model->blocks[i]->change_count + 1);
    struct checking *checking = checking_new(sw->arena, model);
    pairs_make(sw);
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        int planned;
        for (next = first + 1; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete;)
            next++;
        struct plan **plans = athlete_plans(sw, first, next - first, touched, &planned);
        checking_athlete(checking, sw->scratch, sw->pairs.at[first].athlete, plans, planned);
    }
    for (int i = 0; i < model->block_count; i++) {
        const struct block *block = model->blocks[i];
        say_untouched(sw, block, block->deloads, block->deload_count, touched);
        say_untouched(sw, block, block->tapers, block->taper_count, touched);
        say_untouched(sw, block, block->adjusts, block->adjust_count, touched);
    }
    checking_finish(checking);
    return status_of(sw);
}

/* ---- findings ---- */

int setwright_finding_count(const struct setwright *sw)
{
    return findings_total(sw->findings);
}

int setwright_errors(const struct setwright *sw)
{
    return findings_count(sw->findings, LEVEL_ERROR);
}

int setwright_warnings(const struct setwright *sw)
{
    return findings_count(sw->findings, LEVEL_WARNING);
}

static struct setwright_place place_of(struct setwright *sw, struct span at)
{
    struct position first = position_of(sw->sources, at.start), last = position_of(sw->sources, at.end);
    if (!span_is_somewhere(at) || !first.source)
        return (struct setwright_place){ 0 };
    return (struct setwright_place){ first.source->name, first.line, first.column, last.line, last.column, first.byte, last.byte };
}

static const struct setwright_related *related_of(struct setwright *sw, const struct finding *finding, int *count)
{
    VEC(struct setwright_related) list = { 0 };
    for (const struct related *related = finding->related; related; related = related->next) {
        struct setwright_related one = { place_of(sw, related->at), related->says };
        vec_add(sw->arena, &list, one);
    }
    *count = list.count;
    return list.at;
}

static struct setwright_finding finding_of(struct setwright *sw, const struct finding *finding)
{
    const struct setting *setting = &finding->setting;
    struct setwright_finding out = { .level = (enum setwright_level)finding->level, .name = finding->row->name,
                                     .message = finding->message, .help = finding->help, .place = place_of(sw, finding->at),
                                     .block = setting->block, .day = setting->day, .lift = setting->lift,
                                     .week = setting->week, .athletes = finding->athletes, .athlete_count = finding->athlete_count,
                                     .allowed = finding->allowed };
    out.named = finding->athlete_count < SETTING_ATHLETES ? finding->athlete_count : SETTING_ATHLETES;
    out.related = related_of(sw, finding, &out.related_count);
    out.group = sw->model ? written_group(sw->arena, sw->model, setting, finding->at) : NULL;
    return out;
}

struct setwright_finding setwright_finding(struct setwright *sw, int index)
{
    if (setjmp(sw->out_of_memory))
        return (struct setwright_finding){ 0 };
    if (!sw->heard) {
        sw->heard_count = findings_total(sw->findings);
        sw->heard = findings_sorted(sw->findings);
    }
    return index < 0 || index >= sw->heard_count ? (struct setwright_finding){ 0 } : finding_of(sw, sw->heard[index]);
}

int setwright_allowed_count(struct setwright *sw)
{
    if (setjmp(sw->out_of_memory))
        return 0;
    if (!sw->allowed)
        sw->allowed = findings_allowed(sw->findings, &sw->allowed_count);
    return sw->allowed_count;
}

struct setwright_finding setwright_allowed(struct setwright *sw, int index)
{
    int count = setwright_allowed_count(sw);
    if (setjmp(sw->out_of_memory))
        return (struct setwright_finding){ 0 };
    return index < 0 || index >= count ? (struct setwright_finding){ 0 } : finding_of(sw, sw->allowed[index]);
}

void setwright_silence(struct setwright *sw, const bool *silent)
{
    int all, count = findings_total(sw->findings);
    if (setjmp(sw->out_of_memory))
        return;
    const struct finding *const *heard = findings_sorted(sw->findings);
    struct finding *const *finding = findings_all(sw->findings, &all);
    for (int i = 0; i < count; i++)
        if (silent[i] && heard[i]->level != LEVEL_ERROR)
            finding[heard[i]->order]->off = true;
    sw->heard = NULL;
}

void setwright_findings_text(struct setwright *sw, struct setwright_sink sink, struct setwright_style style)
{
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    if (!out)
        return;
    if (!setjmp(sw->out_of_memory))
        findings_print(sw->findings, out, (struct diag_style){ .colour = style.colour, .brief = style.brief, .most = style.most });
    fclose(out);
    if (length)
        sink.write(sink.context, text, length);
    free(text);
}

/* ---- choosing ---- */

struct chosen {
    bool *athletes; /* by order; NULL: all */
    bool *blocks;
    int run;   /* 0: all */
    int weeks; /* of the longest chosen block */
    struct narrow narrow;
};

static enum setwright_status problem(struct setwright *sw, const char *what, const char *name, const char *near)
{
    sw->problem = arena_format(sw->arena, "no %s is called %.60s%s%s%s", what, name, near ? "; did you mean " : "", near ? near : "", near ? "?" : "");
    return SETWRIGHT_USAGE;
}

static enum setwright_status choose_people(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    if (!choice->athlete_count)
        return SETWRIGHT_FINE;
    out->athletes = NEW_MANY(sw->work, bool, sw->model->athlete_count + 1);
    for (int i = 0; i < choice->athlete_count; i++) {
        int count;
        const struct athlete *const *list = model_people(sw->model, choice->athletes[i], &count);
        if (!list)
            return problem(sw, "athlete or group", choice->athletes[i], model_nearest_person(sw->model, choice->athletes[i]));
        for (int j = 0; j < count; j++)
            out->athletes[list[j]->order] = true;
    }
    return SETWRIGHT_FINE;
}

static enum setwright_status choose_blocks(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    if (!choice->block_count)
        return SETWRIGHT_FINE;
    out->blocks = NEW_MANY(sw->work, bool, sw->model->block_count + 1);
    const char **names = NEW_MANY(sw->work, const char *, sw->model->block_count + 1);
    for (int i = 0; i < sw->model->block_count; i++)
        names[i] = sw->model->blocks[i]->name;
    for (int i = 0; i < choice->block_count; i++) {
        bool found = false;
        for (int j = 0; j < sw->model->block_count; j++)
            if (!strcmp(names[j], choice->blocks[i]))
                found = out->blocks[j] = true;
        if (!found)
            return problem(sw, "block", choice->blocks[i], word_nearest(choice->blocks[i], names, sw->model->block_count));
    }
    return SETWRIGHT_FINE;
}

/* "9:30" in minutes after midnight; -1: it is none. */
static int minutes_of(const char *text)
{
    int parts[2] = { 0, 0 }, digits[2] = { 0, 0 }, part = 0;
    for (; *text; text++) {
        if (*text == ':' && !part++)
            continue;
        if (*text < '0' || *text > '9' || ++digits[part != 0] > 2)
            return -1;
        parts[part != 0] = 10 * parts[part != 0] + (*text - '0');
    }
    return digits[0] && digits[1] == 2 && parts[0] < 24 && parts[1] < 60 ? 60 * parts[0] + parts[1] : -1;
}

static enum setwright_status choose_dates(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    const char *texts[2] = { choice->from, choice->to };
    struct date *dates[2] = { &out->narrow.from, &out->narrow.to };
    for (int i = 0; i < 2; i++)
        if (texts[i] && !date_parse(texts[i], strlen(texts[i]), dates[i])) {
            sw->problem = arena_format(sw->arena, "%s is no date; write it as 2027-01-04", texts[i]);
            return SETWRIGHT_USAGE;
        }
    for (int i = 0; i < choice->flight_count && i < FLIGHTS_MOST; i++)
        if ((out->narrow.flights[out->narrow.flight_count++] = minutes_of(choice->flights[i])) < 0) {
            sw->problem = arena_format(sw->arena, "%.60s is no time of day; write it as 9:30", choice->flights[i]);
            return SETWRIGHT_USAGE;
        }
    out->narrow.first_week = choice->first_week;
    out->narrow.last_week = choice->last_week;
    return SETWRIGHT_FINE;
}

static bool is_chosen(const struct chosen *chosen, const struct pair *pair)
{
    return (!chosen->athletes || chosen->athletes[pair->athlete->order]) && (!chosen->blocks || chosen->blocks[pair->block]) &&
           (!chosen->run || chosen->run == pair->run);
}

/* Whether a chosen week of the pair has a day between the dates. */
static bool pair_meets_dates(const struct block *block, int weeks, const struct narrow *narrow)
{
    int first_week = narrow->first_week ? narrow->first_week : 1, last_week = narrow->last_week ? narrow->last_week : weeks;
    int first = block->start.day + 7 * (first_week - 1), last = block->start.day + 7 * (last_week < weeks ? last_week : weeks) - 1;
    return first_week <= weeks && (!date_is_set(narrow->from) || last >= narrow->from.day) &&
           (!date_is_set(narrow->to) || first <= narrow->to.day);
}

/* Weeks or dates that none of the chosen blocks has would build nothing, in silence. */
static enum setwright_status check_weeks(struct setwright *sw, struct chosen *chosen)
{
    bool between = false;
    for (int i = 0; i < sw->pairs.count; i++)
        if (is_chosen(chosen, &sw->pairs.at[i])) {
            const struct block *block = sw->model->blocks[sw->pairs.at[i].block];
            int weeks = plan_week_count(block, sw->pairs.at[i].athlete);
            chosen->weeks = weeks > chosen->weeks ? weeks : chosen->weeks;
            between |= pair_meets_dates(block, weeks, &chosen->narrow);
        }
    if (!chosen->weeks || between)
        return SETWRIGHT_FINE;
    if (chosen->narrow.first_week > chosen->weeks)
        sw->problem = arena_format(sw->arena, "there is no week %d: what is chosen has %d week%s", chosen->narrow.first_week, chosen->weeks,
                                   chosen->weeks == 1 ? "" : "s");
    else
        sw->problem = arena_format(sw->arena, "nothing is planned between these dates");
    return SETWRIGHT_USAGE;
}

static enum setwright_status choose(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    *out = (struct chosen){ .run = choice->run };
    arena_reset(sw->work);
    sw->problem = NULL;
    if (!sw->model)
        return status_of(sw) ? status_of(sw) : SETWRIGHT_FINDINGS;
    pairs_make(sw);
    enum setwright_status status = choose_people(sw, choice, out);
    if (!status)
        status = choose_blocks(sw, choice, out);
    if (!status)
        status = choose_dates(sw, choice, out);
    return status ? status : check_weeks(sw, out);
}

enum setwright_status setwright_fits(struct setwright *sw, const struct setwright_choice *choice)
{
    GUARD(sw);
    struct chosen chosen;
    return choose(sw, choice, &chosen);
}

int setwright_weeks(struct setwright *sw, const struct setwright_choice *choice)
{
    struct chosen chosen;
    if (setjmp(sw->out_of_memory))
        return 0;
    choose(sw, choice, &chosen);
    return chosen.weeks;
}

const char *setwright_problem(const struct setwright *sw)
{
    return sw->problem;
}

enum setwright_status setwright_pairs(struct setwright *sw, const struct setwright_choice *choice,
                                      bool (*each)(void *context, const char *athlete, const char *block), void *context)
{
    GUARD(sw);
    struct chosen chosen;
    enum setwright_status status = choose(sw, choice, &chosen);
    for (int i = 0; !status && i < sw->pairs.count; i++)
        if (is_chosen(&chosen, &sw->pairs.at[i]) &&
            !each(context, sw->pairs.at[i].athlete->name, sw->model->blocks[sw->pairs.at[i].block]->name))
            return SETWRIGHT_FILES;
    return status;
}

/* ---- build ---- */

static bool build_pairs(struct setwright *sw, const struct format *format, struct writer *writer, const struct chosen *chosen)
{
    const struct athlete *before = NULL;
    for (int i = 0; i < sw->pairs.count; i++) {
        const struct pair *pair = &sw->pairs.at[i];
        if (!is_chosen(chosen, pair))
            continue;
        if (pair->athlete != before && !format->athlete(writer, pair->athlete))
            return false;
        before = pair->athlete;
        struct plan *plan = plan_pair(sw, pair, NULL);
        if (plan && !format->plan(writer, plan))
            return false;
    }
    return true;
}

/* ---- sheets of many plans ---- */

struct plan_list {
    VEC(struct plan *) list;
};

static void plan_add(struct setwright *sw, struct plan_list *plans, const struct pair *pair)
{
    const struct block *block = model_block_for(sw->model, pair->block, pair->athlete);
    if (block)
        vec_add(sw->scratch, &plans->list, plan_make(sw->scratch, sw->model, block, pair->athlete, NULL));
}

static bool write_plans(const struct sheet *sheet, struct out *out, const struct chosen *chosen, const struct plan_list *plans, bool *begun)
{
    return !plans->list.count || sheet->write(out, &chosen->narrow, plans->list.at, plans->list.count, begun);
}

static bool is_meet_pair(const struct setwright *sw, const struct pair *pair)
{
    const struct block *block = sw->model->blocks[pair->block];
    return block->season && block->last_of_season && block->season->meet_count;
}

static bool sheet_of_blocks(struct setwright *sw, const struct sheet *sheet, struct out *out, const struct chosen *chosen)
{
    bool begun = false, fine = true;
    for (int block = 0; fine && block < sw->model->block_count; block++) {
        struct plan_list plans = { 0 };
        arena_reset(sw->scratch);
        for (int i = 0; i < sw->pairs.count; i++)
            if (sw->pairs.at[i].block == block && is_chosen(chosen, &sw->pairs.at[i]))
                plan_add(sw, &plans, &sw->pairs.at[i]);
        fine = write_plans(sheet, out, chosen, &plans, &begun);
    }
    return fine;
}

/* By pairs (a meet each), or all in one. */
static bool sheet_of_pairs(struct setwright *sw, const struct sheet *sheet, struct out *out, const struct chosen *chosen)
{
    bool begun = false, fine = true;
    struct plan_list plans = { 0 };
    arena_reset(sw->scratch);
    for (int i = 0; fine && i < sw->pairs.count; i++) {
        if (!is_chosen(chosen, &sw->pairs.at[i]) || (sheet->scope == SHEET_MEET && !is_meet_pair(sw, &sw->pairs.at[i])))
            continue;
        plan_add(sw, &plans, &sw->pairs.at[i]);
        if (sheet->scope == SHEET_CLUB)
            continue;
        fine = write_plans(sheet, out, chosen, &plans, &begun);
        plans = (struct plan_list){ 0 };
        arena_reset(sw->scratch);
    }
    return fine && (sheet->scope != SHEET_CLUB || write_plans(sheet, out, chosen, &plans, &begun));
}

static enum setwright_status build_sheet(struct setwright *sw, const char *format, const struct sheet *sheet, const struct chosen *chosen, struct sink sink)
{
    if (strcmp(format, "text") != 0) {
        sw->problem = arena_format(sw->arena, "the %s sheet is text; leave --format out", sheet->name);
        return SETWRIGHT_USAGE;
    }
    struct out out = out_new(sw->work, sink);
    bool fine = sheet->scope == SHEET_BLOCK ? sheet_of_blocks(sw, sheet, &out, chosen) : sheet_of_pairs(sw, sheet, &out, chosen);
    return out_flush(&out) && fine ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

enum setwright_status setwright_calendar(struct setwright *sw, const struct setwright_choice *choice, struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    enum setwright_status status = choose(sw, choice, &chosen);
    if (status)
        return status;
    struct out out = out_new(sw->work, (struct sink){ sink.write, sink.context });
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        struct plan_list plans = { 0 };
        arena_reset(sw->scratch);
        for (next = first; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete; next++)
            if (is_chosen(&chosen, &sw->pairs.at[next]))
                plan_add(sw, &plans, &sw->pairs.at[next]);
        if (plans.list.count && !calendar_write(&out, &chosen.narrow, sw->pairs.at[first].athlete, plans.list.at, plans.list.count))
            return SETWRIGHT_FILES;
    }
    return out_flush(&out) ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

enum setwright_status setwright_build(struct setwright *sw, const char *format_name, const struct setwright_choice *choice,
                                      struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    const struct format *format = format_find(format_name);
    if (!format) {
        const char **names = NEW_MANY(sw->arena, const char *, format_count());
        for (int i = 0; i < format_count(); i++)
            names[i] = format_at(i)->name;
        return problem(sw, "format", format_name, word_nearest(format_name, names, format_count()));
    }
    enum setwright_status status = choose(sw, choice, &chosen);
    if (status)
        return status;
    const struct sheet *sheet = choice->sheet ? sheet_find(choice->sheet) : NULL;
    if (choice->sheet && !sheet) {
        const char *names[8];
        for (int i = 0; i < sheet_count(); i++)
            names[i] = sheet_at(i)->name;
        return problem(sw, "sheet", choice->sheet, word_nearest(choice->sheet, names, sheet_count()));
    }
    if (sheet && sheet->write)
        return build_sheet(sw, format_name, sheet, &chosen, (struct sink){ sink.write, sink.context });
    struct format_options options = { .crlf = choice->crlf, .narrow = chosen.narrow };
    struct writer *writer = format->begin(sw->work, (struct sink){ sink.write, sink.context }, &options);
    bool written = build_pairs(sw, format, writer, &chosen);
    return format->end(writer) && written ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

/* ---- walk ---- */

const char *setwright_column(int index)
{
    return index < 0 || index >= COLUMN_COUNT ? NULL : columns[index].name;
}

struct walk {
    struct out cells[COLUMN_COUNT];
    const char *texts[COLUMN_COUNT];
    bool (*each)(void *context, const char *const *cells);
    void *context;
};

static bool walk_run(struct walk *walk, const struct row *row)
{
    for (int i = 0; i < COLUMN_COUNT; i++) {
        out_clear(&walk->cells[i]);
        if (columns[i].write)
            columns[i].write(&walk->cells[i], row);
        out_char(&walk->cells[i], 0);
        walk->texts[i] = walk->cells[i].at;
    }
    return walk->each(walk->context, walk->texts);
}

static bool walk_day(struct walk *walk, struct row row)
{
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        for (int g = 0; g < row.entry->group_count; g++) {
            row.group = &row.entry->groups[g];
            for (int r = 0; r < row.group->run_count; r++) {
                row.run = &row.group->runs[r];
                row.seq++;
                if (!walk_run(walk, &row))
                    return false;
            }
        }
    }
    return true;
}

static bool walk_plan(struct walk *walk, const struct plan *plan, const struct narrow *narrow)
{
    struct row row = { .plan = plan };
    for (int w = 0; w < plan->week_count; w++) {
        row.week = &plan->weeks[w];
        for (int d = 0; d < row.week->day_count; d++) {
            row.day = &row.week->days[d];
            if (narrow_has_day(narrow, row.week, row.day) && !walk_day(walk, row))
                return false;
        }
    }
    return true;
}

enum setwright_status setwright_walk(struct setwright *sw, const struct setwright_choice *choice,
                                     bool (*each)(void *context, const char *const *cells), void *context)
{
    GUARD(sw);
    struct chosen chosen;
    struct walk walk = { .each = each, .context = context };
    enum setwright_status status = choose(sw, choice, &chosen);
    for (int i = 0; i < COLUMN_COUNT; i++)
        walk.cells[i] = out_scratch(sw->work);
    for (int i = 0; !status && i < sw->pairs.count; i++) {
        struct plan *plan = is_chosen(&chosen, &sw->pairs.at[i]) ? plan_pair(sw, &sw->pairs.at[i], NULL) : NULL;
        if (plan && !walk_plan(&walk, plan, &chosen.narrow))
            return SETWRIGHT_FILES;
    }
    return status;
}

/* ---- why ---- */

static enum setwright_status why_nothing(struct setwright *sw, const struct setwright_question *q, const struct lift *lift)
{
    sw->problem = arena_format(sw->arena, "%s does not train %s in week %d%s%s%s%s", q->athlete, lift->name, q->week, q->day ? " on day " : "",
                               q->day ? q->day : "", q->block ? " of " : "", q->block ? q->block : "");
    return SETWRIGHT_USAGE;
}

enum setwright_status setwright_why(struct setwright *sw, const struct setwright_question *question, struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    struct setwright_choice choice = { .athletes = &question->athlete, .athlete_count = 1, .blocks = &question->block,
                                       .block_count = question->block ? 1 : 0 };
    enum setwright_status status = choose(sw, &choice, &chosen);
    if (status)
        return status;
    const struct lift *lift = model_lift(sw->model, question->lift);
    if (!lift)
        return problem(sw, "lift", question->lift, model_nearest_lift(sw->model, question->lift));
    int written = 0;
    for (int i = 0; i < sw->pairs.count && written >= 0; i++) {
        struct plan *plan = is_chosen(&chosen, &sw->pairs.at[i]) ? plan_pair(sw, &sw->pairs.at[i], NULL) : NULL;
        int now = plan ? why_write(sw->scratch, (struct sink){ sink.write, sink.context }, plan, question->week, question->day, lift) : 0;
        written = now < 0 ? now : written + now;
    }
    return written < 0 ? SETWRIGHT_FILES : written ? SETWRIGHT_FINE : why_nothing(sw, question, lift);
}

/* ---- tables ---- */

const char *setwright_version(void)
{
    return SETWRIGHT_VERSION;
}

const char *setwright_format_name(int index, const char **ending, const char **says)
{
    if (index < 0 || index >= format_count())
        return NULL;
    *ending = format_at(index)->ending;
    *says = format_at(index)->says;
    return format_at(index)->name;
}

const char *setwright_sheet_name(int index, const char **says)
{
    if (index < 0 || index >= sheet_count())
        return NULL;
    *says = sheet_at(index)->says;
    return sheet_at(index)->name;
}

/* All that can be said: kinds that are no rule of the trade, then the rules. */
static bool has_rule(enum kind kind)
{
    for (int i = 0; i < rule_count; i++)
        if (rules[i].kind == kind)
            return true;
    return false;
}

const char *setwright_finding_name(int index, const char **says)
{
    for (int kind = 1; kind < KIND_COUNT; kind++)
        if (!has_rule((enum kind)kind) && index-- == 0) {
            *says = kind_row((enum kind)kind)->says;
            return kind_row((enum kind)kind)->name;
        }
    if (index < 0 || index >= rule_count)
        return NULL;
    *says = rules[index].asks;
    return rules[index].name;
}

const char *setwright_explain(struct setwright *sw, const char *finding_name)
{
    const struct rule *rule = rule_find(finding_name);
    enum kind kind = kind_find(finding_name);
    if (setjmp(sw->out_of_memory))
        return NULL;
    return rule ? rule_page(sw->arena, rule) : kind == KIND_NONE ? NULL : kind_row(kind)->explain;
}

const char *setwright_finding_near(const char *name)
{
    enum { NAMES_MOST = 256 };
    const char *names[NAMES_MOST], *says;
    int count = 0;
    while (count < NAMES_MOST && (names[count] = setwright_finding_name(count, &says)))
        count++;
    return word_nearest(name, names, count);
}

const char *setwright_library_name(int index, const char **text)
{
    if (index < 0 || (size_t)index >= library_count)
        return NULL;
    *text = library_files[index].text;
    return library_files[index].name;
}
