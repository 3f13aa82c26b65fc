/* SPDX-License-Identifier: MIT */
/*
 * mangled.h - names that a spreadsheet, or a change of encoding, made of others.
 *
 * Nothing is put right: the name stands as it is, and its point goes by it.
 */
#ifndef RB_NOTES_MANGLED_H
#define RB_NOTES_MANGLED_H

#include <stddef.h>

enum rb_mangled {
	RB_NOT_MANGLED,
	RB_MANGLED_BY_SHEET, /* 1.00E+05 of 1E5, a date of SEP-2, #NAME? */
	RB_MANGLED_LETTERS   /* UTF-8 that was read as Windows-1252 */
};

#define RB_MANGLED_NAME 128 /* bytes; a longer name is not looked at for letters */

/* What happened to a name, UTF-8 that ends in NUL; for RB_MANGLED_LETTERS what it was
 * before is in `meant`, else "". */
enum rb_mangled rb_name_mangled(const char *name, size_t length,
				char meant[static RB_MANGLED_NAME]);

#endif
