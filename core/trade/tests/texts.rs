//! Every id of the data has its English words, and no words are left without an id.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test may stop where it stands")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde::Serialize;
use sumpbook_trade::checklist::{EngineState, Severity, Side};
use sumpbook_trade::lay_up::{LAID_UP, LIST_OPEN, ReturnList};
use sumpbook_trade::{Feature, Fluid, Fluids, Item, Mix, OilFamily, Part, Procedures, Template};

/// The kebab-case key a thing has in data.
fn key(thing: &impl Serialize) -> String {
    serde_json::to_value(thing).unwrap().as_str().unwrap().to_owned()
}

/// Messages and attributes ("item-horn", "item-horn.ok") with their texts, of one file.
fn read(file: &str) -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../daybook/texts/en").join(file);
    let text = std::fs::read_to_string(&path).unwrap();
    let mut texts = BTreeMap::new();
    let mut message = String::new();
    for line in text.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (name, value) = line.split_once(" = ").unwrap_or_else(|| panic!("{file}: {line}"));
        let name = match name.strip_prefix("    .") {
            Some(attribute) => format!("{message}.{attribute}"),
            None => {
                message = name.to_owned();
                message.clone()
            }
        };
        assert!(!value.trim().is_empty(), "{file}: {name} says nothing");
        assert_eq!(texts.insert(name.clone(), value.to_owned()), None, "{file}: {name} stands twice");
    }
    texts
}

/// A prefix for each of some keys.
fn with(prefix: &str, keys: impl IntoIterator<Item = impl AsRef<str>>) -> BTreeSet<String> {
    keys.into_iter().map(|key| format!("{prefix}-{}", key.as_ref())).collect()
}

fn the_file_has(file: &str, expected: impl IntoIterator<Item = BTreeSet<String>>) {
    let expected: BTreeSet<String> = expected.into_iter().flatten().collect();
    let found: BTreeSet<String> = read(file).into_keys().collect();
    let missing: Vec<_> = expected.difference(&found).collect();
    let orphans: Vec<_> = found.difference(&expected).collect();
    assert!(missing.is_empty() && orphans.is_empty(), "{file}: missing {missing:?}, orphans {orphans:?}");
}

fn template() -> &'static Template {
    Template::common_practice().unwrap()
}

const ENGINE: [EngineState; 7] = [
    EngineState::KeyOut,
    EngineState::KeyOff,
    EngineState::KeyOn,
    EngineState::LightsOn,
    EngineState::Running,
    EngineState::ColdStopped,
    EngineState::OffThenFastIdle,
];

#[test]
fn every_item_and_stop_has_its_words() {
    let mut items = BTreeSet::new();
    for item in &template().items {
        for attribute in ["", ".ok", ".look"] {
            items.insert(format!("item-{}{attribute}", item.id));
        }
    }
    let extra: BTreeSet<String> = ["chocks-in", "yard-only"].map(String::from).into();
    the_file_has(
        "checklist.ftl",
        [
            items,
            with("stop", template().stops.iter().map(|stop| &stop.id)),
            with("engine", ENGINE.iter().map(key)),
            with("side", Side::ALL.iter().map(key)),
            extra,
        ],
    );
}

#[test]
fn every_word_for_what_is_wrong_can_be_said() {
    use Severity::{Air, Note, Outlet, Road, RoadAndAir};
    let words = template().items.iter().flat_map(|item| &item.defects).map(|defect| defect.0.as_str());
    the_file_has(
        "choices.ftl",
        [
            with("choice", words.chain([Item::OTHER])),
            with("severity", [RoadAndAir, Road, Air, Outlet, Note].iter().map(key)),
            with("part", Part::ALL.iter().map(key)),
            with("feature", Feature::ALL.iter().map(key)),
        ],
    );
}

