//! The core's errors as the few that cross.

use sumpbook_daybook::draft::DraftError;
use sumpbook_daybook::exchange::ExchangeError;
use sumpbook_daybook::gate::SlipCodeError;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::line::LineError;
use sumpbook_daybook::phone::online::OnlineError;
use sumpbook_daybook::phone::{KeySealError, PhoneError as DaybookError, SlipError};
use sumpbook_daybook::photo::PhotoError;
use sumpbook_daybook::sound::SoundError;
use sumpbook_daybook::store::StoreError;

use crate::error::{
    DraftKind, EnrolmentKind, FileKind, KeyKind, OnlineKind, PhoneError, PhotoKind, SlipKind, StorageKind,
};

fn enrolment(kind: EnrolmentKind, detail: Option<String>, reason: String) -> PhoneError {
    PhoneError::Enrolment { kind, fleet: None, device: None, detail, reason }
}

fn online(kind: OnlineKind, text_key: Option<&str>, status: Option<u16>, reason: String) -> PhoneError {
    let text_key = text_key.map(str::to_owned);
    PhoneError::Online { kind, text_key, status, retry_at: None, since: None, on_phone: 0, reason }
}

impl From<DaybookError> for PhoneError {
    fn from(error: DaybookError) -> PhoneError {
        let reason = error.to_string();
        match error {
            DaybookError::AlreadyEnrolled { fleet, device, .. } => PhoneError::Enrolment {
                kind: EnrolmentKind::AlreadyEnrolled,
                fleet: Some(fleet),
                device: Some(device),
                detail: None,
                reason,
            },
            DaybookError::OtherBook(_) => enrolment(EnrolmentKind::OtherFleetsFolder, None, reason),
            DaybookError::NotEnrolled(_) => enrolment(EnrolmentKind::NotEnrolled, None, reason),
            DaybookError::Name => enrolment(EnrolmentKind::Name, None, reason),
            DaybookError::KeyGone => PhoneError::Key { kind: KeyKind::Gone, reason },
            DaybookError::NewerHome => {
                PhoneError::Storage { kind: StorageKind::NewerVersion, text_key: None, reason }
            }
            DaybookError::Home { .. } => {
                PhoneError::Storage { kind: StorageKind::Other, text_key: None, reason }
            }
            DaybookError::Seal(error) => error.into(),
            DaybookError::Exchange(error) => error.into(),
            DaybookError::Ledger(error) => error.into(),
            DaybookError::Store(error) => error.into(),
            DaybookError::Photo(error) => error.into(),
            DaybookError::Sound(error) => error.into(),
            DaybookError::Random(_) => PhoneError::Unexpected { reason },
        }
    }
}

impl From<KeySealError> for PhoneError {
    fn from(error: KeySealError) -> PhoneError {
        let kind = match &error {
            KeySealError::Readable { .. } => KeyKind::ReadableByOthers,
            KeySealError::NotAKey(_) | KeySealError::File { .. } => KeyKind::File,
            KeySealError::Keystore(_) => KeyKind::Keystore,
        };
        PhoneError::Key { kind, reason: error.to_string() }
    }
}

impl From<ExchangeError> for PhoneError {
    fn from(error: ExchangeError) -> PhoneError {
        let reason = error.to_string();
        let file = |kind| PhoneError::File { kind, reason: reason.clone() };
        match error {
            ExchangeError::NotAFile => file(FileKind::NotAFile),
            ExchangeError::OtherFleet => file(FileKind::OtherFleet),
            ExchangeError::OtherShop => file(FileKind::OtherShop),
            ExchangeError::Seal(_) | ExchangeError::File(_) => file(FileKind::NotMade),
            ExchangeError::NotTheAnswer(_) => online(OnlineKind::NotTheAnswer, None, None, reason),
            ExchangeError::NotAnInvitation => enrolment(EnrolmentKind::NotAnInvitation, None, reason),
            ExchangeError::Invitation(_) => enrolment(EnrolmentKind::Damaged, None, reason),
            ExchangeError::CodeExpired(at) => enrolment(EnrolmentKind::CodeExpired, Some(at), reason),
            ExchangeError::CodeUsed(by) => enrolment(EnrolmentKind::CodeUsed, Some(by), reason),
            ExchangeError::CodeUnknown => enrolment(EnrolmentKind::CodeUnknown, None, reason),
            ExchangeError::Ledger(error) => error.into(),
            ExchangeError::Store(error) => error.into(),
            ExchangeError::NotTheShop
            | ExchangeError::UnknownTruck(_)
            | ExchangeError::NobodyWaiting(_)
            | ExchangeError::Memory(_) => file(FileKind::Other),
            ExchangeError::Random(_) => PhoneError::Unexpected { reason },
        }
    }
}

impl From<LedgerError> for PhoneError {
    fn from(error: LedgerError) -> PhoneError {
        let reason = error.to_string();
        match error {
            LedgerError::Store(error) => error.into(),
            LedgerError::Sign(_) => PhoneError::Entry { reason },
            LedgerError::Change(_)
            | LedgerError::State(_)
            | LedgerError::Folded(_)
            | LedgerError::Checklist(_) => {
                PhoneError::Storage { kind: StorageKind::Other, text_key: None, reason }
            }
            LedgerError::Random(_) => PhoneError::Unexpected { reason },
        }
    }
}

