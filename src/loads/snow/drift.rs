//! Snow that the wind carries onto the lean-to: off the roof above (leeward) and along its own roof (windward).
use super::super::say::{feet, named, num, psf};
use super::super::{Edition, LeanTo, Place, Refused, Spread};
use super::balanced::{balanced_snow, density};
use super::factors::importance_factor;
use crate::units::{AreaLoad, Density, Length, Run};
use crate::unmade::Input;
use crate::working::{Citation, Step, Worked};

/// Shortest length of roof that feeds a drift, feet.
const SHORTEST_FETCH: f64 = 20.0;
/// No drift where the room above the balanced snow is less than this share of its depth.
const LEAST_ROOM: f64 = 0.2;
/// Share of the full height that a windward drift reaches.
const WINDWARD: f64 = 0.75;
/// Gap beyond which a taller building feeds no drift, feet.
const WIDEST_GAP: f64 = 20.0;

/// Where the snow comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DriftKind {
    /// Blown off the upper roof.
    Leeward,
    /// Blown along the lean-to against the wall.
    Windward,
}

/// A drift above the balanced snow: tallest at the wall, straight down to nothing at its width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift {
    /// Where the snow comes from.
    pub kind: DriftKind,
    /// Height at the wall.
    pub height: Length,
    /// How far out it reaches; it may pass the eave.
    pub width: Run,
    /// p_d: load at the wall, above the balanced load.
    pub peak: AreaLoad,
}

impl Drift {
    /// Its load on a roof of this length: cut off at the eave, not squeezed.
    #[must_use]
    pub fn spread(&self, roof: Run) -> Spread {
        Spread::straight(Length::ZERO, self.width.length(), self.peak, AreaLoad::ZERO).cut_at(roof.length())
    }
}

/// h_d from the length of roof that feeds it, taken as 20 ft or more.
///
/// 7-16: h_d = 0.43·√I_s·l_u^(1/3)·(p_g + 10)^(1/4) − 1.5 ft; where I_s stands is a placeholder unless I_s = 1.
/// 7-22: h_d = 1.5·√(p_g^0.74·l_u^0.70·W2^1.7/γ) ft, its exponents from memory.
///
/// # Errors
/// When the ground snow is missing, or W2 by 7-22.
pub fn drift_height(place: &Place, fetch: Run) -> Result<Worked<Length>, Refused> {
    let ground = place.ground_snow()?.to_psf();
    let length = fetch.length().to_feet().max(SHORTEST_FETCH);
    let (height, says, citation) = match place.edition {
        Edition::Asce7_16 => {
            let is = importance_factor(place.edition, place.risk).value;
            let height = 0.43 * is.sqrt() * length.cbrt() * (ground + 10.0).powf(0.25) - 1.5;
            let says = format!(
                "h_d = 0.43·√I_s·l_u^(1/3)·(p_g + 10)^(1/4) − 1.5 = 0.43·√{}·{}^(1/3)·({} + 10)^(1/4) − 1.5 = {} ft",
                num(is, 2),
                num(length, 1),
                num(ground, 1),
                num(height, 2)
            );
            (height, says, leeward_citation(is))
        }
        Edition::Asce7_22 => {
            let wind = place.winter_wind()?;
            let gamma = density(place.edition, AreaLoad::psf(ground)).value.to_pounds_per_cubic_foot();
            let height = 1.5 * (ground.powf(0.74) * length.powf(0.70) * wind.powf(1.7) / gamma).sqrt();
            let says = format!(
                "h_d = 1.5·√(p_g^0.74·l_u^0.70·W2^1.7/γ) = 1.5·√({}^0.74·{}^0.70·{}^1.7/{}) = {} ft",
                num(ground, 1),
                num(length, 1),
                num(wind, 2),
                num(gamma, 2),
                num(height, 2)
            );
            (height, says, place.edition.recalled("7.6-1; form in a structural magazine, exponents from memory"))
        }
    };
    let floor = format!("l_u = max({}, 20 ft) = {} ft", feet(fetch.length()), num(length, 1));
    let steps = vec![
        Step::new("l_u, roof that feeds the drift", floor, place.edition.recalled("7.7.1, shortest length")),
        Step::new("h_d, drift height", says, citation),
    ];
    Ok(Worked::new(Length::feet(height.max(0.0)), steps))
}

