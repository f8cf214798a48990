/* An arena and what a reader of one text needs, for the targets that stand before the library. */
#ifndef TESTS_FUZZ_READING_H
#define TESTS_FUZZ_READING_H

#include "base/diag.h"

#include <stdlib.h>

struct reading {
    jmp_buf out_of_memory;
    struct arena *arena;
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct source *source;
};

/* False without memory. A short text stands before this one, so that a place is not the byte in the file. */
static inline bool reading_begin(struct reading *r, const char *name, const char *bytes, size_t length)
{
    if (!(r->arena = arena_new(&r->out_of_memory)))
        return false;
    r->interner = interner_new(r->arena);
    r->sources = sources_new(r->arena);
    r->findings = findings_new(r->arena, r->sources);
    sources_add(r->sources, "first.block", "units kg\n", 9);
    return (r->source = sources_add(r->sources, name, bytes, length));
}

/* All that was found lies in the text, or just behind it, and is printed with its lines and marks. */
static inline void reading_end(struct reading *r)
{
    int count;
    struct finding *const *found = findings_all(r->findings, &count);
    for (int i = 0; i < count; i++)
        if (found[i]->at.start < r->source->base || found[i]->at.end < found[i]->at.start ||
            found[i]->at.end > r->source->base + r->source->length + 1)
            abort();
    char *text = NULL;
    size_t length;
    FILE *out = open_memstream(&text, &length);
    if (out) {
        findings_print(r->findings, out, (struct diag_style){ .colour = true });
        fclose(out);
    }
    free(text);
    arena_free(r->arena);
}

#endif
