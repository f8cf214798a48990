/* The values of one week: series read at their training week, for every set of an entry. */
#include "plan/work.h"

int value_index(const struct value *value, int block_week)
{
    int index = 0;
    for (int i = 0; value->frame && i < value->frame->count && value->frame->weeks[i] <= block_week; i++)
        index = i + 1;
    return index < 1 ? 1 : index;
}

struct ratio_band value_in_week(const struct value *value, int block_week, int set, struct dec grain)
{
    int count = value->frame && value->frame->count ? value->frame->count : 1;
    return series_value(value->series, value_index(value, block_week), count, set, grain);
}

/* As written, where nothing has to be worked out; NULL: it has. */
static const struct band *written_in_week(const struct value *value, int block_week, int set)
{
    const struct series *series = value->series;
    bool always = series->kind == SERIES_LIST && series->count == 1;
    return series_written(series, always ? 1 : value_index(value, block_week), set);
}

static const struct dec grain_none = { 0 }, grain_half = { DEC_ONE / 2 }, grain_one = { DEC_ONE };

static struct finding *group_finding(const struct planning *p, const struct work_week *week, const struct work_entry *entry,
                                     const struct group *group, enum kind kind, struct span at, const char *says)
{
    return plan_finding(p, week, NULL, entry, group->origin, kind, group_place(entry->entry, group, at), "%s", says);
}

static bool whole_value(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                        const struct value *value, struct ratio_band band, int most, int *low, int *high)
{
    if (band.low.den == 1 && band.high.den == 1 && band.low.num >= 1 && band.high.num <= most) {
        *low = (int)band.low.num;
        *high = (int)band.high.num;
        return true;
    }
    struct finding *finding =
        group_finding(p, week, entry, group, KIND_RANGE, value->at,
                      arena_format(p->arena, "in week %d this comes to %s, and a whole number from 1 to %d is wanted", week->number,
                                   dec_text(p->arena, ratio_nearest(band.low, (struct dec){ DEC_ONE / 100 })), most));
    diag_help(p->model->findings, finding, "change where it starts or how fast it moves");
    return false;
}

static bool is_whole(struct dec number, int most)
{
    return number.e10 >= DEC_ONE && number.e10 <= most * DEC_ONE && number.e10 % DEC_ONE == 0;
}

static bool whole_in_week(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                          const struct value *value, int set, int most, int *low, int *high)
{
    const struct band *written = written_in_week(value, week->block_week, set);
    if (!written || !is_whole(written->low, most) || !is_whole(written->high, most))
        return whole_value(p, week, entry, group, value, value_in_week(value, week->block_week, set, grain_one), most, low, high);
    *low = (int)(written->low.e10 / DEC_ONE);
    *high = (int)(written->high.e10 / DEC_ONE);
    return true;
}

static bool effort_value(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                         const struct value *value, bool is_rir, int set, struct spec *spec)
{
    const struct band *written = written_in_week(value, week->block_week, set);
    struct ratio_band band = { 0 };
    if (!written)
        band = value_in_week(value, week->block_week, set, grain_half);
    struct dec low = written ? written->low : ratio_nearest(band.low, (struct dec){ 1 });
    struct dec high = written ? written->high : ratio_nearest(band.high, (struct dec){ 1 });
    if (low.e10 < 0 || high.e10 > 10 * DEC_ONE) {
        struct finding *finding = group_finding(p, week, entry, group, KIND_RANGE, value->at,
                                                arena_format(p->arena, "in week %d this comes to %s %s; effort goes from 0 to 10", week->number,
                                                             is_rir ? "rir" : "rpe", dec_text(p->arena, high.e10 > 10 * DEC_ONE ? high : low)));
        diag_help(p->model->findings, finding, "change where it starts or how fast it moves");
        return false;
    }
    spec->effort_low.e10 = is_rir ? 10 * DEC_ONE - high.e10 : low.e10;
    spec->effort_high.e10 = is_rir ? 10 * DEC_ONE - low.e10 : high.e10;
    return true;
}

static struct ratio unit_factor(enum unit unit)
{
    return unit == UNIT_KILO ? ratio_int(DEC_ONE) : unit == UNIT_POUND ? ratio_int(LB_IN_E10) : ratio_int(1);
}

static struct ratio middle(struct ratio_band band)
{
    return ratio_div(ratio_add(band.low, band.high), ratio_int(2));
}

static void amount_value(const struct work_week *week, const struct value *value, int set, struct spec *spec)
{
    struct dec grain = value->unit == UNIT_PERCENT ? grain_half : grain_none;
    const struct band *written = written_in_week(value, week->block_week, set);
    if (written && written->low.e10 == written->high.e10 && value->unit != UNIT_POUND) {
        spec->amount = value->unit == UNIT_KILO ? ratio_weight((struct weight){ written->low.e10 }) : ratio_dec(written->low);
        return;
    }
    spec->amount = ratio_mul(middle(value_in_week(value, week->block_week, set, grain)), unit_factor(value->unit));
}

