#include "plan/steady.h"

#include <string.h>

enum { SIZE_MOST = 512 * 1024 };

/* All that a steady entry hangs on within the plans of one athlete without a diary, and what it comes to. */
struct steady {
    const struct group *written; /* of the first that asked */
    int written_count;
    const struct lift *lift;
    const struct gym *gym;
    const struct max_line *line;   /* NULL: none by then */
    const struct curve_row *model; /* the block's */
    struct dec max_percent;
    const struct plan_group *groups; /* NULL: not worked out yet, or there was something to say */
    int group_count;
};
struct steadies {
    struct arena *arena;
    struct numbers asked;        /* lifts, with what is asked of them mixed into a number */
    VEC(struct steady *) latest; /* by these; NULL: none was steady yet */
};

struct steadies *steadies_new(struct arena *owner)
{
    struct steadies *steadies = NEW(owner, struct steadies);
    steadies->arena = steadies->asked.arena = arena_within(owner);
    return steadies;
}

void steadies_forget(struct steadies *steadies)
{
    struct arena *arena = steadies->arena;
    arena_reset(arena);
    *steadies = (struct steadies){ .arena = arena, .asked.arena = arena };
}

void steadies_trim(struct steadies *steadies)
{
    if (arena_size(steadies->arena) > SIZE_MOST)
        steadies_forget(steadies);
}

/* ---- what is steady ---- */

bool steady_week(struct planning *p, const struct work_week *week)
{
    return p->steadies && !reasons_are_told(p) && !p->record && !p->block->warm_up_count && !p->athlete->avoid_count &&
           !changes_reach_entries(p, week);
}

static bool is_one_number(const struct value *value)
{
    const struct series *series = value->series;
    return !series || (series->kind == SERIES_LIST && series->count == 1 && series->weeks[0].count == 1);
}

static bool group_is_steady(const struct group *group)
{
    switch (group->load_kind) {
    case LOAD_NONE:
    case LOAD_EFFORT:
    case LOAD_PERCENT:
    case LOAD_WEIGHT:
    case LOAD_SAME:
    case LOAD_DROP:
        break;
    default:
        return false;
    }
    return !group->more && is_one_number(&group->sets) && is_one_number(&group->reps) && is_one_number(&group->load);
}

static bool entry_is_steady(const struct entry *entry)
{
    if (entry->lifts[0]->loads == LOADS_BODYWEIGHT)
        return false;
    for (int i = 0; i < entry->group_count; i++)
        if (!group_is_steady(&entry->groups[i]))
            return false;
    return true;
}

/* ---- the same again ---- */

static bool values_equal(const struct value *a, const struct value *b)
{
    return a->series == b->series && a->unit == b->unit;
}

/* In all that loads are made of; notes and rests may differ. */
static bool groups_equal(const struct group *a, const struct group *b)
{
    return values_equal(&a->sets, &b->sets) && values_equal(&a->reps, &b->reps) && values_equal(&a->load, &b->load) &&
           a->role == b->role && a->reps_kind == b->reps_kind && a->load_kind == b->load_kind &&
           a->load_is_rir == b->load_is_rir && a->more == b->more;
}

static bool lines_equal(const struct max_line *a, const struct max_line *b)
{
    return a == b ||
           (a && b && a->lift == b->lift && !a->estimated && !b->estimated && ratio_cmp(a->load, b->load) == 0);
}

static bool asks_the_same(const struct steady *a, const struct steady *b)
{
    if (a->lift != b->lift || a->gym != b->gym || !lines_equal(a->line, b->line) || a->model != b->model ||
        a->max_percent.e10 != b->max_percent.e10 || a->written_count != b->written_count)
        return false;
    for (int i = 0; i < b->written_count && a->written != b->written; i++)
        if (!groups_equal(&a->written[i], &b->written[i]))
            return false;
    return true;
}

/* What groups_equal compares. */
enum { GROUP_WORDS = 4 };
static void group_words(const struct group *group, uint64_t words[GROUP_WORDS])
{
    words[0] = (uint64_t)group->role << 24 | (uint64_t)group->reps_kind << 16 | (uint64_t)group->load_kind << 8 |
               (uint64_t)group->load.unit << 1 | group->load_is_rir;
    words[1] = (uintptr_t)group->sets.series;
    words[2] = (uintptr_t)group->reps.series;
    words[3] = (uintptr_t)group->load.series;
}

