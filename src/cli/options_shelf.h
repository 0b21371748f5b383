// SPDX-License-Identifier: MIT
// Values of the options for stock files; each returns what is wrong with it, or NULL.
#ifndef CLI_OPTIONS_SHELF_H
#define CLI_OPTIONS_SHELF_H

#include "cli/options.h"

const char *shelf_take_map(const struct option_value *value);
const char *shelf_take_explain(const struct option_value *value);
const char *shelf_take_older(const struct option_value *value);
const char *shelf_take_views(const struct option_value *value);
const char *shelf_take_earned(const struct option_value *value);
const char *shelf_take_category(const struct option_value *value);
const char *shelf_take_price(const struct option_value *value);
const char *shelf_take_hold(const struct option_value *value);
const char *shelf_take_seed(const struct option_value *value);
const char *shelf_take_jobs(const struct option_value *value);
const char *shelf_take_write(const struct option_value *value);

#endif
