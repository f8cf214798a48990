/* What a training record looks like to the rules. */
#include "check/views.h"

#include "base/vec.h"

enum { MAX_DAYS = 84 }; /* a max line is worth comparing ratings with for 12 weeks */

struct diary_viewing {
    struct arena *arena;
    const struct athlete_view *view;
    VEC(struct rating_view) ratings;
    VEC(struct session_view) sessions;
};

/* The effort that the load was, from a max line of her own: rpe, held to the scale she rates on. */
static bool worked_out(const struct record *record, const struct record_session *session, const struct record_set *set,
                       struct ratio *effort)
{
    const struct block *block = session->block >= 0 ? record->blocks[session->block] : NULL;
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

static void view_sets(struct diary_viewing *v, const struct record_session *session, const struct record_lift *lift)
{
    for (int i = 0; i < lift->set_count; i++) {
        const struct record_set *set = &lift->sets[i];
        struct rating_view rating = { .lift = lift->lift,
                                      .date = session->diary->date,
                                      .at = set->at,
                                      .written = ratio_dec(set->rated),
                                      .rated = ratio_dec(set->effort) };
        if (set->has_effort && set->has_load && set->counted && set->reps >= 1 &&
            worked_out(v->view->record, session, set, &rating.worked_out))
            vec_add(v->arena, &v->ratings, rating);
    }
}

static void view_session(struct diary_viewing *v, const struct record_session *session, const struct record_lift *lift)
{
    struct session_view view = { .lift = lift->lift, .date = session->diary->date };
    if (lift->how != RECORD_DONE || lift->other_choice)
        return;
    view.at = lift->done->at;
    for (int i = 0; i < lift->part_count; i++)
        view.missed |= record_part_missed(&lift->parts[i]);
    vec_add(v->arena, &v->sessions, view);
}

void diary_views_make(struct arena *scratch, struct athlete_view *view)
{
    struct diary_viewing v = { .arena = scratch, .view = view };
    const struct record *record = view->record;
    for (int i = 0; record && i < record->session_count; i++)
        for (int j = 0; j < record->sessions[i].lift_count; j++) {
            view_sets(&v, &record->sessions[i], &record->sessions[i].lifts[j]);
            view_session(&v, &record->sessions[i], &record->sessions[i].lifts[j]);
        }
    view->ratings = v.ratings.at, view->rating_count = v.ratings.count;
    view->sessions = v.sessions.at, view->session_count = v.sessions.count;
}
