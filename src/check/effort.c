/* The rules about effort and order; rule.h is the contract. Limits without a row's number (days of a window) stand here. */
#include "check/ask.h"

#include "base/vec.h"

enum {
    SHARE_FROM = 3,
    SHARE_TO = 8,       /* moderate-share: rpe, both ends in */
    LAST_DAYS = 28,     /* before a meet: heavy practice, and failure in singles and doubles */
    BUILDING_DAYS = 56, /* before a meet: failure still has its place in a hypertrophy block */
    HIGH_REPS = 6,
    HEAVY_REPS = 2,
    HEAVY_EFFORT = 8,
    FAILURE_HALVES = 19, /* rpe 9.5, where failure is near */
    DAYS_LISTED = 3
};

static bool in_training(const struct set_view *set)
{
    return set->week->kind == WEEK_TRAINING;
}

/* What nobody can do is left to impossible-set; a single above the max may be meant. */
static bool is_possible(const struct set_view *set)
{
    return !effort_above(set, dec_int(10)) || is_single(set);
}

/* Sets of one written group on one day get one finding: the hardest speaks. `fits` is what is asked of each. From *at on, which goes
 * behind the group; NULL: no more. */
static const struct set_view *
hardest_in_group(const struct block_view *block, int *at,
                 bool (*fits)(const struct block_view *, const struct set_view *, struct bounds), struct bounds limit)
{
    const struct set_view *hardest = NULL;
    for (; *at < block->set_count; ++*at) {
        const struct set_view *set = &block->sets[*at];
        if (hardest && !in_one_group(set, hardest))
            break;
        if (in_training(set) && fits(block, set, limit) && (!hardest || is_harder(set, hardest)))
            hardest = set;
    }
    return hardest;
}

/* ---- moderate-share ---- */

static bool is_judged(const struct set_view *set)
{
    return set->main && set->has_effort && is_possible(set) && in_training(set);
}

static bool is_moderate(const struct set_view *set)
{
    return at_effort(set, SHARE_FROM) && !effort_above(set, dec_int(SHARE_TO));
}

struct off_day {
    const struct day_view *day;
    int sets;
};

static struct off_day off_day_of(const struct block_view *block, const struct day_view *day)
{
    struct off_day off = { .day = day };
    for (int i = day->first; i < day->past; i++)
        if (is_judged(&block->sets[i]) && !is_moderate(&block->sets[i]))
            off.sets += block->sets[i].sets;
    return off;
}

/* "squat and bench": the lifts of the sets that are off. */
static const char *off_lifts(struct asking *asking, const struct block_view *block, const struct day_view *day)
{
    bool *named = NEW_MANY(rule_arena(asking), bool, block->lift_count + 1);
    VEC(char) text = { 0 };
    for (int i = day->first; i < day->past; i++) {
        const struct set_view *set = &block->sets[i];
        if (!is_judged(set) || is_moderate(set) || named[set->lift_at])
            continue;
        named[set->lift_at] = true;
        for (const char *c = text.count ? " and " : ""; *c; c++)
            vec_add(rule_arena(asking), &text, *c);
        for (const char *c = set->lift->name; *c; c++)
            vec_add(rule_arena(asking), &text, *c);
    }
    vec_add(rule_arena(asking), &text, 0);
    return text.at;
}

/* The worst days first, as many as are needed to come back within the limit, but only the first few by name. */
static const char *off_days(struct asking *asking, const struct block_view *block, struct off_day *days, int count, int needed)
{
    const char *text = "";
    for (int i = 0; i < count && i < DAYS_LISTED && needed > 0; i++) {
        int worst = i;
        for (int j = i + 1; j < count; j++)
            if (days[j].sets > days[worst].sets)
                worst = j;
        struct off_day off = days[worst];
        memmove(&days[i + 1], &days[i], sizeof *days * (size_t)(worst - i));
        days[i] = off;
        needed -= off.sets;
        text = rule_text(asking, "%s%sweek %d day %s %s", text, i ? ", " : "", off.day->week->number,
                         off.day->day->day->label, off_lifts(asking, block, off.day));
    }
    return rule_text(asking, needed > 0 ? "the furthest off are %s" : "%s would bring it back", text);
}

