/* The rules about athletes; rule.h is the contract. What the planner and the runner meet themselves has no function here. */
#include "check/ask.h"
#include "base/vec.h"
#include "plan/running.h"

enum {
    LAST_SESSIONS = 3,
    MISSED_LEAST = 2, /* missed-often */
    SPOTTED_SINGLE = 9,
    SPOTTED_SET = 10 /* no-spotter-note: rpe */
};

/* The block that covers a day of the diary; NULL: none does. */
static const struct block *block_on(const struct athlete_view *athlete, struct date date)
{
    for (int i = 0; i < athlete->block_count; i++)
        if (athlete->blocks[i].first.day <= date.day && date.day <= athlete->blocks[i].last.day)
            return athlete->blocks[i].block;
    return NULL;
}

static struct place_met diary_place(const struct athlete_view *athlete, struct date date, struct span at)
{
    return (struct place_met){ .block = block_on(athlete, date), .at = at, .level = LEVEL_WARNING };
}

/* ---- effort-honesty ---- */

static void ask_honesty(struct asking *asking, const struct athlete_view *athlete, const struct honesty *honesty)
{
    bool high = ratio_cmp(honesty->apart, ratio_int(0)) > 0;
    if (!honesty->off)
        return;
    rule_hit(asking, diary_place(athlete, honesty->last->date, honesty->last->at), honesty_advice(rule_arena(asking), athlete->athlete, honesty),
             "%s is rated %s points too %s on average over %d sets; up to 1.5 is usual", honesty->lift->name,
             rule_number(asking, high ? honesty->apart : ratio_sub(ratio_int(0), honesty->apart)), high ? "high" : "low", honesty->sets);
}

/* The ratings of each lift, the lifts in the order in which they are first rated. */
void rule_effort_honesty(struct asking *asking, const struct athlete_view *athlete)
{
    struct numbers lifts = { .arena = rule_arena(asking) };
    struct rating_list *lists = NEW_MANY(rule_arena(asking), struct rating_list, athlete->rating_count + 1);
    for (int i = 0; i < athlete->rating_count; i++) {
        struct rating_list *list = &lists[numbers_give(&lifts, athlete->ratings[i].lift, 0)];
        vec_add(rule_arena(asking), list, athlete->ratings[i]);
    }
    for (int i = 0; i < lifts.count; i++) {
        struct honesty honesty = honesty_of(lists[i].at, lists[i].count, lists[i].at[0].lift);
        ask_honesty(asking, athlete, &honesty);
    }
}

/* ---- unlikely-result ---- */

static void unlikely_lift(struct asking *asking, const struct athlete_view *athlete, const struct lift *lift)
{
    const struct outlier *outliers;
    enum weight_unit unit = athlete->athlete->gym->unit;
    int count = running_outliers(athlete->record, lift, NULL, &outliers);
    for (int i = 0; i < count; i++) {
        const struct outlier *out = &outliers[i];
        struct arena *arena = rule_arena(asking);
        rule_hit(asking, diary_place(athlete, out->session->diary->date, out->set->at),
                 "is the load right, and the reps? If they are, write `allow unlikely-result because \"…\"` in the session; a second one like it "
                 "within 8 weeks counts by itself",
                 "%s x %d at rpe %s says a max of %s in %s, far from the %s so far; it stays out of the running max", weight_text(arena, out->set->shown, unit),
                 out->set->reps, dec_text(arena, out->set->rated), weight_text(arena, out->estimate, unit), lift->name, weight_text(arena, out->max, unit));
    }
}

void rule_unlikely_result(struct asking *asking, const struct athlete_view *athlete)
{
    const struct model *model = athlete->model;
    for (int i = 0; athlete->record && i < model->lift_count; i++)
        unlikely_lift(asking, athlete, model->lifts[i]);
}

/* ---- missed-often ---- */

/* The last sessions of a lift, the latest first. */
struct last_sessions {
    const struct session_view *at[LAST_SESSIONS];
    int count;
};

static void missed_ask(struct asking *asking, const struct athlete_view *athlete, const struct last_sessions *last)
{
    const struct session_view *missed_last = NULL;
    int missed = 0;
    for (int i = 0; i < last->count; i++) {
        missed += last->at[i]->missed;
        if (last->at[i]->missed && !missed_last)
            missed_last = last->at[i];
    }
    if (missed >= MISSED_LEAST)
        rule_hit(asking, diary_place(athlete, missed_last->date, missed_last->at),
                 "lower it with `load down 5%` in an `adjust`, add a newer max, or ask what is the matter",
                 "%s was missed in %d of the last %d sessions", missed_last->lift->name, missed, last->count);
}

/* The lifts in the order of their last sessions. */
void rule_missed_often(struct asking *asking, const struct athlete_view *athlete)
{
    struct numbers lifts = { .arena = rule_arena(asking) };
    struct last_sessions *lists = NEW_MANY(rule_arena(asking), struct last_sessions, athlete->session_count + 1);
    for (int i = athlete->session_count - 1; i >= 0; i--) {
        struct last_sessions *last = &lists[numbers_give(&lifts, athlete->sessions[i].lift, 0)];
        if (last->count < LAST_SESSIONS)
            last->at[last->count++] = &athlete->sessions[i];
    }
    for (int i = lifts.count - 1; i >= 0; i--)
        missed_ask(asking, athlete, &lists[i]);
}

/* ---- no-spotter-note ---- */

static bool is_noted(const struct set_view *set)
{
    return set->group->group->note_count || entry_more(set->entry->entry)->note_count || set->entry->note_count ||
           set->day->day->note_count || set->day->note_count;
}

static bool wants_spotter(const struct set_view *set)
{
    if (!set->main || set->lift->loads != LOADS_BAR)
        return false;
    if (set->amrap)
        return true;
    if (is_single(set))
        return at_effort(set, SPOTTED_SINGLE);
    /* Above rpe 10 impossible-set speaks. */
    return at_effort(set, SPOTTED_SET) && !effort_above(set, dec_int(SPOTTED_SET));
}

void rule_no_spotter_note(struct asking *asking, const struct block_view *block)
{
    if (rule_is_off(asking, block))
        return;
    for (int i = 0; i < block->set_count; i++) {
        const struct set_view *set = &block->sets[i];
        if (set->week->kind != WEEK_TRAINING || !wants_spotter(set) || is_noted(set))
            continue;
        const char *what = set->amrap ? "goes for as many reps as possible"
                                      : rule_text(asking, "is at rpe %s", rule_number(asking, effort_of(set)));
        rule_hit(asking, met_set(block, set),
                 "add a line such as `note \"Spotters both sides\"` to the set, the lift or the day",
                 "%s %s, and nothing is said about spotters or safety bars", set->lift->name, what);
    }
}
