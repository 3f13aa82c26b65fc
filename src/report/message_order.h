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

/*
 * How many findings of its kind were found and are not listed, told with the last one
 * that is; else 0.
 *
 *   written  by code, how many were written so far; counted on here
 */
size_t rb_messages_others(const struct rb_findings *findings,
			  const struct rb_finding *finding,
			  size_t written[static RB_CODES]);

#endif
