/* Reading the command line through getopt_long, and help from the tables. */
#include "cmd/command.h"

#include "base/diag.h"
#include "base/near.h"

#include <errno.h>
#include <getopt.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

enum { OPTION_HELP = 1000, OPTION_VERSION, OPTION_ROW, OPTIONS_MOST = 32 };

static int rows_of(const struct command *command)
{
    int count = 0;
    while (command->options[count])
        count++;
    return count;
}

static void option_help(const struct option_row *row, FILE *out)
{
    char left[64];
    snprintf(left, sizeof left, "  %c%c%s --%s%s%s", row->letter ? '-' : ' ', row->letter ? row->letter : ' ', row->letter ? "," : " ",
             row->name, row->argument ? "=" : "", row->argument ? row->argument : "");
    fprintf(out, "%-26s %s\n", left, row->says);
}

static void all_help(FILE *out)
{
    fprintf(out, "setwright turns a coach's training blocks into dated loads for every athlete.\n\n"
                 "  setwright COMMAND [OPTION]… FILE…\n\nCommands:\n");
    for (int i = 0; i < command_count; i++)
        fprintf(out, "  %-10s %s\n", commands[i].name, commands[i].says);
    fprintf(out, "\nA FILE is a .block file, or a folder: then every .block file in it.\n"
                 "`setwright COMMAND --help` tells more about one. `setwright templates` shows the library.\n\n"
                 "Exit status: 0 fine, 1 the files have errors, 2 wrong usage, 3 a file cannot be read or written,\n"
                 "4 a limit of setwright.\n");
}

void command_help(const struct command *command, FILE *out)
{
    if (!command) {
        all_help(out);
        return;
    }
    fprintf(out, "setwright %s %s\n\n%s.\n\n", command->name, command->usage, command->says);
    if (command->options[0])
        fprintf(out, "Options:\n");
    for (int i = 0; command->options[i]; i++)
        option_help(command->options[i], out);
    fprintf(out, "  -h, --help                this help\n      --version             the version of setwright\n\nExamples:\n%s", command->examples);
}

static const struct command *command_find(const char *name)
{
    for (int i = 0; i < command_count; i++)
        if (!strcmp(commands[i].name, name))
            return &commands[i];
    return NULL;
}

static int command_unknown(const char *name)
{
    const char *names[OPTIONS_MOST];
    for (int i = 0; i < command_count; i++)
        names[i] = commands[i].name;
    const char *near = word_nearest(name, names, command_count);
    diag_say(stderr, near ? "no command is called %s; did you mean %s?" : "no command is called %s; `setwright --help` lists them%s", name,
             near ? near : "");
    return EXIT_USAGE;
}

/* A long option that fits none or several, with the nearest or those it could be. */
static void long_wrong(const struct command *command, const char *word)
{
    const char *names[OPTIONS_MOST], *fits[2] = { NULL, NULL };
    int count = rows_of(command), fitting = 0;
    size_t length = strcspn(word + 2, "=");
    char name[32] = "";
    for (int i = 0; i < count; i++) {
        names[i] = command->options[i]->name;
        if (!strncmp(names[i], word + 2, length) && fitting < 2)
            fits[fitting++] = names[i];
    }
    snprintf(name, sizeof name, "%.*s", (int)length, word + 2); /* without its `=value` */
    const char *near = word_nearest(name, names, count);
    if (fitting == 2)
        diag_say(stderr, "%s could be --%s or --%s; write it out", word, fits[0], fits[1]);
    else if (near)
        diag_say(stderr, "%s is no option of `setwright %s`; did you mean --%s?", word, command->name, near);
    else
        diag_say(stderr, "%s is no option of `setwright %s`; `setwright %s --help` lists them", word, command->name, command->name);
}

/* What getopt would say, in our words. */
static int option_wrong(const struct command *command, int result, char **argv)
{
    if (result == ':')
        diag_say(stderr, "%s needs a value; see `setwright %s --help`", argv[optind - 1], command->name);
    else if (optopt > 0 && optopt < OPTION_HELP)
        diag_say(stderr, "-%c is no option of `setwright %s`; `setwright %s --help` lists them", optopt, command->name, command->name);
    else
        long_wrong(command, argv[optind - 1]);
    return EXIT_USAGE;
}

