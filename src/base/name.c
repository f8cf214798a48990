#include "base/name.h"

#include <utf8proc.h>

static bool is_letter(utf8proc_int32_t c)
{
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
        step = utf8proc_iterate((const utf8proc_uint8_t *)text, -1, &c);
        bool inner = count > 0 && (is_mark(c) || (c >= '0' && c <= '9') || c == '-' || c == '_');
        if (step < 1 || count == NAME_LETTERS_MOST || (!inner && !is_letter(c)))
            return false;
    }
    return count > 0 && c != '-';
}
