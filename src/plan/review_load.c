#include "plan/review.h"

#include "base/vec.h"
#include "calc/strain.h"

enum { DAY_MOST = 1000000 }; /* what calc/strain takes */

static bool is_rated(const struct diary_session *session)
{
    return session->has_effort && session->minutes > 0;
}

static struct review_load load_of_week(const struct review *review, struct date monday)
{
    struct review_load load = { .monday = monday };
    struct dec days[7] = { 0 };
    for (int i = 0; i < review->record->session_count; i++) {
        const struct diary_session *session = review->record->sessions[i].diary;
        int day = session->date.day - monday.day;
        if (day < 0 || day > 6 || session->missed)
            continue;
        load.sessions++;
        if (!is_rated(session))
            continue;
        load.rated++;
        load.minutes += session->minutes;
        days[day].e10 += session->effort.e10 * session->minutes;
        if (days[day].e10 > DAY_MOST * DEC_ONE)
            days[day] = dec_int(DAY_MOST);
    }
    struct strain strain = strain_of_week(days);
    load.load = strain.load;
    load.has_monotony = load.rated && load.rated == load.sessions && strain.has_monotony;
    load.monotony = strain.monotony;
    load.strain = strain.strain;
    return load;
}

struct review_loads review_loads(const struct review *review)
{
    struct review_loads loads = { 0 };
    for (struct date monday = date_monday(review->first); date_is_set(monday) && monday.day <= review->last.day;
         monday = date_plus(monday, 7)) {
        struct review_load load = load_of_week(review, monday);
        vec_add(review->arena, &loads, load);
    }
    return loads;
}

struct review_unrated review_unrated(const struct review *review)
{
    struct review_unrated list = { 0 };
    int32_t from = date_monday(review->first).day, past = from + (review->last.day - from) / 7 * 7 + 7;
    for (int i = 0; i < review->record->session_count; i++) {
        const struct diary_session *session = review->record->sessions[i].diary;
        if (session->date.day >= from && session->date.day < past && !session->missed && !is_rated(session))
            vec_add(review->arena, &list, &review->record->sessions[i]);
    }
    return list;
}
