import { h, fill, once } from "../dom.js";
import { seam, Refused } from "../seam.js";
import { Curve, roleWord } from "../curve.js";
import { ring, verdictSign } from "../signs.js";
import { chooseReport, trouble } from "../main.js";
import { fourLines } from "./seal.js";
import { view, count, clock, dayFull } from "../words.js";
import { stageKind, scaleOf } from "../cook.js";

const INSIDE = { log: ["The log", "as handed in"], batch_record: ["What the kitchen said of it", "batch record, JSON"], assessment: ["The figures", "JSON"], tables: ["The rules it was judged by", "tables"], digests: ["Their digests", "SHA-256"] };

export function reportScreen(page) {
  const curve = new Curve({ height: 210, label: "The cook in this report" });
  const head = h("div", {}), rings = h("ol", { class: "rings" }), side = h("div", { class: "answers" });
  const node = h("div", { class: "screen" }, head, h("div", { class: "work" }, h("div", {}, rings), side));
  let told, same, held = "";

  async function ask() {
    fill(head, h("div", { class: "question" }, h("h1", {}, "Checking the report"), h("p", { class: "lead" }, "The seal first, then every figure once more.")));
    try {
      told = await seam.recheck(page.report);
      if (told.record) view.zone = told.record.zone;
      if (told.authorityId) scaleOf(told.authorityId);
    } catch (refused) { trouble(refused); return; }
    refresh();
  }

  const whole = () => told.state === "intact" || told.state === "other signer";
  const softer = () => whole() && !told.published && told.publishedVerdict;
  const differs = () => whole() && told.differences?.length > 0;

  function finding() {
    if (told.state === "broken") return ["cracked", "Broken: nothing in it proves anything", "The file was changed after it was sealed. Even one byte is enough. Ask the kitchen for the file as it was sealed."];
    if (told.state === "unsealed") return ["cracked", "Never sealed: nothing in it proves anything", "Nothing shows that this file is as it was written. Ask the kitchen for the sealed one."];
    if (same === false) return ["compare", "Another signer", "It is as it was sealed, but by another key than the one you hold for this kitchen. That may be a new key, or another hand. Ask the kitchen, not the sender."];
    if (differs()) return ["cracked", "The figures do not come out again", "The seal is whole, but what is printed is not what its own log, record and rules give."];
    if (softer()) return ["other", "Judged by other rules than the published ones", "The seal is whole, but its rules are not the ones this program holds" + (told.approval ? "; it names an approval: " + told.approval : ", and it names no approval") + ". It says " + told.verdict + "; by the published rules it is " + told.publishedVerdict + "."];
    return undefined;
  }

  function refresh() {
    if (!told) return;
    const found = finding();
    if (found) {
      const [sign, title, words] = found;
      fill(head, h("div", { class: "finding" }, ring(sign, 44), h("div", {}, h("h1", {}, title), h("p", {}, words)), beside(sign)));
    } else {
      fill(head, h("div", { class: "question" }, h("h1", {}, "Unchanged, and every figure comes out again"),
        h("p", { class: "lead" }, same ? "The fingerprint is the one you hold. Rings speak of the report; answer 4 speaks of the food." : "One thing is left for you: compare the fingerprint. Rings speak of the report; answer 4 speaks of the food.")));
    }
    fill(rings, answer1(), answer2(), whole() ? answer3() : "", whole() ? answer4() : "");
    aside();
  }

  function beside(sign) {
    if (told.state === "broken" || told.state === "unsealed") return h("div", {}, h("p", { class: "row" }, h("button", { class: "plain strong", id: "another-report", onclick: chooseReport }, "Check another report"), pagesButton("Look at the pages all the same")), h("p", { class: "soft" }, "Its verdict is not shown here: a " + (told.state === "broken" ? "broken file" : "file nobody sealed") + " has none."));
    if (sign === "other") return h("div", { class: "tablebox", tabindex: "0", role: "region", "aria-label": "Rules compared" }, h("table", {}, h("thead", {}, h("tr", {}, ["Check", "Published", "In this report", "By the published"].map((one) => h("th", { scope: "col" }, one)))),
      h("tbody", {}, told.checks.filter((one) => one.publishedRule !== undefined && (one.publishedRule !== one.rule || one.publishedVerdict !== one.verdict)).map((one) => h("tr", {}, h("th", { scope: "row" }, one.title), h("td", {}, one.publishedRule), h("td", {}, h("strong", {}, one.rule)), h("td", {}, one.publishedVerdict))))));
    if (same === false) return h("div", { class: "row" }, h("div", {}, h("p", { class: "small soft" }, "The one you hold"), h("p", { class: "print" }, fourLines(held).join("\n"))), h("div", {}, h("p", { class: "small soft" }, "In this report"), h("p", { class: "print" }, fourLines(told.signer.fingerprint).join("\n"))));
    return h("ul", {}, (told.differences ?? []).map((one) => h("li", { class: "small" }, one)));
  }

  const item = (sign, question, says, ...more) => h("li", {}, sign, h("div", {}, h("p", { class: "soft" }, question), h("h2", {}, says), ...more));
  const when = (ms) => dayFull(ms) + ", " + clock(ms);

  function answer1() {
    const question = "1. Is it as it was sealed?";
    if (told.state === "broken") return item(ring("cracked"), question, "No.", h("ul", {}, told.findings.map((one) => h("li", { class: "small" }, one))));
    if (told.state === "unsealed") return item(ring("cracked"), question, "It was never sealed.", h("ul", {}, told.findings.map((one) => h("li", { class: "small" }, one))));
    return item(ring("whole"), question, "Yes. Not a byte was changed or added.", h("p", {}, told.claimed ? "Sealed " + when(told.claimed) + ", by the signer’s own clock." : "", told.witnessed ? " A timestamp witnesses " + when(told.witnessed) + "." : ""));
  }

  function answer2() {
    const question = "2. Whose seal is it?";
    if (!told.signer) return item(ring(told.state === "unsealed" ? "cracked" : "compare"), question, told.state === "unsealed" ? "Nobody’s." : "It cannot be told.");
    return item(ring(same ? "whole" : "compare"), question, same ? "The seal you hold: " + told.signer.name + "." : `It says ${told.signer.name}. Only the fingerprint tells.`,
      h("ol", { class: "prints" }, fourLines(told.signer.fingerprint).map((line, i) => h("li", {}, h("span", { class: "soft small" }, i + 1 + " "), h("span", { class: "mono" }, line)))),
      h("p", { class: "hint" }, "Read it aloud, line by line, against the one the kitchen gave you."),
      whole() ? h("p", { class: "row" }, h("button", { class: "act", id: "same", "aria-pressed": String(same === true), onclick: () => { same = true; refresh(); } }, "It is the same"), h("button", { class: "plain strong", id: "differs", "aria-pressed": String(same === false), onclick: () => { same = false; refresh(); } }, "It is another")) : "",
      whole() ? h("div", { class: "field" }, h("label", { for: "held" }, "Or paste the one you hold"), h("input", { id: "held", type: "text", autocomplete: "off", value: held, onchange: once(async (e) => {
        held = e.target.value.trim();
        if (!held) { same = undefined; refresh(); return; }
        try { same = (await seam.recheck(page.report, held)).state === "intact"; } catch (refused) { if (!(refused instanceof Refused)) throw refused; same = undefined; e.target.setAttribute("aria-invalid", "true"); return; }
        refresh();
      }) })) : "");
  }

  function answer3() {
    const question = "3. Do the figures come out again?";
    if (differs()) return item(ring("cracked"), question, "No.", h("p", {}, told.checks ? count(told.differences.length, "difference") + "." : told.differences[0]));
    return item(ring(told.published ? "whole" : "other"), question, "Yes, all " + told.checks.length + " checks as printed.",
      h("p", {}, "Worked out here, from the log, the record and the rules inside. ", told.published ? "The rules are the published ones, edition " + told.edition + "." : "The rules are others than the published ones this program holds: edition " + told.edition + "."));
  }

  function answer4() {
    const question = "4. What was the verdict, and what was not judged?";
    if (!told.verdict || differs()) return item(ring("cracked"), question, "None that stands.");
    return item(verdictSign(told.verdict, 30), question, `${told.verdict}, by ${told.authority}.`, told.least ? h("p", {}, (told.verdict === "MET" ? "Least margin: " : "Furthest from its limit: ") + told.least + ".") : "",
      h("p", {}, "Not judged: hygiene, raw food, allergens: no probe shows them."), told.cautions.length ? h("ul", {}, told.cautions.map((one) => h("li", { class: "small" }, "Caution: " + one))) : "",
      h("details", {}, h("summary", { class: "link", id: "its-checks" }, "The " + told.checks.length + " checks"), h("div", { class: "tablebox", tabindex: "0", role: "region", "aria-label": "Checks" }, h("table", {}, h("thead", {}, h("tr", {}, ["Check", "Verdict", "Asked", "Why"].map((one) => h("th", { scope: "col" }, one)))), h("tbody", {}, told.checks.map((one) => h("tr", {}, h("th", { scope: "row" }, one.title), h("td", {}, one.verdict), h("td", {}, one.rule), h("td", {}, one.why))))))));
  }

  const pagesButton = (words) => h("button", { class: "plain strong", id: "its-pages", onclick: () => { const url = URL.createObjectURL(new Blob([page.report.source], { type: "application/pdf" })); window.open(url, "_blank", "noopener"); setTimeout(() => URL.revokeObjectURL(url), 60000); } }, words);

  function aside() {
    const parts = [];
    if (told.log && told.verdict && !differs()) {
      parts.push(curve.node);
    }
    if (whole()) parts.push(h("p", {}, pagesButton("Look at its pages")));
    if (told.inside.length) parts.push(h("h2", {}, "What rides inside"), h("ul", { class: "list" }, told.inside.map((one) => h("li", {}, h("span", { class: "grow" }, INSIDE[one.role]?.[0] ?? one.role, h("br"), h("span", { class: "soft small" }, one.name + ", " + (one.bytes / 1024).toFixed(1) + " kB")),
      h("button", { class: "link", id: "save-" + one.role, "aria-label": "Save " + one.name, onclick: once(async () => { const url = URL.createObjectURL(await seam.inside(page.report, one.role)); h("a", { href: url, download: one.name }).click(); setTimeout(() => URL.revokeObjectURL(url), 60000); }) }, "Save")))));
    parts.push(h("p", {}, h("button", { class: "link", id: "one-more", onclick: chooseReport }, "Check another report")));
    fill(side, parts);
    if (told.log && curve.node.isConnected) {
      const decided = told.checks.find((one) => one.verdict === told.verdict && one.from !== undefined && (told.verdict !== "MET" || one.id.startsWith("lethality")));
      curve.update({ series: told.log.series, gaps: told.log.gaps, roles: told.record.roles, names: told.record.roles.map(roleWord).map((word) => (word === "not used" ? "" : word)), captions: told.log.channels.map((one) => one.name),
        ribbon: told.record.stages.filter((one) => one.to !== undefined).map((one) => ({ from: one.from, to: one.to, text: one.stage, kind: stageKind(one.stage) })),
        hatches: told.log.gaps.filter((one) => told.record.roles[one.channel] === "core"), decided, limits: told.record.limits.filter((one) => one.check === "lethality").map((one) => ({ ...one, text: one.text + ": the least credited" })) });
    }
  }

  ask();
  return { node, refresh, leave: () => curve.destroy(), title: () => "Report", about: () => [h("strong", {}, told?.batch ? "Report on " + told.batch : "A report"), " ", h("span", { class: "soft" }, told?.product ?? page.report?.name ?? "")] };
}
