//! Tables of how things stand: units, what is due, readings, defects, people, phones, what is set aside.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::defect::{DefectState, Said, Verdict};
use sumpbook_trade::{PersonId, Stamp};

use super::entries::{heads, items, person, times, times_or_blank, units};
use super::{Cell, Of, Sheet};
use crate::ShopError;
use crate::due::due_list;
use crate::sheet::{Yard, key};

fn plain(heads: &[&str]) -> Vec<String> {
    heads.iter().map(|head| (*head).to_owned()).collect()
}

pub(super) fn of_units(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Unit",
        "Truck serial",
        "Plate",
        "Set serial",
        "In service",
        "Hours in service (h)",
        "Hours (h)",
        "Hours read (UTC)",
        "Hours read (yard)",
        "Road",
        "Air",
        "Day status",
        "Oil family",
        "Oil grade",
        "Delivery (as given)",
        "Glass (as given)",
        "Oil volume (as given)",
        "Features",
        "Programme edition",
        "Truck",
        "Set",
    ];
    let mut rows = Vec::new();
    for (door, truck) in units(ledger, yard, of)? {
        let fleet = ledger.fleet();
        let (registered, set) = (fleet.trucks.get(&truck), fleet.set_on(truck));
        let state = ledger.unit_state(truck)?;
        let locked = |part: &str| {
            let stands = state.locks_at(yard.now.moment()).any(|lock| {
                let name = String::from(lock.part.clone());
                name == part || (part == "air" && name.starts_with("outlet/"))
            });
            Cell::text(if stands { "locked" } else { "no lock on record" })
        };
        let last = state.hours.last.as_ref();
        let [utc, local] = times_or_blank(yard, last.map(|last| Stamp::from(last.at)));
        let profile = set.map(|set| &set.profile);
        let features =
            registered.map(|truck| truck.features.switched.iter().map(key).collect::<Vec<_>>().join("; "));
        rows.push(vec![
            Cell::text(door),
            Cell::some(registered.and_then(|truck| truck.serial.clone())),
            Cell::some(registered.and_then(|truck| truck.plate.clone())),
            Cell::some(set.and_then(|set| set.serial.clone())),
            Cell::some(registered.map(|truck| truck.in_service.to_string())),
            Cell::known(registered.map(|truck| truck.in_service_hours)),
            Cell::known(last.map(|last| last.figure)),
            utc,
            local,
            locked("road"),
            locked("air"),
            Cell::some(state.status_on(yard.day).map(|(status, _)| key(&status))),
            Cell::some(profile.and_then(|profile| profile.oil_family).map(|family| key(&family))),
            Cell::some(profile.and_then(|profile| profile.oil_grade.clone())),
            Cell::some(profile.and_then(|profile| profile.delivery).map(|figure| figure.to_string())),
            Cell::some(profile.and_then(|profile| profile.glass).map(|figure| figure.to_string())),
            Cell::some(profile.and_then(|profile| profile.oil_volume).map(|figure| figure.to_string())),
            Cell::some(features),
            Cell::figure(fleet.programme_of(truck).edition),
            Cell::text(truck.to_string()),
            Cell::some(set.map(|set| set.set.to_string())),
        ]);
    }
    Ok(Sheet { heads: plain(&own), rows })
}

