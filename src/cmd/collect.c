#include "cmd/findings.h"
#include "cmd/whole.h"

#include "base/diag.h"
#include "base/file.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

struct sheets {
    VEC(const char *) list;
};

static bool ends_in(const char *word, const char *ending)
{
    size_t length = strlen(word), tail = strlen(ending);
    return length >= tail && !strcasecmp(word + length - tail, ending);
}

/* Sheets and files of blocks, told apart by their endings; the request keeps the latter. */
static bool words_part(struct request *request, struct sheets *sheets)
{
    const char **blocks = NEW_MANY(request->arena, const char *, request->word_count + 1);
    int count = 0;
    for (int i = 0; i < request->word_count; i++) {
        const char *word = request->words[i];
        if (ends_in(word, ".csv") && !file_is_folder(word)) {
            vec_add(request->arena, &sheets->list, word);
        } else if (ends_in(word, ".block") || file_is_folder(word)) {
            blocks[count++] = word;
        } else {
            diag_say(stderr,
                     "%s ends neither in .block nor in .csv; save a spreadsheet as CSV, with the encoding UTF-8", word);
            return false;
        }
    }
    request->words = blocks;
    request->word_count = count;
    if (sheets->list.count && count)
        return true;
    diag_say(stderr,
             sheets->list.count ? "which plan? name its .block files too: setwright collect club/ %s"
                                : "which sheets? name the .csv files that were filled in beside the plan's files%s",
             sheets->list.count ? sheets->list.at[0] : "");
    return false;
}

/* What the plan is warned of is the business of `check`. */
static void silence(struct request *request, struct setwright *sw)
{
    int count = setwright_finding_count(sw);
    bool *silent = NEW_MANY(request->arena, bool, count + 1);
    for (int i = 0; i < count; i++)
        silent[i] = true;
    setwright_silence(sw, silent);
}

static int collect(struct request *request, struct session *session, const struct sheets *sheets)
{
    struct whole whole = { .arena = request->arena };
    int sessions, status;
    silence(request, session->sw);
    for (int i = 0; i < sheets->list.count; i++)
        session_name(session, sheets->list.at[i]);
    status = (int)setwright_collect(session->sw, sheets->list.at, sheets->list.count, whole_sink(&whole), &sessions);
    if (session_said(session, status, "nothing was collected") == EXIT_LIMIT && setwright_problem(session->sw))
        return status;
    if (status) {
        if (!findings_show(request, session->sw))
            return EXIT_LIMIT;
        diag_say(stderr, "nothing was collected; mend the sheet%s first", sheets->list.count == 1 ? "" : "s");
        return status;
    }
    if (sessions)
        return whole_write(&whole, request, session);
    diag_say(stderr, "nothing is filled in under done_reps in %s%s; nothing was written", sheets->list.at[0],
             sheets->list.count == 1 ? "" : " and the other sheets");
    return 0;
}

int cmd_collect(struct request *request)
{
    struct session session;
    struct sheets sheets = { 0 };
    if (request->word_count && !words_part(request, &sheets))
        return EXIT_USAGE;
    int status = findings_open(request, &session);
    if (status && session.sw)
        diag_say(stderr, "nothing was collected; mend the plan's files first");
    if (!status)
        status = collect(request, &session, &sheets);
    session_close(&session);
    return status;
}
