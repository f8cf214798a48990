#include "api/inner.h"

#include "base/near.h"
#include "emit/as_review.h"

#include <string.h>

struct reviewing {
    struct setwright *sw;
    struct chosen chosen;
    struct out out;
    bool csv, begun;
};

static bool write_review(struct reviewing *r, const struct athlete *athlete, struct record *record,
                         const struct review_scope *scope)
{
    const struct review *review = record ? review_new(r->sw->scratch, record, scope) : NULL;
    return r->csv ? review_csv(&r->out, athlete, review) : review_text(&r->out, athlete, review, &r->begun);
}

static struct review_scope scope_of(const struct reviewing *r)
{
    const struct narrow *narrow = &r->chosen.narrow;
    return (struct review_scope){ .outside =
                                      !r->chosen.blocks && !r->chosen.run && !narrow->first_week && !narrow->last_week,
                                  .first_week = narrow->first_week,
                                  .last_week = narrow->last_week,
                                  .from = narrow->from,
                                  .to = narrow->to };
}

/* All her blocks are planned, since results go from one to the next; those chosen are looked at. */
static bool review_planned(struct reviewing *r, const struct pair *first, int count)
{
    struct setwright *sw = r->sw;
    struct review_scope scope = scope_of(r);
    struct record *record = NULL;
    bool any = false;
    for (int i = 0; i < count; i++)
        any |= is_chosen(&r->chosen, &first[i]);
    if (!any)
        return true;
    plans_forget(sw);
    struct plan **plans = plans_of(sw, first, count, NULL, &record);
    const struct plan **looked = NEW_MANY(sw->scratch, const struct plan *, count + 1);
    for (int i = 0; i < count; i++)
        if (plans[i] && is_chosen(&r->chosen, &first[i]))
            looked[scope.plan_count++] = plans[i];
    scope.plans = looked;
    return write_review(r, first->athlete, record, &scope);
}

/* Lifters without a block: of those that nobody asked for, the ones with a diary. */
static bool review_unplanned(struct reviewing *r, const bool *has_pairs)
{
    struct setwright *sw = r->sw;
    struct review_scope scope = scope_of(r);
    for (int i = 0; i < sw->model->athlete_count && scope.outside; i++) {
        const struct athlete *athlete = sw->model->athletes[i];
        bool asked = r->chosen.athletes ? r->chosen.athletes[athlete->order] : athlete->diary_count > 0;
        if (has_pairs[athlete->order] || !asked)
            continue;
        plans_forget(sw);
        if (!write_review(r, athlete, record_new(sw->scratch, sw->model, athlete, NULL, 0), &scope))
            return false;
    }
    return true;
}

static bool review_all(struct reviewing *r)
{
    struct setwright *sw = r->sw;
    bool *has_pairs = NEW_MANY(sw->work, bool, sw->model->athlete_count + 1);
    if (r->csv)
        review_csv_header(&r->out);
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        for (next = first + 1; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete;)
            next++;
        has_pairs[sw->pairs.at[first].athlete->order] = true;
        if (!review_planned(r, &sw->pairs.at[first], next - first))
            return false;
    }
    return review_unplanned(r, has_pairs);
}

enum setwright_status setwright_review(struct setwright *sw, const char *format, const struct setwright_choice *choice,
                                       struct setwright_sink sink)
{
    GUARD(sw);
    static const char *const names[] = { "text", "csv" };
    struct reviewing r = { .sw = sw, .csv = !strcmp(format, "csv") };
    if (!r.csv && strcmp(format, "text") != 0) {
        const char *near = word_nearest(format, names, 2);
        sw->problem = arena_format(sw->arena,
                                   near ? "a review is text or csv, not %.60s; did you mean %s?"
                                        : "a review is text or csv, not %.60s%s",
                                   format, near ? near : "");
        return SETWRIGHT_USAGE;
    }
    enum setwright_status status = api_choose_past(sw, choice, &r.chosen);
    if (status)
        return status;
    r.out = out_new(sw->work, api_sink(sink));
    bool fine = review_all(&r);
    plans_forget(sw);
    return out_flush(&r.out) && fine ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}
