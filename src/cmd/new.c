/* A coach's folder to begin with: gym, athletes, one block from a template. It is made under another name and renamed, so
 * that there is a whole one or none. */
#include "cmd/new.h"

#include "base/date.h"
#include "base/diag.h"
#include "base/file.h"
#include "base/near.h"
#include "base/stop.h"

#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

enum { NAMES_MOST = 256, BLOCK_LONGEST = 7 * 52, TESTED_BEFORE = 9 };
static const char usual_template[] = "general-two-day";

struct folder {
    struct arena *arena;
    const char *path, *beside; /* what was asked for, and where it grows */
    const char *template;
    struct date starts;
};

/* ---- what was asked for ---- */

/* The template of a library file that bears its name; NULL when the file has none. */
static const char *template_in(struct arena *arena, const char *name, const char *text)
{
    const char *base = name + strlen("std/");
    const char *stem = arena_format(arena, "%.*s", (int)(strlen(base) - strlen(".block")), base);
    return strstr(text, arena_format(arena, "\ntemplate %s ", stem)) ? stem : NULL;
}

static const char *template_find(struct arena *arena, const char *asked)
{
    const char *names[NAMES_MOST], *name, *text;
    int count = 0;
    for (int i = 0; (name = setwright_library_name(i, &text)) && count < NAMES_MOST; i++) {
        const char *stem = template_in(arena, name, text);
        if (stem && !strcmp(stem, asked))
            return stem;
        if (stem)
            names[count++] = stem;
    }
    const char *near = word_nearest(asked, names, count);
    diag_say(stderr, near ? "no template is called %s; did you mean %s?" :
                            "no template is called %s; `setwright templates` lists them%s", asked, near ? near : "");
    return NULL;
}

/* The Monday after today, by the clock and time zone of the machine. */
static struct date monday_next(void)
{
    time_t now = time(NULL);
    struct tm today;
    struct date date = { 0 };
    if (localtime_r(&now, &today))
        date_make(today.tm_year + 1900, today.tm_mon + 1, today.tm_mday, &date);
    return date_on_or_after(date_plus(date, 1), MON);
}

/* False: it has said what is wrong. */
static bool starts_find(const char *asked, struct date *starts)
{
    *starts = monday_next();
    if (asked && !date_parse(asked, strlen(asked), starts)) {
        diag_say(stderr, "--starts takes a date, such as 2027-01-04, not %s", asked);
        return false;
    }
    if (!date_is_set(date_plus(*starts, -TESTED_BEFORE)) || !date_is_set(date_plus(*starts, BLOCK_LONGEST))) {
        diag_say(stderr, "there are not enough days in the calendar around %s", asked ? asked : "the date of this machine");
        return false;
    }
    if (date_weekday(*starts) == MON)
        return true;
    char before[11], after[11];
    struct date monday = date_on_or_after(*starts, MON);
    date_write(before, date_plus(monday, -7));
    date_write(after, monday);
    diag_say(stderr, "%s is a %s; a block starts on a Monday, such as %s or %s", asked, weekday_title(date_weekday(*starts)), before, after);
    return false;
}

/* ---- making it ---- */

/* The text with @template@, @starts@ and @tested@ filled in. */
static const char *text_fill(const struct folder *folder, const char *text)
{
    const struct { const char *mark, *value; } marks[] = {
        { "@template@", folder->template },
        { "@starts@", date_text(folder->arena, folder->starts) },
        { "@tested@", date_text(folder->arena, date_plus(folder->starts, -TESTED_BEFORE)) },
    };
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++)
        for (const char *at; (at = strstr(text, marks[i].mark));)
            text = arena_format(folder->arena, "%.*s%s%s", (int)(at - text), text, marks[i].value, at + strlen(marks[i].mark));
    return text;
}

static bool file_make(const struct folder *folder, const struct new_text *row, const char **why)
{
    const char *text = text_fill(folder, row->text);
    struct file_out *out = file_create(folder->arena, arena_format(folder->arena, "%s/%s", folder->beside, row->name), why);
    if (!out)
        return false;
    file_write(out, text, strlen(text));
    return file_commit(out, why);
}

static void folder_unmake(const struct folder *folder)
{
    for (int i = 0; i < new_text_count; i++)
        unlink(arena_format(folder->arena, "%s/%s", folder->beside, new_texts[i].name));
    rmdir(folder->beside);
}

static int folder_new(const struct folder *folder)
{
    const char *why;
    bool made = folder_make(folder->beside, &why);
    for (int i = 0; made && i < new_text_count; i++)
        made = file_make(folder, &new_texts[i], &why);
    if (made && folder_place(folder->beside, folder->path, &why))
        return 0;
    if (!stop_asked())
        diag_say(stderr, "%s: %s; nothing was made", folder->path, why);
    folder_unmake(folder);
    return EXIT_FILES;
}

static void folder_told(const struct folder *folder)
{
    printf("Made %s/ with", folder->path);
    for (int i = 0; i < new_text_count; i++)
        printf("%s %s", i ? "," : "", new_texts[i].name);
    printf(".\nThe first block, from the template %s, starts on Monday %s. Two things to try:\n\n"
           "  setwright check %s/\n  setwright build --week 1 %s/\n",
           folder->template, date_text(folder->arena, folder->starts), folder->path, folder->path);
}

static const char *path_trimmed(struct arena *arena, const char *path)
{
    size_t length = strlen(path);
    while (length > 1 && path[length - 1] == '/')
        length--;
    return arena_format(arena, "%.*s", (int)length, path);
}

int cmd_new(struct request *request)
{
    struct folder folder = { .arena = request->arena };
    struct stat there;
    if (request->word_count < 1 || request->word_count > 2 || !*request->words[0]) {
        diag_say(stderr, "say the name of one folder, and a template if you like: setwright new club strength");
        return EXIT_USAGE;
    }
    folder.path = path_trimmed(request->arena, request->words[0]);
    folder.beside = arena_format(request->arena, "%s.%ld", folder.path, (long)getpid());
    folder.template = template_find(request->arena, request->word_count == 2 ? request->words[1] : usual_template);
    if (!folder.template || !starts_find(request->starts, &folder.starts))
        return EXIT_USAGE;
    if (lstat(folder.path, &there) == 0) {
        diag_say(stderr, "%s is there already; `setwright new` only makes folders that are not", folder.path);
        return EXIT_USAGE;
    }
    struct stop stop = stop_hold();
    int status = folder_new(&folder);
    stop_release(&stop);
    if (!status)
        folder_told(&folder);
    return status;
}
