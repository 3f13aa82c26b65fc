/* SPDX-License-Identifier: MIT */
/* Pictures: well-formed, described, to a scale that is said, and no words over others. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>

#include "capture.h"
#include "level/random.h"
#include "markup.h"
#include "report/profile_scale.h"
#include "report/profile_svg.h"
#include "report/reduced_profile.h"
#include "report/width.h"

static struct capture capture;

static int some(struct rb_random *random, int low, int high)
{
	return (int)rb_random_between(random, low, high);
}

/* -- the canvas -- */

static void writes_elements(void **state)
{
	struct rb_svg svg = { &capture.sink, true };
	const struct rb_svg_head head = { 100, 50, 3, "a < b", "says \"so\"", 2, 4 };

	(void)state;
	capture_init(&capture);
	rb_svg_begin(&svg, &head);
	rb_svg_line(&svg, RB_STROKE_DASHED, (struct rb_pixel){ 1, 2 },
		    (struct rb_pixel){ -3, 4 });
	rb_svg_text(&svg, (struct rb_pixel){ 5, 6 }, RB_ANCHOR_END, "</text>", true);
	rb_svg_end(&svg);
	assert_true(markup_is_right(captured(&capture)));
	assert_non_null(strstr(capture.text,
			       "role=\"img\" aria-labelledby=\"picture3-title "
			       "picture3-words\""));
	assert_non_null(
		strstr(capture.text,
		       "<title id=\"picture3-title\">a &lt; b, part 2 of 4</title>"));
	assert_non_null(strstr(capture.text,
			       "<desc id=\"picture3-words\">says &quot;so&quot;</desc>"));
	assert_non_null(strstr(capture.text, "<polyline points=\"1,2 -3,4\""));
	assert_non_null(strstr(capture.text, ">&lt;/text&gt;</text>"));
}

/* -- words in a picture -- */

#define TEXTS 512

struct texts {
	struct rb_box box[TEXTS];
	size_t count;
	int width, height;
};

/* What stands between the marks, with our entities as the characters they are and
 * without what keeps the direction of writing. */
static void take_words(char *out, size_t size, const char *at)
{
	size_t used = 0;

	for (; *at && *at != '<' && used + 1 < size; at++) {
		if (!strncmp(at, RB_LEFT_TO_RIGHT, 3)) {
			at += 2;
			continue;
		}
		out[used++] = *at;
		if (*at == '&')
			at += markup_entity(at) - 1;
	}
	out[used] = '\0';
}

static void take_text(struct texts *texts, const char *at)
{
	enum rb_anchor anchor = RB_ANCHOR_START;
	const char *end = strchr(at, '>');
	char words[256];
	struct rb_pixel pixel = { atoi(strstr(at, " x=\"") + 4),
				  atoi(strstr(at, " y=\"") + 4) };

	take_words(words, sizeof words, end + 1);
	for (const char *c = at; c < end; c++)
		if (!strncmp(c, "=\"middle\"", 9))
			anchor = RB_ANCHOR_MIDDLE;
		else if (!strncmp(c, "=\"end\"", 6))
			anchor = RB_ANCHOR_END;
	texts->box[texts->count++] = rb_svg_text_box(pixel, anchor, words);
}

static void find_texts(struct texts *texts, const char *svg)
{
	texts->count = 0;
	texts->width = atoi(strstr(svg, " width=\"") + 8);
	texts->height = atoi(strstr(svg, " height=\"") + 9);
	for (svg = strstr(svg, "<text"); svg && texts->count < TEXTS;
	     svg = strstr(svg + 1, "<text"))
		take_text(texts, svg);
}

/* Words that overlap, or reach out of the picture. */
static int count_faults(const struct texts *texts)
{
	int faults = 0;

	for (size_t i = 0; i < texts->count; i++) {
		struct rb_box box = texts->box[i];

		faults += box.left < 0 || box.top < 0 || box.right > texts->width ||
			  box.bottom > texts->height;
		for (size_t j = 0; j < i; j++)
			faults += rb_box_overlaps(box, texts->box[j]);
	}
	return faults;
}

static int judge(const char *what, int number)
{
	struct texts texts;
	const char *svg = captured(&capture);
	int faults = !markup_is_right(svg);

	find_texts(&texts, svg);
	faults += count_faults(&texts);
	faults += texts.count == 0;
	if (faults)
		print_error("%s %d: %d faults\n", what, number, faults);
	return faults;
}

/* -- random pictures -- */

