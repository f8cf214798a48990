#include "plan/record.h"

#include "base/vec.h"
#include "model/history.h"
#include "plan/record_index.h"
#include "plan/running.h"
#include "plan/unmatched.h"
#include "plan/work.h"

#include <stdlib.h>

/* ---- which block and week a session belongs to ---- */

/* Her blocks by their starts, each with the day after its last week. */
struct block_days {
    int32_t first, past;
    int block;
};

static int by_first_day(const void *a, const void *b)
{
    const struct block_days *one = a, *other = b;
    return one->first != other->first ? (one->first > other->first) - (one->first < other->first) : one->block - other->block;
}

static struct block_days *block_days_of(const struct record *record)
{
    struct block_days *days = NEW_MANY(record->arena, struct block_days, record->block_count + 1);
    for (int i = 0; i < record->block_count; i++) {
        const struct block *block = record->blocks[i];
        days[i] = (struct block_days){ block->start.day, block->start.day + 7 * plan_week_count(block, record->athlete), i };
    }
    qsort(days, (size_t)record->block_count, sizeof *days, by_first_day);
    return days;
}

/* Which block each session lies in, of several the first of hers; -1: none. The diary goes by date, so blocks that are over by one
 * session are over for all after it. */
static void blocks_find(struct record *record)
{
    const struct block_days *days = block_days_of(record);
    int *now = NEW_MANY(record->arena, int, record->block_count + 1), now_count = 0, begun = 0; /* now: not over yet */
    for (int i = 0; i < record->session_count; i++) {
        struct record_session *session = &record->sessions[i];
        int kept = 0;
        while (begun < record->block_count && days[begun].first <= session->diary->date.day)
            now[now_count++] = begun++;
        session->block = -1;
        for (int j = 0; j < now_count; j++) {
            if (days[now[j]].past <= session->diary->date.day)
                continue;
            now[kept++] = now[j];
            if (session->block < 0 || days[now[j]].block < session->block)
                session->block = days[now[j]].block;
        }
        now_count = kept;
    }
}

const struct block *record_block(const struct record *record, const struct record_session *session)
{
    return session->block >= 0 ? record->blocks[session->block] : NULL;
}

/* ---- what was done, as totals ---- */

/* On lifts that load the body: with what she weighed by then. */
static bool total_of(const struct record *record, const struct lift *lift, struct date date, struct weight shown,
                     struct weight *total)
{
    *total = shown;
    if (lift->loads != LOADS_BODYWEIGHT)
        return shown.e10 > 0;
    const struct bodyweight_line *line = history_bodyweight(record->athlete, date_plus(date, 1));
    if (!line)
        return false;
    total->e10 += line->weight.e10;
    return total->e10 > 0;
}

static struct record_set set_of(const struct record *record, const struct diary_session *diary, const struct lift *lift,
                                const struct done_set *done)
{
    struct record_set set = { .lift = lift,
                              .shown = done->load,
                              .reps = done->reps,
                              .counted = done->counted,
                              .has_effort = done->has_effort,
                              .rated = done->effort,
                              .has_speed = done->has_speed,
                              .speed = done->speed,
                              .at = done->at };
    set.has_load = total_of(record, lift, diary->date, done->load, &set.load);
    set.effort = history_effort(record->athlete, lift, done->effort);
    return set;
}

static struct record_lift lift_done(struct record *record, const struct diary_session *diary,
                                    const struct done_lift *done)
{
    struct record_lift lift = { .lift = done->lift,
                                .done = done,
                                .how = done->how == DONE_SKIPPED ? RECORD_SKIPPED : RECORD_EXTRA };
    int count = 0;
    for (int i = 0; i < done->part_count; i++)
        count += done->parts[i].set_count;
    struct record_set *sets = NEW_MANY(record->arena, struct record_set, count + 1);
    for (int i = 0; i < done->part_count; i++)
        for (int j = 0; j < done->parts[i].set_count; j++)
            sets[lift.set_count++] = set_of(record, diary, done->lift, &done->parts[i].sets[j]);
    lift.sets = sets;
    return lift;
}

