//! Where the build asks for no tables to unwind by (`.cargo/config.toml` does for telephones), those that the standard
//! library and the C parts bring are left out of the shared library as well: it aborts on a panic, and they would be a
//! fourteenth of it.

use std::env;

fn main() {
    println!("cargo:rerun-if-changed=no-unwind.ld");
    let flags = env::var("CARGO_ENCODED_RUSTFLAGS").unwrap_or_default();
    if flags.split('\u{1f}').any(|flag| flag.ends_with("force-unwind-tables=no")) {
        let here = env::var("CARGO_MANIFEST_DIR").unwrap_or_default();
        println!("cargo:rustc-link-arg-cdylib=-Wl,-T,{here}/no-unwind.ld");
    }
}
