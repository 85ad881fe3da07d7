import { h, s, fill, say, askForFile } from "./dom.js";
import { seam, Refused } from "./seam.js";
import { view, dayShort } from "./words.js";
import { verdictSign, tick } from "./signs.js";
import { cook, facts, begin, readLog, openRecord, nameTheRest, rekey, judge, onChange, open } from "./cook.js";
import { doorScreen } from "./screens/door.js";
import { logScreen } from "./screens/log.js";
import { probesScreen } from "./screens/probes.js";
import { timesScreen } from "./screens/times.js";
import { foodScreen } from "./screens/food.js";
import { verdictScreen } from "./screens/verdict.js";
import { sealScreen } from "./screens/seal.js";
import { wayScreen } from "./screens/way.js";
import { planScreen } from "./screens/plan.js";
import { reportScreen } from "./screens/report.js";
import { lessonScreen } from "./screens/lesson.js";
import { strangeScreen } from "./screens/strange.js";

const STEPS = [["log", "Log"], ["probes", "Probes"], ["times", "Times"], ["food", "Food"], ["verdict", "Verdict"], ["seal", "Seal"]];
const SCREENS = {
  door: doorScreen, log: logScreen, probes: probesScreen, times: timesScreen, food: foodScreen, verdict: verdictScreen, seal: sealScreen,
  way: wayScreen, plan: planScreen, report: reportScreen, lesson: lessonScreen, strange: strangeScreen,
};

export const page = { screen: undefined, name: "door", report: undefined, strange: undefined };

const main = document.getElementById("main");
const stepsBar = document.getElementById("steps");

export function go(name) {
  if (location.hash === "#" + name) show(name); else location.hash = name;
}

function show(name) {
  page.screen?.leave?.();
  page.name = SCREENS[name] ? name : "door";
  if (STEPS.some(([step]) => step === page.name) && !cook.logs?.length) page.name = "door";
  if (page.name === "report" && !page.report) page.name = "door";
  page.screen = SCREENS[page.name](page, go);
  fill(main, page.screen.node);
  main.className = page.screen.name ?? "";
  frame();
  page.screen.refresh?.();
  main.focus({ preventScroll: true });
  scrollTo(0, 0);
  document.body.dataset.screen = page.name;
}

let lastCount = "";
// A field that somebody is typing in stays as it is until it is left: what is typed is never lost to a verdict.
let typing, put = false;
addEventListener("input", (e) => { if (e.target.matches?.("input, textarea")) typing = e.target; }, true);
addEventListener("change", () => { typing = undefined; }, true);
addEventListener("focusout", () => setTimeout(() => { typing = undefined; if (put) { put = false; page.screen?.refresh?.(); } }), true);

onChange(() => {
  frame();
  if (typing && typing === document.activeElement && typing.type !== "range" && main.contains(typing)) put = true;
  else page.screen?.refresh?.();
  const words = soFar();
  if (words && words !== lastCount) say(words);
  lastCount = words;
});

function soFar() {
  if (!cook.logs?.length) return "";
  if (cook.verdict) return cook.verdict.assessment.verdict;
  if (cook.refused) return "NOT PROVEN so far: what was said cannot be judged yet";
  const items = open();
  return items.length ? "NOT PROVEN so far: " + (items.length === 1 ? items[0].words : items.length + " things still open") : "";
}

