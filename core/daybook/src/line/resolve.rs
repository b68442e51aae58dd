//! From a line to an entry: door numbers and names become ids.

use sumpbook_trade::checklist::Template;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, EntryId, Fact, Figure, Fluid, PersonId, Stamp, TruckId, Unit};

use super::read::name_of;
use super::steps::with_step_locks;
use super::{Line, LineError, StepsError, return_lines, seen, with_severity};
use crate::fleet::Fleet;
use crate::gate::MOST_PAYLOAD;

/// What whoever writes adds to a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Writer {
    /// The writing device's clock.
    pub now: Stamp,
    /// Hub time minus that clock in milliseconds, as last learnt.
    pub clock_off_ms: Option<i64>,
    /// The id for a line that gives none.
    pub id: EntryId,
}

impl Line {
    /// The entry this line says.
    ///
    /// # Errors
    /// An unknown unit or person, a time given for a phone's own entry, an answer that does not hold, what nobody can
    /// have seen, an entry too large for the books.
    pub fn resolve(&self, fleet: &Fleet, template: &Template, writer: &Writer) -> Result<Entry, LineError> {
        let source = self.source.unwrap_or(Source::Phone);
        if self.at.is_some() && source == Source::Phone && !fleet.demo {
            return Err(LineError::TimeGiven);
        }
        let unit = self.unit.as_deref().map(|door| truck(fleet, door)).transpose()?;
        self.check_unit(unit)?;
        let entry = Entry {
            id: self.id.unwrap_or(writer.id),
            unit,
            set: unit.filter(|_| names_set(self)).and_then(|t| fleet.set_on(t)).map(|set| set.set),
            at: self.at.unwrap_or(writer.now),
            // A time someone gave is not this clock's, so its distance to the hub says nothing of it.
            clock_off_ms: writer.clock_off_ms.filter(|_| self.at.is_none()),
            person: self.person.as_deref().map(|name| person(fleet, name)).transpose()?,
            trainer: self.with.as_deref().map(|name| person(fleet, name)).transpose()?,
            pin_given: self.pin_given,
            trainer_pin_given: self.trainer_pin_given,
            hours: self.hours,
            note: self.note.clone(),
            source,
            fact: checked(template, self.fact.clone())?,
        };
        check_units(&entry.fact)?;
        return_lines::check(&entry)?;
        seen::check(fleet, template, &entry)?;
        let payload = entry.to_payload();
        if payload.len() > MOST_PAYLOAD {
            return Err(LineError::TooLong { bytes: payload.len(), most: MOST_PAYLOAD });
        }
        // Else content could be slipped in under "newer" that would then read as a kind of ours, unchecked.
        if matches!(entry.fact, Fact::Newer { .. })
            && Entry::from_payload(&payload).ok().as_ref() != Some(&entry)
        {
            return Err(LineError::NotNewer);
        }
        Ok(entry)
    }

    fn check_unit(&self, unit: Option<TruckId>) -> Result<(), LineError> {
        let kind = || name_of(self.fact.kind());
        match (needs_unit(&self.fact), unit) {
            (Some(true), None) => Err(LineError::UnitMissing(kind())),
            (Some(false), Some(_)) => Err(LineError::UnitTooMany(kind())),
            _ => Ok(()),
        }
    }
}

/// A figure in a unit that cannot be its own would be shown, and counted nowhere.
fn check_units(fact: &Fact) -> Result<(), LineError> {
    let check = |figure: Option<Figure>, holds: fn(Figure) -> bool, units: &str| match figure {
        Some(figure) if !holds(figure) => Err(LineError::Shape {
            kind: name_of(fact.kind()),
            why: format!("'{figure}' is not in one of its units: {units}"),
        }),
        _ => Ok(()),
    };
    let (warmth, volume) = ("degF, degC", "qt, gal, fl-oz, L, mL");
    match fact {
        Fact::TopUp(top_up) => {
            check(top_up.oil_temperature, |f| f.temperature().is_some(), warmth)?;
            // Grease goes by strokes of the gun.
            let pours = top_up.pours.iter().filter(|_| top_up.fluid != Fluid::Grease);
            pours
                .map(|pour| pour.volume)
                .try_for_each(|poured| check(Some(poured), |f| f.volume().is_some(), volume))
        }
        Fact::StockCounted(stock) => check(Some(stock.volume), |f| f.volume().is_some(), volume),
        Fact::LevelCheck(level) => check(level.oil_temperature, |f| f.temperature().is_some(), warmth),
        Fact::RunningNumbers(numbers) => {
            let pressure = "psi, kPa, bar";
            check(numbers.pressure, |f| f.pressure().is_some(), pressure)?;
            check(numbers.idle_pressure, |f| f.pressure().is_some(), pressure)?;
            check(numbers.air_end, |f| f.temperature().is_some(), warmth)?;
            check(numbers.ambient, |f| f.temperature().is_some(), warmth)
        }
        Fact::EndOfDay(report) => {
            let miles = |f: Figure| matches!(f.unit, Unit::Mile | Unit::Kilometre);
            check(report.odometer, miles, "mi, km")
        }
        _ => Ok(()),
    }
}

