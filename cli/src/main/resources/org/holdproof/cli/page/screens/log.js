import { h, fill } from "../dom.js";
import { Curve } from "../curve.js";
import { cook, readLog, judge, lines, holes, mutate } from "../cook.js";
import { chooseLog } from "../main.js";
import { count, span, clock, dayFull, dayPlain, weekday, rhythm, instant, dateKey } from "../words.js";

const ORDER = { dmy: "Day first.", mdy: "Month first.", ymd: "Year first." };

export function logScreen(page, go) {
  let chosen;
  let startDate = "", startTime = "";
  const head = h("div", { class: "question" });
  const curve = new Curve({ label: "The log as read" });
  const left = h("div", {}, curve.node);
  const factsBox = h("dl", { class: "facts" });
  left.append(factsBox);
  const answers = h("div", { class: "answers" });
  const work = h("div", { class: "work" }, left, answers);
  const node = h("div", { class: "screen" }, head, work);

  function refresh() {
    if (cook.fault) return unreadable();
    const { question, log } = cook;
    const choices = question?.choices ?? [];
    const shown = choices.find((one) => one.value === chosen)?.log ?? log ?? choices[0]?.log;
    if (question?.asks === "dates") fill(head, h("h1", {}, either(choices.map((one) => dayPlain(one.log.from))) + "?"),
      h("p", { class: "lead" }, "Nothing in the file settles it, and nothing is guessed. All the rest could be read."));
    else if (question?.asks === "unit") fill(head, h("h1", {}, "Degrees Celsius, or Fahrenheit?"), h("p", { class: "lead" }, "The log names no scale, and nothing is guessed. All the rest could be read."));
    else if (question?.asks === "start") fill(head, h("h1", {}, "When was the log started?"), h("p", { class: "lead" }, "The log counts from its own start, and does not say when that was. All the rest could be read."));
    else fill(head, h("h1", {}, "Is this your cook?"), h("p", { class: "lead" }, "Read as it stands; nothing was changed or filled in."));
    fill(answers, question ? asked(question, choices) : settled(), again(),
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: onward }, button(question, choices))));
    if (shown?.series.times.length) {
      left.hidden = false;
      curve.update({ ...(shown === log ? lines() : { series: shown.series, gaps: shown.gaps, roles: [], names: shown.channels.map((one) => one.name), captions: shown.channels.map((one) => one.name) }), hatches: shown !== log ? [] : holes().map((one) => ({ ...one, words: ["nobody looked", clock(one.from) + " to " + clock(one.to)] })) });
      tell(shown);
    } else left.hidden = true;
  }

  const either = (words) => words.slice(0, -1).join(", ") + (words.length > 1 ? ", or " : "") + words.at(-1);

  function tell(log) {
    const gaps = holes();
    const longest = Math.max(0, ...gaps.map((one) => one.to - one.from));
    const units = [...new Set(log.channels.map((one) => "°" + one.unit))].join(" and ");
    const fact = (what, more) => h("div", {}, h("dt", {}, what), h("dd", {}, more));
    const others = log.faults.filter((one) => one.kind !== "gap");
    fill(factsBox, fact(count(log.rows, "reading"), others.length ? count(others.length, "remark") + " below" : "all rows read, none left out"),
      fact(span((log.to - log.from) / 60000), clock(log.from) + " to " + clock(log.to)),
      fact(rhythm(log.everySeconds), gaps.length ? count(gaps.length, "hole") + ", the longest " + span(longest / 60000) : "no holes"),
      fact(count(log.channels.length, "probe") + ", in " + units, log.channels.map((one) => one.label ?? one.name).join(", ")));
    left.querySelector(".remarks")?.remove();
    if (log.faults.length) {
      left.append(h("details", { class: "remarks curvefoot" }, h("summary", { class: "link" }, "What was found in it: " + count(log.faults.length, "remark")),
        h("ul", {}, log.faults.slice(0, 100).map((one) => h("li", {}, (one.file ? one.file + ", line " : "Line ") + one.line + ": " + (one.channel ? one.channel + ": " : "") + one.kind + ", " + one.detail)))));
    }
  }

  function asked(question, choices) {
    if (question.asks === "start") {
      return [h("div", { class: "row" },
        h("div", { class: "field" }, h("label", { for: "start-date" }, "Day"), h("input", { id: "start-date", type: "date", value: startDate, onchange: (e) => { startDate = e.target.value; } })),
        h("div", { class: "field" }, h("label", { for: "start-time" }, "Time"), h("input", { id: "start-time", type: "text", inputmode: "numeric", placeholder: "09:00", value: startTime, onchange: (e) => { startTime = e.target.value; } }))),
        quoted(question)];
    }
    const now = Date.now();
    return [h("fieldset", {}, h("legend", { class: "unseen" }, "Which is it?"), h("div", { class: "answers" }, choices.map((one) => h("label", { class: "choice large" },
      h("input", { type: "radio", name: "reading", id: "reading-" + one.value, checked: chosen === one.value, onchange: () => { chosen = one.value; refresh(); } }),
      h("span", { class: "dot" }),
      h("span", {}, question.asks === "dates"
        ? [h("span", { class: "what" }, dayFull(one.log.from)), h("span", { class: "why" }, ORDER[one.value], " A ", weekday(one.log.from), "."), h("span", { class: "why soft" }, away(one.log.from, now))]
        : [h("span", { class: "what" }, one.value === "F" ? "Fahrenheit, °F" : "Celsius, °C"), h("span", { class: "why soft" }, scale(one))])))), ), quoted(question)];
  }

  const scale = (one) => {
    const all = one.log.series.readings.flat().filter((v) => typeof v === "number");
    return "The readings then run from " + Math.min(...all).toFixed(0) + " to " + Math.max(...all).toFixed(0) + " °C.";
  };

  function away(ms, now) {
    const days = Math.round((Date.parse(dateKey(ms)) - Date.parse(dateKey(now))) / 86400000);
    if (days === 0) return "Today, by this computer’s clock.";
    if (days > 0) return "Still to come, by this computer’s clock.";
    return (days === -1 ? "Yesterday" : count(-days, "day") + " ago") + ", by this computer’s clock.";
  }

  function quoted(question) {
    const around = question.around?.lines ?? [];
    const line = around.find((one) => one.line === question.line) ?? around[0];
    return line ? h("div", {}, h("p", { class: "small soft" }, "As it stands in the file, line " + line.line), h("p", { class: "lines", tabindex: "0" }, line.text)) : "";
  }

  const settled = () => (cook.logs.some((one) => Object.keys(one.settings ?? {}).length) ? h("p", {}, h("button", { class: "link", id: "answer-again", onclick: async () => { mutate(() => { for (const one of cook.logs) one.settings = {}; }); await readLog(); refresh(); } }, "Answer the log’s question again")) : "");
  const again = () => h("p", {}, h("button", { class: "link", id: "add-log", onclick: () => { cook.adding = true; chooseLog(); } }, "Add another log of this cook"), " ", h("button", { class: "link", id: "other-log", onclick: chooseLog }, "Choose another log"));

  function button(question, choices) {
    if (!question) return "Go on to the probes";
    if (question.asks === "start") return "It was started then";
    const one = choices.find((c) => c.value === chosen);
    if (!one) return "Choose one of the two";
    return question.asks === "dates" ? "It was " + dayPlain(one.log.from) : "They are °" + one.value;
  }

  async function onward() {
    const { question } = cook;
    if (!question) return go("probes");
    if (question.asks === "start") {
      const at = instant(startDate, startTime);
      if (at === undefined) { document.getElementById(startDate ? "start-time" : "start-date").focus(); return; }
      cook.logs[cook.asking].settings.start = at;
    } else {
      if (chosen === undefined) { answers.querySelector("input")?.focus(); return; }
      cook.logs[cook.asking].settings[question.asks] = chosen;
    }
    chosen = undefined;
    cook.text = undefined;
    await readLog();
    await judge();
    refresh();
    if (!cook.question && !cook.fault) go("probes");
  }

  function unreadable() {
    const f = cook.fault;
    left.hidden = true;
    fill(head, h("h1", {}, f.line > 0 ? "Line " + f.line + " cannot be read" : "This log cannot be read"),
      h("p", { class: "lead" }, f.found ? [f.column ? "In column " + f.column + ": found " : "Found ", h("strong", {}, f.found), "; expected " + f.expected + "."] : f.message));
    fill(answers,
      f.around?.lines.length ? h("div", { class: "lines", tabindex: "0", role: "group", "aria-label": "The line among its neighbours" }, f.around.lines.map((one) => h("div", { class: one.line === f.line ? "it" : "" }, h("span", { class: "n" }, one.line), one.line === f.line ? boxed(one.text, f) : one.text))) : "",
      h("h2", {}, "What helps"), h("p", {}, f.remedy ?? "Export the log again."),
      h("p", { class: "soft" }, "Then choose the file again: your answers are kept. The log itself is never rewritten by this page, and nothing is guessed."),
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: () => { cook.keepAnswers = true; chooseLog(); } }, "Choose the corrected log")));
  }

  function boxed(text, f) {
    const quotedCell = /['"“](.+?)['"”]/.exec(f.found ?? "")?.[1];
    const at = quotedCell ? text.indexOf(quotedCell) : -1;
    return at < 0 ? text : [text.slice(0, at), h("mark", {}, quotedCell), text.slice(at + quotedCell.length)];
  }

  return { node, refresh, leave: () => curve.destroy(), title: () => "Log" };
}
