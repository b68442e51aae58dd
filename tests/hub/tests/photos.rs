//! Photos go to the shop after the entries that name them, and go on where they stopped.

use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::counts;
use sumpbook_daybook::phone::online::{Hub, PhotoStop};
use sumpbook_daybook::photo::{MOST, PIECE, PhotoFolder, name_of};
use sumpbook_daybook::screen::{PhotoPlace, WhereQuery, where_it_is};
use sumpbook_hub_tests::{
    Cutting, Yard, clock, exchange, heard, names, noise, permission, picture, takes, walk,
};
use sumpbook_simulation::fleet::root;
use sumpbook_trade::record::Digest;

fn soon() -> Instant {
    Instant::now() + Duration::from_secs(20)
}

fn yard() -> Yard {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 3);
    yard.begin();
    yard
}

fn at_the_shop(yard: &Yard, photo: Digest) -> Option<Vec<u8>> {
    PhotoFolder::of(yard.folder()).read(photo).unwrap()
}

#[test]
fn a_photo_that_was_cut_at_any_byte_goes_on_and_its_entry_never_waits() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    assert!(exchange(&mut phone).unwrap().whole);
    let cutting = Cutting::before(yard.address());
    let (mut cuts, mut parts) = (0, 0);
    let size = 2 * PIECE + 70_000;
    for number in 0..24 {
        let bytes = picture(number, size);
        let (photo, _) = takes(&mut phone, 0, &bytes);
        // Early cuts fall into the handshake and the exchange, later ones into every piece.
        let step = size as u64 / 20;
        let mut next = 500 + u64::from(number) * 701;
        let mut sent = 0;
        let last = loop {
            cutting.cut_after(next);
            let way = Hub::new(cutting.address(), root().fleet, root().shop).unwrap();
            match phone.exchange_over(&way, &clock, soon()) {
                Ok(done) if done.photos.left == 0 => break done,
                Ok(done) => {
                    assert_eq!(counts(phone.ledger()).unwrap().on_this_phone, 0, "the entry is there");
                    assert_eq!(done.photos.stopped, Some(PhotoStop::NoWay));
                    sent += done.photos.bytes;
                    parts += usize::from(matches!(
                        phone.photos_standing().unwrap()[&photo],
                        PhotoPlace::Part { percent: 1..=99 }
                    ));
                }
                Err(_) => {}
            }
            assert_eq!(at_the_shop(&yard, photo), None);
            cuts += 1;
            next += step * 4 + 13;
        };
        assert_eq!(at_the_shop(&yard, photo).as_deref(), Some(&bytes[..]));
        assert_eq!(phone.photos_standing().unwrap()[&photo], PhotoPlace::AtShop);
        assert!(last.photos.arrived == 1 && sent < 12 * size as u64);
    }
    println!("{cuts} cuts, {parts} with a part of the photo at the shop");
    assert!(cuts > 40 && parts > 10, "{cuts} {parts}");
    let coming = PhotoFolder::of(yard.folder()).path().join("coming");
    assert_eq!(std::fs::read_dir(coming).unwrap().count(), 0, "nothing half is left behind");
    // Nothing is sent twice.
    assert_eq!(exchange(&mut phone).unwrap().photos, Default::default());
    let screen =
        where_it_is(phone.ledger(), &WhereQuery { days_back: 1 }, &phone.standing().unwrap(), clock());
    let screen = screen.unwrap();
    assert_eq!((screen.photos.on_phone, screen.photos.at_shop, screen.photos.stopped_at), (0, 24, None));
    assert_eq!(screen.days[0].rows.iter().map(|row| row.photos.len()).sum::<usize>(), 24);
}

#[test]
fn a_hub_killed_between_two_pieces_goes_on_where_it_was() {
    let mut yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    let bytes = picture(1, 3 * PIECE);
    assert!(exchange(&mut phone).unwrap().whole);
    let (photo, _) = takes(&mut phone, 0, &bytes);
    let way = yard.way();
    let token = permission(&way, &mut phone);
    let said = way.send_piece(photo, &token, 0, bytes.len() as u64, &bytes[..PIECE], soon()).unwrap();
    assert_eq!((said.status, said.offset, said.complete), (204, Some(PIECE as u64), false));
    yard.kill();
    yard.begin();
    // A permission of its earlier life is none.
    let way = yard.way();
    assert_eq!(way.photo_at(photo, &token, soon()).unwrap().status, 401);
    let done = exchange(&mut phone).unwrap();
    assert_eq!((done.photos.arrived, done.photos.left), (1, 0));
    assert_eq!(done.photos.bytes, (bytes.len() - PIECE) as u64, "what was there was not sent again");
    assert_eq!(at_the_shop(&yard, photo), Some(bytes));
}

