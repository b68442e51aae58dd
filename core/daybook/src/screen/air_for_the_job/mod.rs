//! Air for the job: is there air enough here, today, for these tools on this hose? It records nothing, warns and
//! refuses nothing.

mod answer;
mod asked;
mod field;
mod runs;

use serde::{Deserialize, Serialize};
use sumpbook_trade::Stamp;

use crate::ledger::{Ledger, LedgerError};

pub use answer::{AirAnswer, AirAnswerRow, AirWarningRow};
pub use asked::{AirFieldRow, AirFigure, AirOffered, AirQuery, AirSaid};
pub use field::{AirField, AirPart, TOOLS as AIR_TOOLS};
pub use runs::ShortRuns;

/// The calculator: what is asked, and what comes of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AirForTheJob {
    /// The unit's door number; none: no unit was named.
    pub door: Option<String>,
    /// m3/min, kPa, m, degC, mm instead of cfm, psi, ft, degF, in.
    pub metric: bool,
    /// The figures it asks for, in the order of the form. A tool's stand once for each tool there is room for.
    pub fields: Vec<AirFieldRow>,
    /// A device that cuts the flow is there; none: nobody said.
    pub cut_off: Option<bool>,
    /// Cleaning with air is part of the job.
    pub blowing: bool,
    /// A chip guard and eye protection are there.
    pub guarded: bool,
    /// The answer; none while delivery or pressure are not known.
    pub answer: Option<AirAnswer>,
    /// How many of the unit's runs are too short to boil water off; none: no whole run is on record.
    pub short_runs: Option<ShortRuns>,
}

/// The air for a job.
///
/// # Errors
/// As reading the store.
pub fn air_for_the_job(ledger: &Ledger, query: &AirQuery, now: Stamp) -> Result<AirForTheJob, LedgerError> {
    let (fields, asked) = asked::read(ledger, query);
    Ok(AirForTheJob {
        door: query.unit.map(|unit| ledger.fleet().door(unit)),
        metric: query.metric,
        answer: answer::of(&asked),
        fields,
        cut_off: query.cut_off,
        blowing: query.blowing,
        guarded: query.guarded,
        short_runs: query.unit.map(|unit| runs::of_unit(ledger, unit, now)).transpose()?.flatten(),
    })
}
