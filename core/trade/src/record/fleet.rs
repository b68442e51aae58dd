//! Matters of the fleet, signed by the shop.

use chrono::NaiveDate;

use super::{Digest, SiteDust};
use crate::clock::Programme;
use crate::day::DayStatus;
use crate::fluid::OilFamily;
use crate::quantity::day;
use crate::unit::Features;
use crate::{Figure, PersonId, SetId, Stamp, Tenths, TruckId};

choice! {
    /// What someone does here.
    pub enum Role {
        /// Drives and signs for the truck.
        #[n(0)] Driver,
        /// Works on site.
        #[n(1)] Crew,
        /// Learns, with a trainer.
        #[n(2)] Trainee,
        /// Repairs and certifies.
        #[n(3)] Mechanic,
        /// Runs the shop.
        #[n(4)] Manager,
    }
}

record! {
    /// The fleet itself.
    pub struct FleetNamed {
        /// Its name.
        #[n(0)] pub name: String,
        /// The yard's zone by its IANA name, such as `America/Denver`.
        #[n(1)] pub zone: String,
        /// The shop's public key, 32 bytes (Ed25519).
        #[n(2)] pub shop_key: Digest,
        /// An invented fleet for showing and testing; its shop may write with given times.
        #[n(3)] pub demo: bool,
    }

    /// A truck.
    pub struct TruckRegistered {
        /// Which.
        #[n(0)] pub truck: TruckId,
        /// What the yard calls it, such as `TH-01`.
        #[n(1)] pub door: String,
        /// Serial number of the chassis.
        #[n(2)] pub serial: Option<String>,
        /// Plate.
        #[n(3)] pub plate: Option<String>,
        /// What it has.
        #[n(4)] pub features: Features,
        /// In service since this day of the yard.
        #[cbor(with = "day")]
        #[n(5)] pub in_service: NaiveDate,
        /// Compressor hours on that day.
        #[n(6)] pub in_service_hours: Tenths,
        /// The last day on which its annual inspection holds, as its paper says.
        #[cbor(with = "day::option", has_nil)]
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(7)] pub annual_inspection: Option<NaiveDate>,
    }

    /// What is particular to a compressor set.
    pub struct SetProfile {
        /// Rated delivery of free air.
        #[n(0)] pub delivery: Option<Figure>,
        /// Whole volume of the sight glass, 0 to 100 %.
        #[n(1)] pub glass: Option<Figure>,
        /// Family of the oil in it.
        #[n(2)] pub oil_family: Option<OilFamily>,
        /// Grade of the oil in it.
        #[n(3)] pub oil_grade: Option<String>,
        /// Weight of an hour by the site's dust, in hundredths; 100 where none is set.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(4)] pub weights: Vec<(SiteDust, u32)>,
        /// Share of its running time in which it delivers air, in percent, as the shop estimates it; unknown: the
        /// oil in its air is told as "at least".
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(5)] pub load_share: Option<u8>,
        /// All the oil in it when it is filled to the middle of the glass: what grows when it is hot.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(6)] pub oil_volume: Option<Figure>,
    }

    /// A compressor set.
    pub struct SetRegistered {
        /// Which.
        #[n(0)] pub set: SetId,
        /// Serial number.
        #[n(1)] pub serial: Option<String>,
        /// The truck it stands on.
        #[n(2)] pub on: Option<TruckId>,
        /// What is particular to it.
        #[n(3)] pub profile: SetProfile,
    }

    /// The programme of services.
    pub struct ProgrammeSet {
        /// For this truck only; for every truck without one of its own when none.
        #[n(0)] pub truck: Option<TruckId>,
        /// The programme.
        #[n(1)] pub programme: Programme,
    }

    /// Someone of the fleet.
    pub struct PersonSet {
        /// Who.
        #[n(0)] pub person: PersonId,
        /// Name.
        #[n(1)] pub name: String,
        /// What they do.
        #[n(2)] pub role: Role,
        /// No longer here.
        #[n(3)] pub gone: bool,
        /// A new PIN was asked for at this moment: one chosen before on any phone holds no more.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub new_pin_asked: Option<Stamp>,
    }

    /// A device's key now signs for this fleet.
    pub struct DeviceEnrolled {
        /// Its public key, 32 bytes (Ed25519).
        #[n(0)] pub key: Digest,
        /// What the yard calls it.
        #[n(1)] pub name: String,
    }

    /// Heads of one book when a device was revoked.
    pub struct BookHead {
        /// The truck of the book; none for the fleet book.
        #[n(0)] pub truck: Option<TruckId>,
        /// The year of the book.
        #[n(1)] pub year: Option<u16>,
        /// The shop's heads then.
        #[n(2)] pub heads: Vec<Digest>,
    }

    /// A device's key signs no more. What the heads reach still counts; the rest waits for a person.
    pub struct DeviceRevoked {
        /// Its public key.
        #[n(0)] pub key: Digest,
        /// Every book it wrote in, as the shop held it.
        #[n(1)] pub books: Vec<BookHead>,
        /// Why.
        #[n(2)] pub why: String,
    }

    /// What a unit does from a day on, until changed.
    pub struct DayStatusSet {
        /// From this day of the yard.
        #[cbor(with = "day")]
        #[n(0)] pub from: NaiveDate,
        /// What it does.
        #[n(1)] pub status: DayStatus,
        /// Expected out from this minute of the day; none for the yard's morning.
        #[n(2)] pub expected_minute: Option<u16>,
    }
}

impl SetProfile {
    /// What is said of it, and for what is left out what was known before.
    pub fn or(self, before: SetProfile) -> SetProfile {
        SetProfile {
            delivery: self.delivery.or(before.delivery),
            glass: self.glass.or(before.glass),
            oil_family: self.oil_family.or(before.oil_family),
            oil_grade: self.oil_grade.or(before.oil_grade),
            weights: if self.weights.is_empty() { before.weights } else { self.weights },
            load_share: self.load_share.or(before.load_share),
            oil_volume: self.oil_volume.or(before.oil_volume),
        }
    }

    /// A set of which nothing is known yet.
    pub fn unknown() -> SetProfile {
        SetProfile {
            delivery: None,
            glass: None,
            oil_family: None,
            oil_grade: None,
            weights: Vec::new(),
            load_share: None,
            oil_volume: None,
        }
    }
}

impl TruckRegistered {
    /// The annual inspection is told of within so many days of its last one. Common practice, no source.
    pub const INSPECTION_TOLD_DAYS: i64 = 30;

    /// Days its annual inspection still holds: 0 on its last one, negative when it ran out; none when it is not on record.
    pub fn inspection_days_left(&self, today: NaiveDate) -> Option<i64> {
        self.annual_inspection.map(|until| until.signed_duration_since(today).num_days())
    }
}
