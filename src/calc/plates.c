#include "calc/plates.h"

#include <stdlib.h>
#include <string.h>

#define WEIGHT_MOST (INT64_C(900000000) * DEC_ONE)

/* More ways than this are not tried: a thousand kinds of discs would otherwise take gigabytes for few loads. */
enum { WAYS_MOST = 4 * LADDER_MOST };

/* A sum a side and the best way to it: `used` discs of its heaviest kind on top of the sum `under`, which has only
 * lighter ones. Kinds are taken from the lightest to the heaviest, so walking `under` names the heaviest first. */
struct sum {
    int64_t e10;
    const struct sum *under; /* NULL for the empty bar */
    int kind;                /* index into disc_sums.kinds; -1 for the empty bar */
    int used, discs;         /* of this kind; in all */
};

struct disc_sums {
    const struct sum *const *at; /* beside ladder.at */
    const struct disc *kinds;    /* rising, each weight once */
};

struct search {
    struct arena *arena;
    const struct disc *kinds;
    int ways;
};

struct sum_list {
    const struct sum **at;
    int count, room;
};

static int weight_cmp(wide a, wide b)
{
    return (a > b) - (a < b);
}

static int disc_cmp(const void *a, const void *b)
{
    const struct disc *left = a, *right = b;
    return weight_cmp(left->weight.e10, right->weight.e10);
}

/* More pairs of a kind than LADDER_MOST are refused anyway, so they may be counted as fewer. */
static int discs_together(int64_t a, int64_t b)
{
    return a + b < WAYS_MOST ? (int)(a + b) : WAYS_MOST;
}

/* The kinds of discs, lightest first, with `count` turned into pairs; a weight named twice is one kind. */
static int discs_pair_up(struct disc *kinds, int count)
{
    int kept = 0;
    qsort(kinds, (size_t)count, sizeof *kinds, disc_cmp);
    for (int i = 0; i < count; i++) {
        if (kept && kinds[kept - 1].weight.e10 == kinds[i].weight.e10)
            kinds[kept - 1].count = discs_together(kinds[kept - 1].count, kinds[i].count);
        else
            kinds[kept++] = kinds[i];
    }
    for (int i = 0; i < kept; i++)
        kinds[i].count /= 2;
    return kept;
}

/* Is the load with every pair on still within the range of a weight? */
static bool discs_fit(const struct disc *kinds, int count, wide empty)
{
    wide all = empty;
    for (int i = 0; i < count; i++)
        all += 2 * (wide)kinds[i].weight.e10 * kinds[i].count;
    return all < WEIGHT_MOST;
}

static struct sum sum_with(const struct sum *base, const struct disc *kinds, int kind, int more)
{
    bool same_kind = base->kind == kind;
    return (struct sum){ .e10 = base->e10 + kinds[kind].weight.e10 * more,
                         .under = same_kind ? base->under : base,
                         .kind = kind,
                         .used = more + (same_kind ? base->used : 0),
                         .discs = base->discs + more };
}

/* Is `loaded`, which has its heaviest kind just put on, the better way to the same sum? The more of that kind, the
 * heavier the first disc that differs. */
static bool sum_is_better(const struct sum *loaded, const struct sum *plain)
{
    int plain_used = plain->kind == loaded->kind ? plain->used : 0;
    return loaded->discs != plain->discs ? loaded->discs < plain->discs : loaded->used > plain_used;
}

static void sum_list_room(struct arena *arena, struct sum_list *list, int room)
{
    list->count = 0;
    if (list->room >= room)
        return;
    list->at = NEW_MANY(arena, const struct sum *, 2 * room);
    list->room = 2 * room;
}

static const struct sum *sum_keep(struct search *search, struct sum sum)
{
    struct sum *kept = NEW(search->arena, struct sum);
    *kept = sum;
    search->ways++;
    return kept;
}

/* `to` becomes the sums of `from`, each as it is and with `more` discs of `kind` on top. False: too many. */
static bool sums_merge(struct search *search, const struct sum_list *from, int kind, int more, struct sum_list *to)
{
    int as_is = 0, with = 0;
    sum_list_room(search->arena, to, 2 * from->count);
    while (with < from->count) {
        struct sum loaded = sum_with(from->at[with], search->kinds, kind, more);
        const struct sum *plain = as_is < from->count ? from->at[as_is] : NULL;
        int side = plain ? weight_cmp(plain->e10, loaded.e10) : 1;
        bool keep_plain = side < 0 || (side == 0 && !sum_is_better(&loaded, plain));
        to->at[to->count++] = keep_plain ? plain : sum_keep(search, loaded);
        as_is += side <= 0;
        with += side >= 0;
    }
    return to->count <= LADDER_MOST && search->ways <= WAYS_MOST;
}

/* All pairs of one kind, in heaps of 1, 2, 4 ... and the rest, so that every number up to all of them is some of the
 * heaps and many equal discs take few merges. */
static bool sums_add_kind(struct search *search, int kind, struct sum_list *sums, struct sum_list *spare)
{
    int left = search->kinds[kind].count;
    for (int heap = 1; left > 0; heap *= 2) {
        int more = heap < left ? heap : left;
        if (!sums_merge(search, sums, kind, more, spare))
            return false;
        struct sum_list merged = *spare;
        *spare = *sums;
        *sums = merged;
        left -= more;
    }
    return true;
}

