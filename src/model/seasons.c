/* Seasons: blocks and breaks back to back, counted back from the last meet, or on from `starts` (language.md, Season and meet). */
#include "model/club.h"

struct season_making {
    struct club *club;
    struct decl *decl;
    struct season *season;
    struct place place;
    VEC(struct meet) meets;
    VEC(struct season_run) runs;
    VEC(struct attempts_line) attempts;
    const struct node *starts;
};

const struct meet *season_next_meet(const struct season *season, struct date day)
{
    int low = 0, high = season ? season->meet_count : 0; /* those below `low` are before the day, those from `high` on are not */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (season->meets[middle].date.day < day.day)
            low = middle + 1;
        else
            high = middle;
    }
    return season && low < season->meet_count ? &season->meets[low] : NULL;
}

const struct season *season_of(struct decl *decl)
{
    return decl->made;
}

static void season_meet(struct season_making *m, const struct node *node)
{
    const struct node *on = node_child(node, NODE_ON);
    struct meet meet = { .title = text_behind(&m->place, node->child), .at = node->at };
    if (!on || !on->child)
        return;
    meet.date = on->child->date;
    meet.date_at = on->child->at;
    for (int i = 0; i < m->meets.count; i++)
        if (m->meets.at[i].date.day == meet.date.day) {
            struct finding *finding = place_finding(&m->place, KIND_REPEATED, meet.date_at, "a second meet on the same day");
            diag_related(m->club->findings, finding, m->meets.at[i].at, "the first one is here");
            diag_help(m->club->findings, finding, "mend its date, or take one of them out");
            return;
        }
    int at = m->meets.count;
    vec_add(m->club->arena, &m->meets, meet);
    for (; at > 0 && m->meets.at[at - 1].date.day > meet.date.day; at--)
        m->meets.at[at] = m->meets.at[at - 1];
    m->meets.at[at] = meet;
}

/* NULL: a template, a season or nothing of the name. */
static struct decl *block_to_run(struct season_making *m, const struct node *name)
{
    struct decl *decl = names_find(m->club, SPACE_BLOCK, name->text);
    if (!decl) {
        const char *near = names_nearest(m->club, SPACE_BLOCK, name->text);
        m->club->run_unknown = true;
        struct finding *unknown = place_finding(&m->place, KIND_UNKNOWN_NAME, name->at, "no block is called %s", name->text);
        diag_help(m->club->findings, unknown, near ? "did you mean %s?" : "declare it in one of the files, as `block %s { … }`, or `use` the file that does", near ? near : name->text);
        return NULL;
    }
    decl->used = true;
    if (decl->node->kind == NODE_BLOCK)
        return decl;
    struct finding *finding = place_finding(&m->place, KIND_SEASON, name->at, "%s is a %s, and a season runs blocks", name->text,
                                            decl->node->kind == NODE_TEMPLATE ? "template" : "season");
    diag_related(m->club->findings, finding, decl->at, "%s is declared here", decl->name);
    if (decl->node->kind == NODE_TEMPLATE)
        diag_help(m->club->findings, finding, "write `block NAME from %s { … }` and run that", decl->name);
    else
        diag_help(m->club->findings, finding, "name the blocks themselves, one by one");
    return NULL;
}

/* One item of `run`; false: how long it takes is not known, which has been said or will be said at the block. */
static bool season_item(struct season_making *m, const struct node *item)
{
    struct season_run run = { .at = item->at };
    if (item->kind == NODE_BREAK)
        whole_of(&m->place, item->child, "a number of weeks", 1, WEEKS_MOST, &run.weeks);
    else if ((run.decl = block_to_run(m, item)))
        run.weeks = block_weeks_of(m->club, run.decl);
    else
        return false;
    vec_add(m->club->arena, &m->runs, run);
    return run.weeks > 0;
}

