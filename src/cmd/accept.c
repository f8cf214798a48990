#include "cmd/accept.h"

#include "base/diag.h"
#include "base/file.h"
#include "base/stop.h"

#include <errno.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

enum { ACCEPT_MOST = 16 << 20, COUNT_MOST = 1000000000 };

struct accepted {
    const char *file, *rule;
    int count; /* accepted */
    int met;   /* now */
    int line;  /* in the accept file; 0: not from there */
};

struct accept {
    struct arena *arena;
    struct session *session;
    const char *path, *folder; /* the accept file and its folder, the latter without links */
    VEC(struct accepted) rows;
    const char *last_file, *last_key; /* findings come file by file */
};

bool accept_asked_well(const struct request *request)
{
    const char *read = request->accept, *write = request->write_accept;
    if (!read || !write || !strcmp(read, write))
        return true;
    diag_say(stderr, "--accept %s and --write-accept %s name two files; --write-accept alone reads its file, too", read, write);
    return false;
}

/* ---- names of files, as seen from the accept file ---- */

static const char *folder_of(struct arena *arena, const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *folder = !slash ? "." : arena_copy(arena, path, slash == path ? 1 : (size_t)(slash - path));
    const char *real = file_real(arena, folder);
    return real ? real : folder;
}

/* From the folder to the file, both without links: ../other/winter.block. */
static const char *seen_from(struct arena *arena, const char *folder, const char *file)
{
    size_t common = 0, i = 0;
    const char *up = "";
    if (!strcmp(folder, "/"))
        return file + 1;
    for (; folder[i] && folder[i] == file[i]; i++)
        if (file[i] == '/')
            common = i + 1;
    if (!folder[i] && file[i] == '/')
        return file + i + 1;
    for (const char *rest = folder + common - 1; rest; rest = strchr(rest + 1, '/'))
        up = arena_format(arena, "../%s", up);
    return arena_format(arena, "%s%s", up, file + common);
}

static const char *key_of(struct accept *accept, const char *file)
{
    if (file == accept->last_file)
        return accept->last_key;
    const char *real = file_real(accept->arena, file);
    accept->last_file = file;
    accept->last_key = real && *accept->folder == '/' ? seen_from(accept->arena, accept->folder, real) : file;
    return accept->last_key;
}

/* ---- rows ---- */

static struct accepted *row_find(struct accept *accept, const char *file, const char *rule)
{
    for (int i = 0; i < accept->rows.count; i++)
        if (!strcmp(accept->rows.at[i].file, file) && !strcmp(accept->rows.at[i].rule, rule))
            return &accept->rows.at[i];
    return NULL;
}

static struct accepted *row_of(struct accept *accept, const struct setwright_finding *finding)
{
    const char *file = key_of(accept, finding->place.file ? finding->place.file : "-");
    struct accepted *row = row_find(accept, file, finding->name);
    if (row)
        return row;
    vec_add(accept->arena, &accept->rows, ((struct accepted){ .file = file, .rule = finding->name }));
    return &accept->rows.at[accept->rows.count - 1];
}

static bool is_plain(const char *text, const char *at)
{
    unsigned char c = (unsigned char)*at;
    return c > ' ' ? c != 0x7f && c != '%' : c == ' ' && at > text && at[1];
}

static const char *file_spelt(struct arena *arena, const char *file)
{
    char *spelt = arena_alloc(arena, 3 * strlen(file) + 1), *to = spelt;
    for (const char *at = file; *at; at++)
        to += sprintf(to, is_plain(file, at) ? "%c" : "%%%02X", (unsigned char)*at);
    return spelt;
}

static int hex(char c)
{
    const char *digits = "0123456789ABCDEF", *at = c ? strchr(digits, c) : NULL;
    return at ? (int)(at - digits) : -1;
}

