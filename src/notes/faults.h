// SPDX-License-Identifier: MIT
// From the words of a fault to a flaw of the record: which kind, where, how many, how bad. Private to the
// room.
#ifndef NOTES_FAULTS_H
#define NOTES_FAULTS_H

#include "notes/degrees.h"
#include "notes/meant.h"
#include "notes/scope.h"

enum { FAULT_KINDS_MOST = 8 };

// One phrase of the note and all kinds that it may name.
struct spot;
struct fault_hit {
    size_t from, to; // tokens
    const struct flaw *kinds[FAULT_KINDS_MOST];
    size_t kind_count;
    bool near;                      // two words with others between
    bool denied;                    // counts only where it is denied
    bool own_no;                    // its "no" belongs to its own words: "no bulb to try it with"
    const struct fault_hit *parted; // of a mend, the break that it mended; NULL where none is told
};

struct fault_reader {
    struct note *note;
    struct scope scope;
    struct fault_hit *hits; // in the order of the note, none inside another
    size_t hit_count;
    struct fault_hit *sounds; // what denies a fault by the rules' `sound`
    size_t sound_count;
    bool *part;                     // one a token: a word for a part of the thing or a place on it
    const struct value **materials; // of the record's attributes, which no fault adds to
    size_t material_count;
};

// kinds.c: before the other functions of that file are called.
void kind_gather_materials(struct fault_reader *reader);

// kind_of_wood.c: the kind that a split of something wooden is, `kind` where it is none. The other two, of
// kinds.c: does a word of the place stand in the list; is the thing, or the part, of what the kind occurs on?
const struct flaw *kind_of_wood(const struct fault_reader *reader, const struct fault_hit *hit,
                                const struct flaw *kind, const char *place);
bool kind_names_one(const char *place, const char *const *words, size_t count);
bool kind_is_plastic(const struct fault_reader *reader); // kind_goods.c, as what else goods are: kind_goods.h
bool kind_note_has(const struct fault_reader *reader, const char *words); // one of those that blanks part
// 'p' where its sentence speaks of paint, 'v' of varnish, 0 of neither or of a covering.
char kind_coat(const struct fault_reader *reader, const struct fault_hit *hit);
bool kind_is_shod(const struct fault_reader *reader, const struct fault_hit *hit); // with corners of metal
bool kind_is_of_material(const struct fault_reader *reader, const struct flaw *kind, const char *place);

// Of the kinds that one phrase may name, the one that this thing can have. `place` may be NULL.
const struct flaw *kind_of_hit(const struct fault_reader *reader, const struct fault_hit *hit,
                               const char *place);
// The same by what its spot names; `*place` is the part or the place that decided.
const struct flaw *kind_at_spot(struct fault_reader *reader, const struct fault_hit *hit,
                                const struct spot *spot, const char **place);
const char *fault_folded(struct note *note, size_t from, size_t to);
// kinds.c: is it a word of a list that blanks part, and is it that material or one of its class?
bool kind_has_word(const char *list, const char *word);
bool kind_names_material(const char *on, const char *material);
// kind_parts.c: the kind that it is by its part; else `kind` itself.
const struct flaw *kind_of_part(const struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind, const char *place);
// "No rust holes": of the holes, and not of the rust; else `kind` itself.
const struct flaw *kind_of_rusted(const struct fault_reader *reader, const struct fault_hit *hit,
                                  const struct flaw *kind);
const struct flaw *kind_pressed(const struct fault_reader *reader, const struct flaw *kind); // of a keyboard
// kind_else.c, as the one before: what the same words are on goods of another sort; else `kind` itself.
const struct flaw *kind_else(const struct fault_reader *reader, const struct fault_hit *hit,
                             const struct flaw *kind, const char *part);
// "Crystal is scratched but not cracked": denied of a part that has the kind, it is the damage by its own
// name.
const struct flaw *kind_beside(const struct fault_reader *reader, const struct fault_hit *hit,
                               const struct flaw *kind, const char *part);

// Is it the kind's own noun or adjective, whole: "blade wear", "sticker or price residue"? No part of it is
// then the part of the thing, and no word of it a degree.
bool kind_is_whole(const struct fault_reader *reader, const struct flaw *kind, const struct fault_hit *hit);
const char *kind_fitting(const char *place); // kind_goods.c: of "cassette door" the door
bool kind_can_be(const struct fault_reader *reader, const struct flaw *kind, const char *place);
// The same for the words [from, to) of a pattern: what their sentence names counts too.
bool kind_fits_words(const struct fault_reader *reader, const struct flaw *kind, size_t from, size_t to);
// Of goods that the rule excludes, where neither its own name nor a word of what it occurs on is said.
bool kind_is_off(const struct fault_reader *reader, const struct phrase_hit *hit);

