/* What the coach's files say once every name is bound: lifts, gyms, athletes, and blocks ready to be planned.
 *
 * Owner: everything lives in the run's arena and is read-only once model_resolve has returned. Names are interned (== compares
 * them). Every piece keeps its span and, where a template or a scheme brought it, the places that used it (`origin`).
 * Names in messages and outputs are names, never titles; a title is NULL where none was given. */
#ifndef MODEL_MODEL_H
#define MODEL_MODEL_H

#include "base/date.h"
#include "base/diag.h"
#include "base/places.h"
#include "calc/curve.h"
#include "calc/plates.h"
#include "calc/series.h"
#include "syntax/tree.h"

#include <string.h>

enum { WEEKS_MOST = 256, SETS_MOST = 100, REPS_MOST = 1000, LADDERS_FEW = 8 };
enum { WEEK_SETS_MOST = 100000 }; /* rounds multiplied in; each rep of a `total` may be a set of its own */

/* Who used a template or a scheme from where, nearest first. */
struct origin {
    struct span at;
    const char *says; /* "used by block spring here" */
    const struct origin *up;
};

/* A set of weeks of a block, numbered from 1. */
struct week_set {
    uint64_t bits[WEEKS_MOST / 64 + 1];
};
static inline bool week_in(const struct week_set *set, int week)
{
    return week >= 0 && week <= WEEKS_MOST && (set->bits[week / 64] >> (week % 64) & 1);
}
static inline void week_add(struct week_set *set, int week)
{
    if (week >= 0 && week <= WEEKS_MOST)
        set->bits[week / 64] |= (uint64_t)1 << (week % 64);
}

/* The place whose training weeks a series counts: its training weeks in order (deload weeks left out). */
struct frame {
    const int *weeks;
    int count;
};

enum unit { UNIT_NONE, UNIT_PERCENT, UNIT_KILO, UNIT_POUND, UNIT_SECONDS, UNIT_MINUTES, UNIT_METRES, UNIT_STEPS };

/* A written value: its numbers are in `unit` as written (a lb series holds pounds). Where it is one number or one band, the same
 * in all weeks and sets, equal ones are the same series throughout a model, whatever their unit. */
struct value {
    const struct series *series; /* NULL: none was written */
    const struct frame *frame;
    enum unit unit;
    struct span at;
    bool is_effort, is_rir; /* a $name that stands for `rpe 8` or `rir 2` brings its own scale */
};

/* ---- equipment and lifts ---- */

struct named_ladder {
    const char *name; /* NULL: the gym's main bar or stack */
    struct ladder ladder;
};
struct gym {
    const char *name, *title;
    struct span at;
    enum weight_unit unit; /* of its main bar: all its weights print in it */
    enum rounding rounding;
    const struct named_ladder *bars;
    int bar_count; /* at least 1 */
    struct ladder dumbbells; /* steps of 2.5 kg or 5 lb when the gym states none */
    bool has_dumbbells;
    const struct named_ladder *stacks;
    int stack_count;
    struct places named; /* in these by name: bars beside 0, stacks beside 1, where there are more than LADDERS_FEW */
    struct ladder free; /* steps of 2.5 kg or 5 lb from 0 */
};

enum lift_kind { LIFT_ACCESSORY, LIFT_VARIATION, LIFT_COMPETITION };
enum lift_loads { LOADS_FREE, LOADS_BAR, LOADS_DUMBBELLS, LOADS_STACK, LOADS_BODYWEIGHT };
struct lift {
    const char *name, *title, *cue;
    struct span at; /* of the name */
    enum lift_kind kind;
    enum lift_loads loads;
    const char *equipment;   /* the bar's or stack's name, or NULL */
    struct span equipment_at; /* where it is said; nowhere when it came by `like` */
    const struct lift *like; /* NULL: none */
    struct dec like_percent; /* 100 when none is written */
    struct span like_at;
    const char *const *works, *const *helps; /* muscles */
    int works_count, helps_count;
    const char *const *notes;
    int note_count;
    const struct lift *const *instead; /* what may be trained in its place */
    int instead_count;
};
static inline bool lift_is_main(const struct lift *lift)
{
    return lift->kind != LIFT_ACCESSORY;
}

/* ---- people ---- */