function frame() {
  const inCook = STEPS.some(([name]) => name === page.name);
  const product = cook.said?.product?.name;
  const about = page.screen?.about?.() ?? (inCook ? [h("strong", {}, cook.said.batch ?? "New batch"), " ", h("span", { class: "soft" }, product ?? cook.logs.map((one) => one.name).join(", "))] : []);
  fill(document.getElementById("title"),
    h("a", { class: "name", href: "#door", id: "home" }, "Holdproof"),
    h("span", { class: "about" }, about),
    h("span", { class: "aside" }, page.screen?.aside?.() ?? [], units()));
  document.title = (page.screen?.title?.() ?? "Holdproof") + (page.screen?.title ? " · Holdproof" : "");
  stepsBar.hidden = !inCook;
  if (inCook) {
    const openSteps = new Set(open().map((one) => one.step));
    const at = STEPS.findIndex(([name]) => name === page.name);
    const words = soFar();
    fill(stepsBar,
      h("p", { class: "place" }, h("button", { class: "link", id: "all-steps", "aria-expanded": String(stepsBar.classList.contains("all")), onclick: () => { stepsBar.classList.toggle("all"); frame(); } }, `${at + 1} of 6: ${STEPS[at][1]}`)),
      h("ol", {}, STEPS.map(([name, title], i) => {
        const done = i < 4 ? !openSteps.has(name) && (i !== 2 || cook.stages.length > 0) : name === "seal" ? Boolean(cook.sealed) : Boolean(cook.verdict);
        const here = name === page.name;
        return h("li", {}, h("a", { href: "#" + name, id: "step-" + name, class: done && !here ? "done" : "", "aria-current": here ? "step" : null },
          h("span", { class: "n" }, done && !here ? tick() : String(i + 1)), title, done && !here ? h("span", { class: "unseen" }, ", said") : ""));
      })),
      words && page.name !== "verdict" ? h("p", { class: "so-far" }, verdictSign(cook.verdict?.assessment.verdict ?? "NOT PROVEN", 24),
        h("span", {}, h("strong", {}, cook.verdict ? words : "NOT PROVEN"), h("span", { class: "count" }, cook.verdict ? "" : words.replace("NOT PROVEN", "")))) : "");
  }
}

function units() {
  const pick = (unit) => () => { view.unit = unit; view.picked = true; frame(); page.screen?.refresh?.(true); };
  return h("span", { class: "units", role: "group", "aria-label": "Degrees" },
    ["F", "C"].map((unit) => h("button", { id: "unit-" + unit, "aria-pressed": String(view.unit === unit), onclick: pick(unit) }, "°" + unit)));
}

function foot() {
  fill(document.getElementById("foot"),
    h("button", { class: "link", id: "nothing-leaves", "aria-expanded": "false", onclick: (e) => {
      const more = document.getElementById("leaves-more");
      more.hidden = !more.hidden;
      e.currentTarget.setAttribute("aria-expanded", String(!more.hidden));
    } }, h("strong", {}, "Nothing leaves this machine.")),
    h("span", { class: "safety" }, "Decision support: the local authority’s code and the approved HACCP plan govern. NOT PROVEN and NOT MET food is not served on this page’s word."),
    h("button", { class: "link", id: "keys", onclick: keys }, "Keys"),
    h("p", { id: "leaves-more", hidden: true }, "This computer serves the page to itself alone. Nothing is sent, nothing kept unasked. It works without a network."));
}

function keys() {
  const rows = [["Tab", "the next control: steps, each edge, answers, button"], ["← →", "on an edge or a slider: one reading, or one step"], ["Shift with ← →", "ten"], ["Home, End", "to the neighbouring edge"],
    ["Enter", "takes a proposal"], ["Esc", "puts the edge back"], ["Delete", "unsays a stage"], ["Ctrl Z", "undoes, on an edge"]];
  sources("Keys", h("table", {}, h("tbody", {}, rows.map(([key, does]) => h("tr", {}, h("th", { scope: "row" }, key), h("td", {}, does))))));
}

