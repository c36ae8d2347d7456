use super::{common_level, up};

#[test]
fn one_level_serves_all() {
    assert_eq!(common_level(&[0.2, 0.05, 0.3]), Some(0.05));
    assert_eq!(common_level(&[]), None);
    assert_eq!(common_level(&[f64::NAN, 0.4]), Some(0.4));
}

#[test]
fn uncertainties_are_rounded_up() {
    for (value, text) in
        [(0.0, "0"), (0.012_345, "0.0124"), (0.012_3, "0.0123"), (9.991, "10"), (123.4, "124")]
    {
        assert_eq!(up(value), text);
    }
}
