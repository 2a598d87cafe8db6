//! The glTF file read back by its standard: counts, places, windings, and the wood it holds.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::drawing::glb;
use outshot::joinery::{StickBody, bodies};
use outshot::lay_out;
use outshot::project::{Project, demo};
use proptest::prelude::*;
use serde_json::Value;

const METRES_PER_INCH: f64 = 0.0254;

struct Read {
    json: Value,
    bytes: Vec<u8>,
}

fn word(file: &[u8], at: usize) -> usize {
    u32::from_le_bytes(file[at..at + 4].try_into().unwrap()) as usize
}

/// By glTF 2.0, 4.4 (binary files): a header of three words, then chunks with length and kind.
fn read(file: &[u8]) -> Read {
    assert_eq!((&file[..4], word(file, 4), word(file, 8)), (b"glTF".as_slice(), 2, file.len()));
    let text = word(file, 12);
    assert_eq!((&file[16..20], text % 4), (b"JSON".as_slice(), 0));
    let bin = 20 + text;
    let size = word(file, bin);
    assert_eq!((&file[bin + 4..bin + 8], size % 4, bin + 8 + size), (b"BIN\0".as_slice(), 0, file.len()));
    Read { json: serde_json::from_slice(&file[20..20 + text]).unwrap(), bytes: file[bin + 8..].to_vec() }
}

fn whole(value: &Value) -> usize {
    value.as_u64().unwrap() as usize
}

impl Read {
    fn slice(&self, accessor: &Value, code: usize, size: usize) -> &[u8] {
        let accessor = &self.json["accessors"][whole(accessor)];
        assert_eq!(whole(&accessor["componentType"]), code);
        let view = &self.json["bufferViews"][whole(&accessor["bufferView"])];
        let (from, long) = (whole(&view["byteOffset"]), whole(&view["byteLength"]));
        assert_eq!((long, from % 4), (whole(&accessor["count"]) * size, 0));
        &self.bytes[from..from + long]
    }

    fn vectors(&self, accessor: &Value) -> Vec<[f64; 3]> {
        let bytes = self.slice(accessor, 5126, 12);
        let float = |at: usize| f64::from(f32::from_le_bytes(bytes[at..at + 4].try_into().unwrap()));
        (0..bytes.len() / 12).map(|at| [0, 4, 8].map(|axis| float(at * 12 + axis))).collect()
    }

    fn indices(&self, accessor: &Value) -> Vec<usize> {
        let bytes = self.slice(accessor, 5125, 4);
        (0..bytes.len() / 4).map(|at| word(bytes, at * 4)).collect()
    }
}

fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// One stick of the file against its body. The triangles over the node's zero, by the divergence theorem, hold the
/// wood; positive only where they run counter-clockwise from outside.
fn check_stick(file: &Read, node: &Value, body: &StickBody) {
    assert_eq!(node["name"].as_str().unwrap(), body.mark);
    let mesh = &file.json["meshes"][whole(&node["mesh"])];
    let (mut volume, mut low, mut high) = (0.0, [f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
    let at: Vec<f64> = node["translation"].as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect();
    for primitive in mesh["primitives"].as_array().unwrap() {
        assert!(whole(&primitive["material"]) < file.json["materials"].as_array().unwrap().len());
        let places = file.vectors(&primitive["attributes"]["POSITION"]);
        let normals = file.vectors(&primitive["attributes"]["NORMAL"]);
        assert_eq!(places.len(), normals.len());
        for triangle in file.indices(&primitive["indices"]).chunks_exact(3) {
            let [a, b, c] = [0, 1, 2].map(|corner| places[triangle[corner]]);
            let out = cross(minus(b, a), minus(c, a));
            volume += dot(a, cross(b, c)) / 6.0;
            assert!(dot(out, normals[triangle[0]]) > 0.0, "{}: a triangle looks inward", body.mark);
            for place in [a, b, c] {
                for axis in 0..3 {
                    low[axis] = low[axis].min(place[axis] + at[axis]);
                    high[axis] = high[axis].max(place[axis] + at[axis]);
                }
            }
        }
    }
    let expected = body.volume().to_cubic_inches() * METRES_PER_INCH.powi(3);
    assert!((volume - expected).abs() < 1e-4 * expected, "{}: {volume} m³ is not {expected}", body.mark);
    let within = body.wood.within();
    for (found, expected) in [(low, within.low), (high, within.high)] {
        let expected = [expected.x, expected.z, expected.y].map(|inches| inches * METRES_PER_INCH);
        let off = minus(found, expected).map(f64::abs).into_iter().fold(0.0, f64::max);
        assert!(off < 2e-6, "{}: {off} m off its box", body.mark);
    }
}

fn check_project(project: &Project) {
    let Some(built) = lay_out(project).built else { return };
    let all = bodies(project, &built.shape);
    let file = read(&glb(&project.name, &all));
    let nodes = file.json["nodes"].as_array().unwrap();
    assert_eq!((nodes.len(), file.json["asset"]["version"].as_str()), (built.sticks.len(), Some("2.0")));
    assert_eq!(file.json["scenes"][0]["nodes"].as_array().unwrap().len(), nodes.len());
    assert_eq!(whole(&file.json["buffers"][0]["byteLength"]).next_multiple_of(4), file.bytes.len());
    for (node, body) in nodes.iter().zip(&all) {
        check_stick(&file, node, body);
    }
}

#[test]
fn the_examples() {
    for project in [demo::wool_barn(), demo::log_store()] {
        check_project(&project);
    }
}

/// The bounds that readers trust are those of the places, to the bit.
#[test]
fn bounds_are_exact() {
    let project = demo::wool_barn();
    let file = read(&glb("barn", &bodies(&project, &lay_out(&project).built.unwrap().shape)));
    let accessors = file.json["accessors"].as_array().unwrap();
    let bounded = accessors.iter().enumerate().filter(|(_, accessor)| accessor.get("min").is_some());
    let mut n_bounded = 0;
    for (index, accessor) in bounded {
        let places = file.vectors(&Value::from(index));
        for axis in 0..3 {
            let values = places.iter().map(|place| place[axis]);
            let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
            assert_eq!(accessor["min"][axis].as_f64().unwrap() as f32, low as f32);
            assert_eq!(accessor["max"][axis].as_f64().unwrap() as f32, high as f32);
        }
        n_bounded += 1;
    }
    assert_eq!(n_bounded, file.json["meshes"].as_array().unwrap().len());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn frames_drawn_at_random(project in projects()) {
        check_project(&project);
    }
}