static const struct rb_style styles[] = {
	{ RB_FEET, 2, 16, false },   { RB_FEET_INCHES, 0, 64, false },
	{ RB_METRES, 3, 16, false }, { RB_MILLIMETRES, 0, 16, false },
	{ RB_INCHES, 2, 16, false },
};

static const char *const names[] = { "A",
				     "TP-1",
				     "<b>&\"'",
				     "\xD7\xA9\xD7\x9C\xD7\x95",
				     "MANHOLE AT THE CORNER OF LARCH AND ELM STREETS",
				     "\xE2\x80\xAE\xE4\xB8\x80\xE4\xBA\x8C" };

static rb_length some_length(struct rb_random *random, int most)
{
	return rb_length_of(rb_random_between(random, 0, (int64_t)most * RB_FOOT));
}

static void fill(struct rb_profile *profile, struct rb_random *random, int places)
{
	rb_length along = { 0 };
	struct rb_profile_spot before = { .aside = 0 };

	for (int i = 0; i < places; i++) {
		struct rb_profile_spot at = { along, some_length(random, 20), 0 },
				       up = at;
		char number[RB_LENGTH_TEXT];
		const char *text[RB_PROFILE_BAND] = { names[some(random, 0, 5)], number };

		rb_length_format(number, at.elevation, profile->style);
		rb_profile_place(profile, along, text);
		up.elevation.nm += some_length(random, 10).nm;
		if (i)
			rb_profile_line(profile, RB_LOOK_GROUND, before, at);
		rb_profile_line(profile, RB_LOOK_ROD, at, up);
		rb_profile_mark(profile, (enum rb_profile_mark)some(random, 0, 4), at);
		for (int label = some(random, 0, 3); label > 0; label--)
			rb_profile_label(profile, label == 1 ? at : up,
					 (enum rb_side)some(random, 0, 3),
					 label == 1 ? number : names[some(random, 0, 5)],
					 some(random, 0, 5) == 0);
		before = at;
		along.nm += some_length(random, some(random, 0, 3) ? 60 : 1).nm;
	}
}

static struct rb_profile *some_profile(struct rb_arena *arena, struct rb_random *random)
{
	struct rb_profile *profile = rb_profile_new(arena, styles[some(random, 0, 4)]);

	profile->title = "A picture & its title";
	profile->words =
		"DOES NOT CLOSE, said at such a length that it goes over more than "
		"one line of the picture that stands alone.";
	profile->band[0] = "point";
	profile->band[1] = "elevation";
	profile->to_scale = some(random, 0, 1);
	profile->strip = (size_t)some(random, 2, RB_PROFILE_STRIP);
	fill(profile, random, some(random, 0, 30));
	return profile;
}

