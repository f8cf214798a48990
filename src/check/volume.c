/* The rules about volume and load; rule.h is the contract.
 *
 * Hard sets are counted in halves, since a set counts half for the muscles that its lift helps. Sets of unknown effort are
 * no hard sets, but a week that holds some is never told that it has too few. */
#include "check/ask.h"

#include "base/vec.h"

enum { HARD_EFFORT = 5, HALVES_OF_TOTAL = 2 * SETS_MOST };

/* Of all sets of a view; `total 30` has no number of sets and holds its reps itself. */
static struct ratio reps_of(const struct set_view *set)
{
    return set->sets ? ratio_mul(set->reps, ratio_int(set->sets)) : set->reps;
}

static struct place_met met_week_of(const struct block_view *block, const struct week_view *week, const char *subject)
{
    struct place_met place = met_week(block, week);
    place.subject = subject;
    return place;
}

static bool trains(const struct block_view *block, const struct week_view *week, const struct lift *lift)
{
    for (int i = week->first; i < week->past; i++)
        if (block->sets[i].lift == lift)
            return true;
    return false;
}

/* The last training week before one that trains the lift; NULL: none. */
static const struct week_view *week_before(const struct block_view *block, int week, const struct lift *lift)
{
    while (--week >= 0)
        if (block->weeks[week].training && trains(block, &block->weeks[week], lift))
            return &block->weeks[week];
    return NULL;
}

/* Each once, in the order of training. */
struct lifts {
    const struct lift **at;
    int count, room;
};
struct muscles {
    const char **at;
    int count, room;
};

static struct lifts lifts_of(struct asking *asking, const struct block_view *block)
{
    struct lifts lifts = { 0 };
    for (int i = 0; i < block->set_count; i++) {
        int at = 0;
        arena_search(rule_arena(asking), lifts.count);
        while (at < lifts.count && lifts.at[at] != block->sets[i].lift)
            at++;
        if (at == lifts.count)
            vec_add(rule_arena(asking), &lifts, block->sets[i].lift);
    }
    return lifts;
}

/* ---- hard sets ---- */

/* What sets are counted for: one lift, a lift and those like it, or a muscle. */
struct subject {
    const struct lift *lift;
    bool family;
    const char *muscle;
    bool helped_only; /* nothing in the block works it: it can have too much, and nobody meant it to have enough */
};

static bool names_muscle(const char *const *muscles, int count, const char *muscle)
{
    for (int i = 0; i < count; i++)
        if (muscles[i] == muscle)
            return true;
    return false;
}

static int halves_for(const struct lift *lift, const struct subject *subject)
{
    if (subject->muscle)
        return names_muscle(lift->works, lift->works_count, subject->muscle)   ? 2
               : names_muscle(lift->helps, lift->helps_count, subject->muscle) ? 1
                                                                               : 0;
    while (subject->family && lift && lift != subject->lift)
        lift = lift->like;
    return lift == subject->lift ? 2 : 0;
}

struct volume {
    int hard, open; /* half sets; open: of unknown effort or number */
    int done;       /* half sets of any effort */
};

static struct volume volume_of(const struct block_view *block, const struct week_view *week, struct subject subject)
{
    struct volume volume = { 0 };
    for (int i = week->first; i < week->past; i++) {
        const struct set_view *set = &block->sets[i];
        int halves = halves_for(set->lift, &subject);
        volume.done += halves * set->sets;
        if (!set->sets)
            volume.open += halves ? HALVES_OF_TOTAL : 0;
        else if (!set->has_effort)
            volume.open += halves * set->sets;
        else if (at_effort(set, HARD_EFFORT))
            volume.hard += halves * set->sets;
    }
    return volume;
}

/* There is always a high one; the low one does not hold for a muscle that lifts only help. */
static const char *limits_text(struct asking *asking, struct bounds limit)
{
    if (limit.low.e10 < 0)
        return rule_text(asking, "the limit is at most %s", bound_text(asking, limit.high));
    return rule_text(asking, "the limits are %s to %s", bound_text(asking, limit.low), bound_text(asking, limit.high));
}

