//! Photos and sounds that are on their way: what has come of each, phone by phone, bounded in number and in age.

use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use sumpbook_daybook::KeyId;
use sumpbook_daybook::photo::{PhotoError, PhotoFolder, PhotoKind, name_of};
use sumpbook_daybook::sound;
use sumpbook_trade::record::Digest;

/// The folder within that of photos.
const NAME: &str = "coming";
/// Photos that one phone has on their way at most. It sends one after the other.
const OF_A_PHONE: usize = 4;
/// Photos on their way at most: half a gigabyte when each lacks only its last byte.
const OF_ALL: usize = 128;
/// So long after it began a photo that is not whole is let go of, milliseconds.
const HOLDS_MS: i64 = 48 * 3_600_000;

/// One piece of a photo.
pub(super) struct Piece<'a> {
    /// Where in the photo it begins.
    pub(super) offset: u64,
    /// Bytes of the whole photo.
    pub(super) length: u64,
    pub(super) bytes: &'a [u8],
}

/// How a photo stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Added {
    /// So many bytes have come.
    Part(u64),
    /// All of it is here, so many bytes.
    Whole(u64),
    /// The piece begins elsewhere: so many bytes have come.
    Elsewhere(u64),
    /// The piece goes beyond the length it names. What had come is let go of.
    TooLong,
    /// Together they are not what the name says. What had come is let go of.
    OtherHash,
    /// It is what the name says, and neither photo nor sound. What had come is let go of.
    NotAPhoto,
}

/// The shop's photos on their way.
pub(in crate::hub) struct Coming {
    photos: PhotoFolder,
    path: PathBuf,
    /// One piece at a time: two phones may send the same photo.
    turn: Mutex<()>,
}

/// A file of a photo on its way. Its name says which, from whom, and since when.
struct Part {
    path: PathBuf,
    photo: Digest,
    from: String,
    begun_ms: i64,
}

/// Whether it is something that is kept: a picture of a kind we know, or a sound that is one throughout and not too
/// long.
fn is_kept(whole: &[u8]) -> bool {
    PhotoKind::of(whole).is_some() || sound::cleaned(whole).is_ok()
}

impl Coming {
    pub(in crate::hub) fn of(folder: &Path) -> Coming {
        let photos = PhotoFolder::of(folder);
        let path = photos.path().join(NAME);
        Coming { photos, path, turn: Mutex::new(()) }
    }

    /// How a photo of this phone stands.
    pub(super) fn standing(&self, from: KeyId, photo: Digest) -> Result<Added, PhotoError> {
        if let Some(size) = self.photos.size(photo)? {
            return Ok(Added::Whole(size));
        }
        let from = from.to_string();
        let part = self.parts()?.into_iter().find(|part| part.photo == photo && part.from == from);
        Ok(Added::Part(part.map_or(0, |part| size(&part.path))))
    }

    /// Adds a piece. The last one makes the photo whole: looked at, forced to the disk, and only then named.
    pub(super) fn add(
        &self,
        from: KeyId,
        photo: Digest,
        piece: &Piece<'_>,
        now_ms: i64,
    ) -> Result<Added, PhotoError> {
        let _turn = self.turn.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(size) = self.photos.size(photo)? {
            return Ok(Added::Whole(size));
        }
        let path = self.file(&from.to_string(), photo, piece.offset == 0, now_ms)?;
        let had = path.as_deref().map_or(0, size);
        let Some(path) = path.filter(|_| piece.offset == had) else { return Ok(Added::Elsewhere(had)) };
        let has = had.saturating_add(piece.bytes.len() as u64);
        if has > piece.length {
            let _ = fs::remove_file(&path);
            return Ok(Added::TooLong);
        }
        self.write(&path, piece.bytes, had).map_err(|reason| self.failed(reason))?;
        if has < piece.length {
            return Ok(Added::Part(has));
        }
        let whole = fs::read(&path).map_err(|reason| self.failed(reason))?;
        let wrong = match is_kept(&whole) {
            _ if name_of(&whole) != photo => Some(Added::OtherHash),
            false => Some(Added::NotAPhoto),
            true => None,
        };
        if let Some(wrong) = wrong {
            let _ = fs::remove_file(&path);
            return Ok(wrong);
        }
        let keep = || -> io::Result<()> {
            OpenOptions::new().append(true).open(&path)?.sync_all()?;
            self.photos.name(&path, photo)
        };
        keep().map_err(|reason| self.failed(reason))?;
        for other in self.parts()?.iter().filter(|part| part.photo == photo) {
            let _ = fs::remove_file(&other.path);
        }
        Ok(Added::Whole(has))
    }

    /// Appends, or leaves the file as it was: a full disk must not leave half a piece.
    fn write(&self, path: &Path, bytes: &[u8], had: u64) -> io::Result<()> {
        self.photos.make()?;
        fs::create_dir_all(&self.path)?;
        let mut file = OpenOptions::new().create(true).append(true).open(path)?;
        file.write_all(bytes).inspect_err(|_| {
            let _ = if had == 0 { fs::remove_file(path) } else { file.set_len(had) };
        })
    }

