import { h, fill } from "../dom.js";
import { seam } from "../seam.js";
import { Curve } from "../curve.js";
import { sources } from "../main.js";
import { view, toUnit, fromUnit, degrees, span } from "../words.js";

// The lesson live, to be read from the back row. The numbers are the lesson's own.

const CUTS = ["beef", "lamb", "pork", "chicken", "turkey"];

export function lessonScreen(page, go) {
  const setup = { cut: "beef", left: 50, right: 58, millimetres: 70, hours: 12 };
  const heading = h("div", {}), baths = h("div", { class: "baths" }), sliders = h("div", { class: "sliders" }), foot = h("div", {});
  const node = h("div", { class: "lesson" }, heading, baths, sliders, foot);
  const cores = [new Curve({ height: 190, hours: true, font: 20, label: "Core, left bath" }), new Curve({ height: 190, hours: true, font: 20, label: "Core, right bath" })];
  const counts = [new CountChart(), new CountChart()];
  let told, asked = 0;

  async function ask() {
    const mine = ++asked;
    const answer = await seam.lesson(setup).catch((refused) => ({ refused }));
    if (mine !== asked) return;
    told = answer;
    draw();
  }

  const whole = (log) => {
    const n = Math.round(log);
    if (n <= 0) return "1";
    if (n >= 9) return "1\u00a0billion or more";
    return ["1", "10", "100", "1000", "10\u00a0000", "100\u00a0000", "1\u00a0million", "10\u00a0million", "100\u00a0million"][n];
  };

  function says(bath) {
    const course = bath.courses.find((one) => one.organism.includes("perfringens")) ?? bath.courses[0];
    const low = whole(course.peakLow), high = whole(course.peakHigh);
    const becomes = high === "1" ? "One stays one" : "One germ becomes " + (low === high || low === "1" ? (low === "1" ? "up to " : "") + high : low + " to " + high);
    if (course.endHigh < -.5) return becomes + ", then fewer than you began with";
    if (course.endHigh >= course.peakHigh - .5 && high !== "1") return becomes + ", and stays so";
    return becomes;
  }

  function row(bath) {
    if (!bath.rowMet) return "No published row is met in " + span(told.hours * 60) + ".";
    const after = "A published row is met after " + (bath.rowMet.minutes / 60).toFixed(1) + " h";
    return bath.comeUpKept ? after + "." : after + ", but the core came up too slowly for it to count.";
  }

  function draw() {
    if (told.refused) { fill(foot, h("p", { class: "wrong" }, told.refused.message)); return; }
    fill(heading, h("div", { class: "row" }, h("h1", {}, `The same ${told.cut}, ${Math.round(told.hours)} hours in the bath. Which would you eat?`), h("button", { class: "link", id: "sources", onclick: showSources }, "Sources")));
    fill(baths, told.baths.map((bath, i) => h("section", { class: "bath", "aria-label": "Bath of " + toUnit(bath.celsius).toFixed(0) + " " + degrees() },
      h("p", { class: "deg" }, (+toUnit(bath.celsius).toFixed(1)) + " " + degrees()), h("h2", { class: "says" }, says(bath)), h("p", {}, row(bath)),
      cores[i].node, counts[i].node)));
    told.baths.forEach((bath, i) => {
      const times = bath.hours.map((one) => one * 3600000);
      cores[i].update({ series: { times, readings: [bath.core] }, roles: ["core"], names: ["the core"], captions: ["Core"], zero: 0, limits: [{ celsius: told.lowest.celsius, text: "lowest published row: " + told.lowest.text, below: bath.celsius > told.lowest.celsius, left: bath.celsius <= told.lowest.celsius }] });
      counts[i].show(bath, told.hours);
    });
    fill(foot, h("p", {}, "Counts in whole logs: +4 is times 10 000. C. perfringens multiplies in warm meat without air; sources end its growth somewhere from " + told.stops + ". Toxin once made stays, and spores stay in every bath: hence the fast chill. ", h("strong", {}, told.says)));
    controls();
  }

  const showSources = () => sources("Sources", told.statements.map((one) => h("div", {}, h("h3", {}, one.title), h("p", {}, one.text), h("ul", {}, one.sources.map((source) => h("li", { class: "soft small" }, source))))));

  function controls() {
    const slide = (id, label, value, min, max, step, show, put) => h("div", { class: "slider" }, h("label", { for: id }, label), h("output", { for: id, id: id + "-out" }, show(value)),
      h("input", { type: "range", id, min, max, step, value, "aria-valuetext": show(value), oninput: (e) => { put(+e.target.value); document.getElementById(id + "-out").textContent = show(+e.target.value); e.target.setAttribute("aria-valuetext", show(+e.target.value)); later(); } }));
    const f = view.unit === "F", deg = (c) => (+toUnit(c).toFixed(1)) + " " + degrees();
    const bath = (id, label, key) => slide(id, label, f ? Math.round(toUnit(setup[key])) : setup[key], f ? 104 : 40, f ? 149 : 65, f ? 1 : .5, (v) => v + " " + degrees(), (v) => { setup[key] = Math.min(65, Math.max(40, f ? Math.round(fromUnit(v) * 1000) / 1000 : v)); });
    fill(sliders, bath("left", "Left bath", "left"), bath("right", "Right bath", "right"),
      slide("thickness", "Thickness", setup.millimetres, 10, 150, 5, (v) => v + " mm", (v) => { setup.millimetres = v; }),
      told.hoursFree ? slide("hours", "Hours", setup.hours, 2, 48, 1, (v) => v + " h", (v) => { setup.hours = v; }) : "",
      h("div", { class: "field" }, h("label", { for: "cut" }, "Cut"), h("select", { id: "cut", onchange: (e) => { setup.cut = e.target.value; ask(); } }, CUTS.map((one) => h("option", { value: one, selected: one === setup.cut }, one)))));
    void deg;
  }
  let pause;
  const later = () => { clearTimeout(pause); pause = setTimeout(ask, 80); };

  return { node, name: "lessonpage", title: () => "Lesson", refresh: () => { if (told) draw(); else ask(); }, leave: () => { cores.forEach((one) => one.destroy()); counts.forEach((one) => one.destroy()); } };
}

