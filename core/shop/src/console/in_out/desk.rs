//! Files that were looked at and not brought in yet: kept in memory for a while, each under the digest of its dry run.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

use crate::table_in::Asked;

/// As many are kept; the oldest gives way. Each is at most a few MiB.
const MOST: usize = 8;

/// A file with what was said about it.
#[derive(Clone)]
pub(in crate::console) struct Looked {
    pub(super) seen: String,
    pub(super) file: Arc<[u8]>,
    pub(super) asked: Asked,
}

/// The files of one hub.
#[derive(Default)]
pub(in crate::console) struct Desk(Mutex<VecDeque<Looked>>);

impl Desk {
    pub(super) fn put(&self, looked: Looked) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|known| known.seen != looked.seen);
        kept.push_back(looked);
        while kept.len() > MOST {
            kept.pop_front();
        }
    }

    pub(super) fn find(&self, seen: &str) -> Option<Looked> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.iter().find(|known| known.seen == seen).cloned()
    }

    pub(super) fn drop(&self, seen: &str) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|known| known.seen != seen);
    }
}