void rule_moderate_share(struct asking *asking, const struct block_view *block)
{
    int64_t total = 0, moderate = 0;
    for (int i = 0; i < block->set_count; i++)
        if (is_judged(&block->sets[i])) {
            total += block->sets[i].sets;
            moderate += is_moderate(&block->sets[i]) ? block->sets[i].sets : 0;
        }
    struct dec limit = rule_limit(asking, block, NULL).low;
    struct ratio share = total ? ratio_make((wide)100 * moderate, total) : ratio_int(100);
    if (!is_below(share, limit))
        return;
    struct off_day *days = NEW_MANY(rule_arena(asking), struct off_day, block->day_count + 1);
    int count = 0;
    for (int i = 0; i < block->day_count; i++) {
        struct off_day off = off_day_of(block, &block->days[i]);
        if (off.sets)
            days[count++] = off;
    }
    struct dec wanted = ratio_up(ratio_percent(ratio_int(total), limit), dec_int(1));
    int needed = (int)(dec_floor(wanted) - moderate);
    rule_hit(asking, met_block(block),
             "bring the sets of those days to an effort from rpe 3 to 8, or take some of them out",
             "%s %% of main sets (%d of %d) are between rpe %d and %d; the limit is %s %%: %s",
             rule_number(asking, share), (int)moderate, (int)total, SHARE_FROM, SHARE_TO, bound_text(asking, limit),
             off_days(asking, block, days, count, needed));
}

/* ---- failure-window ---- */

/* Days from one to the other; -1 without a meet, or after it. */
static int days_until(struct date meet, struct date date)
{
    if (!date_is_set(meet) || !date_is_set(date) || date.day > meet.day)
        return -1;
    return meet.day - date.day;
}

static int days_out(const struct block_view *block, struct date date)
{
    return days_until(meet_from(block, date), date);
}

static bool is_failure(const struct set_view *set)
{
    return set->amrap || (set->has_effort && !effort_below(set, dec_halves(FAILURE_HALVES)) && is_possible(set));
}

static bool is_heavy_kind(const struct set_view *set)
{
    return set->counted && set->reps_high >= 1 && set->reps_high <= HEAVY_REPS;
}

static bool fails_outside(const struct block_view *block, const struct set_view *set, struct bounds limit)
{
    (void)limit;
    if (!is_failure(set))
        return false;
    int out = days_out(block, set->date);
    if (block->block->goal == GOAL_HYPERTROPHY && (out < 0 || out >= BUILDING_DAYS))
        return false;
    return !(set->main && is_heavy_kind(set) && out >= 0 && out <= LAST_DAYS);
}

void rule_failure_window(struct asking *asking, const struct block_view *block)
{
    int at = 0;
    const struct set_view *set;
    while ((set = hardest_in_group(block, &at, fails_outside, (struct bounds){ 0 }))) {
        int out = days_out(block, set->date);
        const char *how = set->amrap ? "amrap"
                          : effort_above(set, dec_int(10))
                              ? "above the max"
                              : rule_text(asking, "at rpe %s", rule_number(asking, effort_of(set)));
        const char *when = out < 0    ? ""
                           : out == 0 ? " on the day of the meet"
                                      : rule_text(asking, " %d day%s before the meet", out, out == 1 ? "" : "s");
        rule_hit(asking, met_set(block, set),
                 set->amrap ? "write a number of reps and an effort, such as `3 x 5 at rpe 8`"
                            : "ask for rpe 9 or less; `cap rpe 9` keeps a load below that",
                 "%s %s goes to the edge of failure%s; its places are hypertrophy blocks until %d days before a meet, "
                 "and singles "
                 "and doubles of main lifts in the last %d days",
                 set->lift->name, how, when, BUILDING_DAYS, LAST_DAYS);
    }
}

/* ---- top sets and back-offs of a day ---- */

