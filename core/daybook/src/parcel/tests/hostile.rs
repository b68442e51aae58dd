//! Bytes from someone who means no good, or from a bad card.

use std::io::Write;

use coset::{CborSerializable, CoseSign1, CoseSign1Builder, HeaderBuilder, iana};
use proptest::prelude::*;
use sumpbook_trade::{EntryId, TruckId};

use super::sealing::{empty, key, knows};
use crate::book::BookId;
use crate::gate::Actor;
use crate::gate::bounded::BoundedError;
use crate::parcel::decode::{DecodeError, decode};
use crate::parcel::*;

fn compress(bytes: &[u8]) -> Vec<u8> {
    zstd::bulk::compress(bytes, 3).unwrap()
}

fn run(book: BookId, entries: usize, payload: usize) -> Run {
    let entry = RunEntry { id: EntryId::from_bytes([5; 16]), payload: vec![0; payload], signature: [6; 64] };
    Run { book, actor: Actor([2; 16]), seq: 1, deps: vec![], entries: vec![entry; entries] }
}

fn truck(n: u8) -> BookId {
    BookId::Truck { truck: TruckId::from_bytes([n; 16]), year: 2026 }
}

fn refused(parcel: &Parcel) -> bool {
    matches!(decode(&minicbor::to_vec(parcel).unwrap()), Err(DecodeError::Shape(_)))
}

#[test]
fn a_frame_that_inflates_to_a_gigabyte_is_left_at_four_megabytes() {
    let mut encoder = zstd::stream::write::Encoder::new(Vec::new(), 1).unwrap();
    encoder.window_log(20).unwrap();
    let zeros = vec![0; 1 << 20];
    (0..1024).for_each(|_| encoder.write_all(&zeros).unwrap());
    let bomb = encoder.finish().unwrap();
    assert!(bomb.len() < limits::WIRE, "{} bytes", bomb.len());
    assert!(matches!(open(&bomb, knows), Err(OpenError::Inflated)));
}

#[test]
fn a_frame_that_asks_for_128_megabytes_of_window_is_refused() {
    let mut encoder = zstd::stream::write::Encoder::new(Vec::new(), 1).unwrap();
    encoder.window_log(27).unwrap();
    encoder.write_all(b"small").unwrap();
    let frame = encoder.finish().unwrap();
    let error = open(&frame, knows).unwrap_err();
    assert!(matches!(&error, OpenError::Compression(why) if why.contains("memory")), "{error}");
}

#[test]
fn the_wire_holds_one_frame_and_nothing_after_it() {
    let sealed = seal(&empty(), &key()).unwrap();
    let twice = [sealed.wire.clone(), sealed.wire.clone()].concat();
    assert!(matches!(open(&twice, knows), Err(OpenError::Compression(_))));
    let cut = &sealed.wire[..sealed.wire.len() - 1];
    assert!(matches!(open(cut, knows), Err(OpenError::Compression(_))));
    assert!(matches!(open(&vec![0; limits::WIRE + 1], knows), Err(OpenError::TooLong(_))));
    assert!(matches!(open(&[], knows), Err(OpenError::Compression(_) | OpenError::Bounded(_))));
}

#[test]
fn only_the_one_form_of_the_envelope_is_opened() {
    let sealed = seal(&empty(), &key()).unwrap();
    let plain = zstd::stream::decode_all(&sealed.wire[..]).unwrap();
    let good = CoseSign1::from_slice(&plain).unwrap();
    assert!(open(&compress(&plain), knows).is_ok(), "another level of compression changes nothing");

    let tagged = [vec![0xd2], plain.clone()].concat();
    assert!(matches!(open(&compress(&tagged), knows), Err(OpenError::Envelope)));
    let mut noted = good.clone();
    noted.unprotected.content_type = Some(coset::RegisteredLabel::Text("x".into()));
    assert!(matches!(open(&compress(&noted.to_vec().unwrap()), knows), Err(OpenError::Envelope)));
    // array(4) written in two bytes: the same envelope to a lenient reader, and not the same bytes.
    let longer = [vec![0x98, 0x04], plain[1..].to_vec()].concat();
    assert!(matches!(open(&compress(&longer), knows), Err(OpenError::Envelope)));
    let detached = CoseSign1 { payload: None, ..good };
    assert!(matches!(open(&compress(&detached.to_vec().unwrap()), knows), Err(OpenError::Envelope)));
    // The signer's name only in the unprotected header.
    let algorithm = HeaderBuilder::new().algorithm(iana::Algorithm::EdDSA).build();
    let named = HeaderBuilder::new().key_id(key().id().0.to_vec()).build();
    let outside = CoseSign1Builder::new().protected(algorithm).unprotected(named).payload(vec![0xf6]);
    let outside = outside.signature(vec![0; 64]).build().to_vec().unwrap();
    assert!(matches!(open(&compress(&outside), knows), Err(OpenError::Envelope)));
}

#[test]
fn nesting_and_claims_are_refused_before_the_signature() {
    let deep = compress(&vec![0x81; 1_000_000]);
    assert!(matches!(open(&deep, knows), Err(OpenError::Bounded(BoundedError::TooDeep { .. }))));
    let claim = compress(&[0x9b, 0, 0, 0, 0x80, 0, 0, 0, 0]);
    assert!(matches!(open(&claim, knows), Err(OpenError::Bounded(BoundedError::TooMany { .. }))));
}

