//! A slip's code on a real phone that has not met the shop since: invented data, outcome worked by rule.

use sumpbook_daybook::phone::{Daybook, FileSeal, SlipError};
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::defect::DefectState;
use sumpbook_trade::record::{DefectName, RepairVerdict};
use sumpbook_trade::{EntryId, Stamp};

use crate::Hand;
use crate::certify::certify;
use crate::demo::World;
use crate::slip::slip;
use crate::tests::yard::at;

const PHONE: &str = "yard phone 3";

/// Tuesday noon: Hattie's phone told of the lamp; since then it met nobody. Wren certifies at 12:30.
struct Case {
    world: World,
    defect: DefectName,
    certificate: EntryId,
    _folder: tempfile::TempDir,
}

fn case() -> Case {
    let folder = tempfile::tempdir().unwrap();
    let mut world = World::begin(folder.path()).unwrap();
    world.live_until(at("2026-10-20T12:00:00-06:00"), &mut |_| {}).unwrap();
    let truck = world.shop.unit("TH-02").unwrap();
    let when = at("2026-10-20T12:30:00-06:00");
    let hand = Hand::of(world.shop.person("Wren Castellane").unwrap(), when).received(when);
    let certificate =
        certify(&mut world.shop, truck, "lamps-stop", RepairVerdict::Repaired, "new bulb", &hand).unwrap();
    let state = world.phones[PHONE].ledger().unit_state(truck).unwrap();
    let open = state.defects.iter().find(|defect| defect.item == "lamps-stop").unwrap();
    let defect = DefectName {
        entry: EntryId(open.reference.entry),
        item: open.item.clone(),
        place: open.place.clone(),
    };
    Case { world, defect, certificate, _folder: folder }
}

impl Case {
    fn code(&self, phone: &str) -> String {
        let slip = slip(&self.world.shop.ledger, self.certificate, at("2026-10-20T12:31:00-06:00"));
        let codes = slip.unwrap().unwrap().codes;
        codes.into_iter().find(|code| code.phone == phone).unwrap().code
    }

    fn accept(&mut self, code: &str, when: Stamp) -> Result<RepairVerdict, SlipError> {
        let truck = self.world.shop.unit("TH-02").unwrap();
        let defect = self.defect.clone();
        self.world.phones.get_mut(PHONE).unwrap().accept_slip(code, truck, &defect, None, when)
    }

    fn state(&self) -> UnitState {
        let truck = self.world.shop.unit("TH-02").unwrap();
        self.world.phones[PHONE].ledger().unit_state(truck).unwrap()
    }

    fn awaits(&self) -> bool {
        let state = self.state();
        let defect = state.defects.iter().find(|defect| defect.item == "lamps-stop").unwrap();
        let lock = state.locks.iter().find(|lock| lock.because == defect.reference).unwrap();
        let awaits = matches!(defect.state, DefectState::AwaitingReview { .. });
        assert_eq!(lock.certified.is_some(), awaits, "lock and defect say the same");
        assert_eq!(lock.ended, None, "a slip ends no lock");
        awaits
    }

    /// Begins the phone's program again.
    fn restart(&mut self) {
        let folder = self.world.phone_folder(PHONE);
        self.world.phones.remove(PHONE);
        let again = Daybook::open(&folder, &FileSeal::new(folder.join("phone.key"))).unwrap();
        self.world.phones.insert(PHONE, again);
    }
}

fn wrong(of: &str) -> String {
    // The last digit of the number and its check digit are moved together until the code reads.
    let digits: Vec<u8> = of.bytes().filter(u8::is_ascii_digit).collect();
    for tail in 0..100u8 {
        let mut typed = digits.clone();
        let end = typed.len();
        (typed[end - 2], typed[end - 1]) = (b'0' + tail / 10, b'0' + tail % 10);
        let text = String::from_utf8(typed.clone()).unwrap();
        if typed != digits && text.parse::<sumpbook_daybook::gate::SlipCode>().is_ok() {
            return text;
        }
    }
    panic!("no other code reads");
}

