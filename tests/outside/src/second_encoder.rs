//! A change chunk written from the description of automerge's storage format, with no automerge in it.
//!
//! Source: "Automerge storage format", chapters "Chunk header", "Change chunk" and "Columns".

use sha2::{Digest, Sha256};

/// What the program's own `change::Parts` holds, as plain bytes.
#[derive(Clone, Debug)]
pub struct Fields {
    /// Actor, 16 bytes.
    pub actor: [u8; 16],
    /// Number among the actor's.
    pub seq: u64,
    /// Number of its op.
    pub op: u64,
    /// Predecessors in any order.
    pub deps: Vec<[u8; 32]>,
    /// The key, as text.
    pub key: String,
    /// The value.
    pub value: Vec<u8>,
}

fn uleb(mut n: u64, out: &mut Vec<u8>) {
    while n > 0x7f {
        out.push(n as u8 | 0x80);
        n >>= 7;
    }
    out.push(n as u8);
}

fn prefixed(bytes: &[u8], out: &mut Vec<u8>) {
    uleb(bytes.len() as u64, out);
    out.extend(bytes);
}

/// A run-length column of one literal: signed -1 (0x7f), then the value.
fn one(write: impl FnOnce(&mut Vec<u8>)) -> Vec<u8> {
    let mut column = vec![0x7f];
    write(&mut column);
    column
}

/// The chunk and its SHA-256.
pub fn encode(fields: &Fields) -> (Vec<u8>, [u8; 32]) {
    let mut deps = fields.deps.clone();
    deps.sort_unstable();
    let mut body = Vec::new();
    uleb(deps.len() as u64, &mut body);
    deps.iter().for_each(|dep| body.extend(dep));
    prefixed(&fields.actor, &mut body);
    uleb(fields.seq, &mut body);
    uleb(fields.op, &mut body);
    body.extend([0, 0, 0]); // time, message length, other actors
    let columns: [(u64, Vec<u8>); 6] = [
        (0x15, one(|out| prefixed(fields.key.as_bytes(), out))), // key: text
        (0x34, vec![1]),                                         // insert: one false
        (0x42, one(|out| uleb(1, out))),                         // action: put
        (0x56, one(|out| uleb((fields.value.len() as u64) << 4 | 7, out))), // value: its length and type, bytes
        (0x57, fields.value.clone()),                                       // value: itself
        (0x70, one(|out| uleb(0, out))),                                    // predecessors of the op: none
    ];
    let present: Vec<_> = columns.into_iter().filter(|(_, data)| !data.is_empty()).collect();
    uleb(present.len() as u64, &mut body);
    for (column, data) in &present {
        uleb(*column, &mut body);
        uleb(data.len() as u64, &mut body);
    }
    present.iter().for_each(|(_, data)| body.extend(data));

    let mut hashed = vec![1]; // the type: a change
    prefixed(&body, &mut hashed);
    let hash: [u8; 32] = Sha256::digest(&hashed).into();
    ([vec![0x85, 0x6f, 0x4a, 0x83], hash[..4].to_vec(), hashed].concat(), hash)
}
