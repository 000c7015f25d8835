/* main.c: the command line first, else the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <stdio.h>

#include "report.h"

int
main (int    argc,
      char **argv)
{
  int status = tr_command_line (argc, argv);

  if (status >= 0)
    return status;
  fputs ("tourier: this build has no window; tourier --help lists what can be done without one.\n", stderr);
  return 1;
}
