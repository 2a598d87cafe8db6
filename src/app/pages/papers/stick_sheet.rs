//! One stick on paper: its faces unrolled, its marks in order.
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Good, use_store};
use crate::drawing::{self, svg};
use crate::joinery::{Entry, exception_says, own_joints_of};
use crate::ordering::came::note_on;
use crate::project::{JointName, Project};
use crate::tickets::{Mark, Stick, clear_zones, crown_answer, crown_faces, mirror_words};
use crate::units::{Length, show_weight};
use crate::wording::{length, tape};

/// Width of the drawing, px; a long stick is drawn wider and set smaller.
const WIDTH: f64 = 680.0;

/// The sheet.
pub fn stick_sheet(good: Good, mark: String) -> Option<Tag> {
    let stick = good.built.stick(&mark)?;
    let project = &good.project;
    let units = project.units;
    let facts = format!(
        "{} {}, {} net, {} green, balances {} from zero, both {}.",
        stick.role.name(),
        stick.timber.sawn.label(units),
        length(stick.net_length(), units),
        show_weight(stick.green_weight, units),
        length(stick.bulk.balance(), units),
        stick.weighed()
    );
    let zero =
        format!("Zero: {}. References: {} and {}.", stick.zero, stick.references.0.name(), stick.references.1.name());
    let alike: Vec<&str> = good
        .built
        .sticks
        .iter()
        .filter(|other| other.same_as.as_deref() == Some(&mark))
        .map(|other| other.mark.as_str())
        .collect();
    let own = not_by_rules(&good, alike.iter().copied().chain([mark.as_str()]));
    let alike = (!alike.is_empty()).then(|| {
        let boxes: Vec<String> = alike.iter().map(|mark| format!("☐ {mark}")).collect();
        tag("p").class("paper__word").child(format!("Cut alike: ☐ {mark} {}", boxes.join(" ")))
    });
    let same = stick.same_as.as_ref().map(|first| tag("p").class("paper__word").child(format!("Cut like {first}.")));
    let mirror = mirror_words(&good.built.sticks, stick)
        .map(|words| tag("p").class("paper__word").child(format!("It is the {words}.")));
    let piece =
        note_on(project, stick).map(|note| tag("p").class("paper__word").child("Its piece: ").child(fractions(&note)));
    let html = svg::print(&drawing::stick_sheet(project, stick), WIDTH, &mark);
    let rows = stick.marks.iter().enumerate().map(|(index, one)| row(project, stick, index, one)).collect::<Vec<_>>();
    Some(
        parts()
            .child(tag("p").class("paper__word").child(fractions(&facts)).child(" ").child(fractions(&zero)))
            .child(tag("p").class("paper__ask").child(tag("strong").child(stick.ask.clone())))
            .child(piece)
            .child(crown(&good, stick))
            .child(same)
            .child(mirror)
            .child(alike)
            .child(own)
            .child(tag("div").class("paper__drawing paper__drawing--fitted").html(&html))
            .child(tag("p").class("paper__scale").child("Not to scale: go by the numbers."))
            .child(marks(rows))
            .child(sound_wood(&good, stick))
            .child(wood_left(&good, &mark)),
    )
}

/// Where its crown is and how to lay it, or the question.
fn crown(good: &Good, stick: &Stick) -> Option<Tag> {
    let faces = crown_faces(stick);
    let progress = &good.project.progress;
    let says = match progress.crowns.get(&stick.mark) {
        _ if faces.is_empty() => return None,
        Some(crown) => {
            let zones = clear_zones(&good.project, &good.built.shape, stick);
            let knots = progress.knots.get(&stick.mark).cloned().unwrap_or_default();
            let is_cut = progress.cut.contains_key(&stick.mark);
            crown_answer(stick, (&zones, &knots), *crown, (good.project.units, is_cut)).says
        }
        None => {
            let boxes: Vec<String> = faces.iter().map(|face| format!("☐ {}", face.name())).collect();
            format!("Sight along it: the face it bows toward goes up. Its crown is toward the {}.", boxes.join("  "))
        }
    };
    Some(tag("p").class("paper__word").child(fractions(&says)))
}

