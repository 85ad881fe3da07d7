import { s } from "./dom.js";

// Verdicts on food are a circle, a triangle, a square. Answers on a report are rings of ink, so that a whole seal never
// looks like safe food.

const KEY = { "MET": "met", "NOT PROVEN": "open", "NOT MET": "missed" };
export const verdictClass = (verdict) => ({ "MET": "met", "NOT PROVEN": "not-proven", "NOT MET": "not-met" })[verdict];

export function verdictSign(verdict, size = 22, onGround = false) {
  const colour = onGround ? "var(--on-missed)" : "var(--" + KEY[verdict] + ")";
  const cut = onGround ? "var(--missed-ground)" : "var(--paper)";
  const frame = s("svg", { class: "sign", width: size, height: size, viewBox: "0 0 24 24", "aria-hidden": "true" });
  if (verdict === "MET") {
    frame.append(s("circle", { cx: 12, cy: 12, r: 11, fill: colour }),
      s("path", { d: "M7 12.5l3.5 3.5L17.5 8.5", fill: "none", stroke: cut, "stroke-width": 3 }));
  } else if (verdict === "NOT MET") {
    frame.append(s("rect", { x: 1, y: 1, width: 22, height: 22, fill: colour }),
      s("path", { d: "M7 7l10 10M17 7L7 17", fill: "none", stroke: cut, "stroke-width": 4 }));
  } else {
    frame.append(s("path", { d: "M12 1.5L23.5 22H.5z", fill: colour }),
      s("path", { d: "M12 8v7M12 17.2v2.8", fill: "none", stroke: cut, "stroke-width": 2.8 }));
  }
  return frame;
}

export function ring(kind, size = 30) {
  const ink = "var(--ink)";
  const frame = s("svg", { class: "sign", width: size, height: size, viewBox: "0 0 32 32", "aria-hidden": "true" });
  if (kind === "cracked") {
    frame.append(s("path", { d: "M14 2.6A13.5 13.5 0 0 0 13 29M18 2.6A13.5 13.5 0 0 1 19 29M17 5l-4 8 6 6-4 8", fill: "none", stroke: ink, "stroke-width": 2.4 }));
    return frame;
  }
  frame.append(s("circle", { cx: 16, cy: 16, r: 13.5, fill: "none", stroke: ink, "stroke-width": 2.4 }));
  if (kind === "whole") frame.append(s("circle", { cx: 16, cy: 16, r: 6.5, fill: ink }));
  if (kind === "compare") frame.append(s("circle", { cx: 16, cy: 16, r: 6.5, fill: "none", stroke: ink, "stroke-width": 2.4, "stroke-dasharray": "2.4 2.7" }));
  if (kind === "other") frame.append(s("path", { d: "M9.5 13.5h13M9.5 18.5h13M19.5 9l-7 14", fill: "none", stroke: ink, "stroke-width": 2.4 }));
  return frame;
}

export const tick = () => s("svg", { width: 24, height: 24, viewBox: "0 0 24 24", "aria-hidden": "true" },
  s("path", { d: "M6 12.5l4 4 8-9", fill: "none", stroke: "currentColor", "stroke-width": 2.4 }));

const LINES = { core: ["var(--core)", 3, ""], bath: ["var(--bath)", 2, "8 3"], air: ["var(--air)", 2, "2 3"], surface: ["var(--limit)", 1.4, "1 3"], none: ["var(--edge)", 1, ""] };
export const swatch = (role) => {
  const [stroke, width, dash] = LINES[role] ?? LINES.none;
  return s("svg", { class: "swatch", viewBox: "0 0 36 12", "aria-hidden": "true" },
    s("path", { d: "M0 6h36", stroke, "stroke-width": width, "stroke-dasharray": dash || null, fill: "none" }));
};

