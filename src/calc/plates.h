/* Loads that a gym can make, and the discs a side that make them.
 *
 * Owner: a ladder and its discs live in the arena they were built in. All weights in 1e-10 kg. */
#ifndef CALC_PLATES_H
#define CALC_PLATES_H

#include "base/dec.h"

enum rounding { ROUND_NEAREST, ROUND_DOWN, ROUND_UP }; /* nearest: ties down */

struct disc {
    struct weight weight; /* one disc; above 0 */
    int count;            /* single discs on hand; a pair needs two */
};

/* The reachable loads in rising order: a list, or first, first + step, ... without end (step above 0). */
struct ladder {
    const struct weight *at; /* NULL for the endless kind */
    int count;
    struct weight first, step;
    const struct disc_sums *sums; /* how each load of a bar's list is made; NULL elsewhere */
    struct weight empty;          /* bar and collars: what the discs are added to */
};

enum { LADDER_MOST = 1 << 20 }; /* more distinct loads than this are refused */

/* bar + both collars + equal discs on both sides, by exact search over the discs on hand; a weight listed twice is one
 * kind. False: more than LADDER_MOST loads, a search too wide, or a load beyond the range of a weight. */
bool ladder_bar(struct arena *arena, struct weight bar, struct weight collar, const struct disc *discs, int count,
                struct ladder *out);
struct ladder ladder_steps(struct weight first, struct weight step);
/* Union of ranges low, low + step, ... up to high (high itself only when a step meets it); sorted, each load once.
 * At least one range; low <= high, step above 0. False: more than LADDER_MOST, a load counted once for each of its
 * ranges. */
struct ladder_range {
    struct weight low, high, step;
};
bool ladder_ranges(struct arena *arena, const struct ladder_range *ranges, int count, struct ladder *out);

/* The reachable load for an exact one (in 1e-10 kg). Below the first: the first; above the last: the last. */
struct weight ladder_round(const struct ladder *ladder, struct ratio load, enum rounding rounding);
/* The next load above, or the same when there is none; and the smallest difference between neighbours
 * (0 where there is but one load). */
struct weight ladder_above(const struct ladder *ladder, struct weight load);
struct weight ladder_smallest_step(const struct ladder *ladder);

/* Discs for one side of a load of the ladder, heaviest first, fewest discs and then the heaviest. Returns how many
 * (0: the bar alone), -1 when the ladder has no discs or does not hold the load. At most `room` are written. */
int ladder_side(const struct ladder *ladder, struct weight load, struct weight *discs, int room);

#endif
