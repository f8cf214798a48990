/* What several rules ask of a set, a week or a limit. */
#ifndef CHECK_ASK_H
#define CHECK_ASK_H

#include "base/vec.h"
#include "check/rule.h"

enum { WEEK_DAYS = 7, HARD_EFFORT = 5 /* from it on a set is a hard one */ };

/* A number of parts against a bound, without a fraction made of them. Here and further down: a bound below 0 is none, and nothing is
 * below or above it. */
static inline bool parts_below(wide parts, int64_t of_one, struct dec bound)
{
    return bound.e10 >= 0 && parts * DEC_ONE < (wide)bound.e10 * of_one;
}

static inline bool parts_above(wide parts, int64_t of_one, struct dec bound)
{
    return bound.e10 >= 0 && parts * DEC_ONE > (wide)bound.e10 * of_one;
}

static inline bool is_competition(const struct lift *lift)
{
    return lift->kind == LIFT_COMPETITION;
}

static inline bool at_effort(const struct set_view *set, int effort)
{
    return set->has_effort && set->effort.e10 >= dec_int(effort).e10;
}

/* Efforts, of sets that have one. */
static inline struct ratio effort_of(const struct set_view *set)
{
    return set->effort_exact ? *set->effort_exact : ratio_dec(set->effort);
}

static inline bool effort_below(const struct set_view *set, struct dec bound)
{
    return bound.e10 >= 0 && set->effort.e10 < bound.e10;
}

static inline bool effort_above(const struct set_view *set, struct dec bound)
{
    return bound.e10 >= 0 && (set->effort.e10 > bound.e10 || (set->effort.e10 == bound.e10 && set->effort_exact));
}

static inline bool is_harder(const struct set_view *set, const struct set_view *other)
{
    if (set->effort.e10 != other->effort.e10 || (!set->effort_exact && !other->effort_exact))
        return set->effort.e10 > other->effort.e10;
    return ratio_cmp(effort_of(set), effort_of(other)) > 0;
}

/* How much harder it is than the other, compared: -1, 0, 1. */
static inline int harder_by(const struct set_view *set, const struct set_view *other, struct dec points)
{
    int64_t apart = set->effort.e10 - other->effort.e10;
    if (!set->effort_exact && !other->effort_exact)
        return (apart > points.e10) - (apart < points.e10);
    return ratio_cmp_dec(ratio_sub(effort_of(set), effort_of(other)), points);
}

/* The middle of its reps. */
static inline struct ratio middle_reps(const struct set_view *set)
{
    return ratio_halves(set->reps_halves);
}

/* Per cent of the max used, exact, of a run that has it. */
static inline struct ratio percent_of(const struct set_view *set)
{
    return ratio_div(ratio_mul(ratio_weight(set->run->load), ratio_int(100)), set->run->max);
}

/* Of one written group in one entry of a day. */
static inline bool in_one_group(const struct set_view *set, const struct set_view *other)
{
    return set->day == other->day && set->entry == other->entry && set->group->group == other->group->group;
}

static inline bool is_single(const struct set_view *set)
{
    return set->counted && set->reps_high == 1;
}

/* The place of a lift in the block's `lifts`; -1: no set of it. */
static inline int lift_at(const struct block_view *block, const struct lift *lift)
{
    return numbers_known(&block->lift_numbers, lift, 0);
}

/* For what a rule keeps of lifts across blocks in one list: where the latest of each lift stands. Each names the one before it. */
struct lift_chains {
    struct numbers lifts;
    VEC(int) latest;
};
static inline int chain_latest(const struct lift_chains *chains, const struct lift *lift) /* -1: none */
{
    int at = numbers_known(&chains->lifts, lift, 0);
    return at < 0 ? -1 : chains->latest.at[at];
}
/* The next one stands at `place`; returns the one before it, or -1. */
static inline int chain_add(struct arena *arena, struct lift_chains *chains, const struct lift *lift, int place)
{
    int before = chain_latest(chains, lift);
    chains->lifts.arena = arena;
    int at = numbers_give(&chains->lifts, lift, 0);
    if (at == chains->latest.count)
        vec_add(arena, &chains->latest, place);
    chains->latest.at[at] = place;
    return before;
}

/* Whether the date, if there is one, falls into the week. */
static inline bool week_holds(const struct week_view *week, struct date date)
{
    int days = date.day - week->week->start.day;
    return date_is_set(date) && days >= 0 && days < WEEK_DAYS;
}

/* The next meet from a day of the block; unset: none. Without a season it is the one that the view was given. */
static inline struct date meet_from(const struct block_view *block, struct date day)
{
    if (!block->block->season)
        return block->meet;
    const struct meet *meet = season_next_meet(block->block->season, day);
    return meet ? meet->date : (struct date){ 0 };
}

/* The meet that a season's last block leads to; unset: none. */
static inline struct date meet_last(const struct block_view *block)
{
    const struct season *season = block->block->season;
    return season && season->meet_count ? season->meets[season->meet_count - 1].date : block->meet;
}

static inline bool is_below(struct ratio a, struct dec bound)
{
    return bound.e10 >= 0 && ratio_cmp_dec(a, bound) < 0;
}

static inline bool is_above(struct ratio a, struct dec bound)
{
    return bound.e10 >= 0 && ratio_cmp_dec(a, bound) > 0;
}

static inline const char *bound_text(struct asking *asking, struct dec bound)
{
    return rule_number(asking, ratio_dec(bound));
}

#endif
