/* Reads files with the library's own parser and drops the trees, plain lines unopened: the cost of text to tree.  usage: parse FILE... */
#include "base/file.h"
#include "syntax/parse.h"

#include <stdio.h>

enum { MOST = 256 << 20 };

int main(int argc, char **argv)
{
    static jmp_buf out_of_memory;
    struct arena *arena;
    if (setjmp(out_of_memory) || !(arena = arena_new(&out_of_memory)))
        return 4;
    struct interner *interner = interner_new(arena);
    struct sources *sources = sources_new(arena);
    struct findings *findings = findings_new(arena, sources);
    for (int i = 1; i < argc; i++) {
        size_t length;
        const char *why, *bytes = file_read(arena, argv[i], MOST, false, &length, &why);
        if (!bytes) {
            fprintf(stderr, "%s: %s\n", argv[i], why);
            return 3;
        }
        parse_text(arena, interner, sources_add(sources, argv[i], bytes, length), findings);
    }
    int errors = findings_count(findings, LEVEL_ERROR);
    arena_free(arena);
    return errors ? 1 : 0;
}
