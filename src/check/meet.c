/* The rules about the last weeks before a meet; rule.h is the contract. Limits without a number in the row stand here. */
#include "check/ask.h"

#include "base/vec.h"

enum {
    MEET_EFFORT = 8, /* meet-week */
    MEET_ERROR_DAYS = 3,
    MEET_WARNING_DAYS = 5,
    CUT_LEAST = 30, /* taper-shape: per cent of the peak week's hard sets */
    CUT_MOST = 70,
    LIGHTER_MOST = 15, /* taper-shape: per cent under the week before */
    LIGHTER_DAYS = 4,  /* taper-shape: that close to the meet a light day is meant */
    SINGLE_DAYS = 42   /* opener: how long a single in training speaks for it */
};

/* ---- taper-shape ---- */

static int hard_competition_sets(const struct block_view *block, const struct week_view *week)
{
    int sets = 0;
    for (int i = week->first; i < week->past; i++)
        if (is_competition(block->sets[i].lift) && at_effort(&block->sets[i], HARD_EFFORT))
            sets += block->sets[i].sets;
    return sets;
}

static void taper_sets(struct asking *asking, const struct block_view *block, const struct week_view *week, int peak,
                       bool meet_week)
{
    int sets = hard_competition_sets(block, week);
    struct ratio cut = ratio_make((wide)100 * (peak - sets), peak);
    bool less = ratio_cmp(cut, ratio_int(CUT_LEAST)) < 0, more = !meet_week && ratio_cmp(cut, ratio_int(CUT_MOST)) > 0;
    const char *which = meet_week ? "the meet week" : "the week before the meet week";
    const char *share = ratio_cmp(cut, ratio_int(0)) < 0 ? "no less than"
                                                         : rule_text(asking, "%s %% down on", rule_number(asking, cut));
    struct place_met place = met_week(block, week);
    place.subject = which; /* one `taper` line may stand for both */
    if (less)
        rule_hit(asking, place, "take sets off, not weight: `taper week N { sets to 50% }`",
                 "%s has %d hard sets of the competition lifts, %s the %d of the block's hardest week; at least %d %% "
                 "down is usual",
                 which, sets, share, peak, CUT_LEAST);
    else if (more)
        rule_hit(asking, place, "leave a few more heavy sets in, such as `sets to 50%`",
                 "%s has %d hard sets of the competition lifts, %s the %d of the block's hardest week; more than %d %% "
                 "down is too much so early",
                 which, sets, share, peak, CUT_MOST);
}

static bool is_loaded(const struct set_view *set)
{
    return is_competition(set->lift) && set->run->has_load && set->counted;
}

/* Loaded sets of a lift at the same reps: the heaviest of a week, of equal ones the first, and of the last week before it that has
 * one. NULL: none. */
struct same_reps {
    const struct set_view *now, *before;
};
struct all_reps {
    struct numbers numbers;
    VEC(struct same_reps) list;
};

static struct same_reps *reps_of(struct asking *asking, struct all_reps *all, const struct set_view *set)
{
    int at = numbers_give(&all->numbers, set->lift, (uint64_t)set->group->reps_low << 32 | (unsigned)set->reps_high);
    if (at == all->list.count)
        vec_add(rule_arena(asking), &all->list, (struct same_reps){ 0 });
    return &all->list.at[at];
}

static bool is_heavier(const struct set_view *set, const struct set_view *other)
{
    return !other || other->week != set->week || set->run->load.e10 > other->run->load.e10;
}

/* Of the weeks up to one: those before it up to the meet, in it up to a day. */
static struct all_reps heaviest_sets(struct asking *asking, const struct block_view *block, int week, struct date until, struct date meet)
{
    struct all_reps all = { .numbers.arena = rule_arena(asking) };
    for (int i = block->weeks[0].first; i < block->weeks[week].past; i++) {
        const struct set_view *set = &block->sets[i];
        bool now = i >= block->weeks[week].first;
        if (!is_loaded(set) || set->date.day > (now ? until.day : meet.day))
            continue;
        struct same_reps *same = reps_of(asking, &all, set);
        const struct set_view **heaviest = now ? &same->now : &same->before;
        if (is_heavier(set, *heaviest))
            *heaviest = set;
    }
    return all;
}

