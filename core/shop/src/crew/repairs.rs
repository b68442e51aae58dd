//! Defects that came again, and how long repairs took.

use chrono::{DateTime, FixedOffset, NaiveDate};
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::screen::median;
use sumpbook_trade::Stamp;
use sumpbook_trade::defect::{Certified, Defect, DefectState, Verdict};

use crate::ShopError;
use crate::sheet::Yard;

/// A defect at an item that was certified within 30 days before.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Repeated {
    /// Door number.
    pub unit: String,
    /// The checklist's item: a key of the texts.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// Found again at.
    pub since: Stamp,
    /// The certificate before it: when.
    pub certified: Stamp,
    /// Whether that said repaired; else that no repair was needed.
    pub repaired: bool,
    /// In its words.
    pub words: String,
}

/// How long repairs took, from the first finding to the certificate that stands.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct RepairedInDays {
    /// Defects certified as repaired in these weeks.
    pub repaired: usize,
    /// The middle of their times, hours; none without one.
    pub median_hours: Option<i64>,
    /// The longest, hours.
    pub longest_hours: Option<i64>,
    /// Defects that wait for a certificate now.
    pub open: usize,
    /// The oldest of those.
    pub oldest: Option<OpenDefect>,
}

/// A defect that waits for a certificate.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct OpenDefect {
    /// Door number.
    pub unit: String,
    /// The checklist's item: a key of the texts.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// First found at.
    pub since: Stamp,
}

pub(super) fn read(
    ledger: &Ledger,
    yard: &Yard,
    from: NaiveDate,
) -> Result<(Vec<Repeated>, RepairedInDays), ShopError> {
    let mut repeats = Vec::new();
    let (mut hours, mut open) = (Vec::new(), Vec::new());
    let of_these = |at: DateTime<FixedOffset>| (from..=yard.day).contains(&yard.day_of(at));
    for (door, truck) in yard.units(ledger)? {
        for defect in ledger.unit_state_at(truck, yard.cut_ms)?.defects {
            if let Some(before) = defect.repeats.as_ref().filter(|_| of_these(defect.since)) {
                repeats.push(repeated(yard, &door, &defect, &before.certified));
            }
            match &defect.state {
                DefectState::Open => open.push(OpenDefect {
                    unit: door.clone(),
                    item: defect.item.clone(),
                    place: defect.place.clone(),
                    since: yard.stamp(defect.since),
                }),
                DefectState::AwaitingReview { certified } | DefectState::Closed { certified, .. } => {
                    if certified.verdict == Verdict::Repaired && of_these(certified.at) {
                        let took = certified.at.signed_duration_since(defect.since).num_hours();
                        hours.push(u32::try_from(took).unwrap_or(0));
                    }
                }
            }
        }
    }
    repeats.sort_by(|a, b| (b.since, &a.unit, &a.item).cmp(&(a.since, &b.unit, &b.item)));
    let repairs = RepairedInDays {
        repaired: hours.len(),
        longest_hours: hours.iter().max().copied().map(i64::from),
        median_hours: median(hours).map(i64::from),
        open: open.len(),
        oldest: open.into_iter().min_by(|a, b| (a.since, &a.unit).cmp(&(b.since, &b.unit))),
    };
    Ok((repeats, repairs))
}

fn repeated(yard: &Yard, door: &str, defect: &Defect, before: &Certified) -> Repeated {
    Repeated {
        unit: door.to_owned(),
        item: defect.item.clone(),
        place: defect.place.clone(),
        since: yard.stamp(defect.since),
        certified: yard.stamp(before.at),
        repaired: before.verdict == Verdict::Repaired,
        words: before.words.clone(),
    }
}
