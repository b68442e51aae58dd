//! Spanish says all that English says, in its own words, and approves of no unit either.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentError;

use super::super::SPANISH;
use super::{Arg, ENGLISH, Language, Texts, words};

/// Every text of some files as it is written: by `file`, then by key (`item-horn`, `item-horn.ok`).
fn written(files: &[(&'static str, &'static str)]) -> BTreeMap<&'static str, BTreeMap<String, String>> {
    files.iter().map(|(file, text)| (*file, messages(file, text))).collect()
}

fn messages(file: &str, text: &str) -> BTreeMap<String, String> {
    let mut found: BTreeMap<String, String> = BTreeMap::new();
    let (mut message, mut key) = (String::new(), String::new());
    for line in text.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (name, value) = line.split_once(" = ").unwrap_or(("", line));
        if let Some(part) = name.strip_prefix("    .") {
            key = format!("{message}.{part}");
        } else if !name.is_empty() && !name.starts_with(' ') {
            message = name.to_owned();
            key = name.to_owned();
        } else {
            // A further line of the text before.
            let text = found.get_mut(&key).unwrap_or_else(|| panic!("{file}: {line}"));
            text.push('\n');
            text.push_str(line);
            continue;
        }
        assert_eq!(found.insert(key.clone(), value.to_owned()), None, "{file}: {key} stands twice");
    }
    found
}

/// Each text with its key, of all files together.
fn all(files: &[(&'static str, &'static str)]) -> BTreeMap<String, String> {
    written(files).into_values().flatten().collect()
}

/// The variables of a text; `choosing` leaves only those that choose between forms.
fn variables(text: &str, choosing: bool) -> BTreeSet<&str> {
    text.split('$')
        .skip(1)
        .filter(|rest| {
            let name = rest.find(|c: char| !c.is_ascii_alphanumeric()).unwrap_or(rest.len());
            !choosing || rest[name..].trim_start().starts_with("->")
        })
        .map(|rest| rest.split(|c: char| !c.is_ascii_alphanumeric()).next().unwrap_or_default())
        .collect()
}

#[test]
fn each_file_has_the_same_keys_in_both_languages() {
    let (english, spanish) = (written(&ENGLISH), written(&SPANISH));
    let keys = |texts: &BTreeMap<&'static str, BTreeMap<String, String>>| -> BTreeSet<String> {
        texts.iter().flat_map(|(file, keys)| keys.keys().map(move |key| format!("{file}: {key}"))).collect()
    };
    let (english, spanish) = (keys(&english), keys(&spanish));
    assert!(english.len() > 800, "{}", english.len());
    let missing: Vec<_> = english.difference(&spanish).collect();
    let without_english: Vec<_> = spanish.difference(&english).collect();
    assert!(missing.is_empty() && without_english.is_empty(), "{missing:#?} {without_english:#?}");
}

#[test]
fn the_program_finds_in_each_language_every_key_that_is_written() {
    for (language, files) in [(Language::En, ENGLISH), (Language::Es, SPANISH)] {
        let texts = Texts::of(language);
        assert_eq!(texts.language(), language);
        for key in all(&files).keys() {
            assert!(texts.holds(key), "{language:?}: {key}");
        }
    }
}

#[test]
fn each_text_has_the_same_variables_and_chooses_where_english_chooses() {
    let spanish = all(&SPANISH);
    let mut choosing = 0;
    for (key, english) in all(&ENGLISH) {
        let spanish = &spanish[&key];
        assert_eq!(variables(&english, false), variables(spanish, false), "{key}");
        let chosen = variables(&english, true);
        assert!(chosen.is_subset(&variables(spanish, true)), "{key}: {spanish}");
        choosing += chosen.len();
    }
    assert!(choosing >= 10, "{choosing}: variables that choose were not found");
}

