/* A roster from a text in memory, read and then read again as the model does. */
#ifndef TESTS_UNIT_READING_ROSTER_H
#define TESTS_UNIT_READING_ROSTER_H

#include "records/roster.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct reading {
    struct sources *sources;
    struct findings *findings;
    struct interner *interner;
    struct source *source;
    struct roster roster;
    struct arena *arena;
    struct roster_row **rows; /* read again */
    int count;
};

static inline void row_keep(void *context, const struct roster_row *row)
{
    struct reading *r = context;
    struct roster_row *kept = NEW(r->arena, struct roster_row);
    *kept = *row;
    kept->athlete.text = arena_format(r->arena, "%s", row->athlete.text);
    kept->title.text = row->title.text ? arena_format(r->arena, "%s", row->title.text) : NULL;
    assert_true(r->count < r->roster.row_count);
    r->rows[r->count++] = kept;
}

static inline struct reading read_bytes(struct arena *arena, const char *bytes, size_t length)
{
    struct reading r = { .sources = sources_new(arena), .interner = interner_new(arena) };
    sources_add(r.sources, "first.block", "units kg\n", 9); /* so that a place is not the byte in the file */
    r.findings = findings_new(arena, r.sources);
    r.source = sources_add(r.sources, "athletes.csv", bytes, length);
    struct arena *scratch = arena_within(arena);
    r.roster = roster_read(arena, scratch, r.interner, r.source, r.findings);
    r.arena = arena, r.rows = NEW_MANY(arena, struct roster_row *, r.roster.row_count + 1);
    int said = findings_said(r.findings);
    arena_reset(scratch);
    if (!findings_count(r.findings, LEVEL_ERROR)) { /* else nobody reads it again */
        roster_rows(&r.roster, scratch, row_keep, &r);
        assert_int_equal(r.count, r.roster.row_count);
    }
    assert_int_equal(findings_said(r.findings), said);
    return r;
}

static inline struct reading read_text(struct arena *arena, const char *text)
{
    return read_bytes(arena, text, strlen(text));
}

static inline void assert_spells(const struct reading *r, struct span at, const char *expected)
{
    assert_int_equal(at.end - at.start, strlen(expected));
    assert_memory_equal(r->source->text + (at.start - r->source->base), expected, strlen(expected));
}

#endif
