/* recipe-line-row.c: a line of a recipe beside what was understood of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything typed or clicked is in the recipe at once; what is shown follows
 * from the line alone.
 */

#include "config.h"

#include "recipe-line-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "actions.h"
#include "ingredient-entry.h"
#include "section.h"

#define MAX_SHOWN_CHARS 600      /* of one line; the rest is kept */
#define GAP 18
#define ROW_GAP 6

struct _TrRecipeLineRow
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *text;
  GtkWidget *understood;         /* the column beside it */
  GtkWidget *fields;
  GtkWidget *amount;
  GtkWidget *ingredient;
  GtkWidget *stage;
  GtkWidget *hydration;          /* of a starter; hidden for others */
  GtkWidget *counts;
  GtkWidget *weight;
  GtkWidget *why;
  GtkWidget *doubts;

  /* Borrowed References */
  TrRecipe *recipe;              /* NULL: detached */
  const TrRecipeStart *start;

  TrReader reader;
  guint line;
  guint is_showing : 1;
};

enum { CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrRecipeLineRow, tr_recipe_line_row, GTK_TYPE_WIDGET)

gboolean
tr_recipe_line_is_clear (const TrRecipeLine *line)
{
  g_return_val_if_fail (line != NULL, FALSE);

  for (guint i = 0; i < line->flags->len; i++)
    {
      const TrRecipeFlag *flag = g_ptr_array_index (line->flags, i);

      if (!flag->is_settled && flag->choices->len > 0)
        return FALSE;
    }

  return line->why == NULL;
}

static TrRecipeLine *
get_line (TrRecipeLineRow *self)
{
  return g_ptr_array_index (self->recipe->lines, self->line);
}

/* Showing */

/* One line for the eye, however long it is. */
static char *
dup_shown_text (const char *text)
{
  g_autofree char *line = tr_words_one_line (text);

  if (g_utf8_strlen (line, -1) <= MAX_SHOWN_CHARS)
    return g_steal_pointer (&line);

  g_autofree char *start = g_utf8_substring (line, 0, MAX_SHOWN_CHARS);

  return g_strconcat (start, "…", NULL);
}

static double
weigh (const TrRecipeLine *line)
{
  const TrIngredient *ingredient = line->ingredient != NULL ? tr_builtin_find (line->ingredient) : NULL;
  TrAmount amount;
  double grams;

  if (ingredient == NULL || !tr_amount_parse (line->amount, &amount, NULL) || tr_unit_is_percent (amount.parts[0].unit)
      || !tr_ingredient_weigh (ingredient, &amount, &grams, NULL))
    return NAN;

  return grams;
}

static gboolean
is_mass (const char *text)
{
  TrAmount amount;

  return tr_amount_parse (text, &amount, NULL) && amount.n_parts == 1 && !isnan (tr_unit_grams (amount.parts[0].unit));
}

/* What it weighs, said once where it is a weight already, and the preferment it is of. */
static void
show_weight (TrRecipeLineRow *self)
{
  const TrRecipeLine *line = get_line (self);
  double grams = weigh (line);
  g_autofree char *mass = isnan (grams) || is_mass (line->amount) ? NULL : tr_words_mass (&self->reader, grams);
  g_autofree char *equal = mass != NULL ? g_strdup_printf (_("= %s"), mass) : NULL;
  g_autofree char *group = line->group != NULL ? tr_words_one_line (line->group) : NULL;

  if (equal != NULL && group != NULL)
    tr_words_label_take (self->weight, g_strdup_printf ("%s · %s", equal, group));
  else
    tr_words_label_set (self->weight, equal != NULL ? equal : group);
}