static bool season_runs(struct season_making *m, const struct node *node)
{
    bool whole = true, trains = false;
    for (const struct node *item = node->child; item; item = item->next) {
        whole &= season_item(m, item);
        trains |= item->kind != NODE_BREAK;
    }
    if (!trains)
        diag_help(m->club->findings, place_finding(&m->place, KIND_MISSING, node->at, "this season has a break and no block"),
                  "name the blocks in their order: `run base, break 1 week, peak`");
    return whole;
}

/* ---- attempts ---- */

/* Three plain per cents; in a meet the bar is never loaded lighter than before. */
static bool attempts_fit(struct season_making *m, const struct series *series, const struct lift *lift, struct span at)
{
    const struct series_week *three = &series->weeks[0];
    if (series->kind != SERIES_LIST || series->count != 1 || three->count != 3) {
        struct finding *finding = place_finding(&m->place, KIND_LIST_LENGTH, at, "a lift has three attempts in a meet");
        diag_help(m->club->findings, finding, "write them with commas: `attempts %s 91%%, 96%%, 101%%`", lift->name);
        return false;
    }
    for (int i = 0; i < 3; i++) {
        bool band = three->sets[i].low.e10 != three->sets[i].high.e10;
        if (!band && (i == 0 || three->sets[i].low.e10 >= three->sets[i - 1].low.e10))
            continue;
        struct finding *finding = place_finding(&m->place, KIND_RANGE, at, band ? "an attempt is one per cent, not from one to another"
                                                                                : "an attempt is never lighter than the one before it");
        diag_help(m->club->findings, finding, "write them from light to heavy: `attempts %s 91%%, 96%%, 101%%`", lift->name);
        return false;
    }
    return true;
}

static bool attempts_first(struct season_making *m, const struct lift *lift, struct span at)
{
    for (int i = 0; i < m->attempts.count; i++)
        if (m->attempts.at[i].lift == lift) {
            struct finding *finding = place_finding(&m->place, KIND_REPEATED, at, "a second line of attempts for %s", lift->name);
            diag_related(m->club->findings, finding, m->attempts.at[i].at, "the first one is here");
            diag_help(m->club->findings, finding, "keep the one you mean");
            return false;
        }
    return true;
}

static void attempts_lift(struct season_making *m, const struct lift *lift, struct span at)
{
    if (lift->kind == LIFT_COMPETITION)
        return;
    struct finding *finding = place_finding(&m->place, KIND_SEASON, at, "%s is no competition lift", lift->name);
    diag_level(m->club->findings, finding, LEVEL_WARNING);
    diag_related(m->club->findings, finding, lift->at, "%s is declared here", lift->name);
    diag_help(m->club->findings, finding, "write `kind competition` there, or take the attempts out");
}

static void season_attempts(struct season_making *m, const struct node *node)
{
    struct attempts_line line = { .at = node->at };
    const struct node *list = node->child ? node->child->next : NULL;
    struct value value = list ? value_of(&m->place, list, &want_percent) : (struct value){ 0 };
    line.lift = lift_of_node(&m->place, node->child);
    if (!line.lift || !value.series || !attempts_fit(m, value.series, line.lift, list->at) ||
        !attempts_first(m, line.lift, node->child->at))
        return;
    attempts_lift(m, line.lift, node->child->at);
    line.percent_at = list->at;
    for (int i = 0; i < 3; i++)
        line.percent[i] = value.series->weeks[0].sets[i].low;
    vec_add(m->club->arena, &m->attempts, line);
}

/* What is said of a meet when there is none. */
static void meetless(struct season_making *m)
{
    static const struct {
        enum node_kind kind;
        const char *says;
    } lines[] = { { NODE_ATTEMPTS, "attempts are for a meet, and this season has none" },
                  { NODE_GYM_REF, "this gym is the meet's, and this season has none" } };
    for (size_t i = 0; !m->meets.count && i < sizeof lines / sizeof *lines; i++) {
        const struct node *node = node_child(m->decl->node, lines[i].kind);
        if (!node)
            continue;
        struct finding *finding = place_finding(&m->place, KIND_SEASON, node->at, "%s", lines[i].says);
        diag_level(m->club->findings, finding, LEVEL_WARNING);
        diag_help(m->club->findings, finding, "add a line such as `meet \"Lakeside Open\" on 2027-04-17`, or take this one out");
    }
}

