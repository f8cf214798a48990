/* The rules about time, recovery and the calendar; rule.h is the contract. Limits without a number in the row stand here. */
#include "check/ask.h"

#include "base/sort.h"
#include "base/vec.h"

enum { CLOSE_EFFORT = 7 }; /* back-to-back */

static const char *day_text(struct asking *asking, struct date date)
{
    return rule_text(asking, "%s %s", weekday_name(date_weekday(date)), date_text(rule_arena(asking), date));
}

/* ---- deload-due ---- */

/* Training weeks one after the other, through blocks that follow on. */
struct deload_due {
    int count;
    struct date first, last; /* first days of its first and last week */
    bool over;               /* longer than the limit of the block where it passed it */
    struct place_met place;  /* there */
    struct bounds limit;
};

static void run_end(struct asking *asking, struct deload_due *run)
{
    if (run->over)
        rule_hit(
            asking, run->place,
            "turn one of these weeks into a lighter one, such as `deload week N`, or leave a week free between blocks",
            "%d training weeks in a row without a lighter one, %s to %s; the limit is %s", run->count,
            date_text(rule_arena(asking), run->first),
            date_text(rule_arena(asking), date_plus(run->last, WEEK_DAYS - 1)), bound_text(asking, run->limit.high));
    *run = (struct deload_due){ 0 };
}

static void run_week(struct asking *asking, struct deload_due *run, const struct block_view *block,
                     const struct week_view *week)
{
    struct date start = week->week->start;
    /* A gap of some days is no week of rest; a whole one is. */
    if (run->count && start.day - run->last.day >= 2 * WEEK_DAYS)
        run_end(asking, run);
    if (!week->training || week->first == week->past) {
        run_end(asking, run);
        return;
    }
    if (run->count && start.day - run->last.day < WEEK_DAYS)
        return; /* of a second block that runs beside the first */
    if (!run->count)
        run->first = start;
    run->count++;
    run->last = start;
    struct bounds limit = rule_limit(asking, block, NULL);
    if (!run->over && !rule_is_off(asking, block) && is_above(ratio_int(run->count), limit.high)) {
        run->over = true;
        run->place = met_week(block, week);
        run->limit = limit;
    }
}

void deload_due_keep(struct asking *asking, const struct block_view *block)
{
    struct deload_due *run = rule_kept(asking, sizeof *run);
    if (block->break_before)
        run_end(asking, run);
    for (int i = 0; i < block->week_count; i++)
        run_week(asking, run, block, &block->weeks[i]);
}

void rule_deload_due(struct asking *asking, const struct athlete_view *athlete)
{
    (void)athlete;
    run_end(asking, rule_kept(asking, sizeof(struct deload_due)));
}

/* ---- frequency ---- */

/* On how many days a week trains a lift, with a set of the last of them. */
struct days_of_week {
    int days;
    const struct set_view *only; /* may be of a week before: then there are none */
};

static void days_of(const struct block_view *block, const struct week_view *week, struct days_of_week *lifts)
{
    for (int i = week->first; i < week->past; i++) {
        const struct set_view *set = &block->sets[i];
        struct days_of_week *of = &lifts[set->lift_at];
        if (!of->only || of->only->week != set->week)
            *of = (struct days_of_week){ 1, set };
        else if (of->only->day != set->day)
            *of = (struct days_of_week){ of->days + 1, set };
    }
}

static void frequency_lift(struct asking *asking, const struct block_view *block, const struct week_view *week,
                           const struct lift *lift, struct days_of_week of)
{
    const struct set_view *only = of.only;
    int days = only && only->week == week->week ? of.days : 0;
    if (days > 1)
        return;
    struct place_met place = days ? met_entry(block, only) : met_week(block, week);
    place.subject = lift->name;
    if (!days) {
        rule_hit(asking, place, "put a few lighter sets into one of the week's days, or swap it for the whole block",
                 "week %d does not train %s, which the block does", week->week->number, lift->name);
        return;
    }
    place.level = LEVEL_ADVICE;
    rule_hit(asking, place,
             rule_text(asking, "a lighter second day, such as `%s 3 x 4 at rpe 6`, is practice that costs little",
                       lift->name),
             "%s is trained on one day of the week", lift->name);
}