const fn leeward_citation(importance: f64) -> Citation {
    if importance == 1.0 {
        Edition::Asce7_16.seen("Fig. 7.6-1, in published examples")
    } else {
        Edition::Asce7_16.unsure("Fig. 7.6-1, place of I_s")
    }
}

/// What every drift on this roof shares.
struct Ground<'a> {
    place: &'a Place,
    lean_to: &'a LeanTo,
    density: Density,
    /// h_c: from the balanced snow to the upper eave.
    room: Length,
}

impl Ground<'_> {
    fn load(&self, height: Length) -> AreaLoad {
        AreaLoad::psf(self.density.to_pounds_per_cubic_foot() * height.to_feet())
    }

    fn drift(&self, kind: DriftKind, height: Length, width: Run, steps: &mut Vec<Step>) -> Drift {
        let peak = self.load(height);
        let says = format!(
            "p_d = γ·h = {}·{} = {}, straight to zero at {}",
            num(self.density.to_pounds_per_cubic_foot(), 2),
            num(height.to_feet(), 2),
            psf(peak),
            feet(width.length())
        );
        steps.push(Step::new("p_d, drift load at the wall", says, self.place.edition.seen("7.7.1, in an example")));
        Drift { kind, height, width, peak }
    }
}

/// The drifts on the lean-to; none where the room above the snow is too small, or the gap to the house too wide.
///
/// Attached: the larger of leeward and windward. With a gap: the leeward drift by 7.7.2, and the windward one whole beside
/// it (the standard's cut of the part inside the gap is not carried here, which is on the careful side).
///
/// # Errors
/// When the ground snow is missing, or W2 by 7-22, or the sizes make no roof.
pub fn drifts(place: &Place, lean_to: &LeanTo) -> Result<Worked<Vec<Drift>>, Refused> {
    let balanced = balanced_snow(place, lean_to)?.value;
    let gamma = density(place.edition, place.ground_snow()?);
    let depth = Length::feet(balanced.to_psf() / gamma.value.to_pounds_per_cubic_foot());
    let room = lean_to.step - depth;
    let mut steps = gamma.steps;
    let says = format!(
        "h_b = p_s/γ = {}/{} = {}; h_c = step − h_b = {} − {} = {}",
        num(balanced.to_psf(), 1),
        num(gamma.value.to_pounds_per_cubic_foot(), 2),
        feet(depth),
        num(lean_to.step.to_feet(), 2),
        num(depth.to_feet(), 2),
        feet(room)
    );
    steps.push(Step::new("h_b and h_c, snow and room above it", says, place.edition.seen("7.7.1, in an example")));
    if place.ground_snow()? <= AreaLoad::ZERO || room <= Length::ZERO || room < depth * LEAST_ROOM {
        let says = "no snow, or h_c/h_b < 0.2: no drift";
        steps.push(Step::new("drift", says, place.edition.seen("7.7.1, in an example")));
        return Ok(Worked::new(Vec::new(), steps));
    }
    let ground = Ground { place, lean_to, density: gamma.value, room };
    let found = match lean_to.gap.filter(|gap| *gap > Run::ZERO) {
        None => {
            let says =
                "the lean-to stands against the taller building, s = 0: the whole drift, no less for a gap (7.7.2)";
            steps.push(Step::new("s, gap to the house", says, place.edition.recalled("7.7.1, 7.7.2")));
            vec![against_the_wall(&ground, &mut steps)?]
        }
        Some(gap) => across_a_gap(&ground, gap, &mut steps)?,
    };
    Ok(Worked::new(found, steps))
}