/* ---- dates ---- */

static void starts_monday(struct season_making *m)
{
    struct date date = m->starts->child->date, monday = date_monday(date);
    if (date_weekday(date) == MON)
        return;
    struct finding *finding = place_finding(&m->place, KIND_SEASON, m->starts->child->at, "a season starts on a Monday, and this is a %s",
                                            weekday_title(date_weekday(date)));
    diag_help(m->club->findings, finding, "write %s or %s", date_text(m->club->arena, monday), date_text(m->club->arena, date_plus(monday, 7)));
}

/* Where the season begins; none after a finding, or where that is said with what else is missing. */
static struct date season_start(struct season_making *m)
{
    const struct meet *last = m->meets.count ? &m->meets.at[m->meets.count - 1] : NULL;
    if (last && m->starts) {
        struct finding *finding = place_finding(&m->place, KIND_SEASON, m->starts->at, "this season is counted back from its meet, so it has no start of its own");
        diag_related(m->club->findings, finding, last->at, "the last meet is here");
        diag_help(m->club->findings, finding, "take `starts` out, or the meet");
        return (struct date){ 0 };
    }
    if (m->starts)
        starts_monday(m);
    if (!last && !m->starts)
        return (struct date){ 0 };
    struct date start = last ? date_plus(date_monday(last->date), -7 * (m->season->weeks - 1)) : m->starts->child->date;
    if (date_is_set(date_plus(start, 7 * (m->season->weeks + WEEKS_MOST))))
        return start;
    diag_help(m->club->findings, place_finding(&m->place, KIND_RANGE, last ? last->date_at : m->starts->child->at, "this season runs beyond the calendar"),
              "write a date such as 2027-04-17");
    return (struct date){ 0 };
}

static void season_dates(struct season_making *m)
{
    struct date start = m->season->start = season_start(m);
    if (!date_is_set(start))
        return;
    for (int i = 0; i < m->runs.count; i++) {
        m->runs.at[i].start = start;
        start = date_plus(start, 7 * m->runs.at[i].weeks);
    }
    for (int i = 0; i < m->meets.count; i++)
        if (m->meets.at[i].date.day < m->season->start.day) {
            struct finding *finding = place_finding(&m->place, KIND_SEASON, m->meets.at[i].date_at, "this meet comes before the season, whose blocks start on %s",
                                                    date_text(m->club->arena, m->season->start));
            diag_level(m->club->findings, finding, LEVEL_WARNING);
            diag_help(m->club->findings, finding, "mend the date, or add the blocks before it to `run`");
        }
}

/* ---- the whole ---- */

static void season_people(struct season_making *m, const struct node *node)
{
    int before;
    findings_all(m->club->findings, &before);
    m->season->people = people_list(m->club, node->child, NULL);
    if (m->season->people->count || findings_erred_after(m->club->findings, before))
        return;
    struct finding *finding = place_finding(&m->place, KIND_MISSING, node->child->at, "nobody is among these, so the season is built for nobody");
    diag_level(m->club->findings, finding, LEVEL_WARNING);
    diag_help(m->club->findings, finding, "put athletes into the group, or name some here");
}

static void season_line(struct season_making *m, const struct node *node)
{
    struct season *season = m->season;
    struct decl *gym;
    switch (node->kind) {
    case NODE_TITLE: season->title = text_behind(&m->place, node->child); break;
    case NODE_FOR: season_people(m, node); break;
    case NODE_STARTS: m->starts = node; break;
    case NODE_MEET: season_meet(m, node); break;
    case NODE_ATTEMPTS: season_attempts(m, node); break;
    case NODE_GYM_REF:
        if ((gym = names_use_in(&m->place, SPACE_GYM, node->child)))
            season->gym = gym_of(m->club, gym);
        break;
    default: break;
    }
}

