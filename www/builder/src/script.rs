//! The literals of a script: its strings, and the texts of its templates. Comments, regular expressions and the code in
//! templates are passed over or looked into as ECMAScript has them.
//!
//! Source: ECMAScript 2024, 12 (lexical grammar). A slash begins a regular expression where no value stands before it.

/// A string or a piece of a template.
#[derive(Debug, PartialEq)]
pub struct Literal {
    /// What stands before it on its line.
    pub line_before: String,
    /// What it holds, its escapes as they are written.
    pub text: String,
}

/// Every literal of a script, in its order.
pub fn literals(source: &str) -> Vec<Literal> {
    let mut reader = Reader { source, at: 0, found: Vec::new() };
    reader.code(false);
    reader.found
}

struct Reader<'a> {
    source: &'a str,
    at: usize,
    found: Vec<Literal>,
}

impl Reader<'_> {
    fn rest(&self) -> &str {
        self.source.get(self.at..).unwrap_or_default()
    }

    /// Reads code: to its end, or inside a template to the brace that closes it.
    fn code(&mut self, in_template: bool) {
        let mut depth = 0_usize;
        // Whether a value stands before, so that a slash divides it.
        let mut after_value = false;
        while let Some(sign) = self.rest().chars().next() {
            if self.rest().starts_with("//") {
                self.at += self.rest().find('\n').unwrap_or(self.rest().len());
                continue;
            }
            if self.rest().starts_with("/*") {
                self.at += self.rest().find("*/").map_or(self.rest().len(), |end| end + 2);
                continue;
            }
            match sign {
                '\'' | '"' => self.quoted(sign),
                '`' => self.template(),
                '/' if !after_value => self.quoted('/'),
                '}' if in_template && depth == 0 => {
                    self.at += 1;
                    return;
                }
                _ => {
                    depth = match sign {
                        '{' => depth + 1,
                        '}' => depth.saturating_sub(1),
                        _ => depth,
                    };
                    self.at += sign.len_utf8();
                }
            }
            if !sign.is_whitespace() {
                after_value = sign.is_alphanumeric() || "_$)]'\"`".contains(sign);
            }
        }
    }

    /// Reads to the sign that closes what it opened; a regular expression is no text.
    fn quoted(&mut self, sign: char) {
        let start = self.at + 1;
        let (mut escaped, mut in_class) = (false, false);
        let end = self.source.get(start..).unwrap_or_default().find(|letter: char| {
            let ends = letter == sign && !escaped && !in_class;
            match letter {
                '[' if sign == '/' && !escaped => in_class = true,
                ']' if sign == '/' && !escaped => in_class = false,
                _ => {}
            }
            escaped = letter == '\\' && !escaped;
            ends
        });
        let end = end.map_or(self.source.len(), |length| start + length);
        if sign != '/' {
            self.keep(self.at, start, end);
        }
        self.at = end + 1;
    }

    /// Reads a template, piece by piece, and the code between them.
    fn template(&mut self) {
        let begin = self.at;
        self.at += 1;
        let mut start = self.at;
        let mut escaped = false;
        while let Some(letter) = self.rest().chars().next() {
            if !escaped && letter == '`' {
                self.keep(begin, start, self.at);
                self.at += 1;
                return;
            }
            if !escaped && self.rest().starts_with("${") {
                self.keep(begin, start, self.at);
                self.at += 2;
                self.code(true);
                start = self.at;
                continue;
            }
            escaped = letter == '\\' && !escaped;
            self.at += letter.len_utf8();
        }
    }

    fn keep(&mut self, begin: usize, start: usize, end: usize) {
        let before = self.source.get(..begin).unwrap_or_default();
        let line_before = before.rsplit('\n').next().unwrap_or_default().to_owned();
        let text = self.source.get(start..end).unwrap_or_default().to_owned();
        self.found.push(Literal { line_before, text });
    }
}

#[cfg(test)]
#[path = "script_test.rs"]
mod tests;
