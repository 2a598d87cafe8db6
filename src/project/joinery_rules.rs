//! The one set of rules every joint of the frame follows.
use crate::units::Length;

/// How the joints treat stock that is not true.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StockRule {
    /// Square rule: every joint is cut down to the frame's inner size, whatever the stick measures there.
    InnerSize,
    /// Stock sawn or planed true: its faces are trusted and nothing is reduced.
    TrueStock,
}

impl StockRule {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::InnerSize, Self::TrueStock];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::InnerSize => "cut down to an inner size at every joint",
            Self::TrueStock => "sawn true, its faces trusted",
        }
    }
}

/// Joinery rules, printed on every sheet. The defaults are common practice for 8x stock in softwood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JoineryRules {
    /// Thickness of every tenon.
    pub tenon_thickness: Length,
    /// Reference (outer) face to the near cheek of tenon and mortise.
    pub tenon_offset: Length,
    /// Length of the tenon on a post's head, from its shoulder.
    pub post_tenon: Length,
    /// Length of a brace's tenons, from the housed line.
    pub brace_tenon: Length,
    /// A blind mortise is deeper than its tenon by this.
    pub blind_clearance: Length,
    /// How rough stock is treated.
    pub stock: StockRule,
    /// Depth of a housing below the face as ordered: the frame's inner size is the ordered size less this.
    pub housing: Length,
    /// A brace pocket is longer than the brace by this, on the corner side.
    pub pocket_clearance: Length,
    /// An end post's tenon stops this short of the post's end side.
    pub end_shoulder: Length,
    /// Peg diameter.
    pub peg: Length,
    /// Housed line to the first peg's centre.
    pub peg_from_shoulder: Length,
    /// A tenon this wide or wider takes two pegs.
    pub two_pegs_from: Length,
    /// The tenon's hole lies nearer the shoulder by this.
    pub drawbore: Length,
    /// Height of a stop-splayed scarf's abutments, as a share of the beam's depth.
    pub scarf_abutment_share: f64,
    /// Lean of an under-squinted abutment over its height.
    pub scarf_squint: Length,
    /// Length of a bladed scarf's tongues.
    pub scarf_blade: Length,
    /// Step of a scarf's table.
    pub scarf_table: Length,
    /// Gap for the folding wedges.
    pub scarf_wedge: Length,
    /// Least wood between a scarf's tip and the nearest mortise or rafter.
    pub scarf_clear: Length,
    /// Least wood left over a brace pocket in a lap.
    pub wood_over_pocket: Length,
    /// Least web between opposed mortises.
    pub least_web: Length,
    /// Width of the chamfer; zero for none.
    pub chamfer: Length,
    /// The chamfer starts this far from each end and stops this short of each joint.
    pub chamfer_stop: Length,
    /// Clearance left at a heel or shoulder for shrinkage.
    pub shrink_clearance: Length,
}

impl JoineryRules {
    /// Common practice, in inches.
    #[must_use]
    pub fn inch_defaults() -> Self {
        let inches = Length::inches;
        Self {
            tenon_thickness: inches(2.0),
            tenon_offset: inches(2.0),
            post_tenon: inches(4.0),
            brace_tenon: inches(2.5),
            blind_clearance: inches(0.25),
            stock: StockRule::InnerSize,
            housing: inches(0.5),
            pocket_clearance: inches(0.25),
            end_shoulder: inches(2.0),
            peg: inches(1.0),
            peg_from_shoulder: inches(1.5),
            two_pegs_from: inches(6.0),
            drawbore: inches(0.125),
            scarf_abutment_share: 0.25,
            scarf_squint: inches(0.5),
            scarf_blade: inches(3.0),
            scarf_table: inches(1.25),
            scarf_wedge: inches(1.0),
            scarf_clear: inches(2.0),
            wood_over_pocket: inches(2.0),
            least_web: inches(1.0),
            chamfer: inches(0.5),
            chamfer_stop: inches(6.0),
            shrink_clearance: inches(0.0625),
        }
    }

    /// The metric twin: round millimetres near the same sizes.
    #[must_use]
    pub fn millimetre_defaults() -> Self {
        let mm = Length::millimetres;
        Self {
            tenon_thickness: mm(50.0),
            tenon_offset: mm(50.0),
            post_tenon: mm(100.0),
            brace_tenon: mm(60.0),
            blind_clearance: mm(6.0),
            stock: StockRule::InnerSize,
            housing: mm(12.0),
            pocket_clearance: mm(6.0),
            end_shoulder: mm(50.0),
            peg: mm(25.0),
            peg_from_shoulder: mm(40.0),
            two_pegs_from: mm(150.0),
            drawbore: mm(3.0),
            scarf_abutment_share: 0.25,
            scarf_squint: mm(12.0),
            scarf_blade: mm(75.0),
            scarf_table: mm(30.0),
            scarf_wedge: mm(25.0),
            scarf_clear: mm(50.0),
            wood_over_pocket: mm(50.0),
            least_web: mm(25.0),
            chamfer: mm(12.0),
            chamfer_stop: mm(150.0),
            shrink_clearance: mm(1.5),
        }
    }
}