static void once_each(struct season_making *m)
{
    static const enum node_kind once[] = { NODE_TITLE, NODE_FOR, NODE_STARTS, NODE_RUN, NODE_GYM_REF };
    for (size_t i = 0; i < sizeof once / sizeof *once; i++) {
        const struct node *first = node_child(m->decl->node, once[i]), *again = first ? node_next(first, once[i]) : NULL;
        if (!again)
            continue;
        struct finding *finding = place_finding(&m->place, KIND_REPEATED, again->at, "this is said twice in one season");
        diag_related(m->club->findings, finding, first->at, "the first time is here");
        diag_help(m->club->findings, finding, once[i] == NODE_RUN ? "write one `run` with all blocks: `run base, break 1 week, peak`" : "keep the line that is right");
    }
}

/* One finding for all that is missing, as in blocks. */
static bool must_state(struct season_making *m)
{
    static const struct {
        enum node_kind kind, or;
        const char *word, *example;
    } lines[] = { { NODE_FOR, NODE_FOR, "`for`", "for all" },
                  { NODE_MEET, NODE_STARTS, "a `meet` or when it `starts`", "meet \"Lakeside Open\" on 2027-04-17" },
                  { NODE_RUN, NODE_RUN, "`run`", "run base, break 1 week, peak" } };
    const char *missing = NULL, *example = NULL;
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        if (node_child(m->decl->node, lines[i].kind) || node_child(m->decl->node, lines[i].or))
            continue;
        missing = missing ? arena_format(m->club->arena, "%s, %s", missing, lines[i].word) : lines[i].word;
        example = example ? arena_format(m->club->arena, "%s; %s", example, lines[i].example) : lines[i].example;
    }
    if (!missing)
        return true;
    struct finding *finding = place_finding(&m->place, KIND_MISSING, m->decl->at, "season %s does not say %s", m->decl->name, missing);
    diag_help(m->club->findings, finding, "add `%s`, with your own", example);
    return false;
}

static void season_keep(struct season_making *m)
{
    struct season *season = m->season;
    season->meets = m->meets.at, season->meet_count = m->meets.count;
    season->runs = m->runs.at, season->run_count = m->runs.count;
    season->attempts = m->attempts.at, season->attempt_count = m->attempts.count;
    season->notes = notes_of(&m->place, m->decl->node, &season->note_count);
}

/* A season with a mistake is kept, without dates, so that its blocks are not taken for blocks on their own. */
static void season_make(struct club *club, struct decl *decl)
{
    struct season *season = NEW(club->arena, struct season);
    struct season_making m = { .club = club, .decl = decl, .season = season, .place = { .club = club, .file = decl->file } };
    *season = (struct season){ .name = decl->name, .at = decl->at, .people = &people_nobody };
    once_each(&m);
    bool stated = must_state(&m);
    for (const struct node *node = decl->node->child; node; node = node->next)
        season_line(&m, node);
    bool whole = stated;
    for (const struct node *run = node_child(decl->node, NODE_RUN); run; run = node_next(run, NODE_RUN))
        whole &= season_runs(&m, run);
    for (int i = 0; i < m.runs.count; i++)
        season->weeks += m.runs.at[i].weeks;
    season_keep(&m);
    meetless(&m);
    if (whole)
        season_dates(&m);
    decl->made = season;
    vec_add(club->arena, &club->seasons, season);
}

void seasons_make(struct club *club)
{
    for (int i = 0; i < club->decls[SPACE_BLOCK].count; i++)
        if (club->decls[SPACE_BLOCK].at[i]->node->kind == NODE_SEASON)
            season_make(club, club->decls[SPACE_BLOCK].at[i]);
}
