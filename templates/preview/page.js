// The page: what is open in it, what is lit, and what the server tells. All else is in the files beside.

import { ask, follow, Refused } from "./ask.js";
import { anew, byId, made } from "./made.js";
import { lightPlan, putPlan } from "./plan.js";
import { lightSheet, putSheet } from "./sheets.js";
import { lightSource, putFound, putPicked, putSource, putWhy } from "./side.js";

const PLAN = "plan";
const SLOW_MS = 400; // what takes longer is said to be under way
const ROOMS = { "": "Front", stage: "The stage", power: "Power", deck: "The deck", bench: "The bench", ear: "The ear", record: "The record" };

const desk = {
  state: { names: [], findings: [], number: -1, drawn: -1, hash: "", broken: false },
  files: [],
  lit: new Set(),
  here: null,
  sheet: PLAN,
  beside: "",
  picked: null,
  move: null,
  plans: new Map(),

  /** Tells something to who looks and, after a while, to who listens: at once (1), later, or not at all (0). */
  tell(words, against, after) {
    byId("told").textContent = words;
    byId("told").classList.toggle("against", against);
    clearTimeout(desk.speaking);
    if (after) desk.speaking = setTimeout(() => { byId("said").textContent = words; }, after);
  },

  refused(fault) {
    if (fault instanceof Refused) desk.tell(fault.message, true, 1);
    else lost("");
    if (fault.status === 409) refresh();
  },

  async wrote(words, against, name) {
    await refresh();
    desk.tell(words, against, 1);
    if (desk.picked === name) desk.pick(name, false);
  },

  /** Lights a thing or a lead, here and in the source, and tells what is known of it; not where somebody is writing there. */
  async pick(name, goes = true, may = () => true) {
    desk.picked = name;
    try {
      const found = await ask(`/thing/${encodeURIComponent(name)}`);
      if (desk.picked !== name || !may()) return;
      putPicked(found, desk);
      const first = found.lines[0];
      light([name], goes && first ? first : null);
      if (goes) desk.tell(`${name} is picked.`, false, 1);
    } catch (fault) {
      desk.refused(fault);
    }
  },

  async why(name) {
    desk.picked = null;
    try {
      const found = await ask(`/why/${encodeURIComponent(name)}`);
      putWhy(name, found, desk);
      const place = found.reasons[0]?.inputs.map((each) => each.place).find((each) => each);
      const about = name.split(".")[0];
      light([name, about], place ?? named(about));
      desk.tell(`${name} is explained.`, false, 1);
    } catch (fault) {
      desk.refused(fault);
    }
  },

  /** A line of the source: lights what it names. */
  line(file, line, names) {
    const named = names ?? desk.files.find((each) => each.name === file)?.names[line] ?? [];
    if (names && named.length) {
      desk.pick(named[0], false).then(() => light(named, { file, line }));
    }
    light(named, { file, line });
    desk.tell(named.length ? `${file}:${line} names ${named.join(", ")}.` : `${file}:${line}`, false, 1);
  },

  finding(each) {
    const known = each.about.filter((name) => desk.state.names.some((one) => one.name === name));
    if (known.length) desk.pick(known[0], false).then(() => light(known, each.line ? each : null));
    light(known, each.line ? each : null);
  },

  open(name) {
    desk.sheet = name;
    desk.move?.giveUp();
    putSheets();
    draw();
  },

  /** Where a thing stands on the plan that is shown, so that a ghost of it can be. */
  seen(name) {
    return desk.plans.get(name) ?? null;
  },
};

/** The first line that names a thing. */
function named(name) {
  for (const file of desk.files) {
    const line = Object.keys(file.names).find((each) => file.names[each].includes(name));
    if (line) return { file: file.name, line: Number(line) };
  }
  return null;
}

function light(names, here) {
  desk.lit = new Set(names);
  desk.here = here;
  relight(true);
}

function relight(goes) {
  for (const pane of document.querySelectorAll(".pane")) {
    lightPlan(pane, desk.lit);
    for (const host of pane.querySelectorAll(".inside")) lightSheet(host, desk.lit);
  }
  lightSource(desk.files, desk.lit, desk.here, goes);
}

let asked = Promise.resolve();

/** Looks anew; one look at a time. */
function refresh() {
  asked = asked.then(look).catch((fault) => {
    if (fault instanceof Refused) lost(fault.message);
    else lost("");
  });
  return asked;
}

async function look() {
  const before = desk.state;
  const state = await ask("/state");
  desk.state = state;
  const newer = state.drawn !== before.drawn;
  if (desk.move && desk.move.hash !== state.hash) desk.move.giveUp("the file was saved meanwhile, so the move is given up");
  byId("lost").hidden = true;
  putHead();
  putSheets();
  putFound(desk);
  const drawing = newer || state.broken !== before.broken ? draw() : null;
  desk.files = (await ask("/sources")).files;
  putSource(desk.files, desk);
  await drawing;
  relight(false);
  if (desk.picked && before.drawn > 0) desk.pick(desk.picked, false, () => !document.activeElement?.closest("#picked form"));
  if (newer && before.drawn > 0) byId("said").textContent = `drawn anew: ${state.summary}`;
}

