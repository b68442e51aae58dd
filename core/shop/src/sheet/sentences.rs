//! What the sheet says first, in sentences.

use sumpbook_trade::Stamp;

use super::Yard;
use super::record::{AgainstRow, Evening, Morning, NotReported, PhoneRow, Phones};
use crate::papers::ran_out;

pub(super) fn evening(yard: &Yard, evening: &Evening, phones: &Phones) -> Vec<String> {
    let against = &evening.against.rows;
    let mut locks = match evening.locked.count {
        0 => "No lock-out on record".to_owned(),
        1 => "One lock-out".to_owned(),
        n => format!("{n} lock-outs"),
    };
    if !against.is_empty() {
        let times = if against.len() == 1 { "once".to_owned() } else { format!("{} times", against.len()) };
        locks.push_str(&format!("; used against {times}{}", knew(against)));
    }
    locks.push('.');
    vec![reported(&evening.not_reported), locks, heard(yard, phones)]
}

pub(super) fn morning(yard: &Yard, morning: &Morning) -> Vec<String> {
    let late = match (&morning.version_two.closed, morning.version_two.came_late.count) {
        (None, _) => "Yesterday is not closed.".to_owned(),
        (Some(_), 0) => "Nothing came late for yesterday.".to_owned(),
        (Some(version), n) => format!("{n} came late for yesterday; its newest version is {version}."),
    };
    let certify = match morning.to_certify.count {
        0 => "No certificate to sign.".to_owned(),
        1 => "One certificate to sign.".to_owned(),
        n => format!("{n} certificates to sign."),
    };
    let locked = |road: bool| {
        let rows = morning.not_to_go_out.rows.iter().filter(|row| (row.lock == "road") == road);
        let mut doors: Vec<&str> = rows.map(|row| row.unit.as_str()).collect();
        doors.dedup();
        doors.join(", ")
    };
    let out = match (locked(true), locked(false)) {
        (road, air) if road.is_empty() && air.is_empty() => {
            format!("No lock-out on record as known at {}.", yard.clock(yard.now))
        }
        (road, air) if air.is_empty() => format!("Not to go out: {road}."),
        (road, air) if road.is_empty() => format!("Air or an outlet locked: {air}."),
        (road, air) => format!("Not to go out: {road}. Air or an outlet locked: {air}."),
    };
    let over = ran_out(&morning.due.papers).collect::<Vec<_>>().join(", ");
    let over = (!over.is_empty()).then(|| format!("Annual inspection ran out: {over}."));
    [Some(out), over, Some(certify), Some(late)].into_iter().flatten().collect()
}

/// "6 of 7 expected out have reported; TH-07 is due out 19:00."
fn reported(of: &NotReported) -> String {
    if of.expected == 0 {
        return "No unit is expected out.".to_owned();
    }
    let mut parts = vec![format!("{} of {} expected out have reported", of.reported.len(), of.expected)];
    if !of.rows.is_empty() {
        let doors: Vec<&str> = of.rows.iter().map(|row| row.unit.as_str()).collect();
        parts.push(format!("not reported: {}", doors.join(", ")));
    }
    parts.extend(of.due_out.iter().map(|row| format!("{} is {}", row.unit, row.said)));
    let again = of.reported.iter().filter_map(|row| row.due_again.map(|at| (row, at)));
    parts.extend(
        again.map(|(row, at)| format!("{} is due out again {}", row.unit, at.moment().format("%H:%M"))),
    );
    format!("{}.", parts.join("; "))
}

/// Said beside a use against a lock-out when nobody could have known of it.
fn knew(against: &[AgainstRow]) -> &'static str {
    let before = |row: &AgainstRow| {
        let after = |at: Option<Stamp>| at.is_none_or(|at| at > row.used);
        !row.could_know && !row.on_paper && after(row.shop_knew) && after(row.driver_knew)
    };
    if against.iter().all(before) { ", before either could know" } else { "" }
}

fn heard(yard: &Yard, phones: &Phones) -> String {
    if phones.of == 0 && phones.just_added.is_empty() {
        return "No phone added yet.".to_owned();
    }
    let when = |at: Stamp| yard.stamp(at.moment()).moment().format("%a %-d %b %H:%M").to_string();
    let quiet = |row: &PhoneRow| match (row.last_heard, row.added) {
        (Some(at), _) => format!("{}, since {}", row.phone, when(at)),
        (None, Some(added)) => format!("{}, never since it was added {}", row.phone, when(added)),
        (None, None) => format!("{}, never", row.phone),
    };
    let mut said = Vec::new();
    if phones.of > 0 {
        let since = phones.since.moment().format("%a %H:%M");
        said.push(format!("Phones: {} of {} heard from since {since}.", phones.heard.len(), phones.of));
    }
    if !phones.not_heard.is_empty() {
        let rows: Vec<String> = phones.not_heard.iter().map(quiet).collect();
        said.push(format!("Not heard: {}.", rows.join("; ")));
    }
    if !phones.just_added.is_empty() {
        let new = |row: &PhoneRow| match row.added {
            Some(added) => format!("{}, {}", row.phone, when(added)),
            None => row.phone.clone(),
        };
        let rows: Vec<String> = phones.just_added.iter().map(new).collect();
        said.push(format!("Added and not heard from yet: {}.", rows.join("; ")));
    }
    said.join(" ")
}
