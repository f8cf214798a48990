#include "api/inner.h"

#include "base/near.h"
#include "emit/blank_diary.h"
#include "emit/calendar.h"
#include "emit/sheet.h"

#include <string.h>

static bool build_pairs(struct setwright *sw, const struct format *format, struct writer *writer, const struct chosen *chosen)
{
    const struct athlete *before = NULL;
    for (int i = 0; i < sw->pairs.count; i++) {
        const struct pair *pair = &sw->pairs.at[i];
        if (!is_chosen(chosen, pair))
            continue;
        if (pair->athlete != before && !format->athlete(writer, pair->athlete))
            return false;
        before = pair->athlete;
        struct plan *plan = plan_pair(sw, pair);
        if (plan && !format->plan(writer, plan))
            return false;
    }
    return true;
}

/* ---- sheets of many plans ---- */

struct plan_list {
    VEC(struct plan *) list;
};

static void list_add(struct setwright *sw, struct plan_list *plans, const struct pair *pair)
{
    struct plan *plan = plan_add(sw, pair);
    if (plan)
        vec_add(sw->scratch, &plans->list, plan);
}

static bool write_plans(const struct sheet *sheet, struct out *out, const struct chosen *chosen, const struct plan_list *plans, bool *begun)
{
    return !plans->list.count || sheet->write(out, &chosen->narrow, plans->list.at, plans->list.count, begun);
}

static bool is_meet_pair(const struct setwright *sw, const struct pair *pair)
{
    const struct block *block = sw->model->blocks[pair->block];
    return block->season && block->last_of_season && block->season->meet_count;
}

static bool sheet_of_blocks(struct setwright *sw, const struct sheet *sheet, struct out *out, const struct chosen *chosen)
{
    bool begun = false, fine = true;
    for (int block = 0; fine && block < sw->model->block_count; block++) {
        struct plan_list plans = { 0 };
        plans_forget(sw);
        for (int i = 0; i < sw->pairs.count; i++)
            if (sw->pairs.at[i].block == block && is_chosen(chosen, &sw->pairs.at[i]))
                list_add(sw, &plans, &sw->pairs.at[i]);
        fine = write_plans(sheet, out, chosen, &plans, &begun);
    }
    return fine;
}

/* By pairs (a meet each), or all in one. */
static bool sheet_of_pairs(struct setwright *sw, const struct sheet *sheet, struct out *out, const struct chosen *chosen)
{
    bool begun = false, fine = true;
    struct plan_list plans = { 0 };
    plans_forget(sw);
    for (int i = 0; fine && i < sw->pairs.count; i++) {
        if (!is_chosen(chosen, &sw->pairs.at[i]) || (sheet->scope == SHEET_MEET && !is_meet_pair(sw, &sw->pairs.at[i])))
            continue;
        list_add(sw, &plans, &sw->pairs.at[i]);
        if (sheet->scope == SHEET_CLUB)
            continue;
        fine = write_plans(sheet, out, chosen, &plans, &begun);
        plans = (struct plan_list){ 0 };
        plans_forget(sw);
    }
    return fine && (sheet->scope != SHEET_CLUB || write_plans(sheet, out, chosen, &plans, &begun));
}

static enum setwright_status build_sheet(struct setwright *sw, const char *format, const struct sheet *sheet, const struct chosen *chosen, struct sink sink)
{
    if (strcmp(format, "text") != 0) {
        sw->problem = arena_format(sw->arena, "the %s sheet is text; leave --format out", sheet->name);
        return SETWRIGHT_USAGE;
    }
    struct out out = out_new(sw->work, sink);
    bool fine = sheet->scope == SHEET_BLOCK ? sheet_of_blocks(sw, sheet, &out, chosen) : sheet_of_pairs(sw, sheet, &out, chosen);
    return out_flush(&out) && fine ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

/* ---- an athlete's plans together ---- */

static enum setwright_status write_athletes(struct setwright *sw, const struct chosen *chosen, struct out *out,
                                            bool (*write)(struct out *out, const struct narrow *narrow, const struct athlete *athlete,
                                                          struct plan *const *plans, int count))
{
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        struct plan_list plans = { 0 };
        plans_forget(sw);
        for (next = first; next < sw->pairs.count && sw->pairs.at[next].athlete == sw->pairs.at[first].athlete; next++)
            if (is_chosen(chosen, &sw->pairs.at[next]))
                list_add(sw, &plans, &sw->pairs.at[next]);
        if (plans.list.count && !write(out, &chosen->narrow, sw->pairs.at[first].athlete, plans.list.at, plans.list.count))
            return SETWRIGHT_FILES;
    }
    return out_flush(out) ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

enum setwright_status setwright_calendar(struct setwright *sw, const struct setwright_choice *choice, struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    enum setwright_status status = api_choose(sw, choice, &chosen);
    struct out out = out_new(sw->work, api_sink(sink));
    return status ? status : write_athletes(sw, &chosen, &out, calendar_write);
}

enum setwright_status setwright_diary(struct setwright *sw, const struct setwright_choice *choice, struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    enum setwright_status status = api_choose(sw, choice, &chosen);
    struct out out = out_new(sw->work, api_sink(sink));
    if (status)
        return status;
    blank_diary_head(&out);
    return write_athletes(sw, &chosen, &out, blank_diary);
}

enum setwright_status setwright_build(struct setwright *sw, const char *format_name, const struct setwright_choice *choice,
                                      struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    const struct format *format = format_find(format_name);
    if (!format)
        return api_format_problem(sw, format_name);
    enum setwright_status status = api_choose(sw, choice, &chosen);
    if (status)
        return status;
    const struct sheet *sheet = choice->sheet ? sheet_find(choice->sheet) : NULL;
    if (choice->sheet && !sheet) {
        const char **names = NEW_MANY(sw->work, const char *, sheet_count());
        for (int i = 0; i < sheet_count(); i++)
            names[i] = sheet_at(i)->name;
        return api_problem(sw, "sheet", choice->sheet, word_nearest(choice->sheet, names, sheet_count()));
    }
    if (sheet && sheet->write)
        return build_sheet(sw, format_name, sheet, &chosen, api_sink(sink));
    struct format_options options = { .crlf = choice->crlf, .resumed = chosen.resumed, .narrow = chosen.narrow };
    struct writer *writer = format->begin(sw->work, api_sink(sink), &options);
    plans_forget(sw);
    sw->bare = format->bare;
    bool written = build_pairs(sw, format, writer, &chosen);
    plans_forget(sw);
    sw->bare = false;
    return format->end(writer) && written ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}
