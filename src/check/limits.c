#include "check/limits.h"

#include "base/near.h"
#include "base/vec.h"

#include <string.h>

static const char *const level_words[] = { "error", "warning", "advice" };

/* What a limit is counted in, and how it is written. */
static const struct {
    unsigned units; /* bits of enum unit that fit */
    bool effort;
    const char *word, *example;
} unit_rows[] = {
    [LIMIT_NONE] = { 0, false, NULL, "" },
    [LIMIT_PERCENT] = { 1u << UNIT_PERCENT, false, NULL, "75%" },
    [LIMIT_SETS] = { 1u << UNIT_NONE, false, "sets", "10" },
    [LIMIT_REPS] = { 1u << UNIT_NONE, false, "reps", "5" },
    [LIMIT_EFFORT] = { 0, true, NULL, "rpe 8" },
    [LIMIT_POINTS] = { 1u << UNIT_NONE, false, NULL, "1.5" },
    [LIMIT_DAYS] = { 1u << UNIT_NONE, false, "days", "2 days" },
    [LIMIT_WEEKS] = { 1u << UNIT_NONE, false, "weeks", "6" },
    [LIMIT_MINUTES] = { 1u << UNIT_NONE | 1u << UNIT_MINUTES, false, NULL, "120 min" },
};

/* What a line is about; a level is kept a second time, whatever its lift or muscle. */
enum about { ABOUT_LIMIT, ABOUT_LEVEL, ABOUT_OFF, ABOUT_ANY_LEVEL, ABOUTS };

struct limits {
    const struct model *model;
    struct numbers lifts, muscles; /* their names */
    struct numbers places;         /* the blocks whose lines are indexed; NULL: the top level */
    struct numbers rules;          /* a place, and a rule with what a line says of it */
    struct numbers subjects;       /* that for a lift or a muscle, NULL: for all */
    VEC(const struct check_line *) nearest; /* by the number of the last: of one place, the last written */
};

struct limits *limits_new(struct arena *arena, const struct model *model)
{
    struct limits *limits = NEW(arena, struct limits);
    *limits = (struct limits){ .model = model, .lifts.arena = arena, .muscles.arena = arena, .places.arena = arena, .rules.arena = arena,
                               .subjects.arena = arena };
    for (int i = 0; i < model->lift_count; i++) {
        numbers_give(&limits->lifts, model->lifts[i]->name, 0);
        for (int j = 0; j < model->lifts[i]->works_count; j++)
            numbers_give(&limits->muscles, model->lifts[i]->works[j], 0);
        for (int j = 0; j < model->lifts[i]->helps_count; j++)
            numbers_give(&limits->muscles, model->lifts[i]->helps[j], 0);
    }
    return limits;
}

const char *limits_nearest_rule(const struct model *model, const char *name)
{
    const char **names = NEW_MANY(model->arena, const char *, rule_count);
    for (int i = 0; i < rule_count; i++)
        names[i] = rules[i].name;
    return word_nearest(name, names, rule_count);
}

static void rule_unknown(const struct model *model, const char *name, struct span at)
{
    const char *near = limits_nearest_rule(model, name);
    struct finding *finding = diag_add(model->findings, KIND_UNKNOWN_NAME, at, "no rule is called %s", name);
    diag_help(model->findings, finding, near ? "did you mean %s?" : "`setwright explain` lists them%s", near ? near : "");
}

static void subject_check(const struct limits *limits, const struct check_line *line, const struct rule *rule)
{
    const struct model *model = limits->model;
    struct finding *finding = NULL;
    if (rule->subject == SUBJECT_NONE)
        finding = diag_add(model->findings, KIND_MISPLACED, line->subject_at, "%s has one limit for all lifts", rule->name);
    else if (rule->subject == SUBJECT_LIFT && numbers_known(&limits->lifts, line->subject, 0) < 0)
        finding = diag_add(model->findings, KIND_UNKNOWN_NAME, line->subject_at, "no lift is called %s", line->subject);
    else if (rule->subject == SUBJECT_MUSCLE && numbers_known(&limits->muscles, line->subject, 0) < 0)
        finding = diag_add(model->findings, KIND_UNKNOWN_NAME, line->subject_at, "no lift works or helps a muscle called %s", line->subject);
    if (finding)
        diag_help(model->findings, finding, "write it as `%s`", rule->limit_says);
}

