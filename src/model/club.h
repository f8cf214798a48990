/* The resolver's own workings: every declaration of a run by name, and what has been made of it so far. Only model/ includes it. */
#ifndef MODEL_CLUB_H
#define MODEL_CLUB_H

#include "base/numbers.h"
#include "base/vec.h"
#include "model/load.h"
#include "model/model.h"

enum space { SPACE_LIFT, SPACE_SCHEME, SPACE_GYM, SPACE_PERSON, SPACE_BLOCK, SPACE_PROGRESSION, SPACE_COUNT };

struct decl {
    const char *name;
    struct span at; /* of the name */
    const struct node *node; /* NULL: from a roster */
    const struct file_unit *file;
    enum space space;
    bool used;
    bool making; /* being worked out: met again, it is a circle */
    bool is_group;
    void *made;  /* lift, gym, athlete, people_group, progression; NULL: not yet or refused */
    struct diary_node *diaries; /* of a person, the last written first */
    struct decl *next; /* in the same slot of the table */
};

/* A `diary` statement of an athlete. */
struct diary_node {
    const struct node *node;
    const struct file_unit *file;
    struct diary_node *next;
};

struct people_group {
    const char *name;
    VEC(struct decl *) members; /* athletes, in order, each once */
    struct numbers has;         /* their places in it */
    int depth; /* itself and groups within groups; 0: not filled yet */
};

/* A value that is one number or band, in all weeks and sets. */
struct plain_series {
    struct band band;
    struct series_week week;
    struct series series;
};
struct plain_table {
    struct plain_series **slots; /* a hash table, at most half full; each band stands in it once */
    unsigned count, room;        /* room is a power of two; 0: no value was read yet */
};

enum { NESTED_MOST = 64 }; /* lifts like lifts, groups in groups, templates from templates */

struct club {
    struct arena *arena; /* the model's, or while templates that nobody trains are read one that forgets them */
    struct arena *passing; /* forgets all before the next block is made */
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct loaded loaded;
    struct decl **slots;
    int slot_count, decl_count;
    VEC(struct decl *) decls[SPACE_COUNT]; /* in order of declaration */
    const struct curve_row *curve;
    struct model *model;
    struct block_decl *blocks; /* as model->blocks */
    VEC(const struct season *) seasons;
    struct numbers run_decls; /* of the blocks that seasons run: their decls, beside 0 */
    struct numbers run_for;   /* and the same beside the order of each athlete for whom */
    bool run_unknown; /* a season runs a block that nobody declared: any block may be the one meant */
    VEC(struct allow_line) allows;
    VEC(const struct node *) allow_nodes; /* as allows */
    struct numbers used_lets; /* their nodes */
    const char *all; /* interned */
    struct people *everyone; /* what `all` means; NULL: nobody has said it yet */
    const struct gym *gym_default[2]; /* by unit; NULL: nobody needed it yet */
    struct plain_table plain;
    struct kept_entry **kept; /* NULL: none yet */
    uint32_t kept_count;      /* slots; a power of two */
    int day, days;                   /* the day whose entries are made, counting all of the run's; 0: not a day's */
    int nested; /* lifts or groups that are being made, one for the other */
    int64_t compared; /* names with names, for "did you mean" */
};

struct place;

/* ---- names.c ---- */
void names_collect(struct club *club);
struct decl *names_find(const struct club *club, enum space space, const char *name); /* NULL: none */
/* As names_find, but a name that is not declared is a finding at `at`, with the nearest one offered. Marks it used. */
struct decl *names_use(struct club *club, enum space space, const char *name, struct span at, const struct origin *origin);
struct decl *names_declare(struct club *club, enum space space, const char *name, struct span at,
                           const struct node *node, const struct file_unit *file);
/* Whether one more name may be compared with so many: of very many mistakes only the first get their "did you mean". */
bool names_may_compare(struct club *club, int count);
const char *names_nearest(struct club *club, enum space space, const char *name);

/* The same where the place is known: the finding says the block, day and lift it stands in. */
struct decl *names_use_in(const struct place *place, enum space space, const struct node *name);

/* Adds the places of use to a finding: "used by block spring here". */
void origin_show(struct club *club, struct finding *finding, const struct origin *origin);
/* The nearest of a table's words, for `kind`, `goal`, weekdays … NULL: none is near. */
int word_index(const char *name, const char *const *words, int count);
struct finding *word_unknown(const struct place *place, struct span at, const char *what, const char *name,
                             const char *const *words, int count);

