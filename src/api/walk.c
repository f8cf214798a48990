#include "api/inner.h"

#include "emit/cells.h"

const char *setwright_column(int index)
{
    return index < 0 || index >= COLUMN_COUNT ? NULL : columns[index].name;
}

struct walk {
    struct out cells[COLUMN_COUNT];
    const char *texts[COLUMN_COUNT];
    bool (*each)(void *context, const char *const *cells);
    void *context;
};

static bool walk_run(struct walk *walk, const struct row *row)
{
    for (int i = 0; i < COLUMN_COUNT; i++) {
        out_clear(&walk->cells[i]);
        if (columns[i].write)
            columns[i].write(&walk->cells[i], row);
        out_char(&walk->cells[i], 0);
        walk->texts[i] = walk->cells[i].at;
    }
    return walk->each(walk->context, walk->texts);
}

static bool walk_day(struct walk *walk, struct row row)
{
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        for (int g = 0; g < row.entry->group_count; g++) {
            row.group = &row.entry->groups[g];
            for (int r = 0; r < row.group->run_count; r++) {
                row.run = &row.group->runs[r];
                row.seq++;
                if (!walk_run(walk, &row))
                    return false;
            }
        }
    }
    return true;
}

static bool walk_plan(struct walk *walk, const struct plan *plan, const struct narrow *narrow)
{
    struct row row = { .plan = plan };
    for (int w = 0; w < plan->week_count; w++) {
        row.week = &plan->weeks[w];
        for (int d = 0; d < row.week->day_count; d++) {
            row.day = &row.week->days[d];
            if (narrow_has_day(narrow, row.week, row.day) && !walk_day(walk, row))
                return false;
        }
    }
    return true;
}

enum setwright_status setwright_walk(struct setwright *sw, const struct setwright_choice *choice,
                                     bool (*each)(void *context, const char *const *cells), void *context)
{
    GUARD(sw);
    struct chosen chosen;
    struct walk walk = { .each = each, .context = context };
    enum setwright_status status = api_choose(sw, choice, &chosen);
    for (int i = 0; i < COLUMN_COUNT; i++)
        walk.cells[i] = out_scratch(sw->work);
    for (int i = 0; !status && i < sw->pairs.count; i++) {
        struct plan *plan = is_chosen(&chosen, &sw->pairs.at[i]) ? plan_pair(sw, &sw->pairs.at[i]) : NULL;
        if (plan && !walk_plan(&walk, plan, &chosen.narrow))
            return SETWRIGHT_FILES;
    }
    return status;
}