struct max_line {
    const struct lift *lift;
    struct ratio load;  /* in 1e-10 kg; a total on bodyweight lifts; worked out where `estimated` */
    struct date date;   /* unset: undated, counts as the oldest */
    bool estimated;     /* max … from */
    struct weight set_load; /* estimated: the set it comes from */
    struct dec set_reps, set_effort; /* effort after her own correction */
    struct span at;
};
struct bodyweight_line {
    struct weight weight;
    struct date date;
    struct span at;
    bool from_diary; /* known from the day after its date on, and never before */
};
struct own_curve {
    const struct lift *lift;
    struct curve curve;
    struct span at; /* of the first point */
};
struct effort_line {
    const struct lift *lift;
    struct dec rated, meant;
    struct span at;
};
struct avoid_line {
    const struct lift *lift, *use; /* use NULL: an adjustment must swap it */
    const char *because;
    struct span at;
};

/* ---- results: diaries as written; which session of the plan they belong to is plan/record's to find ---- */

struct done_set {
    struct weight load; /* as the sheet shows loads: on bodyweight lifts what is added, or, negative, taken off */
    bool bare;          /* no unit was written */
    int reps;           /* 0: a rep that failed; seconds or metres where not counted */
    bool counted;       /* a plain number of reps */
    bool has_effort, has_speed;
    struct dec effort;  /* rpe as she rated it */
    struct dec speed;   /* of the last rep, m/s */
    struct span at;     /* of the reps, or of the loads where these were listed */
};
struct done_part { /* the sets between two `then` */
    const struct done_set *sets;
    int set_count;
    struct span at;
};
struct done_lift {
    const struct lift *lift;
    enum done_how { DONE_SETS, DONE_AS_PLANNED, DONE_SKIPPED } how;
    const struct done_part *parts; /* DONE_SETS */
    int part_count;
    bool has_effort, has_speed;    /* DONE_AS_PLANNED: of the last set */
    struct dec effort, speed;
    const char *because;           /* DONE_SKIPPED; may be NULL */
    struct span at;                /* of the lift's word */
};
struct diary_session {
    struct date date;
    const char *label; /* NULL: none was written */
    int week;          /* of its block, as printed; 0: that of its date */
    bool missed;
    const char *because;
    const struct done_lift *lifts;
    int lift_count;
    bool has_effort; /* of the session as a whole */
    struct dec effort;
    int minutes;     /* 0: not written */
    bool lets_in;    /* an `allow unlikely-result`: its estimates count, however far away */
    const char *const *notes;
    int note_count;
    struct span at; /* of the date */
};

struct athlete {
    const char *name, *title;
    struct span at;
    const struct gym *gym; /* never NULL; a default one when she has none */
    bool has_gym;
    enum weight_unit unit; /* of her file */
    const struct bodyweight_line *bodyweights;
    int bodyweight_count;
    const struct max_line *maxes; /* in written order */
    const struct max_line **maxes_sorted; /* for history.c; NULL: they are few */
    int max_count;
    const struct own_curve *curves;
    int curve_count;
    struct numbers curve_lifts, effort_lifts, avoid_lifts; /* the lifts of these lists, for history.c */
    const struct effort_line *efforts;
    int effort_count;
    const struct avoid_line *avoids;
    int avoid_count;
    const struct curve_row *model; /* NULL: not stated */
    const struct node *const *lets; /* her own values for $names */
    int let_count;
    const char *const *notes;
    int note_count;
    const struct diary_session *diary; /* by date; of one day by label, whatever the order of files and lines */
    int diary_count;
    int order; /* of declaration, from 0 */
};

/* Athletes in order, each once. */
struct people {
    const struct athlete *const *at;
    int count;
    bool everyone; /* `all`: those who wait too, see model_waiting */
};

struct progression_line {
    enum progression_when { WHEN_MADE, WHEN_MISSED, WHEN_EASY, WHEN_REPS_FULL } when;
    int times; /* of missed: 1 or more */
    enum progression_act { ACT_ADD, ACT_ADD_PERCENT, ACT_ADD_STEPS, ACT_HOLD, ACT_DROP, ACT_DROP_PERCENT } act;
    struct dec amount; /* per cent or steps */
    struct weight weight;
    struct span at;
};
struct progression {
    const char *name;
    struct span at;
    const struct progression_line *lines;
    int line_count;
    bool has_reps_full;
};

/* ---- blocks ---- */

