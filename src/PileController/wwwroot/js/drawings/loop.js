import { h, s, put, mark } from "../dom.js";
import { full } from "../units.js";
import { reading, value } from "../judge.js";
import * as say from "../words/drawings.js";

const label = (x, y, anchor = "middle", kind = "") => s("text", { x, y, "text-anchor": anchor, class: kind });

/** Loop and house: supply above, return below, what runs and how far. */
export function loopDrawing() {
  const supply = label(160, 34, "middle", "strong");
  const valve = label(160, 84);
  const flow = label(160, 130, "middle", "strong");
  const pump = label(160, 174);
  const back = label(160, 232, "middle", "strong");
  const air = label(160, 262, "middle", "soft");
  const house = label(313, 116, "middle", "strong");
  const set = label(313, 136, "middle", "soft");
  const least = label(313, 153, "middle", "soft");
  const tank = label(313, 178, "middle", "soft");
  const warm = s("path", { class: "pipe warm", d: "M74 52 H251" });
  const cool = s("path", { class: "pipe cool", d: "M251 200 H74" });
  const pumpBody = s("circle", { class: "gear", cx: 160, cy: 200, r: 14 });
  const pumpBlade = s("path", { class: "gear", d: "M152 200 l12 -7 v14 z" });
  const valveBody = s("path", { class: "gear", d: "M147 43 L173 61 V43 L147 61 Z" });
  const marks = [
    s("path", { class: "flow-mark", d: "M104 47 l6 5 -6 5 M206 47 l6 5 -6 5" }),
    s("path", { class: "flow-mark", d: "M110 195 l-6 5 6 5 M212 195 l-6 5 6 5" }),
  ];

  const svg = s("svg", { class: "drawing loop", viewBox: "0 0 380 272", role: "img" },
    s("path", { class: "box", d: "M6 222 V60 Q6 30 40 30 Q74 30 74 60 V222 Z" }), s("text", { x: 40, y: 132, "text-anchor": "middle", class: "strong" }, say.heap),
    s("path", { class: "glass", d: "M240 222 V84 L308 36 L376 84 V222 Z" }), s("text", { x: 313, y: 90, "text-anchor": "middle", class: "soft" }, say.house),
    s("path", { class: "pipe idle", d: "M251 49.5 V202.5" }),
    warm, cool, ...marks, valveBody, pumpBody, pumpBlade,
    supply, back, flow, pump, valve, house, set, least, tank, air);
  const node = h("figure", {}, svg);

  function update(now) {
    const running = (now.flowLitresPerMinute ?? 0) > 0.1;
    const told = now.outputs;
    const at = (name, channel) => {
      const one = reading(now, channel);
      return one === undefined ? say.noProbe(name) : one.value === null ? say.notRead(name, one.qualityText) : `${name} ${full("temperature", one.value)}`;
    };
    put(supply, at(say.supply, "supply"));
    put(back, at(say.back, "return"));
    put(flow, running ? say.flow(full("flow", now.flowLitresPerMinute)) : say.noFlow);
    put(pump, told.pumpDuty > 0 ? say.pump(full("share", told.pumpDuty), full("electric", value(now, "pumpPower"))) : say.pumpOff);
    put(valve, told.valveOpening > 0 ? say.valveOpen(full("share", told.valveOpening)) : say.valveShut);
    put(house, say.air(full("temperature", value(now, "house"))));
    put(set, say.setPoint(full("temperature", now.houseSetPointC)));
    put(least, say.minimum(full("temperature", now.houseMinimumC)));
    put(tank, say.tank(full("temperature", value(now, "tank"))));
    put(air, say.blower(told.blowerDuty > 0 ? full("share", told.blowerDuty) : null, full("temperature", value(now, "ductAir"))));
    mark(warm, "class", running ? "pipe warm" : "pipe idle");
    mark(cool, "class", running ? "pipe cool" : "pipe idle");
    marks.forEach((one) => mark(one, "visibility", running ? "visible" : "hidden"));
    mark(pumpBody, "class", told.pumpDuty > 0 ? "gear-on" : "gear");
    mark(valveBody, "class", told.valveOpening > 0 ? "gear-on" : "gear");
    mark(svg, "aria-label", [supply, back, flow, pump, valve, house, air].map((text) => text.textContent).join(". "));
  }

  return { node, set: update };
}
