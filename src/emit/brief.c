#include "emit/brief.h"

static void say_band(struct out *say, int low, int high)
{
    out_int(say, low);
    if (low != high) {
        out_char(say, '-');
        out_int(say, high);
    }
}

static void say_reps(struct out *say, const struct plan_group *group)
{
    static const char *const after[] = {
        [REPS_COUNT] = "", [REPS_SECONDS] = " s", [REPS_METRES] = " m", [REPS_CLUSTER] = " in parts", [REPS_TOTAL] = " reps in all",
    };
    if (group->reps_kind != REPS_AMRAP) {
        say_band(say, group->reps_low, group->reps_high);
        out_text(say, after[group->reps_kind]);
        return;
    }
    out_text(say, "amrap");
    if (group->reps_low) {
        out_text(say, ", ");
        out_int(say, group->reps_low);
        out_char(say, '+');
    }
}

void brief_sets(struct out *say, const struct row *row)
{
    const struct plan_group *group = row->group;
    int rounds = row->entry->rounds > 0 ? row->entry->rounds : 1;
    if (group->reps_kind != REPS_TOTAL) {
        if (group->sets_low != group->sets_high)
            say_band(say, group->sets_low * rounds, group->sets_high * rounds);
        else
            out_int(say, row->run->sets);
        out_text(say, " x ");
    }
    say_reps(say, group);
    if (group->group->each_side)
        out_text(say, " each side");
}

void brief_load(struct out *say, const struct row *row)
{
    bool body = row->entry->lift->loads == LOADS_BODYWEIGHT;
    const struct plan_run *run = row->run;
    if (body && (run->has_load ? run->shown.e10 == 0 : !run->open)) {
        out_text(say, "bodyweight");
    } else if (!run->has_load) {
        out_text(say, "____ ");
        out_text(say, unit_word(row->day->gym->unit));
    } else {
        out_text(say, body && run->shown.e10 > 0 ? "+" : "");
        say_weight(say, run->shown, row->day->gym->unit);
    }
}

void brief_effort(struct out *say, const struct row *row)
{
    if (!row->run->has_effort)
        return;
    out_char(say, '@');
    out_dec(say, row->run->effort_low);
    if (row->run->effort_low.e10 != row->run->effort_high.e10) {
        out_char(say, '-');
        out_dec(say, row->run->effort_high);
    }
}

int brief_discs(struct out *say, const struct row *row, int at, int room)
{
    const struct plan_run *run = row->run;
    size_t start = say->used;
    if (!run->has_load || run->disc_count < 0 || row->entry->lift->loads != LOADS_BAR)
        return at;
    if (run->disc_count == 0)
        out_text(say, "empty bar");
    while (at < run->disc_count) {
        size_t before = say->used;
        out_weight(say, run->discs[at], row->day->gym->unit);
        if (at + 1 < run->disc_count)
            out_char(say, '+');
        if (say->used - start > (size_t)room && before > start) {
            say->used = before;
            break;
        }
        at++;
    }
    return at;
}
