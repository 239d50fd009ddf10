/** Days are counted from 1970-01-01. No clock is read anywhere. */
const MILLISECONDS = 86_400_000;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Day number of `yyyy-mm-dd`. */
export function dayOf(text: string): number {
  return Date.parse(`${text}T00:00:00Z`) / MILLISECONDS;
}

/** `yyyy-mm-dd`. */
export function isoDate(day: number): string {
  return new Date(day * MILLISECONDS).toISOString().slice(0, 10);
}

/** `dd.mm.yyyy`, or with another mark between. */
export function dayFirst(day: number, mark: string): string {
  return isoDate(day).split('-').reverse().join(mark);
}

/** `12 Mar 2024`. */
export function monthName(day: number): string {
  const [year, month, date] = isoDate(day).split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1]} ${year}`;
}

/** The same day, or the next Monday where it falls on a weekend: clinics and theatres are closed. */
export function weekday(day: number): number {
  const sinceThursday = ((day % 7) + 7) % 7; // 1970-01-01 was a Thursday: Saturday is 2, Sunday 3
  if (sinceThursday === 2) return day + 2;
  return sinceThursday === 3 ? day + 1 : day;
}
