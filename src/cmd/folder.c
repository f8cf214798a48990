#include "cmd/folder.h"

#include "base/diag.h"

#include <stdlib.h>
#include <string.h>

/* One file to be written. */
struct target {
    const char *path;
    const char *athlete, *block; /* NULL: all that are chosen */
    int run, week;               /* 0: all */
    struct file_out *out;        /* NULL: nothing to write, or not yet */
};
struct folder {
    struct build *build;
    struct arena *arena;
    const char *path; /* ends in a slash */
    VEC(struct target) parts, targets; /* parts: before they are split into weeks */
};

static bool keep_pair(void *context, const char *athlete, const char *block)
{
    struct folder *folder = context;
    struct target part = { .athlete = athlete, .block = block, .run = 1 };
    /* An athlete's pairs come one after the other. */
    for (int i = folder->parts.count; i-- > 0 && !strcmp(folder->parts.at[i].athlete, athlete);)
        part.run += !strcmp(folder->parts.at[i].block, block);
    vec_add(folder->arena, &folder->parts, part);
    return true;
}

/* A file for all athletes of a block. */
static void each_block(struct folder *folder)
{
    int kept = 0;
    for (int i = 0; i < folder->parts.count; i++) {
        struct target part = folder->parts.at[i];
        bool known = false;
        for (int j = 0; j < kept && !known; j++)
            known = folder->parts.at[j].run == part.run && !strcmp(folder->parts.at[j].block, part.block);
        part.athlete = NULL;
        if (!known)
            folder->parts.at[kept++] = part;
    }
    folder->parts.count = kept;
}

static void one_of_all(struct folder *folder)
{
    if (folder->parts.count)
        folder->parts.at[0] = (struct target){ 0 };
    folder->parts.count = folder->parts.count > 0;
}

/* How a sheet is cut into files. */
static const struct cut {
    const char *sheet;
    const char *tail; /* of the name, after athlete, block and run */
    void (*join)(struct folder *folder); /* parts that go into one file; NULL: none do */
    bool by_week;
} cuts[] = {
    { "athlete", "", NULL, true },
    { "group", "", each_block, true },
    { "coach", "coach", one_of_all, false },
    { "meet", "-meet", NULL, false },
};

static const struct cut *cut_of(const char *sheet)
{
    for (size_t i = 1; sheet && i < sizeof cuts / sizeof *cuts; i++)
        if (!strcmp(cuts[i].sheet, sheet))
            return &cuts[i];
    return &cuts[0];
}

static struct setwright_choice choice_for(const struct folder *folder, const struct target *target)
{
    struct setwright_choice choice = choice_of(folder->build->request);
    if (target->athlete)
        choice.athletes = &target->athlete, choice.athlete_count = 1;
    if (target->block)
        choice.blocks = &target->block, choice.block_count = 1;
    choice.run = target->run;
    if (target->week)
        choice.first_week = choice.last_week = target->week;
    return choice;
}

static const char *name_of(const struct folder *folder, const struct cut *cut, const struct target *target)
{
    struct arena *arena = folder->arena;
    const char *athlete = target->athlete ? arena_format(arena, "%s-", target->athlete) : "";
    const char *run = target->run > 1 ? arena_format(arena, "-%d", target->run) : "";
    const char *week = target->week ? arena_format(arena, "-week-%02d", target->week) : "";
    return arena_format(arena, "%s%s%s%s%s%s%s", folder->path, athlete, target->block ? target->block : "", run, cut->tail, week,
                        folder->build->ending);
}

static int add_target(struct folder *folder, const struct cut *cut, struct target target)
{
    struct setwright_choice choice = choice_for(folder, &target);
    int status = (int)setwright_fits(folder->build->session.sw, &choice);
    if (status) /* a shorter block, or none of it between the dates */
        return status == EXIT_LIMIT ? status : 0;
    target.path = name_of(folder, cut, &target);
    vec_add(folder->arena, &folder->targets, target);
    return 0;
}

static int split_weeks(struct folder *folder, const struct cut *cut, struct target part)
{
    struct setwright_choice choice = choice_for(folder, &part);
    int status = 0, last = setwright_weeks(folder->build->session.sw, &choice);
    last = choice.last_week && choice.last_week < last ? choice.last_week : last;
    for (part.week = choice.first_week ? choice.first_week : 1; !status && part.week <= last; part.week++)
        status = add_target(folder, cut, part);
    /* No weeks at all may be for want of memory. */
    return last || setwright_fits(folder->build->session.sw, &choice) != SETWRIGHT_LIMIT ? status : EXIT_LIMIT;
}

