#include "plan/season.h"

#include "calc/points.h"
#include "plan/work.h"

enum { TOTAL_LIFTS = 3, DISCS_MOST = 64 };

#define TENTHS(kg)                                                                                                     \
    {                                                                                                                  \
        (int64_t)(kg) * (DEC_ONE / 10)                                                                                 \
    }
#define HUNDREDTHS(kg)                                                                                                 \
    {                                                                                                                  \
        (int64_t)(kg) * (DEC_ONE / 100)                                                                                \
    }

static const struct weight competition_bar = TENTHS(200), competition_collar = TENTHS(25);

/* One pair of each lighter disc is enough beside as many of 25 kg as it takes: it makes every load with the fewest. */
static const struct disc competition_discs[] = {
    { TENTHS(250), 80 }, { TENTHS(200), 2 }, { TENTHS(150), 2 },     { TENTHS(100), 2 },
    { TENTHS(50), 2 },   { TENTHS(25), 2 },  { HUNDREDTHS(125), 2 },
};

/* Counted back from the opener: common practice. Light sets close together, the last one heavy enough to make the opener
 * feel known, with time to rest. */
static const struct {
    int percent; /* of the opener; 0: the empty bar */
    int reps, minutes;
} warm_up_rows[] = { { 0, 8, 40 },  { 30, 5, 35 }, { 45, 4, 30 }, { 60, 3, 25 },
                     { 72, 2, 19 }, { 82, 1, 13 }, { 92, 1, 7 } };
enum {
    WARM_UP_ROWS = sizeof warm_up_rows / sizeof *warm_up_rows,
    WARM_UP_JUMP = 20 /* the opener through this: a smaller step up from the set before is none */
};

/* What one lift is loaded with on the day. */
struct platform {
    struct arena *arena;
    const struct gym *gym;
    const struct lift *lift;
    const struct ladder *whole;
    struct ladder legal;
    struct weight step;
    bool on_body;
    struct weight bodyweight; /* on_body alone */
};

static struct weight legal_step(enum weight_unit unit)
{
    static const struct weight steps[] = { [UNIT_KG] = TENTHS(25), [UNIT_LB] = { 5 * LB_IN_E10 } };
    return steps[unit];
}

static const struct gym *gym_competition(struct arena *arena)
{
    struct gym *gym = NEW(arena, struct gym);
    struct named_ladder *bar = NEW(arena, struct named_ladder);
    const struct weight none = { 0 }, step = legal_step(UNIT_KG);
    *bar = (struct named_ladder){ 0 };
    ladder_bar(arena, competition_bar, competition_collar, competition_discs,
               (int)(sizeof competition_discs / sizeof *competition_discs), &bar->ladder);
    *gym = (struct gym){ .unit = UNIT_KG,
                         .bars = bar,
                         .bar_count = 1,
                         .dumbbells = ladder_steps(none, step),
                         .free = ladder_steps(none, step) };
    return gym;
}

static struct ladder legal_ladder(struct arena *arena, const struct ladder *whole, struct weight step)
{
    struct weight *at = whole->at ? NEW_MANY(arena, struct weight, whole->count) : NULL;
    int count = 0;
    for (int i = 0; whole->at && i < whole->count; i++)
        if (whole->at[i].e10 % step.e10 == 0)
            at[count++] = whole->at[i];
    return count ? (struct ladder){ .at = at, .count = count, .first = at[0] } : *whole;
}

static struct weight load_nearest(const struct platform *p, struct ratio load)
{
    if (p->on_body)
        return load_round(p->gym, p->lift, load, p->bodyweight, ROUND_NEAREST);
    return ladder_round(&p->legal, load, ROUND_NEAREST);
}

static struct weight load_above(const struct platform *p, struct weight load)
{
    return !p->on_body ? ladder_above(&p->legal, load) : (struct weight){ load.e10 + p->step.e10 };
}

static struct weight load_below(const struct platform *p, struct weight load)
{
    if (p->on_body)
        return (struct weight){ load.e10 - p->step.e10 };
    return ladder_round(&p->legal, ratio_sub(ratio_weight(load), ratio_int(1)), ROUND_DOWN);
}

static struct meet_load loaded(const struct platform *p, struct weight load)
{
    struct weight room[DISCS_MOST];
    struct meet_load made = { .load = load, .shown = load, .disc_count = -1 };
    if (p->on_body) {
        made.shown.e10 -= p->bodyweight.e10;
        return made;
    }
    int count = ladder_side(p->whole, load, room, DISCS_MOST);
    if (count >= 0 && count <= DISCS_MOST) {
        struct weight *discs = NEW_MANY(p->arena, struct weight, count + 1);
        for (int i = 0; i < count; i++)
            discs[i] = room[i];
        made.disc_count = count;
        made.discs = discs;
    }
    return made;
}

/* ---- attempts ---- */

static void lift_attempts(const struct platform *p, struct meet_lift *lift)
{
    for (int i = 0; i < ATTEMPT_COUNT; i++)
        lift->attempts[i] = loaded(p, load_nearest(p, ratio_percent(lift->max.load, lift->line->percent[i])));
}

static void lift_thirds(const struct platform *p, struct meet_lift *lift)
{
    struct weight second = lift->attempts[1].load, third = lift->attempts[2].load;
    struct ratio half = ratio_make(third.e10 - second.e10, 2), exact = ratio_weight(third);
    struct weight less = load_nearest(p, ratio_sub(exact, half)), more = load_nearest(p, ratio_add(exact, half));
    if (less.e10 >= third.e10)
        less = load_below(p, third);
    if (more.e10 <= third.e10)
        more = load_above(p, third);
    lift->cautious = loaded(p, less.e10 < second.e10 ? second : less);
    lift->bold = loaded(p, more);
}

