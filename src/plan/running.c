#include "plan/running.h"

#include "base/vec.h"
#include "calc/line.h"
#include "calc/trend.h"
#include "model/history.h"
#include "plan/record_index.h"

#include <stdlib.h>

enum {
    SPEED_REPS = 3, /* the last rep of a longer set is slowed by those before it: our choice */
    SPEEDS_MOST = 30,
    SPEED_DAYS = 182
};

/* A line or a session, and what it did. */
struct fold {
    const struct max_line *line;  /* NULL: a session */
    int session;                  /* of the record */
    const struct record_set *set; /* the one with the highest estimate */
    bool by_speed, in;
    bool far; /* from the running max; in all the same where a second one agreed, or its session lets it in */
    struct trend_observation seen;
    struct trend before, after;
    int next_line, next_session, speed_count; /* as they stood before it */
    int sessions;                             /* that count, this one included */
    struct date last;                         /* of the last one that counts */
};

struct speed_seen {
    struct speed_point point;
    int32_t day;
};

/* One lift, on one curve, up to a day. */
struct track {
    const struct lift *lift, *lent_by; /* lent_by: whose lines start it; the lift itself where it has its own */
    const struct block *block;         /* whose curve counts */
    struct ratio share;                /* of the lender's max */
    struct curve curve;
    struct date day; /* lines up to it, sessions before it are folded in */
    struct trend now;
    const struct max_line **lines; /* by date */
    int line_count, next_line;
    const int *sessions; /* that did the lift, by date */
    int session_count, next_session;
    VEC(struct fold) folds;
    VEC(struct speed_seen) speeds;
    struct numbers let_in; /* sessions that a second one agreed with */
    struct running last; /* the answer for `day` */
    bool has_last;
};

struct tracks {
    struct numbers numbers; /* of lifts beside the block's own curve */
    VEC(struct track *) list;
};

struct tracks *tracks_new(struct record *record)
{
    struct tracks *tracks = NEW(record->arena, struct tracks);
    tracks->numbers.arena = record->arena;
    return tracks;
}

/* ---- setting out ---- */

/* Undated lines first; of one day the later written last. */
static int lines_order(const void *a, const void *b)
{
    const struct max_line *one = *(const struct max_line *const *)a, *other = *(const struct max_line *const *)b;
    if (one->date.day != other->date.day)
        return one->date.day < other->date.day ? -1 : 1;
    return (one > other) - (one < other);
}

/* All lines of the lift that lends; of the undated ones the last written alone. */
static void track_lines(struct record *record, struct track *track)
{
    const struct athlete *athlete = record->athlete;
    track->lines = NEW_MANY(record->arena, const struct max_line *, athlete->max_count + 1);
    track->line_count = 0;
    for (int i = 0; i < athlete->max_count; i++)
        if (athlete->maxes[i].lift == track->lent_by)
            track->lines[track->line_count++] = &athlete->maxes[i];
    qsort(track->lines, (size_t)track->line_count, sizeof *track->lines, lines_order);
    while (track->line_count > 1 && !date_is_set(track->lines[1]->date)) {
        track->lines++;
        track->line_count--;
    }
}

static void track_sessions(struct record *record, struct track *track)
{
    const struct lift_days *days = record_days_of(record, track->lift);
    track->sessions = days ? days->sessions.at : NULL;
    track->session_count = days ? days->sessions.count : 0;
}

static void track_restart(struct track *track)
{
    track->now = (struct trend){ 0 };
    track->day = (struct date){ 0 };
    track->next_line = track->next_session = 0;
    track->folds.count = track->speeds.count = 0;
    track->let_in = (struct numbers){ .arena = track->let_in.arena };
    track->has_last = false;
}

static void track_lend(struct record *record, struct track *track, struct max_used max)
{
    const struct lift *from = max.lent_by ? max.lent_by : track->lift;
    if (from == track->lent_by)
        return;
    track->lent_by = from;
    track->share = ratio_int(1);
    for (const struct lift *lift = track->lift; lift != from; lift = lift->like)
        track->share = ratio_percent(track->share, lift->like_percent);
    track_lines(record, track);
    track_restart(track);
}

