//! Keeping drafts in the store.

use sumpbook_trade::checklist::Template;
use sumpbook_trade::{Entry, EntryId};

use super::Draft;
use crate::ledger::{Ledger, LedgerError, NewEntry};
use crate::line::{Line, LineError, Writer};
use crate::store::DraftRow;

/// The drafts of a phone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drafts {
    /// Oldest change first.
    pub drafts: Vec<Draft>,
    /// Drafts of a newer version of this program: kept, and not for this one to touch.
    pub unreadable: Vec<EntryId>,
}

impl Ledger {
    /// Keeps a draft as it is now. Durable when this returns.
    ///
    /// # Errors
    /// As any write; the draft as it was kept before is then still there.
    pub fn keep_draft(&mut self, draft: &Draft, now_ms: i64) -> Result<(), LedgerError> {
        let body = serde_json::to_string(draft)?;
        self.store_mut().keep_draft(&DraftRow { id: draft.id(), body, changed_ms: now_ms })?;
        Ok(())
    }

    /// Every draft on this phone.
    ///
    /// # Errors
    /// As any read.
    pub fn drafts(&self) -> Result<Drafts, LedgerError> {
        let mut all = Drafts::default();
        for row in self.store().drafts()? {
            match serde_json::from_str(&row.body) {
                Ok(draft) => all.drafts.push(draft),
                Err(_) => all.unreadable.push(row.id),
            }
        }
        Ok(all)
    }

    /// One draft; none when it is not there, or is of a newer version.
    ///
    /// # Errors
    /// As any read.
    pub fn draft(&self, id: EntryId) -> Result<Option<Draft>, LedgerError> {
        let row = self.store().draft(id)?;
        Ok(row.and_then(|row| serde_json::from_str(&row.body).ok()))
    }

    /// Gives a draft up.
    ///
    /// # Errors
    /// As any write.
    pub fn give_up_draft(&mut self, id: EntryId) -> Result<(), LedgerError> {
        Ok(self.store_mut().drop_draft(id)?)
    }

    /// Records what a line says. A line that is given again under its own id, after a doubtful end, is recorded once:
    /// the first words stand, whatever the clock says now.
    ///
    /// # Errors
    /// As [`Line::resolve`], an id under which this device has recorded something else, and as [`Ledger::record`].
    pub fn record_line<E: From<LineError> + From<LedgerError>>(
        &mut self,
        line: &Line,
        template: &Template,
        writer: &Writer,
    ) -> Result<EntryId, E> {
        let entry = line.resolve(self.fleet(), template, writer)?;
        let id = entry.id;
        if let Some(first) = self.first_told(id)? {
            let clock = |of: &Entry| Entry { at: first.at, clock_off_ms: first.clock_off_ms, ..of.clone() };
            let again = if line.at.is_none() { clock(&entry) } else { entry };
            return if again == first { Ok(id) } else { Err(LineError::IdTaken(id).into()) };
        }
        self.record_signed(vec![entry], writer.now.unix_ms())?;
        Ok(id)
    }

    /// What this device recorded under an id.
    fn first_told(&self, id: EntryId) -> Result<Option<Entry>, LedgerError> {
        let own = self.own_key().id();
        let held = self.store().truth().by_id(id)?.into_iter().find(|held| held.row.actor.key() == own);
        Ok(held.and_then(|held| Entry::from_payload(&held.row.payload).ok()))
    }

    /// Records what a draft was signed as; the draft goes in the same transaction. Trying again after a
    /// doubtful end records nothing twice.
    ///
    /// # Errors
    /// As [`Ledger::record`]; then the draft is still there.
    pub fn record_signed(&mut self, entries: Vec<Entry>, now_ms: i64) -> Result<Vec<i64>, LedgerError> {
        let entries: Vec<NewEntry> = entries.into_iter().map(NewEntry::about_its_unit).collect();
        self.record(&entries, now_ms)
    }
}
