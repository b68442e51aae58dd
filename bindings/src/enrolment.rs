//! Setting a folder up, once.

use std::path::PathBuf;
use std::sync::Arc;

use sumpbook_daybook::exchange::ShopCode;
use sumpbook_daybook::phone::Daybook;

use crate::PhoneClock;
use crate::error::PhoneError;
use crate::key_keeper::{Keeper, KeyKeeper};
use crate::phone::Phone;

#[uniffi::export]
impl Phone {
    /// Sets a folder up from the code on the shop's screen, scanned or typed. Its books come with the first exchange
    /// after the shop has let it in.
    ///
    /// # Errors
    /// `Enrolment`, `Key`, `Storage`.
    #[uniffi::constructor]
    pub fn enrol_by_code(
        folder: String,
        code: String,
        name: String,
        keeper: Option<Arc<dyn KeyKeeper>>,
        clock: Option<Arc<dyn PhoneClock>>,
    ) -> Result<Arc<Self>, PhoneError> {
        let code = ShopCode::from_text(&code)?;
        let folder = PathBuf::from(folder);
        let keeper = Keeper::of(&folder, keeper);
        Phone::over(folder, keeper, clock, |folder, keeper, _| {
            Ok(Daybook::enrol_by_code(folder, &code, &name, keeper)?)
        })
    }

    /// Sets a folder up from an invitation as a file. It records at once, network or not.
    ///
    /// # Errors
    /// `Enrolment`, `File`, `Key`, `Storage`.
    #[uniffi::constructor]
    pub fn enrol_by_file(
        folder: String,
        invitation: Vec<u8>,
        name: String,
        keeper: Option<Arc<dyn KeyKeeper>>,
        clock: Option<Arc<dyn PhoneClock>>,
    ) -> Result<Arc<Self>, PhoneError> {
        let folder = PathBuf::from(folder);
        let keeper = Keeper::of(&folder, keeper);
        Phone::over(folder, keeper, clock, |folder, keeper, now| {
            Ok(Daybook::enrol(folder, &invitation, &name, keeper, now)?)
        })
    }
}
