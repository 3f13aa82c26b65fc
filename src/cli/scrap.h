/* SPDX-License-Identifier: MIT */
/*
 * scrap.h - the file that must not be left behind.
 *
 * One file at a time, under way and not yet whole, is known to the program's signal
 * handlers: SIGINT, SIGTERM, SIGHUP and SIGQUIT remove it before they end the program.
 */
#ifndef RB_CLI_SCRAP_H
#define RB_CLI_SCRAP_H

#include <signal.h>
#include <stdbool.h>

/* Hold these signals back: between making a file and naming it here nothing may end
 * the program. */
void rb_scrap_hold(sigset_t *before);
void rb_scrap_release(const sigset_t *before);

/* The file to remove; NULL: there is none any more.  The path is copied.  False, with
 * errno, if it is too long to be kept. */
bool rb_scrap_set(const char *path);

#endif
