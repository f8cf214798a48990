/* Workflow commands that GitHub shows beside the lines of a change: ::error file=F,line=L,…,title=RULE::MESSAGE.
 * Escapes as its runner undoes them: % CR LF everywhere, in properties : and , too. */
#include "cmd/findings.h"

static const char *const commands_by_level[] = { [SETWRIGHT_ERROR] = "error", [SETWRIGHT_WARNING] = "warning", [SETWRIGHT_ADVICE] = "notice" };

static void escaped(FILE *out, const char *text, const char *set)
{
    for (; *text; text++)
        fprintf(out, strchr(set, *text) ? "%%%02X" : "%c", (unsigned char)*text);
}

static void property(FILE *out, const char *text)
{
    escaped(out, text, "%\r\n:,");
}

/* Columns are understood within one line only. */
static void place(struct arena *arena, FILE *out, const struct setwright_place *at)
{
    fputs("file=", out);
    property(out, text_visible(arena, finding_path(arena, at->file)));
    fprintf(out, ",line=%u", at->line);
    if (at->line == at->end_line)
        fprintf(out, ",col=%u", at->column);
    fprintf(out, ",endLine=%u", at->end_line);
    if (at->line == at->end_line)
        fprintf(out, ",endColumn=%u", at->end_column);
    fputc(',', out);
}

/* Line ends between the parts of a message are meant; one within a part would be shown as \x0a. */
static void message(struct arena *arena, FILE *out, const char *text)
{
    for (const char *end; (end = strchr(text, '\n')); text = end + 1) {
        escaped(out, text_visible(arena, arena_copy(arena, text, (size_t)(end - text))), "%\r\n");
        fputs("%0A", out);
    }
    escaped(out, text_visible(arena, text), "%\r\n");
}

static const char *with_related(struct arena *arena, const struct setwright_finding *finding)
{
    const char *text = finding_words(arena, finding);
    for (int i = 0; i < finding->related_count; i++) {
        const struct setwright_related *related = &finding->related[i];
        text = related->place.file ? arena_format(arena, "%s\n%s:%u:%u: %s", text, finding_path(arena, related->place.file),
                                                  related->place.line, related->place.column, related->message)
                                   : arena_format(arena, "%s\n%s", text, related->message);
    }
    return text;
}

bool findings_github(struct arena *arena, struct setwright *sw, FILE *out)
{
    int count = setwright_finding_count(sw);
    for (int i = 0; i < count; i++) {
        struct setwright_finding finding = setwright_finding(sw, i);
        if (!finding.name)
            return false;
        fprintf(out, "::%s ", commands_by_level[finding.level]);
        if (finding.place.file)
            place(arena, out, &finding.place);
        fputs("title=", out);
        property(out, finding.name);
        fputs("::", out);
        message(arena, out, with_related(arena, &finding));
        fputc('\n', out);
    }
    return true;
}
