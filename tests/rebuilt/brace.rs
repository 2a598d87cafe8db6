//! Braces, straight or hollowed.
use crate::bench::{Bench, plate};
use crate::sheet::{Row, Sheet, check_near};
use outshot::solid::Solid;
use outshot::tickets::{Face, MarkKind};

/// One end as it is marked: its nose, the shoulder from there to the short edge, its tenon.
struct End {
    name: &'static str,
    nose: f64,
    /// Where the nose, square to the long edge, meets the shoulder.
    nose_on_shoulder: (f64, f64),
    heel: f64,
}

impl End {
    fn read(sheet: &Sheet, name: &'static str) -> Self {
        let nose = sheet.row(&format!("nose at the {name}"));
        let nose_on_shoulder = (nose.near, nose.must_say("meets the shoulder "));
        let heel = sheet.row(&format!("shoulder at the {name}, on the short edge")).near;
        // The toe, cut away or not, is where the shoulder runs out at the long edge.
        let toe = sheet.row(&format!("shoulder at the {name}, on the long edge")).near;
        let lean = (heel - nose.near) / (sheet.wide - nose_on_shoulder.1);
        check_near(&format!("toe at the {name}"), toe, nose.near - nose_on_shoulder.1 * lean);
        Self { name, nose: nose.near, nose_on_shoulder, heel }
    }

    /// The tenon's outline and its cheeks.
    fn tenon(&self, sheet: &Sheet) -> ([(f64, f64); 4], (f64, f64)) {
        let row = |what: &str| sheet.row(&format!("tenon at the {}, {what}", self.name));
        let (tip, cheeks, end) = (row("tip"), row("cheeks from the nose"), row("end on the short edge"));
        assert_eq!(cheeks.near, self.nose);
        assert_eq!(cheeks.edges(), end.edges(), "the cheeks are straight");
        let outline = [self.nose_on_shoulder, (tip.near, tip.place()), (end.near, sheet.wide), (self.heel, sheet.wide)];
        (outline, cheeks.edges())
    }
}

pub fn rebuilt(sheet: &Sheet) -> Solid {
    let [post, beam] = ["post", "beam"].map(|name| End::read(sheet, name));
    let wide = sheet.wide;
    let body = [
        (post.nose, 0.0),
        (beam.nose, 0.0),
        beam.nose_on_shoulder,
        (beam.heel, wide),
        (post.heel, wide),
        post.nose_on_shoulder,
    ];
    let mut wood = plate(&body, (0.0, sheet.thick));
    for end in [post, beam] {
        let (outline, cheeks) = end.tenon(sheet);
        wood.extend(plate(&outline, cheeks));
    }
    let mut bench = Bench { sheet, front: Face::Outer, wood: Solid::new(wood) };
    if let Some(row) = sheet.find("hollow of the long edge") {
        hollow(&mut bench, row);
    }
    bench.bore_all();
    bench.wood
}

/// The arc from one end of the hollow to the other, in chords; the depths that are marked lie on it.
fn hollow(bench: &mut Bench, row: &Row) {
    const CHORDS: i32 = 24;
    let ((low, high), radius) = (row.along(), row.must_say("an arc of radius "));
    let (half, middle) = ((high - low) / 2.0, (low + high) / 2.0);
    let depth = |x: f64| (radius * radius - (x - middle).powi(2)).sqrt() - (radius * radius - half * half).sqrt();
    for marked in bench.sheet.of_kind(MarkKind::Chamfer).filter(|row| row.far.is_none()) {
        let off = marked.edges().1 - depth(marked.near);
        assert!(off.abs() < 1.0 / 32.0, "{} lies {off} off the arc", marked.what);
    }
    let place = |step: i32| low + (high - low) * f64::from(step) / f64::from(CHORDS);
    let outline: Vec<(f64, f64)> = (0..=CHORDS).map(|step| (place(step), depth(place(step)))).collect();
    bench.saw(&outline);
}
