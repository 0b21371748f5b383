// SPDX-License-Identifier: MIT
// What is wrong with the thing, by readers in their order: each takes words that those behind it then leave.
#include "notes/beside.h"
#include "notes/traces.h"

// "Cracked ice pattern", "rust remover": a word of a fault in a name that is none. One telling a word.
static void tell_barred(struct fault_reader *r) {
    struct note *note = r->note;
    size_t told = 0;
    for (size_t i = 0; i < note->hits.barred_count; i++) {
        const struct phrase_barred *b = &note->hits.barred[i];
        if (b->to > note->tokens.count || b->unless_to > note->tokens.count)
            continue; // a paragraph told before
        bool taken = b->from < told;
        for (size_t k = b->from; k < b->to; k++)
            taken |= note->taken[k] == TAKEN_FLAW || note->taken[k] == TAKEN_SCOPE || r->scope.fault[k];
        if (taken) continue;
        told = b->to;
        note_reading(note, b->from, b->to, arena_format(note->arena, "no flaw: %s", b->flaw->print),
                     "not taken");
        if (note->reading_count)
            note->readings[note->reading_count - 1].stopped =
                arena_format(note->arena, "no fault in '%s'", note_words(note, b->unless_from, b->unless_to));
    }
}

static void read_of_mono(struct fault_reader *r) {
    read_mono(r->note);
}

// What the others stand on: the words of faults, the places and parts beside them, and what governs them.
static void mark_all(struct fault_reader *r) {
    struct note *note = r->note;
    kind_gather_materials(r);
    r->scope.fault = arena_array(note->arena, note->tokens.count + 1, sizeof *r->scope.fault);
    faults_gather(r);
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = r->hits[i].from; k < r->hits[i].to; k++) r->scope.fault[k] = true;
    amounts_mark(r);
    spot_mark(r);
}

static void read_scope(struct fault_reader *r) {
    scope_read(&r->scope, r->note->off);
    read_bystanders(r);
    read_turns(r);
    read_meant(r);
    read_care(r);
}

static void settle_all(struct fault_reader *r) {
    faults_settle(r->note);
}

// In the order in which they may take words from each other; most need no hit of a rule.
static void (*const readers[])(struct fault_reader *) = {
    mark_all,          read_scope,      read_one_more,     read_shreds,      read_tally,       read_roll,
    read_subjects,     read_traces,     read_strays,       read_tails,       read_stand_ins,   read_inscribed,
    read_unread_marks, read_lost_bits,  read_sought_parts, read_coats_lost,  fault_read_hits,  read_again,
    read_sound_said,   read_goes_dead,  read_functions,    read_ailing,      read_detached,    read_ill_parts,
    read_blots,        read_misbehaves, read_halfway,      read_some_ways,   read_faculties,   read_undone,
    read_ceased,       read_running,    read_put_to_use,   read_tried_well,  read_tried_it,    read_repeats,
    read_none_there,   read_absent,     read_right,        read_sound_parts, read_sound_deeds, read_but_lacks,
    read_felt,         read_elliptical, read_so_too,       read_shortfall,   read_sets,        read_company,
    read_of_mono,      read_areas,      read_unseen,       read_not_used,    read_unlifted,    read_overall,
    tell_barred,       settle_all};

const size_t fault_reader_count = sizeof readers / sizeof *readers;

struct fault_reader *faults_begin(struct note *note) {
    struct fault_reader *r = arena_alloc(note->arena, sizeof *r);
    *r = (struct fault_reader){.note = note, .scope = {.note = note}};
    return r;
}

void faults_read(struct fault_reader *r, size_t reader) {
    readers[reader](r);
}
