//! Tables of what was recorded: services, pours, certificates, acknowledgements, inspections.

use std::collections::BTreeMap;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::{Answer, DisplayNote};
use sumpbook_trade::{EntryId, Fact, FactKind, Figure};

use super::entries::{heads, items, person, times, times_or_blank};
use super::{Cell, Of, Sheet};
use crate::ShopError;
use crate::sheet::{Yard, glass, key};

pub(super) fn services(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Tasks",
        "Late (h)",
        "Late (days)",
        "Parts",
        "Oil as given",
        "Oil (mL)",
        "Oil family",
        "Oil grade",
        "Oil reason",
    ];
    let mut rows = Vec::new();
    for item in items(ledger, of, &[FactKind::ServiceDone])? {
        let Fact::ServiceDone(done) = &item.entry.fact else { continue };
        // How late it came is worked out from what was done before it.
        let mut late = (None, None);
        if let Some(truck) = item.entry.unit {
            let then = ledger.unit_state_at(truck, item.entry.at.unix_ms())?;
            for clock in then
                .clocks
                .iter()
                .filter(|clock| clock.last.is_some_and(|last| last.entry == item.entry.id.0))
            {
                late.0 = late.0.max(clock.late_by.and_then(|late| late.hours));
                late.1 = late.1.max(clock.late_by.and_then(|late| late.days));
            }
        }
        let oil = done.oil.as_ref();
        let volume = oil.and_then(|oil| oil.volume);
        rows.push(item.row(
            ledger,
            yard,
            [
                Cell::text(done.tasks.iter().map(TaskId::to_string).collect::<Vec<_>>().join("; ")),
                Cell::known(late.0),
                Cell::known(late.1),
                Cell::text(done.parts.join("; ")),
                Cell::some(volume.map(|volume| volume.to_string())),
                millilitres(volume),
                Cell::some(oil.and_then(|oil| oil.family).map(|family| key(&family))),
                Cell::some(oil.and_then(|oil| oil.grade.clone())),
                Cell::some(done.oil_reason.map(|reason| key(&reason))),
            ],
        ));
    }
    Ok(Sheet { heads: heads(&own), rows })
}

pub(super) fn pours(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Fluid",
        "Family",
        "Grade",
        "Pour",
        "Poured as given",
        "Poured (mL)",
        "Glass before",
        "Glass after",
        "Gauge at zero",
        "Blow-down silent",
        "Stopped (min)",
        "Stopped said by",
        "Warmth",
    ];
    let mut rows = Vec::new();
    for item in items(ledger, of, &[FactKind::TopUp])? {
        let Fact::TopUp(top_up) = &item.entry.fact else { continue };
        let last = top_up.pours.len();
        for (place, pour) in top_up.pours.iter().enumerate() {
            let number = place.saturating_add(1);
            let before = top_up.before.filter(|_| place == 0);
            let after = pour.after.or(top_up.after.filter(|_| number == last));
            rows.push(item.row(
                ledger,
                yard,
                [
                    Cell::text(key(&top_up.fluid)),
                    Cell::some(top_up.family.map(|family| key(&family))),
                    Cell::some(top_up.grade.clone()),
                    Cell::figure(number),
                    Cell::text(pour.volume.to_string()),
                    millilitres(Some(pour.volume)),
                    Cell::some(before.map(glass)),
                    Cell::some(after.map(glass)),
                    Cell::said(top_up.gauge_zero),
                    Cell::said(top_up.blow_down_silent),
                    Cell::known(top_up.stopped.as_ref().and_then(|stopped| stopped.minutes)),
                    Cell::some(top_up.stopped.as_ref().map(|stopped| key(&stopped.how))),
                    Cell::some(top_up.warmth.map(|warmth| key(&warmth))),
                ],
            ));
        }
    }
    Ok(Sheet { heads: heads(&own), rows })
}

pub(super) fn certificates(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = ["Item", "Place", "Certified", "Words", "Defect's entry"];
    let mut rows = Vec::new();
    for item in items(ledger, of, &[FactKind::Certificate])? {
        let Fact::Certificate(certificate) = &item.entry.fact else { continue };
        let defect = &certificate.defect;
        rows.push(item.row(
            ledger,
            yard,
            [
                Cell::text(&defect.item),
                Cell::some(defect.place.clone()),
                Cell::text(key(&certificate.verdict)),
                Cell::text(&certificate.words),
                Cell::text(defect.entry.to_string()),
            ],
        ));
    }
    Ok(Sheet { heads: heads(&own), rows })
}

