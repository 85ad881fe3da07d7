import { seam, Refused } from "./seam.js";
import { view, iso, dateKey, instant } from "./words.js";
import { readingAt } from "./curve.js";

// One cook as far as it is said. What was never said stays away from the record: nothing is filled in.

export const cook = {};
export const facts = {}; // what the page was told at the start: rules, words, kitchen
let changed = () => {};
export const onChange = (act) => { changed = act; };

export function begin(logs = []) {
  for (const key of Object.keys(cook)) delete cook[key];
  Object.assign(cook, {
    logs, log: undefined, question: undefined, asking: 0, fault: undefined, roles: {}, cuts: {}, stages: [], proposals: [],
    said: {}, text: undefined, verdict: undefined, refused: undefined, picked: undefined, pickedLine: 0, part: undefined, undo: [], sealed: undefined, end: undefined, proposed: false,
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

const settingsOf = (log) => ({ zone: log.zone ?? cook.said.log?.timeZone ?? cook.said.kitchen?.timeZone ?? view.zone, ...log.settings });

// Reads every log; the first that leaves something open is asked about.
export async function readLog() {
  cook.fault = undefined;
  cook.question = undefined;
  const read = [];
  for (const [i, log] of cook.logs.entries()) {
    log.settings ??= {};
    try {
      const answer = await seam.read(log, settingsOf(log));
      if (answer.question && !cook.question) { cook.question = answer.question; cook.asking = i; }
      read.push(answer.log ?? answer.question?.choices.find((one) => one.log)?.log);
    } catch (refused) {
      if (!(refused instanceof Refused)) throw refused;
      cook.fault = { ...refused.fault, log: i };
      cook.log = undefined;
      return;
    }
  }
  cook.log = read.every(Boolean) && read.length ? joined(read) : undefined;
  if (cook.log && !cook.question) {
    if (view.picked) cook.unitSet = true;
    else if (!cook.unitSet) view.unit = cook.log.channels.every((one) => one.unit === "F") ? "F" : "C";
    cook.unitSet = true;
    guessNothing();
  }
}

// Several logs of one cook lie side by side on one axis; each keeps its own columns.
function joined(read) {
  const channels = [], gaps = [], faults = [];
  read.forEach((log, i) => {
    const at = channels.length;
    log.channels.forEach((one) => channels.push({ ...one, log: i, key: read.length > 1 ? i + " " + one.name : one.name, label: read.length > 1 ? one.name + ", " + cook.logs[i].name : one.name }));
    log.gaps.forEach((one) => gaps.push({ ...one, channel: one.channel + at }));
    log.faults.forEach((one) => faults.push(read.length > 1 ? { ...one, file: cook.logs[i].name } : one));
  });
  return { ...read[0], channels, gaps, faults, rows: read.reduce((sum, log) => sum + log.rows, 0), from: Math.min(...read.map((log) => log.from)), to: Math.max(...read.map((log) => log.to)),
    everySeconds: Math.min(...read.map((log) => log.everySeconds)), series: merged(read.map((log) => log.series)) };
}

function merged(list) {
  if (list.length === 1) return list[0];
  const times = [...new Set(list.flatMap((one) => one.times))].sort((a, b) => a - b);
  const place = new Map(times.map((t, i) => [t, i]));
  const readings = list.flatMap((one) => one.readings.map((column) => {
    const wide = new Array(times.length).fill(null);
    one.times.forEach((t, i) => { wide[place.get(t)] = column[i]; });
    return wide;
  }));
  return { times, readings, thinned: list.some((one) => one.thinned) };
}

// Every reading between two instants, of all logs.
export async function readingsBetween(from, to) {
  return merged(await Promise.all(cook.logs.map((log) => seam.readings(log, settingsOf(log), from, to))));
}

// When a second log joins, the first one's columns are told apart from its own.
export function rekey() {
  for (const held of [cook.roles, cook.cuts]) {
    for (const key of Object.keys(held)) {
      if (!/^\d+ /.test(key)) { held["0 " + key] = held[key]; delete held[key]; }
    }
  }
}

// What the curves suggest, dotted until it is taken. Asked once the probes are named, and only where nothing is said yet.
export async function propose() {
  if (cook.stages.length || cook.proposals.length || cook.proposed || cook.logs.length !== 1 || !cook.log) return;
  const named = {};
  for (const { name, key } of cook.log.channels) if (["core", "bath", "air"].includes(cook.roles[key])) named[cook.roles[key]] ??= name;
  if (!named.core) return;
  cook.proposed = true;
  const { proposals } = await seam.propose(cook.logs[0], settingsOf(cook.logs[0]), named);
  cook.proposals = proposals.map((one, i) => ({ id: "p" + i, stage: one.stage, from: one.from, to: one.to, why: one.why }));
  changed();
}

// A column in the stretches it was cut into: each has a role of its own.
export function stretches(channel) {
  const cuts = (cook.cuts[channel.key] ?? []).filter((t) => t > cook.log.from && t < cook.log.to);
  const ends = [...cuts, undefined];
  return ends.map((to, i) => ({ key: i ? channel.key + " #" + i : channel.key, channel, from: i ? cuts[i - 1] : undefined, to }));
}

export const allStretches = () => (cook.log?.channels ?? []).flatMap(stretches);

// What the curve draws: one line a stretch.
export function lines(series = cook.log.series) {
  const key = JSON.stringify([cook.roles, cook.cuts]);
  if (drawn.series === series && drawn.key === key) return drawn.lines;
  const made = linesOf(series);
  if (series === cook.log.series) drawn = { series, key, lines: made };
  return made;
}

// The lines last made: the curve draws anew only where they have changed.
let drawn = {};

function linesOf(series) {
  const parts = allStretches();
  return {
    series: { ...series, readings: parts.map((part) => { const column = series.readings[cook.log.channels.indexOf(part.channel)]; return part.from === undefined && part.to === undefined ? column : column.map((v, i) => ((part.from === undefined || series.times[i] >= part.from) && (part.to === undefined || series.times[i] <= part.to) ? v : null)); }) },
    roles: parts.map((part) => cook.roles[part.key]), captions: parts.map((part) => part.channel.label), names: parts.map((part) => part.channel.label),
    gaps: cook.log.gaps.flatMap((one) => parts.flatMap((part, k) => (part.channel === cook.log.channels[one.channel] ? [{ ...one, channel: k }] : []))).concat(parts.flatMap((part, k) => [part.from !== undefined ? { channel: k, from: cook.log.from - 1, to: part.from } : [], part.to !== undefined ? { channel: k, from: part.to, to: cook.log.to + 1 } : []].flat())),
  };
}

// A heading that says core, bath or smoker says it; anything else is asked.
function guessNothing() {
  for (const { name, key } of cook.log.channels) {
    if (cook.roles[key]) continue;
    const word = name.toLowerCase();
    const hits = [["core", /\b(core|internal|meat)\b/], ["bath", /\b(bath|water)\b/], ["air", /\b(smoker|air|oven|chamber|pit|ambient)\b/]].filter(([, form]) => form.test(word));
    if (hits.length === 1) cook.roles[key] = hits[0][0];
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
  cook.roles = {};
  cook.cuts = {};
  const sources = said.logs ?? [{ columns: said.columns, file: cook.logs[0]?.name }];
  cook.logs.sort((a, b) => place(sources, a) - place(sources, b));
  cook.logs.forEach((log, i) => { const { from, to, ...rest } = read.logs[i] ?? {}; log.settings = rest.settings ?? {}; });
  cook.uses = sources.map((source) => source.columns ?? {});
  cook.stages = read.stages.map((one, i) => {
    const { stage, at, from, to, ...extra } = said.stages[i]; // what the page has no field for stays as it was said
    return { id: "s" + i, stage: one.stage, from: one.from, to: one.to, extra };
  });
  cook.end = read.end;
}

const place = (sources, log) => sources.findIndex((one) => one.file?.toLowerCase() === log.name.toLowerCase());

// After opening, a column the record does not name keeps no role unless it is said.
export function nameTheRest() {
  if (!cook.uses || !cook.log) return;
  const same = (a, b) => a.trim().toLowerCase() === b.trim().toLowerCase();
  for (const channel of cook.log.channels) {
    const own = [];
    for (const role of ["core", "bath", "air", "surface"]) {
      for (const use of cook.uses[channel.log]?.[role] ?? []) {
        const column = typeof use === "string" ? use : use.column;
        if (same(column, channel.name)) own.push({ role, from: use.from === undefined ? undefined : moment(use.from), to: use.to === undefined ? undefined : moment(use.to) });
      }
    }
    own.sort((a, b) => (a.from ?? 0) - (b.from ?? 0));
    const cuts = [...new Set(own.flatMap((one) => [one.from, one.to]).filter((t) => t !== undefined))].sort((a, b) => a - b);
    if (cuts.length) cook.cuts[channel.key] = cuts;
    for (const part of stretches(channel)) {
      const middle = ((part.from ?? cook.log.from) + (part.to ?? cook.log.to)) / 2;
      cook.roles[part.key] = own.find((one) => (one.from ?? -Infinity) <= middle && middle <= (one.to ?? Infinity))?.role ?? "none";
    }
  }
  cook.uses = undefined;
}

// An instant as a record writes it: with an offset, or by the kitchen's clock.
const moment = (text) => (/[Z+]|-\d\d:\d\d$/.test(text.slice(11)) ? Date.parse(text) : instant(text.slice(0, 10), text.slice(11)));

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
  cook.undo.push(JSON.stringify({ roles: cook.roles, cuts: cook.cuts, stages: cook.stages, proposals: cook.proposals, said: cook.said, end: cook.end ?? null }));
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

export const roleList = () => allStretches().map((part) => cook.roles[part.key]);

export function record() {
  const said = structuredClone(cook.said);
  const uses = (i) => {
    const columns = { core: [], bath: [], air: [], surface: [] };
    for (const part of allStretches()) {
      if (part.channel.log !== i) continue;
      columns[cook.roles[part.key]]?.push(part.from === undefined && part.to === undefined ? part.channel.name : { column: part.channel.name, ...(part.from === undefined ? {} : { from: iso(part.from) }), ...(part.to === undefined ? {} : { to: iso(part.to) }) });
    }
    return Object.fromEntries(Object.entries(columns).filter(([role, list]) => list.length || role === "core"));
  };
  const open = (log) => ({ ...(log.settings?.unit ? { unit: log.settings.unit } : {}), ...(log.settings?.dates ? { dates: log.settings.dates } : {}), ...(log.settings?.start !== undefined ? { start: iso(log.settings.start) } : {}) });
  const several = cook.logs.length > 1;
  const log = { ...(said.log ?? {}), ...open(cook.logs[0] ?? {}) };
  const once = moments();
  const whole = {
    ...said,
    batch: said.batch ?? (cook.log ? dateKey(cook.log.from) : undefined),
    columns: several ? undefined : uses(0),
    log: !several && Object.keys(log).length ? log : undefined,
    instrument: several ? undefined : said.instrument,
    logs: several ? cook.logs.map((one, i) => ({ file: one.name, instrument: said.logs?.[i]?.instrument ?? said.instrument, columns: trimmed(uses(i)), ...open(one) })) : undefined,
    end: cook.end ? { how: cook.end.how, at: iso(cook.end.at) } : undefined,
    stages: cook.stages.map((one) => (once.has(one.stage) ? { stage: one.stage, at: iso(one.from), ...one.extra } : { stage: one.stage, from: iso(one.from), ...(one.to !== undefined ? { to: iso(one.to) } : {}), ...one.extra })),
  };
  const order = ["batch", "authority", "kitchen", "product", "instrument", "columns", "log", "logs", "stages", "end", "roles", "approval"];
  return Object.fromEntries(Object.entries(whole).filter(([, v]) => v !== undefined).sort(([a], [b]) => order.indexOf(a) - order.indexOf(b)));
}

const trimmed = (columns) => Object.fromEntries(Object.entries(columns).filter(([, list]) => list.length));

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
  const { kitchen, authority, product, roles } = cook.said;
  const instrument = cook.said.instrument ?? cook.said.logs?.[0]?.instrument;
  if (!kitchen?.name || !kitchen?.timeZone || !authority) add("food", "where it was cooked");
  if (!product?.name || !product?.species || !product?.form || !product?.shape) add("food", "the food");
  if (!instrument?.id || !instrument?.tolerance) add("food", "the thermometer");
  if (!roles?.operator) add("food", "who cooked it");
  return items;
}

export const handed = () => cook.logs.map(({ file, name }) => ({ file, name }));

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
    const verdict = await seam.judge(handed(), recordText());
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
  if (!cook.log) return [];
  const { roles } = lines();
  const channels = allStretches();
  const looked = roles.includes("core") ? (k) => channels.some((part, n) => part.channel === cook.log.channels[k] && roles[n] === "core") : (k) => k === 0;
  return cook.log.gaps.filter((one) => looked(one.channel));
}

export function coreAt(ms) {
  const { series, roles } = lines();
  for (let k = 0; k < roles.length; k++) {
    const value = roles[k] === "core" ? readingAt(series, k, ms) : undefined;
    if (value !== undefined) return value;
  }
  return undefined;
}