#[test]
fn who_may_send_which_photo_and_what_is_refused() {
    let yard = yard();
    let folders = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    let mut phone = yard.phone(folders[0].path(), 1, &[0]);
    let mut other = yard.phone(folders[1].path(), 2, &[0]);
    let way = yard.way();
    let bytes = picture(1, 1_000);
    let photo = phone.keep_photo(&bytes).unwrap();
    let size = bytes.len() as u64;
    let token = permission(&way, &mut phone);
    let at = |photo, token: &[u8; 32]| way.photo_at(photo, token, soon()).unwrap();
    let put = |photo, token: &[u8; 32], offset, length, piece: &[u8]| {
        way.send_piece(photo, token, offset, length, piece, soon()).unwrap()
    };
    // No permission; no entry names it, so not even a permission helps.
    assert_eq!(at(photo, &[0; 32]).status, 401);
    assert_eq!(put(photo, &[0; 32], 0, size, &bytes).status, 401);
    assert_eq!(at(photo, &token).status, 404);
    assert_eq!(put(photo, &token, 0, size, &bytes).status, 404);
    assert_eq!(exchange(&mut phone).unwrap().photos.arrived, 0, "a phone does not even try");
    names(&mut phone, 0, photo);
    let noise = names(&mut phone, 0, name_of(b"no photo at all"));
    assert!(!noise.to_string().is_empty());
    let token = permission(&way, &mut phone);
    assert_eq!((at(photo, &token).status, at(photo, &token).offset), (200, Some(0)));
    // Too long, too long a piece, no beginning, elsewhere, not what it says, no photo.
    assert_eq!(put(photo, &token, 0, MOST as u64 + 1, &bytes).status, 413);
    assert_eq!(put(photo, &token, 0, MOST as u64, &vec![1; PIECE + 1]).status, 413);
    assert_eq!(put(photo, &token, 0, 0, b"").status, 400);
    let elsewhere = put(photo, &token, 500, size, &bytes[500..]);
    assert_eq!((elsewhere.status, elsewhere.offset), (409, Some(0)));
    assert_eq!(put(photo, &token, 0, size, &picture(2, 1_000)).status, 422);
    assert_eq!(put(photo, &token, 0, 10, &bytes).status, 422);
    assert_eq!(put(name_of(b"no photo at all"), &token, 0, 15, b"no photo at all").status, 422);
    // Another phone may bring it; what it sent wrongly does not stand in the way of the right one.
    let theirs = permission(&way, &mut other);
    assert_eq!(put(photo, &theirs, 0, size, &[9; 400]).status, 204);
    assert_eq!(at(photo, &token).offset, Some(0));
    let done = exchange(&mut phone).unwrap();
    assert_eq!((done.photos.arrived, done.photos.left), (1, 0), "{done:?}");
    assert!(put(photo, &theirs, 400, size, &[9; 600]).complete, "it is there: nothing to add");
    assert_eq!(at_the_shop(&yard, photo), Some(bytes));
    // Nobody but who is signed in sees it.
    walk(&mut phone, 0, 1);
    assert!(exchange(&mut phone).unwrap().whole);
}

#[test]
fn a_shop_that_lost_its_photos_gets_them_again() {
    let mut yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    let (photo, _) = takes(&mut phone, 0, &picture(1, 2_000));
    assert_eq!(exchange(&mut phone).unwrap().photos.arrived, 1);
    yard.kill();
    std::fs::remove_dir_all(PhotoFolder::of(yard.folder()).path()).unwrap();
    yard.begins_new_epoch();
    yard.begin();
    let done = exchange(&mut phone).unwrap();
    assert!(done.shop_set_back, "{done:?}");
    assert_eq!(done.photos.arrived, 1);
    assert!(at_the_shop(&yard, photo).is_some());
}

#[test]
fn the_sound_of_a_defect_follows_its_entry_piece_by_piece_and_longer_ones_are_not_taken() {
    let yard = yard();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    assert!(exchange(&mut phone).unwrap().whole);
    let bytes = noise(10);
    assert!(bytes.len() > PIECE, "it goes in pieces");
    let sound = phone.keep_sound(&bytes).unwrap();
    assert_eq!(exchange(&mut phone).unwrap().photos.arrived, 0, "nothing names it yet");
    heard(&mut phone, 0, sound);
    let (long, mut cut) = (noise(12), noise(1));
    cut.truncate(900);
    for other in [&long, &cut] {
        heard(&mut phone, 0, name_of(other));
    }
    let way = yard.way();
    let token = permission(&way, &mut phone);
    let size = bytes.len() as u64;
    let said = way.send_piece(sound, &token, 0, size, &bytes[..PIECE], soon()).unwrap();
    assert_eq!((said.status, said.offset), (204, Some(PIECE as u64)));
    let screen =
        where_it_is(phone.ledger(), &WhereQuery { days_back: 1 }, &phone.standing().unwrap(), clock());
    let rows: Vec<_> = screen.unwrap().days.iter().flat_map(|day| day.rows.clone()).collect();
    let row = rows.iter().find(|row| !row.photos.is_empty()).unwrap();
    assert_eq!((row.photos.len(), row.photos[0].sound), (1, true));
    let done = exchange(&mut phone).unwrap();
    assert_eq!((done.photos.arrived, done.photos.left), (1, 0), "{done:?}");
    assert_eq!(done.photos.bytes, size - PIECE as u64, "what was there was not sent again");
    assert_eq!(at_the_shop(&yard, sound), Some(bytes));
    // Named by an entry, and still no sound that is kept.
    let put = |other: &[u8]| {
        let (first, rest) = other.split_at(other.len().min(PIECE));
        let name = name_of(other);
        let said = way.send_piece(name, &token, 0, other.len() as u64, first, soon()).unwrap();
        if rest.is_empty() {
            return said.status;
        }
        way.send_piece(name, &token, PIECE as u64, other.len() as u64, rest, soon()).unwrap().status
    };
    assert_eq!((put(&long), put(&cut)), (422, 422));
    assert_eq!(at_the_shop(&yard, name_of(&long)), None);
}
