//! An entry: one fact with who, when, where and how it is known.

use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Fact;
use crate::{EntryId, PersonId, SetId, Stamp, Tenths, TruckId};

choice! {
    /// How the fact came to be written down. Shown wherever proof is graded.
    pub enum Source {
        /// On the phone of whoever saw it.
        #[n(0)] Phone,
        /// On a paper page, typed in later.
        #[n(1)] Paper,
        /// Read off another shop's invoice.
        #[n(2)] Invoice,
        /// Someone's signed estimate.
        #[n(3)] Estimate,
        /// From older records, unsigned by whoever made them.
        #[n(4)] BroughtIn,
        /// Written at the shop.
        #[n(5)] Shop,
    }
}

/// One immutable fact. The device that signed it is named by the signature, not in here.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Entry {
    /// Its own name.
    pub id: EntryId,
    /// The truck it is about; none for matters of the whole fleet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<TruckId>,
    /// The compressor set it is about, on every entry about air.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set: Option<SetId>,
    /// When, by the recording device's clock.
    pub at: Stamp,
    /// Hub time minus this clock in milliseconds, as last learnt; none before the first exchange.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clock_off_ms: Option<i64>,
    /// Who.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub person: Option<PersonId>,
    /// With whom, while the person is learning.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trainer: Option<PersonId>,
    /// Whether the person's own PIN was given at the signature.
    #[serde(default)]
    pub pin_given: bool,
    /// Whether the trainer's own PIN was given at it too.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub trainer_pin_given: bool,
    /// Compressor hours as read for this entry: a reading like any other.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<Tenths>,
    /// Words added.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// How it came to be written down.
    pub source: Source,
    /// What is recorded.
    #[serde(flatten)]
    pub fact: Fact,
}

impl Entry {
    /// The payload that is signed, stored and sent.
    pub fn to_payload(&self) -> Vec<u8> {
        // Writing to a Vec cannot fail, and none of our types refuses to be encoded.
        minicbor::to_vec(self).unwrap_or_default()
    }

    /// Reads a payload. A kind or a body of a newer version comes back as [`Fact::Newer`].
    ///
    /// # Errors
    /// When the common fields are not those of an entry.
    pub fn from_payload(payload: &[u8]) -> Result<Entry, minicbor::decode::Error> {
        minicbor::decode(payload)
    }
}

const KIND: u32 = 11;
const BODY: u32 = 12;
const TRAINER_PIN_GIVEN: u32 = 13;

impl<C> Encode<C> for Entry {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        ctx: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        let optional = [
            self.unit.is_some(),
            self.set.is_some(),
            self.clock_off_ms.is_some(),
            self.person.is_some(),
            self.trainer.is_some(),
            self.pin_given,
            self.trainer_pin_given,
            self.hours.is_some(),
            self.note.is_some(),
        ];
        let given = optional.iter().filter(|some| **some).count();
        e.map(u64::try_from(given).unwrap_or(0) + 5)?;
        e.u8(0)?.encode_with(self.id, ctx)?;
        if let Some(unit) = self.unit {
            e.u8(1)?.encode_with(unit, ctx)?;
        }
        if let Some(set) = self.set {
            e.u8(2)?.encode_with(set, ctx)?;
        }
        e.u8(3)?.encode_with(self.at, ctx)?;
        if let Some(off) = self.clock_off_ms {
            e.u8(4)?.i64(off)?;
        }
        if let Some(person) = self.person {
            e.u8(5)?.encode_with(person, ctx)?;
        }
        if let Some(trainer) = self.trainer {
            e.u8(6)?.encode_with(trainer, ctx)?;
        }
        if self.pin_given {
            e.u8(7)?.bool(true)?;
        }
        if let Some(hours) = self.hours {
            e.u8(8)?.encode_with(hours, ctx)?;
        }
        if let Some(note) = &self.note {
            e.u8(9)?.str(note)?;
        }
        e.u8(10)?.encode_with(self.source, ctx)?;
        e.u32(KIND)?.u16(self.fact.code())?;
        e.u32(BODY)?;
        self.fact.encode_body(e, ctx)?;
        if self.trainer_pin_given {
            e.u32(TRAINER_PIN_GIVEN)?.bool(true)?;
        }
        Ok(())
    }
}

impl<'b, C> Decode<'b, C> for Entry {
    fn decode(d: &mut Decoder<'b>, ctx: &mut C) -> Result<Entry, minicbor::decode::Error> {
        let missing = |what: &'static str| minicbor::decode::Error::message(what);
        let Some(fields) = d.map()? else { return Err(missing("an entry is a map of known length")) };
        let (mut id, mut unit, mut set, mut at, mut off) = (None, None, None, None, None);
        let (mut person, mut trainer, mut hours, mut note) = (None, None, None, None);
        let (mut source, mut kind, mut body) = (None, None, None);
        let (mut pin_given, mut trainer_pin_given) = (false, false);
        for _ in 0..fields {
            match d.u32()? {
                0 => id = Some(d.decode_with(ctx)?),
                1 => unit = Some(d.decode_with(ctx)?),
                2 => set = Some(d.decode_with(ctx)?),
                3 => at = Some(d.decode_with(ctx)?),
                4 => off = Some(d.i64()?),
                5 => person = Some(d.decode_with(ctx)?),
                6 => trainer = Some(d.decode_with(ctx)?),
                7 => pin_given = d.bool()?,
                8 => hours = Some(d.decode_with(ctx)?),
                9 => note = Some(d.str()?.to_owned()),
                // A source of a newer version reads as a phone's: it grades proof, it changes no figure.
                10 => source = Some(d.u8().map(|code| minicbor::decode(&[code]).unwrap_or(Source::Phone))?),
                KIND => kind = Some(d.u16()?),
                BODY => {
                    let start = d.position();
                    d.skip()?;
                    body = d.input().get(start..d.position());
                }
                TRAINER_PIN_GIVEN => trainer_pin_given = d.bool()?,
                _ => d.skip()?,
            }
        }
        let kind = kind.ok_or_else(|| missing("an entry without its kind"))?;
        let body = body.ok_or_else(|| missing("an entry without its body"))?;
        Ok(Entry {
            id: id.ok_or_else(|| missing("an entry without its id"))?,
            unit,
            set,
            at: at.ok_or_else(|| missing("an entry without its time"))?,
            clock_off_ms: off,
            person,
            trainer,
            pin_given,
            trainer_pin_given,
            hours,
            note,
            source: source.ok_or_else(|| missing("an entry without its source"))?,
            fact: Fact::decode_body(kind, body),
        })
    }
}

impl<C> CborLen<C> for Entry {
    fn cbor_len(&self, _: &mut C) -> usize {
        self.to_payload().len()
    }
}