static bool number_fits(const struct check_number *number, enum limit_unit unit)
{
    bool word = !number->word || (unit_rows[unit].word && !strcmp(number->word, unit_rows[unit].word));
    if (unit_rows[unit].effort)
        return number->is_effort;
    return !number->is_effort && word && (unit_rows[unit].units >> number->unit & 1);
}

/* Whether the rule has a limit on the side or sides that are set: `at least 4` means nothing to a rule that asks for at most. */
static bool sides_fit(const struct check_line *line, const struct rule *rule)
{
    bool low = false, high = false;
    for (int goal = 0; goal < GOAL_COUNT; goal++) {
        low |= rule->limit[goal].low.e10 >= 0;
        high |= rule->limit[goal].high.e10 >= 0;
    }
    return (low || line->says == CHECK_AT_MOST) && (high || line->says == CHECK_AT_LEAST);
}

/* The second of `8 to 16` is of one kind with the first; that of `30% and 3 sets` is in sets. */
static bool value_fits(const struct check_line *line, const struct rule *rule)
{
    bool range = line->says == CHECK_TO;
    return sides_fit(line, rule) && number_fits(&line->first, rule->unit) && line->numbers <= (range || rule->has_second ? 2 : 1) &&
           (line->numbers < 2 || number_fits(&line->second, range ? rule->unit : LIMIT_SETS));
}

static void line_check(const struct limits *limits, const struct check_line *line)
{
    const struct model *model = limits->model;
    const struct rule *rule = rule_find(line->rule);
    struct finding *finding = NULL;
    if (!rule) {
        rule_unknown(model, line->rule, line->rule_at);
        return;
    }
    if (line->subject)
        subject_check(limits, line, rule);
    if (line->says == CHECK_OFF)
        return;
    if (line->says == CHECK_LEVEL) {
        bool known = false;
        for (int i = 0; i < 3; i++)
            known |= !strcmp(line->level, level_words[i]);
        if (!known)
            diag_help(model->findings, diag_add(model->findings, KIND_UNKNOWN_NAME, line->value_at, "`%s` is no level of a finding", line->level),
                      "write error, warning or advice");
        return;
    }
    if (rule->unit == LIMIT_NONE)
        finding = diag_add(model->findings, KIND_MISPLACED, line->value_at, "%s has no limit to set", rule->name);
    else if (!value_fits(line, rule))
        finding = diag_add(model->findings, KIND_UNIT, line->value_at, "this is no limit for %s", rule->name);
    else if (line->says == CHECK_TO && line->first.amount.e10 > line->second.amount.e10)
        finding = diag_add(model->findings, KIND_RANGE, line->value_at, "this range runs from high to low");
    if (finding)
        diag_help(model->findings, finding, rule->unit == LIMIT_NONE ? "%s" : "write it as `%s`",
                  rule->unit == LIMIT_NONE ? "set its level, or switch it off with a reason" : rule->limit_says);
}

void limits_check(const struct limits *limits, const struct check_line *lines, int count)
{
    for (int i = 0; i < count; i++)
        line_check(limits, &lines[i]);
}

/* ---- what is in force ---- */

static uint64_t about_rule(const struct rule *rule, enum about about)
{
    return (uint64_t)(rule - rules) * ABOUTS + about;
}

static void line_index(struct limits *limits, const struct block *block, const struct rule *rule, enum about about,
                       const struct check_line *line, const char *subject)
{
    int of_rule = numbers_give(&limits->rules, block, about_rule(rule, about));
    int at = numbers_give(&limits->subjects, subject, (uint64_t)of_rule);
    if (at == limits->nearest.count)
        vec_add(limits->subjects.arena, &limits->nearest, line);
    limits->nearest.at[at] = line;
}

