//! A way to the hub that breaks after so many bytes, as a signal does.

use std::io::{Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

/// Passes bytes on to a hub until so many went that way.
pub struct Cutting {
    address: String,
    left: Arc<AtomicI64>,
}

impl Cutting {
    /// A whole way to the hub at this address. It ends with the test's process.
    pub fn before(hub: &str) -> Cutting {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap().to_string();
        let left = Arc::new(AtomicI64::new(i64::MAX));
        let (hub, count) = (hub.to_owned(), left.clone());
        std::thread::spawn(move || {
            for phone in listener.incoming() {
                let (Ok(phone), Ok(hub)) = (phone, TcpStream::connect(&hub)) else { continue };
                let back = (hub.try_clone().unwrap(), phone.try_clone().unwrap());
                let count = count.clone();
                std::thread::spawn(move || pass(phone, hub, Some(&count)));
                std::thread::spawn(move || pass(back.0, back.1, None));
            }
        });
        Cutting { address, left }
    }

    /// Its address.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// From now on it breaks after so many bytes towards the hub.
    pub fn cut_after(&self, bytes: u64) {
        self.left.store(i64::try_from(bytes).unwrap(), Ordering::SeqCst);
    }
}

fn pass(mut from: TcpStream, mut to: TcpStream, left: Option<&AtomicI64>) {
    let mut buffer = [0; 4_096];
    while let Ok(read) = from.read(&mut buffer) {
        let may = match left {
            None => read,
            Some(left) => {
                let before = left.fetch_sub(read as i64, Ordering::SeqCst);
                read.min(usize::try_from(before).unwrap_or(0))
            }
        };
        if read == 0 || to.write_all(&buffer[..may]).is_err() || may < read {
            break;
        }
    }
    let _ = from.shutdown(Shutdown::Both);
    let _ = to.shutdown(Shutdown::Both);
}
