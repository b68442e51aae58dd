//! The sound of a defect (P6).

use sumpbook_daybook::screen::{
    self, SoundAct, SoundButton, SoundLine, SoundNow, SoundPart, SoundQuery, SoundTrouble,
};

/// What is going on with it at the handset.
#[uniffi::remote(Enum)]
pub enum SoundNow {
    /// Nothing.
    Still,
    /// It is being recorded.
    Recording {
        /// For so long, milliseconds.
        ms: u32,
    },
    /// It is being listened to.
    Listening,
}

/// Why nothing was recorded. The defect is kept without a sound all the same.
#[uniffi::remote(Enum)]
pub enum SoundTrouble {
    /// The person does not let this app use the microphone.
    NotAllowed,
    /// The microphone gave nothing: another app has it, or it is broken.
    NoMicrophone,
    /// What is kept cannot be played here.
    NotPlayed,
}

/// How the handset comes to sounds, and how far it is.
#[uniffi::remote(Record)]
pub struct SoundQuery {
    /// A sound goes with what is being told.
    pub held: bool,
    /// What is going on.
    pub now: SoundNow,
    /// There is a microphone.
    pub microphone: bool,
    /// A file can be chosen.
    pub files: bool,
    /// What went wrong last; none when nothing did.
    #[uniffi(default)]
    pub trouble: Option<SoundTrouble>,
}

/// What a button does.
#[uniffi::remote(Enum)]
pub enum SoundAct {
    /// Begins to record.
    Record,
    /// Chooses a file.
    Choose,
    /// Ends the recording: what there is, is kept.
    Stop,
    /// Plays it.
    Listen,
    /// Ends playing it.
    StopListening,
    /// Takes it away again.
    TakeAway,
}

/// A button.
#[uniffi::remote(Record)]
pub struct SoundButton {
    /// What it does.
    pub act: SoundAct,
    /// Key of its words.
    pub key: String,
}

/// A line above the buttons.
#[uniffi::remote(Record)]
pub struct SoundLine {
    /// Key of its words.
    pub key: String,
    /// Seconds that it names; none where it names none.
    pub seconds: Option<u32>,
    /// It is a caution, or says what went wrong.
    pub heavy: bool,
}

/// The part of the screen.
#[uniffi::remote(Record)]
pub struct SoundPart {
    /// What stands above the buttons, in order.
    pub lines: Vec<SoundLine>,
    /// The buttons, in order; none where sounds cannot be had.
    pub buttons: Vec<SoundButton>,
    /// A recording ends by itself after so long, milliseconds.
    pub most_ms: u32,
}

/// What can be done with the sound of a defect. At most one goes with it.
#[uniffi::export]
pub fn sound_part(query: SoundQuery) -> SoundPart {
    screen::sound_part(&query)
}
