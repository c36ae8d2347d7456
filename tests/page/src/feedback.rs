//! What a teacher says of a notebook that was handed in: written beside its places on the leaf Class, taken away as a file, and
//! opened by the student.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use slope_of_light::bundle::{self, Entry, sha256_hex};
use slope_of_light::notebook::{Asks, BenchField, Edit, Notebook, Piece, write};
use slope_of_light::simulated::random;

use crate::access::{load_checker, unbroken};
use crate::class::choose;
use crate::hands::drop_files;
use crate::looks::fits;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

/// Where a teacher says who they are.
pub(crate) const NAME: &str = "Your name, as students see it";
/// What would run, or lead away, if it came to the page as markup.
const HOSTILE: &str =
    "Which edge? <img src=x onerror=\"document.title='run'\"> [here](javascript:alert(1)) \u{202e}";
/// The report that is read on the leaf Class.
const INSIDE: &str = "document.querySelector('dialog.handed > .table-box').shadowRoot";

/// A teacher comments on a section, a row, a question, and a text that is missing, and gives a mark; takes all away as a zip, and
/// reads it in again. The student opens the file: without the notebook it says which is meant; with it each comment stands beside
/// what it is about, outlives a reload, changes nothing of the notebook, and can be removed and put back.
///
/// # Errors
/// When it is otherwise.
pub fn comments_go_back_beside_what_they_are_about(stage: &Stage) -> Result<()> {
    let (notebook, row, task) = handed_in()?;
    let teacher = stage.page()?;
    let file = teacher.home.write("handed-in.json", write(&notebook).as_bytes())?;
    choose(&teacher, std::slice::from_ref(&file))?;
    teacher.reads("#class-state", "1 file read")?;
    teacher.click("Open Ada Blue")?;
    teacher.reads("dialog.handed h2", "Ada Blue")?;
    for (place, text) in [
        ("Result", "Two digits are enough."),
        ("row 3", HOSTILE),
        ("Answer: Why not?", "Well put."),
        ("Discussion", "Write one."),
    ] {
        comment(&teacher, place, text)?;
    }
    comment(&teacher, "Aim", "a slip")?;
    inside(
        &teacher,
        "[...inside.querySelectorAll('.said')].find((box) => box.textContent.includes('Aim')).querySelector('button').click()",
    )?;
    teacher.fill("Comment on the whole", "Well measured.\nSee the splice.")?;
    teacher.fill("Grade", "15/20")?;
    teacher.click("Back to the class")?;
    teacher.reads("#class-table", "15/20 · 5 comments")?;
    teacher.reads("#class-feedback", "Not downloaded yet: 1.")?;
    teacher.click("Clear the table")?;
    teacher.reads(names::MESSAGE, "on 1 notebook is in no file yet")?;
    teacher.reads("#class-table", "15/20 · 5 comments")?;
    teacher.fill(NAME, "Dr Green")?;
    teacher.click("Download all comments (zip)")?;
    let (zip, bytes) = teacher.downloaded()?;
    teacher.reads("#class-feedback", "All are downloaded.")?;
    let files = bundle::unpack(&bytes)?.into_vec();
    let [back] = files.as_slice() else { anyhow::bail!("{} files", files.len()) };
    ensure!(back.name == "02_4711_Ada-Blue_comments.json", "it is called {}", back.name);
    let said: Value = serde_json::from_slice(&back.bytes)?;
    let comments = said["feedback"]["comments"].as_array().context("comments")?;
    ensure!(
        comments.get(1) == Some(&json!({ "place": { "row": row }, "text": HOSTILE })) && comments.len() == 4,
        "it holds {comments:?}"
    );

    teacher.click("Clear the table")?;
    choose(&teacher, &[zip, file.clone()])?;
    teacher.reads("#class-state", "Files with comments: 1.")?;
    teacher.reads("#class-table", "15/20 · 5 comments")?;
    teacher.click("Open Ada Blue")?;
    eventually(
        "what was written is there again",
        || inside(&teacher, "return [...inside.querySelectorAll('.said textarea')].map((box) => box.value)"),
        |texts| texts.as_array().is_some_and(|texts| texts.len() == 4 && texts.contains(&json!(HOSTILE))),
    )?;
    ensure!(teacher.value("Grade")? == "15/20", "the mark is not there again");
    teacher.is_silent()?;

    let student = stage.page()?;
    let back = student.home.write("comments.json", &back.bytes)?;
    student.open_file(&back)?;
    student.reads(names::MESSAGE, "That notebook is not in this browser")?;
    student.open_file(&student.home.write("mine.json", write(&notebook).as_bytes())?)?;
    student.reads(names::MESSAGE, "is open")?;
    student.is_saved()?;
    let before = log(&student)?;
    student.open_file(&back)?;
    student.reads("#feedback", "Grade: 15/20")?;
    stands(&student, row, task)?;
    student.reload()?;
    stands(&student, row, task)?;
    ensure!(log(&student)? == before, "the notebook is another");

    student.fill("Names", "Ada Blue, Ben Red")?;
    student.reads("#feedback", "Since then 1 entry was added")?;
    student.click("Notebooks")?;
    student.click("New blank notebook")?;
    student.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    ensure!(student.count(".said")? == 0, "another notebook has the comments");
    // It leads back to the one that went on.
    student.open_file(&back)?;
    student.reads("#feedback", "Since then 1 entry was added")?;
    student.click("Remove these comments")?;
    eventually("they are gone", || student.count(".said"), |left| *left == 0)?;
    student.browser.run("document.querySelector('#told-action').click()", vec![])?;
    student.reads("#feedback", "Well measured.")?;
    student.is_silent()
}

