/* What a rule says of a plan, for the tests of rules whose views are given a part by hand. */
#ifndef TESTS_UNIT_RULES_ASKED_H
#define TESTS_UNIT_RULES_ASKED_H

#include "club.h"

#include "check/run.h"
#include "check/views.h"

enum met_parts { MET_MESSAGE, MET_LEVEL = 1, MET_HELP = 2 };

/* "level `words pointed at` message / help", a line a finding of the rule; level and help where parts asks for them. */
static inline const char *met_text(struct told *t, const char *rule, int parts)
{
    const char *text = "";
    int count = findings_total(t->findings);
    const struct finding *const *sorted = findings_sorted(t->findings);
    for (int i = 0; i < count; i++)
        if (!strcmp(sorted[i]->row->name, rule))
            text = arena_format(t->arena, "%s%s%s%s`%s` %s%s%s", text, *text ? "\n" : "",
                                parts & MET_LEVEL ? level_name(sorted[i]->level) : "", parts & MET_LEVEL ? " " : "",
                                spelt(t, sorted[i]->at), sorted[i]->message, parts & MET_HELP ? " / " : "",
                                parts & MET_HELP ? sorted[i]->help : "");
    return text;
}

/* Puts the one rule to the one athlete, of whom `view` says what no plan does. */
static inline void ask_rule(struct told *t, const char *rule, struct athlete_view view, const struct block_view *blocks,
                            int block_count)
{
    struct checking *checking = checking_new(t->arena, t->model);
    struct block_term *terms = NEW_MANY(t->arena, struct block_term, block_count + 1);
    for (int i = 0; i < block_count; i++)
        terms[i] = block_term_of(&blocks[i]);
    view.blocks = terms, view.block_count = block_count;
    assert_non_null(rule_find(rule));
    checking_ask(checking, rule_find(rule), t->arena, &view, blocks, block_count);
    checking_finish(checking);
}

struct asked {
    const char *says, *rule, *block; /* lines of block winter, for ines, from 2027-01-04, a Monday */
    const char *meet;                /* NULL: none */
    bool not_last;                   /* a later block of the season follows */
    const char *met;                 /* "`words pointed at` message", a line each */
};

static inline void asked_holds(void **state)
{
    const struct asked *asked = *state;
    char text[4096];
    snprintf(text, sizeof text, "%sblock winter {\n for ines\n starts 2027-01-04\n%s\n}\n", INES, asked->block);
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    struct block_view block = block_view_make(t.arena, told_plan(&t, "winter", "ines"));
    if (asked->meet)
        assert_true(date_parse(asked->meet, strlen(asked->meet), &block.meet));
    block.last_of_season = asked->meet && !asked->not_last;
    ask_rule(&t, asked->rule, (struct athlete_view){ .model = t.model, .athlete = told_athlete(&t, "ines") }, &block, 1);
    assert_string_equal(met_text(&t, asked->rule, MET_MESSAGE), asked->met);
    told_end(&t);
}

#endif
