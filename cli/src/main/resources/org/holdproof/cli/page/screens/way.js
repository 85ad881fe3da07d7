import { h, fill, say } from "../dom.js";
import { seam, Refused } from "../seam.js";
import { Curve, roleWord } from "../curve.js";
import { running } from "../bar.js";
import { verdictSign } from "../signs.js";
import { cook, facts, lines, handed, ribbon, readLog, recordText, open, coreAt } from "../cook.js";
import { clock, span, temperature, figure } from "../words.js";

const LOOK = 10000;
const ALARMS = [30, 10, 5, 0];

// A cook under way: what is running out first, and by the worst case. Nothing is drawn ahead of now but limits.
export function wayScreen(page, go) {
  const curve = new Curve({ label: "The cook so far" });
  const head = h("div", {}), answers = h("div", { class: "answers" });
  const node = h("div", { class: "screen" }, head, h("div", { class: "work" }, h("div", {}, curve.node), answers));
  let told, timer, sound = false, lastAlarm, gone = false;

  async function look() {
    clearTimeout(timer);
    if (gone) return;
    if (cook.logs?.[0]?.growing) {
      try {
        const again = await seam.grown();
        if (again.file !== cook.logs[0].file) { cook.logs = [{ ...again, growing: true }]; await readLog(); }
      } catch (refused) { if (!(refused instanceof Refused)) throw refused; }
    }
    if (!open().length) {
      try { told = await seam.status(handed(), recordText()); } catch (refused) { if (!(refused instanceof Refused)) throw refused; told = { fault: refused.fault }; }
    }
    if (gone) return;
    refresh();
    timer = setTimeout(look, LOOK);
  }

  function refresh() {
    const items = open();
    if (!told || items.length) {
      fill(head, h("div", { class: "question" }, h("h1", {}, "What is under way?"), h("p", { class: "lead" }, items.length ? "Still open: " + items.map((one) => one.words).join(", ") + "." : "Looking at the log.")));
      fill(answers, h("p", { class: "go" }, h("a", { class: "act", id: "go", href: "#" + (items[0]?.step ?? "times") }, "Say it")));
      return;
    }
    if (told.fault) { fill(head, h("div", { class: "question" }, h("h1", {}, "This cannot be looked at yet"), h("p", { class: "lead" }, told.fault.message))); return; }
    const now = Date.now(), live = Math.abs(now - told.present) < 12 * 3600e3;
    const present = live ? Math.max(now, told.present) : told.present;
    const clocks = [...told.clocks].sort((a, b) => a.provableUntil - b.provableUntil);
    const first = clocks[0];
    const quiet = live && (now - told.present) / 60000 > Math.max(2, told.gapMinutes) && !told.over;
    const left = first ? Math.floor((first.provableUntil - present) / 60000) : undefined;
    const core = coreAt(told.present);
    fill(head,
      quiet ? h("div", { class: "alarm", role: "status" }, h("h2", {}, "The logger is quiet"), h("p", {}, "No reading since " + clock(told.present) + ", " + span((now - told.present) / 60000) + ". Look at it now.")) : "",
      first
        ? h("div", { class: "clock" }, h("p", { class: "big" }, left >= 0 ? span(Math.max(0, left), Math.floor) : "over"), h("div", {}, h("h1", {}, left >= 0 ? "left" + goal(first) : goalWas(first)), h("p", { class: "lead" }, (left >= 0 ? "The limit is " + clock(first.provableUntil) + ", worst case counted." : "") + (core === undefined ? "" : " It stands at " + temperature(core) + "."))))
        : h("div", { class: "question" }, h("h1", {}, told.over ? "It is over: judge it" : "Nothing is running out."), h("p", { class: "lead" }, told.outlook?.words ?? "")));
    ring(first, left);
    fill(answers,
      clocks.length ? [h("h2", {}, "Running clocks"), clocks.map((one) => h("div", { class: "runs" }, h("p", { class: "row" }, h("strong", { class: "grow" }, title(one)), h("span", {}, live ? span(Math.max(0, (one.provableUntil - present) / 60000), Math.floor) + " left" : span(Math.max(0, one.minutesLeft), Math.floor) + " left")), running(one.usedWorst + (present - told.present) / 60000, one.limitMinutes), h("p", { class: "small soft" }, one.words)))] : "",
      h("h2", {}, "Proven so far"), h("ul", { class: "list" }, list("proven", "MET"), list("kept", "MET", ": kept so far"), list("needed"), list("unprovable", "NOT PROVEN"), list("lost", "NOT MET")),
      told.remedies.length ? [h("h2", {}, "What the documents allow"), h("ul", {}, told.remedies.map((one) => h("li", { class: "small" }, one.text + (one.source ? " (" + one.source + ")" : ""))))] : "",
      h("p", { class: "go" }, told.over ? h("a", { class: "act", id: "go", href: "#verdict" }, "See the verdict") : h("a", { class: "act", id: "go", href: "#times" }, "Say what changed")));
    if (!cook.log) return;
    const goals = (cook.limits ?? []).filter((one) => clocks.some((c) => c.check === one.check));
    const end = Math.max(told.present, ...clocks.map((one) => one.provableUntil));
    curve.update({ ...lines(), names: lines().roles.map(roleWord).map((word) => (word === "not used" ? "" : word)), ribbon: ribbon(),
      range: { from: cook.log.from, to: end + (end - cook.log.from) * .04 }, now: told.present, dot: core === undefined ? undefined : { at: told.present, celsius: core },
      deadlines: goals.map((one) => { const c = clocks.find((each) => each.check === one.check); return { celsius: one.celsius, at: c.provableUntil, text: one.text + " by " + clock(c.provableUntil) }; }),
      limits: (cook.limits ?? []).filter((one) => one.check === "lethality").map((one) => ({ ...one, to: told.present, text: one.text + " for " + span(one.minutes) })),
      hatches: quiet ? [{ from: told.present, to: Math.min(now, end), words: ["nobody looks"] }] : [],
      foot: [h("span", { class: "small" }, cook.logs[0].growing ? "This page looks again every 10 s. A sound ten minutes before a limit: " : "Drop the log again to go on. A sound ten minutes before a limit: "), h("button", { class: "link", id: "sound", "aria-pressed": String(sound), onclick: () => { sound = !sound; refresh(); } }, sound ? "on" : "off")] });
  }

  const line = (clockOf) => (cook.limits ?? []).find((one) => one.check === clockOf.check);
  const goal = (one) => (line(one) ? " to get the core down to " + line(one).text : ": " + one.words);
  const goalWas = (one) => (line(one) ? line(one).text : "It") + " was due at " + clock(one.provableUntil) + ".";
  const title = (one) => (line(one) ? "Down to " + line(one).text + ", in " + figure(one.limitMinutes, "min") : one.check);
  const list = (state, verdict, more = "") => told.questions.filter((one) => one.state === state).map((one) => h("li", {}, verdict ? verdictSign(verdict) : h("span", { class: "gapmark", "aria-hidden": "true" }), h("span", { class: "grow" }, one.title + more, state === "proven" || state === "kept" ? "" : [h("br"), h("span", { class: "small soft" }, one.words)])));

  function ring(first, left) {
    if (!first) return;
    const mark = ALARMS.filter((one) => left <= one).at(-1);
    if (mark === undefined || mark === lastAlarm) return;
    lastAlarm = mark;
    say(left >= 0 ? left + " minutes left" + goal(first) : goalWas(first));
    if (sound && mark === 10) beep();
  }

  function beep() {
    const audio = new AudioContext(), tone = audio.createOscillator();
    tone.frequency.value = 660;
    tone.connect(audio.destination);
    tone.start();
    tone.stop(audio.currentTime + .8);
    tone.onended = () => audio.close();
  }

  look();
  return { node, refresh, leave: () => { gone = true; clearTimeout(timer); curve.destroy(); }, title: () => "Under way",
    about: () => [h("strong", {}, cook.said?.batch ?? "Under way"), " ", h("span", { class: "soft" }, (cook.said?.product?.name ?? cook.logs?.[0]?.name ?? "") + ", under way")],
    aside: () => (told?.present ? [h("span", { class: "soft lastread" }, "Last reading " + clock(told.present)), h("span", { class: "row nowrap" }, verdictSign(told.verdict, 24), h("strong", {}, told.verdict + " so far"))] : []) };
}
export { facts };
