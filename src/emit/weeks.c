#include "emit/weeks.h"

#include "base/vec.h"
#include "model/history.h"
#include "plan/record.h"

static struct date day_reckoned(const struct plan_week *week, const struct plan_day *day)
{
    return date_is_set(day->date) ? day->date : week->start;
}

static bool is_within(struct date monday, struct date date)
{
    return date.day >= monday.day && date.day < monday.day + 7;
}

bool weeks_span(struct plan *const *plans, int count, struct date *first, struct date *last)
{
    *first = *last = (struct date){ 0 };
    for (int p = 0; p < count; p++)
        for (int w = 0; w < plans[p]->week_count; w++) {
            struct date start = plans[p]->weeks[w].start, end = date_plus(start, 6);
            if (!date_is_set(*first) || start.day < first->day)
                *first = start;
            end = date_is_set(end) ? end : start;
            if (end.day > last->day)
                *last = end;
        }
    if (!date_is_set(*first))
        return false;
    *first = date_monday(*first), *last = date_monday(*last);
    return true;
}

bool weeks_has_day(struct date monday, const struct plan_week *week, const struct plan_day *day)
{
    return is_within(monday, day_reckoned(week, day));
}

bool weeks_starts(struct date monday, const struct plan_week *week)
{
    return is_within(monday, week->start);
}

bool weeks_meet(struct date monday, const struct narrow *narrow, const struct plan_week *week)
{
    if (week->day_count == 0)
        return weeks_starts(monday, week) && narrow_has_week(narrow, week);
    for (int d = 0; d < week->day_count; d++)
        if (weeks_has_day(monday, week, &week->days[d]) && narrow_has_day(narrow, week, &week->days[d]))
            return true;
    return false;
}

/* ---- lifts of a week ---- */

static struct lift_week *lift_for(struct arena *arena, struct week_lifts *lifts, const struct lift *lift)
{
    for (int i = 0; i < lifts->count; i++)
        if (lifts->at[i].lift == lift)
            return &lifts->at[i].work;
    struct week_lift new = { .lift = lift };
    vec_add(arena, lifts, new);
    return &lifts->at[lifts->count - 1].work;
}

static void entry_count(struct lift_week *work, const struct plan_entry *entry, enum weight_unit unit)
{
    for (int g = 0; g < entry->group_count; g++)
        for (int r = 0; r < entry->groups[g].run_count && entry->groups[g].role != ROLE_WARM_UP; r++) {
            const struct plan_run *run = &entry->groups[g].runs[r];
            work->sets += run->sets;
            if (!run->has_load || (work->has_load && run->shown.e10 <= work->heaviest.e10))
                continue;
            work->has_load = true;
            work->heaviest = run->shown;
            work->unit = unit;
        }
}

struct week_lifts weeks_lifts(struct arena *arena, struct date monday, struct plan *const *plans, int count,
                              const struct athlete *athlete)
{
    struct week_lifts lifts = { 0 };
    for (int p = 0; p < count; p++)
        for (int w = 0; plans[p]->athlete == athlete && w < plans[p]->week_count; w++) {
            const struct plan_week *week = &plans[p]->weeks[w];
            for (int d = 0; d < week->day_count; d++)
                for (int e = 0; weeks_has_day(monday, week, &week->days[d]) && e < week->days[d].entry_count; e++) {
                    const struct plan_entry *entry = &week->days[d].entries[e];
                    entry_count(lift_for(arena, &lifts, entry->lift), entry, week->days[d].gym->unit);
                }
        }
    return lifts;
}

static struct lift_week find(const struct week_lifts *lifts, const struct lift *lift)
{
    for (int i = 0; i < lifts->count; i++)
        if (lifts->at[i].lift == lift)
            return lifts->at[i].work;
    return (struct lift_week){ 0 };
}

static int64_t sets_apart(const struct week_change *change)
{
    int64_t apart = change->now.sets - change->before.sets;
    return apart < 0 ? -apart : apart;
}

