// SPDX-License-Identifier: MIT
// Names on papers that lie with a thing and of whom it was for: "a slip pinned to it says Ida Somebody
// 555-0199", "ticket for", "it was Ida Somebody's until", "for baby Ida", "To Ida from Frank", "employee
// number 4410", "H. SOMEBODY stamped in the handle, whoever that was". A telephone number behind a name makes
// it a person's; a maker's papers hold a firm's words.
#include <string.h>

#include "notes/any.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"

static bool holds_firm(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i <= to && i < tokens->count; i++)
        if (firm_word(tokens, i) || token_is(tokens, i, "&")) return true;
    return false;
}

// "555-0142", "(020) 555 0142", "555.010.0142": where it ends; `i` if it is none.
static size_t phone_end(const struct tokens *tokens, size_t i) {
    enum { LEAST = 7, MOST = 11 };
    size_t at = i + (token_is(tokens, i, "(") ? 1 : 0), digits = 0, parts = 0;
    for (; at < tokens->count && digits < MOST; at++) {
        const struct token *t = &tokens->at[at];
        if (at > i && t->stop == STOP_NONE && ANY(tokens, at, "-", ".", ")", "/")) continue;
        bool inner = at > i && tokens->at[at - 1].to - tokens->at[at - 1].from > 4; // "555-0142 4 in"
        if ((t->kind != TOKEN_FIGURE && t->kind != TOKEN_CODE) || (inner && !t->joined)) break;
        size_t n = strlen(t->fold);
        if (strspn(t->fold, "0123456789-.") != n) break;
        for (size_t k = 0; k < n; k++) {
            digits += t->fold[k] >= '0' && t->fold[k] <= '9';
            parts += t->fold[k] == '-';
        }
        parts++;
    }
    while (at > i && token_is(tokens, at - 1, ".")) at--;
    return digits >= LEAST && digits <= MOST && parts > 1 ? at : i;
}

// A run of capitals that may be a person's name: where it ends.
static size_t run_end(const struct note *note, size_t i) {
    size_t form = person_form_end(note, i);
    return form > i ? form : person_named(note, i) ? person_name_end(note, i) : i;
}

// "Ida Somebody 555-0142", "Ida Somebody, 555-0142".
static size_t by_phone(struct note *note, size_t i) {
    static const char *const made[] = {"embossed", "printed", "stamped", "advertising", "impressed", "cast"};
    const struct tokens *tokens = &note->tokens;
    size_t to = run_end(note, i);
    if (to == i || holds_firm(tokens, i, to - 1)) return 0;
    for (size_t k = i; k > 0 && k + 6 > i && tokens->at[k - 1].stop < STOP_SENTENCE; k--)
        if (token_among(tokens, k - 1, made, sizeof made / sizeof *made)) return 0;
    size_t at = to;
    while (ANY(tokens, at, ",", ":", "and", "tel", "phone", "ph", "cell", ".") && at < to + 3) at++;
    size_t end = phone_end(tokens, at);
    return end > at ? person_keep_back(note, i, end) : 0;
}

// "A slip of paper says", "claim ticket inside for", "a tag tied to the leg reads": who stands on it.
static size_t by_paper(struct note *note, size_t i) {
    static const char *const papers[] = {"paper",   "slip",     "note",         "ticket", "stub",
                                         "receipt", "envelope", "prescription", "scrap",  "bill"};
    enum { FAR = 9 };
    const struct tokens *tokens = &note->tokens;
    bool tag = ANY(tokens, i, "tag", "card", "label");
    if (!tag && !token_among(tokens, i, papers, sizeof papers / sizeof *papers)) return 0;
    if (ANY(tokens, i + 1, "label", "labels", "tag", "sticker", "mache") || tokens->at[i].stop != STOP_NONE)
        return 0;
    bool tied = !tag;
    for (size_t at = i + 1; at < i + FAR && at < tokens->count && tokens->at[at].stop < STOP_CLAUSE; at++) {
        tied |= ANY(tokens, at, "pinned", "tied", "taped", "wired", "stapled", "clipped", "tucked");
        if (!tied || !ANY(tokens, at, "says", "reads", "for", "from", "to", "saying", "with")) continue;
        size_t name = at + 1 + (ANY(tokens, at + 1, "the", "a", "name", ":", "\"") ? 1 : 0);
        size_t to = run_end(note, name);
        if (to == name || holds_firm(tokens, name, to)) continue;
        bool brief = to == name + 1 && !person_first_name(note, name);
        if (brief || (ANY(tokens, at, "with", "from", "to") && !person_first_name(note, name))) continue;
        size_t end = phone_end(tokens, to + (token_is(tokens, to, ",") ? 1 : 0));
        return person_keep_back(note, name, end > to + 1 ? end : to);
    }
    return 0;
}

