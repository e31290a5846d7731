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

export const byId = (id) => document.getElementById(id);
