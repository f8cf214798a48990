#include "cmd/findings.h"

static bool to_stdout(void *context, const char *bytes, size_t length)
{
    (void)context;
    return fwrite(bytes, 1, length, stdout) == length;
}

int cmd_calendar(struct request *request)
{
    struct session session;
    int status = findings_open(request, &session);
    if (!status) {
        struct setwright_choice choice = choice_of(request);
        status = (int)setwright_calendar(session.sw, &choice, (struct setwright_sink){ to_stdout, NULL });
        session_said(&session, status, "what came out is not whole");
    }
    session_close(&session);
    return status;
}
