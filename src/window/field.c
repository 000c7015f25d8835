/* field.c: a labelled control bound to one value of the trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariants: the accessible name is on the control and on whatever in it
 * takes the focus; the error stands under the control, in words, and the
 * control is marked invalid for as long as it does.
 */

#include "config.h"

#include "field.h"

#include "member.h"

typedef struct
{
  /* Children */
  GtkWidget *control;
  GtkWidget *label;              /* NULL: bare, likewise below */
  GtkWidget *unit;
  GtkWidget *error_label;

  /* Owned */
  char *name;
  char *context;
  char *error;

  /* State */
  guint item;
} TrFieldPrivate;

enum { PROP_0, PROP_ERROR, N_PROPS };
static GParamSpec *properties[N_PROPS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (TrField, tr_field, GTK_TYPE_WIDGET)

static TrFieldPrivate *
get_private (TrField *self)
{
  return tr_field_get_instance_private (self);
}

static void
tr_field_get_property (GObject    *object,
                       guint       prop_id,
                       GValue     *value,
                       GParamSpec *pspec)
{
  if (prop_id == PROP_ERROR)
    g_value_set_string (value, tr_field_get_error (TR_FIELD (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static gboolean
tr_field_grab_focus (GtkWidget *widget)
{
  TrFieldPrivate *priv = get_private (TR_FIELD (widget));

  return priv->control != NULL && gtk_widget_grab_focus (priv->control);
}

/* Only the control takes part: going back from it GTK would ask the field
 * itself, whose focus is the control's, and never get out. */
static gboolean
tr_field_focus (GtkWidget        *widget,
                GtkDirectionType  direction)
{
  TrFieldPrivate *priv = get_private (TR_FIELD (widget));

  return priv->control != NULL && gtk_widget_child_focus (priv->control, direction);
}

static void
tr_field_dispose (GObject *object)
{
  TrFieldPrivate *priv = get_private (TR_FIELD (object));
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  priv->control = priv->label = priv->unit = priv->error_label = NULL;

  G_OBJECT_CLASS (tr_field_parent_class)->dispose (object);
}

static void
tr_field_finalize (GObject *object)
{
  TrFieldPrivate *priv = get_private (TR_FIELD (object));

  g_free (priv->name);
  g_free (priv->context);
  g_free (priv->error);

  G_OBJECT_CLASS (tr_field_parent_class)->finalize (object);
}

static void
tr_field_class_init (TrFieldClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_field_dispose;
  object_class->finalize = tr_field_finalize;
  object_class->get_property = tr_field_get_property;
  widget_class->focus = tr_field_focus;
  widget_class->grab_focus = tr_field_grab_focus;

  properties[PROP_ERROR] =
    g_param_spec_string ("error", NULL, NULL, NULL,
                         G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_field_init (TrField *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 3);
}

/* Building */

static GtkWidget *
new_dim_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "dim-label");

  return label;
}

static void
build_label (TrFieldPrivate *priv,
             const char     *label,
             const char     *tooltip)
{
  priv->label = new_dim_label (label);
  gtk_label_set_wrap (GTK_LABEL (priv->label), TRUE);
  gtk_widget_set_tooltip_text (priv->label, tooltip);
}

static void
build_unit (TrFieldPrivate *priv)
{
  priv->unit = new_dim_label ("");
  gtk_widget_set_visible (priv->unit, FALSE);
}

static void
build_error (TrFieldPrivate *priv)
{
  priv->error_label = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (priv->error_label), 0);
  gtk_label_set_wrap (GTK_LABEL (priv->error_label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (priv->error_label), 32);
  gtk_label_set_width_chars (GTK_LABEL (priv->error_label), 12);
  gtk_widget_add_css_class (priv->error_label, "error");
  gtk_widget_set_visible (priv->error_label, FALSE);
}

static void
build_beside (TrField        *self,
              TrFieldPrivate *priv)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_hexpand (priv->label, TRUE);
  gtk_label_set_width_chars (GTK_LABEL (priv->unit), 5);
  /* Forms of one page line up with each other. */
  gtk_label_set_width_chars (GTK_LABEL (priv->label), 18);
  gtk_widget_set_visible (priv->unit, TRUE);
  gtk_box_append (GTK_BOX (row), priv->label);
  gtk_box_append (GTK_BOX (row), priv->control);
  gtk_box_append (GTK_BOX (row), priv->unit);
  gtk_widget_set_parent (row, GTK_WIDGET (self));
  gtk_widget_set_parent (priv->error_label, GTK_WIDGET (self));
}

static void
build_above (TrField        *self,
             TrFieldPrivate *priv)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_add_css_class (priv->label, "caption");
  gtk_label_set_wrap (GTK_LABEL (priv->label), FALSE);
  gtk_box_append (GTK_BOX (row), priv->control);
  gtk_box_append (GTK_BOX (row), priv->unit);
  gtk_widget_set_parent (priv->label, GTK_WIDGET (self));
  gtk_widget_set_parent (row, GTK_WIDGET (self));
  gtk_widget_set_parent (priv->error_label, GTK_WIDGET (self));
}

static void
set_accessible_name (GtkWidget  *control,
                     const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  /* The text inside an entry is what takes the focus. */
  if (GTK_IS_EDITABLE (control) && gtk_editable_get_delegate (GTK_EDITABLE (control)) != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (GTK_EDITABLE (control))),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  /* So does the button inside a drop-down, which GTK names after its type. */
  if (GTK_IS_DROP_DOWN (control))
    gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (control)),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
update_accessible_name (TrFieldPrivate *priv)
{
  if (priv->control == NULL)
    return;

  g_autofree char *name = priv->context != NULL ? g_strdup_printf ("%s: %s", priv->context, priv->name) : g_strdup (priv->name);

  set_accessible_name (priv->control, name);
}

void
tr_field_build (TrField      *self,
                TrFieldShape  shape,
                const char   *label,
                const char   *tooltip,
                GtkWidget    *control)
{
  g_return_if_fail (TR_IS_FIELD (self));
  g_return_if_fail (label != NULL);
  g_return_if_fail (GTK_IS_WIDGET (control));

  TrFieldPrivate *priv = get_private (self);

  g_return_if_fail (priv->control == NULL);

  priv->control = control;
  priv->name = g_strdup (label);
  gtk_widget_set_tooltip_text (control, tooltip);
  update_accessible_name (priv);

  if (shape == TR_FIELD_BARE)
    {
      gtk_widget_set_parent (control, GTK_WIDGET (self));
      return;
    }

  build_error (priv);
  if (shape == TR_FIELD_TABLE)
    {
      gtk_widget_set_parent (control, GTK_WIDGET (self));
      gtk_widget_set_parent (priv->error_label, GTK_WIDGET (self));
      return;
    }

  build_unit (priv);
  build_label (priv, label, tooltip);
  if (shape == TR_FIELD_BESIDE)
    build_beside (self, priv);
  else
    build_above (self, priv);
}

GtkWidget *
tr_field_get_control (TrField *self)
{
  g_return_val_if_fail (TR_IS_FIELD (self), NULL);

  return get_private (self)->control;
}

void
tr_field_set_unit (TrField    *self,
                   const char *unit)
{
  g_return_if_fail (TR_IS_FIELD (self));

  TrFieldPrivate *priv = get_private (self);

  if (priv->unit == NULL)
    return;

  gtk_label_set_text (GTK_LABEL (priv->unit), unit != NULL ? unit : "");
  gtk_widget_set_visible (priv->unit, unit != NULL || gtk_label_get_width_chars (GTK_LABEL (priv->unit)) > 0);
}

static void
mark_invalid (TrFieldPrivate *priv)
{
  gboolean is_invalid = priv->error != NULL;

  if (is_invalid)
    gtk_widget_add_css_class (priv->control, "error");
  else
    gtk_widget_remove_css_class (priv->control, "error");

  gtk_accessible_update_state (GTK_ACCESSIBLE (priv->control), GTK_ACCESSIBLE_STATE_INVALID,
                               is_invalid ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (priv->control), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  is_invalid ? priv->error : "", -1);
}

void
tr_field_set_error (TrField    *self,
                    const char *error)
{
  g_return_if_fail (TR_IS_FIELD (self));

  TrFieldPrivate *priv = get_private (self);

  if (!tr_set_text (&priv->error, error) || priv->control == NULL)
    return;

  mark_invalid (priv);
  if (priv->error_label != NULL)
    {
      gtk_label_set_text (GTK_LABEL (priv->error_label), error != NULL ? error : "");
      gtk_widget_set_visible (priv->error_label, error != NULL);
    }
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_ERROR]);
}

