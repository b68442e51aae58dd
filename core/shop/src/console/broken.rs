//! Places at which a word too long for any column may break: a table is as wide as its longest word.

/// Letters without a blank that a line of the narrowest column need not hold; a longer word gets places to break.
const LONG: usize = 40;
/// Letters between two such places.
const EVERY: usize = 20;
/// What is inside these is no running text, or breaks by itself.
const AS_IT_IS: [&str; 7] = ["script", "style", "textarea", "title", "option", "svg", "pre"];

/// The page with `<wbr>` in its long words; what is copied from it is as it was. `html` is as `maud` writes it: a `<`
/// begins a tag and nothing else, and no `>` stands within one.
pub(super) fn long_words(html: &str) -> String {
    let mut broken = String::with_capacity(html.len());
    let mut rest = html;
    while let Some((text, of_tag)) = rest.split_once('<') {
        words(text, &mut broken);
        let (tag, mut after) = of_tag.split_once('>').unwrap_or((of_tag, ""));
        broken.push('<');
        broken.push_str(tag);
        broken.push('>');
        let name = tag.split(|letter: char| !letter.is_ascii_alphanumeric()).next().unwrap_or_default();
        if AS_IT_IS.contains(&name) {
            let end = format!("</{name}>");
            let (inside, beyond) = after.split_at(after.find(&end).unwrap_or(after.len()));
            broken.push_str(inside);
            after = beyond;
        }
        rest = after;
    }
    words(rest, &mut broken);
    broken
}

fn words(text: &str, broken: &mut String) {
    for part in text.split_inclusive(char::is_whitespace) {
        let (letters, blank) = part.split_at(part.trim_end().len());
        if letters.len() <= LONG {
            broken.push_str(letters);
        } else {
            word(letters, broken);
        }
        broken.push_str(blank);
    }
}

/// A letter may be written as an entity, which stays whole.
fn word(part: &str, broken: &mut String) {
    let mut letters = Vec::new();
    let mut rest = part;
    while let Some(first) = rest.chars().next() {
        let entity = rest.find(';').filter(|end| first == '&' && *end < 10);
        let (letter, after) = rest.split_at(entity.map_or(first.len_utf8(), |end| end.saturating_add(1)));
        letters.push(letter);
        rest = after;
    }
    let is_long = letters.len() > LONG;
    for (place, letter) in letters.iter().enumerate() {
        if is_long && place > 0 && place.is_multiple_of(EVERY) {
            broken.push_str("<wbr>");
        }
        broken.push_str(letter);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_word_may_break_and_nothing_else_is_touched() {
        let long = "w".repeat(60);
        let piece = "w".repeat(20);
        assert_eq!(
            long_words(&format!("<td>short {long} words</td>")),
            format!("<td>short {piece}<wbr>{piece}<wbr>{piece} words</td>")
        );
        for same in [
            format!("<a href=\"/x?{long}\">{}</a>", "w".repeat(40)),
            format!("<textarea>{long}</textarea><option>{long}</option><title>{long}</title>"),
            format!("<svg><text>{long}</text></svg><pre lang=\"en\">{long}</pre>"),
            "no tag at all, and words as they are".to_owned(),
        ] {
            assert_eq!(long_words(&same), same);
        }
    }

    #[test]
    fn an_entity_is_one_letter_and_so_is_one_of_several_bytes() {
        let word = "&amp;".repeat(60);
        let piece = "&amp;".repeat(20);
        assert_eq!(long_words(&word), format!("{piece}<wbr>{piece}<wbr>{piece}"));
        assert_eq!(long_words(&"é".repeat(40)), "é".repeat(40));
        assert_eq!(long_words(&"é".repeat(41)).matches("<wbr>").count(), 2);
    }
}
