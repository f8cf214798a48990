#include "api/match.h"

#include "base/near.h"
#include "emit/cells.h"
#include "emit/wording.h"

static const char changed[] =
    "has the plan changed since this sheet was printed? print it anew, or write the diary by hand";

struct finding *match_refuse(struct matching *m, const struct filled_row *row, struct span at, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    struct finding *finding = diag_vadd(m->findings, KIND_SHEET, at, format, args);
    va_end(args);
    diag_setting(m->findings, finding,
                 (struct setting){ .block = row->cells[FILLED_BLOCK].text,
                                   .week = row->week,
                                   .day = row->cells[FILLED_DAY].text,
                                   .athlete = m->athlete->name });
    return finding;
}

void match_plan(struct matching *m, const struct plan *plan)
{
    for (int w = 0; w < plan->week_count; w++)
        for (int d = 0; d < plan->weeks[w].day_count; d++) {
            const struct plan_day *day = &plan->weeks[w].days[d];
            struct session session = { .plan = plan, .week = &plan->weeks[w], .day = day, .date = day->date };
            for (int e = 0; e < day->entry_count; e++)
                for (int g = 0; g < day->entries[e].group_count; g++)
                    session.slot_count += day->entries[e].groups[g].run_count;
            session.slots = NEW_MANY(m->arena, struct slot, session.slot_count + 1);
            vec_add(m->arena, &m->sessions, session);
        }
}

/* The plan's row of that number. */
static struct row row_at(const struct session *session, int seq)
{
    struct row row = { .plan = session->plan, .week = session->week, .day = session->day, .seq = 0 };
    for (int e = 0; e < row.day->entry_count; e++) {
        row.entry = &row.day->entries[e];
        for (int g = 0; g < row.entry->group_count; g++) {
            row.group = &row.entry->groups[g];
            for (int r = 0; r < row.group->run_count; r++) {
                row.run = &row.group->runs[r];
                if (++row.seq == seq)
                    return row;
            }
        }
    }
    return row;
}

/* ---- which session ---- */

static bool is_named(const struct session *session, const struct filled_row *row)
{
    return session->week->number == row->week && !strcmp(session->day->day->label, row->cells[FILLED_DAY].text) &&
           !strcmp(session->plan->block->name, row->cells[FILLED_BLOCK].text);
}

/* How well the date fits: a day of two dates a week, and a block that is run again, have several sessions of one name. */
static int date_fits(const struct session *session, const struct filled_row *row)
{
    if (date_is_set(session->day->date))
        return session->day->date.day == row->date.day ? 2 : 0;
    return row->date.day >= session->week->start.day && row->date.day < session->week->start.day + 7;
}

static struct session *session_find(struct matching *m, const struct filled_row *row)
{
    struct session *best = m->last && is_named(m->last, row) && date_fits(m->last, row) == 2 ? m->last : NULL;
    for (int i = 0; !best && i < m->sessions.count; i++)
        if (is_named(&m->sessions.at[i], row) && date_fits(&m->sessions.at[i], row) == 2)
            best = &m->sessions.at[i];
    for (int fit = 1; !best && fit >= 0; fit--)
        for (int i = 0; !best && i < m->sessions.count; i++)
            if (is_named(&m->sessions.at[i], row) && date_fits(&m->sessions.at[i], row) >= fit)
                best = &m->sessions.at[i];
    return m->last = best;
}

static const char *block_near(struct matching *m, const char *wrong, bool *is_there)
{
    const char **names = NEW_MANY(m->arena, const char *, m->model->block_count + 1);
    *is_there = false;
    for (int i = 0; i < m->model->block_count; i++) {
        names[i] = m->model->blocks[i]->name;
        *is_there |= !strcmp(names[i], wrong);
    }
    return word_nearest(wrong, names, m->model->block_count);
}

static void block_unknown(struct matching *m, const struct filled_row *row)
{
    const struct filled_cell *cell = &row->cells[FILLED_BLOCK];
    bool is_there;
    const char *near = block_near(m, cell->text, &is_there);
    if (is_there) {
        struct finding *finding =
            match_refuse(m, row, cell->at, "%s does not train in block %s", m->athlete->name, cell->text);
        diag_help(m->findings, finding, "%s", changed);
        return;
    }
    struct finding *finding = match_refuse(m, row, cell->at, "no block is called %s", cell->text);
    if (near)
        diag_help(m->findings, finding, "did you mean %s?", near);
    else
        diag_help(m->findings, finding, "is the file with this block among those named on the command line?");
}

