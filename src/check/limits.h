/* The house's limits: `checks` lines read against the table of rules. */
#ifndef CHECK_LIMITS_H
#define CHECK_LIMITS_H

#include "check/rule.h"

/* What the house says, found at once; lives in the arena. */
struct limits;
struct limits *limits_new(struct arena *arena, const struct model *model);

/* Findings for lines that name no rule, no lift or muscle, or a limit that the rule does not have. */
void limits_check(const struct limits *limits, const struct check_line *lines, int count);

/* In force for a block (NULL: the top level alone). */
struct bounds limits_bounds(struct limits *limits, const struct block *block, const struct rule *rule, const char *subject);
bool limits_is_own(struct limits *limits, const struct block *block, const struct rule *rule, const char *subject);
struct bounds limits_second(struct limits *limits, const struct block *block, const struct rule *rule);
int limits_level(struct limits *limits, const struct block *block, const struct rule *rule); /* enum level or LEVEL_OFF */
bool limits_level_is_own(struct limits *limits, const struct block *block, const struct rule *rule); /* the house says which */
bool limits_speak_of_level(struct limits *limits, const struct block *block, const struct rule *rule); /* of any lift or muscle too */
bool limits_off(struct limits *limits, const struct block *block, const struct rule *rule);

/* A rule's name near to a wrong one, or NULL. */
const char *limits_nearest_rule(const struct model *model, const char *name);

#endif
