#include "api/inner.h"

#include <stdlib.h>

static const size_t MEMORY_USUAL = (size_t)2 << 30;

static bool begin(struct setwright *sw)
{
    if (setjmp(sw->out_of_memory))
        return false;
    if (!(sw->arena = arena_new(&sw->out_of_memory)) || !(sw->scratch = arena_new(&sw->out_of_memory)) ||
        !(sw->work = arena_new(&sw->out_of_memory)))
        return false;
    arena_share(sw->arena, &sw->left);
    arena_share(sw->scratch, &sw->left);
    arena_share(sw->work, &sw->left);
    sw->interner = interner_new(sw->arena);
    sw->sources = sources_new(sw->arena);
    sw->findings = findings_new(sw->arena, sw->sources);
    sw->shapes = shapes_new(sw->arena);
    sw->alikes = alikes_new(sw->arena);
    return true;
}

struct setwright *setwright_new(struct setwright_reader reader)
{
    struct setwright *sw = calloc(1, sizeof *sw);
    if (!sw)
        return NULL;
    sw->reader = (struct reader){ reader.read, reader.context, reader.ended };
    sw->memory = sw->left = MEMORY_USUAL;
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
    size_t used = sw->memory - sw->left;
    sw->memory = most;
    sw->left = most > used ? most - used : 0;
}

void api_exhausted(struct setwright *sw, bool bound)
{
    sw->problem = bound ? "these files ask for more memory than setwright takes" : "out of memory";
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
