// SPDX-License-Identifier: MIT
// Not getopt_long(), which is no part of POSIX: an unknown option gets a hint here, and all faults of a line
// are told.
#include "cli/parse.h"

#include <string.h>

#include "text/buf.h"
#include "text/hint.h"

struct parsing {
    struct session *session;
    const struct command *command;
    struct settings *settings;
    int count, at;
    const char *const *words;
    bool fine;
};

static bool has_option(const struct command *command, enum option_id id) {
    return (command->options & OPTION_BIT(id)) != 0;
}

static void fault(struct parsing *p, const char *meant, const char *message) {
    p->fine = false;
    session_complain(p->session, CODE_USAGE, NULL, command_hint(p->session->arena, p->command, meant), "%s",
                     message);
}

static void unknown_option(struct parsing *p, const char *name) {
    struct arena *arena = p->session->arena;
    struct nearest nearest = nearest_start(name);
    for (int id = 0; id < OPTION_COUNT; id++)
        if (has_option(p->command, (enum option_id)id))
            nearest_offer(&nearest, arena_format(arena, "--%s", option_entry((enum option_id)id)->name));
    fault(p, nearest.best, arena_format(arena, "'%s' has no option '%s'", p->command->name, name));
}

static const struct option *find_option(const struct parsing *p, const char *name, size_t size) {
    for (int id = 0; id < OPTION_COUNT; id++) {
        const struct option *option = option_entry((enum option_id)id);
        if (has_option(p->command, (enum option_id)id) && strlen(option->name) == size &&
            strncmp(option->name, name, size) == 0)
            return option;
    }
    return NULL;
}

static bool find_choice(struct parsing *p, const struct option *option, struct option_value *value) {
    struct nearest nearest = nearest_start(value->text);
    struct buf list = buf_start(p->session->arena);
    for (size_t i = 0; option->choices[i]; i++) {
        if (strcmp(option->choices[i], value->text) == 0) {
            value->choice = i;
            return true;
        }
        nearest_offer(&nearest, option->choices[i]);
        const char *joint = !i ? "" : option->choices[i + 1] ? ", " : " or ";
        buf_format(&list, "%s%s", joint, option->choices[i]);
    }
    fault(p, nearest.best,
          arena_format(p->session->arena, "--%s: '%s' is not %s", option->name, value->text, list.at));
    return false;
}

static void take_option(struct parsing *p, const struct option *option, const char *text) {
    struct arena *arena = p->session->arena;
    struct option_value value = {arena, p->settings, text, 0};
    if (option->choices && !find_choice(p, option, &value)) return;
    const char *wrong = option->take(&value);
    if (wrong) fault(p, NULL, arena_format(arena, "--%s: '%s' %s", option->name, text, wrong));
}

static void parse_long(struct parsing *p, const char *word) {
    struct arena *arena = p->session->arena;
    const char *equals = strchr(word, '=');
    size_t size = equals ? (size_t)(equals - word) : strlen(word);
    const struct option *option = find_option(p, word + 2, size - 2);
    if (!option) {
        unknown_option(p, arena_copy(arena, word, size));
    } else if (!option->argument) {
        if (equals)
            fault(p, NULL, arena_format(arena, "--%s takes no value", option->name));
        else
            take_option(p, option, "");
    } else if (equals) {
        take_option(p, option, equals + 1);
    } else if (p->at < p->count) {
        take_option(p, option, p->words[p->at++]);
    } else {
        fault(p, NULL, arena_format(arena, "--%s needs a value, %s", option->name, option->argument));
    }
}

static void parse_short(struct parsing *p, const char *word) {
    for (int id = 0; id < OPTION_COUNT; id++) {
        const struct option *option = option_entry((enum option_id)id);
        if (has_option(p->command, (enum option_id)id) && option->letter &&
            strcmp(option->letter, word + 1) == 0) {
            take_option(p, option, "");
            return;
        }
    }
    unknown_option(p, word);
}

bool parse_arguments(struct session *session, const struct command *command, int count,
                     const char *const *words, struct settings *settings) {
    struct parsing p = {session, command, settings, count, 0, words, true};
    const char **operands = arena_array(session->arena, (size_t)count + 1, sizeof *operands);
    bool only_operands = false;
    while (p.at < count) {
        const char *word = words[p.at++];
        // "-" and "-:ID" are standard input.
        bool operand = word[0] != '-' || !word[1] || word[1] == ':';
        if (only_operands || operand)
            operands[settings->operand_count++] = word;
        else if (strcmp(word, "--") == 0)
            only_operands = true;
        else if (word[1] == '-')
            parse_long(&p, word);
        else
            parse_short(&p, word);
    }
    settings->operands = operands;
    return p.fine;
}
