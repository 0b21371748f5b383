// SPDX-License-Identifier: MIT
// What goods and parts are, as far as it tells of which kind a fault is. Private to the room.
#ifndef NOTES_KIND_GOODS_H
#define NOTES_KIND_GOODS_H

#include "notes/faults.h"

// kind_goods.c: goods that are plated, of a metal that has no rust, of clay or stone; whose paint is no
// picture, of leather, and hard ones, which have no mold.
bool kind_is_metal_coat(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_tin_worn(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_plated(const struct fault_reader *reader);
bool kind_is_rustless(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_porous(const struct fault_reader *reader);
bool kind_is_plain_paint(const struct fault_reader *reader);
bool kind_is_japanned(const struct fault_reader *reader);
bool kind_is_unlined(const struct fault_reader *reader);
bool kind_is_sheet(const struct fault_reader *reader);
bool kind_is_tinware(const struct fault_reader *reader);
bool kind_is_gilding(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_worn_part(const struct fault_reader *reader, const struct fault_hit *hit, const char *place);
bool kind_is_leather(const struct fault_reader *reader, const char *place);
bool kind_is_hard(const struct fault_reader *reader, const char *place);
bool kind_is_by_moth(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_locked(const struct fault_reader *reader);
bool kind_is_hardware(const struct fault_reader *reader);                      // nothing that is worn
bool kind_is_untearable(const struct fault_reader *reader, const char *place); // is hard
bool kind_is_whole_lost(const struct fault_reader *reader, const struct fault_hit *hit); // no bit of it
bool kind_is_mainsless(const struct fault_reader *reader); // has no cord that brings power
bool kind_lies_badly(const struct tokens *tokens, const struct fault_hit *hit);
bool kind_is_bare_handle(const struct fault_reader *r, const struct fault_hit *hit, const char *place);
bool kind_is_picture(const struct fault_reader *reader);
bool kind_is_skin(const struct fault_reader *reader, const char *place);
bool kind_is_box(const struct fault_reader *reader);
bool kind_is_blade_of_paddle(const struct fault_reader *reader);
// The hinge of a lid; corrosion of a battery; the glass of a picture.
bool kind_is_hinge_of_goods(const struct fault_reader *reader, const struct fault_hit *hit,
                            const char *place);
// "The hinge has gone stiff" of a gate: it is not lost.
bool kind_is_turned_hinge(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_by_battery(const struct fault_reader *reader, const struct fault_hit *hit);
// By what brought it about, or by its part alone; NULL where neither says another kind.
const char *kind_of_cause(const struct fault_reader *reader, const struct fault_hit *hit,
                          const struct flaw *kind, const char *place);
bool kind_is_housing(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_metal_said(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_at_seam(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_pane(const struct fault_reader *reader, const char *place);
bool kind_is_fired(const struct fault_reader *reader, const char *place);
bool kind_is_metal(const struct fault_reader *reader, const char *place);
bool kind_is_all_wood(const struct fault_reader *reader);
bool kind_is_other_tray(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_flexed(const struct fault_reader *reader, const struct fault_hit *hit, const char *place);
bool kind_is_rubber(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_unbound(const struct fault_reader *reader);
bool kind_is_woodwork(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_of_veneer(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_wholly_lost(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_of_vessel(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_at_place(const struct fault_reader *reader,
                      const struct fault_hit *hit); // "gold on the knob gone"
bool kind_is_unplated(const struct fault_reader *reader);

#endif
