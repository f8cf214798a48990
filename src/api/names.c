#include "api/inner.h"

#include "base/near.h"
#include "check/run.h"
#include "emit/format.h"
#include "emit/sheet.h"
#include "model/library.h"

#ifndef SETWRIGHT_VERSION
#define SETWRIGHT_VERSION "0"
#endif

const char *setwright_version(void)
{
    return SETWRIGHT_VERSION;
}

const char *setwright_format_name(int index, const char **ending, const char **says)
{
    if (index < 0 || index >= format_count())
        return NULL;
    *ending = format_at(index)->ending;
    *says = format_at(index)->says;
    return format_at(index)->name;
}

const char *setwright_sheet_name(int index, const char **says)
{
    if (index < 0 || index >= sheet_count())
        return NULL;
    *says = sheet_at(index)->says;
    return sheet_at(index)->name;
}

/* All that can be said: kinds that are no rule of the trade, then the rules. */
static bool has_rule(enum kind kind)
{
    for (int i = 0; i < rule_count; i++)
        if (rules[i].kind == kind)
            return true;
    return false;
}

const char *setwright_finding_name(int index, const char **says)
{
    for (int kind = 1; kind < KIND_COUNT; kind++)
        if (!has_rule((enum kind)kind) && index-- == 0) {
            *says = kind_row((enum kind)kind)->says;
            return kind_row((enum kind)kind)->name;
        }
    if (index < 0 || index >= rule_count)
        return NULL;
    *says = rules[index].asks;
    return rules[index].name;
}

const char *setwright_explain(struct setwright *sw, const char *finding_name)
{
    const struct rule *rule = rule_find(finding_name);
    enum kind kind = kind_find(finding_name);
    GUARD_WITH(sw, NULL);
    return rule ? rule_page(sw->arena, rule) : kind == KIND_NONE ? NULL : kind_row(kind)->explain;
}

const char *setwright_finding_near(const char *name)
{
    enum { NAMES_MOST = 256 };
    const char *names[NAMES_MOST], *says;
    int count = 0;
    while (count < NAMES_MOST && (names[count] = setwright_finding_name(count, &says)))
        count++;
    return word_nearest(name, names, count);
}

const char *setwright_library_name(int index, const char **text)
{
    if (index < 0 || (size_t)index >= library_count)
        return NULL;
    *text = library_files[index].text;
    return library_files[index].name;
}
