#include "api/inner.h"

#include <stdlib.h>

static const size_t MEMORY_USUAL = (size_t)2 << 30;
static const uint64_t WORK_USUAL = UINT64_C(1) << 36; /* about a minute; load.c adds to it with what it reads */

static bool begin(struct setwright *sw)
{
    if (setjmp(sw->out_of_memory))
        return false;
    if (!(sw->arena = arena_new(&sw->out_of_memory)) || !(sw->scratch = arena_new(&sw->out_of_memory)) ||
        !(sw->work = arena_new(&sw->out_of_memory)))
        return false;
    arena_share(sw->arena, &sw->budget);
    arena_share(sw->scratch, &sw->budget);
    arena_share(sw->work, &sw->budget);
    sw->lifter = arena_within(sw->arena);
    sw->hers = arena_within(sw->arena);
    sw->interner = interner_new(sw->arena);
    sw->sources = sources_new(sw->arena);
    sw->findings = findings_new(sw->arena, sw->sources);
    sw->shapes = shapes_new(sw->arena);
    sw->alikes = alikes_new(sw->arena);
    sw->steadies = steadies_new(sw->arena);
    return true;
}

struct setwright *setwright_new(struct setwright_reader reader)
{
    struct setwright *sw = calloc(1, sizeof *sw);
    if (!sw)
        return NULL;
    sw->reader = (struct reader){ reader.read, reader.context, reader.ended };
    sw->memory = MEMORY_USUAL;
    sw->budget = (struct budget){ MEMORY_USUAL, WORK_USUAL };
    if (begin(sw))
        return sw;
    setwright_free(sw);
    return NULL;
}

void setwright_free(struct setwright *sw)
{
    if (!sw)
        return;
    arena_free(sw->scratch);
    arena_free(sw->work);
    arena_free(sw->arena);
    free(sw);
}

void setwright_memory(struct setwright *sw, size_t most)
{
    size_t used = sw->memory - sw->budget.memory;
    sw->memory = most;
    sw->budget.memory = most > used ? most - used : 0;
}

void api_exhausted(struct setwright *sw, int ended)
{
    static const char *const says[] = {
        [ARENA_EMPTY] = "out of memory",
        [ARENA_BOUND] = "these files ask for more memory than setwright takes",
        [ARENA_WORK] = "these files ask for more work than setwright does; give it fewer athletes, weeks or lines at once",
    };
    sw->problem = says[ended];
    sw->spent = true;
}

enum setwright_status api_status(const struct setwright *sw)
{
    if (findings_has_kind(sw->findings, KIND_LIMIT))
        return SETWRIGHT_LIMIT;
    if (findings_has_kind(sw->findings, KIND_FILE))
        return SETWRIGHT_FILES;
    return findings_count(sw->findings, LEVEL_ERROR) ? SETWRIGHT_FINDINGS : SETWRIGHT_FINE;
}

enum setwright_status setwright_load(struct setwright *sw, const char *const *paths, int count)
{
    GUARD(sw);
    sw->heard = sw->allowed = NULL;
    struct loaded loaded = load_files(sw->arena, sw->scratch, sw->interner, sw->sources, sw->findings, sw->reader, paths, count);
    if (api_status(sw) != SETWRIGHT_FINE)
        return api_status(sw);
    sw->model = model_resolve(sw->arena, sw->interner, sw->sources, sw->findings, loaded);
    if (api_status(sw) != SETWRIGHT_FINE)
        sw->model = NULL;
    return api_status(sw);
}
