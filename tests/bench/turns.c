/* Times whole processes in rotation and prints medians as ratios, so that what else the machine does falls on all.
 *
 *   turns COUNT < PLAN      a line of PLAN, its fields apart by tabs:
 *   NAME  AGAINST  TIMES  UNITS  COMMAND...
 *
 * AGAINST is the name of an earlier line or `-`: in each turn the time is divided by that line's, a unit each, and the
 * median of these ratios is printed. TIMES is how often a turn runs the command (short ones often); UNITS is what a run
 * comes to (rows, bytes; 1). Standard output is dropped. Ends with 1 when a command ends with anything but 0 or 1. */
#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { LINES_MOST = 32, WORDS_MOST = 32, TURNS_MOST = 101 };

struct line {
    char name[64], *words[WORDS_MOST];
    int against, times;
    double units, ns[TURNS_MOST]; /* of one unit, by turn */
    long peak_kib;
};

static posix_spawn_file_actions_t quiet;
extern char **environ;

static double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec * 1e9 + (double)time.tv_nsec;
}

static void run(struct line *line)
{
    pid_t child;
    int status;
    struct rusage usage;
    if (posix_spawn(&child, line->words[0], &quiet, NULL, line->words, environ) != 0 ||
        wait4(child, &status, 0, &usage) != child || !WIFEXITED(status) || WEXITSTATUS(status) > 1) {
        fprintf(stderr, "%s: %s failed\n", line->name, line->words[0]);
        exit(1);
    }
    if (usage.ru_maxrss > line->peak_kib)
        line->peak_kib = usage.ru_maxrss;
}

static int read_plan(struct line *lines)
{
    static char text[LINES_MOST][1024];
    int count = 0;
    while (count < LINES_MOST && fgets(text[count], sizeof text[count], stdin)) {
        struct line *line = &lines[count];
        char *name = strtok(text[count], "\t\n"), *against = strtok(NULL, "\t"), *times = strtok(NULL, "\t"),
             *units = strtok(NULL, "\t");
        int words = 0;
        for (char *word = strtok(NULL, " \n"); word && words < WORDS_MOST - 1; word = strtok(NULL, " \n"))
            line->words[words++] = word;
        if (!words) {
            fprintf(stderr, "line %d of the plan is not whole\n", count + 1);
            exit(2);
        }
        snprintf(line->name, sizeof line->name, "%s", name);
        line->against = -1;
        for (int i = 0; i < count; i++)
            if (!strcmp(lines[i].name, against))
                line->against = i;
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

static void print(const struct line *lines, const struct line *line, int turns)
{
    double times[TURNS_MOST], ratios[TURNS_MOST];
    memcpy(times, line->ns, sizeof times);
    for (int i = 0; i < turns; i++)
        ratios[i] = line->against < 0 ? 1 : line->ns[i] / lines[line->against].ns[i];
    double time = median(times, turns), ratio = median(ratios, turns);
    printf("%-34s %12.3f ms %11.1f ns %9.2f   %4.0f%% %5.0f%% %9.1f\n", line->name, time * line->units / 1e6, time,
           ratio, 100 * (1 - times[0] / time), 100 * (times[turns - 1] / time - 1), (double)line->peak_kib / 1024);
}

int main(int argc, char **argv)
{
    static struct line lines[LINES_MOST];
    int turns = argc == 2 ? atoi(argv[1]) : 0, count = read_plan(lines);
    if (turns < 1 || turns > TURNS_MOST || !count)
        return 2;
    posix_spawn_file_actions_init(&quiet);
    posix_spawn_file_actions_addopen(&quiet, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&quiet, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    for (int turn = -1; turn < turns; turn++) /* the first warms the caches and is not kept */
        for (int i = 0; i < count; i++) {
            double start = now();
            for (int j = 0; j < lines[i].times; j++)
                run(&lines[i]);
            if (turn >= 0)
                lines[i].ns[turn] = (now() - start) / lines[i].times / lines[i].units;
        }
    printf("%-34s %15s %14s %9s   %5s %6s %9s\n", "medians", "a run", "a unit", "ratio", "least", "most", "peak MiB");
    for (int i = 0; i < count; i++)
        print(lines, &lines[i], turns);
    return 0;
}
