#include "base/dec.h"

#include <string.h>

__extension__ typedef unsigned __int128 uwide;

#define RANGE_E10 (INT64_C(900000000) * DEC_ONE) /* a dec or weight stays below this */
#define LB_HUNDREDTH INT64_C(45359237)           /* 0.01 lb in 1e-10 kg */
#define HUNDREDTH (DEC_ONE / 100)

enum { MOST_DECIMALS = 10, MOST_BITS = 126 };

/* Decimals */

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

bool dec_parse(const char *text, size_t length, struct dec *out)
{
    int64_t value = 0, unit = DEC_ONE;
    size_t at = 0;
    for (; at < length && is_digit(text[at]); at++) {
        value = value * 10 + (text[at] - '0');
        if (value >= RANGE_E10 / DEC_ONE)
            return false;
    }
    if (at == 0)
        return false;
    value *= DEC_ONE;
    if (at < length) {
        if (text[at++] != '.' || at == length || length - at > MOST_DECIMALS)
            return false;
        for (; at < length; at++) {
            if (!is_digit(text[at]))
                return false;
            unit /= 10;
            value += (text[at] - '0') * unit;
        }
    }
    out->e10 = value;
    return true;
}

int64_t dec_floor(struct dec a)
{
    return a.e10 / DEC_ONE - (a.e10 % DEC_ONE < 0);
}

int64_t dec_ceil(struct dec a)
{
    return a.e10 / DEC_ONE + (a.e10 % DEC_ONE > 0);
}

int dec_decimals(struct dec a)
{
    int decimals = 0;
    for (int64_t rest = a.e10 % DEC_ONE; rest != 0; rest = rest * 10 % DEC_ONE)
        decimals++;
    return decimals;
}

int dec_write(char *to, struct dec a)
{
    char digits[24];
    int count = 0, length = 0, decimals = 1;
    uint64_t rest = a.e10 < 0 ? 0 - (uint64_t)a.e10 : (uint64_t)a.e10;
    const uint64_t tenth = DEC_ONE / 10;
    if (rest % tenth == 0) { /* most have one decimal or none */
        rest /= tenth;
        if (rest % 10 == 0)
            rest /= 10, decimals = 0;
    } else {
        decimals = dec_decimals(a);
        for (int i = decimals; i < MOST_DECIMALS; i++)
            rest /= 10;
    }
    for (; rest != 0 || count <= decimals; rest /= 10)
        digits[count++] = (char)('0' + rest % 10);
    if (a.e10 < 0)
        to[length++] = '-';
    while (count > 0) {
        if (count == decimals)
            to[length++] = '.';
        to[length++] = digits[--count];
    }
    to[length] = '\0';
    return length;
}

const char *dec_text(struct arena *arena, struct dec a)
{
    char text[24];
    int length = dec_write(text, a);
    return arena_copy(arena, text, (size_t)length);
}

/* Weights */

static int64_t kept_in_range(wide e10)
{
    return e10 > RANGE_E10 ? RANGE_E10 : e10 < -RANGE_E10 ? -RANGE_E10 : (int64_t)e10;
}

bool weight_from(struct dec amount, enum weight_unit unit, struct weight *out)
{
    if (amount.e10 >= RANGE_E10 || amount.e10 <= -RANGE_E10)
        return false;
    if (unit == UNIT_KG) {
        out->e10 = amount.e10;
        return true;
    }
    if (amount.e10 % HUNDREDTH != 0)
        return false;
    out->e10 = amount.e10 / HUNDREDTH * LB_HUNDREDTH;
    return true;
}

struct dec weight_in(struct weight weight, enum weight_unit unit)
{
    if (unit == UNIT_KG)
        return (struct dec){ weight.e10 };
    int64_t half = weight.e10 < 0 ? -(LB_HUNDREDTH / 2) : LB_HUNDREDTH / 2; /* odd unit: no exact halves */
    wide hundredths = ((wide)weight.e10 + half) / LB_HUNDREDTH;
    return (struct dec){ kept_in_range(hundredths * HUNDREDTH) };
}

