//! The yard's clock and names: how moments, people, phones and units are told of.

use chrono::{DateTime, Days, FixedOffset, NaiveDate, NaiveTime, Offset, TimeZone};
use chrono_tz::Tz;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::day::{yard_day, yard_moment};
use sumpbook_trade::{PersonId, Stamp, TruckId};
use uuid::Uuid;

use crate::ShopError;

/// A day of the yard and the moment it is looked at.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Yard {
    pub(crate) zone: Tz,
    pub(crate) day: NaiveDate,
    pub(crate) now: Stamp,
    /// What happened after this is not of the sheet: `now`, or the day's last millisecond.
    pub(crate) cut_ms: i64,
}

impl Yard {
    pub(crate) fn of(ledger: &Ledger, day: NaiveDate, now: Stamp) -> Result<Yard, ShopError> {
        let zone = ledger.fleet().zone;
        let next = day.checked_add_days(Days::new(1)).ok_or(ShopError::DayBeyond(day))?;
        let end = yard_moment(next, NaiveTime::MIN, zone).ok_or(ShopError::DayBeyond(day))?;
        let cut_ms = now.unix_ms().min(end.timestamp_millis().saturating_sub(1));
        Ok(Yard { zone, day, now, cut_ms })
    }

    /// Whether the day is looked at before it is over: then all that is known is of it, and what is dated after
    /// the moment it is looked at is dated after it came.
    pub(crate) fn is_under_way(&self) -> bool {
        self.cut_ms == self.now.unix_ms()
    }

    pub(crate) fn yesterday(&self) -> Result<NaiveDate, ShopError> {
        self.day.checked_sub_days(Days::new(1)).ok_or(ShopError::DayBeyond(self.day))
    }

    pub(crate) fn tomorrow(&self) -> Result<NaiveDate, ShopError> {
        self.day.checked_add_days(Days::new(1)).ok_or(ShopError::DayBeyond(self.day))
    }

    pub(crate) fn stamp(&self, at: DateTime<FixedOffset>) -> Stamp {
        let local = at.with_timezone(&self.zone);
        Stamp::new(local.with_timezone(&local.offset().fix()))
    }

    pub(crate) fn stamp_ms(&self, ms: i64) -> Stamp {
        match self.zone.timestamp_millis_opt(ms).earliest() {
            Some(at) => self.stamp(at.fixed_offset()),
            None => self.now,
        }
    }

    pub(crate) fn cut(&self) -> DateTime<FixedOffset> {
        self.stamp_ms(self.cut_ms).moment()
    }

    pub(crate) fn day_of(&self, at: DateTime<FixedOffset>) -> NaiveDate {
        yard_day(at, self.zone)
    }

    /// "06:32" on the sheet's day, else "Thu 18:52".
    pub(crate) fn clock(&self, at: Stamp) -> String {
        let local = self.stamp(at.moment()).moment();
        let form = if self.day_of(local) == self.day { "%H:%M" } else { "%a %H:%M" };
        local.format(form).to_string()
    }

    pub(crate) fn name(&self, ledger: &Ledger, person: Option<PersonId>) -> Option<String> {
        let person = person.filter(|person| person.0 != Uuid::nil())?;
        Some(ledger.fleet().person_name(person).map_or_else(|| person.to_string(), str::to_owned))
    }

    pub(crate) fn name_of(&self, ledger: &Ledger, person: Uuid) -> Option<String> {
        self.name(ledger, Some(PersonId(person)))
    }

    pub(crate) fn phone(&self, ledger: &Ledger, key: KeyId) -> String {
        if key == ledger.root().shop.id() {
            return "the shop".to_owned();
        }
        ledger.fleet().device(key.0).map_or_else(|| key.to_string(), |device| device.name.clone())
    }

    /// Every unit by its door number: the fleet's, and trucks of which only a book has come.
    pub(crate) fn units(&self, ledger: &Ledger) -> Result<Vec<(String, TruckId)>, ShopError> {
        let fleet = ledger.fleet();
        // A unit that came later is not of an earlier day.
        let here = fleet.trucks.values().filter(|truck| truck.in_service <= self.day);
        let mut trucks: std::collections::BTreeSet<TruckId> = here.map(|truck| truck.truck).collect();
        for book in ledger.store().truth().books()? {
            if let BookId::Truck { truck, .. } = book
                && !fleet.trucks.contains_key(&truck)
            {
                trucks.insert(truck);
            }
        }
        let mut units: Vec<(String, TruckId)> =
            trucks.into_iter().map(|truck| (fleet.door(truck), truck)).collect();
        units.sort();
        Ok(units)
    }
}
