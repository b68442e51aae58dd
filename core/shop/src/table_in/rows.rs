//! From a row to what it records.

use chrono::{NaiveDate, NaiveTime, TimeZone};
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::gate::MOST_PAYLOAD;
use sumpbook_daybook::line::{Line, Writer};
use sumpbook_daybook::text::Texts;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::fluid::OilFamily;
use sumpbook_trade::record::{Glass, HourReading, How, Meter, OilPut, Pour, ServiceDone, Source, TopUp};
use sumpbook_trade::{Entry, Fact, Fluid, PersonId, Stamp, Template, Tenths, TruckId};

use super::cells::Cells;
use super::columns::unaccented;
use super::{Column, What, Why, same};

/// What the rows of a file are read against.
pub(super) struct Reader<'a> {
    pub(super) fleet: &'a Fleet,
    pub(super) person: Option<PersonId>,
    pub(super) now: Stamp,
    pub(super) template: &'a Template,
}

impl Reader<'_> {
    /// The entry of a row; none when something in it is refused, which `cells` then tells.
    pub(super) fn entry(&self, what: What, cells: &mut Cells<'_>) -> Option<Entry> {
        let truck = self.unit(cells);
        let day = cells.day(Column::Date);
        let own_time = cells.time();
        let hours = cells.hours(Column::Hours);
        let fact = match what {
            What::Services => self.service(truck, cells).map(Fact::from),
            What::Readings => self.reading(hours, cells).map(Fact::from),
            What::Pours => self.pour(cells).map(Fact::from),
            What::Units => None,
        };
        let note = note(cells);
        let (truck, fact) = (truck?, fact?);
        let (day, time) = day?;
        if !cells.refused.is_empty() {
            return None;
        }
        let at = self.moment(day, own_time.or(time))?;
        let hours = hours.filter(|_| what != What::Readings);
        let line = Line {
            unit: Some(truck.to_string()),
            person: self.person.map(|person| person.to_string()),
            with: None,
            at: Some(at),
            hours,
            note,
            source: Some(Source::BroughtIn),
            pin_given: false,
            trainer_pin_given: false,
            id: Some(same::id(truck, at, hours, &fact)),
            fact,
        };
        let writer = Writer { now: self.now, clock_off_ms: None, id: same::id(truck, at, None, &line.fact) };
        match line.resolve(self.fleet, self.template, &writer) {
            Ok(entry) if entry.to_payload().len() <= MOST_PAYLOAD => Some(entry),
            _ => {
                cells.refuse(Column::Note, Why::TooLong);
                None
            }
        }
    }

    fn unit(&self, cells: &mut Cells<'_>) -> Option<TruckId> {
        let door = cells.needed(Column::Unit)?;
        let truck = self.fleet.truck_by_door(door).map(|truck| truck.truck);
        if truck.is_none() {
            cells.refuse(Column::Unit, Why::UnknownUnit);
        }
        truck
    }

    fn service(&self, truck: Option<TruckId>, cells: &mut Cells<'_>) -> Option<ServiceDone> {
        let said = cells.needed(Column::Task)?;
        let mut tasks: Vec<TaskId> = Vec::new();
        for one in said.split([';', '+', '\n']).map(str::trim).filter(|one| !one.is_empty()) {
            match truck.and_then(|truck| self.task(truck, one)) {
                Some(task) if !tasks.contains(&task) => tasks.push(task),
                Some(_) => {}
                None if truck.is_some() => {
                    cells.refuse(Column::Task, Why::UnknownTask);
                    return None;
                }
                None => {}
            }
        }
        let parts = cells.text(Column::Parts).unwrap_or_default();
        let parts = parts.split([';', '\n']).map(str::trim).filter(|part| !part.is_empty());
        let parts = parts.map(str::to_owned).collect();
        let volume = cells.volume(Column::Volume);
        let (family, grade) = (family(cells), cells.text(Column::OilGrade).map(str::to_owned));
        let given = volume.is_some() || family.is_some() || grade.is_some();
        let oil = given.then_some(OilPut { volume, family, grade });
        Some(ServiceDone { tasks, oil, parts, oil_reason: None, photo: None })
    }

    /// A task of a unit's programme by its name or by its words in either language.
    fn task(&self, truck: TruckId, said: &str) -> Option<TaskId> {
        let programme = self.fleet.programme_of(truck);
        let ids = programme.tasks.iter().flat_map(|task| {
            std::iter::once(&task.id).chain(task.first_service.as_ref().map(|first| &first.id))
        });
        ids.into_iter().find(|id| is_called(&format!("task-{id}"), &id.0, said)).cloned()
    }

    fn reading(&self, hours: Option<Tenths>, cells: &mut Cells<'_>) -> Option<HourReading> {
        let meter = match (cells.has(Column::Meter), cells.text(Column::Meter)) {
            (false, _) => Some(Meter::Compressor),
            (true, None) => {
                cells.refuse(Column::Meter, Why::Blank);
                None
            }
            (true, Some(said)) => {
                let all = [(Meter::Compressor, "compressor"), (Meter::Engine, "engine"), (Meter::Pto, "pto")];
                let found = all.into_iter().find(|(_, id)| is_called(&format!("meter-{id}"), id, said));
                if found.is_none() {
                    cells.refuse(Column::Meter, Why::UnknownMeter);
                }
                found.map(|(meter, _)| meter)
            }
        };
        if hours.is_none() && cells.text(Column::Hours).is_none() {
            cells.refuse(Column::Hours, Why::Blank);
        }
        Some(HourReading {
            meter: meter?,
            figure: hours?,
            how: How::Said,
            kept_when_asked: false,
            photo: None,
        })
    }

    fn pour(&self, cells: &mut Cells<'_>) -> Option<TopUp> {
        let said = cells.needed(Column::Fluid)?;
        let fluid = Fluid::ALL.into_iter().find(|fluid| {
            let id = name_of(fluid);
            is_called(&format!("fluid-{id}"), &id, said)
        });
        if fluid.is_none() {
            cells.refuse(Column::Fluid, Why::UnknownFluid);
        }
        if cells.text(Column::Volume).is_none() {
            cells.refuse(Column::Volume, Why::Blank);
        }
        let volume = cells.volume(Column::Volume);
        let glass = |percent: Option<u8>| percent.map(Glass::Percent);
        let (before, after) = (glass(cells.percent(Column::Before)), glass(cells.percent(Column::After)));
        Some(TopUp {
            family: family(cells),
            grade: cells.text(Column::OilGrade).map(str::to_owned),
            before,
            pours: vec![Pour { volume: volume?, after: None, waited_ms: None }],
            after,
            ..TopUp::of(fluid?)
        })
    }

    /// The moment on the yard's clock. Binders know days only: then noon, which lies in the day all year, or
    /// the morning of a day that is not that old yet.
    fn moment(&self, day: NaiveDate, time: Option<NaiveTime>) -> Option<Stamp> {
        let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
        let at = |time: NaiveTime| {
            let zone = self.fleet.zone;
            let local = day.and_time(time);
            // An hour that a spring night leaves out is the one after it.
            let later = local.checked_add_signed(chrono::TimeDelta::hours(1)).unwrap_or(local);
            let found = zone.from_local_datetime(&local).earliest();
            found
                .or_else(|| zone.from_local_datetime(&later).earliest())
                .map(|at| Stamp::from(at.fixed_offset()))
        };
        let at_noon = at(time.unwrap_or(noon))?;
        if time.is_none() && at_noon > self.now { at(NaiveTime::default()) } else { Some(at_noon) }
    }
}

