/* Exact numbers. Three types that do not assign to each other:
 *
 *   struct dec     a written number: a count, a per cent, an effort, seconds; integer multiples of 1e-10
 *   struct weight  integer multiples of 1e-10 kg; 1 lb = 0.45359237 kg exactly (agreement of 1959)
 *   struct ratio   an exact fraction for what arises in between (a third of a ramp, a share of a max)
 *
 * Every rounding has a name here. Nothing here reads the locale. Range of dec and weight: below 900 million either way;
 * dec_parse refuses more. A ratio that outgrows 126 bits loses its last bits instead of overflowing: both parts are
 * halved until they fit. */
#ifndef BASE_DEC_H
#define BASE_DEC_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

__extension__ typedef __int128 wide;

#define DEC_ONE INT64_C(10000000000)
#define LB_IN_E10 INT64_C(4535923700) /* one pound in 1e-10 kg */

struct dec {
    int64_t e10;
};
struct weight {
    int64_t e10;
};
struct ratio {
    wide num, den; /* den > 0, lowest terms */
};

enum weight_unit { UNIT_KG, UNIT_LB };

/* Digits with at most one '.', no sign, no exponent: "2.5". False when it is not one, has more than 10 decimals or is out of range. */
bool dec_parse(const char *text, size_t length, struct dec *out);
static inline struct dec dec_int(int64_t whole)
{
    return (struct dec){ whole * DEC_ONE };
}
static inline struct dec dec_halves(int64_t halves)
{
    return (struct dec){ halves * (DEC_ONE / 2) };
}
static inline bool dec_is_multiple(struct dec a, struct dec grain)
{
    return a.e10 % grain.e10 == 0;
}
int64_t dec_floor(struct dec a);
int64_t dec_ceil(struct dec a);
int dec_decimals(struct dec a); /* how many it needs: 2.50 -> 1 */

/* Writes without trailing zeros: "2.5", "-7", "0". Returns the length; `room` of 24 suffices. */
int dec_write(char *to, struct dec a);
const char *dec_text(struct arena *arena, struct dec a);

/* A written number with a unit to a weight. False for a lb weight with more than two decimals or out of range. */
bool weight_from(struct dec amount, enum weight_unit unit, struct weight *out);
/* Back in the unit, exact where it is (kg always; lb for sums of discs), else to 2 decimals, halves away from zero. */
struct dec weight_in(struct weight weight, enum weight_unit unit);
const char *weight_text(struct arena *arena, struct weight weight, enum weight_unit unit); /* "102.5 kg" */

struct ratio ratio_make(wide num, wide den); /* den != 0 */
static inline struct ratio ratio_int(int64_t whole)
{
    return (struct ratio){ whole, 1 };
}
static inline struct ratio ratio_halves(wide halves)
{
    return halves % 2 ? (struct ratio){ halves, 2 } : (struct ratio){ halves / 2, 1 };
}
struct ratio ratio_dec(struct dec a);
static inline struct ratio ratio_weight(struct weight a) /* in 1e-10 kg, as a whole number */
{
    return (struct ratio){ a.e10, 1 };
}
struct ratio ratio_in(struct ratio load, enum weight_unit unit); /* 1e-10 kg in its unit, exactly */
struct ratio ratio_add(struct ratio a, struct ratio b);
struct ratio ratio_sub(struct ratio a, struct ratio b);
struct ratio ratio_mul(struct ratio a, struct ratio b);
struct ratio ratio_div(struct ratio a, struct ratio b); /* b != 0 */
int ratio_cmp_parts(struct ratio a, struct ratio b);
static inline int ratio_cmp(struct ratio a, struct ratio b) /* -1, 0, 1; exact */
{
    return a.den == b.den ? (a.num > b.num) - (a.num < b.num) : ratio_cmp_parts(a, b);
}
static inline int ratio_cmp_dec(struct ratio a, struct dec b)
{
    return ratio_cmp(a, (struct ratio){ b.e10, DEC_ONE }); /* products tell, in lowest terms or not */
}
/* Whether it is at most half a step away from a whole number; exact. */
bool ratio_is_near(struct ratio a, int64_t whole, int64_t step);
struct ratio ratio_percent(struct ratio a, struct dec percent); /* a * percent / 100 */

/* To a multiple of the grain (above 0); what is out of range becomes the range's last multiple. */
struct dec ratio_nearest(struct ratio a, struct dec grain);  /* halves away from zero */
struct dec ratio_down(struct ratio a, struct dec grain);     /* towards minus infinity */
struct dec ratio_up(struct ratio a, struct dec grain);       /* towards plus infinity */
/* A ratio in 1e-10 kg to the nearest weight, halves away from zero. */
struct weight ratio_to_weight(struct ratio a);
struct weight ratio_to_tenth_kg(struct ratio a); /* the same to 0.1 kg */

#endif
