//! Wood painted by WebGL 2: flat faces, their grain and edges as pens, what lies behind hidden by its depth.
use super::tones::{Tone, Tones};
use crate::drawing::{Eye, Framing, Layer, Light, Shown, Strand, ball, face_layer};
use crate::solid::Vector;
use wasm_bindgen::prelude::*;
use web_sys::WebGlVertexArrayObject;
use web_sys::{HtmlCanvasElement, WebGl2RenderingContext as Gl, WebGlBuffer, WebGlProgram, WebGlUniformLocation};

/// Where a place shows: each row gives one coordinate.
const SEE: &str = "#version 300 es
uniform vec4 x, y, z;
vec4 see(vec3 at) { vec4 p = vec4(at, 1.0); return vec4(dot(x, p), dot(y, p), dot(z, p), 1.0); }
";

const FACE: &str = "
uniform vec3 tones[9];
layout(location = 0) in vec4 place;
flat out vec3 tone;
void main() { gl_Position = see(place.xyz); tone = tones[int(place.w)]; }";

/// Each edge is a strip of four corners, `pen` pixels to either side of it; those of faces turned away are put out of sight.
const EDGE: &str = "
uniform vec3 toward, ink;
uniform vec2 half_size;
uniform float pen, lift;
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
layout(location = 2) in vec3 normal;
flat out vec3 tone;
void main() {
  vec4 a = see(from), b = see(to);
  vec2 way = (b.xy - a.xy) * half_size;
  float far = length(way);
  vec2 along = far > 0.001 ? way / far : vec2(0.0);
  vec2 across = vec2(-along.y, along.x);
  bool is_end = gl_VertexID > 1;
  vec4 p = is_end ? b : a;
  p.xy += (across * ((gl_VertexID & 1) == 0 ? -1.0 : 1.0) + along * (is_end ? 0.5 : -0.5)) * pen / half_size;
  p.z -= lift;
  gl_Position = dot(normal, toward) > 0.0001 ? p : vec4(2.0, 2.0, 2.0, 1.0);
  tone = ink;
}";

const FILL: &str = "#version 300 es
precision mediump float;
flat in vec3 tone;
out vec4 colour;
void main() { colour = vec4(tone, 1.0); }";

/// How far edges stand before their own faces, in inches, so that they are drawn whole.
const LIFT: f64 = 0.35;
/// Grain stands nearer to them, and its pen is finer.
const GRAIN: (f64, f32) = (0.2, 0.6);

/// One program with what it draws.
struct Pass {
    program: WebGlProgram,
    holds: WebGlVertexArrayObject,
    buffer: WebGlBuffer,
    count: i32,
}

/// A canvas that wood is painted on.
pub struct Painter {
    gl: Gl,
    faces: Pass,
    grain: Pass,
    edges: Pass,
    middle: Vector,
    far: f64,
}

impl Painter {
    /// On a canvas; nothing where the browser has no WebGL 2.
    pub fn on(canvas: &HtmlCanvasElement) -> Option<Self> {
        // Kept after it is shown, so that it can be printed.
        let options = js_sys::Object::new();
        js_sys::Reflect::set(&options, &"preserveDrawingBuffer".into(), &true.into()).ok()?;
        let gl = canvas.get_context_with_context_options("webgl2", &options).ok()??.dyn_into::<Gl>().ok()?;
        let pass = |vertex: &str| {
            let program = program(&gl, vertex)?;
            Some(Pass { program, holds: gl.create_vertex_array()?, buffer: gl.create_buffer()?, count: 0 })
        };
        let (faces, grain, edges) = (pass(FACE)?, pass(EDGE)?, pass(EDGE)?);
        gl.enable(Gl::DEPTH_TEST);
        gl.depth_func(Gl::LEQUAL);
        Some(Self { gl, faces, grain, edges, middle: Vector::ZERO, far: 1.0 })
    }