/* The first set of each lift that day which is no top set, by the lift's place; some may be of days before. */
static void first_below_top(const struct block_view *block, const struct day_view *day, const struct set_view **first)
{
    for (int i = day->first; i < day->past; i++) {
        const struct set_view *set = &block->sets[i], *before = first[set->lift_at];
        if (set->group->role != ROLE_TOP && (!before || before->day != set->day))
            first[set->lift_at] = set;
    }
}

void rule_top_first(struct asking *asking, const struct block_view *block)
{
    const struct set_view **first = NEW_MANY(rule_arena(asking), const struct set_view *, block->lift_count + 1);
    for (int d = 0; d < block->day_count; d++) {
        const struct day_view *day = &block->days[d];
        const struct group *said = NULL;
        first_below_top(block, day, first);
        for (int i = day->first; i < day->past; i++) {
            const struct set_view *top = &block->sets[i], *before = first[top->lift_at];
            if (top->group->role != ROLE_TOP || !in_training(top) || top->group->group == said)
                continue;
            if (!before || before->day != top->day || before > top)
                continue;
            said = top->group->group;
            rule_hit(asking, met_set(block, top),
                     "write the top set first, while the lifter is fresh; lighter sets that lead up to it are "
                     "`warm-up` sets",
                     "the top set of %s comes after its %s sets", top->lift->name,
                     before->group->role == ROLE_BACK_OFF ? "back-off" : "work");
        }
    }
}

/* The latest top group of a lift so far that day: its last set, and of its hardest sets the last (NULL: of unknown effort). */
struct top_group {
    const struct set_view *last, *hardest;
};

static void top_add(struct top_group *top, const struct set_view *set)
{
    bool goes_on = top->last == set - 1 && top->last->day == set->day && top->last->group->group == set->group->group;
    if (!goes_on)
        top->hardest = NULL;
    if (set->has_effort && (!top->hardest || !is_harder(top->hardest, set)))
        top->hardest = set;
    top->last = set;
}

/* `top`: the hardest set of the nearest top group before it. */
static void back_off_ask(struct asking *asking, const struct block_view *block, const struct set_view *set,
                         const struct set_view *top, struct dec limit)
{
    if (!top || !is_possible(set) || limit.e10 < 0 || harder_by(top, set, limit) >= 0)
        return;
    struct ratio less = ratio_sub(effort_of(top), effort_of(set));
    const char *gap = less.num > 0   ? rule_text(asking, "only %s below", rule_number(asking, less))
                      : less.num < 0 ? rule_text(asking, "%s above", rule_number(asking, ratio_sub(ratio_int(0), less)))
                                     : "no easier than";
    rule_hit(asking, met_set(block, set), "take more off with `drop`, ask for fewer reps, or make the top set harder",
             "this back-off of %s is rpe %s, %s its top set's rpe %s; the limit is %s below", set->lift->name,
             rule_number(asking, effort_of(set)), gap, rule_number(asking, effort_of(top)), bound_text(asking, limit));
}

/* From the set at `i` on, those of its group: the hardest. *past: the first that is none of them. */
static const struct set_view *hardest_from(const struct block_view *block, int i, int *past)
{
    const struct set_view *first = &block->sets[i], *hardest = NULL;
    for (; i < block->set_count && in_one_group(&block->sets[i], first); i++)
        if (block->sets[i].has_effort && (!hardest || is_harder(&block->sets[i], hardest)))
            hardest = &block->sets[i];
    *past = i;
    return hardest;
}

void rule_top_harder(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).low;
    struct top_group *tops = NEW_MANY(rule_arena(asking), struct top_group, block->lift_count + 1);
    for (int i = 0, next; i < block->set_count; i = next) {
        const struct set_view *set = &block->sets[i];
        struct top_group *top = &tops[set->lift_at];
        next = i + 1;
        if (set->group->role == ROLE_TOP)
            top_add(top, set);
        if (set->group->role != ROLE_BACK_OFF || !in_training(set) || !top->last || top->last->day != set->day)
            continue;
        const struct set_view *hardest = hardest_from(block, i, &next);
        if (hardest)
            back_off_ask(asking, block, hardest, top->hardest, limit);
    }
}

