// SPDX-License-Identifier: MIT
// Listings as one self-contained page. All text goes through the escaping writer in format/.
#include <string.h>

#include "format/write.h"
#include "listing/listing.h"

// Black on white and a gray of 7:1 contrast; no color carries meaning.
static const char style[] =
    "body{font:16px/1.5 sans-serif;max-width:44em;margin:2em auto;padding:0 1em;color:#000;background:#fff}"
    "article{border-top:2px solid #595959;padding:1em 0}h2{font-size:1.2em}h3{font-size:1em;margin-bottom:0}"
    "p.note{color:#595959}mark{background:#e8e8e8;color:#000;border-bottom:2px solid #595959}"
    "mark.fault{border-bottom:3px double #000}mark.open{border-bottom:2px dotted "
    "#000}p.notes{white-space:pre-wrap}pre{white-space:pre-wrap;font:inherit}"
    "@page{size:A4;margin:12mm}@media print{body{margin:0;max-width:none;padding:0}"
    "article.sheet{font-size:9.5pt;line-height:1.3;border:0;padding:0;break-after:page}"
    ".small ul,.smallest "
    "ul{columns:2}article.small{font-size:8.5pt}article.smallest{font-size:6.5pt}article.sheet:last-child{"
    "break-after:auto}"
    ".sheet h2,.sheet h3,.sheet p,.sheet ul,.sheet pre{margin:2pt 0}}";

void page_begin(struct buf *out) {
    buf_text(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                  "<meta name=\"viewport\" content=\"width=device-width\">\n<title>asfound</title>\n<style>");
    buf_text(out, style);
    buf_text(out, "</style>\n</head>\n<body>\n");
}

void page_end(struct buf *out) {
    buf_text(out, "</body>\n</html>\n");
}

static void list(struct html *html, const char *name, const char *const *items, size_t count) {
    if (!count) return;
    html_line(html, "h3", name);
    html_open(html, "ul", NULL, NULL);
    for (size_t i = 0; i < count; i++) html_line(html, "li", items[i]);
    html_close(html, "ul");
}

static void given_part(struct html *html, struct arena *arena, const struct listing *l) {
    if (!l->given) return;
    const struct given_title *g = &l->given->score;
    const char **texts = arena_array(arena, g->miss_count + l->given->less_count + 1, sizeof *texts);
    size_t count = 0;
    for (size_t i = 0; i < g->miss_count; i++) {
        const char *text = given_miss_text(arena, &g->misses[i]);
        if (text) texts[count++] = arena_format(arena, "misses: %s", text);
    }
    for (size_t i = 0; i < l->given->less_count; i++)
        texts[count++] = arena_format(arena, "less: %s", l->given->less[i]);
    html_line(html, "h3", "The title as given");
    html_line(html, "p", l->given->text);
    html_open(html, "p", "class", "note");
    html_text(html, given_score_text(arena, l));
    html_close(html, "p");
    if (!count) return;
    html_open(html, "ul", NULL, NULL);
    for (size_t i = 0; i < count; i++) html_line(html, "li", texts[i]);
    html_close(html, "ul");
}

void listing_page(struct arena *arena, const struct listing *l, struct buf *out) {
    struct html html = {out};
    html_open(&html, "article", "id", l->record->id);
    html_line(&html, "h2", *l->title ? l->title : "(no title)");
    html_open(&html, "p", "class", "note");
    html_isolated(&html,
                  arena_format(arena, "%s: %zu of %zu; earned %lld of %lld; grade %s (%s)", l->record->id,
                               l->title_length, l->options.limit, (long long)l->worth, (long long)l->bound,
                               grade_letter(l->grading.grade), grade_word(l->grading.grade)));
    html_close(&html, "p");
    const char **care = arena_array(arena, l->cautions->count + 1, sizeof *care);
    for (size_t i = 0; i < l->cautions->count; i++)
        care[i] = arena_format(arena, "%s%s", l->cautions->items[i].stop ? "Not to be listed: " : "",
                               l->cautions->items[i].caution->text);
    list(&html, "Take care", care, l->cautions->count);
    html_line(&html, "pre", l->description);
    list(&html, "Why this grade", l->grading.reasons, l->grading.count);
    list(&html, "Other titles", l->alternates, l->alternate_count);
    given_part(&html, arena, l);
    const char **texts =
        arena_array(arena, l->finding_count + l->questions.count + l->photos.count + 1, sizeof *texts);
    for (size_t i = 0; i < l->finding_count; i++)
        texts[i] = arena_format(arena, "%s: %s", l->findings[i].level, l->findings[i].message);
    list(&html, "To settle", texts, l->finding_count);
    const char **kept = arena_array(arena, l->withheld_count + 1, sizeof *kept);
    for (size_t i = 0; i < l->withheld_count; i++)
        kept[i] = arena_format(arena, "%s: %s", l->withheld[i].what, l->withheld[i].why);
    list(&html, "Kept back", kept, l->withheld_count);
    for (size_t i = 0; i < l->questions.count; i++) texts[i] = l->questions.items[i].ask;
    list(&html, "Look at before listing", texts, l->questions.count);
    for (size_t i = 0; i < l->photos.count; i++) texts[i] = l->photos.items[i].shows;
    list(&html, "Photos", texts, l->photos.count);
    const struct node *linked = listing_linked_data(arena, l);
    if (linked) html_json(&html, linked);
    html_close(&html, "article");
}
