import { seam, Refused } from "./seam.js";
import { view, iso, dateKey } from "./words.js";
import { readingAt } from "./curve.js";

// One cook as far as it is said. What was never said stays away from the record: nothing is filled in.

export const cook = {};
export const facts = {}; // what the page was told at the start: rules, words, kitchen
let changed = () => {};
export const onChange = (act) => { changed = act; };

export function begin(logs = []) {
  for (const key of Object.keys(cook)) delete cook[key];
  Object.assign(cook, {
    logs, settings: {}, log: undefined, question: undefined, fault: undefined, roles: {}, cuts: [], stages: [], proposals: [],
    said: {}, text: undefined, verdict: undefined, refused: undefined, picked: undefined, pickedLine: 0, part: undefined, undo: [], sealed: undefined, end: undefined,
  });
  const kitchen = facts.kitchen?.about;
  if (kitchen) {
    cook.said.kitchen = { name: kitchen.name, ...(kitchen.place ? { place: kitchen.place } : {}), timeZone: kitchen.timeZone };
    if (kitchen.authority) cook.said.authority = kitchen.authority;
  }
  zoneIs(kitchen?.timeZone);
}

function zoneIs(zone) {
  view.zone = zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
}

// Figures stand in the scale an authority's readers use, until somebody picks the other.
export function scaleOf(authority) {
  const unit = facts.authorities?.find((one) => one.id === authority)?.units[0];
  if (unit && !view.picked) { view.unit = unit; cook.unitSet = true; }
}

const readSettings = () => ({ zone: cook.said.log?.timeZone ?? cook.said.kitchen?.timeZone ?? view.zone, ...cook.settings });

export async function readLog() {
  cook.fault = undefined;
  try {
    const answer = await seam.read(cook.logs[0], readSettings());
    cook.question = answer.question;
    cook.log = answer.log ?? answer.question?.choices.find((one) => one.log)?.log;
    if (answer.log) {
      const first = !cook.unitSet;
      if (view.picked) cook.unitSet = true;
      else if (first && answer.log.channels.every((one) => one.unit === "F")) view.unit = "F";
      else if (first) view.unit = "C";
      cook.unitSet = true;
      guessNothing();
    }
  } catch (refused) {
    if (!(refused instanceof Refused)) throw refused;
    cook.fault = refused.fault;
    cook.log = undefined;
    cook.question = undefined;
  }
}

// A heading that says core, bath or smoker says it; anything else is asked.
function guessNothing() {
  for (const { name } of cook.log.channels) {
    if (cook.roles[name]) continue;
    const word = name.toLowerCase();
    const hits = [["core", /\b(core|internal|meat)\b/], ["bath", /\b(bath|water)\b/], ["air", /\b(smoker|air|oven|chamber|pit|ambient)\b/]].filter(([, form]) => form.test(word));
    if (hits.length === 1) cook.roles[name] = hits[0][0];
  }
}

// Opens a record as it stands: until something is changed it is judged as written, to the byte.
export async function openRecord(text) {
  const said = JSON.parse(text);
  const read = await seam.record(text);
  cook.said = said;
  cook.text = text;
  zoneIs(read.zone);
  cook.limits = read.limits;
  scaleOf(said.authority);
  cook.settings = { ...(read.unit ? { unit: read.unit } : {}), ...(read.dates ? { dates: read.dates } : {}), ...(read.start !== undefined ? { start: read.start } : {}) };
  cook.roles = {};
  for (const role of ["core", "bath", "air"]) for (const name of said.columns?.[role] ?? []) cook.roles[name] = role;
  cook.stages = read.stages.map((one, i) => {
    const { stage, at, from, to, ...extra } = said.stages[i]; // what the page has no field for stays as it was said
    return { id: "s" + i, stage: one.stage, from: one.from, to: one.to, extra };
  });
  cook.end = read.end;
}

// After opening, a column the record does not name keeps no role unless it is said.
export function nameTheRest() {
  if (!cook.text) return;
  for (const { name } of cook.log?.channels ?? []) {
    const known = Object.keys(cook.roles).find((one) => one.trim().toLowerCase() === name.trim().toLowerCase());
    if (known && known !== name) { cook.roles[name] = cook.roles[known]; delete cook.roles[known]; }
    else if (!known) cook.roles[name] = "none";
  }
}

export const moments = () => new Set(facts.stages?.filter((one) => one.moment).map((one) => one.name) ?? ["bag", "serve"]);

export function mutate(change, quiet = false) {
  if (!quiet) remember();
  change();
  cook.text = undefined;
  cook.sealed = undefined;
  cook.stages.sort((a, b) => a.from - b.from);
  changed();
  judgeSoon();
}

export function remember() {
  cook.undo.push(JSON.stringify({ roles: cook.roles, stages: cook.stages, proposals: cook.proposals, said: cook.said, settings: cook.settings, end: cook.end ?? null }));
  if (cook.undo.length > 50) cook.undo.shift();
}

export function undo() {
  const before = cook.undo.pop();
  if (!before) return false;
  Object.assign(cook, JSON.parse(before), { text: undefined, sealed: undefined });
  changed();
  judgeSoon();
  return true;
}

