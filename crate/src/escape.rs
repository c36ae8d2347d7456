//! Text from a notebook, made fit to stand in HTML, LaTeX and Markdown: it can never become markup there.
//!
//! Sources: HTML Living Standard, 13.3 (escaping a string); L. Lamport, "LaTeX: A Document Preparation System",
//! 2nd ed., 2.2.2 (the ten special characters); CommonMark 0.31.2, 2.4.

/// `text` as text in HTML, in an element or in a quoted attribute.
pub fn html_text(text: &str) -> String {
    each(text, |letter| match letter {
        '&' => Some("&amp;"),
        '<' => Some("&lt;"),
        '>' => Some("&gt;"),
        '"' => Some("&quot;"),
        '\'' => Some("&#39;"),
        // Not allowed in HTML; shown as what it is, a character that can't be shown.
        '\0' => Some("\u{fffd}"),
        _ => None,
    })
}

/// `text` as text in LaTeX, on one line.
pub fn latex_text(text: &str) -> String {
    each(text, |letter| {
        Some(match letter {
            '\\' => "\\textbackslash{}",
            '{' => "\\{",
            '}' => "\\}",
            '$' => "\\$",
            '&' => "\\&",
            '#' => "\\#",
            '%' => "\\%",
            '_' => "\\_",
            '~' => "\\textasciitilde{}",
            '^' => "\\textasciicircum{}",
            '<' => "\\textless{}",
            '>' => "\\textgreater{}",
            '|' => "\\textbar{}",
            // After the end of a row a bracket or a star would be taken for its argument.
            '[' => "{[}",
            ']' => "{]}",
            '*' => "{*}",
            '±' => "$\\pm$",
            '×' => "$\\times$",
            '−' => "$-$",
            '·' => "$\\cdot$",
            '√' => "$\\surd$",
            '≤' => "$\\le$",
            '≥' => "$\\ge$",
            '≈' => "$\\approx$",
            '∞' => "$\\infty$",
            '°' => "$^{\\circ}$",
            'µ' | 'μ' => "$\\mu$",
            '∂' => "$\\partial$",
            '→' => "$\\rightarrow$",
            '←' => "$\\leftarrow$",
            '↑' => "$\\uparrow$",
            '↓' => "$\\downarrow$",
            '′' => "$'$",
            '″' => "$''$",
            'Γ' => "$\\Gamma$",
            'Δ' => "$\\Delta$",
            'Σ' => "$\\Sigma$",
            'Ω' => "$\\Omega$",
            'α' => "$\\alpha$",
            'β' => "$\\beta$",
            'γ' => "$\\gamma$",
            'δ' => "$\\delta$",
            'ε' => "$\\varepsilon$",
            'θ' => "$\\theta$",
            'κ' => "$\\kappa$",
            'λ' => "$\\lambda$",
            'ν' => "$\\nu$",
            'ξ' => "$\\xi$",
            'π' => "$\\pi$",
            'ρ' => "$\\rho$",
            'σ' => "$\\sigma$",
            'τ' => "$\\tau$",
            'φ' => "$\\varphi$",
            'χ' => "$\\chi$",
            'ω' => "$\\omega$",
            'ħ' => "$\\hbar$",
            '⁰' => "$^{0}$",
            '¹' => "$^{1}$",
            '²' => "$^{2}$",
            '³' => "$^{3}$",
            '⁴' => "$^{4}$",
            '⁵' => "$^{5}$",
            '⁶' => "$^{6}$",
            '⁷' => "$^{7}$",
            '⁸' => "$^{8}$",
            '⁹' => "$^{9}$",
            '⁻' => "$^{-}$",
            '⁺' => "$^{+}$",
            '₀' => "$_{0}$",
            '₁' => "$_{1}$",
            '₂' => "$_{2}$",
            '₃' => "$_{3}$",
            'ₙ' => "$_{n}$",
            'ᵢ' => "$_{i}$",
            '\u{a0}' => "~",
            '\u{202f}' | '\u{2009}' => "\\,",
            // A word joiner: LaTeX breaks no word there.
            '\u{2060}' => "",
            letter if letter.is_control() => " ",
            _ => return None,
        })
    })
}

/// `text` as text on a line of Markdown, or in a cell of a table, behind something else.
pub fn markdown_text(text: &str) -> String {
    each(text, |letter| match letter {
        '\\' => Some("\\\\"),
        '|' => Some("\\|"),
        '`' => Some("\\`"),
        '*' => Some("\\*"),
        '_' => Some("\\_"),
        '[' => Some("\\["),
        ']' => Some("\\]"),
        '<' => Some("\\<"),
        '>' => Some("\\>"),
        '&' => Some("\\&"),
        '~' => Some("\\~"),
        '$' => Some("\\$"),
        // At the end of a heading it would close it (4.2).
        '#' => Some("\\#"),
        letter if letter.is_control() => Some(" "),
        _ => None,
    })
}

/// `text` as text that begins a line or an item of Markdown: no heading, list, rule or quotation begins there (4.1 to 5.3).
pub fn markdown_line(text: &str) -> String {
    let text = text.trim_start();
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    let (number, rest) = text.split_at(digits);
    let escape = match rest.chars().next() {
        Some('+' | '-' | '=' | ':') if number.is_empty() => "\\",
        Some('.' | ')') if !number.is_empty() => "\\",
        _ => "",
    };
    format!("{number}{escape}{}", markdown_text(rest))
}

/// `text` with the letters replaced for which there is a replacement.
fn each(text: &str, replacement: impl Fn(char) -> Option<&'static str>) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match replacement(letter) {
            Some(other) => out.push_str(other),
            None => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
#[path = "escape_test.rs"]
mod tests;
