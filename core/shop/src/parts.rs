//! Parts and oil for visits: what a unit took at its last services, by its own numbers, and oil in whole containers.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::ServiceDone;
use sumpbook_trade::{Fact, FactKind, Figure, TruckId, Unit};

use crate::ShopError;
use crate::due::PartRow;
use crate::plan::VisitRow;
use crate::sheet::{entry_of, key};

/// Services of one unit looked through, newest first.
const SERVICES: i64 = 60;
/// Oil comes to the yard in jugs of one US gallon. Common practice, no source.
const JUG: Figure = Figure { digits: 1, places: 0, unit: Unit::Gallon };

/// What one visit needs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct VisitNeeds {
    /// Door number.
    pub unit: String,
    /// The visit's day.
    pub day: NaiveDate,
    /// Parts by the unit's own numbers, as the last service of each task lists them.
    pub parts: Vec<String>,
    /// Tasks of which no service with parts is on record: keys of the texts.
    pub parts_unknown: Vec<String>,
    /// Oil, where one of the tasks changes it.
    pub oil: Option<OilNeed>,
    /// Parts this unit waits for, with their promised days.
    pub waits: Vec<PartRow>,
}

/// Oil for one visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OilNeed {
    /// Its family; none when the set's is not on record.
    pub family: Option<String>,
    /// Its grade.
    pub grade: Option<String>,
    /// How much, as it was put in last, or as the set is down as holding: "6 qt". None when neither is on record.
    pub volume: Option<String>,
    /// The same, litres.
    pub litres: Option<f64>,
    /// The same in whole jugs of one US gallon.
    pub jugs: Option<u32>,
}

/// Oil of one kind for all visits of the week.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OilToLoad {
    /// Its family.
    pub family: Option<String>,
    /// Its grade.
    pub grade: Option<String>,
    /// Litres in all.
    pub litres: f64,
    /// Whole jugs of one US gallon that hold them.
    pub jugs: u32,
    /// For these units.
    pub units: Vec<String>,
    /// Of these it is not known how much they take: it comes on top.
    pub not_known: Vec<String>,
}

/// What a visit needs: asked of the unit's own last services.
///
/// # Errors
/// As any read.
pub(crate) fn of_visit(
    ledger: &Ledger,
    truck: TruckId,
    visit: &VisitRow,
    waits: Vec<PartRow>,
) -> Result<VisitNeeds, ShopError> {
    let done = services(ledger, truck)?;
    let (mut parts, mut parts_unknown): (Vec<String>, Vec<String>) = Default::default();
    for task in &visit.tasks {
        let last = done.iter().find(|done| !done.parts.is_empty() && done.tasks.iter().any(|t| t.0 == *task));
        match last {
            Some(done) => {
                let new: Vec<String> = done.parts.iter().filter(|p| !parts.contains(p)).cloned().collect();
                parts.extend(new);
            }
            None => parts_unknown.push(task.clone()),
        }
    }
    let oil = changes_oil(ledger, truck, &visit.tasks).then(|| oil_of(ledger, truck, &done));
    Ok(VisitNeeds { unit: visit.unit.clone(), day: visit.day, parts, parts_unknown, oil, waits })
}

/// Oil for these tasks of a unit; none where none of them changes it.
///
/// # Errors
/// As any read.
pub(crate) fn oil(ledger: &Ledger, truck: TruckId, tasks: &[String]) -> Result<Option<OilNeed>, ShopError> {
    if !changes_oil(ledger, truck, tasks) {
        return Ok(None);
    }
    Ok(Some(oil_of(ledger, truck, &services(ledger, truck)?)))
}

fn changes_oil(ledger: &Ledger, truck: TruckId, tasks: &[String]) -> bool {
    ledger.fleet().programme_of(truck).oil_tasks().any(|task: &TaskId| tasks.contains(&task.0))
}

fn oil_of(ledger: &Ledger, truck: TruckId, done: &[ServiceDone]) -> OilNeed {
    let profile = ledger.fleet().set_on(truck).map(|set| &set.profile);
    let put = done.iter().filter_map(|done| done.oil.as_ref()).find(|oil| oil.volume.is_some());
    let volume = put.and_then(|oil| oil.volume).or_else(|| profile.and_then(|profile| profile.oil_volume));
    // What the set is down as having goes before what was once put in: it may have been changed since.
    let family = profile.and_then(|profile| profile.oil_family).or_else(|| put.and_then(|oil| oil.family));
    let grade = profile.and_then(|p| p.oil_grade.clone()).or_else(|| put.and_then(|oil| oil.grade.clone()));
    let litres = volume.and_then(litres);
    OilNeed {
        family: family.map(|family| key(&family)),
        grade,
        volume: volume.map(|volume| format!("{} {}", volume.value_text(), key(&volume.unit))),
        litres,
        jugs: litres.map(jugs),
    }
}

