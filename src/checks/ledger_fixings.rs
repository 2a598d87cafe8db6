//! The screws of the ledger into each post of the wall: sheared by the rafters' reaction, pulled because it stands off the
//! wall and because wind sucks the roof outward.
//!
//! Lag screws by the NDS; over packing, which carries nothing, by the equations for a gap. What is not known of the wall, the width of its posts, is left out: their edges are not judged.
//! The steel of the screw in tension is its maker's matter.
use super::check::Check;
use super::known::{chosen, gravity, moisture};
use super::ledger::{Asked, Ledger, height};
use super::purlin::most;
use crate::fastening::{
    Direction, Edge, EndLoad, Factors, Fastener, FastenerKind, FixingRow, GroupMember, GroupRow, LedgerLoad, LoadOnOne,
    Member, Moisture, Placing, Pull, Refused, RowLayout, RowSpacing, Wetness, adjusted_lateral, adjusted_withdrawal,
    combined_share, geometry_factor, group_factor, lag_thread_in_main, ledger_fixing, load_duration, outer_rows,
    penetration, single_shear, single_shear_over_gap, wet_lateral, wet_withdrawal, withdrawal,
};
use crate::loads::Duration;
use crate::members::{Verdict, stiffness};
use crate::project::Used;
use crate::units::{Angle, Force, Length};
use crate::working::{Citation, Step, Worked};

pub(super) const FIXINGS: &str = "ledger fixings";
pub(super) const HOLD_UP: &str = "hold the ledger up";
/// Name of the check against uplift: the path of the uplift finds it by this.
pub(super) const HOLD_DOWN: &str = "hold the ledger down";
const SHRINK: &str = "let the ledger shrink";
/// Wood over this between outer rows splits as it dries (NDS 12.5.1.3, from memory).
const WIDEST_ROWS: Length = Length::inches(5.0);
/// Packing thinner than this closes when the screws are driven (common practice).
const CLOSES: Length = Length::inches(1.0 / 16.0);

/// Which way the reaction goes.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Down,
    Up,
}

/// Every check of the fixings.
pub(super) fn check_fixings(ledger: &Ledger) -> Vec<Check> {
    let mut checks: Vec<Check> = match Fixing::new(ledger) {
        Err(why) => [HOLD_UP, HOLD_DOWN].map(|name| Check::not_judged(FIXINGS, name, &why)).into(),
        Ok(fixing) => [(HOLD_UP, Way::Down), (HOLD_DOWN, Way::Up)].map(|(name, way)| fixing.worst(name, way)).into(),
    };
    checks.extend(rows_apart(ledger));
    checks
}

/// Outer rows against what lets the wood shrink.
fn rows_apart(ledger: &Ledger) -> Option<Check> {
    let rows = ledger.project.fixings.ledger.rows;
    let apart = height(ledger.project, rows.checked_sub(1)?) - height(ledger.project, 0);
    let steps = match outer_rows(apart, false) {
        Ok(worked) => worked.steps,
        Err(refused) => {
            vec![Step::new("outer rows", refused.to_string(), Citation::from_memory("NDS 2015", "12.5.1.3"))]
        }
    };
    let made = Worked::new(Verdict::length(apart, WIDEST_ROWS), steps);
    Some(Check::new(FIXINGS, SHRINK, "", "", Ok::<_, String>(made)))
}

/// The screws at one post of the wall, with what is the same under every combination.
struct Fixing<'a> {
    ledger: &'a Ledger<'a>,
    lag: &'static Fastener,
    wall_gravity: f64,
    gravity: f64,
    moisture: Moisture,
    rows: usize,
    /// Packing between ledger and wall: it carries nothing and counts as a gap.
    packing: Length,
    /// Thickness of the ledger.
    side: Length,
}

impl<'a> Fixing<'a> {
    fn new(ledger: &'a Ledger<'a>) -> Result<Self, String> {
        let project = ledger.project;
        let fixings = &project.fixings.ledger;
        let lag = chosen(&fixings.fastener, "screw of the ledger")?;
        if fixings.rows == 0 {
            return Err("the rows of the ledger's fixings are missing".to_owned());
        }
        if lag.kind == FastenerKind::Bolt {
            return Err(format!(
                "a {} is held by its washers, whose size is missing, and the rule for pull and push at once is for screws",
                lag.name
            ));
        }
        let packing = project.frame.ledger_packing;
        let wall_gravity = gravity(&fixings.wall_species, "the wall's posts")?;
        let gravity = gravity(&project.frame.species, "the ledger")?;
        let side = ledger.member.section().breadth;
        let moisture = moisture(project, Used::Ledger)?;
        Ok(Self { ledger, lag, wall_gravity, gravity, moisture, rows: fixings.rows, packing, side })
    }

