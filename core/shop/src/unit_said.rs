//! A unit as somebody says it, on a form or in a line: what is left out stays as it was.

use chrono::NaiveDate;
use sumpbook_trade::record::{SetProfile, SetRegistered, TruckRegistered};
use sumpbook_trade::unit::HoseTag;
use sumpbook_trade::{Feature, Features, Tenths, TruckId};

use crate::{Hand, NewSet, NewTruck, Shop, ShopError};

/// A unit: its truck, and the compressor set on it.
#[derive(Clone, Debug)]
pub struct UnitSaid {
    /// Door number; a unit that has it is changed.
    pub door: String,
    /// Serial number of the chassis.
    pub serial: Option<String>,
    /// Plate.
    pub plate: Option<String>,
    /// What it has.
    pub features: FeaturesSaid,
    /// In service since this day of the yard.
    pub in_service: NaiveDate,
    /// Compressor hours on that day.
    pub in_service_hours: Tenths,
    /// The last day on which its annual inspection holds.
    pub annual_inspection: Option<NaiveDate>,
    /// Serial of the compressor set; left out it is the set that stands there, not a second one.
    pub set_serial: Option<String>,
    /// Whether the set of that serial may come here from another unit, with its hours and its oil.
    pub set_moved: bool,
    /// What is particular to the set.
    pub profile: SetProfile,
}

/// What a unit has; a part that is none was not asked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FeaturesSaid {
    /// Features that it has or has not.
    pub switched: Option<Vec<Feature>>,
    /// Its service valves by name.
    pub valves: Option<Vec<String>>,
    /// Its hose reels by name.
    pub reels: Option<Vec<String>>,
    /// Its hoses.
    pub hoses: Option<Vec<HoseTag>>,
}

impl FeaturesSaid {
    /// All of it.
    pub fn whole(features: Features) -> FeaturesSaid {
        FeaturesSaid {
            switched: Some(features.switched.into_iter().collect()),
            valves: Some(features.valves),
            reels: Some(features.reels),
            hoses: Some(features.hoses),
        }
    }

    fn or(self, before: Option<&Features>) -> Features {
        let before = before.cloned().unwrap_or_default();
        Features {
            switched: self.switched.map_or(before.switched, |switched| switched.into_iter().collect()),
            valves: self.valves.unwrap_or(before.valves),
            reels: self.reels.unwrap_or(before.reels),
            hoses: self.hoses.unwrap_or(before.hoses),
        }
    }
}

impl Shop {
    /// Enters a unit; one of the same door number is changed, and keeps what was left out. Returns which.
    ///
    /// # Errors
    /// When the set of that serial stands on another unit and nobody said that it moved; else as [`Shop::write`].
    pub fn enter_unit(&mut self, said: UnitSaid, hand: &Hand) -> Result<TruckId, ShopError> {
        self.set_may_come(&said)?;
        let is = self.ledger.fleet().truck_by_door(&said.door).cloned();
        let kept = |said: Option<String>,
                    is: fn(&TruckRegistered) -> &Option<String>,
                    before: &Option<TruckRegistered>| {
            said.or_else(|| before.as_ref().and_then(|truck| is(truck).clone()))
        };
        let truck = self.add_truck(
            NewTruck {
                serial: kept(said.serial, |truck| &truck.serial, &is),
                plate: kept(said.plate, |truck| &truck.plate, &is),
                features: said.features.or(is.as_ref().map(|truck| &truck.features)),
                in_service: said.in_service,
                in_service_hours: said.in_service_hours,
                annual_inspection: said
                    .annual_inspection
                    .or_else(|| is.as_ref().and_then(|truck| truck.annual_inspection)),
                door: said.door,
            },
            hand,
        )?;
        let fitted = self.ledger.fleet().set_on(truck).and_then(|set| set.serial.clone());
        let serial = said.set_serial.or(fitted);
        let before = self.set_meant(serial.as_ref(), Some(truck)).map(|set| set.profile.clone());
        let profile = said.profile.or(before.unwrap_or_else(SetProfile::unknown));
        self.add_set(NewSet { serial, on: Some(truck), profile }, hand)?;
        Ok(truck)
    }

    /// A serial typed wrong would take the set of another unit away from it, with its hours.
    fn set_may_come(&self, said: &UnitSaid) -> Result<(), ShopError> {
        let fleet = self.ledger.fleet();
        let Some(serial) = said.set_serial.as_ref().filter(|_| !said.set_moved) else { return Ok(()) };
        let here = fleet.truck_by_door(&said.door).map(|truck| truck.truck);
        let on = fleet.set_by_serial(serial).and_then(|set| set.on);
        match on.filter(|on| Some(*on) != here).and_then(|on| fleet.trucks.get(&on)) {
            Some(there) => Err(ShopError::SetElsewhere { serial: serial.clone(), door: there.door.clone() }),
            None => Ok(()),
        }
    }

    /// The set that is meant: the one of this serial, else the one without a serial that stands on this truck.
    pub(crate) fn set_meant(&self, serial: Option<&String>, on: Option<TruckId>) -> Option<&SetRegistered> {
        let fleet = self.ledger.fleet();
        let same = serial.and_then(|serial| fleet.set_by_serial(serial));
        let unnamed = || on.and_then(|truck| fleet.set_on(truck)).filter(|set| set.serial.is_none());
        same.or_else(unnamed)
    }
}

