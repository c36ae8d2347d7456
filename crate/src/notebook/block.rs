//! The lines of a block copied from a spreadsheet, and their cells, as they stand in it.
//!
//! Tabs stand between cells; a line ends as RFC 4180 has it, or with either of its two signs alone, and lines without any
//! sign are none. A cell that begins with a quote goes on to the next that stands alone: a quote in it stands there twice.

/// What some programs put before a text in UTF-8 (Unicode 16.0, 23.8).
const BYTE_ORDER_MARK: char = '\u{feff}';

/// The cells of each line. Every text is a block.
pub(super) fn lines(block: &str) -> Vec<Vec<String>> {
    let mut rest = block.strip_prefix(BYTE_ORDER_MARK).unwrap_or(block);
    let mut lines = Vec::new();
    loop {
        rest = rest.trim_start_matches(['\r', '\n']);
        if rest.is_empty() {
            return lines;
        }
        let (cells, after) = line(rest);
        lines.push(cells);
        rest = after;
    }
}

/// The cells up to the end of the first line, and what follows them.
fn line(mut rest: &str) -> (Vec<String>, &str) {
    let mut cells = Vec::new();
    loop {
        let (text, after) = cell(rest);
        cells.push(text);
        match after.strip_prefix('\t') {
            Some(next) => rest = next,
            None => return (cells, after),
        }
    }
}

/// The first cell, and what follows it: a tab, the end of the line, or nothing.
fn cell(text: &str) -> (String, &str) {
    let (mut held, rest) = match text.strip_prefix('"') {
        Some(quoted) => within_quotes(quoted),
        None => (String::new(), text),
    };
    let end = rest.find(['\t', '\r', '\n']).unwrap_or(rest.len());
    let (bare, rest) = rest.split_at(end);
    held.push_str(bare);
    (held, rest)
}

/// What stands before the quote that ends it, or all where none does, and what follows that quote.
fn within_quotes(mut quoted: &str) -> (String, &str) {
    let mut held = String::new();
    loop {
        let (before, after) = quoted.split_once('"').unwrap_or((quoted, ""));
        held.push_str(before);
        match after.strip_prefix('"') {
            Some(more) => {
                held.push('"');
                quoted = more;
            }
            None => return (held, after),
        }
    }
}

#[cfg(test)]
#[path = "block_test.rs"]
mod tests;
