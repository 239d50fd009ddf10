import { changeCells, columnAt, type Draw, type Role, type WrittenExport } from './written-export.js';

/** A way to write an export otherwise. @returns false where the export gives no occasion for it */
export interface Mutation {
  name: string;
  apply(written: WrittenExport, draw: Draw): boolean;
}

const numbers: readonly Role[] = ['power', 'length', 'axis', 'acuity'];
const eyes: Readonly<Record<string, readonly string[]>> = {
  R: ['R', 'OD', 'O.D.', 'right', 'Rechts', 're', ' R ', 'Droit'],
  L: ['L', 'OS', 'O.S.', 'left', 'links', 'LE', 'L\u00a0', 'Gauche'],
};
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const dateForms: readonly ((year: string, month: string, day: string) => string)[] = [
  (y, m, d) => `${d}.${m}.${y}`,
  (y, m, d) => `${d}/${m}/${y}`,
  (y, m, d) => `${m}/${d}/${y}`,
  (y, m, d) => `${Number(d)}-${months[Number(m) - 1]}-${y}`,
  (y, m, d) => `${y}${m}${d}`,
  (y, m, d) => `${y}-${m}-${d} 08:15`,
  (y, m, d) => `${y}-${m}-${d}T00:00:00`,
];

/** Every character of a number stays a number with either mark. */
const swapMark = (cell: string): string => cell.replace(/^([^\d.,]*\d*)\.(\d+)/, '$1,$2');

/** Writes the same number with other zeros and signs. */
function otherZeros(cell: string, draw: Draw): string {
  const found = /^([-+]?)(\d+)\.(\d+)$/.exec(cell);
  if (!found) return cell;
  const [, sign = '', whole = '', part = ''] = found;
  const shorter = part.replace(/0+$/, '');
  return draw.oneOf([
    cell,
    `${sign}${whole}.${part}0`,
    shorter === '' ? sign + whole : `${sign}${whole}.${shorter}`,
    whole === '0' ? `${sign}.${part}` : cell,
    sign === '' && !/^0*$/.test(whole + part) ? `+${cell}` : cell,
  ]);
}

/** Sphere, cylinder and axis in the other notation; the cylinder of zero has none. */
function transposeRow(written: WrittenExport, row: string[]): boolean {
  const at = ['Sph', 'Cyl', 'Axis'].map((name) => columnAt(written, name)) as [number, number, number];
  const cells = at.map((i) => row[i] ?? '');
  if (!cells.every((cell) => /^[-+]?\d+(?:\.\d+)?$/.test(cell))) return false;
  const [sphere, cylinder, axis] = cells.map(Number) as [number, number, number];
  if (cylinder === 0) return false;
  const signed = (value: number): string => (value > 0 ? '+' : '') + value.toFixed(2);
  row[at[0]] = signed(sphere + cylinder);
  row[at[1]] = signed(-cylinder);
  row[at[2]] = String(axis > 90 ? axis - 90 : axis + 90);
  return true;
}

