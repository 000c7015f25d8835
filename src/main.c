/* main.c: the command line first, else the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "report.h"
#include "window/application.h"

int
main (int    argc,
      char **argv)
{
  int status = tr_command_line (argc, argv);

  return status >= 0 ? status : tr_application_run (argc, argv);
}