#[test]
fn the_right_code_shows_the_lock_as_awaiting_review_until_the_certificate_has_come() {
    let mut case = case();
    assert!(!case.awaits());
    let code = case.code(PHONE);
    let now = at("2026-10-20T14:00:00-06:00");
    assert_eq!(case.accept(&code, now).unwrap(), RepairVerdict::Repaired);
    assert!(case.awaits());
    case.restart();
    assert!(case.awaits(), "it is durable");
    let shown = case.world.phones[PHONE].ledger().slips().unwrap();
    assert_eq!((shown.len(), shown[0].at), (1, now));
    assert!(matches!(case.accept(&code, now), Err(SlipError::NothingLocked)), "once is enough");
    // The shop's books know nothing of it, and nothing of it is handed over.
    assert_eq!(case.world.shop.ledger.slips().unwrap().len(), 0);
    case.world.live_until(at("2026-10-23T08:00:00-06:00"), &mut |_| {}).unwrap();
    let state = case.state();
    let defect = state.defects.iter().find(|defect| defect.item == "lamps-stop").unwrap();
    let certificates: Vec<_> = defect.certificates.iter().map(|c| EntryId(c.certificate)).collect();
    assert!(certificates.contains(&case.certificate), "the certificate itself has come");
}

#[test]
fn another_phones_code_and_another_verdict_are_told_apart() {
    let mut case = case();
    let (own, other) = (case.code(PHONE), case.code("yard phone 2"));
    assert_ne!(own, other);
    let told = case.accept(&other, at("2026-10-20T14:00:00-06:00")).unwrap_err();
    assert!(matches!(told, SlipError::Wrong { wait_s: 0 }), "{told:?}");
    assert!(told.to_string().contains("Nothing was changed"), "{told}");
    let mut elsewhere = case.defect.clone();
    elsewhere.item = "horn".into();
    let truck = case.world.shop.unit("TH-02").unwrap();
    let phone = case.world.phones.get_mut(PHONE).unwrap();
    let told = phone.accept_slip(&own, truck, &elsewhere, None, at("2026-10-20T14:01:00-06:00"));
    assert!(matches!(told, Err(SlipError::NothingLocked)), "{told:?}");
    assert!(!case.awaits());
}

#[test]
fn guessing_waits_longer_each_time_and_a_restart_gives_nothing_back() {
    let mut case = case();
    let code = case.code(PHONE);
    let wrong = wrong(&code);
    let now =
        |s: i64| Stamp::from_parts(at("2026-10-20T14:00:00-06:00").unix_ms() + s * 1_000, -360).unwrap();
    // Mistyped is no try.
    for _ in 0..10 {
        assert!(matches!(case.accept("1111 1111 1112", now(0)), Err(SlipError::Code(_))));
    }
    for (n, wait) in [(1, 0), (2, 0), (3, 30)] {
        let told = case.accept(&wrong, now(n)).unwrap_err();
        assert!(matches!(told, SlipError::Wrong { wait_s } if wait_s == wait), "{n}: {told:?}");
    }
    case.restart();
    let told = case.accept(&code, now(10)).unwrap_err();
    assert!(matches!(told, SlipError::Wait { wait_s: 23 }), "not looked at, though it is right: {told:?}");
    assert!(matches!(case.accept(&wrong, now(40)), Err(SlipError::Wrong { wait_s: 60 })));
    assert!(matches!(case.accept(&code, now(99)), Err(SlipError::Wait { wait_s: 1 })));
    assert_eq!(case.accept(&code, now(100)).unwrap(), RepairVerdict::Repaired);
}

#[test]
fn what_is_found_again_is_locked_again() {
    let mut case = case();
    let code = case.code(PHONE);
    case.accept(&code, at("2026-10-20T14:00:00-06:00")).unwrap();
    let truck = case.world.shop.unit("TH-02").unwrap();
    let again = case.world.phones[PHONE].ledger().store().truth().by_id(case.defect.entry).unwrap();
    let entry = sumpbook_trade::Entry::from_payload(&again[0].row.payload).unwrap();
    let parts = sumpbook_daybook::phone::Parts {
        at: Some(at("2026-10-20T15:00:00-06:00")),
        ..sumpbook_daybook::phone::Parts::about(truck, entry.fact)
    };
    case.world.phones.get_mut(PHONE).unwrap().record(parts, at("2026-10-20T15:00:00-06:00")).unwrap();
    assert!(!case.awaits());
}
