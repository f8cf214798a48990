#include "calc/series.h"

static int index_of_week(const struct series *series, int i)
{
    switch (series->kind) {
    case SERIES_LIST:
        return (i < series->count ? i : series->count) - 1;
    case SERIES_WAVE:
        return (i - 1) % series->count;
    case SERIES_RAMP:
    case SERIES_STEP:
        break;
    }
    return 0;
}

static const struct band *band_of_set(const struct series_week *week, int set)
{
    return &week->sets[set < week->count ? set : week->count - 1];
}

static struct ratio_band exactly(const struct band *band)
{
    return (struct ratio_band){ ratio_dec(band->low), ratio_dec(band->high) };
}

static struct ratio to_grain(struct ratio a, struct dec grain)
{
    return grain.e10 ? ratio_dec(ratio_nearest(a, grain)) : a;
}

static struct ratio ramp_between(struct ratio first, struct ratio last, int i, int n, struct dec grain)
{
    struct ratio way = ratio_make(i - 1, n > 1 ? n - 1 : 1);
    return to_grain(ratio_add(first, ratio_mul(ratio_sub(last, first), way)), grain);
}

static struct ratio_band ramp_value(const struct series *series, int i, int n, int set, struct dec grain)
{
    struct ratio_band first = exactly(band_of_set(&series->weeks[0], set));
    struct ratio_band last = exactly(band_of_set(&series->weeks[series->count - 1], set));
    if (i > n)
        i = n;
    return (struct ratio_band){ ramp_between(first.low, last.low, i, n, grain),
                                ramp_between(first.high, last.high, i, n, grain) };
}

/* How often `by` has been added by training week i. */
static int series_rises(const struct series *series, int i)
{
    switch (series->kind) {
    case SERIES_STEP:
        return (i - 1) / series->each;
    case SERIES_WAVE:
        return (i - 1) / series->count;
    case SERIES_LIST:
    case SERIES_RAMP:
        break;
    }
    return 0;
}

int series_sets(const struct series *series, int i)
{
    int sets = series->weeks[index_of_week(series, i)].count;
    int last = series->weeks[series->count - 1].count;
    return series->kind == SERIES_RAMP && last > sets ? last : sets;
}

const struct band *series_written(const struct series *series, int i, int set)
{
    if (series->kind == SERIES_RAMP || (series->by.e10 && series_rises(series, i)))
        return NULL;
    return band_of_set(&series->weeks[index_of_week(series, i)], set);
}

struct ratio_band series_value(const struct series *series, int i, int n, int set, struct dec grain)
{
    const struct band *written = series_written(series, i, set);
    if (written)
        return exactly(written);
    if (series->kind == SERIES_RAMP)
        return ramp_value(series, i, n, set, grain);
    struct ratio_band value = exactly(band_of_set(&series->weeks[index_of_week(series, i)], set));
    struct ratio rise = ratio_mul(ratio_dec(series->by), ratio_int(series_rises(series, i)));
    return (struct ratio_band){ ratio_add(value.low, rise), ratio_add(value.high, rise) };
}
