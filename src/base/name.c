#include "base/name.h"

#include <utf8proc.h>

static bool is_letter(utf8proc_int32_t c)
{
    if (c < 0x80)
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    utf8proc_category_t category = utf8proc_category(c);
    return category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO;
}

static bool is_mark(utf8proc_int32_t c)
{
    utf8proc_category_t category = utf8proc_category(c);
    return category >= UTF8PROC_CATEGORY_MN && category <= UTF8PROC_CATEGORY_ME;
}

bool name_is_plain(const char *text)
{
    utf8proc_int32_t c = 0;
    int count = 0;
    for (utf8proc_ssize_t step; *text; text += step, count++) {
        c = (unsigned char)*text;
        step = c < 0x80 ? 1 : utf8proc_iterate((const utf8proc_uint8_t *)text, -1, &c);
        bool inner = count > 0 && ((c >= '0' && c <= '9') || c == '-' || c == '_' || (c >= 0x80 && is_mark(c)));
        if (step < 1 || count == NAME_LETTERS_MOST || (!inner && !is_letter(c)))
            return false;
    }
    return count > 0 && c != '-';
}

/* Within the pool, so that nothing is to be freed: utf8proc_NFC would allocate. */
const char *name_composed(struct arena *arena, struct interner *interner, const char *bytes, size_t length)
{
    const utf8proc_option_t nfc = UTF8PROC_STABLE | UTF8PROC_COMPOSE;
    const utf8proc_uint8_t *text = (const utf8proc_uint8_t *)bytes;
    bool ascii = true;
    for (size_t i = 0; i < length; i++)
        ascii &= (unsigned char)bytes[i] < 0x80;
    utf8proc_ssize_t count = ascii ? -1 : utf8proc_decompose(text, (utf8proc_ssize_t)length, NULL, 0, nfc);
    if (count < 0)
        return intern(interner, bytes, length);
    utf8proc_int32_t *codes = NEW_MANY(arena, utf8proc_int32_t, count + 1);
    utf8proc_decompose(text, (utf8proc_ssize_t)length, codes, count, nfc);
    utf8proc_ssize_t size = utf8proc_reencode(codes, count, nfc);
    return intern(interner, (const char *)codes, size < 0 ? 0 : (size_t)size);
}
