//! `settle` and `certify`: what a person at the shop decides, by name.

use std::path::Path;

use sumpbook_trade::record::{RepairVerdict, Verdict};

use super::CommandError;
use super::args::{Certify, Settle, VerdictAsked};
use super::found::{hand, open};
use super::out::{Said, counted};
use crate::{certify as certifying, settle as settling};

/// Decides about entries.
///
/// # Errors
/// When an entry or a person is unknown, or no reason is given.
pub(super) fn settle(folder: &Path, args: &Settle) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let verdict = match args.verdict {
        VerdictAsked::Use => Verdict::Use,
        VerdictAsked::DoNotUse => Verdict::DoNotUse,
        VerdictAsked::SameService => Verdict::SameService,
        VerdictAsked::ReadingStands => Verdict::ReadingStands,
    };
    let hand = hand(&shop, Some(person), args.received);
    let id = settling::decide(&mut shop, &args.entries, verdict, &args.why, &hand)?;
    shop.ledger.settle()?;
    let text = format!(
        "{} decided about {}. The decision is entry {id}; the entries stay in their book.",
        args.by.trim(),
        counted(args.entries.len(), "entry", "entries")
    );
    Said::new(text, &serde_json::json!({ "decision": id }))
}

/// Certifies a defect.
///
/// # Errors
/// When no such defect is open; names what is.
pub(super) fn certify(folder: &Path, args: &Certify) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let person = shop.person(&args.by)?;
    let truck = shop.unit(&args.unit)?;
    let verdict = if args.repaired { RepairVerdict::Repaired } else { RepairVerdict::NotNeeded };
    let hand = hand(&shop, Some(person), args.received);
    let id = certifying::certify(&mut shop, truck, &args.item, verdict, &args.words, &hand)?;
    shop.ledger.settle()?;
    let text = format!(
        "Certified by {}. What it locked stays locked until the next driver has read this and signed.\n\
         The certificate is entry {id}.",
        args.by
    );
    Said::new(text, &serde_json::json!({ "certificate": id }))
}
