#include "plan/reason.h"

/* A weight before rounding, to two decimals of the unit. */
static const char *rough(struct arena *arena, struct ratio load, enum weight_unit unit)
{
    struct ratio amount = ratio_in(load, unit);
    return arena_format(arena, "%s %s", dec_text(arena, ratio_nearest(amount, (struct dec){ DEC_ONE / 100 })), unit == UNIT_LB ? "lb" : "kg");
}

/* A max of the reasons of results, in 1e-10 kg, to a tenth of the unit. */
static const char *kilos(struct arena *arena, struct dec weight, enum weight_unit unit)
{
    struct ratio amount = ratio_in(ratio_weight((struct weight){ weight.e10 }), unit);
    return arena_format(arena, "%s %s", dec_text(arena, ratio_nearest(amount, (struct dec){ DEC_ONE / 10 })), unit == UNIT_LB ? "lb" : "kg");
}

static const char *when(struct arena *arena, struct date date)
{
    return date_is_set(date) ? arena_format(arena, " on %s", date_text(arena, date)) : ", undated";
}

static const char *number(struct arena *arena, struct dec amount)
{
    return dec_text(arena, amount);
}

static const char *effort(struct arena *arena, const struct reason *r)
{
    if (r->amount.e10 == r->other.e10)
        return arena_format(arena, "asked for: rpe %s, %s reps left", number(arena, r->amount),
                            number(arena, (struct dec){ 10 * DEC_ONE - r->amount.e10 }));
    return arena_format(arena, "asked for: rpe %s-%s, the middle counts", number(arena, r->amount), number(arena, r->other));
}

static const char *share(struct arena *arena, const struct reason *r)
{
    const char *curve = *r->name ? arena_format(arena, "the %s curve", r->name) : "the usual curve";
    return arena_format(arena, "%s repetitions could be done: %s %% of the max on %s", number(arena, r->amount),
                        number(arena, ratio_nearest(ratio_mul(r->load, ratio_int(100)), (struct dec){ DEC_ONE / 100 })), curve);
}

const char *reason_sentence(struct arena *arena, const struct reason *r, enum weight_unit unit)
{
    const char *load = rough(arena, r->load.den ? r->load : ratio_int(0), unit);
    switch (r->kind) {
    case REASON_MAX: return arena_format(arena, "max of %s: %s, tested%s", r->name, load, when(arena, r->date));
    case REASON_MAX_ESTIMATED: return arena_format(arena, "max of %s: %s, worked out from a set%s", r->name, load, when(arena, r->date));
    case REASON_MAX_BORROWED: return arena_format(arena, "lent by `like`: %s at %s %%", r->name, number(arena, r->amount));
    case REASON_MAX_REDUCED: return arena_format(arena, "the block works from %s %% of the max", number(arena, r->amount));
    case REASON_RUNNING:
        return arena_format(arena, "running max of %s: %s, give or take %s, from %d session%s", r->name, load, kilos(arena, r->amount, unit), r->count,
                            r->count == 1 ? "" : "s");
    case REASON_RUNNING_STOOD: return arena_format(arena, "the running max after %d lines and sessions: %s", r->count, load);
    case REASON_RESULT:
        return arena_format(arena, "%s: %s says %s; running max %s to %s", date_text(arena, r->date), r->name, load, kilos(arena, r->amount, unit),
                            kilos(arena, r->other, unit));
    case REASON_RESULT_FIRST: return arena_format(arena, "%s: %s says %s, where it starts", date_text(arena, r->date), r->name, load);
    case REASON_RESULT_OUT:
        return arena_format(arena, "%s: %s says %s, far from %s, and is left out", date_text(arena, r->date), r->name, load, kilos(arena, r->amount, unit));
    case REASON_BODYWEIGHT: return arena_format(arena, "bodyweight: %s%s", load, when(arena, r->date));
    case REASON_EFFORT: return effort(arena, r);
    case REASON_SERIES: return arena_format(arena, "training week %d of the %d that this counts", r->index, r->count);
    case REASON_SHARE: return share(arena, r);
    case REASON_PERCENT: return arena_format(arena, "%s %% of %s", number(arena, r->amount), r->name);
    case REASON_OF_DAY: return arena_format(arena, "%s %% of the heaviest load on day %s", number(arena, r->amount), r->name);
    case REASON_WEIGHT: return arena_format(arena, "written: %s", load);
    case REASON_SAME: return arena_format(arena, "the load of %s", r->name);
    case REASON_DROP:
        return r->amount.e10 ? arena_format(arena, "%s %% below %s", number(arena, r->amount), r->name)
                             : arena_format(arena, "%s below %s", load, r->name);
    case REASON_WARM_UP: return arena_format(arena, "%s %% of %s", number(arena, r->amount), r->name);
    case REASON_PROGRESSION:
        return arena_format(arena, "progression %s after %d session%s: %s", r->name, r->count, r->count == 1 ? "" : "s", load);
    case REASON_PROGRESSION_MOVE:
        return arena_format(arena, "%s: %s; %s", date_is_set(r->date) ? date_text(arena, r->date) : arena_format(arena, "week %d", r->index), r->name, load);
    case REASON_DELOAD: return arena_format(arena, "deload: %s", r->name);
    case REASON_TAPER: return arena_format(arena, "taper: %s", r->name);
    case REASON_ADJUST: return arena_format(arena, "adjust: %s", r->name);
    case REASON_CAP: return arena_format(arena, "capped by %s: at most %s", r->name, load);
    case REASON_RAW: return arena_format(arena, "before rounding: %s", load);
    case REASON_ROUNDED: return arena_format(arena, "rounded to a load of %s: %s", r->name ? r->name : "a usual gym", load);
    case REASON_UNDER_BAR: return arena_format(arena, "lighter than the empty bar, so the bar: %s", load);
    case REASON_DISCS: return arena_format(arena, "discs a side: %s", r->name);
    }
    return "";
}