pub(super) fn due(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Unit",
        "Task",
        "State",
        "Hours left (h)",
        "Days left",
        "Due at (h)",
        "Last good day",
        "Runs out first",
        "Hours used (h)",
        "Hours read (UTC)",
        "Hours read (yard)",
        "Higher of disputed",
        "Across an unanswered jump",
        "Part waited for",
        "Promised",
        "Laid up since (yard)",
        "Campaign",
    ];
    let doors: Vec<String> = units(ledger, yard, of)?.into_iter().map(|(door, _)| door).collect();
    let rows =
        due_list(ledger, yard.now)?.into_every_row().filter(|row| doors.contains(&row.unit)).map(|row| {
            let [utc, local] = times_or_blank(yard, row.read_at);
            let part = row.waiting_for.as_ref();
            let campaign = TaskId(row.task.clone()).campaign().map(str::to_owned);
            vec![
                Cell::text(row.unit),
                Cell::text(row.task),
                Cell::text(row.state),
                Cell::known(row.hours_left),
                Cell::known(row.days_left),
                Cell::known(row.due_hours),
                Cell::some(row.last_good_day.map(|day| day.to_string())),
                Cell::text(row.runs_out_first),
                Cell::known(row.hours),
                utc,
                local,
                Cell::yes(row.higher_of_disputed),
                Cell::yes(row.across_unanswered_jump),
                Cell::some(part.map(|part| part.part.clone())),
                Cell::some(part.and_then(|part| part.promised).map(|day| day.to_string())),
                times_or_blank(yard, row.laid_up_since)[1].clone(),
                Cell::some(campaign),
            ]
        });
    Ok(Sheet { heads: plain(&own), rows: rows.collect() })
}

/// Every figure of a meter, alone or within another record, with what R3 says of it.
pub(super) fn readings(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    use sumpbook_trade::Fact;
    use sumpbook_trade::record::Meter;
    let own = [
        "Meter",
        "Figure (h)",
        "Written in",
        "Counts",
        "At most then (h)",
        "In question",
        "How",
        "Kept when asked",
    ];
    let mut rows = Vec::new();
    for (_, truck) in units(ledger, yard, of)? {
        let judged = ledger.every_reading(truck)?;
        for item in items(ledger, Of::Units(&[truck]), &[])? {
            let (meter, figure, how, kept) = match &item.entry.fact {
                Fact::HourReading(read) => {
                    (read.meter, read.figure, Some(read.how), Some(read.kept_when_asked))
                }
                Fact::HoursEstimate(estimate) => (estimate.meter, estimate.high, None, None),
                Fact::MeterExchange(exchange) => (exchange.meter, exchange.new_start, None, None),
                _ => match item.entry.hours {
                    Some(figure) => (Meter::Compressor, figure, None, None),
                    None => continue,
                },
            };
            let as_judged = judged.iter().find(|row| row.entry == item.entry.id && row.figure == figure);
            rows.push(item.row(
                ledger,
                yard,
                [
                    Cell::text(key(&meter)),
                    Cell::figure(figure),
                    Cell::text(key(&item.entry.fact.kind())),
                    Cell::said(as_judged.map(|row| row.counts)),
                    Cell::known(as_judged.and_then(|row| row.ceiling)),
                    Cell::said(as_judged.map(|row| row.in_question)),
                    Cell::some(how.map(|how| key(&how))),
                    Cell::said(kept),
                ],
            ));
        }
    }
    Ok(Sheet { heads: heads(&own), rows })
}

