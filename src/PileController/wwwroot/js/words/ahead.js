// Many seasons ahead, on the plan.

export const title = "Seasons ahead";
export const about = "Runs whole winters of the heap as it is built, each with a heap and a house drawn a little otherwise and the real controller at work. It takes seconds a season on a desk machine and longer on a small board, and gives way to the ticks.";
export const howMany = "How many seasons";
export const start = "Run the seasons";
export const stop = "Give it up";
export const done = "Seasons done";
export const running = (seasons) => `Running ${seasons} seasons…`;
export const ended = (seasons) => `${seasons} seasons are done.`;
export const failed = (fault) => `The run ended: ${fault}`;

export const cameTo = "What the seasons came to";
export const COLUMNS = ["Figure", "P10", "P50", "P90"];
export const ROWS = {
  drawn: "Heat drawn, mean",
  drawnAll: "Heat drawn, all season",
  useful: "Of use to the house",
  coldest: "Coldest in the house",
  below: "Hours below its minimum",
  lights: "Lights on day",
  fades: "Past half of its best on day",
  waterLost: "Water it loses",
};
export const saved = (fuel, money) => `Saved a season against ${fuel}, ${money}`;
export const payback = "Seasons until what was bought is paid";
export const never = "never";
export const notWithin = "not";
export const holds = (share) => `The house holds its minimum all winter in ${share} of the seasons. A tenth of the seasons lie below P10, half below P50, nine tenths below P90.`;
