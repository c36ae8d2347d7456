//! The index of air against Ciddor's tables, the NIST calculator, the IAG formula and 40-digit arithmetic.
//! Each file in `reference/` names its source.
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::air::{
    Air, enhancement_factor, group_index, group_refractivity, phase_refractivity, saturation_pressure,
};

use crate::reference::{assert_close, number, read, rows};

fn air(row: &Value) -> Air {
    Air {
        temperature_c: number(row, "t"),
        pressure_pa: number(row, "p"),
        humidity_percent: number(row, "rh"),
        co2_ppm: number(row, "xc"),
    }
}

/// P. E. Ciddor, Applied Optics 35 (1996) 1566, tables 1 and 3. The printed values have 0.1 × 10⁻⁸ as last
/// digit, so half of that and the two places that round differently in the paper: 0.06. The computed ones
/// carry 12 digits after the point; refractivity agrees within rounding, 10⁻¹² relative.
#[test]
fn ciddor_1996_tables() {
    let reference = read("air-ciddor1996-table1-3.json");
    for table in ["table1", "table3"] {
        for row in rows(&reference["expected"][table]) {
            let found = phase_refractivity(&air(row), 633.0).unwrap() * 1e8;
            let published = number(row, "published");
            assert!((found - published).abs() < 0.06, "{row}: {found}");
            assert_close(found, number(row, "computed"), 1e-12, row);
        }
    }
}

/// Phase and group refractivity in 40-digit arithmetic: 10⁻¹² relative is rounding. The sensitivities are
/// compared with central differences, whose own error is about 10⁻⁶.
#[test]
fn ciddor_in_forty_digits() {
    let reference = read("air-ciddor-group-phase.json");
    for row in rows(&reference["expected"]) {
        let (air, wavelength) = (air(row), number(row, "lambda_nm"));
        let phase = phase_refractivity(&air, wavelength).unwrap();
        let group = group_refractivity(&air, wavelength).unwrap();
        assert_close(phase * 1e8, number(row, "refractivity_phase_1e8"), 1e-12, row);
        assert_close(group * 1e8, number(row, "refractivity_group_1e8"), 1e-12, row);
        let n_group = group_index(&air, wavelength).unwrap();
        assert_close(n_group, number(row, "n_group"), f64::EPSILON, row);
        assert_close(n_group / 0.299_792_458, number(row, "ns_per_m"), 1e-15, row);
        // Ciddor and Hill (1999) build the group index otherwise: at most 5.6 × 10⁻¹⁰ apart.
        let other = number(row, "refractivity_group_lorentz_lorenz_1e8") / 1e8;
        assert!((group - other).abs() < 6e-10, "{row}");

        let n = |air: Air| group_refractivity(&air, wavelength).unwrap();
        let slope = |step: f64, moved: &dyn Fn(f64) -> Air| (n(moved(step)) - n(moved(-step))) / (2.0 * step);
        let by_t = slope(0.01, &|h| Air { temperature_c: air.temperature_c + h, ..air });
        let by_p = slope(10.0, &|h| Air { pressure_pa: air.pressure_pa + h, ..air });
        let by_co2 = slope(1.0, &|h| Air { co2_ppm: air.co2_ppm + h, ..air });
        assert_close(by_t, number(row, "dng_dt"), 1e-6, row);
        assert_close(by_p, number(row, "dng_dp"), 1e-6, row);
        assert_close(by_co2, number(row, "dng_dxc_ppm"), 1e-6, row);
        if air.humidity_percent > 0.0 {
            let by_humidity = slope(0.01, &|h| Air { humidity_percent: air.humidity_percent + h, ..air });
            assert_close(by_humidity, number(row, "dng_drh_percent"), 1e-6, row);
        }
    }
}

/// NIST Engineering Metrology Toolbox, printed to 10⁻⁹. Half a unit of the last digit, and 4 × 10⁻¹⁰ for its
/// use of another saturation pressure.
#[test]
fn nist_calculator() {
    let reference = read("air-nist-calculator.json");
    for row in rows(&reference["expected"]) {
        let air = Air {
            temperature_c: number(row, "t"),
            pressure_pa: number(row, "p") * 1000.0,
            humidity_percent: number(row, "rh"),
            co2_ppm: 450.0,
        };
        let n = 1.0 + phase_refractivity(&air, number(row, "lambda_nm")).unwrap();
        assert!((n - number(row, "ciddor")).abs() < 0.9e-9, "{row}: {n}");
        // The file gives 15 digits after the point.
        assert_close(n, number(&row["computed"], "ciddor_original_svp"), 5e-16, row);
    }
}

/// IAG Resolution 3 (1999): its closed formula is stated to hold within 0.25 ppm. Ciddor's own value in the
/// file has 10 digits.
#[test]
fn iag_1999_closed_formula() {
    let reference = read("air-iag1999-group.json");
    let air = Air { temperature_c: 0.0, pressure_pa: 101_325.0, humidity_percent: 0.0, co2_ppm: 375.0 };
    for row in rows(&reference["expected"]) {
        let wavelength = number(row, "lambda_nm");
        let group = group_refractivity(&air, wavelength).unwrap() * 1e6;
        let phase = phase_refractivity(&air, wavelength).unwrap() * 1e6;
        assert!((group - number(row, "N_group_iag")).abs() < 0.25, "{row}: {group}");
        assert_close(group, number(row, "N_group_ciddor"), 2e-10, row);
        assert_close(phase, number(row, "N_phase_ciddor"), 2e-10, row);
    }
}

/// Ciddor 1996, appendix A, in 40-digit arithmetic, given to 12 digits; IAPWS-IF97 beside it, from which the
/// older formula stands off by at most 6 parts in 10⁵ (at 10 °C).
#[test]
fn saturation_pressure_of_water() {
    let reference = read("air-saturation-pressure.json");
    for row in rows(&reference["expected"]) {
        let t = number(row, "t");
        assert_close(saturation_pressure(t), number(row, "ciddor"), 1e-11, row);
        assert_close(saturation_pressure(t), number(row, "iapws_if97"), 6e-5, row);
        assert_close(enhancement_factor(t, 101_325.0), number(row, "enhancement_at_101325"), 1e-9, row);
    }
}
