//! The shop's disk is full: phones are told so and keep their entries, nothing is half-written, and all goes on by
//! itself when there is room. On a small file system of its own, where the machine lets a test make one.

use std::path::{Path, PathBuf};
use std::process::Command;

use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::phone::online::{OnlineError, PhotoStop};
use sumpbook_daybook::photo::PhotoFolder;
use sumpbook_daybook::store::Store;
use sumpbook_hub_tests::{Yard, exchange, picture, takes, walk};

/// A file system in memory.
struct Small(PathBuf);

impl Small {
    fn mounted(at: &Path, kib: u32) -> Option<Small> {
        let mut mount = Command::new("mount");
        mount.args(["-t", "tmpfs", "-o", &format!("size={kib}k"), "tmpfs"]).arg(at);
        mount.output().is_ok_and(|done| done.status.success()).then(|| Small(at.to_owned()))
    }
}

impl Drop for Small {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(&self.0).output();
    }
}

#[test]
fn a_full_disk_is_told_harms_nothing_and_ends_when_there_is_room() {
    let home = tempfile::tempdir().unwrap();
    let Some(_small) = Small::mounted(home.path(), 6 * 1_024) else {
        println!("skipped: no file system can be mounted here (it needs the machine's administrator)");
        return;
    };
    let mut yard = Yard::new_in(env!("CARGO_BIN_EXE_hub"), home.path(), 2, 2);
    yard.begin();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0, 1]);
    walk(&mut phone, 0, 1);
    assert!(exchange(&mut phone).unwrap().whole);
    // Room for a part of the photo, then for nothing.
    let ballast = home.path().join("ballast");
    fill(&ballast, 120_000);
    let (photo, _) = takes(&mut phone, 0, &picture(1, 900_000));
    let done = exchange(&mut phone).unwrap();
    assert_eq!(done.photos.stopped, Some(PhotoStop::NoRoom), "{done:?}");
    assert_eq!(counts(phone.ledger()).unwrap().on_this_phone, 0, "the entry found room");
    fill(&ballast, 0);
    let mut number = 10;
    let told = loop {
        for _ in 0..20 {
            walk(&mut phone, number % 2, number);
            number += 1;
        }
        match exchange(&mut phone) {
            Ok(_) => assert!(number < 20_000, "the disk never filled"),
            Err(error) => break error,
        }
        fill(&ballast, 0);
    };
    let OnlineError::Declined { status, words, .. } = &told else { panic!("{told:?}") };
    assert_eq!(*status, 503);
    assert_eq!(
        words,
        "The shop computer's disk is full. Nothing is half-written; phones keep their entries and try again. Make room on it."
    );
    let waiting = counts(phone.ledger()).unwrap().on_this_phone;
    assert!(waiting > 0);
    // The books can be read, and what the phone was told holds.
    assert!(exchange(&mut phone).is_err());
    Store::reader(yard.folder()).unwrap().check().unwrap();
    std::fs::remove_file(&ballast).unwrap();
    let done = exchange(&mut phone).unwrap();
    assert!(done.whole && done.acknowledged == waiting, "{done:?}");
    assert_eq!(done.photos.left, 0, "{done:?}");
    assert!(PhotoFolder::of(yard.folder()).read(photo).unwrap().is_some());
    let held = Store::reader(yard.folder()).unwrap();
    held.check().unwrap();
    let truth = phone.ledger().store().truth();
    for book in truth.books().unwrap() {
        assert_eq!(truth.heads(book).unwrap(), held.truth().heads(book).unwrap());
    }
}

#[test]
fn a_full_phone_keeps_what_was_signed_and_says_that_the_photo_is_not() {
    let home = tempfile::tempdir().unwrap();
    let Some(_small) = Small::mounted(home.path(), 4 * 1_024) else {
        println!("skipped: no file system can be mounted here (it needs the machine's administrator)");
        return;
    };
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 1, 1);
    yard.begin();
    let mut phone = yard.phone(&home.path().join("phone"), 1, &[0]);
    assert!(exchange(&mut phone).unwrap().whole);
    let id = walk(&mut phone, 0, 1);
    let ballast = home.path().join("ballast");
    fill(&ballast, 300_000);
    let told = phone.keep_photo(&picture(1, 900_000)).unwrap_err();
    assert_eq!(told.text_key(), Some("error-phone-full"), "{told}");
    let left = std::fs::read_dir(phone.photos().path()).map_or(0, Iterator::count);
    assert_eq!(left, 0, "half a photo would only take room");
    assert_eq!(phone.ledger().store().truth().by_id(id).unwrap().len(), 1);
    assert_eq!(exchange(&mut phone).unwrap().acknowledged, 1);
    std::fs::remove_file(&ballast).unwrap();
    takes(&mut phone, 0, &picture(1, 900_000));
    assert_eq!(exchange(&mut phone).unwrap().photos.arrived, 1);
}

/// Fills the file system but for so many bytes.
fn fill(ballast: &Path, leave: u64) {
    use std::io::Write;
    let mut file = std::fs::OpenOptions::new().create(true).append(true).open(ballast).unwrap();
    for chunk in [65_536, 4_096, 512, 1] {
        while file.write_all(&vec![0; chunk]).is_ok() {}
    }
    let length = file.metadata().unwrap().len();
    file.set_len(length.saturating_sub(leave)).unwrap();
}
