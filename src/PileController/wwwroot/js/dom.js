// Builds and touches the page's elements. Text goes in as text only, so nothing a person typed can become markup.

const SVG = "http://www.w3.org/2000/svg";

function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (name.startsWith("on")) {
      node.addEventListener(name.slice(2), value);
    } else if (value === true) {
      node.setAttribute(name, "");
    } else if (value !== false && value !== null && value !== undefined) {
      node.setAttribute(name, value);
    }
  }
  node.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return node;
}

/** An HTML element. */
export const h = (tag, attributes, ...children) => fill(document.createElement(tag), attributes, children);

/** An SVG element. */
export const s = (tag, attributes, ...children) => fill(document.createElementNS(SVG, tag), attributes, children);

/** Sets a node's text when it differs, so that screen readers hear changes only. */
export function put(node, text) {
  const next = String(text ?? "");
  if (node.textContent !== next) {
    node.textContent = next;
  }
}

/** Sets an attribute when it differs; null takes it away. */
export function mark(node, name, value) {
  if (value === null || value === undefined || value === false) {
    node.removeAttribute(name);
  } else if (node.getAttribute(name) !== String(value)) {
    node.setAttribute(name, value);
  }
}

const SHAPES = {
  good: "M4 12.5 9.5 18 20 6.5",
  warn: "M12 3.5 22 20.5 2 20.5Z M12 10v4.5 M12 17.2v.6",
  bad: "M8 2.5h8L21.5 8v8L16 21.5H8L2.5 16V8Z M12 7v6.5 M12 16.4v.8",
  plain: "M5 12h14",
};

/** A mark whose shape, not only its colour, tells good from bad. */
export function toneMark(tone = "plain") {
  const path = s("path", { d: SHAPES[tone], fill: "none", stroke: "currentColor", "stroke-width": 2.4, "stroke-linecap": "round", "stroke-linejoin": "round" });
  return s("svg", { class: "mark", viewBox: "0 0 24 24", "aria-hidden": "true", "data-tone": tone }, path);
}

/** Changes a mark's tone. */
export function setTone(svg, tone) {
  mark(svg, "data-tone", tone);
  mark(svg.firstChild, "d", SHAPES[tone]);
}