impl From<StoreError> for PhoneError {
    fn from(error: StoreError) -> PhoneError {
        let (kind, text_key) = match &error {
            StoreError::Full => (StorageKind::Full, Some("error-phone-full")),
            StoreError::ReadOnly(_) => (StorageKind::ReadOnly, None),
            StoreError::Damaged(_) => (StorageKind::Damaged, None),
            StoreError::Busy => (StorageKind::Busy, None),
            StoreError::NewerVersion { .. } => (StorageKind::NewerVersion, None),
            StoreError::Folder { .. } | StoreError::Unexpected(_) | StoreError::Sqlite(_) => {
                (StorageKind::Other, None)
            }
        };
        PhoneError::Storage { kind, text_key: text_key.map(str::to_owned), reason: error.to_string() }
    }
}

impl From<PhotoError> for PhoneError {
    fn from(error: PhotoError) -> PhoneError {
        let kind = match &error {
            PhotoError::NotAPhoto => PhotoKind::NotAPhoto,
            PhotoError::Cut => PhotoKind::Cut,
            PhotoError::TooLarge => PhotoKind::TooLarge,
            PhotoError::Full => PhotoKind::Full,
            PhotoError::Damaged(_) => PhotoKind::Damaged,
            PhotoError::Folder { .. } => PhotoKind::Folder,
        };
        PhoneError::Photo { kind, text_key: error.text_key().map(str::to_owned), reason: error.to_string() }
    }
}

impl From<SoundError> for PhoneError {
    fn from(error: SoundError) -> PhoneError {
        let kind = match &error {
            SoundError::NotASound => PhotoKind::NotASound,
            SoundError::Cut => PhotoKind::Cut,
            SoundError::TooLong => PhotoKind::TooLong,
            SoundError::TooLarge => PhotoKind::TooLarge,
            SoundError::Full => PhotoKind::Full,
            SoundError::Damaged(_) => PhotoKind::Damaged,
            SoundError::Folder { .. } => PhotoKind::Folder,
        };
        PhoneError::Photo { kind, text_key: error.text_key().map(str::to_owned), reason: error.to_string() }
    }
}

impl From<OnlineError> for PhoneError {
    fn from(error: OnlineError) -> PhoneError {
        let (key, reason) = (error.text_key(), error.to_string());
        match error {
            OnlineError::NoHub => online(OnlineKind::NoHub, key, None, reason),
            OnlineError::NoWay(_) => online(OnlineKind::NoWay, key, None, reason),
            OnlineError::OtherKey => online(OnlineKind::OtherKey, key, None, reason),
            OnlineError::Declined { status, words, .. } => {
                online(OnlineKind::Declined, key, Some(status), words)
            }
            OnlineError::Exchange(error) => error.into(),
            OnlineError::Phone(error) => error.into(),
        }
    }
}

impl From<DraftError> for PhoneError {
    fn from(error: DraftError) -> PhoneError {
        let reason = error.to_string();
        let plain = |kind| (kind, None, None, 0);
        let (kind, item, stop, left) = match error {
            DraftError::Answer(_) => plain(DraftKind::Answer),
            DraftError::NothingTogether => plain(DraftKind::NothingTogether),
            DraftError::FigureMissing(item) => (DraftKind::FigureMissing, Some(item), None, 0),
            DraftError::StopOpen { stop, at, left } => {
                (DraftKind::StopOpen, None, Some((stop, at)), u32::try_from(left).unwrap_or(u32::MAX))
            }
            DraftError::NothingAnswered => plain(DraftKind::NothingAnswered),
            DraftError::GateClosed(_) => plain(DraftKind::GateClosed),
            DraftError::NoVolume => plain(DraftKind::NoVolume),
            DraftError::NothingPoured => plain(DraftKind::NothingPoured),
            DraftError::CapOpen => plain(DraftKind::CapOpen),
            DraftError::DefectsNotSaid => plain(DraftKind::DefectsNotSaid),
        };
        let (stop, at) = stop.unzip();
        PhoneError::Draft { kind, item, stop, at, left, reason }
    }
}

impl From<LineError> for PhoneError {
    fn from(error: LineError) -> PhoneError {
        PhoneError::Entry { reason: error.to_string() }
    }
}

impl From<SlipError> for PhoneError {
    fn from(error: SlipError) -> PhoneError {
        let (text_key, reason) = (error.text_key().to_owned(), error.to_string());
        let (kind, wait_s) = match error {
            SlipError::Code(SlipCodeError::Length(_)) => (SlipKind::Length, 0),
            SlipError::Code(SlipCodeError::Mistyped) => (SlipKind::Mistyped, 0),
            SlipError::Wrong { wait_s } => (SlipKind::Wrong, wait_s),
            SlipError::Wait { wait_s } => (SlipKind::Wait, wait_s),
            SlipError::NothingLocked => (SlipKind::NothingLocked, 0),
            SlipError::Ledger(error) => return error.into(),
        };
        PhoneError::Slip { kind, text_key, wait_s, reason }
    }
}
