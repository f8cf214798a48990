#include "plan/backoff.h"

#include "plan/work.h"

#define POUND_STEP_E10 (5 * LB_IN_E10)
#define KILO_STEP_E10 (5 * DEC_ONE / 2)

bool group_until(const struct plan_week *week, const struct group *group, struct dec *rpe)
{
    if (!group_more(group)->until_effort.series)
        return false;
    struct dec half = dec_halves(1);
    *rpe = ratio_nearest(value_in_week(&group_more(group)->until_effort, week->block_week, 0, half).low, half);
    if (group_more(group)->until_is_rir)
        rpe->e10 = 10 * DEC_ONE - rpe->e10;
    return true;
}

int backoff_top(const struct plan_entry *entry, int group)
{
    if (entry->groups[group].group->load_kind != LOAD_DROP)
        return -1;
    for (int i = group - 1; i >= 0; i--)
        if (entry->groups[i].role == ROLE_TOP)
            return i;
    return -1;
}

/* What the drops of a run are taken from and rounded to. */
struct drop {
    const struct gym *gym;
    const struct lift *lift;
    struct weight body; /* part of the total that the sheet does not print */
    enum unit unit;
    struct ratio amount; /* per cent, kg or lb */
};

/* A band counts its middle, as everywhere. */
static struct ratio drop_amount(const struct value *value, int block_week, int set)
{
    struct dec grain = { value->unit == UNIT_PERCENT ? DEC_ONE / 2 : 0 };
    struct ratio_band band = value_in_week(value, block_week, set, grain);
    return ratio_div(ratio_add(band.low, band.high), ratio_int(2));
}

static struct ratio dropped(const struct drop *drop, struct weight top)
{
    struct ratio load = ratio_weight(top);
    if (drop->unit == UNIT_PERCENT)
        return ratio_sub(load, ratio_div(ratio_mul(load, drop->amount), ratio_int(100)));
    int64_t unit = drop->unit == UNIT_POUND ? LB_IN_E10 : DEC_ONE;
    return ratio_sub(load, ratio_mul(drop->amount, ratio_int(unit)));
}

/* As shown. */
static struct weight back_off(const struct drop *drop, struct weight top)
{
    struct ratio load = dropped(drop, top);
    struct weight rounded = load_round(drop->gym, drop->lift, load, drop->body, drop->gym->rounding);
    return (struct weight){ rounded.e10 - (drop->lift->loads == LOADS_BODYWEIGHT ? drop->body.e10 : 0) };
}

static bool is_possible(const struct drop *drop, struct weight top)
{
    return top.e10 > 0 && top.e10 >= ladder_for(drop->gym, drop->lift)->first.e10;
}

int backoff_rows(const struct plan_week *week, const struct plan_day *day, const struct plan_entry *entry,
                 const struct plan_run *top, const struct plan_group *group, const struct plan_run *run,
                 int sets_before, struct backoff rows[BACKOFF_TOPS])
{
    static const int steps[BACKOFF_TOPS] = { -2, -1, 1, 2 };
    const struct value *value = &group->group->load;
    if (!top->has_load || !run->has_load || !value->series)
        return 0;
    struct drop drop = {
        .gym = day->gym,
        .lift = entry->lift,
        .body = { top->load.e10 - top->shown.e10 },
        .unit = value->unit,
        .amount = drop_amount(value, week->block_week, sets_before),
    };
    if (!run->capped && back_off(&drop, top->load).e10 != run->shown.e10)
        return 0;
    int count = 0;
    for (int i = 0; i < BACKOFF_TOPS; i++) {
        int64_t by = steps[i] * (drop.gym->unit == UNIT_KG ? KILO_STEP_E10 : POUND_STEP_E10);
        struct weight other = { top->load.e10 + by };
        if (!is_possible(&drop, other))
            continue;
        struct weight load = back_off(&drop, other);
        if (run->capped && load.e10 > run->shown.e10)
            load = run->shown;
        rows[count++] = (struct backoff){ { top->shown.e10 + by }, load };
    }
    return count;
}
