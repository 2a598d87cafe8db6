//! Where a splice of the ledger may be, and what speaks against a place.
use super::ledger_fixings::{fixes_both_halves, ledger_hole};
use super::ledger_line::{LedgerPiece, wall_posts};
use super::scarf_place::{Surroundings, grid};
use crate::project::{LedgerFixings, Mill, Problem, Project, Site};
use crate::units::{Length, sort_by_number};
use crate::wording::length;

/// Studs no farther apart than this carry a ledger whose end stands out past one of them (common practice).
const CLOSE: Length = Length::inches(24.0);

/// What a splice keeps clear of.
pub struct SpliceRoom<'a> {
    around: &'a Surroundings<'a>,
    half: Length,
    /// From a rafter's centre to the middle of a splice, at the least.
    keep: Length,
    /// From a wall post's centre to the middle of a splice that may not lie over one, at the least.
    beside: Length,
    /// Over a post of the wall it can be held, or the posts stand too far apart for it to hang between them.
    pub may_lie_over: bool,
    /// Centres of the wall's posts.
    pub walls: Vec<Length>,
}

/// One splice as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpliceReport {
    /// Its number from the left, from 1.
    pub number: usize,
    /// Its middle from the ledger's left end.
    pub middle: Length,
    /// From an end of its lap to the nearest rafter's side; below zero under one.
    pub rafter_clear: Length,
    /// The nearest post of the wall: its number from the left, from 1, and how far its centre is from the splice's middle.
    pub wall_post: Option<(usize, Length)>,
}

impl<'a> SpliceRoom<'a> {
    /// What splices of that ledger, so fixed to that wall, keep clear of.
    #[must_use]
    pub fn new(around: &'a Surroundings<'a>, site: &Site, fixings: &LedgerFixings) -> Self {
        let frame = around.frame;
        let half = frame.ledger_lap / 2.0;
        // Four widths of a fixing, which its end distance asks.
        let beside = half + fixings.across() / 2.0 + ledger_hole(fixings).unwrap_or_default() * 4.0;
        Self {
            around,
            half,
            keep: frame.timbers.rafter.ordered.breadth / 2.0 + around.rules.scarf_clear + half,
            beside,
            may_lie_over: site.wall_post_spacing > CLOSE || fixes_both_halves(fixings, frame.timbers.ledger.sawn.depth),
            walls: wall_posts(site, frame.beam_length),
        }
    }

