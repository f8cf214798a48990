/* Loads worked out before in the same plan. Only load.c includes it. */
#ifndef PLAN_RECALL_H
#define PLAN_RECALL_H

#include "plan/loading.h"

/* A set that asks for the same as one before: *l->run is as it was there, reasons included. False: it has to be worked out. */
bool recall_run(const struct loading *l);

/* *l->run has been worked out without a finding, which every set would have to say anew. */
void recall_keep(const struct loading *l);

#endif
