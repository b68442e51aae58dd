//! A yard: a real hub in a process of its own, and phones that reach it over TLS.

mod browser;
mod cutting;
mod picture;
mod raw;

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use sumpbook_daybook::exchange::{ShopCode, begin_epoch, request, take_answer};
use sumpbook_daybook::parcel::Invitation;
use sumpbook_daybook::phone::online::{Exchanged, Hub, OnlineError};
use sumpbook_daybook::phone::{Daybook, KeySeal, KeySealError, Parts};
use sumpbook_simulation::entries::section;
use sumpbook_simulation::fleet::{BEGIN_MS, beginning, ledger_in, phone_key, root, shop_key, truck};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, Stamp};
use tempfile::TempDir;

pub use browser::{Browser, Shown, WHO};
pub use cutting::Cutting;
pub use picture::{heard, names, noise, picture, takes};
pub use raw::Raw;

/// A key that is the same in every run.
pub struct Fixed(pub [u8; 32]);

impl KeySeal for Fixed {
    fn seal(&self, _: &[u8; 32]) -> Result<(), KeySealError> {
        Ok(())
    }

    fn open(&self) -> Result<Option<[u8; 32]>, KeySealError> {
        Ok(Some(self.0))
    }
}

/// A shop's folder and its hub.
pub struct Yard {
    folder: TempDir,
    binary: &'static str,
    address: String,
    hub: Option<Child>,
}

impl Yard {
    /// A shop with this many units and phones 1 to `phones`; the hub is not begun yet. `binary` is the command.
    pub fn new(binary: &'static str, units: u32, phones: u8) -> Yard {
        Yard::new_in(binary, &std::env::temp_dir(), units, phones)
    }

    /// The same in a folder of its own within another.
    pub fn new_in(binary: &'static str, within: &Path, units: u32, phones: u8) -> Yard {
        let folder = tempfile::tempdir_in(within).unwrap();
        Yard::in_folder(folder.path(), units, phones);
        // A port that was free a moment ago, so that a hub begun again stands where it stood.
        let free = std::net::TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
        Yard { folder, binary, address: free.to_string(), hub: None }
    }

    /// The same shop in a folder and at an address of its own: somebody copied it.
    pub fn again_elsewhere(&self) -> Yard {
        assert!(self.hub.is_none(), "what is being written to is not copied");
        let free = std::net::TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
        Yard { folder: copied(self.folder()), binary: self.binary, address: free.to_string(), hub: None }
    }

    /// Puts an older copy of the folder back over it.
    pub fn put_back(&mut self, copy: &Path) {
        assert!(self.hub.is_none(), "what is being written to is not put back");
        self.folder = copied(copy);
    }

    /// As `restore` does: the shop says that it begins anew from a copy.
    pub fn begins_new_epoch(&self) {
        assert!(self.hub.is_none(), "one writes at a time");
        begin_epoch(&mut ledger_in(self.folder(), shop_key(), 0)).unwrap();
    }

    fn in_folder(folder: &Path, units: u32, phones: u8) {
        let named: Vec<u8> = (1..=phones).collect();
        ledger_in(folder, shop_key(), 0).record(&beginning(units, &named, 9_000_000), BEGIN_MS).unwrap();
        std::fs::write(folder.join("shop.key"), format!("{}\n", Digest(*shop_key().secret()))).unwrap();
        std::fs::write(folder.join("fleet.id"), format!("{}\n", root().fleet)).unwrap();
    }

    /// The shop's folder.
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Where the hub stands.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Begins the hub and waits until it answers.
    pub fn begin(&mut self) {
        self.begin_with(Stdio::inherit(), &[]);
    }

    /// Begins it so that it tells what it does, into a file.
    pub fn begin_told(&mut self) -> tempfile::NamedTempFile {
        let log = tempfile::NamedTempFile::new().unwrap();
        self.begin_with(log.reopen().unwrap().into(), &["--verbose"]);
        log
    }

    fn begin_with(&mut self, log: Stdio, more: &[&str]) {
        let mut command = Command::new(self.binary);
        command.args(["--shop".as_ref(), self.folder.path().as_os_str()]).arg("serve");
        command.args(["--address", &self.address, "--close-by-hand"]).args(more);
        command.stdout(Stdio::piped()).stderr(log);
        if std::env::var_os("SUMPBOOK_HUB_TALKS").is_some() {
            command.arg("--verbose");
        }
        let mut child = command.spawn().unwrap();
        let mut line = String::new();
        BufReader::new(child.stdout.take().unwrap()).read_line(&mut line).unwrap();
        assert!(line.contains("The hub answers"), "{line}");
        self.hub = Some(child);
    }