const char *weight_text(struct arena *arena, struct weight weight, enum weight_unit unit)
{
    char text[32];
    int length = dec_write(text, weight_in(weight, unit));
    memcpy(text + length, unit == UNIT_KG ? " kg" : " lb", 3);
    return arena_copy(arena, text, (size_t)length + 3);
}

/* Ratios. Products are taken in full, 252 bits at most, so that nothing overflows before it is looked at. */

struct product {
    uwide high, low;
};

static int bits_of(uwide a)
{
    uint64_t high = (uint64_t)(a >> 64), low = (uint64_t)a;
    return high ? 128 - __builtin_clzll(high) : low ? 64 - __builtin_clzll(low) : 0;
}

static uwide size_of_wide(wide a)
{
    return a < 0 ? 0 - (uwide)a : (uwide)a;
}

static struct product product_of(uwide a, uwide b)
{
    if (bits_of(a) + bits_of(b) <= 128)
        return (struct product){ 0, a * b };
    uwide a1 = a >> 64, a0 = (uint64_t)a, b1 = b >> 64, b0 = (uint64_t)b;
    uwide low = a0 * b0, mid1 = a1 * b0, mid0 = a0 * b1;
    uwide carry = (low >> 64) + (uint64_t)mid1 + (uint64_t)mid0;
    return (struct product){ a1 * b1 + (mid1 >> 64) + (mid0 >> 64) + (carry >> 64), carry << 64 | (uint64_t)low };
}

static int product_cmp(struct product a, struct product b)
{
    if (a.high != b.high)
        return a.high < b.high ? -1 : 1;
    return a.low < b.low ? -1 : a.low > b.low;
}

static struct product product_sum(struct product a, struct product b)
{
    struct product sum = { a.high + b.high, a.low + b.low };
    sum.high += sum.low < a.low;
    return sum;
}

static struct product product_less(struct product larger, struct product smaller)
{
    return (struct product){ larger.high - smaller.high - (larger.low < smaller.low), larger.low - smaller.low };
}

static int product_bits(struct product a)
{
    return a.high ? 128 + bits_of(a.high) : bits_of(a.low);
}

static uwide product_shifted(struct product a, int bits)
{
    if (bits == 0)
        return a.low;
    return bits < 128 ? a.high << (128 - bits) | a.low >> bits : a.high >> (bits - 128);
}

/* Stein 1967: shifts and differences, since divisions cost more. */
static uint64_t gcd_short(uint64_t a, uint64_t b)
{
    if (a == 1 || b == 1)
        return 1;
    if (a == 0 || b == 0)
        return a | b;
    enum { APART = 12 }; /* bits: then one division costs less than that many turns */
    if (a >> APART > b && (a %= b) == 0)
        return b;
    if (b >> APART > a && (b %= a) == 0)
        return a;
    int twos = __builtin_ctzll(a | b);
    a >>= __builtin_ctzll(a);
    while (b != 0 && a != 1) {
        b >>= __builtin_ctzll(b);
        uint64_t less = a < b ? a : b;
        b = a < b ? b - a : a - b;
        a = less;
    }
    return a << twos;
}