void rule_frequency(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    struct days_of_week *lifts = NEW_MANY(rule_arena(asking), struct days_of_week, block->lift_count + 1);
    for (int i = 0; i < block->week_count; i++) {
        const struct week_view *week = &block->weeks[i];
        /* A week she skips as a whole is rest, not a lift forgotten. */
        if (!week->training || week->first == week->past || week_holds(week, meet_from(block, week->week->start)))
            continue;
        days_of(block, week, lifts);
        for (int j = 0; j < block->lift_count; j++)
            if (is_competition(block->lifts[j]))
                frequency_lift(asking, block, week, block->lifts[j], lifts[j]);
    }
}

/* ---- back-to-back ---- */

/* A day that trains a competition lift hard: its hardest set. */
struct hard_day {
    const struct lift *lift;
    const struct block *block;
    const struct entry *entry;
    const char *label; /* of the day */
    struct ratio effort;
    struct date date;
    int week, order; /* of meeting: by block and day */
};
struct back_to_back {
    VEC(struct hard_day) list;
};

static bool is_hard(const struct set_view *set)
{
    return is_competition(set->lift) && at_effort(set, CLOSE_EFFORT);
}

/* The hardest set of each lift, the lifts in the order of their hard sets. `hardest`: by the lift's place, NULL before and after. */
static void hard_day_keep(struct asking *asking, const struct block_view *block, const struct day_view *day,
                          const struct set_view **hardest)
{
    struct back_to_back *hard = rule_kept(asking, sizeof *hard);
    for (int i = day->first; i < day->past; i++) {
        const struct set_view *set = &block->sets[i], **of = &hardest[set->lift_at];
        if (is_hard(set) && (!*of || is_harder(set, *of)))
            *of = set;
    }
    for (int i = day->first; i < day->past; i++) {
        const struct set_view *set = hardest[block->sets[i].lift_at];
        if (!set || !is_hard(&block->sets[i]))
            continue;
        struct hard_day kept = { .lift = set->lift,
                                 .block = block->block,
                                 .entry = set->entry->entry,
                                 .label = day->day->day->label,
                                 .effort = effort_of(set),
                                 .date = set->date,
                                 .week = set->week->number,
                                 .order = hard->list.count };
        vec_add(rule_keep_arena(asking), &hard->list, kept);
        hardest[set->lift_at] = NULL;
    }
}

void back_to_back_keep(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    const struct set_view **hardest = NEW_MANY(rule_arena(asking), const struct set_view *, block->lift_count + 1);
    for (int i = 0; i < block->day_count; i++)
        if (block->days[i].dated && block->days[i].week->kind == WEEK_TRAINING)
            hard_day_keep(asking, block, &block->days[i], hardest);
}

static const char *apart_text(int days)
{
    return days == 0 ? "the same day" : days == 1 ? "the day before" : "days before";
}

static int by_date(const void *a, const void *b)
{
    const struct hard_day *one = a, *other = b;
    return one->date.day != other->date.day ? (one->date.day > other->date.day) - (one->date.day < other->date.day)
                                            : (one->order > other->order) - (one->order < other->order);
}

static void back_to_back_ask(struct asking *asking, const struct hard_day *now, const struct hard_day *before)
{
    struct bounds limit = rule_limit_in(asking, now->block, NULL);
    int apart = now->date.day - before->date.day;
    if (!is_below(ratio_int(apart), limit.low))
        return;
    struct place_met place = { .block = now->block, .week = now->week, .day = now->label, .lift = now->lift->name,
                               .at = now->entry->at, .origin = now->entry->origin, .level = LEVEL_OF_GOAL };
    rule_hit(asking, place, "move the day, or make one of the two light, at rpe 6 or less",
             "%s is at rpe %s on %s and was at rpe %s %s; hard days of a lift want %s days from one to the next",
             now->lift->name, rule_number(asking, now->effort), day_text(asking, now->date), rule_number(asking, before->effort),
             apart > 1 ? rule_text(asking, "%d %s", apart, apart_text(apart)) : apart_text(apart),
             bound_text(asking, limit.low));
}

