/* Numbers and dates, with what is said about those written in other ways. */
#include "syntax/reader.h"

#include "setwright.tab.h"

#include <ctype.h>
#include <string.h>

static int number(struct parse *p, const char *digits, int length)
{
    p->value = token_node(p, NODE_NUMBER, length);
    if (!dec_parse(digits, (size_t)length, &p->value->number)) {
        const char *point = memchr(digits, '.', (size_t)length);
        bool fine = point && digits + length - point - 1 > 10;
        diag_help(p->findings,
                  found(p, KIND_NUMBER, token_span(p, length), "the number %s %s", token_text(p, digits, length),
                           fine ? "has more than ten digits behind the point" : "is too large"),
                  fine ? "leave some of them out" : "no number in training is as large as 900 million");
        p->value->number = dec_int(1);
    }
    return TOK_NUMBER;
}

static int decimal_comma(struct parse *p, const char *text, int length)
{
    char *mended = arena_copy(p->arena, text, (size_t)length);
    char *comma = strchr(mended, ',');
    const char *after = text + (comma - mended) + 1;
    *comma = '.';
    diag_help(p->findings,
              found(p, KIND_NUMBER, token_span(p, length), "%s has a decimal comma", token_text(p, text, length)),
              "write %s with a point; for two numbers put a blank behind the comma: %.*s, %s", mended,
              (int)(comma - mended), mended, token_text(p, after, (int)(text + length - after)));
    return number(p, mended, length);
}

int scan_number(struct parse *p, const char *text, int *take)
{
    if (*text == '.') {
        const char *mended = arena_format(p->arena, "0%.*s", *take, text);
        diag_help(p->findings,
                  found(p, KIND_NUMBER, token_span(p, *take), "a number starts with a digit, not with a point"),
                  "write %s", mended);
        int token = number(p, mended, *take + 1);
        return token;
    }
    int commas = 0;
    for (int i = 0; i < *take; i++)
        commas += text[i] == ',';
    if (commas == 1 && p->from >= p->run_to && !p->whole_numbers && !memchr(text, '.', (size_t)*take))
        return decimal_comma(p, text, *take);
    if (commas) {
        p->run_to = p->to;
        *take = (int)((const char *)memchr(text, ',', (size_t)*take) - text);
    }
    return number(p, text, *take);
}

/* The three numbers of a date, whatever stands between them. */
static void date_numbers(const char *text, int length, int parts[3], int widths[3])
{
    int part = 0;
    memset(parts, 0, 3 * sizeof *parts);
    memset(widths, 0, 3 * sizeof *widths);
    for (int i = 0; i < length; i++) {
        if (!isdigit((unsigned char)text[i])) {
            if (++part > 2)
                return;
        } else if (++widths[part] <= 4) {
            parts[part] = 10 * parts[part] + (text[i] - '0');
        }
    }
}

static int date_is(struct parse *p, int length, int year, int month, int day)
{
    p->value = token_node(p, NODE_DATE, length);
    while (day > 28 && !date_make(year, month, day, &p->value->date))
        day--;
    if (!date_make(year, month, day, &p->value->date))
        date_make(2027, 1, 4, &p->value->date);
    return TOK_DATE;
}

static int days_in(int year, int month)
{
    struct date date;
    int days = 31;
    while (!date_make(year, month, days, &date))
        days--;
    return days;
}

static int date_iso(struct parse *p, const char *text, int length, const int parts[3])
{
    struct date date;
    int year = parts[0], month = parts[1], day = parts[2];
    if (!date_make(year, month, day, &date)) {
        struct finding *finding;
        if (year < 1 || month < 1 || month > 12) {
            finding = found(p, KIND_DATE, token_span(p, length), "there is no day %s", token_text(p, text, length));
            if (year > 0 && day >= 1 && day <= 12 && month <= days_in(year, day) && month > 0)
                diag_help(p->findings, finding, "the month stands before the day: write %04d-%02d-%02d", year, day, month);
            else
                diag_help(p->findings, finding, "write year, month and day, such as 2027-01-04");
        } else {
            finding = found(p, KIND_DATE, token_span(p, length), "there is no day %s: %s %d has %d days",
                               token_text(p, text, length), month_title(month), year, days_in(year, month));
            diag_help(p->findings, finding, "write a day from 1 to %d", days_in(year, month));
        }
    }
    return date_is(p, length, year, month, day);
}

static bool day_exists(int year, int month, int day)
{
    struct date date;
    return date_make(year, month, day, &date);
}

/* 04.01.2027, 4/1/2027, 2027/1/4, 2027-1-4: the ISO form where only one day can be meant, both where two can. */
static int date_other(struct parse *p, const char *text, int length, const int parts[3], int year_at)
{
    int year = parts[year_at];
    int first = year_at ? parts[0] : parts[1], second = year_at ? parts[1] : parts[2];
    bool day_month = year_at && day_exists(year, second, first);
    bool month_day = day_exists(year, first, second);
    if (year_at && memchr(text, '.', (size_t)length))
        month_day = false; /* with points the day always comes first */
    struct finding *finding = found(p, KIND_DATE, token_span(p, length), "the date %s is not in the form year-month-day",
                                       token_text(p, text, length));
    if (day_month && month_day && first != second)
        diag_help(p->findings, finding, "write %04d-%02d-%02d or %04d-%02d-%02d, whichever is meant", year, second, first, year,
                  first, second);
    else if (day_month)
        diag_help(p->findings, finding, "write %04d-%02d-%02d", year, second, first);
    else if (month_day)
        diag_help(p->findings, finding, "write %04d-%02d-%02d", year, first, second);
    else
        diag_help(p->findings, finding, "write it like 2027-01-04");
    return day_month ? date_is(p, length, year, second, first) : date_is(p, length, year, first, second);
}

int scan_date(struct parse *p, const char *text, int *take)
{
    int parts[3], widths[3];
    date_numbers(text, *take, parts, widths);
    bool dashes = memchr(text, '-', (size_t)*take) != NULL;
    if (dashes && widths[1] == 2 && widths[2] == 2)
        return date_iso(p, text, *take, parts);
    if (widths[0] == 4 && widths[1] <= 2 && widths[2] <= 2)
        return date_other(p, text, *take, parts, 0);
    if (widths[0] <= 2 && widths[1] <= 2 && widths[2] == 4)
        return date_other(p, text, *take, parts, 2);
    if (widths[0] <= 2 && widths[1] == 2 && widths[2] == 2 && memchr(text, '.', (size_t)*take)
        && day_exists(2000 + parts[2], parts[1], parts[0])) {
        parts[2] += 2000;
        return date_other(p, text, *take, parts, 2);
    }
    if (memchr(text, '/', (size_t)*take)) { /* 8/6/4: the / is reported where it stands */
        *take = (int)((const char *)memchr(text, '/', (size_t)*take) - text);
        return number(p, text, *take);
    }
    diag_help(p->findings, found(p, KIND_NUMBER, token_span(p, *take), "%s has more than one point", token_text(p, text, *take)),
              "write a number such as 72.5, or a date such as 2027-01-04");
    p->value = token_node(p, NODE_NUMBER, *take);
    p->value->number = dec_int(1);
    return TOK_NUMBER;
}