static void session_fill(struct record *record, struct record_session *session)
{
    const struct diary_session *diary = session->diary;
    struct record_lift *lifts = NEW_MANY(record->arena, struct record_lift, diary->lift_count + 1);
    for (int i = 0; i < diary->lift_count; i++)
        lifts[i] = lift_done(record, diary, &diary->lifts[i]);
    session->lifts = lifts;
    session->lift_count = diary->lift_count;
}

/* ---- the groups of a day, as written: warm-ups aside, what one written group came to together ---- */

struct part_list {
    VEC(struct record_part) list;
};

static void parts_of_entry(struct record *record, const struct plan_entry *entry, struct part_list *out)
{
    for (int i = 0; i < entry->group_count; i++) {
        const struct plan_group *group = &entry->groups[i];
        struct record_part *last = out->list.count ? &out->list.at[out->list.count - 1] : NULL;
        if (group->role == ROLE_WARM_UP)
            continue;
        if (last && last->entry == entry && last->groups->group == group->group) {
            last->group_count++;
            continue;
        }
        struct record_part part = { .entry = entry, .groups = group, .group_count = 1 };
        vec_add(record->arena, &out->list, part);
    }
}

static const struct done_lift *done_of(const struct record_session *session, const struct lift *lift)
{
    int at = record_line_of(session, lift);
    return at >= 0 && at < session->diary->lift_count ? &session->diary->lifts[at] : NULL;
}

/* The lift that the diary has for an entry: the planned one, or of `row or pulldown` the one that was done; NULL: neither. */
static const struct lift *lift_for(const struct record_session *session, const struct plan_entry *entry)
{
    const struct done_lift *best = done_of(session, entry->lift);
    for (int i = 0; i < entry->choice_count && (!best || best->how == DONE_SKIPPED); i++) {
        const struct done_lift *other = done_of(session, entry->choices[i]);
        best = other && (!best || other->how != DONE_SKIPPED) ? other : best;
    }
    return best ? best->lift : NULL;
}

/* The entries of the session's day, by the lift that the diary has for them, else by their own. */
static struct places entries_by_lift(const struct record *record, const struct record_session *session)
{
    struct places entries = { .arena = record->arena };
    for (int i = 0; i < session->day->entry_count; i++) {
        const struct lift *done = lift_for(session, &session->day->entries[i]);
        places_add(&entries, done ? done : session->day->entries[i].lift, 0, i);
    }
    return entries;
}

static struct part_list parts_of_lift(struct record *record, const struct record_session *session, const struct places *entries,
                                      struct record_lift *lift)
{
    struct part_list parts = { 0 };
    struct place_list places = places_of(entries, lift->lift, 0);
    for (int i = 0; i < places.at.count; i++) {
        const struct plan_entry *entry = &session->day->entries[places.at.at[i]];
        lift->other_choice |= entry->lift != lift->lift;
        parts_of_entry(record, entry, &parts);
    }
    return parts;
}

/* ---- as planned: printed loads and target reps ---- */

int record_reps_planned(const struct plan_group *group)
{
    if (group_more(group->group)->progression || group->reps_kind == REPS_AMRAP)
        return group->reps_low;
    return (group->reps_low + group->reps_high + 1) / 2;
}

/* The load printed for a lift says nothing of the other one of `row or pulldown`. */
static void sets_as_planned(const struct record_part *part, struct span at, struct record_lift *out,
                            struct record_set *sets)
{
    for (int i = 0; i < part->group_count; i++)
        for (int j = 0; j < part->groups[i].run_count; j++) {
            const struct plan_run *run = &part->groups[i].runs[j];
            enum reps_kind kind = part->groups[i].reps_kind;
            struct record_set set = { .lift = out->lift,
                                      .has_load = run->has_load && run->load.e10 > 0 && !out->other_choice,
                                      .load = run->load,
                                      .shown = run->shown,
                                      .reps = record_reps_planned(&part->groups[i]),
                                      .counted = kind == REPS_COUNT || kind == REPS_CLUSTER,
                                      .as_planned = true,
                                      .at = at };
            for (int k = 0; k < (run->sets ? run->sets : 1); k++)
                sets[out->set_count++] = set;
        }
}

