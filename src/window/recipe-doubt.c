/* recipe-doubt.c: what is not sure about a line of a recipe
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which button is down follows from the line itself, so that a choice, typing
 * and going back can never disagree.
 */

#include "config.h"

#include "recipe-doubt.h"

#include <glib/gi18n-lib.h>

#include "../words/words.h"
#include "section.h"

struct _TrRecipeDoubt
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *sign;
  GtkWidget *reason;
  GtkWidget *buttons;

  /* Borrowed References */
  TrRecipe *recipe;              /* NULL: detached */
  const TrRecipeStart *start;

  guint line, flag;
  guint is_showing : 1;
};

enum { CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrRecipeDoubt, tr_recipe_doubt, GTK_TYPE_WIDGET)

void
tr_recipe_start_init (TrRecipeStart      *start,
                      const TrRecipeLine *line)
{
  *start = (TrRecipeStart) {
    .ingredient = g_strdup (line->ingredient),
    .amount = g_strdup (line->amount),
    .group = g_strdup (line->group),
    .stage = line->stage,
    .is_in_dough = line->is_in_dough,
  };
}

void
tr_recipe_start_clear (TrRecipeStart *start)
{
  g_clear_pointer (&start->ingredient, g_free);
  g_clear_pointer (&start->amount, g_free);
  g_clear_pointer (&start->group, g_free);
}

char *
tr_recipe_dup_ingredient_name (const char *id)
{
  const TrIngredient *ingredient = id != NULL ? tr_builtin_find (id) : NULL;

  return g_strdup (ingredient != NULL ? tr_words_ingredient (ingredient) : _("Not known"));
}

/* Choices */

static TrRecipeLine *
get_line (TrRecipeDoubt *self)
{
  return g_ptr_array_index (self->recipe->lines, self->line);
}

static TrRecipeFlag *
get_flag (TrRecipeDoubt *self)
{
  return g_ptr_array_index (get_line (self)->flags, self->flag);
}

static const TrRecipeChoice *
get_choice (TrRecipeDoubt *self,
            guint          index)
{
  return g_ptr_array_index (get_flag (self)->choices, index);
}

static gboolean
is_chosen (const TrRecipeLine   *line,
           const TrRecipeChoice *choice)
{
  switch (choice->kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      return g_strcmp0 (line->ingredient, choice->value) == 0;
    case TR_RECIPE_CHOOSE_AMOUNT:
      return g_str_equal (line->amount, choice->value);
    case TR_RECIPE_CHOOSE_STAGE:
      return line->stage == (TrStage) tr_stage_from_id (choice->value);
    case TR_RECIPE_CHOOSE_LEAVE_OUT:
      return !line->is_in_dough;
    case TR_RECIPE_CHOOSE_TAKE_IN:
      return line->is_in_dough;
    default:
      g_return_val_if_reached (FALSE);
    }
}

static gboolean
is_as_read (const TrRecipeLine  *line,
            const TrRecipeStart *start,
            TrRecipeChoiceKind   kind)
{
  switch (kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      return g_strcmp0 (line->ingredient, start->ingredient) == 0;
    case TR_RECIPE_CHOOSE_AMOUNT:
      return g_str_equal (line->amount, start->amount);
    case TR_RECIPE_CHOOSE_STAGE:
      return line->stage == start->stage;
    case TR_RECIPE_CHOOSE_LEAVE_OUT:
    case TR_RECIPE_CHOOSE_TAKE_IN:
    default:
      return line->is_in_dough == start->is_in_dough;
    }
}

/* Only what this doubt is about goes back. */
static void
go_back (TrRecipeDoubt      *self,
         TrRecipeChoiceKind  kind)
{
  switch (kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      tr_recipe_set_ingredient (self->recipe, self->line, self->start->ingredient);
      break;
    case TR_RECIPE_CHOOSE_AMOUNT:
      tr_recipe_set_amount (self->recipe, self->line, self->start->amount);
      break;
    case TR_RECIPE_CHOOSE_STAGE:
      tr_recipe_set_stage (self->recipe, self->line, self->start->stage);
      tr_set_text (&get_line (self)->group, self->start->group);
      break;
    case TR_RECIPE_CHOOSE_LEAVE_OUT:
    case TR_RECIPE_CHOOSE_TAKE_IN:
    default:
      tr_recipe_set_in_dough (self->recipe, self->line, self->start->is_in_dough);
    }
}

/* Words */

static char *
dup_choice_label (const TrRecipeChoice *choice)
{
  switch (choice->kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      return tr_recipe_dup_ingredient_name (choice->value);
    case TR_RECIPE_CHOOSE_AMOUNT:
      return g_strdup (*choice->value != '\0' ? choice->value : _("No amount"));
    case TR_RECIPE_CHOOSE_STAGE:
      return g_strdup (tr_words_stage ((TrStage) tr_stage_from_id (choice->value)));
    case TR_RECIPE_CHOOSE_LEAVE_OUT:
      return g_strdup (_("Leave it out"));
    case TR_RECIPE_CHOOSE_TAKE_IN:
    default:
      return g_strdup (_("Count it"));
    }
}

static char *
dup_taken_label (const TrRecipeStart *start,
                 TrRecipeChoiceKind   kind)
{
  switch (kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      return tr_recipe_dup_ingredient_name (start->ingredient);
    case TR_RECIPE_CHOOSE_AMOUNT:
      return g_strdup (*start->amount != '\0' ? start->amount : _("No amount"));
    case TR_RECIPE_CHOOSE_STAGE:
      return g_strdup (tr_words_stage (start->stage));
    case TR_RECIPE_CHOOSE_LEAVE_OUT:
    case TR_RECIPE_CHOOSE_TAKE_IN:
    default:
      return g_strdup (start->is_in_dough ? _("Count it") : _("Leave it out"));
    }
}

