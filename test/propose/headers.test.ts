import { describe, expect, it } from 'vitest';
import { fields } from '../../src/plan/fields.js';
import { headerWords } from '../../src/propose/header-words.js';
import { matchesOf, phrasesOf } from '../../src/propose/phrases.js';
import { readHeader } from '../../src/propose/read-header.js';
import { vocabularies } from '../../src/propose/vocabulary/index.js';
import { otherTerms } from '../../src/propose/vocabulary/vocabulary.js';
import { mappingOf, proposedFor } from './proposed.js';

const acuities = ['0.8', '1.0', '0.63', '1.25'];
const quarters = ['-1.25', '0.50', '-0.75', '+2.00'];
const minus = ['-0.50', '-1.25', '-0.75', '-2.00'];
const axes = ['10', '95', '172', '88'];
const codes = ['A1', 'B2', 'A1', 'C3'];
const powers = ['21.0', '19.5', '23.0', '22.5'];
const dioptres = ['43.25', '44.12', '41.90', '45.31'];
const radii = ['7.71', '7.90', '8.05', '7.55'];
const dates = ['2025-01-14', '2025-02-27', '2025-03-19', '2025-04-22'];
const yesNo = ['yes', 'no', 'no', 'no'];

// Words and abbreviations of the trade: common practice, no source.
const surgeryColumns: readonly (readonly [header: string, field: string, cells: readonly string[]])[] = [
  ['Operated on', 'surgery_date', dates],
  ['OP-Datum', 'surgery_date', dates],
  ["Date d'intervention", 'surgery_date', dates],
  ['Year of surgery', 'surgery_year', ['2024', '2025', '2025', '2024']],
  ['Alter', 'age', ['71', '80', '90+', '66']],
  ['Âge', 'age', ['71', '80', '90', '66']],
  ['Geschlecht', 'sex', ['w', 'm', 'm', 'w']],
  ['Operateur', 'surgeon', codes],
  ['Chirurgien', 'surgeon', codes],
  ['Capsulotomy technique', 'technique', ['manual', 'laser', 'manual', 'laser']],
  ['OP-Methode', 'technique', ['manuell', 'Laser', 'manuell', 'Laser']],
  ['Schnittachse', 'incision_axis', ['110', '95', '180', '170']],
  ["Axe de l'incision", 'incision_axis', ['110', '95', '180', '170']],
  ['incisionWidth (mm)', 'incision_width', ['2.2', '2.4', '2.2', '2.4']],
  ['IOL', 'lens_model', codes],
  ['Linsenmodell', 'lens_model', codes],
  ['Modèle implant', 'lens_model', codes],
  ['IOL power (D)', 'lens_power', powers],
  ['Brechkraft IOL', 'lens_power', powers],
  ["Puissance de l'implant", 'lens_power', powers],
  ['IOL-Zylinder', 'lens_cylinder', ['1.50', '2.25', '1.50', '3.00']],
  ['Target refraction', 'target_se', ['-0.25', '0.00', '-2.50', '-0.25']],
  ['Zielrefraktion', 'target_se', ['-0.25', '0.00', '-2.50', '-0.25']],
  ['Réfraction visée', 'target_se', ['-0.25', '0.00', '-2.50', '-0.25']],
  ['Pred. SE', 'predicted_se', ['-0.31', '0.04', '-2.48', '-0.20']],
  ['Achslänge', 'axial_length', ['23.41', '22.87', '24.90', '23.05']],
  ['Achslaenge [mm]', 'axial_length', ['23.41', '22.87', '24.90', '23.05']],
  ['Longueur axiale', 'axial_length', ['23.41', '22.87', '24.90', '23.05']],
  ['AL', 'axial_length', ['23.41', '22.87', '24.90', '23.05']],
  ['VKT', 'acd', ['3.10', '2.87', '3.33', '3.21']],
  ['Lens thickness', 'lens_thickness', ['4.61', '4.87', '4.33', '4.21']],
  ['WTW', 'white_to_white', ['11.9', '12.1', '11.6', '12.0']],
  ['Komplikationen', 'complication', ['none', 'HKR', 'none', 'none']],
  ['PCR', 'posterior_capsule_rupture', yesNo],
  ['Issue de vitré', 'vitreous_loss', yesNo],
  ['Begleiterkrankung', 'comorbidity', ['AMD', 'none', 'GL', 'none']],
  ['Kernhärte', 'nucleus_grade', ['2', '3', '2', '4']],
  ['Phakozeit', 'phaco_time_s', ['41', '60', '37', '52']],
  ['Durée opératoire', 'case_time_min', ['12', '9', '15', '11']],
];

