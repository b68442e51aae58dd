//! `register`: people, units, what units do, and programmes, from lines of JSON.

use std::path::Path;

use chrono::{NaiveDate, NaiveTime, Timelike};
use serde::Deserialize;
use serde_json::Value;
use sumpbook_trade::clock::Programme;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::{OwnSeverity, Role, RuleNumbers, SetProfile, ShopSays};
use sumpbook_trade::unit::{Feature, HoseTag};
use sumpbook_trade::{Features, Stamp, Tenths};

use super::CommandError;
use super::args::FromLines;
use super::found::{hand, open, read_lines};
use super::out::{Said, counted};
use crate::papers::renew_annual_inspection;
use crate::{FeaturesSaid, Hand, NewPerson, Shop, UnitSaid};

/// One line that `register` reads.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "register", rename_all = "kebab-case", rename_all_fields = "kebab-case", deny_unknown_fields)]
enum Registration {
    /// Someone of the fleet.
    Person {
        name: String,
        role: Role,
        /// No longer here.
        #[serde(default)]
        gone: bool,
    },
    /// A unit: its truck, and the compressor set on it.
    Unit(Box<UnitLine>),
    /// What a unit does from a day on.
    Status {
        /// Door number.
        unit: String,
        from: NaiveDate,
        status: DayStatus,
        /// Expected out from this time of the yard, such as 07:00.
        #[serde(default, deserialize_with = "clock_time")]
        expected: Option<NaiveTime>,
    },
    /// Until which day a paper of a unit holds.
    Papers {
        /// Door number.
        unit: String,
        /// The last day on which its annual inspection holds.
        annual_inspection: NaiveDate,
        /// Who looked at it, by name.
        by: String,
    },
    /// What the phones say in the shop's own words: `on-call`, `emergency`, `of-fault`, `of-warning`, `of-reminder`.
    Says(ShopSays),
    /// The numbers of the rules: `coming-up-days`, `covers-minutes` and the rest; what is left out is the usual one.
    Numbers(RuleNumbers),
    /// What findings lock where the fleet has it otherwise than the checklist, whole; an empty list is the checklist.
    Severities {
        own: Vec<OwnSeverity>,
        /// Why, where a finding is to lock less than on the checklist.
        #[serde(default)]
        why: Option<String>,
    },
    /// A programme of services.
    Programme {
        /// Door number; every unit without one of its own when left out.
        #[serde(default)]
        unit: Option<String>,
        programme: Programme,
    },
}

#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct UnitLine {
    door: String,
    /// Serial of the chassis.
    #[serde(default)]
    serial: Option<String>,
    #[serde(default)]
    plate: Option<String>,
    features: FeaturesLine,
    in_service: NaiveDate,
    /// Compressor hours on that day.
    in_service_hours: Tenths,
    /// The last day on which its annual inspection holds; as it was when left out.
    #[serde(default)]
    annual_inspection: Option<NaiveDate>,
    /// Serial of the compressor set.
    #[serde(default)]
    set_serial: Option<String>,
    /// Whether that set comes from another unit.
    #[serde(default)]
    set_moved: bool,
    /// What is particular to the set.
    #[serde(default)]
    profile: Option<SetProfile>,
}

/// What a unit has, as a person writes it: hoses by their width in inches.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct FeaturesLine {
    switched: Vec<Feature>,
    valves: Vec<String>,
    reels: Vec<String>,
    hoses: Vec<HoseLine>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct HoseLine {
    tag: String,
    /// Inside diameter; not known when left out.
    #[serde(default)]
    inches: Option<f64>,
}

/// Enters people, units, programmes.
///
/// # Errors
/// At the first line that does not read or cannot be entered; those before it are entered.
pub(super) fn register(folder: &Path, args: &FromLines) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let text = read_lines(args)?;
    let lines = text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
    let mut entered = 0;
    for (index, line) in lines {
        read(line).and_then(|registration| enter(&mut shop, registration, args.received)).map_err(|e| {
            CommandError::Line { number: index + 1, reason: e.to_string(), recorded: entered }
        })?;
        entered += 1;
    }
    shop.ledger.settle()?;
    let told = match entered {
        0 => "No lines came; nothing was entered. Name a file of lines, or give them on standard input."
            .to_owned(),
        _ => format!("{} entered.", counted(entered, "line", "lines")),
    };
    Said::new(told, &serde_json::json!({ "entered": entered }))
}

/// A line as what it registers, refused in words when it does not read.
fn read(line: &str) -> Result<Registration, CommandError> {
    const KINDS: [&str; 8] =
        ["person", "unit", "status", "papers", "says", "numbers", "severities", "programme"];
    let asked = |text: String| CommandError::Asked(text);
    let value: Value = serde_json::from_str(line)
        .map_err(|e| asked(format!("this line is not JSON: {e}. Write one object on one line.")))?;
    let kind = match value.get("register").and_then(Value::as_str) {
        Some(kind) if KINDS.contains(&kind) => kind.to_owned(),
        _ => {
            return Err(asked(format!(
                "this line does not say what it registers. Give \"register\", one of: {}.",
                KINDS.join(", ")
            )));
        }
    };
    serde_json::from_value(value).map_err(|e| {
        asked(format!("this line does not read as '{kind}': {e}. Correct it and give the line again."))
    })
}

