//! Where the tests play, and the pages that they begin with.

use std::path::PathBuf;

use anyhow::Result;
use serde_json::json;

use crate::driver::Driver;
use crate::engine::{PLAIN_HOST, StoresData};
use crate::home::Home;
use crate::names;
use crate::page::Page;

/// Where the tests play: the driver and the packed page.
pub struct Stage {
    /// The driver.
    pub driver: Driver,
    /// The address at which the page is served.
    pub address: String,
    /// The folder of the packed page.
    pub dist: PathBuf,
    /// The address at which the page's modules are served one by one, where they are.
    pub parts: Option<String>,
    /// By how many times the processor of every first page is slowed.
    pub slowing: f64,
}

impl Stage {
    /// The page in a browser of its own that has seen nothing yet.
    ///
    /// # Errors
    /// When it does not open.
    pub fn page(&self) -> Result<Page<'_>> {
        self.page_at(&self.address, Home::new()?)
    }

    /// The page at some address, in a browser that keeps its things in `home`.
    ///
    /// # Errors
    /// When it does not open.
    pub fn page_at(&self, address: &str, home: Home) -> Result<Page<'_>> {
        let browser = self.driver.browser(&home.folder("profile"), &home.folder("downloads"))?;
        let page = Page { browser, home };
        if self.slowing > 1.0 {
            page.browser.debug("Emulation.setCPUThrottlingRate", &json!({ "rate": self.slowing }))?;
        }
        page.go(address)?;
        Ok(page)
    }

    /// A browser whose settings forbid pages to store anything, without a page yet.
    ///
    /// # Errors
    /// When it does not start.
    pub fn forgetful_browser(&self) -> Result<Page<'_>> {
        let home = Home::new()?;
        let (profile, downloads) = (home.folder("profile"), home.folder("downloads"));
        let browser = self.driver.browser_that(StoresData::Never, &profile, &downloads)?;
        Ok(Page { browser, home })
    }

    /// The address at which the page comes over plain HTTP, as from another machine.
    pub fn plain_address(&self) -> String {
        self.address.replace("127.0.0.1", PLAIN_HOST)
    }

    /// The page with a blank notebook.
    ///
    /// # Errors
    /// When it does not open.
    pub fn blank_page(&self) -> Result<Page<'_>> {
        self.blank_page_at(&self.address)
    }

    /// The same of the page at some address.
    ///
    /// # Errors
    /// When it does not open.
    pub fn blank_page_at(&self, address: &str) -> Result<Page<'_>> {
        let page = self.page_at(address, Home::new()?)?;
        page.list_notebooks()?;
        page.click("New blank notebook")?;
        page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
        Ok(page)
    }
}
