#include "plan/honesty.h"

#include "base/vec.h"
#include "model/history.h"

enum { MAX_DAYS = 84 };                     /* a max line is worth comparing ratings with for 12 weeks */
static const struct ratio usual = { 3, 2 }; /* points of rpe either way */

/* The effort that the load was, from a max line of her own: rpe, held to the scale she rates on. */
static bool worked_out(const struct record *record, const struct record_session *session, const struct record_set *set,
                       struct ratio *effort)
{
    const struct block *block = record_block(record, session);
    struct max_used max = history_max(record->athlete, set->lift, session->diary->date, block);
    if (!max.line || max.lent_by || !date_is_set(max.line->date) ||
        session->diary->date.day - max.line->date.day > MAX_DAYS)
        return false;
    struct curve curve = history_curve(record->model, block, record->athlete, set->lift);
    struct ratio n = curve_reps(&curve, ratio_div(ratio_weight(set->load), max.load)), ten = ratio_int(10),
                 none = ratio_int(0);
    *effort = ratio_sub(ratio_int(10 + set->reps), n);
    *effort = ratio_cmp(*effort, none) < 0 ? none : ratio_cmp(*effort, ten) > 0 ? ten : *effort;
    return true;
}

void ratings_add(struct arena *arena, const struct record *record, const struct record_session *session,
                 struct rating_list *list)
{
    for (int i = 0; i < session->lift_count; i++)
        for (int j = 0; j < session->lifts[i].set_count; j++) {
            const struct record_set *set = &session->lifts[i].sets[j];
            struct rating rating = { .lift = set->lift,
                                     .date = session->diary->date,
                                     .at = set->at,
                                     .written = ratio_dec(set->rated),
                                     .rated = ratio_dec(set->effort) };
            if (set->has_effort && set->has_load && set->counted && set->reps >= 1 &&
                worked_out(record, session, set, &rating.worked_out))
                vec_add(arena, list, rating);
        }
}

struct honesty honesty_of(const struct rating *ratings, int count, const struct lift *lift)
{
    struct honesty honesty = {
        .lift = lift, .written = ratio_int(0), .rated = ratio_int(0), .worked_out = ratio_int(0), .apart = ratio_int(0)
    };
    for (const struct rating *rating = ratings; rating < ratings + count; rating++)
        if (rating->lift == lift) {
            honesty.written = ratio_add(honesty.written, rating->written);
            honesty.rated = ratio_add(honesty.rated, rating->rated);
            honesty.worked_out = ratio_add(honesty.worked_out, rating->worked_out);
            honesty.last = rating;
            honesty.sets++;
        }
    if (!honesty.sets)
        return honesty;
    honesty.written = ratio_div(honesty.written, ratio_int(honesty.sets));
    honesty.rated = ratio_div(honesty.rated, ratio_int(honesty.sets));
    honesty.worked_out = ratio_div(honesty.worked_out, ratio_int(honesty.sets));
    honesty.apart = ratio_sub(honesty.rated, honesty.worked_out);
    honesty.off = honesty.sets >= HONESTY_SETS &&
                  (ratio_cmp(honesty.apart, usual) > 0 || ratio_cmp(honesty.apart, ratio_sub(ratio_int(0), usual)) < 0);
    return honesty;
}

/* ---- the line to add ---- */

static const char *half_in_range(struct arena *arena, struct ratio effort)
{
    struct dec half = ratio_nearest(effort, dec_halves(1));
    return dec_text(arena, half.e10 < 0 ? dec_int(0) : half.e10 > 10 * DEC_ONE ? dec_int(10) : half);
}

const char *honesty_line(struct arena *arena, const struct honesty *honesty)
{
    return arena_format(arena, "effort %s %s means %s", honesty->lift->name, half_in_range(arena, honesty->written),
                        half_in_range(arena, honesty->worked_out));
}

const char *honesty_advice(struct arena *arena, const struct athlete *athlete, const struct honesty *honesty)
{
    const char *line = honesty_line(arena, honesty);
    for (int i = 0; i < athlete->effort_count; i++)
        if (athlete->efforts[i].lift == honesty->lift)
            return arena_format(
                arena, "change her line `effort %s %s means %s` into `%s`, so that the diary counts what is done",
                honesty->lift->name, dec_text(arena, athlete->efforts[i].rated),
                dec_text(arena, athlete->efforts[i].meant), line);
    return arena_format(arena, "add `%s` to the athlete, so that the diary counts what is done", line);
}
