// Beside the drawing: what is picked, what is found, and the source.

import { ask } from "./ask.js";
import { anew, byId, made } from "./made.js";
import { begin } from "./plan.js";

/** What is known of a thing or a lead. */
export function putPicked(found, desk) {
  byId("picked-head").textContent = found.title ? `${found.name}: ${found.title}` : found.name;
  const parts = [];
  if (found.place) parts.push(placeForm(found, desk));
  const about = desk.state.findings.filter((each) => each.about.includes(found.name));
  if (about.length) parts.push(made("h3", { textContent: "Found about it" }), made("ul", {}, ...about.map((each) => findingItem(each, desk))));
  const others = [...found.ends, ...found.leads];
  if (others.length) {
    const buttons = others.map((name) => made("button", { type: "button", textContent: name, onclick: () => desk.pick(name) }));
    parts.push(made("h3", { textContent: found.ends.length ? "Ends" : "Leads" }), made("p", {}, ...buttons));
  }
  if (found.lines.length) {
    parts.push(made("h3", { textContent: "In the source" }), made("ul", {}, ...found.lines.map((each) => lineItem(each, desk))));
  }
  if (found.figures.length) {
    parts.push(made("h3", { textContent: "Figures" }), made("ul", { className: "figures" }, ...found.figures.map((each) => figureItem(each, desk))));
  }
  anew(byId("picked"), () => byId("picked").replaceChildren(...parts));
}

/** How figures came about. */
export function putWhy(name, found, desk) {
  byId("picked-head").textContent = `How ${name} came about`;
  byId("picked").replaceChildren(...found.reasons.map((reason) => whyList(reason, desk)));
}

/** What is found, each with its place and what to do. */
export function putFound(desk) {
  const { findings, summary } = desk.state;
  byId("found-head").textContent = `Found: ${summary}`;
  anew(byId("found"), () => byId("found").replaceChildren(...findings.map((each) => findingItem(each, desk))));
}

/** The rig's own files, line by line. */
export function putSource(files, desk) {
  const wrong = new Set(desk.state.findings.filter((each) => each.line && each.level !== "can't-check").map((each) => `${each.file}:${each.line}`));
  const parts = [];
  files.forEach((file, number) => {
    const list = made("div", { className: "lines", role: "listbox", tabIndex: 0, "aria-label": `Lines of ${file.name}`, "data-file": file.name });
    file.lines.forEach((text, at) => {
      const line = made("div", { id: `line-${number}-${at + 1}`, role: "option", "aria-selected": "false", textContent: text || " " });
      if (!text.trim()) line.setAttribute("aria-label", "empty");
      if (wrong.has(`${file.name}:${at + 1}`)) line.classList.add("wrong");
      list.append(line);
    });
    const picked = (at) => desk.line(file.name, at + 1, file.names[at + 1] ?? []);
    list.addEventListener("click", (event) => {
      const at = [...list.children].indexOf(event.target.closest('[role="option"]'));
      if (at >= 0) {
        go(list, at);
        picked(at);
      }
    });
    list.addEventListener("keydown", (event) => {
      const at = Number(list.dataset.at ?? 0);
      const to = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + 20, PageUp: at - 20, Home: 0, End: list.children.length - 1 }[event.key];
      if (to !== undefined) go(list, Math.max(0, Math.min(to, list.children.length - 1)));
      else if (event.key === "Enter" || event.key === " ") picked(at);
      else return;
      event.preventDefault();
    });
    const at = document.querySelector(`.lines[data-file="${CSS.escape(file.name)}"]`)?.dataset.at;
    if (at !== undefined) list.dataset.at = Math.min(Number(at), file.lines.length - 1);
    parts.push(made("h3", { textContent: file.name }), list);
  });
  const before = byId("source-part").scrollTop;
  anew(byId("source"), () => byId("source").replaceChildren(...parts));
  byId("source-part").scrollTop = before;
}

/** Lights the lines that name what is lit, and the line `here`, to which it also `goes`. */
export function lightSource(files, lit, here, goes) {
  for (const list of document.querySelectorAll(".lines")) {
    const file = files.find((each) => each.name === list.dataset.file);
    [...list.children].forEach((line, at) => {
      const named = (file?.names[at + 1] ?? []).some((name) => lit.has(name));
      const is = named || (here && here.file === list.dataset.file && here.line === at + 1);
      if ((line.getAttribute("aria-selected") === "true") !== Boolean(is)) line.setAttribute("aria-selected", is ? "true" : "false");
    });
    if (goes && here && here.file === list.dataset.file && here.line) {
      go(list, Math.min(here.line, list.children.length) - 1, "center");
    }
  }
}

function go(list, at, block = "nearest") {
  list.children[Number(list.dataset.at ?? -1)]?.classList.remove("at");
  list.dataset.at = at;
  list.children[at].classList.add("at");
  list.setAttribute("aria-activedescendant", list.children[at].id);
  list.children[at].scrollIntoView({ block });
}

