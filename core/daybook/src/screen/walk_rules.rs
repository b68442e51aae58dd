//! What each rule says of a figure given on a walk: leak-down, build-up, low-air warning, tread and the like, side
//! by side and each by its name. It is shown and decides nothing.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Template;
use sumpbook_trade::limit::{Case, Comparator, Limit, Measure, MissingFact, RuleVerdict, Rules};
use sumpbook_trade::record::Answer;
use sumpbook_trade::{Feature, Features, Figure};

/// One rule's word about one figure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RuleSaid {
    /// The item of the checklist.
    pub item: String,
    /// Which of its places.
    pub place: Option<String>,
    /// The figure as it was given: "3.5 psi".
    pub figure: String,
    /// Whose rule: the id of a rule set.
    pub set: String,
    /// Where it holds, and in which edition it was read.
    pub place_of_rule: String,
    /// The edition it was read in.
    pub edition: String,
    /// Where it is written.
    pub cites: String,
    /// The shop goes by it; the others stand beside it.
    pub goes_by: bool,
    /// How it compares: `at-most`, `less-than`, `at-least`, `more-than`, `within`; none when a fact is missing.
    pub is: Option<Comparator>,
    /// Its limit: "3 psi", "120 to 140 psi".
    pub limit: Option<String>,
    /// Whether the figure keeps it; none when that cannot be told.
    pub keeps: Option<bool>,
    /// The fact that is missing.
    pub missing: Option<MissingFact>,
}

/// Whether the figures of an answer break a rule the shop goes by.
pub fn over(said: &[RuleSaid]) -> bool {
    said.iter().any(|row| row.goes_by && row.keeps == Some(false))
}

/// What the rules say of every figure of an answer; nothing of a figure no rule speaks of.
pub fn said(template: &Template, answer: &Answer, features: &Features) -> Vec<RuleSaid> {
    let topic = template.item(&answer.item).and_then(|item| item.number.as_ref()?.limit.clone());
    let (Some(topic), Ok(rules)) = (topic, Rules::common_practice()) else { return Vec::new() };
    // A trailer that is drawn makes two vehicles.
    let vehicles = if features.has(Feature::Trailer) { 2 } else { 1 };
    let case = Case { vehicles, ..Case::default() };
    let mut all = Vec::new();
    for given in &answer.figures {
        let Some((value, unit)) = read(given.figure) else { continue };
        let said = rules.say(&topic, value, unit, &case, None);
        // Seconds given with a drop are no drop: a rule of another unit says nothing of them.
        let own = said.into_iter().filter(|verdict| verdict.figure.is_some() || verdict.missing.is_some());
        all.extend(own.map(|verdict| row(answer, given.figure, verdict)));
    }
    all
}

/// The figure with its unit as the rules have it.
fn read(figure: Figure) -> Option<(f64, Measure)> {
    let unit = serde_json::from_value(serde_json::Value::String(key(&figure.unit))).ok()?;
    Some((figure.value_text().parse().ok()?, unit))
}

fn row(answer: &Answer, figure: Figure, verdict: RuleVerdict) -> RuleSaid {
    RuleSaid {
        item: answer.item.clone(),
        place: answer.place.clone(),
        figure: figure.to_string(),
        set: verdict.set,
        place_of_rule: verdict.place,
        edition: verdict.edition,
        cites: verdict.cites,
        goes_by: verdict.goes_by,
        is: verdict.limit.map(|limit| limit.is),
        limit: verdict.limit.map(limit),
        keeps: verdict.keeps,
        missing: verdict.missing,
    }
}

/// A unit as the record names it.
fn key<T: Serialize>(unit: &T) -> String {
    serde_json::to_value(unit).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

fn limit(limit: Limit) -> String {
    if limit.unit == Measure::ThirtySecond {
        return format!("{}/32 in", limit.low);
    }
    let unit = key(&limit.unit);
    match limit.is {
        Comparator::Within => format!("{} - {} {unit}", limit.low, limit.high),
        _ => format!("{} {unit}", limit.low),
    }
}

#[cfg(test)]
mod tests {
    use sumpbook_trade::Unit;
    use sumpbook_trade::record::{AnswerKind, How, ItemFigure};

    use super::*;

    fn answer(item: &str, figure: &str, unit: Unit) -> Answer {
        let figure = Figure::parse(figure, unit).unwrap();
        Answer {
            item: item.to_owned(),
            place: None,
            answer: AnswerKind::Ok,
            word: None,
            severity: None,
            figures: vec![ItemFigure { figure, how: How::Timed }],
            on_screen_ms: None,
            together: None,
            words: None,
            photos: Vec::new(),
        }
    }

    #[test]
    fn a_drop_at_the_limit_keeps_one_rule_and_not_another() {
        let template = Template::common_practice().unwrap();
        let alone = Features::default();
        let rows = said(template, &answer("air-leak-applied", "3", Unit::Psi), &alone);
        let told: Vec<(&str, Option<bool>, bool)> =
            rows.iter().map(|row| (row.set.as_str(), row.keeps, row.goes_by)).collect();
        // 3 psi is at most 3, not less than 3; 20.7 kPa is at most 21 and at most 40.
        assert_eq!(
            told,
            [
                ("cdl-modernized", Some(true), true),
                ("cdl-older", Some(false), false),
                ("ca-ontario", Some(true), false),
                ("ca-quebec", Some(true), false),
            ]
        );
        assert!(rows[0].cites.contains("section 5.3"), "{rows:?}");
        assert!(!over(&rows), "a rule the shop does not go by stands beside it");
        assert!(over(&said(template, &answer("air-leak-applied", "4", Unit::Psi), &alone)));
        assert!(!over(&[]));
    }

    #[test]
    fn tread_is_told_in_the_rules_own_unit_and_a_missing_fact_is_said() {
        let template = Template::common_practice().unwrap();
        let rows = said(template, &answer("tread-front", "3.175", Unit::Millimetre), &Features::default());
        assert_eq!((rows[0].keeps, rows[0].limit.as_deref()), (Some(true), Some("4/32 in")));
        let rows = said(template, &answer("low-air-warning", "58", Unit::Psi), &Features::default());
        let federal = rows.iter().find(|row| row.set == "us-federal").unwrap();
        assert_eq!((federal.keeps, federal.missing), (None, Some(MissingFact::CutOut)));
        assert_eq!(said(template, &answer("wheels", "3", Unit::Count), &Features::default()), []);
    }
}
