/* The syntax tree: what a coach wrote, nothing decided. Spans give back the author's spelling of everything; comments are kept
 * beside the tree in order. Nodes live in the run's arena and are never changed after parsing.
 *
 * Each kind below says its children in order; `*` any number, `?` maybe. `text` and `number` only where said.
 * PLAIN is a NUMBER, VAR or BAND; AMOUNT as a child stands for one of these too, which has no unit then; SETS for an AMOUNT
 * and LIST for a SETS, where there is only one. VALUE is one of LIST, RAMP, STEP, WAVE; LABEL is a NAME or NUMBER; LIFT is a NAME or VAR; TEXT is a STRING or VAR. */
#ifndef SYNTAX_TREE_H
#define SYNTAX_TREE_H

#include "base/date.h"
#include "base/dec.h"
#include "base/span.h"

enum node_kind {
    NODE_FILE, /* top-level statements* */

    /* words and literals */
    NODE_NAME,   /* text: interned, NFC */
    NODE_VAR,    /* text: without the $ */
    NODE_STRING, /* text: escapes undone */
    NODE_NUMBER, /* number */
    NODE_DATE,   /* date */
    NODE_BAND,   /* low, high: NUMBER or VAR each */
    NODE_AMOUNT, /* PLAIN; text: unit "%" "kg" "lb" "s" "min" "m" "step", NULL in a WEIGHT or RANGE without one;
                    in a list the unit may stand after the last item alone: then the others are PLAIN */

    /* values over weeks (bars) and sets (commas) */
    NODE_SETS, /* AMOUNT*: a comma list over the sets of one week, two or more */
    NODE_LIST, /* SETS*: a bar list over weeks, two or more; one in a WAVE or in ( ) */
    NODE_RAMP, /* AMOUNT from, AMOUNT to */
    NODE_STEP, /* SETS first, AMOUNT by, NUMBER weeks? (absent: each week); flag MINUS */
    NODE_WAVE, /* LIST, AMOUNT by?; flag MINUS */

    /* small shared parts */
    NODE_EFFORT,     /* VALUE; text "rpe" or "rir" */
    NODE_WEIGHT,     /* AMOUNT; a plain weight, unit maybe missing */
    NODE_BODYWEIGHT, /* VALUE?: added; flag MINUS when taken off */
    NODE_WEEKS,      /* NUMBER, VAR or BAND each: weeks 1-3, 5 */
    NODE_PEOPLE,     /* NAME*; "all" is a NAME here */
    NODE_LIFTS,      /* LIFT* */
    NODE_DAYS,       /* LABEL* */
    NODE_WEEKDAYS,   /* NAME* */
    NODE_BECAUSE,    /* TEXT */
    NODE_ON,         /* DATE */

    /* statements that stand in many bodies */
    NODE_TITLE, /* TEXT */
    NODE_NOTE,  /* TEXT */
    NODE_LET,   /* VAR; VALUE, EFFORT, NAME, STRING, AMRAP or NUMBER-less time AMOUNT inside a LIST */
    NODE_ALLOW, /* NAME rule, BECAUSE? */

    /* top level */
    NODE_LANGUAGE, /* NUMBER */
    NODE_UNITS,    /* NAME */
    NODE_USE,      /* STRING */
    NODE_ROSTER,   /* STRING */
    NODE_MODEL,    /* NAME; also in athlete, block and template */

    NODE_GYM,         /* NAME; TITLE NOTE BAR COLLAR PLATES DUMBBELLS STACK ROUND */
    NODE_BAR,         /* WEIGHT, NAME? (name after) */
    NODE_COLLAR,      /* WEIGHT */
    NODE_PLATES,      /* PLATE* */
    NODE_PLATE,       /* WEIGHT, NUMBER of single discs */
    NODE_DUMBBELLS,   /* RANGE* */
    NODE_STACK,       /* RANGE*, NAME? (name last) */
    NODE_RANGE,       /* AMOUNT low, AMOUNT high, AMOUNT step; or one AMOUNT alone */
    NODE_ROUND,       /* NAME nearest, up or down */

    NODE_LIFT,        /* NAME; LIKE?; TITLE NOTE KIND LOADS WORKS HELPS CUE */
    NODE_LIKE,        /* NAME, AMOUNT? */
    NODE_KIND,        /* NAME */
    NODE_LOADS,       /* NAME bar, dumbbells, stack, bodyweight or free; NAME? */
    NODE_WORKS,       /* NAME* */
    NODE_HELPS,       /* NAME* */
    NODE_CUE,         /* TEXT */
    NODE_INSTEAD,     /* NAME*: lifts */

