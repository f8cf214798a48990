#include "check/run.h"

#include "base/vec.h"
#include "check/allows.h"
#include "check/limits.h"
#include "check/views.h"

#include <string.h>

/* One thing met, folded over weeks, athletes and blocks: one rule at one place about one subject. */
struct met {
    const struct rule *rule;
    struct place_met place;
    const char *allowed; /* its reason, or NULL */
    int level;
    const char *message, *help;
    struct setting setting;
    struct week_set weeks;
    const char *athletes[SETTING_ATHLETES];
    int athlete_count, block_athletes; /* for whom it was met; how many the block is for */
    int last_athlete; /* her order; below 0: nobody */
    struct met *next; /* of the same rule, place and subject */
};

struct checking {
    struct arena *arena;
    const struct model *model;
    struct limits *limits;
    struct allows *allows;
    struct numbers places, subjects; /* where a rule met something; that about a lift or a muscle, or about none */
    VEC(struct met *) met;           /* by the number of the last */
    struct numbers block_names;
    VEC(const struct block *) named; /* by these: the first of each name */
    VEC(struct met *) all;           /* in order of athletes, of rules, of meeting */
    bool *allow_used;
    bool errors_only;
    /* Of the athlete at hand: */
    struct arena *hers;      /* what lives until her last block has passed */
    struct athlete_view her;
    VEC(struct block_term) terms;
    void **kept;   /* by rule; NULL: nothing yet */
    int met_first; /* of `all`, the first that was met with her */
};

struct asking {
    struct checking *checking;
    const struct rule *rule;
    const struct athlete *athlete;
    struct arena *scratch;
};

/* ---- what a rule may ask of us ---- */

struct arena *rule_arena(struct asking *asking)
{
    return asking->scratch;
}

struct arena *rule_keep_arena(struct asking *asking)
{
    return asking->checking->hers;
}

void *rule_kept(struct asking *asking, size_t size)
{
    void **kept = &asking->checking->kept[asking->rule - rules];
    if (!*kept)
        *kept = arena_alloc(asking->checking->hers, size);
    return *kept;
}

const char *rule_text(struct asking *asking, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    const char *text = arena_vformat(asking->scratch, format, args);
    va_end(args);
    return text;
}

const char *rule_number(struct asking *asking, struct ratio number)
{
    return dec_text(asking->scratch, ratio_nearest(number, (struct dec){ DEC_ONE / 10 }));
}

struct bounds rule_limit_in(const struct asking *asking, const struct block *block, const char *subject)
{
    return limits_bounds(asking->checking->limits, block, asking->rule, subject);
}

bool rule_limit_is_own(const struct asking *asking, const struct block_view *block, const char *subject)
{
    return limits_is_own(asking->checking->limits, block ? block->block : NULL, asking->rule, subject);
}

struct bounds rule_second_limit(const struct asking *asking, const struct block_view *block)
{
    return limits_second(asking->checking->limits, block ? block->block : NULL, asking->rule);
}

bool rule_is_off_in(const struct asking *asking, const struct block *block)
{
    return limits_level(asking->checking->limits, block, asking->rule) == LEVEL_OFF;
}

/* ---- places ---- */

struct place_met met_set(const struct block_view *block, const struct set_view *set)
{
    return (struct place_met){ .block = block->block, .week = set->week->number, .day = set->day->day->label, .lift = set->lift->name,
                               .at = group_place(set->entry->entry, set->group->group, set->group->group->at),
                               .origin = set->group->group->origin, .level = LEVEL_OF_GOAL };
}

struct place_met met_load(const struct block_view *block, const struct set_view *set)
{
    struct place_met place = met_set(block, set);
    if (span_is_somewhere(set->group->group->load_at))
        place.at = group_place(set->entry->entry, set->group->group, set->group->group->load_at);
    return place;
}

struct place_met met_entry(const struct block_view *block, const struct set_view *set)
{
    struct place_met place = met_set(block, set);
    place.at = set->entry->entry->at;
    place.origin = set->entry->entry->origin;
    return place;
}

struct place_met met_day(const struct block_view *block, const struct day_view *day)
{
    return (struct place_met){ .block = block->block, .week = day->week->number, .day = day->day->day->label, .at = day->day->day->at,
                               .origin = day->day->day->origin, .level = LEVEL_OF_GOAL };
}

