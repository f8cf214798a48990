#include "plan/record_index.h"

static uint64_t number_of_session(const struct record *record, const struct record_session *session)
{
    return (uint64_t)(session - record->sessions);
}

void record_index_line(const struct record *record, const struct record_session *session, const struct lift *lift, int place)
{
    struct record_index *index = record->index;
    if (numbers_give(&index->lines, lift, number_of_session(record, session)) == index->line_at.count)
        vec_add(index->arena, &index->line_at, place);
}

static void add_days(const struct record *record, struct record_index *index, int session)
{
    const struct diary_session *diary = &record->athlete->diary[session];
    for (int i = 0; i < diary->lift_count; i++) {
        int at = numbers_give(&index->lifts, diary->lifts[i].lift, 0);
        if (at == index->days.count)
            vec_add(index->arena, &index->days, (struct lift_days){ 0 });
        vec_add(index->arena, &index->days.at[at].sessions, session);
        if (diary->lifts[i].how != DONE_SKIPPED)
            vec_add(index->arena, &index->days.at[at].done, diary->date);
    }
}

struct record_index *record_index_new(const struct record *record)
{
    struct record_index *index = NEW(record->arena, struct record_index);
    *index = (struct record_index){ .arena = record->arena,
                                    .blocks.arena = record->arena,
                                    .lines.arena = record->arena,
                                    .lifts.arena = record->arena,
                                    .taken.arena = record->arena };
    for (int i = 0; i < record->block_count; i++)
        numbers_give(&index->blocks, record->blocks[i], 0);
    for (int i = 0; i < record->session_count; i++)
        add_days(record, index, i);
    return index;
}

int record_line_of(const struct record_session *session, const struct lift *lift)
{
    const struct record_index *index = session->record->index;
    int at = numbers_known(&index->lines, lift, number_of_session(session->record, session));
    return at < 0 ? -1 : index->line_at.at[at];
}

void record_index_take(const struct record *record, const struct record_session *session)
{
    struct record_index *index = record->index;
    if (numbers_give(&index->taken, session->day, 0) == index->takers.count)
        vec_add(index->arena, &index->takers, session);
}

const struct record_session *record_taker_of(const struct record *record, const struct plan_day *day)
{
    int at = numbers_known(&record->index->taken, day, 0);
    return at < 0 ? NULL : record->index->takers.at[at];
}

const struct lift_days *record_days_of(const struct record *record, const struct lift *lift)
{
    int at = numbers_known(&record->index->lifts, lift, 0);
    return at < 0 ? NULL : &record->index->days.at[at];
}
