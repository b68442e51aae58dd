//! CBOR against the examples of RFC 8949.

use minicbor::data::Token;
use minicbor::decode::Tokenizer;
use sumpbook_daybook::gate::bounded::{self, BoundedError};
use sumpbook_outside::hex::{hex, unhex};

/// RFC 8949 appendix A: every example of definite length.
const CBOR_DEFINITE: [&str; 70] = [
    "00",
    "01",
    "0a",
    "17",
    "1818",
    "1819",
    "1864",
    "1903e8",
    "1a000f4240",
    "1b000000e8d4a51000",
    "1bffffffffffffffff",
    "c249010000000000000000",
    "3bffffffffffffffff",
    "c349010000000000000000",
    "20",
    "29",
    "3863",
    "3903e7",
    "f90000",
    "f98000",
    "f93c00",
    "fb3ff199999999999a",
    "f93e00",
    "f97bff",
    "fa47c35000",
    "fa7f7fffff",
    "fb7e37e43c8800759c",
    "f90001",
    "f90400",
    "f9c400",
    "fbc010666666666666",
    "f97c00",
    "f97e00",
    "f9fc00",
    "fa7f800000",
    "fa7fc00000",
    "faff800000",
    "fb7ff0000000000000",
    "fb7ff8000000000000",
    "fbfff0000000000000",
    "f4",
    "f5",
    "f6",
    "f7",
    "f0",
    "f8ff",
    "c074323031332d30332d32315432303a30343a30305a",
    "c11a514b67b0",
    "c1fb41d452d9ec200000",
    "d74401020304",
    "d818456449455446",
    "d82076687474703a2f2f7777772e6578616d706c652e636f6d",
    "40",
    "4401020304",
    "60",
    "6161",
    "6449455446",
    "62225c",
    "62c3bc",
    "63e6b0b4",
    "64f0908591",
    "80",
    "83010203",
    "8301820203820405",
    "98190102030405060708090a0b0c0d0e0f101112131415161718181819",
    "a0",
    "a201020304",
    "a26161016162820203",
    "826161a161626163",
    "a56161614161626142616361436164614461656145",
];

/// RFC 8949 appendix A: every example of indefinite length, with where the first such item begins.
const CBOR_INDEFINITE: [(&str, usize); 11] = [
    ("5f42010243030405ff", 0),
    ("7f657374726561646d696e67ff", 0),
    ("9fff", 0),
    ("9f018202039f0405ffff", 0),
    ("9f01820203820405ff", 0),
    ("83018202039f0405ff", 5),
    ("83019f0203ff820405", 2),
    ("9f0102030405060708090a0b0c0d0e0f101112131415161718181819ff", 0),
    ("bf61610161629f0203ffff", 0),
    ("826161bf61626163ff", 3),
    ("bf6346756ef563416d7421ff", 0),
];

/// RFC 8949 appendix F, "Examples of CBOR Data Items That Are Not Well-Formed": a choice of each sort, values
/// from memory.
const CBOR_MALFORMED: [&str; 24] = [
    "18",
    "19",
    "1a",
    "1b",
    "1901",
    "1a0102",
    "1b01020304050607",
    "38",
    "58",
    "78",
    "98",
    "9a01ff00",
    "b8",
    "d8",
    "f8",
    "f900",
    "41",
    "61",
    "5affffffff00",
    "81",
    "a1",
    "a20102",
    "1c",
    "f818",
];

#[test]
fn cbor_of_rfc_8949_is_read_and_written_back() {
    for text in CBOR_DEFINITE {
        let bytes = unhex(text);
        assert_eq!(bounded::check(&bytes, bounded::ENTRY), Ok(()), "{text}");
        let tokens: Result<Vec<Token<'_>>, _> = Tokenizer::new(&bytes).collect();
        let mut encoder = minicbor::Encoder::new(Vec::new());
        encoder.tokens(&tokens.unwrap()).unwrap();
        assert_eq!(hex(&encoder.into_writer()), text);
    }
    for (text, at) in CBOR_INDEFINITE {
        let refused = bounded::check(&unhex(text), bounded::ENTRY);
        assert_eq!(refused, Err(BoundedError::Indefinite { at }), "{text}");
    }
    for text in CBOR_MALFORMED {
        assert!(bounded::check(&unhex(text), bounded::ENTRY).is_err(), "{text}");
    }
}

/// RFC 8949 appendix A: what some of the examples say.
#[test]
fn cbor_of_rfc_8949_says_what_it_says() {
    for (text, value) in [("1903e8", 1_000i64), ("3903e7", -1_000), ("1b000000e8d4a51000", 1_000_000_000_000)]
    {
        assert_eq!(minicbor::decode::<i64>(&unhex(text)).unwrap(), value);
        assert_eq!(hex(&minicbor::to_vec(value).unwrap()), text);
    }
    for (text, value) in [("fb3ff199999999999a", 1.1f64), ("fbc010666666666666", -4.1)] {
        assert_eq!(minicbor::decode::<f64>(&unhex(text)).unwrap(), value);
        assert_eq!(hex(&minicbor::to_vec(value).unwrap()), text);
    }
    for (text, value) in [("6449455446", "IETF"), ("63e6b0b4", "\u{6c34}"), ("64f0908591", "\u{10151}")] {
        assert_eq!(minicbor::decode::<&str>(&unhex(text)).unwrap(), value);
        assert_eq!(hex(&minicbor::to_vec(value).unwrap()), text);
    }
}
