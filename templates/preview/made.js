// Small means of building elements. Text is always set as text; HTML comes from the server's own templates alone.

/** An element with properties, attributes (`aria-…`, `data-…`, `role`, `for`) and children. */
export function made(tag, given = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (name.includes("-") || name === "role") element.setAttribute(name, value);
    else element[name] = value;
  }
  element.append(...children.filter((child) => child !== null && child !== undefined));
  return element;
}

/** An element of SVG with attributes. */
export function drawn(tag, given = {}, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(given)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}

/** Makes a part anew; what had the focus in it, by its name or its words, has it again. */
export function anew(part, making) {
  const before = part.contains(document.activeElement) ? document.activeElement : null;
  const key = (each) => `${each.tagName} ${each.name || each.dataset.file || each.dataset.sheet || each.textContent}`;
  making();
  if (!before || part.contains(document.activeElement)) return;
  const those = [...part.querySelectorAll("button, input, [tabindex]")];
  those.find((each) => key(each) === key(before))?.focus({ preventScroll: true });
}

export const byId = (id) => document.getElementById(id);