void rule_top_reps(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        if (set->group->role != ROLE_TOP || !in_training(set) || !is_above(ratio_int(set->reps_high), limit))
            continue;
        rule_hit(asking, met_set(block, set),
                 "top sets show strength best with few reps: write fewer, or leave out the word `top` for sets of work",
                 "a top set of %s has %d reps; the limit is %s", set->lift->name, set->reps_high,
                 bound_text(asking, limit));
    }
}

/* ---- single sets ---- */

static bool is_hard_and_high(const struct block_view *block, const struct set_view *set, struct bounds limit)
{
    (void)block;
    return set->main && (set->counted || set->amrap) && set->reps_halves >= 2 * HIGH_REPS && set->has_effort &&
           is_possible(set) && effort_above(set, limit.high);
}

void rule_hard_high_reps(struct asking *asking, const struct block_view *block)
{
    struct bounds limit = rule_limit(asking, block, NULL);
    int at = 0;
    const struct set_view *set;
    while ((set = hardest_in_group(block, &at, is_hard_and_high, limit)))
        rule_hit(asking, met_set(block, set),
                 "ask for fewer reps, or for a lower effort: the last reps of long hard sets are slow and far from "
                 "a single",
                 "%s reps of %s at rpe %s; for %d reps and more the limit is rpe %s",
                 rule_number(asking, middle_reps(set)), set->lift->name, rule_number(asking, effort_of(set)), HIGH_REPS,
                 bound_text(asking, limit.high));
}

static bool is_light(const struct block_view *block, const struct set_view *set, struct bounds limit)
{
    (void)block;
    return set->main && set->has_effort && effort_below(set, limit.low);
}

void rule_too_light(struct asking *asking, const struct block_view *block)
{
    struct bounds limit = rule_limit(asking, block, NULL);
    int at = 0;
    const struct set_view *set;
    while ((set = hardest_in_group(block, &at, is_light, limit))) {
        bool under_one = effort_below(set, dec_int(1));
        rule_hit(asking, met_set(block, set),
                 "raise the load or the reps; if these sets lead up to heavier ones, write them as `warm-up`",
                 "%s at %s is too light to train it; the limit is rpe %s", set->lift->name,
                 under_one ? "less than rpe 1" : rule_text(asking, "rpe %s", rule_number(asking, effort_of(set))),
                 bound_text(asking, limit.low));
    }
}

/* ---- heavy-practice ---- */

/* A day with heavy singles or doubles of a competition lift. */
struct practice_day {
    const struct block *block;
    struct date date;
    bool dated;
    int before; /* the lift's day before this one; -1: none */
};
/* A competition lift of the last block before a meet. */
struct practice_asked {
    const struct lift *lift;
    const struct block *block;
    struct date meet;
};
struct heavy_practice {
    VEC(struct practice_day) days;
    struct lift_chains lifts;
    VEC(struct practice_asked) asked;
};

static bool is_practice(const struct set_view *set)
{
    return is_competition(set->lift) && is_heavy_kind(set) && at_effort(set, HEAVY_EFFORT);
}

/* All her blocks count, whatever the season: the last four weeks may begin in the block before. Two sessions on one date are one
 * day; days without a date are days of their own. */
static int practice_days(const struct heavy_practice *practice, const struct practice_asked *asked)
{
    struct date last = { 0 };
    int days = 0;
    for (int own = 1; own >= 0; own--)
        for (int i = chain_latest(&practice->lifts, asked->lift); i >= 0; i = practice->days.at[i].before) {
            const struct practice_day *day = &practice->days.at[i];
            int out = days_until(asked->meet, day->date);
            if ((day->block == asked->block) != own || out < 0 || out > LAST_DAYS || (day->dated && day->date.day == last.day))
                continue;
            days++;
            if (day->dated)
                last = day->date;
        }
    return days;
}

