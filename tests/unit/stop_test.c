/* Signals that wait until files are cleared away. */
#include "base/stop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

/* How a child ends that gets a signal while it holds: 1, or by the signal; 2 where it was not even asked. */
static int ended(int number, bool ignored)
{
    int status;
    pid_t child = fork();
    if (!child) {
        signal(number, ignored ? SIG_IGN : SIG_DFL);
        struct stop stop = stop_hold();
        if (stop_asked())
            _exit(3);
        raise(number);
        if (!stop_asked() && !ignored)
            _exit(2);
        if (stop_asked() && ignored)
            _exit(4);
        stop_release(&stop);
        _exit(1);
    }
    waitpid(child, &status, 0);
    return WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status);
}

static void a_signal_waits(void **state)
{
    (void)state;
    assert_int_equal(ended(SIGINT, false), 128 + SIGINT);
    assert_int_equal(ended(SIGTERM, false), 128 + SIGTERM);
    assert_int_equal(ended(SIGHUP, false), 128 + SIGHUP);
}

static void what_is_ignored_stays_ignored(void **state)
{
    (void)state;
    assert_int_equal(ended(SIGHUP, true), 1);
    assert_int_equal(ended(SIGINT, true), 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = { cmocka_unit_test(a_signal_waits), cmocka_unit_test(what_is_ignored_stays_ignored) };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
