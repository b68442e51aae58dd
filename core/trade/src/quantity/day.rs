//! A calendar day on the wire: days since 1970-01-01.

use chrono::{Datelike, NaiveDate};
use minicbor::{CborLen, Decoder, Encoder};

/// Days from 0001-01-01 to 1970-01-01 in chrono's count.
const EPOCH: i32 = 719_163;

fn number(day: &NaiveDate) -> i32 {
    day.num_days_from_ce() - EPOCH
}

/// Writes the day as days since 1970-01-01.
pub(crate) fn encode<C, W: minicbor::encode::Write>(
    day: &NaiveDate,
    e: &mut Encoder<W>,
    _: &mut C,
) -> Result<(), minicbor::encode::Error<W::Error>> {
    e.i32(number(day))?.ok()
}

/// Reads it back; an error beyond the calendar.
pub(crate) fn decode<'b, C>(d: &mut Decoder<'b>, _: &mut C) -> Result<NaiveDate, minicbor::decode::Error> {
    d.i32()?
        .checked_add(EPOCH)
        .and_then(NaiveDate::from_num_days_from_ce_opt)
        .ok_or_else(|| minicbor::decode::Error::message("not a day of the calendar"))
}

/// Bytes it takes.
pub(crate) fn cbor_len<C>(day: &NaiveDate, ctx: &mut C) -> usize {
    number(day).cbor_len(ctx)
}

/// The same for a day that may be unknown.
pub(crate) mod option {
    use super::{CborLen, Decoder, Encoder, NaiveDate, number};

    /// Writes the day, or null.
    pub(crate) fn encode<C, W: minicbor::encode::Write>(
        day: &Option<NaiveDate>,
        e: &mut Encoder<W>,
        ctx: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        match day {
            Some(day) => super::encode(day, e, ctx),
            None => e.null()?.ok(),
        }
    }

    /// Reads it back.
    pub(crate) fn decode<'b, C>(
        d: &mut Decoder<'b>,
        ctx: &mut C,
    ) -> Result<Option<NaiveDate>, minicbor::decode::Error> {
        if d.datatype()? == minicbor::data::Type::Null {
            d.null()?;
            return Ok(None);
        }
        super::decode(d, ctx).map(Some)
    }

    /// Unknown.
    pub(crate) fn nil() -> Option<Option<NaiveDate>> {
        Some(None)
    }

    /// Whether it is unknown.
    pub(crate) fn is_nil(day: &Option<NaiveDate>) -> bool {
        day.is_none()
    }

    /// Bytes it takes.
    pub(crate) fn cbor_len<C>(day: &Option<NaiveDate>, ctx: &mut C) -> usize {
        day.as_ref().map_or(1, |d| number(d).cbor_len(ctx))
    }
}
