// A sheet in a pane: names and numbers in it can be picked.

import { made } from "./made.js";

const LABEL_WORDS = 4; // in a drawing what is longer is a sentence, in which a word may look like a name

/** Puts the sheet's HTML into a host, behind a wall that keeps its styles in. */
export function putSheet(host, html, desk) {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  root.replaceChildren(
    made("link", { rel: "stylesheet", href: "/sheet.css" }),
    made("link", { rel: "stylesheet", href: "/inside.css" }),
  );
  const sheet = document.createElement("template");
  sheet.innerHTML = html;
  root.append(sheet.content);
  for (const head of root.querySelectorAll('[class*="least-"]')) {
    head.style.minWidth = `${/least-(\d+)/.exec(head.className)[1]}mm`;
  }
  const known = pattern(desk.state.names.map((each) => each.name));
  for (const cell of root.querySelectorAll("tbody :is(th, td)")) {
    if (cell.dataset.why) numbered(cell);
    else named(cell, known);
  }
  for (const text of root.querySelectorAll("svg text")) {
    const found = text.textContent.match(known);
    if (found && text.textContent.split(" ").length <= LABEL_WORDS) {
      text.dataset.name = found[0];
      text.classList.add("pick");
    }
  }
  if (!host.dataset.heard) {
    host.dataset.heard = "yes";
    root.addEventListener("click", (event) => clicked(event, desk));
    root.addEventListener("keydown", walked);
  }
}

/** Lights what is picked. */
export function lightSheet(host, lit) {
  for (const each of host.shadowRoot?.querySelectorAll(".pick") ?? []) {
    each.classList.toggle("lit", lit.has(each.dataset.name ?? each.dataset.why));
  }
}

function pattern(names) {
  const each = names.map((name) => name.replace(/[^\w-]/g, "\\$&")).sort((one, other) => other.length - one.length);
  return new RegExp(`(?<![\\w.-])(?:${each.join("|") || "(?!)"})(?![\\w-])`, "g");
}

function numbered(cell) {
  const button = made("button", { type: "button", className: "pick", tabIndex: -1, "data-why": cell.dataset.why });
  button.append(...cell.childNodes);
  cell.append(button);
}

function named(cell, known) {
  const texts = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
  const held = [];
  while (texts.nextNode()) if (!texts.currentNode.parentElement.closest("a")) held.push(texts.currentNode);
  for (const text of held) {
    const parts = [];
    let done = 0;
    for (const found of text.data.matchAll(known)) {
      parts.push(text.data.slice(done, found.index), nameButton(found[0]));
      done = found.index + found[0].length;
    }
    if (parts.length) text.replaceWith(...parts, text.data.slice(done));
  }
}

function nameButton(name) {
  return made("button", { type: "button", className: "pick", tabIndex: -1, "data-name": name, textContent: name });
}

function clicked(event, desk) {
  const link = event.target.closest("a");
  if (link) {
    event.preventDefault();
    desk.open(link.getAttribute("href").replace(/\.html$/, ""));
    return;
  }
  const pick = event.target.closest(".pick");
  if (pick?.dataset.why) desk.why(pick.dataset.why);
  else if (pick) desk.pick(pick.dataset.name);
}

/** In a table the arrow keys go from one thing that can be picked to the next; Enter picks it. */
function walked(event) {
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  const table = event.target.closest(".wide");
  if (!step || !table) return;
  const all = [...table.querySelectorAll("button.pick")];
  const at = all.indexOf(event.target);
  const next = all[at < 0 ? (step > 0 ? 0 : all.length - 1) : at + step];
  if (next) {
    event.preventDefault();
    next.focus();
  }
}

