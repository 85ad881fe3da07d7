// Elements are made from text nodes only: nothing a file holds is ever read as markup.

const SVG = "http://www.w3.org/2000/svg";

export function h(tag, attributes, ...children) {
  return build(document.createElement(tag), attributes, children);
}

export function s(tag, attributes, ...children) {
  return build(document.createElementNS(SVG, tag), attributes, children);
}

function build(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "value" || name === "checked" || name === "disabled") element[name] = value;
    else element.setAttribute(name, value === true ? "" : value);
  }
  add(element, children);
  return element;
}

function add(element, children) {
  for (const child of children) {
    if (Array.isArray(child)) add(element, child);
    else if (child !== undefined && child !== null && child !== false) element.append(child);
  }
}

// Puts new content in a place; what had the focus has it again if it is still there.
export function fill(place, ...children) {
  const held = place.contains(document.activeElement) ? document.activeElement : null;
  const id = held?.id;
  const from = held?.selectionStart, to = held?.selectionEnd;
  place.replaceChildren();
  add(place, children);
  const again = id && place.querySelector("#" + CSS.escape(id));
  if (again) {
    again.focus({ preventScroll: true });
    if (from !== undefined && from !== null && again.setSelectionRange && again.type === "text") again.setSelectionRange(from, to);
  }
}

let resting;
let lastSaid = "";
// Says something after one second's rest, once.
export function say(words) {
  clearTimeout(resting);
  resting = setTimeout(() => {
    if (words !== lastSaid) {
      lastSaid = words;
      document.getElementById("live").textContent = words;
    }
  }, 1000);
}

export function choice(name, value, chosen, pick, ...content) {
  return h("label", { class: "choice" },
    h("input", { type: "radio", name, id: name + "-" + value.replace(/[^A-Za-z0-9]/g, "_"), value, checked: chosen, onchange: () => pick(value) }),
    ...content);
}

// One action at a time: a second press while the first is under way does nothing.
export function once(action) {
  let running = false;
  return async (event) => {
    if (running) return;
    running = true;
    try { await action(event); } finally { running = false; }
  };
}

export function askForFile(accept, take) {
  const input = h("input", { type: "file", accept, multiple: true, class: "unseen", "aria-hidden": "true", tabindex: "-1" });
  input.addEventListener("change", () => { take([...input.files]); input.remove(); });
  input.addEventListener("cancel", () => input.remove());
  document.body.append(input);
  input.click();
}
