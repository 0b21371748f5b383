// SPDX-License-Identifier: MIT
// Place words as a phrase that ends "There is a stain …".
//
// A where is read from the left: words that are adverbs already stay ("inside", "all over"); what begins with
// a preposition stays and gets the article it lacks ("near base": near the base); anything else is a part of
// the thing and gets its own preposition ("rim": on the rim; "middle": in the middle; "end": at the end).
// Members of a list share a preposition where they have the same one. The words themselves are never
// exchanged.
#include <string.h>

#include "say/say.h"
#include "text/buf.h"
#include "text/order.h"

enum { WORDS_MOST = 40 }; // a longer where is a sentence and is left alone

struct token {
    const char *at;
    size_t size;
    bool comma; // or semicolon behind it
};
struct tokens {
    struct token at[WORDS_MOST];
    size_t count;
};

#define LENGTH(list) (sizeof(list) / sizeof *(list))

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
static bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}
static bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}

static bool is_word(const struct token *token, const char *word) {
    for (size_t i = 0; i < token->size; i++) {
        char c = is_upper(token->at[i]) ? (char)(token->at[i] + ('a' - 'A')) : token->at[i];
        if (c != word[i]) return false; // also where the word ends
    }
    return !word[token->size];
}

static bool in_list(const struct token *token, const char *const *list, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (is_word(token, list[i])) return true;
    return false;
}

static bool is_joint(const struct token *token) {
    return is_word(token, "and") || is_word(token, "&") || is_word(token, "or");
}

static bool is_article(const struct token *token) {
    return is_word(token, "the") || is_word(token, "a") || is_word(token, "an");
}

static const char *const determiners[] = {
    "the",  "a",       "an",     "this",   "that",  "these",   "those", "its",    "their",  "his",
    "her",  "my",      "one",    "two",    "three", "four",    "five",  "six",    "seven",  "eight",
    "nine", "ten",     "eleven", "twelve", "both",  "each",    "every", "either", "all",    "some",
    "any",  "several", "many",   "few",    "most",  "another", "half",  "no",     "various"};

static bool is_cardinal(const struct token *token) {
    for (size_t i = 0; i < token->size; i++)
        if (!is_digit(token->at[i]) && !strchr(".,/-", token->at[i])) return false;
    return true;
}

static bool is_determiner(const struct token *token) {
    if (is_cardinal(token)) return true;
    bool owner = token->size > 2 && is_upper(token->at[0]) && !memcmp(token->at + token->size - 2, "'s", 2);
    if (owner) return true; // a name's; but "the shepherd's crook"
    return in_list(token, determiners, LENGTH(determiners));
}

// Always a preposition at the head of a where.
static const char *const prepositions[] = {
    "near",    "under",  "on",     "in",      "at",        "by",         "along",      "beside",  "behind",
    "between", "above",  "below",  "around",  "across",    "through",    "against",    "beneath", "amid",
    "among",   "within", "toward", "towards", "beyond",    "throughout", "underneath", "upon",    "onto",
    "into",    "from",   "to",     "atop",    "alongside", "over",       "up",         "down"};
// A preposition only where a determiner follows: "round the rim", but "round base".
static const char *const also_adjectives[] = {"inside", "outside", "round", "opposite"};
// Within a phrase they open a new noun: "side near handle".
static const char *const inner_prepositions[] = {
    "of",      "near",    "under",   "on",     "in",         "at",     "by",
    "along",   "beside",  "behind",  "above",  "below",      "around", "across",
    "through", "against", "beneath", "inside", "underneath", "from",   "with"};
// They stand before a preposition or a noun and change neither.
static const char *const leads[] = {"mostly",  "mainly", "especially", "also",    "only",
                                    "partly",  "just",   "slightly",   "halfway", "particularly",
                                    "partway", "nearly", "almost"};
static const char *const adverbs[] = {"inside",    "underneath", "throughout", "everywhere", "overall",
                                      "elsewhere", "beneath",    "below",      "above",      "behind",
                                      "nearby",    "halfway",    "within",     "alongside"};
static const char *const adverb_phrases[] = {
    "all over",   "all around",     "all round",   "here and there", "in places",
    "in spots",   "in parts",       "in patches",  "in front",       "on top",
    "halfway up", "halfway down",   "in between",  "in part",        "in one piece",
    "in and out", "inside and out", "upside down", "in transit",     "around and about"};
static const char *const takes_in[] = {"middle", "center",  "centre",   "crazing",    "weave",     "grain",
                                       "gutter", "recess",  "groove",   "grooves",    "crevice",   "crevices",
                                       "crease", "creases", "hollow",   "well",       "place",     "places",
                                       "spots",  "areas",   "interior", "background", "foreground"};
