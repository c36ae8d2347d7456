//! The leaves of the notebook, turned as a person turns them.

use anyhow::{Context, Result};
use serde_json::json;

use crate::names;
use crate::page::Page;

impl Page<'_> {
    /// Turns to the leaf on which an element stands, and brings it into sight.
    ///
    /// # Errors
    /// When there is no such element.
    pub fn turn_to(&self, selector: &str) -> Result<()> {
        let script = format!(
            "const place = document.querySelector(arguments[0]);
             (function () {{ {} }})(place); return place !== null",
            names::TURN
        );
        self.browser.run(&script, vec![json!(selector)]).with_context(|| format!("turning to {selector}"))?;
        Ok(())
    }

    /// Does something on each leaf, turned up by the outline; on its right page too, where one page is shown at a time.
    ///
    /// # Errors
    /// When that fails on one.
    pub fn on_each_leaf(&self, work: impl Fn() -> Result<()>) -> Result<()> {
        for leaf in names::LEAVES {
            self.turn_to(&format!("[data-leaf={leaf}]"))?;
            work().with_context(|| format!("on the leaf “{leaf}”"))?;
            if self.shows_one_page()? {
                self.turn_to(&format!("#beside > [data-on~={leaf}]"))?;
                work().with_context(|| format!("on the right page of the leaf “{leaf}”"))?;
            }
        }
        Ok(())
    }

    /// Whether one page is shown at a time, as on a phone.
    fn shows_one_page(&self) -> Result<bool> {
        let turns =
            self.browser.run("return document.getElementById('turn-over').checkVisibility()", vec![])?;
        Ok(turns == json!(true))
    }

    /// Whether something of a name can be seen without turning to another leaf.
    ///
    /// # Errors
    /// When the browser does not answer.
    pub fn is_in_sight(&self, name: &str) -> Result<bool> {
        let script = format!(
            "{} const found = (function () {{ {} }})(arguments[0]); return found?.checkVisibility() ?? false",
            names::SEEN,
            names::BY_NAME
        );
        Ok(self.browser.run(&script, vec![json!(name)])? == json!(true))
    }
}
