/* The rules about volume and load; rule.h is the contract.
 *
 * Hard sets are counted in halves, since a set counts half for the muscles that its lift helps. Sets of unknown effort are
 * no hard sets, but a week that holds some is never told that it has too few. */
#include "check/ask.h"

#include "base/vec.h"

enum { HALVES_OF_TOTAL = 2 * SETS_MOST };

/* Of all sets of a view; `total 30` has no number of sets and holds its reps itself. */
static struct ratio reps_of(const struct set_view *set)
{
    return set->sets ? ratio_mul(middle_reps(set), ratio_int(set->sets)) : middle_reps(set);
}

static struct place_met met_week_of(const struct block_view *block, const struct week_view *week, const char *subject)
{
    struct place_met place = met_week(block, week);
    place.subject = subject;
    return place;
}

/* ---- hard sets ---- */

struct volume {
    int hard, open; /* half sets; open: of unknown effort or number */
};

static void volume_add(struct volume *volume, const struct lift_week *week, int halves)
{
    volume->hard += halves * week->hard;
    volume->open += halves * week->open + HALVES_OF_TOTAL * week->totals;
}

static struct volume volume_of(const struct lift_week *week)
{
    struct volume volume = { 0 };
    volume_add(&volume, week, 2);
    return volume;
}

/* What sets are counted for, a lift with those like it or a muscle, and which lifts of the block count for it. */
struct share {
    int lift, halves;
    const struct share *next;
};
struct subject {
    const char *name;
    const struct share *shares;
    bool helped_only; /* nothing in the block works it: it can have too much, and nobody meant it to have enough */
};

/* A lift that works a muscle and helps it too works it; works come first. */
static void share_add(struct asking *asking, struct subject *subject, int lift, int halves)
{
    if (subject->shares && subject->shares->lift == lift)
        return;
    struct share *share = NEW(rule_arena(asking), struct share);
    *share = (struct share){ lift, halves, subject->shares };
    subject->shares = share;
}

/* There is always a high one; the low one does not hold for a muscle that lifts only help. */
static const char *limits_text(struct asking *asking, struct bounds limit)
{
    if (limit.low.e10 < 0)
        return rule_text(asking, "the limit is at most %s", bound_text(asking, limit.high));
    return rule_text(asking, "the limits are %s to %s", bound_text(asking, limit.low), bound_text(asking, limit.high));
}

static void volume_ask(struct asking *asking, const struct block_view *block, const struct subject *subject,
                       const char *few, const char *many)
{
    struct bounds limit = rule_limit(asking, block, subject->name);
    if (subject->helped_only && !rule_limit_is_own(asking, block, subject->name))
        limit.low.e10 = -1;
    struct volume *volumes = NEW_MANY(rule_arena(asking), struct volume, block->week_count + 1);
    for (const struct share *share = subject->shares; share; share = share->next)
        for (const struct lift_week *week = block->lift_weeks[share->lift]; week; week = week->later)
            volume_add(&volumes[week->week], week, share->halves);
    const char *limits = NULL; /* for the first week that is off, and those after it */
    for (int w = 0; w < block->week_count; w++) {
        const struct week_view *week = &block->weeks[w];
        bool too_few = parts_below((wide)volumes[w].hard + volumes[w].open, 2, limit.low),
             too_many = parts_above(volumes[w].hard, 2, limit.high);
        if (!week->training || (!too_few && !too_many))
            continue;
        limits = limits ? limits : limits_text(asking, limit);
        rule_hit(asking, met_week_of(block, week, subject->name), too_many ? many : few,
                 "%s hard set%s for %s in week %d; %s", rule_number(asking, ratio_halves(volumes[w].hard)),
                 volumes[w].hard == 2 ? "" : "s", subject->name, week->week->number, limits);
    }
}

