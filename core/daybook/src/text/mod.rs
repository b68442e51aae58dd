//! The words of the screens, by key: the same on both phones, the console and in print.
//!
//! Written in Fluent. A record of a screen names a key and typed values; here they become a sentence.

mod arg;

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

pub use arg::Arg;

/// Every file of English.
const ENGLISH: [(&str, &str); 9] = [
    ("cautions", include_str!("../../texts/en/cautions.ftl")),
    ("checklist", include_str!("../../texts/en/checklist.ftl")),
    ("choices", include_str!("../../texts/en/choices.ftl")),
    ("errors", include_str!("../../texts/en/errors.ftl")),
    ("fluids", include_str!("../../texts/en/fluids.ftl")),
    ("procedures", include_str!("../../texts/en/procedures.ftl")),
    ("screens", include_str!("../../texts/en/screens.ftl")),
    ("tasks", include_str!("../../texts/en/tasks.ftl")),
    ("words", include_str!("../../texts/en/words.ftl")),
];

/// The texts of one language.
pub struct Texts {
    bundle: FluentBundle<FluentResource>,
    /// What was wrong with the files. A test holds it empty; a screen shows what it can.
    problems: Vec<String>,
}

impl Texts {
    /// English, read once.
    pub fn english() -> &'static Texts {
        static TEXTS: OnceLock<Texts> = OnceLock::new();
        TEXTS.get_or_init(|| Texts::read(&ENGLISH))
    }

    fn read(files: &[(&str, &str)]) -> Texts {
        let language: LanguageIdentifier = "en-US".parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
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
        Texts { bundle, problems }
    }

    /// The text of a key, such as `task-separator`, or of one of its parts, such as `item-horn.ok`. A key
    /// that is not there comes back as `<key>`, so that it is seen and nothing stands empty.
    pub fn get(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.find(key, args).unwrap_or_else(|| format!("<{key}>"))
    }

    /// Whether there is a text of this key.
    pub fn has(&self, key: &str) -> bool {
        let (id, part) = split(key);
        let message = self.bundle.get_message(id);
        message.is_some_and(|message| match part {
            Some(part) => message.get_attribute(part).is_some(),
            None => message.value().is_some(),
        })
    }

    /// What was wrong with the files; nothing, in a released program.
    pub fn problems(&self) -> &[String] {
        &self.problems
    }

    fn find(&self, key: &str, args: &[(&str, Arg<'_>)]) -> Option<String> {
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
        let mut errors = Vec::new();
        Some(self.bundle.format_pattern(pattern, Some(&values), &mut errors).into_owned())
    }
}

fn split(key: &str) -> (&str, Option<&str>) {
    key.split_once('.').map_or((key, None), |(id, part)| (id, Some(part)))
}

#[cfg(test)]
mod tests;
