import { h } from "../dom.js";

/** The views that have no place of their own at the foot of a small screen. */
export const moreView = (routes) => ({
  nodes: [
    h("div", { class: "view-head" }, h("h1", {}, "More")),
    h("nav", { class: "more", "aria-label": "More views" },
      ...routes.map((route) => h("a", { href: `#${route.id}` }, h("b", {}, route.name), h("span", {}, route.about)))),
  ],
});