/* Why there is no session of that name: the first of block, week and day that is not there. Once for the rows of a session. */
static void session_unknown(struct matching *m, const struct filled_row *row)
{
    const struct filled_row *before = m->unknown;
    m->unknown = row;
    if (before && !strcmp(before->cells[FILLED_BLOCK].text, row->cells[FILLED_BLOCK].text) &&
        before->week == row->week && !strcmp(before->cells[FILLED_DAY].text, row->cells[FILLED_DAY].text))
        return;
    bool has_block = false, has_week = false;
    int weeks = 0;
    for (int i = 0; i < m->sessions.count; i++) {
        const struct session *session = &m->sessions.at[i];
        if (strcmp(session->plan->block->name, row->cells[FILLED_BLOCK].text) != 0)
            continue;
        has_block = true;
        has_week |= session->week->number == row->week;
        weeks = session->plan->week_count;
    }
    if (!has_block) {
        block_unknown(m, row);
        return;
    }
    struct finding *finding;
    if (row->week > weeks)
        finding = match_refuse(m, row, row->cells[FILLED_WEEK].at, "the block has %d week%s, and this is week %d",
                               weeks, weeks == 1 ? "" : "s", row->week);
    else
        finding = match_refuse(m, row, row->cells[has_week ? FILLED_DAY : FILLED_WEEK].at,
                               has_week ? "there is no day %s in this week of the plan"
                                        : "the plan has no day at all in this week, and the sheet day %s",
                               row->cells[FILLED_DAY].text);
    diag_help(m->findings, finding, "%s", changed);
}

/* ---- whether the row is still the plan's ---- */

struct compared {
    enum filled_column column;
    const char *one, *many; /* what its number counts, or NULL */
};

static const struct compared compared[] = {
    { FILLED_LIFT, NULL, NULL },          { FILLED_ROLE, NULL, NULL },           { FILLED_SETS, " set", " sets" },
    { FILLED_REPS_LOW, " rep", " reps" }, { FILLED_REPS_HIGH, " rep", " reps" }, { FILLED_LOAD, NULL, NULL },
    { FILLED_UNIT, NULL, NULL },
};

static const char *plan_cell(struct matching *m, const struct row *row, enum filled_column column)
{
    struct out text = out_scratch(m->arena);
    for (int i = 0; i < COLUMN_COUNT; i++)
        if (!strcmp(columns[i].name, filled_column_name(column)))
            columns[i].write(&text, row);
    out_char(&text, 0);
    return text.at;
}

static const char *counted(struct matching *m, const struct compared *column, const struct row *row, const char *text)
{
    bool is_number = cell_is_number(text, strlen(text));
    if (column->column == FILLED_LOAD)
        return arena_format(m->arena, "%s %s", text, unit_word(row->day->gym->unit));
    return column->one && is_number
               ? arena_format(m->arena, "%s%s", text, strcmp(text, "1") ? column->many : column->one)
               : text;
}

static void differs(struct matching *m, const struct filled_row *row, const struct compared *column,
                    const struct row *plan, const char *text)
{
    const struct filled_cell *cell = &row->cells[column->column];
    const char *says = counted(m, column, plan, text);
    struct finding *finding;
    if (!*text)
        finding = match_refuse(m, row, cell->at, "the plan leaves this open, and the sheet says %.60s", cell->text);
    else if (!*cell->text)
        finding = match_refuse(m, row, cell->at, "the plan says %s here, and in the sheet the cell is empty", says);
    else
        finding = match_refuse(m, row, cell->at, "the plan says %s here, the sheet %.60s", says, cell->text);
    diag_help(m->findings, finding, "%s%s",
              column->column == FILLED_LOAD ? "what was lifted goes under done_load; " : "", changed);
}

/* A unit may be written down where the plan leaves the load open. */
static bool unit_is_extra(const struct filled_row *row, const struct compared *column, const struct row *plan)
{
    return column->column == FILLED_UNIT && !plan->run->has_load &&
           filled_same(row, FILLED_UNIT, unit_word(plan->day->gym->unit));
}

