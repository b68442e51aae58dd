//! `GET /v1/openapi.json`: what this hub answers, as OpenAPI 3.1 says it.
//!
//! Written by hand, one line an operation ([`operations`]); a test holds it against the routes that stand in the
//! program and against what a running hub answers.

mod operations;
#[cfg(test)]
mod tests;

use axum::Json;
use serde_json::{Map, Value, json};

use operations::{ALL, Answer, Operation, Take};

/// The document.
pub(super) async fn openapi() -> Json<Value> {
    Json(document())
}

/// Every operation, under its path and its method; a page also under its path with `.json`.
fn document() -> Value {
    let mut paths = Map::new();
    let mut add = |path: String, operation: &Operation, described: Value| {
        let of_path = paths.entry(path).or_insert_with(|| json!({}));
        if let Value::Object(methods) = of_path {
            methods.insert(operation.method.to_owned(), described);
        }
    };
    for operation in ALL {
        add(operation.path.to_owned(), operation, described(operation, true));
        if operation.answer == Answer::Page {
            add(format!("{}.json", operation.path), operation, described(operation, false));
        }
    }
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Sumpbook hub",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "What phones and the console ask of a shop's hub. Every refusal says what happened, what is kept and what to do.",
            "license": { "name": "Apache-2.0", "identifier": "Apache-2.0" },
        },
        "paths": paths,
        "components": { "securitySchemes": {
            "session": { "type": "apiKey", "in": "cookie", "name": "__Host-session", "description": "Given by POST /sign-in." },
            "photos": { "type": "http", "scheme": "bearer", "description": "64 hexadecimal digits out of an exchange's answer; a quarter of an hour, for one phone." },
        } },
    })
}

/// One operation. `both`: it answers as a page, or as JSON where that is asked for.
fn described(operation: &Operation, both: bool) -> Value {
    let mut described = json!({
        "operationId": id(operation, both),
        "summary": operation.says,
        "responses": responses(operation, both),
    });
    let mut set = |key: &str, value: Value| {
        if let Value::Object(fields) = &mut described {
            fields.insert(key.to_owned(), value);
        }
    };
    let parameters = parameters(operation);
    if !parameters.is_empty() {
        set("parameters", Value::Array(parameters));
    }
    match operation.take {
        Take::Nothing => {}
        Take::Parcel => set("requestBody", body("application/zstd", &json!({}))),
        Take::Piece => set("requestBody", body("application/octet-stream", &json!({}))),
        Take::Files => {
            let binary = json!({ "type": "string", "format": "binary" });
            let form = json!({ "type": "object", "additionalProperties": binary });
            set("requestBody", body("multipart/form-data", &form));
        }
        Take::Form => {
            let form = json!({ "type": "object", "additionalProperties": { "type": "string" } });
            set("requestBody", body("application/x-www-form-urlencoded", &form));
        }
    }
    match operation.answer {
        Answer::Photo { .. } => set("security", json!([{ "photos": [] }])),
        _ if !operation.open => set("security", json!([{ "session": [] }])),
        _ => {}
    }
    described
}

/// Its name for a program that is made out of the document.
fn id(operation: &Operation, both: bool) -> String {
    let words = operation.path.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty());
    let mut id = operation.method.to_owned();
    for word in words {
        id.push('-');
        id.push_str(word);
    }
    if both { id } else { format!("{id}-json") }
}

fn body(media: &str, schema: &Value) -> Value {
    json!({ "required": true, "content": { media: { "schema": schema } } })
}

fn parameters(operation: &Operation) -> Vec<Value> {
    let mut parameters = Vec::new();
    for part in operation.path.split('/') {
        if let Some(name) = part.strip_prefix('{').and_then(|part| part.strip_suffix('}')) {
            let schema = match name {
                "day" => json!({ "type": "string", "format": "date" }),
                "sha256" => json!({ "type": "string", "pattern": "^[0-9a-f]{64}$" }),
                _ => json!({ "type": "string", "minLength": 1 }),
            };
            parameters.push(json!({ "name": name, "in": "path", "required": true, "schema": schema }));
        }
    }
    for name in operation.query {
        let schema = json!({ "type": "string" });
        parameters.push(json!({ "name": name, "in": "query", "required": false, "schema": schema }));
    }
    if operation.take == Take::Piece {
        for name in ["upload-offset", "upload-length"] {
            let schema = json!({ "type": "integer", "minimum": 0 });
            parameters.push(json!({ "name": name, "in": "header", "required": true, "schema": schema }));
        }
    }
    parameters
}

fn responses(operation: &Operation, both: bool) -> Value {
    let (words, json) = ("text/plain; charset=utf-8", "application/json");
    let object = json!({ "schema": { "type": "object" } });
    let page = |says: &str| match both {
        true => {
            let html = json!({ "schema": { "type": "string" } });
            json!({ "description": says, "content": { "text/html; charset=utf-8": html, json: object } })
        }
        false => json!({ "description": says, "content": { json: object } }),
    };
    let plain =
        |says: &str| json!({ "description": says, "content": { words: { "schema": { "type": "string" } } } });
    let bare = |says: &str| json!({ "description": says });
    let mut all = Map::new();
    let mut say = |status: &str, what: Value| {
        all.insert(status.to_owned(), what);
    };
    match operation.answer {
        Answer::Page => say("200", page("The page, or its record.")),
        Answer::Json => say("200", json!({ "description": "The record.", "content": { json: object } })),
        Answer::Goes => say("303", bare("Done: go on there.")),
        Answer::File => say("200", bare("The file.")),
        Answer::Sound => {
            say("200", bare("The sound."));
            say("206", bare("The part of it that `range` asks for."));
        }
        Answer::Parcel => {
            let parcel = json!({ "application/zstd": { "schema": {} } });
            say("200", json!({ "description": "The shop's signed answer.", "content": parcel }));
            say("400", plain("This is no request of a phone."));
            say("401", plain("The shop does not know this phone, or its signature does not hold."));
            say("403", plain("Another fleet's phone, or a code that does not hold."));
            say("409", plain("The challenge no longer holds; a fresh one comes with this."));
            say("413", plain("More than one parcel holds."));
        }
        Answer::Photo { adds } => {
            say("200", bare("How far it is: `upload-offset`, `upload-complete`."));
            say("401", plain("No permission, or one that ran out."));
            say("404", plain("No entry here names that photo or sound."));
            if adds {
                say("201", bare("It is whole."));
                say("204", bare("The piece is kept."));
                say("400", plain("No beginning, no length, or a piece that did not come whole."));
                say("409", plain("The piece does not begin where the last one ended."));
                say("413", plain("More than a piece, or a photo, may have."));
                say(
                    "422",
                    plain("Together the pieces are not what the name says, or neither photo nor sound."),
                );
            }
        }
    }
    if !matches!(operation.answer, Answer::Parcel | Answer::Photo { .. }) && !operation.machine {
        say("400", bare("The address or the form does not read."));
        say("404", page("Nothing of that name."));
        if !operation.open {
            say("303", bare("Nobody is signed in, or it is done: go on there."));
            say("401", page("Nobody is signed in."));
            say("403", page("This person may only read, or the form does not come from this console."));
            say("422", page("The shop says no, in a sentence."));
        }
        say("413", page("More than a form holds."));
        say("415", bare("Not the form that is asked for."));
    }
    say("408", bare("It took too long."));
    say("429", plain("Too many requests from one address or one phone: wait as `retry-after` says."));
    say("503", bare("Too many write, the disk is full, or the hub stops: try again."));
    Value::Object(all)
}