    /// Places worth a splice, left to right: posts of the wall, the middles between rafters, and between posts where it may
    /// not lie over them.
    #[must_use]
    pub fn places(&self) -> Vec<Length> {
        let middles = |of: &[Length]| of.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0).collect::<Vec<_>>();
        let mut places = [self.walls.clone(), middles(self.around.rafters)].concat();
        if !self.may_lie_over {
            places.extend(middles(&self.walls));
        }
        sort_by_number(&mut places, |place| place.to_inches());
        places.dedup_by(|a, b| a.is_near(*b, Length::inches(0.01)));
        places.retain(|x| *x > self.half && *x < self.around.frame.beam_length - self.half && self.clears_rafters(*x));
        places
    }

    fn clears_rafters(&self, x: Length) -> bool {
        self.around.rafters.iter().all(|rafter| (*rafter - x).abs() >= self.keep)
    }

    /// What a place costs for the wall behind it, in feet of stock.
    #[must_use]
    pub fn wall_cost(&self, x: Length) -> f64 {
        match nearest(&self.walls, x) {
            Some((_, off)) if self.may_lie_over => f64::from(u8::from(off > self.half / 2.0)),
            Some((_, off)) if off < self.beside => 3.0,
            _ => 1.0,
        }
    }

    /// The lowest and the highest middle of one splice of those, the others as they are: laps do not run into each other,
    /// and a piece at the ledger's end is two laps long at least.
    fn limits(&self, middles: &[Length], index: usize) -> (Length, Length) {
        let lap = self.half * 2.0;
        let at_end = self.half * 3.0;
        let low = index.checked_sub(1).and_then(|before| middles.get(before)).map_or(at_end, |before| *before + lap);
        let high = middles.get(index + 1).map_or(self.around.frame.beam_length - at_end, |next| *next - lap);
        (low, high)
    }

    /// The first splice of those, left to right, that runs into the one before it or has no room at an end.
    ///
    /// # Errors
    /// The sentence that says so.
    pub(super) fn in_order(&self, middles: &[Length]) -> Result<(), Problem> {
        let hair = Length::inches(1e-6);
        for (index, middle) in middles.iter().enumerate() {
            let last = self.around.frame.beam_length - self.half * 3.0;
            let (low, _) = self.limits(middles, index);
            let (number, say) = (index + 1, |value| length(value, self.around.units));
            let (says, nearest) = if *middle < low - hair && index > 0 {
                (format!("Splice {number} runs into splice {index}: their middles are a lap apart at least."), low)
            } else if *middle < low - hair {
                let says = "too near the ledger's left end: a piece is two laps long at least";
                (format!("Splice {number} is {says}."), low)
            } else if *middle > last + hair {
                let says = "too near the ledger's right end, or past it: a piece is two laps long at least";
                (format!("Splice {number} is {says}, and the ledger {} long.", say(last + self.half * 3.0)), last)
            } else {
                continue;
            };
            let problem = Problem::stop(field(index), says);
            return Err(if nearest >= low - hair && nearest <= last + hair {
                problem.nearest(nearest)
            } else {
                problem
            });
        }
        Ok(())
    }

    /// What speaks against the splice of that index standing at `x`, the others as they are.
    fn against(&self, middles: &[Length], index: usize, x: Length, mill: &Mill) -> Option<String> {
        let say = |value| length(value, self.around.units);
        if !self.clears_rafters(x) {
            let clear = clear_of_rafters(self.around.rafters, self.rafter_half(), (x, self.half));
            let (is, least) = (say(clear.max(Length::ZERO)), say(self.around.rules.scarf_clear));
            return Some(format!("its lap is {is} from a rafter's seat; it must stay {least} clear"));
        }
        if let Some((post, off)) = nearest(&self.walls, x)
            && !self.may_lie_over
            && off < self.beside
        {
            let (is, least) = (say(off), say(self.beside));
            return Some(format!(
                "it is {is} from the wall's post {post}, whose fixings would hold neither half; it must stay {least} away"
            ));
        }
        let left = index.checked_sub(1).map_or(Length::ZERO, |before| middles[before] - self.half);
        let right = middles.get(index + 1).map_or(self.around.frame.beam_length, |next| *next + self.half);
        for (number, piece) in [(index + 1, x + self.half - left), (index + 2, right - x + self.half)] {
            if mill.stock_for(piece).is_none() {
                let (is, longest) = (say(piece), say(mill.longest()));
                return Some(format!(
                    "L{number} would be {is} long, and with its trim no length of the mill, {longest} the longest, holds it"
                ));
            }
        }
        None
    }

    /// The caution of each splice the user placed where it should not be, with the nearest place, in whole steps, that works.
    pub(super) fn problems(&self, middles: &[Length], mill: &Mill) -> Vec<Problem> {
        let mut found = Vec::new();
        for (index, middle) in middles.iter().enumerate() {
            let Some(why) = self.against(middles, index, *middle, mill) else { continue };
            let problem = Problem::caution(field(index), format!("Splice {}: {why}.", index + 1));
            found.push(match self.nearest_place(middles, index, mill) {
                Some(place) => problem.nearest(place),
                None => problem,
            });
        }
        found
    }

    fn nearest_place(&self, middles: &[Length], index: usize, mill: &Mill) -> Option<Length> {
        let (low, high) = self.limits(middles, index);
        let step = grid(self.around.frame);
        let n_steps = (self.around.frame.beam_length / step).ceil() as i32;
        for n in 1..=n_steps {
            for place in [middles[index] - step * f64::from(n), middles[index] + step * f64::from(n)] {
                if place >= low && place <= high && self.against(middles, index, place, mill).is_none() {
                    return Some(place);
                }
            }
        }
        None
    }

    fn rafter_half(&self) -> Length {
        self.around.frame.timbers.rafter.ordered.breadth / 2.0
    }
}

