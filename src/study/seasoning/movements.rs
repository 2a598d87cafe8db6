//! What moves in the frame as the wood dries.
use super::{Time, YEARS, Yearly, small_length, yearly};
use crate::design::Built;
use crate::geometry::{BraceLine, PostShape};
use crate::materials::{Grain, Species};
use crate::project::{Project, Role, ScarfKind};
use crate::units::{Length, UnitSystem};

/// What kind of movement it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Something sinks.
    Drop,
    /// Two pieces part.
    Gap,
    /// A margin that was left is used up.
    Margin,
}

/// One movement.
#[derive(Clone, Debug, PartialEq)]
pub struct Movement {
    /// Name in reports.
    pub key: &'static str,
    /// What it is.
    pub what: &'static str,
    /// Its kind.
    pub way: Way,
    /// How much it is, year by year.
    pub sizes: Yearly<Length>,
    /// What it means.
    pub means: String,
    /// A margin that does not last.
    pub is_short: bool,
    /// What to do about it.
    pub advice: &'static str,
}

impl Movement {
    /// When all is dry.
    #[must_use]
    pub const fn last(&self) -> Length {
        self.sizes[YEARS]
    }
}

/// What a movement means.
enum Means {
    /// Whatever it comes to.
    Says(&'static str),
    /// With what is left of a margin: where it is enough, and where it is short.
    Left(&'static str, &'static str),
}

/// One movement before its sentences are known.
struct Row {
    key: &'static str,
    what: &'static str,
    way: Way,
    size: fn(&Sizes, &Time<'_>) -> Length,
    means: Means,
    advice: &'static str,
}

/// Lengths of the frame that shrink.
struct Sizes {
    units: UnitSystem,
    /// Width of the widest tenon of a post.
    tenon: Length,
    /// Thickness of the thickest tenon of a post.
    thick: Length,
    /// Length of a post's longest tenon.
    long: Length,
    /// Its first peg over the shoulder, where that is highest.
    peg: Length,
    /// Cosine of the angle between brace and beam.
    brace_cos: f64,
    /// Rafter, seat to top edge.
    over_ledger: Length,
    pitch: (f64, f64, f64),
    has_scarfs: bool,
}

/// Every movement of that frame; what it does not have is left out.
pub(super) fn movements(project: &Project, built: &Built, wood: &Species) -> Vec<Movement> {
    let line = &built.shape.line;
    let most = |rule: fn(&PostShape) -> Length| built.shape.posts.iter().map(rule).fold(Length::ZERO, Length::max);
    let sizes = Sizes {
        units: project.units,
        tenon: most(|post| post.tenon.1 - post.tenon.0),
        thick: most(|post| post.rules.tenon_thickness),
        long: most(|post| post.tenon_length),
        peg: most(|post| post.rules.peg_from_shoulder),
        brace_cos: BraceLine::of(&project.frame).cos,
        over_ledger: line.height_above_ledger_seat,
        pitch: (line.pitch.tan(), line.pitch.sin(), line.pitch.cos()),
        has_scarfs: !built.shape.beam.scarfs.is_empty(),
    };
    let rows = ROWS.iter().filter(|row| is_there(built, &sizes, row.key));
    rows.map(|row| {
        let all = yearly(project, wood, |time| (row.size)(&sizes, time));
        let left = margin(project, built, row.key) - all[YEARS];
        let is_short = row.way == Way::Margin && left.is_negative();
        let means = means(&row.means, sizes.units, left);
        Movement {
            key: row.key,
            what: row.what,
            way: row.way,
            sizes: all,
            means,
            is_short,
            advice: advice(row, is_short),
        }
    })
    .collect()
}

fn is_there(built: &Built, sizes: &Sizes, key: &str) -> bool {
    match key {
        "brace_slack" | "brace_in_pocket" => !built.shape.braces.is_empty(),
        "scarf_gap" => sizes.has_scarfs,
        "wedges" => built.shape.beam.scarfs.iter().any(|scarf| scarf.kind == ScarfKind::StopSplayedTabled),
        _ => true,
    }
}

/// What was left for a movement that uses up a margin; of the posts' drawbores the least.
fn margin(project: &Project, built: &Built, key: &str) -> Length {
    let drawbores = built.shape.posts.iter().map(|post| post.rules.drawbore);
    let rules = &project.joinery;
    match key {
        "room_over_tenon" => rules.blind_clearance,
        "drawbore" => drawbores.reduce(Length::min).unwrap_or(rules.drawbore),
        "heel_drawn_in" => rules.shrink_clearance,
        _ => Length::ZERO,
    }
}

fn advice(row: &Row, is_over: bool) -> &'static str {
    match (row.key, is_over) {
        ("room_over_tenon", true) => "Cut the mortises deeper, or the tenons shorter, by as much.",
        ("heel_drawn_in", true) => "Leave more clearance at the plumb of the heel (Frame, rules of the joints).",
        ("drawbore", true) => "Offset the holes more, or wedge the pegs after a year.",
        _ => row.advice,
    }
}

fn means(of: &Means, units: UnitSystem, left: Length) -> String {
    match of {
        Means::Says(says) => (*says).to_owned(),
        Means::Left(_, short) if left.is_negative() => format!("{short}: {} too little.", small_length(-left, units)),
        Means::Left(enough, _) => format!("{enough}: {} is left.", small_length(left, units)),
    }
}

const ROWS: &[Row] = &[
    Row {
        key: "beam_seat_drop",
        what: "Beam’s seats sink",
        way: Way::Drop,
        size: |_, time| time.drops().0,
        means: Means::Says(
            "The wood between a post’s shoulder and the top of the beam gets thinner, and the rafters come down \
            with it.",
        ),
        advice: "Nothing: the rafters follow. Give doors and gates under the roof’s edge as much room.",
    },
    Row {
        key: "ledger_seat_drop",
        what: "Ledger’s seats sink",
        way: Way::Drop,
        size: |_, time| time.drops().1,
        means: Means::Says("The ledger is held by its screws or bolts; only the wood above them brings its top down."),
        advice: "Keep the rows of fixings close together, or slot the holes, so that it can shrink without a split.",
    },
    Row {
        key: "metal_at_wall",
        what: "Top of the metal at the wall sinks",
        way: Way::Drop,
        size: metal_at_wall,
        means: Means::Says("Ledger, rafter and purlin all get lower there: the flashing’s lap must take it."),
        advice: "Lap the flashing by as much more, and do not screw it to both wall and sheet.",
    },
    Row {
        key: "post_in_housing",
        what: "Post’s head loose in its housing, along the beam",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Post, time.project.frame.timbers.post.sawn.breadth),
        means: Means::Says("The post gets narrower, its housing keeps its length: half of it shows on either side."),
        advice: "Cut the housing tight to the real post; the shoulder carries, the gap only shows.",
    },
    Row {
        key: "tenon_in_mortise",
        what: "Post’s tenon loose in its mortise, along the beam",
        way: Way::Gap,
        size: |sizes, time| time.lost(Role::Post, sizes.tenon),
        means: Means::Says("The tenon gets narrower across its grain; along the beam the mortise does not."),
        advice: "Nothing: the pegs hold it. Plumb the posts by their pegs, not by their tenons’ edges.",
    },
    Row {
        key: "tenon_cheeks",
        what: "Tenon’s cheeks off the mortise, at most",
        way: Way::Gap,
        size: tenon_cheeks,
        means: Means::Says(
            "Tenon and mortise both shrink across; they part only where the rings lie in one and stand in the \
            other.",
        ),
        advice: "Fit cheeks so that a push by hand closes them.",
    },
    Row {
        key: "room_over_tenon",
        what: "Room over the tenon’s end used up",
        way: Way::Margin,
        size: |sizes, time| time.lost(Role::Beam, sizes.long + time.project.joinery.blind_clearance),
        means: Means::Left(
            "The mortise gets shallower, the tenon keeps its length; the shoulder stays home",
            "The beam would come to stand on the tenon’s end and its shoulder open",
        ),
        advice: "Nothing: the clearance in the rules is enough.",
    },
    Row {
        key: "drawbore",
        what: "Draw of the post’s pegs used up",
        way: Way::Margin,
        size: |sizes, time| time.lost(Role::Beam, sizes.peg),
        means: Means::Left(
            "The hole in the beam comes nearer the shoulder as the beam shrinks; the peg still draws",
            "The hole in the beam comes nearer the shoulder and the peg no longer draws",
        ),
        advice: "Leave the pegs long, drive them on after a year, then trim.",
    },
    Row {
        key: "brace_slack",
        what: "Slack of a brace, along it",
        way: Way::Gap,
        size: |sizes, time| {
            let half = time.project.frame.timbers.post.sawn.breadth / 2.0;
            time.lost(Role::Post, half) * sizes.brace_cos
        },
        means: Means::Says(
            "The post’s face draws back from the brace’s foot; at the beam nothing opens, its housings come down \
            on the shoulders. The line sways so far before a brace bears.",
        ),
        advice: "Drive hardwood shims behind the foot’s nose after a year; see the sway under Strength.",
    },
    Row {
        key: "brace_in_pocket",
        what: "Brace loose in its pocket, on the corner side",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Brace, time.project.frame.timbers.brace.sawn.depth),
        means: Means::Says(
            "The brace gets narrower and its shoulders open toward the corner, where clearance was left already; its noses \
            still bear.",
        ),
        advice: "Nothing: the nose carries.",
    },
    Row {
        key: "scarf_gap",
        what: "Scarf’s lap open, at most",
        way: Way::Gap,
        size: |_, time| {
            let half = time.project.frame.timbers.beam.sawn.depth / 2.0;
            time.lost_by(Role::Beam, half, Grain::Tangential) - time.lost_by(Role::Beam, half, Grain::Radial)
        },
        means: Means::Says(
            "Two halves that dry alike stay closed; they part where the rings stand in one and lie in the other.",
        ),
        advice: "Choose halves with the heart at the same place; tighten bolts or screws at the roots after a year.",
    },
    Row {
        key: "wedges",
        what: "Scarf’s wedges loose, if cut from green wood",
        way: Way::Gap,
        size: |_, time| {
            let gap = time.project.joinery.scarf_wedge;
            time.wood.shrinkage_of(gap, Grain::Tangential, time.percent_of(gap))
        },
        means: Means::Says("Along the beam the gap keeps its length; wedges of green wood get thinner in it."),
        advice: "Make them of dry hardwood, and drive them on in the first year and the second.",
    },
    Row {
        key: "heel_at_beam",
        what: "Rafter’s heel off the beam’s face, at most",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Beam, time.project.frame.timbers.beam.sawn.breadth / 2.0),
        means: Means::Says(
            "The beam’s outer face draws back from the heel’s plumb; the screws hold the rafter meanwhile.",
        ),
        advice: "Do not count on the heel to push; see that the screws are there.",
    },
    Row {
        key: "heel_at_ledger",
        what: "Rafter’s heel off the ledger’s face, at most",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Ledger, time.project.frame.timbers.ledger.sawn.breadth),
        means: Means::Says("The ledger’s back stays on the wall and its outer face draws back to it."),
        advice: "Do not count on the heel to push; see that the screws are there.",
    },
    Row {
        key: "heel_drawn_in",
        what: "Rafters drawn toward the wall",
        way: Way::Margin,
        size: |sizes, time| {
            let (beam, ledger) = time.drops();
            (beam - ledger) * sizes.pitch.0
        },
        means: Means::Left(
            "A roof that gets steeper is shorter on plan: the heels press toward the beam; the clearance left \
                at a heel is enough",
            "The heels press on the beam before its face draws back",
        ),
        advice: "Nothing: leave the clearance of the rules at the heel’s plumb.",
    },
    Row {
        key: "seat_inner_end",
        what: "Rafter’s seat open at its inner end",
        way: Way::Gap,
        size: |sizes, time| {
            let seat = time.project.frame.beam_seat_length;
            time.lost(Role::Rafter, seat * (sizes.pitch.1 * sizes.pitch.2))
        },
        means: Means::Says("The notch gets flatter as the rafter shrinks: it bears on the heel’s end of the seat."),
        advice: "Cut seats a hair hollow toward the heel, never proud there.",
    },
    Row {
        key: "ledger_heads",
        what: "Ledger loose under heads and washers",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Ledger, time.project.frame.timbers.ledger.sawn.breadth),
        means: Means::Says(
            "The ledger gets thinner and its lags or bolts stand off it: the ledger can slip and the wall’s joint \
            opens.",
        ),
        advice: "Snug every lag and bolt in the first autumn and again in year one and two; never drive a lag on that \
            spins.",
    },
    Row {
        key: "purlin_heads",
        what: "Sheet loose under its screws’ washers",
        way: Way::Gap,
        size: |_, time| time.lost(Role::Purlin, time.project.frame.timbers.purlin.sawn.depth),
        means: Means::Says("A purlin gets thinner under the sheet; a washer that no longer presses lets water by."),
        advice: "Go over the roof’s screws after the first summer; swap washers that are cracked.",
    },
];

/// Top of the metal at the wall: the ledger's seat, the rafter over it, the purlin on that. A plane that comes nearer by δ square
/// to itself sinks by δ/cos θ where it is measured plumb.
fn metal_at_wall(sizes: &Sizes, time: &Time<'_>) -> Length {
    let purlin = time.project.frame.timbers.purlin.sawn.depth;
    time.drops().1 + time.lost(Role::Rafter, sizes.over_ledger) + time.lost(Role::Purlin, purlin) / sizes.pitch.2
}

/// The tenon's rings lie across it and shrink most, the mortise's stand along it and shrink least.
fn tenon_cheeks(sizes: &Sizes, time: &Time<'_>) -> Length {
    let thick = sizes.thick;
    let tenon = time.lost_by(Role::Post, thick, Grain::Tangential);
    (tenon - time.lost_by(Role::Beam, thick, Grain::Radial)).max(Length::ZERO)
}
