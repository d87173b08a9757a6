//! Temperature: copper, thermistors, water.

use crate::units::ZERO_C_K;

/// Temperature coefficient of annealed copper at 20 °C, 1/K (IEC 60028, from secondary sources).
pub const COPPER_PER_K: f64 = 0.003_93;

/// Resistance at `c` °C of a copper winding that has `ohms_20c` at 20 °C, Ω.
pub fn copper_ohms(ohms_20c: f64, c: f64) -> f64 {
    ohms_20c * (1.0 + COPPER_PER_K * (c - 20.0))
}

/// Resistance of an NTC thermistor at `c` °C by the Beta equation, Ω.
pub fn ntc_beta_ohms(r25_ohms: f64, beta_k: f64, c: f64) -> f64 {
    r25_ohms * libm::exp(beta_k * (1.0 / (c + ZERO_C_K) - 1.0 / (25.0 + ZERO_C_K)))
}

/// Extended Steinhart–Hart coefficients of resistance by temperature:
/// R = R25 · exp(A + B/T + C/T² + D/T³), T in kelvin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NtcCurve {
    /// A, no unit.
    pub a: f64,
    /// B, K.
    pub b_k: f64,
    /// C, K².
    pub c_k2: f64,
    /// D, K³.
    pub d_k3: f64,
}

/// The curve of the usual B25/85 = 3977 K material, as component makers print it
/// (10 kΩ series; forward coefficients from memory, checked against the printed table in the tests).
pub const NTC_3977: NtcCurve = NtcCurve {
    a: -14.6337,
    b_k: 4791.842,
    c_k2: -115_334.0,
    d_k3: -3.730_535e6,
};

impl NtcCurve {
    /// Resistance at `c` °C of a part with `r25_ohms` at 25 °C, Ω.
    pub fn ohms(&self, r25_ohms: f64, c: f64) -> f64 {
        let t = 1.0 / (c + ZERO_C_K);
        r25_ohms * libm::exp(self.a + t * (self.b_k + t * (self.c_k2 + t * self.d_k3)))
    }
}

/// Temperature by the Steinhart–Hart equation 1/T = A + B ln R + C (ln R)³, °C.
pub fn steinhart_hart_c(a: f64, b: f64, c: f64, ohms: f64) -> f64 {
    let ln = libm::log(ohms);
    1.0 / (a + b * ln + c * ln * ln * ln) - ZERO_C_K
}

/// Density of liquid water at 101.325 kPa and `c` °C, kg/m³.
///
/// Kell's formula (J. Chem. Eng. Data 20, 1975; coefficients from a secondary source, checked
/// against an IAPWS-IF97 crate in the tests).
pub fn water_kg_m3(c: f64) -> f64 {
    let top = 999.839_52
        + c * (16.945_176
            + c * (-7.987_040_1e-3
                + c * (-46.170_461e-6 + c * (105.563_02e-9 - c * 280.542_53e-12))));
    top / (1.0 + 16.879_850e-3 * c)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn copper_follows_its_coefficient() {
        // 10 Ω at 20 °C is 12.358 Ω at 80 °C: handbook coefficient, arithmetic.
        assert!((copper_ohms(10.0, 80.0) - 12.358).abs() < 1e-9);
    }

    #[test]
    fn the_thermistor_curve_matches_the_printed_table() {
        // Component series table, 10 kΩ, B25/85 = 3977 K, ±0.1 %.
        for (c, ohms) in [
            (0.0, 32_554.8),
            (20.0, 12_488.0),
            (25.0, 10_000.2),
            (40.0, 5_330.0),
            (60.0, 2_490.0),
            (85.0, 1_070.3),
            (90.0, 915.4),
        ] {
            let got = NTC_3977.ohms(10_000.0, c);
            assert!(
                (got / ohms - 1.0).abs() < 1e-3,
                "{c} °C: {got} Ω, table {ohms} Ω"
            );
        }
    }

    #[test]
    fn beta_and_steinhart_hart_match_their_worked_values() {
        // Pure Beta: independent arithmetic.
        for (c, ohms) in [(40.0, 5278.52), (60.0, 2462.62), (90.0, 918.57)] {
            assert!((ntc_beta_ohms(10_000.0, 3977.0, c) / ohms - 1.0).abs() < 1e-5);
        }
        // Widely printed coefficients: 10 kΩ is 24.9997 °C.
        let c = steinhart_hart_c(1.129_148e-3, 2.341_25e-4, 8.767_41e-8, 10_000.0);
        assert!((c - 24.9997).abs() < 1e-3, "{c}");
    }

    #[test]
    fn steinhart_hart_reproduces_an_instrument_makers_table() {
        // Instrument manual, thermistor appendix, table A.1, fitted through its 0, 25 and 50 °C rows.
        let (a, b, c) = (1.104_159e-3, 2.389_179e-4, 6.931_627e-8);
        for (ohms, degrees) in [
            (32_128.0, 0.0),
            (19_549.0, 10.0),
            (12_262.0, 20.0),
            (9_814.0, 25.0),
            (7_908.0, 30.0),
            (3_542.0, 50.0),
        ] {
            assert!((steinhart_hart_c(a, b, c, ohms) - degrees).abs() < 0.0025);
        }
    }

    #[test]
    fn water_density_agrees_with_iapws() {
        // IAPWS-IF97 by the crate seuif97, 101.325 kPa; tolerance 0.05 kg/m³.
        for c in [4.0, 20.0, 25.0, 40.0, 60.0, 80.0, 90.0] {
            let reference = 1.0 / seuif97::pt(0.101_325, c, seuif97::OV);
            assert!(
                (water_kg_m3(c) - reference).abs() < 0.05,
                "{c} °C: {} {reference}",
                water_kg_m3(c)
            );
        }
    }
}