/** Ways of writing that change nothing of what is said. */
export const harmless: readonly Mutation[] = [
  {
    name: 'another delimiter',
    apply(written, draw) {
      written.delimiter = draw.oneOf([';', '\t', '|']);
      return true;
    },
  },
  { name: 'a decimal comma', apply: (written) => changeCells(written, numbers, swapMark) },
  {
    name: 'another encoding',
    apply(written, draw) {
      written.encoding = draw.oneOf(['utf-16le', 'utf-16be', 'windows-1252'] as const);
      written.mark = written.encoding !== 'windows-1252' && draw.share() < 0.7;
      return true;
    },
  },
  {
    name: 'a byte order mark',
    apply(written) {
      if (written.encoding === 'windows-1252') return false;
      written.mark = true;
      return true;
    },
  },
  {
    name: 'other line ends',
    apply(written, draw) {
      written.ends = draw.oneOf([['\r\n'], ['\r'], ['\r\n', '\n'], ['\n', '\r', '\r\n']]);
      return true;
    },
  },
  {
    name: 'no last line end',
    apply(written) {
      written.text.push((text) => text.replace(/[\r\n]+$/, ''));
      return true;
    },
  },
  {
    name: 'quotation marks round every cell',
    apply(written) {
      written.quoteAll = true;
      return true;
    },
  },
  {
    name: 'headers in other letters and blanks',
    apply(written, draw) {
      written.header = written.header.map((name) => draw.oneOf([name.toUpperCase(), name.toLowerCase(), ` ${name}  `]));
      return true;
    },
  },
  {
    name: 'columns in another order',
    apply(written, draw) {
      const order = draw.shuffled(written.header.map((_, i) => i));
      written.header = order.map((i) => written.header[i] as string);
      written.rows = written.rows.map((row) => order.map((i) => row[i] ?? ''));
      return true;
    },
  },
  {
    name: 'columns that nobody asked for',
    apply(written, draw) {
      const at = draw.below(written.header.length + 1);
      const remark = ['', 'fine', 'two\nlines', 'a, b; c | d', 'says "x"', '5" lens', 'Größe 3'];
      written.header.splice(at, 0, 'Größe, Bemerkung');
      for (const row of written.rows) row.splice(at, 0, draw.oneOf(remark));
      return true;
    },
  },
  {
    name: 'rows in another order',
    apply(written, draw) {
      written.rows = draw.shuffled(written.rows);
      return true;
    },
  },
  {
    name: 'rows twice',
    apply(written, draw) {
      for (let times = 1 + draw.below(3); times > 0; times--) {
        const row = draw.oneOf(written.rows);
        written.rows.splice(draw.below(written.rows.length + 1), 0, [...row]);
      }
      return true;
    },
  },
  {
    name: 'blank rows',
    apply(written, draw) {
      for (let times = 1 + draw.below(3); times > 0; times--) {
        const blank = draw.oneOf([[''], written.header.map(() => ''), written.header.map(() => ' ')]);
        written.rows.splice(draw.below(written.rows.length + 1), 0, [...blank]);
      }
      return true;
    },
  },
  {
    name: 'blanks round cells',
    apply: (written, draw) =>
      changeCells(written, ['code', 'eye', 'date', 'word', ...numbers], (cell) =>
        draw.oneOf([cell, ` ${cell}`, `${cell} `, `\u00a0${cell}`]),
      ),
  },
  {
    name: 'another minus sign',
    apply: (written) => changeCells(written, numbers, (cell) => cell.replace(/^-/, '\u2212')),
  },
  {
    name: 'other zeros and plus signs',
    apply: (written, draw) => changeCells(written, ['power'], (cell) => otherZeros(cell, draw)),
  },
  {
    name: 'units behind numbers',
    apply: (written) =>
      changeCells(written, ['power', 'length', 'axis'], (cell, header) => {
        if (!/\d$/.test(cell)) return cell;
        if (/^(?:axis|a1|a2)$/i.test(header.trim())) return `${cell}°`;
        return `${cell} ${/length/i.test(header) ? 'mm' : 'D'}`;
      }),
  },
  {
    name: 'words for no power, and axis 0',
    apply(written) {
      const sphere = changeCells(written, ['power'], (cell, header) => {
        if (/sph/i.test(header)) return /^0[.,]00$/.test(cell) ? 'plano' : cell;
        return /cyl/i.test(header) && /^0[.,]00$/.test(cell) ? 'DS' : cell;
      });
      return changeCells(written, ['axis'], (cell) => (cell === '180' ? '0' : cell)) || sphere;
    },
  },
  {
    name: 'words for no value',
    apply: (written, draw) =>
      changeCells(written, numbers, (cell) => (cell === '' ? draw.oneOf(['n/a', '-', 'NA', '#N/A', '--', '?']) : cell)),
  },
  {
    name: 'cylinders in the other notation',
    apply(written, draw) {
      const share = draw.oneOf([1, 0.5]);
      return written.rows.filter((row) => draw.share() < share && transposeRow(written, row)).length > 0;
    },
  },
  {
    name: 'dates in another order',
    apply(written, draw) {
      const form = draw.oneOf(dateForms);
      return changeCells(written, ['date'], (cell) => {
        const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(cell) ?? [];
        return year && month && day ? form(year, month, day) : cell;
      });
    },
  },
  {
    name: 'other words for the eyes',
    apply: (written, draw) => changeCells(written, ['eye'], (cell) => (eyes[cell] ? draw.oneOf(eyes[cell]) : cell)),
  },
  {
    name: 'other words for low vision',
    apply: (written, draw) =>
      changeCells(written, ['acuity'], (cell) =>
        cell === 'CF' ? draw.oneOf(['cf', 'C.F.', 'CF 1m', 'Counting fingers', 'FZ']) : cell,
      ),
  },
  {
    name: 'a summary line',
    apply(written, draw) {
      written.below.push(draw.oneOf(['Total', 'Mean', 'n = 12', 'Summe:']) + written.delimiter.repeat(draw.below(4)));
      return true;
    },
  },
  {
    name: 'the header once more',
    apply(written, draw) {
      written.rows.splice(1 + draw.below(written.rows.length - 1), 0, [...written.header]);
      return true;
    },
  },
  {
    name: 'a row of units',
    apply(written) {
      const units: Readonly<Partial<Record<Role, string>>> = { power: '(D)', axis: '°', length: 'mm' };
      const row = written.header.map((name) => (/^(?:axis|a1|a2)$/i.test(name.trim()) ? units.axis : undefined) ?? '');
      if (row.every((unit) => unit === '')) return false;
      written.rows.unshift(row);
      return true;
    },
  },
  {
    name: 'a separator line',
    apply(written) {
      written.text.push((text) => `sep=${written.delimiter}\r\n${text}`);
      return true;
    },
  },
  {
    name: 'cells that pass for text',
    apply: (written, draw) => {
      const wrap = draw.oneOf([(cell: string) => `="${cell}"`, (cell: string) => `'${cell}`]);
      return changeCells(written, ['code', 'date', ...numbers], (cell) => (cell === '' ? cell : wrap(cell)));
    },
  },
  {
    name: 'a delimiter behind every line',
    apply(written) {
      written.header.push('');
      for (const row of written.rows) row.push('');
      return true;
    },
  },
  {
    name: 'NUL behind cells',
    apply(written, draw) {
      if (written.encoding.startsWith('utf-16')) return false;
      return changeCells(written, ['code', ...numbers], (cell) => (draw.share() < 0.2 ? `${cell}\0\0` : cell));
    },
  },
];
