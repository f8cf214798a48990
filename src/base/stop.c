#include "base/stop.h"

static const int signals[] = { SIGINT, SIGTERM, SIGHUP };
enum { SIGNALS = sizeof signals / sizeof *signals };

/* One that is ignored (nohup) goes on being ignored: blocked, it would be kept. */
struct stop stop_hold(void)
{
    struct stop stop;
    struct sigaction action;
    sigset_t held;
    sigemptyset(&held);
    for (int i = 0; i < SIGNALS; i++)
        if (sigaction(signals[i], NULL, &action) == 0 && action.sa_handler != SIG_IGN)
            sigaddset(&held, signals[i]);
    sigprocmask(SIG_BLOCK, &held, &stop.before);
    return stop;
}

bool stop_asked(void)
{
    sigset_t waiting;
    bool asked = false;
    if (sigpending(&waiting) == 0)
        for (int i = 0; i < SIGNALS; i++)
            asked |= sigismember(&waiting, signals[i]) == 1;
    return asked;
}

void stop_release(const struct stop *stop)
{
    sigprocmask(SIG_SETMASK, &stop->before, NULL);
}