#[test]
fn every_text_formats_in_both_languages_whatever_the_counts() {
    for (language, files) in [(Language::En, ENGLISH), (Language::Es, SPANISH)] {
        for (key, text) in all(&files) {
            let names = variables(&text, false);
            for value in [Arg::Count(0), Arg::Count(1), Arg::Count(2), Arg::Count(1_000_000), Arg::Text("x")]
            {
                let args: Vec<(&str, Arg<'_>)> = names.iter().map(|name| (*name, value)).collect();
                let mut errors: Vec<FluentError> = Vec::new();
                let said = Texts::of(language).format(&key, &args, &mut errors);
                let said = said.unwrap_or_else(|| panic!("{language:?}: no {key}"));
                assert!(errors.is_empty(), "{language:?} {key}: {errors:?}");
                assert!(!said.trim().is_empty() && !said.contains(['{', '}', '$']), "{key}: {said}");
                assert!(!said.contains("  "), "{language:?} {key}: {said}");
            }
        }
    }
}

/// Texts that read the same in both languages, and rightly so.
const SAME: [&str; 5] = ["air-figure", "family-mineral", "main-give-hours", "stop-by-other", "stop-of"];

#[test]
fn no_english_is_left_over() {
    let spanish = all(&SPANISH);
    let same: Vec<String> = all(&ENGLISH)
        .into_iter()
        .filter(|(key, english)| spanish[key] == *english)
        .map(|(key, _)| key)
        .collect();
    assert_eq!(same, SAME);
    // Words of English that are none of Spanish.
    let english = [
        "the", "and", "of", "is", "are", "not", "with", "before", "after", "at", "from", "to", "by", "it",
        "this", "that", "until", "when", "oil", "air", "truck", "shop", "unit", "hours",
    ];
    for (key, text) in spanish {
        let lower = text.to_lowercase();
        let variables = variables(&text, false);
        for word in words(&lower) {
            assert!(!english.contains(&word) || variables.contains(word), "{key}: {text}");
        }
    }
}

#[test]
fn no_text_approves_of_a_unit_or_shows_a_letter_for_a_lock() {
    let approving = [
        "seguro",
        "segura",
        "seguros",
        "seguras",
        "apto",
        "apta",
        "aptos",
        "aptas",
        "aprobado",
        "aprobada",
        "aprobados",
        "aprobadas",
        "aprueba",
        "aprobar",
        "confiable",
        "idóneo",
    ];
    for (key, text) in all(&SPANISH) {
        let lower = text.to_lowercase();
        for word in words(&lower) {
            assert!(!approving.contains(&word), "{key}: {text}");
        }
        for phrase in ["puede salir", "lista para", "listo para", "sin problema", "todo bien", "buen estado"]
        {
            assert!(!lower.contains(phrase), "{key}: {text}");
        }
        for word in words(&text) {
            assert!(!["R", "N"].contains(&word), "{key}: {text}");
        }
        // "A firmar" and "A paso de hombre" begin a sentence; anywhere else it would be a letter.
        let inner = text.split(['.', ':']).flat_map(|sentence| words(sentence).into_iter().skip(1));
        assert!(!inner.into_iter().any(|word| word == "A"), "{key}: {text}");
    }
}

#[test]
fn words_that_would_say_something_else_stand_nowhere() {
    // A pour is an "agregado": "vertido" is a spill. A tire is a "llanta", to drive is "manejar".
    let other = ["vertido", "vertidos", "verter", "neumático", "neumáticos", "conducir", "conductor"];
    for (key, text) in all(&SPANISH) {
        for word in words(&text.to_lowercase()) {
            assert!(!other.contains(&word), "{key}: {text}");
        }
    }
}

#[test]
fn names_keep_to_one_line_of_a_phone() {
    for (key, text) in all(&SPANISH) {
        let named = ["item-", "stop-", "step-", "choice-", "fluid-", "not-so-"];
        // Sentences of the screen of a stop, and findings that stand in a list of their own.
        let findings = ["choice-wrong-oil", "choice-other-grade", "choice-unknown-oil"];
        let sentence = text.contains('{') || findings.contains(&key.as_ref()) || key.contains('.');
        let is_name = !sentence && named.iter().any(|prefix| key.starts_with(prefix));
        assert!(!is_name || text.chars().count() <= 28, "{key}: {text}, {}", text.chars().count());
    }
}

#[test]
fn the_words_agreed_on_stand_as_agreed() {
    let texts = Texts::spanish();
    let say = |key: &str| texts.get(key, &[]);
    assert_eq!(say("part-road"), "MANEJO");
    assert_eq!(say("item-oil-level"), "Mirilla");
    assert_eq!(say("main-add-pour"), "Anotar un agregado");
    assert_eq!(say("main-read-road-stays-locked"), "Leído. Sin constancia: MANEJO sigue bloqueado");
    assert_eq!(say("lock-none-on-record"), "sin bloqueo registrado");
    assert_eq!(say("answer-not-fitted"), "no lo lleva");
    assert_eq!(say("standing-past-due"), "vencido");
    let since = [("since", "16:48".into()), ("count", Arg::Count(4))];
    assert_eq!(
        texts.get("error-no-signal", &since),
        "Sin señal desde: 16:48. Tus 4 registros están guardados en este teléfono. Sigue; se envían solos, \
         o entrégalos por archivo."
    );
    let before = [("since", "mar 16:48".into()), ("count", Arg::Count(0))];
    assert_eq!(
        texts.get("error-no-signal", &before),
        "Sin señal desde: mar 16:48. Nada espera en este teléfono. Sigue; lo que anotes queda guardado."
    );
    let stopped = [("when", "mar 14:02".into()), ("count", Arg::Count(6))];
    assert_eq!(
        texts.get("error-phone-stopped", &stopped),
        "El taller paró este teléfono el mar 14:02. Tus 6 registros están guardados y se pueden entregar por \
         archivo; allá decide una persona. Usa otro teléfono o papel."
    );
}

#[test]
fn one_and_many_agree() {
    let texts = Texts::spanish();
    let say = |key: &str, name: &str, count: i64| texts.get(key, &[(name, Arg::Count(count))]);
    assert_eq!(say("main-all-ok", "lines", 1), "Visto: bien");
    assert_eq!(say("main-all-ok", "lines", 8), "Los 8 vistos: bien");
    assert_eq!(say("main-other-ok", "lines", 7), "Los otros 7: bien");
    assert_eq!(say("why-not-more-below", "left", 1), "Falta 1 abajo");
    assert_eq!(say("why-not-more-below", "left", 3), "Faltan 3 abajo");
    assert_eq!(say("task-days-left", "days", 0), "hoy es el último día bueno");
    assert_eq!(say("task-days-left", "days", 1), "queda 1 día");
    assert_eq!(say("task-days-left", "days", 109), "quedan 109 días");
    assert_eq!(say("task-late-days", "days", 1), "hecho 1 día tarde");
    assert_eq!(say("display-stopped-again", "count", 2), "Hoy se paró solo 2 veces.");
    let one = [("count", Arg::Count(1)), ("phone", "patio 2".into()), ("taken", Arg::Count(1))];
    assert_eq!(
        texts.get("error-bad-signatures", &one),
        "1 registro de patio 2 trae una firma que no vale. Quedó apartado; el otro se recibió. Abre Apartados."
    );
}

#[test]
fn a_key_that_spanish_lacks_comes_in_english() {
    let few = Texts::read(Language::Es, &[("few", "item-horn = Claxon\n")], Some(Texts::english()));
    assert_eq!(few.get("item-horn", &[]), "Claxon");
    assert_eq!(few.get("item-horn.ok", &[]), "loud at once");
    assert_eq!(few.get("main-start-pre-trip", &[("door", "TH-01".into())]), "Start pre-trip, TH-01");
    assert!(few.has("item-horn.ok") && !few.holds("item-horn.ok"));
    assert_eq!(few.get("no-such-key", &[]), "<no-such-key>");
    assert!(!few.has("no-such-key"));
}
