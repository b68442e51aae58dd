//! A campaign is entered, changed, taken back, or looked up by hand, by name.

use chrono::NaiveDate;
use sumpbook_daybook::fleet::Campaign;
use sumpbook_trade::campaign::{Hit, RangeError, check};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::{CampaignLooked, CampaignOf, CampaignSet, SerialRange};
use sumpbook_trade::{EntryId, Tenths, TruckId};

use crate::shop::listed;
use crate::{Hand, Shop, ShopError};

/// Letters of a name, at most: it stands in lists and calendars.
const NAME: usize = 40;
/// Letters of what is to be done, and of other words, at most.
const WORDS: usize = 400;
/// Ranges, at most. Makers name a few.
const RANGES: usize = 100;

/// Why a campaign was not recorded.
#[derive(Debug, thiserror::Error)]
pub enum CampaignError {
    /// The name cannot be used.
    #[error(
        "a campaign needs a name of 1 to 40 letters, digits, blanks or . - / _, such as the number of the maker's paper. Nothing was recorded."
    )]
    Name,
    /// No words, or too many.
    #[error("say in 1 to 400 letters what is to be done. Nothing was recorded.")]
    Words,
    /// A reason of more letters than are kept.
    #[error("the reason has more than 400 letters. Say it shorter. Nothing was recorded.")]
    Reason,
    /// A paper's number or place of more letters than are kept.
    #[error(
        "the number of the paper, or where it can be read, has more than 400 letters. Nothing was recorded."
    )]
    Paper,
    /// No range, or too many.
    #[error("give 1 to 100 serial ranges, such as KX-1000..KX-1999. Nothing was recorded.")]
    NoRange,
    /// A range cannot be used.
    #[error("{0}. Nothing was recorded.")]
    Range(#[from] RangeError),
    /// An outlet cannot be locked by a campaign.
    #[error("a campaign locks the road, the air, both or nothing. Nothing was recorded.")]
    Outlet,
    /// Stop, and nothing is locked.
    #[error(
        "the maker says stop, and a note locks nothing. Say what it locks: the air, the road or both. Nothing was recorded."
    )]
    StopsNothing,
    /// Hours that are none.
    #[error(
        "the last good hours must be above 0.0. Leave them out when only the day counts. Nothing was recorded."
    )]
    Hours,
    /// A day beyond the calendar of records.
    #[error("{0} is outside the calendar this program keeps. Nothing was recorded.")]
    Day(NaiveDate),
    /// No campaign of that name.
    #[error("no campaign here is called '{name}'. Known: {known}. Nothing was recorded.")]
    Unknown {
        /// As asked.
        name: String,
        /// Every campaign that is not taken back.
        known: String,
    },
    /// Taken back before.
    #[error("campaign '{0}' was taken back before. Nothing was recorded.")]
    Gone(String),
    /// The serial tells already.
    #[error(
        "the serial of {unit} tells whether campaign '{name}' is about it. Correct the unit's serial when it is wrong. Nothing was recorded."
    )]
    SerialTells {
        /// The unit.
        unit: String,
        /// The campaign.
        name: String,
    },
    /// No set stands on the unit.
    #[error("no compressor set stands on {0}. Register the set first. Nothing was recorded.")]
    NoSet(String),
}

/// A campaign to be entered, or changed when its name is known.
#[derive(Clone, Debug)]
pub struct NewCampaign {
    /// What the shop calls it, such as the number of the maker's paper.
    pub name: String,
    /// What is to be done.
    pub words: String,
    /// The number of the maker's paper.
    pub paper: Option<String>,
    /// Where that paper can be read.
    pub read_at: Option<String>,
    /// Whose serials are named.
    pub of: CampaignOf,
    /// Which serials.
    pub ranges: Vec<SerialRange>,
    /// The last good day.
    pub deadline: NaiveDate,
    /// The last good figure of the unit's hours.
    pub hours: Option<Tenths>,
    /// What it locks.
    pub severity: Severity,
    /// The maker says stop: it locks at once.
    pub stop: bool,
}

impl Shop {
    /// Enters a campaign; one of the same name is changed whole, and stands again when it was taken back. What people
    /// saw who looked at single units is kept. The same again records nothing. Returns the entry that says it.
    ///
    /// # Errors
    /// When nobody is named, or as [`CampaignError`]; then nothing is recorded.
    pub fn enter_campaign(&mut self, new: NewCampaign, hand: &Hand) -> Result<EntryId, ShopError> {
        if hand.person.is_none() {
            return Err(ShopError::NoPerson);
        }
        let mut what = checked(new)?;
        let known = self.campaign(what.task.campaign().unwrap_or_default());
        if let Some(told) = known.and_then(|known| known.told.last()) {
            // The name as it was first written: capitals make no second campaign.
            what.task.clone_from(&told.what.task);
            if told.what.of == what.of {
                what.looked.clone_from(&told.what.looked);
            }
            if told.what == what {
                return Ok(told.entry);
            }
        }
        self.write(None, what.into(), None, hand)
    }

    /// Takes a campaign back: it is due nowhere any more, and what it locked is free. What was done stays done.
    ///
    /// # Errors
    /// When nobody is named, no reason is given, or as [`CampaignError`].
    pub fn withdraw_campaign(&mut self, name: &str, why: &str, hand: &Hand) -> Result<EntryId, ShopError> {
        if hand.person.is_none() {
            return Err(ShopError::NoPerson);
        }
        let why = reason(why)?;
        let mut what = self.standing_campaign(name)?;
        what.withdrawn = Some(why);
        self.write(None, what.into(), None, hand)
    }

