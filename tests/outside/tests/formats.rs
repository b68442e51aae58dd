//! Signatures, ids, envelopes and moments against their published examples.

use chrono::DateTime;
use coset::{CoseSign1, TaggedCborSerializable};
use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use sha2::{Digest, Sha256};
use sumpbook_daybook::gate::{DeviceKey, PublicKey, sign};
use sumpbook_outside::golden;
use sumpbook_outside::hex::{hex, unhex, unhex_array};
use sumpbook_outside::program::{answers, ask};
use sumpbook_trade::Stamp;
use uuid::Uuid;

/// RFC 8032 section 7.1, tests 1 to 3: secret key, public key, message, signature.
const ED25519: [(&str, &str, &str, &str); 3] = [
    (
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    ),
    (
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    ),
    (
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    ),
];

#[test]
fn ed25519_signs_as_rfc_8032_prints_it() {
    for (secret, public, message, signature) in ED25519 {
        let device = DeviceKey::from_secret(&unhex_array(secret));
        assert_eq!(hex(&device.public().bytes()), public);
        assert_eq!(hex(&device.id().0), hex(&Sha256::digest(unhex(public)))[..16]);
        assert_eq!(PublicKey::from_bytes(&unhex_array(public)), Ok(device.public()));
        let key = SigningKey::from_bytes(&unhex_array(secret));
        assert_eq!(hex(&key.sign(&unhex(message)).to_bytes()), signature);
        let printed = Signature::from_bytes(&unhex_array(signature));
        assert!(key.verifying_key().verify_strict(&unhex(message), &printed).is_ok());
    }
}

/// RFC 9562 appendix A.6: an example of version 7.
#[test]
fn the_example_id_of_rfc_9562_says_its_time() {
    let id: Uuid = "017F22E2-79B0-7CC3-98C4-DC0C0C07398F".parse().unwrap();
    assert_eq!(id.get_version_num(), 7);
    assert_eq!(id.get_variant(), uuid::Variant::RFC4122);
    let (seconds, nanos) = id.get_timestamp().unwrap().to_unix();
    assert_eq!(seconds * 1_000 + u64::from(nanos) / 1_000_000, 1_645_557_742_000);
    assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

/// COSE working group's examples, "eddsa-sig-01": COSE_Sign1 by the first key of RFC 8032 section 7.1.
const COSE_SIGN1: &str = "D28445A201270300A10442313154546869732069732074686520636F6E74656E742E58407142FD2FF96D56DB85BEE905A76BA1D0B7321A95C8C4D3607C5781932B7AFB8711497DFA751BF40B58B3BCC32300B1487F3DB34085EEF013BF08F4A44D6FEF0D";

#[test]
fn cose_sign1_of_the_working_group_is_verified() {
    let message = CoseSign1::from_tagged_slice(&unhex(COSE_SIGN1)).unwrap();
    assert_eq!(message.payload.as_deref(), Some(&b"This is the content."[..]));
    let key = VerifyingKey::from_bytes(&unhex_array(ED25519[0].1)).unwrap();
    let strictly = |signature: &[u8], signed: &[u8]| {
        key.verify_strict(signed, &Signature::from_slice(signature).expect("64 bytes"))
    };
    assert!(message.verify_signature(&[], strictly).is_ok());
    assert!(message.verify_signature(&[0], strictly).is_err());
}

/// A CBOR string's head for lengths below 65,536, written from RFC 8949 section 3.
fn string(major: u8, bytes: &[u8]) -> Vec<u8> {
    let head = match bytes.len() {
        length @ 0..=23 => vec![major << 5 | length as u8],
        length @ 24..=255 => vec![major << 5 | 24, length as u8],
        length => vec![major << 5 | 25, (length >> 8) as u8, length as u8],
    };
    [head, bytes.to_vec()].concat()
}

/// RFC 9052 section 4.4: `["Signature1", protected, external data, payload]`, here put together by hand.
#[test]
fn an_entry_is_signed_over_the_structure_of_rfc_9052() {
    let book = golden::book();
    assert!(!book.rows.is_empty());
    for row in &book.rows {
        let seq = u8::try_from(row.seq).unwrap();
        assert!(seq < 24 && row.deps.len() < 24, "heads of one byte");
        let year = [0x19, (book.year >> 8) as u8, book.year as u8];
        let deps: Vec<u8> = row.deps.iter().flat_map(|dep| string(2, &dep.0)).collect();
        let place = [
            vec![0x87],
            string(3, b"sumpbook entry 1"),
            string(2, &book.fleet),
            vec![0x82],
            string(2, &book.truck),
            year.to_vec(),
            string(2, &row.actor.0),
            vec![seq, 0x80 | row.deps.len() as u8],
            deps,
            string(2, row.id.0.as_bytes()),
        ]
        .concat();
        let protected = [0xa1, 0x01, 0x27];
        let parts = [
            vec![0x84],
            string(3, b"Signature1"),
            string(2, &protected),
            string(2, &place),
            string(2, &row.payload),
        ];
        let key =
            book.keys.iter().find(|key| Sha256::digest(key)[..8] == row.actor.0[..8]).expect("a writer");
        let key = VerifyingKey::from_bytes(key).unwrap();
        assert!(key.verify_strict(&parts.concat(), &Signature::from_bytes(&row.signature)).is_ok());

        let envelope = [vec![0x84], string(2, &protected), vec![0xa0], string(2, &row.payload)].concat();
        let envelope = [envelope, string(2, &row.signature)].concat();
        assert_eq!(sign::cose(&row.payload, &row.signature).unwrap(), envelope);
    }
}

#[test]
fn a_reader_in_python_verifies_the_same_signatures() {
    if !answers("python3", &["-c", "import pycose, cbor2"]) {
        println!("skipped: no python3 with pycose here");
        return;
    }
    assert_eq!(ask("python3", &["cose_reader.py", "golden/book.json"]).trim(), "9 entries, 9 verified");
}

/// RFC 3339 section 5.8, with milliseconds since 1970 worked out by hand.
const RFC_3339: [(&str, i64); 5] = [
    ("1985-04-12T23:20:50.52Z", 482_196_050_520),
    ("1996-12-19T16:39:57-08:00", 851_042_397_000),
    ("1996-12-20T00:39:57Z", 851_042_397_000),
    ("1990-12-31T23:59:60Z", 662_688_000_000),
    ("1937-01-01T12:00:27.87+00:20", -1_041_337_172_130),
];

#[test]
fn moments_of_rfc_3339_are_the_moments_they_name() {
    for (text, ms) in RFC_3339 {
        assert_eq!(DateTime::parse_from_rfc3339(text).unwrap().timestamp_millis(), ms, "{text}");
        assert_eq!(text.parse::<Stamp>().unwrap().unix_ms(), ms, "{text}");
    }
    // Section 5.6: lower-case letters may be met; section 4.3: an offset that is not known is -00:00.
    let lower = DateTime::parse_from_rfc3339("1985-04-12t23:20:50.52z").unwrap();
    assert_eq!(lower.timestamp_millis(), RFC_3339[0].1);
    let unknown = DateTime::parse_from_rfc3339("1996-12-20T00:39:57-00:00").unwrap();
    assert_eq!(unknown.timestamp_millis(), RFC_3339[2].1);
}
