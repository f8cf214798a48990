#include "api/inner.h"
#include "api/match.h"

#include "emit/visible.h"

struct collecting {
    struct setwright *sw;
    struct matching matching; /* of one athlete at a time */
    struct out out;
    VEC(const struct filled_row *) rows;
    int *first, *last, *next; /* rows chained by athlete (by its order); -1: none */
    int sessions;
};

/* ---- sheets ---- */

static void sheet_read(struct collecting *c, const char *path)
{
    struct setwright *sw = c->sw;
    size_t length = 0;
    const char *why = "it cannot be read", *bytes = sw->reader.read(sw->reader.context, path, &length, &why);
    struct source *source = bytes ? sources_add(sw->sources, path, bytes, length) : NULL;
    if (!bytes)
        diag_add(sw->findings, KIND_FILE, (struct span){ 0 }, "%s: %s", path, why);
    else if (!source)
        diag_add(sw->findings, KIND_LIMIT, (struct span){ 0 }, "%s: all files together pass 4 GB", path);
    else {
        struct filled filled = filled_read(sw->arena, sw->interner, source, sw->findings);
        for (int i = 0; i < filled.count; i++)
            vec_add(sw->work, &c->rows, &filled.rows[i]);
    }
}

/* ---- whose rows ---- */

/* Once for each name. */
static void athlete_unknown(struct collecting *c, int at)
{
    const struct filled_cell *cell = &c->rows.at[at]->cells[FILLED_ATHLETE];
    for (int i = 0; i < at; i++)
        if (c->rows.at[i]->is_filled && c->rows.at[i]->cells[FILLED_ATHLETE].text == cell->text)
            return;
    const char *near = model_nearest_person(c->sw->model, cell->text);
    struct finding *finding = diag_add(c->sw->findings, KIND_SHEET, cell->at, "no athlete is called %.60s", cell->text);
    if (near)
        diag_help(c->sw->findings, finding, "did you mean %s?", near);
    else
        diag_help(c->sw->findings, finding, "is the file with this athlete among those named on the command line?");
}

static void rows_chain(struct collecting *c)
{
    const struct model *model = c->sw->model;
    c->first = NEW_MANY(c->sw->work, int, model->athlete_count + 1);
    c->last = NEW_MANY(c->sw->work, int, model->athlete_count + 1);
    c->next = NEW_MANY(c->sw->work, int, c->rows.count + 1);
    const struct athlete *athlete = NULL;
    for (int i = 0; i < model->athlete_count; i++)
        c->first[i] = -1;
    for (int i = 0; i < c->rows.count; i++) {
        const char *name = c->rows.at[i]->cells[FILLED_ATHLETE].text;
        if (!athlete || athlete->name != name)
            athlete = model_athlete(model, name);
        c->next[i] = -1;
        if (!athlete) {
            if (c->rows.at[i]->is_filled)
                athlete_unknown(c, i);
            continue;
        }
        if (c->first[athlete->order] < 0)
            c->first[athlete->order] = i;
        else
            c->next[c->last[athlete->order]] = i;
        c->last[athlete->order] = i;
    }
}

/* ---- one athlete ---- */

static void rows_match(struct collecting *c, const struct athlete *athlete)
{
    struct matching *m = &c->matching;
    for (int i = c->first[athlete->order]; i >= 0; i = c->next[i])
        if (c->rows.at[i]->is_filled)
            match_filled(m, c->rows.at[i]);
    for (int i = c->first[athlete->order]; i >= 0; i = c->next[i])
        if (!c->rows.at[i]->is_filled)
            match_empty(m, c->rows.at[i]);
    match_dates(m);
    c->first[athlete->order] = -1;
}

static void session_write(struct collecting *c, const struct session *session)
{
    struct done_sets *done = NEW_MANY(c->sw->work, struct done_sets, session->slot_count + 1);
    for (int i = 0; i < session->slot_count; i++)
        done[i] = session->slots[i].done;
    diary_session(&c->out, session->week, session->day, session->date, done);
    c->sessions++;
}

/* By date; those of one day as the plan has them. */
static void diary_write(struct collecting *c)
{
    VEC(const struct session *) trained = { 0 };
    for (int i = 0; i < c->matching.sessions.count; i++) {
        const struct session *session = &c->matching.sessions.at[i];
        if (!session->first)
            continue;
        vec_add(c->sw->work, &trained, session);
        int at = trained.count - 1;
        for (; at > 0 && trained.at[at - 1]->date.day > session->date.day; at--)
            trained.at[at] = trained.at[at - 1];
        trained.at[at] = session;
    }
    if (!trained.count)
        return;
    out_char(&c->out, '\n');
    diary_open(&c->out, c->matching.athlete->name);
    for (int i = 0; i < trained.count; i++)
        session_write(c, trained.at[i]);
    diary_close(&c->out);
}

static void athlete_begin(struct collecting *c, const struct athlete *athlete)
{
    c->matching = (struct matching){
        .arena = c->sw->work, .findings = c->sw->findings, .model = c->sw->model, .athlete = athlete
    };
}

static void athletes_collect(struct collecting *c)
{
    struct setwright *sw = c->sw;
    for (int first = 0, next; first < sw->pairs.count; first = next) {
        const struct athlete *athlete = sw->pairs.at[first].athlete;
        bool is_asked = c->first[athlete->order] >= 0;
        athlete_begin(c, athlete);
        plans_forget(sw);
        for (next = first; next < sw->pairs.count && sw->pairs.at[next].athlete == athlete; next++) {
            struct plan *plan = is_asked ? plan_add(sw, &sw->pairs.at[next]) : NULL;
            if (plan)
                match_plan(&c->matching, plan);
        }
        rows_match(c, athlete);
        if (!findings_count(sw->findings, LEVEL_ERROR))
            diary_write(c);
    }
    for (int i = 0; i < sw->model->athlete_count; i++) { /* those of no block */
        athlete_begin(c, sw->model->athletes[i]);
        rows_match(c, sw->model->athletes[i]);
    }
}

static void head_write(struct collecting *c, const char *const *sheets, int count)
{
    out_text(&c->out, "# Collected from ");
    for (int i = 0; i < count; i++) {
        out_text(&c->out, i ? ", " : "");
        visible_add(&c->out, sheets[i], strlen(sheets[i]), VISIBLE_ONE_LINE);
    }
    out_char(&c->out, '\n');
}

enum setwright_status setwright_collect(struct setwright *sw, const char *const *sheets, int count,
                                        struct setwright_sink sink, int *sessions)
{
    GUARD(sw);
    struct setwright_choice all = { 0 };
    struct chosen chosen;
    enum setwright_status status = api_choose(sw, &all, &chosen);
    *sessions = 0;
    if (status)
        return status;
    struct collecting collecting = { .sw = sw, .out = out_scratch(sw->work) };
    sw->heard = sw->allowed = NULL;
    for (int i = 0; i < count; i++)
        sheet_read(&collecting, sheets[i]);
    rows_chain(&collecting);
    head_write(&collecting, sheets, count);
    athletes_collect(&collecting);
    if ((status = api_status(sw)))
        return status;
    *sessions = collecting.sessions;
    return !collecting.sessions || sink.write(sink.context, collecting.out.at, collecting.out.used) ? SETWRIGHT_FINE
                                                                                                    : SETWRIGHT_FILES;
}