static const char *const takes_at[] = {"end", "ends", "waist", "joint", "joints", "join", "joins", "tip"};
// Parts whose capital is only the start of a note; any other capital may be a name.
static const char *const common_parts[] = {
    "rim",     "base",      "lid",    "handle", "top",     "bottom", "back",  "front", "side",
    "sides",   "edge",      "edges",  "corner", "corners", "foot",   "neck",  "spout", "body",
    "cover",   "spine",     "hinge",  "label",  "left",    "right",  "upper", "lower", "outer",
    "inner",   "seam",      "seams",  "collar", "handles", "legs",   "leg",   "lip",   "bowl",
    "outside", "underside", "middle", "center", "centre",  "end",    "ends",  "face",  "case",
    "frame",   "strap",     "blade",  "first",  "last",    "pages",  "page"};

static bool is_preposition(const struct tokens *t, size_t i) {
    const struct token *token = &t->at[i];
    if (in_list(token, prepositions, LENGTH(prepositions))) return true;
    if (i + 1 < t->count && is_determiner(&t->at[i + 1]) &&
        in_list(token, also_adjectives, LENGTH(also_adjectives)))
        return true;
    return i + 1 < t->count && (is_word(token, "next") || is_word(token, "close")) &&
           is_word(&t->at[i + 1], "to");
}

// "inside lid" is inside the lid, but the "inside rim" is a rim of its own.
static bool is_inside_of_part(const struct tokens *t, size_t i, size_t end) {
    static const char *const faces[] = {"rim",  "edge",  "edges", "lip",     "corner", "corners", "seam",
                                        "wall", "walls", "face",  "surface", "leg",    "pocket",  "label",
                                        "page", "side",  "sides", "cover",   "of"};
    return is_word(&t->at[i], "inside") && i + 1 < end && !in_list(&t->at[end - 1], faces, LENGTH(faces)) &&
           !in_list(&t->at[i + 1], faces, LENGTH(faces));
}

static bool split(struct tokens *t, const char *text) {
    for (;;) {
        text += strspn(text, " \t\n");
        if (!*text) return true;
        if (t->count == WORDS_MOST) return false;
        struct token *token = &t->at[t->count++];
        token->at = text;
        token->size = strcspn(text, " \t\n");
        text += token->size;
        while (token->size > 1 && strchr(",;", token->at[token->size - 1]))
            token->comma = true, token->size--;
        if (!text[strspn(text, " \t\n")])
            while (token->size > 1 && token->at[token->size - 1] == '.') token->size--;
    }
}

static bool is_phrase(const struct tokens *t, size_t from, size_t to, const char *phrase) {
    for (size_t i = from; i < to; i++) {
        size_t size = t->at[i].size;
        if (!size) return false;
        for (size_t k = 0; k < size; k++) {
            char c = t->at[i].at[k];
            if ((is_upper(c) ? (char)(c + ('a' - 'A')) : c) != phrase[k]) return false;
        }
        phrase += size;
        if (*phrase && *phrase != ' ') return false;
        if (*phrase == ' ') phrase++;
    }
    return !*phrase;
}

static bool is_adverb(const struct tokens *t, size_t from, size_t to) {
    if (to - from == 1 && in_list(&t->at[from], adverbs, LENGTH(adverbs))) return true;
    for (size_t i = 0; i < LENGTH(adverb_phrases); i++)
        if (is_phrase(t, from, to, adverb_phrases[i])) return true;
    return false;
}

// One member of a list: tokens [from, to).
struct member {
    size_t from, to;
};
// What the member before left open for the next.
struct state {
    const char *preposition; // NULL after an adverb
    bool the;                // and whether it brought an article
};

static bool is_known(const struct token *token) {
    return in_list(token, common_parts, LENGTH(common_parts)) ||
           in_list(token, prepositions, LENGTH(prepositions)) ||
           in_list(token, also_adjectives, LENGTH(also_adjectives)) || in_list(token, leads, LENGTH(leads)) ||
           in_list(token, adverbs, LENGTH(adverbs)) || in_list(token, determiners, LENGTH(determiners));
}

static void put_token(struct buf *out, const struct token *token, bool first) {
    if (out->n) buf_byte(out, ' ');
    bool plain = first && token->size > 1 && is_upper(token->at[0]) && is_lower(token->at[1]);
    if (plain && is_known(token)) {
        buf_byte(out, (char)(token->at[0] + ('a' - 'A')));
        buf_add(out, token->at + 1, token->size - 1);
    } else
        buf_add(out, token->at, token->size);
}

