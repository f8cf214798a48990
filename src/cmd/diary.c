#include "cmd/findings.h"
#include "cmd/whole.h"

int cmd_diary(struct request *request)
{
    struct session session;
    struct whole whole = { .arena = request->arena };
    int status = findings_open(request, &session);
    if (!status) {
        struct setwright_choice choice = choice_of(request);
        status = (int)setwright_diary(session.sw, &choice, whole_sink(&whole));
        session_said(&session, status, "nothing was written");
    }
    if (!status)
        status = whole_write(&whole, request, &session);
    session_close(&session);
    return status;
}
