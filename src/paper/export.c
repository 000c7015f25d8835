/* export.c: papers and pictures as PDF, PNG and SVG
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything is drawn into memory first, then written to temporary files
 * beside the targets, and only when the last of them is whole are they
 * renamed: an error leaves the folder as it was. Nothing in a file depends on
 * the time, so the same pages give the same bytes.
 */

#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "paper.h"

#define PNG_DPI 150.0
/* Any constant will do; a reader shows it as the day the file was made. */
#define CREATION_DATE "2026-01-01T00:00:00Z"

/* What is to be written: pictures, each a page. */
typedef struct {
  const char *title;
  GPtrArray *pages;              /* const TrPicture *, borrowed */
} Sheets;

typedef enum { FORMAT_PDF, FORMAT_PNG, FORMAT_SVG, N_FORMATS } Format;

static const char *const extensions[N_FORMATS] = { ".pdf", ".png", ".svg" };

/* One file to be. */
typedef struct {
  char *path, *temporary;        /* temporary NULL: not written yet */
  GByteArray *bytes;
} Output;

static void
output_free (gpointer data)
{
  Output *output = data;

  if (output->temporary != NULL)
    g_unlink (output->temporary);
  g_free (output->temporary);
  g_free (output->path);
  g_byte_array_unref (output->bytes);
  g_free (output);
}

static Output *
output_new (char *path)
{
  Output *output = g_new0 (Output, 1);

  output->path = path;
  output->bytes = g_byte_array_new ();
  return output;
}

static const TrPicture *
get_page (const Sheets *pages,
          guint        page)
{
  return g_ptr_array_index (pages->pages, page);
}

static cairo_status_t
append_bytes (void                *closure,
              const unsigned char *data,
              unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static gboolean
find_format (const char  *path,
             Format      *format,
             GError     **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);

  for (int i = 0; i < N_FORMATS; i++)
    if (g_str_has_suffix (lower, extensions[i]))
      {
        *format = (Format) i;
        return TRUE;
      }
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_FILENAME,
               _("“%s” does not say which kind of file to make; its name must end in .pdf, .png or .svg."), path);
  return FALSE;
}

/* "X.png", "X-2.png", … */
static char *
dup_page_path (const char *path,
               guint       page)
{
  size_t stem = strlen (path) - 4;

  return page == 0 ? g_strdup (path) : g_strdup_printf ("%.*s-%u%s", (int) stem, path, page + 1, path + stem);
}

/* Whether the surface took everything; destroys it. */
static gboolean
finish_surface (cairo_surface_t  *surface,
                cairo_t          *cr,
                const char       *path,
                GError          **error)
{
  cairo_status_t status = cairo_status (cr);

  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _("“%s” could not be drawn: %s."), path, cairo_status_to_string (status));
  return FALSE;
}

static gboolean
draw_pdf (const Sheets    *pages,
          Output         *output,
          GError        **error)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  tr_picture_get_size (get_page (pages, 0), &width, &height);
  surface = cairo_pdf_surface_create_for_stream (append_bytes, output->bytes, width, height);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, pages->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Tourier");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, CREATION_DATE);
  cr = cairo_create (surface);
  for (guint i = 0; i < pages->pages->len; i++)
    {
      tr_picture_draw (get_page (pages, i), cr);
      cairo_show_page (cr);
    }
  return finish_surface (surface, cr, output->path, error);
}

/* cairo names the page's group for how many surfaces the process has made. */
static void
name_page_group (GByteArray *bytes)
{
  static const char group[] = "<g id=\"surface", name[] = "<g id=\"page";
  const char *at = g_strstr_len ((const char *) bytes->data, bytes->len, group);
  guint start, end;

  if (at == NULL)
    return;
  start = (guint) (at - (const char *) bytes->data);
  for (end = start + (guint) strlen (group); end < bytes->len && g_ascii_isdigit (bytes->data[end]);)
    end++;
  memcpy (bytes->data + start, name, strlen (name));
  g_byte_array_remove_range (bytes, start + (guint) strlen (name), end - start - (guint) strlen (name));
}

static gboolean
draw_svg (const Sheets    *pages,
          guint           page,
          Output         *output,
          GError        **error)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  tr_picture_get_size (get_page (pages, page), &width, &height);
  surface = cairo_svg_surface_create_for_stream (append_bytes, output->bytes, width, height);
  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PT);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
  tr_picture_draw (get_page (pages, page), cr);
  if (!finish_surface (surface, cr, output->path, error))
    return FALSE;
  name_page_group (output->bytes);
  return TRUE;
}

/* CRC-32 as PNG wants it (ISO 3309; W3C PNG, annex D). */
static guint32
find_crc (const guint8 *data,
          gsize         length)
{
  guint32 crc = 0xffffffff;

  for (gsize i = 0; i < length; i++)
    {
      crc ^= data[i];
      for (int bit = 0; bit < 8; bit++)
        crc = crc & 1 ? 0xedb88320 ^ (crc >> 1) : crc >> 1;
    }
  return ~crc;
}

static void
put_big_endian (guint8  *bytes,
                guint32  value)
{
  value = GUINT32_TO_BE (value);
  memcpy (bytes, &value, sizeof value);
}

/* Says how large the page is on paper, which cairo does not: a pHYs chunk (W3C
 * PNG, 11.3.5.3) after the signature and the header. */
