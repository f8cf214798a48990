/* One plan worked out in two ways: by the book, and with what was worked out before. */
#ifndef TESTS_UNIT_SAME_PLAN_H
#define TESTS_UNIT_SAME_PLAN_H

#include "club.h"

static inline bool runs_equal(const struct plan_run *a, const struct plan_run *b)
{
    return a->sets == b->sets && a->has_effort == b->has_effort && a->effort_low.e10 == b->effort_low.e10 &&
           a->effort_high.e10 == b->effort_high.e10 && a->has_load == b->has_load && a->load.e10 == b->load.e10 &&
           a->shown.e10 == b->shown.e10 && !ratio_cmp(a->max, b->max) && !ratio_cmp(a->own_max, b->own_max) &&
           a->by_line == b->by_line && a->has_percent == b->has_percent && a->percent.e10 == b->percent.e10 &&
           a->has_expected == b->has_expected && a->expected.e10 == b->expected.e10 &&
           a->expected_under_one == b->expected_under_one && a->disc_count == b->disc_count && a->capped == b->capped &&
           a->under_bar == b->under_bar && !a->open == !b->open && (!a->open || !strcmp(a->open, b->open)) &&
           (a->disc_count <= 0 || !memcmp(a->discs, b->discs, sizeof *a->discs * (size_t)a->disc_count));
}

static inline const struct reason *reason_in(const struct plan_run *run, enum reason_kind kind)
{
    const struct reason *reason = run->reason;
    while (reason && reason->kind != kind)
        reason = reason->before;
    return reason;
}

/* The load before rounding and the max behind it, as the rules read them. */
static inline bool reasons_equal(const struct plan_run *told, const struct plan_run *ruled)
{
    const struct reason *raw = reason_in(told, REASON_RAW), *also = reason_in(ruled, REASON_RAW);
    const struct reason *max = reason_in(told, REASON_MAX), *max_also = reason_in(ruled, REASON_MAX);
    return !raw == !also && (!raw || !ratio_cmp(raw->load, also->load)) && !max == !max_also && (!max || (max->at.start == max_also->at.start && max->date.day == max_also->date.day));
}

static inline bool groups_equal(const struct plan_group *a, const struct plan_group *b)
{
    return a->group == b->group && a->role == b->role && a->sets_low == b->sets_low && a->sets_high == b->sets_high &&
           a->reps_kind == b->reps_kind && a->reps_low == b->reps_low && a->reps_high == b->reps_high && a->run_count == b->run_count;
}

static inline void plans_equal(const struct plan *told, const struct plan *other, bool ruled)
{
    assert_int_equal(told->week_count, other->week_count);
    for (int w = 0; w < told->week_count; w++) {
        assert_int_equal(told->weeks[w].day_count, other->weeks[w].day_count);
        for (int d = 0; d < told->weeks[w].day_count; d++) {
            assert_int_equal(told->weeks[w].days[d].entry_count, other->weeks[w].days[d].entry_count);
            for (int e = 0; e < told->weeks[w].days[d].entry_count; e++) {
                const struct plan_entry *entry = &told->weeks[w].days[d].entries[e], *same = &other->weeks[w].days[d].entries[e];
                assert_int_equal(entry->group_count, same->group_count);
                for (int g = 0; g < entry->group_count; g++) {
                    assert_true(groups_equal(&entry->groups[g], &same->groups[g]));
                    for (int r = 0; r < entry->groups[g].run_count; r++) {
                        assert_true(runs_equal(&entry->groups[g].runs[r], &same->groups[g].runs[r]));
                        assert_true(!ruled || reasons_equal(&entry->groups[g].runs[r], &same->groups[g].runs[r]));
                    }
                }
            }
        }
    }
}

/* How often all findings were said. */
static inline int times_of(struct told *t)
{
    int count, times = 0;
    struct finding *const *all = findings_all(t->findings, &count);
    for (int i = 0; i < count; i++)
        times += all[i]->times;
    return times;
}

#endif