/* Once for each place, when it is first asked for. */
static void lines_index(struct limits *limits, const struct block *block, const struct check_line *lines, int count)
{
    int known = limits->places.count;
    if (numbers_give(&limits->places, block, 0) < known)
        return;
    for (int i = 0; i < count; i++) {
        const struct check_line *line = &lines[i];
        const struct rule *rule = rule_find(line->rule);
        if (!rule)
            continue;
        line_index(limits, block, rule, line->says == CHECK_OFF ? ABOUT_OFF : line->says == CHECK_LEVEL ? ABOUT_LEVEL : ABOUT_LIMIT, line,
                   line->says == CHECK_OFF ? NULL : line->subject);
        if (line->says == CHECK_LEVEL)
            line_index(limits, block, rule, ABOUT_ANY_LEVEL, line, NULL);
    }
}

static const struct check_line *nearest(struct limits *limits, const struct block *block, const struct rule *rule, enum about about,
                                        const char *subject)
{
    const struct check_line *lines = block ? block->checks : limits->model->checks;
    int count = block ? block->check_count : limits->model->check_count;
    if (!count)
        return NULL;
    lines_index(limits, block, lines, count);
    int of_rule = numbers_known(&limits->rules, block, about_rule(rule, about));
    int at = of_rule < 0 ? -1 : numbers_known(&limits->subjects, subject, (uint64_t)of_rule);
    return at < 0 ? NULL : limits->nearest.at[at];
}

/* The nearest line: a block's over the top level's, the last written of one place. `subject` must match, or be missing. */
static const struct check_line *in_force(struct limits *limits, const struct block *block, const struct rule *rule, enum about about,
                                         const char *subject)
{
    const struct check_line *line = block ? nearest(limits, block, rule, about, subject) : NULL;
    return line ? line : nearest(limits, NULL, rule, about, subject);
}

static void bound_by(struct bounds *bounds, const struct check_line *line)
{
    if (!line)
        return;
    if (line->says == CHECK_AT_LEAST || line->says == CHECK_TO)
        bounds->low = line->first.amount;
    if (line->says == CHECK_AT_MOST)
        bounds->high = line->first.amount;
    if (line->says == CHECK_TO)
        bounds->high = line->second.amount;
}

static enum goal goal_of(const struct block *block)
{
    return block ? block->goal : GOAL_GENERAL;
}

struct bounds limits_bounds(struct limits *limits, const struct block *block, const struct rule *rule, const char *subject)
{
    struct bounds bounds = rule->limit[goal_of(block)];
    bound_by(&bounds, in_force(limits, block, rule, ABOUT_LIMIT, NULL));
    if (subject)
        bound_by(&bounds, in_force(limits, block, rule, ABOUT_LIMIT, subject));
    return bounds;
}

bool limits_is_own(struct limits *limits, const struct block *block, const struct rule *rule, const char *subject)
{
    return in_force(limits, block, rule, ABOUT_LIMIT, subject) != NULL;
}

struct bounds limits_second(struct limits *limits, const struct block *block, const struct rule *rule)
{
    const struct check_line *line = in_force(limits, block, rule, ABOUT_LIMIT, NULL);
    struct bounds bounds = rule->second;
    if (line && line->numbers == 2 && line->says == CHECK_AT_MOST)
        bounds.high = line->second.amount;
    return bounds;
}

bool limits_off(struct limits *limits, const struct block *block, const struct rule *rule)
{
    return in_force(limits, block, rule, ABOUT_OFF, NULL) != NULL;
}

bool limits_speak_of_level(struct limits *limits, const struct block *block, const struct rule *rule)
{
    return in_force(limits, block, rule, ABOUT_ANY_LEVEL, NULL) != NULL;
}

bool limits_level_is_own(struct limits *limits, const struct block *block, const struct rule *rule)
{
    return in_force(limits, block, rule, ABOUT_LEVEL, NULL) != NULL;
}

int limits_level(struct limits *limits, const struct block *block, const struct rule *rule)
{
    const struct check_line *line = in_force(limits, block, rule, ABOUT_LEVEL, NULL);
    if (limits_off(limits, block, rule))
        return LEVEL_OFF;
    for (int i = 0; line && i < 3; i++)
        if (!strcmp(line->level, level_words[i]))
            return i;
    return rule->level[goal_of(block)];
}
