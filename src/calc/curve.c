#include "calc/curve.h"

#include <math.h>
#include <string.h>

enum { EFFORT_LEAST = -80, EFFORT_MOST = 24 }; /* in halves: -40 .. 12 */
#define SHARE_STEPS INT64_C(1000000000000)

/* One of `exact` and `real` is filled; both give the scaled share for n > 1. */
struct curve_row {
    const char *name, *source;
    struct ratio (*exact)(struct ratio n);
    double (*real)(double n);
    struct ratio (*exact_reps)(struct ratio p); /* their inverses, for 0 < p < 1 */
    double (*real_reps)(double p);
    int last; /* n is held here; 0: no end */
};

/* Of such parts no product with a formula's numbers, below 2^24, outgrows a ratio's: one fraction is enough. */
static bool is_short(struct ratio n)
{
    const wide most = (wide)1 << 62;
    return n.num < most && n.num > -most && n.den < most;
}

/* In lowest terms only where it has to be: what is compared or rounded in here does not need them, and what goes out gets them. */
static struct ratio loosely(wide num, wide den)
{
    struct ratio fraction = { den < 0 ? -num : num, den < 0 ? -den : den };
    return is_short(fraction) ? fraction : ratio_make(num, den);
}

static struct ratio strictly(struct ratio fraction)
{
    return ratio_make(fraction.num, fraction.den);
}

/* a / (b + n), the shape of the two linear-in-reps formulas once scaled */
static struct ratio share_over(int64_t a, int64_t b, struct ratio n)
{
    if (is_short(n))
        return loosely(a * n.den, b * n.den + n.num);
    return ratio_div(ratio_int(a), ratio_add(ratio_int(b), n));
}

/* (a - b n) / c */
static struct ratio share_falling(int64_t a, int64_t b, int64_t c, struct ratio n)
{
    if (is_short(n))
        return loosely(a * n.den - b * n.num, c * n.den);
    struct ratio top = ratio_sub(ratio_int(a), ratio_mul(ratio_int(b), n));
    return ratio_div(top, ratio_int(c));
}

static struct ratio epley(struct ratio n)
{
    return share_over(31, 30, n);
}

static struct ratio brzycki(struct ratio n)
{
    return share_falling(37, 1, 36, n);
}

static struct ratio oconner(struct ratio n)
{
    return share_over(41, 40, n);
}

static struct ratio lander(struct ratio n)
{
    return share_falling(10130000, 267123, 10130000 - 267123, n);
}

static double lombardi(double n)
{
    return pow(n, -0.10);
}

static double mayhew(double n)
{
    return (52.2 + 41.9 * exp(-0.055 * n)) / (52.2 + 41.9 * exp(-0.055));
}

static double wathan(double n)
{
    return (48.8 + 53.8 * exp(-0.075 * n)) / (48.8 + 53.8 * exp(-0.075));
}

/* The printed chart has no rows for 13 and 14: the line from 12 to 15 stands in. */
static struct ratio handbook(struct ratio n)
{
    static const struct chart_line {
        int reps, percent;
    } chart[] = { { 1, 100 }, { 2, 95 }, { 3, 93 },  { 4, 90 },  { 5, 87 },  { 6, 85 }, { 7, 83 },
                  { 8, 80 },  { 9, 77 }, { 10, 75 }, { 11, 70 }, { 12, 67 }, { 15, 65 } };
    int above = 1;
    while (ratio_cmp(n, ratio_int(chart[above].reps)) > 0)
        above++;
    struct chart_line low = chart[above - 1], high = chart[above];
    struct ratio slope = ratio_make(high.percent - low.percent, high.reps - low.reps);
    struct ratio percent = ratio_add(ratio_int(low.percent), ratio_mul(slope, ratio_sub(n, ratio_int(low.reps))));
    return ratio_div(percent, ratio_int(100));
}

static struct ratio brzycki_then_epley(struct ratio n)
{
    if (ratio_cmp(n, ratio_int(10)) <= 0)
        return brzycki(n);
    return share_over(30, 30, n);
}

/* ---- inverses ---- */

/* share = a / (b + n) */
static struct ratio reps_under(int64_t a, int64_t b, struct ratio p)
{
    if (is_short(p))
        return loosely(a * p.den - b * p.num, p.num);
    return ratio_sub(ratio_div(ratio_int(a), p), ratio_int(b));
}

/* share = (a - b n) / c */
static struct ratio reps_falling(int64_t a, int64_t b, int64_t c, struct ratio p)
{
    if (is_short(p))
        return loosely(a * p.den - c * p.num, b * p.den);
    return ratio_div(ratio_sub(ratio_int(a), ratio_mul(ratio_int(c), p)), ratio_int(b));
}

