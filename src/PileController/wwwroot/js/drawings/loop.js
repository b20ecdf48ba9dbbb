import { h, s, put, mark } from "../dom.js";
import { bare, full } from "../units.js";
import { reading, value } from "../judge.js";

const label = (x, y, anchor = "middle", kind = "") => s("text", { x, y, "text-anchor": anchor, class: kind });

/** Loop and house: supply above, return below, what runs and how far. */
export function loopDrawing() {
  const supply = label(170, 34, "middle", "strong");
  const back = label(170, 226, "middle", "strong");
  const flow = label(170, 130, "middle", "strong");
  const pump = label(128, 194);
  const valve = label(128, 88);
  const house = label(296, 104, "middle", "strong");
  const set = label(296, 124, "middle", "soft");
  const least = label(296, 141, "middle", "soft");
  const tank = label(296, 163, "middle", "soft");
  const air = label(170, 262, "middle", "soft");
  const warm = s("path", { class: "pipe warm", d: "M84 50 H250" });
  const cool = s("path", { class: "pipe cool", d: "M250 206 H84" });
  const pumpBody = s("circle", { class: "gear", cx: 206, cy: 206, r: 15 });
  const pumpBlade = s("path", { class: "gear", d: "M198 206 l12 -8 v16 z" });
  const valveBody = s("path", { class: "gear", d: "M190 40 L220 60 V40 L190 60 Z" });
  const marks = [s("path", { class: "flow-mark", d: "M112 45 l6 5 -6 5 M142 45 l6 5 -6 5" }), s("path", { class: "flow-mark", d: "M156 201 l-6 5 6 5 M126 201 l-6 5 6 5" })];

  const svg = s("svg", { class: "drawing", viewBox: "0 0 360 270", role: "img" },
    s("path", { class: "box", d: "M6 226 Q6 30 45 30 Q84 30 84 226 Z" }), s("text", { x: 45, y: 140, "text-anchor": "middle", class: "strong" }, "Heap"),
    s("path", { class: "glass", d: "M236 228 V84 L296 36 L356 84 V228 Z" }), s("text", { x: 296, y: 78, "text-anchor": "middle", class: "soft" }, "House"),
    s("path", { class: "pipe idle", d: "M250 50 V206" }),
    warm, cool, ...marks, valveBody, pumpBody, pumpBlade,
    supply, back, flow, pump, valve, house, set, least, tank, air);
  const node = h("figure", {}, svg);

  function update(now) {
    const running = (now.flowLitresPerMinute ?? 0) > 0.1;
    const told = now.outputs;
    const say = (name, channel) => {
      const one = reading(now, channel);
      return one === undefined ? `${name}: no probe` : one.value === null ? `${name}: ${one.qualityText}` : `${name} ${full("temperature", one.value)}`;
    };
    put(supply, say("Supply", "supply"));
    put(back, say("Return", "return"));
    put(flow, running ? `Flow ${full("flow", now.flowLitresPerMinute)}` : "No flow");
    put(pump, told.pumpDuty > 0 ? `Pump ${full("share", told.pumpDuty)}, ${full("electric", value(now, "pumpPower"))}` : "Pump off");
    put(valve, `Valve ${told.valveOpening > 0 ? `open ${full("share", told.valveOpening)}` : "shut"}`);
    put(house, `Air ${full("temperature", value(now, "house"))}`);
    put(set, `Set point ${bare("temperature", now.houseSetPointC)}`);
    put(least, `Minimum ${bare("temperature", now.houseMinimumC)}`);
    put(tank, `Tank ${bare("temperature", value(now, "tank"))}`);
    put(air, `Blower ${told.blowerDuty > 0 ? full("share", told.blowerDuty) : "off"}, duct air ${full("temperature", value(now, "ductAir"))}`);
    mark(warm, "class", running ? "pipe warm" : "pipe idle");
    mark(cool, "class", running ? "pipe cool" : "pipe idle");
    marks.forEach((one) => mark(one, "visibility", running ? "visible" : "hidden"));
    mark(pumpBody, "class", told.pumpDuty > 0 ? "gear-on" : "gear");
    mark(valveBody, "class", told.valveOpening > 0 ? "gear-on" : "gear");
    mark(svg, "aria-label", [supply, back, flow, pump, valve, house, air].map((text) => text.textContent).join(". "));
  }

  return { node, set: update };
}