/* ---- decls.c: each makes what its declaration says, once ---- */
const struct lift *lift_of(struct club *club, struct decl *decl);
void lift_instead(struct club *club, struct decl *decl); /* once all lifts are made */
const struct lift *lift_named(struct club *club, const struct node *name, const struct origin *origin); /* NULL: finding */
const struct gym *gym_of(struct club *club, struct decl *decl);
const struct gym *gym_default(struct club *club, enum weight_unit unit);
const struct progression *progression_of(struct club *club, struct decl *decl);
const struct curve_row *curve_named_by(const struct place *place, const struct node *name);
uint8_t weekdays_of(const struct place *place, const struct node *weekdays);

/* ---- people.c ---- */
void people_make_all(struct club *club); /* athletes in order of declaration, groups, rosters */
void people_number(struct club *club); /* their orders, and the model's list of them */
extern const struct people people_nobody;
/* `for novices, piotr`. Never NULL. */
const struct people *people_list(struct club *club, const struct node *names, const struct origin *origin);
struct people_group *people_group_of(struct club *club, struct decl *decl);
void group_add(struct club *club, struct people_group *group, struct decl *member);

/* ---- diaries.c ---- */
void diaries_collect(struct club *club); /* each to its person, before people are made */
struct bodyweight_lines {
    VEC(struct bodyweight_line) list;
};
void diaries_bodyweights(struct club *club, const struct decl *person, struct bodyweight_lines *out);
void diaries_make(struct club *club); /* once lifts and people are made */

/* ---- rosters.c ---- */
bool rosters_may_wait(struct club *club); /* true: its lifters are model->waiting_count */
void rosters_take(struct club *club); /* makes them all */

/* ---- values.c ---- */
/* What stands well in a place: its units and its name in messages. */
struct want {
    const char *what;    /* "a number of sets" */
    const char *example; /* what to write: "4 or (5 | 4 | 3)" */
    unsigned units;      /* bits 1 << UNIT_… */
    bool whole;          /* whole numbers only, 1 or more */
    bool effort;         /* 0 to 10 in halves */
};
extern const struct want want_sets, want_reps, want_effort, want_load, want_weight, want_percent, want_time, want_count,
    want_amount, want_load_change, want_speed, want_any;
struct let_index; /* lets.c: where each name is set */
struct scope {
    const struct node *const *lets;
    int let_count;
    const struct let_index *index; /* of lets_index; may be NULL */
    const struct frame *frame; /* of the place where these stand */
    const struct scope *up;
    bool is_entry;
};
struct calendar {
    int weeks;
    const enum week_kind *kinds; /* by week from 1; NULL: not known yet */
};
struct place {
    struct club *club;
    const struct calendar *calendar;
    bool lenient; /* a template on its own: a $name may come from the block that uses it */
    const struct scope *scope;  /* nearest first */
    const struct frame *frame;  /* of the place where a value is used */
    const struct file_unit *file;
    const struct origin *origin;
    const struct scope *own; /* the athlete's lets, nearest of all; NULL: none */
    struct setting setting;
    int depth; /* of $names that stand for $names */
};
/* NULL where they are so few that going through them is as fast. */
const struct let_index *lets_index(struct arena *arena, const struct node *const *lets, int count);
/* What a $name stands for: its let's value node and the scope it is read in. NULL: none, which is a finding. */
const struct node *let_find(const struct place *place, const struct node *var, struct place *found);
/* The $name that a value consists of, whatever its siblings, and the word of its unit (NULL: none); NULL: it is no $name. */
const struct node *var_inside(const struct node *node, const char **unit);
/* Follows $names until a node that is none; NULL after a finding. */
const struct node *node_behind(const struct place *place, const struct node *node, struct place *found);
/* A value node (LIST, RAMP, STEP, WAVE, SETS, AMOUNT, BAND, NUMBER, VAR, WEIGHT or EFFORT) to a series; an empty value after a
 * finding. Effort values of `rir` are turned into rpe by the caller. */
