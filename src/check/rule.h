/* The trade's rules: the row, and all that a rule may touch.
 *
 * A rule reads a compiled plan through the views below and says what it met with rule_hit; it changes nothing, so rules need no
 * order. The runner (run.h) knows levels, limits, `allow` and folding; a rule only asks its question.
 *
 * A block's plan and its view die before the athlete's next block is planned. What a rule compares across blocks it keeps itself,
 * from each block as it passes, and reads again at the end. */
#ifndef CHECK_RULE_H
#define CHECK_RULE_H

#include "base/numbers.h"
#include "model/history.h"
#include "plan/honesty.h"

/* ---- what rules see ---- */

/* A run of like working sets (never a warm-up). */
struct set_view {
    const struct plan_week *week;
    const struct plan_day *day;
    const struct plan_entry *entry;
    const struct plan_group *group;
    const struct plan_run *run;
    const struct lift *lift; /* as trained */
    int lift_at;             /* its place in the block's `lifts` */
    int sets;                /* rounds multiplied in */
    int reps_halves;         /* twice the middle of a range; 0 for seconds, metres and amrap without `at least` */
    int reps_high;           /* the high end; 0 likewise */
    struct dec effort;       /* rpe: the target's middle, else the expected one of the rounded load; amrap: 10. Rounded down; */
    const struct ratio *effort_exact; /* as it is, where rounding lost something; else NULL. Compared by ask.h */
    struct date date;        /* of the day; undated: the week's first day */
    bool main;               /* kind competition or variation */
    bool counted;            /* reps are a plain count or a cluster */
    bool amrap;
    bool has_effort;
};
/* A day as trained, with its working sets in written order: sets[first] up to sets[past - 1] of the block. */
struct day_view {
    const struct plan_week *week;
    const struct plan_day *day;
    int first, past;
    struct date date;
    bool dated;
};
struct week_view {
    const struct plan_week *week;
    int first, past; /* sets */
    int first_day, past_day;
    bool training; /* neither deload nor taper */
};
/* What a training week has of a lift. */
struct lift_week {
    int week;             /* its place in the block's `weeks` */
    int hard, open, done; /* sets: at rpe 5 or more, those of unknown effort, and all of a known number */
    int totals;           /* how often `total 30`, of which nobody knows the number of sets */
    bool rotates;         /* on a day that takes turns */
    const struct lift_week *earlier, *later; /* the nearest training weeks with the lift; NULL: none */
};
/* Attempts of a season's last meet, for its last block. */
struct attempt_view {
    const struct lift *lift;
    struct weight opener, second, third; /* as rounded */
    struct ratio projected;      /* the max for the day, 1e-10 kg; not above 0: none is known, nor are the loads */
    enum weight_unit unit;       /* of the meet's bar */
    struct span at;
};
/* What diaries say. */
struct session_view {
    const struct lift *lift;
    struct date date;
    bool missed; /* fell short of what was printed */
    struct span at;
};
struct block_view {
    const struct plan *plan;
    const struct block *block;
    const struct set_view *sets;
    int set_count;
    const struct lift *const *lifts; /* of the sets, each once, in the order of training */
    int lift_count;
    struct numbers lift_numbers;     /* their places; see lift_at in ask.h */
    const struct day_view *days;
    int day_count;
    const struct week_view *weeks;
    int week_count;
    const struct lift_week *const *lift_weeks; /* by a lift's place: its first; NULL: it is trained in no training week */
    struct date meet;      /* the season's next meet from the block's first day; unset: none. A day's own: meet_from in ask.h */
    bool last_of_season;
    bool break_before;     /* a season states a break before it */
    const struct attempt_view *attempts;
    int attempt_count;
    struct date first, last; /* first day of the first week, last day of the last */
};
/* What is left of a block once its plan is forgotten. */
struct block_term {
    const struct block *block;
    struct date first, last;
    bool break_before;
};
struct athlete_view {
    const struct model *model;
    const struct athlete *athlete;
    const struct block_term *blocks; /* by start date, then file order */
    int block_count;
    const struct rating *ratings; /* in order of date */
    int rating_count;
    const struct session_view *sessions; /* in order of date */
    int session_count;
    struct record *record; /* NULL: no diary */
};

