/* Inside the library of setwright.h: what its files share. For src/api/ alone. */
#ifndef API_INNER_H
#define API_INNER_H

#include "setwright.h"

#include "base/vec.h"
#include "emit/format.h"
#include "model/resolve.h"
#include "plan/alike.h"
#include "plan/record.h"

/* One athlete in one block, in output order. */
struct pair {
    const struct athlete *athlete;
    int block;
    int run; /* how often she has trained a block of this name, this time included */
};

struct setwright {
    jmp_buf out_of_memory;
    struct arena *arena, *scratch, *work; /* the run's; the trees', then one plan's at a time; one call's */
    struct arena *hers;                   /* what outlives the plans of the athlete at hand, while she is checked */
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct reader reader;
    struct model *model; /* NULL until loaded without errors */
    struct shapes *shapes;  /* what athletes of one block share */
    struct steadies *steadies; /* what plans of the athlete at hand came to before, while they are checked one by one */
    struct alikes *alikes;  /* which of them are alike in a lift */
    struct alike alike;     /* whom the athlete at hand is like */
    bool is_alike;          /* false: nobody */
    bool bare, for_rules;   /* of the plans at hand, see plan_job */
    VEC(struct pair) pairs; /* of those who are made; once, by pairs_make */
    VEC(struct pair) common; /* of the one who waited and is being looked at: the blocks for all */
    struct arena *lifter;    /* she herself */
    const struct athlete *planned; /* whose plans, all of them, stand in `scratch`; NULL: nobody's */
    struct plan **plans;           /* hers, in order of her pairs; NULL where she leaves a block out */
    const struct finding *const *heard, *const *allowed; /* sorted; NULL: to be looked up anew */
    int heard_count, allowed_count;
    const char *problem;
    bool spent;          /* memory ended: what is here may be half made */
    size_t memory;        /* bytes that the three pools may hand out */
    struct budget budget; /* and what is left of that, and of work */
};

/* Every door into the library starts with this: where memory ends, the call ends, and so do all after it. */
#define GUARD(sw) GUARD_WITH(sw, SETWRIGHT_LIMIT)
#define GUARD_WITH(sw, value) \
    if ((sw)->spent) \
        return value; \
    switch (setjmp((sw)->out_of_memory)) { \
    case 0: \
        break; \
    case ARENA_BOUND: \
        api_exhausted(sw, ARENA_BOUND); \
        return value; \
    case ARENA_WORK: \
        api_exhausted(sw, ARENA_WORK); \
        return value; \
    default: \
        api_exhausted(sw, ARENA_EMPTY); \
        return value; \
    }

/* Says as the problem what has ended: ARENA_EMPTY, ARENA_BOUND or ARENA_WORK. */
void api_exhausted(struct setwright *sw, int ended);

/* Whether all went well so far: what the findings say. */
enum setwright_status api_status(const struct setwright *sw);

/* Fills sw->pairs once: athletes as first named by the blocks, within one the blocks in file order; an athlete's stand together.
 * Those who wait (model_waiting) have none: each trains the blocks for all, and comes after those who are made. */
void pairs_make(struct setwright *sw);
/* The same for who wants to look at everyone: nobody waits any more. */
void pairs_make_all(struct setwright *sw);

/* Where a walk over everyone in output order stands; it starts as zeros. */
struct standing {
    int pair, waiting, index;
};
int standing_order(const struct setwright *sw, const struct standing *at); /* the athlete's; -1: there are no more */
/* Her pairs. One who waited is made for it, and gone when the next is met. */
const struct pair *standing_meet(struct setwright *sw, const struct standing *at, int *count);
void standing_next(const struct setwright *sw, struct standing *at);

/* The pair's plan, added to what `scratch` holds. NULL: the athlete leaves all of the block out. Where a diary feeds results back,
 * all of her blocks are planned together, in order of their starts. */
struct plan *plan_add(struct setwright *sw, const struct pair *pair);
/* The same, alone in `scratch` (with the athlete's other plans, where she has a diary). */
struct plan *plan_pair(struct setwright *sw, const struct pair *pair);
/* Empties `scratch`. */
void plans_forget(struct setwright *sw);
/* The pairs of one athlete in order of their blocks' starts, in `arena`: results of the earlier ones count in the later. */
const int *pairs_by_start(struct setwright *sw, struct arena *arena, const struct pair *first, int count);
/* Plans her block of the pair; `record` and `steadies` as for plan_make; touched[block] likewise, or NULL. */
struct plan *plan_of(struct setwright *sw, const struct pair *pair, const struct block *block, struct record *record,
                     struct steadies *steadies, bool *const *touched);
/* All plans of an athlete with `count` pairs from `first` on, in their order, into `scratch`; touched[block] as for plan_make, or
 * NULL. `record` (may be NULL) gets her diary's record, NULL without a diary. */
struct plan **plans_of(struct setwright *sw, const struct pair *first, int count, bool *const *touched, struct record **record);

/* Who looks on while all athletes are checked. */
struct plan_taker {
    /* The index-th athlete, by her order; false: she is neither planned nor checked. Asked again where it looks ahead. */
    bool (*wants)(void *context, int order, int index);
    /* Before each athlete, until it is true: the rest is to be looked at first; then, if no error was met, `sure`. */
    bool (*ahead)(void *context);
    bool (*sure)(void *context); /* false ends the check */
    /* Asked of one who trains one block of which no rule asks anything: true, and no plan is made for `take`. `fine`: those she is
     * like were planned before and nothing was said of them. */
    bool (*knows)(void *context, const struct pair *pair, const struct alike *alike, bool fine);
    bool (*take)(void *context, const struct pair *first, int count, struct plan *const *plans); /* of all her pairs, NULL where
                                                     she leaves a block out; no plans: known ones; false ends the check */
    void *context;
};
struct checking;
bool check_all(struct setwright *sw, struct checking *checking, const struct plan_taker *taker); /* false: the taker ended it */

/* A caller's sink, with the usual load. */
static inline struct sink api_sink(struct setwright_sink sink)
{
    return (struct sink){ .write = sink.write, .context = sink.context };
}

/* What a caller's choice leaves of the plans. */
struct chosen {
    bool *athletes; /* by order; NULL: all */
    bool *blocks;
    int run;   /* 0: all */
    int weeks; /* of the longest chosen block */
    bool resumed; /* a part that others come before */
    struct narrow narrow;
};

/* Refuses names, dates and weeks that are not there, with the problem said. Ends what `work` holds. Everyone is made, ... */
enum setwright_status api_choose(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out);
/* ... but here: who wait go on waiting, unless the choice names people. */
enum setwright_status api_choose_waiting(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out);
/* api_choose for what was done: dates without a plan are fine. */
enum setwright_status api_choose_past(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out);
bool is_chosen(const struct chosen *chosen, const struct pair *pair);

/* "no WHAT is called NAME; did you mean NEAR?" (near may be NULL), as a mistake in how the library was asked. */
enum setwright_status api_problem(struct setwright *sw, const char *what, const char *name, const char *near);

enum setwright_status api_format_problem(struct setwright *sw, const char *name); /* no format is called so */

#endif