static int compare_paths(const void *left, const void *right)
{
    return strcmp((*(const struct target *const *)left)->path, (*(const struct target *const *)right)->path);
}

static const char *target_text(struct arena *arena, const struct target *target)
{
    return arena_format(arena, "%s%s%s", target->athlete ? target->athlete : "", target->athlete ? " in " : "", target->block);
}

/* ines-b in block c and ines in block b-c would write over each other. */
static int names_differ(struct folder *folder)
{
    const struct target **sorted = NEW_MANY(folder->arena, const struct target *, folder->targets.count + 1);
    for (int i = 0; i < folder->targets.count; i++)
        sorted[i] = &folder->targets.at[i];
    qsort(sorted, (size_t)folder->targets.count, sizeof *sorted, compare_paths);
    for (int i = 1; i < folder->targets.count; i++)
        if (!strcmp(sorted[i - 1]->path, sorted[i]->path)) {
            diag_say(stderr, "%s would be the name of two sheets, of %s and of %s; call one block something else", sorted[i]->path,
                     target_text(folder->arena, sorted[i - 1]), target_text(folder->arena, sorted[i]));
            return EXIT_USAGE;
        }
    return 0;
}

static int find_targets(struct folder *folder)
{
    const struct request *request = folder->build->request;
    const struct cut *cut = cut_of(request->sheet);
    struct setwright_choice choice = choice_of(request);
    int status = build_said(folder->build, setwright_pairs(folder->build->session.sw, &choice, keep_pair, folder));
    if (status)
        return status;
    if (request->per_week && !cut->by_week) {
        diag_say(stderr, "the %s sheet is not cut into weeks; leave --per out, or choose days with --from and --to", cut->sheet);
        return EXIT_USAGE;
    }
    if (cut->join)
        cut->join(folder);
    for (int i = 0; !status && i < folder->parts.count; i++)
        status = request->per_week ? split_weeks(folder, cut, folder->parts.at[i]) : add_target(folder, cut, folder->parts.at[i]);
    return status ? build_said(folder->build, status) : names_differ(folder);
}

/* ---- writing ---- */

static void abandon_all(struct folder *folder, int from)
{
    for (int i = from; i < folder->targets.count; i++)
        if (folder->targets.at[i].out)
            file_abandon(folder->targets.at[i].out);
}

static int write_all(struct folder *folder)
{
    int status = 0, written = 0;
    for (int i = 0; !status && i < folder->targets.count; i++) {
        struct target *target = &folder->targets.at[i];
        struct setwright_choice choice = choice_for(folder, target);
        progress_show(&folder->build->progress, "sheets", i, folder->targets.count);
        bool any;
        status = build_write(folder->build, target->path, &choice, &target->out, &any);
        if (target->out && !any) { /* a meet sheet of a block without a meet */
            file_abandon(target->out);
            target->out = NULL;
        }
        written += target->out != NULL;
    }
    progress_end(&folder->build->progress);
    if (status || written)
        return status;
    diag_say(stderr, "there is nothing to write%s", folder->build->request->sheet ? ": no such sheet comes out of these files" : "");
    return EXIT_USAGE;
}

static int commit_all(struct folder *folder)
{
    const char *why;
    for (int i = 0; i < folder->targets.count; i++) {
        struct target *target = &folder->targets.at[i];
        if (!target->out || file_commit(target->out, &why))
            continue;
        target->out = NULL;
        abandon_all(folder, i + 1);
        diag_say(stderr, "%s: %s; the files before it are new, the others as they were", target->path, why);
        return EXIT_FILES;
    }
    return 0;
}

int folder_build(struct build *build, const char *path)
{
    struct arena *arena = build->request->arena;
    const char *why = "it cannot be made", *slash = path[strlen(path) - 1] == '/' ? "" : "/";
    struct folder folder = { .build = build, .arena = arena, .path = arena_format(arena, "%s%s", path, slash) };
    bool made = !file_is_folder(path);
    int status = find_targets(&folder);
    if (status)
        return status;
    if (made && !folder_make(path, &why)) {
        diag_say(stderr, "%s: %s", path, why);
        return EXIT_FILES;
    }
    status = write_all(&folder);
    if (!status)
        return commit_all(&folder);
    abandon_all(&folder, 0);
    if (made)
        folder_drop(path);
    return status;
}
