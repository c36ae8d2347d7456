//! Names for those who do not see the page: the browser's own accessibility tree.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::page::{Page, Stage};

/// What must have a name: everything that can be used, and every picture.
const NAMED: [&str; 9] =
    ["button", "textbox", "combobox", "checkbox", "radio", "link", "listbox", "image", "dialog"];

/// Everything on the page that can be used has a name, in the dialogs too.
///
/// # Errors
/// When something has none.
pub fn everything_has_a_name(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.browser.debug("Accessibility.enable", &json!({}))?;
    all_named(&page, 200).context("on the page")?;
    for (open, close) in [("Notebooks", "Close"), ("Settings", "Close"), ("Strike out row 1", "Cancel")] {
        page.click(open)?;
        all_named(&page, 4).with_context(|| format!("after “{open}”"))?;
        page.click(close)?;
    }
    Ok(())
}

fn all_named(page: &Page, at_least: usize) -> Result<()> {
    let tree = page.browser.debug("Accessibility.getFullAXTree", &json!({}))?;
    let nodes = tree["nodes"].as_array().context("a tree")?;
    let role = |node: &Value| node["role"]["value"].as_str().unwrap_or_default().to_owned();
    let used =
        nodes.iter().filter(|node| node["ignored"] == json!(false) && NAMED.contains(&role(node).as_str()));
    let mut count = 0;
    for node in used {
        count += 1;
        let name = node["name"]["value"].as_str().unwrap_or_default();
        ensure!(!name.trim().is_empty(), "a {} has no name: {node}", role(node));
    }
    ensure!(count >= at_least, "only {count} things can be used");
    Ok(())
}
