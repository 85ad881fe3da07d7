import { h, fill, choice } from "../dom.js";
import { Curve, roleWord, nearestIndex } from "../curve.js";
import { CloseUp } from "../closeup.js";
import { swatch } from "../signs.js";
import { cook, allStretches, stretches, lines, readingsBetween, mutate, remember, judgeSoon, holes } from "../cook.js";
import { clock, dayShort, temperature, nearest } from "../words.js";

const ROLES = [["core", "core"], ["bath", "bath"], ["air", "smoker"], ["surface", "surface"], ["none", "not used"]];

export function probesScreen(page, go) {
  const curve = new Curve({ label: "Every probe of the cook", onpick: (k) => { cook.pickedLine = k; refresh(); } });
  const close = new CloseUp();
  const answers = h("div", { class: "answers" });
  const node = h("div", { class: "screen" },
    h("div", { class: "question" }, h("h1", {}, "Which probe was where?"), h("p", { class: "lead" }, "Pick a line, then say what it sat in. If the probe moved, cut the line where it moved.")),
    h("div", { class: "work" }, h("div", {}, curve.node, close.node), answers));

  function refresh() {
    if (!cook.log) { fill(answers, h("p", {}, "The log has an open question first."), h("p", { class: "go" }, h("a", { class: "act", id: "go", href: "#log" }, "Back to the log"))); return; }
    const parts = allStretches(), drawn = lines();
    const picked = Math.min(cook.pickedLine ?? 0, parts.length - 1), part = parts[picked];
    const unsaid = parts.filter((one) => !cook.roles[one.key]).length;
    fill(answers,
      h("ul", { class: "list" }, parts.map((one, k) => h("li", { class: "bare" }, h("button", { class: "pickrow", id: "line-" + k, "aria-pressed": String(k === picked), onclick: () => { cook.pickedLine = k; refresh(); } },
        swatch(cook.roles[one.key]), h("span", { class: "grow" }, one.channel.label, stretch(one)), h("strong", {}, roleWord(cook.roles[one.key]) || "not said"))))),
      h("fieldset", {}, h("legend", {}, part.from === undefined ? part.channel.label + " sat in" : "From " + clock(part.from) + " on, " + part.channel.label + " sat in"),
        h("div", { class: "choices two" }, ROLES.map(([role, word]) => choice("role", role, cook.roles[part.key] === role, (value) => say(part, value, picked), h("span", { class: "dot" }), h("span", { class: "grow" }, word), swatch(role))))),
      drawn.roles.includes("core") ? "" : h("p", { class: "hint" }, "Without a core probe nothing can be proven: a bath’s temperature is not the food’s."),
      h("p", { class: "row" }, h("button", { class: "plain strong", id: "cut", onclick: () => cut(part, picked) }, "Cut here"), part.from === undefined ? "" : h("button", { class: "plain strong", id: "join", onclick: () => join(part, picked) }, "Join again")),
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: () => go("times") }, "Go on to the times")));
    draw(drawn, unsaid, part, picked);
  }

  const stretch = (one) => (one.from === undefined && one.to === undefined ? "" : h("span", { class: "soft small" }, " " + (one.from === undefined ? "to " + clock(one.to) : clock(one.from) + (one.to === undefined ? " on" : " to " + clock(one.to)))));

  function draw(drawn, unsaid, part, picked) {
    const edges = edgesOf();
    const model = { ...drawn, names: drawn.names.map((name, k) => (drawn.roles[k] === "none" ? "" : name + (drawn.roles[k] ? ": " + roleWord(drawn.roles[k]) : ""))), edges, hatches: holes().map((one) => ({ ...one, words: ["nobody looked"] })),
      foot: [h("span", { class: "small soft" }, unsaid ? unsaid + " not said yet" : part.channel.label + ": " + extent(drawn.series.readings[picked]))] };
    curve.update(model);
    close.show(model, edges.find((one) => one.picked), async (from, to) => lines(await readingsBetween(from, to)).series);
  }

  function edgesOf() {
    return cook.log.channels.flatMap((channel) => (cook.cuts[channel.key] ?? []).map((at, n, all) => {
      const id = "cut-" + cook.log.channels.indexOf(channel) + "-" + n, times = cook.log.series.times;
      const min = (all[n - 1] ?? cook.log.from) + 1000, max = (all[n + 1] ?? cook.log.to) - 1000;
      const edge = { id, at, min, max, label: channel.label + " cut at", text: channel.label + " cut, " + dayShort(at) + " " + clock(at), picked: cook.picked === id, proposed: false };
      edge.pick = () => { if (cook.picked !== id) { cook.picked = id; refresh(); } };
      edge.move = (ms, exact) => {
        if (!edge.touched) { remember(); edge.touched = true; }
        const bounded = Math.min(max, Math.max(min, ms));
        cook.cuts[channel.key][n] = exact ? bounded : Math.min(max, Math.max(min, times[nearestIndex(times, bounded)]));
        cook.text = undefined;
        refresh();
        judgeSoon();
      };
      edge.step = (by) => edge.move(times[Math.min(times.length - 1, Math.max(0, nearestIndex(times, cook.cuts[channel.key][n]) + by))]);
      edge.settle = () => mutate(() => {}, true);
      edge.key = (event) => {
        const far = event.shiftKey ? 10 : 1;
        const acts = { ArrowLeft: () => edge.step(-far), ArrowDown: () => edge.step(-far), ArrowRight: () => edge.step(far), ArrowUp: () => edge.step(far), Delete: () => join(stretches(channel)[n + 1], 0) };
        if (!acts[event.key] || event.ctrlKey || event.altKey || event.metaKey) return;
        event.preventDefault();
        acts[event.key]();
      };
      return edge;
    }));
  }

  // A cut falls where the line's reading jumps most, until it is moved: the steepest step is where a probe most likely moved.
  function cut(part, picked) {
    const times = cook.log.series.times, column = cook.log.series.readings[cook.log.channels.indexOf(part.channel)];
    let steepest = 0, at;
    for (let i = 1, last = -1; i < times.length; i++) {
      if (typeof column[i] !== "number" || times[i] <= (part.from ?? cook.log.from) || times[i] >= (part.to ?? cook.log.to)) continue;
      if (last >= 0 && Math.abs(column[i] - column[last]) > steepest) { steepest = Math.abs(column[i] - column[last]); at = times[last]; }
      last = i;
    }
    if (at === undefined || at <= (part.from ?? cook.log.from)) return;
    mutate(() => {
      const roles = stretches(part.channel).map((one) => cook.roles[one.key]);
      const n = stretches(part.channel).findIndex((one) => one.from === part.from);
      cook.cuts[part.channel.key] = [...(cook.cuts[part.channel.key] ?? []), at].sort((a, b) => a - b);
      roles.splice(n + 1, 0, undefined);
      name(part.channel, roles);
      cook.picked = "cut-" + cook.log.channels.indexOf(part.channel) + "-" + cook.cuts[part.channel.key].indexOf(at);
      cook.pickedLine = picked + 1;
    });
  }

  function join(part, picked) {
    mutate(() => {
      const roles = stretches(part.channel).map((one) => cook.roles[one.key]);
      const n = stretches(part.channel).findIndex((one) => one.from === part.from);
      cook.cuts[part.channel.key] = cook.cuts[part.channel.key].filter((t) => t !== part.from);
      roles.splice(n, 1);
      name(part.channel, roles);
      cook.picked = undefined;
      cook.pickedLine = Math.max(0, picked - 1);
    });
  }

  function name(channel, roles) {
    for (const key of Object.keys(cook.roles)) if (key === channel.key || key.startsWith(channel.key + " #")) delete cook.roles[key];
    stretches(channel).forEach((one, i) => { if (roles[i]) cook.roles[one.key] = roles[i]; });
  }

  const extent = (column) => {
    const values = column.filter((v) => typeof v === "number");
    return values.length ? temperature(Math.min(...values)) + " to " + temperature(Math.max(...values)) : "no readings";
  };

  function say(part, role, picked) {
    mutate(() => { cook.roles[part.key] = role; });
    const parts = allStretches();
    const next = parts.findIndex((one) => !cook.roles[one.key]);
    if (next >= 0 && next !== picked) { cook.pickedLine = next; refresh(); document.getElementById("line-" + next)?.focus(); }
  }

  cook.picked = undefined;
  return { node, refresh, leave: () => { cook.picked = undefined; curve.destroy(); close.destroy(); }, title: () => "Probes" };
}
export { nearest };