// "It was Ida Somebody's and then mine": nothing that is possessed follows.
static size_t by_whose(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !ANY(tokens, i - 1, "was", "were", "is", "it's", "been", "once") || !person_named(note, i))
        return 0;
    size_t to = person_name_end(note, i), size = strlen(tokens->at[to - 1].fold);
    if (size < 3 || strcmp(tokens->at[to - 1].fold + size - 2, "'s") != 0) return 0;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                ANY(tokens, to, "and", "until", "till", "before", "when", "while", "for", "from", "once",
                    "who", "originally", "at", "since", "as", "too", "then", "but", "so", "or", "first",
                    "back", "after", "because", "in", "years", "i", "we", "all", "long", "though");
    return ends ? person_keep_back(note, i, to) : 0;
}

// "It was for baby Ida", "made for little Ida", "for Ida who is grown".
static size_t by_child(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    size_t at = i;
    if (ANY(tokens, i, "baby", "little", "young", "wee")) {
        bool led = i > 0 && ANY(tokens, i - 1, "for", "to", "by", "was", "when", "after", "from", "our", "my",
                                "and", "of", "her", "his");
        if (tokens->at[i].capital || !led || !person_named(note, i + 1)) return 0;
        at = i + 1;
    } else if (!token_is(tokens, i, "for") || !person_named(note, i + 1))
        return 0;
    else
        at = i + 1;
    size_t to = person_name_end(note, at);
    if (noun_at(note, to, &noun) && tokens->at[to - 1].stop == STOP_NONE && at == i + 1) return 0;
    if (at == i + 1 && token_is(tokens, i, "for")) {
        bool told = ANY(tokens, to, "who", "when", "because", "while") && !holds_firm(tokens, at, to);
        if (!told) return 0;
    }
    return person_keep_back(note, at, to);
}

// "To Ida from Frank Christmas 1938", "For Ida with love from Mother", without quotes round it.
static size_t by_address(struct note *note, size_t i) {
    enum { MOST = 14 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "to", "for", "dear") || !tokens->at[i].capital || i == 0 || tokens->at[i].starts ||
        note->taken[i] != TAKEN_NOT || !person_capital(note, i + 1))
        return 0;
    bool led = ANY(tokens, i - 1, ",", ":", "says", "reads", "inscribed", "written", "engraved", "saying",
                   "-", "page", "inside", "in", "it", "cover", "flyleaf", "back");
    size_t to = i + 1;
    bool from = token_is(tokens, i, "dear");
    while (to < i + MOST && to < tokens->count && note->taken[to] == TAKEN_NOT &&
           tokens->at[to].stop < STOP_CLAUSE) {
        from |= ANY(tokens, to, "from", "love", "with", "wishes");
        bool name = tokens->at[to].capital || tokens->at[to].kind == TOKEN_FIGURE;
        bool small = ANY(tokens, to, "from", "love", "with", "and", "my", "all", "her", "his", "your", "on",
                         "of", "wishes", "best", "much", "fond", "the", "dear", ",", ".", "old", "friend",
                         "loving", "mother", "father", "grandma", "grandpa", "aunt", "uncle", "mom", "dad",
                         "birthday", "christmas", "xmas", "affectionately", "sincerely", "&");
        if (!name && !small) break;
        to++;
    }
    while (to > i + 1 && (ANY(tokens, to - 1, ",", ".", "on", "and", "the", "of", "with") ||
                          tokens->at[to - 1].stop != STOP_NONE))
        to--;
    if (!led || !from || holds_firm(tokens, i, to - 1)) return 0;
    return person_keep_back(note, i, to);
}

// "Badge number 6671", "employee no. 4410", "clock number 882": who worked with it.
static size_t by_badge(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "badge", "employee", "clock", "payroll", "payroll", "locker", "man", "worker",
             "student", "inmate", "patient", "crib", "officer", "works", "staff", "employee's", "worker's") ||
        !ANY(tokens, i + 1, "number", "no", "#", "id", "numbers"))
        return 0;
    size_t at = i + 2;
    while (ANY(tokens, at, ".", ":", "is", "number", "#", "of") && at < i + 5) at++;
    if (at >= tokens->count || (tokens->at[at].kind != TOKEN_FIGURE && tokens->at[at].kind != TOKEN_CODE) ||
        strlen(tokens->at[at].fold) < 2)
        return 0;
    person_tell_owner(note, i, at, at + 1);
    return person_keep_back(note, at, at + 1);
}

