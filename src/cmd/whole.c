#include "cmd/whole.h"

#include "base/diag.h"
#include "base/file.h"
#include "base/stop.h"

static bool keep(void *context, const char *bytes, size_t length)
{
    struct whole *whole = context;
    for (size_t i = 0; i < length; i++)
        vec_add(whole->arena, &whole->text, bytes[i]);
    return true;
}

struct setwright_sink whole_sink(struct whole *whole)
{
    return (struct setwright_sink){ keep, whole };
}

static int write_to(const struct whole *whole, const struct request *request)
{
    const char *path = request->out, *why = "it cannot be written";
    struct file_out *out = file_create(request->arena, path, &why);
    if (out) {
        file_write(out, whole->text.at, (size_t)whole->text.count);
        if (file_commit(out, &why))
            return 0;
    }
    if (!out || !file_fails_quietly(out))
        diag_say(stderr, "%s: %s", path ? path : "standard output", why);
    return EXIT_FILES;
}

int whole_write(const struct whole *whole, const struct request *request, const struct session *session)
{
    const char *path = request->out;
    if (path && session_has_read(session, path)) {
        diag_say(stderr, "%s is one of the files that were read; choose another name for the output", path);
        return EXIT_USAGE;
    }
    struct stop stop = stop_hold();
    int status = write_to(whole, request);
    stop_release(&stop);
    return status;
}
