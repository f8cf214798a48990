/* Any bytes as a block file: the scanner, the parser, what they say, and the tree, the same with and without lines read by hand. */
#include "reading.h"
#include "target.h"

#include "../unit/same_tree.h"

void target_run(const char *bytes, size_t length)
{
    struct reading r = { 0 };
    if (setjmp(r.out_of_memory) || !reading_begin(&r, "any.block", bytes, length))
        abort();
    if (!same_tree(r.arena, r.interner, r.source, r.findings))
        abort();
    tree_dump(r.arena, parse_text(r.arena, r.interner, r.source, findings_new(r.arena, NULL)));
    reading_end(&r);
}
