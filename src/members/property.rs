//! The values a stick of wood is designed by.

/// One design value, with the symbol engineers know it by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Property {
    /// `F_b`: the edge of a bent stick.
    Bending,
    /// `F_t`: pulled along the grain.
    Tension,
    /// `F_v`: sheared along the grain.
    Shear,
    /// `F_c⊥`: pressed on the side of the grain.
    BearingAcross,
    /// `F_c`: pressed along the grain.
    Compression,
    /// `E`: how stiff it is on average.
    Stiffness,
    /// `E_min`: how stiff one of the softest is, for buckling.
    LeastStiffness,
}

impl Property {
    /// Every one, in the order of the tables.
    pub const ALL: [Self; 7] = [
        Self::Bending,
        Self::Tension,
        Self::Shear,
        Self::BearingAcross,
        Self::Compression,
        Self::Stiffness,
        Self::LeastStiffness,
    ];

    /// `F_b`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Bending => "F_b",
            Self::Tension => "F_t",
            Self::Shear => "F_v",
            Self::BearingAcross => "F_c⊥",
            Self::Compression => "F_c",
            Self::Stiffness => "E",
            Self::LeastStiffness => "E_min",
        }
    }

    /// In trade words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bending => "bending",
            Self::Tension => "tension along the grain",
            Self::Shear => "shear along the grain",
            Self::BearingAcross => "bearing on the side of the grain",
            Self::Compression => "compression along the grain",
            Self::Stiffness => "stiffness",
            Self::LeastStiffness => "stiffness for buckling",
        }
    }

    /// Its place in a row of values.
    pub(super) const fn place(self) -> usize {
        self as usize
    }
}
