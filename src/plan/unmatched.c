#include "plan/unmatched.h"

static struct finding *say(const struct record *record, const struct record_session *session, enum kind kind,
                           struct span at, const char *says)
{
    struct finding *finding = diag_add(record->model->findings, kind, at, "%s", says);
    struct setting setting = { .athlete = record->athlete->name, .day = session->diary->label, .week = session->week };
    const struct block *block = record_block(record, session);
    if (block)
        setting.block = block->name;
    diag_setting(record->model->findings, finding, setting);
    return finding;
}

void unmatched_parts(const struct record *record, const struct record_session *session, const struct record_lift *lift,
                     int parts)
{
    struct finding *finding =
        say(record, session, KIND_UNMATCHED_DIARY, lift->done->at,
            arena_format(record->arena, "%s has %d set group%s in the plan of this day, and %d part%s here",
                         lift->lift->name, parts, parts == 1 ? "" : "s", lift->done->part_count,
                         lift->done->part_count == 1 ? "" : "s"));
    diag_help(record->model->findings, finding,
              "write one part for each group, with `then` between them, `x 0` for one not done; warm-ups are left out. "
              "As it is it feeds the running max alone");
}

void unmatched_lift(const struct record *record, const struct record_session *session, const struct record_lift *lift)
{
    struct finding *finding =
        say(record, session, KIND_UNMATCHED_DIARY, lift->done->at,
            arena_format(record->arena, "day %s does not train %s, so `as planned` stands for nothing",
                         session->day->day->label, lift->lift->name));
    diag_help(record->model->findings, finding, "write what was done: %s 50 kg x 5, 5, 5 rpe 7", lift->lift->name);
}

void unmatched_progression(const struct record *record, const struct record_session *session, const struct lift *lift,
                           const struct progression *progression)
{
    struct finding *finding =
        say(record, session, KIND_UNMATCHED_DIARY, session->diary->at,
            arena_format(record->arena, "this session says nothing of %s, whose progression %s waits for it",
                         lift->name, progression->name));
    diag_help(record->model->findings, finding, "write `%s as planned`, what was done, or `%s skipped because \"…\"`",
              lift->name, lift->name);
}

void unmatched_doubled(const struct record *record, const struct record_session *session,
                       const struct record_session *first)
{
    struct finding *finding = say(record, session, KIND_DIARY, session->diary->at, "this session has an entry already");
    diag_related(record->model->findings, finding, first->diary->at, "the first one is here");
    diag_help(record->model->findings, finding, "put both into one, or give this one its own date, label or `week`");
}

void unmatched_session(const struct record *record, const struct record_session *session)
{
    const struct diary_session *diary = session->diary;
    const char *date = date_text(record->arena, diary->date);
    const struct block *block = record_block(record, session);
    const char *says =
        !block ? arena_format(record->arena, "%s lies in no block of %s", date, record->athlete->name)
        : session->week > plan_week_count(block, record->athlete)
            ? arena_format(record->arena, "%s has no week %d", block->name, session->week)
        : diary->label ? arena_format(record->arena, "week %d of %s has no day %s for this", session->week, block->name, diary->label)
                       : arena_format(record->arena, "nothing is planned for %s in week %d of %s", date, session->week, block->name);
    struct finding *finding = say(record, session, KIND_UNMATCHED_DIARY, diary->at, says);
    diag_help(
        record->model->findings, finding, "%s; left as it is, what was lifted feeds the running max and nothing else",
        !block ? "mend the date if it is wrong"
               : "write the day's label behind the date, and `week 2` where it belongs to another week");
}

/* A load without a unit that is lighter than the empty bar: 5 x 5. */
void unmatched_bare(const struct record *record, const struct record_session *session, const struct record_lift *lift)
{
    const struct gym *gym = session->day ? session->day->gym : record->athlete->gym;
    if (lift->lift->loads != LOADS_BAR)
        return;
    const struct ladder *ladder = ladder_for(gym, lift->lift);
    struct weight empty = ladder->at ? ladder->at[0] : ladder->first;
    for (int i = 0; i < lift->done->part_count; i++)
        for (int j = 0; j < lift->done->parts[i].set_count; j++) {
            const struct done_set *set = &lift->done->parts[i].sets[j];
            if (!set->bare || set->load.e10 >= empty.e10 || !set->reps)
                continue;
            struct finding *finding =
                say(record, session, KIND_DIARY, lift->done->parts[i].at,
                    arena_format(record->arena, "%s with %s is less than the empty bar (%s)", lift->lift->name,
                                 weight_text(record->arena, set->load, gym->unit),
                                 weight_text(record->arena, empty, gym->unit)));
            diag_help(record->model->findings, finding,
                      "the load comes first, then the reps of each set: 90 kg x 5, 5, 5");
            return;
        }
}
