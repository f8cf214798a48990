#include "emit/visible.h"

#include "base/excerpt.h"

#include <utf8proc.h>

static bool is_plain(unsigned char byte)
{
    return byte >= 0x20 && byte < 0x7F;
}

static utf8proc_int32_t code_at(const char *bytes, size_t length, size_t *size)
{
    utf8proc_int32_t code;
    utf8proc_ssize_t read = utf8proc_iterate((const utf8proc_uint8_t *)bytes, (utf8proc_ssize_t)length, &code);
    *size = read > 0 ? (size_t)read : 1;
    return read > 0 ? code : -1;
}

static void code_show(struct out *to, char letter, unsigned code, int digits)
{
    out_char(to, '\\');
    out_char(to, letter);
    for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
        out_char(to, "0123456789abcdef"[code >> shift & 15]);
}

static size_t character_add(struct out *to, const char *bytes, size_t length)
{
    size_t size;
    utf8proc_int32_t code = code_at(bytes, length, &size);
    if (code >= 0 && character_is_harmless(code))
        out_bytes(to, bytes, size);
    else if (code < 0x80)
        code_show(to, 'x', (unsigned char)*bytes, 2);
    else
        code_show(to, 'u', (unsigned)code, code > 0xFFFF ? 6 : 4);
    return size;
}

void visible_add(struct out *to, const char *bytes, size_t length, enum visible_breaks breaks)
{
    for (size_t at = 0; at < length;) {
        size_t plain = at;
        while (plain < length && is_plain((unsigned char)bytes[plain]))
            plain++;
        out_bytes(to, bytes + at, plain - at);
        at = plain;
        if (at == length)
            return;
        if (bytes[at] != '\n' && bytes[at] != '\t')
            at += character_add(to, bytes + at, length - at);
        else if (breaks == VISIBLE_BREAKS)
            out_char(to, bytes[at++]);
        else
            out_char(to, ' '), at++;
    }
}

size_t character_size(const char *bytes, size_t length)
{
    size_t size;
    code_at(bytes, length, &size);
    return size;
}

int columns_of(const char *bytes, size_t length)
{
    int columns = 0;
    for (size_t at = 0; at < length;) {
        if (is_plain((unsigned char)bytes[at])) {
            columns++;
            at++;
            continue;
        }
        size_t size;
        utf8proc_int32_t code = code_at(bytes + at, length - at, &size);
        columns += code < 0 ? 1 : utf8proc_charwidth(code);
        at += size;
    }
    return columns;
}
