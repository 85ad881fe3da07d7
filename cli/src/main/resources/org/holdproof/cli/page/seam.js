// The one place where the page speaks to the library. Here it asks over HTTP; with the library compiled into one file it
// would call it, and nothing else would change.

export class Refused extends Error {
  constructor(fault) {
    super(fault.message);
    this.fault = fault;
  }
}

const STOPPED = "Holdproof has been closed. What you kept is in the kitchen folder. Start it again, then reload.";

async function ask(question, body, type = "application/json") {
  let response;
  try {
    response = await fetch("ask/" + question, { method: "POST", headers: { "Content-Type": type }, body, cache: "no-store" });
  } catch {
    throw new Refused({ kind: "stopped", message: STOPPED });
  }
  if (!response.ok) {
    const said = await response.json().catch(() => ({}));
    throw new Refused(said.fault ?? { kind: "request", message: "This cannot be answered (" + response.status + ")." });
  }
  return response;
}

const json = async (question, body) => (await ask(question, JSON.stringify(body))).json();

export const seam = {
  start: () => json("start", {}),
  handIn: async (file) => ({ ...(await (await ask("file", file, "application/octet-stream")).json()), name: file.name || "log.csv" }),
  read: (log, settings) => json("read", { file: log.file, name: log.name, settings }),
  readings: (log, settings, from, to) => json("readings", { file: log.file, name: log.name, settings, from, to }),
  propose: (log, settings, roles) => json("propose", { file: log.file, name: log.name, settings, ...roles }),
  record: (record) => json("record", { record }),
  limits: (authority, species, form, fat) => json("limits", { authority, species, form, fat }),
  judge: (logs, record) => json("judge", { logs, record }),
  figures: async (logs, record) => (await ask("figures", JSON.stringify({ logs, record }))).blob(),
  report: async (logs, record) => (await ask("report", JSON.stringify({ logs, record }))).blob(),
  seal: (logs, record, passphrase) => json("seal", { logs, record, passphrase }),
  recheck: (report, fingerprint) => json("recheck", { file: report.file, fingerprint }),
  inside: async (report, role) => (await ask("inside", JSON.stringify({ file: report.file, role }))).blob(),
  grown: () => json("grown", {}),
  status: (logs, record) => json("status", { logs, record }),
  plan: (cook) => json("plan", cook),
  lesson: (setup) => json("lesson", setup),
  keepKitchen: (kitchen) => json("kitchen", kitchen),
  makeKey: (name, passphrase) => json("key", { name, passphrase }),
  batches: () => json("batches", {}),
  open: (batch) => json("open", { batch }),
  demo: (name) => json("demo", { name }),
};
