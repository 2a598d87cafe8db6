//! What the job takes beside timber: sheets, trims, screws, fixings, pegs, bases, concrete, finish.
//!
//! Rules of counting are common practice unless a source stands beside them.
use crate::design::Built;
use crate::fastening::{BagCount, Footing, FootingShape, bag_counts};
use crate::geometry::wall_posts;
use crate::joinery::head_peg_places;
use crate::materials::Section;
use crate::project::{HAIR, Project, Role};
use crate::units::{Area, Length, UnitSystem, Volume};

/// Trim comes in sticks this long that lap this much.
const TRIM: (Length, Length) = (Length::feet(10.0), Length::inches(4.0));
/// Screws from sheet to sheet along each lap, and through the trims.
const STITCHES: Length = Length::inches(18.0);
const TRIM_SCREWS: Length = Length::inches(12.0);
/// Pegs made beyond those driven: one in four, for those that split or shrink.
const SPARE_PEGS: f64 = 0.25;
/// Concrete and finish beyond the sum.
const WASTE: f64 = 0.1;

/// Pegs of one diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pegs {
    /// Their diameter.
    pub diameter: Length,
    /// Those that are driven.
    pub driven: usize,
}

impl Pegs {
    /// Those to make, spares among them.
    #[must_use]
    pub fn to_make(self) -> usize {
        (self.driven as f64 * (1.0 + SPARE_PEGS)).ceil() as usize
    }
}

/// Counts and measures.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// Sheets, ripped ones whole.
    pub n_sheets: usize,
    /// All sheets end to end.
    pub sheet_run: Length,
    /// Edges to be trimmed: eave, wall and both rakes.
    pub trim_edges: Length,
    /// Whole sticks of trim for them, end to end.
    pub trim_run: Length,
    /// Through the sheets into purlins.
    pub sheet_screws: usize,
    /// From sheet to sheet along the laps.
    pub stitch_screws: usize,
    /// Through the trims.
    pub trim_screws: usize,
    /// Through purlins into rafters.
    pub purlin_screws: usize,
    /// Screws or bolts through the ledger.
    pub ledger_fixings: usize,
    /// Ties of the rafters at ledger and beam, and of the scarfs.
    pub ties: usize,
    /// Pegs, a kind for each diameter: that of the rules first.
    pub pegs: Vec<Pegs>,
    /// Bases of posts.
    pub post_bases: usize,
    /// Bars from piers into their footings.
    pub pier_bars: usize,
    /// Concrete of footings and piers, without waste.
    pub concrete: Volume,
    /// Bags of concrete, the largest kind, with a tenth for waste; nothing where it is too much for bags.
    pub bags: Option<BagCount>,
    /// Faces and ends of every stick but purlins and blocks.
    pub finished: Area,
}

impl Takeoff {
    /// Counts what the frame takes.
    #[must_use]
    pub fn of(project: &Project, built: &Built) -> Self {
        let (shape, sheets) = (&built.shape, &built.sheets);
        let slope = sheets.length.length();
        let edges = [sheets.width, sheets.width, slope, slope];
        let concrete = concrete(project);
        Self {
            n_sheets: sheets.sheets.len(),
            sheet_run: slope * sheets.sheets.len() as f64,
            trim_edges: edges.into_iter().sum(),
            trim_run: edges.into_iter().map(trim_sticks).sum(),
            sheet_screws: sheet_screws(project, built),
            stitch_screws: sheets.sheets.len().saturating_sub(1) * spaced(slope, STITCHES),
            trim_screws: spaced(edges.into_iter().sum(), TRIM_SCREWS),
            purlin_screws: purlin_screws(project, built),
            ledger_fixings: ledger_fixings(project),
            ties: shape.rafters.len() * (project.fixings.rafter_head.count + project.fixings.rafter_seat.count)
                + shape.beam.scarfs.len() * 2 * project.fixings.scarf.count,
            pegs: pegs(project, built),
            post_bases: shape.posts.len(),
            pier_bars: shape.posts.len() * project.fixings.pier.bars,
            concrete,
            bags: bag_counts(concrete, WASTE).ok().and_then(|worked| largest(worked.value)),
            finished: finished(built),
        }
    }

