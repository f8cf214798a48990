#include "emit/needs.h"

#include "base/vec.h"
#include "emit/wording.h"

struct weight_need {
    struct weight weight;
    int people;
};
/* A lift as trained in one gym; the first entry of an athlete's day counts her. */
struct need {
    const struct lift *lift;
    const struct gym *gym;
    const struct plan *last; /* counted last: nobody counts twice */
    int people;
    int open; /* people whose load is their own choice */
    VEC(struct weight_need) weights;
};
struct needs {
    struct arena *arena;
    VEC(struct need) list;
    bool several_gyms;
};

static struct need *need_for(struct needs *needs, const struct lift *lift, const struct gym *gym)
{
    for (int i = 0; i < needs->list.count; i++)
        if (needs->list.at[i].lift == lift && needs->list.at[i].gym == gym)
            return &needs->list.at[i];
    struct need need = { .lift = lift, .gym = gym };
    vec_add(needs->arena, &needs->list, need);
    return &needs->list.at[needs->list.count - 1];
}

static void weight_count(struct needs *needs, struct need *need, struct weight weight)
{
    int at = 0;
    while (at < need->weights.count && need->weights.at[at].weight.e10 < weight.e10)
        at++;
    if (at == need->weights.count || need->weights.at[at].weight.e10 != weight.e10) {
        struct weight_need new = { weight, 0 };
        vec_add(needs->arena, &need->weights, new);
        memmove(&need->weights.at[at + 1], &need->weights.at[at], sizeof new * (size_t)(need->weights.count - 1 - at));
        need->weights.at[at] = new;
    }
    need->weights.at[at].people++;
}

/* Her heaviest load of the entry: the dumbbells she keeps beside her longest. */
static const struct plan_run *heaviest(const struct plan_entry *entry)
{
    const struct plan_run *most = NULL;
    for (int g = 0; g < entry->group_count; g++)
        for (int r = 0; r < entry->groups[g].run_count && entry->groups[g].role != ROLE_WARM_UP; r++) {
            const struct plan_run *run = &entry->groups[g].runs[r];
            if (run->has_load && (!most || run->load.e10 > most->load.e10))
                most = run;
        }
    return most;
}

static void member_count(struct needs *needs, const struct member *member)
{
    for (int e = 0; e < member->day->entry_count; e++) {
        const struct plan_entry *entry = &member->day->entries[e];
        struct need *need = need_for(needs, entry->lift, member->day->gym);
        if (need->last == member->plan)
            continue;
        need->last = member->plan;
        need->people++;
        const struct plan_run *run = heaviest(entry);
        if (run)
            weight_count(needs, need, run->load);
        else
            need->open++;
    }
}

/* The phrase as a piece that stays on one line. */
static void piece_put(struct lines *lines, struct out *say)
{
    line_piece(lines, 1, say->at, say->used);
    out_clear(say);
}

static void bars_put(struct lines *lines, struct out *say, const struct need *need)
{
    out_int(say, need->people);
    out_char(say, ' ');
    if (need->lift->equipment) {
        out_text(say, need->lift->equipment);
        out_char(say, ' ');
    }
    out_text(say, "bars;");
    piece_put(lines, say);
    out_int(say, (need->people + 1) / 2);
    out_text(say, need->people > 2 ? " if two share one," : " if two share one");
    piece_put(lines, say);
    if (need->people <= 2)
        return;
    out_int(say, (need->people + 2) / 3);
    out_text(say, " if three do");
    piece_put(lines, say);
}

static void dumbbells_put(struct lines *lines, struct out *say, const struct need *need)
{
    line_say(lines, 1, "dumbbells:");
    for (int i = 0; i < need->weights.count; i++) {
        say_weight(say, need->weights.at[i].weight, need->gym->unit);
        out_text(say, " for ");
        out_int(say, need->weights.at[i].people);
        out_text(say, i + 1 < need->weights.count || need->open ? "," : "");
        piece_put(lines, say);
    }
    if (!need->open)
        return;
    out_text(say, "of their own choice for ");
    out_int(say, need->open);
    piece_put(lines, say);
}

static void stack_put(struct lines *lines, struct out *say, const struct need *need)
{
    out_int(say, need->people);
    out_text(say, " take turns on the ");
    out_text(say, need->lift->equipment ? need->lift->equipment : "");
    out_text(say, need->lift->equipment ? " stack" : "stack");
    piece_put(lines, say);
}

static void (*const puts_need[])(struct lines *lines, struct out *say, const struct need *need) = {
    [LOADS_BAR] = bars_put, [LOADS_DUMBBELLS] = dumbbells_put, [LOADS_STACK] = stack_put,
    [LOADS_FREE] = NULL,    [LOADS_BODYWEIGHT] = NULL,
};

static bool is_said(const struct need *need)
{
    return need->people > 1 && puts_need[need->lift->loads];
}

static void need_line(struct lines *lines, const struct needs *needs, const struct need *need)
{
    struct out say = out_scratch(needs->arena);
    line_begin(lines, 0, "", 4);
    line_words(lines, 0, lift_words(need->lift));
    if (needs->several_gyms && (need->gym->title || need->gym->name)) {
        line_say(lines, 1, "at");
        line_words(lines, 1, need->gym->title ? need->gym->title : need->gym->name);
    }
    line_say(lines, 1, "-");
    puts_need[need->lift->loads](lines, &say, need);
    line_end(lines);
}

void needs_lines(struct lines *lines, struct arena *arena, const struct member *members, int count)
{
    struct needs needs = { .arena = arena };
    bool begun = false;
    for (int i = 0; i < count; i++) {
        member_count(&needs, &members[i]);
        needs.several_gyms |= members[i].day->gym != members[0].day->gym;
    }
    for (int i = 0; i < needs.list.count; i++) {
        if (!is_said(&needs.list.at[i]))
            continue;
        if (!begun) {
            line_begin(lines, 0, "", 0);
            line_words(lines, 0, "Needed at once when all train a lift together; with a bar goes the rack, bench or platform:");
            line_end(lines);
        }
        begun = true;
        need_line(lines, &needs, &needs.list.at[i]);
    }
}