export function sources(title, ...content) {
  const box = h("dialog", { "aria-label": title }, h("h2", {}, title), ...content, h("p", { class: "row" }, h("button", { class: "plain strong", id: "dialog-close", onclick: () => box.close() }, "Close")));
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

// A file dropped anywhere, or chosen, is recognised by its bytes.
export async function handIn(files) {
  if (!files.length) return;
  try {
    const taken = [];
    for (const file of files) taken.push({ ...(await seam.handIn(file)), source: file });
    const report = taken.find((one) => one.kind === "report");
    if (report) {
      page.report = report;
      show("report");
      if (location.hash !== "#report") history.pushState(null, "", "#report");
      return;
    }
    const log = taken.find((one) => one.kind === "log");
    const record = taken.find((one) => one.kind === "record");
    if (!log && record && cook.logs?.length) {
      await openRecord(await record.source.text());
      await afterOpening();
      return;
    }
    if (!log) {
      page.strange = { file: taken[0] };
      show("strange");
      if (location.hash !== "#strange") history.pushState(null, "", "#strange");
      return;
    }
    const given = taken.filter((one) => one.kind === "log").map(({ file, name }) => ({ file, name }));
    if (cook.adding && cook.logs?.length) {
      cook.logs.push(...given.filter((one) => !cook.logs.some((known) => known.name === one.name)));
      cook.text = undefined;
      rekey();
    } else if (cook.keepAnswers) {
      cook.logs = given;
    } else {
      begin(given);
    }
    cook.keepAnswers = false;
    cook.adding = false;
    if (record) {
      await openRecord(await record.source.text());
      await afterOpening();
      return;
    }
    await readLog();
    await judge();
    show("log");
    if (location.hash !== "#log") history.pushState(null, "", "#log");
  } catch (refused) {
    trouble(refused);
  }
}

export async function openKept(kept) {
  begin(kept.logs);
  await openRecord(kept.record);
  await afterOpening();
}

async function afterOpening() {
  await readLog();
  nameTheRest();
  await judge();
  go(cook.fault ? "log" : "verdict");
}

export function trouble(refused) {
  if (!(refused instanceof Refused)) throw refused;
  page.strange = { fault: refused.fault };
  show("strange");
}

export const chooseLog = () => askForFile(".csv,.txt,.tsv,.log,.dat,.json,text/*", handIn);
export const chooseReport = () => askForFile(".pdf,application/pdf", handIn);

let folded = [];
addEventListener("beforeprint", () => { folded = [...document.querySelectorAll("details:not([open])")]; for (const one of folded) one.open = true; });
addEventListener("afterprint", () => { for (const one of folded) one.open = false; });

let over = 0;
addEventListener("dragenter", (e) => { if (e.dataTransfer?.types.includes("Files")) { over++; document.body.classList.add("dropping"); } });
addEventListener("dragleave", () => { over = Math.max(0, over - 1); if (!over) document.body.classList.remove("dropping"); });
addEventListener("dragover", (e) => { if (e.dataTransfer?.types.includes("Files")) e.preventDefault(); });
addEventListener("drop", (e) => {
  over = 0;
  document.body.classList.remove("dropping");
  if (!e.dataTransfer?.files.length) return;
  e.preventDefault();
  handIn([...e.dataTransfer.files]);
});
addEventListener("popstate", () => { if ((location.hash.slice(1) || "door") !== page.name) show(location.hash.slice(1) || "door"); });
addEventListener("hashchange", () => { if ((location.hash.slice(1) || "door") !== page.name) show(location.hash.slice(1) || "door"); });
addEventListener("unhandledrejection", (e) => { if (e.reason instanceof Refused) { e.preventDefault(); trouble(e.reason); } });

export async function tellStart() {
  const told = await seam.start();
  Object.assign(facts, told);
  facts.kitchen = { ...told.kitchen };
}

foot();
try {
  await tellStart();
  begin();
  if (facts.kitchen.about?.unit) view.unit = facts.kitchen.about.unit;
  if (facts.growing) {
    begin([{ ...(await seam.grown()), growing: true }]);
    await readLog();
    await judge();
    if (!location.hash || location.hash === "#door") history.replaceState(null, "", "#log");
  }
  show(location.hash.slice(1) || "door");
} catch (refused) {
  page.strange = { fault: refused.fault ?? { message: String(refused.message) } };
  show("strange");
}
document.body.dataset.ready = "yes";