const char *
tr_field_get_error (TrField *self)
{
  g_return_val_if_fail (TR_IS_FIELD (self), NULL);

  return get_private (self)->error;
}

void
tr_field_set_item (TrField *self,
                   guint    item)
{
  g_return_if_fail (TR_IS_FIELD (self));

  get_private (self)->item = item;
}

guint
tr_field_get_item (TrField *self)
{
  g_return_val_if_fail (TR_IS_FIELD (self), 0);

  return get_private (self)->item;
}

void
tr_field_set_context (TrField    *self,
                      const char *context)
{
  g_return_if_fail (TR_IS_FIELD (self));

  TrFieldPrivate *priv = get_private (self);

  if (tr_set_text (&priv->context, context))
    update_accessible_name (priv);
}

TrPage *
tr_field_get_page (TrField *self)
{
  g_return_val_if_fail (TR_IS_FIELD (self), NULL);

  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

/* At the field it need not be said where; nor does it hold "null". */
static char *
dup_refusal (const char *message,
             const char *pointer)
{
  g_autofree char *where = g_strdup_printf ("At %s ", pointer);

  if (!g_str_has_prefix (message, where))
    return g_strdup (message);

  GString *refusal = g_string_new (message + strlen (where));

  refusal->str[0] = g_ascii_toupper (refusal->str[0]);
  g_string_replace (refusal, " or null", " or nothing", 1);

  return g_string_free (refusal, FALSE);
}

gboolean
tr_field_commit (TrField    *self,
                 TrTrial    *draft,
                 const char *label,
                 gboolean    joins)
{
  g_autoptr (TrTrial) own = draft;
  TrPage *page = tr_field_get_page (self);
  g_autofree char *where = page != NULL ? TR_FIELD_GET_CLASS (self)->dup_pointer (self) : NULL;

  g_return_val_if_fail (where != NULL, FALSE);

  const TrDough *dough = tr_page_get_dough (page);
  g_autofree char *pointer = tr_where_in_document (tr_page_get_dough_index (page), where);
  g_autofree char *key = g_strconcat (dough != NULL ? dough->id : "", where, NULL);
  g_autoptr (GError) error = NULL;
  gboolean is_done = tr_document_commit (tr_page_get_document (page), g_steal_pointer (&own), label,
                                         joins ? key : NULL, pointer, &error);

  g_autofree char *refusal = is_done ? NULL : dup_refusal (error->message, pointer);

  tr_field_set_error (self, refusal);

  return is_done;
}

gboolean
tr_field_take_back (TrField  *self,
                    gboolean  only_ask)
{
  g_return_val_if_fail (TR_IS_FIELD (self), FALSE);

  TrFieldClass *klass = TR_FIELD_GET_CLASS (self);

  return klass->take_back != NULL && klass->take_back (self, only_ask);
}

gboolean
tr_fields_take_back (GtkWindow *window,
                     gboolean   only_ask)
{
  g_return_val_if_fail (GTK_IS_WINDOW (window), FALSE);

  GtkWidget *focus = gtk_window_get_focus (window);
  GtkWidget *field = focus != NULL ? gtk_widget_get_ancestor (focus, TR_TYPE_FIELD) : NULL;

  return field != NULL && tr_field_take_back (TR_FIELD (field), only_ask);
}

/* All fields below a widget */

typedef gboolean (*TrFieldVisit) (TrField *field, gpointer data);

/* TRUE: the visitor has found what it looked for. */
static gboolean
visit_fields (GtkWidget    *root,
              TrFieldVisit  visit,
              gpointer      data)
{
  if (TR_IS_FIELD (root))
    return visit (TR_FIELD (root), data);

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (visit_fields (child, visit, data))
      return TRUE;

  return FALSE;
}

static gboolean
visit_refresh (TrField  *field,
               gpointer  data)
{
  TR_FIELD_GET_CLASS (field)->refresh (field);
  return FALSE;
}

void
tr_fields_refresh (GtkWidget *root)
{
  g_return_if_fail (GTK_IS_WIDGET (root));

  visit_fields (root, visit_refresh, NULL);
}

/* GTK would focus what is hidden as well. A page that is not on top is no such thing. */
static gboolean
grab_visible (TrField *field)
{
  for (GtkWidget *w = GTK_WIDGET (field); w != NULL && !TR_IS_PAGE (w); w = gtk_widget_get_parent (w))
    if (!gtk_widget_get_visible (w))
      return FALSE;

  return gtk_widget_grab_focus (GTK_WIDGET (field));
}

static gboolean
visit_exact (TrField  *field,
             gpointer  data)
{
  g_autofree char *pointer = TR_FIELD_GET_CLASS (field)->dup_pointer (field);

  return g_strcmp0 (pointer, data) == 0 && grab_visible (field);
}

static gboolean
visit_inside (TrField  *field,
              gpointer  data)
{
  g_autofree char *pointer = TR_FIELD_GET_CLASS (field)->dup_pointer (field);
  g_autofree char *prefix = g_strconcat (data, "/", NULL);

  return pointer != NULL && g_str_has_prefix (pointer, prefix) && grab_visible (field);
}

gboolean
tr_fields_go_to (GtkWidget  *root,
                 const char *pointer)
{
  g_return_val_if_fail (GTK_IS_WIDGET (root), FALSE);
  g_return_val_if_fail (pointer != NULL, FALSE);

  if (visit_fields (root, visit_exact, (gpointer) pointer))
    return TRUE;

  return *pointer != '\0' && visit_fields (root, visit_inside, (gpointer) pointer);
}
