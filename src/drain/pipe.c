/* SPDX-License-Identifier: MIT */
/* pipe.c - the pipe table, and reading a pipe's name. */
#include "drain/pipe.h"

#include <string.h>

#include "measure/reading.h"

/* clang-format off */
#define IN(thousandths) { (thousandths) * INT64_C(25400) }
#define SIZE(nominal, outside, wall) { IN(nominal), IN(outside), IN(wall) }

static const struct rb_pipe_size schedule_40[] = {
	SIZE( 1500,  1900, 145), SIZE( 2000,  2375, 154), SIZE( 3000,  3500, 216),
	SIZE( 4000,  4500, 237), SIZE( 5000,  5563, 258), SIZE( 6000,  6625, 280),
	SIZE( 8000,  8625, 322), SIZE(10000, 10750, 365), SIZE(12000, 12750, 406),
};
static const struct rb_pipe_size sdr_35[] = {
	SIZE( 4000,  4215, 120), SIZE( 6000,  6275, 180), SIZE( 8000,  8400, 240),
	SIZE(10000, 10500, 300), SIZE(12000, 12500, 360),
};
static const struct rb_pipe_size service[] = {
	SIZE( 2000,  2300, 170), SIZE( 3000,  3300, 170), SIZE( 4000,  4300, 180),
	SIZE( 5000,  5300, 180), SIZE( 6000,  6300, 180), SIZE( 8000,  8380, 220),
	SIZE(10000, 10500, 280), SIZE(12000, 12500, 280),
};
static const struct rb_pipe_size extra_heavy[] = {
	SIZE( 2000,  2380, 190), SIZE( 3000,  3500, 250), SIZE( 4000,  4500, 250),
	SIZE( 5000,  5500, 250), SIZE( 6000,  6500, 250), SIZE( 8000,  8620, 310),
	SIZE(10000, 10750, 370), SIZE(12000, 12750, 370),
};
static const struct rb_pipe_size no_hub[] = {
	SIZE( 1500,  1900, 160), SIZE( 2000,  2350, 160), SIZE( 3000,  3350, 160),
	SIZE( 4000,  4380, 190), SIZE( 5000,  5300, 190), SIZE( 6000,  6300, 190),
	SIZE( 8000,  8380, 230), SIZE(10000, 10560, 280), SIZE(12000, 12500, 280),
};

#define COUNT(table) (sizeof(table) / sizeof *(table))
#define SIZES(table) (table), COUNT(table)

static const struct rb_pipe_kind kinds[] = {
	{ "sch 40",
	  "sch40|schedule40|s40|pvcsch40|sch40pvc|abssch40|sch40abs|sch40dwv|pvcsch40dwv|"
	  "pvcschedule40|schedule40pvc|absschedule40|schedule40abs|sch40pvcdwv",
	  "ASTM D1785 and D2665, least wall",
	  "1-1/2 to 8 in read as a sheet of limits in mm; 5, 10, 12 in and the inch forms"
	  " from memory, check before use",
	  SIZES(schedule_40) },
	{ "sdr 35",
	  "sdr35|pvcsdr35|sdr35pvc|d3034|astmd3034|d3034sdr35",
	  "ASTM D3034",
	  "outside diameters and the walls of 4 in read; the walls between from memory,"
	  " check before use",
	  SIZES(sdr_35) },
	{ "cast iron service",
	  "castironservice|servicecastiron|serviceweight|castironserviceweight|castiron|ci|"
	  "cisv|castironsv|a74|a74service|hubandspigot",
	  "ASTM A74, service weight, barrel",
	  "outside and inside diameters read in a manufacturer's manual; never rest the rod on"
	  " a hub",
	  SIZES(service) },
	{ "cast iron extra heavy",
	  "castironextraheavy|extraheavycastiron|extraheavy|xh|castironxh|cixh|a74extraheavy",
	  "ASTM A74, extra heavy, barrel",
	  "from memory, check before use",
	  SIZES(extra_heavy) },
	{ "no-hub",
	  "nohub|castironnohub|nohubcastiron|hubless|hublesscastiron|cispi301|a888",
	  "CISPI 301 and ASTM A888",
	  "from memory, check before use",
	  SIZES(no_hub) },
};

/* Metric names of inch sizes. */
static const struct { int64_t millimetres; rb_length size; } metric[] = {
	{ 32, IN(1250) }, { 40, IN(1500) }, { 50, IN(2000) }, { 65, IN(2500) },
	{ 75, IN(3000) }, { 80, IN(3000) }, { 100, IN(4000) }, { 110, IN(4000) },
	{ 125, IN(5000) }, { 150, IN(6000) }, { 160, IN(6000) }, { 200, IN(8000) },
	{ 250, IN(10000) }, { 300, IN(12000) },
};

