#include "plan/review.h"

#include "base/vec.h"
#include "model/history.h"

/* Before a session counts the `max` line holds, and has no error of its own here. */
static struct review_max max_on(const struct review *review, const struct lift *lift, struct date day,
                                const struct block *block)
{
    struct running running = running_max(review->record, lift, day, block);
    struct review_max max = {
        .day = day, .has_max = running.known, .max = running.max, .error = running.error, .sessions = running.sessions
    };
    struct max_used line = history_max(review->record->athlete, lift, day, block);
    if (running.known || !line.line)
        return max;
    max.has_max = max.by_line = true;
    max.max = ratio_to_tenth_kg(line.load);
    return max;
}

struct review_maxes review_maxes(const struct review *review, const struct lift *lift)
{
    struct review_maxes maxes = { 0 };
    const struct block *block = NULL;
    for (int i = 0; i < review->week_count; i++) {
        const struct review_week *week = &review->weeks[i];
        if (week->start.day > review->last.day || (maxes.count && maxes.at[maxes.count - 1].day.day == week->start.day))
            continue;
        struct review_max max = max_on(review, lift, week->start, week->plan ? week->plan->block : NULL);
        max.week = week;
        block = week->plan ? week->plan->block : block;
        vec_add(review->arena, &maxes, max);
    }
    struct review_max last = max_on(review, lift, date_plus(review->last, 1), block);
    vec_add(review->arena, &maxes, last);
    if (!last.sessions)
        maxes.count = 0;
    return maxes;
}
