// Commissioning: the tests of a rig, and the sheet.

export const title = "Commission";
export const about = "The controller leads, you do the work. Nothing moves before its button says so; interlocks outrank every test, and what is held ends by itself.";
export const yourName = "Your name, for the record and the sheet";
/** The fields by the names they have in a refusal. */
export const FIELDS = { who: "Your name", figure: "Your answer", text: "Your answer" };

export const tests = "Tests, in their order";
export const nothingMoves = "Nothing moves.";
export const heldMeanwhile = (moving) => `Held by hand meanwhile, interlocks above it: ${moving.join("; ")}.`;
export const begin = (test) => `Begin: ${test.toLowerCase()}`;
export const beginMoving = (test) => `Begin: ${test.toLowerCase()}, it moves the rig`;
export const inTheIce = "Which probes are in the ice";

export const now = "Now";
export const step = (test, number, count) => `${test}: step ${number} of ${count}`;
export const asked = (question, unit) => (unit === "" ? question : `${question} (${unit})`);
/** The same question where gallons are read. */
export const inGallons = (question) => question.replaceAll("litres", "gallons").replaceAll("Litres", "Gallons");
export const yes = "Yes";
export const no = "No";
export const answer = "Answer and go on";
export const goOn = "Go on";
export const giveUp = "Give up";
export const waits = "It waits for you.";
export const elapsed = (span) => `${span}. It goes on by itself.`;
export const elapsedOf = (span, most) => `${span} of at most ${most}. It goes on by itself.`;

export const SOUNDNESS = { sound: "Sound", doubtful: "Doubtful", failed: "Failed" };
export const found = (test) => `${test}: what was found`;
export const uncertain = (figure, spread) => `${figure} ± ${spread} (k = 2)`;
export const pumpFile = "The file for calc pump";

export const trySetting = "Try in the settings";
export const trySettingOf = (path) => `Try ${path} in the settings`;
export const byFile = "to be written into the settings file";
export const noChange = "Nothing would change: the settings say so already.";
export const change = (path, was, is) => `${path}: ${was} becomes ${is}.`;
export const stops = "The controller stops for a second or two with its outputs safe, and goes on with it. Keep the result on the sheet first.";
export const takeOver = "Take it over";
export const written = "Written. The controller is starting with it.";

export const keep = "Keep on the sheet";
export const kept = "Kept on the sheet.";
export const done = "Done";
export const putAway = "Put away";
export const sheet = "The sheet";
export const sheetToPrint = "The sheet, to print";
export const backToRig = "Back to the rig";
export const nothingKept = "Nothing has been kept yet.";
export const keptBy = (moment, who) => `, ${moment}, ${who}`;
export const outcome = (subject, verdict) => `${subject}: ${verdict.toLowerCase()}`;