static struct ratio epley_reps(struct ratio p)
{
    return reps_under(31, 30, p);
}

static struct ratio brzycki_reps(struct ratio p)
{
    return reps_falling(37, 1, 36, p);
}

static struct ratio oconner_reps(struct ratio p)
{
    return reps_under(41, 40, p);
}

static struct ratio lander_reps(struct ratio p)
{
    return reps_falling(10130000, 267123, 10130000 - 267123, p);
}

static double lombardi_reps(double p)
{
    return pow(p, -10);
}

/* Below their floor these two allow any number of repetitions. */
static double floor_reps(double p, double floor, double height, double fall)
{
    double above = p * (floor + height * exp(-fall)) - floor;
    return above > 0 ? -log(above / height) / fall : CURVE_REPS_MOST;
}

static double mayhew_reps(double p)
{
    return floor_reps(p, 52.2, 41.9, 0.055);
}

static double wathan_reps(double p)
{
    return floor_reps(p, 48.8, 53.8, 0.075);
}

static struct ratio handbook_reps(struct ratio p)
{
    struct ratio low = ratio_int(1), high;
    for (int n = 2;; n++) {
        high = ratio_int(n > 12 ? 15 : n);
        if (n > 12 || ratio_cmp(handbook(high), p) <= 0)
            break;
        low = high;
    }
    struct ratio from = handbook(low), to = handbook(high);
    struct ratio part = ratio_div(ratio_sub(from, p), ratio_sub(from, to));
    return ratio_add(low, ratio_mul(part, ratio_sub(high, low)));
}

static struct ratio brzycki_then_epley_reps(struct ratio p)
{
    return ratio_cmp(p, (struct ratio){ 3, 4 }) >= 0 ? brzycki_reps(p) : reps_under(30, 30, p);
}

static const struct curve_row rows[] = {
    { .name = "epley", .source = "Epley 1985", .exact = epley, .exact_reps = epley_reps },
    { .name = "brzycki", .source = "Brzycki 1993", .exact = brzycki, .exact_reps = brzycki_reps, .last = 36 },
    { .name = "lombardi", .source = "Lombardi 1989", .real = lombardi, .real_reps = lombardi_reps },
    { .name = "oconner", .source = "O'Conner, Simmons, O'Shea 1989", .exact = oconner, .exact_reps = oconner_reps },
    { .name = "mayhew", .source = "Mayhew, Ball, Arnold, Bowen 1992", .real = mayhew, .real_reps = mayhew_reps },
    { .name = "wathan", .source = "Wathan 1994", .real = wathan, .real_reps = wathan_reps },
    { .name = "lander", .source = "Lander 1985", .exact = lander, .exact_reps = lander_reps, .last = 37 },
    { .name = "handbook", .source = "Baechle, Earle (eds.) 2008", .exact = handbook, .exact_reps = handbook_reps, .last = 15 },
};
enum { ROW_COUNT = sizeof rows / sizeof rows[0] };

static const struct curve_row default_row = { .name = "",
                                              .source = "Brzycki 1993 to 10 repetitions, Epley 1985 above",
                                              .exact = brzycki_then_epley,
                                              .exact_reps = brzycki_then_epley_reps };

const struct curve_row *curve_find(const char *name)
{
    for (int i = 0; i < ROW_COUNT; i++)
        if (strcmp(rows[i].name, name) == 0)
            return &rows[i];
    return NULL;
}

const char *curve_name(const struct curve_row *row)
{
    return row->name;
}

const char *curve_source(const struct curve_row *row)
{
    return row->source;
}

int curve_count(void)
{
    return ROW_COUNT;
}

const struct curve_row *curve_at(int index)
{
    return &rows[index];
}

struct curve curve_default(void)
{
    return curve_named(&default_row);
}

struct curve curve_named(const struct curve_row *row)
{
    return (struct curve){ .row = row, .k = ratio_int(0) };
}

struct curve curve_fit(const struct curve_point *points, int count)
{
    struct ratio top = ratio_int(0), bottom = ratio_int(0);
    for (int i = 0; i < count; i++) {
        struct ratio x = ratio_sub(points[i].reps, ratio_int(1));
        struct ratio inverse = ratio_div(ratio_int(100), ratio_dec(points[i].percent));
        top = ratio_add(top, ratio_mul(x, ratio_sub(inverse, ratio_int(1))));
        bottom = ratio_add(bottom, ratio_mul(x, x));
    }
    return (struct curve){ .row = NULL, .k = ratio_div(top, bottom) };
}

/* Past the end of a formula there is nothing to ask it: the last n stands for all above. */
static bool is_past_end(const struct curve_row *row, struct ratio n)
{
    return row && row->last && ratio_cmp(n, ratio_int(row->last)) > 0;
}