/* Buttons: the first is what was taken, the others are the choices in their order. */

static gboolean
is_down (TrRecipeDoubt *self,
         guint          button)
{
  const TrRecipeLine *line = get_line (self);
  const TrRecipeFlag *flag = get_flag (self);

  if (button > 0)
    return is_chosen (line, get_choice (self, button - 1));
  for (guint i = 0; i < flag->choices->len; i++)
    if (is_chosen (line, get_choice (self, i)) || !is_as_read (line, self->start, get_choice (self, i)->kind))
      return FALSE;

  return TRUE;
}

static void
show (TrRecipeDoubt *self)
{
  guint i = 0;
  gboolean is_open = !get_flag (self)->is_settled && get_flag (self)->choices->len > 0;

  self->is_showing = TRUE;
  for (GtkWidget *button = gtk_widget_get_first_child (self->buttons); button != NULL; button = gtk_widget_get_next_sibling (button))
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), is_down (self, i++));
  self->is_showing = FALSE;

  gtk_label_set_text (GTK_LABEL (self->sign), get_flag (self)->is_settled ? "✓" : is_open ? "?" : "·");
  if (is_open)
    gtk_widget_add_css_class (self->sign, "warn");
  else
    gtk_widget_remove_css_class (self->sign, "warn");
}

static void
toggled_cb (GtkToggleButton *toggled,
            TrRecipeDoubt   *self)
{
  guint index = 0;

  if (self->is_showing || self->recipe == NULL)
    return;

  for (GtkWidget *sibling = gtk_widget_get_prev_sibling (GTK_WIDGET (toggled)); sibling != NULL; sibling = gtk_widget_get_prev_sibling (sibling))
    index++;
  for (guint i = 0; i < get_flag (self)->choices->len; i++)
    go_back (self, get_choice (self, i)->kind);
  if (index > 0)
    tr_recipe_choose (self->recipe, self->line, self->flag, index - 1);
  get_flag (self)->is_settled = TRUE;
  show (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
add_button (TrRecipeDoubt *self,
            char          *label)
{
  g_autofree char *own = label;
  GtkWidget *button = gtk_toggle_button_new_with_label (own);

  gtk_label_set_ellipsize (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), PANGO_ELLIPSIZE_END);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, own,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, get_flag (self)->reason, -1);
  g_signal_connect_object (button, "toggled", G_CALLBACK (toggled_cb), self, 0);
  gtk_widget_insert_before (button, self->buttons, NULL);
}

/* What was taken may itself be one of the choices; it is offered once. */
static void
build_buttons (TrRecipeDoubt *self)
{
  const TrRecipeFlag *flag = get_flag (self);

  if (flag->choices->len == 0)
    return;

  add_button (self, dup_taken_label (self->start, get_choice (self, 0)->kind));
  for (guint i = 0; i < flag->choices->len; i++)
    add_button (self, dup_choice_label (get_choice (self, i)));
  if (get_choice (self, 0)->kind == TR_RECIPE_CHOOSE_INGREDIENT && self->start->ingredient == NULL)
    gtk_widget_set_visible (gtk_widget_get_first_child (self->buttons), FALSE);
}

/* The widget */

static void
tr_recipe_doubt_dispose (GObject *object)
{
  GtkWidget *child;

  TR_RECIPE_DOUBT (object)->recipe = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (tr_recipe_doubt_parent_class)->dispose (object);
}

static void
tr_recipe_doubt_class_init (TrRecipeDoubtClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_recipe_doubt_dispose;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_recipe_doubt_init (TrRecipeDoubt *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->sign = gtk_label_new ("");
  gtk_label_set_width_chars (GTK_LABEL (self->sign), 1);
  gtk_widget_set_valign (self->sign, GTK_ALIGN_START);
  gtk_widget_add_css_class (self->sign, "heading");
  self->reason = tr_words_label_new ("caption");
  gtk_widget_set_hexpand (self->reason, TRUE);
  gtk_box_append (GTK_BOX (row), self->sign);
  gtk_box_append (GTK_BOX (row), self->reason);
  gtk_widget_set_parent (row, GTK_WIDGET (self));

  self->buttons = tr_fields_row_new ();
  gtk_widget_add_css_class (self->buttons, "choices");
  gtk_widget_set_parent (self->buttons, GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 3);
}

GtkWidget *
tr_recipe_doubt_new (TrRecipe            *recipe,
                     guint                line,
                     guint                flag,
                     const TrRecipeStart *start)
{
  g_return_val_if_fail (recipe != NULL && start != NULL, NULL);

  TrRecipeDoubt *self = g_object_new (TR_TYPE_RECIPE_DOUBT, NULL);

  self->recipe = recipe;
  self->line = line;
  self->flag = flag;
  self->start = start;
  tr_words_label_set (self->reason, get_flag (self)->reason);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, get_flag (self)->reason, -1);
  build_buttons (self);
  gtk_widget_set_visible (self->buttons, get_flag (self)->choices->len > 0);
  show (self);

  return GTK_WIDGET (self);
}

void
tr_recipe_doubt_refresh (TrRecipeDoubt *self)
{
  g_return_if_fail (TR_IS_RECIPE_DOUBT (self));

  if (self->recipe != NULL)
    show (self);
}

void
tr_recipe_doubt_detach (TrRecipeDoubt *self)
{
  g_return_if_fail (TR_IS_RECIPE_DOUBT (self));

  self->recipe = NULL;
  self->start = NULL;
}
