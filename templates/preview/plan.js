// The plan: a drawing, and over it all that can be picked or moved. Places are in mm of the deck, its front-left corner the origin.

import { ask } from "./ask.js";
import { drawn, made } from "./made.js";

const MOVES = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowDown: [0, -1], ArrowUp: [0, 1] };
const DRAGS_FROM = 3; // pixels; what moves less was a click
const SPOKEN_AFTER_MS = 500;

/** Puts a plan into a host; on one that is `old` or set beside, nothing can be moved. */
export function putPlan(host, plan, desk, still) {
  const picture = document.createElement("template");
  picture.innerHTML = plan.svg;
  const over = drawn("svg", {
    class: "over",
    viewBox: `0 0 ${plan.width} ${plan.height}`,
    role: "group",
    "aria-label": `Things on deck ${plan.deck}`,
  });
  const board = made("div", { className: "plan" });
  board.append(picture.content.firstElementChild, over);
  host.append(board);
  const view = new View(plan, over);
  for (const lead of plan.leads) {
    for (const part of lead.parts) {
      const line = drawn("polyline", {
        class: part.above ? "lead" : "lead below",
        "data-name": lead.name,
        points: part.points.map(([x, y]) => view.paper(x, y).join(",")).join(" "),
      });
      line.append(drawn("title"));
      line.lastChild.textContent = lead.name;
      line.addEventListener("click", () => desk.pick(lead.name));
      over.append(line);
    }
  }
  for (const body of [...plan.bodies].sort((one, other) => Number(other.under) - Number(one.under))) {
    over.append(bodyOf(body, view, desk, still));
    if (!still) desk.plans.set(body.name, { body, view });
  }
}

export function lightPlan(host, lit) {
  for (const each of host.querySelectorAll(".over [data-name]")) each.classList.toggle("lit", lit.has(each.dataset.name));
}

class View {
  constructor(plan, over) {
    this.plan = plan;
    this.over = over;
  }

  paper(x, y) {
    const { left, top, size, scale } = this.plan;
    return [left + x / scale, top + (size[1] - y) / scale];
  }

  deck(event) {
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.over.getScreenCTM().inverse());
    const { left, top, size, scale } = this.plan;
    return [(at.x - left) * scale, size[1] - (at.y - top) * scale];
  }

  /** The outline of a body with its front-left corner at a place. */
  outline(body, x, y) {
    const [left, bottom] = this.paper(x, y);
    const { scale } = this.plan;
    if (!body.askew.length) {
      const [width, height] = [body.width / scale, body.depth / scale];
      return drawn("rect", { x: left, y: bottom - height, width, height });
    }
    const corners = body.askew.map(([cx, cy]) => this.paper(cx + x - body.x, cy + y - body.y).join(" "));
    return drawn("path", { d: `M${corners.join("L")}Z` });
  }
}

function bodyOf(body, view, desk, still) {
  const words = `${body.name}${body.under ? ", below the deck" : ""}, at ${place(body.x, body.y)}`;
  const group = drawn("g", {
    class: `body${body.under ? " under" : ""}${still ? " fixed" : ""}`,
    "data-name": body.name,
    tabindex: "0",
    role: "button",
    "aria-label": words + (body.chosen ? ", chosen by rigc" : ""),
  });
  group.append(view.outline(body, body.x, body.y));
  if (body.under) {
    const [x, y] = view.paper(body.x + body.width / 2, body.y + body.depth / 2);
    group.append(drawn("text", { x, y, class: "name" }));
    group.lastChild.textContent = `${body.name} (below)`;
  }
  if (still) {
    group.addEventListener("click", () => desk.pick(body.name));
    group.addEventListener("keydown", (event) => event.key === "Enter" && desk.pick(body.name));
    return group;
  }
  group.setAttribute("aria-describedby", "how");
  group.addEventListener("pointerdown", (event) => dragged(event, body, view, desk, group));
  group.addEventListener("keydown", (event) => keyed(event, body, view, desk));
  group.addEventListener("blur", () => desk.move?.body === body && desk.move.byKey && desk.move.giveUp());
  return group;
}

function keyed(event, body, view, desk) {
  const step = MOVES[event.key];
  if (step && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    const far = event.shiftKey ? 10 : 1;
    if (desk.move && desk.move.body.name !== body.name) desk.move.giveUp();
    const move = desk.move ?? begin(body, view, desk, true);
    move.to(move.x + far * step[0], move.y + far * step[1]);
  } else if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    if (desk.move) desk.move.set();
    else desk.pick(body.name);
  } else if (event.key === "Escape" && desk.move) {
    desk.move.giveUp();
  }
}