/// All oil of these visits by family and grade, in whole containers.
pub(crate) fn to_load(visits: &[VisitNeeds]) -> Vec<OilToLoad> {
    let mut all: BTreeMap<(Option<String>, Option<String>), OilToLoad> = BTreeMap::new();
    for visit in visits {
        let Some(oil) = &visit.oil else { continue };
        let kind = (oil.family.clone(), oil.grade.clone());
        let row = all.entry(kind).or_insert_with(|| OilToLoad {
            family: oil.family.clone(),
            grade: oil.grade.clone(),
            litres: 0.0,
            jugs: 0,
            units: Vec::new(),
            not_known: Vec::new(),
        });
        match oil.litres {
            Some(litres) => {
                row.litres += litres;
                row.units.push(visit.unit.clone());
            }
            None => row.not_known.push(visit.unit.clone()),
        }
    }
    // Together they need fewer than each by itself: what is over from one visit goes into the next.
    all.into_values().map(|row| OilToLoad { jugs: jugs(row.litres), ..row }).collect()
}

fn services(ledger: &Ledger, truck: TruckId) -> Result<Vec<ServiceDone>, ShopError> {
    let truth = ledger.store().truth();
    let mut done = Vec::new();
    for fact in ledger.newest_air_facts(truck, FactKind::ServiceDone, SERVICES)? {
        if fact.judged == Judged::Counts
            && let Some((_, entry)) = entry_of(&truth, fact.n)?
            && let Fact::ServiceDone(service) = entry.fact
        {
            done.push(service);
        }
    }
    Ok(done)
}

fn litres(figure: Figure) -> Option<f64> {
    figure.litres().filter(|litres| *litres > 0.0)
}