/* "Line 3: 2 large eggs, understood as Egg, whole, 2 eggs" */
static void
show_name (TrRecipeLineRow *self)
{
  const TrRecipeLine *line = get_line (self);
  g_autofree char *ingredient = tr_recipe_dup_ingredient_name (line->ingredient);
  g_autofree char *name = NULL;

  if (line->why != NULL)
    name = g_strdup_printf (_("Line %u: %s, not understood: %s"), line->number, gtk_label_get_text (GTK_LABEL (self->text)), line->why);
  else
    name = g_strdup_printf (_("Line %u: %s, understood as %s, %s"), line->number, gtk_label_get_text (GTK_LABEL (self->text)),
                            ingredient, *line->amount != '\0' ? line->amount : _("no amount"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
show_entry_text (GtkWidget  *entry,
                 const char *text)
{
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

/* What is typed may be short for what stands in the recipe: "250" for "250 g". */
static void
show_amount (TrRecipeLineRow *self)
{
  g_autofree char *typed = tr_words_complete_amount (&self->reader, gtk_editable_get_text (GTK_EDITABLE (self->amount)));

  if (!g_str_equal (typed, get_line (self)->amount))
    show_entry_text (self->amount, get_line (self)->amount);
}

static void
mark (GtkWidget *widget,
      gboolean   is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (widget, "error");
  else
    gtk_widget_remove_css_class (widget, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
show_why (TrRecipeLineRow *self)
{
  const TrRecipeLine *line = get_line (self);
  TrAmount amount;
  gboolean is_unread = *line->amount != '\0' && !tr_amount_parse (line->amount, &amount, NULL);

  tr_ingredient_entry_set_invalid (TR_INGREDIENT_ENTRY (self->ingredient), line->ingredient == NULL ? line->why : NULL);
  mark (self->amount, is_unread);
  tr_words_label_set (self->why, line->why);
}

static void
show_hydration (TrRecipeLineRow *self)
{
  const TrRecipeLine *line = get_line (self);
  g_autofree char *text = tr_words_write (&self->reader, TR_QUANTITY_PERCENT, line->hydration_percent);

  gtk_widget_set_visible (self->hydration, tr_recipe_line_get_role (line) == TR_ROLE_STARTER);
  if (!gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->hydration)))))
    show_entry_text (self->hydration, text);
}

static void
show (TrRecipeLineRow *self)
{
  const TrRecipeLine *line = get_line (self);

  self->is_showing = TRUE;
  show_amount (self);
  tr_ingredient_entry_set_value (TR_INGREDIENT_ENTRY (self->ingredient), line->ingredient, line->name);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->stage), line->stage);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->counts), line->is_in_dough);
  show_hydration (self);
  show_weight (self);
  show_why (self);
  show_name (self);
  if (line->is_in_dough)
    gtk_widget_remove_css_class (self->text, "dim-label");
  else
    gtk_widget_add_css_class (self->text, "dim-label");
  for (GtkWidget *doubt = gtk_widget_get_first_child (self->doubts); doubt != NULL; doubt = gtk_widget_get_next_sibling (doubt))
    tr_recipe_doubt_refresh (TR_RECIPE_DOUBT (doubt));
  self->is_showing = FALSE;
}

/* Taking */

static gboolean
is_idle (TrRecipeLineRow *self)
{
  return !self->is_showing && self->recipe != NULL;
}

static void
changed (TrRecipeLineRow *self)
{
  show (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
amount_changed_cb (TrRecipeLineRow *self)
{
  if (!is_idle (self))
    return;

  g_autofree char *text = tr_words_complete_amount (&self->reader, gtk_editable_get_text (GTK_EDITABLE (self->amount)));

  if (strlen (text) <= TR_MAX_AMOUNT_BYTES)
    {
      tr_recipe_set_amount (self->recipe, self->line, text);
      changed (self);
    }
  else
    mark (self->amount, TRUE);
}

static void
ingredient_committed_cb (TrRecipeLineRow *self,
                         const char      *id,
                         const char      *text)
{
  if (!is_idle (self))
    return;

  if (id == NULL && text != NULL && *text != '\0')
    tr_set_text (&get_line (self)->name, text);
  tr_recipe_set_ingredient (self->recipe, self->line, id);
  changed (self);
}

static void
stage_selected_cb (TrRecipeLineRow *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->stage));

  if (!is_idle (self) || selected >= TR_N_STAGES)
    return;

  tr_recipe_set_stage (self->recipe, self->line, (TrStage) selected);
  if (selected == TR_STAGE_PREFERMENT)
    tr_set_text (&get_line (self)->group, self->start->group);
  changed (self);
}

static void
counts_toggled_cb (TrRecipeLineRow *self)
{
  if (!is_idle (self))
    return;

  tr_recipe_set_in_dough (self->recipe, self->line, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->counts)));
  changed (self);
}

static void
hydration_changed_cb (TrRecipeLineRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->hydration));
  double percent = NAN;

  if (!is_idle (self))
    return;

  gboolean is_read = *text == '\0' || (tr_words_read (&self->reader, TR_QUANTITY_PERCENT, text, &percent, NULL) && percent >= 0);

  mark (self->hydration, !is_read);
  if (is_read)
    {
      get_line (self)->hydration_percent = percent;
      changed (self);
    }
}

/* Building */

