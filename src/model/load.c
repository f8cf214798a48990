#include "model/load.h"

#include "base/numbers.h"
#include "base/vec.h"
#include "model/library.h"
#include "syntax/parse.h"
#include "syntax/words.h"

#include <string.h>

struct loading {
    struct arena *arena, *trees;
    struct interner *interner;
    struct sources *sources;
    struct findings *findings;
    struct reader reader;
    VEC(struct file_unit) files;
    VEC(struct roster_file) rosters;
    struct numbers seen;     /* interned paths already read or refused */
    VEC(const char *) roots; /* folders of the named files, "" for the working folder */
    size_t bytes;
};

const struct library_file *library_find(const char *name)
{
    for (size_t i = 0; i < library_count; i++)
        if (!strcmp(library_files[i].name, name))
            return &library_files[i];
    return NULL;
}

static const char *folder_of(struct arena *arena, const char *path)
{
    const char *slash = strrchr(path, '/');
    return arena_copy(arena, path, slash ? (size_t)(slash - path) + 1 : 0);
}

/* Drops "." and resolves ".." by text alone; a ".." that climbs out of the start stays in front. */
static const char *path_tidy(struct arena *arena, const char *path)
{
    char *out = arena_alloc(arena, strlen(path) + 2);
    size_t used = 0, floor = 0;
    if (*path == '/')
        out[used++] = '/', floor = 1;
    while (*path) {
        size_t part = strcspn(path, "/");
        if (part == 2 && path[0] == '.' && path[1] == '.' && used > floor) {
            for (used--; used > floor && out[used - 1] != '/';)
                used--;
        } else if (part && !(part == 1 && path[0] == '.')) {
            memcpy(out + used, path, part);
            used += part;
            if (part == 2 && path[0] == '.' && path[1] == '.')
                floor = used + 1;
            if (path[part])
                out[used++] = '/';
        }
        path += part + (path[part] == '/');
    }
    out[used] = 0;
    return out;
}

const char *load_join(struct arena *arena, const char *using_file, const char *path)
{
    if (*path == '/')
        return path_tidy(arena, path);
    return path_tidy(arena, arena_format(arena, "%s%s", folder_of(arena, using_file), path));
}

static bool is_within(const struct loading *l, const char *path)
{
    if (*path != '/' && strncmp(path, "../", 3) != 0)
        return true;
    for (int i = 0; i < l->roots.count; i++) {
        const char *root = l->roots.at[i];
        size_t length = strlen(root);
        if (length && !strncmp(path, root, length) && !strstr(path + length, "../"))
            return true;
    }
    return false;
}

static bool first_time(struct loading *l, const char *path)
{
    const char *name = intern(l->interner, path, strlen(path));
    int known = l->seen.count;
    return numbers_give(&l->seen, name, 0) == known;
}

static const char *read_bytes(struct loading *l, const char *path, bool library, size_t *length, const char **why)
{
    if (library) {
        const struct library_file *file = library_find(path);
        *why = "the library that comes with setwright has no such file";
        *length = file ? file->length : 0;
        return file ? file->text : NULL;
    }
    return l->reader.read(l->reader.context, path, length, why);
}

static const char *library_nearest(const char *path)
{
    enum { NAMES_MOST = 64 };
    const char *names[NAMES_MOST];
    size_t count = library_count < NAMES_MOST ? library_count : NAMES_MOST;
    for (size_t i = 0; i < count; i++)
        names[i] = library_files[i].name;
    return word_nearest(path, names, (int)count);
}

static void take_help(struct loading *l, struct finding *finding, const char *near, bool library)
{
    if (near)
        diag_help(l->findings, finding, "did you mean %s?", near);
    else if (library)
        diag_help(l->findings, finding, "`setwright templates` lists its files");
    else
        diag_help(l->findings, finding, "a path after `use` or `roster` is seen from this file's folder");
}

/* Keeps a file's bytes as a source, or says at `at` (nowhere: the command line) why not. */
static struct source *take(struct loading *l, const char *path, bool library, struct span at)
{
    size_t length = 0;
    const char *why = "it cannot be read";
    const char *bytes = read_bytes(l, path, library, &length, &why);
    if (!bytes) {
        struct finding *finding = diag_add(l->findings, KIND_FILE, at, "%s: %s", *path ? path : ".", why);
        if (span_is_somewhere(at))
            take_help(l, finding, library ? library_nearest(path) : NULL, library);
        return NULL;
    }
    l->bytes += length;
    if (l->bytes > LOAD_BYTES_MOST || l->seen.count > LOAD_FILES_MOST) {
        diag_add(l->findings, KIND_LIMIT, at, "all files together pass %d MB or %d files", LOAD_BYTES_MOST >> 20,
                 LOAD_FILES_MOST);
        return NULL;
    }
    arena_allow(l->arena, (uint64_t)LOAD_STEPS_A_BYTE * length);
    struct source *source = library || l->reader.ended ? sources_keep(l->sources, path, bytes, length)
                                                       : sources_add(l->sources, path, bytes, length);
    if (source)
        source->library = library;
    return source;
}

static bool allowed(struct loading *l, const char *path, struct span at)
{
    if (is_within(l, path))
        return true;
    struct finding *finding = diag_add(l->findings, KIND_USE, at, "%s lies outside the folder you work in", path);
    diag_help(l->findings, finding, "keep the files of a club in one folder and start setwright there");
    return false;
}

