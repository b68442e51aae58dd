//! One thing somebody of the demo does at a moment of the month.

use sumpbook_trade::record::{RepairVerdict, Verdict};
use sumpbook_trade::{Fact, Stamp, Tenths};

use super::DemoError;
use super::walk::Found;

/// A deed with its moment.
#[derive(Clone, Debug)]
pub struct Deed {
    /// When.
    pub at: Stamp,
    /// What is done.
    pub what: Doing,
}

/// What can be done.
#[derive(Clone, Debug)]
pub enum Doing {
    /// Somebody records something on a phone.
    Record {
        /// On which phone.
        phone: &'static str,
        /// For which unit.
        unit: &'static str,
        /// Who.
        person: &'static str,
        /// With whom, while learning.
        with: Option<&'static str>,
        /// Compressor hours read with it.
        hours: Option<Tenths>,
        /// The name later deeds call its entry by.
        name: Option<&'static str>,
        /// What is recorded.
        what: Recorded,
    },
    /// The shop certifies a defect that was found in the entry called `found`.
    Certify {
        /// The unit.
        unit: &'static str,
        /// Who.
        person: &'static str,
        /// The entry with the finding.
        found: &'static str,
        /// The item found.
        item: &'static str,
        /// The item's place.
        place: Option<&'static str>,
        /// Repaired, or not needed.
        verdict: RepairVerdict,
        /// In these words.
        words: &'static str,
        /// The name later deeds call the certificate by.
        name: &'static str,
    },
    /// The shop records something.
    AtShop {
        /// The unit.
        unit: &'static str,
        /// Who.
        person: &'static str,
        /// Compressor hours read with it.
        hours: Option<Tenths>,
        /// What is recorded.
        fact: Box<Fact>,
        /// The name later deeds call its entry by.
        name: Option<&'static str>,
    },
    /// The shop decides.
    Decide {
        /// The unit.
        unit: &'static str,
        /// Who.
        person: &'static str,
        /// The entries it is about.
        targets: &'static [&'static str],
        /// What becomes of them.
        verdict: Verdict,
        /// Why.
        why: &'static str,
    },
    /// One phone hands its file to another, in the yard or on site.
    PassOn {
        /// From this phone.
        from: &'static str,
        /// To this one.
        to: &'static str,
    },
    /// A phone's file comes to the shop and the answer goes back.
    HandOver {
        /// Which phone.
        phone: &'static str,
    },
    /// The shop closes a day's sheet.
    Close {
        /// The day of the yard.
        day: &'static str,
    },
}

/// What is recorded on a phone: a fact, or one that needs what came before.
#[derive(Clone, Debug)]
pub enum Recorded {
    /// A whole walk, with what was found.
    Walk(u32, &'static [Found]),
    /// One line, by somebody who passed by.
    PassedBy(Found),
    /// A fact that stands by itself.
    Fact(Box<Fact>),
    /// A fact of an earlier moment, told now.
    FactOf(Stamp, Box<Fact>),
    /// An answer to the display note called so; told the shop or only seen.
    Acknowledge(&'static str, bool),
    /// The display note called so is gone again.
    GoneAgain(&'static str),
    /// The certificates called so were read.
    Review(&'static [&'static str]),
    /// The entry called so is void, because; the other says it right.
    Correct(&'static str, &'static str, &'static str),
}

/// A moment of the month.
///
/// # Errors
/// When the text is mistyped.
pub fn moment(text: &str) -> Result<Stamp, DemoError> {
    Ok(text.parse()?)
}
