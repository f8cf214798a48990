#include "cmd/findings.h"
#include "cmd/whole.h"

#include "base/diag.h"

enum { EXIT_USAGE = 2 };

int cmd_review(struct request *request)
{
    struct session session;
    struct whole whole = { .arena = request->arena };
    int status = session_open(request, &session);
    if (status && session.sw)
        findings_show(request, session.sw);
    if (!status) {
        struct setwright_choice choice = choice_of(request);
        status = (int)setwright_review(session.sw, request->format, &choice, whole_sink(&whole));
        if (status == EXIT_USAGE)
            diag_say(stderr, "%s", setwright_problem(session.sw));
    }
    if (!status)
        status = whole_write(&whole, request, &session);
    session_close(&session);
    return status;
}