// spots.c: where it is. Tokens of the place behind the fault or before it, and of the part that is its
// subject.
struct spot {
    size_t where_from, where_to, part_from, part_to; // empty when equal
    const char *which; // of several of that part one is meant: "other", "right", or "" for any; else NULL
};
// places.c: the place that is said of a fault behind it or inside its words, and before it.
size_t spot_place_of(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from);
bool spot_place_before(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
// places_seeming.c: a preposition at `i` with a room, or with what did it, behind it; and with an hour of a
// dial, of which the end is returned, 0 where there is none.
bool place_is_of_room(const struct tokens *tokens, size_t i);
const char *place_of_loss(const struct flaw *kind, const char *where); // without its "from"
size_t place_bare_sides(const struct tokens *tokens, size_t i);        // "both ends"
bool place_is_of_doer(const struct fault_reader *reader, size_t i);
size_t place_of_patch(const struct tokens *tokens, size_t i);
size_t place_before_clause(const struct fault_reader *r, const struct fault_hit *hit, size_t *from);
size_t place_in_clause(const struct tokens *tokens, size_t i);                   // "where it bends", its end
const char *place_itself(const struct fault_reader *r, const struct spot *spot); // not what it is near
size_t place_dial_figure(const struct fault_reader *reader, size_t i);
bool spot_preposition(const struct tokens *tokens, size_t i);
bool spot_adverb(const struct tokens *tokens, size_t i);
bool spot_article(const struct tokens *tokens, size_t i);
// places_seeming.c: is it said by the way, behind a comma: ", the right one, is", ", which is"?
bool place_is_aside(const struct tokens *tokens, size_t at, size_t to);
bool spot_side(const struct tokens *tokens, size_t i); // "back", "left": may stand before "one"
// which.c: whether token `i` says which of several ("second", "small", "biggest"), and the piece of several
// that is the subject before token `i`.
bool spot_tells_which(const struct tokens *tokens, size_t i);
size_t spot_one_of(const struct fault_reader *reader, size_t i); // end of "left one", "right boot"; or 0
bool spot_piece(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
// The same file: the left or right one of parts that the sentence has named.
bool spot_side_of_parts(const struct fault_reader *r, size_t i, struct spot *spot);
// the_other.c: "one strap is missing, the other perished": the part of which there is another.
bool spot_other(const struct fault_reader *r, size_t i, struct spot *spot);
// The counted noun that is the subject: "two ribs are bent".
bool spot_counted(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
// spot_subject.c: a word that begins the clause and that no list has, before token `to`.
bool spot_plain_noun(const struct fault_reader *r, size_t i); // of the word book, and no place
bool spot_plain_subject(const struct fault_reader *r, size_t to, size_t *from);
bool spot_part_of_pronoun(const struct fault_reader *r, size_t i, size_t *from, size_t *to);
bool spot_object_behind(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to);
size_t place_in_brackets(const struct fault_reader *r, size_t i, size_t *from); // place_later.c: "(motor)"
// which.c: of the part at token `noun`, as far as "it" and "they" before the fault tell: "varnish flaking,
// but they're not bowed" is of the thing.
bool spot_agrees(const struct fault_reader *reader, const struct fault_hit *hit, size_t noun);
bool spot_in_phrase(const struct fault_reader *r, const struct fault_hit *hit, size_t i);
bool spot_denied_elsewhere(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct spot *spot);
struct spot spot_of_hit(const struct fault_reader *reader, const struct fault_hit *hit);
// mends.c: the part whose break a mend tells of; then breaks that are no more are dropped.
bool spot_mended(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from, size_t *to);
void mends_settle(struct note *note);
// Does token `i` name what mends, and no part of the thing: "rivets", "a plate"?
bool mends_with(const struct fault_hit *hit, const struct tokens *tokens, size_t i);
// Painting over damage hides it: "chipped and painted over".
bool mends_hide_damage(const struct fault_reader *r, const struct fault_hit *hit);
// lists.c: the other parts of a list that shares the fault at `spot`, LIST_MOST at most; how many.
enum { LIST_MOST = 6 };
size_t spots_listed(const struct fault_reader *reader, const struct fault_hit *hit, const struct spot *spot,
                    struct spot *more);
// "Chip on the spout, no wait, on the base": the place behind token `i`; 0 where none stands there.
size_t spot_place_at(const struct fault_reader *reader, size_t i, size_t *from);
// "Top left", "bottom right": a place without its preposition; where it ends, 0 if none.
size_t spot_bare_place(const struct fault_reader *reader, size_t i);
// elliptical.c: "one finial is glued and the other's missing", where token `i` says that it is not there.
bool read_other_gone(struct fault_reader *r, size_t i);
// symptoms.c: does it tell of the fault before it, and of none beside?
bool fault_is_symptom(const struct fault_reader *r, const struct phrase_hit *hit);
// pieces_named.c: is one of several named in [from, to), and has what follows; how many tokens from `i` name
bool pieces_is_time(const struct tokens *tokens, size_t i);
bool pieces_is_extent(const struct tokens *tokens, size_t i); // or length and weight: "14 inch wide strap"
// one that is not among them, "the smallest".
bool pieces_one_named(const struct fault_reader *r, size_t from, size_t to);
int pieces_number_named(const struct tokens *tokens, size_t i);        // "dents: four"
int pieces_told_apart(const struct tokens *tokens, size_t i, int *of); // "screws missing, two of the three"
void fault_read_hits(struct fault_reader *reader); // what the rules found, one after the other
int pieces_number_opening(const struct fault_reader *r, const struct fault_hit *hit, int *of);
// "At the front of two seats" from token `i` on: how many parts; 0 where none are counted.
int pieces_of_parts(const struct fault_reader *r, size_t i);
int pieces_on_number(const struct fault_reader *r, const struct fault_hit *hit);
int pieces_some_of(const struct fault_reader *r, const struct fault_hit *hit);
size_t pieces_superlative(const struct tokens *tokens, size_t i, int *n);
// repaired.c: the number that was put right behind the fault, 0 if none.
int count_said_again(const struct fault_reader *r, const struct fault_hit *hit);
// The same file: tells the fault at the place, or of the part, that was said instead; false where more was
// taken back.
bool fault_tell_moved(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                      const struct spot *spot);
// place_later.c: "One chip. It's on the rim.": the place told by a statement of its own; 0 where none is.
size_t spot_said_later(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from);
// spots_else.c: who lacks the part; what the clause before the comma is about; what "one" is one of; a place
// that opens the sentence, the end of it, and what is touched for the fault to show.
bool spot_owner(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
bool spot_let_out(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
bool spot_topic(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from, size_t *to);
bool spot_of_object(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from, size_t *to);
bool spot_names_kind(const struct fault_reader *reader, const struct fault_hit *hit, size_t from, size_t to);
size_t spot_narrowed(const struct fault_reader *reader, size_t i, size_t *from); // "only the margins"
bool spot_of_stuff(const struct fault_reader *reader, size_t i, size_t *from,
                   size_t *to); // "enamel on the top"
bool spot_of_verbs(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from, size_t *to);
bool spot_of_one(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
// Does the joint at `i` open a clause with a subject of its own: "and the paint is flaking"?
bool spot_own_clause(const struct tokens *tokens, size_t i);
// Is it said of the whole thing, whatever part stands before: what it smells of, that it won't play?
bool spot_is_of_all(const struct fault_reader *reader, const struct fault_hit *hit);
size_t spot_which_one(const struct tokens *tokens, size_t i); // "the second one": of "one" at `i`, "second"
// Is it said of something else than the subject before the verb at token `verb`?
bool spot_said_apart(const struct fault_reader *reader, const struct fault_hit *hit, size_t verb);
bool spot_of_heading(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                     size_t *to); // "black frame, chipped on one corner"
bool spot_made_hole(const struct tokens *tokens, size_t i);
bool spot_tells_depth(const struct tokens *tokens, size_t i);
// Is it said of one of the parts: "one of the handles is loose", "the other one is frayed"?
bool spot_is_of_one(const struct fault_reader *reader, const struct fault_hit *hit);
// "The knob that covers the gears is loose": the knob, where `*from` to `*to` are the gears.
void spot_of_relative(const struct fault_reader *reader, size_t *from, size_t *to);
bool spot_numbered(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                   size_t *to); // "tape 7 squeals"
// "Sound apart from the foot where it's flaked": the place before "where".
bool spot_of_where(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
size_t spot_fronted(const struct fault_reader *reader, size_t i, size_t *from);
size_t spot_touched(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from);
// The last of the faults that `hit` is listed with, "dents, scratches and rust on the base"; NULL where it is
// in no list or ends it.
const struct fault_hit *spot_listed_before(const struct fault_reader *reader, const struct fault_hit *hit);
// spots.c: what the words around a fault say of its part and place, before either is widened.
struct spot spot_found(const struct fault_reader *reader, const struct fault_hit *hit);
// spots_shared.c: what it has from another fault, by which its `spot` is filled: from the one before it, from
// what it is joined to by "and", from what it is contrasted with, from the list it stands in, and a mend from
// what it mended.
bool spot_take_same(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
bool spot_joined_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to);
bool spot_of_first(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot);
bool spot_of_owned(const struct fault_reader *r, const struct fault_hit *hit,
                   struct spot *spot); // the same file
void spot_share_part(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
void spot_share_contrast(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
void spot_share_place(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
// "A chip on the foot, a bit of rust in that one": where the damage is that it grew in.
bool spot_is_lettering(const struct fault_reader *reader, const struct fault_hit *hit, size_t i);
bool spot_within(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
bool spot_of_whole(const struct fault_reader *reader, const struct fault_hit *hit);
bool spot_of_growth(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
void spot_share_seeming(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
// mends.c: of what came off before it was mended.
bool spot_of_mended(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
void spot_of_damage(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
// spot_words.c: is a part or place word at `i`? How many tokens it takes, 0 if not.
size_t spot_word(const struct fault_reader *reader, size_t i);
bool spot_is_rocker(const struct note *note, size_t i); // of a rocker the part
void spot_mark(struct fault_reader *reader);
// "Sanded it back": is the word no part but the way a deed went?
bool spot_way_back(const struct tokens *tokens, size_t i);
size_t spot_share_of(const struct tokens *tokens, size_t i);
bool spot_inscribes(const struct tokens *tokens, size_t i);
// Is it a word that is nearly always a part or place: "handle", "rim"?
bool spot_usual(const struct token *token);
// "Cracked where it bends": does token `i` only tell a place by what happens there?
bool spot_in_clause(const struct tokens *tokens, size_t i);

// sound_except.c: does something follow from token `i` that a part's being right is not said of? Where it
// begins, 0 if not; tells what is asked of the part as likely there, false where no place is said.
size_t sound_excepts(const struct tokens *tokens, size_t i);
bool sound_tell_except(struct fault_reader *reader, const struct flaw *kind, const char *part, size_t i,
                       size_t behind);
// mono.c: letters on plate and linen.
void read_mono(struct note *note);

// Takes the words of degree and number before the fault: they are in the record with it.
void degrees_take(struct fault_reader *reader, const struct fault_hit *hit);
// A small whole number at token `i`, in figures or words; 0 if none.
int degrees_number(const struct tokens *tokens, size_t i);

// pieces.c: number of faults or pieces; `*of` pieces there are, 0 where not said.
int count_of_hit(const struct fault_reader *reader, const struct fault_hit *hit, int *of);

int pieces_places_within(const struct fault_reader *reader, const struct fault_hit *hit);
int pieces_number_opens(const struct fault_reader *reader, const struct fault_hit *hit, int *of);
// one_of.c: is the fault told by its kind's own noun ("one moth hole"), and not by a word for a state ("one
// torn")?
bool fault_by_noun(const struct fault_reader *reader, const struct fault_hit *hit);
// one_of.c: "three blades, one broken": how many of the parts that were counted before, of `*of`, and the
// words of the part; 0 where none were.
int parts_shared(const struct fault_reader *reader, const struct fault_hit *hit, int *of, size_t *from,
                 size_t *to);

// places.c: a place of damage right behind it that is no known part: "split in the plinth"; where it ends.
size_t spot_unnamed(const struct fault_reader *r, const struct fault_hit *hit, size_t *from);
bool spot_unread(const struct fault_reader *r, size_t i); // bounded.c: a place with no name among the parts
// around.c: a part by the word book; an adjective of a place, no degree; a part with a good word of its own.
bool degree_names_part(const struct fault_reader *r, size_t i);
bool degree_is_of_goods(const struct fault_reader *r, size_t i, size_t n); // "light to carry", of no fault
bool degree_names_place(const struct fault_reader *r, size_t i);
bool degree_opens_praise(const struct fault_reader *r, size_t i);
enum severity degree_weigh(const struct fault_reader *reader, const struct fault_hit *hit,
                           const struct item_flaw *flaw);

// absent.c: "no handle", "knob gone", "missing two screws": what is missing though no rule has its phrase.
void read_absent(struct fault_reader *reader);
// "Gone sticky" up to before token `i`: turned into something, not missing.
bool absent_turns_into(const struct fault_reader *reader, size_t i);
// The kind whose rule names that part as missing; any other part is an accessory.
const struct flaw *absent_kind(struct arena *arena, const struct ruleset *rules, const char *part);

// joined.c: of two hits that tell one fault.
// denial.c: of two words apart, a denial by its own first word, or of what the thing should do: "doesn't …
// shut", "zip will not shut".
bool denial_is_own(const struct fault_reader *reader, const struct fault_hit *hit, size_t cue);
// sound.c: are all there of a part that is named, and not all pieces?
bool count_is_of_part(const struct fault_reader *reader, const struct fault_hit *hit);
bool denial_is_of_rest(const struct note *note, size_t i);  // "no chips elsewhere"
const char *denial_rest(const struct note *note, size_t i); // the same of "on the others"; NULL if of none
// denied_idly.c: why what is denied says nothing of the kind; NULL where it does. A leak of what holds
// nothing.
const char *denial_idle(const struct fault_reader *reader, const struct fault_hit *hit,
                        const struct flaw *kind);
// The same file: "one slat replaced, doesn't match" tells of the new part, and of no set.
bool fault_of_new_part(const struct fault_reader *reader, const struct fault_hit *hit,
                       const struct flaw *kind);
bool fault_is_dead_worm(const struct fault_reader *reader, const struct fault_hit *hit);
bool fault_is_old_cord(struct fault_reader *reader, const struct fault_hit *hit);
bool fault_is_its_effect(const struct fault_reader *reader, const struct fault_hit *hit);
bool fault_is_taken_off(const struct fault_reader *reader, const struct fault_hit *hit);
bool denial_of_leak(const struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind);
// denial.c: is it said of the past alone, "never been chipped"?
bool denial_is_history(const struct fault_reader *reader, const struct fault_hit *hit);
void faults_drop_likeness(struct fault_reader *reader); // likened.c: "a crack, you can put a finger in it"
void faults_join(struct fault_reader *reader);
// gather.c: fills `hits`.
void faults_gather(struct fault_reader *reader);
// faults.c: that it works or is whole; nobody looks for that as for a fault.
bool fault_is_silent(const struct flaw *kind); // unknown.c: nobody denies it
bool fault_is_virtue(const struct flaw *kind);

// fault_part.c: is it another fault of the kind, by a word and a part of its own: in another sentence, in a
// clause behind "and"?
bool fault_is_another(const struct note *note, const struct item_flaw *first, size_t from, size_t to,
                      bool gathers);
// Of the whole and of a part, in two sentences; `back`: behind a word that may stand for the part.
bool fault_is_apart(const struct note *note, const struct item_flaw *other, size_t from, bool back);
bool fault_in_next_clause(const struct note *note, const struct item_flaw *first, size_t from, size_t to);
// faults.c: a flaw of the record, unless it is there already; NULL then.
struct item_flaw *fault_add(struct fault_reader *reader, const struct flaw *kind, const char *part,
                            const char *where, size_t from, size_t to);
void clear_add(struct fault_reader *reader, const struct flaw *kind, const char *part, const char *where,
               bool none_seen, size_t from, size_t to);

// A flaw with all that its clause says of it: doubt, degree, number, size.
void fault_tell(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind,
                const char *part, const char *where);
// What governs a fault; of two words apart the second as well ("paint isn't flaking").
uint16_t fault_stance(const struct fault_reader *reader, const struct fault_hit *hit);
// The words of a place, which are then taken; NULL where there are none.
const char *fault_place(struct note *note, size_t from, size_t to);

// again.c: what was denied and is there all the same: "no chips but one on the foot", "no rust other than
// inside the lid".
void read_again(struct fault_reader *reader);
void read_some_still(struct fault_reader *reader); // some_still.c: of that, what a word stands for
// running.c: "Lamp, works."; and of what does not, whether it is one part of several.
void read_put_to_use(struct fault_reader *reader); // put_to_use.c: tried at its own work
void read_running(struct fault_reader *reader);
void read_coats_lost(struct fault_reader *r);    // coat_lost.c: "the blue has popped off"
void read_tried_it(struct fault_reader *reader); // tried_it.c
// heard.c: "somebody told me it was old but I wouldn't know": where the doubt of what ends before token `to`
// ends; 0 for none.
size_t heard_doubt(const struct note *note, size_t to);
bool running_can(const struct note *note); // goods of which somebody would say so
bool running_is_told(const struct record *record);
const struct flaw *running_partly(const struct fault_reader *reader, const struct fault_hit *hit,
                                  const struct flaw *kind);
// "Works but the case is cracked": is it only said to work, with what has nothing to do with that behind it?
bool running_is_sound(const struct fault_reader *reader, const struct fault_hit *hit,
                      const struct flaw *kind);
// areas.c: "didn't test the advance": without a fault word the area itself was not looked at.
void read_areas(struct fault_reader *reader);
// unseen.c: "didn't unroll it": what stays unknown by what was not done.
void read_unseen(struct fault_reader *reader);
void read_unlifted(struct fault_reader *reader); // unlifted.c
void read_not_used(
    struct fault_reader *reader); // not_used.c: of what was not tried, by the use that was not made
// The kind for what is not known of `kind`: "not sure it works" is not tested; NULL where there is none.
const struct flaw *unknown_kind(const struct fault_reader *reader, const struct fault_hit *hit,
                                const struct flaw *kind);
// untried.c: the parts that "haven't tried the heater or the fan", "motor and pump untested" are said of; how
// many.
size_t untried_parts(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *parts);
// "Needs a battery so can't say": is the part only what one would have tried it with?
bool untried_is_means(const struct fault_reader *reader, const struct fault_hit *hit, const char *part);
// Does the kind itself say that something was not looked at?
bool unknown_is_own(const struct flaw *kind);

// sound.c: what was found to be right denies the fault it would have been: "rings clear", "all buttons
// present".
void read_right(struct fault_reader *reader);
// sound_said.c: the same by the words that the rules have for it under `sound`.
void sound_said_find(struct fault_reader *reader); // before the faults are gathered
// Are the words [from, to) part of one of them?
bool sound_said_holds(const struct fault_reader *reader, size_t from, size_t to);
void read_sound_said(struct fault_reader *reader);
// sound_felt.c: a touch or a sniff and what came of it.
void read_felt(struct fault_reader *reader);
// sound_parts.c: the same of a part: "handle is tight", "zip works", "drawers slide fine".
void read_sound_parts(struct fault_reader *reader);
bool read_watertight(struct fault_reader *reader, size_t i); // watertight.c, with it
bool read_not_through(struct fault_reader *reader, size_t i);
// sound_deeds.c: parts that do what they are for, "popper works".
void read_sound_deeds(struct fault_reader *reader);
// repeats.c: the same fault again without its word: "so is the base", "another in the middle".
void read_repeats(struct fault_reader *reader);
// "…, one as big as a coin on the base": what was told stands at token `i` once more, at a place of its own.
bool fault_told_again(const struct fault_reader *reader, size_t i);
// none_there.c: what was told, and is denied of another place: "none inside", "the front has none".
void read_none_there(struct fault_reader *reader);
void read_but_lacks(struct fault_reader *reader); // "no hands missing but the bird is"
// elliptical.c: "rear cap yes, front cap no", "the lid is there, the key isn't", "nine with screws, three
// without".
void read_elliptical(struct fault_reader *reader);
// functions.c: "the lock doesn't latch", "the fan won't spin".
void read_functions(struct fault_reader *reader);
// What is wrong with the part at token `i` when it does not do what it should; NULL where it is no such part.
const struct flaw *function_kind(const struct fault_reader *reader, size_t i);
// That part, at most a few words before token `i` in its clause.
bool function_part(const struct fault_reader *reader, size_t i, size_t *at);
// "Has a hairline, doesn't move when you press it": of the crack, and no part that should move.
bool function_of_crack(const struct fault_reader *reader, size_t verb, size_t to);
// The part that stands before the words of such a fault, where no rule has its name; NULL if none.
const char *function_place(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind);
// "Lock works fine", "focus works both coarse and fine": what only closes or moves is not tried as a machine
// is; its fault is denied. The part ends at token `to`; NULL where it was not found.
bool function_of_part(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind,
                      size_t to, const char *part);
// "Bail handle bent but works": is the verb at `i` said of a part with a fault?
bool function_is_of_faulty(const struct fault_reader *reader, size_t i);
bool function_moves(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind);
// ailing.c: "the lock plays up", "the drawer needs a good tug", "the switch is dodgy".
void read_ailing(struct fault_reader *reader);
// detached.c: "the hem is coming down", "two ties have come off".
void read_detached(struct fault_reader *reader);
// ill_parts.c: "the edges curl", "keys dull": what no rule knows, by the stuff of the part.
void read_ill_parts(struct fault_reader *reader);
void read_blots(struct fault_reader *reader); // blots.c: spots of which nobody says what made them
// misbehaves.c: "skips stitches", "won't inflate", "reads low".
void read_misbehaves(struct fault_reader *reader);
// halfway.c: "works, sort of", "runs if you hold the lead", "doesn't work well".
void read_halfway(struct fault_reader *reader);
void read_some_ways(struct fault_reader *reader); // some_ways.c
// faculty.c: "no strike", "drags on 45", "it won't rewind": one of the things that it should do.
void read_faculties(struct fault_reader *reader);
// How many tokens of denial stand at `i` ("doesn't", "will not"); whether a word there is what a part does.
size_t function_denial(const struct tokens *tokens, size_t i);
bool function_does(const struct tokens *tokens, size_t i);
// undone.c: "the day wheel doesn't change", "nothing records", "two light, one doesn't".
void read_undone(struct fault_reader *reader);
// ceased.c: "worked until we moved", "used to go, doesn't now", "Working? No."
void read_ceased(struct fault_reader *reader);
// shortfall.c: "should be seven weights, there's six", "only five of the six are here".
void read_shortfall(struct fault_reader *reader);
void read_one_more(struct fault_reader *reader); // one_more.c

// "No box spanners", behind "box" at token `i`: a sort of the goods, and no part of them.
bool absent_is_sort(const struct fault_reader *reader, size_t i);
// What the seller has not got to try it with.
bool absent_is_means(const struct tokens *tokens, size_t cue, size_t to);
bool absent_is_another(const struct tokens *tokens, size_t i, size_t end);
// absent.c: the part of those tokens is missing, said by the words of the cue.
bool absent_is_renamed(const struct fault_reader *r, size_t i); // absent_more.c: "cards? no, bookmarks"
struct item_flaw *absent_tell(struct fault_reader *reader, size_t from, size_t to, size_t cue_from,
                              size_t cue_to);
// How the box around the thing is called.
const char *fault_packing(const struct fault_reader *reader, const struct fault_hit *hit);
// fault_part.c: what `spot` has, unless it is the thing itself, or no part that could have such a fault; else
// the one that the kind's own words name. NULL: none.
void fault_place_of_part(const char **where, const char **part); // where the place holds the part's own noun
// Is it one of `parts`, "other drawer" of "drawers"?
bool fault_is_one_of(const struct fault_reader *r, const char *one, const char *parts);
const char *fault_part(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind,
                       const struct spot *spot, const char *where);
// spot_subject.c: the noun or the side before the part, which says which one it is; the subject of the
// sentence where no list has it as a part.
void spot_widen(const struct fault_reader *reader, struct spot *spot);
void spot_take_subject(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
// "Bubble in the level is dry": what works wrongly opens its clause and is the first of the words that say
// so.
bool spot_opens_with_part(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                          size_t *to);
// "The rails are straight but rusty": what is said behind a "but" is of the same part.
bool spot_of_contrast(const struct fault_reader *reader, size_t i, size_t *from, size_t *to);
// Of words that lists of parts have: no part that could have a fault.
bool spot_portion(const struct tokens *tokens, size_t i); // "a piece of"
bool spot_is_no_part(const char *part);
// "Flap dry and cracked": before token `i` another state of the same part.
bool spot_states_both(const struct fault_reader *reader, size_t i);
// "Leather", "cloth": what a part of another stuff than the thing is called by.
bool spot_is_stuff(const struct tokens *tokens, size_t i);
// "Your finger", "for the record", "no point in hiding it"; there is a word before `part`.
bool spot_is_turn_of_speech(const struct tokens *tokens, size_t part);
// "Has no lid dents": hit `i`, which names what is not there, is the part of the next one. absent.c
bool absent_is_of_part(const struct fault_reader *r, size_t i);
bool absent_has_object(const struct tokens *tokens, const struct fault_hit *hit);
const char *absent_object(struct fault_reader *reader, const struct fault_hit *hit, const char *part);
// The part that the words of a missing accessory name themselves; NULL where they name none.
const char *absent_part_in(struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind);
// absent_kinds.c: of one thing, and no set, is "a piece missing" broken off?
bool absent_is_of_one(const struct fault_reader *r, const struct fault_hit *hit);
// The kind for `count` parts (0 if not said) of this thing that are missing.
const struct flaw *absent_kind_here(const struct fault_reader *reader, const char *part, int count);
bool absent_is_trim(const char *part); // absent_kinds.c
// How many tokens from `i` are a part with its adjectives; 0 if none.
size_t absent_part(const struct fault_reader *reader, size_t i);
// Words that never stand within the name of a part, and what a "no" before it does not make a lack.
bool absent_is_small(const struct tokens *tokens, size_t i);
// absent.c: the place behind what lacks, from token `i` on; how many tokens.
size_t absent_place(const struct note *note, size_t i, const char **where);
bool absent_is_no_part(const char *word);
// absent_more.c: lacks at token `i` that name no part of a list; the token behind, 0 where none is told.
size_t absent_read_lost(struct fault_reader *reader, size_t i);
bool absent_is_figure(const struct fault_reader *reader, size_t i); // the farmer of a toy barn
size_t absent_that_goes(const struct tokens *tokens, size_t i);     // "that goes with it": how many tokens
size_t absent_read_no_thing(struct fault_reader *reader, size_t i);
// "No heat, no fan, nothing" at the second "no": what a machine does not do, and no part that lacks.
bool absent_is_of_deeds(const struct fault_reader *reader, size_t i);
size_t absent_read_few(struct fault_reader *reader, size_t i);
// "Some of the larger" before the noun: its first token, or `noun`; `*count` is 0 where no number is said.
size_t absent_some_of(const struct fault_reader *reader, size_t noun, int *count);
size_t absent_read_size_lost(struct fault_reader *reader, size_t i);
// "Chalk ledge missing": token `i` is "missing"; what lacks has no name in a list.
bool absent_read_plain(struct fault_reader *reader, size_t i);
size_t absent_read_stated(struct fault_reader *reader,
                          size_t i); // "the fine plate and the stomper are missing"

// part_of.c: "the switch on the middle arm": a part with the one that it is on; else `part` itself.
const char *fault_part_of(const struct fault_reader *reader, const struct fault_hit *hit,
                          const struct flaw *kind, const struct spot *spot, const char *part);
bool absent_is_kept(const struct note *note, const char *where,
                    size_t to); // absent_kinds.c: it lies there now
size_t spot_course_end(const struct fault_reader *reader,
                       const struct spot *spot); // part_of.c, as the next two
bool fault_is_as_made(const struct fault_reader *reader, const struct fault_hit *hit,
                      const struct flaw *kind);
// part_of.c: "sun has rotted the one": who did it, and no part.
bool fault_is_doer(const char *part);
bool fault_stands_there(const struct flaw *kind, const char *where); // part_of.c: where it was tried
// worn_pictures.c: of what the thing shows, "the lemons are wearing off": hits of their own.
void worn_pictures_gather(struct fault_reader *reader);
// told_idly.c: does what is told of the part say more of the flaw `known`?
bool fault_is_more_of(const struct note *note, const struct item_flaw *known, const struct flaw *kind,
                      const char *part, size_t from, size_t to);
// The same file: of whichever reader's words, as it should be, or of what was told.
bool fault_is_told_idly(const struct fault_reader *reader, const struct flaw *kind, size_t from, size_t to);
// strangers.c: is it said of a person, a thought, or something of the land and the sky, in a sentence without
// a word for the thing? Then a flaw that is told to nobody; else NULL.
struct item_flaw *fault_of_stranger(struct fault_reader *reader, const struct flaw *kind, size_t from,
                                    size_t to);

// The words of a part or place, without the capital that only begins a sentence.
const char *fault_words(struct note *note, size_t from, size_t to);

// When every fault has been read.
void faults_settle(struct note *note);
void outcome_name(struct note *note); // outcome_names.c

// gather_means.c: do the words mean another thing where they stand?
bool gather_means_other(const struct fault_reader *reader, const struct phrase_hit *hit);
// Inside the name of a part or of goods, or in that of a maker.
bool fault_is_in_name(const struct fault_reader *r, const struct fault_hit *hit);
bool fault_is_called_so(const struct fault_reader *r, const struct fault_hit *hit); // namesakes.c
bool fault_is_in_maker(const struct note *note, const struct fault_hit *hit);
// Is it said of what a case holds, and not of the case?
bool fault_is_of_housed(const struct fault_reader *reader, const struct fault_hit *hit,
                        const struct spot *spot);
// "Some rust but no pitting": is it told there before the "but", and so not to be told as not there?
bool fault_is_there_less(const struct fault_reader *reader, const struct flaw *kind, const char *part,
                         const char *where, size_t from);
// Is any of these words one of a fault that was told, or of an aside?
static inline bool fault_takes_any(const struct fault_reader *reader, size_t from, size_t to) {
    for (size_t i = from; i < to && i < reader->note->tokens.count; i++)
        if (reader->note->taken[i] == TAKEN_FLAW || reader->note->taken[i] == TAKEN_ASIDE) return true;
    return false;
}
// "No mold" of tapes denies mold, and no other way in which a tape goes bad.
static inline bool kind_is_wider_denied(const struct fault_reader *r, const struct fault_hit *hit,
                                        const struct flaw *kind) {
    return text_same(kind->rule.id, "media-degraded") &&
           r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN);
}
// "Fold lines": the fault is no part of its own.
static inline void fault_drop_itself(const struct fault_hit *hit, struct spot *spot) {
    bool meant = text_same(hit->kinds[0]->rule.id, "for-parts"); // "display only"
    bool made = text_same(hit->kinds[0]->rule.id, "drilled-converted") && spot->part_from < hit->from &&
                spot->part_to > hit->from; // "drain [holes drilled]"
    if (meant || made || (spot->part_from <= hit->from && spot->part_to >= hit->to))
        spot->part_from = spot->part_to = 0;
}
// "Dry and cracked" where both are one fault: its words are both.
void fault_join(const struct note *note, struct item_flaw *known, size_t from, size_t to);
// "A split runs along the seat": the verb leads to the place.
void fault_take_course(const struct fault_reader *reader, const struct fault_hit *hit,
                       const struct spot *spot);
// "The case has a broken catch": of the catch.
void fault_take_own_part(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);
void function_take_failing(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot);
void fault_take_part_of_thing(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot);

#endif
