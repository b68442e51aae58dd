//! The document against the program: no route is missing in it, and none stands in it that is not there.

use std::collections::BTreeSet;
use std::path::Path;

use super::*;

/// Every path that a `.route(` of the hub and the console names, with the methods beside it.
fn routes(folder: &Path, found: &mut BTreeSet<(String, String)>) {
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.is_dir() {
            routes(&path, found);
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap();
        if path.ends_with("tests.rs") || path.extension().is_none_or(|kind| kind != "rs") {
            continue;
        }
        for call in text.split(".route(").skip(1) {
            let call = call.trim_start();
            let Some((path, after)) = call.strip_prefix('"').and_then(|call| call.split_once('"')) else {
                continue;
            };
            let end = closing(after);
            for method in ["get", "post", "put", "head", "delete", "patch"] {
                let called = format!("{method}(");
                let named = after[..end].match_indices(&called).any(|(at, _)| {
                    !after[..at].ends_with(|c: char| c.is_ascii_alphanumeric() || c == '_' || c == ':')
                });
                if named {
                    found.insert((path.to_owned(), method.to_owned()));
                }
            }
        }
    }
}

/// Where the call ends that these are the last words of.
fn closing(call: &str) -> usize {
    let mut depth = 1;
    let end = call.find(|c| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        depth == 0
    });
    end.unwrap_or(call.len())
}

#[test]
fn every_route_of_the_program_stands_in_the_document_and_no_other() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut found = BTreeSet::new();
    routes(&source.join("hub"), &mut found);
    routes(&source.join("console"), &mut found);
    assert!(found.len() > 10, "{found:?}");
    let named =
        ALL.iter().map(|operation| (operation.path.to_owned(), operation.method.to_owned())).collect();
    let missing: Vec<_> = found.difference(&named).collect();
    let more: Vec<_> = named.difference(&found).collect();
    assert!(missing.is_empty() && more.is_empty(), "missing: {missing:?}, and nowhere served: {more:?}");
}

#[test]
fn names_are_unlike_and_paths_name_their_parameters() {
    let document = document();
    let mut ids = BTreeSet::new();
    for (path, methods) in document["paths"].as_object().unwrap() {
        for (method, operation) in methods.as_object().unwrap() {
            assert!(ids.insert(operation["operationId"].as_str().unwrap().to_owned()), "{method} {path}");
            let braces = path.matches('{').count();
            let parameters = operation["parameters"]
                .as_array()
                .map_or(0, |all| all.iter().filter(|one| one["in"] == "path").count());
            assert_eq!(braces, parameters, "{path}");
        }
    }
    assert!(document["paths"].get("/day/{day}.json").is_some());
}