static void taper_loads(struct asking *asking, const struct block_view *block, int index, struct date meet)
{
    struct date until = date_plus(meet, -LIGHTER_DAYS - 1);
    struct all_reps all = heaviest_sets(asking, block, index, until, meet);
    for (int i = block->weeks[index].first; i < block->weeks[index].past; i++) {
        const struct set_view *set = &block->sets[i];
        const struct same_reps *same = is_loaded(set) ? reps_of(asking, &all, set) : NULL;
        const struct set_view *before = same && same->now == set ? same->before : NULL;
        if (!before || (wide)100 * set->run->load.e10 >= (wide)(100 - LIGHTER_MOST) * before->run->load.e10)
            continue;
        enum weight_unit unit = block->plan->unit;
        rule_hit(asking, met_load(block, set), "keep the load up and take sets off",
                 "%s for %d is %s, and %s the time before: more than %d %% lighter, %d days before the meet",
                 set->lift->name, set->reps_high, weight_text(rule_arena(asking), set->run->load, unit),
                 weight_text(rule_arena(asking), before->run->load, unit), LIGHTER_MOST,
                 meet.day - set->date.day);
    }
}

static void taper_before(struct asking *asking, const struct block_view *block, int meet_week, struct date meet)
{
    int peak = 0;
    for (int i = 0; i < block->week_count; i++) {
        int sets = hard_competition_sets(block, &block->weeks[i]);
        peak = sets > peak ? sets : peak;
    }
    for (int i = meet_week ? meet_week - 1 : 0; i <= meet_week; i++) {
        if (peak)
            taper_sets(asking, block, &block->weeks[i], peak, i == meet_week);
        taper_loads(asking, block, i, meet);
    }
}

void rule_taper_shape(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    for (int i = 0; i < block->week_count; i++) {
        struct date meet = meet_from(block, block->weeks[i].week->start);
        if (week_holds(&block->weeks[i], meet))
            taper_before(asking, block, i, meet);
    }
}

/* ---- meet-week ---- */

static void meet_week_ask(struct asking *asking, const struct block_view *block, const struct set_view *set)
{
    struct date meet = meet_from(block, set->date);
    int out = date_is_set(meet) ? meet.day - set->date.day : 0;
    if (!date_is_set(set->day->date) || out < 1 || out > MEET_WARNING_DAYS || !is_competition(set->lift) ||
        !at_effort(set, MEET_EFFORT))
        return;
    struct place_met place = met_set(block, set);
    if (out > MEET_ERROR_DAYS)
        place.level = LEVEL_WARNING;
    rule_hit(asking, place, "keep it light, at rpe 6 or less, or move the heavy sets to more than 5 days out",
             "%s is at rpe %s %d day%s before the meet", set->lift->name, rule_number(asking, effort_of(set)), out,
             out == 1 ? "" : "s");
}

/* The hardest set of its lift on its day, of equal ones the first, speaks for all of them. */
void rule_meet_week(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block) || !date_is_set(meet_from(block, block->first)))
        return;
    const struct set_view **hardest = NEW_MANY(rule_arena(asking), const struct set_view *, block->lift_count + 1);
    for (int d = 0; d < block->day_count; d++) {
        for (int i = block->days[d].first; i < block->days[d].past; i++) {
            const struct set_view *set = &block->sets[i], **of = &hardest[set->lift_at];
            if (set->has_effort && (!*of || (*of)->day != set->day || is_harder(set, *of)))
                *of = set;
        }
        for (int i = block->days[d].first; i < block->days[d].past; i++)
            if (hardest[block->sets[i].lift_at] == &block->sets[i])
                meet_week_ask(asking, block, &block->sets[i]);
    }
}

/* ---- opener ---- */

/* A single in training with a load. */
struct single {
    struct weight load;
    struct date date;
    int before; /* the lift's single before this one; -1: none */
};
/* Attempts of a lift, from the last block before their meet. */
struct attempts_asked {
    struct attempt_view attempt;
    const struct block *block;
    struct date meet;
    enum weight_unit unit; /* of her gym */
};
struct opener {
    VEC(struct single) singles;
    struct lift_chains lifts;
    VEC(struct attempts_asked) asked;
};