static void options_table(const struct command *command, struct option *table, char *letters)
{
    int count = rows_of(command);
    *letters++ = ':';
    *letters++ = 'h';
    for (int i = 0; i < count; i++) {
        const struct option_row *row = command->options[i];
        table[i] = (struct option){ row->name, row->argument ? required_argument : no_argument, NULL, OPTION_ROW + i };
        if (row->letter)
            *letters++ = row->letter;
        if (row->letter && row->argument)
            *letters++ = ':';
    }
    table[count] = (struct option){ "help", no_argument, NULL, OPTION_HELP };
    table[count + 1] = (struct option){ "version", no_argument, NULL, OPTION_VERSION };
    table[count + 2] = (struct option){ 0 };
    *letters = 0;
}

static const struct option_row *row_met(const struct command *command, int result)
{
    if (result >= OPTION_ROW)
        return command->options[result - OPTION_ROW];
    for (int i = 0; command->options[i]; i++)
        if (command->options[i]->letter == result)
            return command->options[i];
    return NULL;
}

/* -1: go on and run; else the exit status. */
static int options_read(struct request *request, int argc, char **argv)
{
    struct option table[OPTIONS_MOST];
    char letters[2 * OPTIONS_MOST + 4];
    const struct command *command = request->command;
    options_table(command, table, letters);
    opterr = 0;
    optind = 0; /* afresh, whatever an earlier call left */
    for (int result; (result = getopt_long(argc, argv, letters, table, NULL)) != -1;) {
        if (result == OPTION_HELP || result == 'h') {
            command_help(command, stdout);
            return 0;
        }
        if (result == OPTION_VERSION) {
            printf("setwright %s\n", setwright_version());
            return 0;
        }
        const struct option_row *row = result == '?' || result == ':' ? NULL : row_met(command, result);
        if (!row)
            return option_wrong(command, result, argv);
        if (row->argument && !*optarg) {
            diag_say(stderr, "--%s needs a value; see `setwright %s --help`", row->name, command->name);
            return EXIT_USAGE;
        }
        if (!row->take(request, optarg))
            return EXIT_USAGE;
    }
    request->words = (const char *const *)(argv + optind);
    request->word_count = argc - optind;
    return -1;
}

/* A reader that went away is no fault worth a word. */
static bool reader_gone(void)
{
    struct pollfd out = { .fd = STDOUT_FILENO };
    return poll(&out, 1, 0) > 0 && (out.revents & POLLERR);
}

static int flush_output(int status)
{
    errno = 0;
    if (fflush(stdout) == 0 && !ferror(stdout))
        return status;
    if (errno != EPIPE && !reader_gone())
        diag_say(stderr, "standard output cannot be written");
    return EXIT_FILES;
}

static int command_run(struct request *request, int argc, char **argv)
{
    jmp_buf out_of_memory;
    if (setjmp(out_of_memory) || !(request->arena = arena_new(&out_of_memory))) {
        diag_say(stderr, "out of memory; nothing was written");
        return EXIT_LIMIT;
    }
    int status = options_read(request, argc - 1, argv + 1);
    return status < 0 ? request->command->run(request) : status;
}

int command_line(int argc, char **argv)
{
    if (argc < 2) {
        command_help(NULL, stderr);
        return EXIT_USAGE;
    }
    if (!strcmp(argv[1], "--help") || !strcmp(argv[1], "-h") || !strcmp(argv[1], "help")) {
        const struct command *asked = argc > 2 ? command_find(argv[2]) : NULL;
        if (argc > 2 && !asked)
            return command_unknown(argv[2]);
        command_help(asked, stdout);
        return flush_output(0);
    }
    if (!strcmp(argv[1], "--version")) {
        printf("setwright %s\n", setwright_version());
        return flush_output(0);
    }
    struct request request = { .command = command_find(argv[1]), .format = "text" };
    if (!request.command)
        return command_unknown(argv[1]);
    int status = command_run(&request, argc, argv);
    arena_free(request.arena); /* whichever way the run ended: files that were begun end here too */
    return flush_output(status);
}
