use std::collections::BTreeSet;

use super::super::*;
use super::template;
use crate::limit::Rules;

// 49 CFR 396.11(a)(1): eleven parts.
#[test]
fn all_eleven_parts_of_the_drivers_report_are_asked() {
    assert_eq!(Part::ALL.len(), 11);
    for part in Part::ALL {
        assert!(template().of_part(part).next().is_some(), "{part:?}");
    }
}

// A part must be answerable on every unit that can have it: whatever the features, only coupling
// devices (a trailer's) may be without a line.
#[test]
fn a_bare_unit_still_answers_for_ten_parts() {
    let asked: BTreeSet<Part> = plan(template(), &Default::default())
        .iter()
        .flat_map(|stop| &stop.lines)
        .filter_map(|line| template().item(&line.item)?.part)
        .collect();
    let missing: Vec<Part> = Part::ALL.into_iter().filter(|part| !asked.contains(part)).collect();
    assert_eq!(missing, [Part::Coupling]);
}

#[test]
fn every_limit_a_figure_is_held_against_exists_and_measures_the_same() {
    let rules = Rules::common_practice().unwrap();
    let topics = template().items.iter().filter_map(|item| item.number.as_ref());
    for ask in topics {
        let Some(topic) = &ask.limit else { continue };
        let rule = rules.on(topic, None).unwrap_or_else(|| panic!("no rule on {topic}"));
        let dated = ask.unit == crate::Measure::Date;
        assert!(dated || ask.unit.tell(1.0, rule.unit).is_some(), "{topic}");
    }
}

#[test]
fn figures_asked_and_chosen_are_the_few_a_walk_can_bear() {
    let given = |how: HowGiven| {
        let all = template().items.iter().filter(|item| item.number.as_ref().is_some_and(|n| n.how == how));
        all.map(|item| item.id.as_str()).collect::<Vec<_>>()
    };
    assert_eq!(given(HowGiven::Asked), ["oil-level", "hours"]);
    assert_eq!(given(HowGiven::Chosen), ["air-leak-released", "air-leak-applied"]);
    assert_eq!(given(HowGiven::Timed), ["air-buildup"]);
    assert_eq!(given(HowGiven::Known), ["phone-age"]);
}

// The items whose look can hurt somebody, by common practice.
#[test]
fn every_item_that_can_hurt_has_its_caution() {
    let with = [
        "last-report",
        "phone-age",
        "start-device",
        "air-buildup",
        "governor",
        "air-leak-released",
        "air-leak-applied",
        "low-air-warning",
        "spring-pop",
        "brake-pedal",
        "brake-fluid",
        "park-hold",
        "svc-roll",
        "engine-oil",
        "coolant",
        "hyd-oil",
        "def-level",
        "fuel",
        "water-trap",
        "washer-fluid",
        "belts",
        "hoses-engine",
        "leaks-under",
        "battery",
        "brake-parts",
        "tank-drain",
        "lamps-head",
        "lamps-stop",
        "lamps-turn",
        "lamps-marker",
        "lamps-reverse",
        "tread-front",
        "tread-rest",
        "tyre-wall",
        "tyre-press",
        "body-pto-lamp",
        "press-zero",
        "oil-level",
        "drain-water",
        "oil-leaks",
        "air-leaks",
        "intake-filter",
        "filter-flag",
        "cooler-face",
        "fan",
        "cooler-doors",
        "drive-line",
        "belt-drive",
        "safety-valve",
        "hours",
    ];
    let has: BTreeSet<&str> =
        template().items.iter().filter(|i| i.caution.is_some()).map(|i| i.id.as_str()).collect();
    assert_eq!(has, BTreeSet::from(with));
}

#[test]
fn every_item_offers_a_word_and_no_word_twice() {
    for item in &template().items {
        let words: BTreeSet<&String> = item.defects.iter().map(|defect| &defect.0).collect();
        assert!(!words.is_empty() && words.len() == item.defects.len(), "{}", item.id);
        assert!(!words.iter().any(|word| *word == Item::OTHER), "{}", item.id);
    }
}

#[test]
fn other_locks_what_the_worst_word_locks() {
    let severity = |id: &str, word: &str| template().item(id).unwrap().severity(word);
    assert_eq!(severity("mirrors", "hairline"), Some(Severity::Note));
    assert_eq!(severity("mirrors", "cracked"), Some(Severity::Road));
    assert_eq!(severity("mirrors", Item::OTHER), Some(Severity::Road));
    assert_eq!(severity("labels", Item::OTHER), Some(Severity::Note));
    assert_eq!(severity("body-pto-lamp", Item::OTHER), Some(Severity::RoadAndAir));
    assert_eq!(severity("hose", Item::OTHER), Some(Severity::Outlet));
    assert_eq!(severity("mirrors", "milky"), None);
}

#[test]
fn coolant_low_twice_in_seven_days_locks_the_road() {
    let coolant = template().item("coolant").unwrap();
    assert_eq!(coolant.severity("low"), Some(Severity::Note));
    assert_eq!(coolant.severity_again("low"), Some(Severity::Road));
    assert_eq!(coolant.again.as_ref().unwrap().days, 7);
    assert_eq!(coolant.severity_again("oily"), None, "the same each time");
}

#[test]
fn a_checklist_that_does_not_hang_together_is_refused() {
    let whole = template();
    let refused = |change: &dyn Fn(&mut Template)| {
        let mut edited = whole.clone();
        change(&mut edited);
        edited.check().unwrap_err()
    };
    let line = |text: &str| text.parse::<Line>().unwrap();
    assert_eq!(refused(&|t| t.items[3].id = "horn".into()), TemplateError::Twice("horn".into()));
    assert_eq!(refused(&|t| t.stops[3].lines.push(line("labels"))), TemplateError::Twice("labels".into()));
    assert_eq!(
        refused(&|t| t.stops[0].lines.push(line("horn/left"))),
        TemplateError::NoSuchLine { stop: "under-hood".into(), line: "horn/left".into() }
    );
    assert_eq!(
        refused(&|t| t.stops[5].lines.retain(|l| l.item != "tread-front")),
        TemplateError::InNoStop("tread-front/left".into())
    );
    assert!(matches!(refused(&|t| t.citations.clear()), TemplateError::NoSuchCitation { .. }));
    let again = |t: &mut Template| {
        t.items.iter_mut().filter_map(|i| i.again.as_mut()).for_each(|a| a.word = "x".into())
    };
    assert_eq!(refused(&again), TemplateError::NoSuchWord { item: "coolant".into(), word: "x".into() });
    assert!(matches!(Template::read("edition = 1"), Err(TemplateError::Shape(_))));
}

#[test]
fn a_checklist_survives_json() {
    let json = serde_json::to_string(template()).unwrap();
    assert_eq!(&serde_json::from_str::<Template>(&json).unwrap(), template());
}
