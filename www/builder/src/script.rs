//! Telling code from quoted text and comments in a JavaScript module, byte by byte, and writing a script so
//! that it can stand inside an HTML page.
//!
//! Whether a slash divides or opens a regular expression is told from what comes before it: after a name, a
//! number, `)`, `]` or `}` it divides, anywhere else (and after words such as `return`) it opens one.
//! Source: ECMAScript 2024, clause 12 (lexical grammar); HTML Standard, "Restrictions for contents of script
//! elements".

/// What a byte of a script belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Code, spaces between code included.
    Code,
    /// A string, the text of a template, a regular expression; the marks at its ends included.
    Quoted,
    /// A comment.
    Comment,
}

/// The kind of each byte.
pub fn kinds(source: &str) -> Vec<Kind> {
    let mut reader =
        Reader { bytes: source.as_bytes(), kinds: Vec::with_capacity(source.len()), depths: Vec::new() };
    while let Some(byte) = reader.peek(0) {
        reader.step(byte);
    }
    reader.kinds
}

/// The script without its comments, and without the blank lines that they leave.
pub fn without_comments(source: &str) -> String {
    let kinds = kinds(source);
    let mut lines: Vec<Vec<u8>> = vec![Vec::new()];
    for (byte, kind) in source.bytes().zip(&kinds) {
        match (byte, kind) {
            // What is left of a line of code ends with its code; a line inside quotes stays as it is.
            (b'\n', Kind::Code | Kind::Comment) => {
                let length = lines.last().map_or(0, |line| line.trim_ascii_end().len());
                match lines.last_mut() {
                    Some(line) if length == 0 => line.clear(),
                    Some(line) => {
                        line.truncate(length);
                        lines.push(Vec::new());
                    }
                    None => {}
                }
            }
            (_, Kind::Comment) => {}
            (b'\n', Kind::Quoted) => {
                if let Some(line) = lines.last_mut() {
                    line.push(b'\n');
                }
            }
            _ => {
                if let Some(line) = lines.last_mut() {
                    line.push(byte);
                }
            }
        }
    }
    String::from_utf8_lossy(&lines.join(&b'\n')).into_owned()
}

/// Words after which a slash opens a regular expression.
const BEFORE_REGEX: [&str; 14] = [
    "return",
    "typeof",
    "case",
    "in",
    "of",
    "do",
    "else",
    "void",
    "delete",
    "throw",
    "new",
    "instanceof",
    "await",
    "yield",
];

struct Reader<'a> {
    bytes: &'a [u8],
    /// One entry a byte read so far: its length is the position.
    kinds: Vec<Kind>,
    /// For each `${` that is open: how many braces are open inside it.
    depths: Vec<usize>,
}