function dragged(event, body, view, desk, group) {
  if (event.button !== 0) return;
  desk.move?.giveUp();
  const from = view.deck(event);
  const start = [event.clientX, event.clientY];
  let move = null;
  group.setPointerCapture(event.pointerId);
  const going = (now) => {
    if (!move && Math.hypot(now.clientX - start[0], now.clientY - start[1]) < DRAGS_FROM) return;
    if (!move) move = begin(body, view, desk, false);
    if (move !== desk.move) return;
    const [x, y] = view.deck(now);
    move.to(Math.round(body.x + x - from[0]), Math.round(body.y + y - from[1]));
  };
  const ended = (now) => {
    for (const [name, heard] of heards) group.removeEventListener(name, heard);
    document.removeEventListener("keydown", escaped, true);
    if (!move) {
      if (now.type === "pointerup") desk.pick(body.name);
    } else if (move === desk.move) {
      if (now.type === "pointerup") move.set();
      else move.giveUp();
    }
  };
  const escaped = (key) => {
    if (key.key !== "Escape" || !move) return;
    key.stopPropagation();
    if (move === desk.move) move.giveUp();
  };
  const heards = [["pointermove", going], ["pointerup", ended], ["pointercancel", ended]];
  for (const [name, heard] of heards) group.addEventListener(name, heard);
  document.addEventListener("keydown", escaped, true);
}

export function begin(body, view, desk, byKey) {
  desk.move = new Move(body, view, desk, byKey);
  return desk.move;
}

/** A thing on its way: what it would do is told as it goes; set or given up once. */
class Move {
  constructor(body, view, desk, byKey) {
    Object.assign(this, { body, view, desk, byKey, x: body.x, y: body.y, over: false, asking: false, answer: null });
    this.hash = desk.state.hash;
    this.ghost = drawn("g", { class: "ghost" });
    this.dots = drawn("g", { class: "free" });
    view?.over.append(this.dots, this.ghost);
    if (view) this.showFree();
  }

  async showFree() {
    const found = await ask(`/free/${encodeURIComponent(this.body.name)}`).catch(() => null);
    if (!found || this.over) return;
    const radius = Math.min(0.7, (found.step / this.view.plan.scale) * 0.3);
    const dots = found.spots.map(([x, y]) => {
      const [cx, cy] = this.view.paper(x, y);
      return `M${cx - radius} ${cy}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;
    });
    this.dots.append(drawn("path", { d: dots.join("") }));
    this.dots.dataset.count = found.spots.length;
  }

  to(x, y) {
    const size = this.view ? this.view.plan.size : [Infinity, Infinity];
    this.x = Math.max(0, Math.min(Math.round(x * 10) / 10, size[0]));
    this.y = Math.max(0, Math.min(Math.round(y * 10) / 10, size[1]));
    if (this.view) {
      const [cx, cy] = this.view.paper(this.x, this.y);
      this.ghost.replaceChildren(this.view.outline(this.body, this.x, this.y), drawn("circle", { cx, cy, r: 1.1 }));
    }
    this.desk.tell(`${this.body.name} to ${place(this.x, this.y)} …`, false, 0);
    this.tryNow();
  }

  get order() {
    return { thing: this.body.name, x: this.x, y: this.y, hash: this.hash };
  }

  /** One question at a time, always about where it is now. */
  async tryNow() {
    if (this.asking) return this.asking;
    this.asking = (async () => {
      while (!this.over && !(this.answer && this.answer.x === this.x && this.answer.y === this.y)) {
        this.answer = await ask("/try", this.order);
        if (this.over) return;
        const here = this.answer.x === this.x && this.answer.y === this.y;
        this.ghost.classList.toggle("against", !this.answer.free);
        this.desk.tell(here ? this.answer.words : `${this.answer.words} …`, !this.answer.free, here ? SPOKEN_AFTER_MS : 0);
      }
    })();
    try {
      await this.asking;
    } catch (fault) {
      this.end();
      this.desk.refused(fault);
    } finally {
      this.asking = null;
    }
  }

  async set() {
    await this.tryNow();
    if (this.over) return;
    const { name } = this.body;
    const order = this.order;
    if (order.x === this.body.x && order.y === this.body.y) {
      this.giveUp();
      return;
    }
    this.end();
    try {
      const done = await ask("/move", order);
      this.desk.wrote(`written: ${done.words}`, !done.free, name);
    } catch (fault) {
      this.desk.refused(fault);
    }
  }

  giveUp(why = "given up: nothing is written") {
    if (this.over) return;
    this.end();
    this.desk.tell(`${this.body.name}: ${why}.`, false, 1);
  }

  end() {
    this.over = true;
    this.ghost.remove();
    this.dots.remove();
    if (this.desk.move === this) this.desk.move = null;
  }
}

export const place = (x, y) => `${+x.toFixed(1)}, ${+y.toFixed(1)} mm`;
