//! Writes the JSON Schema of `notebook.json`, made from the types, on standard output.

use slope_of_light::notebook::file::schema;

fn main() -> serde_json::Result<()> {
    println!("{}", serde_json::to_string_pretty(&schema())?);
    Ok(())
}
