import { h, fill, choice } from "../dom.js";
import { Curve, roleWord } from "../curve.js";
import { swatch } from "../signs.js";
import { cook, roleList, mutate, holes } from "../cook.js";
import { temperature } from "../words.js";

const ROLES = [["core", "core"], ["bath", "bath"], ["air", "smoker"], ["none", "not used"]];

export function probesScreen(page, go) {
  const curve = new Curve({ label: "Every probe of the log", onpick: (k) => { cook.pickedLine = k; refresh(); } });
  const answers = h("div", { class: "answers" });
  const node = h("div", { class: "screen" },
    h("div", { class: "question" }, h("h1", {}, "Which probe was where?"), h("p", { class: "lead" }, "Pick a line, then say what it sat in. One probe at least must have sat in the core of the food.")),
    h("div", { class: "work" }, h("div", {}, curve.node), answers));

  function refresh() {
    if (!cook.log) { fill(answers, h("p", {}, "The log has an open question first."), h("p", { class: "go" }, h("a", { class: "act", href: "#log" }, "Back to the log"))); return; }
    const roles = roleList(), channels = cook.log.channels;
    const picked = Math.min(cook.pickedLine ?? 0, channels.length - 1);
    const name = channels[picked].name;
    const unsaid = roles.filter((one) => !one).length;
    fill(answers,
      h("ul", { class: "list" }, channels.map((one, k) => h("li", { class: "bare" }, h("button", { class: "pickrow", id: "line-" + k, "aria-pressed": String(k === picked), onclick: () => { cook.pickedLine = k; refresh(); } },
        swatch(roles[k]), h("span", { class: "grow" }, one.name), h("strong", {}, roleWord(roles[k]) || "not said"))))),
      h("fieldset", {}, h("legend", {}, name + " sat in"),
        h("div", { class: "choices two" }, ROLES.map(([role, word]) => choice("role", role, roles[picked] === role, (value) => say(name, value, picked), h("span", { class: "dot" }), h("span", { class: "grow" }, word), swatch(role))))),
      roles.includes("core") ? "" : h("p", { class: "hint" }, "Without a core probe nothing can be proven: a bath’s temperature is not the food’s."),
      h("p", { class: "go" }, h("button", { class: "act", id: "go", onclick: () => go("times") }, "Go on to the times")));
    curve.update({
      series: cook.log.series, gaps: cook.log.gaps, roles, names: channels.map((one, k) => one.name + (roles[k] && roles[k] !== "none" ? ": " + roleWord(roles[k]) : "")), captions: channels.map((one) => one.name),
      hatches: holes().map((one) => ({ ...one, words: ["nobody looked"] })),
      foot: [h("span", { class: "small soft" }, unsaid ? unsaid + " not said yet" : name + ": " + extent(picked))],
    });
  }

  const extent = (k) => {
    const values = cook.log.series.readings[k].filter((v) => typeof v === "number");
    return values.length ? temperature(Math.min(...values)) + " to " + temperature(Math.max(...values)) : "no readings";
  };

  function say(name, role, picked) {
    mutate(() => { cook.roles[name] = role; });
    const next = cook.log.channels.findIndex((one) => !cook.roles[one.name]);
    if (next >= 0 && next !== picked) { cook.pickedLine = next; refresh(); document.getElementById("line-" + next)?.focus(); }
  }

  return { node, refresh, leave: () => curve.destroy(), title: () => "Probes" };
}
