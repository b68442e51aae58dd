//! What the hub says of itself in OpenAPI against the running hub: by hand, and by a program that makes requests out
//! of the document.

use std::process::Command;

use sumpbook_hub_tests::{Browser, WHO, Yard, exchange, permission, walk};
use sumpbook_trade::record::Digest;

/// A yard with something in it, and a permission to send photos.
fn yard() -> (Yard, [u8; 32]) {
    let mut yard = Yard::new(env!("CARGO_BIN_EXE_hub"), 2, 2);
    yard.begin();
    let folder = tempfile::tempdir().unwrap();
    let mut phone = yard.phone(folder.path(), 1, &[0]);
    walk(&mut phone, 0, 1);
    assert!(exchange(&mut phone).unwrap().whole);
    let token = permission(&yard.way(), &mut phone);
    (yard, token)
}

#[test]
fn every_page_of_the_document_is_served_also_as_json() {
    let (yard, _) = yard();
    let mut browser = Browser::of(&yard);
    browser.sign_in(WHO.0, WHO.1);
    let document: serde_json::Value = serde_json::from_slice(&browser.get("/v1/openapi.json").body).unwrap();
    assert_eq!(document["openapi"], "3.1.0");
    let (mut pages, mut views) = (0, 0);
    for (path, methods) in document["paths"].as_object().unwrap() {
        if methods.get("get").is_none() || path.contains("{sha256}") || path.contains("{tag}") {
            continue;
        }
        let asked = path.replace("{day}", "2026-10-19");
        if asked.contains('{') {
            continue;
        }
        // One page asks for a unit, one for an oil of this fleet; to the others it says nothing wrong.
        let shown = browser.get(&format!("{asked}?unit=TH-01&family=mineral&grade=ISO+VG+46"));
        assert!(shown.status < 400, "{asked}: {}", shown.status);
        pages += 1;
        if path.ends_with(".json") {
            let read: Result<serde_json::Value, _> = serde_json::from_slice(&shown.body);
            assert!(read.is_ok_and(|read| read.is_object()), "{asked}");
            assert_eq!(shown.header("content-type"), Some("application/json"), "{asked}");
            views += 1;
        }
    }
    assert!(pages > 5 && views > 2, "{pages} {views}");
}

#[test]
fn requests_made_out_of_the_document_bring_no_server_error() {
    if Command::new("schemathesis").arg("--version").output().is_err() {
        println!("skipped: schemathesis is not here; tests/run installs it");
        return;
    }
    let (yard, token) = yard();
    let mut browser = Browser::of(&yard);
    browser.sign_in(WHO.0, WHO.1);
    let folder = tempfile::tempdir().unwrap();
    let base = format!("https://{}", yard.address());
    let mut command = Command::new("schemathesis");
    command.current_dir(folder.path()).arg("run").arg(format!("{base}/v1/openapi.json"));
    command.args(["--url", &base, "--tls-verify", "false", "--checks", "not_a_server_error"]);
    command.args(["--header", &format!("Cookie: {}", browser.cookie().unwrap())]);
    command.args(["--header", &format!("Origin: {base}")]);
    command.args(["--header", &format!("Authorization: Bearer {}", Digest(token))]);
    command.env("SCHEMATHESIS_HOOKS", "openapi_hooks").env("PYTHONPATH", env!("CARGO_MANIFEST_DIR"));
    command.env("PYTHONDONTWRITEBYTECODE", "1");
    command.args(["--max-examples", "12", "--phases", "examples,coverage,fuzzing", "--seed", "7"]);
    // Far below what one address may ask.
    command.args(["--rate-limit", "40/s", "--no-color", "--request-timeout", "10"]);
    let done = command.output().unwrap();
    let told = format!("{}{}", String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    println!(
        "{}",
        told.lines().rev().take(25).collect::<Vec<_>>().into_iter().rev().collect::<Vec<_>>().join("\n")
    );
    assert!(done.status.success(), "{told}");
}
