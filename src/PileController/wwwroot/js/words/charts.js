// What stands in and round a chart.

export const nothing = "Nothing recorded in this time";
export const noData = "no data";
export const csv = "CSV";
export const asCsv = (title) => `${title} as CSV`;
export const table = "Table";
export const tableOf = (title) => `${title}, table`;
export const inUnit = (label, unit) => `${label}, ${unit}`;

export const cursorInTime = (title) => `${title}: cursor in time`;
export const cursorInWeeks = (title) => `${title}: cursor in weeks`;
export const newest = (moment) => `Newest: ${moment}`;
export const at = (moment) => `At: ${moment}`;
export const atItsEnd = (week) => `At its end: ${week}`;
export const during = (week) => `In: ${week}`;
export const decidedThen = (text) => `. ${text}`;
export const told = (moment, figures) => `${moment}: ${figures}`;

export const time = "Time";
export const week = "Week";
export const weekOf = (number) => `week ${number}`;
