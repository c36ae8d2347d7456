//! A hand-out: prepared by a teacher, worked on and handed in by a student.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use serde_json::json;

use slope_of_light::bundle;
use slope_of_light::notebook::{Asks, BenchField, Edit, Notebook, Piece, Rule, read, write};

use crate::class;
use crate::names;
use crate::page::{Page, eventually};
use crate::stage::Stage;

const QUESTION: &str = "Why is t0 not zero? <script>alert(1)</script> [a](javascript:alert(1))";

/// A teacher rules, asks, and gets a file; a student opens it, can neither edit nor undo what is fixed, sees what is
/// missing with a way to it, answers, and hands in one file whose name sorts.
///
/// # Errors
/// When it is otherwise.
pub fn a_hand_out_is_prepared_and_handed_in(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    page.click("Hand out to a class")?;
    page.click("Apply the usual choices")?;
    page.click("Add a text or question")?;
    page.fill("Text", QUESTION)?;
    page.click("Download the hand-out")?;
    let (file, bytes) = page.downloaded()?;
    ensure!(name_of(&file)?.ends_with("hand-out.zip"), "it is called {}", file.display());
    let made = page.reads("#prepare-made", "digest is")?;
    let digest = made.split("digest is ").nth(1).and_then(|rest| rest.get(..16)).context("a digest")?;
    ensure!(page.text("#handin")?.is_empty(), "a teacher is asked to hand in");
    student(&stage.page()?, &bytes, digest)?;
    page.is_silent()
}

fn student(page: &Page, hand_out: &[u8], digest: &str) -> Result<()> {
    page.open_file(&page.home.write("hand-out.zip", hand_out)?)?;
    page.reads(names::MESSAGE, "what is asked for is listed")?;
    page.reads("#handin-state", "missing")?;
    page.browser.run("document.querySelector('#told-action').click()", vec![])?;
    page.focuses("Cautions: read them, and enter your name there")?;
    page.reads("#handout-digest", digest)?;

    let only_read =
        "const boxes = [...document.querySelectorAll('#rails input'), document.querySelector('#bench-aim')];
        return boxes.length > 1 && boxes.every((box) => box.readOnly)";
    let fixed = || page.browser.run(only_read, vec![]);
    // What is out of sight is drawn a moment later.
    eventually("what is fixed can't be typed in", fixed, |fixed| *fixed == true)?;
    page.turn_to("#rails")?;
    page.reads("#rails", "Fixed by the hand-out")?;
    page.press_with_control('z')?;
    page.reads(names::MESSAGE, "Undo stops here")?;

    page.turn_to("#report")?;
    for (name, text) in [
        ("Names", "Ada Blue"),
        ("Student number", "0042"),
        ("Group", "B 2"),
        ("Date", "2026-01-05"),
        ("Discussion", "It agrees."),
    ] {
        page.fill(name, text)?;
    }
    page.click("Answer: Why is t0 not zero? <script>alert(1)</script> [a](javascrip…")?;
    page.focuses("Your answer")?;
    page.type_text("Unequal cables.")?;
    let question = "const box = document.activeElement.closest('fieldset');
        return [box.querySelectorAll('script, a, img').length, box.textContent.includes('<script>')]";
    ensure!(
        page.browser.run(question, vec![])? == json!([0, true]),
        "a question is not shown as the text that it is"
    );
    page.turn_to("#report")?;
    eventually("the answer is there", || page.text("#handin-missing"), |text| !text.contains("Answer:"))?;
    page.click("Cautions: read them, and enter your name there")?;
    page.focuses("Your name")?;
    page.type_text("Ada Blue")?;
    page.click("I have read this. It is no permission: start when the person in charge says so.")?;
    page.turn_to("#report")?;
    page.reads("#handin-state", "Everything that was asked for is there.")?;
    page.is_saved()?;
    page.reload()?;
    page.turn_to("#report")?;
    page.click("Download the file to hand in")?;
    let (file, bytes) = page.downloaded()?;
    ensure!(name_of(&file)? == "B-02_0042_Ada-Blue_2026-01-05.zip", "it is called {}", file.display());
    let handed = bundle::read(&bytes)?.notebook;
    let [task] = handed.state().handout.tasks.as_slice() else { anyhow::bail!("not one question") };
    ensure!(task.answer == "Unequal cables.", "the answer is not in the file");
    ensure!(handed.handed_out() > 0, "the file is no hand-out any more");
    page.is_silent()
}

