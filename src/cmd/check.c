#include "cmd/accept.h"
#include "cmd/findings.h"

#include "base/diag.h"

#include <unistd.h>

static const char *counted(const struct request *request, const struct setwright *sw)
{
    int errors = setwright_errors(sw), warnings = setwright_warnings(sw), advice = setwright_finding_count(sw) - errors - warnings;
    const char *text = arena_format(request->arena, "%d error%s, %d warning%s", errors, errors == 1 ? "" : "s", warnings, warnings == 1 ? "" : "s");
    return request->fail_on == SETWRIGHT_ADVICE ? arena_format(request->arena, "%s, %d of advice", text, advice) : text;
}

static void count_aloud(const struct request *request, const struct setwright *sw, int status)
{
    if (status || setwright_warnings(sw))
        printf("%s.\n", counted(request, sw));
    else
        printf("Nothing to mend.\n");
}

static int show(struct request *request, struct session *session, int status)
{
    if (!status && findings_fail(request, session->sw))
        status = EXIT_ERRORS;
    if (!findings_show(request, session->sw))
        return EXIT_LIMIT;
    if (findings_on_stdout(request) && status)
        diag_say(stderr, "%s; they are on standard output", counted(request, session->sw));
    else if (!findings_on_stdout(request) && isatty(STDOUT_FILENO))
        count_aloud(request, session->sw, status);
    return status;
}

int cmd_check(struct request *request)
{
    struct session session;
    if (!accept_asked_well(request))
        return EXIT_USAGE;
    int status = session_open(request, &session);
    if (session.sw) {
        int trouble = accept_apply(request, &session, status);
        status = trouble ? trouble : show(request, &session, status);
    }
    session_close(&session);
    return status;
}
