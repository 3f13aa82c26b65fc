/* SPDX-License-Identifier: MIT */
/*
 * message_text.h - findings as a person reads them on a terminal.
 *
 *     larch.csv:9:5: error: cell B9 (backsight at TP2) is a date, not a reading
 * [date-cell] TP2,05/03/26,,,,spike in maple
 *             ^^^^^^^^
 *       the spreadsheet changed what was typed: for 5 ft 3 in write 5'-3", for 5.3 ft
 * write 5.3
 *
 * The user's own line is quoted with the cell marked, shortened around it where it is
 * long; what to do comes after it, wrapped.
 */
#ifndef RB_REPORT_MESSAGE_TEXT_H
#define RB_REPORT_MESSAGE_TEXT_H

#include "report/message.h"
#include "report/text.h"

/* Write the findings from a severity up, by line; past RB_FINDINGS_OF_A_KIND of one code
 * a line with the count of the others.  False, with that said, if memory ran out: where
 * it did so earlier, or for their order. */
bool rb_messages_write_text(struct rb_sink *sink, const struct rb_findings *findings,
			    enum rb_severity least, struct rb_text_style style);

/* Write the last line: "larch.csv: 2 errors, 1 warning: not reduced".  `outcome` are its
 * last words, or NULL.  Nothing is written where there is neither a finding nor an
 * outcome. */
void rb_messages_write_verdict(struct rb_sink *sink, const struct rb_findings *findings,
			       const char *outcome, struct rb_text_style style);

#endif