export const roleList = () => (cook.log?.channels ?? []).map(({ name }) => cook.roles[name]);
export const columnOf = (role) => roleList().findIndex((one) => one === role);

export function record() {
  const said = structuredClone(cook.said);
  const columns = { core: [], bath: [], air: [] };
  for (const { name } of cook.log?.channels ?? []) columns[cook.roles[name]]?.push(name);
  const log = { ...(said.log ?? {}), ...(cook.settings.unit ? { unit: cook.settings.unit } : {}), ...(cook.settings.dates ? { dates: cook.settings.dates } : {}), ...(cook.settings.start !== undefined ? { start: iso(cook.settings.start) } : {}) };
  const once = moments();
  const whole = {
    ...said,
    batch: said.batch ?? (cook.log ? dateKey(cook.log.from) : undefined),
    columns: { core: columns.core, ...(columns.bath.length ? { bath: columns.bath } : {}), ...(columns.air.length ? { air: columns.air } : {}) },
    ...(Object.keys(log).length ? { log } : {}),
    end: cook.end ? { how: cook.end.how, at: iso(cook.end.at) } : undefined,
    stages: cook.stages.map((one) => (once.has(one.stage) ? { stage: one.stage, at: iso(one.from), ...one.extra } : { stage: one.stage, from: iso(one.from), ...(one.to !== undefined ? { to: iso(one.to) } : {}), ...one.extra })),
  };
  const order = ["batch", "authority", "kitchen", "product", "instrument", "columns", "log", "stages", "end", "roles", "approval"];
  return Object.fromEntries(Object.entries(whole).filter(([, v]) => v !== undefined).sort(([a], [b]) => order.indexOf(a) - order.indexOf(b)));
}

export const recordText = () => cook.text ?? JSON.stringify(record(), null, 2) + "\n";

// What is still open, by the step it is said in.
export function open() {
  const items = [];
  const add = (step, words) => items.push({ step, words });
  if (!cook.logs?.length) return [{ step: "log", words: "no log yet" }];
  if (cook.question) add("log", "one question of the log");
  if (!cook.log) return items.length ? items : [{ step: "log", words: "the log" }];
  if (!Object.values(cook.roles).includes("core")) add("probes", "which probe was in the core");
  if (!cook.stages.some((one) => !moments().has(one.stage))) add("times", "what happened when");
  const { kitchen, authority, product, instrument, roles } = cook.said;
  if (!kitchen?.name || !kitchen?.timeZone || !authority) add("food", "where it was cooked");
  if (!product?.name || !product?.species || !product?.form || !product?.shape) add("food", "the food");
  if (!instrument?.id || !instrument?.tolerance) add("food", "the thermometer");
  if (!roles?.operator) add("food", "who cooked it");
  return items;
}

let waiting, asked = 0;
export function judgeSoon(delay = 90) {
  clearTimeout(waiting);
  waiting = setTimeout(judge, delay);
}

export async function judge() {
  clearTimeout(waiting);
  const mine = ++asked;
  if (open().length) {
    cook.verdict = undefined;
    cook.refused = undefined;
    changed();
    return;
  }
  try {
    const verdict = await seam.judge(cook.logs, recordText());
    if (mine !== asked) return;
    cook.verdict = verdict;
    cook.limits = verdict.beside.limits;
    cook.refused = undefined;
  } catch (refused) {
    if (!(refused instanceof Refused)) throw refused;
    if (mine !== asked) return;
    cook.verdict = undefined;
    cook.refused = refused.fault;
  }
  changed();
}

const HEATS = new Set(["smoke", "bath", "hot hold", "reheat"]);
const COOLS = new Set(["chill", "store", "freeze"]);
export const stageKind = (stage) => (HEATS.has(stage) ? "heat" : COOLS.has(stage) ? "cool" : "between");

export function ribbon() {
  const shown = [];
  for (const [list, proposed] of [[cook.stages, false], [cook.proposals, true]]) {
    for (const one of list) {
      if (moments().has(one.stage)) continue;
      shown.push({ from: one.from, to: one.to ?? cook.log.to, text: one.stage + (proposed ? "?" : ""), kind: stageKind(one.stage), proposed });
    }
  }
  return shown;
}

// The spells of the log that no stage covers.
export function unaccounted() {
  if (!cook.log) return [];
  const spells = [...cook.stages].filter((one) => !moments().has(one.stage)).sort((a, b) => a.from - b.from);
  const holes = [];
  let at = cook.log.from;
  for (const one of spells) {
    if (one.from > at) holes.push({ from: at, to: Math.min(one.from, cook.log.to) });
    at = Math.max(at, one.to ?? cook.log.to);
  }
  if (at < cook.log.to) holes.push({ from: at, to: cook.log.to });
  return holes.filter((one) => one.to > one.from);
}

// Where nobody looked: the holes of the core's probes, or of the first while none is named.
export function holes() {
  const roles = roleList();
  const looked = roles.includes("core") ? (k) => roles[k] === "core" : (k) => k === 0;
  return (cook.log?.gaps ?? []).filter((one) => looked(one.channel));
}

export const coreAt = (ms) => { const k = columnOf("core"); return k < 0 ? undefined : readingAt(cook.log.series, k, ms); };