#[cfg(test)]
mod tests {
    use sumpbook_trade::{Figure, Unit};

    use super::*;
    use crate::tests::yard::*;

    fn said(door: &str) -> UnitSaid {
        UnitSaid {
            door: door.into(),
            serial: None,
            plate: None,
            features: FeaturesSaid::default(),
            in_service: "2026-10-01".parse().unwrap(),
            in_service_hours: Tenths(0),
            annual_inspection: None,
            set_serial: None,
            set_moved: false,
            profile: SetProfile::unknown(),
        }
    }

    #[test]
    fn a_unit_that_has_records_does_not_come_into_service_after_them() {
        let mut yard = Yard::new();
        yard.sign(1, "Amos", "TH-01", "2026-10-19T16:00:00-06:00", reading(28_640));
        yard.exchange(1, "2026-10-19T16:48:00-06:00");
        let hand = yard.hand("Ilse", "2026-10-20T12:00:00-06:00");
        let was = yard.shop.ledger.fleet().truck_by_door("TH-01").unwrap().in_service;
        let first = yard.shop.ledger.store().truth().first_ms_of_unit(yard.truck("TH-01")).unwrap().unwrap();
        let first = chrono::DateTime::from_timestamp_millis(first).unwrap().date_naive();
        // A year typed wrong: it would be on no list before 2030.
        let later = UnitSaid { in_service: day("2030-01-01"), ..said("th-01") };
        let told = yard.shop.enter_unit(later, &hand).unwrap_err().to_string();
        assert!(told.contains("has records since") && told.contains("2030-01-01"), "{told}");
        assert_eq!(yard.shop.ledger.fleet().truck_by_door("TH-01").unwrap().in_service, was);
        // Up to its first record it may move, and one without records comes when it comes.
        yard.shop.enter_unit(UnitSaid { in_service: first, ..said("TH-01") }, &hand).unwrap();
        let new = UnitSaid { in_service: day("2027-03-01"), ..said("TH-41") };
        yard.shop.enter_unit(new, &hand).unwrap();
        yard.shop.enter_unit(UnitSaid { in_service: day("2027-04-01"), ..said("TH-41") }, &hand).unwrap();
    }

    #[test]
    fn what_is_left_out_stays_as_it_was_also_when_a_set_is_named_or_moves() {
        let mut yard = Yard::new();
        let hand = yard.hand("Ilse", "2026-10-18T12:00:00-06:00");
        let cfm = Figure::parse("185", Unit::CubicFootPerMinute).ok();
        let whole = UnitSaid {
            serial: Some("C-31".into()),
            plate: Some("THW 314".into()),
            features: FeaturesSaid::whole(Features {
                valves: vec!["left".into()],
                hoses: vec![HoseTag::inches("H-1", 0.75)],
                ..Features::of([Feature::Diesel])
            }),
            profile: SetProfile { delivery: cfm, load_share: Some(40), ..SetProfile::unknown() },
            ..said("TH-31")
        };
        let truck = yard.shop.enter_unit(whole, &hand).unwrap();
        let set = yard.shop.ledger.fleet().set_on(truck).unwrap().set;

        // Nothing but the set's serial is new: it is the same set, and it keeps what was known of it.
        let named = UnitSaid { set_serial: Some("A-31".into()), ..said("TH-31") };
        assert_eq!(yard.shop.enter_unit(named, &hand).unwrap(), truck);
        let fleet = yard.shop.ledger.fleet();
        let (is, fitted) = (&fleet.trucks[&truck], fleet.set_on(truck).unwrap());
        assert_eq!((is.serial.as_deref(), is.plate.as_deref()), (Some("C-31"), Some("THW 314")));
        assert_eq!(
            (is.features.valves.len(), is.features.hoses.len(), is.features.switched.len()),
            (1, 1, 1)
        );
        assert_eq!((fitted.set, fitted.serial.as_deref()), (set, Some("A-31")));
        assert_eq!((fitted.profile.delivery, fitted.profile.load_share), (cfm, Some(40)));

        // A serial that stands on another truck is not taken from there unless somebody says it moved.
        let slipped = UnitSaid { set_serial: Some("A-31".into()), ..said("TH-32") };
        let told = yard.shop.enter_unit(slipped.clone(), &hand).unwrap_err().to_string();
        assert!(told.contains("A-31") && told.contains("TH-31"), "{told}");
        assert!(yard.shop.ledger.fleet().truck_by_door("TH-32").is_none());
        assert_eq!(yard.shop.ledger.fleet().set_on(truck).unwrap().set, set);

        // Said, it is still that set on the other truck, with what is said anew and the rest as it was.
        let moved = UnitSaid {
            set_moved: true,
            profile: SetProfile { load_share: Some(55), ..SetProfile::unknown() },
            ..slipped
        };
        let other = yard.shop.enter_unit(moved, &hand).unwrap();
        let fitted = yard.shop.ledger.fleet().set_on(other).unwrap();
        assert_eq!((fitted.set, fitted.profile.delivery, fitted.profile.load_share), (set, cfm, Some(55)));
    }
}
