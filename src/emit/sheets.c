#include "emit/sheet.h"

#include <string.h>

static const struct sheet sheets[] = {
    { "athlete", "a page for each athlete and week", SHEET_ATHLETE, NULL },
    { "group", "a session with the whole squad on one page", SHEET_BLOCK, sheet_group },
    { "coach", "the coach's Monday page: who trains what, what is due", SHEET_CLUB, sheet_coach },
    { "meet", "meet day: attempts, warm-ups and minutes for the handler", SHEET_MEET, sheet_meet },
};

const struct sheet *sheet_find(const char *name)
{
    for (int i = 0; i < sheet_count(); i++)
        if (!strcmp(sheets[i].name, name))
            return &sheets[i];
    return NULL;
}

int sheet_count(void)
{
    return (int)(sizeof sheets / sizeof *sheets);
}

const struct sheet *sheet_at(int index)
{
    return &sheets[index];
}
