//! On the leaf Class: what colleagues say of the same notebooks, beside what one says oneself, and whose comments are whose.

use anyhow::{Context, Result, ensure};
use serde_json::json;
use slope_of_light::bundle;
use slope_of_light::notebook::{BenchField, Edit, write};

use crate::class::choose;
use crate::feedback::{BOTH, NAME, comment, handed_in, inside, said};
use crate::names;
use crate::page::eventually;
use crate::stage::Stage;

/// On the leaf Class a colleague's file stands beside what one writes oneself, to be read: what they say anew takes the place of
/// what they said before, and none of it goes into one's own file.
///
/// # Errors
/// When something is lost, or taken for one's own.
pub fn comments_of_a_colleague_stand_beside_ones_own(stage: &Stage) -> Result<()> {
    let (notebook, row, _) = handed_in()?;
    let page = stage.page()?;
    let file = page.home.write("handed-in.json", write(&notebook).as_bytes())?;
    choose(&page, std::slice::from_ref(&file))?;
    page.reads("#class-state", "1 file read")?;
    page.fill(NAME, "Dr Green")?;
    page.click("Open Ada Blue")?;
    comment(&page, "Result", "Two digits are enough.")?;
    page.click("Back to the class")?;
    for (name, general) in [("white.json", "See the splice."), ("white-2.json", "Better than I thought.")] {
        choose(&page, &[page.home.write(name, &said(&notebook, row, "Dr White", general)?)?])?;
        page.reads("#class-state", "Files with comments: 1.")?;
        page.reads("#class-table", "1 comment; Dr White: 2 comments")?;
        page.click("Open Ada Blue")?;
        page.reads("dialog.handed", general)?;
        let told =
            inside(&page, "return [...inside.querySelectorAll('.said')].map((box) => box.textContent)")?;
        let told = told.as_array().context("no comments")?;
        ensure!(
            told.len() == 2 && told.contains(&json!("Dr WhiteWhich edge?")),
            "beside the report: {told:?}"
        );
        ensure!(
            general != "Better than I thought." || !page.text("dialog.handed")?.contains("See the splice.")
        );
        page.click("Back to the class")?;
    }
    page.click("Open Ada Blue")?;
    page.click("Download these comments")?;
    let (_, back) = page.downloaded_as("json")?;
    let back = String::from_utf8(back)?;
    ensure!(back.contains("Dr Green") && back.contains("Two digits are enough."), "{back}");
    ensure!(
        !back.contains("White") && !back.contains("Which edge?"),
        "a colleague's words are in it: {back}"
    );
    page.is_silent()
}

/// Where one's own name is not there yet, no file gives it: what is read is only shown, until a person says which of the names is
/// theirs. So it is where one's own file bears the name in another spelling. What goes back has names that no two files share.
///
/// # Errors
/// When something is taken for one's own unasked, or is not taken.
pub fn whose_comments_are_ones_own_is_asked(stage: &Stage) -> Result<()> {
    let (mut notebook, row, _) = handed_in()?;
    let page = stage.page()?;
    let [own, others] = BOTH;
    let mut files = vec![page.home.write("handed-in.json", write(&notebook).as_bytes())?];
    for (from, general) in [("Dr White", others), ("Dr Green", own)] {
        files.push(page.home.write(&format!("{from}.json"), &said(&notebook, row, from, general)?)?);
    }
    let is_asked = |names: &str| page.reads("#class-state", &format!("comments by {names}. If one"));
    choose(&page, &files)?;
    is_asked("Dr Green and Dr White")?;
    for told in ["Dr Green: 2 comments", "Dr White: 2 comments"] {
        page.reads("#class-table", told)?;
    }
    page.reads("#class-feedback", "I am Dr Green")?;
    ensure!(page.value(NAME)?.is_empty(), "the name is {}", page.value(NAME)?);
    page.click("I am Dr Green")?;
    page.reads("#class-table", "2 comments; Dr White: 2 comments")?;
    page.reads("#class-feedback", "All are downloaded.")?;
    ensure!(page.value(NAME)? == "Dr Green", "the name is {}", page.value(NAME)?);
    page.click("Open Ada Blue")?;
    page.reads("dialog.handed h2", "Ada Blue")?;
    ensure!(page.value("Comment on the whole")? == own, "one's own is not there to be written on");
    page.click("Back to the class")?;

    page.fill(NAME, "Dr. Green")?;
    page.click("Clear the table")?;
    // Another one of the same names, but for capitals.
    let people = Edit::SetBench { field: BenchField::People, text: "ada blue".into() };
    notebook.apply(people, "2031-05-06T11:00:00Z")?;
    files.push(page.home.write("another.json", write(&notebook).as_bytes())?);
    choose(&page, &files)?;
    is_asked("Dr Green and Dr White")?;
    page.click("I am Dr Green")?;
    page.reads("#class-table", "2 comments; Dr White: 2 comments")?;
    page.click("Open ada blue")?;
    page.reads("dialog.handed h2", "ada blue")?;
    page.fill("Grade", "15/20")?;
    page.click("Back to the class")?;
    page.click("Download all comments (zip)")?;
    let mut names: Vec<String> =
        bundle::unpack(&page.downloaded()?.1)?.into_vec().into_iter().map(|file| file.name).collect();
    names.sort();
    ensure!(
        names == ["02_4711_Ada-Blue_comments.json", "02_4711_ada-blue_comments-2.json"],
        "they are called {names:?}"
    );
    page.is_silent()
}