enum role { ROLE_WORK, ROLE_WARM_UP, ROLE_TOP, ROLE_BACK_OFF };
enum reps_kind { REPS_COUNT, REPS_AMRAP, REPS_SECONDS, REPS_METRES, REPS_CLUSTER, REPS_TOTAL };
enum load_kind {
    LOAD_NONE, /* nothing said: open */
    LOAD_EFFORT,
    LOAD_PERCENT, /* of the lift's own max; of the first working load in warm-ups */
    LOAD_PERCENT_OF_LIFT,
    LOAD_PERCENT_OF_DAY,
    LOAD_PERCENT_OF_BODYWEIGHT,
    LOAD_WEIGHT,
    LOAD_BODYWEIGHT, /* bodyweight, plus or minus `amount` where written */
    LOAD_SAME,
    LOAD_DROP
};
enum cap_kind { CAP_NONE, CAP_EFFORT, CAP_PERCENT, CAP_WEIGHT };

struct seconds_band {
    int low, high; /* both 0: not stated */
};
/* What few groups say; read it through group_more. */
struct group_more {
    struct week_set weeks;      /* `in weeks` */
    const int *cluster;
    int cluster_count;
    const struct lift *of_lift;
    const char *of_day;
    struct span of_day_at;
    enum cap_kind cap_kind;
    struct value cap;
    bool cap_is_rir;
    struct value at_least;      /* amrap */
    struct value until_effort;
    bool until_is_rir;
    struct dec until_speed;     /* m/s; 0: none */
    int every_s;                /* 0: none */
    const struct progression *progression;
    struct span progression_at;
};
struct group {
    struct span at; /* from the role or the number of sets to the last clause; read it through group_place */
    const struct origin *origin;
    enum role role;
    enum reps_kind reps_kind;
    enum load_kind load_kind;
    bool shared;                /* by entries of the same words: its places count from its own start, see group_own */
    bool every_week;            /* without `in weeks` */
    bool load_is_rir;           /* written as rir: values are reps left */
    bool load_minus;            /* bodyweight minus */
    bool each_side, optional;
    struct value sets;
    struct value reps;          /* count, seconds, metres, total */
    struct value load;          /* effort (as rpe), per cent, weight, added bodyweight, drop */
    struct span load_at;        /* of the clause */
    struct seconds_band rest, pause;
    const char *tempo;
    const char *const *notes; /* read them through group_note */
    int note_count;
    const struct group_more *more; /* NULL: nothing of it is said */
};
static inline const struct group_more *group_more(const struct group *group)
{
    static const struct group_more nothing = { 0 };
    return group->more ? group->more : &nothing;
}

/* What an entry has of a group that it shares with others. */
struct group_own {
    uint32_t start, end; /* from the entry's start */
    const char *note;    /* its only one: where its text begins in the file; NULL: it has none, or all share it */
};
/* What few entries say; read it through entry_more. */
struct entry_more {
    const struct value *rounds; /* of the superset; NULL: none are written */
    int superset_minutes;
    const char *title;
    const char *const *notes;
    int note_count;
};
struct entry {
    struct span at; /* of the lift's name */
    const struct origin *origin;
    const struct lift *const *lifts; /* the first is planned; the others are her choice */
    const struct group *groups;
    const struct group_own *own; /* by group, where these are shared */
    int lift_count, group_count;
    int superset; /* 0: none; else a number within the day */
    const struct entry_more *more; /* NULL: nothing of it is said */
};
static inline const struct entry_more *entry_more(const struct entry *entry)
{
    static const struct entry_more nothing = { 0 };
    return entry->more ? entry->more : &nothing;
}

static inline const struct group_own *group_own(const struct entry *entry, const struct group *group)
{
    return &entry->own[group - entry->groups];
}

/* Where words of a group of this entry stand in the files. */
static inline struct span group_place(const struct entry *entry, const struct group *group, struct span at)
{
    if (!group->shared || !span_is_somewhere(at))
        return at;
    const struct group_own *own = group_own(entry, group);
    uint32_t start = entry->at.start + own->start;
    /* Nothing but the group itself ends with it, where a note of an entry's own ends it. */
    return (struct span){ start + at.start, at.end == group->at.end ? entry->at.start + own->end : start + at.end };
}

/* What the group shares of the words ends where the text of an own note begins; behind that text stands a ". */
static inline size_t group_note_length(const struct group_own *own, const struct group *group)
{
    return own->end - own->start - group->at.end - 1;
}

/* A note as it stands in the file; no NUL need be behind it. */
struct group_note {
    const char *text;
    size_t length;
};
/* One of its note_count in this entry. */
static inline struct group_note group_note(const struct entry *entry, const struct group *group, int index)
{
    if (group->notes)
        return (struct group_note){ group->notes[index], strlen(group->notes[index]) };
    const struct group_own *own = group_own(entry, group);
    return (struct group_note){ own->note, group_note_length(own, group) };
}