static void read_roster(struct loading *l, const struct file_unit *file, const struct node *node)
{
    const char *path = load_join(l->arena, file->tree->source->name, node->child->text);
    if (file->tree->source->library || !allowed(l, path, node->child->at) || !first_time(l, path))
        return;
    struct source *source = take(l, path, false, node->child->at);
    if (!source)
        return;
    struct roster_file roster = { .unit = file->unit, .at = node->at };
    roster.roster = roster_read(l->arena, l->trees, l->interner, source, l->findings);
    vec_add(l->arena, &l->rosters, roster);
}

static void units_line(struct loading *l, struct file_unit *file, const struct node *node, struct span *first)
{
    const char *name = node->child->text;
    enum weight_unit unit = !strcmp(name, "lb") ? UNIT_LB : UNIT_KG;
    if (unit == UNIT_KG && strcmp(name, "kg") != 0) {
        struct finding *finding = diag_add(l->findings, KIND_UNIT, node->child->at, "weights are in kg or lb here, not `%s`", name);
        diag_help(l->findings, finding, "write `units kg` or `units lb`");
    } else if (span_is_somewhere(*first) && unit != file->unit) {
        struct finding *finding = diag_add(l->findings, KIND_REPEATED, node->at, "this file already has another `units` line");
        diag_related(l->findings, finding, *first, "the first one is here");
        diag_help(l->findings, finding, "keep one; weights that state kg or lb themselves may stand in any file");
    }
    if (!span_is_somewhere(*first))
        file->unit = unit, *first = node->at;
}

static void language_line(struct loading *l, const struct node *node)
{
    if (node->child->number.e10 == DEC_ONE)
        return;
    struct finding *finding = diag_add(l->findings, KIND_LIMIT, node->child->at, "this setwright knows language 1 only");
    diag_help(l->findings, finding, "write `language 1`, or use a newer setwright for this file");
}

static void load_one(struct loading *l, const char *path, bool library, struct span at, int depth);

static bool ends_in_csv(const char *path)
{
    size_t length = strlen(path);
    return length > 4 && !strcmp(path + length - 4, ".csv");
}

/* What is plainly no block file is said before it is read. */
static bool wrong_path(struct loading *l, const struct node *node)
{
    const char *wanted = node->child->text;
    struct finding *finding;
    if (!*wanted) {
        finding = diag_add(l->findings, KIND_USE, node->child->at, "no file is named here");
        diag_help(l->findings, finding, "write the file's name: `use \"athletes.block\"`");
    } else if (ends_in_csv(wanted)) {
        finding = diag_add(l->findings, KIND_USE, node->child->at, "%s is a spreadsheet, not a file of blocks", wanted);
        diag_help(l->findings, finding, "write `roster \"%s\"` to take its athletes in", wanted);
    } else {
        return false;
    }
    return true;
}

static void follow(struct loading *l, const struct file_unit *file, const struct node *node, int depth)
{
    const char *wanted = node->child->text;
    if (wrong_path(l, node))
        return;
    bool library = !strncmp(wanted, "std/", 4) || file->tree->source->library;
    const char *path = !strncmp(wanted, "std/", 4) ? path_tidy(l->arena, wanted)
                                                   : load_join(l->arena, file->tree->source->name, wanted);
    if (depth >= LOAD_DEPTH_MOST) {
        diag_add(l->findings, KIND_LIMIT, node->at, "files use each other more than %d deep", LOAD_DEPTH_MOST);
        return;
    }
    if (library || allowed(l, path, node->child->at))
        load_one(l, path, library, node->child->at, depth + 1);
}

static void load_one(struct loading *l, const char *path, bool library, struct span at, int depth)
{
    if (!first_time(l, path))
        return;
    struct source *source = take(l, path, library, at);
    if (!source)
        return;
    source->named = depth == 0;
    struct file_unit file = { .tree = parse_text(l->trees, l->interner, source, l->findings), .unit = UNIT_KG };
    struct span units_at = { 0 };
    for (const struct node *node = file.tree->root->child; node; node = node->next) {
        if (node->kind == NODE_UNITS)
            units_line(l, &file, node, &units_at);
        else if (node->kind == NODE_LANGUAGE)
            language_line(l, node);
    }
    vec_add(l->arena, &l->files, file);
    for (const struct node *node = file.tree->root->child; node; node = node->next) {
        if (node->kind == NODE_USE && node->child)
            follow(l, &file, node, depth);
        else if (node->kind == NODE_ROSTER && node->child)
            read_roster(l, &file, node);
    }
}

struct loaded load_files(struct arena *arena, struct arena *trees, struct interner *interner, struct sources *sources,
                         struct findings *findings, struct reader reader, const char *const *paths, int path_count)
{
    struct loading l = { .arena = arena, .trees = trees, .interner = interner, .sources = sources, .findings = findings, .reader = reader,
                         .seen.arena = arena };
    for (int i = 0; i < path_count; i++)
        vec_add(arena, &l.roots, folder_of(arena, path_tidy(arena, paths[i])));
    for (int i = 0; i < path_count; i++)
        load_one(&l, path_tidy(arena, paths[i]), false, (struct span){ 0 }, 0);
    return (struct loaded){ l.files.at, l.files.count, l.rosters.at, l.rosters.count, trees };
}
