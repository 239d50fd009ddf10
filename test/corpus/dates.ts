import { type Peculiar, usualBut, withCells, written } from './corpus.js';

/** The usual rows with their dates written in another way. */
const dated = (write: (year: string, month: string, day: string) => string): string =>
  written(',', (cell, row, column) => {
    const [year = '', month = '', day = ''] = cell.split('-');
    return row >= 0 && column === 2 ? write(year, month, day) : cell;
  });

/** Dates, of which no digit may be told. */
export const dateCases: readonly Peculiar[] = [
  {
    name: 'dates-day-first',
    peculiarity: 'day before month, with points',
    bytes: dated((y, m, d) => `${d}.${m}.${y}`),
  },
  { name: 'dates-month-first', peculiarity: 'month before day', bytes: dated((y, m, d) => `${m}/${d}/${y}`) },
  {
    name: 'dates-two-digits',
    peculiarity: 'years of two digits',
    bytes: dated((y, m, d) => `${d}/${m}/${y.slice(2)}`),
  },
  { name: 'dates-compact', peculiarity: 'eight digits', bytes: dated((y, m, d) => y + m + d) },
  { name: 'dates-named', peculiarity: 'the name of the month', bytes: dated((y, _, d) => `${d} Feb ${y}`) },
  {
    name: 'dates-german',
    peculiarity: 'the name of the month in German',
    bytes: dated((y, _, d) => `${d}. Februar ${y}`),
  },
  {
    name: 'dates-french',
    peculiarity: 'the name of the month in French',
    bytes: dated((y, _, d) => `${d} févr. ${y}`),
  },
  { name: 'dates-timed', peculiarity: 'a time of day behind', bytes: dated((y, m, d) => `${y}-${m}-${d} 08:30:00`) },
  {
    name: 'date-impossible',
    peculiarity: 'a day that the calendar has not',
    bytes: withCells({ '2 Date': '2025-02-30' }),
    reads: usualBut({ 'A1 right': undefined }),
    finds: [{ rule: 'date-unreadable', severity: 'set aside', row: 2, written: undefined }],
  },
  {
    name: 'date-serial',
    peculiarity: 'one date as a count of days',
    // 45708 days from the first day of 1900, as spreadsheets count them, is 2025-02-20.
    bytes: withCells({ '2 Date': '45708' }),
    reads: usualBut({ 'A1 right': undefined }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 2, detail: 5, written: undefined }],
  },
  {
    name: 'dates-serial',
    peculiarity: 'all dates as counts of days',
    bytes: withCells({ '2 Date': '45708', '3 Date': '45709', '4 Date': '45712.5', '5 Date': '45713' }),
    reads: 'nothing',
    finds: [{ rule: 'dates-serial', row: 2, column: 'Date', detail: 4, written: undefined }],
  },
  {
    name: 'dates-open',
    peculiarity: 'every date may be read in two ways',
    bytes: withCells({
      '2 Date': '03/02/2025',
      '3 Date': '04/02/2025',
      '4 Date': '05/02/2025',
      '5 Date': '06/02/2025',
    }),
    reads: 'nothing',
    finds: [{ rule: 'date-order-open', row: 2, written: undefined }],
    lines: ['day-first', 'month-first'].map((order) => `reading: { date_order: ${order} }`),
  },
  {
    name: 'dates-two-digit-years',
    peculiarity: 'the year has two digits and may stand in front',
    bytes: withCells({ '2 Date': '02-03-10', '3 Date': '02-04-10', '4 Date': '03-05-11', '5 Date': '03-06-11' }),
    reads: 'nothing',
    finds: [{ rule: 'date-order-open', row: 2, written: undefined }],
    lines: ['day-first', 'month-first', 'year-first'].map((order) => `reading: { date_order: ${order} }`),
  },
  {
    name: 'dates-mixed',
    peculiarity: 'two orders in one file',
    bytes: withCells({ '2 Date': '20/02/2025', '3 Date': '02/21/2025' }),
    reads: 'nothing',
    finds: [{ rule: 'date-order-mixed', row: 3, detail: 2, written: undefined }],
    lines: ['day-first', 'month-first'].map((order) => `reading: { date_order: ${order} }`),
  },
];
