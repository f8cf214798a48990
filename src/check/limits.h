/* The house's limits: `checks` lines read against the table of rules. */
#ifndef CHECK_LIMITS_H
#define CHECK_LIMITS_H

#include "check/rule.h"

/* Findings for lines that name no rule, no lift or muscle, or a limit that the rule does not have. */
void limits_check(const struct model *model, const struct check_line *lines, int count);

/* In force for a block (NULL: the top level alone). */
struct bounds limits_bounds(const struct model *model, const struct block *block, const struct rule *rule, const char *subject);
bool limits_is_own(const struct model *model, const struct block *block, const struct rule *rule, const char *subject);
struct bounds limits_second(const struct model *model, const struct block *block, const struct rule *rule);
int limits_level(const struct model *model, const struct block *block, const struct rule *rule); /* enum level or LEVEL_OFF */
bool limits_level_is_own(const struct model *model, const struct block *block, const struct rule *rule); /* the house says which */
bool limits_off(const struct model *model, const struct block *block, const char *rule);

/* A rule's name near to a wrong one, or NULL. */
const char *limits_nearest_rule(const struct model *model, const char *name);

#endif
