use super::*;

fn given(parts: &[(usize, &str)]) -> Given {
    let part =
        |(component, share): &(usize, &str)| GivenPart { component: *component, share: (*share).to_owned() };
    Given { parts: parts.iter().map(part).collect(), ..Given::default() }
}

/// Shares of component 0: 80, 60, 40 and, where it is not, 0; of component 2: 0, 0, 10, 90; of 1: 20, 40, 50, 10.
#[test]
fn components_stand_by_their_share_in_the_middle() {
    let all = [
        given(&[(0, "80.00%"), (1, "20.00%")]),
        given(&[(0, "60.00%"), (1, "40.00%")]),
        given(&[(1, "50.00%"), (0, "40.00%"), (2, "10.00%")]),
        given(&[(2, "90.00%"), (1, "10.00%"), (3, "0.00%")]),
        Given::default(),
    ];
    let (found, budgets) = lost(&all, DecimalMark::Comma);
    let told: Vec<_> = found.iter().map(|lost| (lost.component, lost.text.as_str(), lost.largest)).collect();
    assert_eq!(told, [(0, "50,0\u{a0}%", 2), (1, "30,0\u{a0}%", 1), (2, "5,0\u{a0}%", 1)]);
    assert_eq!(budgets, 4);
}

/// A time base of 2.5 ns is one of 2,5 ns, and no other; a comma that marks no decimals stays.
#[test]
fn a_name_is_the_same_with_either_decimal_mark() {
    let mut all = [given(&[(0, "80.00%"), (1, "20.00%")]), given(&[(2, "60.00%"), (3, "40.00%")])];
    let names = ["2.5 ns", "a, b", "2,5 ns", "a. b"].map(str::to_owned);
    same_with_either_mark(&mut all, &names);
    assert_eq!(all, [given(&[(0, "80.00%"), (1, "20.00%")]), given(&[(0, "60.00%"), (3, "40.00%")])]);
    assert_eq!(with_points("1,5, 2,5 and ,5"), "1.5, 2.5 and ,5");
}

/// Of equal shares the one that stands first counts, as in the budget.
#[test]
fn one_budget_has_one_largest_component() {
    let (found, _) = lost(&[given(&[(4, "50.00%"), (1, "50.00%")])], DecimalMark::Point);
    assert_eq!(found.iter().map(|lost| (lost.component, lost.largest)).collect::<Vec<_>>(), [(4, 1), (1, 0)]);
    assert_eq!(lost(&[], DecimalMark::Point), (Vec::new(), 0));
}
