//! The hub as a process of its own, so that its memory and its work are its alone.

use std::io::{BufRead, BufReader, Write};
use std::num::NonZeroU32;
use std::path::Path;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::time::Duration;

use sumpbook_shop::Shop;
use sumpbook_shop::hub::{Hub, HubClock, ServeOptions, serve};
use sumpbook_simulation::fleet::{BEGIN_MS, at};

/// The name under which this program is a hub.
pub(crate) const ROLE: &str = "--hub-of";

/// Serves the shop of this folder; says its address, and a challenge for each line it is asked with.
pub(crate) fn serve_hub(folder: &str) {
    let threads = tokio::runtime::Runtime::new().unwrap();
    let shop = Shop::open(Path::new(folder)).unwrap();
    let hub = Hub::over(shop, HubClock::beginning_at(at(BEGIN_MS))).unwrap();
    let options =
        ServeOptions { address: "127.0.0.1:0".to_owned(), a_second: NonZeroU32::MAX, closes_days: false };
    let running = threads.block_on(serve(hub.clone(), &options)).unwrap();
    println!("{}", running.address);
    for asked in std::io::stdin().lines() {
        asked.unwrap();
        println!("{:032x}", u128::from_be_bytes(hub.fresh_challenge().unwrap()));
    }
    threads.block_on(running.stop()).unwrap();
}

/// A child that serves.
pub(crate) struct HubProcess {
    pub(crate) address: String,
    child: Child,
    to: ChildStdin,
    from: BufReader<ChildStdout>,
}

impl HubProcess {
    pub(crate) fn begin(folder: &Path) -> HubProcess {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .arg(ROLE)
            .arg(folder)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let to = child.stdin.take().unwrap();
        let from = BufReader::new(child.stdout.take().unwrap());
        let mut hub = HubProcess { address: String::new(), child, to, from };
        hub.address = hub.line();
        hub
    }

    fn line(&mut self) -> String {
        let mut line = String::new();
        self.from.read_line(&mut line).unwrap();
        line.trim().to_owned()
    }

    pub(crate) fn challenge(&mut self) -> [u8; 16] {
        self.to.write_all(b"\n").unwrap();
        u128::from_str_radix(&self.line(), 16).unwrap().to_be_bytes()
    }

    /// The most bytes of memory it ever had (Linux, `VmHWM`).
    pub(crate) fn memory(&self) -> u64 {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id())).unwrap();
        let most = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap();
        most.trim().trim_end_matches(" kB").trim().parse::<u64>().unwrap() * 1024
    }

    /// Processor time it took so far (Linux; a hundredth of a second is the step).
    pub(crate) fn processor_time(&self) -> Duration {
        let stat = std::fs::read_to_string(format!("/proc/{}/stat", self.child.id())).unwrap();
        let fields: Vec<&str> = stat.rsplit(')').next().unwrap().split_whitespace().collect();
        let ticks: u64 = fields[11].parse::<u64>().unwrap() + fields[12].parse::<u64>().unwrap();
        Duration::from_millis(ticks * 10)
    }

    pub(crate) fn stop(mut self) {
        drop(self.to);
        self.child.wait().unwrap();
    }
}
