#include "plan/review.h"

#include "base/vec.h"

#include <stdlib.h>

/* ---- which sessions and weeks are looked at ---- */

static bool between(struct date day, struct date from, struct date to)
{
    return (!date_is_set(from) || day.day >= from.day) && (!date_is_set(to) || day.day <= to.day);
}

static bool week_passes(const struct review_scope *scope, int number)
{
    return (!scope->first_week || number >= scope->first_week) && (!scope->last_week || number <= scope->last_week);
}

static const struct plan *plan_of(const struct review *review, const struct record_session *session)
{
    for (int i = 0; session->block >= 0 && i < review->scope.plan_count; i++)
        if (review->scope.plans[i]->block == review->record->blocks[session->block])
            return review->scope.plans[i];
    return NULL;
}

static bool session_passes(const struct review *review, const struct record_session *session)
{
    if (!between(session->diary->date, review->scope.from, review->scope.to))
        return false;
    return session->block < 0 ? review->scope.outside
                              : plan_of(review, session) && week_passes(&review->scope, session->week);
}

struct week_list {
    VEC(struct review_week) list;
};

static bool has_session_in(const struct review *review, const struct plan *plan, int number)
{
    for (int i = 0; i < review->session_count; i++)
        if (review->sessions[i].session->week == number && plan_of(review, review->sessions[i].session) == plan)
            return true;
    return false;
}

/* Weeks that meet the diary and the scope's dates, and those that a session of other dates names. */
static void add_plan_weeks(const struct review *review, const struct plan *plan, struct week_list *weeks)
{
    const struct record *record = review->record;
    struct date first = record->sessions[0].diary->date, last = record->sessions[record->session_count - 1].diary->date;
    for (int i = 0; i < plan->week_count; i++) {
        const struct plan_week *week = &plan->weeks[i];
        struct date from = review->scope.from, to = review->scope.to;
        bool meets = week->start.day <= last.day && week->start.day + 6 >= first.day &&
                     (!date_is_set(to) || week->start.day <= to.day) &&
                     (!date_is_set(from) || week->start.day + 6 >= from.day);
        struct review_week added = { plan, week, week->number, week->start };
        if (week_passes(&review->scope, week->number) && (meets || has_session_in(review, plan, week->number)))
            vec_add(review->arena, &weeks->list, added);
    }
}

static const struct review_week *week_of(const struct review *review, const struct week_list *weeks,
                                         const struct record_session *session)
{
    const struct plan *plan = plan_of(review, session);
    int32_t monday = date_monday(session->diary->date).day;
    for (int pass = plan ? 0 : 1; pass < 2; pass++)
        for (int i = 0; i < weeks->list.count; i++) {
            const struct review_week *week = &weeks->list.at[i];
            if (pass ? !week->plan && week->start.day == monday : week->plan == plan && week->number == session->week)
                return week;
        }
    return NULL;
}

static int weeks_order(const void *a, const void *b)
{
    const struct review_week *one = a, *other = b;
    if (one->start.day != other->start.day)
        return one->start.day < other->start.day ? -1 : 1;
    if (!one->plan != !other->plan)
        return one->plan ? -1 : 1;
    return one->plan && one->plan->block != other->plan->block
               ? (one->plan->block->at.start < other->plan->block->at.start ? -1 : 1)
               : one->number - other->number;
}

static void set_weeks(struct review *review, struct review_session *sessions)
{
    struct week_list weeks = { 0 };
    for (int i = 0; i < review->scope.plan_count; i++)
        add_plan_weeks(review, review->scope.plans[i], &weeks);
    for (int i = 0; i < review->session_count; i++) {
        struct review_week outside = { .start = date_monday(sessions[i].session->diary->date) };
        if (!week_of(review, &weeks, sessions[i].session))
            vec_add(review->arena, &weeks.list, outside);
    }
    if (weeks.list.count)
        qsort(weeks.list.at, (size_t)weeks.list.count, sizeof *weeks.list.at, weeks_order);
    for (int i = 0; i < review->session_count; i++)
        sessions[i].week = week_of(review, &weeks, sessions[i].session);
    review->weeks = weeks.list.at;
    review->week_count = weeks.list.count;
}

/* ---- which lifts ---- */

static bool is_done(const struct record_lift *lift)
{
    return lift->how == RECORD_DONE || lift->how == RECORD_UNEVEN || lift->how == RECORD_EXTRA;
}

static void set_lifts(struct review *review)
{
    VEC(const struct lift *) lifts = { 0 };
    for (int i = 0; i < review->session_count; i++)
        for (int j = 0; j < review->sessions[i].session->lift_count; j++) {
            const struct record_lift *lift = &review->sessions[i].session->lifts[j];
            int at = 0;
            while (at < lifts.count && lifts.at[at] != lift->lift)
                at++;
            if (is_done(lift) && at == lifts.count)
                vec_add(review->arena, &lifts, lift->lift);
        }
    review->lifts = lifts.at;
    review->lift_count = lifts.count;
}