/// One row for each acknowledgement of a display note, and one for each note that nobody acknowledged.
pub(super) fn acknowledgements(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Kind",
        "As shown",
        "Stopped by itself",
        "Gone again",
        "Acknowledged",
        "Acknowledged by",
        "Acknowledged (UTC)",
        "Acknowledged (yard)",
    ];
    let all = items(ledger, of, &[FactKind::DisplayNote, FactKind::Acknowledgement])?;
    let mut answers: BTreeMap<EntryId, Vec<usize>> = BTreeMap::new();
    for (at, item) in all.iter().enumerate() {
        if let Fact::Acknowledgement(answer) = &item.entry.fact {
            answers.entry(answer.note).or_default().push(at);
        }
    }
    let shown = |note: &DisplayNote| {
        [
            Cell::text(key(&note.what)),
            Cell::text(&note.as_shown),
            Cell::said(note.stopped_by_itself),
            Cell::some(note.gone_again.map(|gone| gone.to_string())),
        ]
    };
    let mut rows = Vec::new();
    for item in &all {
        let Fact::DisplayNote(note) = &item.entry.fact else { continue };
        let given = answers.remove(&item.entry.id).unwrap_or_default();
        if given.is_empty() {
            let none = [Cell::text("nobody"), Cell::blank(), Cell::blank(), Cell::blank()];
            rows.push(item.row(ledger, yard, shown(note).into_iter().chain(none)));
        }
        for answer in given.iter().filter_map(|at| all.get(*at)) {
            let Fact::Acknowledgement(said) = &answer.entry.fact else { continue };
            let [utc, local] = times(yard, answer.entry.at);
            let what = Cell::text(if said.told_shop { "told the shop" } else { "seen" });
            let by = person(ledger, answer.entry.person);
            rows.push(item.row(ledger, yard, shown(note).into_iter().chain([what, by, utc, local])));
        }
    }
    // An answer to a note that has not come is told all the same.
    for item in answers.into_values().flatten().filter_map(|at| all.get(at)) {
        let Fact::Acknowledgement(said) = &item.entry.fact else { continue };
        let [utc, local] = times_or_blank(yard, Some(item.entry.at));
        let what = Cell::text(if said.told_shop { "told the shop" } else { "seen" });
        let blank = [Cell::blank(), Cell::text("a note that is not here"), Cell::blank(), Cell::blank()];
        let own = blank.into_iter().chain([what, person(ledger, item.entry.person), utc, local]);
        rows.push(item.row(ledger, yard, own));
    }
    Ok(Sheet { heads: heads(&own), rows })
}

/// One row for each answer of a pre-trip, and for each defect of an end-of-day report or that none was found.
pub(super) fn inspections(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Report",
        "Walk",
        "Checklist edition",
        "Item",
        "Place",
        "Answer",
        "Word",
        "Locks",
        "Words",
        "Figures",
        "On the screen (s)",
        "Answered together",
        "Whole walk (s)",
        "Ends the walk",
        "Photos",
        "Sound",
    ];
    let mut rows = Vec::new();
    for item in items(ledger, of, &[FactKind::PreTripSection, FactKind::EndOfDay])? {
        match &item.entry.fact {
            Fact::PreTripSection(section) => {
                for answer in &section.answers {
                    let head = [
                        Cell::text("pre-trip"),
                        Cell::text(section.walk.to_string()),
                        Cell::figure(section.edition),
                    ];
                    let end = [
                        Cell::known(section.seconds),
                        Cell::yes(section.complete),
                        photos(answer),
                        sound(answer),
                    ];
                    rows.push(item.row(ledger, yard, head.into_iter().chain(answered(answer)).chain(end)));
                }
            }
            Fact::EndOfDay(report) => {
                let head = || [Cell::text("end of day"), Cell::blank(), Cell::blank()];
                let end = |photos, sound| [Cell::blank(), Cell::blank(), photos, sound];
                for answer in &report.defects {
                    let own =
                        head().into_iter().chain(answered(answer)).chain(end(photos(answer), sound(answer)));
                    rows.push(item.row(ledger, yard, own));
                }
                if report.defects.is_empty() {
                    let mut none = vec![Cell::blank(), Cell::blank(), Cell::text("none found")];
                    none.resize(9, Cell::blank());
                    rows.push(item.row(
                        ledger,
                        yard,
                        head().into_iter().chain(none).chain(end(Cell::blank(), Cell::blank())),
                    ));
                }
            }
            _ => {}
        }
    }
    Ok(Sheet { heads: heads(&own), rows })
}

/// One row for each entry, whatever its kind, with all it says as JSON: the tables of single kinds leave out what
/// is rarely asked for, this one nothing.
pub(super) fn all(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let mut rows = Vec::new();
    for item in items(ledger, of, &[])? {
        let said = serde_json::to_value(&item.entry.fact)?;
        let body = said.get("body").map_or_else(String::new, ToString::to_string);
        rows.push(item.row(ledger, yard, [Cell::text(key(&item.entry.fact.kind())), Cell::text(body)]));
    }
    Ok(Sheet { heads: heads(&["Kind", "What it says (JSON)"]), rows })
}

fn answered(answer: &Answer) -> [Cell; 9] {
    let figures: Vec<String> =
        answer.figures.iter().map(|figure| format!("{} ({})", figure.figure, key(&figure.how))).collect();
    [
        Cell::text(&answer.item),
        Cell::some(answer.place.clone()),
        Cell::text(key(&answer.answer)),
        Cell::some(answer.word.clone()),
        Cell::some(answer.severity.map(|severity| key(&severity))),
        Cell::some(answer.words.clone()),
        Cell::text(figures.join("; ")),
        Cell::known(answer.on_screen_ms.map(|ms| f64::from(ms) / 1_000.0)),
        Cell::known(answer.together),
    ]
}

fn photos(answer: &Answer) -> Cell {
    Cell::text(answer.photos.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
}

fn sound(answer: &Answer) -> Cell {
    Cell::some(answer.sound.map(|sound| sound.to_string()))
}

/// In millilitres to a tenth; blank when it is no volume.
fn millilitres(figure: Option<Figure>) -> Cell {
    // Cubic metres inside.
    Cell::known(figure.and_then(Figure::volume).map(|volume| format!("{:.1}", volume.value * 1e6)))
}
