// SPDX-License-Identifier: MIT
// Reading whole texts into trees. Each function adds the faults it finds to `diags`, with place and hint
// (yaml_read() goes on after a fault that is not one of syntax), and returns NULL when there was any: half a
// record could hide a flaw. Depth is limited by LIMIT_DEPTH. The only includers of libyaml are yaml.c,
// yaml_error and yaml_write.c.
#ifndef FORMAT_READ_H
#define FORMAT_READ_H

#include "format/tree.h"
#include "text/diag.h"

// One YAML document. No aliases, anchors, tags other than the default, duplicate keys or keys that are not
// scalars. Places are byte offsets in `source` (libyaml counts characters: converted here, with its
// byte-order mark). An empty document gives NULL without a message.
struct node *yaml_read(struct arena *arena, const struct source *source, struct diags *diags);

// One JSON text, strictly RFC 8259: one value, no comments, no trailing commas, no NaN, no lone surrogates;
// duplicate keys refused. Our own reader: no C JSON library in Debian 12 keeps the place of every value.
struct node *json_read(struct arena *arena, const struct source *source, struct diags *diags);

#endif