/* NULL: a per cent sign that stands for nothing. */
static const char *file_read_back(struct arena *arena, const char *spelt)
{
    char *file = arena_copy(arena, spelt, strlen(spelt)), *to = file;
    for (; *spelt; spelt++) {
        if (*spelt != '%') {
            *to++ = *spelt;
            continue;
        }
        int high = hex(spelt[1]), low = high < 0 ? -1 : hex(spelt[2]);
        if (low < 0 || high + low == 0)
            return NULL;
        *to++ = (char)(high * 16 + low);
        spelt += 2;
    }
    *to = 0;
    return file;
}

/* ---- reading ---- */

/* Takes a line apart in place; false: it is none of ours. */
static bool line_take(struct accept *accept, char *text, int line)
{
    size_t length = strlen(text);
    if (length && text[length - 1] == '\r')
        text[--length] = 0;
    if (!length || *text == '#')
        return true;
    char *rule = strchr(text, ' '), *file = rule ? strchr(rule + 1, ' ') : NULL;
    if (!file || file == rule + 1 || !file[1] || rule == text)
        return false;
    *rule++ = 0, *file++ = 0;
    struct accepted row = { .rule = rule, .line = line, .file = file_read_back(accept->arena, file) };
    for (const char *digit = text; *digit; digit++) {
        if (*digit < '0' || *digit > '9' || row.count >= COUNT_MOST / 10)
            return false;
        row.count = row.count * 10 + (*digit - '0');
    }
    if (!row.file || row_find(accept, row.file, row.rule))
        return false;
    vec_add(accept->arena, &accept->rows, row);
    return true;
}

static int accept_read(struct accept *accept)
{
    size_t length;
    const char *why = "it cannot be read";
    char *text = file_read(accept->arena, accept->path, ACCEPT_MOST, false, &length, &why);
    if (!text) {
        diag_say(stderr, "%s: %s; --write-accept %s makes it", accept->path, why, accept->path);
        return EXIT_FILES;
    }
    for (int line = 1; *text; line++) {
        char *end = strchr(text, '\n'), *next = end ? end + 1 : text + strlen(text);
        if (end)
            *end = 0;
        if (!line_take(accept, text, line)) {
            diag_say(stderr, "%s:%d: a line of accepted findings is a number, a rule and a file, each file and rule once, "
                             "such as: 2 load-jump winter.block", accept->path, line);
            return EXIT_FILES;
        }
        text = next;
    }
    return 0;
}

/* ---- comparing ---- */

static bool count_met(struct accept *accept)
{
    int count = setwright_finding_count(accept->session->sw);
    for (int i = 0; i < count; i++) {
        struct setwright_finding finding = setwright_finding(accept->session->sw, i);
        if (!finding.name)
            return false;
        if (finding.level != SETWRIGHT_ERROR)
            row_of(accept, &finding)->met++;
    }
    return true;
}

static void silence(struct accept *accept)
{
    int count = setwright_finding_count(accept->session->sw);
    bool *silent = NEW_MANY(accept->arena, bool, count + 1);
    int *left = NEW_MANY(accept->arena, int, accept->rows.count + 1);
    for (int i = 0; i < accept->rows.count; i++)
        left[i] = accept->rows.at[i].count;
    for (int i = 0; i < count; i++) {
        struct setwright_finding finding = setwright_finding(accept->session->sw, i);
        if (finding.name && finding.level != SETWRIGHT_ERROR)
            silent[i] = left[row_of(accept, &finding) - accept->rows.at]-- > 0;
    }
    setwright_silence(accept->session->sw, silent);
}

static bool is_library(const char *file)
{
    const char *name, *text;
    for (int i = 0; (name = setwright_library_name(i, &text)); i++)
        if (!strcmp(name, file))
            return true;
    return false;
}

/* A row of a file that this run did not read says nothing new, unless the file is gone. */
static bool was_read(const struct accept *accept, const struct accepted *row)
{
    if (is_library(row->file))
        return row->met > 0;
    const char *path = *row->file == '/' ? row->file : arena_format(accept->arena, "%s/%s", accept->folder, row->file);
    return row->met || session_has_read(accept->session, path) || (access(path, F_OK) != 0 && errno == ENOENT);
}

