//! The languages the texts are written in, and which of them somebody asks for.

use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A language of the texts. In settings and in addresses of pages it is written by its tag.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
}

/// A tag that names no language of ours, or is no tag.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("there are no texts in the language {0:?}")]
pub struct UnknownLanguage(
    /// The tag as it was given.
    pub String,
);

impl Language {
    /// All of them, in the order a choice offers them.
    pub const ALL: [Language; 2] = [Language::En, Language::Es];

    /// Its tag (BCP 47), `en` or `es`: also what a page says in its `lang`.
    pub fn tag(self) -> &'static str {
        match self {
            Language::En => "en",
            Language::Es => "es",
        }
    }

    /// Its name in itself, so that whoever reads only this language finds it.
    pub fn own_name(self) -> &'static str {
        match self {
            Language::En => "English",
            Language::Es => "Español",
        }
    }

    /// The language of a tag (BCP 47) by its first part: `es`, `es-US`, `es-419` and `ES_mx` are Spanish.
    /// None when we have no texts in it, or it is no tag. What a phone adds (`es-US-u-fw-mon`) is let be.
    pub fn from_tag(tag: &str) -> Option<Language> {
        let subtag = |part: &str| {
            (1..=8).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_alphanumeric())
        };
        let mut parts = tag.trim().split(['-', '_']);
        let first = parts.next()?;
        let language = Language::ALL.into_iter().find(|one| one.tag().eq_ignore_ascii_case(first))?;
        parts.all(subtag).then_some(language)
    }

    /// What a browser asks for in `Accept-Language` (RFC 9110, 12.5.4): the language of ours with the
    /// highest weight, the first of equals. A weight of 0 refuses; `*` asks for none of ours by name.
    /// None when it names no language we have.
    pub fn from_accepted(header: &str) -> Option<Language> {
        let mut best: Option<(u16, Language)> = None;
        for range in header.split(',') {
            let mut parts = range.split(';');
            let Some(language) = parts.next().and_then(Language::from_tag) else { continue };
            // A weight that cannot be read is none: the range was named, so it counts in full.
            let weight = parts.find_map(weight).unwrap_or(1000);
            if weight > best.map_or(0, |(heaviest, _)| heaviest) {
                best = Some((weight, language));
            }
        }
        best.map(|(_, language)| language)
    }
}

/// The weight of a parameter `q=0.7`, in thousandths.
fn weight(parameter: &str) -> Option<u16> {
    let (name, value) = parameter.split_once('=')?;
    if !name.trim().eq_ignore_ascii_case("q") {
        return None;
    }
    let (whole, part) = value.trim().split_once('.').unwrap_or((value.trim(), ""));
    let digits = |text: &str| text.bytes().all(|digit| digit.is_ascii_digit());
    if part.len() > 3 || !digits(part) {
        return None;
    }
    match whole {
        "0" => format!("{part:0<3}").parse().ok(),
        "1" => Some(1000),
        _ => None,
    }
}

impl FromStr for Language {
    type Err = UnknownLanguage;

    fn from_str(tag: &str) -> Result<Language, UnknownLanguage> {
        Language::from_tag(tag).ok_or_else(|| UnknownLanguage(tag.to_owned()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tag_is_read_by_its_first_part() {
        for tag in ["es", "ES", "es-US", "es-419", "es_MX", "es-Latn-US", "es-US-u-fw-mon", " es "] {
            assert_eq!(Language::from_tag(tag), Some(Language::Es), "{tag}");
        }
        for tag in ["en", "en-US", "en-GB"] {
            assert_eq!(Language::from_tag(tag), Some(Language::En), "{tag}");
        }
        for tag in ["", "*", "fr", "est", "español", "e", "-", "es-", "es;", "es-U S"] {
            assert_eq!(Language::from_tag(tag), None, "{tag}");
        }
    }

    #[test]
    fn each_language_comes_back_from_its_tag_and_from_a_setting() {
        for language in Language::ALL {
            assert_eq!(language.tag().parse(), Ok(language));
            let setting = serde_json::to_string(&language).unwrap();
            assert_eq!(setting, format!("\"{}\"", language.tag()));
            assert_eq!(serde_json::from_str::<Language>(&setting).unwrap(), language);
        }
        assert_eq!("fr".parse::<Language>(), Err(UnknownLanguage("fr".to_owned())));
    }

    #[test]
    fn a_browser_gets_the_heaviest_language_we_have() {
        let accepted = Language::from_accepted;
        assert_eq!(accepted("es-MX,es;q=0.9,en;q=0.8"), Some(Language::Es));
        assert_eq!(accepted("fr, en;q=0.3, es;q=0.7"), Some(Language::Es));
        assert_eq!(accepted("en, es"), Some(Language::En));
        assert_eq!(accepted("es;q=0.10, en;q=0.2"), Some(Language::En));
        assert_eq!(accepted("en;q=0, es;q=0.001"), Some(Language::Es));
        assert_eq!(accepted("es;q=0"), None);
        assert_eq!(accepted("es; Q=0.5 , en ;q=0.4"), Some(Language::Es));
        assert_eq!(accepted("es;q=much"), Some(Language::Es));
        assert_eq!(accepted("*, fr;q=0.5"), None);
        assert_eq!(accepted(""), None);
    }
}
