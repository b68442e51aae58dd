//! What an officer is shown of a unit (P18), a person's own figures (P20), and when a name comes off by itself.

use chrono::NaiveDate;
use sumpbook_daybook::screen::{
    self, DefectRow, News, OwnFigures, PartAnswer, PartFigure, PartRow, ReportRow, RoadAir, RoadsideScreen,
    SignedBy,
};
use sumpbook_trade::checklist::Part;
use sumpbook_trade::{Figure, PersonId, Stamp, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;

/// The page for an officer.
#[uniffi::remote(Record)]
pub struct RoadsideScreen {
    /// The fleet.
    pub fleet: String,
    /// The unit's door number.
    pub door: String,
    /// Its plate.
    pub plate: Option<String>,
    /// Serial number of the chassis.
    pub serial: Option<String>,
    /// Serial number of the compressor set on it.
    pub set_serial: Option<String>,
    /// As known at.
    pub known_at: Stamp,
    /// How old the shop's news is.
    pub news: News,
    /// Road and air.
    pub road_air: RoadAir,
    /// The eleven parts, in the rule's order.
    pub parts: Vec<PartRow>,
    /// Defects that are not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// The last end-of-day report.
    pub report: Option<ReportRow>,
    /// The last day on which its annual inspection holds, when it is on record.
    pub annual_inspection: Option<NaiveDate>,
    /// It ran out by today.
    pub annual_inspection_over: bool,
    /// Who signed on the newest day on which somebody looked, the newest first.
    pub signed: Vec<SignedBy>,
    /// The code by which the shop, holding the same books, checks this page.
    pub check: String,
}

/// One part.
#[uniffi::remote(Record)]
pub struct PartRow {
    /// Which.
    pub part: Part,
    /// The answer that stands: the worst.
    pub answer: PartAnswer,
    /// Who gave it.
    pub by: Option<String>,
    /// When.
    pub at: Option<Stamp>,
    /// Figures given at its items.
    pub figures: Vec<PartFigure>,
}

/// A figure given at an item of a part.
#[uniffi::remote(Record)]
pub struct PartFigure {
    /// The item.
    pub item: String,
    /// The figure.
    pub figure: Figure,
}

/// What stands for one part.
#[uniffi::remote(Enum)]
pub enum PartAnswer {
    /// As it should be.
    Ok,
    /// Something is wrong.
    Defect,
    /// It could not be looked at.
    CouldNotCheck,
    /// This unit has no such part.
    NotFitted,
    /// Nobody answered it.
    NotAnswered,
}

/// A signature under what was looked at.
#[uniffi::remote(Record)]
pub struct SignedBy {
    /// Who; none when nobody here knows the name.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// The person's own PIN was given.
    pub pin_given: bool,
    /// It was the short walk of whoever took the unit over.
    pub short: bool,
    /// With whom, while the person is learning.
    pub trainer: Option<String>,
    /// The trainer's own PIN was given.
    pub trainer_pin_given: bool,
}

/// A part of the driver's report.
#[uniffi::remote(Enum)]
pub enum Part {
    /// Service brakes including trailer brake connections.
    ServiceBrakes,
    /// Parking brake.
    ParkingBrake,
    /// Steering mechanism.
    Steering,
    /// Lighting devices and reflectors.
    Lighting,
    /// Tires.
    Tires,
    /// Horn.
    Horn,
    /// Windshield wipers.
    Wipers,
    /// Rear vision mirrors.
    Mirrors,
    /// Coupling devices.
    Coupling,
    /// Wheels and rims.
    Wheels,
    /// Emergency equipment.
    Emergency,
}
/// A person's own figures, out of what this phone holds.
#[uniffi::remote(Record)]
pub struct OwnFigures {
    /// Whose.
    pub person: Option<String>,
    /// Walks they are of, at most 20, the newest.
    pub walks: u32,
    /// Of so many a pattern would be told.
    pub of: u32,
    /// Middle of their times, seconds; short walks of a second driver left out.
    pub median_s: Option<u32>,
    /// The same of everybody's walks of the last 60 days on this phone.
    pub crew_median_s: Option<u32>,
    /// Marked "quick".
    pub quick: u32,
    /// Signed with the own PIN.
    pub with_pin: u32,
    /// Defects found.
    pub defects: u32,
    /// Lines that could not be checked.
    pub could_not_check: u32,
    /// Hours given, and how many of them end in .0.
    pub hours: u32,
    /// See `hours`.
    pub hours_end_in_0: u32,
    /// Glass levels given, and how many of them are exactly 50 %.
    pub glass: u32,
    /// See `glass`.
    pub glass_at_50: u32,
}

/// The key of a part's name.
#[uniffi::export]
pub fn key_of_part(part: Part) -> String {
    format!("part-{}", crate::values::key(&part))
}

#[uniffi::export]
impl Phone {
    /// What an officer is shown of a unit.
    ///
    /// # Errors
    /// As any read.
    pub fn roadside(&self, unit: TruckId) -> Result<RoadsideScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::roadside(book.ledger(), unit, template(book)?, &book.standing()?, now)?)
        })
    }

    /// A person's own figures.
    ///
    /// # Errors
    /// As any read.
    pub fn own_figures(&self, person: PersonId) -> Result<OwnFigures, PhoneError> {
        self.read(|book, now| Ok(screen::own_figures(book.ledger(), person, template(book)?, now)?))
    }

    /// Whether the shift of a person is over whose name has stood on this phone since `since`.
    ///
    /// # Errors
    /// As any read.
    pub fn shift_is_over(&self, person: PersonId, since: Stamp) -> Result<bool, PhoneError> {
        self.read(|book, now| Ok(screen::shift_is_over(book.ledger(), person, since, now)?))
    }
}