static const rb_length made[] = {
	IN(1250), IN(1500), IN(2000), IN(2500), IN(3000), IN(4000), IN(5000), IN(6000),
	IN(8000), IN(10000), IN(12000), IN(15000), IN(18000), IN(21000), IN(24000),
	IN(30000), IN(36000),
};
/* clang-format on */

const struct rb_pipe_kind *rb_pipe_kinds(size_t *count)
{
	*count = COUNT(kinds);
	return kinds;
}

rb_length rb_pipe_next_size(rb_length size)
{
	for (size_t i = 0; i < COUNT(made); i++)
		if (rb_length_compare(made[i], size) > 0)
			return made[i];
	return rb_length_none();
}

rb_length rb_pipe_size_parse(const char *text, size_t length)
{
	const struct rb_reading_rules rules = {
		.unit = RB_INCHES,
		.kind = RB_OF_TAPE,
		.limit = rb_length_none(),
	};
	struct rb_reading reading = rb_reading_parse(text, length, &rules);

	if (reading.refusal != RB_READ || reading.value.nm <= 0)
		return rb_length_none();
	return reading.value;
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_plain(char c)
{
	return is_letter(c) || (c >= '0' && c <= '9');
}

/* Is the word one that belongs to a size: in, inch, mm ...? */
static bool is_unit(const char *word, size_t length)
{
	static const char *const units[] = { "in", "inch", "inches", "mm", "cm" };

	for (size_t i = 0; i < COUNT(units); i++)
		if (strlen(units[i]) == length && !memcmp(units[i], word, length))
			return true;
	return false;
}

/* Where the kind's words begin: at the first word that is no part of a size. */
static size_t end_of_size(const char *text, size_t length)
{
	size_t at = 0;

	while (at < length) {
		size_t word = at;

		while (word < length && !is_letter(text[word]))
			word++;
		for (at = word; at < length && is_letter(text[at]);)
			at++;
		if (!is_unit(text + word, at - word))
			return word;
	}
	return length;
}

#define WORDS 64

/* The letters and digits of a text, in lower case. */
static void squeeze(char out[static WORDS], const char *text, size_t length)
{
	size_t used = 0;

	for (size_t i = 0; i < length && used + 1 < WORDS; i++)
		if (is_plain(text[i]))
			out[used++] = text[i] >= 'A' && text[i] <= 'Z'
					      ? (char)(text[i] - 'A' + 'a')
					      : text[i];
	out[used] = '\0';
}

static bool is_among(const char *alias, const char *word)
{
	size_t length = strlen(word);

	for (const char *at = alias; at; at = strchr(at, '|')) {
		at += *at == '|';
		if (!strncmp(at, word, length) && (at[length] == '|' || !at[length]))
			return true;
	}
	return false;
}

static const struct rb_pipe_kind *find_kind(const char *text, size_t length)
{
	char word[WORDS];

	squeeze(word, text, length);
	for (size_t i = 0; i < COUNT(kinds); i++)
		if (is_among(kinds[i].alias, word))
			return &kinds[i];
	return NULL;
}

rb_length rb_pipe_size_by_name(rb_length size)
{
	for (size_t i = 0; i < COUNT(metric); i++)
		if (metric[i].millimetres * RB_MILLIMETRE == size.nm)
			return metric[i].size;
	return size;
}

static enum rb_pipe_refusal look_up(struct rb_pipe *pipe)
{
	rb_length size = rb_pipe_size_by_name(pipe->size);

	for (size_t i = 0; i < pipe->kind->sizes; i++) {
		if (pipe->kind->size[i].size.nm != size.nm)
			continue;
		pipe->outside = pipe->kind->size[i].outside;
		pipe->wall = pipe->kind->size[i].wall;
		return RB_PIPE_READ;
	}
	return RB_PIPE_NOT_IN_TABLE;
}

enum rb_pipe_refusal rb_pipe_parse(const char *text, size_t length, struct rb_pipe *out)
{
	const struct rb_length none = rb_length_none();
	size_t end = end_of_size(text, length);
	char word[WORDS];

	*out = (struct rb_pipe){ none, none, none, NULL, false };
	squeeze(word, text + end, length - end);
	out->size = rb_pipe_size_parse(text, end);
	if (!rb_length_given(out->size))
		return RB_PIPE_NO_SIZE;
	if (!*word)
		return RB_PIPE_READ;
	out->kind = find_kind(text + end, length - end);
	return out->kind ? look_up(out) : RB_PIPE_NO_KIND;
}
