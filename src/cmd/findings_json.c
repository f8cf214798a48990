/* JSON Lines: one object a line, one line a finding. Every key is always there, null where nothing is known:
 *   version   1, that of this form
 *   rule, level, message, help
 *   file, start, end            the place; start and end are { line, column, byte }, the end the first one past; lines and
 *                               columns from 1 in characters, bytes from 0 without a byte-order mark
 *   related                     a list of { file, start, end, message }
 *   place                       { block, week, day, lift, group }
 *   athlete                     the one it is for, or the first of several; null: everyone's
 *   athletes, athlete_count     the names of the first eight, and how many there are */
#include "cmd/findings.h"

#include "base/kinds.h"

#include <stdlib.h>
#include <utf8proc.h>

enum { FORM_VERSION = 1 };

json_t *json_of_text(struct arena *arena, const char *text)
{
    if (!text)
        return json_null();
    bool is_utf8 = utf8proc_decompose((const utf8proc_uint8_t *)text, 0, NULL, 0, UTF8PROC_NULLTERM) >= 0;
    return json_string(is_utf8 ? text : text_visible(arena, text));
}

json_t *json_of_place(struct arena *arena, const struct setwright_finding *finding)
{
    return json_pack("{s:o, s:o, s:o, s:o, s:o}", "block", json_of_text(arena, finding->block), "week",
                     finding->week ? json_integer(finding->week) : json_null(), "day", json_of_text(arena, finding->day), "lift",
                     json_of_text(arena, finding->lift), "group", json_of_text(arena, finding->group));
}

json_t *json_of_athletes(struct arena *arena, const struct setwright_finding *finding)
{
    json_t *list = json_array();
    for (int i = 0; i < finding->named; i++)
        if (json_array_append_new(list, json_of_text(arena, finding->athletes[i])) != 0) {
            json_decref(list);
            return NULL;
        }
    return list;
}

static json_t *point(const struct setwright_place *place, unsigned line, unsigned column, unsigned byte)
{
    if (!place->file)
        return json_null();
    return json_pack("{s:I, s:I, s:I}", "line", (json_int_t)line, "column", (json_int_t)column, "byte", (json_int_t)byte);
}

static json_t *start_of(const struct setwright_place *place)
{
    return point(place, place->line, place->column, place->byte);
}

static json_t *end_of(const struct setwright_place *place)
{
    return point(place, place->end_line, place->end_column, place->end_byte);
}

static json_t *related_list(struct arena *arena, const struct setwright_finding *finding)
{
    json_t *list = json_array();
    for (int i = 0; i < finding->related_count; i++) {
        const struct setwright_related *related = &finding->related[i];
        json_t *one = json_pack("{s:o, s:o, s:o, s:o}", "file", json_of_text(arena, related->place.file), "start", start_of(&related->place),
                                "end", end_of(&related->place), "message", json_of_text(arena, related->message));
        if (json_array_append_new(list, one) != 0) {
            json_decref(list);
            return NULL;
        }
    }
    return list;
}

static json_t *line_of(struct arena *arena, const struct setwright_finding *finding)
{
    const struct setwright_place *place = &finding->place;
    return json_pack("{s:i, s:s, s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:i}", "version", FORM_VERSION, "rule", finding->name,
                     "level", level_name((enum level)finding->level), "message", json_of_text(arena, finding->message), "help",
                     json_of_text(arena, finding->help), "file", json_of_text(arena, place->file), "start", start_of(place), "end",
                     end_of(place), "related", related_list(arena, finding), "place", json_of_place(arena, finding), "athlete",
                     json_of_text(arena, finding->named ? finding->athletes[0] : NULL), "athletes", json_of_athletes(arena, finding),
                     "athlete_count", finding->athlete_count);
}

/* json_dumps cannot be had here: without memory to grow, jansson 2.14 goes on behind a key that it has lost. */
bool json_write(json_t *json, size_t flags, FILE *out)
{
    size_t size = json ? json_dumpb(json, NULL, 0, flags) : 0;
    char *text = size ? malloc(size) : NULL;
    bool fine = text && json_dumpb(json, text, size, flags) == size;
    if (fine)
        fwrite(text, 1, size, out);
    free(text);
    json_decref(json);
    return fine;
}

bool findings_json(struct arena *arena, struct setwright *sw, FILE *out)
{
    int count = setwright_finding_count(sw);
    for (int i = 0; i < count; i++) {
        struct setwright_finding finding = setwright_finding(sw, i);
        if (!finding.name || !json_write(line_of(arena, &finding), JSON_COMPACT, out))
            return false;
        fputc('\n', out);
    }
    return true;
}
