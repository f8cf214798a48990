/* Any bytes as an athletes' spreadsheet. */
#include "reading.h"
#include "target.h"

#include "records/roster.h"

/* What roster.h promises and the model builds on. */
static void row_look(void *context, const struct roster_row *row)
{
    if (!row->athlete.text)
        abort();
    ++*(int *)context;
}

void target_run(const char *bytes, size_t length)
{
    struct reading r = { 0 };
    if (setjmp(r.out_of_memory) || !reading_begin(&r, "any.csv", bytes, length))
        abort();
    struct arena *scratch = arena_within(r.arena);
    struct roster roster = roster_read(r.arena, scratch, r.interner, r.source, r.findings);
    int rows = 0, lifters_rows = 0;
    arena_reset(scratch);
    if (findings_total(r.findings) == 0) { /* else nobody reads it again */
        roster_rows(&roster, scratch, row_look, &rows);
        for (int i = 0; i < roster.lifter_count; i++)
            roster_lifter(&roster, i, scratch, row_look, &lifters_rows);
        if (rows != roster.row_count || (roster.is_plain && lifters_rows != rows))
            abort();
    }
    reading_end(&r);
}
