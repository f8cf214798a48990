#include "cmd/findings.h"

#include "base/diag.h"
#include "base/excerpt.h"
#include "syntax/words.h"

#include <limits.h>
#include <stdlib.h>
#include <unistd.h>

enum { FINDINGS_MOST = 50 };

static const struct findings_form forms[] = {
    { "text", false, findings_text },
    { "short", false, findings_short },
    { "json", true, findings_json },
    { "sarif", true, findings_sarif },
    { "github", true, findings_github },
};
enum { FORM_COUNT = sizeof forms / sizeof *forms };

const struct findings_form *findings_form_find(const char *name)
{
    for (int i = 0; i < FORM_COUNT; i++)
        if (!strcmp(forms[i].name, name))
            return &forms[i];
    return NULL;
}

const char *findings_form_near(const char *name)
{
    const char *names[FORM_COUNT];
    for (int i = 0; i < FORM_COUNT; i++)
        names[i] = forms[i].name;
    return word_nearest(name, names, FORM_COUNT);
}

static const struct findings_form *form_asked(const struct request *request)
{
    return request->form ? request->form : &forms[0];
}

bool findings_on_stdout(const struct request *request)
{
    return form_asked(request)->program;
}

bool findings_show(const struct request *request, struct setwright *sw)
{
    const struct findings_form *form = form_asked(request);
    if (form->write(request->arena, sw, form->program ? stdout : stderr))
        return true;
    diag_say(stderr, "out of memory; not all findings were written");
    return false;
}

int findings_open(struct request *request, struct session *session)
{
    int status = session_open(request, session);
    return status && session->sw && !findings_show(request, session->sw) ? EXIT_LIMIT : status;
}

bool findings_fail(const struct request *request, const struct setwright *sw)
{
    int errors = setwright_errors(sw), all = setwright_finding_count(sw);
    const int grave[] = { [SETWRIGHT_ERROR] = errors, [SETWRIGHT_WARNING] = errors + setwright_warnings(sw), [SETWRIGHT_ADVICE] = all };
    return grave[request->fail_on] > 0;
}

/* ---- for people ---- */

static bool to_stream(void *context, const char *bytes, size_t length)
{
    return fwrite(bytes, 1, length, context) == length;
}

static bool for_people(struct setwright *sw, FILE *out, bool brief)
{
    const char *plain = getenv("NO_COLOR");
    bool colour = isatty(fileno(out)) && !(plain && *plain);
    struct setwright_style style = { .colour = colour, .brief = brief, .most = FINDINGS_MOST };
    return !setwright_finding_count(sw) ||
           setwright_findings_text(sw, (struct setwright_sink){ to_stream, out }, style) != SETWRIGHT_LIMIT;
}

bool findings_text(struct arena *arena, struct setwright *sw, FILE *out)
{
    (void)arena;
    return for_people(sw, out, false);
}

bool findings_short(struct arena *arena, struct setwright *sw, FILE *out)
{
    (void)arena;
    return for_people(sw, out, true);
}

/* ---- for programs ---- */

static const char *join(struct arena *arena, const char *before, const char *between, const char *word, const char *name)
{
    return name ? arena_format(arena, "%s%s%s%s", before, *before ? between : "", word, name) : before;
}

static const char *for_whom(struct arena *arena, const struct setwright_finding *finding)
{
    const char *names = "";
    for (int i = 0; i < finding->named; i++)
        names = join(arena, names, i + 1 == finding->athlete_count ? " and " : ", ", "", finding->athletes[i]);
    if (finding->athlete_count > finding->named)
        names = arena_format(arena, "%s and %d more", names, finding->athlete_count - finding->named);
    return *names ? names : NULL;
}

static const char *where(struct arena *arena, const struct setwright_finding *finding)
{
    const char *week = finding->week ? arena_format(arena, "%d", finding->week) : NULL;
    const char *text = join(arena, "", ", ", "block ", finding->block);
    text = join(arena, text, ", ", "week ", week);
    text = join(arena, text, ", ", "day ", finding->day);
    text = join(arena, text, ", ", "", finding->lift);
    text = join(arena, text, ", ", "", finding->group);
    return *text ? text : NULL;
}

const char *finding_words(struct arena *arena, const struct setwright_finding *finding)
{
    const char *text = join(arena, finding->message, "\n", "in ", where(arena, finding));
    text = join(arena, text, "\n", "for ", for_whom(arena, finding));
    return join(arena, text, "\n", "help: ", finding->help);
}

const char *finding_path(struct arena *arena, const char *file)
{
    while (!strncmp(file, "./", 2))
        for (file += 2; *file == '/';)
            file++;
    char room[PATH_MAX];
    const char *here = *file == '/' ? getcwd(room, sizeof room) : NULL;
    size_t length = here && here[1] ? strlen(here) : 0; /* the root is 0: its slash is the one before the rest */
    if (here && !strncmp(file, here, length) && file[length] == '/')
        file += length + 1;
    return arena_copy(arena, file, strlen(file));
}

const char *text_visible(struct arena *arena, const char *text)
{
    return safe_text(arena, text);
}
