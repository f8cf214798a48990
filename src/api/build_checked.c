/* Errors looked for and plans written in one go. */
#include "api/inner.h"

#include "check/run.h"

enum {
    AHEAD_LEAST = 64,   /* athletes */
    TURN_LOAD = 2 << 20 /* bytes: more than a turn of tables, which is made before its time without waiting */
};

struct building {
    const struct format *format;
    struct writer *writer;
    const struct setwright_turns *turns; /* NULL: alone */
    bool (*sure)(void *context); /* NULL: nobody wants to know */
    void *sink_context;
    struct chosen chosen;
    const struct alike *alike;  /* of the athlete at hand, where she was asked about */
    bool parted, looks_at_all; /* a part; the house's own rules want to see everyone */
    int turn;                  /* the last that was ours; -1: none yet */
    int part_begin;            /* the index of the part's first athlete; -1: not met yet */
    int athlete;               /* the one at hand, counted from 0 in the part */
    int made, known;           /* athletes: with a plan of their own, and without */
};

static int turn_now(const struct building *b)
{
    return b->turns ? b->athlete / b->turns->athletes : 0;
}

static bool in_part(const struct building *b, int order)
{
    return !b->parted || b->chosen.athletes[order];
}

static bool is_ours(const struct building *b, int order)
{
    return in_part(b, order) && (!b->turns || turn_now(b) % b->turns->turns == b->turns->turn);
}

static bool wants(void *context, int order, int index)
{
    struct building *b = context;
    if (b->part_begin < 0 && in_part(b, order))
        b->part_begin = index;
    b->athlete = index - b->part_begin;
    return b->looks_at_all || is_ours(b, order);
}

/* Once most are like others it costs little to look for errors first, and then nothing has to be held back. Who takes turns does
 * so from the start: each looks at his own. */
static bool ahead(void *context)
{
    const struct building *b = context;
    return b->sure && !b->looks_at_all && (b->turns || (b->known >= AHEAD_LEAST && b->known > b->made));
}

static bool sure(void *context)
{
    const struct building *b = context;
    return b->sure(b->sink_context);
}

static bool is_written(const struct building *b, const struct pair *first)
{
    return is_ours(b, first->athlete->order) && is_chosen(&b->chosen, first);
}

static bool knows(void *context, const struct pair *pair, const struct alike *alike, bool fine)
{
    struct building *b = context;
    b->alike = alike;
    return is_written(b, pair) ? b->format->knows && b->format->knows(b->writer, alike) : fine;
}

/* A turn is over when our next one begins. */
static bool turn_ended(struct building *b)
{
    int turn = turn_now(b);
    bool ends = b->turns && b->turn >= 0 && turn != b->turn;
    b->turn = turn;
    return !ends || (b->format->pause(b->writer) && b->turns->done(b->turns->context));
}

static bool take(void *context, const struct pair *first, int count, struct plan *const *plans)
{
    struct building *b = context;
    bool named = false;
    if (!is_ours(b, first->athlete->order))
        return true;
    if (!turn_ended(b))
        return false;
    b->known += !plans;
    b->made += plans != NULL;
    for (int i = 0; i < count; i++) {
        if (!is_chosen(&b->chosen, &first[i]))
            continue;
        if (!named && !b->format->athlete(b->writer, first->athlete))
            return false;
        named = true;
        if (!plans ? !b->format->again(b->writer, first->athlete, b->alike) : plans[i] && !b->format->plan(b->writer, plans[i]))
            return false;
    }
    return true;
}

static enum setwright_status build(struct setwright *sw, struct building *b, const struct setwright_choice *choice,
                                   struct sink sink)
{
    struct checking *checking = checking_new_errors(sw->arena, sw->model);
    struct format_options options = { .crlf = choice->crlf,
                                      .resumed = b->chosen.resumed || (b->turns && b->turns->turn),
                                      .narrow = b->chosen.narrow };
    struct plan_taker taker = { .wants = wants, .ahead = ahead, .sure = sure, .knows = knows, .take = take, .context = b };
    b->looks_at_all = !checking;
    b->writer = b->format->begin(sw->work, sink, &options);
    sw->bare = b->format->bare && checking;
    bool written = check_all(sw, checking ? checking : checking_new(sw->arena, sw->model), &taker);
    sw->bare = false;
    written = b->format->end(b->writer) && written && (!b->turns || b->turns->done(b->turns->context));
    return api_status(sw) ? api_status(sw) : written ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}

bool setwright_may_share(struct setwright *sw)
{
    GUARD_WITH(sw, false);
    return sw->model && !checking_wants_everyone(sw->model);
}

enum setwright_status setwright_build_checked(struct setwright *sw, const char *format,
                                              const struct setwright_choice *choice, struct setwright_sink sink)
{
    GUARD(sw);
    struct building b = { .format = format_find(format), .turns = choice->turns, .sure = choice->sure,
                          .sink_context = sink.context, .parted = choice->parts, .turn = -1, .part_begin = -1 };
    if (!b.format)
        return api_format_problem(sw, format);
    enum setwright_status status = api_choose_waiting(sw, choice, &b.chosen);
    return status ? status : build(sw, &b, choice, (struct sink){ sink.write, sink.context, choice->turns ? TURN_LOAD : 0 });
}
