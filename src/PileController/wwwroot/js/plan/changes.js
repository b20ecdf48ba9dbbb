// What the grower tries otherwise than it is built. Null stands for "as built".

/** Nothing tried. */
export const NOTHING = { turns: null, radiusM: null, heapRadiusM: null, coverM: null };

/** Turns that the pipe of a heap makes. */
export const turnsOf = (heap) => (heap.coilRadiusM > 0 ? heap.coilLengthM / (2 * Math.PI * heap.coilRadiusM) : 0);

// A changed radius keeps the turns and takes as much pipe as they need.
const turnsTried = (built, tried) => tried.turns ?? (tried.radiusM === null ? null : turnsOf(built));

/** The heap as tried. */
export function apply(built, tried) {
  const coilRadiusM = tried.radiusM ?? built.coilRadiusM;
  const turns = turnsTried(built, tried);
  return {
    ...built,
    radiusM: tried.heapRadiusM ?? built.radiusM,
    coverM: tried.coverM ?? built.coverM,
    coilRadiusM,
    coilLengthM: turns === null ? built.coilLengthM : turns * 2 * Math.PI * coilRadiusM,
  };
}

/** The same as fields of a call. */
export const fieldsOf = (built, tried) => ({ ...tried, turns: turnsTried(built, tried) });
