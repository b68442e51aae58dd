//! When, as the recording device's clock had it.

use std::fmt;
use std::str::FromStr;

use chrono::{DateTime, Datelike, FixedOffset, SecondsFormat, Utc};
use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// A moment to the millisecond with the offset of the wall clock that showed it (RFC 3339).
///
/// Ordered and compared as a moment: the offset only says what the clock on the wall read.
/// On the wire `[milliseconds since 1970 UTC, offset in minutes]`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp(DateTime<FixedOffset>);

impl Stamp {
    /// The moment, cut to whole milliseconds and a whole-minute offset.
    pub fn new(at: DateTime<FixedOffset>) -> Stamp {
        let minutes = at.offset().local_minus_utc().div_euclid(60);
        Stamp::from_parts(at.timestamp_millis(), minutes).unwrap_or(Stamp(at))
    }

    /// From the wire's two numbers; `None` outside the years 1 to 9999, where RFC 3339 has no text for it and
    /// a day more or another zone could leave the calendar.
    pub fn from_parts(unix_ms: i64, offset_minutes: i32) -> Option<Stamp> {
        let zone = FixedOffset::east_opt(offset_minutes.checked_mul(60)?)?;
        let at = DateTime::<Utc>::from_timestamp_millis(unix_ms)?;
        let has_text = |year: i32| (1..=9999).contains(&year);
        // Asked of UTC first: only within it can another zone's year be asked for at all.
        let within = has_text(at.year()) && has_text(at.with_timezone(&zone).year());
        within.then(|| Stamp(at.with_timezone(&zone)))
    }

    /// The moment with its offset.
    pub fn moment(self) -> DateTime<FixedOffset> {
        self.0
    }

    /// Milliseconds since 1970-01-01T00:00:00Z.
    pub fn unix_ms(self) -> i64 {
        self.0.timestamp_millis()
    }

    /// The wall clock's offset from UTC in minutes, east positive.
    pub fn offset_minutes(self) -> i32 {
        self.0.offset().local_minus_utc() / 60
    }
}

impl From<DateTime<FixedOffset>> for Stamp {
    fn from(at: DateTime<FixedOffset>) -> Stamp {
        Stamp::new(at)
    }
}

impl From<DateTime<Utc>> for Stamp {
    fn from(at: DateTime<Utc>) -> Stamp {
        Stamp::new(at.fixed_offset())
    }
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let form =
            if self.0.timestamp_subsec_millis() == 0 { SecondsFormat::Secs } else { SecondsFormat::Millis };
        f.write_str(&self.0.to_rfc3339_opts(form, true))
    }
}

/// Why a text is not a moment.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("'{0}' is not a date and time with its offset (RFC 3339), such as 2026-10-19T06:32:00-06:00")]
pub struct StampError(String);

impl FromStr for Stamp {
    type Err = StampError;
    fn from_str(text: &str) -> Result<Stamp, StampError> {
        DateTime::parse_from_rfc3339(text)
            .ok()
            .and_then(|at| {
                Stamp::from_parts(at.timestamp_millis(), at.offset().local_minus_utc().div_euclid(60))
            })
            .ok_or_else(|| StampError(text.chars().take(40).collect()))
    }
}

impl Serialize for Stamp {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Stamp {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Stamp, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(de::Error::custom)
    }
}

impl JsonSchema for Stamp {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Stamp".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "format": "date-time",
            "description": "RFC 3339 with offset: 2026-10-19T06:32:00-06:00"
        })
    }
}

impl<C> Encode<C> for Stamp {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        _: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        e.array(2)?.i64(self.unix_ms())?.i32(self.offset_minutes())?.ok()
    }
}

impl<'b, C> Decode<'b, C> for Stamp {
    fn decode(d: &mut Decoder<'b>, _: &mut C) -> Result<Stamp, minicbor::decode::Error> {
        let wrong = || minicbor::decode::Error::message("not a moment: two numbers within the calendar");
        if d.array()? != Some(2) {
            return Err(wrong());
        }
        let (ms, minutes) = (d.i64()?, d.i32()?);
        Stamp::from_parts(ms, minutes).ok_or_else(wrong)
    }
}

impl<C> CborLen<C> for Stamp {
    fn cbor_len(&self, ctx: &mut C) -> usize {
        1 + self.unix_ms().cbor_len(ctx) + self.offset_minutes().cbor_len(ctx)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_wall_clock_is_kept_and_the_moment_compared() {
        let first: Stamp = "2026-11-01T01:50:00-06:00".parse().unwrap();
        let second: Stamp = "2026-11-01T01:40:00-07:00".parse().unwrap();
        assert!(first < second);
        assert_eq!(second.to_string(), "2026-11-01T01:40:00-07:00");
    }

    #[test]
    fn the_wire_form_is_the_moment_and_its_offset() {
        let at: Stamp = "2026-10-19T06:32:00.250-06:00".parse().unwrap();
        let bytes = minicbor::to_vec(at).unwrap();
        assert_eq!(minicbor::decode::<Stamp>(&bytes).unwrap(), at);
        assert_eq!(minicbor::len(at), bytes.len());
    }

    #[test]
    fn a_moment_beyond_the_calendar_is_an_error() {
        let bytes = minicbor::to_vec((i64::MAX, 0i32)).unwrap();
        assert!(minicbor::decode::<Stamp>(&bytes).is_err());
        let bytes = minicbor::to_vec((0i64, i32::MAX)).unwrap();
        assert!(minicbor::decode::<Stamp>(&bytes).is_err());
        // The last millisecond of 9999 in UTC: a minute further east it is another year, and has no text.
        let last = 253_402_300_799_999;
        let text = Stamp::from_parts(last, 0).unwrap().to_string();
        assert_eq!(text, "9999-12-31T23:59:59.999Z");
        assert_eq!(text.parse::<Stamp>().unwrap().unix_ms(), last);
        assert_eq!(Stamp::from_parts(last, 1), None);
        assert_eq!(Stamp::from_parts(last + 1, -1), None);
        assert_eq!(Stamp::from_parts(DateTime::<Utc>::MAX_UTC.timestamp_millis(), 0), None);
    }
}
