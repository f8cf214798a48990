#include "cmd/session.h"

#include "base/diag.h"
#include "base/file.h"

#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FILE_MOST = 64 << 20 };

struct read_file {
    dev_t device;
    ino_t inode;
};
struct named {
    const char *path;
    bool pipes; /* named itself, and not as one of a folder's files */
};
struct disk {
    struct arena *arena;
    struct setwright *sw; /* NULL: closed */
    VEC(struct named) named;
    VEC(const char *) roots; /* folders, without links, that files may be read from */
    VEC(struct read_file) read;
};

static bool lies_below(const char *folder, const char *path)
{
    size_t length = strlen(folder);
    return !strcmp(folder, "/") || (!strncmp(folder, path, length) && path[length] == '/');
}

/* A link may lead where it likes only if the coach named it; one in a file from elsewhere shall not open her other files. */
static bool leads_outside(const struct disk *disk, const char *path)
{
    const char *real = file_real(disk->arena, path);
    for (int i = 0; real && i < disk->roots.count; i++)
        if (lies_below(disk->roots.at[i], real))
            return false;
    return real;
}

static const char *disk_read(void *context, const char *path, size_t *length, const char **why)
{
    struct disk *disk = context;
    struct stat status;
    bool pipes = false;
    for (int i = 0; i < disk->named.count; i++)
        pipes |= disk->named.at[i].pipes && !strcmp(disk->named.at[i].path, path);
    if (!pipes && leads_outside(disk, path)) {
        *why = "it is a link that leads outside the folder you work in";
        return NULL;
    }
    const char *bytes = file_read(disk->arena, path, FILE_MOST, pipes, length, why);
    if (bytes && stat(path, &status) == 0) {
        struct read_file read = { status.st_dev, status.st_ino };
        vec_add(disk->arena, &disk->read, read);
    }
    return bytes;
}

static void disk_close(void *of)
{
    struct disk *disk = of;
    setwright_free(disk->sw);
    disk->sw = NULL;
}

bool session_has_read(const struct session *session, const char *path)
{
    struct stat status;
    if (stat(path, &status) != 0)
        return false;
    for (int i = 0; i < session->disk->read.count; i++)
        if (session->disk->read.at[i].device == status.st_dev && session->disk->read.at[i].inode == status.st_ino)
            return true;
    return false;
}

static void name_add(struct disk *disk, const char *path, bool pipes)
{
    const char *slash = strrchr(path, '/');
    const char *folder = !slash ? "." : slash == path ? "/" : arena_copy(disk->arena, path, (size_t)(slash - path));
    const char *real = file_real(disk->arena, folder);
    vec_add(disk->arena, &disk->named, ((struct named){ path, pipes }));
    const char *last = disk->roots.count ? disk->roots.at[disk->roots.count - 1] : "";
    if (real && strcmp(real, last) != 0)
        vec_add(disk->arena, &disk->roots, real);
}

void session_name(struct session *session, const char *path)
{
    name_add(session->disk, path, true);
}

/* A folder stands for its .block files, in the order of their names. */
static int expand(struct request *request, struct disk *disk)
{
    for (int i = 0; i < request->word_count; i++) {
        const char *word = request->words[i], *why;
        int count;
        if (!file_is_folder(word)) {
            name_add(disk, word, true);
            continue;
        }
        const char *const *names = file_list(request->arena, word, ".block", &count, &why);
        if (!names || !count) {
            diag_say(stderr, "%s: %s", word, names ? "there is no .block file in this folder" : why);
            return EXIT_FILES;
        }
        for (int j = 0; j < count; j++) {
            const char *slash = word[strlen(word) - 1] == '/' ? "" : "/";
            name_add(disk, arena_format(request->arena, "%s%s%s", word, slash, names[j]), false);
        }
    }
    return 0;
}

/* Where memory ended there is nothing to go on with. */
int session_ended(struct session *session, int status)
{
    if (status == EXIT_LIMIT && setwright_problem(session->sw)) {
        session_said(session, status, "nothing was written");
        session_close(session);
    }
    return status;
}

int session_read(struct request *request, struct session *session)
{
    *session = (struct session){ .disk = NEW(request->arena, struct disk) };
    session->disk->arena = request->arena;
    const char *here = file_real(request->arena, ".");
    if (here)
        vec_add(request->arena, &session->disk->roots, here);
    if (!request->word_count) {
        diag_say(stderr, "which files? `setwright %s --help` shows examples", request->command->name);
        return EXIT_USAGE;
    }
    int status = expand(request, session->disk);
    if (status)
        return status;
    arena_ends(request->arena, disk_close, session->disk);
    session->sw = session->disk->sw = setwright_new((struct setwright_reader){ disk_read, session->disk, true });
    if (!session->sw) {
        diag_say(stderr, "out of memory; nothing was written");
        return EXIT_LIMIT;
    }
    int count = session->disk->named.count;
    const char **paths = NEW_MANY(request->arena, const char *, count + 1);
    for (int i = 0; i < count; i++)
        paths[i] = session->disk->named.at[i].path;
    return session_ended(session, (int)setwright_load(session->sw, paths, count));
}

int session_open(struct request *request, struct session *session)
{
    int status = session_read(request, session);
    return status ? status : session_ended(session, (int)setwright_check(session->sw));
}

int session_said(const struct session *session, int status, const char *left)
{
    const char *problem = setwright_problem(session->sw);
    if (status == EXIT_USAGE && problem)
        diag_say(stderr, "%s", problem);
    if (status == EXIT_LIMIT && problem)
        diag_say(stderr, "%s; %s", problem, left);
    return status;
}

void session_close(struct session *session)
{
    disk_close(session->disk);
    session->sw = NULL;
}

struct setwright_choice choice_of(const struct request *request)
{
    return (struct setwright_choice){ .athletes = request->athletes.at, .athlete_count = request->athletes.count,
                                      .blocks = request->blocks.at, .block_count = request->blocks.count,
                                      .first_week = request->first_week, .last_week = request->last_week,
                                      .from = request->from, .to = request->to, .crlf = request->crlf, .sheet = request->sheet,
                                      .flights = request->flights.at, .flight_count = request->flights.count,
                                      .part = request->part, .parts = request->parts };
}
