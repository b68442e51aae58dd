//! What belongs to another unit: void here, anew there, both seen; and the dust of a site.
//!
//! Invented data, outcomes worked by rule.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::draft::moved;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::screen::*;
use sumpbook_trade::procedure::Procedures;
use sumpbook_trade::record::SiteDust;
use sumpbook_trade::{EntryId, Fact, FactKind, Tenths, TruckId};
use tern_hollow::{AMOS, BETTINA, TH_01, TH_02, Yard, at, signing};

fn reading(yard: &mut Yard, unit: &str, person: &str, when: &str, figure: &str) -> EntryId {
    yard.phone(&format!(
        r#"{{"unit":"{unit}","person":"{person}","at":"{when}","kind":"hour-reading","body":{{"meter":"compressor","figure":"{figure}","how":"asked","kept-when-asked":false}}}}"#
    ))
}

fn rows(yard: &Yard, unit: TruckId, days_back: u16) -> Vec<MovableRow> {
    let query = OtherUnitQuery { unit, person: AMOS, days_back };
    other_unit(&yard.ledger, &query, at("2026-10-19T17:00:00-06:00")).unwrap().rows
}

fn judged(yard: &Yard, id: EntryId) -> Judged {
    let truth = yard.ledger.store().truth();
    let n = truth.by_id(id).unwrap()[0].n;
    truth.fact(n).unwrap().unwrap().judged
}

fn hours_of(yard: &Yard, unit: TruckId) -> Option<Tenths> {
    yard.ledger.unit_state(unit).unwrap().hours.last.map(|last| last.figure)
}

#[test]
fn a_figure_given_for_the_wrong_truck_is_void_there_and_stands_on_the_right_one() {
    let mut yard = Yard::new();
    let (morning, noon) = ("2026-10-19T07:00:00-06:00", "2026-10-19T12:00:00-06:00");
    reading(&mut yard, "TH-02", "Amos Tillery", morning, "1200.0");
    let wrong = reading(&mut yard, "TH-02", "Amos Tillery", noon, "2866.1");
    reading(&mut yard, "TH-02", "Bettina Quaye", noon, "1201.0");
    let mine: Vec<_> = rows(&yard, TH_02, 0).iter().map(|row| (row.kind, row.hours.unwrap())).collect();
    let figure = |text: &str| text.parse::<Tenths>().unwrap();
    assert_eq!(
        mine,
        [(FactKind::HourReading, figure("2866.1")), (FactKind::HourReading, figure("1200.0"))],
        "one's own, newest first"
    );
    let entry = movable(&yard.ledger, TH_02, AMOS, wrong).unwrap().unwrap();
    let ids = (yard.id(), yard.id());
    let both = moved(yard.ledger.fleet(), &entry, TH_01, &signing("2026-10-19T16:30:00-06:00"), ids);
    assert_eq!(both[0].at, at(noon), "of the moment it was read");
    yard.record(both.into());
    assert_eq!(judged(&yard, wrong), Judged::Void, "seen, and no longer counted");
    assert_eq!(
        (hours_of(&yard, TH_01), hours_of(&yard, TH_02)),
        (Some(figure("2866.1")), Some(figure("1201.0")))
    );
    assert_eq!(movable(&yard.ledger, TH_02, AMOS, wrong).unwrap(), None, "once");
    assert_eq!(rows(&yard, TH_02, 0).len(), 1);
    assert_eq!(rows(&yard, TH_01, 0).len(), 1, "and from there it could be moved again");
}

#[test]
fn a_walk_another_ones_words_and_old_ones_are_not_moved() {
    let mut yard = tern_hollow::walked();
    let walk = yard.ledger.store().truth().newest_facts(TH_01, 1, 1).unwrap()[0].id;
    assert_eq!(movable(&yard.ledger, TH_01, AMOS, walk).unwrap(), None);
    let hers = reading(&mut yard, "TH-01", "Bettina Quaye", "2026-10-19T12:00:00-06:00", "2866.0");
    assert_eq!(movable(&yard.ledger, TH_01, AMOS, hers).unwrap(), None);
    assert!(movable(&yard.ledger, TH_01, BETTINA, hers).unwrap().is_some());
    let note = yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-17T15:05:00-06:00","kind":"display-note","body":{"what":"reminder","as-shown":"SERVICE SOON"}}"#,
    );
    let shown = |days_back| rows(&yard, TH_01, days_back).iter().any(|row| row.id == note);
    assert_eq!((shown(1), shown(2)), (false, true));
    assert_eq!(
        rows(&yard, TH_01, 2).iter().find(|row| row.id == note).unwrap().words.as_deref(),
        Some("SERVICE SOON")
    );
}

#[test]
fn the_dust_is_asked_on_arrival_and_at_the_days_end_only_where_nobody_said_it() {
    let mut yard = Yard::new();
    let now = at("2026-10-19T16:30:00-06:00");
    let arriving = |yard: &Yard, procedure: &str| {
        let query = StepsQuery { unit: TH_01, procedure: procedure.to_owned(), person: None };
        steps(&yard.ledger, &query, Procedures::common_practice().unwrap(), now).unwrap().unwrap().site
    };
    assert_eq!(arriving(&yard, "start"), None);
    let mut report = yard.end_of_day(TH_01, AMOS, "2026-10-19T16:20:00-06:00");
    let ending = |yard: &Yard, report: &_| end_of_day(&yard.ledger, report, now).unwrap().site.unwrap();
    assert_eq!(arriving(&yard, "arrival"), Some(SiteAsk { asked: true, said: None }));
    assert!(ending(&yard, &report).asked);
    // Yesterday's word is not today's.
    for (day, dust) in [(18, "clean"), (19, "dusty")] {
        assert!(ending(&yard, &report).asked, "{day}");
        yard.phone(&format!(
            r#"{{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-{day}T09:00:00-06:00","kind":"site-condition","body":{{"dust":"{dust}"}}}}"#
        ));
    }
    let said = ending(&yard, &report);
    let row = said.said.unwrap();
    assert_eq!((said.asked, row.dust, row.by.as_deref()), (false, SiteDust::Dusty, Some("Amos Tillery")));
    assert!(arriving(&yard, "arrival").unwrap().asked, "another site may be cleaner");
    report.none_found();
    report.dust = Some(SiteDust::VeryDusty);
    let signed = signing("2026-10-19T16:30:00-06:00");
    let id = yard.id();
    let site = report.sign_site(yard.ledger.fleet(), &signed, id).unwrap();
    assert_eq!(site.at, report.sign(yard.ledger.fleet(), &signed).unwrap().at);
    assert!(matches!(site.fact, Fact::SiteCondition(of) if of.dust == SiteDust::VeryDusty));
}
