//! The sound of a defect (P6): what is said of it, and what can be done with it now.

use serde::{Deserialize, Serialize};

use crate::sound::MOST_MS;

/// What is going on with it at the handset.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SoundTrouble {
    /// The person does not let this app use the microphone.
    NotAllowed,
    /// The microphone gave nothing: another app has it, or it is broken.
    NoMicrophone,
    /// What is kept cannot be played here.
    NotPlayed,
}

/// How the handset comes to sounds, and how far it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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
    pub trouble: Option<SoundTrouble>,
}

/// What a button does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SoundButton {
    /// What it does.
    pub act: SoundAct,
    /// Key of its words.
    pub key: String,
}

/// A line above the buttons.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SoundLine {
    /// Key of its words.
    pub key: String,
    /// Seconds that it names; none where it names none.
    pub seconds: Option<u32>,
    /// It is a caution, or says what went wrong.
    pub heavy: bool,
}

/// The part of the screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SoundPart {
    /// What stands above the buttons, in order.
    pub lines: Vec<SoundLine>,
    /// The buttons, in order; none where sounds cannot be had.
    pub buttons: Vec<SoundButton>,
    /// A recording ends by itself after so long, milliseconds.
    pub most_ms: u32,
}

/// What can be done with the sound of a defect. At most one goes with it: a second one takes the first one's place only
/// after that was taken away.
pub fn sound_part(query: &SoundQuery) -> SoundPart {
    let line = |key: &str, seconds, heavy| SoundLine { key: key.to_owned(), seconds, heavy };
    let mut lines: Vec<SoundLine> =
        query.trouble.iter().map(|trouble| line(trouble.key(), None, true)).collect();
    let acts: &[SoundAct] = match query.now {
        SoundNow::Recording { ms } => {
            lines = vec![
                line("sound-recording", Some(MOST_MS.saturating_sub(ms).div_ceil(1_000)), false),
                line("sound-stand-clear", None, true),
            ];
            &[SoundAct::Stop]
        }
        SoundNow::Listening => &[SoundAct::StopListening],
        SoundNow::Still if query.held => &[SoundAct::Listen, SoundAct::TakeAway],
        SoundNow::Still => match (query.microphone, query.files) {
            // Who does not let the app listen may still have a recorder of his own.
            (true, true) if query.trouble.is_some() => &[SoundAct::Record, SoundAct::Choose],
            (true, _) => &[SoundAct::Record],
            (false, true) => &[SoundAct::Choose],
            (false, false) => &[],
        },
    };
    if query.held && !matches!(query.now, SoundNow::Recording { .. }) {
        lines.push(line("sound-goes-with-it", None, false));
    }
    let buttons = acts.iter().map(|act| SoundButton { act: *act, key: act.key().to_owned() });
    SoundPart { lines, buttons: buttons.collect(), most_ms: MOST_MS }
}

impl SoundAct {
    /// Key of its words.
    pub fn key(self) -> &'static str {
        match self {
            SoundAct::Record => "sound-record",
            SoundAct::Choose => "sound-choose",
            SoundAct::Stop => "sound-stop",
            SoundAct::Listen => "sound-listen",
            SoundAct::StopListening => "sound-stop-listening",
            SoundAct::TakeAway => "sound-take-away",
        }
    }
}

impl SoundTrouble {
    /// Key of its words.
    pub fn key(self) -> &'static str {
        match self {
            SoundTrouble::NotAllowed => "error-microphone-not-allowed",
            SoundTrouble::NoMicrophone => "error-no-microphone",
            SoundTrouble::NotPlayed => "error-sound-not-played",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STILL: SoundQuery =
        SoundQuery { held: false, now: SoundNow::Still, microphone: true, files: false, trouble: None };

    fn acts(query: SoundQuery) -> Vec<SoundAct> {
        sound_part(&query).buttons.iter().map(|button| button.act).collect()
    }

    #[test]
    fn one_sound_at_most_is_recorded_heard_again_and_taken_away() {
        assert_eq!(acts(STILL), [SoundAct::Record]);
        let recording = SoundQuery { now: SoundNow::Recording { ms: 2_500 }, ..STILL };
        assert_eq!(acts(recording), [SoundAct::Stop]);
        let part = sound_part(&recording);
        assert_eq!((part.lines[0].seconds, part.most_ms), (Some(8), 10_000));
        assert!(part.lines[1].heavy, "what turns is warned of while it is recorded");
        let held = SoundQuery { held: true, ..STILL };
        assert_eq!(acts(held), [SoundAct::Listen, SoundAct::TakeAway]);
        assert_eq!(acts(SoundQuery { now: SoundNow::Listening, ..held }), [SoundAct::StopListening]);
    }

    #[test]
    fn without_a_microphone_a_file_is_chosen_and_without_either_nothing_is_offered() {
        let chosen = SoundQuery { microphone: false, files: true, ..STILL };
        assert_eq!(acts(chosen), [SoundAct::Choose]);
        assert_eq!(acts(SoundQuery { microphone: false, ..STILL }), []);
        let refused = SoundQuery { files: true, trouble: Some(SoundTrouble::NotAllowed), ..STILL };
        assert_eq!(acts(refused), [SoundAct::Record, SoundAct::Choose]);
        assert_eq!(sound_part(&refused).lines[0].key, "error-microphone-not-allowed");
    }
}