/// Whether a fact stands in a unit's book; none where it may stand in either.
fn needs_unit(fact: &Fact) -> Option<bool> {
    match fact {
        Fact::FleetNamed(_)
        | Fact::TruckRegistered(_)
        | Fact::SetRegistered(_)
        | Fact::ProgrammeSet(_)
        | Fact::PersonSet(_)
        | Fact::ShopSays(_)
        | Fact::RuleNumbers(_)
        | Fact::SeveritiesSet(_)
        | Fact::CampaignSet(_)
        | Fact::DeviceEnrolled(_)
        | Fact::DeviceRevoked(_)
        | Fact::SheetClosed(_) => Some(false),
        Fact::Decision(_) | Fact::LateAccepted(_) | Fact::Newer { .. } => None,
        _ => Some(true),
    }
}

/// Whether the fact names the set on its truck: it is about the air, or carries the compressor's hours beside what
/// else it says.
fn names_set(line: &Line) -> bool {
    let of_another_meter =
        matches!(line.fact, Fact::HourReading(_) | Fact::MeterExchange(_) | Fact::HoursEstimate(_));
    line.fact.is_about_air() || (line.hours.is_some() && !of_another_meter)
}

fn truck(fleet: &Fleet, door: &str) -> Result<TruckId, LineError> {
    let by_id = || door.parse().ok().filter(|id| fleet.trucks.contains_key(id));
    fleet.truck_by_door(door).map(|truck| truck.truck).or_else(by_id).ok_or_else(|| {
        let mut known: Vec<&str> = fleet.trucks.values().map(|truck| truck.door.as_str()).collect();
        known.sort_unstable();
        LineError::UnknownUnit { door: door.to_owned(), known: list(&known) }
    })
}

fn person(fleet: &Fleet, name: &str) -> Result<PersonId, LineError> {
    if let Some(id) = name.parse().ok().filter(|id| fleet.people.contains_key(id)) {
        return Ok(id);
    }
    let named: Vec<PersonId> = fleet
        .people
        .values()
        .filter(|person| person.name.eq_ignore_ascii_case(name.trim()))
        .map(|person| person.person)
        .collect();
    match named.as_slice() {
        [one] => Ok(*one),
        [] => {
            let mut known: Vec<&str> =
                fleet.people.values().filter(|p| !p.gone).map(|p| p.name.as_str()).collect();
            known.sort_unstable();
            Err(LineError::UnknownPerson { name: name.to_owned(), known: list(&known) })
        }
        several => {
            let ids: Vec<String> = several.iter().map(PersonId::to_string).collect();
            Err(LineError::SeveralPeople { name: name.to_owned(), ids: ids.join(", ") })
        }
    }
}

/// A list for a message: a fleet of 500 units is not told whole.
fn list(known: &[&str]) -> String {
    const MOST: usize = 12;
    let first: Vec<&str> = known.iter().copied().take(MOST).collect();
    match known.len().checked_sub(MOST).filter(|more| *more > 0) {
        _ if known.is_empty() => "none yet".to_owned(),
        Some(more) => format!("{} and {more} more", first.join(", ")),
        None => first.join(", "),
    }
}

fn checked(template: &Template, fact: Fact) -> Result<Fact, LineError> {
    let each = |answers: Vec<_>| {
        answers.into_iter().map(|answer| with_severity(template, answer)).collect::<Result<Vec<_>, _>>()
    };
    Ok(match fact {
        Fact::PreTripSection(mut section) => {
            section.answers = each(section.answers)?;
            section.into()
        }
        Fact::EndOfDay(mut report) => {
            if report.defects.is_empty() != report.none_found {
                return Err(LineError::DefectsOrNone);
            }
            report.defects = each(report.defects)?;
            report.into()
        }
        steps @ (Fact::StartAir(_) | Fact::StopAir(_) | Fact::StepsDone(_)) => {
            with_step_locks(Procedures::common_practice().map_err(StepsError::Table)?, steps)?
        }
        other => other,
    })
}
