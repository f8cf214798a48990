#include "plan/review.h"

#include "base/vec.h"
#include "model/history.h"

#include <stdlib.h>

struct besting {
    const struct review *review;
    const struct lift *lift;
    struct review_bests bests;
    const struct outlier *outliers;
    int outlier_count;
};

/* A set as planned whose load was open tells none; on bodyweight lifts what is added is known without her weight. */
static bool tells_load(const struct record_set *set)
{
    if (!set->counted || set->reps < 1)
        return false;
    return set->has_load || (set->lift->loads == LOADS_BODYWEIGHT && !set->as_planned);
}

/* Of two as heavy for as many reps the earlier stays. */
static void take_set(struct besting *b, const struct record_session *session, const struct record_set *set)
{
    struct review_best best = { .reps = set->reps,
                                .shown = set->shown,
                                .date = session->diary->date,
                                .in_period = review_looks_at(b->review, session) };
    best.load.e10 = set->has_load ? set->load.e10 : 0;
    for (int i = 0; i < b->bests.count; i++)
        if (b->bests.at[i].reps == set->reps) {
            if (set->shown.e10 > b->bests.at[i].shown.e10)
                b->bests.at[i] = best;
            return;
        }
    vec_add(b->review->arena, &b->bests, best);
}

static bool stays_out(const struct besting *b, const struct record_session *session)
{
    for (int i = 0; i < b->outlier_count; i++)
        if (b->outliers[i].session == session && !session->diary->lets_in)
            return true;
    return false;
}

static void take_estimate(struct besting *b, const struct record_session *session, const struct record_set *set)
{
    const struct record *record = b->review->record;
    if (!set->has_load || !set->counted || set->reps < 1 || !set->has_effort || stays_out(b, session))
        return;
    struct curve curve = history_curve(record->model, record_block(record, session), record->athlete, b->lift);
    struct ratio n = curve_could_do(ratio_int(set->reps), set->effort);
    struct ratio max = ratio_div(ratio_weight(set->load), curve_share(&curve, n));
    struct weight estimate = ratio_to_tenth_kg(max);
    if (b->bests.has_estimate && estimate.e10 <= b->bests.estimate.e10)
        return;
    b->bests.has_estimate = true;
    b->bests.estimate = estimate;
    b->bests.from = set;
    b->bests.estimate_date = session->diary->date;
    b->bests.estimate_in_period = review_looks_at(b->review, session);
}

static int by_reps(const void *a, const void *b)
{
    return ((const struct review_best *)a)->reps - ((const struct review_best *)b)->reps;
}

/* What a longer set did as heavily says nothing more. */
static void keep_heavier(struct review_bests *bests)
{
    int kept = 0;
    if (bests->count)
        qsort(bests->at, (size_t)bests->count, sizeof *bests->at, by_reps);
    for (int i = 0; i < bests->count; i++) {
        bool beaten = false;
        for (int j = i + 1; j < bests->count; j++)
            beaten |= bests->at[j].shown.e10 >= bests->at[i].shown.e10;
        if (!beaten)
            bests->at[kept++] = bests->at[i];
    }
    bests->count = kept;
}

struct review_bests review_bests(const struct review *review, const struct lift *lift)
{
    struct besting b = { .review = review, .lift = lift };
    const struct record *record = review->record;
    b.outlier_count = running_outliers(review->record, lift, NULL, &b.outliers);
    for (int i = 0; i < record->session_count && record->sessions[i].diary->date.day <= review->last.day; i++)
        for (int j = 0; j < record->sessions[i].lift_count; j++)
            for (int k = 0; record->sessions[i].lifts[j].lift == lift && k < record->sessions[i].lifts[j].set_count;
                 k++) {
                const struct record_set *set = &record->sessions[i].lifts[j].sets[k];
                if (tells_load(set))
                    take_set(&b, &record->sessions[i], set);
                take_estimate(&b, &record->sessions[i], set);
            }
    keep_heavier(&b.bests);
    return b.bests;
}