void rule_weekly_sets(struct asking *asking, const struct block_view *block)
{
    struct subject *subjects = NEW_MANY(rule_arena(asking), struct subject, block->lift_count + 1);
    for (int i = 0; i < block->lift_count; i++)
        for (const struct lift *lift = block->lifts[i]; lift; lift = lift->like)
            if (is_competition(lift) && lift_at(block, lift) >= 0)
                share_add(asking, &subjects[lift_at(block, lift)], i, 2);
    for (int i = 0; i < block->lift_count; i++) {
        subjects[i].name = block->lifts[i]->name;
        if (is_competition(block->lifts[i]))
            volume_ask(
                asking, block, &subjects[i],
                "add sets of it or of lifts like it, or bring easy ones up to rpe 5 or more: those are hard sets",
                "take sets out, of it or of the lifts like it, or spread them over more weeks");
    }
}

/* Muscles, each once: those that are worked in the order of training, then those that are only helped. */
struct muscles {
    struct numbers numbers;
    VEC(struct subject) list;
};

static void muscles_name(struct asking *asking, struct muscles *muscles, const char *const *names, int count, bool helped)
{
    for (int i = 0; i < count; i++)
        if (numbers_give(&muscles->numbers, names[i], 0) == muscles->list.count)
            vec_add(rule_arena(asking), &muscles->list, ((struct subject){ .name = names[i], .helped_only = helped }));
}

static void muscles_share(struct asking *asking, struct muscles *muscles, int lift, const char *const *names, int count, int halves)
{
    for (int i = 0; i < count; i++)
        share_add(asking, &muscles->list.at[numbers_known(&muscles->numbers, names[i], 0)], lift, halves);
}

void rule_muscle_sets(struct asking *asking, const struct block_view *block)
{
    struct muscles muscles = { .numbers.arena = rule_arena(asking) };
    for (int i = 0; i < block->lift_count; i++)
        muscles_name(asking, &muscles, block->lifts[i]->works, block->lifts[i]->works_count, false);
    for (int i = 0; i < block->lift_count; i++)
        muscles_name(asking, &muscles, block->lifts[i]->helps, block->lifts[i]->helps_count, true);
    for (int i = 0; i < block->lift_count; i++) {
        muscles_share(asking, &muscles, i, block->lifts[i]->works, block->lifts[i]->works_count, 2);
        muscles_share(asking, &muscles, i, block->lifts[i]->helps, block->lifts[i]->helps_count, 1);
    }
    for (int i = 0; i < muscles.list.count; i++)
        volume_ask(asking, block, &muscles.list.at[i],
                   "add sets of a lift that `works` it, or bring easy ones up to rpe 5 or more: those are hard sets",
                   "take sets out of the lifts that `works` and `helps` name it for");
}

/* ---- volume-jump ---- */

/* What a week is measured against: the one before, or for days in turn (A B A, B A B) the fuller of the two before. */
static const struct lift_week *measure_of(const struct lift_week *now)
{
    const struct lift_week *earlier = now->earlier, *earliest = earlier ? earlier->earlier : NULL;
    if (!earlier || !now->rotates)
        return earlier;
    if (!earliest)
        return NULL;
    struct volume a = volume_of(earlier), b = volume_of(earliest);
    return a.hard + a.open >= b.hard + b.open ? earlier : earliest;
}

static int number_of(const struct block_view *block, const struct lift_week *week)
{
    return block->weeks[week->week].week->number;
}

static void volume_jump_ask(struct asking *asking, const struct block_view *block, const struct lift_week *week, const struct lift *lift)
{
    const struct lift_week *earlier = measure_of(week);
    if (!earlier || week->done <= earlier->done) /* the same sets a little harder are no more work */
        return;
    struct bounds percent = rule_limit(asking, block, NULL), sets = rule_second_limit(asking, block);
    struct volume now = volume_of(week), before = volume_of(earlier);
    struct ratio base = ratio_halves((wide)before.hard + before.open), up = ratio_sub(ratio_halves(now.hard), base);
    if (percent.high.e10 < 0 || ratio_cmp(up, ratio_percent(base, percent.high)) <= 0 || !is_above(up, sets.high))
        return;
    const char *share =
        base.num ? rule_text(asking, " (%s %%)", rule_number(asking, ratio_div(ratio_mul(up, ratio_int(100)), base)))
                 : "";
    rule_hit(asking, met_week_of(block, &block->weeks[week->week], lift->name),
             "add sets over more weeks, such as `(from 4 to 7) x 5`; sets that come up to rpe 5 count as added too",
             "%s goes from %s hard sets in week %d to %s in week %d, up %s%s; the limit is %s %% and %s sets",
             lift->name, rule_number(asking, base), number_of(block, earlier),
             rule_number(asking, ratio_halves(now.hard)), number_of(block, week), rule_number(asking, up), share,
             bound_text(asking, percent.high), bound_text(asking, sets.high));
}

