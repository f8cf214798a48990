/* Memory that ends. Each allocation of a run is made to fail in turn, ours and those of the libraries below; then the bound on a
 * run's memory is set to many sizes. Either the run is as ever or it ends with 4 and a sentence; nothing is left behind. */
#include "scarce.h"

#include "command_line.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <time.h>

static const char club[] =
    "gym g { bar 20 kg; plates 25 x 4, 20 x 2, 10 x 2, 5 x 2, 2.5 x 2, 1.25 x 2 kg }\n"
    "lift squat { title \"Back squat\"; kind competition; loads bar; works quads }\n"
    "lift bench { kind competition; loads bar }\nlift deadlift { kind competition; loads bar }\n"
    "lift pull-up { loads bodyweight }\n"
    "athlete ines { title \"In\303\252s\"; gym g; bodyweight 62 kg on 2026-12-12; max squat 120 kg on 2026-12-28\n"
    "  max bench 70 kg on 2026-12-28; max deadlift 140 kg on 2026-12-28; max pull-up bodyweight plus 15 kg on 2026-12-28 }\n"
    "roster \"people.csv\"\n"
    "block winter { for ines, jose\314\201; starts 2027-01-04; weeks 2; deload week 2\n"
    "  day A on mon { note \"Doors open at six\"; squat { top 1 x 1 at rpe 8; 3 x 5 at 75% }; pull-up 3 x 5 at rpe 7 } }\n"
    "block sharpen { goal peak; weeks 2; day A on mon { squat 3 x 2 at 80% } }\n"
    "season spring { for ines; meet \"Lakeside Open\" on 2027-04-17; run sharpen }\n";
static const char people[] = "athlete,title,lift,max,date\njose\314\201,\"Jos\303\251, the \"\"rock\"\"\",squat,90,2026-12-28\n";
static char filled[1 << 16];
/* So many alike that most are written from what was kept, and that errors are looked for ahead. */
enum { MANY = 140 };
static char many[1 << 14];
static const char wrong[] =
    "lift squat\nlift squat\nlift r\303\244w { works x }\nblock b { for all; starts 2027-01-04; weeks 1; day A { sqat 3 x 5 at 8,5% } }\n";

/* ---- one run in a child ---- */

enum { TEXT_MOST = 1 << 17, LEAKED = 200 };

struct ran {
    int status;
    char out[TEXT_MOST], err[TEXT_MOST];
};

static void to_file(const char *path, int fd)
{
    int opened = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    dup2(opened, fd);
    close(opened);
}

static void text_of(const char *path, char *to)
{
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    to[fread(to, 1, TEXT_MOST - 1, file)] = 0;
    fclose(file);
}

/* Runs a line of the command line with its `fails`th allocation failing (0: none); returns how many there were. */
static long run_with(const char *line, long fails, struct ran *ran)
{
    char words[512], *argv[32] = { words };
    int argc = 0, told[2], status = 0;
    long count = 0;
    snprintf(words, sizeof words, "setwright %s", line);
    for (char *word = strtok(words, " "); word && argc < 31; word = strtok(NULL, " "))
        argv[argc++] = word;
    argv[argc] = NULL;
    assert_int_equal(pipe(told), 0);
    pid_t child = fork();
    assert_true(child >= 0);
    if (!child) {
        static char room[BUFSIZ];
        signal(SIGSEGV, SIG_DFL);
        signal(SIGABRT, SIG_DFL);
        to_file("../out", STDOUT_FILENO);
        to_file("../err", STDERR_FILENO);
        setvbuf(stdout, room, _IOFBF, sizeof room);
        tzset(); /* keeps what it reads */
        scarce.fails = fails;
        scarce.armed = true;
        status = command_line(argc, argv);
        scarce.armed = false;
        fflush(stdout);
        if (write(told[1], &scarce.count, sizeof scarce.count) != sizeof scarce.count)
            status = -1;
        _exit(scarce.live ? LEAKED : status);
    }
    close(told[1]);
    assert_int_equal(waitpid(child, &status, 0), child);
    ssize_t got = read(told[0], &count, sizeof count);
    close(told[0]);
    ran->status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    if (got != sizeof count)
        fail_msg("%s, allocation %ld: ended by signal %d", line, fails, ran->status - 128);
    text_of("../out", ran->out);
    text_of("../err", ran->err);
    return count;
}

/* ---- what may be there afterwards ---- */

