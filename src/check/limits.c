#include "check/limits.h"

#include "base/near.h"

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

static bool muscle_is_known(const struct model *model, const char *name)
{
    for (int i = 0; i < model->lift_count; i++) {
        for (int j = 0; j < model->lifts[i]->works_count; j++)
            if (model->lifts[i]->works[j] == name)
                return true;
        for (int j = 0; j < model->lifts[i]->helps_count; j++)
            if (model->lifts[i]->helps[j] == name)
                return true;
    }
    return false;
}

static bool lift_is_known(const struct model *model, const char *name)
{
    for (int i = 0; i < model->lift_count; i++)
        if (model->lifts[i]->name == name)
            return true;
    return false;
}

static void subject_check(const struct model *model, const struct check_line *line, const struct rule *rule)
{
    struct finding *finding = NULL;
    if (rule->subject == SUBJECT_NONE)
        finding = diag_add(model->findings, KIND_MISPLACED, line->subject_at, "%s has one limit for all lifts", rule->name);
    else if (rule->subject == SUBJECT_LIFT && !lift_is_known(model, line->subject))
        finding = diag_add(model->findings, KIND_UNKNOWN_NAME, line->subject_at, "no lift is called %s", line->subject);
    else if (rule->subject == SUBJECT_MUSCLE && !muscle_is_known(model, line->subject))
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

static void line_check(const struct model *model, const struct check_line *line)
{
    const struct rule *rule = rule_find(line->rule);
    struct finding *finding = NULL;
    if (!rule) {
        rule_unknown(model, line->rule, line->rule_at);
        return;
    }
    if (line->subject)
        subject_check(model, line, rule);
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

void limits_check(const struct model *model, const struct check_line *lines, int count)
{
    for (int i = 0; i < count; i++)
        line_check(model, &lines[i]);
}

/* ---- what is in force ---- */

/* The nearest line: a block's over the top level's, the last written of one place. `subject` must match, or be missing. */
static const struct check_line *nearest(const struct check_line *lines, int count, const struct rule *rule, const char *subject, bool level)
{
    for (int i = count - 1; i >= 0; i--) {
        const struct check_line *line = &lines[i];
        bool wanted = level ? line->says == CHECK_LEVEL : line->says <= CHECK_TO;
        if (wanted && !strcmp(line->rule, rule->name) && line->subject == subject)
            return line;
    }
    return NULL;
}

static const struct check_line *in_force(const struct model *model, const struct block *block, const struct rule *rule, const char *subject,
                                         bool level)
{
    const struct check_line *line = block ? nearest(block->checks, block->check_count, rule, subject, level) : NULL;
    return line ? line : nearest(model->checks, model->check_count, rule, subject, level);
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

struct bounds limits_bounds(const struct model *model, const struct block *block, const struct rule *rule, const char *subject)
{
    struct bounds bounds = rule->limit[goal_of(block)];
    bound_by(&bounds, in_force(model, block, rule, NULL, false));
    if (subject)
        bound_by(&bounds, in_force(model, block, rule, subject, false));
    return bounds;
}

bool limits_is_own(const struct model *model, const struct block *block, const struct rule *rule, const char *subject)
{
    return in_force(model, block, rule, subject, false) != NULL;
}

struct bounds limits_second(const struct model *model, const struct block *block, const struct rule *rule)
{
    const struct check_line *line = in_force(model, block, rule, NULL, false);
    struct bounds bounds = rule->second;
    if (line && line->numbers == 2 && line->says == CHECK_AT_MOST)
        bounds.high = line->second.amount;
    return bounds;
}

bool limits_off(const struct model *model, const struct block *block, const char *rule)
{
    for (int i = 0; block && i < block->check_count; i++)
        if (block->checks[i].says == CHECK_OFF && !strcmp(block->checks[i].rule, rule))
            return true;
    for (int i = 0; i < model->check_count; i++)
        if (model->checks[i].says == CHECK_OFF && !strcmp(model->checks[i].rule, rule))
            return true;
    return false;
}

bool limits_level_is_own(const struct model *model, const struct block *block, const struct rule *rule)
{
    return in_force(model, block, rule, NULL, true) != NULL;
}

int limits_level(const struct model *model, const struct block *block, const struct rule *rule)
{
    const struct check_line *line = in_force(model, block, rule, NULL, true);
    if (limits_off(model, block, rule->name))
        return LEVEL_OFF;
    for (int i = 0; line && i < 3; i++)
        if (!strcmp(line->level, level_words[i]))
            return i;
    return rule->level[goal_of(block)];
}
