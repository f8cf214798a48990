/* The forms that findings are shown in: a row each, the same findings in all of them.
 *
 * Forms for people go to standard error and stop after 50 findings; forms for programs go to standard output, whole. A form
 * writes; it decides nothing and silences nothing. */
#ifndef CMD_FINDINGS_H
#define CMD_FINDINGS_H

#include "cmd/session.h"

#include <jansson.h>

struct findings_form {
    const char *name; /* "sarif" */
    bool program;     /* for programs: to standard output */
    bool (*write)(struct arena *arena, struct setwright *sw, FILE *out); /* false: out of memory */
};

const struct findings_form *findings_form_find(const char *name); /* NULL: no such form */
const char *findings_form_near(const char *name);                 /* the nearest name, or NULL */

/* Shows them in the form asked for (text, when none was). False: out of memory, which it has said. */
bool findings_show(const struct request *request, struct setwright *sw);
/* session_open, and shows the findings where there are errors. The same status; to be closed in every case too. */
int findings_open(struct request *request, struct session *session);
/* Whether any is at the level of --fail-on or graver. */
bool findings_fail(const struct request *request, const struct setwright *sw);
bool findings_on_stdout(const struct request *request);

bool findings_text(struct arena *arena, struct setwright *sw, FILE *out);
bool findings_short(struct arena *arena, struct setwright *sw, FILE *out);
bool findings_json(struct arena *arena, struct setwright *sw, FILE *out);
bool findings_sarif(struct arena *arena, struct setwright *sw, FILE *out);
bool findings_github(struct arena *arena, struct setwright *sw, FILE *out);

/* ---- what the forms for programs share ---- */

/* The message, then on lines of their own where in training it is, for whom, and what to do. */
const char *finding_words(struct arena *arena, const struct setwright_finding *finding);
/* The file as a path from the working directory where it lies below it; else as it was named. */
const char *finding_path(struct arena *arena, const char *file);
/* A copy in which nothing can steer a terminal, always UTF-8: \x1b for what does not show. */
const char *text_visible(struct arena *arena, const char *text);

/* JSON of a text; of NULL it is null. Bytes that are no UTF-8 (in a file's name) become visible ones. NULL: out of memory. */
/* Writes a value, whole or not at all, and drops it (NULL too). False: out of memory. */
bool json_write(json_t *json, size_t flags, FILE *out);
json_t *json_of_text(struct arena *arena, const char *text);
json_t *json_of_place(struct arena *arena, const struct setwright_finding *finding);    /* block, week, day, lift, group */
json_t *json_of_athletes(struct arena *arena, const struct setwright_finding *finding); /* a list of names */

#endif
