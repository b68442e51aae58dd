//! Defects against the worked month and the letter of the rules. Invented data, outcomes worked by rule,
//! unless a source is named.

mod letter;
mod month;
mod order;

use chrono::{DateTime, FixedOffset};
use chrono_tz::America::Denver;
use uuid::Uuid;

use super::*;
use crate::day::{Coverage, Use, UseKind};

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

const fn id(n: u128) -> Uuid {
    Uuid::from_u128(n)
}

const BETTINA: Uuid = id(102);
const CARMELO: Uuid = id(103);
const DINAH: Uuid = id(104);
const HATTIE: Uuid = id(108);
const WREN: Uuid = id(112);

/// What is recorded about one unit.
#[derive(Clone, Default)]
struct Recorded {
    findings: Vec<Finding>,
    oks: Vec<OkAnswer>,
    certificates: Vec<Certificate>,
    reviews: Vec<Review>,
    covered: Vec<Coverage>,
}

impl Recorded {
    fn found(mut self, entry: u128, item: &str, parts: &[LockPart], person: Uuid, when: &str) -> Recorded {
        self.findings.push(Finding {
            at: at(when),
            entry: id(entry),
            item: item.into(),
            place: None,
            parts: parts.to_vec(),
            person,
            words: "cracked".into(),
        });
        self
    }

    fn ok(mut self, entry: u128, item: &str, person: Uuid, when: &str) -> Recorded {
        self.oks.push(OkAnswer { at: at(when), entry: id(entry), item: item.into(), place: None, person });
        self
    }

    fn certified(mut self, entry: u128, of: u128, item: &str, verdict: Verdict, when: &str) -> Recorded {
        self.certificates.push(Certificate {
            at: at(when),
            entry: id(entry),
            defect: DefectRef { entry: id(of), item: item.into(), place: None },
            verdict,
            by: WREN,
            words: "hairline outside the view; glass ordered".into(),
        });
        self
    }

    fn reviewed(mut self, entry: u128, seen: &[u128], person: Uuid, when: &str) -> Recorded {
        let seen = seen.iter().copied().map(id).collect();
        self.reviews.push(Review { at: at(when), entry: id(entry), person, seen });
        self
    }

    fn all(&self) -> Defects {
        defects(&Records {
            findings: &self.findings,
            oks: &self.oks,
            certificates: &self.certificates,
            reviews: &self.reviews,
            covered: &self.covered,
            tz: Denver,
        })
    }

    fn only(&self) -> Defect {
        let all = self.all().defects;
        assert_eq!(all.len(), 1, "{all:?}");
        all.into_iter().next().unwrap()
    }

    fn locks(&self) -> Vec<LockOut> {
        lock_outs(&self.all().defects)
    }
}

fn used(entry: u128, what: UseKind, when: &str) -> Use {
    Use { at: at(when), entry: id(entry), what }
}
