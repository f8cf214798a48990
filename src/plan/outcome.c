#include "plan/outcome.h"

const struct outcome outcome_best = { .made = true, .full = true, .weakest = -1 };

void outcome_add_printed(struct outcome *out, const struct work_group *group)
{
    if (group->reps_kind != REPS_COUNT)
        return;
    out->full &= group->state_low >= group->state_high;
    if (out->weakest < 0 || group->state_low < out->weakest)
        out->weakest = group->state_low;
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

/* What is being looked for of a group; NULL: nothing. */
static struct outcome *outcome_now(const struct work_group *group)
{
    return group->state && !group->left_out ? group->state->now : NULL;
}

/* The parts of a lift stand in the order of the day's entries. */
static int first_part(const struct record_lift *lift, const struct plan_entry *entry)
{
    int low = 0, high = lift->part_count; /* those below `low` are of entries before, those from `high` on are not */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (lift->parts[middle].entry < entry)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static void outcomes_of_entry(const struct record_session *session, const struct plan_entry *entry, const struct work_entry *work)
{
    const struct record_lift *lift = record_lift_of(session, entry);
    const char *held = held_by(lift);
    for (int i = 0; i < work->groups.count; i++) {
        struct outcome *out = outcome_now(&work->groups.at[i]);
        if (out && lift && lift->done)
            out->at = lift->done->at;
        if (out && held) {
            out->held = true;
            out->why = held;
        }
    }
    /* Parts and groups stand in one order, and a part has one group. */
    for (int i = held ? 0 : first_part(lift, entry), j = 0; !held && i < lift->part_count && lift->parts[i].entry == entry; i++) {
        while (j < work->groups.count && work->groups.at[j].group != lift->parts[i].groups->group)
            j++;
        if (j < work->groups.count && outcome_now(&work->groups.at[j]))
            outcome_of_part(&lift->parts[i], outcome_now(&work->groups.at[j]));
    }
}

void outcomes_done(const struct record_session *session, const struct plan_day *day, struct stint *stints, int count)
{
    bool missed = session->diary->missed;
    for (int i = 0; i < count; i++) {
        *stints[i].outcome = outcome_best;
        stints[i].outcome->at = session->diary->at;
        stints[i].outcome->held = missed;
        stints[i].outcome->why = missed ? "the session was missed" : NULL;
        stints[i].state->now = stints[i].outcome;
    }
    for (int i = 0; i < day->entry_count && !missed; i++)
        outcomes_of_entry(session, &day->entries[i], &stints->work->entries.at[i]);
    for (int i = 0; i < count; i++)
        stints[i].state->now = NULL;
}