/* Of the days before the meet, in all her blocks; NULL: none. */
static const struct single *heaviest_single(const struct opener *kept, const struct attempts_asked *asked)
{
    const struct single *found = NULL;
    int i = date_is_set(asked->meet) ? chain_latest(&kept->lifts, asked->attempt.lift) : -1;
    for (; i >= 0; i = kept->singles.at[i].before) {
        const struct single *single = &kept->singles.at[i];
        int out = asked->meet.day - single->date.day;
        if (out >= 1 && out <= SINGLE_DAYS && (!found || single->load.e10 > found->load.e10))
            found = single;
    }
    return found;
}

static void opener_met(struct asking *asking, const struct opener *kept, const struct attempts_asked *asked,
                       struct place_met place, struct bounds limit)
{
    const struct attempt_view *attempt = &asked->attempt;
    struct ratio percent = ratio_div(ratio_mul(ratio_weight(attempt->opener), ratio_int(100)), attempt->projected);
    const struct single *single = heaviest_single(kept, asked);
    const char *opener = weight_text(rule_arena(asking), attempt->opener, attempt->unit);
    const char *help =
        "an opener is a weight that is sure on a bad day: about 91 % of the max, once lifted in training";
    if (is_above(percent, limit.high))
        rule_hit(asking, place, help, "the %s opener, %s, is %s %% of the max expected for the day; the limit is %s %%",
                 attempt->lift->name, opener, rule_number(asking, percent), bound_text(asking, limit.high));
    else if (single && attempt->opener.e10 > single->load.e10)
        rule_hit(asking, place, help, "the %s opener, %s, is more than the heaviest single of the last %d days, %s",
                 attempt->lift->name, opener, SINGLE_DAYS,
                 weight_text(rule_arena(asking), single->load, asked->unit));
}

static void third_met(struct asking *asking, const struct attempt_view *attempt, struct place_met place)
{
    if (attempt->third.e10 < attempt->second.e10)
        rule_hit(asking, place, "the bar never goes down from one attempt to the next: make the third the heaviest",
                 "the third %s, %s, is less than the second, %s", attempt->lift->name,
                 weight_text(rule_arena(asking), attempt->third, attempt->unit),
                 weight_text(rule_arena(asking), attempt->second, attempt->unit));
}

void opener_keep(struct asking *asking, const struct block_view *block)
{
    struct opener *kept = rule_kept(asking, sizeof *kept);
    bool asks = block->last_of_season && !rule_is_off(asking, block);
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        struct single single = { set->run->load, set->date, -1 };
        if (!is_single(set) || !set->run->has_load)
            continue;
        single.before = chain_add(rule_keep_arena(asking), &kept->lifts, set->lift, kept->singles.count);
        vec_add(rule_keep_arena(asking), &kept->singles, single);
    }
    for (int i = 0; asks && i < block->attempt_count; i++) {
        struct attempts_asked asked = { block->attempts[i], block->block, meet_last(block), block->plan->unit };
        vec_add(rule_keep_arena(asking), &kept->asked, asked);
    }
}

void rule_opener(struct asking *asking, const struct athlete_view *athlete)
{
    const struct opener *kept = rule_kept(asking, sizeof *kept);
    (void)athlete;
    for (int i = 0; i < kept->asked.count; i++) {
        const struct attempt_view *attempt = &kept->asked.at[i].attempt;
        const struct block *block = kept->asked.at[i].block;
        struct place_met place = {
            .block = block, .at = attempt->at, .subject = attempt->lift->name, .level = LEVEL_OF_GOAL
        };
        if (attempt->projected.num <= 0) {
            rule_hit(asking, place, "add a `max` line dated before the meet, and for lifts that load the body a `bodyweight` line",
                     "nothing on file tells what the attempts at %s come to", attempt->lift->name);
            continue;
        }
        opener_met(asking, kept, &kept->asked.at[i], place, rule_limit_in(asking, block, NULL));
        third_met(asking, attempt, place);
    }
}