    NODE_ATHLETE,     /* NAME; TITLE NOTE GYM_REF BODYWEIGHT_LINE MAX CURVE EFFORT_LINE AVOID LET MODEL */
    NODE_GYM_REF,     /* NAME; also in a day and a season */
    NODE_BODYWEIGHT_LINE, /* WEIGHT, ON? */
    NODE_MAX,         /* NAME lift; WEIGHT or BODYWEIGHT; (NUMBER reps, EFFORT?)?; ON?; flag FROM when worked out from a set */
    NODE_CURVE,       /* NAME lift, NUMBER reps, AMOUNT per cent */
    NODE_EFFORT_LINE, /* NAME lift, NUMBER rated, NUMBER meant */
    NODE_AVOID,       /* NAME, NAME use?, BECAUSE? */

    NODE_GROUP_OF,    /* NAME; PEOPLE */
    NODE_SCHEME,      /* NAME; TITLE NOTE LET and set groups */
    NODE_PROGRESSION, /* NAME; TITLE NOTE WHEN* */
    NODE_WHEN,        /* NUMBER times?, then ADD, HOLD or DROP; text "made" "missed" "easy" "reps full" */
    NODE_ADD,         /* AMOUNT (kg, lb, % or step) */
    NODE_HOLD,
    NODE_DROP_LOAD,   /* AMOUNT */

    /* blocks; a template is a block body too */
    NODE_BLOCK,    /* NAME, FROM?; statements below */
    NODE_TEMPLATE, /* NAME, FROM?; statements below */
    NODE_FROM,     /* NAME */
    NODE_GOAL,     /* NAME */
    NODE_FOR,      /* PEOPLE */
    NODE_STARTS,   /* DATE */
    NODE_LENGTH,   /* NUMBER or VAR: `weeks 5` */
    NODE_DELOAD,   /* WEEKS or EVERY; changes*; flag BODY when braces were written */
    NODE_TAPER,    /* WEEKS; changes*; flag BODY */
    NODE_EVERY,    /* NUMBER or VAR: each 4 weeks */
    NODE_WARM_UP,  /* NAME scheme, LIFTS? */
    NODE_MAX_TO,   /* AMOUNT per cent */
    NODE_MAX_FIXED,
    NODE_REMOVE,   /* DAYS */
    NODE_ROTATE,   /* DAYS, WEEKDAYS */
    NODE_WEEKS_GROUP, /* WEEKS; DAY ROTATE LET NOTE and WEEKS_GROUP */
    NODE_ADJUST,   /* PEOPLE; IN_WEEKS or DATES?; changes* */
    NODE_IN_WEEKS, /* WEEKS */
    NODE_DATES,    /* DATE from, DATE to? */

    NODE_DAY,      /* LABEL, WEEKDAYS?; TITLE NOTE LET ALLOW GYM_REF OPTIONAL ENTRY SUPERSET */
    NODE_SUPERSET, /* ROUNDS or MINUTES?; ENTRY NOTE ALLOW */
    NODE_ROUNDS,   /* VALUE */
    NODE_MINUTES,  /* AMOUNT */
    NODE_ENTRY,    /* LIFTS (joined by `or`); TITLE NOTE LET ALLOW GROUP USE_SCHEME; flag BODY when braces were written */
    NODE_USE_SCHEME, /* NAME or VAR, LET*; then clauses*  */
    NODE_GROUP,    /* COUNT, REPS or TOTAL alone; clauses*; text role "warm-up" "top" "back-off" or NULL */
    NODE_COUNT,    /* VALUE: the number of sets */
    NODE_REPS,     /* VALUE, AMRAP or CLUSTER */
    NODE_TOTAL,    /* VALUE */
    NODE_AMRAP,
    NODE_CLUSTER,  /* NUMBER* */

    /* clauses of a set group */
    NODE_AT_EFFORT,     /* VALUE; text "rpe" or "rir" */
    NODE_AT_LOAD,       /* VALUE (per cent, weight, or VAR without a unit); OF_LIFT, OF_DAY or OF_BODYWEIGHT? */
    NODE_OF_LIFT,       /* LIFT */
    NODE_OF_DAY,        /* LABEL */
    NODE_OF_BODYWEIGHT,
    NODE_AT_BODYWEIGHT, /* BODYWEIGHT */
    NODE_AT_SAME,
    NODE_AT_LEAST,      /* VALUE */
    NODE_DROP,          /* VALUE */
    NODE_CAP,           /* EFFORT or VALUE */
    NODE_UNTIL_EFFORT,  /* EFFORT */
    NODE_UNTIL_SPEED,   /* AMOUNT */
    NODE_EVERY_TIME,    /* AMOUNT */
    NODE_REST,          /* AMOUNT */
    NODE_PAUSE,         /* AMOUNT */
    NODE_TEMPO,         /* TEXT */
    NODE_EACH_SIDE,
    NODE_OPTIONAL,
    NODE_PROGRESS,      /* NAME or VAR */
    /* (NOTE, IN_WEEKS and ALLOW are clauses too) */

