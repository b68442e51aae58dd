//! What kind of picture some bytes begin as.

/// The kinds of picture that are kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoKind {
    /// JPEG (ITU-T T.81).
    Jpeg,
    /// PNG (W3C PNG).
    Png,
    /// WebP (RFC 9649).
    Webp,
}

impl PhotoKind {
    /// By the first bytes, whatever a name says; none for anything else.
    pub fn of(bytes: &[u8]) -> Option<PhotoKind> {
        match bytes {
            [0xff, 0xd8, 0xff, ..] => Some(PhotoKind::Jpeg),
            [0x89, b'P', b'N', b'G', b'\r', b'\n', 0x1a, b'\n', ..] => Some(PhotoKind::Png),
            [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Some(PhotoKind::Webp),
            _ => None,
        }
    }

    /// Its media type.
    pub fn media_type(self) -> &'static str {
        match self {
            PhotoKind::Jpeg => "image/jpeg",
            PhotoKind::Png => "image/png",
            PhotoKind::Webp => "image/webp",
        }
    }
}