static void volume_ask(struct asking *asking, const struct block_view *block, struct subject subject, const char *few,
                       const char *many)
{
    const char *name = subject.muscle ? subject.muscle : subject.lift->name;
    struct bounds limit = rule_limit(asking, block, name);
    if (subject.helped_only && !rule_limit_is_own(asking, block, name))
        limit.low.e10 = -1;
    for (int w = 0; w < block->week_count; w++) {
        const struct week_view *week = &block->weeks[w];
        if (!week->training)
            continue;
        struct volume volume = volume_of(block, week, subject);
        arena_work(rule_arena(asking), 8 * (uint64_t)(week->past - week->first));
        struct ratio hard = ratio_make(volume.hard, 2), at_most = ratio_make((wide)volume.hard + volume.open, 2);
        if (!is_below(at_most, limit.low) && !is_above(hard, limit.high))
            continue;
        rule_hit(asking, met_week_of(block, week, name), is_above(hard, limit.high) ? many : few,
                 "%s hard set%s for %s in week %d; %s", rule_number(asking, hard), volume.hard == 2 ? "" : "s", name,
                 week->week->number, limits_text(asking, limit));
    }
}

void rule_weekly_sets(struct asking *asking, const struct block_view *block)
{
    struct lifts lifts = lifts_of(asking, block);
    for (int i = 0; i < lifts.count; i++)
        if (is_competition(lifts.at[i]))
            volume_ask(
                asking, block, (struct subject){ .lift = lifts.at[i], .family = true },
                "add sets of it or of lifts like it, or bring easy ones up to rpe 5 or more: those are hard sets",
                "take sets out, of it or of the lifts like it, or spread them over more weeks");
}

static void muscles_add(struct asking *asking, struct muscles *muscles, const char *const *names, int count)
{
    for (int i = 0; i < count; i++) {
        arena_search(rule_arena(asking), muscles->count);
        if (!names_muscle(muscles->at, muscles->count, names[i]))
            vec_add(rule_arena(asking), muscles, names[i]);
    }
}

void rule_muscle_sets(struct asking *asking, const struct block_view *block)
{
    struct muscles muscles = { 0 };
    struct lifts lifts = lifts_of(asking, block);
    for (int i = 0; i < lifts.count; i++)
        muscles_add(asking, &muscles, lifts.at[i]->works, lifts.at[i]->works_count);
    int worked = muscles.count;
    for (int i = 0; i < lifts.count; i++)
        muscles_add(asking, &muscles, lifts.at[i]->helps, lifts.at[i]->helps_count);
    for (int i = 0; i < muscles.count; i++)
        volume_ask(asking, block, (struct subject){ .muscle = muscles.at[i], .helped_only = i >= worked },
                   "add sets of a lift that `works` it, or bring easy ones up to rpe 5 or more: those are hard sets",
                   "take sets out of the lifts that `works` and `helps` name it for");
}

/* ---- volume-jump ---- */

static bool rotates(const struct block_view *block, const struct week_view *week, const struct lift *lift)
{
    for (int i = week->first; i < week->past; i++)
        if (block->sets[i].lift == lift && block->sets[i].day->day->rotates)
            return true;
    return false;
}

/* What a week is measured against: the one before, or for days in turn (A B A, B A B) the fuller of the two before. */
static const struct week_view *measure_of(const struct block_view *block, int w, const struct lift *lift)
{
    struct subject subject = { .lift = lift };
    const struct week_view *earlier = week_before(block, w, lift);
    const struct week_view *earliest = earlier ? week_before(block, (int)(earlier - block->weeks), lift) : NULL;
    if (!earlier || !rotates(block, &block->weeks[w], lift))
        return earlier;
    if (!earliest)
        return NULL;
    struct volume a = volume_of(block, earlier, subject), b = volume_of(block, earliest, subject);
    return a.hard + a.open >= b.hard + b.open ? earlier : earliest;
}

