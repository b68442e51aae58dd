//! The kinds of fact and their numbers on the wire.

use minicbor::{Encode, Encoder};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::*;

macro_rules! facts {
    ($($(#[$doc:meta])* $code:literal $name:ident,)*) => {
        /// What an entry records. In JSON `"kind"` names it and `"body"` holds it.
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(tag = "kind", content = "body", rename_all = "kebab-case")]
        pub enum Fact {
            $($(#[$doc])* $name($name),)*
            /// A kind, or a body, that only a newer version of this program can read. Kept and passed on.
            Newer {
                /// Its number on the wire.
                code: u16,
                /// Its body as it came, CBOR.
                body: Vec<u8>,
            },
        }

        /// The name of a kind without its content.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        pub enum FactKind {
            $($(#[$doc])* $name,)*
            /// A kind of a newer version.
            Newer,
        }

        impl FactKind {
            /// Every kind this version knows.
            pub const ALL: &'static [FactKind] = &[$(FactKind::$name),*];

            /// The kind with this number on the wire; [`FactKind::Newer`] for any other.
            pub fn from_code(code: u16) -> FactKind {
                match code { $($code => FactKind::$name,)* _ => FactKind::Newer }
            }

            /// Its number on the wire; none for a kind of a newer version.
            pub fn code(self) -> Option<u16> {
                match self { $(FactKind::$name => Some($code),)* FactKind::Newer => None }
            }
        }

        impl Fact {
            /// Its number on the wire.
            pub fn code(&self) -> u16 {
                match self { $(Fact::$name(_) => $code,)* Fact::Newer { code, .. } => *code }
            }

            /// Its kind.
            pub fn kind(&self) -> FactKind {
                match self { $(Fact::$name(_) => FactKind::$name,)* Fact::Newer { .. } => FactKind::Newer }
            }

            pub(super) fn encode_body<C, W: minicbor::encode::Write>(
                &self,
                e: &mut Encoder<W>,
                ctx: &mut C,
            ) -> Result<(), minicbor::encode::Error<W::Error>> {
                match self {
                    $(Fact::$name(body) => body.encode(e, ctx),)*
                    Fact::Newer { body, .. } => {
                        e.writer_mut().write_all(body).map_err(minicbor::encode::Error::write)
                    }
                }
            }

            pub(super) fn decode_body(code: u16, body: &[u8]) -> Fact {
                let newer = || Fact::Newer { code, body: body.to_vec() };
                match code {
                    $($code => minicbor::decode::<$name>(body).map_or_else(|_| newer(), Fact::$name),)*
                    _ => newer(),
                }
            }
        }

        $(impl From<$name> for Fact {
            fn from(body: $name) -> Fact { Fact::$name(body) }
        })*
    };
}

facts! {
    /// Some stops of a pre-trip, signed by whoever looked.
    1 PreTripSection,
    /// The report at the end of a day's work.
    2 EndOfDay,
    /// A meter was read.
    3 HourReading,
    /// A meter was exchanged, or went round.
    4 MeterExchange,
    /// A signed estimate of hours nobody could read.
    5 HoursEstimate,
    /// A fluid's level was looked at.
    6 LevelCheck,
    /// A fluid was topped up.
    7 TopUp,
    /// Water was drained.
    8 WaterDrained,
    /// Air was started.
    9 StartAir,
    /// Air was stopped.
    10 StopAir,
    /// Pressures and temperatures while running.
    11 RunningNumbers,
    /// The unit's display showed something.
    12 DisplayNote,
    /// Someone saw a display note, or told the shop of it.
    13 Acknowledgement,
    /// How dusty the site is.
    14 SiteCondition,
    /// How the oil looks.
    15 OilCondition,
    /// A sample was drawn.
    16 Sample,
    /// The laboratory answered.
    17 LabAnswer,
    /// The driver read what the last one left.
    18 Review,
    /// The shop certified a repair, or that none is needed.
    19 Certificate,
    /// Tasks of a service were done.
    20 ServiceDone,
    /// A visit was planned.
    21 VisitPlan,
    /// Work waits for a part.
    22 WaitingForPart,
    /// Put away for a season.
    23 LayUp,
    /// Brought back from being put away.
    24 ReturnToService,
    /// A set was fitted to this truck.
    25 SetFitted,
    /// A set was taken off this truck.
    26 SetRemoved,
    /// An earlier entry is void, and why.
    27 Correction,
    /// An earlier entry belongs to another unit.
    28 OtherUnit,
    /// The truck was driven.
    29 Drive,
    /// Steps of a procedure, where they are no start and no stop.
    30 StepsDone,
    /// Somebody was hurt, something spilt or was hit.
    31 Happened,
    /// What of a fluid lies on the truck was counted.
    32 StockCounted,
    /// The fleet's name, zone and shop key.
    40 FleetNamed,
    /// A truck, registered or changed.
    41 TruckRegistered,
    /// A compressor set, registered or changed.
    42 SetRegistered,
    /// The service programme of the fleet or of one unit.
    43 ProgrammeSet,
    /// What the shop has its phones say.
    44 ShopSays,
    /// A person, added or changed.
    45 PersonSet,
    /// A device's key was enrolled.
    46 DeviceEnrolled,
    /// A device's key was revoked.
    47 DeviceRevoked,
    /// What a unit does from a day on.
    48 DayStatusSet,
    /// The shop decided about entries.
    49 Decision,
    /// Entries of a revoked device were accepted by name.
    50 LateAccepted,
    /// A day's sheet was closed.
    51 SheetClosed,
    /// A maker's campaign, entered, changed or taken back.
    52 CampaignSet,
    /// The numbers of the rules, as the shop has them.
    53 RuleNumbers,
    /// A page of paper was typed in.
    54 PaperPage,
    /// What findings lock, as the shop has it.
    55 SeveritiesSet,
}
