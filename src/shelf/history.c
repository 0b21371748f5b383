// SPDX-License-Identifier: MIT
// Reading changes nothing: an entry that is still intended is told as that.
#include "shelf/history.h"

#include "format/write.h"
#include "shelf/cell.h"
#include "shelf/ledger.h"

struct writing {
    struct arena *arena;
    struct buf *out;
    bool json;
    size_t count;
};

static void write_line(struct writing *w, struct node *line) {
    json_write(w->out, line);
    buf_byte(w->out, '\n');
}

static struct node *entry_node(struct arena *arena, const struct entry *e) {
    struct node *line = node_map(arena);
    node_put(arena, line, "entry", node_whole(arena, (long long)e->number));
    node_put(arena, line, "kind", node_text(arena, arena_string(arena, e->kind)));
    node_put(arena, line, "state", node_text(arena, arena_string(arena, e->state)));
    node_put(arena, line, "when", node_text(arena, arena_string(arena, e->when)));
    node_put(arena, line, "rules", node_text(arena, arena_string(arena, e->rules)));
    return line;
}

static void take_entry(void *context, const struct entry *e) {
    struct writing *w = context;
    w->count++;
    if (w->json) {
        struct node *line = entry_node(w->arena, e);
        node_put(w->arena, line, "stock", node_text(w->arena, arena_string(w->arena, e->stock)));
        node_put(w->arena, line, "output", node_text(w->arena, arena_string(w->arena, e->output)));
        node_put(w->arena, line, "changes", node_whole(w->arena, (long long)e->changes));
        node_put(w->arena, line, "held", node_whole(w->arena, (long long)e->held));
        write_line(w, line);
        return;
    }
    const char *name = e->output;
    for (const char *c = name; *c; c++)
        if (*c == '/' && c[1]) name = c + 1;
    buf_format(w->out, "entry %lld  %s  %s  %s: %lld title%s, %s -> %s, rules %s", (long long)e->number,
               e->when, e->kind, e->state, (long long)e->changes, e->changes == 1 ? "" : "s", e->stock, name,
               e->rules);
    if (e->held) buf_format(w->out, ", %lld held back", (long long)e->held);
    buf_byte(w->out, '\n');
}

static void take_change(void *context, const struct entry *e, const struct change *c) {
    struct writing *w = context;
    w->count++;
    if (w->json) {
        struct node *line = entry_node(w->arena, e);
        static const char *const keys[] = {"old_earned", "new_earned", "best"};
        node_put(w->arena, line, "id", node_text(w->arena, arena_string(w->arena, c->id)));
        node_put(w->arena, line, "old_title", node_text(w->arena, arena_string(w->arena, c->old_title)));
        node_put(w->arena, line, "new_title", node_text(w->arena, arena_string(w->arena, c->new_title)));
        for (int k = 0; k < 3; k++)
            node_put(w->arena, line, keys[k], node_text(w->arena, arena_string(w->arena, c->earned[k])));
        write_line(w, line);
        return;
    }
    buf_format(w->out, "entry %lld  %s  %s  %s, rules %s\n  - %s\n  + %s\n", (long long)e->number, e->when,
               e->kind, e->state, e->rules, cell_line(w->arena, c->old_title),
               cell_line(w->arena, c->new_title));
    if (*c->earned[2])
        buf_format(w->out, "  earned %s, then %s, of %s\n", c->earned[0], c->earned[1], c->earned[2]);
}

bool history_write(struct arena *arena, const char *path, const char *id, bool json, struct buf *out,
                   struct diags *diags) {
    struct writing w = {arena, out, json, 0};
    struct source source = {path, NULL, 0, 0, 0};
    struct place at = {&source, 0, 0};
    const char *wrong = NULL;
    struct ledger *ledger = ledger_open(arena, path, LEDGER_READ, &wrong);
    if (!ledger) {
        diags_add(diags, CODE_OPEN, at, ledger_hint(wrong), "%s", wrong);
        return true;
    }
    bool fine = id ? ledger_changes(ledger, 0, id, take_change, &w) : ledger_entries(ledger, take_entry, &w);
    if (!fine) diags_add(diags, CODE_READ, at, ledger_hint(ledger_wrong(ledger)), "%s", ledger_wrong(ledger));
    return !fine || w.count || !id;
}
