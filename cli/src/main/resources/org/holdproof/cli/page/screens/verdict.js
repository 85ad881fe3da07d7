import { h, fill } from "../dom.js";
import { Curve, roleWord } from "../curve.js";
import { bar, barWords, measured, words } from "../bar.js";
import { verdictSign, verdictClass } from "../signs.js";
import { cook, facts, lines, handed, ribbon, unaccounted, holes, open, moments, recordText } from "../cook.js";
import { sources, chooseLog } from "../main.js";
import { clock, span, count } from "../words.js";

export function verdictScreen(page, go) {
  const curve = new Curve({ label: "The cook, and the part that decided" });
  const band = h("div", {}), now = h("div", {});
  const answers = h("div", { class: "answers" });
  const under = h("div", { class: "under" });
  const node = h("div", { class: "screen" }, band, now, h("div", { class: "work" }, h("div", {}, curve.node, under), answers));
  let lit;

  function refresh() {
    if (!cook.verdict) return notYet();
    const { assessment, beside } = cook.verdict;
    const checks = assessment.checks.map((check, i) => ({ ...check, ...beside.windows[i], i }));
    const deciding = checks.find((one) => one.verdict === assessment.verdict && one.verdict !== "MET") ?? checks.find((one) => one.id.startsWith("lethality")) ?? checks[0];
    if (!checks.some((one) => one.i === lit)) lit = deciding?.i;
    sentence(assessment, deciding, checks);
    const chosen = checks.find((one) => one.i === lit);
    curve.update(model(chosen, checks, beside));
    answer(assessment, checks, chosen);
    foot(assessment, beside);
  }

  function sentence(assessment, deciding, checks) {
    const verdict = assessment.verdict;
    const others = checks.filter((one) => one !== deciding);
    const met = others.filter((one) => one.verdict === "MET").length;
    const rest = verdict === "MET" ? "" : met === others.length ? " The other " + count(met, "check") + (met === 1 ? " is met." : " are met.") : ` Of the other ${others.length} checks ${met} are met.`;
    const says = verdict === "MET" ? "Every limit is kept, even at the worst this record allows." : deciding.headline + (/[.]$/.test(deciding.headline) ? "" : ".");
    const also = verdict === "MET" ? "" : deciding.why + rest;
    fill(band, h("h1", { class: "verdict " + verdictClass(verdict) }, h("span", { class: "word" }, verdictSign(verdict, 72, false), verdict),
      h("span", {}, h("span", { class: "says" }, says), also ? h("span", { class: "also" }, also) : "")));
    if (verdict === "NOT MET") band.querySelector("svg").replaceWith(verdictSign("NOT MET", 72, true));
    const next = verdict === "MET" ? "File the report; keep the food as the label and the plan say." : (deciding.next ?? "").replace(/^Do not serve[^.]*\.\s*/, "");
    fill(now, h("div", { class: "now" }, h("strong", {}, "What to do now"), h("p", {}, verdict === "MET" ? "" : h("strong", {}, "Do not serve. "), next, deciding.source && verdict !== "MET" ? [" ", h("button", { class: "link inline", id: "source", onclick: () => source(deciding) }, "Source")] : "")));
  }

  const source = (check) => sources("Source", h("p", {}, h("strong", {}, check.title)), h("p", {}, check.rule), h("p", {}, check.source || "A check of the record itself."), check.how && check.how !== "read" ? h("p", {}, check.how === "memory" ? "Recalled from memory: unconfirmed." : "How it was obtained: " + check.how + ".") : "");

  function model(chosen, checks, beside) {
    const drawn = lines();
    const limits = (beside.limits ?? []).filter((one) => one.check === chosen?.id || (one.check === "lethality" && chosen?.id.startsWith("lethality")) || (!chosen?.from && one.check === "lethality"));
    const end = chosen?.from !== undefined && chosen.unit === "min" && typeof chosen.limit === "number" && chosen.comparison === "at most" && runs(chosen) && chosen.limit * 60000 < chosen.to - chosen.from ? [{ at: chosen.from + chosen.limit * 60000, text: span(chosen.limit) + " ran out " + clock(chosen.from + chosen.limit * 60000) }] : [];
    return {
      ...drawn, names: drawn.roles.map((role) => (role === "none" ? "" : roleWord(role))),
      ribbon: ribbon(), hatches: [...unaccounted().map((one) => ({ ...one })), ...holes().map((one) => ({ ...one, words: ["nobody looked", clock(one.from) + " to " + clock(one.to) + ", " + span((one.to - one.from) / 60000)] }))],
      lit: chosen?.from !== undefined ? { from: chosen.from, to: chosen.to } : undefined, windows: chosen?.from !== undefined ? [{ from: chosen.from, to: chosen.to }] : [], decided: chosen?.from !== undefined ? { from: chosen.from, to: chosen.to } : undefined,
      limits: limits.map((one) => ({ ...one, text: one.check === "lethality" ? one.text + ": the least the table credits" : one.text, from: chosen?.from, to: chosen?.to })), ends: end,
      foot: cautions(),
    };
  }

  // A clock that runs from its window's beginning to its end; one that adds up spells has no such moment.
  const runs = (check) => Math.abs((check.to - check.from) / 60000 - check.worst) < 2;

  const cautions = () => cook.verdict.assessment.cautions.map((one, i) => h("button", { class: "link", id: "caution-" + i, onclick: () => sources("Caution", h("p", {}, one.text), h("p", { class: "soft" }, "A caution stands beside the verdict and has none of its own.")) }, "Caution: " + CAUTIONS(one)));
  const CAUTIONS = (one) => one.text.split(/[.:,]/)[0].toLowerCase().slice(0, 60);

  function answer(assessment, checks, chosen) {
    const order = { "NOT MET": 0, "NOT PROVEN": 1, "MET": 2 };
    const list = [...checks].sort((a, b) => order[a.verdict] - order[b.verdict]).map((one) => h("div", { class: "check" + (one.i === lit ? " open" : "") },
      h("button", { id: "check-" + one.i, "aria-expanded": String(one.i === lit), "aria-label": one.title + ": " + one.verdict, onclick: () => { lit = one.i; refresh(); } },
        verdictSign(one.verdict), h("span", {}, one.title, one.i === lit ? "" : h("span", { class: "unseen" }, ": " + one.verdict)), one.i === lit ? "" : measured(one) ? bar(one, 100, 22) : ""),
      one.i === lit ? opened(one) : ""));
    const settle = assessment.verdict === "NOT PROVEN" ? [h("h2", {}, "What would settle it"),
      h("ul", { class: "list" },
        holes().length ? h("li", {}, h("span", { class: "grow" }, "A log that covers the hole"), h("button", { class: "plain strong", id: "add-log", onclick: () => { cook.adding = true; chooseLog(); } }, "Add it")) : "",
        h("li", {}, h("span", { class: "grow" }, "What was not said: stages, probes"), h("a", { class: "plain strong", href: "#times", id: "say-times" }, "Say it"))),
      h("p", {}, h("strong", {}, "Neither?"), " Then it stays NOT PROVEN. Readings nobody took cannot be typed in.")] : "";
    fill(answers, h("div", {}, list), settle, h("p", { class: "go" }, cook.logs[0].growing || cook.stages.some((one) => !moments().has(one.stage) && one.to === undefined) ? h("a", { class: "plain strong", href: "#way", id: "way" }, "It is still under way") : "", h("button", { class: "act", id: "go", onclick: () => go("seal") }, "Seal and keep it")));
  }

  function opened(check) {
    return h("div", { class: "opened" }, measured(check) ? [bar(check), barWords(check)] : "",
      h("p", { class: "small" }, h("strong", {}, "Asked: "), check.rule + "."),
      h("p", { class: "small" }, check.why),
      check.toBeMet ? h("p", { class: "small" }, h("strong", {}, "To be MET: "), check.toBeMet) : "",
      check.source ? h("p", {}, h("button", { class: "link small", id: "open-source", onclick: () => source(check) }, "Source")) : "");
  }

  function foot(assessment, beside) {
    const left = beside.notJudged ?? [];
    fill(under, h("p", { class: "small" }, h("strong", {}, "Not judged: "), (left.length ? left.join("; ") + ". " : "") + "Hygiene, raw food, allergens: no probe shows them."),
      beside.left?.length ? h("details", {}, h("summary", { class: "link" }, "What the rules leave to the local authority"), h("ul", {}, beside.left.map((one) => h("li", { class: "small" }, one)))) : "",
      h("details", {}, h("summary", { class: "link", id: "as-figures" }, "All checks as a table"), h("div", { class: "tablebox", tabindex: "0", role: "region", "aria-label": "Checks as a table" }, checksTable(assessment))));
  }

  const checksTable = (assessment) => h("table", {}, h("thead", {}, h("tr", {}, ["Check", "Verdict", "Asked", "Measured", "Why"].map((one) => h("th", { scope: "col" }, one)))),
    h("tbody", {}, assessment.checks.map((one) => h("tr", {}, h("th", { scope: "row" }, one.title), h("td", {}, one.verdict), h("td", {}, one.rule), h("td", {}, measured(one) ? words(one).split("; ").slice(1).join("; ") : ""), h("td", {}, one.why)))));

  function notYet() {
    const items = open();
    fill(band, h("h1", { class: "verdict not-proven" }, h("span", { class: "word" }, verdictSign("NOT PROVEN", 72), "NOT PROVEN"),
      h("span", {}, h("span", { class: "says" }, cook.refused ? "What was said cannot be judged yet." : "It is not said yet what is to be judged."), cook.refused ? h("span", { class: "also" }, cook.refused.message) : "")));
    fill(now, h("div", { class: "now" }, h("strong", {}, "What to do now"), h("p", {}, h("strong", {}, "Do not serve. "), items.length ? "Say what is still open, as far as it is known." : "Correct what was said.")));
    fill(answers, h("ul", { class: "list" }, items.map((one) => h("li", {}, h("span", { class: "grow" }, one.words), h("a", { class: "plain strong", href: "#" + one.step, "aria-label": "Say it: " + one.words }, "Say it")))), h("p", { class: "go" }, h("a", { class: "act", id: "go", href: "#" + (items[0]?.step ?? "food") }, "Say what is open")));
    fill(under);
    if (cook.log) curve.update({ ...lines(), ribbon: ribbon(), hatches: unaccounted() });
  }

  return { node, refresh, leave: () => curve.destroy(), title: () => cook.verdict?.assessment.verdict ?? "Verdict" };
}
export { facts, recordText };