export function door(kind) {
  const frame = s("svg", { viewBox: "0 0 340 130", "aria-hidden": "true", preserveAspectRatio: "xMidYMid meet" });
  const line = (d, stroke, width, dash) => s("path", { d, fill: "none", stroke, "stroke-width": width, "stroke-dasharray": dash || null });
  if (kind === "cook") {
    frame.append(s("rect", { x: .5, y: 1, width: 80, height: 16, fill: "var(--heat)", stroke: "var(--edge)" }),
      s("rect", { x: 84, y: 1, width: 187, height: 16, fill: "var(--heat)", stroke: "var(--edge)" }),
      s("rect", { x: 273, y: 1, width: 66, height: 16, fill: "var(--cool)", stroke: "var(--edge)" }),
      line("M0 17V121H340", "var(--edge)", 1.2),
      line("M0 91H80C84 40 86 39 110 39H272C274 88 276 90 296 91H340", "var(--bath)", 1.6, "8 3"),
      line("M0 54H340", "var(--limit)", 2, "7 4"),
      line("M0 110C8 110 20 60 84 45C95 40 105 38 130 38H274C284 60 288 110 325 111H339", "var(--core)", 3));
  } else if (kind === "report") {
    frame.append(s("path", { d: "M104 2H204L237 34V126H104z M204 2V34H237", fill: "none", stroke: "var(--edge)", "stroke-width": 1.4 }),
      line("M118 22H178M118 33H162", "var(--ink)", 3), line("M118 58H220", "var(--limit)", 2, "7 4"),
      line("M118 83C124 55 130 51 160 51H190C200 51 200 76 218 78", "var(--core)", 3),
      line("M118 97H175M118 107H162", "var(--rule)", 3),
      s("circle", { cx: 232, cy: 105, r: 17, fill: "var(--paper)", stroke: "var(--ink)", "stroke-width": 2.2 }),
      s("circle", { cx: 232, cy: 105, r: 11, fill: "none", stroke: "var(--ink)", "stroke-width": 1.6, "stroke-dasharray": "1.6 2.4" }),
      s("circle", { cx: 232, cy: 105, r: 4, fill: "var(--ink)" }));
  } else {
    frame.append(line("M0 3V121H276", "var(--edge)", 1.2), line("M0 24H276", "var(--limit)", 2, "7 4"),
      line("M0 113C12 112 30 22 120 20C170 17 240 17 276 17", "var(--core)", 3),
      line("M0 113C12 112 30 40 120 35C170 32 240 32 276 32", "var(--core)", 3, "9 4"));
    const words = (y, text) => s("text", { x: 284, y, "font-size": 15, "font-weight": 700, fill: "var(--ink)" }, text);
    frame.append(words(15, "58 °C"), words(44, "50 °C"));
  }
  return frame;
}

export function shape(kind) {
  const fill = "var(--heat)", stroke = "var(--ink)";
  const frame = s("svg", { width: 64, height: 50, viewBox: "0 0 64 50", "aria-hidden": "true" });
  const solid = (d) => s("path", { d, fill, stroke, "stroke-width": 1.3, "stroke-linejoin": "round" });
  if (kind === "slab") frame.append(solid("M12 20L24 12H62L50 20z"), solid("M12 20H50V33H12z"), solid("M50 20L62 12V25L50 33z"));
  if (kind === "roast") frame.append(solid("M20 18L30 8H56L46 18z"), solid("M20 18H46V46H20z"), solid("M46 18L56 8V36L46 46z"));
  if (kind === "cylinder") frame.append(solid("M20 12H54A5 13 0 0 1 54 38H20z"), s("ellipse", { cx: 20, cy: 25, rx: 5, ry: 13, fill, stroke, "stroke-width": 1.3 }));
  if (kind === "sphere") frame.append(s("circle", { cx: 38, cy: 25, r: 19, fill, stroke, "stroke-width": 1.3 }), s("path", { d: "M19 25C24 32 52 32 57 25", fill: "none", stroke, "stroke-width": 1 }));
  const top = kind === "slab" ? 18 : kind === "roast" ? 16 : kind === "cylinder" ? 11 : 5;
  const end = kind === "slab" ? 35 : kind === "roast" ? 47 : kind === "cylinder" ? 39 : 45;
  frame.append(s("path", { d: `M6 ${top}V${end}M2.5 ${top + 4}L6 ${top}L9.5 ${top + 4}M2.5 ${end - 4}L6 ${end}L9.5 ${end - 4}`, fill: "none", stroke: "var(--limit)", "stroke-width": 1.6 }));
  return frame;
}
