//! The report in LaTeX, on A4, for pdfTeX, LuaTeX or XeTeX. It asks only for packages of the base distribution: geometry,
//! longtable, array, multicol, color.
//!
//! Every text of the notebook is escaped. Columns of a table are as wide as their words, and share the page where that
//! is too much.

use std::fmt::Write as _;

use super::block::{Block, DocumentSection, NoticeText};
use super::document::{Document, UNSTRUCK};
use super::table::{Column, Kind, Table};
use crate::chart::latex::DRAWN;
use crate::escape::latex_text;

/// How large a table is set.
struct TableSize {
    /// The command of LaTeX for the size of its letters.
    size: &'static str,
    /// Room for a letter of that size, TeX points: Computer Modern's figures are half as wide as the letters are high, its
    /// small letters less; capitals in heads take the rest.
    letter: f64,
    /// Width of the text, TeX points.
    width: f64,
}

/// A table alone, in a document of somebody else's: letters of 8 pt, on A4 with margins of 20 mm.
const ALONE: TableSize = TableSize { size: "footnotesize", letter: 4.5, width: 483.0 };

/// A table in the report: letters of 9 pt, on A4 with margins of 13 mm.
const REPORT: TableSize = TableSize { size: "small", letter: 4.7, width: 523.0 };

/// Space to each side of a column, TeX points.
const COLUMN_SPACE: f64 = 2.5;

/// What stands before the text: less space than an article's, so that a bench with its readings takes four pages. Engines
/// that are not pdfTeX read all of Unicode by themselves. `\room` breaks the page where less than eight lines are left of
/// it: for a heading with what it heads.
const PREAMBLE: &str = "\\documentclass[a4paper,10pt]{article}\n\
\\usepackage[hmargin=13mm,top=12mm,bottom=13mm,footskip=6mm]{geometry}\n\
\\usepackage{longtable,array,multicol,color}\n\
\\ifdefined\\pdftexversion \\usepackage[T1]{fontenc}\\usepackage{textcomp}\\fi\n\
\\setlength{\\parindent}{0pt}\\setlength{\\parskip}{1.5pt plus 1pt}\\setlength{\\emergencystretch}{10em}\n\
\\setlength{\\multicolsep}{2pt}\\setlength{\\columnsep}{16pt}\\setlength{\\LTpre}{2pt}\\setlength{\\LTpost}{2pt}\n\
\\raggedcolumns\\linespread{.96}\\renewcommand{\\arraystretch}{.96}\\setcounter{secnumdepth}{0}\n\
\\makeatletter\n\
\\renewcommand\\section{\\@startsection{section}{1}{0pt}{-6pt plus -2pt}{1pt}{\\normalfont\\large\\bfseries}}\n\
\\renewcommand\\subsection{\\@startsection{subsection}{2}{0pt}{-4pt plus -1pt}{1pt}{\\normalfont\\normalsize\\bfseries}}\n\
\\def\\@listI{\\leftmargin1.2em\\labelsep.4em\\labelwidth.8em\\topsep0pt\\partopsep0pt\\parsep0pt\\itemsep0pt}\n\
\\let\\@listi\\@listI\n\
\\makeatother\n\
\\newcommand\\room{\\par\\penalty-100\\ifdim\\dimexpr\\pagegoal-\\pagetotal<8\\baselineskip\n\
\\ifdim\\pagegoal<\\maxdimen\\break\\fi\\fi}\n";

impl Document {
    /// The document in LaTeX; its charts are pictures of LaTeX.
    pub fn latex(&self) -> String {
        let body = format!(
            "\\begin{{document}}\n\\section*{{\\LARGE {}}}\n{}{}\\end{{document}}\n",
            latex_text(&self.title),
            blocks(&self.title, &self.opening),
            self.sections.iter().map(section).collect::<String>()
        );
        format!("{PREAMBLE}{DRAWN}{}{body}", strangers(&body))
    }
}

/// Letters that pdfTeX has no font for in a plain distribution, declared to it as their numbers: it stops at others.
fn strangers(body: &str) -> String {
    // It knows the letters of Latin scripts but for some, and the marks of printers (the encodings T1 and TS1).
    let is_known = |letter: char| {
        (letter <= '\u{17f}' && !"ĦħĸĿŀŉŦŧſ".contains(letter)) || "–—‘’“”‚„…‹›‰€†‡•™".contains(letter)
    };
    let mut strange: Vec<char> = body.chars().filter(|letter| !is_known(*letter)).collect();
    strange.sort_unstable();
    strange.dedup();
    let declared = strange.into_iter().map(|letter| {
        let number = u32::from(letter);
        format!("\\DeclareUnicodeCharacter{{{number:04X}}}{{[U+{number:04X}]}}\n")
    });
    let declared: String = declared.collect();
    if declared.is_empty() { declared } else { format!("\\ifdefined\\pdftexversion\n{declared}\\fi\n") }
}