void rule_volume_jump(struct asking *asking, const struct block_view *block)
{
    const struct lift_week **next =
        NEW_MANY(rule_arena(asking), const struct lift_week *, block->lift_count + 1); /* by lift */
    for (int i = 0; i < block->lift_count; i++)
        next[i] = block->lift_weeks[i];
    for (int w = 0; w < block->week_count; w++)
        for (int i = 0; i < block->lift_count; i++)
            if (next[i] && next[i]->week == w) {
                volume_jump_ask(asking, block, next[i], block->lifts[i]);
                next[i] = next[i]->later;
            }
}

/* ---- load-jump ---- */

/* Sets of a lift at the same reps in the same role: their heaviest load in the latest training week so far that has one, of
 * equal ones the first, and in the week with one before that. NULL: none. */
struct like_sets {
    const struct set_view *now, *before;
};
/* The latest training week so far that trains a lift, and the one before that. */
struct trained {
    const struct plan_week *now, *before;
};
struct likes {
    struct numbers numbers; /* of a lift's role, kind of reps and reps */
    VEC(struct like_sets) list;
    int *of;                 /* by set of the block: its place in the list; -1: a set without a load */
    struct trained *trained; /* by the lift's place */
};

/* A lift's sets of one role, kind of reps and reps: these fit into one number, as no set is longer than a day. */
static int likes_of(struct asking *asking, struct likes *likes, const struct set_view *set)
{
    const struct plan_group *group = set->group;
    uint64_t kind = (uint64_t)group->role << 8 | (uint64_t)group->reps_kind;
    int at = numbers_give(&likes->numbers, set->lift, kind << 48 | (uint64_t)group->reps_low << 24 | (uint64_t)group->reps_high);
    if (at == likes->list.count)
        vec_add(rule_arena(asking), &likes->list, (struct like_sets){ 0 });
    return at;
}

static void likes_add(struct like_sets *like, const struct set_view *set)
{
    if (!like->now || like->now->week != set->week)
        *like = (struct like_sets){ set, like->now };
    else if (set->run->load.e10 > like->now->run->load.e10)
        like->now = set;
}

static void likes_week(struct asking *asking, const struct block_view *block, const struct week_view *week,
                       struct likes *likes)
{
    for (int i = week->first; i < week->past; i++) {
        const struct set_view *set = &block->sets[i];
        struct trained *trained = &likes->trained[set->lift_at];
        if (trained->now != set->week)
            *trained = (struct trained){ set->week, trained->now };
        likes->of[i] = set->run->has_load ? likes_of(asking, likes, set) : -1;
        if (likes->of[i] >= 0)
            likes_add(&likes->list.at[likes->of[i]], set);
    }
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
    int64_t base = before->run->load.e10, up = now->run->load.e10 - base;
    if (up <= 0 || !is_whole_load(now) || !is_whole_load(before))
        return;
    if (!parts_above((wide)100 * up, base, limit) || is_smallest_step(now, before))
        return;
    rule_hit(asking, met_load(block, now), "go up in smaller steps, or add reps before adding load",
             "%s goes from %s in week %d to %s in week %d%s at the same reps, up %s %%; the limit is %s %%",
             now->lift->name, weight_text(rule_arena(asking), before->run->load, unit), before->week->number,
             weight_text(rule_arena(asking), now->run->load, unit), now->week->number,
             now->lift->loads == LOADS_BODYWEIGHT ? ", bodyweight included," : "",
             rule_number(asking, ratio_make((wide)100 * up, base)), bound_text(asking, limit));
}