static void volume_jump_ask(struct asking *asking, const struct block_view *block, int w, const struct lift *lift)
{
    const struct week_view *week = &block->weeks[w], *earlier = measure_of(block, w, lift);
    struct bounds percent = rule_limit(asking, block, NULL), sets = rule_second_limit(asking, block);
    if (!earlier)
        return;
    struct volume now = volume_of(block, week, (struct subject){ .lift = lift });
    struct volume before = volume_of(block, earlier, (struct subject){ .lift = lift });
    struct ratio base = ratio_make((wide)before.hard + before.open, 2), up = ratio_sub(ratio_make(now.hard, 2), base);
    if (now.done <= before.done) /* the same sets a little harder are no more work */
        return;
    if (percent.high.e10 < 0 || ratio_cmp(up, ratio_percent(base, percent.high)) <= 0 || !is_above(up, sets.high))
        return;
    const char *share =
        base.num ? rule_text(asking, " (%s %%)", rule_number(asking, ratio_div(ratio_mul(up, ratio_int(100)), base)))
                 : "";
    rule_hit(asking, met_week_of(block, week, lift->name),
             "add sets over more weeks, such as `(from 4 to 7) x 5`; sets that come up to rpe 5 count as added too",
             "%s goes from %s hard sets in week %d to %s in week %d, up %s%s; the limit is %s %% and %s sets",
             lift->name, rule_number(asking, base), earlier->week->number, rule_number(asking, ratio_make(now.hard, 2)),
             week->week->number, rule_number(asking, up), share, bound_text(asking, percent.high),
             bound_text(asking, sets.high));
}

void rule_volume_jump(struct asking *asking, const struct block_view *block)
{
    struct lifts lifts = lifts_of(asking, block);
    for (int w = 1; w < block->week_count; w++)
        for (int i = 0; block->weeks[w].training && i < lifts.count; i++)
            volume_jump_ask(asking, block, w, lifts.at[i]);
}

/* ---- load-jump ---- */

static bool is_like_set(const struct set_view *a, const struct set_view *b)
{
    return a->lift == b->lift && a->group->role == b->group->role && a->group->reps_kind == b->group->reps_kind &&
           a->group->reps_low == b->group->reps_low && a->group->reps_high == b->group->reps_high;
}

/* The heaviest set of a week at the reps and role of another; of equal ones the first. NULL: none with a load. */
static const struct set_view *heaviest_like(const struct block_view *block, const struct week_view *week,
                                            const struct set_view *set)
{
    const struct set_view *heaviest = NULL;
    for (int i = week->first; i < week->past; i++) {
        const struct set_view *other = &block->sets[i];
        if (other->run->has_load && is_like_set(other, set) &&
            (!heaviest || other->run->load.e10 > heaviest->run->load.e10))
            heaviest = other;
    }
    return heaviest;
}

/* Added weight goes in steps of its own; everything else to the next load that the day's gym can make. */
static bool is_smallest_step(const struct set_view *now, const struct set_view *before)
{
    const struct ladder *ladder = ladder_for(now->day->gym, now->lift);
    if (now->lift->loads == LOADS_BODYWEIGHT)
        return now->run->shown.e10 - before->run->shown.e10 <= now->day->gym->free.step.e10;
    return now->run->load.e10 <= ladder_above(ladder, before->run->load).e10;
}

/* Without a bodyweight line only the added weight is known, and a share of that says nothing. */
static bool is_whole_load(const struct set_view *set)
{
    return set->run->load.e10 > 0 &&
           (set->lift->loads != LOADS_BODYWEIGHT || set->run->load.e10 != set->run->shown.e10);
}

static void load_jump_ask(struct asking *asking, const struct block_view *block, const struct set_view *now,
                          const struct set_view *before, struct dec limit)
{
    enum weight_unit unit = now->day->gym->unit;
    struct ratio base = ratio_weight(before->run->load), up = ratio_sub(ratio_weight(now->run->load), base);
    if (!is_whole_load(now) || !is_whole_load(before))
        return;
    struct ratio percent = ratio_div(ratio_mul(up, ratio_int(100)), base);
    if (!is_above(percent, limit) || is_smallest_step(now, before))
        return;
    rule_hit(asking, met_load(block, now), "go up in smaller steps, or add reps before adding load",
             "%s goes from %s in week %d to %s in week %d%s at the same reps, up %s %%; the limit is %s %%",
             now->lift->name, weight_text(rule_arena(asking), before->run->load, unit), before->week->number,
             weight_text(rule_arena(asking), now->run->load, unit), now->week->number,
             now->lift->loads == LOADS_BODYWEIGHT ? ", bodyweight included," : "", rule_number(asking, percent),
             bound_text(asking, limit));
}

