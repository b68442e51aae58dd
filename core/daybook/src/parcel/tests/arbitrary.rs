//! Parcels of every shape.

use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use sumpbook_trade::{EntryId, FleetId, TruckId};

use crate::book::BookId;
use crate::gate::{Actor, ChangeHash, DeviceKey, PublicKey};
use crate::parcel::*;

pub(super) fn fleet() -> FleetId {
    FleetId::from_bytes([1; 16])
}

fn book() -> impl Strategy<Value = BookId> {
    prop_oneof![
        Just(BookId::Fleet),
        (0u8..8, any::<u16>())
            .prop_map(|(n, year)| BookId::Truck { truck: TruckId::from_bytes([n; 16]), year }),
    ]
}

fn key() -> impl Strategy<Value = PublicKey> {
    any::<[u8; 32]>().prop_map(|secret| DeviceKey::from_secret(&secret).public())
}

fn dep() -> impl Strategy<Value = Dep> {
    prop_oneof![
        (1u64..).prop_map(Dep::Back),
        any::<[u8; 8]>().prop_map(Dep::Prefix),
        any::<[u8; 32]>().prop_map(|hash| Dep::Whole(ChangeHash(hash))),
    ]
}

/// A payload that begins with its id, with another one, or with none.
fn payload(id: [u8; 16], sort: u8, bytes: Vec<u8>) -> Vec<u8> {
    let first = if sort == 0 { id } else { [sort; 16] };
    let mut e = minicbor::Encoder::new(Vec::new());
    e.map(2).unwrap().u8(0).unwrap().bytes(&first).unwrap().u8(1).unwrap().bytes(&bytes).unwrap();
    if sort < 2 { e.into_writer() } else { bytes }
}

fn run() -> impl Strategy<Value = Run> {
    let entry = (any::<[u8; 16]>(), 0u8..3, vec(any::<u8>(), 0..300), vec(any::<u8>(), 64)).prop_map(
        |(id, sort, bytes, signature)| RunEntry {
            id: EntryId::from_bytes(id),
            payload: payload(id, sort, bytes),
            signature: signature.try_into().unwrap(),
        },
    );
    (book(), any::<[u8; 16]>(), 1u64..u64::MAX / 2, vec(dep(), 0..=64), vec(entry, 1..8))
        .prop_map(|(book, actor, seq, deps, entries)| Run { book, actor: Actor(actor), seq, deps, entries })
}

fn link() -> impl Strategy<Value = Link> {
    prop_oneof![
        any::<[u8; 16]>().prop_map(Link::Challenge),
        any::<[u8; 32]>().prop_map(Link::Request),
        Just(Link::File)
    ]
}

fn reconcile() -> impl Strategy<Value = Reconcile> {
    let bucket = (any::<u64>(), any::<u64>(), any::<[u8; 16]>());
    let bucket = prop_oneof![
        bucket.prop_map(|(part, count, digest)| Bucket { part, count, digest }),
        any::<u64>().prop_map(|part| Bucket { part, count: 1, digest: [0; 16] }),
    ];
    (book(), any::<u64>(), vec(bucket, 0..20)).prop_map(|(book, level, buckets)| Reconcile {
        book,
        level,
        buckets,
    })
}

fn invitation() -> impl Strategy<Value = Invitation> {
    (key(), any::<[u8; 16]>(), option::of("[a-z.:0-9]{0,40}"), "\\PC{0,40}", any::<u64>()).prop_map(
        |(shop, code, hub, fleet_name, expires_ms)| Invitation { shop, code, hub, fleet_name, expires_ms },
    )
}

fn enrolment() -> impl Strategy<Value = EnrolmentRequest> {
    (key(), any::<[u8; 16]>(), "\\PC{0,40}").prop_map(|(key, code, name)| EnrolmentRequest {
        key,
        code,
        name,
    })
}

/// A parcel with anything in it that its limits allow.
pub(super) fn parcel() -> impl Strategy<Value = Parcel> {
    let cursor = (option::of(book()), any::<u64>(), any::<[u8; 8]>());
    let cursor = cursor.prop_map(|(book, n, tag)| Cursor { book, n, tag });
    let heads = (book(), btree_set(any::<[u8; 32]>(), 0..5), btree_set(any::<[u8; 8]>(), 0..5));
    let heads = heads.prop_map(|(book, heads, prefixes)| BookHeads {
        book,
        heads: heads.into_iter().map(ChangeHash).collect(),
        prefixes: prefixes.into_iter().collect(),
    });
    let refusal = (any::<[u8; 16]>(), any::<u64>(), option::of(any::<[u8; 8]>()));
    let refusal =
        refusal.prop_map(|(id, code, missing)| Refusal { id: EntryId::from_bytes(id), code, missing });
    let first = (link(), any::<u64>(), any::<[u8; 8]>(), vec(run(), 0..6), vec(cursor, 0..4));
    let second = (vec(heads, 0..4), vec(any::<u64>(), 0..6), vec(refusal, 0..4), any::<bool>());
    let third = (option::of(any::<[u8; 32]>()), vec(reconcile(), 0..3));
    let held_heads = vec(any::<[u8; 8]>(), 0..5);
    let program = option::of("[0-9a-z. ]{0,20}");
    let fourth =
        (option::of(invitation()), option::of(enrolment()), option::of(any::<u64>()), held_heads, program);
    (first, second, third, fourth).prop_map(|(first, second, third, fourth)| {
        let (link, sender_ms, epoch, runs, cursors) = first;
        let (heads, admitted, refused, more) = second;
        let (token, reconcile) = third;
        let (invitation, enrolment, file_entries, held_heads, program) = fourth;
        Parcel {
            runs,
            cursors,
            heads,
            admitted,
            refused,
            more,
            token,
            reconcile,
            invitation,
            enrolment,
            file_entries,
            held_heads,
            program,
            ..Parcel::new(fleet(), link, sender_ms, epoch)
        }
    })
}
