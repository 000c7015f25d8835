/* actions.h: everything that can be done by menu or key, in one table
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The menu, the accelerators and the list of shortcuts are derived from the
 * table in window-actions.c; nothing else names an accelerator.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Where in the menu: the order is that of the menu. */
typedef enum {
  TR_MENU_FILE, TR_MENU_SAVE, TR_MENU_EDIT, TR_MENU_PAPER, TR_MENU_PRINT, TR_MENU_DOUGHS,
  TR_MENU_VIEW, TR_MENU_UNITS, TR_MENU_COLOURS, TR_MENU_HELP, TR_MENU_CLOSE,
  TR_N_MENUS,
  TR_MENU_NONE = TR_N_MENUS,     /* by key only */
} TrMenu;

/* Where a key counts. */
typedef enum {
  TR_KEYS_EVERYWHERE,            /* in every window of a trial */
  TR_KEYS_DOUGHS,                /* only while the doughs list has the focus */
  TR_KEYS_PREVIEW,               /* in the preview of what is printed */
  TR_KEYS_TURNS,                 /* only while the sequence on the Turns page has the focus */
  TR_KEYS_PICTURES,              /* only while a picture has the focus */
  TR_KEYS_PREDICTION,            /* only while the list of the prediction has the focus */
  TR_N_KEYS
} TrKeys;

typedef struct {
  const char *name;              /* detailed: "win.undo", "app.units::us" */
  const char *accelerator;       /* NULL: none */
  const char *label;             /* to be translated; "…" when it asks first */
  TrMenu menu;
  TrKeys keys;
  GtkWidgetActionActivateFunc callback;   /* NULL: a property action, or another window's */
} TrAction;

const TrAction *tr_actions_get             (guint          *n_actions);
/* NULL: none of that name. */
const TrAction *tr_actions_find            (const char     *name);
const char     *tr_action_get_label        (const TrAction *action);   /* translated */

/* The whole menu. `undo` and `redo` say what they will do, NULL: nothing to;
 * `recent` may be NULL. (transfer full) */
GMenuModel     *tr_actions_new_menu        (const char *undo,
                                            const char *redo,
                                            GMenuModel *recent);
/* Makes a button do an action: its name for everybody, its key in the tooltip. */
void            tr_actions_set_up_button   (GtkWidget      *button,
                                            const char     *name);
/* "Undo: change amount of Butter (Ctrl+Z)"; `what` NULL: just the label. */
void            tr_actions_set_tooltip     (GtkWidget      *button,
                                            const char     *name,
                                            const char     *what);
void            tr_actions_set_accelerators (GtkApplication *application);
/* Names a control by a label with a mnemonic in it ("_Paper": "Paper"): itself and the button inside a drop-down. */
void            tr_name_by_mnemonic        (GtkWidget      *control,
                                            const char     *label);
/* The keys that count only there; for all but TR_KEYS_EVERYWHERE. */
GtkEventController *tr_actions_new_keys    (TrKeys          keys);
/* The same as a menu. (transfer full) */
GMenuModel     *tr_actions_new_keys_menu   (TrKeys          keys);
/* "Ctrl+Z", as this reader's keyboard has it. (transfer full) */
char           *tr_actions_dup_key         (const char     *name);
/* Escape closes the window it is added to. */
GtkEventController *tr_actions_new_close_key (void);
/* All keys, in a window of its own. */
GtkWidget      *tr_actions_new_shortcuts_window (GtkWindow *parent);

G_END_DECLS
