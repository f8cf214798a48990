/* What a training record looks like to the rules. */
#include "check/views.h"

#include "base/vec.h"

struct diary_viewing {
    struct arena *arena;
    const struct athlete_view *view;
    struct rating_list ratings;
    VEC(struct session_view) sessions;
};

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
    for (int i = 0; record && i < record->session_count; i++) {
        ratings_add(scratch, record, &record->sessions[i], &v.ratings);
        for (int j = 0; j < record->sessions[i].lift_count; j++)
            view_session(&v, &record->sessions[i], &record->sessions[i].lifts[j]);
    }
    view->ratings = v.ratings.at, view->rating_count = v.ratings.count;
    view->sessions = v.sessions.at, view->session_count = v.sessions.count;
}
