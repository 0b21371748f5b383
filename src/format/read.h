// SPDX-License-Identifier: MIT
// Reading whole texts into trees. Each function adds every fault it finds to `diags`, with place and hint, and returns
// what could be read (NULL when nothing could). Depth is limited by LIMIT_DEPTH. Only libyaml's includer is yaml.c.
#ifndef FORMAT_READ_H
#define FORMAT_READ_H

#include "format/tree.h"
#include "text/diag.h"

// One YAML document. No aliases, anchors, tags other than the default, duplicate keys or keys that are not scalars.
// Places are byte offsets in `source` (libyaml counts characters: converted here, with its byte-order mark).
// An empty document gives NULL without a message.
struct node *yaml_read(struct arena *arena, const struct source *source, struct diags *diags);

// One JSON text, strictly RFC 8259: one value, no comments, no trailing commas, no NaN, no lone surrogates; duplicate
// keys refused. Our own reader: no C JSON library in Debian 12 keeps the place of every value.
struct node *json_read(struct arena *arena, const struct source *source, struct diags *diags);

#endif