    /// The post and combination that ask most of their screws, one way.
    fn worst(&self, name: &str, way: Way) -> Check {
        let made = self.governing(way);
        match made {
            Err(why) => Check::not_judged(FIXINGS, name, why),
            Ok(None) => {
                let step = Step::new("reaction", "no combination asks it", Citation::from_memory("statics", "sum"));
                let made = Worked::new(Verdict::force(Force::ZERO, Force::ZERO), vec![step]);
                Check::new(FIXINGS, name, "", "", Ok::<_, String>(made))
            }
            Ok(Some((asked, post, load))) => {
                let x = self.ledger.frame.posts[post].x;
                let made = self.judge(way, asked, &load).map_err(|refused| refused.to_string());
                let at = format!("at the wall's post {}", post + 1);
                Check::new(FIXINGS, name, at, asked.loading.name.clone(), made).at_x(x)
            }
        }
    }

    fn governing(&self, way: Way) -> Result<Option<(&Asked, usize, LedgerLoad)>, String> {
        let values = self.values(way, Duration::TenYears).map_err(|refused| refused.to_string())?.value;
        let rows = self.rows(way);
        let all = self.ledger.asked.iter().flat_map(|asked| {
            (0..self.ledger.frame.posts.len())
                .filter_map(move |post| Some((asked, post, self.reaction(way, asked, post)?)))
        });
        let rough = rough(&rows, self.ledger.line.ledger, values);
        let worst =
            most(all, |(asked, _, (reaction, outward))| rough(*reaction, *outward) / asked.loading.duration.factor());
        Ok(worst.map(|(asked, post, (reaction, outward))| {
            (asked, post, LedgerLoad { reaction, eccentricity: self.ledger.line.ledger, outward, rows: rows.clone() })
        }))
    }

    /// Each row over the edge that presses on the wall: the lower one when the reaction goes down.
    fn rows(&self, way: Way) -> Vec<FixingRow> {
        let depth = self.ledger.member.section().depth;
        let over_edge = |row: usize| {
            let height = height(self.ledger.project, row);
            if way == Way::Down { height } else { depth - height }
        };
        (0..self.rows).map(|row| FixingRow { height: over_edge(row), count: 1 }).collect()
    }

    /// The reaction at one post, where it goes that way, and the pull off the wall.
    fn reaction(&self, way: Way, asked: &Asked, post: usize) -> Option<(Force, Force)> {
        let down = self.ledger.shares.reaction(post, &asked.loads);
        let reaction = if way == Way::Down { down } else { -down };
        let level = asked.level * self.ledger.shares.width[post];
        let outward = if level > Force::ZERO { level } else { Force::ZERO };
        (reaction.to_pounds() > 1e-6).then_some((reaction, outward))
    }

    fn judge(&self, way: Way, asked: &Asked, load: &LedgerLoad) -> Result<Worked<Verdict>, Refused> {
        let values = self.values(way, asked.loading.duration)?;
        let found = ledger_fixing(self.lag.kind, load, values.value)?;
        let on_one = found.value.load;
        let total = Force::pounds(on_one.withdrawal.to_pounds().hypot(on_one.lateral.to_pounds()));
        let steps = values.steps.into_iter().chain(found.steps).collect();
        Ok(Worked::new(Verdict::force(total, total / found.value.ratio), steps))
    }

    /// What one screw carries out of the wall and along it.
    fn values(&self, way: Way, duration: Duration) -> Result<Worked<Pull>, Refused> {
        let fixings = &self.ledger.project.fixings.ledger;
        let duration = load_duration(duration.factor())?;
        let thread = lag_thread_in_main(self.lag, fixings.length, self.side + self.packing)?;
        let held = thread.value.min(fixings.wall_depth);
        let out = withdrawal(self.lag, self.wall_gravity)?;
        let dry = Moisture { when_made: Wetness::Dry, in_use: Wetness::Dry };
        let wet_out = wet_withdrawal(self.lag.kind, dry)?;
        let factors = Factors { load_duration: duration.value, wet: wet_out.value, ..Factors::default() };
        let allowed_out = adjusted_withdrawal(out.value, held, &factors)?;
        let aside = self.lateral(way, duration.value)?;
        let value = Pull { withdrawal: allowed_out.value, lateral: aside.value };
        let all = [thread.steps, out.steps, duration.steps, wet_out.steps, allowed_out.steps, aside.steps];
        Ok(Worked::new(value, all.into_iter().flatten().collect()))
    }

