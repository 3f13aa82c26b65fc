/* SPDX-License-Identifier: MIT */
/* The form of a book: its keys and the headings that its columns may have. */
#include <string.h>

#include "notes/book_reader.h"
#include "notes/heading.h"

/* clang-format off */
static const struct rb_key keys[] = {
	{ "project",       RB_KEY_PROJECT },
	{ "date",          RB_KEY_DATE },
	{ "crew",          RB_KEY_CREW },
	{ "student",       RB_KEY_STUDENT },
	{ "instrument",    RB_KEY_INSTRUMENT },
	{ "rod",           RB_KEY_ROD },
	{ "weather",       RB_KEY_WEATHER },
	{ "datum",         RB_KEY_DATUM },
	{ "unit",          RB_KEY_UNIT },
	{ "tolerance",     RB_KEY_TOLERANCE },
	{ "adjust",        RB_KEY_ADJUST },
	{ "collimation",   RB_KEY_COLLIMATION },
	{ "sight limit",   RB_KEY_SIGHT_LIMIT },
	{ "balance limit", RB_KEY_BALANCE_LIMIT },
	{ "decimals",      RB_KEY_DECIMALS },
	{ "rod on",        RB_KEY_ROD_ON },
};

static const struct rb_heading exact[] = {
	{ "+",  RB_BACKSIGHT },
	{ "+s", RB_BACKSIGHT },
	{ "-",  RB_FORESIGHT },
	{ "-s", RB_FORESIGHT },
};

static const struct rb_heading headings[] = {
	{ "point",                 RB_POINT },
	{ "pt",                    RB_POINT },
	{ "name",                  RB_POINT },
	{ "station",               RB_STATION },
	{ "sta",                   RB_STATION },
	{ "stn",                   RB_STATION },
	{ "known elevation",       RB_KNOWN_ELEVATION },
	{ "benchmark",             RB_KNOWN_ELEVATION },
	{ "bm",                    RB_KNOWN_ELEVATION },
	{ "bm elevation",          RB_KNOWN_ELEVATION },
	{ "bm elev",               RB_KNOWN_ELEVATION },
	{ "known elev",            RB_KNOWN_ELEVATION },
	{ "backsight",             RB_BACKSIGHT },
	{ "bs",                    RB_BACKSIGHT },
	{ "intermediate",          RB_INTERMEDIATE },
	{ "intermediate sight",    RB_INTERMEDIATE },
	{ "intermediate foresight", RB_INTERMEDIATE },
	{ "is",                    RB_INTERMEDIATE },
	{ "ifs",                   RB_INTERMEDIATE },
	{ "ss",                    RB_INTERMEDIATE },
	{ "side shot",             RB_INTERMEDIATE },
	{ "foresight",             RB_FORESIGHT },
	{ "fs",                    RB_FORESIGHT },
	{ "backsight distance",    RB_BACKSIGHT_DISTANCE },
	{ "bs dist",               RB_BACKSIGHT_DISTANCE },
	{ "bs distance",           RB_BACKSIGHT_DISTANCE },
	{ "foresight distance",    RB_FORESIGHT_DISTANCE },
	{ "fs dist",               RB_FORESIGHT_DISTANCE },
	{ "fs distance",           RB_FORESIGHT_DISTANCE },
	{ "chainage",              RB_CHAINAGE },
	{ "ch",                    RB_CHAINAGE },
	{ "distance",              RB_CHAINAGE },
	{ "run",                   RB_CHAINAGE },
	{ "measure down",          RB_MEASURE_DOWN },
	{ "dip",                   RB_MEASURE_DOWN },
	{ "rod on",                RB_ROD_ON },
	{ "surface",               RB_ROD_ON },
	{ "height of instrument",  RB_HEIGHT_OF_INSTRUMENT },
	{ "hi",                    RB_HEIGHT_OF_INSTRUMENT },
	{ "elevation",             RB_ELEVATION },
	{ "elev",                  RB_ELEVATION },
	{ "rl",                    RB_ELEVATION },
	{ "reduced level",         RB_ELEVATION },
	{ "remarks",               RB_REMARKS },
	{ "note",                  RB_REMARKS },
	{ "notes",                 RB_REMARKS },
	{ "description",           RB_REMARKS },
	{ "unit",                  RB_UNIT_OF_ROW },
	{ "correction",            RB_PASSED_OVER },
	{ "adjusted",              RB_PASSED_OVER },
};