const examColumns: typeof surgeryColumns = [
  ['K1 (D)', 'k1', dioptres],
  ['Radius 1', 'k1', radii],
  ['Rayon 1 (mm)', 'k1', radii],
  ['UCVA', 'udva', acuities],
  ['Visus s. c.', 'udva', acuities],
  ['AVSC', 'udva', acuities],
  ['Unaided vision', 'udva', ['6/9', '6/12', '6/6', '6/18']],
  ['best-corrected VA', 'cdva', acuities],
  ['V c.c.', 'cdva', acuities],
  ['Meilleure acuité corrigée', 'cdva', acuities],
  ['Nahvisus', 'unva', acuities],
  ['ECD', 'ecd', ['2410', '2205', '1890', '2530']],
  ['Endothelzelldichte', 'ecd', ['2410', '2205', '1890', '2530']],
  ['Pachymetry (µm)', 'cct', ['540', '555', '521', '569']],
  ['Augeninnendruck', 'iop', ['14', '16', '18', '12']],
  ['PIO', 'iop', ['14', '16', '18', '12']],
  ['Axe LIO', 'lens_axis', axes],
  ['HSA', 'vertex_mm', ['12', '12', '13', '12']],
  ['Refraktion', 'refraction', ['-1.25 -0.50 x 90', '+0.50/-1.25x175', '-1.00 DS', 'plano -0.75 @ 180']],
  ['Manifest refraction', 'refraction', ['-1.25 -0.50 x 90', '+0.50/-1.25x175', '-1.00 DS', 'plano -0.75 @ 180']],
];

