// Days, months and stretches of time, and how figures are written.

/** Stands between the thousands of a figure: a thin space that no line ends at. */
export const THOUSANDS = "\u202f";

export const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

export const dayAndClock = ({ day, date, month, time }) => `${day} ${date} ${month}, ${time}`;
export const dayOnly = ({ date, month }) => `${date} ${month}`;

// A figure and its unit stay on one line.
export const seconds = (count) => `${count}\u00a0s`;
export const minutes = (count) => `${count}\u00a0min`;
export const hours = (count) => `${count}\u00a0h`;
export const days = (count) => `${count}\u00a0d`;

/** What a flow costs the pump. */
export const wattsPer = (flow) => `W per ${flow}`;