void rule_load_jump(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    for (int w = 1; w < block->week_count; w++) {
        const struct week_view *week = &block->weeks[w];
        for (int i = week->first; week->training && i < week->past; i++) {
            const struct set_view *now = &block->sets[i];
            if (heaviest_like(block, week, now) != now)
                continue;
            const struct week_view *earlier = week_before(block, w, now->lift);
            const struct set_view *before = earlier ? heaviest_like(block, earlier, now) : NULL;
            if (before)
                load_jump_ask(asking, block, now, before, limit);
        }
    }
}

/* ---- zone-reps ---- */

/* A. S. Prilepin's table with closed bands, the commonest of its reprints: reps of a lift in one session, least and most, by
 * per cent of the max. It was drawn from the snatch and the clean and jerk. */
struct zone {
    int from, past; /* per cent; past 0: no end */
    int least, most;
    const char *name;
};
static const struct zone zones[] = {
    { 0, 70, 18, 30, "under 70 %" },
    { 70, 80, 12, 24, "from 70 to under 80 %" },
    { 80, 90, 10, 20, "from 80 to under 90 %" },
    { 90, 0, 4, 10, "at 90 % and more" },
};

static bool in_zone(const struct set_view *set, const struct zone *zone)
{
    return set->has_percent && ratio_cmp(set->percent, ratio_int(zone->from)) >= 0 &&
           (!zone->past || ratio_cmp(set->percent, ratio_int(zone->past)) < 0);
}

/* The day's reps of a lift in a zone; without a zone all of them. */
static struct ratio day_reps(const struct block_view *block, const struct day_view *day, const struct lift *lift,
                             const struct zone *zone)
{
    struct ratio reps = ratio_int(0);
    for (int i = day->first; i < day->past; i++)
        if (block->sets[i].lift == lift && (!zone || in_zone(&block->sets[i], zone)))
            reps = ratio_add(reps, reps_of(&block->sets[i]));
    return reps;
}

/* What is off in a zone, after what was off in the lighter ones. */
static const char *zone_text(struct asking *asking, const struct block_view *block, const struct day_view *day,
                             const struct lift *lift, const struct zone *zone, const char *before)
{
    struct ratio reps = day_reps(block, day, lift, zone), all = day_reps(block, day, lift, NULL);
    bool many = ratio_cmp(reps, ratio_int(zone->most)) > 0;
    bool few = ratio_cmp(reps, ratio_int(zone->least)) < 0 && ratio_cmp(ratio_mul(reps, ratio_int(2)), all) > 0;
    if (!many && !few)
        return before;
    return rule_text(asking, "%s%s%s rep%s %s of the max (the table has %d to %d)", before ? before : "",
                     before ? " and " : "", rule_number(asking, reps), ratio_cmp(reps, ratio_int(1)) ? "s" : "",
                     zone->name, zone->least, zone->most);
}

static bool is_first_of_day(const struct block_view *block, const struct day_view *day, int index)
{
    for (int i = day->first; i < index; i++)
        if (block->sets[i].lift == block->sets[index].lift)
            return false;
    return true;
}

static void zones_ask(struct asking *asking, const struct block_view *block, const struct day_view *day,
                      const struct set_view *first)
{
    const char *off = NULL;
    for (size_t z = 0; z < sizeof zones / sizeof *zones; z++)
        off = zone_text(asking, block, day, first->lift, &zones[z], off);
    if (off)
        rule_hit(
            asking, met_entry(block, first),
            "where there are more, take sets or reps out or spread them over days; where fewer, add some or move load "
            "to another zone",
            "in one day %s has %s", first->lift->name, off);
}

