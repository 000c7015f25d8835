/* score-cell.c: one mark, typed as it is read aloud
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: `value` is what was last set or given out; what stands there
 * besides is half a balance ("+") or was refused, and goes with the focus.
 */

#include "config.h"

#include "score-cell.h"

#include <glib/gi18n-lib.h>

#include "section.h"

#define MINUS "\u2212"

struct _TrScoreCell
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *entry;

  int value;
  guint is_balance : 1;
  guint is_setting : 1;
};

enum { SIGNAL_GIVEN, SIGNAL_REFUSED, SIGNAL_LEAVE, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrScoreCell, tr_score_cell, GTK_TYPE_WIDGET)

/* The text ****************************************************************/

static char *
dup_text (TrScoreCell *self)
{
  if (self->value == TR_SCORE_NONE)
    return g_strdup ("");
  if (!self->is_balance || self->value == 0)
    return g_strdup_printf ("%d", self->value);

  return g_strdup_printf ("%s%d", self->value < 0 ? MINUS : "+", ABS (self->value));
}

static void
show_value (TrScoreCell *self)
{
  g_autofree char *text = dup_text (self);

  gtk_widget_remove_css_class (self->entry, "error");
  if (g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    return;

  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
  self->is_setting = FALSE;
}

typedef enum { IS_EMPTY, IS_HALF, IS_MARK, IS_NOTHING } Reading;

static Reading
read_balance (const char *text,
              int        *value)
{
  gunichar sign = g_utf8_get_char (text);
  gboolean is_signed = sign == '+' || sign == '-' || sign == 0x2212;
  const char *digit = is_signed ? g_utf8_next_char (text) : text;

  if (is_signed && *digit == '\0')
    return IS_HALF;
  if (*digit < '0' || *digit > '2' || digit[1] != '\0')
    return IS_NOTHING;

  *value = *digit - '0';
  if (is_signed && sign != '+')
    *value = -*value;

  return IS_MARK;
}

static Reading
read_text (TrScoreCell *self,
           int         *value)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));

  if (*text == '\0')
    return IS_EMPTY;
  if (self->is_balance)
    return read_balance (text, value);
  if (*text < '1' || *text > '9' || text[1] != '\0')
    return IS_NOTHING;

  *value = *text - '0';

  return IS_MARK;
}

static void
give (TrScoreCell *self,
      int          value)
{
  if (self->value == value)
    return;

  self->value = value;
  g_signal_emit (self, signals[SIGNAL_GIVEN], 0, value);
}

static void
leave (TrScoreCell      *self,
       GtkDirectionType  direction)
{
  g_signal_emit (self, signals[SIGNAL_LEAVE], 0, direction);
}

static void
changed_cb (TrScoreCell *self)
{
  int value = TR_SCORE_NONE;

  if (self->is_setting)
    return;

  gtk_widget_remove_css_class (self->entry, "error");
  switch (read_text (self, &value))
    {
    case IS_EMPTY:
      give (self, TR_SCORE_NONE);
      break;
    case IS_HALF:
      break;
    case IS_MARK:
      give (self, value);
      leave (self, GTK_DIR_TAB_FORWARD);
      break;
    case IS_NOTHING:
      gtk_widget_add_css_class (self->entry, "error");
      g_signal_emit (self, signals[SIGNAL_REFUSED], 0, gtk_editable_get_text (GTK_EDITABLE (self->entry)));
      break;
    }
}

/* Keys ********************************************************************/

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrScoreCell           *self)
{
  static const struct { guint key; GtkDirectionType direction; } ways[] = {
    { GDK_KEY_Return, GTK_DIR_TAB_FORWARD }, { GDK_KEY_KP_Enter, GTK_DIR_TAB_FORWARD },
    { GDK_KEY_Up, GTK_DIR_UP }, { GDK_KEY_Down, GTK_DIR_DOWN },
    { GDK_KEY_Left, GTK_DIR_LEFT }, { GDK_KEY_Right, GTK_DIR_RIGHT },
  };

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_Escape)
    {
      gboolean has_more = gtk_widget_has_css_class (self->entry, "error");

      show_value (self);
      return has_more;
    }
  if (keyval == GDK_KEY_BackSpace && *gtk_editable_get_text (GTK_EDITABLE (self->entry)) == '\0')
    {
      leave (self, GTK_DIR_TAB_BACKWARD);
      return TRUE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    if (keyval == ways[i].key)
      {
        leave (self, ways[i].direction);
        return TRUE;
      }

  return FALSE;
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrScoreCell             *self)
{
  /* The focus goes too when the cell is taken away. */
  if (self->entry != NULL)
    show_value (self);
}

void
tr_score_cell_set_value (TrScoreCell *self,
                         int          value)
{
  g_return_if_fail (TR_IS_SCORE_CELL (self));

  /* What is half typed stays while nothing else is to be shown. */
  if (self->value == value)
    return;

  self->value = value;
  show_value (self);
}

int
tr_score_cell_get_value (TrScoreCell *self)
{
  g_return_val_if_fail (TR_IS_SCORE_CELL (self), TR_SCORE_NONE);

  return self->value;
}

static gboolean
tr_score_cell_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_SCORE_CELL (widget)->entry);
}

static void
tr_score_cell_dispose (GObject *object)
{
  g_clear_pointer (&TR_SCORE_CELL (object)->entry, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_score_cell_parent_class)->dispose (object);
}

static void
tr_score_cell_class_init (TrScoreCellClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_score_cell_dispose;
  GTK_WIDGET_CLASS (klass)->grab_focus = tr_score_cell_grab_focus;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);

  signals[SIGNAL_GIVEN] = g_signal_new ("given", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 1, G_TYPE_INT);
  signals[SIGNAL_REFUSED] = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SIGNAL_LEAVE] = g_signal_new ("leave", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 1, GTK_TYPE_DIRECTION_TYPE);
}

static void
tr_score_cell_init (TrScoreCell *self)
{
  self->value = TR_SCORE_NONE;
  self->entry = gtk_entry_new ();
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 3);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 3);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 0.5f);
  gtk_entry_set_max_length (GTK_ENTRY (self->entry), 2);
  /* The document's own undo takes a mark back. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->entry), FALSE);
  tr_entry_set_tabular (GTK_ENTRY (self->entry));
  tr_entry_listen (self->entry, G_CALLBACK (key_pressed_cb), G_CALLBACK (focus_left_cb), self);
  g_signal_connect_object (self->entry, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
}

GtkWidget *
tr_score_cell_new (gboolean    is_balance,
                   const char *accessible_name)
{
  TrScoreCell *self = g_object_new (TR_TYPE_SCORE_CELL, NULL);

  self->is_balance = is_balance != FALSE;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, accessible_name, -1);
  gtk_widget_set_tooltip_text (self->entry, is_balance
                               ? _("−2 far too little, −1 too little, 0 just right, +1 too much, +2 far too much")
                               : _("1 dislike extremely … 5 neither … 9 like extremely"));

  return GTK_WIDGET (self);
}
