//! Capacitor-run reversible motor: two like windings in quadrature, by the double revolving field.
//!
//! The rotor turns one way when line reaches winding A directly and winding B through the run
//! capacitor, and the other way when they change places. Without the capacitor the two fields are
//! equal at standstill and there is no starting torque: that is physics here, not a rule.
//!
//! Source: the revolving-field treatment of two-winding single-phase machines in A. E. Fitzgerald,
//! C. Kingsley and S. D. Umans, *Electric Machinery*, ch. 9 (from memory; equations re-derived in
//! the comments below).

use num_complex::Complex64;

/// Pole count of the motor.
pub const POLES: f64 = 4.0;
/// Frequency at which the reactance parameters are stated, Hz.
const STATED_AT_HZ: f64 = 60.0;

/// Equivalent-circuit constants of one motor on one supply.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotorCircuit {
    /// Resistance of winding A at its temperature, Ω.
    pub a_ohms: f64,
    /// Resistance of winding B at its temperature, Ω.
    pub b_ohms: f64,
    /// Leakage reactance of a winding at 60 Hz, Ω.
    pub leak_ohms: f64,
    /// Magnetising reactance at 60 Hz, Ω.
    pub magnet_ohms: f64,
    /// Rotor resistance, Ω.
    pub rotor_ohms: f64,
    /// Rotor leakage reactance at 60 Hz, Ω.
    pub rotor_leak_ohms: f64,
    /// Supply frequency, Hz.
    pub supply_hz: f64,
}

/// Synchronous speed, rev/min: 120 f / p.
pub fn synchronous_rpm(supply_hz: f64, poles: f64) -> f64 {
    120.0 * supply_hz / poles
}

impl MotorCircuit {
    /// Synchronous speed, rad/s.
    pub fn synchronous_rad_s(&self) -> f64 {
        synchronous_rpm(self.supply_hz, POLES) * (core::f64::consts::PI / 30.0)
    }

    /// Impedance of the field that slips by `slip`, Ω: half the magnetising branch in parallel
    /// with the rotor.
    fn field(&self, slip: f64) -> Complex64 {
        let scale = self.supply_hz / STATED_AT_HZ;
        // At exact synchronism the rotor branch is open; a slip floor keeps the algebra finite.
        let slip = if slip.abs() < 1e-4 { 1e-4 } else { slip };
        let rotor = Complex64::new(self.rotor_ohms / slip, self.rotor_leak_ohms * scale);
        let magnet = Complex64::new(0.0, self.magnet_ohms * scale);
        0.5 * quotient(magnet * rotor, magnet + rotor)
    }

    /// Forward and backward field impedances, Ω, at `speed` as a fraction of synchronous speed,
    /// positive in direction A.
    pub fn fields(&self, speed: f64) -> (Complex64, Complex64) {
        (self.field(1.0 - speed), self.field(1.0 + speed))
    }

    /// Admittance matrix of windings A and B, S: `i = Y v`, each winding from its own lead to the
    /// common lead.
    pub fn admittance(&self, speed: f64) -> [[Complex64; 2]; 2] {
        let (forward, backward) = self.fields(speed);
        let leak = Complex64::new(0.0, self.leak_ohms * self.supply_hz / STATED_AT_HZ);
        // v_A = (R_A + jX + Zf + Zb) i_A - j (Zf - Zb) i_B
        // v_B = j (Zf - Zb) i_A + (R_B + jX + Zf + Zb) i_B
        let aa = self.a_ohms + leak + forward + backward;
        let bb = self.b_ohms + leak + forward + backward;
        let ba = Complex64::i() * (forward - backward);
        let det = aa * bb + ba * ba;
        [
            [quotient(bb, det), quotient(ba, det)],
            [quotient(-ba, det), quotient(aa, det)],
        ]
    }

    /// Air-gap torque, N·m, positive in direction A, for winding currents in A rms.
    ///
    /// The power that crosses the gap with the forward field is Re(Zf)·|i_A − j i_B|², with the
    /// backward field Re(Zb)·|i_A + j i_B|².
    pub fn torque_nm(&self, speed: f64, a: Complex64, b: Complex64) -> f64 {
        let (forward, backward) = self.fields(speed);
        let jb = Complex64::i() * b;
        (forward.re * (a - jb).norm_sqr() - backward.re * (a + jb).norm_sqr())
            / self.synchronous_rad_s()
    }
}

/// Length of a phasor, the same to the bit everywhere.
pub fn rms(phasor: Complex64) -> f64 {
    phasor.norm_sqr().sqrt()
}

/// Complex quotient by the textbook formula, the same to the bit everywhere.
pub fn quotient(a: Complex64, b: Complex64) -> Complex64 {
    a * b.conj() / b.norm_sqr()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circuit() -> MotorCircuit {
        MotorCircuit {
            a_ohms: 3.4,
            b_ohms: 3.4,
            leak_ohms: 2.6,
            magnet_ohms: 62.0,
            rotor_ohms: 5.2,
            rotor_leak_ohms: 2.8,
            supply_hz: 60.0,
        }
    }

    #[test]
    fn synchronous_speed_and_slip_match_the_handbook() {
        // n = 120 f / p: any electrical machines handbook; 1725 rev/min is the usual rating plate.
        assert_eq!(synchronous_rpm(60.0, 4.0), 1800.0);
        assert_eq!(synchronous_rpm(50.0, 2.0), 3000.0);
        let slip = 1.0 - 1725.0 / synchronous_rpm(60.0, 4.0);
        assert!((slip - 0.041_667).abs() < 1e-6);
        // T = 9550 P / n: 0.75 kW at 1725 rev/min is 4.152 N·m.
        let torque = 750.0 / (1725.0 * core::f64::consts::PI / 30.0);
        assert!((torque - 4.152).abs() < 1e-3);
    }

    #[test]
    fn one_winding_alone_gives_no_starting_torque() {
        let amps = Complex64::new(8.0, -5.0);
        assert!(circuit().torque_nm(0.0, amps, Complex64::ZERO).abs() < 1e-12);
        assert!(circuit().torque_nm(0.5, amps, Complex64::ZERO) > 0.1);
    }

    #[test]
    fn balanced_currents_reproduce_the_three_element_circuit() {
        // With i_B = j i_A only the forward field remains: torque = 2·(Re 2Zf)·|i|²/ω, the balanced
        // two-phase machine. Independent arithmetic.
        let c = circuit();
        let i = Complex64::new(3.0, 0.0);
        let speed = 0.95;
        let rotor = Complex64::new(c.rotor_ohms / 0.05, c.rotor_leak_ohms);
        let magnet = Complex64::new(0.0, c.magnet_ohms);
        let parallel = magnet * rotor / (magnet + rotor);
        let expected = 2.0 * parallel.re * i.norm_sqr() / c.synchronous_rad_s();
        let got = c.torque_nm(speed, i, Complex64::i() * i);
        assert!(
            (got - expected).abs() < 1e-9 * expected.abs(),
            "{got} {expected}"
        );
    }

    #[test]
    fn admittance_is_the_inverse_of_the_impedance() {
        let c = circuit();
        let y = c.admittance(0.7);
        let (f, b) = c.fields(0.7);
        let z = c.a_ohms + Complex64::new(0.0, c.leak_ohms) + f + b;
        let m = Complex64::i() * (f - b);
        let one = z * y[0][0] - m * y[1][0];
        let zero = z * y[0][1] - m * y[1][1];
        assert!((one - 1.0).norm_sqr() < 1e-20 && zero.norm_sqr() < 1e-20);
    }
}
