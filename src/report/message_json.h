/* SPDX-License-Identifier: MIT */
/*
 * message_json.h - findings as JSON.
 *
 * One object a finding, in the order in which they are shown, with the keys file, line,
 * column, cell, point, code, severity, text and hint; null where there is nothing.
 */
#ifndef RB_REPORT_MESSAGE_JSON_H
#define RB_REPORT_MESSAGE_JSON_H

#include "report/json.h"
#include "report/message.h"

/* Write the key "messages" with the findings of one or more files, into an open object;
 * false without memory to put them in order. */
bool rb_messages_write_json(struct rb_json *json,
			    const struct rb_findings *const *findings, size_t files);

#endif
