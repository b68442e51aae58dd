//! Hours that do not follow from what was read before are asked about at the keyboard (R3), here as on a phone: nothing
//! is recorded until somebody has looked at the figure once more.

use maud::{Markup, html};
use sumpbook_daybook::text::Arg;
use sumpbook_trade::hours::KeyboardAnswer;
use sumpbook_trade::{Stamp, Tenths};

use super::form::Fields;
use super::refused::Refused;
use super::visit::{Telling, Visit};

/// Field of the tick that says so.
const READS_SO: &str = "reads-so";

/// Refuses a figure that must be asked about, unless the form says that the meter does read so.
pub(super) async fn check(
    visit: &Visit,
    door: &str,
    fields: &Fields,
    (hours, at): (Option<Tenths>, Stamp),
) -> Result<(), Refused> {
    let (Some(figure), None) = (hours, fields.text(READS_SO)) else { return Ok(()) };
    let door = door.to_owned();
    let asked = visit.read(move |ledger, _| {
        let Some(truck) = ledger.fleet().truck_by_door(&door).map(|truck| truck.truck) else {
            return Ok(None);
        };
        let judged = ledger.hours_ledger(truck, at.unix_ms())?;
        // Days of use are the yard's days.
        let at = at.moment().with_timezone(&ledger.fleet().zone).fixed_offset();
        Ok(Some(judged.ask(figure, at, &judged.recent_use_days(at))))
    });
    match asked.await?.ok_or(Refused::NotThere)? {
        KeyboardAnswer::AboveCeiling { .. } => Err(Refused::Asked("hours-above")),
        KeyboardAnswer::Backwards { .. } => Err(Refused::Asked("hours-back")),
        KeyboardAnswer::UnlikeThisUnit { .. } => Err(Refused::Asked("hours-unlike")),
        _ => Ok(()),
    }
}

/// "Hours as read: 2,864.0 h, Mon 19 Oct 16:40": what a figure typed beside it follows.
pub(super) fn known(telling: &Telling, hours: Option<Tenths>, read_at: Option<Stamp>) -> String {
    match (hours, read_at) {
        (Some(hours), Some(at)) => telling.with(
            "service-read",
            &[("hours", Arg::Text(&telling.hours(hours))), ("when", Arg::Text(&telling.at(at)))],
        ),
        _ => telling.t("no-hours"),
    }
}

/// The tick, to stand beside a field of hours.
pub(super) fn tick(telling: &Telling) -> Markup {
    html! {
        label class="show" { input type="checkbox" name=(READS_SO) value="yes"; " " (telling.t("hours-read-so")) }
    }
}
