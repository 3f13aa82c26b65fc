/* SPDX-License-Identifier: MIT */
/* html_words.c - words for a page, their numbers kept whole. */
#include "report/html_words.h"

#include "report/blanks.h"
#include "report/escape.h"

#define NO_BREAK "\xC2\xA0" /* U+00A0 */

void rb_sink_html_words(struct rb_sink *sink, const char *text)
{
	for (;;) {
		size_t bytes = rb_before_kept_blank(text);

		rb_sink_escaped(sink, text, bytes);
		if (!text[bytes])
			return;
		rb_sink_text(sink, NO_BREAK);
		text += bytes + 1;
	}
}
