#include "api/inner.h"

#include "emit/as_why.h"

static enum setwright_status why_nothing(struct setwright *sw, const struct setwright_question *q, const struct lift *lift)
{
    sw->problem = arena_format(sw->arena, "%s does not train %s in week %d%s%s%s%s", q->athlete, lift->name, q->week, q->day ? " on day " : "",
                               q->day ? q->day : "", q->block ? " of " : "", q->block ? q->block : "");
    return SETWRIGHT_USAGE;
}

enum setwright_status setwright_why(struct setwright *sw, const struct setwright_question *question, struct setwright_sink sink)
{
    GUARD(sw);
    struct chosen chosen;
    struct setwright_choice choice = { .athletes = &question->athlete, .athlete_count = 1, .blocks = &question->block,
                                       .block_count = question->block ? 1 : 0 };
    enum setwright_status status = api_choose(sw, &choice, &chosen);
    if (status)
        return status;
    const struct lift *lift = model_lift(sw->model, question->lift);
    if (!lift)
        return api_problem(sw, "lift", question->lift, model_nearest_lift(sw->model, question->lift));
    int written = 0;
    for (int i = 0; i < sw->pairs.count && written >= 0; i++) {
        struct plan *plan = is_chosen(&chosen, &sw->pairs.at[i]) ? plan_pair(sw, &sw->pairs.at[i]) : NULL;
        int now = plan ? why_write(sw->scratch, api_sink(sink), plan, question->week, question->day, lift) : 0;
        written = now < 0 ? now : written + now;
    }
    return written < 0 ? SETWRIGHT_FILES : written ? SETWRIGHT_FINE : why_nothing(sw, question, lift);
}
