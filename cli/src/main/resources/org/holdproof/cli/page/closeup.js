import { h, fill } from "./dom.js";
import { Curve, readingAt } from "./curve.js";
import { clock, temperature, nearest } from "./words.js";

// On a cook of a day one reading is half a pixel: forty minutes around the picked edge, one dot a reading.
const HALF = 20 * 60000;

export class CloseUp {
  constructor() {
    this.curve = new Curve({ height: 150, closeup: true, label: "Close-up of the picked edge" });
    this.head = h("div", { class: "head" });
    this.node = h("section", { class: "closeup", hidden: true, "aria-label": "Close-up" }, this.head, this.curve.node);
  }

  destroy() { this.curve.destroy(); }

  // model: as the curve's, with picked: the edge looked at
  async show(model, picked, readings) {
    this.node.hidden = !picked;
    if (!picked) return;
    this.model = model;
    const keep = this.range && picked.at >= this.range.from + HALF / 5 && picked.at <= this.range.to - HALF / 5 && this.pickedId === picked.id;
    if (!keep) this.range = { from: picked.at - HALF, to: picked.at + HALF };
    this.pickedId = picked.id;
    const key = Math.floor(this.range.from / HALF);
    if (this.loaded !== key) {
      this.loaded = key;
      this.series = await readings((key - 1) * HALF, (key + 4) * HALF);
    }
    if (!this.series?.times.length || this.pickedId !== picked.id) { fill(this.head, this.heading(picked)); return; }
    fill(this.head, this.heading(picked),
      h("label", { class: "unseen", for: "edge-time" }, "Time of " + picked.label),
      h("input", { id: "edge-time", type: "text", inputmode: "numeric", value: clock(picked.at), onchange: (e) => { const at = nearest(e.target.value, picked.at); if (at === undefined) { e.target.value = clock(picked.at); return; } picked.move(at, true); picked.settle(); } }),
      h("button", { class: "plain", id: "edge-earlier", onclick: () => { picked.step(-1); picked.settle(); } }, "← Earlier"),
      h("button", { class: "plain", id: "edge-later", onclick: () => { picked.step(1); picked.settle(); } }, "Later →"));
    this.curve.update({ ...model, series: this.series, range: this.range, dots: true, limits: [], names: [], hatches: model.hatches?.map((one) => ({ ...one, words: null })), lit: undefined, windows: [], decided: undefined });
  }

  heading(picked) {
    const at = (role) => {
      const k = (this.model.roles ?? []).findIndex((r) => r === role);
      const value = k >= 0 && this.series ? readingAt(this.series, k, picked.at) : undefined;
      return value === undefined ? "" : role.replace("air", "smoker") + " " + temperature(value);
    };
    const said = ["core", "bath", "air"].map(at).filter(Boolean).slice(0, 2).join(", ");
    return h("h2", {}, "Close-up at " + clock(picked.at) + (said ? ": " + said : ""));
  }
}
