//! How dusty today's site is (P11, P14).

use sumpbook_daybook::screen::{SiteAsk, SiteRow};
use sumpbook_trade::Stamp;
use sumpbook_trade::record::SiteDust;

/// Whether the site's dust is asked, and what is known of it.
#[uniffi::remote(Record)]
pub struct SiteAsk {
    /// It is asked. On arrival always, for each site is another; at the day's end only where nobody said it, for a
    /// word said last would hold for no hour of the day.
    pub asked: bool,
    /// What was said last today.
    pub said: Option<SiteRow>,
}

/// What was said last of today's site.
#[uniffi::remote(Record)]
pub struct SiteRow {
    /// How dusty.
    pub dust: SiteDust,
    /// Since when: the first word of a day holds from its midnight.
    pub at: Stamp,
    /// Who said it.
    pub by: Option<String>,
}

/// How dusty a site is.
#[uniffi::remote(Enum)]
pub enum SiteDust {
    /// Clean.
    Clean,
    /// Dusty.
    Dusty,
    /// Very dusty.
    VeryDusty,
}