impl Table {
    /// The table as a `tabular` that fits A4 with margins of 20 mm; it asks for the package array.
    pub fn to_latex(&self) -> String {
        let rows = self.latex_rows(&ALONE, &|_, _| false);
        format!(
            "{{\\{}\\setlength{{\\tabcolsep}}{{{COLUMN_SPACE}pt}}\n\\begin{{tabular}}{{{}}}\n\\hline\n{}\\hline\n\
             {rows}\\hline\n\\end{{tabular}}}}\n",
            ALONE.size,
            self.latex_columns(&ALONE),
            self.latex_head()
        )
    }

    /// The same over as many pages as it takes, with its head on each, and with its title where that is not the heading
    /// above it.
    fn to_latex_long(&self, heading: &str, struck: &dyn Fn(usize, &Column) -> bool) -> String {
        let title = if self.title == heading {
            String::new()
        } else {
            let (across, title) = (self.columns.len(), latex_text(&self.title));
            format!("\\multicolumn{{{across}}}{{l}}{{\\textbf{{{title}}}}}\\\\*\n")
        };
        format!(
            "{{\\{}\\setlength{{\\tabcolsep}}{{{COLUMN_SPACE}pt}}\\setlength{{\\LTleft}}{{0pt}}\n\
             \\begin{{longtable}}{{{}}}\n{title}\\hline\n{head}\\hline\n\\endfirsthead\n\
             \\hline\n{head}\\hline\n\\endhead\n\\hline\n\\endfoot\n{}\\end{{longtable}}}}\n",
            REPORT.size,
            self.latex_columns(&REPORT),
            self.latex_rows(&REPORT, struck),
            head = self.latex_head()
        )
    }

    fn latex_head(&self) -> String {
        let heads = self.columns.iter().map(|column| latex_text(&column.head())).collect::<Vec<_>>();
        format!("{} \\\\\n", heads.join(" & "))
    }

    fn latex_rows(&self, setting: &TableSize, struck: &dyn Fn(usize, &Column) -> bool) -> String {
        let mut text = String::new();
        for (place, row) in self.rows.iter().enumerate() {
            if let Some(note) = self.over_all(row) {
                let (across, width) = (self.columns.len(), setting.width - 2.0 * COLUMN_SPACE);
                let note = latex_text(note);
                let set = format!("\\multicolumn{{{across}}}{{p{{{width:.1}pt}}}}{{\\itshape {note}}}");
                let _ = writeln!(text, "{set} \\\\");
                continue;
            }
            let cells = self.columns.iter().zip(row).map(|(column, cell)| {
                let cell = column.kind.latex(cell);
                if !cell.is_empty() && struck(place, column) {
                    format!("\\color[gray]{{0.55}}{cell}")
                } else {
                    cell
                }
            });
            let _ = writeln!(text, "{} \\\\", cells.collect::<Vec<_>>().join(" & "));
        }
        text
    }

    /// How the columns are set so that all stand side by side.
    fn latex_columns(&self, setting: &TableSize) -> String {
        let sizes: Vec<Letters> = (0..self.columns.len()).map(|place| self.letters(place)).collect();
        let room = setting.width - 2.0 * COLUMN_SPACE * sizes.len() as f64;
        let taken =
            |most: usize| sizes.iter().map(|size| size.within(most)).sum::<usize>() as f64 * setting.letter;
        let widest = sizes.iter().map(|size| size.most).max().unwrap_or(0);
        let most = (1..=widest).rev().find(|most| taken(*most) <= room).unwrap_or(1);
        let set = sizes.iter().zip(&self.columns).map(|(size, column)| {
            let side = if column.kind == Kind::Number { "left" } else { "right" };
            // A word that no page has room for stands out of its column; TeX knows no width beyond 16384 points.
            let width = (size.within(most) as f64 * setting.letter).min(setting.width);
            format!(">{{\\ragged{side}\\arraybackslash}}p{{{width:.1}pt}}")
        });
        set.collect()
    }

    fn letters(&self, place: usize) -> Letters {
        let head = self.columns.get(place).map_or_else(String::new, Column::head);
        let cells = self.rows.iter().filter(|row| self.over_all(row).is_none());
        let cells = cells.filter_map(|row| row.get(place));
        let longest_word = |text: &str| text.split(' ').map(|word| word.chars().count()).max().unwrap_or(0);
        let least = cells.clone().map(|cell| longest_word(cell)).max().unwrap_or(0).max(longest_word(&head));
        // A sign of mathematics may be as wide as two letters.
        let least = least.max(2);
        let most = cells.map(|cell| cell.chars().count()).max().unwrap_or(0);
        Letters { least, most: most.max(least) }
    }
}

