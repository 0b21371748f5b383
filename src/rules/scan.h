// SPDX-License-Identifier: MIT
// Looking for a finder's words in a text. The rule set is immutable and holds no compiled pattern: each
// scanner (one a worker) compiles what it meets, once, and keeps it. Only scan.c includes PCRE2.
#ifndef RULES_SCAN_H
#define RULES_SCAN_H

#include <stdbool.h>
#include <stdint.h>

#include "rules/model.h"
#include "text/diag.h"

struct scanner;

// Owner: `arena`. Room for the finders of a rule set (ruleset.finder_count).
struct scanner *scanner_new(struct arena *arena, size_t finder_count);

struct span {
    size_t from, to; // bytes, half open
};

enum scan_result { SCAN_NONE, SCAN_FOUND, SCAN_SLOW, SCAN_BROKEN };

// The first match at or after `from`. SCAN_SLOW: the step limit was reached (a finding that names rule and
// text is the caller's); SCAN_BROKEN: the pattern does not compile. `text` must be valid UTF-8.
enum scan_result scanner_find(struct scanner *scanner, const struct finder *finder, const char *text,
                              size_t size, size_t from, struct span *match);
// False when none of the finder's own patterns can match in the text, whatever its words do there; quick.
bool scanner_may_match(struct scanner *scanner, const struct finder *finder, const char *text, size_t size);
// Match limit of PCRE2 for what follows; LIMIT_PATTERN_STEPS unless set.
void scanner_limit(struct scanner *scanner, uint32_t steps);

// Compiles the finder's own patterns only to complain about them, each with its place in `rule`; and all of
// it as one pattern, with its words where it is `whole`: too many of them are no pattern. False when one is
// wrong.
bool finder_check(struct arena *arena, const struct finder *finder, const struct rule *rule, bool whole,
                  struct diags *diags);

#endif
