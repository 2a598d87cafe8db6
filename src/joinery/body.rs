//! A stick as wood: the stock it is sawn from, everything that is cut out of it, and what is left.
use crate::project::Role;
use crate::solid::{Convex, Skin, Solid, Surface, Vector};
use crate::units::{Length, Volume};

/// What a cut is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutKind {
    /// The stick's own end, tenon cheeks or shoulder: shaping, with no other stick let in.
    Shaping,
    /// The end of a piece in a scarf or splice.
    Lap,
    /// A shallow recess that another stick's whole end enters.
    Housing,
    /// The hole for a tenon.
    Mortise,
    /// A notch over a support.
    BirdsMouth,
    /// A peg's hole.
    PegHole,
    /// The hole of a bolt or a lag screw.
    Bored,
    /// An arris taken off.
    Chamfer,
}

/// One cut, in the frame's own place.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// What it is, in the words of the sheet: "mortise of P2".
    pub what: String,
    /// What it is for.
    pub kind: CutKind,
    /// The stick that meets this one here.
    pub mate: Option<String>,
    /// The wood that goes, in convex bodies.
    pub tools: Vec<Convex>,
}

impl Cut {
    /// A cut with no mate.
    #[must_use]
    pub fn new(what: impl Into<String>, kind: CutKind, tools: Vec<Convex>) -> Self {
        Self { what: what.into(), kind, mate: None, tools }
    }

    /// With the stick that meets this one here.
    #[must_use]
    pub fn mate(mut self, mate: impl Into<String>) -> Self {
        self.mate = Some(mate.into());
        self
    }
}

/// A stick standing in the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct StickBody {
    /// Its mark.
    pub mark: String,
    /// What it does.
    pub role: Role,
    /// Its zero in the frame.
    pub zero: Vector,
    /// From zero along the stick, of length one: the way its marks are measured.
    pub along: Vector,
    /// The stock, its faces as sawn.
    pub stock: Vec<Convex>,
    /// Everything cut from it.
    pub cuts: Vec<Cut>,
    /// What is left.
    pub wood: Solid,
}

impl StickBody {
    /// A stick of that stock with those cuts made.
    #[must_use]
    pub fn new(
        (mark, role): (String, Role),
        (zero, along): (Vector, Vector),
        stock: Vec<Convex>,
        cuts: Vec<Cut>,
    ) -> Self {
        let stock: Vec<Convex> = stock.into_iter().map(|body| sawn(body, along)).collect();
        let mut wood = Solid::new(stock.clone());
        for tool in cuts.iter().flat_map(|cut| &cut.tools) {
            wood.cut(tool);
        }
        Self { mark, role, zero, along, stock, cuts, wood }
    }

    /// The same stick in another place of the frame under another mark.
    #[must_use]
    pub fn again(&self, mark: String, by: Vector) -> Self {
        let cut = |cut: &Cut| Cut { tools: cut.tools.iter().map(|tool| tool.moved(by)).collect(), ..cut.clone() };
        Self {
            mark,
            role: self.role,
            zero: self.zero + by,
            along: self.along,
            stock: self.stock.iter().map(|body| body.moved(by)).collect(),
            cuts: self.cuts.iter().map(cut).collect(),
            wood: self.wood.moved(by),
        }
    }

    /// The wood as it stands in the frame: bored holes are filled by what is driven into them.
    #[must_use]
    pub fn standing(&self) -> Solid {
        let mut wood = Solid::new(self.stock.clone());
        let is_open = |cut: &&Cut| !matches!(cut.kind, CutKind::PegHole | CutKind::Bored);
        for tool in self.cuts.iter().filter(is_open).flat_map(|cut| &cut.tools) {
            wood.cut(tool);
        }
        wood
    }

    /// The outside of this stick, or of a part of it. Whatever lies across the grain is end grain, cut by a joint or not.
    #[must_use]
    pub fn outside(&self, wood: &Solid) -> Surface {
        let mut surface = Surface::of(wood);
        for patch in &mut surface.patches {
            if patch.skin == Skin::Cut && patch.normal.dot(self.along).abs() > 0.7 {
                patch.skin = Skin::End;
            }
        }
        surface
    }

    /// How much wood is left.
    #[must_use]
    pub fn volume(&self) -> Volume {
        self.wood.volume()
    }

    /// Where it balances, from its zero along it.
    #[must_use]
    pub fn balance(&self) -> Length {
        let centre = self.wood.centre().unwrap_or(self.zero);
        Length::inches((centre - self.zero).dot(self.along))
    }

    /// A place of the frame along the stick, from its zero.
    #[must_use]
    pub fn from_zero(&self, place: Vector) -> Length {
        Length::inches((place - self.zero).dot(self.along))
    }
}

/// The stock's faces along the grain are sawn, those across it are ends.
fn sawn(body: Convex, along: Vector) -> Convex {
    let facets = body.facets().iter().cloned().map(|mut facet| {
        facet.skin = if facet.plane.normal.dot(along).abs() > 0.7 { Skin::End } else { Skin::Sawn };
        facet
    });
    Convex::new(facets.collect())
}