/// Joints of those sticks that depart from the rules, a line each.
fn not_by_rules<'a>(good: &Good, marks: impl Iterator<Item = &'a str>) -> Tag {
    let mut own: Vec<JointName> = Vec::new();
    for joint in marks.flat_map(|mark| own_joints_of(&good.project, &good.built.shape, mark)) {
        if !own.contains(&joint) {
            own.push(joint);
        }
    }
    let says = own.into_iter().filter_map(|joint| exception_says(&good.project, joint));
    let line = |says: String| tag("p").class("paper__word own-joint").child(fractions(&says));
    parts().child(says.map(line).collect::<Vec<_>>())
}

/// Where no knot and no wane may be.
fn sound_wood(good: &Good, stick: &Stick) -> Option<Tag> {
    let mut parts: Vec<String> = Vec::new();
    for zone in clear_zones(&good.project, &good.built.shape, stick) {
        if !parts.contains(&zone.what) {
            parts.push(zone.what);
        }
    }
    let words = format!("No knot and no wane in: {}.", parts.join("; "));
    (!parts.is_empty()).then(|| tag("p").class("paper__word").child(fractions(&words)))
}

/// The thinnest wood at its joints, how it gets in, and what is in the way, once the solids are made.
fn wood_left(good: &Good, mark: &str) -> Option<Tag> {
    let fitted = use_store().fitted().filter(|fitted| fitted.good == *good)?;
    let (fit, units) = (&fitted.fit, good.project.units);
    let own = fit.clashes.iter().filter(|clash| clash.is_of(mark));
    let mut says: Vec<String> = own.map(|clash| format!("IN THE WAY: {}", clash.says)).collect();
    let near = fit.near.iter().filter(|near| near.stick == mark).map(|near| near.says(units));
    let near: Vec<String> = near.collect();
    if !near.is_empty() {
        says.push(format!("Thinnest wood: {}.", near.join("; ")));
    }
    let entry = fit.entries.iter().find(|entry| entry.stick == mark);
    says.extend(entry.map(|entry| match &entry.stopped {
        None => format!("Goes in {}. Caution: {}", entry.way, Entry::CAUTION),
        Some(stopped) => format!("CANNOT GET IN {}: {} is in its way.", entry.way, stopped.by),
    }));
    (!says.is_empty()).then(|| {
        parts().child(says.iter().map(|line| tag("p").class("paper__word").child(fractions(line))).collect::<Vec<_>>())
    })
}

fn marks(rows: Vec<Tag>) -> Tag {
    table(
        "paper__table",
        &["☐", "Mark", "Face", "Near", "Far", "From the other end", "Across, depth, what to know"],
        rows,
    )
}

fn row(project: &Project, stick: &Stick, index: usize, mark: &Mark) -> Tag {
    let say = |value: Length| tape(value, project.units, mark.fineness);
    let (near, far) = mark.from_far_end(stick.high);
    let other = far.map_or_else(|| say(near), |far| format!("{} to {}", say(near), say(far)));
    let mut know = Vec::new();
    if let Some((from, to)) = mark.across {
        let face = mark.across_from.map_or("", |face| face.name());
        let edges = if from == to { say(from) } else { format!("{} to {}", say(from), say(to)) };
        know.push(format!("{edges} from the {face}"));
    }
    know.extend(mark.depth.map(|depth| format!("{} deep", say(depth))));
    if !mark.note.is_empty() {
        know.push(mark.note.to_string());
    }
    tag("tr")
        .child(tag("td").class("paper__box").child("☐ ").child(index + 1))
        .child(tag("th").attr("scope", "row").child(mark.what.to_string()))
        .child(tag("td").class("paper__box").child(mark.face.name()))
        .child(tag("td").class("paper__number").child(fractions(&say(mark.near))))
        .child(tag("td").class("paper__number").child(mark.far.map(|far| fractions(&say(far)))))
        .child(tag("td").child(fractions(&other)))
        .child(tag("td").child(fractions(&know.join("; "))))
}