static const struct {
    const char *path, *text;
} files[] = { { "c.block", club }, { "people.csv", people }, { "wrong.block", wrong }, { "old.csv", "as it was\n" },
                { "s.csv", filled }, { "many.block", many } };
enum { FILES = sizeof files / sizeof *files };

/* The plan as a table, its first row filled in. */
static void sheet_fill(void)
{
    static struct ran plan;
    run_with("build -f csv c.block", 0, &plan);
    const char *head = strstr(plan.out, "done_load,"), *row = strchr(plan.out, '\n') + 1, *reps = row;
    for (const char *at = plan.out; at < strstr(plan.out, "done_reps"); at++)
        if (*at == ',')
            reps = strchr(reps, ',') + 1;
    assert_non_null(head);
    snprintf(filled, sizeof filled, "%.*s1%s", (int)(reps - plan.out), plan.out, reps);
    put("s.csv", filled);
}

static void many_fill(void)
{
    char *to = many;
    to += sprintf(to, "lift squat { kind competition }\n");
    for (int i = 0; i < MANY; i++)
        to += sprintf(to, "athlete a%d { max squat %d kg on 2026-12-28 }\n", i, 100 + i % 3);
    sprintf(to, "block winter { for all; starts 2027-01-04; weeks 1; day A on mon { squat 3 x 5 at rpe 7 } }\n");
}

static void folder_fill(void)
{
    many_fill();
    for (int i = 0; i < FILES; i++)
        put(files[i].path, files[i].text);
    sheet_fill();
}

/* The names of the folder that are not the test's. */
static int made_count(void)
{
    int count = 0;
    DIR *opened = opendir(".");
    for (const struct dirent *entry; (entry = readdir(opened));) {
        bool known = !strcmp(entry->d_name, ".") || !strcmp(entry->d_name, "..");
        for (int i = 0; i < FILES && !known; i++)
            known = !strcmp(files[i].path, entry->d_name);
        count += !known;
    }
    closedir(opened);
    return count;
}

static bool is_one_line(const char *text)
{
    const char *end = strchr(text, '\n');
    return end && !end[1];
}

/* ---- each allocation in turn ---- */

static const char *const lines[] = {
    "check c.block",
    "check .",
    "check --findings short wrong.block",
    "check wrong.block",
    "check --findings json wrong.block",
    "check --findings sarif wrong.block",
    "check --findings github wrong.block",
    "check --strict --write-accept new.txt c.block",
    "build c.block",
    "build -f csv c.block",
    "build -f yaml c.block",
    "build -s group c.block",
    "build -s coach c.block",
    "build -s meet c.block",
    "build -f csv many.block",
    "build -f csv -o old.csv c.block",
    "build -f yaml -o new.yaml c.block",
    "build -o sheets/ --per week c.block",
    "calendar c.block",
    "why -a ines -w 1 -l squat c.block",
    "diary -o new.block c.block",
    "collect -o new.block c.block s.csv",
    "explain load-jump",
    "templates",
    "new club",
};
enum { LINES = sizeof lines / sizeof *lines };

static void nothing_else_is_there(const char *line, long fails)
{
    if (made_count())
        fail_msg("%s, allocation %ld: something is left in the folder", line, fails);
    for (int i = 0; i < FILES; i++)
        if (strcmp(got(files[i].path), files[i].text) != 0)
            fail_msg("%s, allocation %ld: %s is not what it was", line, fails, files[i].path);
}

static void folder_empty(void)
{
    int ignored = system("rm -rf new.* sheets club");
    (void)ignored;
    put("old.csv", "as it was\n");
}

static void one_line_fails(const char *line)
{
    static struct ran usual, ran;
    long count = run_with(line, 0, &usual), step = count / 700 + 1;
    if (count < 1 || usual.status > 1)
        fail_msg("%s: status %d, %s", line, usual.status, usual.err);
    for (long fails = 1; fails <= count; fails += fails < 300 ? 1 : step) {
        folder_empty();
        run_with(line, fails, &ran);
        if (ran.status == LEAKED)
            fail_msg("%s, allocation %ld of %ld: memory is not given back", line, fails, count);
        if (ran.status == usual.status) { /* it did without */
            assert_string_equal(ran.out, usual.out);
            assert_string_equal(ran.err, usual.err);
            continue;
        }
        if (ran.status != 4 || strncmp(ran.err, "setwright: out of memory", 24) || !is_one_line(ran.err) ||
            strncmp(ran.out, usual.out, strlen(ran.out)) != 0)
            fail_msg("%s, allocation %ld of %ld: status %d, \"%s\"", line, fails, count, ran.status, ran.err);
        nothing_else_is_there(line, fails);
    }
    folder_empty();
}

