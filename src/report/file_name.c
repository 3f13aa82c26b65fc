/* SPDX-License-Identifier: MIT */
/* file_name.c - a file without its folders. */
#include "report/file_name.h"

#include <string.h>

const char *rb_file_name(const char *path)
{
	const char *slash = path ? strrchr(path, '/') : 0;

	if (!path || !strcmp(path, "-"))
		return "standard input";
	return slash ? slash + 1 : path;
}
