#include "emit/as_why.h"

#include "emit/out.h"
#include "plan/reason.h"

enum { SENTENCE_COLUMN = 4, PLACE_COLUMN = 62 };

static void place(struct out *out, struct sources *sources, struct span at, int used)
{
    struct position position = position_of(sources, at.start);
    if (!span_is_somewhere(at) || !position.source)
        return;
    out_chars(out, ' ', used < PLACE_COLUMN ? PLACE_COLUMN - used : 2);
    out_text(out, arena_format(out->arena, "%s:%u:%u", position.source->name, position.line, position.column));
}

static void step(struct out *out, const struct plan *plan, enum weight_unit unit, const struct reason *reason)
{
    if (reason->before)
        step(out, plan, unit, reason->before);
    const char *sentence = reason_sentence(out->arena, reason, unit);
    out_chars(out, ' ', SENTENCE_COLUMN);
    out_text(out, sentence);
    place(out, plan->model->sources, reason->at, SENTENCE_COLUMN + (int)strlen(sentence));
    for (const struct origin *origin = reason->origin; origin; origin = origin->up) {
        out_text(out, "\n      ");
        out_text(out, origin->says);
        place(out, plan->model->sources, origin->at, 6 + (int)strlen(origin->says));
    }
    out_char(out, '\n');
}

static const char *reps_text(struct arena *arena, const struct plan_group *group)
{
    const char *unit = group->reps_kind == REPS_SECONDS ? " s" : group->reps_kind == REPS_METRES ? " m" : "";
    if (group->reps_kind == REPS_AMRAP)
        return "amrap";
    return group->reps_low == group->reps_high ? arena_format(arena, "%d%s", group->reps_low, unit)
                                               : arena_format(arena, "%d-%d%s", group->reps_low, group->reps_high, unit);
}

static void discs(struct out *out, enum weight_unit unit, const struct plan_run *run)
{
    if (run->disc_count < 0)
        return;
    out_text(out, "    discs a side: ");
    for (int i = 0; i < run->disc_count; i++) {
        if (i)
            out_char(out, '+');
        out_weight(out, run->discs[i], unit);
    }
    out_text(out, run->disc_count ? "\n" : "none, the bar alone\n");
}

static void means(struct out *out, const struct plan_run *run)
{
    if (!run->has_percent && !run->has_expected)
        return;
    out_text(out, "    that is ");
    if (run->has_percent)
        out_dec(out, run->percent), out_text(out, " % of the full max");
    if (run->has_expected) {
        out_text(out, run->has_percent ? ", expected rpe " : "expected rpe ");
        if (run->expected_under_one)
            out_text(out, "<1");
        else
            out_dec(out, run->expected);
    }
    out_char(out, '\n');
}

static void run_write(struct out *out, const struct plan *plan, const struct plan_day *day, const struct plan_entry *entry,
                      const struct plan_group *group, const struct plan_run *run)
{
    out_text(out, arena_format(out->arena, "%s, day %s%s%s: ", entry->lift->name, day->day->label, date_is_set(day->date) ? ", " : "",
                               date_is_set(day->date) ? date_text(out->arena, day->date) : ""));
    out_text(out, arena_format(out->arena, "%s %d x %s at ", role_name(group->role), run->sets, reps_text(out->arena, group)));
    if (run->has_load)
        out_text(out, weight_text(out->arena, run->shown, day->gym->unit));
    else
        out_text(out, run->open ? run->open : "a load of your choice");
    place(out, plan->model->sources, group_place(entry->entry, group->group, group->group->at), 2000);
    out_char(out, '\n');
    if (run->reason)
        step(out, plan, day->gym->unit, run->reason);
    if (run->has_load) {
        discs(out, day->gym->unit, run);
        means(out, run);
    }
    out_char(out, '\n');
}

static int entry_write(struct out *out, const struct plan *plan, const struct plan_day *day, const struct plan_entry *entry)
{
    int written = 0;
    for (int i = 0; i < entry->group_count; i++)
        for (int j = 0; j < entry->groups[i].run_count; j++, written++)
            run_write(out, plan, day, entry, &entry->groups[i], &entry->groups[i].runs[j]);
    return written;
}

int why_write(struct arena *arena, struct sink sink, const struct plan *plan, int week, const char *day, const struct lift *lift)
{
    struct out out = out_new(arena, sink);
    int written = 0;
    for (int i = 0; i < plan->week_count; i++)
        for (int j = 0; plan->weeks[i].number == week && j < plan->weeks[i].day_count; j++) {
            const struct plan_day *at = &plan->weeks[i].days[j];
            for (int k = 0; (!day || !strcmp(day, at->day->label)) && k < at->entry_count; k++)
                if (at->entries[k].lift == lift || at->entries[k].instead_of == lift)
                    written += entry_write(&out, plan, at, &at->entries[k]);
        }
    return out_flush(&out) ? written : -1;
}
