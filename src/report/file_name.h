/* SPDX-License-Identifier: MIT */
/*
 * file_name.h - how a result names the file that it was made from.
 *
 * A result holds no path: the same file gives the same bytes wherever it stands.
 */
#ifndef RB_REPORT_FILE_NAME_H
#define RB_REPORT_FILE_NAME_H

/* The file without its folders; "standard input" for "-" and for NULL. */
const char *rb_file_name(const char *path);

#endif
