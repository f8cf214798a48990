#include "calc/trend.h"

#include <math.h>
#include <stdlib.h>

enum { FAR_PERCENT = 15, FAR_ERRORS = 3 };
#define TENTH_KG (DEC_ONE / 10)

enum { TESTED, REPETITION, SPEED, BORROWED, PROCESS, ROW_COUNT };

/* clang-format off */
static const struct trend_row rows[ROW_COUNT] = {
    [TESTED] = { .name = "tested max", .percent = { DEC_ONE / 2 }, .per = "",
        .evidence = "a max line is the coach's word, and loads should follow it at once; tests repeated within days differ "
                    "by 0.5 to 12.1 %, median 4.2 % (Grgic and others 2020)" },
    [REPETITION] = { .name = "a set, besides", .percent = { DEC_ONE * 3 / 2 }, .per = "repetition beyond the first",
        .evidence = "curves and ratings err more the longer the set: 3.0 % at five repetitions, where a line through "
                    "bench presses missed by 3.0 kg (Reynolds, Gordon, Robergs 2006)" },
    [SPEED] = { .name = "speed", .percent = { DEC_ONE * 5 }, .per = "",
        .evidence = "a little less than the 5.7 to 7.4 % of squat maxes predicted from warm-ups up to 90 % (Banyard, "
                    "Nosaka, Haff 2017), since the line is the lifter's own and grows with training" },
    [BORROWED] = { .name = "borrowed, besides", .percent = { DEC_ONE * 4 }, .per = "",
        .evidence = "no study of it known; the first sets of the lift itself then count for most" },
    [PROCESS] = { .name = "a day passing", .percent = { DEC_ONE / 2 }, .per = "day",
        .evidence = "no study of it known: 1.3 % in a week, 3.7 % in eight, so that an old max gives way to new sets; "
                    "trained men added 13.9 to 17.1 kg to a squat in eight weeks (Helms and others 2018)" },
};
/* clang-format on */

int trend_row_count(void)
{
    return ROW_COUNT;
}

const struct trend_row *trend_row_at(int index)
{
    return &rows[index];
}

static double variance_of_row(int row)
{
    double part = (double)rows[row].percent.e10 / (100 * (double)DEC_ONE);
    return part * part;
}

static double real(struct ratio a)
{
    return (double)a.num / (double)a.den;
}

/* The one rounding of binary floating point in this module. */
static struct weight nearest_tenth_kg(double e10)
{
    long long tenths = llround(e10 / (double)TENTH_KG);
    return ratio_to_weight(ratio_mul(ratio_int(tenths > 0 ? tenths : 1), ratio_int(TENTH_KG)));
}

static double variance_of(const struct trend_observation *seen)
{
    double variance = variance_of_row(seen->source == TREND_SPEED ? SPEED : TESTED);
    if (seen->source == TREND_SET && ratio_cmp(seen->n, ratio_int(1)) > 0)
        variance += variance_of_row(REPETITION) * real(ratio_sub(seen->n, ratio_int(1)));
    return variance + (seen->borrowed ? variance_of_row(BORROWED) : 0);
}

static double variance_on(const struct trend *trend, bool dated, int32_t day)
{
    bool later = trend->dated && dated && day > trend->day;
    return trend->variance + variance_of_row(PROCESS) * (later ? day - trend->day : 0);
}

void trend_observe(struct trend *trend, const struct trend_observation *seen)
{
    double said = log(real(seen->max)), noise = variance_of(seen);
    if (trend->started) {
        double before = variance_on(trend, seen->dated, seen->day), both = before + noise;
        trend->level += before / both * (said - trend->level);
        trend->variance = before * noise / both;
    } else {
        trend->level = said;
        trend->variance = noise;
    }
    if (seen->dated && (!trend->dated || seen->day > trend->day))
        trend->day = seen->day;
    trend->dated |= seen->dated;
    trend->started = true;
}

struct weight trend_max(const struct trend *trend)
{
    return trend->started ? nearest_tenth_kg(exp(trend->level)) : (struct weight){ 0 };
}

struct weight trend_error(const struct trend *trend, int32_t day)
{
    if (!trend->started)
        return (struct weight){ 0 };
    return nearest_tenth_kg(sqrt(variance_on(trend, true, day)) * exp(trend->level));
}

static bool is_apart(struct ratio from, struct ratio to)
{
    struct ratio apart = ratio_sub(to, from);
    apart.num = apart.num < 0 ? -apart.num : apart.num;
    return ratio_cmp(apart, ratio_percent(from, dec_int(FAR_PERCENT))) > 0;
}

static bool is_beyond_errors(double apart, double variance)
{
    return fabs(apart) > FAR_ERRORS * sqrt(variance);
}

bool trend_is_far(const struct trend *trend, const struct trend_observation *seen)
{
    return trend->started && is_apart(ratio_weight(trend_max(trend)), seen->max) &&
           is_beyond_errors(log(real(seen->max)) - trend->level,
                            variance_on(trend, seen->dated, seen->day) + variance_of(seen));
}

bool trend_agrees(const struct trend_observation *first, const struct trend_observation *second)
{
    int days = abs(second->day - first->day);
    if (!first->dated || !second->dated || days > TREND_AGREE_DAYS)
        return false;
    double drift = variance_of_row(PROCESS) * days;
    return !is_apart(first->max, second->max) || !is_beyond_errors(log(real(ratio_div(second->max, first->max))),
                                                                   variance_of(first) + variance_of(second) + drift);
}