void rule_load_jump(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    struct likes likes = { .numbers.arena = rule_arena(asking),
                           .of = NEW_MANY(rule_arena(asking), int, block->set_count + 1),
                           .trained = NEW_MANY(rule_arena(asking), struct trained, block->lift_count + 1) };
    for (int w = 0; w < block->week_count; w++) {
        const struct week_view *week = &block->weeks[w];
        if (!week->training)
            continue;
        likes_week(asking, block, week, &likes);
        for (int i = week->first; i < week->past; i++) {
            const struct set_view *now = &block->sets[i];
            const struct like_sets *like = likes.of[i] >= 0 ? &likes.list.at[likes.of[i]] : NULL;
            if (like && like->now == now && like->before && like->before->week == likes.trained[now->lift_at].before)
                load_jump_ask(asking, block, now, like->before, limit);
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

static bool in_zone(struct ratio percent, const struct zone *zone)
{
    return ratio_cmp(percent, ratio_int(zone->from)) >= 0 &&
           (!zone->past || ratio_cmp(percent, ratio_int(zone->past)) < 0);
}

enum { ZONES = sizeof zones / sizeof *zones };

/* What a day has of a lift. */
struct day_reps {
    const struct set_view *first;
    struct ratio all, in[ZONES];
};

static void day_reps_add(struct day_reps *reps, const struct set_view *set)
{
    if (!reps->first || reps->first->day != set->day) {
        *reps = (struct day_reps){ .first = set, .all = ratio_int(0) };
        for (int z = 0; z < ZONES; z++)
            reps->in[z] = ratio_int(0);
    }
    reps->all = ratio_add(reps->all, reps_of(set));
    if (!set->run->has_percent)
        return;
    struct ratio percent = percent_of(set);
    for (int z = 0; z < ZONES; z++)
        if (in_zone(percent, &zones[z]))
            reps->in[z] = ratio_add(reps->in[z], reps_of(set));
}

/* What is off in a zone, after what was off in the lighter ones. */
static const char *zone_text(struct asking *asking, struct ratio reps, struct ratio all, const struct zone *zone, const char *before)
{
    bool many = ratio_cmp(reps, ratio_int(zone->most)) > 0;
    bool few = ratio_cmp(reps, ratio_int(zone->least)) < 0 && ratio_cmp(ratio_mul(reps, ratio_int(2)), all) > 0;
    if (!many && !few)
        return before;
    return rule_text(asking, "%s%s%s rep%s %s of the max (the table has %d to %d)", before ? before : "",
                     before ? " and " : "", rule_number(asking, reps), ratio_cmp(reps, ratio_int(1)) ? "s" : "",
                     zone->name, zone->least, zone->most);
}

static void zones_ask(struct asking *asking, const struct block_view *block, const struct day_reps *reps)
{
    const char *off = NULL;
    for (int z = 0; z < ZONES; z++)
        off = zone_text(asking, reps->in[z], reps->all, &zones[z], off);
    if (off)
        rule_hit(
            asking, met_entry(block, reps->first),
            "where there are more, take sets or reps out or spread them over days; where fewer, add some or move load "
            "to another zone",
            "in one day %s has %s", reps->first->lift->name, off);
}

void rule_zone_reps(struct asking *asking, const struct block_view *block)
{
    struct day_reps *reps = NEW_MANY(rule_arena(asking), struct day_reps, block->lift_count + 1);
    for (int d = 0; d < block->day_count; d++) {
        const struct day_view *day = &block->days[d];
        if (day->week->kind != WEEK_TRAINING)
            continue;
        for (int i = day->first; i < day->past; i++)
            if (block->sets[i].main)
                day_reps_add(&reps[block->sets[i].lift_at], &block->sets[i]);
        for (int i = day->first; i < day->past; i++)
            if (reps[block->sets[i].lift_at].first == &block->sets[i])
                zones_ask(asking, block, &reps[block->sets[i].lift_at]);
    }
}

/* ---- specific-load ---- */

/* By reps, over the training weeks; of no reps where no load is known as a per cent. */
struct mean_percent {
    struct ratio sum, reps;
};

static struct mean_percent *mean_percents(struct asking *asking, const struct block_view *block)
{
    struct mean_percent *means = NEW_MANY(rule_arena(asking), struct mean_percent, block->lift_count + 1);
    for (int i = 0; i < block->lift_count; i++)
        means[i] = (struct mean_percent){ ratio_int(0), ratio_int(0) };
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        struct mean_percent *mean = &means[set->lift_at];
        if (!is_competition(set->lift) || !set->run->has_percent || set->week->kind != WEEK_TRAINING)
            continue;
        mean->sum = ratio_add(mean->sum, ratio_mul(percent_of(set), reps_of(set)));
        mean->reps = ratio_add(mean->reps, reps_of(set));
    }
    return means;
}

void rule_specific_load(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).low;
    const struct mean_percent *means = mean_percents(asking, block);
    for (int i = 0; i < block->lift_count; i++) {
        struct place_met place = met_block(block);
        place.subject = block->lifts[i]->name;
        if (!means[i].reps.num)
            continue;
        struct ratio mean = ratio_div(means[i].sum, means[i].reps);
        if (is_below(mean, limit))
            rule_hit(asking, place, "make its sets heavier and shorter, or give the light work to lifts like it",
                     "the mean load of %s is %s %% of the max (by reps); the limit is %s %%", place.subject,
                     rule_number(asking, mean), bound_text(asking, limit));
    }
}

/* ---- unreachable-load ---- */

/* The load before rounding, 1e-10 kg; 0: none is known. */
static const struct ratio *asked_of(const struct plan_run *run)
{
    static const struct ratio none = { 0, 1 };
    for (const struct reason *reason = run->reason; reason && run->has_load; reason = reason->before)
        if (reason->kind == REASON_RAW)
            return &reason->load;
    return &none;
}

/* Whether rounding moved the load; not where another finding speaks. Half a usual step (2.5 kg, 5 lb) is as near as a gym with the
 * usual discs comes to any light load. */
static bool is_moved(const struct set_view *set)
{
    const struct plan_run *run = set->run;
    if (run->under_bar || run->capped || set->week->kind != WEEK_TRAINING || set->lift->loads == LOADS_BODYWEIGHT)
        return false;
    const struct ratio *asked = asked_of(run);
    return asked->num > 0 && !ratio_is_near(*asked, run->load.e10, set->day->gym->free.step.e10);
}

/* By how much, in per cent of what was asked. */
static struct ratio moved_by(const struct set_view *set)
{
    const struct ratio *asked = asked_of(set->run);
    struct ratio moved = ratio_sub(ratio_weight(set->run->load), *asked);
    moved.num = moved.num < 0 ? -moved.num : moved.num;
    return ratio_div(ratio_mul(moved, ratio_int(100)), *asked);
}

static void unreachable_hit(struct asking *asking, const struct block_view *block, const struct set_view *set,
                            struct dec limit)
{
    enum weight_unit unit = set->day->gym->unit;
    struct ratio asked = ratio_in(*asked_of(set->run), unit);
    rule_hit(asking, met_load(block, set),
             "ask for a load that the gym can make, or add smaller discs or steps to the gym",
             "%s asks for %s %s and gets %s in this gym, %s %% away; the limit is %s %%", set->lift->name,
             rule_number(asking, asked), unit == UNIT_KG ? "kg" : "lb",
             weight_text(rule_arena(asking), set->run->load, unit), rule_number(asking, moved_by(set)),
             bound_text(asking, limit));
}

/* Of a group's sets the one that is moved most speaks. */
void rule_unreachable_load(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *worst = &block->sets[i];
        if (!is_moved(worst))
            continue;
        struct ratio most = moved_by(worst);
        for (; i + 1 < block->set_count && in_one_group(&block->sets[i + 1], worst); i++) {
            const struct set_view *set = &block->sets[i + 1];
            if (is_moved(set) && ratio_cmp(moved_by(set), most) > 0)
                worst = set, most = moved_by(set);
        }
        if (is_above(most, limit))
            unreachable_hit(asking, block, worst, limit);
    }
}