static void ladder_from_sums(struct arena *arena, const struct sum_list *sums, const struct disc *kinds,
                             struct weight empty, struct ladder *out)
{
    struct weight *at = NEW_MANY(arena, struct weight, sums->count);
    struct disc_sums *how = NEW(arena, struct disc_sums);
    for (int i = 0; i < sums->count; i++)
        at[i].e10 = empty.e10 + 2 * sums->at[i]->e10;
    *how = (struct disc_sums){ .at = sums->at, .kinds = kinds };
    *out = (struct ladder){ .at = at, .count = sums->count, .first = at[0], .sums = how, .empty = empty };
}

bool ladder_bar(struct arena *arena, struct weight bar, struct weight collar, const struct disc *discs, int count,
                struct ladder *out)
{
    struct disc *kinds = NEW_MANY(arena, struct disc, count + 1);
    if (count)
        memcpy(kinds, discs, sizeof *discs * (size_t)count);
    count = discs_pair_up(kinds, count);
    if (!discs_fit(kinds, count, (wide)bar.e10 + 2 * (wide)collar.e10))
        return false;

    struct search search = { .arena = arena, .kinds = kinds };
    struct sum_list sums = { 0 }, spare = { 0 };
    sum_list_room(arena, &sums, 1);
    sums.at[sums.count++] = sum_keep(&search, (struct sum){ .kind = -1 });
    for (int kind = 0; kind < count; kind++)
        if (!sums_add_kind(&search, kind, &sums, &spare))
            return false;
    ladder_from_sums(arena, &sums, kinds, (struct weight){ bar.e10 + 2 * collar.e10 }, out);
    return true;
}

struct ladder ladder_steps(struct weight first, struct weight step)
{
    return (struct ladder){ .first = first, .step = step };
}

static wide range_count(struct ladder_range range)
{
    return ((wide)range.high.e10 - range.low.e10) / range.step.e10 + 1;
}

static int weight_order(const void *a, const void *b)
{
    return weight_cmp(((const struct weight *)a)->e10, ((const struct weight *)b)->e10);
}

/* Sorted as a whole: merging one range after the other would copy the rest once more for each. */
bool ladder_ranges(struct arena *arena, const struct ladder_range *ranges, int count, struct ladder *out)
{
    wide all = 0;
    for (int i = 0; i < count; i++)
        if ((all += range_count(ranges[i])) > LADDER_MOST)
            return false;
    struct weight *at = NEW_MANY(arena, struct weight, all);
    int made = 0, kept = 0;
    for (int i = 0; i < count; i++)
        for (wide step = 0; step < range_count(ranges[i]); step++)
            at[made++].e10 = (int64_t)(ranges[i].low.e10 + ranges[i].step.e10 * step);
    qsort(at, (size_t)made, sizeof *at, weight_order);
    for (int i = 0; i < made; i++)
        if (!kept || at[i].e10 != at[kept - 1].e10)
            at[kept++] = at[i];
    *out = (struct ladder){ .at = at, .count = kept, .first = at[0] };
    return true;
}

static wide wide_floor(wide num, wide den)
{
    if (num >= 0 && num <= INT64_MAX && den <= INT64_MAX) /* 128-bit division is slow */
        return (int64_t)num / (int64_t)den;
    return num / den - (num % den < 0);
}

/* How many loads of the list are at or below `most`. */
static int list_upto(const struct ladder *ladder, wide most)
{
    int low = 0, high = ladder->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (ladder->at[middle].e10 <= most)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* The loads on both sides of `most`: below <= most < above, one and the same at the ends of the ladder. */
static void ladder_around(const struct ladder *ladder, wide most, struct weight *below, struct weight *above)
{
    if (ladder->at) {
        int upto = list_upto(ladder, most);
        *below = ladder->at[upto > 0 ? upto - 1 : 0];
        *above = ladder->at[upto < ladder->count ? upto : ladder->count - 1];
        return;
    }
    *below = *above = ladder->first;
    if (most < ladder->first.e10)
        return;
    if (most > WEIGHT_MOST)
        most = WEIGHT_MOST;
    wide step = ladder->step.e10, under = most - (most - ladder->first.e10) % step;
    below->e10 = (int64_t)under;
    above->e10 = (int64_t)(under + step <= WEIGHT_MOST ? under + step : under);
}

struct weight ladder_round(const struct ladder *ladder, struct ratio load, enum rounding rounding)
{
    struct weight below, above;
    ladder_around(ladder, wide_floor(load.num, load.den), &below, &above);
    if (rounding == ROUND_DOWN || ratio_cmp(load, ratio_weight(below)) <= 0)
        return below;
    if (rounding == ROUND_UP)
        return above;
    struct ratio halfway = ratio_halves((wide)below.e10 + above.e10);
    return ratio_cmp(load, halfway) <= 0 ? below : above;
}

struct weight ladder_above(const struct ladder *ladder, struct weight load)
{
    struct weight below, above;
    ladder_around(ladder, load.e10, &below, &above);
    return above.e10 > load.e10 ? above : load;
}

struct weight ladder_smallest_step(const struct ladder *ladder)
{
    struct weight least = ladder->step;
    for (int i = 1; i < ladder->count; i++) {
        int64_t gap = ladder->at[i].e10 - ladder->at[i - 1].e10;
        if (i == 1 || gap < least.e10)
            least.e10 = gap;
    }
    return least;
}

int ladder_side(const struct ladder *ladder, struct weight load, struct weight *discs, int room)
{
    int upto = ladder->sums ? list_upto(ladder, load.e10) : 0;
    if (upto == 0 || ladder->at[upto - 1].e10 != load.e10)
        return -1;
    int written = 0;
    for (const struct sum *sum = ladder->sums->at[upto - 1]; sum->under; sum = sum->under)
        for (int i = 0; i < sum->used && written < room; i++)
            discs[written++] = ladder->sums->kinds[sum->kind].weight;
    return ladder->sums->at[upto - 1]->discs;
}