    fn lateral(&self, way: Way, duration: f64) -> Result<Worked<Force>, Refused> {
        let fixings = &self.ledger.project.fixings.ledger;
        let depth = (fixings.length - self.side - self.packing).min(fixings.wall_depth) - self.lag.tip;
        let depth = penetration(self.lag, depth)?;
        let main = Member::wood(self.wall_gravity, depth.value.bearing_length, Angle::ZERO);
        let side = Member::wood(self.gravity, self.side, Angle::RIGHT);
        let reference = if self.packing > CLOSES {
            single_shear_over_gap(self.lag, &main, &side, self.packing)?
        } else {
            single_shear(self.lag, &main, &side)?
        };
        let length = self.side.min(depth.value.bearing_length);
        let geometry = self.geometry(way, length)?;
        let group = self.group()?;
        let layout = if self.rows > 1 { RowLayout::Other } else { RowLayout::One };
        let wet = wet_lateral(self.lag, self.moisture, layout);
        let factors = Factors {
            load_duration: duration,
            wet: wet.value,
            group: group.value,
            geometry: geometry.value,
            penetration: depth.value.factor,
            ..Factors::default()
        };
        let allowed = adjusted_lateral(reference.value.reference, &factors)?;
        let all = [depth.steps, reference.steps, geometry.steps, group.steps, wet.steps, allowed.steps];
        Ok(Worked::new(allowed.value, all.into_iter().flatten().collect()))
    }

    /// The lesser factor of the ledger, loaded across its grain, and of the wall's post, loaded along it. The screws of one
    /// post stand in a row with the load. The edge the screws press toward is the top one when the ledger presses down.
    fn geometry(&self, way: Way, bearing_length: Length) -> Result<Worked<f64>, Refused> {
        let (project, posts) = (self.ledger.project, &self.ledger.frame.posts);
        let diameter = self.lag.diameter;
        let (below, above) = (height(project, 0), self.ledger.member.section().depth - height(project, self.rows - 1));
        let (loaded, unloaded) = if way == Way::Down { (above, below) } else { (below, above) };
        let end = posts.iter().map(|post| post.from_end).reduce(Length::min);
        let row = |attached_needs| {
            let spacing = project.fixings.ledger.row_gap;
            (self.rows > 1).then_some(RowSpacing { spacing, attached_needs })
        };
        let of_ledger = geometry_factor(&Placing {
            diameter,
            direction: Direction::Across,
            bearing_length,
            end: end.map(|end| (end, EndLoad::Across)),
            edge: Some(Edge { loaded, unloaded }),
            in_row: row(Some(diameter * 4.0)),
            between_rows: None,
        })?;
        let of_wall = geometry_factor(&Placing {
            diameter,
            direction: Direction::Along,
            bearing_length,
            end: None,
            edge: None,
            in_row: row(None),
            between_rows: None,
        })?;
        let value = of_ledger.value.min(of_wall.value);
        let named = |whose: &'static str| move |step: Step| Step { gives: format!("{whose}: {}", step.gives), ..step };
        let of_ledger = of_ledger.steps.into_iter().map(named("ledger"));
        let of_wall = of_wall.steps.into_iter().map(named("wall's post"));
        Ok(Worked::new(value, of_ledger.chain(of_wall).chain([self.edges_of_the_wall()]).collect()))
    }

    /// What the builder has to look at, since the width of the wall's posts is not known.
    fn edges_of_the_wall(&self) -> Step {
        let says = format!(
            "not judged: the width of the post is not known. The screw needs 1.5·D = {:.3} in to each edge, a post {:.2} in wide",
            self.lag.diameter.to_inches() * 1.5,
            self.lag.diameter.to_inches() * 3.0
        );
        Step::new("wall's post: edge distance", says, Citation::from_memory("NDS 2015", "Table 12.5.1C"))
    }

    /// The row stands along the wall's post. Areas of a strip four screws wide, the ledger's stiffness for both: what is
    /// not known of the wall cannot raise the factor much.
    fn group(&self) -> Result<Worked<f64>, Refused> {
        let project = self.ledger.project;
        let strip = self.lag.diameter * 4.0;
        let modulus = stiffness(&self.ledger.member).value;
        let row = GroupRow {
            n_fasteners: u32::try_from(self.rows).unwrap_or(u32::MAX),
            spacing: project.fixings.ledger.row_gap,
            diameter: self.lag.diameter,
            has_metal_side: false,
        };
        let main = GroupMember { modulus, area: project.fixings.ledger.wall_depth * strip };
        group_factor(row, main, GroupMember { modulus, area: self.side * strip })
    }
}

/// Load by capacity of the most loaded screw (a lag screw's) of a reaction and a pull off the
/// wall, to find the governing one.
fn rough(rows: &[FixingRow], stand_off: Length, values: Pull) -> impl Fn(Force, Force) -> f64 + use<> {
    let heights = rows.iter().map(|row| row.height.to_inches());
    let squares: f64 = heights.clone().map(|height| height * height).sum();
    let lever = stand_off.to_inches() * heights.fold(0.0, f64::max) / squares;
    let n = rows.len() as f64;
    move |reaction, outward| {
        let load = LoadOnOne { withdrawal: reaction.abs() * lever + outward / n, lateral: reaction.abs() / n };
        combined_share(FastenerKind::LagScrew, values, load).unwrap_or_default()
    }
}
