// Writes lengths.json: lengths of paths, and points at lengths, as two general
// libraries give them. Nothing here knows of package curve.
//
//   npm install && node lengths.mjs
//
// svg-path-properties (licence ISC) takes path data whole. bezier-js (licence
// MIT) takes single curves, whose length it finds by the 24-point
// Gauss–Legendre rule. Neither subdivides, so both are off where a curve nearly
// stands still; cases of kind "smooth" keep away from that, the ones of kind
// "cusp" go there on purpose. bezier-js is therefore also asked piece by piece:
// every curve is cut by its own split into 64 pieces of equal parameter.

import { readFileSync, writeFileSync } from "node:fs";
import { Bezier } from "bezier-js";
import { svgPathProperties } from "svg-path-properties";

// A linear congruential generator (modulus 2³², multiplier 1664525, increment
// 1013904223: Press and others, "Numerical Recipes", 1992), so that the cases
// are the same everywhere.
let state = 20240229;
function random(from, to) {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return from + ((to - from) * state) / 2 ** 32;
}

const round = (x) => Math.round(x * 1000) / 1000;
const point = (r) => [round(random(-r, r)), round(random(-r, r))];
const chance = () => random(0, 1) < 0.5;

// evenness is the least speed on the curve as a share of the greatest.
function evenness(pts) {
  const curve = new Bezier(pts.flat());
  let least = Infinity;
  let most = 0;
  for (let i = 0; i <= 400; i++) {
    const d = curve.derivative(i / 400);
    const speed = Math.hypot(d.x, d.y);
    least = Math.min(least, speed);
    most = Math.max(most, speed);
  }
  return least / most;
}

function curvePoints(degree, from) {
  for (;;) {
    const pts = [from ?? point(200)];
    while (pts.length <= degree) pts.push(point(200));
    if (evenness(pts) > 0.25) return pts;
  }
}

const letter = { 2: "Q", 3: "C" };
const drawn = (pts) => letter[pts.length - 1] + " " + pts.slice(1).flat().join(" ");
const data = (...curves) => "M " + curves[0][0].join(" ") + " " + curves.map(drawn).join(" ");

// byPieces returns the length of a run of curves and the points at shares of
// it, by bisection over the parameter of the piece that they fall into.
function byPieces(curves, shares) {
  const pieces = curves.flatMap((pts) => {
    const curve = new Bezier(pts.flat());
    return Array.from({ length: 64 }, (_, i) => curve.split(i / 64, (i + 1) / 64));
  });
  const lengths = pieces.map((p) => p.length());
  const length = lengths.reduce((a, b) => a + b);
  const points = shares.map((share) => {
    let rest = length * share;
    let i = 0;
    while (rest > lengths[i]) rest -= lengths[i++];
    let [low, high] = [0, 1];
    for (let n = 0; n < 60; n++) {
      const middle = (low + high) / 2;
      if (pieces[i].split(0, middle).length() > rest) high = middle;
      else low = middle;
    }
    const p = pieces[i].get(low);
    return [length * share, p.x, p.y];
  });
  return { length, points };
}

const cases = [];

function record(name, kind, path, curves) {
  const whole = new svgPathProperties(path);
  const length = whole.getTotalLength();
  const points = [1, 3, 5].map((i) => {
    const at = (length * i) / 8;
    const p = whole.getPointAtLength(at);
    return [at, p.x, p.y];
  });
  const out = { name, kind, path, svg: { length, points } };
  if (curves) {
    out.bezier = { length: curves.reduce((sum, c) => sum + new Bezier(c.flat()).length(), 0) };
    out.pieces = byPieces(curves, [2 / 8, 4 / 8, 7 / 8]);
  }
  cases.push(out);
}

for (let i = 0; i < 60; i++) {
  const pts = curvePoints(3);
  record("cubic " + i, "smooth", data(pts), [pts]);
}
for (let i = 0; i < 20; i++) {
  const pts = curvePoints(2);
  record("quadratic " + i, "smooth", data(pts), [pts]);
}
for (let i = 0; i < 20; i++) {
  const curves = [curvePoints(3)];
  while (curves.length < 3) curves.push(curvePoints(3, curves.at(-1).at(-1)));
  record("three cubics " + i, "smooth", data(...curves), curves);
}
for (let i = 0; i < 20; i++) {
  const [a, b] = [point(200), point(200)];
  const r = round(Math.hypot(b[0] - a[0], b[1] - a[1]) * random(0.6, 2));
  record("circle " + i, "circle", `M ${a.join(" ")} A ${r} ${r} 0 ${+chance()} ${+chance()} ${b.join(" ")}`);
}
for (let i = 0; i < 20; i++) {
  const [a, b] = [point(200), point(200)];
  const r = Math.hypot(b[0] - a[0], b[1] - a[1]) * random(0.7, 1.5);
  const radii = `${round(r)} ${round(r * random(0.8, 1.2))}`;
  record("ellipse " + i, "ellipse",
    `M ${a.join(" ")} A ${radii} ${round(random(-90, 90))} ${+chance()} ${+chance()} ${b.join(" ")}`);
}

// Lines a cutter draws, in millimetres.
for (const [name, ...curves] of [
  ["front armhole", [[0, 0], [-8, 42], [-22, 96], [-14, 138]], [[-14, 138], [-6, 172], [24, 196], [62, 204]]],
  ["back armhole", [[0, 0], [6, 52], [8, 104], [2, 148]], [[2, 148], [-4, 180], [-26, 204], [-58, 210]]],
  ["sleeve head", [[0, 150], [38, 138], [58, 84], [92, 38]], [[92, 38], [112, 12], [140, 0], [168, 0]],
    [[168, 0], [204, 0], [236, 26], [258, 66]], [[258, 66], [284, 112], [306, 142], [344, 150]]],
  ["front neckline", [[0, 88], [34, 88], [66, 62], [74, 0]]],
  ["back neckline", [[0, 22], [34, 22], [62, 16], [76, 0]]],
  ["hem of a flared panel", [[0, 0], [210, 34], [420, 0]]],
  ["hip", [[0, 0], [12, 60], [34, 140], [38, 210]]],
  ["crotch", [[4, 150], [8, 210], [34, 262], [110, 270]]],
]) record(name, "drawn", data(...curves), curves);

// Here the libraries are off.
for (const [name, pts] of [
  ["crosswise on a square", [[0, 0], [100, 100], [0, 100], [100, 0]]],
  ["semicubical", [[3, -2], [-1, 2], [-1, -2], [3, 2]]],
  ["there and back", [[0, 0], [150, 0], [-50, 0], [100, 0]]],
]) record(name, "cusp", data(pts), [pts]);

const digits = (key, value) => (typeof value === "number" ? Number(value.toFixed(9)) : value);
const versions = JSON.parse(readFileSync(new URL("package.json", import.meta.url))).dependencies;
const lines = cases.map((c) => JSON.stringify(c, digits)).join(",\n");
writeFileSync(new URL("lengths.json", import.meta.url), `{"by": ${JSON.stringify(versions)},\n"cases": [\n${lines}\n]}\n`);
