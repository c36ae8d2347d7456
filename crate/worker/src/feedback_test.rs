#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;

/// With markup, a link that would run, marks that turn the direction of writing, and a key that scripts inherit from.
const HOSTILE: &str = "<img src=x onerror=alert(1)>\u{202e}[x](javascript:alert(1)) \"__proto__\" \u{0}";

fn feedback() -> Feedback {
    let of = HandedNotebook {
        entries: 57,
        digest: "5f".repeat(32),
        title: "Week 3".into(),
        people: "Ada Blue".into(),
        student_number: "4711".into(),
        group: "2".into(),
        date: String::new(),
    };
    let comments = [
        (CommentPlace::Section(ReportSection::Result), "Round to two digits."),
        (CommentPlace::Row(7), HOSTILE),
        (CommentPlace::Task(3), "Why?"),
    ];
    Feedback {
        of,
        from: "Dr Green".into(),
        at: "2031-05-06T10:00:00Z".into(),
        general: "Well measured.\nSee the splice.".into(),
        mark: "15/20".into(),
        comments: comments.map(|(place, text)| Comment { place, text: text.into() }).into(),
    }
}

#[test]
fn feedback_reads_back_and_its_texts_are_what_was_typed() {
    let text = write(&feedback()).unwrap();
    assert_eq!(read("a.json", &text), Ok(Some(feedback())));
    assert!(text.contains(r#""section": "result""#) && text.contains(r#""row": 7"#), "{text}");
}

#[test]
fn what_is_none_is_left_to_others() {
    let notebook = format!(
        r#"{{"kind":"slope-of-light notebook","format":2,"log":[{{"edit":{{"set_title":"{KIND}"}}}}]}}"#
    );
    for text in ["", "{}", "[", notebook.as_str()] {
        assert_eq!(read("anna.json", text), Ok(None), "{text}");
    }
}

#[test]
fn a_broken_one_says_so() {
    let text = write(&feedback()).unwrap();
    let later = text.replace("\"format\": 1", "\"format\": 2");
    assert_eq!(read("a.json", &later), Err(message!("feedback-later", name = "a.json")));
    let damaged = Err(message!("feedback-damaged", name = "a.json"));
    assert_eq!(read("a.json", &text[..text.len() / 2]), damaged);
    let digest = "5f".repeat(32);
    for (from, to) in [
        ("\"format\": 1", "\"format\": 0"),
        ("\"entries\": 57", "\"entries\": 0"),
        ("\"entries\": 57", "\"entries\": -1"),
        ("\"entries\": 57", "\"entries\": 57.5"),
        (&*digest, "5f"),
        (&*digest, &*"../".repeat(22)),
        ("\"section\": \"result\"", "\"section\": \"constructor\""),
        ("\"section\": \"result\"", "\"element\": \"result\""),
        ("\"row\": 7", "\"row\": \"7\""),
        ("\"mark\": \"15/20\"", "\"mark\": {\"html\": \"<b>\"}"),
        ("\"from\":", "\"__proto__\": {}, \"from\":"),
    ] {
        let broken = text.replace(from, to);
        assert_ne!(broken, text, "{from}");
        assert_eq!(read("a.json", &broken), damaged, "{to}");
    }
}

#[test]
fn neither_written_nor_read_is_what_has_no_end() {
    let mut long = feedback();
    long.general = "x".repeat(LONGEST);
    assert_eq!(write(&long), Err(too_large("Ada Blue")));
    let text = write(&feedback()).unwrap().replace("Well measured.", &long.general);
    assert_eq!(read("a.json", &text), Err(too_large("a.json")));

    let mut many = feedback();
    let comment = Comment { place: CommentPlace::Row(7), text: String::new() };
    many.comments = vec![comment.clone(); MOST];
    assert_eq!(read("a.json", &write(&many).unwrap()), Ok(Some(many.clone())));
    many.comments.push(comment);
    assert_eq!(write(&many), Err(too_large("Ada Blue")));
}
