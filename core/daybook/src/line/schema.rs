//! The shape of a line as JSON Schema, for editors and for programs that write lines.

use serde_json::Value;

use super::Line;

/// JSON Schema (draft 2020-12) of a line.
pub fn schema() -> Value {
    schemars::schema_for!(Line).to_value()
}
