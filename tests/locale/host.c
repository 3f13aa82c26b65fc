/* SPDX-License-Identifier: MIT */
/* The program inside a host that has asked for the user's locale, which it never does. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>

__attribute__((constructor)) static void ask(void)
{
	if (setlocale(LC_ALL, ""))
		return;
	fputs("the locale is not here\n", stderr);
	exit(EXIT_FAILURE);
}
