// Figures and times in words. Temperatures come in °C, times in milliseconds, spans in minutes.

export const view = { unit: "C", zone: Intl.DateTimeFormat().resolvedOptions().timeZone };

export const toUnit = (celsius) => (view.unit === "F" ? celsius * 9 / 5 + 32 : celsius);
export const fromUnit = (value) => (view.unit === "F" ? (value - 32) * 5 / 9 : value);
export const degrees = () => (view.unit === "F" ? "°F" : "°C");
export const temperature = (celsius, decimals = 1) => toUnit(celsius).toFixed(decimals) + " " + degrees();

const formats = new Map();
function format(kind, options) {
  const key = kind + view.zone;
  if (!formats.has(key)) formats.set(key, new Intl.DateTimeFormat("en-GB", { timeZone: view.zone, ...options }));
  return formats.get(key);
}

export const clock = (ms) => format("clock", { hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(ms);
export const clockSeconds = (ms) => format("seconds", { hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" }).format(ms);
export const dayShort = (ms) => format("short", { weekday: "short", day: "numeric", month: "short" }).format(ms).replace(",", "");
export const dayLong = (ms) => format("long", { weekday: "long", day: "numeric", month: "long" }).format(ms).replace(",", "");
export const dayFull = (ms) => format("full", { day: "numeric", month: "long", year: "numeric" }).format(ms);
export const dayPlain = (ms) => format("plain", { day: "numeric", month: "long" }).format(ms);
export const weekday = (ms) => format("weekday", { weekday: "long" }).format(ms);

function parts(ms) {
  const found = {};
  for (const part of format("parts", { year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" }).formatToParts(ms)) {
    found[part.type] = part.value;
  }
  return found;
}

// Minutes the kitchen's clock is ahead of UTC at an instant.
export function offsetMinutes(ms) {
  const p = parts(ms);
  const local = Date.UTC(+p.year, +p.month - 1, +p.day, +p.hour, +p.minute, +p.second);
  return Math.round((local - Math.floor(ms / 1000) * 1000) / 60000);
}

export function dateKey(ms) {
  const p = parts(ms);
  return `${p.year}-${p.month}-${p.day}`;
}

// An instant as a batch record has it: the kitchen's clock with its offset.
export function iso(ms) {
  const p = parts(ms);
  const offset = offsetMinutes(ms);
  const sign = offset < 0 ? "-" : "+";
  const two = (n) => String(Math.trunc(n)).padStart(2, "0");
  return `${p.year}-${p.month}-${p.day}T${p.hour}:${p.minute}:${p.second}${sign}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
}

// The instant a clock time on a date means; undefined where it is no time.
export function instant(date, time) {
  const t = /^(\d{1,2})[:.](\d{2})(?:[:.](\d{2}))?$/.exec(time.trim());
  const d = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!t || !d || +t[1] > 23 || +t[2] > 59 || +(t[3] ?? 0) > 59) return undefined;
  const local = Date.UTC(+d[1], +d[2] - 1, +d[3], +t[1], +t[2], +(t[3] ?? 0));
  const near = local - offsetMinutes(local) * 60000;
  return local - offsetMinutes(near) * 60000;
}

// The instant of a typed clock time nearest to another instant.
export function nearest(time, ms) {
  let best;
  for (const day of [-1, 0, 1]) {
    const at = instant(dateKey(ms + day * 86400000), time);
    if (at !== undefined && (best === undefined || Math.abs(at - ms) < Math.abs(best - ms))) best = at;
  }
  return best;
}

// A limit as it is printed: never rounded.
export function exactly(value, unit) {
  if (unit === "min" && value < 2) return +(value * 60).toFixed(1) + " s";
  if (unit === "min" && (value < 120 || value % 60)) return +value.toFixed(2) + " min";
  if (unit === "min") return value / 60 + " h";
  return figure(value, unit);
}

// "2 h 55 min", "112 min", "34 s". The rounding goes where it is told: up, down, or to the nearest.
export function span(minutes, way = Math.round) {
  if (minutes === null || minutes === undefined) return "no bound";
  if (Math.abs(minutes) < 2 && minutes !== 0) return way(minutes * 60) + " s";
  const whole = way(minutes);
  if (whole < 120) return whole + " min";
  return Math.floor(whole / 60) + " h" + (whole % 60 ? " " + (whole % 60) + " min" : "");
}

export function figure(value, unit, way = Math.round) {
  if (value === null || value === undefined) return "no bound";
  if (unit === "min") return span(value, way);
  if (unit === "°C" && view.unit === "F") return (value * 9 / 5).toFixed(1) + " °F";
  const shown = Math.abs(value) >= 100 ? way(value) : way(value * 10) / 10;
  return shown + (unit ? " " + unit : "");
}

export const count = (n, one, many = one + "s") => n.toLocaleString("en-GB") + " " + (n === 1 ? one : many);

export function rhythm(seconds) {
  if (!seconds) return "one reading";
  if (seconds === 60) return "One a minute";
  if (seconds < 60) return "One every " + +seconds.toFixed(1) + " s";
  return "One every " + span(seconds / 60);
}