pub(super) fn family(cells: &mut Cells<'_>) -> Option<OilFamily> {
    let said = cells.text(Column::OilFamily)?;
    let found = OilFamily::ALL.into_iter().find(|family| {
        let id = name_of(family);
        is_called(&format!("family-{id}"), &id, said)
    });
    if found.is_none() {
        cells.refuse(Column::OilFamily, Why::UnknownFamily);
    }
    found
}

fn note(cells: &Cells<'_>) -> Option<String> {
    let mut said: Vec<String> = cells.text(Column::Note).map(str::to_owned).into_iter().collect();
    said.extend(cells.rounded.iter().map(|rounded| format!("{} h", rounded.as_written)));
    (!said.is_empty()).then(|| said.join("; "))
}

/// A thing's name in records.
pub(super) fn name_of(thing: &impl serde::Serialize) -> String {
    serde_json::to_value(thing).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}

/// Whether someone calls a thing so: by its name in records, or by its words in either language.
fn is_called(key: &str, id: &str, said: &str) -> bool {
    let plain = |text: &str| unaccented(&text.trim().to_lowercase()).replace(['-', '_'], " ");
    let said = plain(said);
    let words = [Texts::english(), Texts::spanish()];
    said == plain(id) || words.iter().any(|texts| texts.has(key) && plain(&texts.get(key, &[])) == said)
}