/// Of names that were read only one is one's own: another one that is pressed gives back what was taken up under the first. What
/// bears no name is a colleague's until a person says otherwise, and stays two where there are two.
///
/// # Errors
/// When something is taken for one's own that is not, or is lost.
pub fn only_one_name_is_ones_own(stage: &Stage) -> Result<()> {
    let (notebook, row, _) = handed_in()?;
    let page = stage.page()?;
    let [own, others] = BOTH;
    let mut files = vec![page.home.write("handed-in.json", write(&notebook).as_bytes())?];
    for (from, general) in [("Dr White", others), ("Dr Green", own)] {
        files.push(page.home.write(&format!("{from}.json"), &said(&notebook, row, from, general)?)?);
    }
    choose(&page, &files)?;
    page.reads("#class-table", "Dr Green: 2 comments")?;
    page.click("I am Dr White")?;
    page.reads("#class-table", "2 comments; Dr Green: 2 comments")?;
    page.click("I am Dr Green")?;
    page.reads("#class-table", "2 comments; Dr White: 2 comments")?;
    page.click("Open Ada Blue")?;
    page.reads("dialog.handed h2", "Ada Blue")?;
    ensure!(page.value("Comment on the whole")? == own, "another one's comments are one's own");
    page.click("Back to the class")?;

    page.fill(NAME, "")?;
    page.click("Clear the table")?;
    files.truncate(1);
    for (name, general) in [("nobody.json", others), ("nobody-2.json", own)] {
        files.push(page.home.write(name, &said(&notebook, row, "", general)?)?);
    }
    choose(&page, &files)?;
    page.reads("#class-state", "comments by somebody who gives no name. If one")?;
    page.reads("#class-table", "A colleague: 2 comments; A colleague: 2 comments")?;
    page.click("What bears no name is mine")?;
    page.reads(names::MESSAGE, "On one notebook several say something without a name")?;
    page.reads("#class-table", "A colleague: 2 comments; A colleague: 2 comments")?;
    page.click("Clear the table")?;
    choose(&page, &[files.remove(0), files.remove(1)])?;
    page.reads("#class-table", "A colleague: 2 comments")?;
    page.click("What bears no name is mine")?;
    eventually(
        "one's own",
        || page.text("#class-table"),
        |told| told.contains("2 comments") && !told.contains("A colleague"),
    )?;
    page.click("Open Ada Blue")?;
    page.reads("dialog.handed h2", "Ada Blue")?;
    ensure!(page.value("Comment on the whole")? == own, "the first one by order is one's own");
    page.click("Back to the class")?;
    page.is_silent()
}

/// What was written on under one name bears the next one that is pressed, or typed as it was read, and that is said. What is one's
/// own by that name and can't be taken up waits, and is to be read as soon as one has another.
///
/// # Errors
/// When a name changes in silence, or something read is nowhere.
pub fn another_name_is_told(stage: &Stage) -> Result<()> {
    let (notebook, row, _) = handed_in()?;
    let page = stage.page()?;
    let [own, others] = BOTH;
    let mut files = vec![page.home.write("handed-in.json", write(&notebook).as_bytes())?];
    for (from, general) in [("Dr White", others), ("Dr Green", own)] {
        files.push(page.home.write(&format!("{from}.json"), &said(&notebook, row, from, general)?)?);
    }
    choose(&page, &files)?;
    page.click("I am Dr White")?;
    page.reads("#class-table", "2 comments; Dr Green: 2 comments")?;
    page.click("Open Ada Blue")?;
    page.reads("dialog.handed h2", "Ada Blue")?;
    page.fill("Grade", "15/20")?;
    page.click("Back to the class")?;
    choose(&page, &[page.home.write("again.json", &said(&notebook, row, "Dr White", others)?)?])?;
    page.reads("#class-state", "on which you have written already")?;
    page.fill(NAME, "Dr Green")?;
    page.reads(names::MESSAGE, "bears the name Dr Green now")?;
    page.reads("#class-table", "15/20 · 2 comments; Dr Green: 2 comments; Dr White: 2 comments")?;
    page.is_silent()
}
