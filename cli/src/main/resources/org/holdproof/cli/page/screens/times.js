import { h, fill } from "../dom.js";
import { Curve, nearestIndex } from "../curve.js";
import { CloseUp } from "../closeup.js";
import { tick } from "../signs.js";
import { cook, facts, lines, propose, readingsBetween, ribbon, unaccounted, holes, mutate, remember, undo, moments, stageKind, coreAt, judgeSoon, recordText } from "../cook.js";
import { clock, dayLong, dateKey, nearest, span, temperature } from "../words.js";

const NAMES = { bag: "Bag", serve: "Served", "time only": "By time alone" };
const title = (stage) => NAMES[stage] ?? stage[0].toUpperCase() + stage.slice(1);

export function timesScreen(page, go) {
  const curve = new Curve({ label: "The cook and its stages" });
  const close = new CloseUp();
  const answers = h("div", { class: "answers" });
  const lead = h("p", { class: "lead" });
  const node = h("div", { class: "screen" },
    h("div", { class: "question" }, h("h1", {}, "What happened when?"), lead),
    h("div", { class: "work" }, h("div", {}, curve.node, close.node), answers));
  let saying; // the hole being named: {from, to}
  let before; // an edge's place before it was moved

  const times = () => cook.log.series.times;
  const all = () => [...cook.stages.map((one) => ({ one, proposed: false })), ...cook.proposals.map((one) => ({ one, proposed: true }))];

  // Every edge on the curve: a moment has one, a stage two, one that runs on has its beginning.
  function edges() {
    const list = [];
    for (const { one, proposed } of all()) {
      list.push({ id: one.id + "-from", one, end: "from", proposed, at: one.from });
      if (one.to !== undefined) list.push({ id: one.id + "-to", one, end: "to", proposed, at: one.to });
    }
    list.sort((a, b) => a.at - b.at || (a.end === "to" ? -1 : 1));
    // Where one stage ends as the next begins there is one edge, and it moves both.
    for (let i = 0; i + 1 < list.length; i++) {
      const [one, next] = [list[i], list[i + 1]];
      if (one.end === "to" && next.end === "from" && one.at === next.at && !one.proposed && !next.proposed && !moments().has(next.one.stage)) { one.twin = next.one; list.splice(i + 1, 1); }
    }
    return list.map((edge, i) => finish(edge, list, i));
  }

  function finish(edge, list, i) {
    const word = edge.twin ? edge.one.stage + " ends, " + edge.twin.stage + " begins" : moments().has(edge.one.stage) ? (edge.one.stage === "bag" ? "bagged" : "served") : edge.one.stage + (edge.end === "from" ? " begins" : " ends");
    const lower = edge.end === "to" ? edge.one.from : Math.min(cook.log.from, edge.at), upper = edge.end === "from" && edge.one.to !== undefined ? edge.one.to : Math.max(cook.log.to, edge.at);
    const min = Math.max(lower, i > 0 && !edge.proposed ? stageBefore(edge) : lower), max = edge.twin ? Math.min(upper, (edge.twin.to ?? cook.log.to) - 1000) : Math.min(upper, stageAfter(edge) ?? upper);
    const core = coreAt(edge.at);
    const whole = { ...edge, min, max, label: (edge.proposed ? "proposed: " : "") + word, text: title(word) + ", " + clock(edge.at) + (core === undefined ? "" : ", core " + temperature(core)), picked: cook.picked === edge.id };
    whole.pick = () => { if (cook.picked !== edge.id) { cook.picked = edge.id; before = edge.one[edge.end]; draw(); } };
    whole.move = (ms, exact) => {
      before ??= edge.one[edge.end];
      if (!whole.touched) { remember(); whole.touched = true; }
      const bounded = Math.min(max, Math.max(min, ms));
      edge.one[edge.end] = exact ? bounded : Math.min(max, Math.max(min, times()[nearestIndex(times(), bounded)]));
      if (edge.twin) edge.twin.from = edge.one[edge.end];
      cook.text = undefined;
      draw();
      judgeSoon();
    };
    whole.step = (n) => {
      const now = edge.one[edge.end];
      let k = nearestIndex(times(), now);
      if (times()[k] !== now && Math.abs(n) === 1) { if (n > 0 && times()[k] > now) k--; if (n < 0 && times()[k] < now) k++; }
      whole.move(times()[Math.min(times().length - 1, Math.max(0, k + n))]);
    };
    whole.settle = () => { mutate(() => {}, true); refresh(); };
    whole.key = (event) => keyed(event, whole, list, i);
    return whole;
  }

  const spells = () => cook.stages.filter((one) => !moments().has(one.stage));
  const stageBefore = (edge) => (moments().has(edge.one.stage) || edge.proposed || edge.end === "to" ? edge.end === "to" ? edge.one.from + 1000 : cook.log.from - 864e5 : Math.max(cook.log.from - 864e5, ...spells().filter((one) => one !== edge.one && one.from < edge.one.from).map((one) => one.to ?? one.from)));
  const stageAfter = (edge) => (moments().has(edge.one.stage) || edge.proposed ? undefined : edge.end === "to" ? Math.min(...spells().filter((one) => one !== edge.one && one.from >= edge.one.from).map((one) => one.from), cook.log.to + 864e5) : edge.one.to === undefined ? undefined : edge.one.to - 1000);

  function keyed(event, edge, list, i) {
    const far = event.shiftKey ? 10 : 1;
    const acts = {
      ArrowLeft: () => edge.step(-far), ArrowRight: () => edge.step(far), ArrowDown: () => edge.step(-far), ArrowUp: () => edge.step(far),
      Home: () => focusEdge(list[Math.max(0, i - 1)]), End: () => focusEdge(list[Math.min(list.length - 1, i + 1)]),
      Enter: () => { if (edge.proposed) take(edge.one); }, Escape: () => { if (before !== undefined) { edge.move(before, true); edge.settle(); } },
      Delete: () => unsay(edge.one), Backspace: () => unsay(edge.one),
    };
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z") { event.preventDefault(); undo(); return; }
    if (!acts[event.key] || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    acts[event.key]();
    if (event.key.startsWith("Arrow")) { clearTimeout(settling); settling = setTimeout(() => refresh(), 400); }
  }
  let settling;
  const focusEdge = (edge) => { cook.picked = edge.id; draw(); curve.focusEdge(edge.id); };

  function take(one) {
    mutate(() => { cook.proposals = cook.proposals.filter((p) => p !== one); cook.stages.push({ ...one, extra: {} }); });
  }
  function unsay(one) {
    mutate(() => { cook.proposed = true; cook.stages = cook.stages.filter((p) => p !== one); cook.proposals = cook.proposals.filter((p) => p !== one); cook.picked = undefined; });
    answers.querySelector("input, button")?.focus();
  }

  function hatches() {
    return [...unaccounted(),
      ...holes().map((one) => ({ ...one, words: ["nobody looked"] }))];
  }

  function draw() {
    if (!cook.log) return;
    const list = edges();
    const between = unaccounted().map((one) => ({ ...one, text: "?", kind: "between" }));
    const model = { ...lines(), ribbon: [...between, ...ribbon()], edges: list, hatches: hatches() };
    curve.update(model);
    close.show(model, list.find((one) => one.picked), async (from, to) => lines(await readingsBetween(from, to)).series);
  }

  function timeField(one, end, proposed) {
    const id = one.id + "-" + end + "-typed";
    const words = moments().has(one.stage) ? "at" : end === "from" ? "from" : "to";
    return h("input", { id, type: "text", inputmode: "numeric", size: 5, class: proposed ? "dotted" : "", "aria-label": title(one.stage) + " " + words, value: one[end] === undefined ? "" : clock(one[end]), placeholder: "runs on",
      onfocus: () => { const edge = edges().find((e) => e.one === one && e.end === end); if (edge && cook.picked !== edge.id) { cook.picked = edge.id; draw(); } },
      onchange: (e) => {
        if (end === "to" && e.target.value.trim() === "") { mutate(() => { delete one.to; }); return; }
        const at = typed(e.target.value, one, end);
        if (at === undefined) { e.target.setAttribute("aria-invalid", "true"); e.target.value = one[end] === undefined ? "" : clock(one[end]); return; }
        mutate(() => { one[end] = at; });
      } });
  }

  // A clock time belongs to the day that keeps the stage's order: an end follows its beginning.
  function typed(text, one, end) {
    if (end === "to") {
      const at = nearest(text, one.from + 12 * 3600e3);
      if (at === undefined) return undefined;
      return one.to !== undefined ? pickNear(nearest(text, one.to), one.from, at) : at;
    }
    return nearest(text, one.from);
  }
  const pickNear = (at, after, otherwise) => (at > after ? at : otherwise);

  function refresh() {
    if (!cook.log) { fill(answers, h("p", {}, "The log has an open question first."), h("p", { class: "go" }, h("a", { class: "act", href: "#log" }, "Back to the log"))); return; }
    fill(lead, cook.proposals.length ? "Solid edges are yours. Dotted ones were read off the curve: they count for nothing until you take them." : "Say each stage as it was. What is hatched is silence: it proves nothing.");
    const rows = [];
    let day = "";
    for (const { one, proposed } of all().sort((a, b) => a.one.from - b.one.from)) {
      if (dateKey(one.from) !== day) { day = dateKey(one.from); rows.push(h("h3", {}, dayLong(one.from))); }
      rows.push(h("div", { class: "stage row", role: "group", "aria-label": title(one.stage) + (proposed ? ", proposed" : "") },
        h("strong", { class: "what" }, title(one.stage) + (proposed ? "?" : "")), timeField(one, "from", proposed), moments().has(one.stage) ? h("span", { class: "filler" }) : timeField(one, "to", proposed),
        proposed ? h("button", { class: "plain strong", id: one.id + "-take", onclick: () => take(one), "aria-label": "Take " + one.stage }, "Take") : h("span", { class: "yours" }, tick(), "yours", h("button", { class: "link drop", id: one.id + "-drop", "aria-label": "Unsay " + one.stage, onclick: () => unsay(one) }, "Unsay"))));
    }
    const open = unaccounted().filter((one) => one.to - one.from > 15 * 60000 || !cook.stages.length);
    for (const hole of open) rows.push(silence(clock(hole.from) + " to " + clock(hole.to) + ": not said what happened", "hole-" + hole.from, hole));
    rows.push(ending());
    if (cook.proposals.length) rows.push(h("p", { class: "row" }, h("button", { class: "plain strong", id: "take-all", onclick: () => mutate(() => { cook.stages.push(...cook.proposals.map((one) => ({ ...one, extra: {} }))); cook.proposals = []; }) }, "Take them all")));
    if (!saying) rows.push(h("p", {}, h("button", { class: "link", id: "say-more", onclick: () => { saying = { from: cook.log.from, to: cook.log.to, any: true }; refresh(); } }, "Say a stage or a moment")));
    fill(answers, rows, h("p", { class: "go" }, underWay() ? h("a", { class: "plain strong", href: "#way", id: "way" }, "It is still under way") : "", h("button", { class: "act", id: "go", onclick: () => go("food") }, "Go on to the food")));
    draw();
  }

  // A stage without an end, or a log that is still written to.
  const underWay = () => cook.logs[0].growing || cook.stages.some((one) => !moments().has(one.stage) && one.to === undefined);

  function silence(words, id, hole) {
    const here = saying && saying.from === hole.from && saying.to === hole.to;
    return here ? naming(hole) : h("div", { class: "silence row" }, h("span", { class: "hatched", "aria-hidden": "true" }), h("span", { class: "grow" }, words), h("button", { class: "plain strong", id: "say-" + id, "aria-label": "Say it: " + words, onclick: () => { saying = hole; refresh(); document.getElementById("say-stage")?.focus(); } }, "Say it"));
  }

  // What became of the food: the record's last word, or silence.
  let ends = false;
  function ending() {
    if (cook.stages.at(-1)?.stage === "serve") return "";
    if (!cook.end && !ends) return h("div", { class: "silence row" }, h("span", { class: "hatched", "aria-hidden": "true" }), h("span", { class: "grow" }, clock(cook.log.to) + ": not said what became of it"), h("button", { class: "plain strong", id: "say-end", "aria-label": "Say what became of it", onclick: () => { ends = true; refresh(); document.getElementById("end-how")?.focus(); } }, "Say it"));
    const at = h("input", { id: "end-at", type: "text", inputmode: "numeric", size: 5, value: clock(cook.end?.at ?? cook.log.to), "aria-label": "At", onchange: put });
    const how = h("select", { id: "end-how", "aria-label": "What became of it", onchange: put }, h("option", { value: "" }, "not said"), (facts.endings ?? []).map((one) => h("option", { value: one, selected: cook.end?.how === one }, one)));
    function put() {
      const when = nearest(at.value, cook.end?.at ?? cook.log.to);
      ends = false;
      mutate(() => { cook.end = how.value && when !== undefined ? { how: how.value, at: when } : undefined; });
    }
    return h("div", { class: "stage row", role: "group", "aria-label": "What became of it" }, h("strong", { class: "what" }, "Then"), how, at);
  }

  function naming(hole) {
    let stage = "";
    const names = (facts.stages ?? []).map((one) => one.name);
    const from = h("input", { id: "say-from", type: "text", inputmode: "numeric", value: clock(hole.from), size: 5 }), to = h("input", { id: "say-to", type: "text", inputmode: "numeric", value: clock(hole.to), size: 5 });
    return h("div", { class: "naming", role: "group", "aria-label": "Say what happened" },
      h("div", { class: "row" },
        h("div", { class: "field" }, h("label", { for: "say-stage" }, "What"), h("select", { id: "say-stage", onchange: (e) => { stage = e.target.value; document.getElementById("say-until").hidden = moments().has(stage); } }, h("option", { value: "" }, "choose"), names.map((name) => h("option", { value: name }, title(name))))),
        h("div", { class: "field" }, h("label", { for: "say-from" }, "From"), from), h("div", { class: "field", id: "say-until" }, h("label", { for: "say-to" }, "To"), to)),
      h("div", { class: "row" }, h("button", { class: "plain strong", id: "say-it", onclick: () => {
        const a = nearest(from.value, hole.from), b = nearest(to.value, hole.to);
        if (!stage) { document.getElementById("say-stage").focus(); return; }
        if (a === undefined || (!moments().has(stage) && (b === undefined || b <= a))) { from.focus(); return; }
        saying = undefined;
        mutate(() => { cook.stages.push({ id: "n" + Date.now().toString(36), stage, from: a, ...(moments().has(stage) ? {} : { to: b }), extra: {} }); });
      } }, "Say it"), h("button", { class: "plain", id: "say-not", onclick: () => { saying = undefined; refresh(); } }, "Not now")));
  }

  propose();
  return { node, refresh, leave: () => { curve.destroy(); close.destroy(); }, title: () => "Times" };
}
export { stageKind, span, recordText };
