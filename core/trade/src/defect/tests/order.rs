//! What arrives when changes nothing, and nothing found is ever lost.

use chrono::TimeDelta;
use proptest::prelude::*;

use super::*;

const ITEMS: [&str; 2] = ["mirrors", "horn"];

#[derive(Clone, Debug)]
enum Fact {
    Found { item: usize, parts: Vec<LockPart> },
    Ok { item: usize },
    Certified { item: usize, of: u128, repaired: bool },
    Reviewed { seen: Vec<u128> },
}

fn any_parts() -> impl Strategy<Value = Vec<LockPart>> {
    proptest::sample::subsequence(vec![LockPart::Road, LockPart::Air, LockPart::Outlet("reel".into())], 0..=3)
}

fn any_fact() -> impl Strategy<Value = Fact> {
    prop_oneof![
        (0usize..2, any_parts()).prop_map(|(item, parts)| Fact::Found { item, parts }),
        (0usize..2).prop_map(|item| Fact::Ok { item }),
        (0usize..2, 0u128..14, any::<bool>()).prop_map(|(item, of, repaired)| Fact::Certified {
            item,
            of,
            repaired
        }),
        proptest::collection::vec(0u128..14, 0..4).prop_map(|seen| Fact::Reviewed { seen }),
    ]
}

/// Facts with minutes from a common start; the place in the list is the entry.
fn recorded(facts: &[(Fact, i64)]) -> Recorded {
    facts.iter().enumerate().fold(Recorded::default(), |sum, (n, (fact, minute))| {
        let when = (at("2026-11-03T06:00:00-07:00") + TimeDelta::minutes(*minute)).to_rfc3339();
        let n = n as u128;
        match fact {
            Fact::Found { item, parts } => sum.found(n, ITEMS[*item], parts, CARMELO, &when),
            Fact::Ok { item } => sum.ok(n, ITEMS[*item], BETTINA, &when),
            Fact::Certified { item, of, repaired } => {
                let verdict = if *repaired { Verdict::Repaired } else { Verdict::NotNeeded };
                sum.certified(n, *of, ITEMS[*item], verdict, &when)
            }
            Fact::Reviewed { seen } => sum.reviewed(n, seen, DINAH, &when),
        }
    })
}

fn any_facts() -> impl Strategy<Value = Vec<(Fact, i64)>> {
    proptest::collection::vec((any_fact(), 0i64..40), 0..14)
}

fn turned<T: Clone>(list: &[T], by: usize) -> Vec<T> {
    let mut list = list.to_vec();
    list.reverse();
    let by = by.min(list.len());
    list.rotate_left(by);
    list
}

proptest! {
    #[test]
    fn the_order_of_arrival_changes_nothing(facts in any_facts(), by in 0usize..14) {
        let straight = recorded(&facts);
        let other = Recorded {
            findings: turned(&straight.findings, by),
            oks: turned(&straight.oks, by),
            certificates: turned(&straight.certificates, by),
            reviews: turned(&straight.reviews, by),
            covered: vec![],
        };
        prop_assert_eq!(straight.all(), other.all());
        let mut twice = straight.clone();
        twice.findings.extend(straight.findings.clone());
        twice.certificates.extend(straight.certificates.clone());
        twice.reviews.extend(straight.reviews.clone());
        prop_assert_eq!(straight.all(), twice.all(), "hearing it twice changes nothing either");
    }

    #[test]
    fn every_finding_is_in_one_defect_and_every_certificate_in_one_or_waiting(facts in any_facts()) {
        let recorded = recorded(&facts);
        let all = recorded.all();
        for finding in &recorded.findings {
            let told = |defect: &&Defect| {
                defect.answers.iter().any(|a| a.entry == finding.entry && a.said != Said::Ok)
            };
            prop_assert_eq!(all.defects.iter().filter(told).count(), 1);
        }
        for certificate in &recorded.certificates {
            let told = all.defects.iter().flat_map(|d| &d.certificates);
            let in_one = told.filter(|c| c.certificate == certificate.entry).count();
            let waits = all.waiting.iter().filter(|entry| **entry == certificate.entry).count();
            prop_assert_eq!(in_one + waits, 1);
        }
    }

    #[test]
    fn no_lock_out_ends_without_a_certificate_and_a_review_that_names_it(facts in any_facts()) {
        let recorded = recorded(&facts);
        for defect in recorded.all().defects {
            let DefectState::Closed { certified, reviewed } = &defect.state else { continue };
            match reviewed {
                None => prop_assert!(defect.parts.is_empty()),
                Some(reviewed) => {
                    let review = recorded.reviews.iter().find(|r| r.entry == reviewed.review).unwrap();
                    prop_assert!(review.seen.contains(&certified.certificate));
                    let newest = defect.answers.iter().filter(|a| a.said != Said::Ok).map(|a| a.at).max();
                    prop_assert!(newest <= Some(certified.at), "nothing found after what was certified");
                    prop_assert!(certified.at <= reviewed.at);
                }
            }
        }
    }
}