/// What two teachers say of a notebook stands side by side, also where the second file leads to a notebook that is not open. What one
/// says anew takes the place of what they said before, with a word, and comes back by undo; what is removed is one file alone. Files that
/// are dropped together are all taken.
///
/// # Errors
/// When something is lost.
pub fn comments_of_two_teachers_stand_side_by_side(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let (notebook, row) = two_teachers_say(&page)?;
    let better = said(&notebook, row, "Dr Green", "Better than I thought.")?;
    page.open_file(&page.home.write("green-2.json", &better)?)?;
    page.reads(names::MESSAGE, "take the place of earlier ones from Dr Green")?;
    all_stand(&page, ["Better than I thought.", "See the splice."], 2)?;
    ensure!(!page.text("#feedback")?.contains("Well measured."), "what was replaced stands there");
    page.browser.run("document.querySelector('#told-action').click()", vec![])?;
    all_stand(&page, BOTH, 2)?;
    page.click("Remove these comments")?;
    all_stand(&page, ["Well measured.", "Dr Green"], 1)?;
    page.reload()?;
    all_stand(&page, ["Well measured.", "Dr Green"], 1)?;
    let mut together = Vec::new();
    for (from, general) in [("Dr White", "See the splice."), ("Dr Grey", "Which ruler?")] {
        together.push((format!("{from}.json"), String::from_utf8(said(&notebook, row, from, general)?)?));
    }
    drop_files(&page, "body", &together)?;
    all_stand(&page, ["See the splice.", "Which ruler?"], 3)?;
    page.is_silent()
}