const STEP_WORDS = { 8: "100 million", 4: "10 000", 0: "1, as raw", "-4": "1 in 10 000" };

// Counts on an axis of whole logs; the words beside it say what a log is.
class CountChart {
  constructor() {
    this.box = h("div", { class: "counts" });
    this.tableBox = h("div", { class: "tablebox", hidden: true, tabindex: "0", role: "region", "aria-label": "Counts as a table" });
    this.button = h("button", { class: "link small", "aria-expanded": "false", onclick: () => { this.tableBox.hidden = !this.tableBox.hidden; this.button.setAttribute("aria-expanded", String(!this.tableBox.hidden)); } }, "Counts as a table");
    this.node = h("figure", { class: "curve", "aria-label": "Organisms over time" }, this.box, this.button, this.tableBox);
    this.observer = new ResizeObserver(() => { if (this.bath && this.box.clientWidth !== this.width) this.draw(); });
    this.observer.observe(this.box);
    this.repaint = () => this.bath && this.draw();
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", this.repaint);
  }

  destroy() { this.observer.disconnect(); this.plot?.destroy(); matchMedia("(prefers-color-scheme: dark)").removeEventListener("change", this.repaint); }

  show(bath, hours) { this.bath = bath; this.hours = hours; this.draw(); this.table(); }