struct day {
    const char *label;
    struct span at; /* of the label */
    const struct origin *origin;
    struct week_set weeks; /* in which it is trained */
    uint8_t weekdays;      /* bit 1 << MON and so on; 0: no date */
    bool rotates;          /* its dates come from a rotation */
    const char *title;
    const char *const *notes;
    int note_count;
    bool optional;
    const struct gym *gym; /* NULL: the athlete's */
    const struct entry *entries;
    int entry_count;
};
struct rotation {
    const char *const *labels;
    const struct span *label_at;
    int label_count;
    uint8_t weekdays;
    struct week_set weeks;
    struct span at;
};

enum change_verb {
    CHANGE_SETS, CHANGE_REPS, CHANGE_EFFORT, CHANGE_LOAD, /* the four with a direction and a value */
    CHANGE_SWAP, CHANGE_SKIP_LIFT, CHANGE_SKIP_DAY, CHANGE_SKIP_WEEK, CHANGE_REPEAT_WEEK, CHANGE_CAP, CHANGE_ADD,
    CHANGE_NOTE
};
enum change_way { CHANGE_UP, CHANGE_DOWN, CHANGE_TO };
struct change {
    enum change_verb verb;
    enum change_way way;
    struct value value; /* amount; for a cap its effort (as rpe) */
    const struct lift *const *lifts; /* which; none: all */
    const struct span *lift_at; /* each one's word */
    int lift_count;
    const char *const *days;
    const struct span *day_at;
    int day_count;
    const struct lift *swap_with;
    struct span swap_at; /* its word */
    struct week_set weeks; /* skip week, repeat week */
    const char *add_day;
    const struct entry *entries; /* add to day */
    int entry_count;
    const char *note;
    struct span at;
    const struct origin *origin;
    int id; /* within the block, from 0: who keeps track of what was touched indexes by it */
};
/* Changes that belong together: one deload or taper line, or one adjust. */
struct change_list {
    struct span at;
    const struct origin *origin;
    struct week_set weeks;
    bool every_week;
    struct date from, to; /* adjust from … to …; unset where not written */
    const struct people *people; /* adjust; nobody in deload and taper */
    const struct change *changes;
    int change_count;
    const struct frame *frame; /* the weeks concerned, for bar lists */
    bool idle; /* it has been said that these changes reach nobody */
};
struct adjust_use {
    const struct athlete *athlete;
    const struct change_list *list;
};
struct warm_up {
    const struct group *groups;
    int group_count;
    const struct lift *const *lifts; /* none: all main lifts */
    int lift_count;
    struct span at;
};

/* One number of a limit: `30%`, `3 sets`, `rpe 4`. */
struct check_number {
    struct dec amount;
    bool is_effort;   /* written as rpe or rir (the amount is the rpe) */
    enum unit unit;
    const char *word; /* "sets", "days", "reps", "weeks" behind it, or NULL */
};
/* A line of `checks { … }`, as written: the trade's rules themselves are no business of the model. */
struct check_line {
    enum { CHECK_AT_LEAST, CHECK_AT_MOST, CHECK_TO, CHECK_LEVEL, CHECK_OFF } says;
    const char *rule, *subject; /* subject: a lift or a muscle, or NULL */
    struct check_number first, second;
    int numbers; /* as written; those behind the second are not kept */
    const char *level, *because;
    struct span at, rule_at, subject_at, value_at;
};
/* `allow RULE because "…"`: permits findings whose words lie in its scope, or (in a block) of its block. */
struct allow_line {
    const char *rule, *because;
    struct span at, rule_at, scope;
    int id; /* in model->allows */
};
/* A `weeks 1-3 { … }` group: where a finding of a whole week points. */
struct weeks_line {
    struct week_set weeks;
    struct span at;
    const char *const *notes; /* its title first */
    int note_count;
};

