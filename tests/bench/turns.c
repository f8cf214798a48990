/* Times whole processes in rotation and prints medians as ratios, so that what else the machine does falls on all.
 *
 *   turns COUNT < PLAN      a line of PLAN, its fields apart by tabs:
 *   NAME  AGAINST  TIMES  UNITS  COMMAND...
 *
 * AGAINST is the name of an earlier line, two such apart by `;`, or `-`: in each turn the time is divided by that
 * line's, a unit each, and the median of these ratios is printed. TIMES is how often a turn runs the command (short ones
 * often); UNITS is what a run comes to (rows, bytes; 1). Standard output is dropped, or goes to a new file where the
 * command ends in `> FILE`. Ends with 1 when a command ends with anything but 0 or 1. */
#include <fcntl.h>
#include <spawn.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { LINES_MOST = 32, WORDS_MOST = 32, TURNS_MOST = 101, AGAINST_MOST = 2 };

struct line {
    char name[64], *words[WORDS_MOST];
    const char *output;
    int against[AGAINST_MOST], times; /* -1: against nothing */
    double units, ns[TURNS_MOST];     /* of one unit, by turn */
    long peak_kib;
};

extern char **environ;

static double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec * 1e9 + (double)time.tv_nsec;
}

static void start(const struct line *line, pid_t *child)
{
    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, line->output, O_WRONLY | O_CREAT, 0600);
    posix_spawn_file_actions_addopen(&files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    if (posix_spawn(child, line->words[0], &files, NULL, line->words, environ) != 0)
        *child = -1;
    posix_spawn_file_actions_destroy(&files);
}

/* The nanoseconds of one run. An output file is taken away first, as freeing its pages is none of the command's work. */
static double run(struct line *line)
{
    pid_t child;
    int status;
    struct rusage usage;
    bool to_file = strcmp(line->output, "/dev/null") != 0;
    if (to_file)
        unlink(line->output);
    double begun = now();
    start(line, &child);
    if (child < 0 || wait4(child, &status, 0, &usage) != child || !WIFEXITED(status) || WEXITSTATUS(status) > 1) {
        fprintf(stderr, "%s: %s failed\n", line->name, line->words[0]);
        exit(1);
    }
    double took = now() - begun;
    if (to_file)
        unlink(line->output);
    if (usage.ru_maxrss > line->peak_kib)
        line->peak_kib = usage.ru_maxrss;
    return took;
}

static int line_named(const struct line *lines, int count, const char *name, size_t length)
{
    while (count-- > 0)
        if (strlen(lines[count].name) == length && !memcmp(lines[count].name, name, length))
            return count;
    return -1;
}

static void read_against(struct line *line, const struct line *lines, int count, const char *names)
{
    for (int i = 0; i < AGAINST_MOST; i++) {
        size_t length = strcspn(names, ";");
        line->against[i] = line_named(lines, count, names, length);
        names += length + (names[length] == ';');
    }
}

static void read_command(struct line *line)
{
    int words = 0;
    for (char *word = strtok(NULL, " \n"); word && words < WORDS_MOST - 1; word = strtok(NULL, " \n"))
        line->words[words++] = word;
    line->output = "/dev/null";
    if (words > 2 && !strcmp(line->words[words - 2], ">")) {
        line->output = line->words[words - 1];
        line->words[words - 2] = NULL;
    }
}

static int read_plan(struct line *lines)
{
    static char text[LINES_MOST][1024];
    int count = 0;
    while (count < LINES_MOST && fgets(text[count], sizeof text[count], stdin)) {
        struct line *line = &lines[count];
        char *name = strtok(text[count], "\t\n"), *against = strtok(NULL, "\t"), *times = strtok(NULL, "\t"),
             *units = strtok(NULL, "\t");
        if (units)
            read_command(line);
        if (!line->words[0]) {
            fprintf(stderr, "line %d of the plan is not whole\n", count + 1);
            exit(2);
        }
        snprintf(line->name, sizeof line->name, "%s", name);
        read_against(line, lines, count, against);
        line->times = atoi(times);
        line->units = (double)atol(units);
        count++;
    }
    return count;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *values, int count)
{
    qsort(values, (size_t)count, sizeof *values, by_size);
    return count % 2 ? values[count / 2] : (values[count / 2 - 1] + values[count / 2]) / 2;
}

static void print_ratio(const struct line *line, const struct line *against, int turns)
{
    double ratios[TURNS_MOST];
    for (int i = 0; i < turns; i++)
        ratios[i] = line->ns[i] / against->ns[i];
    printf(" %9.2f", median(ratios, turns));
}

static void print(const struct line *lines, const struct line *line, int turns)
{
    double times[TURNS_MOST];
    memcpy(times, line->ns, sizeof times);
    double time = median(times, turns);
    printf("%-36s %12.3f ms %11.1f ns", line->name, time * line->units / 1e6, time);
    for (int i = 0; i < AGAINST_MOST; i++)
        if (line->against[i] >= 0)
            print_ratio(line, &lines[line->against[i]], turns);
        else
            printf(" %9s", i ? "" : "1.00");
    printf("   %4.0f%% %5.0f%% %9.1f\n", 100 * (1 - times[0] / time), 100 * (times[turns - 1] / time - 1),
           (double)line->peak_kib / 1024);
}

int main(int argc, char **argv)
{
    static struct line lines[LINES_MOST];
    int turns = argc == 2 ? atoi(argv[1]) : 0, count = read_plan(lines);
    if (turns < 1 || turns > TURNS_MOST || !count)
        return 2;
    for (int turn = -1; turn < turns; turn++) /* the first warms the caches and is not kept */
        for (int i = 0; i < count; i++) {
            double took = 0;
            for (int j = 0; j < lines[i].times; j++)
                took += run(&lines[i]);
            if (turn >= 0)
                lines[i].ns[turn] = took / lines[i].times / lines[i].units;
        }
    printf("%-36s %15s %14s %9s %9s   %5s %6s %9s\n", "medians", "a run", "a unit", "ratio", "and to", "least", "most",
           "peak MiB");
    for (int i = 0; i < count; i++)
        print(lines, &lines[i], turns);
    return 0;
}