/* What people head their columns, and the column that it may be. */
static const struct rb_heading nears[] = {
	{ "bs dist*",      RB_BACKSIGHT_DISTANCE },
	{ "bs len*",       RB_BACKSIGHT_DISTANCE },
	{ "back* dist*",   RB_BACKSIGHT_DISTANCE },
	{ "back* len*",    RB_BACKSIGHT_DISTANCE },
	{ "fs dist*",      RB_FORESIGHT_DISTANCE },
	{ "fs len*",       RB_FORESIGHT_DISTANCE },
	{ "fore* dist*",   RB_FORESIGHT_DISTANCE },
	{ "fore* len*",    RB_FORESIGHT_DISTANCE },
	{ "int* dist*",    RB_FORESIGHT_DISTANCE },
	{ "is dist*",      RB_FORESIGHT_DISTANCE },
	{ "interm*",       RB_INTERMEDIATE },
	{ "inter",         RB_INTERMEDIATE },
	{ "int",           RB_INTERMEDIATE },
	{ "ifs",           RB_INTERMEDIATE },
	{ "is read*",      RB_INTERMEDIATE },
	{ "side sh*",      RB_INTERMEDIATE },
	{ "side sight*",   RB_INTERMEDIATE },
	{ "bs elev*",      RB_KNOWN_ELEVATION },
	{ "backs*",        RB_BACKSIGHT },
	{ "back sight*",   RB_BACKSIGHT },
	{ "back read*",    RB_BACKSIGHT },
	{ "back rod*",     RB_BACKSIGHT },
	{ "bs",            RB_BACKSIGHT },
	{ "=plus",         RB_BACKSIGHT },
	{ "plus sight*",   RB_BACKSIGHT },
	{ "=back",         RB_BACKSIGHT },
	{ "=+",            RB_BACKSIGHT },
	{ "fores*",        RB_FORESIGHT },
	{ "fore sight*",   RB_FORESIGHT },
	{ "fore read*",    RB_FORESIGHT },
	{ "fore rod*",     RB_FORESIGHT },
	{ "front sight*",  RB_FORESIGHT },
	{ "fs",            RB_FORESIGHT },
	{ "=minus",        RB_FORESIGHT },
	{ "minus sight*",  RB_FORESIGHT },
	{ "=fore",         RB_FORESIGHT },
	{ "=-",            RB_FORESIGHT },
	{ "known*",        RB_KNOWN_ELEVATION },
	{ "given elev*",   RB_KNOWN_ELEVATION },
	{ "bench*",        RB_KNOWN_ELEVATION },
	{ "bm elev*",      RB_KNOWN_ELEVATION },
	{ "bm el",         RB_KNOWN_ELEVATION },
	{ "bm rl",         RB_KNOWN_ELEVATION },
	{ "inst* h*",      RB_HEIGHT_OF_INSTRUMENT },
	{ "height inst*",  RB_HEIGHT_OF_INSTRUMENT },
	{ "ht inst*",      RB_HEIGHT_OF_INSTRUMENT },
	{ "height coll*",  RB_HEIGHT_OF_INSTRUMENT },
	{ "hpc",           RB_HEIGHT_OF_INSTRUMENT },
	{ "hi",            RB_HEIGHT_OF_INSTRUMENT },
	{ "elev*",         RB_ELEVATION },
	{ "el",            RB_ELEVATION },
	{ "rl",            RB_ELEVATION },
	{ "reduced*",      RB_ELEVATION },
	{ "level*",        RB_ELEVATION },
	{ "point*",        RB_POINT },
	{ "pt",            RB_POINT },
	{ "pts",           RB_POINT },
	{ "pnt",           RB_POINT },
	{ "id",            RB_POINT },
	{ "name*",         RB_POINT },
	{ "location*",     RB_POINT },
	{ "station*",      RB_STATION },
	{ "chain*",        RB_CHAINAGE },
	{ "dist*",         RB_CHAINAGE },
	{ "dip*",          RB_MEASURE_DOWN },
	{ "measure*",      RB_MEASURE_DOWN },
	{ "surface*",      RB_ROD_ON },
	{ "rod on*",       RB_ROD_ON },
	{ "remark*",       RB_REMARKS },
	{ "comment*",      RB_REMARKS },
	{ "note*",         RB_REMARKS },
	{ "memo*",         RB_REMARKS },
	{ "desc*",         RB_REMARKS },
	{ "unit*",         RB_UNIT_OF_ROW },
};

static const enum rb_measured measured[RB_SHEET_COLUMNS] = {
	[RB_KNOWN_ELEVATION]      = RB_ELEVATIONS,
	[RB_BACKSIGHT]            = RB_READINGS,
	[RB_INTERMEDIATE]         = RB_READINGS,
	[RB_FORESIGHT]            = RB_READINGS,
	[RB_BACKSIGHT_DISTANCE]   = RB_RUNS,
	[RB_FORESIGHT_DISTANCE]   = RB_RUNS,
	[RB_CHAINAGE]             = RB_RUNS,
	[RB_STATION]              = RB_RUNS,
	[RB_MEASURE_DOWN]         = RB_READINGS,
	[RB_HEIGHT_OF_INSTRUMENT] = RB_ELEVATIONS,
	[RB_ELEVATION]            = RB_ELEVATIONS,
};