/* The one rounding of binary floating point in this module. */
static struct ratio ratio_from_real(double share)
{
    return ratio_make(llround(share * (double)SHARE_STEPS), SHARE_STEPS);
}

static struct ratio share_at(const struct curve *curve, struct ratio n)
{
    const struct curve_row *row = curve->row;
    if (ratio_cmp(n, ratio_int(1)) <= 0)
        return ratio_int(1);
    if (!row) {
        struct ratio rise = ratio_mul(curve->k, ratio_sub(n, ratio_int(1)));
        return ratio_div(ratio_int(1), ratio_add(ratio_int(1), rise));
    }
    if (is_past_end(row, n))
        n = ratio_int(row->last);
    return row->exact ? row->exact(n) : ratio_from_real(row->real((double)n.num / (double)n.den));
}

struct ratio curve_share(const struct curve *curve, struct ratio n)
{
    return strictly(share_at(curve, n));
}

/* As ratio_cmp with 1. */
static int cmp_with_one(struct ratio p)
{
    return (p.num > p.den) - (p.num < p.den);
}

struct ratio curve_could_do(struct ratio reps, struct dec rpe)
{
    return ratio_add(reps, ratio_dec((struct dec){ 10 * DEC_ONE - rpe.e10 }));
}

/* The effort is above rpe where p allows fewer repetitions than `possible`, those done and those that rpe leaves. */
int curve_compare(const struct curve *curve, struct ratio p, struct ratio reps, struct dec rpe)
{
    struct ratio possible = curve_could_do(reps, rpe);
    if (cmp_with_one(p) == 0) /* share is 1 for all n <= 1; the max itself stands for n = 1 */
        return cmp_with_one(possible);
    if (is_past_end(curve->row, possible))
        return 1;
    struct ratio share = share_at(curve, possible);
    bool at_end = curve->row && curve->row->last && ratio_cmp(possible, ratio_int(curve->row->last)) == 0;
    if (at_end && ratio_cmp(p, share) < 0)
        return 0;
    return ratio_cmp(p, share);
}

static struct ratio reps_at(const struct curve *curve, struct ratio p)
{
    const struct curve_row *row = curve->row;
    struct ratio most = ratio_int(row && row->last ? row->last : CURVE_REPS_MOST), n;
    int side = cmp_with_one(p);
    if (side >= 0)
        return side ? ratio_make(1, 2) : ratio_int(1);
    if (row && row->exact_reps)
        n = row->exact_reps(p);
    else if (row)
        n = ratio_from_real(fmin(row->real_reps((double)p.num / (double)p.den), CURVE_REPS_MOST));
    else if (curve->k.num == 0)
        return most;
    else
        n = ratio_add(ratio_int(1), ratio_div(ratio_sub(ratio_div(ratio_int(1), p), ratio_int(1)), curve->k));
    return ratio_cmp(n, most) < 0 ? n : most;
}

struct ratio curve_reps(const struct curve *curve, struct ratio p)
{
    return strictly(reps_at(curve, p));
}

struct dec curve_effort(const struct curve *curve, struct ratio p, struct ratio reps)
{
    if (cmp_with_one(p) > 0) {
        struct dec at_max = curve_effort(curve, ratio_int(1), reps);
        return at_max.e10 >= dec_halves(EFFORT_MOST).e10 ? at_max : (struct dec){ at_max.e10 + DEC_ONE / 2 };
    }
    if (!curve->row || curve->row->exact_reps) { /* one inverse instead of a search; an irrational one would miss its ties */
        struct ratio n = reps_at(curve, p), all = ratio_add(reps, ratio_int(10));
        struct dec effort = ratio_nearest(is_short(n) && is_short(all) ? loosely(all.num * n.den - n.num * all.den, all.den * n.den)
                                                                        : ratio_sub(all, n), dec_halves(1));
        int64_t least = dec_halves(EFFORT_LEAST).e10, most = dec_halves(EFFORT_MOST).e10;
        return (struct dec){ effort.e10 < least ? least : effort.e10 > most ? most : effort.e10 };
    }
    int low = 0, high = EFFORT_MOST - EFFORT_LEAST;
    while (low < high) {
        int middle = (low + high) / 2;
        struct dec quarter = { dec_halves(2 * (EFFORT_LEAST + middle) + 1).e10 / 2 };
        int side = curve_compare(curve, p, reps, quarter);
        if (side > 0 || (side == 0 && quarter.e10 > 0))
            low = middle + 1;
        else
            high = middle;
    }
    return dec_halves(EFFORT_LEAST + low);
}