static void never_overlaps(void **state)
{
	struct rb_random random = rb_random_start(3, 0);
	int wrong = 0;

	(void)state;
	for (int run = 0; run < 400; run++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_profile *profile = some_profile(arena, &random);

		capture_init(&capture);
		assert_true(rb_profile_write_svg(&capture.sink, profile));
		wrong += judge("picture", run);
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* -- scales -- */

static bool is_of_125(int64_t a, int64_t unit)
{
	while (a % 10 == 0 && a / 10 >= unit)
		a /= 10;
	return a == unit || a == 2 * unit || a == 5 * unit;
}

static int judge_scale(const struct rb_profile_scale *scale)
{
	int faults = 0;

	for (size_t i = 0; i < scale->strips; i++) {
		const struct rb_profile_strip *strip = &scale->strip[i];
		int height = rb_profile_up(scale, strip, strip->high);
		int width = rb_profile_right(scale, strip, strip->right);

		faults += height < 0 || height > 300 || width < 0 || width > 600;
		faults +=
			strip->low.nm % scale->step.nm || strip->high.nm % scale->step.nm;
		faults += (strip->high.nm - strip->low.nm) / scale->step.nm > 8;
	}
	return faults;
}

static void fits_the_paper(void **state)
{
	struct rb_random random = rb_random_start(4, 0);
	int wrong = 0;

	(void)state;
	for (int run = 0; run < 400; run++) {
		struct rb_arena *arena = rb_arena_new(NULL);
		struct rb_profile *profile = some_profile(arena, &random);
		struct rb_profile_scale scale;
		int faults;

		assert_true(rb_profile_fit(&scale, profile, 600, 8, 300));
		faults = judge_scale(&scale);
		if (scale.strips && profile->style.unit == RB_FEET)
			faults += !is_of_125(scale.step.nm, RB_FOOT / 100);
		if (scale.exaggeration)
			faults += !is_of_125(scale.exaggeration, 1);
		if (faults)
			print_error("picture %d: %d faults\n", run, faults);
		wrong += faults;
		rb_arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* What is held against the edges: strips and their scale, from items put by hand. */
static void fit(struct rb_profile_scale *scale, const struct rb_profile *profile)
{
	assert_true(rb_profile_fit(scale, profile, 600, 2, 300));
	assert_int_equal(judge_scale(scale), 0);
}

static struct rb_profile *places_of(struct rb_arena *arena, int places)
{
	static const char *const text[RB_PROFILE_BAND] = { "A" };
	struct rb_profile *profile = rb_profile_new(arena, styles[0]);

	for (int i = 0; i < places; i++)
		rb_profile_place(profile, rb_length_of(i * RB_FOOT / 10), text);
	profile->strip = 2;
	return profile;
}

static struct rb_profile_spot spot_at(int tenths, int elevation)
{
	return (struct rb_profile_spot){ { tenths * RB_FOOT / 10 },
					 { elevation * RB_FOOT },
					 0 };
}

/* What lies wholly in the strip before does not stretch the next, though it was added
 * behind what reaches there. */
static void a_strip_holds_only_what_is_in_it(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_profile *profile = places_of(arena, 3);
	struct rb_profile_scale scale;

	(void)state;
	rb_profile_line(profile, RB_LOOK_GROUND, spot_at(0, 10), spot_at(1, 11));
	rb_profile_mark(profile, RB_MARK_POINT, spot_at(0, 50));
	rb_profile_line(profile, RB_LOOK_GROUND, spot_at(1, 11), spot_at(2, 12));
	fit(&scale, profile);
	assert_int_equal(scale.strips, 2);
	assert_int_equal(scale.strip[0].low.nm, 10 * RB_FOOT);
	assert_int_equal(scale.strip[0].high.nm, 50 * RB_FOOT);
	assert_int_equal(scale.strip[1].low.nm, 10 * RB_FOOT);
	assert_int_equal(scale.strip[1].high.nm, 20 * RB_FOOT);
	rb_arena_free(arena);
}

/* A strip without anything, and one with a single elevation, are a step tall. */
static void a_strip_is_never_flat(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_profile *profile = places_of(arena, 3);
	struct rb_profile_scale scale;

	(void)state;
	rb_profile_mark(profile, RB_MARK_POINT, spot_at(0, 10));
	fit(&scale, profile);
	assert_int_equal(scale.strips, 2);
	assert_int_equal(scale.strip[0].low.nm, 10 * RB_FOOT);
	assert_int_equal(scale.strip[1].low.nm, 0);
	for (size_t i = 0; i < scale.strips; i++)
		assert_int_equal(scale.strip[i].high.nm,
				 scale.strip[i].low.nm + scale.step.nm);
	rb_arena_free(arena);
}

/* A drain that is shorter than any bar has none. */
static void a_run_of_inches_has_no_bar(void **state)
{
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_profile_scale scale;

	(void)state;
	for (int places = 2; places <= 6; places += 4) {
		struct rb_profile *profile = places_of(arena, places);

		profile->to_scale = true;
		profile->strip = 8;
		rb_profile_line(profile, RB_LOOK_INVERT, spot_at(0, 10),
				spot_at(places - 1, 10));
		assert_true(rb_profile_fit(&scale, profile, 600, 8, 300));
		assert_true(scale.exaggeration > 0);
		assert_int_equal(rb_length_given(scale.bar), places == 6);
	}
	rb_arena_free(arena);
}

/* A name that no line holds is cut where the line ends. */
static void a_title_without_blanks_is_broken(void **state)
{
	static char title[150];
	struct rb_arena *arena = rb_arena_new(NULL);
	struct rb_profile *profile = places_of(arena, 2);

	(void)state;
	memset(title, 'x', sizeof title - 1);
	profile->title = title;
	profile->words = title;
	rb_profile_mark(profile, RB_MARK_POINT, spot_at(0, 10));
	capture_init(&capture);
	assert_true(rb_profile_write_svg(&capture.sink, profile));
	assert_int_equal(judge("title", 0), 0);
	rb_arena_free(arena);
}

/* -- a reduced book -- */

static const char *picture_of(const char *book)
{
	struct reduced_book b;
	struct rb_profile *profile;

	reduce_text(&b, "larch.csv", book, false);
	capture_init(&capture);
	profile = rb_reduced_profile(b.arena, &b.reduction);
	if (profile)
		rb_profile_write_svg(&capture.sink, profile);
	rb_arena_free(b.arena);
	return captured(&capture);
}

static void shows_a_book(void **state)
{
	static const char *const said[] = {
		"<title id=\"picture1-title\">Levels of Larch Street drain, 17 March 2026",
		"<desc id=\"picture1-words\">CLOSES on BM-1: 0.01 ft low",
		">HI 104.27<",
		">BS 4.27<",
		">FS 6.03<",
		">IS 6.48<",
		">TP-2<",
		">99.83<",
		">99.837<",
		">0.01 ft low",
		">ground<",
		"Heights are to scale; the run is not.",
	};
	const char *svg = picture_of(larch);
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof said / sizeof *said; i++)
		if (!strstr(svg, said[i])) {
			print_error("not in the picture: %s\n", said[i]);
			wrong++;
		}
	assert_int_equal(wrong, 0);
	assert_int_equal(judge("book", 0), 0);
}

static void says_what_fails(void **state)
{
	const char *svg = picture_of("tolerance,0.02 ft\npoint,bs,fs,elevation\n"
				     "A,5.00,,100.00\nB,4.00,5.00,\nA,,4.50,\n");

	(void)state;
	assert_non_null(strstr(svg, ">DOES NOT CLOSE: 0.50 ft low<"));
	assert_non_null(strstr(svg, "DOES NOT CLOSE on A"));
}

static void is_to_scale_where_all_lengths_are_known(void **state)
{
	const char *svg = picture_of("point,bs,fs,elevation,bs dist,fs dist\n"
				     "A,5.00,,100.00,50,\nB,4.00,5.00,,30,50\n"
				     "C,,4.50,,,40\n");

	(void)state;
	assert_non_null(strstr(svg, "Heights drawn "));
	assert_non_null(strstr(svg, " times larger: 1 ft tall = "));
	assert_non_null(strstr(svg, ">20 ft<"));
	svg = picture_of("point,bs,fs,elevation,bs dist,fs dist\n"
			 "A,5.00,,100.00,50,\nB,4.00,5.00,,,50\nC,,4.50,,,40\n");
	assert_non_null(strstr(svg, "the run is not."));
	svg = picture_of("point,bs,fs,elevation,bs dist,fs dist\n"
			 "A,5.00,,100.00,50,\nB,4.00,5.00,,30,\nC,,4.50,,,40\n");
	assert_non_null(strstr(svg, "the run is not."));
}

/* A backsight on a place that was left before would take the run back. */
static void is_not_to_scale_where_the_run_goes_back(void **state)
{
	const char *svg = picture_of("point,bs,is,fs,elevation,bs dist,fs dist\n"
				     "A,5.00,,,100.00,50,\nB,,5.00,,,,50\n"
				     "C,4.00,,4.50,,30,40\nD,,,4.00,,,30\n"
				     "B,3.00,,,,30,\nE,,,4.00,,,30\n");

	(void)state;
	assert_non_null(strstr(svg, "the run is not."));
}

/* Without memory there is no picture, and nothing worse. */
static size_t left;

static void *resize(void *old, size_t size)
{
	return left && left-- ? realloc(old, size) : NULL;
}

static void survives_without_memory(void **state)
{
	const struct rb_allocator allocator = { resize, free };
	bool drawn = false;

	(void)state;
	for (size_t blocks = 0; !drawn && blocks < 1000; blocks++) {
		struct rb_random random = rb_random_start(5, 0);
		struct rb_arena *arena;
		struct rb_profile *profile;

		left = blocks;
		arena = rb_arena_new(&allocator);
		profile = arena ? rb_profile_new(arena, styles[0]) : NULL;
		if (profile) {
			fill(profile, &random, 2000);
			capture_init(&capture);
			drawn = !profile->out_of_memory;
			if (!drawn)
				assert_false(
					rb_profile_write_svg(&capture.sink, profile));
		}
		rb_arena_free(arena);
	}
	assert_true(drawn);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(writes_elements),
		cmocka_unit_test(never_overlaps),
		cmocka_unit_test(fits_the_paper),
		cmocka_unit_test(a_strip_holds_only_what_is_in_it),
		cmocka_unit_test(a_strip_is_never_flat),
		cmocka_unit_test(a_run_of_inches_has_no_bar),
		cmocka_unit_test(a_title_without_blanks_is_broken),
		cmocka_unit_test(shows_a_book),
		cmocka_unit_test(says_what_fails),
		cmocka_unit_test(is_to_scale_where_all_lengths_are_known),
		cmocka_unit_test(is_not_to_scale_where_the_run_goes_back),
		cmocka_unit_test(survives_without_memory),
	};

	return cmocka_run_group_tests_name("svg", tests, NULL, NULL);
}