function findingItem(each, desk) {
  const bad = each.level === "error" || each.level === "warning";
  const button = made(
    "button",
    { type: "button", className: "plainly", onclick: () => desk.finding(each) },
    made("span", { className: bad ? "level bad" : "level", textContent: `${each.level}: ` }),
    each.message,
    each.line ? ` (${each.file}:${each.line})` : "",
  );
  return made("li", {}, button, each.help ? made("p", { textContent: `do: ${each.help}` }) : null);
}

function lineItem(each, desk) {
  const parts = [made("button", { type: "button", className: "plainly", onclick: () => desk.line(each.file, each.line, null), textContent: `${each.file}:${each.line}  ${each.text}` })];
  if (desk.state.opens) parts.push(openButton(each, desk));
  return made("li", {}, ...parts);
}

function openButton(each, desk) {
  const said = () => ask("/open", { file: each.file, line: each.line }).then((done) => desk.tell(done.words, false, 1), desk.refused);
  return made("button", { type: "button", "aria-label": `Open ${each.file}:${each.line} in the editor`, textContent: "open in the editor", onclick: said });
}

function figureItem(each, desk) {
  const item = made("li");
  const button = made("button", {
    type: "button",
    className: "plainly",
    "aria-expanded": "false",
    textContent: `${each.name} = ${each.value}${each.unit ? ` ${each.unit}` : ""}${each.assumed ? " (rests on something assumed)" : ""}`,
  });
  button.onclick = async () => {
    if (item.children.length > 1) {
      item.lastChild.remove();
      button.setAttribute("aria-expanded", "false");
      return;
    }
    try {
      const found = await ask(`/why/${encodeURIComponent(each.name)}`);
      item.append(whyList(found.reasons[0], desk));
      button.setAttribute("aria-expanded", "true");
    } catch (fault) {
      desk.refused(fault);
    }
  };
  item.append(button);
  return item;
}

function whyList(reason, desk) {
  const rows = [
    ["value", `${reason.name} = ${reason.value}${reason.unit ? ` ${reason.unit}` : ""}${reason.assumed ? " (rests on something assumed)" : ""}`],
    ["formula", reason.formula],
  ];
  const { range } = reason;
  if (range && range.least !== null) rows.push(["range", `${range.at_most ? "at most " : ""}${range.least} to ${range.most} ${reason.unit}`]);
  for (const each of reason.inputs) rows.push(["from", inputWords(each, desk)]);
  rows.push(["rule", reason.rule], ["source", reason.source]);
  return made("dl", { className: "why" }, ...rows.flatMap(([head, text]) => [made("dt", { textContent: head }), made("dd", {}, text)]));
}

function inputWords(each, desk) {
  const words = `${each.name}: ${each.value}${each.unit ? ` ${each.unit}` : ""}${each.assumed ? " (assumed)" : ""}`;
  if (each.why) return made("button", { type: "button", className: "plainly", textContent: `${words}: why`, onclick: () => desk.why(each.why) });
  if (each.place) {
    const { file, line } = each.place;
    return made("button", { type: "button", className: "plainly", textContent: `${words} (${file}:${line})`, onclick: () => desk.line(file, line, null) });
  }
  return each.source ? `${words}; a number of rigc: ${each.source}` : words;
}

/** The place in two fields: the way to move a thing without a picture of it. */
function placeForm(found, desk) {
  const field = (word, value) => made("input", { type: "number", step: "1", min: "0", required: true, value: String(value), name: word });
  const [x, y] = [field("x", found.place.x), field("y", found.place.y)];
  const [set, give] = [made("button", { type: "submit", textContent: "Write it" }), made("button", { type: "button", textContent: "Give up" })];
  const form = made(
    "form",
    { className: "place", "aria-label": `Place of ${found.name}` },
    made("label", {}, "from the left edge, mm ", x),
    made("label", {}, "from the front edge, mm ", y),
    set,
    give,
  );
  const still = desk.state.broken;
  for (const each of [x, y, set, give]) each.disabled = still;
  const body = { name: found.name, x: found.place.x, y: found.place.y };
  const moved = () => {
    if (!form.checkValidity()) return null;
    if (desk.move?.body.name !== found.name) {
      desk.move?.giveUp();
      const seen = desk.seen(found.name);
      begin(seen ? seen.body : body, seen ? seen.view : null, desk, false);
    }
    desk.move.to(Number(x.value), Number(y.value));
    return desk.move;
  };
  form.addEventListener("input", moved);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    moved()?.set();
  });
  const given = () => {
    [x.value, y.value] = [found.place.x, found.place.y];
    desk.move?.giveUp();
  };
  give.addEventListener("click", given);
  form.addEventListener("keydown", (event) => event.key === "Escape" && given());
  return form;
}