fn enter(shop: &mut Shop, registration: Registration, received: Option<Stamp>) -> Result<(), CommandError> {
    let hand = hand(shop, None, received);
    match registration {
        Registration::Person { name, role, gone } => {
            let name = named(&name, "a person needs a name")?;
            shop.add_person(NewPerson { name, role, gone }, &hand)?;
        }
        Registration::Unit(line) => {
            let door = named(&line.door, "a unit needs its door number")?;
            let said = UnitSaid {
                door,
                serial: line.serial,
                plate: line.plate,
                features: FeaturesSaid::whole(line.features.features()?),
                in_service: line.in_service,
                in_service_hours: line.in_service_hours,
                annual_inspection: line.annual_inspection,
                set_serial: line.set_serial,
                set_moved: line.set_moved,
                profile: line.profile.unwrap_or_else(SetProfile::unknown),
            };
            shop.enter_unit(said, &hand)?;
        }
        Registration::Status { unit, from, status, expected } => {
            let truck = shop.unit(&unit)?;
            let minute = expected.and_then(|time| u16::try_from(time.num_seconds_from_midnight() / 60).ok());
            shop.set_day_status(truck, from, status, minute, &hand)?;
        }
        Registration::Papers { unit, annual_inspection, by } => {
            let truck = shop.unit(&unit)?;
            let hand = Hand { person: Some(shop.person(&by)?), ..hand };
            renew_annual_inspection(shop, truck, annual_inspection, &hand)?;
        }
        Registration::Says(says) => {
            shop.set_says(says, &hand)?;
        }
        Registration::Numbers(numbers) => {
            shop.set_numbers(numbers, &hand)?;
        }
        Registration::Severities { own, why } => {
            shop.set_severities(own, why.as_deref(), &hand)?;
        }
        Registration::Programme { unit, programme } => {
            let truck = unit.map(|door| shop.unit(&door)).transpose()?;
            shop.set_programme(truck, programme, &hand)?;
        }
    }
    Ok(())
}

impl FeaturesLine {
    fn features(self) -> Result<Features, CommandError> {
        let mut features = Features::of(self.switched);
        features.valves = self.valves;
        features.reels = self.reels;
        for HoseLine { tag, inches } in self.hoses {
            features.hoses.push(match inches {
                None => HoseTag::unmeasured(tag),
                Some(inches) if inches > 0.0 && inches <= 6.0 => HoseTag::inches(tag, inches),
                Some(inches) => {
                    return Err(CommandError::Asked(format!(
                        "hose '{tag}' is {inches} in wide inside, which no air hose is. Give its width in inches, such as 0.75, or leave it out."
                    )));
                }
            });
        }
        Ok(features)
    }
}

/// A name without the blanks around it.
fn named(text: &str, why: &str) -> Result<String, CommandError> {
    match text.trim() {
        "" => Err(CommandError::Asked(format!("{why}. Correct it and give the line again."))),
        name => Ok(name.to_owned()),
    }
}

/// A time of the yard's clock, with seconds or, as people write it, without.
fn clock_time<'de, D: serde::Deserializer<'de>>(deserializer: D) -> Result<Option<NaiveTime>, D::Error> {
    let text = Option::<String>::deserialize(deserializer)?;
    text.map(|text| {
        NaiveTime::parse_from_str(&text, "%H:%M")
            .or_else(|_| NaiveTime::parse_from_str(&text, "%H:%M:%S"))
            .map_err(|_| serde::de::Error::custom(format!("'{text}' is no time of day, such as 07:00")))
    })
    .transpose()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_examples_read() {
        for text in
            [include_str!("../../examples/fleet.jsonl"), include_str!("../../examples/programme.jsonl")]
        {
            let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
            assert!(!lines.is_empty());
            for line in lines {
                read(line).unwrap();
            }
        }
    }

    #[test]
    fn a_mistyped_field_is_not_lost() {
        let line = r#"{"register":"unit","door":"TH-01","features":{"swiched":["diesel"]},"in-service":"2022-03-31","in-service-hours":"0.0"}"#;
        let told = read(line).unwrap_err().to_string();
        assert!(told.contains("swiched"), "{told}");
        for line in ["x", "[]", "{}", r#"{"register":"boss"}"#] {
            let told = read(line).unwrap_err().to_string();
            assert!(told.starts_with("this line "), "{told}");
        }
    }

    #[test]
    fn every_line_of_the_readme_and_of_the_help_registers_something() {
        let readme =
            include_str!("../../../../README.md").lines().filter(|line| line.starts_with("{\"register\""));
        let mut read_lines = 0;
        for line in readme {
            read(line).unwrap_or_else(|e| panic!("{line}: {e}"));
            read_lines += 1;
        }
        assert!(read_lines >= 6, "{read_lines}");
        // The list that is told is the list that is taken.
        let none = serde_json::from_str::<Registration>(r#"{"register":"boss"}"#).unwrap_err().to_string();
        let told = read(r#"{"register":"boss"}"#).unwrap_err().to_string();
        for kind in none.split('`').skip(3).step_by(2) {
            assert!(told.contains(kind), "{kind}: {told}");
        }
        let papers =
            r#"{"register":"papers","unit":"TH-02","annual-inspection":"2027-03-12","by":"Wren Castellane"}"#;
        assert!(crate::command::examples::REGISTER_LINES.contains(papers));
        assert!(matches!(read(papers), Ok(Registration::Papers { .. })));
    }

    #[test]
    fn a_hose_is_told_in_inches() {
        let line = |inches| FeaturesLine {
            hoses: vec![HoseLine { tag: "H-12".to_owned(), inches }],
            ..FeaturesLine::default()
        };
        assert_eq!(line(Some(0.75)).features().unwrap().hoses[0].inner_um, Some(19_050));
        assert_eq!(line(None).features().unwrap().hoses[0].inner_um, None);
        // A width typed in millimetres.
        assert!(line(Some(19.0)).features().is_err());
    }
}
