#include "base/hidden.h"

#include <string.h>
#include <utf8proc.h>

/* Names as in the Unicode Character Database, in the words of a sentence. */
static const struct {
    int32_t code;
    const char *what;
} rows[] = {
    { 0x00AD, "a soft hyphen" },
    { 0x061C, "an Arabic letter mark" },
    { 0x200B, "a zero-width space" },
    { 0x200C, "a zero-width non-joiner" },
    { 0x200D, "a zero-width joiner" },
    { 0x200E, "a left-to-right mark" },
    { 0x200F, "a right-to-left mark" },
    { 0x202A, "a left-to-right embedding" },
    { 0x202B, "a right-to-left embedding" },
    { 0x202C, "the end of a change of direction" },
    { 0x202D, "a left-to-right override" },
    { 0x202E, "a right-to-left override" },
    { 0x2060, "a word joiner" },
    { 0x2066, "a left-to-right isolate" },
    { 0x2067, "a right-to-left isolate" },
    { 0x2068, "a first-strong isolate" },
    { 0x2069, "the end of an isolate" },
    { 0xFEFF, "a zero-width no-break space" },
};
enum { ROWS = sizeof rows / sizeof *rows, NON_JOINER = 0x200C, JOINER = 0x200D, JOINING_FROM = 0x0590 };

static const char *what_of(int32_t code)
{
    for (int i = 0; i < ROWS; i++)
        if (rows[i].code == code)
            return rows[i].what;
    return code >= 0x2000 && utf8proc_category(code) == UTF8PROC_CATEGORY_CF ? "a format character" : NULL;
}

static utf8proc_int32_t code_at(const char *text, uint32_t length, uint32_t *size)
{
    utf8proc_int32_t code;
    utf8proc_ssize_t read = utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)length, &code);
    *size = read > 0 ? (uint32_t)read : 1;
    return read > 0 ? code : 0;
}

/* Eight bytes at once: nearly all of a text is plain. */
static bool is_plain(const char *text)
{
    uint64_t bytes;
    memcpy(&bytes, text, sizeof bytes);
    return !(bytes & UINT64_C(0x8080808080808080));
}

bool hidden_find(const char *text, uint32_t length, struct hidden *hidden)
{
    utf8proc_int32_t code, before = 0;
    for (uint32_t at = 0, size; at < length; at += size, before = code) {
        code = (unsigned char)text[at];
        size = 1;
        if (length - at >= 8 && is_plain(text + at)) {
            size = 8;
            continue;
        }
        if (code < 0x80)
            continue;
        code = code_at(text + at, length - at, &size);
        bool joins = (code == NON_JOINER || code == JOINER) && before >= JOINING_FROM && !what_of(before);
        const char *what = joins ? NULL : what_of(code);
        if (what) {
            *hidden = (struct hidden){ what, code, at, at + size };
            return true;
        }
    }
    return false;
}

void hidden_say(struct findings *findings, const char *text, uint32_t length, uint32_t base, const char *where)
{
    struct hidden hidden;
    if (!hidden_find(text, length, &hidden))
        return;
    struct finding *finding = diag_add(findings, KIND_TEXT, (struct span){ base + hidden.start, base + hidden.end },
                                       "%s (U+%04X) stands in this %s and cannot be seen", hidden.what, (unsigned)hidden.code, where);
    diag_level(findings, finding, LEVEL_WARNING);
    diag_help(findings, finding, "delete it and type the %s anew; sheets show such characters by their code", where);
}