static int sets_in(const struct record_part *part)
{
    int count = 0;
    for (int i = 0; i < part->group_count; i++)
        for (int j = 0; j < part->groups[i].run_count; j++)
            count += part->groups[i].runs[j].sets ? part->groups[i].runs[j].sets : 1;
    return count;
}

static void lift_as_planned(struct record *record, struct record_lift *lift, struct part_list *parts)
{
    int count = 0;
    for (int i = 0; i < parts->list.count; i++)
        count += sets_in(&parts->list.at[i]);
    struct record_set *sets = NEW_MANY(record->arena, struct record_set, count + 1);
    lift->set_count = 0;
    for (int i = 0; i < parts->list.count; i++) {
        struct record_part *part = &parts->list.at[i];
        part->sets = &sets[lift->set_count];
        part->set_count = sets_in(part);
        sets_as_planned(part, lift->done->at, lift, sets);
    }
    if (lift->set_count) {
        struct record_set *last = &sets[lift->set_count - 1];
        last->has_effort = lift->done->has_effort;
        last->rated = lift->done->effort;
        last->effort = history_effort(record->athlete, lift->lift, lift->done->effort);
        last->has_speed = lift->done->has_speed;
        last->speed = lift->done->speed;
    }
    lift->sets = sets;
    lift->how = RECORD_DONE;
}

/* ---- matching ---- */

static void lift_match(struct record *record, const struct record_session *session, const struct places *entries,
                       struct record_lift *lift)
{
    struct part_list parts = parts_of_lift(record, session, entries, lift);
    int at = 0;
    if (!parts.list.count) {
        if (lift->done->how == DONE_AS_PLANNED)
            unmatched_lift(record, session, lift);
        return;
    }
    lift->parts = parts.list.at;
    lift->part_count = parts.list.count;
    if (lift->done->how == DONE_AS_PLANNED) {
        lift_as_planned(record, lift, &parts);
        return;
    }
    if (lift->how == RECORD_SKIPPED)
        return;
    lift->how = lift->done->part_count == parts.list.count ? RECORD_DONE : RECORD_UNEVEN;
    if (lift->how == RECORD_UNEVEN) {
        unmatched_parts(record, session, lift, parts.list.count);
        return;
    }
    struct record_set *sets = NEW_MANY(record->arena, struct record_set, lift->set_count + 1);
    for (int i = 0; i < parts.list.count; i++) {
        enum reps_kind kind = parts.list.at[i].groups->reps_kind;
        parts.list.at[i].sets = &sets[at];
        parts.list.at[i].set_count = lift->done->parts[i].set_count;
        for (int j = 0; j < lift->done->parts[i].set_count; j++, at++) {
            sets[at] = lift->sets[at];
            /* 20 for `30 s` or `20 m` needs no unit, and is no number of reps. */
            sets[at].counted &= kind != REPS_SECONDS && kind != REPS_METRES;
        }
    }
    lift->sets = sets;
}

static const struct progression *progression_in(const struct plan_entry *entry)
{
    for (int i = 0; i < entry->group_count; i++)
        if (group_more(entry->groups[i].group)->progression)
            return group_more(entry->groups[i].group)->progression;
    return NULL;
}

/* Planned lifts of which the diary says nothing, after those it names. */
static void add_unnamed(struct record *record, struct record_session *session, const struct places *entries)
{
    const struct plan_day *day = session->day;
    struct record_lift *lifts = NEW_MANY(record->arena, struct record_lift, session->lift_count + day->entry_count + 1);
    int count = session->lift_count;
    for (int i = 0; i < count; i++)
        lifts[i] = session->lifts[i];
    for (int i = 0; i < day->entry_count; i++) {
        const struct plan_entry *entry = &day->entries[i];
        if (lift_for(session, entry) || record_line_of(session, entry->lift) >= 0)
            continue;
        record_index_line(record, session, entry->lift, count);
        struct record_lift *lift = &lifts[count++];
        *lift = (struct record_lift){ .lift = entry->lift, .how = RECORD_UNNAMED };
        struct part_list parts = parts_of_lift(record, session, entries, lift);
        lift->parts = parts.list.at;
        lift->part_count = parts.list.count;
        if (progression_in(entry))
            unmatched_progression(record, session, entry->lift, progression_in(entry));
    }
    session->lifts = lifts;
    session->lift_count = count;
}