/// Whole jugs that hold so much. What is a whole number of them needs no further one for the sake of a last digit.
pub(crate) fn jugs(litres_needed: f64) -> u32 {
    let jug = litres(JUG).unwrap_or(1.0);
    let count = (litres_needed / jug - 1e-6).ceil();
    // Within bounds: no visit needs a million jugs.
    count.clamp(0.0, 1_000_000.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::NewSet;
    use crate::plan::fleet_due;
    use crate::plan::{Work, plan_visits};
    use crate::service::{service_done, service_told};
    use crate::tests::yard::*;
    use sumpbook_trade::Tenths;
    use sumpbook_trade::fluid::OilFamily;
    use sumpbook_trade::record::{OilPut, SetProfile};

    fn oil(yard: &mut Yard, door: &str, volume: Option<&str>) {
        let hand = yard.hand("Ilse", "2026-10-18T13:00:00-06:00");
        let profile = SetProfile {
            oil_family: Some(OilFamily::Mineral),
            oil_grade: Some("VG 46".into()),
            oil_volume: volume.map(|text| Figure::parse(text, Unit::Quart).unwrap()),
            ..SetProfile::unknown()
        };
        let truck = yard.truck(door);
        yard.shop.add_set(NewSet { serial: None, on: Some(truck), profile }, &hand).unwrap();
    }

    #[test]
    fn a_service_with_oil_of_another_family_is_asked_about_and_none_is_older_than_its_unit() {
        let mut yard = Yard::new();
        oil(&mut yard, "TH-02", Some("9"));
        let (truck, dov) = (yard.truck("TH-02"), yard.hand("Dov", "2026-10-19T09:00:00-06:00"));
        let filled = |family| {
            let put =
                OilPut { volume: Figure::parse("8", Unit::Quart).ok(), family: Some(family), grade: None };
            ServiceDone { oil: Some(put), ..service(&["oil-and-filters"]) }
        };
        let wrong =
            service_done(&mut yard.shop, truck, filled(OilFamily::Polyglycol), Some(Tenths(12_047)), &dov);
        let told = wrong.unwrap_err().to_string();
        assert!(told.contains("TH-02") && told.contains("mineral") && told.contains("polyglycol"), "{told}");
        // The unit's new oil first, then the service of that morning.
        let ilse = yard.hand("Ilse", "2026-10-19T12:00:00-06:00");
        let profile = SetProfile { oil_family: Some(OilFamily::Polyglycol), ..SetProfile::unknown() };
        yard.shop.add_set(NewSet { serial: None, on: Some(truck), profile }, &ilse).unwrap();
        let told = |at_text: &str| crate::Told {
            person: dov.person,
            at: at(at_text),
            source: sumpbook_trade::record::Source::Shop,
            hours: None,
            note: None,
        };
        let morning = told("2026-10-19T09:00:00-06:00");
        service_told(&mut yard.shop, truck, filled(OilFamily::Polyglycol), morning, &ilse).unwrap();
        let old = told("1990-01-01T12:00:00-07:00");
        let old = service_told(&mut yard.shop, truck, service(&["separator"]), old, &ilse).unwrap_err();
        assert!(old.to_string().contains("came into service on"), "{old}");
    }

    #[test]
    fn a_week_lists_parts_by_the_units_own_numbers_and_oil_in_whole_jugs() {
        let mut yard = Yard::new();
        // TH-01 as its set is down, TH-02 as it was put in last, of TH-08 neither is known.
        oil(&mut yard, "TH-01", Some("6"));
        oil(&mut yard, "TH-02", Some("9"));
        oil(&mut yard, "TH-08", None);
        let hand = yard.hand("Dov", "2026-10-19T09:00:00-06:00");
        let four = Figure::parse("4", Unit::Quart).unwrap();
        let put = OilPut { volume: Some(four), family: None, grade: None };
        let done = ServiceDone {
            oil: Some(put),
            parts: vec!["F-118".into(), "E-20".into()],
            ..service(&["oil-and-filters"])
        };
        let th_02 = yard.truck("TH-02");
        service_done(&mut yard.shop, th_02, done, Some(Tenths(12_047)), &hand).unwrap();
        let ilse = yard.hand("Ilse", "2026-10-20T08:00:00-06:00");
        for (door, tasks) in [
            ("TH-01", ["oil-and-filters"].as_slice()),
            ("TH-02", &["oil-and-filters", "cooler-and-scavenge"]),
            ("TH-03", &["separator"]),
        ] {
            let tasks = tasks.iter().map(|task| TaskId::from(*task)).collect();
            let visit = [(yard.truck(door), Work { tasks, ..Work::default() })];
            plan_visits(&mut yard.shop, &visit, day("2026-10-22"), None, &ilse).unwrap();
        }
        let due = fleet_due(&yard.shop.ledger, at("2026-10-20T17:00:00-06:00")).unwrap();
        let needs = &due.needs;
        let of = |door: &str| needs.iter().find(|needs| needs.unit == door).unwrap();
        assert_eq!(of("TH-02").parts, ["F-118", "E-20"]);
        assert_eq!(of("TH-02").parts_unknown, ["cooler-and-scavenge"]);
        let put = of("TH-02").oil.clone().unwrap();
        assert_eq!((put.volume.as_deref(), put.jugs), (Some("4 qt"), Some(1)));
        assert_eq!(of("TH-01").oil.clone().unwrap().volume.as_deref(), Some("6 qt"));
        assert_eq!((of("TH-03").oil.clone(), of("TH-03").parts_unknown.len()), (None, 1));
        // 6 and 4 quarts are 9.46 L: three jugs, 11.36 L, and not two and one.
        let [oil] = due.oil.as_slice() else { panic!("{:?}", due.oil) };
        assert_eq!((oil.family.as_deref(), oil.grade.as_deref()), (Some("mineral"), Some("VG 46")));
        assert_eq!((format!("{:.2}", oil.litres), oil.jugs), ("9.46".to_owned(), 3));
        assert_eq!(oil.units, ["TH-01", "TH-02"]);

        let visit =
            [(yard.truck("TH-08"), Work { tasks: vec!["oil-and-filters".into()], ..Work::default() })];
        plan_visits(&mut yard.shop, &visit, day("2026-10-23"), None, &ilse).unwrap();
        let due = fleet_due(&yard.shop.ledger, at("2026-10-20T17:00:00-06:00")).unwrap();
        assert_eq!((due.oil[0].jugs, &due.oil[0].not_known), (3, &vec!["TH-08".to_owned()]));
    }

    #[test]
    fn whole_jugs_are_whole() {
        for (quarts, is) in [("4", 1), ("4.1", 2), ("8", 2), ("0.1", 1), ("12", 3)] {
            let figure = Figure::parse(quarts, Unit::Quart).unwrap();
            assert_eq!(jugs(litres(figure).unwrap()), is, "{quarts}");
        }
    }
}
