import { h, put } from "../dom.js";
import { full } from "../units.js";
import { folded, table } from "./parts.js";

const NAMES = {
  curtain: "Close night curtain",
  secondSkin: "Second skin",
  thermalMass: "More thermal mass",
  draughts: "Half the leaks",
  lowerSetPoint: "Lower set point",
};

const worded = (kind) => NAMES[kind] ?? kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replace(/^./, (letter) => letter.toUpperCase());
const less = (from, to) => (from > 0 ? `−${Math.round((100 * (from - to)) / from)}\u00a0%`.replace("−-", "+").replace("−0", "0") : "–");

/** The house on its worst night, and what changes to it would save. */
export function houseCard() {
  const hint = h("p", { class: "hint" });
  const rows = table("What changes to the house would save");
  const node = folded("House on its worst night", "w6", hint, rows.node);
  return {
    node,
    set({ sketch: { house, coil } }) {
      const share = house.designLossWatts > 0 ? Math.round((100 * coil.meanDrawnWatts) / house.designLossWatts) : null;
      put(hint, `At ${full("temperature", house.designOutsideC)} outside and ${full("temperature", house.insideC)} within the house loses ${full("power", house.designLossWatts)}${share === null ? "" : `; the heap's mean is ${share}\u00a0% of that`}. The season has ${full("degreeHours", house.degreeHours)} of cold.`);
      rows.set(["House", "Worst night", "Season", "Saves"], [
        ["As it is", full("power", house.designLossWatts), full("seasonEnergy", house.seasonLossKWh), "–"],
        ...house.whatIfs.map((one) => [worded(one.kind), full("power", one.designLossWatts), full("seasonEnergy", one.seasonLossKWh), less(house.seasonLossKWh, one.seasonLossKWh)]),
      ]);
    },
  };
}