/// One row for each answer about a defect, OK answers beside it too: merging never hides one.
pub(super) fn defects(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Unit",
        "Item",
        "Place",
        "Since (UTC)",
        "Since (yard)",
        "Locks",
        "State",
        "Said by",
        "Said (UTC)",
        "Said (yard)",
        "Said",
        "Certified",
        "Certified by",
        "Certified (UTC)",
        "Certified (yard)",
        "Certificate's words",
        "Reviewed by",
        "Reviewed (UTC)",
        "Reviewed (yard)",
        "Repeats one of (UTC)",
        "Defect's entry",
        "Entry",
    ];
    let mut rows = Vec::new();
    let who = |id: uuid::Uuid| person(ledger, Some(PersonId(id)));
    for (door, truck) in units(ledger, yard, of)? {
        for defect in ledger.every_defect(truck)? {
            let (state, certified, reviewed) = match &defect.state {
                DefectState::Open => ("open", None, None),
                DefectState::AwaitingReview { certified } => ("awaiting review", Some(certified), None),
                DefectState::Closed { certified, reviewed } => ("closed", Some(certified), reviewed.as_ref()),
            };
            let locks: Vec<String> = defect.parts.keys().map(|part| String::from(part.clone())).collect();
            for answer in &defect.answers {
                let said = match &answer.said {
                    Said::Ok => "OK".to_owned(),
                    Said::Defect { words, .. } => words.clone(),
                };
                let stamp = |at| Some(Stamp::from(at));
                let mut row =
                    vec![Cell::text(&door), Cell::text(&defect.item), Cell::some(defect.place.clone())];
                row.extend(times(yard, Stamp::from(defect.since)));
                row.extend([Cell::text(locks.join("; ")), Cell::text(state), who(answer.person)]);
                row.extend(times(yard, Stamp::from(answer.at)));
                row.push(Cell::text(said));
                row.push(Cell::some(certified.map(|certified| match certified.verdict {
                    Verdict::Repaired => "repaired",
                    Verdict::NotNeeded => "repair not needed",
                })));
                row.push(certified.map_or_else(Cell::blank, |certified| who(certified.by)));
                row.extend(times_or_blank(yard, certified.and_then(|certified| stamp(certified.at))));
                row.push(Cell::some(certified.map(|certified| certified.words.clone())));
                row.push(reviewed.map_or_else(Cell::blank, |reviewed| who(reviewed.person)));
                row.extend(times_or_blank(yard, reviewed.and_then(|reviewed| stamp(reviewed.at))));
                let [before, _] =
                    times_or_blank(yard, defect.repeats.as_ref().and_then(|r| stamp(r.certified.at)));
                row.extend([
                    before,
                    Cell::text(defect.reference.entry.to_string()),
                    Cell::text(answer.entry.to_string()),
                ]);
                rows.push(row);
            }
        }
    }
    Ok(Sheet { heads: plain(&own), rows })
}

pub(super) fn people(ledger: &Ledger) -> Sheet {
    let mut people: Vec<_> = ledger.fleet().people.values().collect();
    people.sort_by(|a, b| a.name.cmp(&b.name));
    let rows = people.into_iter().map(|who| {
        let (name, role) = (Cell::text(&who.name), Cell::text(key(&who.role)));
        vec![name, role, Cell::yes(who.gone), Cell::text(who.person.to_string())]
    });
    Sheet { heads: plain(&["Name", "Role", "Gone", "Person"]), rows: rows.collect() }
}

pub(super) fn phones(ledger: &Ledger, yard: &Yard) -> Result<Sheet, ShopError> {
    let own = [
        "Name",
        "Key",
        "Public key",
        "Last heard (UTC)",
        "Last heard (yard)",
        "Clock behind the shop's (s)",
        "Stopped",
        "Why",
    ];
    let last = ledger.store().last_exchanges(yard.now.unix_ms())?;
    let fleet = ledger.fleet();
    let rows = fleet.devices.iter().map(|(id, device)| {
        let heard = last.iter().find(|row| row.device == *id);
        let [utc, local] = times_or_blank(yard, heard.map(|row| yard.stamp_ms(row.at_ms)));
        let off = heard.and_then(|row| row.off_ms).map(|ms| format!("{:.1}", ms as f64 / 1_000.0));
        let stopped = fleet.revoked.iter().find(|(revoked, _, _)| revoked == id);
        let short: String = id.iter().map(|byte| format!("{byte:02x}")).collect();
        vec![
            Cell::text(&device.name),
            Cell::text(short),
            Cell::text(device.key.to_string()),
            utc,
            local,
            Cell::known(off),
            Cell::yes(stopped.is_some()),
            Cell::some(stopped.map(|(_, _, revoked)| revoked.why.clone())),
        ]
    });
    Ok(Sheet { heads: plain(&own), rows: rows.collect() })
}

/// What does not count, and why: what waits for a person, and what was voided or left out by one.
pub(super) fn aside(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = ["Kind", "Standing"];
    let rows = items(ledger, of, &[])?
        .into_iter()
        .filter(|item| item.judged != sumpbook_daybook::judgement::Judged::Counts)
        .map(|item| {
            item.row(ledger, yard, [Cell::text(key(&item.entry.fact.kind())), Cell::text(key(&item.judged))])
        });
    Ok(Sheet { heads: heads(&own), rows: rows.collect() })
}