/// How many letters wide a column has to be, and would be.
struct Letters {
    /// Of the longest word.
    least: usize,
    /// Of the longest cell.
    most: usize,
}

impl Letters {
    fn within(&self, most: usize) -> usize {
        self.most.min(most).max(self.least)
    }
}

impl Kind {
    /// A cell in LaTeX; the sign of a number is a minus there, not a hyphen.
    fn latex(self, cell: &str) -> String {
        match (self, cell.strip_prefix('-')) {
            (Self::Number, Some(size)) => format!("$-${}", latex_text(size)),
            _ => self.lowered(cell, latex_text, ["\\textsubscript{", "}"]),
        }
    }
}

fn section(DocumentSection { title, blocks: all }: &DocumentSection) -> String {
    let name = latex_text(title);
    match all.as_slice() {
        // A heading runs into the text below it where that is all.
        [text @ (Block::Paragraph(_) | Block::Typed(_))] => {
            format!("\\smallskip\\textbf{{\\large {name}}}\\quad {}", block(title, text))
        }
        _ => format!("\\room\\section{{{name}}}\n{}", blocks(title, all)),
    }
}

/// Blocks below a heading.
fn blocks<'a>(mut heading: &'a str, all: &'a [Block]) -> String {
    let mut text = String::new();
    for one in all {
        if let Block::Heading(below) = one {
            heading = below;
        }
        text += &block(heading, one);
    }
    text
}

/// A block below a heading, with the end of its paragraph behind it.
fn block(heading: &str, block: &Block) -> String {
    match block {
        Block::Heading(text) => format!("\\subsection{{{}}}\n", latex_text(text)),
        Block::Paragraph(text) => format!("{}\n\n", latex_text(text)),
        Block::Summary(text) => format!("\\textbf{{{}}}\n\n", latex_text(text)),
        Block::Typed(text) => typed(text),
        Block::Facts(pairs) => beside(&list(
            "description",
            // A label would stand on one line however long; the text's own letters break.
            pairs.iter().map(|(name, text)| {
                format!("\\textbf{{{}}}\\enspace {}", latex_text(name), latex_text(text))
            }),
        )),
        Block::Points(points) => {
            list("itemize", points.iter().map(|point| format!(" {}", latex_text(point))))
        }
        Block::Notes(notes) => {
            let notes = list("enumerate", notes.iter().map(|note| format!(" {}", latex_text(note))));
            format!("{{\\small\n{}}}\n", beside(&notes))
        }
        Block::Notices(notices) => list("itemize", notices.iter().map(notice)),
        Block::Columns(all) => beside(&blocks(heading, all)),
        Block::Table(table) => table.to_latex_long(heading, &|_, _| false),
        Block::Readings(table, struck) => table.to_latex_long(heading, &|row, column| {
            struck.get(row) == Some(&true) && !UNSTRUCK.contains(&column.name)
        }),
        Block::Figure { drawn, caption, .. } => {
            format!("{{\\centering\n{drawn}\\\\*\\relax\n{}\\par}}\n", latex_text(caption))
        }
    }
}

/// In two columns.
fn beside(text: &str) -> String {
    format!("\\begin{{multicols}}{{2}}\n{text}\\end{{multicols}}\n")
}

/// Lines as somebody typed them; an empty one parts paragraphs.
fn typed(text: &str) -> String {
    let mut out = String::new();
    // Of a line of letters that are not shown nothing is left, and LaTeX refuses to end a line before there is one.
    let mut lines = text.lines().map(|line| latex_text(line.trim()).trim().to_owned()).peekable();
    while let Some(line) = lines.next() {
        out += &line;
        let goes_on = !line.is_empty() && lines.peek().is_some_and(|next| !next.is_empty());
        out += if goes_on { "\\newline\n" } else { "\n" };
    }
    out.push('\n');
    out
}

/// A list of items already in LaTeX; nothing where there is none.
fn list(name: &str, items: impl Iterator<Item = String>) -> String {
    let body = items.fold(String::new(), |text, item| text + "\\item" + &item + "\n");
    if body.is_empty() {
        body
    } else {
        format!(
            "\\begin{{{name}}}\n\\setlength{{\\itemsep}}{{0pt}}\\setlength{{\\parskip}}{{0pt}}\n{body}\\end{{{name}}}\n"
        )
    }
}

fn notice(NoticeText { lead, text, signs }: &NoticeText) -> String {
    let signs = signs.as_ref().map_or_else(String::new, |(said, signs)| {
        let signs = list("itemize", signs.iter().map(|sign| format!(" {}", latex_text(sign))));
        format!(" {}\n{signs}", latex_text(said))
    });
    format!(" \\textbf{{{}}} {}{signs}", latex_text(lead), latex_text(text))
}

#[cfg(test)]
#[path = "latex_test.rs"]
mod tests;
