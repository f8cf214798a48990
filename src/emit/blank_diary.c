#include "emit/blank_diary.h"

#include "emit/brief.h"
#include "emit/diary_lines.h"
#include "emit/visible.h"

static const char head[] =
    "# A diary to fill in. Take out the sessions that are still to come: `as planned` says that the loads and\n"
    "# repetitions behind the # were done. Where it went otherwise, or the load is ____, write what was done in its "
    "place:\n"
    "#\n"
    "#   squat 107.5 kg x 1 rpe 8 then 90 kg x 5, 5, 5, 4    the sets of each group, and how hard the last one was\n"
    "#   pull-up bodyweight plus 10 kg x 5, 4                a failed repetition is x 0\n"
    "#   row as planned rpe 7\n"
    "#   curl skipped because \"elbow\"\n"
    "#   2027-01-07 B missed because \"travelling\"            a whole session, in place of its { }\n";

void blank_diary_head(struct out *out)
{
    out_text(out, head);
}

/* "top 1 x 1 at 107.5 kg, rpe 8" */
static void run_say(struct out *say, const struct row *row)
{
    const struct plan_run *run = row->run;
    if (row->group->role != ROLE_WORK) {
        out_text(say, role_name(row->group->role));
        out_char(say, ' ');
    }
    brief_sets(say, row);
    out_text(say, " at ");
    brief_load(say, row);
    if (!run->has_load && run->open) {
        out_text(say, ", ");
        out_text(say, run->open);
    }
    if (run->has_effort)
        say_rpe(say, ", ", run->effort_low, run->effort_high);
}

static void entry_say(struct out *say, struct row row)
{
    const char *between = "# ";
    for (int g = 0; g < row.entry->group_count; g++) {
        row.group = &row.entry->groups[g];
        for (int r = 0; r < row.group->run_count && row.group->role != ROLE_WARM_UP; r++) {
            row.run = &row.group->runs[r];
            out_text(say, between);
            run_say(say, &row);
            between = "; ";
        }
    }
    for (int i = 0; i < row.entry->choice_count; i++) {
        out_text(say, i ? " or " : "; or ");
        out_text(say, row.entry->choices[i]->name);
    }
}

static int widest(const struct plan_day *day)
{
    int most = 0;
    for (int e = 0; e < day->entry_count; e++) {
        int width = columns_of(day->entries[e].lift->name, strlen(day->entries[e].lift->name));
        most = diary_has_entry(&day->entries[e]) && width > most ? width : most;
    }
    return most;
}

static void day_write(struct out *out, struct row row)
{
    bool dated = date_is_set(row.day->date);
    int width = widest(row.day);
    diary_session_open(out, row.week, row.day, dated ? row.day->date : row.week->start);
    out_text(out, dated ? "\n" : "  # without a date in the plan: write the day it was trained\n");
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        if (!diary_has_entry(row.entry))
            continue;
        const char *name = row.entry->lift->name;
        out_text(out, "    ");
        out_text(out, name);
        out_chars(out, ' ', width - columns_of(name, strlen(name)));
        out_text(out, " as planned  ");
        entry_say(out, row);
        out_char(out, '\n');
    }
    out_text(out, "    # session rpe 7 for 80 min\n");
    diary_session_close(out);
}

bool blank_diary(struct out *out, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans,
                 int count)
{
    bool open = false;
    for (int i = 0; i < count; i++)
        for (int w = 0; w < plans[i]->week_count; w++)
            for (int d = 0; d < plans[i]->weeks[w].day_count; d++) {
                struct row row = { .plan = plans[i], .week = &plans[i]->weeks[w], .day = &plans[i]->weeks[w].days[d] };
                if (!narrow_has_day(narrow, row.week, row.day))
                    continue;
                if (!open) {
                    out_char(out, '\n');
                    diary_open(out, athlete->name);
                    open = true;
                }
                day_write(out, row);
            }
    if (open)
        diary_close(out);
    return out_settle(out);
}