struct place_met met_name(const struct block *block)
{
    return (struct place_met){ .block = block, .at = block->at, .level = LEVEL_OF_GOAL };
}

static const struct change_list *list_of_week(const struct change_list *lists, int count, int week)
{
    for (int i = 0; i < count; i++)
        if (week_in(&lists[i].weeks, week))
            return &lists[i];
    return NULL;
}

struct place_met met_week(const struct block_view *block, const struct week_view *week)
{
    struct place_met place = met_block(block);
    const struct block *b = block->block;
    int number = week->week->block_week;
    const struct change_list *list = week->week->kind == WEEK_DELOAD ? list_of_week(b->deloads, b->deload_count, number)
                                   : week->week->kind == WEEK_TAPER  ? list_of_week(b->tapers, b->taper_count, number)
                                                                     : NULL;
    place.week = week->week->number;
    if (list) {
        place.at = list->at;
        place.origin = list->origin;
        return place;
    }
    for (int i = 0; i < b->week_line_count; i++)
        if (week_in(&b->week_lines[i].weeks, number)) {
            place.at = b->week_lines[i].at;
            break;
        }
    return place;
}

/* ---- meeting ---- */

static bool same_text(const char *a, const char *b)
{
    return a == b || (a && b && !strcmp(a, b));
}

/* Too few in one week and too many in another is not one thing: they differ in their help. */
static bool same_met(const struct met *met, const struct place_met *place, const char *allowed, const char *help)
{
    return met->allowed == allowed && (!place->subject || same_text(met->help, help));
}

static struct met **slot_of(struct checking *checking, const struct rule *rule, const struct place_met *place)
{
    const char *subject = place->subject ? intern(checking->model->interner, place->subject, strlen(place->subject)) : NULL;
    int at = numbers_give(&checking->places, rule, (uint64_t)place->at.start << 32 | place->at.end);
    at = numbers_give(&checking->subjects, subject, (uint64_t)at);
    if (at == checking->met.count)
        vec_add(checking->arena, &checking->met, NULL);
    return &checking->met.at[at];
}

static void met_again(struct met *met, const struct asking *asking, const struct place_met *place)
{
    if (place->week)
        week_add(&met->weeks, place->week);
    const struct athlete *athlete = asking->athlete;
    if (met->last_athlete == athlete->order)
        return;
    if (met->athlete_count < SETTING_ATHLETES) /* she may be gone before it is said */
        met->athletes[met->athlete_count] = arena_copy(asking->checking->arena, athlete->name, strlen(athlete->name));
    met->athlete_count++;
    met->last_athlete = athlete->order;
}

static struct met *met_new(struct asking *asking, const struct place_met *place, int level, const char *allowed, const char *help,
                           const char *format, va_list args)
{
    struct checking *checking = asking->checking;
    struct met *met = NEW(checking->arena, struct met);
    *met = (struct met){ .rule = asking->rule, .place = *place, .level = level, .allowed = allowed, .last_athlete = -1,
                         .message = arena_vformat(checking->arena, format, args),
                         .help = help ? arena_copy(checking->arena, help, strlen(help)) : NULL };
    if (place->subject)
        met->place.subject = arena_copy(checking->arena, place->subject, strlen(place->subject));
    met->block_athletes = place->block ? people_count(checking->model, place->block->people) : 0;
    met->setting = (struct setting){ .block = place->block ? place->block->name : NULL, .week = place->week, .day = place->day, .lift = place->lift };
    struct met **slot = slot_of(checking, asking->rule, place);
    met->next = *slot;
    *slot = met;
    vec_add(checking->arena, &checking->all, met);
    return met;
}

void rule_hit(struct asking *asking, struct place_met place, const char *help, const char *format, ...)
{
    struct checking *checking = asking->checking;
    const struct block *block = place.block;
    int level = limits_level(checking->limits, block, asking->rule);
    if (level == LEVEL_OFF)
        return;
    if (place.level != LEVEL_OF_GOAL && !limits_level_is_own(checking->limits, block, asking->rule))
        level = place.level;
    if (checking->errors_only && level != LEVEL_ERROR)
        return;
    const struct allow_line *allow = level == LEVEL_ERROR ? NULL : allows_find(checking->allows, asking->rule, block, place.at, place.origin);
    if (allow)
        checking->allow_used[allow->id] = true;
    const char *allowed = allow ? allow->because : NULL;
    struct met *met = *slot_of(checking, asking->rule, &place);
    while (met && !same_met(met, &place, allowed, help))
        met = met->next;
    if (!met) {
        va_list args;
        va_start(args, format);
        met = met_new(asking, &place, level, allowed, help, format, args);
        va_end(args);
    }
    if (level < met->level)
        met->level = level;
    met_again(met, asking, &place);
}

