//! `lay-up` and `return-to-service`.

use clap::Args;
use sumpbook_trade::{Stamp, Tenths};

/// `lay-up`
#[derive(Debug, Args)]
pub(in crate::command) struct LayUp {
    /// The unit's door number
    pub unit: String,
    /// Who lays it up
    #[arg(long, value_name = "NAME")]
    pub by: String,
    /// Compressor hours then, as read on the meter
    #[arg(long, value_name = "HOURS")]
    pub hours: Option<Tenths>,
    /// What was done before it was put away
    #[arg(long, value_name = "WORDS")]
    pub done: Option<String>,
    /// When it was put away; now when left out
    #[arg(long, value_name = "TIME")]
    pub at: Option<Stamp>,
    /// When it counts as written; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// `return-to-service`
#[derive(Debug, Args)]
pub(in crate::command) struct ReturnToService {
    /// The unit's door number
    pub unit: String,
    /// A line that was done, such as oil-look; may be given several times
    #[arg(long, value_name = "LINE")]
    pub done: Vec<String>,
    /// A line that is waived, and why, such as belts-shaft="new in March"; may be given several times
    #[arg(long, value_name = "LINE=WHY", value_parser = waived)]
    pub waive: Vec<(String, String)>,
    /// Who did and waived them
    #[arg(long, value_name = "NAME")]
    pub by: Option<String>,
    /// Words added
    #[arg(long)]
    pub words: Option<String>,
    /// The list as the shop knew it then; answers nothing
    #[arg(long, value_name = "TIME", conflicts_with_all = ["done", "waive", "by", "words", "received"])]
    pub as_of: Option<Stamp>,
    /// When it counts as written; only in a fleet made by `init --demo`
    #[arg(long, value_name = "TIME")]
    pub received: Option<Stamp>,
}

/// A line and why it is waived.
fn waived(text: &str) -> Result<(String, String), String> {
    match text.split_once('=') {
        Some((line, why)) if !line.trim().is_empty() && !why.trim().is_empty() => {
            Ok((line.trim().to_owned(), why.trim().to_owned()))
        }
        _ => {
            Err("give the line, an equals sign and the reason, such as belts-shaft=\"new in March\""
                .to_owned())
        }
    }
}