#[test]
fn each_limit_stands_at_its_number() {
    let entries = |n| Parcel { runs: vec![run(BookId::Fleet, n, 1)], ..empty() };
    assert!(!refused(&entries(2_000)));
    assert!(refused(&entries(2_001)));
    let shared = Parcel { runs: vec![run(truck(1), 1_000, 1), run(truck(2), 1_001, 1)], ..empty() };
    assert!(refused(&shared));
    let payload = |n| Parcel { runs: vec![run(BookId::Fleet, 1, n)], ..empty() };
    assert!(!refused(&payload(16_384)));
    assert!(refused(&payload(16_385)));
    let books = |n: u8| Parcel { runs: (0..n).map(|n| run(truck(n), 1, 1)).collect(), ..empty() };
    assert!(!refused(&books(64)));
    assert!(refused(&books(65)));
    let deps =
        |n| Parcel { runs: vec![Run { deps: vec![Dep::Back(1); n], ..run(BookId::Fleet, 1, 1) }], ..empty() };
    assert!(!refused(&deps(64)));
    assert!(refused(&deps(65)));
    assert!(refused(&Parcel { runs: vec![run(BookId::Fleet, 0, 1)], ..empty() }));
    assert!(refused(&Parcel { runs: vec![Run { seq: 0, ..run(BookId::Fleet, 1, 1) }], ..empty() }));
    assert!(refused(&Parcel { runs: vec![Run { seq: u64::MAX, ..run(BookId::Fleet, 1, 1) }], ..empty() }));
    let long = "x".repeat(257);
    let request = EnrolmentRequest { key: key().public(), code: [4; 16], name: long };
    assert!(refused(&Parcel { enrolment: Some(request), ..empty() }));
}

#[test]
fn runs_have_as_many_entries_and_signatures_as_they_say() {
    let good = Parcel { runs: vec![run(truck(1), 2, 3)], ..empty() };
    let bytes = minicbor::to_vec(&good).unwrap();
    assert_eq!(decode(&bytes).unwrap(), good);
    // Signatures stand last: 19, bstr of 128.
    let (before, signatures) = bytes.split_at(bytes.len() - 131);
    assert_eq!(signatures[..3], [0x13, 0x58, 128]);
    let with = |signatures: &[u8]| {
        let length = u8::try_from(signatures.len()).unwrap();
        decode(&[before, &[0x13, 0x58, length], signatures].concat())
    };
    assert!(with(&[6; 128]).is_ok());
    for wrong in [64, 127, 129, 192] {
        assert!(matches!(with(&vec![6; wrong]), Err(DecodeError::Shape(_))), "{wrong}");
    }
    // One entry more and one less than the run has: the count is the last of the run.
    let at = bytes.windows(3).position(|w| w == [0x01, 0x80, 0x02]).unwrap() + 2;
    for wrong in [1, 3] {
        let mut other = bytes.clone();
        other[at] = wrong;
        assert!(matches!(decode(&other), Err(DecodeError::Shape(_))), "{wrong}");
    }
}

#[test]
fn keys_ascend_and_new_ones_are_passed_over() {
    let good = minicbor::to_vec(empty()).unwrap();
    let mut newer = good.clone();
    newer[0] = 0xa6;
    newer.extend([0x18, 0x63, 0x81, 0xf5]);
    assert_eq!(decode(&newer).unwrap(), empty());
    let mut repeated = good.clone();
    repeated[0] = 0xa6;
    repeated.extend([0x05, 0x48, 0, 0, 0, 0, 0, 0, 0, 0]);
    assert!(decode(&repeated).is_err());
    let mut other_version = good.clone();
    other_version[2] = 2;
    assert!(decode(&other_version).is_err());
    let mut without_epoch = good[..good.len() - 10].to_vec();
    without_epoch[0] = 0xa4;
    assert_eq!(decode(&without_epoch).unwrap(), Parcel { epoch: [0; 8], ..empty() });
    let mut without_time = without_epoch[..without_epoch.len() - 10].to_vec();
    without_time[0] = 0xa3;
    assert!(decode(&without_time).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]
    #[test]
    fn random_bytes_are_an_error(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(open(&bytes, knows).is_err());
        prop_assert!(open(&compress(&bytes), knows).is_err());
        let _ = decode(&bytes);
    }

    #[test]
    fn one_bit_anywhere_is_noticed(at in any::<prop::sample::Index>(), bit in 0u8..8, inside: bool) {
        let parcel = Parcel { runs: vec![run(truck(1), 3, 20)], more: true, ..empty() };
        let sealed = seal(&parcel, &key()).unwrap();
        let mut bytes = if inside { zstd::stream::decode_all(&sealed.wire[..]).unwrap() } else { sealed.wire };
        let at = at.index(bytes.len());
        bytes[at] ^= 1 << bit;
        let opened = if inside { open(&compress(&bytes), knows) } else { open(&bytes, knows) };
        // Outside the signature a bit of the frame's own header may be of no account.
        if let Ok(opened) = opened {
            prop_assert!(!inside && opened.parcel == parcel);
        }
    }

    #[test]
    fn a_bent_parcel_is_read_or_refused(at in any::<prop::sample::Index>(), bit in 0u8..8, cut in any::<prop::sample::Index>()) {
        let parcel = Parcel { runs: vec![run(truck(1), 3, 20)], admitted: vec![3], ..empty() };
        let mut bytes = minicbor::to_vec(&parcel).unwrap();
        let at = at.index(bytes.len());
        bytes[at] ^= 1 << bit;
        let _ = decode(&bytes);
        prop_assert!(decode(&bytes[..cut.index(bytes.len())]).is_err());
    }
}
