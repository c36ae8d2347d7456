use super::*;

#[test]
fn a_sample_step_is_read_by_the_decimal_mark() {
    let read = |text, mark| time(text, mark).value;
    assert_eq!(read("0,25", DecimalMark::Comma), Some(0.25));
    assert_eq!(read("250 ps", DecimalMark::Comma), Some(0.25));
    assert_eq!(read("0.25", DecimalMark::Point), Some(0.25));
    for (text, mark) in [("0.25", DecimalMark::Comma), ("0", DecimalMark::Point), ("-1", DecimalMark::Point)]
    {
        let refused = time(text, mark);
        assert_eq!(refused.value, None, "{text}");
        assert!(refused.problem.is_some(), "{text}");
    }
    assert_eq!(number_text(0.25, DecimalMark::Comma), "0,25");
}

#[test]
fn a_line_number_is_not_rounded() {
    let read = |text| whole_number(text, 1, 100);
    assert_eq!(read(" 12 ").value, Some(12.0));
    for text in ["12.4", "0", "101", "a few", "", "10 ± 2", "3000 %", "12 students"] {
        assert_eq!(read(text).value, None, "{text}");
        assert!(read(text).problem.is_some(), "{text}");
    }
}