struct review *review_new(struct arena *arena, struct record *record, const struct review_scope *scope)
{
    struct review *review = NEW(arena, struct review);
    struct review_session *sessions = NEW_MANY(arena, struct review_session, record->session_count + 1);
    *review = (struct review){
        .arena = arena, .record = record, .scope = *scope, .unit = record->athlete->gym->unit, .sessions = sessions
    };
    for (int i = 0; i < record->session_count; i++)
        if (session_passes(review, &record->sessions[i]))
            sessions[review->session_count++].session = &record->sessions[i];
    if (review->session_count) {
        review->first = sessions[0].session->diary->date;
        review->last = sessions[review->session_count - 1].session->diary->date;
    }
    set_weeks(review, sessions);
    set_lifts(review);
    return review;
}

bool review_looks_at(const struct review *review, const struct record_session *session)
{
    for (int i = 0; i < review->session_count; i++)
        if (review->sessions[i].session == session)
            return true;
    return false;
}

bool review_day_due(const struct review *review, const struct review_week *week, const struct plan_day *day,
                    const struct record_session **session)
{
    const struct record *record = review->record;
    struct date first = record->sessions[0].diary->date, last = record->sessions[record->session_count - 1].diary->date;
    *session = record_of_day(record, day);
    if (*session)
        return review_looks_at(review, *session);
    if (day->day->optional)
        return false;
    struct date begin = date_is_set(day->date) ? day->date : week->start,
                end = date_is_set(day->date) ? day->date : date_plus(week->start, 6);
    return between(begin, review->scope.from, review->scope.to) && end.day >= first.day && end.day <= last.day;
}

/* ---- what was left out ---- */

static void miss_session(const struct review *review, const struct review_session *looked, struct review_misses *misses)
{
    const struct record_session *session = looked->session;
    struct review_miss miss = {
        .week = looked->week, .date = session->diary->date, .dated = true, .label = session->diary->label
    };
    if (!miss.label && session->day)
        miss.label = session->day->day->label;
    if (session->diary->missed) {
        miss.how = MISS_MISSED;
        miss.because = session->diary->because;
        vec_add(review->arena, misses, miss);
        return;
    }
    for (int i = 0; i < session->lift_count; i++) {
        const struct record_lift *lift = &session->lifts[i];
        if (is_done(lift))
            continue;
        miss.lift = lift->lift;
        miss.how = lift->how == RECORD_SKIPPED ? MISS_SKIPPED : MISS_UNNAMED;
        miss.because = lift->done ? lift->done->because : NULL;
        vec_add(review->arena, misses, miss);
    }
}

static void miss_days(const struct review *review, const struct review_week *week, struct review_misses *misses)
{
    for (int i = 0; week->plan && i < week->week->day_count; i++) {
        const struct plan_day *day = &week->week->days[i];
        const struct record_session *session;
        bool dated = date_is_set(day->date);
        struct review_miss miss = { .week = week,
                                    .date = dated ? day->date : week->start,
                                    .dated = dated,
                                    .label = day->day->label,
                                    .how = MISS_NO_ENTRY };
        if (review_day_due(review, week, day, &session) && !session)
            vec_add(review->arena, misses, miss);
    }
}

/* Few, and nearly in order: those of one date keep theirs. */
static void misses_sort(struct review_misses *misses)
{
    for (int i = 1; i < misses->count; i++) {
        struct review_miss miss = misses->at[i];
        int at = i;
        for (; at > 0 && misses->at[at - 1].date.day > miss.date.day; at--)
            misses->at[at] = misses->at[at - 1];
        misses->at[at] = miss;
    }
}

struct review_misses review_misses(const struct review *review)
{
    struct review_misses misses = { 0 };
    for (int i = 0; i < review->session_count; i++)
        miss_session(review, &review->sessions[i], &misses);
    for (int i = 0; i < review->week_count; i++)
        miss_days(review, &review->weeks[i], &misses);
    misses_sort(&misses);
    return misses;
}

/* ---- effort honesty ---- */

struct review_honesty review_honesty(const struct review *review)
{
    struct rating_list ratings = { 0 };
    struct review_honesty list = { 0 };
    for (int i = 0; i < review->session_count; i++)
        ratings_add(review->arena, review->record, review->sessions[i].session, &ratings);
    for (int i = 0; i < review->lift_count; i++) {
        struct honesty honesty = honesty_of(ratings.at, ratings.count, review->lifts[i]);
        if (honesty.sets)
            vec_add(review->arena, &list, honesty);
    }
    return list;
}
