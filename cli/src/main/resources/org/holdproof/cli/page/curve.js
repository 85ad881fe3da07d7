import { h, s, fill } from "./dom.js";
import { swatch } from "./signs.js";
import { view, toUnit, temperature, clock, clockSeconds, dayShort, degrees, offsetMinutes, span, count } from "./words.js";

// The curve stays put. uPlot draws lines and axes; what the page says about them lies over it: ribbon, edges, hatching,
// limits, windows, names. Solid is said, dotted is proposed, hatched is silence, crimson dashes are limits.

const ROLES = {
  core: { colour: "--core", width: 3, dash: [], name: "core" },
  bath: { colour: "--bath", width: 1.6, dash: [8, 3], name: "bath" },
  air: { colour: "--air", width: 1.8, dash: [2, 3], name: "smoker" },
  surface: { colour: "--limit", width: 1.4, dash: [1, 3], name: "surface" },
  none: { colour: "--edge", width: 1, dash: [], name: "" },
};
export const roleWord = (role) => ({ core: "core", bath: "bath", air: "smoker", surface: "surface", none: "not used" })[role] ?? "";
const token = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

const HOURS = 3600;
const STEPS = [300, 600, 900, 1800, HOURS, 2 * HOURS, 3 * HOURS, 4 * HOURS, 6 * HOURS, 12 * HOURS, 24 * HOURS, 48 * HOURS, 168 * HOURS];

// One table for the chart. A hole, as the library calls it, is a break in that probe's line; a cell left blank between two
// close readings is not.
export function table(series, gaps = []) {
  const times = series.times.map((t) => t / 1000);
  const columns = series.readings.map((column, k) => {
    const mine = gaps.filter((one) => one.channel === k);
    let next = 0;
    return column.map((value, i) => {
      while (next < mine.length && mine[next].to <= series.times[i]) next++;
      if (value !== null && value !== undefined) return value;
      const hole = mine[next];
      return hole && series.times[i] > hole.from ? null : undefined;
    });
  });
  // A hole without a row in it gets one, so that the line has somewhere to break.
  const breaks = [...new Set(gaps.map((one) => one.from + 1))].filter((t) => t > series.times[0] && t < series.times.at(-1));
  if (!breaks.length) return [times, ...columns];
  const rows = times.map((t, i) => [t, ...columns.map((c) => c[i])]);
  for (const t of breaks) rows.push([t / 1000, ...columns.map((_, k) => (gaps.some((one) => one.channel === k && one.from < t && t < one.to) ? null : undefined))]);
  rows.sort((a, b) => a[0] - b[0]);
  return rows[0].map((_, k) => rows.map((row) => row[k]));
}

// The reading of a column nearest to an instant, no further off than a hole is long.
export function readingAt(series, column, ms, gapMinutes = 10) {
  const i = nearestIndex(series.times, ms);
  for (const k of [i, i - 1, i + 1]) {
    const value = series.readings[column]?.[k];
    if (typeof value === "number" && Math.abs(series.times[k] - ms) <= gapMinutes * 60000) return value;
  }
  return undefined;
}

export function nearestIndex(times, ms) {
  let low = 0, high = times.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] < ms) low = middle + 1; else high = middle;
  }
  return low > 0 && ms - times[low - 1] <= times[low] - ms ? low - 1 : low;
}

