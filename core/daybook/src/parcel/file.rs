//! A hand-over file: a mark, then parcels, each behind its length.

use std::io::{self, Read, Write};

use super::limits;

/// The first eight bytes of every file.
pub const MARK: &[u8; 8] = b"SUMPBK01";

/// Where a file stops being one. Everything before that was given out.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// It does not begin with the mark.
    #[error("not a Sumpbook file")]
    NotOurs,
    /// It ends inside a frame.
    #[error("the file ends in the middle, after parcel {after}")]
    Truncated {
        /// Whole parcels before the end.
        after: u64,
    },
    /// A frame of a length no parcel has: what follows cannot be told apart any more.
    #[error("the file is damaged after parcel {after}: the next claims {claimed} bytes")]
    Damaged {
        /// Whole parcels before the damage.
        after: u64,
        /// Bytes claimed.
        claimed: u32,
    },
    /// A parcel too long to stand in a file.
    #[error("a parcel of {0} bytes does not go into a file")]
    TooLong(usize),
    /// The file could not be read.
    #[error("reading after parcel {after}: {source}")]
    Read {
        /// Whole parcels before it.
        after: u64,
        /// What the system said.
        source: io::Error,
    },
    /// The file could not be written.
    #[error("writing: {0}")]
    Write(#[source] io::Error),
}

/// Gives a file's parcels in order, still sealed; after an error, nothing more.
#[derive(Debug)]
pub struct FileReader<R> {
    from: R,
    after: u64,
    ended: bool,
}

impl<R: Read> FileReader<R> {
    /// Begins with the mark.
    ///
    /// # Errors
    /// [`FileError::NotOurs`] when it is not there, [`FileError::Read`] when nothing can be read.
    pub fn new(mut from: R) -> Result<FileReader<R>, FileError> {
        match take(&mut from, MARK.len() as u64) {
            Ok(mark) if mark == MARK => Ok(FileReader { from, after: 0, ended: false }),
            Ok(_) => Err(FileError::NotOurs),
            Err(source) => Err(FileError::Read { after: 0, source }),
        }
    }

    fn frame(&mut self) -> Result<Option<Vec<u8>>, FileError> {
        let after = self.after;
        let read = |source| FileError::Read { after, source };
        let length = take(&mut self.from, 4).map_err(read)?;
        if length.is_empty() {
            return Ok(None);
        }
        let length: [u8; 4] = length.try_into().map_err(|_| FileError::Truncated { after })?;
        let claimed = u32::from_be_bytes(length);
        if claimed == 0 || claimed as usize > limits::WIRE {
            return Err(FileError::Damaged { after, claimed });
        }
        let frame = take(&mut self.from, u64::from(claimed)).map_err(read)?;
        if frame.len() < claimed as usize {
            return Err(FileError::Truncated { after });
        }
        self.after = after.saturating_add(1);
        Ok(Some(frame))
    }
}

/// At most `most` bytes; fewer only at the end. Grows with what is there, not with what is claimed.
fn take(from: &mut impl Read, most: u64) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    from.take(most).read_to_end(&mut bytes)?;
    Ok(bytes)
}

impl<R: Read> Iterator for FileReader<R> {
    type Item = Result<Vec<u8>, FileError>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.ended {
            return None;
        }
        let frame = self.frame().transpose();
        self.ended = !matches!(frame, Some(Ok(_)));
        frame
    }
}

/// Writes a file, parcel by parcel.
#[derive(Debug)]
pub struct FileWriter<W>(W);

impl<W: Write> FileWriter<W> {
    /// Begins a file with its mark.
    ///
    /// # Errors
    /// [`FileError::Write`].
    pub fn new(mut to: W) -> Result<FileWriter<W>, FileError> {
        to.write_all(MARK).map_err(FileError::Write)?;
        Ok(FileWriter(to))
    }

    /// Adds a sealed parcel ([`crate::parcel::Sealed::wire`]).
    ///
    /// # Errors
    /// [`FileError::TooLong`] above the wire's limit or when empty, [`FileError::Write`].
    pub fn add(&mut self, wire: &[u8]) -> Result<(), FileError> {
        let too_long = FileError::TooLong(wire.len());
        let length = match u32::try_from(wire.len()) {
            Ok(length) if length > 0 && wire.len() <= limits::WIRE => length,
            _ => return Err(too_long),
        };
        self.0
            .write_all(&length.to_be_bytes())
            .and_then(|()| self.0.write_all(wire))
            .map_err(FileError::Write)
    }

    /// Ends the file and gives back what it was written to.
    ///
    /// # Errors
    /// [`FileError::Write`] when the last bytes do not arrive.
    pub fn finish(mut self) -> Result<W, FileError> {
        self.0.flush().map_err(FileError::Write)?;
        Ok(self.0)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn file() -> Vec<u8> {
        let mut writer = FileWriter::new(Vec::new()).unwrap();
        for frame in [&b"one"[..], b"two", b"three"] {
            writer.add(frame).unwrap();
        }
        writer.finish().unwrap()
    }

    fn read(bytes: &[u8]) -> (Vec<Vec<u8>>, Option<FileError>) {
        let mut frames = Vec::new();
        match FileReader::new(bytes) {
            Err(error) => return (frames, Some(error)),
            Ok(reader) => {
                for frame in reader {
                    match frame {
                        Ok(frame) => frames.push(frame),
                        Err(error) => return (frames, Some(error)),
                    }
                }
            }
        }
        (frames, None)
    }

    #[test]
    fn what_was_written_is_read() {
        let (frames, error) = read(&file());
        assert_eq!(frames, [b"one".to_vec(), b"two".to_vec(), b"three".to_vec()]);
        assert!(error.is_none());
        assert!(matches!(read(MARK), (frames, None) if frames.is_empty()));
    }

    #[test]
    fn a_file_cut_short_gives_what_came_before_the_cut() {
        let whole = file();
        for cut in 0..whole.len() {
            let (frames, error) = read(&whole[..cut]);
            match cut {
                0..8 => assert!(matches!(error, Some(FileError::NotOurs)), "{cut}"),
                8 | 15 | 22 => assert!(error.is_none(), "{cut}: between two parcels"),
                _ => {
                    let count = ((cut - 8) / 7).min(2);
                    assert_eq!(frames.len(), count, "{cut}");
                    assert!(matches!(error, Some(FileError::Truncated { after }) if after == count as u64));
                }
            }
        }
    }

    #[test]
    fn a_damaged_length_ends_the_file_there() {
        let mut bytes = file();
        bytes[15] = 0x7f;
        let (frames, error) = read(&bytes);
        assert_eq!(frames, [b"one".to_vec()]);
        assert!(matches!(error, Some(FileError::Damaged { after: 1, claimed: 0x7f00_0003 })));
    }

    #[test]
    fn a_parcel_beyond_the_wire_does_not_go_in() {
        let mut writer = FileWriter::new(Vec::new()).unwrap();
        assert!(matches!(writer.add(&vec![0; limits::WIRE + 1]), Err(FileError::TooLong(_))));
        assert!(matches!(writer.add(&[]), Err(FileError::TooLong(0))));
        assert!(writer.add(&vec![0; limits::WIRE]).is_ok());
    }

    proptest! {
        #[test]
        fn whatever_the_bytes_reading_ends(bytes in prop::collection::vec(any::<u8>(), 0..200), marked: bool) {
            let bytes = if marked { [&MARK[..], &bytes].concat() } else { bytes };
            let (frames, _) = read(&bytes);
            prop_assert!(frames.iter().map(Vec::len).sum::<usize>() <= bytes.len());
        }
    }
}