/* Each is held against the latest one before it of its lift, in days by date, and of several on that date against the first. */
void rule_back_to_back(struct asking *asking, const struct athlete_view *athlete)
{
    const struct back_to_back *hard = rule_kept(asking, sizeof *hard);
    struct numbers lifts = { .arena = rule_arena(asking) };
    const struct hard_day **latest = NEW_MANY(rule_arena(asking), const struct hard_day *, hard->list.count + 1); /* by lift */
    (void)athlete;
    sort_unless_sorted(hard->list.at, hard->list.count, sizeof *hard->list.at, by_date); /* blocks come by their starts */
    for (int i = 0; i < hard->list.count; i++) {
        const struct hard_day *now = &hard->list.at[i], **before = &latest[numbers_give(&lifts, now->lift, 0)];
        if (*before)
            back_to_back_ask(asking, now, *before);
        if (!*before || (*before)->date.day != now->date.day)
            *before = now;
    }
}

/* ---- session-minutes ---- */

void rule_session_minutes(struct asking *asking, const struct block_view *block)
{
    struct bounds limit = rule_limit(asking, block, NULL);
    if (rule_is_off(asking, block))
        return;
    for (int i = 0; i < block->day_count; i++) {
        const struct day_view *day = &block->days[i];
        int64_t seconds = day->week->kind == WEEK_TRAINING ? plan_day_seconds(day->day) : 0;
        if (!parts_above(seconds, 60, limit.high))
            continue;
        rule_hit(asking, met_day(block, day),
                 "leave an accessory out, pair two in a `superset`, or give part of it a day of its own",
                 "day %s takes about %d min with its rests; the limit is %s min", day->day->day->label,
                 (int)((seconds + 59) / 60), bound_text(asking, limit.high));
    }
}

/* ---- order-in-day ---- */

/* A muscle of a later main lift of the day, and a set of it. */
struct tired {
    const struct set_view *later;
    const char *muscle;
};

/* Going through a day from its end: by muscle, the nearest main set so far that works it. */
struct main_sets {
    struct numbers muscles;
    VEC(const struct set_view *) nearest;
};

static void main_sets_add(struct asking *asking, struct main_sets *mains, const struct set_view *set)
{
    for (int i = 0; i < set->lift->works_count; i++) {
        int at = numbers_give(&mains->muscles, set->lift->works[i], 0);
        if (at == mains->nearest.count)
            vec_add(rule_arena(asking), &mains->nearest, set);
        mains->nearest.at[at] = set;
    }
}

/* The first main lift after the set that works one of its muscles, and the first of those. */
static struct tired tired_by(const struct main_sets *mains, const struct set_view *set)
{
    struct tired tired = { 0 };
    for (int i = 0; i < set->lift->works_count; i++) {
        int at = numbers_known(&mains->muscles, set->lift->works[i], 0);
        const struct set_view *later = at < 0 ? NULL : mains->nearest.at[at];
        if (later && later->day == set->day && (!tired.later || later < tired.later))
            tired = (struct tired){ later, set->lift->works[i] };
    }
    return tired;
}

static void order_in_day(struct asking *asking, const struct block_view *block, const struct day_view *day, struct main_sets *mains)
{
    /* From the first set that is none of a main lift to the last that is. */
    int first = day->first, past = day->past;
    while (past > first && !block->sets[past - 1].main)
        past--;
    while (first < past && block->sets[first].main)
        first++;
    if (first == past)
        return;
    struct tired *tired = NEW_MANY(rule_arena(asking), struct tired, past - first);
    const struct plan_entry *said = NULL;
    for (int i = past - 1; i >= first; i--)
        if (block->sets[i].main)
            main_sets_add(asking, mains, &block->sets[i]);
        else
            tired[i - first] = tired_by(mains, &block->sets[i]);
    for (int i = first; i < past; i++) {
        const struct set_view *set = &block->sets[i], *later = tired[i - first].later;
        if (!later || set->entry == said)
            continue;
        said = set->entry;
        rule_hit(asking, met_entry(block, set),
                 rule_text(asking, "write %s below %s", set->lift->name, later->lift->name),
                 "%s comes before %s and tires its %s", set->lift->name, later->lift->name, tired[i - first].muscle);
    }
}

void rule_order_in_day(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    struct main_sets mains = { .muscles.arena = rule_arena(asking) };
    for (int i = 0; i < block->day_count; i++)
        if (block->days[i].week->kind == WEEK_TRAINING)
            order_in_day(asking, block, &block->days[i], &mains);
}

/* ---- calendar-gap, calendar-overlap ---- */