/* ---- asking ---- */

static void ask_block(struct checking *checking, const struct rule *rule, struct arena *scratch, const struct block_view *block)
{
    struct asking asking = { .checking = checking, .rule = rule, .athlete = checking->her.athlete, .scratch = scratch };
    if (rule->keep)
        rule->keep(&asking, block);
    if (rule->block && !rule_is_off(&asking, block))
        rule->block(&asking, block);
}

static void ask_athlete(struct checking *checking, const struct rule *rule, struct arena *scratch)
{
    struct asking asking = { .checking = checking, .rule = rule, .athlete = checking->her.athlete, .scratch = scratch };
    if (rule->athlete)
        rule->athlete(&asking, &checking->her);
}

static void her_begin(struct checking *checking, struct arena *hers, struct athlete_view her)
{
    checking->hers = hers;
    checking->her = her;
    checking->terms.at = NULL, checking->terms.count = checking->terms.room = 0;
    checking->kept = NEW_MANY(checking->hers, void *, rule_count);
    checking->met_first = checking->all.count;
}

void checking_ask(struct checking *checking, const struct rule *rule, struct arena *scratch, const struct athlete_view *view,
                  const struct block_view *blocks, int block_count)
{
    her_begin(checking, scratch, *view);
    for (int i = 0; i < block_count; i++)
        ask_block(checking, rule, scratch, &blocks[i]);
    ask_athlete(checking, rule, scratch);
}

/* ---- errors alone ---- */

static bool rule_errs(const struct rule *rule)
{
    for (int goal = 0; goal < GOAL_COUNT; goal++)
        if (rule->level[goal] == LEVEL_ERROR)
            return true;
    return false;
}

static bool raises_errors(const struct check_line *lines, int count)
{
    for (int i = 0; i < count; i++)
        if (lines[i].says == CHECK_LEVEL && lines[i].level && !strcmp(lines[i].level, level_name(LEVEL_ERROR)))
            return true;
    return false;
}

/* The rules that are errors ask about the days before a meet, and about two blocks on one date. */
bool checking_asks(const struct checking *checking, const struct block *block)
{
    return !checking->errors_only || block->season;
}

bool checking_begin(struct checking *checking, struct arena *hers, const struct athlete *athlete, struct record *record,
                    const struct block *const *blocks, int block_count)
{
    if (!block_count ? checking->errors_only : block_count == 1 && !checking_asks(checking, blocks[0]))
        return false;
    her_begin(checking, hers, (struct athlete_view){ .model = checking->model, .athlete = athlete, .record = record });
    return true;
}

static bool is_asked(const struct checking *checking, const struct rule *rule)
{
    return !checking->errors_only || rule_errs(rule);
}

void checking_plan(struct checking *checking, struct arena *scratch, const struct plan *plan)
{
    struct block_view view = block_view_make(scratch, plan);
    for (int i = 0; i < rule_count; i++)
        if (is_asked(checking, &rules[i]))
            ask_block(checking, &rules[i], scratch, &view);
    vec_add(checking->hers, &checking->terms, block_term_of(&view));
}

/* What was met with her block by block, in the order of the rules. */
static void met_in_order(struct checking *checking)
{
    int count = checking->all.count - checking->met_first, sorted = 0;
    if (!count)
        return;
    struct met **met = checking->all.at + checking->met_first, **in_order = NEW_MANY(checking->hers, struct met *, count);
    for (int i = 0; i < rule_count; i++)
        for (int j = 0; j < count; j++)
            if (met[j]->rule == &rules[i])
                in_order[sorted++] = met[j];
    memcpy(met, in_order, sizeof *met * (size_t)count);
}