static void
add_resolution (GByteArray *bytes)
{
  enum { AFTER_HEADER = 8 + 25, LENGTH = 9, CHUNK = 4 + 4 + LENGTH + 4 };
  guint8 chunk[CHUNK] = { 0, 0, 0, LENGTH, 'p', 'H', 'Y', 's' };
  guint32 pixels_a_metre = (guint32) (PNG_DPI / 0.0254 + 0.5);
  guint rest = bytes->len - AFTER_HEADER;

  put_big_endian (chunk + 8, pixels_a_metre);
  put_big_endian (chunk + 12, pixels_a_metre);
  chunk[16] = 1;
  put_big_endian (chunk + 17, find_crc (chunk + 4, 4 + LENGTH));
  g_byte_array_set_size (bytes, bytes->len + CHUNK);
  memmove (bytes->data + AFTER_HEADER + CHUNK, bytes->data + AFTER_HEADER, rest);
  memcpy (bytes->data + AFTER_HEADER, chunk, CHUNK);
}

static gboolean
draw_png (const Sheets    *pages,
          guint           page,
          Output         *output,
          GError        **error)
{
  double width, height, scale = PNG_DPI / 72;
  cairo_surface_t *surface;
  cairo_t *cr;

  tr_picture_get_size (get_page (pages, page), &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (width * scale + 0.5), (int) (height * scale + 0.5));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  tr_picture_draw (get_page (pages, page), cr);
  cairo_surface_flush (surface);
  if (cairo_status (cr) == CAIRO_STATUS_SUCCESS)
    cairo_surface_write_to_png_stream (surface, append_bytes, output->bytes);
  if (!finish_surface (surface, cr, output->path, error))
    return FALSE;
  add_resolution (output->bytes);
  return TRUE;
}

/* (element-type Output), drawn but not yet written; NULL on error. */
static GPtrArray *
draw_all (const Sheets    *pages,
          const char     *path,
          Format          format,
          GError        **error)
{
  g_autoptr (GPtrArray) outputs = g_ptr_array_new_with_free_func (output_free);
  guint n = format == FORMAT_PDF ? 1 : pages->pages->len;

  for (guint i = 0; i < n; i++)
    {
      Output *output = output_new (dup_page_path (path, i));
      gboolean done;

      g_ptr_array_add (outputs, output);
      if (format == FORMAT_PDF)
        done = draw_pdf (pages, output, error);
      else if (format == FORMAT_SVG)
        done = draw_svg (pages, i, output, error);
      else
        done = draw_png (pages, i, output, error);
      if (!done)
        return NULL;
    }
  return g_steal_pointer (&outputs);
}

static gboolean
fail (const char  *path,
      int          number,
      GError     **error)
{
  g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (number), _("“%s” could not be written: %s."), path, g_strerror (number));
  return FALSE;
}

static gboolean
write_all (int         file,
           GByteArray *bytes)
{
  gsize done = 0;

  while (done < bytes->len)
    {
      gssize now = write (file, bytes->data + done, bytes->len - done);

      if (now < 0 && errno != EINTR)
        return FALSE;
      done += now > 0 ? (gsize) now : 0;
    }
  return TRUE;
}

static gboolean
write_temporary (Output  *output,
                 GError **error)
{
  int file, number = 0;

  if (g_file_test (output->path, G_FILE_TEST_IS_DIR))
    return fail (output->path, EISDIR, error);
  output->temporary = g_strconcat (output->path, ".XXXXXX", NULL);
  file = g_mkstemp_full (output->temporary, O_WRONLY, 0666);
  if (file < 0)
    {
      number = errno;
      g_clear_pointer (&output->temporary, g_free);
      return fail (output->path, number, error);
    }
  if (!write_all (file, output->bytes))
    number = errno;
  if (close (file) < 0 && number == 0)
    number = errno;
  return number == 0 ? TRUE : fail (output->path, number, error);
}

static gboolean
put_in_place (Output  *output,
              GError **error)
{
  if (g_rename (output->temporary, output->path) < 0)
    return fail (output->path, errno, error);
  g_clear_pointer (&output->temporary, g_free);
  return TRUE;
}

static gboolean
export_pages (const Sheets  *pages,
              const char   *path,
              GError      **error)
{
  g_autoptr (GPtrArray) outputs = NULL;
  Format format;

  if (!find_format (path, &format, error))
    return FALSE;
  outputs = draw_all (pages, path, format, error);
  if (outputs == NULL)
    return FALSE;
  for (guint i = 0; i < outputs->len; i++)
    if (!write_temporary (g_ptr_array_index (outputs, i), error))
      return FALSE;
  for (guint i = 0; i < outputs->len; i++)
    if (!put_in_place (g_ptr_array_index (outputs, i), error))
      return FALSE;
  return TRUE;
}

gboolean
tr_pages_export (const TrPages  *pages,
                 const char     *path,
                 GError        **error)
{
  g_autoptr (GPtrArray) pictures = g_ptr_array_new ();

  g_return_val_if_fail (pages != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  for (guint i = 0; i < tr_pages_count (pages); i++)
    g_ptr_array_add (pictures, (gpointer) tr_pages_get (pages, i));
  if (pictures->len == 0)
    {
      Format format;

      if (find_format (path, &format, error))
        g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, _("There is nothing to make a page of."));
      return FALSE;
    }
  return export_pages (&(Sheets) { tr_pages_get_title (pages), pictures }, path, error);
}

gboolean
tr_picture_export (const TrPicture  *picture,
                   const char       *title,
                   const char       *path,
                   GError          **error)
{
  g_autoptr (GPtrArray) pictures = g_ptr_array_new ();

  g_return_val_if_fail (picture != NULL, FALSE);
  g_return_val_if_fail (title != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  g_ptr_array_add (pictures, (gpointer) picture);
  return export_pages (&(Sheets) { title, pictures }, path, error);
}
