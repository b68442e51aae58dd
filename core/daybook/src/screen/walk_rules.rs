//! What each rule says of a figure given on a walk: leak-down, build-up, low-air warning, tread and the like, side
//! by side and each by its name. It is shown and decides nothing.

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{HowGiven, NumberAsk, Template};
use sumpbook_trade::limit::{
    Case, Comparator, LeakRun, LeakSays, LeakTold, Limit, Measure, MissingFact, RuleVerdict, Rules,
};
use sumpbook_trade::procedure::Step;
use sumpbook_trade::record::{Answer, RuleNumbers};
use sumpbook_trade::{Feature, Features, Figure};

/// How long a brake test runs.
pub(super) const TEST_MS: u32 = 60_000;

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
    /// Whose rule: the id of a rule set, for the text `rule-set-...`.
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
    /// Its limit: "3 psi", "120 - 140 psi"; of a figure in another unit in that one too: "4/32 in (3.2 mm)".
    pub limit: Option<String>,
    /// Whether the figure keeps it; none when that cannot be told.
    pub keeps: Option<bool>,
    /// The drop was read before its minute was over and is scaled to it: it can break the rule and never keeps it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub scaled: bool,
    /// The fact that is missing.
    pub missing: Option<MissingFact>,
}

/// Whether the figures of an answer break a rule the shop goes by.
pub fn over(said: &[RuleSaid]) -> bool {
    said.iter().any(|row| row.goes_by && row.keeps == Some(false))
}

/// What the rules say of every figure of an answer; nothing of a figure no rule speaks of.
pub fn said(
    template: &Template,
    answer: &Answer,
    features: &Features,
    numbers: &RuleNumbers,
) -> Vec<RuleSaid> {
    let Some(number) = template.item(&answer.item).and_then(|item| item.number.as_ref()) else {
        return Vec::new();
    };
    let topic = number.limit.as_deref();
    let watched_s =
        answer.on_screen_ms.filter(|_| is_minute(number)).map(|ms| f64::from(ms.min(TEST_MS)) / 1e3);
    let figures = answer.figures.iter().map(|given| given.figure);
    let (item, place) = (&answer.item, answer.place.as_deref());
    of_topic(topic, figures, watched_s, (features, numbers), |figure, verdict| {
        row((item, place), figure, verdict)
    })
}

/// What the rules say of the figure of a step; nothing where no rule speaks of it.
pub fn said_of_step(
    step: &Step,
    figure: Figure,
    features: &Features,
    numbers: &RuleNumbers,
) -> Vec<RuleSaid> {
    let topic = step.number.as_ref().and_then(|number| number.limit.as_deref());
    of_topic(topic, [figure].into_iter(), None, (features, numbers), |figure, verdict| {
        row((&step.id, None), figure, verdict)
    })
}

fn of_topic(
    topic: Option<&str>,
    figures: impl Iterator<Item = Figure>,
    watched_s: Option<f64>,
    (features, numbers): (&Features, &RuleNumbers),
    row: impl Fn(Figure, RuleVerdict) -> RuleSaid,
) -> Vec<RuleSaid> {
    let (Some(topic), Ok(rules)) = (topic, Rules::common_practice()) else { return Vec::new() };
    let rules = rules.with_middle(numbers.middle_from, numbers.middle_to);
    // A trailer that is drawn makes two vehicles.
    let vehicles = if features.has(Feature::Trailer) { 2 } else { 1 };
    let case = Case { vehicles, ..Case::default() };
    let mut all = Vec::new();
    for figure in figures {
        let Some((value, unit)) = read(figure) else { continue };
        let told = watched_s.and_then(|seconds| LeakRun { drop: value, seconds }.told());
        let said = rules.say(topic, told.map_or(value, |told| told.in_a_minute), unit, &case, None);
        // Seconds given with a drop are no drop: a rule of another unit says nothing of them.
        let own = said.into_iter().filter(|verdict| verdict.figure.is_some() || verdict.missing.is_some());
        all.extend(own.map(|verdict| scaled(row(figure, verdict), told)));
    }
    all
}

/// A drop that is watched for a minute.
fn is_minute(number: &NumberAsk) -> bool {
    number.unit == Measure::Psi && number.how == HowGiven::Chosen
}

/// A drop read early is held against the rule as a whole minute's: it accuses at once, and it clears nobody.
fn scaled(row: RuleSaid, told: Option<LeakTold>) -> RuleSaid {
    let says = told.zip(row.keeps).map(|(told, keeps)| told.says(keeps));
    let keeps = if says == Some(LeakSays::RunAgain) { None } else { row.keeps };
    RuleSaid { keeps, scaled: told.is_some_and(|told| told.scaled), ..row }
}

/// The figure with its unit as the rules have it.
fn read(figure: Figure) -> Option<(f64, Measure)> {
    let unit = serde_json::from_value(serde_json::Value::String(key(&figure.unit))).ok()?;
    Some((figure.value_text().parse().ok()?, unit))
}

fn row((item, place): (&str, Option<&str>), figure: Figure, verdict: RuleVerdict) -> RuleSaid {
    RuleSaid {
        item: item.to_owned(),
        place: place.map(str::to_owned),
        figure: figure.to_string(),
        set: verdict.set,
        place_of_rule: verdict.place,
        edition: verdict.edition,
        cites: verdict.cites,
        goes_by: verdict.goes_by,
        is: verdict.limit.map(|limit| limit.is),
        limit: verdict.limit.map(|known| limit(known, read(figure).map(|(_, unit)| unit))),
        keeps: verdict.keeps,
        scaled: false,
        missing: verdict.missing,
    }
}

