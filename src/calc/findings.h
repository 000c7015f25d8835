/* findings.h: what is wrong or worth knowing about a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What `value`, `limit`, `with` and `name` hold is said here for each id; the
 * sentence is made in words/finding.c and nowhere else. Whatever is not named
 * for an id is NaN, or NULL.
 *
 * TURN stands for the number of a turn, from 1; 0 is the last roll-out, to the
 * sheet. THICK stands for the field that fixes the thickness there:
 * "/turns/2/thickness_mm" or "/turns/2/length_mm", whichever is written; for
 * the sheet "/cut/thickness_mm" or "/cut/piece_mass_g". LINE is "/lines/3".
 *
 * no-flour          where "/lines".
 *                   with[0] lines in the formula.
 * not-weighed       where: the problem's own.
 *                   with[0] index in formula.problems, whose sentence it is;
 *                   with[1] index of the line, NaN when it is not a line;
 *                   name: the line's ingredient id, or NULL.
 * lock-in-geometry  name says which size cannot be, value is that size in mm:
 *                   "no-fat" (no roll-in fat; where "/lines"), "no-dough"
 *                   (nothing but fat; where "/lines"), "fat-thickness" (0; where
 *                   "/lock_in/fat_thickness_mm"), "fat-width" (0; where
 *                   "/lock_in/fat_width_mm"), "dough-length" (inverse: the rim and
 *                   the width leave no length for the dough block; where
 *                   "/lock_in/rim_mm", or "/lock_in/fat_width_mm" if that is written),
 *                   "trim" (it takes the whole folded block, value is what is left;
 *                   where "/turns/2/trim_mm"). limit 0; with[0] for dough-length and
 *                   trim: the rim or trim in mm that would leave nothing (stay under
 *                   it); with[1] for trim: TURN.
 * turn-thicker      where THICK. value: rolled thickness mm; limit: the block's
 *                   thickness mm before it; with[0] TURN.
 * no-piece          where "/cut". value: dough to be had, g (after loss, of the
 *                   whole batch); limit: g that the smallest sheet with one piece
 *                   needs.
 * amount            name says which reading was chosen:
 *                   "mean"          where LINE/amount; value: the mean that is used;
 *                                   with[0] its TrUnit (of the first part).
 *                   "bare-percent"  where LINE/amount; value: the written number;
 *                                   with[0..2] the whole stage in percent of flour,
 *                                   of dough, of total.
 *                   "assumed-flour" where "/lines"; value: 1000 (g of flour).
 * too-thin          where THICK. value: rolled thickness mm; limit: the rollers'
 *                   thinnest mm; with[0] TURN; with[1] sheet only: the relaxed
 *                   thickness mm that would just do.
 * too-long          where THICK, "/lock_in/blocks" if only dividing helps; a
 *                   sheet: "/cut/rows" if rows are written, else "/cut". value:
 *                   the size mm; limit: the bench's mm;
 *                   name: "worktop-length", "worktop-width" or "roll-width";
 *                   with[0] TURN; with[1] a turn too long: the thickness mm from
 *                   which on it fits (round up), NaN: none, or it is a width;
 *                   with[2] a turn: the smallest number of blocks with which it
 *                   fits, to 12; a sheet: the smallest number of sheets; NaN: none;
 *                   with[3] percent over the limit. Stop over 3 %, else warn.
 * too-thick         where: the field before it: "/lock_in/fat_thickness_mm" for
 *                   turn 1, else THICK of the turn before. value: thickness of the
 *                   block mm; limit: the rollers' widest opening mm; with[0] TURN.
 * mixer             where "/batch/value" ("/batch/by" when as written). value:
 *                   dough_g; limit: mixer_max_g; with[0] mixes needed.
 * salt              where: LINE/amount of the first salt line; none: of the salted
 *                   fat; else "/lines". value: salt_percent; limit: the end of the
 *                   band that is passed; with[0..1] low, high; with[2] points that
 *                   salted fat adds, and name the id of that fat, if it adds 0.3 or
 *                   more and the salt is over its band.
 * band              where: LINE/amount of the first line of that ratio, else
 *                   "/lines". name: the ratio's key ("all_water_percent"); value;
 *                   limit: the end that is passed; with[0..1] low, high.
 * fat-layer         where "/turns". value: fat layer µm at the sheet's thickness
 *                   (inverse: an inner one); limit: the end that is passed;
 *                   with[0..1] low, high; with[2] fat layers.
 * stretch           where THICK; at turn 1 "/lock_in/fat_thickness_mm". value: the
 *                   stretch; limit 4; name: "length" or "width"; with[0] TURN;
 *                   with[1] start mm, with[2] rolled mm in that direction; with[3]
 *                   turn 1 only: the fat thickness mm that brings it to 4 (round
 *                   down), NaN: none.
 * proof-hot         where "/method/steps/4/at_c". value: at_c; limit: proof_max_c;
 *                   name: id of the roll-in fat that bears least.
 * printed-size      where "/cut/printed_sheet_mm". value: thickness mm the mass
 *                   really makes at that size; limit: the thickness mm written (or
 *                   that follows from piece_mass_g); with[0..1] the printed size
 *                   mm; with[2] percent off (signed, of limit).
 * printed-count     where "/pieces_written". value: pieces cut; limit: written.
 * butter-legal      where LINE/ingredient, the first line of each such butter.
 *                   name: its id; value: fat g per 100 g, limit 80; with[0] water g
 *                   per 100 g, with[1] 16 (NaN: that part is not known); with[2] 1
 *                   if the composition is the built-in table's, else 0.
 * legal-minimum     where LINE/amount of the first roll-in line. name: "puff" or
 *                   "danish"; value: roll_in_fat_percent_of_flour; limit: the
 *                   minimum for that name; with[0] danish only: 30, the minimum of
 *                   a plain yeasted laminated pastry.
 * spoon-salt,       where LINE/amount. value: grams as written; name: ingredient
 * spoon-yeast       id; with[0] TrUnit; with[1] how many.
 * cold-chain        where: LINE/ingredient of the first milk, cream or egg. name:
 *                   its id; value: hours above 5 °C by the method (its longest
 *                   times); limit 4; with[0] TrStage (finish, preferment, dough);
 *                   with[1] 1 if it is baked afterwards, else 0. Warn for finish and
 *                   preferment, note for a dough, or a finish, baked afterwards.
 * spare             where "/batch/value". value: pieces over; limit: wanted;
 *                   with[0] pieces cut; with[1] rows; with[2] in a row; with[3] sheets.
 * allergens         where "/lines". value: how many; name: the ids, sorted, with
 *                   commas ("egg,gluten-wheat,milk"; "unknown" among them); NULL: none.
 *
 * REST is "/turns/1/rest/min", the chill before lock-in "/lock_in/rest/min".
 *
 * rest-short        where REST. value: core °C after the written rest; limit: the
 *                   target °C that is written; with[0] the turn it follows, 0 the
 *                   chill before lock-in; with[1] minutes written; with[2] minutes to
 *                   the target, NaN: never.
 * window-short      where: "/turns/2/minutes" of the turn that follows; the sheet:
 *                   "/cut". value: minutes in which the fat can be rolled; limit:
 *                   minutes of that turn (the sheet: of the step, if written);
 *                   with[0] TURN.
 * freezing          where REST. value: minutes written; limit: minutes to surface
 *                   freezing; with[0] as for rest-short.
 *
 * loads needs a plan, and is not found here.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* (transfer full) (element-type TrFinding): sorted worst first, then in the
 * order of the document. */
GPtrArray *tr_findings_compute (const TrDoughFigures *figures);

G_END_DECLS