    /// Takes what is to be painted.
    pub fn load(&mut self, shown: &[Shown]) {
        let (middle, far) = ball(shown);
        (self.middle, self.far) = (middle, far.to_inches());
        let mut faces: Vec<f32> = Vec::new();
        for patch in shown.iter().flat_map(|one| &one.surface.patches) {
            let tone = tone(face_layer(patch));
            for pair in patch.corners[1..].windows(2) {
                for corner in [patch.corners[0], pair[0], pair[1]] {
                    faces.extend(numbers(corner - middle));
                    faces.push(tone);
                }
            }
        }
        let (mut grain, mut edges): (Vec<f32>, Vec<f32>) = (Vec::new(), Vec::new());
        let pen = |to: &mut Vec<f32>, (from, end): Strand, normal: Vector| {
            for place in [from - middle, end - middle, normal] {
                to.extend(numbers(place));
            }
        };
        for one in shown {
            for edge in &one.surface.edges {
                pen(&mut edges, edge.ends, edge.normal);
            }
            let Some(runs) = &one.grain else { continue };
            for patch in &one.surface.patches {
                runs.on(patch).into_iter().for_each(|strand| pen(&mut grain, strand, patch.normal));
            }
        }
        self.faces.count = (faces.len() / 4) as i32;
        fill(&self.gl, &self.faces, &faces, &[4], 0);
        for (pass, strips) in [(&mut self.grain, &grain), (&mut self.edges, &edges)] {
            pass.count = (strips.len() / 9) as i32;
            fill(&self.gl, pass, strips, &[3, 3, 3], 1);
        }
    }

    /// Paints it.
    pub fn paint(&self, eye: Eye, framing: &Framing, tones: &Tones, pixel_ratio: f64) {
        let gl = &self.gl;
        gl.viewport(0, 0, gl.drawing_buffer_width(), gl.drawing_buffer_height());
        gl.clear_color(0.0, 0.0, 0.0, 0.0);
        gl.clear(Gl::COLOR_BUFFER_BIT | Gl::DEPTH_BUFFER_BIT);
        let rows = self.rows(eye, framing);
        self.begin(&self.faces, &rows);
        gl.uniform3fv_with_f32_array(self.place(&self.faces, "tones").as_ref(), &tones.faces);
        gl.draw_arrays(Gl::TRIANGLES, 0, self.faces.count);
        // Where wood is small in the picture its edges crowd: the pen gets finer with it.
        let pen = tones.pen * (pixel_ratio * framing.scale.clamp(0.6, 1.0)) as f32;
        if framing.shows_grain() {
            let pen = (pen * GRAIN.1).max(1.0);
            self.strips(&self.grain, &rows, eye, (&tones.grain, pen, GRAIN.0));
        }
        self.strips(&self.edges, &rows, eye, (&tones.ink, pen, LIFT));
    }

    /// Gives the graphics memory back.
    pub fn end(&self) {
        if let Ok(Some(ends)) = self.gl.get_extension("WEBGL_lose_context")
            && let Ok(lose) = js_sys::Reflect::get(&ends, &"loseContext".into())
            && let Ok(lose) = lose.dyn_into::<js_sys::Function>()
        {
            let _ = lose.call0(&ends);
        }
    }

    fn place(&self, pass: &Pass, name: &str) -> Option<WebGlUniformLocation> {
        self.gl.get_uniform_location(&pass.program, name)
    }

    fn begin(&self, pass: &Pass, rows: &[[f32; 4]; 3]) {
        self.gl.use_program(Some(&pass.program));
        self.gl.bind_vertex_array(Some(&pass.holds));
        for (name, row) in ["x", "y", "z"].into_iter().zip(rows) {
            self.gl.uniform4fv_with_f32_array(self.place(pass, name).as_ref(), row);
        }
    }

