#include "model/history.h"

#include <stdlib.h>

enum { MAXES_FEW = 16 }; /* so many are looked through */

/* By lift, then by date, then as written. */
static int by_lift_and_date(const void *a, const void *b)
{
    const struct max_line *x = *(const struct max_line *const *)a, *y = *(const struct max_line *const *)b;
    if (x->lift != y->lift)
        return (uintptr_t)x->lift < (uintptr_t)y->lift ? -1 : 1;
    if (x->date.day != y->date.day)
        return x->date.day < y->date.day ? -1 : 1;
    return x < y ? -1 : 1;
}

void history_sort(struct arena *arena, struct athlete *athlete)
{
    if (athlete->max_count <= MAXES_FEW)
        return;
    athlete->maxes_sorted = NEW_MANY(arena, const struct max_line *, athlete->max_count);
    for (int i = 0; i < athlete->max_count; i++)
        athlete->maxes_sorted[i] = &athlete->maxes[i];
    qsort(athlete->maxes_sorted, (size_t)athlete->max_count, sizeof *athlete->maxes_sorted, by_lift_and_date);
}

static const struct max_line *sorted_max(const struct athlete *athlete, const struct lift *lift, struct date day)
{
    const struct max_line *key = &(struct max_line){ .lift = lift, .date = day };
    int low = 0, high = athlete->max_count; /* all before `low` are of a lift before or a day by then, none from `high` on */
    while (low < high) {
        int middle = low + (high - low) / 2;
        const struct max_line *line = athlete->maxes_sorted[middle];
        if ((line->lift == lift && line->date.day == day.day) || by_lift_and_date(&line, &key) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low > 0 && athlete->maxes_sorted[low - 1]->lift == lift ? athlete->maxes_sorted[low - 1] : NULL;
}

static const struct max_line *own_max(const struct athlete *athlete, const struct lift *lift, struct date day)
{
    const struct max_line *newest = NULL;
    if (athlete->maxes_sorted)
        return sorted_max(athlete, lift, day);
    for (int i = 0; i < athlete->max_count; i++) {
        const struct max_line *line = &athlete->maxes[i];
        if (line->lift == lift && line->date.day <= day.day && (!newest || line->date.day >= newest->date.day))
            newest = line;
    }
    return newest;
}

bool history_has_points(const struct athlete *athlete, const struct lift *lift)
{
    return numbers_known(&athlete->curve_lifts, lift, 0) >= 0;
}

struct ratio history_line_reps(const struct max_line *line)
{
    return line->estimated ? curve_could_do(ratio_dec(line->set_reps), line->set_effort) : ratio_int(1);
}

struct ratio history_line_load(const struct athlete *athlete, const struct max_line *line, const struct block *block)
{
    if (!line->estimated || !block || !block->model || athlete->model || history_has_points(athlete, line->lift))
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
    int at = numbers_known(&athlete->effort_lifts, lift, 0);
    if (at < 0)
        return rated;
    rated.e10 += athlete->efforts[at].meant.e10 - athlete->efforts[at].rated.e10;
    return (struct dec){ rated.e10 < 0 ? 0 : rated.e10 > 10 * DEC_ONE ? 10 * DEC_ONE : rated.e10 };
}

const struct avoid_line *history_avoid(const struct athlete *athlete, const struct lift *lift)
{
    int at = numbers_known(&athlete->avoid_lifts, lift, 0);
    return at < 0 ? NULL : &athlete->avoids[at];
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
    int at = numbers_known(&athlete->curve_lifts, lift, 0);
    if (at >= 0)
        return athlete->curves[at].curve;
    const struct curve_row *row = athlete->model ? athlete->model : block && block->model ? block->model : model->curve;
    return row ? curve_named(row) : curve_default();
}
