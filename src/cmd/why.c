#include "cmd/findings.h"

#include "base/diag.h"

static bool to_stdout(void *context, const char *bytes, size_t length)
{
    (void)context;
    return fwrite(bytes, 1, length, stdout) == length;
}

static bool asked_whole(const struct request *request)
{
    return request->athletes.count == 1 && request->first_week && request->first_week == request->last_week && request->lift;
}

int cmd_why(struct request *request)
{
    struct session session;
    if (!asked_whole(request)) {
        diag_say(stderr, "say one athlete, one week and one lift: setwright why --athlete ines --week 2 --lift squat club/");
        return EXIT_USAGE;
    }
    int status = findings_open(request, &session);
    if (!status) {
        struct setwright_question question = { .athlete = request->athletes.at[0], .week = request->first_week, .day = request->day,
                                               .lift = request->lift, .block = request->blocks.count ? request->blocks.at[0] : NULL };
        status = (int)setwright_why(session.sw, &question, (struct setwright_sink){ to_stdout, NULL });
        session_said(&session, status, "what came out is not whole");
    }
    session_close(&session);
    return status;
}
