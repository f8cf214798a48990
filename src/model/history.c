#include "model/history.h"

static const struct max_line *own_max(const struct athlete *athlete, const struct lift *lift, struct date day)
{
    const struct max_line *newest = NULL;
    for (int i = 0; i < athlete->max_count; i++) {
        const struct max_line *line = &athlete->maxes[i];
        if (line->lift == lift && line->date.day <= day.day && (!newest || line->date.day >= newest->date.day))
            newest = line;
    }
    return newest;
}

static bool has_own_points(const struct athlete *athlete, const struct lift *lift)
{
    for (int i = 0; i < athlete->curve_count; i++)
        if (athlete->curves[i].lift == lift)
            return true;
    return false;
}

struct ratio history_line_reps(const struct max_line *line)
{
    return line->estimated ? curve_could_do(ratio_dec(line->set_reps), line->set_effort) : ratio_int(1);
}

struct ratio history_line_load(const struct athlete *athlete, const struct max_line *line, const struct block *block)
{
    if (!line->estimated || !block || !block->model || athlete->model || has_own_points(athlete, line->lift))
        return line->load;
    struct curve curve = curve_named(block->model);
    return ratio_div(ratio_weight(line->set_load), curve_share(&curve, history_line_reps(line)));
}

/* Whose line it is, is the lift that it names. */
const struct max_line *history_max_line(const struct athlete *athlete, const struct lift *lift, struct date day)
{
    const struct max_line *line = NULL;
    for (; lift && !line; lift = lift->like)
        line = own_max(athlete, lift, day);
    return line;
}

struct max_used history_max(const struct athlete *athlete, const struct lift *lift, struct date day, const struct block *block)
{
    const struct max_line *line = history_max_line(athlete, lift, day);
    if (!line)
        return (struct max_used){ 0 };
    struct ratio lent = history_line_load(athlete, line, block);
    if (line->lift == lift)
        return (struct max_used){ line, NULL, lent, lent };
    struct ratio share = ratio_int(1);
    for (const struct lift *from = lift; from != line->lift; from = from->like)
        share = ratio_percent(share, from->like_percent);
    return (struct max_used){ line, line->lift, ratio_mul(lent, share), lent };
}

struct dec history_effort(const struct athlete *athlete, const struct lift *lift, struct dec rated)
{
    for (int i = 0; i < athlete->effort_count; i++)
        if (athlete->efforts[i].lift == lift) {
            rated.e10 += athlete->efforts[i].meant.e10 - athlete->efforts[i].rated.e10;
            return (struct dec){ rated.e10 < 0 ? 0 : rated.e10 > 10 * DEC_ONE ? 10 * DEC_ONE : rated.e10 };
        }
    return rated;
}

/* A line of hers from its day on; one of a diary, as all results, from the day after. */
static bool known_on(const struct bodyweight_line *line, struct date day)
{
    return line->from_diary ? line->date.day < day.day : line->date.day <= day.day;
}

const struct bodyweight_line *history_bodyweight(const struct athlete *athlete, struct date day)
{
    const struct bodyweight_line *best = NULL;
    for (int i = 0; i < athlete->bodyweight_count; i++) {
        const struct bodyweight_line *line = &athlete->bodyweights[i];
        bool in_time = known_on(line, day), best_in_time = best && known_on(best, day);
        if (line->from_diary && !in_time)
            continue;
        if (!best || (in_time && (!best_in_time || line->date.day >= best->date.day)) ||
            (!in_time && !best_in_time && line->date.day < best->date.day))
            best = line;
    }
    return best;
}

struct curve history_curve(const struct model *model, const struct block *block, const struct athlete *athlete,
                           const struct lift *lift)
{
    for (int i = 0; i < athlete->curve_count; i++)
        if (athlete->curves[i].lift == lift)
            return athlete->curves[i].curve;
    const struct curve_row *row = athlete->model ? athlete->model : block && block->model ? block->model : model->curve;
    return row ? curve_named(row) : curve_default();
}
