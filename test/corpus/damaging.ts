import type { Mutation } from './harmless.js';
import { changeCells, changeOne, columnAt, type Role } from './written-export.js';

const numbers: readonly Role[] = ['power', 'length', 'axis', 'acuity'];

/** Ways in which exports get damaged: each must stop, set aside or ask, or leave everything as it was. */
export const damaging: readonly Mutation[] = [
  {
    name: 'one number with the other decimal mark',
    apply: (written, draw) =>
      changeOne(written, draw, ['power', 'acuity'], (cell) =>
        cell.includes(',') ? cell.replace(',', '.') : cell.replace('.', ','),
      ),
  },
  {
    name: 'one number with a thousands mark',
    apply: (written, draw) =>
      changeOne(written, draw, numbers, () => draw.oneOf(['1,234.5', '1.234,5', '1 234', "1'234"])),
  },
  {
    name: 'one number made a date',
    apply: (written, draw) =>
      changeOne(written, draw, numbers, () => draw.oneOf(['06-Sep', '01. Mai', 'Sep-06', '2025-05-01', '6-9'])),
  },
  {
    name: 'one number with an exponent',
    apply: (written, draw) => changeOne(written, draw, numbers, () => draw.oneOf(['1E+05', '-1.25E-01', '2e3'])),
  },
  {
    name: 'one number made an error',
    apply: (written, draw) => changeOne(written, draw, numbers, () => draw.oneOf(['#REF!', '#DIV/0!', '####', '#NV'])),
  },
  {
    name: 'one number with a slip of the finger',
    apply: (written, draw) =>
      changeOne(written, draw, numbers, (cell) =>
        draw.oneOf([
          `${cell}?`,
          `${cell}${cell[0]}x`,
          cell.replace(/\d/, 'O'),
          `${cell}..`,
          `--${cell}`,
          `${cell}-`,
          `${cell} ${cell}`,
        ]),
      ),
  },
  {
    name: 'NUL inside a number',
    apply(written, draw) {
      if (written.encoding.startsWith('utf-16')) return false;
      return changeOne(written, draw, numbers, (cell) => (cell.length > 1 ? `${cell[0]}\0${cell.slice(1)}` : cell));
    },
  },
  {
    name: 'a header that is spelt otherwise',
    apply(written, draw) {
      const at = draw.below(written.header.length);
      written.header[at] = `${written.header[at]}2`;
      return true;
    },
  },
  {
    name: 'a column that is gone',
    apply(written, draw) {
      const at = draw.below(written.header.length);
      for (const row of [written.header, ...written.rows]) row.splice(at, 1);
      return true;
    },
  },
  {
    name: 'a header twice',
    apply(written, draw) {
      const at = draw.below(written.header.length);
      written.header.push(written.header[at] as string);
      for (const row of written.rows) row.push(row[at] ?? '');
      return true;
    },
  },
  {
    name: 'a quotation mark that nobody closed',
    apply(written, draw) {
      if (written.quoteAll) return false;
      const mark = draw.oneOf(written.rows)[0] as string;
      written.text.push((text) => {
        const at = text.indexOf(mark);
        return at > 0 && /[\r\n,;\t|]/.test(text[at - 1] as string) ? `${text.slice(0, at)}"${text.slice(at)}` : text;
      });
      return true;
    },
  },
  {
    name: 'a delimiter too few',
    apply(written, draw) {
      const row = draw.oneOf(written.rows);
      if (row.length < 3) return false;
      const at = draw.below(row.length - 2);
      row.splice(at, 2, `${row[at]}${row[at + 1]}`);
      return true;
    },
  },
  {
    name: 'a delimiter too many',
    apply(written, draw) {
      const row = draw.oneOf(written.rows);
      row.splice(draw.below(3), 0, 'late');
      return true;
    },
  },
  {
    name: 'cells moved to the right',
    apply(written, draw) {
      const at = Math.max(columnAt(written, 'Case'), columnAt(written, 'Side'));
      const row = draw.oneOf(written.rows);
      if (at > 1 || row.length !== written.header.length) return false;
      row.splice(at, 0, '');
      row.pop();
      return true;
    },
  },
  {
    name: 'eyes in words that nobody declared',
    apply: (written, draw) => {
      const share = draw.oneOf([1, 0.1]);
      return changeCells(written, ['eye'], (cell) => (draw.share() < share ? `${cell}x` : cell));
    },
  },
  {
    name: 'one side in a word that nobody declared',
    apply: (written) => changeCells(written, ['eye'], (cell) => (cell === 'R' ? 'D' : cell)),
  },
  {
    name: 'cylinders without their signs',
    apply: (written) =>
      changeCells(written, ['power'], (cell, header) => (/cyl/i.test(header) ? cell.replace(/^[-+\u2212]/, '') : cell)),
  },
  {
    name: 'codes with exponents',
    apply: (written, draw) =>
      changeCells(written, ['code'], (cell) => (draw.share() < 0.3 ? draw.oneOf(['1.2E+11', '#REF!']) : cell)),
  },
  {
    name: 'rows without a code',
    apply: (written, draw) => changeCells(written, ['code'], (cell) => (draw.share() < 0.2 ? '' : cell)),
  },
  {
    name: 'dates that are none',
    apply: (written, draw) =>
      changeCells(written, ['date'], (cell) =>
        draw.share() < 0.2 ? draw.oneOf(['2025-02-30', '45708', '####', '0']) : cell,
      ),
  },
  {
    name: 'another table below',
    apply(written) {
      written.rows.push(written.header.map((name, i) => (i % 2 === 0 ? name : `${name} 2`)));
      written.rows.push(written.header.map(() => '1'));
      return true;
    },
  },
  {
    name: 'the export broke off',
    apply(written, draw) {
      const keep = 1 + draw.below(written.header.length - 1);
      const last = written.rows.at(-1) as string[];
      last.splice(Math.min(keep, last.length - 1));
      return true;
    },
  },
  {
    name: 'a byte of another encoding in a number',
    apply(written, draw) {
      if (written.encoding !== 'utf-8' || written.quoteAll) return false;
      const at = draw.share();
      written.bytes.push((bytes) => {
        const digits = [...bytes.keys()].filter(
          (i) => i > 200 && (bytes[i] as number) >= 48 && (bytes[i] as number) < 58,
        );
        const spot = digits[Math.floor(at * digits.length)];
        return spot === undefined ? bytes : bytes.with(spot, 0xe9);
      });
      return true;
    },
  },
];