    /// Kills the hub: SIGKILL, at once.
    pub fn kill(&mut self) {
        let mut child = self.hub.take().unwrap();
        child.kill().unwrap();
        child.wait().unwrap();
    }

    /// The hub's process, for whoever ends it in another way.
    pub fn taken(&mut self) -> Child {
        self.hub.take().unwrap()
    }

    /// Resident memory of the hub's process, bytes (`/proc/PID/status`, VmRSS); none where there is no such file.
    pub fn memory(&self) -> Option<u64> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.hub.as_ref()?.id())).ok()?;
        let line = status.lines().find(|line| line.starts_with("VmRSS:"))?;
        line.split_whitespace().nth(1)?.parse::<u64>().ok().map(|kib| kib * 1024)
    }

    /// Phone `number` in a folder of its own, begun with a code; the shop knows it already.
    pub fn phone(&self, folder: &Path, number: u8, units: &[u32]) -> Daybook {
        let seal = Fixed(*phone_key(number).secret());
        if sumpbook_daybook::phone::Home::exists(folder) {
            return Daybook::open(folder, &seal).unwrap();
        }
        let invitation = Invitation {
            shop: root().shop,
            code: [number; 16],
            hub: Some(self.address.clone()),
            fleet_name: "Tern Hollow Water".to_owned(),
            expires_ms: u64::MAX,
        };
        let units = units.iter().map(|number| truck(*number)).collect();
        let code = ShopCode { root: root(), invitation, units };
        Daybook::enrol_by_code(folder, &code, &format!("phone {number}"), &seal).unwrap()
    }

    /// A way to the hub that is kept warm.
    pub fn way(&self) -> Hub {
        Hub::new(&self.address, root().fleet, root().shop).unwrap()
    }
}

impl Drop for Yard {
    fn drop(&mut self) {
        if self.hub.is_some() {
            self.kill();
        }
    }
}

/// The clock of a test: it begins at [`BEGIN_MS`] and runs on.
pub fn clock() -> Stamp {
    static BEGUN: std::sync::OnceLock<Instant> = std::sync::OnceLock::new();
    let since = BEGUN.get_or_init(Instant::now).elapsed().as_millis();
    Stamp::from_parts(BEGIN_MS + i64::try_from(since).unwrap(), -360).unwrap()
}

/// Exchanges for at most ten seconds.
///
/// # Errors
/// As the exchange.
pub fn exchange(phone: &mut Daybook) -> Result<Exchanged, OnlineError> {
    phone.exchange_once(&clock, Instant::now() + Duration::from_secs(10))
}

/// Records a walk round a unit and returns its id.
pub fn walk(phone: &mut Daybook, unit: u32, number: u32) -> EntryId {
    phone.record(Parts::about(truck(unit), section(number, &[]).into()), clock()).unwrap()
}

/// A copy of a folder with everything in it.
pub fn copied(from: &Path) -> TempDir {
    let to = tempfile::tempdir().unwrap();
    copy_into(from, to.path());
    to
}

fn copy_into(from: &Path, to: &Path) {
    for file in std::fs::read_dir(from).unwrap() {
        let file = file.unwrap();
        let there = to.join(file.file_name());
        if file.path().is_dir() {
            std::fs::create_dir(&there).unwrap();
            copy_into(&file.path(), &there);
        } else {
            std::fs::copy(file.path(), there).unwrap();
        }
    }
}

/// Exchanges by hand, once, and returns the permission to send photos.
pub fn permission(way: &Hub, phone: &mut Daybook) -> [u8; 32] {
    let soon = Instant::now() + Duration::from_secs(20);
    let challenge = way.exchange(b"", soon).unwrap().challenge.unwrap();
    let asked = request(phone.ledger_mut(), challenge, clock()).unwrap();
    let said = way.exchange(&asked.bytes, soon).unwrap();
    take_answer(phone.ledger_mut(), asked.digest, &said.body, clock(), clock()).unwrap().token.unwrap()
}
