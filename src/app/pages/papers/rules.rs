//! The rules of every joint, in words.
use crate::app::components::{Fold, fractions};
use crate::app::route::Place;
use crate::app::use_store;
use crate::project::Project;
use crate::units::{Fineness, Length};
use crate::wording::tape;
use leptos::prelude::*;

/// Each rule with its value.
#[must_use]
pub fn rules(project: &Project) -> Vec<(&'static str, String)> {
    let joinery = &project.joinery;
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    vec![
        ("tenons thick", say(joinery.tenon_thickness)),
        ("set from the reference face", say(joinery.tenon_offset)),
        ("post tenon", say(joinery.post_tenon)),
        ("brace tenon", say(joinery.brace_tenon)),
        ("blind mortise deeper by", say(joinery.blind_clearance)),
        ("housing", say(joinery.housing)),
        ("brace pocket longer by", say(joinery.pocket_clearance)),
        ("end shoulder", say(joinery.end_shoulder)),
        ("peg", say(joinery.peg)),
        ("peg from the shoulder", say(joinery.peg_from_shoulder)),
        ("two pegs from a width of", say(joinery.two_pegs_from)),
        ("drawbore", say(joinery.drawbore)),
        ("scarf abutment", format!("{:.0} % of the depth", joinery.scarf_abutment_share * 100.0)),
        ("squint", say(joinery.scarf_squint)),
        ("table", say(joinery.scarf_table)),
        ("wedge gap", say(joinery.scarf_wedge)),
        ("scarf clear of mortise or rafter", say(joinery.scarf_clear)),
        ("wood over a pocket", say(joinery.wood_over_pocket)),
        ("least web", say(joinery.least_web)),
        ("chamfer", say(joinery.chamfer)),
        ("chamfer stops short of ends", say(joinery.chamfer_stop)),
        ("clearance for shrinking", say(joinery.shrink_clearance)),
    ]
}

/// The rules as a list.
#[component]
pub fn RulesFold() -> impl IntoView {
    let store = use_store();
    let rows = move || {
        rules(&store.project())
            .into_iter()
            .map(|(name, value)| {
                view! {
                    <div class="fact">
                        <dt class="fact__name">{name}</dt>
                        <dd class="fact__value">{fractions(&value)}</dd>
                    </div>
                }
            })
            .collect_view()
    };
    view! {
        <Fold title="Rules of the joints" summary=Signal::derive(|| "as printed on every sheet".to_owned())>
            <dl class="facts">{rows}</dl>
            <p class="page__word"><a class="paper-link" href=Place::Frame.href()>"Change them under Frame"</a></p>
        </Fold>
    }
}