static bool is_the_plans(struct matching *m, struct session *session, const struct filled_row *row,
                         const struct row *plan)
{
    for (size_t i = 0; i < sizeof compared / sizeof *compared; i++) {
        const char *text = plan_cell(m, plan, compared[i].column);
        if (!row->cells[compared[i].column].text || filled_same(row, compared[i].column, text) ||
            unit_is_extra(row, &compared[i], plan))
            continue;
        if (!session->moved)
            differs(m, row, &compared[i], plan, text);
        session->moved |= compared[i].column == FILLED_LIFT || compared[i].column == FILLED_ROLE;
        return false;
    }
    return true;
}

static bool date_is_the_plans(struct matching *m, struct session *session, const struct filled_row *row)
{
    const struct filled_cell *cell = &row->cells[FILLED_DATE];
    struct finding *finding;
    if (date_is_set(session->day->date)) {
        if (session->day->date.day == row->date.day)
            return true;
        const char *date = date_text(m->arena, session->day->date);
        if (date_is_set(row->date))
            finding = match_refuse(m, row, cell->at, "the plan has this day on %s, the sheet on %s", date, cell->text);
        else
            finding =
                match_refuse(m, row, cell->at, "the plan has this day on %s, and in the sheet the date is empty", date);
        diag_help(m->findings, finding,
                  "print the sheet anew if the plan has changed; a session trained on another day goes into the diary "
                  "by hand");
        return false;
    }
    if (!date_is_set(row->date) || session->date.day == row->date.day)
        return true;
    if (date_is_set(session->date)) {
        finding = match_refuse(m, row, cell->at, "this session has another date, %s, in another row",
                               date_text(m->arena, session->date));
        diag_help(m->findings, finding, "write one date for all rows of the session");
        diag_related(m->findings, finding, session->dated->cells[FILLED_DATE].at, "the other date is here");
        return false;
    }
    session->date = row->date;
    session->dated = row;
    return true;
}

/* ---- rows ---- */

static void twice(struct matching *m, const struct filled_row *row, const struct filled_row *first)
{
    struct finding *finding = match_refuse(m, row, row->at, "this row of the plan is filled in a second time");
    diag_help(m->findings, finding, "keep one of the two, and empty done_load, done_reps and done_rpe of the other");
    diag_related(m->findings, finding, first->at, "it is filled in here first");
}

void match_filled(struct matching *m, const struct filled_row *row)
{
    struct session *session = session_find(m, row);
    if (!session) {
        session_unknown(m, row);
        return;
    }
    if (row->seq > session->slot_count) {
        struct finding *finding =
            match_refuse(m, row, row->cells[FILLED_SEQ].at, "this day of the plan has %d row%s, and this is row %d",
                         session->slot_count, session->slot_count == 1 ? "" : "s", row->seq);
        diag_help(m->findings, finding, "%s", changed);
        return;
    }
    struct slot *slot = &session->slots[row->seq - 1];
    struct row plan = row_at(session, row->seq);
    if (slot->filled) {
        twice(m, row, slot->filled);
        return;
    }
    if (!is_the_plans(m, session, row, &plan) || !date_is_the_plans(m, session, row))
        return;
    slot->filled = row;
    session->first = session->first ? session->first : row;
    if (plan.group->role != ROLE_WARM_UP)
        done_make(m, row, &plan, &slot->done);
}

void match_empty(struct matching *m, const struct filled_row *row)
{
    struct session *session = session_find(m, row);
    if (!session || !session->first || row->seq > session->slot_count || session->slots[row->seq - 1].filled)
        return;
    struct row plan = row_at(session, row->seq);
    if (is_the_plans(m, session, row, &plan) && date_is_the_plans(m, session, row))
        session->slots[row->seq - 1].done.asked = true;
}

void match_dates(struct matching *m)
{
    for (int i = 0; i < m->sessions.count; i++) {
        const struct session *session = &m->sessions.at[i];
        if (!session->first || date_is_set(session->date))
            continue;
        struct finding *finding = match_refuse(m, session->first, session->first->cells[FILLED_DATE].at,
                                               "the plan gives this day no date, and the sheet has none");
        diag_help(m->findings, finding, "write under date the day it was trained: 2027-01-04");
    }
}