static int64_t load_apart(const struct week_change *change)
{
    int64_t apart = change->now.heaviest.e10 - change->before.heaviest.e10;
    if (!change->now.has_load || !change->before.has_load)
        return 0;
    return apart < 0 ? -apart : apart;
}

static bool most_apart(const struct week_lifts *now, const struct week_lifts *before, struct week_change *most,
                       int64_t (*apart)(const struct week_change *change))
{
    *most = (struct week_change){ 0 };
    for (int i = 0; i < now->count + before->count; i++) {
        const struct lift *lift = i < now->count ? now->at[i].lift : before->at[i - now->count].lift;
        struct week_change change = { lift, find(before, lift), find(now, lift) };
        if (apart(&change) > apart(most))
            *most = change;
    }
    return most->lift != NULL;
}

bool weeks_most_sets(const struct week_lifts *now, const struct week_lifts *before, struct week_change *change)
{
    return most_apart(now, before, change, sets_apart);
}

bool weeks_most_load(const struct week_lifts *now, const struct week_lifts *before, struct week_change *change)
{
    return most_apart(now, before, change, load_apart);
}

/* ---- meets ---- */

static void meet_add(struct arena *arena, struct meet_list *list, struct meet_due due)
{
    int at = list->count;
    for (int i = 0; i < list->count; i++)
        if (list->at[i].meet == due.meet)
            return;
    vec_add(arena, list, due);
    for (; at > 0 && list->at[at - 1].meet->date.day > due.meet->date.day; at--)
        list->at[at] = list->at[at - 1];
    list->at[at] = due;
}

struct meet_list weeks_meets(struct arena *arena, struct date monday, struct plan *const *plans, int count, int days)
{
    struct meet_list list = { 0 };
    for (int p = 0; p < count; p++) {
        const struct season *season = plans[p]->block->season;
        for (int i = 0; season && i < season->meet_count; i++) {
            struct meet_due due = { &season->meets[i], season };
            int away = due.meet->date.day - monday.day;
            if (away >= 0 && away <= days)
                meet_add(arena, &list, due);
        }
    }
    return list;
}

/* ---- stale maxes ---- */

/* Whether a load of the entry is worked out from the lift's own max. */
static bool uses_max(const struct plan_entry *entry)
{
    for (int g = 0; g < entry->group_count; g++) {
        enum load_kind kind = entry->groups[g].group->load_kind;
        if (entry->groups[g].role != ROLE_WARM_UP && (kind == LOAD_EFFORT || kind == LOAD_PERCENT))
            return true;
    }
    return false;
}

static void stale_add(struct arena *arena, struct stale_list *list, const struct max_line *line)
{
    for (int i = 0; i < list->count; i++)
        if (list->at[i].line == line)
            return;
    struct stale_max stale = { line->lift, line };
    vec_add(arena, list, stale);
}

void weeks_stale(struct arena *arena, struct date monday, const struct narrow *narrow, const struct plan *plan, int days,
                 struct stale_list *list)
{
    for (int w = 0; w < plan->week_count; w++) {
        const struct plan_week *week = &plan->weeks[w];
        for (int d = 0; d < week->day_count; d++)
            for (int e = 0; e < week->days[d].entry_count; e++) {
                const struct plan_entry *entry = &week->days[d].entries[e];
                if (!weeks_has_day(monday, week, &week->days[d]) || !narrow_has_day(narrow, week, &week->days[d]) || !uses_max(entry))
                    continue;
                struct date done = record_last_day(plan->record, entry->lift, week->start);
                if (date_is_set(done) && monday.day - done.day <= days)
                    continue;
                struct max_used max = history_max(plan->athlete, entry->lift, week->start, plan->block);
                if (max.line && (!date_is_set(max.line->date) || monday.day - max.line->date.day > days))
                    stale_add(arena, list, max.line);
            }
    }
}
