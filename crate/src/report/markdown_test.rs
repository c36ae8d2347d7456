//! The report in Markdown, as a parser that others keep reads it (pulldown-cmark, by CommonMark 0.31.2 with pipe tables).
#![expect(clippy::unwrap_used, reason = "tests")]

use pulldown_cmark::{Event, Options, Parser, Tag};

use super::super::sample::{english, view_of};
use super::*;
use crate::analysis::analyse;
use crate::drawings::{ChartForm, Charts, charts};
use crate::notebook::Imprint;
use crate::simulated::demo;
use crate::view::view;
use crate::words::Words;

/// Begins a heading, a list, a quotation, a rule, code, a table, a link, a picture, raw HTML, an entity.
const HOSTILE: [&str; 18] = [
    "# a",
    "a #",
    "#",
    "- a",
    "+ a",
    "1. a",
    "12) a",
    "> a",
    "---",
    "===",
    "    a",
    "```a",
    "|a|b|",
    "[a](javascript:b)",
    "![a](b)",
    "<script>a</script>",
    "&lt;a&gt;",
    ":---",
];

fn events(markdown: &str) -> Vec<Event<'_>> {
    Parser::new_ext(markdown, Options::ENABLE_TABLES).collect()
}

/// Kinds of elements, in order, without those that follow from line breaks of what was typed.
fn shape(markdown: &str) -> Vec<String> {
    let kind = |tag: &Tag| format!("{tag:?}").split([' ', '(', '{']).next().unwrap_or_default().to_owned();
    let starts = events(markdown).into_iter().filter_map(|event| match event {
        Event::Start(tag) => Some(kind(&tag)),
        Event::Html(text) | Event::InlineHtml(text) => Some(format!("HTML {text}")),
        Event::Code(_) | Event::Rule => Some("code or rule".into()),
        _ => None,
    });
    starts.collect()
}

fn shown(markdown: &str) -> String {
    events(markdown)
        .iter()
        .map(|event| if let Event::Text(text) = event { text.as_ref() } else { "" })
        .collect()
}

fn markdown_of(text: &str) -> String {
    Document::of(&view_of(text), &Charts::default(), None, &Imprint::default(), &english()).markdown()
}

#[test]
fn no_text_of_a_notebook_becomes_markup() {
    let plain = shape(&markdown_of("plain"));
    for hostile in HOSTILE {
        let markdown = markdown_of(hostile);
        assert_eq!(shape(&markdown), plain, "{hostile}");
        assert!(shown(&markdown).contains(hostile.trim()), "{hostile}");
    }
}

#[test]
fn typed_lines_stay_lines_and_empty_ones_part_paragraphs() {
    assert_eq!(typed("one\n two\n\n- three\n"), "one\\\ntwo\n\n\\- three\n");
    let breaks = events(&typed("one\ntwo")).iter().filter(|event| **event == Event::HardBreak).count();
    assert_eq!(breaks, 1);
}

/// All that the demo says: its sections, each table with its rows, each chart as a file beside it.
#[test]
fn the_demo_is_told_whole() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let view = view(&notebook, &analysis);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &english());
    let document = Document::of(&view, &charts, None, &Imprint::of(&notebook), &english());
    let markdown = document.markdown();
    let count = |wanted: fn(&Tag) -> bool| {
        let all = events(&markdown);
        all.iter().filter(|event| matches!(event, Event::Start(tag) if wanted(tag))).count()
    };
    let tables = document.sections.iter().flat_map(|section| &section.blocks);
    let tables = tables.filter(|block| matches!(block, Block::Table(_) | Block::Readings(..))).count();
    assert_eq!(count(|tag| matches!(tag, Tag::Table(_))), tables);
    assert_eq!(
        count(|tag| matches!(tag, Tag::Heading { level: pulldown_cmark::HeadingLevel::H2, .. })),
        document.sections.len()
    );
    let pictures: Vec<String> = events(&markdown)
        .iter()
        .filter_map(|event| match event {
            Event::Start(Tag::Image { dest_url, .. }) => Some(dest_url.to_string()),
            _ => None,
        })
        .collect();
    assert_eq!(pictures, ["bench.svg", "line.svg", "residuals.svg", "budget.svg"]);
    assert!(!markdown.contains("**Readings**") && markdown.contains("**The straight line**"), "{markdown}");
    let said = view.result.sentences.first().map(|sentence| english().say(sentence)).unwrap();
    assert!(shown(&markdown).contains(&said));
}
