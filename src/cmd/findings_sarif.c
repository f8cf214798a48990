/* SARIF 2.1.0 (OASIS Standard with Errata 01, 28 August 2023): one log, one run. Section numbers are those of the standard.
 * What an `allow` permits is here too, with the coach's reason as its suppression. */
#include "cmd/findings.h"

static const char schema[] = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/* 3.27.10: our advice is a note. */
static const char *const level_words[] = { [SETWRIGHT_ERROR] = "error", [SETWRIGHT_WARNING] = "warning", [SETWRIGHT_ADVICE] = "note" };

struct log {
    struct setwright *sw;
    struct arena *arena;
    json_t *rules, *results;
    VEC(const char *) used; /* names of rules, in the order of `rules` */
    bool failed;
};

static void put(struct log *log, json_t *array, json_t *value)
{
    log->failed |= json_array_append_new(array, value) != 0;
}

static json_t *message_of(struct log *log, const char *text)
{
    return json_pack("{s:o}", "text", json_of_text(log->arena, text));
}

/* RFC 3986: all but the unreserved characters and the slash is percent-encoded. */
static const char *uri_of(struct arena *arena, const char *file)
{
    const char *path = finding_path(arena, file);
    char *uri = arena_alloc(arena, 3 * strlen(path) + sizeof "file://"), *to = uri;
    if (*path == '/')
        to += sprintf(to, "file://");
    for (; *path; path++) {
        unsigned char c = (unsigned char)*path;
        bool plain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || strchr("-._~/", c);
        to += sprintf(to, plain ? "%c" : "%%%02X", c);
    }
    return uri;
}

static json_t *physical(struct log *log, const struct setwright_place *place)
{
    return json_pack("{s:{s:s}, s:{s:I, s:I, s:I, s:I}}", "artifactLocation", "uri", uri_of(log->arena, place->file), "region", "startLine",
                     (json_int_t)place->line, "startColumn", (json_int_t)place->column, "endLine", (json_int_t)place->end_line,
                     "endColumn", (json_int_t)place->end_column);
}

static json_t *locations(struct log *log, const struct setwright_place *place)
{
    json_t *list = json_array();
    if (place->file)
        put(log, list, json_pack("{s:o}", "physicalLocation", physical(log, place)));
    return list;
}

static json_t *related_locations(struct log *log, const struct setwright_finding *finding)
{
    json_t *list = json_array();
    for (int i = 0; i < finding->related_count; i++) {
        const struct setwright_related *related = &finding->related[i];
        if (related->place.file)
            put(log, list, json_pack("{s:i, s:o, s:o}", "id", i + 1, "physicalLocation", physical(log, &related->place), "message",
                                     message_of(log, related->message)));
    }
    return list;
}

/* 3.27.23: the lists of all results of a run are there or none is; an empty one says "not suppressed". */
static json_t *suppressions(struct log *log, const char *reason)
{
    json_t *list = json_array();
    if (reason)
        put(log, list, json_pack("{s:s, s:o}", "kind", "inSource", "justification", json_of_text(log->arena, reason)));
    return list;
}

static const char *says_of(const char *rule)
{
    const char *name, *says;
    for (int i = 0; (name = setwright_finding_name(i, &says)); i++)
        if (!strcmp(name, rule))
            return says;
    return NULL;
}

static int rule_index(struct log *log, const char *rule)
{
    for (int i = 0; i < log->used.count; i++)
        if (!strcmp(log->used.at[i], rule))
            return i;
    vec_add(log->arena, &log->used, rule);
    json_t *row = json_pack("{s:s}", "id", rule);
    const char *texts[] = { says_of(rule), setwright_explain(log->sw, rule) };
    const char *const keys[] = { "shortDescription", "help" };
    for (int i = 0; i < 2; i++)
        if (texts[i])
            log->failed |= json_object_set_new(row, keys[i], message_of(log, texts[i])) != 0;
    put(log, log->rules, row);
    return log->used.count - 1;
}

static void result_add(struct log *log, const struct setwright_finding *finding)
{
    if (!finding->name) {
        log->failed = true;
        return;
    }
    int index = rule_index(log, finding->name);
    put(log, log->results,
        json_pack("{s:s, s:i, s:s, s:o, s:o, s:o, s:o, s:{s:o, s:o, s:i}}", "ruleId", finding->name, "ruleIndex", index, "level",
                  level_words[finding->level], "message", message_of(log, finding_words(log->arena, finding)), "locations",
                  locations(log, &finding->place), "relatedLocations", related_locations(log, finding), "suppressions",
                  suppressions(log, finding->allowed), "properties", "place", json_of_place(log->arena, finding), "athletes",
                  json_of_athletes(log->arena, finding), "athleteCount", finding->athlete_count));
}

static json_t *document(struct log *log)
{
    return json_pack("{s:s, s:s, s:[{s:{s:{s:s, s:s, s:O}}, s:s, s:O}]}", "$schema", schema, "version", "2.1.0", "runs", "tool", "driver",
                     "name", "setwright", "version", setwright_version(), "rules", log->rules, "columnKind", "unicodeCodePoints",
                     "results", log->results);
}

bool findings_sarif(struct arena *arena, struct setwright *sw, FILE *out)
{
    struct log log = { .sw = sw, .arena = arena, .rules = json_array(), .results = json_array() };
    int count = setwright_finding_count(sw), allowed = setwright_allowed_count(sw);
    for (int i = 0; i < count + allowed; i++) {
        struct setwright_finding finding = i < count ? setwright_finding(sw, i) : setwright_allowed(sw, i - count);
        result_add(&log, &finding);
    }
    bool written = !log.failed && !setwright_problem(sw) && json_write(document(&log), JSON_INDENT(2), out);
    if (written)
        fputc('\n', out);
    json_decref(log.results);
    json_decref(log.rules);
    return written;
}
