#include "emit/diary_lines.h"

#include "base/vec.h"
#include "emit/wording.h"

/* A written set group as the diary has it. */
struct part {
    VEC(struct dec) loads;
    VEC(struct dec) reps;
    VEC(struct dec) efforts;
    const struct plan_group *group;
    bool asked;
    bool gap;               /* a set before the last has no effort of its own */
    const struct dec *last; /* effort of the last set, or NULL */
};

void diary_open(struct out *out, const char *athlete)
{
    out_text(out, "diary ");
    out_text(out, athlete);
    out_text(out, " {\n");
}

void diary_close(struct out *out)
{
    out_text(out, "}\n");
}

void diary_session_open(struct out *out, const struct plan_week *week, const struct plan_day *day, struct date date)
{
    out_text(out, "  ");
    out_date(out, date);
    out_char(out, ' ');
    out_text(out, day->day->label);
    if (date.day < week->start.day || date.day >= week->start.day + 7) {
        out_text(out, " week ");
        out_int(out, week->number);
    }
    out_text(out, " {");
}

void diary_session_close(struct out *out)
{
    out_text(out, "  }\n");
}

bool diary_has_entry(const struct plan_entry *entry)
{
    for (int g = 0; g < entry->group_count; g++)
        if (entry->groups[g].role != ROLE_WARM_UP)
            return true;
    return false;
}

/* ---- gathering ---- */

static void part_add(struct arena *arena, struct part *part, const struct done_sets *done)
{
    part->asked |= done->asked;
    if (!done->sets)
        return;
    for (int i = 0; i < done->sets; i++) {
        vec_add(arena, &part->loads, done->loads[i]);
        vec_add(arena, &part->reps, done->reps[i]);
    }
    for (int i = 0; i < done->effort_count; i++)
        vec_add(arena, &part->efforts, done->efforts[i]);
    part->gap |= done->effort_count < done->sets;
    part->last = done->effort_count ? &done->efforts[done->effort_count - 1] : NULL;
}

struct parts {
    VEC(struct part) list;
    int done; /* parts of which something was */
    bool asked;
};

static struct parts parts_make(struct arena *arena, const struct plan_entry *entry, const struct done_sets *done)
{
    struct parts parts = { 0 };
    const struct plan_group *before = NULL;
    for (int g = 0; g < entry->group_count; g++) {
        const struct plan_group *group = &entry->groups[g];
        if (group->role == ROLE_WARM_UP) {
            done += group->run_count;
            continue;
        }
        if (!before || before->group != group->group) {
            struct part part = { .group = group };
            vec_add(arena, &parts.list, part);
        }
        before = group;
        for (int r = 0; r < group->run_count; r++)
            part_add(arena, &parts.list.at[parts.list.count - 1], done++);
    }
    for (int i = 0; i < parts.list.count; i++) {
        parts.done += parts.list.at[i].reps.count > 0;
        parts.asked |= parts.list.at[i].asked;
    }
    return parts;
}

/* ---- writing ---- */

static void list_write(struct out *out, const struct dec *numbers, int count)
{
    for (int i = 0; i < count; i++) {
        out_text(out, i ? ", " : "");
        out_dec(out, (struct dec){ numbers[i].e10 < 0 ? -numbers[i].e10 : numbers[i].e10 });
    }
}

static bool all_equal(const struct dec *numbers, int count)
{
    for (int i = 1; i < count; i++)
        if (numbers[i].e10 != numbers[0].e10)
            return false;
    return true;
}

static void loads_write(struct out *out, const struct dec *loads, int count, bool body, enum weight_unit unit)
{
    bool equal = all_equal(loads, count), minus = false;
    for (int i = 0; i < count; i++)
        minus |= loads[i].e10 < 0;
    if (body)
        out_text(out, "bodyweight");
    if (body && equal && loads[0].e10 == 0)
        return;
    if (body)
        out_text(out, minus ? " minus " : " plus ");
    list_write(out, loads, equal ? 1 : count);
    out_char(out, ' ');
    out_text(out, unit_word(unit));
}

static void part_write(struct out *out, const struct plan_entry *entry, const struct plan_day *day,
                       const struct part *part, struct dec open)
{
    const struct plan_run *run = &part->group->runs[0];
    const struct dec none = { 0 }, printed = run->has_load ? weight_in(run->shown, day->gym->unit) : open;
    int sets = part->reps.count;
    loads_write(out, sets ? part->loads.at : &printed, sets ? sets : 1, entry->lift->loads == LOADS_BODYWEIGHT,
                day->gym->unit);
    out_text(out, " x ");
    list_write(out, sets ? part->reps.at : &none, sets ? sets : 1);
    if (part->group->reps_kind == REPS_SECONDS || part->group->reps_kind == REPS_METRES)
        out_text(out, part->group->reps_kind == REPS_SECONDS ? " s" : " m");
    if (!part->last)
        return;
    out_text(out, " rpe ");
    list_write(out, part->gap ? part->last : part->efforts.at, part->gap ? 1 : part->efforts.count);
}

/* For a set group that nobody did and whose load is open: the nearest load of the lift that was done. */
static struct dec load_near(const struct parts *parts, int at)
{
    for (int i = at; i >= 0; i--)
        if (parts->list.at[i].loads.count)
            return parts->list.at[i].loads.at[parts->list.at[i].loads.count - 1];
    for (int i = at; i < parts->list.count; i++)
        if (parts->list.at[i].loads.count)
            return parts->list.at[i].loads.at[0];
    return (struct dec){ 0 };
}

static void entry_write(struct out *out, const struct plan_entry *entry, const struct plan_day *day,
                        const struct done_sets *done)
{
    struct parts parts = parts_make(out->arena, entry, done);
    if (!parts.list.count || !parts.asked)
        return;
    out_text(out, "    ");
    out_text(out, entry->lift->name);
    if (!parts.done)
        out_text(out, " skipped");
    for (int i = 0; i < parts.list.count && parts.done; i++) {
        out_text(out, i ? " then " : " ");
        part_write(out, entry, day, &parts.list.at[i], load_near(&parts, i));
    }
    out_char(out, '\n');
}

void diary_session(struct out *out, const struct plan_week *week, const struct plan_day *day, struct date date,
                   const struct done_sets *done)
{
    diary_session_open(out, week, day, date);
    out_char(out, '\n');
    for (int e = 0; e < day->entry_count; e++) {
        const struct plan_entry *entry = &day->entries[e];
        entry_write(out, entry, day, done);
        for (int g = 0; g < entry->group_count; g++)
            done += entry->groups[g].run_count;
    }
    diary_session_close(out);
}
