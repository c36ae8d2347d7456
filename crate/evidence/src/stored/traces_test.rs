#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

#[test]
fn an_estimator_is_called_as_the_format_has_it() {
    for estimator in Estimator::ALL {
        assert_eq!(serde_json::to_value(estimator).unwrap(), estimator.id());
    }
}
