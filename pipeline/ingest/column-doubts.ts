import type { FindingParts } from '../../src/findings/builder.js';
import { headerUnit, type StatedUnit, statedUnit } from '../../src/intake/header-unit.js';
import { parseLaterality } from '../../src/intake/laterality.js';
import { leftoverOf } from '../../src/intake/leftover.js';
import { parseRefraction } from '../../src/intake/refraction-cell.js';
import { parseCylinder } from '../../src/intake/refraction-field.js';
import { plainSigns } from '../../src/intake/signs.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { Reading } from '../../src/records/plan.js';
import type { ReadAs } from '../../src/records/raw-table.js';
import type { TableRead } from './read-table.js';
import { cellsWith, stopAt, type Used, usedColumns } from './used-columns.js';

/** Units of one quantity: a header that states another one of these contradicts how the column is read. */
const quantities: readonly (readonly StatedUnit[])[] = [
  ['D', 'mm'],
  ['m', 'cm', 'mm', 'µm'],
  ['deg', 'clock'],
  ['s', 'min'],
  ['years', 'months', 'days'],
  ['decimal', 'logmar', 'letters'],
];

/** The unit in which a column is read; undefined where the field has none, or no scale is named yet. */
function unitRead({ field, unit, numbers }: Used['wanted']): string | undefined {
  return numbers ?? unit ?? (fieldNamed(field ?? '')?.unit || undefined);
}

/** A header, or the row below it, that states another unit than the one in which the column is read. */
function unitDoubts(columns: readonly Used[]): readonly FindingParts[] {
  return columns.flatMap(({ header, unit, wanted, words }) => {
    const stated = headerUnit(header) ?? statedUnit(unit);
    const read = unitRead(wanted);
    if (!stated || !read || stated === read || words.length === 0) return [];
    const known = fieldNamed(wanted.field ?? '');
    const rivals = quantities.filter((of) => of.includes(stated) && (of as readonly string[]).includes(read));
    // Millimetres are radii where a field takes them, and lengths elsewhere.
    const contradicts = rivals.some((of) => !of.includes('D') || known?.units.includes('mm'));
    if (!contradicts) return [];
    const place = { column: header, field: wanted.field, written: stated };
    return [{ rule: 'unit-differs', severity: 'stop', effect: 'nothing published', ...place } as const];
  });
}

/** Cylinders, none of which has a sign, though signs say everything: 0.50 may be a plus or a minus cylinder. */
function notationDoubts(columns: readonly Used[], decimal: ReadAs['decimal']): readonly FindingParts[] {
  return columns.flatMap((used) => {
    const { wanted, words } = used;
    if (wanted.notation !== undefined) return [];
    const isOpen = wanted.field === 'cylinder' ? isUnsignedCylinder : isUnsignedRefraction;
    if (wanted.field !== 'cylinder' && wanted.field !== 'refraction') return [];
    const read = words.map((word) => isOpen(word, decimal));
    const open = words.filter((_, i) => read[i] === true);
    if (open.length === 0 || read.includes(false)) return [];
    return [{ ...stopAt('notation-open', [used], open.slice(0, 1)), detail: cellsWith(used, open) }];
  });
}

/** True or false for a cylinder without or with a sign; undefined where there is none, or it is zero. */
function isUnsignedCylinder(word: string, decimal: ReadAs['decimal']): boolean | undefined {
  const value = parseCylinder(word, decimal);
  return value === undefined || value === 0 ? undefined : !/^[+-]/.test(plainSigns(word));
}

function isUnsignedRefraction(word: string, decimal: ReadAs['decimal']): boolean | undefined {
  const read = parseRefraction(word, decimal);
  return read === undefined || !(read.cylinder !== 0) || Number.isNaN(read.cylinder) ? undefined : !read.cylinderSigned;
}

/** Fewer rows than this hold slips; a share of them is a code that nobody has declared. */
const fewest = 3;
const share = 0.05;

/** Words for eyes that are in no list and too many for slips: leaving their rows out would leave out one side. */
function eyeDoubts(columns: readonly Used[]): readonly FindingParts[] {
  return columns.flatMap((used) => {
    const { wanted, words } = used;
    if (wanted.field !== 'eye') return [];
    const strange = words.filter((word) => parseLaterality(word, wanted.words) === undefined);
    const often = strange.filter((word) => {
      const cells = cellsWith(used, [word]);
      return cells >= fewest && cells >= share * used.column.length;
    });
    return often.length === 0 ? [] : [{ ...stopAt('eye-words-open', [used], often), detail: cellsWith(used, often) }];
  });
}

/** Days as a spreadsheet counts them, in more than half of a column of dates. */
function serialDoubts(columns: readonly Used[]): readonly FindingParts[] {
  return columns.flatMap((used) => {
    const { wanted, words } = used;
    if (wanted.type !== 'date') return [];
    const serial = words.filter((word) => leftoverOf(word, 'date') === 'serial');
    if (serial.length === 0 || 2 * serial.length <= words.length) return [];
    const doubt = { ...stopAt('dates-serial', [used], serial.slice(0, 1)), written: undefined };
    return [{ ...doubt, detail: cellsWith(used, serial) }];
  });
}

/**
 * What single columns of a file leave open, or contradict: units, signs of cylinders, codes of eyes, days as counts.
 * Nothing is guessed: each stops with the line that settles it.
 *
 * @param decimal  the file's decimal mark
 */
export function columnDoubts(
  table: TableRead,
  { missing }: Pick<Reading, 'missing'>,
  decimal: ReadAs['decimal'],
): readonly FindingParts[] {
  const columns = usedColumns(table, missing);
  return [...unitDoubts(columns), ...notationDoubts(columns, decimal), ...eyeDoubts(columns), ...serialDoubts(columns)];
}
