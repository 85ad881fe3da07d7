import { s, h } from "./dom.js";
import { figure, exactly } from "./words.js";

// Worst to best against the limit. The white box is where the limit is kept, the bare line where it is missed: the thick
// bar's place tells the verdict without colour.

export function bar(check, width = 340, height = 24) {
  const floor = check.comparison === "at least" || check.comparison === "above" || check.comparison === "more than";
  const ends = [check.worst, check.best].filter((v) => typeof v === "number");
  const limit = check.limit;
  const low = Math.min(0, limit, ...ends);
  const bounded = check.worst !== null && check.best !== null;
  let high = Math.max(limit * (floor ? 1.3 : 2), ...ends.map((v) => v * 1.08), low + 1e-6);
  const crowded = high > limit * 12 && limit > 0;
  // A margin many times the limit is drawn on a scale of roots, so that the limit keeps its place.
  const scale = (v) => {
    const part = Math.max(0, (v - low) / (high - low));
    return (crowded ? Math.pow(part, 1 / 4) : part) * (width - 4) + 2;
  };
  if (!bounded) high *= 1.1;
  const x = (v, otherwise) => (typeof v === "number" ? scale(v) : otherwise);
  const at = scale(limit);
  const frame = s("svg", { class: "bar", viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": words(check) });
  const mid = height / 2, thick = height * .5;
  frame.append(s("path", { class: "axis", d: `M0 ${mid}H${width}` }));
  frame.append(s("rect", { class: "box", x: floor ? at : 2, y: mid - thick / 2, width: Math.max(1, floor ? width - 2 - at : at - 2), height: thick }));
  const worst = x(check.worst, floor ? 2 : width - 2), best = x(check.best, floor ? width - 2 : 2);
  const from = Math.min(worst, best), to = Math.max(worst, best);
  frame.append(s("rect", { class: check.verdict.replace(" ", "_"), x: from, y: mid - thick / 2, width: Math.max(4, to - from), height: thick }));
  if (typeof check.nominal === "number") frame.append(s("path", { class: "tick", d: `M${scale(check.nominal)} ${mid - thick * .75}V${mid + thick * .75}` }));
  frame.append(s("path", { class: "limit", d: `M${at} 0V${height}` }));
  return frame;
}

// A limit of nothing has no scale to be drawn on.
export const measured = (check) => typeof check.limit === "number" && check.limit > 0 && "worst" in check;

export function range(check) {
  const floor = check.comparison === "at least" || check.comparison === "above";
  const a = figure(check.worst, check.unit, floor ? Math.floor : Math.ceil);
  const b = figure(check.best, check.unit, floor ? Math.ceil : Math.floor);
  if (a === b) return a;
  return floor ? a + " to " + b : b + " to " + a;
}

const limitWord = (check) => (check.comparison === "at least" || check.comparison === "above" ? "asked " : "limit ");
export const limitText = (check) => limitWord(check) + exactly(check.limit, check.unit);

export function words(check) {
  return `${check.title}: ${check.verdict}; worst to best ${range(check)}; ${limitText(check)}`;
}

export const barWords = (check) => h("p", { class: "barwords" },
  h("span", { class: "lim" }, limitText(check)), h("strong", {}, range(check)));

// The running clock: how much of a limit is used.
export function running(used, limit) {
  const width = 340, height = 22;
  const full = Math.max(limit * 1.1, used);
  const at = (v) => Math.max(0, v) / full * width;
  return s("svg", { class: "bar", viewBox: `0 0 ${width} ${height}`, "aria-hidden": "true" },
    s("path", { class: "axis", d: `M0 11H${width}` }),
    s("rect", { class: "box", x: 1, y: 5, width: at(limit), height: 12 }),
    s("rect", { class: "going", x: 1, y: 5, width: at(used), height: 12 }),
    s("path", { class: "limit", d: `M${at(limit)} 0V${height}` }));
}