static uwide gcd_of(uwide a, uwide b)
{
    while (b != 0) {
        if (bits_of(a) <= 64 && bits_of(b) <= 64) /* the usual case; 128-bit division is slow */
            return gcd_short((uint64_t)a, (uint64_t)b);
        uwide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/* Both parts shifted down alike until they fit, then lowest terms. What is beyond 126 bits as a value stays at the end. */
static struct ratio ratio_fit(bool negative, struct product num, struct product den)
{
    int bits = product_bits(num) > product_bits(den) ? product_bits(num) : product_bits(den);
    int shift = bits > MOST_BITS ? bits - MOST_BITS : 0;
    uwide n = product_shifted(num, shift), d = product_shifted(den, shift);
    if (d == 0) {
        n = ((uwide)1 << MOST_BITS) - 1;
        d = 1;
    }
    uwide common = gcd_of(n, d);
    if (common > 1) {
        n /= common;
        d /= common;
    }
    return (struct ratio){ negative ? -(wide)n : (wide)n, (wide)d };
}

/* Parts of at most 62 bits, as nearly all are: their products fit without a second look. */
static bool is_short(struct ratio a)
{
    return a.num < ((wide)1 << 62) && a.num > -((wide)1 << 62) && a.den < ((wide)1 << 62);
}

static uint64_t short_size(wide a)
{
    return (uint64_t)(a < 0 ? -a : a);
}

static struct ratio short_mul(struct ratio a, struct ratio b)
{
    if (a.den == 1 && b.den == 1)
        return (struct ratio){ a.num * b.num, 1 };
    uint64_t across = gcd_short(short_size(a.num), (uint64_t)b.den), back = gcd_short(short_size(b.num), (uint64_t)a.den);
    int64_t an = (int64_t)a.num / (int64_t)across, bn = (int64_t)b.num / (int64_t)back;
    return (struct ratio){ (wide)an * bn, (wide)((uint64_t)a.den / back) * (wide)((uint64_t)b.den / across) };
}

/* Knuth, Seminumerical Algorithms 4.5.1: what can still be cancelled divides the common part of the two below. */
static struct ratio short_add(struct ratio a, struct ratio b)
{
    if (a.den == 1 || b.den == 1)
        return (struct ratio){ a.num * b.den + b.num * a.den, a.den * b.den };
    uint64_t common = gcd_short((uint64_t)a.den, (uint64_t)b.den);
    wide num = a.num * (wide)((uint64_t)b.den / common) + b.num * (wide)((uint64_t)a.den / common);
    if (common == 1)
        return (struct ratio){ num, a.den * b.den };
    uint64_t rest = gcd_short((uint64_t)((num < 0 ? -num : num) % common), common);
    return (struct ratio){ num / (wide)rest, (wide)((uint64_t)a.den / common) * (wide)((uint64_t)b.den / rest) };
}

struct ratio ratio_make(wide num, wide den)
{
    struct ratio raw = { num, den < 0 ? -den : den };
    if (is_short(raw)) {
        int64_t common = (int64_t)gcd_short(short_size(num), (uint64_t)raw.den);
        return (struct ratio){ (den < 0 ? -(int64_t)num : (int64_t)num) / common, (int64_t)raw.den / common };
    }
    uwide n = size_of_wide(num), d = size_of_wide(den), common = gcd_of(n, d);
    return ratio_fit((num < 0) != (den < 0), (struct product){ 0, n / common }, (struct product){ 0, d / common });
}

/* Most written numbers are whole or have a quarter or a tenth: so the common part is soon found. */
struct ratio ratio_dec(struct dec a)
{
    enum { PARTS = 20 };
    int64_t part = DEC_ONE / PARTS;
    if (a.e10 % DEC_ONE == 0)
        return ratio_int(a.e10 / DEC_ONE);
    return a.e10 % part ? ratio_make(a.e10, DEC_ONE) : ratio_make(a.e10 / part, PARTS);
}

struct ratio ratio_add(struct ratio a, struct ratio b)
{
    if (is_short(a) && is_short(b))
        return short_add(a, b);
    uwide common = gcd_of((uwide)a.den, (uwide)b.den);
    uwide a_share = (uwide)b.den / common, b_share = (uwide)a.den / common;
    struct product left = product_of(size_of_wide(a.num), a_share);
    struct product right = product_of(size_of_wide(b.num), b_share);
    struct product den = product_of((uwide)a.den, a_share);
    if ((a.num < 0) == (b.num < 0))
        return ratio_fit(a.num < 0, product_sum(left, right), den);
    if (product_cmp(left, right) >= 0)
        return ratio_fit(a.num < 0, product_less(left, right), den);
    return ratio_fit(b.num < 0, product_less(right, left), den);
}

struct ratio ratio_sub(struct ratio a, struct ratio b)
{
    b.num = -b.num;
    return ratio_add(a, b);
}

struct ratio ratio_mul(struct ratio a, struct ratio b)
{
    if (is_short(a) && is_short(b))
        return short_mul(a, b);
    uwide an = size_of_wide(a.num), bn = size_of_wide(b.num), ad = (uwide)a.den, bd = (uwide)b.den;
    uwide across = gcd_of(an, bd), back = gcd_of(bn, ad);
    return ratio_fit((a.num < 0) != (b.num < 0), product_of(an / across, bn / back),
                     product_of(ad / back, bd / across));
}

struct ratio ratio_div(struct ratio a, struct ratio b)
{
    struct ratio turned = { b.num < 0 ? -b.den : b.den, b.num < 0 ? -b.num : b.num };
    return ratio_mul(a, turned);
}

/* Of different denominators. */
int ratio_cmp_parts(struct ratio a, struct ratio b)
{
    if ((a.num < 0) != (b.num < 0))
        return a.num < 0 ? -1 : 1;
    if (is_short(a) && is_short(b)) {
        wide left = a.num * b.den, right = b.num * a.den;
        return left < right ? -1 : left > right;
    }
    int larger =
        product_cmp(product_of(size_of_wide(a.num), (uwide)b.den), product_of(size_of_wide(b.num), (uwide)a.den));
    return a.num < 0 ? -larger : larger;
}

bool ratio_is_near(struct ratio a, int64_t whole, int64_t step)
{
    if (is_short(a)) {
        wide apart = a.num - (wide)whole * a.den;
        return 2 * (apart < 0 ? -apart : apart) <= (wide)step * a.den;
    }
    return ratio_cmp(a, ratio_halves(2 * (wide)whole - step)) >= 0 &&
           ratio_cmp(a, ratio_halves(2 * (wide)whole + step)) <= 0;
}

struct ratio ratio_percent(struct ratio a, struct dec percent)
{
    enum { HALVES_OF_ALL = 200 };
    if (percent.e10 == 100 * DEC_ONE)
        return a;
    if (percent.e10 % (DEC_ONE / 2) == 0)
        return ratio_mul(a, ratio_make(percent.e10 / (DEC_ONE / 2), HALVES_OF_ALL));
    return ratio_mul(a, ratio_make(percent.e10, (wide)100 * DEC_ONE));
}

/* Rounding */

enum direction { DOWN = -1, NEAREST, UP };

static wide whole_of(struct ratio a, enum direction direction)
{
    bool negative = a.num < 0;
    uwide size = size_of_wide(a.num), den = (uwide)a.den, whole, rest;
    if (size <= UINT64_MAX && den <= UINT64_MAX) /* 128-bit division is slow */
        whole = (uint64_t)size / (uint64_t)den, rest = (uint64_t)size % (uint64_t)den;
    else
        whole = size / den, rest = size % den;
    bool outward = direction == NEAREST ? rest >= den - rest : rest != 0 && negative == (direction == DOWN);
    whole += outward;
    return negative ? -(wide)whole : (wide)whole;
}

/* a in grains, a fraction that need not be in lowest terms to be rounded. */
static struct ratio in_grains(struct ratio a, int64_t grain)
{
    if (is_short(a) && DEC_ONE % grain == 0)
        return (struct ratio){ a.num * (DEC_ONE / grain), a.den };
    return ratio_div(ratio_mul(a, ratio_int(DEC_ONE)), ratio_int(grain));
}

static struct dec ratio_round(struct ratio a, struct dec grain, enum direction direction)
{
    wide grains = whole_of(in_grains(a, grain.e10), direction);
    wide most = RANGE_E10 / grain.e10;
    grains = grains > most ? most : grains < -most ? -most : grains;
    return (struct dec){ (int64_t)(grains * grain.e10) };
}

struct dec ratio_nearest(struct ratio a, struct dec grain)
{
    return ratio_round(a, grain, NEAREST);
}

struct dec ratio_down(struct ratio a, struct dec grain)
{
    return ratio_round(a, grain, DOWN);
}

struct dec ratio_up(struct ratio a, struct dec grain)
{
    return ratio_round(a, grain, UP);
}

struct ratio ratio_in(struct ratio load, enum weight_unit unit)
{
    return ratio_div(load, ratio_int(unit == UNIT_LB ? LB_IN_E10 : DEC_ONE));
}

struct weight ratio_to_weight(struct ratio a)
{
    return (struct weight){ kept_in_range(whole_of(a, NEAREST)) };
}

struct weight ratio_to_tenth_kg(struct ratio a)
{
    return (struct weight){ ratio_nearest(ratio_div(a, ratio_int(DEC_ONE)), (struct dec){ DEC_ONE / 10 }).e10 };
}