/* ---- warm-ups ---- */

static struct weight warm_up_load(const struct platform *p, struct weight opener, int percent)
{
    struct weight least = p->on_body ? p->bodyweight : load_nearest(p, ratio_int(0));
    struct weight load = load_nearest(p, ratio_percent(ratio_weight(opener), dec_int(percent)));
    return load.e10 < least.e10 ? least : load;
}

static void lift_warm_ups(const struct platform *p, struct meet_lift *lift)
{
    struct meet_warm_up *rows = NEW_MANY(p->arena, struct meet_warm_up, WARM_UP_ROWS);
    struct weight opener = lift->attempts[0].load, before = { 0 };
    bool has_bar = p->on_body || p->lift->loads == LOADS_BAR;
    for (int i = 0; i < WARM_UP_ROWS; i++) {
        struct weight load = warm_up_load(p, opener, warm_up_rows[i].percent);
        bool jump = !lift->warm_up_count || load.e10 - before.e10 >= opener.e10 / WARM_UP_JUMP;
        if (!jump || load.e10 >= opener.e10 || (!warm_up_rows[i].percent && !has_bar))
            continue;
        rows[lift->warm_up_count++] =
            (struct meet_warm_up){ loaded(p, load), warm_up_rows[i].reps, warm_up_rows[i].minutes };
        before = load;
    }
    lift->warm_ups = rows;
}

/* ---- the day ---- */

static struct meet_lift lift_of_day(struct arena *arena, const struct meet_day *day, const struct gym *gym,
                                    const struct attempts_line *line, const struct block *block, struct record *record)
{
    const struct lift *trained = line->lift;
    struct meet_lift lift = { .line = line, .max = history_max(day->athlete, trained, day->meet->date, block) };
    struct platform p = { .arena = arena,
                          .gym = gym,
                          .lift = trained,
                          .whole = ladder_for(gym, trained),
                          .step = day->step,
                          .on_body = trained->loads == LOADS_BODYWEIGHT };
    if (!block || !block->max_fixed)
        lift.running = running_max(record, trained, day->meet->date, block);
    if (lift.running.known)
        lift.max.load = ratio_weight(lift.running.max);
    lift.open = !lift.max.line && !lift.running.known ? MEET_NO_MAX : p.on_body && !day->bodyweight ? MEET_NO_BODYWEIGHT : MEET_KNOWN;
    if (lift.open != MEET_KNOWN)
        return lift;
    if (p.on_body)
        p.bodyweight = day->bodyweight->weight;
    else
        p.legal = legal_ladder(arena, p.whole, day->step);
    if (trained->loads == LOADS_BAR && p.whole->at)
        lift.empty = p.whole->empty;
    lift_attempts(&p, &lift);
    lift_thirds(&p, &lift);
    lift_warm_ups(&p, &lift);
    return lift;
}

static void day_totals(struct meet_day *day)
{
    day->whole = day->lift_count > 0;
    for (int j = 0; j < ATTEMPT_COUNT; j++) {
        wide total = 0;
        for (int i = 0; i < day->lift_count; i++) {
            day->whole &= day->lifts[i].open == MEET_KNOWN;
            total += day->lifts[i].attempts[j].shown.e10;
        }
        day->whole &= total <= INT64_MAX; /* beyond what a weight holds: nobody's */
        day->totals[j].e10 = day->whole ? (int64_t)total : 0;
    }
}

static void day_points(struct meet_day *day)
{
    static const char *const who[] = { [POINTS_WOMEN] = "women", [POINTS_MEN] = "men" };
    day->has_points = day->whole && day->lift_count == TOTAL_LIFTS && day->bodyweight;
    for (int i = 0; i < 2 && day->has_points; i++) {
        struct meet_points *points = &day->points[i];
        struct weight body = day->bodyweight->weight, total = day->totals[ATTEMPT_COUNT - 1];
        enum points_sex sex = (enum points_sex)i;
        points->who = who[i];
        points->has_gl = points_of(points_find(POINTS_GL, sex, POINTS_CLASSIC, POINTS_FULL), body, total, &points->gl);
        points->has_dots =
            points_of(points_find(POINTS_DOTS, sex, POINTS_CLASSIC, POINTS_FULL), body, total, &points->dots);
    }
}

struct meet_day *season_meet_day(struct arena *arena, const struct season *season, const struct meet *meet,
                                 const struct athlete *athlete, const struct block *block, struct record *record)
{
    struct meet_day *day = NEW(arena, struct meet_day);
    const struct gym *gym = season->gym ? season->gym : gym_competition(arena);
    struct meet_lift *lifts = NEW_MANY(arena, struct meet_lift, season->attempt_count + 1);
    *day = (struct meet_day){ .season = season,
                              .meet = meet,
                              .athlete = athlete,
                              .unit = gym->unit,
                              .step = legal_step(gym->unit),
                              .lifts = lifts,
                              .lift_count = season->attempt_count,
                              .bodyweight = history_bodyweight(athlete, meet->date) };
    if (!season->gym)
        day->collar = competition_collar;
    for (int i = 0; i < season->attempt_count; i++)
        lifts[i] = lift_of_day(arena, day, gym, &season->attempts[i], block, record);
    day_totals(day);
    day_points(day);
    return day;
}
