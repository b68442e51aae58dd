//! Lines of a calendar file (RFC 5545): escaped, folded, ended by CR LF.

/// Octets a line has at most, without its end (3.1).
const MOST: usize = 75;

/// One line, folded: the rest of a long one goes on after CR LF and a blank. A character is never cut.
pub(super) fn line(to: &mut String, name: &str, value: &str) {
    let mut length = 0;
    for sign in name.chars().chain([':']).chain(value.chars()) {
        let octets = sign.len_utf8();
        if length + octets > MOST {
            to.push_str("\r\n ");
            length = 1;
        }
        to.push(sign);
        length += octets;
    }
    to.push_str("\r\n");
}

/// Words as a value (3.3.11). Signs that steer a screen or a printer are left out.
pub(super) fn text(words: &str) -> String {
    let mut escaped = String::with_capacity(words.len());
    for sign in words.chars() {
        match sign {
            '\\' | ';' | ',' => {
                escaped.push('\\');
                escaped.push(sign);
            }
            '\n' => escaped.push_str("\\n"),
            sign if sign.is_control() => {}
            sign => escaped.push(sign),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_longer_than_75_octets_and_unfolded_it_is_whole() {
        let words = "Número de unidad con aceite y filtros, ñandú, áéíóú; ".repeat(5);
        let mut folded = String::new();
        line(&mut folded, "SUMMARY", &text(&words));
        assert!(folded.split("\r\n").all(|line| line.len() <= 75), "{folded}");
        assert!(folded.split("\r\n").count() > 3);
        let unfolded = folded.replace("\r\n ", "");
        assert_eq!(unfolded, format!("SUMMARY:{}\r\n", text(&words)));
    }

    #[test]
    fn words_end_no_line_and_open_no_property() {
        assert_eq!(text("a;b,c\\d\r\nATTACH:x\u{7}"), "a\\;b\\,c\\\\d\\nATTACH:x");
        let mut exact = String::new();
        line(&mut exact, "A", &"x".repeat(73));
        assert_eq!(exact, format!("A:{}\r\n", "x".repeat(73)));
    }
}
