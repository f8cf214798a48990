/* The rules about athletes; rule.h is the contract. What the planner and the runner meet themselves has no function here. */
#include "check/ask.h"
#include "plan/running.h"

enum {
    RATINGS_LEAST = 6, /* effort-honesty: sets that make a habit */
    LAST_SESSIONS = 3,
    MISSED_LEAST = 2, /* missed-often */
    SPOTTED_SINGLE = 9,
    SPOTTED_SET = 10 /* no-spotter-note: rpe */
};
static const struct ratio honest = { 3, 2 }; /* effort-honesty: points of rpe either way */

/* The block that covers a day of the diary; NULL: none does. */
static const struct block_view *block_on(const struct athlete_view *athlete, struct date date)
{
    for (int i = 0; i < athlete->block_count; i++)
        if (athlete->blocks[i].first.day <= date.day && date.day <= athlete->blocks[i].last.day)
            return &athlete->blocks[i];
    return NULL;
}

static struct place_met diary_place(const struct athlete_view *athlete, struct date date, struct span at)
{
    return (struct place_met){ .block = block_on(athlete, date), .at = at, .level = LEVEL_WARNING };
}

/* ---- effort-honesty ---- */

static bool first_rating(const struct athlete_view *athlete, int index)
{
    for (int i = 0; i < index; i++)
        if (athlete->ratings[i].lift == athlete->ratings[index].lift)
            return false;
    return true;
}

static struct dec half_in_range(struct ratio effort)
{
    struct dec half = ratio_nearest(effort, dec_halves(1));
    return half.e10 < 0 ? dec_int(0) : half.e10 > 10 * DEC_ONE ? dec_int(10) : half;
}

static const struct effort_line *effort_line_of(const struct athlete *athlete, const struct lift *lift)
{
    for (int i = 0; i < athlete->effort_count; i++)
        if (athlete->efforts[i].lift == lift)
            return &athlete->efforts[i];
    return NULL;
}

static void honesty_of(struct asking *asking, const struct athlete_view *athlete, const struct lift *lift)
{
    const struct rating_view *last = NULL;
    struct ratio rated = ratio_int(0), apart = ratio_int(0), written = ratio_int(0);
    int sets = 0;
    for (const struct rating_view *rating = athlete->ratings; rating < athlete->ratings + athlete->rating_count;
         rating++)
        if (rating->lift == lift) {
            rated = ratio_add(rated, rating->rated);
            apart = ratio_add(apart, ratio_sub(rating->rated, rating->worked_out));
            written = ratio_add(written, rating->written);
            last = rating;
            sets++;
        }
    if (sets < RATINGS_LEAST)
        return;
    rated = ratio_div(rated, ratio_int(sets)), apart = ratio_div(apart, ratio_int(sets));
    written = ratio_div(written, ratio_int(sets));
    bool high = ratio_cmp(apart, ratio_int(0)) > 0;
    struct ratio size = high ? apart : ratio_sub(ratio_int(0), apart);
    if (ratio_cmp(size, honest) <= 0)
        return;
    const struct effort_line *line = effort_line_of(athlete->athlete, lift);
    const char *says = rule_text(asking, "`effort %s %s means %s`", lift->name, dec_text(rule_arena(asking), half_in_range(written)),
                                 dec_text(rule_arena(asking), half_in_range(ratio_sub(rated, apart))));
    const char *help = line ? rule_text(asking, "change her line `effort %s %s means %s` into %s, so that the diary counts what is done", lift->name,
                                        dec_text(rule_arena(asking), line->rated), dec_text(rule_arena(asking), line->meant), says)
                            : rule_text(asking, "add %s to the athlete, so that the diary counts what is done", says);
    rule_hit(asking, diary_place(athlete, last->date, last->at), help,
             "%s is rated %s points too %s on average over %d sets; up to 1.5 is usual", lift->name,
             rule_number(asking, size), high ? "high" : "low", sets);
}

void rule_effort_honesty(struct asking *asking, const struct athlete_view *athlete)
{
    for (int i = 0; i < athlete->rating_count; i++)
        if (first_rating(athlete, i))
            honesty_of(asking, athlete, athlete->ratings[i].lift);
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

/* Whether the session is the last of its lift. */
static bool last_session(const struct athlete_view *athlete, int index)
{
    for (int i = index + 1; i < athlete->session_count; i++)
        if (athlete->sessions[i].lift == athlete->sessions[index].lift)
            return false;
    return true;
}

void rule_missed_often(struct asking *asking, const struct athlete_view *athlete)
{
    for (int i = 0; i < athlete->session_count; i++) {
        const struct session_view *missed_last = NULL;
        int missed = 0, seen = 0;
        for (int j = i; j >= 0 && seen < LAST_SESSIONS && last_session(athlete, i); j--) {
            const struct session_view *session = &athlete->sessions[j];
            if (session->lift != athlete->sessions[i].lift)
                continue;
            seen++;
            missed += session->missed;
            if (session->missed && !missed_last)
                missed_last = session;
        }
        if (missed >= MISSED_LEAST)
            rule_hit(asking, diary_place(athlete, missed_last->date, missed_last->at),
                     "lower it with `load down 5%` in an `adjust`, add a newer max, or ask what is the matter",
                     "%s was missed in %d of the last %d sessions", missed_last->lift->name, missed, seen);
    }
}

/* ---- no-spotter-note ---- */

static bool is_noted(const struct set_view *set)
{
    return set->group->group->note_count || set->entry->entry->note_count || set->entry->note_count ||
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
    return at_effort(set, SPOTTED_SET) && ratio_cmp(set->effort, ratio_int(SPOTTED_SET)) == 0;
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
                                      : rule_text(asking, "is at rpe %s", rule_number(asking, set->effort));
        rule_hit(asking, met_set(block, set),
                 "add a line such as `note \"Spotters both sides\"` to the set, the lift or the day",
                 "%s %s, and nothing is said about spotters or safety bars", set->lift->name, what);
    }
}
