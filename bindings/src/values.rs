//! Values that cross as one plain thing: ids and moments as text, hours as whole tenths, keys as they stand in
//! files and texts. A shell hands an id back as it came.

use chrono::NaiveDate;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, FactKind, Feature, Measure, PersonId, Stamp, Tenths, TruckId, WalkId};
use uuid::Uuid;

use crate::error::PhoneError;

/// The unit of a figure: not called "Unit", which is a word of Kotlin's own.
pub(crate) type FigureUnit = sumpbook_trade::Unit;
/// How an entry was judged.
pub(crate) type JudgedAs = sumpbook_daybook::Judged;
/// A word offered for a defect.
pub(crate) type WordOffered = (String, Severity);
/// The middle band of a glass.
pub(crate) type GlassBand = (u8, u8);
/// The least and the most that can have been used.
pub(crate) type UseBand = (i64, i64);

fn wrong(what: &str, text: &str) -> PhoneError {
    PhoneError::Argument { what: what.to_owned(), reason: format!("'{text}' is not one") }
}

/// The name a value has in JSON.
pub(crate) fn key(value: &impl Serialize) -> String {
    match serde_json::to_value(value) {
        Ok(Value::String(key)) => key,
        _ => String::new(),
    }
}

fn of_key<T: DeserializeOwned>(what: &str, key: String) -> Result<T, PhoneError> {
    let refused = wrong(what, &key);
    serde_json::from_value(Value::String(key)).map_err(|_| refused)
}

uniffi::custom_type!(
    /// The id of an entry or of its draft, for ever the same.
    EntryId, String, { remote, lower: |id| id.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("entry", &text).into()) }
);
uniffi::custom_type!(
    /// The id of a unit: its truck's.
    TruckId, String, { remote, lower: |id| id.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("unit", &text).into()) }
);
uniffi::custom_type!(
    /// The id of a person.
    PersonId, String, { remote, lower: |id| id.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("person", &text).into()) }
);
uniffi::custom_type!(
    /// The id of a walk that two people may share.
    WalkId, String, { remote, lower: |id| id.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("walk", &text).into()) }
);
uniffi::custom_type!(
    /// The id of an entry, where the trade names it without its kind.
    Uuid, String, { remote, lower: |id| id.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("entry", &text).into()) }
);
uniffi::custom_type!(
    /// A moment with the offset of the wall clock that showed it (RFC 3339).
    Stamp, String, { remote, lower: |at| at.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("moment", &text).into()) }
);
uniffi::custom_type!(
    /// A day of the yard, `2026-10-19`.
    NaiveDate, String, { remote, lower: |day| day.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("day", &text).into()) }
);
uniffi::custom_type!(
    /// Hours in whole tenths: 28624 is 2,862.4 h.
    Tenths, i64, { remote, lower: |hours| hours.0, try_lift: |tenths| Ok(Tenths(tenths)) }
);
uniffi::custom_type!(
    /// The name of a photo: its SHA-256 in 64 hexadecimal digits.
    Digest, String, { remote, lower: |photo| photo.to_string(), try_lift: |text| text.parse().map_err(|_| wrong("photo", &text).into()) }
);
uniffi::custom_type!(
    /// Key of a kind of entry, such as `top-up`, for the text `kind-...`.
    FactKind, String, { remote, lower: |kind| key(&kind), try_lift: |text| Ok(of_key("kind", text)?) }
);
uniffi::custom_type!(
    /// Key of something a unit has, such as `air-brakes`.
    Feature, String, { remote, lower: |feature| key(&feature), try_lift: |text| Ok(of_key("feature", text)?) }
);
uniffi::custom_type!(
    /// What a figure of the walk is given in, as it is written: `psi`, `in/32`.
    Measure, String, { remote, lower: |measure| key(&measure), try_lift: |text| Ok(of_key("measure", text)?) }
);
uniffi::custom_type!(
    /// The unit of a figure as it is written: `qt`, `L`, `psi`.
    FigureUnit, String, { remote, lower: |unit| key(&unit), try_lift: |text| Ok(of_key("figure's unit", text)?) }
);
uniffi::custom_type!(
    /// Key of why an entry is set aside, for the text `aside-...`.
    JudgedAs, String, { remote, lower: |judged| key(&judged), try_lift: |text| Ok(of_key("judgement", text)?) }
);

/// A word offered for a defect, and what it locks.
#[derive(uniffi::Record)]
pub struct OfferedWord {
    /// Its key, for the text `choice-...`.
    pub word: String,
    /// What it locks.
    pub severity: Severity,
    /// What the driver may raise it to, the least first.
    pub raises: Vec<Severity>,
}

/// Both ends of a band, both in it.
#[derive(uniffi::Record)]
pub struct Band {
    /// The lower end.
    pub low: i64,
    /// The upper end.
    pub high: i64,
}

uniffi::custom_type!(WordOffered, OfferedWord, {
    remote,
    lower: |pair| OfferedWord { word: pair.0, severity: pair.1, raises: pair.1.raised() },
    try_lift: |offered| Ok((offered.word, offered.severity)),
});
uniffi::custom_type!(GlassBand, Band, {
    remote,
    lower: |pair| Band { low: pair.0.into(), high: pair.1.into() },
    try_lift: |band| Ok((u8::try_from(band.low)?, u8::try_from(band.high)?)),
});
uniffi::custom_type!(UseBand, Band, {
    remote,
    lower: |pair| Band { low: pair.0, high: pair.1 },
    try_lift: |band| Ok((band.low, band.high)),
});
