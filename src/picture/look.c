/* look.c: the colours and type of every drawing
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three sets of values for one set of meanings. Fat is always much lighter
 * than dough (at least 3 : 1, so that grey print keeps them apart); what is
 * written or drawn on dough and fat takes the colour `line`, which is dark in
 * every set. tests/picture computes the contrasts (WCAG 2.1, 1.4.3 and
 * 1.4.11).
 */

#include "shapes.h"

/* Both families are free and packaged; pango takes the first that is
 * installed and falls back to whatever there is. */
#define FAMILIES "Cantarell,DejaVu Sans,Sans"

#define RGB(hex) { ((hex) >> 16 & 0xff) / 255.0, ((hex) >> 8 & 0xff) / 255.0, ((hex) & 0xff) / 255.0 }

static const TrLook paper_look = {
  .paper = RGB (0xffffff), .text = RGB (0x1b1917), .dim = RGB (0x5e5a55),
  .dough = RGB (0xb38048), .fat = RGB (0xfff3bd), .line = RGB (0x1b1917), .inner_line = RGB (0x352a1c),
  .worktop = RGB (0xf3f1ee), .accent = RGB (0x14588c), .warning = RGB (0xa32a10),
  .font = FAMILIES, .text_size = 8.5, .is_dark = FALSE, .is_still = TRUE, .device_scale = 0,
};

static const TrLook light_look = {
  .paper = RGB (0xfcfbf9), .text = RGB (0x1f1d1b), .dim = RGB (0x5f5b57),
  .dough = RGB (0xb38048), .fat = RGB (0xfff3bd), .line = RGB (0x1b1917), .inner_line = RGB (0x352a1c),
  .worktop = RGB (0xf5f3ef), .accent = RGB (0x14588c), .warning = RGB (0xa32a10),
  .font = FAMILIES, .text_size = 13, .is_dark = FALSE, .device_scale = 1,
};

static const TrLook dark_look = {
  .paper = RGB (0x1e1d1c), .text = RGB (0xf3f0ec), .dim = RGB (0xb5b0a9),
  .dough = RGB (0xa47d4b), .fat = RGB (0xfbeeb4), .line = RGB (0x0f0d0b), .inner_line = RGB (0x1a140c),
  .worktop = RGB (0x2b2a28), .accent = RGB (0x8cc4f2), .warning = RGB (0xff9a7d),
  .font = FAMILIES, .text_size = 13, .is_dark = TRUE, .device_scale = 1,
};

void
tr_look_init_paper (TrLook *look)
{
  g_return_if_fail (look != NULL);

  *look = paper_look;
}

void
tr_look_init_screen (TrLook   *look,
                     gboolean  dark,
                     gboolean  high_contrast,
                     double    text_size)
{
  g_return_if_fail (look != NULL);
  g_return_if_fail (text_size > 0);

  *look = dark ? dark_look : light_look;
  look->text_size = text_size;
  if (!high_contrast)
    return;

  look->paper = dark ? (TrColour) RGB (0x000000) : (TrColour) RGB (0xffffff);
  look->text = look->dim = dark ? (TrColour) RGB (0xffffff) : (TrColour) RGB (0x000000);
  look->line = look->inner_line = (TrColour) RGB (0x000000);
}

void
tr_cairo_set_colour (cairo_t        *cr,
                     const TrColour *colour)
{
  cairo_set_source_rgb (cr, colour->r, colour->g, colour->b);
}

const TrColour *
tr_look_get_outside (const TrLook  *look,
                     const TrDough *dough)
{
  return dough->lock_in != NULL && dough->lock_in->style == TR_STYLE_INVERSE ? &look->fat : &look->dough;
}
