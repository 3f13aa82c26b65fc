/* SPDX-License-Identifier: MIT */
/*
 * sink.h - where a writer writes to.
 *
 * The library opens nothing and prints nothing: it hands its bytes, a block at a time, to
 * a function of the caller's.  After the first failure nothing more is handed over.
 */
#ifndef RB_REPORT_SINK_H
#define RB_REPORT_SINK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define RB_SINK_BLOCK 65536

struct rb_sink {
	bool (*write)(void *self, const char *bytes,
		      size_t length); /* false: it failed */
	void *self;
	bool failed;
	size_t used;
	char block[RB_SINK_BLOCK];
};

void rb_sink_init(struct rb_sink *sink, bool (*write)(void *, const char *, size_t),
		  void *self);
void rb_sink_bytes(struct rb_sink *sink, const char *bytes, size_t length);
void rb_sink_text(struct rb_sink *sink, const char *text);

/* Hand over what is left; true if everything was taken. */
bool rb_sink_flush(struct rb_sink *sink);

/* Room for at most `length` bytes (far less than a block), to be written in place; say
 * with rb_sink_took() where they end. */
static inline char *rb_sink_room(struct rb_sink *sink, size_t length)
{
	if (RB_SINK_BLOCK - sink->used <= length)
		rb_sink_flush(sink);
	return sink->block + sink->used;
}

static inline void rb_sink_took(struct rb_sink *sink, const char *end)
{
	sink->used = (size_t)(end - sink->block);
}

void rb_sink_number(struct rb_sink *sink, int64_t number);
void rb_sink_pad(struct rb_sink *sink, char c, size_t count);

static inline void rb_sink_char(struct rb_sink *sink, char c)
{
	sink->block[sink->used++] = c;
	if (sink->used == RB_SINK_BLOCK)
		rb_sink_flush(sink);
}

#endif
