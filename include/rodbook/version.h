/* SPDX-License-Identifier: MIT */
/* version.h - which rodbook this is. */
#ifndef RODBOOK_VERSION_H
#define RODBOOK_VERSION_H

#define RB_VERSION "0.1.0"

/* Of the JSON results: keys may be added without a new number, none goes away. */
#define RB_SCHEMA 1

#endif
