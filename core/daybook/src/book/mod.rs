//! A book: all that was recorded of one truck in one year, or of the fleet.

pub mod document;

use minicbor::data::Type;
use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use sumpbook_trade::TruckId;

pub use document::{DocumentError, EntryRow};

/// Which book. The fleet's comes first in every order, since every other needs what stands in it.
///
/// On the wire `[16 bytes, year]`, or `0` for the fleet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BookId {
    /// The fleet's one book: trucks, people, keys, programmes.
    Fleet,
    /// A truck's book of one year.
    Truck {
        /// The truck.
        truck: TruckId,
        /// The UTC year of the corrected clock when the entry was signed.
        year: u16,
    },
}

impl<C> Encode<C> for BookId {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        ctx: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        match self {
            BookId::Fleet => e.u8(0)?.ok(),
            BookId::Truck { truck, year } => e.array(2)?.encode_with(truck, ctx)?.u16(*year)?.ok(),
        }
    }
}

impl<'b, C> Decode<'b, C> for BookId {
    fn decode(d: &mut Decoder<'b>, ctx: &mut C) -> Result<BookId, minicbor::decode::Error> {
        let wrong = || minicbor::decode::Error::message("neither a truck's book nor the fleet's");
        if d.datatype()? == Type::Array {
            if d.array()? != Some(2) {
                return Err(wrong());
            }
            return Ok(BookId::Truck { truck: d.decode_with(ctx)?, year: d.u16()? });
        }
        if d.u8()? == 0 { Ok(BookId::Fleet) } else { Err(wrong()) }
    }
}

impl<C> CborLen<C> for BookId {
    fn cbor_len(&self, ctx: &mut C) -> usize {
        match self {
            BookId::Fleet => 1,
            BookId::Truck { year, .. } => 18 + year.cbor_len(ctx),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fleet_s_book_comes_first_and_each_has_one_form() {
        let (one, two) = (TruckId::from_bytes([0; 16]), TruckId::from_bytes([1; 16]));
        let books = [
            BookId::Fleet,
            BookId::Truck { truck: one, year: 2026 },
            BookId::Truck { truck: one, year: 2027 },
            BookId::Truck { truck: two, year: 9 },
        ];
        assert!(books.is_sorted());
        for book in books {
            let bytes = minicbor::to_vec(book).unwrap();
            assert_eq!(minicbor::decode::<BookId>(&bytes).unwrap(), book);
            assert_eq!(minicbor::len(book), bytes.len());
        }
        for wrong in [&[0x01][..], &[0x80], &[0x82, 0x40, 0x01], &[0xf6], &[0x9f, 0xff]] {
            assert!(minicbor::decode::<BookId>(wrong).is_err());
        }
    }
}