impl Reader<'_> {
    fn peek(&self, ahead: usize) -> Option<u8> {
        self.bytes.get(self.kinds.len() + ahead).copied()
    }

    fn take(&mut self, kind: Kind, count: usize) {
        let room = self.bytes.len() - self.kinds.len();
        self.kinds.extend(std::iter::repeat_n(kind, count.min(room)));
    }

    fn step(&mut self, byte: u8) {
        match (byte, self.peek(1)) {
            (b'/', Some(b'/')) => self.take_until(Kind::Comment, b"\n"),
            (b'/', Some(b'*')) => {
                self.take(Kind::Comment, 2);
                self.take_until(Kind::Comment, b"*/");
            }
            (b'/', _) if self.slash_opens() => self.regex(),
            (b'"' | b'\'', _) => self.string(byte),
            (b'`', _) => self.template(),
            (b'{', _) => {
                if let Some(depth) = self.depths.last_mut() {
                    *depth += 1;
                }
                self.take(Kind::Code, 1);
            }
            (b'}', _) => self.closing_brace(),
            _ => self.take(Kind::Code, 1),
        }
    }

    /// A brace that closes a block, or a `${`, after which the template goes on.
    fn closing_brace(&mut self) {
        match self.depths.last_mut() {
            Some(0) => {
                self.depths.pop();
                self.template();
            }
            Some(depth) => {
                *depth -= 1;
                self.take(Kind::Code, 1);
            }
            None => self.take(Kind::Code, 1),
        }
    }

    fn take_until(&mut self, kind: Kind, end: &[u8]) {
        let rest = self.bytes.get(self.kinds.len()..).unwrap_or_default();
        let length =
            rest.windows(end.len()).position(|window| window == end).map_or(rest.len(), |at| at + end.len());
        self.take(kind, length);
    }

    fn string(&mut self, quote: u8) {
        self.take(Kind::Quoted, 1);
        while let Some(byte) = self.peek(0) {
            self.take(Kind::Quoted, if byte == b'\\' { 2 } else { 1 });
            if byte == quote || byte == b'\n' {
                return;
            }
        }
    }

    /// From the mark that opens a template, or the brace at which it goes on, to its end or its next `${`.
    fn template(&mut self) {
        self.take(Kind::Quoted, 1);
        while let Some(byte) = self.peek(0) {
            if byte == b'$' && self.peek(1) == Some(b'{') {
                self.take(Kind::Quoted, 2);
                self.depths.push(0);
                return;
            }
            self.take(Kind::Quoted, if byte == b'\\' { 2 } else { 1 });
            if byte == b'`' {
                return;
            }
        }
    }

    fn regex(&mut self) {
        self.take(Kind::Quoted, 1);
        let mut in_class = false;
        while let Some(byte) = self.peek(0) {
            self.take(Kind::Quoted, if byte == b'\\' { 2 } else { 1 });
            match byte {
                b'[' => in_class = true,
                b']' => in_class = false,
                b'/' if !in_class => return,
                b'\n' => return,
                _ => {}
            }
        }
    }

    fn slash_opens(&self) -> bool {
        let before = self.code_before();
        let Some(&last) = before.last() else { return true };
        if is_word(last) {
            let start = before.iter().rposition(|&byte| !is_word(byte)).map_or(0, |at| at + 1);
            let word = before.get(start..).unwrap_or_default();
            return BEFORE_REGEX.iter().any(|each| each.as_bytes() == word);
        }
        !matches!(last, b')' | b']' | b'}' | b'"' | b'\'' | b'`' | b'/')
    }

    /// The source up to the last byte that is neither space nor comment.
    fn code_before(&self) -> &[u8] {
        let seen = self.kinds.iter().zip(self.bytes);
        let length = seen
            .rev()
            .position(|(kind, byte)| *kind != Kind::Comment && !byte.is_ascii_whitespace())
            .map_or(0, |from_end| self.kinds.len() - from_end);
        self.bytes.get(..length).unwrap_or_default()
    }
}

fn is_word(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || byte == b'_' || byte == b'$' || byte >= 0x80
}

/// The same script, in a form that an HTML parser reads to its end: no `</script`, `<script` or `<!--` is left.
/// In quoted text the `<` becomes its escape; in code and comments a space follows it, which means the same.
/// (In a `String.raw` template the escape would be seen: a page does not use one for markup.)
pub fn inside_html(source: &str) -> String {
    let kinds = kinds(source);
    let mut out = String::with_capacity(source.len());
    for (at, character) in source.char_indices() {
        let rest = source.get(at + 1..).filter(|_| character == '<');
        let dangerous =
            rest.is_some_and(|rest| ["/script", "script", "!--"].iter().any(|word| starts(rest, word)));
        match (dangerous, kinds.get(at)) {
            (true, Some(Kind::Quoted)) => out.push_str("\\x3C"),
            (true, _) => out.push_str("< "),
            (false, _) => out.push(character),
        }
    }
    out
}

/// Whether a text starts with a word, whatever the case of its letters.
fn starts(text: &str, word: &str) -> bool {
    text.as_bytes().get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word.as_bytes()))
}

/// A text as a JavaScript string literal that can stand inside an HTML page.
pub fn literal(text: &str) -> String {
    serde_json::Value::from(text).to_string().replace('<', "\\u003C")
}

#[cfg(test)]
#[path = "script_test.rs"]
mod tests;