// "H. SOMEBODY is stamped in the handle": a maker stamps the blade; or anywhere, "whoever that was".
static size_t by_stamp(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t to = person_form_end(note, i), at = to;
    if (to == i || holds_firm(tokens, i, to)) return 0;
    while (ANY(tokens, at, "is", "was", "been", "has", "deeply", "neatly", "twice") && at < to + 3) at++;
    if (!ANY(tokens, at, "stamped", "cut", "branded", "punched", "tooled", "etched", "stitched", "lettered"))
        return 0;
    size_t part = at + 1;
    bool within = ANY(tokens, part, "in", "into", "on", "across");
    while (ANY(tokens, part, "in", "into", "on", "across", "the", "its", "wood", "wooden") && part < at + 5)
        part++;
    bool held = within && (ANY(tokens, part - 1, "wood") ||
                           ANY(tokens, part, "handle", "handles", "tote", "grip", "stock", "strap", "flap",
                               "lining", "leather", "haft", "sheath", "scabbard", "sling"));
    for (size_t k = part; k + 1 < tokens->count && k < part + 8 && tokens->at[k].stop < STOP_SENTENCE; k++)
        held |= ANY(tokens, k, "whoever") || (ANY(tokens, k, "idea", "know") && ANY(tokens, k + 1, "who"));
    if (!held) return 0;
    person_tell_owner(note, at, at + 1, at + 1);
    return person_keep_back(note, i, to);
}

// "Label in the pocket says Mr. A. Somebody, May 1957": for whom it was made.
static size_t by_tailor(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !ANY(tokens, i, "mr", "mrs", "miss", "ms", "mr.", "mrs.", "ms.") ||
        !tokens->at[i].capital ||
        !ANY(tokens, i - 1, "says", "reads", "typed", "written", ":", "for", "name", "\""))
        return 0;
    size_t cue = i - 1;
    while (cue > 0 && tokens->at[cue - 1].stop < STOP_CLAUSE && i - cue < 8 &&
           !ANY(tokens, cue, "label", "tag", "tape"))
        cue--;
    if (!ANY(tokens, cue, "label", "tag", "tape")) return 0;
    size_t name = i + 1 + (token_is(tokens, i + 1, ".") ? 1 : 0), to = person_name_end(note, name);
    if (to == name || strstr(tokens->at[to - 1].fold, "'s") || holds_firm(tokens, i, to)) return 0;
    person_tell_owner(note, cue, cue + 1, cue + 1);
    while (to < tokens->count &&
           (tokens->at[to].kind == TOKEN_FIGURE || ANY(tokens, to, "jan", "feb", "oct")))
        to++;
    return person_keep_back(note, i, to);
}

size_t person_on_paper(struct note *note, size_t i) {
    size_t to = 0;
    if (note->tokens.shouts || note->tokens.flat) return 0;
    if (note->tokens.at[i].capital) {
        to = by_phone(note, i);
        if (!to) to = by_whose(note, i);
        if (!to) to = by_address(note, i);
        if (!to) to = by_stamp(note, i);
        if (!to) to = by_tailor(note, i);
    }
    if (!to) to = by_paper(note, i);
    if (!to) to = by_child(note, i);
    return to ? to : by_badge(note, i);
}

// "A Lantern for Mrs. X by Y Z", of a book: a word of its title, between a capital and who wrote it.
bool person_in_title(const struct note *note, size_t i, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (i < 2 || !token_is(tokens, to, "by") || to + 1 >= tokens->count || !tokens->at[to + 1].capital)
        return false;
    size_t at = i - 1;
    while (at > 0 &&
           ANY(tokens, at, "for", "of", "and", "to", "with", "the", "from", "&", "on", "by", "meets"))
        at--;
    bool read = false;
    for (size_t k = 0; k < i && !read; k++)
        read = ANY(tokens, k, "novel", "book", "hardcover", "hardback", "paperback", "softcover", "story",
                   "stories", "poems", "music", "mystery", "cookbook", "memoir", "play", "song", "record",
                   "magazine", "comic");
    return read && at < i - 1 && tokens->at[at].capital && tokens->at[at].stop == STOP_NONE;
}

bool person_of_trade(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "photographer's", "printer's", "publisher's", "studio's", "retailer's", "jeweler's",
               "jeweller's", "outfitter's", "tailor's", "chemist's", "grocer's", "framer's", "bookseller's",
               "engraver's", "maker's", "dealer's") &&
           ANY(tokens, i + 1, "name", "stamp", "label", "mark", "imprint", "sticker", "ticket", "plate",
               "card", "address", "details");
}