static struct track *track_for(struct record *record, const struct lift *lift, const struct block *block)
{
    const struct curve_row *row = block ? block->model : NULL;
    struct tracks *tracks = record->tracks;
    int at = numbers_give(&tracks->numbers, lift, (uint64_t)(uintptr_t)row);
    if (at < tracks->list.count)
        return tracks->list.at[at];
    struct track *track = NEW(record->arena, struct track);
    *track = (struct track){ .lift = lift,
                             .block = block,
                             .let_in.arena = record->arena,
                             .curve = history_curve(record->model, block, record->athlete, lift) };
    track_sessions(record, track);
    vec_add(record->arena, &record->tracks->list, track);
    return track;
}

void tracks_changed(struct record *record, struct date date)
{
    for (int i = 0; i < record->tracks->list.count; i++)
        if (date.day < record->tracks->list.at[i]->day.day)
            track_restart(record->tracks->list.at[i]);
}

/* ---- estimates ---- */

static struct trend_observation seen_line(const struct record *record, const struct track *track,
                                          const struct max_line *line)
{
    return (struct trend_observation){ .day = line->date.day,
                                       .dated = date_is_set(line->date),
                                       .source = line->estimated ? TREND_SET : TREND_TESTED,
                                       .n = history_line_reps(line),
                                       .max = ratio_mul(history_line_load(record->athlete, line, track->block),
                                                        track->share),
                                       .borrowed = track->lent_by != track->lift };
}

static bool seen_rating(const struct track *track, const struct record_set *set, struct trend_observation *out)
{
    if (!set->has_load || !set->counted || set->reps < 1 || !set->has_effort)
        return false;
    out->source = TREND_SET;
    out->n = curve_could_do(ratio_int(set->reps), set->effort);
    out->max = ratio_div(ratio_weight(set->load), curve_share(&track->curve, out->n));
    return true;
}

static bool tells_speed(const struct record_set *set)
{
    return set->has_load && set->counted && set->reps >= 1 && set->reps <= SPEED_REPS && set->has_speed;
}

static bool line_now(const struct track *track, int32_t day, struct line *line)
{
    struct speed_point points[SPEEDS_MOST];
    int count = 0;
    for (int i = track->speeds.count - 1; i >= 0 && count < SPEEDS_MOST && track->speeds.at[i].day >= day - SPEED_DAYS;
         i--)
        points[count++] = track->speeds.at[i].point;
    return line_of_speeds(points, count, line);
}

static bool seen_speed(const struct track *track, const struct record_set *set, struct trend_observation *out)
{
    struct line line;
    struct ratio share;
    if (!tells_speed(set) || !line_now(track, out->day, &line) || !line_share_at(&line, set->speed, &share))
        return false;
    out->source = TREND_SPEED;
    out->n = ratio_int(1);
    out->max = ratio_div(ratio_weight(set->load), share);
    return true;
}

static const struct record_lift *lift_in(const struct record_session *session, const struct lift *lift)
{
    int at = record_line_of(session, lift);
    return at >= 0 && at < session->lift_count && session->lifts[at].done ? &session->lifts[at] : NULL;
}

/* The session's highest estimate; a set with both counts by its rating. */
static bool seen_session(const struct track *track, const struct record_session *session, struct fold *fold)
{
    const struct record_lift *lift = lift_in(session, track->lift);
    for (int i = 0; lift && i < lift->set_count; i++) {
        struct trend_observation seen = { .day = session->diary->date.day, .dated = true };
        bool rated = seen_rating(track, &lift->sets[i], &seen);
        if (!rated && !seen_speed(track, &lift->sets[i], &seen))
            continue;
        if (fold->set && ratio_cmp(seen.max, fold->seen.max) <= 0)
            continue;
        fold->set = &lift->sets[i];
        fold->by_speed = !rated;
        fold->seen = seen;
    }
    return fold->set != NULL;
}

/* ---- folding in ---- */

static bool is_let_in(const struct record *record, const struct track *track, int session)
{
    return numbers_known(&track->let_in, NULL, (uint64_t)session) >= 0 || record->sessions[session].diary->lets_in;
}

/* The speeds of a session belong to the max as it stands after it. */
static void add_speeds(struct record *record, struct track *track, const struct record_session *session)
{
    const struct record_lift *lift = lift_in(session, track->lift);
    for (int i = 0; lift && i < lift->set_count; i++) {
        if (!tells_speed(&lift->sets[i]))
            continue;
        struct ratio share = ratio_div(ratio_weight(lift->sets[i].load), ratio_weight(trend_max(&track->now)));
        struct speed_seen seen = { { share, lift->sets[i].speed }, session->diary->date.day };
        vec_add(record->arena, &track->speeds, seen);
    }
}

