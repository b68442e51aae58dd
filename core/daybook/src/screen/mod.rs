//! Screens as records: one file a screen, each a pure function of the ledger, a query and the moment.
//!
//! A record holds order, counts, stable row ids, typed values and keys of texts; no colours, no formatted
//! dates, no sentences. Both phones, the console and print show the same record.

mod air_for_the_job;
mod became;
mod defect_row;
mod display;
mod eleven_parts;
mod end_of_day;
mod figures;
mod glass;
mod hours;
mod last_report;
mod lay_up;
mod levels;
mod line_row;
mod main_act;
mod news;
mod not_what_i_see;
mod oil_use;
mod other_unit;
mod own_figures;
mod pre_trip;
mod road_air;
mod roadside;
mod ruler;
mod set_aside;
mod shift;
mod signing;
mod site;
mod sound;
mod steps;
mod stop;
mod take_over;
mod today;
mod top_up;
mod unit;
mod walk;
pub mod walk_rules;
mod where_it_is;

pub use air_for_the_job::{
    AIR_TOOLS, AirAnswer, AirAnswerRow, AirField, AirFieldRow, AirFigure, AirForTheJob, AirOffered, AirPart,
    AirQuery, AirSaid, AirWarningRow, ShortRuns, air_for_the_job,
};
pub use became::{BecameNow, BecameRow};
pub use defect_row::{CertificateRow, DefectNow, DefectRow, SaidRow};
pub use display::{AckRow, DisplayQuery, DisplayScreen, NoteRow, ShopSaysRow, display};
pub use eleven_parts::{LookedAt, PartAnswer, PartFigure, PartRow, check_code, eleven_parts, looked_at};
pub use end_of_day::{EndOfDayNotice, EndOfDayScreen, FoundRow, end_of_day};
pub use figures::{LeftHours, ReadingRow};
pub use glass::{GlassQuery, GlassScreen, StopNow, Wait, glass};
pub use hours::{HoursQuery, HoursScreen, QuestionRow, hours};
pub use last_report::{LastReportQuery, LastReportScreen, ReportRow, last_report};
pub use lay_up::LayUpRow;
pub use levels::{LevelNow, LevelRow, OilLine, PourRow};
pub use line_row::{FigureAsk, LineAnswer, LineRow, lines_of_unit};
pub use main_act::{DisabledReason, Main, MainAct};
pub use news::{Counts, News, PhotoCounts, PhotoPlace, Standing};
pub use not_what_i_see::{ToldAgain, not_what_i_see};
pub use oil_use::{BalanceRow, CarryOverRow, ChangeRow, ChangeWords, LabRow, OilUseRow, verdict_key};
pub use other_unit::{MovableRow, OtherUnitQuery, OtherUnitScreen, movable, other_unit};
pub use own_figures::{OwnFigures, median, own_figures};
pub use pre_trip::PreTripNow;
pub use road_air::{LockState, LockWhy, PartNow, RoadAir};
pub use roadside::{RoadsideScreen, SignedBy, roadside};
pub use ruler::{CalledRow, ForecastRow, TaskRow, WaitRow, called_key, standing_key};
pub use set_aside::{AboutRow, SetAsideScreen, set_aside};
pub use shift::shift_is_over;
pub use signing::{Quick, SignRow, SignScreen, SignStop, signing, was_quick};
pub use site::{SiteAsk, SiteRow};
pub use sound::{
    SoundAct, SoundButton, SoundLine, SoundNow, SoundPart, SoundQuery, SoundTrouble, sound_part,
};
pub use steps::{NotSo, NotSoRow, StepRow, StepSaid, StepSaidRow, StepsQuery, StepsScreen, steps};
pub use stop::{StopQuery, StopScreen, Together, stop};
pub use take_over::{TakeOverQuery, TakeOverScreen, first_walk, take_over};
pub use today::{TodayQuery, TodayRow, TodayScreen, today};
pub use top_up::{TopUpScreen, top_up};
pub use unit::{EstimateRow, OtherMeterRow, UnitQuery, UnitScreen, Unlike, unit};
pub use walk::{StopMark, walk_of};
pub use where_it_is::{Aside, PhotoRow, Place, WhereDay, WhereQuery, WhereRow, WhereScreen, where_it_is};
