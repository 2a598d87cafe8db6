// Reads the straight lines of a PDF, in points from the page's upper left corner: enough to measure a print.
// The operators are those of ISO 32000-1, 8.4 and 8.5; only what the browser writes is understood.
import { inflateSync } from "node:zlib";
import assert from "node:assert/strict";

/** Every indirect object: number to its dictionary and, where there is one, its stream. */
function objects(bytes) {
  const text = bytes.toString("latin1");
  const found = new Map();
  const start = /(\d+) 0 obj\b/g;
  for (let match = start.exec(text); match; match = start.exec(text)) {
    const from = match.index + match[0].length;
    const end = text.indexOf("endobj", from);
    const stream = text.indexOf("stream", from);
    if (stream >= 0 && stream < end) {
      const head = text.slice(from, stream);
      const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
      const at = stream + (text[stream + 6] === "\r" ? 8 : 7);
      found.set(Number(match[1]), { head, data: bytes.subarray(at, at + length) });
      start.lastIndex = at + length;
    } else {
      found.set(Number(match[1]), { head: text.slice(from, end) });
      start.lastIndex = end;
    }
  }
  return found;
}

const content = ({ head, data }) => (/\/FlateDecode/.test(head) ? inflateSync(data) : data).toString("latin1");

/** a then b, each as [a b c d e f]. */
const times = (a, b) => [
  a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
];

/** The stroked straight segments of one content stream; what it draws by name is followed. */
function segments(stream, matrix, named) {
  const found = [];
  const kept = [];
  let path = [];
  let [at, first] = [null, null];
  let operands = [];
  const place = (x, y) => [matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5]];
  const to = (point) => {
    path.push({ from: at, to: point });
    at = point;
  };
  const close = () => at && first && to(first);
  const stroke = () => {
    found.push(...path);
    path = [];
  };
  const operators = {
    q: () => kept.push(matrix),
    Q: () => { matrix = kept.pop(); },
    cm: () => { matrix = times(operands.slice(-6).map(Number), matrix); },
    m: () => { at = first = place(...operands.slice(-2).map(Number)); },
    l: () => to(place(...operands.slice(-2).map(Number))),
    c: () => { at = place(...operands.slice(-2).map(Number)); },
    h: close,
    S: stroke,
    s: () => { close(); stroke(); },
    B: stroke,
    f: () => { path = []; },
    "f*": () => { path = []; },
    n: () => { path = []; },
    Do: () => found.push(...(named.get(operands.at(-1))?.(matrix) ?? [])),
  };
  // Strings and hexadecimal strings hold letters, no operators.
  const plain = stream.replace(/\((?:\\.|[^\\)])*\)/gs, " 0 ").replace(/<[0-9A-Fa-f\s]*>/g, " 0 ");
  for (const word of plain.split(/[\s[\]]+/)) {
    if (Object.hasOwn(operators, word)) {
      operators[word]();
      operands = [];
    } else if (word !== "") {
      operands.push(word);
    }
  }
  return found;
}

/** What an object draws by name: name to a function of the matrix. */
function namedIn(all, head) {
  const named = new Map();
  const list = /\/XObject\s*<<(.*?)>>/s.exec(head)?.[1] ?? "";
  for (const [, name, number] of list.matchAll(/(\/\w+)\s+(\d+) 0 R/g)) {
    const object = all.get(Number(number));
    if (object?.data && /\/Form\b/.test(object.head)) {
      const own = /\/Matrix\s*\[([^\]]*)\]/.exec(object.head)?.[1].trim().split(/\s+/).map(Number) ?? [1, 0, 0, 1, 0, 0];
      named.set(name, (matrix) => segments(content(object), times(own, matrix), namedIn(all, object.head)));
    }
  }
  return named;
}

/** Every page in order: its width and height in points, and its stroked straight segments, y down. */
export function readPdf(bytes) {
  const all = objects(bytes);
  const pages = [...all.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head));
  assert.ok(pages.length > 0, "no page in the PDF");
  return pages.map(({ head }) => {
    const [, , width, height] = /\/MediaBox\s*\[([^\]]*)\]/.exec(head)[1].trim().split(/\s+/).map(Number);
    const number = Number(/\/Contents\s+(\d+) 0 R/.exec(head)[1]);
    const resources = /\/Resources\s+(\d+) 0 R/.exec(head);
    const names = namedIn(all, resources ? all.get(Number(resources[1])).head : head);
    const lines = segments(content(all.get(number)), [1, 0, 0, -1, 0, height], names);
    return { width, height, lines };
  });
}
