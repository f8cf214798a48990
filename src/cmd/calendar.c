#include "cmd/findings.h"
#include "cmd/session.h"

#include "base/diag.h"

enum { EXIT_LIMIT = 4 };

static bool to_stdout(void *context, const char *bytes, size_t length)
{
    (void)context;
    return fwrite(bytes, 1, length, stdout) == length;
}

int cmd_calendar(struct request *request)
{
    struct session session;
    int status = session_open(request, &session);
    if (status && session.sw && !findings_show(request, session.sw))
        status = EXIT_LIMIT;
    if (!status) {
        struct setwright_choice choice = choice_of(request);
        status = (int)setwright_calendar(session.sw, &choice, (struct setwright_sink){ to_stdout, NULL });
        session_said(&session, status, "what came out is not whole");
    }
    session_close(&session);
    return status;
}
