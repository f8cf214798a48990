/* A club made from texts in memory, for the tests of model/, plan/ and the library: nothing is read from the disk.
 *
 * Most tests are rows: a sentence of the design, a few lines of a block, and the plan or the findings that must come of
 * them. A plan is written short, by plan_text below; a finding as its level, its kind and the words it points at. */
#ifndef TESTS_UNIT_CLUB_H
#define TESTS_UNIT_CLUB_H

#include "model/resolve.h"
#include "plan/record.h"

#include "tables.h"

struct paper {
    const char *path, *text;
};

struct told {
    struct arena *arena;
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct loaded loaded;
    struct model *model; /* NULL while only loaded, or after errors in reading */
};

/* A gym with discs for every load of 2.5 kg up to 440, one of each way to load a lift, and an athlete with round maxes:
 * 1 % of her sled is 10 kg, so that a load divided by ten is its per cent. */
#define HALL \
    "units kg\n" \
    "gym hall { bar 20 kg; plates 25 x 16, 10 x 4, 5 x 2, 2.5 x 2, 1.25 x 2 kg; dumbbells 5 to 40 step 2.5 kg; " \
    "stack 5 to 100 step 5 kg }\n" \
    "lift squat { kind competition; loads bar; works quads, glutes; helps trunk }\n" \
    "lift bench { kind competition; loads bar; works chest; helps arms }\n" \
    "lift deadlift { kind competition; loads bar; works back; helps trunk }\n" \
    "lift front-squat like squat at 80%\n" \
    "lift pull-up { loads bodyweight; works back }\n" \
    "lift press { loads dumbbells; works shoulders }\n" \
    "lift pulldown { loads stack; works back }\n" \
    "lift sled\n" \
    "lift curl\n"

#define INES \
    "athlete ines { gym hall; bodyweight 60 kg; max squat 100 kg; max bench 60 kg; max sled 1000 kg; " \
    "max pull-up 80 kg; max press 20 kg; max pulldown 50 kg }\n"

static inline const char *paper_read(void *context, const char *path, size_t *length, const char **why)
{
    for (const struct paper *paper = context; paper->path; paper++)
        if (!strcmp(paper->path, path)) {
            *length = strlen(paper->text);
            return paper->text;
        }
    *why = "no such file";
    return NULL;
}

static jmp_buf told_out_of_memory;

static inline struct told told_begin(void)
{
    struct told t = { .arena = arena_new(&told_out_of_memory) };
    assert_non_null(t.arena);
    t.interner = interner_new(t.arena);
    t.sources = sources_new(t.arena);
    t.findings = findings_new(t.arena, t.sources);
    return t;
}

static inline void told_end(struct told *t)
{
    arena_free(t->arena);
}

/* Reads the papers whose paths are named; the others stand by to be used. */
static inline void told_load(struct told *t, const struct paper *papers, const char *const *named, int count)
{
    int all = 0;
    while (papers[all].path)
        all++;
    struct paper *kept = NEW_MANY(t->arena, struct paper, all + 1);
    memcpy(kept, papers, sizeof *kept * (size_t)all);
    struct reader reader = { paper_read, kept, false };
    t->loaded = load_files(t->arena, t->arena, t->interner, t->sources, t->findings, reader, named, count);
}

static inline void told_resolve(struct told *t)
{
    t->model = model_resolve(t->arena, t->interner, t->sources, t->findings, t->loaded);
}

/* One text and the hall. */
static inline struct told told_club(const char *text)
{
    struct told t = told_begin();
    const struct paper papers[] = { { "hall.block", HALL }, { "club.block", text }, { NULL, NULL } };
    told_load(&t, papers, (const char *const[]){ "hall.block", "club.block" }, 2);
    if (!findings_count(t.findings, LEVEL_ERROR))
        told_resolve(&t);
    return t;
}

static inline struct told told_text(const char *text)
{
    struct told t = told_begin();
    const struct paper papers[] = { { "club.block", text }, { NULL, NULL } };
    told_load(&t, papers, (const char *const[]){ "club.block" }, 1);
    if (!findings_count(t.findings, LEVEL_ERROR))
        told_resolve(&t);
    return t;
}

/* ---- findings in short: "error unknown-name `sqat`; warning weeks `1 | 2`" ---- */

static inline const char *spelt(struct told *t, struct span at)
{
    const struct source *source = span_is_somewhere(at) ? sources_find(t->sources, at.start) : NULL;
    return source ? arena_copy(t->arena, source->text + (at.start - source->base), at.end - at.start) : "";
}