/* Where the latest stands that asked for as much. */
static struct steady **latest_of(struct steadies *steadies, const struct steady *wanted)
{
    uint64_t asked[GROUP_WORDS + 1] = { (uintptr_t)wanted->gym };
    for (int i = 0; i < wanted->written_count; i++) {
        group_words(&wanted->written[i], &asked[1]);
        asked[0] = bytes_hash((const char *)asked, sizeof asked);
    }
    int at = numbers_give(&steadies->asked, wanted->lift, asked[0]);
    if (at == steadies->latest.count)
        vec_add(steadies->arena, &steadies->latest, NULL);
    return &steadies->latest.at[at];
}

/* ---- copies ---- */

/* As a derivation from this line would have it. */
static const struct reason *reasons_copy(struct arena *arena, const struct reason *reason, const struct max_line *line)
{
    if (!reason)
        return NULL;
    struct reason *copy = NEW(arena, struct reason);
    *copy = *reason;
    copy->before = reasons_copy(arena, reason->before, line);
    if (copy->kind == REASON_MAX)
        copy->at = line->at, copy->date = line->date;
    return copy;
}

static void run_copy(struct arena *arena, const struct plan_run *run, const struct max_line *line, struct plan_run *out)
{
    *out = *run;
    out->reason = reasons_copy(arena, run->reason, line);
    if (run->open)
        out->open = arena_copy(arena, run->open, strlen(run->open));
    if (run->disc_count > 0) {
        struct weight *discs = NEW_MANY(arena, struct weight, run->disc_count);
        memcpy(discs, run->discs, sizeof *discs * (size_t)run->disc_count);
        out->discs = discs;
    }
}

/* `steady` comes to groups that were worked out for `written`. */
static void groups_copy(struct arena *arena, struct steady *steady, const struct group *written,
                        const struct plan_group *groups, int count)
{
    struct plan_group *copies = NEW_MANY(arena, struct plan_group, count);
    for (int i = 0; i < count; i++) {
        struct plan_run *runs = NEW_MANY(arena, struct plan_run, groups[i].run_count);
        for (int j = 0; j < groups[i].run_count; j++)
            run_copy(arena, &groups[i].runs[j], steady->line, &runs[j]);
        copies[i] = groups[i];
        copies[i].group = &steady->written[groups[i].group - written];
        copies[i].runs = runs;
    }
    steady->groups = copies;
    steady->group_count = count;
}

/* A max tested again and found to be the same. */
static struct steady *renewed(struct steadies *steadies, const struct steady *old, const struct steady *wanted)
{
    struct steady *steady = NEW(steadies->arena, struct steady);
    *steady = *wanted;
    if (old->groups)
        groups_copy(steadies->arena, steady, old->written, old->groups, old->group_count);
    return steady;
}

/* ---- asking and keeping ---- */

bool steady_find(struct planning *p, const struct work_week *week, const struct work_day *day, struct work_entry *entry)
{
    if (entry_more(entry->entry)->rounds)
        return false;
    struct steadies *steadies = p->steadies;
    struct steady wanted = { .written = entry->entry->groups,
                             .written_count = entry->entry->group_count,
                             .lift = entry->lift,
                             .gym = day->gym,
                             .line = history_max_line(p->athlete, entry->lift, week->start),
                             .model = p->block->model,
                             .max_percent = p->block->max_percent };
    struct steady **latest = latest_of(steadies, &wanted);
    if (*latest && asks_the_same(*latest, &wanted)) {
        if ((*latest)->line != wanted.line)
            *latest = renewed(steadies, *latest, &wanted);
        entry->steady = *latest;
        return (*latest)->groups != NULL;
    }
    if (entry_is_steady(entry->entry)) {
        *latest = NEW(steadies->arena, struct steady);
        **latest = wanted;
        entry->steady = *latest;
    }
    return false;
}

const struct plan_group *steady_groups(struct planning *p, const struct work_entry *entry, int *count)
{
    const struct steady *steady = entry->steady;
    *count = steady->group_count;
    if (steady->written == entry->entry->groups)
        return steady->groups;
    struct plan_group *groups = NEW_MANY(p->arena, struct plan_group, steady->group_count);
    for (int i = 0; i < steady->group_count; i++) {
        groups[i] = steady->groups[i];
        groups[i].group = &entry->entry->groups[groups[i].group - steady->written];
    }
    return groups;
}

void steady_keep(struct planning *p, const struct work_entry *entry, const struct plan_group *groups, int count)
{
    if (count && !entry->said && !entry->steady->groups)
        groups_copy(p->steadies->arena, entry->steady, entry->entry->groups, groups, count);
}
