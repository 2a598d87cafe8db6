//! The ways a dowel in a joint gives way (NDS 2015 12.3.1): the wood crushes, the dowel turns, the dowel bends.
//!
//! ```text
//!      main |  side        D dowel diameter, l_m and l_s bearing lengths,
//!   ========|=====o        F_em, F_es bearing strengths, F_yb the dowel's bending yield
//!      l_m  | l_s
//! ```
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number, pounds, psi};
use crate::units::{Force, Length, Stress};
use crate::working::{Citation, Step};

/// One way of giving way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The main member crushes.
    Im,
    /// The side member crushes.
    Is,
    /// The dowel turns stiff in both members.
    II,
    /// The dowel bends in the main member.
    IIIm,
    /// The dowel bends in the side member.
    IIIs,
    /// The dowel bends in both.
    IV,
    /// A peg shears at the joint plane.
    V,
}

impl Mode {
    /// What happens, in plain words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Im => "the wood of the main member crushes",
            Self::Is => "the wood of the side member crushes",
            Self::II => "the dowel turns in both members",
            Self::IIIm => "the dowel bends and the main member crushes",
            Self::IIIs => "the dowel bends and the side member crushes",
            Self::IV => "the dowel bends in both members",
            Self::V => "the peg shears off",
        }
    }
}

/// The load of one mode, divided by its reduction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YieldLoad {
    /// The mode.
    pub mode: Mode,
    /// The load.
    pub load: Force,
}

/// What the yield equations need to know of a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dowel {
    /// D: the diameter that carries.
    pub diameter: Length,
    /// F_yb.
    pub bending_yield: Stress,
    /// l_m.
    pub main_length: Length,
    /// l_s, of one side member.
    pub side_length: Length,
    /// F_em.
    pub main_bearing: Stress,
    /// F_es.
    pub side_bearing: Stress,
}

impl Dowel {
    /// Refuses a joint with a part missing.
    pub(super) fn whole(&self) -> Result<(), Refused> {
        above_zero("the diameter of the dowel", self.diameter.to_inches())?;
        above_zero("the bearing length in the main member", self.main_length.to_inches())?;
        above_zero("the bearing length in the side member", self.side_length.to_inches())?;
        above_zero("the bearing strength of the main member", self.main_bearing.to_psi())?;
        above_zero("the bearing strength of the side member", self.side_bearing.to_psi())?;
        above_zero("the bending yield strength of the dowel", self.bending_yield.to_psi())
    }

    /// The load of a mode in one shear plane, before its reduction R_d. Mode V is no matter of these equations: zero.
    #[must_use]
    pub fn yield_load(&self, mode: Mode) -> Force {
        let (ratio, diameter) = (self.main_bearing / self.side_bearing, self.diameter);
        let main = self.main_bearing * (diameter * self.main_length);
        let side = self.side_bearing * (diameter * self.side_length);
        match mode {
            Mode::Im => main,
            Mode::Is => side,
            Mode::II => side * self.k1(),
            Mode::IIIm => main * (self.k2() / (1.0 + 2.0 * ratio)),
            Mode::IIIs => self.main_bearing * (diameter * self.side_length) * (self.k3() / (2.0 + ratio)),
            Mode::IV => {
                let stress = 2.0 * self.main_bearing.to_psi() * self.bending_yield.to_psi() / (3.0 * (1.0 + ratio));
                Stress::psi(stress.sqrt()) * (diameter * diameter)
            }
            Mode::V => Force::ZERO,
        }
    }

    /// k₁ of NDS Table 12.3.1A.
    fn k1(&self) -> f64 {
        let (re, rt) = (self.main_bearing / self.side_bearing, self.main_length / self.side_length);
        let root = (re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re.powi(3)).sqrt();
        (root - re * (1.0 + rt)) / (1.0 + re)
    }

    /// 2·F_yb·D²/(3·F_em·l²).
    fn bending_term(&self, length: Length) -> f64 {
        let slenderness = self.diameter / length;
        2.0 * (self.bending_yield / self.main_bearing) * slenderness * slenderness / 3.0
    }

    /// k₂ of NDS Table 12.3.1A.
    fn k2(&self) -> f64 {
        let re = self.main_bearing / self.side_bearing;
        -1.0 + (2.0 * (1.0 + re) + (1.0 + 2.0 * re) * self.bending_term(self.main_length)).sqrt()
    }

