//! Papers that hold until a day: the annual inspection of a truck (49 CFR 396.17), and how near its end is.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_daybook::fleet::Fleet;
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::record::TruckRegistered;
use sumpbook_trade::{EntryId, TruckId};

use crate::{Hand, Shop, ShopError};

/// A dated paper of one unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DatedPaper {
    /// Door number.
    pub unit: String,
    /// Which: `annual-inspection`.
    pub paper: String,
    /// The last day on which it holds; none when it is not on record.
    pub holds_until: Option<NaiveDate>,
    /// Days left, 0 on its last day, negative when it ran out.
    pub days_left: Option<i64>,
    /// `holds`, `runs-out` within 30 days, `ran-out`, `unknown`.
    pub state: String,
}

/// The annual inspection of a truck, as it stands on a day of the yard.
pub fn annual_inspection(truck: &TruckRegistered, today: NaiveDate) -> DatedPaper {
    let days_left = truck.inspection_days_left(today);
    let state = match days_left {
        None => "unknown",
        Some(left) if left < 0 => "ran-out",
        Some(left) if left <= TruckRegistered::INSPECTION_TOLD_DAYS => "runs-out",
        Some(_) => "holds",
    };
    DatedPaper {
        unit: truck.door.clone(),
        paper: "annual-inspection".to_owned(),
        holds_until: truck.annual_inspection,
        days_left,
        state: state.to_owned(),
    }
}

/// Papers of these units that ran out or do within 30 days, soonest first. One that is not on record is none of them:
/// a fleet may keep it elsewhere; nor is that of a truck that was sold.
pub(crate) fn near<'s>(
    fleet: &Fleet,
    today: NaiveDate,
    units: impl Iterator<Item = &'s UnitState>,
) -> Vec<DatedPaper> {
    let here = units.filter(|unit| !unit.is_sold(today)).filter_map(|unit| fleet.trucks.get(&unit.truck));
    let all = here.map(|truck| annual_inspection(truck, today));
    let mut near: Vec<DatedPaper> = all
        .filter(|paper| paper.days_left.is_some_and(|left| left <= TruckRegistered::INSPECTION_TOLD_DAYS))
        .collect();
    near.sort_by(|a, b| (a.holds_until, &a.unit).cmp(&(b.holds_until, &b.unit)));
    near
}

/// The units among these papers whose annual inspection ran out.
pub(crate) fn ran_out(papers: &[DatedPaper]) -> impl Iterator<Item = &str> {
    papers.iter().filter(|paper| paper.state == "ran-out").map(|paper| paper.unit.as_str())
}

/// Writes down until which day a truck's annual inspection holds; all else of the truck stays as it is.
///
/// # Errors
/// When the truck is not of the fleet; and as [`Shop::write`].
pub fn renew_annual_inspection(
    shop: &mut Shop,
    truck: TruckId,
    holds_until: NaiveDate,
    hand: &Hand,
) -> Result<EntryId, ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    let fleet = shop.ledger.fleet();
    let Some(registered) = fleet.trucks.get(&truck) else {
        let door = fleet.door(truck);
        let known = fleet.trucks.values().map(|truck| truck.door.as_str()).collect::<Vec<_>>().join(", ");
        return Err(ShopError::UnknownUnit { door, known });
    };
    let renewed = TruckRegistered { annual_inspection: Some(holds_until), ..registered.clone() };
    shop.write(None, renewed.into(), None, hand)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tests::yard::*;

    #[test]
    fn a_paper_is_told_of_thirty_days_before_its_last_day() {
        let mut yard = Yard::new();
        let hand = yard.hand("Ilse", "2026-10-18T12:00:00-06:00");
        let truck = yard.truck("TH-01");
        let before = yard.shop.ledger.fleet().trucks[&truck].clone();
        let state = |yard: &Yard, on: &str| {
            annual_inspection(&yard.shop.ledger.fleet().trucks[&truck], day(on)).state
        };
        assert_eq!(state(&yard, "2026-10-19"), "unknown");
        let near = |yard: &Yard, on: &str| {
            let ledger = &yard.shop.ledger;
            super::near(ledger.fleet(), day(on), ledger.all_unit_states().unwrap().iter())
        };
        assert_eq!(near(&yard, "2026-10-19"), []);
        renew_annual_inspection(&mut yard.shop, truck, day("2026-11-20"), &hand).unwrap();
        for (on, is) in [
            ("2026-10-20", "holds"),
            ("2026-10-21", "runs-out"),
            ("2026-11-20", "runs-out"),
            ("2026-11-21", "ran-out"),
        ] {
            assert_eq!(state(&yard, on), is, "{on}");
        }
        let told = near(&yard, "2026-11-21");
        assert_eq!((told.len(), told[0].unit.as_str(), told[0].days_left), (1, "TH-01", Some(-1)));
        // A newer date takes its place, and nothing else of the truck moved.
        renew_annual_inspection(&mut yard.shop, truck, day("2027-11-20"), &hand).unwrap();
        assert_eq!(near(&yard, "2026-11-21"), []);
        let after = yard.shop.ledger.fleet().trucks[&truck].clone();
        assert_eq!(TruckRegistered { annual_inspection: None, ..after }, before);
        let nobody = Hand::nobody(at("2026-10-18T12:00:00-06:00"));
        assert!(matches!(
            renew_annual_inspection(&mut yard.shop, truck, day("2027-11-20"), &nobody),
            Err(ShopError::NoPerson)
        ));
    }
}