/* The sessions of one week of a block, by date: part of record->by_week. */
struct week_sessions {
    const struct session_place *first, *past;
};

static int places_order(const void *a, const void *b)
{
    const struct session_place *one = a, *other = b;
    if (one->block != other->block)
        return one->block - other->block;
    return one->week != other->week ? one->week - other->week : one->session - other->session;
}

static struct week_sessions sessions_of(const struct record *record, const struct block *block, int week)
{
    const struct session_place *end = record->by_week + record->session_count, *low = record->by_week, *high = end;
    struct session_place wanted = { numbers_known(&record->index->blocks, block, 0), week, -1 };
    while (low < high) {
        const struct session_place *middle = low + (high - low) / 2;
        if (places_order(middle, &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    struct week_sessions found = { low, low };
    while (found.past < end && found.past->block == wanted.block && found.past->week == week)
        found.past++;
    return found;
}

/* The days of a week by label, and by date beside nothing. */
static struct places days_by_name(const struct record *record, const struct plan_week *week)
{
    struct places days = { .arena = record->arena };
    for (int i = 0; i < week->day_count; i++) {
        places_add(&days, week->days[i].day->label, 0, i);
        if (date_is_set(week->days[i].date))
            places_add(&days, NULL, (uint64_t)week->days[i].date.day, i);
    }
    return days;
}

/* The day of its label, of several that of its date, else the first not yet taken; without a label the day of its date. */
static const struct plan_day *day_for(const struct record *record, const struct places *days,
                                      const struct record_session *session, const struct plan_week *week)
{
    const struct diary_session *diary = session->diary;
    const struct plan_day *last = NULL;
    struct place_list named = places_of(days, diary->label, diary->label ? 0 : (uint64_t)diary->date.day);
    for (int i = 0; i < named.at.count; i++) {
        const struct plan_day *day = &week->days[named.at.at[i]];
        if (diary->label && date_is_set(day->date) && day->date.day == diary->date.day)
            return day;
        if (!last || record_taker_of(record, last))
            last = day;
    }
    return last;
}

static void session_match(struct record *record, const struct places *days, struct record_session *session,
                          const struct plan_week *week)
{
    const struct plan_day *day = day_for(record, days, session, week);
    const struct record_session *first = day ? record_taker_of(record, day) : NULL;
    session->doubled = first != NULL;
    if (first)
        unmatched_doubled(record, session, first);
    if (!day || first)
        return;
    session->day = day;
    record_index_take(record, session);
    if (session->diary->missed)
        return;
    struct places entries = entries_by_lift(record, session);
    struct record_lift *lifts = NEW_MANY(record->arena, struct record_lift, session->lift_count + 1);
    for (int i = 0; i < session->lift_count; i++) {
        lifts[i] = session->lifts[i];
        lift_match(record, session, &entries, &lifts[i]);
    }
    session->lifts = lifts;
    add_unnamed(record, session, &entries);
}

struct record *record_new(struct arena *scratch, const struct model *model, const struct athlete *athlete,
                          const struct block *const *blocks, int block_count)
{
    if (!athlete->diary_count)
        return NULL;
    struct record *record = NEW(scratch, struct record);
    *record = (struct record){ .arena = scratch,
                               .model = model,
                               .athlete = athlete,
                               .blocks = blocks,
                               .block_count = block_count,
                               .sessions = NEW_MANY(scratch, struct record_session, athlete->diary_count),
                               .session_count = athlete->diary_count };
    for (int i = 0; i < athlete->diary_count; i++)
        record->sessions[i] = (struct record_session){ .diary = &athlete->diary[i], .record = record };
    record->index = record_index_new(record);
    blocks_find(record);
    struct session_place *places = NEW_MANY(scratch, struct session_place, athlete->diary_count);
    for (int i = 0; i < athlete->diary_count; i++) {
        const struct diary_session *diary = &athlete->diary[i];
        struct record_session *session = &record->sessions[i];
        for (int j = 0; j < diary->lift_count; j++)
            record_index_line(record, session, diary->lifts[j].lift, j);
        if (session->block >= 0)
            session->week =
                diary->week ? diary->week : (diary->date.day - record->blocks[session->block]->start.day) / 7 + 1;
        if (!diary->missed)
            session_fill(record, session);
        places[i] = (struct session_place){ session->block, session->week, i };
    }
    qsort(places, (size_t)athlete->diary_count, sizeof *places, places_order);
    record->by_week = places;
    record->tracks = tracks_new(record);
    return record;
}

void record_take_week(struct record *record, const struct plan *plan, const struct plan_week *week)
{
    struct week_sessions among = sessions_of(record, plan->block, week->number);
    struct places days = { .arena = record->arena };
    if (among.first < among.past)
        days = days_by_name(record, week);
    for (const struct session_place *place = among.first; place < among.past; place++) {
        struct record_session *session = &record->sessions[place->session];
        session_match(record, &days, session, week);
        tracks_changed(record, session->diary->date);
    }
}

void record_finish(struct record *record)
{
    for (int i = 0; i < record->session_count; i++) {
        struct record_session *session = &record->sessions[i];
        for (int j = 0; j < session->lift_count; j++)
            if (session->lifts[j].done)
                unmatched_bare(record, session, &session->lifts[j]);
        if (!session->day && !session->doubled)
            unmatched_session(record, session);
    }
}

/* ---- looking up ---- */

const struct record_session *record_of_day(const struct record *record, const struct plan_day *day)
{
    return record ? record_taker_of(record, day) : NULL;
}

const struct record_lift *record_lift_of(const struct record_session *session, const struct plan_entry *entry)
{
    const struct lift *done = lift_for(session, entry);
    int at = record_line_of(session, done ? done : entry->lift);
    return at >= 0 && at < session->lift_count ? &session->lifts[at] : NULL;
}

int record_sets_printed(const struct record_part *part)
{
    int rounds = part->entry->rounds ? part->entry->rounds : 1, sets = 0;
    for (int i = 0; i < part->group_count; i++)
        sets += part->groups[i].reps_kind == REPS_TOTAL ? 1 : part->groups[i].sets_low * rounds;
    return sets;
}

static bool asks_load(enum load_kind kind)
{
    return kind != LOAD_NONE && kind != LOAD_EFFORT && kind != LOAD_DROP && kind != LOAD_SAME &&
           kind != LOAD_PERCENT_OF_DAY;
}

struct record_beside record_beside(const struct record_part *part, int set)
{
    struct record_beside beside = { 0 };
    for (int i = 0; i < part->group_count; i++)
        for (int j = 0; j < part->groups[i].run_count; j++) {
            beside = (struct record_beside){ &part->groups[i], &part->groups[i].runs[j] };
            set -= beside.run->sets;
            if (set < 0)
                return beside;
        }
    return beside;
}

bool record_part_missed(const struct record_part *part)
{
    bool missed = part->set_count < record_sets_printed(part);
    for (int i = 0; i < part->set_count && !missed; i++) {
        const struct record_set *set = &part->sets[i];
        struct record_beside at = record_beside(part, i);
        missed = (at.run->has_load && asks_load(at.group->group->load_kind) && set->shown.e10 < at.run->shown.e10) ||
                 (at.group->reps_kind != REPS_TOTAL && set->reps < at.group->reps_low);
    }
    return missed;
}

struct date record_last_day(const struct record *record, const struct lift *lift, struct date day)
{
    const struct lift_days *days = record ? record_days_of(record, lift) : NULL;
    int low = 0, high = days ? days->done.count : 0; /* those below `low` are before the day, those from `high` on are not */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (days->done.at[middle].day < day.day)
            low = middle + 1;
        else
            high = middle;
    }
    return low ? days->done.at[low - 1] : (struct date){ 0 };
}
