#include "plan/outcome.h"

/* Before any set is looked at. */
static const struct outcome outcome_best = { .made = true, .full = true, .weakest = -1 };

/* All of it done as printed: made, and full when the target was the top of the range. */
bool outcome_as_printed(const struct work_day *day, const struct state *state, struct outcome *out)
{
    bool met = false;
    *out = outcome_best;
    for (int i = 0; i < day->entries.count; i++)
        for (int j = 0; j < day->entries.at[i].groups.count; j++) {
            const struct work_group *group = &day->entries.at[i].groups.at[j];
            if (group->state != state || group->left_out)
                continue;
            met = true;
            if (group->reps_kind != REPS_COUNT)
                continue;
            out->full &= group->state_low >= group->state_high;
            if (out->weakest < 0 || group->state_low < out->weakest)
                out->weakest = group->state_low;
        }
    return met;
}

/* Rated 2 or more below the printed rpe; without a rating or a printed one there is no easy. */
static bool is_easy(const struct plan_run *run, const struct record_set *last)
{
    return last->has_effort && run->has_expected && !run->expected_under_one &&
           last->effort.e10 <= run->expected.e10 - 2 * DEC_ONE;
}

/* Every set at its printed load and target reps or above. */
static void outcome_of_part(const struct record_part *part, struct outcome *out)
{
    const struct plan_group *group = part->groups;
    const struct plan_run *run = group->runs;
    bool ranged = group->reps_kind == REPS_COUNT;
    out->made &= part->set_count >= record_sets_printed(part);
    out->full &= part->set_count >= record_sets_printed(part);
    for (int i = 0; i < part->set_count; i++) {
        const struct record_set *set = &part->sets[i];
        bool heavy = !run->has_load || set->shown.e10 >= run->shown.e10;
        out->made &= heavy && set->reps >= group->reps_low;
        out->full &= heavy && set->reps >= (ranged ? group->reps_high : group->reps_low);
        if (ranged && (out->weakest < 0 || set->reps < out->weakest))
            out->weakest = set->reps;
    }
    out->easy = out->made && part->set_count && is_easy(run, &part->sets[part->set_count - 1]);
}

static const char *held_by(const struct record_lift *lift)
{
    if (!lift || lift->how == RECORD_UNNAMED)
        return "not in the diary of that day";
    return lift->how == RECORD_SKIPPED ? "skipped"
           : lift->other_choice        ? "another lift was done"
           : lift->how != RECORD_DONE  ? "its parts fit no set groups"
                                       : NULL;
}

static void outcome_of_entry(const struct record_session *session, const struct plan_entry *entry,
                             const struct work_entry *work, const struct state *state, struct outcome *out)
{
    const struct record_lift *lift = record_lift_of(session, entry);
    bool concerned = false;
    for (int i = 0; i < work->groups.count; i++)
        concerned |= work->groups.at[i].state == state && !work->groups.at[i].left_out;
    if (!concerned)
        return;
    if (lift && lift->done)
        out->at = lift->done->at;
    if (held_by(lift)) {
        out->held = true;
        out->why = held_by(lift);
        return;
    }
    for (int i = 0; i < lift->part_count; i++)
        for (int j = 0; j < work->groups.count; j++)
            if (lift->parts[i].entry == entry && lift->parts[i].groups->group == work->groups.at[j].group &&
                work->groups.at[j].state == state)
                outcome_of_part(&lift->parts[i], out);
}

struct outcome outcome_of(const struct planning *p, const struct stint *stint)
{
    struct outcome out;
    outcome_as_printed(stint->work, stint->state, &out);
    if (!stint->known)
        return out;
    const struct plan_day *day = &p->plan->weeks[stint->week - 1].days[stint->day];
    const struct record_session *session = record_of_day(p->record, p->plan, stint->week, day);
    out = outcome_best;
    out.at = session->diary->at;
    if (session->diary->missed) {
        out.held = true;
        out.why = "the session was missed";
    }
    for (int i = 0; i < day->entry_count && !session->diary->missed; i++)
        outcome_of_entry(session, &day->entries[i], &stint->work->entries.at[i], stint->state, &out);
    return out;
}
