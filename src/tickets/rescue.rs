//! A bad cut, and what can be done about it.
//!
//! Nothing here is certain to be the best way: the answers are computed from this frame's measures and ranked by how little
//! they disturb: leave it, a shim, moving what is not cut yet, a loose tenon, a new stick, and what the spoiled one can
//! still become. Offsets are along the stick, toward its high end above zero. A mark that is ticked is taken as
//! cut, so no answer counts on wood that may be gone. Tolerances, shims and loose tenons are common practice.
use super::mark::{Mark, MarkKind, Waste};
use super::salvage::salvage;
use super::stick::Stick;
use crate::design::Shape;
use crate::joinery::brace_tenon_thickness;
use crate::project::{Project, Role, Side};
use crate::units::{Fineness, Length, sort_by_number};
use crate::wording::{length, tape};

/// A saw's kerf.
const KERF: Length = Length::inches(0.125);
/// Less than this is no offset at all.
const HAIR: Length = Length::inches(1.0 / 128.0);

/// What went wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slip {
    /// It was cut that far from its line, toward the stick's high end above zero.
    Off(Length),
    /// It was cut on the wrong side of its line: what has two edges before its near one, a saw cut into the wood that stays.
    WrongSide,
    /// The end was cut short by that much.
    Short(Length),
}

/// A bad cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BadCut<'a> {
    /// The stick.
    pub stick: &'a Stick,
    /// The place of the mark in its sheet.
    pub mark: usize,
    /// What went wrong.
    pub slip: Slip,
}

/// What an answer does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Nothing.
    Leave,
    /// A shim.
    Shim,
    /// The rest of this stick's layout moves.
    MoveStick,
    /// What meets it moves.
    MoveMate,
    /// A brace of its own measures.
    OwnBrace,
    /// A loose tenon.
    LooseTenon,
    /// The same stick again.
    Spare,
    /// Another stick of this frame out of what is left.
    Becomes,
}

/// One way out.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What it does.
    pub way: Way,
    /// It can still be done.
    pub is_open: bool,
    /// What to do, or what refuses it.
    pub says: String,
}

impl Answer {
    fn open(way: Way, says: impl Into<String>) -> Self {
        Self { way, is_open: true, says: says.into() }
    }

    fn closed(way: Way, says: impl Into<String>) -> Self {
        Self { way, is_open: false, says: says.into() }
    }
}

/// The ways out, the one that disturbs least first; those that something refuses after those that can be done.
#[must_use]
pub fn rescue(project: &Project, shape: &Shape, sticks: &[Stick], bad: &BadCut) -> Vec<Answer> {
    let Some(mark) = bad.stick.marks.get(bad.mark) else { return Vec::new() };
    let scene = Scene { project, shape, sticks, stick: bad.stick, mark, off: offset(bad, mark) };
    let mut answers: Vec<Answer> = scene.leave().into_iter().collect();
    let is_spoiled = answers.iter().all(|answer| answer.way != Way::Leave);
    if is_spoiled {
        answers.extend(scene.move_stick());
        answers.extend(scene.move_mate());
        answers.extend(scene.loose_tenon());
        answers.push(scene.spare());
        answers.extend(salvage(project, sticks, bad.stick, bad.mark, scene.off));
    }
    sort_by_number(&mut answers, |answer| f64::from(u8::from(!answer.is_open)));
    answers
}

/// How far the cut lies from its line.
fn offset(bad: &BadCut, mark: &Mark) -> Length {
    let stick = bad.stick;
    match bad.slip {
        Slip::Off(by) => by,
        Slip::WrongSide => match (mark.far, mark.waste) {
            (Some(far), _) => mark.near - far,
            (None, Waste::After) => -KERF,
            (None, _) => KERF,
        },
        Slip::Short(by) => {
            let at_low = mark.near - stick.low < stick.high - mark.near;
            if at_low { by.abs() } else { -by.abs() }
        }
    }
}

/// How far off a cut may be, and how thick a shim mends it, where one does.
fn limits(mark: &Mark, role: Role) -> (Length, Option<Length>) {
    let in_64ths = |n: f64| Length::inches(n / 64.0);
    let quarter = Some(in_64ths(16.0));
    match mark.kind {
        // A foot stands on its base, and packing goes under it.
        MarkKind::End if role == Role::Post => (in_64ths(4.0), Some(in_64ths(32.0))),
        MarkKind::End => (in_64ths(8.0), None),
        MarkKind::Line => (in_64ths(2.0), quarter),
        MarkKind::Housing => (in_64ths(4.0), quarter),
        MarkKind::Seat => (in_64ths(8.0), None),
        MarkKind::Mortise => (in_64ths(4.0), quarter),
        MarkKind::Tenon => (in_64ths(4.0), Some(in_64ths(8.0))),
        MarkKind::Peg => (in_64ths(2.0), None),
        MarkKind::Fixing | MarkKind::Chamfer => (in_64ths(32.0), None),
    }
}

