// Words of the commissioning view.

export const SOUNDNESS = { sound: "Sound", doubtful: "Doubtful", failed: "Failed" };

export const TONES = { sound: "good", doubtful: "warn", failed: "bad" };