static inline const char *findings_text(struct told *t)
{
    const char *text = "";
    for (int i = 0; i < findings_total(t->findings); i++) {
        const struct finding *finding = findings_sorted(t->findings)[i];
        text = arena_format(t->arena, "%s%s%s %s `%s`", text, *text ? "; " : "", level_name(finding->level),
                            kind_row(finding->kind)->name, spelt(t, finding->at));
    }
    return text;
}

static inline const struct finding *the_finding(struct told *t, enum kind kind)
{
    for (int i = 0; i < findings_total(t->findings); i++)
        if (findings_sorted(t->findings)[i]->kind == kind)
            return findings_sorted(t->findings)[i];
    fail_msg("no finding of the kind %s: %s", kind_row(kind)->name, findings_text(t));
    return NULL;
}

/* ---- plans in short ---- */

static inline const struct athlete *told_athlete(const struct told *t, const char *name)
{
    for (int i = 0; t->model && i < t->model->athlete_count; i++)
        if (!strcmp(t->model->athletes[i]->name, name))
            return t->model->athletes[i];
    fail_msg("nobody is called %s", name);
    return NULL;
}

/* The plan of a block; where she has a diary, after all her blocks before it, by date. `record` may be NULL. */
static inline struct plan *told_plan_record(struct told *t, const char *block, const char *athlete, struct record **record)
{
    enum { BLOCKS_MOST = 16 };
    const struct athlete *who = told_athlete(t, athlete);
    const struct block *blocks[BLOCKS_MOST];
    struct plan *plan = NULL;
    int count = 0;
    for (int i = 0; t->model && i < t->model->block_count && count < BLOCKS_MOST; i++)
        blocks[count++] = model_block_for(t->model, i, who);
    for (int i = 1; i < count; i++)
        for (int j = i; j > 0 && blocks[j - 1]->start.day > blocks[j]->start.day; j--) {
            const struct block *later = blocks[j - 1];
            blocks[j - 1] = blocks[j];
            blocks[j] = later;
        }
    const struct block **kept = NEW_MANY(t->arena, const struct block *, count + 1);
    memcpy(kept, blocks, sizeof *kept * (size_t)count);
    struct record *made = record_new(t->arena, t->model, who, kept, count);
    for (int i = 0; i < count; i++) {
        bool *touched = NEW_MANY(t->arena, bool, blocks[i]->change_count + 1);
        bool named = !strcmp(blocks[i]->name, block);
        if (!named && !made)
            continue;
        struct plan *now = plan_make(t->arena, &(struct plan_job){ .model = t->model, .block = blocks[i], .athlete = who, .record = made, .touched = touched });
        plan = named ? now : plan;
    }
    if (made)
        record_finish(made);
    if (record)
        *record = made;
    if (!plan)
        fail_msg("no block is called %s: %s", block, findings_text(t));
    return plan;
}

static inline struct plan *told_plan(struct told *t, const char *block, const char *athlete)
{
    return told_plan_record(t, block, athlete, NULL);
}

static inline const char *number_in(struct told *t, struct weight weight, enum weight_unit unit)
{
    return dec_text(t->arena, weight_in(weight, unit));
}

/* "80@8", "?@6-7", "<15 % below the top set>"; `!` where a cap lowered it, `_` where the bar was too heavy. */
static inline const char *run_text(struct told *t, const struct plan_run *run, enum weight_unit unit)
{
    const char *low = dec_text(t->arena, run->effort_low), *high = dec_text(t->arena, run->effort_high);
    const char *text = run->has_load ? number_in(t, run->shown, unit)
                     : run->open     ? arena_format(t->arena, "<%s>", run->open)
                                     : "?";
    if (run->has_effort)
        text = arena_format(t->arena, strcmp(low, high) ? "%s@%s-%s" : "%s@%s", text, low, high);
    return arena_format(t->arena, "%s%s%s", text, run->capped ? "!" : "", run->under_bar ? "_" : "");
}

static inline const char *reps_text(struct told *t, const struct plan_group *group)
{
    const char *unit = group->reps_kind == REPS_SECONDS ? "s" : group->reps_kind == REPS_METRES ? "m" : "";
    if (group->reps_kind == REPS_AMRAP)
        return group->reps_low ? arena_format(t->arena, "amrap%d+", group->reps_low) : "amrap";
    if (group->reps_low == group->reps_high)
        return arena_format(t->arena, "%d%s", group->reps_low, unit);
    return arena_format(t->arena, "%d-%d%s", group->reps_low, group->reps_high, unit);
}