/// What one window takes away of what is said is that file alone, though another window has opened one more meanwhile, and so it is
/// with what it puts back.
///
/// # Errors
/// When something that was kept is gone.
pub fn a_window_removes_no_comments_that_it_does_not_know(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let (notebook, row, _) = handed_in()?;
    let [own, others] = BOTH;
    page.open_file(&page.home.write("mine.json", write(&notebook).as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.is_saved()?;
    page.open_file(&page.home.write("green.json", &said(&notebook, row, "Dr Green", own)?)?)?;
    page.reads("#feedback", own)?;
    let first = page.browser.tab()?;
    page.browser.open_tab()?;
    page.go(&stage.address)?;
    page.is_ready()?;
    page.open_file(&page.home.write("white.json", &said(&notebook, row, "Dr White", others)?)?)?;
    all_stand(&page, BOTH, 2)?;
    page.browser.switch_to(&first)?;
    page.click("Remove these comments")?;
    eventually(
        "the other one's are there",
        || page.text("#feedback"),
        |told| told.contains(others) && !told.contains(own),
    )?;
    page.browser.run("document.querySelector('#told-action').click()", vec![])?;
    all_stand(&page, BOTH, 2)?;
    page.is_silent()
}

/// What two teachers say of the whole of a notebook.
pub(crate) const BOTH: [&str; 2] = ["Well measured.", "See the splice."];

/// Opens a notebook that was handed in, and what two teachers say of it, the second of them while another notebook is open. Gives
/// the notebook, and the row that both comment on.
///
/// # Errors
/// When something of it does not stand there.
pub(crate) fn two_teachers_say(page: &Page) -> Result<(Notebook, u32)> {
    let (notebook, row, _) = handed_in()?;
    page.open_file(&page.home.write("mine.json", write(&notebook).as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.is_saved()?;
    let [first, second] = BOTH;
    page.open_file(&page.home.write("green.json", &said(&notebook, row, "Dr Green", first)?)?)?;
    page.reads("#feedback", first)?;
    page.click("Notebooks")?;
    page.click("New blank notebook")?;
    page.sees(names::ROWS_USED, &names::rows_used(0, 0))?;
    page.open_file(&page.home.write("white.json", &said(&notebook, row, "Dr White", second)?)?)?;
    all_stand(page, BOTH, 2)?;
    Ok((notebook, row))
}

/// That texts stand in what is said of the whole, and so many comments beside their places.
///
/// # Errors
/// When they do not.
pub(crate) fn all_stand(page: &Page, texts: [&str; 2], comments: usize) -> Result<()> {
    for text in texts {
        page.reads("#feedback", text)?;
    }
    eventually("all comments stand there", || page.count(".said"), |count| *count == comments).map(drop)
}

/// A file with what a teacher says of a notebook and of one of its rows.
///
/// # Errors
/// When it can't be written.
pub(crate) fn said(notebook: &Notebook, row: u32, from: &str, general: &str) -> Result<Vec<u8>> {
    let mut digest = String::new();
    for entry in notebook.log() {
        digest = sha256_hex(format!("{digest}\n{}", serde_json::to_string(entry)?).as_bytes());
    }
    let of = json!({
        "entries": notebook.log().len(), "digest": digest, "title": "", "people": "Ada Blue", "student_number": "4711",
        "group": "2", "date": "",
    });
    let feedback = json!({
        "of": of, "from": from, "at": "2031-05-07T10:00:00Z", "general": general, "mark": "",
        "comments": [{ "place": { "row": row }, "text": "Which edge?" }],
    });
    let file = json!({ "kind": "slope-of-light feedback", "format": 1, "feedback": feedback });
    Ok(serde_json::to_vec(&file)?)
}

/// Files that are no such file, or are more than is taken, are refused with what to do, and nothing is kept of them; so is one
/// that a student packed with a notebook in a teacher's name.
///
/// # Errors
/// When one is taken.
pub fn hostile_comments_are_refused(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.is_saved()?;
    let sound = json!({
        "kind": "slope-of-light feedback", "format": 1,
        "feedback": {
            "of": { "entries": 3, "digest": "0f".repeat(32), "title": "<b>T</b>", "people": HOSTILE, "student_number": "", "group": "", "date": "" },
            "from": "", "at": "", "general": "", "mark": "", "comments": [],
        }
    });
    let changed = |change: &dyn Fn(&mut Value)| {
        let mut file = sound.clone();
        change(&mut file);
        file.to_string()
    };
    let files = [
        (changed(&|file| file["format"] = json!(7)), "later version"),
        (changed(&|file| file["feedback"]["of"]["digest"] = json!("<svg onload=alert(1)>")), "are damaged"),
        (
            changed(&|file| {
                file["feedback"]["comments"] = json!([{ "place": { "section": "__proto__" }, "text": "" }]);
            }),
            "are damaged",
        ),
        (
            changed(&|file| {
                file["feedback"]["comments"] = json!([{ "place": { "row": 1 }, "text": ["<b>"] }]);
            }),
            "are damaged",
        ),
        (changed(&|file| file["feedback"]["log"] = json!([])), "are damaged"),
        (
            changed(&|file| file["feedback"]["general"] = json!("x".repeat(1 << 21))),
            "more than this page takes",
        ),
        (sound.to_string(), "That notebook is not in this browser"),
    ];
    for (place, (text, why)) in files.iter().enumerate() {
        page.open_file(&page.home.write(&format!("{place}.json"), text.as_bytes())?)?;
        let told = page.reads(names::MESSAGE, &format!("{place}.json was not opened"))?;
        ensure!(told.contains(why), "it says {told:?}, not {why:?}");
        ensure!(!told.contains('\u{202e}'), "a name turns what is said: {told:?}");
    }
    ensure!(page.count("#told img")? + page.count(".said")? == 0, "something of them is on the page");
    let (notebook, row, _) = handed_in()?;
    let entry = |name: &str, bytes: Vec<u8>| Entry { name: name.into(), bytes };
    let forged = said(&notebook, row, "Dr Green", "20/20")?;
    let zip =
        bundle::pack(&[entry("mine.json", write(&notebook).into_bytes()), entry("comments.json", forged)])?;
    choose(&page, &[page.home.write("forged.zip", &zip)?])?;
    let told = page.reads("#class-table", "a student could have put them there")?;
    ensure!(!told.contains("2 comments"), "they are taken: {told:?}");
    page.is_silent()
}

/// Both ends keep to the rules of accessibility, and fit, wide and narrow.
///
/// # Errors
/// When they do not.
pub fn comments_are_for_everyone(stage: &Stage) -> Result<()> {
    let (notebook, row, task) = handed_in()?;
    let page = stage.page()?;
    let file = page.home.write("handed-in.json", write(&notebook).as_bytes())?;
    choose(&page, std::slice::from_ref(&file))?;
    page.reads("#class-state", "1 file read")?;
    page.click("Open Ada Blue")?;
    for (place, text) in [
        ("Result", "Two digits are enough."),
        ("row 3", HOSTILE),
        ("Answer: Why not?", "Well put."),
        ("Discussion", "Write one."),
    ] {
        comment(&page, place, text)?;
    }
    load_checker(&page)?;
    let sizes = [(1366, 768), (360, 740)];
    let resize = |(width, height): (u64, u64)| {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        page.browser.debug("Emulation.setDeviceMetricsOverride", &size)
    };
    for size in sizes {
        resize(size)?;
        unbroken(&page).with_context(|| format!("{} px wide, the teacher", size.0))?;
    }
    page.fill("Grade", "15/20")?;
    page.click("Download these comments")?;
    let (back, _) = page.downloaded_as("json")?;
    page.click("Open a copy among my notebooks")?;
    page.reads(names::MESSAGE, "is open")?;
    page.open_file(&back)?;
    page.reads("#feedback", "Grade: 15/20")?;
    for size in sizes {
        resize(size)?;
        for place in
            ["#feedback", "#result .said", &format!("#row-{row} .said"), &format!("#task-{task}-box .said")]
        {
            page.turn_to(place)?;
            fits(&page, size.0)?;
            unbroken(&page).with_context(|| format!("{} px wide, at {place}", size.0))?;
        }
    }
    page.is_silent()
}

/// A notebook that was handed out with a question and handed in without a discussion; one of its rows, and the question.
///
/// # Errors
/// When it can't be made.
pub(crate) fn handed_in() -> Result<(Notebook, u32, u32)> {
    let (mut notebook, _) = random::bench(3).run(3)?;
    let task = notebook.state().new_number();
    let edits = [
        Edit::SetTask(task, Piece::Result, Asks::Words, "Why not?".into()),
        Edit::HandOut,
        Edit::Answer(task, "Because.".into()),
        Edit::SetBench { field: BenchField::People, text: "Ada Blue".into() },
        Edit::SetBench { field: BenchField::StudentNumber, text: "4711".into() },
        Edit::SetBench { field: BenchField::Group, text: "2".into() },
    ];
    for edit in edits {
        notebook.apply(edit, "2031-05-06T10:00:00Z")?;
    }
    let row = notebook.state().rows.get(2).context("a third row")?.id;
    Ok((notebook, row, task))
}

/// Does something in the report that is read.
pub(crate) fn inside(page: &Page, script: &str) -> Result<Value> {
    page.browser.run(&format!("const inside = {INSIDE}; {script}"), vec![])
}

pub(crate) fn comment(page: &Page, place: &str, text: &str) -> Result<()> {
    comment_at(page, &format!(".spot[aria-label=\"Comment on: {place}\"]"), text)
        .with_context(|| place.to_owned())
}

/// Writes a comment at the first place of a selector in the report that is read.
///
/// # Errors
/// When there is no such place.
pub(crate) fn comment_at(page: &Page, place: &str, text: &str) -> Result<()> {
    let button = format!("inside.querySelector({})", json!(place));
    eventually(
        "there is a place for it",
        || inside(page, &format!("return {button} !== null")),
        |there| *there == json!(true),
    )?;
    inside(
        page,
        &format!(
            "{button}.click(); const box = inside.activeElement; box.value = {}; box.dispatchEvent(new Event('input', {{ bubbles: true }}))",
            json!(text)
        ),
    )?;
    Ok(())
}

/// Each comment stands beside what it is about, as text.
fn stands(page: &Page, row: u32, task: u32) -> Result<()> {
    page.reads("#feedback", "Dr Green")?;
    page.reads("#feedback", "Well measured.")?;
    for (place, text) in [
        ("#result .said".to_owned(), "Two digits"),
        (format!("#row-{row} .said"), "<img src=x onerror"),
        (format!("#task-{task}-box .said"), "Well put."),
        ("#report-fields .said".to_owned(), "Write one."),
    ] {
        page.reads(&place, text)?;
    }
    let made = "return [...document.querySelectorAll('.said, #feedback')].filter((box) => box.querySelector('img, input, textarea, [href^=javascript]')).length";
    ensure!(page.browser.run(made, vec![])? == json!(0), "a comment became markup");
    let title = page.browser.run("return document.title", vec![])?;
    ensure!(title != json!("run"), "a comment ran");
    Ok(())
}

/// The stored notebooks.
fn log(page: &Page) -> Result<Value> {
    let script = "return Object.keys(localStorage).filter((key) => /notebook/.test(key)).sort().map((key) => localStorage.getItem(key))";
    page.browser.run(script, vec![])
}