struct Scene<'a> {
    project: &'a Project,
    shape: &'a Shape,
    sticks: &'a [Stick],
    stick: &'a Stick,
    mark: &'a Mark,
    off: Length,
}

impl Scene<'_> {
    fn say(&self, value: Length) -> String {
        tape(value.abs(), self.project.units, Fineness::ThirtySecond)
    }

    fn is_cut(&self, mark: &str) -> bool {
        self.project.progress.cut.contains_key(mark)
    }

    /// Toward which end of the stick as it lies.
    fn way(&self) -> &'static str {
        if (self.off > Length::ZERO) == self.stick.to_left { "left" } else { "right" }
    }

    fn leave(&self) -> Option<Answer> {
        let (least, shim) = limits(self.mark, self.stick.role);
        let off = self.off.abs();
        if off <= least + HAIR {
            let says = format!(
                "It does not matter: {} is within the {} that such a cut may be off. Pare to the line and go on.",
                self.say(off),
                self.say(least)
            );
            return Some(Answer::open(Way::Leave, says));
        }
        let shim = shim.filter(|most| off <= *most + HAIR)?;
        let under = if self.mark.kind == MarkKind::End { "under the foot" } else { "on the side that bears" };
        let says = format!(
            "A hardwood shim {} thick {under}, glued, its grain along the stick's; up to {} is mended so.",
            self.say(off),
            self.say(shim)
        );
        Some(Answer::open(Way::Shim, says))
    }

    /// The mate that the bad cut is for.
    fn mate(&self) -> Option<&str> {
        self.mark.mate.as_deref()
    }

    /// Slides the rest of the layout along the stock.
    fn move_stick(&self) -> Option<Answer> {
        let (stick, off) = (self.stick, self.off);
        let own = |mark: &Mark| mark.mate == self.mark.mate && mark.mate.is_some() || mark == self.mark;
        let made = self.project.progress.marked.get(&stick.mark).map(|keys| stick.made(keys)).unwrap_or_default();
        let others: Vec<(usize, &Mark)> = stick.marks.iter().enumerate().filter(|(_, mark)| !own(mark)).collect();
        if others.is_empty() {
            return None;
        }
        let done: Vec<&str> = others.iter().filter(|(at, _)| made.contains(at)).map(|(_, mark)| &*mark.what).collect();
        let (by, end) = (self.say(off), self.way());
        if self.is_cut(&stick.mark) {
            let says = format!("Moving the rest of its layout {by} to the {end}: no, {} is cut.", stick.mark);
            return Some(Answer::closed(Way::MoveStick, says));
        }
        if let [first, ..] = done[..] {
            let more = if done.len() > 1 { format!(" and {} more", done.len() - 1) } else { String::new() };
            let says = format!("Moving the rest of its layout {by} to the {end}: no, made already: {first}{more}.");
            return Some(Answer::closed(Way::MoveStick, says));
        }
        let says = format!(
            "Move all its other {} marks {by} to the {end}, the ends too; it needs that much more stock at the {end} end. \
             Nothing else in the frame moves.",
            others.len()
        );
        Some(Answer::open(Way::MoveStick, says))
    }

    /// Lets what meets it here follow.
    fn move_mate(&self) -> Option<Answer> {
        let mate = self.mate()?;
        match (self.stick.role, mate.chars().next()?) {
            (Role::Post | Role::Beam, 'K') => self.own_brace(mate),
            (Role::Beam, 'B') => Some(self.other_lap(mate)),
            (Role::Beam | Role::Ledger, 'P' | 'R') => Some(self.along_the_wall(mate)),
            _ => None,
        }
    }

    /// A post or rafter stands that much to the side: what belongs to it on other sticks goes with it.
    fn along_the_wall(&self, mate: &str) -> Answer {
        let number = mate.trim_start_matches(['P', 'R']);
        let group = [mate.to_owned(), format!("K{number}L"), format!("K{number}R")];
        let group = if mate.starts_with('P') { &group[..] } else { &group[..1] };
        let (mut moves, mut refuses) = (Vec::new(), Vec::new());
        for stick in self.sticks.iter().filter(|stick| stick.whole_line.is_some() && stick.role != Role::Post) {
            let is_bad = |mark: &Mark| stick.mark == self.stick.mark && mark.mate.as_deref() == Some(mate);
            let marks = stick.marks.iter().filter(|mark| mark.mate.as_ref().is_some_and(|mate| group.contains(mate)));
            let n_marks = marks.filter(|mark| !is_bad(mark)).count();
            if n_marks == 0 {
                continue;
            }
            let says = format!("{n_marks} on {}", stick.mark);
            if self.is_cut(&stick.mark) { refuses.push(says) } else { moves.push(says) }
        }
        let what = if mate.starts_with('P') { "with its pier and its braces" } else { "at both its ends" };
        let mut says = format!("{mate} stands {} farther to the {}, {what}", self.say(self.off), self.way());
        if !moves.is_empty() {
            says.push_str(&format!("; marks that move as far: {}", moves.join(", ")));
        }
        if refuses.is_empty() {
            return Answer::open(Way::MoveMate, format!("{says}."));
        }
        Answer::closed(Way::MoveMate, format!("{says}. No: cut already, {}.", refuses.join(", ")))
    }

    fn other_lap(&self, mate: &str) -> Answer {
        let by = self.say(self.off);
        if self.is_cut(mate) {
            let says =
                format!("{mate} is cut: close the scarf as it is, and enter what the beam comes to as its dry fit.");
            return Answer::open(Way::MoveMate, says);
        }
        let says = format!(
            "Cut the same line of the other lap, on {mate}, {by} to the {} too; then close the scarf and enter what the beam \
             comes to as its dry fit.",
            self.way()
        );
        Answer::open(Way::MoveMate, says)
    }

    /// A pocket off its place asks a brace with legs of its own.
    fn own_brace(&self, mate: &str) -> Option<Answer> {
        let brace = self.shape.braces.iter().find(|brace| brace.mark() == mate)?;
        let form = &brace.form;
        let (along, down) = match (self.stick.role, brace.side) {
            (Role::Post, _) => (form.along, form.down + self.off),
            (_, Side::Right) => (form.along + self.off, form.down),
            (_, Side::Left) => (form.along - self.off, form.down),
        };
        let say = |value: Length| tape(value, self.project.units, Fineness::ThirtySecond);
        let says = format!(
            "{mate} gets legs of its own: {} along the beam, {} down the post; {} on the long edge instead of {}, bevels {} : {}",
            say(along),
            say(down),
            say(along.hypot(down)),
            say(form.long_edge()),
            say(along),
            say(down)
        );
        if self.is_cut(mate) {
            return Some(Answer::closed(Way::OwnBrace, format!("{says}. No: {mate} is cut; it takes a new one.")));
        }
        Some(Answer::open(Way::OwnBrace, format!("{says}.")))
    }

    /// A free tenon of hardwood, let into both sticks. On its own side it is as deep as its pegs ask: the distance to the
    /// peg and four of its diameters beyond, or the tenon's own length if that is more.
    fn loose_tenon(&self) -> Option<Answer> {
        if !matches!(self.mark.kind, MarkKind::Tenon | MarkKind::Peg) {
            return None;
        }
        let (rules, long, wide, thick) = match self.stick.role {
            Role::Post => {
                let post = self.shape.posts.iter().find(|post| format!("P{}", post.number) == self.stick.mark)?;
                (&post.rules, post.tenon_length, post.tenon.1 - post.tenon.0, post.rules.tenon_thickness)
            }
            Role::Brace => {
                let brace = self.shape.braces.iter().find(|brace| brace.mark() == self.stick.mark)?;
                let rules = if self.mark.mate.as_deref() == Some("beam") { &brace.head } else { &brace.foot };
                let wide = self.project.frame.timbers.brace.sawn.depth;
                (rules, rules.brace_tenon, wide, brace_tenon_thickness(self.project, rules))
            }
            _ => return None,
        };
        let own = long.max(rules.peg_from_shoulder + rules.peg * 4.0);
        let units = self.project.units;
        let says = format!(
            "A loose tenon of dry, straight hardwood: {} thick, {} wide, {} long. Saw the old one off at the shoulder, cut a slot {} \
             deep into the end, glue and peg it there; {} stands out for the mortise as before.",
            length(thick, units),
            length(wide, units),
            length(long + own, units),
            length(own, units),
            length(long, units)
        );
        Some(Answer::open(Way::LooseTenon, says))
    }

    fn spare(&self) -> Answer {
        let stick = self.stick;
        let first = stick.same_as.as_ref().unwrap_or(&stick.mark);
        let alike = self.sticks.iter().filter(|other| other.mark == *first || other.same_as.as_ref() == Some(first));
        let open = alike.filter(|other| other.mark != stick.mark && !self.is_cut(&other.mark)).count();
        let others = match open {
            0 => String::new(),
            1 => "; one more of this layout is still to be cut, take its stock and order one again".to_owned(),
            n => format!("; {n} more of this layout are still to be cut, take the stock of one and order it again"),
        };
        let says = format!(
            "A new {} to the same sheet, from {} at least {} long{others}.",
            stick.mark,
            stick.timber.ordered.label(self.project.units),
            length(stick.net_length(), self.project.units)
        );
        Answer::open(Way::Spare, says)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::design::Built;
    use crate::evaluate;
    use crate::project::demo;
    use crate::tickets::clear_lengths;
    use std::sync::Arc;

    fn inches(value: f64) -> Length {
        Length::inches(value)
    }

    /// A project without an open end: what is cut, then the frame.
    fn barn(change: impl FnOnce(&mut Project)) -> (Project, Arc<Built>) {
        let mut project = demo::wool_barn();
        change(&mut project);
        let built = evaluate(&project).built.unwrap();
        (project, built)
    }

    /// The place of the first mark of a stick that begins with those words.
    fn place(stick: &Stick, what: &str) -> usize {
        stick.marks.iter().position(|mark| mark.what.starts_with(what)).unwrap()
    }

    fn answers(project: &Project, built: &Built, (stick, what): (&str, &str), slip: Slip) -> Vec<Answer> {
        let stick = built.stick(stick).unwrap();
        rescue(project, &built.shape, &built.sticks, &BadCut { stick, mark: place(stick, what), slip })
    }

    fn of(answers: &[Answer], way: Way) -> &Answer {
        answers.iter().find(|answer| answer.way == way).unwrap()
    }

    #[test]
    fn a_sixteenth_in_a_mortise_does_not_matter_and_an_eighth_is_shimmed() {
        let (project, built) = barn(|_| ());
        let near = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.0625)));
        assert_eq!(near.iter().map(|answer| answer.way).collect::<Vec<_>>(), [Way::Leave]);
        let off = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(-0.125)));
        assert_eq!(off[0].way, Way::Shim);
        assert!(off[0].says.contains("1⁄8″ thick"), "{}", off[0].says);
        // Half an inch is more than a shim mends.
        let far = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
        assert!(far.iter().all(|answer| answer.way != Way::Leave && answer.way != Way::Shim));
    }

    /// By hand: legs of 36 in, the pocket in the post ½ in low: √(36² + 36.5²) = 51.267 in, to the thirty-second 51 9⁄32.
    #[test]
    fn a_pocket_off_its_place_asks_a_brace_of_its_own() {
        let (project, built) = barn(|project| {
            project.frame.brace_along = inches(36.0);
            project.frame.brace_down = inches(36.0);
        });
        let found = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
        let own = of(&found, Way::OwnBrace);
        assert!(own.is_open && own.says.contains("36 1⁄2″ down the post"), "{}", own.says);
        assert!(own.says.contains("51 9⁄32″"), "{}", own.says);
        let (project, built) = barn(|project| {
            project.progress.cut.insert("K2R".to_owned(), String::new());
        });
        let found = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
        assert!(!of(&found, Way::OwnBrace).is_open);
    }

    /// The post goes with its mortise; its braces' pockets lie in the beam and go too, unless that piece is cut.
    #[test]
    fn a_mortise_off_its_place_takes_its_post_along() {
        let (project, built) = barn(|_| ());
        let piece = built.sticks.iter().find(|stick| {
            let has = |mate: &str| stick.marks.iter().any(|mark| mark.mate.as_deref() == Some(mate));
            stick.role == Role::Beam && has("P2") && (has("K2L") || has("K2R"))
        });
        let mark = piece.unwrap().mark.clone();
        let found = answers(&project, &built, (&mark, "housing of P2"), Slip::Off(inches(-0.5)));
        let mate = of(&found, Way::MoveMate);
        assert!(mate.is_open && mate.says.starts_with("P2 stands 1⁄2″ farther to the left"), "{}", mate.says);
        assert!(mate.says.contains(&format!("on {mark}")), "{}", mate.says);
        let stick = of(&found, Way::MoveStick);
        assert!(stick.is_open && stick.says.contains("1⁄2″ to the left"), "{}", stick.says);
        let (project, built) = barn(|project| {
            project.progress.cut.insert(mark.clone(), String::new());
        });
        let found = answers(&project, &built, (&mark, "housing of P2"), Slip::Off(inches(-0.5)));
        assert!(!of(&found, Way::MoveMate).is_open && !of(&found, Way::MoveStick).is_open);
        // What is refused stands last.
        let opens: Vec<bool> = found.iter().map(|answer| answer.is_open).collect();
        assert!(opens.is_sorted_by(|a, b| a >= b));
    }

    /// By hand: a tenon of 4 in; its own side asks 1½ + 4 × 1 = 5½ in; 9½ in in all.
    #[test]
    fn a_tenon_cut_off_is_replaced_by_a_loose_one() {
        let (project, built) = barn(|project| {
            project.joinery.post_tenon = inches(4.0);
            project.joinery.peg = inches(1.0);
            project.joinery.peg_from_shoulder = inches(1.5);
        });
        let found = answers(&project, &built, ("P2", "tenon width"), Slip::Short(inches(4.0)));
        let loose = of(&found, Way::LooseTenon);
        assert!(loose.says.contains("9 1⁄2″ long") && loose.says.contains("slot 5 1⁄2″ deep"), "{}", loose.says);
    }

    /// By hand: a mortise on the wrong side of its near line is off by its own width, toward zero; a saw that ran on the wrong
    /// side of an end's line by a kerf, into the wood.
    #[test]
    fn the_wrong_side_of_a_line_is_a_measure() {
        let (_, built) = barn(|_| ());
        let post = built.stick("P2").unwrap();
        let at = |what: &str| {
            let mark = place(post, what);
            offset(&BadCut { stick: post, mark, slip: Slip::WrongSide }, &post.marks[mark])
        };
        let mortise = &post.marks[place(post, "mortise of K2R")];
        assert_eq!(at("mortise of K2R"), mortise.near - mortise.far.unwrap());
        assert_eq!(at("foot"), inches(-0.125));
    }

    /// What is left of a post whose one pocket is bad: above it and below it, half an inch clear of the joint and of where it
    /// was cut. By hand: the joint reaches from its first mark to its last, and 1 in farther by the bad cut.
    #[test]
    fn what_is_left_is_clear_of_the_joint_and_of_the_bad_cut() {
        let (project, built) = barn(|_| ());
        let post = built.stick("P2").unwrap();
        let bad = place(post, "housing of K2R");
        let marks = post.marks.iter().filter(|mark| mark.mate.as_deref() == Some("K2R"));
        let near = marks.clone().map(|mark| mark.near.to_inches()).fold(f64::INFINITY, f64::min);
        let far = marks.map(|mark| mark.far.unwrap_or(mark.near).to_inches()).fold(f64::NEG_INFINITY, f64::max);
        let clear = clear_lengths(&project, post, bad, inches(1.0));
        assert_eq!(clear.len(), 2, "{clear:?}");
        assert_eq!(clear[0].0, post.low);
        assert!((clear[0].1.to_inches() - (near - 0.5)).abs() < 1e-9);
        let lowest = far.max(post.marks[bad].far.unwrap().to_inches() + 1.0);
        assert!((clear[1].0.to_inches() - (lowest + 0.5)).abs() < 1e-9);
        assert_eq!(clear[1].1, post.high);
    }

    /// A piece of the beam spoiled at its right end still holds the shorter pieces, longest first, none of them cut.
    #[test]
    fn a_spoiled_piece_becomes_a_shorter_one() {
        let (project, built) = barn(|_| ());
        let longest = built.sticks.iter().filter(|stick| stick.role == Role::Beam && !stick.to_left);
        let longest = longest.max_by(|a, b| a.net_length().to_inches().total_cmp(&b.net_length().to_inches())).unwrap();
        let bad = longest.marks.iter().position(|mark| mark.what.starts_with("scarf")).unwrap();
        let slip = Slip::Off(inches(2.0));
        let found = rescue(&project, &built.shape, &built.sticks, &BadCut { stick: longest, mark: bad, slip });
        let becomes: Vec<&Answer> = found.iter().filter(|answer| answer.way == Way::Becomes).collect();
        let clear = clear_lengths(&project, longest, bad, inches(2.0));
        let room = clear.iter().map(|(from, to)| (*to - *from).to_inches()).fold(0.0, f64::max);
        let fits =
            built.sticks.iter().filter(|stick| stick.role == Role::Beam && stick.net_length().to_inches() <= room);
        assert_eq!(becomes.len(), fits.count(), "{found:?}");
        assert!(!becomes.is_empty(), "{clear:?}");
    }
}
