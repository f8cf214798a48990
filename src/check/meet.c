/* The rules about the last weeks before a meet; rule.h is the contract. Limits without a number in the row stand here. */
#include "check/ask.h"

enum {
    HARD_EFFORT = 5, /* a hard set, for taper-shape */
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

static bool same_reps(const struct set_view *a, const struct set_view *b)
{
    return a->lift == b->lift && a->reps_high == b->reps_high && ratio_cmp(a->reps, b->reps) == 0;
}

static bool is_loaded(const struct set_view *set)
{
    return is_competition(set->lift) && set->run->has_load && set->counted;
}

/* The week's heaviest set of the lift at the reps of `like`, on days up to `until`. */
static const struct set_view *heaviest(const struct block_view *block, const struct week_view *week,
                                       const struct set_view *like, struct date until)
{
    const struct set_view *found = NULL;
    for (int i = week->first; i < week->past; i++) {
        const struct set_view *set = &block->sets[i];
        if (is_loaded(set) && same_reps(set, like) && set->date.day <= until.day &&
            (!found || set->run->load.e10 > found->run->load.e10))
            found = set;
    }
    return found;
}

static void taper_loads(struct asking *asking, const struct block_view *block, int index, struct date meet)
{
    struct date until = date_plus(meet, -LIGHTER_DAYS - 1);
    for (int i = block->weeks[index].first; i < block->weeks[index].past; i++) {
        const struct set_view *set = &block->sets[i], *before = NULL;
        if (!is_loaded(set) || heaviest(block, &block->weeks[index], set, until) != set)
            continue;
        for (int j = index - 1; j >= 0 && !before; j--)
            before = heaviest(block, &block->weeks[j], set, meet);
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

/* The hardest set of its lift on its day speaks for all of them. */
static bool is_hardest(const struct block_view *block, const struct set_view *set)
{
    for (const struct set_view *other = block->sets; other < block->sets + block->set_count; other++)
        if (other->day == set->day && other->lift == set->lift && other->has_effort) {
            int more = ratio_cmp(other->effort, set->effort);
            if (more > 0 || (more == 0 && other < set))
                return false;
        }
    return true;
}

void rule_meet_week(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        struct date meet = meet_from(block, set->date);
        int out = date_is_set(meet) ? meet.day - set->date.day : 0;
        if (!date_is_set(set->day->date) || out < 1 || out > MEET_WARNING_DAYS || !is_competition(set->lift) ||
            !at_effort(set, MEET_EFFORT) || !is_hardest(block, set))
            continue;
        struct place_met place = met_set(block, set);
        if (out > MEET_ERROR_DAYS)
            place.level = LEVEL_WARNING;
        rule_hit(asking, place, "keep it light, at rpe 6 or less, or move the heavy sets to more than 5 days out",
                 "%s is at rpe %s %d day%s before the meet", set->lift->name, rule_number(asking, set->effort), out,
                 out == 1 ? "" : "s");
    }
}

/* ---- opener ---- */

/* The heavier of `found` and the block's heaviest single in the days before the meet. */
static const struct set_view *heavier_single(const struct set_view *found, const struct block_view *block,
                                             const struct lift *lift, struct date meet)
{
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        int out = meet.day - set->date.day;
        if (set->lift == lift && is_single(set) && set->run->has_load && out >= 1 && out <= SINGLE_DAYS &&
            (!found || set->run->load.e10 > found->run->load.e10))
            found = set;
    }
    return found;
}

/* In all her blocks; NULL: none. */
static const struct set_view *heaviest_single(const struct block_view *block, const struct lift *lift)
{
    const struct athlete_view *athlete = block->athlete;
    struct date meet = meet_last(block);
    const struct set_view *found = date_is_set(meet) ? heavier_single(NULL, block, lift, meet) : NULL;
    for (int i = 0; athlete && date_is_set(meet) && i < athlete->block_count; i++)
        if (athlete->blocks[i].plan != block->plan)
            found = heavier_single(found, &athlete->blocks[i], lift, meet);
    return found;
}

static void opener_met(struct asking *asking, const struct block_view *block, const struct attempt_view *attempt,
                       struct place_met place, struct bounds limit)
{
    struct ratio percent = ratio_div(ratio_mul(ratio_weight(attempt->opener), ratio_int(100)), attempt->projected);
    const struct set_view *single = heaviest_single(block, attempt->lift);
    const char *opener = weight_text(rule_arena(asking), attempt->opener, attempt->unit);
    const char *help =
        "an opener is a weight that is sure on a bad day: about 91 % of the max, once lifted in training";
    if (is_above(percent, limit.high))
        rule_hit(asking, place, help, "the %s opener, %s, is %s %% of the max expected for the day; the limit is %s %%",
                 attempt->lift->name, opener, rule_number(asking, percent), bound_text(asking, limit.high));
    else if (single && attempt->opener.e10 > single->run->load.e10)
        rule_hit(asking, place, help, "the %s opener, %s, is more than the heaviest single of the last %d days, %s",
                 attempt->lift->name, opener, SINGLE_DAYS,
                 weight_text(rule_arena(asking), single->run->load, block->plan->unit));
}

static void third_met(struct asking *asking, const struct attempt_view *attempt, struct place_met place)
{
    if (attempt->third.e10 < attempt->second.e10)
        rule_hit(asking, place, "the bar never goes down from one attempt to the next: make the third the heaviest",
                 "the third %s, %s, is less than the second, %s", attempt->lift->name,
                 weight_text(rule_arena(asking), attempt->third, attempt->unit),
                 weight_text(rule_arena(asking), attempt->second, attempt->unit));
}

void rule_opener(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block) || !block->last_of_season)
        return;
    for (int i = 0; i < block->attempt_count; i++) {
        const struct attempt_view *attempt = &block->attempts[i];
        struct place_met place = {
            .block = block, .at = attempt->at, .subject = attempt->lift->name, .level = LEVEL_OF_GOAL
        };
        if (attempt->projected.num <= 0) {
            rule_hit(asking, place, "add a `max` line dated before the meet, and for lifts that load the body a `bodyweight` line",
                     "nothing on file tells what the attempts at %s come to", attempt->lift->name);
            continue;
        }
        opener_met(asking, block, attempt, place, rule_limit(asking, block, NULL));
        third_met(asking, attempt, place);
    }
}
