//! The figures of a plan: what is expected, what would change it, how far and how fine one can go.

use super::super::budget::with_unit;
use super::super::figures::figure;
use super::super::math::{bracket, equation, number, op, over, power, root, row, symbol, times};
use super::super::types::Figure;
use super::Teller;
use crate::analysis::{Analysis, Quantity};
use crate::message;
use crate::plan::Plan;
use crate::plan::ask::Prediction;
use crate::quantity::{fixed, plain};

impl Teller<'_> {
    /// What is expected, part by part; what would change it; how far the pulse rate lets one go, and how fine the screen
    /// tells apart.
    pub fn figures(&self, found: &Plan, analysis: &Analysis) -> Vec<Figure> {
        let mut all = Vec::new();
        if let Ok(expected) = &found.predicted {
            all.extend(self.parts(expected));
            if let Ok(speed) = &analysis.speed {
                let achieved = self.percent(speed.relative_v);
                all.push(
                    figure("achieved", message!("plan-figures-achieved-name"), "u(v)/v", achieved)
                        .means(message!("plan-figures-achieved-meaning")),
                );
            }
            all.extend(self.what_ifs(found));
        }
        all.extend(self.reach(found));
        all
    }

    fn parts(&self, expected: &Prediction) -> [Figure; 3] {
        let [all, readings, shared] =
            [expected.relative, expected.readings, expected.shared].map(|u| self.percent(u));
        let squared = |base| power(base, "2");
        let lever = bracket(row(vec![symbol("d_i"), op("−"), symbol("d̄")]));
        [
            figure("expected", message!("plan-figures-expected-name"), "u(v)/v", all.clone())
                .means(message!("plan-figures-expected-meaning"))
                .by(equation(
                    over(symbol("u_v"), symbol("v")),
                    root(row(vec![squared(symbol("u_r")), op("+"), squared(symbol("u_s"))])),
                    root(row(vec![
                        squared(number(readings.clone())),
                        op("+"),
                        squared(number(shared.clone())),
                    ])),
                    all,
                ))
                .from(message!("plan-figures-expected-source")),
            figure("reading", message!("plan-figures-reading-name"), "u_r", readings)
                .means(message!("plan-figures-reading-meaning"))
                .by(row(vec![
                    symbol("u_b"),
                    op("="),
                    over(symbol("σ"), root(row(vec![op("Σ"), squared(lever)]))),
                    op(","),
                    squared(symbol("σ")),
                    op("="),
                    squared(symbol("u_t")),
                    op("+"),
                    squared(symbol("b")),
                    squared(symbol("u_d")),
                ]))
                .from(message!("plan-figures-reading-source")),
            figure("shared", message!("plan-figures-shared-name"), "u_s", shared)
                .means(message!("plan-figures-shared-meaning")),
        ]
    }

    fn what_ifs(&self, found: &Plan) -> impl Iterator<Item = Figure> {
        let what_if = &found.what_if;
        let told = |id, name, u: Option<f64>, meaning| {
            u.map(|u| figure(id, name, "", self.percent(u)).means(meaning))
        };
        let faster = what_if.faster.map(|(u, rows)| match rows {
            0 => message!("plan-none-faster"),
            rows => message!("plan-faster-rows", u = self.percent(u), rows = rows),
        });
        let [again, rail, floor] = [
            told(
                "again",
                message!("plan-figures-again-name"),
                what_if.again,
                message!("plan-figures-again-meaning"),
            ),
            told(
                "rail",
                message!("plan-figures-rail-name"),
                what_if.rail,
                message!("plan-figures-rail-meaning"),
            ),
            told(
                "floor",
                message!("plan-figures-floor-name"),
                what_if.floor.filter(|floor| *floor > 1e-6),
                message!("plan-figures-floor-meaning"),
            ),
        ];
        let faster = faster.map(|value| {
            figure("faster", message!("plan-figures-faster-name"), "", value)
                .means(message!("plan-figures-faster-meaning"))
        });
        [again, rail, floor, faster].into_iter().flatten()
    }

    fn reach(&self, found: &Plan) -> impl Iterator<Item = Figure> {
        let mark = self.page.decimal_mark;
        let factor = self.page.path.factor();
        let speed = format!("{}\u{a0}m/ns", plain(factor / self.context.model.slope, 4, mark));
        let factor = fixed(factor, 0, mark);
        let by_factor = |above, above_in_numbers| {
            (over(above, symbol("f")), over(above_in_numbers, number(factor.clone())))
        };
        let reach = found.reach.map(|(period, reach)| {
            let (reach, period) = (self.metres(reach), format!("{}\u{a0}ns", plain(period, 4, mark)));
            let (symbols, numbers) =
                by_factor(times(symbol("v"), symbol("T")), times(number(speed.clone()), number(period)));
            figure("reach", message!("plan-figures-reach-name"), "d_max", reach.clone())
                .means(message!("plan-figures-reach-meaning"))
                .by(equation(symbol("d_max"), symbols, numbers, reach))
        });
        let step = found.step.map(|(_, u, step)| {
            let (u, step) = (with_unit(u, Quantity::Time, mark), with_unit(step, Quantity::Length, mark));
            let product = |u, v| row(vec![number("2√2"), op("·"), u, op("·"), v]);
            let (symbols, numbers) =
                by_factor(product(symbol("u_t"), symbol("v")), product(number(u), number(speed.clone())));
            figure("step", message!("plan-figures-step-name"), "Δd", step.clone())
                .means(message!("plan-figures-step-meaning"))
                .by(equation(symbol("Δd"), symbols, numbers, step))
                .from(message!("plan-figures-step-source"))
        });
        [reach, step].into_iter().flatten()
    }
}