enum goal { GOAL_HYPERTROPHY, GOAL_STRENGTH, GOAL_PEAK, GOAL_GENERAL, GOAL_COUNT };
struct meet {
    const char *title; /* NULL after a finding */
    struct date date;
    struct span at;    /* of the statement */
    struct span date_at;
};
/* `attempts squat 91%, 96%, 101%`: of the max projected for the day. */
struct attempts_line {
    const struct lift *lift;
    struct dec percent[3];
    struct span at, percent_at;
};
/* A block or a break in a season's run, with its dates. */
struct season_run {
    struct decl *decl; /* the block's; NULL: a break */
    struct span at;
    struct date start;
    int weeks;
};
struct season {
    const char *name, *title;
    struct span at; /* of the name */
    const struct people *people; /* never NULL */
    const struct meet *meets; /* by date; none: the season says `starts` */
    int meet_count;
    const struct season_run *runs;
    int run_count;
    struct date start; /* a Monday */
    int weeks;
    const struct attempts_line *attempts;
    int attempt_count;
    const struct gym *gym; /* the meet's; NULL: competition bar, collars and discs */
    const char *const *notes;
    int note_count;
};
/* The first meet on or after a day, or NULL; `season` may be NULL. */
const struct meet *season_next_meet(const struct season *season, struct date day);

enum week_kind { WEEK_TRAINING, WEEK_DELOAD, WEEK_TAPER };
struct block {
    const char *name, *title;
    struct span at; /* of the name */
    enum goal goal;
    bool has_goal;
    struct date start;
    int week_count;
    const enum week_kind *kinds; /* by week from 1; [0] unused */
    const struct people *people; /* never NULL */
    const struct lift *const *instead; /* lifts that these train for one that they avoid, each once */
    int instead_count;
    const struct change_list *deloads, *tapers, *adjusts;
    int deload_count, taper_count, adjust_count;
    const struct adjust_use *adjust_uses; /* whom each adjust is for: by athlete, hers as written */
    int adjust_use_count;
    int change_count; /* ids are below this */
    const struct warm_up *warm_ups;
    int warm_up_count;
    struct places warm_up_places; /* in these, by lift; by NULL: those for all main lifts */
    const struct day *days;
    int day_count;
    const struct rotation *rotations;
    int rotation_count;
    struct dec max_percent; /* 100 without `max to` */
    struct span max_percent_at;
    bool max_fixed;
    const struct curve_row *model;
    const char *const *notes;
    int note_count;
    const struct check_line *checks; /* the nearest last */
    int check_count;
    const struct allow_line *const *allows; /* those in its own body and its templates' */
    int allow_count;
    const struct weeks_line *week_lines;
    int week_line_count;
    const struct season *season; /* that runs it, or NULL: then it stands alone */
    int run;                     /* which of the season's runs */
    bool last_of_season, break_before;
};

/* Something declared in a file named on the command line and used nowhere. */
struct unused {
    const char *what, *name; /* "lift", "curl"; for a let the name without its $ */
    struct span at;
    bool is_let;
};

/* ---- the whole ---- */

struct block_decl; /* a block as declared; resolved for an athlete on demand, since her own `let` may change it */

struct model {
    struct arena *arena;
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    const struct lift *const *lifts;
    int lift_count;
    const struct gym *const *gyms;
    int gym_count;
    const struct athlete *const *athletes; /* in order of declaration */
    int athlete_count;
    int waiting_count; /* further lifters of a roster, after those; see model_waiting */
    const struct block *const *blocks; /* in order of files and lines, a season's in order of its run; without any athlete's own
                                          `let`. A block that seasons run stands here once for each run */
    int block_count;
    const struct season *const *seasons;
    int season_count;
    const struct curve_row *curve; /* top level `model`, or NULL */
    const struct check_line *checks; /* of the top level, the nearest last */
    int check_count;
    const struct allow_line *allows; /* all there are, in files named or used */
    int allow_count;
    const struct unused *unused;
    int unused_count;
    struct club *club;             /* the resolver's own */
};

/* Where `all` alone means the lifters of a roster, none of them is made until she is planned: they are many, and all that they share
 * stands in the blocks. The index-th of them, from 0, in `arena`; her order is athlete_count + index. She has no diary and no values
 * of her own. */
const struct athlete *model_waiting(const struct model *model, int index, struct arena *arena);
/* Makes all of them at once and for good, for who wants to look at everyone; from then on nobody waits. */
void model_gather(struct model *model);
/* Those who wait included. */
int people_count(const struct model *model, const struct people *people);

/* The adjusts of a block that are for an athlete, as written. */
const struct adjust_use *adjusts_for(const struct block *block, const struct athlete *athlete, int *count);

/* The block as this athlete trains it: model->blocks[index], or a variant with her own `let` lines in force. */
const struct block *model_block_for(const struct model *model, int index, const struct athlete *athlete);

/* The names of roles, goals and kinds as written in files and outputs: "back-off", "strength", "deload". */
const char *role_name(enum role role);
const char *goal_name(enum goal goal);
const char *week_kind_name(enum week_kind kind);

#endif