/* ---- limits ---- */

enum limit_unit { LIMIT_NONE, LIMIT_PERCENT, LIMIT_SETS, LIMIT_REPS, LIMIT_EFFORT, LIMIT_POINTS, LIMIT_DAYS, LIMIT_WEEKS, LIMIT_MINUTES };
/* Inclusive bounds; a side that does not apply is negative. */
struct bounds {
    struct dec low, high;
};

struct asking; /* a rule's question being asked of one athlete; see run.c */

/* The limit in force for a block, and a lift or muscle by name (NULL: none). */
struct bounds rule_limit_in(const struct asking *asking, const struct block *block, const char *subject);
bool rule_limit_is_own(const struct asking *asking, const struct block_view *block, const char *subject); /* the house's, for this one */
struct bounds rule_second_limit(const struct asking *asking, const struct block_view *block); /* volume-jump's sets */
bool rule_is_off_in(const struct asking *asking, const struct block *block); /* silent for this goal: saves the work */
static inline struct bounds rule_limit(const struct asking *asking, const struct block_view *block, const char *subject)
{
    return rule_limit_in(asking, block->block, subject);
}
static inline bool rule_is_off(const struct asking *asking, const struct block_view *block)
{
    return rule_is_off_in(asking, block->block);
}

/* Something met. `at` with its `origin` is the place. Message: one sentence, no full stop, with its numbers and the limit; no
 * athlete's name (the runner adds who). `level` LEVEL_OF_GOAL for the row's; one that the house asks for wins over either.
 * Nothing of a plan is in it: a rule may keep it. */