    /// k₃ of NDS Table 12.3.1A.
    fn k3(&self) -> f64 {
        let re = self.main_bearing / self.side_bearing;
        -1.0 + (2.0 * (1.0 + re) / re + (2.0 + re) * self.bending_term(self.side_length)).sqrt()
    }

    /// The mode's load over its reduction, `planes` times, with its step.
    pub(super) fn reduced(&self, mode: Mode, planes: f64, reduction: f64, citation: Citation) -> (YieldLoad, Step) {
        let load = self.yield_load(mode) * (planes / reduction);
        let times = if planes > 1.0 { "2·" } else { "" };
        let formula = self.formula(mode, reduction).replacen(" = ", &format!(" = {times}"), 1);
        let says = format!("{times}{formula} = {} lb", pounds(load));
        (YieldLoad { mode, load }, Step::new(format!("Z of mode {mode:?}: {}", mode.words()), says, citation))
    }

    fn formula(&self, mode: Mode, reduction: f64) -> String {
        let (d, lm, ls) = (inches(self.diameter), inches(self.main_length), inches(self.side_length));
        let (fem, fes, fyb) = (psi(self.main_bearing), psi(self.side_bearing), psi(self.bending_yield));
        let (re, rd) = (self.main_bearing / self.side_bearing, number(reduction));
        let re_text = number(re);
        match mode {
            Mode::Im => format!("D·l_m·F_em/R_d = {d}·{lm}·{fem}/{rd}"),
            Mode::Is => format!("D·l_s·F_es/R_d = {d}·{ls}·{fes}/{rd}"),
            Mode::II => format!("k₁·D·l_s·F_es/R_d = {}·{d}·{ls}·{fes}/{rd}", number(self.k1())),
            Mode::IIIm => {
                let k2 = number(self.k2());
                format!("k₂·D·l_m·F_em/((1 + 2R_e)·R_d) = {k2}·{d}·{lm}·{fem}/((1 + 2·{re_text})·{rd})")
            }
            Mode::IIIs => {
                let k3 = number(self.k3());
                format!("k₃·D·l_s·F_em/((2 + R_e)·R_d) = {k3}·{d}·{ls}·{fem}/((2 + {re_text})·{rd})")
            }
            Mode::IV => {
                format!("(D²/R_d)·√(2·F_em·F_yb/(3(1 + R_e))) = ({d}²/{rd})·√(2·{fem}·{fyb}/(3(1 + {re_text})))")
            }
            Mode::V => String::new(),
        }
    }
}

/// The mode that gives way first.
pub(super) fn least(modes: &[YieldLoad]) -> Result<YieldLoad, Refused> {
    let found = modes.iter().copied().min_by(|a, b| a.load.to_pounds().total_cmp(&b.load.to_pounds()));
    found.ok_or_else(|| Refused::because("No way of giving way was looked at."))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Equal members of equal wood (R_e = R_t = 1): k₁ = (√8 − 2)/2 = √2 − 1, and modes III agree with each other.
    #[test]
    fn equal_members_follow_the_closed_form() {
        let dowel = Dowel {
            diameter: Length::inches(0.5),
            bending_yield: Stress::psi(45_000.0),
            main_length: Length::inches(2.0),
            side_length: Length::inches(2.0),
            main_bearing: Stress::psi(4000.0),
            side_bearing: Stress::psi(4000.0),
        };
        let crush = 0.5 * 2.0 * 4000.0;
        assert!((dowel.yield_load(Mode::Im).to_pounds() - crush).abs() < 1e-9);
        assert!((dowel.yield_load(Mode::II).to_pounds() - crush * (2.0_f64.sqrt() - 1.0)).abs() < 1e-9);
        assert!((dowel.yield_load(Mode::IIIm) - dowel.yield_load(Mode::IIIs)).abs() < Force::pounds(1e-9));
        let bend = 0.25 * (4000.0_f64 * 45_000.0 / 3.0).sqrt();
        assert!((dowel.yield_load(Mode::IV).to_pounds() - bend).abs() < 1e-9);
        assert!(dowel.whole().is_ok());
        assert!(Dowel { side_length: Length::ZERO, ..dowel }.whole().is_err());
        assert!(least(&[]).is_err());
    }
}
