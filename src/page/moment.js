// Moments as the program writes them, by the clock on the wall: 2027-04-05T05:00.

const two = (n) => String(n).padStart(2, "0");
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

export const written = (date) =>
  `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;

export const now = () => written(new Date());

export const dayOf = (moment) => moment.slice(0, 10);

/** So many days later, at the same hour. */
export function later(moment, days) {
  const date = new Date(`${moment}:00`);
  date.setDate(date.getDate() + days);
  return written(date);
}

const noon = (moment) => new Date(`${dayOf(moment)}T12:00:00`); // no clock is put forward or back over noon

/** "5 Apr" */
export const dateWords = (moment) => `${noon(moment).getDate()} ${MONTHS[noon(moment).getMonth()]}`;

/** "Mon 5 Apr" */
export const dayWords = (moment) => `${DAYS[noon(moment).getDay()]} ${dateWords(moment)}`;

/** "6:30 am" in US measures, "06:30" in others. */
export function hourWords(moment, units) {
  const [hour, minute] = moment.slice(11, 16).split(":").map(Number);
  if (units !== "us") return `${two(hour)}:${two(minute)}`;
  return `${hour % 12 || 12}:${two(minute)} ${hour < 12 ? "am" : "pm"}`;
}

/** "6:30 am, today"; "Tue 6 Apr, 6:30 am" of another day. */
export function choreWords(moment, today, units) {
  const hour = hourWords(moment, units);
  return dayOf(moment) === dayOf(today) ? `${hour}, today` : `${dayWords(moment)}, ${hour}`;
}
