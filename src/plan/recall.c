/* Loads worked out before in the same plan: a block asks for most of them again and again. */
#include "plan/recall.h"

#include "base/diag.h"

enum { SLOT_BITS = 8 };

/* All that a load hangs on within one plan of one athlete without a diary. */
struct recalled {
    const struct lift *lift;
    const struct gym *gym;
    const struct max_line *line;
    enum load_kind load_kind;
    enum reps_kind reps_kind;
    enum role role;
    struct spec spec;
    struct plan_run run;
};
struct recall {
    struct recalled *slots[1 << SLOT_BITS]; /* the latest with a hash; NULL: none yet */
};

/* Neither a set before it, nor a change, a cap or a progression has a say; nor is anything told that names its place. */
static bool hangs_on_itself(const struct loading *l)
{
    const struct work_group *group = l->group;
    bool by_itself = group->load_kind == LOAD_EFFORT || group->load_kind == LOAD_WEIGHT ||
                     (group->load_kind == LOAD_PERCENT && group->role != ROLE_WARM_UP);
    return by_itself && !reasons_are_told(l->p) && !l->p->record && l->entry->lift->loads != LOADS_BODYWEIGHT && !group->has_state_load &&
           !group->load_changes.count && !group->cap_from_change && !group_more(group->group)->cap.series;
}

static struct recalled **slot_of(const struct loading *l)
{
    struct planning *p = l->p;
    uint64_t hash = (uintptr_t)l->entry->lift ^ (uint64_t)l->spec->effort_low.e10 ^ (uint64_t)l->spec->amount.num << 8 ^ (uint64_t)l->spec->reps_low;
    if (!p->recall)
        p->recall = NEW(p->arena, struct recall);
    return &p->recall->slots[hash * UINT64_C(0x9E3779B97F4A7C15) >> (64 - SLOT_BITS)];
}

static bool specs_equal(const struct spec *a, const struct spec *b)
{
    return a->reps_low == b->reps_low && a->reps_high == b->reps_high && a->effort_low.e10 == b->effort_low.e10 &&
           a->effort_high.e10 == b->effort_high.e10 && a->amount.num == b->amount.num && a->amount.den == b->amount.den;
}

bool recall_run(const struct loading *l)
{
    if (!hangs_on_itself(l))
        return false;
    const struct recalled *kept = *slot_of(l);
    if (!kept || kept->lift != l->entry->lift || kept->gym != l->day->gym || kept->line != l->max.line || kept->load_kind != l->group->load_kind ||
        kept->reps_kind != l->group->reps_kind || kept->role != l->group->role || !specs_equal(&kept->spec, l->spec))
        return false;
    *l->run = kept->run;
    return true;
}

void recall_keep(const struct loading *l)
{
    if (!hangs_on_itself(l))
        return;
    struct recalled **kept = slot_of(l);
    if (!*kept)
        *kept = NEW(l->p->arena, struct recalled);
    **kept = (struct recalled){ .lift = l->entry->lift, .gym = l->day->gym, .line = l->max.line, .load_kind = l->group->load_kind,
                                 .reps_kind = l->group->reps_kind, .role = l->group->role, .spec = *l->spec, .run = *l->run };
}
