//! What the page does with a notebook that it took.

use slope_of_light::analysis::analyse;
use slope_of_light::bundle;
use slope_of_light::drawings::{ChartForm, charts};
use slope_of_light::notebook::{self, Imprint, Notebook};
use slope_of_light::report::Document;
use slope_of_light::view::view;
use slope_of_light::words::WordTable;

/// Everything that follows from a notebook, which is the same again after it was stored.
pub fn use_all(notebook: &Notebook, words: &WordTable) {
    let analysis = analyse(notebook);
    let view = view(notebook, &analysis);
    let charts_as = |form| charts(notebook.state(), &analysis, None, form, words);
    let charts = charts_as(ChartForm::Svg);
    let imprint = Imprint::of(notebook);
    Document::of(&view, &charts, None, &imprint, words).markdown();
    Document::of(&view, &charts_as(ChartForm::Latex), None, &imprint, words).latex();
    bundle::texts(notebook, &analysis, &view, &charts, None, words).expect("tables can be written");
    let again = notebook::read(&notebook::write(notebook)).expect("what was written can be read");
    assert!(again == *notebook, "another notebook comes back from storage");
}
