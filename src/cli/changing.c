// SPDX-License-Identifier: MIT
// The clock is read here and only for the ledger: the library reads none.
#include "cli/changing.h"

#include <time.h>

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

struct asfound_apply_options changing_options(struct session *session, const struct settings *settings) {
    return (struct asfound_apply_options){
        .stock = settings->operands[0],
        .write = settings->shelf.write,
        .ledger = changing_ledger(settings),
        .when = now(session->arena, settings),
        .map = settings->shelf.map,
        .quiet = session->quiet,
        .color = session->color_messages,
        .out = writer_put,
        .messages = session_put_message,
        .out_context = &session->out,
        .messages_context = session,
    };
}
