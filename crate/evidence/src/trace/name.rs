//! What a file's name tells: the rail, the reading, the channel.

use serde::{Deserialize, Serialize};

use crate::decimal::DecimalMark;

/// What a file's name tells of where its trace was taken.
#[derive(Clone, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Named {
    /// The reading with its unit, `123.5 cm`; only where exactly one stands in the name.
    pub reading: Option<String>,
    /// The rail: one whose name is known and stands there, else what follows the word "rail", else the one letter before
    /// the reading.
    pub rail: Option<String>,
    /// A or B: the one letter behind the reading, or what follows "ch" or "channel" (1 is A, 2 is B).
    pub channel: Option<char>,
}

impl Named {
    /// The same, with the reading as it is written with a decimal mark.
    #[must_use]
    pub fn written(self, mark: DecimalMark) -> Self {
        let (other, own) = match mark {
            DecimalMark::Point => (',', "."),
            DecimalMark::Comma => ('.', ","),
        };
        Self { reading: self.reading.map(|text| text.replace(other, own)), ..self }
    }
}

/// The files of one position: one that holds both traces, or one for each.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Pair {
    /// Index of the file with A, or with both.
    pub a: usize,
    /// Index of the file with B, if it is another.
    pub b: Option<usize>,
}

/// What the name of a file (with or without its folder) tells, where the rails have these names. Nothing is guessed: a
/// number without a unit of length is not taken for a reading, nor is one of several.
///
/// # Example
/// ```
/// let named = slope_evidence::trace::rail_reading("run3_0450mm_A.txt", &[]);
/// assert_eq!((named.reading.as_deref(), named.channel), (Some("450 mm"), Some('A')));
/// ```
pub fn rail_reading(name: &str, rails: &[&str]) -> Named {
    let words = words(name);
    let mut named = Named::default();
    let found: Vec<_> = (0..words.len()).filter_map(|at| reading(&words, at)).collect();
    let place = match found.as_slice() {
        [(at, length, text)] => {
            named.reading = Some(text.clone());
            Some((*at, *length))
        }
        _ => None,
    };
    let after =
        || words.windows(2).find(|pair| pair[0].eq_ignore_ascii_case("rail")).map(|pair| pair[1].clone());
    named.rail = known(&words, rails).or_else(after);
    named.channel = (0..words.len()).find_map(|at| channel(&words, at));
    if let Some((at, length)) = place {
        let letter = |word: Option<&String>| word.filter(|word| is_letter(word)).cloned();
        if named.channel.is_none() {
            named.channel = words.iter().skip(at + length).find_map(|word| detector(word));
        }
        if named.rail.is_none() {
            named.rail = at.checked_sub(1).and_then(|before| letter(words.get(before)));
        }
    } else if named.channel.is_none() {
        named.channel = words.last().and_then(|word| detector(word));
    }
    named
}

/// The one rail whose name stands among the words, in small letters or large. A single letter may stand for a channel,
/// and digits for anything, so they are no names here. Of "far" and "far left" it is the longer.
fn known(words: &[String], rails: &[&str]) -> Option<String> {
    let same = |one: &String, other: &String| one.to_lowercase() == other.to_lowercase();
    let stands = |rail: &[String]| {
        let letters = rail.iter().flat_map(|word| word.chars()).filter(|char| char.is_alphabetic()).count();
        letters > 1
            && words
                .windows(rail.len())
                .any(|part| part.iter().zip(rail).all(|(one, other)| same(one, other)))
    };
    let found = rails.iter().map(|rail| (rail, self::words(rail))).filter(|(_, words)| stands(words));
    let mut found: Vec<_> = found.map(|(rail, words)| (words.len(), *rail)).collect();
    found.sort_unstable();
    match found.as_slice() {
        [.., (second, _), (first, _)] if second == first => None,
        [.., (_, rail)] => Some((*rail).to_owned()),
        [] => None,
    }
}

/// Which files belong together: two whose names differ only in the channel, else each alone.
pub fn pair(names: &[&str]) -> Vec<Pair> {
    let keys: Vec<_> = names.iter().map(|name| without_channel(name)).collect();
    let mut done = vec![false; names.len()];
    let mut pairs = Vec::new();
    for index in 0..names.len() {
        if done[index] {
            continue;
        }
        let partner = keys[index].as_ref().and_then(|(key, channel)| {
            (index + 1..names.len()).find(|other| {
                !done[*other] && keys[*other].as_ref().is_some_and(|(of, its)| of == key && its != channel)
            })
        });
        pairs.push(match partner {
            None => Pair { a: index, b: None },
            Some(other) => {
                done[other] = true;
                let first_is_a = keys[index].as_ref().is_some_and(|(_, channel)| *channel == 'A');
                let (a, b) = if first_is_a { (index, other) } else { (other, index) };
                Pair { a, b: Some(b) }
            }
        });
    }
    pairs
}

