/* figure-item.c: a row of the comparison: a figure, or the heading of a group
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "figure-item.h"

struct _TrFigureItem
{
  GObject parent_instance;

  /* Borrowed References */
  const TrComparable *comparable;

  TrFigureGroup group;
};

G_DEFINE_FINAL_TYPE (TrFigureItem, tr_figure_item, G_TYPE_OBJECT)

static void
tr_figure_item_class_init (TrFigureItemClass *klass)
{
}

static void
tr_figure_item_init (TrFigureItem *self)
{
}

TrFigureItem *
tr_figure_item_new (const TrComparable *comparable,
                    TrFigureGroup       group)
{
  TrFigureItem *self = g_object_new (TR_TYPE_FIGURE_ITEM, NULL);

  self->comparable = comparable;
  self->group = group;

  return self;
}

const TrComparable *
tr_figure_item_get_comparable (TrFigureItem *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_ITEM (self), NULL);

  return self->comparable;
}

TrFigureGroup
tr_figure_item_get_group (TrFigureItem *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_ITEM (self), TR_GROUP_PIECE);

  return self->group;
}