void rule_zone_reps(struct asking *asking, const struct block_view *block)
{
    for (int d = 0; d < block->day_count; d++) {
        const struct day_view *day = &block->days[d];
        for (int i = day->first; day->week->kind == WEEK_TRAINING && i < day->past; i++)
            if (block->sets[i].main && is_first_of_day(block, day, i))
                zones_ask(asking, block, day, &block->sets[i]);
    }
}

/* ---- specific-load ---- */

/* By reps, over the training weeks; false: no load of it is known as a per cent. */
static bool mean_percent(const struct block_view *block, const struct lift *lift, struct ratio *mean)
{
    struct ratio sum = ratio_int(0), all = ratio_int(0);
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        if (set->lift != lift || !set->has_percent || set->week->kind != WEEK_TRAINING)
            continue;
        sum = ratio_add(sum, ratio_mul(set->percent, reps_of(set)));
        all = ratio_add(all, reps_of(set));
    }
    if (!all.num)
        return false;
    *mean = ratio_div(sum, all);
    return true;
}

void rule_specific_load(struct asking *asking, const struct block_view *block)
{
    struct ratio mean;
    struct dec limit = rule_limit(asking, block, NULL).low;
    struct lifts lifts = lifts_of(asking, block);
    for (int i = 0; i < lifts.count; i++) {
        struct place_met place = met_block(block);
        place.subject = lifts.at[i]->name;
        if (is_competition(lifts.at[i]) && mean_percent(block, lifts.at[i], &mean) && is_below(mean, limit))
            rule_hit(asking, place, "make its sets heavier and shorter, or give the light work to lifts like it",
                     "the mean load of %s is %s %% of the max (by reps); the limit is %s %%", place.subject,
                     rule_number(asking, mean), bound_text(asking, limit));
    }
}

/* ---- unreachable-load ---- */

/* By how much rounding moved the load, in per cent of what was asked; 0 where another finding speaks. */
static struct ratio moved_by(const struct set_view *set)
{
    const struct plan_run *run = set->run;
    if (!run->has_load || !set->has_asked || set->asked.num <= 0 || run->under_bar || run->capped ||
        set->lift->loads == LOADS_BODYWEIGHT)
        return ratio_int(0);
    struct ratio moved = ratio_sub(ratio_weight(run->load), set->asked);
    moved.num = moved.num < 0 ? -moved.num : moved.num;
    /* Half a usual step (2.5 kg, 5 lb) is as near as a gym with the usual discs comes to any light load. */
    if (ratio_cmp(ratio_mul(moved, ratio_int(2)), ratio_weight(set->day->gym->free.step)) <= 0)
        return ratio_int(0);
    return ratio_div(ratio_mul(moved, ratio_int(100)), set->asked);
}

static void unreachable_hit(struct asking *asking, const struct block_view *block, const struct set_view *set,
                            struct dec limit)
{
    enum weight_unit unit = set->day->gym->unit;
    struct ratio asked = ratio_in(set->asked, unit);
    rule_hit(asking, met_load(block, set),
             "ask for a load that the gym can make, or add smaller discs or steps to the gym",
             "%s asks for %s %s and gets %s in this gym, %s %% away; the limit is %s %%", set->lift->name,
             rule_number(asking, asked), unit == UNIT_KG ? "kg" : "lb",
             weight_text(rule_arena(asking), set->run->load, unit), rule_number(asking, moved_by(set)),
             bound_text(asking, limit));
}

void rule_unreachable_load(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    for (int i = 0, next; i < block->set_count; i = next) {
        const struct set_view *first = &block->sets[i], *worst = first;
        for (next = i; next < block->set_count && block->sets[next].entry == first->entry &&
                       block->sets[next].group->group == first->group->group;
             next++)
            if (ratio_cmp(moved_by(&block->sets[next]), moved_by(worst)) > 0)
                worst = &block->sets[next];
        if (first->week->kind == WEEK_TRAINING && is_above(moved_by(worst), limit))
            unreachable_hit(asking, block, worst, limit);
    }
}
