//! The words of the screens, by key: the same on both phones, the console and in print.
//!
//! Written in Fluent. A record of a screen names a key and typed values; here they become a sentence, in
//! the language of whoever reads it.

mod arg;
mod key;
mod language;

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentError, FluentResource};
use unic_langid::langid;

pub use arg::Arg;
pub use key::{caution_keys, item_key, word_key};
pub use language::{Language, UnknownLanguage};

/// Every file of one language: its name and its text. One list, so no language lacks a file another has.
macro_rules! files {
    ($language:literal) => {
        files!($language: "air", "cautions", "checklist", "choices", "errors", "fluids", "lay_up", "procedures", "screens", "tasks", "words")
    };
    ($language:literal: $($name:literal),+) => {
        [$(($name, include_str!(concat!("../../texts/", $language, "/", $name, ".ftl")))),+]
    };
}

/// The cautions: also the list of them.
const CAUTIONS: &str = include_str!("../../texts/en/cautions.ftl");

const ENGLISH: [(&str, &str); 11] = files!("en");
const SPANISH: [(&str, &str); 11] = files!("es");

/// The texts of one language.
pub struct Texts {
    language: Language,
    bundle: FluentBundle<FluentResource>,
    /// Where a key is looked for that this language lacks.
    fallback: Option<&'static Texts>,
    /// What was wrong with the files. A test holds it empty; a screen shows what it can.
    problems: Vec<String>,
}

impl Texts {
    /// English, read once.
    pub fn english() -> &'static Texts {
        static TEXTS: OnceLock<Texts> = OnceLock::new();
        TEXTS.get_or_init(|| Texts::read(Language::En, &ENGLISH, None))
    }

    /// Spanish as crews in the United States speak it, read once. A key it lacks is shown in English.
    pub fn spanish() -> &'static Texts {
        static TEXTS: OnceLock<Texts> = OnceLock::new();
        TEXTS.get_or_init(|| Texts::read(Language::Es, &SPANISH, Some(Texts::english())))
    }

    /// The texts of a language, read once.
    pub fn of(language: Language) -> &'static Texts {
        match language {
            Language::En => Texts::english(),
            Language::Es => Texts::spanish(),
        }
    }

    /// The language they are in; a page says it in its `lang`.
    pub fn language(&self) -> Language {
        self.language
    }

    fn read(language: Language, files: &[(&str, &str)], fallback: Option<&'static Texts>) -> Texts {
        // The yard is in the United States, whatever is spoken there.
        let locale = match language {
            Language::En => langid!("en-US"),
            Language::Es => langid!("es-US"),
        };
        let mut bundle = FluentBundle::new_concurrent(vec![locale]);
        // Marks around each value would stand in exports and in search; our languages run one way.
        bundle.set_use_isolating(false);
        let mut problems = Vec::new();
        for (name, text) in files {
            let resource =
                FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(resource, errors)| {
                    problems.extend(errors.iter().map(|error| format!("{name}.ftl: {error}")));
                    resource
                });
            if let Err(errors) = bundle.add_resource(resource) {
                problems.extend(errors.iter().map(|error| format!("{name}.ftl: {error}")));
            }
        }
        Texts { language, bundle, fallback, problems }
    }

    /// The text of a key, such as `task-separator`, or of one of its parts, such as `item-horn.ok`. A key
    /// this language lacks comes in English; one that is nowhere comes back as `<key>`, so that it is seen
    /// and nothing stands empty.
    pub fn get(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.find(key, args).or_else(|| self.fallback?.find(key, args)).unwrap_or_else(|| format!("<{key}>"))
    }

    /// Whether [`Texts::get`] has a text for this key, in this language or in English.
    pub fn has(&self, key: &str) -> bool {
        self.holds(key) || self.fallback.is_some_and(|fallback| fallback.holds(key))
    }

    /// Whether this language alone has a text for this key.
    fn holds(&self, key: &str) -> bool {
        let (id, part) = named(key).map_or_else(|| split(key), |(key, _)| (key, None));
        self.bundle.get_message(id).is_some_and(|message| match part {
            Some(part) => message.get_attribute(part).is_some(),
            None => message.value().is_some(),
        })
    }

    /// What was wrong with the files; nothing, in a released program.
    pub fn problems(&self) -> &[String] {
        &self.problems
    }

    fn find(&self, key: &str, args: &[(&str, Arg<'_>)]) -> Option<String> {
        let mut errors = Vec::new();
        match named(key) {
            Some((key, name)) => self.format(key, &[("name", Arg::Text(name))], &mut errors),
            None => self.format(key, args, &mut errors),
        }
    }

    /// The text of a key in this language alone. What is wrong with it, a value that was not given, is told
    /// to `errors`; the text stands all the same.
    fn format(&self, key: &str, args: &[(&str, Arg<'_>)], errors: &mut Vec<FluentError>) -> Option<String> {
        let (id, part) = split(key);
        let message = self.bundle.get_message(id)?;
        let pattern = match part {
            Some(part) => message.get_attribute(part)?.value(),
            None => message.value()?,
        };
        let mut values = FluentArgs::new();
        for (name, value) in args {
            values.set(*name, value.to_fluent());
        }
        Some(self.bundle.format_pattern(pattern, Some(&values), errors).into_owned())
    }
}

/// A campaign's task has the name the shop gave it in its key, `task-campaign:KX 24-07`: one text for all of them.
fn named(key: &str) -> Option<(&str, &str)> {
    key.split_once(':').filter(|(text, _)| *text == "task-campaign")
}

fn split(key: &str) -> (&str, Option<&str>) {
    key.split_once('.').map_or((key, None), |(id, part)| (id, Some(part)))
}

#[cfg(test)]
mod tests;