/* "top 1x1 80@8, back-off 4x5 70": the groups of an entry, a comma between runs. */
static inline const char *entry_text(struct told *t, const struct plan_entry *entry, enum weight_unit unit)
{
    const char *text = "";
    for (int i = 0; i < entry->group_count; i++)
        for (int j = 0; j < entry->groups[i].run_count; j++) {
            const struct plan_group *group = &entry->groups[i];
            const char *role = group->role == ROLE_WORK ? "" : arena_format(t->arena, "%s ", role_name(group->role));
            text = arena_format(t->arena, "%s%s%s%dx%s %s", text, *text ? ", " : "", role, group->runs[j].sets,
                                reps_text(t, group), run_text(t, &group->runs[j], unit));
        }
    return text;
}

enum showing { SHOW_GROUPS, SHOW_LIFTS, SHOW_DAYS, SHOW_DATES };

static inline const char *day_text(struct told *t, const struct plan *plan, const struct plan_day *day,
                                   enum showing showing)
{
    const char *text = "", *date = date_is_set(day->date) ? date_text(t->arena, day->date) : "-";
    for (int i = 0; i < day->entry_count; i++) {
        const char *lift = showing == SHOW_GROUPS ? "" : arena_format(t->arena, "%s ", day->entries[i].lift->name);
        const char *entry = entry_text(t, &day->entries[i], plan->unit);
        text = arena_format(t->arena, "%s%s%s%s", text, *text ? "; " : "", lift, entry);
    }
    if (showing == SHOW_DATES)
        return arena_format(t->arena, "%s %s", day->day->label, date);
    return showing == SHOW_DAYS ? arena_format(t->arena, "%s: %s", day->day->label, text) : text;
}

/* Weeks apart by " | ", days by " / ", entries by "; ". */
static inline const char *plan_text(struct told *t, const struct plan *plan, enum showing showing)
{
    const char *text = "";
    for (int i = 0; i < plan->week_count; i++) {
        text = arena_format(t->arena, "%s%s", text, i ? " | " : "");
        for (int j = 0; j < plan->weeks[i].day_count; j++) {
            const char *day = day_text(t, plan, &plan->weeks[i].days[j], showing);
            text = arena_format(t->arena, "%s%s%s", text, j ? " / " : "", day);
        }
    }
    return text;
}

/* ---- rows ---- */

struct row {
    const char *says;         /* the sentence of the design */
    const char *block;        /* lines of block winter: for ines, from 2027-01-04, a Monday */
    const char *plan;         /* what comes of it; NULL: not looked at */
    const char *findings;     /* NULL: none */
    const char *declarations; /* before the block; NULL: INES */
    enum showing showing;
};

#define PLAN(sentence, lines, comes) { .says = sentence, .block = lines, .plan = comes }
#define FAULT(sentence, lines, found) { .says = sentence, .block = lines, .findings = found }
#define PLAN_FAULT(sentence, lines, comes, found) { .says = sentence, .block = lines, .plan = comes, .findings = found }
#define SHOW(sentence, lines, how, comes) { .says = sentence, .block = lines, .plan = comes, .showing = how }
/* With declarations of its own instead of INES. */
#define CLUB(sentence, before, lines, comes) { .says = sentence, .declarations = before, .block = lines, .plan = comes }
#define CLUB_FAULT(sentence, before, lines, found) \
    { .says = sentence, .declarations = before, .block = lines, .findings = found }

static inline void row_holds(void **state)
{
    const struct row *row = *state;
    char text[16384];
    snprintf(text, sizeof text, "%s\nblock winter {\n  for ines\n  starts 2027-01-04\n%s\n}\n",
             row->declarations ? row->declarations : INES, row->block);
    struct told t = told_club(text);
    if (t.model && !findings_count(t.findings, LEVEL_ERROR)) {
        struct plan *plan = told_plan(&t, "winter", "ines");
        if (row->plan)
            assert_string_equal(plan_text(&t, plan, row->showing), row->plan);
    } else if (row->plan) {
        fail_msg("nothing could be planned: %s", findings_text(&t));
    }
    assert_string_equal(findings_text(&t), row->findings ? row->findings : "");
    told_end(&t);
}

/* Runs the rows, and after them the tests; both may be empty. */
static inline int rows_run(const struct row *rows, size_t row_count, const struct CMUnitTest *more, size_t more_count)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, rows, row_count ? &rows[0].says : NULL, sizeof *rows, row_count, row_holds);
    tests_add(&tests, more, more_count);
    return tests_run(&tests);
}

#endif
