/* Any bytes as a block file: the scanner, the parser, what they say, and the tree. */
#include "reading.h"
#include "target.h"

#include "syntax/parse.h"

void target_run(const char *bytes, size_t length)
{
    struct reading r = { 0 };
    if (setjmp(r.out_of_memory) || !reading_begin(&r, "any.block", bytes, length))
        abort();
    const struct tree *tree = parse_text(r.arena, r.interner, r.source, r.findings);
    tree_dump(r.arena, tree);
    reading_end(&r);
}
