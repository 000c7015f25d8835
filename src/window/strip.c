/* strip.c: the current dough in one line, at the foot of the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figures that matter, and a button that opens the findings and shows the
 * sign of the worst. The findings themselves are a page of their own.
 */

#include "config.h"

#include "strip.h"

#include <glib/gi18n-lib.h>

#include "findings.h"

struct _TrStrip
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *figures;
  GtkWidget *sign;
  GtkWidget *button;
};

G_DEFINE_FINAL_TYPE (TrStrip, tr_strip, TR_TYPE_PAGE)

static void
refresh_sign (TrStrip              *self,
              const TrDoughFigures *figures)
{
  const TrFinding *worst = tr_findings_get_worst (figures);
  TrSeverity severity = worst != NULL ? worst->severity : TR_SEVERITY_NOTE;
  g_autofree char *sentence = worst != NULL ? tr_words_finding (tr_page_get_reader (TR_PAGE (self)), figures, worst) : NULL;

  gtk_image_set_from_icon_name (GTK_IMAGE (self->sign),
                                worst != NULL ? tr_findings_get_icon_name (severity) : "object-select-symbolic");
  for (TrSeverity i = TR_SEVERITY_NOTE; i <= TR_SEVERITY_STOP; i++)
    gtk_widget_remove_css_class (self->sign, tr_severity_id (i));
  gtk_widget_add_css_class (self->sign, tr_severity_id (severity));
  gtk_widget_set_tooltip_text (self->button, sentence);
}

static void
tr_strip_refresh (TrPage *page)
{
  TrStrip *self = TR_STRIP (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  g_autofree char *text = figures != NULL ? tr_words_strip (tr_page_get_reader (page), figures) : g_strdup ("");

  gtk_label_set_label (GTK_LABEL (self->figures), text);
  refresh_sign (self, figures);
}

static void
tr_strip_class_init (TrStripClass *klass)
{
  TR_PAGE_CLASS (klass)->refresh = tr_strip_refresh;
}

static GtkWidget *
new_findings_button (TrStrip *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->sign = gtk_image_new ();
  gtk_box_append (GTK_BOX (box), self->sign);
  gtk_box_append (GTK_BOX (box), gtk_label_new (_("Findings")));
  self->button = gtk_toggle_button_new ();
  gtk_button_set_child (GTK_BUTTON (self->button), box);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->button), "win.show-findings");
  gtk_widget_set_valign (self->button, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Findings"), -1);

  return self->button;
}

static void
tr_strip_init (TrStrip *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->figures = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->figures), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->figures), 0);
  gtk_widget_set_hexpand (self->figures, TRUE);
  gtk_widget_add_css_class (self->figures, "figures");
  gtk_box_append (GTK_BOX (box), self->figures);
  gtk_box_append (GTK_BOX (box), new_findings_button (self));
  tr_page_set_child (TR_PAGE (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "strip");
}

GtkWidget *
tr_strip_new (void)
{
  return g_object_new (TR_TYPE_STRIP, NULL);
}

const char *
tr_strip_get_text (TrStrip *self)
{
  g_return_val_if_fail (TR_IS_STRIP (self), NULL);

  return gtk_label_get_label (GTK_LABEL (self->figures));
}