static void
add_doubts (TrRecipeLineRow *self)
{
  for (guint i = 0; i < get_line (self)->flags->len; i++)
    {
      GtkWidget *doubt = tr_recipe_doubt_new (self->recipe, self->line, i, self->start);

      g_signal_connect_object (doubt, "changed", G_CALLBACK (changed), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (self->doubts), doubt);
    }
  gtk_widget_set_visible (self->doubts, get_line (self)->flags->len > 0);
}

static void
name_fields (TrRecipeLineRow *self)
{
  guint number = get_line (self)->number;
  g_autofree char *amount = g_strdup_printf (_("Amount, line %u"), number);
  g_autofree char *ingredient = g_strdup_printf (_("Ingredient, line %u"), number);
  g_autofree char *stage = g_strdup_printf (_("Stage, line %u"), number);
  g_autofree char *hydration = g_strdup_printf (_("Hydration of the starter, line %u"), number);
  g_autofree char *counts = g_strdup_printf (_("Counts, line %u"), number);

  tr_name_by_mnemonic (self->amount, amount);
  tr_ingredient_entry_set_name (TR_INGREDIENT_ENTRY (self->ingredient), ingredient);
  tr_name_by_mnemonic (self->stage, stage);
  tr_name_by_mnemonic (self->hydration, hydration);
  tr_name_by_mnemonic (self->counts, counts);
}

static GtkWidget *
new_stages (void)
{
  GtkStringList *stages = gtk_string_list_new (NULL);

  for (TrStage stage = 0; stage < TR_N_STAGES; stage++)
    gtk_string_list_append (stages, tr_words_stage (stage));

  return gtk_drop_down_new (G_LIST_MODEL (stages), NULL);
}

static GtkWidget *
add_field (TrRecipeLineRow *self,
           GtkWidget       *field)
{
  gtk_widget_set_valign (field, GTK_ALIGN_CENTER);
  gtk_widget_insert_before (field, self->fields, NULL);

  return field;
}

static void
build_fields (TrRecipeLineRow *self)
{
  self->fields = tr_fields_row_new ();
  self->amount = add_field (self, gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->amount), 13);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->amount), 16);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->amount), _("Amount"));
  tr_entry_set_tabular (GTK_ENTRY (self->amount));
  self->ingredient = add_field (self, tr_ingredient_entry_new ());
  self->hydration = add_field (self, gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->hydration), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->hydration), 8);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->hydration), _("Hydration, %"));
  self->stage = add_field (self, new_stages ());
  self->counts = add_field (self, gtk_check_button_new_with_label (_("Counts")));
  self->weight = add_field (self, tr_words_label_new ("dim-label"));
  gtk_label_set_wrap (GTK_LABEL (self->weight), FALSE);

  g_signal_connect_swapped (self->amount, "changed", G_CALLBACK (amount_changed_cb), self);
  g_signal_connect_swapped (self->ingredient, "committed", G_CALLBACK (ingredient_committed_cb), self);
  g_signal_connect_swapped (self->hydration, "changed", G_CALLBACK (hydration_changed_cb), self);
  g_signal_connect_swapped (self->stage, "notify::selected", G_CALLBACK (stage_selected_cb), self);
  g_signal_connect_swapped (self->counts, "toggled", G_CALLBACK (counts_toggled_cb), self);
}

/* Placing: the text beside what was understood where there is room, else above it. */

static int
measure_width (GtkWidget *widget,
               gboolean   is_minimum)
{
  int minimum, natural;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);

  return is_minimum ? minimum : natural;
}

static int
measure_height (GtkWidget *widget,
                int        width)
{
  int height;

  gtk_widget_measure (widget, GTK_ORIENTATION_VERTICAL, MAX (width, measure_width (widget, TRUE)), NULL, &height, NULL, NULL);

  return height;
}

/* The width of the text's column; 0: above. By the ingredient's field, which grows with the letters and is the
 * same in every row. */
static int
get_text_width (TrRecipeLineRow *self,
                int              width)
{
  int text = width / 4;

  if (width < measure_width (self->ingredient, FALSE) * 5 / 2 || text < measure_width (self->text, TRUE)
      || width - text - GAP < measure_width (self->understood, TRUE))
    return 0;

  return text;
}