    /// Says of a unit whose serial does not tell whether a campaign is about it, and why.
    ///
    /// # Errors
    /// When nobody is named, no reason is given, the serial tells already, or as [`CampaignError`].
    pub fn look_campaign(
        &mut self,
        name: &str,
        truck: TruckId,
        is_meant: bool,
        why: &str,
        hand: &Hand,
    ) -> Result<EntryId, ShopError> {
        if hand.person.is_none() {
            return Err(ShopError::NoPerson);
        }
        let why = reason(why)?;
        let mut what = self.standing_campaign(name)?;
        let fleet = self.ledger.fleet();
        let unit = fleet.door(truck);
        let set = match what.of {
            CampaignOf::Truck => None,
            CampaignOf::Set => {
                let on = fleet.set_on(truck);
                Some(on.ok_or_else(|| CampaignError::NoSet(unit.clone()))?.set)
            }
        };
        let of_truck = (what.of == CampaignOf::Truck).then_some(truck);
        let was_looked_at = |one: &CampaignLooked| (one.truck, one.set) == (of_truck, set);
        what.looked.retain(|one| !was_looked_at(one));
        if !matches!(fleet.hit(&what, truck), Hit::Look(_)) {
            let name = name.trim().to_owned();
            return Err(CampaignError::SerialTells { unit, name }.into());
        }
        let on = fleet.yard_day(hand.at);
        what.looked.push(CampaignLooked { truck: of_truck, set, hit: is_meant, why, by: hand.person, on });
        if let Some(told) = self.campaign(name).and_then(|known| known.told.last())
            && told.what == what
        {
            return Ok(told.entry);
        }
        self.write(None, what.into(), None, hand)
    }

    /// A campaign by its name.
    fn campaign(&self, name: &str) -> Option<&Campaign> {
        let campaigns = &self.ledger.fleet().campaigns;
        campaigns.iter().find(|(task, _)| is_called(task, name)).map(|(_, campaign)| campaign)
    }

    /// One that is not taken back, to be changed.
    fn standing_campaign(&self, name: &str) -> Result<CampaignSet, ShopError> {
        match self.campaign(name).and_then(Campaign::now) {
            Some(what) if what.withdrawn.is_some() => Err(CampaignError::Gone(name.trim().to_owned()).into()),
            Some(what) => Ok(what.clone()),
            None => {
                let stands =
                    |campaign: &&Campaign| campaign.now().is_some_and(|what| what.withdrawn.is_none());
                let campaigns = self.ledger.fleet().campaigns.values().filter(stands);
                let known: Vec<&str> =
                    campaigns.filter_map(Campaign::now).filter_map(|what| what.task.campaign()).collect();
                let (name, known) = (name.trim().to_owned(), listed(&known));
                Err(CampaignError::Unknown { name, known }.into())
            }
        }
    }
}

/// Whether a task is the campaign of this name, capitals and blanks around it aside.
fn is_called(task: &TaskId, name: &str) -> bool {
    task.campaign().is_some_and(|known| known.to_lowercase() == name.trim().to_lowercase())
}

fn checked(new: NewCampaign) -> Result<CampaignSet, CampaignError> {
    let name = new.name.split_whitespace().collect::<Vec<_>>().join(" ");
    let fits = |c: char| c.is_alphanumeric() || " .-/_".contains(c);
    if name.is_empty() || name.chars().count() > NAME || !name.chars().all(fits) {
        return Err(CampaignError::Name);
    }
    let words = new.words.split_whitespace().collect::<Vec<_>>().join(" ");
    if words.is_empty() || words.chars().count() > WORDS {
        return Err(CampaignError::Words);
    }
    let given =
        |text: Option<String>| text.map(|text| text.trim().to_owned()).filter(|text| !text.is_empty());
    let (paper, read_at) = (given(new.paper), given(new.read_at));
    if [&paper, &read_at].into_iter().flatten().any(|text| text.chars().count() > WORDS) {
        return Err(CampaignError::Paper);
    }
    if new.ranges.is_empty() || new.ranges.len() > RANGES {
        return Err(CampaignError::NoRange);
    }
    new.ranges.iter().try_for_each(check)?;
    match (new.severity, new.stop) {
        (Severity::Outlet, _) => return Err(CampaignError::Outlet),
        (Severity::Note, true) => return Err(CampaignError::StopsNothing),
        _ => {}
    }
    if new.hours.is_some_and(|hours| hours <= Tenths::ZERO) {
        return Err(CampaignError::Hours);
    }
    if !(1..=9_999).contains(&chrono::Datelike::year(&new.deadline)) {
        return Err(CampaignError::Day(new.deadline));
    }
    Ok(CampaignSet {
        task: TaskId::of_campaign(&name),
        words,
        paper,
        read_at,
        of: new.of,
        ranges: new.ranges,
        deadline: new.deadline,
        hours: new.hours,
        severity: new.severity,
        stop: new.stop,
        withdrawn: None,
        looked: Vec::new(),
    })
}

/// A reason as it is kept, whole.
fn reason(words: &str) -> Result<String, ShopError> {
    let words = words.trim();
    match words.chars().count() {
        0 => Err(ShopError::NoWords),
        letters if letters > WORDS => Err(CampaignError::Reason.into()),
        _ => Ok(words.to_owned()),
    }
}