/* An earlier one that stayed out and agrees: both count from there on. Its index, or -1. */
static int agreeing(const struct track *track, const struct fold *fold)
{
    for (int i = track->folds.count - 1; i >= 0 && fold->seen.day - track->folds.at[i].seen.day <= TREND_AGREE_DAYS; i--)
        if (!track->folds.at[i].in && trend_agrees(&track->folds.at[i].seen, &fold->seen))
            return i;
    return -1;
}

static void rewind_to(struct track *track, int index, int session)
{
    const struct fold *fold = &track->folds.at[index];
    numbers_give(&track->let_in, NULL, (uint64_t)fold->session);
    numbers_give(&track->let_in, NULL, (uint64_t)session);
    track->now = fold->before;
    track->next_line = fold->next_line;
    track->next_session = fold->next_session;
    track->speeds.count = fold->speed_count;
    track->folds.count = index;
}

static void fold_add(struct record *record, struct track *track, struct fold fold)
{
    const struct fold *last = track->folds.count ? &track->folds.at[track->folds.count - 1] : NULL;
    fold.before = track->now;
    fold.sessions = last ? last->sessions : 0;
    fold.last = last ? last->last : (struct date){ 0 };
    if (fold.in) {
        trend_observe(&track->now, &fold.seen);
        fold.sessions += !fold.line;
        fold.last = fold.line ? fold.line->date : record->sessions[fold.session].diary->date;
    }
    fold.after = track->now;
    vec_add(record->arena, &track->folds, fold);
}

static void fold_session(struct record *record, struct track *track, struct fold fold)
{
    const struct record_session *session = &record->sessions[fold.session];
    bool fits = seen_session(track, session, &fold);
    if (fits) {
        fold.far = trend_is_far(&track->now, &fold.seen);
        fold.in = !fold.far || is_let_in(record, track, fold.session);
        int other = fold.in ? -1 : agreeing(track, &fold);
        if (other >= 0) {
            rewind_to(track, other, fold.session);
            return;
        }
        fold_add(record, track, fold);
    }
    if (track->now.started && (!fits || fold.in))
        add_speeds(record, track, session);
}

/* On one day the max lines come first. */
static void track_advance(struct record *record, struct track *track, struct date day)
{
    for (;;) {
        const struct max_line *line = track->next_line < track->line_count ? track->lines[track->next_line] : NULL;
        int session = track->next_session < track->session_count ? track->sessions[track->next_session] : -1;
        int32_t done = session >= 0 ? record->sessions[session].diary->date.day : INT32_MAX;
        struct fold fold = { .session = session,
                             .in = true,
                             .next_line = track->next_line,
                             .next_session = track->next_session,
                             .speed_count = track->speeds.count };
        if (line && line->date.day <= day.day && line->date.day <= done) {
            fold.line = line;
            fold.seen = seen_line(record, track, line);
            track->next_line++;
            fold_add(record, track, fold);
        } else if (done < day.day) {
            track->next_session++;
            fold_session(record, track, fold);
        } else {
            break;
        }
    }
    track->day = day;
}

/* ---- the derivation ---- */

static struct reason *reason_of(struct record *record, enum reason_kind kind, struct span at,
                                const struct reason *before)
{
    struct reason *reason = NEW(record->arena, struct reason);
    *reason = (struct reason){ .kind = kind, .at = at, .before = before };
    return reason;
}

static const char *set_words(struct record *record, const struct fold *fold)
{
    enum weight_unit unit = record->athlete->gym->unit;
    const struct record_set *set = fold->set;
    struct weight size = { set->shown.e10 < 0 ? -set->shown.e10 : set->shown.e10 };
    const char *load = weight_text(record->arena, size, unit), *body = "";
    if (set->lift->loads == LOADS_BODYWEIGHT)
        body = set->shown.e10 < 0 ? "bodyweight minus " : "bodyweight plus ";
    if (fold->by_speed)
        return arena_format(record->arena, "%s%s x %d at %s m/s", body, load, set->reps,
                            dec_text(record->arena, set->speed));
    const char *meant = set->effort.e10 == set->rated.e10
                            ? ""
                            : arena_format(record->arena, ", which means %s", dec_text(record->arena, set->effort));
    return arena_format(record->arena, "%s%s x %d rpe %s%s", body, load, set->reps, dec_text(record->arena, set->rated),
                        meant);
}