enum { LEVEL_OF_GOAL = -1 };
struct place_met {
    const struct block *block; /* NULL: none */
    int week;                  /* as printed; 0: none */
    const char *day, *lift;    /* its label, its name; NULL: none */
    struct span at;
    const struct origin *origin;
    const char *subject; /* the lift or muscle, where several may be met at one place; NULL: none */
    int level; /* enum level, or LEVEL_OF_GOAL */
};
void rule_hit(struct asking *asking, struct place_met place, const char *help, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* Text for messages, in the scratch arena of the plan at hand. */
const char *rule_text(struct asking *asking, const char *format, ...) __attribute__((format(printf, 2, 3)));
struct arena *rule_arena(struct asking *asking);
/* What the rule keeps of the athlete's blocks, zeroed before the first; and where to put what it points to. */
void *rule_kept(struct asking *asking, size_t size);
struct arena *rule_keep_arena(struct asking *asking);

/* Places for the usual cases. */
struct place_met met_set(const struct block_view *block, const struct set_view *set);   /* at the set group */
struct place_met met_load(const struct block_view *block, const struct set_view *set);  /* at its load clause */
struct place_met met_entry(const struct block_view *block, const struct set_view *set); /* at the lift's name */
struct place_met met_day(const struct block_view *block, const struct day_view *day);   /* at the day's label */
struct place_met met_week(const struct block_view *block, const struct week_view *week); /* at the `weeks` or `deload` line, else the block's name */
struct place_met met_name(const struct block *block);                                   /* at the block's name */
static inline struct place_met met_block(const struct block_view *block)
{
    return met_name(block->block);
}

/* Numbers in messages: at most one decimal, "62", "7.5". */
const char *rule_number(struct asking *asking, struct ratio number);

/* ---- the row ---- */

enum { LEVEL_OFF = -2 };
struct rule {
    const char *name;
    int level[GOAL_COUNT];      /* enum level or LEVEL_OFF, in the order of enum goal: H S P G */
    enum limit_unit unit;
    struct bounds limit[GOAL_COUNT];
    bool has_second;
    struct bounds second;       /* in sets */
    enum { SUBJECT_NONE, SUBJECT_LIFT, SUBJECT_MUSCLE } subject; /* `weekly-sets squat 8 to 16` */
    void (*block)(struct asking *asking, const struct block_view *block); /* not asked of a block that turns the rule off */
    void (*keep)(struct asking *asking, const struct block_view *block);  /* of each block by start: what `athlete` asks about */
    void (*athlete)(struct asking *asking, const struct athlete_view *athlete); /* once all blocks have passed */
    enum kind kind;             /* met by the planner itself (impossible-set, under-bar, avoided-lift): no function */
    const char *asks;           /* one line: what it looks for */
    const char *why;            /* a paragraph: why it matters */
    const char *advice;         /* what to do */
    const char *evidence;       /* author, year, title; `common practice`; `our own choice` */
    const char *fires, *mended; /* two whole small files for `explain`, the second without this finding */
    const char *limit_says;     /* how to change its limit: "moderate-share at least 75%" */
};
extern const struct rule rules[]; /* in the order of checks.md */
extern const int rule_count;
const struct rule *rule_find(const char *name); /* NULL: no such rule */
const char *rule_page(struct arena *arena, const struct rule *rule); /* `explain RULE` */

/* effort.c */
void rule_moderate_share(struct asking *asking, const struct block_view *block);
void rule_failure_window(struct asking *asking, const struct block_view *block);
void rule_top_first(struct asking *asking, const struct block_view *block);
void rule_top_harder(struct asking *asking, const struct block_view *block);
void rule_top_reps(struct asking *asking, const struct block_view *block);
void rule_hard_high_reps(struct asking *asking, const struct block_view *block);
void rule_heavy_practice(struct asking *asking, const struct athlete_view *athlete);
void heavy_practice_keep(struct asking *asking, const struct block_view *block);
void rule_effort_creep(struct asking *asking, const struct block_view *block);
void rule_too_light(struct asking *asking, const struct block_view *block);
/* volume.c */
void rule_weekly_sets(struct asking *asking, const struct block_view *block);
void rule_muscle_sets(struct asking *asking, const struct block_view *block);
void rule_volume_jump(struct asking *asking, const struct block_view *block);
void rule_load_jump(struct asking *asking, const struct block_view *block);
void rule_zone_reps(struct asking *asking, const struct block_view *block);
void rule_specific_load(struct asking *asking, const struct block_view *block);
void rule_unreachable_load(struct asking *asking, const struct block_view *block);
/* calendar.c */
void rule_deload_due(struct asking *asking, const struct athlete_view *athlete);
void deload_due_keep(struct asking *asking, const struct block_view *block);
void rule_frequency(struct asking *asking, const struct block_view *block);
void rule_back_to_back(struct asking *asking, const struct athlete_view *athlete);
void back_to_back_keep(struct asking *asking, const struct block_view *block);
void rule_session_minutes(struct asking *asking, const struct block_view *block);
void rule_order_in_day(struct asking *asking, const struct block_view *block);
void rule_taper_shape(struct asking *asking, const struct block_view *block);
void rule_meet_week(struct asking *asking, const struct block_view *block);
void rule_calendar_gap(struct asking *asking, const struct athlete_view *athlete);
void rule_calendar_overlap(struct asking *asking, const struct athlete_view *athlete);
void rule_stale_max(struct asking *asking, const struct block_view *block);
void rule_opener(struct asking *asking, const struct athlete_view *athlete);
void opener_keep(struct asking *asking, const struct block_view *block);
/* people.c */
void rule_effort_honesty(struct asking *asking, const struct athlete_view *athlete);
void rule_unlikely_result(struct asking *asking, const struct athlete_view *athlete);
void rule_missed_often(struct asking *asking, const struct athlete_view *athlete);
void rule_no_spotter_note(struct asking *asking, const struct block_view *block);

#endif
