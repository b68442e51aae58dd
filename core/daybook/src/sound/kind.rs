//! What kind of sound some bytes begin as.

/// The kinds of sound that are kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoundKind {
    /// Uncompressed samples in RIFF (IBM and Microsoft, Multimedia Programming Interface 1.0): one channel of PCM.
    Wav,
    /// AAC (ISO/IEC 14496-3) in MP4 (ISO/IEC 14496-12, 14496-14), one track.
    Mp4,
}

impl SoundKind {
    /// By the first bytes, whatever a name says; none for anything else.
    pub fn of(bytes: &[u8]) -> Option<SoundKind> {
        match bytes {
            [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'A', b'V', b'E', ..] => Some(SoundKind::Wav),
            [_, _, _, _, b'f', b't', b'y', b'p', ..] => Some(SoundKind::Mp4),
            _ => None,
        }
    }

    /// Its media type.
    pub fn media_type(self) -> &'static str {
        match self {
            SoundKind::Wav => "audio/wav",
            SoundKind::Mp4 => "audio/mp4",
        }
    }
}
