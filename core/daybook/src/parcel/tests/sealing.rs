//! What is sealed is opened, by whom it should be.

use proptest::prelude::*;

use super::arbitrary::{fleet, parcel};
use crate::gate::{DeviceKey, KeyId, PublicKey};
use crate::parcel::decode::decode;
use crate::parcel::*;

pub(super) fn key() -> DeviceKey {
    DeviceKey::from_secret(&[7; 32])
}

pub(super) fn knows(id: KeyId) -> Option<PublicKey> {
    Some(key().public()).filter(|public| public.id() == id)
}

pub(super) fn empty() -> Parcel {
    Parcel::new(fleet(), Link::File, 1_760_000_000_000, [9; 8])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]
    #[test]
    fn a_parcel_comes_out_as_it_went_in(parcel in parcel()) {
        let bytes = minicbor::to_vec(&parcel).unwrap();
        prop_assert_eq!(&decode(&bytes).unwrap(), &parcel);
        let sealed = seal(&parcel, &key()).unwrap();
        let opened = open(&sealed.wire, knows).unwrap();
        prop_assert_eq!(opened.parcel, parcel);
        prop_assert_eq!(opened.standing, Standing::Known);
        prop_assert_eq!(opened.signer, key().public());
        prop_assert_eq!(opened.digest, sealed.digest);
    }
}

#[test]
fn an_answer_is_opened_by_whoever_asked_and_nobody_else() {
    let answer = Parcel { link: Link::Asked, held_heads: vec![[3; 8]], ..empty() };
    let wire = seal_answer(&answer, [5; 32], &key()).unwrap().wire;
    let shop = key().public();
    assert_eq!(open_answer(&wire, &shop, fleet(), [5; 32]).unwrap(), answer);
    let signature = |opened| matches!(opened, Err(OpenError::Signature(_)));
    assert!(signature(open_answer(&wire, &shop, fleet(), [6; 32])));
    assert!(signature(open_answer(&wire, &shop, sumpbook_trade::FleetId::from_bytes([2; 16]), [5; 32])));
    assert!(signature(open_answer(&wire, &DeviceKey::from_secret(&[8; 32]).public(), fleet(), [5; 32])));
    assert!(matches!(open(&wire, knows), Err(OpenError::Envelope)));
    // What is signed for everybody is no answer, and an answer is not sealed for everybody.
    assert!(signature(open_answer(&seal(&empty(), &key()).unwrap().wire, &shop, fleet(), [5; 32])));
    assert!(matches!(seal(&answer, &key()), Err(SealError::Unreadable(_))));
    assert!(matches!(seal_answer(&empty(), [5; 32], &key()), Err(SealError::Unreadable(_))));
}

#[test]
fn an_empty_parcel_is_as_written_down() {
    let mut by_hand = vec![0xa5, 0x01, 0x01, 0x02, 0x50];
    by_hand.extend([1; 16]);
    by_hand.extend([0x03, 0xf6, 0x04, 0x1b]);
    by_hand.extend(1_760_000_000_000u64.to_be_bytes());
    by_hand.extend([0x05, 0x48]);
    by_hand.extend([9; 8]);
    assert_eq!(minicbor::to_vec(empty()).unwrap(), by_hand);
}

#[test]
fn a_key_not_known_here_must_stand_in_the_parcel_itself() {
    let nobody = |_: KeyId| None;
    let sealed = seal(&empty(), &key()).unwrap();
    assert!(matches!(open(&sealed.wire, nobody), Err(OpenError::UnknownSigner(id)) if id == key().id()));

    let request = EnrolmentRequest { key: key().public(), code: [4; 16], name: "Crew phone 3".into() };
    let asking = Parcel { enrolment: Some(request.clone()), ..empty() };
    let opened = open(&seal(&asking, &key()).unwrap().wire, nobody).unwrap();
    assert_eq!((opened.standing, opened.signer), (Standing::Asking, key().public()));

    // A request carried by someone else's hand is not that phone's own.
    let other = DeviceKey::from_secret(&[8; 32]);
    assert!(matches!(open(&seal(&asking, &other).unwrap().wire, nobody), Err(OpenError::UnknownSigner(_))));

    let invitation = Invitation {
        shop: key().public(),
        code: [4; 16],
        hub: Some("192.0.2.7:7443".into()),
        fleet_name: "Tern Hollow Water".into(),
        expires_ms: 1_760_000_900_000,
    };
    let inviting = Parcel { invitation: Some(invitation), ..empty() };
    let opened = open(&seal(&inviting, &key()).unwrap().wire, nobody).unwrap();
    assert_eq!(opened.standing, Standing::Inviting);
    assert_eq!(open(&seal(&inviting, &key()).unwrap().wire, knows).unwrap().standing, Standing::Known);
}

#[test]
fn a_lookup_that_gives_another_key_opens_nothing() {
    let other = DeviceKey::from_secret(&[8; 32]).public();
    let sealed = seal(&empty(), &key()).unwrap();
    assert!(matches!(open(&sealed.wire, |_| Some(other)), Err(OpenError::UnknownSigner(_))));
}

#[test]
fn what_its_reader_would_refuse_is_not_sealed() {
    let heads = vec![crate::gate::ChangeHash([2; 32]), crate::gate::ChangeHash([1; 32])];
    let unordered = Parcel {
        heads: vec![BookHeads { book: crate::book::BookId::Fleet, heads, prefixes: vec![] }],
        ..empty()
    };
    assert!(matches!(seal(&unordered, &key()), Err(SealError::Unreadable(_))));
    let counts = Parcel { admitted: vec![1; 2_001], ..empty() };
    assert!(matches!(seal(&counts, &key()), Err(SealError::Unreadable(_))));
}

#[test]
fn the_largest_parcel_travels_and_a_larger_one_is_not_sealed() {
    let entries = |payload: Vec<u8>| {
        let id = sumpbook_trade::EntryId::from_bytes([5; 16]);
        vec![RunEntry { id, payload, signature: [6; 64] }; 2_000]
    };
    let full = |payload: Vec<u8>| {
        let (book, actor) = (crate::book::BookId::Fleet, crate::gate::Actor([2; 16]));
        let run = Run { book, actor, seq: 1, deps: vec![], entries: entries(payload) };
        Parcel { runs: vec![run], ..empty() }
    };
    let largest = full(vec![0; 2_000]);
    let sealed = seal(&largest, &key()).unwrap();
    assert_eq!(open(&sealed.wire, knows).unwrap().parcel, largest);
    assert!(matches!(seal(&full(vec![0; 2_050]), &key()), Err(SealError::Unreadable(_))));

    let mut noise = full(vec![]);
    let mut state = 1u64;
    for entry in &mut noise.runs[0].entries {
        entry.payload = (0..600).map(|_| xorshift(&mut state)).collect();
    }
    assert!(matches!(seal(&noise, &key()), Err(SealError::TooLong(bytes)) if bytes > limits::WIRE));
}

/// Bytes that do not compress (Marsaglia's xorshift, 64 bits).
fn xorshift(state: &mut u64) -> u8 {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    (*state >> 32) as u8
}
