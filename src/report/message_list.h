/* SPDX-License-Identifier: MIT */
/*
 * message_list.h - every message that there is, as a document.
 *
 * docs/messages.md is what this writes, byte for byte: a test compares the two, so the
 * document cannot fall behind the table of words.
 */
#ifndef RB_REPORT_MESSAGE_LIST_H
#define RB_REPORT_MESSAGE_LIST_H

#include "report/sink.h"

/* Write the messages of all codes in Markdown. */
void rb_message_list_write(struct rb_sink *sink);

#endif