/// The words of the name but that of the channel, and the channel.
fn without_channel(name: &str) -> Option<(Vec<String>, char)> {
    let words = words(name);
    let folder = name.rsplit_once(['/', '\\']).map_or("", |(folder, _)| folder);
    let at = (0..words.len())
        .find(|at| channel(&words, *at).is_some())
        .or_else(|| words.iter().rposition(|word| detector(word).is_some()))?;
    let letter = channel(&words, at).or_else(|| detector(&words[at]))?;
    let taken = if detector(&words[at]).is_none() && own_channel(&words[at]).is_none() { 2 } else { 1 };
    let mut rest: Vec<_> = words.iter().take(at).chain(words.iter().skip(at + taken)).cloned().collect();
    rest.push(folder.to_owned());
    Some((rest, letter))
}

/// The words of a name: parted at spaces, underscores, hyphens, commas between words, and where digits meet letters.
fn words(name: &str) -> Vec<String> {
    let base = name.rsplit(['/', '\\']).next().unwrap_or(name);
    let stem = match base.rsplit_once('.') {
        // An ending has letters and no space; `1.5 m` and `12.5cm` have none.
        Some((stem, ending))
            if ending.chars().all(char::is_alphanumeric) && ending.starts_with(char::is_alphabetic) =>
        {
            stem
        }
        _ => base,
    };
    let chars: Vec<char> = stem.chars().collect();
    let mut words = vec![String::new()];
    for (index, char) in chars.iter().enumerate() {
        let before = index.checked_sub(1).and_then(|before| chars.get(before)).copied().unwrap_or(' ');
        let after = chars.get(index + 1).copied().unwrap_or(' ');
        let mark = matches!(char, '.' | ',') && before.is_ascii_digit() && after.is_ascii_digit();
        if !char.is_alphanumeric() && !mark && *char != '"' {
            words.push(String::new());
            continue;
        }
        let numeric = |char: char| char.is_ascii_digit() || matches!(char, '.' | ',');
        if numeric(before) && !numeric(*char) || (before.is_alphabetic() && char.is_ascii_digit()) {
            words.push(String::new());
        }
        if let Some(word) = words.last_mut() {
            word.push(*char);
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

/// A number and a unit of length at that word: where, how many words, and the text.
fn reading(words: &[String], at: usize) -> Option<(usize, usize, String)> {
    let number = words.get(at)?;
    if !number.starts_with(|char: char| char.is_ascii_digit()) || number.matches(['.', ',']).count() > 1 {
        return None;
    }
    let unit = words.get(at + 1)?;
    let unit = match unit.to_lowercase().as_str() {
        "mm" => "mm",
        "cm" => "cm",
        "m" => "m",
        "in" | "inch" | "\"" => "in",
        _ => return None,
    };
    let bare = number.trim_start_matches('0');
    let lead = if bare.starts_with(|char: char| char.is_ascii_digit()) { "" } else { "0" };
    Some((at, 2, format!("{lead}{bare} {unit}")))
}

fn is_letter(word: &str) -> bool {
    word.chars().count() == 1 && word.chars().all(char::is_alphabetic)
}

fn detector(word: &str) -> Option<char> {
    match word {
        "A" | "a" => Some('A'),
        "B" | "b" => Some('B'),
        _ => None,
    }
}

/// `chA`: a channel in one word.
fn own_channel(word: &str) -> Option<char> {
    match word.to_lowercase().as_str() {
        "cha" | "channela" => Some('A'),
        "chb" | "channelb" => Some('B'),
        _ => None,
    }
}

/// `ch 1`, `channel B`: the word at that place or it and the next.
fn channel(words: &[String], at: usize) -> Option<char> {
    let word = words.get(at)?.to_lowercase();
    if let Some(own) = own_channel(&word) {
        return Some(own);
    }
    if !matches!(word.as_str(), "ch" | "channel") {
        return None;
    }
    let next = words.get(at + 1)?;
    match next.as_str() {
        "1" => Some('A'),
        "2" => Some('B'),
        letter => detector(letter),
    }
}

#[cfg(test)]
#[path = "name_test.rs"]
mod tests;
