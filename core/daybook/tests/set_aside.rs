//! A row that is set aside opens: the whole reason, what it says, who said what about it.
//!
//! Invented data: the fleet Tern Hollow Water. Outcomes worked by rule.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it stands"
)]

mod tern_hollow;

use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::screen::{Aside, SetAsideScreen, set_aside};
use sumpbook_trade::{EntryId, FactKind};
use tern_hollow::{Yard, at};

fn opened(yard: &Yard, id: EntryId) -> SetAsideScreen {
    set_aside(&yard.ledger, id, &yard.standing).unwrap().unwrap()
}

fn reads(yard: &mut Yard, when: &str, figure: &str) -> EntryId {
    yard.phone(&format!(
        r#"{{"unit":"TH-01","person":"Amos Tillery","at":"{when}","kind":"hour-reading","body":{{"meter":"compressor","figure":"{figure}","how":"asked","kept-when-asked":true}}}}"#
    ))
}

#[test]
fn a_figure_that_cannot_be_tells_what_could_be_and_what_may_have_happened() {
    let mut yard = Yard::new();
    reads(&mut yard, "2026-10-19T06:32:00-06:00", "2862.4");
    let id = reads(&mut yard, "2026-10-20T06:32:00-06:00", "8262.4");
    let told = opened(&yard, id);
    assert_eq!((told.why, told.door.as_deref()), (Some(Aside::Reading), Some("TH-01")));
    let says = told.says.unwrap();
    assert_eq!((says.kind, says.hours), (FactKind::HourReading, Some("8262.4".parse().unwrap())));
    let reading = told.reading.unwrap();
    assert_eq!(reading.ceiling, Some("2886.4".parse().unwrap()), "the last figure and the 24 hours since");
    // 28 and 82: two digits swapped fit.
    assert!(told.hints.contains(&"typed-wrong".to_owned()), "{:?}", told.hints);
    assert_eq!(told.about, Vec::new());
}

#[test]
fn what_the_shop_left_out_tells_by_whom_and_why() {
    let mut yard = Yard::new();
    let id = yard.phone(
        r#"{"unit":"TH-01","person":"Amos Tillery","at":"2026-10-19T07:05:00-06:00","kind":"top-up","body":{"fluid":"coolant","pours":[{"volume":{"value":"1","unit":"qt"}}]}}"#,
    );
    assert_eq!(opened(&yard, id).why, None, "it counts");
    yard.shop(&format!(
        r#"{{"unit":"TH-01","person":"Wren Castellane","source":"shop","at":"2026-10-19T09:00:00-06:00","kind":"decision","body":{{"targets":["{id}"],"verdict":"do-not-use","why":"that was TH-02"}}}}"#
    ));
    let told = opened(&yard, id);
    assert_eq!(told.why, Some(Aside::Judged(Judged::LeftOut)));
    assert_eq!(told.says.unwrap().volumes.len(), 1);
    let about = &told.about[0];
    assert_eq!((about.by.as_deref(), about.at), (Some("Wren Castellane"), at("2026-10-19T09:00:00-06:00")));
    assert_eq!((about.words.as_deref(), &about.belongs_to), (Some("that was TH-02"), &None));
    assert_eq!(told.about.len(), 1);
}

#[test]
fn an_entry_that_another_phone_wrote_is_not_opened_here() {
    let mut yard = Yard::new();
    let id = yard.shop(
        r#"{"unit":"TH-01","person":"Wren Castellane","source":"shop","at":"2026-10-19T09:00:00-06:00","kind":"waiting-for-part","body":{"part":"screen","promised":null,"over":false}}"#,
    );
    assert_eq!(set_aside(&yard.ledger, id, &yard.standing).unwrap(), None);
}
