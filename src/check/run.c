#include "check/run.h"

#include "base/vec.h"
#include "check/limits.h"
#include "check/views.h"

#include <string.h>

/* One thing met, folded over weeks, athletes and blocks: one rule at one place about one subject. */
struct met {
    const struct rule *rule;
    struct place_met place;
    const struct block *block;
    const char *allowed; /* its reason, or NULL */
    int level;
    const char *message, *help;
    struct setting setting;
    struct week_set weeks;
    const char *athletes[SETTING_ATHLETES];
    int athlete_count, block_athletes; /* for whom it was met; how many the block is for */
    const struct athlete *last_athlete;
    struct met *next; /* in the same slot */
};

enum { SLOTS = 4096 };

struct checking {
    struct arena *arena;
    const struct model *model;
    struct met *slots[SLOTS];
    VEC(struct met *) all; /* in order of meeting */
    bool *allow_used;
    bool errors_only;
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

/* The lines of `checks` are gone through for each question. */
static void lines_passed(const struct asking *asking, const struct block *block)
{
    arena_search(asking->scratch, asking->checking->model->check_count + (block ? block->check_count : 0));
}

struct bounds rule_limit(const struct asking *asking, const struct block_view *block, const char *subject)
{
    lines_passed(asking, block ? block->block : NULL);
    return limits_bounds(asking->checking->model, block ? block->block : NULL, asking->rule, subject);
}

bool rule_limit_is_own(const struct asking *asking, const struct block_view *block, const char *subject)
{
    lines_passed(asking, block ? block->block : NULL);
    return limits_is_own(asking->checking->model, block ? block->block : NULL, asking->rule, subject);
}

struct bounds rule_second_limit(const struct asking *asking, const struct block_view *block)
{
    return limits_second(asking->checking->model, block ? block->block : NULL, asking->rule);
}

bool rule_is_off(const struct asking *asking, const struct block_view *block)
{
    lines_passed(asking, block ? block->block : NULL);
    return limits_level(asking->checking->model, block ? block->block : NULL, asking->rule) == LEVEL_OFF;
}

/* ---- places ---- */

struct place_met met_set(const struct block_view *block, const struct set_view *set)
{
    return (struct place_met){ .block = block, .week = set->week, .day = set->day, .entry = set->entry,
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
    return (struct place_met){ .block = block, .week = day->week, .day = day->day, .at = day->day->day->at, .origin = day->day->day->origin,
                               .level = LEVEL_OF_GOAL };
}

struct place_met met_block(const struct block_view *block)
{
    return (struct place_met){ .block = block, .at = block->block->at, .level = LEVEL_OF_GOAL };
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
    place.week = week->week;
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

/* ---- allow ---- */

static bool within(struct span at, struct span scope)
{
    return span_is_somewhere(at) && at.start >= scope.start && at.end <= scope.end;
}

static bool allow_fits(const struct allow_line *allow, const struct rule *rule, struct span at, const struct origin *origin)
{
    if (strcmp(allow->rule, rule->name) != 0)
        return false;
    if (within(at, allow->scope))
        return true;
    for (; origin; origin = origin->up)
        if (within(origin->at, allow->scope))
            return true;
    return false;
}

/* By the words' place, or by the block: a block's `allow` reaches the template's words and the athletes' maxes too. */
static const struct allow_line *allow_for(struct checking *checking, const struct rule *rule, const struct block *block, struct span at,
                                          const struct origin *origin)
{
    const struct model *model = checking->model;
    const struct allow_line *found = NULL;
    arena_search(checking->arena, model->allow_count + (block ? block->allow_count : 0));
    for (int i = 0; i < model->allow_count && !found; i++)
        if (allow_fits(&model->allows[i], rule, at, origin))
            found = &model->allows[i];
    for (int i = 0; block && i < block->allow_count && !found; i++)
        if (!strcmp(block->allows[i]->rule, rule->name))
            found = block->allows[i];
    return found;
}

/* ---- meeting ---- */

static bool same_text(const char *a, const char *b)
{
    return a == b || (a && b && !strcmp(a, b));
}

/* Too few in one week and too many in another is not one thing: they differ in their help. */
static bool same_met(const struct met *met, const struct rule *rule, const struct place_met *place, const char *allowed, const char *help)
{
    return met->rule == rule && met->place.at.start == place->at.start && met->place.at.end == place->at.end && met->allowed == allowed &&
           same_text(met->place.subject, place->subject) &&
           (!place->subject || same_text(met->help, help));
}

static struct met **slot_of(struct checking *checking, const struct place_met *place)
{
    return &checking->slots[(place->at.start * UINT32_C(2654435761)) >> 20 & (SLOTS - 1)];
}

static void met_again(struct met *met, const struct asking *asking, const struct place_met *place)
{
    if (place->week)
        week_add(&met->weeks, place->week->number);
    if (met->last_athlete == asking->athlete)
        return;
    if (met->athlete_count < SETTING_ATHLETES)
        met->athletes[met->athlete_count] = asking->athlete->name;
    met->athlete_count++;
    met->last_athlete = asking->athlete;
}

static struct met *met_new(struct asking *asking, const struct place_met *place, int level, const char *allowed, const char *help,
                           const char *format, va_list args)
{
    struct checking *checking = asking->checking;
    struct met *met = NEW(checking->arena, struct met);
    *met = (struct met){ .rule = asking->rule, .place = *place, .level = level, .allowed = allowed,
                         .message = arena_vformat(checking->arena, format, args),
                         .help = help ? arena_copy(checking->arena, help, strlen(help)) : NULL };
    if (place->subject)
        met->place.subject = arena_copy(checking->arena, place->subject, strlen(place->subject));
    met->block = place->block ? place->block->block : NULL;
    met->block_athletes = met->block ? met->block->athlete_count : 0;
    met->setting.block = met->block ? met->block->name : NULL;
    met->setting.week = place->week ? place->week->number : 0;
    met->setting.day = place->day ? place->day->day->label : NULL;
    met->setting.lift = place->entry ? place->entry->lift->name : NULL;
    /* The views die with the athlete. */
    met->place.block = NULL, met->place.week = NULL, met->place.day = NULL, met->place.entry = NULL;
    struct met **slot = slot_of(checking, place);
    met->next = *slot;
    *slot = met;
    vec_add(checking->arena, &checking->all, met);
    return met;
}

void rule_hit(struct asking *asking, struct place_met place, const char *help, const char *format, ...)
{
    struct checking *checking = asking->checking;
    const struct block *block = place.block ? place.block->block : NULL;
    lines_passed(asking, block);
    int level = limits_level(checking->model, block, asking->rule);
    if (level == LEVEL_OFF)
        return;
    if (place.level != LEVEL_OF_GOAL && !limits_level_is_own(checking->model, block, asking->rule))
        level = place.level;
    if (checking->errors_only && level != LEVEL_ERROR)
        return;
    const struct allow_line *allow = level == LEVEL_ERROR ? NULL : allow_for(checking, asking->rule, block, place.at, place.origin);
    if (allow)
        checking->allow_used[allow->id] = true;
    const char *allowed = allow ? allow->because : NULL;
    struct met *met = *slot_of(checking, &place);
    while (met && !same_met(met, asking->rule, &place, allowed, help))
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

void checking_ask(struct checking *checking, const struct rule *rule, struct arena *scratch, const struct athlete_view *view)
{
    struct asking asking = { .checking = checking, .rule = rule, .athlete = view->athlete, .scratch = scratch };
    for (int i = 0; rule->block && i < view->block_count; i++)
        if (!rule_is_off(&asking, &view->blocks[i]))
            rule->block(&asking, &view->blocks[i]);
    if (rule->athlete)
        rule->athlete(&asking, view);
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

void checking_athlete(struct checking *checking, struct arena *scratch, const struct athlete *athlete, struct record *record,
                      struct plan *const *plans, int plan_count)
{
    if (!plan_count ? checking->errors_only : plan_count == 1 && !checking_asks(checking, plans[0]->block))
        return;
    struct athlete_view view = athlete_view_make(scratch, checking->model, athlete, record, plans, plan_count);
    for (int i = 0; i < rule_count; i++)
        if (!checking->errors_only || rule_errs(&rules[i]))
            checking_ask(checking, &rules[i], scratch, &view);
}

bool checking_met(const struct checking *checking)
{
    return checking->all.count > 0;
}

struct checking *checking_new_errors(struct arena *arena, const struct model *model)
{
    bool raised = raises_errors(model->checks, model->check_count);
    for (int i = 0; i < model->block_count; i++)
        raised |= raises_errors(model->blocks[i]->checks, model->blocks[i]->check_count);
    if (raised)
        return NULL;
    struct checking *checking = checking_new(arena, model);
    checking->errors_only = true;
    return checking;
}

struct checking *checking_new(struct arena *arena, const struct model *model)
{
    struct checking *checking = NEW(arena, struct checking);
    *checking = (struct checking){ .arena = arena, .model = model, .allow_used = NEW_MANY(arena, bool, model->allow_count + 1) };
    limits_check(model, model->checks, model->check_count);
    for (int i = 0; i < model->block_count; i++)
        limits_check(model, model->blocks[i]->checks, model->blocks[i]->check_count);
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
    if (met->athlete_count < met->block_athletes || !met->block)
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

static const struct block *block_named(const struct model *model, const char *name)
{
    for (int i = 0; name && i < model->block_count; i++)
        if (model->blocks[i]->name == name)
            return model->blocks[i];
    return NULL;
}

static void judge_planner(struct checking *checking, struct finding *finding)
{
    const struct rule *rule = NULL;
    for (int i = 0; i < rule_count && !rule; i++)
        if (rules[i].kind != KIND_NONE && rules[i].kind == finding->kind)
            rule = &rules[i];
    if (!rule)
        return;
    const struct block *block = block_named(checking->model, finding->setting.block);
    if (limits_off(checking->model, block, rule->name)) {
        finding->off = true;
        return;
    }
    for (int i = 0; i < checking->model->check_count + (block ? block->check_count : 0); i++) {
        const struct check_line *line = i < checking->model->check_count ? &checking->model->checks[i] : &block->checks[i - checking->model->check_count];
        if (line->says == CHECK_LEVEL && !strcmp(line->rule, rule->name))
            finding->level = (enum level)limits_level(checking->model, block, rule);
    }
    const struct allow_line *allow = finding->level == LEVEL_ERROR ? NULL : allow_for(checking, rule, block, finding->at, NULL);
    for (const struct related *related = finding->related; related && !allow && finding->level != LEVEL_ERROR; related = related->next)
        allow = allow_for(checking, rule, block, related->at, NULL);
    if (allow) {
        checking->allow_used[allow->id] = true;
        finding->allowed = allow->because;
    }
}

/* ---- what nothing uses ---- */

static void say_plainly(struct checking *checking, const char *rule_name, struct span at, const char *message, const char *help)
{
    const struct rule *rule = rule_find(rule_name);
    int level = rule ? limits_level(checking->model, NULL, rule) : LEVEL_OFF;
    if (level == LEVEL_OFF)
        return;
    const struct allow_line *allow = allow_for(checking, rule, NULL, at, NULL);
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