/// A unit as the record names it.
fn key<T: Serialize>(unit: &T) -> String {
    serde_json::to_value(unit).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A limit in its own unit, and in the figure's where that is another.
fn limit(limit: Limit, given: Option<Measure>) -> String {
    let own = limit_in(limit, limit.unit).unwrap_or_default();
    let given = given.filter(|given| *given != limit.unit).and_then(|given| limit_in(limit, given));
    given.map_or_else(|| own.clone(), |given| format!("{own} ({given})"))
}

fn limit_in(limit: Limit, unit: Measure) -> Option<String> {
    // To a tenth, and towards what keeps the rule: whoever reads the limit there is never over it.
    let told = |value: f64, up: bool| {
        if unit == limit.unit {
            return Some(value);
        }
        let tenths = (limit.unit.tell(value, unit)? * 1e7).round() / 1e6;
        Some(if up { tenths.ceil() } else { tenths.floor() } / 10.0)
    };
    let up = matches!(limit.is, Comparator::AtLeast | Comparator::MoreThan | Comparator::Within);
    let (low, high) = (told(limit.low, up)?, told(limit.high, false)?);
    if unit == Measure::ThirtySecond {
        return Some(format!("{low}/32 in"));
    }
    let unit = key(&unit);
    Some(match limit.is {
        Comparator::Within => format!("{low} - {high} {unit}"),
        _ => format!("{low} {unit}"),
    })
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
            sound: None,
        }
    }

    #[test]
    fn a_drop_at_the_limit_keeps_one_rule_and_not_another() {
        let template = Template::common_practice().unwrap();
        let alone = Features::default();
        let rows =
            said(template, &answer("air-leak-applied", "3", Unit::Psi), &alone, &RuleNumbers::default());
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
        // Towards what keeps it: 21 kPa is 3.046 psi, and nobody is told 3.1.
        let limits: Vec<_> = rows.iter().filter_map(|row| row.limit.as_deref()).collect();
        assert_eq!(limits, ["3 psi", "3 psi", "21 kPa (3 psi)", "40 kPa (5.8 psi)"]);
        assert!(!over(&rows), "a rule the shop does not go by stands beside it");
        assert!(over(&said(
            template,
            &answer("air-leak-applied", "4", Unit::Psi),
            &alone,
            &RuleNumbers::default()
        )));
        assert!(!over(&[]));
    }

    #[test]
    fn a_drop_read_early_is_scaled_to_its_minute_and_never_certifies() {
        let template = Template::common_practice().unwrap();
        let drop = |psi: &str, ms: u32| {
            let given = Answer { on_screen_ms: Some(ms), ..answer("air-leak-applied", psi, Unit::Psi) };
            said(template, &given, &Features::default(), &RuleNumbers::default()).remove(0)
        };
        let whole = drop("2", 75_000);
        assert_eq!((whole.keeps, whole.scaled), (Some(true), false), "the needle is read after the buzz");
        let early = drop("1", 30_000);
        assert_eq!((early.keeps, early.scaled), (None, true), "2 psi in a minute would keep it");
        let over = drop("2", 30_000);
        assert_eq!((over.keeps, over.scaled), (Some(false), true), "4 psi in a minute is a defect at once");
        let untimed = said(
            template,
            &answer("air-leak-applied", "2", Unit::Psi),
            &Features::default(),
            &RuleNumbers::default(),
        );
        assert_eq!((untimed[0].keeps, untimed[0].scaled), (Some(true), false));
    }

    #[test]
    fn a_steps_figure_is_held_against_its_rule() {
        let blow = sumpbook_trade::procedure::Procedures::common_practice().unwrap();
        let step = blow.of("use-air").unwrap().step("blow-clean").unwrap();
        let psi = |figure: &str| Figure::parse(figure, Unit::Psi).unwrap();
        let over = said_of_step(step, psi("30"), &Features::default(), &RuleNumbers::default());
        assert_eq!((over[0].set.as_str(), over[0].keeps), ("us-osha", Some(false)), "less than 30 psi");
        assert_eq!(
            said_of_step(step, psi("29"), &Features::default(), &RuleNumbers::default())[0].keeps,
            Some(true)
        );
    }

    #[test]
    fn tread_is_told_in_the_rules_own_unit_and_a_missing_fact_is_said() {
        let template = Template::common_practice().unwrap();
        let rows = said(
            template,
            &answer("tread-front", "3.175", Unit::Millimetre),
            &Features::default(),
            &RuleNumbers::default(),
        );
        assert_eq!((rows[0].keeps, rows[0].limit.as_deref()), (Some(true), Some("4/32 in (3.2 mm)")));
        let rows = said(
            template,
            &answer("low-air-warning", "58", Unit::Psi),
            &Features::default(),
            &RuleNumbers::default(),
        );
        let federal = rows.iter().find(|row| row.set == "us-federal").unwrap();
        assert_eq!((federal.keeps, federal.missing), (None, Some(MissingFact::CutOut)));
        assert_eq!(
            said(
                template,
                &answer("wheels", "3", Unit::Count),
                &Features::default(),
                &RuleNumbers::default()
            ),
            []
        );
    }
}