#[test]
fn every_line_of_the_return_list_says_what_it_is_and_what_is_looked_at() {
    let mut lines = BTreeSet::from([format!("item-{LAID_UP}"), format!("choice-{LIST_OPEN}")]);
    for line in &ReturnList::common_practice().unwrap().lines {
        lines.extend(["", ".look"].map(|attribute| format!("return-{}{attribute}", line.id)));
    }
    the_file_has("lay_up.ftl", [lines]);
}

#[test]
fn every_caution_that_is_named_is_written_and_none_besides() {
    let procedures = &Procedures::common_practice().unwrap().procedures;
    let steps = procedures.iter().flat_map(|procedure| &procedure.steps);
    let named = template().items.iter().filter_map(|item| item.caution.as_deref());
    let named = named.chain(steps.filter_map(|step| step.caution.as_deref()));
    let lines = &ReturnList::common_practice().unwrap().lines;
    let named = named.chain(lines.iter().filter_map(|line| line.caution.as_deref()));
    let fluids = &Fluids::common_practice().unwrap().fluids;
    let named = named.chain(fluids.iter().filter_map(|facts| facts.caution.as_deref()));
    // The first of every list, and what the shop's date of the annual inspection makes of the papers'.
    the_file_has(
        "cautions.ftl",
        [with("caution", named.chain(["opening", "inspection-over", "inspection-near"]))],
    );
}

#[test]
fn every_step_says_what_it_is_and_what_it_means_when_not_so() {
    let procedures = &Procedures::common_practice().unwrap().procedures;
    let told: BTreeSet<String> = read("procedures.ftl").into_keys().collect();
    let mut steps = BTreeSet::new();
    let mut words = BTreeSet::new();
    for step in procedures.iter().flat_map(|procedure| &procedure.steps) {
        for attribute in ["", ".ok", ".stops"] {
            steps.insert(format!("step-{}{attribute}", step.id));
        }
        // How it is done stands only where there is more to say than what OK is.
        steps.extend(Some(format!("step-{}.hint", step.id)).filter(|hint| told.contains(hint)));
        words.extend(with("not-so", step.stops.iter().map(|stop| &stop.0)));
    }
    let ids = with("procedure", procedures.iter().map(|procedure| &procedure.id));
    the_file_has("procedures.ftl", [ids, steps, words]);
}

#[test]
fn every_fluid_finding_and_family_has_its_words() {
    let facts = &Fluids::common_practice().unwrap().fluids;
    let findings = facts.iter().flat_map(|facts| &facts.findings).map(|finding| &finding.0);
    let mixes = [Mix::Same, Mix::OtherGrade, Mix::OtherFamily, Mix::Unknown];
    the_file_has(
        "fluids.ftl",
        [
            with("fluid", Fluid::ALL.iter().map(key)),
            with("finding", findings),
            with("family", OilFamily::ALL.iter().map(key)),
            with("mix", mixes.iter().map(key)),
        ],
    );
}

const FILES: [&str; 6] =
    ["checklist.ftl", "choices.ftl", "cautions.ftl", "procedures.ftl", "fluids.ftl", "lay_up.ftl"];

#[test]
fn names_keep_to_one_line_of_a_phone() {
    for file in FILES {
        for (name, text) in read(file) {
            let is_name = ["item-", "stop-", "step-", "choice-", "fluid-", "not-so-", "return-"]
                .iter()
                .any(|prefix| name.starts_with(prefix) && !name.contains('.'));
            assert!(!is_name || text.chars().count() <= 28, "{name}: {text}");
        }
    }
}

#[test]
fn no_text_approves_of_a_unit_or_shows_a_letter_for_a_lock() {
    let banned = ["safe", "fit", "pass", "passes", "passed", "tyre", "tyres"];
    let letters = ["R", "N"];
    for file in FILES {
        for (name, text) in read(file) {
            let lower = text.to_lowercase();
            let not_a_word = |c: char| !c.is_alphanumeric();
            let approves =
                lower.contains("good to go") || lower.split(not_a_word).any(|word| banned.contains(&word));
            let letter = text.split(not_a_word).any(|word| letters.contains(&word));
            assert!(!approves && !letter, "{name}: {text}");
        }
    }
}
