//! Records: what someone can write down, one immutable entry at a time.
//!
//! The same types read and write JSON (command line, API, data files) and CBOR (books, parcels).
//! Numbers in `#[n(..)]` are the wire's: never changed, never used again. A field or a kind of
//! record that this program does not know is kept and passed on by whoever stores the bytes.

macro_rules! record {
    ($($item:item)*) => { $(
        #[derive(
            Clone, Debug, PartialEq, minicbor::Encode, minicbor::Decode, minicbor::CborLen,
            serde::Serialize, serde::Deserialize, schemars::JsonSchema,
        )]
        #[cbor(map)]
        #[serde(deny_unknown_fields, rename_all = "kebab-case")]
        $item
    )* };
}

macro_rules! choice {
    ($($item:item)*) => { $(
        #[derive(
            Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash,
            minicbor::Encode, minicbor::Decode, minicbor::CborLen,
            serde::Serialize, serde::Deserialize, schemars::JsonSchema,
        )]
        #[cbor(index_only)]
        #[serde(rename_all = "kebab-case")]
        $item
    )* };
}

mod air;
mod campaign;
mod correction;
mod decision;
mod digest;
mod entry;
mod fact;
mod fleet;
mod happened;
mod hours;
mod inspection;
mod notes;
mod numbers;
mod oil;
mod photos;
mod repair;
mod says;
mod service;
mod severities;

pub use air::{Drive, DriveWhat, RunningNumbers, StartAir, StepDone, StepsDone, StopAir};
pub use campaign::{CampaignLooked, CampaignOf, CampaignSet, SerialRange};
pub use correction::{Correction, OtherUnit};
pub use decision::{Decision, LateAccepted, SheetClosed, Verdict};
pub use digest::{Digest, DigestError};
pub use entry::{Entry, Source};
pub use fact::{Fact, FactKind};
pub use fleet::{
    BookHead, DayStatusSet, DeviceEnrolled, DeviceRevoked, FleetNamed, PersonSet, ProgrammeSet, Role,
    SetProfile, SetRegistered, TruckRegistered,
};
pub use happened::{Happened, HappenedWhat};
pub use hours::{HourReading, HoursEstimate, Meter, MeterExchange};
pub use inspection::{Answer, AnswerKind, EndOfDay, How, ItemFigure, PaperPage, PreTripSection};
pub use notes::{Acknowledgement, DisplayNote, NoteKind};
pub use numbers::{NotANumberOfARule, RuleNumber, RuleNumbers};
pub use oil::{
    Glass, LabAnswer, LevelCheck, OilCondition, OilLook, Pour, Sample, SiteCondition, SiteDust, StockCounted,
    StopWait, TopUp, Warmth, WaterAmount, WaterDrained, WaterFrom,
};
pub use repair::{Certificate, DefectName, RepairVerdict, Review};
pub use says::{OnCall, ShopSays};
pub use service::{
    LayUp, OilPut, OilReason, ReturnHow, ReturnLine, ReturnToService, ServiceDone, SetFitted, SetRemoved,
    VisitPlan, WaitingForPart,
};
pub use severities::{OwnSeverity, SeveritiesSet};