    /* changes in deload, taper and adjust */
    NODE_CHANGE,      /* VALUE, LIFTS?, DAYS?; text "sets" "reps" "rpe" "load"; flag UP, DOWN or TO */
    NODE_SWAP,        /* LIFT old, LIFT new */
    NODE_SKIP_LIFT,   /* LIFTS */
    NODE_SKIP_DAY,    /* DAYS */
    NODE_SKIP_WEEK,   /* WEEKS */
    NODE_REPEAT_WEEK, /* WEEKS */
    NODE_CAP_CHANGE,  /* LIFTS?, EFFORT */
    NODE_ADD_TO,      /* LABEL; ENTRY SUPERSET NOTE */
    /* (NOTE too) */

    NODE_SEASON,   /* NAME; TITLE NOTE FOR STARTS GYM_REF MEET RUN ATTEMPTS ALLOW */
    NODE_MEET,     /* TEXT, ON */
    NODE_RUN,      /* NAME or BREAK* */
    NODE_BREAK,    /* NUMBER of weeks */
    NODE_ATTEMPTS, /* LIFT, VALUE */

    NODE_DIARY,      /* NAME; SESSION MISSED BODYWEIGHT_LINE NOTE TITLE */
    NODE_SESSION,    /* DATE, LABEL?, WEEKS?; DONE NOTE SESSION_EFFORT ALLOW */
    NODE_MISSED,     /* DATE, LABEL?, WEEKS?, BECAUSE? */
    NODE_DONE,       /* LIFT; PART*, or AS_PLANNED, or SKIPPED */
    NODE_PART,       /* loads (SETS or BODYWEIGHT), reps SETS; EFFORT?, SPEED? */
    NODE_SPEED,      /* SETS */
    NODE_AS_PLANNED, /* EFFORT?, SPEED? */
    NODE_SKIPPED,    /* BECAUSE? */
    NODE_SESSION_EFFORT, /* EFFORT, AMOUNT minutes? */

    NODE_CHECKS,   /* LIMIT OFF TITLE NOTE */
    NODE_LIMIT,    /* NAME rule, NAME subject?, then VALUE/EFFORT*; text "at least" "at most" "to" "level";
                      "to" has two AMOUNTs; "level" has a NAME; each AMOUNT's text may also be "sets" "days" */
    NODE_OFF,      /* NAME rule, BECAUSE? */

    NODE_ERROR, /* stands where a statement could not be read */
    NODE_KIND_COUNT
};

enum node_flag {
    FLAG_MINUS = 1,
    FLAG_UP = 2,
    FLAG_DOWN = 4,
    FLAG_TO = 8,
    FLAG_FROM = 16,
    FLAG_BODY = 32,
    FLAG_PARENS = 64, /* a VALUE written in ( ) */
    FLAG_PLAIN = 128, /* an ENTRY without its children: see entry_open */
};

struct stretch; /* syntax/known.h */
struct node {
    uint16_t kind; /* enum node_kind */
    uint16_t flags;
    struct span at;
    struct node *child, *next;
    union { /* a number, a date and a plain entry have no text */
        const char *text;
        struct dec number;
        struct date date;
        const struct stretch *stretch; /* the last of a plain entry: see known.h */
    };
};

struct comment {
    struct span at; /* from # to the line's end */
};

struct plain; /* syntax/plain.h */
struct tree {
    struct source *source;
    const struct plain *plain;
    struct node *root; /* NODE_FILE, never NULL */
    const struct comment *comments;
    int comment_count;
};

/* The name of a kind in the dump, and in a test's list: "at-load". */
const char *node_kind_name(enum node_kind kind);

/* The first child of the kind, or NULL; the next sibling of the same kind, or NULL. */
const struct node *node_child(const struct node *node, enum node_kind kind);
const struct node *node_next(const struct node *node, enum node_kind kind);

/* Most entries are a plain line, whose children would be most of the tree, and are wanted once: so they are made when the
 * entry is opened. The node that has them lives in `room`, up to its next use; an entry that is not plain is its own. */
enum { PLAIN_NODES = 128 };
struct plain_room {
    struct node nodes[PLAIN_NODES];
};
const struct node *entry_open(const struct tree *tree, const struct node *entry, struct plain_room *room);
/* The text of the note at which a plain line is cut into stretches: the only one of its set group, and its last clause; or NULL. */
const struct node *group_last_note(const struct node *group);

/* A readable indented dump, a node a line, for `--dump=tree` and tests; into the arena. */
const char *tree_dump(struct arena *arena, const struct tree *tree);

#endif