    /// The file of a photo from this phone; none when nothing has come and none is begun. Beginning one lets go
    /// of what is old, and of the oldest where there are too many.
    fn file(
        &self,
        from: &str,
        photo: Digest,
        begins: bool,
        now_ms: i64,
    ) -> Result<Option<PathBuf>, PhotoError> {
        let mut parts = self.parts()?;
        if let Some(known) = parts.iter().find(|part| part.photo == photo && part.from == from) {
            return Ok(Some(known.path.clone()));
        }
        if !begins {
            return Ok(None);
        }
        parts.sort_by_key(|part| part.begun_ms);
        let own = parts.iter().filter(|part| part.from == from).count();
        let (mut of_phone, mut of_all) =
            ((own + 1).saturating_sub(OF_A_PHONE), (parts.len() + 1).saturating_sub(OF_ALL));
        for part in &parts {
            let too_many = of_all > 0 || (of_phone > 0 && part.from == from);
            if too_many || now_ms.saturating_sub(part.begun_ms) > HOLDS_MS {
                let _ = fs::remove_file(&part.path);
                of_all = of_all.saturating_sub(1);
                of_phone = of_phone.saturating_sub(usize::from(part.from == from));
            }
        }
        Ok(Some(self.path.join(format!("{photo}.{from}.{now_ms}"))))
    }

    fn parts(&self) -> Result<Vec<Part>, PhotoError> {
        let listed = match fs::read_dir(&self.path) {
            Ok(listed) => listed,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(reason) => return Err(self.failed(reason)),
        };
        Ok(listed.flatten().filter_map(|entry| Part::of(entry.path())).collect())
    }

    fn failed(&self, reason: io::Error) -> PhotoError {
        PhotoError::of(&self.path, reason)
    }
}

impl Part {
    fn of(path: PathBuf) -> Option<Part> {
        let mut said = path.file_name()?.to_str()?.split('.');
        let photo = said.next()?.parse().ok()?;
        let from = said.next()?.to_owned();
        let begun_ms = said.next()?.parse().ok()?;
        Some(Part { path, photo, from, begun_ms })
    }
}

fn size(path: &Path) -> u64 {
    fs::metadata(path).map_or(0, |found| found.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: i64 = 1_792_526_400_000;

    fn photo(number: u8) -> Vec<u8> {
        vec![0xff, 0xd8, 0xff, number, 1, 2, 3, 4, 0xff, 0xd9]
    }

    fn add(coming: &Coming, from: u8, bytes: &[u8], of: &[u8], offset: u64, now_ms: i64) -> Added {
        let piece = Piece { offset, length: of.len() as u64, bytes };
        coming.add(KeyId([from; 8]), name_of(of), &piece, now_ms).unwrap()
    }

    #[test]
    fn a_photo_comes_in_pieces_each_where_the_last_one_ended() {
        let folder = tempfile::tempdir().unwrap();
        let coming = Coming::of(folder.path());
        let whole = photo(1);
        assert_eq!(add(&coming, 1, &whole[4..], &whole, 4, NOW), Added::Elsewhere(0));
        assert_eq!(add(&coming, 1, &whole[..4], &whole, 0, NOW), Added::Part(4));
        assert_eq!(add(&coming, 1, &whole[..4], &whole, 0, NOW), Added::Elsewhere(4));
        assert_eq!(coming.standing(KeyId([1; 8]), name_of(&whole)).unwrap(), Added::Part(4));
        // Another phone has the same photo: it does not go on in this one's.
        assert_eq!(coming.standing(KeyId([2; 8]), name_of(&whole)).unwrap(), Added::Part(0));
        assert_eq!(add(&coming, 1, &whole[4..], &whole, 4, NOW), Added::Whole(10));
        assert_eq!(add(&coming, 2, &whole[..4], &whole, 0, NOW), Added::Whole(10));
        assert_eq!(coming.photos.read(name_of(&whole)).unwrap().unwrap(), whole);
        assert!(coming.parts().unwrap().is_empty());
    }

    #[test]
    fn what_is_not_what_it_says_is_let_go_of() {
        let folder = tempfile::tempdir().unwrap();
        let coming = Coming::of(folder.path());
        let (whole, other) = (photo(1), photo(2));
        assert_eq!(add(&coming, 1, &other, &whole, 0, NOW), Added::OtherHash);
        assert_eq!(
            add(&coming, 1, b"<script>alert(1)</script>", b"<script>alert(1)</script>", 0, NOW),
            Added::NotAPhoto
        );
        assert_eq!(add(&coming, 1, &[&whole[..], b"more"].concat(), &whole, 0, NOW), Added::TooLong);
        assert!(coming.parts().unwrap().is_empty() && coming.photos.all().unwrap().is_empty());
        assert_eq!(add(&coming, 1, &whole, &whole, 0, NOW), Added::Whole(10));
    }

    #[test]
    fn those_on_their_way_are_few_and_none_is_old() {
        let folder = tempfile::tempdir().unwrap();
        let coming = Coming::of(folder.path());
        for number in 0..10 {
            let whole = photo(number);
            assert_eq!(add(&coming, 1, &whole[..2], &whole, 0, NOW + i64::from(number)), Added::Part(2));
        }
        assert_eq!(coming.parts().unwrap().len(), OF_A_PHONE);
        for from in 2..200 {
            let whole = photo(0);
            add(&coming, from, &whole[..2], &whole, 0, NOW + 100);
        }
        assert_eq!(coming.parts().unwrap().len(), OF_ALL);
        let whole = photo(77);
        add(&coming, 250, &whole[..2], &whole, 0, NOW + 100 + HOLDS_MS + 1);
        assert_eq!(coming.parts().unwrap().len(), 1);
    }
}
