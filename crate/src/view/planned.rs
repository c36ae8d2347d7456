//! The plan in figures: what is expected, what limits it, what would change it, how far and how fine one can go.

use super::budget::with_unit;
use super::figures::figure;
use super::math::{equation, number, op, over, power, root, row, symbol, times};
use super::plan::Words;
use super::types::Figure;
use crate::analysis::{Analysis, Quantity};
use crate::plan::Plan;
use crate::plan::ask::Prediction;
use crate::quantity::{Unit, in_unit, plain};

impl Words<'_> {
    pub(super) fn figures(&self, found: &Plan, analysis: &Analysis) -> Vec<Figure> {
        let mut figures = Vec::new();
        if let Ok(prediction) = &found.predicted {
            figures.extend(self.of_prediction(prediction));
            figures.extend(self.what_ifs(found));
            if let Ok(speed) = &analysis.speed {
                figures.push(figure(
                    "achieved",
                    "achieved so far",
                    "u(v)/v",
                    self.percent(speed.relative_v),
                    "What the readings gave, by the budget.",
                ));
            }
        }
        figures.extend(self.reach(found));
        figures
    }

    fn of_prediction(&self, found: &Prediction) -> Vec<Figure> {
        let squared = |u: f64| power(number(self.percent(u)), "2");
        let part = |id: &str, name: &str, symbol: &str, value: f64, meaning: &str| {
            figure(id, name, symbol, self.percent(value), meaning)
        };
        let mut figures = vec![
            part(
                "expected",
                "expected uncertainty of v",
                "u(v)/v",
                found.relative,
                "The engine that analyses the readings is asked before there are any: weights hang on what is stated and on where rows stand, not on what they read.",
            )
            .by(equation(
                over(symbol("u_v"), symbol("v")),
                root(row(vec![power(symbol("u_r"), "2"), op("+"), power(symbol("u_s"), "2")])),
                root(row(vec![squared(found.readings), op("+"), squared(found.shared)])),
                self.percent(found.relative),
            ))
            .from("ISO/TS 28037:2010, clauses 9 and 10"),
            part(
                "readings",
                "of this, from reading",
                "u_r",
                found.readings,
                "Each row has its own: repeats and a longer lever reduce it. The formula holds for rows that are all alike and share nothing.",
            )
            .by(row(vec![
                symbol("u_b"),
                op("="),
                over(symbol("σ"), root(row(vec![op("Σ"), power(row(vec![symbol("d_i"), op("−"), symbol("d̄")]), "2")]))),
                op(","),
                power(symbol("σ"), "2"),
                op("="),
                power(symbol("u_t"), "2"),
                op("+"),
                times(power(symbol("b"), "2"), power(symbol("u_d"), "2")),
            ]))
            .from("ISO/TS 28037:2010, clauses 6 and 7"),
            part(
                "shared",
                "of this, shared by rows",
                "u_s",
                found.shared,
                "Splices, scales, time bases, the beam: at the weights of this plan.",
            ),
        ];
        if let Some(limit) = self.limit(found) {
            figures.push(figure(
                "limit",
                "what limits it",
                "",
                limit,
                "The largest part. Work on this one first.",
            ));
        }
        figures
    }

    fn what_ifs(&self, found: &Plan) -> Vec<Figure> {
        let what_if = &found.what_if;
        let none = || "no change".to_owned();
        let mut figures = Vec::new();
        let mut put = |id: &str, name: &str, value: Option<f64>, meaning: &str| {
            figures.extend(value.map(|value| figure(id, name, "", self.percent(value), meaning)));
        };
        put(
            "again",
            "with one more repeat of each position",
            what_if.again,
            "A repeat is a row of its own: the carriage is set anew.",
        );
        put(
            "rail",
            "with one more rail like the last",
            what_if.rail,
            "Joined as well as the last one, with positions as on it.",
        );
        let floor = what_if.floor.filter(|floor| *floor > 1e-6);
        put(
            "floor",
            "what no repeat can buy",
            floor,
            "However often all is read: what rows share stays. Better splices, scales or time bases lower it.",
        );
        if let Some((value, rows)) = what_if.faster {
            let value = if rows == 0 { none() } else { self.percent(value) };
            let meaning = format!(
                "Half the time per division at the {rows} rows whose delay still finds room on the screen."
            );
            figures.push(figure("faster", "with a time base twice as fast", "", value, &meaning));
        }
        figures
    }

    fn reach(&self, found: &Plan) -> Vec<Figure> {
        let mark = self.mark();
        let velocity =
            number(format!("{} m/ns", plain(self.page.path.factor() / self.ground.model.slope, 4, mark)));
        let factor = number(in_unit(self.page.path.factor(), Unit::ONE, mark));
        let mut figures = Vec::new();
        if let Some((period, reach)) = found.reach {
            let value = format!("{} m", plain(reach, 3, mark));
            figures.push(
                figure(
                    "reach",
                    "farthest distance that the pulse rate allows",
                    "d_max",
                    value.clone(),
                    "There the delay is one pulse period: beyond it the next pulse comes first.",
                )
                .by(equation(
                    symbol("d_max"),
                    over(times(symbol("v"), symbol("T")), symbol("f")),
                    over(
                        times(velocity.clone(), number(format!("{} ns", plain(period, 4, mark)))),
                        factor.clone(),
                    ),
                    value,
                )),
            );
        }
        if let Some((time, u, step)) = found.step {
            let value = format!("{} cm", plain(100.0 * step, 2, mark));
            let meaning = format!(
                "Nearer places give delays whose difference is less than twice its standard uncertainty, at {} ns per division (common practice).",
                plain(time, 3, mark)
            );
            let twice = || number("2√2");
            figures.push(
                figure("step", "shortest step that the screen tells apart", "Δd", value.clone(), &meaning)
                    .by(equation(
                        symbol("Δd"),
                        over(row(vec![twice(), op("·"), symbol("u_t"), op("·"), symbol("v")]), symbol("f")),
                        over(
                            row(vec![
                                twice(),
                                op("·"),
                                number(with_unit(u, Quantity::Time, mark)),
                                op("·"),
                                velocity,
                            ]),
                            factor,
                        ),
                        value,
                    )),
            );
        }
        figures
    }
}