static void say_changes(const struct accept *accept)
{
    for (int i = 0; i < accept->rows.count; i++) {
        const struct accepted *row = &accept->rows.at[i];
        if (row->line && row->met < row->count && was_read(accept, row))
            diag_say(stderr, "%s:%d: advice: %d of %s accepted in %s, %d met; `setwright check --write-accept %s` lowers the count",
                     accept->path, row->line, row->count, row->rule, row->file, row->met, accept->path);
        if (row->count && row->met > row->count)
            diag_say(stderr, "%s:%d: advice: %d of %s accepted in %s, %d met; those shown are the last in the file and need not be the new ones",
                     accept->path, row->line, row->count, row->rule, row->file, row->met);
    }
}

/* ---- writing ---- */

static int compare_rows(const void *left, const void *right)
{
    const struct accepted *a = left, *b = right;
    int files = strcmp(a->file, b->file);
    return files ? files : strcmp(a->rule, b->rule);
}

static bool rows_write(struct accept *accept, struct file_out *out)
{
    const char *head = "# Findings of setwright that are known and accepted: how many, of which rule, in which file.\n"
                       "# `setwright check --accept` with this file is silent about as many. The counts only ever fall:\n"
                       "# `--write-accept` lowers them to what is met and adds none. Errors are never accepted.\n";
    bool fine = file_write(out, head, strlen(head));
    for (int i = 0; fine && i < accept->rows.count; i++) {
        const struct accepted *row = &accept->rows.at[i];
        const char *line = arena_format(accept->arena, "%d %s %s\n", row->count, row->rule, file_spelt(accept->arena, row->file));
        fine = !row->count || file_write(out, line, strlen(line));
    }
    return fine;
}

static int accept_write(struct accept *accept)
{
    const char *why = "it cannot be written";
    if (accept->rows.count)
        qsort(accept->rows.at, (size_t)accept->rows.count, sizeof *accept->rows.at, compare_rows);
    struct file_out *out = file_create(accept->arena, accept->path, &why);
    if (out) {
        rows_write(accept, out);
        if (file_commit(out, &why))
            return 0;
    }
    if (!out || !file_fails_quietly(out))
        diag_say(stderr, "%s: %s", accept->path, why);
    return EXIT_FILES;
}

static void counts_settle(struct accept *accept, bool anew)
{
    for (int i = 0; i < accept->rows.count; i++) {
        struct accepted *row = &accept->rows.at[i];
        if (anew || (row->met < row->count && was_read(accept, row)))
            row->count = row->met;
    }
}

static int write_and_silence(struct accept *accept, bool anew)
{
    counts_settle(accept, anew);
    struct stop stop = stop_hold();
    int status = accept_write(accept);
    stop_release(&stop);
    if (status)
        return status;
    silence(accept);
    int more = setwright_finding_count(accept->session->sw);
    if (more && !anew)
        diag_say(stderr, "%s: %d finding%s more than was accepted; nothing was added. Mend %s, or take the file away and write it anew",
                 accept->path, more, more == 1 ? "" : "s", more == 1 ? "it" : "them");
    return 0;
}

int accept_apply(const struct request *request, struct session *session, int status)
{
    struct accept accept = { .arena = request->arena, .session = session, .path = request->write_accept ? request->write_accept : request->accept };
    struct stat about;
    if (!accept.path)
        return 0;
    if (session_has_read(session, accept.path)) {
        diag_say(stderr, "%s is one of the files that were checked; choose another name for the accepted findings", accept.path);
        return EXIT_USAGE;
    }
    accept.folder = folder_of(accept.arena, accept.path);
    bool anew = request->write_accept && (stat(accept.path, &about) != 0 || !S_ISREG(about.st_mode));
    int trouble = anew ? 0 : accept_read(&accept);
    if (trouble)
        return trouble;
    if (!count_met(&accept))
        return session_said(session, EXIT_LIMIT, "nothing was written");
    if (request->write_accept && !status)
        return write_and_silence(&accept, anew);
    if (request->write_accept)
        diag_say(stderr, "%s was not written: errors are never accepted, and what comes after them has not been looked at", accept.path);
    silence(&accept);
    if (!status)
        say_changes(&accept);
    return 0;
}