static void each_allocation_may_fail(void **state)
{
    (void)state;
    assert_true(mkdir("work", 0777) == 0 && chdir("work") == 0);
    folder_fill();
    for (int i = 0; i < LINES; i++)
        one_line_fails(lines[i]);
}

/* ---- the bound ---- */

static const char *read_text(void *context, const char *path, size_t *length, const char **why)
{
    (void)context;
    *why = "no such file";
    for (int i = 0; i < FILES; i++)
        if (!strcmp(files[i].path, path)) {
            *length = strlen(files[i].text);
            return files[i].text;
        }
    return NULL;
}

struct sum {
    size_t length;
};

static bool add(void *context, const char *bytes, size_t length)
{
    (void)bytes;
    ((struct sum *)context)->length += length;
    return true;
}

static const struct {
    const char *format, *sheet;
} outputs[] = { { "text", NULL }, { "csv", NULL }, { "yaml", NULL }, { "text", "group" }, { "text", "coach" }, { "text", "meet" } };
enum { OUTPUTS = sizeof outputs / sizeof *outputs };

static enum setwright_status built(struct setwright *sw, int output, struct sum *sum)
{
    struct setwright_choice choice = { .sheet = outputs[output].sheet };
    return setwright_build(sw, outputs[output].format, &choice, (struct setwright_sink){ add, sum });
}

/* All that a caller may ask of a run with so much memory. */
static enum setwright_status run_within(size_t most, const char *path, int output, struct sum *sum)
{
    struct setwright *sw = setwright_new((struct setwright_reader){ read_text, NULL, false });
    struct setwright_choice all = { 0 };
    struct setwright_sink sink = { add, sum };
    int sessions;
    const char *sheet = "s.csv";
    assert_non_null(sw);
    setwright_memory(sw, most);
    enum setwright_status status = setwright_load(sw, &path, 1);
    if (!status && output == OUTPUTS + 3) {
        status = setwright_build_checked(sw, "csv", &all, sink);
        setwright_free(sw);
        return status;
    }
    status = status ? status : setwright_check(sw);
    status = status ? status : output < OUTPUTS ? built(sw, output, sum)
             : output == OUTPUTS ? setwright_calendar(sw, &all, sink)
             : output == OUTPUTS + 1 ? setwright_diary(sw, &all, sink)
                                     : setwright_collect(sw, &sheet, 1, sink, &sessions);
    if (status == SETWRIGHT_LIMIT) {
        assert_string_equal(setwright_problem(sw), "these files ask for more memory than setwright takes");
        assert_int_equal(built(sw, 0, sum), SETWRIGHT_LIMIT);
    }
    setwright_free(sw);
    return status;
}

/* The least that is enough, by halving; every size that is tried on the way is a test. */
static void memory_is_bounded(void **state)
{
    (void)state;
    for (int output = 0; output < OUTPUTS + 4; output++) {
        const char *path = output < OUTPUTS + 3 ? "c.block" : "many.block";
        struct sum usual = { 0 };
        scarce.armed = true;
        assert_int_equal(run_within(SIZE_MAX / 4, path, output, &usual), SETWRIGHT_FINE);
        size_t low = 0, high = (size_t)1 << 30;
        while (high - low > 1) {
            struct sum sum = { 0 };
            size_t middle = low + (high - low) / 2;
            enum setwright_status status = run_within(middle, path, output, &sum);
            assert_true(status == SETWRIGHT_FINE ? sum.length == usual.length : status == SETWRIGHT_LIMIT);
            *(status ? &low : &high) = middle;
        }
        assert_true(high < 4 << 20);
        for (size_t most = 0; most < high; most += high / 150 + 1) {
            struct sum sum = { 0 };
            assert_int_equal(run_within(most, path, output, &sum), SETWRIGHT_LIMIT);
        }
        scarce.armed = false;
        assert_int_equal(scarce.live, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_allocation_may_fail),
        cmocka_unit_test(memory_is_bounded),
    };
    return cmocka_run_group_tests(tests, folder_setup, NULL);
}
