import { h } from "../dom.js";
import * as say from "../words/frame.js";

/** The views that have no place of their own at the foot of a small screen. */
export const moreView = (routes) => ({
  nodes: [
    h("div", { class: "view-head" }, h("h1", {}, say.NAMES.more)),
    h("nav", { class: "more", "aria-label": say.moreViews },
      ...routes.map((route) => h("a", { href: `#${route.id}` }, h("b", {}, route.name), h("span", {}, route.about)))),
  ],
});
