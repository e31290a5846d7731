// What goes to the server and comes from it. The key stands behind # in the address; no browser sends that anywhere.

const key = location.hash.slice(1);
const SILENT_MS = 12000; // the server says every 5 s that it lives
const WAITS_MS = [300, 1000, 2000, 4000];

export class Refused extends Error {
  constructor(status, words) {
    super(words);
    this.status = status;
  }
}

/** The answer to a question, or, with a body, to an order. Throws `Refused`, and TypeError where nobody answers. */
export async function ask(path, body) {
  const how = { headers: { "X-Rigc-Key": key }, cache: "no-store" };
  if (body !== undefined) {
    how.method = "POST";
    how.headers["Content-Type"] = "application/json";
    how.body = JSON.stringify(body);
  }
  const answer = await fetch(path, how);
  const found = await answer.json();
  if (!answer.ok) throw new Refused(answer.status, found.words ?? "that was refused");
  return found;
}

/** Follows the server's events: `news` when anything is new, `light` when an editor is at a line, `lost` when there is no connection. A
 * hidden page holds none. */
export function follow(news, light, lost) {
  let stop = new AbortController();
  let tries = 0;

  async function once() {
    let silent = 0;
    const heard = () => {
      clearTimeout(silent);
      silent = setTimeout(() => stop.abort(), SILENT_MS);
    };
    heard();
    try {
      const answer = await fetch("/events", { headers: { "X-Rigc-Key": key }, cache: "no-store", signal: stop.signal });
      if (!answer.ok) throw new Refused(answer.status, (await answer.json()).words);
      const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
      let held = "";
      for (;;) {
        const { value, done } = await reader.read();
        if (done) return;
        heard();
        tries = 0;
        const parts = (held + value).split("\n\n");
        held = parts.pop();
        const last = parts.filter((part) => part.startsWith("data: ")).pop();
        if (last) news();
        const lit = parts.filter((part) => part.startsWith("event: light\n")).pop();
        if (lit) light(JSON.parse(lit.split("\ndata: ")[1]));
      }
    } finally {
      clearTimeout(silent);
    }
  }

  async function always() {
    for (;;) {
      if (document.hidden) {
        await new Promise((seen) => document.addEventListener("visibilitychange", seen, { once: true }));
        continue;
      }
      stop = new AbortController();
      let why = "";
      try {
        await once();
      } catch (fault) {
        if (fault instanceof Refused) why = fault.message;
      }
      if (document.hidden) continue;
      lost(why);
      await new Promise((waited) => setTimeout(waited, WAITS_MS[Math.min(tries++, WAITS_MS.length - 1)]));
    }
  }

  document.addEventListener("visibilitychange", () => document.hidden && stop.abort());
  always();
}
