//! Writes the JSON Schema of `notebook.json`, made from the types, on standard output.

use slope_of_light::notebook::file::NotebookFile;

fn main() -> serde_json::Result<()> {
    let schema = schemars::schema_for!(NotebookFile);
    println!("{}", serde_json::to_string_pretty(&schema)?);
    Ok(())
}