/* Each lift once a day. */
static void practice_day_keep(struct asking *asking, const struct block_view *block, const struct day_view *day)
{
    struct heavy_practice *practice = rule_kept(asking, sizeof *practice);
    int first = practice->days.count;
    for (int i = day->first; i < day->past; i++) {
        if (!is_practice(&block->sets[i]))
            continue;
        const struct lift *lift = block->sets[i].lift;
        struct practice_day kept = { block->block, day->date, day->dated, chain_latest(&practice->lifts, lift) };
        if (kept.before >= first)
            continue;
        chain_add(rule_keep_arena(asking), &practice->lifts, lift, practice->days.count);
        vec_add(rule_keep_arena(asking), &practice->days, kept);
    }
}

/* Tapers count: the days before a meet are mostly taper. */
void heavy_practice_keep(struct asking *asking, const struct block_view *block)
{
    struct heavy_practice *practice = rule_kept(asking, sizeof *practice);
    bool asks = block->last_of_season && date_is_set(meet_last(block)) && !rule_is_off(asking, block);
    for (int i = 0; i < block->day_count; i++)
        practice_day_keep(asking, block, &block->days[i]);
    for (int i = 0; asks && i < block->lift_count; i++) {
        struct practice_asked asked = { block->lifts[i], block->block, meet_last(block) };
        if (is_competition(asked.lift))
            vec_add(rule_keep_arena(asking), &practice->asked, asked);
    }
}

void rule_heavy_practice(struct asking *asking, const struct athlete_view *athlete)
{
    const struct heavy_practice *practice = rule_kept(asking, sizeof *practice);
    (void)athlete;
    for (int i = 0; i < practice->asked.count; i++) {
        const struct practice_asked *asked = &practice->asked.at[i];
        struct dec limit = rule_limit_in(asking, asked->block, NULL).low;
        int days = practice_days(practice, asked);
        struct place_met place = met_name(asked->block);
        place.subject = asked->lift->name;
        if (is_below(ratio_int(days), limit))
            rule_hit(asking, place, "plan singles or doubles of it at rpe 8 or more in the last four weeks",
                     "%s has singles or doubles at rpe %d or more on %d of the last %d days before the meet; the limit "
                     "is %s",
                     asked->lift->name, HEAVY_EFFORT, days, LAST_DAYS, bound_text(asking, limit));
    }
}

/* ---- effort-creep ---- */

/* Of a lift: the hardest set with a stated effort, of equal ones the first (NULL: none), in the latest training week so far that
 * trains it, and in the one before that. */
struct stated {
    const struct plan_week *week;
    const struct set_view *now, *before;
};

static void stated_add(struct stated *stated, const struct set_view *set)
{
    if (stated->week != set->week)
        *stated = (struct stated){ .week = set->week, .before = stated->now };
    if (set->run->has_effort && set->has_effort && (!stated->now || is_harder(set, stated->now)))
        stated->now = set;
}

static void creep_ask(struct asking *asking, const struct block_view *block, const struct stated *stated, struct dec limit)
{
    const struct set_view *now = stated->now, *before = stated->before;
    if (limit.e10 < 0 || harder_by(now, before, limit) <= 0)
        return;
    struct ratio rise = ratio_sub(effort_of(now), effort_of(before));
    rule_hit(asking, met_load(block, now), "let the effort rise in smaller steps, such as `at rpe from 6 to 8`",
             "%s goes from rpe %s in week %d to rpe %s in week %d, up %s; the limit is %s", now->lift->name,
             rule_number(asking, effort_of(before)), before->week->number, rule_number(asking, effort_of(now)),
             now->week->number, rule_number(asking, rise), bound_text(asking, limit));
}

void rule_effort_creep(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    struct stated *stated = NEW_MANY(rule_arena(asking), struct stated, block->lift_count + 1);
    for (int w = 0; w < block->week_count; w++) {
        const struct week_view *week = &block->weeks[w];
        for (int i = week->first; week->training && i < week->past; i++)
            stated_add(&stated[block->sets[i].lift_at], &block->sets[i]);
        for (int i = week->first; week->training && i < week->past; i++) {
            const struct stated *of = &stated[block->sets[i].lift_at];
            if (of->now == &block->sets[i] && of->before)
                creep_ask(asking, block, of, limit);
        }
    }
}