struct value value_of(const struct place *place, const struct node *node, const struct want *want);
/* The series that is this band in all weeks and sets: one for the whole model, so that equal ones are the same pointer. */
const struct series *plain_series(struct club *club, struct band band);
/* Exactly one number that does not change over weeks; false after a finding. */
bool number_of(const struct place *place, const struct node *node, const struct want *want, struct dec *number, enum unit *unit);
bool whole_of(const struct place *place, const struct node *node, const char *what, int least, int most, int *number);
bool weight_of(struct club *club, const struct node *weight, enum weight_unit unit, struct weight *out);
bool seconds_of(const struct place *place, const struct node *node, struct seconds_band *out);
void lets_check(const struct place *place, const struct node *body); /* a $name set twice in one body */
const char *text_behind(const struct place *place, const struct node *node); /* STRING or VAR; NULL after a finding */
const struct lift *lift_of_node(const struct place *place, const struct node *node); /* NAME or VAR */
struct week_set weeks_of(const struct place *place, const struct node *weeks, int most, bool *ok);
int children_of(const struct node *body, enum node_kind kind); /* how many */
const char *const *notes_of(const struct place *place, const struct node *body, int *count);
struct finding *place_finding(const struct place *place, enum kind kind, struct span at, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* An athlete while her lines are read. */
struct athlete_parts {
    struct club *club;
    struct athlete *athlete;
    struct place place;
    VEC(struct max_line) maxes;
    struct bodyweight_lines bodyweights;
    VEC(struct own_curve) curves;
    VEC(struct effort_line) efforts;
    VEC(struct avoid_line) avoids;
    struct numbers curve_lifts, effort_lifts, avoid_lifts; /* of these lists */
    VEC(const struct node *) lets;
};
struct athlete_parts athlete_begin(struct club *club, struct decl *decl, enum weight_unit unit);
void athlete_finish(struct athlete_parts *parts);
void max_estimate(struct athlete_parts *parts, struct max_line *line); /* from its set */

/* The training weeks of a set, as the frame of what stands in it. */
const struct frame *frame_of(const struct place *place, const struct week_set *weeks);
/* All weeks of a set up to the calendar's end, deloads too: the frame of a change's bar list. */
const struct frame *frame_of_all(const struct place *place, const struct week_set *weeks);
const char *label_of(const struct place *place, const struct node *label); /* a day's label, name or number, interned */

/* ---- house.c: `checks`, `allow`, and what nothing uses ---- */
void allows_collect(struct club *club); /* before blocks */
void house_make(struct club *club); /* after blocks: top-level checks, all allows, unused names */
int checks_of(const struct place *place, const struct node *checks, const struct check_line **out);
const struct allow_line *allow_of(struct club *club, const struct node *allow); /* by its node; made before blocks */
void let_use(struct club *club, const struct node *let); /* marks it used */
bool let_is_used(const struct club *club, const struct node *let);

/* ---- reuse.c: a block with its templates folded in ---- */
struct part {
    const struct node *node;
    const char *label; /* of a day; NULL: it is none */
    int level; /* 0: the template at the root of the chain */
    const struct file_unit *file;
    const struct origin *origin;
    struct week_set weeks; /* days, rotations: the weeks in which they hold */
    const struct week_set *group_weeks; /* of the weeks group around it, one for all that stands in it; all weeks without one */
    const struct node *const *lets; /* of the weeks groups around it, the nearest last */
    int let_count;
    const struct let_index *let_index;
};
struct parts {
    VEC(struct part) list;
    VEC(struct weeks_line) week_lines;
};
struct chain {
    VEC(struct decl *) decls; /* the block last, templates before it, the root first */
    VEC(const struct origin *) origins;
    VEC(const struct node *) lets; /* of all, nearest last */
};
bool chain_of(struct club *club, struct decl *decl, struct chain *out); /* false: broken, with a finding */
/* The nearest statement of a kind; NULL: none. `level` tells where it stands. */
const struct node *chain_nearest(const struct chain *chain, enum node_kind kind, int *level);
void parts_of(const struct place *place, const struct chain *chain, struct parts *out); /* the list is `passing` */

/* ---- blocks.c, entries.c, changes.c ---- */
/* NULL after a finding that makes the block unfit. `athlete`: whose own `let` lines are in force, with the block without them,
 * `plain`, for the same people; NULL, NULL: nobody's. */
const struct block *block_make(struct club *club, struct decl *decl, const struct athlete *athlete, const struct block *plain,
                               const struct season *season, int run);
/* How many weeks a block has, by itself or its templates; 0 after a finding. */
int block_weeks_of(struct club *club, struct decl *decl);

/* ---- kept.c: what was made of a plain line, for others of the same words ---- */
bool kept_find(const struct place *place, const struct node *line, struct entry *out);
/* Shares what was made of a line; `opened` is its node with its children. */
void kept_add(const struct place *place, const struct node *line, const struct node *opened, struct entry *entry, struct group *groups);

/* ---- seasons.c ---- */
void seasons_make(struct club *club); /* before blocks */
bool season_is_for(const struct club *club, const struct decl *block, const struct athlete *athlete); /* any that runs the block */
const struct season *season_of(struct decl *decl); /* NULL: refused */
int entries_make(const struct place *place, const struct node *body, const struct entry **out);
int groups_of_scheme(const struct place *place, const struct node *name, const struct node *lets, bool warm_up,
                     const struct group **out);
/* The changes among a body's statements; ids count on from *next_id. */
int changes_make(const struct place *place, const struct node *body, const struct change **out, int *next_id);
/* A bare deload's changes; their ids are -1: nobody wonders whether they touched anything. */
int changes_bare_deload(const struct place *place, const struct node *deload, const struct change **out);

#endif