    fn strips(&self, pass: &Pass, rows: &[[f32; 4]; 3], eye: Eye, (ink, pen, lift): (&Tone, f32, f64)) {
        self.begin(pass, rows);
        let (gl, place) = (&self.gl, |name: &str| self.place(pass, name));
        gl.uniform3fv_with_f32_array(place("toward").as_ref(), &numbers(eye.toward()));
        gl.uniform3fv_with_f32_array(place("ink").as_ref(), ink);
        let half = [gl.drawing_buffer_width() as f32 / 2.0, gl.drawing_buffer_height() as f32 / 2.0];
        gl.uniform2fv_with_f32_array(place("half_size").as_ref(), &half);
        gl.uniform1f(place("pen").as_ref(), pen / 2.0);
        gl.uniform1f(place("lift").as_ref(), (lift / self.far) as f32);
        gl.draw_arrays_instanced(Gl::TRIANGLE_STRIP, 0, 4, pass.count);
    }

    /// The rows that give a place's coordinates on the canvas, -1 to 1, and its depth, the nearest first.
    fn rows(&self, eye: Eye, framing: &Framing) -> [[f32; 4]; 3] {
        let centre = eye.place(self.middle);
        let (wide, tall) = (framing.size.0 / 2.0 / framing.scale, framing.size.1 / 2.0 / framing.scale);
        let aside = ((centre.x - framing.middle.x) / wide, (centre.y - framing.middle.y) / tall);
        let row = |way: Vector, part: f64, offset: f64| {
            let [x, y, z] = numbers(way * (1.0 / part));
            [x, y, z, offset as f32]
        };
        [
            row(eye.right(), wide, aside.0.to_inches()),
            row(eye.up(), tall, aside.1.to_inches()),
            row(-eye.toward(), self.far * 1.05, 0.0),
        ]
    }
}

fn numbers(place: Vector) -> [f32; 3] {
    [place.x as f32, place.y as f32, place.z as f32]
}

/// Its place among the tones of the faces.
fn tone(layer: Layer) -> f32 {
    let (face, light) = match layer {
        Layer::Across(light) => (3.0, light),
        Layer::Chiselled(light) => (6.0, light),
        Layer::Planed(light) => (0.0, light),
        _ => (0.0, Light::Full),
    };
    face + match light {
        Light::Full => 0.0,
        Light::Half => 1.0,
        Light::Low => 2.0,
    }
}

fn program(gl: &Gl, vertex: &str) -> Option<WebGlProgram> {
    let program = gl.create_program()?;
    for (kind, text) in [(Gl::VERTEX_SHADER, &*format!("{SEE}{vertex}")), (Gl::FRAGMENT_SHADER, FILL)] {
        let shader = gl.create_shader(kind)?;
        gl.shader_source(&shader, text);
        gl.compile_shader(&shader);
        gl.attach_shader(&program, &shader);
    }
    gl.link_program(&program);
    gl.get_program_parameter(&program, Gl::LINK_STATUS).is_truthy().then_some(program)
}

/// Puts numbers in a buffer of the pass: so many to each of its inputs, in turn; one row for each corner, or for each strip.
fn fill(gl: &Gl, pass: &Pass, numbers: &[f32], inputs: &[i32], each: u32) {
    gl.bind_vertex_array(Some(&pass.holds));
    gl.bind_buffer(Gl::ARRAY_BUFFER, Some(&pass.buffer));
    let numbers = js_sys::Float32Array::from(numbers);
    gl.buffer_data_with_array_buffer_view(Gl::ARRAY_BUFFER, &numbers, Gl::STATIC_DRAW);
    let stride = inputs.iter().sum::<i32>() * 4;
    let mut at = 0;
    for (index, count) in inputs.iter().enumerate() {
        let index = index as u32;
        gl.enable_vertex_attrib_array(index);
        gl.vertex_attrib_pointer_with_i32(index, *count, Gl::FLOAT, false, stride, at);
        gl.vertex_attrib_divisor(index, each);
        at += count * 4;
    }
}
