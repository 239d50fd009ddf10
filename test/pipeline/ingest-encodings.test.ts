import { describe, expect, it } from 'vitest';
import { keptColumn } from '../../src/records/raw-table.js';
import { ingested } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

// Bytes of Python 3.11, text.encode(codec), an implementation of the published code pages that is not ours.
const pages: readonly (readonly [encoding: string, text: string, hex: string])[] = [
  ['windows-1250', 'Łódź, źrenica', 'a3f3649f2c209f72656e696361'],
  ['windows-1251', 'Глаз, правый', 'c3ebe0e72c20eff0e0e2fbe9'],
  ['windows-1252', 'Œil gêné – 50 €', '8c696c2067ea6ee920962035302080'],
  ['windows-1253', 'Οφθαλμός Ώ', 'cff6e8e1ebecfcf220bf'],
  ['windows-1254', 'Göz ığdır Şişli', '47f67a20fdf064fd7220de69fe6c69'],
  ['windows-1255', 'עין ימין', 'f2e9ef20e9eee9ef'],
  ['windows-1256', 'عين يمنى', 'daede420ede3e4ec'],
  ['windows-1257', 'Acs žvejų ģ', '41637320fe76656af820ec'],
  ['windows-1258', 'Ma\u0306\u0301t pha\u0309i \u01a1', '4de3ec7420706861d26920f5'],
  ['iso-8859-1', 'Señal ß', '5365f1616c20df'],
  ['iso-8859-2', 'Łódź őű', 'a3f364bc20f5fb'],
  ['iso-8859-3', 'Ħaġar ż', 'a161f5617220bf'],
  ['iso-8859-4', 'ģimene ķ ŧ', 'bb696d656e6520f320bc'],
  ['iso-8859-5', 'Глаз', 'b3dbd0d7'],
  ['iso-8859-6', 'عين', 'd9eae6'],
  ['iso-8859-7', 'Οφθαλμός', 'cff6e8e1ebecfcf2'],
  ['iso-8859-8', 'עין', 'f2e9ef'],
  ['iso-8859-9', 'ığdır Ş', 'fdf064fd7220de'],
  ['iso-8859-10', 'þorn ðŋ', 'fe6f726e20f0bf'],
  ['iso-8859-11', 'ตา', 'b5d2'],
  ['iso-8859-13', 'žvejų “a”', 'fe76656af820b461a1'],
  ['iso-8859-14', 'Ċeann ŵ', 'a465616e6e20f0'],
  ['iso-8859-15', 'Œil € Ÿ', 'bc696c20a420be'],
  ['iso-8859-16', 'Țară ș €', 'de6172e320ba20a4'],
];

/** A lane's export whose third header and one of its cells are the given bytes. */
function laneWith(hex: string): Uint8Array {
  const text = Buffer.from(hex, 'hex');
  return Uint8Array.from(
    Buffer.concat([Buffer.from('ID;Eye;'), text, Buffer.from('\nA1;R;'), text, Buffer.from('\n')]),
  );
}

describe('an encoding that audit.yaml names', () => {
  it.each(pages)('%s reads header and cells', async (encoding, text, hex) => {
    const columns = { patient: 'ID', eye: 'Eye', device: text };
    const plan = planOf([{ file: 'lane.csv', columns, reading: { encoding } }]);
    const { raw, findings } = await ingested({ 'lane.csv': laneWith(hex) }, plan);
    expect([...findings.rule.codes]).toEqual([]);
    const table = raw[0];
    expect(table?.read.encoding).toBe(encoding);
    // Vietnamese letters come in two halves in their page; a header is found however it is composed.
    expect(table && keptColumn(table, 2).at(0).normalize('NFC')).toBe(text.normalize('NFC'));
  });
});
