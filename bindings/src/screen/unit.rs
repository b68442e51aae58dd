//! One unit (P3).

use chrono::NaiveDate;
use sumpbook_daybook::screen::{
    self, EstimateRow, LayUpRow, Main, MainAct, News, OilLine, OilUseRow, OtherMeterRow, PourRow, PreTripNow,
    ReadingRow, ReportRow, RoadAir, TaskRow, UnitQuery, UnitScreen, Unlike,
};
use sumpbook_trade::defect::LockPart;
use sumpbook_trade::record::{DefectName, Meter};
use sumpbook_trade::{EntryId, Feature, PersonId, Stamp, Tenths, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// One unit.
#[uniffi::remote(Record)]
pub struct UnitScreen {
    /// The unit.
    pub id: TruckId,
    /// Its door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// Road and air.
    pub road_air: RoadAir,
    /// The lay-up in which its set stands; none when it is not laid up. Its air is locked by it, and its clocks run on.
    #[uniffi(default = None)]
    pub lay_up: Option<LayUpRow>,
    /// The last report.
    pub left_by: Option<ReportRow>,
    /// Defects that are not over.
    pub open_defects: u32,
    /// Display notes that are not gone.
    pub open_notes: u32,
    /// Its oil.
    pub oil: OilLine,
    /// Where its oil goes; none before anything is known of it.
    pub oil_use: Option<OilUseRow>,
    /// The last three pours, newest first.
    pub pours: Vec<PourRow>,
    /// The tasks, first to run out first. Empty: no programme set.
    pub tasks: Vec<TaskRow>,
    /// A reminder on the display went away and no service is recorded.
    pub reminder_gone_by: Option<Stamp>,
    /// The last reading that counts.
    pub reading: Option<ReadingRow>,
    /// Hours through all meters, as the due list uses them.
    pub hours: Option<Tenths>,
    /// Of a unit without a meter, at least so many; `hours` are counted, at most.
    pub counted_at_least: Option<Tenths>,
    /// Hours no meter counted, oldest first; `hours` hold the high figures.
    pub estimates: Vec<EstimateRow>,
    /// Hours a day by the readings of the last weeks, tenths; none when the pace is unknown.
    pub pace_tenths: Option<i64>,
    /// The engine's and the PTO's own meters, where they are read: they feed no clock here.
    pub other_meters: Vec<OtherMeterRow>,
    /// Questions about readings that are open.
    pub open_questions: u32,
    /// What differs from the usual unit; none when this is it, or nothing is known of one.
    pub unlike: Option<Unlike>,
    /// What of it is locked by findings that only this phone holds: the shop does not know yet.
    pub locked_only_here: Vec<LockPart>,
    /// Where no report is held: the first yard day of which this phone knows anything of the unit; none: it knows nothing.
    pub known_since: Option<NaiveDate>,
    /// Where its pre-trip stands.
    pub pre_trip: PreTripNow,
    /// What the main button does.
    pub main: Main,
    /// What else of a day's work may be begun here, beside the main button.
    pub also: Vec<MainAct>,
    /// The yard's day.
    pub day: NaiveDate,
    /// The procedure of the air that comes next, for the texts `procedure-...`: stopping it once a start stands open.
    pub air: String,
    /// The other procedures that are gone through by themselves, in a day's order.
    pub procedures: Vec<String>,
    /// What of it is locked, or awaits its review: whoever used it all the same says why.
    pub used_all_the_same: Vec<LockPart>,
    /// The procedure this person is in the middle of here.
    pub steps_under_way: Option<String>,
    /// The defects that lock something here and are not certified: what a slip can speak of.
    pub slip_for: Vec<DefectName>,
    /// This person's top-up of it that is not finished.
    pub top_up_draft: Option<EntryId>,
}

/// Hours that no meter counted, as somebody signed them.
#[uniffi::remote(Record)]
pub struct EstimateRow {
    /// When it was signed.
    pub at: Stamp,
    /// At least.
    pub low: Tenths,
    /// Likely.
    pub likely: Tenths,
    /// At most: what the due list uses.
    pub high: Tenths,
}

/// A meter beside the compressor's.
#[uniffi::remote(Record)]
pub struct OtherMeterRow {
    /// Which.
    pub meter: Meter,
    /// Its last reading that counts.
    pub reading: Option<ReadingRow>,
    /// Questions about its readings that are open.
    pub open_questions: u32,
}

/// What differs from the unit this person usually takes.
#[uniffi::remote(Record)]
pub struct Unlike {
    /// The usual unit's door number.
    pub usual: String,
    /// What only this one has.
    pub only_here: Vec<Feature>,
    /// What only the usual one has.
    pub not_here: Vec<Feature>,
}

#[uniffi::export]
impl Phone {
    /// One unit as it stands, for whoever looks.
    ///
    /// # Errors
    /// As any read.
    pub fn unit(&self, unit: TruckId, person: PersonId) -> Result<UnitScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::unit(book.ledger(), &UnitQuery { unit, person }, &book.standing()?, now)?)
        })
    }
}
