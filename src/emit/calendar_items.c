#include "emit/calendar_items.h"

struct listing {
    struct arena *arena;
    const struct athlete *athlete;
    struct plan *const *plans;
    int plan_count;
    struct items items;
};

static void item_add(struct listing *l, struct item item)
{
    int at = l->items.list.count;
    vec_add(l->arena, &l->items.list, item);
    struct item *items = l->items.list.at;
    for (; at > 0 && (items[at - 1].date.day > item.date.day ||
                      (items[at - 1].date.day == item.date.day && items[at - 1].kind > item.kind)); at--)
        items[at] = items[at - 1];
    items[at] = item;
}

static void season_add(struct listing *l, const struct season *season)
{
    for (int i = 0; i < l->items.seasons.count; i++)
        if (l->items.seasons.at[i] == season)
            return;
    vec_add(l->arena, &l->items.seasons, season);
}

static void weeks_add(struct listing *l, const struct plan *plan)
{
    const struct season *season = plan->block->season;
    for (int i = 0; i < plan->week_count; i++)
        item_add(l, (struct item){ .kind = ITEM_WEEK, .date = plan->weeks[i].start, .days = 7, .plan = plan,
                                   .week = &plan->weeks[i], .season = season });
    if (season)
        season_add(l, season);
}

static bool is_planned(const struct listing *l, const struct season *season, int run)
{
    for (int i = 0; i < l->plan_count; i++)
        if (l->plans[i]->block->season == season && l->plans[i]->block->run == run)
            return true;
    return false;
}

/* Beside a block that is written: with one block chosen, the breaks far from it are left out. */
static bool is_beside(const struct listing *l, const struct season *season, int run)
{
    int before = run, after = run;
    while (before >= 0 && !season->runs[before].decl)
        before--;
    while (after < season->run_count && !season->runs[after].decl)
        after++;
    return is_planned(l, season, before) || is_planned(l, season, after);
}

/* She may have moved a week into it, by `repeat week`. */
static bool is_trained(const struct listing *l, struct date start)
{
    for (int i = 0; i < l->items.list.count; i++)
        if (l->items.list.at[i].kind == ITEM_WEEK && l->items.list.at[i].date.day == start.day)
            return true;
    return false;
}

static void season_items(struct listing *l, const struct season *season)
{
    for (int i = 0; i < season->run_count; i++) {
        const struct season_run *run = &season->runs[i];
        for (int week = 0; !run->decl && is_beside(l, season, i) && week < run->weeks; week++) {
            struct date start = date_plus(run->start, 7 * week);
            if (!is_trained(l, start))
                item_add(l, (struct item){ .kind = ITEM_BREAK, .date = start, .days = 7, .season = season });
        }
    }
    for (int i = 0; i < season->meet_count; i++)
        item_add(l, (struct item){ .kind = ITEM_MEET, .date = season->meets[i].date, .days = 1, .season = season,
                                   .meet = &season->meets[i] });
}

/* A block of hers that was not chosen is no gap. */
static bool is_someones(const struct listing *l, struct date start, int days)
{
    const struct model *model = l->plans[0]->model;
    for (int i = 0; i < model->block_count; i++) {
        const struct block *block = model->blocks[i];
        int past = block->start.day + 7 * plan_week_count(block, l->athlete);
        for (int j = 0; j < block->people->count; j++)
            if (block->people->at[j] == l->athlete && block->start.day < start.day + days && past > start.day)
                return true;
    }
    return false;
}

static void gaps_add(struct listing *l)
{
    VEC(struct item) gaps = { 0 };
    struct date free = { 0 }; /* the first day that nothing has taken yet */
    for (int i = 0; i < l->items.list.count; i++) {
        const struct item *item = &l->items.list.at[i];
        if (item->kind == ITEM_MEET)
            continue;
        int days = item->date.day - free.day;
        if (date_is_set(free) && days > 0 && !is_someones(l, free, days)) {
            struct item gap = { .kind = ITEM_GAP, .date = free, .days = days };
            vec_add(l->arena, &gaps, gap);
        }
        if (item->date.day + item->days > free.day)
            free = date_plus(item->date, item->days);
    }
    for (int i = 0; i < gaps.count; i++)
        item_add(l, gaps.at[i]);
}

static bool is_shown(const struct narrow *narrow, const struct item *item)
{
    if (item->kind == ITEM_WEEK)
        return narrow_has_week(narrow, item->week);
    return !narrow->first_week && !narrow->last_week &&
           (!date_is_set(narrow->from) || item->date.day + item->days > narrow->from.day) &&
           (!date_is_set(narrow->to) || item->date.day <= narrow->to.day);
}

static void keep_shown(struct listing *l, const struct narrow *narrow)
{
    int kept = 0;
    for (int i = 0; i < l->items.list.count; i++)
        if (is_shown(narrow, &l->items.list.at[i]))
            l->items.list.at[kept++] = l->items.list.at[i];
    l->items.list.count = kept;
}

struct items items_find(struct arena *arena, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans, int count)
{
    struct listing listing = { .arena = arena, .athlete = athlete, .plans = plans, .plan_count = count };
    for (int i = 0; i < count; i++)
        weeks_add(&listing, plans[i]);
    for (int i = 0; i < listing.items.seasons.count; i++)
        season_items(&listing, listing.items.seasons.at[i]);
    gaps_add(&listing);
    keep_shown(&listing, narrow);
    return listing.items;
}