static void
tr_recipe_line_row_measure (GtkWidget      *widget,
                            GtkOrientation  orientation,
                            int             for_size,
                            int            *minimum,
                            int            *natural,
                            int            *minimum_baseline,
                            int            *natural_baseline)
{
  TrRecipeLineRow *self = TR_RECIPE_LINE_ROW (widget);
  int width = measure_width (self->text, FALSE) + GAP + measure_width (self->understood, FALSE);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (measure_width (self->text, TRUE), measure_width (self->understood, TRUE));
      *natural = width;
      return;
    }

  if (for_size >= 0)
    width = for_size;

  int text = get_text_width (self, width);

  *minimum = *natural = text > 0 ? MAX (measure_height (self->text, text), measure_height (self->understood, width - text - GAP))
                                 : measure_height (self->text, width) + ROW_GAP + measure_height (self->understood, width);
}

static void
tr_recipe_line_row_size_allocate (GtkWidget *widget,
                                  int        width,
                                  int        height,
                                  int        baseline)
{
  TrRecipeLineRow *self = TR_RECIPE_LINE_ROW (widget);
  gboolean is_rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int text = get_text_width (self, width);
  int rest = width - text - GAP;

  if (text > 0)
    {
      gtk_widget_size_allocate (self->text, &(GtkAllocation) { is_rtl ? rest + GAP : 0, 0, text, height }, -1);
      gtk_widget_size_allocate (self->understood, &(GtkAllocation) { is_rtl ? 0 : text + GAP, 0, rest, height }, -1);
      return;
    }

  int above = measure_height (self->text, width);

  gtk_widget_size_allocate (self->text, &(GtkAllocation) { 0, 0, width, above }, -1);
  gtk_widget_size_allocate (self->understood, &(GtkAllocation) { 0, above + ROW_GAP, width, MAX (height - above - ROW_GAP, 0) }, -1);
}

static GtkSizeRequestMode
tr_recipe_line_row_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* The widget */

static void
tr_recipe_line_row_dispose (GObject *object)
{
  TrRecipeLineRow *self = TR_RECIPE_LINE_ROW (object);
  GtkWidget *child;

  tr_recipe_line_row_detach (self);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  self->doubts = NULL;

  G_OBJECT_CLASS (tr_recipe_line_row_parent_class)->dispose (object);
}

static void
tr_recipe_line_row_class_init (TrRecipeLineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_recipe_line_row_dispose;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  widget_class->measure = tr_recipe_line_row_measure;
  widget_class->size_allocate = tr_recipe_line_row_size_allocate;
  widget_class->get_request_mode = tr_recipe_line_row_get_request_mode;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_recipe_line_row_init (TrRecipeLineRow *self)
{
  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);
  self->text = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->text), 0);
  gtk_label_set_yalign (GTK_LABEL (self->text), 0);
  gtk_label_set_wrap (GTK_LABEL (self->text), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->text), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (self->text), 40);
  gtk_widget_set_margin_top (self->text, 6);   /* level with what stands in the fields */
  gtk_widget_set_parent (self->text, GTK_WIDGET (self));

  self->understood = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  build_fields (self);
  self->why = tr_words_label_new ("error");
  self->doubts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->understood), self->fields);
  gtk_box_append (GTK_BOX (self->understood), self->why);
  gtk_box_append (GTK_BOX (self->understood), self->doubts);
  gtk_widget_set_parent (self->understood, GTK_WIDGET (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "recipe-line");
}

GtkWidget *
tr_recipe_line_row_new (TrRecipe            *recipe,
                        guint                line,
                        const TrRecipeStart *start,
                        const TrReader      *reader)
{
  g_return_val_if_fail (recipe != NULL && line < recipe->lines->len, NULL);
  g_return_val_if_fail (start != NULL && reader != NULL, NULL);

  TrRecipeLineRow *self = g_object_new (TR_TYPE_RECIPE_LINE_ROW, NULL);

  self->recipe = recipe;
  self->line = line;
  self->reader = *reader;
  self->start = start;

  g_autofree char *text = dup_shown_text (get_line (self)->text);

  gtk_label_set_text (GTK_LABEL (self->text), text);
  name_fields (self);
  add_doubts (self);
  show (self);

  return GTK_WIDGET (self);
}

void
tr_recipe_line_row_detach (TrRecipeLineRow *self)
{
  g_return_if_fail (TR_IS_RECIPE_LINE_ROW (self));

  self->recipe = NULL;
  self->start = NULL;
  if (self->doubts == NULL)
    return;
  for (GtkWidget *doubt = gtk_widget_get_first_child (self->doubts); doubt != NULL; doubt = gtk_widget_get_next_sibling (doubt))
    tr_recipe_doubt_detach (TR_RECIPE_DOUBT (doubt));
}
