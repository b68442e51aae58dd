//! The phone's screens: one file each, the call that gives it and the core's own records it is made of.
//!
//! A definition here is the core's, said once more for the generator: a field the core changes does not
//! compile here until it is said again.

mod air_for_the_job;
mod defect_row;
mod display;
mod end_of_day;
mod figures;
mod glass;
mod hours;
mod last_report;
mod lay_up;
mod levels;
mod main_act;
mod news;
mod not_what_i_see;
mod oil_use;
mod other_unit;
mod pre_trip;
mod road_air;
mod roadside;
mod ruler;
mod set_aside;
mod signing;
mod site;
mod sound;
mod steps;
mod stop;
mod take_over;
mod today;
mod top_up;
mod unit;
mod walk_rules;
mod where_it_is;

pub use roadside::key_of_part;
pub use sound::sound_part;
