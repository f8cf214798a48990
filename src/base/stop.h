/* Being stopped while files are written. From stop_hold to stop_release an interrupt from the keyboard, a request to end and
 * a lost terminal wait, so that what was begun can be cleared away; then they take effect. */
#ifndef BASE_STOP_H
#define BASE_STOP_H

#include <signal.h>
#include <stdbool.h>

struct stop {
    sigset_t before; /* the signals that were blocked */
};

struct stop stop_hold(void);
bool stop_asked(void); /* whether one is waiting */
void stop_release(const struct stop *stop); /* does not return if one is */

#endif