static void put_word(struct buf *out, const char *word) {
    if (out->n) buf_byte(out, ' ');
    buf_text(out, word);
}

// Behind a determiner the same words are adjectives: "the inside rim", "one near corner".
static bool is_inner(const struct tokens *t, size_t from, size_t i) {
    return i > from && !is_determiner(&t->at[i - 1]) &&
           in_list(&t->at[i], inner_prepositions, LENGTH(inner_prepositions));
}

// Where the noun group that starts at `from` ends: before the next preposition.
static size_t group_end(const struct tokens *t, size_t from, size_t to) {
    size_t end = from;
    while (end < to && !is_inner(t, from, end)) end++;
    return end;
}

// "page 12", "leg 2", "plate IV" name themselves.
static bool is_numbered(const struct tokens *t, size_t from, size_t end) {
    if (end - from < 2) return false;
    const struct token *last = &t->at[end - 1];
    if (is_cardinal(last)) return true;
    for (size_t i = 0; i < last->size; i++)
        if (!strchr("IVXLC", last->at[i])) return false;
    return true;
}

// Written "in pencil": what it is written with, and no place that takes an article.
static const char *const media[] = {"pencil", "ink",    "pen",   "ballpoint", "biro",
                                    "crayon", "marker", "chalk", "paint"};

static bool wants_the(const struct tokens *t, size_t from, size_t to) {
    const struct token *token = &t->at[from];
    if (from && is_word(&t->at[from - 1], "in") &&
        in_list(&t->at[group_end(t, from, to) - 1], media, LENGTH(media)))
        return false;
    bool of = from + 1 < to && is_word(&t->at[from + 1], "of");
    if (of && (is_word(token, "part") || is_word(token, "parts") || is_word(token, "much"))) return false;
    return !is_determiner(token) && !is_numbered(t, from, group_end(t, from, to));
}

// Puts noun groups with the articles they lack. Returns whether the first brought one.
static bool put_nouns(struct buf *out, const struct tokens *t, size_t from, size_t to, bool first,
                      bool shared_the) {
    bool the = from < to && wants_the(t, from, to), open = the;
    if (from < to && is_word(&t->at[from], "the")) the = true;
    if (open && !shared_the) put_word(out, "the");
    for (size_t i = from; i < to; i++) {
        put_token(out, &t->at[i], first && i == from);
        bool next_opens = is_inner(t, from, i) && i + 1 < to && !is_inner(t, from, i + 1);
        // "under the paint in places", "underneath in spots"
        bool fixed = (i + 1 < to && is_adverb(t, i, i + 2)) || (i + 2 == to && is_adverb(t, i, to));
        if (next_opens && !fixed && wants_the(t, i + 1, to)) put_word(out, "the");
        if (t->at[i].comma && i + 1 < to) buf_byte(out, ',');
    }
    return the;
}

// "Pencil at the top": a name in pencil stands there.
static bool is_medium(const struct tokens *t, size_t from, size_t to) {
    return from + 1 < to && in_list(&t->at[from], media, LENGTH(media)) && is_inner(t, from, from + 1);
}

static const char *preposition_for(const struct tokens *t, size_t from, size_t to) {
    size_t end = group_end(t, from, to);
    const struct token *head = &t->at[end - 1];
    if (in_list(head, takes_at, LENGTH(takes_at))) return "at";
    bool raised = end > from + 1 && (is_word(head - 1, "high") || is_word(head - 1, "raised"));
    if (in_list(head, takes_in, LENGTH(takes_in)) && !raised) return "in"; // but "on the high spots"
    return is_word(head, "spot") && is_determiner(&t->at[from]) ? "in" : "on";
}

static bool has_to(const struct tokens *t, size_t from, size_t to) {
    return to - from == 3 && is_word(&t->at[from + 1], "to");
}

// An empty preposition in the state: whatever opened the phrase holds for the nouns that follow.
static struct state put_prepositional(struct buf *out, const struct tokens *t, struct member m) {
    size_t i = m.from;
    while (i < m.to && (is_preposition(t, i) || is_word(&t->at[i], "to") ||
                        (i == m.from && is_word(&t->at[i], "inside")))) {
        put_token(out, &t->at[i], i == m.from);
        i++;
    }
    bool bare = is_word(&t->at[m.from], "from"); // "from rim to base"
    if (bare) {
        for (; i < m.to; i++) put_token(out, &t->at[i], false);
        return (struct state){"", false};
    }
    return (struct state){"", put_nouns(out, t, i, m.to, false, false)};
}

