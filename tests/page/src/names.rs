//! By what the tests know the parts of the page: ids that carry meaning, and the names that are read out.

/// What opens a dialog, and what closes it.
pub const DIALOGS: [(&str, &str); 5] = [
    ("Notebooks", "Close"),
    ("Settings", "Close"),
    ("Strike out row 1", "Cancel"),
    ("Replay", "Close"),
    ("History", "Close"),
];
/// The result in the strip that stays in sight.
pub const RESULT: &str = "#strip-result";
/// How many rows are used.
pub const ROWS_USED: &str = "#strip-rows";
/// Whether all is saved.
pub const SAVED: &str = "#saved";
/// What is said there from the first key of a text until it is stored.
pub const SAVING: &str = "Saving…";
/// What needs an answer: something can't be stored, another window writes.
pub const BANNER: &str = "#banner";
/// The title of the notebook.
pub const TITLE: &str = "#title";
/// The message at the foot of the page.
pub const MESSAGE: &str = "#told";
/// The input for a bundle or notebook file.
pub const FILE: &str = "#open-file";
/// The rows of the readings, without the one that begins the next.
pub const ROWS: &str = "#readings-table > tbody[data-row]:not([data-row=new])";
/// The table of what follows from the line.
pub const RESULT_FIGURES: &str = "#result-figures";
/// The notebooks in the list.
pub const NOTEBOOKS: &str = "#notebook-list > li";
/// The demo in the folder of the packed page.
pub const DEMO: &str = "demo/typed-readings.en.json";
/// The drawings.
pub const DRAWINGS: [&str; 3] = ["#bench-plot", "#line-plot", "#residual-plot"];

/// The name of a cell of the readings.
pub fn cell(column: &str, row: usize) -> String {
    format!("{column}, row {row}")
}

/// The name of a cell in the line that begins the next row.
pub fn new_cell(column: &str) -> String {
    format!("{column}, new row")
}

/// How many rows are used, as the page says it.
pub fn rows_used(used: usize, all: usize) -> String {
    format!("{used} of {all} {} included", if all == 1 { "row" } else { "rows" })
}

/// Tells whether something would be seen if its leaf were turned up and the bench unfolded, and what could be read of it then.
pub const SEEN: &str = "
    const onItsLeaf = (node, look) => {
        const away = node?.closest('[data-leaf][hidden], [data-on][hidden]');
        const folded = node?.closest('#apparatus-box:not([open])');
        away?.removeAttribute('hidden');
        folded?.setAttribute('open', '');
        try {
            return look(node);
        } finally {
            away?.setAttribute('hidden', 'until-found');
            folded?.removeAttribute('open');
        }
    };
    const isSeen = (node) => onItsLeaf(node, () => node.checkVisibility());";

/// Finds what can be used in the page, on whatever leaf, or in the dialog that lies over it, by the name that is read
/// out; to be put after [`SEEN`].
pub const BY_NAME: &str = "
    const nameOf = (node) => node.getAttribute('aria-label')
        ?? (node.labels?.[0] ?? node).textContent.replace(/\\s+/g, ' ').trim();
    const place = document.querySelector('dialog[open]') ?? document;
    const all = place.querySelectorAll('button, a, input, select, textarea, summary');
    const named = [...all].filter((node) => nameOf(node) === arguments[0]);
    return named.find((node) => node.checkVisibility()) ?? named.find(isSeen) ?? null;";

/// Turns to the leaf, and where one page is shown at a time to the page, on which something stands: by the outline and
/// the button between the pages, as a person would; unfolds the bench for what stands in it. Then brings it into sight.
pub const TURN: &str = "
    const [node] = arguments;
    const [away, beside] = [node.closest('[data-leaf][hidden], [data-on][hidden]'), node.closest('#beside')];
    const leaf = (away?.dataset.leaf ?? away?.dataset.on)?.split(' ')[0];
    if (leaf) document.querySelector(`#outline a[href='#${leaf}']`).click();
    const over = document.getElementById('turn-over');
    const isOver = document.body.classList.contains('over');
    const onALeaf = node.closest('[data-leaf], #beside') !== null;
    if (onALeaf && over.checkVisibility() && isOver !== (beside !== null)) over.click();
    if (!node.closest('summary')) node.closest('#apparatus-box:not([open])')?.firstElementChild.click();
    node.scrollIntoView({ block: 'center' });";

/// The leaves by the names in their addresses.
pub const LEAVES: [&str; 6] = ["bench", "readings", "line", "uncertainty", "report", "class"];

/// The name of what has the focus.
pub const FOCUSED: &str = "
    const node = document.activeElement;
    return node.getAttribute('aria-label') ?? (node.labels?.[0] ?? node).textContent.replace(/\\s+/g, ' ').trim();";

/// Whether the notebook is open, and all sections were brought or are known to have failed.
pub const READY: &str = "return document.body?.dataset.complete === 'true'";

/// Returns after two frames were drawn.
pub const TWO_FRAMES: &str =
    "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null))))";
