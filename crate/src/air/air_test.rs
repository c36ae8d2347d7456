//! What is refused, and how it is said. The published values are in `tests/numbers/air.rs`.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::words::in_english;

const ROOM: Air = Air { temperature_c: 20.0, pressure_pa: 101_325.0, humidity_percent: 50.0, co2_ppm: 450.0 };

#[test]
fn inputs_out_of_range_are_named() {
    let cases = [
        (Air { temperature_c: -40.1, ..ROOM }, 650.0, Input::Temperature),
        (Air { temperature_c: 100.1, ..ROOM }, 650.0, Input::Temperature),
        (Air { temperature_c: f64::NAN, ..ROOM }, 650.0, Input::Temperature),
        (Air { pressure_pa: 1013.25, ..ROOM }, 650.0, Input::Pressure),
        (Air { pressure_pa: 141e3, ..ROOM }, 650.0, Input::Pressure),
        (Air { humidity_percent: -1.0, ..ROOM }, 650.0, Input::Humidity),
        (Air { humidity_percent: 101.0, ..ROOM }, 650.0, Input::Humidity),
        (Air { co2_ppm: -1.0, ..ROOM }, 650.0, Input::CarbonDioxide),
        (ROOM, 299.0, Input::Wavelength),
        (ROOM, 1691.0, Input::Wavelength),
        (ROOM, f64::INFINITY, Input::Wavelength),
    ];
    for (air, wavelength, expected) in cases {
        match group_refractivity(&air, wavelength) {
            Err(AirError::OutOfRange { input, .. }) => assert_eq!(input, expected),
            other => unreachable!("{air:?} at {wavelength} nm: {other:?}"),
        }
        assert!(phase_refractivity(&air, wavelength).is_err());
        assert_eq!(out_of_range(&air, wavelength).count(), 1);
    }
}

/// In the unit of the field, with the notebook's decimal mark.
#[test]
fn refusals_are_written_as_the_notebook_writes() {
    let told = |air: &Air, mark| in_english(&group_index(air, 650.0).unwrap_err().message(mark));
    assert_eq!(
        told(&Air { pressure_pa: 1013.25, ..ROOM }, DecimalMark::Comma),
        "Air pressure: 10,1325\u{a0}hPa. The refractive index of air can be calculated only from 100\u{a0}hPa to 1400\u{a0}hPa. Check \
         the number and its unit."
    );
    let cold = told(&Air { temperature_c: -300.5, ..ROOM }, DecimalMark::Point);
    assert!(
        cold.contains("Air temperature: −300.5\u{a0}°C.") && cold.contains("from −40\u{a0}°C to 100\u{a0}°C"),
        "{cold}"
    );
    let steam = Air { temperature_c: 90.0, pressure_pa: 20_050.0, humidity_percent: 100.0, co2_ppm: 450.0 };
    assert!(told(&steam, DecimalMark::Comma).contains("air pressure of 200,5\u{a0}hPa"));
}

#[test]
fn more_vapour_than_pressure_is_refused() {
    let steam = Air { temperature_c: 90.0, pressure_pa: 20e3, humidity_percent: 100.0, co2_ppm: 450.0 };
    assert!(matches!(group_index(&steam, 650.0), Err(AirError::VapourAbovePressure { .. })));
}

#[test]
fn the_ends_of_the_ranges_are_allowed() {
    for wavelength in [300.0, 1690.0] {
        for (temperature_c, pressure_pa) in [(-40.0, 10e3), (-40.0, 140e3), (100.0, 140e3)] {
            let air = Air { temperature_c, pressure_pa, ..ROOM };
            assert!(group_index(&air, wavelength).is_ok_and(|n| n > 1.0));
        }
    }
    assert!(extrapolated(359.9) && !extrapolated(360.0));
}