// A part of the thing: gets its preposition, unless the member before has said it.
static struct state put_part(struct buf *out, const struct tokens *t, struct member m, struct state before) {
    if (is_medium(t, m.from, m.to)) {
        put_word(out, "in");
        put_token(out, &t->at[m.from++], true);
        return put_prepositional(out, t, m);
    }
    bool left_of = m.to - m.from > 2 && is_word(&t->at[m.from + 1], "of") &&
                   (is_word(&t->at[m.from], "left") || is_word(&t->at[m.from], "right"));
    const char *preposition = left_of ? "to" : preposition_for(t, m.from, m.to);
    bool shared = before.preposition && (!*before.preposition || text_same(before.preposition, preposition));
    if (!shared) put_word(out, preposition);
    bool the = put_nouns(out, t, m.from, m.to, true, shared && before.the);
    return (struct state){shared ? before.preposition : preposition, the};
}

static struct state put_member(struct buf *out, const struct tokens *t, struct member m,
                               struct state before) {
    bool all = m.to - m.from > 2 && is_preposition(t, m.from + 1) &&
               (is_word(&t->at[m.from], "all") || is_word(&t->at[m.from], "right"));
    while (m.to - m.from > 1 && (all || in_list(&t->at[m.from], leads, LENGTH(leads))) &&
           !is_adverb(t, m.from, m.to)) {
        put_token(out, &t->at[m.from++], true);
        all = false;
    }
    if (is_adverb(t, m.from, m.to)) {
        for (size_t i = m.from; i < m.to; i++) put_token(out, &t->at[i], i == m.from);
        return (struct state){NULL, false};
    }
    if (m.to - m.from > 1 && (is_preposition(t, m.from) || is_inside_of_part(t, m.from, m.to)))
        return put_prepositional(out, t, m);
    if (has_to(t, m.from, m.to)) {
        put_word(out, "from");
        for (size_t i = m.from; i < m.to; i++) put_token(out, &t->at[i], i == m.from);
        return (struct state){NULL, false};
    }
    return put_part(out, t, m, before);
}

// "in front", "here and there": fixed phrases hold "and" without being a list.
static bool put_fixed(struct buf *out, const struct tokens *t) {
    if (!is_adverb(t, 0, t->count)) return false;
    for (size_t i = 0; i < t->count; i++) put_token(out, &t->at[i], i == 0);
    return true;
}

const char *say_place(struct arena *arena, const char *where) {
    struct tokens t = {.count = 0};
    struct buf out = buf_start(arena);
    if (!split(&t, where)) return where;
    // "Down low on the heel": how far down, and then where
    bool low = t.count > 2 && is_preposition(&t, 2) &&
               ((is_word(&t.at[0], "down") && is_word(&t.at[1], "low")) ||
                (is_word(&t.at[0], "low") && is_word(&t.at[1], "down")));
    if (low) return arena_format(arena, "low down %s", say_place(arena, t.at[2].at));
    if (t.count && is_word(&t.at[0], "where")) return where; // "where it folds": a clause, and no noun
    if (!t.count || put_fixed(&out, &t)) return out.at;
    struct state state = {NULL, false};
    for (size_t from = 0; from < t.count;) {
        size_t to = from;
        while (to < t.count && !is_joint(&t.at[to]) && (to == from || !t.at[to - 1].comma)) to++;
        if (to > from) state = put_member(&out, &t, (struct member){from, to}, state);
        if (to > from && t.at[to - 1].comma && to < t.count) buf_byte(&out, ',');
        while (to < t.count && is_joint(&t.at[to])) put_token(&out, &t.at[to++], false);
        from = to;
    }
    return out.at;
}

// The phrase without its articles, and small at its start where title words are small: "on Rim".
const char *say_place_title(struct arena *arena, const char *where) {
    struct tokens t = {.count = 0};
    const char *phrase = say_place(arena, where);
    if (!split(&t, phrase)) return say_title_case(arena, phrase);
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < t.count; i++) {
        if (is_article(&t.at[i])) continue;
        put_token(&out, &t.at[i], false);
        if (t.at[i].comma) buf_byte(&out, ',');
    }
    static const char *const small[] = {"on ", "in ", "at ", "by ", "to "};
    for (size_t i = 0; i < LENGTH(small); i++)
        if (!strncmp(out.at, small[i], strlen(small[i])))
            return arena_format(arena, "%s%s", small[i], say_title_case(arena, out.at + strlen(small[i])));
    return say_title_case(arena, out.at);
}