export class Curve {
  // options: height, closeup, lead (what the curve shows, for those who cannot see it)
  constructor(options) {
    this.options = options;
    this.id = "c" + Math.random().toString(36).slice(2, 8);
    this.box = h("div", { class: "plot" });
    this.over = s("svg", { class: "over", "aria-hidden": "true" });
    this.layer = h("div", { class: "layer" });
    // They lie over the chart from the first and are never moved: an element that is moved loses the focus.
    this.box.append(this.over, this.layer);
    this.tableBox = h("div", { class: "tablebox", hidden: true, tabindex: "0", role: "region", "aria-label": "Readings as a table" });
    this.foot = h("div", { class: "curvefoot" });
    this.node = h("figure", { class: "curve", "aria-label": options.label ?? "Temperatures over time" }, this.box, this.foot, this.tableBox);
    this.edges = new Map();
    this.observer = new ResizeObserver(() => this.resize());
    this.observer.observe(this.box);
    if (options.onpick) this.box.addEventListener("click", (event) => this.pickLine(event));
    this.repaint = () => this.draw();
    // On paper every curve has its table.
    this.forPaper = () => { if (!this.options.closeup && this.model && this.box.isConnected) { this.opened = this.tableBox.hidden; this.showTable(true, false); } };
    this.offPaper = () => { if (this.opened) this.showTable(false); };
    addEventListener("beforeprint", this.forPaper);
    addEventListener("afterprint", this.offPaper);
    for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)", "print"]) matchMedia(query).addEventListener("change", this.repaint);
  }

  destroy() {
    this.observer.disconnect();
    this.plot?.destroy();
    removeEventListener("beforeprint", this.forPaper);
    removeEventListener("afterprint", this.offPaper);
    for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)", "print"]) matchMedia(query).removeEventListener("change", this.repaint);
  }

  // model: series, gaps, roles [role by column], names [name by column], range {from, to} in ms,
  // ribbon [{from, to, text, kind, proposed}], edges [{id, at, label, proposed, picked, min, max, move(ms), settle(), key(event)}],
  // hatches [{from, to, words}], limits [{celsius, text, from, to, side}], windows [{from, to}], decided {from, to},
  // lit {from, to}, now, deadlines [{celsius, at, text}], marks [{at, text}]
  update(model) {
    const again = this.model && this.model.series === model.series && this.unit === view.unit && this.zone === view.zone
      && String(this.model.roles) === String(model.roles) && String(this.lit) === String(model.lit?.from)
      && this.shown === model.range?.from + "-" + model.range?.to;
    this.model = model;
    if (!again) this.draw(); else if (this.settled) this.overlay();
  }

  resize() {
    if (!this.model) return;
    const width = Math.floor(this.box.clientWidth);
    if (width && width !== this.width) this.draw();
  }

  draw() {
    const m = this.model;
    if (!m || !this.box.isConnected) return;
    this.unit = view.unit;
    this.zone = view.zone;
    this.lit = m.lit?.from;
    this.shown = m.range?.from + "-" + m.range?.to;
    this.width = Math.floor(this.box.clientWidth) || 600;
    const narrow = matchMedia("(max-width: 639px)").matches;
    const height = this.options.height ? (narrow ? Math.min(this.options.height, 240) : this.options.height) : narrow ? 240 : 330;
    const data = table(m.series, m.gaps);
    this.data = [data[0], ...data.slice(1).map((c) => c.map((v) => (typeof v === "number" ? toUnit(v) : v)))];
    const from = (m.range?.from ?? m.series.times[0]) / 1000, to = (m.range?.to ?? m.series.times.at(-1)) / 1000;
    const visible = [];
    this.data.slice(1).forEach((c, k) => { if (m.roles?.[k] !== "none" || !m.roles?.some((r) => r && r !== "none")) visible.push(k); });
    let low = Infinity, high = -Infinity;
    for (const k of visible) {
      this.data[k + 1].forEach((v, i) => { if (typeof v === "number" && this.data[0][i] >= from && this.data[0][i] <= to) { low = Math.min(low, v); high = Math.max(high, v); } });
    }
    for (const line of [...(m.limits ?? []), ...(m.deadlines ?? [])]) { low = Math.min(low, toUnit(line.celsius)); high = Math.max(high, toUnit(line.celsius)); }
    if (!(high > low)) { low = (Number.isFinite(low) ? low : 20) - 5; high = low + 10; }
    const room = (high - low) * (this.options.hours ? .16 : .08);
    const dim = m.lit ? .58 : 1;
    const font = (narrow ? 16 : this.options.font ?? 14) + "px Liberation Sans, Arial, Helvetica, sans-serif";
    this.plot?.destroy();
    this.settled = false;
    const series = [{}];
    const push = (k, extra) => {
      const role = ROLES[m.roles?.[k]] ?? ROLES.none;
      series.push({ scale: "y", stroke: () => token(role.colour), width: role.width, dash: role.dash, points: { show: Boolean(m.dots), size: 6, fill: () => token(role.colour) }, show: visible.includes(k), ...extra });
    };
    m.series.readings.forEach((_, k) => push(k, { alpha: m.lit ? (m.roles?.[k] === "core" ? dim : .78) : 1 }));
    let drawn = this.data;
    if (m.lit) {
      m.series.readings.forEach((_, k) => {
        if (m.roles?.[k] !== "core") return;
        drawn = [...drawn, this.data[k + 1].map((v, i) => (this.data[0][i] * 1000 >= m.lit.from && this.data[0][i] * 1000 <= m.lit.to ? v : null))];
        push(k, { alpha: 1, width: 4 });
      });
    }
    if (m.band) {
      const bandAt = (key) => this.data[0].map((_, i) => { const v = m.band[key][i]; return typeof v === "number" ? toUnit(v) : null; });
      drawn = [...drawn, bandAt("low"), bandAt("high")];
      series.push({ scale: "y", stroke: () => token("--core"), width: .01, points: { show: false } }, { scale: "y", stroke: () => token("--core"), width: 1.4, dash: [2, 3], points: { show: false } });
    }
    const grid = { stroke: () => token("--grid"), width: 1 };
    const ticks = { stroke: () => token("--edge"), width: 1, size: 5 };
    const border = { show: true, stroke: () => token("--edge"), width: 1 };
    this.plot = new uPlot({
      width: this.width, height, padding: [this.top(), 18, 0, 0], cursor: { show: false }, legend: { show: false }, pxAlign: 0,
      scales: { x: { time: false, range: [from, to] }, y: { range: [low - room, high + room] } },
      bands: m.band ? [{ series: [series.length - 1, series.length - 2], fill: token("--band") }] : [],
      series,
      // uPlot settles its scales after it was made: only then is there a place for anything.
      hooks: { draw: [() => { this.settled = true; this.overlay(); }] },
      axes: [
        { stroke: () => token("--soft"), font, size: narrow ? 50 : 44, grid: { show: false }, ticks, border, splits: (u, _, a, b) => this.timeSplits(a, b, narrow), values: (u, splits) => splits.map((t) => this.options.hours ? +((t * 1000 - (m.zero ?? 0)) / 3600000).toFixed(2) + " h" : clock(t * 1000)), gap: 6 },
        { stroke: () => token("--soft"), font, size: 46, grid, ticks: { show: false }, border, space: 44, gap: 8 },
      ],
    }, drawn, this.box);
    this.plot.root.setAttribute("aria-hidden", "true");
  }

  top() {
    const m = this.model;
    return m.ribbon ? (m.edges ? 52 : 32) : m.marks || this.options.hours ? 26 : 24;
  }

  timeSplits(a, b, narrow) {
    const zero = this.options.hours ? (this.model.zero ?? 0) / 1000 : 0;
    const most = Math.max(2, Math.floor(this.width / (narrow ? 96 : 72)));
    const step = STEPS.find((one) => (b - a) / one <= most) ?? STEPS.at(-1);
    const offset = this.options.hours ? zero : -offsetMinutes(a * 1000) * 60;
    const splits = [];
    for (let t = Math.ceil((a - offset) / step - 1e-9) * step + offset; t <= b + 1e-6; t += step) splits.push(t);
    return splits;
  }

  x(ms) { return this.plot.valToPos(ms / 1000, "x") + this.left; }
  y(celsius) { return this.plot.valToPos(toUnit(celsius), "y") + this.upper; }
  time(x) { return this.plot.posToVal(x - this.left, "x") * 1000; }

  overlay() {
    const m = this.model, u = this.plot;
    if (!u || !this.settled) return;
    const ratio = devicePixelRatio || 1;
    this.left = u.bbox.left / ratio; this.upper = u.bbox.top / ratio;
    const width = u.bbox.width / ratio, tall = u.bbox.height / ratio;
    const from = u.scales.x.min * 1000, to = u.scales.x.max * 1000;
    const right = this.left + width, bottom = this.upper + tall;
    const clip = (ms) => Math.min(right, Math.max(this.left, this.x(ms)));
    const inside = (ms) => ms >= from - 1 && ms <= to + 1;
    this.over.setAttribute("viewBox", `0 0 ${this.width} ${u.height}`);
    this.over.setAttribute("width", this.width);
    this.over.setAttribute("height", u.height);
    const parts = [];
    const pattern = this.id + "h";
    parts.push(s("defs", {}, s("pattern", { id: pattern, width: 9, height: 9, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
      s("path", { d: "M0 0V9", stroke: "var(--hatch)", "stroke-width": 2 }))));
    for (const w of m.windows ?? []) parts.push(s("rect", { x: clip(w.from), y: this.upper, width: Math.max(1, clip(w.to) - clip(w.from)), height: tall, fill: "var(--picked)", style: null }));
    for (const hatch of m.hatches ?? []) {
      const x = clip(hatch.from), w = clip(hatch.to) - x;
      if (w <= 0) continue;
      parts.push(s("rect", { x, y: this.upper - (m.ribbon ? 30 : 0), width: Math.max(2, w), height: tall + (m.ribbon ? 30 : 0), fill: `url(#${pattern})`, stroke: "var(--edge)", "stroke-width": 1 }));
      if (hatch.words && w > 120) {
        parts.push(s("rect", { x: x + 8, y: this.upper + tall / 2 - 26, width: w - 16, height: 50, fill: "var(--paper)" }));
        hatch.words.forEach((line, i) => parts.push(s("text", { x: x + w / 2, y: this.upper + tall / 2 - 6 + i * 20, "text-anchor": "middle", "font-weight": i ? 400 : 700 }, line)));
      }
    }
    // The window lies under the lines: a second svg below the canvas would cost its own layout; it is drawn thin instead.
    for (const node of parts) if (node.tagName === "rect" && node.getAttribute("fill") === "var(--picked)") node.setAttribute("opacity", ".55");
    const taken = [];
    const put = (x, y, words, options = {}) => {
      const size = this.options.font ?? (this.width < 420 ? 16 : 14);
      const w = words.length * size * .56;
      const left = options.anchor === "end" ? x - w : options.anchor === "middle" ? x - w / 2 : x;
      const start = Math.max(this.left + 2, Math.min(left, right - w - 2));
      const spot = [y, y - 20, y + 20, y - 40, y + 40, y + 60, y - 60].find((at) => at > this.upper + 12 && at < bottom - 4 && !taken.some((t) => start < t.b && start + w > t.a && Math.abs(at - t.y) < 18)) ?? y;
      taken.push({ a: start, b: start + w, y: spot });
      parts.push(s("text", { x: start, y: spot, style: null, fill: options.fill ?? "var(--ink)" }, words));
      parts.at(-1).style.fill = options.fill ?? "var(--ink)";
    };
    for (const limit of m.limits ?? []) {
      const y = this.y(limit.celsius), a = clip(limit.from ?? from), b = clip(limit.to ?? to);
      parts.push(s("path", { d: `M${a} ${y}H${b}`, stroke: "var(--limit)", "stroke-width": 2, "stroke-dasharray": "7 4", fill: "none" }));
    }
    for (const limit of m.limits ?? []) if (limit.text && limit.left) put(clip(limit.from ?? from) + 6, this.y(limit.celsius) - 6, limit.text, { fill: "var(--limit)" }); else if (limit.text) put(clip(limit.to ?? to) - 4, this.y(limit.celsius) + (limit.below ? 18 : -6), limit.text, { anchor: "end", fill: "var(--limit)" });
    for (const end of m.ends ?? []) {
      if (!inside(end.at)) continue;
      parts.push(s("path", { d: `M${this.x(end.at)} ${this.upper}V${bottom}`, stroke: "var(--limit)", "stroke-width": 2, "stroke-dasharray": "7 4" }));
      put(this.x(end.at) + 5, this.upper + 18, end.text, { fill: "var(--limit)" });
    }
    for (const dead of m.deadlines ?? []) {
      const x = clip(dead.at), y = this.y(dead.celsius);
      parts.push(s("path", { d: `M${clip(m.now ?? from)} ${y}H${x}`, stroke: "var(--limit)", "stroke-width": 2, "stroke-dasharray": "7 4" }), s("path", { d: `M${x} ${y - 16}V${y + 16}`, stroke: "var(--limit)", "stroke-width": 5 }));
      put(x - 4, y - 22, dead.text, { anchor: "end", fill: "var(--limit)" });
    }
    if (m.now !== undefined && inside(m.now)) parts.push(s("path", { d: `M${this.x(m.now)} ${this.upper - (m.ribbon ? 30 : 0)}V${bottom}`, stroke: "var(--ink)", "stroke-width": 1.6 }));
    for (const mark of m.marks ?? []) {
      if (!inside(mark.at)) continue;
      parts.push(s("path", { d: `M${this.x(mark.at)} ${this.upper}V${bottom}`, stroke: "var(--ink)", "stroke-width": 1.6 }));
      put(this.x(mark.at) + 6, bottom - 70, mark.text);
    }
    if (m.decided) parts.push(s("path", { d: `M${clip(m.decided.from)} ${bottom}H${clip(m.decided.to)}`, stroke: "var(--ink)", "stroke-width": 6 }));
    (m.names ?? []).forEach((name, k) => {
      const spot = name && this.nameSpot(k, from, to);
      if (!spot) return;
      put(spot.x, spot.y, name, { fill: `var(${(ROLES[m.roles?.[k]] ?? ROLES.none).colour === "--edge" ? "--soft" : (ROLES[m.roles?.[k]] ?? ROLES.none).colour})` });
    });
    if (m.dot) parts.push(s("circle", { cx: this.x(m.dot.at), cy: this.y(m.dot.celsius), r: 6, fill: "var(--core)" }));
    parts.push(s("text", { x: this.left - 8, y: this.upper - (m.ribbon ? 10 : 8), "text-anchor": "end" }, degrees()));
    if (!this.options.hours) {
      let day = "";
      for (const t of [from, ...this.timeSplits(from / 1000, to / 1000, this.width < 420).map((t) => t * 1000)]) {
        const name = dayShort(t);
        if (name !== day && t <= to) {
          const x = this.x(t);
          if (day === "" || x - this.dayAt > 90) {
            if (x + 70 < this.width) parts.push(s("text", { x, y: u.height - 2 }, name));
            this.dayAt = x;
          }
          day = name;
        }
      }
    }
    fill(this.over, parts);
    this.ribbons(clip);
    this.grips(bottom, inside);
    this.footer();
  }

  nameSpot(column, from, to) {
    const values = this.data[column + 1], times = this.data[0];
    if (!this.plot.series[column + 1]?.show) return undefined;
    const role = this.model.roles?.[column];
    for (const share of role === "core" ? [.16, .12, .3, .5] : role === "bath" ? [.4, .6, .2, .08, .8] : [.06, .15, .5, .8]) {
      const at = (from + (to - from) * share) / 1000;
      let i = times.findIndex((t) => t >= at);
      for (let k = 0; k < 40 && i >= 0 && i < values.length && typeof values[i] !== "number"; k++) i++;
      if (i >= 0 && typeof values[i] === "number" && times[i] * 1000 < to) {
        return { x: this.plot.valToPos(times[i], "x") + this.left + 8, y: this.plot.valToPos(values[i], "y") + this.upper + (role === "core" ? 20 : -8) };
      }
    }
    return undefined;
  }

  ribbons(clip) {
    const m = this.model;
    this.ribbonNodes?.forEach((node) => node.remove());
    this.ribbonNodes = (m.ribbon ?? []).map((one) => {
      const x = clip(one.from), w = clip(one.to) - x;
      const node = h("div", { class: "ribbon " + one.kind + (one.proposed ? " proposed" : ""), title: one.text }, w > one.text.length * 8 + 8 ? one.text : "");
      node.style.left = x + "px"; node.style.width = Math.max(1, w + 1) + "px"; node.style.top = this.upper - 30 + "px";
      this.layer.append(node);
      return node;
    });
  }

  grips(bottom, inside) {
    const m = this.model;
    const seen = new Set();
    for (const edge of m.edges ?? []) {
      if (!inside(edge.at)) continue;
      seen.add(edge.id);
      let node = this.edges.get(edge.id);
      if (!node) {
        node = h("div", { id: this.id + "-" + edge.id, role: "slider", tabindex: "0" }, h("span", { class: "grip" }));
        node.addEventListener("keydown", (event) => node.edge.key(event));
        node.addEventListener("focus", () => node.edge.pick?.());
        node.addEventListener("pointerdown", (event) => this.drag(event, node));
        this.edges.set(edge.id, node);
        this.layer.append(node);
      }
      node.edge = edge;
      node.className = "edge" + (edge.proposed ? " proposed" : "") + (edge.picked ? " picked" : "") + (m.edges.length > 6 && !this.options.closeup ? " quiet" : "");
      node.style.left = this.x(edge.at) + "px";
      node.style.top = this.upper - (m.ribbon ? 30 : 0) + "px";
      node.style.height = bottom - this.upper + (m.ribbon ? 30 : 0) + "px";
      node.setAttribute("aria-label", edge.label);
      node.setAttribute("aria-valuemin", Math.round(edge.min / 60000));
      node.setAttribute("aria-valuemax", Math.round(edge.max / 60000));
      node.setAttribute("aria-valuenow", Math.round(edge.at / 60000));
      node.setAttribute("aria-valuetext", edge.text);
      if (edge.picked && !this.options.closeup) {
        this.over.append(s("text", { x: Math.max(this.left, Math.min(this.x(edge.at), this.width - 150)), y: this.upper - (m.ribbon ? 38 : 8) }, edge.label + " " + clock(edge.at)));
      }
    }
    for (const [id, node] of this.edges) if (!seen.has(id)) { node.remove(); this.edges.delete(id); }
  }

  drag(event, node) {
    if (event.button !== 0) return;
    event.preventDefault();
    node.focus({ preventScroll: true });
    node.setPointerCapture(event.pointerId);
    let moved = false;
    const move = (e) => { moved = true; node.edge.move(this.time(e.clientX - this.box.getBoundingClientRect().left)); };
    const end = () => {
      node.removeEventListener("pointermove", move);
      node.removeEventListener("pointerup", end);
      node.removeEventListener("pointercancel", end);
      if (moved) node.edge.settle();
    };
    node.addEventListener("pointermove", move);
    node.addEventListener("pointerup", end);
    node.addEventListener("pointercancel", end);
  }

  // A click picks the line it falls on, give or take a fingertip.
  pickLine(event) {
    if (!this.settled || event.target.closest(".edge")) return;
    const box = this.box.getBoundingClientRect();
    const ms = this.time(event.clientX - box.left), y = event.clientY - box.top;
    const off = (k) => { const v = readingAt(this.model.series, k, ms); return v === undefined ? Infinity : Math.abs(this.y(v) - y); };
    const found = this.model.series.readings.map((_, k) => k).sort((a, b) => off(a) - off(b))[0];
    if (found !== undefined && off(found) < 22) this.options.onpick(found);
  }

  focusEdge(id) { this.edges.get(id)?.focus(); }

  footer() {
    if (this.options.closeup) return;
    const open = !this.tableBox.hidden;
    fill(this.foot, h("button", { class: "link", id: this.id + "-table", "aria-expanded": String(open), onclick: () => this.showTable(!open) }, open ? "Without the table" : "As a table"), ...(this.model.foot ?? []));
    if (open) this.showTable(true, false);
  }

  showTable(open, foot = true) {
    this.tableBox.hidden = !open;
    if (open) fill(this.tableBox, this.readingsTable());
    if (foot) this.footer();
  }

  readingsTable() {
    const { series, names, roles, captions } = this.model;
    const most = 200, step = Math.max(1, Math.ceil(series.times.length / most));
    const rows = [];
    for (let i = 0; i < series.times.length; i += step) rows.push(i);
    if (rows.at(-1) !== series.times.length - 1) rows.push(series.times.length - 1);
    const title = (k) => (captions?.[k] ?? names?.[k] ?? roleWord(roles?.[k])) || "probe " + (k + 1);
    return h("table", {},
      h("caption", { class: "unseen" }, step > 1 ? `Every ${step}th of ${series.times.length} readings drawn` : count(series.times.length, "reading")),
      h("thead", {}, h("tr", {}, h("th", { scope: "col" }, "Time"), ...series.readings.map((_, k) => h("th", { scope: "col", class: "figure" }, title(k) + ", " + degrees())))),
      h("tbody", {}, rows.map((i) => h("tr", {}, h("th", { scope: "row" }, this.options.hours ? span((series.times[i] - (this.model.zero ?? 0)) / 60000) : dayShort(series.times[i]) + " " + clockSeconds(series.times[i])),
        ...series.readings.map((column) => h("td", { class: "figure" }, typeof column[i] === "number" ? toUnit(column[i]).toFixed(1) : "none"))))));
  }
}

export const lineKey = (role, name) => h("span", { class: "row" }, swatch(role), name);
export { temperature };
