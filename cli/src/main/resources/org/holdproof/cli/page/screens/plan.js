import { h, fill, choice } from "../dom.js";
import { seam } from "../seam.js";
import { Curve } from "../curve.js";
import { facts } from "../cook.js";
import { PLACES } from "../places.js";
import { shape } from "../signs.js";
import { sources } from "../main.js";
import { view, toUnit, fromUnit, degrees, span, clock, dayShort, instant, dateKey, temperature } from "../words.js";

const plan = { species: undefined, form: undefined, shape: undefined, millimetres: undefined, authority: undefined, bathCelsius: undefined, minutes: undefined };
const SHAPES = [["slab", "flat slab"], ["roast", "block"], ["cylinder", "roll"], ["sphere", "ball"]];
const FORMS = [["intact", "in one piece"], ["non-intact", "pierced, injected, rolled"], ["comminuted", "minced"]];

export function planScreen(page, go) {
  plan.authority ??= facts.kitchen?.about?.authority;
  const head = h("div", { class: "question" }), answers = h("div", { class: "answers" });
  const curve = new Curve({ label: "The core as reckoned" });
  const left = h("div", {}, curve.node), more = h("div", { class: "under" });
  left.append(more);
  const node = h("div", { class: "screen" }, head, h("div", { class: "work" }, left, answers));
  let told, asked = 0, asking = true, start = Math.ceil(Date.now() / 3600000) * 3600000;
  const whole = () => plan.species && plan.form && plan.shape && plan.millimetres && plan.authority;

  async function ask() {
    if (!whole()) return;
    plan.bathCelsius ??= view.unit === "F" ? fromUnit(145) : 63;
    const mine = ++asked;
    let answer;
    try { answer = await seam.plan(plan); } catch (refused) { answer = { safe: false, reason: refused.message, remedy: "" }; }
    if (mine !== asked) return;
    told = answer;
    refresh();
  }

  function refresh() {
    if (asking || !whole()) return piece();
    if (!told) { ask(); return; }
    left.hidden = false;
    const hours = plan.minutes ?? told.coveringMinute;
    const never = !told.safe && told.lowest && plan.bathCelsius <= told.lowest.celsius;
    const short = told.safe && plan.minutes !== undefined && plan.minutes < told.coveringMinute;
    fill(head, h("h1", {}, told.safe ? "Safe from " + span(told.coveringMinute, Math.ceil) + " on, worst case counted" : never ? "This bath is never safe" : "There is no safe plan for this"),
      h("p", { class: "lead" }, told.safe ? "A plan proves nothing. Put a probe in the core, log it, and judge the log." : told.reason + " " + told.remedy));
    if (told.safe) chart(); else { curve.node.hidden = true; fill(more); }
    const f = view.unit === "F";
    const slide = (id, label, value, min, max, step, put, turns) => h("div", { class: "slider" }, h("label", { for: id }, label), h("input", { type: "number", id: id + "-typed", "aria-label": label, value, min, max, step, onchange: (e) => { put(+e.target.value); later(0); } }),
      h("input", { type: "range", id, "aria-label": label, min, max, step, value, oninput: (e) => { document.getElementById(id + "-typed").value = e.target.value; put(+e.target.value); later(60); } }), h("p", { class: "turns" }, turns));
    fill(answers,
      slide("bath", "Bath, " + degrees(), +toUnit(plan.bathCelsius).toFixed(1), f ? 120 : 49, f ? 190 : 88, f ? 1 : .5, (v) => { plan.bathCelsius = fromUnit(v); plan.minutes = undefined; }, told.lowest ? "below " + told.lowest.text + ": never" : ""),
      told.safe ? slide("hours", "Hours in the bath", +((hours ?? 0) / 60).toFixed(1), 0.5, 72, .5, (v) => { plan.minutes = v * 60; }, "safe from " + span(told.coveringMinute, Math.ceil)) : plan.minutes !== undefined ? h("p", {}, h("button", { class: "plain", id: "as-long", onclick: () => { plan.minutes = undefined; ask(); } }, "As long as it takes to be safe")) : "",
      short ? h("p", { class: "wrong" }, "Shorter than is safe at worst.") : "",
      quality(),
      h("p", { class: "go" }, h("button", { class: "plain strong", id: "piece", onclick: () => { asking = true; refresh(); } }, "Change the piece"), h("button", { class: "act", id: "go", disabled: !told.safe, onclick: () => print() }, "Print this plan")));
  }

  function quality() {
    if (!told.safe) return "";
    const loss = told.loss;
    return [h("h3", {}, "Tender?"), told.tenderness?.length ? h("ul", {}, told.tenderness.slice(0, 3).map((one) => h("li", { class: "small" }, one))) : h("p", { class: "small soft" }, "Nothing is published near this bath."),
      h("h3", {}, "Weight left"), loss ? h("p", { class: "small" }, `${loss.lowPercent} to ${loss.highPercent} % is likely lost, by published figures.`) : h("p", { class: "small soft" }, "Nothing is published for it at this temperature."),
      h("p", {}, h("button", { class: "link", id: "why", onclick: why }, "Why that long?"))];
  }

  const why = () => sources("Why that long?", h("p", {}, "As reckoned it is safe after " + span(told.safeMinute, Math.ceil) + ". One thing otherwise:"), h("ul", {}, told.variations.map((one) => h("li", {}, one.change + ": " + (one.safeMinute === undefined ? "never" : span(one.safeMinute, Math.ceil))))), h("p", { class: "soft" }, told.heat), told.cautions.map((one) => h("p", { class: "small" }, one)));

  function chart() {
    curve.node.hidden = false;
    const at = (m) => start + m * 60000;
    const chillFrom = told.outMinute;
    const times = [...told.slowest.minutes, ...told.chill.minutes.slice(1).map((m) => chillFrom + m)].map(at);
    const slow = [...told.slowest.celsius, ...told.chill.celsius.slice(1)];
    const fast = [...told.core.celsius, ...told.chill.celsius.slice(1).map(() => null)];
    const bath = times.map((t) => (t <= at(chillFrom) ? plan.bathCelsius : null));
    curve.update({ series: { times, readings: [slow, bath] }, roles: ["core", "bath"], names: ["core at its slowest; dotted: as reckoned", "bath"], captions: ["Core at its slowest", "Bath"], band: { low: slow.map((v, i) => (fast[i] === null ? null : v)), high: fast },
      ribbon: [{ from: at(0), to: at(chillFrom), text: "bath " + span(told.outMinute, Math.ceil), kind: "heat", proposed: true }, { from: at(chillFrom), to: times.at(-1), text: "chill", kind: "cool", proposed: true }],
      limits: told.row ? [{ celsius: told.row.celsius, text: told.row.text + " for " + span(told.row.minutes), from: at(0), to: at(chillFrom), below: true }] : [],
      marks: [{ at: at(told.coveringMinute), text: "safe from " + clock(at(Math.ceil(told.coveringMinute))) + " on" }], decided: { from: at(Math.min(told.coveringMinute, chillFrom)), to: at(chillFrom) },
      foot: [h("span", { class: "small" }, `Into the bath ${dayShort(at(0))} ${clock(at(0))}, out ${dayShort(at(chillFrom))} ${clock(at(Math.ceil(chillFrom)))}, then ice.`)] });
    fill(more, h("div", { class: "row" }, h("div", { class: "field" }, h("label", { for: "in-day" }, "Into the bath, day"), h("input", { id: "in-day", type: "date", value: dateKey(start), onchange: (e) => { const t = instant(e.target.value, clock(start)); if (t !== undefined) { start = t; refresh(); } } })),
      h("div", { class: "field" }, h("label", { for: "in-time" }, "time"), h("input", { id: "in-time", type: "text", inputmode: "numeric", value: clock(start), onchange: (e) => { const t = instant(dateKey(start), e.target.value); if (t !== undefined) { start = t; refresh(); } } }))), h("ul", {}, told.cautions.map((one) => h("li", { class: "small" }, one))));
  }

  function piece() {
    left.hidden = true;
    fill(head, h("h1", {}, "What is to be cooked?"), h("p", { class: "lead" }, "A plan reckons how heat goes into the piece. It proves nothing."));
    const put = (key) => (v) => { plan[key] = v; told = undefined; piece(); };
    fill(answers,
      h("div", { class: "field" }, h("label", { for: "plan-place" }, "Where"), h("select", { id: "plan-place", onchange: (e) => put("authority")(e.target.value) }, h("option", { value: "", disabled: true, selected: !plan.authority }, "choose the place"), PLACES.map(([label, id]) => h("option", { value: id, selected: id === plan.authority }, label)))),
      h("fieldset", {}, h("legend", {}, "The meat"), h("div", { class: "choices" }, facts.species.map((one) => choice("plan-species", one, plan.species === one, put("species"), one)))),
      h("fieldset", {}, h("legend", {}, "The piece"), h("div", { class: "choices" }, FORMS.map(([form, word]) => choice("plan-form", form, plan.form === form, put("form"), word)))),
      h("fieldset", {}, h("legend", {}, "Its shape"), h("div", { class: "choices" }, SHAPES.map(([kind, word]) => { const one = choice("plan-shape", kind, plan.shape === kind, put("shape"), shape(kind), word); one.classList.add("shape"); return one; }))),
      h("div", { class: "field" }, h("label", { for: "plan-thickness" }, "Thickness, mm ↕"), h("input", { id: "plan-thickness", type: "number", min: 5, max: 200, step: 1, value: plan.millimetres ?? "", onchange: (e) => { plan.millimetres = +e.target.value || undefined; told = undefined; piece(); } })),
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: () => { if (!whole()) { (answers.querySelector("fieldset:not(:has(:checked)) input") ?? document.getElementById(plan.authority ? "plan-thickness" : "plan-place")).focus(); return; } asking = false; told = undefined; refresh(); } }, "Plan it")));
  }

  let pause;
  const later = (ms) => { clearTimeout(pause); pause = setTimeout(ask, ms); };
  return { node, refresh, leave: () => curve.destroy(), title: () => "Plan", about: () => [h("strong", {}, "A plan"), " ", plan.species ? h("span", { class: "soft" }, plan.species + (plan.millimetres ? ", " + plan.millimetres + " mm" : "")) : ""] };
}
export { temperature };
