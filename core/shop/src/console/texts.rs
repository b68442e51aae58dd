//! The console's own texts, in Fluent; what the screens of a phone say as well comes from the daybook's.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use sumpbook_daybook::text::{Arg, Texts};
use unic_langid::LanguageIdentifier;

use super::language::Language;

/// The files of one language.
macro_rules! files {
    ($language:literal) => {
        [
            include_str!(concat!("../../texts/", $language, "/frame.ftl")),
            include_str!(concat!("../../texts/", $language, "/no.ftl")),
            include_str!(concat!("../../texts/", $language, "/dates.ftl")),
            include_str!(concat!("../../texts/", $language, "/day.ftl")),
            include_str!(concat!("../../texts/", $language, "/changes.ftl")),
            include_str!(concat!("../../texts/", $language, "/units.ftl")),
            include_str!(concat!("../../texts/", $language, "/lay_up.ftl")),
            include_str!(concat!("../../texts/", $language, "/unit.ftl")),
            include_str!(concat!("../../texts/", $language, "/in_out.ftl")),
            include_str!(concat!("../../texts/", $language, "/certificates.ftl")),
            include_str!(concat!("../../texts/", $language, "/form.ftl")),
            include_str!(concat!("../../texts/", $language, "/due.ftl")),
            include_str!(concat!("../../texts/", $language, "/campaign.ftl")),
            include_str!(concat!("../../texts/", $language, "/note.ftl")),
            include_str!(concat!("../../texts/", $language, "/numbers.ftl")),
            include_str!(concat!("../../texts/", $language, "/severities.ftl")),
            include_str!(concat!("../../texts/", $language, "/programme.ftl")),
            include_str!(concat!("../../texts/", $language, "/aside.ftl")),
            include_str!(concat!("../../texts/", $language, "/people.ftl")),
            include_str!(concat!("../../texts/", $language, "/crew.ftl")),
            include_str!(concat!("../../texts/", $language, "/stock.ftl")),
            include_str!(concat!("../../texts/", $language, "/paper.ftl")),
            include_str!(concat!("../../texts/", $language, "/cab.ftl")),
            include_str!(concat!("../../texts/", $language, "/labels.ftl")),
            include_str!(concat!("../../texts/", $language, "/forecast.ftl")),
            include_str!(concat!("../../texts/", $language, "/oil.ftl")),
            include_str!(concat!("../../texts/", $language, "/air.ftl")),
            include_str!(concat!("../../texts/", $language, "/heads.ftl")),
            include_str!(concat!("../../texts/", $language, "/proof.ftl")),
        ]
    };
}

const ENGLISH: &[&str] = &files!("en");
const SPANISH: &[&str] = &files!("es");

/// A text by its key: the console's own, else the daybook's.
pub(super) fn find(language: Language, key: &str, args: &[(&str, Arg<'_>)]) -> Option<String> {
    own(language, key, args).or_else(|| {
        let texts = content(language);
        texts.has(key).then(|| texts.get(key, args))
    })
}

/// What the phones' screens say too: items, tasks, kinds of entry.
fn content(language: Language) -> &'static Texts {
    match language {
        Language::En => Texts::english(),
        Language::Es => Texts::spanish(),
    }
}

fn own(language: Language, key: &str, args: &[(&str, Arg<'_>)]) -> Option<String> {
    let bundle = &bundle(language).0;
    let pattern = bundle.get_message(key)?.value()?;
    let mut values = FluentArgs::new();
    for (name, value) in args {
        let value = match value {
            Arg::Text(text) => FluentValue::from((*text).to_owned()),
            Arg::Count(count) => FluentValue::from(*count),
        };
        values.set(*name, value);
    }
    let mut errors = Vec::new();
    Some(bundle.format_pattern(pattern, Some(&values), &mut errors).into_owned())
}

type Read = (FluentBundle<FluentResource>, Vec<String>);

fn bundle(language: Language) -> &'static Read {
    static BUNDLES: [OnceLock<Read>; 2] = [OnceLock::new(), OnceLock::new()];
    let [english, spanish] = &BUNDLES;
    match language {
        Language::En => english.get_or_init(|| read("en-US", ENGLISH)),
        Language::Es => spanish.get_or_init(|| read("es-US", SPANISH)),
    }
}

/// Reads what it can; what is wrong is kept for the test that holds it empty.
fn read(tag: &str, files: &[&str]) -> Read {
    let language: LanguageIdentifier = tag.parse().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![language]);
    bundle.set_use_isolating(false);
    let mut problems = Vec::new();
    for text in files {
        let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(resource, errors)| {
            problems.extend(errors.iter().map(ToString::to_string));
            resource
        });
        if let Err(errors) = bundle.add_resource(resource) {
            problems.extend(errors.iter().map(ToString::to_string));
        }
    }
    (bundle, problems)
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::*;

    /// Keys with the variables they use.
    fn keys(files: &[&str]) -> BTreeMap<String, BTreeSet<String>> {
        let mut keys: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        let mut last = String::new();
        for line in files.iter().flat_map(|text| text.lines()).filter(|line| !line.starts_with('#')) {
            if let Some((key, _)) = line.split_once(" =").filter(|(key, _)| !key.starts_with([' ', '*'])) {
                last = key.to_owned();
                assert!(keys.insert(last.clone(), BTreeSet::new()).is_none(), "{key} stands twice");
            }
            let named = line.split('$').skip(1).map(|rest| {
                rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '-').collect::<String>()
            });
            if let Some(of) = keys.get_mut(&last) {
                of.extend(named);
            }
        }
        keys
    }

    #[test]
    fn the_files_read_without_a_problem() {
        for language in Language::ALL {
            assert_eq!(bundle(language).1, [""; 0], "{language:?}");
        }
    }

    #[test]
    fn both_languages_have_the_same_keys_and_variables() {
        let (english, spanish) = (keys(ENGLISH), keys(SPANISH));
        assert!(english.len() > 100, "{}", english.len());
        for (key, of) in &english {
            assert_eq!(spanish.get(key), Some(of), "{key}");
        }
        assert_eq!(english.len(), spanish.len());
    }

    #[test]
    fn no_text_approves_of_a_unit() {
        for text in ENGLISH.iter().chain(SPANISH) {
            for line in text.lines().filter(|line| !line.starts_with('#')) {
                let said = line.split_once('=').map_or(line, |(_, said)| said).to_lowercase();
                for word in said.split(|c: char| !c.is_alphanumeric()) {
                    let never =
                        ["safe", "safely", "fit", "pass", "passed", "roadworthy", "seguro", "segura", "apto"];
                    assert!(!never.contains(&word), "{line}");
                }
                assert!(!said.contains("good to go"), "{line}");
            }
        }
    }
}
