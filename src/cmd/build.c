#include "cmd/accept.h"
#include "cmd/findings.h"
#include "cmd/folder.h"
#include "cmd/workers.h"

#include "base/diag.h"
#include "base/stop.h"

#include <string.h>

struct written {
    struct file_out *out;
    bool any;
};

static bool to_file(void *context, const char *bytes, size_t length)
{
    struct written *written = context;
    written->any |= length > 0;
    return file_write(written->out, bytes, length);
}

static bool is_sure(void *context)
{
    struct written *written = context;
    return file_let_go(written->out);
}

int build_said(struct build *build, int status)
{
    return session_said(&build->session, status, "nothing was written");
}

static int file_says(struct build *build, const char *path, const char *why)
{
    progress_end(&build->progress);
    diag_say(stderr, "%s: %s", path ? path : "standard output", why);
    return EXIT_FILES;
}

static int build_checked(struct build *build, const struct setwright_choice *choice, struct setwright_sink sink)
{
    struct setwright_choice told = *choice;
    told.sure = is_sure;
    return (int)setwright_build_checked(build->session.sw, build->request->format, &told, sink);
}

/* Where errors are looked for on the way, nothing gets out before there are none. */
static int build_to(struct build *build, const struct setwright_choice *choice, struct written *written)
{
    struct setwright *sw = build->session.sw;
    struct setwright_sink sink = { to_file, written };
    if (!build->checks)
        return (int)setwright_build(sw, build->request->format, choice, sink);
    file_hold(build->request->arena, written->out);
    int status = (int)setwright_fits(sw, choice);
    if (status)
        return status;
    struct workers *workers = build->request->threads > 1 ? workers_begin(build->request, &build->session, written->out) : NULL;
    status = workers ? workers_build(workers, written->out) : build_checked(build, choice, sink);
    workers_end(workers);
    return status;
}

int build_write(struct build *build, const char *path, const struct setwright_choice *choice, struct file_out **out, bool *any)
{
    const char *why = "it cannot be written";
    *out = NULL;
    if (path && session_has_read(&build->session, path)) {
        progress_end(&build->progress);
        diag_say(stderr, "%s is one of the files that were read; choose another name for the output", path);
        return EXIT_USAGE;
    }
    struct written written = { .out = file_create(build->request->arena, path, &why) };
    if (!written.out)
        return file_says(build, path, why);
    int status = build_to(build, choice, &written);
    *any = written.any;
    if (status && status != EXIT_FILES) {
        progress_end(&build->progress);
        file_abandon(written.out);
        return session_said(&build->session, status, file_is_seen(written.out) ? "what came out is not whole" : "nothing was written");
    }
    if (file_finish(written.out, &why) && !status) {
        *out = written.out;
        return 0;
    }
    bool quiet = file_fails_quietly(written.out);
    file_abandon(written.out);
    return quiet ? EXIT_FILES : file_says(build, path, why);
}

/* One file, whole or not at all. */
static int build_one(struct build *build, const char *path, const struct setwright_choice *choice)
{
    struct file_out *out;
    const char *why;
    bool any;
    int status = build_write(build, path, choice, &out, &any);
    return status || file_commit(out, &why) ? status : file_says(build, path, why);
}

/* A format or a sheet that is not there: the library names the nearest. */
static int build_unknown(struct build *build)
{
    struct setwright_choice none = { .sheet = build->request->sheet };
    struct setwright_sink nowhere = { 0 };
    return build_said(build, setwright_build(build->session.sw, build->request->format, &none, nowhere));
}

static int find_names(struct build *build)
{
    const char *name, *says, *sheet = build->request->sheet;
    int format = 0, known = 0;
    while ((name = setwright_format_name(format, &build->ending, &says)) && strcmp(name, build->request->format) != 0)
        format++;
    while (sheet && setwright_sheet_name(known, &says) && strcmp(setwright_sheet_name(known, &says), sheet) != 0)
        known++;
    return name && (!sheet || setwright_sheet_name(known, &says)) ? 0 : build_unknown(build);
}

static bool is_folder(const struct request *request)
{
    return request->out && (request->out[strlen(request->out) - 1] == '/' || file_is_folder(request->out));
}

static int build_into(struct build *build)
{
    const char *out = build->request->out;
    struct setwright_choice choice = choice_of(build->request);
    if (is_folder(build->request))
        return folder_build(build, out);
    if (!build->request->per_week)
        return build_one(build, out, &choice);
    diag_say(stderr, "--per week writes many files; say which folder with -o sheets/");
    return EXIT_USAGE;
}

/* Findings are shown only where they keep the plans from being built. */
static int may_build(const struct request *request, struct setwright *sw, int status)
{
    if (!status && !findings_fail(request, sw))
        return 0;
    if (!findings_show(request, sw))
        return EXIT_LIMIT;
    diag_say(stderr, "nothing was built; mend the %s first", setwright_errors(sw) ? "errors" : setwright_warnings(sw) ? "warnings" : "advice");
    return status ? status : EXIT_ERRORS;
}

/* Warnings are of no use to a build that errors alone can stop. */
static bool errors_alone(const struct request *request)
{
    return request->fail_on == SETWRIGHT_ERROR && !request->accept && !request->form;
}

/* An error was met: now all is said that `check` says. */
static int check_after_all(struct build *build)
{
    build->checks = false;
    session_close(&build->session);
    return session_open(build->request, &build->session);
}

/* Reads the files; one output is checked while it is built, many are checked before. */
static int open_for(struct build *build)
{
    struct request *request = build->request;
    if (!errors_alone(request))
        return session_open(request, &build->session);
    build->checks = !is_folder(request) && !request->per_week && !request->sheet;
    int status = session_read(request, &build->session);
    if (!status && !build->checks)
        status = session_ended(&build->session, (int)setwright_check_errors(build->session.sw));
    return status == EXIT_ERRORS ? check_after_all(build) : status;
}

static int build_all(struct build *build, int status)
{
    struct stop stop = stop_hold();
    status = may_build(build->request, build->session.sw, status);
    if (!status)
        status = find_names(build);
    if (!status)
        status = build_into(build);
    stop_release(&stop);
    return status;
}

int cmd_build(struct request *request)
{
    struct build build = { .request = request, .progress = progress_begin() };
    if (!accept_asked_well(request))
        return EXIT_USAGE;
    int status = open_for(&build);
    if (build.session.sw) {
        int trouble = accept_apply(request, &build.session, status);
        status = trouble ? trouble : build_all(&build, status);
    }
    if (build.checks && build.session.sw && status == EXIT_ERRORS)
        status = may_build(request, build.session.sw, check_after_all(&build));
    session_close(&build.session);
    return status;
}