void checking_end(struct checking *checking, struct arena *scratch)
{
    checking->her.blocks = checking->terms.at, checking->her.block_count = checking->terms.count;
    diary_views_make(scratch, &checking->her);
    for (int i = 0; i < rule_count; i++)
        if (is_asked(checking, &rules[i]))
            ask_athlete(checking, &rules[i], scratch);
    met_in_order(checking);
}

bool checking_met(const struct checking *checking)
{
    return checking->all.count > 0;
}

bool checking_wants_everyone(const struct model *model)
{
    bool raised = raises_errors(model->checks, model->check_count);
    for (int i = 0; i < model->block_count; i++)
        raised |= raises_errors(model->blocks[i]->checks, model->blocks[i]->check_count);
    return raised;
}

struct checking *checking_new_errors(struct arena *arena, const struct model *model)
{
    if (checking_wants_everyone(model))
        return NULL;
    struct checking *checking = checking_new(arena, model);
    checking->errors_only = true;
    return checking;
}

struct checking *checking_new(struct arena *arena, const struct model *model)
{
    struct checking *checking = NEW(arena, struct checking);
    *checking = (struct checking){ .arena = arena, .model = model, .allow_used = NEW_MANY(arena, bool, model->allow_count + 1),
                                   .limits = limits_new(arena, model), .allows = allows_new(arena, model), .places.arena = arena,
                                   .subjects.arena = arena, .block_names.arena = arena };
    limits_check(checking->limits, model->checks, model->check_count);
    for (int i = 0; i < model->block_count; i++) {
        limits_check(checking->limits, model->blocks[i]->checks, model->blocks[i]->check_count);
        if (numbers_give(&checking->block_names, model->blocks[i]->name, 0) == checking->named.count)
            vec_add(arena, &checking->named, model->blocks[i]);
    }
    for (int i = 0; i < model->allow_count; i++) {
        if (rule_find(model->allows[i].rule))
            continue;
        const char *near = limits_nearest_rule(model, model->allows[i].rule);
        struct finding *finding = diag_add(model->findings, KIND_UNKNOWN_NAME, model->allows[i].rule_at, "no rule is called %s", model->allows[i].rule);
        diag_help(model->findings, finding, near ? "did you mean %s?" : "`setwright explain` lists them%s", near ? near : "");
    }
    return checking;
}

/* ---- saying ---- */

static const struct kind_row *row_of(struct checking *checking, const struct rule *rule)
{
    struct kind_row *row = NEW(checking->arena, struct kind_row);
    *row = (struct kind_row){ .name = rule->name, .level = rule->level[GOAL_GENERAL] >= 0 ? (enum level)rule->level[GOAL_GENERAL] : LEVEL_ADVICE,
                              .says = rule->asks };
    return row;
}

/* "; so in weeks 3, 4 and 6" for the weeks after the first. */
static const char *other_weeks(struct checking *checking, const struct met *met)
{
    int weeks[WEEKS_MOST], count = 0;
    for (int week = 1; week <= WEEKS_MOST; week++)
        if (week_in(&met->weeks, week) && week != met->setting.week && count < WEEKS_MOST)
            weeks[count++] = week;
    if (!count)
        return "";
    const char *list = arena_format(checking->arena, "; the same in week%s %d", count == 1 ? "" : "s", weeks[0]);
    for (int i = 1; i < count; i++)
        list = arena_format(checking->arena, "%s%s%d", list, i + 1 == count ? " and " : ", ", weeks[i]);
    return list;
}

static void say(struct checking *checking, const struct met *met)
{
    struct findings *findings = checking->model->findings;
    struct finding *finding = diag_add_rule(findings, row_of(checking, met->rule), (enum level)met->level, met->place.at, "%s%s", met->message,
                                            other_weeks(checking, met));
    struct setting setting = met->setting;
    diag_setting(findings, finding, setting);
    /* Athletes are named only where they differ. */
    if (met->athlete_count < met->block_athletes || !met->place.block)
        for (int i = 0; i < met->athlete_count; i++) {
            setting.athlete = met->athletes[i < SETTING_ATHLETES ? i : SETTING_ATHLETES - 1];
            if (i < SETTING_ATHLETES)
                diag_setting(findings, finding, setting);
            else
                finding->athlete_count++;
        }
    if (met->help)
        diag_help(findings, finding, "%s", met->help);
    for (const struct origin *origin = met->place.origin; origin; origin = origin->up)
        diag_related(findings, finding, origin->at, "%s", origin->says);
    finding->allowed = met->allowed;
}

