import { h, fill, choice } from "../dom.js";
import { Curve } from "../curve.js";
import { shape, tick } from "../signs.js";
import { PLACES } from "../places.js";
import { seam } from "../seam.js";
import { cook, facts, lines as drawn, ribbon, mutate, recordText, open, readLog } from "../cook.js";
import { view, span, dateKey } from "../words.js";

const FORMS = [["intact", "in one piece"], ["non-intact", "pierced, injected, rolled"], ["comminuted", "minced"]];
const SHAPES = [["slab", "flat slab"], ["roast", "block"], ["cylinder", "roll"], ["sphere", "ball"]];
const USUAL = ["beef", "pork", "turkey", "chicken"];
const PARTS = ["place", "food", "thermometer", "cook"];
const HEADS = { place: "Where was it cooked?", food: "What was it, and how thick?", thermometer: "Which thermometer?", cook: "Who cooked it?" };

export function foodScreen(page, go) {
  const curve = new Curve({ label: "The cook and the rules for it" });
  const head = h("div", { class: "question" });
  const answers = h("div", { class: "answers" });
  const node = h("div", { class: "screen" }, head, h("div", { class: "work" }, h("div", {}, curve.node), answers));
  let more = false;

  const said = cook.said;
  const set = (part, name, value) => mutate(() => {
    said[part] ??= {};
    if (value === undefined || value === "") delete said[part][name]; else said[part][name] = value;
    if (!Object.keys(said[part]).length) delete said[part];
  });
  const missing = { place: () => !said.kitchen?.name || !said.kitchen?.timeZone || !said.authority, food: () => !said.product?.name || !said.product?.species || !said.product?.form || !said.product?.shape, thermometer: () => !said.instrument?.id || !said.instrument?.tolerance, cook: () => !said.roles?.operator };
  cook.part ??= PARTS.find((part) => missing[part]()) ?? "food";

  const text = (id, label, value, put, extra = {}) => h("div", { class: "field" }, h("label", { for: id }, label), h("input", { id, type: "text", value: value ?? "", autocomplete: "off", onchange: (e) => put(e.target.value.trim()), ...extra }));

  function place() {
    const matching = PLACES.filter(([, id]) => id === said.authority);
    const zones = matching.length ? matching[0][2].split(" ") : [];
    const listed = said.kitchen?.timeZone && !zones.includes(said.kitchen.timeZone) ? [said.kitchen.timeZone, ...zones] : zones;
    return [
      text("kitchen-name", "The kitchen’s name", said.kitchen?.name, (v) => set("kitchen", "name", v)),
      h("fieldset", {}, h("legend", {}, "Its authority’s rules"), h("div", { class: "field" }, h("label", { class: "unseen", for: "authority" }, "Place"),
        h("select", { id: "authority", onchange: (e) => mutate(() => { said.authority = e.target.value; const z = PLACES.find(([, id]) => id === e.target.value)?.[2].split(" ") ?? []; if (z.length === 1) { said.kitchen = { ...said.kitchen, timeZone: z[0] }; rezone(); } }) },
          h("option", { value: "", disabled: Boolean(said.authority), selected: !said.authority }, "choose the place"),
          PLACES.map(([label, id]) => h("option", { value: id, selected: said.authority === id }, label)),
          said.authority && !matching.length ? h("option", { value: said.authority, selected: true }, said.authority) : ""))),
      h("p", { class: "hint" }, facts.authorities.find((one) => one.id === said.authority)?.title ?? "A place that is not in the list has no rules here: ask its authority."),
      h("div", { class: "field" }, h("label", { for: "zone" }, "The clock on its wall"),
        h("select", { id: "zone", onchange: (e) => { mutate(() => { said.kitchen = { ...said.kitchen, timeZone: e.target.value }; }); rezone(); } },
          h("option", { value: "", disabled: true, selected: !said.kitchen?.timeZone }, "choose the time zone"),
          (said.authority ? listed : []).map((z) => h("option", { value: z, selected: z === said.kitchen?.timeZone }, z.split("/").pop().replaceAll("_", " "))),
          h("optgroup", { label: "All" }, facts.zones.map((z) => h("option", { value: z, selected: z === said.kitchen?.timeZone && !listed.includes(z) }, z))))),
    ];
  }

  // Times keep what the clock showed: the stages said so far move with the zone.
  async function rezone() {
    const { iso, instant } = await import("../words.js");
    const walls = cook.stages.map((one) => [iso(one.from), one.to === undefined ? undefined : iso(one.to)]);
    view.zone = said.kitchen.timeZone;
    const again = (wall) => instant(wall.slice(0, 10), wall.slice(11, 19));
    cook.stages.forEach((one, i) => { one.from = again(walls[i][0]); if (one.to !== undefined) one.to = again(walls[i][1]); });
    await readLog();
    mutate(() => {}, true);
  }

  function food() {
    const p = said.product ?? {};
    const shown = more || (p.species && !USUAL.includes(p.species)) ? facts.species : USUAL;
    const before = facts.kitchen.products ?? [];
    return [
      before.length && !p.name ? h("div", { class: "field" }, h("label", { for: "again-product" }, "As before"), h("select", { id: "again-product", onchange: (e) => { const one = before[+e.target.value]; if (one) mutate(() => { said.product = { ...one }; }); } }, h("option", { value: "" }, "a new one"), before.map((one, i) => h("option", { value: String(i) }, one.name)))) : "",
      text("product-name", "What the label calls it", p.name, (v) => set("product", "name", v)),
      h("fieldset", {}, h("legend", {}, "The meat"), h("div", { class: "choices" }, shown.map((one) => choice("species", one, p.species === one, (v) => set("product", "species", v), one)), shown.length < facts.species.length ? h("button", { class: "plain", id: "more-species", onclick: () => { more = true; refresh(); } }, "more") : "")),
      h("fieldset", {}, h("legend", {}, "The piece"), h("div", { class: "choices" }, FORMS.map(([form, word]) => choice("form", form, p.form === form, (v) => set("product", "form", v), word)))),
      h("fieldset", {}, h("legend", {}, "Its shape"), h("div", { class: "choices" }, SHAPES.map(([kind, word]) => { const one = choice("shape", kind, p.shape === kind, (v) => set("product", "shape", v), shape(kind), word); one.classList.add("shape"); return one; }))),
      h("div", { class: "row" },
        text("thickness", "Thickness ↕", p.thickness, (v) => set("product", "thickness", withUnit(v, "mm")), { placeholder: "60 mm" }),
        text("weight", "Weight", p.weight, (v) => set("product", "weight", withUnit(v, "kg")), { placeholder: "2.6 kg" }),
        text("fat", "Fat", p.fat, (v) => set("product", "fat", withUnit(v, "%")), { placeholder: "12 %" })),
      h("p", { class: "hint" }, "With its unit: mm or in, kg or lb. Left empty where nobody knows."),
      text("batch-id", "Batch", said.batch ?? (cook.log ? dateKey(cook.log.from) : ""), (v) => mutate(() => { if (v) said.batch = v; else delete said.batch; })),
    ];
  }

  const withUnit = (v, unit) => (/^[\d.,]+$/.test(v) ? v.replace(",", ".") + " " + unit : v);

  function thermometer() {
    const i = said.instrument ?? {}, check = i.lastCheck ?? {};
    const known = facts.kitchen.instruments ?? [];
    const put = (name, v) => mutate(() => { said.instrument = { ...said.instrument }; if (v) said.instrument[name] = v; else delete said.instrument[name]; });
    const putCheck = (name, v) => mutate(() => {
      const next = { ...(said.instrument?.lastCheck ?? {}) };
      if (v) next[name] = v; else delete next[name];
      said.instrument = { ...said.instrument, lastCheck: next };
      if (!Object.keys(next).length) delete said.instrument.lastCheck;
    });
    return [
      known.length ? h("fieldset", {}, h("legend", {}, "Used before"), h("div", { class: "choices" }, known.map((one, k) => choice("known", String(k), JSON.stringify(one) === JSON.stringify(said.instrument), () => mutate(() => { said.instrument = structuredClone(one); }),
        one.id + (one.lastCheck?.date ? ", checked " + one.lastCheck.date : ", never checked") + ", true to " + one.tolerance)))) : "",
      text("instrument-id", "Its name or number", i.id, (v) => put("id", v)),
      h("div", { class: "row" }, text("tolerance", "True to within", i.tolerance, (v) => put("tolerance", withUnit(v, "°C")), { placeholder: "0.5 °C" }), text("check-every", "Checked every", i.checkEvery, (v) => put("checkEvery", withUnit(v, "d")), { placeholder: "30 d" })),
      h("fieldset", {}, h("legend", {}, "Its last check"),
        h("div", { class: "row" },
          h("div", { class: "field" }, h("label", { for: "check-date" }, "Day"), h("input", { id: "check-date", type: "date", value: check.date ?? "", onchange: (e) => putCheck("date", e.target.value) })),
          h("div", { class: "field" }, h("label", { for: "check-method" }, "How"), h("select", { id: "check-method", onchange: (e) => putCheck("method", e.target.value) }, h("option", { value: "" }, "never, or unknown"), facts.methods.map((m) => h("option", { value: m, selected: m === check.method }, m)))),
          text("check-reading", "It showed", check.reading, (v) => putCheck("reading", withUnit(v, "°" + view.unit)), { placeholder: view.unit === "F" ? "32.0 °F" : "0.0 °C" }),
          check.method === "comparison" ? text("check-reference", "The other showed", check.reference, (v) => putCheck("reference", withUnit(v, "°" + view.unit))) : "",
          check.method === "boiling point" ? text("check-altitude", "Height above sea", check.altitude, (v) => putCheck("altitude", withUnit(v, "m")), { placeholder: "250 m" }) : "")),
    ];
  }

  const who = () => [
    text("operator", "Cooked by (name or role)", said.roles?.operator, (v) => set("roles", "operator", v)),
    text("reviewer", "Reviewed by, if anybody", said.roles?.reviewer, (v) => set("roles", "reviewer", v)),
  ];

  function summary(part) {
    const words = {
      place: [said.kitchen?.name, said.authority && "judged by " + said.authority],
      food: [said.product?.name, [said.product?.species, said.product?.form, said.product?.thickness].filter(Boolean).join(", ")],
      thermometer: [said.instrument?.id, said.instrument?.tolerance && "true to " + said.instrument.tolerance + (said.instrument.lastCheck?.date ? ", checked " + said.instrument.lastCheck.date : "")],
      cook: [said.roles?.operator && "Cooked by " + said.roles.operator, said.roles?.reviewer && "reviewed by " + said.roles.reviewer],
    }[part].filter(Boolean);
    return h("li", {}, missing[part]() ? h("span", { class: "gapmark", "aria-hidden": "true" }) : tick(), h("span", { class: "grow" }, h("strong", {}, words[0] ?? HEADS[part]), words[1] ? [h("br"), words[1]] : ""),
      h("button", { class: "link", id: "change-" + part, "aria-label": (missing[part]() ? "Say: " : "Change: ") + HEADS[part], onclick: () => { cook.part = part; refresh(); } }, missing[part]() ? "Say it" : "Change"));
  }

  function refresh() {
    const part = cook.part;
    fill(head, h("h1", {}, HEADS[part]), h("p", { class: "lead" }, part === "place" ? "Rules differ from place to place; nothing is assumed." : part === "food" ? "The rules for it appear on the curve as you answer." : part === "thermometer" ? "A reading is worth what its thermometer is." : "Whoever stands for what was said."));
    const at = PARTS.indexOf(part), next = PARTS[at + 1];
    const refused = cook.refused;
    fill(answers,
      h("ul", { class: "list" }, PARTS.slice(0, at).map(summary)),
      { place, food, thermometer, cook: who }[part](),
      refused ? h("div", { class: "hint", role: "status" }, h("p", { class: "wrong" }, "This cannot be judged yet"), h("p", {}, refused.message)) : "",
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: () => { if (!next) { go("verdict"); return; } cook.part = next; refresh(); focusFirst(); } }, next ? { food: "Next: the food", thermometer: "Next: the thermometer", cook: "Next: who cooked it" }[next] : "See the verdict")));
    if (cook.log) {
      const wide = ribbon(), heat = wide.filter((one) => one.kind === "heat"), cool = wide.filter((one) => one.kind === "cool");
      curve.update({ ...drawn(), ribbon: wide,
        limits: (cook.limits ?? []).map((one) => (one.check === "lethality" ? { ...one, text: one.text + ": the least the table credits, for " + span(one.minutes), from: heat[0]?.from, to: heat.at(-1)?.to, below: true } : { ...one, text: one.text + " in " + span(one.minutes), from: cool[0]?.from ?? heat.at(-1)?.to })),
        foot: [h("span", { class: "small" }, cook.limits ? "Rules: " + (facts.authorities.find((one) => one.id === said.authority)?.title ?? said.authority) : "")] });
    }
    lines();
  }

  // The rules' lines, before all the rest is said.
  let linesFor = "";
  async function lines() {
    const key = [said.authority, said.product?.species, said.product?.form, said.product?.fat].join();
    if (key === linesFor || !said.authority || !said.product?.species || !said.product?.form || open().length === 0) return;
    linesFor = key;
    const told = await seam.limits(said.authority, said.product.species, said.product.form, said.product.fat ?? "").catch(() => undefined);
    if (told) { cook.limits = told.limits; refresh(); }
  }

  const focusFirst = () => answers.querySelector("fieldset input, .field input")?.focus();
  return { node, refresh, leave: () => curve.destroy(), title: () => "Food" };
}
export { recordText };