  draw() {
    if (!this.box.isConnected) return;
    const token = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
    this.width = Math.max(240, Math.floor(this.box.clientWidth) || 500);
    const narrow = this.width < 420, size = narrow ? 16 : 20;
    const courses = this.bath.courses;
    const main = courses.find((one) => one.organism.includes("perfringens")) ?? courses[0];
    const others = courses.filter((one) => one !== main);
    // Below the floor of whole logs nothing is told apart: the line ends there.
    const clip = (list) => list.map((v, i) => (v < -7.2 && (i === 0 || list[i - 1] < -7.2) ? null : v));
    const most = others.length ? others[0].high.map((_, i) => Math.max(...others.map((one) => one.high[i]))) : [];
    const data = [main.hours, clip(main.low), clip(main.high), ...(others.length ? [clip(most)] : [])];
    const font = size + "px Liberation Sans, Arial, Helvetica, sans-serif";
    this.plot?.destroy();
    this.plot = new uPlot({
      width: this.width, height: 220, padding: [12, 18, 0, 0], cursor: { show: false }, legend: { show: false },
      scales: { x: { time: false, range: [0, this.hours] }, y: { range: [-7.2, 9] } },
      bands: [{ series: [2, 1], fill: token("--band") }],
      series: [{}, { stroke: token("--core"), width: 1.5, points: { show: false } }, { stroke: token("--core"), width: 3.5, points: { show: false } }, ...(others.length ? [{ stroke: token("--air"), width: 3, dash: [3, 4], points: { show: false } }] : [])],
      axes: [{ stroke: token("--soft"), font, grid: { show: false }, size: 40, ticks: { stroke: token("--edge") }, values: (u, s) => s.map((v) => v + " h"), space: 90, border: { show: true, stroke: token("--edge"), width: 1 } },
        { stroke: token("--ink"), font, size: narrow ? 96 : 168, splits: () => [-4, 0, 4, 8], values: () => [-4, 0, 4, 8].map((v) => (narrow ? (v > 0 ? "+" : "") + v : STEP_WORDS[v] + (v ? " " + (v > 0 ? "+" : "−") + Math.abs(v) : ""))), grid: { stroke: (u) => token("--grid"), width: 1 }, ticks: { stroke: token("--edge") }, border: { show: true, stroke: token("--edge"), width: 1 } }],
      hooks: { draw: [(u) => this.names(u, main, others, most, token, font, size)] },
    }, data, this.box);
    this.plot.root.setAttribute("aria-hidden", "true");
  }

  names(u, main, others, most, token, font, size) {
    const c = u.ctx, r = devicePixelRatio || 1;
    const zero = u.valToPos(0, "y", true);
    c.save();
    c.setLineDash([]); c.strokeStyle = token("--ink"); c.lineWidth = 1.5 * r;
    c.beginPath(); c.moveTo(u.bbox.left, zero); c.lineTo(u.bbox.left + u.bbox.width, zero); c.stroke();
    c.setLineDash([]);
    c.textAlign = "left";
    c.textBaseline = "alphabetic";
    c.font = "bold " + size * r + "px Liberation Sans, Arial, Helvetica, sans-serif";
    c.globalAlpha = 1; c.lineWidth = 5 * r; c.strokeStyle = token("--paper"); c.lineJoin = "round";
    const put = (text, x, y, colour) => { c.strokeText(text, x, y); c.fillStyle = colour; c.fillText(text, x, y); };
    const k = Math.floor(main.hours.length * .6);
    const up = main.high[k] > 4;
    put(main.organism, u.bbox.left + u.bbox.width * .55, u.valToPos(up ? main.high[k] - 2.2 : Math.max(5, main.peakHigh + 1), "y", true), token("--core"));
    if (others.length) {
      const names = others.map((one) => one.organism).join(", ");
      const late = Math.max(-6.3, Math.min(2.2, most[k] > 0 ? most[k] + 1 : -6));
      const text = most[k] > 0 ? names + ": at most" : names;
      put(text, most[k] > 0 ? u.bbox.left + u.bbox.width - c.measureText(text).width - 8 * r : u.bbox.left + 8 * r, u.valToPos(late, "y", true), token("--air"));
    }
    c.restore();
  }

  table() {
    const courses = this.bath.courses, at = [];
    for (let hour = 0; hour <= this.hours + 1e-9; hour += Math.max(1, Math.round(this.hours / 12))) at.push(hour);
    const near = (course, hour) => course.hours.reduce((best, v, i) => (Math.abs(v - hour) < Math.abs(course.hours[best] - hour) ? i : best), 0);
    const log = (v) => (v <= -7 ? "−7 or lower" : (Math.round(v) > 0 ? "+" : "") + String(Math.round(v)).replace("-", "−"));
    fill(this.tableBox, h("table", {}, h("thead", {}, h("tr", {}, h("th", { scope: "col" }, "After"), courses.map((one) => h("th", { scope: "col" }, one.organism + ", logs")))),
      h("tbody", {}, at.map((hour) => h("tr", {}, h("th", { scope: "row" }, hour + " h"), courses.map((one) => { const i = near(one, hour); return h("td", {}, one.lagKnown ? log(one.low[i]) + " to " + log(one.high[i]) : "at most " + log(one.high[i])); }))))));
  }
}