/// The splices of a ledger's pieces, left to right.
#[must_use]
pub fn ledger_splices(project: &Project, pieces: &[LedgerPiece], rafters: &[Length]) -> Vec<SpliceReport> {
    let half = project.frame.ledger_lap / 2.0;
    let rafter_half = project.frame.timbers.rafter.ordered.breadth / 2.0;
    let walls = wall_posts(&project.site, project.frame.beam_length);
    let of = |piece: &LedgerPiece| {
        let middle = piece.end - half;
        let rafter_clear = clear_of_rafters(rafters, rafter_half, (middle, half));
        SpliceReport { number: piece.number, middle, rafter_clear, wall_post: nearest(&walls, middle) }
    };
    pieces.iter().filter(|piece| piece.right_splice).map(of).collect()
}

/// The field of one splice.
fn field(index: usize) -> String {
    format!("frame.ledger_splices.{index}")
}

fn clear_of_rafters(rafters: &[Length], rafter_half: Length, (middle, half): (Length, Length)) -> Length {
    rafters.iter().map(|rafter| (*rafter - middle).abs() - half - rafter_half).fold(Length::feet(1000.0), Length::min)
}

/// The nearest of the wall's posts: its number from the left, from 1, and how far off it is.
fn nearest(walls: &[Length], x: Length) -> Option<(usize, Length)> {
    let off = walls.iter().enumerate().map(|(index, wall)| (index + 1, (*wall - x).abs()));
    off.reduce(|one, other| if other.1 < one.1 { other } else { one })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use crate::evaluate::lay_out;
    use crate::project::{Nearest, Problem, Project, ScarfPlace, Side, demo};
    use crate::units::Length;

    fn barn_with(middles: &[f64]) -> Project {
        let mut barn = demo::wool_barn();
        barn.frame.ledger_splices = middles.iter().map(|middle| Length::inches(*middle)).collect();
        barn
    }

    /// The problems of splices, and the pieces' ends in inches.
    fn laid(project: &Project) -> (Vec<Problem>, Vec<(f64, f64)>) {
        let design = lay_out(project);
        let problems = design.problems.into_iter().filter(|p| p.is_of("frame.ledger_splices")).collect();
        let pieces = design.built.map(|built| {
            let ends = built.shape.ledger.iter().map(|piece| (piece.start.to_inches(), piece.end.to_inches()));
            ends.collect()
        });
        (problems, pieces.unwrap_or_default())
    }

    fn nearest(problem: &Problem) -> Option<f64> {
        match problem.nearest? {
            Nearest::Length(length) => Some(length.to_inches()),
            _ => None,
        }
    }

    /// What the program chose, said by hand, is the same ledger, and nothing speaks against it.
    #[test]
    fn the_programs_own_places_by_hand_are_the_same_ledger() {
        for mut project in [demo::wool_barn(), demo::log_store()] {
            let own = lay_out(&project).built.unwrap();
            let splices = super::ledger_splices(&project, &own.shape.ledger, &own.shape.rafters);
            project.frame.ledger_splices = splices.iter().map(|splice| splice.middle).collect();
            let mine = lay_out(&project);
            let about = mine.problems.iter().filter(|problem| problem.is_of("frame.ledger_splices"));
            assert!(about.into_iter().all(|problem| problem.says.contains("same bay")));
            let (mine, own) = (&mine.built.unwrap().shape.ledger, &own.shape.ledger);
            assert_eq!(mine.len(), own.len());
            let near = |a: Length, b: Length| a.is_near(b, Length::inches(1e-9));
            assert!(mine.iter().zip(own).all(|(a, b)| near(a.start, b.start) && near(a.end, b.end)));
        }
    }

    /// One sentence of a splice and the nearest place, in inches, that works.
    fn check(middles: &[f64], index: usize, part: &str, works: Option<f64>, stops: bool) {
        let (problems, pieces) = laid(&barn_with(middles));
        let field = format!("frame.ledger_splices.{index}");
        let about = |problem: &&Problem| problem.field == field && problem.says.contains(part);
        assert!(problems.iter().any(|problem| about(&problem)), "{part}: {problems:?}");
        let found = problems.iter().find(about).unwrap();
        assert_eq!((nearest(found), found.stops()), (works, stops), "{}", found.says);
        assert_eq!(pieces.is_empty(), stops);
    }

    /// The barn's ledger of 408 in has laps of 8 in and one row of ¾ in lags on studs at 4, 20, … 404: a middle is 4 + 3 = 7 in
    /// from a stud. Its rafters, 4 in wide, stand at 26, 50, … 386: a middle is 2 + 2 + 4 = 8 in from a rafter's. Between the
    /// rafters at 146 and 170, 155 to 157 would do, but the piece past it is longer than 20 ft; between those at 194 and 218,
    /// 203 to 205 does.
    #[test]
    fn a_place_that_will_not_do_is_named_with_the_nearest_that_does() {
        check(&[206.0], 0, "6″ from the wall's post 14", Some(205.0), false);
        check(&[180.0], 0, "0″ from the wall's post 12", Some(203.0), false);
        check(&[215.0], 0, "0″ from a rafter's seat; it must stay 2″", Some(205.0), false);
        check(&[155.0], 0, "L2 would be 21′ 5″ long", Some(203.0), false);
        check(&[10.0], 0, "too near the ledger's left end", Some(12.0), true);
        check(&[402.0], 0, "too near the ledger's right end", Some(396.0), true);
        check(&[100.0, 106.0], 1, "runs into splice 1", Some(108.0), true);
        check(&[250.0, 100.0], 1, "runs into splice 1", Some(258.0), true);
        check(&[204.0], 0, "same bay as scarf 1", None, false);
    }

    /// Three pieces with a lap of 8 in each: 0 to 161, 153 to 257 and 249 to 408; none of their places is spoken against.
    #[test]
    fn pieces_reach_a_lap_past_the_middles() {
        let (problems, pieces) = laid(&barn_with(&[157.0, 253.0]));
        assert!(problems.iter().all(|problem| problem.says.contains("same bay")), "{problems:?}");
        assert_eq!(pieces, [(0.0, 161.0), (153.0, 257.0), (249.0, 408.0)]);
    }

    /// With two rows that hold each half by itself the splice may lie over a stud.
    #[test]
    fn over_a_stud_where_both_halves_are_held() {
        let mut barn = barn_with(&[180.0]);
        let speaks = |barn: &Project| laid(barn).0.iter().any(|problem| !problem.says.contains("same bay"));
        assert!(speaks(&barn));
        let ledger = &mut barn.fixings.ledger;
        (ledger.rows, ledger.lowest, ledger.row_gap) = (2, Length::inches(2.0), Length::inches(5.0));
        assert!(!speaks(&barn));
    }

    /// No room for it anywhere: nothing is offered.
    #[test]
    fn where_nothing_works_nothing_is_offered() {
        let mut barn = barn_with(&[204.0]);
        let place = |centre: f64| ScarfPlace { centre: Length::inches(centre), lower: Side::Left };
        barn.frame.scarfs.by_hand = vec![place(182.0), place(314.0)];
        barn.mill.lengths = vec![Length::feet(16.0), Length::feet(12.0)];
        let problems = laid(&barn).0;
        let found = problems.iter().find(|problem| problem.says.contains("would be")).unwrap();
        assert_eq!(nearest(found), None, "{}", found.says);
    }
}
