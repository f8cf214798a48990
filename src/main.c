#include "cmd/command.h"

#include <signal.h>

int main(int argc, char **argv)
{
    /* A reader that went away shows as a failed write, which ends the run with its own status. */
    signal(SIGPIPE, SIG_IGN);
    return command_line(argc, argv);
}