fn name_of(file: &Path) -> Result<&str> {
    file.file_name().and_then(|name| name.to_str()).with_context(|| format!("{} has no name", file.display()))
}

/// A student's file that claims to be the teacher's, by a rule or by a second hand-out, is refused with the reason, and
/// the open notebook stays as it is.
///
/// # Errors
/// When it is otherwise.
pub fn a_claimed_teachers_layer_is_refused(stage: &Stage) -> Result<()> {
    let page = stage.blank_page()?;
    page.fill("Title of the notebook", "Mine")?;
    let mut teacher = Notebook::new();
    let text = Edit::SetTask(1, Piece::Readings, Asks::Nothing, "Read on.".into());
    for edit in [Edit::SetPiece(Piece::Aim, Rule::Fixed), text] {
        teacher.apply(edit, "")?;
    }
    let handed = write(&teacher.hand_out("")?);
    let claims = [
        Edit::HandOut,
        Edit::SetPiece(Piece::Aim, Rule::Open),
        Edit::SetBench { field: BenchField::LeastRows, text: "0".into() },
    ];
    for (number, claim) in claims.iter().enumerate() {
        let entry = serde_json::to_string(claim)?;
        let claimed = handed.replace("\n]}", &format!(",\n{{\"edit\":{entry}}}\n]}}"));
        ensure!(read(&claimed).is_err(), "{entry} was taken");
        let name = format!("claimed-{number}.json");
        page.open_file(&page.home.write(&name, claimed.as_bytes())?)?;
        let told = page.reads(names::MESSAGE, &format!("{name} was not opened:"))?;
        ensure!(told.contains("belongs to the hand-out itself"), "it says {told:?}");
        page.sees(names::TITLE, "Mine")?;
    }
    page.open_file(&page.home.write("handed.json", handed.as_bytes())?)?;
    page.turn_to("#readings")?;
    page.reads("#readings", "Read on.")?;
    page.is_silent()
}

/// A hand-out with a text of 10 MB of letters that stumble over one another opens, with that text folded, and the page goes on
/// answering; so does a class with a name of that kind.
///
/// # Errors
/// When it does not.
pub fn a_text_of_ten_megabytes_stops_nothing(stage: &Stage) -> Result<()> {
    // Control characters, marks that turn the writing, and accents without a letter (Unicode 16.0, 23.1, 23.2 and 7.9).
    let oddities: String = ('\u{1}'..'\u{20}')
        .chain("\u{202e}\u{2066}\u{200b}\u{feff}\u{ffff}".chars())
        .chain('\u{300}'..'\u{340}')
        .collect();
    let text = oddities.repeat(10_000_000 / oddities.len());
    let page = stage.blank_page()?;
    let mut teacher = Notebook::new();
    teacher.apply(Edit::SetTask(1, Piece::Readings, Asks::Words, text.clone()), "")?;
    page.open_file(&page.home.write("large.json", write(&teacher.hand_out("")?).as_bytes())?)?;
    page.reads(names::MESSAGE, "is open")?;
    page.fill("Title of the notebook", "Mine")?;
    page.is_saved()?;
    eventually("the text is folded", || page.count("#task-1-box details"), |count| *count == 1)?;
    let mut named = Notebook::new();
    named.apply(Edit::SetBench { field: BenchField::People, text }, "")?;
    class::choose(&page, &[page.home.write("named.json", write(&named).as_bytes())?])?;
    page.reads("#class-table", "…")?;
    page.is_silent()
}

