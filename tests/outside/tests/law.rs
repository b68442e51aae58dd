//! What 49 CFR 396 asks of a driver's report and of whoever answers it.

use chrono::{DateTime, FixedOffset};
use sumpbook_trade::defect::{
    Certificate, DefectRef, DefectState, Finding, LockPart, Records, Review, Verdict, defects, lock_outs,
};
use sumpbook_trade::{Template, add_months};
use uuid::Uuid;

// 49 CFR 396.11(a)(1)(i) to (xi): a report covers at least these eleven parts.
#[test]
fn the_checklist_covers_the_eleven_parts() {
    let template = Template::common_practice().unwrap();
    let covered: std::collections::BTreeSet<u8> =
        template.items.iter().filter_map(|item| item.part).map(|part| part as u8).collect();
    assert_eq!(covered.len(), 11);
}

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

const FOUND: Uuid = Uuid::from_u128(1);
const CERTIFIED: Uuid = Uuid::from_u128(2);
const MECHANIC: Uuid = Uuid::from_u128(3);
const DRIVER: Uuid = Uuid::from_u128(4);

fn found() -> Finding {
    Finding {
        at: at("2026-11-03T06:35:00-07:00"),
        entry: FOUND,
        item: "mirrors".to_owned(),
        place: None,
        parts: vec![LockPart::Road],
        person: DRIVER,
        words: "cracked".to_owned(),
    }
}

fn certificate(verdict: Verdict) -> Certificate {
    Certificate {
        at: at("2026-11-03T07:55:00-07:00"),
        entry: CERTIFIED,
        defect: DefectRef { entry: FOUND, item: "mirrors".to_owned(), place: None },
        verdict,
        by: MECHANIC,
        words: "outside the view".to_owned(),
    }
}

fn review() -> Review {
    Review {
        at: at("2026-11-03T08:10:00-07:00"),
        entry: Uuid::from_u128(5),
        person: DRIVER,
        seen: vec![CERTIFIED],
    }
}

fn state(certificates: &[Certificate], reviews: &[Review]) -> (DefectState, bool) {
    let all = defects(&Records {
        findings: &[found()],
        oks: &[],
        certificates,
        reviews,
        covered: &[],
        tz: chrono_tz::America::Denver,
    });
    let locked = lock_outs(&all.defects).iter().any(|lock| lock.stands_at(at("2026-11-03T09:00:00-07:00")));
    (all.defects[0].state.clone(), locked)
}

// 49 CFR 396.11(a)(3)(ii): certified repaired or repair unnecessary before the vehicle is operated again;
// 396.13(b), (c): the next driver reviews the report and signs that the certification is there.
#[test]
fn a_defect_ends_by_certificate_and_review_and_in_no_other_way() {
    assert!(matches!(state(&[], &[]), (DefectState::Open, true)));
    assert!(matches!(state(&[], &[review()]), (DefectState::Open, true)), "a review without a certificate");
    for verdict in [Verdict::Repaired, Verdict::NotNeeded] {
        let certified = [certificate(verdict)];
        assert!(matches!(state(&certified, &[]), (DefectState::AwaitingReview { .. }, true)));
        assert!(matches!(state(&certified, &[review()]), (DefectState::Closed { .. }, false)));
    }
}

// 49 CFR 396.17(c): an inspection within the preceding twelve months.
#[test]
fn an_annual_inspection_holds_for_twelve_months() {
    let day = |text: &str| text.parse().unwrap();
    assert_eq!(add_months(day("2026-03-12"), 12), Some(day("2027-03-12")));
    assert_eq!(add_months(day("2024-02-29"), 12), Some(day("2025-02-28")));
}
