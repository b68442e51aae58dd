//! A working fleet's entries: three or four a unit and working day, a defect now and then.

use sumpbook_daybook::ledger::NewEntry;
use sumpbook_simulation::entries::{answer, section};
use sumpbook_simulation::fleet::{BEGIN_MS, entry, entry_id, of_truck, truck};
use sumpbook_trade::record::{EndOfDay, HourReading, How, Meter, PreTripSection, ServiceDone, StartAir};
use sumpbook_trade::{Entry, Tenths};

/// Working days of a year.
pub(crate) const DAYS: u32 = 250;

/// A walk as a driver signs it: 60 lines.
pub(crate) fn walk(number: u32, defect: bool) -> PreTripSection {
    let answers = (0..60).map(|line| {
        let mut answer = answer(line, defect && line == 7);
        answer.item = format!("item-{line:02}");
        answer
    });
    PreTripSection { answers: answers.collect(), ..section(number, &[]) }
}

/// The entries of one unit on working day `day` since the first, ids from `first`.
pub(crate) fn day_of(unit: u32, day: u32, first: u32) -> Vec<NewEntry> {
    // Five working days, then two without.
    let midnight = BEGIN_MS + i64::from(day / 5 * 7 + day % 5) * 86_400_000;
    let at = |minute: i64| midnight + (minute + i64::from(unit % 60)) * 60_000;
    let meter = Tenths(10_000 + i64::from(day) * 31);
    let defect = (unit * 7 + day * 13).is_multiple_of(97);
    let small = |id: u32, minute: i64, fact: sumpbook_trade::Fact| -> Entry {
        entry(entry_id(first + id), Some(truck(unit)), at(minute), fact)
    };
    let reading = HourReading {
        meter: Meter::Compressor,
        figure: meter,
        how: How::Asked,
        kept_when_asked: false,
        photo: None,
    };
    let report = EndOfDay {
        defects: Vec::new(),
        none_found: true,
        odometer: None,
        tanks_drained: None,
        to_next: None,
        notes_seen: Vec::new(),
    };
    let mut entries = vec![
        small(0, 0, walk(day, defect).into()),
        small(1, 90, StartAir { steps: Vec::new(), in_spite_of_lock: None }.into()),
        small(2, 400, reading.into()),
    ];
    if day % 5 != 4 {
        entries.push(small(3, 540, report.into()));
    }
    if day % 125 == 60 {
        let service = ServiceDone {
            tasks: vec!["oil-and-filters".into()],
            oil: None,
            parts: Vec::new(),
            oil_reason: None,
            photo: None,
        };
        let mut done = small(4, 560, service.into());
        done.hours = Some(meter);
        entries.push(done);
    }
    entries.into_iter().map(of_truck).collect()
}

/// The meter of a unit read once on a working day, so many tenths over the evening before.
pub(crate) fn reading_of(unit: u32, day: u32, minute: i64, rise: i64) -> NewEntry {
    let midnight = BEGIN_MS + i64::from(day / 5 * 7 + day % 5) * 86_400_000;
    let at = midnight + (minute + i64::from(unit % 60)) * 60_000;
    let figure = Tenths(10_000 + (i64::from(day) - 1) * 31 + rise);
    let reading = HourReading {
        meter: Meter::Compressor,
        figure,
        how: How::Asked,
        kept_when_asked: false,
        photo: None,
    };
    // Ids of their own, far from those of whole days.
    let id = 2_000_000_000 + (day * 10 + minute as u32 / 100) * 20_000 + unit;
    of_truck(entry(entry_id(id), Some(truck(unit)), at, sumpbook_trade::Fact::from(reading)))
}

/// Ids of one unit-day.
pub(crate) const IDS_A_DAY: u32 = 5;
