/* SPDX-License-Identifier: MIT */
/* sink.c - bytes gathered into blocks, and handed over a block at a time. */
#include "report/sink.h"

#include <string.h>

void rb_sink_init(struct rb_sink *sink, bool (*write)(void *, const char *, size_t),
		  void *self)
{
	sink->write = write;
	sink->self = self;
	sink->failed = false;
	sink->used = 0;
}

bool rb_sink_flush(struct rb_sink *sink)
{
	if (sink->used && !sink->failed)
		sink->failed = !sink->write(sink->self, sink->block, sink->used);
	sink->used = 0;
	return !sink->failed;
}

void rb_sink_bytes(struct rb_sink *sink, const char *bytes, size_t length)
{
	while (length) {
		size_t room = RB_SINK_BLOCK - sink->used;
		size_t part = length < room ? length : room;

		memcpy(sink->block + sink->used, bytes, part);
		sink->used += part;
		bytes += part;
		length -= part;
		if (sink->used == RB_SINK_BLOCK)
			rb_sink_flush(sink);
	}
}

void rb_sink_text(struct rb_sink *sink, const char *text)
{
	rb_sink_bytes(sink, text, strlen(text));
}

void rb_sink_number(struct rb_sink *sink, int64_t number)
{
	char digits[20];
	size_t at = sizeof digits;
	uint64_t rest = number < 0 ? 0 - (uint64_t)number : (uint64_t)number;

	do {
		digits[--at] = (char)('0' + rest % 10);
		rest /= 10;
	} while (rest);
	if (number < 0)
		rb_sink_char(sink, '-');
	rb_sink_bytes(sink, digits + at, sizeof digits - at);
}

void rb_sink_pad(struct rb_sink *sink, char c, size_t count)
{
	while (count--)
		rb_sink_char(sink, c);
}
