//! Writes the code with which another language calls the bindings' library, read out of the library itself:
//! `cargo run -p sumpbook-bindgen -- generate target/debug/libsumpbook_bindings.so --language kotlin --out-dir DIR`.

fn main() {
    uniffi::uniffi_bindgen_main();
}
