//! The figures of a plan: what is expected, what would change it, how far and how fine one can go.

use super::super::budget::with_unit;
use super::super::figures::figure;
use super::super::math::{equation, formula};
use super::super::types::Figure;
use super::Teller;
use crate::analysis::{Analysis, Quantity};
use crate::message;
use crate::plan::ask::Prediction;
use crate::plan::{Farthest, FinestStep, Plan};
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
        [
            figure("expected", message!("plan-figures-expected-name"), "u(v)/v", all.clone())
                .means(message!("plan-figures-expected-meaning"))
                .by(equation(
                    "u_v/v",
                    "√{u_r^2 + u_s^2}",
                    "√{#^2 + #^2}",
                    vec![readings.clone(), shared.clone()],
                    all,
                ))
                .from(message!("plan-figures-expected-source")),
            figure("reading", message!("plan-figures-reading-name"), "u_r", readings)
                .means(message!("plan-figures-reading-meaning"))
                .by(formula("u_b = σ/√{Σ (d_i − d̄)^2}, σ^2 = u_t^2 + b^2 u_d^2", vec![]))
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
        let faster = what_if.faster.map(|found| match found.rows {
            0 => message!("plan-none-faster"),
            rows => message!("plan-faster-rows", u = self.percent(found.relative), rows = rows),
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
        let reach = found.farthest.map(|Farthest { period, distance }| {
            let (reach, period) = (self.metres(distance), format!("{}\u{a0}ns", plain(period, 4, mark)));
            let numbers = vec![speed.clone(), period, factor.clone()];
            figure("reach", message!("plan-figures-reach-name"), "d_max", reach.clone())
                .means(message!("plan-figures-reach-meaning"))
                .by(equation("d_max", "{v·T}/f", "{#·#}/#", numbers, reach))
        });
        let step = found.finest.map(|FinestStep { u_delay, distance }| {
            let u = with_unit(u_delay, Quantity::Time, mark);
            let step = with_unit(distance, Quantity::Length, mark);
            let numbers = vec![u, speed.clone(), factor.clone()];
            figure("step", message!("plan-figures-step-name"), "Δd", step.clone())
                .means(message!("plan-figures-step-meaning"))
                .by(equation("Δd", "{`2√2`·u_t·v}/f", "{`2√2`·#·#}/#", numbers, step))
                .from(message!("plan-figures-step-source"))
        });
        [reach, step].into_iter().flatten()
    }
}