static const char *const column_names[RB_SHEET_COLUMNS] = {
	[RB_POINT]                = "point",
	[RB_KNOWN_ELEVATION]      = "known elevation",
	[RB_BACKSIGHT]            = "backsight",
	[RB_INTERMEDIATE]         = "intermediate",
	[RB_FORESIGHT]            = "foresight",
	[RB_BACKSIGHT_DISTANCE]   = "backsight distance",
	[RB_FORESIGHT_DISTANCE]   = "foresight distance",
	[RB_CHAINAGE]             = "chainage",
	[RB_MEASURE_DOWN]         = "measure down",
	[RB_HEIGHT_OF_INSTRUMENT] = "height of instrument",
	[RB_ELEVATION]            = "elevation",
	[RB_ROD_ON]               = "rod on",
	[RB_REMARKS]              = "remarks",
	[RB_UNIT_OF_ROW]          = "unit",
	[RB_PASSED_OVER]          = "correction or adjusted",
	[RB_STATION]              = "station",
};
/* clang-format on */

/* A station is the point's name where there is no other, else a chainage where there is
 * no other.  With both taken it stays, and is told as a second column of one meaning. */
static void settle(int32_t cell_of[RB_SHEET_COLUMNS])
{
	int32_t station = cell_of[RB_STATION];

	if (station < 0)
		return;
	if (cell_of[RB_POINT] < 0) {
		cell_of[RB_POINT] = station;
		cell_of[RB_STATION] = -1;
	} else if (cell_of[RB_CHAINAGE] < 0) {
		cell_of[RB_CHAINAGE] = station;
		cell_of[RB_STATION] = -1;
	} else {
		cell_of[RB_STATION] = -1;
	}
}

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	return cell_of[RB_POINT] >= 0 &&
	       (cell_of[RB_BACKSIGHT] >= 0 || cell_of[RB_INTERMEDIATE] >= 0 ||
		cell_of[RB_FORESIGHT] >= 0);
}

/* -- no header -- */

/* The heading that a site record alone has (src/record). */
static bool is_of_record(struct rb_cell cell)
{
	char word[RB_FOLDED_WORD];

	return rb_heading_fold(word, cell.text, cell.length, "") &&
	       !strcmp(word, "sha256");
}

static bool say_record(struct rb_findings *findings, const struct rb_record *nearest)
{
	for (uint32_t i = 0; i < nearest->cells; i++)
		if (is_of_record(nearest->cell[i])) {
			rb_findings_add(findings, RB_CODE_SITE_RECORD,
					rb_at(nearest->line, RB_WHOLE_ROW, NULL, NULL),
					rb_nothing(), rb_nothing());
			return true;
		}
	return false;
}

/* A heading that looks like that of the points is told of by itself. */
static bool looks_like_points(const struct rb_record *record)
{
	for (uint32_t i = 0; i < record->cells; i++)
		if (rb_heading_nearest(&rb_book_form, record->cell[i]) == RB_POINT)
			return true;
	return false;
}

/* Sights, and words where the names of the points are missing: they may be these. */
static bool say_names_under_remarks(struct rb_findings *findings,
				    const struct rb_record *nearest)
{
	int32_t cell_of[RB_SHEET_COLUMNS], words;

	rb_headings_map(&rb_book_form, nearest, cell_of);
	words = cell_of[RB_REMARKS];
	if (words < 0 || cell_of[RB_POINT] >= 0 || looks_like_points(nearest))
		return false;
	cell_of[RB_POINT] = words;
	if (!is_header(cell_of))
		return false;
	rb_findings_add(findings, RB_CODE_NO_POINT_COLUMN,
			rb_at(nearest->line, words, NULL, NULL),
			rb_text(nearest->cell[words].text), rb_nothing());
	return true;
}

static bool say_headless(struct rb_findings *findings, const struct rb_record *nearest)
{
	return say_record(findings, nearest) ||
	       say_names_under_remarks(findings, nearest);
}

#define COUNT(table) (sizeof(table) / sizeof *(table))

const struct rb_form rb_book_form = {
	.key = keys,
	.keys = COUNT(keys),
	.lengths = 1u << RB_KEY_ROD | 1u << RB_KEY_TOLERANCE | 1u << RB_KEY_COLLIMATION |
		   1u << RB_KEY_SIGHT_LIMIT | 1u << RB_KEY_BALANCE_LIMIT,
	.exact = exact,
	.exacts = COUNT(exact),
	.heading = headings,
	.headings = COUNT(headings),
	.near = nears,
	.nears = COUNT(nears),
	.measured = measured,
	.sights = 1u << RB_BACKSIGHT | 1u << RB_INTERMEDIATE | 1u << RB_FORESIGHT,
	.column_name = column_names,
	.passed_over = RB_PASSED_OVER,
	.settle = settle,
	.is_header = is_header,
	.header_wanted =
		"a point column and a backsight, intermediate or foresight column",
	.header_such_as = "point, known elevation, backsight, intermediate, foresight",
	.say_headless = say_headless,
};
