import { h, fill } from "../dom.js";
import { seam } from "../seam.js";
import { door, verdictSign } from "../signs.js";
import { facts } from "../cook.js";
import { chooseLog, chooseReport, openKept, trouble } from "../main.js";

export function doorScreen(page, go) {
  const kept = h("section", { "aria-labelledby": "kept" });
  const card = (kind, title, words, ...act) => h("section", { class: "card" }, door(kind), h("h2", {}, title), h("p", {}, words), h("p", { class: "row" }, ...act));
  const node = h("div", { class: "door" },
    h("h1", {}, "Was it made safe, and kept safe?"),
    h("p", { class: "lead" }, "Drop a probe log or a sealed report anywhere on this page: it knows which is which. Or choose:"),
    h("div", { class: "cards" },
      card("cook", "A cook to judge", "The probe log of a cook, finished or still running. Files of any logger that writes CSV.",
        h("button", { class: "act", id: "choose-log", onclick: chooseLog }, "Choose a log"), h("a", { href: "#plan", class: "link", id: "plan-first" }, "Plan a cook first")),
      card("report", "A report to check", "Whose seal it is, whether a byte changed since, and every figure worked out again.",
        h("button", { class: "plain strong", id: "choose-report", onclick: chooseReport }, "Choose a report")),
      card("class", "A class to teach", "The same cut in two baths, large enough for the back row.",
        h("a", { class: "plain strong", href: "#lesson", id: "open-lesson" }, "Open the lesson"))),
    kept);

  const opening = (get) => async () => { try { await openKept(await get()); } catch (refused) { trouble(refused); } };

  async function list() {
    const { batches } = await seam.batches();
    const demo = h("ul", { class: "list" }, facts.demo.map((one) => h("li", {}, h("span", { class: "grow" }, one.story),
      h("button", { class: "link", id: "demo-" + one.name, onclick: opening(() => seam.demo(one.name)), "aria-label": "Open: " + one.story }, "Open"))));
    if (!batches.length) {
      fill(kept, h("h2", { id: "kept" }, "This kitchen has no batches yet"), h("p", { class: "soft" }, "Four invented cooks show how it goes. ", facts.demoStatement), demo);
      return;
    }
    fill(kept, h("h2", { id: "kept" }, "In this kitchen"),
      h("ul", { class: "batches" }, batches.map((one) => h("li", {},
        h("span", { class: "sign" }, verdictSign(one.verdict), one.verdict),
        h("span", {}, h("strong", {}, one.product), " ", h("span", { class: "soft" }, one.id)),
        h("span", { class: "soft day" }, one.from.slice(0, 10)),
        h("span", { class: "reason" }, one.reason ?? (one.sealed ? "sealed" : "kept")),
        h("button", { class: "link", "aria-label": "Open " + one.id, onclick: opening(() => seam.open(one.batch)) }, "Open")))),
      h("details", {}, h("summary", { class: "link" }, "Invented cooks to try"), demo));
  }
  list().catch(trouble);
  return { node };
}