/// Of a notebook made from a hand-out the class says that what this asks for is missing, and nothing that it does not ask
/// for; and of one in whose file a rule was changed, that most were handed out otherwise.
///
/// # Errors
/// When it is otherwise.
pub fn a_class_misses_what_was_asked_for(stage: &Stage) -> Result<()> {
    let page = stage.page()?;
    let mut teacher = Notebook::new();
    teacher.apply(Edit::SetPiece(Piece::Date, Rule::Needed), "")?;
    let handed = write(&teacher.hand_out("")?);
    class::choose(&page, &[page.home.write("asked.json", handed.as_bytes())?])?;
    let rows = eventually("the notebook is read", || class::rows(&page), |rows| rows.len() == 1)?;
    let told = rows.concat().join(" ");
    ensure!(told.contains("Date") && !told.contains("Discussion"), "it says {told:?}");

    let changed = handed.replace("[\"date\",\"needed\"]", "[\"date\",\"open\"]");
    ensure!(changed != handed, "the rule stands elsewhere in {handed}");
    let files = [("again.json", &handed), ("changed.json", &changed)];
    let files = files.map(|(name, text)| page.home.write(name, text.as_bytes()));
    class::choose(&page, &files.into_iter().collect::<Result<Vec<_>>>()?)?;
    let rows = eventually("two more are read", || class::rows(&page), |rows| rows.len() == 3)?;
    let otherwise =
        rows.iter().map(|row| row.concat().contains("not the same as in most of these notebooks"));
    ensure!(otherwise.collect::<Vec<_>>() == [false, false, true], "the table says {rows:?}");
    page.is_silent()
}

/// Marks of `CommonMark` in a text of a hand-out become elements, by the examples of its specification (version 0.31.2, its
/// numbers beside them); HTML, pictures and addresses that are no page of the web become nothing but words.
///
/// # Errors
/// When it is otherwise.
pub fn texts_of_a_hand_out_have_marks(stage: &Stage) -> Result<()> {
    /// The text, and what its elements are as HTML.
    const CASES: [(&str, &str); 10] = [
        ("*foo bar*", "<p><em>foo bar</em></p>"),           // 350
        ("**foo bar**", "<p><strong>foo bar</strong></p>"), // 378
        ("`foo`", "<p><code>foo</code></p>"),               // 328
        ("~~~\nfoo\n~~~", "<pre><code>foo</code></pre>"),
        ("- a\n- b", "<ul><li>a</li><li>b</li></ul>"),
        ("4. one", "<ol start=\"4\"><li>one</li></ol>"),
        ("> quoted *text*", "<blockquote><p>quoted <em>text</em></p></blockquote>"),
        ("\\*not emphasized*", "<p>*not emphasized*</p>"), // 14
        (
            "<b onclick=\"a()\">x</b> ![a picture](https://example.org/a.png) [b](javascript:alert(1)) [c](data:text/html,x)",
            "<p>&lt;b onclick=\"a()\"&gt;x&lt;/b&gt; a picture b c</p>",
        ),
        (
            "[page](https://example.org/a)",
            "<p><a href=\"https://example.org/a\" target=\"_blank\" rel=\"noreferrer\">page</a></p>",
        ),
    ];
    let page = stage.blank_page()?;
    let mut teacher = Notebook::new();
    // So deep that a browser has trouble to lay it out: shown as typed.
    let deep = [">".repeat(500), format!("<p>{}</p>", "&gt;".repeat(500))];
    let cases = CASES.map(|(text, html)| [text.to_owned(), html.to_owned()]);
    let tasks = cases.iter().chain([&deep]).zip(1..);
    for ([text, _], task) in tasks.clone() {
        teacher.apply(Edit::SetTask(task, Piece::Readings, Asks::Nothing, text.clone()), "")?;
    }
    page.open_file(&page.home.write("marks.json", write(&teacher.hand_out("")?).as_bytes())?)?;
    page.turn_to("#readings")?;
    for ([text, html], task) in tasks {
        let script = format!("return document.querySelector('#task-{task}-box .typed')?.innerHTML ?? ''");
        let shown = || Ok(page.browser.run(&script, vec![])?.as_str().unwrap_or_default().to_owned());
        eventually(&format!("{text:?} is shown as {html}"), shown, |shown| shown == html)?;
    }
    page.is_silent()
}
