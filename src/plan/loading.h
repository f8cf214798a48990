/* One set's load while it is worked out: from what is asked to a weight before rounding (raw.c), then changed, capped, rounded
 * and judged (load.c). Only these two include it. */
#ifndef PLAN_LOADING_H
#define PLAN_LOADING_H

#include "plan/work.h"

struct loading {
    struct planning *p;
    struct work_week *week;
    struct work_day *day;
    struct work_entry *entry;
    struct work_group *group;
    const struct spec *spec;
    struct max_used max; /* of the entry's lift */
    struct curve curve;
    bool has_max;
    const struct reason *running; /* where `max` is the running one: what led to it */
    struct plan_run *run;
    const struct reason *reason;
    struct ratio raw; /* 1e-10 kg */
};

/* raw.c */
struct span own_place(const struct loading *l, struct span at); /* of words of the group */
struct reason *because(struct loading *l, enum reason_kind kind, struct span at); /* a step of the derivation */
struct finding *load_finding(struct loading *l, enum kind kind, struct span at, const char *says);
bool loading_is_counted(const struct loading *l); /* plain reps or a cluster: what an effort can be worked out from */
struct ratio loading_reduced(const struct loading *l, struct ratio max); /* `max to 90%` */
void loading_by_line(struct loading *l); /* from here on the newest `max` line counts, whatever the diary says */
void missing_max(struct loading *l, const struct lift *lift, struct span at);
bool bodyweight_known(struct loading *l, struct ratio *weight, bool wanted); /* wanted: a finding when it is not */
/* l->raw, and the reasons that led to it; false: the load stays open, l->run->open may say in which words. */
bool raw_load(struct loading *l);

/* load.c */
void entry_loads(struct planning *p, struct work_week *week, struct work_day *day, struct work_entry *entry);

#endif
