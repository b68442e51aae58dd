//! A fill: everything since the last drain, and the balances within it (R11).

use serde::{Deserialize, Serialize};

use super::amount::Millilitres;
use super::balance::{Balance, Moment, SoFar};
use super::level::{Level, OilNumbers, OilSystem, surplus};
use crate::quantity::Tenths;

/// What happened to the oil.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum OilThing {
    /// It was changed, and filled to the middle: a new fill begins.
    Filled {
        /// How much went in, where it was said.
        volume: Option<Millilitres>,
    },
    /// Some was poured in: all the pours of one top-up together.
    Poured {
        /// How much.
        volume: Millilitres,
        /// Where it stood after, when it was looked at.
        after: Option<Level>,
    },
    /// The level was looked at.
    Looked {
        /// Where it stood.
        level: Level,
    },
}

/// What happened to the oil, and when. Without hours a pour still counts, and its level closes nothing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OilEvent {
    /// The entry, and when.
    pub entry: uuid::Uuid,
    /// When.
    pub at: chrono::DateTime<chrono::FixedOffset>,
    /// Running hours of the unit then, where they are known.
    pub hours: Option<Tenths>,
    /// What.
    pub thing: OilThing,
}

/// Everything since a drain.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Fill {
    /// The service that filled it; `None` for what was in it when records begin.
    pub begun: Option<Moment>,
    /// How much went in at the beginning.
    pub put_in: Option<Millilitres>,
    /// Poured since, settling and all.
    pub made_up: Millilitres,
    /// From here on its use is its own; `None` while it settles.
    pub settled: Option<Moment>,
    /// Its balances, oldest first, settling ones too.
    pub balances: Vec<Balance>,
    /// What the last level tells beyond the last balance.
    pub so_far: Option<SoFar>,
}

/// The level a running balance begins at.
#[derive(Clone, Copy)]
struct Open {
    from: Moment,
    carried: Millilitres,
    poured: Millilitres,
    corrected: bool,
}

/// The fills of a set, oldest first, from `events` in any order.
///
/// What was in it when records begin is a fill of its own, taken as settled; it is left out when nothing is
/// known of it.
pub fn fills(events: &[OilEvent], system: &OilSystem, numbers: &OilNumbers) -> Vec<Fill> {
    let mut events: Vec<&OilEvent> = events.iter().collect();
    events.sort_by_key(|event| (event.at, event.entry));
    let mut fills: Vec<Fill> = Vec::new();
    let mut now = Folding::new(None, None, system, numbers);
    for event in events {
        let moment = event.hours.map(|hours| Moment { entry: event.entry, at: event.at, hours });
        match event.thing {
            OilThing::Filled { volume } => {
                let begun = Folding::new(moment, volume, system, numbers);
                let ended = std::mem::replace(&mut now, begun);
                fills.extend(ended.done());
            }
            OilThing::Poured { volume, after } => now.poured(volume, after, moment),
            OilThing::Looked { level } => now.looked(&level, moment),
        }
    }
    fills.extend(now.done());
    fills
}

/// A fill while its events go by.
struct Folding<'a> {
    system: &'a OilSystem,
    numbers: &'a OilNumbers,
    fill: Fill,
    open: Option<Open>,
    anything: bool,
}

impl<'a> Folding<'a> {
    fn new(
        begun: Option<Moment>,
        put_in: Option<Millilitres>,
        system: &'a OilSystem,
        numbers: &'a OilNumbers,
    ) -> Folding<'a> {
        let at_the_middle =
            |from| Open { from, carried: Millilitres::ZERO, poured: Millilitres::ZERO, corrected: false };
        Folding {
            system,
            numbers,
            fill: Fill {
                begun,
                put_in,
                made_up: Millilitres::ZERO,
                settled: None,
                balances: Vec::new(),
                so_far: None,
            },
            open: begun.map(at_the_middle),
            anything: begun.is_some() || put_in.is_some(),
        }
    }

    /// Two readings of the glass, each off as far as one may be.
    fn error(&self) -> Option<Millilitres> {
        self.system.glass.map(|glass| glass.times(2.0 * self.numbers.reading_error / 100.0))
    }

    fn poured(&mut self, volume: Millilitres, after: Option<Level>, moment: Option<Moment>) {
        self.anything = true;
        self.fill.made_up = self.fill.made_up + volume;
        if let Some(open) = &mut self.open {
            open.poured = open.poured + volume;
        }
        let Some((moment, level)) = moment.zip(after) else { return };
        let Ok(over) = surplus(&level, self.system, self.numbers) else { return };
        if let Some(open) = self.open {
            // A fill that records do not show the beginning of has long settled.
            let settling = self.fill.begun.is_some() && self.fill.settled.is_none();
            self.fill.balances.push(Balance {
                from: open.from,
                to: moment,
                carried_in: open.carried,
                poured: open.poured,
                carried_out: over.volume,
                error: self.error(),
                settling,
                corrected: open.corrected || over.corrected,
            });
            let since = self.fill.begun.map(|begun| (moment.hours - begun.hours).as_hours());
            let long = since.is_some_and(|hours| hours >= self.numbers.settle_hours);
            if settling && long && level.in_the_middle(self.numbers) {
                self.fill.settled = Some(moment);
            }
        }
        self.fill.so_far = None;
        self.open = Some(Open {
            from: moment,
            carried: over.volume,
            poured: Millilitres::ZERO,
            corrected: over.corrected,
        });
    }

    fn looked(&mut self, level: &Level, moment: Option<Moment>) {
        self.anything = true;
        let Some(moment) = moment else { return };
        let Ok(over) = surplus(level, self.system, self.numbers) else { return };
        match self.open {
            None => {
                self.open = Some(Open {
                    from: moment,
                    carried: over.volume,
                    poured: Millilitres::ZERO,
                    corrected: over.corrected,
                });
            }
            Some(open) => {
                self.fill.so_far = Some(SoFar {
                    from: open.from,
                    to: moment,
                    used: open.carried + open.poured - over.volume,
                    error: self.error(),
                });
            }
        }
    }

    fn done(mut self) -> Option<Fill> {
        if self.fill.begun.is_none() {
            self.fill.settled = self.fill.balances.first().map(|balance| balance.from);
        }
        self.anything.then_some(self.fill)
    }
}

impl Fill {
    /// The balances that tell what is usual for it: those after it settled, oldest first.
    pub fn own_balances(&self) -> impl Iterator<Item = &Balance> {
        self.balances.iter().filter(|balance| !balance.settling)
    }

    /// The newest balance that is not settling.
    pub fn last_balance(&self) -> Option<&Balance> {
        self.own_balances().last()
    }
}