static const struct reason *reason_line(struct record *record, const struct track *track, const struct fold *fold,
                                        const struct reason *before)
{
    struct reason *reason =
        reason_of(record, fold->line->estimated ? REASON_MAX_ESTIMATED : REASON_MAX, fold->line->at, before);
    reason->name = track->lent_by->name;
    reason->date = fold->line->date;
    reason->load = history_line_load(record->athlete, fold->line, track->block);
    for (const struct lift *lift = track->lift; lift != track->lent_by; lift = lift->like) {
        reason = reason_of(record, REASON_MAX_BORROWED, lift->like_at, reason);
        reason->name = arena_format(record->arena, "%s like %s", lift->name, lift->like->name);
        reason->amount = lift->like_percent;
    }
    return reason;
}

static const struct reason *reason_session(struct record *record, const struct fold *fold, const struct reason *before)
{
    bool starts = !fold->before.started;
    enum reason_kind kind = !fold->in ? REASON_RESULT_OUT : starts ? REASON_RESULT_FIRST : REASON_RESULT;
    struct reason *reason = reason_of(record, kind, fold->set->at, before);
    reason->name = set_words(record, fold);
    reason->date = record->sessions[fold->session].diary->date;
    reason->load = fold->seen.max;
    if (!starts)
        reason->amount.e10 = trend_max(&fold->before).e10;
    reason->other.e10 = fold->after.started ? trend_max(&fold->after).e10 : 0;
    return reason;
}

static const struct reason *reasons_of(struct record *record, const struct track *track, const struct running *running)
{
    const struct reason *reason = NULL;
    int first = track->folds.count > REASON_MOVES_MOST ? track->folds.count - REASON_MOVES_MOST : 0;
    if (first > 1) {
        struct reason *stood = reason_of(record, REASON_RUNNING_STOOD, (struct span){ 0 }, NULL);
        stood->load = ratio_weight(trend_max(&track->folds.at[first].before));
        stood->count = first;
        reason = stood;
    } else {
        first = 0;
    }
    for (int i = first; i < track->folds.count; i++) {
        const struct fold *fold = &track->folds.at[i];
        reason = fold->line ? reason_line(record, track, fold, reason) : reason_session(record, fold, reason);
    }
    struct reason *now = reason_of(record, REASON_RUNNING, (struct span){ 0 }, reason);
    now->name = track->lift->name;
    now->date = running->last;
    now->load = ratio_weight(running->max);
    now->amount.e10 = running->error.e10;
    now->count = running->sessions;
    return now;
}

/* ---- asking ---- */

struct running running_max(struct record *record, const struct lift *lift, struct date day, const struct block *block)
{
    if (!record)
        return (struct running){ 0 };
    struct track *track = track_for(record, lift, block);
    if (!track->session_count)
        return (struct running){ 0 };
    track_lend(record, track, history_max(record->athlete, lift, day, block));
    if (day.day < track->day.day)
        track_restart(track);
    if (track->has_last && track->day.day == day.day)
        return track->last;
    track_advance(record, track, day);
    struct running running = { 0 };
    if (track->folds.count) {
        const struct fold *fold = &track->folds.at[track->folds.count - 1];
        running.sessions = fold->sessions;
        running.last = fold->last;
        running.known = fold->sessions > 0;
    }
    if (running.known) {
        running.max = trend_max(&track->now);
        running.error = trend_error(&track->now, day.day);
        running.reason = reasons_of(record, track, &running);
    }
    track->last = running;
    track->has_last = true;
    return running;
}

int running_outliers(struct record *record, const struct lift *lift, const struct block *block,
                     const struct outlier **out)
{
    VEC(struct outlier) found = { 0 };
    struct track *track = track_for(record, lift, block);
    struct date last = date_plus(record->sessions[record->session_count - 1].diary->date, 1);
    running_max(record, lift, last, block);
    for (int i = 0; i < track->folds.count; i++) {
        const struct fold *fold = &track->folds.at[i];
        if (!fold->far || (fold->in && !record->sessions[fold->session].diary->lets_in))
            continue;
        struct outlier outlier = { .lift = lift,
                                   .session = &record->sessions[fold->session],
                                   .set = fold->set,
                                   .max = trend_max(&fold->before),
                                   .estimate = ratio_to_tenth_kg(fold->seen.max) };
        vec_add(record->arena, &found, outlier);
    }
    *out = found.at;
    return found.count;
}