/* Days of the breaks that its season states right before a block. */
static int break_days(const struct block *block)
{
    const struct season *season = block->season;
    int days = 0;
    for (int i = block->run - 1; season && i >= 0 && !season->runs[i].decl; i--)
        days += WEEK_DAYS * season->runs[i].weeks;
    return days;
}

void rule_calendar_gap(struct asking *asking, const struct athlete_view *athlete)
{
    const struct block_term *before = NULL; /* the one that ends last so far */
    for (int i = 0; i < athlete->block_count; i++) {
        const struct block_term *block = &athlete->blocks[i];
        int days = before ? block->first.day - before->last.day - 1 - break_days(block->block) : 0;
        bool stated = block->break_before && !block->block->season;
        struct bounds limit = rule_limit_in(asking, block->block, NULL);
        if (!stated && !rule_is_off_in(asking, block->block) && is_above(ratio_int(days), limit.high))
            rule_hit(asking, met_name(block->block),
                     "start it earlier, plan the time between, or say that the break is meant: `allow calendar-gap "
                     "because \"…\"`",
                     "%d days without training between %s, which ends on %s, and %s; the limit is %s", days,
                     before->block->name, date_text(rule_arena(asking), before->last), block->block->name,
                     bound_text(asking, limit.high));
        if (!before || block->last.day > before->last.day)
            before = block;
    }
}

void rule_calendar_overlap(struct asking *asking, const struct athlete_view *athlete)
{
    int first = 0; /* of those not yet over: they begin in order, so what is over for one block is over for all after it */
    for (int i = 1; i < athlete->block_count; i++) {
        const struct block_term *block = &athlete->blocks[i];
        while (first < i && athlete->blocks[first].last.day < block->first.day)
            first++;
        const struct block_term *other = first < i ? &athlete->blocks[first] : NULL;
        if (!other || rule_is_off_in(asking, block->block))
            continue;
        int last = other->last.day < block->last.day ? other->last.day : block->last.day;
        const char *until = last > block->first.day
                                ? rule_text(asking, " to %s", date_text(rule_arena(asking), (struct date){ last }))
                                : "";
        rule_hit(asking, met_name(block->block),
                 "start one of them later, make the first one shorter, or take the athlete out of one",
                 "%s and %s both plan %s%s", block->block->name, other->block->name,
                 date_text(rule_arena(asking), block->first), until);
    }
}

/* ---- stale-max ---- */

/* The max line that a load was worked out from; NULL: none was. */
static const struct reason *max_behind(const struct plan_run *run)
{
    for (const struct reason *reason = run->reason; reason; reason = reason->before)
        if (reason->kind == REASON_MAX || reason->kind == REASON_MAX_ESTIMATED)
            return reason;
    return NULL;
}

/* Sets from the same line and week fold into one finding. */
static void stale_met(struct asking *asking, const struct block_view *block, const struct set_view *set, const struct reason *max,
                      struct dec limit)
{
    bool dated = date_is_set(max->date);
    struct place_met place = { .block = block->block,
                               .week = dated ? set->week->number : 0,
                               .at = max->at,
                               .level = dated ? LEVEL_OF_GOAL : LEVEL_ADVICE };
    const char *lately = date_text(rule_arena(asking), date_plus(block->first, -WEEK_DAYS));
    if (dated)
        rule_hit(asking, place,
                 rule_text(asking,
                           "test it, or add a line from a good set, such as `max %s from 100 kg x 5 rpe 8 on %s`",
                           max->name, lately),
                 "the max of %s is %d days old when week %d of %s starts; the limit is %s", max->name,
                 set->week->start.day - max->date.day, set->week->number, block->block->name,
                 bound_text(asking, limit));
    else
        rule_hit(asking, place, rule_text(asking, "add its day, such as `on %s`", lately),
                 "the max of %s has no date, so nobody sees when it is out of date", max->name);
}

void rule_stale_max(struct asking *asking, const struct block_view *block)
{
    struct dec limit = rule_limit(asking, block, NULL).high;
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        const struct reason *max = set->week->kind == WEEK_TRAINING && set->run->has_load ? max_behind(set->run) : NULL;
        if (!max || (date_is_set(max->date) && !parts_above(set->week->start.day - max->date.day, 1, limit)))
            continue;
        struct date done = record_last_day(block->plan->record, set->lift, set->week->start);
        if (!date_is_set(done) || parts_above(set->week->start.day - done.day, 1, limit))
            stale_met(asking, block, set, max, limit);
    }
}