/* ---- what the planner met itself: its kinds have rows here for `checks` and `allow` ---- */

static const struct block *block_named(const struct checking *checking, const char *name)
{
    int at = name ? numbers_known(&checking->block_names, name, 0) : -1;
    return at < 0 ? NULL : checking->named.at[at];
}

static void judge_planner(struct checking *checking, struct finding *finding)
{
    const struct rule *rule = NULL;
    for (int i = 0; i < rule_count && !rule; i++)
        if (rules[i].kind != KIND_NONE && rules[i].kind == finding->kind)
            rule = &rules[i];
    if (!rule)
        return;
    const struct block *block = block_named(checking, finding->setting.block);
    if (limits_off(checking->limits, block, rule)) {
        finding->off = true;
        return;
    }
    if (limits_speak_of_level(checking->limits, block, rule))
        finding->level = (enum level)limits_level(checking->limits, block, rule);
    const struct allow_line *allow = finding->level == LEVEL_ERROR ? NULL : allows_find(checking->allows, rule, block, finding->at, NULL);
    for (const struct related *related = finding->related; related && !allow && finding->level != LEVEL_ERROR; related = related->next)
        allow = allows_find(checking->allows, rule, block, related->at, NULL);
    if (allow) {
        checking->allow_used[allow->id] = true;
        finding->allowed = allow->because;
    }
}

/* ---- what nothing uses ---- */

static void say_plainly(struct checking *checking, const char *rule_name, struct span at, const char *message, const char *help)
{
    const struct rule *rule = rule_find(rule_name);
    int level = rule ? limits_level(checking->limits, NULL, rule) : LEVEL_OFF;
    if (level == LEVEL_OFF)
        return;
    const struct allow_line *allow = allows_find(checking->allows, rule, NULL, at, NULL);
    struct finding *finding = diag_add_rule(checking->model->findings, row_of(checking, rule), (enum level)level, at, "%s", message);
    diag_help(checking->model->findings, finding, "%s", help);
    if (allow) {
        finding->allowed = allow->because;
        checking->allow_used[allow->id] = true;
    }
}

static void say_unused(struct checking *checking)
{
    const struct model *model = checking->model;
    for (int i = 0; i < model->unused_count; i++) {
        const struct unused *unused = &model->unused[i];
        const char *message = unused->is_let ? arena_format(checking->arena, "$%s is set here and used nowhere", unused->name)
                                             : arena_format(checking->arena, "%s %s is declared here and used nowhere", unused->what, unused->name);
        say_plainly(checking, unused->is_let ? "unused-let" : "unused-name", unused->at, message,
                    unused->is_let ? "take it out, or write its name with the $ where it should hold" : "take it out, or put a # before its lines until it is needed");
    }
    for (int i = 0; i < model->allow_count; i++)
        if (!checking->allow_used[i] && rule_find(model->allows[i].rule))
            say_plainly(checking, "unused-allow", model->allows[i].at,
                        arena_format(checking->arena, "there is no finding of %s here to allow", model->allows[i].rule),
                        "take the line out: the plan keeps to the rule by itself, or the finding is an error, which nothing allows");
}

/* An error that is no rule's leaves a plan with holes, and rules asked of holes would answer nonsense. */
static bool plan_is_whole(struct finding *const *all, int count)
{
    for (int i = 0; i < count; i++) {
        bool of_rule = all[i]->kind == KIND_RULE;
        for (int j = 0; j < rule_count; j++)
            of_rule |= rules[j].kind == all[i]->kind;
        if (all[i]->level == LEVEL_ERROR && !all[i]->off && !of_rule)
            return false;
    }
    return true;
}

void checking_finish(struct checking *checking)
{
    int count;
    struct finding *const *all = findings_all(checking->model->findings, &count);
    for (int i = 0; i < count; i++)
        judge_planner(checking, all[i]);
    if (!plan_is_whole(all, count))
        return;
    for (int i = 0; i < checking->all.count; i++)
        say(checking, checking->all.at[i]);
    if (!checking->errors_only)
        say_unused(checking);
}
