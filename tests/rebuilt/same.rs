//! How far two solids are apart, and a stick of the frame laid on the bench.
use outshot::joinery::StickBody;
use outshot::solid::{Convex, Plane, Solid, Vector};
use outshot::tickets::{Role, Stick};

/// The least width of a body, square to one of its facets.
fn thickness(body: &Convex) -> f64 {
    body.facets().iter().map(|facet| -body.reach(&facet.plane).0).fold(f64::INFINITY, f64::min)
}

/// The thickest of what one has and the other has not, and where it is.
pub fn thickest_off(one: &Solid, two: &Solid) -> (f64, String) {
    let mut worst = (0.0, String::new());
    for (has, has_not, word) in [(one, two, "too much"), (two, one, "too little")] {
        let mut left = has.clone();
        for body in has_not.bodies() {
            left.cut(body);
        }
        for rest in left.bodies() {
            let thick = thickness(rest);
            if thick > worst.0 {
                worst = (thick, format!("{word} at {:?}", rest.within()));
            }
        }
    }
    worst
}

/// The frame's directions that become the bench's x, y and z.
fn axes(body: &StickBody) -> [Vector; 3] {
    let [right, out, up] =
        [Vector::inches(1.0, 0.0, 0.0), Vector::inches(0.0, 1.0, 0.0), Vector::inches(0.0, 0.0, 1.0)];
    let along = body.along;
    match body.role {
        Role::Post => [along, -out, right],
        Role::Beam | Role::Ledger => [along, -out, -up],
        Role::Block => [along, -out, up],
        Role::Rafter => [along, right, along.cross(right)],
        Role::Brace => [along, -out, Vector::inches(-along.z * along.x.signum(), 0.0, along.x.abs())],
        Role::Purlin => {
            // It lies on the roof's slope: its upper face is the highest of its long ones.
            let facets = body.stock[0].facets().iter().map(|facet| facet.plane.normal);
            let upper = facets.filter(|normal| normal.x.abs() < 0.5).max_by(|a, b| a.z.total_cmp(&b.z)).unwrap();
            [along, -upper, right.cross(upper)]
        }
    }
}

/// The stick as the frame has it, laid so that its zero and its faces lie on the bench's.
pub fn on_the_bench(body: &StickBody) -> Solid {
    let mut bodies: Vec<Convex> = body.wood.moved(-body.zero).bodies().to_vec();
    let mut axes = axes(body);
    let aims = [Vector::inches(1.0, 0.0, 0.0), Vector::inches(0.0, 1.0, 0.0), Vector::inches(0.0, 0.0, 1.0)];
    // Each mirror brings one direction to its aim and leaves those that are there.
    for (index, aim) in aims.into_iter().enumerate() {
        let Some(normal) = (axes[index] - aim).unit() else { continue };
        let mirror = Plane { normal, offset: 0.0 };
        bodies = bodies.iter().map(|body| body.mirrored(&mirror)).collect();
        axes = axes.map(|axis| axis - normal * (2.0 * axis.dot(normal)));
    }
    Solid::new(bodies)
}

/// The same, left for right: a post across its face, a piece that lies along the wall end for end. A brace for the other hand
/// lies on the bench as its mirror image shows it already.
pub fn mirrored(body: &StickBody, stick: &Stick) -> Solid {
    let laid = on_the_bench(body);
    let middle = |twice: f64, normal: Vector| Plane { normal, offset: twice / 2.0 };
    let plane = match body.role {
        Role::Post => middle(stick.timber.sawn.breadth.to_inches(), Vector::inches(0.0, 0.0, 1.0)),
        Role::Beam | Role::Ledger | Role::Purlin => {
            middle((stick.low + stick.high).to_inches(), Vector::inches(1.0, 0.0, 0.0))
        }
        Role::Brace | Role::Rafter | Role::Block => return laid,
    };
    Solid::new(laid.bodies().iter().map(|body| body.mirrored(&plane)).collect())
}