    /// Concrete to order where it is too much for bags: a tenth more, to the next quarter yard or metre (common practice).
    #[must_use]
    pub fn ready_mixed(&self, units: UnitSystem) -> Option<Volume> {
        let quarter = match units {
            UnitSystem::Imperial => Volume::cubic_feet(27.0 / 4.0),
            UnitSystem::Metric => Volume::cubic_metres(0.25),
        };
        let quarters = (self.concrete * (1.0 + WASTE) / quarter - 1e-9).ceil();
        (self.bags.is_none() && self.concrete > Volume::ZERO).then(|| quarter * quarters)
    }

    /// Gallons of finish, with a tenth more, not rounded.
    #[must_use]
    pub fn finish_gallons(&self, project: &Project) -> f64 {
        let finish = project.buying.finish;
        let feet = self.finished.to_square_feet();
        feet * finish.coats as f64 / finish.cover_ft2_per_gallon.max(1.0) * (1.0 + WASTE)
    }
}

fn spaced(run: Length, spacing: Length) -> usize {
    (run / spacing - 1e-9).ceil().max(0.0) as usize
}

/// Whole sticks that cover an edge: each beyond the first covers its length less the lap.
fn trim_sticks(edge: Length) -> Length {
    let (stick, lap) = TRIM;
    let further = ((edge - stick) / (stick - lap) - 1e-9).ceil().max(0.0);
    stick * (1.0 + further)
}

/// In each row as the screws are spaced; the lowest and the highest row hold both sides of every rib.
fn sheet_screws(project: &Project, built: &Built) -> usize {
    let spacing = project.fixings.sheet.spacing;
    if spacing <= Length::ZERO {
        return 0;
    }
    let row: usize = built.sheets.sheets.iter().map(|sheet| spaced(sheet.cover, spacing)).sum();
    let n_rows = built.shape.purlins.len();
    row * (n_rows + n_rows.min(2))
}

/// At every crossing, and once more where two pieces meet on a rafter.
fn purlin_screws(project: &Project, built: &Built) -> usize {
    let rows = &built.shape.purlins;
    let n_butts: usize = rows.iter().map(|row| row.pieces.len().saturating_sub(1)).sum();
    project.fixings.purlin.count * (rows.len() * built.shape.rafters.len() + n_butts)
}

fn ledger_fixings(project: &Project) -> usize {
    let ledger = &project.fixings.ledger;
    wall_posts(&project.site, project.frame.beam_length).len() * ledger.columns * ledger.rows
}

fn pegs(project: &Project, built: &Built) -> Vec<Pegs> {
    let heads = built.shape.posts.iter().map(|post| (post.rules.peg, head_peg_places(post).len()));
    let ends = built.shape.braces.iter().flat_map(|brace| [(brace.foot.peg, 1), (brace.head.peg, 1)]);
    let mut kinds = vec![Pegs { diameter: project.joinery.peg, driven: 0 }];
    for (diameter, driven) in heads.chain(ends) {
        match kinds.iter_mut().find(|kind| kind.diameter.is_near(diameter, HAIR)) {
            Some(kind) => kind.driven += driven,
            None => kinds.push(Pegs { diameter, driven }),
        }
    }
    kinds.retain(|kind| kind.driven > 0);
    kinds
}

fn concrete(project: &Project) -> Volume {
    let pier = &project.fixings.pier;
    let shape = if pier.is_round { FootingShape::Round } else { FootingShape::Square };
    let footing = Footing { shape: shape(pier.footing_width), thickness: pier.footing_thickness };
    let shaft = Footing { shape: shape(pier.pier_width), thickness: pier.footing_thickness }.area();
    let one = |post: &crate::project::Post| {
        let ground = project.site.ground_at(post.x, project.frame.beam_length);
        let tall = (pier.depth - pier.footing_thickness + post.pier_top - ground).max(Length::ZERO);
        footing.volume() + shaft * tall
    };
    project.frame.posts.iter().map(one).sum()
}

fn largest(counts: Vec<BagCount>) -> Option<BagCount> {
    counts.into_iter().max_by(|a, b| a.bag.weight.to_pounds().total_cmp(&b.bag.weight.to_pounds()))
}

/// Four faces and two ends of a stick as sawn.
fn finished(built: &Built) -> Area {
    let seen = built.sticks.iter().filter(|stick| !matches!(stick.role, Role::Purlin | Role::Block));
    seen.map(|stick| {
        let Section { breadth, depth } = stick.timber.sawn;
        stick.net_length() * (breadth + depth) * 2.0 + breadth * depth * 2.0
    })
    .sum()
}