/** A file whose last columns are the given ones. */
function table(
  head: string,
  rows: readonly string[],
  columns: readonly (readonly [string, readonly string[]])[],
): string {
  const cell = (text: string): string => (/[",]/.test(text) ? `"${text}"` : text);
  const header = [head, ...columns.map(([name]) => cell(name))].join(',');
  const lines = rows.map((row, at) => [row, ...columns.map(([, cells]) => cell(cells[at] ?? ''))].join(','));
  return `${[header, ...lines].join('\n')}\n`;
}

const eyes = ['P1,R', 'P1,L', 'P2,R', 'P3,L'];
const partners: Readonly<Record<string, readonly (readonly [string, readonly string[]])[]>> = {
  k1: [['K2', ['44.00', '44.80', '42.75', '45.90']]],
};
const partnerRadii = [['R2', ['7.62', '7.80', '7.95', '7.49']]] as const;

describe('a header in a language of the vocabulary', () => {
  it.each(surgeryColumns)('‘%s’ is %s in a list of operations', async (header, field, cells) => {
    const extra = field === 'surgery_date' ? [] : ([['Lens code', codes]] as const);
    const lens = field === 'lens_model' ? [] : extra;
    const { plan, faults } = await proposedFor({ 'list.csv': table('ID,Eye', eyes, [...lens, [header, cells]]) });
    expect(faults).toEqual([]);
    expect(mappingOf(plan)[field]).toBe(header.trim());
  });

  it.each(examColumns)('‘%s’ is %s among examinations', async (header, field, cells) => {
    const more = cells === radii ? partnerRadii : (partners[field] ?? []);
    const exam = table(
      'ID,Eye,Visit date',
      eyes.map((eye, at) => `${eye},${dates[at]}`),
      [[header, cells], ...more],
    );
    const list = table(
      'ID,Eye,Op date',
      eyes.map((eye) => `${eye},2025-01-02`),
      [['Lens', codes]],
    );
    const { plan, faults } = await proposedFor({ 'exam.csv': exam, 'list.csv': list });
    expect(faults).toEqual([]);
    expect(mappingOf(plan)[field]).toBe(header);
  });

  it.each([
    ['Sph', 'Cyl', 'Axis', 'Date'],
    ['Sphäre', 'Zylinder', 'Achse', 'Datum'],
    ['Sphère', 'Cylindre', 'Axe', 'Date examen'],
    ['sphere_D', 'cylinder_D', 'axis_deg', 'exam_date'],
    ['S', 'C', 'A', 'Examined'],
  ])('‘%s’, ‘%s’, ‘%s’, ‘%s’ are an examination’s refraction and its day', async (sphere, cylinder, axis, date) => {
    const exam = table('ID,Eye', eyes, [
      [date, dates],
      [sphere, quarters],
      [cylinder, minus],
      [axis, axes],
    ]);
    const list = table(
      'ID,Eye,Op date',
      eyes.map((eye) => `${eye},2025-01-02`),
      [['Lens', codes]],
    );
    const { plan } = await proposedFor({ 'exam.csv': exam, 'list.csv': list });
    expect(mappingOf(plan)).toEqual({ sphere, cylinder, axis, exam_date: date });
  });

  it.each([
    ['Case', 'Side'],
    ['Patient-ID', 'Laterality'],
    ['Patienten-ID', 'Auge'],
    ['Code patient', 'Œil'],
    ['Sujet', 'Côté'],
  ])('‘%s’ and ‘%s’ are patient and eye', async (patient, eye) => {
    const { plan } = await proposedFor({ 'list.csv': table(`${patient},${eye}`, eyes, [['Op date', dates]]) });
    const [block] = plan?.sources[0]?.blocks ?? [];
    const header = (field: string) => block?.columns.find((one) => one.field === field)?.column;
    expect([header('patient'), header('eye')]).toEqual([patient, eye]);
  });
});

describe('what stands beside the word itself', () => {
  const visit = (header: string, language?: string) => readHeader(header, '', language).context.visit?.name;

  it.each([
    ['pre_sph', 'before'],
    ['preop BCVA', 'before'],
    ['K1 pre-op', 'before'],
    ['Sphäre präop', 'before'],
    ['sphère préop', 'before'],
    ['presph', 'before'],
    ['m1_sph', '1 month'],
    ['1 month sph', '1 month'],
    ['sph (1 mo)', '1 month'],
    ['Sphäre 3 Monate', '3 months'],
    ['sphère 3 mois', '3 months'],
    ['BCVA 1 week', '1 week'],
    ['BCVA w6', '6 weeks'],
    ['cyl_1y', '1 year'],
    ['1 Jahr Zylinder', '1 year'],
    ['postop UCVA', 'outcome'],
    ['post-op 3m UCVA', '3 months'],
    ['Visus cc nach OP', 'outcome'],
    ['AV avec correction après opération', 'outcome'],
  ])('‘%s’ is of the visit %s', (header, name) => {
    expect(visit(header)).toBe(name);
  });

  it('a unit of time is read in the language of the file: j is a day in French, a year in German', () => {
    expect(visit('sphère 1j', 'fr')).toBe('1 day');
    expect(visit('Sphäre 1j', 'de')).toBe('1 year');
  });

  it.each(['K1', 'A1', 'R2 axis', 'Axis 2', 'Posterior astigmatism', 'UDVA', 'Surgeon S1'])(
    '‘%s’ names no visit',
    (header) => {
      expect(visit(header)).toBeUndefined();
    },
  );

  it.each([
    ['+cyl', 'plus'],
    ['Cyl (-)', 'minus'],
    ['Minuszylinder', 'minus'],
    ['plus cyl', 'plus'],
    ['cylindre positif', 'plus'],
    ['Cyl', undefined],
  ])('‘%s’ is written with %s', (header, sign) => {
    expect(readHeader(header, '', undefined).sign).toBe(sign);
  });

  it.each([
    ['BCVA (logMAR)', 'logmar'],
    ['UDVA decimal', 'decimal'],
    ['CDVA ETDRS letters', 'letters'],
    ['BCVA', undefined],
  ])('‘%s’ counts %s', (header, scale) => {
    expect(readHeader(header, '', undefined).scale).toBe(scale);
  });

  it.each([
    ['axialLength', ['axial', 'length']],
    ['K1 [mm]', ['k1']],
    ['HSA mm', ['hsa']],
    ['pachymetry_um', ['pachymetry']],
    ['Achse °', ['achse']],
    ['Œil opéré', ['oeil', 'opere']],
    ['UDVA_pre', ['udva', 'pre']],
  ])('‘%s’ is taken apart', (header, words) => {
    expect(headerWords(header).words).toEqual(words);
  });
});

describe('the vocabulary', () => {
  const terms = [...fields.map(({ name }) => name), ...Object.keys(otherTerms)];

  it.each(vocabularies)('$language names nothing but fields and the terms beside them', ({ headers }) => {
    expect(Object.keys(headers).filter((term) => !terms.includes(term))).toEqual([]);
  });

  it.each(vocabularies)('$language has words for every field', ({ headers }) => {
    const without = fields.filter(({ name }) => !headers[name]).map(({ name }) => name);
    // Abbreviations of English are used everywhere, and a code of a formula's constant has no other name there.
    expect(without).toEqual([]);
  });

  it.each(vocabularies)('$language: every phrase leads back to its own term', ({ headers }) => {
    const lost = Object.entries(headers).flatMap(([term, text]) =>
      phrasesOf(text)
        .filter((words) => !matchesOf(words).some((match) => match.term === term))
        .map((words) => `${term}: ${words.join(' ')}`),
    );
    expect(lost).toEqual([]);
  });

  it('names no column that the de-identification gate would stop at', async () => {
    const { headerIdentifier } = await import('../../src/intake/identifier-header.js');
    const stopped = vocabularies.flatMap(({ headers }) =>
      Object.entries(headers)
        .flatMap(([term, text]) => phrasesOf(text).map((words) => [term, words.join(' ')] as const))
        .filter(([term, phrase]) => term !== 'row_number' && headerIdentifier(phrase) !== undefined),
    );
    expect(stopped).toEqual([]);
  });
});
