/* SPDX-License-Identifier: MIT */
/*
 * message_order.h - the order in which findings are shown.
 *
 * Stages find in their own order; a person goes down the file.  Faults of the file as a
 * whole come first, since they explain the others, and all else about it last.
 */
#ifndef RB_REPORT_MESSAGE_ORDER_H
#define RB_REPORT_MESSAGE_ORDER_H

#include "rodbook/finding.h"

/* The findings by line and cell, stable: an array of findings->count, in their arena.
 * NULL without memory, and for an empty list. */
const struct rb_finding **rb_messages_in_order(const struct rb_findings *findings);

#endif
