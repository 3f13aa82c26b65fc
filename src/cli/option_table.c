/* SPDX-License-Identifier: MIT */
/* All options of the program, each once. */
#include "cli/options.h"

/* What an option takes, and how often it may be given. */
#define FLAG                  RB_FLAG, 1, 0, 0, NULL, NULL
#define CHOICE(words)         RB_CHOICE, 1, 0, 0, words, NULL
#define NUMBER(low, high)     RB_NUMBER, 1, low, high, "N", NULL
#define TEXT(value, accepts)  RB_WORDS, 1, 0, 0, value, accepts
#define PAIRS(value, accepts) RB_WORDS, 2, 0, 0, value, accepts

/* clang-format off */
static const struct rb_option_row options[RB_OPTIONS] = {
[RB_OPTION_FORMAT]        = { "format",        'f', CHOICE("text|csv|json|html|svg"),
	"how the result is written" },
[RB_OPTION_OUTPUT]        = { "output",        'o', TEXT("FILE", "a file"),
	"write to FILE, whole or not at all" },
[RB_OPTION_UNIT]          = { "unit",          'u', CHOICE("ft|ft-in|in|m|mm"),
	"the unit in which lengths are shown, and,\n"
	"with no file, that of bare numbers (ft)" },
[RB_OPTION_DECIMALS]      = { "decimals",      0,   NUMBER(0, 9),
	"decimals shown, 0 to 9" },
[RB_OPTION_FRACTION]      = { "fraction",      0,   CHOICE("8|16|32|64"),
	"finest part of an inch shown (16, or what\n"
	"the readings have; grade rods and cuts: 8)" },
[RB_OPTION_STEPS]         = { "steps",         0,   FLAG,
	"show the arithmetic" },
[RB_OPTION_STRICT]        = { "strict",        0,   FLAG,
	"a warning counts as a failed check" },
[RB_OPTION_QUIET]         = { "quiet",         0,   FLAG,
	"no notes and warnings on the terminal" },
[RB_OPTION_COLOR]         = { "color",         0,   CHOICE("auto|always|never"),
	"color on the terminal (auto)" },
[RB_OPTION_MESSAGES]      = { "messages",      0,   CHOICE("text|json"),
	"how messages are written (text)" },
[RB_OPTION_HELP]          = { "help",          'h', FLAG,
	"this help" },

[RB_OPTION_TOLERANCE]     = { "tolerance",     0,
	TEXT("TOLERANCE", "0.02 ft, 1/4 in, 5 mm, 0.05 ft sqrt(mi), 12 mm sqrt(km) or the like"),
	"allowed misclosure, in place of the book's" },
[RB_OPTION_ADJUST]        = { "adjust",        0,   CHOICE("setups|distance|none"),
	"how it is spread, in place of the book's" },
[RB_OPTION_ADJUST_ANYWAY] = { "adjust-anyway", 0,   FLAG,
	"adjust even what misses its tolerance" },

[RB_OPTION_FROM]          = { "from",          0,
	TEXT("POINT", "a point of the book"),
	"the upstream end of a leg" },
[RB_OPTION_TO]            = { "to",            0,
	TEXT("POINT", "a point of the book"),
	"its downstream end" },
[RB_OPTION_LENGTH]        = { "length",        0,
	TEXT("LENGTH", "a length such as 48.5, 48'-6\" or 14.8 m"),
	"horizontal length" },
[RB_OPTION_MINIMUM]       = { "minimum",       0,
	TEXT("SLOPE", "a slope such as 1/4 in/ft, 2%, 1:48 or 20 mm/m"),
	"the flattest slope allowed" },
[RB_OPTION_RULES]         = { "rules",         0,   TEXT("FILE", "a rules file"),
	"minimum slopes by size of pipe" },
[RB_OPTION_SIZE]          = { "size",          0,
	TEXT("SIZE", "a size such as 4 in or 100 mm"),
	"size of the pipe, for --rules" },
[RB_OPTION_OUTLET]        = { "outlet",        0,   CHOICE("first|last"),
	"end it flows to; no plan: 0+00 is first" },

[RB_OPTION_GROUND]        = { "ground",        0,   TEXT("BOOK", "a book"),
	"a book with ground and hub shots" },
[RB_OPTION_LAID]          = { "laid",          0,   TEXT("BOOK", "a book"),
	"a book with shots of the laid pipe" },
[RB_OPTION_HI]            = { "hi",            0,
	TEXT("ELEVATION", "an elevation such as 104.27, 104'-3 1/4\" or 31.782 m"),
	"today's height of instrument" },
[RB_OPTION_BENCHMARK]     = { "benchmark",     0,
	PAIRS("ELEVATION", "an elevation such as 100.00 or 30.480 m"),
	"elevation of a benchmark sighted today" },
[RB_OPTION_BACKSIGHT]     = { "backsight",     0,
	PAIRS("READING", "a rod reading such as 4.27, 4'-3 1/4\" or 1.302 m"),
	"the reading on that benchmark" },
[RB_OPTION_INTERVAL]      = { "interval",      0,
	TEXT("LENGTH", "a length such as 25, 10' or 5 m"),
	"add stations at whole multiples of LENGTH" },
[RB_OPTION_INVERT]        = { "invert",        0,
	TEXT("ELEVATION", "an elevation such as 95.50 or 29.108 m"),
	"no plan: invert at 0+00, the upper end" },
[RB_OPTION_SLOPE]         = { "slope",         0,
	TEXT("SLOPE", "a slope such as 1/4 in/ft, 2%, 1:48 or 20 mm/m"),
	"no plan: how it falls from there" },
[RB_OPTION_USE_ANYWAY]    = { "use-anyway",    0,   FLAG,
	"stake from a book that does not close" },
[RB_OPTION_AT]            = { "at",            0,
	TEXT("CHAINAGE", "a chainage such as 0+50, 50 or 15.2 m"),
	"where the rod stands" },
[RB_OPTION_ROD]           = { "rod",           0,
	TEXT("READING", "a rod reading such as 8.42, 8'-5\" or 2.566 m"),
	"the reading there" },
[RB_OPTION_ON]            = { "on",            0,   CHOICE("trench|invert|top"),
	"what the rod stands on" },
[RB_OPTION_WITHIN]        = { "within",        0,
	TEXT("LENGTH", "a length such as 1/8 in, 0.01 ft or 3 mm"),
	"how near is on grade (1/8 in or 3 mm)" },
[RB_OPTION_HUB]           = { "hub",           0,
	TEXT("READING", "a rod reading such as 4.27, 4'-3 1/4\" or 1.302 m"),
	"the reading on the hub" },
[RB_OPTION_CUT]           = { "cut",           0,
	TEXT("LENGTH", "a length such as 5.25, 5'-3\" or 1.600 m"),
	"its cut, 5.25 or C 5.25; a fill is F 0.30" },

[RB_OPTION_APPEND]        = { "append",        0,   TEXT("FILE", "a file"),
	"add to the record in FILE" },
[RB_OPTION_MARKS]         = { "marks",         0,   FLAG,
	"a mark sheet, one line a book" },
[RB_OPTION_BOOK]          = { "book",          0,   TEXT("BOOK", "a book"),
	"what the error does to BOOK's sections" },

[RB_OPTION_KIND]          = { "kind",          0,   CHOICE("convert|loop|fall"),
	"what is practised" },
[RB_OPTION_SEED]          = { "seed",          0,   NUMBER(0, INT64_C(4294967295)),
	"the same seed gives the same sheet" },
[RB_OPTION_COUNT]         = { "count",         0,   NUMBER(1, 1000),
	"how many problems, 1 to 1000" },
[RB_OPTION_ANSWERS]       = { "answers",       0,   FLAG,
	"with the answers" },
[RB_OPTION_PLANT]         = { "plant",         0,   FLAG,
	"put exactly one slip into a worked book" },
[RB_OPTION_SETUPS]        = { "setups",        0,   NUMBER(2, 99),
	"setups of a loop (2 to 5, by the seed)" },
[RB_OPTION_INVERTED]      = { "inverted",      0,   FLAG,
	"a loop with an inverted rod in it" },
[RB_OPTION_TABLE]         = { "table",         0,   CHOICE("8|16|32|64"),
	"the card of inches and decimals of a foot" },
};
/* clang-format on */

const struct rb_option_row *rb_option_row(enum rb_option option)
{
	return &options[option];
}
