import { h, fill, once } from "../dom.js";
import { seam, Refused } from "../seam.js";
import { cook, facts, handed, begin, recordText, open, mutate } from "../cook.js";
import { tellStart, chooseLog, trouble } from "../main.js";
import { verdictSign } from "../signs.js";

export const fourLines = (hex) => hex.replace(/[^0-9A-Fa-f]/g, "").toUpperCase().match(/.{1,16}/g)?.map((line) => line.match(/.{1,4}/g).join(" ")) ?? [];

export function sealScreen(page, go) {
  const head = h("div", { class: "question" }), left = h("section", {}), middle = h("section", {}), right = h("section", { class: "answers" });
  const node = h("div", { class: "screen" }, head, h("div", { class: "three" }, left, middle, right));
  let wrong = "", shown = false;

  async function pages(event) {
    const tab = window.open("about:blank", "_blank");
    try {
      const url = URL.createObjectURL(await seam.report(handed(), recordText()));
      if (tab) tab.location = url; else location.assign(url);
      setTimeout(() => URL.revokeObjectURL(url), 60000);
    } catch (refused) { tab?.close(); trouble(refused); }
    event?.preventDefault?.();
  }

  async function save(what, name) {
    const url = URL.createObjectURL(await what);
    const link = h("a", { href: url, download: name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
  }

  function refresh() {
    const verdict = cook.verdict?.assessment.verdict;
    const sealed = cook.sealed;
    fill(head, h("h1", {}, sealed ? "Sealed." : "Seal it, and keep it"),
      h("p", { class: "lead" }, sealed ? "Give the PDF to your inspector, and the fingerprint by another way." : "A sealed report cannot be changed unseen. A NOT MET is kept like any other: that is what the file is for."));
    if (!verdict) {
      fill(left, h("p", {}, "There is no verdict to seal yet: " + (open()[0]?.words ?? "what was said cannot be judged") + "."), h("p", {}, h("a", { class: "plain strong", href: "#verdict" }, "Look at the verdict")));
      fill(middle); fill(right);
      return;
    }
    const name = cook.verdict.assessment.batch.id;
    fill(left, h("h2", {}, "The report"), h("p", { class: "row sealsign" }, verdictSign(verdict, 48), h("strong", {}, verdict)),
      h("p", {}, cook.verdict.assessment.batch.product + ", batch " + name + ", judged by " + cook.verdict.assessment.authority.title + "."),
      h("p", {}, h("button", { class: "plain strong", id: "pages", onclick: once(pages) }, sealed ? "Look at its pages again" : "Look at its pages, unsealed")),
      h("p", {}, h("button", { class: "link", id: "save-record", onclick: () => save(Promise.resolve(new Blob([recordText()], { type: "application/json" })), name + ".batch.json") }, "Save what you said, as a batch record")),
      h("p", {}, h("button", { class: "link", id: "save-figures", onclick: () => save(seam.figures(handed(), recordText()), name + ".json") }, "Save the figures")));
    const kept = sealed ? [[sealed.pdf, "the sealed report"], [sealed.log, "the log, as handed in"], [sealed.record, "what you said of it"]] : [[name + ".pdf", "the sealed report"], [name + ".csv", "the log, as handed in"], [name + ".json", "what you said of it"]];
    fill(middle, h("h2", {}, sealed ? "What was kept" : "What is kept"), h("p", {}, "In the kitchen folder, as files you can read and copy:"), h("p", { class: "mono small folder" }, facts.kitchen.folder),
      h("ul", { class: "list" }, kept.map(([file, what]) => h("li", {}, h("strong", { class: "grow" }, file.split(/[\\/]/).slice(sealed ? -2 : -1).join("/")), h("span", { class: "soft" }, what)))),
      h("p", {}, "Log and record ride inside the PDF too, with the rules it was judged by, so that anybody can work it out again."),
      h("h2", {}, "Afterwards"), h("p", {}, "“Again” begins the next one with the same food, probes and thermometer. Never with the same times."));
    if (sealed) afterwards(); else if (facts.kitchen.seal) sealIt(); else first();
  }

  function field(id, label, hint, attributes = {}) {
    return h("div", { class: "field" }, h("label", { for: id }, label),
      h("span", { class: "pass" }, h("input", { id, type: shown ? "text" : "password", autocomplete: "off", "aria-describedby": id + "-hint", ...attributes }), h("button", { class: "link", id: id + "-show", type: "button", onclick: () => { shown = !shown; for (const one of right.querySelectorAll(".pass input")) one.type = shown ? "text" : "password"; document.getElementById(id + "-show").textContent = shown ? "Hide" : "Show"; } }, shown ? "Hide" : "Show")),
      h("span", { class: "hint", id: id + "-hint" }, hint));
  }

  const print = (hex) => h("p", { class: "print", "aria-label": "Fingerprint, four lines" }, fourLines(hex).join("\n"));
  const proves = () => h("p", { class: "small" }, "It proves who sealed it and that nothing changed since. It does not prove that the probe sat in the core.");

  function sealIt() {
    const { seal } = facts.kitchen;
    fill(right, h("h2", {}, "Your seal"), h("h3", {}, seal.name), h("p", { class: "hint" }, "Fingerprint, to give your inspector by another way:"), print(seal.fingerprint),
      h("form", { class: "answers", onsubmit: once(async (e) => { e.preventDefault(); await go6(); }) },
        field("passphrase", "Passphrase of the seal", "Asked each time, kept nowhere."),
        wrong ? h("p", { class: "wrong", role: "alert" }, wrong) : "", proves(),
        h("p", { class: "go" }, h("button", { class: "act", id: "go", type: "submit" }, "Seal the report"))));
  }

  async function go6() {
    const input = document.getElementById("passphrase");
    if (!input.value) { input.focus(); return; }
    try {
      cook.sealed = await seam.seal(handed(), recordText(), input.value);
      wrong = "";
      await tellStart();
    } catch (refused) {
      if (!(refused instanceof Refused)) throw refused;
      wrong = refused.fault.kind === "passphrase" ? "This passphrase does not open the seal." : refused.message;
    }
    refresh();
    document.getElementById(wrong ? "passphrase" : "go")?.focus();
  }

  // The first time there is no seal: a kitchen folder and a key are made, where the person says so.
  function first() {
    const name = cook.said.kitchen?.name ?? "";
    fill(right, h("h2", {}, "This kitchen has no seal yet"), h("p", {}, "It is made once. What is kept then lies in the folder named beside; another one is named when Holdproof is started: ", h("span", { class: "mono" }, "page --kitchen DIR"), "."),
      h("form", { class: "answers", onsubmit: once(async (e) => { e.preventDefault(); await make(); }) },
        h("div", { class: "field" }, h("label", { for: "seal-name" }, "The name in the seal"), h("input", { id: "seal-name", type: "text", value: name, autocomplete: "off" })),
        field("new-passphrase", "A new passphrase", "At least 8 characters. It is kept nowhere and cannot be recovered: write it down where only you look."),
        field("again-passphrase", "The same again", ""),
        wrong ? h("p", { class: "wrong", role: "alert" }, wrong) : "",
        h("p", { class: "go" }, h("button", { class: "act", id: "go", type: "submit" }, "Make the folder and the seal"))));
  }

  async function make() {
    const name = document.getElementById("seal-name"), one = document.getElementById("new-passphrase"), two = document.getElementById("again-passphrase");
    if (!name.value.trim()) { name.focus(); return; }
    if (one.value.length < 8) { wrong = "At least 8 characters are needed."; first(); document.getElementById("new-passphrase").focus(); return; }
    if (one.value !== two.value) { wrong = "The two are not the same."; first(); document.getElementById("new-passphrase").focus(); return; }
    try {
      await seam.makeKey(name.value.trim(), one.value);
      const { kitchen, authority } = cook.said;
      await seam.keepKitchen({ name: kitchen?.name ?? name.value.trim(), place: kitchen?.place, timeZone: kitchen?.timeZone, authority });
      await tellStart();
      wrong = "";
    } catch (refused) {
      if (!(refused instanceof Refused)) throw refused;
      wrong = refused.message;
    }
    refresh();
    document.getElementById(wrong ? "new-passphrase" : "passphrase")?.focus();
  }

  function afterwards() {
    fill(right, h("h2", {}, "Your seal"), h("h3", {}, cook.sealed.signer), h("p", { class: "hint" }, "Fingerprint, to give your inspector by another way:"), print(cook.sealed.fingerprint), proves(),
      h("p", { class: "go" }, h("a", { class: "plain strong", href: "#door", id: "to-door" }, "To the kitchen"), h("button", { class: "act", id: "go", onclick: again }, "Again")));
  }

  // The next cook: the same food, columns and thermometer, never the same times.
  function again() {
    const { kitchen, authority, product, instrument, roles } = structuredClone(cook.said);
    const columns = { ...cook.roles };
    begin([]);
    Object.assign(cook.said, { kitchen, authority, product, instrument, roles });
    cook.roles = columns;
    cook.keepAnswers = true;
    chooseLog();
  }

  return { node, refresh, title: () => "Seal" };
}
export { mutate };
