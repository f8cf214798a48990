/* Any bytes as an athletes' spreadsheet. */
#include "reading.h"
#include "target.h"

#include "records/roster.h"

void target_run(const char *bytes, size_t length)
{
    struct reading r = { 0 };
    if (setjmp(r.out_of_memory) || !reading_begin(&r, "any.csv", bytes, length))
        abort();
    struct roster roster = roster_read(r.arena, r.interner, r.source, r.findings);
    for (int i = 0; i < roster.count; i++)
        if (!roster.rows[i]->athlete.text)
            abort(); /* the promise of roster.h that the model builds on */
    reading_end(&r);
}
