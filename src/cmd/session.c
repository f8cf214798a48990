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
struct disk {
    struct arena *arena;
    struct setwright *sw; /* NULL: closed */
    VEC(const char *) named;
    VEC(struct read_file) read;
};

static const char *disk_read(void *context, const char *path, size_t *length, const char **why)
{
    struct disk *disk = context;
    struct stat status;
    bool named = false;
    for (int i = 0; i < disk->named.count; i++)
        named |= !strcmp(disk->named.at[i], path);
    const char *bytes = file_read(disk->arena, path, FILE_MOST, named, length, why);
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

/* A folder stands for its .block files, in the order of their names. */
static int expand(struct request *request, struct disk *disk)
{
    for (int i = 0; i < request->word_count; i++) {
        const char *word = request->words[i], *why;
        int count;
        if (!file_is_folder(word)) {
            vec_add(request->arena, &disk->named, word);
            continue;
        }
        const char *const *names = file_list(request->arena, word, ".block", &count, &why);
        if (!names || !count) {
            diag_say(stderr, "%s: %s", word, names ? "there is no .block file in this folder" : why);
            return EXIT_FILES;
        }
        for (int j = 0; j < count; j++) {
            const char *slash = word[strlen(word) - 1] == '/' ? "" : "/";
            vec_add(request->arena, &disk->named, arena_format(request->arena, "%s%s%s", word, slash, names[j]));
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
    return session_ended(session, (int)setwright_load(session->sw, session->disk->named.at, session->disk->named.count));
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
