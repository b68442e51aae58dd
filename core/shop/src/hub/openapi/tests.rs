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

/// Fields of the structure in a file that reads queries: names of `struct NAME { field: ... }`, as they are renamed.
fn fields(text: &str, name: &str) -> BTreeSet<String> {
    let Some((before, body)) = text.split_once(&format!("struct {name} {{")) else { return BTreeSet::new() };
    let body = &body[..body.find("\n}").unwrap()];
    let attributes = &before[before.rfind("\n\n").unwrap_or(0)..];
    let kebab = attributes.contains("kebab-case");
    let mut renamed = None;
    let mut found = BTreeSet::new();
    for line in body.lines().map(str::trim) {
        if let Some(name) = line.strip_prefix("#[serde(rename = \"") {
            renamed = Some(name.split('"').next().unwrap().to_owned());
        } else if !line.starts_with("//") && !line.starts_with('#') {
            let Some((field, _)) = line.split_once(':') else { continue };
            let field = field.rsplit(' ').next().unwrap();
            found.insert(renamed.take().unwrap_or(if kebab {
                field.replace('_', "-")
            } else {
                field.to_owned()
            }));
        }
    }
    found
}

/// Every function that takes a `Query<NAME>`, with the fields of NAME.
fn queries(folder: &Path, found: &mut Vec<(String, BTreeSet<String>)>) {
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.is_dir() {
            queries(&path, found);
            continue;
        }
        if path.extension().is_none_or(|kind| kind != "rs") || path.to_string_lossy().contains("tests") {
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap();
        let beside = std::fs::read_to_string(path.with_file_name("view.rs")).unwrap_or_default();
        for call in text.split("): Query<").skip(1) {
            let name = call.split('>').next().unwrap();
            if name.starts_with("Vec<") {
                continue;
            }
            let mut named = fields(&text, name);
            named.extend(fields(&beside, name));
            found.push((format!("{}: {name}", path.display()), named));
        }
    }
}

/// Whose pages stand in which folder or file, and at which addresses.
const PAGES: [(&str, &str); 16] = [
    ("hub/calendar.rs", "/calendar/"),
    ("console/day/", "/"),
    ("console/units/", "/"),
    ("console/unit/", "/units/{door}"),
    ("console/certificates/", "/certificates"),
    ("console/cab_report/", "/units/{door}/cab-report"),
    ("console/labels/", "/drum-label"),
    ("console/paper/", "/paper"),
    ("console/due/", "/due"),
    ("console/programme/", "/programme"),
    ("console/crew/", "/crew"),
    ("console/people/", "/people"),
    ("console/in_out/take.rs", "/in-and-out/"),
    ("console/in_out/mod.rs", "/in-and-out"),
    ("console/sign_in.rs", "/sign-in"),
    ("console/language.rs", "/words"),
];

#[test]
fn every_field_of_a_query_that_is_read_stands_in_the_document() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut read = Vec::new();
    for folder in ["hub", "console"] {
        queries(&source.join(folder), &mut read);
    }
    assert!(read.len() > 12, "{read:?}");
    for (place, fields) in read {
        assert!(!fields.is_empty(), "{place}: its structure is not found");
        let at = PAGES.iter().find(|(file, _)| place.contains(file));
        let (_, at) = at.unwrap_or_else(|| panic!("{place}: say at which addresses its pages stand"));
        let of: Vec<_> = ALL.iter().filter(|operation| operation.path.starts_with(at)).collect();
        for field in &fields {
            let stands = of.iter().any(|operation| operation.query.contains(&field.as_str()));
            assert!(stands, "{place} reads '{field}', and no operation at {at} says so");
        }
    }
    // Of the air for a job the fields are named by the page's own list.
    let air = ALL.iter().find(|operation| operation.path == "/air").unwrap();
    assert!(air.query.len() > 20);
}
