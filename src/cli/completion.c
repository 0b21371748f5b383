// SPDX-License-Identifier: MIT
// Completion for bash 3.2 and later, without its helper library. Bash splits at '=', so --format=j arrives as
// three words.
#include "cli/help.h"

static const char HEAD[] =
    "# Made by asfound help --completion\n"
    "_asfound() {\n"
    "    local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD - 1]} words='' kind='' word IFS=$' "
    "\\t\\n'\n"
    "    if [[ $cur == '=' ]]; then cur=''\n"
    "    elif [[ $prev == '=' && COMP_CWORD -gt 1 ]]; then prev=${COMP_WORDS[COMP_CWORD - 2]}\n"
    "    fi\n"
    "    COMPREPLY=()\n";

// Names are read line by line: they may hold blanks and stars.
static const char TAIL[] =
    "    local give=(-W \"$words\")\n"
    "    if [[ $kind == folder ]]; then give=(-d)\n"
    "    elif [[ $kind == file && $cur != -* ]]; then give=(-f)\n"
    "    fi\n"
    "    [[ ${give[0]} == -W ]] || compopt -o filenames 2> /dev/null\n"
    "    while IFS= read -r word; do COMPREPLY+=(\"$word\"); done < <(compgen \"${give[@]}\" -- \"$cur\")\n"
    "}\n"
    "complete -F _asfound asfound\n";

static void option_values(struct buf *out) {
    buf_text(out, "    case $prev in\n");
    for (int id = 0; id < OPTION_COUNT; id++) {
        const struct option *option = option_entry((enum option_id)id);
        if (!option->argument) continue;
        buf_format(out, "        --%s) ", option->name);
        if (option->choices) {
            buf_text(out, "words='");
            for (size_t i = 0; option->choices[i]; i++)
                buf_format(out, "%s%s", i ? " " : "", option->choices[i]);
            buf_byte(out, '\'');
        } else if (option->completes == COMPLETES_NOTHING) {
            buf_text(out, "return");
        } else {
            buf_text(out, option->completes == COMPLETES_FOLDERS ? "kind=folder" : "kind=file");
        }
        buf_text(out, " ;;\n");
    }
}

static void add_commands(struct buf *out) {
    const struct command *command;
    for (size_t i = 0; (command = command_at(i)) && command->run; i++) buf_format(out, "%s ", command->name);
}

static void first_words(struct buf *out) {
    buf_text(out, "        *)\n            if [[ COMP_CWORD -eq 1 ]]; then words='");
    add_commands(out);
    buf_text(out, "--help --version'\n            else\n                case ${COMP_WORDS[1]} in\n");
}

static void command_words(struct buf *out, const struct command *command) {
    buf_format(out, "                    %s) words='", command->name);
    if (command->takes_command) add_commands(out);
    for (size_t i = 0; command->words && command->words[i]; i++) buf_format(out, "%s ", command->words[i]);
    for (int id = 0; id < OPTION_COUNT; id++)
        if (command->options & OPTION_BIT(id))
            buf_format(out, "--%s ", option_entry((enum option_id)id)->name);
    buf_format(out, "'%s ;;\n", command->takes_files ? " kind=file" : "");
}

void help_completion(struct buf *out) {
    buf_text(out, HEAD);
    option_values(out);
    first_words(out);
    const struct command *command;
    for (size_t i = 0; (command = command_at(i)) && command->run; i++) command_words(out, command);
    buf_text(out, "                esac\n            fi ;;\n    esac\n");
    buf_text(out, TAIL);
}
