import { h, put } from "../dom.js";
import { full } from "../units.js";
import * as say from "../words/planParts.js";
import { folded, table } from "./parts.js";

const worded = (kind) => say.HOUSE_CHANGES[kind] ?? kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replace(/^./, (letter) => letter.toUpperCase());
const less = (from, to) => (from > 0 ? `−${Math.round((100 * (from - to)) / from)}\u00a0%`.replace("−-", "+").replace("−0", "0") : "–");

/** The house on its worst night, and what changes to it would save. */
export function houseCard() {
  const hint = h("p", { class: "hint" });
  const rows = table(say.houseTable);
  const node = folded(say.house, "w6", hint, rows.node);
  return {
    node,
    set({ sketch: { house, coil } }) {
      const share = house.designLossWatts > 0 ? Math.round((100 * coil.meanDrawnWatts) / house.designLossWatts) : null;
      put(hint, say.houseLoses(full("temperature", house.designOutsideC), full("temperature", house.insideC), full("power", house.designLossWatts), share, full("degreeHours", house.degreeHours)));
      rows.set(say.HOUSE_COLUMNS, [
        [say.asItIs, full("power", house.designLossWatts), full("seasonEnergy", house.seasonLossKWh), "–"],
        ...house.whatIfs.map((one) => [worded(one.kind), full("power", one.designLossWatts), full("seasonEnergy", one.seasonLossKWh), less(house.seasonLossKWh, one.seasonLossKWh)]),
      ]);
    },
  };
}
