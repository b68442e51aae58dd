//! Two figures of one moment.

use super::*;

fn twice(low: &str, high: &str) -> Meter {
    Meter::default().read(1, hour(0), "738.4").read(2, hour(24), high).read(3, hour(24), low)
}

#[test]
fn more_than_a_tenth_apart_they_tie_and_the_higher_counts_meanwhile() {
    let ledger = twice("742.1", "745.0").judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::SameMoment, vec![3], vec![2])]);
    let hours = ledger.for_due().unwrap();
    assert_eq!((hours.hours, hours.entry, hours.higher_of_disputed), (h("745.0"), id(2), true));
    assert_eq!(ledger.ceiling(hour(25)), Some(h("746.0")));
}

#[test]
fn the_one_above_the_ceiling_is_not_the_higher_that_counts() {
    let ledger = twice("742.1", "7421.0").judge();
    assert_eq!(due(&ledger), h("742.1"));
    assert_eq!(verdict(&ledger, 2), Verdict::Aside(AsideWhy::AboveCeiling));
}

#[test]
fn a_tenth_apart_or_equal_nobody_is_asked() {
    let near = twice("742.1", "742.2").judge();
    assert_eq!(verdict(&near, 2), Verdict::Accepted);
    assert_eq!(verdict(&near, 3), Verdict::Aside(AsideWhy::SlippedBack));
    let equal = twice("742.1", "742.1").judge();
    assert!(equal.rows().iter().all(|r| r.verdict == Verdict::Accepted));
    assert!(asked(&near).is_empty() && asked(&equal).is_empty());
}

#[test]
fn what_follows_only_the_lower_ends_the_tie() {
    let ledger = twice("742.1", "745.0").read(4, hour(40), "744.0").judge();
    assert_eq!(asked(&ledger), []);
    assert_eq!(due(&ledger), h("744.0"));
}

#[test]
fn what_follows_only_the_higher_ends_the_tie() {
    // Ten hours on, 742.1 allows 752.1.
    let ledger = twice("742.1", "745.0").read(4, hour(34), "754.0").judge();
    assert_eq!(asked(&ledger), []);
    assert_eq!(verdict(&ledger, 2), Verdict::Accepted);
    assert_eq!(verdict(&ledger, 3), Verdict::Aside(AsideWhy::SameMoment));
    assert_eq!(due(&ledger), h("754.0"));
}

#[test]
fn what_follows_both_leaves_the_tie_open() {
    let ledger = twice("742.1", "745.0").read(4, hour(48), "750.0").judge();
    assert_eq!(asked(&ledger), [(QuestionWhy::SameMoment, vec![3], vec![2])]);
    let hours = ledger.for_due().unwrap();
    assert_eq!((hours.hours, hours.higher_of_disputed), (h("750.0"), false));
}

#[test]
fn a_person_who_lets_one_stand_ends_the_tie() {
    for n in [2, 3] {
        let ledger = twice("742.1", "745.0").decide(n, Settlement::Stands).judge();
        assert_eq!(asked(&ledger), []);
        assert_eq!(ledger.for_due().unwrap().entry, id(n));
    }
    let ledger = twice("742.1", "745.0").decide(2, Settlement::DoesNotCount).judge();
    assert_eq!((asked(&ledger), due(&ledger)), (vec![], h("742.1")));
}

#[test]
fn they_never_vote() {
    let disputed = |second: &str| {
        Meter::default()
            .read(1, hour(0), "1221.0")
            .read(2, hour(72), "1262.2")
            .read(3, hour(96), "1231.0")
            .read(4, hour(120), "1236.0")
            .read(5, hour(120), second)
            .judge()
    };
    assert_eq!(verdict(&disputed("1238.0"), 2), Verdict::Accepted);
    // Equal figures of one moment are one story and may.
    assert_eq!(verdict(&disputed("1236.0"), 2), Verdict::OutvotedByLater);
}
