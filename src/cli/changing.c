// SPDX-License-Identifier: MIT
// The clock is read here and only for the ledger: the library reads none.
#include "cli/changing.h"

#include <time.h>

#include "cli/data.h"

const char *changing_ledger(const struct settings *settings) {
    return settings->store ? settings->store : "asfound-ledger.sqlite";
}

static const char *now(struct arena *arena, const struct settings *settings) {
    if (settings->today) return settings->today;
    struct timespec clock;
    struct tm parts;
    char text[32];
    if (clock_gettime(CLOCK_REALTIME, &clock) < 0 || !gmtime_r(&clock.tv_sec, &parts) ||
        !strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts))
        return "";
    return arena_string(arena, text);
}

struct kept {
    struct arena *arena;
    const char *text;
};

static bool keep(void *context, const char *bytes, size_t size) {
    struct kept *kept = context;
    kept->text = arena_copy(kept->arena, bytes, size);
    return true;
}

// Titles can be put back without any rules, so that none are found is no fault here.
static const char *rules_version(struct session *session) {
    struct kept kept = {session->arena, NULL};
    struct asfound_engine_options options = {.data = data_folder_if_any(session)};
    if (options.data) (void)asfound_rules_version(&options, keep, &kept);
    return kept.text;
}

struct asfound_apply_options changing_options(struct session *session, const struct settings *settings) {
    return (struct asfound_apply_options){
        .stock = settings->operands[0],
        .write = settings->shelf.write,
        .ledger = changing_ledger(settings),
        .when = now(session->arena, settings),
        .map = settings->shelf.map,
        .rules = settings->shelf.write ? rules_version(session) : NULL,
        .quiet = session->quiet,
        .color = session->color_messages,
        .out = writer_put,
        .messages = session_put_message,
        .out_context = &session->out,
        .messages_context = session,
    };
}
