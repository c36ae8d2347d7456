//! What was shown as saved is there again: after a reload, and after the browser was killed that very moment.

use anyhow::{Context, Result, ensure};

use crate::bench;
use crate::names;
use crate::page::{Page, Stage, eventually};

/// The title of the bench notebook in these tests.
const TITLE_GIVEN: &str = "Bench by the window";
/// How often a blank notebook is killed: which one opens again would at times be right by chance.
const DEATHS: usize = 6;

/// An edit of the bench notebook, and how to see that it is there.
struct Edit {
    what: &'static str,
    make: fn(&Page) -> Result<()>,
    is_there: fn(&Page) -> Result<bool>,
}

/// In the order in which they are made; each one must outlive all the deaths that follow.
const EDITS: [Edit; 5] = [
    Edit {
        what: "a remark",
        make: |page| page.type_in_cell("Remark", 1, "door open"),
        is_there: |page| Ok(page.cell("Remark", 1)? == "door open"),
    },
    Edit {
        what: "the air’s temperature",
        make: |page| page.fill("Temperature", "21.5"),
        is_there: |page| Ok(page.value("Temperature")? == "21.5"),
    },
    Edit {
        what: "a struck row",
        make: |page| {
            page.click("Strike out row 4")?;
            page.type_text("carriage slipped")?;
            page.click("Strike out")
        },
        is_there: |page| Ok(page.text("#readings-table")?.contains("Struck out: carriage slipped")),
    },
    Edit {
        what: "a pasted row",
        make: |page| page.paste(&names::new_cell("Rail"), "A\t5500\t2\t1.00\t10.17"),
        is_there: |page| Ok(page.count(names::ROWS)? == 6 && page.cell("Edge B", 6)? == "10.17"),
    },
    Edit {
        what: "a field of the rail",
        make: |page| page.fill("Last mark", "6500"),
        is_there: |page| Ok(page.value("Last mark")? == "6500"),
    },
];

/// The browser is killed as soon as an edit is shown as saved; started again, it has that edit and all before.
///
/// # Errors
/// When it has not.
pub fn saved_outlives_a_kill(stage: &Stage) -> Result<()> {
    let mut page = stage.blank_page()?;
    page.fill("Title of the notebook", TITLE_GIVEN)?;
    bench::fill(&page)?;
    for (round, edit) in EDITS.iter().enumerate() {
        (edit.make)(&page)?;
        page.is_saved()?;
        let home = page.kill()?;
        page = stage.page_at(&stage.address, home)?;
        if page.text(names::TITLE)? != TITLE_GIVEN {
            page.click("Notebooks")?;
            page.click(&format!("Open: {TITLE_GIVEN}"))?;
        }
        all_there(&page, &EDITS[..=round]).with_context(|| format!("killed after {}", edit.what))?;
    }
    page.is_silent()
}

/// After the browser was killed, the page opens on the notebook that was open, not on another one.
///
/// # Errors
/// When it does not.
pub fn opens_again_on_the_notebook_in_hand(stage: &Stage) -> Result<()> {
    for death in 1..=DEATHS {
        let page = stage.blank_page()?;
        page.fill("Title of the notebook", TITLE_GIVEN)?;
        page.is_saved()?;
        let page = stage.page_at(&stage.address, page.kill()?)?;
        let title = page.text(names::TITLE)?;
        ensure!(title == TITLE_GIVEN, "after kill {death} the page opens on {title:?}");
    }
    Ok(())
}

/// A reload right after an edit shows everything again, what was not yet sent included.
///
/// # Errors
/// When it does not.
pub fn saved_outlives_a_reload(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    bench::fill(&page)?;
    for edit in &EDITS {
        (edit.make)(&page)?;
    }
    page.is_saved()?;
    let result = page.result()?;
    page.reload()?;
    all_there(&page, &EDITS)?;
    let again = page.result()?;
    ensure!(again == result, "the result was {result:?}, after the reload {again:?}");
    page.is_saved()?;
    page.is_silent()
}

fn all_there(page: &Page, edits: &[Edit]) -> Result<()> {
    for edit in edits {
        eventually(&format!("{} is there", edit.what), || (edit.is_there)(page), |there| *there)?;
    }
    Ok(())
}