static bool reps_value(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                       int set, struct spec *spec)
{
    struct ratio_band band;
    int most;
    switch (group->reps_kind) {
    case REPS_CLUSTER:
        for (int i = 0; i < group_more(group)->cluster_count; i++)
            spec->reps_low += group_more(group)->cluster[i];
        spec->reps_high = spec->reps_low;
        return true;
    case REPS_AMRAP:
        if (!group_more(group)->at_least.series)
            return true;
        return whole_in_week(p, week, entry, group, &group_more(group)->at_least, set, REPS_MOST, &spec->reps_low, &spec->reps_low);
    default:
        if (!group->reps.series)
            return false;
        most = group->reps_kind == REPS_COUNT ? REPS_MOST : 100000;
        if (group->reps.unit != UNIT_MINUTES)
            return whole_in_week(p, week, entry, group, &group->reps, set, most, &spec->reps_low, &spec->reps_high);
        band = value_in_week(&group->reps, week->block_week, set, grain_one);
        band.low = ratio_mul(band.low, ratio_int(60)), band.high = ratio_mul(band.high, ratio_int(60));
        return whole_value(p, week, entry, group, &group->reps, band, most, &spec->reps_low, &spec->reps_high);
    }
}

static bool spec_make(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                      int set, struct spec *spec)
{
    *spec = (struct spec){ .amount = ratio_int(0) };
    if (!reps_value(p, week, entry, group, set, spec))
        return false;
    if (group->load_kind == LOAD_EFFORT)
        return group->load.series && effort_value(p, week, entry, group, &group->load, group->load_is_rir, set, spec);
    if (group->load.series)
        amount_value(week, &group->load, set, spec);
    return true;
}

static int list_length(const struct value *value, int block_week)
{
    return value->series ? series_sets(value->series, value_index(value, block_week)) : 1;
}

static bool check_length(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                         const struct value *value, int sets)
{
    int length = list_length(value, week->block_week);
    if (length == 1 || length == sets)
        return true;
    struct finding *finding =
        plan_finding(p, week, NULL, entry, group->origin, KIND_LIST_LENGTH, group_place(entry->entry, group, value->at),
                     "%d set%s, and %d values are listed with commas", sets, sets == 1 ? "" : "s", length);
    diag_help(p->model->findings, finding, "list one value a set; values that change from week to week stand between | bars");
    return false;
}

/* `cap`, read in its week: an effort, a per cent or a weight. */
static void cap_value(const struct work_week *week, const struct group *group, struct work_group *out)
{
    out->own_cap_effort = (struct dec){ -1 };
    if (!group_more(group)->cap.series)
        return;
    if (group_more(group)->cap_kind == CAP_EFFORT) {
        struct ratio_band band = value_in_week(&group_more(group)->cap, week->block_week, 0, grain_half);
        struct dec cap = ratio_nearest(group_more(group)->cap_is_rir ? band.low : band.high, (struct dec){ 1 });
        out->own_cap_effort.e10 = group_more(group)->cap_is_rir ? 10 * DEC_ONE - cap.e10 : cap.e10;
        return;
    }
    struct spec spec;
    amount_value(week, &group_more(group)->cap, 0, &spec);
    out->own_cap = spec.amount;
    out->has_own_cap = true;
}

bool work_group_make(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                     struct work_group *out)
{
    if (!group->every_week && !week_in(&group_more(group)->weeks, week->block_week))
        return false;
    *out = (struct work_group){ .group = group, .role = group->role, .load_kind = group->load_kind, .reps_kind = group->reps_kind,
                                 .cap_effort = { -1 } };
    if (group->reps_kind != REPS_TOTAL) {
        if (!group->sets.series)
            return false;
        if (!whole_in_week(p, week, entry, group, &group->sets, 0, SETS_MOST, &out->sets_low, &out->sets_high))
            return false;
        int count = (out->sets_low + out->sets_high + 1) / 2;
        if (!check_length(p, week, entry, group, &group->load, count) || !check_length(p, week, entry, group, &group->reps, count))
            return false;
    }
    int loads = list_length(&group->load, week->block_week), reps = list_length(&group->reps, week->block_week);
    out->spec_count = loads > reps ? loads : reps;
    out->specs = NEW_MANY(p->arena, struct spec, out->spec_count);
    for (int set = 0; set < out->spec_count; set++)
        if (!spec_make(p, week, entry, group, set, &out->specs[set]))
            return false;
    cap_value(week, group, out);
    return true;
}

void sets_evaluate(struct planning *p, const struct work_week *week, struct work_entry *entry)
{
    int said = findings_said(p->model->findings);
    entry->groups.room = entry->entry->group_count;
    entry->groups.at = NEW_MANY(p->arena, struct work_group, entry->groups.room);
    for (int i = 0; i < entry->entry->group_count; i++) {
        struct work_group group;
        if (work_group_make(p, week, entry, &entry->entry->groups[i], &group))
            vec_add(p->arena, &entry->groups, group);
    }
    entry->said = findings_said(p->model->findings) != said;
    if (entry_more(entry->entry)->rounds) {
        struct ratio_band rounds = value_in_week(entry_more(entry->entry)->rounds, week->block_week, 0, grain_one);
        entry->rounds = rounds.low.den == 1 && rounds.low.num >= 1 && rounds.low.num <= SETS_MOST ? (int)rounds.low.num : 1;
    }
}