/// h_d of both kinds, leeward first, each with its steps; the 60 % limit is already on the leeward one.
fn heights(ground: &Ground<'_>, steps: &mut Vec<Step>) -> Result<(Length, Length), Refused> {
    let (place, lean_to) = (ground.place, ground.lean_to);
    let fetch = lean_to.upper.upwind_length.ok_or_else(|| {
        Refused::missing(
            Input::RoofAbove,
            "the length of the roof above, square to the wall, is missing; drifts need it",
        )
    })?;
    let lee = drift_height(place, fetch)?;
    steps.extend(named("leeward", lee.steps));
    let mut leeward = lee.value;
    let limit = lean_to.roof_length().length() * 0.6;
    if place.edition == Edition::Asce7_16 && leeward > limit {
        let says = format!("h_d need not pass 0.6 of the lower roof's length: {} → {}", feet(leeward), feet(limit));
        steps.push(Step::new("h_d, limited by a short roof", says, place.edition.recalled("7.7.1, 60 % of the roof")));
        leeward = limit;
    }
    let wind = drift_height(place, lean_to.roof_length())?;
    steps.extend(named("windward", wind.steps));
    let windward = wind.value * WINDWARD;
    let says = format!("0.75·h_d = 0.75·{} = {}", num(wind.value.to_feet(), 2), feet(windward));
    let citation = place.edition.seen("7.7.1, in a published load calculation");
    steps.push(Step::new("windward drift height", says, citation));
    Ok((leeward, windward))
}

fn against_the_wall(ground: &Ground<'_>, steps: &mut Vec<Step>) -> Result<Drift, Refused> {
    let (leeward, windward) = heights(ground, steps)?;
    let (kind, free) =
        if leeward >= windward { (DriftKind::Leeward, leeward) } else { (DriftKind::Windward, windward) };
    let (height, width) = under_the_eave(ground, free, steps);
    Ok(ground.drift(kind, height, width, steps))
}

/// The height that fits below the upper eave, and the width.
fn under_the_eave(ground: &Ground<'_>, free: Length, steps: &mut Vec<Step>) -> (Length, Run) {
    let room = ground.room;
    let (height, width, says) = if free <= room {
        let width = free * 4.0;
        (free, width, format!("h_d ≤ h_c: w = 4·h_d = 4·{} = {}", num(free.to_feet(), 2), feet(width)))
    } else {
        let width = (free * (4.0 * (free / room))).min(room * 8.0);
        let says =
            format!("h_d = {} > h_c: height h_c = {}; w = 4·h_d²/h_c ≤ 8·h_c: {}", feet(free), feet(room), feet(width));
        (room, width, says)
    };
    let citation = ground.place.edition.seen("7.7.1, in a published load calculation");
    steps.push(Step::new("w, drift width", says, citation));
    (height, Run::of(width))
}

fn across_a_gap(ground: &Ground<'_>, gap: Run, steps: &mut Vec<Step>) -> Result<Vec<Drift>, Refused> {
    let step = ground.lean_to.step;
    let (leeward, windward) = heights(ground, steps)?;
    let citation = ground.place.edition.recalled("7.7.2");
    let mut found = Vec::new();
    let reach = step * 6.0 - gap.length();
    if gap.length() < Length::feet(WIDEST_GAP) && reach > Length::ZERO {
        let height = leeward.min(reach / 6.0);
        let width = (leeward * 6.0).min(reach);
        let says = format!(
            "s = {}: height = min(h_d, (6·h − s)/6) = {}; w = min(6·h_d, 6·h − s) = {}",
            feet(gap.length()),
            feet(height),
            feet(width)
        );
        steps.push(Step::new("leeward drift across the gap", says, citation));
        found.push(ground.drift(DriftKind::Leeward, height, Run::of(width), steps));
    } else {
        let says = format!("s = {} ≥ 20 ft or ≥ 6·h: no leeward drift", feet(gap.length()));
        steps.push(Step::new("leeward drift across the gap", says, citation));
    }
    let (height, width) = under_the_eave(ground, windward, steps);
    found.push(ground.drift(DriftKind::Windward, height, width, steps));
    Ok(found)
}