function putHead() {
  const { state } = desk;
  const title = state.title ? `${state.title}, revision ${state.revision}` : state.file;
  document.title = `${state.broken ? "OLD: " : ""}${title}`;
  byId("rig").textContent = title;
  byId("summary").textContent = `${state.file}: ${state.summary}`;
  const broken = byId("broken");
  broken.hidden = !state.broken;
  if (state.broken) {
    const rest = state.drawn ? "What is drawn is OLD: it is of the last good save." : "Nothing can be drawn yet.";
    const words = `${state.file} can't be drawn as it is now (${state.summary}). ${rest}`;
    if (broken.textContent !== words) broken.textContent = words;
  } else broken.textContent = "";
  for (const [id, words, verb] of [["undo", state.undo, "Take back"], ["redo", state.redo, "Do again"]]) {
    byId(id).disabled = !words;
    byId(id).textContent = words ? `${verb}: ${words}` : verb;
  }
  const options = [{ key: "", words: "nothing" }, ...state.beside].map((each) => made("option", { value: each.key, textContent: each.words }));
  byId("beside").replaceChildren(...options);
  byId("beside").value = desk.beside;
  byId("names").replaceChildren(...state.names.map((each) => made("option", { value: each.name, label: `${each.name}, ${each.title}` })));
}

function putSheets() {
  const groups = new Map([["", [{ name: PLAN, words: "plan, to move things", room: "" }]]]);
  for (const each of desk.state.sheets) groups.set(each.room, [...(groups.get(each.room) ?? []), each]);
  const items = [...groups].map(([room, those]) =>
    made("li", {}, made("h2", { textContent: ROOMS[room] ?? room }), made("ul", {}, ...those.map(sheetItem))));
  anew(byId("sheets"), () => byId("sheets").replaceChildren(...items));
}

function sheetItem(each) {
  const button = made("button", { type: "button", textContent: each.words, "data-sheet": each.name, onclick: () => desk.open(each.name) });
  if (each.name === desk.sheet) button.setAttribute("aria-current", "page");
  return made("li", {}, button);
}

/** The panes: what is open as it is now, and, if wanted, as it is in another revision, to its left. */
async function draw() {
  if (!desk.state.drawn) return;
  const sides = [...(desk.beside ? [desk.beside] : []), "now"];
  const sheet = desk.sheet;
  const slow = setTimeout(() => {
    byId("panes").setAttribute("aria-busy", "true");
    byId("told").textContent = "Drawing anew …";
  }, SLOW_MS);
  let contents;
  try {
    contents = await Promise.all(sides.map((of) => content(sheet, of)));
  } finally {
    clearTimeout(slow);
    byId("panes").removeAttribute("aria-busy");
    if (byId("told").textContent === "Drawing anew …") byId("told").textContent = "";
  }
  if (sheet !== desk.sheet || sides[0] !== (desk.beside || "now")) return;
  const focused = document.activeElement?.closest?.(".body")?.dataset.name;
  desk.plans.clear();
  byId("panes").replaceChildren(...sides.map((of, at) => pane(of, contents[at])));
  relight(false);
  if (focused) document.querySelector(`.pane:last-child .body[data-name="${CSS.escape(focused)}"]`)?.focus();
}

async function content(sheet, of) {
  try {
    return sheet === PLAN ? await ask(`/plans/?of=${encodeURIComponent(of)}`) : await ask(`/sheet/${sheet}?of=${encodeURIComponent(of)}`);
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    return { words: fault.message };
  }
}

function pane(of, found) {
  const { state } = desk;
  const old = of === "now" && state.broken;
  const which = of === "now" ? "" : ` (${state.beside.find((each) => each.key === of)?.words ?? of})`;
  const named = `${found.head ?? ""}${which}`;
  const head = made("h2", {}, old ? made("span", { className: "mark", textContent: "OLD, of the last good save: " }) : null, named);
  const made_ = made("section", { className: old ? "pane old" : "pane", "aria-label": old ? `OLD: ${named}` : named }, head);
  if (found.words) made_.append(made("p", { textContent: found.words }));
  for (const each of found.plans ?? []) {
    putPlan(made_, each, desk, of !== "now" || old);
  }
  if (found.plans && !found.plans.length) made_.append(made("p", { textContent: "No deck has a thing on it yet: state a deck and places." }));
  if (found.html) {
    const inside = made("div", { className: "inside" });
    made_.append(inside);
    putSheet(inside, found.html, desk);
  }
  return made_;
}

function lost(why) {
  const words = why || "The connection to rigc is lost. What is shown may be old; it is tried again by itself.";
  if (byId("lost").textContent !== words) byId("lost").textContent = words;
  byId("lost").hidden = false;
}

async function turn(path) {
  desk.move?.giveUp();
  try {
    const done = await ask(path, {});
    await refresh();
    desk.tell(done.words, false, 1);
  } catch (fault) {
    desk.refused(fault);
  }
}

byId("undo").onclick = () => turn("/undo");
byId("redo").onclick = () => turn("/redo");
byId("beside").onchange = (event) => {
  desk.beside = event.target.value;
  draw();
};
byId("find").onchange = (event) => {
  const name = event.target.value.trim();
  if (name) desk.pick(name);
};
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.target.closest?.("input, select")) return;
  const key = event.key.toLowerCase();
  if (key === "z" || key === "y") {
    event.preventDefault();
    turn(key === "y" || event.shiftKey ? "/redo" : "/undo");
  }
});

follow(() => refresh(), (at) => desk.line(at.file, at.line, null), lost);
